//! A client over six rows at 16 mm, and an adjustment that knows nothing of how they sit.

use case::Client;
use cushion::Length;
use mechanics::Stop;

use crate::prediction::assumptions::assumptions_of;
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::prediction::unknowns::Assumptions;
use crate::search::task::Adjusting;

/// A client of so many kilograms.
pub(super) fn client(kg: u32) -> Client {
    let text = format!(
        "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
         [measures]\nunits = \"mm\"\nhip_width = 390\n\
         thigh_depth = {{ left = 470, right = 480 }}\n\
         [weight]\nkg = {kg}\nweighed_on = 2026-03-01\n\
         [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n"
    );
    files::read_client(&text).value.expect("a client")
}

/// The cushion, and how a client is assumed to sit on it.
pub(super) fn seated(client: &Client) -> (PreparedCushion, Assumptions) {
    let pattern = testkit::pattern("row-six", "440x400");
    let spacings = Spacings::all(Length::from_mm(16.0));
    let cushion = PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion");
    let weight = client.latest_weighing().expect("a weight").weight;
    let sits = assumptions_of(client, &cushion, weight, Stop::never()).expect("a body");
    (cushion, sits)
}

/// Knows nothing of how a client sits, so that a goal is off as its aims say.
pub(super) fn adjusting(counts: &[f64]) -> Adjusting {
    Adjusting {
        expected: None,
        unsure: [0.0; 2],
        doubted: [0.0; 2],
        sure: [0.0; 2],
        surface_sd: [0.0; 2],
        higher_sd: 0.0,
        bounds: counts.iter().map(|count| [0.0, 2.0 * count]).collect(),
        held: Vec::new(),
        earlier: Vec::new(),
        passed: None,
        symmetric: false,
    }
}
