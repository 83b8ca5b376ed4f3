//! Contact in closed form: a sheet of one tension, blown up under a given pressure, pressed on by
//! a rigid body at a given height.
//!
//! The pressure is a cover weight below zero over an empty compartment. Expected values:
//! `tests/reference/contact_checks.csv`, from the formulas beside them, each checked there against
//! an independent computation.

use std::collections::BTreeMap;
use std::f64::consts::PI;

use testkit::assert_near;

use super::super::level::{Sheet, SolverMesh};
use super::super::newton::{self, End, Limits, SearchEnd};
use super::super::problem::{BodyOverMesh, Hold, RestProblem, SheetAndPose};
use crate::fill::FillLaw;
use crate::parameters::Parameters;
use crate::stop::Stop;

const TABLE: &str = include_str!("../../../../../tests/reference/contact_checks.csv");

/// Half the width of the strip's mesh, in rows of squares.
const ROWS: usize = 2;

/// The columns of the table that are wanted: case, parameters, quantity, closed form.
fn rows(case: &str) -> Vec<(BTreeMap<String, f64>, String, f64)> {
    let rows: Vec<_> = TABLE
        .lines()
        .filter_map(|line| {
            let mut columns = line.splitn(5, ',');
            (columns.next()? == case).then_some(())?;
            let (set, quantity) = (columns.next()?, columns.next()?);
            let value = |word: &str| {
                let (name, value) = word.split_once('=')?;
                Some((name.to_owned(), value.parse().ok()?))
            };
            let set = set.split_whitespace().filter_map(value).collect();
            Some((set, quantity.to_owned(), columns.next()?.parse().ok()?))
        })
        .collect();
    assert!(rows.len() >= 6, "the table has two sets of three rows for {case}");
    rows
}

/// A sheet over a strip between x = -L and L, which no seam holds at its ends.
fn strip(half: f64, squares: usize) -> SolverMesh {
    let columns = 2 * squares + 1;
    let step = half / squares as f64;
    let at = |x: usize, y: usize| (y * columns + x) as u32;
    let mut triangles = Vec::new();
    for y in 0..ROWS {
        for x in 0..columns - 1 {
            triangles.push(([at(x, y), at(x + 1, y), at(x + 1, y + 1)], 0));
            triangles.push(([at(x, y), at(x + 1, y + 1), at(x, y + 1)], 0));
        }
    }
    let nodes = 0..columns * (ROWS + 1);
    let place =
        |node: usize| [(node % columns) as f64 * step - half, (node / columns) as f64 * step];
    SolverMesh::new(Sheet {
        places: nodes.clone().map(place).collect(),
        seam: nodes.map(|node| node % columns == 0 || node % columns == columns - 1).collect(),
        triangles,
        compartments: 1,
        walls: Vec::new(),
    })
}

/// A sheet over a disc, of rings with six nodes more from each to the next.
fn disc(radius: f64, rings: usize) -> SolverMesh {
    let mut places = vec![[0.0, 0.0]];
    let first = |ring: usize| if ring == 0 { 0 } else { 3 * ring * (ring - 1) + 1 };
    for ring in 1..=rings {
        for node in 0..6 * ring {
            let angle = PI / 3.0 * node as f64 / ring as f64;
            let reach = radius * ring as f64 / rings as f64;
            places.push([reach * angle.cos(), reach * angle.sin()]);
        }
    }
    let node = |ring: usize, at: usize| (first(ring) + at % (6 * ring).max(1)) as u32;
    let mut triangles = Vec::new();
    for ring in 1..=rings {
        for side in 0..6 {
            for at in 0..ring {
                let (outer, inner) = (side * ring + at, side * (ring - 1) + at);
                triangles
                    .push(([node(ring, outer), node(ring, outer + 1), node(ring - 1, inner)], 0));
                if at + 1 < ring {
                    triangles.push((
                        [node(ring, outer + 1), node(ring - 1, inner + 1), node(ring - 1, inner)],
                        0,
                    ));
                }
            }
        }
    }
    let seam = (0..places.len()).map(|node| node >= first(rings)).collect();
    SolverMesh::new(Sheet { places, seam, triangles, compartments: 1, walls: Vec::new() })
}

/// Presses a body whose height at a place is `height` on the sheet.
fn press(
    level: &SolverMesh,
    [tension, pressure]: [f64; 2],
    height: impl Fn([f64; 2]) -> f64,
) -> SearchEnd {
    let parameters = Parameters {
        tension_slack: tension,
        tension_taut: tension,
        cover_weight: -pressure,
        ..Parameters::default().with_upright_walls()
    };
    let laws = [FillLaw::of_volume(0.0, 0.6, &parameters)];
    let underside: Vec<f64> = level.places.iter().map(|place| height(*place)).collect();
    let body = BodyOverMesh {
        underside: &underside,
        tissue: None,
        weight: 0.0,
        line: [0.0, 0.0],
        lean: 0.0,
        own_roll: 0.0,
        at_ease: 0.0,
        held: [true; 3],
    };
    let problem = RestProblem {
        level,
        parameters: &parameters,
        wall: 0.0,
        laws: &laws,
        migration: None,
        body: Some(body),
        yielding: Vec::new(),
    };
    let low = |seam: &bool| if *seam { 0.0 } else { 1e-3 };
    let start = SheetAndPose {
        sheet: level.seam.iter().map(low).collect(),
        walls: Vec::new(),
        pose: [0.0; 3],
    };
    let found =
        newton::search(&problem, start, Limits { residual: 1e-9, steps: 400, stop: Stop::never() });
    let found = found.expect("there is room below the body");
    assert_eq!(found.end, End::AtRest);
    found
}

/// Area of contact, force on the body, volume.
fn measures(level: &SolverMesh, found: &SearchEnd) -> [f64; 3] {
    let held = || (0..level.len()).filter(|node| found.holds.nodes[*node] == Hold::Body);
    let area = held().map(|node| level.areas[node]).sum();
    let force = held().map(|node| -found.forces.nodes[node]).sum();
    [area, force, found.forces.patches[0].volume]
}

/// Compares with the table: forces and volumes within a share, lengths within a node.
#[track_caller]
fn check(found: &BTreeMap<&str, f64>, quantity: &str, expected: f64, share: f64, node: f64) {
    let known = found.iter().find(|(name, _)| quantity.starts_with(**name));
    let (name, value) = known.expect("every quantity of the table is known");
    let tolerance = if name.starts_with("contact") { node } else { share * expected };
    assert_near(*value, expected, tolerance);
}

/// Of a strip, for each metre of its length. The error of force and volume falls with the square
/// of the step; at 400 steps it is below a thousandth.
#[track_caller]
fn check_strip(case: &str, height: impl Fn(f64, &BTreeMap<String, f64>) -> f64) {
    for (set, quantity, expected) in rows(case) {
        let squares = 400;
        let level = strip(set["L"], squares);
        let step = set["L"] / squares as f64;
        let found = press(&level, [set["T"], set["p"]], |[x, _]| set["d"] + height(x, &set));
        let length = ROWS as f64 * step;
        let [area, force, volume] = measures(&level, &found).map(|sum| sum / length);
        let found = BTreeMap::from([
            ("contact half-width", area / 2.0),
            ("force", force),
            ("area under sheet", volume),
        ]);
        check(&found, &quantity, expected, 1e-3, step);
    }
}

#[test]
fn strip_under_a_flat_plate() {
    check_strip("1D strip / flat plate", |_, _| 0.0);
}

#[test]
fn strip_under_a_parabola() {
    check_strip("1D strip / parabola", |x, set| x * x / (2.0 * set["R"]));
}

/// Of a disc. The rim is a polygon, and the error falls with the square of the step; at 100 rings
/// it is some two thousandths.
#[track_caller]
fn check_disc(case: &str, height: impl Fn(f64, &BTreeMap<String, f64>) -> f64) {
    for (set, quantity, expected) in rows(case) {
        let rings = 100;
        let level = disc(set["Rm"], rings);
        let found =
            press(&level, [set["T"], set["p"]], |[x, y]| set["d"] + height(x.hypot(y), &set));
        let [area, force, volume] = measures(&level, &found);
        let found = BTreeMap::from([
            ("contact radius", (area / PI).sqrt()),
            ("force", force),
            ("volume", volume),
        ]);
        check(&found, &quantity, expected, 2e-3, set["Rm"] / rings as f64);
    }
}

#[test]
fn disc_under_a_flat_plate() {
    check_disc("disc / flat plate", |_, _| 0.0);
}

#[test]
fn disc_under_a_paraboloid() {
    check_disc("disc / paraboloid", |r, set| r * r / (2.0 * set["R"]));
}

#[test]
fn disc_under_a_sphere() {
    check_disc("disc / sphere", |r, set| {
        let radius = set["R"];
        // Beyond its equator the sphere does not touch.
        if r < 0.95 * radius { radius - (radius * radius - r * r).sqrt() } else { radius }
    });
}
