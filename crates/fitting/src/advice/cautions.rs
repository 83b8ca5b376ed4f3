//! What whoever reads a plan should know: each caution with its condition.

use case::{
    AltitudeNote, Base, Caution, Chair, Client, Healing, PlannedCount, Sensation, Want, WeightShift,
};
use cushion::{Length, MadeSize, Mass, Pressure, Side};

use crate::advice::altitude;
use crate::advice::drift::re_check;
use crate::advice::sizing::{sized_by, sizing};
use crate::search::plan::PlanInput;

/// A weight older than this, in days, may no longer be true.
///
/// Common practice, no source: half a year.
const OLD_WEIGHING: i32 = 183;

/// A change of the top's height from which footrests and transfers are looked at again.
///
/// Common practice, no source: 10 mm.
const HEIGHT_THAT_MATTERS: Length = Length::from_mm(10.0);

/// A fill pressure under a client, for what altitude does: see the reference cases.
const IN_USE: Pressure = Pressure::from_kpa(3.0);

/// Returns the cautions for counts, fresh or recorded, in the order in which they are best read.
#[must_use]
pub fn cautions(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<Caution> {
    let mut cautions = Vec::new();
    cautions.extend(out_of_range(input, counts));
    cautions.extend(without_rating(input));
    cautions.extend(old_weight(input));
    cautions.extend(height_changed(input, counts));
    let stock: u32 = counts.iter().map(|count| count.stock).sum();
    let planned: u32 = counts.iter().map(|count| count.planned).sum();
    cautions.extend(too_few_spares(input.client, stock, planned));
    cautions.extend(chair(input));
    cautions.extend(layers(input));
    cautions.extend(skin(input));
    cautions.extend(obliquity(input));
    cautions.extend(feet(input));
    cautions.extend(size(input));
    cautions.extend(altitude(input));
    cautions.extend(re_check_due(input));
    cautions
}

/// What lies between the client and the cushion.
fn layers(input: &PlanInput<'_>) -> Option<Caution> {
    let (pad, sling) = (input.client.layers.pad, input.client.layers.sling);
    (pad || sling).then_some(Caution::Layers { pad, sling })
}

/// What the skin asks for.
fn skin(input: &PlanInput<'_>) -> Vec<Caution> {
    let skin = &input.client.skin;
    let open = skin.injuries.iter().filter(|injury| injury.state == Healing::Open);
    let mut cautions: Vec<Caution> = open
        .map(|injury| Caution::OpenInjury { site: injury.site, seen_on: injury.seen_on })
        .collect();
    let feels = skin.sensation.is_some_and(Sensation::is_less);
    let shifts = matches!(skin.weight_shift, Some(WeightShift::Limited | WeightShift::Unable));
    cautions.extend((feels || shifts).then_some(Caution::CannotProtectSkin));
    cautions
}

/// An obliquity: what comes before the counts.
fn obliquity(input: &PlanInput<'_>) -> Vec<Caution> {
    let Some(oblique) = crate::goals::needs::oblique(input.client) else { return Vec::new() };
    let lower = oblique.lower;
    let small = oblique.by < HEIGHT_THAT_MATTERS;
    let levelled = oblique.reducible > Length::ZERO;
    let small = small.then_some(Caution::SmallObliquity { lower, by: oblique.by });
    small.into_iter().chain(levelled.then_some(Caution::LowSideLoaded { lower })).collect()
}

/// Feet that propel.
fn feet(input: &PlanInput<'_>) -> Option<Caution> {
    let propulsion = input.client.function.propulsion?;
    let uses = [Side::Left, Side::Right].into_iter().any(|side| propulsion.uses_foot(side));
    let asked = input.client.goals.iter().any(|goal| matches!(goal.want, Want::LowerFront { .. }));
    (uses && !asked).then_some(Caution::FootPropels)
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
    let sized = sizing(&sized_by(client), None, &Chair::default(), &[made]);
    sized.why_not.into_iter().next().map(|(_, why)| Caution::Size(why))
}

fn altitude(input: &PlanInput<'_>) -> Vec<Caution> {
    let altitudes = input.client.altitudes;
    if altitudes.sealed.is_none() && altitudes.home.is_none() {
        return Vec::new();
    }
    let mut notes = altitude::notes(altitudes.sealed, altitudes.home);
    if let (Some(sealed), Some(home)) = (altitudes.sealed, altitudes.home) {
        let stock = input.cushion.stock().total();
        let cells = altitude::cells_at_home(stock, IN_USE, sealed, home);
        let cells = cells.filter(|cells| cells.abs_diff(stock) * 20 > stock);
        notes.extend(cells.map(|home| AltitudeNote::CellsAtHome { sealed: stock, home }));
    }
    notes.into_iter().map(Caution::Altitude).collect()
}

/// A look that is due.
fn re_check_due(input: &PlanInput<'_>) -> Option<Caution> {
    let due = re_check(input.client, input.on)?;
    let now = due.by <= input.on;
    Some(Caution::ReCheck { due, now })
}

/// Counts below what reaches the walls, or above what the model is good for.
fn out_of_range(input: &PlanInput<'_>, counts: &[PlannedCount]) -> Vec<Caution> {
    let ranges = input.cushion.stock().compartments.iter().map(|own| own.cells);
    let out = |(count, range): (&PlannedCount, cushion::CountRange)| {
        let (number, cells) = (count.number, count.planned);
        match cells {
            0 => Some(Caution::Empty { number }),
            _ if cells < range.low => Some(Caution::FewCells { number, cells, least: range.low }),
            _ if cells > range.high => Some(Caution::ManyCells { number, cells, most: range.high }),
            _ => None,
        }
    };
    counts.iter().zip(ranges).filter_map(out).collect()
}

fn without_rating(input: &PlanInput<'_>) -> Option<Caution> {
    let pattern = input.cushion.pattern();
    let rated = pattern.max_user_weight().is_some();
    (!rated).then(|| Caution::NoRating { size: pattern.size() })
}

fn old_weight(input: &PlanInput<'_>) -> Option<Caution> {
    let Some(weighing) = input.client.latest_weighing() else { return Some(Caution::NoWeight) };
    let age = (input.on - weighing.on).get_days();
    (age > OLD_WEIGHING).then_some(Caution::OldWeight { weighed_on: weighing.on })
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
    (changed || many).then_some(Caution::HeightChanged)
}

/// Whether the spare bag holds too few cells for so many in the whole cushion: by the record, or of a
/// cushion as supplied, which has `stock` cells.
#[must_use]
pub fn too_few_spares(client: &Client, stock: u32, planned: u32) -> Option<Caution> {
    let now = client.cushion_now().filter(|now| now.is_in(&client.cushion));
    let (now, there) = now.map_or_else(
        || (stock, client.cushion.spare_cells),
        |now| (now.total(), u32::try_from(now.bag).unwrap_or(0)),
    );
    let needed = planned.saturating_sub(now);
    (needed > there).then_some(Caution::Spares { needed, there })
}

fn chair(input: &PlanInput<'_>) -> Vec<Caution> {
    let chair = &input.client.chair;
    let size = input.cushion.pattern().size();
    let sling = chair.base == Some(Base::Sling);
    let wider = chair.inside_width.is_some_and(|inside| size.width() > inside);
    let deeper = chair.inside_depth.is_some_and(|inside| size.depth() > inside);
    let found = [
        sling.then_some(Caution::SlingSeat),
        wider.then_some(Caution::WiderThanChair),
        deeper.then_some(Caution::DeeperThanSeat),
    ];
    found.into_iter().flatten().collect()
}
