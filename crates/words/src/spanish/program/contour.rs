//! Spanish: the virtual loaded-contour and overload test.

use super::super::parts::{cells, decimal};
use crate::{ContourNumber, ContourSaid};

/// Said with every answer.
const CLAIMS: &str = "Una comparación calculada con el llenado de serie. No sustituye ningún ensayo de laboratorio ni declara ningún código o clase; verificar el código corresponde a quien fabrica y a quien paga.";

pub(super) fn said(said: &ContourSaid<'_>) -> String {
    match said {
        ContourSaid::Title { title, size } => {
            format!("{title}, {size}: contorno con carga y sobrecarga, llenado de serie")
        }
        ContourSaid::Step { step, found } => {
            let found = match found {
                Some((touch, left, further)) => format!(
                    "los botones {} con la primera carga, y quedan {:.0} mm bajo los cilindros; la sobrecarga se hunde {} mm más.",
                    if *touch { "tocan" } else { "no tocan" },
                    left.to_mm(),
                    decimal(further.to_mm(), 1)
                ),
                None => "el cuerpo de ensayo no llega al reposo.".to_owned(),
            };
            format!("Escalón de {:.0} mm: {found}", step.to_mm())
        }
        ContourSaid::Board { board: [width, depth], forward, load, compartments: [from, to] } => {
            format!(
                "Una tabla rígida de {:.0} x {:.0} mm, su centro a {:.0} mm del borde trasero, {:.0} kg con lo que pesa sobre su centro. Celdas que pasan del compartimento {from} al {to} suben su borde derecho (estimación):",
                width.to_mm(),
                depth.to_mm(),
                forward.to_mm(),
                load.to_kg()
            )
        }
        ContourSaid::Tilts { give, tilts } => {
            let walls = match give {
                0.0 => "paredes rectas".to_owned(),
                give => format!("paredes que ceden un {:.0} %", give * 100.0),
            };
            let tilts = tilts.iter().map(|(moved, higher)| match higher {
                Some(higher) => format!("{} {} mm", cells(*moved), decimal(higher.to_mm(), 1)),
                None => format!("{}: vuelca", cells(*moved)),
            });
            format!("{walls}: {}", tilts.collect::<Vec<_>>().join("; "))
        }
        ContourSaid::MadeWith => {
            "Hecho con (visto: se leyó una fuente; sin verificar: de memoria):".to_owned()
        }
        ContourSaid::Mark { seen: true } => "visto".to_owned(),
        ContourSaid::Mark { seen: false } => "sin verificar".to_owned(),
        ContourSaid::Claims => CLAIMS.to_owned(),
    }
}

pub(super) fn number(number: ContourNumber) -> String {
    match number {
        ContourNumber::CylindersApart => {
            "distancia entre cilindros, en un cojín de 470 mm".to_owned()
        }
        ContourNumber::ButtonsApart => "distancia entre botones, en un cojín de 470 mm".to_owned(),
        ContourNumber::GrowingWithWidth(mm) => format!("{mm} mm, que crecen con el ancho"),
        ContourNumber::Steps => "escalones de cilindros a botones".to_owned(),
        ContourNumber::StepsAre([one, other]) => format!("{one} y {other} mm"),
        ContourNumber::LineOfParts => {
            "línea de las piezas por delante del borde trasero".to_owned()
        }
        ContourNumber::FirstLoad => "primera carga".to_owned(),
        ContourNumber::Overload => "sobrecarga".to_owned(),
        ContourNumber::Reserve => "reserva que debería dejar la sobrecarga".to_owned(),
        ContourNumber::FurtherSink(mm) => format!("{mm} mm más de hundimiento"),
    }
}
