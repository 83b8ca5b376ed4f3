//! Checks: what hands and readings find on the filled cushion, answered in words.

mod error;

use std::fmt;

use cushion::{Length, Pressure, Side};

pub use self::error::CheckError;
use crate::{MeasuredAt, SiteName};

/// Fingers between seat bone and cushion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TopAnswer {
    /// Fingertips can be moved up and down.
    Safe,
    /// They cannot be moved, but slide out.
    Tight,
    /// They are held. Bottomed or overfilled: only an under check tells which.
    Pinched,
}

/// A hand under the cushion, below the lowest bone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UnderAnswer {
    /// So much cushion was felt.
    Felt(Length),
    /// The bone was felt.
    BoneFelt,
    /// The hand did not find the bone: a check that is still to be made, never a safe one.
    NotFound,
}

/// The skin at a site, when the client comes off the cushion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SkinAnswer {
    /// As before the sitting.
    Clear,
    /// A mark that is gone after 30 minutes.
    Fades,
    /// A mark that is still there after 30 minutes.
    Stays,
    /// Broken skin.
    Open,
    /// A known injury that looks worse.
    Worse,
}

impl SkinAnswer {
    /// All answers, with their words.
    pub const ALL: [(Self, &str); 5] = [
        (Self::Clear, "clear"),
        (Self::Fades, "fades"),
        (Self::Stays, "stays"),
        (Self::Open, "open"),
        (Self::Worse, "worse"),
    ];

    /// The word for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Clear => "clear",
            Self::Fades => "fades",
            Self::Stays => "stays",
            Self::Open => "open",
            Self::Worse => "worse",
        }
    }

    /// Whether the client comes off the cushion for it.
    #[must_use]
    pub fn is_alarm(self) -> bool {
        matches!(self, Self::Stays | Self::Open | Self::Worse)
    }
}

/// Two fingers pressed into a compartment's reachable edge, against its mirror partner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PressAnswer {
    /// Softer than its partner.
    Slack,
    /// Alike.
    Like,
    /// Harder.
    Tight,
}

impl PressAnswer {
    /// All answers, with their words.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::Slack, "slack"), (Self::Like, "like"), (Self::Tight, "tight")];
}

/// One thing that was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Check {
    /// A top check.
    Top {
        /// Under which seat bone.
        side: Side,
        /// The answer.
        answer: TopAnswer,
    },
    /// An under check.
    Under {
        /// Under which seat bone.
        side: Side,
        /// The answer.
        answer: UnderAnswer,
    },
    /// A press check.
    Press {
        /// The number of the compartment.
        number: u8,
        /// The answer.
        answer: PressAnswer,
    },
    /// Which side of the pelvis is lower.
    Lower {
        /// The client's side; none where it is level.
        lower: Option<Side>,
        /// By how much.
        by: Length,
        /// Between which points.
        at: MeasuredAt,
    },
    /// A pressure reading.
    Reading {
        /// Where.
        site: SiteName,
        /// The mean over a small area there.
        pressure: Pressure,
    },
    /// The skin, looked at when the client came off.
    Skin {
        /// Where.
        site: SiteName,
        /// The answer.
        answer: SkinAnswer,
    },
}

/// The least under a seat bone with which anybody may sit: the limit of every plan.
pub const LEAST_UNDER: Length = Length::from_mm(25.0);

/// The words by which checks are named.
pub const CHECK_KINDS: [&str; 6] = ["top", "under", "press", "lower", "reading", "skin"];

impl Check {
    /// Whether nobody may sit on until what it found is mended, or found otherwise: an alarm, and less
    /// than 25 mm under a seat bone, the limit of every plan.
    #[must_use]
    pub fn ends_sitting(&self) -> bool {
        let is_low = matches!(self, Self::Under { answer: UnderAnswer::Felt(felt), .. }
            if *felt < LEAST_UNDER);
        is_low || self.is_alarm()
    }

    /// Whether it says that something is not right yet: fingers that are held, a bone that is felt,
    /// not found or near (below 25 mm, the limit of every plan), a half that is softer or harder, a
    /// mark on the skin. A lean and a pressure are judged by whoever knows what was wanted.
    #[must_use]
    pub fn speaks_against(&self) -> bool {
        match self {
            Self::Top { answer, .. } => *answer != TopAnswer::Safe,
            Self::Press { answer, .. } => *answer != PressAnswer::Like,
            Self::Under { answer: UnderAnswer::NotFound, .. } => true,
            Self::Under { .. } | Self::Skin { .. } => self.ends_sitting(),
            Self::Lower { .. } | Self::Reading { .. } => false,
        }
    }

    /// Reads an answer to a kind of check, as `left=tight`.
    ///
    /// # Errors
    ///
    /// Returns what is wrong.
    pub fn read(kind: &str, text: &str) -> Result<Self, CheckError> {
        let known = CHECK_KINDS.into_iter().find(|own| *own == kind);
        let kind = known.ok_or_else(|| CheckError::NoSuchCheck(kind.to_owned()))?;
        if kind == "lower" && text == "level" {
            return Ok(Self::Lower { lower: None, by: Length::ZERO, at: MeasuredAt::SeatBones });
        }
        let no_answer = |written: &str| CheckError::NotAnAnswer { kind, written: written.into() };
        let (key, answer) = text.split_once('=').ok_or_else(|| no_answer(text))?;
        let no_answer = || no_answer(answer);
        match kind {
            "top" => Ok(Self::Top { side: side(key)?, answer: top(answer).ok_or_else(no_answer)? }),
            "under" => Ok(Self::Under { side: side(key)?, answer: under(answer)? }),
            "press" => {
                let number = key.parse().ok().filter(|number| (1..=99).contains(number));
                let number = number.ok_or_else(|| CheckError::NotANumber(key.to_owned()))?;
                Ok(Self::Press { number, answer: press(answer).ok_or_else(no_answer)? })
            }
            "lower" => {
                let (answer, at) = match answer.split_once('@') {
                    None => (answer, MeasuredAt::SeatBones),
                    Some((answer, at)) => (answer, landmark(at)?),
                };
                Ok(Self::Lower { lower: Some(side(key)?), by: length(answer, 80.0)?, at })
            }
            "reading" => Ok(Self::Reading { site: site(key)?, pressure: pressure(answer)? }),
            _ => Ok(Self::Skin { site: site(key)?, answer: skin(answer).ok_or_else(no_answer)? }),
        }
    }

    /// Reads a whole check, as `top left=tight`.
    ///
    /// # Errors
    ///
    /// As [`Self::read`].
    pub fn read_whole(text: &str) -> Result<Self, CheckError> {
        let parts = text.trim().split_once(' ');
        let (kind, answer) = parts.ok_or_else(|| CheckError::NotACheck(text.to_owned()))?;
        Self::read(kind, answer.trim())
    }
}

fn site(id: &str) -> Result<SiteName, CheckError> {
    SiteName::from_id(id).ok_or_else(|| CheckError::NotASite(id.to_owned()))
}

fn skin(word: &str) -> Option<SkinAnswer> {
    SkinAnswer::ALL.into_iter().find(|(_, own)| *own == word).map(|(answer, _)| answer)
}

/// Where an obliquity was found: with the hyphen of words on a command line.
fn landmark(word: &str) -> Result<MeasuredAt, CheckError> {
    match word {
        "asis" => Ok(MeasuredAt::Asis),
        "seat-bones" => Ok(MeasuredAt::SeatBones),
        _ => Err(CheckError::NotALandmark(word.to_owned())),
    }
}

fn side(word: &str) -> Result<Side, CheckError> {
    let known = [Side::Left, Side::Right].into_iter().find(|side| side.words() == word);
    known.ok_or_else(|| CheckError::NotASide(word.to_owned()))
}

fn top(answer: &str) -> Option<TopAnswer> {
    match answer {
        "safe" => Some(TopAnswer::Safe),
        "tight" => Some(TopAnswer::Tight),
        "pinched" => Some(TopAnswer::Pinched),
        _ => None,
    }
}

fn under(answer: &str) -> Result<UnderAnswer, CheckError> {
    match answer {
        "bone-felt" => Ok(UnderAnswer::BoneFelt),
        "not-found" => Ok(UnderAnswer::NotFound),
        _ => length(answer, 100.0).map(UnderAnswer::Felt),
    }
}

fn press(answer: &str) -> Option<PressAnswer> {
    match answer {
        "slack" => Some(PressAnswer::Slack),
        "like" => Some(PressAnswer::Like),
        "tight" => Some(PressAnswer::Tight),
        _ => None,
    }
}

/// A length up to `most` mm, in mm or inches.
fn length(text: &str, most: f64) -> Result<Length, CheckError> {
    let parts = [("mm", 1.0), ("in", 25.4)];
    let found = parts.iter().find_map(|(unit, in_mm)| Some((text.strip_suffix(unit)?, in_mm)));
    let (number, in_mm) = found.ok_or_else(|| CheckError::LengthWithoutUnit(text.to_owned()))?;
    let mm = number.trim().parse::<f64>().ok().map(|number| number * in_mm);
    let range = || CheckError::LengthRange { written: text.to_owned(), most_mm: most };
    mm.filter(|mm| (0.0..=most).contains(mm)).map(Length::from_mm).ok_or_else(range)
}

/// A pressure of 1 to 400 mmHg, in mmHg or kPa.
fn pressure(text: &str) -> Result<Pressure, CheckError> {
    const LEAST: f64 = 1.0;
    const MOST: f64 = 400.0;
    let parts = [("mmHg", Pressure::from_mmhg as fn(f64) -> Pressure), ("kPa", Pressure::from_kpa)];
    let found = parts.iter().find_map(|(unit, of)| Some((text.strip_suffix(unit)?, of)));
    let (number, of) = found.ok_or_else(|| CheckError::PressureWithoutUnit(text.to_owned()))?;
    let number = number.trim().parse::<f64>().ok();
    let pressure = number.and_then(|number| Pressure::checked(*of, number));
    let range = || CheckError::PressureRange {
        written: text.to_owned(),
        least_mmhg: LEAST,
        most_mmhg: MOST,
    };
    pressure.filter(|own| (LEAST..=MOST).contains(&own.to_mmhg())).ok_or_else(range)
}

impl fmt::Display for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Enough digits that what is read back is what was said.
        let number = |number: f64| (number * 1e3).round() / 1e3;
        match self {
            Self::Top { side, answer } => {
                let answer = match answer {
                    TopAnswer::Safe => "safe",
                    TopAnswer::Tight => "tight",
                    TopAnswer::Pinched => "pinched",
                };
                write!(f, "top {}={answer}", side.words())
            }
            Self::Under { side, answer: UnderAnswer::BoneFelt } => {
                write!(f, "under {}=bone-felt", side.words())
            }
            Self::Under { side, answer: UnderAnswer::NotFound } => {
                write!(f, "under {}=not-found", side.words())
            }
            Self::Under { side, answer: UnderAnswer::Felt(felt) } => {
                write!(f, "under {}={}mm", side.words(), number(felt.to_mm()))
            }
            Self::Press { number, answer } => {
                let answer = match answer {
                    PressAnswer::Slack => "slack",
                    PressAnswer::Like => "like",
                    PressAnswer::Tight => "tight",
                };
                write!(f, "press {number}={answer}")
            }
            Self::Lower { lower: None, .. } => f.write_str("lower level"),
            Self::Lower { lower: Some(side), by, at } => {
                let at = if *at == MeasuredAt::Asis { "@asis" } else { "" };
                write!(f, "lower {}={}mm{at}", side.words(), number(by.to_mm()))
            }
            Self::Reading { site, pressure } => {
                write!(f, "reading {}={}mmHg", site.id(), number(pressure.to_mmhg()))
            }
            Self::Skin { site, answer } => write!(f, "skin {}={}", site.id(), answer.words()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_is_read_back() {
        for text in [
            "top left=tight",
            "under right=bone-felt",
            "under left=25mm",
            "press 3=slack",
            "lower left=8mm",
            "lower right=25mm@asis",
            "lower level",
            "reading left-seat-bone=48mmHg",
            "under left=not-found",
            "skin coccyx=stays",
            "skin left-seat-bone=clear",
        ] {
            assert_eq!(Check::read_whole(text).expect("it is a check").to_string(), text);
        }
        let kpa = Check::read("reading", "coccyx=6.4kPa").expect("it is a check");
        assert!(
            matches!(kpa, Check::Reading { pressure, .. } if (pressure.to_kpa() - 6.4).abs() < 1e-12)
        );
    }

    #[test]
    fn bare_numbers_and_other_words_are_refused() {
        use CheckError as Wrong;
        let owned = str::to_owned;
        let answer = |kind, written: &str| Wrong::NotAnAnswer { kind, written: owned(written) };
        let length =
            |written: &str, most_mm| Wrong::LengthRange { written: owned(written), most_mm };
        for (kind, text, expected) in [
            ("under", "left=25", Wrong::LengthWithoutUnit(owned("25"))),
            ("under", "left=NaNmm", length("NaNmm", 100.0)),
            ("under", "left=250mm", length("250mm", 100.0)),
            ("top", "left=3", answer("top", "3")),
            ("top", "up=safe", Wrong::NotASide(owned("up"))),
            ("press", "left=slack", Wrong::NotANumber(owned("left"))),
            ("reading", "left-seat-bone=48", Wrong::PressureWithoutUnit(owned("48"))),
            ("reading", "elbow=48mmHg", Wrong::NotASite(owned("elbow"))),
            ("poke", "left=safe", Wrong::NoSuchCheck(owned("poke"))),
            ("lower", "8mm", answer("lower", "8mm")),
            ("skin", "left-seat-bone=red", answer("skin", "red")),
            ("skin", "left=stays", Wrong::NotASite(owned("left"))),
        ] {
            assert_eq!(Check::read(kind, text), Err(expected));
        }
        assert_eq!(Check::read_whole("left"), Err(Wrong::NotACheck(owned("left"))));
    }
}
