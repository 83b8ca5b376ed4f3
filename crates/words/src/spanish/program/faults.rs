//! Spanish: why a command ends without what it was asked for, and what to do.

use case::Said;

use super::super::files::{NAME_RULE, reason};
use super::super::parts::counted;
use crate::said::said;
use crate::{Advice, CallFault, FileFault, OutputFault, PageFault, ProgramFault, SupplierFault};

/// Why, where nothing else is to be done than what it says.
fn only(message: impl Into<String>) -> Said {
    Said { message: message.into(), hint: None }
}

pub(super) fn of_a_call(fault: &CallFault<'_>) -> Said {
    match fault {
        CallFault::NoCompartment { named, known } => {
            said(format!("este cojín no tiene el compartimento {named}"), format!("tiene {known}"))
        }
        CallFault::SettingForNothing { given } => said(
            format!("--set {given}=... no da nada aquí"),
            "solo los diseños de complementos admiten valores; quítelo",
        ),
        CallFault::NoEpoch { epoch } => said(
            format!("SOURCE_DATE_EPOCH es `{epoch}`, que no es un número de segundos desde 1970"),
            "quítelo, o dé el día con --date",
        ),
        CallFault::NoEntry { number, there } => said(
            format!("no hay entrada {number} en el registro"),
            format!("las entradas se cuentan desde 1, la más antigua primero; hay {there}"),
        ),
        CallFault::Nobody => {
            said("no se dice quién lo hizo", "añada --by WHO, con iniciales o función")
        }
        CallFault::BagTwice => only("la bolsa de repuesto se cuenta dos veces"),
        CallFault::PlannedAndCounted => {
            only("o es según el plan, o se dan las cantidades, no las dos cosas")
        }
        CallFault::NoCounts => {
            said("ningún compartimento tiene cantidad", "dígalas así: 1=44 2=47, o --as-planned")
        }
        CallFault::AgainstOneLayout => only("--against va con un solo archivo de diseño"),
        CallFault::AgainstALayout => only("--against va con un archivo de diseño"),
        CallFault::NothingToWeigh => said(
            "no se nombra nada que pesar",
            "nombre el archivo de una persona, o --stock LAYOUT con --size",
        ),
        CallFault::NoSizeSuits => {
            said("no sirve ningún tamaño de los que se fabrican", "qué hacer está dicho arriba")
        }
        CallFault::NothingToDraw { outcome } => {
            only(format!("no se puede dibujar nada: {outcome}"))
        }
    }
}

pub(super) fn of_an_output(fault: &OutputFault<'_>) -> Said {
    match fault {
        OutputFault::CalledOtherwise { output, endings, example } => said(
            format!(
                "`{output}` se ha de escribir como {}, y se llama de otro modo",
                endings.join(" o ")
            ),
            format!("nombre un archivo que acabe en .{}, como `{example}`", endings[0]),
        ),
        OutputFault::OverAnInput { output, input } => said(
            format!("`{output}` se escribiría encima de `{input}`, que se lee aquí"),
            "nombre otro archivo donde escribir",
        ),
        OutputFault::Twice { output } => {
            said(format!("`{output}` se escribiría dos veces"), "nombre un archivo para cada uno")
        }
        OutputFault::TheAnswer { why } => {
            only(format!("no se puede escribir la respuesta: {}", reason(why)))
        }
        OutputFault::FolderThere { folder } => said(
            format!("{folder} ya existe, y no se escribe encima de nada"),
            "nombre una carpeta nueva",
        ),
        OutputFault::StaysBeside { first, more } => {
            let more = match more {
                0 => String::new(),
                more => format!(" y {}", counted(*more, ["papel más", "papeles más"])),
            };
            said(
                format!(
                    "junto a los papeles nuevos quedaría `{first}`{more}, de una edición anterior de este pedido"
                ),
                "retire los papeles anteriores, o nombre otra carpeta",
            )
        }
    }
}

pub(super) fn of_a_supplier(fault: &SupplierFault<'_>) -> Said {
    match fault {
        SupplierFault::NoFileToWatch { named } => said(
            format!("{named} no es un archivo que se pueda vigilar"),
            "nombre un archivo de diseño, o quite --watch",
        ),
        SupplierFault::NotWatched { file, why } => {
            said(format!("{file} no se puede vigilar: {why}"), "quite --watch")
        }
        SupplierFault::NoRangeOfPlugin => said(
            "el diseño de un complemento se dibuja para cada tamaño que se pide: no tiene gama de tamaños",
            "escriba su respuesta en un archivo de diseño que enumere tamaños, y pida ese",
        ),
        SupplierFault::NoReviewOfPlugin => said(
            "el diseño de un complemento no tiene tamaños propios que revisar",
            "escriba su respuesta con `seatwright plugin draw`, y revise esa",
        ),
        SupplierFault::PluginNeedsSizes => said(
            "un complemento dibuja para los tamaños que se piden",
            "nombre cada uno con --size, como --size 400x400 --size 440x400",
        ),
        SupplierFault::PluginNeedsSize => plugin_needs_size(),
        SupplierFault::NoSizeOfLayout { layout } => no_size_of(layout),
        SupplierFault::ListsItsSizes { layout } => {
            said(format!("`{layout}` enumera sus propios tamaños"), "quite --size")
        }
        SupplierFault::SizeTwice { size } => only(format!("el tamaño {size} se nombra dos veces")),
        SupplierFault::NoBodyInPart { count } => said(
            format!("no hay ningún cuerpo en esta parte; hay {count} en total"),
            "tome una muestra mayor, o menos partes",
        ),
        SupplierFault::NamesNoOrder { file, longest } => said(
            format!("`{file}` no puede dar nombre a un pedido en sus papeles"),
            format!(
                "llame al archivo con {longest} letras, cifras y - _ . como mucho, antes de .csv"
            ),
        ),
        SupplierFault::OverloadTooLow => only("la sobrecarga no supera la primera carga"),
        SupplierFault::NoPluginName { named } => {
            said(format!("`{named}` no es el nombre de un complemento"), format!("use {NAME_RULE}"))
        }
        SupplierFault::RefusedEverywhere { plugin } => said(
            format!(
                "complemento `{plugin}`: rechaza todos los tamaños, así que no se comprobó nada"
            ),
            "dele otros valores con --set NAME=NUMBER",
        ),
        SupplierFault::WrongAt { plugin, wrong, sizes } => said(
            format!(
                "complemento `{plugin}`: mal en {wrong} de {}",
                counted(*sizes, ["tamaño", "tamaños"])
            ),
            "avise al autor del complemento",
        ),
    }
}

pub(super) fn of_files(fault: &FileFault<'_>) -> Said {
    match fault {
        FileFault::CannotBeUsed { file, remarks } => {
            only(format!("{file} no se puede usar: {remarks}"))
        }
        FileFault::SomeCannotBeUsed { wrong, files } => only(format!(
            "no se pueden usar {wrong} de {}",
            counted(*files, ["archivo", "archivos"])
        )),
        FileFault::Unread { files } => said(
            format!("no se pueden leer, así que nadie sabe qué contienen: {files}"),
            "`seatwright check` dice qué está mal en cada uno",
        ),
    }
}

pub(super) fn of_the_program(fault: &ProgramFault<'_>) -> Said {
    match fault {
        ProgramFault::Ours { place } => said(
            format!("esto es un fallo del programa: {place}"),
            "comuníquelo, con este mensaje, la orden y los archivos",
        ),
        ProgramFault::Gone { why } => {
            only(format!("este programa no se encuentra a sí mismo: {why}"))
        }
    }
}

pub(super) fn of_the_page(fault: &PageFault<'_>) -> Said {
    match fault {
        PageFault::NoReport => said("una página no da informes", "quite --json"),
        PageFault::NoFolder { named } => said(
            format!("{named} no es una carpeta"),
            "nombre la carpeta con los archivos de las personas; si es nueva, cree antes la carpeta",
        ),
        PageFault::NoThreads { why } => {
            only(format!("el sistema no da hilos para la página: {why}"))
        }
        PageFault::Port { why } => said(
            format!("no se puede servir el puerto: {why}"),
            "quite --port, y se toma uno libre",
        ),
        PageFault::NoLot => {
            only("el sistema no da palabras al azar, así que no se podría cerrar el paso a nadie")
        }
        PageFault::Ended { why } => only(format!("la página terminó: {why}")),
    }
}

pub(super) fn advice(advice: &Advice<'_>) -> String {
    match advice {
        Advice::RecordAPlan { file } => format!(
            "vea las cantidades con `seatwright plan {file}`, y regístrelas con --record --by WHO"
        ),
        Advice::GiveTheRest => "no se escribió nada; dé también lo que falta".to_owned(),
        Advice::NothingWritten => "no se escribió nada".to_owned(),
        Advice::CheckSaysWhere => "`seatwright check` dice dónde".to_owned(),
        Advice::TakeSettingAway { given } => format!("quite --set {given}=..."),
        Advice::GiveSetting { parameter } => format!("--set {parameter}=... lo da"),
        Advice::NamePlugin => "o nombre su archivo con --plugin PATH".to_owned(),
        Advice::NamePluginOfCode => {
            "--plugin PATH nombra un complemento, --set NAME=NUMBER le da lo que se le dio entonces"
                .to_owned()
        }
        Advice::NameLayoutOfCode => "--layout FILE lo toma de un archivo".to_owned(),
        Advice::NameCellOfCode => "--cell FILE la toma de un archivo".to_owned(),
    }
}

fn no_size_of(layout: &str) -> Said {
    said(
        format!("ningún tamaño en que se fabrica `{layout}` sirve a la persona"),
        "`seatwright size` dice por qué; --size compara igualmente en un tamaño",
    )
}

fn plugin_needs_size() -> Said {
    said(
        "un complemento dibuja para el tamaño que se pide",
        "nómbrelo con --size, como --size 440x400",
    )
}
