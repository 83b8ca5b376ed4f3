//! What can be found about a text: values with their numbers and words as written, no sentences.

mod direction;
mod edit;
mod meaning;
mod order;
mod reading;
mod remark;
mod values;

pub use self::direction::is_right_to_left;
pub use self::edit::EditError;
pub use self::meaning::{ClientFinding, DesignFinding, RecordFinding, StockChange, WishFinding};
pub use self::order::{ColumnsFinding, OrderFinding};
pub use self::reading::{FileFinding, KeyFinding, SyntaxFinding};
pub use self::remark::Remark;
pub use self::values::{LengthUnit, Looks, Type, ValueFinding, WordFinding};
use crate::Trouble;

/// Something that is to be said about a text.
#[derive(Clone, Debug, PartialEq)]
pub enum TextFinding {
    /// About the file as a whole.
    File(FileFinding),
    /// The text cannot be read here.
    Syntax(SyntaxFinding),
    /// About a key.
    Key(KeyFinding),
    /// About a value by itself.
    Value(ValueFinding),
    /// About a value that is a word.
    Word(WordFinding),
    /// About values of a client's file together.
    Client(ClientFinding),
    /// About what is wanted for a client.
    Wish(WishFinding),
    /// About the record of a client's file.
    Record(RecordFinding),
    /// About a layout or a cell.
    Design(DesignFinding),
    /// About the columns and fields of a table.
    Columns(ColumnsFinding),
    /// About a line of an order.
    Order(OrderFinding),
    /// Work on the text, or with what it names, ends here.
    Trouble(Box<Trouble>),
}

macro_rules! wrapped {
    ($($inner:ident => $variant:ident),+) => {
        $(impl From<$inner> for TextFinding {
            fn from(inner: $inner) -> Self {
                Self::$variant(inner)
            }
        })+

        impl TextFinding {
            /// How reports call it: a word for programs, which no language changes.
            #[must_use]
            pub fn id(&self) -> &'static str {
                match self {
                    $(Self::$variant(own) => own.id(),)+
                    Self::Trouble(own) => own.id(),
                }
            }

            /// All that [`Self::id`] returns.
            #[must_use]
            pub fn ids() -> Vec<&'static str> {
                [$($inner::IDS,)+ Trouble::IDS].concat()
            }
        }
    };
}

wrapped! {
    FileFinding => File,
    SyntaxFinding => Syntax,
    KeyFinding => Key,
    ValueFinding => Value,
    WordFinding => Word,
    ClientFinding => Client,
    WishFinding => Wish,
    RecordFinding => Record,
    DesignFinding => Design,
    ColumnsFinding => Columns,
    OrderFinding => Order
}

/// The words by which programs know the variants of enums.
macro_rules! ids {
    ($($name:ident { $($variant:ident => $id:literal),+ $(,)? })+) => {
        $(impl $name {
            pub(crate) const IDS: &'static [&'static str] = &[$($id),+];

            /// How reports call it: a word for programs, which no language changes.
            #[must_use]
            pub fn id(&self) -> &'static str {
                match self {
                    $(Self::$variant { .. } => $id,)+
                }
            }
        })+
    };
}
pub(crate) use ids;
