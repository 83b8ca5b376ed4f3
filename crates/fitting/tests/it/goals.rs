//! Each goal on the built-in layouts: what is reached, and what is refused.

use case::{
    Base, ByHand, Category, Client, Date, Flexibility, FrontSides, GoalNumber, GoalOutcome,
    Healing, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity, PelvicTilt, Plan, PressureInjury,
    Shortfall, SiteName, Tilt, Want, WhyNoPlan,
};
use cushion::{Length, Side};
use fitting::{PlanInput, PlanStep, PreparedCushion, Progress, Spacings};
use mechanics::Stop;

use crate::clients::{client, cushion, with_goals};

const DAY: Date = Date::constant(2026, 3, 2);

fn input<'a>(
    cushion: &'a PreparedCushion,
    client: &'a Client,
    progress: Progress<'a>,
) -> PlanInput<'a> {
    PlanInput { client, cushion, passed: None, on: DAY, stop: Stop::never(), progress }
}

fn planned(cushion: &PreparedCushion, client: &Client) -> Plan {
    let now: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    fitting::plan(&input(cushion, client, Progress::none()), &now).unwrap()
}

/// Plans for a client with these goals on a mesh of 8 mm, which is within half a millimetre.
fn plan_of(layout: &str, client: impl Fn(Client) -> Client, wants: &[Want]) -> Plan {
    let cushion = cushion(layout, "440x400", Spacings::all(Length::from_mm(8.0)));
    planned(&cushion, &with_goals(client(crate::clients::client(layout, "440x400")), wants))
}

/// The number that a goal reaches: per cent of pressure less, or mm.
fn reached(goal: &GoalOutcome) -> f64 {
    match goal.reached.unwrap() {
        GoalNumber::Relief(share) => 100.0 * share,
        GoalNumber::Higher(by) | GoalNumber::FrontLower(by) => by.to_mm(),
        other => panic!("no goal here is about {other:?}"),
    }
}

fn oblique(by: f64, flexibility: Flexibility) -> impl Fn(Client) -> Client {
    move |mut client| {
        client.posture.obliquity = Some(PelvicObliquity {
            lower: Side::Left,
            by: Length::from_mm(by),
            at: MeasuredAt::SeatBones,
            flexibility,
        });
        client
    }
}

fn same(client: Client) -> Client {
    client
}

/// By the definition of each goal; tolerances are those of its words: 80 % of an off-loading,
/// 5 mm of a step, 3 mm of a height.
#[test]
fn goals_within_reach_are_reached_within_the_limits() {
    let mm = Length::from_mm;
    let left = SiteName::SeatBone(Side::Left);
    for layout in ["row-six", "curved-ten"] {
        let off = plan_of(layout, same, &[Want::OffLoad { site: left, share: 0.10 }]);
        assert!(off.not_safe.is_empty() && off.goals[0].met && reached(&off.goals[0]) >= 8.0);
        let shelf = plan_of(layout, same, &[Want::Shelf { height: mm(10.0) }]);
        assert!(shelf.goals[0].met && (reached(&shelf.goals[0]) - 10.0).abs() <= 5.0);
        let front = Want::LowerFront { sides: FrontSides::One(Side::Right), by: mm(10.0) };
        let front = plan_of(layout, same, &[front]);
        assert!(front.goals[0].met && (reached(&front.goals[0]) - 10.0).abs() <= 3.0);
        // Nothing else asked for is touched.
        let changed = front.counts.iter().filter(|count| count.planned != count.stock).count();
        assert_eq!(changed, 1, "{:?}", front.counts);
    }
}

#[test]
fn an_obliquity_is_corrected_as_far_as_it_goes_and_no_further() {
    for (flexibility, remains) in [
        (Flexibility::Flexible, 0.0),
        (Flexibility::Partly { reducible: Length::from_mm(5.0) }, 7.0),
    ] {
        let plan = plan_of("row-six", oblique(12.0, flexibility), &[Want::CorrectObliquity]);
        assert!(plan.goals[0].met && plan.not_safe.is_empty(), "{:?}", plan.goals);
        let seat = plan.prediction.unwrap().seated.unwrap();
        let lower = match seat.lower_side {
            Some(Side::Right) => -seat.lower_by.to_mm(),
            _ => seat.lower_by.to_mm(),
        };
        assert!((lower - remains).abs() <= 3.0, "{lower}");
    }
}

#[test]
fn a_fixed_obliquity_is_accommodated_with_more_immersion_on_the_low_side() {
    let fixed = oblique(12.0, Flexibility::Fixed);
    let plan = plan_of("row-six", fixed, &[Want::AccommodateObliquity]);
    assert!(plan.goals[0].met, "{:?}", plan.goals);
    let seat = plan.prediction.unwrap().seated.unwrap();
    assert_eq!(seat.lower_side, Some(Side::Left));
    assert!((seat.lower_by.to_mm() - 12.0).abs() <= 3.0);
    assert!(seat.immersion.left > seat.immersion.right);
}

#[test]
fn what_would_harm_is_refused_with_its_reason() {
    let injured = |client: Client| {
        let mut client = oblique(12.0, Flexibility::Flexible)(client);
        client.skin.injuries.push(PressureInjury {
            site: SiteName::SeatBone(Side::Left),
            category: Category::Two,
            state: Healing::Healing,
            seen_on: DAY,
        });
        client
    };
    let tilted = |mut client: Client| {
        client.posture.tilt =
            Some(PelvicTilt { direction: Tilt::Posterior, degrees: None, fixed: true });
        client
    };
    let stiff = |mut client: Client| {
        client.posture.hip_flexion.right = Some(80.0);
        client
    };
    let shelf = [Want::Shelf { height: Length::from_mm(10.0) }];
    let fixed = oblique(12.0, Flexibility::Fixed);
    let left = Shortfall::InjuredLowSide(Side::Left);
    for (plan, why) in [
        (plan_of("row-six", injured, &[Want::CorrectObliquity]), left),
        (plan_of("row-six", fixed, &[Want::CorrectObliquity]), Shortfall::FixedObliquity),
        (plan_of("row-six", tilted, &shelf), Shortfall::FixedPosteriorTilt),
        (plan_of("row-six", stiff, &shelf), Shortfall::StiffHip),
    ] {
        let goal = &plan.goals[0];
        assert_eq!((goal.met, goal.reached, goal.why), (false, None, Some(why)));
        // The nearest safe plan is there all the same.
        assert!(plan.not_safe.is_empty());
    }
}

#[test]
fn limits_come_before_goals() {
    // A cushion that is rated for 85 kg has little to take from under a heavy client.
    let heavy = |mut client: Client| {
        client.weighing.as_mut().unwrap().weight = cushion::Mass::from_kg(83.0);
        client
    };
    let left = SiteName::SeatBone(Side::Left);
    let plan = plan_of("row-six", heavy, &[Want::OffLoad { site: left, share: 0.5 }]);
    assert!(!plan.goals[0].met && plan.goals[0].why.is_some());
    assert!(plan.not_safe.is_empty(), "{:?}", plan.not_safe);
    let seat = plan.prediction.unwrap().seated.unwrap();
    for side in [Side::Left, Side::Right] {
        assert!(seat.clearance[side].central.to_mm() >= 25.0 - 0.1);
        assert!(seat.clearance[side].low.to_mm() >= 10.0 - 0.1);
    }
}

#[test]
fn an_injured_site_gets_no_more_pressure_for_another_goal() {
    let coccyx = |mut client: Client| {
        client.skin.injuries.push(PressureInjury {
            site: SiteName::Coccyx,
            category: Category::One,
            state: Healing::Open,
            seen_on: DAY,
        });
        client
    };
    let left = SiteName::SeatBone(Side::Left);
    let wants = [Want::OffLoad { site: left, share: 0.10 }];
    let pressure = |plan: &Plan| {
        let seat = plan.prediction.as_ref().unwrap().seated.as_ref().unwrap();
        seat.sites.iter().find(|site| site.site == SiteName::Coccyx).unwrap().surface.central
    };
    let stock = plan_of("row-six", same, &[]);
    let spared = plan_of("row-six", coccyx, &wants);
    // 2 % that nobody can tell, and a fifth of a percent for whole cells.
    assert!(pressure(&spared) <= pressure(&stock) * 1.022, "{:?}", pressure(&spared));
}

#[test]
fn moves_lead_from_the_cushion_to_the_plan_and_empty_nothing() {
    let cushion = cushion("curved-ten", "440x400", Spacings::all(Length::from_mm(12.0)));
    let wants = [Want::Shelf { height: Length::from_mm(12.0) }];
    let client = with_goals(client("curved-ten", "440x400"), &wants);
    let plan = planned(&cushion, &client);
    let mut cells: Vec<i64> = plan.counts.iter().map(|count| i64::from(count.stock)).collect();
    let mut spare = 0;
    for step in &plan.moves {
        let mut put = |place, by: i64| match place {
            case::Place::Compartment(number) => {
                let at = plan.counts.iter().position(|count| count.number == number).unwrap();
                cells[at] += by;
                assert!(cells[at] > 0, "compartment {number} is emptied on the way");
            }
            case::Place::Spare => spare += by,
        };
        put(step.from, -i64::from(step.cells));
        put(step.to, i64::from(step.cells));
    }
    let wanted: Vec<i64> = plan.counts.iter().map(|count| i64::from(count.planned)).collect();
    assert_eq!(cells, wanted);
    assert_eq!(spare, i64::from(plan.total_stock()) - i64::from(plan.total_planned()));
    // No tree over so many places has fewer edges than places less one.
    let changed = plan.counts.iter().filter(|count| count.stock != count.planned).count();
    assert!(plan.moves.len() <= changed, "{:?}", plan.moves);
}

/// Whoever is told sees every stage in its order, and the plan is the same.
#[test]
fn the_stages_of_a_plan_are_told_in_order() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(8.0)));
    let plain = client("row-six", "440x400");
    let wished = with_goals(plain.clone(), &[Want::Shelf { height: Length::from_mm(10.0) }]);
    let now: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    for client in [&plain, &wished] {
        let steps = std::cell::RefCell::new(Vec::new());
        let tell = |step| steps.borrow_mut().push(step);
        let told = fitting::plan(&input(&cushion, client, Progress::to(&tell)), &now).unwrap();
        assert_eq!(told, planned(&cushion, client));
        let steps = steps.into_inner();
        assert_eq!((steps[0], steps[steps.len() - 1]), (PlanStep::Stock, PlanStep::Prediction));
        let rounds = steps[1..steps.len() - 1].chunks(2);
        assert!((1..=3).contains(&rounds.len()), "{steps:?}");
        for (round, time) in rounds.zip(1..) {
            assert_eq!(round, [PlanStep::Search { time }, PlanStep::Verification]);
        }
    }
}

/// Without a weight nothing is searched, so there is no stage to tell.
#[test]
fn a_plan_without_mechanics_tells_no_stage() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(8.0)));
    let mut client = client("row-six", "440x400");
    client.weighing = None;
    let now: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    let tell = |step| panic!("{step:?}");
    let plan = fitting::plan(&input(&cushion, &client, Progress::to(&tell)), &now).unwrap();
    assert!(plan.prediction.is_none());
}

/// Counts that were changed much are not near the stock fill, whatever the rank of that goal.
#[test]
fn near_stock_is_met_only_where_little_was_changed() {
    let site = SiteName::SeatBone(Side::Left);
    for wants in [
        vec![Want::NearStock],
        vec![Want::NearStock, Want::OffLoad { site, share: 0.12 }],
        vec![Want::Shelf { height: Length::from_mm(12.0) }, Want::NearStock],
    ] {
        let plan = plan_of("row-six", same, &wants);
        let at = wants.iter().position(|want| *want == Want::NearStock).unwrap();
        let goal = &plan.goals[at];
        let changed: u32 = plan.counts.iter().map(|own| own.stock.abs_diff(own.planned)).sum();
        let stock: u32 = plan.counts.iter().map(|own| own.stock).sum();
        assert_eq!(goal.reached, Some(GoalNumber::Changed(changed)));
        // A twentieth of the cells.
        assert_eq!(goal.met, 20 * changed <= stock, "{changed} of {stock}");
        assert_eq!(goal.why.is_none(), goal.met);
        assert!(wants.len() > 1 || changed == 0);
    }
}

/// A body that the model does not know gets no counts, and is named.
#[test]
fn what_is_assessed_by_hand_is_not_planned() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(16.0)));
    let refusals = |change: &dyn Fn(&mut Client)| {
        let mut client = client("row-six", "440x400");
        change(&mut client);
        let now: Vec<u32> = cushion.stock().compartments.iter().map(|it| it.cells.stock).collect();
        let plan = fitting::plan(&input(&cushion, &client, Progress::none()), &now);
        plan.map_or_else(|all| all.into_iter().map(|own| own.why).collect(), |_| Vec::new())
    };
    let loss = |level| {
        move |client: &mut Client| {
            client.posture.limb_loss.push(LimbLoss { side: Side::Right, level })
        }
    };
    let hip = WhyNoPlan::ByHand(ByHand::HipLoss(Side::Right));
    assert!(hip.is_unsafe());
    assert_eq!(refusals(&loss(LossLevel::Hip)), [hip]);
    assert_eq!(refusals(&loss(LossLevel::BelowKnee)), []);
    let tilted = |fixed: bool, site: SiteName| {
        move |client: &mut Client| {
            let direction = Tilt::Posterior;
            client.posture.tilt = Some(PelvicTilt { direction, degrees: None, fixed });
            client.skin.injuries.push(PressureInjury {
                site,
                category: Category::Two,
                state: Healing::Open,
                seen_on: DAY,
            });
        }
    };
    let on_coccyx = WhyNoPlan::ByHand(ByHand::FixedTiltOnCoccyx);
    assert_eq!(refusals(&tilted(true, SiteName::Coccyx)), [on_coccyx]);
    assert_eq!(refusals(&tilted(false, SiteName::Coccyx)), []);
    assert_eq!(refusals(&tilted(true, SiteName::Trochanter(Side::Left))), []);
    let sagging = |base: Base, mm: f64, want: Want| {
        move |client: &mut Client| {
            client.chair.base = Some(base);
            client.chair.sling_sag = Some(Length::from_mm(mm));
            client.goals.push(case::Goal { want, because: None });
        }
    };
    let level = Want::LateralSupport { height: Length::from_mm(8.0) };
    let on_sling = WhyNoPlan::ByHand(ByHand::SideGoalOnSaggingSling);
    assert_eq!(refusals(&sagging(Base::Sling, 20.0, level)), [on_sling]);
    assert_eq!(refusals(&sagging(Base::Sling, 5.0, level)), []);
    assert_eq!(refusals(&sagging(Base::Sling, 20.0, Want::NearStock)), []);
}
