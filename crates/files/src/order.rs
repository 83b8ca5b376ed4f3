//! An order, as CSV: which cushions are to be filled, line by line.

use std::collections::BTreeMap;
use std::ops::Range;

use case::text::{ColumnsFinding, FileFinding, OrderFinding, WordFinding};
use cushion::Size;

use crate::cursor::{Remarks, near};
use crate::fields::{Field, Row, rows};
use crate::limits::MOST_BYTES;
use crate::value::size_meant;
use crate::{Read, place_of};

/// The most cushions of one order: far more than a day has.
pub const MOST_CUSHIONS: usize = 500;

/// The longest serial, in characters: as much as a line of a tag has room for.
const LONGEST_SERIAL: usize = 16;

/// The columns that are known.
const COLUMNS: [&str; 6] = ["layout", "size", "cell", "client", "quantity", "serials"];

/// What a line orders.
#[derive(Clone, Debug, PartialEq)]
pub enum Ordered {
    /// A layout as supplied.
    Stock {
        /// Its name, or the path of its file.
        layout: String,
        /// Width by depth.
        size: Size,
        /// The cell, by its name or the path of its file; none where the usual one is meant.
        cell: Option<String>,
    },
    /// What the record of a client's file has, by the path of the file.
    Client(String),
}

/// Where the words of a line stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrderPlaces {
    /// What names the layout, or the client's file.
    pub what: Range<usize>,
    /// The cell; where none is named, the same as `what`.
    pub cell: Range<usize>,
    /// The serials; where there are none, the same as `what`.
    pub serials: Range<usize>,
}

/// One line of an order.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// The line of the text, from 1.
    pub line: usize,
    /// What is ordered.
    pub what: Ordered,
    /// How many, from 1; of a client one.
    pub quantity: u32,
    /// The serials, one for each, or none.
    pub serials: Vec<String>,
    /// Where its words stand.
    pub places: OrderPlaces,
}

/// Reads an order from CSV with a heading. Columns that are not known are errors, since what stands
/// in them would be lost.
#[must_use]
pub fn read_order(text: &str) -> Read<Vec<OrderLine>> {
    let remarks = Remarks::default();
    if text.len() > MOST_BYTES {
        remarks.error(0..0, FileFinding::TooLarge);
        return Read::new(None, remarks.into_vec());
    }
    let rows = rows(text, &remarks);
    let mut lines = Vec::new();
    if let Some((head, below)) = rows.split_first() {
        let mut reader = Reader {
            text,
            columns: columns(head, &remarks),
            remarks: &remarks,
            serials: BTreeMap::new(),
            clients: BTreeMap::new(),
            cushions: 0,
        };
        for row in below.iter().filter(|row| !row.is_empty()) {
            if row.fields.len() == head.fields.len() {
                lines.extend(reader.line(row));
            } else {
                let (found, wanted) = (row.fields.len(), head.fields.len());
                remarks.error(row.span.clone(), ColumnsFinding::Fields { found, wanted });
            }
        }
    }
    if rows.iter().skip(1).all(Row::is_empty) {
        let end = text.find('\n').unwrap_or(text.len());
        remarks.error(0..end, ColumnsFinding::Nothing);
    }
    Read::new(Some(lines), remarks.into_vec())
}

/// Where each column stands, by its name.
fn columns(head: &Row, remarks: &Remarks) -> BTreeMap<&'static str, usize> {
    let mut columns = BTreeMap::new();
    for (at, Field { text, span }) in head.fields.iter().enumerate() {
        match COLUMNS.iter().find(|known| *known == text) {
            Some(known) if columns.contains_key(known) => {
                remarks.error(span.clone(), ColumnsFinding::ColumnTwice(known));
            }
            Some(known) => {
                columns.insert(*known, at);
            }
            None => {
                let (written, near) = (text.clone(), near(&text.to_lowercase(), &COLUMNS));
                let unknown = ColumnsFinding::UnknownColumn { written, near, known: &COLUMNS };
                remarks.error(span.clone(), unknown);
            }
        }
    }
    let has = |name| columns.contains_key(name);
    let missing: &[&'static str] = match (has("layout"), has("client")) {
        (false, true) => &[],
        _ => &["layout", "size", "quantity"],
    };
    for name in missing.iter().filter(|name| !has(name)) {
        remarks.error(head.span.clone(), ColumnsFinding::NoColumn(name));
    }
    columns
}

/// What was read so far.
struct Reader<'a> {
    text: &'a str,
    columns: BTreeMap<&'static str, usize>,
    remarks: &'a Remarks,
    /// The line of each serial, in small letters.
    serials: BTreeMap<String, usize>,
    /// The line of each client's file.
    clients: BTreeMap<String, usize>,
    cushions: usize,
}

impl Reader<'_> {
    /// The field under a column that says something.
    fn field<'r>(&self, row: &'r Row, column: &str) -> Option<&'r Field> {
        let field = &row.fields[*self.columns.get(column)?];
        (!field.text.is_empty()).then_some(field)
    }

    fn error(&self, field: &Field, finding: OrderFinding) {
        self.remarks.error(field.span.clone(), finding);
    }

    /// One line; none where it cannot be understood.
    fn line(&mut self, row: &Row) -> Option<OrderLine> {
        let line = place_of(self.text, row.span.start).line;
        let (layout, client) = (self.field(row, "layout"), self.field(row, "client"));
        let quantity = self.quantity(row);
        let serials = self.serials(row, line);
        let what = match (layout, client) {
            (_, Some(client)) => self.client(row, client, (quantity, line)),
            (Some(layout), None) => self.stock(row, layout),
            (None, None) => {
                self.remarks.error(row.span.clone(), OrderFinding::NothingNamed);
                None
            }
        };
        let quantity = quantity?;
        if let (Some(field), Some(own)) = (self.field(row, "serials"), &serials)
            && own.len() != quantity as usize
        {
            let serials = own.len();
            self.error(field, OrderFinding::SerialCount { serials, quantity });
        }
        let own = client.or(layout)?.span.clone();
        let place = |column| self.field(row, column).map_or(own.clone(), |it| it.span.clone());
        let places =
            OrderPlaces { what: own.clone(), cell: place("cell"), serials: place("serials") };
        Some(OrderLine { line, what: what?, quantity, serials: serials?, places })
    }

    /// A client's file, which says all but the serial.
    fn client(
        &mut self,
        row: &Row,
        client: &Field,
        (quantity, line): (Option<u32>, usize),
    ) -> Option<Ordered> {
        for column in ["layout", "size", "cell"] {
            if let Some(field) = self.field(row, column) {
                self.error(field, OrderFinding::BesideClient(column));
            }
        }
        if let Some(many) = quantity.filter(|own| *own > 1) {
            let field = self.field(row, "quantity").unwrap_or(client);
            self.error(field, OrderFinding::OneForClient(many));
        }
        let file = client.text.clone();
        if let Some(line) = self.clients.get(&file).copied() {
            self.error(client, OrderFinding::ClientTwice { file, line });
            return None;
        }
        self.clients.insert(file.clone(), line);
        Some(Ordered::Client(file))
    }

    fn stock(&self, row: &Row, layout: &Field) -> Option<Ordered> {
        let cell = self.field(row, "cell").map(|own| own.text.clone());
        let Some(size) = self.field(row, "size") else {
            self.error(layout, OrderFinding::NoSize);
            return None;
        };
        match size.text.parse::<Size>() {
            Ok(size) => Some(Ordered::Stock { layout: layout.text.clone(), size, cell }),
            Err(error) => {
                let meant = size_meant(&size.text);
                self.remarks.error(size.span.clone(), WordFinding::Size(error, meant));
                None
            }
        }
    }

    /// How many; one of a client where nothing is written.
    fn quantity(&mut self, row: &Row) -> Option<u32> {
        let Some(field) = self.field(row, "quantity") else {
            if self.field(row, "client").is_some() {
                self.cushions += 1;
                return Some(1);
            }
            let at = self.field(row, "layout").map_or(row.span.clone(), |own| own.span.clone());
            self.remarks.error(at, OrderFinding::Quantity(String::new()));
            return None;
        };
        // Nothing but digits: no sign, no point, no unit.
        let digits = field.text.bytes().all(|own| own.is_ascii_digit());
        let quantity = field.text.parse::<u32>().ok().filter(|own| digits && *own > 0);
        let Some(quantity) = quantity else {
            self.error(field, OrderFinding::Quantity(field.text.clone()));
            return None;
        };
        let before = self.cushions;
        self.cushions = self.cushions.saturating_add(quantity as usize);
        if before <= MOST_CUSHIONS && self.cushions > MOST_CUSHIONS {
            self.error(field, OrderFinding::TooMany { most: MOST_CUSHIONS });
        }
        Some(quantity)
    }

    /// The serials, runs written out; none where one is wrong.
    fn serials(&mut self, row: &Row, line: usize) -> Option<Vec<String>> {
        let Some(field) = self.field(row, "serials") else { return Some(Vec::new()) };
        let mut serials = Vec::new();
        for written in field.text.split_whitespace() {
            match one_or_run(written) {
                Ok(own) => serials.extend(own),
                Err(finding) => {
                    self.error(field, finding);
                    return None;
                }
            }
        }
        for serial in &serials {
            if let Some(before) = self.serials.insert(serial.to_lowercase(), line) {
                let serial = serial.clone();
                self.error(field, OrderFinding::SerialTwice { serial, line: before });
                return None;
            }
        }
        Some(serials)
    }
}

/// Whether a text can be a serial.
fn is_serial(text: &str) -> bool {
    let fits = (1..=LONGEST_SERIAL).contains(&text.len());
    let letter = |own: char| own.is_ascii_alphanumeric() || ".-_/".contains(own);
    fits && text.chars().all(letter) && text.contains(|own: char| own.is_ascii_alphanumeric())
}

/// A serial, or the run of serials that `S-101..S-112` stands for.
fn one_or_run(written: &str) -> Result<Vec<String>, OrderFinding> {
    let Some((first, last)) = written.split_once("..") else {
        let wrong = || OrderFinding::Serial(written.to_owned());
        return if is_serial(written) { Ok(vec![written.to_owned()]) } else { Err(wrong()) };
    };
    let wrong = || OrderFinding::SerialRun(written.to_owned());
    let parted = |text: &str| {
        let digits = text.bytes().rev().take_while(u8::is_ascii_digit).count();
        let (before, number) = text.split_at(text.len() - digits);
        is_serial(text).then(|| Some((before.to_owned(), digits, number.parse::<u64>().ok()?)))?
    };
    let (Some((before, digits, from)), Some((same, as_many, to))) = (parted(first), parted(last))
    else {
        return Err(wrong());
    };
    if before != same || digits != as_many || from >= to || to - from >= MOST_CUSHIONS as u64 {
        return Err(wrong());
    }
    Ok((from..=to).map(|number| format!("{before}{number:0digits$}")).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_keep_their_noughts_and_end_where_they_say() {
        let run = one_or_run("S-098..S-101").unwrap();
        assert_eq!(run, ["S-098", "S-099", "S-100", "S-101"]);
        assert_eq!(one_or_run("A/7").unwrap(), ["A/7"]);
        for wrong in [
            "S-9..S-10",
            "S-12..S-11",
            "S-1..S-1",
            "S-1..T-2",
            "S..T",
            "S-1..S-2..S-3",
            "S-0001..S-9999",
            "..",
            "S-1..",
            "S-00000000000000000001..S-00000000000000000002..",
        ] {
            assert!(one_or_run(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_serial_is_what_a_tag_has_room_for() {
        for right in ["1", "SW-0142", "2026/03_A.1", &"A".repeat(16)] {
            assert!(is_serial(right), "{right}");
        }
        for wrong in ["", "-", "S 1", "S,1", "Ä1", &"A".repeat(17), "S\u{a0}1"] {
            assert!(!is_serial(wrong), "{wrong}");
        }
    }
}
