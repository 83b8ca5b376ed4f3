//! The client: who, measured how, sitting on what.

use std::collections::BTreeMap;
use std::fmt;

use cushion::{Length, Mass, Name, Side, Size};

use crate::text::LengthUnit;
use crate::{Altitudes, Date, Entry, Filling, Function, Goal, Layers, Posture, Skin, Taught};

/// A code for a client: letters, digits and hyphens, 2 to 24 long, with a digit in it.
///
/// Never a name: the rule of a digit keeps most names out, and the files say why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ClientCode(String);

impl ClientCode {
    /// The rule in words, for messages.
    pub const RULE: &str = "2 to 24 letters, digits and hyphens with at least one digit, no hyphen \
        in front, no device such as COM1";

    /// Returns `None` where `text` breaks the rule.
    ///
    /// Files are named by the code: a hyphen in front would be read as an option of a command,
    /// and some systems take COM1 to COM9 and LPT1 to LPT9 for devices, whatever follows a point.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let plain = text.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
        let digit = text.bytes().any(|byte| byte.is_ascii_digit());
        let device = text.len() == 4
            && ["COM", "LPT"].iter().any(|port| text.to_ascii_uppercase().starts_with(port));
        let sized = (2..=24).contains(&text.len());
        (plain && digit && sized && !device && !text.starts_with('-'))
            .then(|| Self(text.to_owned()))
    }

    /// The code as written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ClientCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// One value for each side of the client.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sides<T> {
    /// The client's left.
    pub left: T,
    /// The client's right.
    pub right: T,
}

impl<T> std::ops::Index<Side> for Sides<T> {
    type Output = T;
    fn index(&self, side: Side) -> &T {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }
}

/// When something was measured, and by whom.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// The day.
    pub on: Date,
    /// Who measured: initials or a role.
    pub by: String,
}

/// Body measures in the terms of ISO 16840-1, sitting, clothed as when using the cushion.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measures {
    /// When and by whom.
    pub taken: Option<Taken>,
    /// Greatest width of hips or thighs.
    pub hip_width: Option<Length>,
    /// Between the outsides of the trochanters.
    pub trochanter_width: Option<Length>,
    /// Back of the buttock to the back of the knee (buttock-popliteal), on each leg.
    pub thigh_depth: Sides<Option<Length>>,
    /// Back of the knee to the underside of the heel, with shoes, on each leg.
    pub lower_leg_length: Sides<Option<Length>>,
    /// Between the outsides of the knees.
    pub external_knee_width: Option<Length>,
    /// Between the lowest points of the ischial tuberosities, where measured.
    pub seat_bone_spacing: Option<Length>,
}

/// A body weight and the day on which it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighing {
    /// The weight, as a mass.
    pub weight: Mass,
    /// The day.
    pub on: Date,
}

/// What the cushion lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Base {
    /// A solid seat.
    Solid,
    /// A sling seat.
    Sling,
}

impl Base {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 2] = [(Self::Solid, "solid"), (Self::Sling, "sling")];
}

impl Base {
    /// `solid` or `sling`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Solid => "solid",
            Self::Sling => "sling",
        }
    }
}

/// What stands along the left and right side of the cushion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CushionSides {
    /// Panels of armrests or side guards touch it along both sides, and hold its outer walls.
    Held,
    /// It is free on a side or on both.
    Open,
}

impl CushionSides {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 2] = [(Self::Held, "held"), (Self::Open, "open")];
}

/// The wheelchair, as far as the cushion is concerned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chair {
    /// Clear width between the sides.
    pub inside_width: Option<Length>,
    /// Clear depth from the back support to the front edge of the seat.
    pub inside_depth: Option<Length>,
    /// What the cushion lies on.
    pub base: Option<Base>,
    /// How far a sling seat sags in the middle.
    pub sling_sag: Option<Length>,
    /// What stands along the cushion; where none, it is believed to be free.
    pub cushion_sides: Option<CushionSides>,
    /// From the footrest up to the seat base.
    pub footrest_height: Option<Length>,
    /// How far the chair is tilted back, degrees.
    pub tilt_deg: Option<f64>,
    /// Anything else.
    pub notes: Option<String>,
}

/// What the seat carries and where, where it was found out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SeatLoad {
    /// Share of the body weight on the seat: 0.60 to 0.90.
    pub share: Option<f64>,
    /// How far in front of the cushion's rear edge the seat bones are.
    pub seat_bones_forward: Option<Length>,
    /// How high above the seat the weight sits that follows a lean of the pelvis; none where the
    /// trunk keeps its place.
    pub trunk_height: Option<Length>,
}

/// Which layout is meant, as a client file or the command line names it.
#[derive(Clone, Debug, PartialEq)]
pub enum LayoutRef {
    /// One that a source of layouts knows.
    Named {
        /// Its name, as the source knows it.
        name: String,
        /// Values for its parameters, by name.
        parameters: BTreeMap<Name, f64>,
    },
    /// A layout file, by its path, taken from the folder of the file that names it.
    File(String),
}

impl fmt::Display for LayoutRef {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Named { name, .. } | Self::File(name) => f.write_str(name),
        }
    }
}

impl LayoutRef {
    /// Whether a file means a path by these words, and not a name.
    #[must_use]
    pub fn is_path(words: &str) -> bool {
        words.contains(['/', '\\']) || words.ends_with(".toml")
    }
}

/// The cushion chosen for the client.
#[derive(Clone, Debug, PartialEq)]
pub struct CushionChoice {
    /// Which layout.
    pub layout: LayoutRef,
    /// Which size.
    pub size: Size,
    /// Which cell: a built-in name or the path of a cell file.
    pub cell: String,
    /// Cells in the spare bag, as supplied.
    pub spare_cells: u32,
    /// The serial on the cushion's tag.
    pub serial: Option<String>,
    /// The file of the same client's first cushion, where this is a second one.
    pub first_file: Option<String>,
}

/// How long a client may sit: a clinician's word, never computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SitAtMost {
    /// Minutes at a time.
    pub minutes: u32,
    /// Times a day.
    pub times: u32,
}

/// How much a compartment is to differ from the stock fill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// So many cells more, or fewer where negative.
    Cells(i32),
    /// So much more unloaded crown, or less where negative.
    Crown(Length),
}

/// A wanted change of one compartment, with the reason.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The compartment's id.
    pub compartment: Name,
    /// How much.
    pub amount: Amount,
    /// Why.
    pub reason: String,
}

/// Somebody to call.
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Who: a service or a role.
    pub who: String,
    /// The telephone number.
    pub phone: String,
    /// When they answer.
    pub hours: Option<String>,
}

/// A client and what was decided for them.
#[derive(Clone, Debug, PartialEq)]
pub struct Client {
    /// The code that stands for the client.
    pub code: ClientCode,
    /// The unit in which whoever wrote the file measures lengths.
    pub lengths: LengthUnit,
    /// The tag of the language of what carers get, one of [`crate::question::LANGUAGE_TAGS`]; where
    /// it is none, that of all other papers.
    pub language: Option<&'static str>,
    /// Body measures.
    pub measures: Measures,
    /// Body weight.
    pub weighing: Option<Weighing>,
    /// Whether the client is a child: what is known of adults says nothing then.
    pub child: bool,
    /// Posture.
    pub posture: Posture,
    /// Skin.
    pub skin: Skin,
    /// Function.
    pub function: Function,
    /// What lies on the cushion.
    pub layers: Layers,
    /// Heights above the sea.
    pub altitudes: Altitudes,
    /// What the seat carries, where it is known better than by default.
    pub seat: SeatLoad,
    /// The wheelchair.
    pub chair: Chair,
    /// The cushion.
    pub cushion: CushionChoice,
    /// What the cushion is to do, the most important first.
    pub goals: Vec<Goal>,
    /// Wanted changes from the stock fill.
    pub changes: Vec<Change>,
    /// Sentences for the carer's sheet.
    pub carer_notes: Vec<String>,
    /// What to sit on while the cushion is being washed or put right.
    pub meanwhile: Option<String>,
    /// The number to call where help is needed at once.
    pub emergency_phone: Option<String>,
    /// How long the client may sit, where a clinician said so.
    pub sit_at_most: Option<SitAtMost>,
    /// How load is to be taken off in between, in a clinician's words.
    pub pressure_relief: Option<String>,
    /// Whom to call, in order.
    pub contacts: Vec<Contact>,
    /// When the set-up is to be looked at again.
    pub next_review: Option<Date>,
    /// The fill that was begun and is not recorded yet.
    pub filling: Option<Filling>,
    /// What was done, oldest first.
    pub record: Vec<Entry>,
    /// What fittings taught, one after the other, each from what is usual after those before; no file
    /// has it, it is found anew from the record.
    pub taught: Vec<Taught>,
}

impl Client {
    /// Any client on a cushion: nothing is known of them but what is given.
    #[must_use]
    pub fn unknown(code: ClientCode, cushion: CushionChoice) -> Self {
        Self {
            code,
            cushion,
            lengths: LengthUnit::Millimetres,
            language: None,
            measures: Measures::default(),
            weighing: None,
            child: false,
            posture: Posture::default(),
            skin: Skin::default(),
            function: Function::default(),
            layers: Layers::default(),
            altitudes: Altitudes::default(),
            seat: SeatLoad::default(),
            chair: Chair::default(),
            goals: Vec::new(),
            changes: Vec::new(),
            carer_notes: Vec::new(),
            meanwhile: None,
            emergency_phone: None,
            sit_at_most: None,
            pressure_relief: None,
            contacts: Vec::new(),
            next_review: None,
            filling: None,
            record: Vec::new(),
            taught: Vec::new(),
        }
    }

    /// Returns the plan that was recorded last.
    #[must_use]
    pub fn latest_plan(&self) -> Option<&crate::RecordedPlan> {
        self.in_force().into_iter().rev().find_map(|entry| match entry {
            Entry::Plan(plan) => Some(plan),
            _ => None,
        })
    }

    /// Returns the newest weight with its day: the file's, or one in the record.
    #[must_use]
    pub fn latest_weighing(&self) -> Option<Weighing> {
        let recorded = self.in_force().into_iter().filter_map(|entry| match entry {
            Entry::Weighed(own) => Some(Weighing { weight: own.weight, on: own.on }),
            _ => None,
        });
        self.weighing
            .clone()
            .into_iter()
            .chain(recorded)
            .reduce(|newest, next| if next.on >= newest.on { next } else { newest })
    }
}
