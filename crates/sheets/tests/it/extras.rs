//! Sections, the second page of the setup card, and the page of a survey.

use std::sync::LazyLock;

use case::{
    BeforeAfter, CardFinding, Caution, ClientCode, Costs, GoalNumber, GoalOutcome, IfThen, Move,
    Place, Remedy, Review, Sides, SiteChange, SiteName, Spread, ToldFrom, Want,
};
use cushion::{Length, Pattern, Pressure, Side};
use sheets::{
    ExpectedSeat, Histogram, Identity, Mark, PAPERS, Section, SectionAt, SectionPapers,
    SectionSite, SetupExtras, SurveyPage, SvgOptions, section_sheet, setup_card, survey_page, svg,
};

use crate::papers::{Case, DAY, PROGRAM, texts};

static CODE: LazyLock<ClientCode> = LazyLock::new(|| ClientCode::new("T-1").unwrap());
static PATTERN: LazyLock<Pattern> = LazyLock::new(|| Case::of("row-six", "440x400").pattern);

fn sections() -> Vec<Section> {
    let curve = |of: &dyn Fn(f64) -> f64| {
        (-220..=220).step_by(10).map(|x| [f64::from(x), of(f64::from(x))]).collect::<Vec<_>>()
    };
    let across = Section {
        at: SectionAt::SeatBones,
        unloaded: curve(&|x| 90.0 - (x / 100.0).powi(2)),
        loaded: curve(&|x| 30.0 + (x / 40.0).powi(2)),
        body: curve(&|x| 30.0 + (x / 36.0).powi(2)),
        seams: vec![-220.0, 0.0, 220.0],
        sites: vec![SectionSite {
            name: SiteName::SeatBone(Side::Left),
            at: -60.0,
            height: from_to(24.0, 31.0, 40.0),
        }],
    };
    let along = |side| Section { at: SectionAt::Through(side), ..across.clone() };
    vec![across.clone(), along(Side::Left), along(Side::Right)]
}

fn from_to(low: f64, central: f64, high: f64) -> Spread<Length> {
    let [low, central, high] = [low, central, high].map(Length::from_mm);
    Spread { central, low, high }
}

fn papers(sections: &[Section]) -> SectionPapers<'_> {
    SectionPapers {
        language: words::ENGLISH,
        of: Identity {
            code: &CODE,
            serial: None,
            pattern: &PATTERN,
            mark: None,
            review: Review::None,
        },
        recorded_on: Some(DAY),
        sections,
        date: DAY,
        program: PROGRAM,
    }
}

#[test]
fn sections_name_their_sites_and_ends_and_draw_no_pressure() {
    let sections = sections();
    for paper in PAPERS {
        let document = section_sheet(&papers(&sections), paper).unwrap();
        assert_eq!(document.pages.len(), 1);
        let page = &document.pages[0];
        // A number stays with its unit.
        let said = texts(page).join("\n").replace('\u{a0}', " ");
        for words in [
            "left seat bone: 31 mm (24 to 40)",
            "height, mm",
            "from the middle, mm",
            "from the rear edge, mm",
            "the client's underside",
            "T-1",
            "not recorded",
            "1 of 1",
            "seen from behind",
            "CLIENT'S LEFT",
            "REAR EDGE (back)",
            "ESTIMATE",
            "pressures are not drawn",
        ] {
            assert!(said.contains(words), "{words} is not in: {said}");
        }
        // All that is drawn is on the page.
        for mark in page.blocks.iter().flat_map(|block| &block.marks) {
            if let Mark::Shape(shape) = mark {
                let around = sheets_bounds(&shape.path);
                assert!(page.bounds().inflate(0.1, 0.1).contains_rect(around), "{around:?}");
            }
        }
        let once = svg(page, &SvgOptions::default());
        let again = section_sheet(&papers(&sections), paper).unwrap();
        assert_eq!(once, svg(&again.pages[0], &SvgOptions::default()));
    }
}

/// Where each label of a site stands, left end, right end and baseline, over a body that reaches as
/// high as is drawn; and the top of what is drawn of it.
fn labels(sites: &[(SiteName, f64)], size: &str, paper: sheets::Paper) -> (Vec<[f64; 3]>, f64) {
    let mut sections = sections();
    let site = |(name, at): &(SiteName, f64)| SectionSite {
        name: *name,
        at: *at,
        height: from_to(33.0, 40.0, 51.0),
    };
    sections[0].sites = sites.iter().map(site).collect();
    sections[0].body.iter_mut().for_each(|point| point[1] = 30.0 + (point[0] / 12.0).powi(2));
    let pattern = Case::of("row-six", size).pattern;
    let mut papers = papers(&sections[..1]);
    papers.of.pattern = &pattern;
    let page = section_sheet(&papers, paper).unwrap().pages.remove(0);
    let labels: Vec<_> = (page.texts())
        .filter(|run| run.shaped.text().ends_with("mm (33 to 51)"))
        .map(|run| [run.at.x, run.at.x + run.shaped.width(run.size_pt), run.at.y])
        .collect();
    assert_eq!(labels.len(), sites.len());
    let heaviest = |mark: &Mark| match mark {
        Mark::Shape(shape) if shape.pen.as_ref().is_some_and(|pen| pen.width > 0.75) => {
            Some(sheets_bounds(&shape.path).y0)
        }
        _ => None,
    };
    // The legend has a piece of the line too.
    let drawn = page.blocks.iter().filter(
        |own| matches!(&own.role, sheets::Role::Figure { alt } if alt.contains("seat bones")),
    );
    let tops = drawn.flat_map(|block| &block.marks).filter_map(heaviest);
    (labels, tops.reduce(f64::min).expect("the underside is drawn"))
}

const ADULT: [(SiteName, f64); 4] = [
    (SiteName::SeatBone(Side::Left), -62.0),
    (SiteName::SeatBone(Side::Right), 57.0),
    (SiteName::Trochanter(Side::Left), -172.0),
    (SiteName::Trochanter(Side::Right), 172.0),
];
const CHILD: [(SiteName, f64); 4] = [
    (SiteName::SeatBone(Side::Left), -40.0),
    (SiteName::SeatBone(Side::Right), 40.0),
    (SiteName::Trochanter(Side::Left), -105.0),
    (SiteName::Trochanter(Side::Right), 105.0),
];

#[test]
fn labels_of_sites_keep_clear_of_each_other_and_of_the_body() {
    for (paper, (sites, size)) in PAPERS
        .into_iter()
        .flat_map(|paper| [(paper, (ADULT, "440x400")), (paper, (CHILD, "250x250"))])
    {
        let (labels, top) = labels(&sites, size, paper);
        for (at, one) in labels.iter().enumerate() {
            assert!(one[2] < top, "{one:?} {top}");
            for other in &labels[at + 1..] {
                let [upper, lower] = if one[2] <= other[2] { [one, other] } else { [other, one] };
                // In one row the words keep clear; else the line from the middle of the upper one.
                let same = upper[2] == lower[2];
                let middle = f64::midpoint(upper[0], upper[1]);
                let [from, to] = if same { [upper[0], upper[1]] } else { [middle, middle] };
                assert!(to + 1.0 < lower[0] || lower[1] + 1.0 < from, "{upper:?} {lower:?}");
            }
        }
    }
}

/// So near that a line must go through words; the words still keep clear of each other.
#[test]
fn labels_of_sites_that_are_very_near_stand_one_over_the_other() {
    let near = [
        (SiteName::Coccyx, 0.0),
        (SiteName::Thigh(Side::Left), -5.0),
        (SiteName::Thigh(Side::Right), 20.0),
    ];
    for paper in PAPERS {
        let (labels, _) = labels(&[&ADULT[..], &near].concat(), "440x400", paper);
        for (at, one) in labels.iter().enumerate() {
            for other in labels[at + 1..].iter().filter(|other| other[2] == one[2]) {
                assert!(one[1] + 1.0 < other[0] || other[1] + 1.0 < one[0], "{one:?} {other:?}");
            }
        }
    }
}

fn sheets_bounds(path: &sheets::BezPath) -> sheets::Rect {
    kurbo::Shape::bounding_box(path)
}

fn costs() -> Costs {
    let kpa = |before, after| BeforeAfter {
        before: Pressure::from_kpa(before),
        after: Pressure::from_kpa(after),
    };
    let half = Sides { left: 0.5, right: 0.5 };
    let under = |mm: f64| Sides { left: Length::from_mm(mm), right: Length::from_mm(33.0) };
    Costs {
        from: ToldFrom::Stock,
        goals: Vec::new(),
        careful: vec![SiteChange { site: SiteName::Coccyx, surface: kpa(4.0, 5.0) }],
        clearance: BeforeAfter { before: under(24.0), after: under(31.0) },
        roll_deg: BeforeAfter { before: -3.0, after: 0.0 },
        pitch_deg: BeforeAfter { before: 0.0, after: 0.0 },
        side_share: BeforeAfter { before: Sides { left: 0.6, right: 0.4 }, after: half },
        thigh_share: BeforeAfter { before: 0.3, after: 0.3 },
        risen: Vec::new(),
        sites: Vec::new(),
    }
}

#[test]
fn the_setup_card_sets_then_checks_then_moves() {
    let mut case = Case::of("curved-ten", "440x400").fitted();
    let spread = |mm: f64| Spread {
        central: Length::from_mm(mm),
        low: Length::from_mm(mm - 9.0),
        high: Length::from_mm(mm + 9.0),
    };
    let step = |from, to, cells| Move { from, to, cells };
    case.extras = SetupExtras {
        goals: vec![GoalOutcome {
            want: Want::CorrectObliquity,
            wanted: GoalNumber::Lower { side: None, by: Length::ZERO },
            reached: Some(GoalNumber::Lower { side: Some(Side::Left), by: Length::from_mm(2.0) }),
            met: true,
            why: None,
        }],
        costs: Some(costs()),
        expected: Some(ExpectedSeat {
            left_under: Sides { left: spread(29.0), right: spread(38.0) },
            lower_side: Some(Side::Left),
            lower_by: Length::from_mm(9.0),
        }),
        moves: vec![
            step(Place::Compartment(1), Place::Compartment(2), 6),
            step(Place::Spare, Place::Compartment(3), 4),
        ],
        moves_from: None,
        if_then: vec![IfThen {
            found: CardFinding::TooLow { side: Side::Left, limit: Length::from_mm(25.0) },
            then: Remedy::PutIn { cells: 4, into: 1 },
            cost: None,
        }],
        ..SetupExtras::default()
    };
    for paper in PAPERS {
        let document = setup_card(&case.papers(), paper).unwrap();
        assert_eq!(document.pages.len(), 3);
        let said = document.pages.iter().map(|page| texts(page).join(" "));
        let [set, check, moved] = said.collect::<Vec<_>>().try_into().unwrap();
        for words in [
            "Bring the pelvis level: met. Expected: the client's LEFT side is LOWER by 2 mm; level is wanted.",
            "29 mm (20 to 38)",
            "Expected change from the stock fill",
            "Coccyx, which is injured or at risk: pressure 25 % more, without soft tissue.",
            "Load left and right: 60 % and 40 %, then 50 % and 50 %.",
            "fitting check, passed",
        ] {
            assert!(set.contains(words), "{words} is not in: {set}");
        }
        // A bare pressure is promised by nobody.
        assert!(!set.contains("kPa"), "{set}");
        for words in [
            "Under 25 mm felt under the left seat bone",
            "Put 4 cells from the spare bag",
            "Estimated for these counts.",
            "38 mm (29 to 47)",
            "LEFT, 9 mm",
            "Date, initials",
        ] {
            assert!(check.contains(words), "{words} is not in: {check}");
        }
        // Each check has both sides, and each word in which it is answered is told.
        for both in ["Top check, client's", "Under check, client's"] {
            assert!(check.contains(&format!("{both} LEFT")), "{check}");
            assert!(check.contains(&format!("{both} RIGHT")), "{check}");
        }
        for word in ["safe:", "tight:", "pinched:", "bone-felt:", "clear:", "fades:", "stays:"] {
            assert!(check.contains(word), "{word} is not in: {check}");
        }
        assert!(moved.contains("Take from to Done 6 1 2 4 bag 3"), "{moved}");
        for change in ["–6", "+6", "+4"] {
            assert!(moved.contains(change), "{moved}");
        }
        // Counts stand in one drawing alone, and what is not moved has no number of cells.
        assert!(!moved.contains("72 cells"), "{moved}");
    }
}

/// However many goals there are, they stand on one side of the drawing's lower edge, and what the card is for
/// stands on its first page.
#[test]
fn goals_stand_together_and_the_counts_beside_the_drawing() {
    let goal = |at: usize| GoalOutcome {
        want: Want::Shelf { height: Length::from_mm(6.0 + at as f64) },
        wanted: GoalNumber::Lower { side: None, by: Length::ZERO },
        reached: Some(GoalNumber::Lower { side: Some(Side::Left), by: Length::from_mm(2.0) }),
        met: true,
        why: None,
    };
    for layout in ["row-six", "island-eight", "curved-ten"] {
        for (goals, paper) in (1..=4).flat_map(|goals| PAPERS.map(|paper| (goals, paper))) {
            let mut case = Case::of(layout, "440x400").fitted();
            // As much to take care of as leaves no room for all below the largest drawing.
            case.cautions = (0..4)
                .map(|number| Caution::FewCells { number, cells: 20, least: 25 })
                .chain([Caution::CannotProtectSkin])
                .collect();
            case.extras.goals = (0..goals).map(goal).collect();
            case.extras.costs = Some(costs());
            let card = setup_card(&case.papers(), paper).unwrap();
            let first = &card.pages[0];
            let at = |words: &str| {
                let found = first.texts().find(|run| run.shaped.text().contains(words));
                found.unwrap_or_else(|| panic!("{layout}, {goals} goals: {words} is not there")).at
            };
            let [head, counts] = ["Goals, the most", "Set to"].map(at);
            assert!(head.y < counts.y, "{layout}, {goals} goals");
            let marks = first.texts().filter(|run| {
                let mark = run.shaped.text();
                run.at.y > head.y && run.at.x == head.x && mark.parse::<usize>().is_ok()
            });
            let marks: Vec<String> = marks.map(|run| run.shaped.text()).collect();
            let all: Vec<String> = (1..=goals).map(|own| own.to_string()).collect();
            assert!(marks.starts_with(&all), "{layout}, {goals} goals: {marks:?}");
        }
    }
}

#[test]
fn the_spare_bag_is_told_before_and_after_the_moves() {
    let mut case = Case::of("row-six", "440x400");
    let step = |from, to, cells| Move { from, to, cells };
    case.client.cushion.spare_cells = 90;
    case.extras.moves = vec![
        step(Place::Spare, Place::Compartment(1), 12),
        step(Place::Compartment(2), Place::Spare, 5),
    ];
    let after = case.client.spare_cells_left();
    let card = setup_card(&case.papers(), sheets::Paper::A4).unwrap();
    let said = texts(card.pages.last().unwrap()).join(" ");
    let bag = format!("Before Change After Counted {} –7 {after}", after + 7);
    assert!(said.contains(&bag), "{bag} is not in: {said}");
}

#[test]
fn posture_and_injuries_stand_on_the_setup_card() {
    let mut case = Case::of("row-six", "440x400");
    case.client.posture.obliquity = Some(case::PelvicObliquity {
        lower: Side::Left,
        by: Length::from_mm(12.0),
        at: case::MeasuredAt::SeatBones,
        flexibility: case::Flexibility::Fixed,
    });
    case.client.skin.injuries = vec![case::PressureInjury {
        site: SiteName::SeatBone(Side::Left),
        category: case::Category::Two,
        state: case::Healing::Open,
        seen_on: DAY,
    }];
    let card = setup_card(&case.papers(), sheets::Paper::A4).unwrap();
    let said = texts(&card.pages[0]).join(" ");
    for words in [
        "LEFT side LOWER by 12 mm at the seat bones, fixed.",
        "Left seat bone: injury, category 2, OPEN (seen 2026-03-04).",
    ] {
        assert!(said.contains(words), "{words} is not in: {said}");
    }
}

#[test]
fn a_survey_page_shows_every_count() {
    let panel = |title: &str| Histogram {
        title: title.into(),
        axis: "mm".into(),
        names: vec!["20".into(), "22".into(), "24".into(), "26".into()],
        most: Some([0.2, 1.5, 2.9]),
        counts: vec![3, 141, 59],
        note: "5, 50 and 95 of 100: 20, 22, 24".into(),
    };
    let panels = ["Sizes", "Cells", "Heights"].map(panel);
    let sentences = ["203 bodies.".to_owned()];
    let page = SurveyPage {
        language: words::ENGLISH,
        title: "Survey",
        sentences: &sentences,
        panels: &panels,
        date: DAY,
        program: PROGRAM,
    };
    for paper in PAPERS {
        let document = survey_page(&page, paper).unwrap();
        let said = texts(&document.pages[0]);
        assert_eq!(said.iter().filter(|text| **text == "141").count(), 3);
        assert!(said.iter().any(|text| text.contains("none of them a client")));
    }
}
