//! The steps of the work, in their order, and which questions are asked on which page of them.

use case::question::{Group, Question};

/// A step of the work with one client.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Step {
    /// Body measures and weight.
    Measure,
    /// Posture.
    Posture,
    /// Skin.
    Skin,
    /// How the client moves, and what lies on the cushion.
    Function,
    /// The chair.
    Chair,
    /// Goals.
    Goals,
    /// Which cushion.
    Cushion,
    /// How many cells.
    Plan,
    /// The cushion is filled.
    Fill,
    /// Hands check.
    Checks,
    /// Cells are moved.
    Moves,
    /// What the carers are told.
    Carers,
    /// Somebody signs that it is right.
    SignOff,
    /// Papers.
    Papers,
    /// What was done, and what is done at a review.
    Review,
}

impl Step {
    /// All, in the order of the work.
    pub(crate) const ALL: [Self; 15] = [
        Self::Measure,
        Self::Posture,
        Self::Skin,
        Self::Function,
        Self::Chair,
        Self::Goals,
        Self::Cushion,
        Self::Plan,
        Self::Fill,
        Self::Checks,
        Self::Moves,
        Self::Carers,
        Self::SignOff,
        Self::Papers,
        Self::Review,
    ];

    /// Its word in addresses.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Measure => "measure",
            Self::Posture => "posture",
            Self::Skin => "skin",
            Self::Function => "function",
            Self::Chair => "chair",
            Self::Goals => "goals",
            Self::Cushion => "cushion",
            Self::Plan => "plan",
            Self::Fill => "fill",
            Self::Checks => "checks",
            Self::Moves => "moves",
            Self::Carers => "carers",
            Self::SignOff => "sign-off",
            Self::Papers => "papers",
            Self::Review => "review",
        }
    }

    /// The step of a word.
    pub(crate) fn of(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|own| own.word() == word)
    }

    /// The step after it.
    pub(crate) fn next(self) -> Option<Self> {
        let at = Self::ALL.iter().position(|own| *own == self)?;
        Self::ALL.get(at + 1).copied()
    }

    /// The step that asks a question, with its page where it has pages; none of what no step asks.
    pub(crate) fn asking(question: Question) -> Option<(Self, Option<&'static Page>)> {
        match question.row().group {
            Group::Cushion => return Some((Self::Cushion, None)),
            Group::Goal => return Some((Self::Goals, None)),
            _ => {}
        }
        // Pounds are typed into the box of the weight.
        let question = if question == Question::WeightLb { Question::WeightKg } else { question };
        let asks = |page: &&Page| page.parts.iter().any(|own| own.questions().contains(&question));
        let each = Self::ALL.into_iter().map(|step| (step, step.pages().iter().find(asks)));
        each.into_iter().find(|own| own.1.is_some())
    }

    /// The pages of questions that it has; none where it is no step of questions.
    pub(crate) fn pages(self) -> &'static [Page] {
        match self {
            Self::Measure => MEASURE,
            Self::Posture => POSTURE,
            Self::Skin => SKIN,
            Self::Function => FUNCTION,
            Self::Chair => CHAIR,
            Self::Carers => CARERS,
            _ => &[],
        }
    }
}

/// A page of questions: a few groups that are answered together.
#[derive(Debug)]
pub(crate) struct Page {
    /// Its word in addresses; the page of `words` has its title under the same.
    pub(crate) word: &'static str,
    /// What is asked, in order.
    pub(crate) parts: &'static [Part],
}

/// What is asked together.
#[derive(Debug)]
pub(crate) enum Part {
    /// Some questions of a group.
    Some(Group, &'static [Question]),
    /// All questions of a group.
    All(Group),
    /// All questions of each entry of a list.
    List(Group),
}

use Question as Q;

const MEASURE: &[Page] = &[
    Page {
        word: "hips",
        parts: &[Part::Some(
            Group::Measures,
            &[Q::TakenOn, Q::TakenBy, Q::HipWidth, Q::TrochanterWidth, Q::SeatBoneSpacing],
        )],
    },
    Page {
        word: "legs",
        parts: &[Part::Some(
            Group::Measures,
            &[Q::ThighDepth, Q::LowerLegLength, Q::ExternalKneeWidth],
        )],
    },
    Page {
        word: "weight",
        parts: &[
            Part::Some(Group::Weight, &[Q::WeightKg, Q::WeighedOn]),
            Part::Some(Group::Client, &[Q::Child]),
        ],
    },
];

const POSTURE: &[Page] = &[
    Page { word: "level", parts: &[Part::All(Group::Obliquity)] },
    Page { word: "tilt", parts: &[Part::All(Group::Tilt), Part::All(Group::Rotation)] },
    Page {
        word: "hips-and-knees",
        parts: &[
            Part::Some(Group::Posture, &[Q::HipFlexion, Q::PoplitealAngle]),
            Part::All(Group::Windswept),
            Part::All(Group::TrulyShorter),
            Part::All(Group::ApparentlyShorter),
        ],
    },
    Page {
        word: "balance",
        parts: &[Part::Some(Group::Posture, &[Q::Balance, Q::Tone]), Part::List(Group::LimbLoss)],
    },
];

const SKIN: &[Page] =
    &[Page { word: "skin", parts: &[Part::All(Group::Skin), Part::List(Group::Injury)] }];

const FUNCTION: &[Page] = &[Page {
    word: "moving",
    parts: &[Part::All(Group::Function), Part::All(Group::Layers), Part::All(Group::Altitude)],
}];

const CHAIR: &[Page] =
    &[Page { word: "chair", parts: &[Part::All(Group::Chair), Part::All(Group::Seat)] }];

const CARERS: &[Page] = &[Page {
    word: "carers",
    parts: &[
        Part::All(Group::Carer),
        Part::All(Group::SitAtMost),
        Part::List(Group::Call),
        Part::Some(Group::Client, &[Q::NextReview, Q::Language]),
    ],
}];

impl Part {
    /// The group that it is of.
    pub(crate) fn group(&self) -> Group {
        match self {
            Self::Some(group, _) | Self::All(group) | Self::List(group) => *group,
        }
    }

    /// Its questions, in order.
    pub(crate) fn questions(&self) -> Vec<Question> {
        match self {
            Self::Some(_, questions) => questions.to_vec(),
            Self::All(group) | Self::List(group) => Question::of(*group).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_of_the_form_is_asked_once() {
        let pages = Step::ALL.iter().flat_map(|step| step.pages());
        let asked: Vec<Question> =
            pages.flat_map(|page| page.parts).flat_map(Part::questions).collect();
        for question in Question::ALL.iter().copied().filter(|own| own.is_on_form()) {
            let group = question.row().group;
            // Asked by screens of their own, or read off the file itself.
            let elsewhere = matches!(group, Group::Cushion | Group::Goal | Group::Change)
                || matches!(question, Q::Format | Q::FileKind | Q::Code | Q::Units)
                // Pounds are typed into the box of the weight.
                || question == Q::WeightLb;
            let times = asked.iter().filter(|own| **own == question).count();
            assert_eq!(times, usize::from(!elsewhere), "{question:?}");
        }
    }

    #[test]
    fn steps_are_known_by_their_words() {
        for step in Step::ALL {
            assert_eq!(Step::of(step.word()), Some(step));
        }
        assert_eq!(Step::Review.next(), None);
    }
}
