//! English: what is found about values together.

use case::question::Group;
use case::text::{
    ClientFinding, DesignFinding, LengthUnit, RecordFinding, StockChange, WishFinding,
};
use case::{FillingSoFar, Said, StaleFilling};

use super::{alternatives, checks, layouts, said, unit_of_length};
use crate::English;
use crate::english::parts;
use crate::english::record::list_of_parts;
use crate::{BasicWords as _, GoalWords as _};

pub(super) fn client(finding: &ClientFinding) -> Said {
    match finding {
        ClientFinding::NotSigned => said(
            "it is not said when and by whom the measures were taken",
            "add `taken_on` and `taken_by`",
        ),
        ClientFinding::HipsWiderThanThighs => said(
            "the hips are wider than the thighs are deep",
            "check that hip width and thigh depth are not swapped",
        ),
        ClientFinding::TrochantersWiderThanHips => said(
            "the trochanters are farther apart than the hips are wide",
            "hip width is the greatest width; measure again",
        ),
        ClientFinding::ThighsDiffer => said(
            "the thigh depths differ by more than 60 mm (2.4 in)",
            "check that the pelvis was not rotated, and measure again",
        ),
        ClientFinding::LongThigh => said(
            "hardly anybody's thigh is so deep from the back of the buttock to the back of the knee",
            "measure to the back of the knee: to its front it is some 90 to 130 mm (3.5 to 5.1 in) more",
        ),
        ClientFinding::LongLeg => said(
            "hardly anybody's lower leg is so long",
            "measure from the back of the knee to under the heel, not from the top of the knee",
        ),
        ClientFinding::HipsForWeight { narrow, weight } => said(
            format!(
                "the hips are unusually {} for {:.0} kg",
                if *narrow { "narrow" } else { "wide" },
                weight.to_kg()
            ),
            "check both: hips at their widest as clothed, weight of the day",
        ),
        ClientFinding::ParametersWithoutPlugin => said(
            "only a plugin's layout has parameters",
            "take `parameters` away, or name `plugin:NAME`",
        ),
        ClientFinding::Future { date, today } => said(
            format!("{date} is still to come: today is {today}"),
            "is the year right? a day is written year-month-day",
        ),
    }
}

/// What is said of goals, and of what they are about.
pub(super) fn wish(finding: &WishFinding) -> Said {
    match finding {
        WishFinding::MoreThanThereIs => said(
            "more can be taken away than there is",
            "`reducible` is a part of `by`, measured at the same place",
        ),
        WishFinding::BothOfObliquity => said(
            "an obliquity is either corrected or accommodated",
            "keep one goal; what is partly flexible is corrected as far as it goes",
        ),
        WishFinding::NoObliquity => said(
            "a goal is about an obliquity, and none is written down",
            "add `obliquity = { lower = ..., by = ..., at = ..., is = ... }` under [posture]",
        ),
        WishFinding::GoalTwice(want) => said(
            format!("the goal \"{}\" is written twice", English::new().goal(want)),
            "keep one of the two",
        ),
        WishFinding::NoWeightForGoals => said(
            "nothing can be planned for the goals without the client's weight",
            "weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`",
        ),
        WishFinding::SmallObliquity { number, unit } => said(
            format!(
                "an obliquity of {number} {} is less than hands can measure",
                unit_of_length(*unit)
            ),
            match unit {
                LengthUnit::Millimetres => format!(
                    "is it {number} cm? write {}, or leave it away",
                    (number * 1e4).round() / 1e3
                ),
                LengthUnit::Inches => "measure again, or leave it away".to_owned(),
            },
        ),
        WishFinding::OtherSide { injured, relieved } => said(
            format!(
                "load is to be taken off the {}, and the injury is at the {}",
                English::new().site(*relieved),
                English::new().site(*injured)
            ),
            "are the sides right? left and right are the client's",
        ),
        WishFinding::FrontOfLostLeg(side) => said(
            format!(
                "the front is to be lower on the {0}, and the {0} leg is lost",
                parts::side(*side)
            ),
            "a front is lowered for the leg that is there: is the other side meant?",
        ),
    }
}

pub(super) fn record(finding: &RecordFinding) -> Said {
    match finding {
        RecordFinding::NoSuchEntry(written) => {
            let words: Vec<&str> = Group::ALL.iter().filter_map(|group| group.entry()).collect();
            said(
                format!("no entry of the record is called `{written}`"),
                format!("write {}", alternatives(&words)),
            )
        }
        RecordFinding::Order => said(
            "the record is not in the order of its dates",
            "the last entry counts as the newest; put it in order",
        ),
        RecordFinding::NotSaidToPass => said(
            "the fitting check does not say whether it passed, so papers say NOT FITTED YET",
            "write `passed = true` where the client may use the cushion, else `passed = false`",
        ),
        RecordFinding::NotPassed { alarm: true, .. } => said(
            "a check with a bone that is felt, or a mark on the skin, has not passed",
            "it counts as failed; write `passed = false`",
        ),
        RecordFinding::NotPassed { missing, .. } => said(
            format!("the check is not finished: {} not looked at", list_of_parts(missing)),
            "it counts as not finished; add what was looked at, or take `passed` away",
        ),
        RecordFinding::NotEarlier { entry, here } => said(
            format!("entry {here} of the record speaks of entry {entry}, which is not before it"),
            "entries are counted from 1, the oldest first",
        ),
        RecordFinding::Check(wrong) => checks::no_check(wrong),
        RecordFinding::Sum { sum, total } => said(
            format!("the counts add up to {sum}, and the total says {total}"),
            "one of them was changed by hand; record the plan again",
        ),
        RecordFinding::CountedTwice(number) => {
            said(format!("the compartment {number} is counted twice"), "keep one of its counts")
        }
        RecordFinding::NoCounts => {
            said("there are no counts", "write the count of each compartment")
        }
        RecordFinding::CountsDiffer { number, first, second } => said(
            format!("the two counts of compartment {number} are {first} and {second}"),
            "count that compartment again until both are the same",
        ),
        RecordFinding::AfterNoEntry { after, there } => said(
            format!("the fill is said to have begun after entry {after}, and there are {there}"),
            "write how many entries the record had when it was begun",
        ),
        RecordFinding::Filling(own) => filling(own),
        RecordFinding::Digest => said("this is not a digest", "record the plan again"),
    }
}

/// A fill that was begun and is not recorded.
fn filling(own: &FillingSoFar) -> Said {
    let FillingSoFar { on, counted, of, stale, .. } = own;
    let begun =
        format!("a fill was begun on {on} and is not recorded: {counted} of {of} compartments");
    match stale {
        None => said(
            begun,
            "go on with it, or record what is in the cushion; nobody sits on it before that",
        ),
        Some(StaleFilling::OtherCounts) => said(
            format!("{begun}; it is not used, because other counts are planned now"),
            "empty what was filled and begin anew, or take [filling] away",
        ),
        Some(StaleFilling::Since) => said(
            format!("{begun}; it is not used, because more was done with the cushion since"),
            "take [filling] away, or begin anew",
        ),
    }
}

pub(super) fn design(finding: &DesignFinding) -> Said {
    const MEASURE: &str =
        "write millimetres (40), a share (\"25%\") or both (\"52% + 5\", \"52% - 5\")";
    match finding {
        DesignFinding::Measure(written) => said(format!("`{written}` is not a measure"), MEASURE),
        DesignFinding::LargeMeasure => said("this measure is larger than any cushion", MEASURE),
        DesignFinding::Point => {
            said("a point has two measures", "write [x, y] or [x, y, \"round R\"]")
        }
        DesignFinding::Rounding(written) => said(
            format!("`{written}` is not a rounding"),
            "write \"round 40\" for a radius of 40 mm",
        ),
        DesignFinding::Seed => said("a seed has two measures", "write [x, y]"),
        DesignFinding::CurveWithBow => {
            said("a seam is a curve or has a bow, not both", "take one of the two away")
        }
        DesignFinding::NoSizes => {
            said("no size is listed", "add `{ size = \"440x400\", max_user_weight_kg = 90 }`")
        }
        DesignFinding::SizeTwice(size) => {
            said(format!("the size {size} is listed twice"), "keep one of the two")
        }
        DesignFinding::Fault(kind, sizes) => {
            let at = layouts::at_sizes(sizes);
            said(format!("{}{at}", layouts::fault(kind)), layouts::advice(kind))
        }
        DesignFinding::BuiltInName(name) => said(
            format!("`{name}` is the name of a built-in layout, which this is not"),
            "give it a name of its own: papers tell layouts apart by their names",
        ),
        DesignFinding::RevisionMustRise { was, is, changes } => {
            said(must_rise(*was, *is, changes), format!("write `revision = {}`", next(*was)))
        }
        DesignFinding::RevisionFell { was, is } => said(
            format!("the layout before is revision {was}, and this one {}", revision(*is)),
            format!("write `revision = {}`", next(Some(*was))),
        ),
        DesignFinding::CellVolume { volume, most } => said(
            format!(
                "two sheets of this edge cannot hold {:.1} ml; they hold {:.1} ml at most",
                volume.to_ml(),
                most.to_ml()
            ),
            "measure the edge of the flat cell and the water that a cell displaces",
        ),
        DesignFinding::Film { weight, edge } => said(
            format!(
                "a film mass of {} g is unusual for a cell of {} mm",
                weight.to_g(),
                edge.to_mm()
            ),
            "weigh a batch that was counted by hand, and divide by its count",
        ),
    }
}

/// The revision after another one, or the second where none was written.
fn next(was: Option<u32>) -> u32 {
    was.unwrap_or(1) + 1
}

/// Which revision it is.
fn revision(revision: Option<u32>) -> String {
    revision.map_or_else(|| "has none".to_owned(), |number| format!("is {number}"))
}

/// The most changes that are named.
const MOST_CHANGES: usize = 3;

/// Which counts changed, while the revision is no higher.
fn must_rise(was: Option<u32>, is: Option<u32>, changes: &[StockChange]) -> String {
    let change = |own: &StockChange| {
        let StockChange { size, number, was, is } = own;
        match (was, is) {
            (Some(was), Some(is)) => format!("{was} became {is} in compartment {number} at {size}"),
            (None, Some(is)) => format!("compartment {number} at {size} is new, with {is}"),
            (Some(was), None) => format!("compartment {number} at {size} is gone, with {was}"),
            (None, None) => format!("compartment {number} at {size}"),
        }
    };
    let named: Vec<String> = changes.iter().take(MOST_CHANGES).map(change).collect();
    let more = match changes.len().saturating_sub(MOST_CHANGES) {
        0 => String::new(),
        more => format!("; and {more} more"),
    };
    let before = was.map_or_else(|| "had none".to_owned(), |number| format!("was {number}"));
    let now = revision(is);
    format!(
        "the revision must rise, because counts changed: {}{more}; it {before}, and {}",
        named.join("; "),
        now.replace("has none", "none is written")
    )
}
