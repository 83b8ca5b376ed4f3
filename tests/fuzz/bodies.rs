//! What must hold for any text from outside, whoever wrote it. Each body takes bytes, as a fuzzer
//! gives them; a test replays the kept corpora with the same bodies.

use case::Check;
use case::text::TextFinding;
use cushion::Size;
use files::{Read, Remark};
use sheets::{Page, Paper, Point, Style, SvgOptions};
use words::ENGLISH;

/// A reader of some text, with the name of its corpus.
pub(crate) type Body = (&'static str, fn(&[u8]));

/// All bodies.
pub(crate) const ALL: [Body; 11] = [
    ("client", client),
    ("layout", layout),
    ("cell", cell),
    ("edit", edit),
    ("tables", tables),
    ("checks", checks),
    ("sizes", sizes),
    ("answer", answer),
    ("card_text", card_text),
    ("card_code", card_code),
    ("papers", papers),
];

/// Remarks point into the text, on borders of characters, and can be said.
fn remarks(text: &str, remarks: &[Remark]) {
    for remark in remarks {
        let span = remark.span.clone();
        assert!(span.start <= span.end && span.end <= text.len(), "{span:?}");
        assert!(text.is_char_boundary(span.start) && text.is_char_boundary(span.end), "{span:?}");
        let said = ENGLISH.about_text(&remark.finding);
        assert!(!said.message.is_empty() && !said.message.contains('\n'), "{said:?}");
    }
}

/// What is read has a value, or says what is wrong.
fn read<T>(text: &str, read: &Read<T>) {
    remarks(text, &read.remarks);
    assert!(read.value.is_some() || !read.remarks.is_empty());
}

/// A client's file.
pub(crate) fn client(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let client = files::read_client(text);
    read(text, &client);
    let known = files::Known { today: None, printable: &|_| true };
    remarks(text, &files::check(text, &known).remarks);
}

/// A layout's file: one that is right can be drawn in each of its sizes, or says why not.
pub(crate) fn layout(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let layout = files::read_layout(text);
    read(text, &layout);
    if let Some(layout) = layout.value {
        for made in layout.sizes.iter().take(3) {
            if let Ok(pattern) = cushion::arrange(&layout, made.size) {
                for ix in pattern.indices() {
                    assert!(pattern.area(ix).to_mm2() > 0.0);
                }
            }
        }
    }
}

/// A cell's file.
pub(crate) fn cell(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    read(text, &files::read_cell(text));
}

/// A key that is set in a client's file: what is written can be read.
pub(crate) fn edit(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let (key, value) = text.split_once('=').unwrap_or((text, ""));
    let before = files::starter::example(ENGLISH);
    if let Ok(edited) = files::set(&before, key, value) {
        // What needs other keys beside it is asked for; the file stays one that can be read.
        let client = files::read_client(&edited.text);
        read(&edited.text, &client);
        let syntax = |remark: &Remark| matches!(remark.finding, TextFinding::Syntax(_));
        assert!(!client.remarks.iter().any(syntax), "{key} = {value}");
    }
    let _ = files::remove(&before, key);
}

/// Tables of bodies and of surveys: what is read back is written the same.
pub(crate) fn tables(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let _ = files::read_bodies(text);
    if let Ok((Some(part), rows)) = files::read_survey(text) {
        let written = files::write_survey(&part, &rows);
        let again = files::read_survey(&written).expect("what we wrote is read");
        assert_eq!(files::write_survey(&part, &again.1), written);
    }
}

/// A check of the command line or of a record: what is read is written so that it is read again.
pub(crate) fn checks(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if let Ok(check) = Check::read_whole(text) {
        let again = Check::read_whole(&check.to_string()).expect("what we wrote is read");
        assert_eq!(again.to_string(), check.to_string());
    }
}

/// A size.
pub(crate) fn sizes(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if let Ok(size) = text.parse::<Size>() {
        assert_eq!(size.to_string().parse::<Size>(), Ok(size));
    }
}

/// A plugin's answer for a size: a layout of that size alone, or a fault.
pub(crate) fn answer(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let size: Size = "440x400".parse().expect("a size");
    if let Ok(layout) = plugin_host::read_answer(text, size) {
        assert_eq!(layout.sizes.len(), 1);
        assert_eq!(layout.sizes[0].size, size);
        assert!(cushion::arrange(&layout, size).is_ok(), "an answer that is taken can be drawn");
    }
}

/// What somebody wrote for a paper: it is set within its width with nothing of it lost, or refused.
pub(crate) fn card_text(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    for (points, width) in [(9.0, 30.0), (16.0, 170.0)] {
        let style = Style::regular(points);
        let Ok(lines) = sheets::wrap(text, &style, width) else { continue };
        let visible = |text: &str| text.chars().filter(|c| !c.is_whitespace()).count();
        let shaped = |part| sheets::Shaped::new(part, &style).expect("it was set").text();
        let wanted: usize = text.split('\n').map(|part| visible(&shaped(part))).sum();
        assert_eq!(lines.iter().map(|line| visible(line)).sum::<usize>(), wanted);
        let mut page = Page::new(ENGLISH, Paper::A4, "Card");
        let block = page.block(sheets::Role::Paragraph);
        let at = Point::new(20.0, 20.0);
        if block.paragraph(at, width, text, &style, sheets::Align::Left).is_ok() {
            for run in page.texts() {
                // A hundredth: kerning is summed in another order for a line than for its text.
                let broad = run.shaped.width(run.size_pt);
                assert!(broad <= width + 0.01, "{:?}: {broad} of {width}", run.shaped.text());
            }
            let drawn = sheets::svg(&page, &SvgOptions { embed_fonts: false, outlines: false });
            roxmltree::Document::parse(&drawn).expect("it is XML, whatever was written");
        }
    }
}

/// The code of a card: what is read is written in the same signs, spaces and line breaks aside.
pub(crate) fn card_code(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if let Ok(code) = files::read_card_text(text) {
        let plain: String = text.split_whitespace().collect();
        assert_eq!(files::card_text(&code), Ok(plain));
    }
}

/// A PDF: it carries a text or says why not, and never ends the program.
pub(crate) fn papers(bytes: &[u8]) {
    if let Ok(text) = sheets::attached_code(bytes) {
        assert!(text.len() <= 2000);
    }
}
