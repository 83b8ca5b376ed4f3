//! English: why there is no layout.

use std::time::Duration;

use case::text::{Remark, TextFinding};
use case::{BadDescription, Crash, Distrust, LayoutError, PluginFault, PluginFaultKind, Said};
use cushion::Name;

use super::{said, texts};

/// Why there is no layout, and what to do.
pub(super) fn no_layout(error: &LayoutError) -> Said {
    match error {
        LayoutError::OtherSource { name } => {
            said(format!("no layout is called `{name}`"), "give the path of a layout file")
        }
        LayoutError::UnknownName { name, known } => said(
            format!("no layout is called `{name}`"),
            format!("built in: {}; or give the path of a layout file", quoted(known)),
        ),
        LayoutError::NoParameters { name, given } => said(
            format!("the built-in layout `{name}` has no parameter `{given}`"),
            "take the parameters away",
        ),
        LayoutError::NotSettable { name, given } => said(
            format!("`{given}` cannot be set: no plugin draws the layout `{name}`"),
            "only the layouts of plugins take settings",
        ),
        LayoutError::Plugin(PluginFault { plugin, kind }) => {
            let Said { message, hint } = fault(kind);
            Said { message: format!("plugin `{plugin}`: {message}"), hint }
        }
    }
}

/// Names in quotes.
pub(super) fn quoted<T: std::fmt::Display>(names: &[T]) -> String {
    names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
}

/// What is wrong with a plugin that was named, and what to do.
pub(super) fn fault(kind: &PluginFaultKind) -> Said {
    use PluginFaultKind as Kind;
    let hint = match kind {
        Kind::NotAName => format!("take {}", Name::RULE),
        Kind::NotFound { looked_in } if looked_in.is_empty() => String::new(),
        Kind::NotFound { looked_in } => format!("put it into one of: {}", looked_in.join(", ")),
        Kind::UnknownParameter { known, .. } if known.is_empty() => "it has none".to_owned(),
        Kind::UnknownParameter { known, .. } => format!("it has: {}", names(known)),
        Kind::NotGiven { parameter, .. } => format!("measure it, or give `{parameter}`"),
        Kind::NoFile => "name the library's own path".to_owned(),
        Kind::NotTrusted { .. } => {
            "let it belong to you or to root and be written to by nobody else".to_owned()
        }
        Kind::Refused(_) | Kind::OutOfRange { .. } | Kind::NoChild(_) | Kind::NoLimits(_) => {
            String::new()
        }
        Kind::NotALibrary(_)
        | Kind::NoEntry
        | Kind::OtherVersion { .. }
        | Kind::BadDescription(_)
        | Kind::OtherName { .. }
        | Kind::Crashed(_)
        | Kind::Ended
        | Kind::TooSlow(_)
        | Kind::NotReadInTime(_)
        | Kind::TooLong { .. }
        | Kind::TooMuchPrinted { .. }
        | Kind::NotText
        | Kind::Failed(_)
        | Kind::OtherLayout { .. }
        | Kind::OtherSize { .. }
        | Kind::BadLayout { .. } => "tell the plugin's author; nothing was written".to_owned(),
    };
    said(message(kind), hint)
}

/// Names, one after the other.
fn names(names: &[Name]) -> String {
    names.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")
}

fn message(kind: &PluginFaultKind) -> String {
    use PluginFaultKind as Kind;
    match kind {
        Kind::NotAName => "this is no plugin's name".to_owned(),
        Kind::NotFound { .. } => "no plugin of this name was found".to_owned(),
        Kind::NoFile => "there is no such file".to_owned(),
        Kind::NotALibrary(Some(why)) => format!("this file cannot be loaded: {why}"),
        Kind::NotALibrary(None) => "this file cannot be loaded".to_owned(),
        Kind::NoEntry => NO_ENTRY.to_owned(),
        Kind::OtherVersion { found } => other_version(*found),
        Kind::BadDescription(bad) => {
            format!("its description breaks the contract: {}", bad_description(*bad))
        }
        Kind::OtherName { found } => format!("it calls itself `{found}`"),
        Kind::NotTrusted { path, why } => {
            format!("it was not run, because `{path}` {}", distrust(*why))
        }
        Kind::UnknownParameter { given, .. } => format!("it has no parameter `{given}`"),
        Kind::OutOfRange { parameter, value, least, greatest } => {
            format!("`{parameter}` is {value}, and lies between {least} and {greatest}")
        }
        Kind::NotGiven { parameter, words, .. } => not_given(parameter, words),
        Kind::NoChild(why) => format!("its process could not be started: {why}"),
        Kind::NoLimits(why) => format!("its process could not be given limits: {why}"),
        Kind::Crashed(crash) => format!("it crashed ({})", crashed(*crash)),
        Kind::Ended => "it ended without an answer".to_owned(),
        Kind::TooSlow(limit) => format!("it did not answer within {} s", limit.as_secs_f64()),
        Kind::NotReadInTime(limit) => not_read_in_time(*limit),
        Kind::OtherLayout { found } => other_layout(found),
        Kind::TooLong { most } => format!("it answered more than {most} bytes"),
        Kind::TooMuchPrinted { most } => format!("it printed more than {most} bytes"),
        Kind::NotText => "its answer is not text".to_owned(),
        Kind::Failed(Some(why)) => format!("it failed: {why}"),
        Kind::Failed(None) => "it failed, and did not say why".to_owned(),
        Kind::Refused(Some(why)) => why.trim_end_matches('.').to_owned(),
        Kind::Refused(None) => "it refused, and did not say why".to_owned(),
        Kind::OtherSize { asked, answered } => {
            let answered: Vec<String> = answered.iter().map(ToString::to_string).collect();
            format!("it was asked for {asked} and answered for {}", answered.join(", "))
        }
        Kind::BadLayout { remarks, .. } => bad_layout(remarks),
    }
}

const NO_ENTRY: &str = "this library is no plugin: it does not export `seatwright_plugin`";

fn other_version(found: u32) -> String {
    format!("it was built for version {found} of the contract; this program reads version 1")
}

fn not_given(parameter: &Name, words: &str) -> String {
    format!("`{parameter}` ({words}) must be measured or given; no default is taken")
}

fn not_read_in_time(limit: Duration) -> String {
    format!("its layout cannot be read within {} s", limit.as_secs_f64())
}

fn other_layout(found: &Name) -> String {
    format!("it answered with a layout that is called `{found}`")
}

fn bad_layout(remarks: &[Remark]) -> String {
    // What is missing from a text that broke off is not what is wrong with it.
    let broken = |remark: &&Remark| matches!(remark.finding, TextFinding::Syntax(_));
    let first = remarks.iter().find(broken).or(remarks.first());
    first.map_or("its layout cannot be read".to_owned(), |first| {
        format!("its layout is wrong: {}", texts::about(&first.finding).message)
    })
}

fn distrust(why: Distrust) -> &'static str {
    match why {
        Distrust::OtherOwner => "belongs to another user",
        Distrust::WritableByAll => "can be written to by everybody",
    }
}

fn bad_description(bad: BadDescription) -> &'static str {
    match bad {
        BadDescription::Null => "it is null, so it cannot describe itself",
        BadDescription::Size => "its size is wrong",
        BadDescription::NoFunction => "a function is null",
        BadDescription::TooManyParameters => "it has too many parameters",
        BadDescription::NoParameters => "its parameters are null",
        BadDescription::ParameterSize => "the size of a parameter is wrong",
        BadDescription::Name => "its name is not a name",
        BadDescription::Version => "its version is not a version",
        BadDescription::About => "what it says about itself is not a text",
        BadDescription::Parameter => "a parameter is not right",
        BadDescription::Unreadable => "it cannot be read",
    }
}

fn crashed(crash: Crash) -> String {
    match crash {
        Crash::OthersMemory => "it used memory that is not its own".to_owned(),
        Crash::NoMemory => "it used memory that is not there".to_owned(),
        Crash::GaveUp => "it gave up: out of memory or stack, or by itself".to_owned(),
        Crash::NoInstruction => "it ran something that is no instruction".to_owned(),
        Crash::DividedByZero => "it divided by zero".to_owned(),
        Crash::TooLong => "it computed for too long".to_owned(),
        Crash::WroteFile => "it wrote to a file".to_owned(),
        Crash::Killed => "it was killed".to_owned(),
        Crash::Signal(number) => format!("signal {number}"),
    }
}
