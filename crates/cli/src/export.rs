//! Exports: documents as the bytes of files, on all the threads that there are.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use cushion::Pattern;
use sheets::{Document, Page, SvgOptions};

use crate::failure::{Failure, Kind};
use crate::papers::Named;
use crate::write::Output;

/// Dots per inch of the pictures.
const PICTURE_DPI: f64 = 150.0;

/// One file to make.
struct Job<'a> {
    path: PathBuf,
    work: Work<'a>,
}

/// What it is made from, and as what.
enum Work<'a> {
    Pdf(&'a Document),
    Svg(&'a Page),
    Png(&'a Page),
}

/// Makes the files of all papers: a PDF of each, an SVG of each page, and pictures where asked.
///
/// The order of the files does not depend on the threads.
///
/// # Errors
///
/// Fails where a page cannot be exported, which is a fault of ours.
pub(crate) fn all(papers: &[Named], folder: &Path, pictures: bool) -> Result<Vec<Output>, Failure> {
    let jobs: Vec<Job<'_>> = papers.iter().flat_map(|it| jobs(it, folder, pictures)).collect();
    let next = AtomicUsize::new(0);
    let worker = || {
        let mut made = Vec::new();
        while let Some(job) = jobs.get(next.fetch_add(1, Ordering::Relaxed)) {
            made.push((&job.path, export(&job.work)));
        }
        made
    };
    let threads = thread::available_parallelism().map_or(1, usize::from).min(jobs.len());
    let made = thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(worker)).collect();
        let joined = workers.into_iter().map(|it| it.join());
        joined
            .flat_map(|it| it.unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect::<Vec<_>>()
    });
    let mut outputs = made
        .into_iter()
        .map(|(path, bytes)| Ok(Output { path: path.clone(), bytes: bytes? }))
        .collect::<Result<Vec<_>, Failure>>()?;
    let place = |output: &Output| jobs.iter().position(|job| job.path == output.path);
    outputs.sort_by_key(place);
    Ok(outputs)
}

/// The files of one document: pages are numbered where there are several.
fn jobs<'a>(named: &'a Named, folder: &Path, pictures: bool) -> Vec<Job<'a>> {
    let document = &named.document;
    let file = |ending: String| folder.join(named.name.clone() + &ending);
    let mut jobs = vec![Job { path: file(".pdf".to_owned()), work: Work::Pdf(document) }];
    for (place, page) in document.pages.iter().enumerate() {
        let number =
            if document.pages.len() == 1 { String::new() } else { format!("-{}", place + 1) };
        jobs.push(Job { path: file(format!("{number}.svg")), work: Work::Svg(page) });
        if pictures {
            jobs.push(Job { path: file(format!("{number}.png")), work: Work::Png(page) });
        }
    }
    jobs
}

/// Makes the bytes of one file.
fn export(work: &Work<'_>) -> Result<Vec<u8>, Failure> {
    match work {
        Work::Pdf(document) => Ok(sheets::pdf(document)),
        Work::Svg(page) => Ok(sheets::svg(page, &SvgOptions::default()).into_bytes()),
        Work::Png(page) => sheets::png(page, PICTURE_DPI)
            .map_err(|error| Failure::new(Kind::Ours, error.to_string())),
    }
}

/// Draws a pattern at true size, as SVG.
///
/// # Errors
///
/// Fails where a number finds no room in its compartment.
pub(crate) fn drawing(pattern: &Pattern) -> Result<Vec<u8>, Failure> {
    let page = sheets::drawing(pattern);
    let page =
        page.map_err(|error| Failure::file(format!("the pattern cannot be drawn: {error}")))?;
    Ok(sheets::svg(&page, &SvgOptions::default()).into_bytes())
}
