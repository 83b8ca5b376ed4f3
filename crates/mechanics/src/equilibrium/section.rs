//! A cut through the sheet.

use super::model::SheetModel;

/// Where the cushion is cut, in metres in its frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cut {
    /// From left to right, so far in front of the rear edge.
    Across {
        /// How far in front of the rear edge.
        forward: f64,
    },
    /// From rear to front, so far right of the middle.
    Along {
        /// How far right of the middle; left where negative.
        right: f64,
    },
}

impl Cut {
    /// A place as (along the cut, off the cut).
    fn split(self, [x, y]: [f64; 2]) -> (f64, f64) {
        match self {
            Self::Across { forward } => (x, y - forward),
            Self::Along { right } => (y, x - right),
        }
    }
}

/// Two places on one cut closer than this, m, are one.
const SAME: f64 = 1e-7;

impl SheetModel {
    /// Returns what values at the nodes of the finest mesh are along a cut: (place along it in
    /// m, value), in order. Where the cut leaves the cushion, there is nothing.
    ///
    /// # Panics
    ///
    /// Panics unless there is a value for each node.
    #[must_use]
    #[track_caller]
    pub fn along_cut(&self, values: &[f64], cut: Cut) -> Vec<[f64; 2]> {
        let level = self.finest();
        assert_eq!(values.len(), level.places.len(), "a value for each node");
        let mut points = Vec::new();
        for patch in &level.patches {
            for triangle in &patch.triangles {
                let corners = triangle.map(|corner| patch.nodes[corner as usize] as usize);
                for at in 0..3 {
                    let (a, b) = (corners[at], corners[(at + 1) % 3]);
                    let (from, off_a) = cut.split(level.places[a]);
                    let (to, off_b) = cut.split(level.places[b]);
                    // Each edge holds its lower end and not its upper one; an edge on the cut
                    // is met by its neighbours.
                    if (off_a <= 0.0) == (off_b <= 0.0) {
                        continue;
                    }
                    let share = off_a / (off_a - off_b);
                    points.push([
                        from + share * (to - from),
                        values[a] + share * (values[b] - values[a]),
                    ]);
                }
            }
        }
        points.sort_by(|a, b| a[0].total_cmp(&b[0]));
        points.dedup_by(|next, kept| next[0] - kept[0] < SAME);
        points
    }
}

impl SheetModel {
    /// Returns where seams cross a cut over a cushion of a size, in mm along it, to a millimetre.
    #[must_use]
    pub fn seams_along(&self, cut: Cut, size: cushion::Size) -> Vec<f64> {
        let (from, to) = match cut {
            Cut::Across { .. } => (-size.width().to_mm() / 2.0, size.width().to_mm() / 2.0),
            Cut::Along { .. } => (0.0, size.depth().to_mm()),
        };
        let place = |mm: f64| match cut {
            Cut::Across { forward } => [mm * 1e-3, forward],
            Cut::Along { right } => [right, mm * 1e-3],
        };
        let steps = (to - from) as usize;
        let at = |step: usize| from + 0.5 + step as f64;
        let owners: Vec<Option<usize>> =
            (0..steps).map(|step| self.compartment_at(place(at(step)))).collect();
        let mut seams = vec![from];
        let crossed = owners.windows(2).enumerate().filter(|(_, pair)| pair[0] != pair[1]);
        seams.extend(crossed.map(|(step, _)| f64::midpoint(at(step), at(step + 1))));
        seams.push(to);
        seams
    }

    /// Returns which compartment a place lies in, in m; none outside of the cushion.
    #[must_use]
    pub fn compartment_at(&self, at: [f64; 2]) -> Option<usize> {
        let level = self.finest();
        let turns = |a: [f64; 2], b: [f64; 2]| {
            (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])
        };
        level.patches.iter().position(|patch| {
            patch.triangles.iter().any(|triangle| {
                let [a, b, c] =
                    triangle.map(|corner| level.places[patch.nodes[corner as usize] as usize]);
                turns(a, b) >= 0.0 && turns(b, c) >= 0.0 && turns(c, a) >= 0.0
            })
        })
    }
}
