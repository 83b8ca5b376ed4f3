//! `survey` and `merge`: a layout over many bodies, in parts if need be.

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use case::{Client, Date, SurveyOutcome, SurveyRow, SurveyedBody};
use cushion::{Layout, Length};
use fitting::{Cushions, PreparedCushion, Spacings};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use crate::arguments::{Merge, PluginOptions, Survey};
use crate::failure::Failure;
use crate::plugins::Session;
use crate::resolve::{self, Sourced};
use crate::terminal::Terminal;
use crate::{figure, output_paths, read, stock, today, write};

/// Rows that are written at once: little is lost where a run is broken off.
const AT_ONCE: usize = 16;

/// Surveys a layout over bodies from a table.
pub(crate) fn run(arguments: &Survey, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let mut inputs = vec![arguments.bodies.as_path(), Path::new(&arguments.layout)];
    inputs.extend(arguments.cell.cell.iter().map(Path::new));
    can_be_written(&inputs, &arguments.out, arguments.figure.as_deref())?;
    let text = read::text(&arguments.bodies)?;
    let bodies = files::read_bodies(&text).map_err(|error| wrong(&arguments.bodies, &error))?;
    let layout = layout(arguments)?;
    let bodies = part(chosen(bodies, arguments), arguments.shard);
    let known = done(arguments, &layout)?;
    let todo: Vec<SurveyedBody> = (bodies.iter())
        .filter(|body| !known.iter().any(|row| row.body.row == body.row))
        .cloned()
        .collect();
    let cushions = cushions(&layout, &todo, arguments)?;
    let surveyed = all(&layout, &cushions, &todo, arguments, on)?;
    let mut rows: Vec<SurveyRow> = known.into_iter().chain(surveyed).collect();
    rows.sort_by_key(|row| row.body.row);
    finish(&layout.value, &rows, &arguments.out, arguments.figure.as_deref(), on)?;
    std::fs::remove_file(unfinished(&arguments.out)).ok();
    terminal.answer(&said(&rows, &arguments.out))
}

/// Puts parts of a survey together.
pub(crate) fn merge(arguments: &Merge, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let inputs: Vec<&Path> = arguments.parts.iter().map(PathBuf::as_path).collect();
    can_be_written(&inputs, &arguments.out, arguments.figure.as_deref())?;
    let mut rows: Vec<SurveyRow> = Vec::new();
    let mut layout = String::new();
    for path in &arguments.parts {
        let text = read::text(path)?;
        let (own, part) = files::read_survey(&text).map_err(|error| wrong(path, &error))?;
        if part.is_empty() {
            continue;
        }
        if !layout.is_empty() && layout != own {
            let message =
                format!("`{}` is a survey of {own}, the others are of {layout}", path.display());
            return Err(Failure::call(message).hint("merge parts of one survey"));
        }
        layout = own;
        rows.extend(part);
    }
    rows.sort_by_key(|row| row.body.row);
    if let Some(twice) = rows.windows(2).find(|pair| pair[0].body.row == pair[1].body.row) {
        let message = format!("body {} is in two of the parts", twice[0].body.row);
        return Err(Failure::call(message).hint("name each part once"));
    }
    if rows.is_empty() {
        return Err(
            Failure::call("there is nothing in these parts").hint("name files that `survey` wrote")
        );
    }
    let text = files::write_survey(&layout, &rows);
    write::one(&arguments.out, text.into_bytes())?;
    if let Some(path) = &arguments.figure {
        write::one(path, figure::of_survey(&layout, &rows, on)?)?;
    }
    terminal.answer(&said(&rows, &arguments.out))
}

/// Refuses outputs that would be written over what is read or over each other, or are misnamed.
fn can_be_written(inputs: &[&Path], out: &Path, figure: Option<&Path>) -> Result<(), Failure> {
    output_paths::has_ending(out, "csv")?;
    figure.map_or(Ok(()), |path| output_paths::has_ending(path, "svg"))?;
    let kept = unfinished(out);
    let outputs: Vec<&Path> = [out, &kept].into_iter().chain(figure).collect();
    output_paths::are_apart(inputs, &outputs)
}

fn wrong(path: &Path, error: &files::TableError) -> Failure {
    let message = format!("{}, line {}: {}", path.display(), error.line, error.message);
    Failure::file(message).hint(error.hint.clone())
}

fn layout(arguments: &Survey) -> Result<Sourced<Layout>, Failure> {
    if arguments.layout.starts_with("plugin:") {
        return Err(Failure::call("a plugin's layout cannot be surveyed yet")
            .hint("write its answer into a layout file and survey that"));
    }
    // Only a plugin's layout depends on the size.
    let size = cushion::Size::new(Length::from_mm(440.0), Length::from_mm(400.0));
    let size = size.ok_or_else(|| Failure::call("there is no such size"))?;
    resolve::layout(&arguments.layout, size, &Session::new(&PluginOptions::default()))
}

/// The bodies that are asked for: all, or some drawn by lot from a seed, in the table's order.
fn chosen(mut bodies: Vec<SurveyedBody>, arguments: &Survey) -> Vec<SurveyedBody> {
    let Some(sample) = arguments.sample else { return bodies };
    let lot = |row: u32| {
        // SplitMix64 of seed and row: the same everywhere.
        let mut z = arguments.seed ^ u64::from(row).wrapping_mul(0x9e37_79b9_7f4a_7c15);
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    };
    bodies.sort_by_key(|body| (lot(body.row), body.row));
    bodies.truncate(sample);
    bodies.sort_by_key(|body| body.row);
    bodies
}

/// Every Nth body, from the Kth.
fn part(bodies: Vec<SurveyedBody>, shard: Option<(usize, usize)>) -> Vec<SurveyedBody> {
    let Some((own, of)) = shard else { return bodies };
    bodies.into_iter().skip(own - 1).step_by(of).collect()
}

/// Where rows are kept until the survey is whole.
fn unfinished(out: &Path) -> PathBuf {
    let mut name = out.as_os_str().to_owned();
    name.push(".unfinished");
    PathBuf::from(name)
}

/// What an earlier run, broken off, has done of the same survey.
fn done(arguments: &Survey, layout: &Sourced<Layout>) -> Result<Vec<SurveyRow>, Failure> {
    let path = unfinished(&arguments.out);
    if !path.exists() {
        return Ok(Vec::new());
    }
    let text = read::text(&path)?;
    let (own, rows) = files::read_survey(&text).map_err(|error| wrong(&path, &error))?;
    if !rows.is_empty() && own != layout.value.name.as_str() {
        let message = format!("`{}` is of the layout {own}", path.display());
        return Err(Failure::call(message).hint("take another --out, or remove that file"));
    }
    Ok(rows)
}

/// The cushions of all sizes that the bodies need.
fn cushions(
    layout: &Sourced<Layout>,
    bodies: &[SurveyedBody],
    arguments: &Survey,
) -> Result<Cushions, Failure> {
    let cell = resolve::cell(arguments.cell.cell.as_deref())?;
    let mesh = Length::from_mm(if arguments.fine { 4.0 } else { 8.0 });
    let spacings = Spacings { fine: mesh, coarse: mesh, rough: Length::from_mm(16.0) };
    let mut cushions = Cushions::new();
    for made in &layout.value.sizes {
        let needed = |body: &SurveyedBody| {
            fitting::size_for(body, &layout.value.sizes)
                .is_some_and(|size| size.to_string() == made.size.to_string())
        };
        if !bodies.iter().any(needed) {
            continue;
        }
        let pattern = cushion::arrange(&layout.value, made.size).map_err(|faults| {
            let shown = layout.file.shown();
            Failure::file(format!("{shown} cannot be drawn in {}: {faults:?}", made.size))
        })?;
        let made_ready = PreparedCushion::new(&pattern, &cell.value, spacings)
            .map_err(|error| stock::none(layout, &pattern, &error))?;
        cushions.insert(made.size.to_string(), made_ready);
    }
    Ok(cushions)
}

/// Surveys the bodies on all cores, and keeps what is done as it goes.
fn all(
    layout: &Sourced<Layout>,
    cushions: &Cushions,
    bodies: &[SurveyedBody],
    arguments: &Survey,
    on: Date,
) -> Result<Vec<SurveyRow>, Failure> {
    let like = like(layout)?;
    let kept = Kept::open(&unfinished(&arguments.out), layout.value.name.as_str())?;
    let bar =
        ProgressBar::with_draw_target(Some(bodies.len() as u64), ProgressDrawTarget::stderr());
    if let Ok(style) = ProgressStyle::with_template("{wide_bar} {pos} of {len} bodies, {eta} left")
    {
        bar.set_style(style);
    }
    let next = AtomicUsize::new(0);
    let rows = Mutex::new(Vec::with_capacity(bodies.len()));
    let failed: Mutex<Option<Failure>> = Mutex::new(None);
    let work = || {
        loop {
            let from = next.fetch_add(AT_ONCE, Ordering::Relaxed);
            let Some(some) = bodies.get(from..bodies.len().min(from + AT_ONCE)) else { break };
            if some.is_empty() || lock(&failed).is_some() {
                break;
            }
            let made: Vec<SurveyRow> = (some.iter())
                .map(|body| fitting::survey(body, &layout.value.sizes, cushions, &like, on))
                .collect();
            if let Err(failure) = kept.add(&made) {
                *lock(&failed) = Some(failure);
            }
            bar.inc(made.len() as u64);
            lock(&rows).extend(made);
        }
    };
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(work);
        }
    });
    bar.finish_and_clear();
    let failed = lock(&failed).take();
    failed.map_or_else(|| Ok(std::mem::take(&mut *lock(&rows))), Err)
}

fn lock<T>(mutex: &Mutex<T>) -> std::sync::MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
}

/// The file of rows that are done.
struct Kept<'a> {
    path: PathBuf,
    layout: &'a str,
    file: Mutex<std::fs::File>,
}

impl<'a> Kept<'a> {
    fn open(path: &Path, layout: &'a str) -> Result<Self, Failure> {
        let cannot =
            |error: std::io::Error| Failure::write(&format!("`{}`", path.display()), &error);
        let new = !path.exists();
        let mut file =
            std::fs::OpenOptions::new().create(true).append(true).open(path).map_err(cannot)?;
        if new {
            file.write_all(files::write_survey(layout, &[]).as_bytes()).map_err(cannot)?;
        }
        Ok(Self { path: path.to_owned(), layout, file: Mutex::new(file) })
    }

    fn add(&self, rows: &[SurveyRow]) -> Result<(), Failure> {
        let lines: String = rows.iter().map(|row| files::survey_line(self.layout, row)).collect();
        let written = lock(&self.file).write_all(lines.as_bytes());
        written.map_err(|error| Failure::write(&format!("`{}`", self.path.display()), &error))
    }
}

/// A client of this layout of whom nothing is known.
fn like(layout: &Sourced<Layout>) -> Result<Client, Failure> {
    let text = format!(
        "format = 1\nkind = \"client\"\nclient = \"S-1\"\n[measures]\nunits = \"mm\"\n\
         [cushion]\nlayout = \"{}\"\nsize = \"440x400\"\nspare_cells = 20\n",
        layout.value.name
    );
    Ok(resolve::client_text("a body of the survey".to_owned(), text)?.value)
}

/// Writes the survey whole, and its figure.
fn finish(
    layout: &Layout,
    rows: &[SurveyRow],
    out: &Path,
    figure: Option<&Path>,
    on: Date,
) -> Result<(), Failure> {
    write::one(out, files::write_survey(layout.name.as_str(), rows).into_bytes())?;
    if let Some(path) = figure {
        write::one(path, figure::of_survey(layout.name.as_str(), rows, on)?)?;
    }
    Ok(())
}

/// What came out, in words.
fn said(rows: &[SurveyRow], out: &Path) -> String {
    figure::sentences(rows).join("\n") + &format!("\nWrote {}.\n", out.display())
}

/// The part of bodies whose size is made that get a plan within all limits.
pub(crate) fn share_planned(rows: &[SurveyRow]) -> (usize, usize) {
    let made = rows.iter().filter(|row| !matches!(row.outcome, SurveyOutcome::NoSize(_))).count();
    let planned = rows.iter().filter(|row| matches!(row.outcome, SurveyOutcome::Planned(_)));
    (planned.count(), made)
}
