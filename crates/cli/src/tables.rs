//! Tables as the terminal shows them: a pattern's compartments, a plan's counts.

use std::collections::BTreeSet;

use case::{
    ComparedHarm, ComparedPair, MeasureCompared, Moment, Plan, PredictedSeat, ReviewedSeat,
    ReviewedSize,
};
use casework::{ListedLayout, WeighedCompartment};
use cushion::{Jump, Length, MadeSize, Mass, Pattern, RangeRow, StockFill};
use files::report::{LineOfOrder, PartLine};
use words::{Language, Told};

use crate::say;

/// Returns a pattern with its stock fill: what it is, a line for each compartment, seams.
pub(crate) fn pattern(pattern: &Pattern, fill: &StockFill) -> String {
    let (size, class) = (pattern.size(), pattern.class());
    let (walls, rating) = (pattern.wall_height(), pattern.max_user_weight());
    let group = fitting::code_group(class, true, size.width());
    let seams = pattern.seam_lengths();
    let names: Vec<(String, Length)> =
        seams.iter().map(|(name, length)| (name.to_string(), *length)).collect();
    let seams: Vec<(&str, Length)> =
        names.iter().map(|(name, length)| (name.as_str(), *length)).collect();
    let say = say::language();
    [
        say.pattern(pattern.title(), size, class, walls, rating),
        aligned(&compartments(pattern, fill)),
        say.code_group(group.code, group.describes, group.wide),
        say.seam_lengths(&seams),
        say.lines().estimate.to_owned(),
    ]
    .join("\n")
        + "\n"
}

/// The rows of a pattern's table, heading and total included.
fn compartments(pattern: &Pattern, fill: &StockFill) -> Vec<Vec<String>> {
    let say = say::language();
    let texts = say.table();
    let head = [
        texts.number,
        texts.compartment,
        texts.area_cm2,
        texts.walls_mm,
        texts.crown_mm,
        texts.about_litres,
        texts.low,
        texts.stock,
        texts.high,
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
            say.decimal(fill.volume.to_litres(), 1),
            fill.cells.low.to_string(),
            fill.cells.stock.to_string(),
            fill.cells.high.to_string(),
        ]);
    }
    let mut total = vec![String::new(); head.len()];
    (total[1], total[7]) = (texts.total.to_owned(), fill.total().to_string());
    rows.push(total);
    rows
}

/// Returns a line for each layout that can be made.
pub(crate) fn layouts(listed: &[ListedLayout]) -> String {
    let texts = say::language().table();
    let head = [
        texts.layout,
        texts.revision,
        texts.digest,
        texts.sizes,
        texts.smallest,
        texts.largest,
        texts.rated_kg,
        texts.title,
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for own in listed {
        let Ok(layout) = &own.found else { continue };
        let value = &layout.value;
        let revision = value.revision.map_or_else(String::new, |number| number.to_string());
        let made = if own.any_size { &[][..] } else { &value.sizes };
        let (least, most) =
            (made.iter().min_by_key(|it| it.size), made.iter().max_by_key(|it| it.size));
        let size = |made: Option<&MadeSize>| made.map_or("-".to_owned(), |it| it.size.to_string());
        let kg = made.iter().map(|it| it.max_user_weight.to_kg());
        let rated = match (kg.clone().reduce(f64::min), kg.reduce(f64::max)) {
            (Some(low), Some(high)) => format!("{low:.0}-{high:.0}"),
            _ => "-".to_owned(),
        };
        let count = if own.any_size { texts.any_size.to_owned() } else { made.len().to_string() };
        rows.push(vec![
            own.name.clone(),
            revision,
            layout.digest().as_str().to_owned(),
            count,
            size(least),
            size(most),
            rated,
            say::language().text_of_layout(&value.title).to_owned(),
        ]);
    }
    aligned(&rows)
}

/// Returns a line for each made size: counts with their range, a column for mirror images whose
/// counts are the same at every size.
pub(crate) fn range(rows: &[RangeRow], jumps: &[Jump], film: Mass) -> String {
    let texts = say::language().table();
    let columns = cushion::columns_of_counts(rows);
    let mut head = vec![texts.size.to_owned(), texts.rated_kg.to_owned()];
    head.extend(columns.iter().map(|column| column.name()));
    head.extend([texts.total, texts.litres, texts.cells_g, texts.seams_mm].map(str::to_owned));
    let mut lines = vec![head];
    for (at, row) in rows.iter().enumerate() {
        let mut line =
            vec![row.made.size.to_string(), format!("{:.0}", row.made.max_user_weight.to_kg())];
        for column in &columns {
            let jumping = |jump: &Jump| jump.row == at && column.numbers.contains(&jump.number);
            let mark = if jumps.iter().any(jumping) { "!" } else { "" };
            let cells = row.pattern.by_number(column.numbers[0]).map(|ix| row.fill[ix].cells);
            line.push(cells.map_or_else(String::new, |own| {
                format!("{}{mark} ({}-{})", own.stock, own.low, own.high)
            }));
        }
        let [low, stock, high] = row.totals();
        line.push(format!("{stock} ({low}-{high})"));
        line.push(say::language().decimal(row.volume().to_litres(), 1));
        line.push(format!("{:.0}", row.cells_mass(film).to_g()));
        line.push(format!("{:.0}", row.seams().to_mm()));
        lines.push(line);
    }
    aligned(&lines)
}

/// Returns a line for each part, for one cushion and for all.
pub(crate) fn parts(lines: &[PartLine], quantity: u32) -> String {
    let texts = say::language().parts();
    let head = [texts.part, texts.each, texts.in_all, texts.unit];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for line in lines {
        let name = match line.id.as_str() {
            "all-cloth" => texts.all_cloth.to_owned(),
            "seams" => texts.seams.to_owned(),
            "thread" => texts.thread.to_owned(),
            "openings" => texts.openings.to_owned(),
            "closures" => texts.closures.to_owned(),
            "cells" => texts.cells.to_owned(),
            "spare-cells" => texts.spares.to_owned(),
            "top" => format!("{}, {}", texts.cloth, texts.top),
            "base" => format!("{}, {}", texts.cloth, texts.base),
            piece => match piece.strip_prefix("wall-") {
                Some(number) => format!("{}, {} {number}", texts.cloth, texts.wall),
                None => format!("{}, {piece}", texts.cloth),
            },
        };
        let number = |number: f64| match line.unit {
            "m" => say::language().decimal(number, 1),
            _ => format!("{number:.0}"),
        };
        let all = line.each * f64::from(quantity);
        let unit = match line.unit {
            "pieces" => say::language().told(&Told::Pieces),
            unit => unit.to_owned(),
        };
        rows.push(vec![name, number(line.each), number(all), unit]);
    }
    aligned(&rows)
}

/// Returns a line for each size of a review.
pub(crate) fn reviewed_sizes(sizes: &[ReviewedSize]) -> String {
    let say = say::language();
    let (texts, table) = (say.review(), say.table());
    let head = [
        table.size,
        table.rated_kg,
        texts.suits,
        texts.code,
        texts.bone_to_seam,
        texts.on_seam,
        texts.left,
        texts.bottomed,
        texts.slack,
        texts.opening,
    ];
    let mut rows = vec![head.map(str::to_lowercase).to_vec()];
    let numbers = |all: &[u8]| match all {
        [] => "-".to_owned(),
        _ => all.iter().map(u8::to_string).collect::<Vec<_>>().join(","),
    };
    for own in sizes {
        let of = |told: &dyn Fn(&ReviewedSeat) -> String| {
            own.seats.iter().map(told).collect::<Vec<_>>().join(" / ")
        };
        let least = own.compartments.iter().map(|it| it.opening.to_mm());
        // Of whom a size suits nobody knows where their bones are.
        let known = |said: String| if own.bodies > 0 { said } else { "-".to_owned() };
        rows.push(vec![
            own.size.to_string(),
            format!("{:.0}", own.rated.to_kg()),
            own.bodies.to_string(),
            own.code.to_owned(),
            known(format!("{:.0}", own.bones.to_seam[1].to_mm())),
            known(format!("{:.0} %", own.bones.on_seam * 100.0)),
            of(&|it| it.left.map_or("-".to_owned(), |left| format!("{:.0}", left.central.to_mm()))),
            of(&|it| numbers(&it.bottomed)),
            of(&|it| numbers(&it.slack)),
            format!("{:.0}", least.fold(f64::INFINITY, f64::min)),
        ]);
    }
    aligned(&rows)
}

/// Returns what one cell does in each compartment, at the size that suits most bodies.
pub(crate) fn reviewed_cells(sizes: &[ReviewedSize]) -> String {
    let say = say::language();
    let (texts, table) = (say.review(), say.table());
    let Some(size) = sizes.iter().max_by_key(|own| own.bodies) else { return String::new() };
    let head = [
        table.number,
        table.compartment,
        table.size,
        texts.cells,
        texts.width,
        texts.under_left,
        texts.under_right,
        texts.lifts,
        texts.pitch,
    ];
    let mut rows = vec![head.map(str::to_lowercase).to_vec()];
    for own in &size.compartments {
        let [low, stock, high] = own.cells;
        let of = |told: &dyn Fn(&case::CellsDo) -> String| {
            own.effect.as_ref().map_or_else(|| "-".to_owned(), told)
        };
        let signed = |number: f64, decimals: usize| {
            let sign = if number < 0.0 { "-" } else { "+" };
            format!("{sign}{}", say.decimal(number.abs(), decimals))
        };
        rows.push(vec![
            own.number.to_string(),
            own.id.to_string(),
            size.size.to_string(),
            say.cells_with_range(low, stock, high, false),
            format!("{:.0}", own.width.to_mm()),
            of(&|it| signed(it.under.left.to_mm(), 2)),
            of(&|it| signed(it.under.right.to_mm(), 2)),
            of(&|it| it.lifts.map_or_else(|| "-".to_owned(), |own| signed(own.to_mm(), 1))),
            of(&|it| signed(it.pitch_deg, 3)),
        ]);
    }
    aligned(&rows)
}

/// Returns two lines for each pair of cushions that are compared.
pub(crate) fn compared_cushions(pairs: &[ComparedPair]) -> String {
    let say = say::language();
    let texts = say.comparison();
    let head = [
        texts.layout,
        texts.size,
        texts.bodies,
        texts.pressure,
        texts.whole_cells,
        texts.compartments,
        texts.cells,
        texts.as_supplied,
        texts.litres,
        texts.mass,
        texts.seams,
        texts.finest,
        texts.coarsest,
        texts.reach,
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    let kpa = |own: cushion::Pressure| say.decimal(own.to_kpa(), 2);
    let at =
        |(number, length): (u8, Length)| format!("{} ({number})", say.decimal(length.to_mm(), 2));
    let none = || "-".to_owned();
    for pair in pairs {
        for (letter, own) in ["A", "B"].iter().zip(&pair.cushions) {
            let cell = own.one_cell.as_ref();
            rows.push(vec![
                (*letter).to_owned(),
                own.size.to_string(),
                pair.bodies.to_string(),
                kpa(pair.pressure),
                say.values_between(&kpa(own.pressures[0]), &kpa(own.pressures[1])),
                own.counts.len().to_string(),
                own.cells().to_string(),
                own.stock.to_string(),
                say.decimal(own.volume.to_litres(), 1),
                format!("{:.0}", own.mass.central.to_g()),
                format!("{:.0}", own.seams.to_mm()),
                cell.map_or_else(none, |own| at(own.finest)),
                cell.map_or_else(none, |own| at(own.coarsest)),
                cell.and_then(|own| own.reach).map_or_else(none, at),
            ]);
        }
    }
    aligned(&rows)
}

/// A value of a measure as it is told; a difference has its sign.
fn compared_value(own: &MeasureCompared, value: f64, has_sign: bool) -> String {
    let said = say::language().decimal(value.abs(), own.measure.decimals());
    // What is told as nothing has no sign.
    let is_nothing = said.chars().all(|c| !c.is_ascii_digit() || c == '0');
    match (is_nothing, value < 0.0, has_sign) {
        (true, ..) | (_, false, false) => said,
        (_, true, _) => format!("-{said}"),
        (_, false, true) => format!("+{said}"),
    }
}

/// The least difference that can be told, and in short what there is.
fn compared_end(own: &MeasureCompared) -> [String; 2] {
    let told = own.told_from.map_or("-".to_owned(), |told| compared_value(own, told, false));
    [told, say::language().compared_verdict(own.verdict).to_owned()]
}

/// Returns a line for each measure over bodies.
pub(crate) fn compared_measures(measures: &[MeasureCompared]) -> String {
    let say = say::language();
    let texts = say.comparison();
    let of = |letter: &str| format!("{letter} 5 / 50 / 95");
    let head = [
        texts.measure.to_owned(),
        texts.unit.to_owned(),
        of("A"),
        of("B"),
        format!("{} 25 / 50 / 75", texts.difference),
        texts.told_from.to_owned(),
        texts.verdict.to_owned(),
    ];
    let mut rows = vec![head.to_vec()];
    for own in measures {
        let all = |values: &[f64; 3], sign| {
            values.map(|value| compared_value(own, value, sign)).join(" / ")
        };
        let mut row = vec![
            say.compared_measure(own.measure).to_owned(),
            say.compared_unit(own.measure).to_owned(),
            all(&own.of[0], false),
            all(&own.of[1], false),
            all(&own.difference, true),
        ];
        row.extend(compared_end(own));
        rows.push(row);
    }
    aligned(&rows)
}

/// Returns a line for each measure of one client.
pub(crate) fn compared_for_one(measures: &[MeasureCompared]) -> String {
    let say = say::language();
    let texts = say.comparison();
    let head =
        [texts.measure, texts.unit, "A", "B", texts.difference, texts.told_from, texts.verdict];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for own in measures {
        let mut row = vec![
            say.compared_measure(own.measure).to_owned(),
            say.compared_unit(own.measure).to_owned(),
            compared_value(own, own.of[0][1], false),
            compared_value(own, own.of[1][1], false),
            compared_value(own, own.difference[1], true),
        ];
        row.extend(compared_end(own));
        rows.push(row);
    }
    aligned(&rows)
}

/// Returns how many come to harm on each layout.
pub(crate) fn compared_harm(harm: &ComparedHarm) -> String {
    let texts = say::language().comparison();
    let mut rows = vec![[texts.harm, "A", "B"].map(str::to_owned).to_vec()];
    let all = [
        (texts.no_rest, harm.no_rest),
        (texts.bottomed, harm.bottomed),
        (texts.little_left, harm.little_left),
    ];
    rows.extend(all.map(|(said, [a, b])| vec![said.to_owned(), a.to_string(), b.to_string()]));
    aligned(&rows)
}

/// Returns a line for each line of an order.
pub(crate) fn order(lines: &[LineOfOrder<'_>]) -> String {
    let say = say::language();
    let (texts, table) = (say.order(), say.table());
    let head = [
        texts.cards,
        table.layout,
        table.size,
        texts.cell,
        texts.whose,
        texts.check_word,
        texts.cushions,
        texts.each,
        texts.spare,
        texts.in_all,
        texts.mass,
    ];
    let mut rows = vec![head.map(str::to_lowercase).to_vec()];
    for own in lines {
        let [first, last] = own.cards;
        rows.push(vec![
            if first == last { first.to_string() } else { format!("{first}-{last}") },
            say.layout_with_revision(own.layout, own.revision),
            own.size.clone(),
            own.cell.to_owned(),
            own.client.unwrap_or(texts.stock).to_owned(),
            own.word.to_owned(),
            own.quantity.to_string(),
            own.cells().to_string(),
            own.spares.to_string(),
            (own.quantity * (own.cells() + own.spares)).to_string(),
            say.grams_with_range(&own.finished),
        ]);
    }
    aligned(&rows)
}

/// Returns the grams of each compartment's cells, and how far a count by them may be off.
pub(crate) fn weighed(compartments: &[WeighedCompartment]) -> String {
    let say = say::language();
    let texts = say.table();
    let head = [texts.number, texts.compartment, texts.cells, texts.grams, texts.plus_or_minus];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for weighed in compartments {
        rows.push(vec![
            weighed.number.to_string(),
            weighed.id.to_string(),
            weighed.cells.to_string(),
            say.decimal(weighed.grams, 1),
            say.cells(weighed.plus_minus),
        ]);
    }
    aligned(&rows)
}

/// Returns a line for each compartment under the client.
pub(crate) fn compartments_in_use(seat: &PredictedSeat) -> String {
    let say = say::language();
    let texts = say.table();
    let head = [
        texts.number,
        texts.compartment,
        texts.cells,
        texts.fill_kpa,
        texts.from,
        texts.to,
        texts.carries_n,
        texts.remarks,
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for own in &seat.compartments {
        rows.push(vec![
            own.number.to_string(),
            own.id.to_string(),
            own.cells.to_string(),
            say.decimal(own.fill.central.to_kpa(), 2),
            say.decimal(own.fill.low.to_kpa(), 2),
            say.decimal(own.fill.high.to_kpa(), 2),
            format!("{:.0}", own.load.to_n()),
            match (own.bottomed, own.slack) {
                (true, _) => texts.bottomed.to_owned(),
                (false, true) => texts.slack.to_owned(),
                (false, false) => String::new(),
            },
        ]);
    }
    aligned(&rows)
}

/// Returns a line for each named site.
pub(crate) fn sites_in_use(seat: &PredictedSeat) -> String {
    let say = say::language();
    let texts = say.table();
    let head =
        [texts.site, texts.surface_kpa, texts.from, texts.to, texts.mmhg, texts.from, texts.to];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for site in &seat.sites {
        let kpa = [site.surface.central, site.surface.low, site.surface.high];
        let mut row = vec![say.site(site.site).to_owned()];
        row.extend(kpa.map(|pressure| say.decimal(pressure.to_kpa(), 1)));
        row.extend(kpa.map(|pressure| format!("{:.0}", pressure.to_mmhg())));
        rows.push(row);
    }
    aligned(&rows)
}

/// Returns a plan: a line for each compartment, then the cautions.
pub(crate) fn plan(plan: &Plan) -> String {
    let say = say::language();
    let texts = say.table();
    let head =
        [texts.number, texts.compartment, texts.stock, texts.change, texts.planned, texts.reason];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    for count in &plan.counts {
        let change = i64::from(count.planned) - i64::from(count.stock);
        rows.push(vec![
            count.number.to_string(),
            count.id.to_string(),
            count.stock.to_string(),
            signed(change),
            count.planned.to_string(),
            count.reason.as_ref().map_or("", |reason| say.count_reason(reason)).to_owned(),
        ]);
    }
    let (stock, planned) = (plan.total_stock(), plan.total_planned());
    rows.push(vec![
        String::new(),
        texts.total.to_owned(),
        stock.to_string(),
        signed(i64::from(planned) - i64::from(stock)),
        planned.to_string(),
        String::new(),
    ]);
    aligned(&rows)
}

/// Returns two entries of a record side by side, with what changed in each compartment.
pub(crate) fn side_by_side(one: &Moment<'_>, other: &Moment<'_>, say: &dyn Language) -> String {
    let texts = say.table();
    let both = [one, other];
    let row = |name: &str, of: &dyn Fn(&Moment<'_>) -> String| {
        vec![name.to_owned(), of(one), of(other), String::new()]
    };
    let mut rows = vec![
        row(texts.entry, &|own| own.number.to_string()),
        row(texts.day, &|own| own.entry.on().to_string()),
        row(texts.by, &|own| own.entry.by().to_owned()),
        row(texts.what, &|own| own.entry.what().to_owned()),
    ];
    let cells = |own: &Moment<'_>, number: u8| own.cells.as_ref()?.get(&number).copied();
    let numbers = both.iter().filter_map(|own| own.cells.as_ref()).flat_map(|own| own.keys());
    let numbers: BTreeSet<u8> = numbers.copied().collect();
    let known = |count: Option<u32>| count.map_or(String::new(), |count| count.to_string());
    for number in numbers {
        let name = format!("{} {number}", texts.number);
        let mut row = row(&name, &|own| known(cells(own, number)));
        if let (Some(was), Some(is)) = (cells(one, number), cells(other, number)) {
            row[3] = signed(i64::from(is) - i64::from(was));
        }
        rows.push(row);
    }
    let total = |own: &Moment<'_>| own.cells.as_ref().map(|own| own.values().sum());
    rows.push(row(texts.total, &|own| known(total(own))));
    rows.push(row(texts.bag, &|own| own.bag.map_or(String::new(), |bag| bag.to_string())));
    let kg = |own: &Moment<'_>| own.weight.map(|own| own.to_kg());
    rows.push(row(texts.weight, &|own| kg(own).map_or(String::new(), |kg| say.decimal(kg, 1))));
    let mut text = aligned(&rows);
    for own in both {
        if let Some(expected) = own.expected {
            text += &format!(
                "{} {} {}: {}\n",
                texts.entry,
                own.number,
                texts.expected,
                say.expected(expected)
            );
        }
        if !own.found.is_empty() {
            let found: Vec<String> = own.found.iter().map(|own| say.check_said(own)).collect();
            text +=
                &format!("{} {} {}: {}\n", texts.entry, own.number, texts.found, found.join(" "));
        }
    }
    text
}

/// A change with its sign; nothing where there is none.
fn signed(change: i64) -> String {
    if change == 0 { String::new() } else { format!("{change:+}") }
}

/// Lays rows out in columns: numbers to the right, words to the left, as the first row below the
/// heading has them.
fn aligned(rows: &[Vec<String>]) -> String {
    let wide =
        |column: usize| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..rows[0].len()).map(wide).collect();
    let say = say::language();
    let texts = say.table();
    let of_words = [
        texts.compartment,
        texts.reason,
        texts.remarks,
        texts.site,
        texts.layout,
        texts.title,
        texts.size,
        say.parts().part,
        say.parts().unit,
        say.comparison().measure,
        say.comparison().unit,
        say.comparison().verdict,
        say.comparison().harm,
    ];
    let words: Vec<bool> = rows[0].iter().map(|head| of_words.contains(&&**head)).collect();
    let line = |row: &Vec<String>| {
        let cells = row.iter().enumerate().map(|(column, text)| {
            let width = widths[column];
            if words[column] { format!("{text:<width$}") } else { format!("{text:>width$}") }
        });
        cells.collect::<Vec<_>>().join("  ").trim_end().to_owned() + "\n"
    };
    rows.iter().map(line).collect()
}
