//! What is said in one line, in whatever language.

use case::Said;

/// A message, and what to do where there is something to be done.
pub(crate) fn said(message: impl Into<String>, hint: impl Into<String>) -> Said {
    let hint = in_one_line(hint.into());
    Said { message: in_one_line(message.into()), hint: (!hint.is_empty()).then_some(hint) }
}

/// The longest message, in characters: what somebody wrote may be a page.
const LONGEST: usize = 600;
/// What is left of its two ends where it is longer.
const ENDS: [usize; 2] = [200, 200];

/// A message in one line, without control characters; of a very long one the two ends.
fn in_one_line(text: String) -> String {
    let tidy = !text.contains(char::is_control);
    let plain = |c: char| if c.is_control() { ' ' } else { c };
    let text = if tidy { text } else { text.chars().map(plain).collect() };
    let count = text.chars().count();
    if count <= LONGEST {
        return text;
    }
    let [first, last] = ENDS;
    let head: String = text.chars().take(first).collect();
    let tail: String = text.chars().skip(count - last).collect();
    format!("{head} ... {tail}")
}
