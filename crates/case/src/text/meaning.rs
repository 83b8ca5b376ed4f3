//! What can be found about values together: of a client, of wishes, of a record, of a layout.

use cushion::{FaultKind, Length, Mass, Name, Side, Size, Volume};

use super::{LengthUnit, ids};
use crate::{CheckError, CheckPart, Date, FillingSoFar, SiteName, Want};

/// About values of a client's file together.
#[derive(Clone, Debug, PartialEq)]
pub enum ClientFinding {
    /// Measures without a day and a person.
    NotSigned,
    /// Hip width and thigh depth may be swapped.
    HipsWiderThanThighs,
    /// The hips are the widest.
    TrochantersWiderThanHips,
    /// The thighs differ by more than 60 mm.
    ThighsDiffer,
    /// Longer than nearly anybody's.
    LongThigh,
    /// Longer than nearly anybody's.
    LongLeg,
    /// Hips that are unusual for the weight.
    HipsForWeight {
        /// Narrow, and not wide.
        narrow: bool,
        /// The weight.
        weight: Mass,
    },
    /// Parameters of a layout that is no plugin's.
    ParametersWithoutPlugin,
    /// A day that is still to come.
    Future {
        /// The day.
        date: Date,
        /// The day on which the file is checked.
        today: Date,
    },
}

/// About what is wanted for a client, and what it is about.
#[derive(Clone, Debug, PartialEq)]
pub enum WishFinding {
    /// The part of an obliquity that can be taken away is more than there is.
    MoreThanThereIs,
    /// An obliquity is to be corrected and accommodated.
    BothOfObliquity,
    /// A goal is about an obliquity and none is there.
    NoObliquity,
    /// A goal is written twice.
    GoalTwice(Want),
    /// Goals, and no weight to plan by.
    NoWeightForGoals,
    /// An obliquity less than hands can measure: centimetres, perhaps.
    SmallObliquity {
        /// As written.
        number: f64,
        /// In which unit.
        unit: LengthUnit,
    },
    /// An injury on one side and relief on the other.
    OtherSide {
        /// Where the injury is.
        injured: SiteName,
        /// What is to be relieved.
        relieved: SiteName,
    },
    /// The front is to be lower on a side whose leg is lost.
    FrontOfLostLeg(Side),
}

/// About the record.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordFinding {
    /// No entry is called so.
    NoSuchEntry(String),
    /// Days that go back.
    Order,
    /// A fitting check that does not say whether it passed.
    NotSaidToPass,
    /// A check that says it passed, and did not.
    NotPassed {
        /// The parts that are missing.
        missing: Vec<CheckPart>,
        /// Whether a bone was felt or a mark seen.
        alarm: bool,
    },
    /// An entry that speaks of one that is not before it.
    NotEarlier {
        /// Of which it speaks.
        entry: usize,
        /// Which it is.
        here: usize,
    },
    /// A check that cannot be read, and why.
    Check(CheckError),
    /// Counts that do not add up.
    Sum {
        /// Of the counts.
        sum: u32,
        /// As written.
        total: u32,
    },
    /// A compartment is counted twice.
    CountedTwice(u8),
    /// No counts.
    NoCounts,
    /// Two counts of one compartment that are not the same.
    CountsDiffer {
        /// The number of the compartment.
        number: u8,
        /// The first count.
        first: u32,
        /// The second.
        second: u32,
    },
    /// A fill that is said to have begun after more entries than the record has.
    AfterNoEntry {
        /// After how many.
        after: usize,
        /// How many there are.
        there: usize,
    },
    /// A fill was begun and is not recorded.
    Filling(FillingSoFar),
    /// Not a digest.
    Digest,
}

/// A count of the stock fill that is not that of an earlier layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StockChange {
    /// The size.
    pub size: Size,
    /// The number of the compartment.
    pub number: u8,
    /// Cells in the earlier layout; none where it has no such compartment.
    pub was: Option<u32>,
    /// Cells in this one; none where it has no such compartment.
    pub is: Option<u32>,
}

/// About a layout or a cell.
#[derive(Clone, Debug, PartialEq)]
pub enum DesignFinding {
    /// Not a measure.
    Measure(String),
    /// A measure larger than any cushion.
    LargeMeasure,
    /// Not two measures.
    Point,
    /// Not a rounding.
    Rounding(String),
    /// A seed of other than two measures.
    Seed,
    /// A curve that has a bow.
    CurveWithBow,
    /// No sizes.
    NoSizes,
    /// A size is listed twice.
    SizeTwice(Size),
    /// A fault of a layout, with the sizes at which it is found; none where it is at any.
    Fault(FaultKind, Vec<Size>),
    /// A layout of one's own bears the name of a built-in one.
    BuiltInName(Name),
    /// Counts of the stock fill are not those of an earlier layout, and its revision is no higher.
    RevisionMustRise {
        /// The revision of the earlier layout.
        was: Option<u32>,
        /// The revision of this one.
        is: Option<u32>,
        /// The counts that changed, at least one.
        changes: Vec<StockChange>,
    },
    /// The revision is lower than that of an earlier layout.
    RevisionFell {
        /// The revision of the earlier layout.
        was: u32,
        /// The revision of this one.
        is: Option<u32>,
    },
    /// A cell is said to hold more than its edge allows.
    CellVolume {
        /// What it is said to hold.
        volume: Volume,
        /// The most that two sheets of that edge hold.
        most: Volume,
    },
    /// Film that is hardly to be had: a cell of this weight and edge.
    Film {
        /// Of one cell.
        weight: Mass,
        /// Of the flat square.
        edge: Length,
    },
}

ids! {
    ClientFinding {
        NotSigned => "client-not-signed",
        HipsWiderThanThighs => "client-hips-wider-than-thighs",
        TrochantersWiderThanHips => "client-trochanters-wider-than-hips",
        ThighsDiffer => "client-thighs-differ",
        LongThigh => "client-long-thigh",
        LongLeg => "client-long-leg",
        HipsForWeight => "client-hips-for-weight",
        ParametersWithoutPlugin => "client-parameters-without-plugin",
        Future => "client-future",
    }
    WishFinding {
        MoreThanThereIs => "wish-more-than-there-is",
        BothOfObliquity => "wish-both-of-obliquity",
        NoObliquity => "wish-no-obliquity",
        GoalTwice => "wish-goal-twice",
        NoWeightForGoals => "wish-no-weight-for-goals",
        SmallObliquity => "wish-small-obliquity",
        OtherSide => "wish-other-side",
        FrontOfLostLeg => "wish-front-of-lost-leg",
    }
    RecordFinding {
        NoSuchEntry => "record-no-such-entry",
        Order => "record-order",
        NotSaidToPass => "record-not-said-to-pass",
        NotPassed => "record-not-passed",
        NotEarlier => "record-not-earlier",
        Check => "record-check",
        Sum => "record-sum",
        CountedTwice => "record-counted-twice",
        NoCounts => "record-no-counts",
        CountsDiffer => "record-counts-differ",
        AfterNoEntry => "record-after-no-entry",
        Filling => "record-filling",
        Digest => "record-digest",
    }
    DesignFinding {
        Measure => "design-measure",
        LargeMeasure => "design-large-measure",
        Point => "design-point",
        Rounding => "design-rounding",
        Seed => "design-seed",
        CurveWithBow => "design-curve-with-bow",
        NoSizes => "design-no-sizes",
        SizeTwice => "design-size-twice",
        Fault => "design-fault",
        BuiltInName => "design-built-in-name",
        RevisionMustRise => "design-revision-must-rise",
        RevisionFell => "design-revision-fell",
        CellVolume => "design-cell-volume",
        Film => "design-film",
    }
}
