//! English: whole answers, beside their findings.

use case::text::LengthUnit;
use case::{
    Alarm, BrokenLimit, ComparedMeasure, ComparedSizes, ComparedVerdict, Costs, Date, GoalOutcome,
    NoSize, PredictedSeat, Prediction, ReviewFinding, Said, SizeMargin, SizeMisfit, Spread,
    SurveyFault, SurveySummary,
};
use cushion::{Class, Jump, Length, Mass, Pressure, Size};

use super::{English, comparisons, parts, reviews};
use crate::{
    BasicWords, CautionWords, CheckWords, ComparisonTexts, FixedLines, GoalWords, PartsTexts,
    ReportWords, TableTexts,
};

const TABLE: TableTexts = TableTexts {
    number: "no.",
    compartment: "compartment",
    area_cm2: "area cm2",
    walls_mm: "walls mm",
    crown_mm: "crown mm",
    about_litres: "about l",
    low: "low",
    stock: "stock",
    high: "high",
    change: "change",
    planned: "planned",
    reason: "reason",
    cells: "cells",
    grams: "grams",
    plus_or_minus: "plus or minus",
    fill_kpa: "fill kPa",
    from: "from",
    to: "to",
    carries_n: "carries N",
    remarks: "remarks",
    site: "site",
    surface_kpa: "surface kPa",
    mmhg: "mmHg",
    total: "total",
    bottomed: "bottomed",
    slack: "slack",
    entry: "entry",
    day: "day",
    what: "what",
    by: "by",
    bag: "spare bag",
    weight: "weight, kg",
    expected: "expected",
    found: "found",
    layout: "layout",
    revision: "revision",
    digest: "digest",
    sizes: "sizes",
    smallest: "smallest",
    largest: "largest",
    rated_kg: "rated kg",
    title: "title",
    size: "size mm",
    litres: "litres",
    cells_g: "cells g",
    seams_mm: "seams mm",
    any_size: "as asked",
};

const PARTS: PartsTexts = PartsTexts {
    part: "part",
    each: "each",
    in_all: "in all",
    unit: "unit",
    cloth: "cloth",
    top: "top",
    base: "base",
    wall: "wall",
    all_cloth: "all cloth",
    seams: "seams",
    thread: "thread",
    openings: "openings",
    closures: "closures",
    cells: "cells",
    spares: "spare cells",
    from_memory: "What was not given of cloth, thread and closures is from memory, unverified: weigh yours and give it.",
    left_out: "Without labels, spare cells, an outer cover and waste of cutting.",
};

const LINES: FixedLines = FixedLines {
    estimate: "An estimate until somebody has checked it with their hands. The treating clinician decides.",
    model_limits: "In brackets: what is plausible, from runs over the ranges of what is not known. The model was not compared with a measured cushion: pressures to some 30 %, changes of them to 10 to 20 %. No pressure is a safe one.",
    sizing_defers: "Sizing goes by rules of practice; the treating clinician decides.",
    grams_of_today: "For this batch, scale and day only: weigh a new batch another day. Weigh cells without bag and vessel. Where a count matters, count.",
    client_off_now: "CLIENT OFF NOW.",
    look_at_these: "Then look at these:",
    clear_this_first: "Nothing is moved before this is clear:",
    what_would_explain: "What would explain it, the likeliest first:",
    nobody_sits: "nobody sits on it again before the cause is found and a hand underneath is sure",
    keep_off_or_take: "keep the client off the cushion; the moves shown are those that load the injury least, and --nearest-safe takes them",
    nearest_safe_shown: "the plan shown is the nearest safe one; --nearest-safe takes it",
    take_another_cushion: "take another size, layout or wall height; the counts shown come nearest",
    withdrawn: "WITHDRAWN: ",
    weigh_the_client: "weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`",
};

impl English {
    /// What a size leaves free, one after the other.
    fn margins(self, margins: &[SizeMargin]) -> String {
        let margins: Vec<String> = margins.iter().map(|own| self.size_margin(own)).collect();
        match margins.as_slice() {
            [] => "nothing that is known: neither hips, thighs, weight nor chair were measured"
                .to_owned(),
            some => some.join(", "),
        }
    }
}

impl ReportWords for English {
    fn table(&self) -> &'static TableTexts {
        &TABLE
    }

    fn lines(&self) -> &'static FixedLines {
        &LINES
    }

    fn whence(&self, recorded_on: Option<Date>) -> String {
        match recorded_on {
            Some(on) => format!("counts recorded on {on}"),
            None => "counts of a plan that is not recorded".to_owned(),
        }
    }

    fn expected_seat(&self, seat: &PredictedSeat) -> String {
        format!(
            "Expected: {}; under the seat bones: left {}, right {}.",
            self.lower(seat.lower_side, seat.lower_by),
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right)
        )
    }

    fn expected_after_moves(&self, seat: &PredictedSeat) -> String {
        format!(
            "Expected then: {} under the left seat bone, {} under the right.",
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right)
        )
    }

    fn ended(&self, prediction: &Prediction) -> String {
        format!("Outcome: {}.", self.outcome(prediction.outcome))
    }

    fn seat(&self, seat: &PredictedSeat) -> String {
        let trunk = match seat.trunk_stiffness {
            0.0 => String::new(),
            trunk => format!(" The leaning trunk takes {trunk:.1} of it."),
        };
        format!(
            "At the seat bones {}.\n\
             In degrees, the cushion turns them from how they sit by themselves: {}, {}.\n\
             Cushion under the seat bones: left {}, right {}.\n\
             They sink in by {} and {}. Skin touches on {:.0} cm2, mean pressure {}.\n\
             Leaning to a side is resisted with {:.1} N m a degree.{trunk}",
            self.lower(seat.lower_side, seat.lower_by),
            turned(&seat.roll_deg, ["left", "right"]),
            turned(&seat.pitch_deg, ["front up", "front down"]),
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right),
            self.length(seat.immersion.left),
            self.length(seat.immersion.right),
            seat.contact_area.to_cm2(),
            spread_kpa(&seat.mean_surface),
            seat.roll_stiffness,
        )
    }

    fn costs(&self, costs: &Costs) -> Vec<String> {
        self.cost_lines(costs)
    }

    fn costs_on_paper(&self, costs: &Costs) -> Vec<String> {
        self.cost_lines_on_paper(costs)
    }

    fn ranked_goal(&self, place: usize, outcome: &GoalOutcome) -> String {
        format!("Goal {place}. {}", self.goal_outcome(outcome))
    }

    fn spare_cells(&self, cells: u32) -> String {
        format!("Spare cells in the bag: {cells}.")
    }

    fn not_safe_yet(&self, limit: &BrokenLimit) -> String {
        format!("NOT SAFE YET: {}.", self.limit(limit))
    }

    fn client_off(&self, alarms: &[Alarm]) -> String {
        let alarms: Vec<String> = alarms.iter().map(|own| self.alarm(own)).collect();
        format!("client off now: {}", alarms.join("; "))
    }

    fn not_safe(&self, limits: &[BrokenLimit]) -> String {
        let limits: Vec<String> = limits.iter().map(|own| self.limit(own)).collect();
        format!("not safely possible: {}", limits.join("; "))
    }

    fn goals_not_reached(&self, goals: &[GoalOutcome]) -> String {
        let missed = goals.iter().filter(|goal| !goal.met).map(|goal| match goal.why {
            Some(why) => format!("{} ({})", self.goal(&goal.want), self.shortfall(why)),
            None => self.goal(&goal.want),
        });
        let missed: Vec<String> = missed.collect();
        format!("not all that is wanted is safely possible: {}", missed.join("; "))
    }

    fn nothing_planned(&self) -> &'static str {
        "nothing is planned for the goals without the client's weight"
    }

    fn at_the_seat_bones(&self, by: Length, [low, high]: [Length; 2]) -> String {
        let (by, low, high) = (self.length(by), self.length(low), self.length(high));
        if low == high {
            return format!(
                "{by} at the front of the pelvis is {low} at the seat bones, by their spacing."
            );
        }
        format!(
            "{by} at the front of the pelvis is {low} to {high} at the seat bones, whose spacing \
             was not measured."
        )
    }

    fn best_size(&self, best: Option<Size>) -> String {
        match best {
            Some(size) => {
                format!("The made size that suits best: {}.", self.size_in_words(size))
            }
            None => "No made size suits.".to_owned(),
        }
    }

    fn other_size_named(&self, named: Size, best: Size) -> String {
        let (named, best) = (self.size_in_words(named), self.size_in_words(best));
        format!("The file names {named}, not {best}.")
    }

    fn size_leaves(&self, margins: &[SizeMargin]) -> String {
        format!("It leaves {}.", self.margins(margins))
    }

    fn sizes_suit_too(&self, sizes: &[Size]) -> String {
        let sizes: Vec<String> = sizes.iter().map(|size| self.size_in_words(*size)).collect();
        format!("Further from the width and depth wanted, but suits: {}.", sizes.join("; "))
    }

    fn layout_with_size(&self, layout: &str, best: Size, margins: &[SizeMargin]) -> String {
        format!("{layout}: {}, with {}.", self.size_in_words(best), self.margins(margins))
    }

    fn layout_without_size(
        &self,
        layout: &str,
        nearest: Option<&(Size, Vec<SizeMisfit>)>,
    ) -> String {
        let Some((size, misfits)) = nearest else {
            return format!("{layout}: it is made in no size.");
        };
        let misfits: Vec<String> = misfits.iter().map(|own| self.size_misfit(own)).collect();
        format!(
            "{layout}: none suits; the nearest is {}, but {}.",
            self.size_in_words(*size),
            misfits.join("; ")
        )
    }

    fn layout_not_seen(&self, layout: &str, why: &str) -> String {
        format!("{layout}: not looked at: {why}.")
    }

    fn can_be_drawn_so(&self, layouts: &[&str]) -> String {
        format!("Layouts that can be drawn so: {}.", layouts.join(", "))
    }

    fn size_left(&self, size: Size, misfits: &[SizeMisfit]) -> String {
        let misfits: Vec<String> = misfits.iter().map(|own| self.size_misfit(own)).collect();
        format!("Not {}: {}.", self.size_in_words(size), misfits.join("; "))
    }

    fn batch(&self, cells: u32, grams_of_one: f64) -> String {
        format!("cells of {grams_of_one:.2} g by a batch of {cells}")
    }

    fn pattern(
        &self,
        title: &str,
        size: Size,
        class: Class,
        walls: Length,
        rating: Option<Mass>,
    ) -> String {
        let rating = match rating {
            None => "not a size that it is made in, so it has no maximum user weight".to_owned(),
            Some(rating) => format!("maximum user weight {}", parts::kg(rating)),
        };
        format!(
            "{title}, {} x {} mm, {}\nWalls {} mm high; {rating}.",
            tenths(size.width()),
            tenths(size.depth()),
            class_words(class),
            tenths(walls)
        )
    }

    fn survey_summary(&self, summary: &SurveySummary) -> Vec<String> {
        let SurveySummary { bodies, sized, planned, .. } = summary;
        let mut said = vec![match (bodies, sized) {
            (1, 0) => "1 body; no size is made for it.".to_owned(),
            (1, _) => "1 body; a size is made for it.".to_owned(),
            _ => format!("{bodies} bodies; a size is made for {sized} of them."),
        }];
        if *sized > 0 {
            let percent = 100.0 * *planned as f64 / *sized as f64;
            said.push(format!("A plan within all limits: {planned} of {sized} ({percent:.1} %)."));
        }
        let without = summary.without_size.iter().map(|(why, count)| match why {
            NoSize::TooHeavy => format!(
                "No size, {count}: heavier than the sizes are rated for that suit the measures."
            ),
            NoSize::Measures => format!("No size, {count}: no made size suits the measures."),
        });
        let not_safe = summary.not_safe.iter().map(|(why, count)| {
            let why = match why {
                SurveyFault::Clearance => "too little cushion would remain under a seat bone",
                SurveyFault::BottomsOut => "the body bottoms out",
                SurveyFault::InjuredSite => "a site with an injury would get more pressure",
                SurveyFault::NoRest => "the body does not come to rest",
                SurveyFault::Refused => "no plan is made for its weight or measures",
            };
            format!("Not within the limits, {count}: {why}.")
        });
        said.extend(without.chain(not_safe));
        said
    }

    fn code_group(&self, code: &str, describes: &str, wide: bool) -> String {
        let width = if wide { "width 22 inches or greater" } else { "width less than 22 inches" };
        format!(
            "HCPCS group of the declared class and width, if adjustable with what is supplied: \
             {code} ({describes}, {width}, any depth). Code verification is the manufacturer's and \
             the payer's."
        )
    }

    fn parts(&self) -> &'static PartsTexts {
        &PARTS
    }

    fn parts_of(&self, title: &str, size: Size, quantity: u32, allowance: Length) -> String {
        let many =
            if quantity == 1 { "1 cushion".to_owned() } else { format!("{quantity} cushions") };
        format!("{title}, {size} mm: {many}, seam allowance {:.0} mm.", allowance.to_mm())
    }

    fn comparison(&self) -> &'static ComparisonTexts {
        comparisons::TEXTS
    }

    fn compared_unit(&self, measure: ComparedMeasure) -> &'static str {
        measure.unit()
    }

    fn compared_measure(&self, measure: ComparedMeasure) -> &'static str {
        comparisons::measure(measure)
    }

    fn compared_verdict(&self, verdict: ComparedVerdict) -> &'static str {
        comparisons::verdict(verdict)
    }

    fn compared_sizes(&self, sizes: &ComparedSizes) -> String {
        comparisons::sizes(sizes)
    }

    fn compared_fill(&self, sizes: [Size; 2], pressure: Pressure, of: Option<usize>) -> String {
        comparisons::fill(sizes, pressure, of)
    }

    fn review_finding(&self, finding: &ReviewFinding) -> Said {
        reviews::finding(finding)
    }

    fn order_in_short(&self, order: &str, cushions: usize, to_fill: u32, spares: u32) -> String {
        format!(
            "Order {order}: {}, {} to fill, {spares} spare.",
            parts::counted(cushions, "cushion"),
            parts::cells(to_fill)
        )
    }

    fn finished_mass(
        &self,
        all: &Spread<Mass>,
        cover: &Spread<Mass>,
        cells: &Spread<Mass>,
    ) -> String {
        let said = |own: &Spread<Mass>| {
            let [central, low, high] = [own.central, own.low, own.high].map(|own| own.to_g());
            format!("{central:.0} g ({low:.0} to {high:.0})")
        };
        format!(
            "One finished cushion weighs {}: cover {}, cells {}.",
            said(all),
            said(cover),
            said(cells)
        )
    }

    fn layout_known_by(&self, layout: &str, revision: Option<u32>, digest: &str) -> String {
        match revision {
            Some(number) => format!("layout {layout}, revision {number}, digest {digest}"),
            None => format!("layout {layout}, no revision, digest {digest}"),
        }
    }

    fn range_of(&self, title: &str, sizes: usize, cell: &str) -> String {
        let sizes = if sizes == 1 { "1 size".to_owned() } else { format!("{sizes} sizes") };
        format!("{title}: {sizes}, counted with the cell {cell}.")
    }

    fn jump(&self, jump: &Jump, from: Size, to: Size) -> String {
        let Jump { number, id, was, is, expected, .. } = jump;
        format!(
            "Jump: compartment {number} ({id}) goes from {was} at {from} to {is} at {to}; some {expected} would go with the cushion."
        )
    }

    fn no_jumps(&self) -> &'static str {
        "No count jumps: each goes with the cushion from size to size, within a quarter."
    }

    fn range_legend(&self) -> &'static str {
        "Cells as supplied, in brackets the range; a ! marks a count that jumps from the next smaller size."
    }

    fn revision_stands(&self, was: Option<u32>, is: Option<u32>) -> String {
        let (was, is) = (was.unwrap_or(1), is.unwrap_or(1));
        if is > was {
            format!("the revision rose from {was} to {is}: counts may differ")
        } else {
            format!("every count is that of the layout before: revision {is} may stay")
        }
    }

    fn seam_lengths(&self, seams: &[(&str, Length)]) -> String {
        let seams: Vec<String> =
            seams.iter().map(|(name, length)| format!("{name} {:.0}", length.to_mm())).collect();
        format!("Seams (mm): {}", seams.join(", "))
    }
}

fn class_words(class: Class) -> &'static str {
    match class {
        Class::General => "general use",
        Class::SkinProtection => "skin protection",
        Class::Positioning => "positioning",
        Class::SkinProtectionAndPositioning => "skin protection and positioning",
    }
}

/// Millimetres with a decimal only where there is one.
fn tenths(length: Length) -> String {
    ((length.to_mm() * 10.0).round() / 10.0).to_string()
}

impl English {
    /// A length with its spread.
    pub(super) fn spread(self, spread: &Spread<Length>) -> String {
        let Spread { central, low, high } = spread;
        match self.lengths {
            LengthUnit::Millimetres => {
                format!("{} ({:.0} to {:.0})", parts::mm(*central), low.to_mm(), high.to_mm())
            }
            LengthUnit::Inches => format!(
                "{} in ({} to {}), {} mm ({:.0} to {:.0})",
                parts::inches(*central),
                parts::inches(*low),
                parts::inches(*high),
                central.to_mm().round(),
                low.to_mm(),
                high.to_mm()
            ),
        }
    }
}

/// A turn in degrees with its spread, each with the way in which it goes: the first word where it
/// is above zero.
fn turned(spread: &Spread<f64>, [above, below]: [&str; 2]) -> String {
    let one = |degrees: f64| {
        let tenths = (degrees * 10.0).round() / 10.0;
        match tenths {
            0.0 => "0.0".to_owned(),
            _ => format!("{} {:.1}", if tenths > 0.0 { above } else { below }, tenths.abs()),
        }
    };
    format!("{} ({} to {})", one(spread.central), one(spread.low), one(spread.high))
}

/// A pressure with its spread.
fn spread_kpa(spread: &Spread<Pressure>) -> String {
    let Spread { central, low, high } = spread;
    format!("{:.1} kPa ({:.1} to {:.1})", central.to_kpa(), low.to_kpa(), high.to_kpa())
}
