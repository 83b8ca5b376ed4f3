//! The documents: each is composed once, from values, into finished pages.
//!
//! Counts come in as they were recorded and are never computed here. Left and right are the
//! client's. No pressure is printed.

mod axis;
mod code;
mod drawing;
mod fill_card;
mod height_gauge;
mod history;
mod labels;
mod letter;
mod look;
mod masthead;
mod measuring_form;
mod order;
mod pictures;
mod range_table;
mod review;
mod section;
mod setup_card;
mod survey_page;
mod tag;
mod take_home;
mod template;
mod views;
mod wash_day;

use std::fmt;

use case::{
    Beside, Caution, Client, Date, Digest, PlanMark, RecordedPlan, Review, Spread, Standing, State,
};
use cushion::{Cell, CompartmentIx, Length, Mass, Pattern, Side, StockFill};
use kurbo::Rect;
use words::Language;

use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Attached, Document, Page};
use crate::paper::Paper;
use crate::text::SetError;

pub use self::drawing::{drawing, faulty_drawing};
pub use self::fill_card::{fill_order, stock_fill_card, tolerance};
pub use self::height_gauge::height_gauge;
pub use self::history::history_pages;
pub use self::letter::{SizeReasons, letter};
pub use self::look::{INKS, Ink};
pub use self::masthead::Identity;
pub use self::measuring_form::{BlankForm, blank_form};
pub use self::order::{OrderPapers, OrderedCushion, ToFill, fill_cards, pick_list};
pub use self::pictures::{
    BodyPicture, ControlPlace, body_picture, faulty_picture, measure_picture, move_picture,
    pattern_picture, pelvis_picture, places, section_picture,
};
pub use self::range_table::{RangeTable, range_table};
pub use self::review::{ReviewPage, review_page};
pub use self::section::{Section, SectionAt, SectionPapers, SectionSite, section_sheet};
pub use self::setup_card::{ExpectedSeat, SetupExtras, setup_card};
pub use self::survey_page::{Histogram, SurveyPage, survey_page};
pub use self::tag::{tag, tag_with_serial, tags_of_order, tags_sheet};
pub use self::take_home::{take_home, take_home_text};
pub use self::template::{TemplatePapers, template_says, template_sheet, template_tiles};
pub use self::views::{View, place_on_page};
pub use self::wash_day::wash_day;

/// What the documents of one client are made from.
#[derive(Clone, Copy)]
pub struct ClientPapers<'a> {
    /// In which language they are.
    pub language: &'a dyn Language,
    /// The language of whoever hands them over, where it is another.
    pub handed_over_in: Option<&'a dyn Language>,
    /// The client.
    pub client: &'a Client,
    /// The serial of the cushion, where one is known.
    pub serial: Option<&'a str>,
    /// The plan as it was recorded; its counts are the counts on paper.
    pub plan: &'a RecordedPlan,
    /// The pattern that the plan is for.
    pub pattern: &'a Pattern,
    /// The cell.
    pub cell: &'a Cell,
    /// What whoever sets the cushion up should know.
    pub cautions: &'a [Caution],
    /// What follows from goals and checks.
    pub extras: &'a SetupExtras,
    /// Whether what carers read is set in larger print, for weak eyes.
    pub large_print: bool,
    /// By what the plan is known again.
    pub mark: &'a PlanMark,
    /// The text by which the counts are found again, in the signs of a QR code; where it is none,
    /// papers have no code.
    pub code: Option<&'a str>,
    /// What the record cannot say by itself of how the fitting stands.
    pub beside: Beside,
    /// The day that the papers bear.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// A plugin that drew a pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawnBy<'a> {
    /// Its name and version, and the values of its parameters.
    pub plugin: &'a str,
    /// By which its answer is known again.
    pub layout: &'a Digest,
}

impl DrawnBy<'_> {
    fn said(self, language: &dyn Language) -> String {
        language.drawn_by(self.plugin, self.layout)
    }
}

/// What the documents of one size, as supplied, are made from.
#[derive(Clone, Copy)]
pub struct StockPapers<'a> {
    /// In which language they are.
    pub language: &'a dyn Language,
    /// The pattern.
    pub pattern: &'a Pattern,
    /// Its stock fill.
    pub fill: &'a StockFill,
    /// The cell.
    pub cell: &'a Cell,
    /// By which the layout's text is known again.
    pub digest: &'a Digest,
    /// How high each compartment is expected to stand; empty where that is not known.
    pub heights: &'a [Option<Spread<Length>>],
    /// What the finished cushion is expected to weigh; none where that is not known.
    pub finished: Option<Spread<Mass>>,
    /// The plugin that drew the pattern, where one did.
    pub drawn_by: Option<DrawnBy<'a>>,
    /// The day that the papers bear.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// Why a document is not made.
#[derive(Clone, Debug, PartialEq)]
pub enum DocumentError {
    /// Something finds no room, or a character has no glyph.
    Set(SetError),
    /// The recorded plan has other compartments than the pattern: the layout was changed.
    OtherCompartments,
    /// The recorded plan is for another size than the pattern.
    OtherSize,
    /// The stock fill has another number of compartments than the pattern.
    OtherFill,
}

impl fmt::Display for DocumentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Set(error) => error.fmt(f),
            Self::OtherCompartments => f.write_str(
                "the recorded plan has other compartments than the layout now has; record a new plan",
            ),
            Self::OtherSize => f.write_str(
                "the recorded plan is for another size than the cushion now has; record a new plan",
            ),
            Self::OtherFill => f.write_str(
                "the stock fill is for another pattern than the one drawn; compute it anew",
            ),
        }
    }
}

impl std::error::Error for DocumentError {}

impl From<SetError> for DocumentError {
    fn from(error: SetError) -> Self {
        Self::Set(error)
    }
}

impl<'a> ClientPapers<'a> {
    /// How the fitting of this plan stands; until a check holds, everything is an estimate.
    ///
    /// A check of another plan is none of this one, and a plan that nobody carried out has none.
    fn standing(&self) -> Standing<'a> {
        let standing = case::state(self.client, self.date, self.beside);
        let own = self.client.counts_on_paper();
        let own = own.is_some_and(|own| own.counts == self.plan.counts);
        if own && !self.client.plan_is_proposed() {
            standing
        } else {
            Standing { state: State::Estimate, ..standing }
        }
    }

    /// Whether no check holds.
    fn is_estimate(&self) -> bool {
        self.standing().fitted().is_none()
    }

    /// The cells that the spare bag holds once the plan is carried out.
    fn spares(&self) -> u32 {
        u32::try_from(self.client.spare_cells_left()).unwrap_or(0)
    }

    /// Refuses a plan that is not for this pattern.
    fn counts_fit(&self) -> Result<(), DocumentError> {
        let there = self.pattern.compartments();
        let same = there.len() == self.plan.counts.len()
            && there
                .iter()
                .zip(&self.plan.counts)
                .all(|(there, count)| there.id == count.id && there.number == count.number);
        if !same {
            return Err(DocumentError::OtherCompartments);
        }
        if self.plan.size != self.pattern.size() {
            return Err(DocumentError::OtherSize);
        }
        Ok(())
    }

    /// The plugin that drew the pattern, where one did.
    #[must_use]
    pub fn drawn_by(&self) -> Option<DrawnBy<'_>> {
        let plugin = self.plan.drawn_by.as_ref()?;
        Some(DrawnBy { plugin, layout: &self.plan.layout_digest })
    }

    fn document(&self, title: &str, subject: &str) -> Document {
        document(self.language, title, subject, self.date, self.program)
    }

    /// The same with the text of the code, which the PDF carries too.
    fn document_with_code(&self, title: &str, subject: &str) -> Document {
        let about = self.language.shared().attached_code;
        let attached = |text: &str| Attached { about: about.to_owned(), text: text.to_owned() };
        Document { attached: self.code.map(attached), ..self.document(title, subject) }
    }

    /// Composes a document whose pages flow, each with its head and, at its foot, some lines and who
    /// drew the pattern.
    fn flowing(
        &self,
        paper: Paper,
        [title, subject]: [&'static str; 2],
        foot: &[&str],
        set: impl FnOnce(&mut Flow<'_>) -> Result<(), SetError>,
    ) -> Result<Document, DocumentError> {
        let drawn_by = self.drawn_by().map(|plugin| plugin.said(self.language));
        let lines: Vec<&str> = foot.iter().copied().chain(drawn_by.as_deref()).collect();
        let begin = |_| {
            let mut page = Page::new(self.language, paper, title);
            let end = look::foot(&mut page, &lines)?;
            let area = look::inside(&page);
            let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..area });
            self.head(&mut frame, title)?;
            let left = Rect { y0: frame.y(), ..frame.area() };
            Ok((page, left))
        };
        let mut flow = Flow::new(&begin)?;
        set(&mut flow)?;
        let mut document = self.document(title, subject);
        document.pages = self.identified(flow.pages())?;
        Ok(document)
    }

    /// Begins a page at its head: room for the strip that [`Self::identified`] draws, the title,
    /// how the fitting stands and when it is looked at again.
    fn head(&self, frame: &mut Frame<'_>, title: &str) -> Result<(), SetError> {
        self.head_with(frame, title, self.language.fill_card_state(self.standing()))
    }

    /// The same with other words for how the fitting stands.
    fn head_with(
        &self,
        frame: &mut Frame<'_>,
        title: &str,
        status: String,
    ) -> Result<(), SetError> {
        self.identity().head(self.language, frame, title, (status, self.is_estimate()))
    }

    /// Draws on each page by what it is known again, and the line by which it is struck through.
    fn identified(&self, pages: Vec<Page>) -> Result<Vec<Page>, SetError> {
        self.identity().on(self.language, pages)
    }

    /// By what the pages are known again.
    fn identity(&self) -> Identity<'_> {
        let standing = self.standing();
        // How a fitting stands says itself that the review of it is overdue.
        let said = standing.fitted().is_some() && matches!(standing.review, Review::Overdue(_));
        Identity {
            code: &self.client.code,
            serial: self.serial,
            pattern: self.pattern,
            mark: Some(self.mark),
            review: if said { Review::None } else { standing.review },
        }
    }
}

/// Which compartments are of the client's left, by their place in the pattern.
fn of_clients_left(pattern: &Pattern) -> Vec<usize> {
    let left = pattern.indices().filter(|ix| pattern[*ix].side == Some(Side::Left));
    left.map(CompartmentIx::index).collect()
}

fn document(
    language: &dyn Language,
    title: &str,
    subject: &str,
    date: Date,
    program: &str,
) -> Document {
    Document {
        title: title.to_owned(),
        subject: subject.to_owned(),
        language: language.tag().to_owned(),
        date,
        program: program.to_owned(),
        pages: Vec::new(),
        attached: None,
    }
}

/// The papers that one prints on.
pub const PAPERS: [Paper; 2] = [Paper::A4, Paper::Letter];
