//! The table itself: a line for each key of our files, in the order of the form.

use super::{Answer, Drawing, Group, Kind, Need, Range, Row, Unit, Unused, Use};
use crate as own;
use crate::{
    Base, Category, FrontSides, Healing, LossLevel, MeasuredAt, SiteName, SittingBalance,
    SkinAnswer, Tilt, WantKind,
};

/// The most cells of one compartment or bag.
const MOST_CELLS: i64 = 5000;
/// Cells of a compartment, or of a whole cushion, which holds less than a hundred times the most
/// of one.
const CELLS: Kind = Kind::Whole { least: 0, most: 100 * MOST_CELLS };
/// The number of a compartment.
const NUMBER: Kind = Kind::Whole { least: 1, most: 99 };
/// An entry of the record, counted from 1.
const ENTRY: Kind = Kind::Whole { least: 1, most: 9999 };
/// A revision of a layout, counted from 1.
const REVISION: Kind = Kind::Whole { least: 1, most: 9999 };
const SIDES: &[&str] = &["left", "right"];
const FIXED: &[&str] = &["fixed", "flexible"];
const SITES: &[&str] = &words(&SiteName::WORDS);
const SUPPORTS: &[&str] = &["pre-ischial shelf", "medial support", "lateral support"];
/// The classes of `cushion`, which holds a test to them.
const CLASSES: &[&str] =
    &["general use", "skin protection", "positioning", "skin protection and positioning"];
/// The purposes of `cushion`.
const PURPOSES: &[&str] = &[
    "seat bone",
    "coccyx",
    "trochanter",
    "pre-ischial shelf",
    "thigh",
    "medial thigh support",
    "lateral thigh support",
    "lateral pelvic support",
    "front edge",
    "general",
];
/// The tags of the languages in which papers can be made; `words` is held to them by a test.
pub const LANGUAGE_TAGS: [&str; 2] = ["en", "es"];
const READING: Use = Use::Changes(&[Answer::Reading]);

/// A length in the file's unit, from the least to the most in mm.
///
/// Ranges of the body take in children and very large adults; outside, a unit is mixed up or a
/// digit is wrong. They are wider than anything in ANSUR II (Gordon et al., NATICK/TR-15/007,
/// 2014). What is usual for adults is from there too: of buttock-popliteal length the longest but
/// for one in a hundred, men 572 mm; of popliteal height the greatest, 525 mm, and 40 mm for a
/// shoe. An obliquity below 5 mm is less than hands measure: common practice, no source.
const fn length(least: f64, most: f64) -> Kind {
    Kind::Length(Range { least, most })
}

const fn number(unit: Unit, least: f64, most: f64) -> Kind {
    Kind::Number(unit, Range { least, most })
}

/// The words of a list of words and what they stand for.
const fn words<T, const N: usize>(pairs: &[(T, &'static str); N]) -> [&'static str; N] {
    let mut words = [""; N];
    let mut at = 0;
    while at < N {
        words[at] = pairs[at].1;
        at += 1;
    }
    words
}

/// A row that has nothing out of the ordinary.
const PLAIN: Row = Row {
    group: Group::Client,
    key: "",
    kind: Kind::Text,
    need: Need::Never,
    each_side: false,
    example: "",
    usual: None,
    adults: false,
    changes: READING,
    needed_for: &[],
    drawing: None,
};

macro_rules! questions {
    ($($name:ident = $group:ident $key:literal, $kind:expr, $need:expr, $example:literal, $changes:expr
        $(, { $($field:ident: $value:expr),+ $(,)? })?;)+) => {
        /// A key of one of our files.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Question {
            $(#[doc = concat!("`", $key, "`")] $name,)+
        }

        impl Question {
            /// All, in the order of the files.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// What the table says of it.
            #[must_use]
            #[allow(clippy::needless_update, reason = "a row may say everything")]
            pub fn row(self) -> &'static Row {
                match self {
                    $(Self::$name => {
                        const ROW: &Row = &Row {
                            group: Group::$group,
                            key: $key,
                            kind: $kind,
                            need: $need,
                            example: $example,
                            changes: $changes,
                            $($($field: $value,)+)?
                            ..PLAIN
                        };
                        ROW
                    })+
                }
            }
        }
    };
}

questions! {
    Format = Client "format", Kind::Just(1), Need::Always, "1", READING;
    FileKind = Client "kind", Kind::Word("client"), Need::Always, r#""client""#, READING;
    Code = Client "client", Kind::Code, Need::Always, r#""X-001""#, Use::Changes(&[Answer::Papers]);
    Child = Client "child", Kind::YesNo, Need::Never, "true", READING;
    NextReview = Client "next_review", Kind::Date, Need::Never, "2026-07-15", Use::Changes(&[Answer::ReCheck]);
    Language = Client "language", Kind::Choice(&LANGUAGE_TAGS), Need::Never, r#""es""#, Use::Changes(&[Answer::Papers]);
    Units = Measures "units", Kind::Choice(&["mm", "in"]), Need::Always, r#""mm""#, READING;
    TakenOn = Measures "taken_on", Kind::Date, Need::Both("taken_by"), "2026-01-15", READING;
    TakenBy = Measures "taken_by", Kind::Text, Need::Both("taken_on"), r#""OT""#, READING;
    HipWidth = Measures "hip_width", length(130.0, 850.0), Need::Never, "380", Use::Changes(&[Answer::Sizing, Answer::Prediction]), { needed_for: &[Answer::Sizing, Answer::Prediction], drawing: Some(Drawing::HipWidth), };
    TrochanterWidth = Measures "trochanter_width", length(120.0, 800.0), Need::Never, "350", Use::Changes(&[Answer::Prediction]), { drawing: Some(Drawing::TrochanterWidth), };
    ThighDepth = Measures "thigh_depth", length(150.0, 750.0), Need::Never, "480", Use::Changes(&[Answer::Sizing, Answer::Prediction]), { needed_for: &[Answer::Sizing], each_side: true, usual: Some(Range { least: 150.0, most: 570.0 }), adults: true, drawing: Some(Drawing::ThighDepth), };
    LowerLegLength = Measures "lower_leg_length", length(120.0, 700.0), Need::Never, "420", Use::Changes(&[Answer::Sizing]), { each_side: true, usual: Some(Range { least: 120.0, most: 565.0 }), adults: true, drawing: Some(Drawing::LowerLegLength), };
    ExternalKneeWidth = Measures "external_knee_width", length(100.0, 900.0), Need::Never, "340", Use::Changes(&[Answer::Prediction]), { drawing: Some(Drawing::KneeWidth), };
    SeatBoneSpacing = Measures "seat_bone_spacing", length(50.0, 190.0), Need::Never, "115", Use::Changes(&[Answer::Prediction, Answer::Plan]), { drawing: Some(Drawing::SeatBoneSpacing), };
    WeightKg = Weight "kg", number(Unit::Kilogram, 5.0, 350.0), Need::OneOf("lb"), "60", Use::Changes(&[Answer::Sizing, Answer::Plan, Answer::Prediction]), { needed_for: &[Answer::Plan, Answer::Prediction], };
    WeightLb = Weight "lb", number(Unit::Pound, 12.0, 771.0), Need::OneOf("kg"), "132", Use::Changes(&[Answer::Sizing, Answer::Plan, Answer::Prediction]);
    WeighedOn = Weight "weighed_on", Kind::Date, Need::Always, "2026-01-15", Use::Changes(&[Answer::Cautions, Answer::ReCheck]);
    ObliquityLower = Obliquity "lower", Kind::Choice(SIDES), Need::Always, r#""left""#, Use::Changes(&[Answer::Plan, Answer::Prediction]), { drawing: Some(Drawing::Obliquity), };
    ObliquityBy = Obliquity "by", length(0.0, 100.0), Need::Always, "12", Use::Changes(&[Answer::Plan, Answer::Prediction]), { usual: Some(Range { least: 5.0, most: 100.0 }), drawing: Some(Drawing::Obliquity), };
    ObliquityAt = Obliquity "at", Kind::Choice(&words(&MeasuredAt::WORDS)), Need::Always, r#""seat bones""#, Use::Changes(&[Answer::Plan, Answer::Prediction]), { drawing: Some(Drawing::Obliquity), };
    ObliquityIs = Obliquity "is", Kind::Choice(&["fixed", "flexible", "partly"]), Need::Always, r#""fixed""#, Use::Changes(&[Answer::Plan, Answer::Prediction]);
    ObliquityReducible = Obliquity "reducible", length(0.0, 100.0), Need::With("is", &["partly"]), "5", Use::Changes(&[Answer::Plan, Answer::Prediction]);
    TiltDirection = Tilt "direction", Kind::Choice(&words(&Tilt::WORDS)), Need::Always, r#""posterior""#, Use::Changes(&[Answer::Plan]), { drawing: Some(Drawing::Tilt), };
    TiltIs = Tilt "is", Kind::Choice(FIXED), Need::Always, r#""flexible""#, Use::Changes(&[Answer::Plan]);
    TiltDegrees = Tilt "degrees", number(Unit::Degree, 0.0, 180.0), Need::Never, "10", Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::Tilt), };
    RotationForward = Rotation "forward", Kind::Choice(SIDES), Need::Always, r#""right""#, Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::Rotation), };
    RotationDegrees = Rotation "degrees", number(Unit::Degree, 0.0, 180.0), Need::Always, "5", Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::Rotation), };
    RotationIs = Rotation "is", Kind::Choice(FIXED), Need::Always, r#""fixed""#, Use::OnCard(Unused::NotModelled);
    WindsweptTo = Windswept "to", Kind::Choice(SIDES), Need::Always, r#""right""#, Use::Changes(&[Answer::Prediction]), { drawing: Some(Drawing::Windswept), };
    WindsweptDegrees = Windswept "degrees", number(Unit::Degree, 0.0, 60.0), Need::Always, "8", Use::Changes(&[Answer::Prediction]), { drawing: Some(Drawing::Windswept), };
    TrulyShorterSide = TrulyShorter "side", Kind::Choice(SIDES), Need::Always, r#""left""#, Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::LegDifference), };
    TrulyShorterBy = TrulyShorter "by", length(0.0, 200.0), Need::Always, "10", Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::LegDifference), };
    ApparentlyShorterSide = ApparentlyShorter "side", Kind::Choice(SIDES), Need::Always, r#""left""#, Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::LegDifference), };
    ApparentlyShorterBy = ApparentlyShorter "by", length(0.0, 200.0), Need::Always, "15", Use::OnCard(Unused::NotModelled), { drawing: Some(Drawing::LegDifference), };
    HipFlexion = Posture "hip_flexion", number(Unit::Degree, 0.0, 180.0), Need::Never, "95", Use::Changes(&[Answer::Plan]), { each_side: true, drawing: Some(Drawing::HipFlexion), };
    PoplitealAngle = Posture "popliteal_angle", number(Unit::Degree, 0.0, 180.0), Need::Never, "90", Use::Nothing(Unused::NotModelled), { each_side: true, drawing: Some(Drawing::PoplitealAngle), };
    Tone = Posture "tone", Kind::Text, Need::Never, r#""high in the legs when cold""#, Use::Nothing(Unused::ForReaders);
    Balance = Posture "balance", Kind::Choice(&words(&SittingBalance::WORDS)), Need::Never, r#""hands free""#, Use::Changes(&[Answer::Prediction]);
    LimbLossSide = LimbLoss "side", Kind::Choice(SIDES), Need::Always, r#""left""#, Use::Changes(&[Answer::Sizing]);
    LimbLossLevel = LimbLoss "level", Kind::Choice(&words(&LossLevel::WORDS)), Need::Always, r#""below knee""#, Use::Changes(&[Answer::Sizing, Answer::Plan]);
    Sensation = Skin "sensation", Kind::Choice(&words(&own::Sensation::WORDS)), Need::Never, r#""impaired""#, Use::Changes(&[Answer::Cautions]);
    SensationSide = Skin "sensation_side", Kind::Choice(SIDES), Need::May("sensation", own::Sensation::LESS), r#""left""#, Use::Changes(&[Answer::Plan]);
    WeightShift = Skin "weight_shift", Kind::Choice(&words(&own::WeightShift::WORDS)), Need::Never, r#""limited""#, Use::Changes(&[Answer::Cautions]);
    InjurySite = Injury "site", Kind::Choice(SITES), Need::Always, r#""left-seat-bone""#, Use::Changes(&[Answer::Plan, Answer::Cautions]);
    InjuryCategory = Injury "category", Kind::Choice(&words(&Category::WORDS)), Need::Always, r#""2""#, Use::OnCard(Unused::NoRule);
    InjuryIs = Injury "is", Kind::Choice(&words(&Healing::WORDS)), Need::Always, r#""healing""#, Use::Changes(&[Answer::Plan, Answer::Cautions]);
    InjurySeenOn = Injury "seen_on", Kind::Date, Need::Always, "2026-01-15", Use::Changes(&[Answer::Cautions]);
    Propulsion = Function "propulsion", Kind::Choice(&words(&own::Propulsion::WORDS)), Need::Never, r#""right foot""#, Use::Changes(&[Answer::Sizing, Answer::Cautions]);
    Transfers = Function "transfers", Kind::Text, Need::Never, r#""with a board""#, Use::OnCard(Unused::ForReaders);
    Continence = Function "continence", Kind::Text, Need::Never, r#""dry by day""#, Use::Nothing(Unused::ForReaders);
    SittingHours = Function "sitting_hours", number(Unit::Hour, 0.0, 24.0), Need::Never, "8", Use::OnCard(Unused::NoRule);
    Cover = Layers "cover", Kind::Text, Need::Never, r#""stretch cover""#, Use::Nothing(Unused::ForReaders);
    Pad = Layers "pad", Kind::YesNo, Need::Never, "false", Use::Changes(&[Answer::Cautions]);
    Sling = Layers "sling", Kind::YesNo, Need::Never, "false", Use::Changes(&[Answer::Cautions]);
    SealedM = Altitude "sealed_m", number(Unit::Metre, -430.0, 6000.0), Need::Never, "200", Use::Changes(&[Answer::Prediction, Answer::Cautions]);
    HomeM = Altitude "home_m", number(Unit::Metre, -430.0, 6000.0), Need::Never, "1500", Use::Changes(&[Answer::Prediction, Answer::Cautions]);
    SeatShare = Seat "share", number(Unit::Share, 0.60, 0.90), Need::Never, "0.65", Use::Changes(&[Answer::Prediction]);
    SeatBonesForward = Seat "seat_bones_forward", length(50.0, 300.0), Need::Never, "125", Use::Changes(&[Answer::Prediction]), { drawing: Some(Drawing::SeatBonesForward), };
    TrunkHeight = Seat "trunk_height", length(0.0, 500.0), Need::Never, "0", Use::Changes(&[Answer::Prediction]);
    InsideWidth = Chair "inside_width", length(180.0, 900.0), Need::Never, "450", Use::Changes(&[Answer::Sizing, Answer::Cautions]), { drawing: Some(Drawing::ChairWidth), };
    InsideDepth = Chair "inside_depth", length(180.0, 800.0), Need::Never, "430", Use::Changes(&[Answer::Sizing, Answer::Cautions]), { drawing: Some(Drawing::ChairDepth), };
    SeatBase = Chair "base", Kind::Choice(&words(&Base::WORDS)), Need::Never, r#""solid""#, Use::Changes(&[Answer::Prediction, Answer::Plan, Answer::Cautions, Answer::Mistakes]);
    SlingSag = Chair "sling_sag", length(0.0, 120.0), Need::Never, "20", Use::Changes(&[Answer::Prediction, Answer::Plan, Answer::Mistakes]), { drawing: Some(Drawing::SlingSag), };
    CushionSides = Chair "cushion_sides", Kind::Choice(&words(&own::CushionSides::WORDS)), Need::Never, r#""open""#, Use::Changes(&[Answer::Prediction, Answer::Plan]);
    FootrestHeight = Chair "footrest_height", length(150.0, 700.0), Need::Never, "340", Use::Changes(&[Answer::Sizing]), { drawing: Some(Drawing::Footrest), };
    ChairTilt = Chair "tilt_deg", number(Unit::Degree, -10.0, 60.0), Need::Never, "5", Use::Nothing(Unused::NotModelled), { drawing: Some(Drawing::ChairTilt), };
    ChairNotes = Chair "notes", Kind::Text, Need::Never, r#""armrests press in on the right""#, Use::Nothing(Unused::ForReaders);
    LayoutOfCushion = Cushion "layout", Kind::Layout, Need::Always, r#""row-six""#, Use::Changes(&[Answer::Pattern]);
    LayoutParameters = Cushion "parameters", Kind::Parameters, Need::Never, "{ pitch = 110 }", Use::Changes(&[Answer::Pattern]);
    SizeOfCushion = Cushion "size", Kind::Size, Need::Always, r#""440x400""#, Use::Changes(&[Answer::Pattern]);
    CellOfCushion = Cushion "cell", Kind::Text, Need::Never, r#""pillow-25""#, Use::Changes(&[Answer::Pattern]);
    SpareCells = Cushion "spare_cells", Kind::Whole { least: 0, most: MOST_CELLS }, Need::Always, "20", Use::Changes(&[Answer::Cautions, Answer::Papers]);
    SerialOfCushion = Cushion "serial", Kind::Text, Need::Never, r#""SW-0142""#, Use::Changes(&[Answer::Papers]);
    FirstFile = Cushion "first_file", Kind::Text, Need::Never, r#""K-17.toml""#, Use::Changes(&[Answer::Plan, Answer::Prediction]);
    GoalWant = Goal "want", Kind::Choice(&words(&WantKind::WORDS)), Need::Always, r#""off-load""#, Use::Changes(&[Answer::Plan]);
    GoalSite = Goal "site", Kind::Choice(SITES), Need::With("want", &["off-load"]), r#""left-seat-bone""#, Use::Changes(&[Answer::Plan]);
    GoalPercent = Goal "percent", number(Unit::Percent, 5.0, 60.0), Need::With("want", &["off-load"]), "15", Use::Changes(&[Answer::Plan]);
    GoalHeight = Goal "height_mm", number(Unit::Millimetre, 1.0, 60.0), Need::With("want", SUPPORTS), "10", Use::Changes(&[Answer::Plan]), { drawing: Some(Drawing::Crown), };
    GoalSide = Goal "side", Kind::Choice(&words(&FrontSides::WORDS)), Need::With("want", &["lower front"]), r#""right""#, Use::Changes(&[Answer::Plan]);
    GoalBy = Goal "by_mm", number(Unit::Millimetre, 1.0, 60.0), Need::With("want", &["lower front"]), "8", Use::Changes(&[Answer::Plan]), { drawing: Some(Drawing::Crown), };
    GoalBecause = Goal "because", Kind::Text, Need::Never, r#""an injury that heals""#, Use::Nothing(Unused::ForReaders);
    ChangeOf = Change "compartment", Kind::Name, Need::Always, r#""pelvis-left""#, Use::Changes(&[Answer::Plan]);
    ChangeCells = Change "cells", Kind::Whole { least: -MOST_CELLS, most: MOST_CELLS }, Need::OneOf("crown_mm"), "+6", Use::Changes(&[Answer::Plan]);
    ChangeCrown = Change "crown_mm", number(Unit::Millimetre, -60.0, 60.0), Need::OneOf("cells"), "4", Use::Changes(&[Answer::Plan]), { drawing: Some(Drawing::Crown), };
    ChangeReason = Change "reason", Kind::Text, Need::Always, r#""the client's left side is lower""#, Use::Changes(&[Answer::Plan, Answer::Papers]);
    CarerNotes = Carer "notes", Kind::Texts, Need::Never, r#"["Look at the skin each evening."]"#, Use::Changes(&[Answer::Papers]);
    Meanwhile = Carer "meanwhile", Kind::Text, Need::Never, r#""the grey foam cushion in the bedroom""#, Use::Changes(&[Answer::Papers]);
    Emergency = Carer "emergency_phone", Kind::Phone, Need::Never, r#""999""#, Use::Changes(&[Answer::Papers]);
    PressureRelief = Carer "pressure_relief", Kind::Text, Need::Never, r#""lean forward for 2 minutes every half hour""#, Use::Changes(&[Answer::Papers]);
    SitMinutes = SitAtMost "minutes", Kind::Whole { least: 5, most: 1440 }, Need::Always, "60", Use::Changes(&[Answer::Papers]);
    SitTimes = SitAtMost "times", Kind::Whole { least: 1, most: 24 }, Need::Always, "3", Use::Changes(&[Answer::Papers]);
    CallWho = Call "who", Kind::Text, Need::Always, r#""Seating clinic""#, Use::Changes(&[Answer::Papers]);
    CallPhone = Call "phone", Kind::Phone, Need::Always, r#""01632 960123""#, Use::Changes(&[Answer::Papers]);
    CallHours = Call "hours", Kind::Text, Need::Never, r#""weekdays 9 to 4""#, Use::Changes(&[Answer::Papers]);
    FillingOn = Filling "on", Kind::Date, Need::Always, "2026-02-24", READING;
    FillingBy = Filling "by", Kind::Text, Need::Always, r#""OT""#, READING;
    FillingAfter = Filling "after", Kind::Whole { least: 0, most: 9999 }, Need::Always, "1", READING;
    FillingNumber = FillingCount "number", NUMBER, Need::Always, "1", READING;
    FillingPlanned = FillingCount "planned", CELLS, Need::Always, "45", READING;
    FillingFirst = FillingCount "first", CELLS, Need::Both("second"), "45", READING;
    FillingSecond = FillingCount "second", CELLS, Need::Both("first"), "45", READING;
    PlanWhat = Plan "what", Kind::Word("plan"), Need::Always, r#""plan""#, READING;
    PlanOn = Plan "on", Kind::Date, Need::Always, "2026-01-22", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    PlanBy = Plan "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    PlanLayout = Plan "layout", Kind::Text, Need::Always, r#""row-six""#, Use::Changes(&[Answer::Papers]);
    PlanSize = Plan "size", Kind::Size, Need::Always, r#""440x400""#, Use::Changes(&[Answer::Papers]);
    PlanTotal = Plan "total", CELLS, Need::Always, "360", READING;
    PlanProgram = Plan "program", Kind::Text, Need::Always, r#""seatwright 0.1.0""#, Use::Changes(&[Answer::Papers]);
    PlanLayoutDigest = Plan "layout_digest", Kind::Digest, Need::Always, r#""0123456789abcdef""#, Use::Changes(&[Answer::Papers]);
    PlanCellDigest = Plan "cell_digest", Kind::Digest, Need::Always, r#""0123456789abcdef""#, Use::Changes(&[Answer::Papers]);
    PlanParametersDigest = Plan "parameters_digest", Kind::Digest, Need::Always, r#""0123456789abcdef""#, Use::Changes(&[Answer::Papers]);
    PlanDrawnBy = Plan "drawn_by", Kind::Text, Need::Never, r#""rings 1.2""#, Use::Changes(&[Answer::Papers]);
    PlanWhy = Plan "why", Kind::Text, Need::Never, r#""bring the pelvis level""#, Use::Changes(&[Answer::Papers]);
    PlanCountId = PlanCount "id", Kind::Name, Need::Always, r#""rear-left""#, Use::Changes(&[Answer::Papers]);
    PlanCountNumber = PlanCount "number", NUMBER, Need::Always, "1", Use::Changes(&[Answer::Papers]);
    PlanCountStock = PlanCount "stock", CELLS, Need::Always, "44", Use::Changes(&[Answer::Papers]);
    PlanCountPlanned = PlanCount "planned", CELLS, Need::Always, "45", Use::Changes(&[Answer::Papers]);
    ExpectedLeft = PlanExpected "left_mm", number(Unit::Millimetre, -200.0, 300.0), Need::Always, "31", Use::Changes(&[Answer::Papers]);
    ExpectedRight = PlanExpected "right_mm", number(Unit::Millimetre, -200.0, 300.0), Need::Always, "33", Use::Changes(&[Answer::Papers]);
    ExpectedLower = PlanExpected "lower", Kind::Choice(&["left", "right", "level"]), Need::Always, r#""left""#, Use::Changes(&[Answer::Papers]);
    ExpectedLowerBy = PlanExpected "lower_mm", number(Unit::Millimetre, 0.0, 200.0), Need::Always, "4", Use::Changes(&[Answer::Papers]);
    ExpectedKg = PlanExpected "kg", number(Unit::Kilogram, 5.0, 350.0), Need::Always, "60", Use::Changes(&[Answer::Papers]);
    FilledWhat = Filled "what", Kind::Word("filled"), Need::Always, r#""filled""#, READING;
    FilledOn = Filled "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    FilledBy = Filled "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    FilledLayout = Filled "layout", Kind::Text, Need::Both("size"), r#""row-six""#, Use::Changes(&[Answer::Papers]);
    FilledSize = Filled "size", Kind::Size, Need::Both("layout"), r#""440x400""#, Use::Changes(&[Answer::Papers]);
    FilledSpare = Filled "spare", CELLS, Need::Never, "20", Use::Changes(&[Answer::Papers]);
    FilledBatch = Filled "batch", Kind::Text, Need::Never, r#""B-2026-07""#, Use::Changes(&[Answer::Papers]);
    FilledSerial = Filled "serial", Kind::Text, Need::Never, r#""SW-0142""#, Use::Changes(&[Answer::Papers]);
    FilledWhy = Filled "why", Kind::Text, Need::Never, r#""as planned""#, Use::Nothing(Unused::ForReaders);
    FilledNumber = FilledCount "number", NUMBER, Need::Always, "1", Use::Changes(&[Answer::Papers]);
    FilledCells = FilledCount "cells", CELLS, Need::Always, "45", Use::Changes(&[Answer::Papers]);
    IncomingWhat = Incoming "what", Kind::Word("incoming check"), Need::Always, r#""incoming check""#, READING;
    IncomingOn = Incoming "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    IncomingBy = Incoming "by", Kind::Text, Need::Always, r#""supplier""#, Use::Changes(&[Answer::Papers]);
    IncomingLayout = Incoming "layout", Kind::Text, Need::Both("size"), r#""row-six""#, Use::Changes(&[Answer::Papers]);
    IncomingSize = Incoming "size", Kind::Size, Need::Both("layout"), r#""440x400""#, Use::Changes(&[Answer::Papers]);
    IncomingSpare = Incoming "spare", CELLS, Need::Never, "20", Use::Changes(&[Answer::Papers]);
    IncomingBatch = Incoming "batch", Kind::Text, Need::Never, r#""B-2026-07""#, Use::Changes(&[Answer::Papers]);
    IncomingSerial = Incoming "serial", Kind::Text, Need::Never, r#""SW-0142""#, Use::Changes(&[Answer::Papers]);
    IncomingWhy = Incoming "why", Kind::Text, Need::Never, r#""as planned""#, Use::Nothing(Unused::ForReaders);
    IncomingNumber = IncomingCount "number", NUMBER, Need::Always, "1", Use::Changes(&[Answer::Papers]);
    IncomingCells = IncomingCount "cells", CELLS, Need::Always, "45", Use::Changes(&[Answer::Papers]);
    CheckedWhat = Checked "what", Kind::Word("checked"), Need::Always, r#""checked""#, READING;
    CheckedOn = Checked "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckedBy = Checked "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    CheckedFound = Checked "found", Kind::Checks, Need::Always, r#"["top left=safe", "top right=safe", "under left=30mm", "under right=30mm", "skin left-seat-bone=clear"]"#, Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckedTransfer = Checked "transfer", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckedReach = Checked "reach", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckedPassed = Checked "passed", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckedWhy = Checked "why", Kind::Text, Need::Never, r#""sits as before""#, Use::Nothing(Unused::ForReaders);
    CheckWhat = FittingCheck "what", Kind::Word("fitting check"), Need::Always, r#""fitting check""#, READING;
    CheckOn = FittingCheck "on", Kind::Date, Need::Always, "2026-01-22", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckBy = FittingCheck "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    CheckPassed = FittingCheck "passed", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    CheckFound = FittingCheck "found", Kind::Text, Need::Never, r#""both sides safe, 30 mm under each seat bone""#, Use::Changes(&[Answer::Papers]);
    AdjustmentWhat = Adjustment "what", Kind::Word("adjustment"), Need::Always, r#""adjustment""#, READING;
    AdjustmentOn = Adjustment "on", Kind::Date, Need::Always, "2026-02-22", Use::Changes(&[Answer::ReCheck]);
    AdjustmentBy = Adjustment "by", Kind::Text, Need::Always, r#""OT""#, Use::Nothing(Unused::ForReaders);
    AdjustmentFound = Adjustment "found", Kind::Checks, Need::Always, r#"["top left=tight"]"#, Use::Changes(&[Answer::Plan, Answer::ReCheck]);
    AdjustmentWhy = Adjustment "why", Kind::Text, Need::Never, r#""sits lower on the left""#, Use::Nothing(Unused::ForReaders);
    MoveFrom = Move "from", Kind::Place, Need::Always, "2", Use::Nothing(Unused::ForReaders);
    MoveTo = Move "to", Kind::Place, Need::Always, r#""spare""#, Use::Nothing(Unused::ForReaders);
    MoveCells = Move "cells", CELLS, Need::Always, "3", Use::Nothing(Unused::ForReaders);
    RecountWhat = Recount "what", Kind::Word("recount"), Need::Always, r#""recount""#, READING;
    RecountOn = Recount "on", Kind::Date, Need::Always, "2026-04-22", Use::Changes(&[Answer::ReCheck]);
    RecountBy = Recount "by", Kind::Text, Need::Always, r#""carer""#, Use::Nothing(Unused::ForReaders);
    RecountSpare = Recount "spare", CELLS, Need::Never, "20", Use::Changes(&[Answer::Papers]);
    RecountNumber = RecountCount "number", NUMBER, Need::Always, "1", Use::Changes(&[Answer::ReCheck]);
    RecountCells = RecountCount "cells", CELLS, Need::Always, "44", Use::Changes(&[Answer::ReCheck]);
    WeighingWhat = Weighing "what", Kind::Word("weighing"), Need::Always, r#""weighing""#, READING;
    WeighingOn = Weighing "on", Kind::Date, Need::Always, "2026-04-22", Use::Changes(&[Answer::Cautions, Answer::ReCheck]);
    WeighingBy = Weighing "by", Kind::Text, Need::Always, r#""clinic""#, Use::Nothing(Unused::ForReaders);
    WeighingKg = Weighing "kg", number(Unit::Kilogram, 5.0, 350.0), Need::Always, "61", Use::Changes(&[Answer::Plan, Answer::Prediction, Answer::ReCheck]);
    SkinSeenWhat = SkinSeen "what", Kind::Word("skin"), Need::Always, r#""skin""#, READING;
    SkinSeenOn = SkinSeen "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    SkinSeenBy = SkinSeen "by", Kind::Text, Need::Always, r#""nurse""#, Use::Changes(&[Answer::Papers]);
    SkinSeenSite = SkinSeen "site", Kind::Choice(SITES), Need::Always, r#""coccyx""#, Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    SkinSeenIs = SkinSeen "is", Kind::Choice(&words(&SkinAnswer::ALL)), Need::Always, r#""stays""#, Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    MovedWhat = Moved "what", Kind::Word("moved"), Need::Always, r#""moved""#, READING;
    MovedOn = Moved "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    MovedBy = Moved "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    MovedWhy = Moved "why", Kind::Text, Need::Never, r#""as proposed""#, Use::Nothing(Unused::ForReaders);
    MovedFrom = MovedMove "from", Kind::Place, Need::Always, "2", Use::Changes(&[Answer::Papers]);
    MovedTo = MovedMove "to", Kind::Place, Need::Always, r#""spare""#, Use::Changes(&[Answer::Papers]);
    MovedCells = MovedMove "cells", CELLS, Need::Always, "3", Use::Changes(&[Answer::Papers]);
    ReturnedWhat = Returned "what", Kind::Word("returned"), Need::Always, r#""returned""#, READING;
    ReturnedOn = Returned "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    ReturnedBy = Returned "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    ReturnedEntry = Returned "entry", ENTRY, Need::Always, "2", Use::Changes(&[Answer::Papers]);
    ReturnedWhy = Returned "why", Kind::Text, Need::Never, r#""it was better before""#, Use::Nothing(Unused::ForReaders);
    ReturnedNumber = ReturnedCount "number", NUMBER, Need::Always, "1", Use::Changes(&[Answer::Papers]);
    ReturnedCells = ReturnedCount "cells", CELLS, Need::Always, "45", Use::Changes(&[Answer::Papers]);
    CleanedWhat = Cleaned "what", Kind::Word("cleaned"), Need::Always, r#""cleaned""#, READING;
    CleanedOn = Cleaned "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers]);
    CleanedBy = Cleaned "by", Kind::Text, Need::Always, r#""supplier""#, Use::Changes(&[Answer::Papers]);
    CleanedWhy = Cleaned "why", Kind::Text, Need::Never, r#""before it goes to somebody else""#, Use::Nothing(Unused::ForReaders);
    WithdrawnWhat = Withdrawn "what", Kind::Word("withdrawn"), Need::Always, r#""withdrawn""#, READING;
    WithdrawnOn = Withdrawn "on", Kind::Date, Need::Always, "2026-02-24", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    WithdrawnBy = Withdrawn "by", Kind::Text, Need::Always, r#""OT""#, Use::Changes(&[Answer::Papers]);
    WithdrawnEntry = Withdrawn "entry", ENTRY, Need::Always, "7", Use::Changes(&[Answer::Papers, Answer::ReCheck]);
    WithdrawnBecause = Withdrawn "because", Kind::Text, Need::Always, r#""written for another client""#, Use::Changes(&[Answer::Papers]);
    LayoutFormat = Layout "format", Kind::Just(1), Need::Always, "1", READING;
    LayoutKind = Layout "kind", Kind::Word("layout"), Need::Always, r#""layout""#, READING;
    LayoutName = Layout "name", Kind::Name, Need::Always, r#""my-layout""#, Use::Changes(&[Answer::Pattern]);
    LayoutRevision = Layout "revision", REVISION, Need::Never, "1", Use::Changes(&[Answer::Papers]);
    LayoutTitle = Layout "title", Kind::Text, Need::Always, r#""Rear, front left, front right""#, Use::Changes(&[Answer::Papers]);
    LayoutAbout = Layout "about", Kind::Text, Need::Always, r#""For whom this layout is, in a sentence.""#, Use::Changes(&[Answer::Pattern]);
    LayoutClass = Layout "class", Kind::Choice(CLASSES), Need::Always, r#""skin protection""#, Use::Changes(&[Answer::Papers]);
    LayoutMirror = Layout "mirror", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Pattern]);
    WallHeight = Layout "wall_height", number(Unit::Millimetre, 20.0, 200.0), Need::Always, "80", Use::Changes(&[Answer::Pattern]);
    Rim = Layout "rim", Kind::Choice(&words(&cushion::Rim::WORDS)), Need::Never, r#""soft""#, Use::Changes(&[Answer::Pattern, Answer::Prediction]);
    StockCrown = Layout "stock_crown", Kind::Measure, Need::Always, r#""3% + 2""#, Use::Changes(&[Answer::Pattern]);
    RatingFrom = Layout "rating_from", Kind::Text, Need::Always, r#""How the user weights were found.""#, Use::Changes(&[Answer::Papers]);
    MadeSizeSize = MadeSize "size", Kind::Size, Need::Always, r#""440x400""#, Use::Changes(&[Answer::Sizing]);
    MaxUserWeight = MadeSize "max_user_weight_kg", number(Unit::Kilogram, 5.0, 350.0), Need::Always, "90", Use::Changes(&[Answer::Sizing, Answer::Plan]);
    PointOn = Points "on", Kind::Name, Need::Always, r#""outline""#, Use::Changes(&[Answer::Pattern]);
    PointFrom = Points "from", Kind::Name, Need::Always, r#""a""#, Use::Changes(&[Answer::Pattern]);
    PointTo = Points "to", Kind::Name, Need::Always, r#""b""#, Use::Changes(&[Answer::Pattern]);
    PointAt = Points "at", Kind::Measure, Need::Always, r#""55%""#, Use::Changes(&[Answer::Pattern]);
    SeamThrough = Seams "through", Kind::Names, Need::Always, r#"["a", "b"]"#, Use::Changes(&[Answer::Pattern]);
    SeamBow = Seams "bow", Kind::Measure, Need::Never, r#""6%""#, Use::Changes(&[Answer::Pattern]);
    SeamCurve = Seams "curve", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Pattern]);
    SeamClosed = Seams "closed", Kind::YesNo, Need::Never, "true", Use::Changes(&[Answer::Pattern]);
    CompartmentSeed = Compartments "seed", Kind::Spot, Need::Always, r#"["25%", "30%"]"#, Use::Changes(&[Answer::Pattern]);
    CompartmentNumber = Compartments "number", NUMBER, Need::OneOf("numbers"), "3", Use::Changes(&[Answer::Pattern]);
    CompartmentNumbers = Compartments "numbers", Kind::Pair, Need::OneOf("number"), "{ left = 1, right = 2 }", Use::Changes(&[Answer::Pattern]);
    CompartmentWords = Compartments "words", Kind::Words, Need::Always, r#""under the seat bone""#, Use::Changes(&[Answer::Papers]);
    CompartmentFor = Compartments "for", Kind::Choice(PURPOSES), Need::Always, r#""seat bone""#, Use::Changes(&[Answer::Plan]);
    CellFormat = Cell "format", Kind::Just(1), Need::Always, "1", READING;
    CellKind = Cell "kind", Kind::Word("cell"), Need::Always, r#""cell""#, READING;
    CellName = Cell "name", Kind::Name, Need::Always, r#""my-cell""#, Use::Changes(&[Answer::Pattern]);
    CellTitle = Cell "title", Kind::Text, Need::Always, r#""Square pillow, 24 ml""#, Use::Changes(&[Answer::Papers]);
    CellEdge = Cell "edge_mm", number(Unit::Millimetre, 10.0, 200.0), Need::Always, "50", Use::Changes(&[Answer::Pattern]);
    CellVolume = Cell "inflated_volume_ml", number(Unit::Millilitre, 1.0, 500.0), Need::OneOf("inflated_volume"), "24", Use::Changes(&[Answer::Pattern]);
    CellVolumeRule = Cell "inflated_volume", Kind::Word("square pillow"), Need::OneOf("inflated_volume_ml"), r#""square pillow""#, Use::Changes(&[Answer::Pattern]);
    FilmMass = Cell "film_mass_g", number(Unit::Gram, 0.01, 50.0), Need::Always, "0.8", Use::Changes(&[Answer::Prediction]);
    PackingBulk = Packing "bulk", number(Unit::Share, 0.3, 0.9), Need::Always, "0.62", Use::Changes(&[Answer::Pattern]);
    PackingWall = Packing "wall", number(Unit::Share, 0.0, 0.5), Need::Always, "0.06", Use::Changes(&[Answer::Pattern]);
    PackingSource = Packing "source", Kind::Text, Need::Always, r#""Where these two numbers come from.""#, Use::Nothing(Unused::ForReaders);
}
