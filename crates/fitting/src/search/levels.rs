//! With how much clearance in reserve counts are looked for: what is broken is mended with as much as loads
//! no injury, and costs no goal more than the reserve is worth.

use case::{BodyError, BrokenLimit, Want};
use cushion::Side;

use crate::goals::aims::{Aim, Filling, Quantity, real};
use crate::goals::harm::reserve;
use crate::goals::limits::{Reference, limits};
use crate::goals::wanted::GoalReader;
use crate::search::planner::{Asked, FoundPlan, Planner};
use crate::search::task::{BROKEN, Task, goals, misses};

/// What a repair may keep in reserve above the limit where the whole of it costs too much, m, one after the
/// other: what a hand tells is three of these steps.
const LESS_IN_RESERVE: [f64; 3] = [2e-3, 1e-3, 0.0];
/// By how many tolerances a goal must be farther off than it was, and than one, for a repair to have cost
/// it: what a goal must come nearer for cells to be moved.
const COSTS_A_GOAL: f64 = 0.25;
/// By how much less, in units of harm, counts must cost to be worth a smaller reserve.
const WORTH_LESS_RESERVE: f64 = 0.25;

/// Clearances that differ by less are as short of the limit as each other, m: what whole cells do.
const AS_SHORT: f64 = 0.1e-3;

/// What counts cost that mend what is broken.
#[derive(Default)]
struct Cost {
    /// Whether an injury gets more than it may.
    loads_an_injury: bool,
    /// Whether a goal is lost, or farther off than it was.
    costs_a_goal: bool,
    /// How much is missing of the limit itself, m, on both sides: no goal is worth that.
    short: f64,
    /// What is missing of the reserve, and of the goals: squares, added up as harm is.
    weighed: f64,
}

impl Cost {
    /// Whether nothing speaks against the counts.
    fn is_none(&self) -> bool {
        !self.loads_an_injury && !self.costs_a_goal
    }

    /// Whether counts that keep less in reserve are better than these. What loads an injury is loaded less
    /// by less, so that the last ones load it least.
    fn is_more_than(&self, next: &Self) -> bool {
        match (self.loads_an_injury, next.loads_an_injury) {
            (true, _) => true,
            (false, true) => false,
            (false, false) => {
                next.short <= self.short + AS_SHORT
                    && next.weighed < self.weighed - WORTH_LESS_RESERVE
            }
        }
    }
}

impl Planner<'_> {
    /// The best counts of the first level that costs nothing, or of the one that costs least.
    pub(super) fn best_of_levels(
        &self,
        asked: &Asked<'_>,
        task: Task,
        needed: [f64; 2],
    ) -> Result<FoundPlan, BodyError> {
        let search = self.search(asked.reader.meshes, Vec::new());
        let home = search.filled(&self.home, Some(asked.reader.stock));
        let mut best: Option<(Cost, FoundPlan)> = None;
        for (task, needed) in self.levels(&asked.reader, task, needed) {
            let found = self.found_for(asked, task, needed)?;
            let filling = search.filled(&real(&found.counts), home.as_ref());
            let cost = self.cost(asked, task, [home.as_ref(), filling.as_ref()], &found);
            let is_none = cost.is_none();
            if best.as_ref().is_none_or(|(least, _)| least.is_more_than(&cost)) {
                best = Some((cost, found));
            }
            if is_none {
                break;
            }
        }
        Ok(best.expect("there is one level at least").1)
    }

    /// What is tried one after the other: what is to be done, with the clearance under each seat bone, m.
    /// What is kept in reserve is given up before an injury is loaded or a goal is lost that is worth more;
    /// the limit never. A clearance that is only doubted moves no cells onto an injury.
    fn levels(
        &self,
        reader: &GoalReader<'_>,
        task: Task,
        needed: [f64; 2],
    ) -> Vec<(Task, [f64; 2])> {
        let aimed = self.aimed_at(reader, task, needed);
        let mut levels = vec![(task, aimed)];
        match task {
            Task::Repair => levels.extend(LESS_IN_RESERVE.map(|reserve| {
                let least = self.least();
                (task, [0, 1].map(|at| aimed[at].min(least[at] + reserve)))
            })),
            Task::Confirm => levels.push((Task::Stay, needed)),
            Task::Pursue | Task::Stay => {}
        }
        levels.dedup();
        levels
    }

    /// What counts cost, from home to what they do; goals are only weighed where something is mended, since
    /// all else is done for them or leaves them. To be near the stock fill is no goal that is spared then.
    fn cost(
        &self,
        asked: &Asked<'_>,
        task: Task,
        [home, filling]: [Option<&Filling>; 2],
        found: &FoundPlan,
    ) -> Cost {
        let moves = found.counts.iter().zip(&self.home).any(|(own, home)| f64::from(*own) != *home);
        // Only of an injury may a clinician take more by name.
        let is_taken_by_name = found.not_safe.iter().any(BrokenLimit::may_be_taken);
        let mut cost = Cost { loads_an_injury: moves && is_taken_by_name, ..Cost::default() };
        let [Some(home), Some(filling)] = [home, filling] else { return cost };
        cost.loads_an_injury |= moves && self.loads_what_is_spared(asked, home, filling);
        if task != Task::Repair {
            return cost;
        }
        let lost =
            |aims: Vec<&Aim>| (misses(&aims, filling) - misses(&aims, home).max(1.0)).max(0.0);
        let spared = asked.wanted.iter().filter(|goal| goal.want != Want::NearStock);
        let lost: Vec<f64> = goals(spared).map(lost).collect();
        let missing = reserve().map(|aim| aim.misses(filling));
        let short = [Side::Left, Side::Right].into_iter().zip(self.least()).map(|(side, least)| {
            let clearance = Quantity::Clearance(side).value(filling).unwrap_or(least);
            (least - clearance).max(0.0)
        });
        cost.short = short.sum();
        cost.costs_a_goal = lost.iter().any(|lost| *lost > COSTS_A_GOAL);
        cost.weighed = lost.iter().chain(&missing).map(|off| off * off).sum();
        cost
    }

    /// Whether a site of which the pressure may rise by little gets more than that.
    fn loads_what_is_spared(&self, asked: &Asked<'_>, home: &Filling, filling: &Filling) -> bool {
        let search = self.search(asked.reader.meshes, Vec::new());
        let passed = self.passed.as_ref().and_then(|passed| search.filled(passed, Some(home)));
        let reference = Reference { now: home, passed: passed.as_ref() };
        let limits = limits(&self.needs, asked.reader.pattern, reference, [0.0; 2]);
        let mut sites = limits.iter().filter(|aim| matches!(aim.quantity, Quantity::Surface(_)));
        sites.any(|aim| aim.misses(filling) > BROKEN)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Costs in the order in which they weigh: an injury, the limit, then reserve and goals together.
    #[test]
    fn less_in_reserve_is_taken_for_goals_and_injuries_and_never_for_the_limit() {
        let cost = |loads_an_injury: bool, short: f64, weighed: f64| Cost {
            loads_an_injury,
            costs_a_goal: true,
            short,
            weighed,
        };
        let now = cost(false, 0.0, 4.0);
        assert!(now.is_more_than(&cost(false, 0.0, 3.0)));
        assert!(!now.is_more_than(&cost(false, 0.0, 3.9)), "not worth it");
        assert!(!now.is_more_than(&cost(false, 1e-3, 0.0)), "below the limit");
        assert!(!now.is_more_than(&cost(true, 0.0, 0.0)), "onto an injury");
        let loads = cost(true, 0.0, 0.0);
        assert!(loads.is_more_than(&cost(false, 0.0, 9.0)));
        assert!(loads.is_more_than(&cost(true, 0.0, 9.0)), "the last ones load it least");
    }
}
