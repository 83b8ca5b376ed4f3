//! Exports: documents as the bytes of files, on all the threads that there are.

use case::{Drawn, Trouble};
use cushion::{Cell, Layout, Pattern, Size};
use sheets::{Document, Page, SvgOptions};
use words::Language;

use crate::error::{Whose, WorkError};
use crate::not_drawn::{no_picture, not_drawn};
use crate::papers::NamedDocument;
use crate::side_by_side::side_by_side;
use crate::sourced::{Sourced, faults_at};

/// Dots per inch of the pictures.
const PICTURE_DPI: f64 = 150.0;

/// The bytes of a file to be, with its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exported {
    /// The name, with its ending and without a folder.
    pub name: String,
    /// All bytes.
    pub bytes: Vec<u8>,
}

/// What is made beside a PDF and an SVG of each page, and how.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Wanted {
    /// Pictures too.
    pub pictures: bool,
    /// Words of SVGs as shapes, for programs that have no other faces than their own.
    pub outlines: bool,
}

/// One file to make.
struct Job<'a> {
    name: String,
    work: Work<'a>,
}

/// What it is made from, and as what.
enum Work<'a> {
    Pdf(&'a Document),
    Svg(&'a Page, SvgOptions),
    Png(&'a Page),
}

/// Makes the files of all papers: a PDF of each, an SVG of each page, and pictures where asked.
///
/// The order of the files does not depend on the threads.
///
/// # Errors
///
/// Fails where a page cannot be exported, which is a fault of ours.
pub fn export(papers: &[NamedDocument], wanted: Wanted) -> Result<Vec<Exported>, WorkError> {
    let jobs: Vec<Job<'_>> = papers.iter().flat_map(|it| jobs(it, wanted)).collect();
    let made = side_by_side(&jobs, |job| bytes(&job.work));
    let named = jobs.into_iter().zip(made);
    named.map(|(job, bytes)| Ok(Exported { name: job.name, bytes: bytes? })).collect()
}

/// The files of one document: pages are numbered where there are several.
fn jobs(named: &NamedDocument, wanted: Wanted) -> Vec<Job<'_>> {
    let document = &named.document;
    let svg = SvgOptions { outlines: wanted.outlines, ..SvgOptions::default() };
    let file = |ending: String| named.name.clone() + &ending;
    let mut jobs = vec![Job { name: file(".pdf".to_owned()), work: Work::Pdf(document) }];
    for (place, page) in document.pages.iter().enumerate() {
        let number =
            if document.pages.len() == 1 { String::new() } else { format!("-{}", place + 1) };
        jobs.push(Job { name: file(format!("{number}.svg")), work: Work::Svg(page, svg) });
        if wanted.pictures {
            jobs.push(Job { name: file(format!("{number}.png")), work: Work::Png(page) });
        }
    }
    jobs
}

/// Makes the bytes of one file.
fn bytes(work: &Work<'_>) -> Result<Vec<u8>, WorkError> {
    match work {
        Work::Pdf(document) => Ok(sheets::pdf(document)),
        Work::Svg(page, options) => Ok(sheets::svg(page, options).into_bytes()),
        Work::Png(page) => sheets::png(page, PICTURE_DPI)
            .map_err(|error| WorkError::new(Whose::Ours, Trouble::NoPicture(no_picture(error)))),
    }
}

/// As what one drawing is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnAs {
    /// SVG.
    Svg,
    /// PDF.
    Pdf,
    /// A picture.
    Png,
}

/// The bytes of a drawing of one page.
///
/// # Errors
///
/// Fails where the page cannot be exported, which is a fault of ours.
pub fn drawn_as(document: &Document, own: DrawnAs) -> Result<Vec<u8>, WorkError> {
    let page = &document.pages[0];
    bytes(&match own {
        DrawnAs::Svg => Work::Svg(page, SvgOptions::default()),
        DrawnAs::Pdf => Work::Pdf(document),
        DrawnAs::Png => Work::Png(page),
    })
}

/// The bytes of one page as a drawing or a picture; as a PDF none is made of a page alone.
///
/// # Errors
///
/// Fails where the page cannot be exported, which is a fault of ours.
pub fn page_drawn_as(page: &Page, own: DrawnAs) -> Result<Vec<u8>, WorkError> {
    match own {
        DrawnAs::Png => bytes(&Work::Png(page)),
        DrawnAs::Svg | DrawnAs::Pdf => bytes(&Work::Svg(page, SvgOptions::default())),
    }
}

/// A page as SVG.
pub(crate) fn svg(page: &Page) -> Vec<u8> {
    sheets::svg(page, &SvgOptions::default()).into_bytes()
}

/// Draws what can be drawn of a layout that is refused at a size, as SVG: its seams, and a ring
/// with a number around what is wrong; the number is the place of its remark among all remarks.
///
/// # Errors
///
/// Fails where a number cannot be set.
pub fn faulty_drawing(
    language: &dyn Language,
    layout: &Sourced<Layout>,
    size: Size,
    cell: &Cell,
) -> Result<Vec<u8>, WorkError> {
    let faults = faults_at(&layout.value, size, cell);
    let sketch = cushion::sketch(&layout.value, size, &faults);
    // The remarks on these faults are the last of all.
    let first = layout.file.remarks.len().saturating_sub(faults.len()) + 1;
    let page = sheets::faulty_drawing(language, &layout.value.title, &sketch, first);
    let page = page.map_err(|error| not_drawn(Drawn::Pattern, error))?;
    Ok(svg(&page))
}

/// Draws a pattern at true size, as SVG.
///
/// # Errors
///
/// Fails where a number finds no room in its compartment.
pub fn drawing(language: &dyn Language, pattern: &Pattern) -> Result<Vec<u8>, WorkError> {
    let page = sheets::drawing(language, pattern);
    let page = page.map_err(|error| not_drawn(Drawn::Pattern, error))?;
    Ok(svg(&page))
}
