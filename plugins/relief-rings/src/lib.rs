//! A relief zone in rings around the client's seat bones.
//!
//! The island in the middle takes both seat bones with a margin of 15 to 20 mm around each, so
//! that cells can be taken from under them; rings of cells around it carry the load. How wide the
//! island must be depends on the client, so the spacing of the seat bones must be **measured**: a
//! default would put the edge of the relief under a bone. One ring lies around the island; where
//! the seat bones are far enough in front of the rear edge, there are two.

use plugin_sdk::{Description, Measure, Parameter, Plugin, Refusal, Request};

/// Half of the width of a seat bone's end as a loaded-contour jig takes it: a cylinder of 50 mm.
///
/// Source: the loaded-contour jig as described by Ammer, Karg and Brienza, RESNA 2005.
const BONE: f64 = 25.0;
/// Least width of a ring, mm: a cell goes in.
const RING: f64 = 52.0;
/// Width of a ring where there is room: a hand goes in.
const WIDE_RING: f64 = 80.0;
/// Depth of the thighs' compartments where there is room: a hand goes in behind the rounded front.
const THIGH: f64 = 85.0;

struct ReliefRings;

impl Plugin for ReliefRings {
    fn describe() -> Description {
        Description {
            name: "relief-rings",
            version: env!("CARGO_PKG_VERSION"),
            about: "Relief of both seat bones: an island around their measured spacing, in one ring or two.",
        }
    }

    fn parameters() -> Vec<Parameter> {
        vec![
            Parameter::new(
                "spacing",
                "between the lowest points of the seat bones, measured on this client",
                "mm",
                60.0..=180.0,
                118.0,
            )
            .bound_to(Measure::SeatBoneSpacing)
            .must_be_given(),
            Parameter::new("margin", "kept free around each seat bone", "mm", 15.0..=20.0, 18.0),
            // The place of the loaded-contour jig (from memory): 100 to 150 mm are to be expected.
            Parameter::new(
                "bones-at",
                "seat bones in front of the cushion's rear edge",
                "mm",
                60.0..=250.0,
                125.0,
            ),
        ]
    }

    fn pattern(request: &Request) -> Result<String, Refusal> {
        let plan = Plan::of(request)?;
        Ok(plan.text(request))
    }
}

/// Where the island and its rings lie.
struct Plan {
    /// Half width and half depth of the island.
    isle: (f64, f64),
    /// Its middle, in front of the rear edge.
    middle: f64,
    /// Half width and half depth of the first ring, where there are two.
    ring: Option<(f64, f64)>,
    /// Where the seat ends and the thighs begin.
    seat: f64,
}

impl Plan {
    fn of(request: &Request) -> Result<Self, Refusal> {
        let around = BONE + request.value("margin");
        let isle = (request.value("spacing") / 2.0 + around, around);
        let (half, depth) = (request.width_mm / 2.0, request.depth_mm);
        if isle.0 + RING > half {
            let needed = 2.0 * (isle.0 + RING);
            return Err(Refusal::new(format!(
                "relief for this spacing needs a cushion {needed:.0} mm wide; take a wider size or a smaller margin"
            )));
        }
        // The island is never moved away from the bones to make room.
        let middle = request.value("bones-at");
        let (behind, before) = (isle.1 + RING, middle + isle.1 + RING);
        if middle < behind {
            return Err(Refusal::new(format!(
                "a ring behind this relief needs the seat bones {behind:.0} mm in front of the rear edge; take a smaller margin, or another layout"
            )));
        }
        if before + RING > depth {
            return Err(Refusal::new(format!(
                "relief for seat bones at {middle:.0} mm needs a cushion {:.0} mm deep",
                before + RING
            )));
        }
        let room = before.max(depth - THIGH);
        // A ring of its own, where as much is left around it; no wider than a hand.
        let left = (half - isle.0).min(middle - isle.1).min(room - middle - isle.1);
        let wide = (left / 2.0).min(WIDE_RING);
        let ring = (wide >= RING).then_some((isle.0 + wide, isle.1 + wide));
        let inner = ring.unwrap_or(isle);
        let seat = (middle + inner.1 + WIDE_RING).min(room);
        Ok(Self { isle, middle, ring, seat })
    }

    fn text(&self, request: &Request) -> String {
        let (w, d) = (request.width_mm / 2.0, request.depth_mm);
        let mut points = format!(
            "rear = [0, 0]\ncorner = [{w}, 0, \"round 30\"]\nseat-side = [{w}, {seat}]\n\
             front-corner = [{w}, {d}, \"round 40\"]\nfront = [0, {d}]\nseat-mid = [0, {seat}]\n",
            seat = self.seat
        );
        let mut seams = String::from(
            "outline = { through = [\"rear\", \"corner\", \"seat-side\", \"front-corner\", \"front\"] }\n\
             seat = { through = [\"seat-mid\", \"seat-side\"] }\n\
             legs = { through = [\"seat-mid\", \"front\"] }\n",
        );
        self.add_oval("isle", self.isle, &mut points, &mut seams);
        let around = (self.middle - self.isle.1) / 2.0;
        let mut compartments = format!(
            "isle = {{ seed = [0, {}], number = 1, words = \"under both seat bones\", for = \"seat bone\" }}\n",
            self.middle
        );
        let next = match self.ring {
            // What lies around a ring of its own is parted along the middle.
            Some(ring) => {
                self.add_oval("ring", ring, &mut points, &mut seams);
                seams += "spine = { through = [\"rear\", \"ring-rear\"] }\n\
                          hold = { through = [\"ring-front\", \"seat-mid\"] }\n";
                compartments += &format!(
                    "ring = {{ seed = [0, {}], number = 2, words = \"ring around the seat bones\", for = \"trochanter\" }}\n\
                     seat = {{ seed = [{}, {}], numbers = {{ left = 3, right = 4 }}, words = \"beside the ring\", for = \"trochanter\" }}\n",
                    self.middle - f64::midpoint(self.isle.1, ring.1),
                    f64::midpoint(ring.0, w),
                    self.middle
                );
                5
            }
            None => {
                compartments += &format!(
                    "seat = {{ seed = [0, {around}], number = 2, words = \"around the relief\", for = \"trochanter\" }}\n"
                );
                3
            }
        };
        compartments += &format!(
            "thigh = {{ seed = [{}, {}], numbers = {{ left = {next}, right = {} }}, words = \"under the thigh\", for = \"thigh\" }}\n",
            w / 2.0,
            f64::midpoint(self.seat, d),
            next + 1
        );
        format!(
            "format = 1\nkind = \"layout\"\nname = \"relief-rings\"\ntitle = \"Relief rings\"\n\
             about = \"Relief of both seat bones, around their measured spacing.\"\n\
             class = \"skin protection\"\nmirror = true\nwall_height = 80\nstock_crown = {crown}\n\
             rating_from = \"Not found by a test or the model: 400 kg for each square metre, less than the built-in layouts of this size, and 60 kg at most. It must be tested before use.\"\n\
             sizes = [{{ size = \"{width}x{d}\", max_user_weight_kg = {rating} }}]\n\
             [points]\n{points}[seams]\n{seams}[compartments]\n{compartments}",
            width = 2.0 * w,
            crown = 6,
            rating = rating(2.0 * w, d),
        )
    }

    /// A closed oval around the bones, straight between them and half circles outside of them:
    /// half is written, half is mirrored.
    fn add_oval(&self, name: &str, half: (f64, f64), points: &mut String, seams: &mut String) {
        let (a, b) = half;
        let straight = a - b;
        for (spot, x, y) in [
            ("rear", 0.0, -b),
            ("rear-bone", straight, -b),
            ("side", a, 0.0),
            ("front-bone", straight, b),
            ("front", 0.0, b),
        ] {
            *points += &format!("{name}-{spot} = [{x}, {}]\n", self.middle + y);
        }
        // Quarter circles, to the right hand going around.
        let bow = -b * (1.0 - 0.5_f64.sqrt());
        *seams += &format!(
            "{name}-rear = {{ through = [\"{name}-rear\", \"{name}-rear-bone\"] }}\n\
             {name}-side = {{ through = [\"{name}-rear-bone\", \"{name}-side\", \"{name}-front-bone\"], bow = {bow} }}\n\
             {name}-front = {{ through = [\"{name}-front-bone\", \"{name}-front\"] }}\n"
        );
    }
}

/// What the size is rated for, kg: nobody tested this pattern, so it is less than any built-in
/// layout of the size is rated for, and no more than 60.
fn rating(width_mm: f64, depth_mm: f64) -> f64 {
    (400.0 * width_mm * depth_mm * 1e-6).floor().min(60.0)
}

plugin_sdk::export!(ReliefRings);

#[cfg(test)]
mod tests {
    use cushion::{Chain, Layout, Pattern, Point, Size, arrange};
    use plugin_host::read_answer;

    use super::*;

    fn drawn(size: &str, given: &[(&str, f64)]) -> (Layout, Pattern) {
        let size: Size = size.parse().expect("a size");
        let request = Request::of::<ReliefRings>(size.width().to_mm(), size.depth().to_mm(), given);
        let text = ReliefRings::pattern(&request).expect("there is room");
        let layout = read_answer(&text, size).unwrap_or_else(|fault| panic!("{fault:?}\n{text}"));
        let pattern = arrange(&layout, size).expect("it was drawn before");
        (layout, pattern)
    }

    /// The least distance from a point to the outer line of a compartment, mm.
    fn from_line(pattern: &Pattern, id: &str, at: Point) -> f64 {
        let ix = pattern.by_id(id).expect("there is such a compartment");
        let pieces = pattern.pieces(&pattern[ix].outer);
        let line = pieces.flat_map(|piece| Chain::new(vec![piece]).flatten(0.01));
        line.map(|p| p.distance(at)).fold(f64::INFINITY, f64::min)
    }

    #[test]
    fn one_ring_at_250_and_two_at_600() {
        let near = [("spacing", 60.0), ("margin", 15.0), ("bones-at", 92.0)];
        let (_, small) = drawn("250x250", &near);
        assert_eq!(small.compartments().len(), 4);
        let seat = small.by_id("seat").expect("there is a surround");
        assert_eq!(small[seat].holes.len(), 1);
        let (_, usual) = drawn("600x600", &[("spacing", 130.0)]);
        assert_eq!(usual.compartments().len(), 4);
        let (_, large) = drawn("600x600", &[("spacing", 130.0), ("bones-at", 170.0)]);
        let ring = large.by_id("ring").expect("there is room for a ring of its own");
        assert_eq!(large[ring].holes.len(), 1);
        assert_eq!(large.compartments().len(), 6);
    }

    #[test]
    fn the_margin_is_kept_around_each_bone() {
        for (spacing, margin, at) in
            [(100.0, 15.0, 125.0), (118.0, 18.0, 125.0), (140.0, 20.0, 97.0)]
        {
            let given = [("spacing", spacing), ("margin", margin), ("bones-at", at)];
            let (_, pattern) = drawn("480x440", &given);
            for bone in [-spacing / 2.0, spacing / 2.0] {
                let least = from_line(&pattern, "isle", Point::new(bone, at));
                // Coordinates are written in full; chords of the circle lie 0.01 mm inside of it.
                assert!((least - BONE - margin).abs() < 0.011, "{least}");
            }
        }
    }

    #[test]
    fn the_island_is_a_stadium_and_the_ring_is_even() {
        use std::f64::consts::PI;
        let given = [("spacing", 130.0), ("margin", 17.0), ("bones-at", 170.0)];
        let (_, pattern) = drawn("600x600", &given);
        let area = |id| pattern.area(pattern.by_id(id).expect("it is there")).to_mm2();
        let stadium = |radius: f64| PI * radius * radius + 130.0 * 2.0 * radius;
        let wide = pattern_ring(&pattern);
        // In binary fractions, and arcs as curves that the crate draws to a thousandth.
        assert!((area("isle") - stadium(42.0)).abs() < 0.1);
        assert!((area("ring") - stadium(42.0 + wide) + stadium(42.0)).abs() < 0.5);
    }

    /// How wide the ring is behind the island.
    fn pattern_ring(pattern: &Pattern) -> f64 {
        let bone = Point::new(65.0, 170.0);
        from_line(pattern, "ring", bone) - from_line(pattern, "isle", bone)
    }

    #[test]
    fn too_little_room_is_refused_in_words() {
        let check = |size: (f64, f64), given: &[(&str, f64)], said: &str| {
            let request = Request::of::<ReliefRings>(size.0, size.1, given);
            let refusal = ReliefRings::pattern(&request).expect_err("there is no room");
            assert_eq!(refusal.to_string(), said);
        };
        check(
            (250.0, 250.0),
            &[("spacing", 150.0)],
            "relief for this spacing needs a cushion 340 mm wide; take a wider size or a smaller margin",
        );
        check(
            (440.0, 260.0),
            &[("spacing", 118.0)],
            "relief for seat bones at 125 mm needs a cushion 272 mm deep",
        );
        // Nearer to the rear edge, the relief would have to be moved away from the bones.
        check(
            (440.0, 400.0),
            &[("spacing", 118.0), ("bones-at", 80.0)],
            "a ring behind this relief needs the seat bones 95 mm in front of the rear edge; take a smaller margin, or another layout",
        );
    }
}
