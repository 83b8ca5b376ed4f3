//! The range of a layout as CSV: a line for each made size.

use cushion::{Cell, Jump, Name, RangeRow};

/// Returns a table with a heading and a line for each size; compartments and seams are those that
/// any size has, and what a size has not is left empty.
#[must_use]
pub fn range_csv(rows: &[RangeRow], cell: &Cell, jumps: &[Jump]) -> String {
    let mut numbers: Vec<u8> = Vec::new();
    let mut seams: Vec<Name> = Vec::new();
    for row in rows {
        for own in row.pattern.compartments().iter().map(|own| own.number) {
            if !numbers.contains(&own) {
                numbers.push(own);
            }
        }
        for (name, _) in row.pattern.seam_lengths() {
            if !seams.contains(&name) {
                seams.push(name);
            }
        }
    }
    let mut lines = vec![heading(&numbers, &seams)];
    lines.extend(rows.iter().enumerate().map(|(at, row)| {
        let jumping = jumps.iter().filter(|jump| jump.row == at);
        let jumping: Vec<String> = jumping.map(|jump| jump.number.to_string()).collect();
        let mut line = line(row, cell, &numbers, &seams);
        line.push(jumping.join(" "));
        line
    }));
    let mut writer = csv::Writer::from_writer(Vec::new());
    for line in lines {
        writer.write_record(line).expect("memory takes every line");
    }
    let bytes = writer.into_inner().expect("memory takes every line");
    String::from_utf8(bytes).expect("all cells are text")
}

fn heading(numbers: &[u8], seams: &[Name]) -> Vec<String> {
    let first = ["width_mm", "depth_mm", "max_user_weight_kg", "total_low", "total", "total_high"];
    let mut heads: Vec<String> = first.map(str::to_owned).to_vec();
    heads.extend(["litres", "cells_g", "fill_kpa"].map(str::to_owned));
    for number in numbers {
        heads.extend(["low", "stock", "high"].map(|end| format!("cells_{number}_{end}")));
    }
    heads.extend(seams.iter().map(|name| format!("seam_{name}_mm")));
    heads.extend(["seams_mm", "jumps"].map(str::to_owned));
    heads
}

fn line(row: &RangeRow, cell: &Cell, numbers: &[u8], seams: &[Name]) -> Vec<String> {
    let size = row.made.size;
    let [low, stock, high] = row.totals();
    let mut line = vec![
        format!("{:.1}", size.width().to_mm()),
        format!("{:.1}", size.depth().to_mm()),
        format!("{}", row.made.max_user_weight.to_kg()),
        low.to_string(),
        stock.to_string(),
        high.to_string(),
        format!("{:.2}", row.volume().to_litres()),
        format!("{:.1}", row.cells_mass(cell.film).to_g()),
        format!("{:.3}", row.fill.pressure.to_kpa()),
    ];
    for number in numbers {
        let cells = row.pattern.by_number(*number).map(|ix| row.fill[ix].cells);
        let text = |count: Option<u32>| count.map_or_else(String::new, |count| count.to_string());
        line.extend([
            text(cells.map(|own| own.low)),
            text(cells.map(|own| own.stock)),
            text(cells.map(|own| own.high)),
        ]);
    }
    let lengths = row.pattern.seam_lengths();
    for seam in seams {
        let own = lengths.iter().find(|(name, _)| name == seam);
        line.push(own.map_or_else(String::new, |(_, length)| format!("{:.1}", length.to_mm())));
    }
    line.push(format!("{:.1}", row.seams().to_mm()));
    line
}
