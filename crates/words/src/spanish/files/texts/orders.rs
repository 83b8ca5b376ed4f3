//! Spanish: what is found about an order.

use case::Said;
use case::text::{ColumnsFinding, OrderFinding};

use super::said;
use crate::spanish::parts::counted;

/// What is said of a line of an order.
pub(super) fn order(finding: &OrderFinding) -> Said {
    match finding {
        OrderFinding::NoFile(file) => said(
            format!("no hay un archivo `{file}` junto al pedido"),
            "escriba su ruta vista desde la carpeta del pedido",
        ),
        OrderFinding::NothingNamed => said(
            "esta línea no dice qué hay que llenar",
            "escriba un diseño y un tamaño, o la ruta del archivo de una persona",
        ),
        OrderFinding::BesideClient(column) => said(
            format!("el archivo de la persona ya dice lo que va en `{column}`"),
            "déjelo vacío aquí, o pida el diseño sin la persona",
        ),
        OrderFinding::NoSize => said(
            "este diseño no tiene tamaño",
            "escriba anchura por profundidad en `size`: 440x400",
        ),
        OrderFinding::Quantity(written) => said(
            format!("`{written}` no dice cuántos cojines"),
            "escriba un número entero desde 1, sin unidad",
        ),
        OrderFinding::TooMany { most } => said(
            format!("con esta línea el pedido tiene más de {most} cojines"),
            "escriba otro pedido para el resto",
        ),
        OrderFinding::OneForClient(quantity) => said(
            format!("{quantity} cojines de una persona, cuyo registro es de uno"),
            "escriba 1; un segundo cojín tiene su propio archivo, que nombra el primero",
        ),
        OrderFinding::ClientTwice { file, line } => said(
            format!("`{file}` ya está en la línea {line}, y su registro es de un cojín"),
            "deje una de las dos líneas",
        ),
        OrderFinding::SerialRun(written) => said(
            format!("`{written}` no es una serie seguida"),
            "escriba la primera y la última con las mismas cifras: S-101..S-112",
        ),
        OrderFinding::SerialCount { serials, quantity } => said(
            format!(
                "{} para {}",
                counted(*serials, ["serie", "series"]),
                counted(*quantity as usize, ["cojín", "cojines"])
            ),
            "escriba una para cada uno, o ninguna; seguidas se escriben S-101..S-112",
        ),
        OrderFinding::SerialTwice { serial, line } => said(
            format!("la serie `{serial}` ya está en la línea {line}"),
            "dos cojines no tienen la misma serie, en mayúsculas o no; escriba otra",
        ),
        OrderFinding::OtherSerial { ordered, of_file } => said(
            format!("el archivo de la persona dice la serie `{of_file}`, y esta línea `{ordered}`"),
            "escriba la misma en ambos, o déjela vacía aquí",
        ),
        OrderFinding::Serial(written) => said(
            format!("`{written}` no es una serie"),
            "escriba como mucho 16 letras, cifras y . - _ /, y un espacio entre dos",
        ),
    }
}

/// What is said of columns and fields.
pub(super) fn columns(finding: &ColumnsFinding) -> Said {
    match finding {
        ColumnsFinding::UnknownColumn { written, near, known } => {
            let hint = match near {
                Some(near) => format!("escriba `{near}`"),
                None => format!("quítela; se conocen {}", known.join(", ")),
            };
            said(format!("ninguna columna de un pedido se llama `{written}`"), hint)
        }
        ColumnsFinding::ColumnTwice(name) => {
            said(format!("la columna `{name}` está dos veces"), "deje una de las dos")
        }
        ColumnsFinding::NoColumn(name) => said(
            format!("el encabezado no tiene la columna `{name}`"),
            format!("añada `{name}` a la primera línea"),
        ),
        ColumnsFinding::Fields { found, wanted } => said(
            format!(
                "esta línea tiene {}, el encabezado {wanted}",
                counted(*found, ["campo", "campos"])
            ),
            "un campo queda vacío entre sus comas; uno con una coma dentro va entre comillas",
        ),
        ColumnsFinding::Quotes => said(
            "estas comillas no rodean un campo entero",
            "las comillas empiezan y acaban un campo; dentro escriba dos por una",
        ),
        ColumnsFinding::Nothing => said(
            "ninguna línea pide un cojín",
            "escriba una línea para cada clase, bajo el encabezado",
        ),
    }
}
