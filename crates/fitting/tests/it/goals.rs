//! Each goal on a built-in layout: what is reached, and what is refused.

use case::{Date, FrontSides, Plan, SiteName, Want};
use cushion::{Length, Side};
use fitting::{PlanInput, PreparedCushion, Spacings};

use crate::clients::{client, cushion, with_goals};

fn planned(cushion: &PreparedCushion, client: &case::Client) -> Plan {
    let on = Date::constant(2026, 3, 2);
    let now: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    fitting::plan(&PlanInput { client, cushion, on }, &now).unwrap()
}

fn show(name: &str, plan: &Plan) {
    let counts: Vec<String> = plan
        .counts
        .iter()
        .map(|own| format!("{}:{:+}", own.id, own.planned as i64 - own.stock as i64))
        .collect();
    eprintln!("{name}: {}", counts.join(" "));
    for goal in &plan.goals {
        eprintln!(
            "   {} wanted {} reached {:?} {} met {} {:?}",
            goal.id, goal.wanted, goal.reached, goal.unit, goal.met, goal.why
        );
    }
    eprintln!("   not safe {:?}", plan.not_safe);
    for own in &plan.moves {
        eprintln!("   {own}");
    }
}

#[test]
fn look() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        let cushion = cushion(layout, "440x400", Spacings::default());
        let mm = Length::from_mm;
        for wants in [
            vec![Want::OffLoad { site: SiteName::SeatBone(Side::Left), share: 0.2 }],
            vec![Want::OffLoad { site: SiteName::Coccyx, share: 0.4 }],
            vec![Want::Shelf { height: mm(15.0) }],
            vec![Want::LowerFront { sides: FrontSides::One(Side::Right), by: mm(15.0) }],
            vec![Want::LateralSupport { height: mm(15.0) }],
            vec![Want::EqualFirmness],
            vec![
                Want::OffLoad { site: SiteName::SeatBone(Side::Left), share: 0.15 },
                Want::Shelf { height: mm(10.0) },
            ],
        ] {
            let client = with_goals(client(layout, "440x400"), &wants);
            let start = std::time::Instant::now();
            let plan = planned(&cushion, &client);
            show(&format!("{layout} {:?}", start.elapsed()), &plan);
        }
    }
}
