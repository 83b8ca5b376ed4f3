//! How long the program takes as a whole process: medians, and as ratios to `--version`, which is
//! what starting and ending a process costs here.
#![allow(clippy::print_stdout, reason = "a bench tells its figures")]

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Runs of each case; odd, so that the median is one of them.
const RUNS: usize = 21;

/// What is measured: a name, the words, and the most that we want it to take.
const CASES: [(&str, &[&str], Option<u64>); 4] = [
    ("version", &["--version"], None),
    ("pattern, ten compartments", &["pattern", "curved-ten", "--size", "440x400"], Some(60)),
    ("all papers, SVG and PDF", &["print", "client.toml", "--out", "papers"], Some(80)),
    ("all papers, PNG too", &["print", "client.toml", "--out", "papers", "--png"], Some(500)),
];

fn main() {
    let dir = tempfile::tempdir().expect("there is a folder for temporary files");
    let client = include_str!("../demo/client.toml");
    fs::write(dir.path().join("client.toml"), client).expect("a temporary folder can be written");
    let mut times = CASES.map(|_| Vec::with_capacity(RUNS));
    // The cases take turns, so that a busy moment of the machine falls on all of them.
    for _ in 0..RUNS {
        for ((_, words, _), times) in CASES.iter().zip(&mut times) {
            times.push(timed(dir.path(), words));
        }
    }
    let medians = times.map(median);
    println!("{:28} {:>9} {:>7} {:>8}", "", "median", "ratio", "wanted");
    for ((name, _, wanted), median) in CASES.iter().zip(&medians) {
        let ratio = median.as_secs_f64() / medians[0].as_secs_f64();
        let wanted = wanted.map(|most| format!("{most} ms")).unwrap_or_default();
        println!("{name:28} {:>6.1} ms {ratio:>7.1} {wanted:>8}", median.as_secs_f64() * 1e3);
    }
}

/// Returns how long one run takes.
fn timed(folder: &Path, words: &[&str]) -> Duration {
    let mut command = Command::new(env!("CARGO_BIN_EXE_seatwright"));
    command.args(words).current_dir(folder).stdout(Stdio::null());
    let start = Instant::now();
    let status = command.status().expect("the program starts");
    let time = start.elapsed();
    assert!(status.success(), "{words:?} failed");
    time
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}
