//! Tests of the crate from outside, in one program.

mod mesh;
mod nets;
