//! What can be reached at all: the best counts that a slow search finds, which knows no slopes and
//! no program, only forward solves.
//!
//! From several starts, each compartment and each pair of compartments is changed by some cells,
//! ever fewer, until nothing is better. What is better is what the decision says: limits, then the
//! goals in order, then harm and cells.

use crate::goals::aims::Filling;
use crate::tests::audit::scores::Judging;

/// Cells by which counts are changed, in turn.
const STEPS: [f64; 4] = [8.0, 4.0, 2.0, 1.0];
/// What a goal may lose for the next, in tolerances.
const GIVE: f64 = 0.25;
/// Cells of an adult's cushion that weigh as much as one unit of harm.
const CELLS: f64 = 20.0;

/// How good counts are; smaller is better, the first difference decides.
#[derive(Clone, Debug, PartialEq, PartialOrd)]
pub(super) struct Worth {
    /// Limits, then goals, in steps of what may be lost.
    ranks: Vec<u32>,
    /// Harm and cells.
    rest: f64,
}

/// How good a filling is.
pub(super) fn worth(judging: &Judging<'_>, filling: &Filling) -> Worth {
    let mut ranks = vec![(judging.broken(filling) / 0.05) as u32];
    let off = judging.off(filling).into_iter().flatten();
    ranks.extend(off.map(|off| ((off - 0.5).max(0.0) / GIVE) as u32));
    let adult = judging.stock.counts.iter().sum::<f64>() / 300.0;
    let cells = judging.moved(filling) / (CELLS * adult.min(1.0));
    Worth { ranks, rest: judging.harm(filling) + cells }
}

/// The best filling that is found from some starts.
pub(super) fn reach(judging: &Judging<'_>, starts: &[Vec<f64>]) -> Option<Filling> {
    let found = starts.iter().filter_map(|start| from(judging, start));
    let scored = found.map(|filling| (worth(judging, &filling), filling));
    scored.reduce(|best, next| if next.0 < best.0 { next } else { best }).map(|best| best.1)
}

fn from(judging: &Judging<'_>, start: &[f64]) -> Option<Filling> {
    let mut best = judging.filling(start, None)?;
    let mut least = worth(judging, &best);
    for step in STEPS {
        // A round without a find ends the step.
        loop {
            let before = least.clone();
            for change in changes(best.counts.len(), step) {
                let Some(next) = changed(judging, &best, &change) else { continue };
                let score = worth(judging, &next);
                if score < least {
                    (best, least) = (next, score);
                }
            }
            if least == before {
                break;
            }
        }
    }
    Some(best)
}

/// One compartment more or less, and one for another.
fn changes(n: usize, step: f64) -> Vec<Vec<(usize, f64)>> {
    let mut all = Vec::new();
    for at in 0..n {
        all.extend([step, -step].map(|by| vec![(at, by)]));
        for other in 0..n {
            if other != at {
                all.push(vec![(at, step), (other, -step)]);
            }
            if other > at {
                all.extend([step, -step].map(|by| vec![(at, by), (other, by)]));
            }
        }
    }
    all
}

fn changed(judging: &Judging<'_>, from: &Filling, change: &[(usize, f64)]) -> Option<Filling> {
    let mut counts = from.counts.clone();
    for (at, by) in change {
        counts[*at] += by;
    }
    let bounds = judging.cushion.pattern().indices().map(|ix| judging.cushion.stock()[ix].cells);
    let within = bounds.zip(&counts).all(|(cells, count)| {
        (f64::from(cells.low) / 2.0..=f64::from(cells.high.max(cells.stock))).contains(count)
    });
    within.then(|| judging.filling(&counts, Some(from)))?
}
