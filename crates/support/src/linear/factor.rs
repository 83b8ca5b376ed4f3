//! The Cholesky factor of the free part of a matrix, front by front, and solving with it.

use super::dense;
use super::symbolic::{Entries, Symbolic};

/// The Cholesky factor of the rows and columns of the free nodes.
///
/// Vectors go by the places of [`Symbolic`]; the values at nodes that are not free are neither
/// read nor changed.
#[derive(Clone, Debug, Default)]
pub(crate) struct Factor {
    fronts: Vec<Columns>,
    /// The free nodes of each front, as places: those eliminated first, then those around.
    index: Vec<u32>,
    /// The factor's rows for each front, each as long as nodes are eliminated there.
    values: Vec<f64>,
}

/// The columns of the factor that one front yields.
#[derive(Clone, Copy, Debug)]
struct Columns {
    /// Where its nodes begin in `index`.
    index: usize,
    /// How many nodes are eliminated.
    pivots: usize,
    /// How many nodes there are, those around included.
    size: usize,
    /// Where its rows begin in `values`.
    values: usize,
}

/// A matrix that is not positive definite.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct NotPositive;

/// What is left of fronts that wait for the one that takes them up.
#[derive(Default)]
struct Stack {
    /// For each: where its nodes begin in the factor's index, how many, where its numbers begin.
    parts: Vec<(usize, usize, usize)>,
    values: Vec<f64>,
}

impl Factor {
    /// Factors the part of a matrix that belongs to the nodes marked free, by place.
    ///
    /// # Errors
    ///
    /// Returns an error where that part is not positive definite.
    pub(crate) fn new(
        symbolic: &Symbolic,
        entries: &Entries,
        free: &[bool],
    ) -> Result<Self, NotPositive> {
        let mut factor = Self::default();
        let mut work = Work {
            local: vec![0; symbolic.len()],
            matrix: Vec::new(),
            packed: Vec::new(),
            stack: Stack::default(),
        };
        // How many parts on the stack wait for each front.
        let mut waiting = vec![0usize; symbolic.fronts.len()];
        for (id, front) in symbolic.fronts.iter().enumerate() {
            let start = factor.index.len();
            let [first, end] = front.pivots;
            factor.index.extend((first..end).filter(|place| free[*place as usize]));
            let pivots = factor.index.len() - start;
            let mut left = waiting[id];
            if pivots > 0 {
                let around = symbolic.around_front(id as u32);
                factor.index.extend(around.iter().filter(|place| free[**place as usize]));
                factor.eliminate(symbolic, entries, free, &mut work, [start, pivots, left])?;
                left = usize::from(factor.index.len() - start > pivots);
            }
            if let Some(parent) = front.parent {
                waiting[parent as usize] += left;
            }
        }
        Ok(factor)
    }

    /// Gathers one front, eliminates its nodes, and leaves the rest on the stack.
    fn eliminate(
        &mut self,
        symbolic: &Symbolic,
        entries: &Entries,
        free: &[bool],
        work: &mut Work,
        [start, pivots, waiting]: [usize; 3],
    ) -> Result<(), NotPositive> {
        let nodes = &self.index[start..];
        let size = nodes.len();
        work.gather(symbolic, entries, free, nodes, pivots);
        work.take_up(&self.index, size, waiting);
        if !dense::eliminate(&mut work.matrix, size, pivots, &mut work.packed) {
            return Err(NotPositive);
        }
        let values = self.values.len();
        self.values.resize(values + size * pivots, 0.0);
        let rows = &mut self.values[values..];
        for (at, column) in work.matrix.chunks_exact(size).take(pivots).enumerate() {
            for (row, value) in column.iter().enumerate().skip(at) {
                rows[row * pivots + at] = *value;
            }
        }
        self.fronts.push(Columns { index: start, pivots, size, values });
        if size > pivots {
            work.stack.push(&work.matrix, size, pivots, start + pivots);
        }
        Ok(())
    }

    /// How many numbers the factor has.
    #[cfg(test)]
    pub(crate) fn len(&self) -> usize {
        self.values.len()
    }

    /// Solves with the factor: `vectors` has for each place a row with one number for each
    /// vector, and becomes the inverse of the factor times it.
    pub(crate) fn forward(&self, vectors: &mut [f64], width: usize) {
        let mut block = Vec::new();
        for columns in &self.fronts {
            let (nodes, rows) = self.parts(columns);
            let (own, around) = nodes.split_at(columns.pivots);
            block.clear();
            for (at, node) in own.iter().enumerate() {
                let start = *node as usize * width;
                let row = &mut vectors[start..start + width];
                let factors = &rows[at * columns.pivots..(at + 1) * columns.pivots];
                dense::subtract_rows(row, &factors[..at], &block);
                let inverse = factors[at].recip();
                row.iter_mut().for_each(|value| *value *= inverse);
                block.extend_from_slice(row);
            }
            let rows = rows[columns.pivots * columns.pivots..].chunks_exact(columns.pivots);
            for (node, factors) in around.iter().zip(rows) {
                let start = *node as usize * width;
                dense::subtract_rows(&mut vectors[start..start + width], factors, &block);
            }
        }
    }

    /// Solves with the factor's transpose, as [`Self::forward`].
    pub(crate) fn backward(&self, vectors: &mut [f64], width: usize) {
        for columns in self.fronts.iter().rev() {
            let (nodes, rows) = self.parts(columns);
            let pivots = columns.pivots;
            for vector in 0..width {
                let at = |node: u32| node as usize * width + vector;
                let mut own: Vec<f64> =
                    nodes[..pivots].iter().map(|node| vectors[at(*node)]).collect();
                for (row, node) in nodes.iter().enumerate().rev() {
                    let known = if row < pivots {
                        own[row] /= rows[row * pivots + row];
                        own[row]
                    } else {
                        vectors[at(*node)]
                    };
                    let factors = &rows[row * pivots..row * pivots + row.min(pivots)];
                    for (value, factor) in own.iter_mut().zip(factors) {
                        *value -= factor * known;
                    }
                }
                for (node, value) in nodes[..pivots].iter().zip(own) {
                    vectors[at(*node)] = value;
                }
            }
        }
    }

    fn parts(&self, columns: &Columns) -> (&[u32], &[f64]) {
        let nodes = &self.index[columns.index..columns.index + columns.size];
        let end = columns.values + columns.size * columns.pivots;
        (nodes, &self.values[columns.values..end])
    }
}

/// Room for the front at work.
struct Work {
    /// For each place the row in the front.
    local: Vec<u32>,
    /// The front, by columns; the lower half.
    matrix: Vec<f64>,
    packed: Vec<[f64; 4]>,
    stack: Stack,
}

impl Work {
    /// Begins a front with the entries of the nodes that are eliminated in it.
    fn gather(
        &mut self,
        symbolic: &Symbolic,
        entries: &Entries,
        free: &[bool],
        nodes: &[u32],
        pivots: usize,
    ) {
        let size = nodes.len();
        for (row, place) in nodes.iter().enumerate() {
            self.local[*place as usize] = row as u32;
        }
        self.matrix.clear();
        self.matrix.resize(size * size, 0.0);
        for (at, place) in nodes[..pivots].iter().enumerate() {
            let place = *place as usize;
            let column = &mut self.matrix[at * size..(at + 1) * size];
            column[at] = entries.diagonal[place];
            let own = symbolic.starts[place] as usize..symbolic.starts[place + 1] as usize;
            for (row, value) in symbolic.below[own.clone()].iter().zip(&entries.below[own]) {
                if free[*row as usize] {
                    column[self.local[*row as usize] as usize] = *value;
                }
            }
        }
    }

    /// Adds what is left of the last `waiting` parts on the stack.
    fn take_up(&mut self, index: &[u32], size: usize, waiting: usize) {
        let mut rows: Vec<u32> = Vec::new();
        for _ in 0..waiting {
            let (start, count, values) =
                self.stack.parts.pop().expect("every part that waits is on the stack");
            let nodes = &index[start..start + count];
            rows.clear();
            rows.extend(nodes.iter().map(|place| self.local[*place as usize]));
            let mut from = values;
            for at in 0..count {
                let own = &self.stack.values[from..from + count - at];
                from += count - at;
                let column = rows[at] as usize * size;
                let column = &mut self.matrix[column..column + size];
                for (row, value) in rows[at..].iter().zip(own) {
                    column[*row as usize] += value;
                }
            }
            self.stack.values.truncate(values);
        }
    }
}

impl Stack {
    /// Puts what is left of a front on the stack, the lower half by columns.
    fn push(&mut self, matrix: &[f64], size: usize, pivots: usize, index: usize) {
        self.parts.push((index, size - pivots, self.values.len()));
        for (at, column) in matrix.chunks_exact(size).enumerate().skip(pivots) {
            self.values.extend_from_slice(&column[at..]);
        }
    }
}
