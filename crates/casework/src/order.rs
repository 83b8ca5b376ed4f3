//! An order: cushions that are filled in one go, with their papers and what they need in all.

use std::collections::BTreeMap;
use std::ops::Range;

use case::text::OrderFinding;
use case::{
    Caution, ClientCode, Digest, Drawn, Finding, PlanMark, RecordNote, RecordedPlan, ShelfError,
    Spread, Trouble, Why,
};
use cushion::{Cell, Layout, Length, Mass, Name, Pattern, Size, StockFill};
use files::{OrderLine, Ordered, Remark, Severity};
use fitting::{PreparedCushion, Spacings};
use sheets::{
    Document, DocumentError, DrawnBy, OrderPapers, OrderedCushion, SetupExtras, StockPapers, ToFill,
};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::{Whose, WorkError};
use crate::file_remarks::FileRemarks;
use crate::not_drawn::not_drawn;
use crate::open_case::OpenCase;
use crate::papers::{NamedDocument, check_word_of};
use crate::parts::{usual_mass, usual_spares};
use crate::side_by_side::side_by_side;
use crate::sourced::{Sourced, pattern};
use crate::stock::no_stock;
use crate::surroundings::Surroundings;

/// What is asked of an order beside its text.
#[derive(Clone, Copy, Debug)]
pub struct OrderAsked<'a> {
    /// What the order is called, on its papers and in their names.
    pub name: &'a str,
    /// Spare cells that go with each cushion as supplied; as is usual where nobody says.
    pub spares: Option<u32>,
    /// The language, day and paper.
    pub edition: Edition,
}

/// An order with its papers.
#[derive(Clone, Debug)]
pub struct MadeOrder {
    /// The lines, in the order of the text.
    pub lines: Vec<MadeLine>,
    /// The pick list, the fill cards and the tags.
    pub papers: Vec<NamedDocument>,
    /// The names of the files that were read; what is built in has a name that is no file's.
    pub inputs: Vec<String>,
}

/// One line of an order, with what each of its cushions needs.
#[derive(Clone, Debug)]
pub struct MadeLine {
    /// The line of the text, from 1.
    pub line: usize,
    /// The layout.
    pub layout: Name,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// By which its text is known again.
    pub layout_digest: Digest,
    /// The size.
    pub size: Size,
    /// The cell.
    pub cell: Name,
    /// By which the text of the cell is known again.
    pub cell_digest: Digest,
    /// Litres of its cells that one takes when poured into a large vessel.
    pub poured_litres: f64,
    /// Whose it is; none as supplied.
    pub client: Option<ClientCode>,
    /// By which the counts are known again.
    pub word: String,
    /// How many cushions.
    pub quantity: u32,
    /// Their serials, one for each, or none.
    pub serials: Vec<String>,
    /// The first and the last of their cards.
    pub cards: [usize; 2],
    /// Spare cells that go with each.
    pub spares: u32,
    /// What each is expected to weigh when finished.
    pub finished: Spread<Mass>,
    /// What goes into each.
    pub compartments: Vec<OrderedCompartment>,
    /// What is to be known of it before it is filled.
    pub findings: Vec<Finding>,
    /// Remarks on the layout's text.
    pub remarks: Vec<Remark>,
}

impl MadeLine {
    /// Cells in one cushion.
    #[must_use]
    pub fn cells(&self) -> u32 {
        self.compartments.iter().map(|own| own.cells).sum()
    }

    /// By which whoever reads of it knows which line it is: a client's code, or layout and size.
    #[must_use]
    pub fn known_by(&self) -> String {
        let stock = || format!("{} {}", self.layout, self.size);
        self.client.as_ref().map_or_else(stock, ClientCode::to_string)
    }
}

/// One compartment of an ordered cushion.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderedCompartment {
    /// Its id.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells to fill.
    pub cells: u32,
    /// How many cells the count may be off.
    pub tolerance: u32,
    /// How high it is expected to stand after patting; none where that is not known.
    pub height: Option<Spread<Length>>,
}

/// Reads an order from the text of a file, finds what each line needs, and composes the papers.
///
/// # Errors
///
/// Fails where a line is wrong, or names what cannot be had or filled, or a paper cannot be made:
/// an order is whole, or there is none.
pub fn order(
    surroundings: Surroundings<'_>,
    file: &str,
    asked: OrderAsked<'_>,
) -> Result<MadeOrder, WorkError> {
    let text = surroundings.text(file)?;
    let read = files::read_order(&text);
    let source = FileRemarks { path: file.to_owned(), text, remarks: read.remarks };
    let Some(lines) = read.value else { return Err(WorkError::wrong_file(source)) };
    let kinds = Kinds::of(surroundings, &source, &lines, asked)?;
    let (lines, mut inputs) = kinds.lines(&lines);
    let papers = kinds.papers(&lines, asked)?;
    inputs.insert(0, file.to_owned());
    let lines = lines.into_iter().map(|(_, line)| line).collect();
    Ok(MadeOrder { lines, papers, inputs })
}

/// What a cushion as supplied is filled with.
struct Stock {
    layout: Sourced<Layout>,
    layout_digest: Digest,
    cell: Sourced<Cell>,
    pattern: Pattern,
    fill: StockFill,
    heights: Vec<Option<Spread<Length>>>,
    finished: Spread<Mass>,
    word: String,
    spares: u32,
}

/// What a client's record has for their cushion.
struct OfClient {
    case: OpenCase,
    plan: RecordedPlan,
    mark: PlanMark,
    extras: SetupExtras,
    finished: Spread<Mass>,
    findings: Vec<Finding>,
}

/// One kind of cushion.
enum Kind {
    Stock(Box<Stock>),
    Client(Box<OfClient>),
}

/// The kinds of cushions of an order, and which each line is of.
struct Kinds {
    kinds: Vec<Kind>,
    of_line: Vec<usize>,
}

impl Kinds {
    /// Finds them, each once, on all cores.
    fn of(
        surroundings: Surroundings<'_>,
        source: &FileRemarks,
        lines: &[OrderLine],
        asked: OrderAsked<'_>,
    ) -> Result<Self, WorkError> {
        let beside = |name: &str| surroundings.shelf.beside(&source.path, name);
        let mut firsts: Vec<&OrderLine> = Vec::new();
        let mut of_line = Vec::new();
        for line in lines {
            let known = firsts.iter().position(|first| first.what == line.what);
            of_line.push(known.unwrap_or(firsts.len()));
            firsts.extend(known.is_none().then_some(line));
        }
        let found = side_by_side(&firsts, |line| match &line.what {
            Ordered::Stock { layout, size, cell } => {
                stock(surroundings, &beside, (layout, *size, cell.as_deref()), asked.spares)
                    .map(|own| Kind::Stock(Box::new(own)))
                    .map_err(|(error, of_cell)| {
                        (error, if of_cell { &line.places.cell } else { &line.places.what })
                    })
            }
            Ordered::Client(file) => {
                let serial = line.serials.first().cloned();
                of_client(surroundings, &beside(file), serial, asked.edition)
                    .map(|own| Kind::Client(Box::new(own)))
                    .map_err(|error| (error, &line.places.what))
            }
        });
        let (mut kinds, mut remarks) = (Vec::new(), Vec::new());
        for own in found {
            match own {
                Ok(kind) => kinds.push(kind),
                Err((error, place)) => remarks.push(of_the_order(error, place, source)?),
            }
        }
        if remarks.is_empty() {
            let kinds = Self { kinds, of_line };
            remarks = kinds.wrong_serials(lines);
            if remarks.is_empty() {
                return Ok(kinds);
            }
        }
        Err(WorkError::wrong_file(FileRemarks { remarks, ..source.clone() }))
    }

    /// Serials of clients' files that are not those of the order, or are there twice.
    fn wrong_serials(&self, lines: &[OrderLine]) -> Vec<Remark> {
        let error = |span: &Range<usize>, finding: OrderFinding| Remark {
            severity: Severity::Error,
            span: span.clone(),
            finding: finding.into(),
        };
        let mut known: BTreeMap<String, usize> = BTreeMap::new();
        for line in lines {
            known.extend(line.serials.iter().map(|own| (own.to_lowercase(), line.line)));
        }
        let mut remarks = Vec::new();
        for (line, kind) in lines.iter().zip(&self.of_line).map(|(own, at)| (own, &self.kinds[*at]))
        {
            let Kind::Client(own) = kind else { continue };
            let Some(serial) = own.case.client.value.cushion.serial.clone() else { continue };
            if let Some(ordered) = line.serials.first() {
                if *ordered != serial {
                    let (ordered, of_file) = (ordered.clone(), serial);
                    let finding = OrderFinding::OtherSerial { ordered, of_file };
                    remarks.push(error(&line.places.serials, finding));
                }
            } else if let Some(before) = known.insert(serial.to_lowercase(), line.line) {
                let finding = OrderFinding::SerialTwice { serial, line: before };
                remarks.push(error(&line.places.what, finding));
            }
        }
        remarks
    }

    /// The lines with what each needs and its kind, and the names of the files that were read.
    fn lines(&self, lines: &[OrderLine]) -> (Vec<(usize, MadeLine)>, Vec<String>) {
        let mut next = 1;
        let mut inputs: Vec<String> = Vec::new();
        let made = lines.iter().zip(&self.of_line).map(|(line, at)| {
            let mut own = match &self.kinds[*at] {
                Kind::Stock(own) => own.line(),
                Kind::Client(own) => own.line(),
            };
            (own.line, own.quantity) = (line.line, line.quantity);
            if !line.serials.is_empty() {
                own.serials = line.serials.clone();
            }
            own.cards = [next, next + line.quantity as usize - 1];
            next += line.quantity as usize;
            (*at, own)
        });
        let made = made.collect();
        for kind in &self.kinds {
            let read = match kind {
                Kind::Stock(own) => vec![own.layout.file.path.as_str(), &own.cell.file.path],
                Kind::Client(own) => own.case.inputs(),
            };
            inputs.extend(read.into_iter().map(str::to_owned));
        }
        (made, inputs)
    }

    /// Composes the papers; one that cannot be made is an error.
    fn papers(
        &self,
        lines: &[(usize, MadeLine)],
        asked: OrderAsked<'_>,
    ) -> Result<Vec<NamedDocument>, WorkError> {
        let Edition { language, on, paper, .. } = asked.edition;
        let mut cushions = Vec::new();
        for (at, line) in lines {
            let fill = match &self.kinds[*at] {
                Kind::Stock(own) => ToFill::Stock(own.papers(asked.edition)),
                Kind::Client(own) => ToFill::Client(own.papers(asked.edition)),
            };
            cushions.extend((0..line.quantity as usize).map(|which| OrderedCushion {
                fill,
                serial: line.serials.get(which).map(String::as_str),
                word: &line.word,
                cells: line.cells(),
                spares: line.spares,
                finished: line.finished,
            }));
        }
        let (name, cushions) = (asked.name, cushions.as_slice());
        let papers = OrderPapers { language, name, cushions, date: on, program: PROGRAM };
        let compose = |(called, compose): &(&str, Composes)| {
            let what = Drawn::Paper { name: (*called).to_owned(), of: name.to_owned() };
            let document = compose(&papers, paper).map_err(|error| not_drawn(what, error))?;
            Ok(NamedDocument { name: format!("{name}-{called}"), document })
        };
        side_by_side(OF_ORDER, compose).into_iter().collect()
    }
}

type Composes = fn(&OrderPapers<'_>, sheets::Paper) -> Result<Document, DocumentError>;

/// The documents of an order.
const OF_ORDER: &[(&str, Composes)] = &[
    ("pick-list", sheets::pick_list),
    ("fill-cards", sheets::fill_cards),
    ("tags", sheets::tags_of_order),
];

/// An error that a line of the order can mend, as a remark on that line; any other ends the order, and
/// is shown with the line where no file of its own is.
fn of_the_order(
    error: WorkError,
    place: &Range<usize>,
    source: &FileRemarks,
) -> Result<Remark, WorkError> {
    let mut remark = error.as_remark(place.clone());
    if error.file.is_some() || error.is_of_a_setting() {
        return Err(error);
    }
    if !matches!(error.whose, Whose::Asker | Whose::Writer) {
        return Err(error.about(FileRemarks { remarks: vec![remark], ..source.clone() }));
    }
    if let Trouble::Shelf(ShelfError { why: Why::NotFound, .. }) = &*error.what {
        remark.finding = OrderFinding::NoFile(source.text[place.clone()].to_owned()).into();
    }
    Ok(remark)
}

/// Fills a size of a layout as supplied; with an error, whether it is about the cell.
fn stock(
    surroundings: Surroundings<'_>,
    beside: &dyn Fn(&str) -> String,
    (layout, size, cell): (&str, Size, Option<&str>),
    spares: Option<u32>,
) -> Result<Stock, (WorkError, bool)> {
    let cell = surroundings.cell_beside(cell, beside).map_err(|error| (error, true))?;
    let of_layout = |error| (error, false);
    let mut layout = surroundings.layout_beside(layout, size, beside).map_err(of_layout)?;
    let pattern = pattern(&mut layout, size, &cell.value).map_err(of_layout)?;
    let cushion = PreparedCushion::new(&pattern, &cell.value, Spacings::default())
        .map_err(|error| of_layout(no_stock(&layout, &pattern, error)))?;
    let fill = cushion.unloaded().stock().clone();
    let counts: Vec<u32> = fill.compartments.iter().map(|own| own.cells.stock).collect();
    let heights = cushion.heights(None, &counts);
    let finished = usual_mass(&pattern, &fill, &cell.value, fill.total());
    let layout_digest = layout.digest();
    let named = pattern.compartments().iter().zip(&counts);
    let named = named.map(|(own, count)| (own.number, &own.id, *count));
    let digests = [&layout_digest, &cell.digest()];
    let word = check_word_of((pattern.layout().as_str(), size), digests, named);
    let spares = spares.unwrap_or_else(|| usual_spares(fill.total()));
    Ok(Stock { layout, layout_digest, cell, pattern, fill, heights, finished, word, spares })
}

/// Opens a client's file, whose cushion gets the serial of the order where the file says none.
fn of_client(
    surroundings: Surroundings<'_>,
    file: &str,
    serial: Option<String>,
    edition: Edition,
) -> Result<OfClient, WorkError> {
    let mut case = OpenCase::open(surroundings, file)?;
    let own = &mut case.client.value.cushion.serial;
    *own = own.take().or(serial);
    let (plan, since) = case.plan_to_fill(edition.on)?;
    let mark = case.mark(&plan);
    let extras = case.of_the_filled(&plan);
    let counts = plan.total();
    let finished = extras.finished.unwrap_or_else(|| {
        usual_mass(&case.pattern, case.cushion.stock(), &case.cell.value, counts)
    });
    let notes = case.client.value.record_notes().into_iter();
    let notes = notes.filter(|own| !matches!(own, RecordNote::Believed(_))).map(Finding::Record);
    let mut findings: Vec<Finding> = since.into_iter().map(Finding::Since).chain(notes).collect();
    findings.extend(not_rated(&case.pattern));
    Ok(OfClient { case, plan, mark, extras, finished, findings })
}

/// That a size is none of those that are made.
fn not_rated(pattern: &Pattern) -> Option<Finding> {
    let rated = pattern.max_user_weight().is_some();
    (!rated).then_some(Finding::Caution(Caution::NoRating { size: pattern.size() }))
}

/// Litres that one cell takes when poured where walls hardly matter.
fn poured_litres(cell: &Cell) -> f64 {
    cell.inflated.to_litres() / cell.packing.bulk
}

impl Stock {
    fn line(&self) -> MadeLine {
        let compartments = self.pattern.indices().map(|ix| {
            let cells = self.fill[ix].cells.stock;
            OrderedCompartment {
                id: self.pattern[ix].id.clone(),
                number: self.pattern[ix].number,
                cells,
                tolerance: sheets::tolerance(cells),
                height: self.heights[ix.index()],
            }
        });
        MadeLine {
            compartments: compartments.collect(),
            word: self.word.clone(),
            spares: self.spares,
            finished: self.finished,
            findings: not_rated(&self.pattern).into_iter().collect(),
            ..of_any((&self.layout, &self.cell), &self.pattern)
        }
    }

    fn papers(&self, edition: Edition) -> StockPapers<'_> {
        let Edition { language, on, .. } = edition;
        let digest = &self.layout_digest;
        let plugin = self.layout.drawn_by.as_deref();
        StockPapers {
            language,
            pattern: &self.pattern,
            fill: &self.fill,
            cell: &self.cell.value,
            digest,
            heights: &self.heights,
            finished: Some(self.finished),
            drawn_by: plugin.map(|plugin| DrawnBy { plugin, layout: digest }),
            date: on,
            program: PROGRAM,
        }
    }
}

impl OfClient {
    fn line(&self) -> MadeLine {
        let Self { case, plan, .. } = self;
        let client = &case.client.value;
        let compartments = plan.counts.iter().enumerate().map(|(at, own)| OrderedCompartment {
            id: own.id.clone(),
            number: own.number,
            cells: own.planned,
            tolerance: 0,
            height: self.extras.heights.get(at).copied().flatten(),
        });
        MadeLine {
            client: Some(client.code.clone()),
            compartments: compartments.collect(),
            word: self.mark.word.clone(),
            serials: client.cushion.serial.iter().cloned().collect(),
            spares: u32::try_from(client.spare_cells_left()).unwrap_or(0),
            finished: self.finished,
            findings: self.findings.clone(),
            ..of_any((&case.layout, &case.cell), &case.pattern)
        }
    }

    fn papers(&self, edition: Edition) -> sheets::ClientPapers<'_> {
        sheets::ClientPapers {
            // The cushion is made anew: no serial of the record is its own.
            serial: self.case.client.value.cushion.serial.as_deref(),
            ..self.case.client_papers(edition, (&self.plan, &self.mark), &[], &self.extras)
        }
    }
}

/// What is said of any cushion.
fn of_any((layout, cell): (&Sourced<Layout>, &Sourced<Cell>), pattern: &Pattern) -> MadeLine {
    MadeLine {
        line: 0,
        layout: layout.value.name.clone(),
        revision: layout.value.revision,
        layout_digest: layout.digest(),
        size: pattern.size(),
        cell: cell.value.name.clone(),
        cell_digest: cell.digest(),
        poured_litres: poured_litres(&cell.value),
        client: None,
        word: String::new(),
        quantity: 1,
        serials: Vec::new(),
        cards: [1, 1],
        spares: 0,
        finished: Spread { central: Mass::ZERO, low: Mass::ZERO, high: Mass::ZERO },
        compartments: Vec::new(),
        findings: Vec::new(),
        remarks: layout.file.remarks.clone(),
    }
}
