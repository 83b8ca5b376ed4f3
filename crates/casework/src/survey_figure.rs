//! The figure page of a survey, and what it says in words.

use std::collections::BTreeMap;

use case::{Drawn, Spread, SurveyOutcome, SurveyRow, SurveyedPlan};
use cushion::{Length, Pressure};
use sheets::{Document, Histogram, SurveyPage};
use words::Language;

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;

/// Draws the figure page of a survey.
///
/// # Errors
///
/// Fails where something finds no room on the page.
pub fn survey_figure(
    layout: &str,
    rows: &[SurveyRow],
    edition: Edition,
) -> Result<Document, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let sentences = language.survey_summary(&case::SurveySummary::of(rows));
    let panels = panels(language, rows);
    let title = language.survey_of(layout);
    let page = SurveyPage {
        language,
        title: &title,
        sentences: &sentences,
        panels: &panels,
        date: on,
        program: PROGRAM,
    };
    sheets::survey_page(&page, paper).map_err(|error| not_drawn(Drawn::SurveyFigure, error))
}

fn plans(rows: &[SurveyRow]) -> impl Iterator<Item = &SurveyedPlan> {
    rows.iter().filter_map(|row| match &row.outcome {
        SurveyOutcome::Planned(plan) | SurveyOutcome::NotSafe(plan, _) => Some(plan),
        SurveyOutcome::NoSize(_) => None,
    })
}

fn panels(language: &dyn Language, rows: &[SurveyRow]) -> Vec<Histogram> {
    let texts = language.survey();
    let mut sizes: BTreeMap<String, u32> = BTreeMap::new();
    for row in rows {
        let name = match &row.outcome {
            SurveyOutcome::NoSize(_) => texts.no_size.to_owned(),
            SurveyOutcome::Planned(plan) | SurveyOutcome::NotSafe(plan, _) => plan.size.to_string(),
        };
        *sizes.entry(name).or_default() += 1;
    }
    let (names, counts): (Vec<String>, Vec<u32>) = sizes.into_iter().unzip();
    let of = |value: &dyn Fn(&SurveyedPlan) -> Option<f64>| -> Vec<f64> {
        plans(rows).filter_map(value).collect()
    };
    let clearance = |end: fn(&Spread<Length>) -> Length| {
        of(&|plan| {
            let both = plan.clearance?;
            Some(end(&both.left).min(end(&both.right)).to_mm())
        })
    };
    let pressure =
        |end: fn(&Spread<Pressure>) -> Pressure| of(&|plan| Some(end(&plan.surface?).to_kpa()));
    let sizes = Histogram {
        title: texts.sizes.to_owned(),
        axis: texts.width_by_depth.to_owned(),
        names,
        counts,
        most: None,
        note: texts.no_size_note.to_owned(),
    };
    let (cells, mm, kpa) = (texts.cells, texts.millimetres, texts.kilopascals);
    let counted =
        |of_plan: &dyn Fn(&SurveyedPlan) -> u32| of(&|plan| Some(f64::from(of_plan(plan))));
    let of_values = [
        (texts.cells_in_all, cells, counted(&|plan| plan.cells), 25.0),
        (texts.cells_changed, cells, counted(&|plan| plan.changed), 5.0),
        (texts.left_under_lower_seat_bone, mm, clearance(|own| own.central), 2.0),
        (texts.left_at_the_low_end, mm, clearance(|own| own.low), 2.0),
        (texts.under_left_seat_bone, kpa, pressure(|own| own.central), 0.5),
        (texts.at_the_high_end, kpa, pressure(|own| own.high), 0.5),
    ];
    let of_values = of_values
        .iter()
        .map(|(title, unit, values, step)| steps(language, (title, unit), values, *step));
    [sizes].into_iter().chain(of_values).collect()
}

/// Counts values in equal steps.
fn steps(
    language: &dyn Language,
    (title, unit): (&str, &str),
    values: &[f64],
    step: f64,
) -> Histogram {
    let index = |value: f64| (value / step).floor() as i64;
    let low = values.iter().copied().map(index).min().unwrap_or(0);
    let high = values.iter().copied().map(index).max().unwrap_or(0);
    let mut counts = vec![0; (high - low + 1) as usize];
    values.iter().for_each(|value| counts[(index(*value) - low) as usize] += 1);
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let at =
        |share: f64| sorted.get(((sorted.len() as f64 - 1.0) * share).round() as usize).copied();
    let most = at(0.05).zip(at(0.5)).zip(at(0.95)).map(|((low, middle), high)| [low, middle, high]);
    let note = match most {
        Some([low, middle, high]) => language.spread_of_values(low, middle, high),
        None => language.survey().no_values.to_owned(),
    };
    Histogram {
        title: title.to_owned(),
        axis: unit.to_owned(),
        names: (low..=high + 1).map(|at| language.number((at as f64) * step)).collect(),
        counts,
        most: most.map(|all| all.map(|value| value / step - low as f64)),
        note,
    }
}
