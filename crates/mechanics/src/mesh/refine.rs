//! Cuts every triangle in four, and moves new seam nodes onto their curves.

use super::{Mesh, Mirror, Node, SeamSegment, Triangle};

/// A seam node stays on the straight way between its neighbours where moving it to the curve
/// would leave a triangle less than this share of its area.
const LEAST_SHARE: f64 = 0.1;

/// The sides of triangles, by their lower node: where each side's middle node is.
struct Sides {
    /// Where the sides of each node begin in `sides`.
    starts: Vec<u32>,
    /// The higher node of each side.
    sides: Vec<u32>,
}

impl Sides {
    fn of(mesh: &Mesh) -> Self {
        let pairs = || {
            mesh.triangles.iter().flat_map(|triangle| {
                let [a, b, c] = triangle.nodes;
                [ordered(a, b), ordered(b, c), ordered(c, a)]
            })
        };
        let mut room = vec![0u32; mesh.nodes.len() + 1];
        for (low, _) in pairs() {
            room[low as usize + 1] += 1;
        }
        for node in 0..mesh.nodes.len() {
            room[node + 1] += room[node];
        }
        let mut filled = room.clone();
        let mut doubled = vec![0u32; 3 * mesh.triangles.len()];
        for (low, high) in pairs() {
            let end = &mut filled[low as usize];
            let known = &doubled[room[low as usize] as usize..*end as usize];
            if !known.contains(&high) {
                doubled[*end as usize] = high;
                *end += 1;
            }
        }
        Self::packed(&room, &filled, &doubled)
    }

    fn packed(room: &[u32], filled: &[u32], doubled: &[u32]) -> Self {
        let mut starts = Vec::with_capacity(room.len());
        let mut sides = Vec::with_capacity(doubled.len() / 2 + 1);
        for node in 0..room.len() - 1 {
            starts.push(sides.len() as u32);
            sides.extend_from_slice(&doubled[room[node] as usize..filled[node] as usize]);
        }
        starts.push(sides.len() as u32);
        Self { starts, sides }
    }

    /// The place of a side, which is in the mesh.
    fn place(&self, a: u32, b: u32) -> u32 {
        let (low, high) = ordered(a, b);
        let start = self.starts[low as usize];
        let own = &self.sides[start as usize..self.starts[low as usize + 1] as usize];
        let within = own.iter().position(|other| *other == high);
        start + within.expect("every side of a triangle is listed") as u32
    }

    fn pairs(&self) -> impl Iterator<Item = [u32; 2]> {
        self.starts.windows(2).enumerate().flat_map(|(low, range)| {
            let own = &self.sides[range[0] as usize..range[1] as usize];
            own.iter().map(move |high| [low as u32, *high])
        })
    }
}

fn ordered(a: u32, b: u32) -> (u32, u32) {
    (a.min(b), a.max(b))
}

impl Mesh {
    /// Returns the mesh with every triangle cut in four.
    #[must_use]
    pub fn refined(&self) -> Self {
        let sides = Sides::of(self);
        let coarse = self.nodes.len() as u32;
        let parents: Vec<[u32; 2]> = sides.pairs().collect();
        let middle = |a: u32, b: u32| coarse + sides.place(a, b);
        let mut nodes = self.nodes.clone();
        nodes.extend(parents.iter().map(|[a, b]| {
            let (a, b) = (self.nodes[*a as usize], self.nodes[*b as usize]);
            let (x, y) = (f64::midpoint(a.x, b.x), f64::midpoint(a.y, b.y));
            Node { x, y, seam: false, outer: false }
        }));
        let mut triangles = Vec::with_capacity(4 * self.triangles.len());
        for triangle in &self.triangles {
            let [a, b, c] = triangle.nodes;
            let (ab, bc, ca) = (middle(a, b), middle(b, c), middle(c, a));
            let compartment = triangle.compartment;
            triangles.extend(
                [[a, ab, ca], [b, bc, ab], [c, ca, bc], [ab, bc, ca]]
                    .map(|nodes| Triangle { nodes, compartment }),
            );
        }
        let segments = self.halved_segments(&mut nodes, middle);
        let mirror = self.mirror.as_ref().map(|mirror| Mirror {
            nodes: mirror_nodes(mirror, &parents, middle),
            compartments: mirror.compartments.clone(),
        });
        let mut fine = Self {
            nodes,
            triangles,
            segments,
            compartments: self.compartments,
            parents,
            mirror,
            curves: self.curves.clone(),
        };
        fine.unfold();
        fine
    }

    /// Halves the seam segments, with their new nodes on the curves.
    fn halved_segments(
        &self,
        nodes: &mut [Node],
        middle: impl Fn(u32, u32) -> u32,
    ) -> Vec<SeamSegment> {
        let mut halves = Vec::with_capacity(2 * self.segments.len());
        for segment in &self.segments {
            let curve = &self.curves[segment.curve as usize];
            let [from, to] = segment.at;
            let half = if from < to { curve.between(from, to) } else { curve.between(to, from) };
            let point = curve.at(half);
            let [a, b] = segment.nodes;
            let node = middle(a, b);
            // Along the centre line the middle of the coarse nodes is exact already.
            let on_centre = nodes[a as usize].x == 0.0 && nodes[b as usize].x == 0.0;
            let x = match (on_centre, segment.mirrored) {
                (true, _) => 0.0,
                (false, false) => point.x * 1e-3,
                (false, true) => -point.x * 1e-3,
            };
            let outer = segment.sides.contains(&None);
            nodes[node as usize] = Node { x, y: point.y * 1e-3, seam: true, outer };
            halves.push(SeamSegment { nodes: [a, node], at: [from, half], ..*segment });
            halves.push(SeamSegment { nodes: [node, b], at: [half, to], ..*segment });
        }
        halves
    }

    /// Puts back to the straight way those new seam nodes whose move folded a triangle.
    fn unfold(&mut self) {
        let coarse = self.coarse_nodes() as u32;
        for family in 0..self.triangles.len() / 4 {
            let parts = &self.triangles[4 * family..4 * family + 4];
            let areas: Vec<f64> = parts.iter().map(|part| self.area(part)).collect();
            let quarter = areas.iter().sum::<f64>() / 4.0;
            if areas.iter().all(|area| *area > LEAST_SHARE * quarter) {
                continue;
            }
            for node in parts[3].nodes {
                let [a, b] = self.parents[(node - coarse) as usize];
                let (a, b) = (self.nodes[a as usize], self.nodes[b as usize]);
                let moved = &mut self.nodes[node as usize];
                (moved.x, moved.y) = (f64::midpoint(a.x, b.x), f64::midpoint(a.y, b.y));
            }
        }
    }

    /// Returns the area of a triangle, m2.
    #[must_use]
    pub fn area(&self, triangle: &Triangle) -> f64 {
        let [a, b, c] = self.corners(triangle);
        ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) / 2.0
    }
}

fn mirror_nodes(
    mirror: &Mirror,
    parents: &[[u32; 2]],
    middle: impl Fn(u32, u32) -> u32,
) -> Vec<u32> {
    let image = |node: u32| mirror.nodes[node as usize];
    let new = parents.iter().map(|[a, b]| middle(image(*a), image(*b)));
    mirror.nodes.iter().copied().chain(new).collect()
}
