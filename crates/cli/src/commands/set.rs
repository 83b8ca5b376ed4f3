//! `set`: changes keys of a client's file, all of them or none.

use case::Trouble;
use casework::{Change, FileRemarks, PROGRAM, WorkError};
use files::EditError;
use words::{Advice, Done};

use crate::arguments::{PluginOptions, Set};
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::remarks;
use crate::say;
use crate::terminal::Terminal;

/// Changes the keys in the order of the command line: values first, then moves, then what is taken
/// away.
pub(crate) fn run(arguments: &Set, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&PluginOptions::default());
    let shown = name(&arguments.client);
    let before = outside.surroundings().text(&shown)?;
    let text = edited(arguments, &before).map_err(|error| refused(&shown, error))?;
    let remarks = files::read_client(&text).remarks;
    // Values that need each other may be given in any order, so this is asked at the end.
    let worse = files::new_errors(&files::read_client(&before).remarks, &remarks);
    if !worse.is_empty() {
        let file = FileRemarks { path: shown, text, remarks: worse };
        return Err(Failure::from(WorkError::wrong_file(file)).advise(&Advice::GiveTheRest));
    }
    let change = Change::of(&shown, before.as_bytes(), text.clone().into_bytes());
    outside.shelf().put(&[change])?;
    let file = FileRemarks { path: shown, text, remarks };
    if terminal.is_json() {
        let text = (file.text.as_str(), file.remarks.as_slice());
        return terminal.answer(&files::report::set(PROGRAM, &file.path, text, &say::text));
    }
    let remarks = remarks::count(&file);
    let changed = Done::Changed { file: &file.path, remarks: &remarks };
    terminal.answer(&(say::language().done(&changed) + "\n"))
}

/// The text with all changes made.
fn edited(arguments: &Set, before: &str) -> Result<String, EditError> {
    let mut text = before.to_owned();
    for (key, value) in &arguments.answers {
        text = files::set(&text, key, value)?.text;
    }
    for (entry, place) in &arguments.order {
        text = files::reorder(&text, entry, *place)?.text;
    }
    for key in &arguments.remove {
        text = files::remove(&text, key)?.text;
    }
    Ok(text)
}

/// Why nothing is changed: at the place where the text would be wrong, where there is one.
fn refused(shown: &str, error: EditError) -> Failure {
    let file = shown.to_owned();
    match error {
        EditError::Wrong { text, remark } => {
            let file = FileRemarks { path: file, text, remarks: vec![*remark] };
            Failure::from(WorkError::wrong_file(file)).advise(&Advice::NothingWritten)
        }
        EditError::Unreadable(_) => WorkError::file(Trouble::Edit { file, error }).into(),
        _ => WorkError::asked(Trouble::Edit { file, error }).into(),
    }
}
