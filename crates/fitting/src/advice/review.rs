//! One size of a layout, as the bodies find it that it suits.

use case::{
    BonesAndSeams, CellsDo, CentralSeat, Client, Date, ON_A_SEAM, PredictedOutcome, REVIEWED,
    ReviewedSeat, Sides, SurveyedBody, Weighing, nearest_rank,
};
use cushion::{CompartmentIx, Length, Mass, Pattern, Point, Purpose, Side, Size};
use mechanics::{SeatedClient, Stop};

use crate::advice::survey::measures;
use crate::prediction::live::LivePredictor;
use crate::prediction::prepared::PreparedCushion;

/// Between the lowest points of men's seat bones, mm, with its standard deviation.
///
/// Source: Velagapudi and Ray, 2019, as at `SeatedClient::SEAT_BONE_SPACING`.
const MEN: [f64; 2] = [112.0, 9.0];
/// By how much women's are farther apart, mm; the same deviation is taken.
///
/// Source: Chen, Scientific Reports 11, 2021.
const WOMEN_MORE: f64 = 13.0;

/// From where to where spacings are summed up, mm: six deviations to both sides.
const SPACINGS: [f64; 2] = [58.0, 180.0];
/// In steps of so much, mm.
const STEP: f64 = 0.25;

/// Returns where seat bones fall against the seams of a pattern, with such a share of women among
/// the people. They are taken to lie 125 mm in front of the rear edge, as where nothing is measured.
#[must_use]
pub fn bones_and_seams(pattern: &Pattern, women: f64) -> BonesAndSeams {
    let steps = ((SPACINGS[1] - SPACINGS[0]) / STEP).round() as usize;
    let spacings: Vec<f64> = (0..=steps).map(|at| SPACINGS[0] + STEP * at as f64).collect();
    let people = |spacing: &f64| {
        let bell = |middle: f64| {
            let off = (spacing - middle) / MEN[1];
            libm::exp(-off * off / 2.0)
        };
        women * bell(MEN[0] + WOMEN_MORE) + (1.0 - women) * bell(MEN[0])
    };
    let people: Vec<f64> = spacings.iter().map(people).collect();
    let all: f64 = people.iter().sum();
    let apart = REVIEWED.map(|percent| {
        let mut before = 0.0;
        let has = |own: &&(&f64, &f64)| {
            before += own.1;
            before >= all * f64::from(percent) / 100.0
        };
        let pairs: Vec<(&f64, &f64)> = spacings.iter().zip(&people).collect();
        pairs.iter().find(has).map_or(SPACINGS[1], |own| *own.0)
    });
    let near = Seams::of(pattern);
    let is_on = |spacing: f64| near.to_bones(spacing) < ON_A_SEAM.to_mm();
    let on = spacings.iter().zip(&people).filter(|(spacing, _)| is_on(**spacing));
    // From nought: a sum of nothing is a negative one.
    let on = on.fold(0.0, |sum, (_, people)| sum + people);
    BonesAndSeams {
        women,
        apart: apart.map(Length::from_mm),
        to_seam: apart.map(|spacing| Length::from_mm(near.to_bones(spacing))),
        on_seam: on / all,
    }
}

/// All seams as straight pieces, mm.
struct Seams(Vec<[Point; 2]>);

impl Seams {
    /// Curves are straight within so much, mm.
    const FLAT: f64 = 0.1;

    fn of(pattern: &Pattern) -> Self {
        let lines = pattern.edges().iter().map(|edge| edge.chain.flatten(Self::FLAT));
        let pieces = lines
            .flat_map(|line| line.windows(2).map(|pair| [pair[0], pair[1]]).collect::<Vec<_>>());
        Self(pieces.collect())
    }

    /// From the nearer of two seat bones, so far apart, to the nearest seam, mm.
    fn to_bones(&self, spacing: f64) -> f64 {
        let forward = SeatedClient::SEAT_BONES_FORWARD.to_mm();
        let bones = [-0.5, 0.5].map(|side| Point::new(side * spacing, forward));
        let to = |bone: &Point| {
            let each = self.0.iter().map(|piece| distance(*bone, *piece));
            each.fold(f64::INFINITY, f64::min)
        };
        bones.iter().map(to).fold(f64::INFINITY, f64::min)
    }
}

/// From a point to a straight piece.
fn distance(point: Point, [from, to]: [Point; 2]) -> f64 {
    let (along, out) = (to - from, point - from);
    let length = along.x * along.x + along.y * along.y;
    let share = if length > 0.0 { (out.x * along.x + out.y * along.y) / length } else { 0.0 };
    let nearest = from + along * share.clamp(0.0, 1.0);
    libm::hypot(point.x - nearest.x, point.y - nearest.y)
}

/// Returns of bodies those that so many of a hundred are as light as, by nearest rank; none of none.
#[must_use]
pub fn ranked_bodies<'b>(bodies: &[&'b SurveyedBody]) -> Vec<(u8, &'b SurveyedBody)> {
    let mut by_weight = bodies.to_vec();
    by_weight.sort_by(|one, other| {
        one.weight.to_kg().total_cmp(&other.weight.to_kg()).then(one.row.cmp(&other.row))
    });
    let at = |percent: u8| by_weight.get(nearest_rank(by_weight.len(), percent));
    REVIEWED.iter().filter_map(|own| Some((*own, *at(*own)?))).collect()
}

/// Returns a client of a body's measures, for a size; `like` has all that the table does not say.
#[must_use]
pub fn client_of_body(body: &SurveyedBody, size: Size, like: &Client, on: Date) -> Client {
    let mut client = like.clone();
    client.measures = measures(body);
    client.weighing = Some(Weighing { weight: body.weight, on });
    client.cushion.size = size;
    client
}

/// Returns how a body sits on the stock fill; such a body may be none that a cushion carries.
#[must_use]
pub fn reviewed_seat(
    cushion: &PreparedCushion,
    (percent, body): (u8, &SurveyedBody),
    like: &Client,
    on: Date,
) -> ReviewedSeat {
    let client = client_of_body(body, cushion.pattern().size(), like, on);
    let predicted = cushion.predict(&client, body.weight, &stock_counts(cushion), Stop::never());
    let nothing = ReviewedSeat {
        percent,
        weight: body.weight,
        outcome: PredictedOutcome::OutOfSteps,
        left: None,
        slack: Vec::new(),
        bottomed: Vec::new(),
    };
    let Ok((prediction, _)) = predicted else { return nothing };
    let outcome = prediction.outcome;
    let Some(seat) = prediction.seated else { return ReviewedSeat { outcome, ..nothing } };
    let Sides { left, right } = seat.clearance;
    let of = |is: &dyn Fn(&case::PredictedCompartment) -> bool| {
        seat.compartments.iter().filter(|own| is(own)).map(|own| own.number).collect()
    };
    ReviewedSeat {
        outcome,
        left: Some(if left.central <= right.central { left } else { right }),
        slack: of(&|own| own.slack),
        bottomed: of(&|own| own.bottomed),
        ..nothing
    }
}

/// Returns the counts as supplied, in the pattern's order.
#[must_use]
pub fn stock_counts(cushion: &PreparedCushion) -> Vec<u32> {
    cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

/// Cells by which a compartment is tried, as the planner tries it: what a hand moves.
fn tried(cells: u32) -> u32 {
    (cells / 10).clamp(2, 8)
}

/// Returns what a cell does in each compartment of a cushion with these counts under a client, in the
/// pattern's order; none where the client comes to no rest.
///
/// # Panics
///
/// Panics unless there is a count for each compartment.
#[must_use]
pub fn cells_do(
    (cushion, counts): (&PreparedCushion, &[u32]),
    client: &Client,
    weight: Mass,
) -> Vec<Option<CellsDo>> {
    let live = LivePredictor::new(cushion, client, weight, Stop::never());
    let Ok(mut live) = live else { return vec![None; counts.len()] };
    let pattern = cushion.pattern();
    let range = |place: usize| cushion.stock().compartments[place].cells;
    let mut at = |changed: &[(usize, u32)]| -> Option<CentralSeat> {
        let mut other = counts.to_vec();
        changed.iter().for_each(|(place, cells)| other[*place] = *cells);
        live.central(&other).seated
    };
    let one = |ix: CompartmentIx| {
        let place = ix.index();
        let tried = tried(counts[place]).min(counts[place]);
        let (more, less) = (counts[place] + tried, counts[place] - tried);
        let (more, less) = (at(&[(place, more)])?, at(&[(place, less)])?);
        let cells = f64::from(2 * tried);
        let mut lifted = |partner: usize| {
            let side = pattern[ix].side?;
            let moved = [(place, range(place).high), (partner, range(partner).low)];
            let (there, before) = (at(&moved)?, at(&[])?);
            let above = |seat: &CentralSeat| {
                let Sides { left, right } = seat.clearance;
                if side == Side::Left { left - right } else { right - left }
            };
            Some(above(&there) - above(&before))
        };
        let partner = pattern.partner(ix).filter(|_| pattern[ix].purpose == Purpose::SeatBone);
        Some(CellsDo {
            lifts: partner.and_then(|own| lifted(own.index())),
            tried,
            under: Sides {
                left: (more.clearance.left - less.clearance.left) / cells,
                right: (more.clearance.right - less.clearance.right) / cells,
            },
            pitch_deg: (more.pitch_deg - less.pitch_deg) / cells,
        })
    };
    pattern.indices().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn body(row: u32, kg: f64) -> SurveyedBody {
        SurveyedBody {
            row,
            sex: String::new(),
            weight: Mass::from_kg(kg),
            hip_width: Length::from_mm(400.0),
            thigh_depth: Length::from_mm(480.0),
        }
    }

    /// Percentiles of a normal distribution: 1.6449 deviations below and above the mean (any table).
    #[test]
    fn spacings_are_those_of_the_sources() {
        let pattern = testkit::pattern("row-six", "440x400");
        for (women, middle) in [(0.0, 112.0), (1.0, 125.0)] {
            let found = bones_and_seams(&pattern, women).apart.map(|own| own.to_mm());
            for (own, wanted) in found.iter().zip([-1.6449, 0.0, 1.6449]) {
                // Steps of a quarter of a millimetre.
                assert!((own - (middle + 9.0 * wanted)).abs() < 0.3, "{own} {middle} {wanted}");
            }
        }
        // Half of each: the mean, and a wider spread than of one.
        let both = bones_and_seams(&pattern, 0.5).apart.map(|own| own.to_mm());
        assert!((both[1] - 118.5).abs() < 0.3, "{both:?}");
        assert!(both[0] < 102.0 && both[2] > 135.0, "{both:?}");
    }

    /// Straight seams: the distance is the coordinate.
    #[test]
    fn the_distance_to_a_seam_is_that_of_the_drawing() {
        let pattern = testkit::pattern("row-six", "440x400");
        let found = bones_and_seams(&pattern, 0.0);
        // The seam in the middle is half a spacing away, and the one across is farther.
        for (apart, to) in found.apart.iter().zip(found.to_seam) {
            let across = Seams::of(&pattern).to_bones(apart.to_mm());
            assert!((across - to.to_mm()).abs() < 1e-9);
            assert!(to.to_mm() <= apart.to_mm() / 2.0 + 1e-9, "{apart:?} {to:?}");
        }
        let straight = [Point::new(0.0, -50.0), Point::new(0.0, 50.0)];
        assert!((distance(Point::new(30.0, 10.0), straight) - 30.0).abs() < 1e-12);
        assert!((distance(Point::new(30.0, 90.0), straight) - 50.0).abs() < 1e-12);
    }

    #[test]
    fn bodies_are_ranked_by_weight() {
        let all: Vec<SurveyedBody> = (1..=40).map(|at| body(at, f64::from(100 - at))).collect();
        let ranked = ranked_bodies(&all.iter().collect::<Vec<_>>());
        let found: Vec<(u8, f64)> =
            ranked.iter().map(|(percent, own)| (*percent, own.weight.to_kg())).collect();
        // Of 40 the 2nd, the 20th and the 38th from the lightest, which is 60 kg.
        assert_eq!(found, [(5, 61.0), (50, 79.0), (95, 97.0)]);
        assert_eq!(ranked_bodies(&[]).len(), 0);
        assert_eq!(ranked_bodies(&[&all[0]]).len(), 3);
    }
}
