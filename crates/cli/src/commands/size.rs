//! `size`: which made size suits the client, and why.

use casework::{OpenCase, PROGRAM, Whose};
use cushion::Size;
use files::report::{self, SizingReport};

use crate::arguments;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::terminal::Terminal;

/// Shows the rules, the size that suits best, and why the others do not.
pub(crate) fn run(arguments: &arguments::Size, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let say = say::about(&case);
    let client = &case.client.value;
    let sized = case.sizing();
    let heights = case.height_effects();
    if terminal.is_json() {
        let report = SizingReport {
            layout: case.pattern.layout().as_str(),
            named: client.cushion.size,
            best: sized.chosen,
            rules: &sized.rules,
            left: &sized.why_not,
            heights: &heights,
        };
        let code = client.code.as_str();
        terminal.answer(&report::sizing(PROGRAM, code, &report, &|own| say.finding(own)))?;
        return none_suits(sized.chosen).map_err(Failure::told);
    }
    let mut lines = vec![format!("{}: {}\n", client.code, case.pattern.title())];
    lines.extend(
        sized
            .rules
            .iter()
            .map(|rule| format!("{} ({})", say.sizing_rule(rule), say.source(rule.source()))),
    );
    lines.push(String::new());
    lines.push(say.best_size(sized.chosen));
    let named = client.cushion.size;
    let other = sized.chosen.filter(|best| *best != named);
    lines.extend(other.map(|best| say.other_size_named(named, best)));
    lines.extend(sized.why_not.iter().map(|(size, why)| say.size_left(*size, why)));
    lines.extend(heights.iter().map(|effect| say.height_effect(effect)));
    lines.push(say.lines().sizing_defers.to_owned());
    terminal.answer(&(lines.join("\n") + "\n"))?;
    none_suits(sized.chosen)
}

/// Fails where no made size suits.
fn none_suits(chosen: Option<Size>) -> Result<(), Failure> {
    match chosen {
        Some(_) => Ok(()),
        None => Err(Failure::new(Whose::Chooser, "no made size suits")
            .hint("take another layout, or have a size made to the rules above")),
    }
}
