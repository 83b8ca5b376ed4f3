//! `adjust`: from what was found on the filled cushion to the next moves.

use case::{Adjustment, Alarm, Check, Date, Plan as Counts, PlannedCount, SkinAnswer};
use fitting::{AdjustInput, AdjustRefusal, Adjusted, Verdict};
use mechanics::Stop;

use crate::arguments::Adjust;
use crate::case_file::CaseFile;
use crate::failure::{Failure, Kind};
use crate::plugins::Session;
use crate::run::PROGRAM;
use crate::terminal::Terminal;
use crate::{tables, today, write};

/// Explanations that are worth reading.
const MOST_MISTAKES: usize = 6;

/// Shows the next moves, and records checks and moves where asked.
pub(crate) fn run(arguments: &Adjust, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let case = CaseFile::open(&arguments.client, &Session::new(&arguments.plugins))?;
    let checks = arguments.checks();
    if checks.is_empty() {
        return Err(Failure::call("no check is given, so there is nothing to go by")
            .hint("give what was found, such as --top left=tight --under left=25mm"));
    }
    let (now, whence) = case.counts_now(on)?;
    let client = &case.client.value;
    let input = AdjustInput {
        client,
        cushion: &case.cushion,
        on,
        now: &now,
        checks: &checks,
        stop: Stop::never(),
    };
    let adjusted = fitting::adjust(&input).map_err(|refusal| refused(&case, &refusal))?;
    let why = if arguments.why {
        fitting::mistakes(&input).map_err(|refusal| refused(&case, &refusal))?
    } else {
        Vec::new()
    };
    let alarmed = !adjusted.alarms.is_empty();
    let recorded = arguments.by.is_some() && (alarmed || adjusted.questions.is_empty());
    if let Some(by) = arguments.by.as_ref().filter(|_| recorded) {
        record(arguments, &case, &checks, &adjusted, on, by.trim())?;
    }
    if arguments.json.json {
        let code = client.code.as_str();
        let report =
            files::report::adjust(PROGRAM, code, &report(&adjusted, &checks, &why, recorded));
        terminal.answer(&report)?;
        return if alarmed { Err(client_off(&adjusted).told()) } else { Ok(()) };
    }
    terminal.answer(&words(&case, &adjusted, &why, &whence, recorded.then_some(arguments)))?;
    if alarmed { Err(client_off(&adjusted)) } else { Ok(()) }
}

/// What the alarms are, as the reason for which the command does not end well.
fn client_off(adjusted: &Adjusted) -> Failure {
    let alarms: Vec<String> = adjusted.alarms.iter().map(alarm).collect();
    Failure::new(Kind::NotSafe, format!("client off now: {}", alarms.join("; ")))
        .hint("nobody sits on it again before the cause is found and a hand underneath is sure")
}

/// An alarm in words.
fn alarm(alarm: &Alarm) -> String {
    match alarm {
        Alarm::BoneFelt { side, expected } => {
            let expected = expected.map_or_else(String::new, |expected| {
                format!(" ({:.0} mm of cushion were expected)", expected.to_mm())
            });
            format!("the {} seat bone was felt through the cushion{expected}", side.words())
        }
        Alarm::Mark { site, answer } => {
            let site = site.words();
            match answer {
                SkinAnswer::Open => format!("the skin at the {site} is open"),
                SkinAnswer::Worse => format!("the injury at the {site} looks worse"),
                _ => format!("a mark at the {site} is still there after 30 minutes"),
            }
        }
    }
}

/// Why nothing can be said.
fn refused(case: &CaseFile, refusal: &AdjustRefusal) -> Failure {
    match refusal {
        AdjustRefusal::NoWeight => {
            case.weight().err().unwrap_or_else(|| Failure::file("no weight"))
        }
        AdjustRefusal::NoBody(error) => case.no_body(error),
        AdjustRefusal::NoSuchCompartment(_) => {
            let numbers = case.pattern.compartments().iter().map(|own| own.number.to_string());
            let numbers = numbers.collect::<Vec<_>>().join(", ");
            Failure::call(refusal.to_string()).hint(format!("there are {numbers}"))
        }
        AdjustRefusal::Unreachable(_) | AdjustRefusal::NoPartner(_) => {
            Failure::call(refusal.to_string())
                .hint("press only at edges that a hand reaches, against the mirror partner")
        }
    }
}

fn report<'a>(
    adjusted: &'a Adjusted,
    checks: &'a [Check],
    why: &'a [fitting::Mistake],
    recorded: bool,
) -> files::report::AdjustReport<'a> {
    files::report::AdjustReport {
        verdict: adjusted.verdict.id(),
        alarms: &adjusted.alarms,
        look_at: &adjusted.look_at,
        recorded,
        checks,
        questions: &adjusted.questions,
        moves: &adjusted.moves,
        counts: &adjusted.counts,
        notes: &adjusted.notes,
        not_safe: &adjusted.not_safe,
        goals: &adjusted.goals,
        prediction: &adjusted.prediction,
        mistakes: why.iter().map(|own| (own.words.as_str(), own.likelihood)).collect(),
    }
}

/// Adds what was found and moved to the client's file, and the counts after it as a plan.
fn record(
    arguments: &Adjust,
    case: &CaseFile,
    checks: &[Check],
    adjusted: &Adjusted,
    on: Date,
    by: &str,
) -> Result<(), Failure> {
    let spoilt = |words: &str| words.trim().is_empty() || words.chars().any(char::is_control);
    if spoilt(by) || arguments.because.as_deref().is_some_and(spoilt) {
        return Err(Failure::call("--by or --because is empty, or has a line break in it")
            .hint("name who checked and moved, by initials or role, and say why in one line"));
    }
    let cannot =
        |error: files::AppendError| Failure::file(format!("{}: {error}", case.client.file.shown()));
    let adjustment = Adjustment {
        on,
        by: by.to_owned(),
        checks: checks.to_vec(),
        moves: adjusted.moves.clone(),
        why: arguments.because.clone(),
    };
    let mut text = files::append_adjustment(&case.client.file.text, &adjustment).map_err(cannot)?;
    let stands = adjusted.not_safe.is_empty() || adjusted.alarms.is_empty();
    let changed = !adjusted.moves.is_empty() && stands;
    if changed || case.client.value.latest_plan().is_none() {
        let said: Vec<String> = checks.iter().map(ToString::to_string).collect();
        let mut recorded = case.recorded(&as_plan(case, adjusted), on, by);
        recorded.why = Some(format!("after checks: {}", said.join(", ")));
        text = files::append_plan(&text, &recorded).map_err(cannot)?;
    }
    write::one(&arguments.client, text.into_bytes())
}

/// The counts after the moves as a plan.
fn as_plan(case: &CaseFile, adjusted: &Adjusted) -> Counts {
    let counts = case.pattern.indices().zip(&adjusted.counts).map(|(ix, count)| PlannedCount {
        id: case.pattern[ix].id.clone(),
        number: case.pattern[ix].number,
        stock: case.cushion.stock()[ix].cells.stock,
        planned: *count,
        reason: None,
    });
    Counts {
        counts: counts.collect(),
        goals: Vec::new(),
        not_safe: Vec::new(),
        prediction: None,
        moves: Vec::new(),
        cautions: Vec::new(),
    }
}

/// What is to be done now, and with which cells.
fn verdict(case: &CaseFile, adjusted: &Adjusted) -> String {
    let mut words = String::new();
    if !adjusted.alarms.is_empty() {
        words += "\nCLIENT OFF NOW.\n";
        for own in &adjusted.alarms {
            words += &format!("  {}.\n", capital(&alarm(own)));
        }
    }
    if !adjusted.look_at.is_empty() {
        words += "\nThen look at these:\n";
        for look in &adjusted.look_at {
            words += &format!("  {look}\n");
        }
    }
    if !adjusted.questions.is_empty() {
        words += "\nNothing is moved before this is clear:\n";
        for question in &adjusted.questions {
            words += &format!("  {question}\n");
        }
    }
    if !adjusted.moves.is_empty() {
        words.push('\n');
        for own in &adjusted.moves {
            words += &format!("{own}.\n");
        }
        words.push('\n');
        for (own, count) in case.pattern.compartments().iter().zip(&adjusted.counts) {
            words += &format!("  {:>2}  {:<20} {count}\n", own.number, own.id.as_str());
        }
    }
    words += match adjusted.verdict {
        Verdict::AsPlanned => "\nAs planned: stop. Leave the cells as they are.\n",
        Verdict::AsPlannedSoFar => {
            "\nAs planned so far: leave the cells as they are. Checks are missing.\n"
        }
        Verdict::Stay | Verdict::Pinched => "\nLeave the cells as they are.\n",
        Verdict::ClientOff if adjusted.moves.is_empty() => "\nNo cells are moved.\n",
        Verdict::ClientOff | Verdict::Asked | Verdict::Move => "",
    };
    words
}

/// The same with a capital letter at its beginning.
fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

fn words(
    case: &CaseFile,
    adjusted: &Adjusted,
    why: &[fitting::Mistake],
    whence: &str,
    recorded: Option<&Adjust>,
) -> String {
    let mut words = format!("{}: {whence}\n", case.client.value.code);
    words += &verdict(case, adjusted);
    // After an alarm the model is known to be wrong here: its numbers would only reassure.
    let expected = adjusted.prediction.seated.as_ref();
    if let Some(seat) = expected.filter(|_| adjusted.alarms.is_empty()) {
        words += &format!(
            "\nExpected then: {} mm left under the left seat bone, {} mm under the right.\n",
            tables::spread_mm(&seat.clearance.left),
            tables::spread_mm(&seat.clearance.right)
        );
    }
    for reason in &adjusted.not_safe {
        words += &format!("NOT SAFE YET: {reason}.\n");
    }
    for note in &adjusted.notes {
        words += &format!("{note}\n");
    }
    if !why.is_empty() {
        words += "\nWhat would explain it, the likeliest first:\n";
        let likely = why.iter().filter(|own| own.likelihood >= 0.02).take(MOST_MISTAKES);
        for own in likely {
            words += &format!("  {:>3.0} %  {}\n", own.likelihood * 100.0, own.words);
        }
    }
    words += tables::ESTIMATE;
    if let Some(arguments) = recorded {
        words += &format!("Recorded in {}.\n", arguments.client.display());
    }
    words
}
