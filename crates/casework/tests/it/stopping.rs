//! Work that is told to stop: it ends soon, without an answer, and so nothing can be recorded.

use std::sync::atomic::{AtomicU32, Ordering::Relaxed};

use case::{Check, Date};
use casework::{OpenCase, Recorder, Shelf, Surroundings, Whose, WorkError};
use files::BuiltIn;
use fitting::Progress;
use mechanics::Stop;
use testkit::MemoryShelf;

const DAY: Date = Date::constant(2026, 3, 2);
const FILE: &str = "T-3.toml";
const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-3\"\n\
     [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = { left = 480, right = 480 }\n\
     [weight]\nkg = 72\nweighed_on = 2026-02-10\n\
     [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";
const OT: Recorder<'_> = Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };

/// How often work may still ask after it was told to stop: once for each search that it had in
/// mind, of which the most are those of a spread, two for each of eight unknowns. Each is a
/// question and no step, so the rest takes no time to speak of.
const SOON: u32 = 200;

/// Work on a case; what it gives is recorded.
type Work = dyn Fn(&OpenCase, &MemoryShelf, Stop<'_>) -> Result<(), WorkError>;

fn plan(case: &OpenCase, shelf: &MemoryShelf, stop: Stop<'_>) -> Result<(), WorkError> {
    let plan = case.plan(DAY, stop)?;
    case.record_plan(shelf, &plan, true, &OT).map(drop)
}

fn adjust(case: &OpenCase, shelf: &MemoryShelf, stop: Stop<'_>) -> Result<(), WorkError> {
    let now = case.counts_now(DAY, Stop::never())?;
    let checks = [Check::read("under", "left=31mm").unwrap()];
    let adjusted = case.adjust(&now, &checks, DAY, stop)?;
    case.record_adjustment(shelf, &checks, &adjusted, false, &OT).map(drop)
}

fn predict(case: &OpenCase, _: &MemoryShelf, stop: Stop<'_>) -> Result<(), WorkError> {
    let now = case.counts_now(DAY, Stop::never())?;
    case.predict(&now.counts, stop).map(drop)
}

/// A case with a recorded plan, and the text of its file.
fn recorded() -> (MemoryShelf, OpenCase, Vec<u8>) {
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    let open = || OpenCase::open(Surroundings { shelf: &shelf, layouts: &BuiltIn }, FILE).unwrap();
    let first = open();
    let plan = first.plan(DAY, Stop::never()).unwrap();
    assert!(first.record_plan(&shelf, &plan, false, &OT).unwrap());
    let case = open();
    let text = shelf.read(FILE).unwrap();
    (shelf, case, text)
}

/// Does work that is told to stop at the k-th question; returns its end and how often it asked.
fn stopped_at(
    k: u32,
    stays: bool,
    work: &Work,
    case: &OpenCase,
    shelf: &MemoryShelf,
) -> (Result<(), WorkError>, u32) {
    let asked = AtomicU32::new(0);
    let question = || {
        asked.fetch_add(1, Relaxed);
        asked.load(Relaxed) == k || (stays && asked.load(Relaxed) > k)
    };
    let ended = work(case, shelf, Stop::when(&question));
    (ended, asked.load(Relaxed))
}

#[test]
fn whenever_it_is_told_to_stop_it_ends_soon_and_records_nothing() {
    let (shelf, case, text) = recorded();
    for work in [&plan as &Work, &adjust, &predict] {
        let whole = {
            let (shelf, case, _) = recorded();
            let (ended, whole) = stopped_at(u32::MAX, true, work, &case, &shelf);
            ended.unwrap();
            whole
        };
        assert!(whole > 20, "{whole}");
        // The first and last questions, and eleven between them; also where the question is
        // answered with no again later.
        let between = (1..12).map(|part| part * whole / 12);
        for k in [1, 2, whole - 1, whole].into_iter().chain(between) {
            for stays in [true, false] {
                let (ended, asked) = stopped_at(k, stays, work, &case, &shelf);
                let error = ended.expect_err("told to stop");
                assert_eq!(error.whose, Whose::Asker);
                assert!(asked >= k && asked - k <= SOON, "{asked} of {whole}, stopped at {k}");
                assert_eq!(shelf.read(FILE).unwrap(), text, "stopped at {k} of {whole}");
            }
        }
    }
}

/// A question that comes to be answered with yes only after the last time it is asked changes
/// nothing: what is whole is handed on.
#[test]
fn a_stop_that_comes_too_late_changes_nothing() {
    let (shelf, case, _) = recorded();
    let (_, whole) = stopped_at(u32::MAX, true, &predict, &case, &shelf);
    assert!(stopped_at(whole + 1, true, &predict, &case, &shelf).0.is_ok());
}

#[test]
fn a_plan_that_is_told_to_stop_tells_the_stage_that_it_was_in() {
    let (_, case, _) = recorded();
    let stages = AtomicU32::new(0);
    let tell = |_| {
        stages.fetch_add(1, Relaxed);
    };
    let plan = case.plan_and_tell(DAY, Stop::never(), Progress::to(&tell)).unwrap();
    assert!(stages.load(Relaxed) >= 4 && plan.prediction.is_some());
    // Told at the third stage, the verification.
    stages.store(0, Relaxed);
    let question = || stages.load(Relaxed) >= 3;
    assert!(case.plan_and_tell(DAY, Stop::when(&question), Progress::to(&tell)).is_err());
}
