//! Cutting templates: one sheet at true size, and its tiles on paper.

mod drawing;
mod sheet;
mod tiles;

use case::{Date, Digest};
use cushion::Pattern;
use templates::{Says, Template};
use words::Language;

pub use self::sheet::template_sheet;
pub use self::tiles::template_tiles;

/// What the pages of a template are made from.
#[derive(Clone, Copy)]
pub struct TemplatePapers<'a> {
    /// In which language they are.
    pub language: &'a dyn Language,
    /// The pattern.
    pub pattern: &'a Pattern,
    /// Its pieces.
    pub template: &'a Template,
    /// By which the layout's text is known again.
    pub digest: &'a Digest,
    /// The day that the pages bear.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

impl TemplatePapers<'_> {
    /// What is to be known before anybody cuts, each a sentence or some.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let (language, template) = (self.language, self.template);
        let texts = language.template();
        let mut notes = vec![language.template_allowance(template.options.allowance)];
        let most = template.crowns.iter().max_by(|a, b| a.extra().total_cmp(&b.extra()));
        notes.extend(most.map(|own| {
            let spans = [own.width, own.rise, own.arc];
            language.template_crown(own.extra(), own.number, spans, template.options.eased)
        }));
        notes.push(texts.mirror.to_owned());
        notes.push(texts.notches.to_owned());
        let small = template.openings.iter().filter(|own| !own.lets_a_hand_in());
        let small: Vec<u8> = small.map(|own| own.number).collect();
        notes.extend((!small.is_empty()).then(|| language.template_small_openings(&small)));
        notes.push(texts.trial.to_owned());
        notes
    }

    /// The facts under the title.
    fn facts(&self) -> Vec<(&'static str, String)> {
        let (language, pattern) = (self.language, self.pattern);
        let texts = language.template();
        let revision = pattern.revision().map_or(texts.no_revision.to_owned(), |it| it.to_string());
        vec![
            (texts.layout, pattern.layout().to_string()),
            (texts.revision, revision),
            (texts.digest, self.digest.as_str().to_owned()),
            (texts.size, language.size(pattern.size())),
            (texts.walls, format!("{:.0} mm", pattern.wall_height().to_mm())),
            (texts.printed, self.date.to_string()),
        ]
    }
}

/// What is said on a template, in words.
#[must_use]
pub fn template_says(language: &dyn Language, says: &Says) -> String {
    let (texts, shared) = (language.template(), language.shared());
    match says {
        Says::Top => texts.top.to_owned(),
        Says::Base => texts.base.to_owned(),
        Says::Wall { wall, between, seam, ends, length } => {
            language.template_wall(*wall, *between, seam.as_str(), *ends, *length)
        }
        Says::Junction(junction) => language.template_junction(*junction),
        Says::WallNumber(wall) => language.template_wall_number(*wall),
        Says::Compartment(number) => number.to_string(),
        Says::Opening(number, length) => language.template_opening(*number, *length),
        Says::ClientsLeft => shared.clients_left.to_owned(),
        Says::ClientsRight => shared.clients_right.to_owned(),
        Says::Front => shared.front_edge.to_owned(),
        Says::Rear => shared.rear_edge.to_owned(),
        Says::Grain => texts.grain.to_owned(),
        Says::UpperEdge => texts.upper_edge.to_owned(),
        Says::LowerEdge => texts.lower_edge.to_owned(),
    }
}
