//! The page for the wall: when not to sit, when to get help, whom to call, what is for this client.

use super::super::look::{ACCENT, text};
use super::{GAP, Print, Sheet, boxed, filled_in, section, side_by_side, written_line};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::text::SetError;

/// Lines for whom to call that a sheet has at least, empty ones to write on.
const CALL_LINES: usize = 2;

/// The most numbers to call in one box.
const CALLS_IN_A_BOX: usize = 3;

pub(super) fn set(flow: &mut Flow<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let print = sheet.print;
    let contacts = sheet.papers.client.contacts.len();
    flow.put(|frame| boxed(frame, 1.6, |frame| stop(frame, sheet)))?;
    flow.space(GAP);
    if contacts <= CALLS_IN_A_BOX && !sheet.papers.large_print {
        flow.put(|frame| {
            side_by_side(
                frame,
                0.48,
                |frame| boxed(frame, 1.2, |frame| help(frame, sheet)),
                |frame| {
                    boxed(frame, 0.6, |frame| calls(frame, sheet, 0..contacts))?;
                    frame.space(GAP / 2.0);
                    same_day(frame, sheet)
                },
            )
        })?;
    } else {
        flow.put(|frame| boxed(frame, 1.2, |frame| help(frame, sheet)))?;
        for first in (0..contacts.max(1)).step_by(CALLS_IN_A_BOX) {
            let some = first..contacts.min(first + CALLS_IN_A_BOX);
            flow.space(GAP);
            flow.put(|frame| boxed(frame, 0.6, |frame| calls(frame, sheet, some.clone())))?;
        }
        flow.space(GAP);
        flow.put(|frame| same_day(frame, sheet))?;
    }
    flow.space(GAP);
    for_you(flow, sheet, print)
}

/// When not to sit on it; known sores have a rule of their own.
fn stop(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let (print, language) = (sheet.print, sheet.papers.language);
    let texts = language.take_home();
    let sores = sheet.papers.client.skin.unhealed();
    frame.heading(2, texts.stop, &print.head())?;
    let marks = if sores.is_empty() { texts.stop_marks } else { texts.stop_new_marks };
    let mut rules = vec![texts.stop_bone.to_owned()];
    rules.extend(sores.iter().map(|site| language.sore_is_worse(*site)));
    rules.extend(marks.iter().map(|own| (*own).to_owned()));
    rules.push(texts.stop_pockets.to_owned());
    for rule in &rules {
        frame.item("•", 6.0, rule, &print.words())?;
    }
    frame.paragraph(texts.stop_then, &print.firmly())
}

/// When not to wait, and the number for it.
fn help(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let print = sheet.print;
    let texts = sheet.papers.language.take_home();
    frame.heading(2, texts.get_help_now, &print.head())?;
    match &sheet.papers.client.emergency_phone {
        Some(number) => {
            let large = text(print.title, Weight::Bold, ACCENT).led(1.2);
            frame.paragraph(number, &large)?;
        }
        None => written_line(frame, texts.number_to_call, print)?,
    }
    for sign in texts.emergency_signs {
        frame.item("•", 5.0, sign, &print.words())?;
    }
    Ok(())
}

/// Whom to call, in their order.
fn calls(
    frame: &mut Frame<'_>,
    sheet: Sheet<'_>,
    which: std::ops::Range<usize>,
) -> Result<(), SetError> {
    let (print, language) = (sheet.print, sheet.papers.language);
    let texts = language.take_home();
    let contacts = &sheet.papers.client.contacts;
    frame.heading(2, texts.call, &print.head())?;
    for contact in &contacts[which] {
        frame.paragraph(&language.call(contact), &print.firmly())?;
    }
    for _ in contacts.len()..CALL_LINES {
        written_line(frame, texts.who_and_phone, print)?;
    }
    Ok(())
}

fn same_day(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    section(frame, sheet.papers.language.take_home().call_the_same_day, sheet.print)
}

/// What the therapist wrote for this carer, what is to be filled in, what to sit on meanwhile.
fn for_you(flow: &mut Flow<'_>, sheet: Sheet<'_>, print: Print) -> Result<(), SetError> {
    let (papers, language) = (sheet.papers, sheet.papers.language);
    let texts = language.take_home();
    flow.need(print.head().line_height() + 4.0 * print.firmly().line_height())?;
    flow.put(|frame| frame.heading(2, texts.notes_for_you, &print.head()))?;
    for note in &papers.client.carer_notes {
        flow.item("•", 5.0, note, &print.firmly())?;
    }
    how_long(flow, sheet)?;
    match &papers.client.pressure_relief {
        Some(own) => flow.paragraph(own, &print.firmly())?,
        None => {
            let [every, lasting] = texts.relief_every;
            flow.put(|frame| filled_in(frame, &[every, lasting, ""], print))?;
        }
    }
    flow.put(|frame| frame.paragraph(texts.blank_lines, &print.firmly()))?;
    match &papers.client.meanwhile {
        Some(own) => flow.paragraph(&language.sit_meanwhile(own), &print.words())?,
        None => flow.put(|frame| written_line(frame, texts.meanwhile, print))?,
    }
    if let Some(day) = papers.standing().review.by() {
        flow.put(|frame| frame.paragraph(&language.next_look(day), &print.firmly()))?;
    }
    flow.put(|frame| frame.paragraph(texts.care_team, &print.words()))
}

/// How long the client may sit: only what a clinician said or writes here; where a sore is not
/// healed and nothing was said, that it is to be asked before anybody sits.
fn how_long(flow: &mut Flow<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let (client, language) = (sheet.papers.client, sheet.papers.language);
    let (print, texts) = (sheet.print, language.take_home());
    match client.sit_at_most {
        Some(own) => flow.paragraph(&language.sit_at_most(own.minutes, own.times), &print.firmly()),
        None if !client.skin.unhealed().is_empty() => {
            flow.paragraph(texts.ask_how_long, &print.firmly())
        }
        None => flow.put(|frame| filled_in(frame, &texts.sit_for, print)),
    }
}
