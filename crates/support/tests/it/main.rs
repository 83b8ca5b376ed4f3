//! Tests of the crate from outside, in one program.

mod membrane;
mod mesh;
mod nets;
mod rest;
mod stock;
