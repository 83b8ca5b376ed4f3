//! The kept corpora of the fuzzers, replayed: what once went wrong does not again.

use std::fs;
use std::path::Path;

#[path = "../../../../tests/fuzz/bodies.rs"]
mod bodies;

#[test]
fn what_fuzzers_are_fed_with_holds() {
    let corpora = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/fuzz/corpus");
    for (name, body) in bodies::ALL {
        let files = fs::read_dir(corpora.join(name)).unwrap();
        let texts: Vec<Vec<u8>> =
            files.map(|entry| fs::read(entry.unwrap().path()).unwrap()).collect();
        assert!(!texts.is_empty(), "{name}");
        for text in texts {
            let body = |text: &[u8]| {
                let held = std::panic::catch_unwind(|| body(text));
                assert!(held.is_ok(), "{name}: {:?}", String::from_utf8_lossy(text));
            };
            body(&text);
            // Cut short, and with a byte of it another: as a slip of a hand leaves it.
            for at in (0..text.len()).step_by(text.len() / 24 + 1) {
                body(&text[..at]);
                let mut other = text.clone();
                other[at] ^= 0x15;
                body(&other);
            }
        }
    }
}
