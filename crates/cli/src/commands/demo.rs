//! Not yet.

use crate::arguments::Demo;
use crate::failure::{Failure, Kind};
use crate::terminal::Terminal;

pub(crate) fn run(_: &Demo, _: Terminal) -> Result<(), Failure> {
    Err(Failure::new(Kind::Ours, "not there yet"))
}
