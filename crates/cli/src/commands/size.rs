//! `size`: which made size suits the client, and why.

use casework::OpenCase;

use crate::arguments::Size;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::terminal::Terminal;

/// Shows the rules, the size that suits best, and why the others do not.
pub(crate) fn run(arguments: &Size, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let client = &case.client.value;
    let sized = case.sizing();
    let mut words = format!("{}: {}\n\n", client.code, case.pattern.title());
    for rule in &sized.rules {
        words += &format!("{} ({})\n", rule.words, rule.source);
    }
    words += &match sized.chosen {
        Some(size) => format!("\nThe made size that suits best: {size}.\n"),
        None => "\nNo made size suits.\n".to_owned(),
    };
    if let Some(chosen) = sized.chosen.filter(|own| *own != client.cushion.size) {
        words += &format!("The file names {}, not {chosen}.\n", client.cushion.size);
    }
    for (size, reasons) in &sized.why_not {
        words += &format!("Not {size}: {}.\n", reasons.join("; "));
    }
    for sentence in case.consequences() {
        words += &format!("{sentence}\n");
    }
    words += "Sizing goes by rules of practice; the treating clinician decides.\n";
    terminal.answer(&words)
}
