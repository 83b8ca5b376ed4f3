//! The setup card, for the therapist at the chair, in three parts: set, check and change, move.
//! Each part begins a page, so that a page by itself is of use.

mod check;
mod counts;
mod moves;
mod set;

use case::{Costs, CountedFrom, GoalOutcome, IfThen, Sides, Spread};
use cushion::{Length, Mass, Side};
use kurbo::{Point, Rect};

use super::look::{ACCENT, BODY, GUTTER, INK, PALE, STRONG, foot, inside};
use super::{ClientPapers, DocumentError, SizeReasons};
use crate::color::Color;
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;

/// What follows from goals and checks; empty where nothing is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SetupExtras {
    /// What becomes of each goal.
    pub goals: Vec<GoalOutcome>,
    /// What the counts cost, beside the cushion that they are told from.
    pub costs: Option<Costs>,
    /// How the client is expected to sit on the counts.
    pub expected: Option<ExpectedSeat>,
    /// Moves to the plan.
    pub moves: Vec<case::Move>,
    /// From what the moves go out: what was recorded last before the plan.
    pub moves_from: Option<CountedFrom>,
    /// What to move when a check finds something.
    pub if_then: Vec<IfThen>,
    /// How high each compartment is expected to stand without a client, in the pattern's order; none
    /// where that is not known.
    pub heights: Vec<Option<Spread<Length>>>,
    /// What the finished cushion is expected to weigh; none where that is not known.
    pub finished: Option<Spread<Mass>>,
    /// Why the size was chosen.
    pub size: Option<SizeReasons>,
}

/// How a client is expected to sit.
#[derive(Clone, Debug, PartialEq)]
pub struct ExpectedSeat {
    /// Cushion left under each seat bone.
    pub left_under: Sides<Spread<Length>>,
    /// The side of the pelvis that is lower, at the seat bones.
    pub lower_side: Option<Side>,
    /// By how much.
    pub lower_by: Length,
}

/// A part of the card.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    Set,
    Check,
    Move,
}

impl Part {
    const ALL: [Self; 3] = [Self::Set, Self::Check, Self::Move];
}

/// Composes the setup card: the cushion from above with number and count in each compartment, who
/// the client is and what is wanted; then the checks by hand with room to write, and what to do
/// when they find something; then the moves, from below. A part without moves is left out.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn setup_card(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.setup_card();
    let mut document = papers.document_with_code(texts.title, texts.subject);
    document.pages = set::pages(papers, paper)?;
    document.pages.extend(check::pages(papers, paper)?);
    if !papers.extras.moves.is_empty() {
        document.pages.extend(moves::pages(papers, paper)?);
    }
    document.pages = papers.identified(document.pages)?;
    Ok(document)
}

/// Sets the pages of a part.
fn flowed(
    papers: &ClientPapers<'_>,
    paper: Paper,
    part: Part,
    set: impl Fn(&mut Flow<'_>) -> Result<(), SetError>,
) -> Result<Vec<Page>, SetError> {
    let begin = |_| {
        let mut page = Page::new(papers.language, paper, papers.language.setup_card().title);
        let mut frame = framed(&mut page, papers)?;
        head(&mut frame, papers, part)?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    set(&mut flow)?;
    Ok(flow.pages())
}

/// A frame above the foot of the page.
fn framed<'p>(page: &'p mut Page, papers: &ClientPapers<'_>) -> Result<Frame<'p>, SetError> {
    let made_from = papers.language.setup_card_origin(papers.plan, papers.date);
    let drawn_by = papers.drawn_by().map(|plugin| plugin.said(papers.language));
    let mut lines = vec![made_from.as_str()];
    lines.extend(drawn_by.as_deref());
    lines.push(papers.language.setup_card().clinician_decides);
    let end = foot(page, &lines)?;
    let area = inside(page);
    Ok(Frame::new(page, Rect::new(area.x0, area.y0, area.x1, end - 2.0)))
}

fn head(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, part: Part) -> Result<(), SetError> {
    let status = papers.language.setup_card_state(papers.standing());
    papers.head_with(frame, papers.language.setup_card().title, status)?;
    tabs(frame, papers, part)
}

/// Which parts the card has, and which one this page is of.
fn tabs(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, part: Part) -> Result<(), SetError> {
    const HEIGHT: f64 = 6.0;
    let names = papers.language.setup_card().parts;
    let has_moves = !papers.extras.moves.is_empty();
    let parts: Vec<(usize, Part)> = Part::ALL
        .into_iter()
        .enumerate()
        .filter(|(_, own)| has_moves || *own != Part::Move)
        .collect();
    let place = frame.take(HEIGHT, names[0])?;
    let step = (place.width() + GUTTER) / parts.len() as f64;
    for (column, (at, own)) in parts.iter().enumerate() {
        let x = place.x0 + step * column as f64;
        let tab = Rect::new(x, place.y0, x + step - GUTTER, place.y1);
        let (ground, ink) = if *own == part { (ACCENT, Color::WHITE) } else { (PALE, INK) };
        let role = if *own == part { Role::Heading(2) } else { Role::Paragraph };
        let block = frame.page().block(role);
        block.rect(tab, Some(Fill::solid(ground)), None);
        let style = STRONG.colored(ink);
        let baseline = Point::new(tab.center().x, tab.center().y + style.cap_height() / 2.0);
        block.text(baseline, &format!("{} {}", at + 1, names[*at]), &style, Align::Centre)?;
    }
    frame.space(2.5);
    Ok(())
}

/// A table, of whose columns the first few are words, the others numbers and room to write.
fn table_with(heads: &[&str], widths: &[f64], words: usize) -> Table {
    let column = |(at, (head, width)): (usize, (&&str, &f64))| {
        let align = if at < words { Align::Left } else { Align::Centre };
        Column::new(*head, *width, align)
    };
    let columns = heads.iter().zip(widths).enumerate().map(column).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head.size_pt = 8.0;
    table.mark = ACCENT;
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    table
}
