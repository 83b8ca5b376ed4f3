//! Layouts that lie beside the clients' files: offered as they can be drawn, and drawn while they are
//! wrong.

use casework::{
    DrawnLayout, OpenCase, PreparedCushions, Surroundings, layout_files, written_layout,
};
use files::{BuiltIn, starter};
use testkit::MemoryShelf;

const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
     [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = { left = 480, right = 480 }\n\
     [weight]\nkg = 60\nweighed_on = 2026-02-10\n\
     [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";

/// A layout with a seam that crosses another and ends at nothing.
fn crossing() -> String {
    let text = starter::layout().replace("mid ", "low = [\"30%\", \"20%\"]\nmid ");
    text.replace("legs ", "slash = { through = [\"low\", \"front\"] }\nlegs ")
}

fn shelf() -> MemoryShelf {
    let unclosed = starter::layout().replacen("\"100%\"]", "\"100%\"", 1);
    MemoryShelf::of([
        ("T-1.toml", CLIENT),
        ("crossing.toml", &crossing()),
        ("mine.toml", starter::layout()),
        ("unclosed.toml", &unclosed),
    ])
}

#[test]
fn layouts_of_the_folder_are_offered_as_they_can_be_drawn() {
    let shelf = shelf();
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let files = layout_files(surroundings);
    assert_eq!(files, ["crossing.toml", "mine.toml", "unclosed.toml"]);
    let case = OpenCase::open(surroundings, "T-1.toml").unwrap();
    let all = case.all_sizings(surroundings, &files).layouts;
    let named = |name: &str| all.iter().find(|own| own.name == name).unwrap();
    let mine = named("mine.toml");
    let best = mine.sizing.as_ref().unwrap().chosen.unwrap();
    assert!(mine.not_drawn.is_none());
    let crossing = named("crossing.toml");
    assert!(crossing.sizing.as_ref().unwrap().chosen.is_none());
    assert!(crossing.not_drawn.as_ref().unwrap().is_wrong());
    assert!(named("unclosed.toml").sizing.is_err());
    // What is built in stands before them, and the client's own is not there twice.
    assert_eq!(all.iter().filter(|own| own.name == "row-six").count(), 1);
    // A client's file that names it so is understood.
    let chosen = CLIENT.replace("row-six", "mine.toml").replace("440x400", &best.to_string());
    let shelf = MemoryShelf::of([("T-1.toml", chosen.as_str()), ("mine.toml", starter::layout())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let case = OpenCase::open(surroundings, "T-1.toml").unwrap();
    let all = case.all_sizings(surroundings, &["mine.toml".to_owned()]).layouts;
    assert_eq!(all.iter().filter(|own| own.name == "mine.toml").count(), 1);
}

/// Else nobody could choose another one on the page.
#[test]
fn whose_layout_cannot_be_had_may_choose_another() {
    let client = CLIENT.replace("row-six", "crossing.toml");
    let shelf = MemoryShelf::of([("T-1.toml", client.as_str()), ("crossing.toml", &crossing())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let draft = casework::Draft::open(surroundings, "T-1.toml").unwrap();
    let cushions = PreparedCushions::default();
    assert!(draft.with_any_cushion(&cushions, surroundings).is_err());
    assert!(draft.with_another_cushion(&cushions, surroundings).is_ok());
}

#[test]
fn what_is_refused_is_drawn_with_the_numbers_of_its_remarks() {
    let shelf = shelf();
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let own = written_layout(surroundings, "crossing.toml", 1).unwrap();
    assert_eq!((own.sizes.len(), own.at), (2, 1));
    let Some(DrawnLayout::Refused(sketch, numbers)) = own.drawn else { panic!("it is refused") };
    assert!(!sketch.seams.is_empty());
    assert_eq!(numbers.len(), sketch.places.len());
    let all: Vec<usize> = (1..=own.file.remarks.len()).collect();
    assert_eq!(numbers, all, "each remark has its ring");
    assert!(sketch.places.iter().all(Option::is_some));
    let own = written_layout(surroundings, "mine.toml", 0).unwrap();
    assert!(matches!(own.drawn, Some(DrawnLayout::Whole(_))));
    // Of what cannot be read nothing is drawn.
    let own = written_layout(surroundings, "unclosed.toml", 0).unwrap();
    assert!(own.drawn.is_none() && own.file.is_wrong());
}
