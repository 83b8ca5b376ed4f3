//! The audit of what is decided: plans and answers for many clients, scored apart from the planner,
//! beside what a slow search can reach.
//!
//! By hand, some minutes: `AUDIT=200..260 cargo test -p fitting --release -- --ignored --nocapture audit`.
//! A small part, with seeds of its own, runs with every test.

mod clients;
mod plans;
mod scores;
mod witness;

use self::clients::AuditClient;
use self::plans::{Planned, Scored, planned};

/// Plans for clients on both cores, in the order of the seeds.
fn all(seeds: std::ops::Range<u64>, with_reach: bool) -> Vec<Planned> {
    let seeds: Vec<u64> = seeds.collect();
    let one = |seed: &u64| planned(AuditClient::new(*seed), with_reach);
    let chunks = seeds.chunks(2).map(|pair| crate::search::side_by_side::side_by_side(pair, one));
    chunks.flatten().flatten().collect()
}

/// How many of the plans something is true of, as a line of the table.
fn line(what: &str, plans: &[Planned], of: impl Fn(&Planned) -> Option<bool>) -> String {
    let answers: Vec<bool> = plans.iter().filter_map(of).collect();
    let yes = answers.iter().filter(|yes| **yes).count();
    format!("{what:<52} {yes:>4} of {:>4}\n", answers.len())
}

/// The kinds of goals.
const KINDS: [&str; 9] = [
    "correct-obliquity",
    "accommodate-obliquity",
    "off-load",
    "pre-ischial-shelf",
    "lower-front",
    "medial-support",
    "lateral-support",
    "equal-firmness",
    "near-stock",
];

/// The table of plans, scored in one way.
fn table(plans: &[Planned], of: impl Fn(&Planned) -> Option<&Scored>) -> String {
    let scored = |test: fn(&Scored) -> bool| {
        let of = &of;
        move |plan: &Planned| of(plan).map(test)
    };
    let goals = plans.iter().filter_map(&of).flat_map(|scored| &scored.met);
    let (met, all) = goals.fold((0, 0), |(met, all), is| (met + usize::from(is.1), all + 1));
    let moved: f64 = plans.iter().filter_map(&of).map(|scored| scored.moved).sum();
    let harm: f64 = plans.iter().filter_map(&of).map(|scored| scored.harm).sum();
    let mut text = format!("{:<52} {met:>4} of {all:>4}\n", "goals met");
    text += &line("first goal met", plans, |plan| of(plan)?.met.first().map(|first| first.1));
    for kind in KINDS {
        let own = plans.iter().filter_map(&of).flat_map(|scored| &scored.met);
        let own = own.filter(|goal| goal.0 == kind);
        let (met, all) = own.fold((0, 0), |(met, all), is| (met + usize::from(is.1), all + 1));
        text += &format!("  {kind:<50} {met:>4} of {all:>4}\n");
    }
    text += &format!("{:<52} {moved:>4.0}\n{:<52} {harm:>7.2}\n", "cells moved", "harm, sum");
    text += &line("limits broken by more than 0.5", plans, scored(|own| own.broken > 0.5));
    text += &line("pitch beyond 2 degrees", plans, scored(|own| own.pitch > 2.0));
    text += &line("pitch beyond 4 degrees", plans, scored(|own| own.pitch > 4.0));
    text += &line("another site by more than 15 %", plans, scored(|own| own.rise > 0.15));
    text += &line("another site by more than 30 %", plans, scored(|own| own.rise > 0.30));
    text += &line("roll beyond 1 degree, unasked", plans, scored(|own| own.roll > 1.0));
    text += &line(
        "clearance from 25 to 26.5 mm",
        plans,
        scored(|own| (24.9..26.5).contains(&own.clearance)),
    );
    text += &line("counts below low", plans, scored(|own| own.below_low));
    text +=
        &line("more than 70 % of the load on one side", plans, scored(|own| own.heavy_side > 0.70));
    text
}

/// What only the model's own plan tells.
fn of_plans(plans: &[Planned]) -> String {
    line("something smaller keeps all", plans, |plan| {
        (plan.own.moved > 0.0).then_some(plan.smaller)
    }) + &line("asymmetric without cause", plans, |plan| {
        plan.client.symmetric.then_some(plan.asymmetric)
    })
}

/// The range of seeds that is asked for, `AUDIT=200..260`.
#[expect(clippy::disallowed_methods, reason = "an audit by hand is told its seeds")]
fn seeds() -> (std::ops::Range<u64>, bool) {
    let text = std::env::var("AUDIT").unwrap_or_else(|_| "200..240".to_owned());
    let (first, last) = text.split_once("..").expect("AUDIT=FIRST..LAST");
    let number = |text: &str| text.parse().expect("a seed");
    (number(first)..number(last), std::env::var("REACH").is_ok())
}

#[test]
#[ignore = "an audit by hand: some minutes"]
#[expect(clippy::print_stderr, reason = "the table is what the audit is for")]
fn audit_of_plans() {
    let (seeds, with_reach) = seeds();
    let plans = all(seeds, with_reach);
    eprintln!("in the model itself\n{}{}", table(&plans, |plan| Some(&plan.own)), of_plans(&plans));
    eprintln!("on soft tissue\n{}", table(&plans, |plan| plan.tissue.as_ref()));
    if with_reach {
        eprintln!("what a slow search reaches\n{}", table(&plans, |plan| plan.reach.as_ref()));
    }
    let both =
        plans.iter().filter_map(|plan| Some((plan.own.relief?, plan.tissue.as_ref()?.relief?)));
    let mut kept: Vec<f64> =
        both.filter(|(own, _)| *own > 0.3).map(|(own, tissue)| tissue / own).collect();
    kept.sort_by(f64::total_cmp);
    eprintln!("what soft tissue leaves of off-loading: {kept:.2?}");
    for plan in &plans {
        let goals: Vec<String> =
            plan.client.client.goals.iter().map(|goal| goal.want.id()).collect();
        eprintln!(
            "{} {} {} {} {goals:?} {:?} {:.2?}",
            if plan.smaller { "SMALLER" } else { "-" },
            plan.client.seed,
            plan.client.layout,
            plan.client.size,
            plan.counts,
            plan.own
        );
    }
}
