//! Papers of one client that lie in one folder: of which plan they are is in their names.

use case::{ClientCode, Doing, OtherPapers, PapersOfPlan, PlanMark, ShelfError, Why};
use words::Language;

use crate::export::Exported;
use crate::papers::names_of_client;
use crate::shelf::Shelf;

/// How the name of the note ends that says which papers in a folder hold.
pub const NOTE: &str = "WHICH-PAPERS-HOLD.txt";

/// What the kinds of files of papers end with.
const ENDINGS: [&str; 3] = ["pdf", "svg", "png"];

/// How the names of the papers of a plan begin: with the client's code, the plan's number and its
/// check word.
#[must_use]
pub fn prefix(code: &ClientCode, mark: &PlanMark) -> String {
    format!("{code}-plan-{}-{}", mark.number, mark.word)
}

/// Looks for papers of the client in a folder that are of other counts than those of a mark, and
/// returns them with a note for that folder, which says which papers hold. The note is owed where
/// there are such papers, and where one lies there already, which would else go on saying what was.
///
/// Papers are known by their names alone; they are not changed.
///
/// # Errors
///
/// Fails where the folder cannot be listed. One that is not there yet holds nothing.
pub fn other_papers(
    shelf: &dyn Shelf,
    folder: &str,
    (code, mark): (&ClientCode, &PlanMark),
    language: &dyn Language,
) -> Result<(OtherPapers, Option<Exported>), ShelfError> {
    let listed = match shelf.list(folder) {
        // Whether it can be made is said where it is made.
        Err(ShelfError { doing: Doing::List, why: Why::NotFound | Why::NotAFolder, .. }) => {
            Vec::new()
        }
        other => other?,
    };
    let note = format!("{code}-{NOTE}");
    let mut papers = OtherPapers { code: code.clone(), printed: mark.clone(), others: Vec::new() };
    let mut has_note = false;
    for path in &listed {
        let name = path.rsplit(['/', '\\']).next().unwrap_or(path);
        has_note |= name == note;
        let Some(own) = plan_of(name, code.as_str()) else { continue };
        if own.as_ref() == Some(mark) {
            continue;
        }
        match papers.others.iter_mut().find(|others| others.mark == own) {
            Some(others) => others.files.push(name.to_owned()),
            None => papers.others.push(PapersOfPlan { mark: own, files: vec![name.to_owned()] }),
        }
    }
    let owed = has_note || !papers.others.is_empty();
    let bytes = || language.which_papers_hold(&papers).into_bytes();
    let note = owed.then(|| Exported { name: note, bytes: bytes() });
    Ok((papers, note))
}

/// Of which plan the client's paper of this name is, as far as the name says it; none where it is no
/// paper of the client.
fn plan_of(name: &str, code: &str) -> Option<Option<PlanMark>> {
    let rest = name.strip_prefix(code)?.strip_prefix('-')?;
    if is_document(rest) {
        return Some(None);
    }
    let (number, rest) = rest.strip_prefix("plan-")?.split_once('-')?;
    let (word, document) = rest.split_once('-')?;
    let number = number.parse().ok()?;
    let word = case::is_check_word(word).then(|| word.to_owned())?;
    is_document(document).then_some(Some(PlanMark { number, word }))
}

/// Whether a name is that of a client's document, with or without a page, and an ending.
fn is_document(name: &str) -> bool {
    let Some((stem, ending)) = name.rsplit_once('.') else { return false };
    let is_page = |rest: &str| {
        let page = rest.strip_prefix('-').is_some_and(|page| page.parse::<u32>().is_ok());
        rest.is_empty() || page
    };
    let mut names = names_of_client();
    ENDINGS.contains(&ending) && names.any(|own| stem.strip_prefix(own).is_some_and(is_page))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan(name: &str) -> Option<Option<(usize, String)>> {
        plan_of(name, "K-17").map(|own| own.map(|mark| (mark.number, mark.word)))
    }

    #[test]
    fn a_paper_is_known_by_its_whole_name() {
        let second = Some(Some((2, "7GES".to_owned())));
        assert_eq!(plan("K-17-plan-2-7GES-setup-card.pdf"), second);
        assert_eq!(plan("K-17-plan-2-7GES-take-home-12.svg"), second);
        assert_eq!(plan("K-17-setup-card.pdf"), Some(None));
        for other in [
            // Another client's, also where the codes begin alike.
            "K-1-plan-2-7GES-setup-card.pdf",
            "K-172-plan-2-7GES-setup-card.pdf",
            "K-17-B-plan-2-7GES-setup-card.pdf",
            "K-17-plan-2-7GES-plan-1-ABCD-setup-card.pdf",
            // The whole record, a note, what somebody else wrote.
            "K-17-history.pdf",
            "K-17-WHICH-PAPERS-HOLD.txt",
            "K-17-plan-2-7GES-setup-card.docx",
            "K-17-plan-2-7GES-setup-card-copy.pdf",
            "K-17-plan-2-no1t-setup-card.pdf",
            "K-17.toml",
        ] {
            assert_eq!(plan(other), None, "{other}");
        }
    }
}
