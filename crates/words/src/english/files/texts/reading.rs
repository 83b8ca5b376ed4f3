//! English: what keeps a text from being read.

use case::question::{Form, Group, Need};
use case::text::{FileFinding, KeyFinding, SyntaxFinding};
use case::{FileKind, Said};
use cushion::Name;

use super::{alternatives, said};

pub(super) fn file(finding: &FileFinding) -> Said {
    match finding {
        FileFinding::TooLarge => {
            said("this file is larger than 1 MB", "it cannot be one of ours; name another")
        }
        FileFinding::NoKind => said(
            "this file does not say which kind of ours it is",
            "begin it with `format = 1` and `kind = \"layout\"`, `\"cell\"` or `\"client\"`",
        ),
        FileFinding::OtherKind { written, wanted } => {
            let hint = match FileKind::ALL.into_iter().find(|kind| kind.id() == written) {
                Some(FileKind::Client) => {
                    "a client's file names its layout and its cell; name one of those here"
                }
                Some(_) if *wanted == FileKind::Client => {
                    "name the client's file here; it names the layout and the cell"
                }
                _ => "name a file of the right kind",
            };
            said(format!("this is a file of kind `{written}`, not `{}`", wanted.id()), hint)
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

pub(super) fn syntax(finding: &SyntaxFinding) -> Said {
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
        SyntaxFinding::Other(parser) => {
            said(format!("this cannot be read: {parser}"), "see the format in README")
        }
    }
}

pub(super) fn key(finding: &KeyFinding) -> Said {
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
        KeyFinding::NotALanguage(written) => said(
            format!("`{written}` is not the tag of a language"),
            "write it as in { en = \"...\", es = \"...\" }",
        ),
        KeyFinding::NoEnglish(question) => said(
            format!("`{}` is not there in English", question.row().key),
            "add `en = \"...\"`: it stands where a language is not there",
        ),
        KeyFinding::NotAName(written) => {
            said(format!("`{written}` is not a name"), format!("take {}", Name::RULE))
        }
    }
}

fn missing(key: &str) -> Said {
    said(format!("the key `{key}` is missing"), format!("add `{key} = ...`"))
}

fn heading(group: Group) -> String {
    match group.form() {
        Form::File => "no heading, at the head of the file".to_owned(),
        Form::List => format!("[[{}]]", group.path()),
        Form::Braces | Form::BracesInList => format!("`{}`", group.path()),
        Form::Heading | Form::Named => format!("[{}]", group.path()),
    }
}
