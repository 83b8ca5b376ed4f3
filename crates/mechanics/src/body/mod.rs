//! The loaded underside of the body, and the load that it brings.
//!
//! A body is rigid here: its shape is that of the skin under load. A client's soft tissue may be
//! asked for; then the shape is that of the skin without load, and tissue counts once. Height is
//! measured from its lowest point, in the frame of the cushion: x to the client's right, y forward
//! from the rear edge, in metres.

mod board;
mod client_form;
mod jig;
mod load;
mod reference_body;
mod seated_client;
mod site;
mod smooth;
mod soft_skin;

pub use self::board::Board;
pub use self::jig::Jig;
pub use self::load::{DEFAULT_SEAT_SHARE, GRAVITY, Load, SEAT_SHARES};
pub use self::seated_client::{ASIS_SPACING, Obliquity, SeatedClient, ThighPose};
pub use self::site::Site;
pub use case::SiteName;

use self::client_form::ClientForm;
use self::reference_body::ReferenceForm;
use self::soft_skin::unloaded_height;
use crate::mesh::Mesh;
use case::BodyError;
use cushion::Length;

/// A body on the cushion: shape, named sites and load.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    form: Form,
    /// Height of the form's lowest point, m.
    lowest: f64,
    sites: Vec<Site>,
    load: Load,
    /// Stiffness of soft tissue, Pa/m: heights are then of the skin without load.
    tissue: Option<f64>,
    /// Sag of the base in the middle and half its width, m.
    sag: Option<[f64; 2]>,
}

#[derive(Clone, Debug, PartialEq)]
enum Form {
    Reference(ReferenceForm),
    Client(ClientForm),
    Jig(Jig),
    Board(Board),
}

impl Form {
    fn height(&self, x: f64, y: f64) -> f64 {
        match self {
            Self::Reference(form) => form.height(x, y),
            Self::Client(form) => form.height(x, y),
            Self::Jig(form) => form.height(x, y),
            Self::Board(form) => form.height(x, y),
        }
    }
}

impl Body {
    /// The body of the straight-seam reference cases, on which two other programs agree: round
    /// buttocks with seat bones 120 mm apart, thighs 20 mm above them.
    #[must_use]
    pub fn reference(load: Load) -> Self {
        let form = Form::Reference(ReferenceForm);
        Self::new(form, reference_body::sites(), load)
            .expect("the reference body has a lowest point")
    }

    /// The loaded-contour jig.
    #[must_use]
    pub fn jig(jig: Jig, load: Load) -> Self {
        let sites = jig.sites();
        Self::new(Form::Jig(jig), sites, load).expect("a jig has a lowest point")
    }

    /// A stiff board; it has no named sites.
    #[must_use]
    pub fn board(board: Board, load: Load) -> Self {
        Self {
            form: Form::Board(board),
            lowest: 0.0,
            sites: Vec::new(),
            load,
            tissue: None,
            sag: None,
        }
    }

    /// The body of a sitting client.
    ///
    /// # Errors
    ///
    /// Returns what in the measures is not a body's, or that the pelvis is so oblique that its
    /// higher side falls away past the lower one.
    pub fn of_client(client: &SeatedClient) -> Result<Self, BodyError> {
        let form = ClientForm::new(client)?;
        let sites = form.sites();
        let load = client.load()?;
        let too_oblique = form.too_oblique();
        let tissue = client.tissue_stiffness()?;
        let body = Self::new(Form::Client(form), sites, load).ok_or(too_oblique)?;
        Ok(Self { tissue, ..body })
    }

    /// None where the form has no lowest point.
    fn new(form: Form, sites: Vec<Site>, load: Load) -> Option<Self> {
        let lows = sites.iter().map(|site| lowest_near(&form, site.at));
        let lowest = lows.collect::<Option<Vec<_>>>()?.into_iter().fold(f64::INFINITY, f64::min);
        Some(Self { form, lowest, sites, load, tissue: None, sag: None })
    }

    /// Returns the height of the underside above its own lowest point, in metres: of the skin
    /// under load, or without load where soft tissue gives way.
    #[must_use]
    pub fn height(&self, x: f64, y: f64) -> f64 {
        let sagged = self.sag.map_or(0.0, |[by, half]| by * (1.0 - (x / half).powi(2)).max(0.0));
        let loaded = (self.form.height(x, y) - self.lowest).max(0.0);
        self.tissue.map_or(loaded, |tissue| unloaded_height(loaded, tissue)) + sagged
    }

    /// The same body over a sling seat that sags by so much in the middle, between sides so far
    /// apart. Heights are those above the sagging seat: the cushion follows it down.
    #[must_use]
    pub fn over_sag(self, by: Length, width: Length) -> Self {
        Self { sag: Some([by.to_m(), width.to_m() / 2.0]), ..self }
    }

    /// Returns the height over each node of a mesh.
    #[must_use]
    pub fn heights(&self, mesh: &Mesh) -> Vec<f64> {
        mesh.nodes().iter().map(|node| self.height(node.x, node.y)).collect()
    }

    /// The named sites, in a fixed order.
    #[must_use]
    pub fn sites(&self) -> &[Site] {
        &self.sites
    }

    /// Finds a named site.
    #[must_use]
    pub fn site(&self, name: SiteName) -> Option<&Site> {
        self.sites.iter().find(|site| site.name == name)
    }

    /// The load.
    #[must_use]
    pub fn load(&self) -> &Load {
        &self.load
    }

    /// Stiffness of soft tissue between bone and skin, Pa/m; none where the body is rigid, as every
    /// body is but a client's that asks for it.
    #[must_use]
    pub fn tissue_stiffness(&self) -> Option<f64> {
        self.tissue
    }

    /// The same body under another load.
    #[must_use]
    pub fn with_load(self, load: Load) -> Self {
        Self { load, ..self }
    }
}

/// How far from a site its lowest point is looked for, m: more than any thigh is long.
const FARTHEST: f64 = 1.0;
/// How often it is stepped at most: a valley that runs slantwise takes up to some 8000 steps.
const MOST_STEPS: usize = 20_000;

/// Least height near a place: steps along the axes that halve where none leads down. None where
/// the form falls away without end.
fn lowest_near(form: &Form, at: [f64; 2]) -> Option<f64> {
    let [mut x, mut y] = at;
    let mut least = form.height(x, y);
    // From an eighth of a buttock down to what no height can show.
    let mut step = 0.016;
    for _ in 0..MOST_STEPS {
        if step <= 1e-9 {
            break;
        }
        let ways = [(step, 0.0), (-step, 0.0), (0.0, step), (0.0, -step)];
        let tries = ways.map(|(dx, dy)| (form.height(x + dx, y + dy), x + dx, y + dy));
        let best = tries.into_iter().min_by(|a, b| a.0.total_cmp(&b.0));
        match best {
            Some((height, to_x, to_y)) if height < least => (least, x, y) = (height, to_x, to_y),
            _ => step /= 2.0,
        }
        if libm::hypot(x - at[0], y - at[1]) > FARTHEST {
            return None;
        }
    }
    Some(least)
}

#[cfg(test)]
mod tests;
