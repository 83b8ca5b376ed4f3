//! The child goes with its parent, even where the parent is killed and the plugin never looks up.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::built::{faulty, is_alive, stays};

/// Runs the test's own program as a parent that asks the plugin, and kills it in between.
fn killed_while(before: &str) {
    let built = faulty(before);
    let program = env!("CARGO_BIN_EXE_plugin-child");
    let mut parent = Command::new(program)
        .arg("ask")
        .arg(&built.path)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    wait_for_child(&built.path);
    parent.kill().unwrap();
    parent.wait().unwrap();
    assert!(!stays(&built.path), "the child outlived its parent: {before}");
}

/// Waits until there is a second process: the parent names the library in its own words too.
fn wait_for_child(library: &Path) {
    let start = Instant::now();
    let started = || {
        let processes = std::fs::read_dir("/proc").into_iter().flatten().flatten();
        processes.into_iter().any(|process| {
            let line = std::fs::read(process.path().join("cmdline")).unwrap_or_default();
            let line = String::from_utf8_lossy(&line).into_owned();
            line.contains(&*library.to_string_lossy()) && line.contains(plugin_host::CHILD_ARGUMENT)
        })
    };
    while !started() {
        assert!(start.elapsed() < Duration::from_secs(10), "no child was started");
        std::thread::sleep(Duration::from_millis(5));
    }
    assert!(is_alive(library));
    // It is in the plugin by now, or about to be: both must end well.
    std::thread::sleep(Duration::from_millis(50));
}

#[test]
fn a_child_that_computes_goes_with_its_parent() {
    killed_while("#define BEFORE for (;;) {}");
}

#[test]
fn a_child_that_waits_goes_with_its_parent() {
    killed_while("#include <unistd.h>\n#define BEFORE for (;;) sleep(1)");
}

/// In a container the program is often the first process, whose number is 1.
#[test]
fn the_first_process_of_a_container_may_be_the_parent() {
    let built = faulty("");
    let output = Command::new("unshare")
        .args(["--user", "--map-root-user", "--pid", "--fork", "--mount-proc"])
        .arg(env!("CARGO_BIN_EXE_plugin-child"))
        .arg("ask")
        .arg(&built.path)
        .output();
    let Ok(output) = output else { return };
    let (said, complaint) =
        (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    // Where the system lets nobody make a container, nothing can be said.
    if complaint.contains("unshare") {
        return;
    }
    assert_eq!(said, "answered\n", "{complaint}");
}
