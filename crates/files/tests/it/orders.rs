//! Orders: what is read, and where each mistake is pointed at.

use case::text::TextFinding;
use files::{MOST_CUSHIONS, OrderLine, Ordered, Read, place_of, read_order};
use words::ENGLISH;

const HEAD: &str = "layout,size,cell,client,quantity,serials\n";

fn read(lines: &str) -> Read<Vec<OrderLine>> {
    read_order(&format!("{HEAD}{lines}"))
}

/// The ids of what is wrong, each with its line and column.
fn wrong(text: &str) -> Vec<(&'static str, usize, usize)> {
    let Read { value, remarks } = read_order(text);
    assert!(value.is_none(), "{text}");
    let place = |at: usize| place_of(text, at);
    let one = |own: &files::Remark| {
        let at = place(own.span.start);
        (TextFinding::id(&own.finding), at.line, at.column)
    };
    remarks.iter().map(one).collect()
}

#[test]
fn lines_are_read_with_their_serials() {
    let own = read(
        "row-six,440x400,,,3,S-101..S-103\n\n,,,K-17.toml,,S-200\nmine.toml,17x16in,big.toml,,2,A B\n,,,,,\n",
    );
    assert_eq!(own.remarks, []);
    let lines = own.value.unwrap();
    let what: Vec<_> =
        lines.iter().map(|own| (own.line, own.quantity, own.serials.join(" "))).collect();
    let wanted = [(2, 3, "S-101 S-102 S-103"), (4, 1, "S-200"), (5, 2, "A B")];
    assert_eq!(what, wanted.map(|(line, many, said)| (line, many, said.to_owned())));
    assert_eq!(lines[1].what, Ordered::Client("K-17.toml".into()));
    let Ordered::Stock { layout, size, cell } = &lines[2].what else { panic!("{lines:?}") };
    assert_eq!((layout.as_str(), size.to_string()), ("mine.toml", "431.8x406.4".to_owned()));
    assert_eq!(cell.as_deref(), Some("big.toml"));
}

#[test]
fn columns_come_in_any_order_and_some_may_be_left_out() {
    let lines = read_order("quantity;size;layout\n2;440x400;row-six\n").value.unwrap();
    assert_eq!((lines[0].quantity, lines[0].serials.len()), (2, 0));
    let lines = read_order("client\nK-17.toml\nK-18.toml\n").value.unwrap();
    assert_eq!(lines.iter().map(|own| own.quantity).collect::<Vec<_>>(), [1, 1]);
}

#[test]
fn a_heading_that_is_wrong_is_pointed_at() {
    assert_eq!(
        wrong("layout,size,quantity,colour\nrow-six,440x400,1,red\n"),
        [("columns-unknown", 1, 22)]
    );
    assert_eq!(
        wrong("layout,size,size,quantity\nrow-six,440x400,,1\n")[0],
        ("columns-twice", 1, 13)
    );
    assert_eq!(wrong("layout,quantity\nrow-six,1\n")[0], ("columns-missing", 1, 1));
    assert_eq!(wrong("")[0].0, "columns-nothing");
    assert_eq!(wrong(HEAD), [("columns-nothing", 1, 1)]);
    // A name that is nearly right is told.
    let found = read_order("layout,size,quantity,serial\nrow-six,440x400,1,\n").remarks;
    assert_eq!(ENGLISH.about_text(&found[0].finding).hint.unwrap(), "write `serials`");
}

#[test]
fn each_mistake_is_pointed_at_where_it_stands() {
    for (line, id, column) in [
        ("row-six,440x400,,,3", "columns-fields", 1),
        ("row-six,440x400,,,3,A,B", "columns-fields", 1),
        ("row-six,440x400,,,\"3\"x,", "columns-quotes", 19),
        (",,,,3,", "order-nothing-named", 1),
        ("row-six,,,,3,", "order-no-size", 1),
        ("row-six,440,,,3,", "word-size", 9),
        ("row-six,4400x400,,,3,", "word-size", 9),
        ("row-six,440x400,,,,", "order-quantity", 1),
        ("row-six,440x400,,,0,", "order-quantity", 19),
        ("row-six,440x400,,,-1,", "order-quantity", 19),
        ("row-six,440x400,,,+1,", "order-quantity", 19),
        ("row-six,440x400,,,1.0,", "order-quantity", 19),
        ("row-six,440x400,,,nan,", "order-quantity", 19),
        ("row-six,440x400,,,99999999999,", "order-quantity", 19),
        ("row-six,440x400,,,501,", "order-too-many", 19),
        (",440x400,,K.toml,1,", "order-beside-client", 2),
        ("row-six,,,K.toml,1,", "order-beside-client", 1),
        (",,pillow-25,K.toml,1,", "order-beside-client", 3),
        (",,,K.toml,2,", "order-one-for-client", 11),
        ("row-six,440x400,,,2,S-1", "order-serial-count", 21),
        (",,,K.toml,,S-1 S-2", "order-serial-count", 12),
        ("row-six,440x400,,,1,S#1", "order-serial", 21),
        ("row-six,440x400,,,2,S-9..S-10", "order-serial-run", 21),
        ("row-six,440x400,,,2,S-1 s-1", "order-serial-twice", 21),
    ] {
        let text = format!("{HEAD}{line}\n");
        assert_eq!(wrong(&text), [(id, 2, column)], "{line}");
    }
}

#[test]
fn no_serial_is_given_twice_and_no_client_ordered_twice() {
    let two = format!("{HEAD}row-six,440x400,,,3,S-101..S-103\nrow-six,440x400,,,1,s-102\n");
    assert_eq!(wrong(&two), [("order-serial-twice", 3, 21)]);
    let said = ENGLISH.about_text(&read_order(&two).remarks[0].finding).message;
    assert_eq!(said, "the serial `s-102` is in line 2 already");
    let two = format!("{HEAD},,,K.toml,,\nrow-six,440x400,,,1,\n,,,K.toml,,\n");
    assert_eq!(wrong(&two), [("order-client-twice", 4, 4)]);
    // The same layout twice is no mistake.
    assert!(read("row-six,440x400,,,1,\nrow-six,440x400,,,1,\n").value.is_some());
}

#[test]
fn an_order_has_an_end() {
    let most = MOST_CUSHIONS;
    assert!(read(&format!("row-six,440x400,,,{most},\n")).value.is_some());
    let over =
        format!("{HEAD}row-six,440x400,,,{most},\nrow-six,440x400,,,1,\nrow-six,440x400,,,1,\n");
    assert_eq!(wrong(&over), [("order-too-many", 3, 19)]);
}

/// All mistakes of a file are told at once, and none makes another.
#[test]
fn all_mistakes_are_told_together() {
    let text = format!("{HEAD}row-six,440,,,0,S#\n,,,,,x\n");
    let ids: Vec<_> = wrong(&text).into_iter().map(|own| own.0).collect();
    assert_eq!(
        ids,
        ["word-size", "order-quantity", "order-serial", "order-quantity", "order-nothing-named"]
    );
}

#[test]
fn whatever_is_written_is_read_or_remarked_on() {
    let text = format!(
        "{HEAD}row-six,440x400,,,3,S-101..S-103\n\"a \"\"b\"\"\",17x16in,,,1,\n,,,K-ü.toml,,x\n"
    );
    // Cut anywhere, and with any byte in the place of another: nothing but remarks within the text.
    for (at, _) in text.char_indices() {
        for put in ["", ",", "\"", "\n", ";", "\u{feff}", "é"] {
            let changed =
                format!("{}{put}{}", &text[..at], text[at..].chars().skip(1).collect::<String>());
            for text in [changed.as_str(), &text[..at]] {
                let Read { remarks, .. } = read_order(text);
                for own in remarks {
                    assert!(text.get(own.span.clone()).is_some(), "{text:?}: {own:?}");
                    assert!(!ENGLISH.about_text(&own.finding).message.is_empty());
                }
            }
        }
    }
}
