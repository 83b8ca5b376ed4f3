#![no_main]

#[path = "../bodies.rs"]
#[allow(dead_code, reason = "each fuzzer runs one of them")]
mod bodies;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| bodies::papers(bytes));
