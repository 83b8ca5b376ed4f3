//! The faces of a document, cut down to the glyphs that it uses.

use std::collections::{BTreeMap, BTreeSet};

use printpdf::{FontId, ParsedFont, PdfFont, PdfFontHandle, PdfFontMap};
use subsetter::GlyphRemapper;

use crate::font::{Cut, Family, Weight, face};
use crate::page::Page;

/// The faces that a document uses.
pub(super) struct Subsets(BTreeMap<Cut, Subset>);

struct Subset {
    glyphs: GlyphRemapper,
    font: ParsedFont,
}

impl Subsets {
    pub(super) fn of(pages: &[Page]) -> Self {
        let mut used: BTreeMap<Cut, BTreeSet<u16>> = BTreeMap::new();
        for run in pages.iter().flat_map(Page::texts) {
            let glyphs = run.shaped.glyphs().iter().map(|glyph| glyph.id);
            let cut = run.shaped.cut();
            used.entry(cut).or_default().extend(glyphs.chain(face(cut).glyph(' ')));
        }
        let subsets = used.into_iter().map(|(cut, glyphs)| (cut, Subset::of(cut, &glyphs)));
        Self(subsets.collect())
    }

    pub(super) fn put_into(&self, fonts: &mut PdfFontMap) {
        for (cut, subset) in &self.0 {
            fonts.map.insert(id(*cut), PdfFont::new(subset.font.clone()));
        }
    }

    /// The number of the space in the subset.
    pub(super) fn space(&self, cut: Cut) -> Option<u16> {
        self.0.get(&cut)?.glyphs.get(face(cut).glyph(' ')?)
    }

    /// The number that a glyph has in the subset.
    pub(super) fn glyph(&self, cut: Cut, glyph: u16) -> u16 {
        self.0[&cut].glyphs.get(glyph).expect("every glyph of the pages is in the subset")
    }
}

impl Subset {
    fn of(cut: Cut, used: &BTreeSet<u16>) -> Self {
        let used: Vec<u16> = used.iter().copied().collect();
        let glyphs = GlyphRemapper::new_from_glyphs_sorted(&used);
        let bytes = subsetter::subset(cut.bytes(), 0, &glyphs);
        let bytes = bytes.expect("the embedded font can be cut down");
        let mut warnings = Vec::new();
        let font = ParsedFont::from_bytes(&bytes, 0, &mut warnings);
        let mut font = font.expect("a font that was cut down is a font");
        // Six letters and a plus mark a subset (ISO 32000-1, 9.6.4).
        let tag = match (cut.family, cut.weight) {
            (Family::Usual, Weight::Regular) => "SEATRG",
            (Family::Usual, Weight::SemiBold) => "SEATSB",
            (Family::Usual, Weight::Bold) => "SEATBD",
            (Family::Wide, Weight::Regular) => "SEATWR",
            (Family::Wide, Weight::SemiBold) => "SEATWS",
            (Family::Wide, Weight::Bold) => "SEATWB",
        };
        font.font_name = Some(format!("{tag}+{}", cut.postscript_name()));
        Self { glyphs, font }
    }
}

fn id(cut: Cut) -> FontId {
    let family = match cut.family {
        Family::Usual => "F",
        Family::Wide => "W",
    };
    FontId(format!("{family}{}", cut.weight.number()))
}

pub(super) fn handle(cut: Cut) -> PdfFontHandle {
    PdfFontHandle::External(id(cut))
}
