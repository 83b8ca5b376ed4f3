//! The meshed cushion, ready to be filled and sat on.

use std::sync::OnceLock;

use cushion::Length;

use crate::membrane::{UnitSheets, unit_sheets};
use crate::mesh::NestedMeshes;

use super::disc_bins::DiscBins;
use super::level::{Sheet, SolverMesh};

/// The sheet over all compartments on nested meshes, with what does not depend on fill or body:
/// made once for a pattern.
#[derive(Clone, Debug)]
pub struct SheetModel {
    pub(super) levels: Vec<SolverMesh>,
    /// For each level but the coarsest, the parents of the nodes that the coarser one lacks.
    parents: Vec<Vec<[u32; 2]>>,
    /// Height of the seams, m.
    pub(super) wall: f64,
    /// The unit solution on the finest mesh, m2.
    pub(super) unit: Vec<f64>,
    /// Nodes of the finest mesh by squares; made when it is first asked for.
    discs: OnceLock<DiscBins>,
}

impl SheetModel {
    /// Prepares meshes of a pattern whose walls are so high.
    ///
    /// # Panics
    ///
    /// Panics unless the height is finite and above zero.
    #[must_use]
    #[track_caller]
    pub fn new(meshes: &NestedMeshes, wall_height: Length) -> Self {
        Self::with_units(meshes, &unit_sheets(meshes), wall_height)
    }

    /// The same where the unit solution on these meshes is known.
    ///
    /// # Panics
    ///
    /// As [`Self::new`], and unless the unit solution has a value at each node of the finest mesh.
    #[must_use]
    #[track_caller]
    pub fn with_units(meshes: &NestedMeshes, units: &UnitSheets, wall_height: Length) -> Self {
        let wall = wall_height.to_m();
        assert!(wall.is_finite() && wall > 0.0, "walls have a height");
        let parents = meshes.levels()[1..].iter().map(|mesh| mesh.parents().to_vec()).collect();
        let levels: Vec<SolverMesh> =
            meshes.levels().iter().map(|mesh| SolverMesh::new(Sheet::from(mesh))).collect();
        let unit = units.values.clone();
        assert_eq!(unit.len(), meshes.finest().nodes().len(), "a value at each node");
        Self { levels, parents, wall, unit, discs: OnceLock::new() }
    }

    /// The same cushion turned round by mistake, so that its front edge is at the rear; `depth` is
    /// that of the cushion.
    #[must_use]
    pub fn turned_round(&self, depth: Length) -> Self {
        let mut turned = Self { discs: OnceLock::new(), ..self.clone() };
        for level in &mut turned.levels {
            for [x, y] in &mut level.places {
                (*x, *y) = (-*x, depth.to_m() - *y);
            }
        }
        turned
    }

    /// How many compartments there are.
    #[must_use]
    pub fn compartments(&self) -> usize {
        self.finest().patches.len()
    }

    /// Places of the nodes of the finest mesh, m.
    #[must_use]
    pub fn places(&self) -> &[[f64; 2]] {
        &self.finest().places
    }

    pub(super) fn discs(&self) -> &DiscBins {
        self.discs.get_or_init(|| DiscBins::new(self.places()))
    }

    pub(super) fn finest(&self) -> &SolverMesh {
        &self.levels[self.levels.len() - 1]
    }

    /// The area of the sheet, m2.
    pub(super) fn area(&self) -> f64 {
        self.finest().areas.iter().sum()
    }

    /// Values on the next finer mesh of what is linear between the nodes of the mesh before.
    pub(super) fn prolonged(&self, level: usize, values: &[f64]) -> Vec<f64> {
        let parents = &self.parents[level];
        let between = |[a, b]: &[u32; 2]| f64::midpoint(values[*a as usize], values[*b as usize]);
        values.iter().copied().chain(parents.iter().map(between)).collect()
    }
}
