//! `predict`: what counts would do under the client.

use std::path::PathBuf;

use case::{Prediction, Spread};
use casework::{OpenCase, PROGRAM, Whose};
use cushion::{Length, Mass, Pressure};
use mechanics::Stop;

use crate::arguments::Predict;
use crate::failure::Failure;
use crate::output_paths::{self, inputs};
use crate::outside::{Outside, name};
use crate::terminal::Terminal;
use crate::{outputs, tables, today};

/// Shows what is expected of counts, in words or in JSON, and draws it where asked.
pub(crate) fn run(arguments: &Predict, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    if let Some(path) = &arguments.svg {
        output_paths::has_ending(path, "svg")?;
        let read = case.inputs().map(PathBuf::from);
        output_paths::are_apart(&inputs(&read, &arguments.plugins), &[path])?;
    }
    let now = case.counts_now(on, Stop::never())?;
    let recorded_on = now.recorded_on;
    let whence = words::ENGLISH.whence(recorded_on);
    let counts = changed(&case, now.counts, &arguments.cells)?;
    let weight = case.weight()?;
    let (prediction, cuts) = case.predict(&counts, Stop::never())?;
    let warnings = warnings(&case, &counts, &prediction);
    if let Some(path) = &arguments.svg {
        if cuts.is_empty() {
            return Err(Failure::new(
                Whose::Clinician,
                format!("nothing can be drawn: {}", prediction.outcome.words()),
            ));
        }
        let drawn = casework::sections(words::ENGLISH, &case, recorded_on, &cuts, on)?;
        outputs::one(&outside, path, drawn)?;
    }
    if arguments.json.json {
        let code = case.client.value.code.as_str();
        return terminal.answer(&files::report::predict(PROGRAM, code, &prediction, &warnings));
    }
    terminal.warn(&warnings);
    terminal.answer(&words(&case, &prediction, weight, &whence))
}

/// The counts with those of `--cells` in their places.
fn changed(
    case: &OpenCase,
    mut counts: Vec<u32>,
    cells: &[(cushion::Name, u32)],
) -> Result<Vec<u32>, Failure> {
    let pattern = case.cushion.pattern();
    for (id, count) in cells {
        let Some(ix) = pattern.by_id(id.as_str()) else {
            let known = pattern.compartments().iter().map(|own| own.id.to_string());
            let known = known.collect::<Vec<_>>().join(", ");
            return Err(Failure::call(format!("this cushion has no compartment `{id}`"))
                .hint(format!("it has {known}")));
        };
        counts[ix.index()] = *count;
    }
    Ok(counts)
}

/// What whoever reads the numbers should know first.
fn warnings(case: &OpenCase, counts: &[u32], prediction: &Prediction) -> Vec<String> {
    let mut warnings = Vec::new();
    for (compartment, count) in case.cushion.pattern().compartments().iter().zip(counts) {
        if *count == 0 {
            warnings.push(format!(
                "compartment {} is empty here: a cushion is never used with an empty compartment",
                compartment.number
            ));
        }
    }
    warnings.extend(
        fitting::broken(prediction).into_iter().map(|reason| format!("not safe: {reason}")),
    );
    warnings
}

/// The prediction as a person reads it.
fn words(case: &OpenCase, prediction: &Prediction, weight: Mass, whence: &str) -> String {
    let pattern = case.cushion.pattern();
    let mut words = format!(
        "{}: {}, {}, {:.1} kg; {whence}\nOutcome: {}.\n",
        case.client.value.code,
        pattern.title(),
        pattern.size(),
        weight.to_kg(),
        prediction.outcome.words()
    );
    let Some(seat) = &prediction.seated else { return words };
    words += &match seat.lower_side {
        None => "The pelvis is level, to 1 mm.\n".to_owned(),
        Some(side) => format!(
            "The client's {} side is LOWER by {:.0} mm at the seat bones.\n",
            side.words().to_uppercase(),
            seat.lower_by.to_mm()
        ),
    };
    let mm = |spread: &Spread<Length>| {
        let Spread { central, low, high } = spread;
        format!("{:.0} mm ({:.0} to {:.0})", central.to_mm(), low.to_mm(), high.to_mm())
    };
    words += &format!(
        "Cushion left under the seat bones: left {}, right {}.\n\
         They sink in by {:.0} and {:.0} mm. Skin touches on {:.0} cm2, mean pressure {}.\n\
         Leaning to a side is resisted with {:.1} N m a degree{}.\n\n",
        mm(&seat.clearance.left),
        mm(&seat.clearance.right),
        seat.immersion.left.to_mm(),
        seat.immersion.right.to_mm(),
        seat.contact_area.to_cm2(),
        kpa(&seat.mean_surface),
        seat.roll_stiffness,
        match seat.trunk_stiffness {
            0.0 => String::new(),
            trunk => format!("; the leaning trunk takes {trunk:.1} of it"),
        },
    );
    words += &tables::compartments_in_use(seat);
    words.push('\n');
    words += &tables::sites_in_use(seat);
    words + tables::MODEL_LIMITS + tables::ESTIMATE
}

/// A pressure with its spread.
fn kpa(spread: &Spread<Pressure>) -> String {
    format!(
        "{:.1} kPa ({:.1} to {:.1})",
        spread.central.to_kpa(),
        spread.low.to_kpa(),
        spread.high.to_kpa()
    )
}
