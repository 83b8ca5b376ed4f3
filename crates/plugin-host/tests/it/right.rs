//! What the host does with plugins that are right.

use std::thread;

use case::{LayoutError, LayoutErrorBy, LayoutRequest, LayoutSource, PluginFaultKind};
use cushion::Name;
use plugin_host::{Isolation, Limits, Places, Plugins};

use crate::built::{child, faulty, plugins, request, said, short, stays};

#[test]
fn a_plugin_answers_for_many_sizes() {
    let built = faulty("");
    let plugins = plugins(&built.path);
    for size in ["250x250", "431.8x406.4", "610x550"] {
        let mut request = request("faulty");
        request.size = size.parse().unwrap();
        let drawn = plugins.draw(&request, &|_| None).unwrap();
        assert_eq!(drawn.layout.sizes.len(), 1);
        let pattern = cushion::arrange(&drawn.layout, request.size).unwrap();
        assert_eq!(pattern.compartments().len(), 2);
        assert!(!stays(&built.path), "nothing is kept between questions");
    }
}

/// Each thread that asks ends at once, and takes no other's child with it.
#[test]
fn threads_that_come_and_go_are_all_answered() {
    for isolation in [child(), Isolation::InProcess] {
        let built = faulty("");
        let places = Places { named: vec![built.path.clone()], folders: Vec::new() };
        let plugins = Plugins::new(places, isolation, Limits::default());
        let source: &dyn LayoutSource = &plugins;
        let ask = || source.layout(&named("plugin:faulty"), &|_| None).map(|drawn| drawn.text);
        let texts: Vec<_> = thread::scope(|scope| {
            let asked: Vec<_> = (0..12).map(|_| scope.spawn(ask)).collect();
            asked.into_iter().map(|one| one.join().unwrap().unwrap()).collect()
        });
        assert!(texts.windows(2).all(|pair| pair[0] == pair[1]));
    }
}

/// What a client's file asks of all sources.
fn named(name: &str) -> LayoutRequest {
    let size = "440x400".parse().unwrap();
    LayoutRequest { name: name.to_owned(), size, parameters: Default::default() }
}

#[test]
fn the_source_knows_its_plugins_only() {
    let built = faulty("");
    let folder = built.path.parent().unwrap().to_owned();
    let places = Places { named: Vec::new(), folders: vec![folder] };
    let plugins = Plugins::new(places, child(), short());
    let ask = |name: &str| plugins.layout(&named(name), &|_| None);
    let drawn = ask("plugin:faulty").unwrap();
    assert_eq!((&*drawn.origin, &*drawn.drawn_by.unwrap()), ("plugin faulty 1.0", "faulty 1.0"));
    assert_eq!(ask("faulty").unwrap_err(), LayoutError::OtherSource { name: "faulty".to_owned() });
    for (name, said) in [
        ("plugin:other", "plugin `other`: no plugin of this name was found"),
        ("plugin:No", "plugin `No`: this is no plugin's name"),
    ] {
        let error = ask(name).unwrap_err();
        assert!(error.is_unknown_name());
        assert_eq!(words::ENGLISH.no_layout(&error).message, said);
    }
    let fault = plugins.draw(&request("other"), &|_| None).unwrap_err();
    assert!(matches!(fault.kind, PluginFaultKind::NotFound { .. }));
}

#[test]
fn the_source_says_whose_move_it_is() {
    let ask = |before: &str, settings: &[(&str, f64)]| {
        let built = faulty(before);
        let set = settings.iter().map(|(name, value)| (Name::new(name).unwrap(), *value));
        let plugins = plugins(&built.path).with_settings(set.collect());
        plugins.layout(&named("plugin:faulty"), &|_| None).unwrap_err()
    };
    let crash = ask("#define BEFORE abort()", &[]);
    assert_eq!(crash.by(), LayoutErrorBy::Source);
    assert!(!crash.is_unknown_name());
    let unknown = ask("", &[("pitch", 90.0)]);
    assert_eq!(unknown.by(), LayoutErrorBy::Asker);
    assert_eq!(
        words::ENGLISH.no_layout(&unknown).message,
        "plugin `faulty`: it has no parameter `pitch`"
    );
}

#[test]
fn a_plugin_of_another_name_is_not_taken_for_it() {
    let built = faulty("#define NAME \"somebody-else\"");
    let fault = plugins(&built.path).draw(&request("faulty"), &|_| None).unwrap_err();
    assert_eq!(said(fault), "plugin `faulty`: it calls itself `somebody-else`");
}

#[test]
fn parameters_that_it_does_not_have_are_refused() {
    let built = faulty("");
    let mut request = request("faulty");
    request.parameters.insert(Name::new("pitch").unwrap(), 90.0);
    let fault = plugins(&built.path).draw(&request, &|_| None).unwrap_err();
    assert_eq!(fault.kind.by(), LayoutErrorBy::Asker);
    assert_eq!(said(fault), "plugin `faulty`: it has no parameter `pitch`");
}

#[test]
fn in_process_gives_the_same_text() {
    let built = faulty("");
    let draw = |isolation| {
        let places = Places { named: vec![built.path.clone()], folders: Vec::new() };
        let plugins = Plugins::new(places, isolation, Limits::default());
        plugins.draw(&request("faulty"), &|_| None).unwrap().text
    };
    assert_eq!(draw(Isolation::InProcess), draw(child()));
}

#[test]
fn arguments_of_people_start_no_child() {
    let arguments = ["seatwright", "pattern", "row-six"].map(Into::into);
    assert!(plugin_host::child_main(arguments.into_iter()).is_none());
}
