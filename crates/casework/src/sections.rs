//! The sections through the seat bones, as a drawing.

use case::{Date, Drawn, Review};
use fitting::{CutThrough, SiteCut};
use sheets::{Document, Identity, Section, SectionAt, SectionPapers, SectionSite};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;
use crate::open_case::OpenCase;

/// Draws the cuts of a prediction on one page; the counts are those of a plan that was recorded on a
/// day, or of one that is not recorded.
///
/// # Errors
///
/// Fails where something finds no room on the page.
pub fn sections(
    case: &OpenCase,
    recorded_on: Option<Date>,
    cuts: &[CutThrough],
    edition: Edition,
) -> Result<Document, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let sections: Vec<Section> = cuts.iter().map(section).collect();
    let (client, pattern) = (&case.client.value, case.cushion.pattern());
    let plan = recorded_on.and_then(|_| client.counts_on_paper());
    let mark = plan.map(|plan| case.mark(&plan));
    let review = if mark.is_some() { case.standing(on).review } else { Review::None };
    let papers = SectionPapers {
        language: language.with_lengths_in(client.lengths),
        of: Identity {
            code: &client.code,
            serial: client.serial(),
            pattern,
            mark: mark.as_ref(),
            review,
        },
        recorded_on,
        sections: &sections,
        date: on,
        program: PROGRAM,
    };
    sheets::section_sheet(&papers, paper).map_err(|error| not_drawn(Drawn::Sections, error))
}

/// A cut as a section that can be drawn.
#[must_use]
pub fn section(cut: &CutThrough) -> Section {
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
