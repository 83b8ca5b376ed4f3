//! Who sits at the brink of tipping: on one of two meshes they tip already, on the other they do not.

use cushion::{CompartmentIx, Mass, Side};
use mechanics::Stop;

use crate::goals::known::KnownFillings;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{ClientOnCushion, SearchMeshes, has_numbers};
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::search::planner::stock_counts;
use crate::search::steps::Search;

const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
    [measures]\nunits = \"mm\"\nhip_width = 390\n\
    thigh_depth = { left = 470, right = 470 }\n\
    [weight]\nkg = 60\nweighed_on = 2026-03-01\n\
    [posture]\nobliquity = { lower = \"left\", by = 18, at = \"seat bones\", is = \"flexible\" }\n\
    [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";

#[test]
fn who_tips_only_where_moves_are_tried_is_searched_for_where_counts_are_solved() {
    let client = files::read_client(CLIENT).value.expect("a client");
    let pattern = testkit::pattern("row-six", "440x400");
    let cushion = PreparedCushion::new(&pattern, &testkit::cell(), Spacings::default());
    let cushion = cushion.expect("a cushion");
    let sits = assumptions_of(&client, &cushion, Mass::from_kg(60.0), Stop::never());
    let sits = sits.expect("a body");
    let meshes = SearchMeshes::new(&cushion, &sits, Stop::never()).expect("a body");
    let stock = stock_counts(&cushion);
    // So many cells more on the lower side, and as many less on the other.
    let turned = |share: f64| {
        let by = |ix: CompartmentIx| match pattern[ix].side {
            Some(Side::Left) => 1.0 + share,
            Some(Side::Right) => 1.0 - share,
            None => 1.0,
        };
        pattern.indices().zip(&stock).map(|(ix, count)| by(ix) * count).collect::<Vec<f64>>()
    };
    let rests = |mesh: &ClientOnCushion<'_>, share: f64| {
        has_numbers(&mesh.rest_to_compare(&turned(share), None).rest)
    };
    // The most that a mesh bears.
    let most = |mesh| {
        let [mut rests_at, mut tips_at] = [0.0, 0.6];
        for _ in 0..12 {
            let middle = 0.5 * (rests_at + tips_at);
            if rests(mesh, middle) { rests_at = middle } else { tips_at = middle }
        }
        rests_at
    };
    let [least, greatest] = [most(&meshes.coarse), most(&meshes.rough)];
    assert!(least < greatest, "the rough mesh bears more of this client: {least} {greatest}");
    let brink = turned(0.5 * (least + greatest));
    // It is the other way round with other clients; here the meshes change places for it.
    let known = [KnownFillings::default(), KnownFillings::default()];
    let search = Search {
        known: Some(&known[0]),
        known_roughly: Some(&known[1]),
        solved_on: &meshes.rough,
        tried_on: &meshes.coarse,
        ..Search::solving_only(&cushion, &meshes)
    };
    let here = search.filled(&brink, None).expect("it rests where counts are solved");
    let both = search.filling_on_both_meshes(&here);
    assert_eq!(both.there.resting.pose, here.resting.pose);
    // Moves can be tried there, away from the brink.
    let less = turned(0.9 * least);
    assert!(both.rough.filled(&less, Some(&both.there)).is_some());
    // Who tips on neither mesh has an answer on each.
    let here = search.filled(&less, None).expect("it rests");
    assert_ne!(search.filling_on_both_meshes(&here).there.resting.pose, here.resting.pose);
}
