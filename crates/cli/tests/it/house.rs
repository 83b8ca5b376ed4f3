//! The rules of the house: who may use whom, and what every file and crate must have.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Our crates, and those of ours that each may use.
const ARROWS: [(&str, &[&str]); 16] = [
    ("cushion", &[]),
    ("case", &["cushion"]),
    ("words", &["cushion", "case"]),
    ("mechanics", &["cushion", "case"]),
    ("fitting", &["cushion", "case", "mechanics"]),
    ("files", &["cushion", "case"]),
    ("templates", &["cushion"]),
    ("sheets", &["cushion", "case", "words", "templates"]),
    ("plugin-abi", &[]),
    ("plugin-sdk", &["plugin-abi"]),
    ("plugin-host", &["plugin-abi", "files", "case", "cushion"]),
    (
        "casework",
        &["cushion", "case", "words", "mechanics", "fitting", "files", "sheets", "templates"],
    ),
    ("shelf", &["casework"]),
    ("chairside", &["cushion", "case", "words", "sheets", "casework"]),
    (
        "cli",
        &[
            "cushion",
            "case",
            "words",
            "mechanics",
            "fitting",
            "files",
            "sheets",
            "templates",
            "casework",
            "shelf",
            "chairside",
            "plugin-host",
        ],
    ),
    ("testkit", &["cushion", "case", "files", "casework"]),
];

/// Crates of others that only some of ours may use, since they would let in what those must not
/// know: file formats, the terminal, foreign code.
const RESERVED: [(&str, &[&str]); 7] = [
    ("serde", &["files"]),
    ("serde_json", &["files"]),
    ("toml", &["files"]),
    ("toml_edit", &["files"]),
    ("clap", &["cli"]),
    ("annotate-snippets", &["cli"]),
    ("libloading", &["plugin-host"]),
];

/// The crates that may know files, the environment, clocks or other processes; the others keep to
/// the long list of what clippy refuses.
const IMPURE: [&str; 3] = ["cli", "plugin-host", "shelf"];

/// What no other crate may name outside of its tests, benches and examples.
const OUTSIDE: [&str; 8] = [
    "std::fs",
    "std::env",
    "std::net",
    "std::process",
    "std::os",
    "SystemTime",
    "Instant",
    "::now()",
];

/// The most lines that a function of the program may have.
const FUNCTION_LIMIT: usize = 60;

/// Functions that may be longer, with the reason.
const LONG_FUNCTIONS: [(&str, &str); 0] = [];

/// The lines of a manifest's table.
fn table<'a>(manifest: &'a str, name: &str) -> Vec<&'a str> {
    let header = format!("[{name}]");
    manifest
        .lines()
        .skip_while(|line| line.trim() != header)
        .skip(1)
        .take_while(|line| !line.starts_with('['))
        .filter(|line| !line.trim().is_empty() && !line.starts_with('#'))
        .collect()
}

/// The names of the crates in a manifest's table.
fn keys<'a>(manifest: &'a str, name: &str) -> Vec<&'a str> {
    let end = |c: char| c == '.' || c == ' ' || c == '=';
    table(manifest, name).into_iter().filter_map(|line| line.split(end).next()).collect()
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The manifests of all crates, by the crate's name, which is its folder's.
fn manifests() -> BTreeMap<String, String> {
    let folders = fs::read_dir(root().join("crates")).unwrap().map(|entry| entry.unwrap().path());
    folders
        .map(|folder| {
            let manifest = fs::read_to_string(folder.join("Cargo.toml")).unwrap();
            let name = folder.file_name().unwrap().to_str().unwrap().to_owned();
            assert!(
                table(&manifest, "package").contains(&&*format!("name = \"{name}\"")),
                "{name}"
            );
            (name, manifest)
        })
        .collect()
}

/// All our Rust files, by their path from the root.
fn sources() -> BTreeMap<String, String> {
    let root = root();
    let mut files = BTreeMap::new();
    let mut folders = vec![root.join("crates")];
    folders.extend(Some(root.join("plugins")).filter(|plugins| plugins.exists()));
    while let Some(folder) = folders.pop() {
        for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
            if path.is_dir() && !path.ends_with("target") {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let name = path.strip_prefix(&root).unwrap().display().to_string();
                files.insert(name, fs::read_to_string(path).unwrap());
            }
        }
    }
    assert!(files.len() > 50, "only {} files were found", files.len());
    files
}

#[test]
fn arrows_between_our_crates_are_those_of_the_table() {
    let manifests = manifests();
    let table: BTreeMap<&str, &[&str]> = ARROWS.into_iter().collect();
    assert_eq!(
        manifests.keys().map(String::as_str).collect::<Vec<_>>(),
        table.keys().copied().collect::<Vec<_>>(),
        "each crate needs its line in the table"
    );
    for (name, manifest) in &manifests {
        for used in keys(manifest, "dependencies") {
            let ours = table.contains_key(used);
            assert!(!ours || table[&**name].contains(&used), "{name} must not use {used}");
        }
        assert!(keys(manifest, "build-dependencies").is_empty(), "{name} has a build script");
    }
}

#[test]
fn crates_of_others_stay_where_they_belong() {
    for (name, manifest) in manifests() {
        let used = keys(&manifest, "dependencies");
        for (reserved, allowed) in RESERVED {
            assert!(
                !used.contains(&reserved) || allowed.contains(&&*name),
                "{name} uses {reserved}"
            );
        }
    }
}

#[test]
fn pure_crates_name_no_file_clock_or_environment() {
    let mut seen = 0;
    for (path, text) in sources() {
        let Some((name, inner)) = path.strip_prefix("crates/").and_then(|it| it.split_once('/'))
        else {
            continue;
        };
        if IMPURE.contains(&name) || !inner.starts_with("src/") {
            continue;
        }
        seen += 1;
        for word in OUTSIDE {
            let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
            let named = code.into_iter().find(|line| line.contains(word));
            assert!(named.is_none(), "{path} names {word}: {named:?}");
        }
        let lets = ["(clippy::disallowed_methods", "(clippy::disallowed_types"];
        assert!(!lets.iter().any(|own| text.contains(own)), "{path} lets itself off the list");
    }
    assert!(seen > 100, "only {seen} files were looked at");
}

/// Functions of which the system's library has several, and takes the one for the processor's
/// instructions: their last bit differs between machines, those of `libm` have one.
const BY_PROCESSOR: [&str; 18] = [
    ".exp()",
    ".exp2()",
    ".exp_m1()",
    ".ln()",
    ".ln_1p()",
    ".log2()",
    ".log10()",
    ".powf(",
    ".sin()",
    ".cos()",
    ".tan()",
    ".sin_cos()",
    ".asin()",
    ".acos()",
    ".atan()",
    ".atan2(",
    ".hypot(",
    ".cbrt()",
];

#[test]
fn what_counts_cells_does_not_depend_on_the_processor() {
    let mut seen = 0;
    for (path, text) in sources() {
        let counts = ["cushion", "mechanics", "fitting"]
            .iter()
            .any(|name| path.starts_with(&format!("crates/{name}/src/")));
        if !counts || path.contains("tests") {
            continue;
        }
        seen += 1;
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for line in code.lines().filter(|line| !line.trim_start().starts_with("//")) {
            let named = BY_PROCESSOR.iter().find(|word| line.contains(**word));
            assert!(named.is_none(), "{path}: {named:?} in `{line}`; take that of libm");
        }
    }
    assert!(seen > 80, "only {seen} files were looked at");
}

/// A crate's own list takes the place of the one at the root, so only those have one that need it.
#[test]
fn clippy_refuses_files_clocks_and_environment_in_pure_crates() {
    let all = fs::read_to_string(root().join("clippy.toml")).unwrap();
    for path in [
        "std::fs::File",
        "std::fs::read_to_string",
        "std::fs::write",
        "std::env::var",
        "std::path::Path::exists",
        "std::time::Instant",
        "std::time::SystemTime",
        "jiff::ZonedDateTime::now",
    ] {
        assert!(all.contains(&format!("path = \"{path}\"")), "{path} is not refused");
    }
    for (name, _) in ARROWS {
        let own = root().join("crates").join(name).join("clippy.toml");
        assert_eq!(own.exists(), IMPURE.contains(&name), "{name}");
    }
}

#[test]
fn every_crate_inherits_lints_and_versions() {
    for (name, manifest) in manifests() {
        // The crates that speak C state their own lints, beside the reason.
        if !name.starts_with("plugin-") {
            assert_eq!(table(&manifest, "lints"), ["workspace = true"], "{name}");
        }
        assert!(manifest.contains("[lints"), "{name}");
        for line in table(&manifest, "dependencies") {
            assert!(line.contains("workspace = true"), "{name}: `{line}` has a version of its own");
        }
    }
}

#[test]
fn every_crate_is_on_the_developers_map() {
    let map = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    for (name, _) in ARROWS {
        assert!(map.contains(&format!("\n| `{name}` |")), "{name} is missing in DEVELOPERS.md");
    }
}

/// The texts in a line of a program that have a capital letter before a small one, as words that a
/// person reads have; comments are left out.
fn printed_words(line: &str) -> Vec<&str> {
    let code = line.split("//").next().unwrap_or_default();
    let is_printed = |text: &&str| {
        let letters: Vec<char> = text.chars().collect();
        letters.windows(2).any(|pair| pair[0].is_uppercase() && pair[1].is_lowercase())
    };
    code.split('"').skip(1).step_by(2).filter(is_printed).collect()
}

#[test]
fn documents_have_no_words_of_their_own() {
    let documents = sources().into_iter().filter(|(name, _)| name.contains("sheets/src/documents"));
    let mut count = 0;
    for (name, text) in documents {
        count += 1;
        let found: Vec<&str> = text.lines().flat_map(printed_words).collect();
        assert!(found.is_empty(), "{name}: the language says {found:?}");
    }
    assert!(count > 10, "{count}");
    assert_eq!(
        printed_words("frame.heading(2, \"Take care\", &HEADING)?; // \"Note\""),
        ["Take care"]
    );
    assert!(printed_words("frame.take(height, \"the drawings\")?;").is_empty());
}

/// What the parser of the command line says stays English, as `--help` is; all else is said by a
/// language.
#[test]
fn the_program_has_no_sentences_of_its_own() {
    const OF_THE_PARSER: [&str; 7] = [
        "/arguments.rs",
        "/compartment.rs",
        "/counts.rs",
        "/exit_codes.rs",
        "/failure.rs",
        "/plugins.rs",
        "/today.rs",
    ];
    let is_of_it = |name: &str| OF_THE_PARSER.iter().any(|own| name.ends_with(own));
    let own = sources().into_iter().filter(|(name, _)| name.contains("cli/src/"));
    let mut count = 0;
    for (name, text) in own.filter(|(name, _)| !is_of_it(name)) {
        count += 1;
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        let found: Vec<&str> = code.lines().flat_map(sentences).collect();
        assert!(found.is_empty(), "{name}: the language says {found:?}");
    }
    assert!(count > 30, "{count}");
    assert_eq!(sentences("call(\"the bag is counted twice\");"), ["the bag is counted twice"]);
    assert!(sentences("let name = \"K-17 {size}\"; // \"a bag is there\"").is_empty());
}

/// What a line says in three words or more one after the other, but not what is for developers, or to
/// be typed.
fn sentences(line: &str) -> Vec<&str> {
    let code = line.split("//").next().unwrap_or_default();
    let is_said = |text: &&str| {
        let words: Vec<&str> = text.split(' ').collect();
        let is_word = |own: &&str| !own.is_empty() && own.chars().all(|c| c.is_ascii_lowercase());
        words.windows(3).any(|three| three.iter().all(is_word))
    };
    let said = code.split('"').skip(1).step_by(2).filter(is_said);
    let is_excused = ["expect(", "reason =", "cargo build"].iter().any(|own| code.contains(own));
    if is_excused { Vec::new() } else { said.collect() }
}

#[test]
fn every_file_says_what_it_is() {
    for (path, text) in sources() {
        assert!(text.starts_with("//! "), "{path} does not begin with `//! `");
    }
}

/// A sentence that goes on on the next line leaves no gap in what is read.
#[test]
fn no_sentence_has_a_gap() {
    for (path, text) in sources() {
        for (at, line) in text.lines().enumerate().filter(|(_, line)| !line.contains("//")) {
            let words = line.trim_start();
            let gap = |(at, _): (usize, &str)| {
                let (before, after) = (&words[..at], words[at..].trim_start());
                before.ends_with(|own: char| own.is_lowercase() || ",;".contains(own))
                    && after.starts_with(char::is_lowercase)
            };
            // `\n` before a gap is a line of a text in a test.
            let found = words.contains('"')
                && !words.contains("\\n")
                && words.match_indices("    ").any(gap);
            assert!(!found, "{path}:{}: {line}", at + 1);
        }
    }
}

#[test]
fn every_function_fits_a_screen() {
    let mut long = Vec::new();
    // A table of cases in a test is data, and as long as there are cases.
    let program = sources().into_iter().filter(|(path, _)| !path.contains("/tests/"));
    for (path, text) in program {
        long.extend(
            functions(&text)
                .into_iter()
                .filter(|&(_, lines)| lines > FUNCTION_LIMIT)
                .map(|(name, lines)| (format!("{path}: {name}"), lines)),
        );
    }
    for (name, lines) in &long {
        let allowed = LONG_FUNCTIONS.iter().any(|(allowed, _)| allowed == name);
        assert!(allowed, "{name} has {lines} lines");
    }
    for (allowed, _) in LONG_FUNCTIONS {
        assert!(long.iter().any(|(name, _)| name == allowed), "{allowed} is short now");
    }
}

/// Names and lengths of the functions in a file that is laid out by rustfmt: a function ends at
/// the first closing brace that stands as far in as its first line.
fn functions(text: &str) -> Vec<(String, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut found = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let Some((before, after)) = line.split_once("fn ") else { continue };
        let words = ["pub", "const", "unsafe", "async", "extern", "\"C\""];
        let opens =
            before.split_whitespace().all(|word| words.contains(&word) || word.starts_with("pub("));
        if !opens || line.ends_with(';') {
            continue;
        }
        let indent = &line[..line.len() - line.trim_start().len()];
        let end = format!("{indent}}}");
        // A method without a body, over several lines.
        let closes = format!("{indent})");
        let head = lines[at + 1..].iter().find(|line| line.starts_with(&closes));
        if !line.ends_with(['{', '}']) && head.is_some_and(|line| line.ends_with(';')) {
            continue;
        }
        let one_line = line.ends_with('}');
        let length = if one_line {
            1
        } else {
            1 + lines[at..].iter().position(|line| *line == end).unwrap_or(0)
        };
        let name = after.split(['(', '<']).next().unwrap_or(after);
        found.push((name.to_owned(), length));
    }
    found
}

#[test]
fn functions_are_measured() {
    let text = "impl X {\n    pub(crate) fn a<T>(\n        x: T,\n    ) {\n    }\n    fn b() {}\n    fn d(\n        x: u8,\n    ) -> u8;\n}\nfn c();\n";
    assert_eq!(functions(text), [("a".to_owned(), 4), ("b".to_owned(), 1)]);
}
