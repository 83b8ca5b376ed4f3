//! The report on the layouts that can be made.

use case::Digest;
use cushion::Layout;
use schemars::JsonSchema;
use serde::Serialize;

use super::{json, rounded};

/// What is reported of one layout of a list.
pub struct LayoutOfList<'a> {
    /// By which it is asked for.
    pub name: &'a str,
    /// The layout, with the digest of its text; or why it cannot be had, in a clause.
    pub found: Result<(&'a Layout, Digest), String>,
    /// The program that drew it and its version, where one did.
    pub drawn_by: Option<&'a str>,
    /// Whether it is drawn anew for each size that is asked for.
    pub any_size: bool,
}

/// The layouts that can be made.
#[derive(Serialize, JsonSchema)]
pub(super) struct LayoutsBody<'a> {
    /// In the order in which they are looked for.
    layouts: Vec<LayoutBody<'a>>,
}

/// One layout of the list.
#[derive(Serialize, JsonSchema)]
struct LayoutBody<'a> {
    /// By which it is asked for: a name, or the path of a file.
    asked_as: &'a str,
    /// What the layout calls itself.
    layout: Option<&'a str>,
    title: Option<&'a str>,
    about: Option<&'a str>,
    class: Option<&'a str>,
    rating_from: Option<&'a str>,
    /// Null where its author does not count them.
    revision: Option<u32>,
    layout_digest: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    drawn_by: Option<&'a str>,
    /// Whether it is drawn for each size that is asked for; then `sizes` is empty.
    any_size: bool,
    compartments: Option<usize>,
    sizes: Vec<MadeSizeBody>,
    /// Why it cannot be had; null where it can.
    not_seen: Option<String>,
}

/// A size that is made.
#[derive(Serialize, JsonSchema)]
struct MadeSizeBody {
    /// Width x depth in mm.
    size_mm: String,
    max_user_weight_kg: f64,
}

/// Returns the report on the layouts that can be made.
#[must_use]
pub fn layouts(program: &str, all: Vec<LayoutOfList<'_>>) -> String {
    let layouts = all.into_iter().map(body).collect();
    json("layouts", program, Vec::new(), LayoutsBody { layouts })
}

fn body(own: LayoutOfList<'_>) -> LayoutBody<'_> {
    let (found, not_seen) = match own.found {
        Ok(found) => (Some(found), None),
        Err(why) => (None, Some(why)),
    };
    let layout = found.as_ref().map(|(layout, _)| *layout);
    let made = layout.filter(|_| !own.any_size).map_or(&[][..], |layout| &layout.sizes);
    LayoutBody {
        asked_as: own.name,
        layout: layout.map(|layout| layout.name.as_str()),
        title: layout.map(|layout| layout.title.as_str()),
        about: layout.map(|layout| layout.about.as_str()),
        class: layout.map(|layout| layout.class.words()),
        rating_from: layout.map(|layout| layout.rating_from.as_str()),
        revision: layout.and_then(|layout| layout.revision),
        layout_digest: found.as_ref().map(|(_, digest)| digest.as_str().to_owned()),
        drawn_by: own.drawn_by,
        any_size: own.any_size,
        compartments: layout.map(|layout| layout.compartment_count()),
        sizes: (made.iter())
            .map(|made| MadeSizeBody {
                size_mm: made.size.to_string(),
                max_user_weight_kg: rounded(made.max_user_weight.to_kg()),
            })
            .collect(),
        not_seen,
    }
}
