//! A layout while it is written: what can be drawn of it at one of its sizes, with all remarks.

use case::FileKind;
use cushion::{Fault, Layout, Pattern, Severity, Size, Sketch};
use files::{BuiltIn, Remark};

use crate::error::WorkError;
use crate::file_remarks::FileRemarks;
use crate::surroundings::Surroundings;

/// A layout as its file has it now.
#[derive(Clone, Debug)]
pub struct WrittenLayout {
    /// Its title; none where it cannot be read.
    pub title: Option<String>,
    /// Its sizes; none where it cannot be read.
    pub sizes: Vec<Size>,
    /// Which of them is looked at, from 0.
    pub at: usize,
    /// The layout at that size, as far as it can be drawn; none where it cannot be read.
    pub drawn: Option<DrawnLayout>,
    /// The text, with what is to be said about it.
    pub file: FileRemarks,
}

/// A layout at one size, as far as it can be drawn.
#[derive(Clone, Debug)]
pub enum DrawnLayout {
    /// As it would be made.
    Whole(Pattern),
    /// What can be drawn of it though it is refused, and for each of its faults the number of the
    /// remark on it, from 1.
    Refused(Sketch, Vec<usize>),
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
    let remarks = files::check_layout(&text).remarks;
    let layout = files::read_layout(&text).value;
    let sizes: Vec<Size> =
        layout.iter().flat_map(|layout| layout.sizes.iter().map(|made| made.size)).collect();
    let at = at.min(sizes.len().saturating_sub(1));
    let size = sizes.get(at).copied();
    let drawn = layout.as_ref().zip(size).map(|(own, size)| drawn(own, size, &text, &remarks));
    let title = layout.map(|layout| layout.title);
    let file = FileRemarks { path: name.to_owned(), text, remarks };
    Ok(WrittenLayout { title, sizes, at, drawn, file })
}

/// What can be drawn of a layout at a size, all of whose remarks these are.
fn drawn(layout: &Layout, size: Size, text: &str, remarks: &[Remark]) -> DrawnLayout {
    let faults = cushion::check_layout(layout, BuiltIn::cell().edge);
    let on_faults = files::layout_remarks(text, &faults);
    let here = |fault: &Fault| fault.sizes.is_empty() || fault.sizes.contains(&size);
    let shown = faults.into_iter().zip(on_faults).filter(|(fault, _)| here(fault));
    let number = |own: &Remark| remarks.iter().position(|it| it == own).map(|at| at + 1);
    let numbered = shown.filter_map(|(fault, own)| Some((fault, number(&own)?)));
    let (faults, numbers): (Vec<Fault>, Vec<usize>) = numbered.unzip();
    let wrong = faults.iter().any(|fault| fault.kind.severity() == Severity::Error);
    match cushion::arrange(layout, size) {
        Ok(pattern) if !wrong => DrawnLayout::Whole(pattern),
        _ => DrawnLayout::Refused(cushion::sketch(layout, size, &faults), numbers),
    }
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
