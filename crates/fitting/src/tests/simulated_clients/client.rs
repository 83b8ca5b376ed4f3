//! A simulated client: a truth that the planner does not know, and hands that err.

use case::{
    Check, Client, CushionIdentity, Entry, FrontSides, Goal, NextStep, PressAnswer, SiteName,
    TopAnswer, UnderAnswer, Want,
};
use cushion::{CompartmentIx, Length, Mass, Pressure, Side};
use mechanics::{Resting, Stop};

use crate::checks::adjust::can_be_made;
use crate::checks::meaning::{FELT_BELOW, Number, PINCHED_FROM, SAFE_UP_TO, UNLIKE_FROM};
use crate::goals::aims::{Filling, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{ClientOnCushion, SearchMeshes};
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::prediction::unknowns::{Assumptions, Unknown};
use crate::tests::dice::Dice;
use testkit::{identity, recorded};

/// The cushions that all cases share: what the planner knows, and the truth.
pub(super) struct Cushions {
    known: Vec<PreparedCushion>,
    truth: Vec<PreparedCushion>,
}

impl Cushions {
    pub(super) fn new() -> Self {
        let mm = Length::from_mm;
        let make = |spacing: f64| {
            ["row-six", "island-eight", "curved-ten"].map(|layout| {
                let pattern = testkit::pattern(layout, "440x400");
                let spacings = Spacings::all(mm(spacing));
                PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion")
            })
        };
        Self { known: make(12.0).to_vec(), truth: make(10.0).to_vec() }
    }
}

/// How a client sits in truth.
#[derive(Clone, Debug)]
pub(super) struct Truth {
    /// Clearance under the left and the right seat bone, m.
    pub(super) clearance: [f64; 2],
    /// How far each goal is off in its tolerances, with one tolerance and what it is about; none
    /// where it is refused.
    pub(super) off: Vec<Option<(f64, f64, Quantity)>>,
}

pub(super) struct Case<'a> {
    pub(super) dice: Dice,
    pub(super) known: &'a PreparedCushion,
    pub(super) truth: &'a PreparedCushion,
    pub(super) client: Client,
    pub(super) hidden: Assumptions,
    /// By what the cells of each compartment are off.
    pub(super) off: Vec<f64>,
}

fn client(dice: &mut Dice, layout: &str) -> Client {
    let kg = dice.between(50.0, 85.0);
    let hips = dice.between(350.0, 415.0);
    let depth = dice.between(440.0, 490.0);
    let oblique = match dice.roll() % 4 {
        0 => String::new(),
        kind => {
            let by = dice.between(8.0, 18.0);
            let lower = dice.one_of(&["left", "right"]);
            let is = match kind {
                1 => "\"flexible\"".to_owned(),
                2 => "\"fixed\"".to_owned(),
                _ => format!("\"partly\", reducible = {}", by / 2.0),
            };
            format!(
                "[posture]\nobliquity = {{ lower = \"{lower}\", by = {by}, at = \"seat bones\", is = {is} }}\n"
            )
        }
    };
    let text = format!(
        "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
         [measures]\nunits = \"mm\"\nhip_width = {hips}\n\
         thigh_depth = {{ left = {depth}, right = {depth} }}\n\
         [weight]\nkg = {kg}\nweighed_on = 2026-03-01\n{oblique}\
         [cushion]\nlayout = \"{layout}\"\nsize = \"440x400\"\nspare_cells = 40\n"
    );
    let mut client = files::read_client(&text).value.expect("a client");
    client.goals = goals(dice, &client).map(|want| Goal { want, because: None }).collect();
    client
}

fn goals(dice: &mut Dice, client: &Client) -> impl Iterator<Item = Want> + use<> {
    let turn = client.posture.obliquity.map(|obliquity| match obliquity.flexibility {
        case::Flexibility::Fixed => Want::AccommodateObliquity,
        _ => Want::CorrectObliquity,
    });
    let side = dice.one_of(&[Side::Left, Side::Right]);
    let mm = Length::from_mm;
    let second = match dice.roll() % 4 {
        0 => {
            Some(Want::OffLoad { site: SiteName::SeatBone(side), share: dice.between(0.08, 0.18) })
        }
        1 => Some(Want::Shelf { height: mm(dice.between(6.0, 14.0)) }),
        2 => {
            Some(Want::LowerFront { sides: FrontSides::One(side), by: mm(dice.between(6.0, 12.0)) })
        }
        _ => None,
    };
    turn.into_iter().chain(second)
}

impl<'a> Case<'a> {
    pub(super) fn new(cushions: &'a Cushions, seed: u64) -> Self {
        let mut dice = Dice(seed.wrapping_mul(0x2545_f491_4f6c_dd1d) ^ 0x5eed);
        let which = (dice.roll() % 3) as usize;
        let (known, truth) = (&cushions.known[which], &cushions.truth[which]);
        let client = client(&mut dice, known.pattern().layout().as_str());
        let usual = assumptions_of(&client, truth, weight(&client), Stop::never()).expect("a body");
        let mut hidden = usual.clone();
        for unknown in Unknown::ALL {
            unknown.place(&usual, &mut hidden, dice.between(-1.0, 1.0));
        }
        hidden.sitter.tissue_stiffness = Some(dice.between(0.2e6, 1.0e6));
        hidden.sitter.trunk_height = Length::from_m(dice.between(0.0, 0.10));
        let off = known.pattern().indices().map(|_| 1.0 + 0.02 * dice.normal()).collect();
        Self { dice, known, truth, client, hidden, off }
    }

    /// The truth under exact counts; none where the client does not rest.
    pub(super) fn rests(&self, counts: &[f64]) -> Option<Resting> {
        let seated = ClientOnCushion::new(self.truth.coarse(), self.hidden.clone(), Stop::never())
            .expect("a body");
        let answer = seated.rest(counts, None);
        let numbers = crate::prediction::client_on_cushion::has_numbers(&answer.rest);
        answer.rest.resting.filter(|_| numbers)
    }

    /// What is really in the cushion: cells were counted, and some are larger than others.
    pub(super) fn filled(&self, counts: &[u32]) -> Vec<f64> {
        counts.iter().zip(&self.off).map(|(count, off)| f64::from(*count) * off).collect()
    }

    /// The counts that give contents.
    pub(super) fn counted(&self, contents: &[u32]) -> Vec<u32> {
        let pairs = contents.iter().zip(&self.off);
        pairs.map(|(content, off)| (f64::from(*content) / off).round() as u32).collect()
    }

    /// Whether fingers are free at both bones in truth.
    pub(super) fn fingers_are_free(&self, contents: &[f64]) -> bool {
        self.rests(contents).is_some_and(|resting| {
            [Side::Left, Side::Right].into_iter().all(|side| self.top_word(side, &resting) < 2)
        })
    }

    /// What is right to say of a bone's top, as a place in the list of words.
    fn top_word(&self, side: Side, resting: &Resting) -> i32 {
        let clearance = Number::Clearance(side).of(resting).expect("a seat bone");
        let pressure = Number::Surface(SiteName::SeatBone(side)).of(resting).expect("a bone");
        if pressure > PINCHED_FROM || clearance < FELT_BELOW {
            2
        } else {
            i32::from(pressure > SAFE_UP_TO)
        }
    }

    /// Fingers on top of a seat bone.
    fn top(&mut self, side: Side, resting: &Resting) -> Check {
        let right = self.top_word(side, resting);
        let answer = [TopAnswer::Safe, TopAnswer::Tight, TopAnswer::Pinched]
            [self.neighbour(right, 0, 2) as usize];
        Check::Top { side, answer }
    }

    /// Where fingers were held, feels on top once more and says that instead; whether they are
    /// still held.
    pub(super) fn tops_again(&mut self, counts: &[u32], checks: &mut [Check]) -> bool {
        let Some(resting) = self.rests(&self.filled(counts)) else { return true };
        let mut held = false;
        for check in checks {
            if let Check::Top { side, answer: TopAnswer::Pinched } = *check {
                *check = self.top(side, &resting);
                held |= matches!(check, Check::Top { answer: TopAnswer::Pinched, .. });
            }
        }
        held
    }

    /// What hands find.
    pub(super) fn checks(&mut self, counts: &[u32]) -> Vec<Check> {
        let Some(resting) = self.rests(&self.filled(counts)) else { return Vec::new() };
        let mut checks = Vec::new();
        for side in [Side::Left, Side::Right] {
            let under = self.under(side, &resting);
            checks.push(self.top(side, &resting));
            checks.push(under);
        }
        let higher = Number::RightHigher.of(&resting).expect("seat bones");
        let step = self.neighbour((higher / 3e-3).round() as i32, -20, 20);
        let by = Length::from_mm(3.0 * f64::from(step.abs()));
        let lower = match step {
            0 => None,
            right if right < 0 => Some(Side::Right),
            _ => Some(Side::Left),
        };
        checks.push(Check::Lower { lower, by, at: case::MeasuredAt::SeatBones });
        checks.extend(self.presses(&resting));
        if self.dice.chance(0.3) {
            let site = SiteName::SeatBone(Side::Left);
            let pressure = Number::Surface(site).of(&resting).expect("a seat bone");
            let read = pressure * (1.0 + 0.1 * self.dice.normal());
            checks.push(Check::Reading { site, pressure: Pressure::from_pa(read.max(200.0)) });
        }
        checks
    }

    /// Feels under a seat bone, in notches of 5 mm.
    fn under(&mut self, side: Side, resting: &Resting) -> Check {
        let clearance = Number::Clearance(side).of(resting).expect("a seat bone");
        let step = (clearance / 5e-3).round() as i32;
        let step = self.neighbour(step, 0, 18);
        let answer = if step <= 2 && clearance < FELT_BELOW {
            UnderAnswer::BoneFelt
        } else {
            UnderAnswer::Felt(Length::from_mm(5.0 * f64::from(step)))
        };
        Check::Under { side, answer }
    }

    /// Feels again where that was asked for.
    pub(super) fn felt_again(&mut self, counts: &[u32], next: &[NextStep]) -> Vec<Check> {
        let Some(resting) = self.rests(&self.filled(counts)) else { return Vec::new() };
        let asked = next.iter().filter_map(|step| match step {
            NextStep::FeelAgain(side) => Some(*side),
            _ => None,
        });
        asked.collect::<Vec<_>>().into_iter().map(|side| self.under(side, &resting)).collect()
    }

    /// Presses on the left one of one reachable pair.
    fn presses(&mut self, resting: &Resting) -> Option<Check> {
        let pattern = self.known.pattern();
        let like = |number| Check::Press { number, answer: PressAnswer::Like };
        let pairs: Vec<(u8, CompartmentIx, CompartmentIx)> = (pattern.indices())
            .filter(|ix| pattern[*ix].side == Some(Side::Left))
            .filter(|ix| can_be_made(pattern, &like(pattern[*ix].number)).is_ok())
            .filter_map(|ix| Some((pattern[ix].number, ix, pattern.partner(ix)?)))
            .collect();
        let (number, pressed, other) = self.dice.one_of(&pairs);
        let firmer = Number::Firmer(pressed, other).of(resting)?;
        let answer = 1 + i32::from(firmer > UNLIKE_FROM) - i32::from(firmer < -UNLIKE_FROM);
        let answer = [PressAnswer::Slack, PressAnswer::Like, PressAnswer::Tight]
            [self.neighbour(answer, 0, 2) as usize];
        Some(Check::Press { number, answer })
    }

    /// One answer in five is the one beside the right one.
    fn neighbour(&mut self, right: i32, least: i32, most: i32) -> i32 {
        if !self.dice.chance(0.2) {
            return right.clamp(least, most);
        }
        let by = if self.dice.chance(0.5) { 1 } else { -1 };
        let beside = right + by;
        if beside < least || beside > most { right - by } else { beside }
    }

    /// How it is in truth on exact contents; none where the client does not rest.
    pub(super) fn truth(&self, contents: &[f64]) -> Option<Truth> {
        let meshes = SearchMeshes::new(self.truth, &self.hidden, Stop::never()).expect("a body");
        let pattern = self.truth.pattern();
        let filling = |counts: Vec<f64>| {
            let resting = self.rests(&counts)?;
            let tops = crate::goals::aims::tops(pattern, self.truth.unloaded(), &counts);
            Some(Filling { counts, resting, tops })
        };
        let stock = pattern.indices().map(|ix| f64::from(self.truth.stock()[ix].cells.stock));
        let stock = filling(stock.collect())?;
        let now = filling(contents.to_vec())?;
        let needs = Needs::of(&self.client);
        let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &stock };
        let off = |wanted: &crate::goals::wanted::Wanted| {
            let aims = wanted.aims.as_ref().ok()?;
            // Of an obliquity the height counts, not how evenly the load is shared.
            let own = aims.iter().filter(|aim| !aim.goes_with());
            let off = own.map(|aim| {
                // A lowered front, as a shelf, within 5 mm.
                let most = if matches!(aim.quantity, Quantity::Top(_)) { 2.0 } else { 1.0 };
                (aim.misses(&now) / most, aim.unit * most, aim.quantity.clone())
            });
            off.reduce(|most, next| if next.0 > most.0 { next } else { most })
        };
        let clearance = [Side::Left, Side::Right]
            .map(|side| Number::Clearance(side).of(&now.resting).unwrap_or(0.0));
        Some(Truth { clearance, off: reader.wanted().iter().map(off).collect() })
    }

    /// The identity of what [`Self::record`] records.
    pub(super) fn identity(&self) -> CushionIdentity {
        identity(self.known.pattern())
    }

    pub(super) fn record(&mut self, counts: &[u32]) {
        self.client.record.push(Entry::Plan(recorded(self.known.pattern(), counts)));
    }
}

pub(super) fn weight(client: &Client) -> Mass {
    client.latest_weighing().expect("a weight").weight
}
