//! `plan`: counts for a client, shown and perhaps recorded.

use case::Plan as Counts;
use casework::{OpenCase, PROGRAM, Recorder, Whose};
use mechanics::Stop;

use crate::arguments::Plan;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::terminal::Terminal;
use crate::{tables, today};

/// Shows the plan for a client, as a table or in JSON, and records it where asked.
pub(crate) fn run(arguments: &Plan, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let plan = case.plan(on, Stop::never())?;
    let unplanned = case.has_goals_and_no_weight();
    let stands = !unplanned && casework::plan_stands(&plan, arguments.nearest_safe);
    let recorded = match &arguments.by {
        Some(by) => {
            let recorder = Recorder { by, because: None, on };
            case.record_plan(outside.shelf(), &plan, arguments.nearest_safe, &recorder)?
        }
        None => false,
    };
    if arguments.json.json {
        let code = case.client.value.code.as_str();
        terminal.answer(&files::report::plan(PROGRAM, code, &plan, recorded))?;
        return if stands { Ok(()) } else { Err(why_not(arguments, &plan, unplanned).told()) };
    }
    let cautions: Vec<String> = plan.cautions.iter().map(|own| own.text.clone()).collect();
    terminal.warn(&cautions);
    terminal.answer(&words(arguments, &case, &plan, recorded, terminal))?;
    if stands { Ok(()) } else { Err(why_not(arguments, &plan, unplanned)) }
}

/// Why the plan does not stand, or was made for nothing that is wanted.
fn why_not(arguments: &Plan, plan: &Counts, unplanned: bool) -> Failure {
    if !unplanned {
        return not_safe(arguments, plan);
    }
    let unrecorded = if arguments.record { "; nothing was recorded" } else { "" };
    Failure::file(format!(
        "nothing is planned for the goals without the client's weight{unrecorded}"
    ))
    .hint("weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`")
}

/// Why the plan does not stand.
fn not_safe(arguments: &Plan, plan: &Counts) -> Failure {
    let unrecorded = if arguments.record { "; nothing was recorded" } else { "" };
    if !plan.not_safe.is_empty() {
        let reasons = plan.not_safe.join("; ");
        return Failure::new(
            Whose::Clinician,
            format!("not safely possible: {reasons}{unrecorded}"),
        )
        .hint("take another size, layout or wall height; the counts shown come nearest");
    }
    let unmet: Vec<String> = (plan.goals.iter().filter(|goal| !goal.met))
        .map(|goal| {
            let why = goal.why.as_deref().unwrap_or("it is out of reach");
            format!("{}: {why}", goal.words)
        })
        .collect();
    let message =
        format!("not all that is wanted is safely possible: {}{unrecorded}", unmet.join("; "));
    Failure::new(Whose::Clinician, message)
        .hint("the plan shown is the nearest safe one; --nearest-safe takes it")
}

/// The plan as a table, with what to do next.
fn words(
    arguments: &Plan,
    case: &OpenCase,
    plan: &Counts,
    recorded: bool,
    terminal: Terminal,
) -> String {
    let client = &case.client.value;
    let file = arguments.client.display();
    let mut words = format!(
        "{}: {}, {}\n\n{}{}\nSpare cells in the bag: {}.\n{}",
        client.code,
        case.pattern.title(),
        case.pattern.size(),
        tables::plan(plan),
        expected(plan),
        client.cushion.spare_cells,
        tables::ESTIMATE
    );
    words += &match (&arguments.by, terminal.is_read_by_a_person()) {
        (Some(by), _) if recorded => format!("Recorded in {file} by {}.\n", by.trim()),
        (Some(_), _) => String::new(),
        (None, true) => format!("Not recorded: seatwright plan {file} --record --by WHO\n"),
        (None, false) => String::new(),
    };
    words
}

/// What the plan is expected to do: goals, heights, moves.
fn expected(plan: &Counts) -> String {
    let mut words = String::new();
    for (at, goal) in plan.goals.iter().enumerate() {
        let number = |number: f64| format!("{number:.0} {}", goal.unit);
        let reached = goal.reached.map_or_else(
            || "refused".to_owned(),
            |reached| format!("{} of {} wanted", number(reached), number(goal.wanted)),
        );
        let verdict = if goal.met { "met" } else { "NOT MET" };
        words += &format!("\nGoal {}: {}. {verdict}: {reached}.", at + 1, goal.words);
        if let Some(why) = &goal.why {
            words += &format!(" {}.", tables::capital(why));
        }
    }
    if !plan.goals.is_empty() {
        words.push('\n');
    }
    if let Some(seat) = plan.prediction.as_ref().and_then(|own| own.seated.as_ref()) {
        let side = |spread: &case::Spread<cushion::Length>| {
            let [central, low, high] =
                [spread.central, spread.low, spread.high].map(|it| it.to_mm());
            format!("{central:.0} mm ({low:.0} to {high:.0})")
        };
        let lower = seat.lower_side.map_or_else(
            || "the pelvis level".to_owned(),
            |lower| {
                let side = lower.words().to_uppercase();
                format!("the client's {side} side LOWER by {:.0} mm", seat.lower_by.to_mm())
            },
        );
        words += &format!(
            "\nExpected: {lower}; left under the seat bones: left {}, right {}.\n",
            side(&seat.clearance.left),
            side(&seat.clearance.right)
        );
    }
    for own in &plan.moves {
        words += &format!("{own}.\n");
    }
    words
}
