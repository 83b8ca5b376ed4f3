//! How a question is answered by hand.

use case::question::{Kind, Need, Question};

use super::{BlankForm, symbol};

/// A line to write on, with what stands before and after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Line {
    /// Before it: a side, or that it is another way to answer.
    pub(super) before: &'static str,
    /// The unit at its end.
    pub(super) unit: &'static str,
}

/// How a question is answered by hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Answer {
    /// With a number or a day, on a line or two side by side.
    Lines(Vec<Line>),
    /// In words, on so many lines one below the other.
    Words(usize),
    /// By a ring around one of these.
    Ring(Vec<String>),
    /// It is answered already.
    Known(&'static str),
}

/// A question with the room for its answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Field {
    pub(super) question: Question,
    pub(super) label: String,
    /// What to write; may be empty.
    pub(super) comment: &'static str,
    pub(super) answer: Answer,
}

impl Field {
    /// The field of a question; none where nobody answers it by hand, or where another question
    /// asks the same in another unit.
    pub(super) fn of(form: &BlankForm<'_>, question: Question) -> Option<Self> {
        let row = question.row();
        let texts = form.language.measuring_form();
        let line = |question| Line { before: "", unit: unit(form, question) };
        let answer = match row.kind {
            _ if question == Question::Units => Answer::Known(symbol(form.unit)),
            Kind::Length(_) | Kind::Number(..) | Kind::Whole { .. } if row.each_side => {
                let of = |side| Line { before: form.language.side(side), ..line(question) };
                Answer::Lines(vec![of(cushion::Side::Left), of(cushion::Side::Right)])
            }
            Kind::Length(_) | Kind::Number(..) | Kind::Whole { .. } | Kind::Date => {
                match in_another_unit(question) {
                    Some(other) if other < question => return None,
                    Some(other) => {
                        let or = Line { before: form.language.or(), ..line(other) };
                        Answer::Lines(vec![line(question), or])
                    }
                    None => Answer::Lines(vec![line(question)]),
                }
            }
            Kind::Choice(words) => {
                let said = words.iter().map(|word| form.language.word_on_form(question, word));
                Answer::Ring(said.collect())
            }
            Kind::YesNo => Answer::Ring([texts.yes, texts.no].map(str::to_owned).to_vec()),
            Kind::Size | Kind::Name | Kind::Layout => Answer::Lines(vec![line(question)]),
            Kind::Text | Kind::Code | Kind::Phone => Answer::Words(1),
            Kind::Texts | Kind::Words => Answer::Words(3),
            // Of files, not of clients.
            Kind::Just(_)
            | Kind::Word(_)
            | Kind::Names
            | Kind::Parameters
            | Kind::Measure
            | Kind::Spot
            | Kind::Pair
            | Kind::Place
            | Kind::Checks
            | Kind::Digest => return None,
        };
        let label = form.language.label_on_form(question);
        Some(Self { question, label, comment: form.language.comment_on_form(question), answer })
    }
}

/// The unit in which a form asks a number; empty for what has none.
pub(super) fn unit(form: &BlankForm<'_>, question: Question) -> &'static str {
    match question.row().kind {
        Kind::Length(_) => symbol(form.unit),
        Kind::Number(unit, _) => unit.symbol(),
        _ => "",
    }
}

/// The question that asks the same in another unit.
fn in_another_unit(question: Question) -> Option<Question> {
    let Need::OneOf(key) = question.row().need else { return None };
    let other = Question::of(question.row().group).find(|own| own.row().key == key)?;
    let weights = [question, other].map(|own| matches!(own.row().kind, Kind::Number(..)));
    // Of one group, numbers of which one is enough and that have the same range say the same.
    (weights == [true, true]).then_some(other)
}
