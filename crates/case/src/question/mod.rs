//! One table of questions: every key of our files, with what an answer is and what it is for.
//!
//! From it are made the starter of a client's file, the ranges and the known keys of remarks, the
//! forms, and the schema by which an editor completes a file. It has no prose: how a question is
//! asked in a language is what [`QuestionWords`] says.

mod answer;
mod group;
mod kind;
mod list;
mod words;

pub use self::answer::{Answer, Unused, Use};
pub use self::group::{Form, Group};
pub use self::kind::{Drawing, Kind, Need, Range, Unit};
pub use self::list::{LANGUAGE_TAGS, Question};
pub use self::words::QuestionWords;

/// What the table says of one question.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// Where the key is written.
    pub group: Group,
    /// The key, as a file has it.
    pub key: &'static str,
    /// What an answer is.
    pub kind: Kind,
    /// When there must be one.
    pub need: Need,
    /// Whether the client's left and right have an answer each: `{ left = ..., right = ... }`.
    pub each_side: bool,
    /// An answer, as a file has it; of each side where there are two.
    pub example: &'static str,
    /// What is usual, within what is possible at all; outside it the file is asked whether that is
    /// meant. In the units of [`Kind`]; of adults only, where [`Row::adults`] is set.
    pub usual: Option<Range>,
    /// Whether `usual` is known of adults only.
    pub adults: bool,
    /// What an answer changes.
    pub changes: Use,
    /// Answers of the program that need this one.
    pub needed_for: &'static [Answer],
    /// Which drawing shows how it is measured.
    pub drawing: Option<Drawing>,
}

impl Question {
    /// Its path in the file, such as `measures.hip_width`; lists of tables have no place in it.
    #[must_use]
    pub fn path(self) -> String {
        let row = self.row();
        match row.group.path() {
            "" => row.key.to_owned(),
            path => format!("{path}.{}", row.key),
        }
    }

    /// Whether it is asked on the measuring form: of a client's file, but for the record and the fill
    /// that goes on, and for what is only known or decided with the filled cushion.
    #[must_use]
    pub fn is_on_form(self) -> bool {
        let group = self.row().group;
        let later = group == Group::SitAtMost
            || matches!(self, Self::PressureRelief | Self::SerialOfCushion | Self::FirstFile);
        group.root() == Group::Client && !group.is_of_work() && !later
    }

    /// Finds a question by its path.
    ///
    /// Of the entries of a record, which have keys in common, the first is found.
    #[must_use]
    pub fn from_path(root: Group, path: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|own| own.row().group.root() == root && own.path() == path)
    }

    /// The questions of a group, in the order of the form.
    pub fn of(group: Group) -> impl Iterator<Item = Self> {
        Self::ALL.iter().copied().filter(move |own| own.row().group == group)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_asked_once_in_its_group() {
        for (at, question) in Question::ALL.iter().enumerate() {
            let (group, key) = (question.row().group, question.row().key);
            let earlier = &Question::ALL[..at];
            assert!(
                !earlier.iter().any(|own| own.row().group == group && own.row().key == key),
                "{question:?}"
            );
            assert!(!group.children().any(|child| child.key() == key), "{question:?}");
        }
    }

    #[test]
    fn what_is_usual_is_possible_and_examples_are_not_empty() {
        for question in Question::ALL {
            let row = question.row();
            assert!(!row.example.is_empty(), "{question:?}");
            let Some(usual) = row.usual else { continue };
            let (Kind::Length(hard) | Kind::Number(_, hard)) = row.kind else {
                panic!("{question:?} has no range")
            };
            assert!(hard.least <= usual.least && usual.most <= hard.most, "{question:?}");
            assert!(usual != hard, "{question:?} asks nothing");
        }
    }

    #[test]
    fn words_that_a_key_goes_with_are_words_of_a_choice() {
        for question in Question::ALL {
            let row = question.row();
            match row.need {
                Need::With(key, words) | Need::May(key, words) => {
                    let other = Question::of(row.group).find(|own| own.row().key == key);
                    let Some(Kind::Choice(all)) = other.map(|own| own.row().kind) else {
                        panic!("{question:?} goes with no choice")
                    };
                    assert!(words.iter().all(|word| all.contains(word)), "{question:?}");
                    assert!(words.len() < all.len(), "{question:?}");
                }
                Need::OneOf(key) | Need::Both(key) => {
                    assert!(
                        Question::of(row.group).any(|own| own.row().key == key && own != *question),
                        "{question:?}"
                    );
                }
                Need::Always | Need::Never => {}
            }
        }
    }

    #[test]
    fn questions_are_found_by_their_paths() {
        let found = |path| Question::from_path(Group::Client, path);
        assert_eq!(found("measures.hip_width"), Some(Question::HipWidth));
        assert_eq!(found("posture.obliquity.by"), Some(Question::ObliquityBy));
        assert_eq!(found("skin.injury.site"), Some(Question::InjurySite));
        assert_eq!(found("wall_height"), None);
        assert_eq!(Question::from_path(Group::Layout, "wall_height"), Some(Question::WallHeight));
    }
}
