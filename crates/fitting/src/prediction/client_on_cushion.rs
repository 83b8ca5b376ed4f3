//! A client over a cushion, meshed and ready to be asked what counts would do.

use case::BodyError;
use cushion::{Length, Pattern, Rim, StockFill, Volume};
use mechanics::{
    Bare, BareSheet, Body, Cells, Cut, Outcome, Parameters, Rest, Resting, SeatedBody, SheetModel,
    SiteName, Start, Stop, come_to_rest, come_to_rest_from,
};

use crate::goals::known::KnownFillings;
use crate::prediction::assumptions::outer_give;
use crate::prediction::bare_stock::BareStock;
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;

/// A cushion meshed once, for any body and any counts.
#[derive(Clone, Debug)]
pub(crate) struct MeshedCushion {
    model: SheetModel,
    each: Volume,
    packing: Vec<f64>,
    rim: Rim,
    /// The stock fill, in the pattern's order.
    stock: Vec<f64>,
    bare_stock: BareStock,
}

impl MeshedCushion {
    /// Puts a sheet over a pattern's compartments.
    #[must_use]
    pub(crate) fn new(
        model: SheetModel,
        pattern: &Pattern,
        each: Volume,
        stock: &StockFill,
    ) -> Self {
        Self {
            model,
            each,
            packing: pattern.indices().map(|ix| stock[ix].packing).collect(),
            rim: pattern.rim(),
            stock: pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect(),
            bare_stock: BareStock::default(),
        }
    }

    /// The sheet over the cushion.
    pub(crate) fn model(&self) -> &SheetModel {
        &self.model
    }

    /// The same cushion turned round by mistake.
    pub(crate) fn turned_round(&self, depth: Length) -> Self {
        let bare_stock = BareStock::default();
        Self { model: self.model.turned_round(depth), bare_stock, ..self.clone() }
    }

    /// The cells in each compartment, with a factor on their volume.
    pub(crate) fn cells(&self, counts: &[f64], factor: f64) -> Vec<Cells> {
        let each = self.each * factor;
        let packed = counts.iter().zip(&self.packing);
        packed.map(|(count, packing)| Cells { count: *count, each, packing: *packing }).collect()
    }

    /// The sheet without a body over the stock fill, which is asked for again and again; none for
    /// other counts.
    fn bare(&self, counts: &[f64], factor: f64, parameters: &Parameters) -> Option<BareSheet> {
        if counts != self.stock {
            return None;
        }
        let usual = self.usual_parameters();
        let usual = (&usual, &*self.cells(counts, 1.0));
        self.bare_stock.of(&self.model, usual, (parameters, &self.cells(counts, factor)))
    }

    /// Where any body comes to rest, under the usual parameters.
    pub(crate) fn rest_of(&self, placed: &SeatedBody, counts: &[f64]) -> Rest {
        self.rest_under(placed, counts, &self.usual_parameters(), Stop::never())
    }

    /// The usual parameters, and what the layout says of the outer walls.
    pub(crate) fn usual_parameters(&self) -> Parameters {
        let usual = Parameters::default();
        Parameters { outer_give: outer_give(usual.outer_give, self.rim, None), ..usual }
    }

    /// Where any body comes to rest.
    pub(crate) fn rest_under(
        &self,
        placed: &SeatedBody,
        counts: &[f64],
        parameters: &Parameters,
        stop: Stop<'_>,
    ) -> Rest {
        come_to_rest(&self.model, &self.cells(counts, 1.0), placed, parameters, None, stop)
    }
}

/// A body over a meshed cushion, with everything but the counts.
pub(crate) struct ClientOnCushion<'c> {
    cushion: &'c MeshedCushion,
    pub(crate) assumptions: Assumptions,
    placed: SeatedBody,
    pub(crate) stop: Stop<'c>,
}

/// An answer.
#[derive(Clone, Debug)]
pub(crate) struct Answer {
    pub(crate) rest: Rest,
}

impl Answer {
    /// The numbers, where the body is in balance.
    pub(crate) fn resting(&self) -> Option<&Resting> {
        self.rest.resting.as_ref()
    }
}

impl<'c> ClientOnCushion<'c> {
    /// Puts a client over a cushion. Searches end when they are told to stop; then they have no
    /// numbers.
    pub(crate) fn new(
        cushion: &'c MeshedCushion,
        assumptions: Assumptions,
        stop: Stop<'c>,
    ) -> Result<Self, BodyError> {
        let body = Body::of_client(&assumptions.sitter)?;
        let body = body.over_sag(assumptions.seat.sag, assumptions.seat.width);
        let placed = SeatedBody::new(&cushion.model, body);
        Ok(Self { cushion, assumptions, placed, stop })
    }

    /// The same client over the same cushion under other assumptions.
    ///
    /// # Errors
    ///
    /// Returns what in the client's measures is no body's.
    pub(crate) fn under(&self, assumptions: Assumptions) -> Result<Self, BodyError> {
        let same_body = assumptions.sitter == self.assumptions.sitter
            && assumptions.seat == self.assumptions.seat;
        if !same_body {
            return Self::new(self.cushion, assumptions, self.stop);
        }
        let (cushion, placed, stop) = (self.cushion, self.placed.clone(), self.stop);
        Ok(Self { cushion, assumptions, placed, stop })
    }

    pub(crate) fn model(&self) -> &SheetModel {
        &self.cushion.model
    }

    pub(crate) fn body(&self) -> &Body {
        self.placed.body()
    }

    fn cells(&self, counts: &[f64]) -> Vec<Cells> {
        self.cushion.cells(counts, self.assumptions.cells)
    }

    /// Where the body comes to rest on these counts, near an answer for like ones.
    pub(crate) fn rest(&self, counts: &[f64], near: Option<&Resting>) -> Answer {
        self.rest_from(counts, Start { near, ..Start::default() })
    }

    /// The same to within ten micrometres, for searches and for differences.
    pub(crate) fn rest_to_compare(&self, counts: &[f64], near: Option<&Resting>) -> Answer {
        self.rest_from(counts, Start { near, for_differences: true, ..Start::default() })
    }

    /// The same beside an answer for nearly these counts, with what walls take from the unloaded sheet
    /// as there: see [`Bare::AsNear`].
    pub(crate) fn rest_beside(&self, counts: &[f64], near: &Resting) -> Answer {
        let (near, bare) = (Some(near), Bare::AsNear);
        self.rest_from(counts, Start { near, bare, for_differences: true })
    }

    fn rest_from(&self, counts: &[f64], start: Start<'_>) -> Answer {
        let (cells, parameters) = (self.cells(counts), &self.assumptions.parameters);
        let known = match start.bare {
            Bare::AsNear => None,
            _ => self.cushion.bare(counts, self.assumptions.cells, parameters),
        };
        let bare = known.as_ref().map_or(start.bare, Bare::Known);
        let (model, start) = (&self.cushion.model, Start { bare, ..start });
        Answer {
            rest: come_to_rest_from(start, model, &cells, &self.placed, parameters, self.stop),
        }
    }
}

/// A client over the meshes that counts are looked for on.
pub(crate) struct SearchMeshes<'c> {
    /// On which counts are solved.
    pub(crate) coarse: ClientOnCushion<'c>,
    /// On which moves are tried: they are differences, which need less.
    pub(crate) rough: ClientOnCushion<'c>,
    /// What was solved on the coarse one.
    pub(crate) known: KnownFillings,
    /// The same on the rough one.
    pub(crate) known_roughly: KnownFillings,
}

impl<'c> SearchMeshes<'c> {
    /// Puts a client over the coarse and the rough mesh of a cushion.
    ///
    /// # Errors
    ///
    /// Returns what in the client's measures is no body's.
    pub(crate) fn new(
        cushion: &'c PreparedCushion,
        assumptions: &Assumptions,
        stop: Stop<'c>,
    ) -> Result<Self, BodyError> {
        let on = |mesh| ClientOnCushion::new(mesh, assumptions.clone(), stop);
        let (coarse, rough) = (on(cushion.coarse())?, on(cushion.rough())?);
        let [known, known_roughly] = [KnownFillings::default(), KnownFillings::default()];
        Ok(Self { coarse, rough, known, known_roughly })
    }
}

/// Whether there are numbers to be had.
pub(crate) fn has_numbers(rest: &Rest) -> bool {
    matches!(rest.outcome, Outcome::AtRest | Outcome::Bottomed) && rest.resting.is_some()
}

/// Where in the list of sites a site is.
pub(crate) fn index_of(body: &Body, name: SiteName) -> Option<usize> {
    body.sites().iter().position(|site| site.name == name)
}

/// Heights along a cut, in mm: unloaded top, loaded top, underside of the body.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// The top without the client.
    pub unloaded: Vec<[f64; 2]>,
    /// The top under the client.
    pub loaded: Vec<[f64; 2]>,
    /// The client's underside, as far as the cushion reaches.
    pub body: Vec<[f64; 2]>,
}

impl ClientOnCushion<'_> {
    /// The heights along a cut of an answer; none where it has no numbers.
    pub(crate) fn profile(&self, answer: &Answer, cut: Cut) -> Option<Profile> {
        let resting = answer.resting()?;
        let skin = self.placed.skin(self.model(), resting.pose);
        let in_mm = |values: &[f64]| {
            let cut = self.model().along_cut(values, cut);
            cut.into_iter().map(|[along, height]| [along * 1e3, height * 1e3]).collect()
        };
        Some(Profile {
            unloaded: in_mm(&resting.unloaded),
            loaded: in_mm(&resting.sheet),
            body: in_mm(&skin),
        })
    }
}
