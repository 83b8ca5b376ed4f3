//! Writes the air pressure of the standard atmosphere over heights as CSV, for comparison with
//! libraries that are not ours: `cargo run -p fitting --example standard_air`.

use cushion::Length;
use fitting::altitude::air_pressure;

#[expect(clippy::print_stdout, reason = "an example is a program")]
fn main() {
    println!("height_m,pressure_pa");
    for step in -5..=110 {
        let metres = f64::from(step) * 100.0;
        if let Some(pressure) = air_pressure(Length::from_m(metres)) {
            println!("{metres},{}", pressure.to_pa());
        }
    }
}
