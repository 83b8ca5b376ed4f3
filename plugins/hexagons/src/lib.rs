//! Hexagonal compartments, clipped to the outline.
//!
//! Compartments of one size all over the cushion, for shaping in small steps. They are the places
//! nearest to the points of a hexagonal grid: hexagons inside, and along the outline whatever is
//! left of them, never narrower than the grid is wide.

use plugin_sdk::{Description, Parameter, Plugin, Refusal, Request};

/// Two places are one where they are closer than this, mm.
const SAME: f64 = 1e-6;
/// The rounding of the corners, mm.
const CORNER: f64 = 25.0;

type Point = (f64, f64);

/// A point of the grid, with its place: rows from the rear, places from the client's left.
struct Seed {
    at: Point,
    row: usize,
    place: usize,
}

struct Hexagons;

impl Plugin for Hexagons {
    fn describe() -> Description {
        Description {
            name: "hexagons",
            version: env!("CARGO_PKG_VERSION"),
            about: "Hexagonal compartments of one size, for shaping in small steps.",
        }
    }

    fn parameters() -> Vec<Parameter> {
        vec![Parameter::new(
            "pitch",
            "from the middle of one compartment to the next, at least",
            "mm",
            80.0..=200.0,
            110.0,
        )]
    }

    fn pattern(request: &Request) -> Result<String, Refusal> {
        let (width, depth, pitch) = (request.width_mm, request.depth_mm, request.value("pitch"));
        let columns = (width / pitch).floor();
        if columns < 2.0 || depth < 2.0 * pitch {
            return Err(Refusal::new(format!(
                "a pitch of {pitch} mm leaves no room for two rows of two; take a smaller one"
            )));
        }
        let seeds = grid(width, depth, pitch);
        let cells: Vec<Vec<Point>> =
            (0..seeds.len()).map(|own| nearest(&seeds, own, width, depth)).collect();
        let compartments: Vec<String> = (1..)
            .zip(seeds.iter().zip(&cells))
            .map(|(number, (seed, cell))| compartment(number, seed, cell))
            .collect();
        Ok(Net::of(&cells).text(&compartments.concat(), width, depth))
    }
}

/// The points of the grid: rows parted evenly, every other row shifted by half a pitch.
fn grid(width: f64, depth: f64, pitch: f64) -> Vec<Seed> {
    let columns = (width / pitch).floor() as usize;
    let across = width / columns as f64;
    let rows = (depth / (across * 0.75_f64.sqrt())).round().max(2.0) as usize;
    let along = depth / rows as f64;
    let mut seeds = Vec::new();
    for row in 0..rows {
        let shifted = row % 2 == 1;
        let count = columns - usize::from(shifted);
        for column in 0..count {
            let first = if shifted { across } else { across / 2.0 };
            let x = first + column as f64 * across - width / 2.0;
            let at = (x, (row as f64 + 0.5) * along);
            seeds.push(Seed { at, row: row + 1, place: column + 1 });
        }
    }
    seeds
}

/// What of the rectangle is nearest to one point of the grid: cut by the middle line to each other.
fn nearest(seeds: &[Seed], own: usize, width: f64, depth: f64) -> Vec<Point> {
    let half = width / 2.0;
    let mut cell = vec![(-half, 0.0), (half, 0.0), (half, depth), (-half, depth)];
    let here = seeds[own].at;
    for (other, Seed { at: there, .. }) in seeds.iter().enumerate() {
        if other == own {
            continue;
        }
        let (dx, dy) = (there.0 - here.0, there.1 - here.1);
        let middle = ((there.0 + here.0) / 2.0, (there.1 + here.1) / 2.0);
        let beyond = |p: Point| (p.0 - middle.0) * dx + (p.1 - middle.1) * dy;
        cell = cut(&cell, beyond);
    }
    cell
}

/// Keeps the part of a convex polygon where `beyond` is not positive.
fn cut(polygon: &[Point], beyond: impl Fn(Point) -> f64) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    for place in 0..polygon.len() {
        let (a, b) = (polygon[place], polygon[(place + 1) % polygon.len()]);
        let (fa, fb) = (beyond(a), beyond(b));
        if fa <= 0.0 {
            kept.push(a);
        }
        if (fa < 0.0 && fb > 0.0) || (fa > 0.0 && fb < 0.0) {
            let t = fa / (fa - fb);
            kept.push((a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t));
        }
    }
    kept.dedup_by(|a, b| same(*a, *b));
    if kept.len() > 1 && same(kept[0], kept[kept.len() - 1]) {
        kept.pop();
    }
    kept
}

fn same(a: Point, b: Point) -> bool {
    (a.0 - b.0).abs() < SAME && (a.1 - b.1).abs() < SAME
}

/// Corners with their names, and the walls between compartments.
struct Net {
    corners: Vec<Point>,
    walls: Vec<(usize, usize)>,
}

impl Net {
    fn of(cells: &[Vec<Point>]) -> Self {
        let mut net = Self { corners: Vec::new(), walls: Vec::new() };
        for cell in cells {
            let places: Vec<usize> = cell.iter().map(|corner| net.place(*corner)).collect();
            for side in 0..places.len() {
                let (a, b) = (places[side], places[(side + 1) % places.len()]);
                let wall = (a.min(b), a.max(b));
                if !net.walls.contains(&wall) {
                    net.walls.push(wall);
                }
            }
        }
        net
    }

    fn place(&mut self, corner: Point) -> usize {
        let known = self.corners.iter().position(|known| same(*known, corner));
        known.unwrap_or_else(|| {
            self.corners.push(corner);
            self.corners.len() - 1
        })
    }

    fn text(&self, compartments: &str, width: f64, depth: f64) -> String {
        let half = width / 2.0;
        let on_outline = |p: Point| {
            (p.0.abs() - half).abs() < SAME || p.1.abs() < SAME || (p.1 - depth).abs() < SAME
        };
        let is_corner = |p: Point| {
            (p.0.abs() - half).abs() < SAME && (p.1.abs() < SAME || (p.1 - depth).abs() < SAME)
        };
        let mut points = String::new();
        for (place, corner) in self.corners.iter().enumerate() {
            let round =
                if is_corner(*corner) { format!(", \"round {CORNER}\"") } else { String::new() };
            points += &format!("p{place} = [{:.4}, {:.4}{round}]\n", corner.0, corner.1);
        }
        let mut around: Vec<usize> =
            (0..self.corners.len()).filter(|place| on_outline(self.corners[*place])).collect();
        around.sort_by(|a, b| {
            let turn = |place: usize| way_around(self.corners[place], half, depth);
            turn(*a).total_cmp(&turn(*b))
        });
        let around: Vec<String> = around.iter().map(|place| format!("\"p{place}\"")).collect();
        let mut seams =
            format!("outline = {{ through = [{}], closed = true }}\n", around.join(", "));
        let inner = self.walls.iter().filter(|(a, b)| {
            let middle = (
                (self.corners[*a].0 + self.corners[*b].0) / 2.0,
                (self.corners[*a].1 + self.corners[*b].1) / 2.0,
            );
            !on_outline(middle)
        });
        for (number, (a, b)) in inner.enumerate() {
            seams += &format!("s{number} = {{ through = [\"p{a}\", \"p{b}\"] }}\n");
        }
        format!(
            "format = 1\nkind = \"layout\"\nname = \"hexagons\"\ntitle = \"Hexagons\"\n\
             about = \"Hexagonal compartments of one size, for shaping in small steps.\"\n\
             class = \"skin protection\"\nwall_height = 80\nstock_crown = 8\n\
             rating_from = \"Not found by a test or the model: 400 kg for each square metre, less than the built-in layouts of this size, and 60 kg at most. It must be tested before use.\"\n\
             sizes = [{{ size = \"{width}x{depth}\", max_user_weight_kg = {rating} }}]\n\
             [points]\n{points}[seams]\n{seams}[compartments]\n{compartments}",
            rating = rating(width, depth),
        )
    }
}

/// How far around the outline a point on it lies, from the rear left corner over the right.
fn way_around(p: Point, half: f64, depth: f64) -> f64 {
    if p.1.abs() < SAME {
        p.0 + half
    } else if (p.0 - half).abs() < SAME {
        2.0 * half + p.1
    } else if (p.1 - depth).abs() < SAME {
        2.0 * half + depth + half - p.0
    } else {
        4.0 * half + depth + depth - p.1
    }
}

/// One compartment, claimed in its middle.
fn compartment(number: usize, Seed { row, place, .. }: &Seed, cell: &[Point]) -> String {
    let count = cell.len() as f64;
    let (x, y) = cell.iter().fold((0.0, 0.0), |sum, p| (sum.0 + p.0 / count, sum.1 + p.1 / count));
    format!(
        "c{number} = {{ seed = [{x:.4}, {y:.4}], number = {number}, words = \"row {row} from the rear, place {place} from the client's left\", for = \"general\" }}\n"
    )
}

/// What the size is rated for, kg: nobody tested this pattern, so it is less than any built-in
/// layout of the size is rated for, and no more than 60.
fn rating(width_mm: f64, depth_mm: f64) -> f64 {
    (400.0 * width_mm * depth_mm * 1e-6).floor().min(60.0)
}

plugin_sdk::export!(Hexagons);

#[cfg(test)]
mod tests {
    use cushion::{Length, Pattern, Size, arrange, narrow_places};
    use plugin_host::read_answer;

    use super::*;

    fn drawn(size: &str, pitch: f64) -> Pattern {
        let size: Size = size.parse().expect("a size");
        let (width, depth) = (size.width().to_mm(), size.depth().to_mm());
        let request = Request::of::<Hexagons>(width, depth, &[("pitch", pitch)]);
        let text = Hexagons::pattern(&request).expect("there is room");
        let layout = read_answer(&text, size).unwrap_or_else(|fault| panic!("{fault:?}\n{text}"));
        arrange(&layout, size).expect("it was drawn before")
    }

    #[test]
    fn compartments_cover_the_cushion_and_take_a_hand() {
        for (size, pitch) in [("250x250", 110.0), ("440x400", 110.0), ("600x550", 130.0)] {
            let pattern = drawn(size, pitch);
            let whole = pattern.size().width().to_mm() * pattern.size().depth().to_mm();
            let rounded = (4.0 - std::f64::consts::PI) * CORNER * CORNER;
            let sum: f64 = pattern.indices().map(|ix| pattern.area(ix).to_mm2()).sum();
            // Coordinates are written to a tenth of a micrometre.
            assert!((sum - whole + rounded).abs() < 1.0, "{sum} of {whole}");
            for ix in pattern.indices() {
                assert!(
                    narrow_places(&pattern, ix, Length::from_mm(70.0)).is_empty(),
                    "{size}: {}",
                    pattern[ix].id
                );
            }
        }
    }

    #[test]
    fn a_hexagon_inside_has_the_area_of_its_grid() {
        let pattern = drawn("600x550", 150.0);
        // Four columns of 150 mm; rows of 550 / round(550 / 129.9) = 137.5 mm.
        let inner = pattern.indices().filter(|&ix| {
            pattern[ix].outer.steps.iter().all(|&(edge, _)| !pattern[edge].is_outer())
        });
        let areas: Vec<f64> = inner.map(|ix| pattern.area(ix).to_mm2()).collect();
        assert!(!areas.is_empty());
        for area in areas {
            assert!((area - 150.0 * 137.5).abs() < 1.0, "{area}");
        }
    }

    #[test]
    fn words_say_where_a_compartment_is() {
        let pattern = drawn("440x400", 110.0);
        // Rows of four and three; the last of the second row is the seventh.
        let seventh = pattern.by_id("c7").expect("there are more than seven");
        assert_eq!(
            pattern[seventh].words.in_language("en"),
            "row 2 from the rear, place 3 from the client's left"
        );
        let (x, y) = (pattern.centroid(seventh).x, pattern.centroid(seventh).y);
        assert!(x > 0.0 && y > 100.0 && y < 200.0, "{x}, {y}");
    }

    #[test]
    fn a_pitch_without_room_is_refused() {
        let request = Request::of::<Hexagons>(250.0, 250.0, &[("pitch", 130.0)]);
        assert!(Hexagons::pattern(&request).is_err());
    }
}
