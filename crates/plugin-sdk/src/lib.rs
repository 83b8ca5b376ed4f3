//! What the author of a plugin uses: one trait, one macro, no `unsafe`.
//!
//! A plugin describes itself and its parameters, and returns the text of a layout file in
//! millimetres for one size. Panics become errors.
//!
//! ```
//! use plugin_sdk::{Description, Parameter, Plugin, Refusal, Request};
//!
//! struct Halves;
//!
//! impl Plugin for Halves {
//!     fn describe() -> Description {
//!         Description { name: "halves", version: "1.0.0", about: "Two halves." }
//!     }
//!
//!     fn parameters() -> Vec<Parameter> {
//!         vec![Parameter::new("seam-at", "where the seam lies", "mm", 80.0..=400.0, 200.0)]
//!     }
//!
//!     fn pattern(request: &Request) -> Result<String, Refusal> {
//!         if request.value("seam-at") > request.depth_mm - 80.0 {
//!             return Err(Refusal::new("the seam lies too near to the front edge"));
//!         }
//!         Ok(format!("format = 1\nkind = \"layout\"\n# ..."))
//!     }
//! }
//!
//! plugin_sdk::export!(Halves);
//! # fn main() {}
//! ```

mod export;
mod plugin;

pub use crate::export::{Exported, entry};
pub use crate::plugin::{Description, Measure, Parameter, Plugin, Refusal, Request};
pub use plugin_abi as abi;

/// Exports a type that implements [`Plugin`] as the plugin of this library.
#[macro_export]
macro_rules! export {
    ($plugin:ty) => {
        const _: () = {
            /// The one function by which the host finds this plugin.
            #[unsafe(no_mangle)]
            extern "C" fn seatwright_plugin() -> *const $crate::abi::SeatwrightPlugin1 {
                static EXPORTED: std::sync::OnceLock<$crate::Exported> = std::sync::OnceLock::new();
                $crate::entry(&EXPORTED, $crate::Exported::of::<$plugin>)
            }
        };
    };
}
