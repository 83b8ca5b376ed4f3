//! The fill card: for whoever counts cells into the cover, drawn from below.

use cushion::{CompartmentIx, Pattern};
use kurbo::{BezPath, Point, Rect};
use words::Language;

use super::look::{
    ACCENT, BODY, HEADING, INK, PALE, STRONG, facts, field_rows, first_within, foot, inside, text,
    title_line,
};
use super::views::{View, draw_named, plain};
use super::{ClientPapers, DocumentError, StockPapers, document};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;

/// What is counted into one compartment.
struct Count {
    number: u8,
    words: String,
    cells: u32,
    tolerance: u32,
}

/// What both fill cards share.
struct Card<'a> {
    language: &'a dyn Language,
    title: &'a str,
    status: String,
    /// Whether the counts are still an estimate.
    estimate: bool,
    facts: Vec<(&'a str, String)>,
    counts: Vec<Count>,
    spares: Option<u32>,
    foot: String,
}

/// Composes the fill card for one client's plan.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or something finds no room.
pub fn fill_order(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let plan = papers.plan;
    let recorded = plan.counts.iter().zip(papers.pattern.compartments());
    let (language, shared) = (papers.language, papers.language.shared());
    let texts = language.fill_card();
    let mut made_from = language.fill_card_origin(plan, papers.date);
    made_from.extend(papers.drawn_by().map(|plugin| format!(" {}", plugin.said(language))));
    let serial = papers.client.cushion.serial.clone().map(|own| (shared.serial, own));
    let card = Card {
        language,
        title: texts.title_for_one_client,
        status: language.fill_card_state(papers.standing()),
        estimate: papers.is_estimate(),
        facts: [
            (shared.client, papers.client.code.to_string()),
            (shared.layout, papers.pattern.layout().to_string()),
            (shared.width_by_depth, language.size(plan.size)),
            (shared.rated_for, language.rating(papers.pattern.max_user_weight())),
            (shared.cell, papers.cell.name.to_string()),
            (shared.cells_in_all, plan.total().to_string()),
            (shared.plan_recorded, plan.on.to_string()),
        ]
        .into_iter()
        .chain(serial)
        .collect(),
        // An order is for one person: a cell more or less is counted again.
        counts: recorded
            .map(|(count, there)| Count {
                number: count.number,
                words: language.compartment(there),
                cells: count.planned,
                tolerance: 0,
            })
            .collect(),
        spares: Some(papers.spares()),
        foot: made_from,
    };
    let mut document = papers.document(texts.title_for_one_client, texts.subject);
    let pages = first_within(1, &Room::ALL, |room| compose(papers.pattern, &card, paper, room))?;
    document.pages = papers.identified(pages)?;
    Ok(document)
}

/// Composes the filling table of one size as supplied.
///
/// # Errors
///
/// Fails where the fill is not for this pattern, or something finds no room.
pub fn stock_fill_card(papers: &StockPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let pattern = papers.pattern;
    if papers.fill.compartments.len() != pattern.compartments().len() {
        return Err(DocumentError::OtherFill);
    }
    let (language, shared) = (papers.language, papers.language.shared());
    let texts = language.fill_card();
    let card = Card {
        language,
        title: texts.title_as_supplied,
        status: texts.estimate_until_counted.to_owned(),
        estimate: true,
        facts: vec![
            (shared.layout, pattern.layout().to_string()),
            (shared.width_by_depth, language.size(pattern.size())),
            (shared.rated_for, language.rating(pattern.max_user_weight())),
            (shared.cell, papers.cell.name.to_string()),
            (shared.cells_in_all, papers.fill.total().to_string()),
            (texts.printed, papers.date.to_string()),
        ],
        counts: pattern
            .indices()
            .map(|ix| {
                let cells = papers.fill[ix].cells.stock;
                Count {
                    number: pattern[ix].number,
                    words: language.compartment(&pattern[ix]),
                    cells,
                    tolerance: tolerance(cells),
                }
            })
            .collect(),
        spares: None,
        foot: match papers.drawn_by {
            None => format!("{}.", papers.program),
            Some(plugin) => format!("{}. {}", papers.program, plugin.said(language)),
        },
    };
    let (title, subject) = (texts.title_as_supplied, texts.subject);
    let mut document = document(language, title, subject, papers.date, papers.program);
    document.pages = first_within(1, &Room::ALL, |room| compose(pattern, &card, paper, room))?;
    Ok(document)
}

/// Cells that a stock count may be off: two in a hundred, and one at least.
///
/// Two cells on one side change the height by about half a millimetre and the tilt by half a
/// degree, which is less than a hand finds.
fn tolerance(cells: u32) -> u32 {
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
    const ALL: [Self; 4] = [
        Self { drawing: 104.0, row: 8.0, field: 9.0 },
        Self { drawing: 98.0, row: 7.4, field: 8.4 },
        Self { drawing: 96.0, row: 6.6, field: 7.6 },
        Self { drawing: 94.0, row: 6.0, field: 7.0 },
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
        title_line(&mut frame, card.title, &card.status, card.estimate)?;
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
    let split = place.x0 + place.width() * 0.62;
    let page = frame.page();
    let heading = page.block(Role::Heading(2));
    let baseline = place.y0 + HEADING.first_baseline();
    heading.text(Point::new(place.x0, baseline), texts.from_below, &HEADING, Align::Left)?;
    let top = place.y0 + HEADING.line_height();
    let alt = card.language.counts_from_below(pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let counts = |ix: CompartmentIx| {
        let count = &card.counts[ix.index()];
        (count.number.to_string(), Some(card.language.cells_in_drawing(count.cells)))
    };
    let area = Rect::new(place.x0, top, split - 5.0, place.y1);
    draw_named(block, shared, pattern, View::Below, area, counts, 17.0)?;
    let above = Rect::new(split, place.y1 - 38.0, place.x1, place.y1);
    turning(
        page,
        card.language,
        Rect::new(split, place.y0, place.x1, above.y0 - HEADING.size_mm()),
    )?;
    let block = page.block(Role::Figure { alt: texts.numbers_from_above.to_owned() });
    let caption = Point::new(above.x0, above.y0);
    block.text(caption, texts.from_above, &STRONG, Align::Left)?;
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    let small = Rect::new(above.x0, above.y0 + 1.0, above.x1, above.y1);
    draw_named(block, shared, pattern, View::Above, small, numbers, 8.5)
}

/// How to turn the cushion over: words, and three small pictures.
fn turning(page: &mut Page, language: &dyn Language, area: Rect) -> Result<(), SetError> {
    let (texts, shared) = (language.fill_card(), language.shared());
    let mut frame = Frame::new(page, area);
    frame.heading(2, texts.turn_it_over, &HEADING)?;
    for (step, words) in texts.turning_steps.iter().enumerate() {
        frame.item(&format!("{}", step + 1), 5.0, words, &BODY)?;
    }
    frame.space(1.5);
    let (place, block) = frame.figure(26.0, texts.turning_pictures)?;
    let side = 17.0;
    let tile = |column: f64| {
        Rect::from_origin_size((place.x0 + column * (side + 10.0), place.y0 + 4.0), (side, side))
    };
    let style = text(8.0, Weight::Bold, INK);
    // The bar at the client's left goes from one side to the other.
    for (column, face, bar) in [(0.0, shared.top, 0.0), (1.0, texts.openings, side)] {
        let tile = tile(column);
        plain(block, tile);
        let bar = tile.x0 + bar;
        let (from, to) = (Point::new(bar, tile.y0 + 3.0), Point::new(bar, tile.y1 - 3.0));
        block.line(from, to, &Pen::solid(1.8, ACCENT));
        let (middle, pen) = (tile.center(), Pen::solid(0.5, INK));
        block.arrow(
            Point::new(middle.x, tile.y0 + 9.0),
            Point::new(middle.x, tile.y0 + 2.0),
            2.2,
            &pen,
        );
        let words_at = Point::new(middle.x, tile.y1 - 3.0);
        block.text(words_at, face, &style, Align::Centre)?;
        block.text(Point::new(middle.x, tile.y0 - 1.0), shared.front, &style, Align::Centre)?;
    }
    let (from, to) = (tile(0.0), tile(1.0));
    let mut over = BezPath::new();
    over.move_to((from.x1 + 0.8, from.center().y + 2.0));
    over.curve_to(
        (from.x1 + 2.0, from.y0 - 2.0),
        (to.x0 - 2.5, from.y0 - 2.0),
        (to.x0 - 1.6, from.center().y),
    );
    block.curved_arrow(&over, 2.2, &Pen::solid(0.6, INK));
    let under = Point::new(from.x0, from.y1 + 4.0);
    block.text(under, texts.thick_bar, &style, Align::Left)?;
    Ok(())
}

fn counting_table(flow: &mut Flow<'_>, card: &Card<'_>, room: Room) -> Result<(), SetError> {
    let wide = flow.width();
    let widths = [9.0, wide - 118.0, 18.0, 26.0, 26.0, 13.0, 26.0];
    let heads = card.language.fill_card().columns.iter().zip(widths).enumerate();
    let columns = heads.map(|(at, (head, width))| {
        Column::new(*head, width, if at < 2 { Align::Left } else { Align::Centre })
    });
    let mut table = Table::new(columns.collect(), STRONG, BODY);
    table.head.size_pt = 8.5;
    table.head_ground = Some(PALE);
    table.margin = 1.0;
    table.least_row = room.row;
    for count in &card.counts {
        let cells = card.language.cells_within(count.cells, count.tolerance);
        table.row([
            count.number.to_string(),
            count.words.clone(),
            cells,
            String::new(),
            String::new(),
            String::new(),
            String::new(),
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
    frame.paragraph(texts.how_to_finish, &BODY)?;
    if let Some(spares) = card.spares {
        frame.paragraph(&card.language.pack_spares(spares), &BODY)?;
    }
    field_rows(frame, texts.fields, room.field)
}
