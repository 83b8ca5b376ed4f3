//! `layouts`: what can be made.

use casework::{ListedLayout, PROGRAM};
use cushion::Size;
use files::report::{self, LayoutOfList};

use crate::arguments::Layouts;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::tables;
use crate::terminal::Terminal;

/// Lists layouts as a table or in JSON; fails after that where a file that was named cannot be used.
pub(crate) fn run(arguments: &Layouts, terminal: Terminal) -> Result<(), Failure> {
    crate::plugins::nothing_to_set(&arguments.plugins)?;
    let outside = Outside::new(&arguments.plugins);
    let files: Vec<String> = arguments.files.iter().map(|path| name(path)).collect();
    let listed = outside.surroundings().listed_layouts(&files, Size::USUAL);
    if terminal.is_json() {
        let all = listed.iter().map(of_list).collect();
        terminal.answer(&report::layouts(PROGRAM, all))?;
        return all_are_found(listed, &files).map_err(Failure::told);
    }
    terminal.answer(&tables::layouts(&listed))?;
    for own in listed.iter().filter(|own| !files.contains(&own.name)) {
        if let Err(error) = &own.found {
            terminal.warn(&[say::language().layout_not_seen(&own.name, &why(error))]);
        }
    }
    all_are_found(listed, &files)
}

fn of_list(own: &ListedLayout) -> LayoutOfList<'_> {
    let found = own.found.as_ref().map(|layout| (&layout.value, layout.digest())).map_err(why);
    let drawn_by = own.found.as_ref().ok().and_then(|layout| layout.drawn_by.as_deref());
    LayoutOfList { name: &own.name, found, drawn_by, any_size: own.any_size }
}

/// Why a layout cannot be had, in a clause.
fn why(error: &casework::WorkError) -> String {
    say::language().trouble(&error.what).message
}

/// Fails with the first file that cannot be used; that a plugin wants measures is no failure.
fn all_are_found(listed: Vec<ListedLayout>, files: &[String]) -> Result<(), Failure> {
    let named = listed.into_iter().filter(|own| files.contains(&own.name));
    match named.map(|own| own.found).find_map(Result::err) {
        Some(error) => Err(error.into()),
        None => Ok(()),
    }
}
