//! Findings in reports: how programs call each, its numbers with their units in the keys, and what
//! is said of it.

use std::collections::BTreeMap;

use case::{
    Alarm, AltitudeNote, BrokenLimit, CardCode, Caution, Doubt, Finding, GoalNumber, GoalOutcome,
    HeightEffect, Mistake, NextStep, NoSizeToMake, OtherCount, OtherPapers, RecordNote, Shortfall,
    SinceRecorded, SizeMargin, SizeMisfit, SizeToMake, SizingRule, Telling, WhyReCheck,
};
use cushion::{Length, Mass, Side};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Value, json};

use super::rounded;

/// How a finding is said to whoever reads the report.
pub type Say<'a> = &'a dyn Fn(&Finding) -> String;

/// A finding as reports have it.
#[derive(Serialize, JsonSchema)]
pub(super) struct FindingBody {
    id: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    severity: Option<&'static str>,
    #[serde(flatten)]
    facts: Facts,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    source: Option<String>,
}

pub(super) type Facts = BTreeMap<String, Value>;

impl FindingBody {
    pub(super) fn new(finding: impl Into<Finding>, say: Say<'_>) -> Self {
        let finding = finding.into();
        let (severity, source) = match &finding {
            Finding::Caution(own) => (Some(own.severity().id()), Some(own.source())),
            Finding::SizingRule(own) => (None, Some(own.source())),
            Finding::Height(own) => (None, Some(own.source())),
            _ => (None, None),
        };
        Self {
            id: finding.id(),
            severity,
            facts: facts(&finding, say),
            text: say(&finding),
            source: source.map(|source| say(&Finding::Source(source))),
        }
    }

    pub(super) fn all<T: Clone + Into<Finding>>(findings: &[T], say: Say<'_>) -> Vec<Self> {
        findings.iter().map(|own| Self::new(own.clone(), say)).collect()
    }
}

fn some<const N: usize>(facts: [(&'static str, Value); N]) -> Facts {
    facts.into_iter().map(|(key, value)| (key.to_owned(), value)).collect()
}

fn mm(length: Length) -> Value {
    json!(rounded(length.to_mm()))
}

fn kg(mass: Mass) -> Value {
    json!(rounded(mass.to_kg()))
}

fn side(side: Side) -> Value {
    json!(side.words())
}

fn facts(finding: &Finding, say: Say<'_>) -> Facts {
    match finding {
        Finding::Alarm(own) => alarm(own),
        Finding::Limit(own) => limit(own),
        Finding::Goal(own) => goal(own, say),
        Finding::Shortfall(own) => shortfall(*own),
        Finding::Caution(own) => caution(own, say),
        Finding::SizingRule(own) => sizing_rule(own),
        Finding::SizeMargin(own) => size_margin(own),
        Finding::SizeMisfit(own) => size_misfit(own),
        Finding::SizeToMake(own) => size_to_make(own),
        Finding::NoSizeToMake(own) => no_size_to_make(own),
        Finding::Height(own) => height(own),
        Finding::Doubt(Doubt::Contradiction(one, other)) => {
            some([("checks", json!([one.to_string(), other.to_string()]))])
        }
        Finding::Doubt(Doubt::Misfit(check)) | Finding::LeftOut(check) => {
            some([("checks", json!([check.to_string()]))])
        }
        Finding::Next(own) => next_step(*own),
        Finding::Mistake(own) => mistake(own),
        Finding::ReCheck(own) => why_re_check(own),
        Finding::Since(own) => since_recorded(own),
        Finding::Record(own) => record_note(own),
        Finding::OtherPapers(own) => other_papers(own),
        Finding::Restored(own) => restored(&own.code),
        Finding::NoCardCode(own) => some([("signs", json!(own.signs)), ("most", json!(own.most))]),
        Finding::LookAt(_) | Finding::Source(_) => Facts::new(),
    }
}

fn record_note(note: &RecordNote) -> Facts {
    match note {
        RecordNote::Believed(plan) => some([("plan", json!(plan.to_string()))]),
        RecordNote::PutBack { number, cells } => {
            some([("compartment", json!(number)), ("cells", json!(cells))])
        }
        RecordNote::BagShort { cells } => some([("cells", json!(cells))]),
        RecordNote::Filling(own) => some([
            ("on", json!(own.on.to_string())),
            ("by", json!(own.by)),
            ("counted", json!(own.counted)),
            ("of", json!(own.of)),
            ("stale", json!(own.stale.map(case::StaleFilling::id))),
        ]),
        RecordNote::NotFinished { missing } => {
            let missing: Vec<&str> = missing.iter().map(|part| part.id()).collect();
            some([("missing", json!(missing))])
        }
    }
}

fn other_papers(own: &OtherPapers) -> Facts {
    let one = |of: &case::PapersOfPlan| {
        let (plan, word) = of.mark.as_ref().map(|mark| (mark.number, mark.word.as_str())).unzip();
        let superseded = !own.is_later(of);
        json!({ "plan": plan, "word": word, "superseded": superseded, "files": of.files })
    };
    some([("others", own.others.iter().map(one).collect())])
}

fn restored(code: &CardCode) -> Facts {
    let client = code.client.as_ref().map(|own| own.as_str());
    some([
        ("layout", json!(code.layout)),
        ("size", json!(code.size.to_string())),
        ("cell", json!(code.cell)),
        ("counts", json!(code.counts)),
        ("plan", json!(code.mark.number)),
        ("word", json!(code.mark.word)),
        ("serial", json!(code.serial)),
        ("client", json!(client)),
    ])
}

fn alarm(alarm: &Alarm) -> Facts {
    match alarm {
        Alarm::BoneFelt { side: at, expected: None } => some([("side", side(*at))]),
        Alarm::BoneFelt { side: at, expected: Some(expected) } => {
            some([("side", side(*at)), ("expected_mm", mm(*expected))])
        }
        Alarm::Mark { site, answer } => {
            some([("site", json!(site.id())), ("answer", json!(answer.words()))])
        }
    }
}

fn limit(limit: &BrokenLimit) -> Facts {
    match limit {
        BrokenLimit::Clearance { side: at, left, needed }
        | BrokenLimit::LowClearance { side: at, left, needed } => {
            some([("side", side(*at)), ("left_mm", mm(*left)), ("needed_mm", mm(*needed))])
        }
        BrokenLimit::BottomsOut(numbers) => some([("compartments", json!(numbers))]),
        BrokenLimit::InjuredSite { site, healed, rise, from } => some([
            ("site", json!(site.id())),
            ("healed", json!(healed)),
            ("rise_percent", json!(rounded(100.0 * rise))),
            ("from", json!(from.id())),
        ]),
        BrokenLimit::TooHeavy { weight, rating } => {
            some([("weight_kg", kg(*weight)), ("rating_kg", kg(*rating))])
        }
        BrokenLimit::Tips
        | BrokenLimit::LeansAway
        | BrokenLimit::NoRest
        | BrokenLimit::NoRestOnStock => Facts::new(),
    }
}

fn goal(goal: &GoalOutcome, say: Say<'_>) -> Facts {
    let mut facts = numbers("wanted", &goal.wanted);
    if let Some(reached) = &goal.reached {
        facts.extend(numbers("reached", reached));
    }
    facts.insert("met".to_owned(), json!(goal.met));
    let why = goal.why.map(|why| FindingBody::new(why, say));
    facts.insert("why".to_owned(), json!(why));
    facts
}

/// The number of a goal, under keys with its unit that begin with a word.
fn numbers(which: &str, number: &GoalNumber) -> Facts {
    goal_number(number).into_iter().map(|(key, value)| (format!("{which}_{key}"), value)).collect()
}

/// The number of a goal, under keys with its unit.
pub(super) fn goal_number(number: &GoalNumber) -> Facts {
    let percent = |share: f64| json!(rounded(100.0 * share));
    match number {
        GoalNumber::Lower { side: at, by } => {
            some([("lower_side", json!(at.map_or("level", Side::words))), ("lower_mm", mm(*by))])
        }
        GoalNumber::Relief(share) => some([("relief_percent", percent(*share))]),
        GoalNumber::Higher(by) => some([("higher_mm", mm(*by))]),
        GoalNumber::FrontLower(by) => some([("front_lower_mm", mm(*by))]),
        GoalNumber::Apart(share) => some([("apart_percent", percent(*share))]),
        GoalNumber::Changed(cells) => some([("changed_cells", json!(cells))]),
    }
}

fn shortfall(why: Shortfall) -> Facts {
    match why {
        Shortfall::Clearance(at) | Shortfall::InjuredLowSide(at) => some([("side", side(at))]),
        Shortfall::Full(number) => some([("compartment", json!(number))]),
        Shortfall::NothingToTake(site) => some([("site", json!(site.id()))]),
        Shortfall::Rank
        | Shortfall::OtherGoals
        | Shortfall::OutOfReach
        | Shortfall::TheseCounts
        | Shortfall::SeatWouldFall
        | Shortfall::FixedObliquity
        | Shortfall::FixedPosteriorTilt
        | Shortfall::StiffHip
        | Shortfall::NoObliquity
        | Shortfall::NoSeamForShelf
        | Shortfall::NoFront
        | Shortfall::NoCompartments
        | Shortfall::NothingBeside
        | Shortfall::NoRestOnStock
        | Shortfall::NoRest => Facts::new(),
    }
}

fn caution(caution: &Caution, say: Say<'_>) -> Facts {
    match caution {
        Caution::Layers { pad, sling } => some([("pad", json!(pad)), ("sling", json!(sling))]),
        Caution::OpenInjury { site, seen_on } => {
            some([("site", json!(site.id())), ("seen_on", json!(seen_on.to_string()))])
        }
        Caution::SmallObliquity { lower, by } => {
            some([("lower_side", side(*lower)), ("lower_mm", mm(*by))])
        }
        Caution::LowSideLoaded { lower } => some([("lower_side", side(*lower))]),
        Caution::Size(misfits) => some([("reasons", json!(FindingBody::all(misfits, say)))]),
        Caution::Altitude(note) => altitude(*note),
        Caution::ReCheck { due, now } => some([
            ("by", json!(due.by.to_string())),
            ("due", json!(now)),
            ("reasons", json!(FindingBody::all(&due.because, say))),
        ]),
        Caution::Empty { number } => some([("compartment", json!(number))]),
        Caution::FewCells { number, cells, least } => some([
            ("compartment", json!(number)),
            ("cells", json!(cells)),
            ("least_cells", json!(least)),
        ]),
        Caution::ManyCells { number, cells, most } => some([
            ("compartment", json!(number)),
            ("cells", json!(cells)),
            ("most_cells", json!(most)),
        ]),
        Caution::NoRating { size } => some([("size_mm", json!(size.to_string()))]),
        Caution::OldWeight { weighed_on } => some([("weighed_on", json!(weighed_on.to_string()))]),
        Caution::SmallMoves { cells } => some([("cells", json!(cells))]),
        Caution::Spares { needed, there } => {
            some([("needed_cells", json!(needed)), ("spare_cells", json!(there))])
        }
        Caution::CannotProtectSkin
        | Caution::FootPropels
        | Caution::NoWeight
        | Caution::HeightChanged
        | Caution::SlingSeat
        | Caution::WiderThanChair
        | Caution::DeeperThanSeat => Facts::new(),
    }
}

fn altitude(note: AltitudeNote) -> Facts {
    match note {
        AltitudeNote::Moved { sealed, home, grows } => some([
            ("sealed_m", json!(rounded(sealed.to_m()))),
            ("home_m", json!(rounded(home.to_m()))),
            ("grows_percent", json!(rounded(100.0 * grows))),
        ]),
        AltitudeNote::CellsAtHome { sealed, home } => {
            some([("sealed_cells", json!(sealed)), ("home_cells", json!(home))])
        }
        AltitudeNote::Travel => Facts::new(),
    }
}

fn sizing_rule(rule: &SizingRule) -> Facts {
    match rule {
        SizingRule::Width { wanted, room, within: [least, most] }
        | SizingRule::Depth { wanted, room, within: [least, most] } => some([
            ("wanted_mm", mm(*wanted)),
            ("room_mm", mm(*room)),
            ("least_mm", mm(*least)),
            ("most_mm", mm(*most)),
        ]),
        SizingRule::ChairWidth { inside } | SizingRule::ChairDepth { inside } => {
            some([("inside_mm", mm(*inside))])
        }
        SizingRule::Rating { weight } => some([("weight_kg", kg(*weight))]),
    }
}

fn size_margin(margin: &SizeMargin) -> Facts {
    match margin {
        SizeMargin::BesideHips(in_all) => {
            some([("in_all_mm", mm(*in_all)), ("each_side_mm", mm(*in_all * 0.5))])
        }
        SizeMargin::BelowRating(by) => some([("free_kg", kg(*by))]),
        SizeMargin::BehindKnee(by)
        | SizeMargin::InChairWidth(by)
        | SizeMargin::InChairDepth(by) => some([("free_mm", mm(*by))]),
    }
}

fn size_to_make(size: &SizeToMake) -> Facts {
    let ends = |ends: [Length; 2]| json!(ends.map(mm));
    some([
        ("size_mm", json!(size.made.size.to_string())),
        ("rating_kg", kg(size.made.max_user_weight)),
        ("widths_mm", ends(size.widths)),
        ("depths_mm", ends(size.depths)),
    ])
}

fn no_size_to_make(why: &NoSizeToMake) -> Facts {
    match why {
        NoSizeToMake::HipsNotMeasured
        | NoSizeToMake::ThighsNotMeasured
        | NoSizeToMake::NotWeighed => Facts::new(),
        NoSizeToMake::WidthNotDrawn { wanted } | NoSizeToMake::DepthNotDrawn { wanted } => {
            some([("wanted_mm", mm(*wanted))])
        }
        NoSizeToMake::ChairTooNarrow { least, inside }
        | NoSizeToMake::SeatTooShallow { least, inside } => {
            some([("least_mm", mm(*least)), ("inside_mm", mm(*inside))])
        }
        NoSizeToMake::LayoutNotDrawn { size } => some([("size_mm", json!(size.to_string()))]),
    }
}

fn size_misfit(misfit: &SizeMisfit) -> Facts {
    match misfit {
        SizeMisfit::Narrow { hips } => some([("hips_mm", mm(*hips))]),
        SizeMisfit::Wide { most } => some([("most_room_mm", mm(*most))]),
        SizeMisfit::Deep { least } => some([("least_room_mm", mm(*least))]),
        SizeMisfit::Shallow { short } => some([("short_mm", mm(*short))]),
        SizeMisfit::Rating { rating } => some([("rating_kg", kg(*rating))]),
        SizeMisfit::WiderThanChair | SizeMisfit::DeeperThanSeat => Facts::new(),
    }
}

fn height(effect: &HeightEffect) -> Facts {
    match effect {
        HeightEffect::Footrest { side: at, too_low_by } => {
            some([("side", side(*at)), ("too_low_mm", mm(*too_low_by))])
        }
        HeightEffect::FrontEdge { side: at, least, most } => {
            some([("side", side(*at)), ("least_mm", mm(*least)), ("most_mm", mm(*most))])
        }
        HeightEffect::Seated { height } => some([("height_mm", mm(*height))]),
    }
}

fn next_step(step: NextStep) -> Facts {
    match step {
        NextStep::CheckUnder(at)
        | NextStep::CheckOnTop(at)
        | NextStep::FeelBeforeMoving(at)
        | NextStep::FeelBeforeTaking(at)
        | NextStep::FeelAgain(at)
        | NextStep::SetUpBeforeMoving(at)
        | NextStep::TellsMost(Telling::Under(at) | Telling::OnTop(at)) => {
            some([("side", side(at))])
        }
        NextStep::TellsMost(Telling::Lower)
        | NextStep::CheckAgain
        | NextStep::FeelSmallMoves
        | NextStep::PatFirst
        | NextStep::TakeOutIfStillHeld
        | NextStep::CauseFirst
        | NextStep::NoCellsForAMark
        | NextStep::CountBeforeMoving
        | NextStep::MoveWhileOff
        | NextStep::AnotherCushion
        | NextStep::Call => Facts::new(),
    }
}

fn mistake(mistake: &Mistake) -> Facts {
    match mistake {
        Mistake::Forward(by) => some([("forward_mm", mm(*by))]),
        Mistake::Short { number, .. } => some([("compartment", json!(number))]),
        Mistake::None | Mistake::Swapped | Mistake::TurnedRound | Mistake::Leaks | Mistake::Sag => {
            Facts::new()
        }
    }
}

fn why_re_check(why: &WhyReCheck) -> Facts {
    match why {
        WhyReCheck::AfterFitting(on) | WhyReCheck::AfterLastLook(on) | WhyReCheck::Review(on) => {
            some([("on", json!(on.to_string()))])
        }
        WhyReCheck::Weight { then, now, plan } => {
            some([("then_kg", kg(*then)), ("now_kg", kg(*now)), ("on", json!(plan.to_string()))])
        }
        WhyReCheck::Losing { number, cells, planned } => some([
            ("compartment", json!(number)),
            ("cells", json!(cells)),
            ("planned_cells", json!(planned)),
        ]),
        WhyReCheck::Clearance { side: at, felt } => {
            some([("side", side(*at)), ("felt_mm", mm(*felt))])
        }
    }
}

fn since_recorded(since: &SinceRecorded) -> Facts {
    match since {
        SinceRecorded::LayoutEdited { .. } | SinceRecorded::CellEdited { .. } => Facts::new(),
        SinceRecorded::OtherCounts { recorded, counts } => {
            let counts = other_counts(counts);
            some([("recorded_on", json!(recorded.to_string())), ("counts", counts)])
        }
        SinceRecorded::OtherWeight { then, now, counts } => some([
            ("then_kg", json!(rounded(then.to_kg()))),
            ("now_kg", json!(rounded(now.to_kg()))),
            ("counts", counts.as_deref().map_or(Value::Null, other_counts)),
        ]),
    }
}

fn other_counts(counts: &[OtherCount]) -> Value {
    let one = |own: &OtherCount| {
        json!({
            "id": own.id.as_str(), "number": own.number,
            "fresh": own.fresh, "recorded": own.recorded,
        })
    };
    counts.iter().map(one).collect()
}
