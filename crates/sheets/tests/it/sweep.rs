//! Papers of every layout in every made size, with little on them and with very much: none is
//! refused, and nothing stands outside its page.

use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use case::{
    CardFinding, Caution, Contact, CostAtBone, Entry, GoalNumber, GoalOutcome, IfThen, Move, Place,
    Remedy, RemedyCost, Shortfall, SiteName, SizeMisfit, Spread, Want,
};
use cushion::{Length, Side};
use sheets::{
    ClientPapers, Document, Mark, PAPERS, Rect, SizeReasons, fill_order, height_gauge, letter,
    setup_card, stock_fill_card, tag, tags_sheet, take_home, wash_day,
};

use words::{LANGUAGES, Language};

use crate::papers::{CODE, Case, DAY, PROGRAM};

/// Every built-in layout with each size that is made of it.
fn made() -> Vec<(&'static str, String)> {
    let sizes = |text: &files::Text| {
        let layout = files::read_layout(text.text).value.unwrap();
        layout.sizes.iter().map(|made| (text.name, made.size.to_string())).collect::<Vec<_>>()
    };
    files::BUILT_IN_LAYOUTS.iter().flat_map(sizes).collect()
}

const LONG: &str = "The back support was moved by two holes and the footrests were set anew, so \
     look at the knees, at the heels and at the transfer before the client goes home with it.";

/// The same case with long names, and much of everything that a file can hold.
fn full(mut case: Case, goals: usize) -> Case {
    case.plan.by = "OT, seating and mobility clinic, north".into();
    // As long as a plugin is said with its parameters.
    let parameters = "ring-12 110.25 mm, ".repeat(9);
    case.plan.drawn_by = Some(format!("relief-rings-and-rows 1.2 ({parameters}55 more)"));
    case.client.record = vec![Entry::Plan(case.plan.clone())];
    case = case.fitted();
    if let Some(Entry::FittingCheck(check)) = case.client.record.last_mut() {
        check.by = "Wheelchair and seating therapist on duty, north".into();
    }
    case.client.code = case::ClientCode::new("K-17-A-VERY-LONG-CODE-24").unwrap();
    case.client.carer_notes = vec![LONG.into(); 2 * goals];
    case.client.meanwhile = Some(LONG.into());
    let contact = Contact {
        who: "Community nurse for the southern district".into(),
        phone: "01632 960152".into(),
        hours: Some("Monday to Friday, 9 to 4, and on call at night".into()),
    };
    case.client.contacts = vec![contact; 3 * goals];
    case.client.next_review = Some(DAY);
    // The longest that are said.
    let misfits = vec![SizeMisfit::WiderThanChair; 6];
    case.cautions = vec![Caution::Size(misfits); 3 * goals];
    case.extras.goals = vec![GOAL; goals];
    let numbers: Vec<u8> = case.plan.counts.iter().map(|own| own.number).collect();
    let step = |pair: &[u8]| Move {
        from: Place::Compartment(pair[0]),
        to: Place::Compartment(pair[1]),
        cells: 11,
    };
    let moves = numbers.windows(2).map(step).collect::<Vec<_>>();
    case.extras.moves = [moves.clone(), moves].concat();
    let row = IfThen {
        found: CardFinding::Lower { side: Side::Left, by: Length::from_mm(5.0) },
        then: Remedy::TakeOut { cells: 12, out_of: 10 },
        cost: Some(RemedyCost { side: Side::Left, there: COST, other: COST }),
    };
    case.extras.if_then = vec![row; 4 * goals];
    case.client.goals = vec![case::Goal { want: GOAL.want, because: Some(LONG.into()) }; goals];
    let mm = Length::from_mm;
    let high = case.pattern.wall_height() + mm(24.0);
    let height = Spread { central: high - mm(6.0), low: high - mm(15.0), high };
    // One is not known.
    case.extras.heights = vec![Some(height); numbers.len()];
    case.extras.heights[0] = None;
    let left = vec![(case.plan.size, vec![SizeMisfit::WiderThanChair; 6]); 8 * goals];
    case.extras.size =
        Some(SizeReasons { best: Some(case.plan.size), left, ..SizeReasons::default() });
    case
}

/// A goal of which much is said.
const GOAL: GoalOutcome = GoalOutcome {
    want: Want::OffLoad { site: SiteName::SeatBone(Side::Right), share: 0.6 },
    wanted: GoalNumber::Relief(0.6),
    reached: Some(GoalNumber::Relief(0.3)),
    met: false,
    why: Some(Shortfall::Full(10)),
};

const COST: CostAtBone = CostAtBone { height: Length::from_mm(-12.0), pressure: -0.4 };

/// The papers of a client, on a paper.
pub(crate) fn all(case: &Case, paper: sheets::Paper) -> Vec<Document> {
    let papers = case.papers();
    vec![
        setup_card(&papers, paper).unwrap(),
        fill_order(&papers, paper).unwrap(),
        take_home(&papers, paper).unwrap(),
        wash_day(&papers, paper).unwrap(),
        height_gauge(&papers, paper).unwrap(),
        letter(&papers, paper).unwrap(),
    ]
}

/// What a size has, whatever the client.
fn of_size(case: &Case, paper: sheets::Paper) -> Vec<Document> {
    let papers = case.papers();
    vec![
        stock_fill_card(&case.stock_papers(), paper).unwrap(),
        tag(case.language, &case.pattern, papers.drawn_by(), DAY, PROGRAM).unwrap(),
        tags_sheet(case.language, &case.pattern, papers.drawn_by(), paper, (DAY, PROGRAM)).unwrap(),
    ]
}

/// Where a mark is drawn.
fn place(mark: &Mark) -> Rect {
    match mark {
        Mark::Shape(shape) => kurbo::Shape::bounding_box(&shape.path),
        Mark::Text(run) => {
            let (sin, cos) = run.angle.to_radians().sin_cos();
            let width = run.shaped.width(run.size_pt);
            let height = 0.7 * run.size_pt * sheets::MM_PER_PT;
            let end = run.at + (width * cos, width * sin);
            let top = (height * sin, -height * cos);
            Rect::from_points(run.at, end).union(Rect::from_points(run.at + top, end + top))
        }
    }
}

/// The ink of a line of text: from its baseline to its capitals, turned with it.
fn ink(run: &sheets::TextRun) -> Rect {
    // A hair less than its box, for what only touches.
    place(&Mark::Text(run.clone())).inset(-0.05)
}

fn runs(page: &sheets::Page) -> Vec<&sheets::TextRun> {
    page.texts().filter(|run| !run.shaped.text().trim().is_empty()).collect()
}

/// The straight pieces of a line that is drawn, without a ground.
fn lines(block: &sheets::Block) -> Vec<kurbo::Line> {
    let drawn = block.marks.iter().filter_map(|mark| match mark {
        Mark::Shape(shape) if shape.pen.is_some() && shape.fill.is_none() => Some(&shape.path),
        _ => None,
    });
    let mut pieces = Vec::new();
    for path in drawn {
        let mut at = sheets::Point::ORIGIN;
        kurbo::flatten(path, 0.05, |step| {
            if let kurbo::PathEl::LineTo(to) = step {
                pieces.push(kurbo::Line::new(at, to));
            }
            at = step.end_point().unwrap_or(at);
        });
    }
    pieces
}

/// Whether a line goes through a box: some point of many along it lies inside.
fn goes_through(line: &kurbo::Line, around: Rect) -> bool {
    // Most lines are far away.
    if !Rect::from_points(line.p0, line.p1).overlaps(around) {
        return false;
    }
    let steps = (line.p0.distance(line.p1) / 0.2).ceil().max(1.0);
    (0..=steps as usize).any(|at| around.contains(line.p0.lerp(line.p1, at as f64 / steps)))
}

/// What stands outside its page, over another text, under a line, or too small.
pub(crate) fn faults(what: &str, document: &Document) -> Vec<String> {
    assert!(!document.pages.is_empty());
    let mut faults = Vec::new();
    for (at, page) in document.pages.iter().enumerate() {
        let what = format!("{what}, {} page {}", document.title, at + 1);
        for mark in page.blocks.iter().flat_map(|block| &block.marks) {
            let place = place(mark);
            if !page.bounds().inflate(1e-6, 1e-6).contains_rect(place) {
                faults.push(format!("{what}: outside at {place:?}"));
            }
        }
        let runs = runs(page);
        for (place, run) in runs.iter().enumerate() {
            let text = run.shaped.text();
            // Sizes are products of shares, so a rounding below is none.
            if run.size_pt < least(document) - 1e-9 {
                faults.push(format!("{what}: {text} in {} pt", run.size_pt));
            }
            for other in &runs[..place] {
                let both = ink(run).intersect(ink(other));
                if both.width() > 0.0 && both.height() > 0.0 {
                    faults.push(format!("{what}: {text} over {}", other.shaped.text()));
                }
            }
        }
        if let Some(white) = code_with_white(page) {
            let others = page.blocks.iter().filter(|own| !is_code(own)).flat_map(|own| &own.marks);
            let over = others.map(place).filter(|place| meets(*place, white));
            faults.extend(over.map(|place| format!("{what}: {place:?} at the code's {white:?}")));
        }
        for block in &page.blocks {
            for line in lines(block) {
                if let Some(hit) = runs.iter().find(|run| goes_through(&line, ink(run))) {
                    let text = hit.shaped.text();
                    faults.push(format!("{what}: a line of {:?} through {text}", block.role));
                }
            }
        }
    }
    faults
}

/// Whether a block is the code by which counts are found again.
pub(crate) fn is_code(block: &sheets::Block) -> bool {
    matches!(&block.role, sheets::Role::Figure { alt } if alt.ends_with(CODE))
}

/// The place of the code on a page, with the white around it that belongs to it: four modules of its
/// 49 (ISO/IEC 18004:2015, 5.3.8).
pub(crate) fn code_with_white(page: &sheets::Page) -> Option<Rect> {
    let code = page.blocks.iter().find(|own| is_code(own))?;
    let dark = code.marks.iter().map(place).reduce(|all, own| all.union(own))?;
    let white = dark.width() * 4.0 / 49.0;
    Some(dark.inflate(white, white))
}

/// Whether something is drawn on a place; a frame around all of it is not.
fn meets(own: Rect, place: Rect) -> bool {
    let both = own.intersect(place.inset(-1e-6));
    both.width() > 0.0 && both.height() > 0.0 && !own.contains_rect(place)
}

/// The least size of print that is no name of an edge, in points.
fn least(document: &Document) -> f64 {
    let titles = LANGUAGES.map(|own| own.take_home().title);
    if titles.contains(&document.title.as_str()) { 14.0 } else { 8.0 }
}

/// What is wrong with the papers of a size, with little on them and with very much of one to four
/// goals, on both papers.
fn faults_of_size(layout: &str, size: &str) -> Vec<String> {
    let little = Case::of(layout, size);
    let much = (1..=4).map(|goals| full(Case::of(layout, size), goals));
    let cases = std::iter::once(little).chain(much).enumerate();
    let one = |(goals, case): (usize, Case)| {
        let each = PAPERS.into_iter().flat_map(move |paper| {
            let what = format!("{layout} {size} {paper:?}, {goals} goals");
            all(&case, paper).into_iter().flat_map(move |own| faults(&what, &own))
        });
        each.collect::<Vec<_>>()
    };
    let of_sizes = [Case::of(layout, size), full(Case::of(layout, size), 1)].into_iter();
    let of_sizes = of_sizes.flat_map(|case| {
        let documents = PAPERS.into_iter().flat_map(|paper| of_size(&case, paper));
        documents.flat_map(|own| faults(&format!("{layout} {size}"), &own)).collect::<Vec<_>>()
    });
    cases.flat_map(one).chain(of_sizes).collect()
}

/// The pages of templates are whole for every layout: words inside their pages, no tile missing.
#[test]
fn templates_print_on_both_papers() {
    for (layout, size) in
        [("row-six", "250x250"), ("island-eight", "440x400"), ("curved-ten", "610x550")]
    {
        let case = Case::of(layout, size);
        let allowance = Length::from_mm(10.0);
        let options = templates::Options { allowance, eased: true };
        let template = templates::Template::new(&case.pattern, &case.fill, options);
        let own = sheets::TemplatePapers {
            language: words::ENGLISH,
            pattern: &case.pattern,
            template: &template,
            digest: &case.plan.layout_digest,
            date: DAY,
            program: PROGRAM,
        };
        let sheet = sheets::template_sheet(&own).unwrap();
        let ids: Vec<&str> =
            sheet.pages[0].blocks.iter().filter_map(|block| block.id.as_deref()).collect();
        for piece in &template.pieces {
            assert!(ids.contains(&&*format!("{}-cut", piece.kind.id())), "{ids:?}");
        }
        let mut unique = ids.clone();
        unique.sort_unstable();
        unique.dedup();
        assert_eq!(unique.len(), ids.len(), "an id is there once");
        translated(|language| {
            sheets::template_sheet(&sheets::TemplatePapers { language, ..own }).unwrap()
        });
        for paper in PAPERS {
            translated(|language| {
                let own = sheets::TemplatePapers { language, ..own };
                sheets::template_tiles(&own, paper).unwrap()
            });
            let tiles = sheets::template_tiles(&own, paper).unwrap();
            for page in sheet.pages.iter().chain(&tiles.pages) {
                for mark in page.blocks.iter().flat_map(|block| &block.marks) {
                    let place = place(mark);
                    let inside = page.bounds().inflate(1e-6, 1e-6).contains_rect(place);
                    assert!(inside, "{layout} {size} {paper:?}: {place:?}");
                }
            }
        }
    }
}

/// The papers of an order: of cushions as supplied and of a client, each so many times.
fn of_order(case: &Case, many: usize, paper: sheets::Paper) -> Vec<Document> {
    let mass = |grams| cushion::Mass::from_g(grams);
    let finished = Spread { central: mass(1641.0), low: mass(1462.0), high: mass(1831.0) };
    let cushion = |fill, serial| sheets::OrderedCushion {
        fill,
        serial,
        word: "W0KQ",
        cells: 1234,
        spares: 62,
        finished,
    };
    let long = "SW-2026/03_A.0142-LONGEST";
    let two = [
        cushion(sheets::ToFill::Stock(case.stock_papers()), Some(&long[..16])),
        cushion(sheets::ToFill::Client(case.papers()), None),
    ];
    let cushions: Vec<_> = two.iter().cycle().take(many).copied().collect();
    let own = sheets::OrderPapers {
        language: case.language,
        name: "order-of-the-longest.day",
        cushions: &cushions,
        date: DAY,
        program: PROGRAM,
    };
    vec![
        sheets::pick_list(&own, paper).unwrap(),
        sheets::fill_cards(&own, paper).unwrap(),
        sheets::tags_of_order(&own, paper).unwrap(),
    ]
}

#[test]
fn papers_of_orders_have_room_and_say_which_they_are() {
    for (layout, size) in [("row-six", "250x250"), ("curved-ten", "610x550")] {
        for language in LANGUAGES {
            let of = |case: Case| Case { language, ..case };
            let cases = [of(Case::of(layout, size)), of(full(Case::of(layout, size), 1))];
            for ((case, many), paper) in cases.iter().zip([1, 60]).zip(PAPERS) {
                let documents = of_order(case, many, paper);
                for document in &documents {
                    let found = faults(&format!("{layout} {size} {paper:?}"), document);
                    assert!(found.is_empty(), "{}", found.join("\n"));
                    for page in &document.pages {
                        let said = says_how_it_was_translated(language, page);
                        assert!(said, "{}", document.title);
                    }
                }
                let said = |page: &sheets::Page| -> Vec<String> {
                    page.texts().map(|run| run.shaped.text()).collect()
                };
                let [_, cards, tags] = documents.as_slice() else { panic!("three") };
                assert_eq!((cards.pages.len() >= many, tags.pages.len()), (true, many.div_ceil(6)));
                for (at, page) in tags.pages.iter().enumerate() {
                    let own = said(page).concat().replace(' ', "");
                    let sheet = language.tags_of_order(
                        "order-of-the-longest.day",
                        at + 1,
                        tags.pages.len(),
                    );
                    assert!(own.contains(&sheet.replace(' ', "")), "{own}");
                }
            }
        }
    }
}

/// A size as a review has it, with much to tell.
fn reviewed(row: &cushion::RangeRow) -> case::ReviewedSize {
    let mm = Length::from_mm;
    let every: Vec<u8> = row.pattern.compartments().iter().map(|own| own.number).collect();
    let effect = case::CellsDo {
        tried: 8,
        under: case::Sides { left: mm(-1.25), right: mm(10.5) },
        pitch_deg: -0.125,
        lifts: Some(mm(12.5)),
    };
    let compartments = row.pattern.indices().map(|ix| case::ReviewedCompartment {
        id: row.pattern[ix].id.clone(),
        number: row.pattern[ix].number,
        purpose: row.pattern[ix].purpose,
        cells: [100, 120, 140],
        width: mm(112.0),
        opening: mm(60.0),
        effect: (ix.index() > 0).then_some(effect),
    });
    let seat = |(at, percent)| case::ReviewedSeat {
        percent,
        weight: cushion::Mass::from_kg(50.0 + 40.0 * at as f64),
        outcome: case::PredictedOutcome::AtRest,
        left: (at > 0).then(|| Spread { central: mm(20.0), low: mm(8.0), high: mm(31.0) }),
        slack: every[at..].to_vec(),
        bottomed: every[..at].to_vec(),
    };
    case::ReviewedSize {
        size: row.made.size,
        rated: row.made.max_user_weight,
        code: "E2622",
        bodies: 3034,
        bones: case::BonesAndSeams {
            women: 0.5,
            apart: [mm(102.0), mm(118.0), mm(136.0)],
            to_seam: [mm(4.0), mm(12.0), mm(21.0)],
            on_seam: 0.625,
        },
        compartments: compartments.collect(),
        seats: case::REVIEWED.into_iter().enumerate().map(seat).collect(),
    }
}

#[test]
fn reviews_print_on_both_papers_with_every_finding() {
    for text in files::BUILT_IN_LAYOUTS {
        let layout = files::read_layout(text.text).value.unwrap();
        let cell = files::BuiltIn::cell();
        let row = |made: &cushion::MadeSize| {
            let pattern = cushion::arrange(&layout, made.size).unwrap();
            let compartments = pattern.indices().map(|_| crate::papers::compartment(60)).collect();
            let pressure = cushion::Pressure::from_pa(500.0);
            let fill = cushion::StockFill { pressure, compartments };
            cushion::RangeRow { made: *made, pattern, fill }
        };
        let rows: Vec<_> = layout.sizes.iter().map(row).collect();
        let sizes: Vec<_> = rows.iter().map(reviewed).collect();
        let findings = case::review_findings(&sizes, &[]);
        assert!(findings.len() > 4, "{findings:?}");
        for (language, paper) in LANGUAGES.into_iter().zip(PAPERS) {
            let own = sheets::ReviewPage {
                language,
                layout: &layout,
                digest: &files::digest(text.text),
                cell: &cell,
                sizes: &sizes,
                rows: &rows,
                findings: &findings,
                bodies: (2900, 3034),
                date: DAY,
                program: PROGRAM,
            };
            let made = sheets::review_page(&own, paper).unwrap();
            let found = faults(text.name, &made);
            assert!(found.is_empty(), "{}", found.join("\n"));
            for page in &made.pages {
                assert!(says_how_it_was_translated(language, page), "{}", made.title);
            }
            // A picture of each size.
            let figures = made.pages.iter().flat_map(|page| &page.blocks);
            let figures = figures.filter(|own| matches!(own.role, sheets::Role::Figure { .. }));
            assert_eq!(figures.count(), rows.len());
        }
    }
}

/// What is wrong with the range tables of a layout, with its own sizes and with a hundred.
#[test]
fn range_tables_print_nothing_over() {
    for (text, many) in files::BUILT_IN_LAYOUTS.iter().flat_map(|it| [(it, false), (it, true)]) {
        let mut layout = files::read_layout(text.text).value.unwrap();
        layout.revision = many.then_some(12);
        let cell = files::BuiltIn::cell();
        let row = |made: &cushion::MadeSize| {
            let pattern = cushion::arrange(&layout, made.size).unwrap();
            let area = |ix| pattern.area(ix).to_cm2();
            let of_area = |ix| crate::papers::compartment(10 + (area(ix) / 5.0) as u32);
            let compartments = pattern.indices().map(of_area).collect();
            let pressure = cushion::Pressure::from_pa(500.0);
            let fill = cushion::StockFill { pressure, compartments };
            cushion::RangeRow { made: *made, pattern, fill }
        };
        let mut rows: Vec<_> = layout.sizes.iter().map(row).collect();
        if many {
            rows = rows.iter().cycle().take(100).cloned().collect();
        }
        // One compartment fills up at once.
        rows[1].fill.compartments[0].cells.stock *= 2;
        let jumps = cushion::jumps(&rows);
        assert!(!jumps.is_empty());
        let own = sheets::RangeTable {
            language: words::ENGLISH,
            layout: &layout,
            digest: &files::digest(text.text),
            cell: &cell,
            rows: &rows,
            jumps: &jumps,
            date: DAY,
            program: PROGRAM,
        };
        for paper in PAPERS {
            let made = sheets::range_table(&own, paper).unwrap();
            let found = faults(text.name, &made);
            assert!(found.is_empty(), "{}", found.join("\n"));
            // Every size stands there with every count, and every page says which it is.
            let said: Vec<String> = made
                .pages
                .iter()
                .flat_map(|page| page.texts())
                .map(|it| it.shaped.text())
                .collect();
            for row in &rows {
                for own in &row.fill.compartments {
                    let cells = own.cells;
                    let told = format!("{} ({}-{})", cells.stock, cells.low, cells.high);
                    let jumps = format!("{}! ({}-{})", cells.stock, cells.low, cells.high);
                    assert!(said.contains(&told) || said.contains(&jumps), "{told}");
                }
            }
            for (at, page) in made.pages.iter().enumerate() {
                let number = words::ENGLISH.page_of(at + 1, made.pages.len());
                assert!(page.texts().any(|run| run.shaped.text() == number), "{number}");
            }
            translated(|language| {
                let own = sheets::RangeTable { language, ..own };
                let made = sheets::range_table(&own, paper).unwrap();
                let said = made.pages[0].texts().map(|run| run.shaped.text());
                let said = said.collect::<Vec<_>>().join(" ");
                for text in [&layout.title, &layout.about, &layout.rating_from] {
                    let english = language.tag() == "en";
                    assert_eq!(said.contains(text.as_str()), english, "{text}: {said}");
                }
                made
            });
        }
    }
}

#[test]
fn no_set_of_papers_is_refused_and_nothing_is_printed_over() {
    // Each case by itself, on all cores.
    let (made, next) = (made(), AtomicUsize::new(0));
    let found = Mutex::new(Vec::new());
    let work = || {
        while let Some((layout, size)) = made.get(next.fetch_add(1, Ordering::Relaxed)) {
            let of_size = faults_of_size(layout, size);
            found.lock().unwrap().extend(of_size);
        }
    };
    std::thread::scope(|scope| {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        (0..cores).for_each(|_| drop(scope.spawn(work)));
    });
    let found = found.into_inner().unwrap();
    assert!(found.is_empty(), "{} faults:\n{}", found.len(), found.join("\n"));
}

/// The smallest and the largest size that is made of each layout.
fn extremes() -> Vec<(&'static str, String)> {
    let made = made();
    let ends = |name: &str| {
        let sizes: Vec<_> = made.iter().filter(|own| own.0 == name).collect();
        [sizes[0].clone(), sizes[sizes.len() - 1].clone()]
    };
    files::BUILT_IN_LAYOUTS.iter().flat_map(|own| ends(own.name)).collect()
}

/// Whether no number has a decimal point where a language writes a comma; versions have points.
fn has_its_decimals(language: &dyn Language, page: &sheets::Page) -> bool {
    let is_point =
        |word: &str| word.parse::<f64>().is_ok() && word.trim_end_matches('.').contains('.');
    let mut words = page.texts().map(|run| run.shaped.text());
    language.decimal(0.5, 1) == "0.5" || !words.any(|run| run.split(' ').any(is_point))
}

/// Makes a document in each language: every page says how it was translated, with no words on others.
fn translated(made: impl Fn(&'static dyn Language) -> Document) {
    for language in LANGUAGES {
        let document = made(language);
        for page in &document.pages {
            assert!(says_how_it_was_translated(language, page), "{}", document.title);
            assert!(has_its_decimals(language, page), "{}", document.title);
            let Some(line) = language.unreviewed() else { continue };
            let words = |mark: &&Mark| matches!(mark, Mark::Text(_));
            let (own, others): (Vec<_>, Vec<_>) = (page.blocks.iter())
                .flat_map(|block| &block.marks)
                .filter(words)
                .partition(|mark| match mark {
                    Mark::Text(run) => run.shaped.text().contains(line),
                    Mark::Shape(_) => false,
                });
            let meets = |one: &Mark| others.iter().any(|it| meets(place(it), place(one)));
            assert!(!own.into_iter().any(meets), "{}: {line}", document.title);
        }
    }
}

/// Whether a page says that no professional looked through its words, where that is so.
fn says_how_it_was_translated(language: &dyn Language, page: &sheets::Page) -> bool {
    let said: Vec<String> = page.texts().map(|run| run.shaped.text()).collect();
    let said = said.join(" ").replace('\u{a0}', " ");
    language.unreviewed().is_none_or(|line| said.contains(line))
}

/// The words are longer, so the extremes are enough: what has room there has room between.
#[test]
fn papers_in_other_languages_have_room_and_say_who_looked_through_them() {
    for language in LANGUAGES.into_iter().filter(|own| own.tag() != "en") {
        for (layout, size) in extremes() {
            let of = |case: Case| Case { language, ..case };
            let cases =
                [of(Case::of(layout, &size)), of(full(Case::of(layout, &size), 4).fitted())];
            for (case, paper) in cases.iter().zip(PAPERS) {
                let documents = all(case, paper).into_iter().chain(of_size(case, paper));
                for document in documents {
                    let what = format!("{layout} {size} {paper:?}");
                    let faults = faults(&what, &document);
                    assert!(faults.is_empty(), "{}", faults.join("\n"));
                    assert_eq!(document.language, language.tag());
                    for page in &document.pages {
                        let said = says_how_it_was_translated(language, page);
                        assert!(said, "{what}: {}", document.title);
                    }
                }
            }
        }
        let [other, english] = [language, words::ENGLISH].map(|language| {
            let case = Case { language, ..Case::of("curved-ten", "440x400") }.fitted();
            all(&case, PAPERS[0]).iter().map(|own| own.pages.len()).collect::<Vec<_>>()
        });
        assert_eq!(other, english, "pages of each paper");
    }
}

#[test]
fn a_sheet_in_another_language_tells_whoever_hands_it_over_in_theirs() {
    let case = Case { language: words::SPANISH, ..Case::of("row-six", "440x400") };
    let papers = ClientPapers { handed_over_in: Some(words::ENGLISH), ..case.papers() };
    let sheet = take_home(&papers, PAPERS[0]).unwrap();
    let said = |page: &sheets::Page| {
        let said: Vec<String> = page.texts().map(|run| run.shaped.text()).collect();
        said.join(" ").replace('\u{a0}', " ")
    };
    let first = said(&sheet.pages[0]);
    assert!(first.contains("SIN AJUSTAR TODAVÍA. NO LO ENTREGUE."), "{first}");
    assert!(first.contains("NOT FITTED YET. DO NOT HAND OVER."), "{first}");
    assert!(first.contains("this sheet is in español. It follows in English"), "{first}");
    assert!(sheet.pages[1..].iter().all(|page| !said(page).contains("this sheet is in")));
}

#[test]
fn the_same_sheet_follows_in_the_language_of_the_therapist() {
    let [one, other] = [words::SPANISH, words::ENGLISH];
    for (of_carer, of_therapist) in [(one, other), (other, one)] {
        for paper in PAPERS {
            let case = Case { language: of_carer, ..Case::of("row-six", "440x400") };
            let both = ClientPapers { handed_over_in: Some(of_therapist), ..case.papers() };
            let both = take_home(&both, paper).unwrap().pages;
            let alone = |language| {
                let case = Case { language, ..Case::of("row-six", "440x400") };
                take_home(&case.papers(), paper).unwrap().pages
            };
            let (carers, therapists) = (alone(of_carer), alone(of_therapist));
            assert_eq!(both.len(), carers.len() + therapists.len());
            let (first, then) = both.split_at(carers.len());
            assert!(first.iter().all(|page| page.language == of_carer.tag()));
            let for_whom = of_therapist.take_home().same_for_therapist;
            let says_so = |page: &sheets::Page| {
                page.texts().any(|run| run.shaped.text().replace('\u{a0}', " ") == for_whom)
            };
            assert!(!first.iter().any(says_so));
            for (page, own) in then.iter().zip(&therapists) {
                assert!(page.language == of_therapist.tag() && says_so(page));
                // It is all that the sheet says, and that line.
                assert_eq!(page.texts().count(), own.texts().count() + 1);
                // A printer leaves some 5 mm at the edge.
                let printed = page.bounds().inflate(-5.0, -5.0);
                let marks = page.blocks.iter().flat_map(|block| &block.marks);
                for own in marks.map(crate::pictures::bounds) {
                    assert!(printed.contains_rect(own), "{own:?}");
                }
            }
        }
    }
}

#[test]
fn what_flows_on_is_whole_and_says_on_which_page_it_is() {
    let case = full(Case::of("curved-ten", "440x400"), 4);
    for paper in PAPERS {
        let sheet = take_home(&case.papers(), paper).unwrap();
        let pages = sheet.pages.len();
        assert!(pages > 2, "{pages}");
        let notes = |page: &sheets::Page| {
            let items = page.blocks.iter().filter(|own| matches!(own.role, sheets::Role::ListItem));
            items.filter(|own| format!("{:?}", words(own)).contains("back support")).count()
        };
        assert_eq!(sheet.pages.iter().map(notes).sum::<usize>(), 8);
        for (at, page) in sheet.pages.iter().enumerate() {
            let foot = format!("Page {} of {pages}.", at + 1);
            let said: Vec<String> = page.texts().map(|run| run.shaped.text()).collect();
            assert!(said.iter().any(|text| text.starts_with(&foot)), "{foot}: {said:?}");
        }
    }
}

fn words(block: &sheets::Block) -> String {
    let runs = block.marks.iter().filter_map(|mark| match mark {
        Mark::Text(run) => Some(run.shaped.text()),
        Mark::Shape(_) => None,
    });
    runs.collect::<Vec<_>>().join(" ")
}
