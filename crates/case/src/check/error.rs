//! Why a text is no check.

/// Why a text is no check, with what is written.
#[derive(Clone, Debug, PartialEq)]
pub enum CheckError {
    /// No kind and answer.
    NotACheck(String),
    /// No check is called so.
    NoSuchCheck(String),
    /// No answer to this kind of check.
    NotAnAnswer {
        /// The kind.
        kind: &'static str,
        /// As written.
        written: String,
    },
    /// Neither the client's left nor right.
    NotASide(String),
    /// Neither the seat bones nor the front of the pelvis.
    NotALandmark(String),
    /// Not the number of a compartment.
    NotANumber(String),
    /// No site.
    NotASite(String),
    /// A length without its unit.
    LengthWithoutUnit(String),
    /// A length that cannot be right.
    LengthRange {
        /// As written.
        written: String,
        /// The most that is taken, in mm; the least is 0.
        most_mm: f64,
    },
    /// A pressure without its unit.
    PressureWithoutUnit(String),
    /// A pressure that cannot be right.
    PressureRange {
        /// As written.
        written: String,
        /// The least that is taken, in mmHg.
        least_mmhg: f64,
        /// The most.
        most_mmhg: f64,
    },
}
