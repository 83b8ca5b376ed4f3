//! The witness of adjusting: simulated clients from a truth that the planner does not know.
//!
//! The truth has a mesh of its own, soft tissue, a trunk that follows the lean, every unknown
//! anywhere in its full range, counts that are off by 2 %, and answers of which one in five is the
//! neighbouring one. A client is settled after a round if in the truth, with whole counts, off as
//! they are, both clearances are at the limit or above, every goal is met that a planner who
//! knows the truth meets, and the next adjustment moves no more than two cells.

use case::{
    Check, Client, CushionIdentity, Date, Entry, FrontSides, Goal, NextStep, PressAnswer, SiteName,
    TopAnswer, UnderAnswer, Want,
};
use cushion::{CompartmentIx, Length, Mass, Pressure, Side};
use mechanics::{Parameters, Resting, Stop};

use crate::checks::adjust::{AdjustInput, adjust, can_be_made};
use crate::checks::meaning::{FELT_BELOW, Number, PINCHED_FROM, SAFE_UP_TO, UNLIKE_FROM};
use crate::goals::aims::real;
use crate::goals::aims::{Filling, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{ClientOnCushion, SearchMeshes};
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::prediction::unknowns::{Assumptions, Unknown};
use crate::search::planner::{PlanStart, Planner, stock_counts};
use crate::search::progress::Progress;
use crate::tests::dice::Dice;
use testkit::{identity, recorded};

/// Rounds of checks that are looked at.
const ROUNDS: usize = 3;

/// The cushions that all cases share: what the planner knows, and the truth.
struct Cushions {
    known: Vec<PreparedCushion>,
    truth: Vec<PreparedCushion>,
}

impl Cushions {
    fn new() -> Self {
        let mm = Length::from_mm;
        let make = |spacing: f64| {
            ["row-six", "island-eight", "curved-ten"].map(|layout| {
                let pattern = testkit::pattern(layout, "440x400");
                let spacings = Spacings::all(mm(spacing));
                PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion")
            })
        };
        Self { known: make(12.0).to_vec(), truth: make(10.0).to_vec() }
    }
}

struct Case<'a> {
    dice: Dice,
    known: &'a PreparedCushion,
    truth: &'a PreparedCushion,
    client: Client,
    hidden: Assumptions,
    /// By what the cells of each compartment are off.
    off: Vec<f64>,
}

fn client(dice: &mut Dice, layout: &str) -> Client {
    let kg = dice.between(50.0, 85.0);
    let hips = dice.between(350.0, 415.0);
    let depth = dice.between(440.0, 490.0);
    let oblique = match dice.roll() % 4 {
        0 => String::new(),
        kind => {
            let by = dice.between(8.0, 18.0);
            let lower = dice.one_of(&["left", "right"]);
            let is = match kind {
                1 => "\"flexible\"".to_owned(),
                2 => "\"fixed\"".to_owned(),
                _ => format!("\"partly\", reducible = {}", by / 2.0),
            };
            format!(
                "[posture]\nobliquity = {{ lower = \"{lower}\", by = {by}, at = \"seat bones\", is = {is} }}\n"
            )
        }
    };
    let text = format!(
        "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
         [measures]\nunits = \"mm\"\nhip_width = {hips}\n\
         thigh_depth = {{ left = {depth}, right = {depth} }}\n\
         [weight]\nkg = {kg}\nweighed_on = 2026-03-01\n{oblique}\
         [cushion]\nlayout = \"{layout}\"\nsize = \"440x400\"\nspare_cells = 40\n"
    );
    let mut client = files::read_client(&text).value.expect("a client");
    client.goals = goals(dice, &client).map(|want| Goal { want, because: None }).collect();
    client
}

fn goals(dice: &mut Dice, client: &Client) -> impl Iterator<Item = Want> + use<> {
    let turn = client.posture.obliquity.map(|obliquity| match obliquity.flexibility {
        case::Flexibility::Fixed => Want::AccommodateObliquity,
        _ => Want::CorrectObliquity,
    });
    let side = dice.one_of(&[Side::Left, Side::Right]);
    let mm = Length::from_mm;
    let second = match dice.roll() % 4 {
        0 => {
            Some(Want::OffLoad { site: SiteName::SeatBone(side), share: dice.between(0.08, 0.18) })
        }
        1 => Some(Want::Shelf { height: mm(dice.between(6.0, 14.0)) }),
        2 => {
            Some(Want::LowerFront { sides: FrontSides::One(side), by: mm(dice.between(6.0, 12.0)) })
        }
        _ => None,
    };
    turn.into_iter().chain(second)
}

impl<'a> Case<'a> {
    fn new(cushions: &'a Cushions, seed: u64) -> Self {
        let mut dice = Dice(seed.wrapping_mul(0x2545_f491_4f6c_dd1d) ^ 0x5eed);
        let which = (dice.roll() % 3) as usize;
        let (known, truth) = (&cushions.known[which], &cushions.truth[which]);
        let client = client(&mut dice, known.pattern().layout().as_str());
        let usual = assumptions_of(&client, truth, weight(&client), Stop::never()).expect("a body");
        let mut hidden = usual.clone();
        for unknown in Unknown::ALL {
            unknown.place(&usual, &mut hidden, dice.between(-1.0, 1.0));
        }
        hidden.sitter.tissue_stiffness = Some(dice.between(0.2e6, 1.0e6));
        hidden.sitter.trunk_height = Length::from_m(dice.between(0.0, 0.10));
        let off = known.pattern().indices().map(|_| 1.0 + 0.02 * dice.normal()).collect();
        Self { dice, known, truth, client, hidden, off }
    }

    /// The truth under exact counts; none where the client does not rest.
    fn rests(&self, counts: &[f64]) -> Option<Resting> {
        let seated = ClientOnCushion::new(self.truth.coarse(), self.hidden.clone(), Stop::never())
            .expect("a body");
        let answer = seated.rest(counts, None);
        let numbers = crate::prediction::client_on_cushion::has_numbers(&answer.rest);
        answer.rest.resting.filter(|_| numbers)
    }

    /// What is really in the cushion: cells were counted, and some are larger than others.
    fn filled(&self, counts: &[u32]) -> Vec<f64> {
        counts.iter().zip(&self.off).map(|(count, off)| f64::from(*count) * off).collect()
    }

    /// What hands find.
    fn checks(&mut self, counts: &[u32]) -> Vec<Check> {
        let Some(resting) = self.rests(&self.filled(counts)) else { return Vec::new() };
        let mut checks = Vec::new();
        for side in [Side::Left, Side::Right] {
            let clearance = Number::Clearance(side).of(&resting).expect("a seat bone");
            let under = self.under(side, &resting);
            let pressure = Number::Surface(SiteName::SeatBone(side)).of(&resting).expect("a bone");
            let answer = if pressure > PINCHED_FROM || clearance < FELT_BELOW {
                2
            } else {
                i32::from(pressure > SAFE_UP_TO)
            };
            let answer = [TopAnswer::Safe, TopAnswer::Tight, TopAnswer::Pinched]
                [self.neighbour(answer, 0, 2) as usize];
            checks.push(Check::Top { side, answer });
            checks.push(under);
        }
        let higher = Number::RightHigher.of(&resting).expect("seat bones");
        let step = self.neighbour((higher / 3e-3).round() as i32, -20, 20);
        let by = Length::from_mm(3.0 * f64::from(step.abs()));
        let lower = match step {
            0 => None,
            right if right < 0 => Some(Side::Right),
            _ => Some(Side::Left),
        };
        checks.push(Check::Lower { lower, by, at: case::MeasuredAt::SeatBones });
        checks.extend(self.presses(&resting));
        if self.dice.chance(0.3) {
            let site = SiteName::SeatBone(Side::Left);
            let pressure = Number::Surface(site).of(&resting).expect("a seat bone");
            let read = pressure * (1.0 + 0.1 * self.dice.normal());
            checks.push(Check::Reading { site, pressure: Pressure::from_pa(read.max(200.0)) });
        }
        checks
    }

    /// Feels under a seat bone, in notches of 5 mm.
    fn under(&mut self, side: Side, resting: &Resting) -> Check {
        let clearance = Number::Clearance(side).of(resting).expect("a seat bone");
        let step = (clearance / 5e-3).round() as i32;
        let step = self.neighbour(step, 0, 18);
        let answer = if step <= 2 && clearance < FELT_BELOW {
            UnderAnswer::BoneFelt
        } else {
            UnderAnswer::Felt(Length::from_mm(5.0 * f64::from(step)))
        };
        Check::Under { side, answer }
    }

    /// Feels again where that was asked for.
    fn felt_again(&mut self, counts: &[u32], next: &[NextStep]) -> Vec<Check> {
        let Some(resting) = self.rests(&self.filled(counts)) else { return Vec::new() };
        let asked = next.iter().filter_map(|step| match step {
            NextStep::FeelAgain(side) => Some(*side),
            _ => None,
        });
        asked.collect::<Vec<_>>().into_iter().map(|side| self.under(side, &resting)).collect()
    }

    /// Presses on the left one of one reachable pair.
    fn presses(&mut self, resting: &Resting) -> Option<Check> {
        let pattern = self.known.pattern();
        let like = |number| Check::Press { number, answer: PressAnswer::Like };
        let pairs: Vec<(u8, CompartmentIx, CompartmentIx)> = (pattern.indices())
            .filter(|ix| pattern[*ix].side == Some(Side::Left))
            .filter(|ix| can_be_made(pattern, &like(pattern[*ix].number)).is_ok())
            .filter_map(|ix| Some((pattern[ix].number, ix, pattern.partner(ix)?)))
            .collect();
        let (number, pressed, other) = self.dice.one_of(&pairs);
        let firmer = Number::Firmer(pressed, other).of(resting)?;
        let answer = 1 + i32::from(firmer > UNLIKE_FROM) - i32::from(firmer < -UNLIKE_FROM);
        let answer = [PressAnswer::Slack, PressAnswer::Like, PressAnswer::Tight]
            [self.neighbour(answer, 0, 2) as usize];
        Some(Check::Press { number, answer })
    }

    /// One answer in five is the one beside the right one.
    fn neighbour(&mut self, right: i32, least: i32, most: i32) -> i32 {
        if !self.dice.chance(0.2) {
            return right.clamp(least, most);
        }
        let by = if self.dice.chance(0.5) { 1 } else { -1 };
        let beside = right + by;
        if beside < least || beside > most { right - by } else { beside }
    }

    /// Which limits and goals hold in the truth: clearances, then one for each goal.
    fn holds(&self, counts: &[f64]) -> Option<(bool, Vec<bool>)> {
        let meshes = SearchMeshes::new(self.truth, &self.hidden, Stop::never()).expect("a body");
        let pattern = self.truth.pattern();
        let filling = |counts: Vec<f64>| {
            let resting = self.rests(&counts)?;
            let tops = crate::goals::aims::tops(pattern, self.truth.unloaded(), &counts);
            Some(Filling { counts, resting, tops })
        };
        let stock = pattern.indices().map(|ix| f64::from(self.truth.stock()[ix].cells.stock));
        let stock = filling(stock.collect())?;
        let now = filling(counts.to_vec())?;
        let needs = Needs::of(&self.client);
        let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &stock };
        let limit = Parameters::default().clearance_limit;
        let clear = [Side::Left, Side::Right].into_iter().all(|side| {
            Number::Clearance(side).of(&now.resting).is_some_and(|clearance| clearance >= limit)
        });
        let met = |wanted: &crate::goals::wanted::Wanted| match &wanted.aims {
            // Of an obliquity the height counts, not how evenly the load is shared.
            Ok(aims) => aims.iter().filter(|aim| !aim.goes_with()).all(|aim| {
                // A lowered front, as a shelf, within 5 mm.
                let most = if matches!(aim.quantity, Quantity::Top(_)) { 2.0 } else { 1.0 };
                aim.quantity.value(&now).is_none_or(|value| aim.off(value).abs() <= most)
            }),
            Err(_) => false,
        };
        Some((clear, reader.wanted().iter().map(met).collect()))
    }

    /// What a planner reaches who knows the truth.
    fn oracle(&self) -> Option<(bool, Vec<bool>)> {
        let home = stock_counts(self.truth).iter().map(|count| *count as u32).collect();
        let fixed = vec![false; self.truth.pattern().compartments().len()];
        let start = PlanStart { home, fixed, passed: None, symmetric: false };
        let hidden = self.hidden.clone();
        let planner = Planner::knowing(self.truth, &self.client, hidden, &start, Stop::never());
        self.holds(&real(&planner.find(Progress::none()).expect("a body").counts))
    }

    /// The identity of what [`Self::record`] records.
    fn identity(&self) -> CushionIdentity {
        identity(self.known.pattern())
    }

    fn record(&mut self, counts: &[u32]) {
        self.client.record.push(Entry::Plan(recorded(self.known.pattern(), counts)));
    }
}

fn weight(client: &Client) -> Mass {
    client.latest_weighing().expect("a weight").weight
}

/// What became of one case.
struct Outcome {
    /// Whether the oracle keeps the limits, and so can settle.
    settleable: bool,
    /// Whether it is settled after each round, from 0.
    settled: [bool; ROUNDS + 1],
    /// Whether a move lowered a bone that was pinched or felt.
    harmed: bool,
    /// What happened, for those that do not settle.
    story: String,
}

fn run(cushions: &Cushions, seed: u64) -> Outcome {
    let mut case = Case::new(cushions, seed);
    let oracle = case.oracle();
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
    let mut outcome = Outcome {
        settleable: oracle.as_ref().is_some_and(|oracle| oracle.0),
        settled: [false; ROUNDS + 1],
        harmed: false,
        story: String::new(),
    };
    for round in 0..=ROUNDS {
        case.record(&counts);
        let reached = case.holds(&case.filled(&counts));
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
        let mut next = ask(&checks);
        let again = case.felt_again(&counts, &next.next);
        if !again.is_empty() {
            checks.extend(again);
            next = ask(&checks);
        }
        let moved: u32 = next.moves.iter().map(|step| step.cells).sum();
        let fine = match (&reached, &oracle) {
            (Some((clear, met)), Some((_, could))) => {
                *clear && met.iter().zip(could).all(|(met, could)| *met || !could)
            }
            _ => false,
        };
        outcome.settled[round] = fine && moved <= 2;
        let said: Vec<String> = checks.iter().map(ToString::to_string).collect();
        outcome.story += &format!("\n     {reached:?} moved {moved} {:?} {said:?}", next.doubts);
        outcome.harmed |= harmed(&case, &checks, &counts, &next.counts);
        case.client.record.push(Entry::Adjustment(case::Adjustment {
            on,
            by: "OT".to_owned(),
            checks,
            moves: next.moves.clone(),
            why: None,
        }));
        counts = next.counts;
    }
    let goals: Vec<String> = case.client.goals.iter().map(|goal| goal.want.id()).collect();
    let layout = known.pattern().layout();
    outcome.story = format!("{layout} {goals:?} the oracle {oracle:?}{}", outcome.story);
    outcome
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

/// Runs cases on both cores of a small machine and prints the shares.
#[expect(clippy::print_stderr, reason = "the shares are what the witness is for")]
fn shares(seeds: std::ops::Range<u64>) -> (f64, usize) {
    let cushions = Cushions::new();
    let seeds: Vec<u64> = seeds.collect();
    let (first, second) = seeds.split_at(seeds.len() / 2);
    let all =
        |seeds: &[u64]| seeds.iter().map(|seed| (*seed, run(&cushions, *seed))).collect::<Vec<_>>();
    let outcomes: Vec<(u64, Outcome)> = std::thread::scope(|scope| {
        let other = scope.spawn(|| all(second));
        let mut outcomes = all(first);
        outcomes.extend(other.join().expect("it ends"));
        outcomes
    });
    let settleable: Vec<&(u64, Outcome)> =
        outcomes.iter().filter(|case| case.1.settleable).collect();
    let share = |round: usize| {
        let by = settleable.iter().filter(|case| case.1.settled[..=round].iter().any(|it| *it));
        by.count() as f64 / settleable.len().max(1) as f64
    };
    for case in settleable.iter().filter(|case| !case.1.settled.iter().any(|it| *it)) {
        eprintln!("  {}: {}", case.0, case.1.story);
    }
    eprintln!(
        "settled by round 0, 1, 2, 3: {:.0} {:.0} {:.0} {:.0} % of {} that the oracle can settle, of {}",
        100.0 * share(0),
        100.0 * share(1),
        100.0 * share(2),
        100.0 * share(3),
        settleable.len(),
        outcomes.len(),
    );
    let oracle = settleable.len() as f64 / outcomes.len() as f64;
    eprintln!("the oracle settles {:.0} %", 100.0 * oracle);
    (share(ROUNDS), outcomes.iter().filter(|case| case.1.harmed).count())
}

/// A guard, not a measure: the planner was looked at on some of these seeds. Shares for seeds that
/// nobody looked at are printed by `many`, by hand.
#[test]
fn simulated_clients_settle_within_three_rounds() {
    let (settled, harmed) = shares(1..9);
    assert_eq!(harmed, 0);
    // All but one of those that can be settled.
    assert!(settled >= 0.85, "{settled}");
}

/// The same at length, by hand: `cargo test -p fitting --release -- --ignored --nocapture many`.
#[test]
#[ignore = "takes some ten minutes"]
fn many_simulated_clients_settle_within_three_rounds() {
    let (settled, harmed) = shares(5_000..5_500);
    assert_eq!(harmed, 0);
    // As of the 60 above, to a case or two.
    assert!(settled >= 0.84, "{settled}");
}
