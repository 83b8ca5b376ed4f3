//! One plugin for each misbehaviour: one sentence that names it, and nothing is left running.

use std::path::Path;
use std::time::{Duration, Instant};

use case::{LayoutErrorBy, PluginFaultKind};

use crate::built::{Built, faulty, plugins, request, said, stays};

/// Asks a plugin for a pattern and returns the sentence about its fault.
#[track_caller]
fn said_of(path: &Path) -> String {
    let plugins = plugins(path);
    let fault = plugins.draw(&request("faulty"), &|_| None).unwrap_err();
    assert!(fault.kind.by() == LayoutErrorBy::Source, "{fault:?}");
    assert!(words::ENGLISH.plugin_fault(&fault.kind).hint.is_some(), "{fault:?}");
    drop(plugins);
    assert!(!stays(path), "the plugin's process is still there");
    said(fault)
}

#[track_caller]
fn check(before: &str, expected: &str) {
    let built: Built = faulty(before);
    let said = said_of(&built.path);
    let said = said.replace(&built.path.display().to_string(), "FILE");
    assert_eq!(said, expected, "{before}");
}

#[test]
fn crashes() {
    check(
        "#define BEFORE abort()",
        "plugin `faulty`: it crashed (it gave up: out of memory or stack, or by itself)",
    );
    check(
        "#define BEFORE *(volatile int *)8 = 1",
        "plugin `faulty`: it crashed (it used memory that is not its own)",
    );
    check(
        "__attribute__((constructor)) static void start(void) { *(volatile int *)8 = 1; }",
        "plugin `FILE`: it crashed (it used memory that is not its own)",
    );
    check(
        "static volatile int deep(int n) { volatile char room[4096]; room[0] = n; return deep(n + 1) + room[0]; }\n#define BEFORE deep(0)",
        "plugin `faulty`: it crashed (it gave up: out of memory or stack, or by itself)",
    );
}

#[test]
fn endless_work_and_endless_memory() {
    check("#define BEFORE for (;;) {}", "plugin `faulty`: it did not answer within 2 s");
    check(
        "#define BEFORE for (;;) { char *p = malloc(1 << 26); if (!p) abort(); *p = 1; }",
        "plugin `faulty`: it crashed (it gave up: out of memory or stack, or by itself)",
    );
    for stream in ["stdout", "stderr"] {
        check(
            &format!("#define BEFORE for (;;) fputs(\"without end\\n\", {stream})"),
            "plugin `faulty`: it printed more than 8388608 bytes",
        );
    }
    check("#define BEFORE exit(0)", "plugin `faulty`: it ended without an answer");
}

#[test]
fn what_is_no_plugin() {
    check(
        "#define ABI 7",
        "plugin `FILE`: it was built for version 7 of the contract; this program reads version 1",
    );
    check(
        "#define NO_ENTRY",
        "plugin `FILE`: this library is no plugin: it does not export `seatwright_plugin`",
    );
    check(
        "#define SIZE 12",
        "plugin `FILE`: its description breaks the contract: its size is wrong",
    );
    check(
        "#define NAME 0",
        "plugin `FILE`: its description breaks the contract: its name is not a name",
    );
    check(
        "#define NULL_ENTRY",
        "plugin `FILE`: its description breaks the contract: it is null, so it cannot describe itself",
    );
    for null in ["#define PATTERN 0", "#define RELEASE 0"] {
        check(null, "plugin `FILE`: its description breaks the contract: a function is null");
    }
    check(
        "#define PARAMETERS 3",
        "plugin `FILE`: its description breaks the contract: its parameters are null",
    );
    check(
        "#define NAME \"Faulty Plugin\"",
        "plugin `FILE`: its description breaks the contract: its name is not a name",
    );
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("libfaulty.so");
    std::fs::write(&path, "this is not a library").unwrap();
    assert!(said_of(&path).contains("this file cannot be loaded"));
    let nowhere = plugins(&folder.path().join("nowhere.so"));
    let fault = nowhere.draw(&request("faulty"), &|_| None).unwrap_err();
    assert_eq!((fault.kind.by(), fault.kind), (LayoutErrorBy::Asker, PluginFaultKind::NoFile));
}

const PATTERN: &str = "#define NO_PATTERN\n#include <stdlib.h>\n#include <string.h>\n#include \"seatwright_plugin.h\"\nstatic int pattern(const SeatwrightRequest1 *request, SeatwrightAnswer1 *answer)";

#[test]
fn answers_that_are_no_text() {
    check(
        &format!("{PATTERN} {{ return SEATWRIGHT_OK; }}"),
        "plugin `faulty`: its answer is not text",
    );
    check(
        &format!(
            "{PATTERN} {{ char *p = malloc(4); memcpy(p, \"\\xff\\xfe\\0x\", 4); answer->text = p; answer->length = 4; return SEATWRIGHT_OK; }}"
        ),
        "plugin `faulty`: its answer is not text",
    );
    check(
        &format!(
            "{PATTERN} {{ answer->text = strdup(\"short\"); answer->length = 1ull << 62; return SEATWRIGHT_OK; }}"
        ),
        "plugin `faulty`: it answered more than 1048576 bytes",
    );
    check(
        &format!(
            "{PATTERN} {{ char *p = malloc(2 << 20); memset(p, 'x', 2 << 20); answer->text = p; answer->length = 2 << 20; return SEATWRIGHT_OK; }}"
        ),
        "plugin `faulty`: it answered more than 1048576 bytes",
    );
    check(
        &format!(
            "{PATTERN} {{ answer->text = strdup(\"no idea\"); answer->length = 7; return SEATWRIGHT_FAILED; }}"
        ),
        "plugin `faulty`: it failed: no idea",
    );
}

#[test]
fn answers_that_are_no_layout() {
    check(
        &format!(
            "{PATTERN} {{ answer->text = strdup(\"garbage\"); answer->length = 7; return SEATWRIGHT_OK; }}"
        ),
        "plugin `faulty`: its layout is wrong: this cannot be read: key with no value, expected `=`",
    );
    check(
        "#define WIDTH (0.0 / 0.0)",
        "plugin `faulty`: its layout is wrong: a size is width x depth, such as `440x400` in millimetres or `17x16in` in inches",
    );
    check(
        "#define CORNER NAN\n#include <math.h>",
        "plugin `faulty`: its layout is wrong: this is not a finite number",
    );
    check(
        "#define LENGTH 40",
        "plugin `faulty`: its layout is wrong: this cannot be read: invalid basic string, expected `\"`",
    );
    check(
        "#define WIDTH 400",
        "plugin `faulty`: it was asked for 440x400 and answered for 400x400",
    );
    check(
        "#define SECOND \"\"",
        "plugin `faulty`: its layout is wrong: no compartment claims the space around x 110, y 300 mm (at 440x400)",
    );
    check(
        "#define SECOND \"front = { seed = [5, 90], number = 2, words = \\\"w\\\", for = \\\"thigh\\\" }\\n\"",
        "plugin `faulty`: its layout is wrong: this seed lies in the compartment `rear` (at 440x400)",
    );
}

/// It would be taken for the built-in one, by its title on the papers too.
#[test]
fn an_answer_under_another_name_is_refused() {
    let named = |name: &str| {
        format!(
            "#include <stdio.h>\n#include <string.h>\n#define BEFORE char *renamed = \"{name}\"\n#define LENGTH (memcpy(strstr(text, \"\\\"faulty\") + 1, renamed, 6), length)"
        )
    };
    check(&named("rowsix"), "plugin `faulty`: it answered with a layout that is called `rowsix`");
    still_right(&named("faulty"));
}

/// The child has to read the answer first, under its limits, so the program is not held up.
#[test]
fn an_answer_that_takes_for_ever_to_read_is_given_up() {
    let built = faulty("#include \"without_end.h\"");
    let start = Instant::now();
    let fault = plugins(&built.path).draw(&request("faulty"), &|_| None).unwrap_err();
    assert_eq!(fault.kind.by(), LayoutErrorBy::Source);
    // Two seconds for an answer and two for reading it are the tests' limits; the parent reads
    // only what took no longer.
    assert!(start.elapsed() < Duration::from_secs(8), "{fault:?} after {:?}", start.elapsed());
    assert!(!stays(&built.path));
}

/// A fault with what the system allows the plugin, which it finds out by itself.
#[test]
fn files_and_the_environment_are_kept_from_it() {
    still_right(
        "#include <fcntl.h>\n#define BEFORE for (int i = 0; i < 200; i++) if (open(\"/dev/null\", 0) < 0) break; else if (i > 100) abort()",
    );
    still_right(
        "#include <signal.h>\n#include <unistd.h>\n#define BEFORE signal(SIGXFSZ, SIG_IGN); FILE *f = tmpfile(); if (f && write(fileno(f), \"x\", 1) == 1) abort()",
    );
    still_right("extern char **environ;\n#define BEFORE if (environ && *environ) abort()");
}

/// Plugins that misbehave and answer rightly all the same are used.
#[track_caller]
fn still_right(before: &str) {
    let built = faulty(before);
    let plugins = plugins(&built.path);
    let drawn = plugins.draw(&request("faulty"), &|_| None).unwrap();
    assert_eq!(drawn.drawn_by, "faulty 1.0");
    drop(plugins);
    assert!(!stays(&built.path), "the plugin's process is still there");
}

#[test]
fn printing_disturbs_nothing() {
    still_right("#define BEFORE puts(\"ok 5\"); puts(\"hello\"); fflush(stdout)");
    still_right(
        "#define BEFORE for (int i = 0; i < 200000; i++) fputs(\"noise, noise\\n\", stderr)",
    );
}

/// A process that it started is in its group, and does not hold the pipes open either.
#[test]
fn a_process_left_running_goes_with_the_child() {
    still_right("#include <unistd.h>\n#define BEFORE if (fork() == 0) for (;;) sleep(1)");
    check(
        "#include <unistd.h>\n#define BEFORE if (fork() == 0) for (;;) sleep(1); abort()",
        "plugin `faulty`: it crashed (it gave up: out of memory or stack, or by itself)",
    );
}

#[test]
fn a_thread_left_running_goes_with_the_child() {
    still_right(
        "#include <pthread.h>\n#include <unistd.h>\nstatic void *idle(void *x) { for (;;) sleep(1); }\n#define BEFORE pthread_t t; pthread_create(&t, 0, idle, 0)",
    );
}
