//! What whoever reads a plan should know: sentences, each with its condition.

use case::{Base, PlannedCount};
use cushion::Length;

use crate::plan::PlanInput;

/// A weight older than this, in days, may no longer be true.
///
/// Common practice, no source: half a year.
const OLD_WEIGHING: i32 = 183;

/// A change of the top's height from which footrests and transfers are looked at again.
///
/// Common practice, no source: 10 mm.
const HEIGHT_THAT_MATTERS: Length = Length::from_mm(10.0);

/// Returns the cautions for counts, fresh or recorded, in the order in which they are best read.
#[must_use]
pub fn cautions(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<String> {
    let mut cautions = Vec::new();
    cautions.extend(out_of_range(input, counts));
    cautions.extend(without_rating(input));
    cautions.extend(old_weight(input));
    cautions.extend(height_changed(input, counts));
    cautions.extend(too_few_spares(input, counts));
    cautions.extend(chair(input));
    cautions
}

/// Counts below what reaches the walls, or above what the model is good for.
fn out_of_range(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<String> {
    let ranged = input.pattern.indices().zip(counts);
    ranged
        .filter_map(|(ix, count)| {
            let cells = input.stock[ix].cells;
            let number = count.number;
            if count.planned == 0 {
                Some(format!(
                    "Compartment {number} would be empty. A cushion is never used with an empty compartment."
                ))
            } else if count.planned < cells.low {
                Some(format!(
                    "Compartment {number} gets {} cells; fewer than {} leave its top slack. Check by hand for bottoming out on that side first.",
                    count.planned, cells.low
                ))
            } else if count.planned > cells.high {
                Some(format!(
                    "Compartment {number} gets {} cells; above {} the estimate is not good. It may be hard and unstable.",
                    count.planned, cells.high
                ))
            } else {
                None
            }
        })
        .collect()
}

fn without_rating(input: &PlanInput<'_>) -> Option<String> {
    input.pattern.max_user_weight().is_none().then(|| {
        format!(
            "The layout is not made in size {}; there is no maximum user weight for it.",
            input.pattern.size()
        )
    })
}

fn old_weight(input: &PlanInput<'_>) -> Option<String> {
    let Some(weighing) = &input.client.weighing else {
        return Some(
            "No body weight is given. Weigh the client: the rating cannot be checked without it."
                .to_owned(),
        );
    };
    let age = (input.on - weighing.on).get_days();
    (age > OLD_WEIGHING)
        .then(|| format!("The body weight is of {}. Weigh the client again.", weighing.on))
}

fn height_changed(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Option<String> {
    let changed = input.client.changes.iter().any(|change| match change.amount {
        case::Amount::Crown(by) => by.abs() > HEIGHT_THAT_MATTERS,
        case::Amount::Cells(_) => false,
    });
    let (stock, planned): (u32, u32) =
        counts.iter().fold((0, 0), |(a, b), count| (a + count.stock, b + count.planned));
    // A tenth of the cells is about a tenth of the height, so several millimetres.
    let many = 10 * planned.abs_diff(stock) > stock;
    (changed || many).then(|| {
        "This plan raises or lowers the client. Set the footrests again, and check transfers, brakes and the table."
            .to_owned()
    })
}

fn too_few_spares(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Option<String> {
    let more: u32 = counts.iter().map(|count| count.planned.saturating_sub(count.stock)).sum();
    let fewer: u32 = counts.iter().map(|count| count.stock.saturating_sub(count.planned)).sum();
    let needed = more.saturating_sub(fewer);
    let spares = input.client.cushion.spare_cells;
    (needed > spares).then(|| {
        format!("The plan needs {needed} cells from the spare bag, and {spares} are in it.")
    })
}

fn chair(input: &PlanInput<'_>) -> Vec<String> {
    let chair = &input.client.chair;
    let size = input.pattern.size();
    let mut cautions = Vec::new();
    if chair.base == Some(Base::Sling) {
        cautions.push(
            "The chair has a sling seat. Rule out sag first, or put in a solid seat: sag undoes what the compartments do."
                .to_owned(),
        );
    }
    if chair.inside_width.is_some_and(|inside| size.width() > inside) {
        cautions.push(
            "The cushion is wider than the chair inside: it will be squeezed and stand higher."
                .to_owned(),
        );
    }
    if chair.inside_depth.is_some_and(|inside| size.depth() > inside) {
        cautions.push("The cushion is deeper than the seat of the chair.".to_owned());
    }
    cautions
}
