//! A plugin built against version 1 of the contract, as it was when it came out, still runs.
//!
//! It is kept as source with the header of that day, and built by the test: a binary would run on
//! one kind of machine only, and nobody could read what it does.

use std::path::Path;

use cushion::{Name, arrange};

use crate::built::{build, plugins, request, said};

#[test]
fn a_plugin_of_version_1_still_runs() {
    let frozen = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/version-1");
    let source = std::fs::read_to_string(frozen.join("plugin.c")).unwrap();
    let built = build(&source, &frozen);
    let plugins = plugins(&built.path);
    let mut request = request("halves");
    request.parameters.insert(Name::new("seam-at").unwrap(), 150.0);
    let drawn = plugins.draw(&request, &|_| None).unwrap();
    assert_eq!(drawn.drawn_by, "halves 1.0 (seam-at 150 mm)");
    let pattern = arrange(&drawn.layout, request.size).unwrap();
    let rear = pattern.by_id("rear").unwrap();
    // A rectangle of 440 by 150 mm, in binary fractions.
    assert!((pattern.area(rear).to_mm2() - 440.0 * 150.0).abs() < 1e-6);
    request.parameters.insert(Name::new("seam-at").unwrap(), 350.0);
    let refused = plugins.draw(&request, &|_| None).unwrap_err();
    assert_eq!(said(refused), "plugin `halves`: the seam lies too near to the front edge");
}
