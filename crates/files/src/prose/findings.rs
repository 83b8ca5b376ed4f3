//! How findings about a text are said, in English.

use case::ClientCode;
use case::question::{Kind, Need, Question, Range, Unit};
use cushion::{Name, SizeError};

use super::label;
use crate::finding::{
    ClientFinding, DesignFinding, FileFinding, Finding, KeyFinding, LengthUnit, Looks,
    RecordFinding, SyntaxFinding, Type, ValueFinding, WishFinding, WordFinding,
};

/// A finding in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What is wrong, without a full stop.
    pub message: String,
    /// What to do.
    pub hint: Option<String>,
}

fn said(message: impl Into<String>, hint: impl Into<String>) -> Said {
    let hint: String = hint.into();
    Said { message: message.into(), hint: (!hint.is_empty()).then_some(hint) }
}

/// Says a finding.
#[must_use]
pub fn say(finding: &Finding) -> Said {
    match finding {
        Finding::File(own) => file(own),
        Finding::Syntax(own) => syntax(own),
        Finding::Key(own) => key(own),
        Finding::Value(own) => value(own),
        Finding::Word(own) => word(own),
        Finding::Client(own) => client(own),
        Finding::Wish(own) => wish(own),
        Finding::Record(own) => record(own),
        Finding::Design(own) => design(own),
        Finding::Said { message, hint } => Said { message: message.clone(), hint: hint.clone() },
    }
}

fn file(finding: &FileFinding) -> Said {
    match finding {
        FileFinding::TooLarge => {
            said("this file is larger than 1 MB", "it cannot be one of ours; name another")
        }
        FileFinding::NoKind => said(
            "this file does not say which kind of ours it is",
            "begin it with `format = 1` and `kind = \"layout\"`, `\"cell\"` or `\"client\"`",
        ),
        FileFinding::OtherKind { written, wanted } => {
            let hint = match crate::Kind::ALL.into_iter().find(|kind| kind.words() == written) {
                Some(crate::Kind::Client) => {
                    "a client's file names its layout and its cell; name one of those here"
                }
                Some(_) if *wanted == crate::Kind::Client => {
                    "name the client's file here; it names the layout and the cell"
                }
                _ => "name a file of the right kind",
            };
            said(format!("this is a file of kind `{written}`, not `{}`", wanted.words()), hint)
        }
        FileFinding::Format(format) => {
            said(format!("format {format} is not known"), "this program reads `format = 1`")
        }
        FileFinding::More(1) => said("there is 1 more remark", "put these right first"),
        FileFinding::More(count) => {
            said(format!("there are {count} more remarks"), "put these right first")
        }
    }
}

fn syntax(finding: &SyntaxFinding) -> Said {
    match finding {
        SyntaxFinding::Twice => said("this key is written twice", "keep one of the two"),
        SyntaxFinding::HeadingTwice => {
            said("this heading is written twice", "put the lines of both under one of them")
        }
        SyntaxFinding::TypographicQuotes(written) => said(
            "these are the quotes of a word processor",
            format!("write \"{written}\" with plain quotes, in a plain text editor"),
        ),
        SyntaxFinding::NoQuotes(written) => {
            said(format!("`{written}` has no quotes"), format!("write \"{written}\""))
        }
        SyntaxFinding::NoValue => said(
            "nothing is written after the equals sign",
            "write what is asked, or begin the line with #",
        ),
        SyntaxFinding::DecimalComma(written) => said(
            format!("`{written}` has a comma in it"),
            format!("write {} with a point", written.replace(',', ".")),
        ),
        SyntaxFinding::Truth(written) => {
            said(format!("`{written}` is neither true nor false"), "write `true` or `false`")
        }
        SyntaxFinding::LeadingZero(written) => said(
            format!("the number {written} begins with a nought"),
            format!("write {}", written.trim_start_matches('0')),
        ),
        SyntaxFinding::Other(parser) => said(
            format!("this cannot be read: {parser}"),
            "see the format in README; `new` writes an example",
        ),
    }
}

fn key(finding: &KeyFinding) -> Said {
    match finding {
        KeyFinding::Missing(question) => missing(question.row().key),
        KeyFinding::MissingGroup(group) => missing(group.key()),
        KeyFinding::MissingSide(side) => missing(side),
        KeyFinding::Unknown { key, near, known, belongs } => {
            let hint = match (near, belongs) {
                (Some(near), _) => format!("did you mean `{near}`?"),
                (None, Some(group)) => format!("it belongs under {}", heading(*group)),
                (None, None) => format!("known here: {}", known.join(", ")),
            };
            said(format!("unknown key `{key}`"), hint)
        }
        KeyFinding::NotBeside { question, other, words } => said(
            format!("`{}` goes only with {other} = {}", question.row().key, alternatives(words)),
            "take it away",
        ),
        KeyFinding::Both(question, other) => said(
            format!("`{other}` and `{}` are both given", question.row().key),
            "keep one of the two",
        ),
        KeyFinding::Neither(question, other) => said(
            format!("neither `{}` nor `{other}` is given", question.row().key),
            format!("add `{} = {}`, or the other", question.row().key, question.row().example),
        ),
        KeyFinding::Without { given, missing } => said(
            format!("`{}` is given and `{}` is not", given.row().key, missing.row().key),
            format!("add `{} = {}`", missing.row().key, missing.row().example),
        ),
        KeyFinding::Blank(question, side) => {
            let side = side.map_or(String::new(), |side| format!(".{side}"));
            let left_out = match question.row().need {
                Need::Never => ", or begin the line with # where it is not known",
                _ => "",
            };
            said(
                format!("`{}{side}` is not filled in yet", question.path()),
                format!("write it, such as {}{left_out}", question.row().example),
            )
        }
        KeyFinding::NotAName(written) => {
            said(format!("`{written}` is not a name"), format!("take {}", Name::RULE))
        }
    }
}

fn missing(key: &str) -> Said {
    said(format!("the key `{key}` is missing"), format!("add `{key} = ...`"))
}

fn heading(group: case::question::Group) -> String {
    use case::question::Form;
    match group.form() {
        Form::File => "no heading, at the head of the file".to_owned(),
        Form::List => format!("[[{}]]", group.path()),
        Form::Braces | Form::BracesInList => format!("`{}`", group.path()),
        Form::Heading | Form::Named => format!("[{}]", group.path()),
    }
}

/// Words of a choice, as they are written.
fn alternatives(words: &[&str]) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
    words.join(", ")
}

fn value(finding: &ValueFinding) -> Said {
    match finding {
        ValueFinding::Type { found, wanted } => said(
            format!("this is {}, not {}", type_words(*found), type_words(*wanted)),
            how(*wanted),
        ),
        ValueFinding::NumberInWords { written, write } => said(
            format!("`{written}` is a text, not a number"),
            match write {
                Some(number) => format!("write {number}, without unit, comma or quotes"),
                None => how(Type::Number).to_owned(),
            },
        ),
        ValueFinding::NotFinite => said("this is not a finite number", "write a number"),
        ValueFinding::Length { question, number, unit, looks } => {
            length(*question, *number, *unit, *looks)
        }
        ValueFinding::Range { question, number } => range(*question, *number),
        ValueFinding::Whole { written, least, most } => said(
            format!("{written} cannot be right here"),
            format!("it lies between {least} and {most}"),
        ),
        ValueFinding::Date(written) => {
            said(format!("`{written}` is not a date"), "write year-month-day, as 2026-03-31")
        }
        ValueFinding::Empty => said("this is empty", "write it, or take the key away"),
        ValueFinding::Control => {
            said("this has a line break or a control character in it", "write it in one line")
        }
        ValueFinding::Unprintable(character) => said(
            format!("the papers cannot print `{character}`"),
            "write it in letters of European languages",
        ),
        ValueFinding::Word { wanted, written } => {
            said(format!("`{written}` cannot stand here"), format!("write \"{wanted}\""))
        }
    }
}

/// What is said of a value that is one of many words.
fn word(finding: &WordFinding) -> Said {
    match finding {
        WordFinding::Name(written, near) => said(
            format!("`{written}` is not a name"),
            match near {
                Some(near) => format!("write \"{near}\""),
                None => format!("take {}", Name::RULE),
            },
        ),
        WordFinding::Choice { question, written, near } => choice(*question, written, *near),
        WordFinding::Code(written) => said(
            format!("`{written}` is not a code for a client"),
            format!("never a name: take {}", ClientCode::RULE),
        ),
        WordFinding::NameInCode(written) => said(
            format!("`{written}` looks like a name or a day of birth"),
            "a code must not tell who the client is; if it does not, leave it",
        ),
        WordFinding::Phone(written) => said(
            format!("`{written}` is not a telephone number"),
            "write digits, spaces and + ( ) - only",
        ),
        WordFinding::Size(error, near) => {
            let hint = match (near, error) {
                (Some(near), _) => format!("write \"{near}\""),
                (None, SizeError::Range { .. }) => {
                    "write millimetres, or add `in` for inches".to_owned()
                }
                (None, _) => "width comes first".to_owned(),
            };
            said(error.to_string(), hint)
        }
    }
}

fn choice(question: Question, written: &str, near: Option<&str>) -> Said {
    let row = question.row();
    let message = if row.key == "units" {
        format!("`{written}` is not a unit for measures")
    } else {
        format!("no {} is called `{written}`", label(question))
    };
    let words = match row.kind {
        Kind::Choice(words) => alternatives(words),
        _ => String::new(),
    };
    let hint = match near {
        Some(near) => format!("write \"{near}\""),
        None => format!("write {words}"),
    };
    said(message, hint)
}

fn length(question: Question, number: f64, unit: LengthUnit, looks: Looks) -> Said {
    let words = unit_of_length(unit);
    let hint = match looks {
        Looks::Centimetres => "this looks like centimetres; write millimetres".to_owned(),
        Looks::Inches => {
            "this looks like inches; write millimetres, or `units = \"in\"`".to_owned()
        }
        Looks::Millimetres => {
            "this looks like millimetres; write inches, or `units = \"mm\"`".to_owned()
        }
        Looks::Wrong => match question.row().kind {
            Kind::Length(Range { least, most }) => {
                let (least, most) = (least / unit.in_mm(), most / unit.in_mm());
                format!("it lies between {least:.0} and {most:.0} {words}; measure again")
            }
            _ => String::new(),
        },
    };
    said(format!("{number} {words} cannot be the {}", label(question)), hint)
}

fn range(question: Question, number: f64) -> Said {
    let Kind::Number(unit, Range { least, most }) = question.row().kind else {
        return said(format!("{number} cannot be right here"), "");
    };
    let unit = match unit_words(unit) {
        "" => String::new(),
        words => format!(" {words}"),
    };
    let label = label(question);
    let article = if label.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    said(
        format!("{article} {label} of {number}{unit} cannot be right"),
        format!("it lies between {least} and {most}{unit}"),
    )
}

/// How a unit is written after a number.
pub(crate) fn unit_words(unit: Unit) -> &'static str {
    match unit {
        Unit::Millimetre => "mm",
        Unit::Metre => "m",
        Unit::Kilogram => "kg",
        Unit::Pound => "lb",
        Unit::Gram => "g",
        Unit::Millilitre => "ml",
        Unit::Degree => "degrees",
        Unit::Percent => "%",
        Unit::Hour => "hours",
        Unit::Share => "",
    }
}

fn unit_of_length(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetres => "mm",
        LengthUnit::Inches => "in",
    }
}

fn type_words(found: Type) -> &'static str {
    match found {
        Type::Text => "a text",
        Type::Number => "a number",
        Type::Whole => "a whole number",
        Type::Truth => "true or false",
        Type::Date => "a date",
        Type::List => "a list",
        Type::Table => "a table",
    }
}

fn how(wanted: Type) -> &'static str {
    match wanted {
        Type::Text => "write it in quotes, as in \"...\"",
        Type::Number => "write a number without quotes, such as 40 or 12.5",
        Type::Whole => "write a whole number without quotes",
        Type::Truth => "write `true` or `false`, without quotes",
        Type::Date => "write it as 2026-03-31",
        Type::List => "write it in square brackets, as in [1, 2]",
        Type::Table => "write it in braces, as in { key = value }, or under a [heading]",
    }
}

fn client(finding: &ClientFinding) -> Said {
    match finding {
        ClientFinding::NotSigned => said(
            "it is not said when and by whom the measures were taken",
            "add `taken_on` and `taken_by`",
        ),
        ClientFinding::HipsWiderThanThighs => said(
            "the hips are wider than the thighs are deep",
            "check that hip width and thigh depth are not swapped",
        ),
        ClientFinding::TrochantersWiderThanHips => said(
            "the trochanters are farther apart than the hips are wide",
            "hip width is the greatest width; measure again",
        ),
        ClientFinding::ThighsDiffer => said(
            "the thigh depths differ by more than 60 mm",
            "check that the pelvis was not rotated, and measure again",
        ),
        ClientFinding::LongThigh => said(
            "hardly anybody's thigh is so deep from the back of the buttock to the back of the knee",
            "measure to the back of the knee: to its front it is some 90 to 130 mm more",
        ),
        ClientFinding::LongLeg => said(
            "hardly anybody's lower leg is so long",
            "measure from the back of the knee to under the heel, not from the top of the knee",
        ),
        ClientFinding::HipsForWeight { narrow, weight } => said(
            format!(
                "the hips are unusually {} for {:.0} kg",
                if *narrow { "narrow" } else { "wide" },
                weight.to_kg()
            ),
            "check both: hips at their widest as clothed, weight of the day",
        ),
        ClientFinding::ParametersWithoutPlugin => said(
            "only a plugin's layout has parameters",
            "take `parameters` away, or name `plugin:NAME`",
        ),
        ClientFinding::Future { date, today } => said(
            format!("{date} is still to come: today is {today}"),
            "is the year right? a day is written year-month-day",
        ),
    }
}

/// What is said of goals, and of what they are about.
fn wish(finding: &WishFinding) -> Said {
    match finding {
        WishFinding::MoreThanThereIs => said(
            "more can be taken away than there is",
            "`reducible` is a part of `by`, measured at the same place",
        ),
        WishFinding::BothOfObliquity => said(
            "an obliquity is either corrected or accommodated",
            "keep one goal; what is partly flexible is corrected as far as it goes",
        ),
        WishFinding::NoObliquity => said(
            "a goal is about an obliquity, and none is written down",
            "add `obliquity = { lower = ..., by = ..., at = ..., is = ... }` under [posture]",
        ),
        WishFinding::GoalTwice(want) => {
            said(format!("the goal \"{}\" is written twice", want.id()), "keep one of the two")
        }
        WishFinding::NoWeightForGoals => said(
            "nothing can be planned for the goals without the client's weight",
            "weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`",
        ),
        WishFinding::SmallObliquity { number, unit } => said(
            format!(
                "an obliquity of {number} {} is less than hands can measure",
                unit_of_length(*unit)
            ),
            match unit {
                LengthUnit::Millimetres => format!(
                    "is it {number} cm? write {}, or leave it away",
                    (number * 1e4).round() / 1e3
                ),
                LengthUnit::Inches => "measure again, or leave it away".to_owned(),
            },
        ),
        WishFinding::OtherSide { injured, relieved } => said(
            format!(
                "load is to be taken off the {}, and the injury is at the {}",
                relieved.id(),
                injured.id()
            ),
            "are the sides right? left and right are the client's",
        ),
    }
}

fn record(finding: &RecordFinding) -> Said {
    match finding {
        RecordFinding::NoSuchEntry(written) => {
            let words: Vec<&str> =
                case::question::Group::ALL.iter().filter_map(|group| group.entry()).collect();
            said(
                format!("no entry of the record is called `{written}`"),
                format!("write {}", alternatives(&words)),
            )
        }
        RecordFinding::Order => said(
            "the record is not in the order of its dates",
            "the last entry counts as the newest; put it in order",
        ),
        RecordFinding::NotSaidToPass => said(
            "the fitting check does not say whether it passed, so papers say NOT FITTED YET",
            "write `passed = true` where the client may use the cushion, else `passed = false`",
        ),
        RecordFinding::Check(wrong) => {
            said(wrong.clone(), "write it as `adjust` records it, such as \"top left=tight\"")
        }
        RecordFinding::Sum { sum, total } => said(
            format!("the counts add up to {sum}, and the total says {total}"),
            "one of them was changed by hand; record the plan again",
        ),
        RecordFinding::CountedTwice(number) => {
            said(format!("the compartment {number} is counted twice"), "record the plan again")
        }
        RecordFinding::NoCounts => said("there are no counts", "record the plan again"),
        RecordFinding::Digest => said("this is not a digest", "record the plan again"),
    }
}

fn design(finding: &DesignFinding) -> Said {
    const MEASURE: &str =
        "write millimetres (40), a share (\"25%\") or both (\"52% + 5\", \"52% - 5\")";
    match finding {
        DesignFinding::Measure(written) => said(format!("`{written}` is not a measure"), MEASURE),
        DesignFinding::LargeMeasure => said("this measure is larger than any cushion", MEASURE),
        DesignFinding::Point => {
            said("a point has two measures", "write [x, y] or [x, y, \"round R\"]")
        }
        DesignFinding::Rounding(written) => said(
            format!("`{written}` is not a rounding"),
            "write \"round 40\" for a radius of 40 mm",
        ),
        DesignFinding::Seed => said("a seed has two measures", "write [x, y]"),
        DesignFinding::CurveWithBow => {
            said("a seam is a curve or has a bow, not both", "take one of the two away")
        }
        DesignFinding::NoSizes => {
            said("no size is listed", "add `{ size = \"440x400\", max_user_weight_kg = 90 }`")
        }
        DesignFinding::SizeTwice(size) => {
            said(format!("the size {size} is listed twice"), "keep one of the two")
        }
        DesignFinding::Fault(kind, size) => {
            let size = size.map_or(String::new(), |size| format!(" (at {size})"));
            said(format!("{kind}{size}"), kind.advice())
        }
        DesignFinding::Film { weight, edge } => said(
            format!(
                "a film mass of {} g is unusual for a cell of {} mm",
                weight.to_g(),
                edge.to_mm()
            ),
            "weigh a batch that was counted by hand, and divide by its count",
        ),
    }
}
