//! Draws a page as a picture, from its SVG.

use std::fmt;
use std::sync::{Arc, OnceLock};

use resvg::tiny_skia::{Pixmap, Transform};
use usvg::fontdb::Database;
use usvg::{Node, Options, Tree};

use crate::font::{Cut, Family};
use crate::page::Page;
use crate::svg::{SvgOptions, svg};

/// Why a page cannot be drawn as a picture.
#[derive(Clone, Debug, PartialEq)]
pub enum PngError {
    /// The picture would be empty, or larger than memory.
    Size,
    /// The SVG was not understood as it was meant; a fault of ours.
    Svg(String),
}

impl fmt::Display for PngError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Size => f.write_str("the picture has no size that can be drawn"),
            Self::Svg(what) => write!(f, "the page cannot be drawn: {what}"),
        }
    }
}

impl std::error::Error for PngError {}

/// Draws `page` at `dpi` dots to the inch, on white.
///
/// # Errors
///
/// Fails where the picture has no size, or a text was not drawn.
pub fn png(page: &Page, dpi: f64) -> Result<Vec<u8>, PngError> {
    let text = svg(page, &SvgOptions { embed_fonts: false, outlines: false });
    let mut options =
        Options { font_family: Family::Usual.name().to_owned(), ..Options::default() };
    options.fontdb = fonts();
    let tree = Tree::from_str(&text, &options).map_err(|error| PngError::Svg(error.to_string()))?;
    let (drawn, written) = (count_texts(tree.root()), page.texts().count());
    if drawn != written {
        // A text whose face is not found is dropped without a word.
        return Err(PngError::Svg(format!("{drawn} of {written} texts would be drawn")));
    }
    let dots = |mm: f64| (mm / 25.4 * dpi).round();
    let (width, height) = (dots(page.paper.width()), dots(page.paper.height()));
    let mut pixmap = Pixmap::new(width as u32, height as u32).ok_or(PngError::Size)?;
    let size = tree.size();
    let scale = Transform::from_scale(width as f32 / size.width(), height as f32 / size.height());
    resvg::render(&tree, scale, &mut pixmap.as_mut());
    pixmap.encode_png().map_err(|error| PngError::Svg(error.to_string()))
}

/// Our faces, loaded once; no face of the machine is looked at.
fn fonts() -> Arc<Database> {
    static FONTS: OnceLock<Arc<Database>> = OnceLock::new();
    let load = || {
        let mut fonts = Database::new();
        for cut in Cut::all() {
            fonts.load_font_data(cut.bytes().to_vec());
        }
        fonts.set_sans_serif_family(Family::Usual.name());
        fonts.set_serif_family(Family::Usual.name());
        Arc::new(fonts)
    };
    FONTS.get_or_init(load).clone()
}

fn count_texts(group: &usvg::Group) -> usize {
    let count = |node: &Node| match node {
        Node::Group(group) => count_texts(group),
        Node::Text(_) => 1,
        Node::Path(_) | Node::Image(_) => 0,
    };
    group.children().iter().map(count).sum()
}
