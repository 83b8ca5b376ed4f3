//! What children cost: a description, one pattern, twenty patterns; and the same in-process, which
//! is the peer to compare with.
//!
//! `cargo bench -p plugin-host`; needs `cc`.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use cushion::{Length, Name, Size};
use divan::Bencher;
use plugin_host::{DrawRequest, Isolation, Limits, Places, Plugins};

fn main() {
    divan::main();
}

/// The example plugin in C, built once.
fn plugin() -> &'static Path {
    static BUILT: OnceLock<PathBuf> = OnceLock::new();
    BUILT.get_or_init(|| {
        let here = Path::new(env!("CARGO_MANIFEST_DIR"));
        let library = std::env::temp_dir().join("seatwright-bench-leg-front.so");
        let status = Command::new("cc")
            .args(["-shared", "-fPIC", "-O2", "-o"])
            .arg(&library)
            .arg(here.join("../../plugins/leg-front/leg-front.c"))
            .arg("-I")
            .arg(here.join("../plugin-abi/include"))
            .status();
        assert!(status.is_ok_and(|status| status.success()), "cc builds the plugin");
        library
    })
}

fn child() -> Isolation {
    Isolation::Child { program: env!("CARGO_BIN_EXE_plugin-child").into() }
}

fn plugins(isolation: Isolation) -> Plugins {
    let places = Places { named: vec![plugin().to_owned()], folders: Vec::new() };
    Plugins::new(places, isolation, Limits::default())
}

fn draw(plugins: &Plugins, times: u32) -> usize {
    let ask = |at: u32| {
        let size = Size::new(Length::from_mm(400.0 + f64::from(at % 100)), Length::from_mm(400.0));
        let of = |(name, mm)| (Name::new(name).expect("a name"), mm);
        let request = DrawRequest {
            name: Name::new("leg-front").expect("a name"),
            size: size.expect("a size"),
            parameters: [("thigh-left", 450.0), ("thigh-right", 420.0)].map(of).into(),
        };
        plugins.draw(&request, &|_| None).expect("the plugin draws").text.len()
    };
    (0..times).map(ask).sum()
}

#[divan::bench]
fn description_from_a_child() -> usize {
    plugins(child()).describe(plugin()).expect("the plugin starts").parameters.len()
}

/// Each pattern has a child of its own.
#[divan::bench(args = [1, 20])]
fn patterns_from_children(bencher: Bencher, times: u32) {
    let plugins = plugins(child());
    bencher.bench_local(|| draw(&plugins, times));
}

#[divan::bench(args = [1, 20])]
fn patterns_in_process(bencher: Bencher, times: u32) {
    let plugins = plugins(Isolation::InProcess);
    bencher.bench_local(|| draw(&plugins, times));
}
