//! Ordinary clients by chance, as the files that somebody would write for them.
//!
//! Bodies are rows of a table of measured adults, so that weight, hips and thighs belong together.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use case::{Sides, SurveyedBody};
use cushion::{Side, Size};
use mechanics::mixed;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

/// ANSUR II; its source is beside it, in `ansur2.md`.
const BODIES: &str = include_str!("../../../../tests/reference/ansur2.csv");
/// A pound, by definition.
const KG_IN_POUND: f64 = 0.453_592_37;

/// In which units a file is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Units {
    /// Millimetres and kilograms.
    Metric,
    /// Inches and pounds.
    Inches,
}

/// A table of a file: its heading, empty for the top, and its lines.
pub(crate) type Block = (&'static str, Vec<String>);

/// An obliquity of the pelvis.
#[derive(Clone, Copy, Debug)]
struct Oblique {
    lower: Side,
    by: u32,
    at: &'static str,
    is: &'static str,
}

/// What bears on the seat besides the body.
#[derive(Clone, Debug)]
struct Setting {
    oblique: Option<Oblique>,
    windswept: Option<(Side, u32)>,
    injuries: Vec<(&'static str, &'static str)>,
    /// None for a solid seat, else the sag of a sling.
    sag: Option<u32>,
    propulsion: Option<&'static str>,
    share: Option<f64>,
    spacing: Option<u32>,
}

/// A client by chance.
#[derive(Clone, Debug)]
pub(crate) struct Person {
    /// Lengths are in mm, weights in kg, whatever the units of the file.
    pub(crate) kg: f64,
    hips: f64,
    thighs: Sides<f64>,
    child: bool,
    setting: Setting,
    goals: Vec<String>,
    pub(crate) layout: &'static str,
    pub(crate) size: Size,
    pub(crate) units: Units,
}

fn bodies() -> &'static [SurveyedBody] {
    static READ: OnceLock<Vec<SurveyedBody>> = OnceLock::new();
    READ.get_or_init(|| files::read_bodies(BODIES).unwrap())
}

fn side() -> impl Strategy<Value = Side> + Clone {
    select(vec![Side::Left, Side::Right])
}

prop_compose! {
    /// What hands measure: from 5 mm, and seldom more than 25 mm.
    fn oblique()(
        lower in side(),
        by in 5..25_u32,
        at in select(vec!["seat bones", "asis"]),
        is in select(vec!["fixed", "flexible", "partly"]),
    ) -> Oblique {
        Oblique { lower, by, at, is }
    }
}

prop_compose! {
    fn setting()(
        oblique in option::weighted(0.6, oblique()),
        windswept in option::weighted(0.2, (side(), 5..15_u32)),
        sites in subsequence(vec!["left-seat-bone", "right-seat-bone", "coccyx"], 0..2),
        state in select(vec!["open", "healing", "healed"]),
        sag in option::weighted(0.3, 5..40_u32),
        propulsion in option::of(select(vec!["hands", "left foot", "right foot", "both feet"])),
        share in option::of(select(vec![0.6, 0.7, 0.8])),
        // Men and women, from the sources at `SeatedClient::seat_bone_spacing`.
        spacing in option::of(95..145_u32),
    ) -> Setting {
        let injuries = sites.into_iter().map(|site| (site, state)).collect();
        Setting { oblique, windswept, injuries, sag, propulsion, share, spacing }
    }
}

/// One to three goals, whether or not they can be reached on a layout.
fn goals(oblique: Option<Oblique>) -> impl Strategy<Value = Vec<String>> {
    let site = select(vec!["left-seat-bone", "right-seat-bone", "left-trochanter", "coccyx"]);
    let height = 4..14_u32;
    let raised = select(vec!["pre-ischial shelf", "medial support", "lateral support"]);
    let front = select(vec!["left", "right", "both"]);
    let goal = prop_oneof![
        3 => (site, 5..30_u32).prop_map(|(site, percent)| {
            format!("want = \"off-load\"\nsite = \"{site}\"\npercent = {percent}")
        }),
        2 => (front, height.clone()).prop_map(|(side, by)| {
            format!("want = \"lower front\"\nside = \"{side}\"\nby_mm = {by}")
        }),
        2 => (raised, height).prop_map(|(want, mm)| {
            format!("want = \"{want}\"\nheight_mm = {mm}")
        }),
        1 => select(vec!["equal firmness", "near stock"])
            .prop_map(|want| format!("want = \"{want}\"")),
    ];
    let first = oblique.map(|own| {
        let want = if own.is == "flexible" { "correct" } else { "accommodate" };
        format!("want = \"{want} obliquity\"")
    });
    prop::collection::vec(goal, usize::from(first.is_none())..3).prop_map(move |more| {
        let mut goals: Vec<String> = first.clone().into_iter().chain(more).collect();
        let head = |goal: &str| goal.lines().next().map(str::to_owned);
        let mut said = BTreeSet::new();
        goals.retain(|goal| said.insert(head(goal)));
        goals
    })
}

prop_compose! {
    /// Clients of any size; none where no made size of the layout suits.
    fn anybody()(setting in setting())(
        goals in goals(setting.oblique),
        setting in Just(setting),
        row in 0..bodies().len(),
        // One in five is a child: smaller all over. Weight goes with the power 2.5 of lengths,
        // between a thing of the same shape and a sheet; an estimate, no source.
        small in option::weighted(0.2, 0.62..0.85),
        uneven in prop_oneof![2 => Just(0_i32), 1 => -15..15_i32],
        layout in select(files::BUILT_IN_LAYOUTS.iter().map(|own| own.name).collect::<Vec<_>>()),
        units in select(vec![Units::Metric, Units::Inches]),
    ) -> Option<Person> {
        let mut body = bodies()[row].clone();
        let scale: f64 = small.unwrap_or(1.0);
        body.weight = cushion::Mass::from_kg((body.weight.to_kg() * scale.powf(2.5)).round());
        let mm = |length: cushion::Length| (length.to_mm() * scale).round();
        let (hips, thigh) = (mm(body.hip_width), mm(body.thigh_depth));
        body.hip_width = cushion::Length::from_mm(hips);
        body.thigh_depth = cushion::Length::from_mm(thigh - f64::from(uneven.abs()));
        let size = fitting::size_for(&body, &testkit::layout(layout).sizes)?;
        let thighs = Sides {
            left: thigh - f64::from(uneven.max(0)),
            right: thigh + f64::from(uneven.min(0)),
        };
        let (kg, child) = (body.weight.to_kg(), small.is_some());
        Some(Person { kg, hips, thighs, child, setting, goals, layout, size, units })
    }
}

/// Ordinary clients for whom a made size of a built-in layout suits.
pub(crate) fn people() -> impl Strategy<Value = Person> {
    anybody().prop_filter_map("a made size suits", |person| person)
}

impl Person {
    /// A length as it is written in the person's units.
    fn length(&self, mm: f64) -> String {
        match self.units {
            Units::Metric => mm.to_string(),
            Units::Inches => (mm / 25.4).to_string(),
        }
    }

    /// The same person, in other units.
    pub(crate) fn written_in(&self, units: Units) -> Self {
        Self { units, ..self.clone() }
    }

    /// The tables of the person's file.
    pub(crate) fn blocks(&self) -> Vec<Block> {
        let mut blocks = self.who();
        blocks.extend(self.posture());
        for (site, state) in &self.setting.injuries {
            let lines = [
                format!("site = \"{site}\""),
                "category = \"2\"".to_owned(),
                format!("is = \"{state}\""),
                "seen_on = 2026-02-10".to_owned(),
            ];
            blocks.push(("[[skin.injury]]", lines.into()));
        }
        blocks.push(("[skin]", vec!["sensation = \"impaired\"".to_owned()]));
        if let Some(propulsion) = self.setting.propulsion {
            blocks.push(("[function]", vec![format!("propulsion = \"{propulsion}\"")]));
        }
        if let Some(share) = self.setting.share {
            blocks.push(("[seat]", vec![format!("share = {share}")]));
        }
        blocks.push((
            "[chair]",
            match self.setting.sag {
                None => vec!["base = \"solid\"".to_owned()],
                Some(sag) => vec![
                    "base = \"sling\"".to_owned(),
                    format!("sling_sag = {}", self.length(f64::from(sag))),
                ],
            },
        ));
        let cushion = [
            format!("layout = \"{}\"", self.layout),
            format!("size = \"{}\"", self.size),
            "spare_cells = 30".to_owned(),
        ];
        blocks.push(("[cushion]", cushion.into()));
        let goals = self.goals.iter();
        blocks.extend(goals.map(|goal| ("[[goal]]", goal.lines().map(str::to_owned).collect())));
        for (who, phone) in [("Seating clinic", "01632 960147"), ("Nurse", "01632 960152")] {
            let lines = [format!("who = \"{who}\""), format!("phone = \"{phone}\"")];
            blocks.push(("[[call]]", lines.into()));
        }
        blocks
    }

    /// Who they are, how large and how heavy.
    fn who(&self) -> Vec<Block> {
        let mut top = vec![
            "format = 1".to_owned(),
            "kind = \"client\"".to_owned(),
            "client = \"C-1\"".to_owned(),
        ];
        if self.child {
            top.push("child = true".to_owned());
        }
        let both = |own: Sides<f64>| {
            format!("{{ left = {}, right = {} }}", self.length(own.left), self.length(own.right))
        };
        let unit = if self.units == Units::Metric { "mm" } else { "in" };
        let mut measures = vec![
            format!("units = \"{unit}\""),
            format!("hip_width = {}", self.length(self.hips)),
            format!("thigh_depth = {}", both(self.thighs)),
        ];
        if let Some(spacing) = self.setting.spacing {
            measures.push(format!("seat_bone_spacing = {}", self.length(f64::from(spacing))));
        }
        let weight = match self.units {
            Units::Metric => format!("kg = {}", self.kg),
            Units::Inches => format!("lb = {}", self.kg / KG_IN_POUND),
        };
        let weight = vec![weight, "weighed_on = 2026-02-10".to_owned()];
        vec![("", top), ("[measures]", measures), ("[weight]", weight)]
    }

    fn posture(&self) -> Option<Block> {
        let mut lines = Vec::new();
        if let Some(Oblique { lower, by, at, is }) = self.setting.oblique {
            let (lower, by) = (lower.words(), f64::from(by));
            let reducible = match is {
                "partly" => format!(", reducible = {}", self.length((by / 2.0).floor())),
                _ => String::new(),
            };
            let by = self.length(by);
            lines.push(format!(
                "obliquity = {{ lower = \"{lower}\", by = {by}, at = \"{at}\", is = \"{is}\"{reducible} }}"
            ));
        }
        if let Some((to, degrees)) = self.setting.windswept {
            let to = to.words();
            lines.push(format!("windswept = {{ to = \"{to}\", degrees = {degrees} }}"));
        }
        (!lines.is_empty()).then_some(("[posture]", lines))
    }

    /// The person's file.
    pub(crate) fn text(&self) -> String {
        joined(&self.blocks())
    }

    /// The file with its tables and their keys in another order; that of entries of one list,
    /// which means something, stays.
    pub(crate) fn text_in_other_order(&self, seed: u64) -> String {
        let mut blocks = self.blocks();
        let key = |at: usize| mixed(seed.wrapping_add(at as u64));
        for (_, lines) in &mut blocks {
            *lines = by_chance(lines, key);
        }
        let top = blocks.remove(0);
        let mut others = by_chance(&blocks, key);
        for (at, place) in others.clone().iter().enumerate() {
            if !place.0.starts_with("[[") {
                continue;
            }
            let before = others[..at].iter().filter(|own| own.0 == place.0).count();
            let mut same = blocks.iter().filter(|own| own.0 == place.0);
            others[at] = same.nth(before).unwrap().clone();
        }
        others.insert(0, top);
        joined(&others)
    }
}

/// The same things in an order by chance.
fn by_chance<T: Clone>(things: &[T], key: impl Fn(usize) -> u64) -> Vec<T> {
    let mut places: Vec<usize> = (0..things.len()).collect();
    places.sort_by_key(|at| key(*at));
    places.into_iter().map(|at| things[at].clone()).collect()
}

fn joined(blocks: &[Block]) -> String {
    let block = |(heading, lines): &Block| format!("{heading}\n{}\n\n", lines.join("\n"));
    blocks.iter().map(block).collect()
}
