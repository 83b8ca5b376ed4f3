//! Measures as written in layouts: a number of millimetres, a share, or both.

use case::text::DesignFinding;
use cushion::{Measure, Spot};

use crate::value::Value;

/// The most millimetres and the greatest share that make sense on a cushion.
const MOST_MM: f64 = 2000.0;
const MOST_SHARE: f64 = 5.0;

/// Reads a measure, or makes a remark.
pub(crate) fn measure(value: &Value<'_>) -> Option<Measure> {
    let found = match value.if_number() {
        Some(number) => Measure { share: 0.0, mm: number? },
        None => match parse(value.text()?) {
            Some(measure) => measure,
            None => {
                let written = value.text()?;
                value.remarks.error(value.span(), DesignFinding::Measure(written.to_owned()));
                return None;
            }
        },
    };
    if found.mm.abs() > MOST_MM || found.share.abs() > MOST_SHARE {
        value.remarks.error(value.span(), DesignFinding::LargeMeasure);
        return None;
    }
    Some(found)
}

/// Reads a spot from the first two values of a list.
pub(crate) fn spot(x: &Value<'_>, y: &Value<'_>) -> Option<Spot> {
    let (x, y) = (measure(x), measure(y));
    Some(Spot { x: x?, y: y? })
}

/// Parses `25%`, `52% + 5`, `52% - 5`, `40`.
fn parse(text: &str) -> Option<Measure> {
    let finite = |text: &str| text.trim().parse().ok().filter(|number: &f64| number.is_finite());
    let Some((share, rest)) = text.split_once('%') else {
        return Some(Measure { share: 0.0, mm: finite(text)? });
    };
    let rest = rest.trim();
    let mm = if rest.is_empty() {
        0.0
    } else if let Some(more) = rest.strip_prefix('+') {
        finite(more)?
    } else {
        -finite(rest.strip_prefix('-')?)?
    };
    Some(Measure { share: finite(share)? / 100.0, mm })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn measures_are_shares_and_millimetres() {
        let check = |text: &str, share: f64, mm: f64| {
            assert_eq!(parse(text), Some(Measure { share, mm }), "{text}");
        };
        check("25%", 0.25, 0.0);
        check("52% + 5", 0.52, 5.0);
        check("52%-5.5", 0.52, -5.5);
        check("-6%", -0.06, 0.0);
        check("40", 0.0, 40.0);
        for bad in ["", "%", "5 mm", "52% 5", "nan%", "inf", "1e999"] {
            assert_eq!(parse(bad), None, "{bad}");
        }
    }
}
