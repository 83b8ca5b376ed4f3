//! `size`: which made size suits the client, of one layout or of all, and why.

use case::{Finding, NoSizeToMake, SizeToMake, Source};
use casework::{AllSizings, LayoutSizing, OpenCase, PROGRAM, Surroundings, Whose};
use files::report::{self, SizedLayout, SizingReport, SizingsReport};
use words::{CallFault, Language};

use crate::arguments;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::terminal::Terminal;

/// Shows the rules, the size that suits best with what it leaves free, and why the others do not.
pub(crate) fn run(arguments: &arguments::Size, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let shown = Shown { case: &case, say: say::about(&case), sources: arguments.sources, terminal };
    let some_suits = if arguments.all {
        shown.all(&case.all_sizings(outside.surroundings(), &[]))?
    } else {
        shown.one(outside.surroundings())?
    };
    if some_suits { Ok(()) } else { Err(none_suits(terminal)) }
}

/// Fails since no made size suits.
fn none_suits(terminal: Terminal) -> Failure {
    let said = say::language().call_fault(&CallFault::NoSizeSuits);
    let failure = Failure::new(Whose::Chooser, said);
    if terminal.is_json() { failure.told() } else { failure }
}

/// An answer about sizes, as it is shown.
struct Shown<'a> {
    case: &'a OpenCase,
    say: &'static dyn Language,
    sources: bool,
    terminal: Terminal,
}

impl Shown<'_> {
    /// Answers for the client's own layout. Returns whether a size of it suits.
    fn one(&self, surroundings: Surroundings<'_>) -> Result<bool, Failure> {
        let (case, say) = (self.case, self.say);
        let client = &case.client.value;
        let named = client.cushion.size;
        let sized = case.sizing();
        let heights = case.height_effects();
        let to_make = sized.chosen.is_none().then(|| case.size_to_make(surroundings));
        let some_suits = sized.chosen.is_some();
        if self.terminal.is_json() {
            let report = SizingReport {
                layout: case.pattern.layout().as_str(),
                named,
                best: sized.chosen,
                margins: &sized.margins,
                suit_too: &sized.suit_too,
                rules: &sized.rules,
                left: &sized.why_not,
                to_make: &to_make,
                heights: &heights,
            };
            let code = client.code.as_str();
            let said = |own: &Finding| say.finding(own);
            self.terminal.answer(&report::sizing(PROGRAM, code, &report, &said))?;
            return Ok(some_suits);
        }
        let mut lines =
            vec![format!("{}: {}\n", client.code, say.text_of_layout(case.pattern.title()))];
        lines.extend(
            sized.rules.iter().map(|rule| self.with_source(say.sizing_rule(rule), rule.source())),
        );
        lines.push(String::new());
        lines.push(say.best_size(sized.chosen));
        lines.extend(some_suits.then(|| say.size_leaves(&sized.margins)));
        let other = sized.chosen.filter(|best| *best != named);
        lines.extend(other.map(|best| say.other_size_named(named, best)));
        if !sized.suit_too.is_empty() {
            lines.push(say.sizes_suit_too(&sized.suit_too));
        }
        lines.extend(sized.why_not.iter().map(|(size, why)| say.size_left(*size, why)));
        lines.extend(to_make.iter().flat_map(|to_make| self.to_make(to_make)));
        let heights = heights.iter();
        lines.extend(heights.map(|own| self.with_source(say.height_effect(own), own.source())));
        self.answer(lines)?;
        Ok(some_suits)
    }

    /// Answers for all layouts. Returns whether a size of one of them suits.
    fn all(&self, all: &AllSizings) -> Result<bool, Failure> {
        let client = &self.case.client.value;
        let rules = self.case.sizing().rules;
        let some_suits = all.to_make.is_none();
        if self.terminal.is_json() {
            let layouts = all.layouts.iter().map(reported).collect();
            let report = SizingsReport { rules: &rules, layouts, to_make: &all.to_make };
            let said = |own: &Finding| self.say.finding(own);
            let code = client.code.as_str();
            self.terminal.answer(&report::sizings(PROGRAM, code, report, &said))?;
            return Ok(some_suits);
        }
        let mut lines = vec![format!("{}\n", client.code)];
        lines.extend(
            rules.iter().map(|rule| self.with_source(self.say.sizing_rule(rule), rule.source())),
        );
        lines.push(String::new());
        lines.extend(all.layouts.iter().map(|layout| self.line(layout)));
        if let Some(to_make) = &all.to_make {
            lines.push(self.say.best_size(None));
            lines.extend(self.to_make(to_make));
        }
        let drawn = all.layouts.iter().filter(|own| own.can_be_drawn_so == Some(true));
        let drawn: Vec<&str> = drawn.map(|own| own.name.as_str()).collect();
        if !drawn.is_empty() {
            lines.push(self.say.can_be_drawn_so(&drawn));
        }
        self.answer(lines)?;
        Ok(some_suits)
    }

    fn answer(&self, mut lines: Vec<String>) -> Result<(), Failure> {
        lines.push(self.say.lines().sizing_defers.to_owned());
        self.terminal.answer(&(lines.join("\n") + "\n"))
    }

    /// A sentence, with its source where these are wanted.
    fn with_source(&self, sentence: String, source: Source) -> String {
        if self.sources { format!("{sentence} ({})", self.say.source(source)) } else { sentence }
    }

    /// What a supplier is asked for, or why nothing is.
    fn to_make(&self, to_make: &Result<SizeToMake, Vec<NoSizeToMake>>) -> Vec<String> {
        match to_make {
            Ok(size) => vec![self.say.size_to_make(size)],
            Err(whys) => whys.iter().map(|why| self.say.no_size_to_make(why)).collect(),
        }
    }

    /// The line for one layout of many.
    fn line(&self, layout: &LayoutSizing) -> String {
        let name = &layout.name;
        match &layout.sizing {
            Err(error) => {
                self.say.layout_not_seen(name, &say::language().trouble(&error.what).message)
            }
            Ok(sized) => match (sized.chosen, sized.nearest_misfit()) {
                (Some(best), _) => self.say.layout_with_size(name, best, &sized.margins),
                (None, nearest) => self.say.layout_without_size(name, nearest),
            },
        }
    }
}

/// One layout of many, for the report.
fn reported(own: &LayoutSizing) -> SizedLayout<'_> {
    let sized = own.sizing.as_ref().ok();
    let not_seen = own.sizing.as_ref().err();
    SizedLayout {
        layout: &own.name,
        best: sized.and_then(|sized| sized.chosen),
        margins: sized.map_or(&[], |sized| &sized.margins),
        suit_too: sized.map_or(&[], |sized| &sized.suit_too),
        left: sized.map_or(&[], |sized| &sized.why_not),
        not_seen: not_seen.map(|error| say::language().trouble(&error.what).message),
        can_be_drawn_so: own.can_be_drawn_so,
    }
}
