//! What the host does with plugins that are right.

use cushion::{LayoutSource, Name};
use plugin_host::{FaultKind, Isolation, Limits, Places, Plugins, Running, Whose};

use crate::built::{child, faulty, plugins, request, short};

#[test]
fn one_child_answers_for_many_sizes() {
    let built = faulty("");
    let plugins = plugins(&built.path);
    for size in ["250x250", "431.8x406.4", "610x550"] {
        let mut request = request("faulty");
        request.size = size.parse().unwrap();
        let drawn = plugins.draw(&request, &|_| None).unwrap();
        assert_eq!(drawn.layout.sizes.len(), 1);
        let pattern = cushion::arrange(&drawn.layout, request.size).unwrap();
        assert_eq!(pattern.compartments().len(), 2);
    }
}

#[test]
fn the_source_knows_its_plugins_only() {
    let built = faulty("");
    let folder = built.path.parent().unwrap().to_owned();
    let places = Places { named: Vec::new(), folders: vec![folder] };
    let plugins = Plugins::new(places, child(), short());
    assert!(plugins.layout(&request("faulty")).is_some_and(|layout| layout.is_ok()));
    assert!(plugins.layout(&request("other")).is_none());
    let fault = plugins.draw(&request("other"), &|_| None).unwrap_err();
    assert!(matches!(fault.kind, FaultKind::NotFound { .. }));
    assert_eq!(fault.to_string(), "plugin `other`: no plugin of this name was found");
}

#[test]
fn a_plugin_of_another_name_is_not_taken_for_it() {
    let built = faulty("#define NAME \"somebody-else\"");
    let fault = plugins(&built.path).draw(&request("faulty"), &|_| None).unwrap_err();
    assert_eq!(fault.to_string(), "plugin `faulty`: it calls itself `somebody-else`");
}

#[test]
fn parameters_that_it_does_not_have_are_refused() {
    let built = faulty("");
    let mut request = request("faulty");
    request.parameters.insert(Name::new("pitch").unwrap(), 90.0);
    let fault = plugins(&built.path).draw(&request, &|_| None).unwrap_err();
    assert_eq!(fault.kind.whose(), Whose::Asker);
    assert_eq!(fault.to_string(), "plugin `faulty`: it has no parameter `pitch`");
}

#[test]
fn in_process_gives_the_same_text() {
    let built = faulty("");
    let draw = |isolation| {
        let mut running = Running::start(&built.path, &isolation, Limits::default()).unwrap();
        running.pattern((440.0, 400.0), &[]).unwrap()
    };
    assert_eq!(draw(Isolation::InProcess), draw(child()));
}

#[test]
fn arguments_of_people_start_no_child() {
    let arguments = ["seatwright", "pattern", "row-six"].map(Into::into);
    assert!(plugin_host::child_main(arguments.into_iter()).is_none());
}
