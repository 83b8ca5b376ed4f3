//! The faces that pages are set in, parsed once.
//!
//! Atkinson Hyperlegible Next, static cuts; and for texts with Greek, Cyrillic or Vietnamese
//! letters, which it has not, Noto Sans, cut down to the letters of Europe. Both are under the SIL
//! Open Font License 1.1, which is kept beside them in `fonts/` and names no reserved font name,
//! so subsets may keep the name.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use harfrust::{Direction, Feature, ShapeOptions, ShapePlan, ShaperData, Tag, UnicodeBuffer};
use kurbo::BezPath;
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::GlyphMetrics;
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, MetadataProvider as _};

/// How heavy the strokes are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Weight {
    /// 400, for words.
    Regular,
    /// 600, for headings of columns and the like.
    SemiBold,
    /// 700, for headings and for what must not be missed.
    Bold,
}

impl Weight {
    /// All weights, the lightest first.
    pub const ALL: [Self; 3] = [Self::Regular, Self::SemiBold, Self::Bold];

    /// The number that CSS and OpenType give to the weight.
    pub const fn number(self) -> u16 {
        match self {
            Self::Regular => 400,
            Self::SemiBold => 600,
            Self::Bold => 700,
        }
    }
}

/// Faces that belong together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Family {
    /// What all texts are set in that it has the letters for.
    #[default]
    Usual,
    /// For texts with letters that the usual one has not.
    Wide,
}

impl Family {
    /// Its name, the same in all faces.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Usual => "Atkinson Hyperlegible Next",
            Self::Wide => "Noto Sans",
        }
    }
}

/// One face: a weight of a family.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct Cut {
    pub(crate) family: Family,
    pub(crate) weight: Weight,
}

impl Cut {
    /// All faces.
    pub(crate) fn all() -> impl Iterator<Item = Self> {
        let of = |family| Weight::ALL.into_iter().map(move |weight| Self { family, weight });
        [Family::Usual, Family::Wide].into_iter().flat_map(of)
    }

    /// The PostScript name of the face.
    pub(crate) const fn postscript_name(self) -> &'static str {
        match (self.family, self.weight) {
            (Family::Usual, Weight::Regular) => "AtkinsonHyperlegibleNext-Regular",
            (Family::Usual, Weight::SemiBold) => "AtkinsonHyperlegibleNext-SemiBold",
            (Family::Usual, Weight::Bold) => "AtkinsonHyperlegibleNext-Bold",
            (Family::Wide, Weight::Regular) => "NotoSans-Regular",
            (Family::Wide, Weight::SemiBold) => "NotoSans-SemiBold",
            (Family::Wide, Weight::Bold) => "NotoSans-Bold",
        }
    }

    /// The font file.
    pub(crate) const fn bytes(self) -> &'static [u8] {
        match (self.family, self.weight) {
            (Family::Usual, Weight::Regular) => {
                include_bytes!("../fonts/AtkinsonHyperlegibleNext_400Regular.ttf")
            }
            (Family::Usual, Weight::SemiBold) => {
                include_bytes!("../fonts/AtkinsonHyperlegibleNext_600SemiBold.ttf")
            }
            (Family::Usual, Weight::Bold) => {
                include_bytes!("../fonts/AtkinsonHyperlegibleNext_700Bold.ttf")
            }
            (Family::Wide, Weight::Regular) => include_bytes!("../fonts/NotoSans_400Regular.ttf"),
            (Family::Wide, Weight::SemiBold) => include_bytes!("../fonts/NotoSans_600SemiBold.ttf"),
            (Family::Wide, Weight::Bold) => include_bytes!("../fonts/NotoSans_700Bold.ttf"),
        }
    }
}

impl Cut {
    /// A file of the same face, not half as large, with the letters and signs that most pages are
    /// written with; none of faces that are only taken for other letters.
    ///
    /// Cut down by fonttools 4 (`pyftsubset --layout-features=kern,mark,mkmk --notdef-outline`):
    /// glyphs, widths, kerning and character map are those of the whole face.
    const fn plain_bytes(self) -> Option<&'static [u8]> {
        match (self.family, self.weight) {
            (Family::Usual, Weight::Regular) => {
                Some(include_bytes!("../fonts/AtkinsonHyperlegibleNext_400Regular-plain.ttf"))
            }
            (Family::Usual, Weight::SemiBold) => {
                Some(include_bytes!("../fonts/AtkinsonHyperlegibleNext_600SemiBold-plain.ttf"))
            }
            (Family::Usual, Weight::Bold) => {
                Some(include_bytes!("../fonts/AtkinsonHyperlegibleNext_700Bold-plain.ttf"))
            }
            (Family::Wide, _) => None,
        }
    }

    /// The smallest font file of the face that has these characters.
    pub(crate) fn bytes_for(self, characters: &BTreeSet<char>) -> &'static [u8] {
        let has_all = |bytes: &&[u8]| {
            let glyphs = FontRef::new(bytes).expect("the embedded font is a font").charmap();
            characters.iter().all(|own| glyphs.map(*own).is_some())
        };
        self.plain_bytes().filter(has_all).unwrap_or_else(|| self.bytes())
    }
}

/// A face made ready for shaping.
pub(crate) struct Face {
    font: FontRef<'static>,
    glyphs: Charmap<'static>,
    widths: GlyphMetrics<'static>,
    shaping: ShaperData,
    plan: ShapePlan,
    /// Font units to the em.
    pub(crate) units_per_em: f64,
    /// Height of the line above the baseline, in ems.
    pub(crate) ascent: f64,
    /// Depth of the line below the baseline, in ems, positive.
    pub(crate) descent: f64,
    /// Height of a capital, in ems.
    pub(crate) cap_height: f64,
}

/// A glyph's outline as a path.
struct Outline(BezPath);

impl OutlinePen for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to((f64::from(x), f64::from(y)));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to((f64::from(x), f64::from(y)));
    }

    fn quad_to(&mut self, bx: f32, by: f32, x: f32, y: f32) {
        self.0.quad_to((f64::from(bx), f64::from(by)), (f64::from(x), f64::from(y)));
    }

    fn curve_to(&mut self, bx: f32, by: f32, cx: f32, cy: f32, x: f32, y: f32) {
        let by = (f64::from(bx), f64::from(by));
        self.0.curve_to(by, (f64::from(cx), f64::from(cy)), (f64::from(x), f64::from(y)));
    }

    fn close(&mut self) {
        self.0.close_path();
    }
}

/// A glyph as the shaper placed it, in font units.
pub(crate) struct Placed {
    pub(crate) id: u16,
    pub(crate) cluster: usize,
    pub(crate) advance: i32,
    /// Whether the glyph is moved off the baseline or its place.
    pub(crate) moved: bool,
}

/// Substitutions that would make a glyph stand for anything but one character. They are off, so
/// that text on the page, in the file and read aloud agree character by character.
const OFF: [&[u8; 4]; 6] = [b"ccmp", b"liga", b"clig", b"calt", b"rlig", b"locl"];

/// The face of a cut.
pub(crate) fn face(cut: Cut) -> &'static Face {
    static FACES: [OnceLock<Face>; 6] = [const { OnceLock::new() }; 6];
    let place = 3 * usize::from(cut.family == Family::Wide)
        + match cut.weight {
            Weight::Regular => 0,
            Weight::SemiBold => 1,
            Weight::Bold => 2,
        };
    FACES[place].get_or_init(|| Face::new(cut))
}

impl Face {
    fn new(cut: Cut) -> Self {
        let font = FontRef::new(cut.bytes()).expect("the embedded font is a font");
        let shaping = ShaperData::new(&font);
        let off = OFF.map(|tag| Feature::new(Tag::new(tag), 0, ..));
        let latin = Some(harfrust::script::LATIN);
        let plan = {
            let shaper = shaping.shaper(&font).build();
            ShapePlan::new(&shaper, Direction::LeftToRight, latin, None, &off)
        };
        let metrics = font.metrics(Size::unscaled(), LocationRef::default());
        let units_per_em = f64::from(metrics.units_per_em);
        let em = |value: f32| f64::from(value) / units_per_em;
        let cap_height = em(metrics.cap_height.expect("the embedded font states its capitals"));
        let (ascent, descent) = (em(metrics.ascent), em(-metrics.descent));
        let (glyphs, widths) =
            (font.charmap(), font.glyph_metrics(Size::unscaled(), LocationRef::default()));
        Self { font, glyphs, widths, shaping, plan, units_per_em, ascent, descent, cap_height }
    }

    /// The glyph of a character; `None` if the face has none.
    pub(crate) fn glyph(&self, character: char) -> Option<u16> {
        let id = self.glyphs.map(character)?.to_u32();
        u16::try_from(id).ok().filter(|id| *id != 0)
    }

    /// The outline of a glyph in font units, y up; empty for a space.
    pub(crate) fn outline(&self, glyph: u16) -> BezPath {
        let mut pen = Outline(BezPath::new());
        if let Some(outline) = self.font.outline_glyphs().get(skrifa::GlyphId::from(glyph)) {
            let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
            outline.draw(settings, &mut pen).expect("a glyph of the embedded font has an outline");
        }
        pen.0
    }

    /// The width of a glyph without kerning, in font units.
    pub(crate) fn advance(&self, glyph: u16) -> i32 {
        self.widths.advance_width(skrifa::GlyphId::from(glyph)).map_or(0, |width| width as i32)
    }

    /// Shapes a line of left-to-right text.
    pub(crate) fn shape(&self, text: &str) -> Vec<Placed> {
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.set_direction(Direction::LeftToRight);
        buffer.set_script(harfrust::script::LATIN);
        let shaper = self.shaping.shaper(&self.font).build();
        let glyphs = shaper.shape(buffer, ShapeOptions::new().plan(Some(&self.plan)));
        let pairs = glyphs.glyph_infos().iter().zip(glyphs.glyph_positions());
        pairs
            .map(|(info, place)| Placed {
                id: u16::try_from(info.glyph_id).expect("the shaper promises 16 bits"),
                cluster: info.cluster as usize,
                advance: place.x_advance,
                moved: place.x_offset != 0 || place.y_offset != 0,
            })
            .collect()
    }
}

/// The whole face of the papers in a weight, as a font file: for a page that is of one family with
/// them.
#[must_use]
pub const fn font_file(weight: Weight) -> &'static [u8] {
    Cut { family: Family::Usual, weight }.bytes()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plain_face_is_the_whole_one_with_fewer_letters() {
        for weight in Weight::ALL {
            let cut = Cut { family: Family::Usual, weight };
            let whole = face(cut);
            let bytes = cut.plain_bytes().unwrap();
            assert!(2 * bytes.len() < cut.bytes().len());
            let font = FontRef::new(bytes).unwrap();
            let widths = font.glyph_metrics(Size::unscaled(), LocationRef::default());
            let mut seen = 0;
            for (character, glyph) in font.charmap().mappings() {
                let character = char::from_u32(character).unwrap();
                let own = whole.glyph(character).unwrap();
                let width = widths.advance_width(glyph).unwrap();
                assert_eq!(width as i32, whole.advance(own), "{character:?}");
                seen += 1;
            }
            // All that can be typed on a plain keyboard, and more.
            assert!(seen > 120, "{seen}");
        }
    }

    #[test]
    fn a_page_takes_the_smaller_file_only_where_it_has_all_letters() {
        let cut = Cut { family: Family::Usual, weight: Weight::Regular };
        let of = |text: &str| cut.bytes_for(&text.chars().collect()).len();
        assert_eq!(
            of("No. 1: 38 cells, 25 mm – ¿señal? “Größe”"),
            cut.plain_bytes().unwrap().len()
        );
        // A letter of Polish is in the whole face alone.
        assert_eq!(of("łóżko"), cut.bytes().len());
    }
}
