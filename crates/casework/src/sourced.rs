//! From words to values: layouts, cells and clients, built in or read from files.

use std::collections::BTreeMap;

use case::{BodyMeasure, Client, Digest, FileKind, LayoutRef, LayoutRequest, Measured, Trouble};
use cushion::{Cell, Fault, Layout, Length, MadeSize, Mass, Name, Pattern, Size};
use files::{BUILT_IN_CELLS, Read};

use crate::error::{Whose, WorkError};
use crate::file_remarks::FileRemarks;
use crate::shelf::Why;
use crate::surroundings::Surroundings;

/// A value with the text that it was read from.
#[derive(Clone, Debug)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// What is to be said about the text, though it can be used; with its name and the text.
    pub file: FileRemarks,
    /// The program that wrote the text and its version, where one did.
    pub drawn_by: Option<String>,
}

impl<T> Sourced<T> {
    /// By which the text is known again.
    #[must_use]
    pub fn digest(&self) -> Digest {
        files::digest(&self.file.text)
    }

    /// Takes what was understood of a text.
    fn new(path: String, text: String, read: Read<T>) -> Result<Self, WorkError> {
        let Read { value, remarks } = read;
        let file = FileRemarks { path, text, remarks };
        match value {
            Some(value) => Ok(Self { value, file, drawn_by: None }),
            None => Err(WorkError::wrong_file(file)),
        }
    }
}

/// Reads a client from the text of a file that is called `name`.
///
/// # Errors
///
/// Fails where the text is no right client's file.
pub fn client_text(name: String, text: String) -> Result<Sourced<Client>, WorkError> {
    let read = files::read_client(&text);
    Sourced::new(name, text, read)
}

impl Surroundings<'_> {
    /// Reads a client's file.
    ///
    /// # Errors
    ///
    /// Fails where it cannot be read or is wrong.
    pub fn client(&self, name: &str) -> Result<Sourced<Client>, WorkError> {
        let text = self.text(name)?;
        says_what_it_is(name, &text, FileKind::Client)?;
        client_text(name.to_owned(), text)
    }

    /// Finds a layout by its name, for a size: one that the source of layouts has, else a file.
    ///
    /// # Errors
    ///
    /// Fails where there is none, or it is wrong.
    pub fn layout(&self, word: &str, size: Size) -> Result<Sourced<Layout>, WorkError> {
        let request = LayoutRequest { name: word.to_owned(), size, parameters: BTreeMap::new() };
        self.named_layout(&request, word, &|_| None)
    }

    /// The same, but that a file is looked for where `beside` says.
    ///
    /// # Errors
    ///
    /// As [`Self::layout`].
    pub(crate) fn layout_beside(
        &self,
        word: &str,
        size: Size,
        beside: &dyn Fn(&str) -> String,
    ) -> Result<Sourced<Layout>, WorkError> {
        let request = LayoutRequest { name: word.to_owned(), size, parameters: BTreeMap::new() };
        self.named_layout(&request, &beside(word), &|_| None)
    }

    /// Reads a layout from a file, whatever other layout has that name.
    ///
    /// # Errors
    ///
    /// Fails where it cannot be read or is wrong.
    pub fn layout_file(&self, file: &str) -> Result<Sourced<Layout>, WorkError> {
        layout_text(file, self.text(file)?)
    }

    /// Finds the layout that a client's file names.
    ///
    /// # Errors
    ///
    /// As [`Self::layout`]; the error points at the client's file where that can say otherwise.
    pub fn layout_of(&self, client: &Sourced<Client>) -> Result<Sourced<Layout>, WorkError> {
        let chosen = &client.value.cushion;
        let found = self.layout_for(client, &chosen.layout, chosen.size);
        found.map_err(|error| match error.whose {
            Whose::Asker | Whose::Writer => error.named_in(&client.file, "cushion", "layout"),
            _ => error,
        })
    }

    /// Finds a layout for a client, for a size; a file is looked for beside the client's.
    ///
    /// # Errors
    ///
    /// As [`Self::layout`].
    pub(crate) fn layout_for(
        &self,
        client: &Sourced<Client>,
        layout: &LayoutRef,
        size: Size,
    ) -> Result<Sourced<Layout>, WorkError> {
        let parameters: BTreeMap<Name, f64> = match layout {
            LayoutRef::Named { parameters, .. } => parameters.clone(),
            LayoutRef::File(_) => BTreeMap::new(),
        };
        let name = layout.to_string();
        let file = self.shelf.beside(&client.file.path, &name);
        let request = LayoutRequest { name, size, parameters };
        let measured = |measure| measured(&client.value, measure);
        self.named_layout(&request, &file, &measured)
    }

    /// The layout of a request, or that in a file where no source knows the name.
    fn named_layout(
        &self,
        request: &LayoutRequest,
        file: &str,
        measured: Measured<'_>,
    ) -> Result<Sourced<Layout>, WorkError> {
        let unknown = match self.layouts.layout(request, measured) {
            Ok(drawn) => {
                let read = Read { value: Some(drawn.layout), remarks: Vec::new() };
                let sourced = Sourced::new(drawn.origin, drawn.text, read)?;
                return Ok(Sourced { drawn_by: drawn.drawn_by, ..sourced });
            }
            Err(unknown) => unknown,
        };
        if !unknown.is_unknown_name() {
            return Err(unknown.into());
        }
        let text = self.text_or(file, &request.name, || unknown.into())?;
        layout_text(file, text)
    }

    /// Finds the cell that is named; the first built-in one where none is.
    ///
    /// # Errors
    ///
    /// Fails where there is none, or it is wrong.
    pub fn cell(&self, word: Option<&str>) -> Result<Sourced<Cell>, WorkError> {
        let word = word.unwrap_or(BUILT_IN_CELLS[0].name);
        self.named_cell(word, word)
    }

    /// The same, but that a file is looked for where `beside` says.
    ///
    /// # Errors
    ///
    /// As [`Self::cell`].
    pub(crate) fn cell_beside(
        &self,
        word: Option<&str>,
        beside: &dyn Fn(&str) -> String,
    ) -> Result<Sourced<Cell>, WorkError> {
        let word = word.unwrap_or(BUILT_IN_CELLS[0].name);
        self.named_cell(word, &beside(word))
    }

    /// Finds the cell that a client's file names.
    ///
    /// # Errors
    ///
    /// As [`Self::cell`]; the error points at the client's file.
    pub fn cell_of(&self, client: &Sourced<Client>) -> Result<Sourced<Cell>, WorkError> {
        let word = &client.value.cushion.cell;
        let file = self.shelf.beside(&client.file.path, word);
        self.named_cell(word, &file)
            .map_err(|error| error.named_in(&client.file, "cushion", "cell"))
    }

    fn named_cell(&self, word: &str, file: &str) -> Result<Sourced<Cell>, WorkError> {
        if let Some(known) = BUILT_IN_CELLS.iter().find(|known| known.name == word) {
            let read = files::read_cell(known.text);
            return Sourced::new(format!("built-in cell {word}"), known.text.to_owned(), read);
        }
        let text = self.text_or(file, word, || unknown_cell(word))?;
        says_what_it_is(file, &text, FileKind::Cell)?;
        let read = files::read_cell(&text);
        Sourced::new(file.to_owned(), text, read)
    }

    /// The text of a file; where there is none and the word looks like a name, that is unknown.
    fn text_or(
        &self,
        file: &str,
        word: &str,
        unknown: impl FnOnce() -> WorkError,
    ) -> Result<String, WorkError> {
        let looks_like_a_name = !word.contains(['/', '\\', '.']);
        match self.shelf.read(file) {
            Err(error) if looks_like_a_name && error.why == Why::NotFound => Err(unknown()),
            _ => self.text(file),
        }
    }
}

/// Reads a layout from the text of a file.
fn layout_text(file: &str, text: String) -> Result<Sourced<Layout>, WorkError> {
    says_what_it_is(file, &text, FileKind::Layout)?;
    let read = files::read_layout(&text);
    Sourced::new(file.to_owned(), text, read)
}

/// Refuses a text that says of no kind of ours that it is one, before any of its lines is shown:
/// a name may lead anywhere.
pub(crate) fn says_what_it_is(file: &str, text: &str, kind: FileKind) -> Result<(), WorkError> {
    let says = |line: &str| {
        let after = line.trim_start().strip_prefix("kind");
        after.is_some_and(|rest| rest.trim_start().starts_with('='))
    };
    let ours = text.lines().any(says);
    let not_ours = || WorkError::file(Trouble::NotOurs { file: file.to_owned(), kind });
    ours.then_some(()).ok_or_else(not_ours)
}

fn unknown_cell(name: &str) -> WorkError {
    let known = BUILT_IN_CELLS.iter().map(|known| known.name.to_owned()).collect();
    WorkError::asked(Trouble::UnknownCell { name: name.to_owned(), known })
}

/// A measure of a client by which a layout's parameter may be set.
fn measured(client: &Client, measure: BodyMeasure) -> Option<Length> {
    let measures = &client.measures;
    match measure {
        BodyMeasure::SeatBoneSpacing => measures.seat_bone_spacing,
        BodyMeasure::ThighDepthLeft => measures.thigh_depth.left,
        BodyMeasure::ThighDepthRight => measures.thigh_depth.right,
        BodyMeasure::HipWidth => measures.hip_width,
        BodyMeasure::TrochanterWidth => measures.trochanter_width,
    }
}

/// Draws a layout at a size, to be filled with `cell`; remarks on it go to the others on its file.
///
/// # Errors
///
/// Fails where the layout cannot be made at that size, or has a compartment that no such cell
/// goes into.
pub fn pattern(
    layout: &mut Sourced<Layout>,
    size: Size,
    cell: &Cell,
) -> Result<Pattern, WorkError> {
    let faults = faults_at(&layout.value, size, cell);
    layout.file.remarks.extend(files::layout_remarks(&layout.file.text, &faults));
    match cushion::arrange(&layout.value, size) {
        Ok(pattern) if !layout.file.is_wrong() => Ok(pattern),
        _ => Err(WorkError::wrong_file(layout.file.clone())),
    }
}

/// The faults of a layout at one size, to be filled with `cell`.
pub(crate) fn faults_at(layout: &Layout, size: Size, cell: &Cell) -> Vec<Fault> {
    let rating = layout.made(size).map_or(Mass::ZERO, |made| made.max_user_weight);
    let here = vec![MadeSize { size, max_user_weight: rating }];
    cushion::check_layout(&Layout { sizes: here, ..layout.clone() }, cell.edge)
}
