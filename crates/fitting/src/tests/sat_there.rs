//! Who was checked sat there: an estimate at which the client would fall from those counts explains nothing.

use case::{Check, MeasuredAt, UnderAnswer};
use cushion::{Length, Side};
use mechanics::Stop;

use crate::checks::estimate::{EstimateMeshes, Round, estimate};
use crate::prediction::client_on_cushion::{ClientOnCushion, has_numbers};
use crate::search::planner::stock_counts;
use crate::tests::seated::{client, seated};

/// However far to a side hands say that a client leans, to where more would turn them off the cushion.
#[test]
fn an_estimate_rests_on_the_counts_that_were_checked() {
    let (cushion, mut usual) = seated(&client(74));
    // Who leans far, and whose trunk follows from as high as a trunk can.
    usual.sitter.trunk_height = Length::from_mm(500.0);
    usual.sitter.load_right = Length::from_mm(-5.0);
    let counts = stock_counts(&cushion);
    for (low, lean) in [(30.0, 10.0), (25.0, 20.0), (20.0, 30.0), (15.0, 40.0), (10.0, 60.0)] {
        let mm = Length::from_mm;
        let felt = |side, by| Check::Under { side, answer: UnderAnswer::Felt(mm(by)) };
        for side in [Side::Left, Side::Right] {
            let lower = Check::Lower { lower: Some(side), by: mm(lean), at: MeasuredAt::SeatBones };
            let checks = vec![felt(side, low), felt(side.other(), low + lean), lower];
            let rounds = [Round { counts: counts.clone(), checks }];
            let meshes = EstimateMeshes::of(&cushion);
            let learnt = estimate(meshes, cushion.pattern(), &usual, &rounds, Stop::never());
            let learnt = learnt.expect("an estimate");
            let seated = ClientOnCushion::new(cushion.coarse(), learnt.assumptions, Stop::never());
            let rest = seated.expect("a body").rest(&counts, None).rest;
            assert!(
                has_numbers(&rest),
                "{side:?} by {lean} mm: {:?} at {:.2?}",
                rest.outcome,
                learnt.places
            );
        }
    }
}
