//! Text: its style, shaped once, measured and broken into lines.
//!
//! One character is one glyph, so that what is drawn and what is read back agree. A character
//! that the faces lack is an error that names it; a box is never drawn in its place.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

use kurbo::{Affine, BezPath};
use unicode_linebreak::{BreakOpportunity, linebreaks};
use unicode_normalization::UnicodeNormalization as _;

use crate::color::Color;
use crate::font::{Cut, Family, Weight, face};

/// Millimetres to a typographic point, exactly 25.4 / 72.
pub const MM_PER_PT: f64 = 25.4 / 72.0;

/// The sizes of print, in points: each a fifth larger than the one before, to half a point.
/// Clinicians read 9.5 with headings of 11.5 or 14, carers 16.5 with headings of 20; only what stands in a
/// drawing or a banner is set in the size that fits.
pub const SIZES: [f64; 8] = [8.0, 9.5, 11.5, 14.0, 16.5, 20.0, 24.0, 29.0];

/// How text looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Style {
    /// Size, in points, positive.
    pub size_pt: f64,
    /// How heavy it is.
    pub weight: Weight,
    /// Its colour.
    pub color: Color,
    /// Distance of baselines, as a multiple of the size.
    pub leading: f64,
    /// In which family; the usual one until a text asks for another.
    pub(crate) family: Family,
}

impl Style {
    /// Black text of a size in points, lines 1.3 sizes apart.
    pub const fn new(size_pt: f64, weight: Weight) -> Self {
        Self { size_pt, weight, color: Color::BLACK, leading: 1.3, family: Family::Usual }
    }

    /// The same in regular weight.
    pub const fn regular(size_pt: f64) -> Self {
        Self::new(size_pt, Weight::Regular)
    }

    /// The same in semibold weight.
    pub const fn semi_bold(size_pt: f64) -> Self {
        Self::new(size_pt, Weight::SemiBold)
    }

    /// The same in bold weight.
    pub const fn bold(size_pt: f64) -> Self {
        Self::new(size_pt, Weight::Bold)
    }

    /// The same in another colour.
    pub const fn colored(self, color: Color) -> Self {
        Self { color, ..self }
    }

    /// The same with another leading.
    pub const fn led(self, leading: f64) -> Self {
        Self { leading, ..self }
    }

    /// The same in the family that has the letters of a text.
    pub(crate) fn for_text(&self, text: &str) -> Self {
        if is_plain(text) {
            return *self;
        }
        let lacks = |family| {
            let own = face(Cut { family, weight: self.weight });
            text.nfc().any(|character| character != '\n' && own.glyph(character).is_none())
        };
        let wide = lacks(self.family) && !lacks(Family::Wide);
        Self { family: if wide { Family::Wide } else { self.family }, ..*self }
    }

    const fn cut(&self) -> Cut {
        Cut { family: self.family, weight: self.weight }
    }

    /// Distance of baselines, in millimetres.
    pub fn line_height(&self) -> f64 {
        self.size_mm() * self.leading
    }

    /// From the top of a line to its baseline, in millimetres.
    pub fn first_baseline(&self) -> f64 {
        let face = face(self.cut());
        let spare = self.leading - face.ascent - face.descent;
        self.size_mm() * (face.ascent + spare / 2.0)
    }

    /// Height of a capital, in millimetres: a baseline half of it below a point centres capitals
    /// and digits on the point.
    pub fn cap_height(&self) -> f64 {
        self.size_mm() * face(self.cut()).cap_height
    }

    /// The size, in millimetres.
    pub fn size_mm(&self) -> f64 {
        self.size_pt * MM_PER_PT
    }
}

/// Why something could not be set.
#[derive(Clone, Debug, PartialEq)]
pub enum SetError {
    /// The faces have no glyph for a character.
    Missing {
        /// The character.
        character: char,
        /// The text that holds it.
        text: String,
    },
    /// The faces cannot place a character, such as a lone combining accent.
    Unplaced {
        /// The character.
        character: char,
        /// The text that holds it.
        text: String,
    },
    /// A word is wider than the place for it.
    TooWide {
        /// The word.
        word: String,
        /// Its width, in millimetres.
        width: f64,
        /// The place for it, in millimetres.
        room: f64,
    },
    /// A page or a place on it is full.
    Overflow {
        /// The beginning of what found no room.
        what: String,
        /// By how much it is too high, in millimetres.
        by: f64,
    },
}

impl fmt::Display for SetError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing { character, text } => write!(
                out,
                "the font has no character {character:?} (U+{:04X}), which stands in {text:?}; \
                 write it another way",
                u32::from(*character)
            ),
            Self::Unplaced { character, text } => write!(
                out,
                "the character {character:?} (U+{:04X}) in {text:?} cannot be placed by itself; \
                 write the letter with its accent as one character",
                u32::from(*character)
            ),
            Self::TooWide { word, width, room } => write!(
                out,
                "{word:?} is {width:.1} mm wide and has {room:.1} mm; shorten it or break it up"
            ),
            Self::Overflow { what, by } => write!(
                out,
                "the page is full: {what:?} is {by:.1} mm too high for the room left; shorten \
                 the text"
            ),
        }
    }
}

impl std::error::Error for SetError {}

/// One character's glyph in a shaped line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Glyph {
    /// The glyph in the face.
    pub id: u16,
    /// The character that it stands for.
    pub character: char,
    /// Width without kerning, in font units.
    pub advance: i32,
    /// What kerning adds to the width, in font units, mostly negative.
    pub kern: i32,
}

/// A line of text as glyphs, kerned; made only by shaping.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shaped {
    cut: Cut,
    /// Shared: the same words are measured, broken and set.
    glyphs: Arc<[Glyph]>,
}

/// Texts that were shaped, by the face that they were asked for in.
type Known = BTreeMap<Cut, BTreeMap<String, Shaped>>;

/// The most texts that are kept for a face: more than a set of papers has.
const MOST_KNOWN: usize = 2000;

thread_local! {
    /// Pages are tried in several ways, with the same texts: each is shaped once.
    static KNOWN: RefCell<Known> = const { RefCell::new(BTreeMap::new()) };
}

impl Shaped {
    /// Shapes one line of left-to-right text. Accents are composed with their letters first.
    ///
    /// Fails on a character that the face lacks or cannot place, line ends and tabs included.
    pub fn new(text: &str, style: &Style) -> Result<Self, SetError> {
        let known = |known: &Known| known.get(&style.cut()).and_then(|own| own.get(text).cloned());
        if let Some(known) = KNOWN.with_borrow(known) {
            return Ok(known);
        }
        let shaped = Self::anew(text, style)?;
        KNOWN.with_borrow_mut(|known| {
            let own = known.entry(style.cut()).or_default();
            if own.len() >= MOST_KNOWN {
                own.clear();
            }
            own.insert(text.to_owned(), shaped.clone());
        });
        Ok(shaped)
    }

    fn anew(text: &str, style: &Style) -> Result<Self, SetError> {
        let text: String = text.nfc().collect();
        let cut = style.for_text(&text).cut();
        let face = face(cut);
        if let Some(character) = text.chars().find(|c| face.glyph(*c).is_none()) {
            return Err(SetError::Missing { character, text });
        }
        let unplaced = |character| SetError::Unplaced { character, text: text.clone() };
        let mut placed = face.shape(&text).into_iter();
        let mut glyphs = Vec::with_capacity(text.len());
        for (at, character) in text.char_indices() {
            let glyph = placed
                .next()
                .filter(|g| g.cluster == at && !g.moved && Some(g.id) == face.glyph(character))
                .ok_or_else(|| unplaced(character))?;
            let advance = face.advance(glyph.id);
            glyphs.push(Glyph { id: glyph.id, character, advance, kern: glyph.advance - advance });
        }
        Ok(Self { cut, glyphs: glyphs.into() })
    }

    /// The face that it is set in.
    pub(crate) const fn cut(&self) -> Cut {
        self.cut
    }

    /// How heavy it is.
    pub const fn weight(&self) -> Weight {
        self.cut.weight
    }

    /// The glyphs, left to right.
    pub fn glyphs(&self) -> &[Glyph] {
        &self.glyphs
    }

    /// The text.
    pub fn text(&self) -> String {
        self.glyphs.iter().map(|glyph| glyph.character).collect()
    }

    /// The width at a size in points, in millimetres.
    pub fn width(&self, size_pt: f64) -> f64 {
        let units: i32 = self.glyphs.iter().map(|glyph| glyph.advance + glyph.kern).sum();
        f64::from(units) * self.unit(size_pt)
    }

    /// The outlines of all glyphs as one path in millimetres, at a size in points, from the left end
    /// of the baseline.
    pub(crate) fn outlines(&self, size_pt: f64) -> BezPath {
        let (face, unit) = (face(self.cut), self.unit(size_pt));
        let (mut path, mut x) = (BezPath::new(), 0);
        for glyph in self.glyphs.iter() {
            let place = Affine::new([unit, 0.0, 0.0, -unit, f64::from(x) * unit, 0.0]);
            path.extend(place * face.outline(glyph.id));
            x += glyph.advance + glyph.kern;
        }
        path
    }

    /// The words, each with the spaces after it, and where each begins, in millimetres from the
    /// beginning of the line at a size in points. No-break spaces are within words.
    pub(crate) fn words(&self, size_pt: f64) -> Vec<(f64, String)> {
        let mut words: Vec<(f64, String)> = Vec::new();
        let (mut x, mut after_space) = (0, true);
        for glyph in self.glyphs.iter() {
            let space = glyph.character == ' ';
            if after_space && !space || words.is_empty() {
                words.push((f64::from(x) * self.unit(size_pt), String::new()));
            }
            words.last_mut().expect("a word was begun").1.push(glyph.character);
            after_space = space;
            x += glyph.advance + glyph.kern;
        }
        words
    }

    /// The width of a font unit at a size in points, in millimetres.
    pub(crate) fn unit(&self, size_pt: f64) -> f64 {
        size_pt * MM_PER_PT / face(self.cut).units_per_em
    }
}

/// Whether a text has no other characters than those of ASCII that every face has, and line ends.
fn is_plain(text: &str) -> bool {
    text.bytes().all(|byte| matches!(byte, b' '..=b'~' | b'\n'))
}

/// Whether pages can show a character.
#[must_use]
pub fn is_printable(character: char) -> bool {
    Cut::all().filter(|cut| face(*cut).glyph(character).is_some()).count() >= Weight::ALL.len()
}

/// The width of a line of text, in millimetres.
pub fn measure(text: &str, style: &Style) -> Result<f64, SetError> {
    Ok(Shaped::new(text, style)?.width(style.size_pt))
}

/// A number with its unit, which no line break parts.
pub fn with_unit(number: impl fmt::Display, unit: &str) -> String {
    format!("{number}\u{a0}{unit}")
}

/// A text, or of a longer one so many characters, enough to know it by.
pub(crate) fn beginning(text: &str, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((end, _)) => format!("{}...", &text[..end]),
        None => text.to_owned(),
    }
}

/// Breaks text into lines no wider than a width in millimetres; `\n` begins a new line.
///
/// Lines break where Unicode's rules allow it; no-break spaces hold. A word wider than the width
/// is broken where it must, and a character wider than it is an error. Spaces at a break belong to
/// no line.
pub fn wrap(text: &str, style: &Style, width: f64) -> Result<Vec<String>, SetError> {
    let style = style.for_text(text);
    let key = (style.cut(), style.size_pt.to_bits(), width.to_bits());
    let known = |known: &Broken| known.get(&key).and_then(|own| own.get(text).cloned());
    if let Some(lines) = BROKEN.with_borrow(known) {
        return Ok(lines);
    }
    let lines = wrap_anew(text, style, width)?;
    BROKEN.with_borrow_mut(|known| {
        let own = known.entry(key).or_default();
        own.insert(text.to_owned(), lines.clone());
        if own.len() >= MOST_KNOWN || known.len() >= MOST_KNOWN {
            known.clear();
        }
    });
    Ok(lines)
}

/// Texts that were broken into lines, by face, size and width.
type Broken = BTreeMap<(Cut, u64, u64), BTreeMap<String, Vec<String>>>;

thread_local! {
    /// The height of a text is asked before it is set: each is broken once.
    static BROKEN: RefCell<Broken> = const { RefCell::new(BTreeMap::new()) };
}

fn wrap_anew(text: &str, style: Style, width: f64) -> Result<Vec<String>, SetError> {
    let mut lines = Vec::new();
    for part in text.split('\n') {
        wrap_part(part, &style, width, &mut lines)?;
    }
    Ok(lines)
}

/// Breaks text without line ends, as many words to a line as fit.
fn wrap_part(
    text: &str,
    style: &Style,
    width: f64,
    lines: &mut Vec<String>,
) -> Result<(), SetError> {
    let text = if is_plain(text) { text.to_owned() } else { text.nfc().collect() };
    let ruler = Ruler::new(&text, style)?;
    // A micrometre for the rounding of sums, so that a text fits the width measured from it.
    let room = width + 1e-3;
    let (mut start, mut end) = (0, 0);
    for (at, opportunity) in linebreaks(&text) {
        if ruler.width(start, at) > room && end > start {
            lines.push(text[start..end].trim_end_matches(' ').to_owned());
            start = end;
        }
        while ruler.width(start, at) > room {
            let places = text[start..at].char_indices().skip(1).map(|(place, _)| start + place);
            let fits = |place: &usize| ruler.width(start, *place) <= room;
            let Some(place) = places.take_while(fits).last() else {
                let word = text[start..at].trim_end_matches(' ').to_owned();
                let width = ruler.width(start, at);
                return Err(SetError::TooWide { word, width, room });
            };
            // Where no line may end between spaces and what is after them, the break falls there.
            lines.push(text[start..place].trim_end_matches(' ').to_owned());
            start = at - text[place..at].trim_start_matches(' ').len();
        }
        end = at;
        if opportunity == BreakOpportunity::Mandatory {
            lines.push(text[start..end].trim_end_matches(' ').to_owned());
            start = end;
        }
    }
    if text.is_empty() {
        lines.push(String::new());
    }
    Ok(())
}

/// Widths of the parts of one shaped line.
struct Ruler<'a> {
    text: &'a str,
    /// Byte offset, place of the left edge and width without kerning of each character, in mm.
    stops: Vec<(usize, f64, f64)>,
}

impl<'a> Ruler<'a> {
    fn new(text: &'a str, style: &Style) -> Result<Self, SetError> {
        let shaped = Shaped::new(text, style)?;
        let unit = shaped.unit(style.size_pt);
        let mut x = 0;
        let mut stops = Vec::with_capacity(shaped.glyphs.len());
        for ((at, _), glyph) in text.char_indices().zip(shaped.glyphs.iter()) {
            stops.push((at, f64::from(x) * unit, f64::from(glyph.advance) * unit));
            x += glyph.advance + glyph.kern;
        }
        Ok(Self { text, stops })
    }

    /// The width of a part by itself, without spaces at its end.
    fn width(&self, start: usize, end: usize) -> f64 {
        let part = self.text[start..end].trim_end_matches(' ');
        if part.is_empty() {
            return 0.0;
        }
        let first = self.stops.partition_point(|stop| stop.0 < start);
        let after = self.stops.partition_point(|stop| stop.0 < start + part.len());
        let (_, x, advance) = self.stops[after - 1];
        x + advance - self.stops[first].1
    }
}
