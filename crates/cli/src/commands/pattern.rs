//! `pattern`: a layout at one size, with its stock fill.

use files::report::LayoutSource;

use crate::arguments::Pattern;
use crate::failure::Failure;
use crate::plugins::Session;
use crate::run::PROGRAM;
use crate::stock::Stock;
use crate::terminal::Terminal;
use crate::{export, resolve, tables, write};

/// Shows a pattern as a table or in JSON, and draws it where asked.
pub(crate) fn run(arguments: &Pattern, terminal: Terminal) -> Result<(), Failure> {
    let session = Session::new(&arguments.plugins);
    let mut layout = resolve::layout(&arguments.layout, arguments.size, &session)?;
    let cell = resolve::cell(arguments.cell.cell.as_deref())?;
    let pattern = resolve::pattern(&mut layout, arguments.size)?;
    let stock = Stock::of(&layout, &pattern, &cell.value)?;
    let mut warnings = Vec::new();
    if pattern.max_user_weight().is_none() {
        warnings.push(format!(
            "{} is not made in {}: there is no maximum user weight for it",
            layout.file.shown(),
            arguments.size
        ));
    }
    warnings.extend(layout.file.remarks.iter().map(files::Remark::message));
    if let Some(path) = &arguments.svg {
        write::one(path, export::drawing(&pattern)?)?;
    }
    let digest = layout.digest();
    let drawn_by = layout.drawn_by.as_deref();
    if arguments.json.json {
        let source = LayoutSource { digest: &digest, drawn_by };
        let fill = stock.fill();
        return terminal
            .answer(&files::report::pattern(PROGRAM, source, &pattern, fill, &warnings));
    }
    terminal.warn(&warnings);
    let drawn_by = drawn_by.map_or_else(String::new, |plugin| {
        format!("Drawn by the plugin {plugin}, layout {digest}.\n")
    });
    terminal.answer(&(tables::pattern(&pattern, stock.fill()) + &drawn_by))
}
