//! The letter with the reasons, for whoever pays: what the client's file says and what is expected of
//! the counts, and nothing else.

use case::{Entry, Goal, SizeMargin, SizeMisfit};
use cushion::Size;

use super::look::{ACCENT, INK, PALE, field_rows, text};
use super::{ClientPapers, DocumentError};
use crate::flow::Flow;
use crate::font::Weight;
use crate::page::{Align, Document};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style};

const WORDS: Style = text(9.5, Weight::Regular, INK);
const FIRMLY: Style = text(9.5, Weight::Bold, INK);
const HEAD: Style = text(11.5, Weight::Bold, ACCENT);

/// Why a made size was chosen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizeReasons {
    /// The made size that suits best; none where none does.
    pub best: Option<Size>,
    /// What it leaves free around the client.
    pub margins: Vec<SizeMargin>,
    /// Other sizes that suit, further from what is wanted.
    pub suit_too: Vec<Size>,
    /// Sizes that do not suit, and why.
    pub left: Vec<(Size, Vec<SizeMisfit>)>,
}

/// Composes the letter. It says what is written down and what follows from it; what is not known is
/// left out or said not to be.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn letter(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.letter();
    let origin = papers.language.setup_card_origin(papers.plan, papers.date);
    papers.flowing(
        paper,
        [texts.title, texts.subject],
        &[&origin, texts.clinician_decides],
        |flow| set(flow, papers),
    )
}

fn set(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.letter());
    flow.put(|frame| field_rows(frame, texts.to, 9.0))?;
    flow.space(2.5);
    flow.paragraph(texts.what_it_is, &WORDS)?;
    let pattern = papers.pattern;
    let asked = language.asked_for(pattern, papers.plan.total(), papers.spares());
    section(flow, texts.asked_for, &[asked])?;
    measured(flow, papers)?;
    section(flow, texts.findings, &findings(papers))?;
    section(flow, texts.size, &sizes(papers))?;
    goals(flow, papers)?;
    section(flow, texts.tried, &tried(papers))?;
    section(flow, texts.stands, &[language.standing(papers.standing())])?;
    flow.space(5.0);
    flow.put(|frame| field_rows(frame, texts.fields, 12.0))
}

/// A heading and what stands under it, an entry each; one alone is a paragraph.
fn section(flow: &mut Flow<'_>, heading: &str, entries: &[String]) -> Result<(), SetError> {
    if entries.is_empty() {
        return Ok(());
    }
    flow.space(3.0);
    flow.need(HEAD.line_height() + 2.0 * WORDS.line_height())?;
    flow.put(|frame| frame.heading(2, heading, &HEAD))?;
    if let [only] = entries {
        return flow.paragraph(only, &WORDS);
    }
    entries.iter().try_for_each(|own| flow.item("–", 4.0, own, &WORDS))
}

fn measured(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let (language, client) = (papers.language, papers.client);
    let texts = language.letter();
    let weighing = client.latest_weighing();
    let rows = language.measured(&client.measures, weighing.as_ref(), &client.chair);
    if rows.is_empty() {
        return section(flow, texts.measured, &[texts.nothing_measured.to_owned()]);
    }
    let widths = [62.0, 100.0];
    let columns = texts.measured_columns.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left));
    let mut table = Table::new(columns.collect(), FIRMLY, WORDS);
    table.head_ground = Some(PALE);
    table.margin = 0.9;
    table.rows = rows.into_iter().map(Vec::from).collect();
    flow.space(3.0);
    flow.headed_table(texts.measured, &HEAD, &table, |_, _, _| {})
}

/// Posture, skin and function as they are written down.
fn findings(papers: &ClientPapers<'_>) -> Vec<String> {
    let (language, client) = (papers.language, papers.client);
    let mut known = language.posture(&client.posture);
    known.extend(language.skin(&client.skin));
    known.extend(language.function(&client.function));
    if known.is_empty() {
        known.push(language.setup_card().nothing_known.to_owned());
    }
    known
}

/// Which size suits best and what it leaves free, and why the others do not.
fn sizes(papers: &ClientPapers<'_>) -> Vec<String> {
    let Some(own) = &papers.extras.size else { return Vec::new() };
    let (language, named) = (papers.language, papers.plan.size);
    let mut said = vec![language.best_size(own.best)];
    said.extend(own.best.map(|_| language.size_leaves(&own.margins)));
    let other = own.best.filter(|best| *best != named);
    said.extend(other.map(|best| language.other_size_named(named, best)));
    said.extend((!own.suit_too.is_empty()).then(|| language.sizes_suit_too(&own.suit_too)));
    said.extend(own.left.iter().map(|(size, why)| language.size_left(*size, why)));
    said
}

/// The goals with what is expected of each, and what is expected under the seat bones.
fn goals(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let (language, extras) = (papers.language, papers.extras);
    let texts = language.letter();
    let outcome = |goal: &Goal| extras.goals.iter().find(|own| own.want == goal.want);
    let goals = papers.client.goals.iter();
    let mut said: Vec<String> =
        goals.map(|own| language.goal_in_letter(own, outcome(own))).collect();
    if said.is_empty() {
        said.push(texts.no_goals.to_owned());
    }
    section(flow, texts.goals, &said)?;
    let Some(expected) = &extras.expected else { return Ok(()) };
    let card = language.setup_card();
    let third = flow.width() / 3.0;
    let columns = card.bone_columns.iter().map(|head| Column::new(*head, third, Align::Left));
    let mut table = Table::new(columns.collect(), FIRMLY, WORDS);
    table.head_ground = Some(PALE);
    table.margin = 0.9;
    let [left, right] = [expected.left_under.left, expected.left_under.right]
        .map(|own| language.left_under_bone(&own));
    table.row([card.expected_under_bones.to_owned(), left, right]);
    flow.space(1.5);
    flow.put(|frame| frame.table(&table).map(drop))
}

/// What the record holds, but for what was withdrawn.
fn tried(papers: &ClientPapers<'_>) -> Vec<String> {
    let entries: Vec<&Entry> = papers.client.in_force();
    entries.into_iter().map(|entry| papers.language.entry_found(entry)).collect()
}
