//! The fields of a table of comma-separated values (RFC 4180), each with its place in the text.

use std::ops::Range;

use case::text::ColumnsFinding;

use crate::cursor::Remarks;

/// One field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Field {
    /// What it says, without quotes and without spaces around it.
    pub(crate) text: String,
    /// Where; a field of nothing has a place of no length.
    pub(crate) span: Range<usize>,
}

/// One line with its fields.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Row {
    /// The fields, one at least.
    pub(crate) fields: Vec<Field>,
    /// Where it stands, without its end.
    pub(crate) span: Range<usize>,
}

impl Row {
    /// Whether it says nothing, as lines that spreadsheets save below a table.
    pub(crate) fn is_empty(&self) -> bool {
        self.fields.iter().all(|own| own.text.is_empty())
    }
}

/// Returns the lines of a table, the heading first. Fields are parted by commas, or, where the
/// heading has none, by semicolons or tabs, as spreadsheets of some countries save them.
pub(crate) fn rows(text: &str, remarks: &Remarks) -> Vec<Row> {
    let start = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    let head = text[start..].split(['\n', '\r']).next().unwrap_or_default();
    let separator =
        *[b',', b';', b'\t'].iter().find(|own| head.contains(**own as char)).unwrap_or(&b',');
    let mut reader = Reader { text, at: start, separator, remarks };
    let mut rows = Vec::new();
    while reader.at < text.len() {
        match reader.row() {
            Some(row) => rows.push(row),
            // What follows quotes that do not end is not known.
            None => break,
        }
    }
    rows
}

/// Reads fields one after the other.
struct Reader<'a> {
    text: &'a str,
    at: usize,
    separator: u8,
    remarks: &'a Remarks,
}

impl Reader<'_> {
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn ends_field(&self, byte: u8) -> bool {
        byte == self.separator || byte == b'\n' || byte == b'\r'
    }

    /// The next line; none where its quotes do not end.
    fn row(&mut self) -> Option<Row> {
        let start = self.at;
        let mut fields = vec![self.field()?];
        while self.byte() == Some(self.separator) {
            self.at += 1;
            fields.push(self.field()?);
        }
        let span = start..self.at;
        if self.byte() == Some(b'\r') {
            self.at += 1;
        }
        if self.byte() == Some(b'\n') {
            self.at += 1;
        }
        Some(Row { fields, span })
    }

    /// The next field, up to what ends it.
    fn field(&mut self) -> Option<Field> {
        while self.byte() == Some(b' ') {
            self.at += 1;
        }
        let start = self.at;
        if self.byte() == Some(b'"') {
            return self.quoted(start);
        }
        self.skip_to_end();
        let written = self.text[start..self.at].trim_end();
        let span = start..start + written.len();
        if written.contains('"') {
            self.remarks.error(span.clone(), ColumnsFinding::Quotes);
        }
        Some(Field { text: written.to_owned(), span })
    }

    /// A field in quotes; in it two of them stand for one.
    fn quoted(&mut self, start: usize) -> Option<Field> {
        let mut said = String::new();
        let mut from = start + 1;
        loop {
            let Some(quote) = self.text[from..].find('"').map(|at| from + at) else {
                self.remarks.error(start..start + 1, ColumnsFinding::Quotes);
                return None;
            };
            said += &self.text[from..quote];
            from = quote + 1;
            if self.text[from..].starts_with('"') {
                said.push('"');
                from += 1;
            } else {
                break;
            }
        }
        self.at = from;
        self.skip_to_end();
        if !self.text[from..self.at].trim().is_empty() {
            self.remarks.error(start..self.at, ColumnsFinding::Quotes);
        }
        Some(Field { text: said.trim().to_owned(), span: start..from })
    }

    fn skip_to_end(&mut self) {
        while self.byte().is_some_and(|own| !self.ends_field(own)) {
            self.at += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (Vec<Vec<String>>, usize) {
        let remarks = Remarks::default();
        let rows = rows(text, &remarks);
        let texts =
            rows.into_iter().map(|row| row.fields.into_iter().map(|own| own.text).collect());
        (texts.collect(), crate::Read::new(Some(()), remarks.into_vec()).remarks.len())
    }

    /// The rules 2 to 7 of RFC 4180, each in a line.
    #[test]
    fn fields_are_read_as_the_standard_writes_them() {
        let (found, faults) = read("a,b\r\n1, 2 \n\"x,\"\"y\"\"\",\n,\"two\nlines\"");
        let wanted = [["a", "b"], ["1", "2"], ["x,\"y\"", ""], ["", "two\nlines"]];
        assert_eq!(
            (found, faults),
            (wanted.map(|row| row.map(str::to_owned).to_vec()).to_vec(), 0)
        );
    }

    #[test]
    fn spreadsheets_of_all_countries_are_read() {
        for text in ["a;b\n1,5;2\n", "\u{feff}a;b\r\n1,5;2\r\n", "a\tb\r1,5\t2\r"] {
            let (found, faults) = read(text);
            assert_eq!((found[1].clone(), faults), (vec!["1,5".to_owned(), "2".to_owned()], 0));
            assert_eq!(found[0][0], "a");
        }
    }

    #[test]
    fn places_are_those_of_the_text() {
        let text = "a,b\n \"x\"\"y\" ,  zwölf \n";
        let found = rows(text, &Remarks::default());
        let places: Vec<&str> = found[1].fields.iter().map(|own| &text[own.span.clone()]).collect();
        assert_eq!(places, ["\"x\"\"y\"", "zwölf"]);
    }

    #[test]
    fn quotes_that_go_around_no_whole_field_are_told() {
        for text in ["a,b\n\"x,y\n", "a,b\nx\"y,z\n", "a,b\n\"x\"y,z\n"] {
            assert_eq!(read(text).1, 1, "{text}");
        }
    }
}
