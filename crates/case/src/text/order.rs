//! What can be found about an order: a table of cushions to be filled.

use super::ids;

/// About the columns and fields of a table.
#[derive(Clone, Debug, PartialEq)]
pub enum ColumnsFinding {
    /// No column is called so.
    UnknownColumn {
        /// As written.
        written: String,
        /// What is meant, perhaps.
        near: Option<&'static str>,
        /// All that are known.
        known: &'static [&'static str],
    },
    /// A column is there twice.
    ColumnTwice(&'static str),
    /// A column that must be there is not.
    NoColumn(&'static str),
    /// A line has other fields than the heading.
    Fields {
        /// How many it has.
        found: usize,
        /// How many the heading has.
        wanted: usize,
    },
    /// Quotes that do not end, or end within a field.
    Quotes,
    /// No line below the heading says anything.
    Nothing,
}

/// About a line of an order.
#[derive(Clone, Debug, PartialEq)]
pub enum OrderFinding {
    /// It names a file that is not there.
    NoFile(String),
    /// It names neither a layout nor a client's file.
    NothingNamed,
    /// It names a client's file, and what that file says already.
    BesideClient(&'static str),
    /// A layout without a size.
    NoSize,
    /// Not a whole number from 1.
    Quantity(String),
    /// More cushions than are taken in one order.
    TooMany {
        /// The most.
        most: usize,
    },
    /// A client's file has one record, and so one cushion.
    OneForClient(u32),
    /// Not a serial.
    Serial(String),
    /// Not a run of serials from one to another.
    SerialRun(String),
    /// Other serials than cushions.
    SerialCount {
        /// How many serials there are.
        serials: usize,
        /// How many cushions.
        quantity: u32,
    },
    /// A serial that is there already, in whatever letters.
    SerialTwice {
        /// The serial.
        serial: String,
        /// The line where it stands first.
        line: usize,
    },
    /// A client's file that is there already.
    ClientTwice {
        /// The file.
        file: String,
        /// The line where it stands first.
        line: usize,
    },
    /// A client's file says another serial.
    OtherSerial {
        /// As ordered.
        ordered: String,
        /// As the file says.
        of_file: String,
    },
}

ids! {
    ColumnsFinding {
        UnknownColumn => "columns-unknown",
        ColumnTwice => "columns-twice",
        NoColumn => "columns-missing",
        Fields => "columns-fields",
        Quotes => "columns-quotes",
        Nothing => "columns-nothing",
    }
    OrderFinding {
        NoFile => "order-no-file",
        NothingNamed => "order-nothing-named",
        BesideClient => "order-beside-client",
        NoSize => "order-no-size",
        Quantity => "order-quantity",
        TooMany => "order-too-many",
        OneForClient => "order-one-for-client",
        Serial => "order-serial",
        SerialRun => "order-serial-run",
        SerialCount => "order-serial-count",
        SerialTwice => "order-serial-twice",
        ClientTwice => "order-client-twice",
        OtherSerial => "order-other-serial",
    }
}
