//! The solver against elimination in the order of the nodes, which knows nothing of fronts.

use super::factor::{Factor, NotPositive, System};
use super::*;
use crate::numerics::SmallMatrix;

/// A rectangle of squares cut in two triangles each, and the places of its nodes.
fn net(columns: usize, rows: usize) -> (Graph, Vec<[f64; 2]>) {
    let at = |x: usize, y: usize| (y * columns + x) as u32;
    let mut triangles = Vec::new();
    for y in 0..rows - 1 {
        for x in 0..columns - 1 {
            triangles.push([at(x, y), at(x + 1, y), at(x + 1, y + 1)]);
            triangles.push([at(x, y), at(x + 1, y + 1), at(x, y + 1)]);
        }
    }
    let places = (0..columns * rows).map(|node| [(node % columns) as f64, (node / columns) as f64]);
    (Graph::of_triangles(columns * rows, &triangles), places.collect())
}

/// Numbers in -1..1 that look random, from a fixed seed.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        (self.0 >> 11) as f64 / (1u64 << 52) as f64 - 1.0
    }
}

/// A matrix of the net with random entries, positive definite because its diagonal outweighs the
/// rest; by places, and in full by nodes.
fn matrix(graph: &Graph, symbolic: &Symbolic, seed: u64) -> (Entries, Vec<Vec<f64>>) {
    let mut numbers = Numbers(seed);
    let mut entries = symbolic.zeros();
    let mut full = vec![vec![0.0; graph.len()]; graph.len()];
    for node in 0..graph.len() as u32 {
        for &to in graph.of(node).iter().filter(|to| **to > node) {
            let value = numbers.next();
            entries.below[symbolic.entry(node, to)] = value;
            full[node as usize][to as usize] = value;
            full[to as usize][node as usize] = value;
        }
    }
    for node in 0..graph.len() {
        let value = 0.1 + full[node].iter().map(|value| value.abs()).sum::<f64>();
        entries.diagonal[symbolic.place(node as u32)] = value;
        full[node][node] = value;
    }
    (entries, full)
}

/// Solves by Cholesky's method row by row, as in a textbook.
fn solve_plainly(matrix: &[Vec<f64>], right: &[f64]) -> Vec<f64> {
    let size = right.len();
    let mut lower = vec![vec![0.0; size]; size];
    for row in 0..size {
        for column in 0..=row {
            let sum: f64 = (0..column).map(|at| lower[row][at] * lower[column][at]).sum();
            let left = matrix[row][column] - sum;
            lower[row][column] =
                if row == column { left.sqrt() } else { left / lower[column][column] };
        }
    }
    let mut solved = right.to_vec();
    for row in 0..size {
        let sum: f64 = (0..row).map(|at| lower[row][at] * solved[at]).sum();
        solved[row] = (solved[row] - sum) / lower[row][row];
    }
    for row in (0..size).rev() {
        let sum: f64 = (row + 1..size).map(|at| lower[at][row] * solved[at]).sum();
        solved[row] = (solved[row] - sum) / lower[row][row];
    }
    solved
}

fn plain(symbolic: &Symbolic, entries: &Entries, free: &Free) -> Result<Factor, NotPositive> {
    Factor::new(&System { symbolic, entries, free, border: &[], width: 0 })
}

/// Solves for several vectors with the nodes free that `is_free` says, and compares.
#[track_caller]
fn check(columns: usize, rows: usize, width: usize, is_free: impl Fn(usize) -> bool) {
    let (graph, places) = net(columns, rows);
    let symbolic = Symbolic::new(&graph, &places);
    let (entries, full) = matrix(&graph, &symbolic, 7);
    let nodes: Vec<usize> = (0..graph.len()).filter(|node| is_free(*node)).collect();
    let mut numbers = Numbers(11);
    let right: Vec<f64> = (0..graph.len() * width).map(|_| numbers.next()).collect();
    let free = symbolic.free(&is_free);
    let mut vectors = symbolic.zero_border(free.count, width);
    for &node in &nodes {
        let row = free.row(symbolic.place(node as u32)) * width;
        vectors[row..row + width].copy_from_slice(&right[node * width..(node + 1) * width]);
    }
    let border = Border { vectors, width, scale: Vec::new(), corner: SmallMatrix::zeros(0) };
    let equations =
        Bordered::new(&symbolic, &entries, &free, border).expect("the diagonal outweighs the rest");
    let solved = equations.solve(&vec![Vec::new(); width]).expect("there is no border");
    let part: Vec<Vec<f64>> =
        nodes.iter().map(|a| nodes.iter().map(|b| full[*a][*b]).collect()).collect();
    for vector in 0..width {
        let own: Vec<f64> = nodes.iter().map(|node| right[node * width + vector]).collect();
        for (node, expected) in nodes.iter().zip(solve_plainly(&part, &own)) {
            let found = solved[vector].nodes[symbolic.place(*node as u32)];
            // Rounding, times a condition of a few hundred.
            assert!((found - expected).abs() < 1e-11, "{node}: {found} {expected}");
        }
    }
}

#[test]
fn it_agrees_with_plain_elimination() {
    check(1, 2, 1, |_| true);
    check(5, 4, 1, |_| true);
    check(20, 3, 2, |_| true);
    check(23, 19, 13, |_| true);
}

#[test]
fn nodes_that_are_not_free_are_left_out() {
    check(23, 19, 5, |node| node % 3 != 0);
    // A disc in the middle is held, so fronts lose all their nodes.
    check(24, 20, 1, |node| (node % 24).abs_diff(12).pow(2) + (node / 24).abs_diff(10).pow(2) > 64);
    check(9, 9, 1, |node| node == 40);
    check(9, 9, 1, |_| false);
}

/// Solves with a border of two columns, of which the first has numbers where `reaches` says, and
/// puts the solution into the equations.
#[track_caller]
fn check_border(is_free: impl Fn(usize) -> bool, reaches: impl Fn(usize) -> bool) {
    let (graph, places) = net(9, 8);
    let symbolic = Symbolic::new(&graph, &places);
    let (entries, full) = matrix(&graph, &symbolic, 3);
    let free = symbolic.free(&is_free);
    let nodes: Vec<usize> = (0..graph.len()).filter(|node| is_free(*node)).collect();
    let mut numbers = Numbers(5);
    let scale = [1.0, 3.0];
    let mut columns: Vec<Vec<f64>> =
        (0..3).map(|_| (0..graph.len()).map(|_| numbers.next()).collect()).collect();
    (0..graph.len()).filter(|node| !reaches(*node)).for_each(|node| columns[0][node] = 0.0);
    let mut corner = SmallMatrix::zeros(2);
    (corner[[0, 0]], corner[[1, 1]], corner[[0, 1]], corner[[1, 0]]) = (400.0, -9.0, 0.3, 0.9);
    let mut vectors = symbolic.zero_border(free.count, 3);
    // Numbers where a node is not free must not matter.
    let mut right = vec![f64::NAN; graph.len()];
    for &node in &nodes {
        let place = symbolic.place(node as u32);
        (0..3).for_each(|at| vectors[free.row(place) * 3 + at] = columns[at][node]);
        right[place] = columns[2][node];
    }
    let border = Border { vectors, width: 3, scale: scale.to_vec(), corner: corner.clone() };
    let equations = Bordered::new(&symbolic, &entries, &free, border).expect("it is positive");
    let with_border = equations.solve(&[vec![0.7, -0.2]]).expect("it is regular").remove(0);
    let later = equations.solve_for(right, &[0.7, -0.2]).expect("it is regular");
    for Solved { nodes: y, border: t } in [with_border, later] {
        let y = |node: usize| y[symbolic.place(node as u32)];
        for &node in &nodes {
            let row: f64 = nodes.iter().map(|to| full[node][*to] * y(*to)).sum();
            let left = row + columns[0][node] * t[0] + columns[1][node] * t[1] - columns[2][node];
            // Rounding of sums of some ten numbers.
            assert!(left.abs() < 1e-12, "{node}: {left}");
        }
        for (at, known) in [0.7, -0.2].iter().enumerate() {
            let product: f64 = nodes.iter().map(|node| columns[at][*node] * y(*node)).sum();
            let left =
                scale[at] * product + corner[[at, 0]] * t[0] + corner[[at, 1]] * t[1] - known;
            assert!(left.abs() < 1e-12, "{at}: {left}");
        }
    }
}

#[test]
fn a_border_satisfies_its_equations() {
    check_border(|_| true, |_| true);
    // In a corner alone, so that most fronts do not have the column.
    check_border(|_| true, |node| node % 9 < 2 && node < 18);
    check_border(|node| node % 5 != 0, |node| node % 9 > 4);
    check_border(|node| node % 5 != 0, |_| false);
    // No node is free: the border is alone.
    check_border(|_| false, |_| true);
}

#[test]
fn a_matrix_that_is_not_positive_is_refused() {
    let (graph, places) = net(6, 6);
    let symbolic = Symbolic::new(&graph, &places);
    let (mut entries, _) = matrix(&graph, &symbolic, 7);
    entries.diagonal[20] = -1.0;
    assert!(plain(&symbolic, &entries, &symbolic.free(|_| true)).is_err());
    entries.diagonal[20] = f64::NAN;
    assert!(plain(&symbolic, &entries, &symbolic.free(|_| true)).is_err());
}

/// What another factor left in the memory, whole or given up half way, is nowhere read.
#[test]
fn memory_that_is_used_again_changes_no_bit() {
    let (graph, places) = net(23, 19);
    let symbolic = Symbolic::new(&graph, &places);
    let (entries, _) = matrix(&graph, &symbolic, 7);
    let (mut refused, _) = matrix(&graph, &symbolic, 11);
    refused.diagonal[300] = -1.0;
    let (all, some) = (symbolic.free(|_| true), symbolic.free(|node| node % 3 != 0));
    let solved = |free: &Free| {
        let factor = plain(&symbolic, &entries, free).expect("it is positive");
        let mut vector: Vec<f64> = (0..graph.len()).map(|node| node as f64).collect();
        factor.forward(&mut vector);
        factor.backward(&mut vector);
        vector.iter().map(|value| value.to_bits()).collect::<Vec<_>>()
    };
    let first = solved(&all);
    for between in 0..2 {
        if between == 0 {
            assert!(plain(&symbolic, &refused, &all).is_err());
        } else {
            solved(&some);
        }
        assert_eq!(solved(&all), first, "{between}");
    }
}

/// The bound of nested dissection on a square of n nodes is 31/4 n log2 n numbers (George, 1973);
/// blocks of the leaves are stored in full, which adds a little.
#[test]
fn few_numbers_arise() {
    let (graph, places) = net(111, 101);
    let symbolic = Symbolic::new(&graph, &places);
    let mut entries = symbolic.zeros();
    entries.diagonal.fill(7.0);
    entries.below.fill(-1.0);
    let factor = plain(&symbolic, &entries, &symbolic.free(|_| true))
        .expect("the diagonal outweighs the rest");
    let nodes = graph.len() as f64;
    assert!((factor.len() as f64) < 31.0 / 8.0 * nodes * nodes.log2() * 1.25, "{}", factor.len());
}
