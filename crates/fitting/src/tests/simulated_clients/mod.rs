//! The witness of adjusting: simulated clients from a truth that the planner does not know.
//!
//! WORK IN PROGRESS.

mod client;

use case::{Check, Date, Entry, NextStep, TopAnswer, UnderAnswer, Verdict};
use cushion::Side;
use mechanics::{Parameters, Stop};

use crate::checks::adjust::{AdjustInput, Adjusted, adjust};
use crate::checks::meaning::{FINGERS, HAND, LOWER_SIDE, Number};
use crate::goals::aims::Quantity;
use crate::search::task::Adjusting;
use crate::search::planner::{PlanStart, Planner, stock_counts};
use crate::search::progress::Progress;
use client::{Case, Cushions, Truth};

/// Rounds of checks that are looked at.
const ROUNDS: usize = 3;
const AGAIN: usize = 2;

/// What somebody does next who knows the truth, and decides and moves as an adjustment does.
fn known_next(case: &Case<'_>, counts: &[u32]) -> Vec<u32> {
    let now = case.filled(counts);
    let bounds = now.iter().map(|count| {
        let most = (0.35 * count).max(9.0);
        [(count - most).max(0.0), count + most]
    });
    let adjusting = Adjusting {
        unsure: [0.0; 2],
        doubted: [HAND; 2],
        sure: [HAND; 2],
        surface_sd: [FINGERS; 2],
        higher_sd: LOWER_SIDE,
        bounds: bounds.collect(),
        held: Vec::new(),
        earlier: 0,
        passed: None,
        symmetric: false,
    };
    let hidden = case.hidden.clone();
    let planner =
        Planner::adjusting(case.truth, &case.client, hidden, &now, adjusting, Stop::never());
    let found = planner.find(Progress::none()).expect("a body").counts;
    let stays = found.iter().zip(&now).all(|(found, now)| *found == *now as u32);
    if stays { counts.to_vec() } else { case.counted(&found) }
}

/// What somebody reaches who knows the truth.
fn knower(case: &Case<'_>, planned: &[u32]) -> Vec<(Truth, bool)> {
    let home = stock_counts(case.truth).iter().map(|count| *count as u32).collect();
    let fixed = vec![false; case.truth.pattern().compartments().len()];
    let start = PlanStart { home, fixed, passed: None, symmetric: false };
    let hidden = case.hidden.clone();
    let planner = Planner::knowing(case.truth, &case.client, hidden, &start, Stop::never());
    let counts = planner.find(Progress::none()).expect("a body").counts;
    let mut all = vec![case.counted(&counts)];
    let mut now = planned.to_vec();
    for _ in 0..ROUNDS {
        let next = known_next(case, &now);
        if next == now {
            break;
        }
        now = next;
    }
    all.push(now);
    let truth = |counts: &Vec<u32>| {
        let filled = case.filled(counts);
        Some((case.truth(&filled)?, case.fingers_are_free(&filled)))
    };
    all.iter().filter_map(truth).collect()
}

fn is_safe(truth: &Truth) -> bool {
    truth.clearance.iter().all(|own| *own >= Parameters::default().clearance_limit)
}

fn is_confirmed(truth: &Truth) -> bool {
    truth.clearance.iter().all(|own| *own >= 27.5e-3)
}

fn hands(quantity: &Quantity) -> f64 {
    match quantity {
        Quantity::RightHigher => LOWER_SIDE,
        Quantity::Surface(_) => FINGERS,
        _ => 0.0,
    }
}

#[derive(Clone, Debug, Default)]
struct Outcome {
    settleable: bool,
    why: &'static str,
    /// The first round in which it stops.
    declared: Option<usize>,
    off: [bool; 4],
    unsafe_declared: bool,
    harmed: bool,
    story: String,
}

fn said(adjusted: &Adjusted) -> String {
    let next: Vec<&str> = adjusted.next.iter().map(|step| step.id()).collect();
    let moves: Vec<String> = adjusted.moves.iter().map(|m| format!("{}", m.cells)).collect();
    let expected = adjusted.prediction.seated.as_ref().map_or(String::new(), |seat| {
        format!("{:.1} {:.1}", seat.clearance.left.central.to_mm(), seat.clearance.right.central.to_mm())
    });
    format!(
        "{} e {expected} [{}] moves {moves:?} unsafe {:?} doubts {:?} left out {:?}",
        adjusted.verdict.id(),
        next.join(" "),
        adjusted.not_safe,
        adjusted.doubts.iter().map(|d| format!("{d:?}")).collect::<Vec<_>>(),
        adjusted.left_out.iter().map(ToString::to_string).collect::<Vec<_>>(),
    )
}

fn shown(truth: Option<&Truth>) -> String {
    let Some(truth) = truth else { return "no rest".to_owned() };
    let off: Vec<String> = truth
        .off
        .iter()
        .map(|off| match off {
            Some((off, unit, quantity)) => {
                let name = format!("{quantity:?}");
                format!("{off:.2}x{unit:.4} {}", name.split('(').next().unwrap_or(""))
            }
            None => "refused".to_owned(),
        })
        .collect();
    format!("{:.1} {:.1} {off:?}", 1e3 * truth.clearance[0], 1e3 * truth.clearance[1])
}

fn is_stop(adjusted: &Adjusted) -> bool {
    let asks = adjusted.next.iter().any(|step| !matches!(step, NextStep::CheckAgain));
    matches!(adjusted.verdict, Verdict::AsPlanned | Verdict::Stay)
        && adjusted.moves.is_empty()
        && adjusted.doubts.is_empty()
        && adjusted.not_safe.is_empty()
        && !asks
}

fn run(cushions: &Cushions, seed: u64) -> Outcome {
    let mut case = Case::new(cushions, seed);
    let (known, on) = (case.known, Date::constant(2026, 3, 1));
    let input = crate::search::plan::PlanInput {
        client: &case.client,
        passed: None,
        cushion: known,
        on,
        stop: Stop::never(),
        progress: Progress::none(),
    };
    let stock: Vec<u32> =
        known.pattern().indices().map(|ix| known.stock()[ix].cells.stock).collect();
    let plan = crate::search::plan::plan(&input, &stock).expect("a plan");
    let mut counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
    let mut outcome = Outcome::default();
    let goals: Vec<String> = case.client.goals.iter().map(|goal| goal.want.id()).collect();
    let layout = known.pattern().layout();
    outcome.story = format!("{layout} {goals:?}");
    if case.truth(&case.filled(&counts)).is_none() {
        outcome.why = "FALLS";
        return outcome;
    }
    let planned = counts.clone();
    let lazy = std::env::var("LAZY").is_ok();
    let mut reach = if lazy { Vec::new() } else { knower(&case, &planned) };
    for round in 0..=ROUNDS {
        case.record(&counts);
        case.dice = crate::tests::dice::Dice(mechanics::mixed(seed ^ ((round as u64 + 1) << 32)));
        let truth = case.truth(&case.filled(&counts));
        let mut checks = case.checks(&counts);
        let client = case.client.clone();
        let identity = case.identity();
        let ask = |checks: &[Check]| {
            adjust(&AdjustInput {
                identity: &identity,
                client: &client,
                cushion: known,
                on,
                now: &counts,
                checks,
                stop: Stop::never(),
            })
            .expect("an adjustment")
        };
        outcome.story += &format!("\n   {round}: truth {}", shown(truth.as_ref()));
        let told = |checks: &[Check]| {
            let told: Vec<String> = checks.iter().map(ToString::to_string).collect();
            told.join(", ")
        };
        let mut next = ask(&checks);
        outcome.story += &format!("\n      {} -> {}", told(&checks), said(&next));
        for _ in 0..AGAIN {
            if next.next.contains(&NextStep::PatFirst) {
                let held = case.tops_again(&counts, &mut checks);
                next = if held { next } else { ask(&checks) };
                outcome.story += &format!("\n      patted, held {held} -> {}", said(&next));
                break;
            }
            let again = case.felt_again(&counts, &next.next);
            if again.is_empty() {
                break;
            }
            outcome.story += &format!("\n      again {}", told(&again));
            checks.extend(again);
            next = ask(&checks);
            outcome.story += &format!(" -> {}", said(&next));
        }
        let safe = truth.as_ref().is_some_and(is_safe);
        let stop = is_stop(&next);
        outcome.harmed |= harmed(&case, &checks, &counts, &next.counts);
        case.client.record.push(Entry::Adjustment(case::Adjustment {
            on,
            by: "OT".to_owned(),
            checks,
            moves: next.moves.clone(),
            why: None,
        }));
        if stop {
            outcome.declared = Some(round);
            outcome.unsafe_declared = !safe;
            let any_off = truth.as_ref().is_none_or(|truth| truth.off.iter().flatten().any(|off| off.0 > 1.0));
            if lazy && (!safe || any_off) {
                reach = knower(&case, &planned);
            }
            let off = |allowed: &dyn Fn(f64, &Quantity) -> f64| is_off(truth.as_ref(), &reach, allowed);
            outcome.off = [
                off(&|_, _| 1.0),
                off(&|_, _| 1.5),
                off(&|unit, quantity| 1.0 + 0.84 * hands(quantity) / unit),
                safe && off(&|unit, quantity| 1.0 + 0.84 * hands(quantity) / unit)
                    && known_next(&case, &counts) != counts,
            ];
            break;
        }
        counts = next.counts;
    }
    if lazy && outcome.declared.is_none() {
        reach = knower(&case, &planned);
    }
    for (truth, free) in &reach {
        outcome.story += &format!("\n   knower {} free {free}", shown(Some(truth)));
    }
    outcome.why = if lazy && reach.is_empty() {
        outcome.settleable = true;
        ""
    } else if !reach.iter().any(|own| is_safe(&own.0)) {
        "LOW"
    } else if !reach.iter().any(|own| is_confirmed(&own.0)) {
        "EDGE"
    } else if !reach.iter().any(|own| is_confirmed(&own.0) && own.1) {
        "HELD"
    } else {
        outcome.settleable = true;
        ""
    };
    outcome
}

fn is_off(truth: Option<&Truth>, reach: &[(Truth, bool)], allowed: &dyn Fn(f64, &Quantity) -> f64) -> bool {
    let Some(truth) = truth else { return true };
    truth.off.iter().enumerate().any(|(at, off)| {
        let could = reach.iter().filter(|own| is_safe(&own.0)).any(|own| {
            own.0.off.get(at).is_some_and(|off| off.as_ref().is_some_and(|off| off.0 <= 1.0))
        });
        could && off.as_ref().is_some_and(|off| off.0 > allowed(off.1, &off.2))
    })
}

/// Whether moves harm in the truth: a bone that was felt is lowered, or one that was pinched is
/// lowered below the limit. Few cells may go from under a pinched bone with much cushion under it.
fn harmed(case: &Case<'_>, checks: &[Check], before: &[u32], after: &[u32]) -> bool {
    if before == after {
        return false;
    }
    let clearance = |counts: &[u32], side| {
        case.rests(&case.filled(counts)).and_then(|resting| Number::Clearance(side).of(&resting))
    };
    let limit = Parameters::default().clearance_limit;
    [Side::Left, Side::Right].into_iter().any(|side| {
        let felt = checks.contains(&Check::Under { side, answer: UnderAnswer::BoneFelt });
        let pinched = checks.contains(&Check::Top { side, answer: TopAnswer::Pinched });
        let Some((before, after)) = clearance(before, side).zip(clearance(after, side)) else {
            return felt || pinched;
        };
        // Rounding of the solver, and nothing more.
        let lowered = after < before - 1e-7;
        lowered && (felt || pinched && after < limit)
    })
}

fn outcomes(seeds: std::ops::Range<u64>) -> Vec<(u64, Outcome)> {
    let cushions = Cushions::new();
    let seeds: Vec<u64> = seeds.collect();
    let next = std::sync::atomic::AtomicUsize::new(0);
    let all = || {
        let mut done = Vec::new();
        loop {
            let at = next.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
            let Some(seed) = seeds.get(at) else { return done };
            let own = run(&cushions, *seed);
            show(*seed, &own);
            done.push((*seed, own));
        }
    };
    let mut outcomes: Vec<(u64, Outcome)> = std::thread::scope(|scope| {
        let other = scope.spawn(all);
        let mut outcomes = all();
        outcomes.extend(other.join().expect("it ends"));
        outcomes
    });
    outcomes.sort_by_key(|own| own.0);
    outcomes
}

#[test]
#[ignore = "by hand"]
fn table() {
    let range = std::env::var("SEEDS").unwrap_or("5000..5010".into());
    let (a, b) = range.split_once("..").unwrap();
    let outcomes = outcomes(a.parse().unwrap()..b.parse().unwrap());
    let able: Vec<_> = outcomes.iter().filter(|own| own.1.settleable).collect();
    let n = able.len() as f64;
    let share = |keep: &dyn Fn(&Outcome) -> bool| 100.0 * able.iter().filter(|own| keep(&own.1)).count() as f64 / n;
    println!("SUM {range}: {} of {} able", able.len(), outcomes.len());
    for (at, what) in ["1", "1.5", "hands", "would act"].iter().enumerate() {
        let by = |round: usize| share(&|own| own.declared.is_some_and(|at| at <= round) && !own.unsafe_declared && !own.off[at]);
        println!("SUM goals within {what}: by round 0..3 {:.1} {:.1} {:.1} {:.1}", by(0), by(1), by(2), by(3));
    }
    println!("SUM open {:.1} % unsafe of able {:.2} %, of all {} of {} declared, harmed {}", share(&|own| own.declared.is_none()), share(&|own| own.unsafe_declared),
        outcomes.iter().filter(|own| own.1.unsafe_declared).count(), outcomes.iter().filter(|own| own.1.declared.is_some()).count(), outcomes.iter().filter(|own| own.1.harmed).count());
}

fn show(seed: u64, own: &Outcome) {
        let kind = if !own.settleable {
            format!("UNABLE-{}", own.why)
        } else if own.declared.is_none() {
            "OPEN".to_owned()
        } else if own.unsafe_declared {
            "UNSAFE".to_owned()
        } else if own.off[2] {
            "OFF".to_owned()
        } else {
            "ok".to_owned()
        };
        eprintln!("== {seed} {kind} declared {:?} unsafe {} off {:?} harmed {}\n  {}", own.declared, own.unsafe_declared, own.off, own.harmed, own.story);
}
