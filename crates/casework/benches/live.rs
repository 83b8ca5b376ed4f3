//! Times of live work: from changed counts to numbers, for ten compartments on a mesh of 4 mm.
//!
//! `cargo bench -p casework`. Read the medians as ratios to each other: they depend on the machine
//! and on what else it does. [`one_count_changed`] is what somebody waits who changes a count.

use std::cell::Cell;
use std::sync::Arc;

use casework::{LiveAnswer, LiveCase, OpenCase, Surroundings};
use divan::{Bencher, black_box};
use files::BuiltIn;
use testkit::MemoryShelf;

const FILE: &str = "T-5.toml";
const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-5\"\n\
     [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = { left = 480, right = 480 }\n\
     [weight]\nkg = 72\nweighed_on = 2026-02-10\n\
     [cushion]\nlayout = \"curved-ten\"\nsize = \"440x400\"\nspare_cells = 20\n";

fn main() {
    divan::main();
}

fn open() -> Arc<OpenCase> {
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    Arc::new(OpenCase::open(surroundings, FILE).expect("the client's file is right"))
}

fn stock(case: &OpenCase) -> Vec<u32> {
    case.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

/// Takes the next answer, which has numbers.
fn answer(live: &LiveCase) -> LiveAnswer {
    live.next_answer().expect("the worker works")
}

/// Takes answers until nothing follows.
fn finish(live: &LiveCase) {
    while !answer(live).is_last() {}
}

/// Counts of which one changes by a cell from one question to the next, and which do not come again: those
/// that were told before cost no search.
struct Changing {
    stock: Vec<u32>,
    time: Cell<u32>,
}

impl Changing {
    /// A cell more where the Gray code of the time has a one, and in the last compartment for each time
    /// that it has run through.
    fn next(&self) -> Vec<u32> {
        let time = self.time.replace(self.time.get() + 1);
        let (gray, last) = (time ^ (time >> 1), self.stock.len() - 1);
        let mut counts = self.stock.clone();
        for (at, count) in counts.iter_mut().enumerate().take(last) {
            *count += (gray >> at) & 1;
        }
        counts[last] += time >> last;
        counts
    }
}

fn ready() -> (LiveCase, Changing) {
    let case = open();
    let changing = Changing { stock: stock(&case), time: Cell::new(1) };
    let live = LiveCase::start(case, Arc::default()).expect("the client was weighed");
    live.ask(&changing.stock).expect("a count for each");
    finish(&live);
    (live, changing)
}

/// One cell more or fewer, to the central numbers, when the worker has nothing else to do.
#[divan::bench]
fn one_count_changed(bencher: Bencher<'_, '_>) {
    let (live, changing) = ready();
    let asked = || {
        live.ask(&changing.next()).expect("a count for each");
        finish(&live);
        changing.next()
    };
    bencher.with_inputs(asked).bench_local_values(|counts| {
        live.ask(black_box(&counts)).expect("a count for each");
        answer(&live)
    });
}

/// The same while the worker is at the spread of the counts before.
#[divan::bench]
fn one_count_changed_again(bencher: Bencher<'_, '_>) {
    let (live, changing) = ready();
    let counts = || changing.next();
    bencher.with_inputs(counts).bench_local_values(|counts| {
        live.ask(black_box(&counts)).expect("a count for each");
        answer(&live)
    });
}

/// One cell more or fewer, to the spread.
#[divan::bench(sample_count = 20)]
fn one_count_changed_to_the_spread(bencher: Bencher<'_, '_>) {
    let (live, changing) = ready();
    let counts = || changing.next();
    bencher.with_inputs(counts).bench_local_values(|counts| {
        live.ask(black_box(&counts)).expect("a count for each");
        finish(&live);
    });
}

/// From no answer to the central numbers, on a case that is meshed.
#[divan::bench(sample_count = 20)]
fn cold_start(bencher: Bencher<'_, '_>) {
    let case = open();
    let counts = stock(&case);
    finish(&started(&case, &counts));
    bencher.bench_local(|| {
        let live = started(&case, black_box(&counts));
        answer(&live);
        live
    });
}

/// From a client's file to the central numbers: read, draw, mesh, find the stock fill and search.
#[divan::bench(sample_count = 10)]
fn from_the_file(bencher: Bencher<'_, '_>) {
    let counts = stock(&open());
    bencher.bench_local(|| {
        let live = started(&open(), black_box(&counts));
        answer(&live);
        live
    });
}

fn started(case: &Arc<OpenCase>, counts: &[u32]) -> LiveCase {
    let live = LiveCase::start(Arc::clone(case), Arc::default()).expect("the client was weighed");
    live.ask(counts).expect("a count for each");
    live
}
