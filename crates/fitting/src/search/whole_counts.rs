//! Whole cells: the best whole counts around an answer that is not whole.

use crate::goals::aims::{Filling, Slopes};
use crate::search::side_by_side::side_by_side;
use crate::search::steps::{LinearAim, Score, Search};

/// Candidates that are solved anew in each round.
const SOLVED: usize = 6;
/// Rounds of looking at neighbours; some two do.
const MOST_ROUNDS: usize = 6;

/// Compartments that are rounded both ways, the others to the nearest: two to the tenth are a
/// thousand candidates, which straight lines sort in no time.
const BOTH_WAYS: usize = 10;
/// Compartments in which a neighbour differs at most: enough to move a cell from one to another and
/// to make up for it in a third; four would be many times as many.
const CHANGED: u32 = 3;

impl Search<'_> {
    /// The best whole counts around a filling: first among the counts next to it, then by
    /// neighbours with a cell more or less in up to three compartments, until none is better.
    ///
    /// None where nothing near it comes to rest.
    pub(crate) fn best_whole_counts(
        &self,
        best: &Filling,
        slopes: Slopes,
    ) -> Option<(Filling, Slopes)> {
        let mut slopes = slopes;
        let lines = self.linear_aims(best, &slopes);
        let mut candidates = self.around(&best.counts);
        candidates.sort_by_cached_key(|counts| Ordered(self.guess(&best.counts, &lines, counts)));
        let all = self.solved(&candidates[..candidates.len().min(SOLVED)], best);
        slopes = self.learnt(slopes, best, &all);
        let mut found = self.best_of(all)?;
        let mut fresh = false;
        for _ in 0..MOST_ROUNDS {
            let lines = self.linear_aims(&found.1, &slopes);
            let mut near: Vec<(Score, Vec<f64>)> = (self.neighbours(&found.1.counts).into_iter())
                .map(|counts| (self.guess(&found.1.counts, &lines, &counts), counts))
                .filter(|(score, _)| *score < found.0)
                .collect();
            near.sort_by_cached_key(|(score, _)| Ordered(score.clone()));
            near.truncate(SOLVED);
            let near: Vec<Vec<f64>> = near.into_iter().map(|(_, counts)| counts).collect();
            let all = self.solved(&near, &found.1);
            slopes = self.learnt(slopes, &found.1, &all);
            match self.best_of(all) {
                Some(next) if next.0 < found.0 => (found, fresh) = (next, false),
                _ if fresh => break,
                _ => (slopes, fresh) = (self.slopes(&found.1)?, true),
            }
        }
        Some((found.1, slopes))
    }

    /// Counts solved anew, as far as the client comes to rest on them.
    fn solved(&self, all: &[Vec<f64>], near: &Filling) -> Vec<Filling> {
        let solved = side_by_side(all, |counts| self.filled(counts, Some(near)));
        solved.into_iter().flatten().collect()
    }

    /// Slopes corrected by what was found near a filling, the best of it last.
    fn learnt(&self, slopes: Slopes, from: &Filling, all: &[Filling]) -> Slopes {
        all.iter().rev().fold(slopes, |slopes, to| self.corrected(&slopes, [from, to], from))
    }

    /// The best of some fillings.
    fn best_of(&self, all: Vec<Filling>) -> Option<(Score, Filling)> {
        let scored = all.into_iter().map(|filling| (self.score(&filling), filling));
        scored.reduce(|best, next| if next.0 < best.0 { next } else { best })
    }

    /// The score that straight lines make expect.
    fn guess(&self, from: &[f64], lines: &[LinearAim<'_>], counts: &[f64]) -> Score {
        let offs = lines.iter().map(|LinearAim { aim, value, slope, .. }| {
            let changes = counts.iter().zip(from).zip(slope);
            let by: f64 = changes.map(|((to, from), slope)| slope * (to - from)).sum();
            (aim.rank, aim.off(value + by))
        });
        self.scored(offs, counts)
    }

    /// All whole counts next to counts: the one below and the one above of each compartment, of
    /// the first ten where there are more.
    fn around(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let mut all = vec![counts.iter().map(|count| count.round()).collect::<Vec<f64>>()];
        for at in 0..counts.len().min(BOTH_WAYS) {
            let near = [counts[at].floor(), counts[at].ceil()];
            let whole = near.map(|count| count.clamp(self.bounds[at][0], self.bounds[at][1]));
            all = all
                .into_iter()
                .flat_map(|counts| {
                    whole.map(|count| {
                        let mut next = counts.clone();
                        next[at] = count;
                        next
                    })
                })
                .collect();
            all.dedup();
        }
        all
    }

    /// Counts with one cell more or one less in up to three compartments.
    fn neighbours(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let mut all = Vec::new();
        self.change_from(0, CHANGED, counts, &mut all);
        all.retain(|next| next != counts);
        all
    }

    /// Adds all counts with changes in up to `left` of the compartments from one on.
    fn change_from(&self, first: usize, left: u32, counts: &[f64], all: &mut Vec<Vec<f64>>) {
        all.push(counts.to_vec());
        if left == 0 {
            return;
        }
        for at in first..counts.len() {
            for by in [1.0, -1.0] {
                let [least, most] = self.bounds[at];
                let count = counts[at] + by;
                if (least..=most).contains(&count) {
                    let mut next = counts.to_vec();
                    next[at] = count;
                    self.change_from(at + 1, left - 1, &next, all);
                }
            }
        }
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
