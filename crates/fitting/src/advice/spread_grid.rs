//! The spread of a stock fill under the bodies of a table: looked for at bodies on a grid, and taken
//! straight between them.
//!
//! A table says three numbers of a body, and the spread changes little and smoothly with each. The grid
//! is the same whatever the table: what is said of a body does not depend on who else is asked for. A
//! cell of the grid is cut into six simplices, of which each point needs four corners (Freudenthal,
//! Simplizialzerlegungen von beschränkter Flachheit, Annals of Mathematics 43, 1942).

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use crate::prediction::predictor::Ends;

/// A place on the grid.
type Corner = [i32; 3];

/// What was found at the corners of a grid.
#[derive(Debug, Default)]
pub(crate) struct SpreadGrid {
    found: Mutex<BTreeMap<Corner, Arc<OnceLock<Option<Ends>>>>>,
}

impl SpreadGrid {
    /// The spread at a point, in steps of the grid, from that at corners around it, each of which is
    /// looked for once. None where one has none.
    pub(crate) fn at(
        &self,
        point: [f64; 3],
        look: impl Fn([f64; 3]) -> Option<Ends>,
    ) -> Option<Ends> {
        let known = |(corner, share): (Corner, f64)| {
            let place = {
                let mut found = self.found.lock().unwrap_or_else(PoisonError::into_inner);
                Arc::clone(found.entry(corner).or_default())
            };
            let ends = place.get_or_init(|| look(corner.map(f64::from))).clone()?;
            Some((share, ends))
        };
        let around: Option<Vec<(f64, Ends)>> = corners(point).into_iter().map(known).collect();
        Some(Ends::between(&around?))
    }
}

/// The corners of the simplex that a point is in, with what each counts; only those that do.
fn corners(point: [f64; 3]) -> Vec<(Corner, f64)> {
    let mut corner = point.map(|along| along.floor() as i32);
    let within = [0, 1, 2].map(|axis| point[axis] - point[axis].floor());
    let mut axes = [0, 1, 2];
    axes.sort_by(|one, other| within[*other].total_cmp(&within[*one]));
    let mut corners = vec![(corner, 1.0 - within[axes[0]])];
    for (at, axis) in axes.into_iter().enumerate() {
        corner[axis] += 1;
        let rest = axes.get(at + 1).map_or(0.0, |next| within[*next]);
        corners.push((corner, within[axis] - rest));
    }
    corners.retain(|(_, share)| *share > 0.0);
    corners
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is straight along each axis is found again, whichever simplex a point is in.
    #[test]
    fn shares_are_none_below_zero_and_find_the_point_again() {
        for at in 0..1000 {
            let point =
                [at * 7 % 31, at * 11 % 37, at * 13 % 41].map(|own| f64::from(own) / 8.0 - 2.0);
            let corners = corners(point);
            assert!(corners.len() <= 4);
            let sum: f64 = corners.iter().map(|(_, share)| share).sum();
            // Shares are exact: all numbers are eighths.
            assert_eq!(sum, 1.0);
            for axis in 0..3 {
                let found: f64 =
                    corners.iter().map(|(corner, share)| share * f64::from(corner[axis])).sum();
                assert_eq!(found, point[axis]);
            }
            assert!(corners.iter().all(|(_, share)| *share > 0.0));
        }
    }

    #[test]
    fn a_corner_is_looked_for_once_and_one_without_a_spread_leaves_none() {
        let grid = SpreadGrid::default();
        let asked = Mutex::new(Vec::new());
        let look = |corner: [f64; 3]| {
            asked.lock().unwrap().push(corner);
            (corner[0] < 3.0).then(Ends::default)
        };
        assert!(grid.at([1.5, 2.25, 3.0], look).is_some());
        assert!(grid.at([1.5, 2.25, 3.0], look).is_some());
        assert!(grid.at([2.5, 2.25, 3.0], look).is_none());
        let mut all = asked.into_inner().unwrap();
        let count = all.len();
        all.sort_by(|one, other| one.partial_cmp(other).unwrap());
        all.dedup();
        assert_eq!(all.len(), count);
    }
}
