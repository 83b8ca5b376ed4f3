//! What works without the program: for each likely finding the move and what it costs elsewhere.
//!
//! From what one cell does to the counts as they are, so the table is good for small moves only.

use case::{Client, GoalOutcome, Move, SiteName};
use cushion::{Mass, Pattern, Side};
use mechanics::{CellEffect, Stop};

use crate::aims::{Quantity, State};
use crate::goals::Ground;
use crate::moves::moves;
use crate::needs::Needs;
use crate::planner::Planner;
use crate::prepared::PreparedCushion;
use crate::search::Search;
use crate::seated::Seated;
use crate::sitting::setting;

/// The change of height for which moves are given, m.
const STEP: f64 = 5e-3;
/// The change of pressure for which moves are given, as a share.
const SHARE: f64 = 0.10;
/// The most cells of one line: what a hand moves at once, and as far as straight lines hold.
const HANDFUL: f64 = 12.0;

/// One line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// What is found.
    pub finding: String,
    /// What to do.
    pub then: String,
    /// What it costs elsewhere.
    pub cost: String,
}

/// What goes onto the setup card.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    /// What became of each goal, in sentences.
    pub goals: Vec<String>,
    /// From the stock fill to the counts.
    pub moves: Vec<Move>,
    /// The table.
    pub if_then: Vec<Finding>,
}

/// Returns what goes onto the setup card for counts, in the pattern's order; none where the client
/// does not come to rest on them.
#[must_use]
pub fn reference(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    counts: &[u32],
) -> Option<Reference> {
    let (pattern, stop) = (cushion.pattern(), Stop::never());
    let seated =
        Seated::new(cushion.coarse(), setting(client, cushion, weight, stop).ok()?, stop).ok()?;
    let search = Search {
        seated: &seated,
        pattern,
        unloaded: cushion.unloaded(),
        aims: Vec::new(),
        bounds: Vec::new(),
        home: Vec::new(),
    };
    let real: Vec<f64> = counts.iter().map(|count| f64::from(*count)).collect();
    let stock_counts: Vec<u32> =
        pattern.indices().map(|ix| cushion.stock()[ix].cells.stock).collect();
    let stock: Vec<f64> = stock_counts.iter().map(|count| f64::from(*count)).collect();
    let state = search.state(&real, None)?;
    let stock = search.state(&stock, Some(&state))?;
    let effects = seated.effects_at(&real, &state.resting)?;
    let needs = Needs::of(client);
    let ground = Ground { needs: &needs, pattern, seated: &seated, stock: &stock };
    let planner =
        Planner::new(cushion, client, weight, counts, vec![false; counts.len()], stop).ok()?;
    let goals = planner.judged(&ground, &state).iter().map(sentence).collect();
    let table = Table { pattern, ground: &ground, state: &state, effects: &effects };
    Some(Reference { goals, moves: moves(pattern, &stock_counts, counts), if_then: table.rows() })
}

/// A goal as a sentence.
fn sentence(goal: &GoalOutcome) -> String {
    let mut words = goal.words.clone();
    words[..1].make_ascii_uppercase();
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

struct Table<'a> {
    pattern: &'a Pattern,
    ground: &'a Ground<'a>,
    state: &'a State,
    effects: &'a [CellEffect],
}

impl Table<'_> {
    fn rows(&self) -> Vec<Finding> {
        let both = [Side::Left, Side::Right];
        let mut rows: Vec<Finding> = both.iter().filter_map(|side| self.too_low(*side)).collect();
        rows.extend(both.iter().filter_map(|side| self.too_firm(*side)));
        rows.extend(both.iter().filter_map(|side| self.lower(*side)));
        rows
    }

    fn site(&self, name: SiteName) -> Option<usize> {
        self.state.resting.sites.iter().position(|own| own.site.name == name)
    }

    fn bone(&self, side: Side) -> Option<usize> {
        self.site(SiteName::SeatBone(side))
    }

    /// The compartment in which one cell does most for the clearance of a side, among those under
    /// the seat bone.
    fn under(&self, side: Side) -> Option<usize> {
        let bone = self.bone(side)?;
        let under = self.ground.under_site(SiteName::SeatBone(side));
        under.into_iter().max_by(|a, b| {
            self.effects[*a].clearance[bone].total_cmp(&self.effects[*b].clearance[bone])
        })
    }

    fn number(&self, at: usize) -> u8 {
        self.pattern.compartments()[at].number
    }

    /// By how much the clearance of a side changes, mm, for cells in compartments.
    fn height(&self, side: Side, cells: &[(usize, f64)]) -> f64 {
        let Some(bone) = self.bone(side) else { return 0.0 };
        cells.iter().map(|(at, by)| by * self.effects[*at].clearance[bone] * 1e3).sum()
    }

    /// By how much the surface pressure at the seat bone of a side changes, per cent.
    fn pressure(&self, side: Side, cells: &[(usize, f64)]) -> f64 {
        let Some(bone) = self.bone(side) else { return 0.0 };
        let now = self.state.resting.sites[bone].pressure.to_pa().max(1.0);
        let by: f64 =
            cells.iter().map(|(at, by)| by * self.effects[*at].surface_pressure[bone]).sum();
        100.0 * by / now
    }

    fn cost(&self, side: Side, cells: &[(usize, f64)]) -> String {
        let other = side.other();
        format!(
            "{}: {} under the bone, pressure {}. {}: {}, {}.",
            capital(side),
            mm(self.height(side, cells)),
            percent(self.pressure(side, cells)),
            capital(other),
            mm(self.height(other, cells)),
            percent(self.pressure(other, cells))
        )
    }

    /// Too little left under a seat bone.
    fn too_low(&self, side: Side) -> Option<Finding> {
        let under = self.under(side)?;
        let each = self.height(side, &[(under, 1.0)]) * 1e-3;
        let cells = (STEP / each).ceil();
        if !(1.0..=HANDFUL).contains(&cells) {
            return None;
        }
        Some(Finding {
            finding: format!(
                "Under 25 mm felt under the {} seat bone, or the bone felt",
                side.words()
            ),
            then: format!(
                "Put {cells:.0} cells from the spare bag into compartment {}.",
                self.number(under)
            ),
            cost: self.cost(side, &[(under, cells)]),
        })
    }

    /// Pinched on top with enough left underneath: overfilled.
    fn too_firm(&self, side: Side) -> Option<Finding> {
        let under = self.under(side)?;
        let each = self.pressure(side, &[(under, -1.0)]) / 100.0;
        let cells = (-SHARE / each).ceil();
        if !(1.0..=HANDFUL).contains(&cells) {
            return None;
        }
        let lowered = self.height(side, &[(under, -cells)]);
        let needed = 25.0 - lowered;
        Some(Finding {
            finding: format!(
                "{} seat bone pinched on top, and {needed:.0} mm or more felt underneath",
                capital(side)
            ),
            then: format!(
                "Take {cells:.0} cells out of compartment {} into the spare bag. Never before the hand underneath.",
                self.number(under)
            ),
            cost: self.cost(side, &[(under, -cells)]),
        })
    }

    /// The pelvis lower on one side than it should be.
    fn lower(&self, side: Side) -> Option<Finding> {
        let (to, from) = (self.under(side)?, self.under(side.other())?);
        if to == from {
            return None;
        }
        let pair = |by: f64| [(to, by), (from, -by)];
        let each = self.height(side, &pair(1.0)) - self.height(side.other(), &pair(1.0));
        let cells = (STEP * 1e3 / each).round();
        if !(1.0..=HANDFUL).contains(&cells) {
            return None;
        }
        let left = Quantity::Clearance(side.other()).value(self.state)? * 1e3
            + self.height(side.other(), &pair(cells));
        let safe = if left < 25.0 {
            format!(
                " Only if {:.0} mm or more are felt under the {} bone.",
                25.0 - self.height(side.other(), &pair(cells)),
                side.other().words()
            )
        } else {
            String::new()
        };
        Some(Finding {
            finding: format!(
                "Pelvis lower on the {} by 5 mm more than it should be (first rule out sag and uneven fill)",
                side.words()
            ),
            then: format!(
                "Move {cells:.0} cells from compartment {} to {}.{safe}",
                self.number(from),
                self.number(to)
            ),
            cost: self.cost(side, &pair(cells)),
        })
    }
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
