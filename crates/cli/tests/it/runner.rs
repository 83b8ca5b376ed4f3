//! Runs the real program in a folder of its own.

use std::ffi::OsStr;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use tempfile::TempDir;

/// A temporary folder in which the program runs.
pub(crate) struct TestDir(TempDir);

impl TestDir {
    /// Returns an empty folder.
    pub(crate) fn new() -> Self {
        Self(tempfile::tempdir().unwrap())
    }

    /// Puts a file into it.
    pub(crate) fn with(self, name: &str, bytes: impl AsRef<[u8]>) -> Self {
        fs::write(self.0.path().join(name), bytes).unwrap();
        self
    }

    /// The folder.
    pub(crate) fn path(&self) -> &Path {
        self.0.path()
    }

    /// The text of a file in it.
    pub(crate) fn read(&self, name: &str) -> String {
        fs::read_to_string(self.0.path().join(name)).unwrap()
    }

    /// The names of a client's papers, `x/K-17` and `tag.svg`, whatever their plan.
    pub(crate) fn papers_of(&self, client: &str, document: &str) -> Vec<String> {
        let wanted = format!("{client}-{document}");
        self.names().into_iter().filter(|name| without_plan(name) == wanted).collect()
    }

    /// The text of the only paper of that name.
    #[track_caller]
    pub(crate) fn paper(&self, client: &str, document: &str) -> String {
        let names = self.papers_of(client, document);
        assert_eq!(names.len(), 1, "{client} {document}: {names:?} of {:?}", self.names());
        self.read(&names[0])
    }

    /// The bytes of a file in it; none of a folder.
    pub(crate) fn bytes(&self, name: &str) -> Option<Vec<u8>> {
        fs::read(self.0.path().join(name)).ok()
    }

    /// All files in it and in the folders within, by their paths, in order.
    pub(crate) fn names(&self) -> Vec<String> {
        let mut names = Vec::new();
        let mut folders = vec![self.0.path().to_owned()];
        while let Some(folder) = folders.pop() {
            for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
                let name = path.strip_prefix(self.0.path()).unwrap().to_str().unwrap().to_owned();
                if path.is_dir() {
                    names.push(name + "/");
                    folders.push(path);
                } else {
                    names.push(name);
                }
            }
        }
        names.sort();
        names
    }

    /// The program, to be run in the folder, on the first of March 2026 by UTC.
    pub(crate) fn command(&self, words: &[impl AsRef<OsStr>]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_seatwright"));
        // 2026-03-01T00:00:00Z, by `date -u -d 2026-03-01 +%s`.
        command.args(words).current_dir(self.0.path()).env("SOURCE_DATE_EPOCH", "1772323200");
        command.env_remove("NO_COLOR");
        command
    }

    /// Runs the program.
    pub(crate) fn run(&self, words: &[&str]) -> Ran {
        Ran::from(self.command(words).output().unwrap())
    }
}

/// The name of a paper without the number of its plan and its check word.
pub(crate) fn without_plan(name: &str) -> String {
    let parts = || {
        let (client, rest) = name.split_once("-plan-")?;
        let (number, rest) = rest.split_once('-')?;
        let (word, document) = rest.split_once('-')?;
        (number.parse::<u32>().is_ok() && word.len() == 4).then_some((client, document))
    };
    parts().map_or(name.to_owned(), |(client, document)| format!("{client}-{document}"))
}

/// What a run of the program showed.
pub(crate) struct Ran {
    pub(crate) stdout: String,
    pub(crate) stderr: String,
    pub(crate) code: Option<i32>,
}

impl From<Output> for Ran {
    fn from(output: Output) -> Self {
        Self {
            stdout: String::from_utf8(output.stdout).unwrap(),
            stderr: String::from_utf8(output.stderr).unwrap(),
            code: output.status.code(),
        }
    }
}

impl Ran {
    /// Asserts that all went well, without a word on stderr; returns stdout.
    #[track_caller]
    pub(crate) fn done(self) -> String {
        assert_eq!((self.code, &*self.stderr), (Some(0), ""), "stdout: {}", self.stdout);
        self.stdout
    }

    /// Asserts that all went well, with a word on stderr; returns both texts.
    #[track_caller]
    pub(crate) fn warned(self) -> (String, String) {
        assert_eq!(self.code, Some(0), "stderr: {}", self.stderr);
        assert_ne!(self.stderr, "", "stdout: {}", self.stdout);
        (self.stdout, self.stderr)
    }

    /// Asserts that it failed with a code, without a word on stdout; returns stderr.
    #[track_caller]
    pub(crate) fn failed(self, code: i32) -> String {
        assert_eq!((self.code, &*self.stdout), (Some(code), ""), "stderr: {}", self.stderr);
        assert!(!self.stderr.contains('\u{1b}'), "colour in a pipe: {}", self.stderr);
        self.stderr
    }
}
