//! `template`: cutting and sewing templates at true size.

use std::path::PathBuf;

use casework::{Edition, Exported, MadeTemplate, PROGRAM, Wanted};
use cushion::{Length, Pattern};
use files::report::{self, TemplateCrown, TemplateOpening, TemplateReport, TemplateSeam};

use crate::arguments::Template;
use crate::failure::Failure;
use crate::output_paths::inputs;
use crate::outputs;
use crate::outside::Outside;
use crate::say;
use crate::setting::Setting;

/// Writes the templates of a layout at one size.
pub(crate) fn run(arguments: &Template, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let mut layout = outside.surroundings().layout(&arguments.layout, arguments.size)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let pattern = casework::pattern(&mut layout, arguments.size, &cell.value)?;
    let fill = casework::stock_fill(&mut layout, &pattern, &cell.value)?;
    let paper = arguments.paper.sheet();
    let edition =
        Edition { language: say::language(), on, paper, large_print: false, client_in_code: false };
    let allowance = Length::from_mm(arguments.allowance);
    let options = templates::Options { allowance, eased: !arguments.stretch };
    let made = casework::made_template(&layout, (&pattern, &fill), options, edition)?;
    let wanted = Wanted { pictures: arguments.png, ..Wanted::default() };
    let mut exported = casework::export(&made.papers, wanted)?;
    let (name, dxf) = &made.dxf;
    exported.push(Exported { name: format!("{name}.dxf"), bytes: dxf.clone().into_bytes() });
    let read = [&layout.file.path, &cell.file.path].map(PathBuf::from);
    let read = inputs(&read, &arguments.plugins);
    let paths = outputs::papers(&outside, &arguments.out, exported, &read)?;
    let cautions = say::not_rated(&pattern);
    let written: Vec<String> = paths.iter().map(|path| path.display().to_string()).collect();
    if terminal.is_json() {
        let digest = layout.digest();
        let report = report_of(&pattern, &digest, (&made, &written));
        return terminal.answer(&report::template(PROGRAM, report, (&cautions, &say::finding)));
    }
    let remarks = layout.file.remarks.iter().map(|own| say::text(&own.finding).message);
    terminal.warn(&cautions.iter().map(say::finding).chain(remarks).collect::<Vec<_>>());
    let names: String = written.iter().map(|name| format!("{name}\n")).collect();
    terminal.answer(&(names + &made.notes.join("\n") + "\n"))
}

fn report_of<'a>(
    pattern: &'a Pattern,
    digest: &'a case::Digest,
    (made, written): (&'a MadeTemplate, &'a [String]),
) -> TemplateReport<'a> {
    let template = &made.template;
    let number = |ix: Option<cushion::CompartmentIx>| ix.map(|ix| pattern[ix].number);
    let seams = template.joins.iter().zip(&template.strips).map(|(join, strip)| TemplateSeam {
        wall: join.wall,
        seam: strip.seam.as_str(),
        between: [number(strip.left), number(strip.right)],
        junctions: strip.ends,
        on_wall_mm: join.on_wall.to_mm(),
        on_base_mm: join.on_base.to_mm(),
        on_top_mm: join.on_top.to_mm(),
        eased_in_mm: join.eased_in().to_mm(),
    });
    let crowns = template.crowns.iter().map(|own| TemplateCrown {
        number: own.number,
        width_mm: own.width.to_mm(),
        rise_mm: own.rise.to_mm(),
        arc_mm: own.arc.to_mm(),
        extra_percent: own.extra() * 100.0,
    });
    let openings = template.openings.iter().map(|own| TemplateOpening {
        number: own.number,
        middle_mm: [own.middle.x, own.middle.y],
        length_mm: own.length.to_mm(),
        across: own.across,
        lets_a_hand_in: own.lets_a_hand_in(),
    });
    let pieces = template.pieces.iter().map(|own| (own.kind.id(), own.area.to_mm2()));
    TemplateReport {
        layout: pattern.layout().as_str(),
        revision: pattern.revision(),
        digest,
        size: pattern.size().to_string(),
        allowance_mm: template.options.allowance.to_mm(),
        ease: template.ease,
        pieces: pieces.collect(),
        seams: seams.collect(),
        crowns: crowns.collect(),
        openings: openings.collect(),
        notes: &made.notes,
        written,
    }
}
