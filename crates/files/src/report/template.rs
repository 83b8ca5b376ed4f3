//! The report on a cutting template.

use case::{Digest, Finding};
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::{json, rounded};

/// What is reported of a template.
pub struct TemplateReport<'a> {
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub digest: &'a Digest,
    /// Width x depth in mm.
    pub size: String,
    /// Cloth left outside of stitch lines, mm.
    pub allowance_mm: f64,
    /// By how much the top is enlarged, as a share.
    pub ease: f64,
    /// The pieces: id and cloth in mm2.
    pub pieces: Vec<(String, f64)>,
    /// What is sewn to what.
    pub seams: Vec<TemplateSeam<'a>>,
    /// What each crown asks of the top.
    pub crowns: Vec<TemplateCrown>,
    /// The openings.
    pub openings: Vec<TemplateOpening>,
    /// What is to be known before anybody cuts.
    pub notes: &'a [String],
    /// The paths that were written.
    pub written: &'a [String],
}

/// A stretch of seam, as long as it is on each of the pieces that are sewn together there.
#[derive(Serialize, JsonSchema)]
pub struct TemplateSeam<'a> {
    /// The number of the wall strip.
    pub wall: usize,
    /// The seam of the layout.
    pub seam: &'a str,
    /// The numbers of the compartments at its hands; null outside.
    pub between: [Option<u8>; 2],
    /// The junctions at its ends; null of a closed way.
    pub junctions: Option<[usize; 2]>,
    /// Along the strip.
    pub on_wall_mm: f64,
    /// Along the base.
    pub on_base_mm: f64,
    /// Along the top.
    pub on_top_mm: f64,
    /// What is eased in between top and wall.
    pub eased_in_mm: f64,
}

/// What one crown asks of the top.
#[derive(Serialize, JsonSchema)]
pub struct TemplateCrown {
    /// The number of the compartment.
    pub number: u8,
    /// The chord: the width at its widest.
    pub width_mm: f64,
    /// The rise of the stock fill above the walls.
    pub rise_mm: f64,
    /// The arc over the chord.
    pub arc_mm: f64,
    /// How much longer the arc is than the chord.
    pub extra_percent: f64,
}

/// An opening in the base.
#[derive(Serialize, JsonSchema)]
pub struct TemplateOpening {
    /// The number of the compartment.
    pub number: u8,
    /// Its middle in the pattern's frame, from above.
    pub middle_mm: [f64; 2],
    /// Its length.
    pub length_mm: f64,
    /// Whether it runs from side to side, else from rear to front.
    pub across: bool,
    /// Whether a hand goes through it.
    pub lets_a_hand_in: bool,
}

/// A cutting template.
#[derive(Serialize, JsonSchema)]
pub(super) struct TemplateBody<'a> {
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
    /// Width x depth in mm.
    size_mm: String,
    allowance_mm: f64,
    /// By how much the top is enlarged; 0 where its cloth must stretch.
    ease_percent: f64,
    pieces: Vec<PieceBody>,
    template_seams: Vec<TemplateSeam<'a>>,
    crowns: Vec<TemplateCrown>,
    openings: Vec<TemplateOpening>,
    /// What is to be known before anybody cuts.
    notes: &'a [String],
    /// The paths that were written.
    written: &'a [String],
}

/// One piece of cloth.
#[derive(Serialize, JsonSchema)]
struct PieceBody {
    id: String,
    /// Allowances included.
    cloth_mm2: f64,
}

/// The same with numbers as reports have them.
fn seam(own: TemplateSeam<'_>) -> TemplateSeam<'_> {
    TemplateSeam {
        on_wall_mm: rounded(own.on_wall_mm),
        on_base_mm: rounded(own.on_base_mm),
        on_top_mm: rounded(own.on_top_mm),
        eased_in_mm: rounded(own.eased_in_mm),
        ..own
    }
}

/// Returns the report on a template.
#[must_use]
pub fn template(
    program: &str,
    own: TemplateReport<'_>,
    (cautions, say): (&[Finding], Say<'_>),
) -> String {
    let pieces = own.pieces.into_iter();
    let crown = |it: TemplateCrown| TemplateCrown {
        width_mm: rounded(it.width_mm),
        rise_mm: rounded(it.rise_mm),
        arc_mm: rounded(it.arc_mm),
        extra_percent: rounded(it.extra_percent),
        ..it
    };
    let opening = |it: TemplateOpening| TemplateOpening {
        middle_mm: it.middle_mm.map(rounded),
        length_mm: rounded(it.length_mm),
        ..it
    };
    let body = TemplateBody {
        layout: own.layout,
        revision: own.revision,
        layout_digest: own.digest.as_str(),
        size_mm: own.size,
        allowance_mm: rounded(own.allowance_mm),
        ease_percent: rounded(own.ease * 100.0),
        pieces: pieces.map(|(id, area)| PieceBody { id, cloth_mm2: rounded(area) }).collect(),
        template_seams: own.seams.into_iter().map(seam).collect(),
        crowns: own.crowns.into_iter().map(crown).collect(),
        openings: own.openings.into_iter().map(opening).collect(),
        notes: own.notes,
        written: own.written,
    };
    json("template", program, FindingBody::all(cautions, say), body)
}
