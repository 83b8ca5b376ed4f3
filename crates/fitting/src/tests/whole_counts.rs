//! The witness of whole counts: every count around the answer, tried.

use case::{Goal, Want};
use cushion::{Length, Mass, Side};
use mechanics::Stop;

use crate::goals::aims::{Filling, Slopes};
use crate::goals::limits::{Reference, limits};
use crate::goals::needs::Needs;
use crate::goals::wanted::GoalReader;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::search::steps::Search;

struct Bench {
    cushion: PreparedCushion,
    client: case::Client,
}

impl Bench {
    fn new(layout: &str, spacing: f64, wants: &[Want]) -> Self {
        let pattern = testkit::pattern(layout, "440x400");
        let spacings = Spacings::all(Length::from_mm(spacing));
        let text = format!(
            "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
             [measures]\nunits = \"mm\"\nhip_width = 390\n\
             thigh_depth = {{ left = 470, right = 480 }}\n\
             [weight]\nkg = 74\nweighed_on = 2026-03-01\n\
             [cushion]\nlayout = \"{layout}\"\nsize = \"440x400\"\nspare_cells = 20\n"
        );
        let mut client = files::read_client(&text).value.expect("a client");
        client.goals = wants.iter().map(|want| Goal { want: *want, because: None }).collect();
        let cushion =
            PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion");
        Self { cushion, client }
    }

    /// Calls with a search for the client's goals, and the stock fill.
    fn with<T>(&self, then: impl FnOnce(&mut Search<'_>, Filling) -> T) -> T {
        let (cushion, pattern) = (&self.cushion, self.cushion.pattern());
        let set = assumptions_of(&self.client, cushion, Mass::from_kg(74.0), Stop::never())
            .expect("a body");
        let meshes = SearchMeshes::new(cushion, &set, Stop::never()).expect("a body");
        let home: Vec<f64> =
            pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.stock)).collect();
        let high = pattern.indices().map(|ix| f64::from(cushion.stock()[ix].cells.high));
        let mut search = Search {
            bounds: high.map(|high| [1.0, high]).collect(),
            home: home.clone(),
            groups: (0..home.len()).map(|at| vec![at]).collect(),
            ..Search::solving_only(cushion, &meshes)
        };
        let stock = search.filled(&home, None).expect("the client rests");
        let needs = Needs::of(&self.client);
        let reader = GoalReader { needs: &needs, pattern, meshes: &meshes, stock: &stock };
        let reference = Reference { now: &stock, passed: None };
        let mut aims = limits(&needs, pattern, reference, [0.0255; 2]);
        aims.extend(reader.wanted().into_iter().flat_map(|goal| goal.aims.expect("it has aims")));
        search.aims = aims;
        then(&mut search, stock)
    }
}

fn wants() -> [Want; 2] {
    let site = case::SiteName::SeatBone(Side::Left);
    [Want::OffLoad { site, share: 0.08 }, Want::Shelf { height: Length::from_mm(6.0) }]
}

/// The best whole counts around a filling, solved anew.
fn whole(search: &Search<'_>, best: &Filling, slopes: Slopes) -> Filling {
    let found = search.best_whole_counts(best, slopes).expect("there are whole counts").0;
    search.filled(&found.counts, Some(best)).expect("the client rests")
}

/// All 729 counts within one cell of the answer, on a coarse mesh of six compartments.
#[test]
fn no_count_around_the_answer_is_better() {
    Bench::new("row-six", 16.0, &wants()).with(|search, stock| {
        let (best, slopes) = search.best(stock, None).expect("there are slopes");
        let whole = whole(search, &best, slopes);
        let score = search.score(&whole);
        let mut tried = 0;
        for code in 0..3usize.pow(6) {
            let counts: Vec<f64> = (whole.counts.iter().enumerate())
                .map(|(at, count)| count + ((code / 3usize.pow(at as u32)) % 3) as f64 - 1.0)
                .collect();
            let filling = search.filled(&counts, Some(&whole)).expect("the client rests");
            tried += 1;
            let there = search.score(&filling);
            // What decides nothing: a step of a rank, or a tenth of harm and cells, which several small
            // gains can be.
            let no_better =
                there.ranks.iter().zip(&score.ranks).all(|(there, own)| there + 1 >= *own);
            let no_nearer = there.ranks != score.ranks || there.rest >= 0.9 * score.rest;
            assert!(no_better && no_nearer, "{counts:?} {there:?}, {:?} {score:?}", whole.counts);
        }
        assert_eq!(tried, 729);
    });
}

#[test]
fn whole_counts_are_no_worse_than_rounding() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        Bench::new(layout, 12.0, &wants()).with(|search, stock| {
            let (best, slopes) = search.best(stock, None).expect("there are slopes");
            let rounded: Vec<f64> = best.counts.iter().map(|count| count.round()).collect();
            let rounded = search.filled(&rounded, Some(&best)).expect("the client rests");
            let whole = whole(search, &best, slopes);
            assert!(search.score(&whole) <= search.score(&rounded), "{layout}");
        });
    }
}

/// Two cells more than an answer, where they do nothing for any goal, are taken out again; what an
/// answer reaches is kept.
#[test]
fn what_does_as_well_with_fewer_cells_is_found() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        Bench::new(layout, 16.0, &wants()).with(|search, stock| {
            let (best, slopes) = search.best(stock, None).expect("there are slopes");
            let whole = whole(search, &best, slopes);
            let spare = (0..whole.counts.len()).rev().find(|at| {
                let mut counts = whole.counts.clone();
                counts[*at] = search.home[*at] + 2.0;
                let filling = search.filled(&counts, Some(&whole)).expect("the client rests");
                search.does_as_well(&search.offs(&whole), &filling)
            });
            let spare = spare.expect("some compartment serves no goal");
            let mut counts = whole.counts.clone();
            counts[spare] = search.home[spare] + 2.0;
            let more = search.filled(&counts, Some(&whole)).expect("the client rests");
            let found = search.smaller(&more).expect("two cells do nothing");
            assert_eq!(found.counts[spare], search.home[spare], "{layout} {counts:?}");
            assert!(search.score(&found).rest < search.score(&more).rest, "{layout}");
            assert!(search.does_as_well(&search.offs(&more), &found), "{layout}");
            let home = search.filled(&search.home, None).expect("the client rests");
            assert!(search.smaller(&home).is_none(), "{layout}: nothing is moved for nothing");
            assert!(!search.does_as_well(&search.offs(&whole), &home), "{layout}: goals are lost");
            let fewer: Vec<f64> = whole.counts.iter().map(|count| (0.7 * count).round()).collect();
            let low = search.filled(&fewer, Some(&whole)).expect("the client rests");
            assert!(search.offs(&low)[0] > 0.0, "{layout}: too little is left under a bone");
            assert!(!search.does_as_well(&search.offs(&whole), &low), "{layout}: limits are lost");
        });
    }
}
