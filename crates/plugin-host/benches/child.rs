//! What the child costs: its start, one pattern, two hundred patterns; and the same in-process,
//! which is the peer to compare with.
//!
//! `cargo bench -p plugin-host`; needs `cc`.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use divan::Bencher;
use plugin_host::{Isolation, Limits, Running};

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

fn started(isolation: &Isolation) -> Running {
    Running::start(plugin(), isolation, Limits::default()).expect("the plugin starts")
}

fn draw(running: &mut Running, times: u32) -> usize {
    let ask = |at: u32| {
        let width = 400.0 + f64::from(at % 100);
        running.pattern((width, 400.0), &[450.0, 420.0]).expect("the plugin draws").len()
    };
    (0..times).map(ask).sum()
}

#[divan::bench]
fn start_of_the_child() -> usize {
    started(&child()).description().parameters.len()
}

#[divan::bench(args = [1, 200])]
fn patterns_in_the_child(bencher: Bencher, times: u32) {
    let mut running = started(&child());
    bencher.bench_local(|| draw(&mut running, times));
}

#[divan::bench(args = [1, 200])]
fn patterns_in_process(bencher: Bencher, times: u32) {
    let mut running = started(&Isolation::InProcess);
    bencher.bench_local(|| draw(&mut running, times));
}
