//! Reads a layout, and points at what is wrong with it.

use std::ops::Range;

use case::FileKind;
use case::question::{Group, Question};
use case::text::{DesignFinding, KeyFinding};
use cushion::{
    Class, CompartmentRule, Fault, Layout, Length, MadeSize, Mass, Name, Numbers, PointRule,
    Purpose, Rim, SeamRule, SeamShape, Severity, Subject,
};

use crate::builtin::{BuiltIn, built_in_layout};
use crate::cursor::{Table, read_text};
use crate::measure::{measure, spot};
use crate::value::Value;
use crate::{Read, Remark};

/// Reads a layout from the text of its file, without drawing it.
#[must_use]
pub fn read_layout(text: &str) -> Read<Layout> {
    read_text(text, FileKind::Layout, layout).map(|(layout, _)| layout)
}

/// Reads a layout and draws it at every size that it is made in.
#[must_use]
pub fn check_layout(text: &str) -> Read<Layout> {
    let Read { value, mut remarks } = read_text(text, FileKind::Layout, layout);
    let Some((layout, places)) = value else { return Read { value: None, remarks } };
    let faults = cushion::check_layout(&layout, BuiltIn::cell().edge);
    remarks.extend(faults.iter().map(|fault| places.remark(fault)));
    remarks.extend(borrowed_name(&layout, text, &places));
    Read::new(Some(layout), remarks)
}

/// A layout of one's own under the name of a built-in one.
fn borrowed_name(layout: &Layout, text: &str, places: &Places) -> Option<Remark> {
    let own = built_in_layout(layout.name.as_str())?;
    let finding = DesignFinding::BuiltInName(layout.name.clone()).into();
    let span = places.name.clone();
    (own != text).then_some(Remark { severity: Severity::Remark, span, finding })
}

/// Returns the remarks for faults of the layout that `text` holds.
#[must_use]
pub fn layout_remarks(text: &str, faults: &[Fault]) -> Vec<Remark> {
    let places = read_text(text, FileKind::Layout, layout).value.map(|(_, places)| places);
    let places = places.unwrap_or_default();
    faults.iter().map(|fault| places.remark(fault)).collect()
}

/// Returns the remark for what is found about the revision of the layout that `text` holds.
#[must_use]
pub fn revision_remark(text: &str, finding: DesignFinding) -> Remark {
    let places = read_text(text, FileKind::Layout, layout).value.map(|(_, places)| places);
    let span = places.map_or(0..0, |places| places.revision);
    Remark { severity: Severity::Error, span, finding: finding.into() }
}

/// Where the subjects of faults are written.
#[derive(Default)]
struct Places {
    subjects: Vec<(Subject, Range<usize>)>,
    name: Range<usize>,
    /// Of the revision, or of the name where none is written.
    revision: Range<usize>,
}

impl Places {
    fn remark(&self, fault: &Fault) -> Remark {
        let found = self.subjects.iter().find(|(subject, _)| *subject == fault.subject);
        let span = found.map_or(0..0, |(_, span)| span.clone());
        let finding = DesignFinding::Fault(fault.kind.clone(), fault.sizes.clone()).into();
        Remark { severity: fault.kind.severity(), span, finding }
    }
}

fn layout(table: &Table<'_>) -> Option<(Layout, Places)> {
    let mut places = Places::default();
    let sentence = |question| table.required(question).and_then(|value| value.sentence());
    let name = table.required(Question::LayoutName).and_then(|value| value.name());
    let revision = match table.optional(Question::LayoutRevision) {
        Some(value) => value.whole().map(|number| u32::try_from(number).ok()),
        None => Some(None),
    };
    let title = sentence(Question::LayoutTitle);
    let about = sentence(Question::LayoutAbout);
    let class = table.required(Question::LayoutClass);
    let class =
        class.and_then(|value| value.choice(&Class::ALL.map(|class| (class, class.words()))));
    let mirror = match table.optional(Question::LayoutMirror) {
        Some(value) => value.boolean(),
        None => Some(false),
    };
    let wall_height = table.required(Question::WallHeight);
    let wall_height = wall_height.and_then(|value| value.number_in_range()).map(Length::from_mm);
    let rim = match table.optional(Question::Rim) {
        Some(value) => value.choice(&Rim::WORDS),
        None => Some(Rim::default()),
    };
    let stock_crown = table.required(Question::StockCrown).and_then(|value| measure(&value));
    let rating_from = sentence(Question::RatingFrom);
    let sizes = sizes(table, &mut places);
    let named = |group| table.required_sub(group).map(|table| table.named());
    let points = named(Group::Points).map(|entries| points(entries, &mut places));
    let seams = named(Group::Seams).map(|entries| seams(entries, &mut places));
    let compartments = named(Group::Compartments).map(|entries| compartments(entries, &mut places));
    places.subjects.push((Subject::Layout, table.key_span("compartments")));
    places.subjects.push((Subject::Sizes, table.key_span("sizes")));
    places.subjects.push((Subject::StockCrown, table.key_span("stock_crown")));
    places.name = table.key_span("name");
    let written = table.has(Question::LayoutRevision.row().key);
    places.revision = table.key_span(if written { "revision" } else { "name" });
    let layout = Layout {
        name: name?,
        revision: revision?,
        title: title?,
        about: about?,
        rating_from: rating_from?,
        class: class?,
        mirror: mirror?,
        sizes: sizes?,
        wall_height: wall_height?,
        rim: rim?,
        stock_crown: stock_crown?,
        points: points?,
        seams: seams?,
        compartments: compartments?,
    };
    Some((layout, places))
}

fn sizes(table: &Table<'_>, places: &mut Places) -> Option<Vec<MadeSize>> {
    let key = Group::MadeSize.key();
    if !table.has(key) {
        table.required_sub(Group::MadeSize);
        return None;
    }
    let list = table.list(key)?;
    if list.is_empty() {
        table.remarks.error(table.key_span(key), DesignFinding::NoSizes);
    }
    let mut sizes: Vec<MadeSize> = Vec::new();
    let mut whole = !list.is_empty();
    for entry in list {
        let Some(made) = made_size(&entry) else {
            whole = false;
            continue;
        };
        if sizes.iter().any(|known| known.size == made.size) {
            entry.remarks.error(entry.span(), DesignFinding::SizeTwice(made.size));
        }
        places.subjects.push((Subject::MadeSize(sizes.len()), entry.span()));
        sizes.push(made);
    }
    whole.then_some(sizes)
}

fn made_size(value: &Value<'_>) -> Option<MadeSize> {
    let table = value.table(Some(Group::MadeSize))?;
    let size = table.required(Question::MadeSizeSize).and_then(|value| value.size());
    let weight = table.required(Question::MaxUserWeight);
    let weight = weight.and_then(|value| value.number_in_range());
    table.finish();
    Some(MadeSize { size: size?, max_user_weight: Mass::from_kg(weight?) })
}

type Entries<'a> = Vec<(Name, Range<usize>, Value<'a>)>;

fn points(entries: Entries<'_>, places: &mut Places) -> Vec<(Name, PointRule)> {
    let mut points = Vec::new();
    for (name, span, value) in entries {
        places.subjects.push((Subject::Point(name.clone()), span));
        let rule = if value.is_list() { spot_point(&value) } else { seam_point(&value) };
        points.extend(rule.map(|rule| (name, rule)));
    }
    points
}

/// `[x, y]` or `[x, y, "round R"]`.
fn spot_point(value: &Value<'_>) -> Option<PointRule> {
    let list = value.list()?;
    let (x, y, round) = match &list[..] {
        [x, y] => (x, y, None),
        [x, y, round] => (x, y, Some(rounding(round)?)),
        _ => {
            value.remarks.error(value.span(), DesignFinding::Point);
            return None;
        }
    };
    Some(PointRule::Spot { spot: spot(x, y)?, round })
}

fn rounding(value: &Value<'_>) -> Option<Length> {
    let written = value.text()?;
    let radius = written.strip_prefix("round").and_then(|radius| radius.trim().parse::<f64>().ok());
    let radius = radius.filter(|radius| (0.0..=1000.0).contains(radius));
    if radius.is_none() {
        value.remarks.error(value.span(), DesignFinding::Rounding(written.to_owned()));
    }
    radius.map(Length::from_mm)
}

/// `{ on = seam, from = point, to = point, at = measure }`.
fn seam_point(value: &Value<'_>) -> Option<PointRule> {
    let table = value.table(Some(Group::Points))?;
    let name = |question| table.required(question).and_then(|value| value.name());
    let seam = name(Question::PointOn);
    let (from, to) = (name(Question::PointFrom), name(Question::PointTo));
    let at = table.required(Question::PointAt).and_then(|value| measure(&value));
    table.finish();
    Some(PointRule::On { seam: seam?, from: from?, to: to?, at: at? })
}

fn seams(entries: Entries<'_>, places: &mut Places) -> Vec<SeamRule> {
    let mut seams = Vec::new();
    for (name, span, value) in entries {
        places.subjects.push((Subject::Seam(name.clone()), span));
        seams.extend(seam(name, &value));
    }
    seams
}

fn seam(name: Name, value: &Value<'_>) -> Option<SeamRule> {
    let table = value.table(Some(Group::Seams))?;
    let through = table.required(Question::SeamThrough).and_then(|value| value.list());
    let through = through.map(|list| list.iter().filter_map(Value::name).collect::<Vec<_>>());
    let flag =
        |question| table.optional(question).is_some_and(|value| value.boolean() == Some(true));
    let (curve, closed) = (flag(Question::SeamCurve), flag(Question::SeamClosed));
    let bow = table.optional(Question::SeamBow);
    let shape = match bow {
        Some(bow) if curve => {
            table.remarks.error(bow.span(), DesignFinding::CurveWithBow);
            None
        }
        Some(bow) => measure(&bow).map(SeamShape::Bow),
        None => Some(if curve { SeamShape::Curve } else { SeamShape::Straight }),
    };
    table.finish();
    Some(SeamRule { name, through: through?, shape: shape?, closed })
}

fn compartments(entries: Entries<'_>, places: &mut Places) -> Vec<CompartmentRule> {
    let mut rules = Vec::new();
    for (id, span, value) in entries {
        places.subjects.push((Subject::Compartment(id.clone()), span));
        rules.extend(compartment(id, &value));
    }
    rules
}

fn compartment(id: Name, value: &Value<'_>) -> Option<CompartmentRule> {
    let table = value.table(Some(Group::Compartments))?;
    let seed = table.required(Question::CompartmentSeed).and_then(|value| {
        let list = value.list()?;
        let [x, y] = &list[..] else {
            value.remarks.error(value.span(), DesignFinding::Seed);
            return None;
        };
        spot(x, y)
    });
    let numbers = numbers(&table);
    let question = Question::CompartmentWords;
    let words = table.required(question).and_then(|value| value.words(question));
    let purpose = table.required(Question::CompartmentFor);
    let purpose = purpose
        .and_then(|value| value.choice(&Purpose::ALL.map(|purpose| (purpose, purpose.words()))));
    table.finish();
    Some(CompartmentRule { id, seed: seed?, numbers: numbers?, words: words?, purpose: purpose? })
}

fn numbers(table: &Table<'_>) -> Option<Numbers> {
    let number = |value: Value<'_>| value.whole_in(1, 99).map(|number| number as u8);
    let (one, pair) = (Question::CompartmentNumber, Question::CompartmentNumbers);
    match (table.has(one.row().key), table.has(pair.row().key)) {
        (true, false) => number(table.optional(one)?).map(Numbers::One),
        (false, true) => {
            let pair = table.optional(pair)?.sides()?;
            let (left, right) = (pair.required_side("left"), pair.required_side("right"));
            let (left, right) = (left.and_then(number), right.and_then(number));
            pair.finish();
            Some(Numbers::Pair { left: left?, right: right? })
        }
        (true, true) => {
            table.remarks.error(table.place(pair), KeyFinding::Both(pair, one.row().key));
            None
        }
        (false, false) => {
            table.remarks.error(table.span(), KeyFinding::Neither(one, pair.row().key));
            None
        }
    }
}
