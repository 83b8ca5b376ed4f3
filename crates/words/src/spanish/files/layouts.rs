//! Spanish: what is wrong with a layout or a size.

use case::BodyMeasure;
use cushion::{FaultKind, Length, Listed, Point, Size, SizeError};

use crate::rounding::decimals_apart;
use crate::spanish::parts;

/// What is wrong with a layout.
pub(super) fn fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::UnknownPoint(name) => format!("ningún punto se llama `{name}`"),
        FaultKind::UnknownSeam(name) => format!("ninguna costura se llama `{name}`"),
        FaultKind::Circular => "este punto y su costura se necesitan uno a otra".to_owned(),
        FaultKind::NotOnSeam { seam, point } => {
            format!("la costura `{seam}` no pasa aquí por `{point}`")
        }
        FaultKind::BeyondSeam => "este punto está más allá del tramo en que se mide".to_owned(),
        FaultKind::SamePlace(other) => format!("este punto está sobre el punto `{other}`"),
        FaultKind::TooMuch { of, most } => format!("hay más de {most} {}", listed(*of)),
        FaultKind::TwiceThrough(point) => format!("esta costura pasa dos veces por `{point}`"),
        FaultKind::UnusedPoint => "ninguna costura pasa por este punto".to_owned(),
        FaultKind::NoOutline => "ninguna costura se llama `outline`".to_owned(),
        FaultKind::TooFewPoints { least } => {
            format!("la costura necesita {least} puntos o más")
        }
        FaultKind::OpenOutline => "el contorno no se cierra".to_owned(),
        FaultKind::NoRoomToRound => "este redondeo no tiene sitio".to_owned(),
        FaultKind::TooMuchBow => "esta costura se comba más de medio círculo".to_owned(),
        FaultKind::EndsNowhere(point) => {
            format!("esta costura acaba en `{point}`, donde no hay otra costura")
        }
        FaultKind::Crossing { other, at } => format!(
            "esta costura toca la costura `{other}` cerca de {}, donde no comparten ningún punto",
            place(*at)
        ),
        FaultKind::Outside => "esta costura está fuera del contorno".to_owned(),
        FaultKind::BeyondSize { by, at } => format!(
            "el contorno sobrepasa el tamaño en {:.0} mm, cerca de {}",
            by.to_mm().ceil(),
            place(*at)
        ),
        FaultKind::WrongHalf => {
            "esto está a la izquierda de la persona, que se hace por simetría".to_owned()
        }
        FaultKind::SeedOutside
        | FaultKind::SharedFace(_)
        | FaultKind::UnclaimedFace { .. }
        | FaultKind::SameNumber(_)
        | FaultKind::MissingNumber(_)
        | FaultKind::NumbersForSides
        | FaultKind::SideInName => claim_fault(kind),
        FaultKind::OtherFaces => {
            "las costuras encierran otros compartimentos que en el primer tamaño".to_owned()
        }
        FaultKind::NarrowerThanCell { .. }
        | FaultKind::NarrowerThanHand { .. }
        | FaultKind::NarrowArm { .. }
        | FaultKind::AcuteCorner { .. }
        | FaultKind::NoCrown(_)
        | FaultKind::CrownTooHigh { .. }
        | FaultKind::CrownBeyondModel { .. }
        | FaultKind::StockTooSteep { .. } => compartment_fault(kind),
        FaultKind::RatedAboveLarger(larger) => {
            format!("este tamaño tiene más peso máximo que el mayor {larger}")
        }
        FaultKind::NotMade => "el diseño no se fabrica en este tamaño".to_owned(),
    }
}

/// What is wrong with seeds and numbers; nothing for other kinds.
fn claim_fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::SeedOutside => "esta semilla no está en ningún compartimento".to_owned(),
        FaultKind::SharedFace(other) => format!("esta semilla está en el compartimento `{other}`"),
        FaultKind::UnclaimedFace { at } => {
            format!("ningún compartimento reclama el espacio alrededor de {}", place(*at))
        }
        FaultKind::SameNumber(number) => format!("el número {number} está dado dos veces"),
        FaultKind::MissingNumber(number) => {
            format!("falta el número {number} entre los demás")
        }
        FaultKind::NumbersForSides => "los números no van con los lados de esta semilla".to_owned(),
        FaultKind::SideInName => {
            "el id nombra un lado y el compartimento está en el otro".to_owned()
        }
        _ => String::new(),
    }
}

/// What is wrong with the room in compartments or with how they rise; nothing for other kinds.
fn compartment_fault(kind: &FaultKind) -> String {
    match kind {
        FaultKind::NarrowerThanCell { number, width, cell } => format!(
            "en su parte más ancha, {:.0} mm, el compartimento {number} es más estrecho que una celda de {:.0} mm",
            width.to_mm(),
            cell.to_mm()
        ),
        FaultKind::NarrowerThanHand { number, width } => format!(
            "en su parte más ancha, {:.0} mm, el compartimento {number} es más estrecho que una mano",
            width.to_mm()
        ),
        FaultKind::NarrowArm { number, width, at } => format!(
            "una parte del compartimento {number} mide {:.0} mm de ancho, menos que una mano, cerca de {}",
            width.to_mm(),
            place(*at)
        ),
        FaultKind::AcuteCorner { number, degrees, at } => {
            format!(
                "el compartimento {number} tiene una esquina de {degrees:.0} grados cerca de {}",
                place(*at)
            )
        }
        FaultKind::NoCrown(crown) => format!(
            "un abombamiento de {:.0} mm no sube de las paredes: las celdas quedarían sueltas",
            crown.to_mm()
        ),
        FaultKind::CrownTooHigh { crown, most } => format!(
            "un abombamiento de {} es más de un octavo de la anchura; el modelo vale hasta {}",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        FaultKind::CrownBeyondModel { crown, most } => format!(
            "un abombamiento de {} es más de un cuarto de la anchura; el modelo vale hasta {}",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        FaultKind::StockTooSteep { number, crown, most } => format!(
            "el compartimento {number} sube {} en el llenado de serie; el modelo vale ahí hasta {}",
            apart(*crown, *most),
            apart(*most, *crown)
        ),
        _ => String::new(),
    }
}

/// A length, with as many decimals as tell it apart from another.
fn apart(own: Length, other: Length) -> String {
    let decimals = decimals_apart(own.to_mm(), other.to_mm());
    format!("{} mm", parts::decimal(own.to_mm(), decimals))
}

/// A place on the cushion.
fn place(at: Point) -> String {
    format!("x {:.0}, y {:.0} mm", at.x, at.y)
}

fn listed(of: Listed) -> &'static str {
    match of {
        Listed::Points => "puntos",
        Listed::Seams => "costuras",
        Listed::PointsOfSeams => "puntos en las listas de todas las costuras",
        Listed::Compartments => "compartimentos",
        Listed::Sizes => "tamaños",
    }
}

/// Sizes at which a fault shows, in brackets, the first few by name; nothing where there is none.
pub(super) fn at_sizes(sizes: &[Size]) -> String {
    const NAMED: usize = 6;
    let named: Vec<String> = sizes.iter().take(NAMED).map(Size::to_string).collect();
    match (named.as_slice(), sizes.len().saturating_sub(NAMED)) {
        ([], _) => String::new(),
        (named, 0) => format!(" (en {})", named.join(", ")),
        (named, more) => format!(" (en {} y {more} tamaños más)", named.join(", ")),
    }
}

/// What to do about it.
pub(super) fn advice(kind: &FaultKind) -> &'static str {
    match kind {
        FaultKind::UnknownPoint(_) => "añádalo a [points], o corrija el nombre",
        FaultKind::UnknownSeam(_) => "añádala a [seams], o corrija el nombre",
        FaultKind::Circular => "sitúe uno de los dos por sus coordenadas",
        FaultKind::NotOnSeam { .. } => "nombre dos puntos de la costura, en el orden en que va",
        FaultKind::BeyondSeam => "deje `at` entre 0 % y 100 %",
        FaultKind::SamePlace(_) => "use un punto para ambos, o mueva uno de ellos",
        FaultKind::TooMuch { .. } => "quite los que no necesita ningún compartimento",
        FaultKind::TwiceThrough(_) => {
            "nombre cada punto una vez; solo para cerrar, el primero otra vez al final"
        }
        FaultKind::UnusedPoint => "lleve una costura por él, o quítelo",
        FaultKind::BeyondSize { .. } => {
            "deje x dentro del 50 % de la anchura, y dentro de 0 % y 100 %, y las combas dentro"
        }
        FaultKind::MissingNumber(_) => "numere los compartimentos desde 1 sin huecos",
        FaultKind::NoOutline => "añada una costura llamada `outline` que rodee el cojín",
        FaultKind::TooFewPoints { .. } => "añada puntos a `through`",
        FaultKind::OpenOutline => {
            "ponga `closed = true`; en un diseño simétrico, empiece y acabe en la línea central"
        }
        FaultKind::NoRoomToRound => "tome un radio menor, y redondee solo entre tramos rectos",
        FaultKind::TooMuchBow => "tome un `bow` menor",
        FaultKind::EndsNowhere(_) => {
            "acábela en un punto de otra costura, como hace `{ on = ... }`"
        }
        FaultKind::Crossing { .. } => "ponga ahí un punto en una de ellas y lleve la otra por él",
        FaultKind::Outside => "mueva sus puntos dentro del contorno",
        FaultKind::WrongHalf => "escríbalo con x de 0 % o más",
        FaultKind::SeedOutside => "lleve la semilla bien dentro del compartimento",
        FaultKind::SharedFace(_) => "mueva una semilla, o separe las dos con una costura",
        FaultKind::UnclaimedFace { .. } => "añada un compartimento con su semilla ahí",
        FaultKind::SameNumber(_) => "dé a cada compartimento un número propio",
        FaultKind::NumbersForSides => {
            "escriba `number = 3` para una semilla en la línea central y `numbers = { left = 1, right = 2 }` para una a un lado"
        }
        FaultKind::SideInName => {
            "izquierda y derecha son las de la persona: izquierda es x negativa"
        }
        FaultKind::OtherFaces => {
            "use por ciento donde los puntos se acercan demasiado en algún tamaño"
        }
        FaultKind::NarrowerThanCell { .. } => "ensánchelo: no entraría ninguna celda",
        FaultKind::NarrowerThanHand { .. } | FaultKind::NarrowArm { .. } => {
            "ensánchelo donde pueda: debe entrar una mano para llenarlo"
        }
        FaultKind::AcuteCorner { .. } => "hágala menos aguda donde pueda: las celdas no la llenan",
        FaultKind::NoCrown(_) => "dé un `stock_crown` mayor que 0 mm",
        FaultKind::CrownTooHigh { .. }
        | FaultKind::CrownBeyondModel { .. }
        | FaultKind::StockTooSteep { .. } => "baje `stock_crown`",
        FaultKind::RatedAboveLarger(_) => "corrija uno de los dos pesos",
        FaultKind::NotMade => "tome un tamaño de la lista del diseño, o añada este",
    }
}

/// Why a text is not a size.
pub(super) fn no_size(error: SizeError) -> String {
    match error {
        SizeError::Form => {
            "un tamaño es anchura x profundidad, como `440x400` en milímetros o `17x16in` en pulgadas"
                .to_owned()
        }
        SizeError::Range { width_mm, depth_mm } => format!(
            "{} x {} mm no es un cojín: la anchura y la profundidad están entre {:.0} y {:.0} mm",
            of_any_size(width_mm),
            of_any_size(depth_mm),
            Size::LEAST.to_mm(),
            Size::GREATEST.to_mm()
        ),
    }
}

/// A number of millimetres, in few digits however large it is.
fn of_any_size(mm: f64) -> String {
    if mm.abs() < 1e6 { format!("{mm:.0}") } else { format!("{mm:e}").replace('.', ",") }
}

/// A measure of the client, without an article.
pub(super) fn measure(measure: BodyMeasure) -> &'static str {
    match measure {
        BodyMeasure::SeatBoneSpacing => "distancia entre isquiones",
        BodyMeasure::ThighDepthLeft => "longitud de muslo a la izquierda de la persona",
        BodyMeasure::ThighDepthRight => "longitud de muslo a la derecha de la persona",
        BodyMeasure::HipWidth => "anchura de cadera",
        BodyMeasure::TrochanterWidth => "anchura de trocánteres",
    }
}
