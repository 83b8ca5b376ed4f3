//! The search for counts: limits first, then goals in order, then as little harm and as few cells as
//! can be.
//!
//! Each step is a row of small convex programs on what one cell does, within a region in which
//! that is trusted; it counts only if solving the mechanics anew says that it is better. Then
//! whole numbers are looked for around the answer, in the same way.

use cushion::Pattern;
use mechanics::UnloadedCushion;

use crate::goals::aims::{Aim, Filling, Slopes, tops};
use crate::goals::known::KnownFillings;
use crate::goals::needs::Needs;
use crate::prediction::client_on_cushion::{Answer, ClientOnCushion, SearchMeshes, has_numbers};
use crate::prediction::prepared::PreparedCushion;
use crate::search::ahead::Ahead;
use crate::search::decision::groups;
use crate::search::program::{LinearAim, Program};
use crate::search::side_by_side::both;

/// Steps after which the search ends; some five do, and where a goal is only just within reach, fifteen.
const MOST_STEPS: usize = 20;
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
/// Differences of firm ranks below this many tolerances decide nothing.
const QUANTUM_OF_FIRM: f64 = 0.05;
/// The same of the others: for so much of one, less harm, fewer cells or one that comes later may be had.
const QUANTUM_OF_OTHERS: f64 = 0.25;
/// What a compartment's whole content costs, moved, in units of harm: twenty cells of an adult's
/// compartment of sixty are worth one unit, which is 1.7 degrees of pitch. A share and not a number,
/// since two cells are 7 % of a child's compartment and 1 % of an adult's. A judgement.
const COST_OF_CONTENT: f64 = 3.0;
/// What a goal that cannot be met is worth, a tolerance off, in units of harm: two, so that forty
/// cells of an adult's cushion are moved for the last tolerance. A judgement.
const WORTH_OF_A_TOLERANCE: f64 = 2.0;
/// Gains below this, in units of harm, end a row of steps by corrected slopes: slopes are found anew, or
/// where they were, the search ends. It is what opening a compartment costs.
const LEAST_GAIN: f64 = COST_OF_OPENING;
/// What each compartment that is touched costs beside: opening it, counting twice, closing it.
const COST_OF_OPENING: f64 = 0.1;

/// What is searched, and where.
pub(crate) struct Search<'s> {
    /// What was solved before on that mesh; none where it is not worth keeping.
    pub(crate) known: Option<&'s KnownFillings>,
    /// The same on the mesh on which moves are tried.
    pub(crate) known_roughly: Option<&'s KnownFillings>,
    /// The client on the mesh on which counts are solved.
    pub(crate) solved_on: &'s ClientOnCushion<'s>,
    /// The same on the mesh on which moves are tried: they are differences, which need less.
    pub(crate) tried_on: &'s ClientOnCushion<'s>,
    pub(crate) pattern: &'s Pattern,
    pub(crate) unloaded: &'s UnloadedCushion,
    /// How many of the first ranks are firm: what comes after them may cost them nothing. They are the
    /// limits, and that goals are met.
    pub(crate) firm: usize,
    /// Limits, goals, what is spared and the goals closer, by rank.
    pub(crate) aims: Vec<Aim>,
    /// What nobody asks for, of which the squares are added up.
    pub(crate) harm: Vec<Aim>,
    /// The least and the most cells of each compartment.
    pub(crate) bounds: Vec<[f64; 2]>,
    /// The counts that are departed from as little as can be.
    pub(crate) home: Vec<f64>,
    /// Compartments that change alike, each in one group: pairs, where the client is the same left
    /// and right.
    pub(crate) groups: Vec<Vec<usize>>,
}

/// A search on the mesh on which moves are tried, whose aims allow for what the meshes differ by at
/// some counts.
pub(crate) struct OnBothMeshes<'s> {
    /// These counts on the mesh on which counts are solved.
    pub(crate) here: Filling,
    pub(crate) rough: Search<'s>,
    /// The same counts on its mesh.
    pub(crate) there: Filling,
}

/// How good a filling is: smaller is better, the first difference decides.
#[derive(Clone, Debug, PartialEq, PartialOrd)]
pub(crate) struct Score {
    /// How far the aims of each rank are off, in steps that decide something.
    pub(crate) ranks: Vec<u32>,
    /// Harm that nobody asked for, and cells.
    pub(crate) rest: f64,
}

impl Score {
    /// Whether nothing can be better: nothing is off, no harm is done and no cell moved.
    pub(crate) fn is_perfect(&self) -> bool {
        self.rest == 0.0 && self.ranks.iter().all(|rank| *rank == 0)
    }

    /// Whether it is so much better than another that more is to be had with the same slopes.
    fn is_worth_going_on_from(&self, before: &Self) -> bool {
        self.ranks < before.ranks || self.rest < before.rest - LEAST_GAIN
    }
}

impl<'s> Search<'s> {
    /// A search that looks for nothing: it only solves for counts, and tries moves.
    pub(crate) fn solving_only(cushion: &'s PreparedCushion, meshes: &'s SearchMeshes<'s>) -> Self {
        Self {
            known: Some(&meshes.known),
            known_roughly: Some(&meshes.known_roughly),
            solved_on: &meshes.coarse,
            tried_on: &meshes.rough,
            pattern: cushion.pattern(),
            unloaded: cushion.unloaded(),
            firm: 1,
            aims: Vec::new(),
            harm: Vec::new(),
            bounds: Vec::new(),
            home: Vec::new(),
            groups: groups(cushion.pattern(), false),
        }
    }

    /// A filling with its numbers; none where the client does not come to rest on it.
    pub(crate) fn filled(&self, counts: &[f64], near: Option<&Filling>) -> Option<Filling> {
        if let Some(known) = self.known.and_then(|known| known.of(counts)) {
            return Some(known);
        }
        self.kept(self.solved_anew(counts, near))
    }

    /// The same of counts that are not known, which it does not keep.
    pub(super) fn solved_anew(&self, counts: &[f64], near: Option<&Filling>) -> Option<Filling> {
        let nearest = self.known.map_or_else(|| near.cloned(), |known| known.nearest(counts, near));
        let near = nearest.as_ref().map(|near| &near.resting);
        self.with_numbers(counts, self.solved_on.rest_to_compare(counts, near))
    }

    /// Keeps a filling for later.
    pub(super) fn kept(&self, filling: Option<Filling>) -> Option<Filling> {
        if let Some((known, filling)) = self.known.zip(filling.as_ref()) {
            known.keep(filling);
        }
        filling
    }

    /// The same beside a filling with nearly these counts, to compare them: a filling that is found so is
    /// solved anew before its numbers are used.
    pub(crate) fn filled_beside(&self, counts: &[f64], near: &Filling) -> Option<Filling> {
        self.with_numbers(counts, self.solved_on.rest_beside(counts, &near.resting))
    }

    fn with_numbers(&self, counts: &[f64], answer: Answer) -> Option<Filling> {
        let numbers = has_numbers(&answer.rest);
        let resting = answer.rest.resting.filter(|_| numbers)?;
        let tops = tops(self.pattern, self.unloaded, counts);
        Some(Filling { counts: counts.to_vec(), resting, tops })
    }

    /// The search on the mesh on which moves are tried, around counts that are solved on both meshes at
    /// once; none where the client does not come to rest.
    pub(crate) fn on_both_meshes(
        &self,
        counts: &[f64],
        near: Option<&Filling>,
    ) -> Option<OnBothMeshes<'s>> {
        let rough = self.on_rough_mesh();
        let (here, there) = both(|| self.filled(counts, near), || rough.filled(counts, None));
        Some(self.beside_rough(here?, rough, there))
    }

    /// The same around a filling.
    pub(crate) fn filling_on_both_meshes(&self, here: &Filling) -> OnBothMeshes<'s> {
        let rough = self.on_rough_mesh();
        let there = rough.filled(&here.counts, None);
        self.beside_rough(here.clone(), rough, there)
    }

    /// The rough search around a filling, with its answer there. Who tips on the rough mesh and not on
    /// this one sits at the brink of tipping: moves are tried on this mesh for them.
    fn beside_rough(&self, here: Filling, rough: Self, there: Option<Filling>) -> OnBothMeshes<'s> {
        match there {
            Some(there) => rough.allowing_for(here, there),
            None => OnBothMeshes {
                rough: self.on(self.known, self.solved_on),
                there: here.clone(),
                here,
            },
        }
    }

    /// The same search on the mesh on which moves are tried.
    fn on_rough_mesh(&self) -> Self {
        self.on(self.known_roughly, self.tried_on)
    }

    /// The same search on one mesh alone.
    fn on(&self, known: Option<&'s KnownFillings>, mesh: &'s ClientOnCushion<'s>) -> Self {
        Search {
            known,
            known_roughly: known,
            solved_on: mesh,
            tried_on: mesh,
            pattern: self.pattern,
            unloaded: self.unloaded,
            firm: self.firm,
            aims: self.aims.clone(),
            harm: self.harm.clone(),
            bounds: self.bounds.clone(),
            home: self.home.clone(),
            groups: self.groups.clone(),
        }
    }

    /// This search with aims that allow for what the meshes differ by at some counts: here, on the
    /// other, and there, on its own.
    fn allowing_for(mut self, here: Filling, there: Filling) -> OnBothMeshes<'s> {
        for aim in self.aims.iter_mut().chain(&mut self.harm) {
            let both = aim.quantity.value(&there).zip(aim.quantity.value(&here));
            let off = both.map_or(0.0, |(there, here)| there - here);
            (aim.least, aim.most) = (aim.least + off, aim.most + off);
        }
        OnBothMeshes { here, rough: self, there }
    }

    /// Weighs a goal against harm and cells instead of putting it first: one that no counts meet is
    /// brought as near as is worth what it costs.
    pub(crate) fn weigh(&mut self, goal: usize) {
        let met = [false, true].map(|goes_with| Needs::rank(goal, goes_with));
        self.aims.retain(|aim| !met.contains(&aim.rank));
        let closer = met.map(|rank| Needs::closer(rank, self.firm));
        let (weighed, kept): (Vec<Aim>, Vec<Aim>) =
            self.aims.drain(..).partition(|aim| closer.contains(&aim.rank));
        self.aims = kept;
        let unit = WORTH_OF_A_TOLERANCE.sqrt();
        self.harm.extend(weighed.into_iter().map(|aim| Aim { unit: aim.unit / unit, ..aim }));
    }

    fn ranks(&self) -> usize {
        self.aims.iter().map(|aim| aim.rank + 1).max().unwrap_or(0)
    }

    /// How good a filling is.
    pub(crate) fn score(&self, filling: &Filling) -> Score {
        let harm = self.harm.iter().map(|aim| off(aim, filling));
        self.scored(self.ranked_offs(filling), harm, &filling.counts)
    }

    /// The score of counts whose aims are so far off, each with its rank, and whose harm is so much.
    pub(crate) fn scored(
        &self,
        offs: impl Iterator<Item = (usize, f64)>,
        harm: impl Iterator<Item = f64>,
        counts: &[f64],
    ) -> Score {
        let quantum = |rank| if rank < self.firm { QUANTUM_OF_FIRM } else { QUANTUM_OF_OTHERS };
        let ranks = self.by_rank(offs).into_iter().enumerate();
        let ranks = ranks.map(|(rank, off)| (off / quantum(rank)).floor() as u32);
        let harm: f64 = harm.map(|off| off * off).sum();
        Score { ranks: ranks.collect(), rest: harm + self.cost(counts) }
    }

    /// How far the aims of each rank are off together, in tolerances.
    pub(crate) fn offs(&self, filling: &Filling) -> Vec<f64> {
        self.by_rank(self.ranked_offs(filling))
    }

    /// How far each aim is off, with its rank; nothing where the body lacks the site.
    fn ranked_offs<'a>(&'a self, filling: &'a Filling) -> impl Iterator<Item = (usize, f64)> + 'a {
        self.aims.iter().map(|aim| (aim.rank, off(aim, filling)))
    }

    /// The root of the sum of squares of what is off in each rank.
    fn by_rank(&self, offs: impl Iterator<Item = (usize, f64)>) -> Vec<f64> {
        let mut squares = vec![0.0; self.ranks()];
        offs.for_each(|(rank, off)| squares[rank] += off * off);
        squares.into_iter().map(f64::sqrt).collect()
    }

    /// What the cells that are elsewhere than at home cost, in units of harm.
    fn cost(&self, counts: &[f64]) -> f64 {
        let pairs = counts.iter().zip(&self.home).enumerate();
        let moved = pairs.filter(|(_, (count, home))| count != home);
        moved
            .map(|(at, (count, home))| {
                self.cost_of_a_cell(at) * (count - home).abs() + COST_OF_OPENING
            })
            .sum()
    }

    /// What one cell costs in a compartment, against the content at home.
    fn cost_of_a_cell(&self, at: usize) -> f64 {
        COST_OF_CONTENT / self.home[at].max(1.0)
    }

    /// Aims as straight lines around a filling.
    pub(crate) fn lines<'a>(
        &self,
        aims: &'a [Aim],
        filling: &Filling,
        slopes: &Slopes,
    ) -> Vec<LinearAim<'a>> {
        let line = |aim: &'a Aim| {
            let value = aim.quantity.value(filling)?;
            Some(LinearAim { aim, value, slope: aim.quantity.slope(filling, slopes) })
        };
        aims.iter().filter_map(line).collect()
    }

    /// The best filling near a start, not in whole numbers, with the slopes around it; none where
    /// there are no slopes. Those of a like filling serve as well to begin with.
    pub(crate) fn best(&self, start: Filling, known: Option<Slopes>) -> Option<(Filling, Slopes)> {
        // Solved by itself; the steps after it are found beside it.
        let mut sure = start.clone();
        let mut best = start;
        // Whether the slopes are those around the best, and not corrected ones of before.
        let mut fresh = known.is_none();
        let mut slopes = known.or_else(|| self.slopes(&best))?;
        let mut score = self.score(&best);
        let mut reach = FIRST_REACH;
        let mut ahead = Ahead::default();
        for _ in 0..MOST_STEPS {
            let (mut goes_on, were_fresh) = (false, fresh);
            while reach > LEAST_REACH {
                let Some(counts) = self.step(&best, &slopes, reach) else { break };
                if largest_change(&counts, &best.counts) < SMALL_STEP {
                    break;
                }
                let next = ahead.while_doing(self, &best, || self.filled_beside(&counts, &best));
                let Some(next) = next else {
                    reach *= SHRINKING;
                    continue;
                };
                let next_score = self.score(&next);
                let is_better = next_score < score;
                let around = if is_better { &next } else { &best };
                slopes = self.corrected(&slopes, [&best, &next], around);
                fresh = false;
                if is_better {
                    goes_on = next_score.is_worth_going_on_from(&score);
                    (score, best) = (next_score, next);
                    ahead = Ahead::default();
                    reach = (reach * GROWTH).min(MOST_REACH);
                    break;
                }
                reach *= SHRINKING;
            }
            if !goes_on {
                if were_fresh {
                    break;
                }
                // What does not come to rest by itself is not taken: it is on the brink of tipping.
                let Some(anew) = ahead.filled(self, &best) else { break };
                (best, sure) = (anew.clone(), anew);
                score = self.score(&best);
                let Some(around) = self.slopes(&best) else { break };
                (slopes, fresh) = (around, true);
                reach = FIRST_REACH * SHRINKING;
            }
        }
        Some((ahead.filled(self, &best).unwrap_or(sure), slopes))
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
        let away = filling.counts.iter().zip(&self.home).map(|(count, home)| count - home);
        let program = Program {
            lines: self.lines(&self.aims, filling, slopes),
            harm: self.lines(&self.harm, filling, slopes),
            room,
            away: away.collect(),
            cost: (0..n).map(|at| self.cost_of_a_cell(at)).collect(),
            groups: &self.groups,
            firm: self.firm,
        };
        let change = program.solved(self.ranks())?;
        Some(filling.counts.iter().zip(&change).map(|(count, by)| count + by).collect())
    }
}

/// How far an aim is off, in tolerances; nothing where the body lacks the site.
fn off(aim: &Aim, filling: &Filling) -> f64 {
    aim.quantity.value(filling).map_or(0.0, |value| aim.off(value))
}

/// The largest change of a compartment's count.
pub(super) fn largest_change(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}
