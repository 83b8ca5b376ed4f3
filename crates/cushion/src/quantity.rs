//! Quantities: a number and what it measures, in SI units inside.
//!
//! A unit is named only where a number goes in or comes out. A quantity is always finite:
//! the constructors panic on NaN and infinities, which the readers of files refuse long before.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

/// One inch in metres, exactly (international yard and pound agreement of 1959).
const INCH: f64 = 0.0254;
/// One pound (avoirdupois) in kilograms, exactly (the same agreement).
const POUND: f64 = 0.453_592_37;
/// One conventional millimetre of mercury in pascals (ISO 80000-4: 133.322).
const MMHG: f64 = 133.322_387_415;

/// What no number from outside reaches that means anything: far below the largest number, so that
/// every unit's factor leaves it finite.
const BEYOND: f64 = 1e200;

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $($(#[$from_doc:meta])* $from:ident / $to:ident = $factor:expr;)+) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            $(
                $(#[$from_doc])*
                ///
                /// # Panics
                ///
                /// Panics if the number is NaN or infinite.
                #[must_use]
                #[track_caller]
                pub const fn $from(value: f64) -> Self {
                    let value = value * $factor;
                    assert!(value.is_finite(), "a quantity is finite");
                    Self(value)
                }

                /// Returns the number in the unit that the method is named for.
                #[must_use]
                pub const fn $to(self) -> f64 {
                    self.0 / $factor
                }
            )+

            /// Takes a number that comes from outside, by one of the constructors: none where it
            /// is NaN, or so large that no unit makes it finite.
            #[must_use]
            pub fn checked(take: fn(f64) -> Self, value: f64) -> Option<Self> {
                (value.abs() < BEYOND).then(|| take(value))
            }

            /// Returns the size without the sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// Returns the larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// Returns the smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) { self.0 += other.0; }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self { Self(self.0 * by) }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, by: f64) -> Self { Self(self.0 / by) }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, by: Self) -> f64 { self.0 / by.0 }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity!(
    /// A length.
    Length,
    /// Takes metres.
    from_m / to_m = 1.0;
    /// Takes millimetres.
    from_mm / to_mm = 1e-3;
    /// Takes inches of exactly 25.4 mm.
    from_inches / to_inches = INCH;
);
quantity!(
    /// An area.
    Area,
    /// Takes square metres.
    from_m2 / to_m2 = 1.0;
    /// Takes square millimetres.
    from_mm2 / to_mm2 = 1e-6;
    /// Takes square centimetres.
    from_cm2 / to_cm2 = 1e-4;
);
quantity!(
    /// A volume.
    Volume,
    /// Takes cubic metres.
    from_m3 / to_m3 = 1.0;
    /// Takes cubic millimetres.
    from_mm3 / to_mm3 = 1e-9;
    /// Takes millilitres.
    from_ml / to_ml = 1e-6;
    /// Takes litres.
    from_litres / to_litres = 1e-3;
);
quantity!(
    /// A mass; "body weight" in the words of the trade.
    Mass,
    /// Takes kilograms.
    from_kg / to_kg = 1.0;
    /// Takes grams.
    from_g / to_g = 1e-3;
    /// Takes pounds of exactly 0.45359237 kg.
    from_pounds / to_pounds = POUND;
);
quantity!(
    /// A pressure above the air's, unless said otherwise.
    Pressure,
    /// Takes pascals.
    from_pa / to_pa = 1.0;
    /// Takes kilopascals.
    from_kpa / to_kpa = 1e3;
    /// Takes millimetres of mercury.
    from_mmhg / to_mmhg = MMHG;
);
quantity!(
    /// A force.
    Force,
    /// Takes newtons.
    from_n / to_n = 1.0;
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn conversions_follow_the_exact_definitions() {
        assert!((Length::from_inches(17.0).to_mm() - 431.8).abs() < 1e-10);
        assert!((Length::from_mm(558.8).to_inches() - 22.0).abs() < 1e-12);
        assert!((Mass::from_pounds(1.0).to_g() - 453.592_37).abs() < 1e-10);
        assert!((Volume::from_litres(1.0).to_ml() - 1000.0).abs() < 1e-10);
        assert!((Area::from_m2(1.0).to_cm2() - 1e4).abs() < 1e-8);
        // ISO 80000-4 gives 1 mmHg = 133.322 Pa, to six digits.
        assert!((Pressure::from_mmhg(1.0).to_pa() - 133.322).abs() < 5e-4);
    }

    #[test]
    fn what_comes_from_outside_is_finite_or_refused() {
        for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308] {
            assert_eq!(Pressure::checked(Pressure::from_kpa, number), None);
        }
        let pressure = Pressure::checked(Pressure::from_kpa, -6.4);
        assert_eq!(pressure, Some(Pressure::from_kpa(-6.4)));
    }

    #[test]
    #[should_panic(expected = "a quantity is finite")]
    fn what_a_unit_makes_infinite_is_refused() {
        let _ = Pressure::from_kpa(1e308);
    }

    #[test]
    #[should_panic(expected = "a quantity is finite")]
    fn nan_is_refused() {
        let _ = Length::from_mm(f64::NAN);
    }
}
