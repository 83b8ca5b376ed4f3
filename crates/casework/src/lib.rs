//! One client's case as work: what the front ends of the program share.
//!
//! Start at [`OpenCase`]. Nothing here knows the file system, the clock, a terminal, arguments, exit
//! codes, or that plugins exist. Files come and go through a [`Shelf`], layouts through
//! `case::LayoutSource`, the date as an argument; everything works from several threads.

mod adjusting;
mod as_found;
mod comparison;
mod done;
mod edition;
mod error;
mod export;
mod file_remarks;
mod filling;
mod filling_in;
mod folder;
mod live;
mod made_range;
mod not_drawn;
mod open_case;
mod order;
mod other_cushion;
mod papers;
mod parts;
mod prepared_cushions;
mod proposed;
mod range_table;
mod recall;
mod recording;
mod restoring;
mod review;
mod sections;
pub mod shelf;
mod side_by_side;
mod sizing;
mod sourced;
mod standing;
mod stock;
mod stopping;
mod surroundings;
mod survey;
mod survey_figure;
mod template;
mod weighing;
mod written_layout;

/// What the program calls itself in records, reports and papers.
pub const PROGRAM: &str = concat!("seatwright ", env!("CARGO_PKG_VERSION"));

pub use crate::as_found::AsFound;
pub use crate::comparison::{Compared, Sitter, bodies_on, client_on, compare};
pub use crate::done::{Counted, Done, Recorded, record_done};
pub use crate::edition::Edition;
pub use crate::error::{Whose, WorkError};
pub use crate::export::{
    DrawnAs, Exported, Wanted, drawing, drawn_as, export, faulty_drawing, page_drawn_as,
};
pub use crate::file_remarks::FileRemarks;
pub use crate::filling_in::{
    Answered, Blank, Draft, Listed, NotWritten, Refused, Typed, TypedIn, TypedLength, length_typed,
    roster, weight_typed,
};
pub use crate::folder::{NOTE, other_papers, prefix};
pub use crate::live::{LiveAnswer, LiveCase, LiveNumbers, Revision, Turns};
pub use crate::made_range::{ListedLayout, made_range, revision_finding};
pub use crate::open_case::{CountsNow, OpenCase};
pub use crate::order::{MadeLine, MadeOrder, OrderAsked, OrderedCompartment, order};
pub use crate::papers::{
    NamedDocument, OnPaper, Papers, PapersOfClient, blank_papers, papers_of_stock,
};
pub use crate::parts::{ClothPart, Materials, Parts, parts, usual_spares};
pub use crate::prepared_cushions::PreparedCushions;
pub use crate::range_table::range_table;
pub use crate::recall::{Holds, Recall, recall};
pub use crate::recording::{Recorder, adjustment_stands, plan_stands, short_for_injuries};
pub use crate::restoring::{Lost, RestoredFile, code_in_bytes, code_in_pdf, restored};
pub use crate::review::{Reviewed, review, review_page};
pub use crate::sections::{section, sections};
pub use crate::shelf::{
    BytesDigest, Change, Doing, NoFile, Shelf, ShelfError, Tell, Was, Watch, Why,
};
pub use crate::sizing::{AllSizings, LayoutSizing};
pub use crate::sourced::{Sourced, client_text, pattern};
pub use crate::stock::{no_stock, stock_fill};
pub use crate::surroundings::Surroundings;
pub use crate::survey::{ReadPart, Survey, SurveyTold, by_lot, merged, shard};
pub use crate::survey_figure::survey_figure;
pub use crate::template::{MadeTemplate, made_template};
pub use crate::weighing::{WeighedCompartment, weigh_stock};
pub use crate::written_layout::{DrawnLayout, WrittenLayout, layout_files, written_layout};
pub use fitting::{
    Adjusted, CutThrough, Sizing, Spacings, at_seat_bones, broken, thigh_not_counted,
};
pub use mechanics::Stop;
