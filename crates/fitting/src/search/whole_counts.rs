//! Whole cells: the best whole counts around an answer that is not whole.

use crate::goals::aims::{Filling, Slopes};
use crate::search::program::LinearAim;
use crate::search::side_by_side::side_by_side;
use crate::search::steps::{Score, Search, largest_change};

/// Candidates that are solved anew in each round.
const SOLVED: usize = 6;
/// Cells by which no compartment may be off from where slopes were found, to be taken as found here: a
/// quarter of what they are found over.
const AS_THERE: f64 = 2.0;
/// Rounds of looking at neighbours; some two do.
const MOST_ROUNDS: usize = 6;

/// Compartments that are rounded both ways, the others to the nearest: two to the tenth are a
/// thousand candidates, which straight lines sort in no time.
const BOTH_WAYS: usize = 10;
/// Changes that are left out together where nothing is worse without them, in cells: up to this many.
const SMALL: u32 = 2;
/// Parts of the whole change that are tried.
const PARTS: [f64; 2] = [0.5, 0.75];
/// Tolerances that what is not firm may lose for fewer cells: less than its least step that counts.
const MAY_LOSE: f64 = 0.2;
/// Compartments in which a neighbour differs at most: enough to move a cell from one to another and
/// to make up for it in a third; four would be many times as many.
const CHANGED: u32 = 3;

impl Search<'_> {
    /// The best whole counts around a filling: first among the counts next to it, then by
    /// neighbours with a cell more or less in up to three compartments, until none is better. It is
    /// found beside others: its numbers are for comparing.
    ///
    /// None where nothing near it comes to rest.
    pub(crate) fn best_whole_counts(
        &self,
        best: &Filling,
        slopes: Slopes,
    ) -> Option<(Filling, Slopes)> {
        let mut slopes = slopes;
        let lines = self.both_lines(best, &slopes);
        let mut candidates = self.around(&best.counts);
        candidates.sort_by_cached_key(|counts| Ordered(self.guess(&best.counts, &lines, counts)));
        let all = self.solved(&candidates[..candidates.len().min(SOLVED)], best);
        slopes = self.learnt(slopes, best, &all);
        let mut found = self.best_of(all)?;
        let mut found_at = best.counts.clone();
        for _ in 0..MOST_ROUNDS {
            let lines = self.both_lines(&found.1, &slopes);
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
                Some(next) if next.0 < found.0 => found = next,
                _ if largest_change(&found.1.counts, &found_at) <= AS_THERE => break,
                _ => {
                    slopes = self.slopes(&found.1)?;
                    found_at.clone_from(&found.1.counts);
                }
            }
        }
        Some((found.1, slopes))
    }

    /// Counts nearer to home than a filling's that do as well but for what decides nothing; none where
    /// there are none.
    pub(crate) fn smaller(&self, whole: &Filling) -> Option<Filling> {
        let offs = self.offs(whole);
        let mut found: Option<Filling> = None;
        for _ in 0..MOST_ROUNDS {
            let best = found.as_ref().unwrap_or(whole);
            let rest = self.score(best).rest;
            let all = self.solved(&self.nearer_home(&best.counts), best);
            let as_good = all.into_iter().filter(|next| self.does_as_well(&offs, next));
            let scored = as_good.map(|next| (self.score(&next).rest, next));
            match scored.min_by(|a, b| a.0.total_cmp(&b.0)) {
                Some((less, next)) if less < rest => found = Some(next),
                _ => break,
            }
        }
        found
    }

    /// Counts solved anew, as far as the client comes to rest on them.
    fn solved(&self, all: &[Vec<f64>], near: &Filling) -> Vec<Filling> {
        let solved = side_by_side(all, |counts| self.filled_beside(counts, near));
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

    /// Whether a filling keeps what is firm as one that is so far off does, and the rest but for less than
    /// decides anything.
    pub(crate) fn does_as_well(&self, offs: &[f64], next: &Filling) -> bool {
        let pairs = offs.iter().zip(self.offs(next)).enumerate();
        pairs.into_iter().all(|(rank, (was, is))| {
            let may_lose = if rank < self.firm { 0.0 } else { MAY_LOSE };
            is <= was + may_lose
        })
    }

    /// Aims and harm as straight lines.
    fn both_lines(&self, filling: &Filling, slopes: &Slopes) -> [Vec<LinearAim<'_>>; 2] {
        [&self.aims, &self.harm].map(|aims| self.lines(aims, filling, slopes))
    }

    /// The score that straight lines make expect.
    fn guess(&self, from: &[f64], [aims, harm]: &[Vec<LinearAim<'_>>; 2], counts: &[f64]) -> Score {
        let off = |LinearAim { aim, value, slope }: &LinearAim<'_>| {
            let changes = counts.iter().zip(from).zip(slope);
            let by: f64 = changes.map(|((to, from), slope)| slope * (to - from)).sum();
            aim.off(value + by)
        };
        let ranked = aims.iter().map(|line| (line.aim.rank, off(line)));
        self.scored(ranked, harm.iter().map(off), counts)
    }

    /// All whole counts next to counts: the one below and the one above of each group, of the first
    /// ten where there are more.
    fn around(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let mut all = vec![counts.iter().map(|count| count.round()).collect::<Vec<f64>>()];
        for group in self.groups.iter().take(BOTH_WAYS) {
            let [least, most] = self.bounds[group[0]];
            let count = counts[group[0]];
            let whole = [count.floor(), count.ceil()].map(|count| count.clamp(least, most));
            let with = |counts: &Vec<f64>, count: f64| {
                let mut next = counts.clone();
                group.iter().for_each(|at| next[*at] = count);
                next
            };
            all = all.iter().flat_map(|counts| whole.map(|count| with(counts, count))).collect();
            all.dedup();
        }
        all
    }

    /// Counts nearer to home: with the smallest changes left out, one compartment as it was, or a part
    /// of the whole change.
    fn nearer_home(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let away: Vec<f64> =
            counts.iter().zip(&self.home).map(|(count, home)| count - home).collect();
        let with = |by: &dyn Fn(usize, f64) -> f64| -> Vec<f64> {
            let each = away.iter().zip(&self.home).enumerate();
            each.map(|(at, (away, home))| home + by(at, *away)).collect()
        };
        let mut all: Vec<Vec<f64>> = (1..=SMALL)
            .map(|most| with(&|_, away| if away.abs() <= f64::from(most) { 0.0 } else { away }))
            .collect();
        all.extend(PARTS.map(|part| with(&|_, away| (part * away).round())));
        all.extend(
            self.groups
                .iter()
                .map(|group| with(&|at, away| if group.contains(&at) { 0.0 } else { away })),
        );
        all.sort_by(|a, b| a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal));
        all.dedup();
        all.retain(|next| next != counts);
        all
    }

    /// Counts with one cell more or one less in up to three groups.
    fn neighbours(&self, counts: &[f64]) -> Vec<Vec<f64>> {
        let mut all = Vec::new();
        self.change_from(0, CHANGED, counts, &mut all);
        all.retain(|next| next != counts);
        all
    }

    /// Adds all counts with changes in up to `left` of the groups from one on.
    fn change_from(&self, first: usize, left: u32, counts: &[f64], all: &mut Vec<Vec<f64>>) {
        all.push(counts.to_vec());
        if left == 0 {
            return;
        }
        for (place, group) in self.groups.iter().enumerate().skip(first) {
            for by in [1.0, -1.0] {
                let mut next = counts.to_vec();
                group.iter().for_each(|at| next[*at] += by);
                let fits =
                    |at: &usize| (self.bounds[*at][0]..=self.bounds[*at][1]).contains(&next[*at]);
                if group.iter().all(fits) {
                    self.change_from(place + 1, left - 1, &next, all);
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
