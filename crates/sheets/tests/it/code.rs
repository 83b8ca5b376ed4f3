//! The code by which counts are found again: on which papers it is, how wide, and in the PDF.

use cushion::Length;
use sheets::{Document, NoAttachment, PAPERS, attached_code, pdf, setup_card, take_home};

use crate::papers::{CODE, Case};
use crate::sweep::{all, code_with_white, is_code};

fn both(case: &Case, paper: sheets::Paper) -> [Document; 2] {
    [setup_card(&case.papers(), paper).unwrap(), take_home(&case.papers(), paper).unwrap()]
}

#[test]
fn setup_card_and_take_home_sheet_have_it_once_and_no_other_paper() {
    let case = Case::of("curved-ten", "440x400").fitted();
    for document in all(&case, PAPERS[0]) {
        let codes = document.pages.iter().flat_map(|page| &page.blocks).filter(|own| is_code(own));
        let owed =
            usize::from(both(&case, PAPERS[0]).iter().any(|own| own.title == document.title));
        assert_eq!(codes.count(), owed, "{}", document.title);
        let carried = attached_code(&pdf(&document));
        let wanted = if owed == 1 { Ok(CODE.to_owned()) } else { Err(NoAttachment::None) };
        assert_eq!(carried, wanted, "{}", document.title);
    }
}

#[test]
fn it_is_an_inch_wide_on_the_same_page_of_each_card() {
    for (layout, size) in [("row-six", "250x250"), ("curved-ten", "610x550")] {
        let case = Case::of(layout, size);
        for document in PAPERS.into_iter().flat_map(|paper| both(&case, paper)) {
            let whites: Vec<_> = document.pages.iter().map(code_with_white).collect();
            let at = whites.iter().position(Option::is_some).unwrap();
            let is_card = document.title == case.language.setup_card().title;
            assert!(if is_card { at == 0 } else { at > 0 }, "{at}");
            let white = whites[at].unwrap();
            // As wide as is asked of it, with the white around it, and no poster.
            let least = Length::from_mm(25.0).to_mm();
            assert!((least..=30.0).contains(&white.width()), "{white:?}");
            assert!((white.width() - white.height()).abs() < 1e-6, "{white:?}");
        }
    }
}

#[test]
fn papers_without_a_code_have_no_gap_and_carry_nothing() {
    let case = Case::of("row-six", "440x400");
    let papers = sheets::ClientPapers { code: None, ..case.papers() };
    for (document, usual) in [
        (setup_card(&papers, PAPERS[0]).unwrap(), setup_card(&case.papers(), PAPERS[0]).unwrap()),
        (take_home(&papers, PAPERS[0]).unwrap(), take_home(&case.papers(), PAPERS[0]).unwrap()),
    ] {
        assert!(document.pages.iter().all(|page| code_with_white(page).is_none()));
        assert_eq!(document.attached, None);
        assert!(document.pages.len() <= usual.pages.len());
        assert_eq!(attached_code(&pdf(&document)), Err(NoAttachment::None));
    }
}

/// A PDF that was cut short or changed carries the text, or none: never another that looks like one.
#[test]
fn a_spoilt_pdf_carries_the_text_or_none() {
    let case = Case::of("row-six", "440x400");
    let whole = pdf(&setup_card(&case.papers(), PAPERS[0]).unwrap());
    for at in (0..whole.len()).step_by(whole.len() / 40 + 1) {
        assert!(attached_code(&whole[..at]).is_err(), "cut at {at}");
        let mut other = whole.clone();
        other[at] ^= 0x20;
        if let Ok(text) = attached_code(&other) {
            assert_eq!(text.len(), CODE.len(), "{text}");
        }
    }
    assert_eq!(attached_code(b""), Err(NoAttachment::NoPdf));
    assert_eq!(attached_code(CODE.as_bytes()), Err(NoAttachment::NoPdf));
}
