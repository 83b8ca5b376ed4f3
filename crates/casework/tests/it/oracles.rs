//! Laws that hold for any ordinary client on any built-in layout, on clients by chance.
//!
//! Sixteen of each in every run, the same each time; more by hand, by `PROPTEST_CASES=500`.

use case::{Check, Date, Move, Sides};
use case::{Client, Entry, Mirror, Partners, Place, PredictedSeat, Prediction};
use casework::{CountsNow, Edition, OpenCase, PreparedCushions, Recorder, Surroundings, export};
use cushion::{CompartmentIx, Length, Mass, Pattern, Point, Ring, Side};
use files::BuiltIn;
use fitting::{LivePredictor, PreparedCushion, SiteCut, Spacings};
use mechanics::Stop;
use proptest::prelude::*;
use proptest::test_runner::{RngSeed, TestCaseError, contextualize_config};
use sheets::Paper;
use testkit::MemoryShelf;

use crate::people::{Person, Units, people};

const FILE: &str = "C-1.toml";
const DAY: Date = Date::constant(2026, 3, 2);
const OT: Recorder<'_> = Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };

/// What two searches may differ by that begin elsewhere, m: far below what is printed (0.1 mm),
/// and far above what they leave (1e-9 of the load, over stiffnesses of some 10 N/mm).
const SEARCH: f64 = 1e-6;

fn config() -> ProptestConfig {
    contextualize_config(ProptestConfig {
        cases: 4,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(11),
        // A shrunk case is for whoever reads it, and each step of it plans anew.
        max_shrink_iters: 100,
        ..ProptestConfig::default()
    })
}

/// Meshes on which laws hold as on those whose numbers are given, and which are quicker.
fn spacings() -> Spacings {
    let mm = Length::from_mm;
    Spacings { fine: mm(12.0), coarse: mm(16.0), rough: mm(16.0), roughest: mm(16.0) }
}

fn shelf(person: &Person) -> MemoryShelf {
    MemoryShelf::of([(FILE, &*person.text())])
}

fn client_of(text: &str) -> Client {
    let read = files::read_client(text);
    read.value.unwrap_or_else(|| panic!("{text}\n{:?}", read.remarks))
}

/// Opens the file on the shelf, with meshes of [`spacings`].
fn open(shelf: &MemoryShelf) -> OpenCase {
    let outside = Surroundings { shelf, layouts: &BuiltIn };
    OpenCase::open_with(&PreparedCushions::meshed(spacings()), outside, FILE).unwrap()
}

fn stock(cushion: &PreparedCushion) -> Vec<u32> {
    cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

fn planned(plan: &case::Plan) -> Vec<u32> {
    plan.counts.iter().map(|count| count.planned).collect()
}

/// What moves make of counts, with the cells that went into the bag, less those taken from it;
/// none where a compartment would have to give more than it has.
fn carried_out(pattern: &Pattern, now: &[u32], moves: &[Move]) -> Option<(Vec<u32>, i64)> {
    let mut counts = now.to_vec();
    let mut bag = 0;
    let at = |number: u8| pattern.by_number(number).map(CompartmentIx::index);
    for own in moves {
        match own.from {
            Place::Spare => bag -= i64::from(own.cells),
            Place::Compartment(number) => {
                let count = &mut counts[at(number)?];
                *count = count.checked_sub(own.cells)?;
            }
        }
        match own.to {
            Place::Spare => bag += i64::from(own.cells),
            Place::Compartment(number) => counts[at(number)?] += own.cells,
        }
    }
    Some((counts, bag))
}

/// That moves lead from counts to others, and no place both gives and takes.
fn lead(
    pattern: &Pattern,
    now: &[u32],
    moves: &[Move],
    wanted: &[u32],
) -> Result<(), TestCaseError> {
    let sum = |counts: &[u32]| counts.iter().map(|count| i64::from(*count)).sum::<i64>();
    let (reached, bag) = carried_out(pattern, now, moves).unwrap();
    prop_assert_eq!(&reached, wanted);
    prop_assert_eq!(sum(now), sum(&reached) + bag);
    prop_assert!(moves.iter().all(|own| own.cells > 0));
    for own in moves {
        prop_assert!(moves.iter().all(|other| other.to != own.from), "{moves:?}");
    }
    Ok(())
}

/// The counts that are recorded last in a text.
fn recorded(text: &str) -> Vec<u32> {
    let client = client_of(text);
    client.latest_plan().unwrap().counts.iter().map(|count| count.planned).collect()
}

fn seat(prediction: &Prediction) -> Option<&PredictedSeat> {
    prediction.seated.as_ref()
}

fn record(case: &OpenCase, shelf: &MemoryShelf) -> (case::Plan, bool) {
    let plan = case.plan(DAY, Stop::never()).unwrap();
    let stands = case.record_plan(shelf, &plan, true, &OT).unwrap();
    (plan, stands)
}

/// The compartment at a place, mm, of which the winding of its edges tells.
fn compartment_at(pattern: &Pattern, [x, y]: [f64; 2]) -> Option<CompartmentIx> {
    let at = Point::new(x, y);
    let turns = |ring: &Ring| -> f64 {
        // Curves are never so bent that a sixteenth of one turns by half around a point off it.
        let chords = pattern.pieces(ring).flat_map(|piece| {
            (0..16).map(move |n| [f64::from(n), f64::from(n + 1)].map(|n| piece.eval(n / 16.0)))
        });
        chords.map(|[from, to]| (from - at).cross(to - at).atan2((from - at).dot(to - at))).sum()
    };
    pattern.indices().find(|ix| {
        let own = &pattern[*ix];
        turns(&own.outer) + own.holes.iter().map(turns).sum::<f64>() > 1.0
    })
}

/// The compartment under each seat bone.
fn under_bones(case: &OpenCase) -> Option<Sides<CompartmentIx>> {
    let (client, weight) = (&case.client.value, case.weight().unwrap());
    let (_, cuts) =
        case.cushion.predict(client, weight, &stock(&case.cushion), Stop::never()).unwrap();
    let along = |cut: SiteCut, side: Side| {
        let cut = cuts.iter().find(|own| own.at == cut)?;
        let bone = case::SiteName::SeatBone(side);
        Some(cut.sites.iter().find(|site| site.site == bone)?.at)
    };
    let under = |side| {
        let at = [along(SiteCut::SeatBones, side)?, along(SiteCut::Through(side), side)?];
        compartment_at(&case.pattern, at)
    };
    Some(Sides { left: under(Side::Left)?, right: under(Side::Right)? })
}

/// Left for right, in all the words of a file.
fn words_swapped(text: &str) -> String {
    text.replace("left", "\0").replace("right", "left").replace('\0', "right")
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn totals_moves_and_record_add_up(person in people(), more in prop::collection::vec(-9..9_i32, 10)) {
        let shelf = shelf(&person);
        let case = open(&shelf);
        let (pattern, stock) = (&case.pattern, stock(&case.cushion));
        let (plan, stands) = record(&case, &shelf);
        let counts = planned(&plan);
        lead(pattern, &stock, &plan.moves, &counts)?;
        prop_assert_eq!(plan.total_planned(), counts.iter().sum::<u32>());
        for ((count, own), stock) in plan.counts.iter().zip(pattern.compartments()).zip(&stock) {
            prop_assert_eq!((&count.id, count.number, count.stock), (&own.id, own.number, *stock));
            prop_assert_eq!(count.planned != count.stock, count.reason.is_some());
        }
        prop_assert_eq!(plan.counts.len(), pattern.compartments().len());
        // From any other counts too.
        let now: Vec<u32> = (stock.iter().zip(&more))
            .map(|(count, more)| count.saturating_add_signed(*more)).collect();
        lead(pattern, &now, &fitting::moves(pattern, &now, &counts), &counts)?;
        prop_assert_eq!(stands, plan.not_safe.is_empty());
        let text = shelf.text(FILE);
        if !stands {
            prop_assert_eq!(text, person.text());
            return Ok(());
        }
        prop_assert_eq!(recorded(&text), counts.clone());
        let total = format!("total = {}\n", plan.total_planned());
        prop_assert!(text.contains(&total));
    }

    #[test]
    fn a_recorded_adjustment_leads_to_the_counts_after_it(
        person in people(),
        felt in prop::collection::vec((prop::bool::ANY, 15..60_u32), 1..3),
    ) {
        let shelf = shelf(&person);
        let now = CountsNow { counts: stock(&open(&shelf).cushion), recorded_on: None, from: None };
        let checks: Vec<Check> = felt.iter().map(|(left, mm)| {
            let side = if *left { "left" } else { "right" };
            Check::read("under", &format!("{side}={mm}mm")).unwrap()
        }).collect();
        let case = open(&shelf);
        let adjusted = case.adjust(&now, &checks, DAY, Stop::never()).unwrap();
        lead(&case.pattern, &now.counts, &adjusted.moves, &adjusted.counts)?;
        case.record_adjustment(&shelf, &checks, &adjusted, false, &OT).unwrap();
        let client = client_of(&shelf.text(FILE));
        let Some(Entry::Adjustment(entry)) = client.record.first() else { return Ok(()) };
        prop_assert_eq!(&entry.checks, &checks);
        if client.latest_plan().is_some() {
            lead(&case.pattern, &now.counts, &entry.moves, &recorded(&shelf.text(FILE)))?;
        } else {
            prop_assert_eq!(&entry.moves, &[]);
        }
    }

    #[test]
    fn a_prediction_agrees_with_the_plan(person in people()) {
        let case = open(&shelf(&person));
        let plan = case.plan(DAY, Stop::never()).unwrap();
        let (again, _) = case.predict(&planned(&plan), Stop::never()).unwrap();
        let told = plan.prediction.unwrap();
        prop_assert_eq!(told.outcome, again.outcome);
        prop_assert_eq!(told.seated.is_some(), again.seated.is_some());
        let (Some(told), Some(again)) = (seat(&told), seat(&again)) else { return Ok(()) };
        // Half of the last digit that papers have, a whole mm.
        let near = |one: Length, other: Length| (one - other).abs() <= Length::from_mm(0.5);
        for side in [Side::Left, Side::Right] {
            let (one, other) = (told.clearance[side], again.clearance[side]);
            prop_assert!(near(one.central, other.central), "{one:?} {other:?}");
            prop_assert!(near(told.immersion[side], again.immersion[side]));
        }
        prop_assert!(near(told.lower_by, again.lower_by));
    }

    #[test]
    fn the_file_with_left_for_right_gets_the_mirrored_plan(person in people()) {
        let text = person.text();
        let image_of_text = words_swapped(&text);
        let (one, other) = (open(&shelf(&person)), open(&MemoryShelf::of([(FILE, &*image_of_text)])));
        let partners = Partners::of(&one.pattern).unwrap();
        prop_assert_eq!(&other.client.value, &one.client.value.mirrored(&partners));
        let [own, image] = [&one, &other].map(|case| case.plan(DAY, Stop::never()).unwrap());
        prop_assert_eq!(planned(&own), partners.swapped(&planned(&image)));
        prop_assert_eq!(&own.moves, &image.moves.mirrored(&partners));
        prop_assert_eq!(&own.goals, &image.goals.mirrored(&partners));
        prop_assert_eq!(&own.prediction, &image.prediction.mirrored(&partners));
    }

    #[test]
    fn units_do_not_change_a_plan(person in people()) {
        let [one, other] = [Units::Metric, Units::Inches].map(|units| {
            open(&shelf(&person.written_in(units)))
        });
        let [one, other] = [one, other].map(|case| case.plan(DAY, Stop::never()).unwrap());
        prop_assert_eq!(planned(&one), planned(&other));
        prop_assert_eq!(&one.moves, &other.moves);
        prop_assert_eq!(one.not_safe.len(), other.not_safe.len());
        prop_assert_eq!(one.goals.len(), other.goals.len());
        for (one, other) in one.goals.iter().zip(&other.goals) {
            prop_assert_eq!((one.want, one.met), (other.want, other.met));
        }
    }

    #[test]
    fn the_order_of_tables_and_keys_means_nothing(person in people(), seed in any::<u64>()) {
        let other = person.text_in_other_order(seed);
        let [one, other] = [&person.text(), &other].map(|text| files::read_client(text));
        let ids = |read: &files::Read<Client>| {
            let mut ids: Vec<_> = read.remarks.iter().map(|own| own.finding.id()).collect();
            ids.sort_unstable();
            ids
        };
        prop_assert!(one.value.is_some());
        prop_assert_eq!(ids(&one), ids(&other));
        prop_assert_eq!(one.value, other.value);
    }

    #[test]
    fn a_heavier_client_has_no_more_clearance(person in people(), more in 0.5..12.0) {
        let case = open(&shelf(&person));
        let counts = stock(&case.cushion);
        let clearance = |weight: f64| {
            let weight = Mass::from_kg(weight);
            let predictor =
                LivePredictor::new(&case.cushion, &case.client.value, weight, Stop::never());
            let seat = predictor.unwrap().central(&counts).seated?;
            Some([seat.clearance.left.to_m(), seat.clearance.right.to_m()])
        };
        let pair = clearance(person.kg).zip(clearance(person.kg + more));
        let Some((light, heavy)) = pair else { return Ok(()) };
        for side in 0..2 {
            prop_assert!(heavy[side] <= light[side] + SEARCH, "{light:?} {heavy:?}");
        }
    }

    #[test]
    fn more_cells_under_a_bone_never_leave_less_clearance(person in people(), more in 1..6_u32) {
        let case = open(&shelf(&person));
        let counts = stock(&case.cushion);
        let Some(under) = under_bones(&case) else { return Ok(()) };
        let (client, weight) = (&case.client.value, case.weight().unwrap());
        let mut predictor =
            LivePredictor::new(&case.cushion, client, weight, Stop::never()).unwrap();
        let Some(before) = predictor.central(&counts).seated else { return Ok(()) };
        for side in [Side::Left, Side::Right] {
            let mut fuller = counts.clone();
            fuller[under[side].index()] += more;
            let Some(after) = predictor.central(&fuller).seated else { continue };
            let (before, after) = (before.clearance[side], after.clearance[side]);
            prop_assert!(after.to_m() >= before.to_m() - SEARCH, "{before:?} {after:?}");
        }
    }

    #[test]
    fn a_recorded_plan_always_prints_and_reads_back(person in people(), letter in any::<bool>()) {
        let shelf = shelf(&person);
        let case = open(&shelf);
        let before = shelf.text(FILE);
        let (plan, stands) = record(&case, &shelf);
        if !stands {
            return Ok(());
        }
        let text = shelf.text(FILE);
        prop_assert!(text.starts_with(&before));
        let mut client = client_of(&text);
        let Some(Entry::Plan(entry)) = client.record.pop() else { panic!("{text}") };
        prop_assert_eq!(&client, &case.client.value);
        prop_assert_eq!(entry.total(), plan.total_planned());
        // Written again, it is the same text.
        prop_assert_eq!(&files::append_entry(&before, &Entry::Plan(entry)).unwrap(), &text);
        let paper = if letter { Paper::Letter } else { Paper::A4 };
        let edition = Edition { language: words::ENGLISH, on: DAY, paper, large_print: false, client_in_code: false };
        let papers = open(&shelf).papers(edition).unwrap();
        prop_assert_eq!(&papers.since_recorded, &[]);
        let files = export(&papers.papers.made, casework::Wanted::default()).unwrap();
        prop_assert!(files.len() >= 8 && files.iter().all(|file| !file.bytes.is_empty()));
    }
}
