//! Answers that cannot both be true: they are asked again, and nothing is moved.

use case::{Check, Doubt, PressAnswer, TopAnswer, UnderAnswer};
use cushion::{Length, Pattern};

/// By how much two readings of one hand in one place may differ, mm: one notch of what it tells.
const ONE_NOTCH: f64 = 5.0;

/// Answers that do not go together.
pub(crate) fn contradictions(pattern: &Pattern, checks: &[Check]) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    for (at, check) in checks.iter().enumerate() {
        let earlier = checks[..at].iter().filter(|other| contradict(pattern, check, other));
        doubts.extend(earlier.map(|other| Doubt::Contradiction(*other, *check)));
    }
    doubts
}

/// Whether two answers cannot both be true.
fn contradict(pattern: &Pattern, a: &Check, b: &Check) -> bool {
    match (a, b) {
        (Check::Top { side: x, answer: p }, Check::Top { side: y, answer: q }) => x == y && p != q,
        (Check::Under { side: x, answer: p }, Check::Under { side: y, answer: q }) => {
            x == y && !are_readings_of_one(*p, *q)
        }
        (Check::Lower { lower: p, .. }, Check::Lower { lower: q, .. }) => p != q,
        (Check::Skin { site: x, answer: p }, Check::Skin { site: y, answer: q }) => {
            x == y && p != q
        }
        (Check::Press { number: x, answer: p }, Check::Press { number: y, answer: q }) => {
            let of = |number: u8| pattern.by_number(number);
            let partners = of(*x).and_then(|ix| pattern.partner(ix)) == of(*y);
            // Of two partners one is firmer, or neither.
            x == y && p != q || partners && p == q && *p != PressAnswer::Like
        }
        (Check::Top { side: x, answer: TopAnswer::Safe }, Check::Under { side: y, answer })
        | (Check::Under { side: y, answer }, Check::Top { side: x, answer: TopAnswer::Safe }) => {
            x == y && *answer == UnderAnswer::BoneFelt
        }
        _ => false,
    }
}

/// Whether two answers from underneath can be of one clearance: felt twice, a notch apart at most.
fn are_readings_of_one(p: UnderAnswer, q: UnderAnswer) -> bool {
    match (p, q) {
        (UnderAnswer::Felt(p), UnderAnswer::Felt(q)) => {
            (p - q).abs() <= Length::from_mm(ONE_NOTCH + 1e-9)
        }
        _ => p == q,
    }
}
