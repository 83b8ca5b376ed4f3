//! `adjust`: from what was found on the filled cushion to the next moves.

use case::{Alarm, Check, SkinAnswer};
use casework::{OpenCase, PROGRAM, Recorder, Whose};
use fitting::{Adjusted, Verdict};
use mechanics::Stop;

use crate::arguments::Adjust;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::terminal::Terminal;
use crate::{tables, today};

/// Explanations that are worth reading.
const MOST_MISTAKES: usize = 6;

/// Shows the next moves, and records checks and moves where asked.
pub(crate) fn run(arguments: &Adjust, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let checks = arguments.checks();
    let never = Stop::never();
    let now = case.counts_now(on, never)?;
    let adjusted = case.adjust(&now, &checks, on, never)?;
    let why = if arguments.why { case.mistakes(&now, &checks, on, never)? } else { Vec::new() };
    let recorded = match &arguments.by {
        Some(by) => {
            let recorder = Recorder { by, because: arguments.because.as_deref(), on };
            case.record_adjustment(outside.shelf(), &checks, &adjusted, &recorder)?
        }
        None => false,
    };
    if arguments.json.json {
        let code = case.client.value.code.as_str();
        let report =
            files::report::adjust(PROGRAM, code, &report(&adjusted, &checks, &why, recorded));
        terminal.answer(&report)?;
    } else {
        let recorded = recorded.then_some(arguments);
        terminal.answer(&words(
            &case,
            &adjusted,
            &why,
            &words::ENGLISH.whence(now.recorded_on),
            recorded,
        ))?;
    }
    match (adjusted.alarms.is_empty(), arguments.json.json) {
        (true, _) => Ok(()),
        (false, true) => Err(client_off(&adjusted).told()),
        (false, false) => Err(client_off(&adjusted)),
    }
}

/// What the alarms are, as the reason for which the command does not end well.
fn client_off(adjusted: &Adjusted) -> Failure {
    let alarms: Vec<String> = adjusted.alarms.iter().map(alarm).collect();
    Failure::new(Whose::Clinician, format!("client off now: {}", alarms.join("; ")))
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

/// What is to be done now, and with which cells.
fn verdict(case: &OpenCase, adjusted: &Adjusted) -> String {
    let mut words = String::new();
    if !adjusted.alarms.is_empty() {
        words += "\nCLIENT OFF NOW.\n";
        for own in &adjusted.alarms {
            words += &format!("  {}.\n", tables::capital(&alarm(own)));
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

fn words(
    case: &OpenCase,
    adjusted: &Adjusted,
    why: &[fitting::Mistake],
    whence: &str,
    recorded: Option<&Adjust>,
) -> String {
    let mut words = format!("{}: {whence}\n", case.client.value.code);
    words += &verdict(case, adjusted);
    // After an alarm the model is known to be wrong here, and before a hand underneath its number
    // would lead the hand.
    let told = matches!(adjusted.verdict, Verdict::AsPlanned | Verdict::Stay | Verdict::Move);
    let expected = adjusted.prediction.seated.as_ref().filter(|_| told);
    if let Some(seat) = expected {
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
        let file = arguments.client.display();
        let whole = adjusted.moves.is_empty() || casework::adjustment_stands(adjusted);
        words += &if whole {
            format!("Recorded in {file}.\n")
        } else {
            format!(
                "What was found is recorded in {file}. The moves are not: with them a limit is \
                 still not kept.\n"
            )
        };
    }
    words
}
