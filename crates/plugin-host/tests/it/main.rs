//! Plugins as the host meets them: right ones, and one for each way of being wrong.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod built;
mod faulty;
mod fence;
mod leg_front;
mod parent;
mod places;
mod right;
mod rust;
mod version_1;
