//! What checks teach: the unknowns that agree best with all that was found, and how sure they are.
//!
//! Before any check each unknown is believed to be at its usual value, its range taken as two
//! standard deviations. Checks of earlier rounds count with the counts that they were made on.

use case::{BodyError, Check, Client, NextStep, Telling};
use cushion::{Pattern, Side};
use mechanics::{Resting, SmallMatrix, Stop};

use crate::checks::expected::felt_under;
use crate::checks::meaning::{
    HAND, LOWER_SIDE, Meaning, Number, PINCHED_FROM, SAFE_UP_TO, meaning,
};
use crate::prediction::client_on_cushion::{ClientOnCushion, MeshedCushion, has_numbers};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Unknown};
use crate::search::side_by_side::{beside, side_by_side};

/// What is believed of an unknown before any check, in half ranges.
const PRIOR: f64 = 0.5;
/// Improvements of the estimate; two do.
const STEPS: usize = 3;
/// The same where effects are those under a like cushion and body, which lead there less straight.
const STEPS_ALIKE: usize = 6;
/// The change of an unknown by which its effect is found, in half ranges.
const PROBE: f64 = 0.2;

/// The places of the usual values.
const USUAL: [f64; Unknown::ALL.len()] = [0.0; Unknown::ALL.len()];
/// The share of what moves changed, by the model, that is not known: soft tissue leaves half of it to
/// three quarters (the audit of plans). What was found on other counts tells so much less finely of
/// these.
pub(crate) const UNSURE_OF_MOVES: f64 = 0.35;

/// What was found on one filling.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Round {
    pub(crate) counts: Vec<f64>,
    pub(crate) checks: Vec<Check>,
}

/// The unknowns as far as they are known.
#[derive(Clone, Debug)]
pub(crate) struct Estimate {
    /// The places of the unknowns that agree best, in the order of [`Unknown::ALL`].
    pub(crate) places: Vec<f64>,
    /// The assumptions that agree best.
    pub(crate) assumptions: Assumptions,
    /// Clearance under each seat bone on the last filling, m, and its standard deviation.
    pub(crate) clearance: [f64; 2],
    pub(crate) clearance_sd: [f64; 2],
    /// Standard deviation of the surface pressure at each seat bone there, Pa, and of how much higher
    /// the right one is, m.
    pub(crate) surface_sd: [f64; 2],
    pub(crate) higher_sd: f64,
    /// How much each check that may be made next would tell, the most first.
    telling: Vec<(Telling, f64)>,
    /// How badly each answer still fits.
    pub(crate) misfits: Vec<Misfit>,
    /// The sum of squares of misfits and of departures from what was believed before.
    pub(crate) disagreement: f64,
}

/// How badly an answer fits.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Misfit {
    /// The round, from 0.
    pub(crate) round: usize,
    pub(crate) check: Check,
    /// Whether the answer is a word.
    pub(crate) word: bool,
    /// In units of how finely it can be told.
    pub(crate) by: f64,
}

/// The meshes that an estimate is made on.
#[derive(Clone, Copy)]
pub(crate) struct EstimateMeshes<'a> {
    /// On which answers are compared with what was found.
    pub(crate) compared: &'a MeshedCushion,
    /// On which the effects of the unknowns are found: they are differences, which need less.
    pub(crate) tried: &'a MeshedCushion,
}

impl<'a> EstimateMeshes<'a> {
    /// Those of a cushion.
    pub(crate) fn of(cushion: &'a PreparedCushion) -> Self {
        Self { compared: cushion.coarse(), tried: cushion.roughest() }
    }
}

/// What the unknowns do to the answers, around the usual values.
pub(crate) struct Around {
    seen: Seen,
    slopes: Slopes,
}

/// Estimates the unknowns from all rounds, the last one last.
pub(crate) fn estimate(
    meshes: EstimateMeshes<'_>,
    pattern: &Pattern,
    usual: &Assumptions,
    rounds: &[Round],
    stop: Stop<'_>,
) -> Result<Estimate, BodyError> {
    estimate_like(meshes, pattern, usual, rounds, None, stop).map(|(estimate, _)| estimate)
}

/// The same with what the unknowns do to the answers: as under a like cushion and body where that is
/// given, which says as well which way to go; whether a step is better is always solved.
pub(crate) fn estimate_like(
    meshes: EstimateMeshes<'_>,
    pattern: &Pattern,
    usual: &Assumptions,
    rounds: &[Round],
    like: Option<&Around>,
    stop: Stop<'_>,
) -> Result<(Estimate, Option<Around>), BodyError> {
    let mut answers = answers(pattern, usual, rounds);
    let mut places = USUAL.to_vec();
    let on = |cushion| Estimation { cushion, usual, rounds, answers: &answers, stop };
    let (mut seen, own) = seen_as_usual([on(meshes.compared), on(meshes.tried)], like)?;
    blurred(&mut answers, rounds, &seen);
    let estimation =
        Estimation { cushion: meshes.compared, usual, rounds, answers: &answers, stop };
    let slopes = own.as_ref().or(like).map(|around| &around.slopes);
    let slopes = slopes.expect("they are found where none are given");
    for _ in 0..like.map_or(STEPS, |_| STEPS_ALIKE) {
        let Some(by) = estimation.step(&places, &seen, slopes) else { break };
        // Half the step where the whole one makes it worse.
        let before = estimation.disagreement(&places, &seen);
        let better = [1.0, 0.5, 0.25].into_iter().find_map(|share| {
            let next: Vec<f64> = places
                .iter()
                .zip(&by)
                .map(|(place, by)| (place + share * by).clamp(-2.0, 2.0))
                .collect();
            let looked = estimation.seen_side_by_side(&next, Some(&seen)).ok()?;
            (estimation.disagreement(&next, &looked) < before - 1e-3).then_some((next, looked))
        });
        let Some((next, looked)) = better else { break };
        (places, seen) = (next, looked);
    }
    let spread = estimation.spread(&places, &seen, slopes);
    let disagreement = estimation.disagreement(&places, &seen);
    let estimate = Estimate {
        assumptions: estimation.assumptions(&places),
        places,
        clearance: [seen.told[0], seen.told[1]],
        clearance_sd: [0, 1].map(|at| spread[at][at].max(0.0).sqrt()),
        surface_sd: [2, 3].map(|at| spread[at][at].max(0.0).sqrt()),
        higher_sd: spread[4][4].max(0.0).sqrt(),
        telling: telling(&spread, seen.told),
        misfits: estimation.misfits(&seen),
        disagreement,
    };
    Ok((estimate, own))
}

/// What is seen around the usual values on the mesh that is compared, and what the unknowns do there on
/// the one that is tried on, where no like ones say it.
fn seen_as_usual(
    [compared, tried]: [Estimation<'_>; 2],
    like: Option<&Around>,
) -> Result<(Seen, Option<Around>), BodyError> {
    if let Some(like) = like {
        return Ok((compared.seen_side_by_side(&USUAL, Some(&like.seen))?, None));
    }
    if std::ptr::eq(compared.cushion, tried.cushion) {
        let seen = compared.seen_side_by_side(&USUAL, None)?;
        return Ok((seen.clone(), Some(compared.around_beside(|| (), seen).1?)));
    }
    let usual = tried.seen_side_by_side(&USUAL, None)?;
    let (seen, around) = tried.around_beside(|| compared.seen(&USUAL, None), usual);
    Ok((seen?, Some(around?)))
}

/// What the answers of all rounds mean; those that say nothing of numbers are left out.
fn answers(
    pattern: &Pattern,
    usual: &Assumptions,
    rounds: &[Round],
) -> Vec<(usize, Check, Meaning)> {
    let spacing = usual.sitter.measures.seat_bone_spacing;
    (rounds.iter().enumerate())
        .flat_map(|(at, round)| round.checks.iter().map(move |check| (at, *check)))
        .filter_map(|(at, check)| Some((at, check, meaning(pattern, spacing, &check)?)))
        .collect()
}

/// Makes answers on other counts than the last ones less fine by what is not known of the moves since.
fn blurred(answers: &mut [(usize, Check, Meaning)], rounds: &[Round], seen: &Seen) {
    let Some((last, now)) = rounds.last().zip(seen.restings.last().and_then(Option::as_ref)) else {
        return;
    };
    for ((at, _, meaning), then) in answers.iter_mut().zip(&seen.numbers) {
        if rounds[*at].counts != last.counts
            && let Some(number) = meaning.number.of(now)
        {
            meaning.fineness =
                libm::hypot(meaning.fineness, UNSURE_OF_MOVES * (number - then).abs());
        }
    }
}

struct Estimation<'a> {
    cushion: &'a MeshedCushion,
    usual: &'a Assumptions,
    rounds: &'a [Round],
    answers: &'a [(usize, Check, Meaning)],
    stop: Stop<'a>,
}

/// The numbers that answers are about, and the clearances on the last filling.
#[derive(Clone, Debug)]
struct Seen {
    numbers: Vec<f64>,
    /// The numbers of [`MAY_TELL`] on the last filling.
    told: [f64; 5],
    restings: Vec<Option<Resting>>,
}

/// Effects of the unknowns on the numbers and on those of [`MAY_TELL`], one entry for each unknown.
struct Slopes {
    numbers: Vec<Vec<f64>>,
    told: Vec<[f64; 5]>,
}

impl Estimation<'_> {
    fn assumptions(&self, places: &[f64]) -> Assumptions {
        let mut assumptions = self.usual.clone();
        for (unknown, place) in Unknown::ALL.into_iter().zip(places) {
            // Each range is that around the usual value, so the order does not matter.
            unknown.place(self.usual, &mut assumptions, *place);
        }
        assumptions
    }

    /// What is seen with the unknowns at some places, from what was seen at like ones.
    fn seen(&self, places: &[f64], near: Option<&Seen>) -> Result<Seen, BodyError> {
        let seated = ClientOnCushion::new(self.cushion, self.assumptions(places), self.stop)?;
        let all = 0..self.rounds.len();
        Ok(self.seen_in(all.map(|at| self.resting(&seated, near, at)).collect()))
    }

    /// The same on two cores.
    fn seen_side_by_side(&self, places: &[f64], near: Option<&Seen>) -> Result<Seen, BodyError> {
        let seated = ClientOnCushion::new(self.cushion, self.assumptions(places), self.stop)?;
        let all: Vec<usize> = (0..self.rounds.len()).collect();
        Ok(self.seen_in(side_by_side(&all, |at| self.resting(&seated, near, *at))))
    }

    /// Where the client rests on the counts of a round; none where they do not.
    fn resting(
        &self,
        seated: &ClientOnCushion<'_>,
        near: Option<&Seen>,
        at: usize,
    ) -> Option<Resting> {
        let near = near.and_then(|near| near.restings[at].as_ref());
        let answer = seated.rest_to_compare(&self.rounds[at].counts, near);
        let numbers = has_numbers(&answer.rest);
        answer.rest.resting.filter(|_| numbers)
    }

    fn seen_in(&self, restings: Vec<Option<Resting>>) -> Seen {
        // Where the body does not rest, the number says nothing; that it does not is weighed by itself.
        let number = |(at, _, meaning): &(usize, Check, Meaning)| {
            let resting = restings[*at].as_ref();
            resting
                .and_then(|resting| meaning.number.of(resting))
                .unwrap_or(meaning.least.max(-1e9).min(meaning.most))
        };
        let numbers = self.answers.iter().map(number).collect();
        let last = restings.last().and_then(Option::as_ref);
        let told = MAY_TELL
            .map(|(_, number, _)| last.and_then(|resting| number.of(resting)).unwrap_or(0.0));
        Seen { numbers, told, restings }
    }

    /// What the unknowns do around the usual values, from what is seen there; beside something that takes
    /// long.
    fn around_beside<T>(
        &self,
        long: impl FnOnce() -> T,
        seen: Seen,
    ) -> (T, Result<Around, BodyError>) {
        let all: Vec<usize> = (0..USUAL.len()).collect();
        let slope = |at: &usize| -> Result<(Vec<f64>, [f64; 5]), BodyError> {
            let Some((probe, there)) = self.beside_usual(*at, &seen)? else {
                return Ok((vec![0.0; seen.numbers.len()], [0.0; 5]));
            };
            let by = |there: f64, here: f64| (there - here) / probe;
            let numbers = there.numbers.iter().zip(&seen.numbers);
            let numbers = numbers.map(|(there, here)| by(*there, *here)).collect();
            Ok((numbers, std::array::from_fn(|at| by(there.told[at], seen.told[at]))))
        };
        let (done, slopes) = beside(long, &all, slope);
        let slopes: Result<Vec<_>, BodyError> = slopes.into_iter().collect();
        let around = slopes.map(|slopes| {
            let (numbers, told) = slopes.into_iter().unzip();
            Around { seen, slopes: Slopes { numbers, told } }
        });
        (done, around)
    }

    /// What is seen a little to one side of an unknown's usual value, with how far to that side it is: where
    /// the client rests on all counts on which they rest there, first towards the inside of a range, else to
    /// the other side. None where they do so on neither, and nothing is learnt of the unknown.
    fn beside_usual(&self, at: usize, seen: &Seen) -> Result<Option<(f64, Seen)>, BodyError> {
        // Of a one-sided range the usual value may be the high end.
        let range = Unknown::ALL[at].range(self.usual);
        let inside = if range.high > range.usual { PROBE } else { -PROBE };
        for probe in [inside, -inside] {
            let mut moved = USUAL;
            moved[at] += probe;
            let there = self.seen(&moved, Some(seen))?;
            let both = seen.restings.iter().zip(&there.restings);
            if both.into_iter().all(|(here, there)| here.is_none() || there.is_some()) {
                return Ok(Some((probe, there)));
            }
        }
        Ok(None)
    }

    fn misfits(&self, seen: &Seen) -> Vec<Misfit> {
        (self.answers.iter().zip(&seen.numbers))
            .map(|((round, check, meaning), number)| {
                let by = meaning.misfit(*number);
                Misfit { round: *round, check: *check, word: meaning.word, by }
            })
            .collect()
    }

    fn disagreement(&self, places: &[f64], seen: &Seen) -> f64 {
        let prior: f64 = places.iter().map(|place| (place / PRIOR).powi(2)).sum();
        let answers = self.answers.iter().zip(&seen.numbers);
        let answers =
            answers.map(|((_, _, meaning), number)| loss(meaning, meaning.misfit(*number)));
        let checked = self.rounds.iter().zip(&seen.restings).filter(|own| !own.0.checks.is_empty());
        let fell = checked.filter(|own| own.1.is_none()).count();
        prior + answers.sum::<f64>() + FELL * fell as f64
    }

    /// The matrix of the least-squares problem, and its right side.
    fn normal(&self, places: &[f64], seen: &Seen, slopes: &Slopes) -> (SmallMatrix, Vec<f64>) {
        let n = places.len();
        let mut matrix = SmallMatrix::zeros(n);
        let mut right = vec![0.0; n];
        for at in 0..n {
            matrix[[at, at]] = PRIOR.powi(-2);
            right[at] = -places[at] / PRIOR.powi(2);
        }
        for (answer, ((_, _, meaning), number)) in
            self.answers.iter().zip(&seen.numbers).enumerate()
        {
            let misfit = meaning.misfit(*number);
            // An answer that agrees and is a range bounds nothing near by; one that is a number
            // always weighs.
            if misfit == 0.0 && meaning.least < meaning.most {
                continue;
            }
            let row: Vec<f64> =
                slopes.numbers.iter().map(|slope| slope[answer] / meaning.fineness).collect();
            let weight = weight(meaning, misfit);
            for a in 0..n {
                right[a] -= weight * row[a] * misfit;
                for b in 0..n {
                    matrix[[a, b]] += weight * row[a] * row[b];
                }
            }
        }
        (matrix, right)
    }

    fn step(&self, places: &[f64], seen: &Seen, slopes: &Slopes) -> Option<Vec<f64>> {
        let (matrix, right) = self.normal(places, seen, slopes);
        matrix.solve(&[right])?.pop()
    }

    /// What is not known of the numbers of [`MAY_TELL`]: their variances and covariances.
    fn spread(&self, places: &[f64], seen: &Seen, slopes: &Slopes) -> [[f64; 5]; 5] {
        let (matrix, _) = self.normal(places, seen, slopes);
        let row = |at: usize| slopes.told.iter().map(|slope| slope[at]).collect::<Vec<f64>>();
        let rows: [Vec<f64>; 5] = std::array::from_fn(row);
        let Some(solved) = matrix.solve(&rows) else { return [[0.0; 5]; 5] };
        std::array::from_fn(|a| {
            std::array::from_fn(|b| solved[a].iter().zip(&rows[b]).map(|(x, y)| x * y).sum())
        })
    }
}

/// Checks that may be made next, with the number that each tells and how finely: fingers on top tell
/// one of three words, some 4 kPa apart.
const MAY_TELL: [(Telling, Number, f64); 5] = [
    (Telling::Under(Side::Left), Number::Clearance(Side::Left), HAND),
    (Telling::Under(Side::Right), Number::Clearance(Side::Right), HAND),
    (
        Telling::OnTop(Side::Left),
        Number::Surface(case::SiteName::SeatBone(Side::Left)),
        PINCHED_FROM - SAFE_UP_TO,
    ),
    (
        Telling::OnTop(Side::Right),
        Number::Surface(case::SiteName::SeatBone(Side::Right)),
        PINCHED_FROM - SAFE_UP_TO,
    ),
    (Telling::Lower, Number::RightHigher, LOWER_SIDE),
];

/// Clearances that differ by less are as low as each other, m: what the sides of a client who is the
/// same on both differ by is rounding, and then the left one is meant.
const AS_LOW: f64 = 1e-6;

/// How much each check would take from what is not known of the least clearance, m2: by the rule of
/// normal distributions, what it has in common with that, squared, over its own spread and fineness.
fn telling(spread: &[[f64; 5]; 5], told: [f64; 5]) -> Vec<(Telling, f64)> {
    let least = usize::from(told[1] < told[0] - AS_LOW);
    let gain = |(at, (telling, _, fineness)): (usize, (Telling, Number, f64))| {
        let gain = spread[at][least].powi(2) / (spread[at][at] + fineness.powi(2));
        (telling, gain)
    };
    let mut all: Vec<(Telling, f64)> = MAY_TELL.into_iter().enumerate().map(gain).collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    all
}

impl Estimate {
    /// The check among those that were not made that would tell most; none where all were made.
    pub(crate) fn tells_most(&self, client: &Client, checks: &[Check]) -> Option<NextStep> {
        let oblique = client.posture.obliquity.is_some();
        let may = |telling: &Telling| match telling {
            Telling::Under(side) => felt_under(checks, *side).is_none(),
            Telling::OnTop(side) => !checks
                .iter()
                .any(|check| matches!(check, Check::Top { side: at, .. } if at == side)),
            // Nobody who sits level is asked to measure it.
            Telling::Lower => {
                oblique && !checks.iter().any(|check| matches!(check, Check::Lower { .. }))
            }
        };
        let best = self.telling.iter().find(|(telling, _)| may(telling));
        best.map(|(telling, _)| NextStep::TellsMost(*telling))
    }
}

/// What it costs that a client would not have come to rest on counts on which hands checked them: more than
/// any answers could, since they sat there.
const FELL: f64 = 1e6;

/// The misfit from which an answer in words is more and more taken for a wrong one: hands err, and
/// one wrong word must not outweigh all right ones.
const DOUBTED: f64 = 2.0;

/// What a misfit costs: its square, and for words its logarithm when it is doubted.
fn loss(meaning: &Meaning, misfit: f64) -> f64 {
    if !meaning.word {
        return misfit * misfit;
    }
    DOUBTED * DOUBTED * libm::log1p((misfit / DOUBTED).powi(2))
}

/// How much an answer weighs by its misfit: the slope of [`loss`] over that of the square.
fn weight(meaning: &Meaning, misfit: f64) -> f64 {
    if meaning.word { (1.0 + (misfit / DOUBTED).powi(2)).recip() } else { 1.0 }
}
