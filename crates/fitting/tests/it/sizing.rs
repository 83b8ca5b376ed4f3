//! What a size leaves free, by hand; and what would have to be made, by the same rules.

use case::{
    Chair, Client, LimbLoss, LossLevel, Measures, NoSizeToMake, Sides, SizeMargin, SizeMisfit,
};
use cushion::{Length, MadeSize, Mass, Side, Size};
use fitting::{Sizing, size_to_make, sized_by, sizing};

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn kg(kg: f64) -> Mass {
    Mass::from_kg(kg)
}

fn made(size: &str, rating: f64) -> MadeSize {
    MadeSize { size: size.parse().unwrap(), max_user_weight: kg(rating) }
}

fn measures(hips: f64, left: f64, right: f64) -> Measures {
    Measures {
        hip_width: Some(mm(hips)),
        thigh_depth: Sides { left: Some(mm(left)), right: Some(mm(right)) },
        ..Measures::default()
    }
}

fn chair(width: f64, depth: f64) -> Chair {
    Chair { inside_width: Some(mm(width)), inside_depth: Some(mm(depth)), ..Chair::default() }
}

/// The margins with their ids, in mm or kg to a thousandth: below that a difference is rounding.
fn margins(sized: &Sizing) -> Vec<(&'static str, f64)> {
    let number = |own: &SizeMargin| match *own {
        SizeMargin::BesideHips(by)
        | SizeMargin::BehindKnee(by)
        | SizeMargin::InChairWidth(by)
        | SizeMargin::InChairDepth(by) => by.to_mm(),
        SizeMargin::BelowRating(by) => by.to_kg(),
    };
    let rounded = |number: f64| (number * 1e3).round() / 1e3;
    sized.margins.iter().map(|own| (own.id(), rounded(number(own)))).collect()
}

#[test]
fn the_margins_are_what_a_tape_says() {
    let sizes = [made("400x400", 75.0), made("440x400", 85.0), made("440x440", 90.0)];
    // 440 - 420, 448 - 400 by the shorter thigh, 85 - 73, 450 - 440, 430 - 400.
    let sized =
        sizing(&measures(420.0, 448.0, 470.0), Some(kg(73.0)), &chair(450.0, 430.0), &sizes);
    assert_eq!(sized.chosen, Some(sizes[1].size));
    assert_eq!(
        margins(&sized),
        [
            ("beside-hips", 20.0),
            ("behind-knee", 48.0),
            ("below-rating", 12.0),
            ("in-chair-width", 10.0),
            ("in-chair-depth", 30.0),
        ]
    );
    assert_eq!(sized.suit_too, []);
    // What was not measured leaves nothing to be told.
    let sized = sizing(&measures(420.0, 448.0, 448.0), None, &Chair::default(), &sizes);
    assert_eq!(margins(&sized), [("beside-hips", 20.0), ("behind-knee", 48.0)]);
    assert_eq!(margins(&sizing(&Measures::default(), None, &Chair::default(), &sizes)), []);
}

#[test]
fn a_size_that_suits_and_is_not_the_best_is_told_and_no_reason_against_it() {
    let sizes = [made("440x440", 90.0), made("440x400", 85.0), made("440x380", 85.0)];
    // Wanted are 445 x 440: of depth, 440, 400 and 380 are 0, 40 and 60 mm off.
    let sized = sizing(&measures(420.0, 490.0, 490.0), None, &Chair::default(), &sizes);
    assert_eq!(sized.chosen, Some(sizes[0].size));
    assert_eq!(sized.suit_too, [sizes[1].size, sizes[2].size]);
    assert_eq!(sized.why_not, []);
    assert_eq!(sized.nearest_misfit(), None);
}

/// A stump has no knee that needs room: the other leg decides the depth, whichever it is.
#[test]
fn the_thigh_of_a_lost_leg_decides_nothing() {
    let lost = |left: f64, right: f64, all: &[(Side, LossLevel)]| {
        let mut client: Client = crate::clients::client("row-six", "440x400");
        client.measures = measures(420.0, left, right);
        client.posture.limb_loss =
            all.iter().map(|&(side, level)| LimbLoss { side, level }).collect();
        let thighs = sized_by(&client).thigh_depth;
        [thighs.left, thighs.right].map(|own| own.map(Length::to_mm))
    };
    let above = LossLevel::AboveKnee;
    assert_eq!(lost(260.0, 480.0, &[(Side::Left, above)]), [None, Some(480.0)]);
    assert_eq!(lost(480.0, 260.0, &[(Side::Right, LossLevel::Hip)]), [Some(480.0), None]);
    // Below the knee the knee is there; and of two lost legs neither decides for the other.
    let both = [Some(260.0), Some(480.0)];
    assert_eq!(lost(260.0, 480.0, &[(Side::Left, LossLevel::BelowKnee)]), both);
    assert_eq!(lost(260.0, 480.0, &[(Side::Left, above), (Side::Right, above)]), both);
}

/// 470 - 440 is a little less than 30 in binary numbers; a tape says 30.
#[test]
fn a_size_at_the_very_limit_suits() {
    for (hips, thigh, size) in [(440.0, 470.0, "440x440"), (370.0, 530.0, "440x410")] {
        let sizes = [made(size, 90.0)];
        let at = sizes[0].size;
        let chair = chair(at.width().to_mm(), at.depth().to_mm());
        let sized = sizing(&measures(hips, thigh, thigh), Some(kg(90.0)), &chair, &sizes);
        assert_eq!(sized.chosen, Some(at), "{:?}", sized.why_not);
        // A tenth of a millimetre more is too much.
        let deep = sizing(&measures(hips + 71.0, thigh, thigh), None, &chair, &sizes);
        assert_eq!(deep.chosen, None);
        let tenth = thigh - if size == "440x440" { 0.1 } else { -0.1 };
        assert_eq!(sizing(&measures(hips, tenth, tenth), None, &chair, &sizes).chosen, None);
    }
}

#[test]
fn the_mirrored_client_gets_the_same_size_and_margins() {
    let sizes = testkit::layout("row-six").sizes;
    let chair = chair(480.0, 470.0);
    let of = |left, right| {
        let measures = measures(410.0, left, right);
        let weight = Some(kg(70.0));
        (sizing(&measures, weight, &chair, &sizes), size_to_make(&measures, weight, &chair))
    };
    assert_eq!(of(455.0, 490.0), of(490.0, 455.0));
}

#[test]
fn the_nearest_misfit_has_the_fewest_reasons_then_is_the_least_off() {
    let sizes = [made("300x300", 40.0), made("520x440", 60.0), made("500x440", 60.0)];
    let sized = sizing(&measures(420.0, 490.0, 490.0), Some(kg(80.0)), &Chair::default(), &sizes);
    let (size, whys) = sized.nearest_misfit().unwrap();
    // 300x300 has three reasons, both others have two; 500 is nearer to 445 than 520.
    assert_eq!(*size, sizes[2].size);
    assert_eq!(
        *whys,
        [SizeMisfit::Wide { most: mm(70.0) }, SizeMisfit::Rating { rating: kg(60.0) }]
    );
}

#[test]
fn what_is_asked_for_is_what_the_rules_ask_for() {
    // 640 + 25; 480 - 50; 131.2 kg in whole kilograms. Suit: 640 to 710; 360 to 450.
    let asked =
        size_to_make(&measures(640.0, 500.0, 480.0), Some(kg(131.2)), &Chair::default()).unwrap();
    assert_eq!(asked.made, made("665x430", 132.0));
    let whole = |ends: [Length; 2]| ends.map(|end| end.to_mm().round());
    assert_eq!((whole(asked.widths), whole(asked.depths)), ([640.0, 710.0], [360.0, 450.0]));
    // A narrower chair and a shallower seat bound both.
    let bounded =
        size_to_make(&measures(640.0, 500.0, 480.0), Some(kg(80.0)), &chair(650.4, 400.0)).unwrap();
    assert_eq!(bounded.made.size, "650x400".parse().unwrap());
    assert_eq!(whole(bounded.widths), [640.0, 650.0]);
}

#[test]
fn nothing_is_asked_for_where_it_cannot_be_known_or_cannot_suit() {
    use NoSizeToMake::{
        ChairTooNarrow, DepthNotDrawn, HipsNotMeasured, NotWeighed, SeatTooShallow,
        ThighsNotMeasured, WidthNotDrawn,
    };
    let of = |measures: Measures, weight, chair| size_to_make(&measures, weight, &chair);
    let unknown = of(Measures::default(), None, Chair::default());
    assert_eq!(unknown, Err(vec![HipsNotMeasured, ThighsNotMeasured, NotWeighed]));
    let weight = Some(kg(70.0));
    assert_eq!(
        of(measures(400.0, 480.0, 480.0), weight, chair(390.0, 350.0)),
        Err(vec![
            ChairTooNarrow { least: mm(400.0), inside: mm(390.0) },
            SeatTooShallow { least: mm(360.0), inside: mm(350.0) },
        ])
    );
    let huge = of(measures(801.0, 150.0, 150.0), weight, Chair::default()).unwrap_err();
    assert!(
        matches!(huge[..], [WidthNotDrawn { .. }, DepthNotDrawn { .. }]),
        "150 - 30 is less than 150: {huge:?}"
    );
}

/// The law: what is asked for suits by the rules that refused all others, and none that suits is
/// nearer to what is wanted; where nothing is asked for, nothing suits.
#[test]
fn what_is_asked_for_suits_and_nothing_nearer_does() {
    let sizes = testkit::layout("row-six").sizes;
    let (mut asked, mut refused) = (0, 0);
    for hips in [131.3, 200.0, 396.4, 431.8, 560.2, 640.0, 790.5, 830.0] {
        for thigh in [155.0, 181.1, 300.0, 406.4, 480.0, 700.7] {
            for weight in [5.2, 72.0, 131.2, 349.9] {
                for chair in [Chair::default(), chair(431.8, 406.4), chair(700.0, 300.0)] {
                    let measures = measures(hips, thigh, thigh + 7.0);
                    // The grid is a witness of its own: all sizes in steps of 10 mm.
                    let grid = grid(kg(weight));
                    let mass = kg(weight);
                    let weight = Some(mass);
                    if sizing(&measures, weight, &chair, &sizes).chosen.is_some() {
                        continue;
                    }
                    let on_grid = sizing(&measures, weight, &chair, &grid);
                    match size_to_make(&measures, weight, &chair) {
                        Ok(to_make) => {
                            asked += 1;
                            let both = [&grid[..], &[to_make.made]].concat();
                            let best = sizing(&measures, weight, &chair, &both).chosen.unwrap();
                            let off = |size: Size| off(size, hips, thigh);
                            // As near as the best of the grid, or nearer, but for rounding.
                            assert!(off(to_make.made.size) <= off(best) + 1e-6);
                            let alone = sizing(&measures, weight, &chair, &[to_make.made]);
                            assert_eq!(alone.chosen, Some(to_make.made.size));
                        }
                        Err(whys) => {
                            refused += 1;
                            assert!(!whys.is_empty());
                            assert_eq!(on_grid.chosen, None, "{hips} {thigh}: {whys:?}");
                        }
                    }
                }
            }
        }
    }
    // Both happen, often.
    assert!(asked > 50 && refused > 50, "{asked} {refused}");
}

/// All sizes that are drawn, in steps of 10 mm, rated for a weight.
fn grid(max_user_weight: Mass) -> Vec<MadeSize> {
    let sides = || (15..=80).map(|step| mm(10.0 * f64::from(step)));
    let row = |width| sides().filter_map(move |depth| Size::new(width, depth));
    sides().flat_map(row).map(|size| MadeSize { size, max_user_weight }).collect()
}

/// How far a size is off hips and 25 mm, and off the shorter thigh less 50 mm.
fn off(size: Size, hips: f64, thigh: f64) -> f64 {
    (size.width().to_mm() - hips - 25.0).abs() + (size.depth().to_mm() - thigh + 50.0).abs()
}
