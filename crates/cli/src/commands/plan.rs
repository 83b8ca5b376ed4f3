//! `plan`: counts for a client, shown and perhaps recorded.

use case::{Plan as Counts, Said};
use casework::{OpenCase, PROGRAM, Whose};
use files::report::StandingReport;
use mechanics::Stop;
use words::{Done, Language};

use crate::arguments::Plan;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::tables;
use crate::terminal::Terminal;

/// Shows the plan for a client, as a table or in JSON, and records it where asked.
pub(crate) fn run(arguments: &Plan, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let say = say::about(&case);
    let plan = case.plan(on, Stop::never())?;
    let ending = ending(say, arguments, &case, &plan);
    let recorded = match arguments.record.recorder(on) {
        Some(by) if !is_too_little(arguments, &plan) => {
            case.record_plan(outside.shelf(), &plan, arguments.nearest_safe, &by)?
        }
        _ => false,
    };
    // What was recorded stays so where the file cannot be read again.
    let client = match recorded {
        true => outside.surroundings().client(&name(&arguments.client)).ok().map(|own| own.value),
        false => Some(case.client.value.clone()),
    };
    let standing = client.as_ref().map(|client| case.standing_of(client, on));
    let standing = standing.map(|own| StandingReport::new(own, say.standing(own)));
    if terminal.is_json() {
        let own = (case.client.value.code.as_str(), standing.as_ref());
        terminal.answer(&files::report::plan(
            PROGRAM,
            own,
            (&plan, case.other.as_ref()),
            recorded,
            &|own| say.finding(own),
        ))?;
        return ending.map_err(Failure::told);
    }
    let cautions: Vec<String> = plan.cautions.iter().map(|own| say.caution(own)).collect();
    terminal.warn(&cautions);
    terminal.answer(&words(arguments, &case, &plan, (recorded, standing.as_ref()), terminal))?;
    ending
}

/// Whether a goal falls short where none may.
fn is_too_little(arguments: &Plan, plan: &Counts) -> bool {
    arguments.strict && plan.goals.iter().any(|goal| !goal.met)
}

/// Whether the plan stands for what is wanted, and why not.
fn ending(
    say: &dyn Language,
    arguments: &Plan,
    case: &OpenCase,
    plan: &Counts,
) -> Result<(), Failure> {
    let unrecorded = arguments.record.record.then(|| say.done(&Done::NothingRecorded));
    let told = |message: &str| Said {
        message: format!("{message}{}", unrecorded.as_deref().unwrap_or_default()),
        hint: None,
    };
    let lines = say.lines();
    if case.has_goals_and_no_weight() {
        let said = told(say.nothing_planned());
        return Err(Failure::new(Whose::Writer, said).hint(lines.weigh_the_client));
    }
    let kept_or_taken = |limit: &case::BrokenLimit| arguments.nearest_safe && limit.may_be_taken();
    if !plan.not_safe.iter().all(kept_or_taken) {
        let said = told(&say.not_safe(&plan.not_safe));
        let may_be_taken = plan.not_safe.iter().all(case::BrokenLimit::may_be_taken);
        let hint = if may_be_taken { lines.nearest_safe_shown } else { lines.take_another_cushion };
        return Err(Failure::new(Whose::Clinician, said).hint(hint));
    }
    let waiting = casework::short_for_injuries(plan, &case.client.value);
    if !waiting.is_empty() && !arguments.nearest_safe {
        let said = told(&say.goals_not_reached(&waiting));
        return Err(Failure::new(Whose::Clinician, said).hint(lines.nearest_safe_shown));
    }
    if is_too_little(arguments, plan) {
        return Err(Failure::new(Whose::GoalSetter, told(&say.goals_not_reached(&plan.goals))));
    }
    Ok(())
}

/// The plan as a table, with what to do next.
fn words(
    arguments: &Plan,
    case: &OpenCase,
    plan: &Counts,
    (recorded, standing): (bool, Option<&StandingReport>),
    terminal: Terminal,
) -> String {
    let (client, say) = (&case.client.value, say::about(case));
    let file = arguments.client.display().to_string();
    let mut lines = vec![
        format!(
            "{}: {}, {}\n",
            client.code,
            say.text_of_layout(case.pattern.title()),
            case.pattern.size()
        ),
        tables::plan(plan),
    ];
    lines.extend(expected(say, plan));
    lines.extend(case.other.iter().flat_map(|other| {
        let here = case.expected(plan.prediction.as_ref());
        say.beside_the_other(other, (plan.total_planned(), here.as_ref()))
    }));
    let mut bag = match client.cushion_now().filter(|now| now.is_in(&client.cushion)) {
        Some(now) => say.bag(now.bag),
        None => say.spare_cells(client.cushion.spare_cells),
    };
    if !plan.moves.is_empty() {
        bag += &format!(" {}", say.bag_after(client.bag_after(&plan.moves)));
    }
    lines.push(bag);
    lines.push(say.lines().estimate.to_owned());
    match (&arguments.record.by, terminal.is_read_by_a_person()) {
        (Some(by), _) if recorded => {
            lines.push(say.done(&Done::Recorded { file: &file, by: Some(by.trim()) }));
        }
        (None, true) => {
            let command = format!("seatwright plan {file} --record --by WHO");
            lines.push(say.done(&Done::NotRecorded { command: &command }));
        }
        (Some(_), _) | (None, false) => {}
    }
    lines.extend(recorded.then(|| say.is_proposed().to_owned()));
    lines.extend(standing.map(|own| own.text().to_owned()));
    lines.join("\n") + "\n"
}

/// What the plan is expected to do, a line each: goals, heights, moves.
fn expected(say: &dyn Language, plan: &Counts) -> Vec<String> {
    let goals = plan.goals.iter().enumerate();
    let mut lines: Vec<String> = goals.map(|(at, goal)| say.ranked_goal(at + 1, goal)).collect();
    if !lines.is_empty() {
        lines.push(String::new());
    }
    let seat = plan.prediction.as_ref().and_then(|own| own.seated.as_ref());
    lines.extend(seat.map(|seat| say.expected_seat(seat)));
    lines.extend(plan.costs.iter().flat_map(|costs| say.costs(costs)));
    lines.extend(plan.moves.iter().map(|own| say.a_move(own)));
    lines.push(String::new());
    lines
}
