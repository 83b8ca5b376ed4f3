//! One step of the search as small convex programs: each rank's aims as little off as they can be
//! where effects are straight lines, then harm and cells as little as they can be.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettings, DefaultSolver, IPSolver as _, NonnegativeConeT, SolverStatus,
};

use crate::goals::aims::Aim;

/// What a decided rank may lose to the next, in tolerances, where it is a limit: rounding.
const GIVE_OF_LIMITS: f64 = 0.01;
/// The same where it is a goal: less than the step in which goals are compared, so that what is lost
/// does not count.
const GIVE_OF_GOALS: f64 = 0.2;
/// The weight of what does not count yet against what does: enough to tell changes apart that are
/// equally good, too little to shift what is decided.
const TIE_BREAK: f64 = 1e-7;

/// An aim where effects are straight lines.
pub(crate) struct LinearAim<'a> {
    pub(crate) aim: &'a Aim,
    /// The value where the line begins.
    pub(crate) value: f64,
    /// What one cell more in each compartment does to it.
    pub(crate) slope: Vec<f64>,
}

impl LinearAim<'_> {
    /// Whether the aim is kept where the line begins.
    fn is_kept(&self) -> bool {
        self.aim.off(self.value) == 0.0
    }
}

/// The problem of one step, in changes of groups of compartments that change alike.
pub(crate) struct Program<'a> {
    /// The aims of all ranks.
    pub(crate) lines: Vec<LinearAim<'a>>,
    /// What is not asked for, of which the squares are added up.
    pub(crate) harm: Vec<LinearAim<'a>>,
    /// The least and the most change of each compartment.
    pub(crate) room: Vec<[f64; 2]>,
    /// How far each compartment is from home.
    pub(crate) away: Vec<f64>,
    /// What a cell away from home costs in each compartment, in units of harm.
    pub(crate) cost: Vec<f64>,
    /// The compartments that change alike, each in one group.
    pub(crate) groups: &'a [Vec<usize>],
}

impl Program<'_> {
    /// The change of each compartment's count.
    pub(crate) fn solved(&self, ranks: usize) -> Option<Vec<f64>> {
        let mut decided: Vec<Option<f64>> = vec![None; self.lines.len()];
        // As long as all is kept where it begins, that is as little off as can be.
        let mut kept_so_far = self.room.iter().all(|[least, most]| *least <= 0.0 && *most >= 0.0);
        for rank in 0..ranks {
            let of_rank =
                || (0..self.lines.len()).filter(move |at| self.lines[*at].aim.rank == rank);
            if of_rank().next().is_none() {
                continue;
            }
            kept_so_far &= of_rank().all(|at| self.lines[at].is_kept());
            let slacks =
                if kept_so_far { vec![0.0; of_rank().count()] } else { self.rank(&decided, rank)? };
            let give = if rank == 0 { GIVE_OF_LIMITS } else { GIVE_OF_GOALS };
            for (at, slack) in of_rank().zip(slacks) {
                decided[at] = Some(slack.max(0.0) + give);
            }
        }
        let change = self.last(&decided)?;
        let mut all = vec![0.0; self.room.len()];
        for (group, by) in self.groups.iter().zip(change) {
            for at in group {
                all[*at] = by.clamp(self.room[*at][0], self.room[*at][1]);
            }
        }
        Some(all)
    }

    /// How far each aim of a rank is off at the least, what was decided before being kept.
    fn rank(&self, decided: &[Option<f64>], rank: usize) -> Option<Vec<f64>> {
        let n = self.groups.len();
        let own: Vec<&LinearAim<'_>> =
            self.lines.iter().filter(|line| line.aim.rank == rank).collect();
        let mut rows = self.kept(decided);
        for (at, line) in own.iter().enumerate() {
            self.within(&mut rows, line, Some(n + at), 0.0);
        }
        let mut squares = vec![TIE_BREAK; n];
        squares.extend(own.iter().map(|_| 1.0));
        let found = rows.minimise(&squares, &vec![0.0; n + own.len()])?;
        Some(found[n..].to_vec())
    }

    /// The changes of the groups with the least harm and cells.
    fn last(&self, decided: &[Option<f64>]) -> Option<Vec<f64>> {
        let n = self.groups.len();
        let mut rows = self.kept(decided);
        let cells = n + self.harm.len();
        for (at, line) in self.harm.iter().enumerate() {
            self.within(&mut rows, line, Some(n + at), 0.0);
        }
        let mut linear = vec![0.0; cells];
        for (at, group) in self.groups.iter().enumerate() {
            // How far from home, either way, at least.
            let away = self.away[group[0]];
            rows.at_most([(at, 1.0), (cells + at, -1.0)].into_iter(), -away);
            rows.at_most([(at, -1.0), (cells + at, -1.0)].into_iter(), away);
            linear.push(group.iter().map(|at| self.cost[*at]).sum());
        }
        let mut squares = vec![TIE_BREAK; n];
        // Half of twice the square.
        squares.extend(self.harm.iter().map(|_| 2.0));
        squares.extend(self.groups.iter().map(|_| 0.0));
        Some(rows.minimise(&squares, &linear)?[..n].to_vec())
    }

    /// That changes stay within their room, and aims that are decided as far off as was decided.
    fn kept(&self, decided: &[Option<f64>]) -> Rows {
        let mut rows = Rows::default();
        for (at, group) in self.groups.iter().enumerate() {
            let room = |end: usize| group.iter().map(move |at| self.room[*at][end]);
            rows.at_most([(at, 1.0)].into_iter(), room(1).fold(f64::INFINITY, f64::min));
            rows.at_most([(at, -1.0)].into_iter(), -room(0).fold(f64::NEG_INFINITY, f64::max));
        }
        for (line, slack) in self.lines.iter().zip(decided) {
            if let Some(slack) = slack {
                self.within(&mut rows, line, None, *slack);
            }
        }
        rows
    }

    /// That an aim is off by no more than a number of tolerances, or than a variable.
    fn within(&self, rows: &mut Rows, line: &LinearAim<'_>, variable: Option<usize>, slack: f64) {
        let scale = 1.0 / line.aim.unit;
        let row = |sign: f64| {
            let of_group =
                |group: &Vec<usize>| group.iter().map(|at| line.slope[*at]).sum::<f64>() * scale;
            let slopes = self.groups.iter().map(of_group).enumerate();
            slopes
                .map(|(at, slope)| (at, sign * slope))
                .chain(variable.map(|at| (at, -1.0)))
                .collect::<Vec<_>>()
        };
        if line.aim.most.is_finite() {
            rows.at_most(row(1.0).into_iter(), (line.aim.most - line.value) * scale + slack);
        }
        if line.aim.least.is_finite() {
            rows.at_most(row(-1.0).into_iter(), (line.value - line.aim.least) * scale + slack);
        }
        if let Some(at) = variable {
            rows.at_most([(at, -1.0)].into_iter(), 0.0);
        }
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
