//! The faces of a document, cut down to the glyphs that it uses.

use std::collections::{BTreeMap, BTreeSet};

use printpdf::{FontId, ParsedFont, PdfFont, PdfFontHandle, PdfFontMap};
use subsetter::GlyphRemapper;

use crate::font::{Weight, face};
use crate::page::Page;

/// The faces that a document uses.
pub(super) struct Subsets(BTreeMap<Weight, Subset>);

struct Subset {
    glyphs: GlyphRemapper,
    font: ParsedFont,
}

impl Subsets {
    pub(super) fn of(pages: &[Page]) -> Self {
        let mut used: BTreeMap<Weight, BTreeSet<u16>> = BTreeMap::new();
        for run in pages.iter().flat_map(Page::texts) {
            let glyphs = run.shaped.glyphs().iter().map(|glyph| glyph.id);
            let weight = run.shaped.weight();
            used.entry(weight).or_default().extend(glyphs.chain(face(weight).glyph(' ')));
        }
        let subsets =
            used.into_iter().map(|(weight, glyphs)| (weight, Subset::of(weight, &glyphs)));
        Self(subsets.collect())
    }

    pub(super) fn put_into(&self, fonts: &mut PdfFontMap) {
        for (weight, subset) in &self.0 {
            fonts.map.insert(id(*weight), PdfFont::new(subset.font.clone()));
        }
    }

    /// The number of the space in the subset.
    pub(super) fn space(&self, weight: Weight) -> Option<u16> {
        self.0.get(&weight)?.glyphs.get(face(weight).glyph(' ')?)
    }

    /// The number that a glyph has in the subset.
    pub(super) fn glyph(&self, weight: Weight, glyph: u16) -> u16 {
        self.0[&weight].glyphs.get(glyph).expect("every glyph of the pages is in the subset")
    }
}

impl Subset {
    fn of(weight: Weight, used: &BTreeSet<u16>) -> Self {
        let used: Vec<u16> = used.iter().copied().collect();
        let glyphs = GlyphRemapper::new_from_glyphs_sorted(&used);
        let bytes = subsetter::subset(weight.bytes(), 0, &glyphs);
        let bytes = bytes.expect("the embedded font can be cut down");
        let mut warnings = Vec::new();
        let font = ParsedFont::from_bytes(&bytes, 0, &mut warnings);
        let mut font = font.expect("a font that was cut down is a font");
        // Six letters and a plus mark a subset (ISO 32000-1, 9.6.4).
        let tag = match weight {
            Weight::Regular => "SEATRG",
            Weight::SemiBold => "SEATSB",
            Weight::Bold => "SEATBD",
        };
        font.font_name = Some(format!("{tag}+{}", weight.postscript_name()));
        Self { glyphs, font }
    }
}

fn id(weight: Weight) -> FontId {
    FontId(format!("F{}", weight.number()))
}

pub(super) fn handle(weight: Weight) -> PdfFontHandle {
    PdfFontHandle::External(id(weight))
}
