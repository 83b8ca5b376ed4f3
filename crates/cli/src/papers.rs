//! Papers: which documents are printed for a client, for a stock fill, for anybody.

use case::{Date, PlannedCount, RecordedPlan};
use cushion::{Cell, Layout, Pattern};
use sheets::{ClientPapers, Document, DocumentError, Paper, StockPapers};

use crate::case_file::CaseFile;
use crate::failure::Failure;
use crate::resolve::Sourced;
use crate::run::PROGRAM;
use crate::stock::Stock;

/// A document and the name of its files, without their ending.
pub(crate) struct Named {
    pub(crate) name: String,
    pub(crate) document: Document,
}

/// A client's papers, and what is to be said about their counts.
pub(crate) struct OfClient {
    pub(crate) papers: Vec<Named>,
    /// Where a fresh plan, or the layout, differs from what was recorded.
    pub(crate) warnings: Vec<String>,
}

/// Composes all papers of a client from the plan that was recorded last.
///
/// # Errors
///
/// Fails where no plan was recorded, where it is for another cushion than the file now names,
/// where nothing is safe, or where something finds no room on the paper.
pub(crate) fn of_client(case: &CaseFile, on: Date, paper: Paper) -> Result<OfClient, Failure> {
    let shown = case.client.file.shown();
    let Some(plan) = case.client.value.latest_plan() else {
        return Err(Failure::file(format!(
            "{shown} has no recorded plan, and only recorded counts are printed"
        ))
        .hint(format!(
            "see the counts with `seatwright plan {}`, then record them with --record --by WHO",
            case.client.file.path
        )));
    };
    is_for_this_cushion(case, plan)?;
    // What the goals would make of the counts today is asked of `plan`; paper only needs to know
    // whether the file still asks for what was recorded.
    let fresh = case.with_changes(on)?;
    let cautions: Vec<String> =
        case.cautions(plan, on).into_iter().map(|caution| caution.text).collect();
    let extras = case.extras(plan);
    let papers = ClientPapers {
        client: &case.client.value,
        plan,
        pattern: &case.pattern,
        cell: &case.cell.value,
        cautions: &cautions,
        extras: &extras,
        weight_breaks_limit: case.weight_breaks_limit(plan),
        date: on,
        program: PROGRAM,
    };
    let cannot = |error: DocumentError| cannot_compose(&shown, &error);
    let papers = vec![
        named("setup-card", sheets::setup_card(&papers, paper).map_err(cannot)?),
        named("fill-card", sheets::fill_order(&papers, paper).map_err(cannot)?),
        named("take-home", sheets::take_home(&papers, paper).map_err(cannot)?),
        named("tag", sheets::tag(&case.pattern, on, PROGRAM).map_err(cannot)?),
    ];
    Ok(OfClient { papers, warnings: differences(case, plan, &fresh) })
}

/// Refuses a recorded plan that is for another layout or size than the file now names.
pub(crate) fn is_for_this_cushion(case: &CaseFile, plan: &RecordedPlan) -> Result<(), Failure> {
    let chosen = &case.client.value.cushion;
    let (was, is) = ((&*plan.layout, plan.size), (&*chosen.layout.to_string(), chosen.size));
    if was.0 == is.0 && was.1.to_string() == is.1.to_string() {
        return Ok(());
    }
    let message = format!(
        "the plan recorded on {} is for `{}` in {}, and {} now names `{}` in {}",
        plan.on,
        was.0,
        was.1,
        case.client.file.shown(),
        is.0,
        is.1
    );
    Err(Failure::file(message).hint("record a new plan, or put the cushion back as it was"))
}

/// Says where a fresh plan would differ from the recorded one, compartment by compartment.
fn differences(case: &CaseFile, recorded: &RecordedPlan, fresh: &[PlannedCount]) -> Vec<String> {
    let mut said = Vec::new();
    if case.layout.digest() != recorded.layout_digest {
        said.push(format!("{} was changed since the plan was recorded", case.layout.file.shown()));
    }
    if case.cell.digest() != recorded.cell_digest {
        said.push(format!("{} was changed since the plan was recorded", case.cell.file.shown()));
    }
    let pairs = recorded.counts.iter().zip(fresh);
    let other: Vec<String> = pairs
        .filter(|(was, is)| was.planned != is.planned)
        .map(|(was, is)| {
            format!(
                "{} in compartment {} ({}), recorded are {}",
                is.planned, is.number, is.id, was.planned
            )
        })
        .collect();
    if !other.is_empty() && case.client.value.goals.is_empty() {
        said.push(format!(
            "a fresh plan would have {}; the recorded counts of {} are printed",
            other.join("; "),
            recorded.on
        ));
    }
    said
}

/// The counts of a recorded plan as a plan has them.
pub(crate) fn as_planned(recorded: &RecordedPlan) -> Vec<PlannedCount> {
    let count = |count: &case::RecordedCount| PlannedCount {
        id: count.id.clone(),
        number: count.number,
        stock: count.stock,
        planned: count.planned,
        reason: None,
    };
    recorded.counts.iter().map(count).collect()
}

/// Composes the fill card and the tag of a size as supplied.
///
/// # Errors
///
/// Fails where something finds no room on the paper.
pub(crate) fn of_stock(
    layout: &Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
    on: Date,
    paper: Paper,
) -> Result<Vec<Named>, Failure> {
    let stock = Stock::of(layout, pattern, cell)?;
    let papers = StockPapers { pattern, fill: stock.fill(), cell, date: on, program: PROGRAM };
    let cannot = |error: DocumentError| cannot_compose(&layout.file.shown(), &error);
    let papers = vec![
        named("fill-card", sheets::stock_fill_card(&papers, paper).map_err(cannot)?),
        named("tag", sheets::tag(pattern, on, PROGRAM).map_err(cannot)?),
    ];
    Ok(with_prefix(&format!("{}-{}", pattern.layout(), pattern.size()), papers))
}

/// Composes the blank measuring form.
///
/// # Errors
///
/// Fails where something finds no room on the paper.
pub(crate) fn blank(on: Date, paper: Paper) -> Result<Vec<Named>, Failure> {
    let form = sheets::blank_form(paper, on, PROGRAM);
    Ok(vec![named("measuring-form", form.map_err(|error| cannot_compose("the form", &error))?)])
}

/// Puts a word before the names, so that papers of several clients go into one folder.
pub(crate) fn with_prefix(prefix: &str, papers: Vec<Named>) -> Vec<Named> {
    papers.into_iter().map(|it| Named { name: format!("{prefix}-{}", it.name), ..it }).collect()
}

fn named(name: &str, document: Document) -> Named {
    Named { name: name.to_owned(), document }
}

/// Words for a document that cannot be composed.
fn cannot_compose(shown: &str, error: &DocumentError) -> Failure {
    let failure = Failure::file(format!("no paper can be made of {shown}: {error}"));
    match error {
        DocumentError::OtherCompartments => failure,
        _ => failure.hint("shorten the longest texts, and keep to letters of European languages"),
    }
}
