//! What whoever reads a plan should know: sentences, each with its condition and its source.

use case::{
    Base, Caution, CautionSeverity, Chair, Healing, PlannedCount, Sensation, Want, WeightShift,
};
use cushion::{Length, MadeSize, Mass, Pressure, Side};

use crate::advice::drift::re_check;
use crate::advice::sizing::sizing;
use crate::search::plan::PlanInput;

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

/// A fill pressure under a client, for what altitude does: see the reference cases.
const IN_USE: Pressure = Pressure::from_kpa(3.0);

/// A guideline on wheelchairs for people with spinal cord injury.
const CAN_SCIP: &str = "Canadian SCI practice guideline (CAN-SCIP)";
/// A guideline on pressure injuries.
const PVA: &str = "Consortium for Spinal Cord Medicine, Pressure Ulcer Prevention and Treatment Following SCI, 2nd ed., 2014";
/// A study of foot propulsion.
const HEINRICHS: &str = "Heinrichs, Kirby et al., Disabil Rehabil Assist Technol, 2020";

fn caution(
    id: &'static str,
    severity: CautionSeverity,
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
    cautions.extend(layers(input));
    cautions.extend(skin(input));
    cautions.extend(obliquity(input));
    cautions.extend(feet(input));
    cautions.extend(size(input));
    cautions.extend(altitude_note(input));
    cautions.extend(re_check_due(input));
    cautions
}

/// What lies between the client and the cushion.
fn layers(input: &PlanInput<'_>) -> Option<Caution> {
    let layers = &input.client.layers;
    (layers.pad || layers.sling).then(|| {
        let what = match (layers.pad, layers.sling) {
            (true, true) => "A pad and a sling lie",
            (true, false) => "A pad lies",
            _ => "A sling lies",
        };
        caution("layers", CautionSeverity::Warning, CAN_SCIP, format!(
            "{what} on the cushion. Every layer takes some of what the cells do: make the checks with it in place, and take it away where it can be."
        ))
    })
}

/// What the skin asks for.
fn skin(input: &PlanInput<'_>) -> Vec<Caution> {
    let skin = &input.client.skin;
    let mut cautions = Vec::new();
    let open = skin.injuries.iter().filter(|injury| injury.state == Healing::Open);
    for injury in open {
        cautions.push(caution("open-injury", CautionSeverity::Stop, PVA, format!(
            "An open pressure injury at the {} ({}). The treating clinician decides whether and how long to sit.",
            injury.site.words(),
            injury.seen_on
        )));
    }
    let feels = matches!(skin.sensation, Some(Sensation::Impaired | Sensation::Absent));
    let shifts = matches!(skin.weight_shift, Some(WeightShift::Limited | WeightShift::Unable));
    if feels || shifts {
        cautions.push(caution("cannot-tell", CautionSeverity::Warning, PVA,
            "The client cannot feel, or cannot shift, enough to protect the skin. Plan who takes the load off, 1 to 2 minutes every 30 minutes, and who looks at the skin.",
        ));
    }
    cautions
}

/// An obliquity: what comes before the counts.
fn obliquity(input: &PlanInput<'_>) -> Vec<Caution> {
    let mut cautions = Vec::new();
    let Some(oblique) = crate::goals::needs::oblique(input.client) else { return cautions };
    if oblique.by < HEIGHT_THAT_MATTERS {
        cautions.push(caution("small-obliquity", CautionSeverity::Note, PRACTICE, format!(
            "The client's {} side is LOWER by {:.0} mm at the seat bones. Less than 10 mm is often let be.",
            oblique.lower.words().to_uppercase(),
            oblique.by.to_mm()
        )));
    }
    if oblique.reducible > Length::ZERO {
        cautions.push(caution(
            "low-side",
            CautionSeverity::Warning,
            PRACTICE,
            format!(
                "Building up under the low side loads its seat bone: check the {} side first.",
                oblique.lower.words()
            ),
        ));
    }
    cautions
}

/// Feet that propel.
fn feet(input: &PlanInput<'_>) -> Option<Caution> {
    let propulsion = input.client.function.propulsion?;
    let uses = [Side::Left, Side::Right].into_iter().any(|side| propulsion.uses_foot(side));
    let asked = input.client.goals.iter().any(|goal| matches!(goal.want, Want::LowerFront { .. }));
    (uses && !asked).then(|| {
        caution("foot", CautionSeverity::Note, HEINRICHS,
            "The client propels with a foot, and no goal lowers the front. Measure the loaded front edge against the lower leg with the shoe on: 25 to 50 mm below it is best.",
        )
    })
}

/// Whether the size suits.
fn size(input: &PlanInput<'_>) -> Option<Caution> {
    let client = input.client;
    let made = MadeSize {
        size: input.cushion.pattern().size(),
        // The rating has a refusal of its own.
        max_user_weight: Mass::from_kg(1e3),
    };
    // The chair has cautions of its own.
    let sized = sizing(&client.measures, None, &Chair::default(), &[made]);
    let reasons = sized.why_not.into_iter().next()?.1;
    Some(caution(
        "size",
        CautionSeverity::Warning,
        "see `seatwright size`",
        format!("The size does not suit the measures: {}.", reasons.join("; ")),
    ))
}

fn altitude_note(input: &PlanInput<'_>) -> Vec<Caution> {
    let altitudes = input.client.altitudes;
    if altitudes.sealed.is_none() && altitudes.home.is_none() {
        return Vec::new();
    }
    let mut said = crate::advice::altitude::sentences(altitudes.sealed, altitudes.home);
    if let (Some(sealed), Some(home)) = (altitudes.sealed, altitudes.home) {
        let stock = input.cushion.stock().total();
        let cells = crate::advice::altitude::cells_at_home(stock, IN_USE, sealed, home);
        if let Some(cells) = cells.filter(|cells| cells.abs_diff(stock) * 20 > stock) {
            said.push(format!(
                "After that re-check about {cells} cells at home do what {stock} do where they were sealed."
            ));
        }
    }
    said.into_iter()
        .map(|text| caution("altitude", CautionSeverity::Note, "ISO 2533", text))
        .collect()
}

/// A look that is due.
fn re_check_due(input: &PlanInput<'_>) -> Option<Caution> {
    let due = re_check(input.client, input.on)?;
    let text = format!("Re-check by {}, because {}.", due.by, due.because.join("; "));
    let severity =
        if due.by <= input.on { CautionSeverity::Warning } else { CautionSeverity::Note };
    Some(caution("re-check", severity, CAN_SCIP, text))
}

/// Counts below what reaches the walls, or above what the model is good for.
fn out_of_range(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<Caution> {
    let ranged = input.cushion.pattern().indices().zip(counts);
    ranged
        .filter_map(|(ix, count)| {
            let cells = input.cushion.stock()[ix].cells;
            let number = count.number;
            if count.planned == 0 {
                Some(caution("empty", CautionSeverity::Stop, PRACTICE, format!(
                    "Compartment {number} would be empty. A cushion is never used with an empty compartment."
                )))
            } else if count.planned < cells.low {
                Some(caution("few-cells", CautionSeverity::Warning, MODEL, format!(
                    "Compartment {number} gets {} cells; fewer than {} leave its top slack. Check by hand for bottoming out on that side first.",
                    count.planned, cells.low
                )))
            } else if count.planned > cells.high {
                Some(caution("many-cells", CautionSeverity::Warning, MODEL, format!(
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
            CautionSeverity::Warning,
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
            CautionSeverity::Warning,
            PRACTICE,
            "No body weight is given. Weigh the client: neither the rating nor the plan can be checked without it.",
        ));
    };
    let age = (input.on - weighing.on).get_days();
    (age > OLD_WEIGHING).then(|| {
        caution(
            "old-weight",
            CautionSeverity::Warning,
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
        caution("height", CautionSeverity::Warning, PRACTICE, "This plan raises or lowers the client. Set the footrests again, and check transfers, brakes and the table.")
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
            CautionSeverity::Warning,
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
            caution("sling", CautionSeverity::Warning, PRACTICE, "The chair has a sling seat. Rule out sag first, or put in a solid seat: sag undoes what the compartments do."),
        );
    }
    if chair.inside_width.is_some_and(|inside| size.width() > inside) {
        cautions.push(caution(
            "too-wide",
            CautionSeverity::Warning,
            PRACTICE,
            "The cushion is wider than the chair inside: it will be squeezed and stand higher.",
        ));
    }
    if chair.inside_depth.is_some_and(|inside| size.depth() > inside) {
        cautions.push(caution(
            "too-deep",
            CautionSeverity::Warning,
            PRACTICE,
            "The cushion is deeper than the seat of the chair.",
        ));
    }
    cautions
}
