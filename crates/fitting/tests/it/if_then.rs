//! The table that works without the program: both sides always, and never a line that harms.

use case::{
    CardFinding, Check, Client, Flexibility, IfThen, PelvicObliquity, Remedy, TopAnswer,
    UnderAnswer, Want,
};
use cushion::{Length, Mass, Side};
use fitting::{
    AdjustInput, PlanInput, PreparedCushion, Progress, Spacings, adjust, card_advice, plan,
};
use mechanics::Stop;

use crate::clients::{client, cushion, with_goals};

const DAY: case::Date = case::Date::constant(2026, 3, 2);

fn table(layout: &str, size: &str, client: &Client) -> Vec<IfThen> {
    on_planned_counts(layout, size, client).2
}

/// A cushion, the planned counts and the table for them.
fn on_planned_counts(
    layout: &str,
    size: &str,
    client: &Client,
) -> (PreparedCushion, Vec<u32>, Vec<IfThen>) {
    let cushion = cushion(layout, size, Spacings::all(Length::from_mm(12.0)));
    let stock: Vec<u32> =
        cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect();
    let plan = plan(
        &PlanInput {
            client,
            passed: None,
            cushion: &cushion,
            on: DAY,
            stop: Stop::never(),
            progress: Progress::none(),
        },
        &stock,
    )
    .unwrap();
    let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
    let weight = client.weighing.as_ref().unwrap().weight;
    let table = card_advice(client, &cushion, weight, &counts).unwrap().if_then;
    (cushion, counts, table)
}

fn with_obliquity(client: Client, flexibility: Flexibility) -> Client {
    let mut client = client;
    client.posture.obliquity = Some(PelvicObliquity {
        lower: Side::Left,
        by: Length::from_mm(12.0),
        at: case::MeasuredAt::SeatBones,
        flexibility,
    });
    client
}

/// The line about a finding.
fn line(table: &[IfThen], about: impl Fn(&CardFinding) -> bool) -> &IfThen {
    let mut lines = table.iter().filter(|row| about(&row.found));
    let line = lines.next().unwrap();
    assert!(lines.next().is_none(), "{table:?}");
    line
}

fn too_low(on: Side) -> impl Fn(&CardFinding) -> bool {
    move |found| matches!(found, CardFinding::TooLow { side, .. } if *side == on)
}

fn pinched(on: Side) -> impl Fn(&CardFinding) -> bool {
    move |found| matches!(found, CardFinding::Pinched { side, .. } if *side == on)
}

fn lower(on: Side) -> impl Fn(&CardFinding) -> bool {
    move |found| matches!(found, CardFinding::Lower { side, .. } if *side == on)
}

fn moves_cells(row: &IfThen) -> bool {
    matches!(row.then, Remedy::PutIn { .. } | Remedy::TakeOut { .. } | Remedy::MoveOver { .. })
}

const BOTH: [Side; 2] = [Side::Left, Side::Right];

#[test]
fn every_finding_has_a_line_for_each_side_whatever_the_cushion() {
    let mut large = client("row-six", "520x480");
    large.weighing.as_mut().unwrap().weight = Mass::from_kg(100.0);
    large.measures.hip_width = Some(Length::from_mm(480.0));
    let tables = [
        table("row-six", "440x400", &client("row-six", "440x400")),
        table("curved-ten", "440x400", &client("curved-ten", "440x400")),
        table("island-eight", "440x400", &client("island-eight", "440x400")),
        table("row-six", "520x480", &large),
    ];
    for table in &tables {
        for side in BOTH {
            line(table, too_low(side));
            line(table, pinched(side));
            line(table, lower(side));
        }
        let felt = line(table, |found| *found == CardFinding::BoneFelt);
        assert_eq!(felt.then, Remedy::ClientOffLookAtSetUp);
        let mark = line(table, |found| *found == CardFinding::Mark);
        assert_eq!(mark.then, Remedy::ClientOff);
        // What cells cost stands beside cells, and nowhere else.
        assert!(table.iter().all(|row| row.cost.is_some() == moves_cells(row)), "{table:?}");
    }
}

#[test]
fn a_pelvis_that_is_fixed_has_no_levelling_line() {
    let oblique = with_obliquity(client("row-six", "440x400"), Flexibility::Fixed);
    let oblique = with_goals(oblique, &[Want::AccommodateObliquity]);
    let levelling = |row: &&IfThen| BOTH.iter().any(|side| lower(*side)(&row.found));
    let rows = table("row-six", "440x400", &oblique);
    assert_eq!(rows.iter().filter(levelling).count(), 0);
    let partly = Flexibility::Partly { reducible: Length::from_mm(6.0) };
    let oblique = with_obliquity(client("row-six", "440x400"), partly);
    let rows = table("row-six", "440x400", &oblique);
    assert_eq!(rows.iter().filter(levelling).count(), 2);
}

#[test]
fn no_line_builds_up_under_an_injured_bone() {
    for side in [Side::Left, Side::Right] {
        let mut injured = client("row-six", "440x400");
        injured.skin.injuries.push(case::PressureInjury {
            site: case::SiteName::SeatBone(side),
            category: case::Category::Two,
            state: case::Healing::Open,
            seen_on: DAY,
        });
        let table = table("row-six", "440x400", &injured);
        assert_eq!(line(&table, too_low(side)).then, Remedy::NoCells);
    }
}

#[test]
fn held_fingers_take_cells_out_only_over_35_mm_and_never_add() {
    let table = table("row-six", "440x400", &client("row-six", "440x400"));
    for side in BOTH {
        let row = line(&table, pinched(side));
        let CardFinding::Pinched { felt, .. } = row.found else { unreachable!("it is asked for") };
        assert!(felt >= Length::from_mm(35.0), "{row:?}");
        assert!(!matches!(row.then, Remedy::PutIn { .. } | Remedy::MoveOver { .. }), "{row:?}");
    }
}

/// Who has no program does by the table what an adjustment would say, and no more: a few cells out where
/// so much is felt, and none where it is less.
#[test]
fn held_fingers_take_out_what_an_adjustment_takes_out() {
    let mut taken = 0;
    for (layout, kg) in
        [("row-six", 55.0), ("row-six", 72.0), ("curved-ten", 72.0), ("island-eight", 72.0)]
    {
        let mut own = client(layout, "440x400");
        own.weighing.as_mut().unwrap().weight = Mass::from_kg(kg);
        let (cushion, counts, table) = on_planned_counts(layout, "440x400", &own);
        let after = |side: Side, felt: Length| {
            let checks = [
                Check::Top { side, answer: TopAnswer::Pinched },
                Check::Under { side, answer: UnderAnswer::Felt(felt) },
            ];
            let identity = &testkit::identity(cushion.pattern());
            let (client, cushion, now) = (&own, &cushion, counts.as_slice());
            let (on, stop, checks) = (DAY, Stop::never(), checks.as_slice());
            adjust(&AdjustInput { client, cushion, on, now, checks, identity, stop }).unwrap()
        };
        for side in BOTH {
            let row = line(&table, pinched(side));
            let CardFinding::Pinched { felt, .. } = row.found else { unreachable!("asked for") };
            let told = after(side, felt);
            match row.then {
                Remedy::TakeOut { cells, out_of } => {
                    let [only] = &told.moves[..] else { panic!("{layout} {kg}: {told:?}") };
                    let from = cushion.pattern().by_number(out_of).unwrap();
                    let left = counts[from.index()] - told.counts[from.index()];
                    assert_eq!((only.cells, left), (cells, cells), "{layout} {kg}: {row:?}");
                    assert!(cells <= 6 && 10 * cells <= counts[from.index()], "{row:?}");
                    taken += 1;
                }
                _ => assert!(told.moves.is_empty(), "{layout} {kg}: {row:?} {told:?}"),
            }
            let less = after(side, felt - Length::from_mm(2.0));
            assert!(less.moves.is_empty(), "{layout} {kg}: {row:?} {less:?}");
        }
    }
    assert!(taken >= 4, "most lines move cells: {taken}");
}
