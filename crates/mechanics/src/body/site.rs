//! Named places on the body's underside.

use case::SiteName;

/// A named place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// Its name.
    pub name: SiteName,
    /// Where it is in the frame of the cushion, in metres.
    pub at: [f64; 2],
}
