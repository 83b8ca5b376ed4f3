//! Finishes a PDF: language, viewer preferences, metadata, tags, and identifiers that depend on
//! the content alone.

use std::io::Write as _;

use flate2::Compression;
use flate2::write::ZlibEncoder;
use lopdf::{Document as Pdf, Object, Stream, StringFormat, dictionary};

use super::attached::attach;
use super::icc;
use super::structure::add_structure;
use crate::page::Document;

/// Adds what is missing and returns the bytes of the file.
pub(super) fn finish(mut pdf: Pdf, document: &Document) -> Vec<u8> {
    // Viewer preferences of version 1.6 and 1.7 are used.
    "1.7".clone_into(&mut pdf.version);
    let metadata = pdf.add_object(xmp(document));
    let profile = pdf.add_object(Stream::new(dictionary! { "N" => 3 }, icc::srgb()));
    let intent = Object::Dictionary(dictionary! {
        "Type" => "OutputIntent",
        "S" => "GTS_PDFA1",
        "OutputConditionIdentifier" => Object::string_literal(icc::NAME),
        "Info" => Object::string_literal(icc::NAME),
        "DestOutputProfile" => profile,
    });
    if let Ok(catalog) = pdf.catalog_mut() {
        catalog.set("Lang", text(&document.language));
        catalog.set("PageMode", "UseNone");
        catalog.set(
            "ViewerPreferences",
            dictionary! {
                "PrintScaling" => "None",
                "PickTrayByPDFSize" => true,
                "DisplayDocTitle" => true,
            },
        );
        catalog.set("Metadata", metadata);
        catalog.set("OutputIntents", vec![intent]);
    }
    info(&mut pdf, document);
    if let Some(own) = &document.attached {
        attach(&mut pdf, own, document.date);
    }
    add_structure(&mut pdf, &document.pages, &document.language);
    pdf.prune_objects();
    pdf.renumber_objects();
    compress(&mut pdf);
    let id = Object::String(NO_ID.to_vec(), StringFormat::Hexadecimal);
    pdf.trailer.set("ID", vec![id.clone(), id]);
    identified(bytes(&mut pdf))
}

/// What stands for the identifier until the file is written.
const NO_ID: [u8; 16] = *b"seatwright no id";

/// Puts the identifier in place of what stands for it: it is as long, and nothing else moves.
fn identified(mut file: Vec<u8>) -> Vec<u8> {
    let id = hexadecimal(&content_id(&file));
    let stands = hexadecimal(&NO_ID);
    // The trailer is the last in the file.
    for _ in 0..2 {
        let at = file.windows(stands.len()).rposition(|own| own.eq_ignore_ascii_case(&stands));
        let at = at.expect("the trailer holds the identifier twice");
        file[at..at + id.len()].copy_from_slice(&id);
    }
    file
}

fn hexadecimal(bytes: &[u8]) -> Vec<u8> {
    bytes.iter().flat_map(|byte| format!("{byte:02X}").into_bytes()).collect()
}

/// How hard is tried to make streams small: the usual level.
const LEVEL: Compression = Compression::new(6);

/// Compresses what gets smaller by it. What would end in a line break is left as it was: a reader
/// that looks for the line break before `endstream` would take that for a part of it, and the length
/// for wrong.
fn compress(pdf: &mut Pdf) {
    let streams = pdf.objects.values_mut().filter_map(|object| object.as_stream_mut().ok());
    for stream in streams.filter(|own| own.allows_compression && !own.dict.has(b"Filter")) {
        let mut encoder = ZlibEncoder::new(Vec::new(), LEVEL);
        let written = encoder.write_all(&stream.content).and_then(|()| encoder.finish());
        let small = written.expect("writing to memory does not fail");
        if small.len() < stream.content.len() && !matches!(small.last(), Some(b'\r' | b'\n')) {
            stream.dict.set("Filter", "FlateDecode");
            stream.set_content(small);
        }
    }
}

fn bytes(pdf: &mut Pdf) -> Vec<u8> {
    let mut bytes = Vec::new();
    pdf.save_to(&mut bytes).expect("writing to memory does not fail");
    bytes
}

/// The document's facts, and no empty ones.
fn info(pdf: &mut Pdf, document: &Document) {
    let Ok(id) = pdf.trailer.get(b"Info").and_then(Object::as_reference) else { return };
    let Ok(info) = pdf.get_object_mut(id).and_then(Object::as_dict_mut) else { return };
    let empty: Vec<Vec<u8>> = info
        .iter()
        .filter(|(_, value)| matches!(value, Object::String(text, _) if text.is_empty()))
        .map(|(key, _)| key.clone())
        .collect();
    for key in empty {
        info.remove(&key);
    }
    info.set("Title", text(&document.title));
    info.set("Subject", text(&document.subject));
}

/// A text as PDF writes it: plain where it is ASCII, otherwise UTF-16 with a mark of its order.
pub(super) fn text(text: &str) -> Object {
    if text.is_ascii() {
        return Object::string_literal(text);
    }
    let units = text.encode_utf16().flat_map(u16::to_be_bytes);
    Object::String([0xFE, 0xFF].into_iter().chain(units).collect(), StringFormat::Hexadecimal)
}

/// The facts again, as metadata, with what the file claims to be.
fn xmp(document: &Document) -> Stream {
    let escaped = |text: &str| text.replace('&', "&amp;").replace('<', "&lt;");
    let packet = format!(
        "<?xpacket begin=\"\u{feff}\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n\
         <x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\
         <rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" \
         xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\
         <dc:format>application/pdf</dc:format>\
         <dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{title}</rdf:li></rdf:Alt></dc:title>\
         <dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">{subject}</rdf:li></rdf:Alt></dc:description>\
         <dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>\
         <xmp:CreateDate>{date}T00:00:00Z</xmp:CreateDate>\
         <xmp:ModifyDate>{date}T00:00:00Z</xmp:ModifyDate>\
         <xmp:CreatorTool>{program}</xmp:CreatorTool><pdf:Producer>{program}</pdf:Producer>\
         </rdf:Description>{CLAIMS}</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>",
        title = escaped(&document.title),
        subject = escaped(&document.subject),
        language = escaped(&document.language),
        program = escaped(&document.program),
        date = document.date,
    );
    let dictionary = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    Stream::new(dictionary, packet.into_bytes()).with_compression(false)
}

/// What the file claims to be: PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1), whose
/// identifier PDF/A does not know and has to be told.
const CLAIMS: &str = concat!(
    "<rdf:Description rdf:about=\"\" xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">",
    "<pdfaid:part>3</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance></rdf:Description>",
    "<rdf:Description rdf:about=\"\" xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">",
    "<pdfuaid:part>1</pdfuaid:part></rdf:Description>",
    "<rdf:Description rdf:about=\"\" xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\" ",
    "xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\" ",
    "xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\">",
    "<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType=\"Resource\">",
    "<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>",
    "<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>",
    "<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>",
    "<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType=\"Resource\">",
    "<pdfaProperty:name>part</pdfaProperty:name>",
    "<pdfaProperty:valueType>Integer</pdfaProperty:valueType>",
    "<pdfaProperty:category>internal</pdfaProperty:category>",
    "<pdfaProperty:description>The part of ISO 14289 that the file conforms to</pdfaProperty:description>",
    "</rdf:li></rdf:Seq></pdfaSchema:property></rdf:li></rdf:Bag></pdfaExtension:schemas>",
    "</rdf:Description>",
);

/// Sixteen bytes that depend on the whole file: FNV-1a, twice with different beginnings.
///
/// Nothing hangs on this being hard to forge; it only tells two files apart.
fn content_id(file: &[u8]) -> Vec<u8> {
    const PRIME: u64 = 0x0000_0100_0000_01B3;
    const BEGINNINGS: [u64; 2] = [0xCBF2_9CE4_8422_2325, 0x8422_2325_CBF2_9CE4];
    let half = |beginning: u64| {
        file.iter().fold(beginning, |half, byte| (half ^ u64::from(*byte)).wrapping_mul(PRIME))
    };
    BEGINNINGS.into_iter().flat_map(|beginning| half(beginning).to_be_bytes()).collect()
}
