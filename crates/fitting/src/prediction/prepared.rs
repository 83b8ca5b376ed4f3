//! A cushion made ready for mechanics: meshed finely and coarsely, with its stock fill.

use case::BodyError;
use std::sync::OnceLock;

use case::{Client, Prediction, StockError};
use cushion::{Cell, Length, Mass, Pattern, StockFill, Volume};
use mechanics::{
    Cut, NestedMeshes, Parameters, SheetModel, SiteName, Stop, UnitSheets, UnloadedCushion,
    unit_sheets,
};

use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{MeshedCushion, Profile};
use crate::prediction::predictor::{AlreadySolved, Predictor};

/// Width of triangles: of the mesh whose numbers are given, and of the one that is searched on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacings {
    /// Of the mesh whose numbers are given.
    pub fine: Length,
    /// Of the mesh that is searched on.
    pub coarse: Length,
    /// Of the mesh that spreads come from: they are differences, which need less.
    pub rough: Length,
    /// Of the mesh for what need not be known finely: which way an estimate goes, which mistake explains
    /// what was found, how widely a stock fill's clearance may lie.
    /// Moves are not tried on it: pressures on small sites are lost there, and with them a tenth of all goals.
    pub roughest: Length,
}

impl Spacings {
    /// One mesh for all.
    #[must_use]
    pub fn all(spacing: Length) -> Self {
        Self { fine: spacing, coarse: spacing, rough: spacing, roughest: spacing }
    }

    /// Those for many bodies, of which numbers are given on the mesh that is searched on.
    #[must_use]
    pub fn of_many_bodies() -> Self {
        let Self { coarse, rough, .. } = Self::default();
        Self { fine: coarse, coarse, rough, roughest: rough }
    }
}

impl Default for Spacings {
    fn default() -> Self {
        let mm = Length::from_mm;
        Self { fine: mm(4.0), coarse: mm(8.0), rough: mm(16.0), roughest: mm(24.0) }
    }
}

/// A pattern with its stock fill and its meshes, for any client and any counts.
#[derive(Clone, Debug)]
pub struct PreparedCushion {
    pattern: Pattern,
    unloaded: UnloadedCushion,
    meshes: NestedMeshes,
    units: UnitSheets,
    each: Volume,
    spacings: Spacings,
    // What mechanics needs is made when it is first asked for: paper needs none of it.
    fine: OnceLock<MeshedCushion>,
    coarse: OnceLock<MeshedCushion>,
    rough: OnceLock<MeshedCushion>,
    roughest: OnceLock<MeshedCushion>,
}

impl PreparedCushion {
    /// Meshes a pattern and finds its stock fill.
    ///
    /// # Errors
    ///
    /// Returns an error where the pattern cannot be meshed, or has no stock fill.
    pub fn new(pattern: &Pattern, cell: &Cell, spacings: Spacings) -> Result<Self, StockError> {
        let meshes = NestedMeshes::new(pattern, spacings.fine)?;
        let units = unit_sheets(&meshes);
        let parameters = Parameters::default();
        let unloaded = UnloadedCushion::of_meshes(pattern, cell, &parameters, &meshes, &units)?;
        Ok(Self {
            pattern: pattern.clone(),
            unloaded,
            meshes,
            units,
            each: cell.inflated,
            spacings,
            fine: OnceLock::new(),
            coarse: OnceLock::new(),
            rough: OnceLock::new(),
            roughest: OnceLock::new(),
        })
    }

    /// The pattern.
    #[must_use]
    pub fn pattern(&self) -> &Pattern {
        &self.pattern
    }

    /// The volume of one cell.
    pub(crate) fn each(&self) -> Volume {
        self.each
    }

    /// The stock fill.
    #[must_use]
    pub fn stock(&self) -> &StockFill {
        self.unloaded.stock()
    }

    /// The unloaded cushion, to ask for other counts.
    #[must_use]
    pub fn unloaded(&self) -> &UnloadedCushion {
        &self.unloaded
    }

    /// The mesh whose numbers are given.
    pub(crate) fn fine(&self) -> &MeshedCushion {
        self.fine.get_or_init(|| self.meshed(&self.meshes, &self.units))
    }

    /// Whether numbers are given on the mesh that is searched on.
    pub(crate) fn is_coarse(&self) -> bool {
        self.spacings.coarse == self.spacings.fine
    }

    /// The mesh that is searched on.
    pub(crate) fn coarse(&self) -> &MeshedCushion {
        if self.is_coarse() {
            return self.fine();
        }
        self.coarse.get_or_init(|| self.meshed_at(self.spacings.coarse))
    }

    /// The mesh that spreads come from.
    pub(crate) fn rough(&self) -> &MeshedCushion {
        if self.spacings.rough == self.spacings.coarse {
            return self.coarse();
        }
        self.rough.get_or_init(|| self.meshed_at(self.spacings.rough))
    }

    /// Whether spreads come from the roughest mesh.
    pub(crate) fn spreads_on_roughest(&self) -> bool {
        self.spacings.roughest == self.spacings.rough
    }

    /// The mesh for what need not be known finely.
    pub(crate) fn roughest(&self) -> &MeshedCushion {
        if self.spreads_on_roughest() {
            return self.rough();
        }
        self.roughest.get_or_init(|| self.meshed_at(self.spacings.roughest))
    }

    fn meshed_at(&self, spacing: Length) -> MeshedCushion {
        let meshes = NestedMeshes::new(&self.pattern, spacing);
        let meshes = meshes.expect("what was meshed finely can be meshed coarsely");
        self.meshed(&meshes, &unit_sheets(&meshes))
    }

    fn meshed(&self, meshes: &NestedMeshes, units: &UnitSheets) -> MeshedCushion {
        let model = SheetModel::with_units(meshes, units, self.pattern.wall_height());
        MeshedCushion::new(model, &self.pattern, self.each, self.stock())
    }

    /// Predicts what counts would do under a client of this weight, one for each compartment in
    /// the pattern's order. What was told to stop has no numbers.
    ///
    /// # Errors
    ///
    /// Returns what in the client's measures is no body's.
    ///
    /// # Panics
    ///
    /// Panics unless there is a count for each compartment.
    pub fn predict(
        &self,
        client: &Client,
        weight: Mass,
        counts: &[u32],
        stop: Stop<'_>,
    ) -> Result<(Prediction, Vec<CutThrough>), BodyError> {
        let assumptions = assumptions_of(client, self, weight, stop)?;
        let predictor = Predictor::new(self, &assumptions, stop)?;
        let (prediction, answer) =
            predictor.predict(&self.pattern, counts, AlreadySolved::default());
        let cuts = SiteCut::ALL.into_iter().filter_map(|at| {
            let seated = predictor.fine();
            let cut = at.cut(seated.body())?;
            let profile = seated.profile(&answer, cut)?;
            let seams = seated.model().seams_along(cut, self.pattern.size());
            let on = |(own, left): (&mechanics::SiteRest, &case::PredictedSite)| {
                let ([x, y], site) = (own.site.at, own.site.name);
                let along = if at == SiteCut::SeatBones { x } else { y };
                let height = left.clearance;
                at.shows(site).then_some(CutSite { site, at: along * 1e3, height })
            };
            let predicted = &prediction.seated.as_ref()?.sites;
            let sites = answer.resting()?.sites.iter().zip(predicted).filter_map(on).collect();
            Some(CutThrough { at, profile, seams, sites })
        });
        let cuts = cuts.collect();
        Ok((prediction, cuts))
    }
}

/// Where the cushion is cut for a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SiteCut {
    /// From left to right through the seat bones.
    SeatBones,
    /// From rear to front through the seat bone of a side.
    Through(cushion::Side),
}

impl SiteCut {
    /// All, in the order of a drawing.
    pub const ALL: [Self; 3] =
        [Self::SeatBones, Self::Through(cushion::Side::Left), Self::Through(cushion::Side::Right)];

    /// Whether a site lies in the cut.
    fn shows(self, name: SiteName) -> bool {
        match self {
            Self::SeatBones => matches!(name, SiteName::SeatBone(_) | SiteName::Trochanter(_)),
            Self::Through(side) => name == SiteName::SeatBone(side),
        }
    }

    fn cut(self, body: &mechanics::Body) -> Option<Cut> {
        let at = |side| body.site(SiteName::SeatBone(side)).map(|site| site.at);
        match self {
            Self::SeatBones => at(cushion::Side::Left).map(|[_, y]| Cut::Across { forward: y }),
            Self::Through(side) => at(side).map(|[x, _]| Cut::Along { right: x }),
        }
    }
}

/// One cut through the cushion under a client.
#[derive(Clone, Debug, PartialEq)]
pub struct CutThrough {
    /// Where.
    pub at: SiteCut,
    /// The heights along it.
    pub profile: Profile,
    /// Where seams are, mm along it.
    pub seams: Vec<f64>,
    /// Named places on the body.
    pub sites: Vec<CutSite>,
}

/// A named place on the body in a cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CutSite {
    /// Which.
    pub site: SiteName,
    /// Where along the cut, mm.
    pub at: f64,
    /// Cushion left under it.
    pub height: case::Spread<Length>,
}
