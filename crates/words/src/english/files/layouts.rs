//! English: what is wrong with a layout or a size.

use case::BodyMeasure;
use cushion::{FaultKind, Length, Listed, Point, Size, SizeError};

use crate::rounding::decimals_apart;

/// What is wrong with a layout.
pub(super) fn fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::UnknownPoint(name) => format!("no point is called `{name}`"),
        FaultKind::UnknownSeam(name) => format!("no seam is called `{name}`"),
        FaultKind::Circular => "this point lies on a seam that needs the point first".to_owned(),
        FaultKind::NotOnSeam { seam, point } => {
            format!("the seam `{seam}` does not run through `{point}` here")
        }
        FaultKind::BeyondSeam => "this point lies beyond the stretch that it counts on".to_owned(),
        FaultKind::SamePlace(other) => format!("this point lies on the point `{other}`"),
        FaultKind::TooMuch { of, most } => format!("there are more than {most} {}", listed(*of)),
        FaultKind::TwiceThrough(point) => format!("this seam runs through `{point}` twice"),
        FaultKind::UnusedPoint => "no seam runs through this point".to_owned(),
        FaultKind::NoOutline => "no seam is called `outline`".to_owned(),
        FaultKind::TooFewPoints { least } => {
            format!("this seam needs {least} points or more")
        }
        FaultKind::OpenOutline => "the outline does not close".to_owned(),
        FaultKind::NoRoomToRound => "this rounding has no room".to_owned(),
        FaultKind::TooMuchBow => "this seam bows out by more than half a circle".to_owned(),
        FaultKind::EndsNowhere(point) => {
            format!("this seam ends at `{point}`, where no other seam is")
        }
        FaultKind::Crossing { other, at } => format!(
            "this seam meets the seam `{other}` near {}, where they share no point",
            place(*at)
        ),
        FaultKind::Outside => "this seam lies outside the outline".to_owned(),
        FaultKind::BeyondSize { by, at } => format!(
            "the outline reaches {:.0} mm beyond the size, near {}",
            by.to_mm().ceil(),
            place(*at)
        ),
        FaultKind::WrongHalf => {
            "this lies on the client's left, which is made by mirror".to_owned()
        }
        FaultKind::SeedOutside
        | FaultKind::SharedFace(_)
        | FaultKind::UnclaimedFace { .. }
        | FaultKind::SameNumber(_)
        | FaultKind::MissingNumber(_)
        | FaultKind::NumbersForSides
        | FaultKind::SideInName => claim_fault(kind),
        FaultKind::OtherFaces => {
            "the seams enclose other compartments than at the first size".to_owned()
        }
        FaultKind::NarrowerThanCell { .. }
        | FaultKind::NarrowerThanHand { .. }
        | FaultKind::NarrowArm { .. }
        | FaultKind::AcuteCorner { .. }
        | FaultKind::NoCrown(_)
        | FaultKind::CrownTooHigh { .. }
        | FaultKind::CrownBeyondModel { .. }
        | FaultKind::StockTooSteep { .. } => compartment_fault(kind),
        FaultKind::RatedAboveLarger(larger) => {
            format!("this size is rated for more weight than the larger {larger}")
        }
        FaultKind::NotMade => "this is not a size that the layout is made in".to_owned(),
    }
}

/// What is wrong with seeds and numbers; nothing for other kinds.
fn claim_fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::SeedOutside => "this seed lies in no compartment".to_owned(),
        FaultKind::SharedFace(other) => format!("this seed lies in the compartment `{other}`"),
        FaultKind::UnclaimedFace { at } => {
            format!("no compartment claims the space around {}", place(*at))
        }
        FaultKind::SameNumber(number) => format!("the number {number} is given twice"),
        FaultKind::MissingNumber(number) => {
            format!("the number {number} is left out between the others")
        }
        FaultKind::NumbersForSides => {
            "the numbers do not fit the sides that this seed stands for".to_owned()
        }
        FaultKind::SideInName => {
            "the id names one side and the compartment lies on the other".to_owned()
        }
        _ => String::new(),
    }
}

/// What is wrong with the room in compartments or with how they rise; nothing for other kinds.
fn compartment_fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::NarrowerThanCell { number, width, cell } => format!(
            "at its widest, {:.0} mm, compartment {number} is narrower than a cell of {:.0} mm",
            width.to_mm(),
            cell.to_mm()
        ),
        FaultKind::NarrowerThanHand { number, width } => format!(
            "at its widest, {:.0} mm, compartment {number} is narrower than a hand",
            width.to_mm()
        ),
        FaultKind::NarrowArm { number, width, at } => format!(
            "a part of compartment {number} is {:.0} mm wide, narrower than a hand, near {}",
            width.to_mm(),
            place(*at)
        ),
        FaultKind::AcuteCorner { number, degrees, at } => {
            format!("compartment {number} has a corner of {degrees:.0} degrees near {}", place(*at))
        }
        FaultKind::NoCrown(crown) => format!(
            "a crown of {:.0} mm is not above the walls: the cells would lie loose",
            crown.to_mm()
        ),
        FaultKind::CrownTooHigh { crown, most } => format!(
            "a crown of {} is more than an eighth of the width; the model is good to {}",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        FaultKind::CrownBeyondModel { crown, most } => format!(
            "a crown of {} is more than a quarter of the width; the model is good to {}",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        FaultKind::StockTooSteep { number, crown, most } => format!(
            "compartment {number} rises by {} in the stock fill; the model is good to {} there",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        _ => String::new(),
    }
}

/// A length, with as many decimals as tell it apart from another.
fn apart(own: Length, other: Length) -> String {
    let decimals = decimals_apart(own.to_mm(), other.to_mm());
    format!("{:.decimals$} mm", own.to_mm())
}

/// A place on the cushion.
fn place(at: Point) -> String {
    format!("x {:.0}, y {:.0} mm", at.x, at.y)
}

fn listed(of: Listed) -> &'static str {
    match of {
        Listed::Points => "points",
        Listed::Seams => "seams",
        Listed::PointsOfSeams => "points in the lists of all seams",
        Listed::Compartments => "compartments",
        Listed::Sizes => "sizes",
    }
}

/// Sizes at which a fault shows, in brackets, the first few by name; nothing where there is none.
pub(super) fn at_sizes(sizes: &[Size]) -> String {
    const NAMED: usize = 6;
    let named: Vec<String> = sizes.iter().take(NAMED).map(Size::to_string).collect();
    match (named.as_slice(), sizes.len().saturating_sub(NAMED)) {
        ([], _) => String::new(),
        (named, 0) => format!(" (at {})", named.join(", ")),
        (named, more) => format!(" (at {} and {more} sizes more)", named.join(", ")),
    }
}

/// What to do about it.
pub(super) fn advice(kind: &FaultKind) -> &'static str {
    match kind {
        FaultKind::UnknownPoint(_) => "add it to [points], or correct the name",
        FaultKind::UnknownSeam(_) => "add it to [seams], or correct the name",
        FaultKind::Circular => "place one of the two by its coordinates",
        FaultKind::NotOnSeam { .. } => "name two points of the seam, in the order in which it runs",
        FaultKind::BeyondSeam => "keep `at` between 0 % and 100 %",
        FaultKind::SamePlace(_) => "use one point for both, or move one of them",
        FaultKind::TooMuch { .. } => "take away those that no compartment needs",
        FaultKind::TwiceThrough(_) => {
            "name each point once; only to close, the first again at the end"
        }
        FaultKind::UnusedPoint => "lead a seam through it, or take it away",
        FaultKind::BeyondSize { .. } => {
            "keep x within 50 % of the width, y within 0 % and 100 %, and bows inside"
        }
        FaultKind::MissingNumber(_) => "number the compartments from 1 without a gap",
        FaultKind::NoOutline => "add a seam called `outline` that goes around the cushion",
        FaultKind::TooFewPoints { .. } => "add points to `through`",
        FaultKind::OpenOutline => {
            "set `closed = true`; in a mirrored layout, begin and end on the centre line"
        }
        FaultKind::NoRoomToRound => {
            "take a smaller radius, and round only between straight stretches"
        }
        FaultKind::TooMuchBow => "take a smaller `bow`",
        FaultKind::EndsNowhere(_) => "end it at a point on another seam, as `{ on = ... }` makes",
        FaultKind::Crossing { .. } => {
            "put a point on one of them there and lead the other through it"
        }
        FaultKind::Outside => "move its points inside the outline",
        FaultKind::WrongHalf => "write it with x of 0 % or more",
        FaultKind::SeedOutside => "move the seed well inside the compartment",
        FaultKind::SharedFace(_) => "move one seed, or part the two by a seam",
        FaultKind::UnclaimedFace { .. } => "add a compartment with its seed there",
        FaultKind::SameNumber(_) => "give each compartment a number of its own",
        FaultKind::NumbersForSides => {
            "write `number = 3` for a seed on the centre line and `numbers = { left = 1, right = 2 }` for one beside it"
        }
        FaultKind::SideInName => "left and right are the client's: left is negative x",
        FaultKind::OtherFaces => "use per cent where points come too close at some size",
        FaultKind::NarrowerThanCell { .. } => "widen it: no cell would go in",
        FaultKind::NarrowerThanHand { .. } | FaultKind::NarrowArm { .. } => {
            "widen it where you can: a hand must reach in to fill it"
        }
        FaultKind::AcuteCorner { .. } => "make it blunter where you can: cells do not fill it",
        FaultKind::NoCrown(_) => "give a `stock_crown` above 0 mm",
        FaultKind::CrownTooHigh { .. }
        | FaultKind::CrownBeyondModel { .. }
        | FaultKind::StockTooSteep { .. } => "lower `stock_crown`",
        FaultKind::RatedAboveLarger(_) => "correct one of the two weights",
        FaultKind::NotMade => "take a size from the layout's list, or add this one to it",
    }
}

/// Why a text is not a size.
pub(super) fn no_size(error: SizeError) -> String {
    match error {
        SizeError::Form => {
            "a size is width x depth, such as `440x400` in millimetres or `17x16in` in inches"
                .to_owned()
        }
        SizeError::Range { width_mm, depth_mm } => format!(
            "{} x {} mm is no cushion: width and depth lie between {:.0} and {:.0} mm",
            of_any_size(width_mm),
            of_any_size(depth_mm),
            Size::LEAST.to_mm(),
            Size::GREATEST.to_mm()
        ),
    }
}

/// A number of millimetres, in few digits however large it is.
fn of_any_size(mm: f64) -> String {
    if mm.abs() < 1e6 { format!("{mm:.0}") } else { format!("{mm:e}") }
}

/// A measure of the client, without an article.
pub(super) fn measure(measure: BodyMeasure) -> &'static str {
    match measure {
        BodyMeasure::SeatBoneSpacing => "seat bone spacing",
        BodyMeasure::ThighDepthLeft => "thigh depth on the client's left",
        BodyMeasure::ThighDepthRight => "thigh depth on the client's right",
        BodyMeasure::HipWidth => "hip width",
        BodyMeasure::TrochanterWidth => "trochanter width",
    }
}
