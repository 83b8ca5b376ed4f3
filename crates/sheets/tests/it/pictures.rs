//! Pictures for a screen: what a page finds in them, and that nothing of them is outside.

use case::question::{Drawing, Question};
use case::{Place, SiteName, Spread};
use cushion::{Length, Pattern, Side};
use kurbo::Shape as _;
use roxmltree::Document;
use sheets::{
    Mark, Picture, Rect, Section, SectionAt, SectionSite, Style, View, body_picture, fragment,
    measure_picture, move_picture, pattern_picture, pelvis_picture, places, section_picture,
};
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

const DRAWINGS: [Drawing; 20] = [
    Drawing::HipWidth,
    Drawing::TrochanterWidth,
    Drawing::ThighDepth,
    Drawing::LowerLegLength,
    Drawing::KneeWidth,
    Drawing::SeatBoneSpacing,
    Drawing::Obliquity,
    Drawing::Tilt,
    Drawing::Rotation,
    Drawing::Windswept,
    Drawing::HipFlexion,
    Drawing::PoplitealAngle,
    Drawing::LegDifference,
    Drawing::ChairWidth,
    Drawing::ChairDepth,
    Drawing::SlingSag,
    Drawing::Footrest,
    Drawing::ChairTilt,
    Drawing::SeatBonesForward,
    Drawing::Crown,
];

/// The shapes of a picture.
fn shapes(picture: &Picture) -> impl Iterator<Item = &sheets::Shape> {
    picture.parts.iter().flat_map(|part| &part.marks).filter_map(|mark| match mark {
        Mark::Shape(shape) => Some(shape),
        Mark::Text(_) => None,
    })
}

/// Where the thick bar at the client's left stands, as a share of the width; none without one.
fn bar(picture: &Picture) -> Option<f64> {
    let upright = |own: &&sheets::Shape| {
        let place = own.path.bounding_box();
        // The bar is the only upright line of its width.
        own.pen.as_ref().is_some_and(|pen| pen.width == 1.4) && place.width() == 0.0
    };
    let mut bars = shapes(picture).filter(upright);
    let own = bars.next()?.path.bounding_box().x0 / picture.width;
    assert!(bars.next().is_none(), "two bars: {}", picture.alt);
    Some(own)
}

#[test]
fn every_drawing_that_a_question_asks_for_shows_how_it_is_measured() {
    for question in Question::ALL {
        let Some(drawing) = question.row().drawing else { continue };
        assert!(DRAWINGS.contains(&drawing), "{question:?}");
    }
    for drawing in DRAWINGS {
        let picture = measure_picture(ENGLISH, drawing).unwrap();
        is_right(&picture);
        let words = words_of(&picture).join(" ");
        assert!(words.contains(ENGLISH.measure_name(drawing)), "{drawing:?}: {words}");
        let alt = &picture.alt;
        assert!(alt.contains("measure") || drawing == Drawing::Crown, "{alt}");
        let sees_sides = ["seen from above", "seen from behind", "seen from the front"];
        let sees_sides = sees_sides.iter().any(|seen| alt.contains(seen));
        assert_eq!(words.contains("Client's left"), sees_sides, "{drawing:?}");
        assert_eq!(words.contains("Client's right"), sees_sides, "{drawing:?}");
        let at_left = alt.contains("client's left is on the left");
        match bar(&picture) {
            None => assert!(!sees_sides && !alt.contains("left is on"), "{drawing:?}"),
            Some(at) => assert!(if at_left { at < 0.2 } else { at > 0.8 }, "{drawing:?}: {at}"),
        }
    }
}

/// The boxes of all shapes but the bar, in a fixed order; of the picture's mirror image where asked.
fn boxes(picture: &Picture, mirrored: bool) -> Vec<[i64; 4]> {
    let round = |mm: f64| (mm * 1e3).round() as i64;
    let own = |shape: &sheets::Shape| {
        let place = shape.path.bounding_box();
        let [x0, x1] = if mirrored {
            [picture.width - place.x1, picture.width - place.x0]
        } else {
            [place.x0, place.x1]
        };
        [x0, place.y0, x1, place.y1].map(round)
    };
    let no_bar = |own: &&sheets::Shape| own.pen.as_ref().is_none_or(|pen| pen.width != 1.4);
    let mut boxes: Vec<_> = shapes(picture).filter(no_bar).map(own).collect();
    boxes.sort_unstable();
    boxes
}

#[test]
fn a_pelvis_that_is_lower_on_the_left_mirrors_one_that_is_lower_on_the_right() {
    let by = Some(Length::from_mm(12.0));
    let [left, right] =
        [Side::Left, Side::Right].map(|side| pelvis_picture(ENGLISH, Some(side), by).unwrap());
    let level = pelvis_picture(ENGLISH, None, None).unwrap();
    for picture in [&left, &right, &level] {
        is_right(picture);
        assert!(bar(picture).unwrap() < 0.2, "the client's left is on the left");
    }
    assert_eq!(boxes(&left, false), boxes(&right, true));
    assert_ne!(boxes(&left, false), boxes(&right, false));
    assert_eq!(boxes(&level, false), boxes(&level, true));
    // The two solid dots are the seat bones: the lower of them is on the side that is said.
    let dots = |picture: &Picture| {
        let dot =
            |own: &&sheets::Shape| own.pen.is_none() && own.path.bounding_box().width() == 3.0;
        let mut dots: Vec<_> =
            shapes(picture).filter(dot).map(|own| own.path.bounding_box().center()).collect();
        dots.sort_by(|a, b| a.x.total_cmp(&b.x));
        (dots[0].y, dots[1].y, dots.len())
    };
    let (of_left, of_right, number) = dots(&left);
    assert!(of_left > of_right + 2.0 && number == 2, "page down is down");
    assert!(dots(&right).0 < dots(&right).1 - 2.0);
    assert!(left.alt.contains("LEFT side is LOWER by 12 mm"), "{}", left.alt);
    assert!(right.alt.contains("RIGHT side is LOWER by 12 mm"), "{}", right.alt);
    assert!(words_of(&left).contains(&"12 mm".to_owned()));
}

#[test]
fn a_pelvis_without_a_measure_has_no_number_and_hands_tell_no_half_millimetre() {
    let turned = pelvis_picture(ENGLISH, Some(Side::Left), None).unwrap();
    assert!(turned.alt.contains("LEFT side is LOWER.") && !turned.alt.contains("mm"));
    assert!(words_of(&turned).iter().all(|words| words.starts_with("Client's")));
    let level = pelvis_picture(ENGLISH, Some(Side::Left), Some(Length::from_mm(0.4))).unwrap();
    assert_eq!(level, pelvis_picture(ENGLISH, None, None).unwrap());
    assert!(level.alt.contains("level"), "{}", level.alt);
}

#[test]
fn places_on_the_body_have_rings_and_room_to_be_touched() {
    let body = body_picture(ENGLISH).unwrap();
    is_right(&body.picture);
    assert!(bar(&body.picture).unwrap() < 0.2);
    let (wide, high) = (body.picture.width, body.picture.height);
    assert_eq!(body.sites.iter().map(|own| own.0).collect::<Vec<_>>(), SiteName::ALL);
    let at = |own: &(SiteName, f64, f64)| kurbo::Point::new(own.1 * wide, own.2 * high);
    for (place, own) in body.sites.iter().enumerate() {
        // Half of 44 dots of a picture 320 dots wide.
        assert!((0.07..=0.93).contains(&own.1) && (0.07..=0.93).contains(&own.2), "{own:?}");
        for other in &body.sites[..place] {
            assert!(at(own).distance(at(other)) >= 0.14 * wide, "{own:?} {other:?}");
        }
        let ring = |shape: &sheets::Shape| {
            let place = shape.path.bounding_box();
            place.center().distance(at(own)) < 1e-6 && (place.width() - place.height()).abs() < 1e-6
        };
        assert_eq!(shapes(&body.picture).filter(|shape| ring(shape)).count(), 1, "{own:?}");
        let image = |name| match name {
            SiteName::SeatBone(side) => SiteName::SeatBone(side.other()),
            SiteName::Trochanter(side) => SiteName::Trochanter(side.other()),
            SiteName::Thigh(side) => SiteName::Thigh(side.other()),
            SiteName::Coccyx => SiteName::Coccyx,
        };
        let other = body.sites.iter().find(|other| other.0 == image(own.0)).unwrap();
        testkit::assert_near(own.1, 1.0 - other.1, 1e-9);
        testkit::assert_near(own.2, other.2, 1e-9);
        let is_left = own.0.id().starts_with("left");
        assert_eq!(own.1 < 0.49, is_left, "the client's left is on the left");
    }
}

/// Whether no words of a picture stand on others.
fn stand_clear(picture: &Picture) -> bool {
    let marks = picture.parts.iter().flat_map(|part| &part.marks);
    let words: Vec<Rect> = marks.filter(|mark| matches!(mark, Mark::Text(_))).map(bounds).collect();
    let pairs = words
        .iter()
        .enumerate()
        .flat_map(|(at, own)| words[..at].iter().map(move |other| (own, other)));
    // Of a rectangle that two have in common, neither side is negative.
    pairs.map(|(own, other)| own.intersect(*other)).all(|both| both.area() < 1e-9)
}

#[test]
fn a_move_shows_its_two_places_and_an_arrow() {
    for pattern in smallest_and_largest() {
        let numbers: Vec<u8> = pattern.compartments().iter().map(|own| own.number).collect();
        let places: Vec<Place> = numbers.iter().map(|own| Place::Compartment(*own)).collect();
        for from in places.iter().chain([&Place::Spare]) {
            for to in places.iter().chain([&Place::Spare]).filter(|to| *to != from) {
                let picture = move_picture(ENGLISH, &pattern, *from, *to, 11).unwrap();
                is_right(&picture);
                let mut words = words_of(&picture);
                assert!(words.contains(&"11 cells".to_owned()), "{from:?} {to:?}");
                assert!(stand_clear(&picture), "{from:?} {to:?}");
                assert_eq!(
                    words.contains(&"Spare bag".to_owned()),
                    [from, to].contains(&&Place::Spare)
                );
                words.retain(|word| word.parse::<u8>().is_ok());
                let named = [from, to].into_iter().filter_map(|place| match place {
                    Place::Compartment(number) => Some(number.to_string()),
                    Place::Spare => None,
                });
                assert_eq!(words, named.collect::<Vec<_>>());
                assert!(bar(&picture).unwrap() > 0.8, "seen from below");
            }
        }
    }
}

#[test]
fn only_the_places_of_a_move_are_pale() {
    let pattern = testkit::pattern("curved-ten", "440x400");
    let (from, to) = (Place::Compartment(3), Place::Compartment(8));
    let picture = move_picture(ENGLISH, &pattern, from, to, 1).unwrap();
    let pale: Vec<u8> = (picture.parts.iter())
        .filter(|part| match &part.marks[0] {
            Mark::Shape(shape) => shape.fill.is_some_and(|fill| fill.color != sheets::Color::WHITE),
            Mark::Text(_) => false,
        })
        .filter_map(|part| part.compartment)
        .collect();
    assert_eq!(pale, [3, 8]);
    assert!(picture.alt.contains("Move 1 cell from compartment 3 to compartment 8."));
    for place in [from, Place::Spare] {
        is_right(&move_picture(ENGLISH, &pattern, place, place, 1).unwrap());
    }
    let missing = move_picture(ENGLISH, &pattern, from, Place::Compartment(99), 1);
    assert_eq!(missing, Err(sheets::DocumentError::OtherCompartments));
}

/// A section across with seat bones at different heights, or its mirror image.
fn section(mirrored: bool) -> Section {
    let sign = if mirrored { -1.0 } else { 1.0 };
    let along: Vec<f64> = (-10..=10).map(|at| f64::from(at) * 22.0).collect();
    let body = |x: f64| 45.0 + ((x.abs() - 58.0) * 0.3).abs() + sign * x * 0.05;
    let top = |x: f64| 60.0 + 15.0 * (x * std::f64::consts::PI / 110.0).sin().abs();
    let each = |height: &dyn Fn(f64) -> f64| along.iter().map(|x| [*x, height(*x)]).collect();
    let mm = Length::from_mm;
    let bone = |side: Side| {
        let at = if side == Side::Left { -58.0 } else { 58.0 };
        let high = body(at);
        let height = Spread { central: mm(high), low: mm(high - 9.0), high: mm(high + 6.0) };
        SectionSite { name: SiteName::SeatBone(side), at, height }
    };
    Section {
        at: SectionAt::SeatBones,
        unloaded: each(&top),
        loaded: each(&|x| top(x).min(body(x))),
        body: each(&body),
        seams: vec![-110.0, 0.0, 110.0],
        sites: vec![bone(Side::Left), bone(Side::Right)],
    }
}

#[test]
fn a_section_shows_the_clearance_with_its_range_and_the_least_that_must_be_left() {
    let wall = Length::from_mm(60.0);
    let picture = section_picture(ENGLISH, &section(false), wall).unwrap();
    is_right(&picture);
    assert!(bar(&picture).unwrap() < 0.1, "seen from behind");
    let words = words_of(&picture);
    for own in ["42 mm (33 to 48)", "48 mm (39 to 54)", "at least 25 mm", "CLIENT'S LEFT"] {
        assert!(words.contains(&own.to_owned()), "{own} in {words:?}");
    }
    assert!(words.iter().any(|own| own.contains("ESTIMATE")));
    assert!(picture.alt.contains("estimate") && picture.alt.contains("25 mm"), "{}", picture.alt);
    // The limit is as far above the base as the seams' scale says: 440 mm are 74 mm wide.
    let level = |own: &&sheets::Shape| {
        let place = own.path.bounding_box();
        place.height() == 0.0 && place.width() > 70.0
    };
    let mut lines: Vec<f64> =
        shapes(&picture).filter(level).map(|own| own.path.bounding_box().y0).collect();
    lines.sort_by(f64::total_cmp);
    assert_eq!(lines.len(), 2, "the limit and the base");
    testkit::assert_near(lines[1] - lines[0], 25.0 * 74.0 / 440.0, 1e-6);
    let mut along = section(false);
    along.at = SectionAt::Through(Side::Left);
    let along = section_picture(ENGLISH, &along, wall).unwrap();
    is_right(&along);
    assert_eq!(bar(&along), None);
    assert!(words_of(&along).contains(&"REAR EDGE (back)".to_owned()));
}

#[test]
fn a_mirrored_section_is_drawn_mirrored() {
    let wall = Length::from_mm(60.0);
    let [own, image] =
        [false, true].map(|mirrored| section_picture(ENGLISH, &section(mirrored), wall).unwrap());
    // Hatching leans one way in both, and the limit's name with its white ground, which alone has
    // no pen and no accent, stands at the left of both; all else mirrors.
    let without_hatch = |picture: &Picture, mirrored| {
        let ground = |own: &sheets::Shape| {
            own.fill.is_some_and(|fill| fill.color == sheets::Color::WHITE) && own.pen.is_none()
        };
        let thin = |own: &sheets::Shape| {
            own.pen.as_ref().is_some_and(|pen| pen.width < 0.2) || ground(own)
        };
        let mut picture = picture.clone();
        for part in &mut picture.parts {
            part.marks.retain(|mark| !matches!(mark, Mark::Shape(own) if thin(own)));
        }
        boxes(&picture, mirrored)
    };
    assert_eq!(without_hatch(&own, false), without_hatch(&image, true));
    assert_ne!(without_hatch(&own, false), without_hatch(&image, false));
}

#[test]
fn what_is_bottomed_out_or_very_high_stays_in_the_picture_of_a_section() {
    let mm = Length::from_mm;
    for height in [2.0, 180.0] {
        let mut own = section(false);
        own.sites = SiteName::ALL[..5]
            .iter()
            .zip([-58.0, 58.0, 0.0, -200.0, 200.0])
            .map(|(name, at)| {
                let height = Spread { central: mm(height), low: mm(0.0), high: mm(height + 9.0) };
                SectionSite { name: *name, at, height }
            })
            .collect();
        let picture = section_picture(ENGLISH, &own, mm(60.0)).unwrap();
        is_right(&picture);
        // What is left under the sites is drawn over the name of the limit.
        let marks = &picture.parts[0].marks;
        let named = marks.iter().position(
            |mark| matches!(mark, Mark::Text(run) if run.shaped.text() == "at least 25 mm"),
        );
        let body = marks.iter().position(|mark| match mark {
            Mark::Shape(own) => own.pen.as_ref().is_some_and(|pen| pen.width == 0.8),
            Mark::Text(_) => false,
        });
        assert!(named.unwrap() < body.unwrap());
        let said = format!("{height} mm (0 to {})", height + 9.0);
        assert_eq!(words_of(&picture).iter().filter(|own| **own == said).count(), 5);
    }
}
