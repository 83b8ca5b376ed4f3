//! Two layouts beside each other: the same bodies on both, at the same fill pressure.

use cushion::{Length, Mass, Pressure, Size, Volume};

use crate::{CellsDo, PredictedOutcome, Spread};

/// The layouts that are compared, first and second.
pub type Both<T> = [T; 2];

/// The obliquity that is tried on both layouts, fixed, with the left seat bone lower.
pub const TRIED_OBLIQUITY: Length = Length::from_mm(12.0);

/// The least cushion under a seat bone, as in the limits of a plan.
const LEAST_LEFT: f64 = 25.0;

/// What is compared of how a body sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparedMeasure {
    /// Cushion left under the left seat bone, mm.
    LeftUnder,
    /// Cushion left under the right seat bone, mm.
    RightUnder,
    /// How deep the seat bones are below the top of the unloaded cushion, mm; the mean of both.
    Immersion,
    /// Surface pressure under the seat bone that has more, kPa.
    BoneSurface,
    /// Surface pressure on the disc that carries most, kPa.
    GreatestSurface,
    /// Load over contact area, kPa.
    MeanSurface,
    /// What the pelvis carries of what is carried in all, in a hundred.
    PelvisShare,
    /// How the cushion resists leaning to a side, N m per degree.
    RollStiffness,
    /// By how much the front is turned up, degrees.
    Pitch,
    /// With an obliquity, by how much the low seat bone stays lower, mm.
    Oblique,
    /// With an obliquity, cushion left under the low seat bone, mm.
    ObliqueUnder,
}

impl ComparedMeasure {
    /// How many there are.
    pub const COUNT: usize = 11;

    /// All, in the order in which values are listed and told.
    pub const ALL: [Self; Self::COUNT] = [
        Self::LeftUnder,
        Self::RightUnder,
        Self::Immersion,
        Self::BoneSurface,
        Self::GreatestSurface,
        Self::MeanSurface,
        Self::PelvisShare,
        Self::RollStiffness,
        Self::Pitch,
        Self::Oblique,
        Self::ObliqueUnder,
    ];

    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::LeftUnder => "left-under",
            Self::RightUnder => "right-under",
            Self::Immersion => "immersion",
            Self::BoneSurface => "bone-surface",
            Self::GreatestSurface => "greatest-surface",
            Self::MeanSurface => "mean-surface",
            Self::PelvisShare => "pelvis-share",
            Self::RollStiffness => "roll-stiffness",
            Self::Pitch => "pitch",
            Self::Oblique => "oblique-lower",
            Self::ObliqueUnder => "oblique-under",
        }
    }

    /// The unit of its values, as reports write it.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::LeftUnder
            | Self::RightUnder
            | Self::Immersion
            | Self::Oblique
            | Self::ObliqueUnder => "mm",
            Self::BoneSurface | Self::GreatestSurface | Self::MeanSurface => "kPa",
            Self::PelvisShare => "%",
            Self::RollStiffness => "N m/degree",
            Self::Pitch => "degrees",
        }
    }

    /// Decimals with which it is told.
    #[must_use]
    pub fn decimals(self) -> usize {
        match self {
            Self::RollStiffness | Self::Pitch | Self::MeanSurface => 2,
            _ => 1,
        }
    }

    /// The least difference that is told at all, however little the model moves: judgements, from
    /// memory, unverified. A tenth of what hands tell of a height; less than 1 mmHg; and of the rest
    /// what nobody who sits would find.
    #[must_use]
    pub fn told_from(self) -> f64 {
        match self {
            Self::LeftUnder
            | Self::RightUnder
            | Self::Immersion
            | Self::Oblique
            | Self::ObliqueUnder
            | Self::PelvisShare => 0.5,
            Self::BoneSurface | Self::GreatestSurface | Self::MeanSurface | Self::Pitch => 0.1,
            Self::RollStiffness => 0.05,
        }
    }
}

/// Values of one body on one cushion, in the order of [`ComparedMeasure::ALL`]; none of what has no
/// numbers.
pub type ComparedValues = [Option<f64>; ComparedMeasure::COUNT];

/// How one body sits on one of the cushions.
#[derive(Clone, Debug, PartialEq)]
pub struct ComparedSeat {
    /// How the prediction ended.
    pub outcome: PredictedOutcome,
    /// The numbers.
    pub values: ComparedValues,
}

impl ComparedSeat {
    /// Whether less than the limit is left under a seat bone.
    fn has_little_left(&self) -> bool {
        self.values[..2].iter().flatten().any(|left| *left < LEAST_LEFT)
    }
}

/// What one cell does in the compartments of a cushion, under the middle one of the bodies.
#[derive(Clone, Debug, PartialEq)]
pub struct OneCell {
    /// Of the compartments for a seat bone, of all where none is: the one in which a cell changes
    /// least what is left under a seat bone, by its number, with that change.
    pub finest: (u8, Length),
    /// The one in which it changes most.
    pub coarsest: (u8, Length),
    /// How much higher a seat bone stands with the most cells on its side and the fewest on the
    /// other, where that is most.
    pub reach: Option<(u8, Length)>,
}

impl OneCell {
    /// Sums up what a cell does in each compartment, with its number and whether it is for a seat
    /// bone; none where nothing is known.
    #[must_use]
    pub fn of(compartments: &[(u8, bool, Option<CellsDo>)]) -> Option<Self> {
        let some_are_for_bones = compartments.iter().any(|(_, for_bone, _)| *for_bone);
        let mut known: Vec<(u8, CellsDo)> = (compartments.iter())
            .filter(|(_, for_bone, _)| *for_bone || !some_are_for_bones)
            .filter_map(|(number, _, effect)| Some((*number, (*effect)?)))
            .collect();
        // Of those that do the same to a micrometre the first is named: mirror images differ by
        // rounding alone.
        let microns = |length: Length| (length.to_mm() * 1e3).round() as i64;
        known.sort_by_key(|own| own.0);
        let finest = known.iter().min_by_key(|own| microns(own.1.most_under()))?;
        let coarsest = known.iter().min_by_key(|own| -microns(own.1.most_under()))?;
        let lifts = known.iter().filter_map(|(number, effect)| Some((*number, effect.lifts?)));
        let reach = lifts.min_by_key(|own| -microns(own.1));
        Some(Self {
            finest: (finest.0, finest.1.most_under()),
            coarsest: (coarsest.0, coarsest.1.most_under()),
            reach,
        })
    }
}

/// One of two cushions that stand beside each other.
#[derive(Clone, Debug, PartialEq)]
pub struct ComparedCushion {
    /// The size.
    pub size: Size,
    /// The unloaded fill pressure of its stock fill.
    pub stock_pressure: Pressure,
    /// Cells in the compartments at the common pressure, by their numbers.
    pub counts: Vec<(u8, u32)>,
    /// Cells in all as supplied.
    pub stock: u32,
    /// The lowest and the highest unloaded fill pressure of its compartments: cells are whole.
    pub pressures: [Pressure; 2],
    /// Space that the cells take.
    pub volume: Volume,
    /// What the cells weigh.
    pub cells_mass: Mass,
    /// What the cushion weighs, of usual cloth.
    pub mass: Spread<Mass>,
    /// Length of all seams.
    pub seams: Length,
    /// What one cell does; none where nobody sits on it.
    pub one_cell: Option<OneCell>,
}

impl ComparedCushion {
    /// Cells in all at the common pressure.
    #[must_use]
    pub fn cells(&self) -> u32 {
        self.counts.iter().map(|own| own.1).sum()
    }
}

/// Two cushions at one unloaded fill pressure, and how many bodies sit on both.
#[derive(Clone, Debug, PartialEq)]
pub struct ComparedPair {
    /// The cushions.
    pub cushions: Both<ComparedCushion>,
    /// The pressure: the lower one of their stock fills, beyond which one of them was not drawn.
    pub pressure: Pressure,
    /// How many bodies.
    pub bodies: usize,
}

impl ComparedPair {
    /// Whose stock fill has the pressure: that of the first (0) or of the second (1); none where
    /// both have it.
    #[must_use]
    pub fn pressure_of(&self) -> Option<usize> {
        let [first, second] = &self.cushions;
        if first.stock_pressure == second.stock_pressure {
            return None;
        }
        Some(usize::from(second.stock_pressure < first.stock_pressure))
    }
}

/// For how many bodies the layouts have sizes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ComparedSizes {
    /// Bodies in all.
    pub bodies: usize,
    /// Those that have a size in both.
    pub both: usize,
    /// Those that have one in one of them only.
    pub only: Both<usize>,
    /// Those that have none.
    pub neither: usize,
    /// Of those that have one in both, those whose sizes differ.
    pub other_size: usize,
}

impl ComparedSizes {
    /// Counts bodies by the sizes that suit them.
    #[must_use]
    pub fn of(chosen: &[Both<Option<Size>>]) -> Self {
        let count =
            |is: &dyn Fn(&Both<Option<Size>>) -> bool| chosen.iter().filter(|own| is(own)).count();
        Self {
            bodies: chosen.len(),
            both: count(&|own| own.iter().all(Option::is_some)),
            only: [0, 1].map(|at| count(&|own| own[at].is_some() && own[1 - at].is_none())),
            neither: count(&|own| own.iter().all(Option::is_none)),
            other_size: count(&|[one, other]| one.is_some() && other.is_some() && one != other),
        }
    }
}

/// How many of the bodies that sit on both come to harm on each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ComparedHarm {
    /// Those that come to no rest.
    pub no_rest: Both<usize>,
    /// Those that are nearly on the base somewhere.
    pub bottomed: Both<usize>,
    /// Those with less than the limit under a seat bone.
    pub little_left: Both<usize>,
}

impl ComparedHarm {
    /// Counts them.
    #[must_use]
    pub fn of(seats: &[Both<ComparedSeat>]) -> Self {
        let count = |is: &dyn Fn(&ComparedSeat) -> bool| {
            [0, 1].map(|at| seats.iter().filter(|own| is(&own[at])).count())
        };
        let rests = |own: &ComparedSeat| {
            matches!(own.outcome, PredictedOutcome::AtRest | PredictedOutcome::Bottomed)
        };
        Self {
            no_rest: count(&|own| !rests(own)),
            bottomed: count(&|own| own.outcome == PredictedOutcome::Bottomed),
            little_left: count(&ComparedSeat::has_little_left),
        }
    }
}

/// What a difference comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparedVerdict {
    /// The model cannot tell whether there is any: somebody comes to no rest where it is asked.
    CannotTell,
    /// None that the model can tell.
    NoDifference,
    /// The second has more.
    More,
    /// The second has less.
    Less,
    /// None in the middle, and one that can be told in a quarter of the bodies or more.
    ByBody,
}

impl ComparedVerdict {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::CannotTell => "cannot-tell",
            Self::NoDifference => "no-difference",
            Self::More => "more",
            Self::Less => "less",
            Self::ByBody => "by-body",
        }
    }

    fn of([low, middle, high]: [f64; 3], told_from: Option<f64>) -> Self {
        let Some(told_from) = told_from else { return Self::CannotTell };
        if middle > told_from {
            Self::More
        } else if middle < -told_from {
            Self::Less
        } else if low < -told_from || high > told_from {
            Self::ByBody
        } else {
            Self::NoDifference
        }
    }
}

/// One measure over all bodies.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasureCompared {
    /// Which.
    pub measure: ComparedMeasure,
    /// Bodies that have a number on both.
    pub bodies: usize,
    /// Of those, what 5, 50 and 95 of a hundred have at most, on each.
    pub of: Both<[f64; 3]>,
    /// Second less first, body by body: what 25, 50 and 75 of a hundred have at most.
    pub difference: [f64; 3],
    /// The least difference that the model can tell; none where it can tell none.
    pub told_from: Option<f64>,
    /// What the difference comes to.
    pub verdict: ComparedVerdict,
}

/// Compares bodies measure by measure; `told_from` is the least difference that can be told of each
/// measure, none where none can. A measure that no body has on both is left out.
#[must_use]
pub fn measures_compared(
    seats: &[Both<ComparedSeat>],
    told_from: &ComparedValues,
) -> Vec<MeasureCompared> {
    let one = |(at, measure): (usize, ComparedMeasure)| {
        let pairs: Vec<[f64; 2]> = (seats.iter())
            .filter_map(|[one, other]| Some([one.values[at]?, other.values[at]?]))
            .collect();
        if pairs.is_empty() {
            return None;
        }
        let sorted = |of: &dyn Fn(&[f64; 2]) -> f64| {
            let mut values: Vec<f64> = pairs.iter().map(of).collect();
            values.sort_by(f64::total_cmp);
            values
        };
        let of = [0, 1].map(|which| {
            let values = sorted(&|own| own[which]);
            [0.05, 0.5, 0.95].map(|share| quantile(&values, share))
        });
        let differences = sorted(&|own| own[1] - own[0]);
        let difference = [0.25, 0.5, 0.75].map(|share| quantile(&differences, share));
        let told_from = told_from[at].map(|own| own.max(measure.told_from()));
        let verdict = ComparedVerdict::of(difference, told_from);
        Some(MeasureCompared { measure, bodies: pairs.len(), of, difference, told_from, verdict })
    };
    ComparedMeasure::ALL.into_iter().enumerate().filter_map(one).collect()
}

/// The value that such a share of sorted values has at most, straight between neighbours. With all
/// signs turned it is to the last bit the negative one of the rest.
fn quantile(sorted: &[f64], share: f64) -> f64 {
    if share > 0.5 {
        let turned: Vec<f64> = sorted.iter().rev().map(|own| -own).collect();
        return -quantile(&turned, 1.0 - share);
    }
    let place = share * (sorted.len() - 1) as f64;
    let (below, above) = (sorted[place.floor() as usize], sorted[place.ceil() as usize]);
    let part = place.fract();
    if part == 0.5 { 0.5 * (below + above) } else { below + part * (above - below) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seat(values: &[f64]) -> ComparedSeat {
        let mut all = [None; ComparedMeasure::COUNT];
        all.iter_mut().zip(values).for_each(|(own, value)| *own = Some(*value));
        ComparedSeat { outcome: PredictedOutcome::AtRest, values: all }
    }

    /// A lot that is the same in every run.
    fn lots(count: usize) -> Vec<f64> {
        let mut state = 7_u64;
        let mut next = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (state >> 11) as f64 / (1_u64 << 53) as f64
        };
        (0..count).map(|_| 30.0 + 20.0 * next()).collect()
    }

    #[test]
    fn quantiles_are_those_of_any_textbook() {
        let values: Vec<f64> = (1..=5).map(f64::from).collect();
        assert_eq!([0.25, 0.5, 0.75].map(|own| quantile(&values, own)), [2.0, 3.0, 4.0]);
        assert_eq!(quantile(&[1.0, 2.0], 0.5), 1.5);
        assert_eq!([0.05, 0.95].map(|own| quantile(&[7.0], own)), [7.0, 7.0]);
        // A fifth of the way from the first of five to the second: 4 x 0.05.
        assert!((quantile(&values, 0.05) - 1.2).abs() < 1e-12);
    }

    /// Turned round, every number is the same but for its sign, to the last bit.
    #[test]
    fn turned_round_every_difference_has_the_other_sign() {
        for count in 1..40 {
            let all = lots(2 * count);
            let pairs: Vec<Both<ComparedSeat>> =
                all.chunks(2).map(|own| [seat(&own[..1]), seat(&own[1..])]).collect();
            let turned: Vec<_> =
                pairs.iter().map(|[one, other]| [other.clone(), one.clone()]).collect();
            let told_from = [Some(0.0); ComparedMeasure::COUNT];
            let (there, back) =
                (measures_compared(&pairs, &told_from), measures_compared(&turned, &told_from));
            assert_eq!((there.len(), back.len()), (1, 1));
            let [low, middle, high] = there[0].difference;
            assert_eq!(back[0].difference, [-high, -middle, -low], "{count}");
            assert_eq!(back[0].of, [there[0].of[1], there[0].of[0]]);
        }
    }

    #[test]
    fn what_cannot_be_told_is_no_difference() {
        let pairs = |off: &[f64]| -> Vec<Both<ComparedSeat>> {
            off.iter().map(|off| [seat(&[40.0]), seat(&[40.0 + off])]).collect()
        };
        let verdict = |off: &[f64]| {
            measures_compared(&pairs(off), &[Some(2.0); ComparedMeasure::COUNT])[0].verdict
        };
        assert_eq!(verdict(&[0.0, 0.0, 0.0]), ComparedVerdict::NoDifference);
        assert_eq!(verdict(&[1.9, 1.9, 1.9]), ComparedVerdict::NoDifference);
        assert_eq!(verdict(&[2.1, 2.2, 3.0]), ComparedVerdict::More);
        assert_eq!(verdict(&[-2.1, -2.2, -3.0]), ComparedVerdict::Less);
        assert_eq!(verdict(&[-5.0, -5.0, 0.0, 5.0, 5.0]), ComparedVerdict::ByBody);
        let unknown = measures_compared(&pairs(&[9.0]), &[None; ComparedMeasure::COUNT]);
        assert_eq!(unknown[0].verdict, ComparedVerdict::CannotTell);
        // Less than what is told is nothing, whatever the model could.
        let fine = measures_compared(&pairs(&[0.49]), &[Some(0.0); ComparedMeasure::COUNT]);
        assert_eq!(fine[0].verdict, ComparedVerdict::NoDifference);
    }

    #[test]
    fn a_body_without_numbers_on_one_is_counted_and_in_no_difference() {
        let none = ComparedSeat {
            outcome: PredictedOutcome::Tipping,
            values: [None; ComparedMeasure::COUNT],
        };
        let bottomed = ComparedSeat { outcome: PredictedOutcome::Bottomed, ..seat(&[8.0, 30.0]) };
        let pairs = [[none, seat(&[40.0, 40.0])], [seat(&[26.0, 24.9]), bottomed]];
        let found = measures_compared(&pairs, &[Some(0.0); ComparedMeasure::COUNT]);
        assert!(found.iter().all(|own| own.bodies == 1), "{found:?}");
        let harm = ComparedHarm::of(&pairs);
        assert_eq!((harm.no_rest, harm.bottomed, harm.little_left), ([1, 0], [0, 1], [1, 1]));
    }

    #[test]
    fn what_a_cell_does_is_summed_up_over_the_compartments_for_a_seat_bone() {
        let does = |left: f64, lifts: Option<f64>| CellsDo {
            tried: 4,
            under: crate::Sides { left: Length::from_mm(left), right: Length::ZERO },
            pitch_deg: 0.0,
            lifts: lifts.map(Length::from_mm),
        };
        let all = [
            (3, true, Some(does(0.400_000_1, Some(2.0)))),
            (1, true, Some(does(0.4, Some(2.0)))),
            (2, true, Some(does(0.3, None))),
            (4, false, Some(does(0.1, None))),
        ];
        let found = OneCell::of(&all).expect("it is known");
        assert_eq!((found.finest.0, found.coarsest.0), (2, 1));
        assert_eq!(found.reach.map(|own| own.0), Some(1));
        // Where none is for a seat bone, all are looked at.
        let others: Vec<_> = all.iter().map(|own| (own.0, false, own.2)).collect();
        assert_eq!(OneCell::of(&others).map(|own| own.finest.0), Some(4));
        assert_eq!(OneCell::of(&[(1, true, None)]), None);
    }

    #[test]
    fn bodies_are_counted_by_where_they_have_sizes() {
        let size = |text: &str| text.parse::<Size>().ok();
        let (small, large) = (size("400x400"), size("440x400"));
        let chosen = [[small, small], [small, large], [None, large], [None, None], [large, None]];
        let found = ComparedSizes::of(&chosen);
        let wanted = ComparedSizes { bodies: 5, both: 2, only: [1, 1], neither: 1, other_size: 1 };
        assert_eq!(found, wanted);
    }
}
