//! Drift watch: from recounts, weights and checks over time to the day of the next re-check.

use case::{
    Check, Client, Date, Entry, ReCheck, UnderAnswer, WhyReCheck, day_after as add,
    days_between as days,
};
use cushion::{Length, Side};
use mechanics::Parameters;

/// The longest time between two looks at a sitting surface, days: two years (Canadian SCI
/// guideline, CAN-SCIP).
const AT_MOST: i32 = 730;
/// The first look after a fitting, days: three months (CAN-SCIP).
const FIRST: i32 = 91;
/// The change of weight that asks for a look at once, as a share: from memory, unverified.
const WEIGHT: f64 = 0.10;
/// The share of a compartment's cells whose loss asks for a look: a practice judgement.
const LOST: f64 = 0.08;

/// Returns when the client's set-up is to be looked at again, judged on a day from what the record
/// says; none while nothing was fitted. A day that has passed is told as today.
#[must_use]
pub fn re_check(client: &Client, on: Date) -> Option<ReCheck> {
    let reasons = reasons(client, on)?;
    let by = reasons.first()?.0.max(on);
    // What falls due together is told together.
    let due = reasons.into_iter().filter(|(reason, _)| *reason <= by);
    Some(ReCheck { by, because: due.map(|(_, why)| why).collect() })
}

/// Returns the day by which the client was or is to be looked at again, which may have passed.
#[must_use]
pub fn look_again(client: &Client, on: Date) -> Option<Date> {
    reasons(client, on)?.first().map(|reason| reason.0)
}

/// All reasons to look again, with their days, the earliest first.
fn reasons(client: &Client, on: Date) -> Option<Vec<(Date, WhyReCheck)>> {
    let fitted = client.passed_check()?.on;
    let mut reasons: Vec<(Date, WhyReCheck)> = Vec::new();
    let looked = last_look(client).unwrap_or(fitted);
    let first = add(fitted, FIRST);
    if looked <= first {
        reasons.push((first, WhyReCheck::AfterFitting(fitted)));
    }
    reasons.push((add(looked, AT_MOST), WhyReCheck::AfterLastLook(looked)));
    reasons.extend(client.next_review.map(|day| (day, WhyReCheck::Review(day))));
    reasons.extend(weight_change(client).map(|why| (on, why)));
    reasons.extend(losses(client, on));
    reasons.extend(falling_clearance(client, on));
    reasons.sort_by_key(|(by, _)| *by);
    Some(reasons)
}

fn last_look(client: &Client) -> Option<Date> {
    let looks = client.in_force().into_iter().filter(|entry| {
        matches!(
            entry,
            Entry::FittingCheck(_) | Entry::Checked(_) | Entry::Adjustment(_) | Entry::Plan(_)
        )
    });
    looks.map(Entry::on).max()
}

/// A weight that left the one at the latest plan by a tenth.
fn weight_change(client: &Client) -> Option<WhyReCheck> {
    let plan = client.latest_plan()?.on;
    let before = client.weighing.clone().into_iter().chain(
        client.in_force().into_iter().filter_map(|entry| match entry {
            Entry::Weighed(weighed) => {
                Some(case::Weighing { weight: weighed.weight, on: weighed.on })
            }
            _ => None,
        }),
    );
    let then = before.filter(|weighing| weighing.on <= plan).max_by_key(|weighing| weighing.on)?;
    let now = client.latest_weighing()?;
    let change = now.weight.to_kg() / then.weight.to_kg() - 1.0;
    let weight = WhyReCheck::Weight { then: then.weight, now: now.weight, plan };
    (change.abs() >= WEIGHT).then_some(weight)
}

/// Compartments that lose cells, with the day on which a share of them is gone.
fn losses(client: &Client, on: Date) -> Vec<(Date, WhyReCheck)> {
    let Some(plan) = client.counts_on_paper() else { return Vec::new() };
    let mut found = Vec::new();
    for count in &plan.counts {
        let recounts = client.in_force().into_iter().filter_map(|entry| match entry {
            Entry::Recount(recount) if recount.on >= plan.on => {
                let cells = recount.counts.iter().find(|(number, _)| *number == count.number)?.1;
                Some((recount.on, f64::from(cells)))
            }
            _ => None,
        });
        let planned = f64::from(count.planned);
        let series: Vec<(Date, f64)> = [(plan.on, planned)].into_iter().chain(recounts).collect();
        let least = planned * (1.0 - LOST);
        if let Some(day) = reached(&series, least, on) {
            let last = series.last().map_or(planned, |point| point.1);
            let (number, planned) = (count.number, count.planned);
            found.push((day, WhyReCheck::Losing { number, cells: last.round() as u32, planned }));
        }
    }
    found
}

/// Seat bones under which less and less is felt, with the day on which the limit is reached.
fn falling_clearance(client: &Client, on: Date) -> Vec<(Date, WhyReCheck)> {
    let limit = Length::from_m(Parameters::default().clearance_limit);
    let mut found = Vec::new();
    for side in [Side::Left, Side::Right] {
        let mut series = Vec::new();
        for entry in client.in_force() {
            let checks = match entry {
                // New counts begin a new story.
                Entry::Plan(_) | Entry::Filled(_) | Entry::Moved(_) | Entry::Returned(_) => {
                    series.clear();
                    continue;
                }
                Entry::Adjustment(own) => &own.checks,
                Entry::Checked(own) => &own.found,
                _ => continue,
            };
            series.extend(checks.iter().filter_map(|check| match check {
                Check::Under { side: at, answer: UnderAnswer::Felt(felt) } if *at == side => {
                    Some((entry.on(), felt.to_mm()))
                }
                _ => None,
            }));
        }
        if let Some(day) = reached(&series, limit.to_mm(), on) {
            let last = series.last().map_or(0.0, |point| point.1);
            found.push((day, WhyReCheck::Clearance { side, felt: Length::from_mm(last) }));
        }
    }
    found
}

/// The day on which a falling straight line through a series reaches a value, not before `on`;
/// none where it does not fall, or only in more than two years.
fn reached(series: &[(Date, f64)], value: f64, on: Date) -> Option<Date> {
    let (start, _) = *series.first()?;
    let (_, last) = *series.last()?;
    if last <= value && series.len() > 1 {
        return Some(on);
    }
    let n = series.len() as f64;
    let xs: Vec<f64> = series.iter().map(|(day, _)| f64::from(days(start, *day))).collect();
    let mean_x = xs.iter().sum::<f64>() / n;
    let mean_y = series.iter().map(|point| point.1).sum::<f64>() / n;
    let square: f64 = xs.iter().map(|x| (x - mean_x).powi(2)).sum();
    if square == 0.0 {
        return None;
    }
    let slope =
        xs.iter().zip(series).map(|(x, point)| (x - mean_x) * (point.1 - mean_y)).sum::<f64>()
            / square;
    if !(slope < 0.0) {
        return None;
    }
    let at = mean_x + (value - mean_y) / slope;
    let limit = f64::from(days(start, on) + AT_MOST);
    (at <= limit).then(|| add(start, at.floor() as i32).max(on))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Date {
        text.parse().expect("a date")
    }

    #[test]
    fn a_planted_trend_reaches_its_day() {
        let start = day("2026-01-01");
        // One a ten days, from 50: 46 is reached after 40 days.
        let series: Vec<(Date, f64)> =
            [0, 10, 20].map(|at| (add(start, at), 50.0 - f64::from(at) / 10.0)).to_vec();
        assert_eq!(reached(&series, 46.0, start), Some(add(start, 40)));
        // The day asked on is never gone by.
        assert_eq!(reached(&series, 46.0, add(start, 60)), Some(add(start, 60)));
    }

    #[test]
    fn what_rises_or_stays_reaches_nothing() {
        let start = day("2026-01-01");
        let flat = [(start, 50.0), (add(start, 30), 50.0)];
        assert_eq!(reached(&flat, 46.0, start), None);
        assert_eq!(reached(&flat[..1], 46.0, start), None);
        assert_eq!(reached(&[], 46.0, start), None);
    }
}
