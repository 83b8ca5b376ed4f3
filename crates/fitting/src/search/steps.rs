//! The search for counts: limits first, then goals in order, then as near to stock as can be.
//!
//! Each step is a small least-squares problem on what one cell does, within a region in which
//! that is trusted; it counts only if solving the mechanics anew says that it is better. Then
//! whole numbers are looked for around the answer, in the same way.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettings, DefaultSolver, IPSolver as _, NonnegativeConeT, SolverStatus,
};
use cushion::Pattern;
use mechanics::UnloadedCushion;

use crate::goals::aims::{Aim, Filling, Slopes, tops};
use crate::prediction::client_on_cushion::{ClientOnCushion, has_numbers};

/// Steps after which the search ends; some five do.
const MOST_STEPS: usize = 14;
/// A step below this many cells is none.
const SMALL_STEP: f64 = 0.2;
/// The share of the home counts within which straight lines are trusted at first. A judgement: a
/// step that turns out worse shrinks it, so it costs solutions rather than answers. So do the next
/// four.
const FIRST_REACH: f64 = 0.12;
/// The most that it grows to.
const MOST_REACH: f64 = 0.25;
/// The least: of a compartment of a hundred cells a cell and a half. Slopes are those of moves of
/// several cells, and whole cells are looked for after it.
const LEAST_REACH: f64 = 0.015;
/// By how much it grows after a step that was better.
const GROWTH: f64 = 1.6;
/// By how much it shrinks after one that was not.
const SHRINKING: f64 = 0.4;
/// Cells by which every compartment may change in a step, however small it is.
const LEAST_SPAN: f64 = 2.0;
/// The least room of an aim in the program, in tolerances: without any, rounding leaves no solution.
const LEAST_SLACK: f64 = 1e-6;
/// The weight of what does not count yet against what does: enough to tell changes apart that are
/// equally good, too little to shift what is decided.
const TIE_BREAK: f64 = 1e-7;
/// Differences below this many tolerances decide nothing.
const QUANTUM: f64 = 0.05;

/// What is searched, and where.
pub(crate) struct Search<'s> {
    /// The client on the mesh on which counts are solved.
    pub(crate) solved_on: &'s ClientOnCushion<'s>,
    /// The same on the mesh on which moves are tried: they are differences, which need less.
    pub(crate) tried_on: &'s ClientOnCushion<'s>,
    pub(crate) pattern: &'s Pattern,
    pub(crate) unloaded: &'s UnloadedCushion,
    pub(crate) aims: Vec<Aim>,
    /// The least and the most cells of each compartment.
    pub(crate) bounds: Vec<[f64; 2]>,
    /// The counts that are departed from as little as can be.
    pub(crate) home: Vec<f64>,
}

/// How good a filling is: smaller is better, the first difference decides.
#[derive(Clone, Debug, PartialEq, PartialOrd)]
pub(crate) struct Score {
    /// How far the aims of each rank are off, in steps of a twentieth of a tolerance.
    pub(crate) ranks: Vec<u32>,
    /// How far the counts are from home.
    pub(crate) departure: f64,
}

impl<'s> Search<'s> {
    /// A filling with its numbers; none where the client does not come to rest on it.
    pub(crate) fn filled(&self, counts: &[f64], near: Option<&Filling>) -> Option<Filling> {
        let answer = self.solved_on.rest(counts, near.map(|near| &near.resting));
        let numbers = has_numbers(&answer.rest);
        let resting = answer.rest.resting.filter(|_| numbers)?;
        let tops = tops(self.pattern, self.unloaded, counts);
        Some(Filling { counts: counts.to_vec(), resting, tops })
    }

    /// The same search on the mesh on which moves are tried, from the same counts, with aims that
    /// allow for what the meshes differ by there; none where the client does not come to rest.
    pub(crate) fn roughly(&self, start: &Filling) -> Option<(Self, Filling)> {
        let mut rough: Search<'s> = Search {
            solved_on: self.tried_on,
            tried_on: self.tried_on,
            pattern: self.pattern,
            unloaded: self.unloaded,
            aims: self.aims.clone(),
            bounds: self.bounds.clone(),
            home: self.home.clone(),
        };
        let there = rough.filled(&start.counts, None)?;
        for aim in &mut rough.aims {
            let both = aim.quantity.value(&there).zip(aim.quantity.value(start));
            let off = both.map_or(0.0, |(there, here)| there - here);
            (aim.least, aim.most) = (aim.least + off, aim.most + off);
        }
        Some((rough, there))
    }

    fn ranks(&self) -> usize {
        self.aims.iter().map(|aim| aim.rank + 1).max().unwrap_or(0)
    }

    /// How good a filling is.
    pub(crate) fn score(&self, filling: &Filling) -> Score {
        let offs = self.aims.iter().map(|aim| {
            let value = aim.quantity.value(filling);
            (aim.rank, value.map_or(0.0, |value| aim.off(value)))
        });
        self.scored(offs, &filling.counts)
    }

    /// Whether every aim is met to its tolerance.
    pub(crate) fn is_met(&self, filling: &Filling) -> bool {
        self.aims
            .iter()
            .all(|aim| aim.quantity.value(filling).is_none_or(|value| aim.off(value).abs() <= 1.0))
    }

    pub(crate) fn scored(&self, offs: impl Iterator<Item = (usize, f64)>, counts: &[f64]) -> Score {
        let mut squares = vec![0.0; self.ranks()];
        offs.for_each(|(rank, off)| squares[rank] += off * off);
        let ranks = squares.iter().map(|square| (square.sqrt() / QUANTUM).floor() as u32);
        Score { ranks: ranks.collect(), departure: self.departure(counts) }
    }

    /// Changes against the counts' own size: a tenth of a small compartment is as much as a tenth
    /// of a large one.
    fn departure(&self, counts: &[f64]) -> f64 {
        let pairs = counts.iter().zip(&self.home);
        pairs.map(|(count, home)| (count - home).powi(2) / home.max(1.0)).sum()
    }

    /// The aims as straight lines around a filling.
    pub(crate) fn linear_aims(&self, filling: &Filling, slopes: &Slopes) -> Vec<LinearAim<'_>> {
        let aims = self.aims.iter().filter_map(|aim| {
            let value = aim.quantity.value(filling)?;
            Some(LinearAim { aim, value, slope: aim.quantity.slope(filling, slopes), slack: None })
        });
        aims.collect()
    }

    /// The best filling near a start, not in whole numbers, with the slopes around it; none where
    /// there are no slopes. Those of a like filling serve as well to begin with.
    pub(crate) fn best(&self, start: Filling, known: Option<Slopes>) -> Option<(Filling, Slopes)> {
        let mut best = start;
        // Whether the slopes are those around the best, and not corrected ones of before.
        let mut fresh = known.is_none();
        let mut slopes = known.or_else(|| self.slopes(&best))?;
        let mut score = self.score(&best);
        let mut reach = FIRST_REACH;
        for _ in 0..MOST_STEPS {
            let (mut moved, were_fresh) = (false, fresh);
            while reach > LEAST_REACH {
                let Some(counts) = self.step(&best, &slopes, reach) else { break };
                if largest_change(&counts, &best.counts) < SMALL_STEP {
                    break;
                }
                let Some(next) = self.filled(&counts, Some(&best)) else {
                    reach *= SHRINKING;
                    continue;
                };
                let better = self.score(&next);
                moved = better < score;
                let around = if moved { &next } else { &best };
                slopes = self.corrected(&slopes, [&best, &next], around);
                fresh = false;
                if moved {
                    (score, best) = (better, next);
                    reach = (reach * GROWTH).min(MOST_REACH);
                    break;
                }
                reach *= SHRINKING;
            }
            if !moved {
                if were_fresh {
                    break;
                }
                slopes = self.slopes(&best)?;
                fresh = true;
                reach = FIRST_REACH * SHRINKING;
            }
        }
        Some((best, slopes))
    }

    /// The counts that the aims ask for in order where effects are straight lines, within a share
    /// of the home counts.
    fn step(&self, filling: &Filling, slopes: &Slopes, reach: f64) -> Option<Vec<f64>> {
        let n = filling.counts.len();
        let span = |at: usize| (reach * self.home[at]).max(LEAST_SPAN);
        let room: Vec<[f64; 2]> = (0..n)
            .map(|at| {
                let (count, [least, most]) = (filling.counts[at], self.bounds[at]);
                [(-span(at)).max(least - count).min(0.0), span(at).min(most - count).max(0.0)]
            })
            .collect();
        let lines = self.linear_aims(filling, slopes);
        let mut program = Program { lines, room, from: &filling.counts, home: &self.home };
        for rank in 0..self.ranks() {
            let (_, slacks) = program.solve(Some(rank))?;
            for (line, slack) in program.lines.iter_mut().zip(slacks) {
                if line.aim.rank == rank {
                    line.slack = Some(slack.max(0.0));
                }
            }
        }
        let (change, _) = program.solve(None)?;
        let counts = filling.counts.iter().zip(&change).zip(&program.room);
        Some(counts.map(|((count, by), [low, high])| count + by.clamp(*low, *high)).collect())
    }
}

fn largest_change(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}

/// An aim where effects are straight lines.
pub(crate) struct LinearAim<'a> {
    pub(crate) aim: &'a Aim,
    /// The value where the line begins.
    pub(crate) value: f64,
    /// What one cell more in each compartment does to it.
    pub(crate) slope: Vec<f64>,
    /// How far it may be off, once its rank is decided.
    slack: Option<f64>,
}

/// The least-squares problem of one rank.
struct Program<'a> {
    lines: Vec<LinearAim<'a>>,
    room: Vec<[f64; 2]>,
    from: &'a [f64],
    home: &'a [f64],
}

/// What a decided rank may lose to the next, in tolerances.
const GIVE: f64 = 0.01;

impl Program<'_> {
    /// Finds the changes that make the aims of a rank least off; of no rank, that depart least
    /// from home. Returns the changes and how far each aim is off.
    fn solve(&self, rank: Option<usize>) -> Option<(Vec<f64>, Vec<f64>)> {
        let n = self.room.len();
        let counted = |line: &LinearAim<'_>| line.slack.is_some() || rank == Some(line.aim.rank);
        let m = self.lines.len();
        let mut rows = Rows::default();
        for (at, line) in self.lines.iter().enumerate().filter(|(_, line)| counted(line)) {
            let slack = n + at;
            let scale = 1.0 / line.aim.unit;
            let slopes = || line.slope.iter().enumerate();
            if line.aim.most.is_finite() {
                let row = slopes().map(|(at, slope)| (at, slope * scale)).chain([(slack, -1.0)]);
                rows.at_most(row, (line.aim.most - line.value) * scale);
            }
            if line.aim.least.is_finite() {
                let row = slopes().map(|(at, slope)| (at, -slope * scale)).chain([(slack, -1.0)]);
                rows.at_most(row, (line.value - line.aim.least) * scale);
            }
        }
        for (at, line) in self.lines.iter().enumerate() {
            rows.at_most([(n + at, -1.0)].into_iter(), 0.0);
            let most = if counted(line) { line.slack.map(|slack| slack + GIVE) } else { Some(0.0) };
            if let Some(most) = most {
                rows.at_most([(n + at, 1.0)].into_iter(), most.max(LEAST_SLACK));
            }
        }
        for (at, [low, high]) in self.room.iter().enumerate() {
            rows.at_most([(at, 1.0)].into_iter(), *high);
            rows.at_most([(at, -1.0)].into_iter(), -low);
        }
        let (weights, linear) = self.objective(rank);
        let found = rows.minimise(&weights, &linear)?;
        Some((found[..n].to_vec(), found[n..n + m].to_vec()))
    }

    /// Squares and straight parts of what is made least.
    fn objective(&self, rank: Option<usize>) -> (Vec<f64>, Vec<f64>) {
        let home = if rank.is_some() { TIE_BREAK } else { 1.0 };
        let mut weights: Vec<f64> =
            self.home.iter().map(|home_count| home / home_count.max(1.0)).collect();
        let mut linear: Vec<f64> = (weights.iter().zip(self.from).zip(self.home))
            .map(|((weight, from), home)| weight * (from - home))
            .collect();
        for line in &self.lines {
            weights.push(if rank == Some(line.aim.rank) { 1.0 } else { TIE_BREAK });
            linear.push(0.0);
        }
        (weights, linear)
    }
}

/// Rows of `a x <= b`.
#[derive(Default)]
struct Rows {
    entries: Vec<(usize, usize, f64)>,
    bounds: Vec<f64>,
}

impl Rows {
    fn at_most(&mut self, row: impl Iterator<Item = (usize, f64)>, bound: f64) {
        let at = self.bounds.len();
        self.entries.extend(row.map(|(column, value)| (at, column, value)));
        self.bounds.push(bound);
    }

    /// Makes `sum of weight x^2 / 2 + linear x` least.
    fn minimise(self, weights: &[f64], linear: &[f64]) -> Option<Vec<f64>> {
        let n = weights.len();
        let all: Vec<usize> = (0..n).collect();
        let squares = CscMatrix::new_from_triplets(n, n, all.clone(), all, weights.to_vec());
        let column = |of: fn(&(usize, usize, f64)) -> usize| self.entries.iter().map(of).collect();
        let rows = CscMatrix::new_from_triplets(
            self.bounds.len(),
            n,
            column(|entry| entry.0),
            column(|entry| entry.1),
            self.entries.iter().map(|entry| entry.2).collect(),
        );
        let cones = [NonnegativeConeT(self.bounds.len())];
        let settings = DefaultSettings { verbose: false, ..DefaultSettings::default() };
        let solver = DefaultSolver::new(&squares, linear, &rows, &self.bounds, &cones, settings);
        let mut solver = solver.ok()?;
        solver.solve();
        matches!(solver.solution.status, SolverStatus::Solved | SolverStatus::AlmostSolved)
            .then(|| solver.solution.x.clone())
    }
}
