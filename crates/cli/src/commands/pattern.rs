//! `pattern`: a layout at one size, with its stock fill.

use std::path::{Path, PathBuf};

use casework::PROGRAM;
use files::report::LayoutSource;
use words::{SupplierFault, Told};

use crate::arguments::Pattern;
use crate::failure::Failure;
use crate::output_paths::{self, inputs};
use crate::outside::Outside;
use crate::say;
use crate::terminal::Terminal;
use crate::{outputs, tables, watching};

/// Shows a pattern, again and again where its file is watched.
pub(crate) fn run(arguments: &Pattern, terminal: Terminal) -> Result<(), Failure> {
    if !arguments.watch {
        return once(arguments, terminal);
    }
    let path = Path::new(&arguments.layout);
    if !path.is_file() {
        let named = arguments.layout.as_str();
        return Err(Failure::supplier(&SupplierFault::NoFileToWatch { named }));
    }
    watching::whenever_saved(path, || {
        if let Err(failure) = once(arguments, terminal) {
            failure.tell(terminal);
        }
    })
}

/// Shows a pattern as a table or in JSON, and draws it where asked.
fn once(arguments: &Pattern, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let mut layout = outside.surroundings().layout(&arguments.layout, arguments.size)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    if let Some(path) = &arguments.svg {
        output_paths::has_ending(path, "svg")?;
        let read = [&layout.file.path, &cell.file.path].map(PathBuf::from);
        output_paths::are_apart(&inputs(&read, &arguments.plugins), &[path])?;
    }
    let pattern = match casework::pattern(&mut layout, arguments.size, &cell.value) {
        Ok(pattern) => pattern,
        Err(refused) => {
            if let Some(path) = &arguments.svg {
                let (size, cell) = (arguments.size, &cell.value);
                let drawn = casework::faulty_drawing(say::language(), &layout, size, cell)?;
                outputs::one(&outside, path, drawn)?;
            }
            return Err(refused.into());
        }
    };
    let fill = casework::stock_fill(&mut layout, &pattern, &cell.value)?;
    let cautions = say::not_rated(&pattern);
    if let Some(path) = &arguments.svg {
        outputs::one(&outside, path, casework::drawing(say::language(), &pattern)?)?;
    }
    let digest = layout.digest();
    let drawn_by = layout.drawn_by.as_deref();
    if terminal.is_json() {
        let source = LayoutSource { digest: &digest, drawn_by };
        let remarks = (layout.file.text.as_str(), layout.file.remarks.as_slice());
        return terminal.answer(&files::report::pattern(
            PROGRAM,
            source,
            (&pattern, &fill, &|own| say::language().compartment(own)),
            (&cautions, &say::finding),
            (remarks, &say::text),
        ));
    }
    let remarks = layout.file.remarks.iter().map(|own| say::text(&own.finding).message);
    terminal.warn(&cautions.iter().map(say::finding).chain(remarks).collect::<Vec<_>>());
    let drawn_by = drawn_by.map_or_else(String::new, |plugin| {
        say::language().told(&Told::DrawnBy { plugin, digest: digest.as_str() }) + "\n"
    });
    terminal.answer(&(tables::pattern(&pattern, &fill) + &drawn_by))
}
