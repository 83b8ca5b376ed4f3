//! English: why a command ends without what it was asked for, and what to do.

use case::Said;
use cushion::Name;

use super::super::files::reason;
use super::super::parts::counted;
use crate::said::said;
use crate::{Advice, CallFault, FileFault, OutputFault, PageFault, ProgramFault, SupplierFault};

/// Why, where nothing else is to be done than what it says.
fn only(message: impl Into<String>) -> Said {
    Said { message: message.into(), hint: None }
}

pub(super) fn of_a_call(fault: &CallFault<'_>) -> Said {
    match fault {
        CallFault::NoCompartment { named, known } => {
            said(format!("this cushion has no compartment {named}"), format!("it has {known}"))
        }
        CallFault::SettingForNothing { given } => said(
            format!("--set {given}=... sets nothing here"),
            "only the layouts of plugins take settings; take it away",
        ),
        CallFault::NoEpoch { epoch } => said(
            format!("SOURCE_DATE_EPOCH is `{epoch}`, which is no number of seconds since 1970"),
            "unset it, or give the day by --date",
        ),
        CallFault::NoEntry { number, there } => said(
            format!("there is no entry {number} in the record"),
            format!("entries are counted from 1, the oldest first; there are {there}"),
        ),
        CallFault::Nobody => said("it is not said who did it", "add --by WHO, by initials or role"),
        CallFault::BagTwice => only("the spare bag is counted twice"),
        CallFault::PlannedAndCounted => only("it is as planned, or the counts are given, not both"),
        CallFault::NoCounts => {
            said("no compartment has a count", "say them as 1=44 2=47, or --as-planned")
        }
        CallFault::AgainstOneLayout => only("--against goes with one layout file"),
        CallFault::AgainstALayout => only("--against goes with a layout file"),
        CallFault::NothingToWeigh => {
            said("nothing is named to weigh", "name a client's file, or --stock LAYOUT with --size")
        }
        CallFault::NoSizeSuits => said("no made size suits", "what to do is said above"),
        CallFault::NothingToDraw { outcome } => only(format!("nothing can be drawn: {outcome}")),
    }
}

pub(super) fn of_an_output(fault: &OutputFault<'_>) -> Said {
    match fault {
        OutputFault::CalledOtherwise { output, endings, example } => said(
            format!(
                "`{output}` is to be written as {}, and is called otherwise",
                endings.join(" or ")
            ),
            format!("name a file that ends in .{}, such as `{example}`", endings[0]),
        ),
        OutputFault::OverAnInput { output, input } => said(
            format!("`{output}` would be written over `{input}`, which is read here"),
            "name another file to write",
        ),
        OutputFault::Twice { output } => {
            said(format!("`{output}` would be written twice"), "name a file for each")
        }
        OutputFault::TheAnswer { why } => only(format!("cannot write the answer: {}", reason(why))),
        OutputFault::FolderThere { folder } => said(
            format!("{folder} is there already, and nothing is written over"),
            "name a new folder",
        ),
        OutputFault::StaysBeside { first, more } => {
            let more = match more {
                0 => String::new(),
                more => format!(" and {}", counted(*more, "more paper")),
            };
            said(
                format!(
                    "`{first}`{more} of an earlier edition of this order would stay beside the new papers"
                ),
                "take the earlier papers away, or name another folder",
            )
        }
    }
}

pub(super) fn of_a_supplier(fault: &SupplierFault<'_>) -> Said {
    match fault {
        SupplierFault::NoFileToWatch { named } => said(
            format!("{named} is no file that could be watched"),
            "name a layout file, or leave --watch out",
        ),
        SupplierFault::NotWatched { file, why } => {
            said(format!("{file} cannot be watched: {why}"), "leave --watch out")
        }
        SupplierFault::NoRangeOfPlugin => said(
            "a plugin's layout is drawn for each size that is asked for: it has no range",
            "write its answer into a layout file that lists sizes, and ask for that",
        ),
        SupplierFault::NoReviewOfPlugin => said(
            "a plugin's layout has no sizes of its own to review",
            "write its answer with `seatwright plugin draw`, and review that",
        ),
        SupplierFault::PluginNeedsSizes => said(
            "a plugin draws for the sizes that are asked for",
            "name each with --size, such as --size 400x400 --size 440x400",
        ),
        SupplierFault::PluginNeedsSize => plugin_needs_size(),
        SupplierFault::NoSizeOfLayout { layout } => no_size_of(layout),
        SupplierFault::ListsItsSizes { layout } => {
            said(format!("`{layout}` lists its sizes itself"), "take --size away")
        }
        SupplierFault::SizeTwice { size } => only(format!("the size {size} is named twice")),
        SupplierFault::NoBodyInPart { count } => said(
            format!("there is no body in this part; there are {count} in all"),
            "take a larger sample, or fewer parts",
        ),
        SupplierFault::NamesNoOrder { file, longest } => said(
            format!("`{file}` cannot name an order on its papers"),
            format!("call the file by at most {longest} letters, digits and - _ . before .csv"),
        ),
        SupplierFault::OverloadTooLow => only("the overload is not above the first load"),
        SupplierFault::NoPluginName { named } => {
            said(format!("`{named}` is no plugin's name"), format!("take {}", Name::RULE))
        }
        SupplierFault::RefusedEverywhere { plugin } => said(
            format!("plugin `{plugin}`: refused at every size, so nothing was checked"),
            "give it other values with --set NAME=NUMBER",
        ),
        SupplierFault::WrongAt { plugin, wrong, sizes } => said(
            format!("plugin `{plugin}`: wrong at {wrong} of {}", counted(*sizes, "size")),
            "tell the plugin's author",
        ),
    }
}

pub(super) fn of_files(fault: &FileFault<'_>) -> Said {
    match fault {
        FileFault::CannotBeUsed { file, remarks } => {
            only(format!("{file} cannot be used: {remarks}"))
        }
        FileFault::SomeCannotBeUsed { wrong, files } => {
            only(format!("{wrong} of {} cannot be used", counted(*files, "file")))
        }
        FileFault::Unread { files } => said(
            format!("cannot be read, so nobody knows what they hold: {files}"),
            "`seatwright check` says what is wrong with each",
        ),
    }
}

pub(super) fn of_the_program(fault: &ProgramFault<'_>) -> Said {
    match fault {
        ProgramFault::Ours { place } => said(
            format!("this is a fault of the program: {place}"),
            "please report it, with this message, the command and the files",
        ),
        ProgramFault::Gone { why } => only(format!("this program cannot be found again: {why}")),
    }
}

pub(super) fn of_the_page(fault: &PageFault<'_>) -> Said {
    match fault {
        PageFault::NoReport => said("a page has no report", "leave --json out"),
        PageFault::NoFolder { named } => said(
            format!("{named} is no folder"),
            "name the folder with the clients' files; for a new one, make the folder first",
        ),
        PageFault::NoThreads { why } => {
            only(format!("the system gives no threads for the page: {why}"))
        }
        PageFault::Port { why } => said(
            format!("the port cannot be served: {why}"),
            "leave --port out, and a free one is taken",
        ),
        PageFault::NoLot => only("the system gives no random words, so nobody could be kept out"),
        PageFault::Ended { why } => only(format!("the page ended: {why}")),
    }
}

pub(super) fn advice(advice: &Advice<'_>) -> String {
    match advice {
        Advice::RecordAPlan { file } => format!(
            "see the counts with `seatwright plan {file}`, then record them with --record --by WHO"
        ),
        Advice::GiveTheRest => "nothing was written; give what is missing too".to_owned(),
        Advice::NothingWritten => "nothing was written".to_owned(),
        Advice::CheckSaysWhere => "`seatwright check` says where".to_owned(),
        Advice::TakeSettingAway { given } => format!("take --set {given}=... away"),
        Advice::GiveSetting { parameter } => format!("--set {parameter}=... gives it"),
        Advice::NamePlugin => "or name its file with --plugin PATH".to_owned(),
        Advice::NamePluginOfCode => {
            "--plugin PATH names a plugin, --set NAME=NUMBER gives it what it was given then"
                .to_owned()
        }
        Advice::NameLayoutOfCode => "--layout FILE takes it from a file".to_owned(),
        Advice::NameCellOfCode => "--cell FILE takes it from a file".to_owned(),
    }
}

fn no_size_of(layout: &str) -> Said {
    said(
        format!("no size that `{layout}` is made in suits the client"),
        "`seatwright size` says why; --size compares in a size all the same",
    )
}

fn plugin_needs_size() -> Said {
    said(
        "a plugin draws for the size that is asked for",
        "name it with --size, such as --size 440x400",
    )
}
