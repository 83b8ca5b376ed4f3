//! A plugin built against version 1 of the contract, as it was when it came out, still runs.
//!
//! It is kept as source with the header of that day, and built by the test: a binary would run on
//! one kind of machine only.

use std::path::Path;

use crate::built::{build, plugins, request};

#[test]
fn a_plugin_of_version_1_still_runs() {
    let frozen = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/version-1");
    let built = build("#include \"fault.h\"\n", &frozen);
    let drawn = plugins(&built.path).draw(&request("faulty"), &|_| None).unwrap();
    assert_eq!(drawn.drawn_by, "faulty 1.0");
}
