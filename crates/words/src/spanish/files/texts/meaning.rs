//! Spanish: what is found about values together.

use case::question::Group;
use case::text::{
    ClientFinding, DesignFinding, LengthUnit, RecordFinding, StockChange, WishFinding,
};
use case::{FillingSoFar, Said, StaleFilling};

use super::{alternatives, checks, layouts, said, unit_of_length};
use crate::Spanish;
use crate::spanish::parts;
use crate::spanish::record::list_of_parts;
use crate::{BasicWords as _, GoalWords as _};

pub(super) fn client(finding: &ClientFinding) -> Said {
    match finding {
        ClientFinding::NotSigned => {
            said("no se dice cuándo y quién tomó las medidas", "añada `taken_on` y `taken_by`")
        }
        ClientFinding::HipsWiderThanThighs => said(
            "la cadera es más ancha que largos los muslos",
            "mire que anchura de cadera y longitud de muslo no estén cambiadas",
        ),
        ClientFinding::TrochantersWiderThanHips => said(
            "los trocánteres están más separados que ancha es la cadera",
            "la anchura de cadera es la mayor anchura; mida otra vez",
        ),
        ClientFinding::ThighsDiffer => said(
            "las longitudes de muslo difieren en más de 60 mm (2,4 in)",
            "mire que la pelvis no estuviera rotada, y mida otra vez",
        ),
        ClientFinding::LongThigh => said(
            "casi nadie tiene el muslo tan largo desde detrás de la nalga hasta detrás de la rodilla",
            "mida hasta detrás de la rodilla: hasta su frente son unos 90 a 130 mm (3,5 a 5,1 in) más",
        ),
        ClientFinding::LongLeg => said(
            "casi nadie tiene la pierna tan larga",
            "mida desde detrás de la rodilla hasta bajo el talón, no desde lo alto de la rodilla",
        ),
        ClientFinding::HipsForWeight { narrow, weight } => said(
            format!(
                "la cadera es más {} de lo normal para {:.0} kg",
                if *narrow { "estrecha" } else { "ancha" },
                weight.to_kg()
            ),
            "revise ambas cosas: la cadera en lo más ancho y con ropa, el peso del día",
        ),
        ClientFinding::ParametersWithoutPlugin => said(
            "solo el diseño de un complemento tiene parámetros",
            "quite `parameters`, o nombre `plugin:NAME`",
        ),
        ClientFinding::Future { date, today } => said(
            format!("el {date} aún no ha llegado: hoy es {today}"),
            "¿es correcto el año? un día se escribe año-mes-día",
        ),
    }
}

/// What is said of goals, and of what they are about.
pub(super) fn wish(finding: &WishFinding) -> Said {
    match finding {
        WishFinding::MoreThanThereIs => said(
            "se puede quitar más de lo que hay",
            "`reducible` es una parte de `by`, medida en el mismo punto",
        ),
        WishFinding::BothOfObliquity => said(
            "una oblicuidad se corrige o se acomoda",
            "deje un objetivo; lo que es flexible en parte se corrige hasta donde llega",
        ),
        WishFinding::NoObliquity => said(
            "un objetivo trata de una oblicuidad, y no consta ninguna",
            "añada `obliquity = { lower = ..., by = ..., at = ..., is = ... }` bajo [posture]",
        ),
        WishFinding::GoalTwice(want) => said(
            format!("el objetivo \"{}\" está escrito dos veces", Spanish::new().goal(want)),
            "deje uno de los dos",
        ),
        WishFinding::NoWeightForGoals => said(
            "sin el peso de la persona no se puede planificar nada para los objetivos",
            "pese a la persona y añada [weight] con `kg = ...` y `weighed_on = ...`",
        ),
        WishFinding::SmallObliquity { number, unit } => said(
            format!(
                "una oblicuidad de {} {} es menos de lo que mide una mano",
                parts::number(*number),
                unit_of_length(*unit)
            ),
            match unit {
                LengthUnit::Millimetres => format!(
                    "¿son {} cm? escriba {}, o quítela",
                    parts::number(*number),
                    (number * 1e4).round() / 1e3
                ),
                LengthUnit::Inches => "mida otra vez, o quítela".to_owned(),
            },
        ),
        WishFinding::OtherSide { injured, relieved } => said(
            format!(
                "se quiere descargar el {}, y la lesión está en el {}",
                Spanish::new().site(*relieved),
                Spanish::new().site(*injured)
            ),
            "¿son correctos los lados? izquierda y derecha son las de la persona",
        ),
        WishFinding::FrontOfLostLeg(side) => said(
            format!(
                "se quiere el frente más bajo a la {0}, y falta la pierna {0}",
                parts::hand(*side)
            ),
            "el frente se baja para la pierna que está: ¿se quiere decir el otro lado?",
        ),
    }
}

pub(super) fn record(finding: &RecordFinding) -> Said {
    match finding {
        RecordFinding::NoSuchEntry(written) => {
            let words: Vec<&str> = Group::ALL.iter().filter_map(|group| group.entry()).collect();
            said(
                format!("ninguna entrada del registro se llama `{written}`"),
                format!("escriba {}", alternatives(&words)),
            )
        }
        RecordFinding::Order => said(
            "el registro no está en el orden de sus fechas",
            "la última entrada cuenta como la más nueva; póngalo en orden",
        ),
        RecordFinding::NotSaidToPass => said(
            "la comprobación del ajuste no dice si se pasó, por lo que los papeles dicen SIN AJUSTAR TODAVÍA",
            "escriba `passed = true` donde la persona puede usar el cojín, y si no `passed = false`",
        ),
        RecordFinding::NotPassed { alarm: true, .. } => said(
            "una comprobación con un hueso que se nota, o una marca en la piel, no está superada",
            "cuenta como no superada; escriba `passed = false`",
        ),
        RecordFinding::NotPassed { missing, .. } => said(
            format!("la comprobación no está completa: sin mirar: {}", list_of_parts(missing)),
            "cuenta como incompleta; añada lo que se miró, o quite `passed`",
        ),
        RecordFinding::NotEarlier { entry, here } => said(
            format!("la entrada {here} del registro habla de la entrada {entry}, que no va antes"),
            "las entradas se cuentan desde 1, la más antigua primero",
        ),
        RecordFinding::Check(wrong) => checks::no_check(wrong),
        RecordFinding::Sum { sum, total } => said(
            format!("las cantidades suman {sum}, y el total dice {total}"),
            "una de ellas se cambió a mano; registre otra vez el plan",
        ),
        RecordFinding::CountedTwice(number) => said(
            format!("el compartimento {number} está contado dos veces"),
            "deje una de sus cuentas",
        ),
        RecordFinding::NoCounts => {
            said("no hay cantidades", "escriba la cantidad de cada compartimento")
        }
        RecordFinding::CountsDiffer { number, first, second } => said(
            format!("las dos cuentas del compartimento {number} son {first} y {second}"),
            "cuente otra vez ese compartimento hasta que ambas sean iguales",
        ),
        RecordFinding::AfterNoEntry { after, there } => said(
            format!("el llenado dice haber empezado después de la entrada {after}, y hay {there}"),
            "escriba cuántas entradas tenía el registro cuando empezó",
        ),
        RecordFinding::Filling(own) => filling(own),
        RecordFinding::Digest => said("esto no es un resumen digital", "registre otra vez el plan"),
    }
}

/// A fill that was begun and is not recorded.
fn filling(own: &FillingSoFar) -> Said {
    let FillingSoFar { on, counted, of, stale, .. } = own;
    let begun =
        format!("un llenado empezado el {on} no está registrado: {counted} de {of} compartimentos");
    match stale {
        None => said(
            begun,
            "siga con él, o registre lo que hay en el cojín; antes nadie se sienta en él",
        ),
        Some(StaleFilling::OtherCounts) => said(
            format!("{begun}; no se usa, porque ahora hay otras cantidades planificadas"),
            "vacíe lo que se llenó y empiece de nuevo, o quite [filling]",
        ),
        Some(StaleFilling::Since) => said(
            format!("{begun}; no se usa, porque desde entonces se hizo más con el cojín"),
            "quite [filling], o empiece de nuevo",
        ),
    }
}

pub(super) fn design(finding: &DesignFinding) -> Said {
    const MEASURE: &str =
        "escriba milímetros (40), una parte (\"25%\") o ambas (\"52% + 5\", \"52% - 5\")";
    match finding {
        DesignFinding::Measure(written) => said(format!("`{written}` no es una medida"), MEASURE),
        DesignFinding::LargeMeasure => said("esta medida es mayor que cualquier cojín", MEASURE),
        DesignFinding::Point => {
            said("un punto tiene dos medidas", "escriba [x, y] o [x, y, \"round R\"]")
        }
        DesignFinding::Rounding(written) => said(
            format!("`{written}` no es un redondeo"),
            "escriba \"round 40\" para un radio de 40 mm",
        ),
        DesignFinding::Seed => said("una semilla tiene dos medidas", "escriba [x, y]"),
        DesignFinding::CurveWithBow => {
            said("una costura es una curva o tiene comba, no ambas cosas", "quite una de las dos")
        }
        DesignFinding::NoSizes => said(
            "no hay ningún tamaño en la lista",
            "añada `{ size = \"440x400\", max_user_weight_kg = 90 }`",
        ),
        DesignFinding::SizeTwice(size) => {
            said(format!("el tamaño {size} está dos veces en la lista"), "deje uno de los dos")
        }
        DesignFinding::Fault(kind, sizes) => {
            let at = layouts::at_sizes(sizes);
            said(format!("{}{at}", layouts::fault(kind)), layouts::advice(kind))
        }
        DesignFinding::BuiltInName(name) => said(
            format!("`{name}` es el nombre de un diseño incluido, y este no lo es"),
            "dele un nombre propio: los papeles distinguen los diseños por su nombre",
        ),
        DesignFinding::RevisionMustRise { was, is, changes } => {
            said(must_rise(*was, *is, changes), format!("escriba `revision = {}`", next(*was)))
        }
        DesignFinding::RevisionFell { was, is } => said(
            match is {
                Some(is) => format!("el diseño anterior es la revisión {was}, y este la {is}"),
                None => format!("el diseño anterior es la revisión {was}, y este no tiene ninguna"),
            },
            format!("escriba `revision = {}`", next(Some(*was))),
        ),
        DesignFinding::CellVolume { volume, most } => said(
            format!(
                "dos hojas con este borde no pueden contener {} ml; contienen {} ml como mucho",
                parts::decimal(volume.to_ml(), 1),
                parts::decimal(most.to_ml(), 1)
            ),
            "mida el borde de la celda plana y el agua que desplaza una celda",
        ),
        DesignFinding::Film { weight, edge } => said(
            format!(
                "una masa de película de {} g no es normal para una celda de {} mm",
                parts::number(weight.to_g()),
                parts::number(edge.to_mm())
            ),
            "pese un lote contado a mano, y divida por su número",
        ),
    }
}

/// The revision after another one, or the second where none was written.
fn next(was: Option<u32>) -> u32 {
    was.unwrap_or(1) + 1
}

/// The most changes that are named.
const MOST_CHANGES: usize = 3;

/// Which counts changed, while the revision is no higher.
fn must_rise(was: Option<u32>, is: Option<u32>, changes: &[StockChange]) -> String {
    let change = |own: &StockChange| {
        let StockChange { size, number, was, is } = own;
        match (was, is) {
            (Some(was), Some(is)) => {
                format!("de {was} a {is} en el compartimento {number} de {size}")
            }
            (None, Some(is)) => format!("el compartimento {number} de {size} es nuevo, con {is}"),
            (Some(was), None) => {
                format!("el compartimento {number} de {size} ya no está, con {was}")
            }
            (None, None) => format!("el compartimento {number} de {size}"),
        }
    };
    let named: Vec<String> = changes.iter().take(MOST_CHANGES).map(change).collect();
    let more = match changes.len().saturating_sub(MOST_CHANGES) {
        0 => String::new(),
        more => format!("; y {more} más"),
    };
    let before = was.map_or_else(|| "no había ninguna".to_owned(), |own| format!("era la {own}"));
    let now = is.map_or_else(|| "no hay ninguna escrita".to_owned(), |own| format!("es la {own}"));
    format!(
        "la revisión debe subir, porque cambiaron cantidades: {}{more}; antes {before}, y ahora {now}",
        named.join("; ")
    )
}
