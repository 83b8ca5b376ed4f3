//! Reads a client's file, in the order of the measuring form.

use std::collections::BTreeMap;

use case::FileKind;
use case::question::{Group, LANGUAGE_TAGS, Question};
use case::text::{ClientFinding, KeyFinding, LengthUnit, WishFinding, WordFinding};
use case::{
    Amount, Base, Chair, Change, Client, ClientCode, Contact, CushionChoice, CushionSides,
    LayoutRef, Measures, Sides, SitAtMost, Taken, Weighing,
};
use cushion::{Length, Mass, Name};

use crate::Read;
use crate::code::{looks_like_a_name, meant};
use crate::cursor::{Table, read_text};
use crate::filling::{filling, remark_on_filling};
use crate::function::{altitudes, function, layers, seat};
use crate::goals::{goals, remark_on_goals};
use crate::plausible::{remark_on, remark_on_adult};
use crate::posture::posture;
use crate::record::record;
use crate::skin::skin;
use crate::value::Value;

/// Reads a client from the text of the file.
#[must_use]
pub fn read_client(text: &str) -> Read<Client> {
    read_text(text, FileKind::Client, |table| {
        let client = client(table)?;
        remark_on_goals(table, &client);
        remark_on_filling(table, &client);
        Some(client)
    })
}

fn client(table: &Table<'_>) -> Option<Client> {
    let code = table.required(Question::Code).and_then(|value| code(&value));
    let child = table.optional(Question::Child).and_then(|value| value.boolean());
    let next_review = table.optional(Question::NextReview).and_then(|value| value.date());
    let language = table.optional(Question::Language);
    let language = language.and_then(|own| own.choice(&LANGUAGE_TAGS.map(|tag| (tag, tag))));
    let measured = table.required_sub(Group::Measures);
    let unit = measured.as_ref().and_then(unit);
    let measures = measured.as_ref().zip(unit).map(|(own, unit)| measures(own, unit));
    let weighing = table.sub(Group::Weight).map(|own| weighing(&own));
    if let (false, Some(own), Some(measures)) = (child.unwrap_or(false), &measured, &measures) {
        remark_on_adult(own, measures, weighing.as_ref().and_then(Option::as_ref));
    }
    let posture_table = table.sub(Group::Posture);
    let posture = posture_table.as_ref().zip(unit).map(|(own, unit)| posture(own, unit));
    let skin = table.sub(Group::Skin).map(|own| skin(&own)).unwrap_or_default();
    let function = table.sub(Group::Function).map(|own| function(&own));
    let layers = table.sub(Group::Layers).map(|own| layers(&own));
    let altitudes = table.sub(Group::Altitude).map(|own| altitudes(&own));
    let seat = table.sub(Group::Seat).zip(unit).map(|(own, unit)| seat(&own, unit));
    let chair = table.sub(Group::Chair).zip(unit).map(|(own, unit)| chair(&own, unit));
    let cushion = table.required_sub(Group::Cushion).and_then(|own| cushion(&own));
    let oblique = posture_table.is_some_and(|own| own.has(Group::Obliquity.key()));
    let goals = goals(table, oblique);
    let changes = table.entries(Group::Change, change);
    let Carer { notes: carer_notes, meanwhile, emergency_phone, sit_at_most, pressure_relief } =
        table.sub(Group::Carer).map(|own| carer(&own)).unwrap_or_default();
    let contacts = table.entries(Group::Call, contact);
    let record = record(table);
    let filling = filling(table, record.as_ref().map(Vec::len));
    Some(Client {
        code: code?,
        lengths: unit?,
        language,
        measures: measures?,
        weighing: weighing.flatten(),
        child: child.unwrap_or(false),
        posture: posture.unwrap_or_default(),
        skin,
        function: function.unwrap_or_default(),
        layers: layers.unwrap_or_default(),
        altitudes: altitudes.unwrap_or_default(),
        seat: seat.unwrap_or_default(),
        chair: chair.unwrap_or_default(),
        cushion: cushion?,
        goals: goals?,
        changes: changes?,
        carer_notes,
        meanwhile,
        emergency_phone,
        sit_at_most,
        pressure_relief,
        contacts: contacts?,
        next_review,
        filling: filling?,
        record: record?,
        taught: Vec::new(),
    })
}

fn code(value: &Value<'_>) -> Option<ClientCode> {
    let written = value.text()?;
    let code = ClientCode::new(written);
    if code.is_none() {
        value.remarks.error(value.span(), WordFinding::Code(written.to_owned()));
    } else if looks_like_a_name(written) {
        value.ask(WordFinding::NameInCode(written.to_owned()));
    }
    code
}

fn unit(table: &Table<'_>) -> Option<LengthUnit> {
    let words = [(LengthUnit::Millimetres, "mm"), (LengthUnit::Inches, "in")];
    table.required(Question::Units)?.choice(&words)
}

/// A length in the file's unit.
pub(crate) fn length(table: &Table<'_>, question: Question, unit: LengthUnit) -> Option<Length> {
    table.optional(question)?.length(unit)
}

/// An answer of each side, where it is there.
pub(crate) fn sides<T>(
    table: &Table<'_>,
    question: Question,
    read: impl Fn(&Value<'_>) -> Option<T>,
) -> Sides<Option<T>> {
    let Some(pair) = table.optional(question).and_then(|value| value.sides()) else {
        return Sides { left: None, right: None };
    };
    let side = |side| pair.side(side).and_then(|value| read(&value));
    let both = Sides { left: side("left"), right: side("right") };
    pair.finish();
    both
}

/// Says that of two keys that go together one is there and the other is not.
pub(crate) fn without(table: &Table<'_>, given: Question, missing: Question) {
    table.remarks.error(table.place(given), KeyFinding::Without { given, missing });
}

fn measures(table: &Table<'_>, unit: LengthUnit) -> Measures {
    let on = table.optional(Question::TakenOn).map(|value| value.date());
    let by = table.optional(Question::TakenBy).map(|value| value.sentence());
    let written = [Question::TakenOn, Question::TakenBy].map(|own| table.has(own.row().key));
    match written {
        [true, false] => without(table, Question::TakenOn, Question::TakenBy),
        [false, true] => without(table, Question::TakenBy, Question::TakenOn),
        _ => {}
    }
    let taken = on.flatten().zip(by.flatten()).map(|(on, by)| Taken { on, by });
    let one = |question| length(table, question, unit);
    let measures = Measures {
        taken,
        hip_width: one(Question::HipWidth),
        trochanter_width: one(Question::TrochanterWidth),
        thigh_depth: sides(table, Question::ThighDepth, |value| value.length(unit)),
        lower_leg_length: sides(table, Question::LowerLegLength, |value| value.length(unit)),
        external_knee_width: one(Question::ExternalKneeWidth),
        seat_bone_spacing: one(Question::SeatBoneSpacing),
    };
    if written == [false, false] && measures != Measures::default() {
        table.remarks.remark(table.place(Question::Units), ClientFinding::NotSigned);
    }
    remark_on(table, &measures);
    table.finish();
    measures
}

/// The one of two answers that is given, where just one is; a remark else.
fn one_of<'a>(table: &Table<'a>, [first, second]: [Question; 2]) -> Option<(Question, Value<'a>)> {
    let key = |question: Question| question.row().key;
    match (table.has(key(first)), table.has(key(second))) {
        (true, true) => {
            table.remarks.error(table.place(second), KeyFinding::Both(second, key(first)));
            None
        }
        (false, false) => {
            table.remarks.error(table.span(), KeyFinding::Neither(first, key(second)));
            None
        }
        (true, false) => Some((first, table.optional(first)?)),
        (false, true) => Some((second, table.optional(second)?)),
    }
}

fn weighing(table: &Table<'_>) -> Option<Weighing> {
    let weight = one_of(table, [Question::WeightKg, Question::WeightLb]);
    let weight = weight.and_then(|(question, value)| {
        let number = value.number_in_range()?;
        Some(match question {
            Question::WeightLb => Mass::from_pounds(number),
            _ => Mass::from_kg(number),
        })
    });
    let on = table.required(Question::WeighedOn).and_then(|value| value.date());
    table.finish();
    Some(Weighing { weight: weight?, on: on? })
}

fn chair(table: &Table<'_>, unit: LengthUnit) -> Chair {
    let one = |question| length(table, question, unit);
    let chair = Chair {
        inside_width: one(Question::InsideWidth),
        inside_depth: one(Question::InsideDepth),
        base: table.optional(Question::SeatBase).and_then(|value| value.choice(&Base::WORDS)),
        sling_sag: one(Question::SlingSag),
        cushion_sides: table
            .optional(Question::CushionSides)
            .and_then(|value| value.choice(&CushionSides::WORDS)),
        footrest_height: one(Question::FootrestHeight),
        tilt_deg: table.optional(Question::ChairTilt).and_then(|value| value.number_in_range()),
        notes: table.optional(Question::ChairNotes).and_then(|value| value.sentence()),
    };
    table.finish();
    chair
}

fn cushion(table: &Table<'_>) -> Option<CushionChoice> {
    let parameters = table.optional(Question::LayoutParameters);
    let layout = table.required(Question::LayoutOfCushion);
    let layout = layout.and_then(|value| layout_ref(&value, parameters));
    let size = table.required(Question::SizeOfCushion).and_then(|value| value.size());
    let cell = match table.optional(Question::CellOfCushion) {
        Some(value) => value.sentence(),
        None => Some(crate::BUILT_IN_CELLS[0].name.to_owned()),
    };
    let spares = table.required(Question::SpareCells).and_then(|value| value.whole());
    let serial = table.optional(Question::SerialOfCushion).and_then(|value| value.sentence());
    let first_file = table.optional(Question::FirstFile).and_then(|value| value.sentence());
    table.finish();
    Some(CushionChoice {
        layout: layout?,
        size: size?,
        cell: cell?,
        spare_cells: spares? as u32,
        serial,
        first_file,
    })
}

fn layout_ref(value: &Value<'_>, parameters: Option<Value<'_>>) -> Option<LayoutRef> {
    let written = value.sentence()?;
    let plugin = written.strip_prefix("plugin:").map(str::to_owned);
    if let (None, Some(given)) = (&plugin, &parameters) {
        given.remarks.error(given.span(), ClientFinding::ParametersWithoutPlugin);
        return None;
    }
    if let Some(plugin) = plugin {
        let Some(name) = Name::new(&plugin) else {
            let meant = meant(&plugin).map(|name| format!("plugin:{name}"));
            value.remarks.error(value.span(), WordFinding::Name(plugin, meant));
            return None;
        };
        let parameters = parameters.map_or(Some(BTreeMap::new()), |given| numbers(&given));
        return Some(LayoutRef::Named { name: format!("plugin:{name}"), parameters: parameters? });
    }
    if LayoutRef::is_path(&written) {
        return Some(LayoutRef::File(written));
    }
    let name = value.name()?.to_string();
    Some(LayoutRef::Named { name, parameters: BTreeMap::new() })
}

/// Numbers by name.
fn numbers(value: &Value<'_>) -> Option<BTreeMap<Name, f64>> {
    let named = value.table(None)?.named();
    let read: Vec<Option<(Name, f64)>> =
        named.into_iter().map(|(name, _, value)| Some((name, value.number()?))).collect();
    read.into_iter().collect()
}

fn change(table: &Table<'_>) -> Option<Change> {
    let compartment = table.required(Question::ChangeOf).and_then(|value| value.name());
    let amount = one_of(table, [Question::ChangeCells, Question::ChangeCrown]);
    let amount = amount.and_then(|(question, value)| match question {
        Question::ChangeCells => value.whole().map(|cells| Amount::Cells(cells as i32)),
        _ => value.number_in_range().map(|mm| Amount::Crown(Length::from_mm(mm))),
    });
    let reason = table.required(Question::ChangeReason).and_then(|value| value.sentence());
    table.finish();
    Some(Change { compartment: compartment?, amount: amount?, reason: reason? })
}

/// What is for the take-home sheet.
#[derive(Default)]
struct Carer {
    notes: Vec<String>,
    meanwhile: Option<String>,
    emergency_phone: Option<String>,
    sit_at_most: Option<SitAtMost>,
    pressure_relief: Option<String>,
}

fn carer(table: &Table<'_>) -> Carer {
    let notes = table.optional(Question::CarerNotes).and_then(|value| value.list());
    let notes = notes.unwrap_or_default().iter().filter_map(Value::sentence).collect();
    let sentence = |question| table.optional(question).and_then(|value| value.sentence());
    let carer = Carer {
        notes,
        meanwhile: sentence(Question::Meanwhile),
        emergency_phone: table.optional(Question::Emergency).and_then(|value| phone(&value)),
        sit_at_most: table.sub(Group::SitAtMost).and_then(|own| sit_at_most(&own)),
        pressure_relief: sentence(Question::PressureRelief),
    };
    table.finish();
    carer
}

fn sit_at_most(table: &Table<'_>) -> Option<SitAtMost> {
    let minutes = table.required(Question::SitMinutes).and_then(|value| value.whole());
    let times = table.required(Question::SitTimes).and_then(|value| value.whole());
    table.finish();
    Some(SitAtMost { minutes: minutes? as u32, times: times? as u32 })
}

fn phone(value: &Value<'_>) -> Option<String> {
    let phone = value.sentence()?;
    let plain = phone.chars().all(|c| c.is_ascii_digit() || " +()-./x".contains(c));
    if !plain || phone.chars().filter(char::is_ascii_digit).count() < 3 {
        value.remarks.error(value.span(), WordFinding::Phone(phone));
        return None;
    }
    Some(phone)
}

fn contact(table: &Table<'_>) -> Option<Contact> {
    let who = table.required(Question::CallWho).and_then(|value| value.sentence());
    let phone = table.required(Question::CallPhone).and_then(|value| phone(&value));
    let hours = table.optional(Question::CallHours).and_then(|value| value.sentence());
    table.finish();
    Some(Contact { who: who?, phone: phone?, hours })
}

/// Says that more of an obliquity can be taken away than there is.
pub(crate) fn more_than_there_is(table: &Table<'_>) {
    let place = table.place(Question::ObliquityReducible);
    table.remarks.error(place, WishFinding::MoreThanThereIs);
}
