//! Where layouts come from: built in, or drawn by a plugin; and why there is none.

mod plugin_fault;

use std::collections::BTreeMap;

use cushion::{Layout, Length, Name, Size};

pub use self::plugin_fault::{BadDescription, Crash, Distrust, PluginFault, PluginFaultKind};

/// What is asked of a source of layouts.
#[derive(Clone, Debug, PartialEq)]
pub struct LayoutRequest {
    /// The layout's name as a client's file or the command line writes it, such as `row-six`.
    /// By its form a source tells whether it is one of its own.
    pub name: String,
    /// The size that it is wanted for.
    pub size: Size,
    /// Values for parameters of the layout, by name.
    pub parameters: BTreeMap<Name, f64>,
}

/// A measure of the client by which a parameter of a layout may be set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodyMeasure {
    /// Between the lowest points of the ischial tuberosities.
    SeatBoneSpacing,
    /// Back of the buttock to the back of the knee, on the client's left.
    ThighDepthLeft,
    /// The same on the client's right.
    ThighDepthRight,
    /// Greatest width of hips or thighs.
    HipWidth,
    /// Between the outsides of the trochanters.
    TrochanterWidth,
}

/// Returns a measure of the client where it is known; `&|_| None` where there is no client.
pub type Measured<'a> = &'a dyn Fn(BodyMeasure) -> Option<Length>;

/// Something that knows layouts by name, asked from any thread.
///
/// All layouts but those in files come through this one door.
pub trait LayoutSource: Send + Sync {
    /// Returns the layout; where it is drawn for one size, it is made in that size only.
    ///
    /// A parameter has the value that the request gives, else the one that was `measured`.
    ///
    /// # Errors
    ///
    /// Fails where the source does not know the name, and where it does not answer rightly.
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError>;

    /// Returns the names of all layouts that it has, in an order that stays the same; nothing is
    /// drawn for this.
    fn names(&self) -> Vec<String>;
}

/// A layout with where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnLayout {
    /// The layout.
    pub layout: Layout,
    /// Its text, by whose digest it is known again.
    pub text: String,
    /// What messages call the text, such as `built-in layout row-six`.
    pub origin: String,
    /// The name and version of the program that drew it, which records and papers name; none
    /// where the text is kept as it is.
    pub drawn_by: Option<String>,
}

/// Whose move it is where there is no layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayoutErrorBy {
    /// That of the person who asked: another name, another value, a measure.
    Asker,
    /// That of the author of the source.
    Source,
    /// That of whoever looks after this computer.
    System,
}

/// Why a source has no layout to give.
#[derive(Clone, Debug, PartialEq)]
pub enum LayoutError {
    /// By its form, the name is one of another source.
    OtherSource {
        /// The name.
        name: String,
    },
    /// The source has no layout of this name.
    UnknownName {
        /// The name.
        name: String,
        /// The names that are.
        known: Vec<String>,
    },
    /// The layout has no parameters.
    NoParameters {
        /// The layout.
        name: String,
        /// The parameter that was given.
        given: Name,
    },
    /// A setting was given beside a layout that no plugin draws.
    NotSettable {
        /// The layout.
        name: String,
        /// The parameter that was to be set.
        given: Name,
    },
    /// The plugin that is to draw it cannot.
    Plugin(PluginFault),
}

impl LayoutError {
    /// Whose move it is next.
    #[must_use]
    pub fn by(&self) -> LayoutErrorBy {
        match self {
            Self::OtherSource { .. }
            | Self::UnknownName { .. }
            | Self::NoParameters { .. }
            | Self::NotSettable { .. } => LayoutErrorBy::Asker,
            Self::Plugin(fault) => fault.kind.by(),
        }
    }

    /// Whether the source does not know the name, so that another may.
    #[must_use]
    pub fn is_unknown_name(&self) -> bool {
        use PluginFaultKind::{NotAName, NotFound};
        match self {
            Self::OtherSource { .. } | Self::UnknownName { .. } => true,
            Self::NoParameters { .. } | Self::NotSettable { .. } => false,
            Self::Plugin(fault) => matches!(fault.kind, NotAName | NotFound { .. }),
        }
    }
}

impl From<PluginFault> for LayoutError {
    fn from(fault: PluginFault) -> Self {
        Self::Plugin(fault)
    }
}

/// Sources that are asked in turn, until one has the layout or fails to give it.
pub struct InTurn<'a>(pub Vec<&'a dyn LayoutSource>);

impl LayoutSource for InTurn<'_> {
    /// Where none knows the name, the first that might have known it speaks, with the names of
    /// all.
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError> {
        let mut unknown: Option<LayoutError> = None;
        let mut all = Vec::new();
        for source in &self.0 {
            match source.layout(request, measured) {
                Err(LayoutError::OtherSource { .. }) => {}
                Err(error) if error.is_unknown_name() => {
                    if let LayoutError::UnknownName { known, .. } = &error {
                        all.extend_from_slice(known);
                    }
                    unknown = unknown.or(Some(error));
                }
                answered => return answered,
            }
        }
        Err(match unknown {
            Some(LayoutError::UnknownName { name, .. }) => {
                LayoutError::UnknownName { name, known: all }
            }
            Some(other) => other,
            None => LayoutError::OtherSource { name: request.name.clone() },
        })
    }

    /// Those of the first source first.
    fn names(&self) -> Vec<String> {
        self.0.iter().flat_map(|source| source.names()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A source that answers every name with an error.
    struct Says(LayoutError);

    impl LayoutSource for Says {
        fn layout(&self, _: &LayoutRequest, _: Measured<'_>) -> Result<DrawnLayout, LayoutError> {
            Err(self.0.clone())
        }

        fn names(&self) -> Vec<String> {
            match &self.0 {
                LayoutError::UnknownName { known, .. } => known.clone(),
                _ => Vec::new(),
            }
        }
    }

    fn unknown(names: &[&str]) -> LayoutError {
        let known = names.iter().map(|&name| name.to_owned()).collect();
        LayoutError::UnknownName { name: "rows".to_owned(), known }
    }

    fn plugin(kind: PluginFaultKind) -> LayoutError {
        LayoutError::Plugin(PluginFault { plugin: "rows".to_owned(), kind })
    }

    #[track_caller]
    fn check(sources: &[LayoutError], expected: LayoutError) {
        let sources: Vec<Says> = sources.iter().cloned().map(Says).collect();
        let sources = sources.iter().map(|source| source as &dyn LayoutSource).collect();
        let size = Size::new(Length::from_mm(440.0), Length::from_mm(400.0)).expect("a size");
        let request = LayoutRequest { name: "rows".to_owned(), size, parameters: BTreeMap::new() };
        assert_eq!(InTurn(sources).layout(&request, &|_| None), Err(expected));
    }

    #[test]
    fn names_are_listed_in_the_order_of_the_sources() {
        let (one, two) = (Says(unknown(&["b", "a"])), Says(unknown(&["0"])));
        assert_eq!(InTurn(vec![&one, &two]).names(), ["b", "a", "0"]);
    }

    #[test]
    fn sources_are_asked_until_one_knows_the_name() {
        let not_mine = || LayoutError::OtherSource { name: "rows".to_owned() };
        let no_plugin = || plugin(PluginFaultKind::NotFound { looked_in: Vec::new() });
        check(&[], not_mine());
        check(&[not_mine()], not_mine());
        check(&[not_mine(), unknown(&["a"]), unknown(&["b"])], unknown(&["a", "b"]));
        check(&[no_plugin(), unknown(&["a"])], no_plugin());
        check(&[unknown(&["a"]), no_plugin()], unknown(&["a"]));
        // One that knows the name and has no answer is not passed over.
        let broke = || plugin(PluginFaultKind::Ended);
        check(&[unknown(&["a"]), broke(), not_mine()], broke());
    }
}
