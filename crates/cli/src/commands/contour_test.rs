//! `contour-test`: the virtual loaded-contour and overload test, for suppliers.

use casework::PROGRAM;
use cushion::{Force, Length};
use files::report::{ContourParameter, ContourStep};
use fitting::{ContourTest, PreparedCushion, Spacings};
use mechanics::Jig;

use crate::arguments::ContourTest as Arguments;
use crate::failure::Failure;
use crate::outside::Outside;
use crate::terminal::Terminal;

/// Said with every answer.
const CLAIMS: &str = "A computed comparison on the stock fill. It replaces no laboratory test and \
    claims no code or class; code verification is the manufacturer's and the payer's.";

/// Runs the test for both steps of the jig and shows what came out.
pub(crate) fn run(arguments: &Arguments, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let mut layout = outside.surroundings().layout(&arguments.layout, arguments.size)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let pattern = casework::pattern(&mut layout, arguments.size)?;
    let cushion = PreparedCushion::new(&pattern, &cell.value, Spacings::default())
        .map_err(|error| casework::no_stock(&layout, &pattern, &error))?;
    let test = ContourTest {
        forward: Length::from_mm(arguments.forward),
        first_load: Force::from_n(arguments.first_load),
        overload: Force::from_n(arguments.overload),
    };
    if test.overload <= test.first_load {
        return Err(Failure::call("the overload is not above the first load"));
    }
    let steps: Vec<ContourStep> =
        Jig::STEPS.iter().map(|step| found(&test, &cushion, *step)).collect();
    let parameters = parameters(&test);
    if arguments.json.json {
        let at = (pattern.layout().as_str(), &*pattern.size().to_string());
        return terminal.answer(&files::report::contour_test(
            PROGRAM,
            at,
            CLAIMS,
            &parameters,
            &steps,
        ));
    }
    terminal.answer(&words(&pattern, &parameters, &steps))
}

fn found(test: &ContourTest, cushion: &PreparedCushion, step: Length) -> ContourStep {
    let found = test.run(cushion, step);
    ContourStep {
        step,
        buttons_touch: found.map(|found| found.buttons_touch),
        left_under: found.map(|found| found.left_under),
        further: found.map(|found| found.further),
    }
}

/// The numbers of the test, with what is known of where they come from.
fn parameters(test: &ContourTest) -> Vec<ContourParameter> {
    let one = |what, value: String, mark| ContourParameter { what, value, mark };
    vec![
        one(
            "cylinders apart, on a cushion of 470 mm",
            "120 mm, growing with the width".to_owned(),
            "seen",
        ),
        one(
            "buttons apart, on a cushion of 470 mm",
            "380 mm, growing with the width".to_owned(),
            "seen",
        ),
        one("steps from cylinders to buttons", "25 and 40 mm".to_owned(), "seen"),
        one(
            "line of the parts in front of the rear edge",
            format!("{:.0} mm", test.forward.to_mm()),
            "unverified",
        ),
        one("first load", format!("{:.0} N", test.first_load.to_n()), "unverified"),
        one("overload", format!("{:.0} N", test.overload.to_n()), "unverified"),
        one(
            "reserve that the overload should leave",
            format!("{:.0} mm of further sink", Jig::RESERVE.to_mm()),
            "unverified",
        ),
    ]
}

fn words(
    pattern: &cushion::Pattern,
    parameters: &[ContourParameter],
    steps: &[ContourStep],
) -> String {
    let mut words = format!(
        "{}, {}: loaded contour and overload, stock fill\n\n",
        pattern.title(),
        pattern.size()
    );
    for own in steps {
        words += &format!("Step of {:.0} mm: ", own.step.to_mm());
        words += &match (own.buttons_touch, own.left_under, own.further) {
            (Some(touch), Some(left), Some(further)) => format!(
                "the buttons {} under the first load, with {:.0} mm left under the cylinders; \
                 the overload sinks {:.1} mm further.\n",
                if touch { "touch" } else { "do not touch" },
                left.to_mm(),
                further.to_mm()
            ),
            _ => "the jig does not come to rest.\n".to_owned(),
        };
    }
    words += "\nMade with (seen: a source was read; unverified: from memory):\n";
    for own in parameters {
        words += &format!("  {}: {} ({})\n", own.what, own.value, own.mark);
    }
    words + "\n" + CLAIMS + "\n"
}
