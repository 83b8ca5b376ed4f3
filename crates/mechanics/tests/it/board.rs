//! The experiment with a board: cells moved across walls that bow do little at first.

use cushion::{Force, Length, Volume};
use mechanics::{
    Board, Body, Cells, Load, NestedMeshes, Parameters, SeatedBody, SheetModel, Stop, come_to_rest,
};
use testkit::assert_near;

use crate::nets;
use crate::rest::numbers;

/// By how many mm the right edge of a board of 400 x 200 mm with 30 kg on it is higher than the
/// left one when cells are moved to the right, over the rear compartments of the reference case.
fn edges(inner_give: f64, moved: [f64; 3]) -> [f64; 3] {
    let meshes = NestedMeshes::of_net(&nets::case_four(), Length::from_mm(8.0)).expect("a mesh");
    let model = SheetModel::new(&meshes, Length::from_mm(60.0));
    let parameters = Parameters { inner_give, ..Parameters::default().with_upright_walls() };
    let mm = Length::from_mm;
    let board = Board { width: mm(400.0), depth: mm(200.0), forward: mm(110.0) };
    let load = Load::new(Force::from_n(30.0 * mechanics::GRAVITY), [0.0, 0.110]);
    let seated = SeatedBody::new(&model, Body::board(board, load));
    moved.map(|moved| {
        let counts = [83.6 - moved, 83.6 + moved, 70.0, 70.0];
        let cells = counts.map(|count| Cells { count, each: Volume::from_ml(25.0), packing: 0.6 });
        let rest = come_to_rest(&model, &cells, &seated, &parameters, None, Stop::never());
        400.0 * numbers(&rest).pose[1]
    })
}

/// Source: an independent program in Python with walls that give all, half or not at all. Where
/// exactly its board lay is not known: 20 mm forward or back are worth 0.6 mm here.
#[test]
fn a_board_tells_how_much_walls_give() {
    for (give, rival) in [(0.0, [3.1, 6.6, 13.5]), (0.5, [0.9, 4.5, 11.5]), (1.0, [0.6, 2.8, 9.1])]
    {
        let found = edges(give, [2.0, 4.0, 8.0]);
        for (found, rival) in found.iter().zip(rival) {
            assert_near(*found, rival, 0.9);
        }
        // A cell does less in the beginning than later, where walls give; else the same.
        let slopes = [found[0] / 2.0, (found[2] - found[1]) / 4.0];
        let dead = slopes[0] < 0.6 * slopes[1];
        assert_eq!(dead, give > 0.0, "{give}: {slopes:?}");
    }
}
