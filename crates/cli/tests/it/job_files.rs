//! The job files for a cluster, run as its tasks would be, without the cluster: each task is `sh` with
//! the number that Slurm gives it. How they run under Slurm is tried by hand, see DEVELOPERS.md.

use std::fs;
use std::path::PathBuf;
use std::process::{Command, Output};

use crate::runner::TestDir;

const BODIES: &str = "sex,mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n\
    F,62,375,455\nM,70,380,470\nM,150,600,470\nF,58,350,450\nM,74,385,468\n";

fn begun() -> TestDir {
    let dir = TestDir::new()
        .with("bodies.csv", BODIES)
        .with("mine.toml", include_str!("data/layout.toml"))
        .with("layouts.txt", "row-six\nmine.toml\n");
    fs::create_dir(dir.path().join("out")).unwrap();
    dir
}

/// Runs a task of an array.
fn task(dir: &TestDir, file: &str, number: usize) -> Output {
    let files = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/slurm");
    let mut command = Command::new("sh");
    command.arg(files.join(file)).current_dir(dir.path());
    command.envs([("BODIES", "bodies.csv"), ("LAYOUTS", "layouts.txt"), ("PARTS", "2")]);
    command.envs([("OUT", "out"), ("DAY", "2026-03-01"), ("MORE", "--seed 7")]);
    command.env("SEATWRIGHT", env!("CARGO_BIN_EXE_seatwright"));
    command.env("SLURM_ARRAY_TASK_ID", number.to_string());
    command.output().unwrap()
}

#[track_caller]
fn done(output: &Output) {
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
}

#[test]
fn parts_of_all_layouts_come_together_as_one_run() {
    let dir = begun();
    for number in 0..4 {
        done(&task(&dir, "survey.sbatch", number));
    }
    let parts: Vec<_> = dir.names().into_iter().filter(|own| own.contains("-of-2")).collect();
    assert_eq!(parts.len(), 4, "{parts:?}");
    for (number, layout, name) in [(0, "row-six", "001-row-six"), (1, "mine.toml", "002-mine")] {
        done(&task(&dir, "merge.sbatch", number));
        let one = ["survey", "bodies.csv", "--layout", layout, "--out", "one.csv", "--seed", "7"];
        dir.run(&one).done();
        assert_eq!(dir.read(&format!("out/{name}.csv")), dir.read("one.csv"), "{layout}");
        done(&task(&dir, "review.sbatch", number));
        assert!(dir.read(&format!("out/{name}.review.json")).contains("\"report\": \"review\""));
    }
    assert!(!dir.names().iter().any(|own| own.ends_with(".unfinished")), "{:?}", dir.names());
}

/// A part that is there is left, one that was broken off is finished, and a missing one is an error
/// that writes nothing.
#[test]
fn tasks_may_be_sent_again() {
    let dir = begun();
    done(&task(&dir, "survey.sbatch", 0));
    let part = "out/001-row-six.1-of-2.csv";
    let whole = dir.read(part);
    done(&task(&dir, "survey.sbatch", 0));
    assert_eq!(dir.read(part), whole);
    assert!(!task(&dir, "merge.sbatch", 0).status.success());
    assert!(!dir.names().contains(&"out/001-row-six.csv".to_owned()));
    // Killed after its first row.
    fs::remove_file(dir.path().join(part)).unwrap();
    let rows: Vec<&str> = whole.lines().collect();
    let begun = format!("{}\n{}\n", rows[0], rows[1]);
    fs::write(dir.path().join(format!("{part}.unfinished")), begun).unwrap();
    done(&task(&dir, "survey.sbatch", 0));
    assert_eq!(dir.read(part), whole);
    // A task beyond the list of layouts is told so.
    let beyond = task(&dir, "survey.sbatch", 4);
    assert!(String::from_utf8_lossy(&beyond.stderr).contains("no line 3"));
    assert_eq!(beyond.status.code(), Some(2));
}
