//! A plugin for tests of the host: it panics, in the way that its parameter says.
//!
//! The other misbehaviours are a few lines of C each, beside the tests; a panic is Rust's own.

use plugin_sdk::{Description, Parameter, Plugin, Refusal, Request};

struct Panics;

impl Plugin for Panics {
    fn describe() -> Description {
        Description { name: "panics", version: "1.0.0", about: "For tests: it panics." }
    }

    fn parameters() -> Vec<Parameter> {
        vec![Parameter::new("how", "0 refuses, 1 to 4 panic", "", 0.0..=4.0, 0.0)]
    }

    fn pattern(request: &Request) -> Result<String, Refusal> {
        match request.value("how") as u32 {
            0 => Err(Refusal::new("this plugin draws nothing")),
            1 => panic!("the island\nis closed"),
            2 => panic!("{} mm is no width", request.width_mm),
            3 => std::panic::panic_any(3_u8),
            _ => Ok(request.value("what").to_string()),
        }
    }
}

plugin_sdk::export!(Panics);
