//! The witness of adjusting: simulated clients from a truth that the planner does not know.
//!
//! The truth has a mesh of its own, soft tissue, a trunk that follows the lean, every unknown
//! anywhere in its full range, counts that are off by 2 %, and answers of which one in five is the
//! neighbouring one; what is felt underneath is told in notches of 5 mm. Hands do what they are asked to
//! do again within a round, and cells are moved after it.
//!
//! A client is *settled* by a round if the answer stops there: as planned, or nothing is worth a move,
//! with nothing moved, asked, doubted or said not to be safe. In truth, with the counts off as they are,
//! both clearances must then be at the limit or above (else the client is *settled but unsafe*), and
//! somebody who knows the truth and decides by the same rules must leave the goals as they are, too: none
//! that can be met is off by more than a tolerance and what hands can tell, or their next move brings
//! none of those nearer.
//!
//! Shares are of the clients that *can be settled* at all: who come to rest on the planned counts, so
//! that there is something to feel, and for whom somebody who knows the truth finds counts, anew or in
//! three rounds of the same moves, that leave half a notch more than the limit under both bones, since
//! less cannot be told from too little by any number of notches, with no fingers held. Who is settled
//! but unsafe is counted among all who come to rest.
//!
//! On the seeds 6000 to 6399, 205 can be settled and 191 are. All that are not were looked at one by one
//! while the decision was made: three have fingers held round after round, three lean beyond what has numbers
//! after a move of eight to fifteen cells, four stop with a goal open, most by a hair of what cells are worth,
//! two sit at 27 mm, which nobody can be sure of, one is still moved in the last round, and one was read 7 mm
//! too high. On the seeds 6400 to 6499, at which nobody had looked, 50 can be settled and 44 are: together
//! that is 92 in a hundred. Five of the 500 are settled but unsafe. Three who cannot be settled are harmed:
//! cells that were to raise a pinched bone over a full compartment lower it by half a millimetre at most.
//!
//! What is missing is not noise alone: an earlier decision settled 45 of 54, and 49 of them had hands never
//! erred.

mod client;
mod course;
mod knower;

use client::Cushions;
use course::{Outcome, ROUNDS, run};

/// Runs clients on both cores of a small machine, in the order of their seeds.
fn outcomes(seeds: std::ops::Range<u64>) -> Vec<(u64, Outcome)> {
    let cushions = Cushions::new();
    let seeds: Vec<u64> = seeds.collect();
    let (even, odd): (Vec<u64>, Vec<u64>) = seeds.iter().partition(|seed| **seed % 2 == 0);
    let all =
        |seeds: &[u64]| seeds.iter().map(|seed| (*seed, run(&cushions, *seed))).collect::<Vec<_>>();
    let mut outcomes = std::thread::scope(|scope| {
        let other = scope.spawn(|| all(&odd));
        let mut outcomes = all(&even);
        outcomes.extend(other.join().expect("it ends"));
        outcomes
    });
    outcomes.sort_by_key(|own| own.0);
    outcomes
}

/// What became of some clients.
struct Shares {
    /// Of those that can be settled, the share that is.
    settled: f64,
    /// Clients that are settled but unsafe in truth, and those whom a move harmed.
    unsafe_then: usize,
    harmed: usize,
}

/// Prints what became of clients, and each that is not settled.
#[expect(clippy::print_stderr, reason = "the shares are what the witness is for")]
fn shares(seeds: std::ops::Range<u64>) -> Shares {
    let outcomes = outcomes(seeds);
    let able: Vec<&(u64, Outcome)> = outcomes.iter().filter(|own| own.1.can_be_settled).collect();
    for (seed, own) in able.iter().filter(|own| !own.1.is_settled_by(ROUNDS)) {
        let Outcome { stopped, unsafe_then, open_goal, .. } = own;
        eprintln!("  {seed}: {stopped:?} unsafe {unsafe_then} goal {open_goal}{}", own.story);
    }
    let count = |of: &dyn Fn(&Outcome) -> bool| outcomes.iter().filter(|own| of(&own.1)).count();
    let share = |of: &dyn Fn(&Outcome) -> bool| {
        let kept = able.iter().filter(|own| of(&own.1)).count();
        kept as f64 / able.len().max(1) as f64
    };
    for round in 0..=ROUNDS {
        let strictly = |own: &Outcome| own.is_settled_by(round) && !own.off_by_a_tolerance;
        eprintln!(
            "settled by round {round}: {:.1} %, each goal within its tolerance {:.1} %",
            100.0 * share(&|own| own.is_settled_by(round)),
            100.0 * share(&strictly),
        );
    }
    let shares = Shares {
        settled: share(&|own| own.is_settled_by(ROUNDS)),
        unsafe_then: count(&|own| own.unsafe_then),
        harmed: count(&|own| own.harmed),
    };
    eprintln!(
        "of {} that can be settled, of {}; settled but unsafe {}, harmed {}",
        able.len(),
        outcomes.len(),
        shares.unsafe_then,
        shares.harmed,
    );
    shares
}

/// A guard, not a measure: a planner was looked at on some of these seeds. Shares for seeds that nobody
/// looked at are printed by `many`, by hand.
#[test]
fn simulated_clients_settle_within_three_rounds() {
    let shares = shares(1..9);
    assert_eq!((shares.harmed, shares.unsafe_then), (0, 0));
    // All but one of those that can be settled.
    assert!(shares.settled >= 0.75, "{}", shares.settled);
}

/// Who was checked sat there: no estimate takes them to fall from those counts, though places at which
/// nobody rests contradict no answer. This one leans as far as hands ever find.
#[test]
fn nobody_who_was_checked_is_taken_to_fall() {
    let outcome = run(&Cushions::new(), 6_284);
    assert!(!outcome.taken_to_fall && !outcome.story.contains("Tips"), "{}", outcome.story);
}

/// The same at length, by hand: `cargo test -p fitting --release -- --ignored --nocapture many`.
#[test]
#[ignore = "takes some half an hour"]
fn many_simulated_clients_settle_within_three_rounds() {
    let seeds = 6_000..6_200;
    let all = seeds.end - seeds.start;
    let shares = shares(seeds);
    assert_eq!(shares.harmed, 0);
    // The aim is 0.95. Some hundred of 200 can be settled, and by lot a hundred come out lower by two or
    // three in a hundred; thrice that is allowed.
    assert!(shares.settled >= 0.88, "{}", shares.settled);
    // The aim is one in a hundred; so few come out higher by one or two.
    assert!(100 * shares.unsafe_then as u64 <= 2 * all, "{}", shares.unsafe_then);
}
