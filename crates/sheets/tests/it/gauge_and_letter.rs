//! The height gauge at full size, and the letter with the reasons.

use case::{ClientCode, Entry, SizeMisfit, Spread, Withdrawn};
use cushion::Length;
use kurbo::Shape as _;
use sheets::{Mark, PAPERS, Page, Rect, Role, SizeReasons, height_gauge, letter};

use crate::papers::{Case, DAY, texts};

const ENGLISH: &dyn words::Language = words::ENGLISH;

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

/// The places of what is drawn in the figures of that description: with a ground, and without.
fn drawn(page: &Page, alt: &str) -> [Vec<Rect>; 2] {
    let of =
        |block: &&sheets::Block| matches!(&block.role, Role::Figure { alt: own } if own == alt);
    let shapes = page.blocks.iter().filter(of).flat_map(|block| &block.marks);
    let (mut grounds, mut lines) = (Vec::new(), Vec::new());
    for mark in shapes {
        if let Mark::Shape(shape) = mark {
            let all = if shape.fill.is_some() { &mut grounds } else { &mut lines };
            all.push(shape.path.bounding_box());
        }
    }
    [grounds, lines]
}

/// A ruler of a hundredth of a millimetre: what is drawn is computed, not measured.
const EXACT: f64 = 1e-6;

#[test]
fn bars_stand_as_high_over_the_lower_edge_as_the_compartments_are_expected_to() {
    for paper in PAPERS {
        let mut case = Case::of("row-six", "440x400");
        let height =
            |at: f64| Spread { central: mm(90.0 + at), low: mm(84.0), high: mm(97.0 + at) };
        case.extras.heights = (0..6).map(|at| Some(height(f64::from(at)))).collect();
        case.extras.heights[2] = None;
        let page = &height_gauge(&case.papers(), paper).unwrap().pages[0];
        let [bars, lines] = drawn(page, ENGLISH.height_gauge().drawing);
        // The numbers' discs have a ground too, and are not ten millimetres wide.
        let bars = bars.iter().filter(|bar| (bar.width() - 10.0).abs() < EXACT);
        let table = lines.iter().map(|own| own.y1).fold(0.0, f64::max);
        let heights: Vec<[f64; 2]> = bars.map(|bar| [table - bar.y1, table - bar.y0]).collect();
        assert_eq!(heights.len(), 5, "an unknown height has no bar: {heights:?}");
        for ([low, high], at) in heights.iter().zip([0.0, 1.0, 3.0, 4.0, 5.0]) {
            assert!((low - 84.0).abs() < EXACT && (high - 97.0 - at).abs() < EXACT, "{heights:?}");
            let expected = |line: &&Rect| (table - line.y0 - 90.0 - at).abs() < EXACT;
            let wide = |line: &&Rect| (line.width() - 11.6).abs() < EXACT;
            assert_eq!(lines.iter().filter(expected).filter(wide).count(), 1, "{at}");
        }
    }
}

#[test]
fn line_and_bar_are_as_long_as_they_say() {
    let case = Case::of("row-six", "440x400");
    for paper in PAPERS {
        let page = &height_gauge(&case.papers(), paper).unwrap().pages[0];
        let [bar, lines] = drawn(page, ENGLISH.height_gauge().measures_drawn);
        assert!(matches!(&*bar, [bar] if (bar.width() - 25.0).abs() < EXACT), "{bar:?}");
        let longest = lines.iter().map(|own| own.width()).fold(0.0, f64::max);
        assert!((longest - 100.0).abs() < EXACT, "{longest}");
        assert!(texts(page).join(" ").contains("Nothing goes under a client"));
    }
}

#[test]
fn what_is_higher_than_the_paper_is_not_drawn_smaller() {
    let mut case = Case::of("row-six", "440x400");
    let height = Spread { central: mm(220.0), low: mm(210.0), high: mm(230.0) };
    case.extras.heights = vec![Some(height); 6];
    for paper in PAPERS {
        let gauge = height_gauge(&case.papers(), paper).unwrap();
        let texts_of_gauge = ENGLISH.height_gauge();
        let said = gauge.pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ");
        assert!(said.contains(texts_of_gauge.too_high), "{said}");
        assert!(said.contains("220 mm (210 to 230)"), "{said}");
        let figures = gauge.pages.iter().map(|page| drawn(page, texts_of_gauge.drawing));
        assert!(figures.flatten().all(|own| own.is_empty()));
    }
}

fn said(case: &Case, paper: sheets::Paper) -> String {
    let letter = letter(&case.papers(), paper).unwrap();
    letter.pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ").replace('\u{a0}', " ")
}

#[test]
fn a_letter_says_what_the_file_says_and_neither_whom_to_call_nor_what_was_withdrawn() {
    let mut case = Case::of("row-six", "440x400").fitted();
    let wrong = Entry::FittingCheck(case::FittingCheck {
        on: DAY,
        by: "somebody else".into(),
        passed: Some(true),
        found: None,
    });
    let entry = case.client.record.len() + 1;
    let because = "of another client".to_owned();
    let withdrawn = Entry::Withdrawn(Withdrawn { on: DAY, by: "OT".into(), entry, because });
    case = case.then(wrong).then(withdrawn);
    case.client.emergency_phone = Some("01632 960199".into());
    let want = case::Want::CorrectObliquity;
    case.client.goals = vec![case::Goal { want, because: Some("to see forward".into()) }];
    let size = "480x440".parse().unwrap();
    let left = vec![(size, vec![SizeMisfit::WiderThanChair])];
    let best = Some(case.plan.size);
    case.extras.size = Some(SizeReasons { best, left, ..SizeReasons::default() });
    for paper in PAPERS {
        let said = said(&case, paper);
        for words in ["Why this cushion", "Not 480x440", "ESTIMATE", "Nothing is promised"] {
            assert!(said.contains(words), "{words}: {said}");
        }
        assert!(said.contains("to see forward"), "{said}");
        for goal in &case.client.goals {
            let goal = ENGLISH.goal(&goal.want);
            let rest: String = goal.chars().skip(1).take(20).collect();
            assert!(said.contains(&rest), "{rest}: {said}");
        }
        for private in ["01632", "somebody else"] {
            assert!(!said.contains(private), "{private}: {said}");
        }
    }
}

#[test]
fn a_letter_of_a_client_of_whom_nothing_is_known_invents_nothing() {
    let mut case = Case::of("row-six", "440x400");
    let code = ClientCode::new("T-1").unwrap();
    let record = std::mem::take(&mut case.client.record);
    case.client = case::Client::unknown(code, case.client.cushion.clone());
    case.client.record = record;
    let said = said(&case, PAPERS[0]);
    for words in
        ["No measure is written down", "No goals are written down", "Nothing is written down"]
    {
        assert!(said.contains(words), "{words}: {said}");
    }
    assert!(!said.contains("Expected:") && !said.contains("LEFT "), "{said}");
}
