//! Integration tests of `fitting`: goals to counts on built-in layouts.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

mod bodies;
mod clients;
mod decision;
mod fittings;
mod goals;
mod heights;
mod if_then;
mod live;
mod mirror;
mod mistakes;
mod partners;
mod perturbed;
mod predictions;
mod sizing;
