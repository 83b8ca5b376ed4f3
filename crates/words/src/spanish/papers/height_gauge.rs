//! Spanish: the height gauge.

use crate::HeightGaugeTexts;

pub(super) const TEXTS: &HeightGaugeTexts = &HeightGaugeTexts {
    title: "Plantilla de alturas",
    subject: "Qué altura debe tener cada compartimento tras alisar, a tamaño real",
    how_sure: "Las alturas son ESTIMACIONES, con el margen plausible. Deciden las cantidades: fuera del gris, cuente otra vez antes de mover una celda.",
    how_to_use: "Cómo se usa",
    steps: &[
        "Ponga el cojín en una mesa, ARRIBA hacia arriba, sin funda. Nadie se sienta en él. Alise cada compartimento.",
        "Ponga la plantilla de pie junto al cojín, con su borde inferior en la mesa.",
        "Ponga una regla sobre el centro de un compartimento, nivelada, hasta la plantilla. Debe dar en el gris de ese número; la línea es lo esperado.",
    ],
    nothing_under_a_client: "Bajo una persona solo entra una mano: ni plantilla, ni barra, ni regla.",
    cut_out: "La plantilla: recorte por la línea de trazos",
    drawing: "Una plantilla a tamaño real, con una escala en milímetros. Cada compartimento tiene una columna con su número: una barra gris sobre las alturas plausibles y una línea en la esperada. La tabla dice lo mismo en números.",
    on_the_table: "Este borde va sobre la mesa",
    unit: "mm",
    too_high: "Un compartimento es más alto que este papel: mida con una regla, según la tabla.",
    check_the_print: "Antes de cortar: ¿está impreso a tamaño real?",
    line: "Esta línea mide 100 mm. ¿No es así? Imprima otra vez al 100 %, sin ajustar a la página.",
    bar: "Esta barra mide 25 mm, como el ancho de un pulgar. Ponga el pulgar: ¿cómo se notan 25 mm?",
    measures_drawn: "Una línea de 100 mm y una barra de 25 mm, para medir la impresión y comparar un pulgar.",
    heights: "Alturas tras alisar",
    columns: ["N.º", "Compartimento", "Celdas", "Altura esperada (margen)", "Medida"],
    fields: &[&["Medido por", "Fecha"]],
};
