//! Predictions: laws of the numbers and of their spread.

use case::{Client, PredictedSeat};
use cushion::{Length, Mass, Side};
use fitting::{PreparedCushion, Spacings};
use mechanics::Stop;

use crate::clients::{client, cushion};

fn seat(cushion: &PreparedCushion, client: &Client, kg: f64, counts: &[u32]) -> PredictedSeat {
    let (prediction, cuts) =
        cushion.predict(client, Mass::from_kg(kg), counts, Stop::never()).unwrap();
    assert_eq!(cuts.len(), 3);
    prediction.seated.unwrap()
}

fn stock(cushion: &PreparedCushion) -> Vec<u32> {
    cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect()
}

#[test]
fn loads_by_region_and_by_compartment_add_up_to_the_weight_on_the_seat() {
    let cushion = cushion("curved-ten", "440x400", Spacings::all(Length::from_mm(8.0)));
    let seat = seat(&cushion, &client("curved-ten", "440x400"), 72.0, &stock(&cushion));
    let whole = 72.0 * 0.65 * 9.80665;
    let compartments: f64 =
        seat.compartments.iter().map(|compartment| compartment.load.to_n()).sum();
    let regions = [seat.pelvis_load, seat.thigh_load];
    let regions: f64 = regions.iter().map(|region| region.left.to_n() + region.right.to_n()).sum();
    // A millionth of the load, as the mechanics balances.
    assert!((compartments - whole).abs() < 1e-6 * whole && (regions - whole).abs() < 1e-6 * whole);
    // The pelvis carries most of it, and even sides carry alike.
    assert!(seat.pelvis_load.left.to_n() > seat.thigh_load.left.to_n());
    assert!((seat.pelvis_load.left.to_n() - seat.pelvis_load.right.to_n()).abs() < 0.01 * whole);
}

#[test]
fn a_spread_holds_its_value_and_is_wider_for_the_whole_than_for_no_range() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let sitter = client("row-six", "440x400");
    let free = seat(&cushion, &sitter, 72.0, &stock(&cushion));
    for side in [Side::Left, Side::Right] {
        let spread = free.clearance[side];
        assert!(spread.low < spread.central && spread.central < spread.high);
        // From the reference cases: some 5 to 11 mm for each of the larger unknowns.
        let below = (spread.central - spread.low).to_mm();
        assert!((5.0..20.0).contains(&below), "{below}");
    }
    for compartment in &free.compartments {
        assert!(
            compartment.fill.low <= compartment.fill.central
                && compartment.fill.central <= compartment.fill.high
        );
    }
    // The greatest disc carries at least as much as that under either seat bone.
    let most = free.sites.iter().map(|site| site.surface.central).reduce(cushion::Pressure::max);
    assert!(free.greatest_surface.central >= most.unwrap());
}

/// Cells sealed at sea level are tauter higher up, and their film lets them grow only as far as
/// the client had pressed them: the client sits higher by a millimetre or two, on firmer cells.
#[test]
fn the_same_counts_carry_higher_at_altitude() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let mut sitter = client("row-six", "440x400");
    let low = seat(&cushion, &sitter, 72.0, &stock(&cushion));
    sitter.altitudes.home = Some(Length::from_m(1600.0));
    let high = seat(&cushion, &sitter, 72.0, &stock(&cushion));
    assert!(high.clearance.left.central > low.clearance.left.central + Length::from_mm(0.5));
    assert!(high.compartments[0].fill.central > low.compartments[0].fill.central);
}

#[test]
fn a_heavier_client_sits_deeper_and_a_mirrored_filling_mirrors_the_answer() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let sitter = client("row-six", "440x400");
    let even = stock(&cushion);
    let [light, heavy] = [60.0, 80.0].map(|kg| seat(&cushion, &sitter, kg, &even));
    assert!(heavy.clearance.left.central < light.clearance.left.central);
    // The compartments are numbered left, right, left, right.
    let mut left = even.clone();
    left[0] -= 16;
    let mut right = even;
    right[1] -= 16;
    let (left, right) =
        (seat(&cushion, &sitter, 70.0, &left), seat(&cushion, &sitter, 70.0, &right));
    assert_eq!((left.lower_side, right.lower_side), (Some(Side::Left), Some(Side::Right)));
    // Rounding of the solver.
    assert!((left.lower_by - right.lower_by).abs() < Length::from_mm(1e-4));
    let swapped = left.clearance.left.central - right.clearance.right.central;
    assert!(swapped.abs() < Length::from_mm(1e-4));
}

/// Nobody sits so evenly that they may not lean: a level lean is told with its range, which opens
/// to both sides alike where client and cushion are the same on both.
#[test]
fn a_level_client_may_lean_to_either_side() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let roll = seat(&cushion, &client("row-six", "440x400"), 72.0, &stock(&cushion)).roll_deg;
    // Rounding of the search.
    assert!(roll.central.abs() < 1e-6, "{roll:?}");
    assert!(roll.high > 0.2 && (roll.high + roll.low).abs() < 1e-3 * roll.high, "{roll:?}");
}
