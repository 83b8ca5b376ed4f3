//! What stands on the papers: whole sentences, for every number.

use case::{
    ClientCode, Contact, CountedFrom, Date, Digest, Lapse, Looked, Move, OtherPapers, PapersOfPlan,
    Place, PlanMark, RecordedPlan, Review, SiteName, Spread, Standing, State,
};
use cushion::{Length, Mass, Side};
use words::{ENGLISH, LANGUAGES, Language, SPANISH};

const DAY: Date = Date::constant(2026, 3, 4);

/// What is wrong with a sentence, or with the texts of a document as they are listed.
pub(crate) fn faults(said: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let spaced = said.replace('\u{a0}', " ");
    for wrong in ["  ", " .", " ,", " ;", "..", ",,", "( ", " )", "{", "}"] {
        // Three dots are an ellipsis.
        if spaced.replace("...", "…").contains(wrong) {
            faults.push(format!("`{wrong}` in: {said}"));
        }
    }
    let words: Vec<&str> = spaced.split([' ', '(', ')']).collect();
    for pair in words.windows(2) {
        let noun = pair[1].trim_end_matches(['.', ',', ';', ':']);
        let many = [
            "cells",
            "compartments",
            "bodies",
            "minutes",
            "sizes",
            "celdas",
            "compartimentos",
            "cuerpos",
            "entradas",
        ];
        let one = ["cell", "celda", "compartment", "compartimento", "cuerpo", "entrada"];
        if pair[0] == "1" && many.contains(&noun)
            || pair[0] != "1" && pair[0].parse::<u32>().is_ok() && one.contains(&noun)
        {
            faults.push(format!("`{} {}` in: {said}", pair[0], pair[1]));
        }
    }
    if said.is_empty() || said.trim() != said {
        faults.push(format!("an edge of `{said}`"));
    }
    faults
}

fn plan() -> RecordedPlan {
    let digest = Digest::new("0123456789abcdef").expect("it is a digest");
    RecordedPlan {
        on: DAY,
        by: "OT".into(),
        layout: "row-six".into(),
        size: "440x400".parse().expect("it is a size"),
        counts: Vec::new(),
        program: "seatwright 0.0.0".into(),
        layout_digest: digest.clone(),
        cell_digest: digest.clone(),
        parameters_digest: digest,
        drawn_by: Some("rings 1.2".into()),
        why: None,
        expected: None,
    }
}

fn goal(because: Option<&str>) -> case::Goal {
    case::Goal { want: case::Want::CorrectObliquity, because: because.map(str::to_owned) }
}

/// Papers of a plan of a number and of one that nobody knows, beside those of plan 2.
fn other_papers(number: usize) -> OtherPapers {
    let mark = |number| PlanMark { number, word: "K7QF".to_owned() };
    let of = |mark| PapersOfPlan { mark, files: vec!["K-17-tag.pdf".to_owned()] };
    OtherPapers {
        code: ClientCode::new("K-17").expect("it is a code"),
        printed: mark(2),
        others: vec![of(None), of(Some(mark(number)))],
    }
}

#[test]
fn a_later_plan_is_never_called_superseded_and_an_older_one_always() {
    for (number, later) in [(1, false), (3, true)] {
        let papers = other_papers(number);
        let said = [ENGLISH.other_papers(&papers), ENGLISH.which_papers_hold(&papers)];
        assert!(said[0].contains("SUPERSEDED") != later, "{said:?}");
        assert!(said.iter().all(|own| own.to_lowercase().contains("later") == later), "{said:?}");
        let of = format!("plan {number}, check word K7QF");
        assert!(said.iter().all(|own| own.contains(&of)), "{said:?}");
    }
}

/// Sentences with a number of things in them.
pub(crate) fn of_count(say: &dyn Language, count: u32) -> Vec<String> {
    let compartments = count as usize;
    let change = i64::from(count);
    let a_move = Move { from: Place::Spare, to: Place::Compartment(3), cells: count };
    let mm = |own| Length::from_mm(f64::from(own));
    let left = Spread { central: mm(count), low: mm(count / 2), high: mm(2 * count) };
    vec![
        say.cells_in_drawing(count),
        say.cells_within(count, 0),
        say.cells_within(count, 2),
        say.change(change),
        say.change(-change),
        say.a_move(&a_move),
        say.numbers_from_above(compartments),
        say.counts_from_above(compartments),
        say.counts_from_below(compartments),
        say.reason_of_change(&[1, 2, 3], change, "the client's left side is lower."),
        say.pack_spares(count),
        say.pack_spares_of_stock(count),
        say.order_in_short("monday", compartments, count, count),
        say.all_pockets(count),
        say.keep_the_bag(count),
        say.left_under(SiteName::Coccyx, &left),
        say.move_shows(Place::Compartment(1), Place::Spare, count),
        say.section_picture_shows("A title", &[(SiteName::Coccyx, left)], mm(25)),
        say.section_shows("A title", &[(SiteName::Trochanter(Side::Left), left)]),
        say.spread_of_values(0.0, f64::from(count), f64::from(count)),
        say.histogram_shows("A title", &[("440x400", count), ("400x400", 1)]),
    ]
}

/// Sentences about days, people and states.
pub(crate) fn others(say: &dyn Language) -> Vec<String> {
    let looked = Looked { on: DAY, by: "OT" };
    let lapses = [
        Lapse::OtherCushion,
        Lapse::Filling(DAY),
        Lapse::Counts(DAY),
        Lapse::Recount(DAY),
        Lapse::Skin(DAY, SiteName::Coccyx),
        Lapse::Weight(DAY),
    ];
    let mut all = vec![
        State::ToMeasure,
        State::ToPlan,
        State::Estimate,
        State::Fitted(looked),
        State::Failed(looked),
    ];
    all.extend(lapses.map(|lapse| State::Lapsed(looked, lapse)));
    let reviews = [Review::None, Review::Due(DAY), Review::Overdue(DAY)];
    let standings: Vec<Standing<'_>> = (all.iter())
        .flat_map(|state| reviews.map(|review| Standing { state: *state, review }))
        .collect();
    let states = standings.iter().flat_map(|standing| {
        [
            say.setup_card_state(*standing),
            say.fill_card_state(*standing),
            say.take_home_state(*standing),
            say.standing(*standing),
        ]
    });
    let plan = plan();
    let mark = PlanMark { number: 2, word: "K7QF".to_owned() };
    let code = ClientCode::new("K-17").expect("it is a code");
    let contact = |hours| Contact { who: "Clinic".into(), phone: "01632 960123".into(), hours };
    let moves = [
        CountedFrom::Stock,
        CountedFrom::Plan(DAY),
        CountedFrom::Filled(DAY),
        CountedFrom::Incoming(DAY),
        CountedFrom::Recount(DAY),
        CountedFrom::Moved(DAY),
        CountedFrom::Returned(DAY),
    ];
    let own = [
        say.size(plan.size),
        say.drawn_by("rings 1.2", &plan.layout_digest),
        say.whence(None),
        say.setup_card_origin(&plan, DAY),
        say.fill_card_origin(&plan, DAY),
        say.code(&ClientCode::new("K-17").expect("it is a code")),
        say.call(&contact(None)),
        say.call(&contact(Some("weekdays 9 to 4".into()))),
        say.sit_at_most(60, 1),
        say.sit_at_most(60, 3),
        say.serial("SW-0142"),
        say.sit_meanwhile("the grey foam cushion."),
        say.next_look(DAY),
        say.take_home_foot((1, 2), DAY, DAY),
        say.plan_in_short(&mark),
        say.all_cells(12, 1),
        say.page_of(1, 2),
        say.look_again(Review::Due(DAY)).expect("a day"),
        say.look_again(Review::Overdue(DAY)).expect("a day"),
        say.length_axis("height").0,
        say.values_between("20", "22.5"),
        say.section_along(Side::Right),
        say.layout_with_revision("row-six", Some(3)),
        say.layout_with_revision("row-six", None),
        say.cells_with_range(20, 28, 41, true),
        say.template_wall(4, [Some(3), None], "outline", Some([2, 6]), Length::from_mm(236.2)),
        say.template_wall(4, [Some(3), Some(5)], "island", None, Length::from_mm(236.2)),
        say.height_to_measure(&Spread {
            central: Length::from_mm(92.0),
            low: Length::from_mm(88.0),
            high: Length::from_mm(97.0),
        }),
        say.expected_mass(&Spread {
            central: Mass::from_g(640.0),
            low: Mass::from_g(560.0),
            high: Mass::from_g(730.0),
        }),
        say.card_of_order("monday", 5, 30),
        say.tags_of_order("monday", 1, 5),
        say.tag_of_card(5),
        say.grams_with_range(&Spread {
            central: Mass::from_g(640.0),
            low: Mass::from_g(560.0),
            high: Mass::from_g(730.0),
        }),
        say.template_wall_number(4),
        say.template_junction(6),
        say.template_opening(3, Length::from_mm(110.0)),
        say.template_allowance(Length::from_mm(10.0)),
        say.template_crown(0.02, 3, [150.0, 14.0, 153.5].map(Length::from_mm), true),
        say.template_crown(0.02, 3, [150.0, 14.0, 153.5].map(Length::from_mm), false),
        say.template_small_openings(&[3, 4]),
        say.template_joins("B2"),
        say.template_piece_shows("wall-4"),
        say.survey_of("row-six"),
        say.whose_gauge(&code, &mark),
        say.goal_in_letter(&goal(Some("a sore.")), None),
        say.goal_in_letter(&goal(None), None),
        say.other_papers(&other_papers(1)),
        say.other_papers(&other_papers(3)),
    ];
    states.chain(moves.map(|from| say.moves_from(from))).chain(own).collect()
}

/// One finding of a review of each kind.
pub(crate) fn of_a_review() -> Vec<case::ReviewFinding> {
    use case::ReviewKind;
    let mm = Length::from_mm;
    let size = |text: &str| text.parse::<cushion::Size>().expect("it is a size");
    let (small, large) = (size("400x400"), size("440x400"));
    let heavy = Mass::from_kg(104.0);
    let id = cushion::Name::new("thigh-left").expect("it is a name");
    let jump = cushion::Jump { row: 1, from: 0, number: 5, id, was: 28, is: 46, expected: 31 };
    let kinds = [
        ReviewKind::NoRest(95, heavy),
        ReviewKind::Bottoms(95, heavy, vec![1]),
        ReviewKind::Bottoms(95, heavy, vec![1, 2, 3]),
        ReviewKind::LittleLeft(50, heavy, mm(21.4)),
        ReviewKind::NobodySuits,
        ReviewKind::BonesOnSeam(0.38),
        ReviewKind::NoHand(3, mm(64.0)),
        ReviewKind::LittleReach(1, mm(3.25)),
        ReviewKind::MuchForOne(3, mm(2.75)),
        ReviewKind::Slack(5, heavy, vec![5, 6]),
        ReviewKind::Jumps(jump, small),
        ReviewKind::OtherCode { was: "E2622", from: small, is: "E2623" },
    ];
    let all = kinds.into_iter().enumerate().map(|(at, kind)| {
        let sizes = [large, small, size("480x400")].into_iter().take(1 + at % 3).collect();
        case::ReviewFinding { kind, size: large, sizes }
    });
    all.collect()
}

/// What is said of two layouts beside each other, with every value.
pub(crate) fn of_a_comparison(say: &dyn Language) -> Vec<String> {
    let mut all = Vec::new();
    all.extend(case::ComparedMeasure::ALL.map(|own| say.compared_measure(own).to_owned()));
    let verdicts = [
        case::ComparedVerdict::CannotTell,
        case::ComparedVerdict::NoDifference,
        case::ComparedVerdict::More,
        case::ComparedVerdict::Less,
        case::ComparedVerdict::ByBody,
    ];
    all.extend(verdicts.map(|own| say.compared_verdict(own).to_owned()));
    for both in [0, 1, 38] {
        let sizes =
            case::ComparedSizes { bodies: 40, both, only: [1, 0], neither: 1, other_size: 3 };
        all.push(say.compared_sizes(&sizes));
    }
    let size = |text: &str| text.parse::<cushion::Size>().expect("it is a size");
    let sizes = [size("400x400"), size("440x420")];
    let pressure = cushion::Pressure::from_pa(1234.0);
    all.extend([None, Some(0), Some(1)].map(|of| say.compared_fill(sizes, pressure, of)));
    all
}

/// Sentences of a comparison name whose pressure it is, and with the decimals of the language.
#[test]
fn what_a_comparison_says_is_whole_and_names_whose_pressure_it_is() {
    for say in LANGUAGES {
        let said = of_a_comparison(say);
        let faults: Vec<String> = said.iter().flat_map(|own| faults(own)).collect();
        assert!(faults.is_empty(), "{}", faults.join("\n"));
        let fills = &said[said.len() - 3..];
        assert!(fills.iter().all(|own| own.contains("400x400") && own.contains("440x420")));
        assert!(fills.iter().all(|own| own.contains(&say.decimal(1.234, 2))), "{fills:?}");
        assert!(fills[1].ends_with("A.") && fills[2].ends_with("B."), "{fills:?}");
    }
}

#[test]
fn what_a_review_finds_is_said_with_its_place_its_number_and_what_to_do() {
    for say in LANGUAGES {
        for finding in of_a_review() {
            let said = say.review_finding(&finding);
            let hint = said.hint.expect("what to do");
            assert!(said.message.contains("440x400"), "{}", said.message);
            let faults = [faults(&said.message), faults(&hint)].concat();
            assert!(faults.is_empty(), "{}", faults.join("\n"));
            assert!(!said.message.ends_with('.') && !hint.ends_with('.'), "{}", said.message);
        }
    }
}

#[test]
fn sentences_are_whole_for_every_number() {
    for say in LANGUAGES {
        let counts = (0..=130).flat_map(|count| of_count(say, count));
        let faults: Vec<String> =
            counts.chain(others(say)).flat_map(|said| faults(&said)).collect();
        assert!(faults.is_empty(), "{}", faults.join("\n"));
    }
}

#[test]
fn what_would_read_badly_is_found() {
    for said in [
        "1 cells.",
        "2 cell",
        "1 celdas",
        "3 celda",
        "a  gap",
        "Plan of , OT",
        "An end..",
        " an edge",
        "",
    ] {
        assert!(!faults(said).is_empty(), "{said}");
    }
}

/// The texts of each document, as they are listed.
pub(crate) fn texts_of_documents(say: &dyn Language) -> Vec<Vec<String>> {
    let documents = [
        format!("{:#?}", say.shared()),
        format!("{:#?}", say.setup_card()),
        format!("{:#?}", say.fill_card()),
        format!("{:#?}", say.sewn_in_tag()),
        format!("{:#?}", say.take_home()),
        format!("{:#?}", say.measuring_form()),
        format!("{:#?}", say.wash_day()),
        format!("{:#?}", say.height_gauge()),
        format!("{:#?}", say.letter()),
        format!("{:#?}", say.sections()),
        format!("{:#?}", say.order()),
        format!("{:#?}", say.range_table()),
        format!("{:#?}", say.review()),
        format!("{:#?}", say.template()),
        format!("{:#?}", say.survey()),
        format!("{:#?}", say.history()),
        format!("{:#?}", say.table()),
        format!("{:#?}", say.lines()),
        format!("{:#?}", say.parts()),
        format!("{:#?}", say.comparison()),
        format!("{:#?}", say.page()),
    ];
    let texts = |document: &String| {
        // Quotation marks within a text are listed behind a stroke.
        let document = document.replace("\\\"", "'");
        document.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>()
    };
    documents.iter().map(texts).collect()
}

#[test]
fn no_text_of_a_document_is_empty_or_has_a_gap() {
    for document in LANGUAGES.into_iter().flat_map(texts_of_documents) {
        assert!(document.len() > 4, "{document:?}");
        for text in &document {
            // Before an entry that was withdrawn there is a space.
            let faults = faults(text.strip_suffix(": ").unwrap_or(text));
            assert!(faults.is_empty(), "{}", faults.join("\n"));
        }
    }
}

#[test]
fn numbers_of_compartments_are_listed_as_one_says_them() {
    let said = |numbers: &[u8]| ENGLISH.reason_of_change(numbers, -4, "a reason");
    assert_eq!(said(&[3]), "No. 3, –4: a reason");
    assert_eq!(said(&[3, 4]), "No. 3 and 4, –4: a reason");
    assert_eq!(said(&[3, 4, 7]), "No. 3, 4 and 7, –4: a reason");
    let said = SPANISH.reason_of_change(&[3, 4, 7], -4, "un motivo");
    assert_eq!(said, "N.º 3, 4 y 7, –4: un motivo");
}
