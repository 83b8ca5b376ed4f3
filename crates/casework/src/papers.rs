//! Papers: which documents are printed for a client, for a stock fill, for anybody.

use case::text::LengthUnit;
use case::{
    Caution, Date, Drawn, Likeness, OtherCount, PlannedCount, RecordedPlan, SinceRecorded, Trouble,
};
use cushion::{Cell, Layout, Pattern};
use mechanics::Stop;
use sheets::{BlankForm, ClientPapers, Document, DocumentError, DrawnBy, Paper, StockPapers};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;
use crate::open_case::OpenCase;
use crate::sourced::Sourced;
use crate::stock::unloaded;

/// A document and the name of its files, without their ending.
#[derive(Clone, Debug)]
pub struct NamedDocument {
    /// The name.
    pub name: String,
    /// The document.
    pub document: Document,
}

/// A client's papers, and what is to be said about their counts.
#[derive(Clone, Debug)]
pub struct PapersOfClient {
    /// The papers.
    pub papers: Vec<NamedDocument>,
    /// Where a fresh plan, or the layout, differs from what was recorded.
    pub since_recorded: Vec<SinceRecorded>,
}

type Composed = Result<Document, DocumentError>;
type ForClient = fn(&ClientPapers<'_>, Paper) -> Composed;
type ForStock = fn(&StockPapers<'_>, Paper) -> Composed;
type ForAnybody = fn(&BlankForm<'_>, Paper) -> Composed;

/// The documents of a client: to add one, write its file in `sheets` and its line here.
const OF_CLIENT: &[(&str, ForClient)] = &[
    ("setup-card", sheets::setup_card),
    ("fill-card", sheets::fill_order),
    ("take-home", sheets::take_home),
    ("tag", |papers, _| {
        let marks = (papers.drawn_by(), papers.client.cushion.serial.as_deref());
        let (language, pattern) = (papers.language, papers.pattern);
        sheets::tag_with_serial(language, pattern, marks, papers.date, papers.program)
    }),
];

/// The documents of a size as supplied.
const OF_STOCK: &[(&str, ForStock)] = &[
    ("fill-card", sheets::stock_fill_card),
    ("tag", |papers, _| {
        let drawn_by = papers.drawn_by;
        sheets::tag(papers.language, papers.pattern, drawn_by, papers.date, papers.program)
    }),
];

/// The documents that are for anybody.
const BLANK: &[(&str, ForAnybody)] = &[("measuring-form", sheets::blank_form)];

impl OpenCase {
    /// Composes all papers of a client from the plan that was recorded last.
    ///
    /// # Errors
    ///
    /// Fails where no plan was recorded, where it is for another cushion than the file now names,
    /// where nothing is safe, or where something finds no room on the paper.
    pub fn papers(&self, edition: Edition) -> Result<PapersOfClient, WorkError> {
        let Edition { language, on, paper } = edition;
        let language = language.with_lengths_in(self.client.value.lengths);
        let file = &self.client.file.path;
        let Some(plan) = self.client.value.counts_on_paper() else {
            return Err(WorkError::file(Trouble::NothingRecorded { file: file.clone() }));
        };
        let plan = &plan;
        self.is_for_this_cushion(plan)?;
        // What the goals would make of the counts today is asked of a plan; paper only needs to
        // know whether the file still asks for what was recorded.
        let fresh = self.with_changes(on)?;
        let extras = self.extras(plan);
        let mut cautions = self.cautions(plan, on);
        let small = fitting::small_moves(&self.cushion, &extras.moves);
        cautions.extend(small.map(|cells| Caution::SmallMoves { cells }));
        let papers = ClientPapers {
            language,
            client: &self.client.value,
            plan,
            pattern: &self.pattern,
            cell: &self.cell.value,
            cautions: &cautions,
            extras: &extras,
            beside: self.beside(&self.client.value, on),
            date: on,
            program: PROGRAM,
        };
        let what = || Drawn::PapersOf(file.clone());
        let compose =
            |(name, compose): &(&str, ForClient)| named(name, compose(&papers, paper), what());
        let papers = OF_CLIENT.iter().map(compose).collect::<Result<_, _>>()?;
        Ok(PapersOfClient { papers, since_recorded: self.since_recorded(plan, &fresh, on) })
    }

    /// What the setup card says beyond counts and checks, for the counts that were recorded.
    fn extras(&self, plan: &RecordedPlan) -> sheets::SetupExtras {
        let Ok(weight) = self.weight() else { return sheets::SetupExtras::default() };
        let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
        let advice = fitting::card_advice(&self.client.value, &self.cushion, weight, &counts);
        let Some(advice) = advice else { return sheets::SetupExtras::default() };
        let before = self.client.value.before_latest_plan();
        let moves = before
            .as_ref()
            .map_or_else(Vec::new, |before| fitting::moves(&self.pattern, &before.counts, &counts));
        sheets::SetupExtras {
            goals: advice.goals,
            moves,
            moves_from: before.map(|before| before.from),
            if_then: advice.if_then,
        }
    }

    /// What changed since a plan was recorded: the texts, the client's weight, and where nothing is
    /// asked of goals, the counts of a fresh plan.
    fn since_recorded(
        &self,
        plan: &RecordedPlan,
        fresh: &[PlannedCount],
        on: Date,
    ) -> Vec<SinceRecorded> {
        let mut since = Vec::new();
        if let Likeness::Edited { layout, cell } = self.identity().likeness(plan) {
            let (of_layout, of_cell) = (self.layout.file.shown(), self.cell.file.shown());
            since.extend(layout.then_some(SinceRecorded::LayoutEdited { shown: of_layout }));
            since.extend(cell.then_some(SinceRecorded::CellEdited { shown: of_cell }));
        }
        let counts = others(plan, fresh);
        if !counts.is_empty() && self.client.value.goals.is_empty() {
            since.push(SinceRecorded::OtherCounts { recorded: plan.on, counts });
        }
        since.extend(self.other_weight(plan, on));
        since
    }

    /// Where the client's weight is another than a plan was made for: what a fresh plan would have.
    fn other_weight(&self, plan: &RecordedPlan, on: Date) -> Option<SinceRecorded> {
        let then = plan.expected.as_ref()?.weight;
        let now = self.client.value.latest_weighing()?.weight;
        if (now.to_kg() - then.to_kg()).abs() < SAME_WEIGHT_KG {
            return None;
        }
        let fresh = self.plan(on, Stop::never()).ok().filter(|plan| plan.not_safe.is_empty());
        let counts = fresh.map(|fresh| others(plan, &fresh.counts));
        Some(SinceRecorded::OtherWeight { then, now, counts })
    }
}

/// Weights are the same within what scales and clothes differ by, kg: common practice, no source.
const SAME_WEIGHT_KG: f64 = 1.0;

/// The counts that are other in a fresh plan than in one that was recorded.
fn others(plan: &RecordedPlan, fresh: &[PlannedCount]) -> Vec<OtherCount> {
    let pairs = plan.counts.iter().zip(fresh);
    pairs
        .filter(|(was, is)| was.planned != is.planned)
        .map(|(was, is)| OtherCount {
            id: is.id.clone(),
            number: is.number,
            fresh: is.planned,
            recorded: was.planned,
        })
        .collect()
}

/// Composes the papers of a size as supplied.
///
/// # Errors
///
/// Fails where something finds no room on the paper.
pub fn papers_of_stock(
    layout: &Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
    edition: Edition,
) -> Result<Vec<NamedDocument>, WorkError> {
    let Edition { language, on, paper } = edition;
    let fill = unloaded(layout, pattern, cell)?.into_stock();
    let plugin = layout.drawn_by.as_deref();
    let digest = layout.digest();
    let drawn_by = plugin.map(|plugin| DrawnBy { plugin, layout: &digest });
    let (fill, date, program) = (&fill, on, PROGRAM);
    let papers = StockPapers { language, pattern, fill, cell, drawn_by, date, program };
    let what = || Drawn::PapersOf(layout.file.path.clone());
    let compose = |(name, compose): &(&str, ForStock)| named(name, compose(&papers, paper), what());
    let papers = OF_STOCK.iter().map(compose).collect::<Result<Vec<_>, _>>()?;
    Ok(with_prefix(&format!("{}-{}", pattern.layout(), pattern.size()), papers))
}

/// Composes the papers that are for anybody, which ask lengths in a unit.
///
/// # Errors
///
/// Fails where something finds no room on the paper.
pub fn blank_papers(edition: Edition, unit: LengthUnit) -> Result<Vec<NamedDocument>, WorkError> {
    let Edition { language, on, paper } = edition;
    let form = BlankForm { language, unit, date: on, program: PROGRAM };
    let papers = BLANK.iter();
    papers.map(|(name, compose)| named(name, compose(&form, paper), Drawn::Form)).collect()
}

/// Puts a word before the names, so that papers of several clients go into one folder.
#[must_use]
pub fn with_prefix(prefix: &str, papers: Vec<NamedDocument>) -> Vec<NamedDocument> {
    let prefixed =
        |it: NamedDocument| NamedDocument { name: format!("{prefix}-{}", it.name), ..it };
    papers.into_iter().map(prefixed).collect()
}

fn named(name: &str, composed: Composed, what: Drawn) -> Result<NamedDocument, WorkError> {
    let document = composed.map_err(|error| not_drawn(what, error))?;
    Ok(NamedDocument { name: name.to_owned(), document })
}
