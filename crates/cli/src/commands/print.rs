//! Not yet.

use crate::arguments::Print;
use crate::failure::{Failure, Kind};
use crate::terminal::Terminal;

pub(crate) fn run(_: &Print, _: Terminal) -> Result<(), Failure> {
    Err(Failure::new(Kind::Ours, "not there yet"))
}
