//! The example plugin in C, built as its first lines say.

use case::{BodyMeasure, PluginFaultKind};
use cushion::{Length, Name, Pattern, arrange};

use crate::built::{Built, build, header, plugins, request, said};

fn built() -> Built {
    build(include_str!("../../../../plugins/leg-front/leg-front.c"), &header())
}

fn drawn(size: &str, left: f64, right: f64) -> Result<Pattern, PluginFaultKind> {
    let built = built();
    let mut request = request("leg-front");
    request.size = size.parse().unwrap();
    for (name, value) in [("thigh-left", left), ("thigh-right", right)] {
        request.parameters.insert(Name::new(name).unwrap(), value);
    }
    let drawn = plugins(&built.path).draw(&request, &|_| None).map_err(|fault| fault.kind)?;
    Ok(arrange(&drawn.layout, request.size).unwrap())
}

#[test]
fn the_front_ends_before_each_knee() {
    for (size, left, right) in [("250x250", 310.0, 285.0), ("600x550", 560.0, 620.0)] {
        let pattern = drawn(size, left, right).unwrap();
        assert_eq!(pattern.compartments().len(), 6);
        let front = |x: f64| {
            let on_side = pattern.nodes().iter().filter(|node| node.x * x > 0.0);
            on_side.map(|node| node.y).fold(0.0, f64::max)
        };
        let depth = pattern.size().depth().to_mm();
        let expected = |thigh: f64| (thigh - 50.0).min(depth);
        // The corners are rounded with 30 mm: the middle of the arc is 9 mm behind the edge.
        assert!((front(-1.0) - expected(left)).abs() < 9.0);
        assert!((front(1.0) - expected(right)).abs() < 9.0);
    }
}

#[test]
fn measures_of_the_client_set_the_parameters() {
    let built = built();
    let measured = |measure| match measure {
        BodyMeasure::ThighDepthLeft => Some(Length::from_mm(450.0)),
        BodyMeasure::ThighDepthRight => Some(Length::from_mm(420.0)),
        _ => None,
    };
    let plugins = plugins(&built.path);
    let drawn = plugins.draw(&request("leg-front"), &measured).unwrap();
    assert!(drawn.text.contains("front-right = [220, 370"), "{}", drawn.text);
    let fault = plugins.draw(&request("leg-front"), &|_| None).unwrap_err();
    assert_eq!(
        said(fault),
        "plugin `leg-front`: `thigh-left` (thigh depth on the client's left, measured) must be measured or given; no default is taken"
    );
}

#[test]
fn legs_that_do_not_fit_are_refused_in_words() {
    assert!(matches!(drawn("440x400", 420.0, 430.0), Err(PluginFaultKind::Refused(_))));
    assert!(matches!(drawn("440x400", 460.0, 300.0), Err(PluginFaultKind::Refused(_))));
}
