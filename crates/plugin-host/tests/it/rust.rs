//! Plugins in Rust, as the libraries that cargo builds, in the child.

use std::path::PathBuf;

use case::{BodyMeasure, LayoutErrorBy, PluginFaultKind};
use cushion::{Length, Name, arrange};
use plugin_host::{Drawn, Plugins};

use crate::built::{plugins, request, said, stays};

/// The library of one of the plugins that this package is tested with. Cargo puts it beside the
/// test's program, or one folder up where it was built by itself.
#[track_caller]
fn library(name: &str) -> PathBuf {
    let program = std::env::current_exe().unwrap();
    let file = std::env::consts::DLL_PREFIX.to_owned() + name + std::env::consts::DLL_SUFFIX;
    let folders = program.ancestors().skip(1).take(2);
    let mut found = folders.map(|folder| folder.join(&file)).filter(|path| path.exists());
    found.next().unwrap_or_else(|| panic!("{file} was not built"))
}

fn drawn(
    plugins: &Plugins,
    name: &str,
    size: &str,
    given: &[(&str, f64)],
) -> Result<Drawn, String> {
    let mut request = request(name);
    request.size = size.parse().unwrap();
    for (name, value) in given {
        request.parameters.insert(Name::new(name).unwrap(), *value);
    }
    plugins.draw(&request, &|_| None).map_err(said)
}

#[test]
fn a_panic_is_an_error_and_the_plugin_is_asked_again() {
    let library = library("panics");
    let plugins = plugins(&library);
    for (how, said) in [
        (0.0, "plugin `panics`: this plugin draws nothing"),
        (1.0, "plugin `panics`: it failed: the island is closed"),
        (2.0, "plugin `panics`: it failed: 440 mm is no width"),
        (3.0, "plugin `panics`: it failed: it panicked"),
        (4.0, "plugin `panics`: it failed: the plugin has no parameter `what`"),
    ] {
        assert_eq!(drawn(&plugins, "panics", "440x400", &[("how", how)]).unwrap_err(), said);
    }
    drop(plugins);
    assert!(!stays(&library));
}

#[test]
fn hexagons_are_drawn_at_both_ends() {
    let plugins = plugins(&library("hexagons"));
    // Rows of two and one; three rows of five and three of four between them.
    for (size, count) in [("250x250", 3), ("600x600", 27)] {
        let drawn = drawn(&plugins, "hexagons", size, &[]).unwrap();
        assert_eq!(drawn.drawn_by, "hexagons 1.0.0 (pitch 110 mm)");
        let pattern = arrange(&drawn.layout, size.parse().unwrap()).unwrap();
        assert_eq!(pattern.compartments().len(), count, "{size}");
    }
    assert_eq!(
        drawn(&plugins, "hexagons", "440x400", &[("pitch", 40.0)]).unwrap_err(),
        "plugin `hexagons`: `pitch` is 40, and lies between 80 and 200"
    );
}

/// A pattern that nobody tested is rated below those whose rating follows from the mechanics.
#[test]
fn plugins_are_rated_below_the_built_in_layouts() {
    let plugins = plugins(&library("hexagons"));
    let mut compared = 0;
    for built_in in files::BUILT_IN_LAYOUTS {
        let layout = files::read_layout(built_in.text).value.unwrap();
        for made in &layout.sizes {
            let drawn = drawn(&plugins, "hexagons", &made.size.to_string(), &[]).unwrap();
            let rated = drawn.layout.made(made.size).unwrap().max_user_weight;
            assert!(rated <= made.max_user_weight, "{} at {}", built_in.name, made.size);
            compared += 1;
        }
    }
    assert!(compared > 10, "{compared}");
}

#[test]
fn relief_rings_take_the_measured_spacing_and_no_default() {
    let plugins = plugins(&library("relief_rings"));
    let request = request("relief-rings");
    let fault = plugins.draw(&request, &|_| None).unwrap_err();
    assert_eq!(fault.kind.by(), LayoutErrorBy::Asker);
    assert!(
        matches!(fault.kind, PluginFaultKind::NotGiven { ref parameter, .. } if parameter.as_str() == "spacing")
    );
    let measured = |spacing: f64| {
        move |measure| (measure == BodyMeasure::SeatBoneSpacing).then(|| Length::from_mm(spacing))
    };
    let isle = |spacing| {
        let drawn = plugins.draw(&request, &measured(spacing)).unwrap();
        let pattern = arrange(&drawn.layout, request.size).unwrap();
        let isle = pattern.by_id("isle").unwrap();
        pattern.area(isle).to_mm2()
    };
    // 30 mm more between the bones is a strip of 30 mm, as deep as bone and margins: 86 mm.
    // Lengths are written to a tenth of a micrometre.
    assert!((isle(130.0) - isle(100.0) - 30.0 * 86.0).abs() < 0.1);
}
