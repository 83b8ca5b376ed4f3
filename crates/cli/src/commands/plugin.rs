//! `plugin`: what plugins there are, what they say of themselves, whether they are right.

use std::fmt::Write as _;
use std::path::Path;

use case::LayoutErrorBy;
use cushion::{Name, Severity, Size};
use plugin_host::{Description, DrawRequest, Parameter};

use words::ENGLISH;

use crate::arguments::{Plugin, PluginAction, PluginOptions};
use crate::failure::Failure;
use crate::plugins;
use crate::remarks;
use crate::terminal::Terminal;

/// What is said of running plugins, wherever they are shown.
const TRUST: &str = "A plugin is a program. It runs in a process of its own with limits, which protects from its faults, not from malice: use only what you trust.";

/// The sizes at which a plugin is checked.
const SIZES: [&str; 3] = ["250x250", "440x400", "600x550"];

pub(crate) fn run(arguments: &Plugin, terminal: Terminal) -> Result<(), Failure> {
    match &arguments.action {
        PluginAction::List => list(&arguments.plugins, terminal),
        PluginAction::Show { name } => show(&arguments.plugins, name, terminal),
        PluginAction::Check { path } => check(path, &arguments.plugins, terminal),
    }
}

/// Lists the plugins that were named or installed by the names of their files; none is run.
fn list(options: &PluginOptions, terminal: Terminal) -> Result<(), Failure> {
    let plugins = plugins::plugins(options).map_err(plugins::not_found_again)?;
    let places = plugins.places();
    let mut words = String::new();
    for (name, path) in places.all() {
        let _ = writeln!(words, "{name:<20} {}", path.display());
    }
    let faults: Vec<String> = (places.not_trusted().into_iter())
        .map(|fault| ENGLISH.no_layout(&fault.into()).message)
        .collect();
    if words.is_empty() && faults.is_empty() {
        let folders = places.folders.iter().map(|it| format!("  {}\n", it.display()));
        words = format!("No plugins. They are looked for in:\n{}", folders.collect::<String>());
    } else {
        words +=
            "\nNone was run for this list; `seatwright plugin show NAME` runs one and asks it.\n";
    }
    terminal.warn(&faults);
    terminal.answer(&format!("{words}\n{TRUST}\n"))
}

fn show(options: &PluginOptions, name: &str, terminal: Terminal) -> Result<(), Failure> {
    let name = Name::new(name.strip_prefix("plugin:").unwrap_or(name)).ok_or_else(|| {
        Failure::call(format!("`{name}` is no plugin's name")).hint(format!("take {}", Name::RULE))
    })?;
    let plugins = plugins::plugins(options).map_err(plugins::not_found_again)?;
    let path = plugins.places().find(&name).map_err(plugins::failure)?;
    let description = plugins.describe(&path).map_err(plugins::failure)?;
    terminal.answer(&format!("{}From {}\n\n{TRUST}\n", words(&description), path.display()))
}

fn words(description: &Description) -> String {
    let Description { name, version, about, parameters } = description;
    let mut words = format!("{name} {version}\n{about}\n\n");
    for parameter in parameters {
        words += &parameter_words(parameter);
    }
    words
}

fn parameter_words(parameter: &Parameter) -> String {
    let Parameter { name, words, unit, least, greatest, standard, measure, must_be_given } =
        parameter;
    let bound =
        measure.map_or(String::new(), |it| format!("; the client's {}", ENGLISH.body_measure(it)));
    let without = if *must_be_given {
        "must be given or measured".to_owned()
    } else {
        format!("{standard} where none is given")
    };
    format!("  --set {name}=...  {words}: {least} to {greatest} {unit}, {without}{bound}\n")
}

/// Draws a plugin's layout at several sizes, with its defaults, and says what is wrong.
fn check(path: &Path, options: &PluginOptions, terminal: Terminal) -> Result<(), Failure> {
    let places = PluginOptions { plugin: vec![path.to_owned()], ..options.clone() };
    let plugins = plugins::plugins(&places).map_err(plugins::not_found_again)?;
    let description = plugins.describe(path).map_err(plugins::failure)?;
    let mut answer = words(&description);
    let (mut wrong, mut refused) = (0, 0);
    for size in SIZES {
        let size: Size = size.parse().expect("the sizes are right");
        // What must be measured has a value to be drawn with, if to no client.
        let all = description.parameters.iter().map(|it| (it.name.clone(), it.standard));
        let parameters = all.chain(options.set.iter().cloned()).collect();
        let request = DrawRequest { name: description.name.clone(), size, parameters };
        let drawn = plugins.draw(&request, &|_| None);
        answer += &match drawn {
            Ok(drawn) => right(size, &drawn.layout),
            Err(fault) if fault.kind.by() == LayoutErrorBy::Asker => {
                refused += 1;
                format!("{size}: refused: {}\n", ENGLISH.plugin_fault(&fault.kind).message)
            }
            Err(fault) => {
                wrong += 1;
                let said =
                    format!("{size}: WRONG: {}\n", ENGLISH.plugin_fault(&fault.kind).message);
                let answer = plugins::answer(fault);
                said + &answer.map_or_else(String::new, |answer| remarks::to_words(&answer, false))
            }
        };
    }
    terminal.answer(&answer)?;
    if refused == SIZES.len() {
        let message =
            format!("plugin `{}`: refused at every size, so nothing was checked", description.name);
        return Err(Failure::call(message).hint("give it other values with --set NAME=NUMBER"));
    }
    if wrong == 0 {
        return Ok(());
    }
    let message =
        format!("plugin `{}`: wrong at {wrong} of {} sizes", description.name, SIZES.len());
    Err(Failure::new(casework::Whose::SourceAuthor, message).hint("tell the plugin's author"))
}

/// A right layout: how many compartments, and what somebody should look at.
fn right(size: Size, layout: &cushion::Layout) -> String {
    let compartments = cushion::arrange(layout, size).map_or(0, |it| it.compartments().len());
    let faults = cushion::check_layout(layout);
    let remarks = faults.iter().filter(|fault| fault.kind.severity() == Severity::Remark);
    let remarks: String =
        remarks.map(|fault| format!("  {}\n", ENGLISH.layout_fault(&fault.kind).message)).collect();
    format!("{size}: {compartments} compartments\n{remarks}")
}
