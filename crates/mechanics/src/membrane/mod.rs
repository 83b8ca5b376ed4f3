//! The top sheet as a membrane: its shape under one pressure, from the unit solution.
//!
//! The unit solution phi has the curvature -1 everywhere and is zero on the seams. Under a
//! pressure p in a compartment, a sheet of tension T stands `p/T phi` above its seams, so volume
//! and crown of every fill follow from one solution. It is also Saint-Venant's torsion function,
//! whence the tables that it is checked against.

mod element;
mod multigrid;
mod peak;

use crate::mesh::{Mesh, NestedMeshes};

pub use self::element::Element;

/// The unit solution in one compartment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnitSheet {
    /// Area between the seams, m2.
    pub area: f64,
    /// Volume under the unit solution, m4. It is also the integral of its squared slope.
    pub volume: f64,
    /// Its greatest value, m2.
    pub greatest: f64,
    /// Where that is, in metres.
    pub crest: [f64; 2],
}

/// The unit solution in all compartments.
#[derive(Clone, Debug)]
pub struct UnitSheets {
    /// Values at the nodes of the finest mesh, m2; zero on seams.
    pub values: Vec<f64>,
    /// One for each compartment: areas and volumes in the limit of ever finer meshes, as the two
    /// finest meshes foretell it.
    pub compartments: Vec<UnitSheet>,
    /// The same as the finest mesh alone has it, whose error falls with the square of its width.
    pub on_mesh: Vec<UnitSheet>,
    /// Steps that the solver took on the finest mesh.
    pub iterations: usize,
    /// What was left of the load when it stopped, as a share.
    pub residual: f64,
}

/// Solves for the unit solution on nested meshes.
#[must_use]
pub fn unit_sheets(meshes: &NestedMeshes) -> UnitSheets {
    let mut solved = multigrid::solve(meshes);
    let levels = meshes.levels();
    let finest = solved.pop().expect("there is at least one mesh");
    let mut on_mesh = sums(meshes.finest(), &finest.values);
    for (sheet, crest) in on_mesh.iter_mut().zip(peak::crests(meshes.finest(), &finest.values)) {
        sheet.greatest = crest.height;
        sheet.crest = crest.at;
    }
    even_out(meshes.finest(), &mut on_mesh);
    let mut compartments = on_mesh.clone();
    if let Some(coarser) = solved.last() {
        // Richardson: an error that falls by four when the width is halved is a third of the
        // last change.
        let before = sums(&levels[levels.len() - 2], &coarser.values);
        for (sheet, before) in compartments.iter_mut().zip(&before) {
            sheet.area += (sheet.area - before.area) / 3.0;
            sheet.volume += (sheet.volume - before.volume) / 3.0;
        }
        even_out(meshes.finest(), &mut compartments);
    }
    UnitSheets {
        values: finest.values,
        compartments,
        on_mesh,
        iterations: finest.iterations,
        residual: finest.residual,
    }
}

/// Areas and volumes.
fn sums(mesh: &Mesh, values: &[f64]) -> Vec<UnitSheet> {
    let bare = UnitSheet { area: 0.0, volume: 0.0, greatest: 0.0, crest: [0.0; 2] };
    let mut sheets = vec![bare; mesh.compartments()];
    for triangle in mesh.triangles() {
        let heights = triangle.nodes.map(|node| values[node as usize]);
        let sheet = &mut sheets[triangle.compartment as usize];
        let area = mesh.area(triangle);
        sheet.area += area;
        sheet.volume += area * heights.iter().sum::<f64>() / 3.0;
    }
    sheets
}

/// Makes mirror images equal to the last bit: rounding must not give one side a cell more.
fn even_out(mesh: &Mesh, compartments: &mut [UnitSheet]) {
    let Some(images) = mesh.mirror_compartments() else { return };
    for (own, &image) in images.iter().enumerate() {
        let image = image as usize;
        if own < image {
            let sheet = compartments[own];
            let crest = [-sheet.crest[0], sheet.crest[1]];
            compartments[image] = UnitSheet { crest, ..sheet };
        }
    }
}
