//! Sections through the cushion under the client: shapes and heights, never pressures.

use case::{SiteName, Spread};
use cushion::{Length, Side};
use kurbo::{BezPath, Point, Rect, Shape as _};
use words::{Language, SectionTexts};

use super::axis::{Axis, Sample, legend as set_legend};
use super::look::{ACCENT, BODY, HEADING, INK, SMALL, SOFT, foot, inside};
use super::views::{BAR, TO_BAR};
use super::{DocumentError, Identity, document};
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Fill, Page, Pen};
use crate::paper::Paper;
use crate::text::{SetError, measure};

/// Where a section is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionAt {
    /// From left to right through the seat bones, seen from behind.
    SeatBones,
    /// From rear to front through the seat bone of a side.
    Through(Side),
}

/// A named place on the body in a section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionSite {
    /// Which.
    pub name: SiteName,
    /// Where along the section, mm.
    pub at: f64,
    /// Its height above the base.
    pub height: Spread<Length>,
}

/// One section: points are (along, height above the base), in mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Where.
    pub at: SectionAt,
    /// The top without the client.
    pub unloaded: Vec<[f64; 2]>,
    /// The top under the client.
    pub loaded: Vec<[f64; 2]>,
    /// The client's underside.
    pub body: Vec<[f64; 2]>,
    /// Places of seams, mm, in rising order.
    pub seams: Vec<f64>,
    /// Named places.
    pub sites: Vec<SectionSite>,
}

/// What the sheet of sections is made from.
#[derive(Clone, Copy)]
pub struct SectionPapers<'a> {
    /// In which language it is.
    pub language: &'a dyn Language,
    /// Whose they are, and of which plan.
    pub of: Identity<'a>,
    /// When the counts were recorded; none where they are of a plan that is not.
    pub recorded_on: Option<case::Date>,
    /// The sections.
    pub sections: &'a [Section],
    /// The day that the sheet bears.
    pub date: case::Date,
    /// Program and version.
    pub program: &'a str,
}

/// Height of one drawing, mm.
const DRAWING: f64 = 57.0;
/// The underside of the body is drawn up to so far above the walls, mm of the client.
const ABOVE: f64 = 30.0;
/// Height of the labels over a drawing, mm: two rows, as sites that are usual have.
const LABELS: f64 = 10.0;
/// Height of the axis and the words under a drawing, mm.
const UNDER: f64 = 9.0;
/// Between two labels, mm.
const BETWEEN: f64 = 2.0;
/// The line around the client, mm.
pub(super) const BODY_LINE: Pen = Pen::solid(0.8, INK);
/// A line upright, as a seam is drawn, mm.
const SEAM_LINE: Pen = Pen::solid(0.7, INK);
/// Half of the width of the ends of a range, mm.
const RANGE: f64 = 1.0;

/// Composes one page with the sections one under the other, all at one scale.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn section_sheet(papers: &SectionPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let language = papers.language;
    let texts = language.sections();
    let mut page = Page::new(language, paper, texts.title);
    let last = format!("{}, {}.", papers.program, papers.date);
    let end = foot(&mut page, &[texts.limits, &last, texts.clinician_decides])?;
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, Rect::new(area.x0, area.y0, area.x1, end - 2.0));
    papers.of.head(language, &mut frame, texts.title, (texts.status.to_owned(), true))?;
    let from = language.whence(papers.recorded_on);
    frame.paragraph(&format!("{}: {from}", texts.counts), &BODY)?;
    legend(&mut frame, texts)?;
    frame.paragraph(texts.key, &BODY)?;
    let scale = scale(papers, area.width());
    for section in papers.sections {
        frame.space(1.0);
        drawing(&mut frame, papers, section, scale)?;
    }
    let mut made = document(language, texts.title, texts.subject, papers.date, papers.program);
    made.pages = papers.of.on(language, vec![page])?;
    Ok(made)
}

/// Says what each line is, beside a piece of it.
fn legend(frame: &mut Frame<'_>, texts: &SectionTexts) -> Result<(), SetError> {
    let entries: [(&str, Sample); 5] = [
        (texts.under_client, |block, at| {
            let around = at.to_path(0.0);
            block.hatch(&around, 45.0, 1.8, &Pen::solid(0.18, SOFT));
            block.path(around, None, Some(Pen::solid(0.45, INK)));
        }),
        (texts.without_client, |block, at| {
            block.open_path(&across(at), &Pen::dashed(0.35, INK, 1.6, 1.4));
        }),
        (texts.underside, |block, at| {
            block.open_path(&across(at), &BODY_LINE);
        }),
        (texts.seam, |block, at| {
            let x = at.center().x;
            block.line(Point::new(x, at.y0), Point::new(x, at.y1), &SEAM_LINE);
        }),
        (texts.site, |block, at| {
            let x = at.center().x;
            range(block, [Point::new(x, at.y1), at.center(), Point::new(x, at.y0)]);
        }),
    ];
    set_legend(frame, &entries)
}

/// A line through the middle of a box.
fn across(at: Rect) -> [Point; 2] {
    [Point::new(at.x0, at.center().y), Point::new(at.x1, at.center().y)]
}

/// Draws a place on the body: its least height, the expected one and the greatest.
pub(super) fn range(block: &mut Block, [low, at, high]: [Point; 3]) {
    let pen = Pen::solid(0.5, ACCENT);
    block.line(low, high, &pen);
    for end in [low, high] {
        block.line(end - (RANGE, 0.0), end + (RANGE, 0.0), &pen);
    }
    block.circle(at, 0.8, Some(Fill::solid(ACCENT)), None);
}

/// Millimetres of the page for a millimetre of the cushion: the widest section fits, with room
/// for the axes and for the labels over it.
fn scale(papers: &SectionPapers<'_>, width: f64) -> f64 {
    let pattern = papers.of.pattern;
    let size = pattern.size();
    let longest = size.width().to_mm().max(size.depth().to_mm());
    let tallest = pattern.wall_height().to_mm() + ABOVE;
    ((width - 44.0) / longest).min((DRAWING - UNDER - LABELS) / tallest).min(0.5)
}

fn drawing(
    frame: &mut Frame<'_>,
    papers: &SectionPapers<'_>,
    section: &Section,
    scale: f64,
) -> Result<(), SetError> {
    let language = papers.language;
    let texts = language.sections();
    let (title, ends, along) = title_and_ends(language, section.at);
    frame.heading(2, &title, &HEADING)?;
    let sites = section.sites.iter().map(|site| (site.name, site.height));
    let shows = language.section_shows(&title, &sites.collect::<Vec<_>>());
    let (place, block) = frame.figure(DRAWING, &shows)?;
    let (low, high) = ends_of(section);
    let middle = f64::midpoint(low, high);
    let base = place.y1 - UNDER;
    let on_page = |[along, height]: [f64; 2]| {
        Point::new(place.center().x + (along - middle) * scale, base - height * scale)
    };
    cushion(block, section, papers.of.pattern.wall_height().to_mm(), &on_page);
    let clipped: Vec<Point> = (section.body.iter())
        .filter(|point| point[1] < papers.of.pattern.wall_height().to_mm() + ABOVE)
        .map(|point| on_page(*point))
        .collect();
    block.open_path(&clipped, &BODY_LINE);
    sites_of(language, block, section, place.y0, &on_page)?;
    let (words, unit) = language.length_axis(texts.height);
    let upright = Axis {
        words: &words,
        unit,
        from: 0.0,
        to: papers.of.pattern.wall_height().to_mm() + ABOVE,
    };
    upright.beside(block, on_page([low, 0.0]) - (2.0 * TO_BAR + 2.0, 0.0), scale)?;
    if section.at == SectionAt::SeatBones {
        // Seen from behind, the client's left is at the left.
        let wall = [0.0, papers.of.pattern.wall_height().to_mm()];
        let [from, to] = wall.map(|height| on_page([low, height]) - (TO_BAR, 0.0));
        block.line(from, to, &Pen::solid(BAR, ACCENT));
    }
    let (words, unit) = language.length_axis(along);
    let level = Axis { words: &words, unit, from: low, to: high };
    level.under(block, |at| on_page([at, 0.0]), ends)
}

/// What a section is called, what stands at its ends, and what its level axis measures.
pub(super) fn title_and_ends(
    language: &dyn Language,
    at: SectionAt,
) -> (String, [&'static str; 2], &'static str) {
    let (shared, texts) = (language.shared(), language.sections());
    match at {
        SectionAt::SeatBones => {
            let ends = [shared.clients_left, shared.clients_right];
            (texts.across.to_owned(), ends, texts.from_the_middle)
        }
        SectionAt::Through(side) => {
            let ends = [shared.rear_edge, shared.front_edge];
            (language.section_along(side), ends, texts.from_the_rear)
        }
    }
}

/// Draws the places on the body, each with its label over the drawing, whose top is given.
fn sites_of(
    language: &dyn Language,
    block: &mut Block,
    section: &Section,
    top: f64,
    on_page: &dyn Fn([f64; 2]) -> Point,
) -> Result<(), SetError> {
    let labels = labels(language, section, on_page)?;
    for (site, label) in section.sites.iter().zip(&labels) {
        let Spread { central, low, high } = site.height;
        let [low, at, high] = [low, central, high].map(|height| on_page([site.at, height.to_mm()]));
        let over = Point::new(at.x, top + 4.0 + 4.0 * label.row as f64);
        block.line(Point::new(at.x, over.y + 0.8), high, &Pen::dashed(0.2, SOFT, 0.5, 1.0));
        range(block, [low, at, high]);
        block.text(over, &label.words, &SMALL.colored(INK), Align::Centre)?;
    }
    Ok(())
}

/// What stands over a site, in the row that it has, 0 the upmost.
struct Label {
    words: String,
    /// The middle, where the line to the site goes down, and half of the width, mm of the page.
    middle: f64,
    half: f64,
    row: usize,
}

impl Label {
    /// Whether the words of two labels would run into each other.
    fn runs_into(&self, other: &Self) -> bool {
        self.row == other.row
            && (self.middle - other.middle).abs() < self.half + other.half + BETWEEN
    }

    /// Whether the line down from the upper of two labels would go through the lower one.
    fn crosses(&self, other: &Self) -> bool {
        let lower = if self.row > other.row { self } else { other };
        self.row != other.row && (self.middle - other.middle).abs() < lower.half + BETWEEN
    }
}

/// Puts each label into the upmost row in which it keeps clear of those before. Where two sites are
/// so near that one line must go through the other's words, the words still keep clear.
fn labels(
    language: &dyn Language,
    section: &Section,
    on_page: &dyn Fn([f64; 2]) -> Point,
) -> Result<Vec<Label>, SetError> {
    let mut labels: Vec<Label> = Vec::new();
    for site in &section.sites {
        let words = language.left_under(site.name, &site.height);
        let half = measure(&words, &SMALL)? / 2.0;
        let mut label = Label { words, middle: on_page([site.at, 0.0]).x, half, row: 0 };
        let mut row_where = |meets: &dyn Fn(&Label, &Label) -> bool| {
            (0..=labels.len()).find(|row| {
                label.row = *row;
                !labels.iter().any(|other| meets(&label, other))
            })
        };
        let clear = row_where(&|one, other| one.runs_into(other) || one.crosses(other));
        // One row more than there are labels has room for the words.
        label.row = clear.or_else(|| row_where(&Label::runs_into)).unwrap_or(labels.len());
        labels.push(label);
    }
    Ok(labels)
}

/// The cushion between base and loaded top, hatched; its unloaded top dashed; its walls.
pub(super) fn cushion(
    block: &mut Block,
    section: &Section,
    wall: f64,
    on_page: &dyn Fn([f64; 2]) -> Point,
) {
    let (Some(first), Some(last)) = (section.loaded.first(), section.loaded.last()) else { return };
    let mut path = BezPath::new();
    path.move_to(on_page([first[0], 0.0]));
    section.loaded.iter().for_each(|point| path.line_to(on_page(*point)));
    path.line_to(on_page([last[0], 0.0]));
    path.close_path();
    block.hatch(&path, 45.0, 1.8, &Pen::solid(0.18, SOFT));
    block.path(path, None, Some(Pen::solid(0.45, INK)));
    for seam in &section.seams {
        let near =
            |a: &&[f64; 2], b: &&[f64; 2]| (a[0] - seam).abs().total_cmp(&(b[0] - seam).abs());
        let top = section.loaded.iter().min_by(near).map_or(wall, |point| point[1].min(wall));
        let (from, to) = (on_page([*seam, 0.0]), on_page([*seam, top]));
        block.line(from, to, &SEAM_LINE);
    }
    let unloaded: Vec<Point> = section.unloaded.iter().map(|point| on_page(*point)).collect();
    block.open_path(&unloaded, &Pen::dashed(0.35, INK, 1.6, 1.4));
}

/// Where a section begins and ends, mm.
pub(super) fn ends_of(section: &Section) -> (f64, f64) {
    let along = section.loaded.iter().chain(&section.unloaded).map(|point| point[0]);
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}
