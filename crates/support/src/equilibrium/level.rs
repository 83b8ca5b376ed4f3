//! One mesh as the solver uses it: elements and areas by compartment, and the order of
//! elimination.

use crate::linear::{Graph, Symbolic};
use crate::membrane::Element;
use crate::mesh::Mesh;

/// A mesh with what does not depend on fill or body.
#[derive(Clone, Debug)]
pub(super) struct Level {
    /// Places of the nodes, m.
    pub(super) places: Vec<[f64; 2]>,
    /// Whether a seam holds the node down.
    pub(super) seam: Vec<bool>,
    /// Area that belongs to each node, m2: a third of the triangles around it.
    pub(super) areas: Vec<f64>,
    /// One for each compartment.
    pub(super) patches: Vec<Patch>,
    pub(super) symbolic: Symbolic,
}

/// The part of the sheet over one compartment. Its nodes are numbered by themselves.
#[derive(Clone, Debug)]
pub(super) struct Patch {
    /// Its area, m2.
    pub(super) area: f64,
    /// Its nodes, as nodes of the mesh.
    pub(super) nodes: Vec<u32>,
    /// The area of the patch that belongs to each of its nodes, m2.
    pub(super) areas: Vec<f64>,
    /// Stiffness under unit tension on the diagonal.
    pub(super) diagonal: Vec<f64>,
    /// Its triangles.
    pub(super) triangles: Vec<Stiffness>,
}

/// Stiffness of one triangle under unit tension between its corners. Rows add up to zero.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stiffness {
    /// The corners, as nodes of the patch.
    pub(super) corners: [u32; 3],
    /// Between corners 0 and 1, 1 and 2, 2 and 0.
    pub(super) between: [f64; 3],
    /// The entries of those in the matrix.
    pub(super) entries: [u32; 3],
}

/// What a mesh needs to be for [`Level::new`].
pub(super) struct Sheet {
    /// Places of the nodes, m.
    pub(super) places: Vec<[f64; 2]>,
    /// Whether a seam holds the node.
    pub(super) seam: Vec<bool>,
    /// Corners, counter-clockwise, and compartment of each triangle.
    pub(super) triangles: Vec<([u32; 3], u32)>,
    pub(super) compartments: usize,
}

impl From<&Mesh> for Sheet {
    fn from(mesh: &Mesh) -> Self {
        let triangle = |triangle: &crate::Triangle| (triangle.nodes, triangle.compartment);
        Self {
            places: mesh.nodes().iter().map(|node| [node.x, node.y]).collect(),
            seam: mesh.nodes().iter().map(|node| node.seam).collect(),
            triangles: mesh.triangles().iter().map(triangle).collect(),
            compartments: mesh.compartments(),
        }
    }
}

impl Level {
    pub(super) fn new(sheet: Sheet) -> Self {
        let corners: Vec<[u32; 3]> = sheet.triangles.iter().map(|(corners, _)| *corners).collect();
        let graph = Graph::of_triangles(sheet.places.len(), &corners);
        let symbolic = Symbolic::new(&graph, &sheet.places);
        let mut patches = Vec::with_capacity(sheet.compartments);
        let mut own = vec![u32::MAX; sheet.places.len()];
        for compartment in 0..sheet.compartments as u32 {
            let triangles = sheet.triangles.iter().filter(|(_, owner)| *owner == compartment);
            let mut patch = Patch::empty();
            for (corners, _) in triangles {
                patch.add(&sheet.places, *corners, &mut own, &symbolic);
            }
            patch.nodes.iter().for_each(|node| own[*node as usize] = u32::MAX);
            patches.push(patch);
        }
        let mut areas = vec![0.0; sheet.places.len()];
        for patch in &patches {
            for (node, area) in patch.nodes.iter().zip(&patch.areas) {
                areas[*node as usize] += area;
            }
        }
        Self { places: sheet.places, seam: sheet.seam, areas, patches, symbolic }
    }

    /// How many nodes there are.
    pub(super) fn len(&self) -> usize {
        self.places.len()
    }
}

impl Patch {
    fn empty() -> Self {
        Self {
            area: 0.0,
            nodes: Vec::new(),
            areas: Vec::new(),
            diagonal: Vec::new(),
            triangles: Vec::new(),
        }
    }

    /// Adds a triangle. `own` has for each node of the mesh its number in the patch.
    fn add(&mut self, places: &[[f64; 2]], nodes: [u32; 3], own: &mut [u32], symbolic: &Symbolic) {
        let element = Element::of_corners(nodes.map(|node| places[node as usize]));
        let corners = nodes.map(|node| {
            let known = &mut own[node as usize];
            if *known == u32::MAX {
                *known = self.nodes.len() as u32;
                self.nodes.push(node);
                self.areas.push(0.0);
                self.diagonal.push(0.0);
            }
            *known
        });
        self.area += element.area;
        for (corner, node) in corners.iter().enumerate() {
            self.areas[*node as usize] += element.area / 3.0;
            self.diagonal[*node as usize] += element.stiffness(corner, corner);
        }
        let pairs = [(0, 1), (1, 2), (2, 0)];
        self.triangles.push(Stiffness {
            corners,
            between: pairs.map(|(a, b)| element.stiffness(a, b)),
            entries: pairs.map(|(a, b)| symbolic.entry(nodes[a], nodes[b]) as u32),
        });
    }

    /// The values at the patch's nodes.
    pub(super) fn gather(&self, values: &[f64]) -> Vec<f64> {
        self.nodes.iter().map(|node| values[*node as usize]).collect()
    }

    /// Stiffness under unit tension times values at the patch's nodes.
    pub(super) fn bend(&self, values: &[f64]) -> Vec<f64> {
        let mut bent = vec![0.0; values.len()];
        for triangle in &self.triangles {
            let [a, b, c] = triangle.corners.map(|corner| corner as usize);
            let [ab, bc, ca] = triangle.between;
            let (u, v, w) = (values[a], values[b], values[c]);
            // A row adds up to zero, so each side of the triangle is a spring.
            let (uv, vw, wu) = (ab * (v - u), bc * (w - v), ca * (u - w));
            bent[a] += uv - wu;
            bent[b] += vw - uv;
            bent[c] += wu - vw;
        }
        bent
    }

    /// As [`Self::bend`], for three sets of values at once.
    pub(super) fn bend_each(&self, values: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let mut bent = vec![[0.0; 3]; values.len()];
        for triangle in &self.triangles {
            let [a, b, c] = triangle.corners.map(|corner| corner as usize);
            let [ab, bc, ca] = triangle.between;
            let (u, v, w) = (values[a], values[b], values[c]);
            for set in 0..3 {
                let (uv, vw) = (ab * (v[set] - u[set]), bc * (w[set] - v[set]));
                let wu = ca * (u[set] - w[set]);
                bent[a][set] += uv - wu;
                bent[b][set] += vw - uv;
                bent[c][set] += wu - vw;
            }
        }
        bent
    }
}
