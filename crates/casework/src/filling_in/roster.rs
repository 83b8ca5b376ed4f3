//! The clients of a folder: each file, with how the fitting stands.

use case::{Beside, Date, FileKind, Standing};

use super::Draft;
use crate::error::WorkError;
use crate::open_case::OpenCase;
use crate::prepared_cushions::PreparedCushions;
use crate::surroundings::Surroundings;

/// One client's file of a folder.
#[derive(Clone, Debug)]
pub struct Listed {
    /// The file.
    pub draft: Draft,
    /// What its record cannot say by itself.
    pub beside: Beside,
    /// The day of the last entry of its record.
    pub last_visit: Option<Date>,
}

impl Listed {
    /// How the fitting stands on a day; none where the file is not right yet.
    #[must_use]
    pub fn standing(&self, on: Date) -> Option<Standing<'_>> {
        Some(case::state(self.draft.client()?, on, self.beside))
    }
}

/// Lists the clients' files of a shelf's own folder, in the order of their names. What is no
/// client's file is left out. Where a cushion has to be looked at, it is taken from those that are kept.
///
/// # Errors
///
/// Fails where the folder cannot be listed.
pub fn roster(
    cushions: &PreparedCushions,
    surroundings: Surroundings<'_>,
    on: Date,
) -> Result<Vec<Listed>, WorkError> {
    let names = surroundings.shelf.list("")?;
    let of_clients = names.iter().filter(|name| name.ends_with(".toml")).filter_map(|name| {
        let draft = Draft::open(surroundings, name).ok()?;
        let own = files::kind_of(&draft.text) == Some(FileKind::Client);
        own.then(|| listed(cushions, surroundings, draft, on))
    });
    Ok(of_clients.collect())
}

fn listed(
    cushions: &PreparedCushions,
    surroundings: Surroundings<'_>,
    draft: Draft,
    on: Date,
) -> Listed {
    let last_visit = draft.client().and_then(|own| own.record.last()).map(case::Entry::on);
    let beside = draft.client().map(|client| {
        let quick = Beside { look_again: fitting::look_again(client, on), ..Beside::default() };
        // Only a prediction, or the cushion itself, knows more; both take long, and are seldom
        // asked.
        let asks = client.weight_since_check().is_some()
            || client.unplanned_counts().is_some()
            || client
                .latest_plan()
                .is_some_and(|plan| plan.layout != client.cushion.layout.to_string());
        let opened = || {
            let case = OpenCase::made(cushions, surroundings, draft.sourced().ok()?).ok()?;
            Some(case.beside(client, on))
        };
        // Of what cannot be looked at, nobody can say that it still holds.
        let unknown = Beside { weight_breaks_limit: true, ..quick };
        if asks { opened().unwrap_or(unknown) } else { quick }
    });
    Listed { beside: beside.unwrap_or_default(), last_visit, draft }
}
