//! What checks say: how likely an answer is where the numbers are known.
//!
//! Each answer stands for a range of a number that the mechanics knows. A number inside the range
//! agrees with the answer; outside, the misfit grows with the distance, in units of how finely a
//! hand can tell. All thresholds are practice judgements without a source, to be calibrated.

use case::{Check, MeasuredAt, PressAnswer, SiteName, TopAnswer, UnderAnswer};
use cushion::{CompartmentIx, Length, Pattern, Side};
use mechanics::{ASIS_SPACING, Resting};

/// Surface pressure under a seat bone up to which fingertips can be moved, Pa.
pub(crate) const SAFE_UP_TO: f64 = 9e3;
/// Surface pressure from which fingers are held, Pa.
pub(crate) const PINCHED_FROM: f64 = 13e3;
/// How finely fingers tell pressure, Pa.
pub(crate) const FINGERS: f64 = 2.5e3;
/// Clearance below which a bone is felt, m.
pub(crate) const FELT_BELOW: f64 = 10e-3;
/// How finely a hand tells clearance, m.
pub(crate) const HAND: f64 = 3e-3;
/// Difference of fill pressure, as a share, from which two compartments do not feel alike.
pub(crate) const UNLIKE_FROM: f64 = 0.20;
/// How finely two fingers tell that.
const PRESS: f64 = 0.25;
/// How finely the lower side is told, m: by hand an obliquity is known to 5 mm either way, which is
/// taken as two standard deviations, as all ranges are.
pub(crate) const LOWER_SIDE: f64 = 2.5e-3;
/// How good a pressure reading is, as a share.
const READING: f64 = 0.20;

/// One number that checks are about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Number {
    /// Clearance under a seat bone, m.
    Clearance(Side),
    /// Surface pressure at a site, Pa.
    Surface(SiteName),
    /// Fill pressure of a compartment over that of another, less one.
    Firmer(CompartmentIx, CompartmentIx),
    /// How much higher the right seat bone is than the left, m.
    RightHigher,
}

impl Number {
    /// The number of an answer; none where the body lacks the site.
    pub(crate) fn of(self, resting: &Resting) -> Option<f64> {
        let site = |name| resting.sites.iter().find(|rest| rest.site.name == name);
        let clearance = |side| Some(site(SiteName::SeatBone(side))?.clearance.to_m());
        Some(match self {
            Self::Clearance(side) => clearance(side)?,
            Self::Surface(name) => site(name)?.pressure.to_pa(),
            Self::Firmer(pressed, other) => {
                let fill = |ix: CompartmentIx| resting.compartments[ix.index()].pressure.to_pa();
                fill(pressed) / fill(other).max(50.0) - 1.0
            }
            Self::RightHigher => clearance(Side::Right)? - clearance(Side::Left)?,
        })
    }
}

/// An answer as a range of a number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Meaning {
    pub(crate) number: Number,
    pub(crate) least: f64,
    pub(crate) most: f64,
    /// How finely it can be told.
    pub(crate) fineness: f64,
    /// Whether it is one of a few words, of which a hand may choose the one beside the right one.
    pub(crate) word: bool,
}

impl Meaning {
    /// How far a number is from the answer, in units of fineness; the sign says which way.
    pub(crate) fn misfit(&self, number: f64) -> f64 {
        ((number - self.most).max(0.0) - (self.least - number).max(0.0)) / self.fineness
    }
}

/// What a check says; nothing where fingers are held, which can mean two opposite things, and of
/// skin.
///
/// `spacing` is the measured distance between the seat bones: heights at the front of the pelvis
/// are as much greater as the points there are farther apart.
pub(crate) fn meaning(
    pattern: &Pattern,
    spacing: Option<Length>,
    check: &Check,
) -> Option<Meaning> {
    let exactly = |number, value: f64, fineness| Meaning {
        number,
        least: value,
        most: value,
        fineness,
        word: false,
    };
    Some(match *check {
        Check::Top { side, answer } => {
            let number = Number::Surface(SiteName::SeatBone(side));
            let (least, most) = match answer {
                TopAnswer::Safe => (f64::NEG_INFINITY, SAFE_UP_TO),
                TopAnswer::Tight => (SAFE_UP_TO, PINCHED_FROM),
                TopAnswer::Pinched => return None,
            };
            Meaning { number, least, most, fineness: FINGERS, word: true }
        }
        Check::Under { side, answer: UnderAnswer::Felt(felt) } => {
            exactly(Number::Clearance(side), felt.to_m(), HAND)
        }
        Check::Under { side, answer: UnderAnswer::BoneFelt } => Meaning {
            number: Number::Clearance(side),
            least: f64::NEG_INFINITY,
            most: FELT_BELOW,
            fineness: HAND,
            word: false,
        },
        // A hand that found nothing says nothing, and skin has no number.
        Check::Under { answer: UnderAnswer::NotFound, .. } | Check::Skin { .. } => return None,
        Check::Press { number, answer } => {
            let pressed = pattern.by_number(number)?;
            let number = Number::Firmer(pressed, pattern.partner(pressed)?);
            let (least, most) = match answer {
                PressAnswer::Slack => (f64::NEG_INFINITY, -UNLIKE_FROM),
                PressAnswer::Like => (-UNLIKE_FROM, UNLIKE_FROM),
                PressAnswer::Tight => (UNLIKE_FROM, f64::INFINITY),
            };
            Meaning { number, least, most, fineness: PRESS, word: true }
        }
        Check::Lower { lower, by, at } => {
            let [low, high] = at_seat_bones(by, at, spacing).map(Length::to_m);
            let (least, most) = match lower {
                Some(Side::Left) => (low, high),
                Some(Side::Right) => (-high, -low),
                None => (0.0, 0.0),
            };
            let number = Number::RightHigher;
            Meaning { number, least, most, fineness: LOWER_SIDE, word: false }
        }
        Check::Reading { site, pressure } => {
            exactly(Number::Surface(site), pressure.to_pa(), READING * pressure.to_pa())
        }
    })
}

/// Seat bones stand some 100 to 145 mm apart, and the front of the pelvis 240 mm: what is found
/// there is, at the seat bones, this share of it where their spacing was not measured.
const SHARE_OF_ASIS: [f64; 2] = [0.4, 0.6];

/// How much of a height between two landmarks that is between the seat bones, at least and at most:
/// by their measured spacing where it is known.
#[must_use]
pub fn at_seat_bones(by: Length, at: MeasuredAt, spacing: Option<Length>) -> [Length; 2] {
    match (at, spacing) {
        (MeasuredAt::SeatBones, _) => [by; 2],
        (MeasuredAt::Asis, Some(spacing)) => [by * (spacing / ASIS_SPACING); 2],
        (MeasuredAt::Asis, None) => SHARE_OF_ASIS.map(|share| by * share),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_at_the_front_of_the_pelvis_are_less_at_the_seat_bones() {
        let mm = Length::from_mm;
        let near = |found: [Length; 2], expected: [f64; 2]| {
            for (found, expected) in found.iter().zip(expected) {
                assert!((found.to_mm() - expected).abs() < 1e-9, "{found:?}");
            }
        };
        near(at_seat_bones(mm(25.0), MeasuredAt::SeatBones, None), [25.0, 25.0]);
        near(at_seat_bones(mm(25.0), MeasuredAt::Asis, None), [10.0, 15.0]);
        near(at_seat_bones(mm(24.0), MeasuredAt::Asis, Some(mm(120.0))), [12.0, 12.0]);
    }
}
