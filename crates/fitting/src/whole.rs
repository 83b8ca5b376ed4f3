//! Whole cells: the best whole counts around an answer that is not whole.

use crate::aims::{Slopes, State};
use crate::search::{Score, Search};

/// Candidates that are solved anew in each round.
const SOLVED: usize = 6;
/// Rounds of looking at neighbours; some two do.
const MOST_ROUNDS: usize = 6;

impl Search<'_> {
    /// The best whole counts around a filling: first among the counts next to it, then by
    /// neighbours of one cell more, one less, or one moved, until none is better.
    ///
    /// None where nothing near it comes to rest.
    pub(crate) fn whole(&self, best: &State) -> Option<State> {
        let slopes = self.slopes(best)?;
        let mut candidates = self.around(&best.counts);
        candidates.sort_by_cached_key(|counts| Ordered(self.guess(best, &slopes, counts)));
        let mut found = self.best_of(&candidates[..candidates.len().min(SOLVED)], best)?;
        for _ in 0..MOST_ROUNDS {
            let slopes = self.slopes(&found.1)?;
            let mut near: Vec<(Score, Vec<f64>)> = (self.neighbours(&found.1.counts).into_iter())
                .map(|counts| (self.guess(&found.1, &slopes, &counts), counts))
                .filter(|(score, _)| *score < found.0)
                .collect();
            near.sort_by_cached_key(|(score, _)| Ordered(score.clone()));
            near.truncate(SOLVED);
            let near: Vec<Vec<f64>> = near.into_iter().map(|(_, counts)| counts).collect();
            match self.best_of(&near, &found.1) {
                Some(next) if next.0 < found.0 => found = next,
                _ => break,
            }
        }
        Some(found.1)
    }

    /// The best of some counts, solved anew.
    fn best_of(&self, all: &[Vec<f64>], near: &State) -> Option<(Score, State)> {
        let solved = all.iter().filter_map(|counts| self.state(counts, Some(near)));
        let scored = solved.map(|state| (self.score(&state), state));
        scored.reduce(|best, next| if next.0 < best.0 { next } else { best })
    }

    /// The score that straight lines make expect.
    fn guess(&self, from: &State, slopes: &Slopes, counts: &[f64]) -> Score {
        let by: Vec<f64> = counts.iter().zip(&from.counts).map(|(to, from)| to - from).collect();
        let offs = self.aims.iter().map(|aim| {
            let value = aim.quantity.value(from).map(|value| {
                let slope = aim.quantity.slope(from, slopes);
                value + slope.iter().zip(&by).map(|(slope, by)| slope * by).sum::<f64>()
            });
            (aim.rank, value.map_or(0.0, |value| aim.off(value)))
        });
        self.scored(offs, counts)
    }

    /// All whole counts next to counts: the one below and the one above of each compartment, of
    /// the first ten where there are more.
    fn around(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let mut all = vec![counts.iter().map(|count| count.round()).collect::<Vec<f64>>()];
        for at in 0..counts.len().min(10) {
            let near = [counts[at].floor(), counts[at].ceil()];
            let whole = near.map(|count| count.clamp(self.bounds[at][0], self.bounds[at][1]));
            all = all
                .into_iter()
                .flat_map(|own| {
                    whole.map(|count| {
                        let mut next = own.clone();
                        next[at] = count;
                        next
                    })
                })
                .collect();
            all.dedup();
        }
        all
    }

    /// Counts with one cell more, one less, or one moved.
    fn neighbours(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let n = counts.len();
        let changed = |changes: &[(usize, f64)]| {
            let mut next = counts.to_vec();
            for (at, by) in changes {
                next[*at] += by;
                let [least, most] = self.bounds[*at];
                if next[*at] < least || next[*at] > most {
                    return None;
                }
            }
            Some(next)
        };
        let single = (0..n).flat_map(|at| [changed(&[(at, 1.0)]), changed(&[(at, -1.0)])]);
        let pairs = (0..n).flat_map(|a| (0..n).filter(move |b| *b != a).map(move |b| (a, b)));
        let moved = pairs.map(|(a, b)| changed(&[(a, 1.0), (b, -1.0)]));
        single.chain(moved).flatten().collect()
    }
}

/// A score as a key to sort by; scores hold no NaN.
#[derive(PartialEq)]
struct Ordered(Score);

impl Eq for Ordered {}

impl PartialOrd for Ordered {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ordered {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.partial_cmp(&other.0).unwrap_or(std::cmp::Ordering::Equal)
    }
}
