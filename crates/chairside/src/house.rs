//! What all screens share: where files are, what day it is, which address is whose.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use case::text::LengthUnit;
use case::{Date, LayoutSource};
use casework::{
    Draft, Listed, OpenCase, PreparedCushions, Shelf, Surroundings, Turns, TypedIn, TypedLength,
    WorkError,
};
use sheets::Paper;
use words::Language;

use crate::lot;
use crate::papers::PaperStore;
use crate::replies::Replies;
use crate::waiting::Waiting;
use crate::windows::Windows;

/// A client of an invented scenario, to learn with.
#[derive(Clone, Copy, Debug)]
pub struct Demo {
    /// The code.
    pub code: &'static str,
    /// The file's text.
    pub text: &'static str,
}

/// What the page is told by whoever serves it.
pub struct Settings {
    /// The clients' files.
    pub shelf: Arc<dyn Shelf>,
    /// Layouts that are no files.
    pub layouts: Arc<dyn LayoutSource>,
    /// What day it is, asked anew for each page.
    pub today: Box<dyn Fn() -> Date + Send + Sync>,
    /// The language of the page.
    pub language: &'static dyn Language,
    /// What papers are printed on.
    pub paper: Paper,
    /// Clients to learn with.
    pub demos: &'static [Demo],
}

/// What all screens share.
pub struct House {
    pub(crate) settings: Settings,
    pub(crate) windows: Windows,
    /// The turns of all windows at the processor.
    pub(crate) turns: Arc<Turns>,
    /// Who waits for ranges or goals.
    pub(crate) waiting: Waiting,
    /// Who waits until a file is another.
    pub(crate) following: Waiting,
    /// Cushions of clients that were opened.
    cushions: PreparedCushions,
    pub(crate) papers: PaperStore,
    /// What forms were answered with.
    pub(crate) replies: Replies,
    kept: Mutex<Kept>,
    writing: Mutex<()>,
}

#[derive(Default)]
struct Kept {
    /// The address of each file, by lot.
    addresses: BTreeMap<String, String>,
    /// In what lengths are typed, and whether weights are typed in pounds, where somebody chose.
    lengths: Option<TypedLength>,
    pounds: Option<bool>,
    /// Who signed last, to be offered again.
    by: String,
}

impl House {
    /// A house with nobody in it yet.
    #[must_use]
    pub fn new(settings: Settings) -> Self {
        let (windows, papers) = (Windows::default(), PaperStore::default());
        let replies = Replies::default();
        let (turns, kept, writing) = (Arc::default(), Mutex::default(), Mutex::default());
        let (cushions, waiting, following) =
            (PreparedCushions::default(), Waiting::default(), Waiting::default());
        Self {
            settings,
            windows,
            turns,
            waiting,
            following,
            cushions,
            papers,
            replies,
            kept,
            writing,
        }
    }

    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Waits until no other form of this page is being written: a box that is kept as it is left
    /// and the button that is pressed next must not meet in the same file.
    pub(crate) fn one_at_a_time(&self) -> MutexGuard<'_, ()> {
        self.writing.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// What work on a case asks.
    pub(crate) fn surroundings(&self) -> Surroundings<'_> {
        Surroundings { shelf: &*self.settings.shelf, layouts: &*self.settings.layouts }
    }

    pub(crate) fn shelf(&self) -> &dyn Shelf {
        &*self.settings.shelf
    }

    pub(crate) fn today(&self) -> Date {
        (self.settings.today)()
    }

    pub(crate) fn language(&self) -> &'static dyn Language {
        self.settings.language
    }

    /// The address of a file, the same until the page is closed; it says nothing of whose it is.
    pub(crate) fn address_of(&self, name: &str) -> String {
        let mut kept = self.kept();
        if let Some(known) = kept.addresses.get(name) {
            return known.clone();
        }
        // Without an address a client cannot be reached, which is safe.
        let address: String = lot::word().unwrap_or_default().chars().take(12).collect();
        kept.addresses.insert(name.to_owned(), address.clone());
        address
    }

    /// The file of an address.
    pub(crate) fn name_at(&self, address: &str) -> Option<String> {
        let kept = self.kept();
        let mut known = kept.addresses.iter().filter(|own| !own.1.is_empty());
        known.find(|own| own.1 == address).map(|own| own.0.clone())
    }

    /// In what numbers are typed: as somebody chose, or else as the client's file has them.
    pub(crate) fn typed_in(&self, draft: &Draft) -> TypedIn {
        let of_file = match draft.lengths() {
            LengthUnit::Inches => TypedLength::Inches,
            LengthUnit::Millimetres => TypedLength::Millimetres,
        };
        let kept = self.kept();
        TypedIn {
            lengths: kept.lengths.unwrap_or(of_file),
            pounds: kept.pounds.unwrap_or_else(|| draft.is_in_pounds()),
        }
    }

    pub(crate) fn type_lengths_in(&self, lengths: TypedLength) {
        self.kept().lengths = Some(lengths);
    }

    pub(crate) fn type_weights_in(&self, pounds: bool) {
        self.kept().pounds = Some(pounds);
    }

    /// Who signed last.
    pub(crate) fn by(&self) -> String {
        self.kept().by.clone()
    }

    pub(crate) fn set_by(&self, by: &str) {
        by.trim().clone_into(&mut self.kept().by);
    }

    /// Opens the case of a file.
    pub(crate) fn open(&self, name: &str) -> Result<OpenCase, WorkError> {
        OpenCase::open_with(&self.cushions, self.surroundings(), name)
    }

    /// The case of a file as far as it is filled in, with a cushion in its place where none is chosen.
    pub(crate) fn with_any_cushion(&self, draft: &Draft) -> Result<OpenCase, WorkError> {
        draft.with_any_cushion(&self.cushions, self.surroundings())
    }

    /// The same with another cushion than the one that is chosen, which cannot be had.
    pub(crate) fn with_another_cushion(&self, draft: &Draft) -> Result<OpenCase, WorkError> {
        draft.with_another_cushion(&self.cushions, self.surroundings())
    }

    /// The clients of the folder, as they are on a day.
    pub(crate) fn roster(&self, on: Date) -> Result<Vec<Listed>, WorkError> {
        casework::roster(&self.cushions, self.surroundings(), on)
    }
}
