//! What the program says of its own doing, each of it once: for the sweeps over languages.

use case::{Date, FileKind, Said, Why};
use cushion::{Length, Mass, Size};
use words::{
    Advice, Begun, CallFault, ContourNumber, ContourSaid, Done, FileFault, LANGUAGES, Language,
    Level, OutputFault, PageFault, ProgramFault, SupplierFault, Told,
};

use crate::papers::faults;

const DAY: Date = Date::constant(2026, 3, 4);

/// What is said of doing, without what is to be done about it.
pub(crate) fn told(say: &dyn Language) -> Vec<String> {
    let mut all: Vec<String> = done().iter().map(|own| say.done(own)).collect();
    all.extend(begun().iter().map(|own| say.begun(own)));
    all.extend(known().iter().map(|own| say.told(own)));
    all.extend(plugins().iter().map(|own| say.told(own)));
    all.extend(contour().iter().map(|own| say.contour(own)));
    all.extend(numbers().map(|own| say.contour_number(own)));
    all.extend(Level::ALL.map(|own| say.level(own).to_owned()));
    all.extend(FileKind::ALL.map(|own| say.file_kind(own).to_owned()));
    all.extend(advice().map(|own| say.advice(&own)));
    all
}

/// Why something is not done, and what to do.
pub(crate) fn not_done(say: &dyn Language) -> Vec<Said> {
    let mut all: Vec<Said> = calls().iter().map(|own| say.call_fault(own)).collect();
    all.extend(outputs().iter().map(|own| say.output_fault(own)));
    all.extend(suppliers().iter().map(|own| say.supplier_fault(own)));
    all.extend(files().iter().map(|own| say.file_fault(own)));
    let own = [ProgramFault::Ours { place: "x" }, ProgramFault::Gone { why: "x" }];
    all.extend(own.map(|own| say.program_fault(&own)));
    all.extend(pages().iter().map(|own| say.page_fault(own)));
    all
}

fn done() -> [Done<'static>; 9] {
    let file = "K-17.toml";
    [
        Done::Recorded { file, by: Some("OT") },
        Done::Recorded { file, by: None },
        Done::MovesNotRecorded { file },
        Done::NotRecorded { command: "seatwright plan K-17.toml --record" },
        Done::NothingRecorded,
        Done::Entry { number: 3, file },
        Done::InTheCushion,
        Done::Changed { file, remarks: "0" },
        Done::WhyLooksForMistakes,
    ]
}

fn begun() -> [Begun<'static>; 8] {
    let file = "K-17.toml";
    [
        Begun::Client { file },
        Begun::Layout { file },
        Begun::Cell { file },
        Begun::Plugin { folder: "mine", commands: "  cargo build" },
        Begun::Schema { file, kind: "x" },
        Begun::ReportSchema { file },
        Begun::Restored { file },
        Begun::Demo { code: "DEMO-1", files: "  a.pdf", first: ["a.pdf", "b.pdf", "c.pdf"] },
    ]
}

fn known() -> Vec<Told<'static>> {
    let (file, code, entries) = ("K-17.toml", "K-17", &[(3, DAY), (5, DAY)]);
    vec![
        Told::Holds { file, code, serial: Some("A-7"), entries, refilled: Some(DAY) },
        Told::Holds { file, code, serial: None, entries: &[(3, DAY)], refilled: None },
        Told::Recall { holds: 0, looked_at: 1, batch: "7" },
        Told::Recall { holds: 2, looked_at: 21, batch: "7" },
        Told::DrawnBy { plugin: "combs", digest: "0f" },
        Told::Pieces,
        Told::PageIsOpen { folder: "clients", address: "http://127.0.0.1/" },
        Told::NoBrowser,
        Told::Bodies,
    ]
}

fn plugins() -> Vec<Told<'static>> {
    let size = size();
    let (ends, unit) = ([0.5, 20.0], "mm");
    vec![
        Told::PluginDraws { file: "a.toml", plugin: "combs", size, digest: "0f" },
        Told::TrustInPlugins,
        Told::NoPlugins,
        Told::NoneWasRun,
        Told::From { file: "combs.so" },
        Told::Setting { ends, unit, standard: Some(1.5), measure: Some("x") },
        Told::Setting { ends, unit, standard: None, measure: None },
        Told::Compartments { count: 1 },
        Told::Compartments { count: 6 },
        Told::NotDrawn { refused: true },
        Told::NotDrawn { refused: false },
    ]
}

fn contour() -> Vec<ContourSaid<'static>> {
    const TILTS: &[(u32, Option<Length>)] = &[(1, Some(Length::from_mm(1.5))), (4, None)];
    let mm = Length::from_mm;
    vec![
        ContourSaid::Title { title: "X", size: size() },
        ContourSaid::Step { step: mm(25.0), found: Some((true, mm(40.0), mm(2.5))) },
        ContourSaid::Step { step: mm(25.0), found: Some((false, mm(40.0), mm(2.5))) },
        ContourSaid::Step { step: mm(40.0), found: None },
        ContourSaid::Board {
            board: [mm(300.0), mm(250.0)],
            forward: mm(130.0),
            load: Mass::from_kg(30.0),
            compartments: [1, 2],
        },
        ContourSaid::Tilts { give: 0.0, tilts: TILTS },
        ContourSaid::Tilts { give: 0.35, tilts: TILTS },
        ContourSaid::MadeWith,
        ContourSaid::Mark { seen: true },
        ContourSaid::Mark { seen: false },
        ContourSaid::Claims,
    ]
}

fn numbers() -> [ContourNumber; 10] {
    [
        ContourNumber::CylindersApart,
        ContourNumber::ButtonsApart,
        ContourNumber::GrowingWithWidth(120),
        ContourNumber::Steps,
        ContourNumber::StepsAre([25, 40]),
        ContourNumber::LineOfParts,
        ContourNumber::FirstLoad,
        ContourNumber::Overload,
        ContourNumber::Reserve,
        ContourNumber::FurtherSink(5),
    ]
}

fn calls() -> Vec<CallFault<'static>> {
    vec![
        CallFault::NoCompartment { named: "9", known: "1 (a), 2 (b)" },
        CallFault::SettingForNothing { given: "pitch" },
        CallFault::NoEpoch { epoch: "x" },
        CallFault::NoEntry { number: 9, there: 4 },
        CallFault::Nobody,
        CallFault::BagTwice,
        CallFault::PlannedAndCounted,
        CallFault::NoCounts,
        CallFault::AgainstOneLayout,
        CallFault::AgainstALayout,
        CallFault::NothingToWeigh,
        CallFault::NoSizeSuits,
        CallFault::NothingToDraw { outcome: "x" },
    ]
}

fn outputs() -> Vec<OutputFault<'static>> {
    vec![
        OutputFault::CalledOtherwise { output: "a", endings: &["svg", "pdf"], example: "a.svg" },
        OutputFault::OverAnInput { output: "a", input: "b" },
        OutputFault::Twice { output: "a" },
        OutputFault::TheAnswer { why: &Why::DiskFull },
        OutputFault::FolderThere { folder: "a" },
        OutputFault::StaysBeside { first: "a", more: 0 },
        OutputFault::StaysBeside { first: "a", more: 1 },
        OutputFault::StaysBeside { first: "a", more: 2 },
    ]
}

fn suppliers() -> Vec<SupplierFault<'static>> {
    vec![
        SupplierFault::NoFileToWatch { named: "a" },
        SupplierFault::NotWatched { file: "a", why: "x" },
        SupplierFault::NoRangeOfPlugin,
        SupplierFault::NoReviewOfPlugin,
        SupplierFault::PluginNeedsSizes,
        SupplierFault::PluginNeedsSize,
        SupplierFault::NoSizeOfLayout { layout: "a" },
        SupplierFault::ListsItsSizes { layout: "a" },
        SupplierFault::SizeTwice { size: size() },
        SupplierFault::NoBodyInPart { count: 3 },
        SupplierFault::NamesNoOrder { file: "a", longest: 24 },
        SupplierFault::OverloadTooLow,
        SupplierFault::NoPluginName { named: "A" },
        SupplierFault::RefusedEverywhere { plugin: "combs" },
        SupplierFault::WrongAt { plugin: "combs", wrong: 1, sizes: 3 },
    ]
}

fn files() -> Vec<FileFault<'static>> {
    vec![
        FileFault::CannotBeUsed { file: "a", remarks: "0" },
        FileFault::SomeCannotBeUsed { wrong: 1, files: 3 },
        FileFault::Unread { files: "a, b" },
    ]
}

fn pages() -> [PageFault<'static>; 6] {
    let why = "x";
    [
        PageFault::NoReport,
        PageFault::NoFolder { named: "a" },
        PageFault::NoThreads { why },
        PageFault::Port { why },
        PageFault::NoLot,
        PageFault::Ended { why },
    ]
}

fn advice() -> [Advice<'static>; 10] {
    [
        Advice::RecordAPlan { file: "K-17.toml" },
        Advice::GiveTheRest,
        Advice::NothingWritten,
        Advice::CheckSaysWhere,
        Advice::TakeSettingAway { given: "pitch" },
        Advice::GiveSetting { parameter: "pitch" },
        Advice::NamePlugin,
        Advice::NamePluginOfCode,
        Advice::NameLayoutOfCode,
        Advice::NameCellOfCode,
    ]
}

fn size() -> Size {
    "440x400".parse().expect("it is a size")
}

#[test]
fn why_something_is_not_done_is_a_clause_with_what_to_do_beside_it() {
    for say in LANGUAGES {
        for Said { message, hint } in not_done(say) {
            for said in [Some(&message), hint.as_ref()].into_iter().flatten() {
                // Endings of files, and the letters that a file's name may have.
                let plain = said.replace("=...", "=").replace("_ .", "_");
                let plain = plain.replace(".svg", "svg").replace(".csv", "csv");
                assert_eq!(faults(&plain), Vec::<String>::new());
                assert!(!said.ends_with('.'), "{said}");
            }
        }
    }
}

#[test]
fn what_a_bar_counts_with_stands_in_every_language() {
    for say in LANGUAGES {
        let bar = say.told(&Told::Bar { of: "x" });
        for part in ["{pos}", "{len}", "{eta}", "x"] {
            assert!(bar.contains(part), "{bar}");
        }
    }
}
