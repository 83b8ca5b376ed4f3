//! The order of elimination: nested dissection by the places of the nodes.

use super::graph::Graph;

/// Parts of at most so many nodes are not cut further: smaller ones cost more in bookkeeping
/// than they save in numbers, larger ones waste work on zeros.
const LEAF: usize = 24;
/// Where along a part the cut is tried, as shares of its nodes. Off the middle a shorter line
/// may be found; farther off, the halves become too unequal.
const CUTS: [f64; 3] = [0.5, 0.44, 0.56];
/// Smaller parts are cut in the middle only: there are many of them, and less to gain in each.
const WORTH_TRYING: usize = 400;
/// A part is cut across its longer side only, unless it is nearly as wide as long.
const SQUARE: f64 = 1.3;

/// Nodes that are eliminated together.
#[derive(Clone, Debug)]
pub(super) struct Block {
    /// Its nodes.
    pub(super) nodes: Vec<u32>,
    /// The block into which what is left of it goes: the cut around it.
    pub(super) parent: Option<u32>,
}

/// Returns all blocks, each after those that it cuts apart.
pub(super) fn dissect(graph: &Graph, places: &[[f64; 2]]) -> Vec<Block> {
    let mut cutter = Cutter { graph, places, blocks: Vec::new(), label: vec![0; graph.len()] };
    let mut nodes: Vec<u32> = (0..graph.len() as u32).collect();
    cutter.cut(&mut nodes);
    cutter.blocks
}

struct Cutter<'a> {
    graph: &'a Graph,
    places: &'a [[f64; 2]],
    blocks: Vec<Block>,
    /// While a cut is tried: 1 on the near side of it, 2 on the far side; 0 outside the part.
    label: Vec<u8>,
}

/// A way to cut a part: the coordinate at which, and whether the line's nodes come from the far
/// side.
#[derive(Clone, Copy)]
struct Cut {
    axis: usize,
    at: f64,
    from_far: bool,
    cost: f64,
}

impl Cutter<'_> {
    /// Cuts a part up; returns its blocks that nothing else cuts apart.
    fn cut(&mut self, nodes: &mut [u32]) -> Vec<u32> {
        let best = if nodes.len() > LEAF { self.best_cut(nodes) } else { None };
        let Some(cut) = best else { return vec![self.push(nodes.to_vec())] };
        let (mut near, mut far, mut line) = (Vec::new(), Vec::new(), Vec::new());
        self.mark(nodes, cut.axis, cut.at);
        for &node in nodes.iter() {
            let side = self.label[node as usize];
            if self.is_on_line(node, cut.from_far) {
                line.push(node);
            } else if side == 1 {
                near.push(node);
            } else {
                far.push(node);
            }
        }
        self.unmark(nodes);
        let mut tops = self.cut(&mut near);
        tops.extend(self.cut(&mut far));
        if line.is_empty() {
            return tops;
        }
        let block = self.push(line);
        for top in tops {
            self.blocks[top as usize].parent = Some(block);
        }
        vec![block]
    }

    fn push(&mut self, nodes: Vec<u32>) -> u32 {
        self.blocks.push(Block { nodes, parent: None });
        self.blocks.len() as u32 - 1
    }

    fn best_cut(&mut self, nodes: &mut [u32]) -> Option<Cut> {
        let extent = [0, 1].map(|axis| {
            let along = nodes.iter().map(|&node| self.places[node as usize][axis]);
            let (low, high) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
                (low.min(at), high.max(at))
            });
            high - low
        });
        let mut best: Option<Cut> = None;
        for axis in [0, 1] {
            if extent[axis] * SQUARE < extent[1 - axis] {
                continue;
            }
            let tries = if nodes.len() < WORTH_TRYING { 1 } else { CUTS.len() };
            for share in &CUTS[..tries] {
                let middle = (nodes.len() as f64 * share) as usize;
                let places = self.places;
                let by_axis = |a: &u32, b: &u32| {
                    places[*a as usize][axis].total_cmp(&places[*b as usize][axis])
                };
                let (_, &mut node, _) = nodes.select_nth_unstable_by(middle, by_axis);
                let at = self.places[node as usize][axis];
                for cut in self.try_cut(nodes, axis, at) {
                    if best.is_none_or(|best| cut.cost < best.cost) {
                        best = Some(cut);
                    }
                }
            }
        }
        best
    }

    /// The two cuts at a coordinate, with the line's nodes from either side; none where one side
    /// would be empty.
    fn try_cut(&mut self, nodes: &[u32], axis: usize, at: f64) -> Vec<Cut> {
        self.mark(nodes, axis, at);
        let near = nodes.iter().filter(|&&node| self.label[node as usize] == 1).count();
        let sides = [(false, near), (true, nodes.len() - near)];
        let cuts = sides
            .into_iter()
            .filter_map(|(from_far, side)| {
                let line = nodes.iter().filter(|&&node| self.is_on_line(node, from_far)).count();
                let (own, other) = (side - line, nodes.len() - side);
                let bias = own.abs_diff(other) as f64 / nodes.len() as f64;
                // Work goes with the cube of the line; unequal halves make the next lines longer.
                let cost = line as f64 * (1.0 + 0.5 * bias);
                (own > 0 && other > 0).then_some(Cut { axis, at, from_far, cost })
            })
            .collect();
        self.unmark(nodes);
        cuts
    }

    fn mark(&mut self, nodes: &[u32], axis: usize, at: f64) {
        for &node in nodes {
            self.label[node as usize] = 1 + u8::from(self.places[node as usize][axis] >= at);
        }
    }

    fn unmark(&mut self, nodes: &[u32]) {
        for &node in nodes {
            self.label[node as usize] = 0;
        }
    }

    /// Whether a node touches the other side.
    fn is_on_line(&self, node: u32, from_far: bool) -> bool {
        let (own, other) = if from_far { (2, 1) } else { (1, 2) };
        let beside = |to: &u32| self.label[*to as usize] == other;
        self.label[node as usize] == own && self.graph.of(node).iter().any(beside)
    }
}
