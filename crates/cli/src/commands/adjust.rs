//! `adjust`: from what was found on the filled cushion to the next moves.

use case::{Check, Doubt, MeasuredAt, Said, Verdict};
use casework::{OpenCase, PROGRAM, Whose, WorkError};
use fitting::{Adjusted, Explanation};
use mechanics::Stop;
use words::{Done, Language};

use crate::arguments::Adjust;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;

/// Explanations that are worth reading.
const MOST_MISTAKES: usize = 6;

/// Shows the next moves, and records checks and moves where asked.
pub(crate) fn run(arguments: &Adjust, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let say = say::about(&case);
    let checks = arguments.checks(&case.pattern)?;
    let never = Stop::never();
    let now = case.counts_now(on, never)?;
    let mistakes = || case.mistakes(&now, &checks, on, never);
    let (adjusted, why) = std::thread::scope(|scope| {
        // Neither needs the other, and there are two processors.
        let why = arguments.why.then(|| scope.spawn(mistakes));
        let adjusted = case.adjust(&now, &checks, on, never);
        let why =
            why.map(|why| why.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)));
        Ok::<_, WorkError>((adjusted?, why.transpose()?.unwrap_or_default()))
    })?;
    let spares = case.too_few_spares(&adjusted);
    let recorded = match arguments.record.recorder(on) {
        Some(by) => {
            let taken = arguments.nearest_safe;
            case.record_adjustment(outside.shelf(), &checks, &adjusted, taken, &by)?
        }
        None => false,
    };
    if terminal.is_json() {
        let code = case.client.value.code.as_str();
        let report = report(&adjusted, (&checks, spares.as_ref()), &why, recorded);
        terminal.answer(&files::report::adjust(PROGRAM, code, &report, &|own| say.finding(own)))?;
    } else {
        let whence = now.from.map_or_else(|| say.whence(None), |from| say.begins_from(from));
        let mut lines = words(&case, &adjusted, &why, &whence, &checks, arguments);
        lines.extend(recorded.then(|| recorded_in(arguments, &adjusted)));
        terminal.warn(&spares.iter().map(|own| say.caution(own)).collect::<Vec<_>>());
        terminal.answer(&(lines.join("\n") + "\n"))?;
    }
    match ending(say, arguments, &adjusted) {
        Err(failure) if terminal.is_json() => Err(failure.told()),
        ending => ending,
    }
}

/// Whether the answer ends well: not after an alarm, not where nothing can be moved and a limit is not
/// kept, and not where moves load an injury and nobody took them by name.
fn ending(say: &dyn Language, arguments: &Adjust, adjusted: &Adjusted) -> Result<(), Failure> {
    if !adjusted.alarms.is_empty() {
        return Err(client_off(say, adjusted));
    }
    let not_safe = |hint: &'static str| {
        let said = Said { message: say.not_safe(&adjusted.not_safe), hint: Some(hint.to_owned()) };
        Err(Failure::new(Whose::Clinician, said))
    };
    let loads = adjusted.not_safe.iter().any(case::BrokenLimit::may_be_taken);
    if adjusted.verdict == Verdict::Move && loads && !arguments.nearest_safe {
        return not_safe(say.lines().keep_off_or_take);
    }
    let stands = casework::adjustment_stands(adjusted, arguments.nearest_safe);
    if adjusted.verdict == Verdict::Stay && !stands {
        return not_safe(say.lines().take_another_cushion);
    }
    Ok(())
}

/// What the alarms are, as the reason for which the command does not end well.
fn client_off(say: &dyn Language, adjusted: &Adjusted) -> Failure {
    let said = Said { message: say.client_off(&adjusted.alarms), hint: None };
    Failure::new(Whose::Clinician, said).hint(say.lines().nobody_sits)
}

fn report<'a>(
    adjusted: &'a Adjusted,
    (checks, spares): (&'a [Check], Option<&'a case::Caution>),
    why: &'a [Explanation],
    recorded: bool,
) -> files::report::AdjustReport<'a> {
    files::report::AdjustReport {
        verdict: adjusted.verdict,
        alarms: &adjusted.alarms,
        look_at: &adjusted.look_at,
        recorded,
        checks,
        doubts: &adjusted.doubts,
        left_out: &adjusted.left_out,
        moves: &adjusted.moves,
        counts: &adjusted.counts,
        next: &adjusted.next,
        not_safe: &adjusted.not_safe,
        goals: &adjusted.goals,
        spares,
        prediction: &adjusted.prediction,
        costs: adjusted.costs.as_ref(),
        mistakes: why.iter().map(|own| (&own.mistake, own.likelihood)).collect(),
    }
}

/// A heading with what stands under it, a line each; nothing where nothing does.
fn under(heading: &str, lines: impl IntoIterator<Item = String>) -> Vec<String> {
    let mut lines: Vec<String> = lines.into_iter().map(|line| format!("  {line}")).collect();
    if !lines.is_empty() {
        lines.insert(0, format!("\n{heading}"));
    }
    lines
}

/// Where to look in the set-up.
fn looks(say: &dyn Language, adjusted: &Adjusted) -> Vec<String> {
    let looks = adjusted.look_at.iter().map(|own| say.look_at(*own).to_owned());
    under(say.lines().look_at_these, looks)
}

/// What is to be done now, and with which cells.
fn verdict(case: &OpenCase, adjusted: &Adjusted) -> Vec<String> {
    let say = say::about(case);
    let fixed = say.lines();
    let alarms = adjusted.alarms.iter().map(|own| say.alarm(own) + ".");
    let mut lines = under(fixed.client_off_now, alarms);
    if !adjusted.alarms.is_empty() {
        lines.extend(looks(say, adjusted));
    }
    let doubts = adjusted.doubts.iter().map(|own| say.doubt(own));
    lines.extend(under(fixed.clear_this_first, doubts));
    if !adjusted.moves.is_empty() {
        lines.push(String::new());
        lines.extend(adjusted.moves.iter().map(|own| say.a_move(own)));
        lines.push(String::new());
        let counts = case.pattern.compartments().iter().zip(&adjusted.counts);
        lines.extend(
            counts.map(|(own, count)| {
                format!("  {:>2}  {:<20} {count}", own.number, own.id.as_str())
            }),
        );
    }
    let verdict = say.verdict(adjusted.verdict, !adjusted.moves.is_empty());
    lines.extend(verdict.map(|verdict| format!("\n{verdict}")));
    lines
}

/// What was found at the front of the pelvis, as it counts at the seat bones.
fn at_the_seat_bones(case: &OpenCase, checks: &[Check]) -> Vec<String> {
    let spacing = case.client.value.measures.seat_bone_spacing;
    let found = checks.iter().filter_map(|check| match check {
        Check::Lower { by, at: at @ MeasuredAt::Asis, .. } => Some((*by, *at)),
        _ => None,
    });
    let say = say::about(case);
    found
        .map(|(by, at)| say.at_the_seat_bones(by, fitting::at_seat_bones(by, at, spacing)))
        .collect()
}

/// The answer as a person reads it.
fn words(
    case: &OpenCase,
    adjusted: &Adjusted,
    why: &[Explanation],
    whence: &str,
    checks: &[Check],
    arguments: &Adjust,
) -> Vec<String> {
    let say = say::about(case);
    let mut lines = vec![format!("{}: {whence}", case.client.value.code)];
    let notes = case.client.value.record_notes();
    lines.extend(notes.iter().map(|own| say.record_note(own)));
    lines.extend(at_the_seat_bones(case, checks));
    lines.extend(verdict(case, adjusted));
    // After an alarm the model is known to be wrong here, and before a hand underneath its number
    // would lead the hand.
    let told = matches!(adjusted.verdict, Verdict::AsPlanned | Verdict::Stay | Verdict::Move);
    let expected = adjusted.prediction.seated.as_ref().filter(|_| told);
    lines.extend(expected.map(|seat| format!("\n{}", say.expected_after_moves(seat))));
    let costs = adjusted.costs.as_ref().filter(|_| !adjusted.moves.is_empty());
    lines.extend(costs.iter().flat_map(|costs| say.costs(costs)));
    lines.extend(adjusted.not_safe.iter().map(|limit| say.not_safe_yet(limit)));
    lines.extend(adjusted.next.iter().map(|step| say.next_step(*step)));
    if adjusted.alarms.is_empty() {
        lines.extend(looks(say, adjusted));
    }
    lines.extend(adjusted.left_out.iter().map(|check| say.left_out(check)));
    let misfit = adjusted.doubts.iter().any(|own| matches!(own, Doubt::Misfit(_)));
    if !arguments.why && (misfit || !adjusted.left_out.is_empty()) {
        lines.push(say.done(&Done::WhyLooksForMistakes));
    }
    let likely = why.iter().filter(|own| own.likelihood >= 0.02).take(MOST_MISTAKES);
    let explained = likely
        .map(|own| format!("{:>3.0} %  {}", own.likelihood * 100.0, say.mistake(&own.mistake)));
    lines.extend(under(say.lines().what_would_explain, explained));
    lines.push(say.lines().estimate.to_owned());
    lines
}

/// What was recorded, a line.
fn recorded_in(arguments: &Adjust, adjusted: &Adjusted) -> String {
    let (say, file) = (say::language(), arguments.client.display().to_string());
    let stands = casework::adjustment_stands(adjusted, arguments.nearest_safe);
    if !adjusted.moves.is_empty() && !stands {
        return say.done(&Done::MovesNotRecorded { file: &file });
    }
    let recorded = say.done(&Done::Recorded { file: &file, by: None });
    if adjusted.moves.is_empty() { recorded } else { format!("{recorded} {}", say.is_proposed()) }
}
