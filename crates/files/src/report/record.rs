//! The reports on the record: what was added, its history, and a recall.

use case::{CushionNow, Entry, Finding, Moment};
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::standing::{CellsBody, CushionBody, StandingReport};
use super::{json, rounded};

/// An entry of the record.
#[derive(Serialize, JsonSchema)]
struct EntryBody {
    entry: usize,
    on: String,
    by: String,
    what: &'static str,
    text: String,
}

/// How an entry is said.
pub type SayEntry<'a> = &'a dyn Fn(&Entry) -> String;

impl EntryBody {
    fn new(number: usize, entry: &Entry, say: SayEntry<'_>) -> Self {
        Self {
            entry: number,
            on: entry.on().to_string(),
            by: entry.by().to_owned(),
            what: entry.what(),
            text: say(entry),
        }
    }
}

/// What is reported of a record.
pub struct RecordReport<'a> {
    /// The client's code.
    pub client: &'a str,
    /// How the fitting stands; none where it cannot be known.
    pub standing: Option<StandingReport>,
    /// What is in the cushion; none where nothing says so.
    pub now: Option<CushionNow>,
    /// What should be known first.
    pub notes: Vec<Finding>,
}

/// What was added to a record.
#[derive(Serialize, JsonSchema)]
pub(super) struct RecordBody<'a> {
    client: &'a str,
    entries: Vec<EntryBody>,
    standing: Option<StandingReport>,
    in_cushion: Option<CushionBody>,
}

/// Returns the report on entries that were added to a record, each with its number.
#[must_use]
pub fn record(
    program: &str,
    own: &RecordReport<'_>,
    added: &[(usize, &Entry)],
    say: (Say<'_>, SayEntry<'_>),
) -> String {
    let body = RecordBody {
        client: own.client,
        entries: added.iter().map(|(at, entry)| EntryBody::new(*at, entry, say.1)).collect(),
        standing: own.standing.clone(),
        in_cushion: own.now.as_ref().map(CushionBody::from),
    };
    json("record", program, FindingBody::all(&own.notes, say.0), body)
}

/// An entry with what was known at it.
#[derive(Serialize, JsonSchema)]
struct MomentBody {
    #[serde(flatten)]
    entry: EntryBody,
    withdrawn: bool,
    counts: Option<Vec<CellsBody>>,
    bag: Option<i64>,
    weight_kg: Option<f64>,
    expected: Option<ExpectedBody>,
    found: Vec<String>,
}

/// What a plan was expected to do.
#[derive(Serialize, JsonSchema)]
struct ExpectedBody {
    left_mm: f64,
    right_mm: f64,
    lower_side: &'static str,
    lower_mm: f64,
    weight_kg: f64,
}

impl MomentBody {
    fn new(own: &Moment<'_>, say: SayEntry<'_>) -> Self {
        let expected = own.expected.map(|own| ExpectedBody {
            left_mm: rounded(own.under.left.to_mm()),
            right_mm: rounded(own.under.right.to_mm()),
            lower_side: own.lower.map_or("level", |(side, _)| side.words()),
            lower_mm: own.lower.map_or(0.0, |(_, by)| rounded(by.to_mm())),
            weight_kg: rounded(own.weight.to_kg()),
        });
        Self {
            entry: EntryBody::new(own.number, own.entry, say),
            withdrawn: own.withdrawn,
            counts: own.cells.as_ref().map(CellsBody::all),
            bag: own.bag,
            weight_kg: own.weight.map(|own| rounded(own.to_kg())),
            expected,
            found: own.found.iter().map(ToString::to_string).collect(),
        }
    }
}

/// The history of a record.
#[derive(Serialize, JsonSchema)]
pub(super) struct HistoryBody<'a> {
    client: &'a str,
    entries: Vec<MomentBody>,
    standing: Option<StandingReport>,
    in_cushion: Option<CushionBody>,
}

/// Returns the report on the history of a record, or on some of its entries.
#[must_use]
pub fn history(
    program: &str,
    own: &RecordReport<'_>,
    moments: &[Moment<'_>],
    say: (Say<'_>, SayEntry<'_>),
) -> String {
    let body = HistoryBody {
        client: own.client,
        entries: moments.iter().map(|own| MomentBody::new(own, say.1)).collect(),
        standing: own.standing.clone(),
        in_cushion: own.now.as_ref().map(CushionBody::from),
    };
    json("history", program, FindingBody::all(&own.notes, say.0), body)
}

/// A cushion into which cells of a batch were put.
pub struct Held<'a> {
    /// The client's file.
    pub file: &'a str,
    /// The client's code.
    pub client: &'a str,
    /// The serial of the cushion.
    pub serial: Option<&'a str>,
    /// The entries that say so, with their days.
    pub entries: Vec<(usize, String)>,
    /// The day on which it was filled with another batch since.
    pub refilled: Option<String>,
}

#[derive(Serialize, JsonSchema)]
struct HeldBody<'a> {
    path: &'a str,
    client: &'a str,
    serial: Option<&'a str>,
    put_in: Vec<PutInBody>,
    refilled_on: Option<&'a str>,
}

#[derive(Serialize, JsonSchema)]
struct PutInBody {
    entry: usize,
    on: String,
}

/// A recall.
#[derive(Serialize, JsonSchema)]
pub(super) struct FindBody<'a> {
    batch: &'a str,
    looked_at: usize,
    found: Vec<HeldBody<'a>>,
    unread: &'a [String],
}

/// Returns the report on a recall: whose cushions hold a batch, of how many files, and which could
/// not be read.
#[must_use]
pub fn find(
    program: &str,
    batch: &str,
    held: &[Held<'_>],
    looked_at: usize,
    unread: &[String],
) -> String {
    let found = held.iter().map(|own| HeldBody {
        path: own.file,
        client: own.client,
        serial: own.serial,
        put_in: (own.entries.iter())
            .map(|(entry, on)| PutInBody { entry: *entry, on: on.clone() })
            .collect(),
        refilled_on: own.refilled.as_deref(),
    });
    let body = FindBody { batch, looked_at, found: found.collect(), unread };
    json("find", program, Vec::new(), body)
}
