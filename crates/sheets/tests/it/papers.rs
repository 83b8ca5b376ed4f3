//! An invented client's papers, for tests.

use case::text::LengthUnit;
use case::{Caution, Client, Date, Digest, Entry, FittingCheck, RecordedCount, RecordedPlan};
use cushion::{Cell, CompartmentFill, CountRange, Length, Pattern, Pressure, StockFill, Volume};
use sheets::{BlankForm, ClientPapers, Document, DrawnBy, Page, Paper, SetupExtras, StockPapers};

/// As long as a code may be: 150 signs.
pub(crate) const CODE: &str = "SW1/CURVED-TEN-LONGER/3C257961F9/PILLOW-25-LARGE/1838B34848/609.6X558.8/13\
    8-150-131-130-138-134-140-142-147-143/12/7GES/SX-0142-LONGER-7-OLD//27B73960";

pub(crate) const DAY: Date = Date::constant(2026, 3, 4);
pub(crate) const PROGRAM: &str = "seatwright 0.0.0";

/// Everything that papers are made from, with counts that are easy to know again.
pub(crate) struct Case {
    pub(crate) language: &'static dyn words::Language,
    pub(crate) client: Client,
    pub(crate) plan: RecordedPlan,
    pub(crate) pattern: Pattern,
    pub(crate) cell: Cell,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) extras: SetupExtras,
    pub(crate) mark: case::PlanMark,
    pub(crate) fill: StockFill,
}

impl Case {
    pub(crate) fn of(layout: &str, size: &str) -> Self {
        let pattern = testkit::pattern(layout, size);
        let text = files::starter::example(words::ENGLISH);
        let client = files::read_client(&text).value.unwrap();
        let digest = Digest::new("0123456789abcdef").unwrap();
        let counts: Vec<RecordedCount> = pattern
            .compartments()
            .iter()
            .map(|there| RecordedCount {
                id: there.id.clone(),
                number: there.number,
                stock: 60 + u32::from(there.number),
                planned: 70 + 2 * u32::from(there.number),
            })
            .collect();
        let fill = StockFill {
            pressure: Pressure::from_pa(500.0),
            compartments: counts.iter().map(|count| compartment(count.stock)).collect(),
        };
        let plan = RecordedPlan {
            on: DAY,
            by: "OT".into(),
            layout: layout.into(),
            size: pattern.size(),
            counts,
            program: PROGRAM.into(),
            layout_digest: digest.clone(),
            cell_digest: digest.clone(),
            parameters_digest: digest,
            drawn_by: None,
            why: None,
            expected: None,
        };
        let mut case = Self {
            language: words::ENGLISH,
            client,
            plan,
            pattern,
            cell: testkit::cell(),
            cautions: Vec::new(),
            fill,
            extras: SetupExtras::default(),
            mark: case::PlanMark { number: 2, word: "K7QF".to_owned() },
        };
        case.client.record = vec![Entry::Plan(case.plan.clone())];
        case
    }

    pub(crate) fn fitted(mut self) -> Self {
        self.client.record.push(checked(Some(true)));
        self
    }

    /// The same with one more entry in the record.
    pub(crate) fn then(mut self, entry: Entry) -> Self {
        self.client.record.push(entry);
        self
    }

    pub(crate) fn papers(&self) -> ClientPapers<'_> {
        ClientPapers {
            code: Some(CODE),
            language: self.language,
            handed_over_in: None,
            serial: self.client.serial(),
            client: &self.client,
            plan: &self.plan,
            pattern: &self.pattern,
            cell: &self.cell,
            cautions: &self.cautions,
            extras: &self.extras,
            large_print: false,
            mark: &self.mark,
            beside: case::Beside::default(),
            date: DAY,
            program: PROGRAM,
        }
    }

    pub(crate) fn stock_papers(&self) -> StockPapers<'_> {
        let (pattern, fill, cell) = (&self.pattern, &self.fill, &self.cell);
        let (language, plan) = (self.language, &self.plan);
        let plugin = plan.drawn_by.as_deref();
        let drawn_by = plugin.map(|plugin| DrawnBy { plugin, layout: &plan.layout_digest });
        let digest = &plan.layout_digest;
        let (heights, finished) = (self.extras.heights.as_slice(), self.extras.finished);
        StockPapers {
            language,
            pattern,
            fill,
            cell,
            digest,
            heights,
            finished,
            drawn_by,
            date: DAY,
            program: PROGRAM,
        }
    }
}

/// A fitting check that says so much about whether it passed.
pub(crate) fn checked(passed: Option<bool>) -> Entry {
    Entry::FittingCheck(FittingCheck { on: DAY, by: "OT".into(), passed, found: None })
}

pub(crate) fn compartment(stock: u32) -> CompartmentFill {
    CompartmentFill {
        crown: Length::from_mm(10.0),
        volume: Volume::from_litres(2.0),
        packing: 0.55,
        cells: CountRange { low: stock - 5, stock, high: stock + 5 },
    }
}

/// The blank form that asks lengths in a unit.
pub(crate) fn blank_form(unit: LengthUnit, paper: Paper) -> Document {
    let form = BlankForm { language: words::ENGLISH, unit, date: DAY, program: PROGRAM };
    sheets::blank_form(&form, paper).unwrap()
}

/// All texts of a page.
pub(crate) fn texts(page: &Page) -> Vec<String> {
    page.texts().map(|run| run.shaped.text()).collect()
}
