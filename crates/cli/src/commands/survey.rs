//! `survey` and `merge`: a layout over many bodies, in parts if need be.

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use case::{
    Date, Doing, ShelfError, SurveyPart, SurveyRow, SurveySummary, SurveyedBody, Trouble, Why,
};
use casework::{
    Edition, PROGRAM, ReadPart, Sourced, SurveyTold, WorkError, by_lot, shard, survey_figure,
};
use cushion::{Cell, Layout, Length, Size};
use words::{SupplierFault, Told};

use crate::arguments::{Merge, Paper, PluginOptions, Survey};
use crate::failure::Failure;
use crate::output_paths;
use crate::outputs::{self, Output};
use crate::outside::{Outside, name};
use crate::progress;
use crate::say;
use crate::setting::Setting;
use crate::terminal::Terminal;

/// Surveys a layout over bodies from a table.
pub(crate) fn run(arguments: &Survey, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let mut read = vec![arguments.bodies.as_path(), Path::new(&arguments.layout)];
    read.extend(arguments.cell.cell.iter().map(Path::new));
    read.extend(arguments.plugins.plugin.iter().map(PathBuf::as_path));
    can_be_written(&read, &arguments.out, &arguments.figure)?;
    let outside = Outside::new(&arguments.plugins);
    let text = outside.surroundings().text(&name(&arguments.bodies))?;
    let bodies = files::read_bodies(&text).map_err(|error| wrong(&arguments.bodies, error))?;
    let layouts = layouts(arguments, &outside)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let part = part(arguments, &layouts, &cell, &text);
    let bodies = chosen(bodies, arguments)?;
    replaces_only_a_survey(&outside, &arguments.out)?;
    let known = done(&outside, &unfinished(&arguments.out), &part)?;
    let todo: Vec<SurveyedBody> = (bodies.iter())
        .filter(|body| !known.iter().any(|row| row.body.row == body.row))
        .cloned()
        .collect();
    let survey =
        casework::Survey { layouts: &layouts, cell: &cell.value, mesh: mesh(arguments), on };
    let kept = Kept::begin(&outside, unfinished(&arguments.out), &part, &known)?;
    let surveyed = surveyed(&survey, &kept, &todo)?;
    let mut rows: Vec<SurveyRow> = known.into_iter().chain(surveyed).collect();
    rows.sort_by_key(|row| row.body.row);
    let edition = edition(on, arguments.paper);
    finish(&outside, (&part, &rows), (&arguments.out, &arguments.figure), edition)?;
    std::fs::remove_file(unfinished(&arguments.out)).ok();
    tell(terminal, &rows, &arguments.out, &arguments.figure)
}

/// Puts parts of a survey together.
pub(crate) fn merge(arguments: &Merge, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let read: Vec<&Path> = arguments.parts.iter().map(PathBuf::as_path).collect();
    can_be_written(&read, &arguments.out, &arguments.figure)?;
    let outside = Outside::new(&PluginOptions::default());
    let mut parts = Vec::new();
    for path in &arguments.parts {
        let text = outside.surroundings().text(&name(path))?;
        let (part, rows) = files::read_survey(&text).map_err(|error| wrong(path, error))?;
        parts.push(ReadPart { file: name(path), part, rows });
    }
    replaces_only_a_survey(&outside, &arguments.out)?;
    let (whole, rows) = casework::merged(parts)?;
    let edition = edition(on, arguments.paper);
    finish(&outside, (&whole, &rows), (&arguments.out, &arguments.figure), edition)?;
    tell(terminal, &rows, &arguments.out, &arguments.figure)
}

/// Refuses outputs that would be written over what is read or over each other, or are misnamed.
fn can_be_written(inputs: &[&Path], out: &Path, figures: &[PathBuf]) -> Result<(), Failure> {
    output_paths::has_ending(out, "csv")?;
    for path in figures {
        output_paths::drawn_as(path)?;
    }
    let kept = unfinished(out);
    let figures = figures.iter().map(PathBuf::as_path);
    let outputs: Vec<&Path> = [out, &kept].into_iter().chain(figures).collect();
    output_paths::are_apart(inputs, &outputs)
}

fn wrong(path: &Path, error: files::TableError) -> Failure {
    let files::TableError { line, fault } = error;
    WorkError::file(Trouble::Table { file: name(path), line, fault }).into()
}

/// The layout that is surveyed; of a plugin one for each size.
fn layouts(arguments: &Survey, outside: &Outside) -> Result<Vec<Sourced<Layout>>, Failure> {
    let of_plugin = arguments.layout.starts_with(plugin_host::PREFIX);
    let mut sizes = arguments.size.clone();
    sizes.sort_unstable();
    if let Some(twice) = sizes.windows(2).find(|pair| pair[0] == pair[1]) {
        return Err(Failure::supplier(&SupplierFault::SizeTwice { size: twice[0] }));
    }
    match (of_plugin, sizes.is_empty()) {
        (true, true) => {
            return Err(Failure::supplier(&SupplierFault::PluginNeedsSizes));
        }
        (false, false) => {
            let layout = arguments.layout.as_str();
            return Err(Failure::supplier(&SupplierFault::ListsItsSizes { layout }));
        }
        (true, false) => {}
        // Only a plugin's layout depends on the size.
        (false, true) => {
            sizes.push(Size::USUAL);
        }
    }
    let layout = |size: &Size| Ok(outside.surroundings().layout(&arguments.layout, *size)?);
    sizes.iter().map(layout).collect()
}

/// By which this part of this survey is known again.
fn part(
    arguments: &Survey,
    layouts: &[Sourced<Layout>],
    cell: &Sourced<Cell>,
    table: &str,
) -> SurveyPart {
    let mut texts: Vec<&str> = layouts.iter().map(|own| own.file.text.as_str()).collect();
    texts.extend([cell.file.text.as_str(), table]);
    let Survey { sample, seed, fine, .. } = arguments;
    let (part, of) = arguments.shard.unwrap_or((1, 1));
    SurveyPart {
        layout: layouts[0].value.name.to_string(),
        survey: files::digest_of_survey(&texts, &format!("{sample:?} {seed} {fine} {PROGRAM}")),
        part,
        of,
    }
}

/// The width of triangles.
fn mesh(arguments: &Survey) -> Length {
    Length::from_mm(if arguments.fine { 4.0 } else { 8.0 })
}

/// Refuses to write over what is no survey.
fn replaces_only_a_survey(outside: &Outside, out: &Path) -> Result<(), Failure> {
    if let Some(text) = text_if_there(outside, out)? {
        files::read_survey(&text).map_err(|error| wrong(out, error))?;
    }
    Ok(())
}

/// The text of a file; none where there is no file, or a device or a pipe.
fn text_if_there(outside: &Outside, path: &Path) -> Result<Option<String>, Failure> {
    // What is there and cannot be read is not taken as not there.
    match outside.surroundings().text(&name(path)) {
        Err(error) if is_no_file(&error.what) => Ok(None),
        text => Ok(Some(text?)),
    }
}

fn is_no_file(what: &Trouble) -> bool {
    let Trouble::Shelf(ShelfError { why, .. }) = what else { return false };
    matches!(why, Why::NotFound | Why::NotAFile(_))
}

/// The bodies that are asked for: all or some by lot, of them all or a part, which has some.
fn chosen(bodies: Vec<SurveyedBody>, arguments: &Survey) -> Result<Vec<SurveyedBody>, Failure> {
    let bodies = match arguments.sample {
        Some(sample) => by_lot(bodies, sample, arguments.seed),
        None => bodies,
    };
    let count = bodies.len();
    let bodies = match arguments.shard {
        Some((own, of)) => shard(bodies, own, of),
        None => bodies,
    };
    if bodies.is_empty() {
        return Err(Failure::supplier(&SupplierFault::NoBodyInPart { count }));
    }
    Ok(bodies)
}

/// Where rows are kept until the survey is whole.
fn unfinished(out: &Path) -> PathBuf {
    let mut name = out.as_os_str().to_owned();
    name.push(".unfinished");
    PathBuf::from(name)
}

/// What an earlier run, broken off, has done of the same part of the same survey.
fn done(outside: &Outside, path: &Path, part: &SurveyPart) -> Result<Vec<SurveyRow>, Failure> {
    let Some(text) = text_if_there(outside, path)? else { return Ok(Vec::new()) };
    let (own, rows) = files::read_survey(&text).map_err(|error| wrong(path, error))?;
    if own.is_some_and(|own| own != *part) {
        return Err(WorkError::asked(Trouble::OtherSurvey { file: name(path) }).into());
    }
    Ok(rows)
}

/// Surveys the bodies, shows how far it is, and keeps what is done as it goes.
fn surveyed(
    survey: &casework::Survey<'_>,
    kept: &Kept<'_>,
    bodies: &[SurveyedBody],
) -> Result<Vec<SurveyRow>, Failure> {
    let bar = progress::bar(bodies.len(), &say::language().told(&Told::Bodies));
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
    part: &'a SurveyPart,
    /// None after a row was not written whole: nothing is to follow it.
    file: Mutex<Option<std::fs::File>>,
}

impl<'a> Kept<'a> {
    /// Begins the file with the rows that are known, whole: a row that was broken off is gone.
    fn begin(
        outside: &Outside,
        path: PathBuf,
        part: &'a SurveyPart,
        known: &[SurveyRow],
    ) -> Result<Self, Failure> {
        outputs::one(outside, &path, files::write_survey(part, known).into_bytes())?;
        let file = std::fs::OpenOptions::new().append(true).open(&path);
        let file = file.map_err(|error| Failure::write(&path, &error))?;
        Ok(Self { path, part, file: Mutex::new(Some(file)) })
    }

    fn add(&self, rows: &[SurveyRow]) -> Result<(), WorkError> {
        let lines: String = rows.iter().map(|row| files::survey_line(self.part, row)).collect();
        let mut file = self.file.lock().unwrap_or_else(PoisonError::into_inner);
        // Whoever could not write has said so.
        let Some(open) = file.as_mut() else { return Ok(()) };
        open.write_all(lines.as_bytes()).map_err(|error| {
            *file = None;
            ShelfError::new(Doing::Write, name(&self.path), shelf::why(&error)).into()
        })
    }
}

/// How the figure is drawn.
fn edition(on: Date, paper: Paper) -> Edition {
    Edition {
        language: say::language(),
        on,
        paper: paper.sheet(),
        large_print: false,
        client_in_code: false,
    }
}

/// Writes the survey whole and its figures, all or none; a figure is made from the rows as they are
/// written: so that it is the same for parts that were put together.
fn finish(
    outside: &Outside,
    (part, rows): (&SurveyPart, &[SurveyRow]),
    (out, figures): (&Path, &[PathBuf]),
    edition: Edition,
) -> Result<(), Failure> {
    let text = files::write_survey(part, rows);
    let (_, rows) = files::read_survey(&text).map_err(|error| wrong(out, error))?;
    let mut written = vec![Output { path: out.to_owned(), bytes: text.into_bytes() }];
    if !figures.is_empty() {
        let document = survey_figure(&part.layout, &rows, edition)?;
        written.extend(outputs::drawings(&document, figures)?);
    }
    outputs::all(outside, written)
}

/// What came out, and what was written.
fn tell(
    terminal: Terminal,
    rows: &[SurveyRow],
    out: &Path,
    figures: &[PathBuf],
) -> Result<(), Failure> {
    let summary = SurveySummary::of(rows);
    let written: Vec<String> = [out]
        .into_iter()
        .chain(figures.iter().map(PathBuf::as_path))
        .map(|path| path.display().to_string())
        .collect();
    if terminal.is_json() {
        return terminal.answer(&files::report::survey(PROGRAM, &summary, &written));
    }
    let mut lines = say::language().survey_summary(&summary);
    lines.push(say::language().told(&Told::Wrote { files: &written }));
    terminal.answer(&(lines.join("\n") + "\n"))
}
