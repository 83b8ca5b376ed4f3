use super::*;
use crate::{Body, Load, NestedMeshes, Parameters, SeamNet};
use cushion::{Chain, Force, Length, Piece, Point, Volume};

fn line(a: [f64; 2], b: [f64; 2]) -> Chain {
    Chain::new(vec![Piece::Line(Point::new(a[0], a[1]), Point::new(b[0], b[1]))])
}

fn grid(xs: &[f64], ys: &[f64]) -> SeamNet {
    let (columns, rows) = (xs.len() - 1, ys.len() - 1);
    let cell = |c: Option<usize>, r: Option<usize>| match (c, r) {
        (Some(c), Some(r)) if c < columns && r < rows => Some((r * columns + c) as u32),
        _ => None,
    };
    let mut seams = Vec::new();
    for (r, y) in ys.iter().enumerate() {
        for (c, p) in xs.windows(2).enumerate() {
            seams.push((
                line([p[0], *y], [p[1], *y]),
                cell(Some(c), Some(r)),
                cell(Some(c), r.checked_sub(1)),
            ));
        }
    }
    for (c, x) in xs.iter().enumerate() {
        for (r, p) in ys.windows(2).enumerate() {
            seams.push((
                line([*x, p[0]], [*x, p[1]]),
                cell(c.checked_sub(1), Some(r)),
                cell(Some(c), Some(r)),
            ));
        }
    }
    SeamNet::new(seams, true)
}


#[test]
fn probe() {
    let four = || grid(&[-220.0, 0.0, 220.0], &[0.0, 220.0, 400.0]);
    let six = || grid(&[-220.0, 0.0, 220.0], &[0.0, 140.0, 272.0, 400.0]);
    for (net, counts, weight) in [
        (four(), vec![83.6, 83.6, 70.0, 70.0], 500.0),
        (six(), vec![57.2, 57.2, 54.8, 54.8, 53.6, 53.6], 500.0),
        (four(), vec![78.6, 88.6, 70.0, 70.0], 500.0),
        (four(), vec![54.3, 83.6, 70.0, 70.0], 500.0),
        (four(), vec![83.6, 83.6, 70.0, 70.0], 350.0),
        (four(), vec![0.0, 83.6, 70.0, 70.0], 500.0),
        (four(), vec![8.0, 8.0, 7.0, 7.0], 500.0),
    ] {
        let meshes = NestedMeshes::of_net(&net, Length::from_mm(4.0)).unwrap();
        let t = std::time::Instant::now();
        let model = SheetModel::new(&meshes, Length::from_mm(60.0));
        println!("model {:?}", t.elapsed());
        let parameters = Parameters::default();
        let cells: Vec<Cells> = counts.iter().map(|n| Cells { count: *n, each: Volume::from_ml(25.0), packing: 0.6 }).collect();
        let body = Placed::new(&model, Body::reference(Load::new(Force::from_n(weight), [0.0, 0.170])));
        let mut rest = None;
        for _ in 0..1 {
            let t = std::time::Instant::now();
            rest = Some(come_to_rest(&model, &cells, &body, &parameters, None));
            println!("cold {:?}", t.elapsed());
        }
        let rest = rest.unwrap();
        println!("{:?} {:?}", rest.outcome, rest.evidence);
        show(&rest);
        let t = std::time::Instant::now();
        if std::env::var("DBG").is_ok() { continue; }
        let slow = come_to_rest_slowly(&model, &cells, &body, &parameters);
        println!("slow {:?} {:?} {:?}", t.elapsed(), slow.outcome, slow.evidence);
        show(&slow);
        let mut changed = cells.clone();
        changed[0].count += 1.0;
        for _ in 0..3 {
            let t = std::time::Instant::now();
            let warm = come_to_rest(&model, &changed, &body, &parameters, rest.resting.as_ref());
            println!("warm {:?} {:?}", t.elapsed(), warm.evidence.steps);
        }
    }
}

fn show(rest: &Rest) {
    let Some(r) = &rest.resting else { return };
    println!("p {:?}", r.compartments.iter().map(|c| (c.pressure.to_kpa() * 1e3).round() / 1e3).collect::<Vec<_>>());
    println!("T {:?} load {:?}", r.compartments.iter().map(|c| c.tension as f32).collect::<Vec<_>>(), r.compartments.iter().map(|c| c.load.to_n() as f32).collect::<Vec<_>>());
    println!("unloaded p {:?} max {:.2}", r.compartments.iter().map(|c| c.unloaded_pressure.to_pa() as f32).collect::<Vec<_>>(), r.unloaded_height.to_mm());
    println!("roll {:.3} pitch {:.3} contact {:.1} max {:.2} stiff {:?}", r.pose[1].to_degrees(), r.pose[2].to_degrees(), r.contact_area.to_cm2(), r.greatest_height.to_mm(), r.stiffness);
    for s in &r.sites {
        println!("{:?} clearance {:.2} p {:.3}", s.site.name, s.clearance.to_mm(), s.pressure.to_kpa());
    }
}
