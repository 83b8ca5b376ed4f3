//! Spanish: what keeps a text from being read.

use case::question::{Form, Group, Need};
use case::text::{FileFinding, KeyFinding, SyntaxFinding};
use case::{FileKind, Said};

use super::super::NAME_RULE;
use super::{alternatives, said};

pub(super) fn file(finding: &FileFinding) -> Said {
    match finding {
        FileFinding::TooLarge => {
            said("este archivo pasa de 1 MB", "no puede ser uno de los nuestros; nombre otro")
        }
        FileFinding::NoKind => said(
            "este archivo no dice qué tipo de los nuestros es",
            "empiécelo con `format = 1` y `kind = \"layout\"`, `\"cell\"` o `\"client\"`",
        ),
        FileFinding::OtherKind { written, wanted } => {
            let hint = match FileKind::ALL.into_iter().find(|kind| kind.id() == written) {
                Some(FileKind::Client) => {
                    "el archivo de una persona nombra su diseño y su celda; nombre aquí uno de esos"
                }
                Some(_) if *wanted == FileKind::Client => {
                    "nombre aquí el archivo de la persona; él nombra el diseño y la celda"
                }
                _ => "nombre un archivo del tipo correcto",
            };
            said(format!("este es un archivo de tipo `{written}`, no `{}`", wanted.id()), hint)
        }
        FileFinding::Format(format) => {
            said(format!("no se conoce el formato {format}"), "este programa lee `format = 1`")
        }
        FileFinding::More(1) => said("hay 1 observación más", "corrija antes estas"),
        FileFinding::More(count) => {
            said(format!("hay {count} observaciones más"), "corrija antes estas")
        }
    }
}

pub(super) fn syntax(finding: &SyntaxFinding) -> Said {
    match finding {
        SyntaxFinding::Twice => said("esta clave está escrita dos veces", "deje una de las dos"),
        SyntaxFinding::HeadingTwice => said(
            "este encabezado está escrito dos veces",
            "ponga las líneas de ambos bajo uno de ellos",
        ),
        SyntaxFinding::TypographicQuotes(written) => said(
            "estas son las comillas de un procesador de textos",
            format!("escriba \"{written}\" con comillas rectas, en un editor de texto sencillo"),
        ),
        SyntaxFinding::NoQuotes(written) => {
            said(format!("`{written}` no lleva comillas"), format!("escriba \"{written}\""))
        }
        SyntaxFinding::NoValue => said(
            "no hay nada escrito tras el signo igual",
            "escriba lo que se pide, o empiece la línea con #",
        ),
        SyntaxFinding::DecimalComma(written) => said(
            format!("`{written}` lleva una coma"),
            format!("escriba {} con un punto", written.replace(',', ".")),
        ),
        SyntaxFinding::Truth(written) => {
            said(format!("`{written}` no es ni true ni false"), "escriba `true` o `false`")
        }
        SyntaxFinding::LeadingZero(written) => said(
            format!("el número {written} empieza con un cero"),
            format!("escriba {}", written.trim_start_matches('0')),
        ),
        SyntaxFinding::Other(parser) => {
            said(format!("esto no se puede leer: {parser}"), "vea el formato en README")
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
                (Some(near), _) => format!("¿quería decir `{near}`?"),
                (None, Some(group)) => format!("va bajo {}", heading(*group)),
                (None, None) => format!("aquí se conocen: {}", known.join(", ")),
            };
            said(format!("clave desconocida `{key}`"), hint)
        }
        KeyFinding::NotBeside { question, other, words } => said(
            format!("`{}` solo va con {other} = {}", question.row().key, alternatives(words)),
            "quítela",
        ),
        KeyFinding::Both(question, other) => {
            said(format!("están dadas `{other}` y `{}`", question.row().key), "deje una de las dos")
        }
        KeyFinding::Neither(question, other) => said(
            format!("no están dadas ni `{}` ni `{other}`", question.row().key),
            format!("añada `{} = {}`, o la otra", question.row().key, question.row().example),
        ),
        KeyFinding::Without { given, missing } => said(
            format!("está dada `{}` y no `{}`", given.row().key, missing.row().key),
            format!("añada `{} = {}`", missing.row().key, missing.row().example),
        ),
        KeyFinding::Blank(question, side) => {
            let side = side.map_or(String::new(), |side| format!(".{side}"));
            let left_out = match question.row().need {
                Need::Never => ", o empiece la línea con # si no se sabe",
                _ => "",
            };
            said(
                format!("`{}{side}` está sin rellenar", question.path()),
                format!("escríbalo, como {}{left_out}", question.row().example),
            )
        }
        KeyFinding::NotALanguage(written) => said(
            format!("`{written}` no es la etiqueta de una lengua"),
            "escríbalo como en { en = \"...\", es = \"...\" }",
        ),
        KeyFinding::NoEnglish(question) => said(
            format!("`{}` no está en inglés", question.row().key),
            "añada `en = \"...\"`: vale donde no está una lengua",
        ),
        KeyFinding::NotAName(written) => {
            said(format!("`{written}` no es un nombre"), format!("tome {NAME_RULE}"))
        }
    }
}

fn missing(key: &str) -> Said {
    said(format!("falta la clave `{key}`"), format!("añada `{key} = ...`"))
}

fn heading(group: Group) -> String {
    match group.form() {
        Form::File => "ningún encabezado, al principio del archivo".to_owned(),
        Form::List => format!("[[{}]]", group.path()),
        Form::Braces | Form::BracesInList => format!("`{}`", group.path()),
        Form::Heading | Form::Named => format!("[{}]", group.path()),
    }
}
