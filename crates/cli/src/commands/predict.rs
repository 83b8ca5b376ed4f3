//! `predict`: what counts would do under the client.

use std::path::PathBuf;

use case::{Caution, Costs, Finding, Prediction};
use casework::{Edition, OpenCase, PROGRAM, Whose};
use cushion::Mass;
use mechanics::Stop;
use words::{CallFault, Language};

use crate::arguments::Predict;
use crate::compartment::CompartmentRef;
use crate::failure::Failure;
use crate::output_paths::{self, inputs};
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::{outputs, tables};

/// Shows what is expected of counts, in words or in JSON, and draws it where asked.
pub(crate) fn run(arguments: &Predict, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let say = say::about(&case);
    can_be_drawn(arguments, &case)?;
    let now = case.counts_now(on, Stop::never())?;
    // Counts that are only being tried were recorded on no day.
    let recorded_on = now.recorded_on.filter(|_| arguments.cells.is_empty());
    let whence = say.whence(recorded_on);
    let counts = changed(&case, now.counts, &arguments.cells)?;
    let weight = case.weight()?;
    let client = case.as_found(Stop::never());
    let (prediction, cuts) = client.predict(&counts, Stop::never())?;
    let costs = client.costs(&counts, &prediction, Stop::never())?;
    let warnings = warnings(&case, &counts, &prediction);
    if !arguments.sections.is_empty() {
        if cuts.is_empty() {
            let fault = CallFault::NothingToDraw { outcome: say.outcome(prediction.outcome) };
            return Err(Failure::new(Whose::Clinician, say.call_fault(&fault)));
        }
        let paper = arguments.paper.sheet();
        let edition = Edition {
            language: say::language(),
            on,
            paper,
            large_print: false,
            client_in_code: false,
        };
        let drawn = casework::sections(&case, recorded_on, &cuts, edition)?;
        outputs::all(&outside, outputs::drawings(&drawn, &arguments.sections)?)?;
    }
    if terminal.is_json() {
        let code = case.client.value.code.as_str();
        return terminal.answer(&files::report::predict(
            PROGRAM,
            code,
            &prediction,
            costs.as_ref(),
            &warnings,
            &|own| say.finding(own),
        ));
    }
    terminal.warn(&warnings.iter().map(|own| said(say, own)).collect::<Vec<_>>());
    terminal.answer(&words(&case, &prediction, costs.as_ref(), weight, &whence))
}

/// Refuses drawings that would be written over what is read or over each other, or are misnamed.
fn can_be_drawn(arguments: &Predict, case: &OpenCase) -> Result<(), Failure> {
    for path in &arguments.sections {
        output_paths::drawn_as(path)?;
    }
    let read: Vec<PathBuf> = case.inputs().into_iter().map(PathBuf::from).collect();
    output_paths::are_apart(&inputs(&read, &arguments.plugins), &arguments.sections)
}

/// The counts with those of `--cells` in their places.
fn changed(
    case: &OpenCase,
    mut counts: Vec<u32>,
    cells: &[(CompartmentRef, u32)],
) -> Result<Vec<u32>, Failure> {
    for (named, count) in cells {
        counts[named.find(case.cushion.pattern())?.index()] = *count;
    }
    Ok(counts)
}

/// What whoever reads the numbers should know first.
fn warnings(case: &OpenCase, counts: &[u32], prediction: &Prediction) -> Vec<Finding> {
    let compartments = case.cushion.pattern().compartments().iter().zip(counts);
    let empty = compartments.filter(|(_, count)| **count == 0);
    let empty = empty.map(|(own, _)| Finding::Caution(Caution::Empty { number: own.number }));
    empty.chain(fitting::broken(prediction).into_iter().map(Finding::Limit)).collect()
}

/// A warning as a line.
fn said(say: &dyn Language, warning: &Finding) -> String {
    match warning {
        Finding::Limit(limit) => say.not_safe(std::slice::from_ref(limit)),
        other => say.finding(other),
    }
}

/// The prediction as a person reads it.
fn words(
    case: &OpenCase,
    prediction: &Prediction,
    costs: Option<&Costs>,
    weight: Mass,
    whence: &str,
) -> String {
    let (pattern, say) = (case.cushion.pattern(), say::about(case));
    let mut lines = vec![
        format!(
            "{}: {}, {}, {} kg; {whence}",
            case.client.value.code,
            say.text_of_layout(pattern.title()),
            pattern.size(),
            say.decimal(weight.to_kg(), 1)
        ),
        say.ended(prediction),
    ];
    if let Some(seat) = &prediction.seated {
        lines.push(say.seat(seat) + "\n");
        lines.push(tables::compartments_in_use(seat));
        let fixed = say.lines();
        lines.push(tables::sites_in_use(seat) + fixed.model_limits);
        lines.extend(costs.iter().flat_map(|costs| say.costs(costs)));
        lines.push(fixed.estimate.to_owned());
    }
    lines.join("\n") + "\n"
}
