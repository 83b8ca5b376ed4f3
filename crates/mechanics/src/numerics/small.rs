//! Small square matrices that need not be symmetric.

/// A square matrix by rows.
#[derive(Clone, Debug, PartialEq)]
pub struct SmallMatrix {
    size: usize,
    values: Vec<f64>,
}

impl std::ops::Index<[usize; 2]> for SmallMatrix {
    type Output = f64;
    fn index(&self, [row, column]: [usize; 2]) -> &f64 {
        &self.values[row * self.size + column]
    }
}

impl std::ops::IndexMut<[usize; 2]> for SmallMatrix {
    fn index_mut(&mut self, [row, column]: [usize; 2]) -> &mut f64 {
        &mut self.values[row * self.size + column]
    }
}

impl SmallMatrix {
    /// A matrix of zeros.
    #[must_use]
    pub fn zeros(size: usize) -> Self {
        Self { size, values: vec![0.0; size * size] }
    }

    /// The number of rows.
    #[must_use]
    pub fn size(&self) -> usize {
        self.size
    }

    /// Solves for each of the right-hand sides, by Gauss's elimination with row exchanges chosen
    /// by size relative to the row's own. `None` where the matrix is singular to rounding.
    ///
    /// # Panics
    ///
    /// Panics where a right-hand side is not as long as the matrix.
    #[must_use]
    pub fn solve(&self, right: &[Vec<f64>]) -> Option<Vec<Vec<f64>>> {
        let size = self.size;
        let mut matrix = self.clone();
        let mut solved = right.to_vec();
        let row_scale = |row: usize| {
            let own = &self.values[row * size..(row + 1) * size];
            own.iter().fold(0.0, |most: f64, value| most.max(value.abs()))
        };
        let mut scale: Vec<f64> = (0..size).map(row_scale).collect();
        for at in 0..size {
            let weight = |row: &usize| matrix[[*row, at]].abs() / scale[*row];
            let best = (at..size).max_by(|a, b| weight(a).total_cmp(&weight(b)))?;
            if !(weight(&best) > f64::EPSILON) {
                return None;
            }
            scale.swap(at, best);
            (0..size)
                .for_each(|column| matrix.values.swap(at * size + column, best * size + column));
            solved.iter_mut().for_each(|vector| vector.swap(at, best));
            for row in at + 1..size {
                let factor = matrix[[row, at]] / matrix[[at, at]];
                if factor == 0.0 {
                    continue;
                }
                for column in at..size {
                    let above = matrix[[at, column]];
                    matrix[[row, column]] -= factor * above;
                }
                solved.iter_mut().for_each(|vector| vector[row] -= factor * vector[at]);
            }
        }
        for vector in &mut solved {
            for row in (0..size).rev() {
                let known: f64 = (row + 1..size).map(|at| matrix[[row, at]] * vector[at]).sum();
                vector[row] = (vector[row] - known) / matrix[[row, row]];
            }
        }
        Some(solved)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_planted_solution_is_found_though_pivots_vanish() {
        let mut matrix = SmallMatrix::zeros(3);
        // The first pivot is zero.
        for (place, value) in [0.0, 2.0, 1.0, 1e6, 0.0, 3e6, 4.0, -1.0, 0.5].iter().enumerate() {
            matrix[[place / 3, place % 3]] = *value;
        }
        // Times (1, -2, 3), by hand.
        let right = vec![vec![-4.0 + 3.0, 1e6 + 9e6, 4.0 + 2.0 + 1.5]];
        let found = matrix.solve(&right).expect("it is regular");
        for (found, planted) in found[0].iter().zip([1.0, -2.0, 3.0]) {
            // Rounding of three steps.
            assert!((found - planted).abs() < 1e-13);
        }
    }

    #[test]
    fn a_singular_matrix_is_refused() {
        let mut matrix = SmallMatrix::zeros(2);
        for (place, value) in [1.0, 2.0, 2.0, 4.0].iter().enumerate() {
            matrix[[place / 2, place % 2]] = *value;
        }
        assert_eq!(matrix.solve(&[vec![1.0, 0.0]]), None);
    }
}
