//! Equations of a mesh with a few dense rows and columns at the border.
//!
//! ```text
//! [  A     V ] [y]   [r]
//! [ D V'   M ] [t] = [g]        A sparse and positive definite, D diagonal, M small
//! ```
//!
//! With A = L L' the border needs forward solves only: Y = L^-1 V and z = L^-1 r give
//! (M - D Y'Y) t = g - D Y'z and L'y = z - Y t.

use super::dense;
use super::factor::Factor;
use super::small::SmallMatrix;

/// Rows that are multiplied at a time, so that sums are read and written less often.
const BLOCK: usize = 4;

/// The border of a system of equations.
#[derive(Clone, Debug)]
pub(crate) struct Border {
    /// By place, a row each: V's columns, then the right-hand sides r; zero where a node is not
    /// free.
    pub(crate) vectors: Vec<f64>,
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
    /// L^-1 times the border's vectors.
    reduced: Vec<f64>,
    width: usize,
    scale: Vec<f64>,
    /// Y' times [Y, z], by rows.
    products: Vec<f64>,
    /// M - D Y'Y.
    schur: SmallMatrix,
}

/// A solution: at the nodes by place, and of the border.
#[derive(Clone, Debug)]
pub(crate) struct Solved {
    /// y for each right-hand side.
    pub(crate) nodes: Vec<Vec<f64>>,
    /// t for each right-hand side.
    pub(crate) border: Vec<Vec<f64>>,
}

impl Bordered {
    /// Reduces the border.
    pub(crate) fn new(factor: Factor, border: Border) -> Self {
        let Border { mut vectors, width, scale, corner } = border;
        factor.forward(&mut vectors, width);
        let count = scale.len();
        let products = products(&vectors, width, count);
        let mut schur = corner;
        for row in 0..count {
            for column in 0..count {
                schur[[row, column]] -= scale[row] * products[row * width + column];
            }
        }
        Self { factor, reduced: vectors, width, scale, products, schur }
    }

    /// The border's own equations when the nodes are eliminated.
    pub(crate) fn schur(&self) -> &SmallMatrix {
        &self.schur
    }

    /// Solves for the right-hand sides of which the border's rows are given, and the nodes' rows
    /// came with the border. `None` where the border is singular.
    pub(crate) fn solve(&self, rights: &[Vec<f64>]) -> Option<Solved> {
        let count = self.scale.len();
        assert_eq!(count + rights.len(), self.width, "a right-hand side each");
        let known: Vec<Vec<f64>> = rights
            .iter()
            .enumerate()
            .map(|(side, right)| {
                let product = |row: usize| self.products[row * self.width + count + side];
                (0..count).map(|row| right[row] - self.scale[row] * product(row)).collect()
            })
            .collect();
        let border = self.schur.solve(&known)?;
        let mut nodes = Vec::with_capacity(rights.len());
        for (side, border) in border.iter().enumerate() {
            let rows = self.reduced.chunks_exact(self.width);
            let mut own: Vec<f64> =
                rows.map(|row| row[count + side] - dense::dot(&row[..count], border)).collect();
            self.factor.backward(&mut own, 1);
            nodes.push(own);
        }
        Some(Solved { nodes, border })
    }
}

/// The products of the first `count` columns with all, by rows, of a matrix whose rows have
/// `width` numbers.
fn products(rows: &[f64], width: usize, count: usize) -> Vec<f64> {
    let mut products = vec![0.0; count * width];
    let mut block = Vec::with_capacity(BLOCK * width);
    let mut add = |block: &mut Vec<f64>| {
        block.resize(BLOCK * width, 0.0);
        for (at, own) in products.chunks_exact_mut(width).enumerate() {
            let mut rows = block.chunks_exact(width);
            let [a, b, c, d] =
                std::array::from_fn(|_| rows.next().map_or(&[][..], |row| &row[at..]));
            let values = a.iter().zip(b).zip(c.iter().zip(d));
            for (sum, ((va, vb), (vc, vd))) in own[at..].iter_mut().zip(values) {
                *sum += (a[0] * va + b[0] * vb) + (c[0] * vc + d[0] * vd);
            }
        }
        block.clear();
    };
    for row in rows.chunks_exact(width) {
        // Rows of nodes that are not free.
        if row.iter().all(|value| *value == 0.0) {
            continue;
        }
        block.extend_from_slice(row);
        if block.len() == BLOCK * width {
            add(&mut block);
        }
    }
    add(&mut block);
    for row in 0..count {
        for column in 0..row {
            products[row * width + column] = products[column * width + row];
        }
    }
    products
}
