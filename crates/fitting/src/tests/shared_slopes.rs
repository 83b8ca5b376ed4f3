//! Estimates that take what the unknowns do from a like cushion, against those that find it.

use case::{Check, MeasuredAt, UnderAnswer};
use cushion::{Length, Mass, Side};
use mechanics::Stop;

use crate::checks::estimate::{EstimateMeshes, Round, estimate_like};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::prepared::{PreparedCushion, Spacings};

const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
    [measures]\nunits = \"mm\"\nhip_width = 390\n\
    thigh_depth = { left = 470, right = 480 }\n\
    [weight]\nkg = 74\nweighed_on = 2026-03-01\n\
    [cushion]\nlayout = \"curved-ten\"\nsize = \"440x400\"\nspare_cells = 20\n";

fn answers() -> [Vec<Check>; 3] {
    let under = |side, mm| Check::Under { side, answer: UnderAnswer::Felt(Length::from_mm(mm)) };
    let lower = |mm| Check::Lower {
        lower: Some(Side::Right),
        by: Length::from_mm(mm),
        at: MeasuredAt::SeatBones,
    };
    [
        vec![lower(25.0)],
        vec![under(Side::Left, 15.0), under(Side::Right, 35.0)],
        vec![under(Side::Left, 20.0), under(Side::Right, 20.0), lower(10.0)],
    ]
}

/// What is compared is how badly all fits at the end, from which likelihoods come: it was off by 2.6 %
/// at most, up or down, since effects bend between fills and both searches end after few steps. An
/// explanation that fits is apart from one that does not by several times that.
#[test]
fn a_quarter_short_fits_as_well_with_the_slopes_of_the_whole_fill() {
    let client = files::read_client(CLIENT).value.expect("a client");
    let pattern = testkit::pattern("curved-ten", "440x400");
    let spacings = Spacings::all(Length::from_mm(16.0));
    let cushion = PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion");
    let usual = assumptions_of(&client, &cushion, Mass::from_kg(74.0), Stop::never());
    let usual = usual.expect("a body");
    let stock: Vec<f64> =
        pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.stock)).collect();
    for checks in answers() {
        let estimated = |counts: Vec<f64>, like: Option<&_>| {
            let rounds = [Round { counts, checks: checks.clone() }];
            let meshes = EstimateMeshes::of(&cushion);
            estimate_like(meshes, &pattern, &usual, &rounds, like, Stop::never()).expect("a body")
        };
        let (_, around) = estimated(stock.clone(), None);
        for short in 0..stock.len() {
            let mut counts = stock.clone();
            counts[short] *= 0.75;
            let (own, _) = estimated(counts.clone(), None);
            let (alike, found) = estimated(counts, around.as_ref());
            assert!(found.is_none(), "nothing is found anew");
            let off = alike.disagreement - own.disagreement;
            assert!(
                off.abs() < 0.04 * own.disagreement,
                "{checks:?} {short}: {} {}",
                alike.disagreement,
                own.disagreement
            );
        }
    }
}
