//! What works without the program: for each likely finding the move and what it costs elsewhere.
//!
//! Each line's cells are solved for on the counts as they are. Both sides have their lines always:
//! where cells are too many, or would harm, the line says so instead of missing.

use case::{
    CardFinding, Client, CostAtBone, GoalOutcome, IfThen, Mirror, Partners, Remedy, RemedyCost,
    SiteName, ToldFrom,
};
use cushion::{CompartmentIx, Length, Mass, Side};
use mechanics::{CellEffect, Parameters, Stop};

use crate::checks::alarms::ENOUGH_FELT;
use crate::checks::meaning::HAND;
use crate::goals::aims::{Aim, Filling, Quantity, real};
use crate::goals::limits::{Reference, limits};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::image::{answered_by_its_image, left_first};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::prediction::prepared::PreparedCushion;
use crate::search::few_out::{FewOut, LEFT_OVER};
use crate::search::planner::Planner;
use crate::search::steps::Search;
use crate::search::task::BROKEN;

/// The change of height for which moves are given, m.
const STEP: f64 = 5e-3;
/// The most cells of one line: what a hand moves at once.
const HANDFUL: f64 = 12.0;

/// What goes onto the setup card beside the counts.
#[derive(Clone, Debug, PartialEq)]
pub struct CardAdvice {
    /// What becomes of each goal.
    pub goals: Vec<GoalOutcome>,
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
    let own = (client.clone(), counts.to_vec());
    let image = |partners: &Partners| (client.mirrored(partners), partners.swapped(counts));
    match answered_by_its_image(cushion.pattern(), &own, image) {
        None => answered(client, cushion, weight, counts),
        Some(partners) => {
            let (client, counts) = image(&partners);
            let advice = answered(&client, cushion, weight, &counts)?;
            Some(CardAdvice {
                goals: advice.goals.mirrored(&partners),
                if_then: left_first(advice.if_then.mirrored(&partners), side_of_line),
            })
        }
    }
}

/// The kind and side of a line, as they are told.
fn side_of_line(line: &IfThen) -> Option<(u8, Side)> {
    match line.found {
        CardFinding::BoneFelt | CardFinding::Mark => None,
        CardFinding::TooLow { side, .. } => Some((0, side)),
        CardFinding::Pinched { side, .. } => Some((1, side)),
        CardFinding::Lower { side, .. } => Some((2, side)),
    }
}

/// What goes onto the card for the question as it is.
fn answered(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    counts: &[u32],
) -> Option<CardAdvice> {
    let (pattern, stop) = (cushion.pattern(), Stop::never());
    let assumptions = assumptions_of(client, cushion, weight, stop).ok()?;
    let meshes = SearchMeshes::new(cushion, &assumptions, stop).ok()?;
    let search = Search::solving_only(cushion, &meshes);
    let real = real(counts);
    let stock: Vec<f64> =
        pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.stock)).collect();
    let filling = search.filled(&real, None)?;
    let stock = search.filled(&stock, Some(&filling))?;
    let effects = search.effects(&filling)?;
    let needs = Needs::of(client);
    let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &stock };
    let planner = Planner::judging(
        cushion,
        client,
        assumptions.clone(),
        stock.counts.clone(),
        ToldFrom::Stock,
        stop,
    );
    let goals = planner.judged(&reader, &filling);
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

struct Table<'a> {
    search: &'a Search<'a>,
    stock: &'a cushion::StockFill,
    reader: &'a GoalReader<'a>,
    filling: &'a Filling,
    effects: &'a [CellEffect],
}

/// Cells more in compartments; fewer where negative.
type Change = Vec<(CompartmentIx, f64)>;

/// Which cells a line of the table asks for.
enum CellChange {
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
        let alarm = |found, then| IfThen { found, then, cost: None };
        let mut rows = vec![
            alarm(CardFinding::BoneFelt, Remedy::ClientOffLookAtSetUp),
            alarm(CardFinding::Mark, Remedy::ClientOff),
        ];
        rows.extend(both.map(|side| self.too_low(side)));
        rows.extend(both.map(|side| self.too_firm(side)));
        let oblique = self.reader.needs.oblique;
        let fixed = oblique.is_some_and(|own| own.reducible <= Length::ZERO);
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
    fn change(
        &self,
        each: &[(CompartmentIx, f64)],
        wanted: f64,
        gain: impl Fn(&Filling) -> f64,
    ) -> CellChange {
        let mut cells = 1.0;
        while cells <= HANDFUL {
            let change: Change = each.iter().map(|(at, by)| (*at, by * cells)).collect();
            let Some(then) = self.after(&change) else { return CellChange::Harm };
            if self.harms(&change, &then) {
                return CellChange::Harm;
            }
            let gained = gain(&then);
            if gained >= wanted {
                return CellChange::Cells(cells, Box::new(then));
            }
            // By a straight line, but at most twice as many at once: walls swallow the first cells.
            let line = (cells * wanted / gained.max(1e-9)).ceil();
            cells = line.clamp(cells + 1.0, (2.0 * cells).max(cells + 1.0));
        }
        CellChange::TooMany
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

    /// Whether a change breaks a limit, as of every plan. How far the pelvis is turned is none here, since a
    /// client who was found lower than on these counts is turned back; nor is a site without an
    /// injury, which an adjustment spares where it can and does not refuse; the line tells what it costs.
    fn harms(&self, change: &Change, then: &Filling) -> bool {
        let needed = [Parameters::default().clearance_limit; 2];
        let reference = Reference { now: self.filling, passed: None };
        let needs = self.reader.needs;
        let limits = limits(needs, self.reader.pattern, reference, needed);
        let counts = |aim: &Aim| match aim.quantity {
            Quantity::Roll => false,
            Quantity::Surface(site) => needs.injured.contains(&site),
            _ => true,
        };
        let beyond = |(ix, by): &(CompartmentIx, f64)| {
            let cells = self.stock[*ix].cells;
            let count = then.counts[ix.index()];
            (*by > 0.0 && count > f64::from(cells.high)) || count < f64::from(cells.low) / 2.0
        };
        limits.iter().any(|aim| counts(aim) && aim.misses(then) > BROKEN)
            || change.iter().any(beyond)
    }

    fn cost(&self, side: Side, then: &Filling) -> RemedyCost {
        let at = |side: Side| CostAtBone {
            height: Length::from_m(self.height(then, side)),
            pressure: self.pressure(then, SiteName::SeatBone(side)),
        };
        RemedyCost { side, there: at(side), other: at(side.other()) }
    }

    /// A line whose cells have been looked for; `with` says what to do with them.
    fn line(
        &self,
        side: Side,
        found: CardFinding,
        change: &CellChange,
        with: impl Fn(u32) -> Remedy,
    ) -> IfThen {
        let (then, cost) = match change {
            CellChange::Cells(cells, then) => {
                (with(cells.round() as u32), Some(self.cost(side, then)))
            }
            CellChange::TooMany => (Remedy::MoreThanAHandful, None),
            CellChange::Harm => (Remedy::NoCells, None),
        };
        IfThen { found, then, cost }
    }

    /// Too little left under a seat bone.
    fn too_low(&self, side: Side) -> IfThen {
        let limit = Length::from_m(Parameters::default().clearance_limit);
        let found = CardFinding::TooLow { side, limit };
        let Some(under) = self.under(side) else { return no_cells(found) };
        let change = self.change(&[(under, 1.0)], STEP, |then| self.height(then, side));
        let into = self.number(under);
        self.line(side, found, &change, |cells| Remedy::PutIn { cells, into })
    }

    /// Pinched on top with enough left underneath, and not less than is expected: overfilled.
    fn too_firm(&self, side: Side) -> IfThen {
        let clearance = |side| Quantity::Clearance(side).value(self.filling).unwrap_or(0.0);
        // However much is felt, no more is taken out; and what is felt must leave enough after it.
        let (much, other) = (f64::INFINITY, clearance(side.other()));
        let few_out = FewOut {
            search: self.search,
            needs: self.reader.needs,
            now: self.filling,
            clearance: if side == Side::Left { [much, other] } else { [other, much] },
            sides: &[side],
        };
        let then = few_out.found();
        let after = then.as_ref().map_or(0.0, |then| LEFT_OVER - self.height(then, side));
        let felt = ENOUGH_FELT.to_m().max(clearance(side) - HAND).max(after);
        let found = CardFinding::Pinched { side, felt: Length::from_mm((felt * 1e3).ceil()) };
        let Some(then) = then else { return no_cells(found) };
        let out = |ix: CompartmentIx| self.filling.counts[ix.index()] - then.counts[ix.index()];
        let Some(from) = self.search.pattern.indices().find(|ix| out(*ix) > 0.0) else {
            return no_cells(found);
        };
        let remedy = Remedy::TakeOut { cells: out(from) as u32, out_of: self.number(from) };
        IfThen { found, then: remedy, cost: Some(self.cost(side, &then)) }
    }

    /// The pelvis lower on one side than it should be.
    fn lower(&self, side: Side) -> IfThen {
        let found = CardFinding::Lower { side, by: Length::from_m(STEP) };
        let pair = self.under(side).zip(self.under(side.other())).filter(|(to, from)| to != from);
        let Some((to, from)) = pair else { return no_cells(found) };
        let level = |then: &Filling| self.height(then, side) - self.height(then, side.other());
        let change = self.change(&[(to, 1.0), (from, -1.0)], STEP, level);
        let (from, to) = (self.number(from), self.number(to));
        self.line(side, found, &change, |cells| Remedy::MoveOver { cells, from, to })
    }
}

/// A line for which this layout has no compartment of its own.
fn no_cells(found: CardFinding) -> IfThen {
    IfThen { found, then: Remedy::NoCells, cost: None }
}
