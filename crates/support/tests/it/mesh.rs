//! Meshes: where the nodes are, how well the triangles are shaped, symmetry.

use cushion::Length;
use support::{Mesh, NestedMeshes, SeamNet};

use crate::nets;

fn meshes(net: &SeamNet, mm: f64) -> NestedMeshes {
    NestedMeshes::of_net(net, Length::from_mm(mm)).expect("the net can be meshed")
}

/// Angles of all triangles, degrees, the least first.
fn angles(mesh: &Mesh) -> Vec<f64> {
    let mut angles: Vec<f64> = mesh
        .triangles()
        .iter()
        .map(|triangle| {
            let corners = mesh.corners(triangle);
            (0..3)
                .map(|at| {
                    let [a, b, c] = [corners[at], corners[(at + 1) % 3], corners[(at + 2) % 3]];
                    let (u, v) = ((b.x - a.x, b.y - a.y), (c.x - a.x, c.y - a.y));
                    (u.0 * v.1 - u.1 * v.0).atan2(u.0 * v.0 + u.1 * v.1).to_degrees()
                })
                .fold(f64::INFINITY, f64::min)
        })
        .collect();
    angles.sort_by(f64::total_cmp);
    angles
}

#[test]
fn stats() {
    for (name, net) in [
        ("four", nets::case_four()),
        ("six", nets::case_six()),
        ("curved", nets::curved()),
        ("circle", nets::circle(200.0)),
        ("sector30", nets::sector(0.0, 300.0, 30.0)),
        ("annulus", nets::annulus(80.0, 200.0)),
        ("hexagon", nets::regular_polygon(6, 150.0)),
        ("narrow", nets::grid(&[-220.0, -211.0, 0.0, 211.0, 220.0], &[0.0, 11.0, 300.0, 400.0], true)),
    ] {
        for mm in [16.0, 4.0] {
            let start = std::time::Instant::now();
            let mesh = meshes(&net, mm);
            let took = start.elapsed();
            let mesh = mesh.finest();
            let angles = angles(mesh);
            let n = angles.len();
            println!("{name} {mm}: nodes {} tri {} angles {:.1} {:.1} {:.1} {:.1} mirror {} {:?}", mesh.nodes().len(), n, angles[0], angles[n/1000], angles[n/100], angles[n / 20], mesh.mirror_nodes().is_some(), took);
        }
    }
}
