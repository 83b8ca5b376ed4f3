//! The table that works without the program: both sides always, and never a line that harms.

use case::{Client, Flexibility, PelvicObliquity, Want};
use cushion::{Length, Mass, Side};
use fitting::{IfThen, PlanInput, Progress, Spacings, card_advice, plan};
use mechanics::Stop;

use crate::clients::{client, cushion, with_goals};

const DAY: case::Date = case::Date::constant(2026, 3, 2);

fn table(layout: &str, size: &str, client: &Client) -> Vec<IfThen> {
    let cushion = cushion(layout, size, Spacings::all(Length::from_mm(12.0)));
    let stock: Vec<u32> =
        cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect();
    let plan = plan(
        &PlanInput {
            client,
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
    card_advice(client, &cushion, weight, &counts).unwrap().if_then
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

fn rows<'a>(table: &'a [IfThen], beginning: &str) -> Vec<&'a IfThen> {
    table.iter().filter(|row| row.finding.to_lowercase().contains(beginning)).collect()
}

fn moves_cells(row: &IfThen) -> bool {
    ["Put ", "take ", "Move "].iter().any(|word| row.then.contains(word))
}

#[test]
fn every_finding_has_a_line_for_each_side_whatever_the_cushion() {
    let mut large = client("row-six", "520x480");
    large.weighing.as_mut().unwrap().weight = Mass::from_kg(110.0);
    large.measures.hip_width = Some(Length::from_mm(480.0));
    let tables = [
        table("row-six", "440x400", &client("row-six", "440x400")),
        table("curved-ten", "440x400", &client("curved-ten", "440x400")),
        table("island-eight", "440x400", &client("island-eight", "440x400")),
        table("row-six", "520x480", &large),
    ];
    for table in &tables {
        for side in ["left", "right"] {
            assert_eq!(rows(table, &format!("under the {side} seat bone")).len(), 1, "{table:?}");
            assert_eq!(rows(table, &format!("{side} seat bone pinched")).len(), 1, "{table:?}");
            assert_eq!(rows(table, &format!("lower on the {side}")).len(), 1, "{table:?}");
        }
        for alarm in ["felt through the cushion", "mark on the skin"] {
            let alarm = rows(table, alarm);
            assert!(alarm.len() == 1 && alarm[0].then.starts_with("CLIENT OFF NOW"), "{table:?}");
            assert!(!moves_cells(alarm[0]));
        }
        // A line without cells says what is done instead.
        for row in table.iter().filter(|row| !moves_cells(row)) {
            assert!(row.then.to_lowercase().contains("client off"), "{row:?}");
        }
    }
}

#[test]
fn a_pelvis_that_is_fixed_has_no_levelling_line() {
    let oblique = with_obliquity(client("row-six", "440x400"), Flexibility::Fixed);
    let oblique = with_goals(oblique, &[Want::AccommodateObliquity]);
    assert!(rows(&table("row-six", "440x400", &oblique), "lower on the").is_empty());
    let partly = Flexibility::Partly { reducible: Length::from_mm(6.0) };
    let oblique = with_obliquity(client("row-six", "440x400"), partly);
    assert_eq!(rows(&table("row-six", "440x400", &oblique), "lower on the").len(), 2);
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
        let low = rows(&table, &format!("under the {} seat bone", side.words()));
        assert!(!moves_cells(low[0]) && low[0].then.contains("client off, call"), "{low:?}");
    }
}

#[test]
fn held_fingers_take_cells_out_only_over_35_mm_and_never_add() {
    let table = table("row-six", "440x400", &client("row-six", "440x400"));
    for row in rows(&table, "pinched on top") {
        let words: Vec<&str> = row.finding.split_whitespace().collect();
        let at = words.iter().position(|word| *word == "mm").unwrap();
        assert!(words[at - 1].parse::<f64>().unwrap() >= 35.0, "{row:?}");
        assert!(!row.then.contains("Put "), "{row:?}");
    }
}
