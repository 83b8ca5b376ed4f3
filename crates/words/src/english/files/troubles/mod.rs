//! English: why work on a case ends early.

mod done;
mod papers;
mod restoring;
mod shelf;
mod surveys;

pub(in crate::english) use self::shelf::reason;

use case::text::EditError;
use case::{
    AdjustRefusal, BatchError, Date, FileKind, MeshError, NotAppended, Said, StockError, Trouble,
};
use cushion::{FaultKind, Size};

use super::plugins::quoted;
use super::{edits, layouts, plugins, said, texts};
use crate::{CheckWords as _, English};

/// Why work on a case ends early, and what to do.
pub(super) fn about(trouble: &Trouble) -> Said {
    match trouble {
        Trouble::Shelf(error) => shelf::about(error),
        Trouble::NotUtf8 { file, line, byte } => not_utf8(file, *line, *byte),
        Trouble::WrongFile { file, errors, remarks } => wrong_file(file, *errors, *remarks),
        Trouble::Layout(error) => plugins::no_layout(error),
        Trouble::NotOurs { file, kind } => not_ours(file, *kind),
        Trouble::UnknownCell { name, known } => said(
            format!("no cell is called `{name}`"),
            format!("built in: {}; or give the path of a cell file", quoted(known)),
        ),
        Trouble::Edit { file, error } => edit(file, error),
        Trouble::FirstFileIsItself { file } => said(
            format!("`{file}` names itself as the file of the client's first cushion"),
            "name the file of the other cushion, or leave the key out",
        ),
        Trouble::OtherCompartments { file } => other_compartments(file),
        Trouble::OtherCushion { file, on, was, now } => other_cushion(file, *on, was, now),
        Trouble::NoWeight { file } => no_weight(file),
        Trouble::NoBody { file, error } => said(
            format!("the measures in `{file}` make no body: {}", English::new().body_error(error)),
            "check that measure, and those near it",
        ),
        Trouble::NotSafe(why) => {
            let Said { message, hint } = English::new().plan_refusal(why);
            Said { message: format!("not safely possible: {message}"), hint }
        }
        Trouble::NoPlan(why) => English::new().plan_refusal(why),
        Trouble::NothingRecorded { file } => nothing_recorded(file),
        Trouble::NotAppended { file, why } => said(not_appended(file, why), ""),
        Trouble::NotSigned => not_signed(),
        Trouble::NotDone { file, why } => done::about(file, why),
        Trouble::NotRestored(why) => restoring::about(why),
        Trouble::NoCheck => no_check(),
        Trouble::Checks { why, numbers } => checks(why, numbers),
        Trouble::NotDrawn { what, why } => papers::not_drawn(what, why),
        Trouble::NoPicture(why) => said(papers::no_picture(why), ""),
        Trouble::NoStock { file, size, error } => {
            said(format!("`{file}` has no stock fill in {size}: {}", stock(error)), "")
        }
        Trouble::NotMade { file, size, fault } => not_made(file, *size, fault.as_ref()),
        Trouble::NoSizes { file } => said(format!("`{file}` has no sizes"), ""),
        Trouble::OtherCounts { given, wanted } => said(
            format!("{given} counts are given for {wanted} compartments"),
            "give one count for each compartment",
        ),
        Trouble::Batch(error) => said(batch(error), ""),
        Trouble::Table { file, line, fault } => surveys::table(file, *line, fault),
        Trouble::PartsOfOtherSurveys { file, first } => surveys::other_surveys(file, first),
        Trouble::PartTwice { file, first, part } => surveys::part_twice(file, first, *part),
        Trouble::PartsMissing { missing, of } => surveys::parts_missing(missing, *of),
        Trouble::EmptyPart { file } => surveys::empty_part(file),
        Trouble::OtherSurvey { file } => surveys::other_survey(file),
        Trouble::BodyTwice { row } => surveys::body_twice(*row),
        Trouble::NoParts => surveys::no_parts(),
        Trouble::Stopped => said("it was told to stop, so there is no answer", ""),
        Trouble::NoThread(why) => said(format!("no thread could be started: {why}"), ""),
    }
}

fn not_utf8(file: &str, line: usize, byte: u8) -> Said {
    said(
        format!(
            "`{file}` is not UTF-8 text: line {line} has the byte 0x{byte:02X}, which does not belong there"
        ),
        "save the file as UTF-8 in your text editor",
    )
}

fn wrong_file(file: &str, errors: usize, remarks: usize) -> Said {
    said(format!("`{file}` cannot be used: {}", texts::count(errors, remarks)), "")
}

fn not_ours(file: &str, kind: FileKind) -> Said {
    let id = kind.id();
    said(
        format!("`{file}` is no {id} file: it does not say `kind = \"{id}\"`"),
        format!("name a {id} file; every one says at its head what it is"),
    )
}

fn edit(file: &str, error: &EditError) -> Said {
    let Said { message, hint } = edits::about(error);
    match error {
        EditError::Unreadable(_) => Said { message: format!("`{file}`: {message}"), hint },
        EditError::NoSuchKey { .. }
        | EditError::NoSuchEntry { .. }
        | EditError::EachSide(_)
        | EditError::Table(_)
        | EditError::Form(_)
        | EditError::Wrong { .. } => Said { message, hint },
    }
}

fn not_appended(file: &str, why: &NotAppended) -> String {
    match why {
        NotAppended::NotToml(why) => format!("`{file}`: the record cannot be added to: {why}"),
        NotAppended::RecordForm => format!(
            "`{file}`: the record cannot be added to: `record` is not written as [[record]]"
        ),
        NotAppended::FillingForm => format!(
            "`{file}`: how far the fill is cannot be kept: `filling` is not written as [filling]"
        ),
    }
}

fn other_compartments(file: &str) -> Said {
    said(
        format!("the plan recorded last in `{file}` has other compartments than its layout"),
        "the layout was changed; record a new plan",
    )
}

fn other_cushion(file: &str, on: Date, was: &(String, Size), now: &(String, Size)) -> Said {
    said(
        format!(
            "the plan recorded on {on} is for `{}` in {}, and `{file}` now names `{}` in {}",
            was.0, was.1, now.0, now.1
        ),
        "record a new plan, or put the cushion back as it was",
    )
}

fn no_weight(file: &str) -> Said {
    said(
        format!("`{file}` has no body weight, and nothing can be predicted without it"),
        "weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`",
    )
}

fn nothing_recorded(file: &str) -> Said {
    said(
        format!("`{file}` has no recorded plan, and only recorded counts are printed"),
        "look at the plan first, then record it",
    )
}

fn not_signed() -> Said {
    said(
        "who records it, or why, is empty, or has a line break in it",
        "name who checked and moved, by initials or role, and say why in one line",
    )
}

fn no_check() -> Said {
    said(
        "no check is given, so there is nothing to go by",
        "give what was found, such as a top and an under check on both sides",
    )
}

fn not_made(file: &str, size: Size, fault: Option<&FaultKind>) -> Said {
    match fault {
        Some(fault) => said(
            format!("`{file}` cannot be drawn in {size}: {}", layouts::fault(fault)),
            layouts::advice(fault),
        ),
        None => said(format!("`{file}` cannot be drawn in {size}"), ""),
    }
}

fn checks(why: &AdjustRefusal, numbers: &[u8]) -> Said {
    let said = English::new().adjust_refusal(why);
    match why {
        AdjustRefusal::NoSuchCompartment(_) => {
            let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
            Said::new(said.message, format!("there are {}", numbers.join(", ")))
        }
        AdjustRefusal::Unreachable(_)
        | AdjustRefusal::NoPartner(_)
        | AdjustRefusal::NoWeight
        | AdjustRefusal::NoBody(_) => said,
    }
}

/// Why there is no stock fill.
fn stock(error: &StockError) -> String {
    match error {
        StockError::Mesh(MeshError::TooClose { at }) => format!(
            "two seams run too close to each other near x = {:.0}, y = {:.0} mm",
            at.x, at.y
        ),
        StockError::Mesh(MeshError::Empty) => "the seams enclose no compartment".to_owned(),
        StockError::NoCrown(crown) => format!(
            "a stock crown of {:.1} mm does not press the cells; give one above 0 mm",
            crown.to_mm()
        ),
    }
}

/// Why cells cannot be counted by weight.
fn batch(error: &BatchError) -> String {
    match error {
        BatchError::FewCells { cells, least } => {
            format!("a batch of {cells} cells is too small; count {least} at least, better 50")
        }
        BatchError::ManyCells { cells, most } => {
            format!("a batch of {cells} cells is more than is counted by hand; take {most} at most")
        }
        BatchError::CellWeight { cell, least, most } => format!(
            "one cell would weigh {cell:.3e} g, and lies between {least} and {most} g; look at cells and grams again"
        ),
        BatchError::NotANumber => "grams and division are numbers above zero".to_owned(),
        BatchError::CoarseScale { cell, division } => format!(
            "a scale with steps of {division} g cannot count cells of {cell:.2} g; take a finer one, or count by hand"
        ),
    }
}
