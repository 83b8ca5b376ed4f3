//! A blank of a client's file: where one answer goes.

use case::question::{Form, Group, Question};
use cushion::Side;

/// Where one answer goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Blank {
    /// The question.
    pub question: Question,
    /// The client's side, where each has an answer.
    pub side: Option<Side>,
    /// Which entry of its list, from 1, where its group is one.
    pub entry: Option<usize>,
}

impl Blank {
    /// The blank of a question that is answered once.
    #[must_use]
    pub fn of(question: Question) -> Self {
        Self { question, side: None, entry: None }
    }

    /// The blank of an entry of a list, from 1.
    #[must_use]
    pub fn in_entry(question: Question, entry: usize) -> Self {
        Self { question, side: None, entry: Some(entry) }
    }

    /// The blanks of a question: one, or one for each side.
    #[must_use]
    pub fn all(question: Question, entry: Option<usize>) -> Vec<Self> {
        let sides = [Some(Side::Left), Some(Side::Right)];
        let sides = if question.row().each_side { &sides[..] } else { &[None] };
        sides.iter().map(|side| Self { question, side: *side, entry }).collect()
    }

    /// The key by which it is known, such as `measures.thigh_depth.left` or `goal.2.percent`.
    #[must_use]
    pub fn key(&self) -> String {
        let row = self.question.row();
        let group = group_key(row.group, self.entry);
        let key =
            if group.is_empty() { row.key.to_owned() } else { format!("{group}.{}", row.key) };
        match self.side {
            Some(side) => format!("{key}.{}", side.words()),
            None => key,
        }
    }

    /// The blank of a key; none where nothing that is asked of a person has it.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        let entry = key.split('.').find_map(|step| step.parse::<usize>().ok());
        let plain: Vec<&str> =
            key.split('.').filter(|step| step.parse::<usize>().is_err()).collect();
        let (path, side) = match plain.split_last() {
            Some((&"left", rest)) => (rest.join("."), Some(Side::Left)),
            Some((&"right", rest)) => (rest.join("."), Some(Side::Right)),
            _ => (plain.join("."), None),
        };
        let question = Question::from_path(Group::Client, &path)?;
        let row = question.row();
        let own = Self { question, side, entry };
        let is_list = row.group.form() == Form::List;
        let fits = !row.group.is_of_work()
            && row.each_side == side.is_some()
            && is_list == entry.is_some();
        (fits && own.key() == key).then_some(own)
    }

    /// The blank of another question beside it.
    #[must_use]
    pub fn beside(&self, question: Question) -> Self {
        Self { question, side: None, entry: self.entry }
    }
}

/// The key of a group, with the place of an entry where it is a list.
pub(super) fn group_key(group: Group, entry: Option<usize>) -> String {
    match entry {
        Some(at) if group.form() == Form::List => format!("{}.{at}", group.path()),
        _ => group.path().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_blank_is_known_by_its_key() {
        for question in Question::ALL.iter().copied().filter(|own| own.is_on_form()) {
            let entry = (question.row().group.form() == Form::List).then_some(2);
            for blank in Blank::all(question, entry) {
                assert_eq!(Blank::from_key(&blank.key()), Some(blank), "{}", blank.key());
            }
        }
    }

    #[test]
    fn what_is_not_asked_of_a_person_has_no_blank() {
        for key in ["record.1.on", "goal.want", "goal.0.1.want", "measures.thigh_depth", "", ".."] {
            assert_eq!(Blank::from_key(key), None, "{key}");
        }
    }
}
