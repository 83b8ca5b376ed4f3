//! One mesh as the solver uses it: elements and areas by compartment, and the order of
//! elimination.

use std::borrow::Cow;

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
    /// The walls at the seams' nodes, by node.
    pub(super) walls: Vec<Station>,
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
    /// Stiffness under unit tension where the sheet is flat.
    flat: Tangent,
    /// The sides of its triangles, each once.
    edges: Vec<Edge>,
    /// The corners of its triangles, as nodes of the patch.
    pub(super) triangles: Vec<[u32; 3]>,
    /// The triangles themselves, and the edges between their first and second corner, second and
    /// third, third and first.
    elements: Vec<(Element, [u32; 3])>,
}

/// The side of a triangle.
#[derive(Clone, Copy, Debug)]
struct Edge {
    /// Its nodes, as nodes of the patch.
    ends: [u32; 2],
    /// Its entry in the matrix.
    entry: u32,
}

/// Stiffness of a patch under unit tension. Rows of the matrix add up to zero, so each edge is a
/// spring.
#[derive(Clone, Debug)]
pub(super) struct Tangent {
    /// On the diagonal, by node of the patch, N/m.
    pub(super) diagonal: Vec<f64>,
    /// By edge, N/m.
    between: Vec<f64>,
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
    /// Stretches of wall under seams: their ends, and the compartments on both sides.
    pub(super) walls: Vec<([u32; 2], [Option<u32>; 2])>,
}

impl From<&Mesh> for Sheet {
    fn from(mesh: &Mesh) -> Self {
        let triangle = |triangle: &crate::Triangle| (triangle.nodes, triangle.compartment);
        Self {
            places: mesh.nodes().iter().map(|node| [node.x, node.y]).collect(),
            seam: mesh.nodes().iter().map(|node| node.seam).collect(),
            triangles: mesh.triangles().iter().map(triangle).collect(),
            compartments: mesh.compartments(),
            walls: mesh.segments().iter().map(|own| (own.nodes, own.sides)).collect(),
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
        let walls = stations(&sheet, &patches);
        Self { places: sheet.places, seam: sheet.seam, areas, patches, walls, symbolic }
    }

    /// How many nodes there are.
    pub(super) fn len(&self) -> usize {
        self.places.len()
    }
}

/// The wall between two compartments at one node of a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Station {
    pub(super) node: u32,
    /// The compartment on one side, and that on the other: none outside.
    pub(super) sides: [Option<u32>; 2],
    /// The length of wall that belongs to the node, m.
    pub(super) length: f64,
}

/// Half of each stretch of wall belongs to each of its ends.
fn stations(sheet: &Sheet, patches: &[Patch]) -> Vec<Station> {
    let mut lengths = std::collections::BTreeMap::new();
    for (ends, sides) in &sheet.walls {
        let [[ax, ay], [bx, by]] = ends.map(|node| sheet.places[node as usize]);
        let mut sides = sides.map(|side| side.map_or(patches.len() as u32, |side| side));
        sides.sort_unstable();
        for node in ends {
            *lengths.entry((*node, sides)).or_insert(0.0) += 0.5 * libm::hypot(bx - ax, by - ay);
        }
    }
    let of = |side: u32| ((side as usize) < patches.len()).then_some(side);
    let station = |((node, sides), length): ((u32, [u32; 2]), f64)| Station {
        node,
        sides: sides.map(of),
        length,
    };
    lengths.into_iter().map(station).collect()
}

impl SolverMesh {
    /// The matrix of a sheet with a tension in each patch, and springs at the nodes, N/m.
    pub(super) fn stiffness<'a>(
        &'a self,
        tangents: impl Iterator<Item = (f64, &'a Tangent)>,
        springs: &[f64],
    ) -> Entries {
        let mut entries = self.symbolic.zeros();
        for (node, stiffness) in springs.iter().enumerate() {
            entries.diagonal[self.symbolic.place(node as u32)] = *stiffness;
        }
        for (patch, (tension, tangent)) in self.patches.iter().zip(tangents) {
            for (node, stiffness) in patch.nodes.iter().zip(&tangent.diagonal) {
                entries.diagonal[self.symbolic.place(*node)] += tension * stiffness;
            }
            for (edge, between) in patch.edges.iter().zip(&tangent.between) {
                entries.below[edge.entry as usize] += tension * between;
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
            flat: Tangent { diagonal: Vec::new(), between: Vec::new() },
            edges: Vec::new(),
            triangles: Vec::new(),
            elements: Vec::new(),
        };
        triangles.for_each(|nodes| self.add(nodes, &mut patch));
        patch.nodes.iter().for_each(|node| self.nodes[*node as usize] = u32::MAX);
        // In the order of the matrix, which is filled at every step.
        let mut order: Vec<u32> = (0..patch.edges.len() as u32).collect();
        order.sort_by_key(|edge| patch.edges[*edge as usize].entry);
        let mut number = vec![0; order.len()];
        order.iter().enumerate().for_each(|(at, edge)| number[*edge as usize] = at as u32);
        for (_, edges) in &mut patch.elements {
            *edges = edges.map(|edge| number[edge as usize]);
        }
        patch.edges.iter().for_each(|edge| self.edges[edge.entry as usize] = u32::MAX);
        patch.edges.sort_by_key(|edge| edge.entry);
        let between = &patch.flat.between;
        patch.flat.between = order.iter().map(|edge| between[*edge as usize]).collect();
        patch
    }

    fn add(&mut self, nodes: [u32; 3], patch: &mut Patch) {
        let element = Element::of_corners(nodes.map(|node| self.places[node as usize]));
        let corners = nodes.map(|node| self.number(node, patch));
        patch.area += element.area;
        patch.triangles.push(corners);
        for (corner, node) in corners.iter().enumerate() {
            patch.areas[*node as usize] += element.area / 3.0;
            patch.flat.diagonal[*node as usize] += element.stiffness(corner, corner);
        }
        let edges = [(0, 1), (1, 2), (2, 0)].map(|(a, b)| {
            let entry = self.symbolic.entry(nodes[a], nodes[b]) as u32;
            let known = &mut self.edges[entry as usize];
            if *known == u32::MAX {
                *known = patch.edges.len() as u32;
                patch.edges.push(Edge { ends: [corners[a], corners[b]], entry });
                patch.flat.between.push(0.0);
            }
            patch.flat.between[*known as usize] += element.stiffness(a, b);
            *known
        });
        patch.elements.push((element, edges));
    }

    fn number(&mut self, node: u32, patch: &mut Patch) -> u32 {
        let known = &mut self.nodes[node as usize];
        if *known == u32::MAX {
            *known = patch.nodes.len() as u32;
            patch.nodes.push(node);
            patch.areas.push(0.0);
            patch.flat.diagonal.push(0.0);
        }
        *known
    }
}

impl Patch {
    /// The values at the patch's nodes.
    pub(super) fn gather(&self, values: &[f64]) -> Vec<f64> {
        self.nodes.iter().map(|node| values[*node as usize]).collect()
    }

    /// Extra area of the sheet with these heights at the patch's nodes, m2, and its slopes by them,
    /// m. For small slopes it is half the squared slope.
    pub(super) fn extra_area(&self, heights: &[f64], small_slopes: bool) -> (f64, Vec<f64>) {
        if small_slopes {
            let bent = self.bend(heights, &self.flat);
            return (0.5 * crate::linear::dot(heights, &bent), bent);
        }
        let (mut extra, mut bent) = (0.0, vec![0.0; heights.len()]);
        for (corners, (element, _)) in self.triangles.iter().zip(&self.elements) {
            let [x, y] = element.slope(corners.map(|corner| heights[corner as usize]));
            let square = x * x + y * y;
            let root = (1.0 + square).sqrt();
            extra += element.area * square / (1.0 + root);
            let share = element.area / root;
            for (corner, [by_x, by_y]) in corners.iter().zip(element.slopes) {
                bent[*corner as usize] += share * (x * by_x + y * by_y);
            }
        }
        (extra, bent)
    }

    /// Stiffness under unit tension of the sheet with these heights.
    pub(super) fn tangent(&self, heights: &[f64], small_slopes: bool) -> Cow<'_, Tangent> {
        if small_slopes {
            return Cow::Borrowed(&self.flat);
        }
        let mut tangent =
            Tangent { diagonal: vec![0.0; heights.len()], between: vec![0.0; self.edges.len()] };
        for (corners, (element, edges)) in self.triangles.iter().zip(&self.elements) {
            let [x, y] = element.slope(corners.map(|corner| heights[corner as usize]));
            let root = (1.0 + x * x + y * y).sqrt();
            let (share, cube) = (element.area / root, 1.0 / (root * root));
            let along = element.slopes.map(|[by_x, by_y]| x * by_x + y * by_y);
            let product = |a: usize, b: usize| {
                let ([ax, ay], [bx, by]) = (element.slopes[a], element.slopes[b]);
                share * (ax * bx + ay * by - along[a] * along[b] * cube)
            };
            for (at, corner) in corners.iter().enumerate() {
                tangent.diagonal[*corner as usize] += product(at, at);
                tangent.between[edges[at] as usize] += product(at, (at + 1) % 3);
            }
        }
        Cow::Owned(tangent)
    }

    /// Stiffness under unit tension times values at the patch's nodes.
    pub(super) fn bend(&self, values: &[f64], tangent: &Tangent) -> Vec<f64> {
        let mut bent = vec![0.0; values.len()];
        for (edge, between) in self.edges.iter().zip(&tangent.between) {
            let [a, b] = edge.ends.map(|end| end as usize);
            let force = between * (values[b] - values[a]);
            bent[a] += force;
            bent[b] -= force;
        }
        bent
    }

    /// The springs between nodes of the mesh that the sheet is under unit tension, N/m.
    pub(super) fn springs(&self, tangent: &Tangent) -> impl Iterator<Item = ([usize; 2], f64)> {
        let ends = |edge: &Edge| edge.ends.map(|end| self.nodes[end as usize] as usize);
        self.edges.iter().zip(&tangent.between).map(move |(edge, between)| (ends(edge), -between))
    }
}
