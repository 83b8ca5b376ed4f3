//! The report on two layouts beside each other.

use case::{
    Both, ComparedCushion, ComparedHarm, ComparedMeasure, ComparedPair, ComparedSizes,
    ComparedVerdict, Digest, MeasureCompared, OneCell,
};
use cushion::Length;
use schemars::JsonSchema;
use serde::Serialize;

use super::{json, rounded};

/// One of the layouts.
pub struct ComparedLayout<'a> {
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub digest: &'a Digest,
}

/// What is reported of a comparison.
pub struct ComparisonReport<'a> {
    /// The layouts.
    pub layouts: Both<ComparedLayout<'a>>,
    /// The cell.
    pub cell: &'a str,
    /// The client's code, where it is for one.
    pub client: Option<&'a str>,
    /// For how many there are sizes.
    pub sizes: &'a ComparedSizes,
    /// The cushions beside each other.
    pub pairs: &'a [ComparedPair],
    /// How many come to harm.
    pub harm: &'a ComparedHarm,
    /// What differs.
    pub measures: &'a [MeasureCompared],
    /// What is compared and what a difference comes to, said.
    pub say:
        (&'a dyn Fn(ComparedMeasure) -> &'static str, &'a dyn Fn(ComparedVerdict) -> &'static str),
}

/// Two layouts beside each other, filled to one unloaded fill pressure.
#[derive(Serialize, JsonSchema)]
pub(super) struct ComparisonBody<'a> {
    a: LayoutBody<'a>,
    b: LayoutBody<'a>,
    cell: &'a str,
    /// The client's code; null for bodies of a table.
    client: Option<&'a str>,
    bodies: BodiesBody,
    /// Cushions that stand beside each other, in the order of their sizes.
    pairs: Vec<PairBody>,
    harm: HarmBody,
    measures: Vec<MeasureBody>,
}

/// A layout.
#[derive(Serialize, JsonSchema)]
struct LayoutBody<'a> {
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
}

/// For how many bodies the layouts have sizes.
#[derive(Serialize, JsonSchema)]
struct BodiesBody {
    /// In the table, or drawn of it.
    all: usize,
    with_a_size_in_both: usize,
    only_in_a: usize,
    only_in_b: usize,
    in_neither: usize,
    /// Of those with a size in both, those whose sizes differ.
    with_another_size: usize,
}

/// Two cushions at one unloaded fill pressure.
#[derive(Serialize, JsonSchema)]
struct PairBody {
    unloaded_fill_kpa: f64,
    /// Whose stock fill has this pressure, which is the lower one: `a`, `b` or `both`.
    stock_fill_of: &'static str,
    /// Bodies that sit on both.
    bodies: usize,
    a: CushionBody,
    b: CushionBody,
}

/// One of them.
#[derive(Serialize, JsonSchema)]
struct CushionBody {
    /// Width x depth in mm.
    size_mm: String,
    compartments: Vec<CountBody>,
    cells: u32,
    cells_as_supplied: u32,
    stock_fill_kpa: f64,
    /// The lowest and the highest unloaded fill pressure of a compartment: cells are whole.
    lowest_kpa: f64,
    highest_kpa: f64,
    volume_ml: f64,
    cells_g: f64,
    cushion_g: f64,
    cushion_low_g: f64,
    cushion_high_g: f64,
    seams_mm: f64,
    /// What one cell changes under a seat bone, under the middle one of the bodies; null where they
    /// come to no rest.
    one_cell: Option<OneCellBody>,
}

/// The cells of one compartment.
#[derive(Serialize, JsonSchema)]
struct CountBody {
    number: u8,
    cells: u32,
}

/// What one cell does where it does least and where it does most.
#[derive(Serialize, JsonSchema)]
struct OneCellBody {
    finest_number: u8,
    finest_mm: f64,
    coarsest_number: u8,
    coarsest_mm: f64,
    /// How much higher a seat bone stands with the most cells on its side and the fewest on the
    /// other; null where no compartment is for one seat bone.
    reach_number: Option<u8>,
    reach_mm: Option<f64>,
}

/// How many of those who sit on both come to harm.
#[derive(Serialize, JsonSchema)]
struct HarmBody {
    no_rest: AB<usize>,
    bottomed: AB<usize>,
    /// Less than 25 mm under a seat bone.
    little_left: AB<usize>,
}

/// Something of each.
#[derive(Serialize, JsonSchema)]
struct AB<T> {
    a: T,
    b: T,
}

impl<T> From<[T; 2]> for AB<T> {
    fn from([a, b]: [T; 2]) -> Self {
        Self { a, b }
    }
}

/// One measure.
#[derive(Serialize, JsonSchema)]
struct MeasureBody {
    id: &'static str,
    /// The unit of all its values.
    unit: &'static str,
    /// Bodies that have a number on both.
    bodies: usize,
    /// What 5, 50 and 95 of a hundred have at most.
    percentiles: AB<[f64; 3]>,
    /// B less A body by body: what 25, 50 and 75 of a hundred have at most.
    difference: [f64; 3],
    /// The least difference that the model can tell; null where it can tell none.
    told_from: Option<f64>,
    /// `cannot-tell`, `no-difference`, `more` or `less` (of B), or `by-body`.
    verdict: &'static str,
    text: String,
}

/// Returns the report on a comparison.
#[must_use]
pub fn comparison(program: &str, own: &ComparisonReport<'_>) -> String {
    let layout = |at: usize| {
        let ComparedLayout { layout, revision, digest } = &own.layouts[at];
        LayoutBody { layout, revision: *revision, layout_digest: digest.as_str() }
    };
    let ComparedSizes { bodies, both, only, neither, other_size } = *own.sizes;
    let ComparedHarm { no_rest, bottomed, little_left } = *own.harm;
    let body = ComparisonBody {
        a: layout(0),
        b: layout(1),
        cell: own.cell,
        client: own.client,
        bodies: BodiesBody {
            all: bodies,
            with_a_size_in_both: both,
            only_in_a: only[0],
            only_in_b: only[1],
            in_neither: neither,
            with_another_size: other_size,
        },
        pairs: own.pairs.iter().map(pair).collect(),
        harm: HarmBody {
            no_rest: no_rest.into(),
            bottomed: bottomed.into(),
            little_left: little_left.into(),
        },
        measures: own.measures.iter().map(|it| measure(it, own.say)).collect(),
    };
    json("compare", program, Vec::new(), body)
}

fn pair(own: &ComparedPair) -> PairBody {
    let [a, b] = &own.cushions;
    PairBody {
        unloaded_fill_kpa: rounded(own.pressure.to_kpa()),
        stock_fill_of: match own.pressure_of() {
            None => "both",
            Some(0) => "a",
            Some(_) => "b",
        },
        bodies: own.bodies,
        a: cushion(a),
        b: cushion(b),
    }
}

fn cushion(own: &ComparedCushion) -> CushionBody {
    let count = |(number, cells): &(u8, u32)| CountBody { number: *number, cells: *cells };
    CushionBody {
        size_mm: own.size.to_string(),
        compartments: own.counts.iter().map(count).collect(),
        cells: own.cells(),
        cells_as_supplied: own.stock,
        stock_fill_kpa: rounded(own.stock_pressure.to_kpa()),
        lowest_kpa: rounded(own.pressures[0].to_kpa()),
        highest_kpa: rounded(own.pressures[1].to_kpa()),
        volume_ml: own.volume.to_ml().round(),
        cells_g: rounded(own.cells_mass.to_g()),
        cushion_g: own.mass.central.to_g().round(),
        cushion_low_g: own.mass.low.to_g().round(),
        cushion_high_g: own.mass.high.to_g().round(),
        seams_mm: rounded(own.seams.to_mm()),
        one_cell: own.one_cell.as_ref().map(one_cell),
    }
}

fn one_cell(own: &OneCell) -> OneCellBody {
    let mm = |length: Length| rounded(length.to_mm());
    OneCellBody {
        finest_number: own.finest.0,
        finest_mm: mm(own.finest.1),
        coarsest_number: own.coarsest.0,
        coarsest_mm: mm(own.coarsest.1),
        reach_number: own.reach.map(|reach| reach.0),
        reach_mm: own.reach.map(|reach| mm(reach.1)),
    }
}

fn measure(
    own: &MeasureCompared,
    (say, verdict): (
        &dyn Fn(ComparedMeasure) -> &'static str,
        &dyn Fn(ComparedVerdict) -> &'static str,
    ),
) -> MeasureBody {
    MeasureBody {
        id: own.measure.id(),
        unit: own.measure.unit(),
        bodies: own.bodies,
        percentiles: own.of.map(|it| it.map(rounded)).into(),
        difference: own.difference.map(rounded),
        told_from: own.told_from.map(rounded),
        verdict: own.verdict.id(),
        text: format!("{}: {}", say(own.measure), verdict(own.verdict)),
    }
}
