//! Walls that give, on fills by chance: where the search begins does not matter, and the two
//! searches agree.

use cushion::{Length, Mass, Side};
use mechanics::{
    Body, Cells, NestedMeshes, Obliquity, Outcome, Parameters, SeatedBody, SeatedClient,
    SheetModel, Stop, come_to_rest, come_to_rest_slowly, mixed, stock_fill,
};

/// From three fifths to seven fifths of the stock counts, each compartment by itself.
fn by_chance(stock: &[Cells], seed: u64) -> Vec<Cells> {
    let share = |at: usize| {
        let roll = mixed(
            seed.wrapping_mul(64).wrapping_add(at as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15),
        );
        0.6 + 0.8 * ((roll >> 11) as f64 / (1u64 << 53) as f64)
    };
    stock
        .iter()
        .enumerate()
        .map(|(at, own)| Cells { count: (own.count * share(at)).round(), ..*own })
        .collect()
}

#[test]
fn whatever_the_start_and_the_search_the_answer_is_one() {
    let parameters = Parameters::default();
    assert!(parameters.gives());
    let mut compared = 0;
    for (layout, size) in
        [("row-six", "440x400"), ("island-eight", "400x400"), ("curved-ten", "440x400")]
    {
        let pattern = testkit::pattern(layout, size);
        let cell = testkit::cell();
        let meshes = NestedMeshes::new(&pattern, Length::from_mm(16.0)).expect("it is known to do");
        let model = SheetModel::new(&meshes, pattern.wall_height());
        let fill = stock_fill(&pattern, &cell, &parameters).expect("it is known to do");
        let stock: Vec<Cells> = pattern
            .indices()
            .map(|ix| Cells {
                count: f64::from(fill[ix].cells.stock),
                each: cell.inflated,
                packing: fill[ix].packing,
            })
            .collect();
        let mut client = SeatedClient::new(Mass::from_kg(66.0));
        client.obliquity = Some(Obliquity::at_seat_bones(Side::Right, Length::from_mm(8.0)));
        let seated = SeatedBody::new(&model, Body::of_client(&client).expect("it is known to do"));
        let rest = |cells: &[Cells], near| {
            come_to_rest(&model, cells, &seated, &parameters, near, Stop::never())
        };
        let near = rest(&stock, None).resting.expect("it is known to do");
        for seed in 0..20 {
            let cells = by_chance(&stock, seed);
            let (cold, warm) = (rest(&cells, None), rest(&cells, Some(&near)));
            assert!(matches!(cold.outcome, Outcome::AtRest | Outcome::Bottomed), "{layout} {seed}");
            assert_eq!(cold.outcome, warm.outcome, "{layout} {seed}");
            assert!(!cold.evidence.by_barrier, "{layout} {seed}");
            // Unloaded sheets are found to a nanometre, from which cells resist with a kilopascal
            // over 0.18 m2.
            let energies = [cold.evidence.energy, warm.evidence.energy];
            assert!((energies[0] - energies[1]).abs() < 2e-7, "{layout} {seed}: {energies:?}");
            let poses =
                [&cold, &warm].map(|rest| rest.resting.as_ref().expect("it is known to do").pose);
            for (one, other) in poses[0].iter().zip(poses[1]) {
                // That over the least stiffness, some 100 N m for turning.
                assert!((one - other).abs() < 1e-7, "{layout} {seed}: {poses:?}");
            }
            if seed < 3 {
                let slow = come_to_rest_slowly(&model, &cells, &seated, &parameters);
                let off = (slow.evidence.energy - energies[0]).abs();
                assert!(off < 2e-7, "{layout} {seed}: {off}");
            }
            compared += 1;
        }
    }
    assert_eq!(compared, 60);
}
