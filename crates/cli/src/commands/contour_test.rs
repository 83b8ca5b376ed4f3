//! `contour-test`: the virtual loaded-contour and overload test, for suppliers.

use casework::PROGRAM;
use cushion::{Force, Length};
use files::report::{BoardExperiment, BoardTilt, ContourParameter, ContourStep};
use fitting::{BoardTest, ContourTest, PreparedCushion, Spacings};
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
    let pattern = casework::pattern(&mut layout, arguments.size, &cell.value)?;
    let cushion = PreparedCushion::new(&pattern, &cell.value, Spacings::default())
        .map_err(|error| casework::no_stock(&layout, &pattern, error))?;
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
    let board = BoardTest::run(&cushion).map(experiment);
    let parameters = parameters(&test);
    if terminal.is_json() {
        let at = (pattern.layout().as_str(), &*pattern.size().to_string());
        return terminal.answer(&files::report::contour_test(
            PROGRAM,
            at,
            CLAIMS,
            &parameters,
            &steps,
            board.as_ref(),
        ));
    }
    terminal.answer(&words(&pattern, &parameters, &steps, board.as_ref()))
}

fn experiment(test: BoardTest) -> BoardExperiment {
    BoardExperiment {
        size: [test.width, test.depth],
        forward: test.forward,
        kilograms: test.load.to_kg(),
        compartments: test.compartments,
        tilts: (test.tilts.into_iter())
            .map(|own| BoardTilt { give: own.give, moved: own.moved, higher: own.higher })
            .collect(),
    }
}

/// The experiment with a board, in words: somebody with a ruler can tell which is true.
fn board_words(board: &BoardExperiment) -> String {
    let [width, depth] = board.size.map(Length::to_mm);
    let mut words = format!(
        "\nA stiff board of {width:.0} x {depth:.0} mm, its middle {:.0} mm in front of the rear edge, \
         {:.0} kg with what lies on its middle. Cells moved from compartment {} to {} make its right \
         edge higher by (estimate):\n",
        board.forward.to_mm(),
        board.kilograms,
        board.compartments[0],
        board.compartments[1]
    );
    for own in board.tilts.chunk_by(|a, b| a.give == b.give) {
        let told = |tilt: &BoardTilt| match tilt.higher {
            Some(higher) => format!("{} cells {:.1} mm", tilt.moved, higher.to_mm()),
            None => format!("{} cells: it tips", tilt.moved),
        };
        let told: Vec<String> = own.iter().map(told).collect();
        let walls = match own[0].give {
            0.0 => "upright walls".to_owned(),
            give => format!("walls that give {:.0} %", give * 100.0),
        };
        words += &format!("  {walls}: {}\n", told.join(", "));
    }
    words
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
    board: Option<&BoardExperiment>,
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
    words += &board.map_or_else(String::new, board_words);
    words += "\nMade with (seen: a source was read; unverified: from memory):\n";
    for own in parameters {
        words += &format!("  {}: {} ({})\n", own.what, own.value, own.mark);
    }
    words + "\n" + CLAIMS + "\n"
}
