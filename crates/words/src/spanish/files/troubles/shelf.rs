//! Spanish: why files are not read or written.

use case::{Doing, NoFile, Said, ShelfError, Why};

use super::said;

/// Why a file was not read, or files were not written, and what to do.
pub(super) fn about(error: &ShelfError) -> Said {
    if error.doing == Doing::Read { unread(error) } else { unwritten(error) }
}

/// Why a file was not read.
fn unread(error: &ShelfError) -> Said {
    let shown = format!("`{}`", error.name);
    match &error.why {
        Why::NotFound | Why::LinkToNothing => said(format!("no existe el archivo {shown}"), ""),
        Why::NotAllowed => said(format!("este usuario no puede leer {shown}"), ""),
        Why::NotAFile(NoFile::Folder) => said(format!("{shown} es una carpeta, no un archivo"), ""),
        Why::NotAFile(_) => {
            said(format!("{shown} no es un archivo corriente, así que no se leyó"), "")
        }
        Why::TooLarge { .. } => said(
            format!("{shown} pasa de 1 MB, así que no se leyó"),
            "los archivos de diseño, celda y persona tienen unos miles de bytes; ¿es este el archivo?",
        ),
        why => said(format!("no se puede leer {shown}: {}", reason(why)), ""),
    }
}

/// Why files were not written.
fn unwritten(error: &ShelfError) -> Said {
    let shown = format!("`{}`", error.name);
    let failed = match &error.why {
        Why::Changed | Why::Gone => said(
            format!("otra persona cambió {shown} entretanto; no se escribió nada"),
            "mire qué se cambió, y hágalo otra vez",
        ),
        Why::ThereAlready => said(
            format!("{shown} ya existe y se dejó como está"),
            "elija otro nombre, o mueva antes ese archivo",
        ),
        Why::ReadOnlyFile => said(
            format!("no se puede escribir {shown}: el archivo es de solo lectura"),
            "quien lo puso así quiere conservarlo; permita escribirlo, o tome una copia",
        ),
        Why::OtherOwner => said(
            format!("no se puede escribir {shown}: el archivo es de otra persona"),
            "que lo haga su dueño: escrito por usted pasaría a ser suyo",
        ),
        Why::HardLinked { names } => said(
            format!(
                "no se puede escribir {shown}: el archivo tiene {names} nombres, y los otros guardarían el texto viejo"
            ),
            "quite los otros nombres, o tome una copia",
        ),
        why => said(format!("no se puede escribir {shown}: {}", reason(why)), ""),
    };
    if error.not_undone.is_empty() {
        return failed;
    }
    let changed = error.not_undone.join("`, `");
    Said { message: format!("{}; cambiados aun así: `{changed}`", failed.message), ..failed }
}

/// Says in plain words why a shelf refuses.
pub(in crate::spanish) fn reason(why: &Why) -> String {
    match why {
        Why::NotFound => "no existe esa carpeta".to_owned(),
        Why::NotAllowed => "este usuario no puede escribir ahí".to_owned(),
        Why::NotOfThisShelf => "está fuera de la carpeta de las personas".to_owned(),
        Why::TooLarge { .. } | Why::TooLargeHere => {
            "el archivo pasa del tamaño permitido aquí".to_owned()
        }
        Why::NotAFile(NoFile::Folder) => "una carpeta tiene ese nombre".to_owned(),
        Why::NotAFile(_) => "ese nombre no es de un archivo corriente".to_owned(),
        Why::NotAFolder => "una parte de la ruta no es una carpeta".to_owned(),
        Why::LinkToNothing => "es un enlace a un archivo que no existe".to_owned(),
        Why::Changed | Why::Gone => "se cambió entretanto".to_owned(),
        Why::ThereAlready => "un archivo ya tiene ese nombre".to_owned(),
        Why::Twice => "dos salidas tendrían este nombre".to_owned(),
        Why::ReadOnlyFile => "el archivo es de solo lectura".to_owned(),
        Why::OtherOwner => "el archivo es de otra persona".to_owned(),
        Why::HardLinked { .. } => "el archivo tiene otros nombres".to_owned(),
        Why::ReadOnlyDisk => "el disco es de solo lectura".to_owned(),
        Why::DiskFull => "el disco está lleno".to_owned(),
        Why::Locked => "otro programa tiene bloqueada la carpeta".to_owned(),
        Why::System(words) => words.clone(),
    }
}
