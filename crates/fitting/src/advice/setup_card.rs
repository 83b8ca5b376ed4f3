//! What works without the program: for each likely finding the move and what it costs elsewhere.
//!
//! Each line's cells are solved for on the counts as they are. Both sides have their lines always:
//! where cells are too many, or would harm, the line says so instead of missing.

use case::{Client, GoalOutcome, SiteName};
use cushion::{CompartmentIx, Mass, Side};
use mechanics::{CellEffect, Parameters, Stop};

use crate::goals::aims::{Filling, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::ClientOnCushion;
use crate::prediction::prepared::PreparedCushion;
use crate::search::planner::Planner;
use crate::search::steps::Search;

/// The change of height for which moves are given, m.
const STEP: f64 = 5e-3;
/// The change of pressure for which moves are given, as a share.
const SHARE: f64 = 0.10;
/// The most cells of one line: what a hand moves at once.
const HANDFUL: f64 = 12.0;
/// Cushion felt from which held fingers mean too many cells, mm: common practice, no source.
const ENOUGH: f64 = 35.0;
/// What is left under a bone where cells are taken from under it, mm: the limit of 25 mm and how
/// finely a hand tells it.
const LEFT_OVER: f64 = 28.0;
/// How much more an injured site may get by a line, as a share: what nobody can tell.
const NO_MORE: f64 = 0.01;

/// One line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IfThen {
    /// What is found.
    pub finding: String,
    /// What to do.
    pub then: String,
    /// What it costs elsewhere.
    pub cost: String,
}

/// What goes onto the setup card beside the counts.
#[derive(Clone, Debug, PartialEq)]
pub struct CardAdvice {
    /// What became of each goal, in sentences.
    pub goals: Vec<String>,
    /// The table.
    pub if_then: Vec<IfThen>,
}

/// Returns what goes onto the setup card for counts, in the pattern's order; none where the client
/// does not come to rest on them.
#[must_use]
pub fn card_advice(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    counts: &[u32],
) -> Option<CardAdvice> {
    let (pattern, stop) = (cushion.pattern(), Stop::never());
    let seated = ClientOnCushion::new(
        cushion.coarse(),
        assumptions_of(client, cushion, weight, stop).ok()?,
        stop,
    )
    .ok()?;
    let search = Search {
        seated: &seated,
        pattern,
        unloaded: cushion.unloaded(),
        aims: Vec::new(),
        bounds: Vec::new(),
        home: Vec::new(),
    };
    let real: Vec<f64> = counts.iter().map(|count| f64::from(*count)).collect();
    let stock: Vec<f64> =
        pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.stock)).collect();
    let filling = search.filled(&real, None)?;
    let stock = search.filled(&stock, Some(&filling))?;
    let effects = seated.effects_at(&real, &filling.resting)?;
    let needs = Needs::of(client);
    let reader = GoalReader { needs: &needs, pattern, seated: &seated, stock: &stock };
    let planner =
        Planner::new(cushion, client, weight, counts, vec![false; counts.len()], stop).ok()?;
    let goals = planner.judged(&reader, &filling).iter().map(sentence).collect();
    let stock_fill = cushion.stock();
    let table = Table {
        search: &search,
        stock: stock_fill,
        reader: &reader,
        filling: &filling,
        effects: &effects,
    };
    Some(CardAdvice { goals, if_then: table.rows() })
}

/// A goal as a sentence.
fn sentence(goal: &GoalOutcome) -> String {
    let words = capitalised(&goal.words);
    match (goal.reached, goal.met, &goal.why) {
        (Some(reached), true, _) if goal.unit == "% less" => {
            let (least, most) = (0.8 * reached, 1.2 * reached);
            format!("{words}. Expected: {least:.0} to {most:.0} {}.", goal.unit)
        }
        (Some(reached), true, _) => {
            format!("{words}. Expected: {reached:.0} {} (wanted {:.0}).", goal.unit, goal.wanted)
        }
        (Some(reached), false, why) => format!(
            "{words}. NOT REACHED, expected: {reached:.0} {} (wanted {:.0}){}.",
            goal.unit,
            goal.wanted,
            why.as_ref().map_or_else(String::new, |why| format!("; {why}"))
        ),
        (None, _, why) => {
            format!("{words}. NOT DONE: {}.", why.as_deref().unwrap_or("it is out of reach"))
        }
    }
}

/// Words with a capital at their head, whatever letter it is.
fn capitalised(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

struct Table<'a> {
    search: &'a Search<'a>,
    stock: &'a cushion::StockFill,
    reader: &'a GoalReader<'a>,
    filling: &'a Filling,
    effects: &'a [CellEffect],
}

/// Cells more in compartments; fewer where negative.
type Change = Vec<(CompartmentIx, f64)>;

/// What a line of the table may ask for.
enum Remedy {
    /// These cells, after which the client sits so.
    Cells(f64, Box<Filling>),
    /// More cells than a hand moves at once.
    TooMany,
    /// Cells that would break a limit or load an injury.
    Harm,
}

impl Table<'_> {
    /// Alarms first, then each finding for the left and for the right.
    fn rows(&self) -> Vec<IfThen> {
        let both = [Side::Left, Side::Right];
        let mut rows = vec![bone_felt(), mark()];
        rows.extend(both.map(|side| self.too_low(side)));
        rows.extend(both.map(|side| self.too_firm(side)));
        let oblique = self.reader.needs.oblique;
        let fixed = oblique.is_some_and(|own| own.reducible <= cushion::Length::ZERO);
        // A pelvis that is fixed is not forced level.
        if !fixed {
            rows.extend(both.map(|side| self.lower(side)));
        }
        rows
    }

    /// The compartment in which one cell does most for the clearance of a side, among those under
    /// the seat bone.
    fn under(&self, side: Side) -> Option<CompartmentIx> {
        let site = SiteName::SeatBone(side);
        let bone = self.filling.resting.sites.iter().position(|own| own.site.name == site)?;
        let under = self.reader.under_site(site);
        under.into_iter().max_by(|a, b| {
            let lift = |ix: &CompartmentIx| self.effects[ix.index()].clearance[bone];
            lift(a).total_cmp(&lift(b))
        })
    }

    fn number(&self, ix: CompartmentIx) -> u8 {
        self.search.pattern[ix].number
    }

    /// By how much the clearance of a side differs from what it is, m.
    fn height(&self, then: &Filling, side: Side) -> f64 {
        let value = |filling| Quantity::Clearance(side).value(filling);
        value(then).zip(value(self.filling)).map_or(0.0, |(then, now)| then - now)
    }

    /// By what share the surface pressure at a site differs from what it is.
    fn pressure(&self, then: &Filling, site: SiteName) -> f64 {
        let value = |filling| Quantity::Surface(site).value(filling);
        value(then).zip(value(self.filling)).map_or(0.0, |(then, now)| then / now.max(1.0) - 1.0)
    }

    /// The fewest cells that reach a gain, `each` being what is changed for one of them.
    fn remedy(
        &self,
        each: &[(CompartmentIx, f64)],
        wanted: f64,
        gain: impl Fn(&Filling) -> f64,
    ) -> Remedy {
        let mut cells = 1.0;
        while cells <= HANDFUL {
            let change: Change = each.iter().map(|(at, by)| (*at, by * cells)).collect();
            let Some(then) = self.after(&change) else { return Remedy::Harm };
            if self.harms(&change, &then) {
                return Remedy::Harm;
            }
            let gained = gain(&then);
            if gained >= wanted {
                return Remedy::Cells(cells, Box::new(then));
            }
            // By a straight line, but at most twice as many at once: walls swallow the first cells.
            let line = (cells * wanted / gained.max(1e-9)).ceil();
            cells = line.clamp(cells + 1.0, (2.0 * cells).max(cells + 1.0));
        }
        Remedy::TooMany
    }

    fn after(&self, change: &Change) -> Option<Filling> {
        let mut counts = self.filling.counts.clone();
        for (ix, by) in change {
            counts[ix.index()] += by;
        }
        if counts.iter().any(|count| *count < 0.0) {
            return None;
        }
        self.search.filled(&counts, Some(self.filling))
    }

    /// Whether a change breaks a limit, or loads a site with an injury.
    fn harms(&self, change: &Change, then: &Filling) -> bool {
        let limit = Parameters::default().clearance_limit;
        let short = |side: Side| {
            Quantity::Clearance(side).value(then).is_none_or(|clearance| clearance < limit)
        };
        let beyond = |(ix, by): &(CompartmentIx, f64)| {
            let cells = self.stock[*ix].cells;
            let count = then.counts[ix.index()];
            (*by > 0.0 && count > f64::from(cells.high)) || count < f64::from(cells.low) / 2.0
        };
        [Side::Left, Side::Right].into_iter().any(short)
            || change.iter().any(beyond)
            || self.reader.needs.injured.iter().any(|site| self.pressure(then, *site) > NO_MORE)
    }

    fn cost(&self, side: Side, then: &Filling) -> String {
        let other = side.other();
        let at = |side: Side| {
            let bone = SiteName::SeatBone(side);
            (mm(self.height(then, side) * 1e3), percent(self.pressure(then, bone) * 100.0))
        };
        let ((own_height, own_pressure), (height, pressure)) = (at(side), at(other));
        format!(
            "{}: {own_height} under the bone, pressure {own_pressure}. {}: {height}, {pressure}.",
            capital(side),
            capital(other)
        )
    }

    /// A line whose cells have been looked for; `say` says what to do with them.
    fn line(
        &self,
        side: Side,
        finding: String,
        remedy: &Remedy,
        say: impl Fn(f64, &Filling) -> String,
    ) -> IfThen {
        let (then, cost) = match remedy {
            Remedy::Cells(cells, then) => (say(*cells, then), self.cost(side, then)),
            Remedy::TooMany => (MORE_THAN_A_HANDFUL.to_owned(), String::new()),
            Remedy::Harm => (OFF_AND_CALL.to_owned(), String::new()),
        };
        IfThen { finding, then, cost }
    }

    /// Too little left under a seat bone.
    fn too_low(&self, side: Side) -> IfThen {
        let finding = format!("Under 25 mm felt under the {} seat bone", side.words());
        let Some(under) = self.under(side) else { return unreachable(finding) };
        let remedy = self.remedy(&[(under, 1.0)], STEP, |then| self.height(then, side));
        self.line(side, finding, &remedy, |cells, _| {
            format!(
                "Put {} from the spare bag into compartment {}.",
                so_many(cells),
                self.number(under)
            )
        })
    }

    /// Pinched on top with enough left underneath: overfilled.
    fn too_firm(&self, side: Side) -> IfThen {
        let bone = SiteName::SeatBone(side);
        let finding = |needed: f64| {
            format!(
                "{} seat bone pinched on top, and {needed:.0} mm or more felt underneath",
                capital(side)
            )
        };
        let Some(under) = self.under(side) else { return unreachable(finding(ENOUGH)) };
        let remedy = self.remedy(&[(under, -1.0)], SHARE, |then| -self.pressure(then, bone));
        let lowered = match &remedy {
            Remedy::Cells(_, then) => -self.height(then, side) * 1e3,
            Remedy::TooMany | Remedy::Harm => 0.0,
        };
        let needed = ENOUGH.max((LEFT_OVER + lowered).ceil());
        self.line(side, finding(needed), &remedy, |cells, _| {
            format!(
                "Pat level and check again. Still pinched: take {} out of compartment {} into the \
                 spare bag. Never before the hand underneath.",
                so_many(cells),
                self.number(under)
            )
        })
    }

    /// The pelvis lower on one side than it should be.
    fn lower(&self, side: Side) -> IfThen {
        let finding = format!(
            "Pelvis lower on the {} by 5 mm more than it should be (first rule out sag and uneven fill)",
            side.words()
        );
        let pair = self.under(side).zip(self.under(side.other())).filter(|(to, from)| to != from);
        let Some((to, from)) = pair else { return unreachable(finding) };
        let level = |then: &Filling| self.height(then, side) - self.height(then, side.other());
        let remedy = self.remedy(&[(to, 1.0), (from, -1.0)], STEP, level);
        self.line(side, finding, &remedy, |cells, _| {
            format!(
                "Move {} from compartment {} to {}.",
                so_many(cells),
                self.number(from),
                self.number(to)
            )
        })
    }
}

/// What a line says whose cells are more than a hand moves.
const MORE_THAN_A_HANDFUL: &str = "Needs more cells than a handful: client off, plan again, call.";
/// What a line says whose cells would harm.
const OFF_AND_CALL: &str = "No cells: client off, call.";

/// A line for which this layout has no compartment of its own.
fn unreachable(finding: String) -> IfThen {
    IfThen { finding, then: OFF_AND_CALL.to_owned(), cost: String::new() }
}

fn bone_felt() -> IfThen {
    IfThen {
        finding: "A seat bone felt through the cushion, left or right".to_owned(),
        then:
            "CLIENT OFF NOW. No cells by this table. Look at the seat (sag), FRONT and TOP, left \
               and right, leaks, counts. Call."
                .to_owned(),
        cost: String::new(),
    }
}

fn mark() -> IfThen {
    IfThen {
        finding:
            "A mark on the skin that is still there after 30 minutes, open skin, or an injury \
                  that looks worse"
                .to_owned(),
        then: "CLIENT OFF NOW. No cells. Call.".to_owned(),
        cost: String::new(),
    }
}

fn so_many(cells: f64) -> String {
    if cells == 1.0 { "1 cell".to_owned() } else { format!("{cells:.0} cells") }
}

fn capital(side: Side) -> &'static str {
    match side {
        Side::Left => "Left",
        Side::Right => "Right",
    }
}

/// A change of height with its sign.
fn mm(by: f64) -> String {
    signed(by) + "\u{a0}mm"
}

/// A change of pressure with its spread: a fifth of itself at least.
fn percent(by: f64) -> String {
    let (near, far) = (0.8 * by, 1.2 * by);
    let (low, high) = if by < 0.0 { (far, near) } else { (near, far) };
    if (low.round() - high.round()).abs() < 0.5 {
        return signed(by) + "\u{a0}%";
    }
    format!("{}\u{a0}to\u{a0}{}\u{a0}%", signed(low), signed(high))
}

/// A whole number with its sign.
fn signed(by: f64) -> String {
    let whole = by.round();
    if whole < 0.0 { format!("\u{2212}{:.0}", -whole) } else { format!("+{:.0}", whole.abs()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_goal_may_begin_with_any_letter_or_with_none() {
        let goal = |words: &str| GoalOutcome {
            id: "test".to_owned(),
            words: words.to_owned(),
            wanted: 5.0,
            reached: Some(4.0),
            unit: "mm higher",
            met: true,
            why: None,
        };
        let said = |words| sentence(&goal(words));
        assert_eq!(said("a shelf"), "A shelf. Expected: 4 mm higher (wanted 5).");
        assert_eq!(said("\u{e1}gy"), "\u{c1}gy. Expected: 4 mm higher (wanted 5).");
        assert_eq!(said(""), ". Expected: 4 mm higher (wanted 5).");
    }
}
