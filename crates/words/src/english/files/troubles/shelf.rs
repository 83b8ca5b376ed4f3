//! English: why files are not read or written.

use case::{Doing, NoFile, Said, ShelfError, Why};

use super::said;

/// Why a file was not read, or files were not written, and what to do.
pub(super) fn about(error: &ShelfError) -> Said {
    if error.doing == Doing::Read { unread(error) } else { unwritten(error) }
}

/// Why a file was not read.
fn unread(error: &ShelfError) -> Said {
    let shown = format!("`{}`", error.name);
    match &error.why {
        Why::NotFound | Why::LinkToNothing => said(format!("there is no file {shown}"), ""),
        Why::NotAllowed => said(format!("{shown} may not be read by this user"), ""),
        Why::NotAFile(NoFile::Folder) => said(format!("{shown} is a folder, not a file"), ""),
        Why::NotAFile(_) => said(format!("{shown} is no ordinary file, so it was not read"), ""),
        Why::TooLarge { .. } => said(
            format!("{shown} is larger than 1 MB, so it was not read"),
            "layout, cell and client files have a few thousand bytes; is this the right file?",
        ),
        why => said(format!("{shown} cannot be read: {}", reason(why)), ""),
    }
}

/// Why files were not written.
fn unwritten(error: &ShelfError) -> Said {
    let shown = format!("`{}`", error.name);
    let failed = match &error.why {
        Why::Changed | Why::Gone => said(
            format!("{shown} was changed by somebody else meanwhile; nothing was written"),
            "look at what was changed, then do it again",
        ),
        Why::ThereAlready => said(
            format!("{shown} is there already and was left as it is"),
            "choose another name, or move that file away first",
        ),
        Why::ReadOnlyFile => said(
            format!("cannot write {shown}: the file is read-only"),
            "whoever set it so wants it kept; make it writable, or take a copy",
        ),
        Why::OtherOwner => said(
            format!("cannot write {shown}: the file belongs to somebody else"),
            "let its owner do it: written by you it would become yours",
        ),
        Why::HardLinked { names } => said(
            format!(
                "cannot write {shown}: the file has {names} names, and the others would keep the old text"
            ),
            "remove the other names, or take a copy",
        ),
        why => said(format!("cannot write {shown}: {}", reason(why)), ""),
    };
    if error.not_undone.is_empty() {
        return failed;
    }
    let changed = error.not_undone.join("`, `");
    Said { message: format!("{}; changed all the same: `{changed}`", failed.message), ..failed }
}

/// Says in plain words why a shelf refuses.
pub(in crate::english) fn reason(why: &Why) -> String {
    match why {
        Why::NotFound => "there is no such folder".to_owned(),
        Why::NotAllowed => "this user may not write there".to_owned(),
        Why::NotOfThisShelf => "it lies outside the folder of the clients".to_owned(),
        Why::TooLarge { .. } | Why::TooLargeHere => {
            "the file becomes larger than is allowed here".to_owned()
        }
        Why::NotAFile(NoFile::Folder) => "a folder has that name".to_owned(),
        Why::NotAFile(_) => "that name is no ordinary file's".to_owned(),
        Why::NotAFolder => "a part of the path is not a folder".to_owned(),
        Why::LinkToNothing => "it is a link to a file that is not there".to_owned(),
        Why::Changed | Why::Gone => "it was changed meanwhile".to_owned(),
        Why::ThereAlready => "a file has that name already".to_owned(),
        Why::Twice => "two outputs would have this name".to_owned(),
        Why::ReadOnlyFile => "the file is read-only".to_owned(),
        Why::OtherOwner => "the file belongs to somebody else".to_owned(),
        Why::HardLinked { .. } => "the file has other names".to_owned(),
        Why::ReadOnlyDisk => "the disk is read-only".to_owned(),
        Why::DiskFull => "the disk is full".to_owned(),
        Why::Locked => "another program keeps the folder locked".to_owned(),
        Why::System(words) => words.clone(),
    }
}
