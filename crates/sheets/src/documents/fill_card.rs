//! The fill card: for whoever counts cells into the cover, drawn from below.

use case::Spread;
use cushion::{CompartmentIx, Length, Mass, Pattern, Side};
use kurbo::{BezPath, Point, Rect};
use words::Language;

use super::look::{
    ACCENT, BODY, GUTTER, HEADING, INK, PALE, SMALL, STRONG, columns, facts, field_rows,
    first_within, foot, inside, text, title_line, unreviewed,
};
use super::masthead::CardIdentity;
use super::views::{View, draw, draw_named, mark_clients_left, place_on_page};
use super::{ClientPapers, DocumentError, StockPapers, document};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, wrap};

/// What is counted into one compartment.
struct Count {
    number: u8,
    words: String,
    side: Option<Side>,
    cells: u32,
    tolerance: u32,
    /// How high it is expected to stand after patting.
    height: Option<Spread<Length>>,
}

/// What both fill cards share.
struct Card<'a> {
    language: &'a dyn Language,
    title: &'a str,
    /// For whom it is; nobody for a size as supplied, whose counts are an estimate.
    client: Option<&'a ClientPapers<'a>>,
    /// By what a card of an order is known again that is of no client.
    card: Option<CardIdentity<'a>>,
    facts: Vec<(&'a str, String)>,
    counts: Vec<Count>,
    spares: Option<u32>,
    finished: Option<Spread<Mass>>,
    foot: String,
}

/// Which card of an order a fill card is.
#[derive(Clone, Copy, Debug)]
pub(super) struct InOrder<'a> {
    /// The order.
    pub(super) order: &'a str,
    /// Which card, from 1.
    pub(super) card: usize,
    /// Of how many.
    pub(super) cards: usize,
    /// The serial of a cushion as supplied, where it has one.
    pub(super) serial: Option<&'a str>,
    /// By which the counts of a cushion as supplied are known again.
    pub(super) word: &'a str,
    /// Spare cells that go with a cushion as supplied.
    pub(super) spares: u32,
}

/// Composes the fill card for one client's plan.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or something finds no room.
pub fn fill_order(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let texts = papers.language.fill_card();
    let mut document = papers.document(texts.title_for_one_client, texts.subject);
    document.pages = pages_of_client(papers, None, paper)?;
    Ok(document)
}

/// The pages for one client's plan, as a card of an order where it is one.
pub(super) fn pages_of_client(
    papers: &ClientPapers<'_>,
    of: Option<&InOrder<'_>>,
    paper: Paper,
) -> Result<Vec<Page>, DocumentError> {
    papers.counts_fit()?;
    let plan = papers.plan;
    let recorded = plan.counts.iter().zip(papers.pattern.compartments());
    let (language, shared) = (papers.language, papers.language.shared());
    let texts = language.fill_card();
    let mut made_from = of.map_or_else(String::new, |own| own.said(language) + " ");
    made_from += &language.fill_card_origin(plan, papers.date);
    made_from.extend(papers.drawn_by().map(|plugin| format!(" {}", plugin.said(language))));
    let mut facts = vec![
        (shared.cell, papers.cell.name.to_string()),
        (shared.cells_in_all, plan.total().to_string()),
        (shared.spare_cells, papers.spares().to_string()),
        (shared.plan_recorded, plan.on.to_string()),
    ];
    facts.extend(of.map(|own| own.fact(language)));
    let card = Card {
        language,
        title: texts.title_for_one_client,
        client: Some(papers),
        card: None,
        facts,
        // An order is for one person: a cell more or less is counted again.
        counts: recorded
            .enumerate()
            .map(|(at, (count, there))| Count {
                height: papers.extras.heights.get(at).copied().flatten(),
                number: count.number,
                words: language.compartment(there),
                side: there.side,
                cells: count.planned,
                tolerance: 0,
            })
            .collect(),
        spares: Some(papers.spares()),
        finished: papers.extras.finished,
        foot: made_from,
    };
    let pages = first_within(1, &Room::ALL, |room| compose(papers.pattern, &card, paper, room))?;
    Ok(papers.identified(pages)?)
}

impl InOrder<'_> {
    fn said(&self, language: &dyn Language) -> String {
        language.card_of_order(self.order, self.card, self.cards)
    }

    fn fact(&self, language: &dyn Language) -> (&'static str, String) {
        (language.order().card, language.page_of(self.card, self.cards))
    }
}

/// Composes the filling table of one size as supplied.
///
/// # Errors
///
/// Fails where the fill is not for this pattern, or something finds no room.
pub fn stock_fill_card(papers: &StockPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let (language, texts) = (papers.language, papers.language.fill_card());
    let (title, subject) = (texts.title_as_supplied, texts.subject);
    let mut document = document(language, title, subject, papers.date, papers.program);
    document.pages = pages_of_stock(papers, None, paper)?;
    Ok(document)
}

/// The pages of one size as supplied, as a card of an order where it is one.
pub(super) fn pages_of_stock(
    papers: &StockPapers<'_>,
    of: Option<&InOrder<'_>>,
    paper: Paper,
) -> Result<Vec<Page>, DocumentError> {
    let pattern = papers.pattern;
    if papers.fill.compartments.len() != pattern.compartments().len() {
        return Err(DocumentError::OtherFill);
    }
    let language = papers.language;
    let identity = of.map(|own| {
        let InOrder { order, card, serial, word, .. } = *own;
        CardIdentity { order, serial, pattern, card, word }
    });
    let card = Card {
        language,
        title: language.fill_card().title_as_supplied,
        client: None,
        card: identity,
        facts: facts_of_stock(papers, of),
        counts: pattern
            .indices()
            .map(|ix| {
                let cells = papers.fill[ix].cells.stock;
                Count {
                    height: papers.heights.get(ix.index()).copied().flatten(),
                    number: pattern[ix].number,
                    words: language.compartment(&pattern[ix]),
                    side: pattern[ix].side,
                    cells,
                    tolerance: tolerance(cells),
                }
            })
            .collect(),
        spares: of.map(|own| own.spares).filter(|spares| *spares > 0),
        finished: papers.finished,
        foot: foot_of_stock(papers, of),
    };
    let mut pages = first_within(1, &Room::ALL, |room| compose(pattern, &card, paper, room))?;
    match identity {
        Some(own) => pages = own.on(language, pages)?,
        None => pages.iter_mut().try_for_each(|page| unreviewed(page, language))?,
    }
    Ok(pages)
}

/// The facts of a size as supplied; the strip of a card of an order has some of them.
fn facts_of_stock<'a>(
    papers: &StockPapers<'a>,
    of: Option<&InOrder<'_>>,
) -> Vec<(&'a str, String)> {
    let (language, shared, pattern) = (papers.language, papers.language.shared(), papers.pattern);
    let cell = (shared.cell, papers.cell.name.to_string());
    let all = (shared.cells_in_all, papers.fill.total().to_string());
    let printed = (language.fill_card().printed, papers.date.to_string());
    let Some(own) = of else {
        let layout = pattern.layout().as_str();
        return vec![
            (shared.layout, language.layout_with_revision(layout, pattern.revision())),
            (shared.width_by_depth, language.size(pattern.size())),
            (shared.rated_for, language.rating(pattern.max_user_weight())),
            cell,
            all,
            printed,
        ];
    };
    vec![cell, all, (shared.spare_cells, own.spares.to_string()), printed, own.fact(language)]
}

fn foot_of_stock(papers: &StockPapers<'_>, of: Option<&InOrder<'_>>) -> String {
    let language = papers.language;
    let said = of.map_or_else(String::new, |own| own.said(language) + " ");
    match papers.drawn_by {
        None => {
            let known = language.layout_digest(papers.pattern.revision(), papers.digest);
            format!("{said}{}. {known}", papers.program)
        }
        Some(plugin) => format!("{said}{}. {}", papers.program, plugin.said(language)),
    }
}

/// Cells that a stock count may be off: two in a hundred, and one at least.
///
/// Two cells on one side change the height by about half a millimetre and the tilt by half a
/// degree, which is less than a hand finds.
#[must_use]
pub fn tolerance(cells: u32) -> u32 {
    (cells / 50).max(1)
}

/// How high the drawings, the rows of the table and the fields are, in millimetres.
#[derive(Clone, Copy)]
struct Room {
    drawing: f64,
    row: f64,
    field: f64,
}

impl Room {
    /// From the most room to the least in which one can still write.
    const ALL: [Self; 5] = [
        Self { drawing: 92.0, row: 7.4, field: 9.0 },
        Self { drawing: 88.0, row: 6.8, field: 8.4 },
        Self { drawing: 84.0, row: 6.4, field: 7.6 },
        Self { drawing: 80.0, row: 6.0, field: 7.0 },
        Self { drawing: 74.0, row: 6.0, field: 7.0 },
    ];
}

fn compose(
    pattern: &Pattern,
    card: &Card<'_>,
    paper: Paper,
    room: Room,
) -> Result<Vec<Page>, SetError> {
    let begin = |_| {
        let mut page = Page::new(card.language, paper, card.title);
        let lines = [card.foot.as_str(), card.language.fill_card().clinician_decides];
        let end = foot(&mut page, &lines)?;
        let area = inside(&page);
        let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..area });
        let status = card.language.fill_card().estimate_until_counted;
        match (card.client, card.card) {
            (Some(papers), _) => papers.head(&mut frame, card.title)?,
            (None, Some(own)) => own.head(card.language, &mut frame, card.title, status)?,
            (None, None) => title_line(&mut frame, card.title, status, true)?,
        }
        facts(&mut frame, &card.facts)?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    flow.put(|frame| drawings(frame, pattern, card, room))?;
    flow.space(2.5);
    counting_table(&mut flow, card, room)?;
    flow.space(2.5);
    flow.put(|frame| fields(frame, card, room))?;
    Ok(flow.pages())
}

fn drawings(
    frame: &mut Frame<'_>,
    pattern: &Pattern,
    card: &Card<'_>,
    room: Room,
) -> Result<(), SetError> {
    let (texts, shared) = (card.language.fill_card(), card.language.shared());
    let place = frame.take(room.drawing, "the drawings")?;
    let split = columns(place, 6, 12).x0;
    let page = frame.page();
    let heading = page.block(Role::Heading(2));
    let baseline = place.y0 + HEADING.first_baseline();
    heading.text(Point::new(place.x0, baseline), texts.from_below, &HEADING, Align::Left)?;
    let top = place.y0 + HEADING.line_height();
    let alt = card.language.counts_from_below(pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let counts = |ix: CompartmentIx| {
        let count = &card.counts[ix.index()];
        (count.number.to_string(), Some(count.cells.to_string()))
    };
    let key = place.y1 - SMALL.line_height();
    let area = Rect::new(place.x0, top, split - GUTTER, key);
    draw_named(block, shared, pattern, View::Below, area, counts, 14.0)?;
    let at = Point::new(place.x0, key + SMALL.first_baseline());
    let block = page.block(Role::Paragraph);
    block.text(at, shared.discs_and_numbers, &SMALL, Align::Left)?;
    turning(page, card.language, pattern, Rect { x0: split, ..place })
}

/// How to turn the cushion over: the cover on both its faces, and the steps.
fn turning(
    page: &mut Page,
    language: &dyn Language,
    pattern: &Pattern,
    area: Rect,
) -> Result<(), SetError> {
    /// The greatest height of the row of pictures, and room beside and above a cover, in millimetres.
    const HEIGHT: f64 = 46.0;
    const BESIDE: f64 = 3.0;
    const APART: f64 = 7.0;
    const ABOVE: f64 = 5.0;
    const INDENT: f64 = 5.0;
    let (texts, shared) = (language.fill_card(), language.shared());
    let mut frame = Frame::new(page, area);
    frame.heading(2, texts.turn_it_over, &HEADING)?;
    // The steps stand whole above the line under the large drawing.
    let lines = texts.turning_steps.iter().map(|words| wrap(words, &BODY, area.width() - INDENT));
    let lines = lines.collect::<Result<Vec<_>, _>>()?.iter().map(Vec::len).sum::<usize>();
    let steps = lines as f64 * BODY.line_height() + SMALL.line_height() + ABOVE;
    let height = HEIGHT.min(area.y1 - steps - frame.y());
    let (place, block) = frame.figure(height, texts.turning_pictures)?;
    let style = text(8.0, Weight::Bold, INK);
    let wide = (place.width() - APART) / 2.0;
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    let faces = [(View::Above, shared.top, 0.0), (View::Below, texts.openings, wide + APART)];
    for (view, face, x) in faces {
        let tile = Rect::from_origin_size((place.x0 + x, place.y0), (wide, place.height()));
        let inner =
            Rect::new(tile.x0 + BESIDE, tile.y0 + ABOVE, tile.x1 - BESIDE, tile.y1 - 2.0 * ABOVE);
        // Numbers that find no room stand above and below the bar.
        draw(block, pattern, view, inner, numbers, 8.0, 0.5 * inner.height())?;
        mark_clients_left(block, pattern, view, inner);
        let drawn = place_on_page(pattern, view, inner);
        let [front, rear] =
            [pattern.size().depth().to_mm(), 0.0].map(|y| (drawn * Point::new(0.0, y)).y);
        let middle = tile.center().x;
        block.text(Point::new(middle, front - 1.6), shared.front, &style, Align::Centre)?;
        let below = rear + 1.6 + style.cap_height();
        block.text(Point::new(middle, below), face, &style, Align::Centre)?;
    }
    over(block, place);
    for (step, words) in texts.turning_steps.iter().enumerate() {
        frame.item(&format!("{}", step + 1), INDENT, words, &BODY)?;
    }
    Ok(())
}

/// The arrow from one cover to the other, in the middle of an area.
fn over(block: &mut Block, area: Rect) {
    let (middle, y) = (area.center(), area.y0 + 6.0);
    let half = 5.5;
    let mut way = BezPath::new();
    way.move_to((middle.x - half, y));
    way.curve_to((middle.x - half, y - 7.0), (middle.x + half, y - 7.0), (middle.x + half, y));
    block.curved_arrow(&way, 2.2, &Pen::solid(0.6, INK));
}

fn counting_table(flow: &mut Flow<'_>, card: &Card<'_>, room: Room) -> Result<(), SetError> {
    let wide = flow.width();
    let widths = [11.0, wide - 120.0, 18.0, 26.0, 26.0, 13.0, 26.0];
    let heads = card.language.fill_card().columns.iter().zip(widths).enumerate();
    let columns = heads.map(|(at, (head, width))| {
        let column = Column::new(*head, width, if at < 2 { Align::Left } else { Align::Centre });
        match at {
            0 => column.of_compartments(),
            2 => column.with(text(11.5, Weight::Bold, INK)),
            // Room is left to write what was measured.
            6 => Column { align: Align::Left, ..column.with(SMALL) },
            _ => column,
        }
    });
    let mut table = Table::new(columns.collect(), STRONG, BODY);
    table.head.size_pt = 8.0;
    table.mark = ACCENT;
    table.head_ground = Some(PALE);
    table.margin = 1.0;
    table.least_row = room.row;
    let left = (0..).zip(&card.counts).filter(|(_, own)| own.side == Some(Side::Left));
    table.of_clients_left = left.map(|(at, _)| at).collect();
    for count in &card.counts {
        let cells = card.language.cells_within(count.cells, count.tolerance);
        table.row([
            count.number.to_string(),
            count.words.clone(),
            cells,
            String::new(),
            String::new(),
            String::new(),
            count.height.map_or_else(String::new, |own| card.language.height_to_measure(&own)),
        ]);
    }
    let total: u32 = card.counts.iter().map(|count| count.cells).sum();
    table.row([
        String::new(),
        card.language.shared().total.to_owned(),
        total.to_string(),
        String::new(),
        String::new(),
        String::new(),
        String::new(),
    ]);
    flow.headed_table("", &HEADING, &table, |frame, rows, from| {
        let left = frame.area().x0 + widths[..5].iter().sum::<f64>();
        let pen = Pen::solid(0.4, INK);
        let block = frame.page().block(Role::Artifact);
        // The first row is the head, the last the total; between, each opening gets a box.
        for row in rows.iter().skip(1).take(card.counts.len() - from) {
            let side = 3.6;
            let x = left + widths[5] / 2.0 - side / 2.0;
            block.check_box(Point::new(x, row.center().y - side / 2.0), side, &pen);
        }
    })
}

/// What is written by hand about the filled cushion.
fn fields(frame: &mut Frame<'_>, card: &Card<'_>, room: Room) -> Result<(), SetError> {
    let texts = card.language.fill_card();
    frame.paragraph(texts.count_do_not_measure, &STRONG)?;
    let finish = match &card.finished {
        Some(mass) => format!("{} {}", texts.how_to_finish, card.language.expected_mass(mass)),
        None => texts.how_to_finish.to_owned(),
    };
    frame.paragraph(&finish, &BODY)?;
    if let Some(spares) = card.spares {
        let said = match card.client {
            Some(_) => card.language.pack_spares(spares),
            None => card.language.pack_spares_of_stock(spares),
        };
        frame.paragraph(&said, &BODY)?;
    }
    field_rows(frame, texts.fields, room.field)
}
