//! Cutting templates of a layout at one size, as papers and as a drawing for a cutting table.

use case::Drawn;
use cushion::{Layout, Pattern, StockFill};
use sheets::{DocumentError, TemplatePapers};
use templates::{Options, Template};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;
use crate::papers::NamedDocument;
use crate::sourced::Sourced;

/// A template with what is written of it.
#[derive(Clone, Debug)]
pub struct MadeTemplate {
    /// The pieces.
    pub template: Template,
    /// The sheet at true size, and its tiles.
    pub papers: Vec<NamedDocument>,
    /// The drawing for a cutting table, and what its file is called, without an ending.
    pub dxf: (String, String),
    /// What is to be known before anybody cuts.
    pub notes: Vec<String>,
}

/// Draws the template of a pattern with its stock fill.
///
/// # Errors
///
/// Fails where something finds no room on a page.
pub fn made_template(
    layout: &Sourced<Layout>,
    (pattern, fill): (&Pattern, &StockFill),
    options: Options,
    edition: Edition,
) -> Result<MadeTemplate, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let template = Template::new(pattern, fill, options);
    let digest = layout.digest();
    let own = TemplatePapers {
        language,
        pattern,
        template: &template,
        digest: &digest,
        date: on,
        program: PROGRAM,
    };
    let name = |of: &str| format!("{}-{}-{of}", pattern.layout(), pattern.size());
    let failed = |error: DocumentError| {
        let what = Drawn::Paper { name: "template".to_owned(), of: layout.file.shown() };
        not_drawn(what, error)
    };
    let papers = vec![
        NamedDocument {
            name: name("template"),
            document: sheets::template_sheet(&own).map_err(failed)?,
        },
        NamedDocument {
            name: name("template-tiles"),
            document: sheets::template_tiles(&own, paper).map_err(failed)?,
        },
    ];
    let notes = own.notes();
    let head = format!(
        "{} {}, mm. {}",
        language.layout_with_revision(pattern.layout().as_str(), pattern.revision()),
        language.size(pattern.size()),
        language.layout_digest(pattern.revision(), &digest),
    );
    let said: Vec<String> = std::iter::once(head).chain(notes.iter().cloned()).collect();
    let say = |says: &templates::Says| sheets::template_says(language, says);
    let dxf = templates::dxf(&template, &say, &said);
    Ok(MadeTemplate { template, papers, dxf: (name("template"), dxf), notes })
}
