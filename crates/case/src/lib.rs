//! The client's case as values: measures, chair, cushion, wanted changes, plan and record.
//!
//! Left and right are always the client's. Nothing here knows how a plan is found, how a file is
//! written or how a page is drawn.

mod card_code;
mod central;
mod check;
mod client;
mod comparison;
mod costs;
mod days;
mod file_kind;
mod filling;
mod finding;
mod function;
mod goal;
mod history;
mod identity;
mod mirror;
mod moves;
mod plan;
mod plan_mark;
mod posture;
mod prediction;
pub mod question;
mod record;
mod review;
mod said;
mod site;
mod skin;
mod source;
mod standing;
mod stocktaking;
mod survey;
mod taught;
pub mod text;
mod trouble;

pub use jiff::civil::Date;

pub use crate::card_code::{CardCode, CardCodeFault, DigestHead, NoCardCode, Restored};
pub use crate::central::{CentralCompartment, CentralNumbers, CentralSeat, CentralSite};
pub use crate::check::{
    CHECK_KINDS, Check, CheckError, LEAST_UNDER, PressAnswer, SkinAnswer, TopAnswer, UnderAnswer,
};
pub use crate::client::{
    Amount, Base, Chair, Change, Client, ClientCode, Contact, CushionChoice, CushionSides,
    LayoutRef, Measures, SeatLoad, Sides, SitAtMost, Taken, Weighing,
};
pub use crate::comparison::{
    Both, ComparedCushion, ComparedHarm, ComparedMeasure, ComparedPair, ComparedSeat,
    ComparedSizes, ComparedValues, ComparedVerdict, MeasureCompared, OneCell, TRIED_OBLIQUITY,
    measures_compared,
};
pub use crate::costs::{BeforeAfter, Costs, GoalChange, SiteChange, ToldFrom};
pub use crate::days::{day_after, days_between};
pub use crate::file_kind::FileKind;
pub use crate::filling::{Filling, FillingCount, FillingSoFar, StaleFilling};
pub use crate::finding::{
    AdjustRefusal, Alarm, AltitudeNote, BodyError, BodyValue, BrokenLimit, ByHand, CardFinding,
    Caution, CautionSeverity, CostAtBone, Doubt, Finding, GoalNumber, GoalOutcome, HeightEffect,
    IfThen, LookAt, Mistake, NextStep, NoSizeToMake, OtherCount, OtherPapers, PapersOfPlan,
    PlanRefusal, ReCheck, RecordNote, Remedy, RemedyCost, Shortfall, SinceRecorded, SizeMargin,
    SizeMisfit, SizeToMake, SizingRule, Source, Telling, Verdict, WhyNoPlan, WhyReCheck,
};
pub use crate::function::{Altitudes, Function, Layers, Propulsion};
pub use crate::goal::{FrontSides, Goal, Want, WantKind};
pub use crate::history::Moment;
pub use crate::identity::{CushionIdentity, Likeness};
pub use crate::mirror::{Mirror, Partners};
pub use crate::moves::{Move, Place};
pub use crate::plan::{CountReason, Plan, PlannedCount};
pub use crate::plan_mark::{PlanMark, check_word, is_check_word};
pub use crate::posture::{
    Flexibility, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity, PelvicRotation, PelvicTilt,
    Posture, SittingBalance, Tilt, Windswept,
};
pub use crate::prediction::{
    PredictedCompartment, PredictedOutcome, PredictedSeat, PredictedSite, Prediction, Spread,
    lower_at_seat_bones,
};
pub use crate::record::{
    Adjustment, CheckOutcome, CheckPart, Cleaned, Digest, Entry, Expected, Filled, FittingCheck,
    Moved, PartsChecked, RecordedCount, RecordedPlan, Recount, Returned, SkinSeen, Weighed,
    Withdrawn, in_force, withdrawn,
};
pub use crate::review::{
    BonesAndSeams, CellsDo, ON_A_SEAM, REVIEWED, ReviewFinding, ReviewKind, ReviewedCompartment,
    ReviewedSeat, ReviewedSize, nearest_rank, review_findings,
};
pub use crate::said::Said;
pub use crate::site::SiteName;
pub use crate::skin::{Category, Healing, PressureInjury, Sensation, Skin, WeightShift};
pub use crate::source::{
    BadDescription, BodyMeasure, Crash, Distrust, DrawnLayout, InTurn, LayoutError, LayoutErrorBy,
    LayoutRequest, LayoutSource, Measured, PluginFault, PluginFaultKind,
};
pub use crate::standing::{Beside, Lapse, Looked, Review, Standing, State, state};
pub use crate::stocktaking::{
    Before, Cells, CountedFrom, CushionNow, FittingChecked, RoundFound, cushion_now,
    explained_by_handling,
};
pub use crate::survey::{
    NoSize, SurveyFault, SurveyOutcome, SurveyPart, SurveyRow, SurveySummary, SurveyedBody,
    SurveyedPlan,
};
pub use crate::taught::{OtherCushion, Taught, TaughtOfCushion};
pub use crate::trouble::{
    BatchError, CodePart, Doing, Drawn, MeshError, NoFile, NoPicture, NotAppended, NotDone,
    NotDrawn, NotRestored, ShelfError, StockError, TableFault, Trouble, Why,
};
