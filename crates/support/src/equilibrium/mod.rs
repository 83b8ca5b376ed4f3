//! Where the filled cushion and the body on it come to rest.

mod energy;
mod level;
mod model;
mod nested;
mod newton;
mod problem;
mod step;

pub use self::model::SheetModel;

#[cfg(test)]
mod tests;
