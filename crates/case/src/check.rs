//! Checks: what hands and readings find on the filled cushion, answered in words.

use std::fmt;

use cushion::{Length, Pressure, Side};

use crate::SiteName;

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
        /// By how much, at the seat bones.
        by: Length,
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

/// The words by which checks are named.
pub const CHECK_KINDS: [&str; 6] = ["top", "under", "press", "lower", "reading", "skin"];

impl Check {
    /// Reads an answer to a kind of check, as `left=tight`.
    ///
    /// # Errors
    ///
    /// Returns what is wrong and what to write.
    pub fn read(kind: &str, text: &str) -> Result<Self, String> {
        if kind == "lower" && text == "level" {
            return Ok(Self::Lower { lower: None, by: Length::ZERO });
        }
        let (key, answer) = text
            .split_once('=')
            .ok_or_else(|| format!("`{text}` is no answer; write {}", example(kind)))?;
        let side = || side(key).ok_or_else(|| format!("`{key}` is no side; write left or right"));
        match kind {
            "top" => Ok(Self::Top { side: side()?, answer: top(answer)? }),
            "under" => Ok(Self::Under { side: side()?, answer: under(answer)? }),
            "press" => {
                let number = key.parse().ok().filter(|number| (1..=99).contains(number));
                let number = number.ok_or_else(|| {
                    format!("`{key}` is not the number of a compartment; write {}", example(kind))
                })?;
                Ok(Self::Press { number, answer: press(answer)? })
            }
            "lower" => {
                let by = length(answer, 80.0)?;
                Ok(Self::Lower { lower: Some(side()?), by })
            }
            "reading" => Ok(Self::Reading { site: site(key)?, pressure: pressure(answer)? }),
            "skin" => Ok(Self::Skin { site: site(key)?, answer: skin(answer)? }),
            other => {
                Err(format!("no check is called `{other}`; there are {}", CHECK_KINDS.join(", ")))
            }
        }
    }

    /// Reads a whole check, as `top left=tight`.
    ///
    /// # Errors
    ///
    /// As [`Self::read`].
    pub fn read_whole(text: &str) -> Result<Self, String> {
        let (kind, answer) = text.trim().split_once(' ').ok_or_else(|| {
            format!(
                "`{text}` is no check; write {} and {}",
                CHECK_KINDS[0],
                example(CHECK_KINDS[0])
            )
        })?;
        Self::read(kind, answer.trim())
    }
}

fn example(kind: &str) -> &'static str {
    match kind {
        "top" => "left=safe, tight or pinched",
        "under" => "left=25mm, left=bone-felt or left=not-found",
        "press" => "3=slack, like or tight, with the compartment's number",
        "lower" => "left=8mm, or level",
        "skin" => "left-seat-bone=clear, fades, stays, open or worse",
        _ => "left-seat-bone=48mmHg or 6.4kPa",
    }
}

fn site(id: &str) -> Result<SiteName, String> {
    SiteName::from_id(id).ok_or_else(|| {
        let known: Vec<&str> = SiteName::ALL.iter().map(|site| site.id()).collect();
        format!("`{id}` is no site; there are {}", known.join(", "))
    })
}

fn skin(word: &str) -> Result<SkinAnswer, String> {
    let known = SkinAnswer::ALL.into_iter().find(|(_, own)| *own == word);
    known.map(|(answer, _)| answer).ok_or_else(|| {
        format!("`{word}` is no answer to a look at the skin; write {}", example("skin"))
    })
}

fn side(word: &str) -> Option<Side> {
    [Side::Left, Side::Right].into_iter().find(|side| side.words() == word)
}

fn top(answer: &str) -> Result<TopAnswer, String> {
    match answer {
        "safe" => Ok(TopAnswer::Safe),
        "tight" => Ok(TopAnswer::Tight),
        "pinched" => Ok(TopAnswer::Pinched),
        other => Err(format!("`{other}` is no answer to a top check; write {}", example("top"))),
    }
}

fn under(answer: &str) -> Result<UnderAnswer, String> {
    if answer == "bone-felt" {
        return Ok(UnderAnswer::BoneFelt);
    }
    if answer == "not-found" {
        return Ok(UnderAnswer::NotFound);
    }
    length(answer, 100.0).map(UnderAnswer::Felt)
}

fn press(answer: &str) -> Result<PressAnswer, String> {
    match answer {
        "slack" => Ok(PressAnswer::Slack),
        "like" => Ok(PressAnswer::Like),
        "tight" => Ok(PressAnswer::Tight),
        other => {
            Err(format!("`{other}` is no answer to a press check; write {}", example("press")))
        }
    }
}

/// A length up to `most` mm, in mm or inches.
fn length(text: &str, most: f64) -> Result<Length, String> {
    let parts = [("mm", 1.0), ("in", 25.4)];
    let found = parts.iter().find_map(|(unit, in_mm)| Some((text.strip_suffix(unit)?, in_mm)));
    let (number, in_mm) =
        found.ok_or_else(|| format!("`{text}` has no unit; write it as 25mm or 1in"))?;
    let mm = number.trim().parse::<f64>().ok().map(|number| number * in_mm);
    mm.filter(|mm| (0.0..=most).contains(mm))
        .map(Length::from_mm)
        .ok_or_else(|| format!("`{text}` cannot be right; it lies between 0 and {most:.0} mm"))
}

/// A pressure of 1 to 400 mmHg, in mmHg or kPa.
fn pressure(text: &str) -> Result<Pressure, String> {
    let parts = [("mmHg", Pressure::from_mmhg as fn(f64) -> Pressure), ("kPa", Pressure::from_kpa)];
    let found = parts.iter().find_map(|(unit, of)| Some((text.strip_suffix(unit)?, of)));
    let (number, of) =
        found.ok_or_else(|| format!("`{text}` has no unit; write it as 48mmHg or 6.4kPa"))?;
    let pressure = number.trim().parse::<f64>().ok().map(of);
    pressure
        .filter(|pressure| (1.0..=400.0).contains(&pressure.to_mmhg()))
        .ok_or_else(|| format!("`{text}` cannot be right; it lies between 1 and 400 mmHg"))
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
            Self::Lower { lower: Some(side), by } => {
                write!(f, "lower {}={}mm", side.words(), number(by.to_mm()))
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
    fn bare_numbers_and_other_words_are_refused_with_what_to_write() {
        for (kind, text, hint) in [
            ("under", "left=25", "no unit"),
            ("under", "left=NaNmm", "cannot be right"),
            ("under", "left=250mm", "between 0 and 100"),
            ("top", "left=3", "safe, tight or pinched"),
            ("top", "up=safe", "left or right"),
            ("press", "left=slack", "number"),
            ("reading", "left-seat-bone=48", "no unit"),
            ("reading", "elbow=48mmHg", "left-seat-bone"),
            ("poke", "left=safe", "top, under"),
            ("lower", "8mm", "left=8mm"),
            ("skin", "left-seat-bone=red", "stays, open or worse"),
            ("skin", "left=stays", "left-seat-bone"),
        ] {
            let error = Check::read(kind, text).expect_err("it is refused");
            assert!(error.contains(hint), "{error}");
        }
    }
}
