//! The program as a user meets it: real executable, temporary folder, fixed date; stdout, stderr
//! and exit status together.
#![allow(clippy::unwrap_used, reason = "in a test, a panic is the report")]

mod absurd;
mod calls;
mod comparisons;
mod corpora;
mod every_layout;
mod faulty_disk;
mod fitting;
mod house;
mod job_files;
mod languages;
mod orders;
mod outputs;
mod papers;
mod plans;
mod plugins;
mod record;
mod reports;
mod restoring;
mod reviews;
mod runner;
mod setting;
mod supplier;
mod supplier_day;
mod wrong_files;
