//! Meshes: where the nodes are, how well the triangles are shaped, symmetry.

use std::collections::BTreeSet;

use case::MeshError;
use cushion::{Length, Piece};
use mechanics::{Mesh, NestedMeshes, SeamNet};
use testkit::assert_near;

use crate::nets::{self, at};

fn meshes(net: &SeamNet, mm: f64) -> NestedMeshes {
    NestedMeshes::of_net(net, Length::from_mm(mm)).expect("the net can be meshed")
}

/// The least angle of all triangles, degrees.
fn least_angle(mesh: &Mesh) -> f64 {
    let angle = |triangle: &mechanics::Triangle, at: usize| {
        let corners = mesh.corners(triangle);
        let [a, b, c] = [corners[at], corners[(at + 1) % 3], corners[(at + 2) % 3]];
        let (u, v) = ([b.x - a.x, b.y - a.y], [c.x - a.x, c.y - a.y]);
        (u[0] * v[1] - u[1] * v[0]).atan2(u[0] * v[0] + u[1] * v[1]).to_degrees()
    };
    let all = mesh.triangles().iter().flat_map(|triangle| (0..3).map(|at| angle(triangle, at)));
    all.fold(f64::INFINITY, f64::min)
}

fn areas(mesh: &Mesh) -> Vec<f64> {
    let mut areas = vec![0.0; mesh.compartments()];
    for triangle in mesh.triangles() {
        areas[triangle.compartment as usize] += mesh.area(triangle);
    }
    areas
}

#[test]
fn triangles_are_well_shaped_at_every_size_of_every_layout() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        for made in testkit::layout(layout).sizes {
            let pattern = testkit::pattern(layout, &made.size.to_string());
            let nested = NestedMeshes::new(&pattern, Length::from_mm(4.0)).expect("it is meshed");
            for mesh in nested.levels() {
                let least = least_angle(mesh);
                assert!(least > 20.0, "{layout} {}: {least} degrees", made.size);
            }
        }
    }
}

#[test]
fn narrow_compartments_get_small_triangles_not_flat_ones() {
    // Strips of 9 and 11 mm are narrower than the coarsest mesh.
    let xs = [-220.0, -211.0, 0.0, 211.0, 220.0];
    let least =
        least_angle(meshes(&nets::grid(&xs, &[0.0, 11.0, 300.0, 400.0], true), 16.0).finest());
    assert!(least > 20.0, "{least}");
}

#[test]
fn a_mesh_of_the_default_width_has_about_twelve_thousand_nodes() {
    let mesh = meshes(&nets::case_six(), 4.0);
    // A hexagonal lattice of 4 mm over 440 x 400 mm has 12 702; seams make some difference.
    assert!((11_000..14_000).contains(&mesh.finest().nodes().len()));
}

#[test]
fn straight_seams_give_exact_areas() {
    for mesh in meshes(&nets::case_six(), 8.0).levels() {
        for (area, depth) in areas(mesh).iter().zip([0.14, 0.14, 0.132, 0.132, 0.128, 0.128]) {
            // Rounding of sums over some hundred triangles.
            assert_near(*area, 0.22 * depth, 1e-12);
        }
    }
}

#[test]
fn nodes_lie_on_curved_seams_at_every_width() {
    for mesh in meshes(&nets::circle(200.0), 2.0).levels() {
        for node in mesh.nodes() {
            let radius = node.x.hypot(node.y);
            assert_eq!(node.seam, node.outer);
            if node.seam {
                assert_near(radius, 0.2, 1e-12);
            } else {
                assert!(radius < 0.2);
            }
        }
    }
}

#[test]
fn areas_of_curved_compartments_close_in_with_the_square_of_the_width() {
    let pattern = testkit::pattern("curved-ten", "440x400");
    let nested = NestedMeshes::new(&pattern, Length::from_mm(4.0)).expect("it is meshed");
    let errors: Vec<Vec<f64>> = nested
        .levels()
        .iter()
        .map(|mesh| {
            let exact = pattern.indices().map(|ix| pattern.area(ix).to_m2());
            areas(mesh).iter().zip(exact).map(|(area, exact)| area / exact - 1.0).collect()
        })
        .collect();
    for place in 0..pattern.compartments().len() {
        // Chords of 4 mm on seams with radii above 35 mm leave less than this.
        assert!(errors[2][place].abs() < 2e-4, "{errors:?}");
        assert!(errors[2][place].abs() < errors[0][place].abs() / 10.0, "{errors:?}");
    }
}

#[test]
fn mirror_images_are_exact() {
    let pattern = testkit::pattern("island-eight", "440x400");
    for net in [nets::curved(), nets::case_four(), SeamNet::from(&pattern)] {
        for mesh in meshes(&net, 4.0).levels() {
            let images = mesh.mirror_nodes().expect("the net is mirrored");
            for (node, &image) in mesh.nodes().iter().zip(images) {
                let image = mesh.nodes()[image as usize];
                assert!(node.x == -image.x && node.y == image.y);
                assert!(node.seam == image.seam && node.outer == image.outer);
            }
            let compartments = mesh.mirror_compartments().expect("the net is mirrored");
            let (right, left) = mesh.triangles().split_at(mesh.triangles().len() / 2);
            let sorted = |mut nodes: [u32; 3], compartment: u32| {
                nodes.sort_unstable();
                (nodes, compartment)
            };
            let reflect = |own: &mechanics::Triangle| {
                let nodes = own.nodes.map(|node| images[node as usize]);
                sorted(nodes, compartments[own.compartment as usize])
            };
            let reflected: BTreeSet<_> = right.iter().map(reflect).collect();
            let there: BTreeSet<_> = left.iter().map(|t| sorted(t.nodes, t.compartment)).collect();
            assert_eq!(reflected, there);
            assert!(right.iter().all(|own| mesh.corners(own).iter().all(|node| node.x >= 0.0)));
            assert!(mesh.triangles().iter().all(|own| mesh.area(own) > 0.0));
        }
    }
}

#[test]
fn seams_that_are_not_symmetric_are_meshed_as_they_are() {
    let net = nets::grid(&[-220.0, 10.0, 220.0], &[0.0, 400.0], true);
    let mesh = meshes(&net, 8.0);
    assert_eq!(mesh.finest().mirror_nodes(), None);
    assert_near(areas(mesh.finest())[0], 0.23 * 0.4, 1e-12);
}

#[test]
fn coarse_values_are_carried_to_the_finer_mesh() {
    let nested = meshes(&nets::case_four(), 8.0);
    let [coarse, fine] = nested.levels() else { panic!("8 mm is refined once") };
    let plane = |mesh: &Mesh| -> Vec<f64> {
        mesh.nodes().iter().map(|node| 3.0 * node.x - 2.0 * node.y + 1.0).collect()
    };
    // Seams are straight here, so what is linear stays so.
    for (carried, own) in fine.prolonged(&plane(coarse)).iter().zip(plane(fine)) {
        assert_near(*carried, own, 1e-12);
    }
}

#[test]
fn every_seam_segment_borders_its_compartments() {
    let pattern = testkit::pattern("island-eight", "440x440");
    let nested = NestedMeshes::new(&pattern, Length::from_mm(8.0)).expect("it is meshed");
    let mesh = nested.finest();
    let owner = |from: u32, to: u32| {
        mesh.triangles().iter().find_map(|triangle| {
            let [a, b, c] = triangle.nodes;
            let sides = [(a, b), (b, c), (c, a)];
            sides.contains(&(from, to)).then_some(triangle.compartment)
        })
    };
    for segment in mesh.segments() {
        let [a, b] = segment.nodes;
        assert_eq!([owner(a, b), owner(b, a)], segment.sides);
    }
}

#[test]
fn seams_that_cross_are_refused() {
    let square = |left: f64, compartment: u32| {
        let corners =
            [(left, 0.0), (left + 100.0, 0.0), (left + 100.0, 100.0), (left, 100.0), (left, 0.0)];
        let points = corners.map(|(x, y)| at(x, y));
        (nets::polyline(&points), Some(compartment), None)
    };
    let net = SeamNet::new(vec![square(0.0, 0), square(50.0, 1)], false);
    let error = NestedMeshes::of_net(&net, Length::from_mm(4.0)).map(|_| ());
    assert!(matches!(error, Err(MeshError::TooClose { .. })), "{error:?}");
}

#[test]
fn a_lens_between_two_junctions_has_an_inside() {
    // Short enough for one segment on each side, if nothing prevented it.
    let bow = |height| cushion::Chain::new(vec![Piece::bow(at(0.0, -9.0), at(0.0, 9.0), height)]);
    let net = SeamNet::new(vec![(bow(-9.0), Some(0), None), (bow(9.0), None, Some(0))], true);
    let mesh = meshes(&net, 2.0);
    // A disc of 9 mm.
    assert_near(areas(mesh.finest())[0] / (81e-6 * std::f64::consts::PI), 1.0, 0.01);
}
