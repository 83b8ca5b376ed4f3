//! One geometry in SVG, PDF and PNG.

use case::text::LengthUnit;
use lopdf::content::Content;
use lopdf::{Document as Pdf, Object};
use sheets::{ClientPapers, Paper, SvgOptions, fill_order, pdf, png, setup_card, svg, take_home};
use testkit::assert_near;

use crate::papers::{Case, DAY, PROGRAM, blank_form, texts};

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
    let written = svg(&card.pages[0], &SvgOptions { embed_fonts: false, outlines: false });
    assert!(written.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    assert!(written.contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""));
    // Each word has a place of its own.
    let mut plain = written.replace("</tspan>", "");
    while let Some((before, after)) = plain.split_once("<tspan ") {
        plain = format!("{before}{}", after.split_once('>').unwrap().1);
    }
    for text in texts(&card.pages[0]) {
        let escaped = text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        assert!(plain.contains(&format!(">{escaped}</text>")), "{text}");
    }
    assert!(!written.contains("@font-face"));
    assert!(svg(&card.pages[0], &SvgOptions::default()).contains("@font-face"));
}

/// The square on the last page of the form, in points: its least and greatest corner.
fn square_in_pdf() -> [f64; 4] {
    let form = blank_form(LengthUnit::Millimetres, Paper::A4);
    let read = Pdf::load_mem(&pdf(&form)).unwrap();
    let page = *read.get_pages().values().next_back().unwrap();
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
    let form = blank_form(LengthUnit::Inches, Paper::Letter);
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
    let page =
        sheets::tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM).unwrap().pages.remove(0);
    let picture = png(&page, 254.0).unwrap();
    // PNG, section 11.2.1: width and height stand at bytes 16 and 20, high byte first.
    let size = |at: usize| u32::from_be_bytes(picture[at..at + 4].try_into().unwrap());
    assert_eq!((size(16), size(20)), (1000, 600));
}

#[test]
fn every_word_of_an_svg_stands_where_it_was_placed() {
    let case = Case::of("row-six", "440x400");
    let page = &setup_card(&case.papers(), Paper::A4).unwrap().pages[0];
    let written = svg(page, &SvgOptions { embed_fonts: false, outlines: false });
    let runs = written.split("<text x=\"").skip(1).map(|run| run.split("</text>").next().unwrap());
    let mut words = 0;
    for (line, run) in runs.zip(page.texts().filter(|run| run.angle == 0.0)) {
        let mut x: f64 = line.split('"').next().unwrap().parse().unwrap();
        let mut before = String::new();
        for part in line.split("<tspan x=\"") {
            if !before.is_empty() {
                x = part.split('"').next().unwrap().parse().unwrap();
            }
            // By the text before it: a kern over the space is some hundredths of a size.
            let style = sheets::Style::new(run.size_pt, run.shaped.weight());
            let shaped = sheets::Shaped::new(&before, &style).unwrap();
            assert_near(x, run.at.x + shaped.width(run.size_pt), 0.02 * run.size_pt);
            let text = part.split_once('>').unwrap().1.split("</tspan>").next().unwrap();
            before += &text.replace("&amp;", "&").replace("&quot;", "\"");
            words += 1;
        }
        assert_eq!(before, run.shaped.text());
    }
    assert!(words > 100, "{words}");
    assert!(written.contains(" lang=\"en\" xml:lang=\"en\" role=\"document\""));
}

/// What the structure of a PDF says: tags in order of reading, with the text of each.
fn tags(read: &Pdf) -> Vec<String> {
    let of = |object: &Object| read.dereference(object).unwrap().1.clone();
    let root = read.catalog().unwrap().get(b"StructTreeRoot").unwrap();
    let mut open = vec![of(root)];
    let mut found = Vec::new();
    while let Some(element) = open.pop() {
        let Ok(element) = element.as_dict() else { continue };
        if let Ok(kind) = element.get(b"S").and_then(Object::as_name) {
            found.push(String::from_utf8_lossy(kind).into_owned());
        }
        if let Ok(children) = element.get(b"K").and_then(Object::as_array) {
            open.extend(children.iter().rev().map(of));
        }
    }
    found
}

#[test]
fn a_pdf_is_read_from_its_title_to_its_foot() {
    let case = Case::of("row-six", "440x400");
    let card = setup_card(&case.papers(), Paper::A4).unwrap();
    let read = Pdf::load_mem(&pdf(&card)).unwrap();
    let tags = tags(&read);
    assert_eq!(&tags[..2], ["Document", "H1"]);
    assert_eq!(tags.last().map(String::as_str), Some("P"), "the foot");
    let at = tags.iter().position(|tag| tag == "L").unwrap();
    assert_eq!(&tags[at..at + 4], ["L", "LI", "Lbl", "LBody"]);
    let title = texts(&card.pages[0]);
    assert_eq!(title[0], "Setup card");
    let at = |own: &str| title.iter().position(|text| text.contains(own)).unwrap();
    // By what the page is known again is read after it, though it stands at its head.
    let last = ["does not replace an assessment", "K7QF", "1 of 2", "Superseded"].map(at);
    assert!(last.is_sorted() && last[0] > title.len() / 2, "{last:?} of {title:?}");
}

#[test]
fn every_figure_of_a_pdf_says_where_it_is_and_the_file_what_it_claims() {
    let case = Case::of("row-six", "440x400");
    let card = fill_order(&case.papers(), Paper::A4).unwrap();
    let read = Pdf::load_mem(&pdf(&card)).unwrap();
    let mut figures = 0;
    for object in read.objects.values().filter_map(|object| object.as_dict().ok()) {
        if object.get(b"S").and_then(Object::as_name).is_ok_and(|kind| kind == b"Figure") {
            let layout = object.get(b"A").and_then(Object::as_dict).unwrap();
            let corners = layout.get(b"BBox").and_then(Object::as_array).unwrap();
            let corners: Vec<f32> = corners.iter().map(|own| own.as_float().unwrap()).collect();
            assert!(corners[0] < corners[2] && corners[1] < corners[3], "{corners:?}");
            assert!(corners[0] >= 0.0 && corners[2] <= 595.3 && corners[3] <= 841.9);
            figures += 1;
        }
    }
    assert_eq!(figures, 2);
    let xmp = String::from_utf8_lossy(&pdf(&card)).into_owned();
    for claim in ["<pdfaid:part>3<", "<pdfaid:conformance>A<", "<pdfuaid:part>1<"] {
        assert!(xmp.contains(claim), "{claim}");
    }
}

/// A reader that speaks has to know where the language changes: what is on such a page says its own
/// (PDF 2.0, 14.9.2), and nothing else does.
#[test]
fn what_is_in_another_language_says_so_in_a_pdf() {
    let case = Case { language: words::SPANISH, ..Case::of("row-six", "440x400") };
    let papers = ClientPapers { handed_over_in: Some(words::ENGLISH), ..case.papers() };
    let sheet = take_home(&papers, Paper::A4).unwrap();
    let read = Pdf::load_mem(&pdf(&sheet)).unwrap();
    assert_eq!(read.catalog().unwrap().get(b"Lang").unwrap().as_str().unwrap(), b"es");
    let pages: Vec<_> = read.get_pages().into_values().collect();
    let mut told = [0, 0];
    for object in read.objects.values().filter_map(|object| object.as_dict().ok()) {
        let Ok(on) = object.get(b"Pg").and_then(Object::as_reference) else { continue };
        let at = pages.iter().position(|page| *page == on).unwrap();
        let language = object.get(b"Lang").and_then(Object::as_str).ok();
        let wanted = (sheet.pages[at].language == "en").then_some(&b"en"[..]);
        assert_eq!(language, wanted, "page {at}");
        told[usize::from(wanted.is_some())] += 1;
    }
    assert!(told[0] > 50 && told[1] > 50, "{told:?}");
}

#[test]
fn words_as_shapes_stand_where_the_words_did_and_are_still_read() {
    let case = Case::of("row-six", "440x400");
    let page = &fill_order(&case.papers(), Paper::A4).unwrap().pages[0];
    let written = svg(page, &SvgOptions { embed_fonts: true, outlines: true });
    assert!(!written.contains("<text") && !written.contains("@font-face"));
    let run = page.texts().next().unwrap();
    let label = format!("aria-label=\"{}\"", run.shaped.text());
    let shape = written.split("<path").find(|own| own.contains(&label)).expect("it is labelled");
    let path = shape.split("d=\"").nth(1).and_then(|own| own.split('"').next()).unwrap();
    let path = sheets::BezPath::from_svg(path).unwrap();
    let place = kurbo::Shape::bounding_box(&path);
    // Bearings of letters are below a millimetre at this size.
    assert!((place.x0 - run.at.x).abs() < 1.0, "{place:?}");
    assert!((place.x1 - run.at.x - run.shaped.width(run.size_pt)).abs() < 1.0, "{place:?}");
    assert!(place.y0 < run.at.y && (place.y1 - run.at.y).abs() < 3.0, "{place:?}");
}

/// By chance some one of a hundred compressed streams ends in a line break.
#[test]
fn no_stream_of_a_pdf_ends_in_a_line_break() {
    let mut streams = 0;
    for size in ["360x360", "400x400", "440x400", "480x440", "560x500"] {
        let case = Case::of("island-eight", size);
        for paper in sheets::PAPERS {
            let papers = case.papers();
            for document in [
                fill_order(&papers, paper).unwrap(),
                setup_card(&papers, paper).unwrap(),
                sheets::wash_day(&papers, paper).unwrap(),
            ] {
                let read = Pdf::load_mem(&pdf(&document)).unwrap();
                for stream in read.objects.values().filter_map(|own| own.as_stream().ok()) {
                    assert!(!matches!(stream.content.last(), Some(b'\r' | b'\n')), "{size}");
                    streams += 1;
                }
            }
        }
    }
    assert!(streams > 200, "{streams}");
}
