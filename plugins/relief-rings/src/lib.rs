//! A relief zone in rings around the client's seat bones.
//!
//! The island in the middle takes both seat bones with a margin of 15 to 20 mm around each, so
//! that cells can be taken from under them; rings of cells around it carry the load. How wide the
//! island must be depends on the client, so the spacing of the seat bones must be **measured**: a
//! default would put the edge of the relief under a bone.

use plugin_sdk::{Description, Measure, Parameter, Plugin, Refusal, Request};

/// Half of the width of a seat bone's end as a loaded-contour jig takes it: a cylinder of 50 mm.
///
/// Source: the loaded-contour jig as described by Ammer, Karg and Brienza, RESNA 2005.
const BONE: f64 = 25.0;
/// Least width of a ring, mm: a cell goes in.
const RING: f64 = 52.0;
/// Width of a ring where there is room: a hand goes in.
const WIDE_RING: f64 = 80.0;

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
            // Common practice puts the bones 100 to 150 mm in front of the buttocks' rear.
            Parameter::new(
                "bones-at",
                "seat bones in front of the rear edge; 0 takes the middle of the rear half",
                "mm",
                0.0..=170.0,
                0.0,
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
        let least = isle.1 + RING;
        let wanted = request.value("bones-at");
        let middle = if wanted > 0.0 { wanted.max(least) } else { (0.3 * depth).max(least) };
        // A hand behind the knees, and a ring before the island.
        let room = depth - 85.0;
        if middle + isle.1 + RING > room {
            return Err(Refusal::new(format!(
                "relief for this client needs a cushion {:.0} mm deep",
                middle + isle.1 + RING + 85.0
            )));
        }
        // A ring of its own, where as much is left around it; no wider than a hand.
        let left = (half - isle.0).min(middle - isle.1).min(room - middle - isle.1);
        let wide = (left / 2.0).min(WIDE_RING);
        let ring = (wide >= RING).then_some((isle.0 + wide, isle.1 + wide));
        let seat = match ring {
            Some(ring) => (middle + ring.1 + WIDE_RING).min(room),
            None => (middle + isle.1 + WIDE_RING.min(room - middle - isle.1)).min(room),
        };
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
             rating_from = \"Not found: a plugin's pattern must be tested before use.\"\n\
             sizes = [{{ size = \"{width}x{d}\", max_user_weight_kg = 60 }}]\n\
             [points]\n{points}[seams]\n{seams}[compartments]\n{compartments}",
            width = 2.0 * w,
            crown = 6
        )
    }

    /// A closed oval around the middle: half is written, half is mirrored.
    fn add_oval(&self, name: &str, half: (f64, f64), points: &mut String, seams: &mut String) {
        let (a, b) = half;
        // Straight between the bones, half circles around them.
        let straight = a - b;
        let slant = b * 0.5_f64.sqrt();
        let spots = [
            ("rear", 0.0, -b),
            ("rear-bone", straight, -b),
            ("rear-side", straight + slant, -slant),
            ("side", a, 0.0),
            ("front-side", straight + slant, slant),
            ("front-bone", straight, b),
            ("front", 0.0, b),
        ];
        let mut through = Vec::new();
        for (spot, x, y) in spots {
            *points += &format!("{name}-{spot} = [{x}, {}]\n", self.middle + y);
            through.push(format!("\"{name}-{spot}\""));
        }
        *seams += &format!("{name} = {{ through = [{}], curve = true }}\n", through.join(", "));
    }
}

plugin_sdk::export!(ReliefRings);

#[cfg(test)]
mod tests {
    use cushion::{Layout, Pattern, Size, arrange};
    use plugin_host::read_answer;

    use super::*;

    fn drawn(size: &str, given: &[(&str, f64)]) -> (Layout, Pattern) {
        let size: Size = size.parse().expect("a size");
        let request = Request::of::<ReliefRings>(size.width().to_mm(), size.depth().to_mm(), given);
        let text = ReliefRings::pattern(&request).expect("there is room");
        let layout = read_answer(&text, size).unwrap_or_else(|fault| panic!("{fault}\n{text}"));
        let pattern = arrange(&layout, size).expect("it was drawn before");
        (layout, pattern)
    }

    #[test]
    fn one_ring_at_250_and_two_at_600() {
        let (_, small) = drawn("250x280", &[("spacing", 60.0), ("margin", 15.0)]);
        assert_eq!(small.compartments().len(), 4);
        let (_, large) = drawn("600x550", &[("spacing", 130.0), ("bones-at", 170.0)]);
        let ring = large.by_id("ring").expect("there is room for a ring of its own");
        assert_eq!(large[ring].holes.len(), 1);
        let seat = small.by_id("seat").expect("there is a surround");
        assert_eq!(small[seat].holes.len(), 1);
        assert_eq!(large.compartments().len(), 6);
    }

    #[test]
    fn the_margin_is_kept_around_each_bone() {
        for (spacing, margin) in [(100.0, 15.0), (118.0, 18.0), (140.0, 20.0)] {
            let (_, pattern) = drawn("480x440", &[("spacing", spacing), ("margin", margin)]);
            let isle = pattern.by_id("isle").expect("there is an island");
            let middle = pattern.centroid(isle).y;
            let outline: Vec<cushion::Point> = pattern
                .pieces(&pattern[isle].outer)
                .flat_map(|piece| cushion::Chain::new(vec![piece]).flatten(0.01))
                .collect();
            for bone in [-spacing / 2.0, spacing / 2.0] {
                let at = cushion::Point::new(bone, middle);
                let least = outline.iter().map(|p| p.distance(at)).fold(f64::INFINITY, f64::min);
                // A smooth curve through points on a circle stays within two millimetres of it.
                assert!((least - BONE - margin).abs() < 2.0, "{least}");
            }
        }
    }

    #[test]
    fn too_little_room_is_refused_in_words() {
        let request = Request::of::<ReliefRings>(250.0, 250.0, &[("spacing", 150.0)]);
        let refusal = ReliefRings::pattern(&request).expect_err("there is no room");
        assert_eq!(
            refusal.to_string(),
            "relief for this spacing needs a cushion 340 mm wide; take a wider size or a smaller margin"
        );
    }
}
