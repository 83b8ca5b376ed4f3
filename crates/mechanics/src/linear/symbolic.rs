//! What can be known of a factorisation before the numbers: which entries, in which order.

use super::dissection;
use super::factor::Room;
use super::graph::Graph;
use super::pool::Pooled;

/// The nodes of one block and those around it, by their places in the order of elimination.
#[derive(Clone, Debug)]
pub(super) struct Front {
    /// The first node that is eliminated here, and the one after the last.
    pub(super) pivots: [u32; 2],
    /// Where the nodes around the block begin and end in [`Symbolic::around`].
    pub(super) around: [u32; 2],
    /// The front that takes up what is left of this one.
    pub(super) parent: Option<u32>,
}

/// The order of elimination of a mesh's nodes, and where the entries of its matrices are.
///
/// Fronts come in an order in which each follows all that it takes up.
#[derive(Clone, Debug)]
pub(crate) struct Symbolic {
    pub(super) fronts: Vec<Front>,
    /// Nodes around the blocks, as places, ascending for each front.
    pub(super) around: Vec<u32>,
    /// Where the entries below the diagonal begin for each place.
    pub(super) starts: Vec<u32>,
    /// Their rows, as places, ascending for each column.
    pub(super) below: Vec<u32>,
    /// For each node its place in the order.
    place: Vec<u32>,
    /// How many numbers a factor has without a border, where all nodes are free.
    pub(super) numbers: usize,
    /// Memory of factors that are gone.
    pub(super) room: Room,
}

/// The numbers of a matrix: those on the diagonal and those below it, in the places that
/// [`Symbolic`] has for them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Entries {
    /// By place.
    pub(crate) diagonal: Vec<f64>,
    /// By [`Symbolic::entry`].
    pub(crate) below: Vec<f64>,
}

/// Which nodes are free, the others being left out of a matrix.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Free {
    /// By place: how many free ones come before, or [`Free::HELD`].
    rows: Vec<u32>,
    /// How many are free.
    pub(crate) count: usize,
}

impl Free {
    const HELD: u32 = u32::MAX;

    /// Whether the node at a place is free.
    #[inline]
    pub(crate) fn has(&self, place: u32) -> bool {
        self.rows[place as usize] != Self::HELD
    }

    /// The number of the node at a place among the free ones; far beyond all where it is not free.
    #[inline]
    pub(crate) fn row(&self, place: usize) -> usize {
        self.rows[place] as usize
    }
}

impl Symbolic {
    /// Finds an order for the nodes of a mesh in which few numbers arise.
    pub(crate) fn new(graph: &Graph, places: &[[f64; 2]]) -> Self {
        let blocks = dissection::dissect(graph, places);
        let mut place = vec![0u32; graph.len()];
        let order: Vec<u32> = blocks.iter().flat_map(|block| &block.nodes).copied().collect();
        for (at, node) in order.iter().enumerate() {
            place[*node as usize] = at as u32;
        }
        let (mut starts, mut below) = (vec![0u32], Vec::new());
        for (at, &node) in order.iter().enumerate() {
            let first = below.len();
            let later = graph.of(node).iter().map(|to| place[*to as usize]);
            below.extend(later.filter(|row| *row > at as u32));
            below[first..].sort_unstable();
            starts.push(below.len() as u32);
        }
        let (fronts, around) = (Vec::new(), Vec::new());
        let room = Room::default();
        let mut symbolic = Self { fronts, around, starts, below, place, numbers: 0, room };
        symbolic.find_fronts(&blocks);
        symbolic
    }

    fn find_fronts(&mut self, blocks: &[dissection::Block]) {
        let mut children: Vec<Vec<u32>> = vec![Vec::new(); blocks.len()];
        let mut seen = vec![u32::MAX; self.place.len()];
        let mut first = 0;
        for (id, block) in blocks.iter().enumerate() {
            if let Some(parent) = block.parent {
                children[parent as usize].push(id as u32);
            }
            let end = first + block.nodes.len() as u32;
            let mut around: Vec<u32> = Vec::new();
            let mut add = |row: u32| {
                if row >= end && seen[row as usize] != id as u32 {
                    seen[row as usize] = id as u32;
                    around.push(row);
                }
            };
            let own = self.starts[first as usize] as usize..self.starts[end as usize] as usize;
            self.below[own].iter().copied().for_each(&mut add);
            for child in &children[id] {
                self.around_front(*child).iter().copied().for_each(&mut add);
            }
            around.sort_unstable();
            self.numbers += block.nodes.len() * (block.nodes.len() + around.len());
            let start = self.around.len() as u32;
            self.around.extend(around);
            let around = [start, self.around.len() as u32];
            self.fronts.push(Front { pivots: [first, end], around, parent: block.parent });
            first = end;
        }
    }

    pub(super) fn around_front(&self, front: u32) -> &[u32] {
        let [start, end] = self.fronts[front as usize].around;
        &self.around[start as usize..end as usize]
    }

    /// How many nodes there are.
    pub(crate) fn len(&self) -> usize {
        self.place.len()
    }

    /// The place of a node in the order of elimination.
    pub(crate) fn place(&self, node: u32) -> usize {
        self.place[node as usize] as usize
    }

    /// The place of the entry of two nodes that are joined, in [`Entries::below`].
    ///
    /// # Panics
    ///
    /// Panics where the nodes are not joined.
    pub(crate) fn entry(&self, one: u32, other: u32) -> usize {
        let (a, b) = (self.place[one as usize], self.place[other as usize]);
        let (column, row) = (a.min(b) as usize, a.max(b));
        let start = self.starts[column] as usize;
        let own = &self.below[start..self.starts[column + 1] as usize];
        start + own.binary_search(&row).expect("the nodes are joined")
    }

    /// Numbers the nodes that are free, in the order of elimination.
    pub(crate) fn free(&self, is_free: impl Fn(usize) -> bool) -> Free {
        let mut rows = vec![Free::HELD; self.len()];
        for (node, place) in self.place.iter().enumerate().filter(|(node, _)| is_free(*node)) {
            rows[*place as usize] = node as u32;
        }
        let mut count = 0;
        for row in rows.iter_mut().filter(|row| **row != Free::HELD) {
            *row = count;
            count += 1;
        }
        Free { rows, count: count as usize }
    }

    /// Scales the rows and the columns of a matrix, by node.
    pub(crate) fn scale(&self, entries: &mut Entries, by_node: &[f64]) {
        let mut scale = vec![1.0; self.len()];
        for (place, by) in self.place.iter().zip(by_node) {
            scale[*place as usize] = *by;
        }
        for (column, own) in scale.iter().enumerate() {
            entries.diagonal[column] *= own * own;
            let range = self.starts[column] as usize..self.starts[column + 1] as usize;
            let rows = self.below[range.clone()].iter();
            for (value, row) in entries.below[range].iter_mut().zip(rows) {
                *value *= own * scale[*row as usize];
            }
        }
    }

    /// The vectors of a border, all zero: for so many free nodes a row of so many numbers each.
    pub(crate) fn zero_border(&self, free: usize, width: usize) -> Pooled<Vec<f64>> {
        let mut vectors = self.room.borders.take();
        vectors.clear();
        vectors.resize(free * width, 0.0);
        vectors
    }

    /// Entries that are all zero.
    pub(crate) fn zeros(&self) -> Entries {
        Entries { diagonal: vec![0.0; self.len()], below: vec![0.0; self.below.len()] }
    }
}
