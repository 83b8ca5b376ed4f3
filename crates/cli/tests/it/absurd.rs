//! Numbers and files that nobody means: a plain refusal, never a fault of the program, and nothing
//! of a file that is none of ours is shown.

use std::process::Command;
use std::time::{Duration, Instant};

use crate::fitting::CLIENT;
use crate::runner::TestDir;

/// Words that are no number for anything here.
const NO_NUMBERS: [&str; 8] = ["nan", "-nan", "inf", "-inf", "1e308", "-1e308", "1e999", ""];

#[test]
fn no_number_from_the_command_line_is_a_fault_of_the_program() {
    let dir = TestDir::new().with("T-1.toml", CLIENT);
    for number in NO_NUMBERS {
        let words = [
            format!("adjust T-1.toml --reading left-seat-bone={number}mmHg"),
            format!("adjust T-1.toml --reading left-seat-bone={number}kPa"),
            format!("adjust T-1.toml --under left={number}mm"),
            format!("adjust T-1.toml --under left={number}in"),
            format!("adjust T-1.toml --lower left={number}mm"),
            format!("pattern row-six --size {number}x400"),
            format!("pattern row-six --size 400x{number}in"),
            format!("weigh T-1.toml --batch 50 --grams={number} --division 0.1"),
            format!("weigh T-1.toml --batch 50 --grams 40 --division={number}"),
            format!("contour-test row-six --size 440x400 --forward={number}"),
            format!("predict T-1.toml --cells 1={number}"),
            format!("set T-1.toml weight.kg={number}"),
            format!("set T-1.toml measures.hip_width={number}"),
        ];
        for words in words {
            let all: Vec<&str> = words.split(' ').collect();
            let ran = dir.run(&all);
            assert!(matches!(ran.code, Some(2 | 3)), "{words}: {:?} {}", ran.code, ran.stderr);
            assert!(ran.stderr.len() < 1500, "{words}: {}", ran.stderr);
        }
    }
    assert_eq!(dir.read("T-1.toml"), CLIENT);
}

#[test]
fn very_few_cells_are_told_unsafe_and_are_no_fault() {
    let dir = TestDir::new().with("T-1.toml", CLIENT);
    for cells in [1, 2, 3, 5] {
        let counts = (1..=6).map(|number| format!("{number}={cells}"));
        let words = ["predict", "T-1.toml", "--cells"].map(str::to_owned);
        let words: Vec<String> = words.into_iter().chain(counts).collect();
        let ran = dir.run(&words.iter().map(String::as_str).collect::<Vec<_>>());
        // What is only tried is answered, whatever it would do.
        assert_eq!(ran.code, Some(0), "{cells} cells: {}", ran.stderr);
        assert!(ran.stderr.contains("not safely possible"), "{cells} cells: {}", ran.stderr);
        assert!(ran.stdout.contains("bottomed out"), "{cells} cells: {}", ran.stdout);
    }
}

#[test]
fn a_file_that_is_none_of_ours_is_refused_without_a_line_of_it() {
    const SECRET: &str = "root:x:0:0:root:/root:/bin/bash\npassword = swordfish\n";
    let client = CLIENT.replace("\"row-six\"", "\"./secret.txt\"");
    let cell = CLIENT.replace("size = ", "cell = \"./secret.txt\"\nsize = ");
    let dir = TestDir::new()
        .with("secret.txt", SECRET)
        .with("T-1.toml", CLIENT)
        .with("layout.toml", client)
        .with("cell.toml", cell);
    for words in [
        "pattern secret.txt --size 440x400",
        "pattern row-six --size 440x400 --cell secret.txt",
        "plan secret.txt",
        "plan layout.toml",
        "plan cell.toml",
        "check layout.toml",
        "check cell.toml",
        "print --stock secret.txt --size 440x400 --out papers",
    ] {
        let all: Vec<&str> = words.split(' ').collect();
        for json in [false, true] {
            let mut all = all.clone();
            all.extend(json.then_some("--json"));
            let ran = dir.run(&all);
            assert_eq!(ran.code, Some(3), "{words}: {}", ran.stderr);
            let said = ran.stdout + &ran.stderr;
            assert!(said.contains("it does not say `kind"), "{words}: {said}");
            assert!(!said.contains("swordfish") && !said.contains("root:x"), "{words}: {said}");
        }
    }
}

#[test]
fn a_pipe_or_a_device_is_refused_and_not_waited_for() {
    let dir = TestDir::new().with("T-1.toml", CLIENT);
    let made = Command::new("mkfifo").arg(dir.path().join("pipe.toml")).status().unwrap();
    assert!(made.success());
    let start = Instant::now();
    for words in [
        "pattern pipe.toml --size 440x400",
        "pattern row-six --size 440x400 --cell pipe.toml",
        "plan pipe.toml",
        "check pipe.toml",
        "set pipe.toml weight.kg=70",
        "survey pipe.toml --layout row-six --out survey.csv",
        "pattern /dev/zero --size 440x400",
    ] {
        let all: Vec<&str> = words.split(' ').collect();
        let said = dir.run(&all).failed(2);
        assert!(said.contains("no ordinary file"), "{words}: {said}");
    }
    // Waiting would have no end; a second for each is plenty.
    assert!(start.elapsed() < Duration::from_secs(10), "{:?}", start.elapsed());
}

#[test]
fn a_record_without_end_is_read_and_answered() {
    const WEIGHED: &str =
        "\n[[record]]\nwhat = \"weighing\"\non = 2026-02-20\nby = \"OT\"\nkg = 70\n";
    const FOUND: &str = "\n[[record]]\nwhat = \"adjustment\"\non = 2026-02-20\nby = \"OT\"\n\
        found = [\"under left=27mm\", \"under right=29mm\"]\n";
    let planned = TestDir::new().with("T-1.toml", CLIENT);
    planned.run(&["plan", "T-1.toml", "--record", "--by", "OT", "--date", "2026-02-15"]).done();
    let client = planned.read("T-1.toml");
    let dir = TestDir::new()
        .with("weighed.toml", client.clone() + &WEIGHED.repeat(12_000))
        .with("found.toml", client + &FOUND.repeat(6_000));
    let start = Instant::now();
    for file in ["weighed.toml", "found.toml"] {
        assert_eq!(dir.run(&["check", file]).code, Some(0));
        assert_eq!(dir.run(&["plan", file]).code, Some(0));
        dir.run(&["adjust", file, "--under", "left=25mm", "--under", "right=33mm"]).done();
        // Another weight than the plan was made for is told.
        assert_eq!(dir.run(&["print", file, "--out", "papers"]).code, Some(0));
    }
    // Eight runs of seconds each; learning from all that was ever found would take hours.
    assert!(start.elapsed() < Duration::from_secs(120), "{:?}", start.elapsed());
}
