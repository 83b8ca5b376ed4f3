//! Bodies that touch the sheet just where a wall holds it.

use cushion::{Length, Mass, Side};
use mechanics::{
    Body, Cells, NestedMeshes, Obliquity, Outcome, Parameters, SeatedBody, SeatedClient,
    SheetModel, Stop, come_to_rest, stock_fill,
};

/// At one node of a seam wall and body held the sheet at once here, and the active set went to and
/// fro between the two, as did the finish of the slower search: a wall that gives way by less than
/// a micrometre there has no kink.
#[test]
fn a_wall_and_a_body_at_one_node_are_no_trap() {
    let pattern = testkit::pattern("curved-ten", "440x400");
    let (cell, parameters) = (testkit::cell(), Parameters::default());
    let stock = stock_fill(&pattern, &cell, &parameters).expect("it has a stock fill");
    let meshes = NestedMeshes::new(&pattern, Length::from_mm(12.0)).expect("it can be meshed");
    let model = SheetModel::new(&meshes, pattern.wall_height());
    let cells: Vec<Cells> = (stock.compartments.iter())
        .map(|own| Cells {
            count: f64::from(own.cells.stock),
            each: cell.inflated,
            packing: own.packing,
        })
        .collect();
    let rest = |right: f64| {
        let mut client = SeatedClient::new(Mass::from_kg(66.5275483074826));
        client.measures.hip_width = Some(Length::from_m(0.3930311587820197));
        client.measures.thigh_depth.left = Some(Length::from_m(0.4666847168168946));
        let by = Length::from_m(0.007922405524346322);
        client.obliquity = Some(Obliquity::at_seat_bones(Side::Right, by));
        client.load_right = Length::from_m(right);
        let seated = SeatedBody::new(&model, Body::of_client(&client).expect("a body"));
        let rest = come_to_rest(&model, &cells, &seated, &parameters, None, Stop::never());
        assert_eq!(rest.outcome, Outcome::AtRest);
        // A millionth of the load.
        assert!(rest.evidence.sheet_residual < 424e-6);
        rest.resting.expect("it rests").pose
    };
    let at = 0.0495832309053903;
    let [before, trapped, after] = [at - 1e-4, at, at + 1e-4].map(rest);
    for mode in 0..3 {
        // The pose changes steadily with the load, so the answer lies between its neighbours.
        let (low, high) = (before[mode].min(after[mode]), before[mode].max(after[mode]));
        assert!((low..=high).contains(&trapped[mode]), "{mode}");
    }
}
