//! From a client's file to the body that the mechanics knows.

use case::BodyError;
use case::{Base, Chair, Client, CushionSides, Sides, SittingBalance, Taught};
use cushion::{Length, Mass, Pattern, Rim, Side};
use mechanics::{Load, Obliquity, Parameters, Resting, SeatedClient, Stop};

use crate::advice::altitude::air_pressure;
use crate::goals::needs::oblique;
use crate::prediction::client_on_cushion::{ClientOnCushion, MeshedCushion, has_numbers};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Seat, Unknown};

/// The depth of the cushion for which the usual places of seat bones and load are given, mm.
const USUAL_DEPTH: f64 = 400.0;

/// The client as they sit on a cushion of a size.
///
/// A small cushion is for a small body: where seat bones and load are scales with its depth from
/// the usual places on 400 mm, unless the file gives the seat bones' own.
///
/// What is fixed of an obliquity is built into the body. What is flexible is not: it is a load
/// that is off to the lower side, as far as that is believable, see [`assumptions_of`].
fn upright(client: &Client, pattern: &Pattern, weight: Mass) -> Assumptions {
    let mut sitter = SeatedClient::new(weight);
    sitter.measures = client.measures.clone();
    let scale = (pattern.size().depth().to_mm() / USUAL_DEPTH).min(1.0);
    let forward = SeatedClient::SEAT_BONES_FORWARD * scale;
    sitter.seat_bones_forward = Some(client.seat.seat_bones_forward.unwrap_or(forward));
    sitter.load_forward = Some(SeatedClient::LOAD_FORWARD * scale);
    sitter.injured = Sides {
        left: client.skin.ever_injured(Side::Left),
        right: client.skin.ever_injured(Side::Right),
    };
    if let Some(oblique) = oblique(client) {
        let fixed = oblique.by - oblique.reducible;
        sitter.obliquity = Some(Obliquity::at_seat_bones(oblique.lower, fixed));
    }
    sitter.windswept = client.posture.windswept.map(|windswept| (windswept.to, windswept.degrees));
    if let Some(share) = client.seat.share {
        sitter.seat_share = share;
    }
    if let Some(height) = client.seat.trunk_height {
        sitter.trunk_height = height;
    }
    let mut parameters = Parameters::default();
    let air = |height: Option<Length>, usual| {
        height.and_then(air_pressure).map_or(usual, |pressure| pressure.to_pa())
    };
    parameters.sealing_pressure = air(client.altitudes.sealed, parameters.sealing_pressure);
    parameters.air_pressure = air(client.altitudes.home, parameters.air_pressure);
    parameters.outer_give =
        outer_give(parameters.outer_give, pattern.rim(), client.chair.cushion_sides);
    let seat = seat(&client.chair, pattern.size().width());
    Assumptions { parameters, sitter, cells: 1.0, seat }
}

/// By how much a sag may be off where the seat is a sling or nobody looked, where a sling was
/// measured, and where it is solid, mm; practice judgements.
const SAG_UNKNOWN: f64 = 15.0;
const SAG_MEASURED: f64 = 5.0;
const SAG_SOLID: f64 = 2.0;

/// The seat under a cushion so wide.
fn seat(chair: &Chair, cushion_width: Length) -> Seat {
    let width = chair.inside_width.unwrap_or(cushion_width);
    let (sag, within) = match (chair.base, chair.sling_sag) {
        (Some(Base::Solid), _) => (Length::ZERO, SAG_SOLID),
        (_, Some(measured)) => (measured, SAG_MEASURED),
        (_, None) => (Length::ZERO, SAG_UNKNOWN),
    };
    Seat { sag, within: Length::from_mm(within), width }
}

/// How much of their give the outer walls use: nothing where a boxed rim or the sides of the chair
/// hold them, else what is usual.
///
/// Where nobody looked, no chair is believed to hold them: that is the careful answer, since walls
/// that bow leave less clearance. A chair that holds the sides counts as if it held all outer walls:
/// the rear one stands before the back support, and how far the front one bows is left out.
pub(crate) fn outer_give(usual: f64, rim: Rim, sides: Option<CushionSides>) -> f64 {
    let held = rim == Rim::Boxed || sides == Some(CushionSides::Held);
    if held { 0.0 } else { usual }
}

/// Steps by which the line of a leaning client's load is found roughly, each a straight line's: the one
/// that follows on the mesh that is searched on takes away what the meshes differ by.
const ROUGH_LEAN_STEPS: usize = 4;
/// A change of where the load is that turns nobody by a thousandth of a degree, m: the lean is found.
const LEAN_FOUND: f64 = 1e-6;
/// How far to a side somebody's load may be, m: farther, nearly all of it would be on one seat bone,
/// which nobody who sits has; what is then left of a lean is taken to be the pelvis' own turn at the
/// hips. A practice judgement.
const MOST_ASIDE: f64 = 0.025;

/// How an adult with free hands resists being rolled, N m per degree: an assumption, of the order of a
/// cushion's own stiffness.
const OWN_STIFFNESS: f64 = 4.0;
/// The load for which that is, N: 75 kg, two thirds of it on the seat.
const USUAL_LOAD: f64 = 478.0;
/// The thigh depth of an adult, m, with which the height of a trunk goes.
const USUAL_THIGH: f64 = 0.49;

/// How a client resists being rolled out of the posture that is built into the body, N m per radian:
/// as load times the height of the trunk, which goes with the length of the thigh; half of it where
/// hands are needed to sit, and a quarter where only props keep the trunk up. Not at all where an
/// obliquity can be reduced: that it does not resist is what flexible means.
fn own_stiffness(client: &Client, load: f64) -> f64 {
    if oblique(client).is_some_and(|oblique| oblique.reducible > Length::ZERO) {
        return 0.0;
    }
    let thighs = [client.measures.thigh_depth.left, client.measures.thigh_depth.right];
    let thigh = thighs.into_iter().flatten().reduce(Length::min).map_or(USUAL_THIGH, Length::to_m);
    let balance = match client.posture.balance {
        Some(SittingBalance::HandsNeeded) => 0.5,
        Some(SittingBalance::Propped) => 0.25,
        Some(SittingBalance::HandsFree) | None => 1.0,
    };
    balance * OWN_STIFFNESS.to_degrees() * (load / USUAL_LOAD) * (thigh / USUAL_THIGH)
}

/// The client as they sit on a cushion: leaning, where the obliquity is flexible, by what was measured,
/// on the stock fill; and resisting to be rolled where it is not. What a load that is far to the side
/// does not explain is only partly reached: a broad cushion gives way to most of a turn of the pelvis.
pub(crate) fn assumptions_of(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    stop: Stop<'_>,
) -> Result<Assumptions, BodyError> {
    let mut assumptions = upright(client, cushion.pattern(), weight);
    let load = Load::weight_of(weight, assumptions.sitter.seat_share).to_n();
    let stiffness = own_stiffness(client, load);
    let flexible = oblique(client).filter(|oblique| oblique.reducible > Length::ZERO);
    if let Some(oblique) = flexible {
        let wanted = oblique.right_higher(false);
        for (meshed, steps) in [(cushion.rough(), ROUGH_LEAN_STEPS), (cushion.coarse(), 1)] {
            OnStock::new(cushion, meshed, stop).lean(&mut assumptions, wanted, steps)?;
        }
    }
    assumptions.sitter.own_roll_stiffness = stiffness;
    Ok(client.taught.iter().fold(assumptions, |usual, taught| as_taught(taught, usual)))
}

/// What is assumed of a cushion that lies on a table, with what fittings taught of it: nothing holds its
/// sides, and nobody sits on it.
pub(crate) fn without_a_chair(client: &Client, pattern: &Pattern) -> Assumptions {
    // What a client weighs changes nothing of a cushion without them.
    let mut assumptions = upright(client, pattern, Mass::from_kg(70.0));
    let usual = Parameters::default().outer_give;
    assumptions.parameters.outer_give = outer_give(usual, pattern.rim(), None);
    client.taught.iter().fold(assumptions, |usual, taught| as_taught(taught, usual))
}

/// The same as fittings taught.
fn as_taught(taught: &Taught, usual: Assumptions) -> Assumptions {
    let places = [
        (Unknown::SeatShare, taught.seat_share),
        (Unknown::Sharpness, taught.sharpness),
        (Unknown::LoadForward, taught.load_forward),
        (Unknown::LoadRight, taught.load_right),
        (Unknown::Skew, taught.left_lower),
        (Unknown::Trunk, taught.trunk),
        (Unknown::OwnRollStiffness, taught.own_roll_stiffness),
        (Unknown::InnerGive, taught.cushion.inner_give),
        (Unknown::OuterGive, taught.cushion.outer_give),
        (Unknown::Sag, taught.cushion.sag),
        (Unknown::TautTension, taught.cushion.taut_tension),
        (Unknown::Slack, taught.cushion.slack),
        (Unknown::Migration, taught.cushion.migration),
        (Unknown::VoidPressure, taught.cushion.void_pressure),
        (Unknown::Packing, taught.cushion.packing),
    ];
    let mut assumptions = usual.clone();
    for (unknown, place) in places.into_iter().filter(|(_, place)| *place != 0.0) {
        // Each range is that around the usual value, so the order does not matter.
        unknown.place(&usual, &mut assumptions, place);
    }
    assumptions
}

/// A client on the stock fill.
struct OnStock<'a> {
    meshed: &'a MeshedCushion,
    counts: Vec<f64>,
    stop: Stop<'a>,
}

impl<'a> OnStock<'a> {
    fn new(cushion: &PreparedCushion, meshed: &'a MeshedCushion, stop: Stop<'a>) -> Self {
        let (pattern, stock) = (cushion.pattern(), cushion.stock());
        let counts = pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect();
        Self { meshed, counts, stop }
    }

    fn rests(
        &self,
        assumptions: &Assumptions,
        near: Option<&Resting>,
    ) -> Result<Option<(Resting, Load, f64)>, BodyError> {
        let seated = ClientOnCushion::new(self.meshed, assumptions.clone(), self.stop)?;
        let answer = seated.rest(&self.counts, near);
        let numbers = has_numbers(&answer.rest);
        let Some(resting) = answer.rest.resting.filter(|_| numbers) else { return Ok(None) };
        let clearance = |side| crate::prediction::predictor::clearance(&seated, &resting, side);
        let higher = clearance(Side::Right) - clearance(Side::Left);
        let load = *seated.body().load();
        Ok(Some((resting, load, higher)))
    }

    /// Puts the load to the side, and turns the pelvis for what is left of it, so that the right seat
    /// bone is so much higher, m, in so many steps at most.
    fn lean(
        &self,
        assumptions: &mut Assumptions,
        wanted: f64,
        steps: usize,
    ) -> Result<(), BodyError> {
        let spacing = assumptions.sitter.measures.seat_bone_spacing;
        let spacing = spacing.unwrap_or(SeatedClient::SEAT_BONE_SPACING).to_m();
        let mut near: Option<Resting> = None;
        for _ in 0..steps {
            let rests = self.rests(assumptions, near.as_ref())?;
            let Some((resting, load, higher)) = rests else { break };
            // What is missing of the lean, times the stiffness against it, is a moment; over the
            // weight it is how much farther the load is to the side, left for a lower left.
            let roll = (wanted - higher) / spacing;
            let moment = roll * (resting.stiffness.roll - resting.stiffness.trunk);
            let before = assumptions.sitter.load_right.to_m();
            let after = (before - moment / load.weight.to_n()).clamp(-MOST_ASIDE, MOST_ASIDE);
            assumptions.sitter.load_right = Length::from_m(after);
            // What the load did not do of it. The cushion gives way to about half of a turn of the
            // pelvis; the next steps find the rest.
            let done = (before - after) * load.weight.to_n()
                / (resting.stiffness.roll - resting.stiffness.trunk)
                * spacing;
            let left = wanted - higher - done;
            if after.abs() >= MOST_ASIDE {
                let turned = assumptions.sitter.left_lower_by.to_m() + left;
                assumptions.sitter.left_lower_by = Length::from_m(turned.clamp(-0.05, 0.05));
            } else if (after - before).abs() < LEAN_FOUND {
                break;
            }
            near = Some(resting);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prediction::prepared::Spacings;

    /// 4 N m a degree for an adult of 75 kg who sits with free hands; a child of a third of the load
    /// and two thirds of the height has two ninths of that.
    #[test]
    fn a_body_resists_as_its_load_and_height_and_not_where_it_is_flexible() {
        let client = |text: &str| {
            let text = format!(
                "format = 1\nkind = \"client\"\nclient = \"T-1\"\n{text}\n\
                 [cushion]\nlayout = \"row-six\"\nsize = \"300x300\"\nspare_cells = 9\n"
            );
            files::read_client(&text).value.expect("a client")
        };
        let thigh = |mm: f64| {
            format!("[measures]\nunits = \"mm\"\nthigh_depth = {{ left = {mm}, right = {mm} }}\n")
        };
        let per_degree = |client: &Client, load: f64| own_stiffness(client, load).to_radians();
        let near = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{found}");
        near(per_degree(&client(&thigh(490.0)), 478.0), 4.0);
        near(per_degree(&client(&thigh(980.0 / 3.0)), 478.0 / 3.0), 8.0 / 9.0);
        let propped = thigh(490.0) + "[posture]\nbalance = \"propped\"\n";
        near(per_degree(&client(&propped), 478.0), 1.0);
        let of = |is: &str| {
            let of = format!("{{ lower = \"left\", by = 9, at = \"seat bones\", is = \"{is}\" }}");
            per_degree(&client(&format!("{}[posture]\nobliquity = {of}\n", thigh(490.0))), 478.0)
        };
        near(of("fixed"), 4.0);
        near(of("flexible"), 0.0);
    }

    /// A lean is the same whether it is looked for roughly first or not: the line of the load to a
    /// hundredth of a millimetre, of which ten turn an adult by a degree or so; and what a load that is as
    /// far aside as it may be leaves to the pelvis to a millimetre of its turn, of which the cushion leaves a
    /// fifth at the seat bones: far below the 5 mm to which hands tell an obliquity.
    #[test]
    fn a_lean_that_is_looked_for_roughly_first_is_that_of_the_mesh_that_is_searched_on() {
        for (by, is_far_aside) in [(7, false), (14, true)] {
            let text = format!(
                "format = 1\nkind = \"client\"\nclient = \"T-1\"\n[measures]\nunits = \"mm\"\n\
                 [posture]\nobliquity = {{ lower = \"right\", by = {by}, at = \"seat bones\", \
                 is = \"flexible\" }}\n[cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\n\
                 spare_cells = 9\n"
            );
            let client = files::read_client(&text).value.expect("a client");
            let mm = Length::from_mm;
            let lean = |rough: f64| {
                let spacings =
                    Spacings { rough: mm(rough), roughest: mm(rough), ..Spacings::all(mm(12.0)) };
                let pattern = testkit::pattern("row-six", "440x400");
                let cushion = PreparedCushion::new(&pattern, &testkit::cell(), spacings).unwrap();
                let weight = Mass::from_kg(70.0);
                let found = assumptions_of(&client, &cushion, weight, Stop::never()).unwrap();
                [found.sitter.load_right, found.sitter.left_lower_by].map(Length::to_mm)
            };
            let [alone, after] = [12.0, 24.0].map(lean);
            assert_eq!(alone[0].abs() >= 1e3 * MOST_ASIDE, is_far_aside, "{alone:?}");
            assert!(alone[0] > 1.0 && (alone[0] - after[0]).abs() < 0.01, "{alone:?} {after:?}");
            assert_eq!(alone[1] != 0.0, is_far_aside, "{alone:?}");
            assert!((alone[1] - after[1]).abs() < 1.0, "{alone:?} {after:?}");
        }
    }

    #[test]
    fn outer_walls_are_held_by_a_boxed_rim_or_by_the_chair_and_by_nothing_that_is_not_known() {
        for (rim, sides, expected) in [
            (Rim::Soft, None, 0.5),
            (Rim::Soft, Some(CushionSides::Open), 0.5),
            (Rim::Soft, Some(CushionSides::Held), 0.0),
            (Rim::Boxed, None, 0.0),
            (Rim::Boxed, Some(CushionSides::Open), 0.0),
            (Rim::Boxed, Some(CushionSides::Held), 0.0),
        ] {
            assert_eq!(outer_give(0.5, rim, sides), expected, "{rim:?} {sides:?}");
        }
    }
}
