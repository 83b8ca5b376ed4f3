//! Restoring: what the code on a card says, and a client's file made of such a code.

use case::{
    CardCode, ClientCode, CodePart, Date, DigestHead, Entry, Filled, LayoutRef, NoCardCode,
    NotRestored, PlanMark, RecordedPlan, Restored, Trouble,
};
use cushion::{Cell, Layout, Name, Pattern};
use files::starter::RestoredCushion;
use sheets::NoAttachment;
use words::Language;

use crate::error::{Whose, WorkError};
use crate::open_case::OpenCase;
use crate::papers::check_word_of;
use crate::sourced::{Sourced, pattern};
use crate::surroundings::Surroundings;

/// A code, and what is at hand beside it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Lost<'a> {
    /// The text of the code.
    pub text: &'a str,
    /// The file of the layout, where it is one, and how the client's file is to name it.
    pub layout: Option<[&'a str; 2]>,
    /// The same of the cell.
    pub cell: Option<[&'a str; 2]>,
    /// Values for the parameters of a layout that takes some.
    pub parameters: &'a [(Name, f64)],
    /// The serial on the tag of the cushion at hand.
    pub serial: Option<&'a str>,
    /// The code that stands for the client, where somebody gives one and the text has none.
    pub client: Option<&'a ClientCode>,
}

/// A client's file that was made of a code, and is not written yet.
#[derive(Clone, Debug)]
pub struct RestoredFile {
    /// Its text.
    pub text: String,
    /// What is to be said about it.
    pub restored: Restored,
}

/// Returns the text of the code that a PDF of ours carries.
///
/// # Errors
///
/// Fails where the file cannot be read, is no PDF, or carries no code.
pub fn code_in_pdf(surroundings: Surroundings<'_>, name: &str) -> Result<String, WorkError> {
    let bytes = surroundings.shelf.read(name)?;
    code_in_bytes(name, &bytes)
}

/// The same of the bytes of a PDF that is called so.
///
/// # Errors
///
/// Fails where they are no PDF, or carry no code.
pub fn code_in_bytes(name: &str, bytes: &[u8]) -> Result<String, WorkError> {
    let file = name.to_owned();
    sheets::attached_code(bytes).map_err(|why| {
        WorkError::file(Trouble::NotRestored(match why {
            NoAttachment::NoPdf => NotRestored::NoPdf { file },
            NoAttachment::None => NotRestored::NothingAttached { file },
        }))
    })
}

/// Makes the file of a client, which is to be called so, of a code. Nothing is written.
///
/// What the code does not say is blank. The counts are in the record as put in on the day when the
/// code was read; nothing says that anybody checked them.
///
/// # Errors
///
/// Fails where the text is no code that checks, the layout or the cell that it needs is not there,
/// or the cushion at hand has another serial.
pub fn restored(
    surroundings: Surroundings<'_>,
    lost: &Lost<'_>,
    file: &str,
    (on, language): (Date, &dyn Language),
) -> Result<RestoredFile, WorkError> {
    let code = files::read_card_text(lost.text).map_err(|why| refused(NotRestored::Code(why)))?;
    compare_serial(lost, &code)?;
    let cell = cell(surroundings, lost, &code)?;
    let mut layout = layout(surroundings, lost, &code)?;
    let pattern = pattern(&mut layout, code.size, &cell.value)?;
    compare_counts(lost, &code, &pattern, [&layout.digest(), &cell.digest()])?;
    let named = RestoredCushion {
        layout: lost.layout.map_or(code.layout.as_str(), |[_, named]| named),
        cell: lost.cell.map_or(code.cell.as_str(), |[_, named]| named),
        parameters: lost.parameters,
        client: code.client.as_ref().or(lost.client),
    };
    let head = language.restored_head(&code);
    let text = files::starter::restored(language, &head, &code, named);
    let numbers = pattern.compartments().iter().map(|own| own.number);
    let filled = Entry::Filled(Filled {
        on,
        by: language.restored_by().to_owned(),
        cushion: Some((named.layout.to_owned(), code.size)),
        counts: numbers.zip(code.counts.iter().copied()).collect(),
        spare: None,
        batch: None,
        serial: code.serial.clone(),
        why: Some(language.restored_from(&code)),
    });
    let text = files::append_entry(&text, &filled).map_err(|why| {
        WorkError::new(Whose::Ours, Trouble::NotAppended { file: file.to_owned(), why })
    })?;
    Ok(RestoredFile { text, restored: Restored { file: file.to_owned(), code } })
}

fn refused(why: NotRestored) -> WorkError {
    WorkError::asked(Trouble::NotRestored(why))
}

/// Compares the serial on the tag, where one is given.
fn compare_serial(lost: &Lost<'_>, code: &CardCode) -> Result<(), WorkError> {
    let Some(given) = lost.serial.map(|own| own.trim().to_owned()) else { return Ok(()) };
    match code.serial.clone() {
        Some(coded) if coded == given => Ok(()),
        Some(coded) => Err(refused(NotRestored::OtherSerial { given, coded })),
        None => Err(refused(NotRestored::NoSerial { given })),
    }
}

/// The layout of a code: from the file that was given, else from where layouts come.
fn layout(
    surroundings: Surroundings<'_>,
    lost: &Lost<'_>,
    code: &CardCode,
) -> Result<Sourced<Layout>, WorkError> {
    let (part, name, head) = (CodePart::Layout, code.layout.clone(), code.layout_digest.clone());
    let found = match lost.layout {
        Some([file, _]) => surroundings.layout_file(file)?,
        None => {
            surroundings.layout(&code.layout, code.size).map_err(|error| match *error.what {
                Trouble::Layout(ref why) if why.is_unknown_name() => {
                    refused(NotRestored::Needed { part, name: name.clone(), head: head.clone() })
                }
                _ => error,
            })?
        }
    };
    is_the_one(&found, (part, name, head))?;
    Ok(found)
}

/// The cell of a code: from the file that was given, else a built-in one.
fn cell(
    surroundings: Surroundings<'_>,
    lost: &Lost<'_>,
    code: &CardCode,
) -> Result<Sourced<Cell>, WorkError> {
    let (part, name, head) = (CodePart::Cell, code.cell.clone(), code.cell_digest.clone());
    let word = lost.cell.map_or(code.cell.as_str(), |[file, _]| file);
    let found = surroundings.cell(Some(word)).map_err(|error| match *error.what {
        Trouble::UnknownCell { .. } if lost.cell.is_none() => {
            refused(NotRestored::Needed { part, name: name.clone(), head: head.clone() })
        }
        _ => error,
    })?;
    is_the_one(&found, (part, name, head))?;
    Ok(found)
}

/// Refuses another text than the one that a code was made with.
fn is_the_one<T>(
    found: &Sourced<T>,
    (part, name, head): (CodePart, String, DigestHead),
) -> Result<(), WorkError> {
    let digest = found.digest();
    if DigestHead::of(&digest) == head {
        return Ok(());
    }
    let there = found.file.shown();
    Err(refused(NotRestored::OtherText { part, name, head, there, digest }))
}

/// Refuses counts that are not one for each compartment, or whose check word is another. A layout
/// that is a file was named by its path, which nobody knows any more: its check word is not compared.
fn compare_counts(
    lost: &Lost<'_>,
    code: &CardCode,
    pattern: &Pattern,
    digests: [&case::Digest; 2],
) -> Result<(), WorkError> {
    let there = pattern.compartments();
    let (counts, compartments) = (code.counts.len(), there.len());
    if counts != compartments {
        let (layout, size) = (code.layout.clone(), code.size);
        let why = NotRestored::OtherCompartments { layout, size, counts, compartments };
        return Err(refused(why));
    }
    let each = there.iter().zip(&code.counts).map(|(own, cells)| (own.number, &own.id, *cells));
    let word = check_word_of((&code.layout, code.size), digests, each);
    if word == code.mark.word || lost.layout.is_some() {
        return Ok(());
    }
    Err(refused(NotRestored::OtherWord { word: code.mark.word.clone() }))
}

impl OpenCase {
    /// The text of the code on papers of a plan; the client's code is in it where it is wanted.
    ///
    /// # Errors
    ///
    /// Fails where it finds no room.
    pub(crate) fn card_text(
        &self,
        (plan, mark): (&RecordedPlan, &PlanMark),
        with_client: bool,
    ) -> Result<String, NoCardCode> {
        let client = &self.client.value;
        files::card_text(&CardCode {
            layout: self.layout_in_code(&plan.layout),
            layout_digest: DigestHead::of(&plan.layout_digest),
            cell: self.cell.value.name.to_string(),
            cell_digest: DigestHead::of(&plan.cell_digest),
            size: plan.size,
            counts: plan.counts.iter().map(|own| own.planned).collect(),
            mark: mark.clone(),
            serial: client.serial().map(str::to_owned),
            client: with_client.then(|| client.code.clone()),
        })
    }

    /// How a code calls the layout of a plan: as a source of layouts knows it; of a file, by the name
    /// in it, since paths lead nowhere elsewhere.
    fn layout_in_code(&self, planned: &str) -> String {
        let from_source = !LayoutRef::is_path(planned)
            && (self.layout.drawn_by.is_some() || self.pattern.layout().as_str() == planned);
        if from_source { planned.to_owned() } else { self.pattern.layout().to_string() }
    }
}
