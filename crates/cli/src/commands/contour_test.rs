//! `contour-test`: the virtual loaded-contour and overload test, for suppliers.

use casework::PROGRAM;
use cushion::{Force, Length, Mass};
use files::report::{BoardExperiment, BoardTilt, ContourParameter, ContourStep};
use fitting::{BoardTest, ContourTest, PreparedCushion, Spacings};
use mechanics::Jig;
use words::{ContourNumber, ContourSaid, SupplierFault};

use crate::arguments::ContourTest as Arguments;
use crate::failure::Failure;
use crate::outside::Outside;
use crate::say;
use crate::terminal::Terminal;

/// The mark in JSON of a number whose source was seen.
const SEEN: &str = "seen";
/// The mark in JSON of a number from memory.
const UNVERIFIED: &str = "unverified";

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
        return Err(Failure::supplier(&SupplierFault::OverloadTooLow));
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
            &say::language().contour(&ContourSaid::Claims),
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
fn board_words(board: &BoardExperiment) -> Vec<String> {
    let say = say::language();
    let mut lines = vec![
        String::new(),
        say.contour(&ContourSaid::Board {
            board: board.size,
            forward: board.forward,
            load: Mass::from_kg(board.kilograms),
            compartments: board.compartments,
        }),
    ];
    for own in board.tilts.chunk_by(|a, b| a.give == b.give) {
        let tilts: Vec<(u32, Option<Length>)> =
            own.iter().map(|tilt| (tilt.moved, tilt.higher)).collect();
        let told = say.contour(&ContourSaid::Tilts { give: own[0].give, tilts: &tilts });
        lines.push(format!("  {told}"));
    }
    lines
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
    use ContourNumber as Number;
    let say = |number| say::language().contour_number(number);
    let one = |what, value: String, mark| ContourParameter { what: say(what), value, mark };
    let newtons = |force: Force| format!("{:.0} N", force.to_n());
    let mm = |length: Length| format!("{:.0} mm", length.to_mm());
    vec![
        one(Number::CylindersApart, say(Number::GrowingWithWidth(120)), SEEN),
        one(Number::ButtonsApart, say(Number::GrowingWithWidth(380)), SEEN),
        one(Number::Steps, say(Number::StepsAre([25, 40])), SEEN),
        one(Number::LineOfParts, mm(test.forward), UNVERIFIED),
        one(Number::FirstLoad, newtons(test.first_load), UNVERIFIED),
        one(Number::Overload, newtons(test.overload), UNVERIFIED),
        one(
            Number::Reserve,
            say(Number::FurtherSink(Jig::RESERVE.to_mm().round() as u16)),
            UNVERIFIED,
        ),
    ]
}

fn words(
    pattern: &cushion::Pattern,
    parameters: &[ContourParameter],
    steps: &[ContourStep],
    board: Option<&BoardExperiment>,
) -> String {
    let say = say::language();
    let title = say.text_of_layout(pattern.title());
    let mut lines =
        vec![say.contour(&ContourSaid::Title { title, size: pattern.size() }), String::new()];
    lines.extend(steps.iter().map(|own| {
        let found = own.buttons_touch.zip(own.left_under).zip(own.further);
        let found = found.map(|((touch, left), further)| (touch, left, further));
        say.contour(&ContourSaid::Step { step: own.step, found })
    }));
    lines.extend(board.iter().flat_map(|own| board_words(own)));
    lines.extend([String::new(), say.contour(&ContourSaid::MadeWith)]);
    lines.extend(parameters.iter().map(|own| {
        let mark = say.contour(&ContourSaid::Mark { seen: own.mark == SEEN });
        format!("  {}: {} ({mark})", own.what, own.value)
    }));
    lines.extend([String::new(), say.contour(&ContourSaid::Claims)]);
    lines.join("\n") + "\n"
}
