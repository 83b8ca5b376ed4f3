//! What hands found on the cells that are in the cushion now, in as many checks as that took: under
//! the seat bones at once, the skin when a mark had time to fade.

use core::mem::discriminant;

use case::{Check, Client, Date, Entry, NextStep, UnderAnswer, days_between};
use maud::{Markup, html};
use words::Language;

/// Days between two checks from which the earlier one is of another visit.
const ANOTHER_VISIT: i32 = 2;

/// What was found last of each thing that is looked at, in one visit; what speaks against the cushion
/// stays until it is looked at again, however long ago it was found. Nothing where cells were moved or
/// put in since, nobody knows which cells are there, or they are in another cushion.
pub(crate) fn so_far(client: &Client) -> Vec<Check> {
    let mut found = Vec::new();
    let mut last = None;
    let is_here = |now: case::CushionNow| now.from.is_told() && now.is_in(&client.cushion);
    if !client.cushion_now().is_some_and(is_here) {
        return found;
    }
    let record = &client.record;
    let kept = record.iter().zip(case::withdrawn(record)).filter(|own| !own.1).map(|own| own.0);
    for entry in kept {
        match entry {
            Entry::Adjustment(own) => of_one_visit(&mut found, &mut last, own.on),
            Entry::Skin(own) => of_one_visit(&mut found, &mut last, own.on),
            Entry::Plan(_) | Entry::Weighed(_) | Entry::Withdrawn(_) | Entry::Checked(_) => {}
            _ => found.clear(),
        }
        match entry {
            Entry::Adjustment(own) => own.checks.iter().for_each(|check| put(&mut found, *check)),
            Entry::Skin(own) => {
                put(&mut found, Check::Skin { site: own.site, answer: own.answer });
            }
            _ => {}
        }
    }
    found
}

fn of_one_visit(found: &mut Vec<Check>, last: &mut Option<Date>, on: Date) {
    if last.is_some_and(|last| days_between(last, on) >= ANOTHER_VISIT) {
        found.retain(Check::speaks_against);
    }
    *last = Some(on);
}

/// Puts a check in the place of the one before it that looked at the same thing.
fn put(found: &mut Vec<Check>, check: Check) {
    match found.iter_mut().find(|own| is_of_the_same(own, &check)) {
        Some(own) => *own = check,
        None => found.push(check),
    }
}

fn is_of_the_same(a: &Check, b: &Check) -> bool {
    match (a, b) {
        (Check::Top { side: a, .. }, Check::Top { side: b, .. })
        | (Check::Under { side: a, .. }, Check::Under { side: b, .. }) => a == b,
        (Check::Press { number: a, .. }, Check::Press { number: b, .. }) => a == b,
        (Check::Reading { site: a, .. }, Check::Reading { site: b, .. })
        | (Check::Skin { site: a, .. }, Check::Skin { site: b, .. }) => a == b,
        (a, b) => discriminant(a) == discriminant(b),
    }
}

/// Whether a check that is asked for was made before on the same cells.
pub(crate) fn was_made(found: &[Check], step: NextStep) -> bool {
    found.iter().any(|own| match (own, step) {
        (Check::Under { side, answer: UnderAnswer::Felt(_) }, NextStep::CheckUnder(asked))
        | (Check::Top { side, .. }, NextStep::CheckOnTop(asked)) => *side == asked,
        _ => false,
    })
}

/// Each check in words.
pub(crate) fn list(language: &dyn Language, found: &[Check]) -> Markup {
    html! { ul { @for own in found { li { (language.check_said(own)) } } } }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILLED: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n[measures]\nunits = \"mm\"\n\
        [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n\
        [[record]]\nwhat = \"filled\"\non = 2026-02-01\nby = \"OT\"\n\
        layout = \"row-six\"\nsize = \"440x400\"\n\
        counts = [{ number = 1, cells = 50 }]\n";

    fn adjustment(on: &str, found: &str) -> String {
        format!(
            "[[record]]\nwhat = \"adjustment\"\non = {on}\nby = \"OT\"\nfound = [{found}]\n\
             moves = []\n"
        )
    }

    /// The checks after records, by their words in the file.
    fn after(records: &[String]) -> Vec<String> {
        let text = format!("{FILLED}{}", records.concat());
        let client = files::read_client(&text).value.expect("a client");
        so_far(&client).iter().map(|own| format!("{own:?}")).collect()
    }

    #[test]
    fn what_is_found_in_parts_of_one_visit_is_kept_together() {
        let felt = adjustment("2026-02-02", "\"under left=30mm\", \"skin coccyx=fades\"");
        let skin = adjustment("2026-02-02", "\"skin coccyx=clear\"");
        let found = after(&[felt, skin]);
        assert!(found.len() == 2 && found[1].contains("Clear"), "{found:?}");
    }

    #[test]
    fn of_another_visit_stays_what_speaks_against_and_nothing_else() {
        let first = adjustment("2026-02-02", "\"under left=30mm\", \"skin coccyx=stays\"");
        let second = adjustment("2026-02-12", "\"under right=30mm\"");
        let found = after(&[first.clone(), second.clone()]);
        assert!(found.len() == 2 && found[0].contains("Stays"), "{found:?}");
        // Until it is looked at again.
        let third = adjustment("2026-02-12", "\"skin coccyx=clear\"");
        let found = after(&[first.clone(), second, third]);
        assert!(found.iter().all(|own| !own.contains("Stays")), "{found:?}");
        // Other cells are another cushion.
        let moved = "[[record]]\nwhat = \"moved\"\non = 2026-02-03\nby = \"OT\"\n\
            moves = [{ from = \"spare\", to = 1, cells = 2 }]\n";
        assert!(after(&[first, moved.to_owned()]).is_empty());
    }
}
