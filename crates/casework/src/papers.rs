//! Papers: which documents are printed for a client, for a stock fill, for anybody.

use case::text::LengthUnit;
use case::{
    Caution, Date, Digest, Drawn, Likeness, NoCardCode, OtherCount, PlanMark, PlannedCount,
    RecordedPlan, SinceRecorded, Trouble,
};
use cushion::{Cell, Layout, Name, Pattern, Size};
use fitting::{PreparedCushion, Spacings};
use mechanics::Stop;
use sheets::{BlankForm, ClientPapers, Document, DocumentError, DrawnBy, Paper, StockPapers};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;
use crate::open_case::OpenCase;
use crate::parts::usual_mass;
use crate::side_by_side::side_by_side;
use crate::sourced::Sourced;
use crate::stock::no_stock;

/// A document and the name of its files, without their ending.
#[derive(Clone, Debug)]
pub struct NamedDocument {
    /// The name.
    pub name: String,
    /// The document.
    pub document: Document,
}

/// Papers, each made by itself: one that cannot be made stops no other.
#[derive(Clone, Debug, Default)]
pub struct Papers {
    /// Those that were made.
    pub made: Vec<NamedDocument>,
    /// Why others were not.
    pub not_made: Vec<WorkError>,
}

/// A client's papers, and what is to be said about their counts.
#[derive(Clone, Debug)]
pub struct PapersOfClient {
    /// The papers.
    pub papers: Papers,
    /// Where a fresh plan, or the layout, differs from what was recorded.
    pub since_recorded: Vec<SinceRecorded>,
    /// By what their counts are known again.
    pub mark: PlanMark,
    /// Why they have no code by which the counts are found again, where they have none.
    pub no_code: Option<NoCardCode>,
}

/// What a client's papers say beside the client's file.
#[derive(Clone, Debug)]
pub struct OnPaper {
    plan: RecordedPlan,
    extras: sheets::SetupExtras,
    cautions: Vec<Caution>,
    since_recorded: Vec<SinceRecorded>,
}

type Composed = Result<Document, DocumentError>;
type ForClient = fn(&ClientPapers<'_>, Paper) -> Composed;
type ForStock = fn(&StockPapers<'_>, Paper) -> Composed;
type ForAnybody = fn(&BlankForm<'_>, Paper) -> Composed;

/// Who reads a paper, in whose language it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Reader {
    /// Whoever cares for the client at home.
    Carer,
    /// Anybody else.
    Other,
}

/// The documents of a client: to add one, write its file in `sheets` and its line here.
const OF_CLIENT: &[(&str, Reader, ForClient)] = &[
    ("setup-card", Reader::Other, sheets::setup_card),
    ("fill-card", Reader::Other, sheets::fill_order),
    ("take-home", Reader::Carer, sheets::take_home),
    ("wash-day", Reader::Carer, sheets::wash_day),
    ("height-gauge", Reader::Other, sheets::height_gauge),
    ("letter", Reader::Other, sheets::letter),
    ("tag", Reader::Other, |papers, _| {
        let marks = (papers.drawn_by(), papers.serial);
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
    ("tags-sheet", |papers, paper| {
        let (StockPapers { language, pattern, drawn_by, .. }, on) = (*papers, papers.date);
        sheets::tags_sheet(language, pattern, drawn_by, paper, (on, papers.program))
    }),
];

/// The documents that are for anybody.
const BLANK: &[(&str, ForAnybody)] = &[("measuring-form", sheets::blank_form)];

/// What the documents of a client are called, without whose they are.
pub(crate) fn names_of_client() -> impl Iterator<Item = &'static str> {
    OF_CLIENT.iter().map(|(name, ..)| *name)
}

impl OpenCase {
    /// Composes all papers of a client from the plan that was recorded last.
    ///
    /// # Errors
    ///
    /// Fails where no plan was recorded, where it is for another cushion than the file now names,
    /// where nothing is safe, or where no paper can be made.
    pub fn papers(&self, edition: Edition) -> Result<PapersOfClient, WorkError> {
        self.composed(edition, &self.on_paper(edition.on)?)
    }

    /// What a client's papers say beside the file: what takes mechanics, and so most of the time.
    ///
    /// # Errors
    ///
    /// Fails where no plan was recorded, where it is for another cushion than the file now names, or
    /// where nothing is safe.
    pub fn on_paper(&self, on: Date) -> Result<OnPaper, WorkError> {
        let plan = self.plan_on_paper()?;
        // What the goals would make of the counts today is asked of a plan; paper only needs to
        // know whether the file still asks for what was recorded.
        let fresh = self.with_changes(on)?;
        let extras = self.extras(&plan);
        let mut cautions = self.cautions(&plan, on);
        let small = fitting::small_moves(&self.cushion, &extras.moves);
        cautions.extend(small.map(|cells| Caution::SmallMoves { cells }));
        let since_recorded = self.since_recorded(&plan, &fresh, on);
        Ok(OnPaper { plan, extras, cautions, since_recorded })
    }

    /// Composes all papers of a client of what they say.
    ///
    /// # Errors
    ///
    /// Fails where no paper can be made.
    pub fn composed(&self, edition: Edition, own: &OnPaper) -> Result<PapersOfClient, WorkError> {
        let file = &self.client.file.path;
        let mark = self.mark(&own.plan);
        let code = self.card_text((&own.plan, &mark), edition.client_in_code);
        let papers = ClientPapers {
            code: code.as_deref().ok(),
            ..self.client_papers(edition, (&own.plan, &mark), &own.cautions, &own.extras)
        };
        let of_carer = self.for_carers(papers);
        let compose = |(name, reader, compose): &(&'static str, Reader, ForClient)| {
            let papers = if *reader == Reader::Carer { &of_carer } else { &papers };
            named(name, compose(papers, edition.paper), file)
        };
        let papers = Papers::of(side_by_side(OF_CLIENT, compose).into_iter())?;
        let since_recorded = own.since_recorded.clone();
        Ok(PapersOfClient { papers, since_recorded, no_code: code.err(), mark })
    }

    /// Composes the record as pages, each entry with a small drawing of the cells after it.
    ///
    /// # Errors
    ///
    /// Fails where no plan was recorded, where it is for another cushion than the file now names, or
    /// where something cannot be set.
    pub fn history_pages(&self, edition: Edition) -> Result<Papers, WorkError> {
        let client = &self.client.value;
        let plan = self.plan_on_paper()?;
        let extras = sheets::SetupExtras::default();
        let mark = self.mark(&plan);
        let papers = self.client_papers(edition, (&plan, &mark), &[], &extras);
        let composed = sheets::history_pages(&papers, &client.history(), edition.paper);
        let made = vec![named("history", composed, &self.client.file.path)?];
        Ok(Papers { made, not_made: Vec::new() }.with_prefix(client.code.as_str()))
    }

    /// What papers of the client are made from.
    pub(crate) fn client_papers<'a>(
        &'a self,
        edition: Edition,
        (plan, mark): (&'a RecordedPlan, &'a PlanMark),
        cautions: &'a [Caution],
        extras: &'a sheets::SetupExtras,
    ) -> ClientPapers<'a> {
        let client = &self.client.value;
        let Edition { language, on, large_print, .. } = edition;
        ClientPapers {
            language: language.with_lengths_in(client.lengths),
            handed_over_in: None,
            client,
            serial: client.serial(),
            plan,
            pattern: &self.pattern,
            cell: &self.cell.value,
            cautions,
            extras,
            large_print,
            mark,
            code: None,
            beside: self.beside(client, on),
            date: on,
            program: PROGRAM,
        }
    }

    /// The same for whoever cares for the client at home, in the language that the file names.
    fn for_carers<'a>(&self, papers: ClientPapers<'a>) -> ClientPapers<'a> {
        let client = &self.client.value;
        let own = client.language.and_then(words::by_tag);
        match own.filter(|own| own.tag() != papers.language.tag()) {
            Some(own) => ClientPapers {
                language: own.with_lengths_in(client.lengths),
                handed_over_in: Some(papers.language),
                ..papers
            },
            None => papers,
        }
    }

    /// By what papers of these counts are known again.
    pub(crate) fn mark(&self, plan: &RecordedPlan) -> PlanMark {
        let digests = [&plan.layout_digest, &plan.cell_digest];
        let counts = plan.counts.iter().map(|own| (own.number, &own.id, own.planned));
        let word = check_word_of((&plan.layout, plan.size), digests, counts);
        PlanMark { number: self.client.value.plan_number(), word }
    }

    /// The counts that belong on paper, with what changed since they were recorded.
    ///
    /// # Errors
    ///
    /// As [`Self::on_paper`].
    pub(crate) fn plan_to_fill(
        &self,
        on: Date,
    ) -> Result<(RecordedPlan, Vec<SinceRecorded>), WorkError> {
        let plan = self.plan_on_paper()?;
        let since = self.since_recorded(&plan, &self.with_changes(on)?, on);
        Ok((plan, since))
    }

    /// What is expected of the cushion when it is filled, without anybody on it.
    pub(crate) fn of_the_filled(&self, plan: &RecordedPlan) -> sheets::SetupExtras {
        let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
        let found = self.as_found(Stop::never());
        let (pattern, cell) = (&self.pattern, &self.cell.value);
        let all = counts.iter().sum();
        let finished = usual_mass(pattern, self.cushion.unloaded().stock(), cell, all);
        sheets::SetupExtras {
            finished: Some(finished),
            heights: self.cushion.heights(Some(&found.client), &counts),
            ..sheets::SetupExtras::default()
        }
    }

    /// The counts that belong on paper, of this cushion.
    fn plan_on_paper(&self) -> Result<RecordedPlan, WorkError> {
        let file = self.client.file.path.clone();
        let plan = self.client.value.counts_on_paper();
        let plan = plan.ok_or(WorkError::file(Trouble::NothingRecorded { file }))?;
        self.is_for_this_cushion(&plan)?;
        Ok(plan)
    }

    /// What the setup card says beyond counts and checks, for the counts that were recorded.
    fn extras(&self, plan: &RecordedPlan) -> sheets::SetupExtras {
        let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
        let found = self.as_found(Stop::never());
        let size = Some(self.size_reasons());
        let known = sheets::SetupExtras { size, ..self.of_the_filled(plan) };
        let Ok(weight) = self.weight() else { return known };
        let advice = fitting::card_advice(&found.client, &self.cushion, weight, &counts);
        let Some(advice) = advice else { return known };
        let before = self.client.value.before_latest_plan();
        let wanted = self.wanted(plan);
        let moves = before
            .as_ref()
            .map_or_else(Vec::new, |before| fitting::moves(&self.pattern, &before.counts, &wanted));
        let predicted = found.predict(&counts, Stop::never());
        let prediction = predicted.ok().map(|(prediction, _)| prediction);
        let costs = prediction.as_ref().and_then(|own| {
            let costs = found.costs(&counts, own, Stop::never());
            costs.ok().flatten()
        });
        let predicted = prediction.and_then(|own| own.seated);
        sheets::SetupExtras {
            goals: advice.goals,
            costs,
            expected: predicted.map(|seat| sheets::ExpectedSeat {
                left_under: seat.clearance,
                lower_side: seat.lower_side,
                lower_by: seat.lower_by,
            }),
            moves,
            moves_from: before.map(|before| before.from),
            if_then: advice.if_then,
            ..known
        }
    }

    /// To which counts moves lead: those on paper, or those of the plan to which only some moves were
    /// made.
    fn wanted(&self, on_paper: &RecordedPlan) -> Vec<u32> {
        let client = &self.client.value;
        let plan = client.latest_plan().filter(|_| client.moves_are_left()).unwrap_or(on_paper);
        plan.counts.iter().map(|count| count.planned).collect()
    }

    /// Why the size was chosen, for the letter.
    fn size_reasons(&self) -> sheets::SizeReasons {
        let fitting::Sizing { chosen, margins, suit_too, why_not, .. } = self.sizing();
        sheets::SizeReasons { best: chosen, margins, suit_too, left: why_not }
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

/// The check word of counts: of a layout as the client's file names it, a size, the digests of the
/// layout and of the cell, and number, id and cells of each compartment.
pub(crate) fn check_word_of<'a>(
    (layout, size): (&str, Size),
    [layout_digest, cell_digest]: [&Digest; 2],
    counts: impl Iterator<Item = (u8, &'a Name, u32)>,
) -> String {
    let counts: String =
        counts.map(|(number, id, cells)| format!("{number} {id} {cells}\n")).collect();
    let text = format!("{layout} {size} {layout_digest} {cell_digest}\n{counts}");
    case::check_word(&files::digest(&text))
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
/// Fails where no paper can be made.
pub fn papers_of_stock(
    layout: &Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
    edition: Edition,
) -> Result<Papers, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let cushion = PreparedCushion::new(pattern, cell, Spacings::default())
        .map_err(|error| no_stock(layout, pattern, error))?;
    let fill = cushion.unloaded().stock().clone();
    let counts: Vec<u32> = fill.compartments.iter().map(|own| own.cells.stock).collect();
    let heights = cushion.heights(None, &counts);
    let finished = Some(usual_mass(pattern, &fill, cell, fill.total()));
    let plugin = layout.drawn_by.as_deref();
    let digest = layout.digest();
    let drawn_by = plugin.map(|plugin| DrawnBy { plugin, layout: &digest });
    let (fill, date, program) = (&fill, on, PROGRAM);
    let digest = &digest;
    let heights = heights.as_slice();
    let papers = StockPapers {
        language,
        pattern,
        fill,
        cell,
        digest,
        heights,
        finished,
        drawn_by,
        date,
        program,
    };
    let file = &layout.file.path;
    let compose =
        |(name, compose): &(&'static str, ForStock)| named(name, compose(&papers, paper), file);
    let papers = Papers::of(OF_STOCK.iter().map(compose))?;
    Ok(papers.with_prefix(&format!("{}-{}", pattern.layout(), pattern.size())))
}

/// Composes the papers that are for anybody, which ask lengths in a unit.
///
/// # Errors
///
/// Fails where something finds no room on the paper.
pub fn blank_papers(edition: Edition, unit: LengthUnit) -> Result<Papers, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let form = BlankForm { language, unit, date: on, program: PROGRAM };
    Papers::of(BLANK.iter().map(|(name, compose)| {
        let composed = compose(&form, paper).map_err(|error| not_drawn(Drawn::Form, error));
        composed.map(|document| NamedDocument { name: (*name).to_owned(), document })
    }))
}

impl Papers {
    /// Fails where none is made.
    fn of(
        papers: impl Iterator<Item = Result<NamedDocument, WorkError>>,
    ) -> Result<Self, WorkError> {
        let mut all = Self::default();
        for paper in papers {
            match paper {
                Ok(own) => all.made.push(own),
                Err(error) => all.not_made.push(error),
            }
        }
        if all.made.is_empty() && !all.not_made.is_empty() {
            return Err(all.not_made.swap_remove(0));
        }
        Ok(all)
    }

    /// Puts a word before the names, so that papers of several clients go into one folder.
    #[must_use]
    pub fn with_prefix(mut self, prefix: &str) -> Self {
        for own in &mut self.made {
            own.name = format!("{prefix}-{}", own.name);
        }
        self
    }
}

fn named(name: &'static str, composed: Composed, of: &str) -> Result<NamedDocument, WorkError> {
    let what = Drawn::Paper { name: name.to_owned(), of: of.to_owned() };
    let document = composed.map_err(|error| not_drawn(what, error))?;
    Ok(NamedDocument { name: name.to_owned(), document })
}
