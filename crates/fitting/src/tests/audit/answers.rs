//! The audit of answers: what follows from checks that say what the plan expects, and from checks
//! that say something else, by little or by much.

use case::{
    Check, Client, Date, Entry, MeasuredAt, NextStep, SiteName, TopAnswer, UnderAnswer, Verdict,
};
use cushion::{Length, Side};
use mechanics::Stop;

use crate::checks::adjust::{AdjustInput, Adjusted, adjust};
use crate::checks::meaning::{Number, PINCHED_FROM, SAFE_UP_TO};
use crate::goals::aims::real;
use crate::prediction::prepared::PreparedCushion;
use crate::search::moves::moves;
use crate::tests::audit::clients::AuditClient;
use crate::tests::audit::plans::assumed;
use crate::tests::audit::scores::Judging;
use crate::tests::dice::Dice;
use testkit::{identity, recorded};

const DAY: Date = Date::constant(2026, 3, 1);
const BOTH: [Side; 2] = [Side::Left, Side::Right];

/// How often the answers of a client are drawn with the errors of hands.
const DRAWS: usize = 4;

/// A client who sits on the planned counts, as the model itself says.
pub(super) struct Seated<'a> {
    client: Client,
    cushion: &'a PreparedCushion,
    judging: Judging<'a>,
    counts: Vec<u32>,
    dice: Dice,
}

/// What hands find, without error: clearances in m, the words on top, the height in m.
#[derive(Clone, Copy, Debug)]
struct Found {
    clearance: [f64; 2],
    surface: [f64; 2],
    higher: f64,
}

/// What became of one client.
#[derive(Clone, Debug, Default)]
pub(super) struct Answered {
    /// Cells moved after answers that are all as expected.
    pub(super) exact: u32,
    /// Whether those were said to be as planned.
    pub(super) exact_as_planned: bool,
    /// Cells moved after one such answer, and whether a missing check was named.
    pub(super) one: u32,
    pub(super) one_names_the_missing: bool,
    /// Cells moved after one reading 5 mm lower, where 25 to 32 mm were expected.
    pub(super) one_low: Option<u32>,
    /// Where the truth is 28 mm or more: for each draw of noisy answers whether cells moved, and whether
    /// more feeling was asked for.
    pub(super) noisy_moved: Vec<bool>,
    pub(super) noisy_asked: Vec<bool>,
    /// Whether 20 and 22 mm in truth were mended or felt again, with noise.
    pub(super) low_20: bool,
    pub(super) low_22: bool,
    /// Whether a felt bone and a mark brought the client off.
    pub(super) alarms: bool,
    /// Cells moved for a pinch alone, and cells added for a pinch over 38 mm.
    pub(super) pinched: u32,
    pub(super) pinched_added: u32,
    /// Cells moved on the way, after one wrong notch and then true answers, and those that the straight
    /// way to the same counts would have moved.
    pub(super) path: u32,
    pub(super) net: u32,
    /// Whether cells still move in the third round.
    pub(super) third: bool,
}

impl<'a> Seated<'a> {
    /// None where the client does not rest.
    pub(super) fn new(
        own: &AuditClient,
        cushion: &'a PreparedCushion,
        counts: &[u32],
    ) -> Option<Self> {
        let judging = Judging::new(cushion, &own.client, &assumed(own, cushion)?)?;
        let mut client = own.client.clone();
        client.record.push(Entry::Plan(recorded(cushion.pattern(), counts)));
        let dice = Dice(own.seed.wrapping_mul(0x9e37_79b9) ^ 0x0a11_5e75);
        Some(Self { client, cushion, judging, counts: counts.to_vec(), dice })
    }

    fn found(&self, counts: &[u32]) -> Option<Found> {
        let real = real(counts);
        let resting = self.judging.filling(&real, None)?.resting;
        let of = |number: Number| number.of(&resting);
        Some(Found {
            clearance: [of(Number::Clearance(Side::Left))?, of(Number::Clearance(Side::Right))?],
            surface: [
                of(Number::Surface(SiteName::SeatBone(Side::Left)))?,
                of(Number::Surface(SiteName::SeatBone(Side::Right)))?,
            ],
            higher: of(Number::RightHigher)?,
        })
    }

    fn adjusted(&self, client: &Client, now: &[u32], checks: &[Check]) -> Adjusted {
        let identity = identity(self.cushion.pattern());
        let (cushion, stop) = (self.cushion, Stop::never());
        let input =
            AdjustInput { client, cushion, on: DAY, now, checks, identity: &identity, stop };
        adjust(&input).expect("an answer")
    }

    /// All that is looked at.
    pub(super) fn answered(&mut self) -> Option<Answered> {
        let found = self.found(&self.counts.clone())?;
        let ask = |checks: &[Check]| self.adjusted(&self.client, &self.counts, checks);
        let exact = ask(&found.exactly());
        let one = ask(&[under(Side::Left, found.clearance[0])]);
        let felt = ask(&[Check::Under { side: Side::Left, answer: UnderAnswer::BoneFelt }]);
        let pinch = Check::Top { side: Side::Right, answer: TopAnswer::Pinched };
        let pinched = ask(&[pinch]);
        let over = ask(&[pinch, under(Side::Right, 0.038)]);
        let added =
            over.counts.iter().zip(&self.counts).map(|(then, now)| then.saturating_sub(*now));
        let mut answered = Answered {
            exact: cells(&exact),
            exact_as_planned: exact.verdict == Verdict::AsPlanned,
            one: cells(&one),
            one_names_the_missing: one.next.contains(&NextStep::CheckUnder(Side::Right)),
            alarms: felt.verdict == Verdict::ClientOff && !felt.alarms.is_empty(),
            pinched: cells(&pinched),
            pinched_added: added.sum(),
            ..Answered::default()
        };
        if (0.025..0.032).contains(&found.clearance[0]) {
            let mut low = found;
            low.clearance[0] -= 0.005;
            answered.one_low = Some(cells(&ask(&low.exactly())));
        }
        if found.clearance.iter().all(|clearance| *clearance >= 0.028) {
            for _ in 0..DRAWS {
                let checks = self.noisy(&found);
                let next = self.adjusted(&self.client, &self.counts, &checks);
                answered.noisy_moved.push(cells(&next) > 0);
                let asks = next.next.iter().any(|step| matches!(step, NextStep::FeelAgain(_)));
                answered.noisy_asked.push(asks || next.verdict == Verdict::Asked);
            }
        }
        answered.low_20 = self.is_caught(&found, 0.020);
        answered.low_22 = self.is_caught(&found, 0.022);
        self.after_a_wrong_notch(found, &mut answered);
        Some(answered)
    }

    /// Whether so little in truth is mended, felt again, or brings the client off.
    fn is_caught(&mut self, found: &Found, clearance: f64) -> bool {
        let low = Found { clearance: [clearance; 2], ..*found };
        let checks = self.noisy(&low);
        let next = self.adjusted(&self.client, &self.counts, &checks);
        cells(&next) > 0
            || matches!(next.verdict, Verdict::ClientOff | Verdict::Asked | Verdict::Pinched)
    }

    /// Answers with the errors of hands: 3 mm underneath, told in notches of 5 mm; 5 mm in a height
    /// between the seat bones where there is an obliquity; one word in five is the one beside.
    fn noisy(&mut self, found: &Found) -> Vec<Check> {
        let mut checks = Vec::new();
        for (at, side) in BOTH.into_iter().enumerate() {
            let felt = found.clearance[at] + 0.003 * self.dice.normal();
            checks.push(under(side, (felt / 0.005).round().max(0.0) * 0.005));
            let word = if self.dice.chance(0.2) && found.surface[at] < PINCHED_FROM {
                // The one beside, which is tight, or safe.
                if found.surface[at] > SAFE_UP_TO { TopAnswer::Safe } else { TopAnswer::Tight }
            } else {
                word(found.surface[at])
            };
            checks.push(Check::Top { side, answer: word });
        }
        if self.client.posture.obliquity.is_some() {
            let told = found.higher + 0.005 * self.dice.between(-1.0, 1.0);
            checks.push(lower((told / 0.003).round() * 0.003));
        }
        checks
    }

    /// The first round has one answer a notch off, the others have true ones.
    fn after_a_wrong_notch(&self, found: Found, answered: &mut Answered) {
        let mut wrong = found;
        wrong.clearance[1] -= 0.005;
        let (mut client, mut now, mut seen) = (self.client.clone(), self.counts.clone(), wrong);
        for round in 1..=3 {
            let checks = seen.exactly();
            let next = self.adjusted(&client, &now, &checks);
            answered.path += cells(&next);
            answered.third |= round == 3 && cells(&next) > 2;
            client.record.push(Entry::Adjustment(case::Adjustment {
                on: DAY,
                by: "OT".to_owned(),
                checks,
                moves: next.moves.clone(),
                why: None,
            }));
            now.clone_from(&next.counts);
            client.record.push(Entry::Plan(recorded(self.cushion.pattern(), &now)));
            match self.found(&now) {
                Some(found) => seen = found,
                None => break,
            }
        }
        let straight = moves(self.cushion.pattern(), &self.counts, &now);
        answered.net = straight.iter().map(|own| own.cells).sum();
    }
}

impl Found {
    /// Answers that say just this.
    fn exactly(&self) -> Vec<Check> {
        let mut checks = Vec::new();
        for (at, side) in BOTH.into_iter().enumerate() {
            checks.push(Check::Top { side, answer: word(self.surface[at]) });
            checks.push(under(side, self.clearance[at]));
        }
        checks.push(lower(self.higher));
        checks
    }
}

fn cells(adjusted: &Adjusted) -> u32 {
    adjusted.moves.iter().map(|own| own.cells).sum()
}

fn under(side: Side, clearance: f64) -> Check {
    Check::Under { side, answer: UnderAnswer::Felt(Length::from_m(clearance.max(0.0))) }
}

/// Fingers that are held because the load is high are told as tight: a pinch is asked for by itself.
fn word(surface: f64) -> TopAnswer {
    if surface > SAFE_UP_TO { TopAnswer::Tight } else { TopAnswer::Safe }
}

fn lower(right_higher: f64) -> Check {
    let lower = match right_higher {
        higher if higher > 1e-4 => Some(Side::Left),
        higher if higher < -1e-4 => Some(Side::Right),
        _ => None,
    };
    Check::Lower { lower, by: Length::from_m(right_higher.abs()), at: MeasuredAt::SeatBones }
}
