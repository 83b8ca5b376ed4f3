//! What counts would do under a client, and how sure that is.

pub(crate) mod assumptions;
pub(crate) mod bare_stock;
pub(crate) mod board;
pub(crate) mod client_on_cushion;
pub(crate) mod contour;
pub(crate) mod costs;
pub(crate) mod heights;
pub(crate) mod live;
pub(crate) mod predictor;
pub(crate) mod prepared;
pub(crate) mod unknowns;
