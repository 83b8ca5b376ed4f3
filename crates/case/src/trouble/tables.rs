//! What is wrong with a table, and why a record is not added to.

/// What is wrong with a row of a table of bodies, or of a survey.
#[derive(Clone, Debug, PartialEq)]
pub enum TableFault {
    /// A column is missing.
    NoColumn {
        /// Its name.
        name: &'static str,
        /// All that must be there.
        wanted: &'static [&'static str],
    },
    /// What is written under a column cannot be right.
    Cell {
        /// As written.
        written: String,
        /// The column.
        column: &'static str,
        /// The least that is taken.
        least: f64,
        /// The most.
        most: f64,
    },
    /// No row of the table; in the words of what reads it.
    NotARow(String),
    /// No survey, or one of another version.
    NoSurvey,
    /// A row of a survey that cannot be read.
    SurveyRow,
}

/// Why nothing is appended to a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotAppended {
    /// The text is not TOML; in the words of what reads it.
    NotToml(String),
    /// `record` is no list of tables.
    RecordForm,
    /// `filling` is no table under a heading or in braces.
    FillingForm,
}
