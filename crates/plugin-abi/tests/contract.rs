//! The contract does not move: sizes, offsets, and the C header made from it.

#![expect(clippy::disallowed_methods, reason = "it reads the header, and rewrites it where asked")]

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

/// The declaration of what a plugin exports, which follows from no Rust type.
const ENTRY: &str = "#ifdef __cplusplus
extern \"C\"
#endif
// The one function that a plugin exports, of the type SeatwrightEntry.
const SeatwrightPlugin1 *seatwright_plugin(void);
";

/// The header as it follows from the source.
fn header() -> String {
    let mut config = cbindgen::Config {
        language: cbindgen::Language::C,
        include_guard: Some("SEATWRIGHT_PLUGIN_H".into()),
        header: Some(
            "/* The contract between Seatwright and a plugin, version 1.\n\
             \x20* Made from crates/plugin-abi/src/lib.rs: do not edit; run the tests of plugin-abi with\n\
             \x20* REWRITE_HEADER=1 instead.\n\
             \x20*\n\
             \x20* A plugin exports one function, declared at the end. The host calls one function at a\n\
             \x20* time, always from the same thread. No exception may leave a function. Numbers in the\n\
             \x20* text have a decimal point, as printf writes it in the locale C, in which a process\n\
             \x20* starts.\n\
             \x20*\n\
             \x20* A structure of this version is never changed: a later version has new structures with\n\
             \x20* a new number, and every description begins with its version and its size.\n\
             \x20*/"
                .into(),
        ),
        no_includes: true,
        sys_includes: vec!["stdint.h".into()],
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
    let text = String::from_utf8(text).expect("the header is UTF-8");
    let (text, end) = text.rsplit_once("#endif").expect("the include guard ends the header");
    format!("{text}{ENTRY}\n#endif{end}")
}

/// The code of a header without its comments: each structure, and each line outside of them.
fn code(header: &str) -> Vec<String> {
    let lines = header.lines().map(|line| line.split("//").next().unwrap_or_default().trim());
    let mut found = vec![String::new()];
    let mut inside = false;
    for line in lines.filter(|line| !line.is_empty() && !line.starts_with(['*', '/'])) {
        let last = found.last_mut().expect("there is always one");
        *last += line;
        last.push('\n');
        inside = (inside || line.ends_with('{')) && !line.starts_with('}');
        if !inside {
            found.push(String::new());
        }
    }
    found.pop();
    found
}

/// Later versions add structures; what came out with version 1 stands in every later header.
#[test]
fn version_1_is_never_changed() {
    const FROZEN: &str =
        concat!(env!("CARGO_MANIFEST_DIR"), "/../plugin-host/tests/fixtures/version-1");
    let read = |path: String| std::fs::read_to_string(path).expect("the header is there");
    let frozen = code(&read(format!("{FROZEN}/seatwright_plugin.h")));
    let now = code(&read(HEADER.to_owned()));
    let structures = frozen.iter().filter(|part| part.contains("typedef struct"));
    assert_eq!(structures.count(), 4);
    for part in frozen {
        assert!(now.contains(&part), "changed or lost:\n{part}");
    }
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
