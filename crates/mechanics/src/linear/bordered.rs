//! Equations of a mesh with a few dense rows and columns at the border.
//!
//! ```text
//! [  A     V ] [y]   [r]
//! [ D V'   M ] [t] = [g]        A sparse and positive definite, D diagonal, M small
//! ```
//!
//! With A = L L' the border needs forward solves only, which are made with the factor: Y = L^-1 V
//! and z = L^-1 r give (M - D Y'Y) t = g - D Y'z and L'y = z - Y t.

use crate::numerics::SmallMatrix;

use super::factor::{Factor, NotPositive, System};
use super::pool::Pooled;
use super::symbolic::{Entries, Free, Symbolic};

/// The border of a system of equations.
#[derive(Clone, Debug)]
pub(crate) struct Border {
    /// For each free node, in order of place, a row: V's columns, then the right-hand sides r.
    pub(crate) vectors: Pooled<Vec<f64>>,
    /// How many numbers a row of `vectors` has.
    pub(crate) width: usize,
    /// D, one for each column of V.
    pub(crate) scale: Vec<f64>,
    /// M.
    pub(crate) corner: SmallMatrix,
}

/// A bordered system whose border is reduced to a small one.
#[derive(Clone, Debug)]
pub(crate) struct Bordered {
    factor: Factor,
    nodes: usize,
    width: usize,
    scale: Vec<f64>,
    /// M - D Y'Y. What is added to it is added to M.
    pub(crate) schur: SmallMatrix,
}

/// A solution: at the nodes by place, and of the border.
#[derive(Clone, Debug)]
pub(crate) struct Solved {
    /// y.
    pub(crate) nodes: Vec<f64>,
    /// t.
    pub(crate) border: Vec<f64>,
}

impl Bordered {
    /// Factors the part of a matrix that belongs to the free nodes, and reduces the border.
    ///
    /// # Errors
    ///
    /// Returns an error where that part is not positive definite.
    pub(crate) fn new(
        symbolic: &Symbolic,
        entries: &Entries,
        free: &Free,
        border: Border,
    ) -> Result<Self, NotPositive> {
        let Border { vectors, width, scale, corner } = border;
        let factor = Factor::new(&System { symbolic, entries, free, border: &vectors, width })?;
        let mut schur = corner;
        for row in 0..scale.len() {
            for column in 0..scale.len() {
                schur[[row, column]] -= scale[row] * factor.products()[row * width + column];
            }
        }
        Ok(Self { factor, nodes: symbolic.len(), width, scale, schur })
    }

    /// D.
    pub(crate) fn scale(&self) -> &[f64] {
        &self.scale
    }

    /// Solves for the right-hand sides of which the border's rows are given, and the nodes' rows
    /// came with the border. `None` where the border is singular.
    pub(crate) fn solve(&self, rights: &[Vec<f64>]) -> Option<Vec<Solved>> {
        assert_eq!(self.scale.len() + rights.len(), self.width, "a right-hand side each");
        let known = rights.iter().enumerate().map(|(side, right)| self.known(side, right));
        let borders = self.schur.solve(&known.collect::<Vec<_>>())?;
        let solved = borders.into_iter().enumerate();
        Some(solved.map(|(side, border)| self.solved(side, border)).collect())
    }

    /// The solution for a right-hand side that came with the border, whose border is known.
    pub(crate) fn solved(&self, side: usize, border: Vec<f64>) -> Solved {
        let mut vector = vec![0.0; self.nodes + self.width];
        // z is a column of the border, and y is what it lacks.
        vector[self.nodes + self.scale.len() + side] = -1.0;
        self.back(vector, border)
    }

    /// g - D Y'z for a right-hand side that came with the border, of which the border's rows are given.
    pub(crate) fn known(&self, side: usize, right: &[f64]) -> Vec<f64> {
        let count = self.scale.len();
        let product = |row: usize| self.factor.products()[row * self.width + count + side];
        (0..count).map(|row| right[row] - self.scale[row] * product(row)).collect()
    }

    /// Solves for one more right-hand side, of which the nodes' rows are given by place and may be
    /// anything where a node is not free. `None` where the border is singular.
    pub(crate) fn solve_for(&self, mut nodes: Vec<f64>, right: &[f64]) -> Option<Solved> {
        nodes.resize(self.nodes + self.width, 0.0);
        self.factor.forward(&mut nodes);
        let left = right.iter().zip(&self.scale).zip(&nodes[self.nodes..]);
        let known = left.map(|((right, scale), product)| right + scale * product).collect();
        let border = self.schur.solve(&[known])?.swap_remove(0);
        nodes[self.nodes..].fill(0.0);
        Some(self.back(nodes, border))
    }

    fn back(&self, mut vector: Vec<f64>, border: Vec<f64>) -> Solved {
        vector[self.nodes..self.nodes + border.len()].copy_from_slice(&border);
        self.factor.backward(&mut vector);
        vector.truncate(self.nodes);
        Solved { nodes: vector, border }
    }
}
