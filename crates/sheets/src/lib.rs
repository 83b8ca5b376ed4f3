//! Finished pages, and the documents made of them.
//!
//! A [`Page`] is placed once, in millimetres, and written as SVG, PDF or PNG with the same
//! geometry and real text. Nothing here knows how a plan is found, how a file is read or what
//! day it is.

mod color;
mod disc;
mod documents;
mod drawn;
mod flow;
mod font;
mod frame;
mod page;
mod paper;
mod pdf;
mod picture;
mod png;
mod qr;
mod svg;
mod table;
mod text;

pub use kurbo::{BezPath, Point, Rect};

pub use crate::color::{Color, contrast_ratio};
pub use crate::documents::{
    BlankForm, BodyPicture, ClientPapers, ControlPlace, DocumentError, DrawnBy, ExpectedSeat,
    Histogram, INKS, Identity, Ink, OrderPapers, OrderedCushion, PAPERS, RangeTable, ReviewPage,
    Section, SectionAt, SectionPapers, SectionSite, SetupExtras, SizeReasons, StockPapers,
    SurveyPage, TemplatePapers, ToFill, View, blank_form, body_picture, drawing, faulty_drawing,
    faulty_picture, fill_cards, fill_order, height_gauge, history_pages, letter, measure_picture,
    move_picture, pattern_picture, pelvis_picture, pick_list, place_on_page, places, range_table,
    review_page, section_picture, section_sheet, setup_card, stock_fill_card, survey_page, tag,
    tag_with_serial, tags_of_order, tags_sheet, take_home, take_home_text, template_says,
    template_sheet, template_tiles, tolerance, wash_day,
};
pub use crate::font::{Weight, font_file};
pub use crate::frame::Frame;
pub use crate::page::{
    Align, Attached, Block, Document, Fill, FillRule, Heads, Mark, Page, Pen, Role, Shape, TextRun,
};
pub use crate::paper::Paper;
pub use crate::pdf::{NoAttachment, attached_code, pdf};
pub use crate::picture::{Part, Picture};
pub use crate::png::{PngError, png};
pub use crate::svg::{SvgOptions, fragment, svg};
pub use crate::table::{Column, Table};
pub use crate::text::{
    Glyph, MM_PER_PT, SIZES, SetError, Shaped, Style, is_printable, measure, with_unit, wrap,
};
