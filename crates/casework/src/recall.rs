//! A recall: whose cushions hold cells of a batch.

use case::{Client, ClientCode, Date, Entry, withdrawn};

use crate::error::WorkError;
use crate::sourced::client_text;
use crate::surroundings::Surroundings;

/// A cushion into which cells of a batch were put.
#[derive(Clone, Debug, PartialEq)]
pub struct Holds {
    /// The client's file.
    pub file: String,
    /// The client.
    pub code: ClientCode,
    /// The serial of the cushion, where one was recorded.
    pub serial: Option<String>,
    /// The entries that say so, from 1, with their days.
    pub entries: Vec<(usize, Date)>,
    /// The day on which it was filled with another batch since; cells may be in its bag still.
    pub refilled: Option<Date>,
}

/// What was found in a folder.
#[derive(Clone, Debug, Default)]
pub struct Recall {
    /// Cushions into which cells of the batch were put.
    pub holds: Vec<Holds>,
    /// Clients' files that were looked at.
    pub looked_at: usize,
    /// Files that say they are a client's and cannot be read: nobody knows what they hold.
    pub unread: Vec<String>,
}

/// Looks through the clients' files of a folder for a batch of cells.
///
/// # Errors
///
/// Fails where the folder cannot be read. A file in it that cannot be read is told.
pub fn recall(
    surroundings: Surroundings<'_>,
    folder: &str,
    batch: &str,
) -> Result<Recall, WorkError> {
    let mut recall = Recall::default();
    for file in surroundings.shelf.list(folder)? {
        let is_toml = file.to_ascii_lowercase().ends_with(".toml");
        if !is_toml {
            continue;
        }
        let Ok(text) = surroundings.text(&file) else {
            recall.unread.push(file);
            continue;
        };
        if files::kind_of(&text) != Some(case::FileKind::Client) {
            continue;
        }
        match client_text(file.clone(), text) {
            Ok(client) => {
                recall.looked_at += 1;
                recall.holds.extend(holds(file, &client.value, batch));
            }
            Err(_) => recall.unread.push(file),
        }
    }
    Ok(recall)
}

fn holds(file: String, client: &Client, batch: &str) -> Option<Holds> {
    let gone = withdrawn(&client.record);
    let fills = client.record.iter().enumerate().filter(|(at, _)| !gone[*at]);
    let fills: Vec<(usize, &case::Filled)> = fills
        .filter_map(|(at, entry)| match entry {
            Entry::Filled(own) | Entry::Incoming(own) => Some((at + 1, own)),
            _ => None,
        })
        .collect();
    let is_of = |own: &case::Filled| own.batch.as_deref().is_some_and(|own| same(own, batch));
    let own: Vec<_> = fills.iter().filter(|(_, fill)| is_of(fill)).collect();
    let last = own.last()?;
    // A fill of which nobody says the batch may be the same cells, counted in again.
    let other = |fill: &case::Filled| fill.batch.as_ref().is_some_and(|own| !same(own, batch));
    let refilled = fills.iter().find(|(at, fill)| *at > last.0 && other(fill));
    let serial = fills.iter().rev().find_map(|(_, fill)| fill.serial.clone());
    Some(Holds {
        file,
        code: client.code.clone(),
        serial: serial.or_else(|| client.cushion.serial.clone()),
        entries: own.iter().map(|(at, fill)| (*at, fill.on)).collect(),
        refilled: refilled.map(|(_, fill)| fill.on),
    })
}

/// Whether two batches are the same: nobody is missed for a capital or a blank.
fn same(one: &str, other: &str) -> bool {
    one.trim().eq_ignore_ascii_case(other.trim())
}
