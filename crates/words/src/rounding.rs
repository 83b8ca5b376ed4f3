//! How numbers are rounded, alike in every language.

use cushion::Length;

/// Inches to the nearest tenth, or to the nearest hundredth where a tenth would be nothing; exact by
/// definition of the inch.
pub(crate) fn rounded_inches(length: Length) -> f64 {
    let inches = length.to_mm() / 25.4;
    let to = |parts: f64| {
        // What somebody typed as three quarters is a hair less once it is a length.
        let whole = (inches * parts * 1e6).round() / 1e6;
        whole.round() / parts + 0.0
    };
    let tenths = to(10.0);
    if tenths == 0.0 { to(100.0) } else { tenths }
}

/// How many decimals two numbers need to be told apart, three at most.
pub(crate) fn decimals_apart(one: f64, other: f64) -> usize {
    let same = |decimals: &usize| format!("{one:.decimals$}") == format!("{other:.decimals$}");
    (0..3).find(|decimals| !same(decimals)).unwrap_or(3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_as_many_decimals_as_tell_them_apart() {
        let of = |one, other| decimals_apart(one, other);
        assert_eq!(
            [of(20.0, 18.0), of(18.4, 18.1), of(18.02, 17.98), of(18.0, 18.0)],
            [0, 1, 2, 3]
        );
    }

    #[test]
    fn inches_are_rounded_by_the_length_itself() {
        let of = |mm: f64| rounded_inches(Length::from_mm(mm));
        // Halves and quarters as they are typed, and their neighbours.
        assert_eq!([12.7, 19.05, 6.35, 431.8].map(of), [0.5, 0.8, 0.3, 17.0]);
        assert_eq!([19.0, 3.7, 4.0].map(of), [0.7, 0.1, 0.2]);
        // What is something is never nought.
        assert_eq!([1.0, 0.5, -1.0].map(of), [0.04, 0.02, -0.04]);
        assert_eq!(of(0.0).to_string(), "0");
        assert_eq!(of(-0.0).to_string(), "0");
    }
}
