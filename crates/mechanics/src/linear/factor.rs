//! The Cholesky factor of the free part of a matrix with a dense border, front by front, and
//! solving with it.

use crate::numerics::wide;

use super::dense;
use super::pool::{Pool, Pooled};
use super::symbolic::{Entries, Free, Symbolic};

/// For how many columns of a border a node gets room at once, since to make more room copies all: two
/// of its compartment, three of the pose, a load, and further ones where compartments meet.
const USUAL_BORDER: usize = 8;

/// The Cholesky factor L of the rows and columns of the free nodes, and Y = L^-1 V for the columns
/// V of a border.
///
/// Nodes go by the places of [`Symbolic`], the columns of the border by the places after those.
/// Each front has the columns alone that have numbers in it or below it, as it has nodes around
/// it: most belong to one compartment.
#[derive(Clone, Debug, Default)]
pub(crate) struct Factor {
    fronts: Vec<Columns>,
    /// The rows of each front, as places: free nodes eliminated there, free nodes around, columns
    /// of the border.
    index: Vec<u32>,
    /// For each front the factor's columns of the nodes eliminated there, each with all rows of the
    /// front; what stands above the diagonal is not read.
    values: Pooled<Vec<f64>>,
    /// Y'Y by rows.
    products: Vec<f64>,
}

/// The columns of the factor that one front yields.
#[derive(Clone, Copy, Debug)]
struct Columns {
    /// Where its rows begin in `index`.
    index: usize,
    /// How many nodes are eliminated.
    pivots: usize,
    /// How many rows there are.
    size: usize,
    /// Where its numbers begin in `values`.
    values: usize,
}

/// A matrix that is not positive definite.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct NotPositive;

/// What is factored.
#[derive(Clone, Copy)]
pub(crate) struct System<'a> {
    pub(crate) symbolic: &'a Symbolic,
    pub(crate) entries: &'a Entries,
    pub(crate) free: &'a Free,
    /// V: for each free node, in order of place, a row of `width` numbers.
    pub(crate) border: &'a [f64],
    /// How many columns the border has.
    pub(crate) width: usize,
}

impl Factor {
    /// Factors a matrix.
    ///
    /// # Errors
    ///
    /// Returns an error where the free part is not positive definite.
    pub(crate) fn new(system: &System<'_>) -> Result<Self, NotPositive> {
        let symbolic = system.symbolic;
        let mut factor = Self { values: symbolic.room.values.take(), ..Self::default() };
        factor.values.clear();
        factor.values.reserve(symbolic.numbers + USUAL_BORDER * symbolic.len());
        let mut work = symbolic.room.work.take();
        work.begin(symbolic.len() + system.width);
        // How many parts on the stack wait for each front.
        let mut waiting = vec![0usize; symbolic.fronts.len()];
        for (id, front) in symbolic.fronts.iter().enumerate() {
            let start = factor.index.len();
            let [first, end] = front.pivots;
            let is_free = |place: &u32| system.free.has(*place);
            factor.index.extend((first..end).filter(is_free));
            let pivots = factor.index.len() - start;
            let mut left = waiting[id];
            if pivots > 0 {
                let around = symbolic.around_front(id as u32);
                factor.index.extend(around.iter().copied().filter(is_free));
                factor.add_border(system, &work.stack, [start, pivots, left]);
                factor.eliminate(system, &mut work, [start, pivots, left])?;
                left = usize::from(factor.index.len() - start > pivots);
            }
            if let Some(parent) = front.parent {
                waiting[parent as usize] += left;
            }
        }
        factor.products = work.stack.products(&factor.index, symbolic.len(), system.width);
        Ok(factor)
    }

    /// Adds the columns of the border to a front that it or the parts which it takes up have.
    fn add_border(
        &mut self,
        system: &System<'_>,
        stack: &Stack,
        [start, pivots, waiting]: [usize; 3],
    ) {
        let (nodes, width) = (system.symbolic.len(), system.width);
        let mut has = vec![false; width];
        for place in &self.index[start..start + pivots] {
            let row = &system.border[system.free.row(*place as usize) * width..][..width];
            has.iter_mut().zip(row).for_each(|(has, value)| *has |= *value != 0.0);
        }
        for (from, count, _) in &stack.parts[stack.parts.len() - waiting..] {
            let columns = self.index[*from..from + count].iter().rev();
            for place in columns.take_while(|place| **place as usize >= nodes) {
                has[*place as usize - nodes] = true;
            }
        }
        let columns = (0..width).filter(|column| has[*column]);
        self.index.extend(columns.map(|column| (nodes + column) as u32));
    }

    /// Gathers one front, eliminates its nodes, and leaves the rest on the stack.
    fn eliminate(
        &mut self,
        system: &System<'_>,
        work: &mut Work,
        [start, pivots, waiting]: [usize; 3],
    ) -> Result<(), NotPositive> {
        let rows = &self.index[start..];
        let size = rows.len();
        work.gather(system, rows, pivots);
        work.take_up(&self.index, size, waiting);
        if !dense::eliminate(&mut work.matrix[..size * size], size, pivots, &mut work.packed) {
            return Err(NotPositive);
        }
        let values = self.values.len();
        self.values.extend_from_slice(&work.matrix[..size * pivots]);
        self.fronts.push(Columns { index: start, pivots, size, values });
        if size > pivots {
            work.stack.push(&work.matrix[..size * size], size, pivots, start + pivots);
        }
        Ok(())
    }

    /// How many numbers the factor has.
    #[cfg(test)]
    pub(crate) fn len(&self) -> usize {
        self.values.len()
    }

    /// Y'Y by rows.
    pub(crate) fn products(&self) -> &[f64] {
        &self.products
    }

    /// Solves `L z = v`: nodes and then the border's columns have a number each in `vector`, of
    /// which the nodes' become z, and the border's `v - Y'z`.
    pub(crate) fn forward(&self, vector: &mut [f64]) {
        wide(
            #[inline(always)]
            || self.forward_by_fronts(vector),
        );
    }

    #[inline(always)]
    fn forward_by_fronts(&self, vector: &mut [f64]) {
        let mut own = Vec::new();
        for front in &self.fronts {
            let (places, columns) = self.parts(front);
            own.clear();
            own.extend(places.iter().map(|place| vector[*place as usize]));
            for (at, column) in columns.chunks_exact(front.size).enumerate() {
                let known = own[at] / column[at];
                own[at] = known;
                let below = own[at + 1..].iter_mut().zip(&column[at + 1..]);
                below.for_each(|(value, factor)| *value -= factor * known);
            }
            for (place, value) in places.iter().zip(&own) {
                vector[*place as usize] = *value;
            }
        }
    }

    /// Solves `L'y = z - Y t`: nodes have z and then the border's columns t in `vector`, and the
    /// nodes' become y.
    pub(crate) fn backward(&self, vector: &mut [f64]) {
        wide(
            #[inline(always)]
            || self.backward_by_fronts(vector),
        );
    }

    #[inline(always)]
    fn backward_by_fronts(&self, vector: &mut [f64]) {
        let mut own = Vec::new();
        for front in self.fronts.iter().rev() {
            let (places, columns) = self.parts(front);
            own.clear();
            own.extend(places.iter().map(|place| vector[*place as usize]));
            for (at, column) in columns.chunks_exact(front.size).enumerate().rev() {
                let known = dense::dot(&column[at + 1..], &own[at + 1..]);
                own[at] = (own[at] - known) / column[at];
            }
            for (place, value) in places[..front.pivots].iter().zip(&own) {
                vector[*place as usize] = *value;
            }
        }
    }

    /// The rows of a front, as places, and its columns.
    fn parts(&self, front: &Columns) -> (&[u32], &[f64]) {
        let places = &self.index[front.index..front.index + front.size];
        let end = front.values + front.size * front.pivots;
        (places, &self.values[front.values..end])
    }
}

/// Memory of factors of one matrix.
#[derive(Clone, Debug, Default)]
pub(super) struct Room {
    work: Pool<Work>,
    values: Pool<Vec<f64>>,
    pub(super) borders: Pool<Vec<f64>>,
}

/// What is left of fronts that wait for the one that takes them up.
#[derive(Debug, Default)]
struct Stack {
    /// For each: where its rows begin in the factor's index, how many, where its numbers begin.
    parts: Vec<(usize, usize, usize)>,
    values: Vec<f64>,
}

impl Stack {
    /// Puts what is left of a front on the stack, the lower half by columns.
    fn push(&mut self, matrix: &[f64], size: usize, pivots: usize, index: usize) {
        self.parts.push((index, size - pivots, self.values.len()));
        for (at, column) in matrix.chunks_exact(size).enumerate().skip(pivots) {
            self.values.extend_from_slice(&column[at..]);
        }
    }

    /// The products of the border's columns, by rows. What still waits when all nodes are
    /// eliminated is minus their parts.
    fn products(&self, index: &[u32], nodes: usize, width: usize) -> Vec<f64> {
        let mut products = vec![0.0; width * width];
        for (start, count, values) in &self.parts {
            let columns: Vec<usize> =
                index[*start..start + count].iter().map(|place| *place as usize - nodes).collect();
            let mut value = self.values[*values..].iter();
            for (at, row) in columns.iter().enumerate() {
                for (column, value) in columns[at..].iter().zip(value.by_ref()) {
                    products[row * width + column] -= value;
                    if row != column {
                        products[column * width + row] -= value;
                    }
                }
            }
        }
        products
    }
}

/// Room for the front at work.
#[derive(Debug, Default)]
struct Work {
    /// For each place the row in the front.
    local: Vec<u32>,
    /// The front, by columns; the lower half.
    matrix: Vec<f64>,
    /// Rows of the part that is taken up.
    rows: Vec<u32>,
    packed: Vec<[f64; 4]>,
    stack: Stack,
}

impl Work {
    /// Begins a matrix with so many places.
    fn begin(&mut self, places: usize) {
        self.local.resize(places, 0);
        self.stack.parts.clear();
        self.stack.values.clear();
    }

    /// Begins a front with the entries of the nodes that are eliminated in it.
    fn gather(&mut self, system: &System<'_>, rows: &[u32], pivots: usize) {
        let (symbolic, size) = (system.symbolic, rows.len());
        for (row, place) in rows.iter().enumerate() {
            self.local[*place as usize] = row as u32;
        }
        self.clear(size);
        let border = rows.partition_point(|place| (*place as usize) < symbolic.len());
        for (at, place) in rows[..pivots].iter().enumerate() {
            let place = *place as usize;
            let column = &mut self.matrix[at * size..(at + 1) * size];
            column[at] = system.entries.diagonal[place];
            let own = symbolic.starts[place] as usize..symbolic.starts[place + 1] as usize;
            for (row, value) in symbolic.below[own.clone()].iter().zip(&system.entries.below[own]) {
                if system.free.has(*row) {
                    column[self.local[*row as usize] as usize] = *value;
                }
            }
            let values = &system.border[system.free.row(place) * system.width..][..system.width];
            for (own, row) in column[border..].iter_mut().zip(&rows[border..]) {
                *own = values[*row as usize - symbolic.len()];
            }
        }
    }

    /// Makes the lower half of a front of so many rows zero; the upper half is never read.
    fn clear(&mut self, size: usize) {
        let count = size * size;
        self.matrix.resize(self.matrix.len().max(count), 0.0);
        let columns = self.matrix[..count].chunks_exact_mut(size).enumerate();
        columns.for_each(|(at, column)| column[at..].fill(0.0));
    }

    /// Adds what is left of the last `waiting` parts on the stack.
    fn take_up(&mut self, index: &[u32], size: usize, waiting: usize) {
        for _ in 0..waiting {
            let (start, count, values) =
                self.stack.parts.pop().expect("every part that waits is on the stack");
            let places = &index[start..start + count];
            self.rows.clear();
            self.rows.extend(places.iter().map(|place| self.local[*place as usize]));
            let mut from = values;
            for (at, column) in self.rows.iter().enumerate() {
                let own = &self.stack.values[from..from + count - at];
                from += count - at;
                let column = &mut self.matrix[*column as usize * size..][..size];
                for (row, value) in self.rows[at..].iter().zip(own) {
                    column[*row as usize] += value;
                }
            }
            self.stack.values.truncate(values);
        }
    }
}
