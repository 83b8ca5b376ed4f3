//! What whoever reads a plan should know: sentences, each with its condition and its source.

use case::{Base, Caution, PlannedCount, Weight};
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

/// What is usual and stands in no source that was read.
const PRACTICE: &str = "common practice, no source";
/// What follows from the model.
const MODEL: &str = "the model's own limits";

fn caution(
    id: &'static str,
    severity: Weight,
    source: &'static str,
    text: impl Into<String>,
) -> Caution {
    Caution { id, severity, text: text.into(), source }
}

/// Returns the cautions for counts, fresh or recorded, in the order in which they are best read.
#[must_use]
pub fn cautions(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<Caution> {
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
fn out_of_range(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<Caution> {
    let ranged = input.cushion.pattern().indices().zip(counts);
    ranged
        .filter_map(|(ix, count)| {
            let cells = input.cushion.stock()[ix].cells;
            let number = count.number;
            if count.planned == 0 {
                Some(caution("empty", Weight::Stop, PRACTICE, format!(
                    "Compartment {number} would be empty. A cushion is never used with an empty compartment."
                )))
            } else if count.planned < cells.low {
                Some(caution("few-cells", Weight::Warning, MODEL, format!(
                    "Compartment {number} gets {} cells; fewer than {} leave its top slack. Check by hand for bottoming out on that side first.",
                    count.planned, cells.low
                )))
            } else if count.planned > cells.high {
                Some(caution("many-cells", Weight::Warning, MODEL, format!(
                    "Compartment {number} gets {} cells; above {} the estimate is not good. It may be hard and unstable.",
                    count.planned, cells.high
                )))
            } else {
                None
            }
        })
        .collect()
}

fn without_rating(input: &PlanInput<'_>) -> Option<Caution> {
    input.cushion.pattern().max_user_weight().is_none().then(|| {
        caution(
            "no-rating",
            Weight::Warning,
            "the layout file",
            format!(
                "The layout is not made in size {}; there is no maximum user weight for it.",
                input.cushion.pattern().size()
            ),
        )
    })
}

fn old_weight(input: &PlanInput<'_>) -> Option<Caution> {
    let Some(weighing) = input.client.latest_weighing() else {
        return Some(caution(
            "no-weight",
            Weight::Warning,
            PRACTICE,
            "No body weight is given. Weigh the client: neither the rating nor the plan can be checked without it.",
        ));
    };
    let age = (input.on - weighing.on).get_days();
    (age > OLD_WEIGHING).then(|| {
        caution(
            "old-weight",
            Weight::Warning,
            PRACTICE,
            format!("The body weight is of {}. Weigh the client again.", weighing.on),
        )
    })
}

fn height_changed(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Option<Caution> {
    let changed = input.client.changes.iter().any(|change| match change.amount {
        case::Amount::Crown(by) => by.abs() > HEIGHT_THAT_MATTERS,
        case::Amount::Cells(_) => false,
    });
    let (stock, planned): (u32, u32) =
        counts.iter().fold((0, 0), |(a, b), count| (a + count.stock, b + count.planned));
    // A tenth of the cells is about a tenth of the height, so several millimetres.
    let many = 10 * planned.abs_diff(stock) > stock;
    (changed || many).then(|| {
        caution("height", Weight::Warning, PRACTICE, "This plan raises or lowers the client. Set the footrests again, and check transfers, brakes and the table.")
    })
}

fn too_few_spares(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Option<Caution> {
    let more: u32 = counts.iter().map(|count| count.planned.saturating_sub(count.stock)).sum();
    let fewer: u32 = counts.iter().map(|count| count.stock.saturating_sub(count.planned)).sum();
    let needed = more.saturating_sub(fewer);
    let spares = input.client.cushion.spare_cells;
    (needed > spares).then(|| {
        caution(
            "spares",
            Weight::Warning,
            PRACTICE,
            format!("The plan needs {needed} cells from the spare bag, and {spares} are in it."),
        )
    })
}

fn chair(input: &PlanInput<'_>) -> Vec<Caution> {
    let chair = &input.client.chair;
    let size = input.cushion.pattern().size();
    let mut cautions = Vec::new();
    if chair.base == Some(Base::Sling) {
        cautions.push(
            caution("sling", Weight::Warning, PRACTICE, "The chair has a sling seat. Rule out sag first, or put in a solid seat: sag undoes what the compartments do."),
        );
    }
    if chair.inside_width.is_some_and(|inside| size.width() > inside) {
        cautions.push(caution(
            "too-wide",
            Weight::Warning,
            PRACTICE,
            "The cushion is wider than the chair inside: it will be squeezed and stand higher.",
        ));
    }
    if chair.inside_depth.is_some_and(|inside| size.depth() > inside) {
        cautions.push(caution(
            "too-deep",
            Weight::Warning,
            PRACTICE,
            "The cushion is deeper than the seat of the chair.",
        ));
    }
    cautions
}
