//! The height gauge, to be cut out.

/// The height gauge.
#[derive(Clone, Copy, Debug)]
pub struct HeightGaugeTexts {
    pub title: &'static str,
    pub subject: &'static str,
    /// That heights are estimates, and what is done where one is off.
    pub how_sure: &'static str,
    pub how_to_use: &'static str,
    /// How it is used, a step each.
    pub steps: &'static [&'static str],
    /// What never lies under a client.
    pub nothing_under_a_client: &'static str,
    pub cut_out: &'static str,
    /// What the gauge shows.
    pub drawing: &'static str,
    /// Along its lower edge.
    pub on_the_table: &'static str,
    /// The unit of its scale.
    pub unit: &'static str,
    /// Where a compartment is higher than the paper.
    pub too_high: &'static str,
    pub check_the_print: &'static str,
    /// At the line of 100 mm.
    pub line: &'static str,
    /// At the bar of 25 mm.
    pub bar: &'static str,
    /// What line and bar show.
    pub measures_drawn: &'static str,
    pub heights: &'static str,
    /// Heads: number, compartment, cells, expected height, room to write what was measured.
    pub columns: [&'static str; 5],
    /// Rows of fields to write in.
    pub fields: &'static [&'static [&'static str]],
}
