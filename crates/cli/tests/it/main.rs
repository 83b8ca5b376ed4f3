//! The program as a user meets it: real executable, temporary folder, fixed date; stdout, stderr
//! and exit status together.

mod calls;
mod every_layout;
mod house;
mod papers;
mod plans;
mod runner;
mod wrong_files;
