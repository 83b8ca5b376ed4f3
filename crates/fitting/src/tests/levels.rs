//! With how much clearance in reserve what is broken is mended, and what is not asked for.

use std::cell::RefCell;

use case::{Client, Flexibility, Goal, MeasuredAt, PelvicObliquity, Want};
use cushion::{Length, Side};
use mechanics::Stop;

use crate::goals::aims::{Filling, Quantity, real};
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::search::planner::{Planner, stock_counts};
use crate::search::progress::{PlanStep, Progress};
use crate::search::steps::Search;
use crate::tests::seated::{adjusting, client, seated};

/// A client whose left seat bone is too low over a compartment that is full: only what is put in on the right
/// lifts it, and turns the pelvis that is to be level.
fn oblique() -> Client {
    let mut client = client(80);
    client.posture.obliquity = Some(PelvicObliquity {
        lower: Side::Left,
        by: Length::from_mm(13.0),
        at: MeasuredAt::SeatBones,
        flexibility: Flexibility::Flexible,
    });
    client.goals = vec![Goal { want: Want::CorrectObliquity, because: None }];
    client
}

fn clearances(filling: &Filling) -> [f64; 2] {
    [Side::Left, Side::Right]
        .map(|side| Quantity::Clearance(side).value(filling).expect("a seat bone"))
}

/// Against all counts of the one compartment that may change: what is missing of 28 mm, in units of 1.5 mm,
/// and what the goal loses, in tolerances of 2.7 mm from 0.3 mm on, squared and added up.
#[test]
fn a_repair_keeps_as_much_in_reserve_as_is_worth_the_goal() {
    let client = oblique();
    let (cushion, sits) = seated(&client);
    let meshes = SearchMeshes::new(&cushion, &sits, Stop::never()).expect("a body");
    let search = Search::solving_only(&cushion, &meshes);
    for home in [
        [100.0, 64.0, 46.0, 44.0, 50.0, 46.0],
        [100.0, 68.0, 46.0, 40.0, 58.0, 43.0],
        [100.0, 70.0, 48.0, 48.0, 50.0, 50.0],
    ] {
        let filled = |counts: &[f64]| search.filled(counts, None).expect("the client rests");
        let off = |filling: &Filling| {
            let [left, right] = clearances(filling);
            (((right - left).abs() - 0.3e-3) / 2.7e-3).max(0.0)
        };
        let was = off(&filled(&home)).max(1.0);
        let cost = |filling: &Filling| {
            let missing = clearances(filling).map(|own| ((28e-3 - own).max(0.0) / 1.5e-3).powi(2));
            missing[0] + missing[1] + (off(filling) - was).max(0.0).powi(2)
        };
        let mut own = adjusting(&home);
        own.bounds = home.iter().map(|count| [*count; 2]).collect();
        own.bounds[1] = [home[1], 92.0];
        let planner =
            Planner::adjusting(&cushion, &client, sits.clone(), &home, own, Stop::never());
        let found = planner.find(Progress::none()).expect("a body").counts;
        let found = filled(&real(&found));
        let all = (home[1] as u32..=92).map(|count| {
            let mut counts = home;
            counts[1] = f64::from(count);
            filled(&counts)
        });
        let safe = all.filter(|own| clearances(own).iter().all(|own| *own >= 25e-3));
        let best = safe.map(|own| cost(&own)).fold(f64::INFINITY, f64::min);
        // The limit stands, whatever it costs the goal.
        assert!(clearances(&found).iter().all(|own| *own >= 25e-3), "{:?}", clearances(&found));
        // Reserves are tried in steps of a millimetre, and are worth a quarter.
        assert!(cost(&found) <= best + 0.5, "{home:?}: {} where {best} is possible", cost(&found));
        let mut whole = home;
        whole[1] = 92.0;
        let whole = cost(&filled(&whole));
        assert!(
            cost(&found) <= whole,
            "{home:?}: {} where all that fits costs {whole}",
            cost(&found)
        );
    }
}

/// Where the limit itself is out of reach, no goal is spared at its cost: as much is put in as may be.
#[test]
fn no_goal_is_spared_below_the_limit() {
    let client = oblique();
    let (cushion, sits) = seated(&client);
    for home in [[100.0, 64.0, 46.0, 44.0, 50.0, 46.0], [100.0, 68.0, 46.0, 40.0, 58.0, 43.0]] {
        let most = home[1] + 6.0;
        let mut own = adjusting(&home);
        own.bounds = home.iter().map(|count| [*count; 2]).collect();
        own.bounds[1] = [home[1], most];
        let planner =
            Planner::adjusting(&cushion, &client, sits.clone(), &home, own, Stop::never());
        let found = planner.find(Progress::none()).expect("a body");
        assert!(!found.not_safe.is_empty(), "so little lifts nobody enough");
        assert_eq!(f64::from(found.counts[1]), most, "{home:?}: {:?}", found.counts);
    }
}

/// What is out of reach is asked for once: more of it would cost more of all else.
#[test]
fn what_cannot_be_reached_is_not_asked_for_again() {
    let client = oblique();
    let (cushion, sits) = seated(&client);
    let home = stock_counts(&cushion);
    let mut own = adjusting(&home);
    own.unsure = [60e-3; 2];
    own.bounds = home.iter().map(|count| [0.65 * count, 1.35 * count]).collect();
    let planner = Planner::adjusting(&cushion, &client, sits, &home, own, Stop::never());
    let times = RefCell::new(Vec::new());
    let tell = |step: PlanStep| {
        if let PlanStep::Search { time } = step {
            times.borrow_mut().push(time);
        }
    };
    planner.find(Progress::to(&tell)).expect("a body");
    let times = times.into_inner();
    assert!(!times.is_empty() && times.iter().all(|time| *time == 1), "{times:?}");
}
