//! `check`: what is to be said about files of ours.

use std::path::Path;

use case::question::{Question, Unused};
use case::{Date, FileKind};
use casework::{FileRemarks, OpenCase, PROGRAM, Whose, WorkError};
use files::report::StandingReport;
use files::{Known, Remark, Severity, report};
use words::{CallFault, FileFault};

use crate::arguments::Check;
use crate::failure::Failure;
use crate::outside::Outside;
use crate::plugins;
use crate::remarks;
use crate::say;
use crate::setting::Setting;

/// A file, as far as it could be checked.
struct Checked {
    file: FileRemarks,
    kind: Option<FileKind>,
    /// Answers that change nothing, with why not.
    unused: Vec<(Question, Unused)>,
    /// How the fitting stands, of a client's file from which it can be told.
    standing: Option<StandingReport>,
    /// Whether a plugin that it names is at fault.
    plugin: bool,
    /// Why it could not be read or what it names not asked for, if so.
    unread: Option<Failure>,
}

/// Checks every file, and says all of it before it fails.
pub(crate) fn run(arguments: &Check, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let mut checked: Vec<Checked> =
        arguments.files.iter().map(|path| check(path, on, &outside)).collect();
    let mut stands = None;
    if let Some(before) = &arguments.against {
        let [own] = &mut checked[..] else {
            return Err(Failure::call(&CallFault::AgainstOneLayout));
        };
        stands = revision(own, before, arguments.cell.as_deref(), &outside)?;
    }
    if checked.iter().all(|it| it.kind.is_some_and(|kind| kind != FileKind::Client)) {
        plugins::nothing_to_set(&arguments.plugins)?;
    }
    if terminal.is_json() {
        terminal.answer(&to_json(&checked))?;
        return verdict(&checked).map_err(Failure::told);
    }
    for it in &checked {
        if let Some(unread) = &it.unread {
            terminal.say(|color| unread.to_words(color));
            continue;
        }
        terminal.say(|color| remarks::to_words(&it.file, color));
        if !it.file.is_wrong() {
            let kind = it.kind.map_or("", |own| say::language().file_kind(own));
            terminal.answer(&format!(
                "{}: {kind}, {}\n",
                it.file.path,
                remarks::count(&it.file)
            ))?;
            if let Some(stands) = &stands {
                terminal.answer(&format!("  {stands}\n"))?;
            }
            for note in say::language().unused_answers(&it.unused) {
                terminal.answer(&format!("  {note}\n"))?;
            }
            if let Some(standing) = &it.standing {
                terminal.answer(&format!("  {}\n", standing.text()))?;
            }
        }
    }
    verdict(&checked)
}

/// Adds what is to be said of the revision of a layout beside an earlier one; returns how it stands
/// where that is nothing.
fn revision(
    own: &mut Checked,
    before: &str,
    cell: Option<&str>,
    outside: &Outside,
) -> Result<Option<String>, Failure> {
    if own.file.is_wrong() {
        return Ok(None);
    }
    if own.kind != Some(FileKind::Layout) {
        return Err(Failure::call(&CallFault::AgainstALayout));
    }
    let surroundings = outside.surroundings();
    // Neither is drawn for one size: any will do to ask for them.
    let mut now = surroundings.layout_file(&own.file.path)?;
    let mut before = surroundings.layout(before, cushion::Size::USUAL)?;
    let cell = surroundings.cell(cell)?;
    let (was, is) = (before.value.revision, now.value.revision);
    let found = casework::revision_finding(&mut now, &mut before, &cell.value)?;
    Ok(match found {
        Some(remark) => {
            own.file.remarks.push(remark);
            None
        }
        None => Some(say::language().revision_stands(was, is)),
    })
}

/// Reads a file, and everything that it names.
fn check(path: &Path, on: Date, outside: &Outside) -> Checked {
    let shown = path.display().to_string();
    let text = match outside.surroundings().text(&shown) {
        Ok(text) => text,
        Err(unread) => {
            let remarks = vec![unread.as_remark(0..0)];
            let unread = Failure::from(unread);
            let file = FileRemarks { path: shown, text: String::new(), remarks };
            let unused = Vec::new();
            let (plugin, unread, standing) = (false, Some(unread), None);
            return Checked { file, kind: None, unused, standing, plugin, unread };
        }
    };
    let known = Known { today: Some(on), printable: &sheets::is_printable };
    let files::Checked { kind, mut remarks, unused } = files::check(&text, &known);
    let (mut plugin, mut unread, mut standing) = (false, None, None);
    let right = !remarks.iter().any(|remark| remark.severity == Severity::Error);
    if right && kind == Some(FileKind::Client) {
        let case = OpenCase::open(outside.surroundings(), &shown);
        standing = case.as_ref().ok().map(|case| {
            let own = case.standing(on);
            StandingReport::new(own, say::about(case).standing(own))
        });
        let (more, error) = what_it_leads_to(&shown, &text, case, on);
        remarks.extend(more);
        plugin = error.as_ref().is_some_and(|error| error.whose == Whose::SourceAuthor);
        unread = error.filter(WorkError::is_of_a_setting).map(Failure::from);
    }
    let file = FileRemarks { path: shown, text, remarks };
    Checked { file, kind, unused, standing, plugin, unread }
}

/// What is wrong with what a right client's file names, or with a plan made from it, in remarks
/// and as it came.
fn what_it_leads_to(
    name: &str,
    text: &str,
    case: Result<OpenCase, WorkError>,
    on: Date,
) -> (Vec<Remark>, Option<WorkError>) {
    let planned = case.and_then(|case| case.with_changes(on).map(drop));
    let Err(error) = planned else { return (Vec::new(), None) };
    if let Some(file) = error.file.as_ref().filter(|file| file.path == name) {
        return (file.remarks.clone(), Some(error));
    }
    let at = |table, key| files::place_of_value(text, table, key);
    let place = match error.whose {
        Whose::Clinician => at("weight", "kg").or_else(|| at("weight", "lb")),
        _ => at("cushion", "layout"),
    };
    let place = place.unwrap_or(0..text.find('\n').unwrap_or(text.len()));
    (vec![error.as_remark(place)], Some(error))
}

/// Fails where a file cannot be used; says so once more, after all remarks.
fn verdict(checked: &[Checked]) -> Result<(), Failure> {
    let wrong: Vec<&Checked> = checked.iter().filter(|it| it.file.is_wrong()).collect();
    let Some(first) = wrong.first() else { return Ok(()) };
    let all_unread = wrong.iter().all(|it| it.unread.is_some());
    let kind = match &first.unread {
        Some(unread) if all_unread => unread.whose(),
        _ if wrong.iter().all(|it| it.plugin) => Whose::SourceAuthor,
        _ => Whose::Writer,
    };
    let counted = remarks::count(&first.file);
    let fault = match checked {
        [one] => FileFault::CannotBeUsed { file: &one.file.shown(), remarks: &counted },
        _ => FileFault::SomeCannotBeUsed { wrong: wrong.len(), files: checked.len() },
    };
    let failure = Failure::new(kind, say::language().file_fault(&fault));
    // Of a single file that could not be read, everything has been said.
    Err(if all_unread && checked.len() == 1 { failure.told() } else { failure })
}

/// The same in JSON.
fn to_json(checked: &[Checked]) -> String {
    let files: Vec<report::CheckedFile<'_>> = checked
        .iter()
        .map(|it| report::CheckedFile {
            path: &it.file.path,
            text: &it.file.text,
            kind: it.kind,
            remarks: &it.file.remarks,
            unused: &it.unused,
            standing: it.standing.clone(),
        })
        .collect();
    report::check(PROGRAM, &files, &|finding| say::language().about_text(finding), say::language())
}
