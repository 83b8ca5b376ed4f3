//! How sheet and fill resist the sinking, rolling and pitching of a body.

use crate::numerics::SmallMatrix;

/// The stiffness of the body's pose when all else follows, the trunk left out: forces in N, N m
/// and N m for a unit of sink, roll and pitch.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PoseStiffness {
    /// By rows; that of a held mode is the unit matrix's.
    matrix: [[f64; 3]; 3],
}

impl PoseStiffness {
    /// Takes it from equations of which the first unknowns are those of the pose that are not
    /// held, `modes`, and the others follow. None where the others are singular.
    pub(super) fn of(equations: &SmallMatrix, modes: &[usize]) -> Option<Self> {
        let (count, others) = (modes.len(), equations.size() - modes.len());
        let mut inner = SmallMatrix::zeros(others);
        for row in 0..others {
            for column in 0..others {
                inner[[row, column]] = equations[[count + row, count + column]];
            }
        }
        let across =
            |column: usize| (0..others).map(|row| equations[[count + row, column]]).collect();
        let rights: Vec<Vec<f64>> = (0..count).map(across).collect();
        let follow = inner.solve(&rights)?;
        let mut matrix = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        for (row, mode) in modes.iter().enumerate() {
            for (column, other) in modes.iter().enumerate() {
                let by = follow[column].iter().enumerate();
                let yielded: f64 = by.map(|(at, by)| equations[[row, count + at]] * by).sum();
                matrix[*mode][*other] = equations[[row, column]] - yielded;
            }
        }
        Some(Self { matrix })
    }

    /// Whether every small turn is resisted when a trunk takes so much of the stiffness in each
    /// mode, N m per radian. It takes none of one that is held.
    pub(super) fn stands(&self, trunk: [f64; 3]) -> bool {
        let k = |row: usize, column: usize| {
            self.matrix[row][column] - if row == column { trunk[row] } else { 0.0 }
        };
        // A symmetric matrix is positive where its leading minors are.
        let two = k(0, 0) * k(1, 1) - k(0, 1) * k(1, 0);
        k(0, 0) > 0.0 && two > 0.0 && determinant(k) > 0.0
    }

    /// The force for a unit of a mode when the body is free in the others.
    pub(super) fn alone(&self, mode: usize) -> f64 {
        let k = |row: usize, column: usize| self.matrix[row][column];
        let [a, b] = [(mode + 1) % 3, (mode + 2) % 3];
        determinant(k) / (k(a, a) * k(b, b) - k(a, b) * k(b, a))
    }
}

fn determinant(k: impl Fn(usize, usize) -> f64) -> f64 {
    k(0, 0) * (k(1, 1) * k(2, 2) - k(1, 2) * k(2, 1))
        - k(0, 1) * (k(1, 0) * k(2, 2) - k(1, 2) * k(2, 0))
        + k(0, 2) * (k(1, 0) * k(2, 1) - k(1, 1) * k(2, 0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two springs of 100 N/m at 0.3 m on both sides, of which the right one stands on a third
    /// spring of 100 N/m, whose height is the unknown that follows.
    fn springs() -> SmallMatrix {
        let mut equations = SmallMatrix::zeros(3);
        let rows = [[200.0, 0.0, -100.0], [0.0, 18.0, -30.0], [-100.0, -30.0, 200.0]];
        for (row, values) in rows.iter().enumerate() {
            values.iter().enumerate().for_each(|(at, value)| equations[[row, at]] = *value);
        }
        equations
    }

    #[test]
    fn springs_in_a_row_give_way_together() {
        let stiffness = PoseStiffness::of(&springs(), &[0, 1]).expect("it is regular");
        // 100 N/m on the left and, two springs in a row, 50 on the right, 0.6 m apart. Free to
        // sink, the two bear the same force F with a moment of 0.6 F, and the turn is
        // (F/100 + F/50)/0.6.
        let roll = 0.6 * 0.6 / (1.0 / 100.0 + 1.0 / 50.0);
        // Free to roll, both bear half, and the middle sinks by the mean of F/200 and F/100.
        let sink = 1.0 / f64::midpoint(1.0 / 200.0, 1.0 / 100.0);
        // Rounding of some ten operations on numbers up to 200.
        assert!((stiffness.alone(1) - roll).abs() < 1e-12);
        assert!((stiffness.alone(0) - sink).abs() < 1e-12);
    }

    #[test]
    fn a_trunk_falls_over_where_it_takes_all_stiffness() {
        let stiffness = PoseStiffness::of(&springs(), &[0, 1]).expect("it is regular");
        // Free to sink, it resists rolling with 12 N m per radian: see above.
        assert!(stiffness.stands([0.0, 11.9, 0.0]));
        assert!(!stiffness.stands([0.0, 12.1, 0.0]));
    }
}
