//! What hands found, and what follows: what an answer means, what it teaches, what is moved next.

pub(crate) mod adjust;
pub(crate) mod alarms;
pub(crate) mod contradictions;
pub(crate) mod estimate;
pub(crate) mod expected;
pub(crate) mod meaning;
pub(crate) mod mistakes;
pub(crate) mod passed;
pub(crate) mod pinched;
pub(crate) mod taught;
