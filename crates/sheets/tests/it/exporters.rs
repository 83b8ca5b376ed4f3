//! One geometry in SVG, PDF and PNG.

use lopdf::content::Content;
use lopdf::{Document as Pdf, Object};
use sheets::{Paper, SvgOptions, blank_form, pdf, png, setup_card, svg};
use testkit::assert_near;

use crate::papers::{Case, DAY, PROGRAM, texts};

#[test]
fn equal_documents_are_equal_bytes() {
    let case = Case::of("row-six", "440x400");
    let make = || setup_card(&case.papers(), Paper::A4).unwrap();
    let (one, other) = (make(), make());
    assert_eq!(pdf(&one), pdf(&other));
    let options = SvgOptions::default();
    assert_eq!(svg(&one.pages[0], &options), svg(&other.pages[0], &options));
    assert_eq!(png(&one.pages[0], 50.0), png(&other.pages[0], 50.0));
}

#[test]
fn svg_holds_every_text_and_its_size() {
    let case = Case::of("row-six", "440x400");
    let card = setup_card(&case.papers(), Paper::A4).unwrap();
    let written = svg(&card.pages[0], &SvgOptions { embed_fonts: false });
    assert!(written.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    assert!(written.contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""));
    for text in texts(&card.pages[0]) {
        let escaped = text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        assert!(written.contains(&format!(">{escaped}</text>")), "{text}");
    }
    assert!(!written.contains("@font-face"));
    assert!(svg(&card.pages[0], &SvgOptions::default()).contains("@font-face"));
}

/// The square on the second page of the form, in points: its least and greatest corner.
fn square_in_pdf() -> [f64; 4] {
    let form = blank_form(Paper::A4, DAY, PROGRAM).unwrap();
    let read = Pdf::load_mem(&pdf(&form)).unwrap();
    let page = read.get_pages()[&2];
    let content = Content::decode(&read.get_page_content(page)).unwrap();
    let mut found = [0.0; 4];
    let mut path: Vec<(f64, f64)> = Vec::new();
    for operation in content.operations {
        let number = |at: usize| -> f64 {
            match operation.operands[at] {
                Object::Real(real) => f64::from(real),
                Object::Integer(integer) => integer as f64,
                _ => f64::NAN,
            }
        };
        match operation.operator.as_str() {
            "m" => path = vec![(number(0), number(1))],
            "l" => path.push((number(0), number(1))),
            "S" | "s" => {
                let xs = path.iter().map(|point| point.0);
                let ys = path.iter().map(|point| point.1);
                let bounds = [
                    xs.clone().fold(f64::INFINITY, f64::min),
                    ys.clone().fold(f64::INFINITY, f64::min),
                    xs.fold(f64::NEG_INFINITY, f64::max),
                    ys.fold(f64::NEG_INFINITY, f64::max),
                ];
                if (bounds[3] - bounds[1]) > 200.0 {
                    found = bounds;
                }
            }
            _ => {}
        }
    }
    found
}

#[test]
fn the_square_is_100_mm_in_the_pdf() {
    let [x0, y0, x1, y1] = square_in_pdf();
    let mm = 25.4 / 72.0;
    // A twentieth of a millimetre: finer than a rule shows.
    assert_near((x1 - x0) * mm, 100.0, 0.05);
    assert_near((y1 - y0) * mm, 100.0, 0.05);
}

#[test]
fn the_pdf_says_its_language_and_its_scale() {
    let form = blank_form(Paper::Letter, DAY, PROGRAM).unwrap();
    let read = Pdf::load_mem(&pdf(&form)).unwrap();
    let catalog = read.catalog().unwrap();
    assert_eq!(catalog.get(b"Lang").unwrap().as_str().unwrap(), b"en");
    let preferences = catalog.get(b"ViewerPreferences").unwrap().as_dict().unwrap();
    assert_eq!(preferences.get(b"PrintScaling").unwrap().as_name().unwrap(), b"None");
    assert!(catalog.has(b"StructTreeRoot") && catalog.has(b"MarkInfo"));
    for page in read.get_pages().values() {
        let page = read.get_object(*page).unwrap().as_dict().unwrap();
        let media = page.get(b"MediaBox").unwrap().as_array().unwrap();
        let side = |at: usize| f64::from(media[at].as_float().unwrap());
        assert_near(side(2), 612.0, 0.01);
        assert_near(side(3), 792.0, 0.01);
    }
}

#[test]
fn a_picture_has_the_dots_of_its_paper() {
    let case = Case::of("row-six", "440x400");
    let page = sheets::tag(&case.pattern, DAY, PROGRAM).unwrap().pages.remove(0);
    let picture = png(&page, 254.0).unwrap();
    // PNG, section 11.2.1: width and height stand at bytes 16 and 20, high byte first.
    let size = |at: usize| u32::from_be_bytes(picture[at..at + 4].try_into().unwrap());
    assert_eq!((size(16), size(20)), (1000, 600));
}
