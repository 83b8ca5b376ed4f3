//! Two layouts beside each other: the same bodies on both, filled to the same pressure.

use std::collections::BTreeMap;

use case::{
    Both, Client, ComparedCushion, ComparedHarm, ComparedMeasure, ComparedPair, ComparedSeat,
    ComparedSizes, ComparedValues, Date, MeasureCompared, OneCell, REVIEWED, SurveyedBody, Trouble,
    WhyNoPlan, measures_compared, nearest_rank,
};
use cushion::{Cell, FaultKind, Layout, MadeSize, Mass, Pressure, Purpose, Size};
use fitting::{PreparedCushion, Spacings};

use crate::error::{Whose, WorkError};
use crate::parts::usual_mass;
use crate::side_by_side::side_by_side;
use crate::sourced::Sourced;
use crate::survey::{anybody, prepared};

/// Somebody who is put on both layouts.
#[derive(Clone, Debug)]
pub struct Sitter {
    /// Who; the size in it is not looked at.
    pub client: Client,
    /// What they weigh.
    pub weight: Mass,
    /// The size of each layout on which they sit; none where none suits.
    pub sizes: Both<Option<Size>>,
    /// The client's file, which is wrong where its measures make no body; a body of a table then comes
    /// to no rest.
    pub file: Option<String>,
}

/// Two layouts that were compared.
#[derive(Clone, Debug)]
pub struct Compared {
    /// For how many of those who were asked about there is a size.
    pub sizes: ComparedSizes,
    /// The cushions that stand beside each other, in the order of their sizes.
    pub pairs: Vec<ComparedPair>,
    /// How many come to harm.
    pub harm: ComparedHarm,
    /// What differs.
    pub measures: Vec<MeasureCompared>,
}

/// Returns the bodies of a table with the sizes of two layouts that suit them; only one size of each
/// where it is given.
///
/// # Errors
///
/// Fails where a layout has no sizes, or is not made in the size that is asked for.
pub fn bodies_on(
    bodies: &[SurveyedBody],
    layouts: Both<&Sourced<Layout>>,
    size: Option<Size>,
    on: Date,
) -> Result<Vec<Sitter>, WorkError> {
    let like = anybody(layouts[0])?;
    let made = [made_sizes(layouts[0], size)?, made_sizes(layouts[1], size)?];
    let sitter = |body: &SurveyedBody| {
        let sizes = [0, 1].map(|at| fitting::size_for(body, &made[at]));
        let client = fitting::client_of_body(body, like.cushion.size, &like, on);
        Sitter { client, weight: body.weight, sizes, file: None }
    };
    Ok(bodies.iter().map(sitter).collect())
}

/// Returns a client with the sizes of two layouts that suit them, or one size where it is given.
///
/// # Errors
///
/// Fails where a layout is not made in the size that is asked for, where the client was not weighed,
/// and where they are heavier than the size is rated for.
pub fn client_on(
    client: &Sourced<Client>,
    layouts: Both<&Sourced<Layout>>,
    size: Option<Size>,
) -> Result<Sitter, WorkError> {
    let own = &client.value;
    let no_weight = || WorkError::file(Trouble::NoWeight { file: client.file.path.clone() });
    let weight = own.latest_weighing().ok_or_else(no_weight)?.weight;
    let mut sizes = [None; 2];
    for (at, layout) in layouts.into_iter().enumerate() {
        let made = made_sizes(layout, size)?;
        let sizing = fitting::sizing(&fitting::sized_by(own), Some(weight), &own.chair, &made);
        // Who asks for a size has reasons that the rules do not know, but for what it is rated for.
        sizes[at] = size.or(sizing.chosen);
        let rating = size.and_then(|size| layout.value.made(size)).map(|made| made.max_user_weight);
        if let Some(rating) = rating.filter(|rating| weight > *rating) {
            let why = WhyNoPlan::TooHeavy { weight, rating };
            return Err(WorkError::new(Whose::Clinician, Trouble::NotSafe(why)));
        }
    }
    let file = Some(client.file.path.clone());
    Ok(Sitter { client: own.clone(), weight, sizes, file })
}

/// The sizes of a layout, or the one that is asked for.
fn made_sizes(layout: &Sourced<Layout>, size: Option<Size>) -> Result<Vec<MadeSize>, WorkError> {
    let Some(size) = size else { return Ok(layout.value.sizes.clone()) };
    let file = layout.file.path.clone();
    let fault = Some(FaultKind::NotMade);
    let not_made = || WorkError::file(Trouble::NotMade { file, size, fault });
    Ok(vec![layout.value.made(size).ok_or_else(not_made)?])
}

/// Compares two layouts under these people, on all cores; `told` is called as each is done.
///
/// # Errors
///
/// Fails where a size that somebody needs cannot be made or filled, and where the measures of a
/// client's file make no body.
pub fn compare(
    layouts: Both<&Sourced<Layout>>,
    cell: &Cell,
    sitters: &[Sitter],
    spacings: Spacings,
    told: &(dyn Fn() + Sync),
) -> Result<Compared, WorkError> {
    let chosen: Vec<Both<Option<Size>>> = sitters.iter().map(|own| own.sizes).collect();
    let seated: Vec<(&Sitter, Both<Size>)> =
        (sitters.iter()).filter_map(|own| Some((own, [own.sizes[0]?, own.sizes[1]?]))).collect();
    let needed = |at: usize| seated.iter().map(move |own| own.1[at]);
    let cushions = [
        cushions(layouts[0], cell, needed(0), spacings)?,
        cushions(layouts[1], cell, needed(1), spacings)?,
    ];
    let mut sizes: Vec<Both<Size>> = seated.iter().map(|own| own.1).collect();
    sizes.sort_unstable();
    sizes.dedup();
    let beside = |sizes: &Both<Size>| Beside::new([0, 1].map(|at| &cushions[at][&sizes[at]]));
    let besides: BTreeMap<Both<Size>, Beside<'_>> =
        sizes.iter().map(|sizes| (*sizes, beside(sizes))).collect();
    for (sitter, sizes) in &seated {
        besides[sizes].is_a_body(sitter)?;
    }
    let seats: Vec<Both<ComparedSeat>> = side_by_side(&seated, |(sitter, sizes)| {
        let seats = besides[sizes].seats(sitter);
        told();
        seats
    });
    let pair = |(sizes, beside): (&Both<Size>, &Beside<'_>)| {
        let own: Vec<&Sitter> =
            seated.iter().filter(|(_, own)| own == sizes).map(|own| own.0).collect();
        beside.pair(cell, &own)
    };
    Ok(Compared {
        sizes: ComparedSizes::of(&chosen),
        pairs: besides.iter().map(pair).collect(),
        harm: ComparedHarm::of(&seats),
        measures: measures_compared(&seats, &least_told(&seated, &besides)),
    })
}

/// The cushions of a layout that are needed.
fn cushions(
    layout: &Sourced<Layout>,
    cell: &Cell,
    needed: impl Iterator<Item = Size>,
    spacings: Spacings,
) -> Result<BTreeMap<Size, PreparedCushion>, WorkError> {
    let mut made = BTreeMap::new();
    for size in needed {
        if made.contains_key(&size) {
            continue;
        }
        made.insert(size, prepared(layout, cell, size, spacings)?);
    }
    Ok(made)
}

/// The least difference that the model can tell of each measure: the greatest of what it is for the
/// light, the middle and the heavy one of those who sit on both. None where it is for none of them.
fn least_told(
    seated: &[(&Sitter, Both<Size>)],
    besides: &BTreeMap<Both<Size>, Beside<'_>>,
) -> ComparedValues {
    let mut told: ComparedValues = [None; ComparedMeasure::COUNT];
    let sorted = by_weight(seated, |own| own.0.weight);
    let mut places: Vec<usize> =
        REVIEWED.iter().map(|own| nearest_rank(sorted.len(), *own)).collect();
    places.dedup();
    for (sitter, sizes) in places.into_iter().filter_map(|at| sorted.get(at)) {
        let own = besides[sizes].least_told(sitter);
        for (known, own) in told.iter_mut().zip(own) {
            *known = match (*known, own) {
                (Some(known), Some(own)) => Some(f64::max(known, own)),
                (known, own) => known.or(own),
            };
        }
    }
    told
}

/// The lightest first.
fn by_weight<T>(of: &[T], weight: impl Fn(&T) -> Mass) -> Vec<&T> {
    let mut sorted: Vec<&T> = of.iter().collect();
    sorted.sort_by(|one, other| weight(one).to_kg().total_cmp(&weight(other).to_kg()));
    sorted
}

/// Two cushions at one pressure.
struct Beside<'c> {
    cushions: Both<&'c PreparedCushion>,
    pressure: Pressure,
    counts: Both<Vec<u32>>,
}

impl<'c> Beside<'c> {
    fn new(cushions: Both<&'c PreparedCushion>) -> Self {
        let [first, second] = cushions.map(|own| own.stock().pressure);
        let pressure = if second < first { second } else { first };
        let counts = cushions.map(|own| fitting::counts_at_pressure(own, pressure));
        Self { cushions, pressure, counts }
    }

    fn filled(&self, at: usize) -> (&'c PreparedCushion, &[u32]) {
        (self.cushions[at], &self.counts[at])
    }

    /// The same person for the size of each.
    fn clients(&self, sitter: &Sitter) -> Both<Client> {
        self.cushions.map(|own| {
            let mut client = sitter.client.clone();
            client.cushion.size = own.pattern().size();
            client
        })
    }

    fn is_a_body(&self, sitter: &Sitter) -> Result<(), WorkError> {
        let Some(file) = &sitter.file else { return Ok(()) };
        let made = fitting::is_a_body(self.cushions[0], &self.clients(sitter)[0], sitter.weight);
        made.map_err(|error| WorkError::file(Trouble::NoBody { file: file.clone(), error }))
    }

    fn seats(&self, sitter: &Sitter) -> Both<ComparedSeat> {
        let clients = self.clients(sitter);
        [0, 1].map(|at| fitting::compared_seat(self.filled(at), &clients[at], sitter.weight))
    }

    fn least_told(&self, sitter: &Sitter) -> ComparedValues {
        let [first, second] = &self.clients(sitter);
        let filled = [self.filled(0), self.filled(1)];
        fitting::least_told(filled, [first, second], sitter.weight, self.pressure)
    }

    /// Both cushions in numbers, with what a cell does under the middle one of those who sit there.
    fn pair(&self, cell: &Cell, sitters: &[&Sitter]) -> ComparedPair {
        let middle =
            by_weight(sitters, |own| own.weight).get(nearest_rank(sitters.len(), 50)).copied();
        let own = |at: usize| {
            let (cushion, counts) = self.filled(at);
            let effects = middle.map(|sitter| {
                let clients = self.clients(sitter);
                fitting::cells_do((cushion, counts), &clients[at], sitter.weight)
            });
            self.cushion(at, cell, effects.unwrap_or_default())
        };
        ComparedPair { cushions: [own(0), own(1)], pressure: self.pressure, bodies: sitters.len() }
    }

    fn cushion(
        &self,
        at: usize,
        cell: &Cell,
        effects: Vec<Option<case::CellsDo>>,
    ) -> ComparedCushion {
        let (cushion, counts) = self.filled(at);
        let (pattern, stock) = (cushion.pattern(), cushion.stock());
        let unloaded = cushion.unloaded();
        let each = pattern.indices().zip(counts);
        let pressures = each.map(|(ix, count)| unloaded.at_count(ix, f64::from(*count)).pressure);
        let [lowest, highest] = pressures.fold([None::<Pressure>; 2], |[low, high], own| {
            [
                Some(low.map_or(own, |low| if own < low { own } else { low })),
                Some(high.map_or(own, |high| if own > high { own } else { high })),
            ]
        });
        let volume = pattern.indices().map(|ix| unloaded.at_pressure(ix, self.pressure).volume);
        let cells: u32 = counts.iter().sum();
        let effects: Vec<_> = (pattern.compartments().iter().zip(effects))
            .map(|(own, effect)| (own.number, own.purpose == Purpose::SeatBone, effect))
            .collect();
        let seams = pattern.seam_lengths().into_iter().map(|(_, length)| length).sum();
        let numbers = pattern.compartments().iter().map(|own| own.number);
        ComparedCushion {
            size: pattern.size(),
            stock_pressure: stock.pressure,
            counts: numbers.zip(counts.iter().copied()).collect(),
            stock: stock.total(),
            pressures: [lowest, highest].map(|own| own.unwrap_or(self.pressure)),
            volume: volume.sum(),
            cells_mass: cell.film * f64::from(cells),
            mass: usual_mass(pattern, stock, cell, cells),
            seams,
            one_cell: OneCell::of(&effects),
        }
    }
}
