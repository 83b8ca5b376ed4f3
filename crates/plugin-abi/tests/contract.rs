//! The contract does not move: sizes, offsets, and the C header made from it.

use std::mem::{offset_of, size_of};

use plugin_abi::{SeatwrightAnswer1, SeatwrightParameter1, SeatwrightPlugin1, SeatwrightRequest1};

#[test]
#[cfg(target_pointer_width = "64")]
fn sizes_and_offsets_are_pinned() {
    assert_eq!(size_of::<SeatwrightParameter1>(), 56);
    assert_eq!(offset_of!(SeatwrightParameter1, least), 24);
    assert_eq!(offset_of!(SeatwrightParameter1, standard), 40);
    assert_eq!(offset_of!(SeatwrightParameter1, measure), 48);
    assert_eq!(offset_of!(SeatwrightParameter1, flags), 52);
    assert_eq!(size_of::<SeatwrightRequest1>(), 32);
    assert_eq!(offset_of!(SeatwrightRequest1, width_mm), 8);
    assert_eq!(offset_of!(SeatwrightRequest1, values), 24);
    assert_eq!(size_of::<SeatwrightAnswer1>(), 24);
    assert_eq!(offset_of!(SeatwrightAnswer1, text), 8);
    assert_eq!(offset_of!(SeatwrightAnswer1, length), 16);
    assert_eq!(size_of::<SeatwrightPlugin1>(), 64);
    assert_eq!(offset_of!(SeatwrightPlugin1, abi), 0);
    assert_eq!(offset_of!(SeatwrightPlugin1, size), 4);
    assert_eq!(offset_of!(SeatwrightPlugin1, name), 8);
    assert_eq!(offset_of!(SeatwrightPlugin1, parameter_count), 32);
    assert_eq!(offset_of!(SeatwrightPlugin1, parameters), 40);
    assert_eq!(offset_of!(SeatwrightPlugin1, pattern), 48);
    assert_eq!(offset_of!(SeatwrightPlugin1, release), 56);
}

const HEADER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/include/seatwright_plugin.h");

/// The header as it follows from the source.
fn header() -> String {
    let mut config = cbindgen::Config {
        language: cbindgen::Language::C,
        include_guard: Some("SEATWRIGHT_PLUGIN_H".into()),
        header: Some(
            "/* The contract between Seatwright and a plugin, version 1.\n\
             \x20* Made from crates/plugin-abi/src/lib.rs: do not edit; run the tests of plugin-abi with\n\
             \x20* REWRITE_HEADER=1 instead. Export this one function:\n\
             \x20*\n\
             \x20*     const SeatwrightPlugin1 *seatwright_plugin(void);\n\
             \x20*/"
                .into(),
        ),
        no_includes: true,
        sys_includes: vec!["stdint.h".into()],
        cpp_compat: true,
        documentation_style: cbindgen::DocumentationStyle::C99,
        style: cbindgen::Style::Type,
        usize_is_size_t: true,
        ..cbindgen::Config::default()
    };
    config.export.exclude = vec!["SYMBOL".into()];
    config.export.include = [
        "SeatwrightParameter1",
        "SeatwrightRequest1",
        "SeatwrightAnswer1",
        "SeatwrightPlugin1",
        "SeatwrightEntry",
    ]
    .map(String::from)
    .to_vec();
    let source = concat!(env!("CARGO_MANIFEST_DIR"), "/src/lib.rs");
    let bindings = cbindgen::Builder::new().with_config(config).with_src(source).generate();
    let mut text = Vec::new();
    bindings.expect("the contract can be written in C").write(&mut text);
    String::from_utf8(text).expect("the header is UTF-8")
}

#[test]
fn the_header_is_current() {
    let wanted = header();
    let there = std::fs::read_to_string(HEADER).unwrap_or_default();
    if there != wanted && std::env::var_os("REWRITE_HEADER").is_some() {
        std::fs::write(HEADER, &wanted).expect("the header can be written");
    }
    // Rewritten or not, it was not current: the run that rewrites fails too.
    assert!(there == wanted, "{HEADER} is not current: run with REWRITE_HEADER=1 and commit it");
}
