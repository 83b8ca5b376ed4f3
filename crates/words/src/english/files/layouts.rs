//! English: what is wrong with a layout or a size.

use case::BodyMeasure;
use cushion::{FaultKind, Size, SizeError};

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
        FaultKind::TooMuch { most } => format!("there are more than {most} points or seams"),
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
            "this seam meets the seam `{other}` near x {:.0}, y {:.0} mm, where they share no point",
            at.x, at.y
        ),
        FaultKind::Outside => "this seam lies outside the outline".to_owned(),
        FaultKind::WrongHalf => {
            "this lies on the client's left, which is made by mirror".to_owned()
        }
        FaultKind::SeedOutside => "this seed lies in no compartment".to_owned(),
        FaultKind::SharedFace(other) => format!("this seed lies in the compartment `{other}`"),
        FaultKind::UnclaimedFace { at } => {
            format!("no compartment claims the space around x {:.0}, y {:.0} mm", at.x, at.y)
        }
        FaultKind::SameNumber(number) => format!("the number {number} is given twice"),
        FaultKind::NumbersForSides => {
            "the numbers do not fit the sides that this seed stands for".to_owned()
        }
        FaultKind::SideInName => {
            "the id names one side and the compartment lies on the other".to_owned()
        }
        FaultKind::OtherFaces => {
            "the seams enclose other compartments than at the first size".to_owned()
        }
        FaultKind::NarrowerThanCell(width) => {
            format!("at {:.0} mm, this compartment is narrower than a cell", width.to_mm())
        }
        FaultKind::NarrowerThanHand(width) => {
            format!("at {:.0} mm, this compartment is narrower than a hand", width.to_mm())
        }
        FaultKind::CrownTooHigh { crown, most } => format!(
            "a crown of {:.0} mm is more than an eighth of the width; the model is good to {:.0} mm",
            crown.to_mm(),
            most.to_mm()
        ),
        FaultKind::NotMade => "this is not a size that the layout is made in".to_owned(),
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
        FaultKind::NarrowerThanCell(_) => "widen it: no cell would go in",
        FaultKind::NarrowerThanHand(_) => "widen it where you can: a hand must reach in to fill it",
        FaultKind::CrownTooHigh { .. } => "lower `stock_crown`",
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
