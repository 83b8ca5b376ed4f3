//! Tables of bodies and of surveys, as CSV.

use case::question::{Kind, Question, Range};
use case::{
    Digest, NoSize, Sides, Spread, SurveyFault, SurveyOutcome, SurveyPart, SurveyRow, SurveyedBody,
    SurveyedPlan, TableFault,
};
use cushion::{Length, Mass, Pressure, Size};

use crate::digest;

/// What is wrong with a table, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct TableError {
    /// The line, from 1.
    pub line: u64,
    /// What is wrong there.
    pub fault: TableFault,
}

/// Columns that a table of bodies must have.
const WANTED: [&str; 3] = ["mass_kg", "hip_breadth_sitting_mm", "buttock_popliteal_mm"];

/// What they answer.
const QUESTIONS: [Question; 3] = [Question::WeightKg, Question::HipWidth, Question::ThighDepth];

/// What is taken as an answer.
fn range(question: Question) -> Range {
    match question.row().kind {
        Kind::Length(range) | Kind::Number(_, range) => range,
        _ => Range { least: f64::MIN, most: f64::MAX },
    }
}

/// Reads bodies from CSV with a heading; columns that are not known are left.
///
/// # Errors
///
/// Returns the first line that cannot be read.
pub fn read_bodies(text: &str) -> Result<Vec<SurveyedBody>, TableError> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().map_err(|error| wrong(&error, 1))?.clone();
    let column = |name: &str| head.iter().position(|own| own == name);
    let mut wanted = [0; 3];
    for (at, name) in wanted.iter_mut().zip(WANTED) {
        let none = TableError { line: 1, fault: TableFault::NoColumn { name, wanted: &WANTED } };
        *at = column(name).ok_or(none)?;
    }
    let sex = column("sex");
    let mut bodies = Vec::new();
    for (at, record) in reader.records().enumerate() {
        let row = at as u32 + 1;
        let record = record.map_err(|error| wrong(&error, u64::from(row) + 1))?;
        let line = record.position().map_or(u64::from(row) + 1, csv::Position::line);
        let number = |which: usize| {
            let range = range(QUESTIONS[which]);
            let text = record.get(wanted[which]).unwrap_or_default();
            let number = text.trim().parse::<f64>().ok().filter(|number| range.has(*number));
            number.ok_or_else(|| TableError {
                line,
                fault: TableFault::Cell {
                    written: text.to_owned(),
                    column: WANTED[which],
                    least: range.least,
                    most: range.most,
                },
            })
        };
        bodies.push(SurveyedBody {
            row,
            sex: sex.and_then(|at| record.get(at)).unwrap_or_default().trim().to_owned(),
            weight: Mass::from_kg(number(0)?),
            hip_width: Length::from_mm(number(1)?),
            thigh_depth: Length::from_mm(number(2)?),
        });
    }
    Ok(bodies)
}

fn wrong(error: &csv::Error, line: u64) -> TableError {
    TableError {
        line: error.position().map_or(line, csv::Position::line),
        fault: TableFault::NotARow(error.to_string()),
    }
}

/// The heading of a survey.
const HEAD: [&str; 22] = [
    "row",
    "sex",
    "mass_kg",
    "hip_width_mm",
    "thigh_depth_mm",
    "outcome",
    "reason",
    "size",
    "cells",
    "changed",
    "clearance_left_mm",
    "clearance_left_low_mm",
    "clearance_right_mm",
    "clearance_right_low_mm",
    "seat_bone_kpa",
    "seat_bone_low_kpa",
    "seat_bone_high_kpa",
    "mean_kpa",
    "layout",
    "survey",
    "part",
    "of",
];

/// Returns a part of a survey as CSV with its heading.
#[must_use]
pub fn write_survey(part: &SurveyPart, rows: &[SurveyRow]) -> String {
    let mut text = HEAD.join(",") + "\n";
    rows.iter().for_each(|row| text += &survey_line(part, row));
    text
}

/// Returns one row of a survey as a line.
#[must_use]
pub fn survey_line(part: &SurveyPart, row: &SurveyRow) -> String {
    let one = |number: f64| ((number * 10.0).round() / 10.0).to_string();
    let two = |number: f64| ((number * 100.0).round() / 100.0).to_string();
    let body = &row.body;
    let mut cells = vec![
        body.row.to_string(),
        body.sex.clone(),
        one(body.weight.to_kg()),
        one(body.hip_width.to_mm()),
        one(body.thigh_depth.to_mm()),
    ];
    let (outcome, reason, plan) = match &row.outcome {
        SurveyOutcome::NoSize(reason) => ("no size", id_of(&NoSize::IDS, reason), None),
        SurveyOutcome::Planned(plan) => ("planned", "", Some(plan)),
        SurveyOutcome::NotSafe(plan, reason) => {
            ("not safe", id_of(&SurveyFault::IDS, reason), Some(plan))
        }
    };
    cells.extend([outcome.to_owned(), reason.to_owned()]);
    match plan {
        None => cells.extend(std::iter::repeat_n(String::new(), 11)),
        Some(plan) => {
            cells.extend([plan.size.to_string(), plan.cells.to_string(), plan.changed.to_string()]);
            let clearance = |of: fn(&Sides<Spread<Length>>) -> Length| {
                plan.clearance.as_ref().map_or_else(String::new, |own| one(of(own).to_mm()))
            };
            cells.extend([
                clearance(|own| own.left.central),
                clearance(|own| own.left.low),
                clearance(|own| own.right.central),
                clearance(|own| own.right.low),
            ]);
            let surface = |of: fn(&Spread<Pressure>) -> Pressure| {
                plan.surface.as_ref().map_or_else(String::new, |own| two(of(own).to_kpa()))
            };
            cells.extend([
                surface(|own| own.central),
                surface(|own| own.low),
                surface(|own| own.high),
                plan.mean_surface.map_or_else(String::new, |own| two(own.to_kpa())),
            ]);
        }
    }
    let SurveyPart { layout, survey, part, of } = part;
    cells.extend([layout.clone(), survey.to_string(), part.to_string(), of.to_string()]);
    let mut writer = csv::Writer::from_writer(Vec::new());
    let written = writer.write_record(&cells);
    let bytes =
        written.and_then(|()| writer.into_inner().map_err(|error| error.into_error().into()));
    let bytes = bytes.expect("memory can be written to");
    String::from_utf8(bytes).expect("it was made of text")
}

/// How a table calls a value.
fn id_of<T: PartialEq>(ids: &[(T, &'static str)], value: &T) -> &'static str {
    ids.iter().find(|(own, _)| own == value).map_or("", |(_, id)| id)
}

/// What a table calls so.
fn of_id<T: Copy>(ids: &[(T, &str)], id: &str) -> Option<T> {
    ids.iter().find(|(_, own)| *own == id).map(|(value, _)| *value)
}

/// By which the survey of a text, a cell, a table and options is known again.
#[must_use]
pub fn digest_of_survey(texts: &[&str], options: &str) -> Digest {
    let digests = texts.iter().map(|text| digest(text).to_string());
    let all: Vec<String> = digests.chain([options.to_owned()]).collect();
    digest(&all.join(" "))
}

/// Reads a part of a survey back; of a table without rows it is not known which it is. A last line
/// without its end, as an interrupted run leaves it, is left out.
///
/// # Errors
///
/// Returns the first line that cannot be read.
pub fn read_survey(text: &str) -> Result<(Option<SurveyPart>, Vec<SurveyRow>), TableError> {
    let whole = text.rfind('\n').map_or("", |end| &text[..=end]);
    let mut reader = csv::Reader::from_reader(whole.as_bytes());
    let head = reader.headers().map_err(|error| wrong(&error, 1))?;
    if !whole.is_empty() && head.iter().ne(HEAD) {
        return Err(TableError { line: 1, fault: TableFault::NoSurvey });
    }
    let (mut part, mut rows): (Option<SurveyPart>, Vec<SurveyRow>) = (None, Vec::new());
    for (at, record) in reader.records().enumerate() {
        let line = at as u64 + 2;
        let record = record.map_err(|error| wrong(&error, line))?;
        let wrong = TableError { line, fault: TableFault::SurveyRow };
        let row = survey_row(&record).zip(survey_part(&record));
        let own = row.filter(|(_, own)| part.as_ref().is_none_or(|part| part == own));
        let (row, own) = own.ok_or(wrong)?;
        part = Some(own);
        rows.push(row);
    }
    Ok((part, rows))
}

fn survey_part(record: &csv::StringRecord) -> Option<SurveyPart> {
    let number = |at: usize| record.get(at)?.parse::<usize>().ok();
    let (part, of) = (number(20)?, number(21)?);
    let layout = record.get(18)?.to_owned();
    let survey = Digest::new(record.get(19)?)?;
    (1..=of).contains(&part).then_some(SurveyPart { layout, survey, part, of })
}

fn survey_row(record: &csv::StringRecord) -> Option<SurveyRow> {
    let text = |at: usize| record.get(at).unwrap_or_default();
    let number = |at: usize| text(at).parse::<f64>().ok().filter(|number| number.is_finite());
    let body = SurveyedBody {
        row: text(0).parse().ok()?,
        sex: text(1).to_owned(),
        weight: Mass::from_kg(number(2)?),
        hip_width: Length::from_mm(number(3)?),
        thigh_depth: Length::from_mm(number(4)?),
    };
    let plan = || {
        let mm = |at| number(at).map(Length::from_mm);
        let kpa = |at| number(at).map(Pressure::from_kpa);
        // What is not in the table is taken as what is.
        let around = |central, low| {
            Some(Spread { central: mm(central)?, low: mm(low)?, high: mm(central)? })
        };
        let clearance =
            around(10, 11).zip(around(12, 13)).map(|(left, right)| Sides { left, right });
        let surface = (|| Some(Spread { central: kpa(14)?, low: kpa(15)?, high: kpa(16)? }))();
        Some(SurveyedPlan {
            size: text(7).parse::<Size>().ok()?,
            cells: text(8).parse().ok()?,
            changed: text(9).parse().ok()?,
            clearance,
            surface,
            mean_surface: kpa(17),
        })
    };
    let outcome = match text(5) {
        "no size" => SurveyOutcome::NoSize(of_id(&NoSize::IDS, text(6))?),
        "planned" => SurveyOutcome::Planned(plan()?),
        "not safe" => SurveyOutcome::NotSafe(plan()?, of_id(&SurveyFault::IDS, text(6))?),
        _ => return None,
    };
    Some(SurveyRow { body, outcome })
}
