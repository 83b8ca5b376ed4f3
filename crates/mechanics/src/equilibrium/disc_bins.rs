//! Nodes by squares as wide as the disc over which pressure is averaged, so that those of a disc are
//! found without looking at all.

use super::results::DISC;

/// The nodes of a mesh by squares.
#[derive(Clone, Debug)]
pub(super) struct DiscBins {
    /// Column and row of the first square.
    first: [i64; 2],
    rows: usize,
    /// Where the nodes of each square begin, column by column, and where the last end.
    starts: Vec<u32>,
    /// Nodes by square, in rising order in each.
    nodes: Vec<u32>,
}

/// Column and row of the square that a place is in.
fn square([x, y]: [f64; 2]) -> [i64; 2] {
    [(x / DISC).floor() as i64, (y / DISC).floor() as i64]
}

impl DiscBins {
    /// Sorts places into squares.
    pub(super) fn new(places: &[[f64; 2]]) -> Self {
        let squares: Vec<[i64; 2]> = places.iter().map(|place| square(*place)).collect();
        let ends = |axis: usize| {
            let all = squares.iter().map(|square| square[axis]);
            (all.clone().min().unwrap_or(0), all.max().unwrap_or(0))
        };
        let ((left, right), (rear, front)) = (ends(0), ends(1));
        let (columns, rows) = ((right - left + 1) as usize, (front - rear + 1) as usize);
        let mut bins = Self {
            first: [left, rear],
            rows,
            starts: vec![0; columns * rows + 1],
            nodes: Vec::new(),
        };
        let own: Vec<usize> = squares.iter().filter_map(|square| bins.bin(*square)).collect();
        own.iter().for_each(|bin| bins.starts[bin + 1] += 1);
        (1..bins.starts.len()).for_each(|at| bins.starts[at] += bins.starts[at - 1]);
        let mut order: Vec<u32> = (0..places.len() as u32).collect();
        order.sort_by_key(|node| own[*node as usize]);
        bins.nodes = order;
        bins
    }

    /// The number of a square; none outside.
    fn bin(&self, [column, row]: [i64; 2]) -> Option<usize> {
        let column = usize::try_from(column - self.first[0]).ok()?;
        let row = usize::try_from(row - self.first[1]).ok().filter(|row| *row < self.rows)?;
        Some(column * self.rows + row).filter(|bin| bin + 1 < self.starts.len())
    }

    /// The squares of a place and around it: all that a disc about it can touch.
    fn around(&self, place: [f64; 2]) -> impl Iterator<Item = usize> {
        let [column, row] = square(place);
        let around = (column - 1..=column + 1)
            .flat_map(move |column| (row - 1..=row + 1).map(move |row| [column, row]));
        around.filter_map(|square| self.bin(square))
    }

    fn nodes_in(&self, bin: usize) -> impl Iterator<Item = usize> {
        let own = self.starts[bin] as usize..self.starts[bin + 1] as usize;
        self.nodes[own].iter().map(|node| *node as usize)
    }

    /// The nodes of these squares: all that a disc about the place can have.
    pub(super) fn near(&self, place: [f64; 2]) -> impl Iterator<Item = usize> {
        self.around(place).flat_map(|bin| self.nodes_in(bin))
    }

    /// By square the greatest of values of the nodes that a disc about a place in it can have.
    pub(super) fn greatest_near(&self, values: impl Fn(usize) -> f64) -> GreatestNear<'_> {
        let of = |bin| self.nodes_in(bin).map(&values).fold(f64::NEG_INFINITY, f64::max);
        GreatestNear { bins: self, of_squares: (0..self.starts.len() - 1).map(of).collect() }
    }
}

/// The greatest values by squares.
pub(super) struct GreatestNear<'a> {
    bins: &'a DiscBins,
    of_squares: Vec<f64>,
}

impl GreatestNear<'_> {
    /// No value of a disc about the place is greater.
    pub(super) fn at(&self, place: [f64; 2]) -> f64 {
        self.bins.around(place).map(|bin| self.of_squares[bin]).fold(f64::NEG_INFINITY, f64::max)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_has_the_nodes_that_looking_at_all_finds() {
        let places: Vec<[f64; 2]> = (0..600)
            .map(|at| [f64::from(at % 29) * 7.3e-3 - 0.1, f64::from(at / 29) * 8.1e-3 - 0.02])
            .collect();
        let bins = DiscBins::new(&places);
        let inside = |node: usize, [x, y]: [f64; 2]| {
            (places[node][0] - x).powi(2) + (places[node][1] - y).powi(2) <= DISC * DISC
        };
        // Also about places beyond the outermost nodes.
        for at in places.iter().copied().chain([[-0.115, -0.03], [0.2, 0.3]]) {
            let mut near: Vec<usize> = bins.near(at).filter(|node| inside(*node, at)).collect();
            near.sort_unstable();
            let all: Vec<usize> = (0..places.len()).filter(|node| inside(*node, at)).collect();
            assert_eq!(near, all);
            let value = |node: usize| (node * 7 % 601) as f64;
            let most = near.iter().map(|node| value(*node)).fold(f64::NEG_INFINITY, f64::max);
            assert!(bins.greatest_near(value).at(at) >= most);
        }
    }
}
