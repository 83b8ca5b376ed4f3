//! Tables as the terminal shows them: a pattern's compartments, a plan's counts.

use case::{Plan, PredictedSeat, Spread};
use casework::WeighedCompartment;
use cushion::{Length, Pattern, StockFill};

/// Said wherever computed counts are shown.
pub(crate) const ESTIMATE: &str =
    "An estimate until somebody has checked it with their hands. The treating clinician decides.\n";

/// Returns a pattern with its stock fill: what it is, a line for each compartment, seams.
pub(crate) fn pattern(pattern: &Pattern, fill: &StockFill) -> String {
    let size = pattern.size();
    let mut words = format!(
        "{}, {} x {} mm, {}\n",
        pattern.title(),
        one(size.width().to_mm()),
        one(size.depth().to_mm()),
        pattern.class().words()
    );
    let rating = pattern.max_user_weight().map_or_else(
        || "not a size that it is made in, so it has no maximum user weight".to_owned(),
        |weight| format!("maximum user weight {} kg", one(weight.to_kg())),
    );
    words += &format!("Walls {} mm high; {rating}.\n\n", one(pattern.wall_height().to_mm()));
    words += &aligned(&compartments(pattern, fill));
    let group = fitting::code_group(pattern.class(), true, size.width());
    words += &format!(
        "\nHCPCS group of the declared class and width, if adjustable with what is supplied: {}\n",
        group.words()
    );
    words += "\nSeams (mm): ";
    let seams = pattern.seam_lengths();
    let seams = seams.iter().map(|(name, length)| format!("{name} {:.0}", length.to_mm()));
    words += &seams.collect::<Vec<_>>().join(", ");
    words + "\n" + ESTIMATE
}

/// The rows of a pattern's table, heading and total included.
fn compartments(pattern: &Pattern, fill: &StockFill) -> Vec<Vec<String>> {
    let head = [
        "no.",
        "compartment",
        "area cm2",
        "walls mm",
        "crown mm",
        "about l",
        "low",
        "stock",
        "high",
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for ix in pattern.indices() {
        let (compartment, fill) = (&pattern[ix], &fill[ix]);
        rows.push(vec![
            compartment.number.to_string(),
            compartment.id.to_string(),
            format!("{:.0}", pattern.area(ix).to_cm2()),
            format!("{:.0}", pattern.perimeter(ix).to_mm()),
            format!("{:.0}", fill.crown.to_mm()),
            format!("{:.1}", fill.volume.to_litres()),
            fill.cells.low.to_string(),
            fill.cells.stock.to_string(),
            fill.cells.high.to_string(),
        ]);
    }
    let mut total = vec![String::new(); head.len()];
    (total[1], total[7]) = ("total".to_owned(), fill.total().to_string());
    rows.push(total);
    rows
}

/// Said with every prediction.
pub(crate) const MODEL_LIMITS: &str = "In brackets: what is plausible, from runs over the ranges of what is not known. The model was \
     not compared with a measured cushion: pressures to some 30 %, changes of them to 10 to 20 %. \
     No pressure is a safe one.\n";

/// Returns the grams of each compartment's cells, and how far a count by them may be off.
pub(crate) fn weighed(compartments: &[WeighedCompartment]) -> String {
    let head = ["no.", "compartment", "cells", "grams", "plus or minus"];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for weighed in compartments {
        rows.push(vec![
            weighed.number.to_string(),
            weighed.id.to_string(),
            weighed.cells.to_string(),
            format!("{:.1}", weighed.grams),
            format!("{} cells", weighed.plus_minus),
        ]);
    }
    aligned(&rows)
}

/// A length in mm with its spread.
pub(crate) fn spread_mm(spread: &Spread<Length>) -> String {
    let [central, low, high] = [spread.central, spread.low, spread.high].map(Length::to_mm);
    format!("{central:.0} ({low:.0} to {high:.0})")
}

/// Returns a line for each compartment under the client.
pub(crate) fn compartments_in_use(seat: &PredictedSeat) -> String {
    let head = ["no.", "compartment", "cells", "fill kPa", "from", "to", "carries N", "remarks"];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for own in &seat.compartments {
        rows.push(vec![
            own.number.to_string(),
            own.id.to_string(),
            own.cells.to_string(),
            format!("{:.2}", own.fill.central.to_kpa()),
            format!("{:.2}", own.fill.low.to_kpa()),
            format!("{:.2}", own.fill.high.to_kpa()),
            format!("{:.0}", own.load.to_n()),
            match (own.bottomed, own.slack) {
                (true, _) => "bottomed".to_owned(),
                (false, true) => "slack".to_owned(),
                (false, false) => String::new(),
            },
        ]);
    }
    aligned(&rows)
}

/// Returns a line for each named site.
pub(crate) fn sites_in_use(seat: &PredictedSeat) -> String {
    let head = ["site", "surface kPa", "from", "to", "mmHg", "from", "to"];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for site in &seat.sites {
        let kpa = [site.surface.central, site.surface.low, site.surface.high];
        let mut row = vec![site.id.replace('-', " ")];
        row.extend(kpa.map(|pressure| format!("{:.1}", pressure.to_kpa())));
        row.extend(kpa.map(|pressure| format!("{:.0}", pressure.to_mmhg())));
        rows.push(row);
    }
    aligned(&rows)
}

/// Returns a plan: a line for each compartment, then the cautions.
pub(crate) fn plan(plan: &Plan) -> String {
    let head = ["no.", "compartment", "stock", "change", "planned", "reason"];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for count in &plan.counts {
        let change = i64::from(count.planned) - i64::from(count.stock);
        rows.push(vec![
            count.number.to_string(),
            count.id.to_string(),
            count.stock.to_string(),
            signed(change),
            count.planned.to_string(),
            count.reason.clone().unwrap_or_default(),
        ]);
    }
    let (stock, planned) = (plan.total_stock(), plan.total_planned());
    rows.push(vec![
        String::new(),
        "total".to_owned(),
        stock.to_string(),
        signed(i64::from(planned) - i64::from(stock)),
        planned.to_string(),
        String::new(),
    ]);
    aligned(&rows)
}

/// A change with its sign; nothing where there is none.
fn signed(change: i64) -> String {
    if change == 0 { String::new() } else { format!("{change:+}") }
}

/// A number with a decimal only where there is one.
fn one(value: f64) -> String {
    ((value * 10.0).round() / 10.0).to_string()
}

/// Lays rows out in columns: numbers to the right, words to the left, as the first row below the
/// heading has them.
fn aligned(rows: &[Vec<String>]) -> String {
    let wide =
        |column: usize| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..rows[0].len()).map(wide).collect();
    let words: Vec<bool> = rows[0]
        .iter()
        .map(|head| matches!(&**head, "compartment" | "reason" | "remarks" | "site"))
        .collect();
    let line = |row: &Vec<String>| {
        let cells = row.iter().enumerate().map(|(column, text)| {
            let width = widths[column];
            if words[column] { format!("{text:<width$}") } else { format!("{text:>width$}") }
        });
        cells.collect::<Vec<_>>().join("  ").trim_end().to_owned() + "\n"
    };
    rows.iter().map(line).collect()
}

/// The same with a capital letter at its beginning.
pub(crate) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
