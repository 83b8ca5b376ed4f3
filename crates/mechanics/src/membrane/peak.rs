//! Where the unit solution is highest in each compartment, between the nodes.

use crate::mesh::Mesh;
use crate::numerics::SmallMatrix;

/// The top of the unit solution in a compartment.
#[derive(Clone, Copy, Debug)]
pub(super) struct Crest {
    pub(super) height: f64,
    pub(super) at: [f64; 2],
}

/// Finds the crest of each compartment.
///
/// Around the highest node the solution is fitted with the quadratics of curvature -1:
/// `a + b x + c y + d (x2 - y2) + e x y - (x2 + y2)/4`, through the node and as near as can be to
/// its neighbours. Where that top lies farther off than the neighbours, the node's value stands.
pub(super) fn crests(mesh: &Mesh, values: &[f64]) -> Vec<Crest> {
    let mut highest: Vec<Option<u32>> = vec![None; mesh.compartments()];
    for triangle in mesh.triangles() {
        let top = &mut highest[triangle.compartment as usize];
        for node in triangle.nodes {
            if top.is_none_or(|top| values[node as usize] > values[top as usize]) {
                *top = Some(node);
            }
        }
    }
    let mut around: Vec<Vec<u32>> = vec![Vec::new(); mesh.compartments()];
    for triangle in mesh.triangles() {
        let compartment = triangle.compartment as usize;
        if highest[compartment].is_some_and(|top| triangle.nodes.contains(&top)) {
            around[compartment].extend(triangle.nodes);
        }
    }
    let crest = |(top, near): (Option<u32>, &Vec<u32>)| {
        let Some(top) = top else { return Crest { height: 0.0, at: [0.0; 2] } };
        let node = mesh.nodes()[top as usize];
        fitted(mesh, values, top, near)
            .unwrap_or(Crest { height: values[top as usize], at: [node.x, node.y] })
    };
    highest.into_iter().zip(&around).map(crest).collect()
}

fn fitted(mesh: &Mesh, values: &[f64], top: u32, near: &[u32]) -> Option<Crest> {
    let centre = mesh.nodes()[top as usize];
    let height = values[top as usize];
    // Least squares for b, c, d, e; each neighbour comes twice, which changes nothing.
    let mut normal = SmallMatrix::zeros(4);
    let mut right = vec![0.0; 4];
    let mut reach: f64 = 0.0;
    for &node in near {
        let at = mesh.nodes()[node as usize];
        let (x, y) = (at.x - centre.x, at.y - centre.y);
        reach = reach.max(libm::hypot(x, y));
        let terms = [x, y, x * x - y * y, x * y];
        let rest = values[node as usize] - height + (x * x + y * y) / 4.0;
        for row in 0..4 {
            for column in 0..4 {
                normal[[row, column]] += terms[row] * terms[column];
            }
            right[row] += terms[row] * rest;
        }
    }
    let solved = normal.solve(&[right])?;
    let [b, c, d, e] = solved[0][..] else { return None };
    // The top: (2 d - 1/2) x + e y = -b, e x + (-2 d - 1/2) y = -c.
    let (xx, yy) = (2.0 * d - 0.5, -2.0 * d - 0.5);
    let det = xx * yy - e * e;
    let (x, y) = ((e * c - b * yy) / det, (e * b - c * xx) / det);
    let is_top = det > 0.0 && xx < 0.0 && libm::hypot(x, y) <= reach;
    let rise = (b * x + c * y) / 2.0;
    is_top.then_some(Crest { height: height + rise, at: [centre.x + x, centre.y + y] })
}
