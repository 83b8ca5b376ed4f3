//! The coarse mesh: a constrained Delaunay triangulation of nodes on the seams and of a
//! hexagonal lattice between them.
//!
//! Delaunay's condition alone leaves flat triangles where the lattice meets a seam. Circumcentres
//! of the worst are added, as in Ruppert, Journal of Algorithms 18, 548 (1995), but never on a
//! seam; then free nodes move to the middle of their neighbours.

use case::MeshError;
use cushion::Point;
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation as _};

use super::net::{SeamNet, flip};
use super::sketch::{Follows, Sketch};
use super::{Mesh, Mirror, Node, SeamSegment, Triangle};

/// Lattice nodes keep this far from seams, in mesh widths.
const CLEAR: f64 = 0.6;
/// Triangles with a smaller angle get their circumcentre as a node: 25 degrees.
const FLAT: f64 = 25.0 * std::f64::consts::PI / 180.0;
/// Rounds of adding circumcentres: more than three found nothing to add on any layout tried.
const ROUNDS: usize = 3;
/// Times that the nodes are moved and triangulated anew; further ones move nodes by less than a
/// twentieth of the width.
const SMOOTHINGS: usize = 2;
/// Steps of moving between two triangulations.
const STEPS: usize = 4;

/// Meshes a net coarsely, with sides of about `width` millimetres.
pub(super) fn coarse(net: &SeamNet, width: f64) -> Result<Mesh, MeshError> {
    let mirror = if net.mirrored { net.mirror() } else { None };
    let sketch = Sketch::new(net, mirror.is_some(), width)?;
    let mut points = sketch.points.clone();
    points.extend(lattice(&sketch, width));
    let mut faces = triangulated(&sketch, &points)?;
    for _ in 0..ROUNDS {
        if !add_circumcentres(&sketch, &mut points, &faces) {
            break;
        }
        faces = triangulated(&sketch, &points)?;
    }
    for _ in 0..SMOOTHINGS {
        smooth(&mut points, sketch.points.len(), &faces);
        faces = triangulated(&sketch, &points)?;
    }
    if faces.is_empty() {
        return Err(MeshError::Empty);
    }
    drop_unused(&mut points, sketch.points.len(), &mut faces);
    let mesh = Half { sketch, points, faces };
    Ok(match mirror {
        Some(images) => mesh.with_image(images),
        None => mesh.whole(net.compartments),
    })
}

/// A hexagonal lattice over the bars' bounds, clear of the bars.
fn lattice(sketch: &Sketch, width: f64) -> Vec<Point> {
    let corner = sketch.points[0];
    let bounds = sketch
        .points
        .iter()
        .fold(kurbo::Rect::from_points(corner, corner), |rect, point| rect.union_pt(*point));
    let rise = width * 3f64.sqrt() / 2.0;
    let (rows, columns) = ((bounds.height() / rise) as usize, (bounds.width() / width) as usize);
    let left_over = (bounds.height() - rows as f64 * rise) / 2.0;
    let mut points = Vec::new();
    for row in 0..=rows {
        let shift = if row % 2 == 0 { 0.0 } else { 0.5 };
        for column in 0..=columns {
            let point = Point::new(
                bounds.x0 + (column as f64 + shift) * width,
                bounds.y0 + left_over + row as f64 * rise,
            );
            if sketch.is_clear(point, CLEAR * width) {
                points.push(point);
            }
        }
    }
    points
}

/// A triangle of the sketch.
#[derive(Clone, Copy, Debug)]
struct Face {
    nodes: [u32; 3],
    compartment: u32,
}

/// Triangulates, and finds the compartment of each triangle; those outside are left out.
fn triangulated(sketch: &Sketch, points: &[Point]) -> Result<Vec<Face>, MeshError> {
    let vertices = points.iter().map(|point| Point2::new(point.x, point.y)).collect();
    let bars = sketch.bars.iter().map(|bar| bar.nodes.map(|node| node as usize)).collect();
    let too_close = |node: u32| MeshError::TooClose { at: points[node as usize] };
    let mut conflict = None;
    let cdt = ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(
        vertices,
        bars,
        |[node, _]| conflict = conflict.or(Some(node as u32)),
    )
    .map_err(|_| MeshError::Empty)?;
    if let Some(node) = conflict {
        return Err(too_close(node));
    }
    if cdt.num_vertices() != points.len() {
        return Err(MeshError::TooClose { at: points[0] });
    }
    let triangles: Vec<[u32; 3]> = cdt
        .inner_faces()
        .map(|face| face.vertices().map(|vertex| vertex.fix().index() as u32))
        .collect();
    let owner = owners(sketch, &triangles).map_err(too_close)?;
    let owned = triangles.into_iter().zip(owner);
    Ok(owned
        .filter_map(|(nodes, owner)| owner.map(|compartment| Face { nodes, compartment }))
        .collect())
}

/// A directed side of a triangle: its ends in order, and whose it is.
type Side = (u32, u32, u32);

/// Spreads the compartments from the bars over the triangles; a node's number where two meet.
fn owners(sketch: &Sketch, triangles: &[[u32; 3]]) -> Result<Vec<Option<u32>>, u32> {
    let mut sides: Vec<Side> = Vec::with_capacity(3 * triangles.len());
    for (place, [a, b, c]) in triangles.iter().enumerate() {
        sides.extend([(*a, *b, place as u32), (*b, *c, place as u32), (*c, *a, place as u32)]);
    }
    sides.sort_unstable();
    let find = |from: u32, to: u32| {
        let place = sides.binary_search_by_key(&(from, to), |side| (side.0, side.1));
        place.ok().map(|place| sides[place].2)
    };
    // `None`: not reached yet; `Some(None)`: outside.
    let mut owner: Vec<Option<Option<u32>>> = vec![None; triangles.len()];
    let mut barred = Vec::with_capacity(2 * sketch.bars.len());
    let mut reached = Vec::new();
    for bar in &sketch.bars {
        let [a, b] = bar.nodes;
        barred.extend([(a, b), (b, a)]);
        let hands = [(find(a, b), bar.sides[0]), (find(b, a), bar.sides[1])];
        if hands.iter().all(|(triangle, _)| triangle.is_none()) {
            return Err(a);
        }
        for (triangle, side) in hands {
            let Some(triangle) = triangle else { continue };
            match owner[triangle as usize] {
                None => {
                    owner[triangle as usize] = Some(side);
                    reached.push(triangle);
                }
                Some(known) if known != side => return Err(a),
                Some(_) => {}
            }
        }
    }
    barred.sort_unstable();
    while let Some(triangle) = reached.pop() {
        let own = owner[triangle as usize];
        let [a, b, c] = triangles[triangle as usize];
        for (from, to) in [(b, a), (c, b), (a, c)] {
            let Some(next) = find(from, to) else { continue };
            if barred.binary_search(&(from, to)).is_ok() {
                continue;
            }
            if owner[next as usize].is_none() {
                owner[next as usize] = own;
                reached.push(next);
            } else if owner[next as usize] != own {
                return Err(from);
            }
        }
    }
    Ok(owner.into_iter().map(Option::flatten).collect())
}

/// Least angle of a triangle, radians.
fn least_angle(corners: [Point; 3]) -> f64 {
    (0..3)
        .map(|at| {
            let (a, b, c) = (corners[at], corners[(at + 1) % 3], corners[(at + 2) % 3]);
            libm::atan2((b - a).cross(c - a), (b - a).dot(c - a)).abs()
        })
        .fold(f64::INFINITY, f64::min)
}

fn circumcentre([a, b, c]: [Point; 3]) -> Point {
    let (u, v) = (b - a, c - a);
    let (uu, vv) = (u.hypot2(), v.hypot2());
    let twice = 2.0 * u.cross(v);
    a + kurbo::Vec2::new(v.y * uu - u.y * vv, u.x * vv - v.x * uu) / twice
}

/// Adds the circumcentres of flat triangles where there is room; says whether any was added.
fn add_circumcentres(sketch: &Sketch, points: &mut Vec<Point>, faces: &[Face]) -> bool {
    let corners = |face: &Face| face.nodes.map(|node| points[node as usize]);
    let mut flat: Vec<(f64, [Point; 3])> = faces
        .iter()
        .map(|face| (least_angle(corners(face)), corners(face)))
        .filter(|(angle, _)| *angle < FLAT)
        .collect();
    flat.sort_by(|a, b| a.0.total_cmp(&b.0));
    let before = points.len();
    for (_, corners) in flat {
        let centre = circumcentre(corners);
        let [a, b, c] = corners;
        let shortest = a.distance(b).min(b.distance(c)).min(c.distance(a));
        let inside = faces.iter().any(|face| {
            let [a, b, c] = face.nodes.map(|node| points[node as usize]);
            let left = |a: Point, b: Point| (b - a).cross(centre - a) >= 0.0;
            left(a, b) && left(b, c) && left(c, a)
        });
        let room = |point: &Point| point.distance(centre) > 0.8 * shortest;
        if inside && points.iter().all(room) && sketch.is_clear(centre, 0.5 * shortest) {
            points.push(centre);
        }
    }
    points.len() > before
}

/// Moves free nodes to the middle of their neighbours, unless that folds a triangle.
fn smooth(points: &mut [Point], fixed: usize, faces: &[Face]) {
    for _ in 0..STEPS {
        let mut sums = vec![(kurbo::Vec2::ZERO, 0.0); points.len()];
        for face in faces {
            let [a, b, c] = face.nodes.map(|node| node as usize);
            for (at, others) in [(a, [b, c]), (b, [c, a]), (c, [a, b])] {
                sums[at].0 += points[others[0]].to_vec2() + points[others[1]].to_vec2();
                sums[at].1 += 2.0;
            }
        }
        let old = points.to_vec();
        for (point, (sum, count)) in points.iter_mut().zip(&sums).skip(fixed) {
            if *count > 0.0 {
                *point = (*sum / *count).to_point();
            }
        }
        // Moving nodes back can fold others, but never more than all.
        loop {
            let area = |points: &[Point], face: &Face| {
                let [a, b, c] = face.nodes.map(|node| points[node as usize]);
                (b - a).cross(c - a)
            };
            let folded = faces.iter().flat_map(|face| {
                let folds = area(points, face) < 0.2 * area(&old, face);
                face.nodes.into_iter().filter(move |_| folds)
            });
            let back: Vec<usize> = folded
                .map(|node| node as usize)
                .filter(|&node| points[node] != old[node])
                .collect();
            if back.is_empty() {
                break;
            }
            back.into_iter().for_each(|node| points[node] = old[node]);
        }
    }
}

/// Drops nodes that no triangle has: lattice nodes outside the outline.
fn drop_unused(points: &mut Vec<Point>, fixed: usize, faces: &mut [Face]) {
    let mut place: Vec<Option<u32>> = vec![None; points.len()];
    for node in faces.iter().flat_map(|face| face.nodes) {
        place[node as usize] = Some(0);
    }
    let mut kept = Vec::with_capacity(points.len());
    for (node, point) in points.iter().enumerate() {
        if node < fixed || place[node].is_some() {
            place[node] = Some(kept.len() as u32);
            kept.push(*point);
        }
    }
    for node in faces.iter_mut().flat_map(|face| &mut face.nodes) {
        *node = place[*node as usize].expect("nodes of triangles are kept");
    }
    *points = kept;
}

/// A triangulated sketch.
struct Half {
    sketch: Sketch,
    points: Vec<Point>,
    faces: Vec<Face>,
}

impl Half {
    fn nodes(&self) -> Vec<Node> {
        let metres = |point: &Point| Node {
            x: point.x * 1e-3,
            y: point.y * 1e-3,
            seam: false,
            outer: false,
        };
        let mut nodes: Vec<Node> = self.points.iter().map(metres).collect();
        for bar in &self.sketch.bars {
            if matches!(bar.follows, Follows::Centre) {
                continue;
            }
            for node in bar.nodes {
                let node = &mut nodes[node as usize];
                node.seam = true;
                node.outer |= bar.sides.contains(&None);
            }
        }
        nodes
    }

    fn segments(&self) -> Vec<SeamSegment> {
        let segment = |bar: &super::sketch::Bar| match bar.follows {
            Follows::Centre => None,
            Follows::Curve { curve, at } => {
                Some(SeamSegment { nodes: bar.nodes, sides: bar.sides, curve, mirrored: false, at })
            }
        };
        self.sketch.bars.iter().filter_map(segment).collect()
    }

    fn triangles(&self) -> Vec<Triangle> {
        let triangle = |face: &Face| Triangle { nodes: face.nodes, compartment: face.compartment };
        self.faces.iter().map(triangle).collect()
    }

    fn whole(self, compartments: usize) -> Mesh {
        Mesh {
            nodes: self.nodes(),
            triangles: self.triangles(),
            segments: self.segments(),
            compartments,
            parents: Vec::new(),
            mirror: None,
            curves: self.sketch.curves.into(),
        }
    }

    /// Adds the mirror image in the centre line.
    fn with_image(self, images: Vec<u32>) -> Mesh {
        let mut nodes = self.nodes();
        let own = nodes.len();
        let mut image: Vec<u32> = (0..own as u32).collect();
        for node in 0..own {
            let Node { x, .. } = nodes[node];
            if x != 0.0 {
                image[node] = nodes.len() as u32;
                image.push(node as u32);
                let flipped = flip(self.points[node]);
                nodes.push(Node { x: flipped.x * 1e-3, ..nodes[node] });
            }
        }
        let of = |node: u32| image[node as usize];
        let side = |side: Option<u32>| side.map(|own| images[own as usize]);
        let mut triangles = self.triangles();
        for face in &self.faces {
            let [a, b, c] = face.nodes.map(of);
            let compartment = images[face.compartment as usize];
            triangles.push(Triangle { nodes: [a, c, b], compartment });
        }
        let mut segments = self.segments();
        for place in 0..segments.len() {
            let segment = segments[place];
            let [a, b] = segment.nodes;
            if of(a) != a || of(b) != b {
                segments.push(SeamSegment {
                    nodes: [of(a), of(b)],
                    sides: [side(segment.sides[1]), side(segment.sides[0])],
                    mirrored: true,
                    ..segment
                });
            }
        }
        Mesh {
            nodes,
            triangles,
            segments,
            compartments: images.len(),
            parents: Vec::new(),
            mirror: Some(Mirror { nodes: image, compartments: images }),
            curves: self.sketch.curves.into(),
        }
    }
}
