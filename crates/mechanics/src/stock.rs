//! The unloaded cushion: crown, volume and count of each compartment, and the stock fill.

use case::{MeshError, StockError};
use cushion::{
    Cell, CompartmentFill, CompartmentIx, CountRange, Length, Pattern, Pressure, StockFill, Volume,
};

use crate::cover::Cover;
use crate::fill::FillLaw;
use crate::membrane::{UnitSheet, unit_sheets};
use crate::mesh::{DEFAULT_SPACING, Mesh, NestedMeshes};
use crate::numerics::root;
use crate::{Parameters, UnitSheets};

/// The rise over the width at which the model of small slopes ends: there its pressure is 6 %
/// above the exact one of an arc, `1/(1 + 4 f2/c2)`.
const STEEPEST: f64 = 1.0 / 8.0;
/// The share of its bracket to which a root is found: rounding.
const NEAR: f64 = 1e-14;

/// Finds the stock fill of a pattern: one unloaded fill pressure in all compartments, such that
/// the one that rises most rises above its walls by the pattern's stock crown.
///
/// The greatest rise grows with the pressure and moves steadily as seams move, even where another
/// compartment becomes the one that rises most; so the counts move steadily too.
///
/// # Errors
///
/// Returns an error where the pattern cannot be meshed, or the stock crown is not above zero.
pub fn stock_fill(
    pattern: &Pattern,
    cell: &Cell,
    parameters: &Parameters,
) -> Result<StockFill, StockError> {
    UnloadedCushion::new(pattern, cell, parameters).map(|unloaded| unloaded.stock)
}

/// The unloaded cushion with its stock fill, ready to say what other counts would make of it.
#[derive(Clone, Debug)]
pub struct UnloadedCushion {
    stock: StockFill,
    sheets: Vec<Sheet>,
    cell_volume: f64,
    parameters: Parameters,
}

impl UnloadedCushion {
    /// Meshes the pattern at the default width and finds its stock fill.
    ///
    /// # Errors
    ///
    /// As [`stock_fill`].
    pub fn new(
        pattern: &Pattern,
        cell: &Cell,
        parameters: &Parameters,
    ) -> Result<Self, StockError> {
        let meshes = NestedMeshes::new(pattern, DEFAULT_SPACING)?;
        let units = unit_sheets(&meshes);
        Self::of_meshes(pattern, cell, parameters, &meshes, &units)
    }

    /// Finds the stock fill from meshes of the pattern and their unit solution.
    ///
    /// # Errors
    ///
    /// As [`stock_fill`].
    pub fn of_meshes(
        pattern: &Pattern,
        cell: &Cell,
        parameters: &Parameters,
        meshes: &NestedMeshes,
        units: &UnitSheets,
    ) -> Result<Self, StockError> {
        let crown = pattern.stock_crown();
        if crown <= Length::ZERO {
            return Err(StockError::NoCrown(crown));
        }
        let mut sheets: Vec<Sheet> = pattern
            .indices()
            .zip(&units.compartments)
            .map(|(ix, unit)| Sheet::new(pattern, meshes, ix, *unit))
            .collect();
        // Every compartment rises with the pressure: the first to stand as asked rises most.
        let net = sheets
            .iter()
            .map(|sheet| sheet.net_pressure(crown.to_m() / sheet.unit.greatest, parameters))
            .min_by(f64::total_cmp)
            .ok_or(StockError::Mesh(MeshError::Empty))?;
        let pressure = net + parameters.cover_weight;
        for (ix, sheet) in pattern.indices().zip(&mut sheets) {
            let volume = sheet.volume(sheet.steepness(net, parameters));
            sheet.packing =
                cell.packing_share(pattern.packing_surface(ix), Volume::from_m3(volume));
        }
        even_out(meshes.finest(), &mut sheets);
        let cell_volume = cell.inflated.to_m3();
        let stock = StockFill { pressure: Pressure::from_pa(pressure), compartments: Vec::new() };
        let mut cushion = Self { stock, sheets, cell_volume, parameters: parameters.clone() };
        cushion.stock.compartments =
            cushion.sheets.iter().map(|sheet| cushion.fill(sheet, net)).collect();
        Ok(cushion)
    }

    fn fill(&self, sheet: &Sheet, net: f64) -> CompartmentFill {
        let steepness = sheet.steepness(net, &self.parameters);
        let crown = steepness * sheet.unit.greatest;
        let most = sheet.most_crown().max(crown);
        let count = |crown: f64| self.count_of(sheet, crown).max(0.0).round() as u32;
        CompartmentFill {
            crown: Length::from_m(crown),
            volume: Volume::from_m3(sheet.volume(steepness)),
            packing: sheet.packing,
            cells: CountRange { low: count(0.0), stock: count(crown), high: count(most) },
        }
    }

    /// The stock fill.
    #[must_use]
    pub fn stock(&self) -> &StockFill {
        &self.stock
    }

    /// The stock fill, given away.
    #[must_use]
    pub fn into_stock(self) -> StockFill {
        self.stock
    }

    /// Returns a compartment with so many cells, which need not be whole.
    ///
    /// # Panics
    ///
    /// Panics unless the count is finite and not negative.
    #[must_use]
    #[track_caller]
    pub fn at_count(&self, compartment: CompartmentIx, count: f64) -> UnloadedCompartment {
        assert!(count.is_finite() && count >= 0.0, "a count is a number of cells");
        let sheet = &self.sheets[compartment.index()];
        let cells = count * self.cell_volume;
        let level = cells / (sheet.packing * sheet.unit.area) - sheet.walls;
        if level <= 0.0 {
            return UnloadedCompartment {
                count,
                crown: Length::from_m(level),
                pressure: Pressure::ZERO,
                tension: self.parameters.tension_slack,
                volume: Volume::from_m3(cells / sheet.packing),
            };
        }
        let law = FillLaw::of_volume(cells, sheet.packing, &self.parameters);
        let net = sheet.rest(&law, &self.parameters);
        self.state(sheet, count, net)
    }

    /// Returns a compartment in which the cells press on the sheet with so much.
    ///
    /// # Panics
    ///
    /// Panics if the pressure is negative.
    #[must_use]
    #[track_caller]
    pub fn at_pressure(
        &self,
        compartment: CompartmentIx,
        pressure: Pressure,
    ) -> UnloadedCompartment {
        assert!(pressure >= Pressure::ZERO, "cells do not pull");
        let sheet = &self.sheets[compartment.index()];
        let net = pressure.to_pa() - self.parameters.cover_weight;
        let volume = sheet.volume(sheet.steepness(net, &self.parameters));
        let each = FillLaw::of_volume(self.cell_volume, sheet.packing, &self.parameters);
        self.state(sheet, volume / each.volume(pressure).to_m3(), net)
    }

    fn state(&self, sheet: &Sheet, count: f64, net: f64) -> UnloadedCompartment {
        let steepness = sheet.steepness(net, &self.parameters);
        UnloadedCompartment {
            count,
            // Cells that just begin to press do not yet lift the cover's own weight.
            crown: Length::from_m((steepness * sheet.unit.greatest).max(0.0)),
            pressure: Pressure::from_pa(net + self.parameters.cover_weight),
            tension: sheet.tension(steepness, &self.parameters).0,
            volume: Volume::from_m3(sheet.volume(steepness)),
        }
    }

    /// Returns how many cells, not rounded, lift a compartment's top so far above its walls; at
    /// or below zero, how many lie loose up to that level.
    ///
    /// None where no cells make it: a level below the base, or a crown above the stock crown for
    /// which the model of small slopes no longer holds.
    #[must_use]
    pub fn count_at_crown(&self, compartment: CompartmentIx, crown: Length) -> Option<f64> {
        let sheet = &self.sheets[compartment.index()];
        let most = self.most_crown(compartment).max(self.stock[compartment].crown);
        let makes = crown <= most && crown.to_m() >= -sheet.walls;
        makes.then(|| self.count_of(sheet, crown.to_m()))
    }

    fn count_of(&self, sheet: &Sheet, crown: f64) -> f64 {
        if crown <= 0.0 {
            return (sheet.walls + crown) * sheet.unit.area * sheet.packing / self.cell_volume;
        }
        let steepness = crown / sheet.unit.greatest;
        let net = sheet.net_pressure(steepness, &self.parameters);
        let pressure = net + self.parameters.cover_weight;
        let each = FillLaw::of_volume(self.cell_volume, sheet.packing, &self.parameters)
            .volume(Pressure::from_pa(pressure));
        sheet.volume(steepness) / each.to_m3()
    }

    /// Returns the crown up to which the model of small slopes holds: an eighth of the width of
    /// the compartment's widest place.
    #[must_use]
    pub fn most_crown(&self, compartment: CompartmentIx) -> Length {
        Length::from_m(self.sheets[compartment.index()].most_crown())
    }

    /// Returns the compartments whose stock crown lies beyond that.
    #[must_use]
    pub fn too_steep(&self) -> Vec<CompartmentIx> {
        let mut steep = Vec::new();
        for (place, sheet) in self.sheets.iter().enumerate() {
            if self.stock.compartments[place].crown.to_m() > sheet.most_crown() {
                steep.push(sheet.compartment);
            }
        }
        steep
    }
}

/// One compartment of the unloaded cushion at some count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnloadedCompartment {
    /// Cells, not rounded.
    pub count: f64,
    /// Rise of the top above the walls, at its highest. Where the cells lie loose below the
    /// walls it is their level, which is negative. Above [`UnloadedCushion::most_crown`] the
    /// model of small slopes no longer holds.
    pub crown: Length,
    /// Fill pressure.
    pub pressure: Pressure,
    /// Tension of the cover, N/m.
    pub tension: f64,
    /// Space that the cells take.
    pub volume: Volume,
}

/// Makes mirror images equal to the last bit: rounding must not give one side a cell more.
fn even_out(mesh: &Mesh, sheets: &mut [Sheet]) {
    let Some(images) = mesh.mirror_compartments() else { return };
    for (own, &image) in images.iter().enumerate() {
        let image = image as usize;
        if own < image {
            let compartment = sheets[image].compartment;
            sheets[image] = Sheet { compartment, ..sheets[own].clone() };
        }
    }
}

/// The sheet over one compartment: `walls + steepness phi`, with the unit solution phi.
#[derive(Clone, Debug)]
struct Sheet {
    compartment: CompartmentIx,
    unit: UnitSheet,
    /// Height of the seams, m.
    walls: f64,
    /// Width of the widest place, m.
    width: f64,
    /// Share of the stock volume that unpressed cells fill.
    packing: f64,
}

impl Sheet {
    fn new(
        pattern: &Pattern,
        meshes: &NestedMeshes,
        compartment: CompartmentIx,
        unit: UnitSheet,
    ) -> Self {
        // The coarsest mesh is fine enough for a width, and quickest.
        let mesh = &meshes.levels()[0];
        // The area from the curves is exact; the mesh's has straight sides.
        let unit = UnitSheet { area: pattern.area(compartment).to_m2(), ..unit };
        Self {
            compartment,
            unit,
            walls: pattern.wall_height().to_m(),
            width: mesh.greatest_width(compartment.index() as u32),
            packing: 1.0,
        }
    }

    fn most_crown(&self) -> f64 {
        self.width * STEEPEST
    }

    /// Volume under the sheet, m3.
    fn volume(&self, steepness: f64) -> f64 {
        self.unit.area * self.walls + self.unit.volume * steepness
    }

    /// Tension of the cover at a steepness, N/m, and its derivative.
    fn tension(&self, steepness: f64, parameters: &Parameters) -> (f64, f64) {
        // Half the squared slope is the extra area.
        let extra = 0.5 * steepness * steepness * self.unit.volume;
        let (tension, slope) = Cover::over(self.unit.area, parameters).tension(extra);
        (tension, slope * steepness * self.unit.volume)
    }

    /// Pressure less cover weight that holds the sheet at a steepness, Pa.
    fn net_pressure(&self, steepness: f64, parameters: &Parameters) -> f64 {
        steepness * self.tension(steepness, parameters).0
    }

    /// The steepness, 1/m, at which the sheet holds a pressure less cover weight, in Pa; negative
    /// where it sags.
    fn steepness(&self, net: f64, parameters: &Parameters) -> f64 {
        let (low, high) =
            (net.abs() / parameters.tension_taut, net.abs() / parameters.tension_slack);
        // The tension falls with the steepness nowhere, so the pressure rises with it.
        let rising = |steepness: f64| {
            let (tension, slope) = self.tension(steepness, parameters);
            (steepness * tension - net.abs(), tension + steepness * slope)
        };
        root(rising, [low, high], high, NEAR * high) * net.signum()
    }

    /// The pressure less cover weight at which cells and sheet are at rest, Pa.
    fn rest(&self, law: &FillLaw, parameters: &Parameters) -> f64 {
        // Looser the sheet sags by its own weight, and no pressure stands against it.
        let sagging = -parameters.cover_weight;
        let loose = law.pressure(self.volume(self.steepness(sagging, parameters)).max(1e-12));
        let (low, high) = (sagging, loose.pressure - parameters.cover_weight);
        let rising = |net: f64| {
            let steepness = self.steepness(net, parameters);
            let (tension, slope) = self.tension(steepness, parameters);
            let wider = self.unit.volume / (tension + steepness * slope);
            let held = law.pressure(self.volume(steepness).max(1e-12));
            (net + parameters.cover_weight - held.pressure, 1.0 - held.slope * wider)
        };
        root(rising, [low, high], high, NEAR * (low.abs() + high))
    }
}
