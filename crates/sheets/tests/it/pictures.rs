//! Pictures for a screen: what a page finds in them, and that nothing of them is outside.

use cushion::Pattern;
use kurbo::Shape as _;
use roxmltree::Document;
use sheets::{Mark, Picture, Rect, Style, View, fragment, pattern_picture, places};
use words::ENGLISH;

/// Every built-in layout at the smallest and at the largest of its sizes.
fn smallest_and_largest() -> Vec<Pattern> {
    let ends = |text: &files::Text| {
        let mut sizes = files::read_layout(text.text).value.unwrap().sizes;
        sizes.sort_by(|a, b| a.size.width().to_mm().total_cmp(&b.size.width().to_mm()));
        let ends = [sizes.first().unwrap().size, sizes.last().unwrap().size];
        ends.map(|size| testkit::pattern(text.name, &size.to_string()))
    };
    files::BUILT_IN_LAYOUTS.iter().flat_map(ends).collect()
}

/// The box of ink of a mark, in millimetres.
pub(crate) fn bounds(mark: &Mark) -> Rect {
    match mark {
        Mark::Shape(shape) => {
            let half = shape.pen.as_ref().map_or(0.0, |pen| pen.width / 2.0);
            shape.path.bounding_box().inflate(half, half)
        }
        Mark::Text(run) => {
            let style = Style::new(run.size_pt, run.shaped.weight());
            // Below the baseline a bracket reaches a quarter of the size.
            let below = 0.25 * style.size_mm();
            let own = Rect::new(0.0, -style.cap_height(), run.shaped.width(run.size_pt), below);
            let turned = kurbo::Affine::rotate(run.angle.to_radians());
            (kurbo::Affine::translate(run.at.to_vec2()) * turned).transform_rect_bbox(own)
        }
    }
}

/// What holds of every picture.
#[track_caller]
pub(crate) fn is_right(picture: &Picture) {
    let written = fragment(picture);
    let read = Document::parse(&written).unwrap();
    let root = read.root_element();
    assert_eq!(root.tag_name().name(), "svg");
    assert_eq!(root.attribute("role"), Some("img"));
    assert_eq!(root.attribute("aria-label"), Some(picture.alt.as_str()));
    assert!(picture.alt.ends_with('.'), "{}", picture.alt);
    for node in root.descendants().filter(roxmltree::Node::is_element) {
        let name = node.tag_name().name();
        assert!(["svg", "g", "path", "text"].contains(&name), "{name}");
        for forbidden in ["style", "font-family"] {
            assert_eq!(node.attribute(forbidden), None, "{name}");
        }
        assert!(
            node == root
                || node.ancestors().any(|own| { own.attribute("aria-hidden") == Some("true") })
        );
    }
    let all = Rect::new(0.0, 0.0, picture.width, picture.height);
    assert!(all.width() > 0.0 && all.height() > 0.0 && all.is_finite());
    let marks: Vec<&Mark> = picture.parts.iter().flat_map(|part| &part.marks).collect();
    assert!(marks.len() > 3, "{}", picture.alt);
    for mark in marks {
        let own = bounds(mark);
        assert!(own.is_finite() && all.union(own) == all, "{own:?} in {all:?}: {mark:?}");
    }
}

/// The words of a picture.
pub(crate) fn words_of(picture: &Picture) -> Vec<String> {
    let written = fragment(picture);
    let read = Document::parse(&written).unwrap();
    let texts = read.descendants().filter(|node| node.has_tag_name("text"));
    texts.map(|node| node.text().unwrap().to_owned()).collect()
}

#[test]
fn each_compartment_is_one_part_with_its_number() {
    for pattern in smallest_and_largest() {
        for view in [View::Above, View::Below] {
            let count = |number: u8| Some((60 + number).to_string());
            let label = |ix: cushion::CompartmentIx| {
                let number: u8 = pattern[ix].number;
                (number.to_string(), count(number))
            };
            let picture = pattern_picture(ENGLISH, &pattern, view, label).unwrap();
            is_right(&picture);
            let written = fragment(&picture);
            let read = Document::parse(&written).unwrap();
            for own in pattern.compartments() {
                let number = own.number.to_string();
                let mut parts = read
                    .descendants()
                    .filter(|node| node.attribute("data-compartment") == Some(&number));
                let part = parts.next().unwrap();
                assert!(parts.next().is_none(), "{number} is there twice");
                let outline = part.first_element_child().unwrap();
                assert_eq!(outline.attribute("fill"), Some("#ffffff"));
                assert!(outline.attribute("d").unwrap().ends_with('Z'));
                let mut texts = part.descendants().filter(|node| node.has_tag_name("text"));
                assert!(texts.any(|text| text.text() == Some(&number)), "{number}");
            }
        }
    }
}

#[test]
fn outlines_cover_the_pattern_and_places_for_controls_lie_inside_them() {
    for pattern in smallest_and_largest() {
        for view in [View::Above, View::Below] {
            let label = |ix: cushion::CompartmentIx| (pattern[ix].number.to_string(), None);
            let picture = pattern_picture(ENGLISH, &pattern, view, label).unwrap();
            let outline = |number: u8| {
                let own = |part: &&sheets::Part| part.compartment == Some(number);
                match &picture.parts.iter().find(own).unwrap().marks[0] {
                    Mark::Shape(shape) => shape.path.clone(),
                    Mark::Text(_) => panic!("a part begins with its outline"),
                }
            };
            let scale = (picture.width - 12.8) / pattern.size().width().to_mm();
            for ix in pattern.indices() {
                let area = outline(pattern[ix].number).area().abs();
                let expected = pattern.area(ix).to_mm2() * scale * scale;
                // Arcs are drawn as cubic curves, within a thousandth.
                testkit::assert_near(area, expected, 1e-3 * expected);
            }
            let places = places(&pattern, view);
            assert_eq!(places.len(), pattern.compartments().len());
            for own in places {
                let [x, y] = [own.at[0] * picture.width, own.at[1] * picture.height];
                assert!(own.room > 0.0);
                let half = kurbo::Vec2::new(own.room, own.room / 3.0) * 0.49;
                let path = outline(own.compartment);
                for corner in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0), (0.0, 0.0)] {
                    let at = kurbo::Point::new(x + corner.0 * half.x, y + corner.1 * half.y);
                    assert!(path.winding(at) != 0, "{own:?} in {}", pattern.layout());
                }
            }
        }
    }
}

#[test]
fn words_are_escaped() {
    let pattern = testkit::pattern("row-six", "440x400");
    let label = |_| ("1<".to_owned(), Some("\"&>'".to_owned()));
    let mut picture = pattern_picture(ENGLISH, &pattern, View::Above, label).unwrap();
    picture.alt = "\"/><script>&amp; \u{1}.".to_owned();
    let written = fragment(&picture);
    assert!(!written.contains("<script") && written.contains("1&lt;"));
    let read = Document::parse(&written).unwrap();
    let label = read.root_element().attribute("aria-label");
    assert_eq!(label, Some("\"/><script>&amp; \u{fffd}."));
    assert!(words_of(&picture).contains(&"\"&>'".to_owned()));
}

#[test]
fn the_sides_change_places_between_above_and_below() {
    let pattern = testkit::pattern("island-eight", "440x400");
    let label = |ix: cushion::CompartmentIx| (pattern[ix].number.to_string(), None);
    let [above, below] = [View::Above, View::Below]
        .map(|view| pattern_picture(ENGLISH, &pattern, view, label).unwrap());
    let place = |picture: &Picture, words: &str| {
        let run = picture.parts.iter().flat_map(|part| &part.marks).find_map(|mark| match mark {
            Mark::Text(run) if run.shaped.text() == words => Some(run.at.x),
            _ => None,
        });
        run.unwrap() / picture.width
    };
    assert!(place(&above, "CLIENT'S LEFT") < 0.1 && place(&above, "CLIENT'S RIGHT") > 0.9);
    assert!(place(&below, "CLIENT'S RIGHT") < 0.1 && place(&below, "CLIENT'S LEFT") > 0.9);
    assert!(below.alt.contains("client's left is on the right"), "{}", below.alt);
}
