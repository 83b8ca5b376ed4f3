//! Times of papers, without what takes mechanics: all of the demo client's, composed and written as
//! SVG and PDF.
//!
//! `cargo bench -p casework papers`. Read the medians as ratios to each other.

use casework::{Edition, OnPaper, OpenCase, PapersOfClient, Surroundings, Wanted, export};
use divan::{Bencher, black_box};
use files::BuiltIn;
use sheets::Paper;
use testkit::MemoryShelf;

const FILE: &str = "DEMO-1.toml";
const CLIENT: &str = include_str!("../../cli/demo/client.toml");
const EDITION: Edition = Edition {
    language: words::ENGLISH,
    on: case::Date::constant(2026, 2, 24),
    paper: Paper::A4,
    large_print: false,
    client_in_code: false,
};

fn main() {
    divan::main();
}

fn ready() -> (OpenCase, OnPaper) {
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let case = OpenCase::open(surroundings, FILE).expect("the client's file is right");
    let on_paper = case.on_paper(EDITION.on).expect("there is a plan");
    (case, on_paper)
}

fn composed((case, on_paper): &(OpenCase, OnPaper)) -> PapersOfClient {
    case.composed(EDITION, on_paper).expect("the papers can be made")
}

/// Pages of values.
#[divan::bench]
fn papers_composed(bencher: Bencher<'_, '_>) {
    let ready = ready();
    bencher.bench_local(|| black_box(composed(&ready)));
}

/// Pages of values, and their files.
#[divan::bench]
fn papers_composed_and_written(bencher: Bencher<'_, '_>) {
    let ready = ready();
    bencher.bench_local(|| {
        let papers = composed(&ready).papers;
        black_box(export(&papers.made, Wanted::default()).expect("the files can be made"))
    });
}
