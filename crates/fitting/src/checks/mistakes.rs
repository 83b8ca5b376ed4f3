//! The fault finder: which mistake in the set-up would explain what was found.
//!
//! Each mistake is solved forward as if it had been made, the unknowns estimated anew, and what
//! still does not fit is compared. How often each mistake is made is a practice judgement.

use case::{AdjustRefusal, Mistake};
use cushion::{CompartmentIx, Length, Pattern};

use crate::checks::adjust::{AdjustInput, checked_rounds};
use crate::checks::estimate::{Around, EstimateMeshes, Round, estimate_like};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::MeshedCushion;
use crate::prediction::unknowns::{Assumptions, Seat};
use crate::search::side_by_side::side_by_side;

/// One explanation.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// What may have happened.
    pub mistake: Mistake,
    /// How likely it is among those that were looked at, from 0 to 1.
    pub likelihood: f64,
}

/// The part of a compartment's cells that is missing where it was filled short.
const SHORT: f64 = 0.25;
/// What is left of the volume of leaky cells.
const LEAKY: f64 = 0.88;
/// How far forward of the right place a client sits who slid or was not brought back, m.
const FORWARD: f64 = 0.040;
/// How much farther a seat sags than is believed, mm.
const SAG: f64 = 20.0;

/// What is tried: a mistake with everything that it changes.
struct Trial {
    mistake: Mistake,
    /// How often it is made, against the others: a practice judgement.
    often: f64,
    assumptions: Assumptions,
    turned: bool,
    /// What is really in the compartments, as shares of what is believed, by index; or mirrored.
    counts: Counts,
}

enum Counts {
    AsWritten,
    Mirrored,
    Short(CompartmentIx),
}

/// Ranks what would explain all that was found, the likeliest first; that nothing is wrong is one
/// of them.
///
/// # Errors
///
/// As [`crate::adjust()`].
pub fn mistakes(input: &AdjustInput<'_>) -> Result<Vec<Explanation>, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    let rounds = checked_rounds(input)?;
    let weighing = input.client.latest_weighing().ok_or(AdjustRefusal::NoWeight)?;
    let usual = assumptions_of(input.client, input.cushion, weighing.weight, input.stop)?;
    // What a rough mesh is off by is nearly the same for all: only differences are compared.
    let meshed = input.cushion.roughest();
    let turned = meshed.turned_round(pattern.size().depth());
    let score = |trial: &Trial, like: Option<&Around>| {
        let really: Vec<Round> = rounds.iter().map(|round| trial.really(pattern, round)).collect();
        let cushion: &MeshedCushion = if trial.turned { &turned } else { meshed };
        let meshes = EstimateMeshes { compared: cushion, tried: cushion };
        let (learnt, around) =
            estimate_like(meshes, pattern, &trial.assumptions, &really, like, input.stop)?;
        let score = libm::log(trial.often) - learnt.disagreement / 2.0;
        Ok(((trial.mistake.clone(), score), around))
    };
    let (nothing, others) = trials(input, pattern, &usual);
    let (first, around) = score(&nothing, None)?;
    let others = side_by_side(&others, |trial| {
        let like = around.as_ref().filter(|_| trial.is_alike());
        score(trial, like).map(|(scored, _)| scored)
    });
    let scored = [Ok(first)].into_iter().chain(others);
    let scored: Vec<(Mistake, f64)> = scored.collect::<Result<_, AdjustRefusal>>()?;
    let best = scored.iter().map(|trial| trial.1).fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = scored.iter().map(|trial| libm::exp(trial.1 - best)).sum();
    let share = |(mistake, score): (Mistake, f64)| Explanation {
        mistake,
        likelihood: libm::exp(score - best) / sum,
    };
    let mut ranked: Vec<Explanation> = scored.into_iter().map(share).collect();
    ranked.sort_by(|a, b| b.likelihood.total_cmp(&a.likelihood));
    Ok(ranked)
}

/// That nothing is wrong, and all mistakes.
fn trials(input: &AdjustInput<'_>, pattern: &Pattern, usual: &Assumptions) -> (Trial, Vec<Trial>) {
    let trial = |mistake: Mistake, often: f64| Trial {
        mistake,
        often,
        assumptions: usual.clone(),
        turned: false,
        counts: Counts::AsWritten,
    };
    let mut forward = usual.clone();
    let bones = forward.sitter.seat_bones_forward.map_or(0.125, Length::to_m);
    forward.sitter.seat_bones_forward = Some(Length::from_m((bones + FORWARD).min(0.300)));
    let sling = input.client.chair.base == Some(case::Base::Sling);
    let leaky = Assumptions { cells: LEAKY * usual.cells, ..usual.clone() };
    // Beyond what is believed already: a sling that was measured sags by that in all trials.
    let sag = usual.seat.sag + Length::from_mm(SAG);
    let sagging = Assumptions { seat: Seat { sag, ..usual.seat }, ..usual.clone() };
    let mut all = vec![
        Trial { counts: Counts::Mirrored, ..trial(Mistake::Swapped, 0.12) },
        Trial { turned: true, ..trial(Mistake::TurnedRound, 0.08) },
        Trial { assumptions: leaky, ..trial(Mistake::Leaks, 0.06) },
        Trial { assumptions: forward, ..trial(Mistake::Forward(Length::from_m(FORWARD)), 0.12) },
        Trial { assumptions: sagging, ..trial(Mistake::Sag, if sling { 0.20 } else { 0.04 }) },
    ];
    let short = 0.15 / pattern.compartments().len() as f64;
    for ix in pattern.indices() {
        let (number, id) = (pattern[ix].number, pattern[ix].id.clone());
        let mistake = Mistake::Short { number, id };
        all.push(Trial { counts: Counts::Short(ix), ..trial(mistake, short) });
    }
    (trial(Mistake::None, 0.45), all)
}

impl Trial {
    /// Whether the unknowns do nearly what they do where nothing is wrong: not where left and right, or
    /// front and back, change places.
    fn is_alike(&self) -> bool {
        !self.turned && !matches!(self.counts, Counts::Mirrored)
    }

    /// A round with what would really be in the cushion.
    fn really(&self, pattern: &Pattern, round: &Round) -> Round {
        let counts = pattern.indices().zip(&round.counts).map(|(ix, count)| match self.counts {
            Counts::AsWritten => *count,
            Counts::Mirrored => {
                pattern.partner(ix).map_or(*count, |other| round.counts[other.index()])
            }
            Counts::Short(short) if short == ix => (1.0 - SHORT) * count,
            Counts::Short(_) => *count,
        });
        Round { counts: counts.collect(), checks: round.checks.clone() }
    }
}
