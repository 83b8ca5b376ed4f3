//! A fitting: alarms before estimates, answers as planned, held fingers.

use case::{
    Alarm, Check, Client, Date, LookAt, NextStep, PredictedSeat, PressAnswer, SiteName, SkinAnswer,
    TopAnswer, UnderAnswer, Verdict, Want,
};
use cushion::{Length, Mass, Side};
use fitting::{
    AdjustInput, Adjusted, PlanInput, PreparedCushion, Progress, Spacings, adjust, plan,
};
use mechanics::Stop;

use crate::clients::{client, cushion, with_goals};

const DAY: Date = Date::constant(2026, 3, 2);
const BOTH: [Side; 2] = [Side::Left, Side::Right];

/// What a planned client is fitted with: the cushion, the planned counts, and what is expected.
struct Planned {
    cushion: PreparedCushion,
    client: Client,
    counts: Vec<u32>,
    seat: PredictedSeat,
}

fn planned(layout: &str, client: Client) -> Planned {
    let cushion = cushion(layout, "440x400", Spacings::all(Length::from_mm(12.0)));
    let stock: Vec<u32> =
        cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect();
    let input = PlanInput {
        client: &client,
        passed: None,
        cushion: &cushion,
        on: DAY,
        stop: Stop::never(),
        progress: Progress::none(),
    };
    let plan = plan(&input, &stock).unwrap();
    let counts = plan.counts.iter().map(|count| count.planned).collect();
    let seat = plan.prediction.unwrap().seated.unwrap();
    Planned { cushion, client, counts, seat }
}

impl Planned {
    fn adjust(&self, checks: &[Check]) -> Adjusted {
        let (client, cushion) = (&self.client, &self.cushion);
        let identity = testkit::identity(cushion.pattern());
        adjust(&AdjustInput {
            identity: &identity,
            client,
            cushion,
            on: DAY,
            now: &self.counts,
            checks,
            stop: Stop::never(),
        })
        .unwrap()
    }

    /// What hands would find if all is as expected.
    fn as_expected(&self) -> Vec<Check> {
        let mut checks = Vec::new();
        for side in BOTH {
            let felt = self.seat.clearance[side].central;
            checks.push(Check::Under { side, answer: UnderAnswer::Felt(felt) });
            let site = self.seat.sites.iter().find(|site| site.site == SiteName::SeatBone(side));
            let tight = site.unwrap().surface.central.to_kpa() > 9.0;
            let answer = if tight { TopAnswer::Tight } else { TopAnswer::Safe };
            checks.push(Check::Top { side, answer });
        }
        checks.push(Check::Lower {
            lower: self.seat.lower_side,
            by: self.seat.lower_by,
            at: case::MeasuredAt::SeatBones,
        });
        checks
    }
}

fn with_injury(text: &str, client: &Client) -> Client {
    let injury = case::PressureInjury {
        site: SiteName::from_id(text).unwrap(),
        category: case::Category::Two,
        state: case::Healing::Healing,
        seen_on: DAY,
    };
    let mut client = client.clone();
    client.skin.injuries.push(injury);
    client
}

fn light(kg: f64) -> Client {
    let mut client = client("row-six", "440x400");
    client.weighing.as_mut().unwrap().weight = Mass::from_kg(kg);
    client
}

fn felt(side: Side, mm: f64) -> Check {
    Check::Under { side, answer: UnderAnswer::Felt(Length::from_mm(mm)) }
}

fn bone_felt(side: Side) -> Check {
    Check::Under { side, answer: UnderAnswer::BoneFelt }
}

fn pinched(side: Side) -> Check {
    Check::Top { side, answer: TopAnswer::Pinched }
}

#[test]
fn a_bone_felt_brings_the_client_off_and_raises_both_bones_alike_where_that_is_safe() {
    let case = planned("row-six", light(74.0));
    let expected = case.seat.clearance.left.central.to_mm();
    assert!((25.0..35.0).contains(&expected), "{expected}");
    for checks in
        [vec![bone_felt(Side::Left), bone_felt(Side::Right)], vec![bone_felt(Side::Right)]]
    {
        let found = case.adjust(&checks);
        assert_eq!(found.verdict, Verdict::ClientOff);
        assert_eq!(found.alarms.len(), checks.len());
        assert!(!found.look_at.is_empty());
        let more: Vec<i64> = found
            .counts
            .iter()
            .zip(&case.counts)
            .map(|(a, b)| i64::from(*a) - i64::from(*b))
            .collect();
        // Numbers 1 and 2 are under the seat bones; nothing else is touched, nothing is taken.
        assert!(more[0] > 0 && more[0] == more[1], "{more:?}");
        assert!(more[2..].iter().all(|by| *by == 0), "{more:?}");
    }
}

#[test]
fn no_cells_are_moved_for_a_mark_on_the_skin_even_with_a_bone_felt() {
    let case = planned("row-six", light(72.0));
    for answer in [SkinAnswer::Stays, SkinAnswer::Open, SkinAnswer::Worse] {
        let mark = Check::Skin { site: SiteName::SeatBone(Side::Left), answer };
        let mut as_planned = case.as_expected();
        as_planned.push(mark);
        for checks in [vec![mark], vec![mark, bone_felt(Side::Left)], as_planned] {
            let found = case.adjust(&checks);
            assert_eq!((found.verdict, &found.counts), (Verdict::ClientOff, &case.counts));
            assert!(found.alarms.iter().any(|alarm| matches!(alarm, Alarm::Mark { .. })));
        }
    }
}

#[test]
fn a_mark_that_fades_is_no_alarm() {
    let case = planned("row-six", light(72.0));
    let mut checks = case.as_expected();
    for answer in [SkinAnswer::Clear, SkinAnswer::Fades] {
        checks.push(Check::Skin { site: SiteName::SeatBone(Side::Left), answer });
        assert_eq!(case.adjust(&checks).verdict, Verdict::AsPlanned);
        checks.pop();
    }
}

/// Counts on which less than 25 mm are expected are mended once hands were there, and not before.
#[test]
fn of_the_skin_alone_no_cells_move_even_where_too_little_is_expected() {
    let mut case = planned("row-six", light(84.0));
    for under_bones in &mut case.counts[..2] {
        *under_bones -= 8;
    }
    let low = felt(Side::Left, 20.0);
    let twice = case.adjust(&[low, low, felt(Side::Right, 20.0), felt(Side::Right, 20.0)]);
    assert_eq!(twice.verdict, Verdict::Move, "hands that feel it twice move cells");
    let fades = |site| Check::Skin { site, answer: SkinAnswer::Fades };
    let not_found = |side| Check::Under { side, answer: UnderAnswer::NotFound };
    for checks in [
        vec![fades(SiteName::SeatBone(Side::Left))],
        vec![fades(SiteName::Coccyx), fades(SiteName::SeatBone(Side::Right))],
        vec![not_found(Side::Left), not_found(Side::Right)],
    ] {
        let found = case.adjust(&checks);
        assert_eq!(found.verdict, Verdict::Stay, "{checks:?}");
        assert!(found.moves.is_empty(), "{:?}", found.moves);
        assert!(!found.not_safe.is_empty(), "too little is expected, and that is said");
        for side in BOTH {
            assert!(found.next.contains(&NextStep::CheckUnder(side)), "{:?}", found.next);
        }
    }
}

#[test]
fn a_bone_felt_where_much_was_expected_is_counted_and_not_filled() {
    let case = planned("row-six", light(45.0));
    // The light client is expected to stand well above the base.
    assert!(case.seat.clearance.left.central.to_mm() > 35.0);
    let found = case.adjust(&[bone_felt(Side::Left)]);
    assert_eq!((found.verdict, &found.counts), (Verdict::ClientOff, &case.counts));
    assert!(found.next.contains(&NextStep::CountBeforeMoving));
}

#[test]
fn a_bone_felt_never_moves_cells_onto_an_injury() {
    for site in ["left-seat-bone", "right-seat-bone"] {
        let case = planned("row-six", with_injury(site, &light(72.0)));
        for side in BOTH {
            let found = case.adjust(&[bone_felt(side)]);
            assert_eq!((found.verdict, &found.counts), (Verdict::ClientOff, &case.counts));
            assert!(found.next.contains(&NextStep::AnotherCushion));
        }
    }
}

#[test]
fn a_safe_answer_beside_a_felt_bone_is_asked_and_still_an_alarm() {
    let case = planned("row-six", light(72.0));
    let safe = Check::Top { side: Side::Left, answer: TopAnswer::Safe };
    let found = case.adjust(&[safe, bone_felt(Side::Left)]);
    assert_eq!((found.verdict, &found.counts), (Verdict::ClientOff, &case.counts));
    assert!(!found.doubts.is_empty());
}

/// Clients of every kind that had cells moved for nothing.
fn all_kinds() -> Vec<Planned> {
    let injured = with_injury("left-seat-bone", &light(74.0));
    let off_load = Want::OffLoad { site: SiteName::SeatBone(Side::Left), share: 0.15 };
    let shelf = Want::Shelf { height: Length::from_mm(10.0) };
    vec![
        planned("row-six", light(72.0)),
        planned("row-six", with_goals(injured, &[off_load])),
        planned("curved-ten", with_goals(client("curved-ten", "440x400"), &[shelf])),
        planned("island-eight", with_injury("coccyx", &client("island-eight", "440x400"))),
    ]
}

#[test]
fn answers_as_the_plan_expected_move_nothing_together_or_one_by_one() {
    for case in all_kinds() {
        let checks = case.as_expected();
        let found = case.adjust(&checks);
        assert_eq!(found.verdict, Verdict::AsPlanned, "{checks:?}");
        assert!(found.moves.is_empty() && found.next.is_empty());
        for check in &checks {
            let found = case.adjust(&[*check]);
            assert_eq!(found.verdict, Verdict::AsPlannedSoFar, "{check}");
            assert!(found.moves.is_empty() && !found.next.is_empty());
        }
    }
}

/// A goal that the plan could not reach was told when the counts were chosen. Answers that are a notch or
/// a word off, and say nothing new of it, move no cells for it; a notch is 5 mm.
#[test]
fn what_a_plan_fell_short_of_moves_no_cells_for_answers_that_are_a_little_off() {
    let lateral = Want::LateralSupport { height: Length::from_mm(10.0) };
    let wants = [lateral, Want::EqualFirmness];
    let case = planned("curved-ten", with_goals(client("curved-ten", "440x400"), &wants));
    let checks = case.as_expected();
    let goals = case.adjust(&checks).goals;
    assert!(goals.iter().any(|goal| !goal.met), "a goal that falls short: {goals:?}");
    let notch = Length::from_mm(5.0);
    let mut off = Vec::new();
    for (at, check) in checks.iter().enumerate() {
        let with = |check: Check| {
            let mut all = checks.clone();
            all[at] = check;
            all
        };
        match *check {
            Check::Under { side, answer: UnderAnswer::Felt(felt) } => {
                off.push(with(Check::Under { side, answer: UnderAnswer::Felt(felt + notch) }));
            }
            Check::Top { side, answer: TopAnswer::Safe } => {
                off.push(with(Check::Top { side, answer: TopAnswer::Tight }));
            }
            _ => {}
        }
    }
    assert!(off.len() >= 2);
    for checks in off {
        let found = case.adjust(&checks);
        assert!(found.moves.is_empty(), "{checks:?}: {:?}", found.moves);
    }
}

#[test]
fn one_press_check_as_expected_names_the_missing_checks() {
    let case = planned("row-six", light(72.0));
    let like = Check::Press { number: 3, answer: PressAnswer::Like };
    let found = case.adjust(&[like]);
    assert_eq!((found.verdict, found.moves.len()), (Verdict::AsPlannedSoFar, 0));
    let under = BOTH.map(NextStep::CheckUnder);
    let on_top = BOTH.map(NextStep::CheckOnTop);
    let first = NextStep::TellsMost(case::Telling::Under(Side::Left));
    assert_eq!(found.next, [vec![first], under.to_vec(), on_top.to_vec()].concat());
    // A bone that the hand did not find is a missing check, never a safe one.
    let mut checks = case.as_expected();
    checks[0] = Check::Under { side: Side::Left, answer: UnderAnswer::NotFound };
    let found = case.adjust(&checks);
    assert_eq!(found.verdict, Verdict::AsPlannedSoFar);
    let first = NextStep::TellsMost(case::Telling::Under(Side::Left));
    assert_eq!(found.next, [first, NextStep::CheckUnder(Side::Left)]);
}

#[test]
fn under_25_mm_is_never_as_planned() {
    let mut case = planned("row-six", light(72.0));
    // A client who has become heavier since: the model itself expects less than the limit.
    case.client.weighing.as_mut().unwrap().weight = Mass::from_kg(88.0);
    for checks in
        [vec![felt(Side::Left, 24.0), felt(Side::Right, 24.0)], vec![felt(Side::Left, 24.5)]]
    {
        let verdict = case.adjust(&checks).verdict;
        assert!(!matches!(verdict, Verdict::AsPlanned | Verdict::AsPlannedSoFar), "{verdict:?}");
    }
}

#[test]
fn pinched_alone_moves_nothing() {
    for case in all_kinds() {
        for side in BOTH {
            let like = Check::Lower {
                lower: case.seat.lower_side,
                by: case.seat.lower_by,
                at: case::MeasuredAt::SeatBones,
            };
            for checks in [vec![pinched(side)], vec![pinched(side), like, felt(side.other(), 27.0)]]
            {
                let found = case.adjust(&checks);
                assert_eq!((found.verdict, &found.counts), (Verdict::Pinched, &case.counts));
                assert_eq!(found.next, [NextStep::FeelBeforeMoving(side)]);
            }
        }
    }
}

#[test]
fn pinched_with_much_cushion_underneath_never_adds() {
    for case in all_kinds() {
        for side in BOTH {
            for mm in [35.0, 38.0, 45.0] {
                let other = case.seat.clearance[side.other()].central.to_mm().max(26.0);
                let found =
                    case.adjust(&[pinched(side), felt(side, mm), felt(side.other(), other)]);
                let added = found.counts.iter().zip(&case.counts).any(|(then, now)| then > now);
                assert!(!added, "{side:?} {mm}: {:?} to {:?}", case.counts, found.counts);
                let taken: u32 = found.moves.iter().map(|step| step.cells).sum();
                // A few, and then felt again.
                assert!(taken <= 6, "{taken}");
            }
        }
    }
}

#[test]
fn pinched_over_a_middling_clearance_moves_nothing_and_says_where_to_look() {
    let case = planned("row-six", light(72.0));
    let found =
        case.adjust(&[pinched(Side::Left), felt(Side::Left, 30.0), felt(Side::Right, 30.0)]);
    assert_eq!((found.verdict, &found.counts), (Verdict::Pinched, &case.counts));
    assert!(found.look_at.contains(&LookAt::LayersOnTop));
    // Uneven cells hold fingers too: what costs nothing is tried first.
    assert_eq!(found.next, [NextStep::PatFirst, NextStep::CauseFirst]);
}

#[test]
fn the_mirrored_answer_is_the_mirrored_verdict() {
    let case = planned("row-six", light(72.0));
    let mirrored = |counts: &[u32]| -> Vec<u32> {
        // Numbers go in pairs, left and right.
        counts.chunks(2).flat_map(|pair| [pair[1], pair[0]]).collect()
    };
    assert_eq!(case.counts, mirrored(&case.counts));
    for [left, right] in [
        [bone_felt(Side::Left), bone_felt(Side::Right)],
        [pinched(Side::Left), pinched(Side::Right)],
    ] {
        let (a, b) = (case.adjust(&[left]), case.adjust(&[right]));
        assert_eq!((a.verdict, mirrored(&a.counts)), (b.verdict, b.counts));
    }
    let a = case.adjust(&[pinched(Side::Left), felt(Side::Left, 40.0), felt(Side::Right, 30.0)]);
    let b = case.adjust(&[pinched(Side::Right), felt(Side::Right, 40.0), felt(Side::Left, 30.0)]);
    assert_eq!((a.verdict, mirrored(&a.counts)), (b.verdict, b.counts));
}

/// A hand that feels much where hands felt little before, on the same cells, takes out no more than what both
/// leave.
#[test]
fn held_fingers_take_out_less_where_hands_felt_less_before() {
    for side in BOTH {
        let mut case = planned("row-six", light(60.0));
        let other = felt(side.other(), 36.0);
        let held = [pinched(side), felt(side, 36.0), other];
        let taken =
            |case: &Planned| -> u32 { case.adjust(&held).moves.iter().map(|own| own.cells).sum() };
        let alone = taken(&case);
        assert!(alone > 0, "there is something to take out");
        let recorded = testkit::recorded(case.cushion.pattern(), &case.counts);
        case.client.record.push(case::Entry::Plan(recorded));
        let earlier = |mm: f64| {
            let checks = vec![felt(side, mm), other];
            let (moves, why) = (Vec::new(), None);
            case::Entry::Adjustment(case::Adjustment {
                on: DAY,
                by: "OT".to_owned(),
                checks,
                moves,
                why,
            })
        };
        case.client.record.extend([earlier(25.0), earlier(25.0)]);
        assert_eq!(taken(&case), 0, "{side:?}: {alone} cells alone");
    }
}
