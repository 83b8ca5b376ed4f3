//! A compartment as the command line names it: by the number sewn at its opening, or by its id.

use std::fmt;
use std::str::FromStr;

use cushion::{CompartmentIx, Name, Pattern};
use words::CallFault;

use crate::failure::Failure;

/// A compartment, by number or id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum CompartmentRef {
    /// The number sewn at its opening.
    Number(u8),
    /// The id, as the layout has it.
    Id(Name),
}

impl FromStr for CompartmentRef {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        // An id begins with a letter, so that the two are never confused.
        let number = text.parse().ok().map(Self::Number);
        number
            .or_else(|| Name::new(text).map(Self::Id))
            .ok_or_else(|| format!("`{text}` is no compartment; name its number or its id"))
    }
}

impl fmt::Display for CompartmentRef {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(number) => write!(f, "{number}"),
            Self::Id(id) => write!(f, "`{id}`"),
        }
    }
}

impl CompartmentRef {
    /// Finds it in a pattern.
    ///
    /// # Errors
    ///
    /// Fails where the pattern has no such compartment, and says which there are.
    pub(crate) fn find(&self, pattern: &Pattern) -> Result<CompartmentIx, Failure> {
        let found = match self {
            Self::Number(number) => pattern.by_number(*number),
            Self::Id(id) => pattern.by_id(id.as_str()),
        };
        found.ok_or_else(|| {
            let known = pattern.compartments().iter();
            let known = known.map(|own| format!("{} ({})", own.number, own.id));
            let known = known.collect::<Vec<_>>().join(", ");
            let fault = CallFault::NoCompartment { named: &self.to_string(), known: &known };
            Failure::call(&fault)
        })
    }
}
