//! What counts are worth, written down apart from the planner: goals in their tolerances, limits,
//! and harm that nobody asked for.

use case::{Client, SiteName, Want};
use cushion::{Purpose, Side};
use mechanics::Stop;

use crate::goals::aims::{Filling, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::steps::Search;

/// Surface pressure below which a rise is not counted, Pa: a tenth of it is nothing that anybody
/// reads; a judgement.
const LITTLE: f64 = 2e3;

/// What tissue leaves of off-loading, the middle of what the audit finds; the planner has the same.
const LEFT_BY_TISSUE: f64 = 0.65;

/// A client on a cushion, with the stock fill that goals are counted from.
pub(super) struct Judging<'a> {
    pub(super) cushion: &'a PreparedCushion,
    pub(super) meshes: SearchMeshes<'a>,
    pub(super) needs: Needs,
    pub(super) stock: Filling,
    /// The part of off-loading that counts: a body with tissue shows all of it, a rigid one only what
    /// tissue would leave.
    left_by_tissue: f64,
}

impl<'a> Judging<'a> {
    /// None where the client does not rest on the stock fill.
    pub(super) fn new(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: &Assumptions,
    ) -> Option<Self> {
        let meshes = SearchMeshes::new(cushion, assumptions, Stop::never()).ok()?;
        let stock: Vec<f64> = (cushion.pattern().indices())
            .map(|ix| f64::from(cushion.stock()[ix].cells.stock))
            .collect();
        let stock = Search::solving_only(cushion, &meshes).filled(&stock, None)?;
        let rigid = assumptions.sitter.tissue_stiffness.is_none();
        let left_by_tissue = if rigid { LEFT_BY_TISSUE } else { 1.0 };
        Some(Self { cushion, meshes, needs: Needs::of(client), stock, left_by_tissue })
    }

    /// The same on its rough mesh.
    pub(super) fn roughly(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: &Assumptions,
    ) -> Option<Self> {
        let mut own = Self::new(cushion, client, assumptions)?;
        let rough = SearchMeshes::new(cushion, assumptions, Stop::never()).ok()?.rough;
        own.meshes.coarse = rough;
        own.stock = own.filling(&own.stock.counts, None)?;
        Some(own)
    }

    /// The counts with their numbers; none where the client does not rest on them.
    pub(super) fn filling(&self, counts: &[f64], near: Option<&Filling>) -> Option<Filling> {
        Search::solving_only(self.cushion, &self.meshes).filled(counts, near)
    }

    /// How far each goal is off, in tolerances; none for one that is refused. One is met.
    pub(super) fn off(&self, filling: &Filling) -> Vec<Option<f64>> {
        let pattern = self.cushion.pattern();
        let (needs, meshes, stock) = (&self.needs, &self.meshes, &self.stock);
        let wanted = GoalReader { needs, pattern, meshes, stock }.wanted();
        let off = |goal: &crate::goals::wanted::Wanted| {
            let aims = goal.aims.as_ref().ok()?;
            Some(match goal.want {
                Want::NearStock => {
                    self.moved(filling) / (0.05 * self.stock.counts.iter().sum::<f64>())
                }
                // Four fifths of the wish are one tolerance off.
                Want::OffLoad { site, share } => {
                    let relief = -self.share_more(filling, site)? * self.left_by_tissue;
                    ((share - relief) / (0.2 * share)).max(0.0)
                }
                Want::MedialSupport { height } | Want::LateralSupport { height } => {
                    self.off_support(filling, goal.want, height.to_m()).max(off_aims(aims, filling))
                }
                _ => off_aims(aims, filling),
            })
        };
        wanted.iter().map(off).collect()
    }

    /// What is taken off the site of the first off-load goal, in times of what is wanted.
    pub(super) fn relief(&self, filling: &Filling) -> Option<f64> {
        self.needs.goals.iter().find_map(|goal| match goal.want {
            Want::OffLoad { site, share } => Some(-self.share_more(filling, site)? / share),
            _ => None,
        })
    }

    fn share_more(&self, filling: &Filling, site: SiteName) -> Option<f64> {
        let surface = |filling| Quantity::Surface(site).value(filling);
        Some(surface(filling)? / surface(&self.stock)? - 1.0)
    }

    /// A support whose own compartments rise by less than half of what is wanted, or beside which
    /// others fall by more than 3 mm, is made by lowering the seat.
    fn off_support(&self, filling: &Filling, want: Want, height: f64) -> f64 {
        let purposes: &[Purpose] = match want {
            Want::MedialSupport { .. } => &[Purpose::MedialThighSupport],
            _ => &[Purpose::LateralThighSupport, Purpose::LateralPelvicSupport],
        };
        let rise = |at: usize| filling.tops[at] - self.stock.tops[at];
        let pattern = self.cushion.pattern();
        let (mut least, mut fallen) = (f64::INFINITY, 0.0f64);
        for ix in pattern.indices() {
            if purposes.contains(&pattern[ix].purpose) {
                least = least.min(rise(ix.index()));
            } else {
                fallen = fallen.max(-rise(ix.index()));
            }
        }
        let short = (0.5 * height - least) / 1e-3;
        1.0 + short.max((fallen - 3e-3) / 1e-3).clamp(-1.0, 10.0)
    }

    /// Cells that are elsewhere than at stock.
    pub(super) fn moved(&self, filling: &Filling) -> f64 {
        let pairs = filling.counts.iter().zip(&self.stock.counts);
        pairs.map(|(count, stock)| (count - stock).abs()).sum()
    }

    /// By how much limits are broken, each in its own unit; zero where all are kept.
    pub(super) fn broken(&self, filling: &Filling) -> f64 {
        let short = |side| (25.0 - clearance(filling, side)).max(0.0);
        let mut sum = short(Side::Left) + short(Side::Right);
        let asked = self.asks_for_a_turn();
        if !asked {
            sum += ((self.roll(filling) - self.roll(&self.stock)).abs() - 1.0).max(0.0);
        }
        for site in &self.needs.injured {
            sum += 20.0 * (self.rise(filling, *site).unwrap_or(0.0) - 0.02).max(0.0);
        }
        sum
    }

    /// Whether a goal turns the pelvis.
    pub(super) fn asks_for_a_turn(&self) -> bool {
        let turns = |want| matches!(want, Want::CorrectObliquity | Want::AccommodateObliquity);
        self.needs.goals.iter().any(|goal| turns(goal.want))
    }

    /// Degrees by which the right side is up.
    pub(super) fn roll(&self, filling: &Filling) -> f64 {
        filling.resting.pose[1].atan().to_degrees()
    }

    /// Degrees by which the front is turned up, less those at stock.
    pub(super) fn pitch(&self, filling: &Filling) -> f64 {
        let degrees = |filling: &Filling| filling.resting.pose[2].atan().to_degrees();
        degrees(filling) - degrees(&self.stock)
    }

    /// The share of the load on the left side.
    pub(super) fn left(&self, filling: &Filling) -> f64 {
        let regions = &filling.resting.regions;
        regions.side(Side::Left) / regions.total()
    }

    fn thighs(&self, filling: &Filling) -> f64 {
        let regions = &filling.resting.regions;
        regions.under_thighs() / regions.total()
    }

    /// By what share a site carries more than at stock.
    fn rise(&self, filling: &Filling, site: SiteName) -> Option<f64> {
        let surface = |filling| Quantity::Surface(site).value(filling);
        let (now, stock) = (surface(filling)?, surface(&self.stock)?);
        Some((now - stock) / stock.max(LITTLE))
    }

    /// The greatest rise at a site that is neither injured nor off-loaded.
    pub(super) fn greatest_rise(&self, filling: &Filling) -> f64 {
        let rises = SiteName::ALL.into_iter().filter_map(|site| self.rise(filling, site));
        rises.fold(0.0, f64::max)
    }

    /// The least clearance, mm.
    pub(super) fn least_clearance(&self, filling: &Filling) -> f64 {
        clearance(filling, Side::Left).min(clearance(filling, Side::Right))
    }

    /// Harm that nobody asked for: 1 for what may be had for a goal, more for more.
    pub(super) fn harm(&self, filling: &Filling) -> f64 {
        let beyond = |value: f64, free: f64, unit: f64| ((value - free).max(0.0) / unit).powi(2);
        let mut sum = beyond(self.pitch(filling).abs(), 1.0, 0.7);
        if !self.asks_for_a_turn() {
            sum += beyond((self.roll(filling) - self.roll(&self.stock)).abs(), 0.5, 0.5);
            sum += beyond((self.left(filling) - self.left(&self.stock)).abs(), 0.03, 0.03);
        }
        sum += beyond((self.thighs(filling) - self.thighs(&self.stock)).abs(), 0.03, 0.03);
        let rises = SiteName::ALL.into_iter().filter_map(|site| self.rise(filling, site));
        sum += rises.map(|rise| 0.5 * beyond(rise, 0.10, 0.10)).sum::<f64>();
        sum + beyond(-self.least_clearance(filling), -28.0, 1.5)
    }
}

/// The clearance under the seat bone of a side, mm.
pub(super) fn clearance(filling: &Filling, side: Side) -> f64 {
    Quantity::Clearance(side).value(filling).map_or(0.0, |metres| metres * 1e3)
}

fn off_aims(aims: &[crate::goals::aims::Aim], filling: &Filling) -> f64 {
    let off = |aim: &crate::goals::aims::Aim| {
        aim.quantity.value(filling).map_or(0.0, |value| aim.off(value).abs())
    };
    aims.iter().filter(|aim| !aim.goes_with()).map(off).fold(0.0, f64::max)
}
