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
    // A review that is set for a day after the check is the first look.
    let is_set = client.next_review.is_some_and(|review| review > fitted);
    if looked <= first && !is_set {
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

/// A weight that left the one at the latest plan by a tenth, and that no check has seen.
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
    let now = client.weight_since_check()?;
    let change = now.weight.to_kg() / then.weight.to_kg() - 1.0;
    let weight = WhyReCheck::Weight { then: then.weight, now: now.weight, plan };
    (change.abs() >= WEIGHT).then_some(weight)
}

/// Compartments that lose cells, with the day on which a share of them is gone.
fn losses(client: &Client, on: Date) -> Vec<(Date, WhyReCheck)> {
    let (Some(plan), Some((right, recounts))) =
        (client.counts_on_paper(), client.recounts_since_right())
    else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for count in &plan.counts {
        let counted = recounts.iter().filter_map(|recount| {
            let cells = recount.counts.iter().find(|(number, _)| *number == count.number)?.1;
            Some((recount.on, f64::from(cells)))
        });
        let planned = f64::from(count.planned);
        let mut series: Vec<(Date, f64)> = [(right, planned)].into_iter().chain(counted).collect();
        // Where all were counted, none had been lost, or they were put back.
        let whole = series.iter().rposition(|(_, cells)| *cells >= planned);
        series.drain(..whole.unwrap_or(0));
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
    use case::{Filled, PartsChecked, Recount, Weighed};
    use cushion::Mass;

    use super::*;

    const TEXT: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
         [measures]\nunits = \"mm\"\nhip_width = 400\n\
         [weight]\nkg = 72\nweighed_on = 2026-03-01\n\
         [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";
    const CELLS: u32 = 100;

    fn day(text: &str) -> Date {
        text.parse().expect("a date")
    }

    fn of_march(of_march: i8) -> Date {
        Date::constant(2026, 3, of_march)
    }

    fn filled(on: i8) -> Entry {
        Entry::Filled(Filled {
            on: of_march(on),
            by: "OT".into(),
            cushion: None,
            counts: (1..=6).map(|number| (number, CELLS)).collect(),
            spare: None,
            batch: None,
            serial: None,
            why: None,
        })
    }

    fn checked(on: i8) -> Entry {
        let found = [
            "top left=safe",
            "top right=safe",
            "under left=30mm",
            "under right=30mm",
            "skin coccyx=clear",
        ];
        Entry::Checked(PartsChecked {
            on: of_march(on),
            by: "OT".into(),
            found: found.map(|own| Check::read_whole(own).expect("a check")).to_vec(),
            transfer: true,
            reach: true,
            passed: Some(true),
            why: None,
        })
    }

    fn recount(on: i8, cells: u32) -> Entry {
        let (on, by) = (of_march(on), "carer".into());
        Entry::Recount(Recount { on, by, counts: vec![(2, cells)], spare: None })
    }

    fn weighed(on: i8, kg: f64) -> Entry {
        let (on, by) = (of_march(on), "clinic".into());
        Entry::Weighed(Weighed { on, by, weight: Mass::from_kg(kg) })
    }

    /// A client whose cushion was filled on the 3rd of March and checked on the 4th.
    fn fitted(more: Vec<Entry>) -> Client {
        let mut client = files::read_client(TEXT).value.expect("a right file");
        let plan = testkit::recorded(&testkit::pattern("row-six", "440x400"), &[CELLS; 6]);
        client.record = [vec![Entry::Plan(plan), filled(3), checked(4)], more].concat();
        client
    }

    /// When to look again by the 20th of March, and why, by how reports call it.
    fn due(client: &Client) -> (Date, Vec<&'static str>) {
        let due = re_check(client, of_march(20)).expect("it was fitted");
        (due.by, due.because.iter().map(|why| why.id()).collect())
    }

    #[test]
    fn a_review_that_is_set_after_the_check_stands_until_the_record_asks_for_an_earlier_one() {
        let set = day("2027-03-01");
        let client = |more| Client { next_review: Some(set), ..fitted(more) };
        assert_eq!(due(&fitted(vec![])), (add(of_march(4), FIRST), vec!["after-fitting"]));
        assert_eq!(due(&client(vec![])), (set, vec!["review"]));
        let lost = vec![recount(10, 80), filled(11), checked(11)];
        assert_eq!(due(&client(lost)), (set, vec!["review"]));
        let heavier = weighed(12, 85.0);
        assert_eq!(due(&client(vec![heavier])), (of_march(20), vec!["weight-changed"]));
    }

    #[test]
    fn cells_that_were_put_back_are_not_lost() {
        let losing = |more: Vec<Entry>| {
            let found = losses(&fitted(more), of_march(20));
            found.iter().map(|(by, _)| *by).collect::<Vec<_>>()
        };
        let lost = recount(10, 80);
        assert_eq!(losing(vec![lost.clone()]), [of_march(20)]);
        for mended in [vec![filled(10)], vec![recount(10, CELLS)], vec![checked(10)]] {
            assert_eq!(losing([vec![lost.clone()], mended.clone()].concat()), [], "{mended:?}");
            // What is lost after it is told again.
            let again = [vec![lost.clone()], mended, vec![recount(19, 60)]].concat();
            assert_eq!(losing(again), [of_march(20)]);
        }
    }

    #[test]
    fn a_weight_that_a_check_has_seen_asks_for_none() {
        let changed = |more| weight_change(&fitted(more)).is_some();
        assert!(changed(vec![weighed(10, 85.0)]));
        assert!(!changed(vec![weighed(10, 85.0), checked(10)]));
        assert!(changed(vec![weighed(10, 85.0), checked(10), weighed(12, 90.0)]));
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
