//! A client with a record, for the tests.

use case::{
    Check, Client, ClientCode, CushionChoice, Date, Digest, Entry, Filled, LayoutRef, Moved,
    PartsChecked, RecordedCount, RecordedPlan, Recount, Weighing, Withdrawn,
};
use cushion::{Length, Mass, Name};

/// Cells that come in the bag.
pub(crate) const SUPPLIED: u32 = 20;
/// Cells of each compartment as supplied.
pub(crate) const STOCK: u32 = 50;

/// A day of March.
pub(crate) fn day(of_march: i8) -> Date {
    Date::constant(2026, 3, of_march)
}

/// A client who was measured and weighed, with a cushion of three compartments.
pub(crate) fn client(record: Vec<Entry>) -> Client {
    let cushion = CushionChoice {
        layout: LayoutRef::Named { name: "row".into(), parameters: <_>::default() },
        size: "440x400".parse().unwrap(),
        cell: "pillow-25".into(),
        spare_cells: SUPPLIED,
        serial: None,
        first_file: None,
    };
    let mut client = Client::unknown(ClientCode::new("K-17").unwrap(), cushion);
    client.measures.hip_width = Some(Length::from_mm(380.0));
    client.weighing = Some(Weighing { weight: Mass::from_kg(60.0), on: day(1) });
    client.record = record;
    client
}

pub(crate) fn numbered(counts: [u32; 3]) -> Vec<(u8, u32)> {
    counts.into_iter().enumerate().map(|(at, cells)| (at as u8 + 1, cells)).collect()
}

pub(crate) fn plan(of_march: i8, counts: [u32; 3]) -> Entry {
    let digest = || Digest::new("0123456789abcdef").unwrap();
    let count = |(number, planned)| RecordedCount {
        id: Name::new(&format!("part-{number}")).unwrap(),
        number,
        stock: STOCK,
        planned,
    };
    Entry::Plan(RecordedPlan {
        on: day(of_march),
        by: "OT".into(),
        layout: "row".into(),
        size: "440x400".parse().unwrap(),
        counts: numbered(counts).into_iter().map(count).collect(),
        program: "seatwright 0.1.0".into(),
        layout_digest: digest(),
        cell_digest: digest(),
        parameters_digest: digest(),
        drawn_by: None,
        why: None,
        expected: None,
    })
}

pub(crate) fn filled(of_march: i8, counts: [u32; 3]) -> Entry {
    Entry::Filled(Filled {
        on: day(of_march),
        by: "OT".into(),
        cushion: Some(("row".into(), "440x400".parse().unwrap())),
        counts: numbered(counts),
        spare: None,
        batch: None,
        serial: None,
        why: None,
    })
}

pub(crate) fn recount(of_march: i8, counts: Vec<(u8, u32)>) -> Entry {
    Entry::Recount(Recount { on: day(of_march), by: "carer".into(), counts, spare: None })
}

pub(crate) fn moved(of_march: i8, moves: Vec<case::Move>) -> Entry {
    Entry::Moved(Moved { on: day(of_march), by: "OT".into(), moves, why: None })
}

pub(crate) fn withdrawn(of_march: i8, entry: usize) -> Entry {
    let because = "a mistake".into();
    Entry::Withdrawn(Withdrawn { on: day(of_march), by: "OT".into(), entry, because })
}

/// All that a check needs to pass.
pub(crate) const WHOLE: [&str; 5] =
    ["top left=safe", "top right=safe", "under left=30mm", "under right=30mm", "skin coccyx=clear"];

pub(crate) fn check_of(found: &[&str], of_march: i8) -> PartsChecked {
    PartsChecked {
        on: day(of_march),
        by: "OT".into(),
        found: found.iter().map(|own| Check::read_whole(own).unwrap()).collect(),
        transfer: true,
        reach: true,
        passed: Some(true),
        why: None,
    }
}

pub(crate) fn checked(of_march: i8) -> Entry {
    Entry::Checked(check_of(&WHOLE, of_march))
}
