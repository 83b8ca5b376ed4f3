//! What is said of a case: whole sentences, in either unit of lengths.

use case::text::LengthUnit;
use case::{
    Alarm, AltitudeNote, BodyError, BodyValue, BrokenLimit, CardCode, CardFinding, Caution, Check,
    CheckPart, CostAtBone, Date, DigestHead, Doubt, Finding, FrontSides, GoalNumber, GoalOutcome,
    HeightEffect, LookAt, Mistake, NextStep, NoCardCode, NoSizeToMake, OtherCount, PlanMark,
    ReCheck, RecordNote, Remedy, RemedyCost, Restored, Shortfall, SinceRecorded, SiteName,
    SizeMargin, SizeMisfit, SizeToMake, SizingRule, SkinAnswer, Source, StaleFilling, Telling,
    ToldFrom, TopAnswer, Verdict, Want, WhyReCheck,
};
use cushion::{Length, MadeSize, Mass, Side};
use words::{ENGLISH, LANGUAGES, Language};

use crate::papers::faults;
use crate::sweep::filling;

const DAY: Date = Date::constant(2026, 3, 4);
const BOTH: [Side; 2] = [Side::Left, Side::Right];

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

/// Each language in either unit of lengths.
pub(crate) fn languages() -> Vec<&'static dyn Language> {
    let units = [LengthUnit::Millimetres, LengthUnit::Inches];
    LANGUAGES.iter().flat_map(|own| units.map(|unit| own.with_lengths_in(unit))).collect()
}

/// All the ways in which a goal can end that are told apart.
fn goals() -> Vec<GoalOutcome> {
    let lower = |side, by| GoalNumber::Lower { side, by: mm(by) };
    let site = SiteName::SeatBone(Side::Left);
    let mut pairs = vec![
        (Want::CorrectObliquity, lower(None, 0.0), lower(Some(Side::Left), 4.0)),
        (Want::AccommodateObliquity, lower(Some(Side::Left), 12.0), lower(Some(Side::Right), 4.0)),
        (Want::CorrectObliquity, lower(Some(Side::Right), 6.0), lower(None, 0.2)),
        (Want::OffLoad { site, share: 0.25 }, GoalNumber::Relief(0.25), GoalNumber::Relief(0.39)),
        (Want::OffLoad { site, share: 0.25 }, GoalNumber::Relief(0.25), GoalNumber::Relief(-0.04)),
        (Want::OffLoad { site, share: 0.25 }, GoalNumber::Relief(0.25), GoalNumber::Relief(0.0)),
        (Want::EqualFirmness, GoalNumber::Apart(0.0), GoalNumber::Apart(0.07)),
    ];
    let heights = [
        Want::Shelf { height: mm(10.0) },
        Want::MedialSupport { height: mm(10.0) },
        Want::LateralSupport { height: mm(10.0) },
    ];
    for by in [9.0, -3.0, 0.0] {
        let reached = GoalNumber::Higher(mm(by));
        pairs.extend(heights.map(|want| (want, GoalNumber::Higher(mm(10.0)), reached)));
        for sides in [FrontSides::Both, FrontSides::One(Side::Right)] {
            let want = Want::LowerFront { sides, by: mm(6.0) };
            pairs.push((want, GoalNumber::FrontLower(mm(6.0)), GoalNumber::FrontLower(mm(by))));
        }
    }
    for cells in [0, 1, 68] {
        pairs.push((Want::NearStock, GoalNumber::Changed(0), GoalNumber::Changed(cells)));
    }
    let mut goals = Vec::new();
    for (want, wanted, reached) in pairs {
        goals.push(GoalOutcome { want, wanted, reached: Some(reached), met: true, why: None });
        let why = Some(Shortfall::Rank);
        goals.push(GoalOutcome { want, wanted, reached: Some(reached), met: false, why });
        goals.push(GoalOutcome { want, wanted, reached: None, met: false, why });
    }
    goals
}

fn cautions() -> Vec<Caution> {
    let mut all = vec![
        Caution::Layers { pad: true, sling: true },
        Caution::Layers { pad: true, sling: false },
        Caution::Layers { pad: false, sling: true },
        Caution::OpenInjury { site: SiteName::Coccyx, seen_on: DAY },
        Caution::CannotProtectSkin,
        Caution::SmallObliquity { lower: Side::Left, by: mm(4.0) },
        Caution::LowSideLoaded { lower: Side::Right },
        Caution::FootPropels,
        Caution::Size(misfits()),
        Caution::Altitude(AltitudeNote::Travel),
        Caution::Altitude(AltitudeNote::CellsAtHome { sealed: 300, home: 290 }),
        Caution::ReCheck { due: ReCheck { by: DAY, because: re_checks() }, now: true },
        Caution::Empty { number: 3 },
        Caution::NoRating { size: "440x400".parse().expect("it is a size") },
        Caution::NoWeight,
        Caution::OldWeight { weighed_on: DAY },
        Caution::HeightChanged,
        Caution::SlingSeat,
        Caution::WiderThanChair,
        Caution::DeeperThanSeat,
    ];
    for grows in [0.2, -0.2] {
        let (sealed, home) = (Length::ZERO, Length::from_m(1600.0));
        all.push(Caution::Altitude(AltitudeNote::Moved { sealed, home, grows }));
    }
    for cells in [0, 1, 2] {
        all.push(Caution::FewCells { number: 3, cells, least: 20 });
        all.push(Caution::ManyCells { number: 3, cells, most: 20 });
        all.push(Caution::SmallMoves { cells });
        all.push(Caution::Spares { needed: 5, there: cells });
    }
    all
}

fn misfits() -> Vec<SizeMisfit> {
    vec![
        SizeMisfit::Narrow { hips: mm(380.0) },
        SizeMisfit::Wide { most: mm(70.0) },
        SizeMisfit::Deep { least: mm(30.0) },
        SizeMisfit::Shallow { short: mm(130.0) },
        SizeMisfit::Rating { rating: Mass::from_kg(90.5) },
        SizeMisfit::WiderThanChair,
        SizeMisfit::DeeperThanSeat,
    ]
}

/// What a size leaves free, or lacks where `sign` is -1.
fn margins(sign: f64) -> Vec<SizeMargin> {
    vec![
        SizeMargin::BesideHips(mm(20.0 * sign)),
        SizeMargin::BehindKnee(mm(48.0 * sign)),
        SizeMargin::BelowRating(Mass::from_kg(12.0 * sign)),
        SizeMargin::InChairWidth(mm(10.0 * sign)),
        SizeMargin::InChairDepth(mm(30.0 * sign)),
    ]
}

fn to_make() -> SizeToMake {
    let size = "665x430".parse().expect("it is a size");
    SizeToMake {
        made: MadeSize { size, max_user_weight: Mass::from_kg(132.0) },
        widths: [mm(640.0), mm(710.0)],
        depths: [mm(360.0), mm(450.0)],
    }
}

fn no_size_to_make() -> Vec<NoSizeToMake> {
    vec![
        NoSizeToMake::HipsNotMeasured,
        NoSizeToMake::ThighsNotMeasured,
        NoSizeToMake::NotWeighed,
        NoSizeToMake::WidthNotDrawn { wanted: mm(826.0) },
        NoSizeToMake::DepthNotDrawn { wanted: mm(100.0) },
        NoSizeToMake::ChairTooNarrow { least: mm(400.0), inside: mm(390.0) },
        NoSizeToMake::SeatTooShallow { least: mm(360.0), inside: mm(350.0) },
        NoSizeToMake::LayoutNotDrawn { size: "665x430".parse().expect("it is a size") },
    ]
}

fn re_checks() -> Vec<WhyReCheck> {
    let [then, now] = [70.0, 80.0].map(Mass::from_kg);
    vec![
        WhyReCheck::AfterFitting(DAY),
        WhyReCheck::AfterLastLook(DAY),
        WhyReCheck::Review(DAY),
        WhyReCheck::Weight { then, now, plan: DAY },
        WhyReCheck::Losing { number: 2, cells: 40, planned: 44 },
        WhyReCheck::Clearance { side: Side::Left, felt: mm(26.0) },
    ]
}

fn limits() -> Vec<BrokenLimit> {
    let (weight, rating) = (Mass::from_kg(98.5), Mass::from_kg(90.0));
    vec![
        BrokenLimit::Clearance { side: Side::Left, left: mm(20.0), needed: mm(25.0) },
        BrokenLimit::Clearance { side: Side::Right, left: mm(24.8), needed: mm(25.0) },
        BrokenLimit::LowClearance { side: Side::Right, left: mm(0.0), needed: mm(10.0) },
        BrokenLimit::BottomsOut(vec![1]),
        BrokenLimit::BottomsOut(vec![1, 2, 5]),
        BrokenLimit::Tips,
        BrokenLimit::LeansAway,
        BrokenLimit::NoRest,
        BrokenLimit::NoRestOnStock,
        BrokenLimit::InjuredSite {
            site: SiteName::Coccyx,
            healed: false,
            rise: 0.12,
            from: ToldFrom::Passed,
        },
        BrokenLimit::InjuredSite {
            site: SiteName::Coccyx,
            healed: true,
            rise: 0.12,
            from: ToldFrom::Present,
        },
        BrokenLimit::TooHeavy { weight, rating },
    ]
}

fn shortfalls() -> Vec<Shortfall> {
    vec![
        Shortfall::Clearance(Side::Left),
        Shortfall::Full(4),
        Shortfall::Rank,
        Shortfall::OutOfReach,
        Shortfall::TheseCounts,
        Shortfall::SeatWouldFall,
        Shortfall::FixedObliquity,
        Shortfall::InjuredLowSide(Side::Right),
        Shortfall::FixedPosteriorTilt,
        Shortfall::StiffHip,
        Shortfall::NoObliquity,
        Shortfall::NothingToTake(SiteName::Coccyx),
        Shortfall::OtherGoals,
        Shortfall::NoSeamForShelf,
        Shortfall::NoFront,
        Shortfall::NoCompartments,
        Shortfall::NothingBeside,
        Shortfall::NoRestOnStock,
        Shortfall::NoRest,
    ]
}

fn next_steps() -> Vec<NextStep> {
    let mut all = vec![
        NextStep::CheckAgain,
        NextStep::FeelSmallMoves,
        NextStep::PatFirst,
        NextStep::TakeOutIfStillHeld,
        NextStep::CauseFirst,
        NextStep::NoCellsForAMark,
        NextStep::CountBeforeMoving,
        NextStep::MoveWhileOff,
        NextStep::AnotherCushion,
        NextStep::Call,
        NextStep::TellsMost(Telling::Lower),
    ];
    for side in BOTH {
        all.push(NextStep::CheckUnder(side));
        all.push(NextStep::CheckOnTop(side));
        all.push(NextStep::FeelBeforeMoving(side));
        all.push(NextStep::FeelBeforeTaking(side));
        all.push(NextStep::FeelAgain(side));
        all.push(NextStep::SetUpBeforeMoving(side));
        all.push(NextStep::TellsMost(Telling::Under(side)));
        all.push(NextStep::TellsMost(Telling::OnTop(side)));
    }
    all
}

fn alarms() -> Vec<Alarm> {
    let site = SiteName::Coccyx;
    let marks = [SkinAnswer::Stays, SkinAnswer::Open, SkinAnswer::Worse];
    let mut all: Vec<Alarm> = marks.map(|answer| Alarm::Mark { site, answer }).to_vec();
    for expected in [None, Some(mm(40.0))] {
        all.push(Alarm::BoneFelt { side: Side::Left, expected });
    }
    all
}

fn mistakes() -> Vec<Mistake> {
    vec![
        Mistake::None,
        Mistake::Swapped,
        Mistake::TurnedRound,
        Mistake::Leaks,
        Mistake::Forward(mm(40.0)),
        Mistake::Sag,
        Mistake::Short { number: 2, id: cushion::Name::new("seat-left").expect("it is a name") },
    ]
}

/// What stands in lists and after colons.
pub(crate) fn clauses(say: &dyn Language) -> Vec<String> {
    let other = OtherCount {
        id: cushion::Name::new("seat-left").expect("it is a name"),
        number: 1,
        fresh: 44,
        recorded: 40,
    };
    let since = SinceRecorded::OtherCounts { recorded: DAY, counts: vec![other.clone()] };
    let body = |what| BodyError { what, value: 0.1 + 0.2, least: 10.0, most: 300.0 };
    let weight = |counts| {
        let (then, now) = (Mass::from_kg(60.0), Mass::from_kg(72.5));
        SinceRecorded::OtherWeight { then, now, counts }
    };
    let mut all = vec![
        say.since_recorded(&weight(None)),
        say.since_recorded(&weight(Some(Vec::new()))),
        say.since_recorded(&weight(Some(vec![other.clone()]))),
        say.since_recorded(&since),
        say.nothing_planned().to_owned(),
        say.not_safe(&limits()),
        say.client_off(&alarms()),
        say.goals_not_reached(&goals()),
        say.whence(None),
        say.whence(Some(DAY)),
        say.batch(50, 0.806),
    ];
    all.push(say.restored_from(&card_code()));
    all.push(say.restored_by().to_owned());
    all.push(say.no_card_code(NoCardCode { signs: 151, most: 150 }));
    all.extend(limits().iter().map(|own| say.limit(own)));
    all.extend(shortfalls().iter().map(|own| say.shortfall(*own)));
    all.extend(misfits().iter().map(|own| say.size_misfit(own)));
    for sign in [1.0, -1.0] {
        all.extend(margins(sign).iter().map(|own| say.size_margin(own)));
    }
    all.extend(re_checks().iter().map(|own| say.why_re_check(own)));
    all.extend(alarms().iter().map(|own| say.alarm(own)));
    all.extend(BodyValue::ALL.map(|what| say.body_error(&body(what))));
    all.extend(goals().iter().map(|own| say.goal(&own.want)));
    all
}

/// What is said of a record, in sentences.
fn of_record(say: &dyn Language) -> Vec<String> {
    let missing = vec![CheckPart::Skin, CheckPart::Reach];
    let notes = [
        RecordNote::Believed(DAY),
        RecordNote::PutBack { number: 2, cells: 1 },
        RecordNote::PutBack { number: 2, cells: 4 },
        RecordNote::PutBack { number: 2, cells: -4 },
        RecordNote::BagShort { cells: 1 },
        RecordNote::BagShort { cells: 2 },
        RecordNote::NotFinished { missing: missing.clone() },
        RecordNote::NotFinished { missing: vec![CheckPart::Transfer] },
        RecordNote::NotFinished { missing: Vec::new() },
        RecordNote::Filling(filling(None)),
        RecordNote::Filling(filling(Some(StaleFilling::OtherCounts))),
        RecordNote::Filling(filling(Some(StaleFilling::Since))),
    ];
    let mut all: Vec<String> = notes.iter().map(|own| say.record_note(own)).collect();
    all.extend([0, 1, 20, -1, -3].map(|cells| say.bag(cells)));
    all.push(say.is_proposed().to_owned());
    let code = card_code();
    all.extend(say.restored_head(&code).lines().map(str::to_owned));
    all.push(say.restored(&Restored { file: "K-17.toml".to_owned(), code }));
    all
}

fn card_code() -> CardCode {
    let head = || DigestHead::new("0123456789").expect("ten digits");
    CardCode {
        layout: "row-six".to_owned(),
        layout_digest: head(),
        cell: "pillow-25".to_owned(),
        cell_digest: head(),
        size: "440x400".parse().expect("a size"),
        counts: vec![44, 47, 30, 30, 31, 31],
        mark: PlanMark { number: 2, word: "K7QF".to_owned() },
        serial: Some("SW-0142".to_owned()),
        client: None,
    }
}

/// What stands by itself.
pub(crate) fn sentences(say: &dyn Language) -> Vec<String> {
    let check = Check::Top { side: Side::Left, answer: TopAnswer::Safe };
    let height = [
        HeightEffect::Footrest { side: Side::Left, too_low_by: mm(20.0) },
        HeightEffect::Footrest { side: Side::Left, too_low_by: mm(-20.0) },
        HeightEffect::FrontEdge { side: Side::Right, least: mm(380.0), most: mm(405.0) },
        HeightEffect::Seated { height: mm(60.0) },
    ];
    let rules = [
        SizingRule::Width { wanted: mm(420.0), room: mm(25.0), within: [mm(395.0), mm(465.0)] },
        SizingRule::Depth { wanted: mm(412.0), room: mm(50.0), within: [mm(342.0), mm(432.0)] },
        SizingRule::ChairWidth { inside: mm(430.0) },
        SizingRule::ChairDepth { inside: mm(430.0) },
        SizingRule::Rating { weight: Mass::from_kg(70.5) },
    ];
    let mut all = vec![
        say.doubt(&Doubt::Contradiction(check, check)),
        say.doubt(&Doubt::Misfit(check)),
        say.left_out(&check),
        say.best_size(None),
        say.best_size("440x400".parse().ok()),
        say.size_leaves(&margins(1.0)),
        say.size_leaves(&[]),
        say.sizes_suit_too(&[
            "440x400".parse().expect("a size"),
            "440x440".parse().expect("a size"),
        ]),
        say.size_to_make(&to_make()),
        say.can_be_drawn_so(&["row-six", "island-eight"]),
    ];
    all.extend(no_size_to_make().iter().map(|own| say.no_size_to_make(own)));
    all.extend(goals().iter().map(|own| say.goal_outcome(own)));
    all.extend(cautions().iter().map(|own| say.caution(own)));
    all.extend(next_steps().iter().map(|own| say.next_step(*own)));
    all.extend(LookAt::AFTER_AN_ALARM.map(|own| say.look_at(own).to_owned()));
    all.extend(LookAt::AFTER_A_PINCH.map(|own| say.look_at(own).to_owned()));
    all.extend(mistakes().iter().map(|own| say.mistake(own)));
    all.extend(height.iter().map(|own| say.height_effect(own)));
    all.extend(rules.iter().map(|own| say.sizing_rule(own)));
    for verdict in [Verdict::AsPlanned, Verdict::AsPlannedSoFar, Verdict::Stay, Verdict::ClientOff]
    {
        all.extend(say.verdict(verdict, false).map(str::to_owned));
    }
    all.extend(of_record(say));
    all.extend(remedies().iter().map(|own| say.remedy(own)));
    let cost = CostAtBone { height: mm(-4.0), pressure: -0.1 };
    all.push(say.remedy_cost(&RemedyCost { side: Side::Left, there: cost, other: cost }));
    all
}

fn remedies() -> Vec<Remedy> {
    let mut all = vec![
        Remedy::ClientOffLookAtSetUp,
        Remedy::ClientOff,
        Remedy::MoreThanAHandful,
        Remedy::NoCells,
    ];
    for cells in [1, 2] {
        all.push(Remedy::PutIn { cells, into: 3 });
        all.push(Remedy::TakeOut { cells, out_of: 3 });
        all.push(Remedy::MoveOver { cells, from: 3, to: 4 });
    }
    all
}

#[test]
fn clauses_can_stand_in_a_list_and_sentences_by_themselves() {
    for say in languages() {
        let mut wrong = Vec::new();
        for clause in clauses(say) {
            wrong.extend(faults(&clause));
            let small = clause.starts_with(|c: char| c.is_lowercase() || c.is_ascii_digit());
            wrong.extend((!small || clause.ends_with('.')).then(|| format!("no clause: {clause}")));
        }
        for sentence in sentences(say) {
            wrong.extend(faults(&sentence));
            // A sentence may begin with an answer as it was given, in quotes.
            let begins = sentence.starts_with(|c: char| c.is_uppercase() || "\"¿".contains(c));
            let whole = begins && sentence.ends_with(['.', '?']);
            wrong.extend((!whole).then(|| format!("no sentence: {sentence}")));
        }
        assert_eq!(wrong, [""; 0]);
    }
}

#[test]
fn nothing_is_less_than_nothing() {
    for say in languages() {
        for said in goals().iter().map(|goal| say.goal_outcome(goal)) {
            assert!(!said.contains('-') || said.contains("pre-ischial"), "{said}");
            assert!(!said.contains("\u{2212}"), "{said}");
        }
    }
}

#[test]
fn goals_are_said_as_somebody_would_say_them() {
    let said = |want, wanted, reached, met| {
        let why = if met { None } else { Some(Shortfall::Clearance(Side::Left)) };
        ENGLISH.goal_outcome(&GoalOutcome { want, wanted, reached: Some(reached), met, why })
    };
    let site = SiteName::Coccyx;
    assert_eq!(
        said(
            Want::OffLoad { site, share: 0.25 },
            GoalNumber::Relief(0.25),
            GoalNumber::Relief(0.39),
            true
        ),
        "Take 25 % of the pressure off the coccyx: met. Expected: 31 to 47 % less than at the stock fill, soft tissue allowed for."
    );
    let left = |by| GoalNumber::Lower { side: Some(Side::Left), by: mm(by) };
    let right = GoalNumber::Lower { side: Some(Side::Right), by: mm(4.0) };
    assert_eq!(
        said(Want::AccommodateObliquity, left(12.0), right, false),
        "Leave the obliquity, fill the gap and share the load: NOT REACHED. Expected: the client's RIGHT side is LOWER by 4 mm; 12 mm on the LEFT is wanted. More would leave too little cushion under the left seat bone."
    );
    assert_eq!(
        said(Want::NearStock, GoalNumber::Changed(0), GoalNumber::Changed(68), true),
        "Stay near the stock fill: met. Expected: 68 cells are changed."
    );
}

#[test]
fn whoever_measures_in_inches_reads_inches_first() {
    let say = ENGLISH.with_lengths_in(LengthUnit::Inches);
    let limit = BrokenLimit::Clearance { side: Side::Left, left: mm(20.0), needed: mm(25.0) };
    assert_eq!(
        say.limit(&limit),
        "0.8 in (20 mm) of cushion under the left seat bone, and 1 in (25 mm) are needed"
    );
    assert_eq!(
        say.best_size("431.8x406.4".parse().ok()),
        "The made size that suits best: 17 x 16 in (431.8x406.4)."
    );
    // What is something is never nought.
    assert_eq!(
        say.lower(Some(Side::Left), mm(1.0)),
        "the client's LEFT side is LOWER by 0.04 in (1 mm)"
    );
}

#[test]
fn whoever_measures_in_inches_reads_pounds_first() {
    let say = ENGLISH.with_lengths_in(LengthUnit::Inches);
    let kg = Mass::from_kg;
    assert_eq!(say.rating_on_tag(Some(kg(110.0))), "Client at most 242.5 lb (110 kg)");
    assert_eq!(say.rating(Some(kg(110.0))), "242.5 lb (110 kg)");
    assert_eq!(
        say.size_margin(&SizeMargin::BelowRating(kg(5.2))),
        "11.5 lb (5.2 kg) below its rating"
    );
    let rule = SizingRule::Rating { weight: kg(72.0) };
    assert_eq!(say.sizing_rule(&rule), "Rated for the client's weight, 158.7 lb (72 kg), or more.");
}

#[test]
fn margins_are_said_with_their_sign() {
    assert_eq!(
        ENGLISH.size_leaves(&margins(1.0)),
        "It leaves 10 mm beside each hip, 48 mm behind the knee, 12 kg below its rating, \
         10 mm of the chair's width to spare, 30 mm of the seat's depth to spare."
    );
    let lacking: Vec<String> = margins(-1.0).iter().map(|own| ENGLISH.size_margin(own)).collect();
    assert_eq!(
        lacking,
        [
            "10 mm too narrow at each hip",
            "48 mm beyond the knee",
            "12 kg above its rating",
            "10 mm wider than the chair inside",
            "30 mm deeper than the seat",
        ]
    );
    // What is left of a difference below a tenth of a millimetre is nothing, not a lack.
    assert_eq!(ENGLISH.size_margin(&SizeMargin::BehindKnee(mm(-1e-9))), "0 mm behind the knee");
}

/// It is a question to a supplier, and sells nothing.
#[test]
fn what_would_have_to_be_made_is_a_question_to_a_supplier() {
    assert_eq!(
        ENGLISH.size_to_make(&to_make()),
        "Ask a supplier whether a cushion can be made in 665x430, rated for 132 kg or more: a \
         width of 640 to 710 mm and a depth of 360 to 450 mm suit as well. Only the maker can \
         rate it."
    );
}

/// Sources are told where they are asked for.
#[test]
fn rules_of_sizing_and_heights_are_said_without_their_sources() {
    let height = HeightEffect::FrontEdge { side: Side::Right, least: mm(380.0), most: mm(405.0) };
    let said = ENGLISH.height_effect(&height);
    assert!(!said.contains("2020") && said.ends_with("380 to 405 mm above the floor."), "{said}");
    assert!(ENGLISH.source(height.source()).contains("2020"));
}

/// The sides of the finding and no others are named.
#[test]
fn a_mirrored_finding_is_said_with_the_other_side() {
    let swapped = |text: &str| {
        let swap =
            |text: &str, a: &str, b: &str| text.replace(a, "#").replace(b, a).replace('#', b);
        let pairs = [
            ("left", "right"),
            ("LEFT", "RIGHT"),
            ("Left", "Right"),
            ("izquierd", "derech"),
            ("IZQUIERD", "DERECH"),
        ];
        pairs.iter().fold(text.to_owned(), |text, (a, b)| swap(&text, a, b))
    };
    for say in languages() {
        for [left, right] in [
            BOTH.map(|side| Finding::Next(NextStep::FeelBeforeTaking(side))),
            BOTH.map(|side| Finding::Alarm(Alarm::BoneFelt { side, expected: None })),
            BOTH.map(|lower| Finding::Caution(Caution::SmallObliquity { lower, by: mm(4.0) })),
            BOTH.map(|side| {
                Finding::Limit(BrokenLimit::Clearance { side, left: mm(2.0), needed: mm(25.0) })
            }),
        ] {
            let (left, right) = (say.finding(&left), say.finding(&right));
            // "are left" is no side.
            let plain = |text: &str| text.replace(" are left ", " remain ");
            assert_eq!(swapped(&plain(&left)), plain(&right));
        }
        for [left, right] in [
            BOTH.map(|side| CardFinding::TooLow { side, limit: mm(25.0) }),
            BOTH.map(|side| CardFinding::Pinched { side, felt: mm(35.0) }),
            BOTH.map(|side| CardFinding::Lower { side, by: mm(5.0) }),
        ] {
            assert_eq!(swapped(&say.card_finding(&left)), say.card_finding(&right));
        }
    }
}

#[test]
fn every_source_is_named() {
    for say in languages() {
        let named = Source::ALL.map(|source| say.source(source));
        for (at, name) in named.iter().enumerate() {
            assert_eq!(faults(name), [""; 0]);
            assert!(!named[..at].contains(name), "{name}");
        }
    }
}
