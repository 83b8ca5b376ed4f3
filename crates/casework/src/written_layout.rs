//! A layout while it is written: what can be drawn of it at one of its sizes, with all remarks.

use case::FileKind;
use cushion::{Pattern, Size};

use crate::error::WorkError;
use crate::file_remarks::FileRemarks;
use crate::surroundings::Surroundings;

/// A layout as its file has it now.
#[derive(Clone, Debug)]
pub struct WrittenLayout {
    /// Its sizes; none where it cannot be read.
    pub sizes: Vec<Size>,
    /// Which of them is looked at, from 0.
    pub at: usize,
    /// The layout at that size, where it can be drawn.
    pub pattern: Option<Pattern>,
    /// The text, with what is to be said about it.
    pub file: FileRemarks,
}

/// Reads a layout's file, right or wrong, and draws what can be drawn of it at the size of a place
/// from 0; the last size where there are fewer.
///
/// # Errors
///
/// Fails where there is no such file, or it is no layout's.
pub fn written_layout(
    surroundings: Surroundings<'_>,
    name: &str,
    at: usize,
) -> Result<WrittenLayout, WorkError> {
    let text = surroundings.text(name)?;
    crate::sourced::says_what_it_is(name, &text, FileKind::Layout)?;
    let checked = files::check_layout(&text);
    let sizes: Vec<Size> =
        checked.value.iter().flat_map(|layout| layout.sizes.iter().map(|made| made.size)).collect();
    let at = at.min(sizes.len().saturating_sub(1));
    let size = sizes.get(at).copied();
    let drawn = checked.value.as_ref().zip(size).map(|(own, size)| cushion::arrange(own, size));
    let pattern = drawn.and_then(Result::ok);
    let file = FileRemarks { path: name.to_owned(), text, remarks: checked.remarks };
    Ok(WrittenLayout { sizes, at, pattern, file })
}

/// The names of the layouts' files in the shelf's own folder, in byte order; none where it cannot
/// be listed.
#[must_use]
pub fn layout_files(surroundings: Surroundings<'_>) -> Vec<String> {
    let names = surroundings.shelf.list("").unwrap_or_default();
    let of_layout = |name: &String| {
        let text = surroundings.text(name);
        text.is_ok_and(|text| files::kind_of(&text) == Some(FileKind::Layout))
    };
    names.into_iter().filter(|name| name.ends_with(".toml")).filter(of_layout).collect()
}
