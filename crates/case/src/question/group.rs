//! Groups of questions: the tables of our files.

use super::Question;

/// How a group is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// The file itself.
    File,
    /// Under a heading: `[measures]`.
    Heading,
    /// In braces: `obliquity = { lower = "left", ... }`.
    Braces,
    /// Any number of times under a heading: `[[goal]]`.
    List,
    /// Any number of times in braces in square brackets.
    BracesInList,
    /// Under a heading, in braces, by names that the author gives.
    Named,
}

macro_rules! groups {
    ($($name:ident = $parent:ident $key:literal $form:ident $(entry $what:literal)?;)+) => {
        /// A table of one of our files.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Group {
            $(#[doc = concat!("`", $key, "`")] $name,)+
        }

        impl Group {
            /// All, in the order of the files.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            const fn told(self) -> (Self, &'static str, Form, Option<&'static str>) {
                match self {
                    $(Self::$name => {
                        let what: &[&str] = &[$($what)?];
                        let what = if what.is_empty() { None } else { Some(what[0]) };
                        (Self::$parent, $key, Form::$form, what)
                    })+
                }
            }
        }
    };
}

groups! {
    Client = Client "" File;
    Measures = Client "measures" Heading;
    Weight = Client "weight" Heading;
    Posture = Client "posture" Heading;
    Obliquity = Posture "obliquity" Braces;
    Tilt = Posture "tilt" Braces;
    Rotation = Posture "rotation" Braces;
    Windswept = Posture "windswept" Braces;
    TrulyShorter = Posture "truly_shorter" Braces;
    ApparentlyShorter = Posture "apparently_shorter" Braces;
    LimbLoss = Posture "limb_loss" List;
    Skin = Client "skin" Heading;
    Injury = Skin "injury" List;
    Function = Client "function" Heading;
    Layers = Client "layers" Heading;
    Altitude = Client "altitude" Heading;
    Seat = Client "seat" Heading;
    Chair = Client "chair" Heading;
    Cushion = Client "cushion" Heading;
    Goal = Client "goal" List;
    Change = Client "change" List;
    Carer = Client "carer" Heading;
    SitAtMost = Carer "sit_at_most" Braces;
    Call = Client "call" List;
    Filling = Client "filling" Heading;
    FillingCount = Filling "counts" BracesInList;
    Plan = Client "record" List entry "plan";
    PlanCount = Plan "counts" BracesInList;
    PlanExpected = Plan "expected" Braces;
    Filled = Client "record" List entry "filled";
    FilledCount = Filled "counts" BracesInList;
    Incoming = Client "record" List entry "incoming check";
    IncomingCount = Incoming "counts" BracesInList;
    Checked = Client "record" List entry "checked";
    FittingCheck = Client "record" List entry "fitting check";
    Adjustment = Client "record" List entry "adjustment";
    Move = Adjustment "moves" BracesInList;
    Recount = Client "record" List entry "recount";
    RecountCount = Recount "counts" BracesInList;
    Weighing = Client "record" List entry "weighing";
    SkinSeen = Client "record" List entry "skin";
    Moved = Client "record" List entry "moved";
    MovedMove = Moved "moves" BracesInList;
    Returned = Client "record" List entry "returned";
    ReturnedCount = Returned "counts" BracesInList;
    Cleaned = Client "record" List entry "cleaned";
    Withdrawn = Client "record" List entry "withdrawn";
    Layout = Layout "" File;
    MadeSize = Layout "sizes" BracesInList;
    Points = Layout "points" Named;
    Seams = Layout "seams" Named;
    Compartments = Layout "compartments" Named;
    Cell = Cell "" File;
    Packing = Cell "packing" Heading;
}

impl Group {
    /// The group that it is in; a file is in itself.
    #[must_use]
    pub fn parent(self) -> Self {
        self.told().0
    }

    /// The file that it is in.
    #[must_use]
    pub fn root(self) -> Self {
        let parent = self.parent();
        if parent == self { self } else { parent.root() }
    }

    /// Its key in the group that it is in; empty for a file.
    #[must_use]
    pub fn key(self) -> &'static str {
        self.told().1
    }

    /// How it is written.
    #[must_use]
    pub fn form(self) -> Form {
        self.told().2
    }

    /// What an entry of the record says it is, where it is one.
    #[must_use]
    pub fn entry(self) -> Option<&'static str> {
        self.told().3
    }

    /// Whether it says what is done with the cushion, not what is known or wanted: the record, and
    /// the fill that is going on. The program writes it.
    #[must_use]
    pub fn is_of_work(self) -> bool {
        let is_filling = self == Self::Filling || self.parent() == Self::Filling;
        is_filling || self.entry().is_some() || self.parent().entry().is_some()
    }

    /// Its path in the file, such as `skin.injury`; empty for a file.
    #[must_use]
    pub fn path(self) -> &'static str {
        match self {
            Self::Obliquity => "posture.obliquity",
            Self::Tilt => "posture.tilt",
            Self::Rotation => "posture.rotation",
            Self::Windswept => "posture.windswept",
            Self::TrulyShorter => "posture.truly_shorter",
            Self::ApparentlyShorter => "posture.apparently_shorter",
            Self::LimbLoss => "posture.limb_loss",
            Self::Injury => "skin.injury",
            Self::PlanCount
            | Self::RecountCount
            | Self::FilledCount
            | Self::IncomingCount
            | Self::ReturnedCount => "record.counts",
            Self::Move | Self::MovedMove => "record.moves",
            Self::PlanExpected => "record.expected",
            Self::SitAtMost => "carer.sit_at_most",
            Self::FillingCount => "filling.counts",
            own => own.key(),
        }
    }

    /// The groups that are in it.
    pub fn children(self) -> impl Iterator<Item = Self> {
        Self::ALL.iter().copied().filter(move |own| *own != self && own.parent() == self)
    }

    /// Finds a group of a client's file by its path.
    #[must_use]
    pub fn from_path(path: &str) -> Option<Self> {
        let of_client = |own: &&Self| own.root() == Self::Client && own.path() == path;
        Self::ALL.iter().find(of_client).copied()
    }

    /// Whether the file must have it: whether an answer in it is always needed and it is written
    /// once.
    #[must_use]
    pub fn is_required(self) -> bool {
        matches!(
            self,
            Self::Measures
                | Self::Cushion
                | Self::MadeSize
                | Self::Points
                | Self::Seams
                | Self::Compartments
                | Self::Packing
                | Self::FillingCount
                | Self::PlanCount
                | Self::FilledCount
                | Self::IncomingCount
                | Self::ReturnedCount
                | Self::MovedMove
        )
    }

    /// All keys that may stand in it, in the order of the form: of its questions, then of groups.
    #[must_use]
    pub fn keys(self) -> Vec<&'static str> {
        let mut keys: Vec<&str> = Question::of(self).map(|own| own.row().key).collect();
        for child in self.children() {
            if !keys.contains(&child.key()) {
                keys.push(child.key());
            }
        }
        keys
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_made_of_keys() {
        for group in Group::ALL {
            let parent = group.parent().path();
            let made = if parent.is_empty() {
                group.key().to_owned()
            } else {
                format!("{parent}.{}", group.key())
            };
            assert_eq!(group.path(), made, "{group:?}");
        }
    }
}
