//! What a plugin cannot do to the computer, and what asking one leaves of the host as it was.

use std::collections::BTreeMap;
use std::path::Path;

use crate::built::{faulty, plugins, request};

/// Asks a plugin that gives up unless `allowed` holds in C.
#[track_caller]
fn holds(include: &str, allowed: &str) {
    let built = faulty(&format!("{include}\n#define BEFORE if (!({allowed})) abort()"));
    plugins(&built.path).draw(&request("faulty"), &|_| None).unwrap();
}

#[test]
fn it_works_in_a_folder_of_its_own_that_is_removed() {
    // The plugin cannot write into files, so it makes names that tell.
    let code = "#include <stdio.h>\n#include <unistd.h>\n#include <fcntl.h>\n#include <sys/stat.h>\nstatic int made(void) { return mkdir(\"inner\", 0700) == 0 && close(open(\"inner/left\", O_CREAT | O_WRONLY, 0600)) == 0; }";
    holds(code, "made()");
    let here = std::env::current_dir().unwrap();
    assert!(!here.join("inner").exists());
    let scratch = std::fs::read_dir(std::env::temp_dir()).unwrap();
    let mut scratch = scratch.map(|entry| entry.unwrap().path());
    assert!(!scratch.any(|path| path.join("inner/left").exists()), "it was not removed");
}

#[test]
fn it_gains_no_rights_by_starting_programs() {
    let code = "#include <sys/prctl.h>";
    holds(code, "prctl(PR_GET_NO_NEW_PRIVS, 0, 0, 0, 0) == 1");
}

/// Whether the kernel has landlock, which says nothing where it is switched off.
fn has_landlock() -> bool {
    let source = "#include <unistd.h>\n#define BEFORE if (syscall(444, 0, 0, 1) < 6) abort()";
    let built = faulty(source);
    plugins(&built.path).draw(&request("faulty"), &|_| None).is_ok()
}

#[test]
fn where_the_kernel_has_landlock_nothing_outside_is_changed() {
    if !has_landlock() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let kept = folder.path().join("kept");
    std::fs::write(&kept, "x").unwrap();
    let at = |name: &str| format!("\"{}\"", folder.path().join(name).display());
    let includes = "#include <fcntl.h>\n#include <unistd.h>\n#include <errno.h>\n#include <sys/stat.h>\n#include <sys/socket.h>\n#include <netinet/in.h>\n#include <signal.h>";
    for refused in [
        format!("open({}, O_CREAT | O_WRONLY, 0600) < 0 && errno == EACCES", at("new")),
        format!("open({}, O_WRONLY) < 0 && errno == EACCES", at("kept")),
        format!("open({}, O_WRONLY | O_TRUNC) < 0 && errno == EACCES", at("kept")),
        format!("unlink({}) < 0 && errno == EACCES", at("kept")),
        format!("mkdir({}, 0700) < 0 && errno == EACCES", at("new")),
        format!("rename({}, {}) < 0 && errno == EACCES", at("kept"), at("new")),
        "kill(getppid(), SIGTERM) < 0 && errno == EPERM".to_owned(),
        "connected() < 0 && errno == EACCES".to_owned(),
        // What is allowed still is: else the others would hold for a wrong reason.
        format!("open({}, O_RDONLY) >= 0", at("kept")),
    ] {
        let connected = "static int connected(void) { struct sockaddr_in to = { .sin_family = AF_INET, .sin_port = htons(9) }; return connect(socket(AF_INET, SOCK_STREAM, 0), (struct sockaddr *)&to, sizeof to); }";
        holds(&format!("{includes}\n{connected}"), &refused);
    }
    assert_eq!(std::fs::read_to_string(&kept).unwrap(), "x");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

/// What the system says of this process that a plugin, or keeping one, could have changed.
fn attributes() -> BTreeMap<String, String> {
    let about = std::fs::read_to_string("/proc/self/status").unwrap();
    let lines = about.lines().filter_map(|line| line.split_once(':'));
    let kept = ["Umask", "SigIgn", "SigCgt", "NoNewPrivs", "Seccomp", "Uid", "CapEff"];
    let mut all: BTreeMap<String, String> = lines
        .filter(|(name, _)| kept.contains(name))
        .map(|(name, value)| (name.to_owned(), value.to_owned()))
        .collect();
    let link = |path: &str| std::fs::read_link(path).unwrap().display().to_string();
    all.insert("folder".to_owned(), link("/proc/self/cwd"));
    all.insert("limits".to_owned(), std::fs::read_to_string("/proc/self/limits").unwrap());
    let open = std::fs::read_dir("/proc/self/fd").unwrap().count();
    all.insert("open files".to_owned(), open.to_string());
    all
}

/// The same once nothing changes any more: the thread that read a child's words lets go of its pipe
/// a moment after the answer.
fn settled() -> BTreeMap<String, String> {
    let mut all = attributes();
    let mut alike = 0;
    while alike < 5 {
        std::thread::sleep(std::time::Duration::from_millis(20));
        let now = attributes();
        alike = if now == all { alike + 1 } else { 0 };
        all = now;
    }
    all
}

#[test]
fn the_hosts_own_process_stays_as_it_was() {
    let code = "#include <sys/stat.h>\n#include <unistd.h>\n#include <signal.h>\n#define BEFORE umask(0777); if (chdir(\"/\")) abort(); signal(SIGTERM, SIG_IGN)";
    let built = faulty(code);
    let ask = |path: &Path| plugins(path).draw(&request("faulty"), &|_| None).map(drop);
    // The first question may start what stays, such as a handler of the standard library.
    ask(&built.path).unwrap();
    let before = settled();
    assert!(before.len() > 8, "{before:?}");
    ask(&built.path).unwrap();
    ask(Path::new("/nowhere")).unwrap_err();
    assert_eq!(before, settled());
}
