//! Sections through the cushion under the client: shapes and heights, never pressures.

use case::SiteName;
use cushion::{Side, Size};
use kurbo::{BezPath, Point, Rect};
use words::Language;

use super::look::{ACCENT, BODY, HEADING, INK, SMALL, SOFT, STRONG, foot, inside, title_line};
use super::{DocumentError, document};
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Page, Pen};
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
    /// Its height above the base, mm.
    pub height: f64,
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
    /// The client's code.
    pub client: &'a str,
    /// The title of the layout.
    pub layout: &'a str,
    /// When the counts were recorded; none where they are of a plan that is not.
    pub recorded_on: Option<case::Date>,
    /// The size of the cushion.
    pub size: Size,
    /// Height of the walls, mm.
    pub wall_mm: f64,
    /// The sections.
    pub sections: &'a [Section],
    /// The day that the sheet bears.
    pub date: case::Date,
    /// Program and version.
    pub program: &'a str,
}

/// Height of one drawing, mm.
const DRAWING: f64 = 66.0;
/// The underside of the body is drawn up to so far above the walls, mm of the client.
const ABOVE: f64 = 30.0;
/// Height of the labels over a drawing, mm: two rows, as sites that are usual have.
const LABELS: f64 = 10.0;
/// Between two labels, mm.
const BETWEEN: f64 = 2.0;

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
    title_line(&mut frame, texts.title, texts.status, true)?;
    let SectionPapers { client, layout, size, recorded_on, .. } = *papers;
    frame.paragraph(&language.what_is_cut(client, layout, size, recorded_on), &STRONG)?;
    frame.paragraph(texts.key, &BODY)?;
    let scale = scale(papers, area.width());
    for section in papers.sections {
        frame.space(2.0);
        drawing(&mut frame, papers, section, scale)?;
    }
    let mut made = document(language, texts.title, texts.subject, papers.date, papers.program);
    made.pages.push(page);
    Ok(made)
}

/// Millimetres of the page for a millimetre of the cushion: the widest section fits, with room
/// for words at its ends and over it.
fn scale(papers: &SectionPapers<'_>, width: f64) -> f64 {
    let longest = papers.size.width().to_mm().max(papers.size.depth().to_mm());
    let tallest = papers.wall_mm + ABOVE;
    ((width - 44.0) / longest).min((DRAWING - 14.0 - LABELS) / tallest).min(0.5)
}

fn drawing(
    frame: &mut Frame<'_>,
    papers: &SectionPapers<'_>,
    section: &Section,
    scale: f64,
) -> Result<(), SetError> {
    let language = papers.language;
    let shared = language.shared();
    let (title, ends) = match section.at {
        SectionAt::SeatBones => {
            (language.sections().across.to_owned(), [shared.clients_left, shared.clients_right])
        }
        SectionAt::Through(side) => {
            (language.section_along(side), [shared.rear_edge, shared.front_edge])
        }
    };
    frame.heading(2, &title, &HEADING)?;
    let sites = section.sites.iter().map(|site| (site.name, site.height));
    let shows = language.section_shows(&title, &sites.collect::<Vec<_>>());
    let (place, block) = frame.figure(DRAWING - 6.0, &shows)?;
    let (low, high) = ends_of(section);
    let middle = f64::midpoint(low, high);
    let base = place.y1 - 8.0;
    let on_page = |[along, height]: [f64; 2]| {
        Point::new(place.center().x + (along - middle) * scale, base - height * scale)
    };
    cushion(block, section, papers.wall_mm, &on_page);
    let clipped: Vec<Point> = (section.body.iter())
        .filter(|point| point[1] < papers.wall_mm + ABOVE)
        .map(|point| on_page(*point))
        .collect();
    block.open_path(&clipped, &Pen::solid(0.8, INK));
    let style = SMALL.colored(INK);
    let labels = labels(language, section, &on_page)?;
    for (site, label) in section.sites.iter().zip(&labels) {
        let at = on_page([site.at, site.height]);
        let foot = on_page([site.at, 0.0]);
        block.line(at, foot, &Pen::solid(0.35, ACCENT));
        block.circle(at, 0.8, Some(crate::page::Fill::solid(ACCENT)), None);
        let over = Point::new(at.x, place.y0 + 4.0 + 4.0 * label.row as f64);
        block.line(Point::new(at.x, over.y + 0.8), at, &Pen::dashed(0.2, SOFT, 0.5, 1.0));
        block.text(over, &label.words, &style, Align::Centre)?;
    }
    let (left, right) = (on_page([low, 0.0]), on_page([high, 0.0]));
    block.text(Point::new(left.x - 2.0, base), ends[0], &style, Align::Right)?;
    block.text(Point::new(right.x + 2.0, base), ends[1], &style, Align::Left)?;
    let bar = language.sections().scale_bar;
    scale_bar(block, bar, Point::new(place.center().x, base + 6.0), scale)
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
        let words = language.left_under(site.name, site.height);
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
fn cushion(block: &mut Block, section: &Section, wall: f64, on_page: &dyn Fn([f64; 2]) -> Point) {
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
        block.line(from, to, &Pen::solid(0.7, INK));
    }
    let unloaded: Vec<Point> = section.unloaded.iter().map(|point| on_page(*point)).collect();
    block.open_path(&unloaded, &Pen::dashed(0.35, INK, 1.6, 1.4));
}

/// Where a section begins and ends, mm.
fn ends_of(section: &Section) -> (f64, f64) {
    let along = section.loaded.iter().chain(&section.unloaded).map(|point| point[0]);
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}

/// A bar of 100 mm of the cushion.
fn scale_bar(block: &mut Block, words: &str, at: Point, scale: f64) -> Result<(), SetError> {
    let half = 50.0 * scale;
    let (from, to) = (Point::new(at.x - half, at.y), Point::new(at.x + half, at.y));
    let pen = Pen::solid(0.35, INK);
    block.line(from, to, &pen);
    for end in [from, to] {
        block.line(end - (0.0, 1.0), end + (0.0, 1.0), &pen);
    }
    block.text(Point::new(to.x + 2.0, at.y + 1.0), words, &SMALL, Align::Left)?;
    Ok(())
}
