//! What is found about a client's case: values with their numbers and sides, in no language.
//!
//! How a finding is said stands in another room; how programs call it is its `id`.

mod after_checks;
mod alarm;
mod body_error;
mod caution;
mod goal_outcome;
mod if_then;
mod limit;
mod mistake;
mod other_papers;
mod re_check;
mod record_note;
mod refusal;
mod since_recorded;
mod sizing;
mod source;

pub use self::after_checks::{Doubt, LookAt, NextStep, Telling, Verdict};
pub use self::alarm::Alarm;
pub use self::body_error::{BodyError, BodyValue};
pub use self::caution::{AltitudeNote, Caution, CautionSeverity};
pub use self::goal_outcome::{GoalNumber, GoalOutcome, Shortfall};
pub use self::if_then::{CardFinding, CostAtBone, IfThen, Remedy, RemedyCost};
pub use self::limit::BrokenLimit;
pub use self::mistake::Mistake;
pub use self::other_papers::{OtherPapers, PapersOfPlan};
pub use self::re_check::{ReCheck, WhyReCheck};
pub use self::record_note::RecordNote;
pub use self::refusal::{AdjustRefusal, ByHand, PlanRefusal, WhyNoPlan};
pub use self::since_recorded::{OtherCount, SinceRecorded};
pub use self::sizing::{
    HeightEffect, NoSizeToMake, SizeMargin, SizeMisfit, SizeToMake, SizingRule,
};
pub use self::source::Source;

use crate::{Check, NoCardCode, Restored};

/// Something that is to be said about a client's case.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// What brings the client off the cushion.
    Alarm(Alarm),
    /// A limit that is not kept.
    Limit(BrokenLimit),
    /// What became of a goal.
    Goal(GoalOutcome),
    /// Why a goal is not reached.
    Shortfall(Shortfall),
    /// What whoever reads a plan should know.
    Caution(Caution),
    /// A rule of sizing.
    SizingRule(SizingRule),
    /// What a size leaves free around the client.
    SizeMargin(SizeMargin),
    /// Why a size does not suit.
    SizeMisfit(SizeMisfit),
    /// What a supplier is asked for.
    SizeToMake(SizeToMake),
    /// Why nothing can be asked for.
    NoSizeToMake(NoSizeToMake),
    /// What the cushion's height means around it.
    Height(HeightEffect),
    /// Where to look.
    LookAt(LookAt),
    /// An answer that is asked again.
    Doubt(Doubt),
    /// What is next.
    Next(NextStep),
    /// A mistake in the set-up.
    Mistake(Mistake),
    /// An answer that was left out, since it does not go with what else is known.
    LeftOut(Check),
    /// Why the set-up is looked at again.
    ReCheck(WhyReCheck),
    /// What changed since a plan was recorded.
    Since(SinceRecorded),
    /// What the record says that whoever works on the cushion should know.
    Record(RecordNote),
    /// Papers of other counts that lie beside those that are written.
    OtherPapers(OtherPapers),
    /// What was found again by the code on a card.
    Restored(Restored),
    /// Why papers have no code.
    NoCardCode(NoCardCode),
    /// Where a rule comes from.
    Source(Source),
}

impl Finding {
    /// How reports call it; no language changes it.
    #[must_use]
    pub fn id(&self) -> String {
        match self {
            Self::Alarm(own) => own.id().to_owned(),
            Self::Limit(own) => own.id().to_owned(),
            Self::Goal(own) => own.want.id(),
            Self::Shortfall(own) => own.id().to_owned(),
            Self::Caution(own) => own.id().to_owned(),
            Self::SizingRule(own) => own.id().to_owned(),
            Self::SizeMargin(own) => own.id().to_owned(),
            Self::SizeMisfit(own) => own.id().to_owned(),
            Self::SizeToMake(_) => SizeToMake::ID.to_owned(),
            Self::NoSizeToMake(own) => own.id().to_owned(),
            Self::Height(own) => own.id().to_owned(),
            Self::LookAt(own) => own.id().to_owned(),
            Self::Doubt(own) => own.id().to_owned(),
            Self::Next(own) => own.id().to_owned(),
            Self::Mistake(own) => own.id().to_owned(),
            Self::LeftOut(_) => "left-out".to_owned(),
            Self::ReCheck(own) => own.id().to_owned(),
            Self::Since(own) => own.id().to_owned(),
            Self::Record(own) => own.id().to_owned(),
            Self::OtherPapers(_) => OtherPapers::ID.to_owned(),
            Self::Restored(_) => Restored::ID.to_owned(),
            Self::NoCardCode(_) => NoCardCode::ID.to_owned(),
            Self::Source(own) => own.id().to_owned(),
        }
    }
}

macro_rules! wrapped {
    ($($inner:ident => $variant:ident),+) => {
        $(impl From<$inner> for Finding {
            fn from(inner: $inner) -> Self {
                Self::$variant(inner)
            }
        })+
    };
}

wrapped! {
    Alarm => Alarm,
    BrokenLimit => Limit,
    GoalOutcome => Goal,
    Shortfall => Shortfall,
    Caution => Caution,
    SizingRule => SizingRule,
    SizeMargin => SizeMargin,
    SizeMisfit => SizeMisfit,
    SizeToMake => SizeToMake,
    NoSizeToMake => NoSizeToMake,
    HeightEffect => Height,
    LookAt => LookAt,
    Doubt => Doubt,
    NextStep => Next,
    Mistake => Mistake,
    WhyReCheck => ReCheck,
    SinceRecorded => Since,
    RecordNote => Record,
    OtherPapers => OtherPapers,
    Restored => Restored,
    NoCardCode => NoCardCode
}
