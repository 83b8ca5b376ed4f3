//! `compare`: two layouts beside each other, under the same client or the same bodies.

use case::{Client, Trouble};
use casework::{
    Compared, PROGRAM, Sitter, Sourced, Spacings, Whose, WorkError, bodies_on, by_lot, client_on,
};
use cushion::{Cell, Layout, Size};
use files::report::{self, ComparedLayout, ComparisonReport};
use words::{SupplierFault, Told};

use crate::arguments::Compare;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::progress;
use crate::say;
use crate::setting::Setting;
use crate::tables;

/// The layouts, the cell and those who are put on both.
struct Asked {
    layouts: [Sourced<Layout>; 2],
    cell: Sourced<Cell>,
    client: Option<Sourced<Client>>,
    sitters: Vec<Sitter>,
}

/// Compares two layouts, and shows what differs.
pub(crate) fn run(arguments: &Compare, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let asked = Asked::of(arguments, setting)?;
    let [first, second] = &asked.layouts;
    let bar = progress::bar(asked.sitters.len(), &say::language().told(&Told::Bodies));
    let told = || bar.inc(1);
    let (cell, spacings) = (&asked.cell.value, spacings(arguments));
    let compared = casework::compare([first, second], cell, &asked.sitters, spacings, &told);
    bar.finish_and_clear();
    let compared = compared?;
    if terminal.is_json() {
        return terminal.answer(&json(&asked, &compared));
    }
    let remarks = asked.layouts.iter().flat_map(|own| &own.file.remarks);
    let remarks = remarks.map(|own| say::text(&own.finding).message);
    terminal.warn(&remarks.collect::<Vec<_>>());
    terminal.answer(&words(&asked, &compared))
}

/// The meshes: of one client those of a prediction, of many those of a survey.
fn spacings(arguments: &Compare) -> Spacings {
    match arguments.client {
        Some(_) => Spacings::default(),
        None => Spacings::of_many_bodies(),
    }
}

impl Asked {
    fn of(arguments: &Compare, setting: Setting) -> Result<Self, Failure> {
        let outside = Outside::new(&arguments.plugins);
        let words = [&arguments.first, &arguments.second].map(String::as_str);
        let layouts = [layout(words, arguments)?, layout([words[1], words[0]], arguments)?];
        let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
        let both = [&layouts[0], &layouts[1]];
        let client = match &arguments.client {
            Some(path) => Some(outside.surroundings().client(&name(path))?),
            None => None,
        };
        let sitters = match (&client, &arguments.bodies) {
            (Some(client), _) => vec![suited(client_on(client, both, arguments.size)?, arguments)?],
            (None, Some(path)) => {
                let text = outside.surroundings().text(&name(path))?;
                let bodies = files::read_bodies(&text).map_err(|error| {
                    let files::TableError { line, fault } = error;
                    WorkError::file(Trouble::Table { file: name(path), line, fault })
                })?;
                let bodies = match arguments.sample {
                    Some(sample) => by_lot(bodies, sample, arguments.seed),
                    None => bodies,
                };
                bodies_on(&bodies, both, arguments.size, setting.today()?)?
            }
            (None, None) => Vec::new(),
        };
        Ok(Self { layouts, cell, client, sitters })
    }
}

/// The first of two layouts; a plugin has to be told a size. Settings are for plugins: where the other
/// one is drawn by a plugin, they are its alone.
fn layout([word, other]: [&str; 2], arguments: &Compare) -> Result<Sourced<Layout>, Failure> {
    let is_drawn = |word: &str| word.starts_with(plugin_host::PREFIX);
    let mut options = arguments.plugins.clone();
    if is_drawn(other) && !is_drawn(word) {
        options.set.clear();
    }
    // Only a plugin's layout depends on the size.
    let size = match arguments.size {
        None if is_drawn(word) => return Err(Failure::supplier(&SupplierFault::PluginNeedsSize)),
        size => size.unwrap_or(Size::USUAL),
    };
    Ok(Outside::new(&options).surroundings().layout(word, size)?)
}

/// Refuses a client for whom a layout has no size.
fn suited(sitter: Sitter, arguments: &Compare) -> Result<Sitter, Failure> {
    let words = [&arguments.first, &arguments.second];
    match words.iter().zip(&sitter.sizes).find(|(_, size)| size.is_none()) {
        None => Ok(sitter),
        Some((layout, _)) => {
            let fault = SupplierFault::NoSizeOfLayout { layout: layout.as_str() };
            Err(Failure::new(Whose::Chooser, say::language().supplier_fault(&fault)))
        }
    }
}

fn json(asked: &Asked, compared: &Compared) -> String {
    let say = say::language();
    let digests = [asked.layouts[0].digest(), asked.layouts[1].digest()];
    let layout = |at: usize| ComparedLayout {
        layout: asked.layouts[at].value.name.as_str(),
        revision: asked.layouts[at].value.revision,
        digest: &digests[at],
    };
    let report = ComparisonReport {
        layouts: [layout(0), layout(1)],
        cell: asked.cell.value.name.as_str(),
        client: asked.client.as_ref().map(|own| own.value.code.as_str()),
        sizes: &compared.sizes,
        pairs: &compared.pairs,
        harm: &compared.harm,
        measures: &compared.measures,
        say: (&|own| say.compared_measure(own), &|own| say.compared_verdict(own)),
    };
    report::comparison(PROGRAM, &report)
}

fn words(asked: &Asked, compared: &Compared) -> String {
    let say = say::language();
    let texts = say.comparison();
    let mut lines = Vec::new();
    for (letter, own) in ["A", "B"].iter().zip(&asked.layouts) {
        let digest = own.digest();
        let known =
            say.layout_known_by(own.value.name.as_str(), own.value.revision, digest.as_str());
        lines.push(format!("{letter}: {known}"));
    }
    match &asked.client {
        Some(client) => lines.push(client.value.code.to_string()),
        None => lines.push(say.compared_sizes(&compared.sizes)),
    }
    for own in &compared.pairs {
        let sizes = [own.cushions[0].size, own.cushions[1].size];
        lines.push(say.compared_fill(sizes, own.pressure, own.pressure_of()));
    }
    lines.push(String::new());
    if compared.measures.is_empty() && compared.pairs.is_empty() {
        lines.push(texts.nobody.to_owned());
    } else {
        lines.push(tables::compared_cushions(&compared.pairs));
        lines.push(match asked.client {
            Some(_) => tables::compared_for_one(&compared.measures),
            None => tables::compared_measures(&compared.measures),
        });
        lines.push(tables::compared_harm(&compared.harm));
    }
    lines.extend([texts.legend, texts.how_told, texts.limits].map(str::to_owned));
    lines.join("\n") + "\n"
}
