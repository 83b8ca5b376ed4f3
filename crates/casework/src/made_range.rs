//! A layout at every size that it is made in, and what changed since an earlier layout.

use case::text::{DesignFinding, StockChange};
use cushion::{Cell, Layout, MadeSize, RangeRow};
use files::{Remark, Severity};
use mechanics::{Parameters, UnloadedCushion};

use crate::error::WorkError;
use crate::file_remarks::FileRemarks;
use crate::side_by_side::side_by_side;
use crate::sourced::{Sourced, faults_at};
use crate::stock::no_stock;
use crate::surroundings::Surroundings;

/// A layout of a list.
#[derive(Debug)]
pub struct ListedLayout {
    /// By which it is asked for.
    pub name: String,
    /// The layout, or why it cannot be had.
    pub found: Result<Sourced<Layout>, WorkError>,
    /// Whether it is drawn anew for each size that is asked for, so that it has none of its own.
    pub any_size: bool,
}

impl Surroundings<'_> {
    /// Lists the layouts that can be made: those of the source of layouts, then those in files.
    ///
    /// A layout that is drawn for one size is asked for `size`.
    #[must_use]
    pub fn listed_layouts(&self, files: &[String], size: cushion::Size) -> Vec<ListedLayout> {
        let names = self.layouts.names();
        let all = names.iter().chain(files.iter().filter(|file| !names.contains(file)));
        all.map(|name| {
            let found = self.layout(name, size);
            let any_size = found.as_ref().is_ok_and(|own| own.drawn_by.is_some());
            ListedLayout { name: name.clone(), found, any_size }
        })
        .collect()
    }
}

/// Fills a layout at every size that it is made in, on all cores; `told` is called as each is done,
/// from any of them. Remarks on the layout go to the others on its file.
///
/// # Errors
///
/// Fails where a size cannot be made or filled; the order of sizes decides which is told.
pub fn made_range(
    layout: &mut Sourced<Layout>,
    cell: &Cell,
    told: &(dyn Fn() + Sync),
) -> Result<Vec<RangeRow>, WorkError> {
    let one = |made: &MadeSize| {
        let row = range_row(layout, *made, cell);
        told();
        row
    };
    let made = side_by_side(&layout.value.sizes, one);
    let mut rows = Vec::new();
    for own in made {
        let (row, remarks) = own?;
        rows.push(row);
        for remark in remarks {
            // What holds at many sizes is said once.
            let alike =
                |known: &Remark| known.span == remark.span && known.severity == remark.severity;
            if !layout.file.remarks.iter().any(alike) {
                layout.file.remarks.push(remark);
            }
        }
    }
    Ok(rows)
}

/// One size, with the remarks on the layout there.
fn range_row(
    layout: &Sourced<Layout>,
    made: MadeSize,
    cell: &Cell,
) -> Result<(RangeRow, Vec<Remark>), WorkError> {
    let faults = faults_at(&layout.value, made.size, cell);
    let remarks = files::layout_remarks(&layout.file.text, &faults);
    let wrong = || {
        let known = layout.file.remarks.clone();
        let remarks = known.into_iter().chain(remarks.clone()).collect();
        WorkError::wrong_file(FileRemarks { remarks, ..layout.file.clone() })
    };
    if remarks.iter().any(|remark| remark.severity == Severity::Error) {
        return Err(wrong());
    }
    let pattern = cushion::arrange(&layout.value, made.size).map_err(|_| wrong())?;
    let filled = UnloadedCushion::new(&pattern, cell, &Parameters::default());
    let fill = filled.map_err(|error| no_stock(layout, &pattern, error))?.into_stock();
    Ok((RangeRow { made, pattern, fill }, remarks))
}

/// What is to be said of the revision of a layout beside an earlier one: that it must rise, since a
/// count of the stock fill changed at a size that both are made in, or that it fell. None where all
/// is well.
///
/// # Errors
///
/// Fails where one of them cannot be made or filled at one of its sizes.
pub fn revision_finding(
    now: &mut Sourced<Layout>,
    before: &mut Sourced<Layout>,
    cell: &Cell,
) -> Result<Option<Remark>, WorkError> {
    let new = made_range(now, cell, &|| ())?;
    let old = made_range(before, cell, &|| ())?;
    let (is, was) = (now.value.revision, before.value.revision);
    let changes = changes(&old, &new);
    let higher = is.unwrap_or(1) > was.unwrap_or(1);
    let finding = if !changes.is_empty() && !higher {
        DesignFinding::RevisionMustRise { was, is, changes }
    } else if let Some(was) = was.filter(|was| is.unwrap_or(1) < *was) {
        DesignFinding::RevisionFell { was, is }
    } else {
        return Ok(None);
    };
    Ok(Some(files::revision_remark(&now.file.text, finding)))
}

/// The counts that changed at sizes that are in both, in the order of the new sizes and numbers.
fn changes(old: &[RangeRow], new: &[RangeRow]) -> Vec<StockChange> {
    let mut found = Vec::new();
    for row in new {
        let size = row.made.size;
        let Some(before) = old.iter().find(|own| own.made.size == size) else { continue };
        for number in 1..=99 {
            let count = |of: &RangeRow| {
                let ix = of.pattern.by_number(number)?;
                Some(of.fill[ix].cells.stock)
            };
            let (was, is) = (count(before), count(row));
            if was != is {
                found.push(StockChange { size, number, was, is });
            }
        }
    }
    found
}
