//! `survey` and `merge`: a layout over many bodies, in parts if need be.

use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use case::{Date, Doing, ShelfError, SurveyRow, SurveySummary, SurveyedBody, Trouble, Why};
use casework::{PROGRAM, Sourced, SurveyTold, WorkError, by_lot, shard, survey_figure};
use cushion::{Layout, Length};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use words::ENGLISH;

use crate::arguments::{Merge, PluginOptions, Survey};
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::setting::Setting;
use crate::terminal::Terminal;
use crate::{output_paths, outputs};

/// Surveys a layout over bodies from a table.
pub(crate) fn run(arguments: &Survey, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let mut read = vec![arguments.bodies.as_path(), Path::new(&arguments.layout)];
    read.extend(arguments.cell.cell.iter().map(Path::new));
    can_be_written(&read, &arguments.out, arguments.figure.as_deref())?;
    let outside = Outside::new(&PluginOptions::default());
    let text = outside.surroundings().text(&name(&arguments.bodies))?;
    let bodies = files::read_bodies(&text).map_err(|error| wrong(&arguments.bodies, error))?;
    let layout = layout(arguments, &outside)?;
    let bodies = chosen(bodies, arguments);
    let known = done(arguments, &outside, &layout)?;
    let todo: Vec<SurveyedBody> = (bodies.iter())
        .filter(|body| !known.iter().any(|row| row.body.row == body.row))
        .cloned()
        .collect();
    let surveyed = surveyed(arguments, &outside, &layout, &todo, on)?;
    let mut rows: Vec<SurveyRow> = known.into_iter().chain(surveyed).collect();
    rows.sort_by_key(|row| row.body.row);
    let out = (arguments.out.as_path(), arguments.figure.as_deref());
    finish(&outside, layout.value.name.as_str(), &rows, out, on)?;
    std::fs::remove_file(unfinished(&arguments.out)).ok();
    tell(terminal, &rows, &arguments.out, arguments.figure.as_deref())
}

/// Puts parts of a survey together.
pub(crate) fn merge(arguments: &Merge, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let read: Vec<&Path> = arguments.parts.iter().map(PathBuf::as_path).collect();
    can_be_written(&read, &arguments.out, arguments.figure.as_deref())?;
    let outside = Outside::new(&PluginOptions::default());
    let mut parts = Vec::new();
    for path in &arguments.parts {
        let text = outside.surroundings().text(&name(path))?;
        let (layout, rows) = files::read_survey(&text).map_err(|error| wrong(path, error))?;
        parts.push((name(path), layout, rows));
    }
    let (layout, rows) = casework::merged(parts)?;
    let out = (arguments.out.as_path(), arguments.figure.as_deref());
    finish(&outside, &layout, &rows, out, on)?;
    tell(terminal, &rows, &arguments.out, arguments.figure.as_deref())
}

/// Refuses outputs that would be written over what is read or over each other, or are misnamed.
fn can_be_written(inputs: &[&Path], out: &Path, figure: Option<&Path>) -> Result<(), Failure> {
    output_paths::has_ending(out, "csv")?;
    figure.map_or(Ok(()), |path| output_paths::has_ending(path, "svg"))?;
    let kept = unfinished(out);
    let outputs: Vec<&Path> = [out, &kept].into_iter().chain(figure).collect();
    output_paths::are_apart(inputs, &outputs)
}

fn wrong(path: &Path, error: files::TableError) -> Failure {
    let files::TableError { line, fault } = error;
    WorkError::file(Trouble::Table { file: name(path), line, fault }).into()
}

fn layout(arguments: &Survey, outside: &Outside) -> Result<Sourced<Layout>, Failure> {
    if arguments.layout.starts_with(plugin_host::PREFIX) {
        return Err(Failure::call("a plugin's layout cannot be surveyed yet")
            .hint("write its answer into a layout file and survey that"));
    }
    // Only a plugin's layout depends on the size.
    let size = cushion::Size::new(Length::from_mm(440.0), Length::from_mm(400.0));
    let size = size.ok_or_else(|| Failure::call("there is no such size"))?;
    Ok(outside.surroundings().layout(&arguments.layout, size)?)
}

/// The bodies that are asked for: all or some by lot, of them all or a part.
fn chosen(bodies: Vec<SurveyedBody>, arguments: &Survey) -> Vec<SurveyedBody> {
    let bodies = match arguments.sample {
        Some(sample) => by_lot(bodies, sample, arguments.seed),
        None => bodies,
    };
    match arguments.shard {
        Some((own, of)) => shard(bodies, own, of),
        None => bodies,
    }
}

/// Where rows are kept until the survey is whole.
fn unfinished(out: &Path) -> PathBuf {
    let mut name = out.as_os_str().to_owned();
    name.push(".unfinished");
    PathBuf::from(name)
}

/// What an earlier run, broken off, has done of the same survey.
fn done(
    arguments: &Survey,
    outside: &Outside,
    layout: &Sourced<Layout>,
) -> Result<Vec<SurveyRow>, Failure> {
    let path = unfinished(&arguments.out);
    if !path.exists() {
        return Ok(Vec::new());
    }
    let text = outside.surroundings().text(&name(&path))?;
    let (own, rows) = files::read_survey(&text).map_err(|error| wrong(&path, error))?;
    if !rows.is_empty() && own != layout.value.name.as_str() {
        let message = format!("`{}` is of the layout {own}", path.display());
        return Err(Failure::call(message).hint("take another --out, or remove that file"));
    }
    Ok(rows)
}

/// Surveys the bodies, shows how far it is, and keeps what is done as it goes.
fn surveyed(
    arguments: &Survey,
    outside: &Outside,
    layout: &Sourced<Layout>,
    bodies: &[SurveyedBody],
    on: Date,
) -> Result<Vec<SurveyRow>, Failure> {
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let mesh = Length::from_mm(if arguments.fine { 4.0 } else { 8.0 });
    let survey = casework::Survey { layout, cell: &cell.value, mesh, on };
    let kept = Kept::open(&unfinished(&arguments.out), layout.value.name.as_str())?;
    let bar =
        ProgressBar::with_draw_target(Some(bodies.len() as u64), ProgressDrawTarget::stderr());
    if let Ok(style) = ProgressStyle::with_template("{wide_bar} {pos} of {len} bodies, {eta} left")
    {
        bar.set_style(style);
    }
    let keep = |rows: &[SurveyRow]| {
        bar.inc(rows.len() as u64);
        kept.add(rows)
    };
    let rows = survey.rows(bodies, SurveyTold { keep: &keep, stop: &|| false });
    bar.finish_and_clear();
    Ok(rows?)
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

    fn add(&self, rows: &[SurveyRow]) -> Result<(), WorkError> {
        let lines: String = rows.iter().map(|row| files::survey_line(self.layout, row)).collect();
        let mut file = self.file.lock().unwrap_or_else(PoisonError::into_inner);
        file.write_all(lines.as_bytes()).map_err(|error| {
            let why = match error.kind() {
                ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Why::DiskFull,
                ErrorKind::FileTooLarge => Why::TooLargeHere,
                _ => Why::System(error.to_string()),
            };
            ShelfError::new(Doing::Write, name(&self.path), why).into()
        })
    }
}

/// Writes the survey whole, and its figure.
fn finish(
    outside: &Outside,
    layout: &str,
    rows: &[SurveyRow],
    (out, figure): (&Path, Option<&Path>),
    on: Date,
) -> Result<(), Failure> {
    outputs::one(outside, out, files::write_survey(layout, rows).into_bytes())?;
    if let Some(path) = figure {
        outputs::one(outside, path, survey_figure(ENGLISH, layout, rows, on)?)?;
    }
    Ok(())
}

/// What came out, and what was written.
fn tell(
    terminal: Terminal,
    rows: &[SurveyRow],
    out: &Path,
    figure: Option<&Path>,
) -> Result<(), Failure> {
    let summary = SurveySummary::of(rows);
    let written: Vec<String> =
        [Some(out), figure].into_iter().flatten().map(|path| path.display().to_string()).collect();
    if terminal.is_json() {
        return terminal.answer(&files::report::survey(PROGRAM, &summary, &written));
    }
    let mut lines = ENGLISH.survey_summary(&summary);
    lines.push(format!("Wrote {}.", written.join(" and ")));
    terminal.answer(&(lines.join("\n") + "\n"))
}
