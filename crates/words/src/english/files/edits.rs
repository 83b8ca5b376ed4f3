//! English: how it is said that a file is not edited.

use case::Said;
use case::text::EditError;

use super::{said, texts};

/// Says why a file is not edited.
pub(super) fn about(error: &EditError) -> Said {
    match error {
        EditError::Unreadable(remarks) => Said {
            message: match remarks.first() {
                Some(first) => {
                    let first = texts::about(&first.finding).message;
                    format!("the file cannot be read: {first}")
                }
                None => "the file cannot be read".to_owned(),
            },
            hint: Some("put it right in a text editor first".to_owned()),
        },
        EditError::NoSuchKey { key, near: Some(near) } => {
            said(format!("there is no `{key}` in the file"), format!("did you mean `{near}`?"))
        }
        EditError::NoSuchKey { key, near: None } => said(
            format!("there is no `{key}` in the file"),
            "name it as in measures.hip_width, measures.thigh_depth.left or goal.1.want",
        ),
        EditError::NoSuchEntry { list, there } => said(
            match there {
                0 => format!("`{}` has no entries", list.path()),
                1 => format!("`{}` has 1 entry", list.path()),
                there => format!("`{}` has {there} entries", list.path()),
            },
            "count from 1; one more than there are begins a new entry",
        ),
        EditError::EachSide(question) => said(
            format!("`{}` has an answer for each side", question.path()),
            "name the side: left and right are the client's",
        ),
        EditError::Table(group) => said(
            format!("`{}` is more than one answer", group.path()),
            "name one of its keys, or an entry by its number",
        ),
        EditError::Form(key) => said(
            format!("`{key}` is written in a form that is not edited here"),
            "change it in a text editor",
        ),
        EditError::Wrong { remark, .. } => texts::about(&remark.finding),
    }
}
