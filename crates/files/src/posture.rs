//! Reads `[posture]`: how the pelvis and the legs are held.

use case::{
    Flexibility, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity, PelvicRotation, PelvicTilt,
    Posture, Sides, SittingBalance, Tilt, Windswept,
};
use cushion::{Length, Side};

use crate::client::{Unit, entries, length};
use crate::cursor::{Table, Value};
use crate::limits::{DEGREES, LEG_DIFFERENCE, OBLIQUITY};

/// The words for a side.
pub(crate) const SIDES: [(&str, Side); 2] = [("left", Side::Left), ("right", Side::Right)];

pub(crate) fn posture(table: &Table<'_>, unit: Unit) -> Posture {
    let named = |key| table.optional(key).and_then(|value| value.table());
    let posture = Posture {
        obliquity: named("obliquity").and_then(|own| obliquity(&own, unit)),
        tilt: named("tilt").and_then(|own| tilt(&own)),
        rotation: named("rotation").and_then(|own| rotation(&own)),
        windswept: named("windswept").and_then(|own| windswept(&own)),
        truly_shorter: named("truly_shorter").and_then(|own| shorter(&own, unit)),
        apparently_shorter: named("apparently_shorter").and_then(|own| shorter(&own, unit)),
        hip_flexion: degrees_of_both(named("hip_flexion")),
        popliteal_angle: degrees_of_both(named("popliteal_angle")),
        limb_loss: entries(table, "limb_loss", limb_loss).unwrap_or_default(),
        tone: table.optional("tone").and_then(|value| value.sentence()),
        balance: table.optional("balance").and_then(|value| {
            value.choice(
                "sitting balance",
                &[
                    ("hands free", SittingBalance::HandsFree),
                    ("hands needed", SittingBalance::HandsNeeded),
                    ("propped", SittingBalance::Propped),
                ],
            )
        }),
    };
    table.finish();
    posture
}

fn side(value: &Value<'_>) -> Option<Side> {
    value.choice("side", &SIDES)
}

fn degrees(value: &Value<'_>) -> Option<f64> {
    value.number_in("angle", DEGREES, "degrees")
}

fn obliquity(table: &Table<'_>, unit: Unit) -> Option<PelvicObliquity> {
    let lower = table.required("lower").and_then(|value| side(&value));
    let by = table.required("by").and_then(|value| length(&value, unit, &OBLIQUITY));
    let at = table.required("at").and_then(|value| {
        let words = [("seat bones", MeasuredAt::SeatBones), ("asis", MeasuredAt::Asis)];
        value.choice("place to measure an obliquity at", &words)
    });
    let reducible =
        table.optional("reducible").map(|value| (value.span(), length(&value, unit, &OBLIQUITY)));
    let flexibility = table.required("is").and_then(|value| {
        let words = [("fixed", 0), ("flexible", 1), ("partly", 2)];
        let which = value.choice("flexibility", &words)?;
        match (which, &reducible) {
            (0, None) => Some(Flexibility::Fixed),
            (1, None) => Some(Flexibility::Flexible),
            (2, Some((_, part))) => part.map(|reducible| Flexibility::Partly { reducible }),
            (2, None) => {
                let message = "it is not said how much of the obliquity can be taken away";
                value.remarks.error(value.span(), message, "add `reducible = ...`");
                None
            }
            (_, _) => {
                let message = "only what is \"partly\" flexible has a reducible part";
                value.remarks.error(
                    value.span(),
                    message,
                    "take `reducible` away, or write \"partly\"",
                );
                None
            }
        }
    });
    table.finish();
    let obliquity = PelvicObliquity { lower: lower?, by: by?, at: at?, flexibility: flexibility? };
    if let (Flexibility::Partly { reducible: part }, Some((span, _))) =
        (obliquity.flexibility, reducible)
        && part > obliquity.by
    {
        let message = "more can be taken away than there is";
        table.remarks.error(
            span,
            message,
            "`reducible` is a part of `by`, measured at the same place",
        );
        return None;
    }
    Some(obliquity)
}

fn tilt(table: &Table<'_>) -> Option<PelvicTilt> {
    let direction = table.required("direction").and_then(|value| {
        value.choice("tilt", &[("anterior", Tilt::Anterior), ("posterior", Tilt::Posterior)])
    });
    let degrees = table.optional("degrees").and_then(|value| degrees(&value));
    let fixed = fixed(table);
    table.finish();
    Some(PelvicTilt { direction: direction?, degrees, fixed: fixed? })
}

fn fixed(table: &Table<'_>) -> Option<bool> {
    let value = table.required("is")?;
    value.choice("flexibility", &[("fixed", true), ("flexible", false)])
}

fn rotation(table: &Table<'_>) -> Option<PelvicRotation> {
    let forward = table.required("forward").and_then(|value| side(&value));
    let degrees = table.required("degrees").and_then(|value| degrees(&value));
    let fixed = fixed(table);
    table.finish();
    Some(PelvicRotation { forward: forward?, degrees: degrees?, fixed: fixed? })
}

fn windswept(table: &Table<'_>) -> Option<Windswept> {
    let to = table.required("to").and_then(|value| side(&value));
    let degrees =
        table.required("degrees").and_then(|value| value.number_in("angle", 0.0..=60.0, "degrees"));
    table.finish();
    Some(Windswept { to: to?, degrees: degrees? })
}

fn shorter(table: &Table<'_>, unit: Unit) -> Option<(Side, Length)> {
    let which = table.required("side").and_then(|value| side(&value));
    let by = table.required("by").and_then(|value| length(&value, unit, &LEG_DIFFERENCE));
    table.finish();
    Some((which?, by?))
}

fn degrees_of_both(table: Option<Table<'_>>) -> Sides<Option<f64>> {
    let Some(table) = table else { return Sides::default() };
    let one = |key| table.optional(key).and_then(|value| degrees(&value));
    let both = Sides { left: one("left"), right: one("right") };
    table.finish();
    both
}

fn limb_loss(table: &Table<'_>) -> Option<LimbLoss> {
    let side = table.required("side").and_then(|value| side(&value));
    let level = table.required("level").and_then(|value| {
        let words = [
            ("below knee", LossLevel::BelowKnee),
            ("above knee", LossLevel::AboveKnee),
            ("hip", LossLevel::Hip),
        ];
        value.choice("level of loss", &words)
    });
    table.finish();
    Some(LimbLoss { side: side?, level: level? })
}
