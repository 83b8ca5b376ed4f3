//! When a goal that fell short, as was told, is taken up again: where cells meet it now, or half of it, or
//! where it is farther off than was told; what moves before it make of that, and what it may cost the
//! clearance.

use case::{Goal, SiteName, Want};
use cushion::Side;
use mechanics::Stop;

use crate::goals::aims::{Aim, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, NEAR_STOCK};
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::search::planner::{Planner, SPARE, stock_counts};
use crate::search::steps::Search;
use crate::search::task::Task;
use crate::tests::seated::{adjusting, client, seated};

/// The goal is to be near the stock fill, so that how far it is off is counted by hand: one tolerance is a
/// share of the stock count.
#[test]
fn a_goal_that_fell_short_as_was_told_moves_cells_only_where_they_meet_it_or_half_of_it() {
    let mut client = client(74);
    let (cushion, sits) = seated(&client);
    client.goals = vec![Goal { want: Want::NearStock, because: None }];
    let pattern = cushion.pattern();
    let meshes = SearchMeshes::new(&cushion, &sits, Stop::never()).expect("a body");
    let stock = stock_counts(&cushion);
    let off_by = |tolerances: f64| {
        let mut counts = stock.clone();
        counts[0] += tolerances * NEAR_STOCK * counts[0];
        Search::solving_only(&cushion, &meshes).filled(&counts, None).expect("the client rests")
    };
    let at_stock = off_by(0.0);
    let needs = Needs::of(&client);
    let is_worth_it_where =
        |doubted: f64, moved: &[[f64; 2]], home: f64, expected: Option<f64>, found: f64| {
            let home = off_by(home).counts;
            let mut own = adjusting(&home);
            own.expected = expected.map(off_by);
            own.doubted = [doubted; 2];
            own.earlier = moved.iter().map(|both| both.map(|off| off_by(off).counts)).collect();
            let own =
                Planner::adjusting(&cushion, &client, sits.clone(), &home, own, Stop::never());
            let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &at_stock };
            own.is_worth_it(&reader, &reader.wanted(), &off_by(found))
        };
    let is_worth_it_after = |moved: &[[f64; 2]], home, expected, found| {
        is_worth_it_where(0.0, moved, home, expected, found)
    };
    let is_worth_it = |home, expected, found| is_worth_it_after(&[], home, expected, found);
    // As far off as was told: cells that meet it are worth it, or bring it nearer by half of what it is
    // off; less is not.
    assert!(is_worth_it(3.0, Some(3.0), 0.5));
    assert!(is_worth_it(6.0, Some(6.0), 2.9));
    assert!(!is_worth_it(3.0, Some(3.0), 1.6));
    assert!(!is_worth_it(6.0, Some(6.0), 3.1));
    // Farther off than was told, or nothing was told: nearer is better.
    assert!(is_worth_it(3.0, Some(1.0), 1.6));
    assert!(is_worth_it(3.0, None, 1.6));
    // Met, as far as anybody can tell: no cells to meet it closer, whatever was told.
    assert!(!is_worth_it(1.3, Some(1.3), 0.0));
    assert!(!is_worth_it(1.3, None, 0.0));
    // Moves that should have met it make the next a tolerance dearer, each time; moves that were for
    // something else do not.
    assert!(is_worth_it_after(&[[3.0, 3.1], [3.1, 3.0]], 3.0, None, 1.9));
    assert!(!is_worth_it_after(&[[5.0, 3.0]], 3.0, None, 1.9));
    assert!(is_worth_it_after(&[[5.0, 3.0]], 3.0, None, 1.4));
    assert!(!is_worth_it_after(&[[5.0, 4.0], [4.0, 3.0]], 3.0, None, 1.4));
    // Moves from counts that left too little mended that: what they left of the goal was not chosen, and
    // they tried nothing for it. With a clearance of half a metre wanted, all counts leave too little.
    let is_worth_it_mended = |moved: &[[f64; 2]], home, expected, found| {
        is_worth_it_where(0.5, moved, home, expected, found)
    };
    assert!(!is_worth_it_after(&[[2.0, 3.0]], 3.0, Some(3.0), 1.9));
    assert!(is_worth_it_mended(&[[2.0, 3.0]], 3.0, Some(3.0), 1.9));
    assert!(is_worth_it_mended(&[[5.0, 4.0], [4.0, 3.0]], 3.0, Some(3.0), 1.9));
    // Not where they led elsewhere, and what the last ones were for counts.
    assert!(!is_worth_it_mended(&[[2.0, 4.0]], 3.0, Some(3.0), 1.9));
}

/// What is enough is no reason to move cells: goals are pursued with the clearance that there is, and what
/// is more than sure may be spent on them.
#[test]
fn a_goal_is_pursued_with_the_clearance_that_there_is() {
    let client = client(74);
    let (cushion, sits) = seated(&client);
    let pattern = cushion.pattern();
    let meshes = SearchMeshes::new(&cushion, &sits, Stop::never()).expect("a body");
    let stock = stock_counts(&cushion);
    let search = Search::solving_only(&cushion, &meshes);
    let at_stock = search.filled(&stock, None).expect("the client rests");
    let needs = Needs::of(&client);
    let now = Quantity::Clearance(Side::Left).value(&at_stock).expect("a seat bone");
    let limit = sits.parameters.clearance_limit;
    assert!(now > limit + 2e-3, "there is something to spend: {now}");
    let kept = |sure: f64| {
        let mut own = adjusting(&stock);
        own.sure = [sure; 2];
        let own = Planner::adjusting(&cushion, &client, sits.clone(), &stock, own, Stop::never());
        let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &at_stock };
        own.aimed_at(&reader, Task::Pursue, [limit; 2])[0]
    };
    // What whole cells lose is kept beside, and is part of what is sure.
    assert_eq!(kept(now - limit + 1e-3), now - SPARE);
    assert_eq!(kept(now - limit - 0.1e-3), limit + (now - limit - 0.1e-3) - SPARE);
    assert_eq!(kept(1e-3), limit + 1e-3 - SPARE);
    // Never below the limit.
    assert_eq!(kept(0.1e-3), limit);
}

/// Where no hand feels, no more is known than of the seat bones.
#[test]
fn what_nobody_feels_is_no_surer_than_what_is_felt() {
    let client = client(74);
    let (cushion, sits) = seated(&client);
    let stock = stock_counts(&cushion);
    let mut own = adjusting(&stock);
    own.surface_sd = [400.0, 900.0];
    let planner = Planner::adjusting(&cushion, &client, sits, &stock, own, Stop::never());
    let unsure =
        |quantity| planner.unsure(&Aim { rank: 1, quantity, least: 0.0, most: 1e3, unit: 100.0 });
    let at = |site| unsure(Quantity::Surface(site));
    let [left, right] = [Side::Left, Side::Right].map(|side| at(SiteName::SeatBone(side)));
    assert!(left > 0.0 && right > left);
    assert_eq!([at(SiteName::Coccyx), at(SiteName::Trochanter(Side::Left))], [right; 2]);
    // What is counted is known.
    assert_eq!(unsure(Quantity::Roll), 0.0);
}
