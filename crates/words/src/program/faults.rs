//! Why a command ends without what it was asked for, where no file of a client is to blame.

use case::Why;
use cushion::Size;

/// Why a call is not one.
#[derive(Clone, Copy, Debug)]
pub enum CallFault<'a> {
    /// The cushion has no such compartment.
    NoCompartment {
        /// As it was named.
        named: &'a str,
        /// Those that there are, with their numbers.
        known: &'a str,
    },
    /// A setting where nothing takes any.
    SettingForNothing {
        /// Its name.
        given: &'a str,
    },
    /// `SOURCE_DATE_EPOCH` is no number of seconds.
    NoEpoch {
        /// As it is set.
        epoch: &'a str,
    },
    /// There is no entry of that number in the record.
    NoEntry {
        /// The number.
        number: usize,
        /// How many there are.
        there: usize,
    },
    /// It is not said who did it.
    Nobody,
    /// The spare bag is counted twice.
    BagTwice,
    /// Counts are given beside "as planned".
    PlannedAndCounted,
    /// No compartment has a count.
    NoCounts,
    /// An earlier layout to compare with, and not one file.
    AgainstOneLayout,
    /// An earlier layout to compare with, and a file of another kind.
    AgainstALayout,
    /// Nothing is named to weigh.
    NothingToWeigh,
    /// No made size suits the client.
    NoSizeSuits,
    /// Nothing can be drawn of a prediction.
    NothingToDraw {
        /// How the prediction ended, in words.
        outcome: &'a str,
    },
}

/// Why an output cannot be one.
#[derive(Clone, Copy, Debug)]
pub enum OutputFault<'a> {
    /// Its name ends otherwise than its kind does.
    CalledOtherwise {
        /// The output.
        output: &'a str,
        /// The endings that it may have; the first is proposed.
        endings: &'a [&'a str],
        /// A name with the first ending.
        example: &'a str,
    },
    /// It would be written over something that is read.
    OverAnInput {
        /// The output.
        output: &'a str,
        /// What is read.
        input: &'a str,
    },
    /// It would be written twice.
    Twice {
        /// The output.
        output: &'a str,
    },
    /// The answer itself cannot be written.
    TheAnswer {
        /// Why not.
        why: &'a Why,
    },
    /// A folder that is to be made is there already.
    FolderThere {
        /// The folder.
        folder: &'a str,
    },
    /// Papers of an earlier edition of an order would stay beside the new ones.
    StaysBeside {
        /// The first of them.
        first: &'a str,
        /// How many more there are.
        more: usize,
    },
}

/// Why what a supplier asks for is not had.
#[derive(Clone, Copy, Debug)]
pub enum SupplierFault<'a> {
    /// Only a file can be watched.
    NoFileToWatch {
        /// What was named.
        named: &'a str,
    },
    /// A file cannot be watched.
    NotWatched {
        /// The file.
        file: &'a str,
        /// Why not, as the system says it.
        why: &'a str,
    },
    /// A plugin's layout has no range of sizes.
    NoRangeOfPlugin,
    /// A plugin's layout has no sizes of its own to review.
    NoReviewOfPlugin,
    /// A plugin draws for sizes that are asked for.
    PluginNeedsSizes,
    /// A plugin draws for the one size that is asked for.
    PluginNeedsSize,
    /// No size that a layout is made in suits the client.
    NoSizeOfLayout {
        /// The layout.
        layout: &'a str,
    },
    /// A layout lists its sizes itself.
    ListsItsSizes {
        /// The layout.
        layout: &'a str,
    },
    /// A size is named twice.
    SizeTwice {
        /// The size.
        size: Size,
    },
    /// A part of a survey has no body.
    NoBodyInPart {
        /// How many bodies there are in all.
        count: usize,
    },
    /// A file cannot name an order on its papers.
    NamesNoOrder {
        /// The file.
        file: &'a str,
        /// How many letters the name may have.
        longest: usize,
    },
    /// The overload of the jig is not above its first load.
    OverloadTooLow,
    /// A word is no plugin's name.
    NoPluginName {
        /// The word.
        named: &'a str,
    },
    /// A plugin refuses every size at which it is checked.
    RefusedEverywhere {
        /// The plugin.
        plugin: &'a str,
    },
    /// A plugin is wrong at some of the sizes at which it is checked.
    WrongAt {
        /// The plugin.
        plugin: &'a str,
        /// At how many.
        wrong: usize,
        /// Of how many.
        sizes: usize,
    },
}

/// Why files end a command.
#[derive(Clone, Copy, Debug)]
pub enum FileFault<'a> {
    /// A file cannot be used.
    CannotBeUsed {
        /// The file.
        file: &'a str,
        /// How many remarks there are, in words.
        remarks: &'a str,
    },
    /// Some of the files cannot be used.
    SomeCannotBeUsed {
        /// How many.
        wrong: usize,
        /// Of how many.
        files: usize,
    },
    /// Some files cannot be read, so that nobody knows what they hold.
    Unread {
        /// The files.
        files: &'a str,
    },
}

/// What is the program's own fault, or that of how it was installed.
#[derive(Clone, Copy, Debug)]
pub enum ProgramFault<'a> {
    /// A fault of the program itself.
    Ours {
        /// Where it is.
        place: &'a str,
    },
    /// The program cannot be found again to be the child that runs a plugin.
    Gone {
        /// Why not, as the system says it.
        why: &'a str,
    },
}

/// Why the page beside the chair is not served.
#[derive(Clone, Copy, Debug)]
pub enum PageFault<'a> {
    /// A page has no report.
    NoReport,
    /// What was named is no folder.
    NoFolder {
        /// What was named.
        named: &'a str,
    },
    /// The system gives no threads.
    NoThreads {
        /// Why not, as the system says it.
        why: &'a str,
    },
    /// The port cannot be served.
    Port {
        /// Why not, as the system says it.
        why: &'a str,
    },
    /// The system gives no random words.
    NoLot,
    /// The page ended.
    Ended {
        /// Why, as the system says it.
        why: &'a str,
    },
}

/// What to do where why is said elsewhere.
#[derive(Clone, Copy, Debug)]
pub enum Advice<'a> {
    /// The client has no plan yet.
    RecordAPlan {
        /// The client's file.
        file: &'a str,
    },
    /// The change was not made, since what belongs to it is missing.
    GiveTheRest,
    /// The change was not made.
    NothingWritten,
    /// The command that says where a file is wrong.
    CheckSaysWhere,
    /// A setting is to be taken away.
    TakeSettingAway {
        /// Its name.
        given: &'a str,
    },
    /// A setting is to be given.
    GiveSetting {
        /// Its name.
        parameter: &'a str,
    },
    /// The file of a plugin may be named.
    NamePlugin,
    /// A plugin and its settings are to be named for a code.
    NamePluginOfCode,
    /// The file of a layout is to be named for a code.
    NameLayoutOfCode,
    /// The file of a cell is to be named for a code.
    NameCellOfCode,
}
