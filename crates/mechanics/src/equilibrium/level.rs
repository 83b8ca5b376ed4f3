//! One mesh as the solver uses it: elements and areas by compartment, and the order of
//! elimination.

use crate::linear::{Entries, Graph, Symbolic};
use crate::membrane::Element;
use crate::mesh::Mesh;

/// A mesh with what does not depend on fill or body.
#[derive(Clone, Debug)]
pub(super) struct SolverMesh {
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
    /// The sides of its triangles, each once.
    edges: Vec<Edge>,
    /// The corners of its triangles, as nodes of the patch.
    pub(super) triangles: Vec<[u32; 3]>,
}

/// Stiffness between two nodes. Rows of the matrix add up to zero, so each edge is a spring.
#[derive(Clone, Copy, Debug)]
struct Edge {
    /// Its nodes, as nodes of the patch.
    ends: [u32; 2],
    /// Its entry in the matrix.
    entry: u32,
    /// The stiffness under unit tension.
    between: f64,
}

/// What a mesh needs to be for [`SolverMesh::new`].
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

impl SolverMesh {
    pub(super) fn new(sheet: Sheet) -> Self {
        let corners: Vec<[u32; 3]> = sheet.triangles.iter().map(|(corners, _)| *corners).collect();
        let graph = Graph::of_triangles(sheet.places.len(), &corners);
        let symbolic = Symbolic::new(&graph, &sheet.places);
        let mut builder = PatchBuilder::new(&sheet.places, &symbolic);
        let patches: Vec<Patch> = (0..sheet.compartments as u32)
            .map(|compartment| {
                let own = sheet.triangles.iter().filter(|(_, owner)| *owner == compartment);
                builder.patch(own.map(|(corners, _)| *corners))
            })
            .collect();
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

impl SolverMesh {
    /// The matrix of a sheet with a tension in each patch, and springs at the nodes, N/m.
    pub(super) fn stiffness(
        &self,
        tensions: impl Iterator<Item = f64>,
        springs: &[f64],
    ) -> Entries {
        let mut entries = self.symbolic.zeros();
        for (node, stiffness) in springs.iter().enumerate() {
            entries.diagonal[self.symbolic.place(node as u32)] = *stiffness;
        }
        for (patch, tension) in self.patches.iter().zip(tensions) {
            for (node, stiffness) in patch.nodes.iter().zip(&patch.diagonal) {
                entries.diagonal[self.symbolic.place(*node)] += tension * stiffness;
            }
            for edge in &patch.edges {
                entries.below[edge.entry as usize] += tension * edge.between;
            }
        }
        entries
    }
}

/// Makes the patches of a mesh, one after the other.
struct PatchBuilder<'a> {
    places: &'a [[f64; 2]],
    symbolic: &'a Symbolic,
    /// The number of each node of the mesh in the patch.
    nodes: Vec<u32>,
    /// The number of each entry of the matrix among the patch's edges.
    edges: Vec<u32>,
}

impl<'a> PatchBuilder<'a> {
    fn new(places: &'a [[f64; 2]], symbolic: &'a Symbolic) -> Self {
        let edges = vec![u32::MAX; symbolic.zeros().below.len()];
        Self { places, symbolic, nodes: vec![u32::MAX; places.len()], edges }
    }

    fn patch(&mut self, triangles: impl Iterator<Item = [u32; 3]>) -> Patch {
        let mut patch = Patch {
            area: 0.0,
            nodes: Vec::new(),
            areas: Vec::new(),
            diagonal: Vec::new(),
            edges: Vec::new(),
            triangles: Vec::new(),
        };
        triangles.for_each(|nodes| self.add(nodes, &mut patch));
        patch.nodes.iter().for_each(|node| self.nodes[*node as usize] = u32::MAX);
        patch.edges.iter().for_each(|edge| self.edges[edge.entry as usize] = u32::MAX);
        // In the order of the matrix, which is filled at every step.
        patch.edges.sort_by_key(|edge| edge.entry);
        patch
    }

    fn add(&mut self, nodes: [u32; 3], patch: &mut Patch) {
        let element = Element::of_corners(nodes.map(|node| self.places[node as usize]));
        let corners = nodes.map(|node| self.number(node, patch));
        patch.area += element.area;
        patch.triangles.push(corners);
        for (corner, node) in corners.iter().enumerate() {
            patch.areas[*node as usize] += element.area / 3.0;
            patch.diagonal[*node as usize] += element.stiffness(corner, corner);
        }
        for (a, b) in [(0, 1), (1, 2), (2, 0)] {
            let entry = self.symbolic.entry(nodes[a], nodes[b]) as u32;
            let known = &mut self.edges[entry as usize];
            if *known == u32::MAX {
                *known = patch.edges.len() as u32;
                patch.edges.push(Edge { ends: [corners[a], corners[b]], entry, between: 0.0 });
            }
            patch.edges[*known as usize].between += element.stiffness(a, b);
        }
    }

    fn number(&mut self, node: u32, patch: &mut Patch) -> u32 {
        let known = &mut self.nodes[node as usize];
        if *known == u32::MAX {
            *known = patch.nodes.len() as u32;
            patch.nodes.push(node);
            patch.areas.push(0.0);
            patch.diagonal.push(0.0);
        }
        *known
    }
}

impl Patch {
    /// The values at the patch's nodes.
    pub(super) fn gather(&self, values: &[f64]) -> Vec<f64> {
        self.nodes.iter().map(|node| values[*node as usize]).collect()
    }

    /// Stiffness under unit tension times values at the patch's nodes.
    pub(super) fn bend(&self, values: &[f64]) -> Vec<f64> {
        let mut bent = vec![0.0; values.len()];
        for edge in &self.edges {
            let [a, b] = edge.ends.map(|end| end as usize);
            let force = edge.between * (values[b] - values[a]);
            bent[a] += force;
            bent[b] -= force;
        }
        bent
    }

    /// The springs between nodes of the mesh that the sheet is under unit tension, N/m.
    pub(super) fn springs(&self) -> impl Iterator<Item = ([usize; 2], f64)> {
        let ends = |edge: &Edge| edge.ends.map(|end| self.nodes[end as usize] as usize);
        self.edges.iter().map(move |edge| (ends(edge), -edge.between))
    }
}
