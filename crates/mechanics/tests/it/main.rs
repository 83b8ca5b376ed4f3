//! Tests of the crate from outside, in one program.

mod board;
mod kinks;
mod membrane;
mod mesh;
mod nets;
mod ratings;
mod rest;
mod rivals;
mod seams;
mod starts;
mod steady;
mod stock;
mod trade;
