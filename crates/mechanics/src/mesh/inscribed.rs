//! How wide a compartment is at its widest place.

use super::Mesh;

/// To what the width is found, m: finer costs more time, and cloth is not cut more exactly.
const RESOLUTION: f64 = 0.001;

type Place = [f64; 2];

impl Mesh {
    /// Returns the diameter of the largest disc that fits into a compartment, in metres, to a
    /// millimetre; zero where the compartment has no triangles.
    ///
    /// Triangles are halved as long as they may hold a better centre: nowhere in one is farther
    /// from the seams than its middle by more than its reach.
    #[must_use]
    pub fn greatest_width(&self, compartment: u32) -> f64 {
        let seams: Vec<[Place; 2]> = self
            .segments()
            .iter()
            .filter(|segment| segment.sides.contains(&Some(compartment)))
            .map(|segment| segment.nodes.map(|node| self.place(node)))
            .collect();
        let radius_at = |at: Place| {
            seams.iter().map(|seam| square_to_seam(at, *seam)).fold(f64::MAX, f64::min).sqrt()
        };
        let own = self.triangles().iter().filter(|triangle| triangle.compartment == compartment);
        let mut open: Vec<(f64, [Place; 3])> = own
            .map(|triangle| triangle.nodes.map(|node| self.place(node)))
            .map(|corners| (radius_at(middle(corners)), corners))
            .collect();
        let mut best = open.iter().map(|(radius, _)| *radius).fold(0.0, f64::max);
        while let Some((radius, corners)) = open.pop() {
            if radius + reach(corners) <= best + RESOLUTION / 2.0 {
                continue;
            }
            for part in quarters(corners) {
                let radius = radius_at(middle(part));
                best = best.max(radius);
                open.push((radius, part));
            }
        }
        2.0 * best
    }

    fn place(&self, node: u32) -> Place {
        let node = self.nodes()[node as usize];
        [node.x, node.y]
    }
}

fn quarters([a, b, c]: [Place; 3]) -> [[Place; 3]; 4] {
    let half = |a: Place, b: Place| [f64::midpoint(a[0], b[0]), f64::midpoint(a[1], b[1])];
    let (ab, bc, ca) = (half(a, b), half(b, c), half(c, a));
    [[a, ab, ca], [b, bc, ab], [c, ca, bc], [ab, bc, ca]]
}

fn middle(corners: [Place; 3]) -> Place {
    [0, 1].map(|axis| corners.iter().map(|at| at[axis]).sum::<f64>() / 3.0)
}

/// How far the corners are from the middle.
fn reach(corners: [Place; 3]) -> f64 {
    let [x, y] = middle(corners);
    corners.iter().map(|at| libm::hypot(at[0] - x, at[1] - y)).fold(0.0, f64::max)
}

fn square_to_seam(at: Place, [a, b]: [Place; 2]) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let dot = (at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1];
    let share = (dot / (along[0] * along[0] + along[1] * along[1])).clamp(0.0, 1.0);
    let off = [at[0] - a[0] - share * along[0], at[1] - a[1] - share * along[1]];
    off[0] * off[0] + off[1] * off[1]
}
