//! A survey: a layout over many bodies, on all cores.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread;

use case::{
    Client, ClientCode, CushionChoice, Date, LayoutRef, SurveyPart, SurveyRow, SurveyedBody,
    Trouble,
};
use cushion::{Cell, Layout, Length, MadeSize, Size};
use fitting::{Cushions, PreparedCushion, Spacings, SurveyedCushion};
use mechanics::mixed;

use crate::error::WorkError;
use crate::sourced::Sourced;
use crate::stock::no_stock;

/// Rows that are made before they are kept: little is lost where a run is broken off.
const AT_ONCE: usize = 16;

/// Width of triangles that spreads come from, and moves are tried on, mm. On `row-six` the spread of
/// a clearance is within 0.8 mm of that on a mesh of 8 mm, which is some 13 mm, that of a pressure
/// within a tenth of its own, and of 87 bodies one got other counts, by two cells: a survey asks for
/// percentiles of many bodies.
const ROUGH_MM: f64 = 24.0;

/// What a survey is made of.
pub struct Survey<'a> {
    /// The layout; one that is drawn for a size that is asked for, once for each of them. One at least.
    pub layouts: &'a [Sourced<Layout>],
    /// The cell.
    pub cell: &'a Cell,
    /// The width of triangles.
    pub mesh: Length,
    /// The day.
    pub on: Date,
}

/// What is asked and told while a survey runs, from any of its threads.
#[derive(Clone, Copy)]
pub struct SurveyTold<'a> {
    /// Keeps rows that are done.
    pub keep: &'a (dyn Fn(&[SurveyRow]) -> Result<(), WorkError> + Sync),
    /// Whether to stop, asked before every body.
    pub stop: &'a (dyn Fn() -> bool + Sync),
}

impl Survey<'_> {
    /// Surveys bodies; rows come in no order.
    ///
    /// # Errors
    ///
    /// Fails where a size cannot be made, or rows cannot be kept.
    pub fn rows(
        &self,
        bodies: &[SurveyedBody],
        told: SurveyTold<'_>,
    ) -> Result<Vec<SurveyRow>, WorkError> {
        let cushions = self.cushions(bodies)?;
        let like = anybody(&self.layouts[0])?;
        let sizes = &self.sizes();
        let next = AtomicUsize::new(0);
        let rows = Mutex::new(Vec::with_capacity(bodies.len()));
        let failed: Mutex<Option<WorkError>> = Mutex::new(None);
        let work = || {
            loop {
                let from = next.fetch_add(AT_ONCE, Ordering::Relaxed);
                let some = bodies.get(from..bodies.len().min(from + AT_ONCE)).unwrap_or_default();
                if some.is_empty() || lock(&failed).is_some() || (told.stop)() {
                    break;
                }
                let made: Vec<SurveyRow> = (some.iter())
                    .take_while(|_| !(told.stop)())
                    .map(|body| fitting::survey(body, sizes, &cushions, &like, self.on))
                    .collect();
                if let Err(error) = (told.keep)(&made) {
                    *lock(&failed) = Some(error);
                }
                lock(&rows).extend(made);
            }
        };
        let cores = thread::available_parallelism().map_or(1, std::num::NonZero::get);
        thread::scope(|scope| {
            for _ in 0..cores {
                scope.spawn(work);
            }
        });
        let failed = lock(&failed).take();
        failed.map_or_else(|| Ok(std::mem::take(&mut *lock(&rows))), Err)
    }

    /// All sizes that are made.
    fn sizes(&self) -> Vec<MadeSize> {
        self.layouts.iter().flat_map(|own| own.value.sizes.iter().copied()).collect()
    }

    /// The cushions of all sizes that the bodies need.
    fn cushions(&self, bodies: &[SurveyedBody]) -> Result<Cushions, WorkError> {
        let rough = Length::from_mm(ROUGH_MM);
        let spacings = Spacings { fine: self.mesh, coarse: self.mesh, rough, roughest: rough };
        let sizes = self.sizes();
        let mut cushions = Cushions::new();
        for layout in self.layouts {
            for made in &layout.value.sizes {
                let needed =
                    |body: &SurveyedBody| fitting::size_for(body, &sizes) == Some(made.size);
                if bodies.iter().any(needed) {
                    let prepared = prepared(layout, self.cell, made.size, spacings)?;
                    cushions.insert(made.size, SurveyedCushion::new(prepared));
                }
            }
        }
        Ok(cushions)
    }
}

/// A cushion of a layout that no client's file names.
pub(crate) fn prepared(
    layout: &Sourced<Layout>,
    cell: &Cell,
    size: Size,
    spacings: Spacings,
) -> Result<PreparedCushion, WorkError> {
    let pattern = cushion::arrange(&layout.value, size).map_err(|faults| {
        let fault = faults.into_iter().next().map(|fault| fault.kind);
        let file = layout.file.path.clone();
        WorkError::file(Trouble::NotMade { file, size, fault })
    })?;
    PreparedCushion::new(&pattern, cell, spacings)
        .map_err(|error| no_stock(layout, &pattern, error))
}

/// A client of a layout of whom nothing is known.
pub(crate) fn anybody(layout: &Sourced<Layout>) -> Result<Client, WorkError> {
    let file = || layout.file.path.clone();
    let size = layout.value.sizes.first().map(|made| made.size);
    let size = size.ok_or_else(|| WorkError::file(Trouble::NoSizes { file: file() }))?;
    let (name, parameters) = (layout.value.name.to_string(), BTreeMap::new());
    let chosen = CushionChoice {
        layout: LayoutRef::Named { name, parameters },
        size,
        cell: String::new(),
        spare_cells: 0,
        serial: None,
        first_file: None,
    };
    let code = ClientCode::new("S-1").expect("it keeps the rule");
    Ok(Client::unknown(code, chosen))
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Returns the bodies that are drawn by lot from a seed, in the table's order.
#[must_use]
pub fn by_lot(mut bodies: Vec<SurveyedBody>, sample: usize, seed: u64) -> Vec<SurveyedBody> {
    bodies.sort_by_key(|body| (lot(seed, body.row), body.row));
    bodies.truncate(sample);
    bodies.sort_by_key(|body| body.row);
    bodies
}

/// A lot for a row, the same everywhere.
fn lot(seed: u64, row: u32) -> u64 {
    mixed(seed ^ u64::from(row).wrapping_mul(0x9e37_79b9_7f4a_7c15))
}

/// Returns every Nth body, from the Kth.
#[must_use]
pub fn shard(bodies: Vec<SurveyedBody>, number: usize, of: usize) -> Vec<SurveyedBody> {
    bodies.into_iter().skip(number - 1).step_by(of).collect()
}

/// A part of a survey as it was read, with the name of its file.
#[derive(Clone, Debug)]
pub struct ReadPart {
    /// The file.
    pub file: String,
    /// Which part it is; none of a table without rows.
    pub part: Option<SurveyPart>,
    /// Its rows.
    pub rows: Vec<SurveyRow>,
}

/// Puts all parts of one survey together, which are then the same as one run.
///
/// # Errors
///
/// Fails where the parts are of several surveys, one is missing or there twice, a body is in two
/// of them, or there is none.
pub fn merged(parts: Vec<ReadPart>) -> Result<(SurveyPart, Vec<SurveyRow>), WorkError> {
    let asked = |trouble| Err(WorkError::asked(trouble));
    let mut rows: Vec<SurveyRow> = Vec::new();
    let mut found: Vec<(String, SurveyPart)> = Vec::new();
    for ReadPart { file, part, rows: own } in parts {
        let Some(part) = part else { return asked(Trouble::EmptyPart { file }) };
        if let Some((first, other)) = found.first()
            && (other.survey != part.survey || other.of != part.of)
        {
            return asked(Trouble::PartsOfOtherSurveys { file, first: first.clone() });
        }
        if let Some((first, _)) = found.iter().find(|(_, other)| other.part == part.part) {
            return asked(Trouble::PartTwice { file, first: first.clone(), part: part.part });
        }
        found.push((file, part));
        rows.extend(own);
    }
    let Some((_, first)) = found.first() else { return asked(Trouble::NoParts) };
    let there = |number: &usize| found.iter().any(|(_, part)| part.part == *number);
    let missing: Vec<usize> = (1..=first.of).filter(|number| !there(number)).collect();
    if !missing.is_empty() {
        return asked(Trouble::PartsMissing { missing, of: first.of });
    }
    rows.sort_by_key(|row| row.body.row);
    if let Some(twice) = rows.windows(2).find(|pair| pair[0].body.row == pair[1].body.row) {
        return asked(Trouble::BodyTwice { row: twice[0].body.row });
    }
    Ok((SurveyPart { part: 1, of: 1, ..first.clone() }, rows))
}
