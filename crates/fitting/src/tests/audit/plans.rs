//! The audit of plans: what they reach, and what they cost that nobody asked for.

use case::{Date, Want};
use mechanics::Stop;

use crate::goals::aims::{Filling, real};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::plan::{PlanInput, plan};
use crate::search::progress::Progress;
use crate::tests::audit::clients::AuditClient;
use crate::tests::audit::scores::Judging;
use crate::tests::audit::witness::reach;

/// Stiffness of soft tissue in the second witness, Pa/m: the middle of what is plausible.
const TISSUE: f64 = 0.5e6;

/// What one plan does in one model.
#[derive(Clone, Debug, Default)]
pub(super) struct Scored {
    /// Each goal that is not refused, in order, and whether it is met.
    pub(super) met: Vec<(String, bool)>,
    /// What is taken off the site of the first off-load goal, in times of what is wanted.
    pub(super) relief: Option<f64>,
    pub(super) moved: f64,
    pub(super) broken: f64,
    pub(super) pitch: f64,
    /// Degrees of roll that nobody asked for.
    pub(super) roll: f64,
    pub(super) rise: f64,
    pub(super) clearance: f64,
    pub(super) harm: f64,
    /// Whether counts are below the layout's own low end.
    pub(super) below_low: bool,
    /// The share of the load on the side that carries more.
    pub(super) heavy_side: f64,
}

impl Scored {
    pub(super) fn new(judging: &Judging<'_>, filling: &Filling) -> Self {
        let goals = judging.needs.goals.iter().zip(judging.off(filling));
        let met = goals.filter_map(|(goal, off)| Some((kind(&goal.want), off? <= 1.0))).collect();
        let turn = (judging.roll(filling) - judging.roll(&judging.stock)).abs();
        let stock = judging.cushion.pattern().indices().map(|ix| judging.cushion.stock()[ix].cells);
        let mut counts = stock.zip(&filling.counts);
        let left = judging.left(filling);
        Self {
            met,
            relief: judging.relief(filling),
            moved: judging.moved(filling),
            broken: judging.broken(filling),
            pitch: judging.pitch(filling).abs(),
            roll: if judging.asks_for_a_turn() { 0.0 } else { turn },
            rise: judging.greatest_rise(filling),
            clearance: judging.least_clearance(filling),
            harm: judging.harm(filling),
            below_low: counts.any(|(cells, count)| *count < f64::from(cells.low)),
            heavy_side: left.max(1.0 - left),
        }
    }
}

/// The kind of a goal, as reports call it.
fn kind(want: &Want) -> String {
    match want {
        Want::OffLoad { .. } => "off-load".to_owned(),
        Want::LowerFront { .. } => "lower-front".to_owned(),
        other => other.id(),
    }
}

/// One client, planned and looked at.
pub(super) struct Planned {
    pub(super) client: AuditClient,
    pub(super) own: Scored,
    /// On a body with soft tissue, on another mesh; none where it does not rest there.
    pub(super) tissue: Option<Scored>,
    /// Whether something smaller keeps every goal that is met and every limit, with no more harm and
    /// no other goal farther off.
    pub(super) smaller: bool,
    pub(super) asymmetric: bool,
    /// What a slow search reaches.
    pub(super) reach: Option<Scored>,
    pub(super) counts: Vec<u32>,
}

/// Plans for a client and scores it; with what can be reached, where that is wanted.
pub(super) fn planned(client: AuditClient, with_reach: bool) -> Option<Planned> {
    let cushion = client.cushion(8.0, 16.0);
    let stock: Vec<u32> =
        cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect();
    let input = PlanInput {
        client: &client.client,
        passed: None,
        cushion: &cushion,
        on: Date::constant(2026, 3, 1),
        stop: Stop::never(),
        progress: Progress::none(),
    };
    let made = plan(&input, &stock).ok()?;
    let counts: Vec<u32> = made.counts.iter().map(|count| count.planned).collect();
    let real = real(&counts);
    let assumptions = assumed(&client, &cushion)?;
    let judging = Judging::new(&cushion, &client.client, &assumptions)?;
    let filling = judging.filling(&real, None)?;
    let own = Scored::new(&judging, &filling);
    let smaller = smaller(&judging, &filling, &own);
    let tissue = on_soft_tissue(&client, &real);
    let asymmetric = client.symmetric && is_asymmetric(&cushion, &counts);
    let reach = if with_reach { reached(&client, &cushion, &assumptions, &real) } else { None };
    Some(Planned { client, own, tissue, smaller, asymmetric, reach, counts })
}

pub(super) fn assumed(client: &AuditClient, cushion: &PreparedCushion) -> Option<Assumptions> {
    let weight = client.client.latest_weighing()?.weight;
    assumptions_of(&client.client, cushion, weight, Stop::never()).ok()
}

/// The counts under a body whose tissue gives way, on another mesh.
fn on_soft_tissue(client: &AuditClient, counts: &[f64]) -> Option<Scored> {
    let cushion = client.cushion(10.0, 20.0);
    let mut assumptions = assumed(client, &cushion)?;
    assumptions.sitter.tissue_stiffness = Some(TISSUE);
    let judging = Judging::new(&cushion, &client.client, &assumptions)?;
    let filling = judging.filling(counts, None)?;
    Some(Scored::new(&judging, &filling))
}

/// Whether three quarters of the change, or the change without its smallest parts, does as well.
fn smaller(judging: &Judging<'_>, filling: &Filling, own: &Scored) -> bool {
    let stock = &judging.stock.counts;
    let changed = |by: &dyn Fn(f64) -> f64| -> Vec<f64> {
        filling.counts.iter().zip(stock).map(|(count, stock)| stock + by(count - stock)).collect()
    };
    let less = changed(&|change| (0.75 * change).trunc());
    let without = changed(&|change| if change.abs() <= 2.0 { 0.0 } else { change });
    [less, without].iter().filter(|counts| **counts != filling.counts).any(|counts| {
        let Some(next) = judging.filling(counts, Some(filling)) else { return false };
        let off = |filling| judging.off(filling).into_iter().flatten();
        let nearer = off(&next).zip(off(filling)).all(|(then, now)| then <= now.max(0.75) + 0.25);
        let next = Scored::new(judging, &next);
        let kept = own.met.iter().zip(&next.met).all(|(was, is)| is.1 || !was.1);
        // What a fine mesh would not tell from the same.
        kept && nearer && next.broken <= own.broken + 0.02 && next.harm <= own.harm + 0.05
    })
}

fn is_asymmetric(cushion: &PreparedCushion, counts: &[u32]) -> bool {
    let pattern = cushion.pattern();
    pattern.indices().any(|ix| {
        pattern.partner(ix).is_some_and(|other| counts[ix.index()] != counts[other.index()])
    })
}

/// The best of some starts on the rough mesh, looked at on the mesh that plans are looked at on.
fn reached(
    client: &AuditClient,
    cushion: &PreparedCushion,
    assumptions: &Assumptions,
    planned: &[f64],
) -> Option<Scored> {
    let rough = Judging::roughly(cushion, &client.client, assumptions)?;
    let starts = [rough.stock.counts.clone(), planned.to_vec()];
    let best = reach(&rough, &starts)?;
    let judging = Judging::new(cushion, &client.client, assumptions)?;
    let filling = judging.filling(&best.counts, None)?;
    Some(Scored::new(&judging, &filling))
}
