//! Every key of a client's file changes an answer that the table of questions names, and what is
//! said to change none does not.
//!
//! The record and a fill that goes on are left out: the program writes them, and their tests are
//! where they are read.

use std::sync::OnceLock;

use case::question::{Answer, Group, Kind, Question, Use};
use case::{Client, CushionIdentity, Date, Entry, RecordedPlan};
use cushion::Length;
use files::{BuiltIn, read_client, starter};
use fitting::{AdjustInput, PlanInput, PreparedCushion, Spacings};
use mechanics::Stop;
use sheets::{ClientPapers, Paper, SetupExtras};

const DAY: Date = Date::constant(2026, 3, 2);

/// The cushion of the example, on a mesh so coarse that its numbers are only good to be compared.
fn cushion() -> &'static PreparedCushion {
    static CUSHION: OnceLock<PreparedCushion> = OnceLock::new();
    CUSHION.get_or_init(|| {
        let pattern = testkit::pattern("row-six", "440x400");
        let spacings = Spacings::all(Length::from_mm(24.0));
        PreparedCushion::new(&pattern, &BuiltIn::cell(), spacings).unwrap()
    })
}

fn stock() -> Vec<u32> {
    cushion().stock().compartments.iter().map(|own| own.cells.stock).collect()
}

fn recorded() -> RecordedPlan {
    testkit::recorded(cushion().pattern(), &stock())
}

/// What the program answers of a client, as a text to be compared.
fn told(client: &Client, answer: Answer) -> String {
    let (cushion, now) = (cushion(), stock());
    let input = PlanInput {
        client,
        passed: None,
        cushion,
        on: DAY,
        stop: Stop::never(),
        progress: fitting::Progress::none(),
    };
    let weight = client.latest_weighing().unwrap().weight;
    match answer {
        Answer::Reading => format!("{client:?}"),
        Answer::Pattern => format!("{:?}", client.cushion),
        Answer::Sizing => {
            let sizes = testkit::layout("row-six").sizes;
            let measures = fitting::sized_by(client);
            let sized = fitting::sizing(&measures, Some(weight), &client.chair, &sizes);
            let loaded = Length::from_mm(60.0);
            let propulsion = client.function.propulsion;
            let feet = fitting::height_effects(&client.measures, &client.chair, propulsion, loaded);
            format!("{sized:?} {feet:?}")
        }
        Answer::Cautions => match fitting::with_changes(&input) {
            Ok(counts) => format!("{:?}", fitting::cautions(&input, &counts)),
            Err(refusals) => format!("{refusals:?}"),
        },
        Answer::Prediction => {
            let predicted = cushion.predict(client, weight, &now, Stop::never());
            format!("{:?}", predicted.map(|(prediction, _)| prediction))
        }
        Answer::Plan => match fitting::plan(&input, &now) {
            // A client or the mirror image is planned for, by rule: sums round differently, by 1e-14.
            Ok(plan) => format!("{:?} {:.9?} {:.9?}", plan.counts, plan.goals, plan.not_safe),
            Err(refusals) => format!("{refusals:?}"),
        },
        Answer::Mistakes => {
            let checks = [case::Check::read("under", "left=12mm").unwrap()];
            let identity = CushionIdentity {
                layout: "row-six".to_owned(),
                layout_digest: recorded().layout_digest,
                cell_digest: recorded().cell_digest,
                size: cushion.pattern().size(),
                compartments: Vec::new(),
            };
            let input = AdjustInput {
                client,
                cushion,
                on: DAY,
                now: &now,
                checks: &checks,
                identity: &identity,
                stop: Stop::never(),
            };
            format!("{:?}", fitting::mistakes(&input))
        }
        Answer::ReCheck => format!("{:?}", fitting::re_check(client, DAY)),
        Answer::Papers => {
            papers(client, &[sheets::setup_card, sheets::fill_order, sheets::take_home])
        }
    }
}

type Compose = fn(&ClientPapers<'_>, Paper) -> Result<sheets::Document, sheets::DocumentError>;

fn papers(client: &Client, documents: &[Compose]) -> String {
    let cell = BuiltIn::cell();
    // As for whoever cares for the client: the others are in the language that was asked for.
    let language = client.language.and_then(words::by_tag).unwrap_or(words::ENGLISH);
    let papers = ClientPapers {
        language,
        handed_over_in: None,
        client,
        serial: client.serial(),
        plan: &recorded(),
        pattern: cushion().pattern(),
        cell: &cell,
        cautions: &[],
        extras: &SetupExtras::default(),
        large_print: false,
        code: None,
        mark: &case::PlanMark { number: 1, word: "K7QF".to_owned() },
        beside: case::Beside::default(),
        date: DAY,
        program: "seatwright",
    };
    let said = documents.iter().map(|own| format!("{:?}", own(&papers, Paper::A4).unwrap()));
    said.collect()
}

const OBLIQUE: &[(&str, &str)] = &[
    ("posture.obliquity.lower", "left"),
    ("posture.obliquity.by", "14"),
    ("posture.obliquity.at", "seat bones"),
    ("posture.obliquity.is", "partly"),
    ("posture.obliquity.reducible", "5"),
    ("goal.1.want", "accommodate obliquity"),
];
const FIXED: &[(&str, &str)] = &[
    ("posture.obliquity.lower", "left"),
    ("posture.obliquity.by", "14"),
    ("posture.obliquity.at", "seat bones"),
    ("posture.obliquity.is", "fixed"),
];
const SHELF: &[(&str, &str)] = &[("goal.1.want", "pre-ischial shelf"), ("goal.1.height_mm", "10")];
const TILTED: &[(&str, &str)] = &[
    ("posture.tilt.direction", "posterior"),
    ("posture.tilt.is", "fixed"),
    ("goal.1.want", "pre-ischial shelf"),
    ("goal.1.height_mm", "10"),
];
const INJURED: &[(&str, &str)] = &[
    ("skin.injury.1.site", "coccyx"),
    ("skin.injury.1.category", "2"),
    ("skin.injury.1.is", "open"),
    ("skin.injury.1.seen_on", "2026-01-15"),
];
const NUMB: &[(&str, &str)] = &[
    ("skin.sensation", "absent"),
    ("goal.1.want", "off-load"),
    ("goal.1.site", "left-seat-bone"),
    ("goal.1.percent", "10"),
];
const LOST: &[(&str, &str)] = &[
    ("posture.limb_loss.1.side", "left"),
    ("posture.limb_loss.1.level", "above knee"),
    ("measures.thigh_depth.left", "300"),
];
const RELIEVED: &[(&str, &str)] =
    &[("goal.1.want", "off-load"), ("goal.1.site", "left-seat-bone"), ("goal.1.percent", "10")];
const LOWERED: &[(&str, &str)] =
    &[("goal.1.want", "lower front"), ("goal.1.side", "right"), ("goal.1.by_mm", "8")];
const CHANGED: &[(&str, &str)] = &[
    ("change.1.compartment", "pelvis-left"),
    ("change.1.cells", "+6"),
    ("change.1.reason", "lower there"),
];
const RAISED: &[(&str, &str)] = &[
    ("change.1.compartment", "pelvis-left"),
    ("change.1.crown_mm", "4"),
    ("change.1.reason", "lower there"),
];
const CALLED: &[(&str, &str)] =
    &[("call.1.who", "Clinic"), ("call.1.phone", "01632 960123"), ("call.1.hours", "weekdays")];
const FEET: &[(&str, &str)] = &[("chair.footrest_height", "340")];
const SLUNG: &[(&str, &str)] = &[("chair.base", "sling"), ("chair.sling_sag", "20")];
const TURNED: &[(&str, &str)] = &[
    ("posture.rotation.forward", "left"),
    ("posture.rotation.degrees", "4"),
    ("posture.rotation.is", "fixed"),
];
const TRULY_SHORTER: &[(&str, &str)] =
    &[("posture.truly_shorter.side", "left"), ("posture.truly_shorter.by", "8")];
const SEEMINGLY_SHORTER: &[(&str, &str)] =
    &[("posture.apparently_shorter.side", "left"), ("posture.apparently_shorter.by", "8")];
const DRAWN: &[(&str, &str)] = &[("cushion.layout", "plugin:rings")];

/// What else a file must say for a question to make sense.
fn context(question: Question) -> &'static [(&'static str, &'static str)] {
    match (question.row().group, question) {
        (_, Question::ObliquityIs) => FIXED,
        (Group::Obliquity, _) => OBLIQUE,
        (Group::Tilt, _) => TILTED,
        (_, Question::SensationSide) => NUMB,
        (Group::Injury, _) => INJURED,
        (Group::LimbLoss, _) => LOST,
        (_, Question::HipFlexion | Question::GoalHeight) => SHELF,
        (_, Question::GoalSide | Question::GoalBy) => LOWERED,
        (_, Question::GoalWant) => &[("goal.1.want", "near stock")],
        (Group::Goal, _) => RELIEVED,
        (_, Question::ChangeCrown) => RAISED,
        (_, Question::Language) => &[("language", "es")],
        (Group::Change, _) | (_, Question::SpareCells) => CHANGED,
        (Group::Call, _) => CALLED,
        (_, Question::LowerLegLength) => FEET,
        (_, Question::SlingSag) => SLUNG,
        (_, Question::LayoutParameters) => DRAWN,
        (Group::SitAtMost, _) => {
            &[("carer.sit_at_most.minutes", "60"), ("carer.sit_at_most.times", "3")]
        }
        (Group::Rotation, _) => TURNED,
        (Group::TrulyShorter, _) => TRULY_SHORTER,
        (Group::ApparentlyShorter, _) => SEEMINGLY_SHORTER,
        (Group::Windswept, _) => {
            &[("posture.windswept.to", "left"), ("posture.windswept.degrees", "4")]
        }
        _ => &[],
    }
}

/// Another answer than the example or the one of the context.
fn another(question: Question) -> String {
    let row = question.row();
    let example = row.example.trim_matches('"');
    let said = context(question).iter().find(|(key, _)| key.ends_with(row.key));
    match question {
        Question::GoalWant => return "equal firmness".to_owned(),
        Question::ChangeOf => return "thigh-left".to_owned(),
        Question::WeighedOn => return "2025-06-01".to_owned(),
        Question::SpareCells => return "0".to_owned(),
        Question::LayoutOfCushion | Question::CellOfCushion => return "mine.toml".to_owned(),
        Question::LayoutParameters => return "{ pitch = 90 }".to_owned(),
        Question::SizeOfCushion => return "400x400".to_owned(),
        Question::HipFlexion => return "80".to_owned(),
        // Only there is no body left to plan for.
        Question::LimbLossLevel => return "hip".to_owned(),
        Question::InsideWidth | Question::InsideDepth => return "390".to_owned(),
        Question::SealedM | Question::HomeM => return "2500".to_owned(),
        Question::SitMinutes => return "45".to_owned(),
        Question::SitTimes => return "5".to_owned(),
        Question::TrunkHeight => return "200".to_owned(),
        // Not answered in the example; the first of their words is what is usual.
        Question::Sensation | Question::WeightShift | Question::Propulsion => {
            return example.to_owned();
        }
        _ => {}
    }
    match row.kind {
        Kind::Choice(words) => {
            let now = said.map_or(example, |(_, value)| value);
            words.iter().find(|word| **word != now).unwrap().to_string()
        }
        Kind::Whole { .. } => "3".to_owned(),
        Kind::Length(_) | Kind::Number(..) => {
            let now: f64 = said.map_or(example, |(_, value)| value).parse().unwrap();
            ((now * 9.0).round() / 10.0).to_string()
        }
        Kind::YesNo => "true".to_owned(),
        Kind::Date => "2026-02-03".to_owned(),
        Kind::Phone => "01632 960199".to_owned(),
        Kind::Code => "X-002".to_owned(),
        _ => "another one".to_owned(),
    }
}

/// The path by which `set` knows a question.
fn path(question: Question) -> String {
    let row = question.row();
    let group = match (row.group, row.group.path()) {
        (Group::LimbLoss | Group::Injury | Group::Goal | Group::Change | Group::Call, path) => {
            format!("{path}.1.")
        }
        (_, "") => String::new(),
        (_, path) => format!("{path}."),
    };
    format!("{group}{}{}", row.key, if row.each_side { ".left" } else { "" })
}

#[track_caller]
fn with(text: &str, key: &str, value: &str) -> String {
    let set = files::set(text, key, value);
    match set {
        Ok(edited) => edited.text,
        Err(error) => panic!("{key} = {value}: {}", words::ENGLISH.about_edit(&error).message),
    }
}

/// A fitted client, so that there is a day of a re-check.
fn base(question: Question) -> String {
    let mut text = starter::example(words::ENGLISH);
    if question == Question::WeightLb {
        text = text.replace("kg = 60 ", "lb = 132 ");
    }
    let text = files::append_entry(&text, &Entry::Plan(recorded())).unwrap()
        + "\n[[record]]\nwhat = \"fitting check\"\non = 2026-03-02\nby = \"OT\"\npassed = true\n";
    context(question).iter().fold(text, |text, (key, value)| with(&text, key, value))
}

fn client(text: &str) -> Client {
    let read = read_client(text);
    read.value.unwrap_or_else(|| panic!("{:#?}", read.remarks))
}

/// The questions of a client's file but for those of what is done, and for the three that no other
/// answer is right for.
fn questions() -> impl Iterator<Item = (Question, Use)> {
    let all = Question::ALL.iter().copied().filter(move |own| {
        let row = own.row();
        row.group.root() == Group::Client
            && !row.group.is_of_work()
            && ![Question::Format, Question::FileKind, Question::Units].contains(own)
            // It is another file that changes the answers: see the tests of other cushions.
            && *own != Question::FirstFile
    });
    all.map(|own| (own, own.row().changes))
}

#[test]
fn each_key_changes_an_answer_that_its_row_names() {
    let mut idle = Vec::new();
    for (question, changes) in questions() {
        let answers = match changes {
            Use::Changes(answers) => answers,
            Use::OnCard(_) => &[Answer::Papers],
            Use::Nothing(_) => continue,
        };
        let before = base(question);
        let after = with(&before, &path(question), &another(question));
        let (before, after) = (client(&before), client(&after));
        if !answers.iter().any(|answer| told(&before, *answer) != told(&after, *answer)) {
            idle.push(question);
        }
    }
    // Where the model's outer walls stand upright anyway, nothing can hold them.
    let outer_give = mechanics::Parameters::default().outer_give;
    let expected: &[Question] = if outer_give > 0.0 { &[] } else { &[Question::CushionSides] };
    assert_eq!(idle, expected);
}

#[test]
fn keys_that_are_said_to_change_nothing_do_not() {
    let mut after = base(Question::GoalPercent);
    // A tilt has other keys, of which some are used.
    for (key, value) in [("posture.tilt.direction", "posterior"), ("posture.tilt.is", "flexible")] {
        after = with(&after, key, value);
    }
    let mut seen = 0;
    // Injuries are used too, but for how deep they are, and a lost leg by its side.
    for (key, value) in INJURED.iter().chain(LOST) {
        after = with(&after, key, value);
    }
    // First those that no paper shows, then those that the setup card repeats.
    for on_card in [false, true] {
        let before = client(&after);
        for (question, changes) in questions() {
            let wanted = match changes {
                Use::Nothing(_) => !on_card,
                Use::OnCard(_) => on_card,
                Use::Changes(_) => false,
            };
            if wanted {
                after = with(&after, &path(question), &any(question));
                seen += 1;
            }
        }
        let after = client(&after);
        assert_ne!(told(&before, Answer::Reading), told(&after, Answer::Reading));
        for answer in [
            Answer::Sizing,
            Answer::Cautions,
            Answer::Prediction,
            Answer::Plan,
            Answer::Mistakes,
            Answer::ReCheck,
        ] {
            assert_eq!(told(&before, answer), told(&after, answer), "{answer:?}");
        }
        let others: [Compose; 2] = [sheets::fill_order, sheets::take_home];
        assert_eq!(papers(&before, &others), papers(&after, &others));
        let card = |client| papers(client, &[sheets::setup_card]);
        assert_eq!(card(&before) != card(&after), on_card);
    }
    assert!(seen >= 18, "{seen}");
}

/// An answer that can be given.
fn any(question: Question) -> String {
    let row = question.row();
    match row.kind {
        Kind::Choice(_) => another(question),
        _ => row.example.trim_matches('"').to_owned(),
    }
}
