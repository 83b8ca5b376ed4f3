//! The sections through the seat bones, as a drawing.

use case::{Date, Drawn};
use fitting::{CutThrough, SiteCut};
use sheets::{Paper, Section, SectionAt, SectionPapers, SectionSite};
use words::Language;

use crate::PROGRAM;
use crate::error::WorkError;
use crate::export::svg;
use crate::not_drawn::not_drawn;
use crate::open_case::OpenCase;

/// Draws the cuts of a prediction on one page, as SVG; the counts are those of a plan that was
/// recorded on a day, or of one that is not recorded.
///
/// # Errors
///
/// Fails where something finds no room on the page.
pub fn sections(
    language: &dyn Language,
    case: &OpenCase,
    recorded_on: Option<Date>,
    cuts: &[CutThrough],
    on: Date,
) -> Result<Vec<u8>, WorkError> {
    let sections: Vec<Section> = cuts.iter().map(section).collect();
    let pattern = case.cushion.pattern();
    let papers = SectionPapers {
        language,
        client: case.client.value.code.as_str(),
        layout: pattern.title(),
        recorded_on,
        size: pattern.size(),
        wall_mm: pattern.wall_height().to_mm(),
        sections: &sections,
        date: on,
        program: PROGRAM,
    };
    let document = sheets::section_sheet(&papers, Paper::A4)
        .map_err(|error| not_drawn(Drawn::Sections, error))?;
    Ok(svg(&document.pages[0]))
}

fn section(cut: &CutThrough) -> Section {
    Section {
        at: match cut.at {
            SiteCut::SeatBones => SectionAt::SeatBones,
            SiteCut::Through(side) => SectionAt::Through(side),
        },
        unloaded: cut.profile.unloaded.clone(),
        loaded: cut.profile.loaded.clone(),
        body: cut.profile.body.clone(),
        seams: cut.seams.clone(),
        sites: (cut.sites.iter())
            .map(|site| SectionSite { name: site.site, at: site.at, height: site.height })
            .collect(),
    }
}
