//! Arguments: exactly what was typed. Nothing is read, resolved or done here.

use std::path::PathBuf;

use case::Date;
use casework::Recorder;
use clap::{Args, Parser, Subcommand, ValueEnum};
use cushion::{Pattern as CushionPattern, Size as CushionSize};

use crate::compartment::CompartmentRef;
use crate::counts;
use crate::exit_codes;
use crate::failure::Failure;
use crate::say;
use crate::terminal::Color;
use crate::today;

/// Plan and print the cell counts of compartment cushions
#[derive(Debug, Parser)]
#[command(name = "seatwright", version, after_help = exit_codes::help())]
#[command(long_about = "Plan and print the cell counts of compartment cushions\n\n\
    Everything that is computed is an estimate until somebody has checked it with their hands. \
    The treating clinician decides, and local rules come first.")]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,

    /// Colour messages
    #[arg(long, global = true, value_name = "WHEN", value_enum, default_value_t)]
    pub(crate) color: Color,

    /// Say it in this language, and make papers in it; what carers get is in the language that the
    /// client file names, where it names one. Words of files, JSON keys, and what is said of commands
    /// and options are English in every language
    #[arg(long, global = true, value_name = "TAG", value_parser = say::tags(), default_value = "en")]
    pub(crate) language: String,

    /// Take this day instead of today, in what is printed, recorded or judged by age: 2026-03-01
    #[arg(long, global = true, value_name = "DAY", value_parser = today::day)]
    pub(crate) date: Option<Date>,

    /// Answer, and fail, in JSON on stdout
    #[arg(long, global = true)]
    pub(crate) json: bool,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    Demo(Demo),
    Layouts(Layouts),
    Pattern(Pattern),
    Range(Range),
    Template(Template),
    Parts(Parts),
    Order(Order),
    Size(Size),
    Plan(Plan),
    Predict(Predict),
    Adjust(Adjust),
    Record(RecordDone),
    History(History),
    Find(Find),
    Weigh(Weigh),
    Plugin(Plugin),
    Print(Print),
    ContourTest(ContourTest),
    Survey(Survey),
    Merge(Merge),
    Review(Review),
    Compare(Compare),
    Check(Check),
    New(New),
    Restore(Restore),
    Set(Set),
    Chairside(Chairside),
    Completions(Completions),
}

/// Write the papers of an invented client, to see what they look like
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  seatwright demo\n  seatwright demo --out papers")]
pub(crate) struct Demo {
    /// Take this invented client
    #[arg(long, value_name = "WHO", value_enum, default_value_t)]
    pub(crate) who: Invented,

    /// Write into this folder
    #[arg(long, value_name = "DIR", default_value = "out")]
    pub(crate) out: PathBuf,
}

/// List the layouts that can be made: names, revisions, digests, sizes, ratings
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright layouts\n  \
    seatwright layouts mine.toml other.toml --json\n\n\
    Lists the built-in layouts, the plugins that are found, and the layout files that are named. \
    A plugin draws for any size, so it has none of its own. A file that cannot be used is listed \
    with the reason, and the status is 3.")]
pub(crate) struct Layouts {
    /// Paths of layout files to list too
    #[arg(value_name = "FILE")]
    pub(crate) files: Vec<PathBuf>,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show a layout at every size that it is made in: counts with their range, masses, seams
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright range row-six\n  \
    seatwright range mine.toml --csv mine.csv --sheet mine.pdf --sheet mine.svg\n\n\
    A count that jumps from one size to the next larger is flagged: it differs by more than a \
    quarter from what it would be, had it grown with the cushion.")]
pub(crate) struct Range {
    /// Name of a built-in layout, or path of a layout file
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Write a line for each size into this file
    #[arg(long, value_name = "FILE")]
    pub(crate) csv: Option<PathBuf>,

    /// Print the range table into this file, which ends in .svg, .pdf or .png; once for each file;
    /// of several pages each SVG and PNG gets a number
    #[arg(long, value_name = "FILE")]
    pub(crate) sheet: Vec<PathBuf>,

    /// Print for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Write cutting and sewing templates of a layout at one size, at true size
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright template row-six --size 440x400 --out templates\n  \
    seatwright template mine.toml --size 17x16in --out templates --paper letter --allowance 12\n\n\
    Writes one large sheet (SVG and PDF, in real millimetres), its tiles on paper with a map (PDF \
    and SVG), and a DXF of release 12 for a cutting table: LINE, ARC and TEXT, a layer for each \
    kind of line.\n\n\
    An arc is longer than its chord, so a crown needs more cloth than the seams around it: the top \
    is cut larger by the share that the stock fill asks most, and eased in from notch to notch. \
    With --stretch it is cut as large as the seams, and its cloth must stretch.\n\n\
    Nobody has sewn a cushion by these: sew a trial cover first.")]
pub(crate) struct Template {
    /// Name of a built-in layout, path of a layout file, or plugin:NAME
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Width by depth: 440x400 in millimetres, 17x16in in inches
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: CushionSize,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Write into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,

    /// Leave so much cloth outside of stitch lines, 0 to 40
    #[arg(long, value_name = "MM", default_value_t = 10.0, value_parser = counts::between_0_and_40)]
    pub(crate) allowance: f64,

    /// Cut the top as large as the seams, from cloth that stretches
    #[arg(long)]
    pub(crate) stretch: bool,

    /// Print the tiles for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    /// Write PNG pictures too
    #[arg(long)]
    pub(crate) png: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show what cushions are made of: cloth by piece, thread, openings, cells, and what one weighs
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright parts row-six --size 440x400 --quantity 30\n  \
    seatwright parts mine.toml --size 17x16in --top-cloth 210..230 --base-cloth 340 --csv parts.csv\n\n\
    A mass of cloth is a number, or a range LOW..HIGH whose middle is taken. What is not given is \
    from memory, unverified: top 150 to 300, base 250 to 450, walls 100 to 250 g/m2; thread 2.5 to \
    3.5 m for a metre of seam, 0.05 to 0.1 g/m; closures 15 to 60 g/m; cells within a tenth of what \
    their file says. The range of the whole puts these together as if independent.")]
pub(crate) struct Parts {
    /// Name of a built-in layout, path of a layout file, or plugin:NAME
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Width by depth: 440x400 in millimetres, 17x16in in inches
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: CushionSize,

    /// Make so many
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub(crate) quantity: u32,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Add so many spare cells to each cushion, 5 in a hundred where not told
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(0..=5_000))]
    pub(crate) spares: Option<u32>,

    /// Leave so much cloth outside of stitch lines, 0 to 40
    #[arg(long, value_name = "MM", default_value_t = 10.0, value_parser = counts::between_0_and_40)]
    pub(crate) allowance: f64,

    /// Cut the top as large as the seams, from cloth that stretches
    #[arg(long)]
    pub(crate) stretch: bool,

    /// Say what the cloth of the top weighs, in g/m2: 220 or 200..240
    #[arg(long, value_name = "G", value_parser = counts::range_of_mass)]
    pub(crate) top_cloth: Option<case::Spread<f64>>,

    /// Say what the cloth of the base weighs, in g/m2
    #[arg(long, value_name = "G", value_parser = counts::range_of_mass)]
    pub(crate) base_cloth: Option<case::Spread<f64>>,

    /// Say what the cloth of the walls weighs, in g/m2
    #[arg(long, value_name = "G", value_parser = counts::range_of_mass)]
    pub(crate) wall_cloth: Option<case::Spread<f64>>,

    /// Say what a closure weighs, in g/m
    #[arg(long, value_name = "G", value_parser = counts::range_of_mass)]
    pub(crate) closure: Option<case::Spread<f64>>,

    /// Write the lines into this file
    #[arg(long, value_name = "FILE")]
    pub(crate) csv: Option<PathBuf>,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Print the papers of many cushions at once: pick list, fill cards, tags, and what they need in all
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright order monday.csv --out monday\n  \
    seatwright order monday.csv --out monday --spares 12 --paper letter\n\n\
    The file is a table with a heading; columns come in any order, and no others may be there:\n\n  \
    layout    a built-in layout, the path of a layout file beside the order, or plugin:NAME\n  \
    size      440x400 in millimetres, 17x16in in inches\n  \
    cell      a built-in cell, or the path of a cell file; may be left empty\n  \
    client    the path of a client's file, instead of layout, size and cell: the counts that\n            \
    its record has\n  \
    quantity  a whole number; 1 of a client\n  \
    serials   one for each cushion, with spaces between, or a run: S-101..S-112; may be empty\n\n\
    Everything is written, or nothing.")]
pub(crate) struct Order {
    /// Path of the order, as CSV
    #[arg(value_name = "ORDER")]
    pub(crate) order: PathBuf,

    /// Write into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,

    /// Add so many spare cells to each cushion as supplied, 5 in a hundred where not told; a
    /// client's file has its own
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(0..=5_000))]
    pub(crate) spares: Option<u32>,

    /// Print for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    /// Write the words of SVGs as shapes, for programs that would take another font
    #[arg(long)]
    pub(crate) outlines: bool,

    /// Write PNG pictures too
    #[arg(long)]
    pub(crate) png: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show a layout at one size: areas, seams, stock counts
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright pattern row-six --size 440x400\n  \
    seatwright pattern mine.toml --size 17x16in --svg mine.svg\n  \
    seatwright pattern curved-ten --size 440x400 --json")]
pub(crate) struct Pattern {
    /// Name of a built-in layout, path of a layout file, or plugin:NAME
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Width by depth: 440x400 in millimetres, 17x16in in inches
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: CushionSize,

    #[command(flatten)]
    pub(crate) cell: Cell,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,

    /// Draw the pattern into this file
    #[arg(long, value_name = "FILE")]
    pub(crate) svg: Option<PathBuf>,

    /// Do it again whenever the layout's file is saved, until stopped with Ctrl-C
    #[arg(long)]
    pub(crate) watch: bool,
}

/// Show which made size suits a client, what it leaves free, and why the others do not suit
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright size K-17.toml\n  \
    seatwright size K-17.toml --all --sources\n\n\
    Where no made size suits, it says what to ask a supplier for, and ends with status 8.\n\
    --all looks over the built-in layouts, the plugins that are found, and the layout of the \
    client file; a plugin is asked for the size that the client file names.")]
pub(crate) struct Size {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// Look over the sizes of all layouts, a line for each
    #[arg(long, conflicts_with = "set")]
    pub(crate) all: bool,

    /// Say where each rule comes from; JSON always does
    #[arg(long)]
    pub(crate) sources: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show the counts for a client, and record them where asked
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright plan K-17.toml\n  \
    seatwright plan K-17.toml --record --by \"OT, seating clinic\"\n\n\
    Counts keep the limits first, then reach the goals in their order, then stay near the stock \
    fill. A goal that is refused or out of reach is told, and recorded as not reached; where it is \
    to take load off an injured site, nothing is recorded unless --nearest-safe takes it.\n\n\
    --record adds the plan to the end of the client file, as a proposal; all that a person wrote \
    there stays. What is really put in is recorded after it was done, with `seatwright record`.")]
pub(crate) struct Plan {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    #[command(flatten)]
    pub(crate) record: Record,

    /// Take the nearest safe plan where an injury cannot be off-loaded as wanted, or gets more
    #[arg(long)]
    pub(crate) nearest_safe: bool,

    /// End with status 7 where any goal falls short
    #[arg(long)]
    pub(crate) strict: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show what counts would do under the client: heights, pressures with their spread
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright predict K-17.toml\n  \
    seatwright predict K-17.toml --cells 1=42 pelvis-right=52 --sections section.pdf\n\n\
    Begins from what is in the cushion by the record, or from a fresh plan where it says nothing.\n\
    Nothing is recorded. Every number is an estimate, and no pressure is a safe one.")]
pub(crate) struct Predict {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// Put so many cells into a compartment, named by number or id, in this question only
    #[arg(long, value_name = "COMPARTMENT=N", num_args = 1.., value_parser = counts::cells)]
    pub(crate) cells: Vec<(CompartmentRef, u32)>,

    /// Draw sections through the seat bones into this file, which ends in .svg, .pdf or .png; once
    /// for each file
    #[arg(long, visible_alias = "svg", value_name = "FILE")]
    pub(crate) sections: Vec<PathBuf>,

    /// Draw for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Show the next moves from what was found on the filled cushion, and record them where asked
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright adjust K-17.toml --top left=tight --under left=25mm --under right=35mm\n  \
    seatwright adjust K-17.toml --press 3=slack --lower left=8mm --record --by OT\n\n\
    top: fingers between seat bone and cushion: safe, tight or pinched.\n\
    under: a hand under the cushion below the bone: what is felt, in mm, or bone-felt.\n\
    press: two fingers at a compartment's edge, against its mirror partner: slack, like or tight.\n\
    lower: which side of the pelvis is lower and by how much, or level; @asis where that was \
    found at the front of the pelvis: right=25mm@asis.\n\
    reading: a pressure at a named site.\n\n\
    Answers that contradict each other are questioned, and nothing is moved.\n\
    Begins from what was put in, counted or moved last, by the record. --record adds what was \
    found, and proposes the moves; `seatwright record CLIENT moved` says that they were made.")]
pub(crate) struct Adjust {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// Say what a top check found: left=tight
    #[arg(long, value_name = "SIDE=WORD", value_parser = |text: &str| counts::check("top", text))]
    pub(crate) top: Vec<case::Check>,

    /// Say what an under check found: left=25mm, left=bone-felt or left=not-found
    #[arg(long, value_name = "SIDE=MM", value_parser = |text: &str| counts::check("under", text))]
    pub(crate) under: Vec<case::Check>,

    /// Say what a press check found, at a compartment named by number or id: 3=slack
    #[arg(long, value_name = "COMPARTMENT=WORD", value_parser = counts::press)]
    pub(crate) press: Vec<(CompartmentRef, case::PressAnswer)>,

    /// Say which side of the pelvis is lower: left=8mm, right=25mm@asis, or level
    #[arg(long, value_name = "SIDE=MM", value_parser = |text: &str| counts::check("lower", text))]
    pub(crate) lower: Vec<case::Check>,

    /// Say what was read: left-seat-bone=48mmHg
    #[arg(long, value_name = "SITE=PRESSURE", value_parser = |text: &str| counts::check("reading", text))]
    pub(crate) reading: Vec<case::Check>,

    /// Say how the skin looks when the client comes off: coccyx=clear, fades, stays, open or worse
    #[arg(long, value_name = "SITE=WORD", value_parser = |text: &str| counts::check("skin", text))]
    pub(crate) skin: Vec<case::Check>,

    /// Look for mistakes in the set-up that would explain what was found
    #[arg(long)]
    pub(crate) why: bool,

    /// Take the moves that load an injury least where all that keep the limits load it more
    #[arg(long)]
    pub(crate) nearest_safe: bool,

    #[command(flatten)]
    pub(crate) record: Record,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

impl Adjust {
    /// All checks, in the order of the options, with compartments of a pattern.
    ///
    /// # Errors
    ///
    /// Fails where the pattern has no such compartment.
    pub(crate) fn checks(&self, pattern: &CushionPattern) -> Result<Vec<case::Check>, Failure> {
        let mut all = [self.skin.as_slice(), &self.top, &self.under].concat();
        for (named, answer) in &self.press {
            let number = pattern[named.find(pattern)?].number;
            all.push(case::Check::Press { number, answer: *answer });
        }
        all.extend_from_slice(&self.lower);
        all.extend_from_slice(&self.reading);
        Ok(all)
    }
}

/// Record what was done: fills, checks, counts, moves, weights, the skin
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright record K-17.toml filled --as-planned --by OT\n  \
    seatwright record K-17.toml filled 1=44 2=47 3=30 4=30 spare=12 --batch B-7 --by OT\n  \
    seatwright record K-17.toml checked --top left=safe --top right=safe --under left=30mm \
    --under right=32mm --skin coccyx=clear --transfer --reach --passed --by OT\n  \
    seatwright record K-17.toml recount 2=43 --by carer\n  \
    seatwright record K-17.toml moved spare-2=4 --by OT\n  \
    seatwright record K-17.toml withdrawn 7 --because \"of another client\" --by OT\n\n\
    Nothing in a record is ever deleted: a mistake is withdrawn. `seatwright history` lists the \
    entries with their numbers.")]
pub(crate) struct RecordDone {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// What was done
    #[command(subcommand)]
    pub(crate) what: WhatWasDone,

    /// Name who did it, by initials or role
    #[arg(long, value_name = "WHO", global = true)]
    pub(crate) by: Option<String>,

    /// Say why, in a sentence for the record
    #[arg(long, value_name = "WHY", global = true)]
    pub(crate) because: Option<String>,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// What was done.
#[derive(Debug, Subcommand)]
pub(crate) enum WhatWasDone {
    /// Record what was really put in
    Filled(FilledWith),
    /// Record what came in a filled cushion, counted against its fill card
    Incoming(FilledWith),
    /// Record a fitting check; it passes with all of its parts, else it is not finished
    Checked(CheckedParts),
    /// Record what was counted again: 2=43, spare=12
    Recount {
        /// Say how many cells a compartment, or the spare bag, has
        #[arg(value_name = "NUMBER=CELLS", required = true, value_parser = counts::counted)]
        counts: Vec<(case::Place, u32)>,
    },
    /// Record the weight: 61kg or 134lb
    Weighed {
        /// Say the weight, with its unit
        #[arg(value_name = "WEIGHT", value_parser = counts::weight)]
        weight: cushion::Mass,
    },
    /// Record moves as they were made: spare-2=4, 3-1=6
    Moved {
        /// Say from where to where so many cells were moved
        #[arg(value_name = "FROM-TO=CELLS", value_parser = counts::a_move)]
        moves: Vec<case::Move>,

        /// Say that they were moved as the plan recorded last proposes
        #[arg(long, conflicts_with = "moves", required_unless_present = "moves")]
        as_proposed: bool,
    },
    /// Record how the skin looked: coccyx=clear, fades, stays, open or worse
    Skin {
        /// Say how the skin looked at a site
        #[arg(value_name = "SITE=WORD", required = true, value_parser = |text: &str| counts::check("skin", text))]
        seen: Vec<case::Check>,
    },
    /// Withdraw an entry that was made by mistake
    Withdrawn {
        /// Number of the entry, as `history` lists it
        #[arg(value_name = "ENTRY")]
        entry: usize,
    },
    /// Record that the counts after an earlier entry were put in again
    Return {
        /// Number of the entry, as `history` lists it
        #[arg(value_name = "ENTRY")]
        entry: usize,
    },
    /// Record that the cushion was cleaned
    Cleaned,
}

/// What is in a cushion.
#[derive(Debug, Args)]
pub(crate) struct FilledWith {
    /// Say how many cells each compartment, and the spare bag, has
    #[arg(value_name = "NUMBER=CELLS", value_parser = counts::counted)]
    pub(crate) counts: Vec<(case::Place, u32)>,

    /// Say that each compartment has as many as the plan recorded last
    #[arg(long)]
    pub(crate) as_planned: bool,

    /// Name the batch of the cells
    #[arg(long, value_name = "BATCH")]
    pub(crate) batch: Option<String>,

    /// Name the serial of the cushion, where the file does not
    #[arg(long, value_name = "SERIAL")]
    pub(crate) serial: Option<String>,
}

/// The parts of a fitting check.
#[derive(Debug, Args)]
pub(crate) struct CheckedParts {
    /// Say what a top check found: left=safe
    #[arg(long, value_name = "SIDE=WORD", value_parser = |text: &str| counts::check("top", text))]
    pub(crate) top: Vec<case::Check>,

    /// Say what an under check found: left=30mm, left=bone-felt or left=not-found
    #[arg(long, value_name = "SIDE=MM", value_parser = |text: &str| counts::check("under", text))]
    pub(crate) under: Vec<case::Check>,

    /// Say which side of the pelvis is lower: left=8mm, or level
    #[arg(long, value_name = "SIDE=MM", value_parser = |text: &str| counts::check("lower", text))]
    pub(crate) lower: Vec<case::Check>,

    /// Say how the skin looks after 30 minutes: coccyx=clear, fades, stays, open or worse
    #[arg(long, value_name = "SITE=WORD", value_parser = |text: &str| counts::check("skin", text))]
    pub(crate) skin: Vec<case::Check>,

    /// Say that a transfer was tried
    #[arg(long)]
    pub(crate) transfer: bool,

    /// Say that reaching was tried
    #[arg(long)]
    pub(crate) reach: bool,

    /// Say that it was found right
    #[arg(long)]
    pub(crate) passed: bool,

    /// Say that it was found not right
    #[arg(long, conflicts_with = "passed")]
    pub(crate) failed: bool,
}

/// List the record of a client: what was planned, done and found
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright history K-17.toml\n  \
    seatwright history K-17.toml --between 2 4\n  \
    seatwright history K-17.toml --out papers\n\n\
    --between shows two entries side by side: counts, what was expected, checks, weight.\n\
    --out writes the record as pages, each entry with a drawing of the cells after it.")]
pub(crate) struct History {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// Show two entries side by side
    #[arg(long, value_name = "ENTRY", num_args = 2)]
    pub(crate) between: Vec<usize>,

    /// Write the record as pages into this folder
    #[arg(long, value_name = "FOLDER", conflicts_with = "between")]
    pub(crate) out: Option<PathBuf>,

    /// Paper of the pages
    #[arg(long, value_enum, default_value_t, requires = "out")]
    pub(crate) paper: Paper,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Find whose cushions hold cells of a batch, for a recall
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  seatwright find --batch B-2026-07 clients\n\n\
    Looks at every client file in the folder, and not below it. A file that cannot be read is \
    named, and the status is 3: nobody knows what its cushion holds.")]
pub(crate) struct Find {
    /// Look in this folder
    #[arg(value_name = "FOLDER")]
    pub(crate) folder: PathBuf,

    /// Name the batch
    #[arg(long, value_name = "BATCH")]
    pub(crate) batch: String,
}

/// Show grams for each compartment, from a batch counted by hand and weighed that day
#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("of").required(true).args(["client", "stock"])))]
#[command(after_help = "Examples:\n  \
    seatwright weigh K-17.toml --batch 50 --grams 40.3 --division 0.1\n  \
    seatwright weigh --stock mine.toml --size 440x400 --batch 50 --grams 40.3 --division 0.1\n\n\
    Grams are never on the take-home sheet: they hold for one batch, one scale and one day.")]
pub(crate) struct Weigh {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: Option<PathBuf>,

    /// Weigh the stock fill of a layout, for the filling table
    #[arg(long, value_name = "LAYOUT", requires = "size")]
    pub(crate) stock: Option<String>,

    /// Take this size for --stock: 440x400 in millimetres, 17x16in in inches
    #[arg(long, requires = "stock", value_parser = counts::size)]
    pub(crate) size: Option<CushionSize>,

    /// Take this cell for --stock: a built-in name, or the path of a cell file
    #[arg(long, value_name = "CELL", requires = "stock")]
    pub(crate) cell: Option<String>,

    /// Say how many cells were counted by hand: 50 or more is best
    #[arg(long, value_name = "CELLS")]
    pub(crate) batch: u32,

    /// Say what they weigh, without their vessel
    #[arg(long, value_name = "G")]
    pub(crate) grams: f64,

    /// Say in which steps the scale reads
    #[arg(long, value_name = "G")]
    pub(crate) division: f64,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Set a test jig on the stock fill of a layout: loaded contour and overload, for suppliers
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  \
    seatwright contour-test row-six --size 440x400\n\n\
    Compares layouts. It replaces no laboratory test and claims no code.")]
pub(crate) struct ContourTest {
    /// Name of a built-in layout, path of a layout file, or plugin:NAME
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Width by depth: 440x400 in millimetres, 17x16in in inches
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: CushionSize,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Stand the jig so far in front of the rear edge (unverified)
    #[arg(long, value_name = "MM", default_value_t = 125.0, value_parser = counts::between_50_and_300)]
    pub(crate) forward: f64,

    /// Load it first with so much (unverified)
    #[arg(long, value_name = "N", default_value_t = 135.0, value_parser = counts::between_50_and_300)]
    pub(crate) first_load: f64,

    /// Then with so much (unverified)
    #[arg(long, value_name = "N", default_value_t = 180.0, value_parser = counts::between_50_and_300)]
    pub(crate) overload: f64,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Size and plan a layout for many bodies from a table, for suppliers
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright survey bodies.csv --layout row-six --out survey.csv --figure survey.svg\n  \
    seatwright survey bodies.csv --layout row-six --out part-3.csv --shard 3/8\n  \
    seatwright merge part-*.csv --out survey.csv\n  \
    seatwright survey bodies.csv --layout plugin:mine --size 400x400 --size 440x400 --out mine.csv\n\n\
    The table has a heading with mass_kg, hip_breadth_sitting_mm and buttock_popliteal_mm.\n\
    A plugin draws for each --size, and is asked for no body's measures: --set gives them.\n\
    A run that was broken off goes on where it was.")]
pub(crate) struct Survey {
    /// Path of the table of bodies, as CSV
    #[arg(value_name = "BODIES")]
    pub(crate) bodies: PathBuf,

    /// Survey this layout: a built-in name, the path of a layout file, or plugin:NAME
    #[arg(long, value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Have a plugin draw this size: 440x400 in millimetres, 17x16in in inches; once for each
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: Vec<CushionSize>,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Write the rows into this file
    #[arg(long, value_name = "FILE")]
    pub(crate) out: PathBuf,

    /// Draw the spread into this file, which ends in .svg, .pdf or .png; once for each file
    #[arg(long, value_name = "FILE")]
    pub(crate) figure: Vec<PathBuf>,

    /// Draw for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    /// Take only so many bodies, drawn by lot
    #[arg(long, value_name = "N")]
    pub(crate) sample: Option<usize>,

    /// Draw lots from this number
    #[arg(long, value_name = "SEED", default_value_t = 1)]
    pub(crate) seed: u64,

    /// Do only part K of N
    #[arg(long, value_name = "K/N", value_parser = counts::shard)]
    pub(crate) shard: Option<(usize, usize)>,

    /// Compute on a mesh of 4 mm instead of 8 mm, which takes some four times as long
    #[arg(long)]
    pub(crate) fine: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Put the parts of a survey together
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  seatwright merge part-1.csv part-2.csv --out survey.csv")]
pub(crate) struct Merge {
    /// Paths of the parts
    #[arg(value_name = "PART", required = true)]
    pub(crate) parts: Vec<PathBuf>,

    /// Write the rows into this file
    #[arg(long, value_name = "FILE")]
    pub(crate) out: PathBuf,

    /// Draw the spread into this file, which ends in .svg, .pdf or .png; once for each file
    #[arg(long, value_name = "FILE")]
    pub(crate) figure: Vec<PathBuf>,

    /// Draw for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,
}

/// Review a layout at every made size for the bodies that each suits: findings, the worst first
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  \
    seatwright review mine.toml --bodies bodies.csv --sheet review.pdf\n\n\
    The table is that of `survey`. Of the bodies that a size suits it looks at those at percentile 5, \
    50 and 95 by weight, on the stock fill; where seat bones fall against seams; whether \
    a hand goes into each compartment; what one cell does; counts that jump and code groups that \
    change. Each finding has its number and what to do.")]
pub(crate) struct Review {
    /// Name of a built-in layout, or path of a layout file
    #[arg(value_name = "LAYOUT")]
    pub(crate) layout: String,

    /// Path of a table of bodies, as CSV
    #[arg(long, value_name = "FILE")]
    pub(crate) bodies: PathBuf,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Print the review into this file, which ends in .svg, .pdf or .png; once for each file; of
    /// several pages each SVG and PNG gets a number
    #[arg(long, value_name = "FILE")]
    pub(crate) sheet: Vec<PathBuf>,

    /// Print for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,
}

/// Compare two layouts, filled to the same pressure, under the same client or the same bodies
#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("whom").required(true).args(["client", "bodies"])))]
#[command(after_help = "Examples:\n  \
    seatwright compare row-six mine.toml --bodies bodies.csv\n  \
    seatwright compare row-six mine.toml --bodies bodies.csv --size 440x400 --sample 200 --json\n  \
    seatwright compare row-six mine.toml --client K-17.toml\n\n\
    The table is that of `survey`. Each body sits on the size of each layout that suits it, or on \
    --size. Two cushions are filled to one unloaded fill pressure, the lower one of their stock \
    fills, in whole cells; no cell is moved for anybody. B less A is told body by body, with the \
    least difference that the model can tell, and how many come to harm on each.\n\n\
    A plugin draws for --size, and is asked for no body's measures: --set gives them.")]
pub(crate) struct Compare {
    /// Name of a built-in layout, path of a layout file, or plugin:NAME
    #[arg(value_name = "A")]
    pub(crate) first: String,

    /// Compare it with this one
    #[arg(value_name = "B")]
    pub(crate) second: String,

    /// Put this client on both: the path of a client file, whose cushion is not looked at
    #[arg(long, value_name = "CLIENT")]
    pub(crate) client: Option<PathBuf>,

    /// Put the bodies of this table on both, as CSV
    #[arg(long, value_name = "FILE")]
    pub(crate) bodies: Option<PathBuf>,

    /// Take this size of both: 440x400 in millimetres, 17x16in in inches
    #[arg(long, value_parser = counts::size)]
    pub(crate) size: Option<CushionSize>,

    #[command(flatten)]
    pub(crate) cell: Cell,

    /// Take only so many bodies, drawn by lot
    #[arg(long, value_name = "N", conflicts_with = "client")]
    pub(crate) sample: Option<usize>,

    /// Draw lots from this number
    #[arg(long, value_name = "SEED", default_value_t = 1)]
    pub(crate) seed: u64,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Print papers as SVG and PDF
#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("what").required(true).args(["client", "blank", "stock"])))]
#[command(after_help = "Examples:\n  \
    seatwright print K-17.toml --out papers\n  \
    seatwright print --stock row-six --size 440x400 --out papers\n  \
    seatwright print --blank --paper letter --units in --out papers\n\n\
    A client's papers show the counts that were planned or put in last, never others: setup card,\n\
    fill card, take-home sheet, wash-day sheet, height gauge, letter with the reasons, tag.\n\
    Their names have the plan's number and check word: K-17-plan-2-7GES-tag.pdf. Papers of other\n\
    counts in the folder are told, and a text in it says which hold.\n\
    `seatwright plan CLIENT --record` records them.")]
pub(crate) struct Print {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: Option<PathBuf>,

    /// Print the blank measuring form
    #[arg(long)]
    pub(crate) blank: bool,

    /// Ask for lengths on the form in this unit, mm where not told
    #[arg(long, value_enum, requires = "blank")]
    pub(crate) units: Option<FormUnits>,

    /// Print the fill card and the tag for the stock fill of a layout
    #[arg(long, value_name = "LAYOUT", requires = "size")]
    pub(crate) stock: Option<String>,

    /// Take this size for --stock: 440x400 in millimetres, 17x16in in inches
    #[arg(long, requires = "stock", value_parser = counts::size)]
    pub(crate) size: Option<CushionSize>,

    /// Take this cell for --stock: a built-in name, or the path of a cell file
    #[arg(long, value_name = "CELL", requires = "stock")]
    pub(crate) cell: Option<String>,

    /// Write into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,

    /// Print for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    /// Write the words of SVGs as shapes, for programs that would take another font
    #[arg(long)]
    pub(crate) outlines: bool,

    /// Put the client's code into the printed QR code too, beside layout, size, counts and serial
    #[arg(long, requires = "client")]
    pub(crate) client_in_code: bool,

    /// Set the take-home sheet in larger print, 20 points
    #[arg(long, requires = "client")]
    pub(crate) large: bool,

    /// Write PNG pictures too
    #[arg(long)]
    pub(crate) png: bool,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Check layout, cell and client files
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright check K-17.toml\n  \
    seatwright check layouts/*.toml --json\n  \
    seatwright check mine.toml --against mine-2.toml\n\n\
    --against compares the stock counts of a layout with those of an earlier layout, at every \
    size that both are made in: where one changed, the revision must be higher than it was.")]
pub(crate) struct Check {
    /// Paths of the files
    #[arg(value_name = "FILE", required = true)]
    pub(crate) files: Vec<PathBuf>,

    /// Say whether the revision of a layout must rise since this earlier one
    #[arg(long, value_name = "LAYOUT")]
    pub(crate) against: Option<String>,

    /// Count with this cell for --against: a built-in name, or the path of a cell file
    #[arg(long, value_name = "CELL", requires = "against")]
    pub(crate) cell: Option<String>,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Make a client's file anew from the QR code on a setup card or a take-home sheet
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright restore K-17-plan-2-7GES-setup-card.pdf --out K-17.toml\n  \
    seatwright restore SW1/ROW-SIX/1B4A.../2/7GES/SW-0142//9B430437 --out K-17.toml --serial SW-0142\n\n\
    Any phone reads the code as a text; the PDFs of setup card and take-home sheet carry the same \
    text as an attachment. It has the layout and the cell with the heads of their digests, the size, \
    the counts, the number of the plan, its check word and the serial of the cushion; no name, and \
    the client's code only after `print --client-in-code`.\n\n\
    What is mistyped is refused, and no file that is there is written over. All that the code does \
    not say is blank, and `check` names it. The counts are in the record as put in on this day; they \
    are an ESTIMATE until hands have checked them on the client: count what is in the cushion.")]
pub(crate) struct Restore {
    /// Text of the code, or path of a PDF that carries it
    #[arg(value_name = "TEXT|PDF")]
    pub(crate) code: String,

    /// Write the client's file here, where no file is yet
    #[arg(long, value_name = "FILE")]
    pub(crate) out: PathBuf,

    /// Compare the serial on the tag of the cushion at hand with that of the code
    #[arg(long, value_name = "SERIAL")]
    pub(crate) serial: Option<String>,

    /// Take the layout from this file, where it is not built in
    #[arg(long, value_name = "FILE")]
    pub(crate) layout: Option<PathBuf>,

    /// Take the cell from this file, where it is not built in
    #[arg(long, value_name = "FILE")]
    pub(crate) cell: Option<PathBuf>,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Begin a file, with comments that explain each line
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright new client K-17.toml\n  \
    seatwright new layout mine.toml\n  \
    seatwright new plugin mine\n  \
    seatwright new client-schema client.schema.json\n\n\
    A file that is there already is never written over.")]
pub(crate) struct New {
    /// What to begin
    #[arg(value_name = "KIND", value_enum)]
    pub(crate) kind: Starter,

    /// Path of the file to write, or of the folder for a plugin
    #[arg(value_name = "FILE")]
    pub(crate) file: PathBuf,
}

/// Change keys of a client file, and leave the rest of it as it is
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    seatwright set K-17.toml measures.hip_width=380 weight.kg=68\n  \
    seatwright set K-17.toml measures.thigh_depth.left=470 posture.obliquity.by=12\n  \
    seatwright set K-17.toml goal.1.want=off-load goal.1.site=coccyx goal.1.percent=10\n  \
    seatwright set K-17.toml --move goal.3=1 --remove call.2\n\n\
    Entries of lists are counted from 1; one more than there are begins a new one.\n\
    A wrong value gets the remark that `check` would make, and nothing is written.")]
pub(crate) struct Set {
    /// Path of the client file
    #[arg(value_name = "CLIENT")]
    pub(crate) client: PathBuf,

    /// Give a key a value
    #[arg(value_name = "KEY=VALUE", value_parser = counts::pair, required_unless_present_any = ["remove", "move"])]
    pub(crate) answers: Vec<(String, String)>,

    /// Put an entry of a list in another place
    #[arg(long = "move", id = "move", value_name = "ENTRY=PLACE", value_parser = counts::entry_to_place)]
    pub(crate) order: Vec<(String, usize)>,

    /// Take a key, or an entry of a list, away
    #[arg(long, value_name = "KEY")]
    pub(crate) remove: Vec<String>,
}

/// List, show and check plugins that draw layouts
#[derive(Debug, Args)]
#[command(after_help = "Plugins are looked for in the files named with --plugin, in the folders \
    that the environment variable SEATWRIGHT_PLUGINS lists, and in seatwright/plugins in the \
    user's data folder (XDG_DATA_HOME, or ~/.local/share). Nothing else is run.\n\n\
    Examples:\n  \
    seatwright plugin list\n  \
    seatwright plugin show relief-rings\n  \
    seatwright plugin check target/release/libmine.so\n  \
    seatwright plugin draw relief-rings --size 440x400 --set spacing=120 --out rings.toml\n  \
    seatwright pattern plugin:mine --plugin target/release/libmine.so --size 440x400")]
pub(crate) struct Plugin {
    #[command(subcommand)]
    pub(crate) action: PluginAction,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// What to do with plugins.
#[derive(Debug, Subcommand)]
pub(crate) enum PluginAction {
    /// List the plugins that were named or installed
    List,
    /// Show what a plugin says of itself, and its parameters
    Show {
        /// Name of the plugin
        #[arg(value_name = "NAME")]
        name: String,
    },
    /// Write the layout that a plugin draws for one size into a layout file, which gives the same
    /// pattern without the plugin
    Draw {
        /// Name of the plugin
        #[arg(value_name = "NAME")]
        name: String,

        /// Width by depth: 440x400 in millimetres, 17x16in in inches
        #[arg(long, value_parser = counts::size)]
        size: CushionSize,

        /// Write it into this file, which must not be there yet
        #[arg(long, value_name = "FILE")]
        out: PathBuf,
    },
    /// Draw a plugin's layout at several sizes and say what is wrong
    Check {
        /// Path of the plugin's library
        #[arg(value_name = "PATH")]
        path: PathBuf,
    },
}

/// Where plugins are, and values for their parameters.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct PluginOptions {
    /// Look for plugins in this library too
    #[arg(long, value_name = "PATH", global = true)]
    pub(crate) plugin: Vec<PathBuf>,

    /// Give a plugin's parameter a value
    #[arg(long, value_name = "NAME=NUMBER", value_parser = crate::plugins::setting, global = true)]
    pub(crate) set: Vec<(cushion::Name, f64)>,

    /// Run plugins inside this program, where their crash is its crash
    #[arg(long, global = true)]
    pub(crate) plugin_in_process: bool,
}

/// Open a page in the browser for the whole job, on this machine alone
///
/// The clients are the files of the folder. Whatever is answered on the page is kept in them at once,
/// and can be read and repeated with the other commands. Stop it with Ctrl-C.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  seatwright chairside\n  seatwright chairside clinic-clients --no-open"
)]
pub(crate) struct Chairside {
    /// Folder with the clients' files
    #[arg(value_name = "FOLDER", default_value = ".")]
    pub(crate) folder: PathBuf,

    /// Serve on this port; any free one otherwise
    #[arg(long, value_name = "PORT", default_value_t = 0)]
    pub(crate) port: u16,

    /// Say the address and open no browser
    #[arg(long)]
    pub(crate) no_open: bool,

    /// Print for this paper
    #[arg(long, value_enum, default_value_t)]
    pub(crate) paper: Paper,

    #[command(flatten)]
    pub(crate) plugins: PluginOptions,
}

/// Write completions for a shell to stdout
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  \
    seatwright completions bash > ~/.local/share/bash-completion/completions/seatwright")]
pub(crate) struct Completions {
    /// The shell
    #[arg(value_name = "SHELL", value_enum)]
    pub(crate) shell: clap_complete::Shell,
}

/// An invented client.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum Invented {
    /// A fixed obliquity, a healing injury, a foot that propels; fitted, after one adjustment
    #[default]
    Adult,
    /// On a small cushion, sliding forward
    Child,
    /// On a wide cushion, leaning to one side
    Wide,
}

/// A kind of file to begin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Starter {
    /// A client's measures, cushion and wanted changes
    Client,
    /// Seams and compartments over sizes
    Layout,
    /// A kind of air cell
    Cell,
    /// A folder with a plugin in Rust, which builds without network
    Plugin,
    /// A JSON Schema of client files, for an editor
    ClientSchema,
    /// A JSON Schema of layout files, for an editor
    LayoutSchema,
    /// A JSON Schema of cell files, for an editor
    CellSchema,
    /// A JSON Schema of what --json answers, for a script
    ReportSchema,
}

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum Paper {
    /// 210 x 297 mm
    #[default]
    A4,
    /// 8.5 x 11 in
    Letter,
}

impl Paper {
    /// The sheet of paper.
    pub(crate) fn sheet(self) -> sheets::Paper {
        match self {
            Self::A4 => sheets::Paper::A4,
            Self::Letter => sheets::Paper::Letter,
        }
    }
}

/// The unit of lengths on the measuring form.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum FormUnits {
    /// Millimetres
    #[default]
    Mm,
    /// Inches
    In,
}

/// The cell that is counted with.
#[derive(Debug, Args)]
pub(crate) struct Cell {
    /// Count with this cell: a built-in name, or the path of a cell file
    #[arg(long, value_name = "CELL")]
    pub(crate) cell: Option<String>,
}

/// What is added to the record in the client file, and by whom.
#[derive(Clone, Debug, Args)]
pub(crate) struct Record {
    /// Add it to the record in the client file
    #[arg(long, requires = "by")]
    pub(crate) record: bool,

    /// Name who records it, by initials or role
    #[arg(long, value_name = "WHO", requires = "record")]
    pub(crate) by: Option<String>,

    /// Say why, in a sentence for the record
    #[arg(long, value_name = "WHY", requires = "record")]
    pub(crate) because: Option<String>,
}

impl Record {
    /// Whoever records, where something is to be recorded.
    pub(crate) fn recorder(&self, on: Date) -> Option<Recorder<'_>> {
        let because = self.because.as_deref();
        self.by.as_ref().map(|by| Recorder { by, because, on, language: say::language() })
    }
}
