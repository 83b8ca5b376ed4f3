//! Reports in JSON, for scripts.
//!
//! Every report has `schema` 1, the program with its version, `estimate: true` and `warnings`.
//! Keys are only ever added within one schema.

use case::question::{Question, QuestionWords, Unused};
use case::text::TextFinding;
use case::{Digest, FileKind, Said};
use cushion::{Compartment, CompartmentFill, Pattern, StockFill};
use serde::Serialize;

use crate::{Remark, place_of};

mod adjust;
mod finding;
mod plan;
mod prediction;

pub use self::adjust::{AdjustReport, adjust};
pub use self::finding::Say;
pub use self::plan::plan;
pub use self::prediction::{
    BoardExperiment, BoardTilt, ContourParameter, ContourStep, contour_test, predict,
};

/// The version of the reports' form.
const SCHEMA: u32 = 1;

#[derive(Serialize)]
struct Envelope<'a, W, T> {
    schema: u32,
    program: &'a str,
    estimate: bool,
    warnings: W,
    #[serde(flatten)]
    report: T,
}

fn json<W: Serialize, T: Serialize>(program: &str, warnings: W, report: T) -> String {
    let envelope = Envelope { schema: SCHEMA, program, estimate: true, warnings, report };
    serde_json::to_string_pretty(&envelope).expect("reports hold only text and finite numbers")
        + "\n"
}

/// A number with three decimals at most: more would be noise.
fn rounded(number: f64) -> f64 {
    (number * 1e3).round() / 1e3
}

/// Where a layout comes from.
#[derive(Clone, Copy, Debug)]
pub struct LayoutSource<'a> {
    /// The digest of its text.
    pub digest: &'a Digest,
    /// The plugin that wrote the text, with its version, where one did.
    pub drawn_by: Option<&'a str>,
}

#[derive(Serialize)]
struct PatternReport<'a> {
    layout: &'a str,
    layout_digest: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    drawn_by: Option<&'a str>,
    width_mm: f64,
    depth_mm: f64,
    wall_height_mm: f64,
    unloaded_fill_kpa: f64,
    total_cells: u32,
    compartments: Vec<CompartmentReport<'a>>,
    seams: Vec<SeamReport>,
}

#[derive(Serialize)]
struct CompartmentReport<'a> {
    id: &'a str,
    number: u8,
    words: String,
    #[serde(rename = "for")]
    purpose: &'a str,
    area_mm2: f64,
    centroid_mm: [f64; 2],
    perimeter_mm: f64,
    wall_area_mm2: f64,
    crown_mm: f64,
    volume_ml: f64,
    packing: f64,
    cells: CellsReport,
}

#[derive(Serialize)]
struct CellsReport {
    low: u32,
    stock: u32,
    high: u32,
}

#[derive(Serialize)]
struct SeamReport {
    name: String,
    length_mm: f64,
}

/// Returns the report on a pattern and its stock fill; `say` tells what a compartment is.
#[must_use]
pub fn pattern(
    program: &str,
    source: LayoutSource<'_>,
    pattern: &Pattern,
    fill: &StockFill,
    warnings: &[String],
    say: &dyn Fn(&Compartment) -> String,
) -> String {
    let compartment = |ix| {
        let there = &pattern[ix];
        let CompartmentFill { crown, volume, packing, cells } = fill[ix];
        let centroid = pattern.centroid(ix);
        CompartmentReport {
            id: there.id.as_str(),
            number: there.number,
            words: say(there),
            purpose: there.purpose.words(),
            area_mm2: rounded(pattern.area(ix).to_mm2()),
            centroid_mm: [rounded(centroid.x), rounded(centroid.y)],
            perimeter_mm: rounded(pattern.perimeter(ix).to_mm()),
            wall_area_mm2: rounded(pattern.wall_area(ix).to_mm2()),
            crown_mm: rounded(crown.to_mm()),
            volume_ml: rounded(volume.to_ml()),
            packing: rounded(packing),
            cells: CellsReport { low: cells.low, stock: cells.stock, high: cells.high },
        }
    };
    let seams = pattern.seam_lengths().into_iter();
    let report = PatternReport {
        layout: pattern.layout().as_str(),
        layout_digest: source.digest.as_str(),
        drawn_by: source.drawn_by,
        width_mm: rounded(pattern.size().width().to_mm()),
        depth_mm: rounded(pattern.size().depth().to_mm()),
        wall_height_mm: rounded(pattern.wall_height().to_mm()),
        unloaded_fill_kpa: rounded(fill.pressure.to_kpa()),
        total_cells: fill.total(),
        compartments: pattern.indices().map(compartment).collect(),
        seams: seams
            .map(|(name, length)| SeamReport {
                name: name.to_string(),
                length_mm: rounded(length.to_mm()),
            })
            .collect(),
    };
    json(program, warnings, report)
}

/// One file that was checked.
pub struct CheckedFile<'a> {
    /// The path as it was given.
    pub path: &'a str,
    /// Its text, for the places of the remarks; empty where it could not be read.
    pub text: &'a str,
    /// What it is, where it says so.
    pub kind: Option<FileKind>,
    /// What is to be said about it.
    pub remarks: &'a [Remark],
    /// Questions whose answers in it change nothing, with why not.
    pub unused: &'a [(Question, Unused)],
}

#[derive(Serialize)]
struct CheckReport<'a> {
    files: Vec<FileReport<'a>>,
}

#[derive(Serialize)]
struct FileReport<'a> {
    path: &'a str,
    kind: Option<&'a str>,
    remarks: Vec<RemarkReport>,
    unused: Vec<UnusedReport>,
}

#[derive(Serialize)]
struct UnusedReport {
    key: String,
    why: &'static str,
}

#[derive(Serialize)]
struct RemarkReport {
    id: &'static str,
    severity: &'static str,
    line: usize,
    column: usize,
    message: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<String>,
}

/// How findings about texts are said.
pub type SayFinding<'a> = &'a dyn Fn(&TextFinding) -> Said;

fn remark_reports(text: &str, remarks: &[Remark], say: SayFinding<'_>) -> Vec<RemarkReport> {
    remarks
        .iter()
        .map(|remark| {
            let Said { message, hint } = say(&remark.finding);
            let place = place_of(text, remark.span.start);
            RemarkReport {
                id: remark.finding.id(),
                severity: match remark.severity {
                    cushion::Severity::Error => "error",
                    cushion::Severity::Remark => "remark",
                },
                line: place.line,
                column: place.column,
                message,
                hint,
            }
        })
        .collect()
}

/// Returns the report on checked files.
#[must_use]
pub fn check(
    program: &str,
    files: &[CheckedFile<'_>],
    say: SayFinding<'_>,
    words: &dyn QuestionWords,
) -> String {
    let files = files
        .iter()
        .map(|file| FileReport {
            path: file.path,
            kind: file.kind.map(FileKind::id),
            remarks: remark_reports(file.text, file.remarks, say),
            unused: (file.unused.iter())
                .map(|(question, why)| UnusedReport {
                    key: question.path(),
                    why: words.unused(*why),
                })
                .collect(),
        })
        .collect();
    json(program, Vec::<String>::new(), CheckReport { files })
}

#[derive(Serialize)]
struct ErrorReport<'a> {
    error: ErrorBody<'a>,
}

#[derive(Serialize)]
struct ErrorBody<'a> {
    kind: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<&'a str>,
    message: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<&'a str>,
    remarks: Vec<RemarkReport>,
}

/// A failure.
#[derive(Clone, Copy, Debug)]
pub struct Error<'a> {
    /// Whose move it is.
    pub kind: &'a str,
    /// The word by which programs know it, where there is one.
    pub id: Option<&'a str>,
    /// What is wrong, and what to do.
    pub said: &'a Said,
    /// The text of the file that is wrong, with its remarks.
    pub file: Option<(&'a str, &'a [Remark])>,
}

/// Returns the report on a failure.
#[must_use]
pub fn error(program: &str, error: Error<'_>, say: SayFinding<'_>) -> String {
    let Error { kind, id, said, file } = error;
    let remarks = file.map_or_else(Vec::new, |(text, remarks)| remark_reports(text, remarks, say));
    let (message, hint) = (&*said.message, said.hint.as_deref());
    let error = ErrorBody { kind, id, message, hint, remarks };
    json(program, Vec::<String>::new(), ErrorReport { error })
}
