//! The mirror image of a case: left for right in everything that has sides.
//!
//! With a cushion that is the same on both sides, the mirrored client's answer is the mirrored
//! answer. Numbers of a computer do not keep that by themselves: sums run in another order on the
//! other side. Whoever decides therefore does it for one of the two images, and mirrors back.

use cushion::{Name, Pattern, Side};

use crate::{
    Adjustment, Alarm, BrokenLimit, Change, Check, Client, Doubt, Entry, Expected, Filled,
    FrontSides, Function, GoalNumber, GoalOutcome, IfThen, LimbLoss, Measures, Move, Moved,
    NextStep, PartsChecked, PelvicObliquity, PelvicRotation, Place, Posture, PredictedCompartment,
    PredictedSeat, PredictedSite, Prediction, Propulsion, RecordedCount, RecordedPlan, Recount,
    RemedyCost, Returned, Shortfall, Sides, SiteName, Skin, SkinSeen, Spread, Telling, Want,
    Windswept,
};
use crate::{CardFinding, Remedy};

/// Which compartments of a cushion are each other's mirror image.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Partners {
    /// Id and number of each compartment, in the pattern's order.
    own: Vec<(Name, u8)>,
    /// The place in that order of each one's image.
    image: Vec<usize>,
}

/// Off the middle by less than this, mm, a centroid is on it: what is left by rounding.
const ON_THE_MIDDLE: f64 = 1e-6;

impl Partners {
    /// Those of a pattern; none where it is not the same on both sides.
    #[must_use]
    pub fn of(pattern: &Pattern) -> Option<Self> {
        let image = pattern.indices().map(|ix| match pattern[ix].side {
            Some(_) => pattern.partner(ix).map(|other| other.index()),
            None => (pattern.centroid(ix).x.abs() < ON_THE_MIDDLE).then(|| ix.index()),
        });
        let image: Vec<usize> = image.collect::<Option<_>>()?;
        let own = pattern.compartments().iter().map(|own| (own.id.clone(), own.number));
        let each_others = image.iter().enumerate().all(|(at, other)| image[*other] == at);
        each_others.then(|| Self { own: own.collect(), image })
    }

    /// Values of the compartments, each in its image's place.
    #[must_use]
    pub fn swapped<T: Clone>(&self, values: &[T]) -> Vec<T> {
        self.image.iter().map(|other| values[*other].clone()).collect()
    }

    /// The number of the image; a number that no compartment has stays.
    fn number(&self, number: u8) -> u8 {
        let at = self.own.iter().position(|own| own.1 == number);
        at.map_or(number, |at| self.own[self.image[at]].1)
    }

    /// The id of the image; an id that no compartment has stays.
    fn id(&self, id: &Name) -> Name {
        let at = self.own.iter().position(|own| own.0 == *id);
        at.map_or_else(|| id.clone(), |at| self.own[self.image[at]].0.clone())
    }
}

/// What has a mirror image.
pub trait Mirror {
    /// The same with left for right.
    #[must_use]
    fn mirrored(&self, partners: &Partners) -> Self;
}

impl Mirror for Side {
    fn mirrored(&self, _: &Partners) -> Self {
        self.other()
    }
}

impl<T: Mirror> Mirror for Option<T> {
    fn mirrored(&self, partners: &Partners) -> Self {
        self.as_ref().map(|own| own.mirrored(partners))
    }
}

impl<T: Mirror> Mirror for Vec<T> {
    fn mirrored(&self, partners: &Partners) -> Self {
        self.iter().map(|own| own.mirrored(partners)).collect()
    }
}

impl<T: Copy> Mirror for Sides<T> {
    fn mirrored(&self, _: &Partners) -> Self {
        Self { left: self.right, right: self.left }
    }
}

impl Mirror for SiteName {
    fn mirrored(&self, _: &Partners) -> Self {
        match *self {
            Self::SeatBone(side) => Self::SeatBone(side.other()),
            Self::Coccyx => Self::Coccyx,
            Self::Trochanter(side) => Self::Trochanter(side.other()),
            Self::Thigh(side) => Self::Thigh(side.other()),
        }
    }
}

impl Mirror for Measures {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self {
            thigh_depth: self.thigh_depth.mirrored(partners),
            lower_leg_length: self.lower_leg_length.mirrored(partners),
            ..self.clone()
        }
    }
}

impl Mirror for Posture {
    fn mirrored(&self, partners: &Partners) -> Self {
        let obliquity = |own: PelvicObliquity| PelvicObliquity { lower: own.lower.other(), ..own };
        let rotation = |own: PelvicRotation| PelvicRotation { forward: own.forward.other(), ..own };
        let windswept = |own: Windswept| Windswept { to: own.to.other(), ..own };
        let loss = |own: &LimbLoss| LimbLoss { side: own.side.other(), ..*own };
        Self {
            obliquity: self.obliquity.map(obliquity),
            rotation: self.rotation.map(rotation),
            windswept: self.windswept.map(windswept),
            truly_shorter: self.truly_shorter.map(|(side, by)| (side.other(), by)),
            apparently_shorter: self.apparently_shorter.map(|(side, by)| (side.other(), by)),
            hip_flexion: self.hip_flexion.mirrored(partners),
            popliteal_angle: self.popliteal_angle.mirrored(partners),
            limb_loss: self.limb_loss.iter().map(loss).collect(),
            ..self.clone()
        }
    }
}

impl Mirror for Skin {
    fn mirrored(&self, partners: &Partners) -> Self {
        let mut skin = self.clone();
        for injury in &mut skin.injuries {
            injury.site = injury.site.mirrored(partners);
        }
        skin.sensation_side = skin.sensation_side.map(Side::other);
        skin
    }
}

impl Mirror for Function {
    fn mirrored(&self, _: &Partners) -> Self {
        let propulsion = self.propulsion.map(|own| match own {
            Propulsion::Foot(side) => Propulsion::Foot(side.other()),
            Propulsion::Hands | Propulsion::BothFeet | Propulsion::Power | Propulsion::Pushed => {
                own
            }
        });
        Self { propulsion, ..self.clone() }
    }
}

impl Mirror for Want {
    fn mirrored(&self, partners: &Partners) -> Self {
        match *self {
            Self::OffLoad { site, share } => Self::OffLoad { site: site.mirrored(partners), share },
            Self::LowerFront { sides: FrontSides::One(side), by } => {
                Self::LowerFront { sides: FrontSides::One(side.other()), by }
            }
            Self::CorrectObliquity
            | Self::AccommodateObliquity
            | Self::Shelf { .. }
            | Self::LowerFront { sides: FrontSides::Both, .. }
            | Self::MedialSupport { .. }
            | Self::LateralSupport { .. }
            | Self::EqualFirmness
            | Self::NearStock => *self,
        }
    }
}

impl Mirror for Check {
    fn mirrored(&self, partners: &Partners) -> Self {
        match *self {
            Self::Top { side, answer } => Self::Top { side: side.other(), answer },
            Self::Under { side, answer } => Self::Under { side: side.other(), answer },
            Self::Press { number, answer } => {
                Self::Press { number: partners.number(number), answer }
            }
            Self::Lower { lower, by, at } => Self::Lower { lower: lower.map(Side::other), by, at },
            Self::Reading { site, pressure } => {
                Self::Reading { site: site.mirrored(partners), pressure }
            }
            Self::Skin { site, answer } => Self::Skin { site: site.mirrored(partners), answer },
        }
    }
}

impl Mirror for Move {
    fn mirrored(&self, partners: &Partners) -> Self {
        let place = |own| match own {
            Place::Compartment(number) => Place::Compartment(partners.number(number)),
            Place::Spare => Place::Spare,
        };
        Self { from: place(self.from), to: place(self.to), cells: self.cells }
    }
}

impl Mirror for RecordedPlan {
    fn mirrored(&self, partners: &Partners) -> Self {
        // The compartment stays where it is in the list, with the cells of its image.
        let count = |own: &RecordedCount| {
            let image = partners.id(&own.id);
            let image = self.counts.iter().find(|other| other.id == image).unwrap_or(own);
            RecordedCount { stock: image.stock, planned: image.planned, ..own.clone() }
        };
        let expected = self.expected.as_ref().map(|own| Expected {
            under: own.under.mirrored(partners),
            lower: own.lower.map(|(side, by)| (side.other(), by)),
            ..own.clone()
        });
        Self { counts: self.counts.iter().map(count).collect(), expected, ..self.clone() }
    }
}

/// Cells by number, each with the number of its image.
fn numbered(counts: &[(u8, u32)], partners: &Partners) -> Vec<(u8, u32)> {
    let mut counts: Vec<(u8, u32)> =
        counts.iter().map(|(number, cells)| (partners.number(*number), *cells)).collect();
    counts.sort_unstable();
    counts
}

impl Mirror for Filled {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self { counts: numbered(&self.counts, partners), ..self.clone() }
    }
}

impl Mirror for Entry {
    fn mirrored(&self, partners: &Partners) -> Self {
        match self {
            Self::Plan(own) => Self::Plan(own.mirrored(partners)),
            Self::Adjustment(own) => Self::Adjustment(Adjustment {
                checks: own.checks.mirrored(partners),
                moves: own.moves.mirrored(partners),
                ..own.clone()
            }),
            Self::Recount(own) => {
                let counts = own.counts.iter();
                let counts = counts.map(|(number, cells)| (partners.number(*number), *cells));
                Self::Recount(Recount { counts: counts.collect(), ..own.clone() })
            }
            Self::Filled(own) => Self::Filled(own.mirrored(partners)),
            Self::Incoming(own) => Self::Incoming(own.mirrored(partners)),
            Self::Checked(own) => {
                Self::Checked(PartsChecked { found: own.found.mirrored(partners), ..own.clone() })
            }
            Self::Moved(own) => {
                Self::Moved(Moved { moves: own.moves.mirrored(partners), ..own.clone() })
            }
            Self::Returned(own) => {
                Self::Returned(Returned { counts: numbered(&own.counts, partners), ..own.clone() })
            }
            Self::Skin(own) => {
                Self::Skin(SkinSeen { site: own.site.mirrored(partners), ..own.clone() })
            }
            Self::FittingCheck(_) | Self::Weighed(_) | Self::Cleaned(_) | Self::Withdrawn(_) => {
                self.clone()
            }
        }
    }
}

impl Mirror for Client {
    fn mirrored(&self, partners: &Partners) -> Self {
        let mut client = self.clone();
        client.measures = self.measures.mirrored(partners);
        client.posture = self.posture.mirrored(partners);
        client.skin = self.skin.mirrored(partners);
        client.function = self.function.mirrored(partners);
        for goal in &mut client.goals {
            goal.want = goal.want.mirrored(partners);
        }
        let change =
            |own: &Change| Change { compartment: partners.id(&own.compartment), ..own.clone() };
        client.changes = self.changes.iter().map(change).collect();
        client.record = self.record.mirrored(partners);
        client.taught = self.taught.mirrored(partners);
        client
    }
}

impl Mirror for Alarm {
    fn mirrored(&self, partners: &Partners) -> Self {
        match *self {
            Self::BoneFelt { side, expected } => Self::BoneFelt { side: side.other(), expected },
            Self::Mark { site, answer } => Self::Mark { site: site.mirrored(partners), answer },
        }
    }
}

impl Mirror for BrokenLimit {
    fn mirrored(&self, partners: &Partners) -> Self {
        match self {
            Self::Clearance { side, left, needed } => {
                Self::Clearance { side: side.other(), left: *left, needed: *needed }
            }
            Self::LowClearance { side, left, needed } => {
                Self::LowClearance { side: side.other(), left: *left, needed: *needed }
            }
            Self::BottomsOut(numbers) => {
                let mut numbers: Vec<u8> =
                    numbers.iter().map(|number| partners.number(*number)).collect();
                numbers.sort_unstable();
                Self::BottomsOut(numbers)
            }
            Self::InjuredSite { site, healed, rise, from } => Self::InjuredSite {
                site: site.mirrored(partners),
                healed: *healed,
                rise: *rise,
                from: *from,
            },
            Self::Tips
            | Self::LeansAway
            | Self::NoRest
            | Self::NoRestOnStock
            | Self::TooHeavy { .. } => self.clone(),
        }
    }
}

impl Mirror for GoalNumber {
    fn mirrored(&self, _: &Partners) -> Self {
        match *self {
            Self::Lower { side, by } => Self::Lower { side: side.map(Side::other), by },
            Self::Relief(_)
            | Self::Higher(_)
            | Self::FrontLower(_)
            | Self::Apart(_)
            | Self::Changed(_) => *self,
        }
    }
}

impl Mirror for Shortfall {
    fn mirrored(&self, partners: &Partners) -> Self {
        match *self {
            Self::Clearance(side) => Self::Clearance(side.other()),
            Self::InjuredLowSide(side) => Self::InjuredLowSide(side.other()),
            Self::Full(number) => Self::Full(partners.number(number)),
            Self::NothingToTake(site) => Self::NothingToTake(site.mirrored(partners)),
            Self::Rank
            | Self::OtherGoals
            | Self::OutOfReach
            | Self::TheseCounts
            | Self::SeatWouldFall
            | Self::FixedObliquity
            | Self::FixedPosteriorTilt
            | Self::StiffHip
            | Self::NoObliquity
            | Self::NoSeamForShelf
            | Self::NoFront
            | Self::NoCompartments
            | Self::NothingBeside
            | Self::NoRestOnStock
            | Self::NoRest => *self,
        }
    }
}

impl Mirror for GoalOutcome {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self {
            want: self.want.mirrored(partners),
            wanted: self.wanted.mirrored(partners),
            reached: self.reached.mirrored(partners),
            met: self.met,
            why: self.why.mirrored(partners),
        }
    }
}

impl Mirror for Doubt {
    fn mirrored(&self, partners: &Partners) -> Self {
        match self {
            Self::Contradiction(one, other) => {
                Self::Contradiction(one.mirrored(partners), other.mirrored(partners))
            }
            Self::Misfit(check) => Self::Misfit(check.mirrored(partners)),
        }
    }
}

impl Mirror for NextStep {
    fn mirrored(&self, _: &Partners) -> Self {
        match *self {
            Self::CheckUnder(side) => Self::CheckUnder(side.other()),
            Self::CheckOnTop(side) => Self::CheckOnTop(side.other()),
            Self::FeelBeforeMoving(side) => Self::FeelBeforeMoving(side.other()),
            Self::FeelBeforeTaking(side) => Self::FeelBeforeTaking(side.other()),
            Self::FeelAgain(side) => Self::FeelAgain(side.other()),
            Self::SetUpBeforeMoving(side) => Self::SetUpBeforeMoving(side.other()),
            Self::TellsMost(telling) => Self::TellsMost(match telling {
                Telling::Under(side) => Telling::Under(side.other()),
                Telling::OnTop(side) => Telling::OnTop(side.other()),
                Telling::Lower => Telling::Lower,
            }),
            Self::CheckAgain
            | Self::FeelSmallMoves
            | Self::PatFirst
            | Self::TakeOutIfStillHeld
            | Self::CauseFirst
            | Self::NoCellsForAMark
            | Self::CountBeforeMoving
            | Self::MoveWhileOff
            | Self::AnotherCushion
            | Self::Call => *self,
        }
    }
}

impl Mirror for CardFinding {
    fn mirrored(&self, _: &Partners) -> Self {
        match *self {
            Self::BoneFelt | Self::Mark => *self,
            Self::TooLow { side, limit } => Self::TooLow { side: side.other(), limit },
            Self::Pinched { side, felt } => Self::Pinched { side: side.other(), felt },
            Self::Lower { side, by } => Self::Lower { side: side.other(), by },
        }
    }
}

impl Mirror for Remedy {
    fn mirrored(&self, partners: &Partners) -> Self {
        match *self {
            Self::PutIn { cells, into } => Self::PutIn { cells, into: partners.number(into) },
            Self::TakeOut { cells, out_of } => {
                Self::TakeOut { cells, out_of: partners.number(out_of) }
            }
            Self::MoveOver { cells, from, to } => {
                Self::MoveOver { cells, from: partners.number(from), to: partners.number(to) }
            }
            Self::ClientOffLookAtSetUp
            | Self::ClientOff
            | Self::MoreThanAHandful
            | Self::NoCells => *self,
        }
    }
}

impl Mirror for IfThen {
    fn mirrored(&self, partners: &Partners) -> Self {
        let cost = |own: RemedyCost| RemedyCost { side: own.side.other(), ..own };
        Self {
            found: self.found.mirrored(partners),
            then: self.then.mirrored(partners),
            cost: self.cost.map(cost),
        }
    }
}

impl Mirror for Prediction {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self { seated: self.seated.mirrored(partners), ..self.clone() }
    }
}

/// What goes one way goes the other; nothing is never negative.
fn turned_over(Spread { central, low, high }: Spread<f64>) -> Spread<f64> {
    Spread { central: 0.0 - central, low: 0.0 - high, high: 0.0 - low }
}

impl Mirror for PredictedSeat {
    fn mirrored(&self, partners: &Partners) -> Self {
        let image = partners.swapped(&self.compartments);
        let compartments = self.compartments.iter().zip(image);
        let compartments = compartments.map(|(own, image)| PredictedCompartment {
            id: own.id.clone(),
            number: own.number,
            ..image
        });
        let site =
            |own: &PredictedSite| PredictedSite { site: own.site.mirrored(partners), ..*own };
        let mut sites: Vec<PredictedSite> = self.sites.iter().map(site).collect();
        let order = |site: &SiteName| SiteName::ALL.iter().position(|own| own == site);
        sites.sort_by_key(|own| order(&own.site));
        Self {
            roll_deg: turned_over(self.roll_deg),
            lower_side: self.lower_side.map(Side::other),
            clearance: self.clearance.mirrored(partners),
            immersion: self.immersion.mirrored(partners),
            compartments: compartments.collect(),
            sites,
            pelvis_load: self.pelvis_load.mirrored(partners),
            thigh_load: self.thigh_load.mirrored(partners),
            ..self.clone()
        }
    }
}
