//! The sheet for the day of a wash: order of work, recount, labels for bags.

use super::PassageTexts;

/// The sheet for the day of a wash.
#[derive(Clone, Copy, Debug)]
pub struct WashDayTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub order_of_work: &'static str,
    /// What to mind of cells that lie about.
    pub small_cells: &'static str,
    pub from_below: &'static str,
    /// What to do with a cell that burst.
    pub burst_cell: PassageTexts,
    /// How to count: a line.
    pub count_twice: &'static str,
    pub count: &'static str,
    /// Heads: number, compartment, cells, room to write how many came out, how many went in.
    pub columns: [&'static str; 5],
    /// Rows of fields to write in.
    pub fields: &'static [&'static [&'static str]],
    pub bag_labels: &'static str,
}
