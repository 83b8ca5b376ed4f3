//! `demo`: the papers of an invented client.

use std::path::PathBuf;

use case::{Client, Date, Entry, Finding};
use casework::{Edition, OpenCase, Wanted};
use sheets::Paper;
use words::Begun;

use crate::arguments::{Demo, Invented, PluginOptions};
use crate::failure::Failure;
use crate::outputs;
use crate::outside::Outside;
use crate::say;
use crate::setting::Setting;
use crate::written;

/// The invented clients' files.
pub(super) const fn text(who: Invented) -> &'static str {
    match who {
        Invented::Adult => include_str!("../../demo/client.toml"),
        Invented::Child => include_str!("../../demo/child.toml"),
        Invented::Wide => include_str!("../../demo/wide.toml"),
    }
}

/// Writes the demo client's papers, as of the day of its last check, and says what to look at.
pub(crate) fn run(arguments: &Demo, setting: Setting) -> Result<(), Failure> {
    let client = casework::client_text("demo.toml".to_owned(), text(arguments.who).to_owned())?;
    let outside = Outside::new(&PluginOptions::default());
    let case = OpenCase::of(outside.surroundings(), client)?;
    let on = setting.date.unwrap_or_else(|| last_day(&case.client.value));
    let terminal = setting.terminal;
    let edition = Edition {
        language: say::language(),
        on,
        paper: Paper::A4,
        large_print: false,
        client_in_code: false,
    };
    let of_client = case.papers(edition)?;
    let wanted = Wanted { pictures: true, outlines: false };
    let outputs =
        outputs::in_folder(&arguments.out, casework::export(&of_client.papers.made, wanted)?);
    outputs::are_apart(&[], &outputs)?;
    let names: String = outputs.iter().map(|it| format!("  {}\n", it.path.display())).collect();
    let paths: Vec<PathBuf> = outputs.iter().map(|it| it.path.clone()).collect();
    outputs::all(&outside, outputs)?;
    let since: Vec<Finding> = of_client.since_recorded.into_iter().map(Finding::Since).collect();
    let words = next(arguments, case.client.value.code.as_str(), &names);
    written::tell(terminal, paths.iter().map(PathBuf::as_path), (&since, None), &words)
}

/// The day of the last entry in the record, so that every demo writes the same papers.
fn last_day(client: &Client) -> Date {
    let day = client.record.last().map(Entry::on);
    day.expect("the demo client has a record")
}

/// What was written, and what to look at.
fn next(arguments: &Demo, code: &str, files: &str) -> String {
    let at = |name: &str| arguments.out.join(name).display().to_string();
    let [setup, fill, home] = ["setup-card.pdf", "fill-card.pdf", "take-home.pdf"].map(at);
    let first = [setup.as_str(), fill.as_str(), home.as_str()];
    say::language().begun(&Begun::Demo { code, files, first }) + "\n"
}
