//! What each document says.

use case::Caution;
use case::text::LengthUnit;
use cushion::Pattern;
use sheets::{
    Document, DocumentError, INKS, PAPERS, Paper, View, contrast_ratio, fill_order, place_on_page,
    setup_card, stock_fill_card, tag, take_home, take_home_text,
};
use testkit::assert_near;

use crate::papers::{Case, DAY, PROGRAM, blank_form, texts};

const NOT_FITTED: &str = "NOT FITTED YET. DO NOT HAND OVER.";

fn words(document: &Document) -> String {
    document.pages.iter().flat_map(texts).collect::<Vec<_>>().join("\n")
}

#[test]
fn until_a_fitting_check_papers_say_that_there_was_none() {
    let case = Case::of("row-six", "440x400");
    for page in &take_home(&case.papers(), Paper::A4).unwrap().pages {
        assert!(texts(page).iter().any(|text| text == NOT_FITTED));
    }
    let card = words(&setup_card(&case.papers(), Paper::A4).unwrap());
    assert!(card.contains("ESTIMATE until checked"));
}

#[test]
fn after_a_fitting_check_papers_say_when_and_by_whom() {
    let case = Case::of("row-six", "440x400").fitted();
    for page in &take_home(&case.papers(), Paper::A4).unwrap().pages {
        let texts = texts(page);
        assert!(!texts.iter().any(|text| text == NOT_FITTED));
        let said = "Checked on 4\u{a0}March\u{a0}2026 by OT. Do not change it.";
        assert!(texts.iter().any(|text| text == said), "{texts:?}");
    }
    let card = words(&setup_card(&case.papers(), Paper::A4).unwrap());
    assert!(!card.contains("ESTIMATE") && card.contains("Checked on 2026-03-04 by OT"));
}

#[test]
fn counts_are_those_of_the_recorded_plan() {
    let case = Case::of("curved-ten", "440x400");
    let total = case.plan.total().to_string();
    for document in [
        setup_card(&case.papers(), Paper::A4).unwrap(),
        fill_order(&case.papers(), Paper::A4).unwrap(),
        take_home(&case.papers(), Paper::A4).unwrap(),
    ] {
        let said: Vec<String> = document.pages.iter().flat_map(texts).collect();
        for count in &case.plan.counts {
            assert!(said.contains(&count.planned.to_string()), "{}: {}", document.title, count.id);
        }
        assert!(said.iter().any(|text| text.contains(&total)), "{}", document.title);
    }
}

#[test]
fn the_tag_has_no_counts() {
    let case = Case::of("island-eight", "440x400");
    let said = texts(&tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM).unwrap().pages[0]);
    for count in &case.plan.counts {
        assert!(said.contains(&count.number.to_string()));
        assert!(!said.iter().any(|text| text.contains(&count.planned.to_string())));
    }
    assert!(said.join(" ").contains("If this cushion has a setup card, fill by the card."));
}

#[test]
fn a_tag_says_for_whom_it_is_rated_or_that_its_size_is_not_made() {
    let said = |size: &str| {
        let case = Case::of("row-six", size);
        words(&tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM).unwrap())
    };
    let made = said("440x400");
    assert!(made.contains("Client at most") && !made.contains("NOT MADE"), "{made}");
    let other = said("445x415");
    assert!(other.contains("SIZE NOT MADE") && !other.contains("at most"), "{other}");
    let cards = Case::of("row-six", "445x415");
    for paper in PAPERS {
        let card = words(&stock_fill_card(&cards.stock_papers(), paper).unwrap());
        assert!(card.contains("size not made"), "{card}");
    }
}

#[test]
fn each_bag_has_a_label_with_its_number_its_cells_and_the_code() {
    let case = Case::of("curved-ten", "440x400");
    for paper in PAPERS {
        let sheet = sheets::wash_day(&case.papers(), paper).unwrap();
        let blocks: Vec<String> = (sheet.pages.iter().flat_map(|page| &page.blocks))
            .filter(|block| block.role == sheets::Role::Paragraph)
            .map(|block| {
                let runs = block.marks.iter().filter_map(|mark| match mark {
                    sheets::Mark::Text(run) => Some(run.shaped.text()),
                    sheets::Mark::Shape(_) => None,
                });
                runs.collect::<Vec<_>>().join(" ")
            })
            .collect();
        for count in &case.plan.counts {
            let label = format!("{} {}\u{a0}cells ", count.number, count.planned);
            let own = |said: &&String| said.starts_with(&label);
            let label = blocks.iter().find(own).expect("it has a label");
            assert!(label.ends_with(case.client.code.as_str()), "{label}");
        }
    }
}

#[test]
fn a_sheet_of_tags_has_whole_tags_apart_from_each_other() {
    let case = Case::of("island-eight", "440x400");
    for paper in PAPERS {
        let about = (DAY, PROGRAM);
        let sheet = sheets::tags_sheet(words::ENGLISH, &case.pattern, None, paper, about).unwrap();
        let one = tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM).unwrap();
        let (sheet, one) = (&sheet.pages[0], &one.pages[0]);
        assert!(sheet.bounds().width() > sheet.bounds().height());
        let mut many: Vec<String> = (0..6).flat_map(|_| texts(one)).collect();
        let mut found = texts(sheet);
        many.sort();
        found.sort();
        assert_eq!(found, many);
    }
}

#[test]
fn a_plan_for_another_pattern_is_refused() {
    let mut case = Case::of("row-six", "440x400");
    case.plan.counts.swap(0, 1);
    let refused = Err(DocumentError::OtherCompartments);
    assert_eq!(setup_card(&case.papers(), Paper::A4), refused);
    case.plan.counts.pop();
    assert_eq!(take_home(&case.papers(), Paper::A4), refused);
    assert_eq!(fill_order(&case.papers(), Paper::A4), refused);
}

#[test]
fn every_document_finds_room_at_every_size() {
    for (layout, sizes) in [
        ("row-six", ["250x250", "431.8x406.4", "610x550"]),
        ("island-eight", ["360x360", "431.8x406.4", "560x500"]),
        ("curved-ten", ["400x400", "431.8x406.4", "610x550"]),
    ] {
        for (size, paper) in sizes.into_iter().flat_map(|size| PAPERS.map(|paper| (size, paper))) {
            let case = Case::of(layout, size);
            let pages = |made: Result<Document, DocumentError>| {
                made.unwrap_or_else(|error| panic!("{layout} {size}: {error}")).pages.len()
            };
            assert_eq!(pages(setup_card(&case.papers(), paper)), 2);
            assert_eq!(pages(fill_order(&case.papers(), paper)), 1);
            assert_eq!(pages(stock_fill_card(&case.stock_papers(), paper)), 1);
            // A tall cushion, or the lower paper, takes one more.
            assert!((5..=6).contains(&pages(take_home(&case.papers(), paper))));
            assert_eq!(pages(tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM)), 1);
        }
    }
}

#[test]
fn cautions_that_find_no_room_go_on_on_the_next_page() {
    let mut case = Case::of("curved-ten", "440x400");
    case.cautions =
        (0..40).map(|number| Caution::FewCells { number, cells: 20, least: 25 }).collect();
    let card = setup_card(&case.papers(), Paper::Letter).unwrap();
    assert_eq!(card.pages.len(), 3);
    let said = words(&card).replace('\n', " ");
    for number in 0..40 {
        assert!(said.contains(&format!("Compartment {number} gets 20 cells;")));
    }
}

#[test]
fn a_note_that_is_longer_than_a_page_goes_on_on_the_next() {
    let mut case = Case::of("row-six", "440x400");
    case.client.carer_notes = vec!["A note that goes on and on about many things. ".repeat(80)];
    let sheet = take_home(&case.papers(), Paper::A4).unwrap();
    assert!(sheet.pages.len() > 2);
    let said = words(&sheet).replace('\n', " ");
    // The foot of a page comes between what stands on two.
    assert_eq!(said.matches("things.").count(), 80);
}

/// The place of each number in a view.
fn places(pattern: &Pattern, view: View) -> Vec<sheets::Point> {
    let area = sheets::Rect::new(20.0, 30.0, 120.0, 110.0);
    let place = place_on_page(pattern, view, area);
    pattern.compartments().iter().map(|there| place * there.seed).collect()
}

#[test]
fn the_views_are_mirror_images() {
    let pattern = testkit::pattern("curved-ten", "440x400");
    let (above, below) = (places(&pattern, View::Above), places(&pattern, View::Below));
    for ((above, below), there) in above.iter().zip(&below).zip(pattern.compartments()) {
        // The middle of the area is at x = 70; a micrometre is below any printer's step.
        assert_near(above.x + below.x, 140.0, 1e-3);
        assert_near(above.y, below.y, 1e-3);
        let left = there.side == Some(cushion::Side::Left);
        assert_eq!(above.x < 70.0, left, "{}", there.id);
        assert_eq!(below.x > 70.0, left, "{}", there.id);
    }
    // The front is up in both.
    let of = |id: &str| pattern.by_id(id).unwrap().index();
    assert!(above[of("thigh-left")].y < above[of("seat-left")].y);
}

#[test]
fn words_for_carers_are_large_and_short() {
    let case = Case::of("curved-ten", "610x550").fitted();
    for paper in PAPERS {
        let sheet = take_home(&case.papers(), paper).unwrap();
        for text in take_home_text(&sheet) {
            for sentence in text.split(['.', '?', ';', ':', '\n']) {
                let count = sentence.split_whitespace().count();
                assert!(count <= 20, "{count} words: {sentence}");
            }
        }
        let words = sheet.pages.iter().flat_map(|page| &page.blocks);
        let words = words.filter(|block| !matches!(block.role, sheets::Role::Figure { .. }));
        for block in words {
            // Labels and the foot may be smaller than what is read as words.
            let least = match block.role {
                sheets::Role::ListItem | sheets::Role::Heading(_) => 16.0,
                _ => 14.0,
            };
            for mark in &block.marks {
                if let sheets::Mark::Text(run) = mark {
                    assert!(run.size_pt >= least, "{}: {}", run.size_pt, run.shaped.text());
                }
            }
        }
    }
}

#[test]
fn large_print_is_larger_and_says_the_same() {
    let case = Case::of("curved-ten", "440x400").fitted();
    let usual = case.papers();
    let large = sheets::ClientPapers { large_print: true, ..usual };
    for paper in PAPERS {
        let [usual, large] = [usual, large].map(|papers| take_home(&papers, paper).unwrap());
        let said = |document: &Document| {
            let runs = document.pages.iter().flat_map(|page| &page.blocks);
            let runs = runs.filter(|own| own.role == sheets::Role::ListItem);
            let text = runs.flat_map(|own| &own.marks).filter_map(|mark| match mark {
                sheets::Mark::Text(run) => Some((run.size_pt, run.shaped.text())),
                sheets::Mark::Shape(_) => None,
            });
            text.collect::<Vec<_>>()
        };
        let (usual, large) = (said(&usual), said(&large));
        assert!(large.iter().all(|(size, _)| *size >= 20.0));
        let joined = |runs: &[(f64, String)]| {
            runs.iter().map(|own| own.1.as_str()).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(joined(&usual), joined(&large));
    }
}

#[test]
fn a_known_sore_has_a_stop_rule_of_its_own() {
    let mut case = Case::of("row-six", "440x400");
    let stop = |case: &Case| {
        let sheet = take_home(&case.papers(), Paper::A4).unwrap();
        texts(&sheet.pages[0]).join(" ")
    };
    case.client.skin.injuries.clear();
    assert!(stop(&case).contains("a mark on the skin is still there"));
    assert!(!stop(&case).contains("the sore at"));
    case.client.skin.injuries = vec![case::PressureInjury {
        site: case::SiteName::SeatBone(cushion::Side::Left),
        category: case::Category::Two,
        state: case::Healing::Healing,
        seen_on: DAY,
    }];
    assert!(stop(&case).contains("the sore at the LEFT seat bone is larger, wetter, or smells"));
    assert!(stop(&case).contains("a new mark is still there"));
    // What healed is no sore.
    case.client.skin.injuries[0].state = case::Healing::Healed;
    assert!(!stop(&case).contains("the sore at"));
}

#[test]
fn the_number_for_help_is_the_files_or_a_line_to_write_on() {
    let mut case = Case::of("row-six", "440x400");
    let wall = |case: &Case| {
        let sheet = take_home(&case.papers(), Paper::A4).unwrap();
        texts(&sheet.pages[0])
    };
    assert!(wall(&case).iter().any(|own| own == "Number:"));
    case.client.emergency_phone = Some("01632 960999".into());
    let said = wall(&case);
    assert!(said.iter().any(|own| own == "01632 960999"), "{said:?}");
    assert!(!said.iter().any(|own| own == "Number:"), "{said:?}");
}

#[test]
fn hours_and_relief_are_a_clinicians_or_lines_to_write_on() {
    let mut case = Case::of("row-six", "440x400");
    let said =
        |case: &Case| words(&take_home(&case.papers(), Paper::A4).unwrap()).replace('\n', " ");
    const LINES: [&str; 2] = ["Sit for at most.", "Lift or lean every for"];
    const ASK: &str = "Do not sit until your nurse says how long.";
    case.client.skin.injuries.clear();
    assert!(LINES.iter().all(|line| said(&case).contains(line)), "{}", said(&case));
    assert!(!said(&case).contains(ASK));
    // Where a sore is open and nobody said how long, no number is to be made up.
    case.client.skin.injuries = vec![case::PressureInjury {
        site: case::SiteName::Coccyx,
        category: case::Category::Two,
        state: case::Healing::Open,
        seen_on: DAY,
    }];
    assert!(said(&case).contains(ASK) && !said(&case).contains(LINES[0]), "{}", said(&case));
    case.client.sit_at_most = Some(case::SitAtMost { minutes: 45, times: 2 });
    case.client.pressure_relief = Some("Lean forward, 2 minutes each half hour.".into());
    let told = said(&case);
    assert!(told.contains("Sit at most 45 minutes at a time, twice a day."), "{told}");
    assert!(told.contains("Lean forward, 2 minutes each half hour."), "{told}");
    assert!(!told.contains(ASK) && LINES.iter().all(|line| !told.contains(line)), "{told}");
}

#[test]
fn a_serial_is_on_every_paper_or_a_line_to_write_it_on() {
    let mut case = Case::of("row-six", "440x400");
    let said = |case: &Case| {
        let papers = case.papers();
        let marks = (None, case.client.cushion.serial.as_deref());
        let of = [setup_card, fill_order, take_home, sheets::wash_day];
        let mut all = of.map(|compose| words(&compose(&papers, Paper::A4).unwrap())).to_vec();
        let tag = sheets::tag_with_serial(words::ENGLISH, &case.pattern, marks, DAY, PROGRAM);
        all.push(words(&tag.unwrap()));
        all
    };
    case.client.cushion.serial = None;
    let [.., tag] = said(&case).try_into().unwrap_or([const { String::new() }; 5]);
    assert!(tag.contains("Serial"), "{tag}");
    case.client.cushion.serial = Some("SW-0142".into());
    for paper in said(&case) {
        assert!(paper.contains("SW-0142"), "{paper}");
        let said = paper.to_lowercase();
        assert_eq!(said.matches("serial").count(), said.matches("sw-0142").count(), "{paper}");
    }
}

#[test]
fn what_was_allowed_on_the_cushion_is_not_forbidden() {
    let mut case = Case::of("row-six", "440x400");
    let said = |case: &Case| words(&take_home(&case.papers(), Paper::A4).unwrap());
    case.client.layers.pad = false;
    case.client.layers.sling = false;
    assert!(said(&case).contains("Nothing on it but its cover."));
    case.client.layers.pad = true;
    assert!(!said(&case).contains("Nothing on it but its cover."));
}

#[test]
fn every_ink_stands_out() {
    for ink in INKS {
        let ratio = contrast_ratio(ink.text, ink.ground);
        // WCAG 2.2, success criterion 1.4.3.
        assert!(ratio >= 4.5, "{ink:?}: {ratio}");
    }
}

#[test]
fn every_text_that_is_not_in_a_drawing_has_a_size_of_the_scale() {
    for (layout, size) in [("row-six", "440x400"), ("island-eight", "440x400")] {
        for case in [Case::of(layout, size), Case::of(layout, size).fitted()] {
            for large_print in [false, true] {
                let papers = sheets::ClientPapers { large_print, ..case.papers() };
                let of = [
                    setup_card,
                    fill_order,
                    take_home,
                    sheets::wash_day,
                    sheets::height_gauge,
                    sheets::letter,
                ];
                for document in of.map(|compose| compose(&papers, Paper::Letter).unwrap()) {
                    let blocks = document.pages.iter().flat_map(|page| &page.blocks);
                    let words =
                        blocks.filter(|own| !matches!(own.role, sheets::Role::Figure { .. }));
                    for mark in words.flat_map(|block| &block.marks) {
                        let sheets::Mark::Text(run) = mark else { continue };
                        let (text, size) = (run.shaped.text(), run.size_pt);
                        assert!(
                            sheets::SIZES.contains(&size),
                            "{}: {size}: {text}",
                            document.title
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn partners_stand_side_by_side_and_no_row_is_the_others() {
    let case = Case::of("row-six", "440x400");
    let card = setup_card(&case.papers(), Paper::A4).unwrap();
    let cells = |row: usize| -> Vec<String> {
        let blocks = card.pages[0].blocks.iter().filter(
            |own| matches!(own.role, sheets::Role::Cell { table: 1, row: at, .. } if at == row),
        );
        let of_cell = |block: &sheets::Block| {
            let words = block.marks.iter().filter_map(|mark| match mark {
                sheets::Mark::Text(run) => Some(run.shaped.text()),
                sheets::Mark::Shape(_) => None,
            });
            words.collect::<Vec<_>>().join(" ")
        };
        blocks.map(of_cell).collect()
    };
    let count = |number: &str| {
        let own = case.plan.counts.iter().find(|own| own.number.to_string() == number).unwrap();
        own.planned.to_string()
    };
    let side = |number: &str| {
        let all = case.pattern.compartments();
        all.iter().find(|own| own.number.to_string() == number).unwrap().side.unwrap()
    };
    let rows: Vec<_> = (1..).map(cells).take_while(|row| !row[0].is_empty()).collect();
    assert_eq!(2 * rows.len(), case.pattern.compartments().len());
    for row in rows {
        assert_eq!([side(&row[0]), side(&row[6])], [cushion::Side::Left, cushion::Side::Right]);
        assert_eq!([&row[3], &row[9]], [&count(&row[0]), &count(&row[6])], "{row:?}");
    }
    // Where one lies across the middle, each has a row, and none is left out.
    let case = Case::of("island-eight", "440x400");
    let card = setup_card(&case.papers(), Paper::A4).unwrap();
    let text = words(&card);
    for own in case.pattern.compartments() {
        let place = words::ENGLISH.compartment(own);
        assert!(text.replace('\n', " ").contains(&place), "{place}");
    }
}

#[test]
fn every_text_is_in_a_known_ink() {
    let case = Case::of("row-six", "440x400");
    for document in [
        setup_card(&case.papers(), Paper::A4).unwrap(),
        fill_order(&case.papers(), Paper::A4).unwrap(),
        take_home(&case.papers(), Paper::A4).unwrap(),
        tag(words::ENGLISH, &case.pattern, None, DAY, PROGRAM).unwrap(),
        blank_form(LengthUnit::Millimetres, Paper::A4),
    ] {
        for run in document.pages.iter().flat_map(sheets::Page::texts) {
            assert!(INKS.iter().any(|ink| ink.text == run.color), "{}", run.shaped.text());
        }
    }
}

#[test]
fn no_metadata_has_the_clients_code() {
    let case = Case::of("row-six", "440x400");
    let code = case.client.code.as_str();
    for document in [
        setup_card(&case.papers(), Paper::A4).unwrap(),
        take_home(&case.papers(), Paper::A4).unwrap(),
    ] {
        for fact in [&document.title, &document.subject, &document.program] {
            assert!(!fact.contains(code));
        }
        assert!(document.pages.iter().all(|page| !page.title.contains(code)));
    }
}

/// Who has only this sheet at the sink knows where to sit, whom to call and what the bag holds.
#[test]
fn the_wash_day_has_all_of_the_work_on_its_first_page() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        let mut case = Case::of(layout, "440x400");
        case.client.cushion.spare_cells = 300;
        case.client.meanwhile = Some("the grey foam cushion".into());
        case.client.contacts = vec![
            case::Contact {
                who: "Seating clinic".into(),
                phone: "01632 960123".into(),
                hours: None,
            },
            case::Contact {
                who: "District nurse".into(),
                phone: "01632 960456".into(),
                hours: None,
            },
        ];
        let bag = format!("In the bag now: {} spare cells.", case.client.spare_cells_left());
        for paper in PAPERS {
            let sheet = sheets::wash_day(&case.papers(), paper).unwrap();
            let said = texts(&sheet.pages[0]).join(" ").replace('\u{a0}', " ");
            for words in [
                "Wipe and dry the cells and the pocket.",
                "sit on: the grey foam cushion. Never on the bare chair.",
                "One out, one in from the bag, same pocket.",
                "Seating clinic: 01632 960123",
                "District nurse: 01632 960456",
                "Count twice.",
                &bag,
                "Name",
            ] {
                assert!(said.contains(words), "{layout}: {words} is not in: {said}");
            }
        }
    }
}
