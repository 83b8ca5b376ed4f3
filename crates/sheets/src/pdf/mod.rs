//! Writes a document as PDF, with real text, tags and the scale kept.
//!
//! The pages and the subset fonts go through printpdf; what it does not write (language, tags,
//! viewer preferences, colour space, fixed identifiers) is added to the finished objects. The file
//! claims PDF/UA-1 and PDF/A-3a; a validator checks the claim in the outside tests.

mod attached;
mod content;
mod finish;
mod icc;
mod structure;
mod subset;

use printpdf::date::OffsetDateTime;
use printpdf::{PdfDocument, PdfPage, PdfSaveOptions};

use crate::page::Document;

pub use self::attached::{NoAttachment, attached_code};

use self::content::content;
use self::finish::finish;
use self::subset::Subsets;

/// Writes `document` as PDF. Equal documents give equal bytes.
#[must_use]
pub fn pdf(document: &Document) -> Vec<u8> {
    let subsets = Subsets::of(&document.pages);
    let mut pdf = PdfDocument::new(&document.title);
    let info = &mut pdf.metadata.info;
    let date = midnight(document.date);
    (info.creation_date, info.modification_date, info.metadata_date) = (date, date, date);
    info.creator = document.program.clone();
    info.producer = document.program.clone();
    info.subject = document.subject.clone();
    subsets.put_into(&mut pdf.resources.fonts);
    pdf.pages = document
        .pages
        .iter()
        .map(|page| {
            let (width, height) = (page.paper.width(), page.paper.height());
            let mm = |value: f64| printpdf::Mm(value as f32);
            PdfPage::new(mm(width), mm(height), content(page, &subsets))
        })
        .collect();
    let options = PdfSaveOptions { optimize: true, subset_fonts: false, ..Default::default() };
    // Warnings can only be about fonts without a character map, which subsets are.
    let mut warnings = Vec::new();
    finish(pdf.to_lopdf_document(&options, &mut warnings), document)
}

/// The first moment of a day, in UTC.
fn midnight(date: case::Date) -> OffsetDateTime {
    let days = date.since(case::Date::constant(1970, 1, 1)).map_or(0, |span| span.get_days());
    OffsetDateTime::from_unix_timestamp(i64::from(days) * 86_400)
        .expect("a day of our calendar is a day of theirs")
}
