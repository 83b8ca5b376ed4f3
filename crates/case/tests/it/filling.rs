//! A fill that goes on: it is no filled cushion, and nothing of it is used where it is stale.

use case::{
    Beside, Client, Entry, Filling, Lapse, RecordNote, SiteName, SkinAnswer, SkinSeen,
    StaleFilling, State, Weighed, state,
};
use cushion::Mass;

use crate::record::{checked, client, day, filled, moved, plan, recount, withdrawn};

/// A fill of the last plan of a record, begun at its end, with its first compartment counted.
fn filling(record: Vec<Entry>) -> Client {
    let mut client = client(record);
    let plan = client.latest_plan().expect("a plan").clone();
    let mut own = Filling::of(&plan, day(9), "OT".into(), client.record.len());
    own.counts[0].put = Some(51);
    client.filling = Some(own);
    client
}

fn stale(client: &Client) -> Option<StaleFilling> {
    let so_far = client.filling_so_far().expect("a fill was begun");
    assert_eq!(client.filling_goes_on().is_some(), so_far.stale.is_none());
    so_far.stale
}

/// The same after more entries.
fn then(entries: Vec<Entry>) -> Option<StaleFilling> {
    let mut client = filling(vec![plan(2, [52, 48, 50])]);
    client.record.extend(entries);
    stale(&client)
}

#[test]
fn a_fill_goes_on_only_for_the_counts_that_are_planned() {
    assert_eq!(then(vec![]), None);
    // The same counts again are the same fill.
    assert_eq!(then(vec![plan(9, [52, 48, 50])]), None);
    assert_eq!(then(vec![plan(9, [52, 48, 51])]), Some(StaleFilling::OtherCounts));
    assert_eq!(then(vec![withdrawn(9, 1)]), Some(StaleFilling::OtherCounts));
    let mut other = filling(vec![plan(2, [52, 48, 50])]);
    other.cushion.size = "400x400".parse().unwrap();
    assert_eq!(stale(&other), Some(StaleFilling::OtherCounts));
}

#[test]
fn a_fill_does_not_go_on_after_something_else_was_done_with_the_cushion() {
    let since = Some(StaleFilling::Since);
    assert_eq!(then(vec![filled(9, [52, 48, 50])]), since);
    assert_eq!(then(vec![recount(9, vec![(1, 50)])]), since);
    assert_eq!(then(vec![checked(9)]), since);
    assert_eq!(then(vec![filled(9, [52, 48, 50]), moved(9, vec![])]), since);
    // What was withdrawn was not done.
    assert_eq!(then(vec![filled(9, [52, 48, 50]), withdrawn(9, 2)]), None);
    let weighed = Weighed { on: day(9), by: "OT".into(), weight: Mass::from_kg(61.0) };
    let seen = SkinSeen {
        on: day(9),
        by: "nurse".into(),
        site: SiteName::Coccyx,
        answer: SkinAnswer::Clear,
    };
    assert_eq!(then(vec![Entry::Weighed(weighed), Entry::Skin(seen)]), None);
}

#[test]
fn what_was_fitted_is_not_while_it_is_filled_anew() {
    let record = vec![plan(2, [52, 48, 50]), filled(3, [52, 48, 50]), checked(4)];
    let of = |client: &Client| state(client, day(9), Beside::default()).state.id();
    assert_eq!(of(&client(record.clone())), "fitted");
    let client = filling(record.clone());
    let standing = state(&client, day(9), Beside::default());
    let State::Lapsed(_, lapse) = standing.state else { panic!("{standing:?}") };
    assert_eq!((lapse, standing.fitted()), (Lapse::Filling(day(9)), None));
    // By the record the cells are where they were, and that it is filled is told.
    assert_eq!(client.cushion_now(), crate::record::client(record).cushion_now());
    let notes = client.record_notes();
    let told = notes.iter().find_map(|own| match own {
        RecordNote::Filling(own) => Some((own.counted, own.of)),
        _ => None,
    });
    assert_eq!(told, Some((1, 3)));
}

#[test]
fn a_fill_before_any_other_is_told_too() {
    let mut client = filling(vec![plan(2, [52, 48, 50])]);
    client.record.clear();
    assert_eq!(client.cushion_now(), None);
    assert_eq!(client.record_notes().len(), 1);
}
