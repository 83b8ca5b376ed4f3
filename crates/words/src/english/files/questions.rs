//! English: how questions are called and explained.

use case::FileKind;
use case::question::{Answer, Group, Question, Unused, Use};

macro_rules! prose {
    ($($name:ident: $label:literal, $comment:literal;)+) => {
        /// How a question is called on a form and in a sentence, without an article.
        pub(super) fn label(question: Question) -> &'static str {
            match question {
                $(Question::$name => $label,)+
            }
        }

        /// What to write, for the line of a starter file; empty where the key says it.
        pub(super) fn comment(question: Question) -> &'static str {
            match question {
                $(Question::$name => $comment,)+
            }
        }
    };
}

prose! {
    Format: "format", "";
    FileKind: "kind of file", "";
    Code: "code of the client", "a code with a digit in it, never a name";
    Child: "a child", "what is known of adults says nothing then";
    NextReview: "next review", "when the set-up is to be looked at again";
    Language: "language for carers", "of the take-home sheet and the wash-day sheet; else that of the program";
    Units: "unit of lengths", "of all lengths in this file";
    TakenOn: "day of the measures", "";
    TakenBy: "who measured", "initials or a role";
    HipWidth: "hip width", "greatest width of hips or thighs";
    TrochanterWidth: "trochanter width", "between the outsides of the trochanters";
    ThighDepth: "thigh depth", "back of the buttock to the back of the knee";
    LowerLegLength: "lower leg length", "back of the knee to under the heel, with shoes";
    ExternalKneeWidth: "external knee width", "between the outsides of the knees";
    SeatBoneSpacing: "seat bone spacing", "between the lowest points of the seat bones; only where it was measured";
    WeightKg: "body weight", "as the client sits, clothed";
    WeightLb: "body weight", "as the client sits, clothed";
    WeighedOn: "day of the weighing", "";
    ObliquityLower: "lower side of the pelvis", "which side of the pelvis is lower";
    ObliquityBy: "obliquity", "by how much";
    ObliquityAt: "place where an obliquity is measured", "at the asis it is about twice as much";
    ObliquityIs: "flexibility", "";
    ObliquityReducible: "reducible part of the obliquity", "how much of it can be taken away by hand";
    TiltDirection: "tilt", "";
    TiltIs: "flexibility", "";
    TiltDegrees: "angle", "";
    RotationForward: "forward side of the pelvis", "which side of the pelvis is in front";
    RotationDegrees: "angle", "";
    RotationIs: "flexibility", "";
    WindsweptTo: "side of the knees", "both knees to that side";
    WindsweptDegrees: "angle", "";
    TrulyShorterSide: "shorter leg", "";
    TrulyShorterBy: "difference of the legs", "bone against bone";
    ApparentlyShorterSide: "shorter leg", "";
    ApparentlyShorterBy: "difference of the legs", "because the pelvis is turned";
    HipFlexion: "hip flexion", "degrees to which each hip bends: 90 is a right angle";
    PoplitealAngle: "popliteal angle", "degrees";
    Tone: "muscle tone", "in your words";
    Balance: "sitting balance", "";
    LimbLossSide: "side of the loss", "";
    LimbLossLevel: "level of loss", "";
    Sensation: "sensation", "feeling where the client sits";
    SensationSide: "side of the sensation", "if on one side only";
    WeightShift: "ability to shift weight", "whether they take load off by themselves";
    InjurySite: "site", "";
    InjuryCategory: "category", "in the terms of the international guideline";
    InjuryIs: "state of an injury", "";
    InjurySeenOn: "day on which it was seen", "";
    Propulsion: "propulsion", "how the chair is moved";
    Transfers: "transfers", "how the client gets on and off";
    Continence: "continence", "";
    SittingHours: "time of sitting", "hours a day";
    Cover: "cover", "";
    Pad: "pad on the cushion", "";
    Sling: "sling under the client", "a lifting sling that stays there";
    SealedM: "height above the sea", "where the cells were sealed";
    HomeM: "height above the sea", "where the client lives";
    SeatShare: "share of the weight on the seat", "of the body weight";
    SeatBonesForward: "distance of the seat bones from the rear edge", "from the cushion's rear edge";
    TrunkHeight: "height of the leaning trunk", "how high the weight sits that follows a lean; 0 where the trunk keeps its place";
    InsideWidth: "inside width of the chair", "clear width between the sides";
    InsideDepth: "inside depth of the chair", "from the back support to the front edge of the seat";
    SeatBase: "seat base", "what the cushion lies on";
    SlingSag: "sag of the sling", "in the middle";
    CushionSides: "state of the sides", "of the cushion: held where armrest panels or side guards touch both";
    FootrestHeight: "height from footrest to seat base", "from the footrest up to the seat base";
    ChairTilt: "tilt of the chair", "degrees that it is tilted back";
    ChairNotes: "notes on the chair", "";
    LayoutOfCushion: "layout", "a built-in layout (row-six, island-eight, curved-ten), the path of a file, or plugin:NAME";
    LayoutParameters: "parameters of the layout", "of a plugin's layout";
    SizeOfCushion: "size", "width x depth in mm, such as \"440x400\", or \"17x16in\"";
    CellOfCushion: "cell", "a built-in cell or the path of a file";
    SpareCells: "spare cells", "how many are in the spare bag";
    SerialOfCushion: "serial", "as on its tag";
    FirstFile: "file of the first cushion", "where this is a second cushion of the same client";
    GoalWant: "goal", "";
    GoalSite: "site", "";
    GoalPercent: "part to take off", "of the pressure there, in %";
    GoalHeight: "height", "above what is beside it";
    GoalSide: "side of the front", "";
    GoalBy: "height", "";
    GoalBecause: "reason", "";
    ChangeOf: "compartment", "by its id, such as pelvis-left";
    ChangeCells: "change in cells", "more than in the stock fill, or fewer";
    ChangeCrown: "change of crown", "";
    ChangeReason: "reason", "";
    CarerNotes: "notes for the carer", "short sentences";
    Meanwhile: "seat meanwhile", "what to sit on while the cushion is washed or put right";
    Emergency: "number for help at once", "the emergency number of the place";
    PressureRelief: "pressure relief", "what the clinician says, in a sentence";
    SitMinutes: "longest sitting", "minutes at a time, as the clinician says";
    SitTimes: "sittings a day", "times a day";
    CallWho: "whom to call", "a service or a role";
    CallPhone: "telephone number", "";
    CallHours: "hours", "when they answer";
    FillingOn: "day on which the fill was begun", "";
    FillingBy: "who fills and counts", "";
    FillingAfter: "entries before it", "how many the record had when it was begun";
    FillingNumber: "number of the compartment", "as sewn at its opening";
    FillingPlanned: "cells to be put in", "";
    FillingFirst: "first count", "of the cells that were put in";
    FillingSecond: "second count", "of the same cells";
    PlanWhat: "entry", "";
    PlanOn: "day of the plan", "";
    PlanBy: "who recorded the plan", "";
    PlanLayout: "layout of the plan", "";
    PlanSize: "size of the plan", "";
    PlanTotal: "cells in all", "";
    PlanProgram: "program", "by which it was made";
    PlanLayoutDigest: "digest of the layout", "";
    PlanCellDigest: "digest of the cell", "";
    PlanParametersDigest: "digest of the model's parameters", "";
    PlanDrawnBy: "plugin of the plan", "";
    PlanWhy: "reason of the plan", "";
    PlanCountId: "compartment", "";
    PlanCountNumber: "number of the compartment", "as sewn at its opening";
    PlanCountStock: "cells as supplied", "";
    PlanCountPlanned: "cells for this client", "";
    ExpectedLeft: "cushion under the left seat bone", "";
    ExpectedRight: "cushion under the right seat bone", "";
    ExpectedLower: "lower side of the pelvis", "";
    ExpectedLowerBy: "by how much it is lower", "";
    ExpectedKg: "body weight", "";
    FilledWhat: "entry", "";
    FilledOn: "day of the fill", "";
    FilledBy: "who filled", "";
    FilledLayout: "layout of the cushion", "";
    FilledSize: "size of the cushion", "";
    FilledSpare: "spare cells", "counted in the bag";
    FilledBatch: "batch of the cells", "by which they are found when they are called back";
    FilledSerial: "serial", "as on the tag of the cushion";
    FilledWhy: "reason", "";
    FilledNumber: "number of the compartment", "as sewn at its opening";
    FilledCells: "cells put in", "";
    IncomingWhat: "entry", "";
    IncomingOn: "day of the count", "";
    IncomingBy: "who counted", "";
    IncomingLayout: "layout of the cushion", "";
    IncomingSize: "size of the cushion", "";
    IncomingSpare: "spare cells", "counted in the bag";
    IncomingBatch: "batch of the cells", "by which they are found when they are called back";
    IncomingSerial: "serial", "as on the tag of the cushion";
    IncomingWhy: "reason", "";
    IncomingNumber: "number of the compartment", "as sewn at its opening";
    IncomingCells: "cells found", "";
    CheckedWhat: "entry", "";
    CheckedOn: "day of the check", "";
    CheckedBy: "who checked", "";
    CheckedFound: "checks", "each as in the example; the skin after 30 minutes";
    CheckedTransfer: "transfer tried", "";
    CheckedReach: "reaching tried", "";
    CheckedPassed: "whether it passed", "with all of the above, else it is not finished";
    CheckedWhy: "note on the check", "";
    CheckWhat: "entry", "";
    CheckOn: "day of the check", "";
    CheckBy: "who checked", "";
    CheckPassed: "whether it passed", "until it says so, papers say NOT FITTED YET";
    CheckFound: "finding", "in a sentence";
    AdjustmentWhat: "entry", "";
    AdjustmentOn: "day of the adjustment", "";
    AdjustmentBy: "who adjusted", "";
    AdjustmentFound: "checks", "each as in the example";
    AdjustmentWhy: "reason of the adjustment", "";
    MoveFrom: "place of cells", "";
    MoveTo: "place of cells", "";
    MoveCells: "cells moved", "";
    RecountWhat: "entry", "";
    RecountOn: "day of the recount", "";
    RecountBy: "who counted", "";
    RecountSpare: "spare cells", "counted in the bag";
    RecountNumber: "number of the compartment", "as sewn at its opening";
    RecountCells: "cells counted", "";
    WeighingWhat: "entry", "";
    WeighingOn: "day of the weighing", "";
    WeighingBy: "who weighed", "";
    WeighingKg: "body weight", "";
    SkinSeenWhat: "entry", "";
    SkinSeenOn: "day of the look", "";
    SkinSeenBy: "who looked", "";
    SkinSeenSite: "site", "";
    SkinSeenIs: "state of the skin", "a mark that stays for 30 minutes is an alarm";
    MovedWhat: "entry", "";
    MovedOn: "day of the moves", "";
    MovedBy: "who moved the cells", "";
    MovedWhy: "reason", "";
    MovedFrom: "place of cells", "";
    MovedTo: "place of cells", "";
    MovedCells: "cells moved", "";
    ReturnedWhat: "entry", "";
    ReturnedOn: "day of the return", "";
    ReturnedBy: "who put the cells in", "";
    ReturnedEntry: "earlier entry", "after which the counts were so, from 1";
    ReturnedWhy: "reason", "";
    ReturnedNumber: "number of the compartment", "as sewn at its opening";
    ReturnedCells: "cells put in", "";
    CleanedWhat: "entry", "";
    CleanedOn: "day of the cleaning", "";
    CleanedBy: "who cleaned", "";
    CleanedWhy: "reason", "";
    WithdrawnWhat: "entry", "";
    WithdrawnOn: "day of the withdrawal", "";
    WithdrawnBy: "who withdraws", "";
    WithdrawnEntry: "earlier entry", "which counts for nothing, from 1";
    WithdrawnBecause: "reason", "";
    LayoutFormat: "format", "";
    LayoutKind: "kind of file", "";
    LayoutName: "name of the layout", "a-z, 0-9 and hyphens; how the command line calls it";
    LayoutRevision: "revision", "a whole number that rises whenever a count of the stock fill changes";
    LayoutTitle: "title of the layout", "how pages call it";
    LayoutAbout: "purpose of the layout", "for whom it is, in a sentence";
    LayoutClass: "class", "";
    LayoutMirror: "mirroring", "the client's right half is written, the left half is made";
    WallHeight: "wall height", "height of every seam above the seat, filled";
    Rim: "rim", "boxed where a stiff or boxed border keeps the outer walls upright";
    StockCrown: "stock crown", "greatest rise of a compartment above its walls, of the width";
    RatingFrom: "source of the ratings", "how the user weights were found, in a sentence";
    MadeSizeSize: "made size", "width x depth";
    MaxUserWeight: "maximum user weight", "the heaviest client at this size";
    PointOn: "seam of the point", "the seam that the point is on";
    PointFrom: "point to go from", "";
    PointTo: "point to go to", "";
    PointAt: "way along the seam", "so far from the one to the other";
    SeamThrough: "points of the seam", "the points through which it runs, in order";
    SeamBow: "bow", "how far true arcs stand off, to the left hand going along";
    SeamCurve: "curve", "one smooth curve through all points";
    SeamClosed: "closed seam", "an island";
    CompartmentSeed: "seed", "a point inside the compartment";
    CompartmentNumber: "number of the compartment", "as sewn at its opening";
    CompartmentNumbers: "numbers of the compartment", "of the left half and the right half";
    CompartmentWords: "words for carers", "in English, or by language: { en = \"...\", es = \"...\" }";
    CompartmentFor: "purpose", "";
    CellFormat: "format", "";
    CellKind: "kind of file", "";
    CellName: "name of the cell", "a-z, 0-9 and hyphens";
    CellTitle: "title of the cell", "how pages call it";
    CellEdge: "cell edge", "edge of the flat square, before inflation";
    CellVolume: "inflated volume", "when taut and free: dip cells in water";
    CellVolumeRule: "rule for the volume", "the volume follows from the edge";
    FilmMass: "film mass", "of one cell: weigh a batch that was counted by hand";
    PackingBulk: "bulk packing", "share of a large space that poured cells fill";
    PackingWall: "wall effect", "what walls take from that";
    PackingSource: "source of the packing", "where the two numbers come from";
}

/// What stands above or beside the heading of a group of the client's file.
pub(super) fn group_comment(group: Group) -> &'static str {
    match group {
        Group::Measures => "sitting, clothed as when using the cushion",
        Group::Posture => "all of it as far as it is known",
        Group::LimbLoss => "Lost parts of legs.",
        Group::Injury => "Pressure injuries, past and present.",
        Group::Layers => "what lies on the cushion",
        Group::Altitude => "metres above the sea",
        Group::Seat => "only what was found out",
        Group::Chair => "in the same units as the measures",
        Group::Goal => "What the cushion is to do, the most important first.",
        Group::Change => "Fixed changes from the stock fill, one for each compartment.",
        Group::Carer => "for the take-home sheet",
        Group::Call => "Whom to call, in order.",
        Group::Filling => {
            "how far the fill is that is going on; no cushion is filled before it is in the record"
        }
        Group::Filled => "What was really put in, each compartment with its cells:",
        Group::Checked => {
            "The check after it; it passes with all of its parts, else it is not finished:"
        }
        Group::Recount => "Later, what was counted again:",
        Group::Weighing => "Or weighed again:",
        Group::SkinSeen => "Or seen of the skin:",
        _ => "",
    }
}

/// The first lines of a client's file.
pub(super) const CLIENT_HEAD: &str = "\
A client's file. Left and right are always the client's.
Put your answers in place of \"fill in\". What was not measured is best left out: begin its line
with #. A line that begins with # is an example; take the # away to use it, in a block with its
heading. Check the file before you plan with it.";

/// The lines above the record of a client's file.
pub(super) const RECORD_HEAD: &str = "\
The record, oldest first, each entry with its day and with who made it. Plans are added at the end
as proposals; what was done is added after it was done. What stands here is never changed or taken
away by the program: a mistake is withdrawn by a later entry.";

/// Before other words that could be written.
pub(super) const OR: &str = "or";

/// What the program answers.
pub(super) fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Reading => "how the file is read",
        Answer::Sizing => "the size",
        Answer::Plan => "the counts",
        Answer::Prediction => "how the client is expected to sit",
        Answer::Cautions => "what is to be minded",
        Answer::Mistakes => "which mistake would explain a check",
        Answer::Pattern => "the pattern and its stock fill",
        Answer::Papers => "the papers",
        Answer::ReCheck => "when to look again",
    }
}

/// Which answers change nothing that the program says, and why: a sentence for each reason.
pub(super) fn unused_answers(answers: &[(Question, Unused)]) -> Vec<String> {
    let on_card = |question: Question| matches!(question.row().changes, Use::OnCard(_));
    let of = |reason, printed: bool| {
        let keys: Vec<String> = (answers.iter())
            .filter(|(question, why)| *why == reason && on_card(*question) == printed)
            .map(|(question, _)| format!("`{}`", question.path()))
            .collect();
        let what = if printed {
            "stands on the setup card and changes nothing that is computed"
        } else {
            "changes no answer"
        };
        (!keys.is_empty()).then(|| format!("{what}, since {}: {}", unused(reason), keys.join(", ")))
    };
    let reasons = [Unused::ForReaders, Unused::NotModelled, Unused::NoRule];
    reasons
        .into_iter()
        .flat_map(|reason| [false, true].map(|printed| of(reason, printed)))
        .flatten()
        .collect()
}

/// Why an answer to a question is not used.
pub(super) fn unused(why: Unused) -> &'static str {
    match why {
        Unused::ForReaders => "it is for whoever reads the file",
        Unused::NotModelled => "the model of the body does not have it",
        Unused::NoRule => "no rule with a source says what follows from it",
    }
}

/// How a kind of file is called.
pub(super) fn file_title(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Layout => "Seatwright: layout file",
        FileKind::Cell => "Seatwright: cell file",
        FileKind::Client => "Seatwright: client file",
    }
}
