//! Small numerical methods that several rooms need.

mod root;
mod small;

pub(crate) use self::root::root;
pub use self::small::SmallMatrix;
