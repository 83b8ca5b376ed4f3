//! Invented clients and cushions for the tests.

use case::{Client, CushionIdentity, Date, Digest, Entry, Goal, RecordedCount, RecordedPlan, Want};
use cushion::Name;
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

/// By which a cushion is known again, for clients without a record.
pub(crate) fn identity(cushion: &PreparedCushion) -> CushionIdentity {
    let pattern = cushion.pattern();
    CushionIdentity {
        layout: pattern.layout().to_string(),
        layout_digest: digest(),
        cell_digest: digest(),
        size: pattern.size(),
        compartments: pattern.compartments().iter().map(|it| (it.id.clone(), it.number)).collect(),
    }
}

/// Counts as a recorded plan has them, of the cushion with that identity.
pub(crate) fn recorded(cushion: &PreparedCushion, counts: &[u32]) -> Entry {
    let pattern = cushion.pattern();
    let counts = pattern.compartments().iter().zip(counts);
    Entry::Plan(RecordedPlan {
        on: Date::constant(2026, 3, 2),
        by: "OT".to_owned(),
        layout: pattern.layout().to_string(),
        size: pattern.size(),
        counts: counts
            .map(|(compartment, count)| RecordedCount {
                id: Name::new(compartment.id.as_str()).expect("an id"),
                number: compartment.number,
                stock: *count,
                planned: *count,
            })
            .collect(),
        program: "test".to_owned(),
        layout_digest: digest(),
        cell_digest: digest(),
        parameters_digest: digest(),
        drawn_by: None,
        why: None,
        expected: None,
    })
}

fn digest() -> Digest {
    Digest::new("0123456789abcdef").unwrap()
}
