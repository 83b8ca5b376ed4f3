use super::nested::Case;
use super::newton::*;
use super::problem::*;
use super::*;
use crate::*;
use cushion::*;

fn body(x: f64, y: f64) -> f64 {
    let mut z = Vec::new();
    for s in [-1.0, 1.0] {
        let r2: f64 = ((x - 0.060 * s) / 0.120).powi(2) + ((y - 0.130) / 0.130).powi(2);
        z.push(if r2 < 1.0 { 0.085 * (1.0 - (1.0 - r2).sqrt()) } else { 0.085 * r2 });
        let xa = s * (0.085 + 0.10 * (y - 0.130));
        let d2: f64 = ((x - xa) / 0.090).powi(2);
        let t = if d2 < 1.0 { 0.090 * (1.0 - (1.0 - d2).sqrt()) } else { 0.090 * d2 };
        z.push(t + 0.020 + 0.01 * (y - 0.130) + 6.0 * (0.130 - y).max(0.0));
    }
    let m = z.iter().copied().fold(f64::INFINITY, f64::min);
    m - 0.004 * z.iter().map(|z| (-(z - m) / 0.004).exp()).sum::<f64>().ln()
}

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
    let six = std::env::args().any(|a| a == "six");
    let (net, counts, weight) = if true {
        (
            grid(&[-220.0, 0.0, 220.0], &[0.0, 140.0, 272.0, 400.0]),
            vec![57.2, 57.2, 54.8, 54.8, 53.6, 53.6],
            500.0,
        )
    } else {
        (grid(&[-220.0, 0.0, 220.0], &[0.0, 220.0, 400.0]), vec![54.3, 83.6, 70.0, 70.0], 500.0)
    };
    let _ = six;
    let mm = 4.0;
    let t = std::time::Instant::now();
    let meshes = NestedMeshes::of_net(&net, Length::from_mm(mm)).unwrap();
    println!("mesh {:?} nodes {}", t.elapsed(), meshes.finest().nodes().len());
    let t = std::time::Instant::now();
    let model = SheetModel::new(&meshes, Length::from_mm(60.0));
    println!("model {:?}", t.elapsed());
    let parameters = Parameters::default();
    let laws: Vec<FillLaw> =
        counts.iter().map(|n| FillLaw::of_volume(n * 25e-6, 0.6, &parameters)).collect();
    let mut least = f64::INFINITY;
    let mut under: Vec<f64> = model.places().iter().map(|p| body(p[0], p[1])).collect();
    for u in &under {
        least = least.min(*u);
    }
    under.iter_mut().for_each(|u| *u -= least);
    let case = Case { model: &model, parameters: &parameters, laws: &laws };
    let limits = Limits { residual: 1e-6, steps: 60 };
    for _ in 0..3 {
        let total = std::time::Instant::now();
        let mut un: Option<Found> = None;
        let mut lo: Option<Found> = None;
        for level in 0..model.levels.len() {
            let t = std::time::Instant::now();
            let problem = case.unloaded(level);
            let start = match &un {
                None => case.flat(level),
                Some(f) => {
                    State { sheet: model.prolonged(level - 1, &f.state.sheet), pose: [0.0; 3] }
                }
            };
            let found = newton::search(&problem, start, limits).unwrap();
            println!(
                "level {level} unloaded {:?} steps {} {:?} res {:?}",
                t.elapsed(),
                found.steps,
                found.end,
                found.residuals(&problem)
            );
            let t = std::time::Instant::now();
            let b =
                Body { underside: &under, weight, line: [0.0, 0.170], lean: 0.0, held: [false; 3] };
            let problem = case.loaded(level, &found, b);
            let start = match &lo {
                None => {
                    let z = found
                        .state
                        .sheet
                        .iter()
                        .zip(&under)
                        .map(|(u, b)| u - b)
                        .fold(f64::NEG_INFINITY, f64::max)
                        - 0.02;
                    State { sheet: found.state.sheet.clone(), pose: [z, 0.0, 0.0] }
                }
                Some(f) => {
                    State { sheet: model.prolonged(level - 1, &f.state.sheet), pose: f.state.pose }
                }
            };
            let l = newton::search(&problem, start, limits).unwrap();
            let free = l.holds.iter().filter(|h| **h == Hold::Free).count();
            println!(
                "level {level} loaded {:?} steps {} {:?} res {:?} free {free} of {}",
                t.elapsed(),
                l.steps,
                l.end,
                l.residuals(&problem),
                l.holds.len()
            );
            drop(problem);
            un = Some(found);
            lo = Some(l);
        }
        println!("total {:?}", total.elapsed());
        let (un, lo) = (un.unwrap(), lo.unwrap());
        println!(
            "unloaded p {:?} T {:?} max {:.2}",
            un.forces.patches.iter().map(|p| p.pressure as f32).collect::<Vec<_>>(),
            un.forces.patches.iter().map(|p| p.tension as f32).collect::<Vec<_>>(),
            un.state.sheet.iter().copied().fold(0.0, f64::max) * 1e3
        );
        println!(
            "loaded p {:?} T {:?} max {:.2}",
            lo.forces.patches.iter().map(|p| p.pressure as f32).collect::<Vec<_>>(),
            lo.forces.patches.iter().map(|p| p.tension as f32).collect::<Vec<_>>(),
            lo.state.sheet.iter().copied().fold(0.0, f64::max) * 1e3
        );
        let pose = lo.state.pose;
        println!(
            "pose z {:.3} mm roll {:.3} pitch {:.3} deg",
            pose[0] * 1e3,
            pose[1].to_degrees(),
            pose[2].to_degrees()
        );
        for x in [-0.062, 0.062] {
            let b = body(x, 0.130) - least + pose[0] + pose[1] * x + pose[2] * (0.130 - 0.170);
            println!("clearance {:.3}", b * 1e3);
        }
        let area: f64 = lo
            .holds
            .iter()
            .zip(&model.finest().areas)
            .filter(|(h, _)| **h == Hold::Body)
            .map(|(_, a)| a)
            .sum();
        println!("contact {:.1} cm2", area * 1e4);
    }
}
