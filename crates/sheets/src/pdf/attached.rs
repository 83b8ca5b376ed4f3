//! The text that a PDF carries beside its pages, as an associated file after ISO 19005-3 and
//! ISO 32000-1, 7.11.4: written, and read again.

use std::io::Read as _;

use flate2::read::ZlibDecoder;
use lopdf::{Dictionary, Document as Pdf, Object, Stream, dictionary};

use super::finish::text;
use crate::page::Attached;

/// The name of the file.
const NAME: &str = "seatwright-code.txt";
/// The most bytes of a file that is read.
const MOST_BYTES: u64 = 2000;

/// Why no text is read from a PDF.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAttachment {
    /// It cannot be read as a PDF.
    NoPdf,
    /// It carries no text of ours.
    None,
}

/// Attaches a text to the document as a whole.
pub(super) fn attach(pdf: &mut Pdf, own: &Attached, date: case::Date) {
    let params = dictionary! {
        "Size" => own.text.len() as i64,
        "ModDate" => Object::string_literal(format!("D:{}000000Z", date.strftime("%Y%m%d"))),
    };
    let stream = dictionary! {
        "Type" => "EmbeddedFile",
        "Subtype" => "text/plain",
        "Params" => params,
    };
    let stream = Stream::new(stream, own.text.clone().into_bytes()).with_compression(false);
    let stream = pdf.add_object(stream);
    let file = pdf.add_object(dictionary! {
        "Type" => "Filespec",
        "F" => Object::string_literal(NAME),
        "UF" => text(NAME),
        "Desc" => text(&own.about),
        // What the pages show, once more for machines.
        "AFRelationship" => "Data",
        "EF" => dictionary! { "F" => stream, "UF" => stream },
    });
    let names = dictionary! { "Names" => vec![Object::string_literal(NAME), file.into()] };
    if let Ok(catalog) = pdf.catalog_mut() {
        catalog.set("Names", dictionary! { "EmbeddedFiles" => names });
        catalog.set("AF", vec![file.into()]);
    }
}

/// Returns the text that [`super::pdf`] attached to a file.
///
/// # Errors
///
/// Fails where the file is no PDF, or carries no such text.
pub fn attached_code(bytes: &[u8]) -> Result<String, NoAttachment> {
    let pdf = Pdf::load_mem(bytes).map_err(|_| NoAttachment::NoPdf)?;
    let catalog = pdf.catalog().map_err(|_| NoAttachment::NoPdf)?;
    let files = files(&pdf, catalog);
    files.into_iter().find_map(|file| ours(&pdf, file)).ok_or(NoAttachment::None)
}

/// The files of the document as a whole: in the tree of names, and those of the catalog.
fn files<'a>(pdf: &'a Pdf, catalog: &'a Dictionary) -> Vec<&'a Dictionary> {
    let listed = |dictionary: &'a Dictionary, key: &[u8]| {
        let list = dictionary.get_deref(key, pdf).and_then(Object::as_array);
        list.map_or_else(|_| Vec::new(), |list| list.iter().collect())
    };
    let dictionary =
        |of: &'a Dictionary, key: &[u8]| of.get_deref(key, pdf).and_then(Object::as_dict).ok();
    let names = dictionary(catalog, b"Names").and_then(|own| dictionary(own, b"EmbeddedFiles"));
    let mut found = names.map_or_else(Vec::new, |own| listed(own, b"Names"));
    // What writes a file anew may part the tree into branches.
    for branch in names.map_or_else(Vec::new, |own| listed(own, b"Kids")) {
        found.extend(as_dictionary(pdf, branch).map_or_else(Vec::new, |own| listed(own, b"Names")));
    }
    found.extend(listed(catalog, b"AF"));
    found.into_iter().filter_map(|object| as_dictionary(pdf, object)).collect()
}

fn as_dictionary<'a>(pdf: &'a Pdf, object: &'a Object) -> Option<&'a Dictionary> {
    pdf.dereference(object).ok()?.1.as_dict().ok()
}

/// The text of a file, where it is called as ours.
fn ours(pdf: &Pdf, file: &Dictionary) -> Option<String> {
    let called = |key: &[u8]| {
        file.get_deref(key, pdf).and_then(Object::as_str).is_ok_and(|own| own == NAME.as_bytes())
    };
    if !called(b"F") && !called(b"UF") {
        return None;
    }
    let embedded = file.get_deref(b"EF", pdf).and_then(Object::as_dict).ok()?;
    let stream = embedded.get_deref(b"F", pdf).and_then(Object::as_stream).ok()?;
    let mut bytes = Vec::new();
    match stream.filters() {
        Ok(filters) if !filters.is_empty() => {
            if filters != [b"FlateDecode"] {
                return None;
            }
            let inflated = ZlibDecoder::new(stream.content.as_slice());
            inflated.take(MOST_BYTES).read_to_end(&mut bytes).ok()?;
        }
        _ => bytes.extend(stream.content.iter().take(MOST_BYTES as usize)),
    }
    String::from_utf8(bytes).ok()
}
