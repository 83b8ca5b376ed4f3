//! What the program did, as it is told.

use case::Date;
use cushion::Size;

/// What is recorded of a client, and what is not.
#[derive(Clone, Copy, Debug)]
pub enum Done<'a> {
    /// It was recorded, by somebody where the answer says by whom.
    Recorded {
        /// The client's file.
        file: &'a str,
        /// By whom.
        by: Option<&'a str>,
    },
    /// What was found was recorded, and moves that break a limit were not.
    MovesNotRecorded {
        /// The client's file.
        file: &'a str,
    },
    /// Nothing was recorded, and this command would.
    NotRecorded {
        /// The command.
        command: &'a str,
    },
    /// A clause after why a plan does not stand: nothing was recorded.
    NothingRecorded,
    /// An entry that was added, as the head of its line.
    Entry {
        /// Its number, from 1.
        number: usize,
        /// The client's file.
        file: &'a str,
    },
    /// Above what is in the cushion now.
    InTheCushion,
    /// That a file was changed, before how many remarks there are on it.
    Changed {
        /// The file.
        file: &'a str,
        /// How many remarks there are, in words.
        remarks: &'a str,
    },
    /// Which option looks for mistakes in the set-up.
    WhyLooksForMistakes,
}

/// What was begun or written for somebody who goes on with it.
#[derive(Clone, Copy, Debug)]
pub enum Begun<'a> {
    /// A client's file, to be filled in and checked.
    Client {
        /// The file.
        file: &'a str,
    },
    /// A layout, to be changed and looked at.
    Layout {
        /// The file.
        file: &'a str,
    },
    /// A cell, to be changed and checked.
    Cell {
        /// The file.
        file: &'a str,
    },
    /// A folder with a plugin.
    Plugin {
        /// The folder.
        folder: &'a str,
        /// The commands that build and check it, a line each.
        commands: &'a str,
    },
    /// A schema for a kind of file.
    Schema {
        /// The schema.
        file: &'a str,
        /// The kind of file, as a noun.
        kind: &'a str,
    },
    /// The schema of all reports.
    ReportSchema {
        /// The schema.
        file: &'a str,
    },
    /// A client's file that was restored from a code.
    Restored {
        /// The file.
        file: &'a str,
    },
    /// The papers of an invented client.
    Demo {
        /// The client's code.
        code: &'a str,
        /// The files, a line each.
        files: &'a str,
        /// Those to look at first: setup card, fill card, take-home sheet.
        first: [&'a str; 3],
    },
}

/// What is to be known of an answer.
#[derive(Clone, Copy, Debug)]
pub enum Told<'a> {
    /// A cushion that holds cells of a batch that is called back: a line.
    Holds {
        /// The client's file.
        file: &'a str,
        /// The client's code.
        code: &'a str,
        /// The serial number of the cushion.
        serial: Option<&'a str>,
        /// Entries by which cells of the batch were filled in, with their days.
        entries: &'a [(usize, Date)],
        /// The day of a later fill with another batch.
        refilled: Option<Date>,
    },
    /// How many of the files that were looked at hold cells of the batch.
    Recall {
        /// How many hold them.
        holds: usize,
        /// How many were looked at.
        looked_at: usize,
        /// The batch.
        batch: &'a str,
    },
    /// Files that were written.
    Wrote {
        /// Their names.
        files: &'a [String],
    },
    /// Which plugin drew a layout, and the digest of its answer.
    DrawnBy {
        /// The plugin.
        plugin: &'a str,
        /// The digest.
        digest: &'a str,
    },
    /// A plugin's answer that was written into a file.
    PluginDraws {
        /// The file.
        file: &'a str,
        /// The plugin.
        plugin: &'a str,
        /// The size that was asked for.
        size: Size,
        /// The digest of the text.
        digest: &'a str,
    },
    /// What running plugins is.
    TrustInPlugins,
    /// That no plugin was found, above the folders that were looked in.
    NoPlugins,
    /// That none of the plugins of a list was run.
    NoneWasRun,
    /// Whence a plugin's description is.
    From {
        /// The file of the plugin.
        file: &'a str,
    },
    /// A setting that a plugin takes, without its name and what its author says of it.
    Setting {
        /// Its least and greatest value, with their unit.
        ends: [f64; 2],
        /// The unit, as the author names it.
        unit: &'a str,
        /// What is taken where none is given; none where it must be given or measured.
        standard: Option<f64>,
        /// The measure of the client that it is, in words.
        measure: Option<&'a str>,
    },
    /// How many compartments a plugin draws at a size.
    Compartments {
        /// How many.
        count: usize,
    },
    /// That a plugin refuses a size, which it may, or is wrong there.
    NotDrawn {
        /// Whether it refuses.
        refused: bool,
    },
    /// Pieces, as a unit.
    Pieces,
    /// The page is served: its folder and its address.
    PageIsOpen {
        /// The folder with the clients' files.
        folder: &'a str,
        /// The address, which opens once.
        address: &'a str,
    },
    /// No browser could be opened.
    NoBrowser,
    /// What a bar counts: bodies.
    Bodies,
    /// How a bar tells the time that is left, with `{eta}` in its place, and `{pos}` and `{len}`.
    Bar {
        /// What it counts.
        of: &'a str,
    },
}
