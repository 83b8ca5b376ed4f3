//! The mirrored client gets the mirrored answer, exactly: plans, adjustments, if-then tables.

use case::{
    Category, Check, Client, Date, Flexibility, FrontSides, Goal, Healing, MeasuredAt, Mirror,
    Partners, PelvicObliquity, PressureInjury, Propulsion, Sensation, Sides, SiteName, SkinAnswer,
    TopAnswer, UnderAnswer, Want, Windswept,
};
use cushion::{Length, Mass, Side};
use fitting::{
    AdjustInput, PlanInput, PreparedCushion, Progress, Spacings, adjust, card_advice, plan,
};
use mechanics::{Stop, mixed};

use crate::clients::{client, cushion};

const DAY: Date = Date::constant(2026, 3, 2);
/// Clients for each layout; those by hand are many.
const CLIENTS: u64 = 1;
const MANY: u64 = 40;

/// Numbers that look random, from a seed.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(1);
        mixed(self.0)
    }

    pub(crate) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    fn mm(&mut self, least: f64, most: f64) -> Length {
        Length::from_mm((least + (most - least) * self.share()).round())
    }

    pub(crate) fn one<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.next() % all.len() as u64) as usize]
    }

    fn side(&mut self) -> Side {
        self.one(&[Side::Left, Side::Right])
    }
}

/// A client who is not the same on both sides.
pub(crate) fn lopsided(dice: &mut Dice, layout: &str) -> Client {
    let mut client = client(layout, "440x400");
    client.weighing.as_mut().unwrap().weight = Mass::from_kg(55.0 + (25.0 * dice.share()).round());
    let depth = [dice.mm(460.0, 480.0), dice.mm(460.0, 480.0)];
    client.measures.thigh_depth = Sides { left: Some(depth[0]), right: Some(depth[1]) };
    if dice.share() < 0.6 {
        client.posture.obliquity = Some(PelvicObliquity {
            lower: dice.side(),
            by: dice.mm(5.0, 16.0),
            at: dice.one(&[MeasuredAt::SeatBones, MeasuredAt::Asis]),
            flexibility: dice.one(&[Flexibility::Fixed, Flexibility::Flexible]),
        });
        let want = match client.posture.obliquity.map(|own| own.flexibility) {
            Some(Flexibility::Fixed) => Want::AccommodateObliquity,
            _ => Want::CorrectObliquity,
        };
        client.goals.push(Goal { want, because: None });
    }
    if dice.share() < 0.4 {
        client.posture.windswept = Some(Windswept { to: dice.side(), degrees: 10.0 });
    }
    if dice.share() < 0.4 {
        client.function.propulsion = Some(Propulsion::Foot(dice.side()));
        let want = Want::LowerFront { sides: FrontSides::One(dice.side()), by: dice.mm(5.0, 10.0) };
        client.goals.push(Goal { want, because: None });
    }
    if dice.share() < 0.6 {
        let site = SiteName::SeatBone(dice.side());
        let state = Healing::Healing;
        let injury = PressureInjury { site, category: Category::One, state, seen_on: DAY };
        client.skin.injuries.push(injury);
        client.goals.push(Goal { want: Want::OffLoad { site, share: 0.10 }, because: None });
    }
    client
}

/// What hands find, some of it not as planned.
fn checks(dice: &mut Dice) -> Vec<Check> {
    let side = dice.side();
    let felt = |dice: &mut Dice| UnderAnswer::Felt(dice.mm(20.0, 45.0));
    let mut checks = vec![Check::Under { side, answer: felt(dice) }];
    if dice.share() < 0.7 {
        checks.push(Check::Under { side: side.other(), answer: felt(dice) });
    }
    let top = dice.one(&[TopAnswer::Safe, TopAnswer::Tight, TopAnswer::Pinched]);
    checks.push(Check::Top { side: dice.side(), answer: top });
    match dice.next() % 4 {
        0 => checks.push(Check::Lower {
            lower: Some(dice.side()),
            by: dice.mm(4.0, 14.0),
            at: MeasuredAt::SeatBones,
        }),
        1 => checks.push(Check::Under { side, answer: UnderAnswer::BoneFelt }),
        2 => {
            let (site, answer) = (SiteName::SeatBone(dice.side()), SkinAnswer::Stays);
            checks.push(Check::Skin { site, answer });
        }
        _ => {}
    }
    checks
}

/// Asserts that a client and the mirrored one get mirrored answers.
fn assert_mirrored(cushion: &PreparedCushion, client: &Client, checks: &[Check], seed: u64) {
    let partners = Partners::of(cushion.pattern()).unwrap();
    let image = client.mirrored(&partners);
    assert_eq!(image.mirrored(&partners), *client, "{seed}");
    let stop = Stop::never();
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|it| it.cells.stock).collect();
    let planned = |client: &Client| {
        let progress = Progress::none();
        let plan =
            plan(&PlanInput { client, cushion, passed: None, on: DAY, stop, progress }, &stock)
                .unwrap();
        let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
        (counts, plan)
    };
    let ((counts, own), (other_counts, other)) = (planned(client), planned(&image));
    assert_eq!(counts, partners.swapped(&other_counts), "{seed}");
    assert_eq!(own.goals, other.goals.mirrored(&partners), "{seed}");
    assert_eq!(own.moves, other.moves.mirrored(&partners), "{seed}");
    assert_eq!(own.prediction, other.prediction.mirrored(&partners), "{seed}");
    let weight = client.weighing.as_ref().unwrap().weight;
    let card = card_advice(client, cushion, weight, &counts).unwrap();
    let other_card = card_advice(&image, cushion, weight, &other_counts).unwrap();
    assert_eq!(card.goals, other_card.goals.mirrored(&partners), "{seed}");
    for line in &card.if_then {
        assert!(other_card.if_then.contains(&line.mirrored(&partners)), "{seed}: {line:?}");
    }
    // Told of the left first on both cards.
    let sides = |card: &fitting::CardAdvice| -> Vec<_> {
        card.if_then.iter().map(|line| std::mem::discriminant(&line.found)).collect()
    };
    assert_eq!(sides(&card), sides(&other_card), "{seed}");
    let identity = testkit::identity(cushion.pattern());
    let adjusted = |client: &Client, now: &[u32], checks: &[Check]| {
        let on = DAY;
        adjust(&AdjustInput { client, cushion, on, now, checks, identity: &identity, stop })
            .unwrap()
    };
    let own = adjusted(client, &counts, checks);
    let image_checks: Vec<Check> = checks.iter().map(|check| check.mirrored(&partners)).collect();
    let other = adjusted(&image, &other_counts, &image_checks);
    assert_eq!(own.verdict, other.verdict, "{seed}: {checks:?}");
    assert_eq!(own.counts, partners.swapped(&other.counts), "{seed}: {checks:?}");
    assert_eq!(own.moves, other.moves.mirrored(&partners), "{seed}");
    assert_eq!(
        (&own.alarms, own.next.len()),
        (&other.alarms.mirrored(&partners), other.next.len())
    );
    assert_eq!(own.prediction, other.prediction.mirrored(&partners), "{seed}");
}

fn sweep(seeds: std::ops::Range<u64>) {
    for layout in ["row-six", "curved-ten", "island-eight"] {
        let cushion = cushion(layout, "440x400", Spacings::all(Length::from_mm(12.0)));
        for seed in seeds.clone() {
            let dice = &mut Dice(mixed(seed) ^ layout.len() as u64);
            let client = lopsided(dice, layout);
            assert_mirrored(&cushion, &client, &checks(dice), seed);
        }
    }
}

#[test]
fn the_mirrored_client_gets_the_mirrored_answer_exactly() {
    sweep(1..1 + CLIENTS);
}

/// A client who is the same on both sides but that nothing is felt on one: what is lifted off a seat
/// bone may go where it is felt, and less of it where it is not.
#[test]
fn feeling_on_one_side_breaks_symmetry_and_nothing_else() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let partners = Partners::of(cushion.pattern()).unwrap();
    let mut numb = client("row-six", "440x400");
    let site = SiteName::SeatBone(Side::Left);
    numb.goals.push(Goal { want: Want::OffLoad { site, share: 0.15 }, because: None });
    numb.skin.sensation = Some(Sensation::Absent);
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|it| it.cells.stock).collect();
    let planned = |side: Option<Side>, client: &Client| {
        let client = &mut client.clone();
        client.skin.sensation_side = side;
        assert_mirrored(&cushion, client, &[], 0);
        let (stop, progress, cushion) = (Stop::never(), Progress::none(), &cushion);
        let input = PlanInput { client, cushion, passed: None, on: DAY, stop, progress };
        plan(&input, &stock).unwrap()
    };
    let rise = |made: &case::Plan, of: Side| {
        let sites = &made.costs.as_ref().unwrap().sites;
        let own = sites.iter().find(|own| own.site == SiteName::SeatBone(of)).unwrap();
        own.rise()
    };
    let [here, there] = [Side::Left, Side::Right].map(|side| planned(Some(side), &numb));
    assert!(rise(&there, Side::Right) <= 0.05 + 0.005, "{}", rise(&there, Side::Right));
    assert!(rise(&here, Side::Right) > rise(&there, Side::Right) + 0.01);
    // Without a goal nothing asks for sides.
    numb.goals.clear();
    let counts = planned(Some(Side::Left), &numb).counts;
    let counts: Vec<u32> = counts.iter().map(|count| count.planned).collect();
    assert_eq!(counts, partners.swapped(&counts));
}

#[test]
#[ignore = "by hand: many clients"]
fn many_mirrored_clients_get_the_mirrored_answer_exactly() {
    sweep(1000..1000 + MANY);
}

#[test]
fn a_cushion_with_one_odd_side_has_no_mirror() {
    for layout in ["row-six", "curved-ten", "island-eight"] {
        let pattern = testkit::pattern(layout, "440x400");
        let partners = Partners::of(&pattern).unwrap();
        let places: Vec<usize> = (0..pattern.compartments().len()).collect();
        let image = partners.swapped(&places);
        // Twice is nothing, and sides are swapped.
        assert_eq!(partners.swapped(&image), places);
        for (at, other) in pattern.compartments().iter().zip(image) {
            assert_eq!(at.side.map(Side::other), pattern.compartments()[other].side);
        }
    }
}
