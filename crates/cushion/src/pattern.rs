//! A pattern: a layout at one size, with every seam drawn and every compartment found.

use kurbo::{Point, Vec2};

use crate::curve::{Chain, Piece};
use crate::{Area, Length, Mass, Name, Size, Volume, Words};

/// How near two compartments are to being mirror images, in millimetres: a micrometre is far above
/// the rounding of mirrored curves, and far below what anyone sews.
const ALIKE: f64 = 1e-3;

/// Names one compartment of one [`Pattern`]; in the order of the numbers sewn at the openings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CompartmentIx(pub(crate) u32);

impl CompartmentIx {
    /// Place in the order of numbers, from 0.
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// Names one edge of one [`Pattern`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EdgeIx(pub(crate) u32);

impl EdgeIx {
    /// Place in [`Pattern::edges`].
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// Names one node of one [`Pattern`]: where seams meet, or a named point on a seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeIx(pub(crate) u32);

impl NodeIx {
    /// Place in [`Pattern::nodes`].
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// What a cushion is meant for, as a supplier declares it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// General use.
    General,
    /// Skin protection.
    SkinProtection,
    /// Positioning.
    Positioning,
    /// Skin protection and positioning.
    SkinProtectionAndPositioning,
}

impl Class {
    /// All classes, in the order of the documentation.
    pub const ALL: [Self; 4] = [
        Self::General,
        Self::SkinProtection,
        Self::Positioning,
        Self::SkinProtectionAndPositioning,
    ];

    /// The words used in files and on pages.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::General => "general use",
            Self::SkinProtection => "skin protection",
            Self::Positioning => "positioning",
            Self::SkinProtectionAndPositioning => "skin protection and positioning",
        }
    }
}

/// What holds the outer walls.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Rim {
    /// Nothing but the cloth: they may bow outwards under the client.
    #[default]
    Soft,
    /// A stiff or boxed border all around, which keeps them upright.
    Boxed,
}

impl Rim {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 2] = [(Self::Soft, "soft"), (Self::Boxed, "boxed")];
}

/// What a compartment is for, in the words of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Purpose {
    /// Carries or relieves an ischial tuberosity.
    SeatBone,
    /// Relieves the coccyx and sacrum.
    Coccyx,
    /// Carries a trochanter.
    Trochanter,
    /// Stops the pelvis from sliding forward, in front of the seat bones.
    PreIschialShelf,
    /// Carries a thigh.
    Thigh,
    /// Keeps the thighs apart.
    MedialThighSupport,
    /// Keeps a thigh from falling outwards.
    LateralThighSupport,
    /// Keeps the pelvis centred, from the side.
    LateralPelvicSupport,
    /// The edge under the knees.
    FrontEdge,
    /// Nothing in particular.
    General,
}

impl Purpose {
    /// All purposes, in the order of the documentation.
    pub const ALL: [Self; 10] = [
        Self::SeatBone,
        Self::Coccyx,
        Self::Trochanter,
        Self::PreIschialShelf,
        Self::Thigh,
        Self::MedialThighSupport,
        Self::LateralThighSupport,
        Self::LateralPelvicSupport,
        Self::FrontEdge,
        Self::General,
    ];

    /// The words used in files and for therapists.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::SeatBone => "seat bone",
            Self::Coccyx => "coccyx",
            Self::Trochanter => "trochanter",
            Self::PreIschialShelf => "pre-ischial shelf",
            Self::Thigh => "thigh",
            Self::MedialThighSupport => "medial thigh support",
            Self::LateralThighSupport => "lateral thigh support",
            Self::LateralPelvicSupport => "lateral pelvic support",
            Self::FrontEdge => "front edge",
            Self::General => "general",
        }
    }
}

/// A side of the client, never of the viewer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// The client's left: negative x.
    Left,
    /// The client's right: positive x.
    Right,
}

impl Side {
    /// `left` or `right`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The other side.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// A stretch of seam between two nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// The seam that it belongs to, as the layout calls it.
    pub seam: Name,
    /// Where it begins.
    pub from: NodeIx,
    /// Where it ends.
    pub to: NodeIx,
    /// Its course from `from` to `to`, in millimetres.
    pub chain: Chain,
    /// The compartment to the left hand when going from `from` to `to`; none outside.
    pub left: Option<CompartmentIx>,
    /// The compartment to the right hand; none outside.
    pub right: Option<CompartmentIx>,
}

impl Edge {
    /// Whether it is a part of the outer seam.
    #[must_use]
    pub fn is_outer(&self) -> bool {
        self.left.is_none() || self.right.is_none()
    }
}

/// A closed way along edges, the compartment always on the left hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// The edges in order; `true` where the way runs from the edge's `from` to its `to`.
    pub steps: Vec<(EdgeIx, bool)>,
}

/// One compartment of a pattern.
#[derive(Clone, Debug, PartialEq)]
pub struct Compartment {
    /// How files call it, such as `rear-left`.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// What it is, in plain words for carers, such as "under the left seat bone".
    pub words: Words,
    /// Whether those words stand for its mirror partner too: then the side is said with them.
    pub has_partner: bool,
    /// What it is for.
    pub purpose: Purpose,
    /// The client's side, or none where it lies across the middle.
    pub side: Option<Side>,
    /// A point inside it, in millimetres, where its number is drawn.
    pub seed: Point,
    /// Its outer way, counter-clockwise.
    pub outer: Ring,
    /// Ways around islands inside it, clockwise.
    pub holes: Vec<Ring>,
}

/// A layout at one size.
///
/// Coordinates are in millimetres: x to the client's right, y forward from the rear edge, origin
/// at the middle of the rear edge, seen from above. The compartments cover the outline without
/// gap and without overlap, because each is a face that the seams cut out; they are in the order
/// of their numbers. Made by [`crate::arrange`].
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    pub(crate) layout: Name,
    pub(crate) revision: Option<u32>,
    pub(crate) title: String,
    pub(crate) class: Class,
    pub(crate) size: Size,
    pub(crate) wall_height: Length,
    pub(crate) rim: Rim,
    pub(crate) stock_crown: Length,
    pub(crate) max_user_weight: Option<Mass>,
    pub(crate) mirrored: bool,
    pub(crate) nodes: Vec<Point>,
    pub(crate) edges: Vec<Edge>,
    pub(crate) compartments: Vec<Compartment>,
}

impl Pattern {
    /// The layout's name.
    #[must_use]
    pub fn layout(&self) -> &Name {
        &self.layout
    }

    /// Which revision of the layout it was drawn by, where its author counts them.
    #[must_use]
    pub fn revision(&self) -> Option<u32> {
        self.revision
    }

    /// The layout's title.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// What the supplier declares it for.
    #[must_use]
    pub fn class(&self) -> Class {
        self.class
    }

    /// Width by depth.
    #[must_use]
    pub fn size(&self) -> Size {
        self.size
    }

    /// Height of every seam above the seat base when the cushion is filled.
    #[must_use]
    pub fn wall_height(&self) -> Length {
        self.wall_height
    }

    /// What holds the outer walls.
    #[must_use]
    pub fn rim(&self) -> Rim {
        self.rim
    }

    /// How far the compartment that rises most rises above its walls in the stock fill, unloaded.
    #[must_use]
    pub fn stock_crown(&self) -> Length {
        self.stock_crown
    }

    /// The heaviest client that it is rated for; none at a size that it is not made in.
    #[must_use]
    pub fn max_user_weight(&self) -> Option<Mass> {
        self.max_user_weight
    }

    /// Whether the right half is the mirror image of the left.
    #[must_use]
    pub fn is_mirrored(&self) -> bool {
        self.mirrored
    }

    /// The nodes, in millimetres.
    #[must_use]
    pub fn nodes(&self) -> &[Point] {
        &self.nodes
    }

    /// The edges.
    #[must_use]
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// The compartments, in the order of their numbers.
    #[must_use]
    pub fn compartments(&self) -> &[Compartment] {
        &self.compartments
    }

    /// All indices, in the order of the numbers.
    pub fn indices(&self) -> impl Iterator<Item = CompartmentIx> + use<> {
        (0..self.compartments.len() as u32).map(CompartmentIx)
    }

    /// Finds a compartment by what files call it.
    #[must_use]
    pub fn by_id(&self, id: &str) -> Option<CompartmentIx> {
        self.indices().find(|&ix| self[ix].id.as_str() == id)
    }

    /// Finds a compartment by its number.
    #[must_use]
    pub fn by_number(&self, number: u8) -> Option<CompartmentIx> {
        self.indices().find(|&ix| self[ix].number == number)
    }

    /// Finds the compartment that mirrors another one, by the shapes and not by what they are
    /// called: on the other side, its centroid mirrored, with the same area and the same walls.
    ///
    /// None for a compartment across the middle, and where the layout is not the same on both
    /// sides there.
    #[must_use]
    pub fn partner(&self, compartment: CompartmentIx) -> Option<CompartmentIx> {
        let other_side = self[compartment].side?.other();
        let shape = |ix| (self.centroid(ix), self.area(ix).to_mm2(), self.perimeter(ix).to_mm());
        let (centroid, area, walls) = shape(compartment);
        let image = Point::new(-centroid.x, centroid.y);
        self.indices().filter(|ix| self[*ix].side == Some(other_side)).find(|ix| {
            let (centroid, other_area, other_walls) = shape(*ix);
            centroid.distance(image) <= ALIKE
                && (other_area - area).abs() <= ALIKE * walls
                && (other_walls - walls).abs() <= ALIKE
        })
    }

    /// Returns the pieces of a ring in order, each in the ring's direction.
    pub fn pieces(&self, ring: &Ring) -> impl Iterator<Item = Piece> {
        ring.steps.iter().flat_map(|&(edge, forward)| {
            let chain = &self[edge].chain;
            if forward { chain.clone() } else { chain.reversed() }.into_pieces()
        })
    }

    /// Returns the area, exactly from the curves.
    #[must_use]
    pub fn area(&self, compartment: CompartmentIx) -> Area {
        Area::from_mm2(self.boundary(compartment).map(|piece| piece.swept_area()).sum())
    }

    /// Returns the centroid in millimetres, exactly from the curves.
    #[must_use]
    pub fn centroid(&self, compartment: CompartmentIx) -> Point {
        let moment: Vec2 = self
            .boundary(compartment)
            .map(|piece| piece.swept_moment())
            .fold(Vec2::ZERO, |sum, moment| sum + moment);
        (moment / self.area(compartment).to_mm2()).to_point()
    }

    /// Returns the length of all walls around a compartment, islands inside it included.
    #[must_use]
    pub fn perimeter(&self, compartment: CompartmentIx) -> Length {
        Length::from_mm(self.boundary(compartment).map(|piece| piece.length()).sum())
    }

    /// Returns the area of all walls around a compartment: perimeter times wall height.
    #[must_use]
    pub fn wall_area(&self, compartment: CompartmentIx) -> Area {
        Area::from_m2(self.perimeter(compartment).to_m() * self.wall_height.to_m())
    }

    /// Returns the surface that hinders packing in a compartment: walls, base and top sheet,
    /// the last taken as flat.
    #[must_use]
    pub fn packing_surface(&self, compartment: CompartmentIx) -> Area {
        self.wall_area(compartment) + self.area(compartment) * 2.0
    }

    /// Returns the volume below the height of the walls.
    #[must_use]
    pub fn volume_to_walls(&self, compartment: CompartmentIx) -> Volume {
        Volume::from_m3(self.area(compartment).to_m2() * self.wall_height.to_m())
    }

    /// Returns each seam's whole length, in the order in which the layout writes them.
    #[must_use]
    pub fn seam_lengths(&self) -> Vec<(Name, Length)> {
        let mut lengths: Vec<(Name, Length)> = Vec::new();
        for edge in &self.edges {
            let length = Length::from_mm(edge.chain.length());
            match lengths.iter_mut().find(|(name, _)| *name == edge.seam) {
                Some((_, sum)) => *sum += length,
                None => lengths.push((edge.seam.clone(), length)),
            }
        }
        lengths
    }

    /// All pieces around a compartment: its outer way and the ways around its islands.
    fn boundary(&self, compartment: CompartmentIx) -> impl Iterator<Item = Piece> {
        let compartment = &self[compartment];
        std::iter::once(&compartment.outer)
            .chain(&compartment.holes)
            .flat_map(|ring| self.pieces(ring))
    }
}

impl std::ops::Index<CompartmentIx> for Pattern {
    type Output = Compartment;
    fn index(&self, ix: CompartmentIx) -> &Compartment {
        &self.compartments[ix.index()]
    }
}

impl std::ops::Index<EdgeIx> for Pattern {
    type Output = Edge;
    fn index(&self, ix: EdgeIx) -> &Edge {
        &self.edges[ix.index()]
    }
}
