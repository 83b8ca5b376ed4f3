//! `plugin`: what plugins there are, what they say of themselves, whether they are right.

use std::fmt::Write as _;
use std::path::Path;

use case::{LayoutErrorBy, PluginFault};
use casework::{FileRemarks, PROGRAM, Whose};
use cushion::{Name, Severity, Size};
use files::report::{self, PluginFile, PluginParameter, PluginSelf};
use plugin_host::{Description, DrawRequest, Parameter};
use words::{SupplierFault, Told};

use crate::arguments::{Plugin, PluginAction, PluginOptions};
use crate::failure::Failure;
use crate::output_paths;
use crate::outputs;
use crate::outside::Outside;
use crate::plugins;
use crate::remarks;
use crate::say;
use crate::terminal::Terminal;
use crate::written;

/// The sizes at which a plugin is checked.
const SIZES: [&str; 3] = ["250x250", "440x400", "600x550"];

pub(crate) fn run(arguments: &Plugin, terminal: Terminal) -> Result<(), Failure> {
    match &arguments.action {
        PluginAction::List => {
            plugins::nothing_to_set(&arguments.plugins)?;
            list(&arguments.plugins, terminal)
        }
        PluginAction::Show { name } => {
            plugins::nothing_to_set(&arguments.plugins)?;
            show(&arguments.plugins, name, terminal)
        }
        PluginAction::Draw { name, size, out } => {
            draw((name, *size), out, &arguments.plugins, terminal)
        }
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
        .map(|fault| say::language().no_layout(&fault.into()).message)
        .collect();
    if terminal.is_json() {
        let files = places.all().into_iter().map(|(name, path)| PluginFile {
            name: name.to_string(),
            path: path.display().to_string(),
        });
        let folders = places.folders.iter().map(|it| it.display().to_string()).collect();
        return terminal.answer(&report::plugins(PROGRAM, files.collect(), faults, folders));
    }
    let say = say::language();
    if words.is_empty() && faults.is_empty() {
        let folders = places.folders.iter().map(|it| format!("  {}\n", it.display()));
        words = format!("{}\n{}", say.told(&Told::NoPlugins), folders.collect::<String>());
    } else {
        words += &format!("\n{}\n", say.told(&Told::NoneWasRun));
    }
    terminal.warn(&faults);
    terminal.answer(&format!("{words}\n{}\n", say.told(&Told::TrustInPlugins)))
}

/// The name of a plugin, with or without what layouts of plugins begin with.
fn named(name: &str) -> Result<Name, Failure> {
    let own = name.strip_prefix(plugin_host::PREFIX).unwrap_or(name);
    let fault = SupplierFault::NoPluginName { named: name };
    Name::new(own).ok_or_else(|| Failure::supplier(&fault))
}

/// Writes a plugin's answer for one size, byte for byte, so that papers know it by the same digest.
fn draw(
    (name, size): (&str, Size),
    out: &Path,
    options: &PluginOptions,
    terminal: Terminal,
) -> Result<(), Failure> {
    output_paths::has_ending(out, "toml")?;
    let name = named(name)?;
    let plugins = plugins::plugins(options).map_err(plugins::not_found_again)?;
    let parameters = options.set.iter().cloned().collect();
    let request = DrawRequest { name, size, parameters };
    let drawn = plugins.draw(&request, &|_| None).map_err(plugins::failure)?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, out, drawn.text.as_bytes())?;
    let digest = files::digest(&drawn.text);
    let words = say::language().told(&Told::PluginDraws {
        file: &out.display().to_string(),
        plugin: &drawn.drawn_by,
        size,
        digest: digest.as_str(),
    });
    written::tell(terminal, [out], (&[], None), &(words + "\n"))
}

fn show(options: &PluginOptions, name: &str, terminal: Terminal) -> Result<(), Failure> {
    let name = named(name)?;
    let plugins = plugins::plugins(options).map_err(plugins::not_found_again)?;
    let path = plugins.places().find(&name).map_err(plugins::failure)?;
    let description = plugins.describe(&path).map_err(plugins::failure)?;
    if terminal.is_json() {
        let path = path.display().to_string();
        return terminal.answer(&report::plugin(PROGRAM, itself(description), path));
    }
    let (say, file) = (say::language(), path.display().to_string());
    let (from, trust) = (say.told(&Told::From { file: &file }), say.told(&Told::TrustInPlugins));
    terminal.answer(&format!("{}{from}\n\n{trust}\n", words(&description)))
}

/// What a plugin says of itself, for a report.
fn itself(description: Description) -> PluginSelf {
    let parameter = |own: Parameter| PluginParameter {
        name: own.name.to_string(),
        about: own.words,
        unit: own.unit,
        least: own.least,
        greatest: own.greatest,
        standard: own.standard,
        must_be_given: own.must_be_given,
    };
    PluginSelf {
        name: description.name.to_string(),
        version: description.version,
        about: description.about,
        parameters: description.parameters.into_iter().map(parameter).collect(),
    }
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
    let say = say::language();
    let setting = say.told(&Told::Setting {
        ends: [parameter.least, parameter.greatest],
        unit: &parameter.unit,
        standard: (!parameter.must_be_given).then_some(parameter.standard),
        measure: parameter.measure.map(|own| say.body_measure(own)),
    });
    format!("  --set {}=...  {}: {setting}\n", parameter.name, parameter.words)
}

/// What came of drawing a plugin's layout at a size.
struct Drawn {
    size: Size,
    /// How many compartments it has; none where it was not drawn.
    compartments: Option<usize>,
    /// Whether the plugin refused, which it may.
    refused: bool,
    /// What is wrong, or to be looked at.
    remarks: Vec<String>,
    /// Its answer, where that is wrong.
    answer: Option<FileRemarks>,
}

/// Draws a plugin's layout at several sizes, with its defaults, and says what is wrong.
fn check(path: &Path, options: &PluginOptions, terminal: Terminal) -> Result<(), Failure> {
    let places = PluginOptions { plugin: vec![path.to_owned()], ..options.clone() };
    let plugins = plugins::plugins(&places).map_err(plugins::not_found_again)?;
    let description = plugins.describe(path).map_err(plugins::failure)?;
    let drawn = SIZES.map(|size| {
        let size: Size = size.parse().expect("the sizes are right");
        // What must be measured has a value to be drawn with, if to no client.
        let all = description.parameters.iter().map(|it| (it.name.clone(), it.standard));
        let parameters = all.chain(options.set.iter().cloned()).collect();
        let request = DrawRequest { name: description.name.clone(), size, parameters };
        let drawn = plugins.draw(&request, &|_| None);
        drawn.map_or_else(|fault| not_drawn(size, fault), |drawn| right(size, &drawn.layout))
    });
    let verdict = verdict(&description, &drawn);
    if terminal.is_json() {
        let sizes =
            drawn.into_iter().map(|own| (own.size.to_string(), own.compartments, own.remarks));
        let path = path.display().to_string();
        let report = report::checked_plugin(PROGRAM, itself(description), path, sizes.collect());
        terminal.answer(&report)?;
        return verdict.map_err(Failure::told);
    }
    let drawn: String = drawn.iter().map(drawn_words).collect();
    terminal.answer(&(words(&description) + &drawn))?;
    verdict
}

/// A size at which nothing was drawn.
fn not_drawn(size: Size, fault: PluginFault) -> Drawn {
    let refused = fault.kind.by() == LayoutErrorBy::Asker;
    let remarks = vec![say::language().plugin_fault(&fault.kind).message];
    let answer = if refused { None } else { plugins::answer(fault) };
    Drawn { size, compartments: None, refused, remarks, answer }
}

/// A right layout: how many compartments, and what somebody should look at.
fn right(size: Size, layout: &cushion::Layout) -> Drawn {
    let compartments = cushion::arrange(layout, size).map_or(0, |it| it.compartments().len());
    let faults = cushion::check_layout(layout, files::BuiltIn::cell().edge);
    let remarks = faults.iter().filter(|fault| fault.kind.severity() == Severity::Remark);
    let remarks = remarks.map(|fault| say::language().layout_fault(&fault.kind).message).collect();
    Drawn { size, compartments: Some(compartments), refused: false, remarks, answer: None }
}

fn drawn_words(drawn: &Drawn) -> String {
    let Drawn { size, compartments, refused, remarks, answer } = drawn;
    match compartments {
        Some(compartments) => {
            let remarks: String = remarks.iter().map(|remark| format!("  {remark}\n")).collect();
            let count = say::language().told(&Told::Compartments { count: *compartments });
            format!("{size}: {count}\n{remarks}")
        }
        None => {
            let what = say::language().told(&Told::NotDrawn { refused: *refused });
            let answer = answer.as_ref();
            let answer = answer.map_or_else(String::new, |own| remarks::to_words(own, false));
            format!("{size}: {what}: {}\n{answer}", remarks.join("; "))
        }
    }
}

/// Fails where the plugin is wrong at a size, or refused every one.
fn verdict(description: &Description, drawn: &[Drawn]) -> Result<(), Failure> {
    let plugin = description.name.as_str();
    if drawn.iter().all(|own| own.refused) {
        return Err(Failure::supplier(&SupplierFault::RefusedEverywhere { plugin }));
    }
    let wrong = drawn.iter().filter(|own| own.compartments.is_none() && !own.refused).count();
    if wrong == 0 {
        return Ok(());
    }
    let fault = SupplierFault::WrongAt { plugin, wrong, sizes: drawn.len() };
    Err(Failure::new(Whose::SourceAuthor, say::language().supplier_fault(&fault)))
}
