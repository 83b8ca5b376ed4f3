//! Nobody works, and nothing is watched, for a page that was left.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::time::Duration;

use axum::extract::{Path, RawQuery, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Response};
use case::Date;
use casework::{Change, Shelf, ShelfError};
use files::BuiltIn;
use sheets::Paper;
use testkit::MemoryShelf;
use tokio::runtime::Runtime;

use crate::errors::Failed;
use crate::following;
use crate::form::Sent;
use crate::house::{House, Settings};
use crate::lot;
use crate::screens::plan::{judging, stock};
use crate::screens::{self, Ask};
use crate::server::{answered, layout_changed};
use crate::waiting::Waits;
use crate::windows::{Told, Window};

const FILE: &str = "T-3.toml";
const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-3\"\n\
     [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = { left = 480, right = 480 }\n\
     [weight]\nkg = 72\nweighed_on = 2026-02-10\n\
     [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";

/// Longer than anything here takes.
const LONG: Duration = Duration::from_secs(30);

fn house(shelf: impl Shelf + 'static) -> Arc<House> {
    Arc::new(House::new(Settings {
        shelf: Arc::new(shelf),
        layouts: Arc::new(BuiltIn),
        today: Box::new(|| Date::constant(2026, 3, 2)),
        language: words::ENGLISH,
        paper: Paper::A4,
        demos: &[],
    }))
}

fn runtime() -> Runtime {
    tokio::runtime::Builder::new_multi_thread().enable_all().build().unwrap()
}

/// Waits until something is so, which other threads make so; false where it never is.
async fn until(is_so: impl Fn() -> bool) -> bool {
    let waits = async {
        while !is_so() {
            tokio::time::sleep(Duration::from_millis(2)).await;
        }
    };
    tokio::time::timeout(LONG, waits).await.is_ok()
}

/// A question about counts that are tried, in the house of one client.
fn ask(house: &House, is_left: bool) -> Ask {
    let case = house.open(FILE).unwrap();
    let counts = stock(&case).into_iter().enumerate();
    let cells = counts.map(|(at, cells)| format!("&cells.{}={cells}", at + 1));
    Ask {
        address: house.address_of(FILE),
        step: "plan".to_owned(),
        page: Some("judged".to_owned()),
        sent: Sent::read(cells.collect::<String>().as_bytes()),
        fragment: true,
        trigger: None,
        left: Arc::new(AtomicBool::new(is_left)),
    }
}

static BEGUN: AtomicBool = AtomicBool::new(false);
static TOLD: AtomicBool = AtomicBool::new(false);

/// Works until it is told that nobody waits, or for long.
fn works(_: &House, ask: &Ask) -> Result<Response, Failed> {
    BEGUN.store(true, Ordering::SeqCst);
    for _ in 0..LONG.as_millis() {
        if ask.is_left() {
            TOLD.store(true, Ordering::SeqCst);
            break;
        }
        std::thread::sleep(Duration::from_millis(1));
    }
    Ok(StatusCode::OK.into_response())
}

#[test]
fn work_is_told_when_its_page_is_left() {
    let runtime = runtime();
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let ask = ask(&house, false);
    runtime.block_on(async {
        // A connection that is dropped drops the answer that is under way.
        let answer = tokio::spawn(answered(house, ask, works));
        assert!(until(|| BEGUN.load(Ordering::SeqCst)).await);
        assert!(!TOLD.load(Ordering::SeqCst));
        answer.abort();
        assert!(until(|| TOLD.load(Ordering::SeqCst)).await, "it works for nobody");
    });
    runtime.shutdown_background();
}

#[test]
fn counts_of_a_page_that_was_left_are_not_judged() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let status = |is_left| screens::show(&house, &ask(&house, is_left)).ok().unwrap().status();
    assert_eq!(status(true), StatusCode::NO_CONTENT);
    assert_eq!(status(false), StatusCode::OK);
}

/// Who waits holds a connection, and a browser has six for all its windows together: whoever comes when
/// two wait is told to ask again, and a touch is answered all the same.
#[test]
fn where_two_wait_the_next_asks_again_and_a_touch_is_answered() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let status = |ask: Ask| screens::show(&house, &ask).ok().unwrap().status();
    let page = |page: &str| Ask { page: Some(page.to_owned()), ..ask(&house, false) };
    let all: Vec<Waits<'_>> = std::iter::from_fn(|| house.waiting.one_more()).collect();
    assert_eq!(all.len(), 2);
    assert_eq!(status(page("judged")), StatusCode::NO_CONTENT);
    assert_eq!(status(page("spread")), StatusCode::NO_CONTENT);
    // Where scripts are off nobody asks again.
    assert_eq!(status(Ask { fragment: false, ..page("judged") }), StatusCode::OK);
    assert_eq!(touch(&house, FILE, &lot::word().unwrap()), StatusCode::OK);
    drop(all);
    assert_eq!(status(page("judged")), StatusCode::OK);
    assert_eq!(status(page("spread")), StatusCode::OK);
}

#[test]
fn what_is_known_is_told_at_once_however_many_wait() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let id = lot::word().unwrap();
    assert_eq!(touch(&house, FILE, &id), StatusCode::OK);
    let window = house.windows.get(&id).unwrap();
    assert!(matches!(window.wait(1, true), Told::Answer(_)));
    let _all: Vec<Waits<'_>> = std::iter::from_fn(|| house.waiting.one_more()).collect();
    let counts = stock(&window.case).into_iter().enumerate();
    let cells = counts.map(|(at, cells)| format!("&cells.{}={cells}", at + 1));
    let sent = format!("window={id}&revision=1{}", cells.collect::<String>());
    let spread = Ask {
        page: Some("spread".to_owned()),
        sent: Sent::read(sent.as_bytes()),
        ..ask(&house, false)
    };
    assert_eq!(screens::show(&house, &spread).ok().unwrap().status(), StatusCode::OK);
}

/// Who waits for a turn is asked whether it is overtaken while turns are held, and who asks about counts
/// tells those who wait for one: neither may wait for the other.
#[test]
fn counts_are_asked_about_while_others_are_asked_whether_they_are_overtaken() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let window = Window::open(FILE, house.open(FILE).unwrap(), &house.turns).unwrap();
    let counts = stock(&window.case);
    let (asking, asked) = (Arc::new(AtomicBool::new(false)), std::sync::mpsc::channel());
    let (own, begun, of) = (Arc::clone(&window), Arc::clone(&asking), Arc::clone(&house));
    std::thread::spawn(move || {
        let unwanted = || {
            if !begun.swap(true, Ordering::SeqCst) {
                // Long enough for the other to ask.
                std::thread::sleep(Duration::from_millis(200));
            }
            own.is_overtaken(0)
        };
        of.turns.after(&unwanted, |_| ())
    });
    std::thread::spawn(move || {
        while !asking.load(Ordering::SeqCst) {
            std::thread::yield_now();
        }
        asked.0.send(window.ask(&counts).is_ok())
    });
    assert_eq!(asked.1.recv_timeout(LONG), Ok(true), "they wait for each other");
}

/// Touches come on connections of their own, and one that was given up may be read after the next.
#[test]
fn a_touch_that_arrives_after_a_later_one_takes_no_answer_away() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let window = Window::open(FILE, house.open(FILE).unwrap(), &house.turns).unwrap();
    let (first, last) = (stock(&window.case), {
        let mut more = stock(&window.case);
        more[0] += 1;
        more
    });
    let asked = window.ask_in_order(&last, 8).unwrap().expect("nothing came before");
    assert!(window.ask_in_order(&first, 7).unwrap().is_none());
    assert!(!window.is_overtaken(asked.number()));
    assert!(matches!(window.wait(asked.number(), false), Told::Answer(_)));
    // The next of the same page, and what has no number, are asked about.
    assert_eq!(window.last_touch(), 8);
    assert!(window.ask_in_order(&first, 8).unwrap().is_some());
    assert!(window.ask_in_order(&first, 9).unwrap().is_some());
}

#[test]
fn judging_asks_again_and_again_whether_anybody_waits() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let case = house.open(FILE).unwrap();
    let counts = stock(&case);
    // How often it asks, where the answer is that nobody waits from the k-th question on.
    let asks = |k: u32| {
        let asked = AtomicU32::new(0);
        let judged = judging(&house, &case, &counts, &|| asked.fetch_add(1, Ordering::SeqCst) >= k);
        (judged.is_some(), asked.into_inner())
    };
    let (is_judged, all) = asks(u32::MAX);
    assert!(is_judged);
    // The turns ask twice; the rest is the work.
    assert!(all > 100, "{all}");
    let (is_judged, some) = asks(all / 4);
    assert!(!is_judged && some < all / 2, "{some} of {all}");
}

#[test]
fn nothing_is_watched_for_a_page_that_was_left() {
    let runtime = runtime();
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    let house = house(shelf.clone());
    let seen = following::mark(&house, FILE).unwrap();
    runtime.block_on(async {
        let waits = tokio::spawn(following::changed(house, FILE.to_owned(), seen));
        assert!(until(|| shelf.watched() == 1).await);
        waits.abort();
        assert!(until(|| shelf.watched() == 0).await, "it is watched for ever");
    });
}

#[test]
fn where_two_follow_a_file_the_next_is_told_what_is_known_and_asks_again() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let _all: Vec<Waits<'_>> = std::iter::from_fn(|| house.following.one_more()).collect();
    let status = |seen: &str| {
        let (at, seen) = (Path(house.address_of(FILE)), RawQuery(Some(format!("seen={seen}"))));
        let answer = layout_changed(State(Arc::clone(&house)), at, seen);
        runtime().block_on(answer).status()
    };
    assert_eq!(status("another"), StatusCode::OK);
    let now = following::mark(&house, FILE).unwrap();
    assert_eq!(status(&now), StatusCode::SERVICE_UNAVAILABLE);
}

/// A shelf that tells nothing, as of a folder on another machine.
struct Deaf(MemoryShelf);

impl Shelf for Deaf {
    fn read(&self, name: &str) -> Result<Vec<u8>, ShelfError> {
        self.0.read(name)
    }

    fn list(&self, folder: &str) -> Result<Vec<String>, ShelfError> {
        self.0.list(folder)
    }

    fn put(&self, changes: &[Change]) -> Result<(), ShelfError> {
        self.0.put(changes)
    }

    fn beside(&self, name: &str, other: &str) -> String {
        self.0.beside(name, other)
    }
}

#[test]
fn a_change_is_answered_also_where_nothing_is_told() {
    let runtime = runtime();
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    for house in [house(shelf.clone()), house(Deaf(shelf.clone()))] {
        let seen = following::mark(&house, FILE).unwrap();
        let now = shelf.text(FILE);
        runtime.block_on(async {
            let own = Arc::clone(&house);
            let waits = tokio::spawn(following::changed(own, FILE.to_owned(), seen.clone()));
            // The same bytes are no change.
            shelf.put(&[Change::of(FILE, now.as_bytes(), now.as_bytes())]).unwrap();
            tokio::time::sleep(Duration::from_millis(300)).await;
            assert!(!waits.is_finished());
            let other = now.clone() + "# saved\n";
            shelf.put(&[Change::of(FILE, now.as_bytes(), other.as_bytes())]).unwrap();
            let answer = tokio::time::timeout(LONG, waits).await.unwrap().unwrap();
            assert_eq!(answer, following::mark(&house, FILE));
            assert_ne!(answer, Some(seen));
        });
    }
}

/// A touch of a client's page with the id of a window.
fn touch(house: &House, name: &str, id: &str) -> StatusCode {
    let judged = ask(house, false);
    let counts = stock(&house.open(name).unwrap());
    let cells = counts.iter().enumerate().map(|(at, cells)| format!("&cells.{}={cells}", at + 1));
    let sent = format!("window={id}{}", cells.collect::<String>());
    let (address, page) = (house.address_of(name), Some("touch".to_owned()));
    let own = Ask { address, page, sent: Sent::read(sent.as_bytes()), ..judged };
    screens::take(house, &own).ok().unwrap().status()
}

#[test]
fn a_window_that_made_room_is_opened_again_for_its_page_and_once() {
    const OTHER: &str = "T-4.toml";
    let other = CLIENT.replace("T-3", "T-4");
    let house = house(MemoryShelf::of([(FILE, CLIENT), (OTHER, &*other)]));
    let id = lot::word().unwrap();
    assert!(house.windows.get(&id).is_none());
    assert_eq!(touch(&house, FILE, &id), StatusCode::OK);
    let opened = house.windows.get(&id).unwrap();
    assert_eq!(touch(&house, FILE, &id), StatusCode::OK);
    assert!(Arc::ptr_eq(&opened, &house.windows.get(&id).unwrap()));
    // Neither a page of another client takes it away, nor is one kept under what is no id.
    assert_eq!(touch(&house, OTHER, &id), StatusCode::OK);
    assert!(Arc::ptr_eq(&opened, &house.windows.get(&id).unwrap()));
    assert_eq!(touch(&house, OTHER, "mine"), StatusCode::OK);
    assert!(house.windows.get("mine").is_none());
}

#[test]
fn of_two_windows_that_are_opened_at_once_for_one_page_the_second_ends() {
    let house = house(MemoryShelf::of([(FILE, CLIENT)]));
    let open = || Window::open(FILE, house.open(FILE).unwrap(), &house.turns).unwrap();
    let (first, second) = (open(), open());
    let counts = stock(&second.case);
    let revision = second.ask(&counts).unwrap().number();
    assert!(Arc::ptr_eq(&house.windows.put("page".into(), Arc::clone(&first)), &first));
    assert!(Arc::ptr_eq(&house.windows.put("page".into(), Arc::clone(&second)), &first));
    assert!(matches!(second.wait(revision, true), Told::Ended));
    let revision = first.ask(&counts).unwrap().number();
    assert!(matches!(first.wait(revision, false), Told::Answer(_)));
}
