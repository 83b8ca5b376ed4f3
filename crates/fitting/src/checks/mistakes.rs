//! The fault finder: which mistake in the set-up would explain what was found.
//!
//! Each mistake is solved forward as if it had been made, the unknowns estimated anew, and what
//! still does not fit is compared. How often each mistake is made is a practice judgement.

use cushion::{CompartmentIx, Length, Pattern};

use crate::checks::adjust::{AdjustInput, AdjustRefusal, checked_rounds};
use crate::checks::estimate::{Round, estimate};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::MeshedCushion;
use crate::prediction::unknowns::Assumptions;

/// One explanation.
#[derive(Clone, Debug, PartialEq)]
pub struct Mistake {
    /// What may have happened, and how to look.
    pub words: String,
    /// How likely it is among those that were looked at, from 0 to 1.
    pub likelihood: f64,
}

/// The part of a compartment's cells that is missing where it was filled short.
const SHORT: f64 = 0.25;
/// What is left of the volume of leaky cells.
const LEAKY: f64 = 0.88;
/// How far forward of the right place a client sits who slid or was not brought back, m.
const FORWARD: f64 = 0.040;
/// How far a sling sags where it was not measured, mm.
const SAG: f64 = 20.0;

/// What is tried: a mistake with everything that it changes.
struct Trial {
    words: String,
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

/// Where to look in the set-up when something is wrong, what is quickest seen first.
pub(crate) fn looks() -> Vec<String> {
    let looks = [
        "The seat under the cushion: does it sag, does anything lie on it?",
        "Which way the cushion lies: FRONT to the front, TOP up.",
        "Left and right: does each numbered compartment hold what the card says?",
        "The client: was the pelvis fully back?",
        "Leaks: press a handful of cells; soft ones are replaced one for one.",
        "Lost cells: count the compartments under the seat bones.",
    ];
    looks.map(str::to_owned).to_vec()
}

/// Ranks what would explain all that was found, the likeliest first; that nothing is wrong is one
/// of them.
///
/// # Errors
///
/// As [`crate::adjust()`].
pub fn mistakes(input: &AdjustInput<'_>) -> Result<Vec<Mistake>, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    let rounds = checked_rounds(input)?;
    let weighing = input.client.latest_weighing().ok_or(AdjustRefusal::NoWeight)?;
    let usual = assumptions_of(input.client, input.cushion, weighing.weight, input.stop)?;
    let meshed = input.cushion.coarse();
    let turned = meshed.turned_round(pattern.size().depth());
    let mut scored = Vec::new();
    for trial in trials(input, pattern, &usual) {
        let really: Vec<Round> = rounds.iter().map(|round| trial.really(pattern, round)).collect();
        let cushion: &MeshedCushion = if trial.turned { &turned } else { meshed };
        let learnt = estimate(cushion, pattern, &trial.assumptions, &really, input.stop)?;
        scored.push((trial.words, trial.often.ln() - learnt.disagreement / 2.0));
    }
    let best = scored.iter().map(|trial| trial.1).fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = scored.iter().map(|trial| (trial.1 - best).exp()).sum();
    let share =
        |(words, score): (String, f64)| Mistake { words, likelihood: (score - best).exp() / sum };
    let mut ranked: Vec<Mistake> = scored.into_iter().map(share).collect();
    ranked.sort_by(|a, b| b.likelihood.total_cmp(&a.likelihood));
    Ok(ranked)
}

fn trials(input: &AdjustInput<'_>, pattern: &Pattern, usual: &Assumptions) -> Vec<Trial> {
    let trial = |words: &str, often: f64| Trial {
        words: words.to_owned(),
        often,
        assumptions: usual.clone(),
        turned: false,
        counts: Counts::AsWritten,
    };
    let mut forward = usual.clone();
    let bones = forward.sitter.seat_bones_forward.map_or(0.125, Length::to_m);
    forward.sitter.seat_bones_forward = Some(Length::from_m((bones + FORWARD).min(0.300)));
    let chair = &input.client.chair;
    let sag = chair.sling_sag.unwrap_or(Length::from_mm(SAG));
    let width = chair.inside_width.unwrap_or(pattern.size().width());
    let sling = chair.base == Some(case::Base::Sling);
    let mut all = vec![
        trial("Nothing is wrong with the set-up.", 0.45),
        Trial {
            counts: Counts::Mirrored,
            ..trial(
                "Left and right were swapped when it was filled. Compare the numbers at the openings with the card.",
                0.12,
            )
        },
        Trial {
            turned: true,
            ..trial("The cushion lies turned round. Look for FRONT on the tag.", 0.08)
        },
        Trial {
            assumptions: Assumptions { cells: LEAKY * usual.cells, ..usual.clone() },
            ..trial("Many cells leak. Press a handful: soft ones are replaced one for one.", 0.06)
        },
        Trial {
            assumptions: forward,
            ..trial(
                "The client sits some 40 mm too far forward. Bring the pelvis fully back and check again.",
                0.12,
            )
        },
        Trial {
            assumptions: Assumptions { sag: Some([sag, width]), ..usual.clone() },
            ..trial(
                "The seat under the cushion sags. Put in a solid seat and check again.",
                if sling { 0.20 } else { 0.04 },
            )
        },
    ];
    let short = 0.15 / pattern.compartments().len() as f64;
    for ix in pattern.indices() {
        let compartment = &pattern[ix];
        let words = format!(
            "Compartment {} ({}) is about a quarter short of cells. Count it.",
            compartment.number,
            compartment.id.as_str()
        );
        all.push(Trial { counts: Counts::Short(ix), ..trial(&words, short) });
    }
    all
}

impl Trial {
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
