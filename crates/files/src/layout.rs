//! Reads a layout, and points at what is wrong with it.

use std::ops::Range;

use cushion::{
    Class, CompartmentRule, Fault, Layout, Length, MadeSize, Mass, Name, Numbers, PointRule,
    Purpose, SeamRule, SeamShape, Size, SizeError, Subject,
};

use crate::cursor::{Table, Value, read_text};
use crate::limits::WALL_MM;
use crate::measure::{measure, spot};
use crate::{Kind, Read, Remark};

/// Reads a layout from the text of its file, without drawing it.
#[must_use]
pub fn read_layout(text: &str) -> Read<Layout> {
    read_text(text, Kind::Layout, layout).map(|(layout, _)| layout)
}

/// Reads a layout and draws it at every size that it is made in.
#[must_use]
pub fn check_layout(text: &str) -> Read<Layout> {
    let Read { value, mut remarks } = read_text(text, Kind::Layout, layout);
    let Some((layout, places)) = value else { return Read { value: None, remarks } };
    let faults = cushion::check_layout(&layout);
    remarks.extend(faults.iter().map(|fault| places.remark(fault)));
    Read::new(Some(layout), remarks)
}

/// Returns the remarks for faults of the layout that `text` holds.
#[must_use]
pub fn layout_remarks(text: &str, faults: &[Fault]) -> Vec<Remark> {
    let places = read_text(text, Kind::Layout, layout).value.map(|(_, places)| places);
    let places = places.unwrap_or_default();
    faults.iter().map(|fault| places.remark(fault)).collect()
}

/// Where the subjects of faults are written.
#[derive(Default)]
struct Places(Vec<(Subject, Range<usize>)>);

impl Places {
    fn remark(&self, fault: &Fault) -> Remark {
        let found = self.0.iter().find(|(subject, _)| *subject == fault.subject);
        let span = found.map_or(0..0, |(_, span)| span.clone());
        let size = fault.size.map_or(String::new(), |size| format!(" (at {size})"));
        Remark {
            severity: fault.kind.severity(),
            span,
            message: format!("{}{size}", fault.kind),
            hint: Some(fault.kind.advice().to_owned()),
        }
    }
}

fn layout(table: &Table<'_>) -> Option<(Layout, Places)> {
    let mut places = Places::default();
    let sentence = |key| table.required(key).and_then(|value| value.sentence());
    let name = table.required("name").and_then(|value| value.name());
    let title = sentence("title");
    let about = sentence("about");
    let class = table.required("class").and_then(|value| class(&value));
    let mirror = match table.optional("mirror") {
        Some(value) => value.boolean(),
        None => Some(false),
    };
    let wall_height = table
        .required("wall_height")
        .and_then(|value| value.number_in("wall height", WALL_MM, "mm"))
        .map(Length::from_mm);
    let stock_crown = table.required("stock_crown").and_then(|value| measure(&value));
    let rating_from = sentence("rating_from");
    let sizes = table.required("sizes").and_then(|value| sizes(&value));
    let named =
        |key| table.required(key).and_then(|value| value.table()).map(|table| table.named());
    let points = named("points").map(|entries| points(entries, &mut places));
    let seams = named("seams").map(|entries| seams(entries, &mut places));
    let compartments = named("compartments").map(|entries| compartments(entries, &mut places));
    places.0.push((Subject::Layout, table.key_span("compartments")));
    places.0.push((Subject::Sizes, table.key_span("sizes")));
    places.0.push((Subject::StockCrown, table.key_span("stock_crown")));
    let layout = Layout {
        name: name?,
        title: title?,
        about: about?,
        rating_from: rating_from?,
        class: class?,
        mirror: mirror?,
        sizes: sizes?,
        wall_height: wall_height?,
        stock_crown: stock_crown?,
        points: points?,
        seams: seams?,
        compartments: compartments?,
    };
    Some((layout, places))
}

fn class(value: &Value<'_>) -> Option<Class> {
    let written = value.text()?;
    let found = Class::ALL.into_iter().find(|class| class.words() == written);
    if found.is_none() {
        let words: Vec<String> =
            Class::ALL.iter().map(|class| format!("\"{}\"", class.words())).collect();
        value.remarks.error(
            value.span(),
            format!("no class is called `{written}`"),
            format!("write {}", words.join(" or ")),
        );
    }
    found
}

fn purpose(value: &Value<'_>) -> Option<Purpose> {
    let written = value.text()?;
    let found = Purpose::ALL.into_iter().find(|purpose| purpose.words() == written);
    if found.is_none() {
        let words: Vec<&str> = Purpose::ALL.iter().map(|purpose| purpose.words()).collect();
        value.remarks.error(
            value.span(),
            format!("nothing is called `{written}`"),
            format!("write one of: {}", words.join(", ")),
        );
    }
    found
}

/// Reads a size, or makes a remark.
pub(crate) fn size(value: &Value<'_>) -> Option<Size> {
    match value.text()?.parse::<Size>() {
        Ok(size) => Some(size),
        Err(error) => {
            let hint = match error {
                SizeError::Range { .. } => "write millimetres, or add `in` for inches",
                _ => "width comes first",
            };
            value.remarks.error(value.span(), error.to_string(), hint);
            None
        }
    }
}

fn sizes(value: &Value<'_>) -> Option<Vec<MadeSize>> {
    let list = value.list()?;
    if list.is_empty() {
        value.remarks.error(
            value.span(),
            "no size is listed",
            "add `{ size = \"440x400\", max_user_weight_kg = 90 }`",
        );
    }
    let mut sizes: Vec<MadeSize> = Vec::new();
    let mut whole = !list.is_empty();
    for entry in list {
        let Some(made) = made_size(&entry) else {
            whole = false;
            continue;
        };
        if sizes.iter().any(|known| known.size == made.size) {
            entry.remarks.error(
                entry.span(),
                format!("the size {} is listed twice", made.size),
                "keep one of the two",
            );
        }
        sizes.push(made);
    }
    whole.then_some(sizes)
}

fn made_size(value: &Value<'_>) -> Option<MadeSize> {
    let table = value.table()?;
    let size = table.required("size").and_then(|value| size(&value));
    let weight = table
        .required("max_user_weight_kg")
        .and_then(|value| value.number_in("maximum user weight", 5.0..=350.0, "kg"));
    table.finish();
    Some(MadeSize { size: size?, max_user_weight: Mass::from_kg(weight?) })
}

type Entries<'a> = Vec<(Name, Range<usize>, Value<'a>)>;

fn points(entries: Entries<'_>, places: &mut Places) -> Vec<(Name, PointRule)> {
    let mut points = Vec::new();
    for (name, span, value) in entries {
        places.0.push((Subject::Point(name.clone()), span));
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
            value.remarks.error(
                value.span(),
                "a point has two measures",
                "write [x, y] or [x, y, \"round R\"]",
            );
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
        value.remarks.error(
            value.span(),
            format!("`{written}` is not a rounding"),
            "write \"round 40\" for a radius of 40 mm",
        );
    }
    radius.map(Length::from_mm)
}

/// `{ on = seam, from = point, to = point, at = measure }`.
fn seam_point(value: &Value<'_>) -> Option<PointRule> {
    let table = value.table()?;
    let name = |key| table.required(key).and_then(|value| value.name());
    let (seam, from, to) = (name("on"), name("from"), name("to"));
    let at = table.required("at").and_then(|value| measure(&value));
    table.finish();
    Some(PointRule::On { seam: seam?, from: from?, to: to?, at: at? })
}

fn seams(entries: Entries<'_>, places: &mut Places) -> Vec<SeamRule> {
    let mut seams = Vec::new();
    for (name, span, value) in entries {
        places.0.push((Subject::Seam(name.clone()), span));
        seams.extend(seam(name, &value));
    }
    seams
}

fn seam(name: Name, value: &Value<'_>) -> Option<SeamRule> {
    let table = value.table()?;
    let through = table.required("through").and_then(|value| value.list());
    let through = through.map(|list| list.iter().filter_map(Value::name).collect::<Vec<_>>());
    let flag = |key| table.optional(key).is_some_and(|value| value.boolean() == Some(true));
    let (curve, closed) = (flag("curve"), flag("closed"));
    let bow = table.optional("bow");
    let shape = match bow {
        Some(bow) if curve => {
            table.remarks.error(
                bow.span(),
                "a seam is a curve or has a bow, not both",
                "take one of the two away",
            );
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
        places.0.push((Subject::Compartment(id.clone()), span));
        rules.extend(compartment(id, &value));
    }
    rules
}

fn compartment(id: Name, value: &Value<'_>) -> Option<CompartmentRule> {
    let table = value.table()?;
    let seed = table.required("seed").and_then(|value| {
        let list = value.list()?;
        let [x, y] = &list[..] else {
            value.remarks.error(value.span(), "a seed has two measures", "write [x, y]");
            return None;
        };
        spot(x, y)
    });
    let numbers = numbers(&table);
    let words = table.required("words").and_then(|value| value.sentence());
    let purpose = table.required("for").and_then(|value| purpose(&value));
    table.finish();
    Some(CompartmentRule { id, seed: seed?, numbers: numbers?, words: words?, purpose: purpose? })
}

fn numbers(table: &Table<'_>) -> Option<Numbers> {
    let number = |value: Value<'_>| value.whole(1..=99).map(|number| number as u8);
    match (table.optional("number"), table.optional("numbers")) {
        (Some(one), None) => number(one).map(Numbers::One),
        (None, Some(pair)) => {
            let pair = pair.table()?;
            let (left, right) = (pair.required("left"), pair.required("right"));
            let (left, right) = (left.and_then(number), right.and_then(number));
            pair.finish();
            Some(Numbers::Pair { left: left?, right: right? })
        }
        (Some(_), Some(pair)) => {
            table.remarks.error(
                pair.span(),
                "the number is given twice",
                "keep `number` or `numbers`",
            );
            None
        }
        (None, None) => {
            table.remarks.error(
                table.span(),
                "the number is missing",
                "add `number = 3`, or `numbers = { left = 1, right = 2 }` beside the centre line",
            );
            None
        }
    }
}
