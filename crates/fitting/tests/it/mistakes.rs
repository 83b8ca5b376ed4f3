//! The fault finder: mistakes that were planted are found again from what hands would find.

use case::{
    Check, Client, Date, Flexibility, Mistake, PelvicObliquity, PredictedSeat, PressAnswer,
    SiteName, UnderAnswer,
};
use cushion::{Length, Mass, Side};
use fitting::{AdjustInput, Explanation, PreparedCushion, Spacings, mistakes};
use mechanics::Stop;

use crate::clients::{client, cushion};

const DAY: Date = Date::constant(2026, 3, 2);

/// What hands and readings find where nothing is told wrongly; heights are taken three times, since by
/// hand an obliquity is known to 5 mm only.
fn found(seat: &PredictedSeat) -> Vec<Check> {
    let under = |side: Side| {
        let felt = seat.clearance[side].central;
        Check::Under { side, answer: UnderAnswer::Felt(felt) }
    };
    let reading = |side: Side| {
        let site = SiteName::SeatBone(side);
        let predicted = seat.sites.iter().find(|predicted| predicted.site == site).unwrap();
        Check::Reading { site, pressure: predicted.surface.central }
    };
    // Front compartments, left against right, are numbers 5 and 6.
    let fill = |at: usize| seat.compartments[at].fill.central.to_pa();
    let firmer = fill(4) / fill(5).max(50.0) - 1.0;
    let answer = match firmer {
        firmer if firmer > 0.2 => PressAnswer::Tight,
        firmer if firmer < -0.2 => PressAnswer::Slack,
        _ => PressAnswer::Like,
    };
    let at = case::MeasuredAt::SeatBones;
    let lower = Check::Lower { lower: seat.lower_side, by: seat.lower_by, at };
    let heights = [under(Side::Left), under(Side::Right), lower];
    let told = [reading(Side::Left), reading(Side::Right), Check::Press { number: 5, answer }];
    [heights.repeat(3), told.to_vec()].concat()
}

/// Explanations of what is found on `really`, where `believed` is thought to be in the cushion.
fn explained(
    cushion: &PreparedCushion,
    client: &Client,
    believed: &[u32],
    really: &[u32],
) -> Vec<Explanation> {
    let (prediction, _) =
        cushion.predict(client, Mass::from_kg(72.0), really, Stop::never()).unwrap();
    let checks = found(&prediction.seated.unwrap());
    let identity = testkit::identity(cushion.pattern());
    let input = AdjustInput {
        identity: &identity,
        client,
        cushion,
        on: DAY,
        now: believed,
        checks: &checks,
        stop: Stop::never(),
    };
    mistakes(&input).unwrap()
}

#[test]
fn planted_mistakes_are_found_again() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let mut client_here = client("row-six", "440x400");
    // Who holds themselves up shows less of what is wrong underneath; a flexible pelvis shows it all.
    client_here.posture.obliquity = Some(PelvicObliquity {
        lower: Side::Left,
        by: Length::from_mm(1.0),
        at: case::MeasuredAt::SeatBones,
        flexibility: Flexibility::Flexible,
    });
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|it| it.cells.stock).collect();
    // Built up on the left, as for a pelvis that is lower there.
    let mut believed = stock.clone();
    (believed[0], believed[1]) = (stock[0] + 10, stock[1] - 12);
    let right = explained(&cushion, &client_here, &believed, &believed);
    assert_eq!(right[0].mistake, Mistake::None);
    let mut mirrored = believed.clone();
    mirrored.swap(0, 1);
    let swapped = explained(&cushion, &client_here, &believed, &mirrored);
    assert_eq!(swapped[0].mistake, Mistake::Swapped);
    let mut short = believed.clone();
    short[1] = short[1] * 3 / 4;
    let short = explained(&cushion, &client_here, &believed, &short);
    // A lean may also be the client's own, so that nothing need be wrong; of mistakes it is first,
    // and far likelier than before anything was found: 15 % over six compartments.
    let first = short.iter().find(|own| own.mistake != Mistake::None).unwrap();
    let second = matches!(first.mistake, Mistake::Short { number: 2, .. });
    assert!(second && first.likelihood > 0.25, "{short:?}");
}

#[test]
fn likelihoods_are_shares_in_falling_order() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(16.0)));
    let client_here = client("row-six", "440x400");
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|it| it.cells.stock).collect();
    let checks = [Check::Lower {
        lower: Some(Side::Left),
        by: Length::from_mm(15.0),
        at: case::MeasuredAt::SeatBones,
    }];
    let identity = testkit::identity(cushion.pattern());
    let input = AdjustInput {
        identity: &identity,
        client: &client_here,
        cushion: &cushion,
        on: DAY,
        now: &stock,
        checks: &checks,
        stop: Stop::never(),
    };
    let ranked = mistakes(&input).unwrap();
    let sum: f64 = ranked.iter().map(|mistake| mistake.likelihood).sum();
    assert!((sum - 1.0).abs() < 1e-9);
    assert!(ranked.windows(2).all(|pair| pair[0].likelihood >= pair[1].likelihood));
}
