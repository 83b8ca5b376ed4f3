//! Reads `[posture]`: how the pelvis and the legs are held.

use case::question::{Group, Question};
use case::text::{KeyFinding, LengthUnit, WishFinding};
use case::{
    Flexibility, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity, PelvicRotation, PelvicTilt,
    Posture, SittingBalance, Tilt, Windswept,
};
use cushion::{Length, Side};

use crate::client::{more_than_there_is, sides};
use crate::cursor::Table;

/// The words for a side.
pub(crate) const SIDES: [(Side, &str); 2] = [(Side::Left, "left"), (Side::Right, "right")];

pub(crate) fn posture(table: &Table<'_>, unit: LengthUnit) -> Posture {
    let sub = |group| table.sub(group);
    let degrees = |question| sides(table, question, |value| value.number_in_range());
    let posture = Posture {
        obliquity: sub(Group::Obliquity).and_then(|own| obliquity(&own, unit)),
        tilt: sub(Group::Tilt).and_then(|own| tilt(&own)),
        rotation: sub(Group::Rotation).and_then(|own| rotation(&own)),
        windswept: sub(Group::Windswept).and_then(|own| windswept(&own)),
        truly_shorter: sub(Group::TrulyShorter).and_then(|own| {
            shorter(&own, [Question::TrulyShorterSide, Question::TrulyShorterBy], unit)
        }),
        apparently_shorter: sub(Group::ApparentlyShorter).and_then(|own| {
            shorter(&own, [Question::ApparentlyShorterSide, Question::ApparentlyShorterBy], unit)
        }),
        hip_flexion: degrees(Question::HipFlexion),
        popliteal_angle: degrees(Question::PoplitealAngle),
        limb_loss: table.entries(Group::LimbLoss, limb_loss).unwrap_or_default(),
        tone: table.optional(Question::Tone).and_then(|value| value.sentence()),
        balance: choice(table, Question::Balance, false, &SittingBalance::WORDS),
    };
    table.finish();
    posture
}

/// One of some words, which must be there or may.
fn choice<T: Copy>(
    table: &Table<'_>,
    question: Question,
    required: bool,
    words: &[(T, &'static str)],
) -> Option<T> {
    let value = if required { table.required(question) } else { table.optional(question) };
    value?.choice(words)
}

fn side(table: &Table<'_>, question: Question) -> Option<Side> {
    choice(table, question, true, &SIDES)
}

fn fixed(table: &Table<'_>, question: Question) -> Option<bool> {
    choice(table, question, true, &[(true, "fixed"), (false, "flexible")])
}

fn obliquity(table: &Table<'_>, unit: LengthUnit) -> Option<PelvicObliquity> {
    let lower = side(table, Question::ObliquityLower);
    let by = table.required(Question::ObliquityBy).and_then(|value| {
        let by = value.length(unit)?;
        let usual = Question::ObliquityBy.row().usual;
        // A pelvis that is level is written so, and asks nothing.
        if by > Length::ZERO && usual.is_some_and(|usual| !usual.has(by.to_mm())) {
            let number = by.to_mm() / unit.in_mm();
            value.ask(WishFinding::SmallObliquity { number, unit });
        }
        Some(by)
    });
    let at = choice(table, Question::ObliquityAt, true, &MeasuredAt::WORDS);
    let words = [(0, "fixed"), (1, "flexible"), (2, "partly")];
    let which = choice(table, Question::ObliquityIs, true, &words);
    let reducible = match which {
        Some(2) if !table.has(Question::ObliquityReducible.row().key) => {
            let (given, missing) = (Question::ObliquityIs, Question::ObliquityReducible);
            table.remarks.error(table.place(given), KeyFinding::Without { given, missing });
            None
        }
        _ => table.optional(Question::ObliquityReducible).and_then(|value| value.length(unit)),
    };
    table.finish();
    let (by, flexibility) = (
        by?,
        match which? {
            0 => Flexibility::Fixed,
            1 => Flexibility::Flexible,
            _ => Flexibility::Partly { reducible: reducible? },
        },
    );
    if matches!(flexibility, Flexibility::Partly { reducible } if reducible > by) {
        more_than_there_is(table);
        return None;
    }
    Some(PelvicObliquity { lower: lower?, by, at: at?, flexibility })
}

fn tilt(table: &Table<'_>) -> Option<PelvicTilt> {
    let direction = choice(table, Question::TiltDirection, true, &Tilt::WORDS);
    let degrees = table.optional(Question::TiltDegrees).and_then(|value| value.number_in_range());
    let fixed = fixed(table, Question::TiltIs);
    table.finish();
    Some(PelvicTilt { direction: direction?, degrees, fixed: fixed? })
}

fn rotation(table: &Table<'_>) -> Option<PelvicRotation> {
    let forward = side(table, Question::RotationForward);
    let degrees = table.required(Question::RotationDegrees);
    let degrees = degrees.and_then(|value| value.number_in_range());
    let fixed = fixed(table, Question::RotationIs);
    table.finish();
    Some(PelvicRotation { forward: forward?, degrees: degrees?, fixed: fixed? })
}

fn windswept(table: &Table<'_>) -> Option<Windswept> {
    let to = side(table, Question::WindsweptTo);
    let degrees = table.required(Question::WindsweptDegrees);
    let degrees = degrees.and_then(|value| value.number_in_range());
    table.finish();
    Some(Windswept { to: to?, degrees: degrees? })
}

fn shorter(
    table: &Table<'_>,
    [which, by]: [Question; 2],
    unit: LengthUnit,
) -> Option<(Side, Length)> {
    let which = side(table, which);
    let by = table.required(by).and_then(|value| value.length(unit));
    table.finish();
    Some((which?, by?))
}

fn limb_loss(table: &Table<'_>) -> Option<LimbLoss> {
    let side = side(table, Question::LimbLossSide);
    let level = choice(table, Question::LimbLossLevel, true, &LossLevel::WORDS);
    table.finish();
    Some(LimbLoss { side: side?, level: level? })
}
