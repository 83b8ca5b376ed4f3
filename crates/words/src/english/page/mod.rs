//! English: the page beside the chair.

mod texts;

use case::{
    Check, Date, Lapse, MeasuredAt, PressAnswer, Review, SiteChange, SkinAnswer, Standing, State,
    TopAnswer, UnderAnswer,
};
use cushion::{Length, Mass, Pressure, Side};

use super::English;
use super::costs::more_or_less;
use super::papers::day;
use super::parts::{capital, cells, kg, lb, list, loud_side, percent, side, signed};
use crate::page::PageTexts;
use crate::{BasicWords, PageWords};

impl PageWords for English {
    fn page(&self) -> &'static PageTexts {
        texts::TEXTS
    }

    fn step_of(&self, step: &str, at: usize, of: usize) -> String {
        format!("{step}, step {at} of {of}")
    }

    fn body_weight(&self, weight: Mass, in_pounds: bool) -> String {
        if in_pounds { format!("{} ({})", lb(weight), kg(weight)) } else { kg(weight) }
    }

    fn state_in_short(&self, standing: Standing<'_>) -> String {
        match (standing.state, standing.review) {
            (State::ToMeasure, _) => "To measure".to_owned(),
            (State::ToPlan, _) => "To plan".to_owned(),
            (State::Estimate, _) => "Estimate: not checked".to_owned(),
            (State::NotSafe(_), _) => "Not safe: mend it".to_owned(),
            (State::Failed(_), _) => "Failed: client off".to_owned(),
            (State::Lapsed(_, lapse), _) => format!("Lapsed: {}", lapsed(lapse)),
            (State::Fitted(_), Review::Overdue(_)) => "Review overdue".to_owned(),
            (State::Fitted(_), _) => "Fitted".to_owned(),
        }
    }

    fn review_in_short(&self, standing: Standing<'_>) -> String {
        match standing.review {
            Review::None => "No review set".to_owned(),
            Review::Due(by) => format!("Review by {}", day(by)),
            Review::Overdue(by) => format!("Review overdue since {}", day(by)),
        }
    }

    fn day(&self, on: Date) -> String {
        day(on)
    }

    fn changed_meanwhile(&self, now: Option<&str>) -> String {
        match now {
            Some(now) => format!(
                "Somebody wrote \u{201c}{now}\u{201d} here meanwhile, and it stands in the file. Which is \
                 right?"
            ),
            None => "Somebody took this answer away meanwhile. Which is right?".to_owned(),
        }
    }

    fn need_another_look(&self, count: usize) -> String {
        if count == 1 {
            "1 answer needs another look".to_owned()
        } else {
            format!("{count} answers need another look")
        }
    }

    fn still_missing(&self, count: usize) -> String {
        if count == 1 {
            "1 answer is missing or not right".to_owned()
        } else {
            format!("{count} answers are missing or not right")
        }
    }

    fn answer_too(&self, label: &str) -> String {
        format!("\u{201c}{label}\u{201d} needs an answer too.")
    }

    fn goes_only_with(&self, label: &str, answers: &str) -> String {
        format!(
            "This goes only with \u{201c}{label}\u{201d}: {answers}. Empty it, or change that answer."
        )
    }

    fn entry_of_list(&self, group: &str, at: usize) -> String {
        format!("{group}, entry {at}")
    }

    fn obliquity_means(&self, lower: Side, [least, most]: [Length; 2]) -> String {
        let by = if (most - least).to_mm() < 1.0 {
            self.length(least)
        } else {
            self.lengths(least, most)
        };
        format!("The client's {} side is LOWER by {by} at the seat bones.", loud_side(lower))
    }

    fn depth_goes_by(&self, own: Side) -> String {
        format!(
            "The depth goes by the client's {} thigh: the {} leg is lost, and its thigh is not counted.",
            side(own),
            side(own.other())
        )
    }

    fn compartment_said(&self, number: u8, words: &str, count: u32) -> String {
        format!("{number}, {words}: {}", cells(count))
    }

    fn step_said(&self, more: bool, number: u8, words: &str) -> String {
        let more = if more { "more" } else { "fewer" };
        format!("One cell {more} in {number}, {words}")
    }

    fn change_from_stock(&self, cells: i64) -> String {
        format!("{} from stock", signed(cells as f64))
    }

    fn all_cells_said(&self, all: u32, stock: u32) -> String {
        let change = i64::from(all) - i64::from(stock);
        match change {
            0 => format!("{} in all, as many as the stock fill.", cells(all)),
            own if own > 0 => format!("{} in all, {own} more than the stock fill.", cells(all)),
            own => format!("{} in all, {} fewer than the stock fill.", cells(all), -own),
        }
    }

    fn range(&self, low: &str, high: &str) -> String {
        format!("{low} to {high}")
    }

    fn plain_length(&self, length: Length) -> String {
        self.length(length)
    }

    fn lean(&self, roll_deg: f64) -> String {
        turned(roll_deg, ["right", "left"], "side up")
    }

    fn slope(&self, pitch_deg: f64) -> String {
        turned(pitch_deg, ["front", "front"], if pitch_deg < 0.0 { "down" } else { "up" })
    }

    fn site_pressure(&self, pressure: Pressure) -> String {
        format!("{:.1} kPa", pressure.to_kpa())
    }

    fn site_change(&self, change: &SiteChange) -> String {
        if change.has_share() { more_or_less(change.rise()) } else { "from nothing".to_owned() }
    }

    fn shares(&self, left: f64, right: f64) -> String {
        format!("left {}, right {}", percent(left), percent(right))
    }

    fn compartment_of(&self, at: usize, of: usize) -> String {
        format!("Compartment {at} of {of}")
    }

    fn put_in(&self, count: u32, number: u8) -> String {
        format!("Put {} into compartment\u{a0}{number}", cells(count))
    }

    fn other_than_planned(&self, number: u8, planned: u32, put_in: u32) -> String {
        format!("Compartment {number} has {} and not {planned}, as planned.", cells(put_in))
    }

    fn move_of(&self, at: usize, of: usize) -> String {
        format!("Move {at} of {of}")
    }

    fn expected_and_found(&self, of: Side, expected: Length, found: Option<Length>) -> String {
        let expected = format!(
            "Under the client's {} seat bone {} were expected",
            side(of),
            self.length(expected)
        );
        match found {
            Some(found) => format!("{expected}; you felt {}.", self.length(found)),
            None => format!("{expected}."),
        }
    }

    fn expected_lower(&self, lower: Option<Side>, by: Length) -> String {
        format!("Expected: {}.", self.lower(lower, by))
    }

    fn too_little_felt(&self, of: Side, least: Length) -> String {
        format!(
            "Less than {} of cushion was felt under the client's {} seat bone. The client comes off, \
             and sits on these cells again only where that much is felt there.",
            self.length(least),
            side(of)
        )
    }

    fn check_lacks(&self, parts: &[&str]) -> String {
        let parts: Vec<String> = parts.iter().map(|part| (*part).to_owned()).collect();
        format!("It cannot pass yet. Still missing: {}.", list(&parts))
    }

    fn check_said(&self, check: &Check) -> String {
        capital(&self.found(check)) + "."
    }

    fn page_of_paper(&self, paper: &str, page: usize, pages: usize) -> String {
        format!("{paper}: page {page} of {pages}, as it is printed. Open it to read it.")
    }

    fn return_to(&self, entry: usize) -> String {
        format!("Record that the counts after entry {entry} are in the cushion again")
    }

    fn withdraw(&self, entry: usize) -> String {
        format!("Entry {entry} was a mistake")
    }

    fn to_put_back(&self, number: u8, count: i64) -> String {
        let many = cells(u32::try_from(count.unsigned_abs()).unwrap_or(u32::MAX));
        if count < 0 {
            format!("Take {many} out of number {number}.")
        } else {
            format!("Put {many} back in number {number}.")
        }
    }

    fn record_has_grown(&self, entries: usize) -> String {
        format!(
            "Somebody recorded something meanwhile: the record now has {}. Nothing of this form was \
             recorded. Here is how it stands now.",
            if entries == 1 { "1 entry".to_owned() } else { format!("{entries} entries") }
        )
    }

    fn line_of_file(&self, line: usize) -> String {
        format!("Line {line}.")
    }
}

impl English {
    /// What hands found: a clause.
    pub(super) fn found(self, check: &Check) -> String {
        match check {
            Check::Top { side: at, answer } => {
                let fingers = match answer {
                    TopAnswer::Safe => "can be moved up and down",
                    TopAnswer::Tight => "slide out, but cannot be moved",
                    TopAnswer::Pinched => "are held",
                };
                format!("fingers over the client's {} seat bone {fingers}", side(*at))
            }
            Check::Under { side: at, answer } => {
                let found = match answer {
                    UnderAnswer::Felt(felt) => format!("{} of cushion", self.length(*felt)),
                    UnderAnswer::BoneFelt => "the BONE IS FELT".to_owned(),
                    UnderAnswer::NotFound => "the bone was not found".to_owned(),
                };
                format!("under the client's {} seat bone: {found}", side(*at))
            }
            Check::Press { number, answer } => {
                let feels = match answer {
                    PressAnswer::Slack => "softer than",
                    PressAnswer::Like => "like",
                    PressAnswer::Tight => "harder than",
                };
                format!("compartment {number} is {feels} its partner")
            }
            Check::Lower { lower, by, at } => {
                let at = match at {
                    MeasuredAt::SeatBones => "at the seat bones",
                    MeasuredAt::Asis => "at the front of the pelvis",
                };
                match lower {
                    None => self.lower(None, *by),
                    own => format!("{} {at}", self.lower(*own, *by)),
                }
            }
            Check::Reading { site, pressure } => {
                format!("{}: a reading of {:.0} mmHg", self.site(*site), pressure.to_mmhg())
            }
            Check::Skin { site, answer } => {
                let skin = match answer {
                    SkinAnswer::Clear => "as before",
                    SkinAnswer::Fades => "a mark that fades",
                    SkinAnswer::Stays => "a mark that STAYS",
                    SkinAnswer::Open => "BROKEN skin",
                    SkinAnswer::Worse => "WORSE than before",
                };
                format!("skin at the {}: {skin}", self.site(*site))
            }
        }
    }
}

fn lapsed(lapse: Lapse) -> &'static str {
    match lapse {
        Lapse::OtherCushion => "another cushion",
        Lapse::Filling(_) => "being filled",
        Lapse::Counts(_) => "counts changed",
        Lapse::Recount(_) => "recount is off",
        Lapse::Skin(..) => "mark on the skin",
        Lapse::Weight(_) => "weight changed",
    }
}

/// A turn in tenths of a degree.
fn turned(degrees: f64, [positive, negative]: [&str; 2], how: &str) -> String {
    let tenths = (degrees.abs() * 10.0).round() / 10.0;
    if tenths < 0.05 {
        return "not at all".to_owned();
    }
    format!("{tenths}\u{b0}, {} {how}", if degrees < 0.0 { negative } else { positive })
}
