//! English: what is found about an order.

use case::Said;
use case::text::{ColumnsFinding, OrderFinding};

use super::said;
use crate::english::parts::counted;

/// What is said of a line of an order.
pub(super) fn order(finding: &OrderFinding) -> Said {
    match finding {
        OrderFinding::NoFile(file) => said(
            format!("there is no file `{file}` beside the order"),
            "write its path as seen from the folder of the order",
        ),
        OrderFinding::NothingNamed => said(
            "this line says of nothing what is to be filled",
            "write a layout and a size, or the path of a client's file",
        ),
        OrderFinding::BesideClient(column) => said(
            format!("a client's file says itself what stands under `{column}`"),
            "leave it empty here, or order the layout without the client",
        ),
        OrderFinding::NoSize => {
            said("this layout has no size", "write width by depth under `size`: 440x400")
        }
        OrderFinding::Quantity(written) => said(
            format!("`{written}` is not how many cushions"),
            "write a whole number from 1, without a unit",
        ),
        OrderFinding::TooMany { most } => said(
            format!("with this line the order has more than {most} cushions"),
            "write another order for the rest",
        ),
        OrderFinding::OneForClient(quantity) => said(
            format!("{quantity} cushions of one client, whose record is of one"),
            "write 1; a second cushion has a file of its own, which names the first",
        ),
        OrderFinding::ClientTwice { file, line } => said(
            format!("`{file}` is in line {line} already, and its record is of one cushion"),
            "keep one of the two lines",
        ),
        OrderFinding::SerialRun(written) => said(
            format!("`{written}` is not a run of serials"),
            "write the first and the last with as many digits: S-101..S-112",
        ),
        OrderFinding::SerialCount { serials, quantity } => said(
            format!(
                "{} for {}",
                counted(*serials, "serial"),
                counted(*quantity as usize, "cushion")
            ),
            "write one for each, or none; a run is written S-101..S-112",
        ),
        OrderFinding::SerialTwice { serial, line } => said(
            format!("the serial `{serial}` is in line {line} already"),
            "no two cushions have one serial, in capitals or not; write another",
        ),
        OrderFinding::OtherSerial { ordered, of_file } => said(
            format!("the client's file says the serial `{of_file}`, and this line `{ordered}`"),
            "write the same in both, or leave it empty here",
        ),
        OrderFinding::Serial(written) => said(
            format!("`{written}` is not a serial"),
            "write at most 16 letters, digits and . - _ /, and a space between two",
        ),
    }
}

/// What is said of columns and fields.
pub(super) fn columns(finding: &ColumnsFinding) -> Said {
    match finding {
        ColumnsFinding::UnknownColumn { written, near, known } => {
            let hint = match near {
                Some(near) => format!("write `{near}`"),
                None => format!("take it away; known are {}", known.join(", ")),
            };
            said(format!("no column of an order is called `{written}`"), hint)
        }
        ColumnsFinding::ColumnTwice(name) => {
            said(format!("the column `{name}` is there twice"), "keep one of the two")
        }
        ColumnsFinding::NoColumn(name) => said(
            format!("the heading has no column `{name}`"),
            format!("add `{name}` to the first line"),
        ),
        ColumnsFinding::Fields { found, wanted } => said(
            format!("this line has {}, the heading {wanted}", counted(*found, "field")),
            "a field stays empty between its commas; one with a comma in it stands in quotes",
        ),
        ColumnsFinding::Quotes => said(
            "these quotes do not go around one whole field",
            "quotes begin and end a field; within it write two for one",
        ),
        ColumnsFinding::Nothing => {
            said("no line orders a cushion", "write one line for each kind, under the heading")
        }
    }
}
