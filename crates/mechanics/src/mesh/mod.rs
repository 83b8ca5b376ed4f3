//! The mesh: triangles that never straddle a seam.
//!
//! Nodes lie on every seam and junction, so a bound on a seam is a bound on nodes, and a
//! compartment is a set of whole triangles. Meshes are nested: each is the one before with
//! every triangle cut in four, its new seam nodes moved onto the seam's curve. The mesh of a
//! mirrored pattern is mirror symmetric to the last bit.

mod inscribed;
mod net;
mod refine;
mod sketch;
mod triangulate;

use std::sync::Arc;

use case::MeshError;
use cushion::{Length, Pattern};

use self::net::SeamCurve;
pub use self::net::{NetEdge, SeamNet};

/// The mesh width at which results are made where nothing else is asked.
pub const DEFAULT_SPACING: Length = Length::from_mm(4.0);

/// About the mesh width, in millimetres, from which halving begins.
///
/// Coarser, seams with the tightest roundings (about 25 mm) would be drawn too roughly for the
/// finer meshes to be well shaped; finer, there is more to triangulate and less to nest.
const COARSE_MM: f64 = 16.0;

/// A corner of the mesh, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// To the client's right of the centre line, m.
    pub x: f64,
    /// Forward of the rear edge, m.
    pub y: f64,
    /// Whether it lies on a seam, the outer one included.
    pub seam: bool,
    /// Whether it lies on the outer seam.
    pub outer: bool,
}

/// A triangle of the mesh, counter-clockwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Triangle {
    /// Its corners, as places in [`Mesh::nodes`].
    pub nodes: [u32; 3],
    /// The compartment that it belongs to: the place in [`Pattern::compartments`].
    pub compartment: u32,
}

/// A side of triangles that lies on a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamSegment {
    /// Its ends, as places in [`Mesh::nodes`].
    pub nodes: [u32; 2],
    /// The compartments to the left and to the right hand from the first node to the second.
    pub sides: [Option<u32>; 2],
    /// Which curve it follows.
    curve: u32,
    /// Whether it follows the mirror image of the curve.
    mirrored: bool,
    /// Parameters of its ends on the curve.
    at: [f64; 2],
}

/// Triangles over all compartments.
#[derive(Clone, Debug)]
pub struct Mesh {
    nodes: Vec<Node>,
    triangles: Vec<Triangle>,
    segments: Vec<SeamSegment>,
    compartments: usize,
    /// The parents of the nodes from `nodes.len() - parents.len()` on.
    parents: Vec<[u32; 2]>,
    mirror: Option<Mirror>,
    curves: Arc<[SeamCurve]>,
}

/// Which nodes and compartments are each other's mirror images.
#[derive(Clone, Debug)]
struct Mirror {
    nodes: Vec<u32>,
    compartments: Vec<u32>,
}

impl Mesh {
    /// The nodes. In a refined mesh those of the coarser mesh come first, in the same order.
    #[must_use]
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// The triangles. In a refined mesh the four parts of coarse triangle `t` are `4 t` to
    /// `4 t + 3`, the middle one last. In a mirrored mesh the first half of them are on the
    /// right and the others are their images.
    #[must_use]
    pub fn triangles(&self) -> &[Triangle] {
        &self.triangles
    }

    /// The sides of triangles that lie on seams, each once.
    #[must_use]
    pub fn segments(&self) -> &[SeamSegment] {
        &self.segments
    }

    /// How many compartments there are.
    #[must_use]
    pub fn compartments(&self) -> usize {
        self.compartments
    }

    /// How many of the nodes the coarser mesh had; all of them where there was none.
    #[must_use]
    pub fn coarse_nodes(&self) -> usize {
        self.nodes.len() - self.parents.len()
    }

    /// The parents of the nodes from [`Self::coarse_nodes`] on: the two coarse nodes between
    /// which each was put.
    #[must_use]
    pub fn parents(&self) -> &[[u32; 2]] {
        &self.parents
    }

    /// For each node its mirror image; none where the pattern is not mirrored.
    #[must_use]
    pub fn mirror_nodes(&self) -> Option<&[u32]> {
        self.mirror.as_ref().map(|mirror| &mirror.nodes[..])
    }

    /// For each compartment its mirror image; none where the pattern is not mirrored.
    #[must_use]
    pub fn mirror_compartments(&self) -> Option<&[u32]> {
        self.mirror.as_ref().map(|mirror| &mirror.compartments[..])
    }

    /// Returns the values at this mesh's nodes of what is linear between the coarser mesh's.
    ///
    /// # Panics
    ///
    /// Panics unless there is one value for each coarse node.
    #[must_use]
    #[track_caller]
    pub fn prolonged(&self, coarse: &[f64]) -> Vec<f64> {
        assert_eq!(coarse.len(), self.coarse_nodes(), "one value for each coarse node");
        let between = |[a, b]: &[u32; 2]| f64::midpoint(coarse[*a as usize], coarse[*b as usize]);
        coarse.iter().copied().chain(self.parents.iter().map(between)).collect()
    }

    /// Returns the corners of a triangle.
    #[must_use]
    pub fn corners(&self, triangle: &Triangle) -> [Node; 3] {
        triangle.nodes.map(|node| self.nodes[node as usize])
    }
}

/// Meshes of one pattern, each the refinement of the one before; at least one.
#[derive(Clone, Debug)]
pub struct NestedMeshes {
    levels: Vec<Mesh>,
}

impl NestedMeshes {
    /// Meshes a pattern so that the finest mesh has sides of about `spacing`.
    ///
    /// # Errors
    ///
    /// Returns an error where seams run too close to each other.
    pub fn new(pattern: &Pattern, spacing: Length) -> Result<Self, MeshError> {
        Self::of_net(&SeamNet::from(pattern), spacing)
    }

    /// Meshes what the seams of a net enclose.
    ///
    /// # Errors
    ///
    /// Returns an error where seams run too close to each other.
    pub fn of_net(net: &SeamNet, spacing: Length) -> Result<Self, MeshError> {
        let fine = spacing.to_mm();
        let halvings = libm::log2(COARSE_MM / fine).round().max(0.0) as i32;
        let mut levels = vec![triangulate::coarse(net, fine * 2f64.powi(halvings))?];
        for level in 0..halvings as usize {
            levels.push(levels[level].refined());
        }
        Ok(Self { levels })
    }

    /// The meshes, the coarsest first.
    #[must_use]
    pub fn levels(&self) -> &[Mesh] {
        &self.levels
    }

    /// The finest mesh.
    #[must_use]
    pub fn finest(&self) -> &Mesh {
        &self.levels[self.levels.len() - 1]
    }
}
