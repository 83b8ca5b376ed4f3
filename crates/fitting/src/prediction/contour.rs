//! The virtual loaded-contour test: a jig with two cylinders and two buttons on the stock fill.
//!
//! It is for suppliers who compare layouts on paper. It replaces no laboratory: the jig is slung
//! with webbing here as a smooth shape, and the loads are from memory.

use cushion::{Force, Length, Pattern, Side};
use mechanics::{Body, Jig, Load, Resting, SeatedBody, SheetModel, SiteName};

use crate::prediction::client_on_cushion::MeshedCushion;
use crate::prediction::prepared::PreparedCushion;

/// What a contour test is made with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContourTest {
    /// From the rear edge forward to the line of the jig's parts.
    pub forward: Length,
    /// The load under which the buttons are looked at.
    pub first_load: Force,
    /// The load under which it sinks further.
    pub overload: Force,
}

impl Default for ContourTest {
    fn default() -> Self {
        Self { forward: Jig::FORWARD, first_load: Jig::FIRST_LOAD, overload: Jig::OVERLOAD }
    }
}

/// What came out for one step of the jig.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContourFound {
    /// From the cylinders' ends up to the buttons'.
    pub step: Length,
    /// Whether both buttons touch under the first load.
    pub buttons_touch: bool,
    /// Cushion left under the lower cylinder under the first load.
    pub left_under: Length,
    /// How much further the jig sinks under the overload.
    pub further: Length,
}

impl ContourTest {
    /// Sets a jig of this step on the stock fill; none where it does not come to rest.
    #[must_use]
    pub fn run(&self, cushion: &PreparedCushion, step: Length) -> Option<ContourFound> {
        let meshed = cushion.fine();
        let first = self.rest(meshed, cushion.pattern(), cushion, step, self.first_load)?;
        let over = self.rest(meshed, cushion.pattern(), cushion, step, self.overload)?;
        let site = |name| first.sites.iter().find(|rest| rest.site.name == name);
        let both = [Side::Left, Side::Right];
        let touch = both.map(|side| site(SiteName::Trochanter(side)));
        let left = both.map(|side| site(SiteName::SeatBone(side)));
        Some(ContourFound {
            step,
            buttons_touch: touch.iter().flatten().all(|button| button.pressure.to_pa() > 0.0),
            left_under: left
                .iter()
                .flatten()
                .map(|cylinder| cylinder.clearance)
                .reduce(Length::min)?,
            further: Length::from_m(first.pose[0] - over.pose[0]),
        })
    }

    fn rest(
        &self,
        meshed: &MeshedCushion,
        pattern: &Pattern,
        cushion: &PreparedCushion,
        step: Length,
        weight: Force,
    ) -> Option<Resting> {
        let jig = Jig::new(pattern.size().width(), step, self.forward);
        let load = Load::new(weight, [0.0, self.forward.to_m()]);
        let model: &SheetModel = meshed.model();
        // The jig is guided straight down.
        let placed = SeatedBody::new(model, Body::jig(jig, load)).guided();
        let counts: Vec<f64> =
            pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.stock)).collect();
        meshed.rest_of(&placed, &counts).resting
    }
}
