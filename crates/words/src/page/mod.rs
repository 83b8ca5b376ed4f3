//! What stands on the page beside the chair.
//!
//! As on the papers, a text that is always the same is a field of the texts of its screen, and
//! what has a value in it is a sentence of [`PageWords`].

#![allow(missing_docs, reason = "a field of texts is named for what it says")]

mod texts;

use case::{Check, Date, SiteChange, Standing};
use cushion::{Length, Mass, Pressure, Side};

pub use self::texts::*;

/// What stands on the page beside the chair.
pub trait PageWords {
    /// What is always the same.
    fn page(&self) -> &'static PageTexts;

    /// Where one is among the steps.
    fn step_of(&self, step: &str, at: usize, of: usize) -> String;
    /// A body weight; in pounds with the kilograms behind it.
    fn body_weight(&self, weight: Mass, in_pounds: bool) -> String;
    /// How a fitting stands, in a few words.
    fn state_in_short(&self, standing: Standing<'_>) -> String;
    /// When a client is looked at again, in a few words.
    fn review_in_short(&self, standing: Standing<'_>) -> String;
    /// A day.
    fn day(&self, on: Date) -> String;
    /// That somebody else wrote an answer meanwhile, which is this, or took it away: sentences.
    fn changed_meanwhile(&self, now: Option<&str>) -> String;
    /// How many answers need another look: a heading.
    fn need_another_look(&self, count: usize) -> String;
    /// How many answers are still missing: a heading.
    fn still_missing(&self, count: usize) -> String;
    /// That another question needs an answer too, by what it is called: a sentence.
    fn answer_too(&self, label: &str) -> String;
    /// That an answer goes only with these to another question: sentences.
    fn goes_only_with(&self, label: &str, answers: &str) -> String;
    /// An entry of a list, by its place from 1.
    fn entry_of_list(&self, group: &str, at: usize) -> String;
    /// What an obliquity at the front of the pelvis is at the seat bones, and what the cushion does
    /// about it: sentences.
    fn obliquity_means(&self, lower: Side, ends: [Length; 2]) -> String;
    /// That the depth of a cushion goes by the thigh of this side, since the other leg is lost: a
    /// sentence.
    fn depth_goes_by(&self, side: Side) -> String;
    /// A compartment with its words and its cells, for whoever does not see the drawing.
    fn compartment_said(&self, number: u8, words: &str, cells: u32) -> String;
    /// One cell more, or fewer, in a compartment.
    fn step_said(&self, more: bool, number: u8, words: &str) -> String;
    /// How many cells more or fewer than in the stock fill.
    fn change_from_stock(&self, cells: i64) -> String;
    /// How many cells there are in all, and how they differ from the stock fill: a sentence.
    fn all_cells_said(&self, cells: u32, stock: u32) -> String;
    /// From one number to another.
    fn range(&self, low: &str, high: &str) -> String;
    /// A length.
    fn plain_length(&self, length: Length) -> String;
    /// A lean of the trunk in degrees, positive where the client's right side is higher.
    fn lean(&self, roll_deg: f64) -> String;
    /// A slope from front to back in degrees, positive where the front is higher.
    fn slope(&self, pitch_deg: f64) -> String;
    /// A pressure at a site.
    fn site_pressure(&self, pressure: Pressure) -> String;
    /// By how much the pressure at a site changes.
    fn site_change(&self, change: &SiteChange) -> String;
    /// Shares of load left and right.
    fn shares(&self, left: f64, right: f64) -> String;
    /// Which compartment of how many is filled.
    fn compartment_of(&self, at: usize, of: usize) -> String;
    /// Put so many cells into a compartment.
    fn put_in(&self, cells: u32, number: u8) -> String;
    /// What is filled is not what is planned: a sentence.
    fn other_than_planned(&self, number: u8, planned: u32, put_in: u32) -> String;
    /// Which move of how many it is.
    fn move_of(&self, at: usize, of: usize) -> String;
    /// What was expected under a seat bone, and what was felt: a sentence.
    fn expected_and_found(&self, side: Side, expected: Length, found: Option<Length>) -> String;
    /// How the pelvis was expected to be: a sentence.
    fn expected_lower(&self, lower: Option<Side>, by: Length) -> String;
    /// That a hand felt less under a seat bone than anybody may sit on, and what follows: sentences.
    fn too_little_felt(&self, side: Side, least: Length) -> String;
    /// What is missing for a check to pass: a sentence.
    fn check_lacks(&self, parts: &[&str]) -> String;
    /// What hands found: a sentence.
    fn check_said(&self, check: &Check) -> String;
    /// How many cells are to be put back into a compartment, or taken out where negative: a
    /// sentence.
    fn to_put_back(&self, number: u8, cells: i64) -> String;
    /// A line of a file, by its number.
    fn line_of_file(&self, line: usize) -> String;
    /// Which page of a paper it is.
    fn page_of_paper(&self, paper: &str, page: usize, pages: usize) -> String;
    /// The return to the counts after an entry.
    fn return_to(&self, entry: usize) -> String;
    /// The mistake of an entry.
    fn withdraw(&self, entry: usize) -> String;
    /// That the record has grown since the page was shown: sentences.
    fn record_has_grown(&self, entries: usize) -> String;
}
