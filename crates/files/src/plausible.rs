//! Measures of an adult that are each possible and are not likely, together or alone.
//!
//! Outside source: ANSUR II (Gordon et al., NATICK/TR-15/007, 2014), fit adults. They are no
//! limits for clients, so these are remarks and never errors; children have none.

use case::{Measures, Weighing};
use cushion::Length;

use crate::cursor::Table;

/// The longest buttock-popliteal length but for one in a hundred: men 572 mm, and fewer women.
const LONG_THIGH: Length = Length::from_mm(570.0);
/// The greatest popliteal height, 525 mm, and 40 mm for a shoe.
const LONG_LEG: Length = Length::from_mm(565.0);

/// Makes remarks on the table of measures.
pub(crate) fn remark_on_adult(table: &Table<'_>, measures: &Measures, weighing: Option<&Weighing>) {
    let remark = |key: &str, message: String, hint: &str| {
        table.remarks.remark(table.key_span(key), message, hint)
    };
    let depths = [measures.thigh_depth.left, measures.thigh_depth.right];
    if depths.into_iter().flatten().any(|depth| depth > LONG_THIGH) {
        remark(
            "thigh_depth",
            "hardly anybody's thigh is so deep from the back of the buttock to the back of the knee"
                .to_owned(),
            "measure to the back of the knee: to its front it is some 90 to 130 mm more",
        );
    }
    let legs = [measures.lower_leg_length.left, measures.lower_leg_length.right];
    if legs.into_iter().flatten().any(|leg| leg > LONG_LEG) {
        remark(
            "lower_leg_length",
            "hardly anybody's lower leg is so long".to_owned(),
            "measure from the back of the knee to under the heel, not from the top of the knee",
        );
    }
    if let (Some(hips), Some(weighing)) = (measures.hip_width, weighing) {
        // Men 219 + 1.875 m, se 14; women 231 + 2.474 m, se 18 mm: three of each to the outside.
        let kg = weighing.weight.to_kg();
        let (least, most) = (219.0 + 1.875 * kg - 42.0, 231.0 + 2.474 * kg + 54.0);
        let mm = hips.to_mm();
        if mm < least || mm > most {
            let how = if mm < least { "narrow" } else { "wide" };
            remark(
                "hip_width",
                format!("the hips are unusually {how} for {kg:.0} kg"),
                "check both: hips at their widest as clothed, weight of the day",
            );
        }
    }
}
