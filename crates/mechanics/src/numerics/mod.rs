//! Small numerical methods that several rooms need.

mod mixed;
mod root;
mod small;
mod wide;

pub use self::mixed::mixed;
pub(crate) use self::root::root;
pub use self::small::SmallMatrix;
pub(crate) use self::wide::wide;
