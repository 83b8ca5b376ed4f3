//! The figure page of a survey, and what it says in words.

use std::collections::BTreeMap;

use case::{Date, Drawn, SurveyOutcome, SurveyRow, SurveyedPlan};
use sheets::{Histogram, Paper, SurveyPage};
use words::Language;

use crate::PROGRAM;
use crate::error::WorkError;
use crate::export::svg;
use crate::not_drawn::not_drawn;

/// Draws the figure page of a survey, as SVG.
///
/// # Errors
///
/// Fails where something finds no room on the page.
pub fn survey_figure(
    language: &dyn Language,
    layout: &str,
    rows: &[SurveyRow],
    on: Date,
) -> Result<Vec<u8>, WorkError> {
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
    let document = sheets::survey_page(&page, Paper::A4)
        .map_err(|error| not_drawn(Drawn::SurveyFigure, error))?;
    Ok(svg(&document.pages[0]))
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
    vec![
        Histogram {
            title: texts.sizes.to_owned(),
            names,
            counts,
            note: texts.no_size_note.to_owned(),
        },
        steps(language, texts.cells_in_all, &of(&|plan| Some(f64::from(plan.cells))), 25.0),
        steps(language, texts.cells_changed, &of(&|plan| Some(f64::from(plan.changed))), 5.0),
        steps(
            language,
            texts.left_under_lower_seat_bone,
            &of(&|plan| {
                let both = plan.clearance?;
                Some(both.left.central.min(both.right.central).to_mm())
            }),
            2.0,
        ),
        steps(
            language,
            texts.left_at_the_low_end,
            &of(&|plan| {
                let both = plan.clearance?;
                Some(both.left.low.min(both.right.low).to_mm())
            }),
            2.0,
        ),
        steps(
            language,
            texts.under_left_seat_bone,
            &of(&|plan| Some(plan.surface?.central.to_kpa())),
            0.5,
        ),
    ]
}

/// Counts values in equal steps.
fn steps(language: &dyn Language, title: &str, values: &[f64], step: f64) -> Histogram {
    let index = |value: f64| (value / step).floor() as i64;
    let low = values.iter().copied().map(index).min().unwrap_or(0);
    let high = values.iter().copied().map(index).max().unwrap_or(0);
    let mut counts = vec![0; (high - low + 1) as usize];
    values.iter().for_each(|value| counts[(index(*value) - low) as usize] += 1);
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let at =
        |share: f64| sorted.get(((sorted.len() as f64 - 1.0) * share).round() as usize).copied();
    let note = match (at(0.05), at(0.5), at(0.95)) {
        (Some(low), Some(middle), Some(high)) => language.spread_of_values(low, middle, high),
        _ => language.survey().no_values.to_owned(),
    };
    Histogram {
        title: title.to_owned(),
        names: (low..=high).map(|at| ((at as f64) * step).to_string()).collect(),
        counts,
        note,
    }
}
