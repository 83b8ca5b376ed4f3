//! Reads a client's file, in the order of the measuring form.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use case::{
    Amount, Base, Chair, Change, Client, ClientCode, Contact, CushionChoice, LayoutRef, Measures,
    Sides, Taken, Weighing,
};
use cushion::{Length, Mass, Name};

use crate::cursor::{Table, Value, read_text};
use crate::function::{altitudes, function, layers, seat};
use crate::goals::goals;
use crate::layout::size;
use crate::limits::{
    CHAIR_DEPTH, CHAIR_TILT, CHAIR_WIDTH, CROWN_CHANGE_MM, FOOTREST, HIP_WIDTH, KNEE_WIDTH,
    LOWER_LEG, MOST_CELLS, Plausible, SEAT_BONES, SLING_SAG, THIGH_DEPTH, TROCHANTER_WIDTH,
    WEIGHT_KG,
};
use crate::plausible::remark_on_adult;
use crate::posture::posture;
use crate::record::record;
use crate::skin::skin;
use crate::{Kind, Read};

/// Reads a client from the text of the file.
#[must_use]
pub fn read_client(text: &str) -> Read<Client> {
    read_text(text, Kind::Client, client)
}

fn client(table: &Table<'_>) -> Option<Client> {
    let code = table.required("client").and_then(|value| code(&value));
    let measured = table.required("measures").and_then(|value| value.table());
    let unit = measured.as_ref().and_then(unit);
    let child = table.optional("child").and_then(|value| value.boolean()).unwrap_or(false);
    let measures = measured.as_ref().zip(unit).map(|(table, unit)| measures(table, unit));
    let weighing = match table.optional("weight") {
        Some(value) => value.table().and_then(|table| weighing(&table)).map(Some),
        None => Some(None),
    };
    if let (false, Some(table), Some(measures)) = (child, &measured, &measures) {
        remark_on_adult(table, measures, weighing.as_ref().and_then(Option::as_ref));
    }
    let chair = match table.optional("chair") {
        Some(value) => value.table().zip(unit).map(|(table, unit)| chair(&table, unit)),
        None => Some(Chair::default()),
    };
    let cushion =
        table.required("cushion").and_then(|value| value.table()).and_then(|table| cushion(&table));
    let named = |key| table.optional(key).and_then(|value| value.table());
    let posture = named("posture").zip(unit).map(|(own, unit)| posture(&own, unit));
    let posture = posture.unwrap_or_default();
    let goals = goals(table, &posture);
    let changes = entries(table, "change", change);
    let (carer_notes, meanwhile) = match table.optional("carer") {
        Some(value) => value.table().map(|table| carer(&table)).unwrap_or_default(),
        None => Default::default(),
    };
    let contacts = entries(table, "call", contact);
    let next_review = table.optional("next_review").map(|value| value.date());
    let record = record(table);
    Some(Client {
        code: code?,
        measures: measures?,
        weighing: weighing?,
        child,
        posture,
        skin: named("skin").map(|own| skin(&own)).unwrap_or_default(),
        function: named("function").map(|own| function(&own)).unwrap_or_default(),
        layers: named("layers").map(|own| layers(&own)).unwrap_or_default(),
        altitudes: named("altitude").map(|own| altitudes(&own)).unwrap_or_default(),
        seat: named("seat").zip(unit).map(|(own, unit)| seat(&own, unit)).unwrap_or_default(),
        chair: chair?,
        cushion: cushion?,
        goals: goals?,
        changes: changes?,
        carer_notes,
        meanwhile,
        contacts: contacts?,
        next_review: next_review.flatten(),
        record: record?,
    })
}

/// Reads each table of a list of tables; none where one of them is wrong.
pub(crate) fn entries<T>(
    table: &Table<'_>,
    key: &'static str,
    read: impl Fn(&Table<'_>) -> Option<T>,
) -> Option<Vec<T>> {
    let Some(list) = table.optional(key) else { return Some(Vec::new()) };
    let read: Vec<Option<T>> = list.list()?.iter().map(|value| read(&value.table()?)).collect();
    read.into_iter().collect()
}

fn code(value: &Value<'_>) -> Option<ClientCode> {
    let written = value.text()?;
    let code = ClientCode::new(written);
    if code.is_none() {
        value.remarks.error(
            value.span(),
            format!("`{written}` is not a code for a client"),
            format!("never a name: take {}", ClientCode::RULE),
        );
    }
    code
}

/// The unit in which a file gives lengths.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Unit {
    Millimetres,
    Inches,
}

impl Unit {
    fn in_mm(self) -> f64 {
        match self {
            Self::Millimetres => 1.0,
            Self::Inches => 25.4,
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "in",
        }
    }
}

fn unit(table: &Table<'_>) -> Option<Unit> {
    let value = table.required("units")?;
    match value.text()? {
        "mm" => Some(Unit::Millimetres),
        "in" => Some(Unit::Inches),
        other => {
            value.remarks.error(
                value.span(),
                format!("`{other}` is not a unit for measures"),
                "write \"mm\" or \"in\"",
            );
            None
        }
    }
}

/// A length of the body or the chair; a remark where it cannot be right, with a guess why.
pub(crate) fn length(value: &Value<'_>, unit: Unit, plausible: &Plausible) -> Option<Length> {
    let number = value.number()?;
    let mm = number * unit.in_mm();
    if plausible.mm.contains(&mm) {
        return Some(Length::from_mm(mm));
    }
    let guess = |factor: f64| plausible.mm.contains(&(number * factor));
    let hint = if unit == Unit::Millimetres && guess(10.0) {
        "this looks like centimetres; write millimetres".to_owned()
    } else if unit == Unit::Millimetres && guess(25.4) {
        "this looks like inches; write millimetres, or `units = \"in\"`".to_owned()
    } else if unit == Unit::Inches && guess(1.0) {
        "this looks like millimetres; write inches, or `units = \"mm\"`".to_owned()
    } else {
        let (least, most) =
            (plausible.mm.start() / unit.in_mm(), plausible.mm.end() / unit.in_mm());
        format!("it lies between {least:.0} and {most:.0} {}; measure again", unit.words())
    };
    value.remarks.error(
        value.span(),
        format!("{number} {} cannot be the {}", unit.words(), plausible.words),
        hint,
    );
    None
}

fn sides(
    table: &Table<'_>,
    key: &'static str,
    unit: Unit,
    plausible: &Plausible,
) -> Sides<Option<Length>> {
    let Some(pair) = table.optional(key).and_then(|value| value.table()) else {
        return Sides::default();
    };
    let side = |key| pair.optional(key).and_then(|value| length(&value, unit, plausible));
    let both = Sides { left: side("left"), right: side("right") };
    pair.finish();
    both
}

fn measures(table: &Table<'_>, unit: Unit) -> Measures {
    table.optional("units");
    let on = table.optional("taken_on").map(|value| (value.span(), value.date()));
    let by = table.optional("taken_by").map(|value| (value.span(), value.sentence()));
    let taken = match (on, by) {
        (Some((_, on)), Some((_, by))) => on.zip(by).map(|(on, by)| Taken { on, by }),
        (Some((span, _)), None) => {
            table.remarks.error(
                span,
                "nobody is named who took the measures",
                "add `taken_by = \"...\"`",
            );
            None
        }
        (None, Some((span, _))) => {
            table.remarks.error(span, "no day is given for the measures", "add `taken_on = ...`");
            None
        }
        (None, None) => None,
    };
    let one =
        |key, plausible| table.optional(key).and_then(|value| length(&value, unit, plausible));
    let measures = Measures {
        taken,
        hip_width: one("hip_width", &HIP_WIDTH),
        trochanter_width: one("trochanter_width", &TROCHANTER_WIDTH),
        thigh_depth: sides(table, "thigh_depth", unit, &THIGH_DEPTH),
        lower_leg_length: sides(table, "lower_leg_length", unit, &LOWER_LEG),
        external_knee_width: one("external_knee_width", &KNEE_WIDTH),
        seat_bone_spacing: one("seat_bone_spacing", &SEAT_BONES),
    };
    remark_on(table, &measures);
    table.finish();
    measures
}

/// Measures that are each plausible and are not, together.
fn remark_on(table: &Table<'_>, measures: &Measures) {
    let remark = |key: &str, message: &str, hint: &str| {
        table.remarks.remark(table.key_span(key), message, hint)
    };
    if measures.taken.is_none() && *measures != Measures::default() {
        remark(
            "units",
            "it is not said when and by whom the measures were taken",
            "add `taken_on` and `taken_by`",
        );
    }
    let depths = [measures.thigh_depth.left, measures.thigh_depth.right];
    let deepest = depths.into_iter().flatten().reduce(Length::max);
    if let (Some(hip), Some(depth)) = (measures.hip_width, deepest)
        && hip > depth * 1.1
    {
        remark(
            "hip_width",
            "the hips are wider than the thighs are deep",
            "check that hip width and thigh depth are not swapped",
        );
    }
    if let (Some(hip), Some(trochanters)) = (measures.hip_width, measures.trochanter_width)
        && trochanters > hip
    {
        remark(
            "trochanter_width",
            "the trochanters are farther apart than the hips are wide",
            "hip width is the greatest width; measure again",
        );
    }
    if let [Some(left), Some(right)] = depths
        && (left - right).abs() > Length::from_mm(60.0)
    {
        remark(
            "thigh_depth",
            "the thigh depths differ by more than 60 mm",
            "check that the pelvis was not rotated, and measure again",
        );
    }
}

fn weighing(table: &Table<'_>) -> Option<Weighing> {
    let weight = match (table.optional("kg"), table.optional("lb")) {
        (Some(kg), None) => weight(&kg, 1.0, "kg"),
        (None, Some(lb)) => weight(&lb, 0.453_592_37, "lb"),
        (Some(_), Some(lb)) => {
            table.remarks.error(lb.span(), "the weight is given twice", "keep `kg` or `lb`");
            None
        }
        (None, None) => {
            table.remarks.error(
                table.span(),
                "the weight is missing",
                "add `kg = ...` or `lb = ...`",
            );
            None
        }
    };
    let on = table.required("weighed_on").and_then(|value| value.date());
    table.finish();
    Some(Weighing { weight: weight?, on: on? })
}

fn weight(value: &Value<'_>, in_kg: f64, unit: &str) -> Option<Mass> {
    let range: RangeInclusive<f64> =
        (WEIGHT_KG.start() / in_kg).ceil()..=(WEIGHT_KG.end() / in_kg).floor();
    value.number_in("body weight", range, unit).map(|number| Mass::from_kg(number * in_kg))
}

fn chair(table: &Table<'_>, unit: Unit) -> Chair {
    let one =
        |key, plausible| table.optional(key).and_then(|value| length(&value, unit, plausible));
    let base = table.optional("base").and_then(|value| match value.text()? {
        "solid" => Some(Base::Solid),
        "sling" => Some(Base::Sling),
        other => {
            value.remarks.error(
                value.span(),
                format!("no seat base is called `{other}`"),
                "write \"solid\" or \"sling\"",
            );
            None
        }
    });
    let chair = Chair {
        inside_width: one("inside_width", &CHAIR_WIDTH),
        inside_depth: one("inside_depth", &CHAIR_DEPTH),
        base,
        sling_sag: one("sling_sag", &SLING_SAG),
        footrest_height: one("footrest_height", &FOOTREST),
        tilt_deg: table
            .optional("tilt_deg")
            .and_then(|value| value.number_in("tilt of the chair", CHAIR_TILT, "degrees")),
        notes: table.optional("notes").and_then(|value| value.sentence()),
    };
    table.finish();
    chair
}

fn cushion(table: &Table<'_>) -> Option<CushionChoice> {
    let layout = table.required("layout").map(|value| (value.span(), value));
    let parameters = table.optional("parameters").map(|value| (value.span(), parameters(&value)));
    let layout = layout.and_then(|(_, value)| layout_ref(&value, parameters));
    let size = table.required("size").and_then(|value| size(&value));
    let cell = match table.optional("cell") {
        Some(value) => value.sentence(),
        None => Some(crate::BUILT_IN_CELLS[0].name.to_owned()),
    };
    let spares =
        table.required("spare_cells").and_then(|value| value.whole(0..=i64::from(MOST_CELLS)));
    table.finish();
    Some(CushionChoice { layout: layout?, size: size?, cell: cell?, spare_cells: spares? as u32 })
}

type Parameters = (std::ops::Range<usize>, Option<BTreeMap<Name, f64>>);

fn layout_ref(value: &Value<'_>, parameters: Option<Parameters>) -> Option<LayoutRef> {
    let written = value.sentence()?;
    let plugin = written.strip_prefix("plugin:").map(str::to_owned);
    if let (None, Some((span, _))) = (&plugin, &parameters) {
        value.remarks.error(
            span.clone(),
            "only a plugin's layout has parameters",
            "take `parameters` away, or name `plugin:NAME`",
        );
        return None;
    }
    if let Some(plugin) = plugin {
        let Some(name) = Name::new(&plugin) else {
            value.remarks.error(
                value.span(),
                format!("`{plugin}` is not a name"),
                format!("take {}", Name::RULE),
            );
            return None;
        };
        let parameters = parameters.map_or(Some(BTreeMap::new()), |(_, given)| given);
        return Some(LayoutRef::Named { name: format!("plugin:{name}"), parameters: parameters? });
    }
    if written.contains(['/', '\\']) || written.ends_with(".toml") {
        return Some(LayoutRef::File(written));
    }
    let name = value.name()?.to_string();
    Some(LayoutRef::Named { name, parameters: BTreeMap::new() })
}

fn parameters(value: &Value<'_>) -> Option<BTreeMap<Name, f64>> {
    let named = value.table()?.named();
    let read: Vec<Option<(Name, f64)>> =
        named.into_iter().map(|(name, _, value)| Some((name, value.number()?))).collect();
    read.into_iter().collect()
}

fn change(table: &Table<'_>) -> Option<Change> {
    let compartment = table.required("compartment").and_then(|value| value.name());
    let amount = match (table.optional("cells"), table.optional("crown_mm")) {
        (Some(cells), None) => {
            let most = i64::from(MOST_CELLS);
            cells.whole(-most..=most).map(|cells| Amount::Cells(cells as i32))
        }
        (None, Some(crown)) => crown
            .number_in("change of crown", CROWN_CHANGE_MM, "mm")
            .map(|mm| Amount::Crown(Length::from_mm(mm))),
        (Some(_), Some(crown)) => {
            table.remarks.error(
                crown.span(),
                "the change is given twice",
                "keep `cells` or `crown_mm`",
            );
            None
        }
        (None, None) => {
            table.remarks.error(
                table.span(),
                "the change is missing",
                "add `cells = +6` or `crown_mm = 5`",
            );
            None
        }
    };
    let reason = table.required("reason").and_then(|value| value.sentence());
    table.finish();
    Some(Change { compartment: compartment?, amount: amount?, reason: reason? })
}

fn carer(table: &Table<'_>) -> (Vec<String>, Option<String>) {
    let notes = table.optional("notes").and_then(|value| value.list()).unwrap_or_default();
    let notes = notes.iter().filter_map(Value::sentence).collect();
    let meanwhile = table.optional("meanwhile").and_then(|value| value.sentence());
    table.finish();
    (notes, meanwhile)
}

fn contact(table: &Table<'_>) -> Option<Contact> {
    let who = table.required("who").and_then(|value| value.sentence());
    let phone = table.required("phone").and_then(|value| {
        let phone = value.sentence()?;
        let plain = phone.chars().all(|c| c.is_ascii_digit() || " +()-./x".contains(c));
        if !plain || phone.chars().filter(char::is_ascii_digit).count() < 3 {
            value.remarks.error(
                value.span(),
                format!("`{phone}` is not a telephone number"),
                "write digits, spaces and + ( ) - only",
            );
            return None;
        }
        Some(phone)
    });
    let hours = table.optional("hours").and_then(|value| value.sentence());
    table.finish();
    Some(Contact { who: who?, phone: phone?, hours })
}
