//! Moves: from what is in the cushion to what is planned, in the fewest handfuls.
//!
//! Compartments with too many and too few cells, and the spare bag for the rest, fall into groups
//! that are even in themselves; a group of k places needs k - 1 handfuls, so the most groups make
//! the fewest handfuls. Within a group, near places are served first and the bag last. A count
//! only ever moves towards its end, so that no compartment is emptied on the way.

use case::{Mirror, Move, Partners, Place};
use cushion::{CompartmentIx, Pattern};

use crate::image::answered_by_its_image;

/// Distance that stands for the spare bag: farther than any compartment, mm.
const BAG: f64 = 1e4;

/// Returns the handfuls from these counts to others, both in the pattern's order.
#[must_use]
pub fn moves(pattern: &Pattern, now: &[u32], wanted: &[u32]) -> Vec<Move> {
    let own = (now.to_vec(), wanted.to_vec());
    let image = |partners: &Partners| (partners.swapped(now), partners.swapped(wanted));
    match answered_by_its_image(pattern, &own, image) {
        None => handfuls(pattern, now, wanted),
        Some(partners) => {
            let (now, wanted) = image(&partners);
            handfuls(pattern, &now, &wanted).mirrored(&partners)
        }
    }
}

fn handfuls(pattern: &Pattern, now: &[u32], wanted: &[u32]) -> Vec<Move> {
    let mut heaps: Vec<Heap> = (pattern.indices().zip(now).zip(wanted))
        .filter(|((_, now), wanted)| now != wanted)
        .map(|((ix, now), wanted)| Heap {
            place: Place::Compartment(pattern[ix].number),
            at: Some(ix),
            surplus: i64::from(*now) - i64::from(*wanted),
        })
        .collect();
    let sum: i64 = heaps.iter().map(|heap| heap.surplus).sum();
    if sum != 0 {
        heaps.push(Heap { place: Place::Spare, at: None, surplus: -sum });
    }
    let groups = even_groups(&heaps);
    groups.into_iter().flat_map(|group| within(pattern, group)).collect()
}

/// A place with more cells than it is to have, or fewer.
#[derive(Clone, Copy, Debug)]
struct Heap {
    place: Place,
    at: Option<CompartmentIx>,
    surplus: i64,
}

/// The most compartments that are looked at in all their groupings: beyond, one group is taken.
const MOST_GROUPED: usize = 12;

/// Splits the heaps into as many groups as can be that are even in themselves.
fn even_groups(heaps: &[Heap]) -> Vec<Vec<Heap>> {
    let n = heaps.len();
    if n > MOST_GROUPED {
        return vec![heaps.to_vec()];
    }
    let all = 1usize << n;
    let sum = |set: usize| -> i64 {
        (0..n).filter(|at| set >> at & 1 == 1).map(|at| heaps[at].surplus).sum()
    };
    // The most groups that a set splits into, and the last group of one such splitting.
    let mut best = vec![(0u32, 0usize); all];
    for set in 1..all {
        if sum(set) != 0 {
            continue;
        }
        let lowest = set & set.wrapping_neg();
        let mut part = set;
        while part != 0 {
            if part & lowest != 0 && sum(part) == 0 {
                let groups = best[set ^ part].0 + 1;
                if groups > best[set].0 {
                    best[set] = (groups, part);
                }
            }
            part = (part - 1) & set;
        }
    }
    let mut groups = Vec::new();
    let mut left = all - 1;
    while left != 0 && best[left].1 != 0 {
        let part = best[left].1;
        groups.push((0..n).filter(|at| part >> at & 1 == 1).map(|at| heaps[at]).collect());
        left ^= part;
    }
    groups
}

/// The handfuls within a group: the nearest pair first, each making one of the two even.
fn within(pattern: &Pattern, mut group: Vec<Heap>) -> Vec<Move> {
    let distance = |a: &Heap, b: &Heap| match (a.at, b.at) {
        (Some(a), Some(b)) => pattern.centroid(a).distance(pattern.centroid(b)),
        _ => BAG,
    };
    let mut moves = Vec::new();
    loop {
        let pairs = (0..group.len()).flat_map(|a| (0..group.len()).map(move |b| (a, b)));
        let open = pairs.filter(|(a, b)| group[*a].surplus > 0 && group[*b].surplus < 0);
        let nearest = open.min_by(|x, y| {
            let far = |(a, b): &(usize, usize)| distance(&group[*a], &group[*b]);
            far(x).total_cmp(&far(y))
        });
        let Some((from, to)) = nearest else { return moves };
        let cells = group[from].surplus.min(-group[to].surplus);
        moves.push(Move { from: group[from].place, to: group[to].place, cells: cells as u32 });
        group[from].surplus -= cells;
        group[to].surplus += cells;
    }
}
