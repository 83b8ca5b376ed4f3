//! Conjugate gradients for the unit solution, preconditioned by one multigrid cycle.
//!
//! Measured beside elimination on two meshes, which needs its order first: a fifth of its time at
//! 4 mm, and less memory.
//!
//! The nested meshes are at hand, so a cycle costs a few sweeps over the nodes and the number of
//! steps does not grow with the mesh; see Briggs, Henson and McCormick, A Multigrid Tutorial
//! (2nd ed., 2000). Seams hold the sheet, so each compartment is a problem of its own, and all
//! are solved at once. Of a mirrored pattern only the right half is solved: on the centre line a
//! symmetric sheet is level across it, which is what a free edge is.

use super::element::Element;
use crate::mesh::{Mesh, NestedMeshes, Triangle};

/// The residual at which the search stops, as a share of the load. Volumes err by its square,
/// heights by less than itself, and meshes by far more; but the unloaded sheet that follows from it
/// is to be in balance to a millionth of a pascal at some hundred pascals.
const ENOUGH: f64 = 1e-10;
/// More steps than any mesh has needed by ten times.
const MOST_STEPS: usize = 200;
/// Sweeps on the coarsest mesh, whose compartments are some ten nodes across; fewer cost steps of
/// the whole, more cost more than they save.
const COARSE_SWEEPS: usize = 6;

/// The unit solution at all nodes of one mesh.
pub(super) struct Solved {
    pub(super) values: Vec<f64>,
    pub(super) iterations: usize,
    pub(super) residual: f64,
}

/// Solves on every mesh, the coarsest first, each from the one before.
pub(super) fn solve(meshes: &NestedMeshes) -> Vec<Solved> {
    let levels: Vec<Level> = meshes.levels().iter().map(Level::new).collect();
    let mut solved: Vec<Solved> = Vec::with_capacity(levels.len());
    let mut start: Vec<f64> = Vec::new();
    for (at, mesh) in meshes.levels().iter().enumerate() {
        let level = &levels[at];
        let mut guess = vec![0.0; level.diagonal.len()];
        if at > 0 {
            level.add(&mut guess, &start);
        }
        let load = level.unit_load(mesh);
        let (free, iterations, residual) = conjugate_gradients(&levels[..=at], &load, guess);
        let value = |place: &Option<u32>| place.map_or(0.0, |place| free[place as usize]);
        let mut values: Vec<f64> = level.place.iter().map(value).collect();
        for (node, &image) in mesh.mirror_nodes().unwrap_or(&[]).iter().enumerate() {
            if mesh.nodes()[node].x < 0.0 {
                values[node] = values[image as usize];
            }
        }
        solved.push(Solved { values, iterations, residual });
        start = free;
    }
    solved
}

/// The triangles that are solved for.
fn solved_part(mesh: &Mesh) -> &[Triangle] {
    let all = mesh.triangles();
    if mesh.mirror_nodes().is_some() { &all[..all.len() / 2] } else { all }
}

/// The equations on one mesh, of the nodes that no seam holds.
struct Level {
    /// For each node its place among the free ones.
    place: Vec<Option<u32>>,
    /// Of the free nodes, how many the coarser mesh has.
    coarse: usize,
    /// Parents of the other free nodes, as places; none where a seam holds the parent.
    parents: Vec<[Option<u32>; 2]>,
    /// Where the entries of each row begin.
    starts: Vec<u32>,
    /// Columns and values off the diagonal.
    entries: Vec<(u32, f64)>,
    diagonal: Vec<f64>,
}

impl Level {
    fn new(mesh: &Mesh) -> Self {
        let whole = mesh.mirror_nodes().is_none();
        let mut free = 0;
        let place: Vec<Option<u32>> = mesh
            .nodes()
            .iter()
            .map(|node| {
                (!node.seam && (whole || node.x >= 0.0)).then(|| {
                    free += 1;
                    free - 1
                })
            })
            .collect();
        let coarse_nodes = mesh.coarse_nodes();
        let coarse = place[..coarse_nodes].iter().flatten().count();
        let new = place[coarse_nodes..].iter().zip(mesh.parents());
        let parents = new
            .filter(|(place, _)| place.is_some())
            .map(|(_, parents)| parents.map(|parent| place[parent as usize]))
            .collect();
        let mut level = Self {
            coarse,
            parents,
            starts: Vec::new(),
            entries: Vec::new(),
            diagonal: vec![0.0; free as usize],
            place,
        };
        level.assemble(mesh);
        level
    }

    fn assemble(&mut self, mesh: &Mesh) {
        // Each triangle at a node brings two neighbours, and each neighbour comes with two
        // triangles, but for those across a seam.
        let mut room = vec![0u32; self.diagonal.len() + 1];
        for node in solved_part(mesh).iter().flat_map(|triangle| triangle.nodes) {
            if let Some(place) = self.place[node as usize] {
                room[place as usize + 1] += 2;
            }
        }
        for row in 0..self.diagonal.len() {
            room[row + 1] += room[row];
        }
        let mut ends = room.clone();
        let mut entries = vec![(0u32, 0.0); room[self.diagonal.len()] as usize];
        for triangle in solved_part(mesh) {
            let element = Element::new(mesh, triangle);
            let places = triangle.nodes.map(|node| self.place[node as usize]);
            for (at, row) in places.iter().enumerate() {
                let Some(row) = row.map(|row| row as usize) else { continue };
                self.diagonal[row] += element.stiffness(at, at);
                for other in [(at + 1) % 3, (at + 2) % 3] {
                    let Some(column) = places[other] else { continue };
                    let value = element.stiffness(at, other);
                    let own = &mut entries[room[row] as usize..ends[row] as usize];
                    match own.iter_mut().find(|entry| entry.0 == column) {
                        Some(entry) => entry.1 += value,
                        None => {
                            entries[ends[row] as usize] = (column, value);
                            ends[row] += 1;
                        }
                    }
                }
            }
        }
        for row in 0..self.diagonal.len() {
            self.starts.push(self.entries.len() as u32);
            self.entries.extend_from_slice(&entries[room[row] as usize..ends[row] as usize]);
        }
        self.starts.push(self.entries.len() as u32);
    }

    /// What a curvature of 1 asks of each free node, m2.
    fn unit_load(&self, mesh: &Mesh) -> Vec<f64> {
        let mut load = vec![0.0; self.diagonal.len()];
        for triangle in solved_part(mesh) {
            let third = mesh.area(triangle) / 3.0;
            for place in triangle.nodes.iter().filter_map(|node| self.place[*node as usize]) {
                load[place as usize] += third;
            }
        }
        load
    }

    fn row(&self, row: usize) -> &[(u32, f64)] {
        &self.entries[self.starts[row] as usize..self.starts[row + 1] as usize]
    }

    fn off_diagonal(&self, row: usize, values: &[f64]) -> f64 {
        self.row(row).iter().map(|(column, value)| value * values[*column as usize]).sum()
    }

    fn times(&self, values: &[f64]) -> Vec<f64> {
        (0..values.len())
            .map(|row| self.diagonal[row] * values[row] + self.off_diagonal(row, values))
            .collect()
    }

    /// One sweep of Gauss and Seidel over the rows in the order given.
    fn sweep(&self, load: &[f64], values: &mut [f64], rows: impl Iterator<Item = usize>) {
        for row in rows {
            values[row] = (load[row] - self.off_diagonal(row, values)) / self.diagonal[row];
        }
    }

    /// What the values leave of the load, gathered on the coarser mesh.
    fn gathered_rest(&self, load: &[f64], values: &[f64]) -> Vec<f64> {
        let rest = |row: usize| {
            load[row] - self.diagonal[row] * values[row] - self.off_diagonal(row, values)
        };
        let mut gathered: Vec<f64> = (0..self.coarse).map(rest).collect();
        for (new, parents) in self.parents.iter().enumerate() {
            let half = rest(self.coarse + new) / 2.0;
            parents.iter().flatten().for_each(|parent| gathered[*parent as usize] += half);
        }
        gathered
    }

    /// Adds what was found on the coarser mesh.
    fn add(&self, values: &mut [f64], coarse: &[f64]) {
        for (value, coarse) in values.iter_mut().zip(coarse) {
            *value += coarse;
        }
        for (value, parents) in values[self.coarse..].iter_mut().zip(&self.parents) {
            *value += parents.iter().flatten().map(|at| coarse[*at as usize]).sum::<f64>() / 2.0;
        }
    }
}

/// One symmetric cycle: an approximate solution for the load.
fn cycle(levels: &[Level], load: &[f64]) -> Vec<f64> {
    let mut values = vec![0.0; load.len()];
    let rows = load.len();
    let Some((level, coarser)) = levels.split_last() else { return values };
    if coarser.is_empty() {
        for _ in 0..COARSE_SWEEPS {
            level.sweep(load, &mut values, 0..rows);
            level.sweep(load, &mut values, (0..rows).rev());
        }
        return values;
    }
    level.sweep(load, &mut values, 0..rows);
    let found = cycle(coarser, &level.gathered_rest(load, &values));
    level.add(&mut values, &found);
    level.sweep(load, &mut values, (0..rows).rev());
    values
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Solves on the last level, from a guess; returns values, steps and the residual as a share of
/// the load.
fn conjugate_gradients(levels: &[Level], load: &[f64], guess: Vec<f64>) -> (Vec<f64>, usize, f64) {
    let finest = &levels[levels.len() - 1];
    let mut values = guess;
    let taken = finest.times(&values);
    let mut rest: Vec<f64> = load.iter().zip(&taken).map(|(load, taken)| load - taken).collect();
    // A net without free nodes has no load.
    let whole = dot(load, load).sqrt().max(f64::MIN_POSITIVE);
    let mut direction = vec![0.0; load.len()];
    let mut before = f64::INFINITY;
    let mut steps = 0;
    while dot(&rest, &rest).sqrt() > ENOUGH * whole && steps < MOST_STEPS {
        let guess = cycle(levels, &rest);
        let now = dot(&rest, &guess);
        for (along, guess) in direction.iter_mut().zip(&guess) {
            *along = guess + now / before * *along;
        }
        before = now;
        let pulled = finest.times(&direction);
        let length = now / dot(&direction, &pulled);
        for row in 0..load.len() {
            values[row] += length * direction[row];
            rest[row] -= length * pulled[row];
        }
        steps += 1;
    }
    (values, steps, dot(&rest, &rest).sqrt() / whole)
}
