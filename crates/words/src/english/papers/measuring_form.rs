//! English: the blank measuring form.

use case::question::{Group, Question};

use crate::MeasuringFormTexts;

pub(super) const TEXTS: &MeasuringFormTexts = &MeasuringFormTexts {
    title: "Measuring form",
    subject: "What is measured and decided, in the order of the client's file",
    sides_are_the_clients: "Left and right are the client's",
    how_to_answer: "Ring the word that is right. Write days as 2026-01-31. Leave out what nobody knows.",
    clinician_decides: "The treating clinician decides; local rules come first. This form does not replace an assessment.",
    how_to_sit: "Sitting, as upright as can be held, clothed as when using the cushion, shoes on. Write what you measure, not what you expect.",
    measure: "Measure",
    from_where_to_where: "From where to where",
    from_the_side: "From the side",
    from_above: "From above, knees up",
    yes: "yes",
    no: "no",
    sketch: "Sketch from above: sore places, where the client leans",
    notes: "Notes",
    print_at_full_size: "Print at 100 %, not fitted to the page. Each side of this square is then 100 mm. Measure it before you trust a drawing at full size.",
    square: "A square of 100 mm by 100 mm, to check the scale of the print and to sketch in. The front edge is up, the client's left on the left.",
};

/// What a group is about.
pub(super) fn group_heading(group: Group) -> &'static str {
    match group {
        Group::Client => "Client",
        Group::Measures => "Body measures",
        Group::Weight => "Body weight",
        Group::Posture => "Posture",
        Group::Obliquity => "Pelvic obliquity",
        Group::Tilt => "Pelvic tilt",
        Group::Rotation => "Pelvic rotation",
        Group::Windswept => "Windswept legs",
        Group::TrulyShorter => "Leg that is shorter",
        Group::ApparentlyShorter => "Leg that seems shorter",
        Group::LimbLoss => "Limb loss",
        Group::Skin => "Skin",
        Group::Injury => "Pressure injuries",
        Group::Function => "Function",
        Group::Layers => "Layers",
        Group::Altitude => "Altitude",
        Group::Seat => "Load on the seat",
        Group::Chair => "Chair",
        Group::Cushion | Group::Layout => "Cushion",
        Group::Goal => "Goals",
        Group::Change => "Wanted changes",
        Group::Carer => "Carer",
        Group::Call => "Whom to call",
        Group::Filling => "Fill that is going on",
        Group::FillingCount => "Counts so far",
        Group::Plan => "Plan",
        Group::PlanCount => "Planned counts",
        Group::FittingCheck => "Fitting check",
        Group::Adjustment => "Adjustment",
        Group::Move | Group::MovedMove => "Moves",
        Group::Recount => "Recount",
        Group::RecountCount | Group::IncomingCount => "Counts found",
        Group::Weighing => "Weighing",
        Group::PlanExpected => "Expected of the plan",
        Group::Filled => "Fill",
        Group::FilledCount | Group::ReturnedCount => "Counts put in",
        Group::Incoming => "Incoming check",
        Group::Checked => "Check in parts",
        Group::SkinSeen => "Skin seen",
        Group::Moved => "Cells moved",
        Group::Returned => "Return",
        Group::Cleaned => "Cleaning",
        Group::Withdrawn => "Withdrawal",
        Group::SitAtMost => "Sitting, as the clinician says",
        Group::MadeSize => "Made sizes",
        Group::Points => "Points",
        Group::Seams => "Seams",
        Group::Compartments => "Compartments",
        Group::Cell => "Cell",
        Group::Packing => "Packing",
    }
}

/// How a question is called where the heading of its group says the rest.
pub(super) fn label(question: Question) -> Option<&'static str> {
    Some(match question {
        Question::Language => "carers' language",
        Question::TakenOn => "measured on",
        Question::TakenBy => "measured by",
        Question::WeightKg | Question::WeightLb => "weight",
        Question::WeighedOn => "weighed on",
        Question::ObliquityLower => "lower side",
        Question::ObliquityAt => "measured at",
        Question::ObliquityReducible => "reducible by",
        Question::RotationForward => "forward side",
        Question::WindsweptTo => "knees to the",
        Question::TrulyShorterSide | Question::ApparentlyShorterSide => "side",
        Question::ObliquityBy | Question::TrulyShorterBy | Question::ApparentlyShorterBy => "by",
        Question::LimbLossSide | Question::GoalSide | Question::SensationSide => "side",
        Question::LimbLossLevel => "level",
        Question::InjuryIs => "state",
        Question::InjurySeenOn => "seen on",
        Question::SealedM => "height where the cells were sealed",
        Question::HomeM => "height where the client lives",
        Question::SeatShare => "share of the weight",
        Question::SeatBonesForward => "seat bones from the rear edge",
        Question::InsideWidth => "inside width",
        Question::InsideDepth => "inside depth",
        Question::FootrestHeight => "footrest to seat base",
        Question::ChairTilt => "tilted back",
        Question::ChairNotes => "notes",
        Question::GoalPercent => "less pressure",
        Question::GoalBy => "lower by",
        Question::ChangeCells => "cells",
        Question::ChangeCrown => "crown",
        Question::SitMinutes => "minutes at a time, at most",
        Question::SitTimes => "times a day",
        Question::CallWho => "who",
        Question::CallPhone => "telephone",
        _ => return None,
    })
}

/// What to write by hand, where a file's comment speaks of the file.
pub(super) fn comment(question: Question) -> Option<&'static str> {
    Some(match question {
        Question::Units => "of all lengths on this form",
        Question::SeatShare => "of the body weight, such as 0.65",
        Question::ChangeOf => "its number or words",
        Question::ChangeCells => "+\u{a0}more, –\u{a0}fewer",
        Question::ChangeCrown => "+\u{a0}higher, –\u{a0}lower",
        Question::SizeOfCushion => "width x depth",
        Question::Code => "with a digit in it, never a name",
        Question::Child
        | Question::NextReview
        | Question::Language
        | Question::ObliquityLower
        | Question::ObliquityBy
        | Question::RotationForward
        | Question::WindsweptTo
        | Question::SealedM
        | Question::HomeM
        | Question::SeatBonesForward
        | Question::FootrestHeight
        | Question::ChairTilt
        | Question::SpareCells
        | Question::LayoutOfCushion
        | Question::CellOfCushion
        | Question::SerialOfCushion
        | Question::SitMinutes
        | Question::SitTimes
        | Question::PressureRelief
        | Question::PoplitealAngle => "",
        Question::ObliquityReducible => "taken away by hand",
        Question::InsideDepth => "back support to front edge",
        Question::TrunkHeight => {
            "of the weight that follows a lean; 0 where the trunk keeps its place"
        }
        Question::HipFlexion => "90 is a right angle",
        Question::SittingHours => "a day",
        Question::GoalSite => "where to off-load",
        Question::GoalPercent => "there",
        Question::GoalHeight => "of a support",
        Question::GoalSide => "of a lower front",
        Question::GoalBy => "at the front",
        _ => return None,
    })
}
