//! What counts would do under a client, with the spread that comes from what is not known.

use std::sync::OnceLock;

use case::{
    BodyError, Client, PredictedCompartment, PredictedOutcome, PredictedSeat, PredictedSite,
    Prediction, Sides, Spread,
};
use cushion::{Length, Mass, Pattern, Pressure, Side};
use mechanics::{Outcome, Rest, Resting, SiteName, Stop};

use crate::goals::aims::real;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{
    Answer, ClientOnCushion, MeshedCushion, has_numbers, index_of,
};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Unknown};
use crate::search::side_by_side::beside;

/// What is known of counts before they are predicted.
#[derive(Default)]
pub(crate) struct AlreadySolved {
    /// The answer on the fine mesh.
    pub(crate) answer: Option<Answer>,
    /// The spread.
    pub(crate) ends: Option<Ends>,
}

/// Answers for like counts under the same assumptions, at which searches begin.
#[derive(Clone, Copy, Default)]
pub(crate) struct Near<'a> {
    /// On the fine mesh.
    pub(crate) fine: Option<&'a Resting>,
    /// On the mesh that the spread comes from.
    pub(crate) rough: Option<&'a Resting>,
}

/// A client on a cushion, on a fine and on a rough mesh: the fine one gives the numbers, the
/// rough one their spread.
pub(crate) struct Predictor<'c> {
    cushion: &'c PreparedCushion,
    /// Made when its numbers are asked for.
    fine: OnceLock<ClientOnCushion<'c>>,
    rough: ClientOnCushion<'c>,
}

impl<'c> Predictor<'c> {
    /// Puts a client over a cushion.
    ///
    /// # Errors
    ///
    /// Returns what in the client's measures is no body's.
    pub(crate) fn new(
        cushion: &'c PreparedCushion,
        setting: &Assumptions,
        stop: Stop<'c>,
    ) -> Result<Self, BodyError> {
        Self::spreading_on(cushion.rough(), cushion, setting, stop)
    }

    /// The same with spreads from another mesh.
    ///
    /// # Errors
    ///
    /// As [`Self::new`].
    pub(crate) fn spreading_on(
        rough: &'c MeshedCushion,
        cushion: &'c PreparedCushion,
        setting: &Assumptions,
        stop: Stop<'c>,
    ) -> Result<Self, BodyError> {
        let rough = ClientOnCushion::new(rough, setting.clone(), stop)?;
        Ok(Self { cushion, fine: OnceLock::new(), rough })
    }

    /// Predicts what counts would do, one for each compartment in the pattern's order.
    pub(crate) fn predict(
        &self,
        pattern: &Pattern,
        counts: &[u32],
        known: AlreadySolved,
    ) -> (Prediction, Answer) {
        let real = real(counts);
        let is_new = known.answer.is_none() && known.ends.is_none();
        let known = if is_new { self.verified(&real, Near::default(), None) } else { known };
        let answer = known.answer.unwrap_or_else(|| self.fine().rest(&real, None));
        let outcome = outcome_of(&answer.rest);
        let load = self.fine().body().load().weight.to_n();
        let evidence = &answer.rest.evidence;
        let [force, roll, pitch] = evidence.pose_residual.map(f64::abs);
        let residual = (evidence.sheet_residual + force).max((roll + pitch) * 10.0) / load;
        let seated = answer.resting().filter(|_| has_numbers(&answer.rest)).map(|resting| {
            let central = Values::of(self.fine(), resting);
            let spread = known.ends.unwrap_or_else(|| self.spread(&real));
            seat(pattern, counts, self.fine(), resting, &central, &spread)
        });
        (Prediction { outcome, seated, residual }, answer)
    }

    /// How far the values may lie below and above, from runs over the ranges on the rough mesh.
    pub(crate) fn spread(&self, counts: &[f64]) -> Ends {
        self.ends(self.no_ends(counts, None), |_| true)
    }

    /// The same of all but the lean, which is a quarter of the work less.
    pub(crate) fn spread_but_lean(&self, counts: &[f64]) -> Ends {
        self.ends(self.no_ends(counts, None), |unknown| !unknown.leans_aside())
    }

    /// The usual answer without its ends, from one for like counts.
    fn no_ends(&self, counts: &[f64], near: Option<&Resting>) -> Ends {
        let usual = self.rough.rest_to_compare(counts, near).rest.resting;
        Ends { usual: usual.map(|resting| (counts.to_vec(), resting)), ..Ends::default() }
    }

    /// Ends with what comes from some of the unknowns; as they are where nobody comes to rest.
    fn ends(&self, known: Ends, of: impl Fn(Unknown) -> bool) -> Ends {
        self.ends_beside(|| (), known, of).1
    }

    /// The same beside something that takes long.
    fn ends_beside<T>(
        &self,
        long: impl FnOnce() -> T,
        known: Ends,
        of: impl Fn(Unknown) -> bool,
    ) -> (T, Ends) {
        let Some((counts, resting)) = &known.usual else { return (long(), known) };
        let usual = Values::of(&self.rough, resting).0;
        let questions: Vec<(Unknown, f64)> = (Unknown::ALL.into_iter().filter(|own| of(*own)))
            .flat_map(|own| [(own, -1.0), (own, 1.0)])
            .collect();
        let (done, answers) =
            beside(long, &questions, |question| self.values_at(question, counts, resting));
        let mut squares = known.squares(usual.len());
        for (both, answers) in questions.chunks(2).zip(answers.chunks(2)) {
            let unknown = both[0].0;
            let counted = |at: usize| at == ROLL || !unknown.leans_aside();
            for at in (0..usual.len()).filter(|at| counted(*at)) {
                let changes = answers.iter().flatten().map(|values| values.0[at] - usual[at]);
                let [below, above] = changes
                    .fold([0.0f64; 2], |far, change| [far[0].min(change), far[1].max(change)]);
                squares[0][at] += below * below;
                squares[1][at] += above * above;
            }
        }
        let [below, above] = squares.map(|sums| sums.into_iter().map(f64::sqrt).collect());
        (done, Ends { below, above, ..known })
    }

    /// The values where one unknown is at an end of its range; none where that changes nothing, or
    /// has no numbers.
    fn values_at(
        &self,
        (unknown, place): &(Unknown, f64),
        counts: &[f64],
        near: &Resting,
    ) -> Option<Values> {
        let moved = unknown.moved(&self.rough.assumptions, *place);
        if moved == self.rough.assumptions {
            return None;
        }
        let seated = self.rough.under(moved).ok()?;
        let answer = seated.rest_to_compare(counts, Some(near));
        Some(Values::of(&seated, answer.resting()?))
    }

    /// The answer of counts on the fine mesh and their spread, from answers that are near: with
    /// `but_lean`, from that of other counts or of these without the lean.
    pub(crate) fn verified(
        &self,
        counts: &[f64],
        near: Near<'_>,
        but_lean: Option<&Ends>,
    ) -> AlreadySolved {
        let fine = || self.fine().rest(counts, near.fine);
        let (answer, ends) = match but_lean {
            Some(known) if known.is_of(counts) => {
                self.ends_beside(fine, known.clone(), Unknown::leans_aside)
            }
            like => {
                let usual = like.and_then(|like| like.usual.as_ref()).map(|(_, resting)| resting);
                let known = self.no_ends(counts, near.rough.or(usual));
                self.ends_beside(fine, known, |_| true)
            }
        };
        AlreadySolved { answer: Some(answer), ends: Some(ends) }
    }

    /// The client over the fine mesh.
    pub(crate) fn fine(&self) -> &ClientOnCushion<'c> {
        let ClientOnCushion { assumptions, stop, .. } = &self.rough;
        let over = || ClientOnCushion::new(self.cushion.fine(), assumptions.clone(), *stop);
        self.fine.get_or_init(|| over().expect("who lies over the rough mesh lies over this one"))
    }
}

/// The spread of a cushion's stock fill under a client, of all but the lean; none where the client is
/// nobody's body, or does not come to rest.
pub(crate) fn spread_of_stock(
    cushion: &PreparedCushion,
    client: &Client,
    weight: Mass,
    stop: Stop<'_>,
) -> Option<Ends> {
    let assumptions = assumptions_of(client, cushion, weight, stop).ok()?;
    let roughest = cushion.roughest();
    let predictor = Predictor::spreading_on(roughest, cushion, &assumptions, stop).ok()?;
    let counts = cushion.stock().compartments.iter().map(|own| f64::from(own.cells.stock));
    let ends = predictor.spread_but_lean(&counts.collect::<Vec<f64>>());
    ends.usual.is_some().then_some(Ends { usual: None, ..ends })
}

/// How a search ended, in the word of a prediction.
pub(crate) fn outcome_of(rest: &Rest) -> PredictedOutcome {
    match rest.outcome {
        Outcome::AtRest => PredictedOutcome::AtRest,
        Outcome::Bottomed => PredictedOutcome::Bottomed,
        Outcome::LeansAway => PredictedOutcome::LeansAway,
        Outcome::Tipping => PredictedOutcome::Tipping,
        // Who told the search to stop throws the answer away.
        Outcome::OutOfSteps | Outcome::Stopped => PredictedOutcome::OutOfSteps,
    }
}

/// How far values may lie below and above what is expected.
#[derive(Clone, Debug, Default)]
pub(crate) struct Ends {
    below: Vec<f64>,
    above: Vec<f64>,
    /// The counts, and the usual answer for them on the rough mesh.
    usual: Option<(Vec<f64>, Resting)>,
}

impl Ends {
    fn is_of(&self, counts: &[f64]) -> bool {
        self.usual.as_ref().is_some_and(|(own, _)| own == counts)
    }

    /// The squares of both ends of so many values; zero where nothing is known.
    fn squares(&self, count: usize) -> [Vec<f64>; 2] {
        [&self.below, &self.above].map(|ends| {
            let mut squares: Vec<f64> = ends.iter().map(|part| part * part).collect();
            squares.resize(count, 0.0);
            squares
        })
    }

    fn around(&self, at: usize, central: f64) -> [f64; 3] {
        let part = |ends: &[f64]| ends.get(at).copied().unwrap_or(0.0);
        [central, central - part(&self.below), central + part(&self.above)]
    }

    /// Ends that lie between others: the sum of theirs, each times its share.
    pub(crate) fn between(others: &[(f64, Ends)]) -> Self {
        let mean = |of: fn(&Self) -> &[f64]| -> Vec<f64> {
            let count = others.first().map_or(0, |(_, ends)| of(ends).len());
            let at = |at| others.iter().map(|(share, ends)| share * of(ends)[at]).sum();
            (0..count).map(at).collect()
        };
        let [below, above] = [mean(|ends| &ends.below), mean(|ends| &ends.above)];
        Self { below, above, usual: None }
    }

    /// The part by which the clearance under the seat bone of a side may be less, m.
    pub(crate) fn clearance_below(&self, side: Side) -> f64 {
        self.below.get(usize::from(side == Side::Right)).copied().unwrap_or(0.0)
    }
}

/// The values that have a spread, in a fixed order: clearance left and right, mean and greatest
/// surface pressure, roll and pitch, then surface pressure by site, fill pressure by compartment, and
/// clearance by site.
struct Values(Vec<f64>);

/// Where in [`Values`] roll and pitch are.
const ROLL: usize = 4;
const PITCH: usize = 5;
/// Where in [`Values`] the sites begin.
const SITES: usize = 6;

impl Values {
    fn of(seated: &ClientOnCushion<'_>, resting: &Resting) -> Self {
        let clearance = |side| clearance(seated, resting, side);
        let load = seated.body().load().weight.to_n();
        let mut values = vec![
            clearance(Side::Left),
            clearance(Side::Right),
            load / resting.contact_area.to_m2(),
            resting.greatest_disc(seated.model()).1.to_pa(),
            libm::atan(resting.pose[1]).to_degrees(),
            libm::atan(resting.pose[2]).to_degrees(),
        ];
        values.extend(resting.sites.iter().map(|site| site.pressure.to_pa()));
        values.extend(resting.compartments.iter().map(|compartment| compartment.pressure.to_pa()));
        values.extend(resting.sites.iter().map(|site| site.clearance.to_m()));
        Self(values)
    }
}

/// Clearance under a seat bone, m.
pub(crate) fn clearance(seated: &ClientOnCushion<'_>, resting: &Resting, side: Side) -> f64 {
    let at = index_of(seated.body(), SiteName::SeatBone(side));
    at.map_or(0.0, |at| resting.sites[at].clearance.to_m())
}

fn seat(
    pattern: &Pattern,
    counts: &[u32],
    seated: &ClientOnCushion<'_>,
    resting: &Resting,
    central: &Values,
    ends: &Ends,
) -> PredictedSeat {
    let around = |at: usize| ends.around(at, central.0[at]);
    let lengths = |at| spread(around(at), Length::from_m);
    // No pressure is below none.
    let pressures = |at| spread(around(at).map(|value| value.max(0.0)), Pressure::from_pa);
    let under = |at: usize| Length::from_m(central.0[at]);
    let (lower_side, lower_by) =
        case::lower_at_seat_bones(Sides { left: under(0), right: under(1) });
    let immersion = |side| {
        let at = index_of(seated.body(), SiteName::SeatBone(side));
        at.map_or(Length::ZERO, |at| resting.sites[at].immersion)
    };
    let regions = resting.regions;
    let (sites, compartments) = (resting.sites.len(), resting.compartments.len());
    let degrees = |per_radian: f64| per_radian.to_radians();
    PredictedSeat {
        roll_deg: spread(around(ROLL), |degrees| degrees),
        pitch_deg: spread(around(PITCH), |degrees| degrees),
        lower_side,
        lower_by,
        clearance: Sides { left: lengths(0), right: lengths(1) },
        immersion: Sides { left: immersion(Side::Left), right: immersion(Side::Right) },
        contact_area: resting.contact_area,
        mean_surface: pressures(2),
        greatest_surface: pressures(3),
        compartments: (pattern.indices().zip(counts).enumerate())
            .map(|(at, (ix, cells))| PredictedCompartment {
                id: pattern[ix].id.clone(),
                number: pattern[ix].number,
                cells: *cells,
                fill: pressures(SITES + sites + at),
                load: resting.compartments[at].load,
                slack: resting.compartments[at].slack,
                bottomed: resting.compartments[at].bottomed,
            })
            .collect(),
        sites: (resting.sites.iter().enumerate())
            .map(|(at, site)| PredictedSite {
                site: site.site.name,
                surface: pressures(SITES + at),
                clearance: lengths(SITES + sites + compartments + at),
            })
            .collect(),
        pelvis_load: regions.pelvis,
        thigh_load: regions.thighs,
        roll_stiffness: degrees(resting.stiffness.roll),
        trunk_stiffness: degrees(resting.stiffness.trunk),
    }
}

fn spread<T>([central, low, high]: [f64; 3], of: impl Fn(f64) -> T) -> Spread<T> {
    Spread { central: of(central), low: of(low), high: of(high) }
}
