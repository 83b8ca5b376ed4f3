//! Random sequences of 30 entries, against a model as simple as can be.

use case::{
    Beside, CheckOutcome, Entry, Move, PartsChecked, Place, Recount, Returned, SiteName,
    SkinAnswer, SkinSeen, State, Weighed, explained_by_handling, in_force, state,
};
use cushion::Mass;
use proptest::prelude::*;

use crate::record::{
    STOCK, SUPPLIED, WHOLE, check_of, client, day, filled, moved, numbered, plan, withdrawn,
};

/// What is done next: of what kind, with which numbers.
#[derive(Clone, Copy, Debug)]
struct Act {
    kind: u8,
    counts: [u32; 3],
    which: u8,
    yes: bool,
}

fn acts() -> impl Strategy<Value = Vec<Act>> {
    let act = (0_u8..10, prop::array::uniform3(45_u32..55), 0_u8..9, any::<bool>())
        .prop_map(|(kind, counts, which, yes)| Act { kind, counts, which, yes });
    prop::collection::vec(act, 30)
}

/// The entry of an act.
fn entry(act: Act, before: &[Entry]) -> Entry {
    let on = day(1 + (before.len() / 2) as i8);
    let of_march = on.day();
    let (first, by) = (act.counts[0], "OT".to_owned());
    match act.kind {
        0 => plan(of_march, act.counts),
        1 => filled(of_march, act.counts),
        2 => {
            let counts = vec![(act.which % 3 + 1, first)];
            Entry::Recount(Recount { on, by, counts, spare: None })
        }
        3 => {
            let (from, to) = [(1, 2), (2, 3), (3, 1)][usize::from(act.which % 3)];
            let (from, to) = (Place::Compartment(from), Place::Compartment(to));
            let spare = if act.yes { Place::Spare } else { to };
            moved(of_march, vec![Move { from, to: spare, cells: first % 4 }])
        }
        4 => {
            let found: Vec<&str> = if act.yes { WHOLE.to_vec() } else { WHOLE[..4].to_vec() };
            Entry::Checked(PartsChecked {
                passed: Some(act.which > 2),
                ..check_of(&found, of_march)
            })
        }
        5 => Entry::Weighed(Weighed { on, by, weight: Mass::from_kg(60.0) }),
        6 => {
            let (site, answer) = (SiteName::Coccyx, SkinAnswer::ALL[usize::from(act.which % 5)].0);
            Entry::Skin(SkinSeen { on, by, site, answer })
        }
        7 if !before.is_empty() => withdrawn(of_march, usize::from(act.which) % before.len() + 1),
        8 if !before.is_empty() => {
            let counts = numbered(act.counts);
            Entry::Returned(Returned { on, by, entry: 1, counts, why: None })
        }
        _ => checked_whole(of_march),
    }
}

fn checked_whole(of_march: i8) -> Entry {
    Entry::Checked(check_of(&WHOLE, of_march))
}

/// The model: cells by compartment, what was put in last, the bag, lost cells, the last check.
#[derive(Debug, Default)]
struct Model {
    now: Option<[u32; 3]>,
    meant: [u32; 3],
    told: bool,
    planned: bool,
    bag: i64,
    /// More than recounts lost.
    added: i64,
    passed: Option<[u32; 3]>,
}

fn sum(counts: [u32; 3]) -> i64 {
    counts.into_iter().map(i64::from).sum()
}

impl Model {
    fn put(&mut self, counts: [u32; 3]) {
        // What was there before anybody wrote is the stock fill, where a plan told of it.
        let before = self.now.map(sum).or(self.planned.then_some(3 * i64::from(STOCK)));
        match before {
            Some(before) => self.bag += before - sum(counts),
            None => self.added += sum(counts) - 3 * i64::from(STOCK),
        }
        (self.now, self.meant) = (Some(counts), counts);
    }

    fn follow(&mut self, entry: &Entry) {
        let three = |counts: &[(u8, u32)]| [counts[0].1, counts[1].1, counts[2].1];
        match entry {
            Entry::Plan(plan) => {
                self.planned = true;
                if !self.told {
                    self.put([0, 1, 2].map(|at| plan.counts[at].planned));
                    self.passed = None;
                }
            }
            Entry::Filled(own) => {
                self.put(three(&own.counts));
                self.told = true;
            }
            Entry::Returned(own) => {
                self.put(three(&own.counts));
                (self.told, self.passed) = (true, None);
            }
            Entry::Recount(own) => {
                let (number, cells) = own.counts[0];
                if let Some(now) = &mut self.now {
                    let at = usize::from(number) - 1;
                    self.added += i64::from(cells) - i64::from(now[at]);
                    now[at] = cells;
                    self.told = true;
                }
            }
            Entry::Moved(own) => {
                let Some(mut now) = self.now else { return };
                let Move { from, to, cells } = own.moves[0];
                for (place, by) in [(from, -i64::from(cells)), (to, i64::from(cells))] {
                    match place {
                        Place::Spare => self.bag += by,
                        Place::Compartment(number) => {
                            let own = &mut now[usize::from(number) - 1];
                            *own = (i64::from(*own) + by) as u32;
                        }
                    }
                }
                (self.now, self.meant, self.told) = (Some(now), now, true);
            }
            Entry::Checked(own) => {
                if !self.is_as_meant() {
                    self.meant = self.now.unwrap_or_default();
                }
                let passed = own.outcome() == CheckOutcome::Passed && self.told;
                self.passed = passed.then_some(self.meant);
            }
            _ => {}
        }
    }

    fn is_as_meant(&self) -> bool {
        let Some(now) = self.now else { return true };
        (0..3).all(|at| explained_by_handling(self.meant[at], now[at]))
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn cells_are_conserved_and_nothing_is_fitted_that_was_not_checked(acts in acts()) {
        let mut record: Vec<Entry> = Vec::new();
        for act in acts {
            record.push(entry(act, &record));
            let client = client(record.clone());
            let mut model = Model { bag: i64::from(SUPPLIED), ..Model::default() };
            // A recount of one compartment says nothing where nothing is known of the others.
            let known = |own: &&Entry| matches!(own, Entry::Plan(_) | Entry::Filled(_) | Entry::Returned(_));
            let standing = in_force(&record);
            let begins = standing.iter().position(known).unwrap_or(standing.len());
            if standing[..begins].iter().any(|own| matches!(own, Entry::Recount(_))) {
                continue;
            }
            standing.into_iter().for_each(|own| model.follow(own));
            let now = client.cushion_now();
            prop_assert_eq!(now.as_ref().map(|own| own.counts.clone()), model.now.map(|own| {
                numbered(own).into_iter().collect()
            }));
            if let Some(now) = now {
                prop_assert_eq!(now.bag, model.bag);
                // All cells that there ever were, but for those that counting lost or found.
                let all = 3 * i64::from(STOCK) + i64::from(SUPPLIED);
                prop_assert_eq!(i64::from(now.total()) + now.bag - model.added, all);
            }
            if let State::Fitted(_) = state(&client, day(20), Beside::default()).state {
                prop_assert_eq!(model.passed, Some(model.meant), "{:#?}", record);
                prop_assert!(model.is_as_meant());
            }
        }
    }
}

#[test]
fn the_sequences_reach_every_state() {
    // The property above says nothing where nothing is ever fitted.
    use proptest::strategy::ValueTree as _;
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut seen = std::collections::BTreeSet::new();
    for _ in 0..200 {
        let mut record: Vec<Entry> = Vec::new();
        for act in acts().new_tree(&mut runner).unwrap().current() {
            record.push(entry(act, &record));
            seen.insert(state(&client(record.clone()), day(20), Beside::default()).state.id());
        }
    }
    let wanted = ["estimate", "failed", "fitted", "lapsed", "to-plan"];
    assert!(wanted.iter().all(|own| seen.contains(own)), "{seen:?}");
}
