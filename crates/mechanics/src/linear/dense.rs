//! Small dense matrices: elimination of the first columns of a symmetric one.

use crate::numerics::wide;

/// Columns that are eliminated at a time. Fewer, and the rest is read more often; more, and too
/// much of the work is done column by column.
const PANEL: usize = 16;

/// Eliminates the first `pivots` columns of a symmetric matrix of `size` rows, of which the lower
/// half is given by columns: they become columns of the Cholesky factor, the rest what is left.
///
/// `packed` is room for copies. Returns `false` where a pivot is not above zero.
#[must_use]
pub(super) fn eliminate(
    matrix: &mut [f64],
    size: usize,
    pivots: usize,
    packed: &mut Vec<[f64; 4]>,
) -> bool {
    wide(
        #[inline(always)]
        || eliminate_panels(matrix, size, pivots, packed),
    )
}

#[inline(always)]
fn eliminate_panels(
    matrix: &mut [f64],
    size: usize,
    pivots: usize,
    packed: &mut Vec<[f64; 4]>,
) -> bool {
    for first in (0..pivots).step_by(PANEL) {
        let width = PANEL.min(pivots - first);
        if !eliminate_panel(matrix, size, first, width) {
            return false;
        }
        let rest = first + width;
        pack(matrix, size, first, width, packed);
        subtract_products(matrix, size, rest, width, packed);
    }
    true
}

/// Columns `first..first + width`, from which those before are subtracted already.
#[inline(always)]
fn eliminate_panel(matrix: &mut [f64], size: usize, first: usize, width: usize) -> bool {
    for column in first..first + width {
        let (before, own) = matrix.split_at_mut(column * size);
        let own = &mut own[column..size];
        let before = &before[first * size..];
        let mut fours = before.chunks_exact(4 * size);
        for four in fours.by_ref() {
            let [a, b, c, d] = [0, 1, 2, 3].map(|at| &four[at * size + column..(at + 1) * size]);
            let [fa, fb, fc, fd] = [a[0], b[0], c[0], d[0]];
            let products = a.iter().zip(b).zip(c.iter().zip(d));
            for (value, ((a, b), (c, d))) in own.iter_mut().zip(products) {
                *value -= (fa * a + fb * b) + (fc * c + fd * d);
            }
        }
        for other in fours.remainder().chunks_exact(size) {
            let factor = other[column];
            for (value, other) in own.iter_mut().zip(&other[column..]) {
                *value -= factor * other;
            }
        }
        let pivot = own[0];
        if !(pivot > 0.0) {
            return false;
        }
        let root = pivot.sqrt();
        own[0] = root;
        let inverse = root.recip();
        own[1..].iter_mut().for_each(|value| *value *= inverse);
    }
    true
}

/// Copies the rows below a panel in blocks of four rows, each block column by column.
#[inline(always)]
fn pack(matrix: &[f64], size: usize, first: usize, width: usize, packed: &mut Vec<[f64; 4]>) {
    packed.clear();
    for row in (first + width..size).step_by(4) {
        let rows = 4.min(size - row);
        for column in first..first + width {
            let mut four = [0.0; 4];
            let at = column * size + row;
            if rows == 4 {
                four.copy_from_slice(&matrix[at..at + 4]);
            } else {
                four[..rows].copy_from_slice(&matrix[at..at + rows]);
            }
            packed.push(four);
        }
    }
}

/// Subtracts the product of the packed rows with themselves from the lower half of the rest.
#[inline(always)]
fn subtract_products(
    matrix: &mut [f64],
    size: usize,
    rest: usize,
    width: usize,
    packed: &[[f64; 4]],
) {
    for (across, right) in packed.chunks_exact(width).enumerate() {
        let column = rest + 4 * across;
        let columns = 4.min(size - column);
        for (down, left) in packed.chunks_exact(width).enumerate().skip(across) {
            let row = rest + 4 * down;
            let rows = 4.min(size - row);
            let tile = product(left, right);
            for (at, values) in tile.iter().take(columns).enumerate() {
                let start = (column + at) * size + row;
                let own = &mut matrix[start..start + rows];
                if rows == 4 {
                    for (value, product) in own.iter_mut().zip(values) {
                        *value -= product;
                    }
                } else {
                    for (value, product) in own.iter_mut().zip(&values[..rows]) {
                        *value -= product;
                    }
                }
            }
        }
    }
}

/// Four columns of four rows: the sum over all pairs of left times right.
#[inline(always)]
fn product(left: &[[f64; 4]], right: &[[f64; 4]]) -> [[f64; 4]; 4] {
    let mut sums = [[0.0; 4]; 4];
    for (left, right) in left.iter().zip(right) {
        for (sum, factor) in sums.iter_mut().zip(right) {
            for (value, left) in sum.iter_mut().zip(left) {
                *value += left * factor;
            }
        }
    }
    sums
}

/// The inner product of two vectors, summed in four lanes.
#[inline(always)]
pub(crate) fn dot(one: &[f64], other: &[f64]) -> f64 {
    let mut lanes = [0.0; 4];
    let (ones, others) = (one.chunks_exact(4), other.chunks_exact(4));
    let rest: f64 = ones.remainder().iter().zip(others.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in ones.zip(others) {
        for (lane, (a, b)) in lanes.iter_mut().zip(a.iter().zip(b)) {
            *lane += a * b;
        }
    }
    (lanes[0] + lanes[1]) + (lanes[2] + lanes[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A symmetric matrix by columns that is positive definite: its diagonal outweighs the rest.
    fn matrix(size: usize) -> Vec<f64> {
        let of = |(row, column): (usize, usize)| {
            let (low, high) = (row.min(column), row.max(column));
            libm::sin((low * size + high) as f64)
        };
        let places = (0..size).flat_map(|column| (0..size).map(move |row| (row, column)));
        let value =
            |place: (usize, usize)| if place.0 == place.1 { size as f64 } else { of(place) };
        places.map(value).collect()
    }

    #[test]
    fn wide_instructions_change_no_bit() {
        for (size, pivots) in [(1, 1), (7, 3), (40, 17), (83, 64)] {
            let [mut wide, mut narrow] = [matrix(size), matrix(size)];
            assert!(eliminate(&mut wide, size, pivots, &mut Vec::new()));
            assert!(eliminate_panels(&mut narrow, size, pivots, &mut Vec::new()));
            let bits = |values: &[f64]| values.iter().map(|own| own.to_bits()).collect::<Vec<_>>();
            assert_eq!(bits(&wide), bits(&narrow), "{size}");
        }
    }
}
