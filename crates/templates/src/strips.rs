//! Wall strips: the stretches of seam between two junctions.

use cushion::{Chain, CompartmentIx, Edge, Length, Name, NodeIx, Pattern};

/// A stretch of one seam between two junctions, with the same compartments at its hands throughout.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// Its number, from 1.
    pub number: usize,
    /// The seam.
    pub seam: Name,
    /// The junctions that it runs from and to, by their numbers from 1; none of a closed way.
    pub ends: Option<[usize; 2]>,
    /// The compartment to the left hand going along; always there.
    pub left: Option<CompartmentIx>,
    /// The compartment to the right hand; none outside.
    pub right: Option<CompartmentIx>,
    /// Its course, in the pattern's frame.
    pub chain: Chain,
}

impl Strip {
    /// Its length.
    #[must_use]
    pub fn length(&self) -> Length {
        Length::from_mm(self.chain.length())
    }

    /// Whether it is a part of the outer seam.
    #[must_use]
    pub fn is_outer(&self) -> bool {
        self.right.is_none()
    }
}

/// Returns all strips, in the order in which the layout draws their seams.
///
/// A junction is a node at which a wall ends or begins: where seams meet, and not where one only
/// runs through a named point.
#[must_use]
pub fn strips(pattern: &Pattern) -> Vec<Strip> {
    let edges = pattern.edges();
    let junctions = junctions(pattern);
    let mut taken = vec![false; edges.len()];
    let mut found = Vec::new();
    let at_junction = |node: NodeIx| junctions[node.index()].is_some();
    // Ways that begin at a junction first; what is left then are closed ways without one.
    for only_from_junctions in [true, false] {
        for first in 0..edges.len() {
            if taken[first] {
                continue;
            }
            let forward = at_junction(edges[first].from);
            if only_from_junctions && !forward && !at_junction(edges[first].to) {
                continue;
            }
            let forward = forward || !only_from_junctions;
            let way = way(edges, (first, forward), &mut taken, &at_junction);
            found.push(strip(pattern, &way, &junctions, found.len() + 1));
        }
    }
    found
}

/// The number of each node that is a junction, from 1.
fn junctions(pattern: &Pattern) -> Vec<Option<usize>> {
    let mut ends: Vec<Vec<&Edge>> = vec![Vec::new(); pattern.nodes().len()];
    for edge in pattern.edges() {
        ends[edge.from.index()].push(edge);
        ends[edge.to.index()].push(edge);
    }
    let runs_through = |own: &[&Edge]| match own {
        [one, other] => one.seam == other.seam,
        _ => own.is_empty(),
    };
    let mut count = 0;
    let number = |own: &Vec<&Edge>| {
        (!runs_through(own)).then(|| {
            count += 1;
            count
        })
    };
    ends.iter().map(number).collect()
}

/// Follows a side of an edge to the next junction, or around.
fn way(
    edges: &[Edge],
    first: (usize, bool),
    taken: &mut [bool],
    at_junction: &dyn Fn(NodeIx) -> bool,
) -> Vec<(usize, bool)> {
    let mut way = vec![first];
    taken[first.0] = true;
    loop {
        let (edge, forward) = way[way.len() - 1];
        let node = if forward { edges[edge].to } else { edges[edge].from };
        if at_junction(node) {
            return way;
        }
        let next = (0..edges.len())
            .find(|own| !taken[*own] && (edges[*own].from == node || edges[*own].to == node));
        let Some(next) = next else { return way };
        taken[next] = true;
        way.push((next, edges[next].from == node));
    }
}

fn strip(
    pattern: &Pattern,
    way: &[(usize, bool)],
    junctions: &[Option<usize>],
    number: usize,
) -> Strip {
    let edges = pattern.edges();
    let chain = |&(edge, forward): &(usize, bool)| {
        let chain = &edges[edge].chain;
        if forward { chain.clone() } else { chain.reversed() }
    };
    let all = way[1..].iter().map(chain).fold(chain(&way[0]), Chain::joined);
    let ((first, forward), (last, onward)) = (way[0], way[way.len() - 1]);
    let from = if forward { edges[first].from } else { edges[first].to };
    let to = if onward { edges[last].to } else { edges[last].from };
    let ends = junctions[from.index()].zip(junctions[to.index()]).map(|(a, b)| [a, b]);
    let edge = &edges[first];
    let (left, right) = if forward { (edge.left, edge.right) } else { (edge.right, edge.left) };
    let seam = edge.seam.clone();
    if left.is_none() {
        // Outside is to the right hand, so that a strip is seen from there.
        let ends = ends.map(|[a, b]| [b, a]);
        return Strip { number, seam, ends, left: right, right: None, chain: all.reversed() };
    }
    Strip { number, seam, ends, left, right, chain: all }
}
