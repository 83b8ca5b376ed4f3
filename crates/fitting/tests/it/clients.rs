//! Invented clients and cushions for the tests.

use case::{Client, Goal, Want};
use fitting::{PreparedCushion, Spacings};

/// A cushion of a built-in layout; coarse where numbers need not be good.
pub(crate) fn cushion(layout: &str, size: &str, spacings: Spacings) -> PreparedCushion {
    let pattern = testkit::pattern(layout, size);
    PreparedCushion::new(&pattern, &testkit::cell(), spacings).unwrap()
}

/// A client of 72 kg, from the text of a file.
pub(crate) fn client(layout: &str, size: &str) -> Client {
    let text = format!(
        "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
         [measures]\nunits = \"mm\"\ntaken_on = 2026-03-01\ntaken_by = \"OT\"\n\
         hip_width = 400\nthigh_depth = {{ left = 480, right = 480 }}\n\
         [weight]\nkg = 72\nweighed_on = 2026-03-01\n\
         [cushion]\nlayout = \"{layout}\"\nsize = \"{size}\"\nspare_cells = 20\n"
    );
    files::read_client(&text).value.unwrap()
}

/// The same with goals, the most important first.
pub(crate) fn with_goals(client: Client, wants: &[Want]) -> Client {
    let goals = wants.iter().map(|want| Goal { want: *want, because: None }).collect();
    Client { goals, ..client }
}
