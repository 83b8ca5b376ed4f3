//! Spanish: the page, lent from English.
use super::Spanish;
use crate::PictureWords;
use crate::page::*;
use case::question::*;
use case::*;
use cushion::*;
impl PageWords for Spanish {
    fn page(&self) -> &'static PageTexts {
        crate::ENGLISH.page()
    }
    fn step_of(&self, step: &str, at: usize, of: usize) -> String {
        crate::ENGLISH.step_of(step, at, of)
    }
    fn body_weight(&self, weight: Mass) -> String {
        crate::ENGLISH.body_weight(weight)
    }
    fn state_in_short(&self, standing: Standing<'_>) -> String {
        crate::ENGLISH.state_in_short(standing)
    }
    fn review_in_short(&self, standing: Standing<'_>) -> String {
        crate::ENGLISH.review_in_short(standing)
    }
    fn day(&self, on: Date) -> String {
        crate::ENGLISH.day(on)
    }
    fn changed_meanwhile(&self, now: Option<&str>) -> String {
        crate::ENGLISH.changed_meanwhile(now)
    }
    fn need_another_look(&self, count: usize) -> String {
        crate::ENGLISH.need_another_look(count)
    }
    fn still_missing(&self, count: usize) -> String {
        crate::ENGLISH.still_missing(count)
    }
    fn entry_of_list(&self, group: &str, at: usize) -> String {
        crate::ENGLISH.entry_of_list(group, at)
    }
    fn obliquity_means(&self, lower: Side, ends: [Length; 2]) -> String {
        crate::ENGLISH.obliquity_means(lower, ends)
    }
    fn compartment_said(&self, number: u8, words: &str, cells: u32) -> String {
        crate::ENGLISH.compartment_said(number, words, cells)
    }
    fn step_said(&self, more: bool, number: u8, words: &str) -> String {
        crate::ENGLISH.step_said(more, number, words)
    }
    fn change_from_stock(&self, cells: i64) -> String {
        crate::ENGLISH.change_from_stock(cells)
    }
    fn all_cells_said(&self, cells: u32, stock: u32) -> String {
        crate::ENGLISH.all_cells_said(cells, stock)
    }
    fn size_with_margins(&self, margins: &[SizeMargin]) -> String {
        crate::ENGLISH.size_with_margins(margins)
    }
    fn under_both(&self, left: Length, right: Length) -> String {
        crate::ENGLISH.under_both(left, right)
    }
    fn with_range(&self, central: &str, low: &str, high: &str) -> String {
        crate::ENGLISH.with_range(central, low, high)
    }
    fn plain_length(&self, length: Length) -> String {
        crate::ENGLISH.plain_length(length)
    }
    fn lean(&self, roll_deg: f64) -> String {
        crate::ENGLISH.lean(roll_deg)
    }
    fn slope(&self, pitch_deg: f64) -> String {
        crate::ENGLISH.slope(pitch_deg)
    }
    fn shares(&self, left: f64, right: f64) -> String {
        crate::ENGLISH.shares(left, right)
    }
    fn pressure_change(&self, rise: f64) -> String {
        crate::ENGLISH.pressure_change(rise)
    }
    fn compartment_of(&self, at: usize, of: usize) -> String {
        crate::ENGLISH.compartment_of(at, of)
    }
    fn put_in(&self, cells: u32, number: u8) -> String {
        crate::ENGLISH.put_in(cells, number)
    }
    fn other_than_planned(&self, number: u8, planned: u32, put_in: u32) -> String {
        crate::ENGLISH.other_than_planned(number, planned, put_in)
    }
    fn move_of(&self, at: usize, of: usize) -> String {
        crate::ENGLISH.move_of(at, of)
    }
    fn place_said(&self, place: Place) -> String {
        crate::ENGLISH.place_said(place)
    }
    fn expected_and_found(&self, side: Side, expected: Length, found: Option<Length>) -> String {
        crate::ENGLISH.expected_and_found(side, expected, found)
    }
    fn check_lacks(&self, parts: &[&str]) -> String {
        crate::ENGLISH.check_lacks(parts)
    }
    fn check_said(&self, check: &Check) -> String {
        crate::ENGLISH.check_said(check)
    }
    fn to_put_back(&self, number: u8, cells: i64) -> String {
        crate::ENGLISH.to_put_back(number, cells)
    }
    fn line_of_file(&self, line: usize) -> String {
        crate::ENGLISH.line_of_file(line)
    }
    fn page_of_paper(&self, paper: &str, page: usize, pages: usize) -> String {
        crate::ENGLISH.page_of_paper(paper, page, pages)
    }
    fn return_to(&self, entry: usize) -> String {
        crate::ENGLISH.return_to(entry)
    }
    fn withdraw(&self, entry: usize) -> String {
        crate::ENGLISH.withdraw(entry)
    }
    fn record_has_grown(&self, entries: usize) -> String {
        crate::ENGLISH.record_has_grown(entries)
    }
}
impl PictureWords for Spanish {
    fn spare_bag(&self) -> &'static str {
        crate::ENGLISH.spare_bag()
    }
    fn move_shows(&self, from: Place, to: Place, cells: u32) -> String {
        crate::ENGLISH.move_shows(from, to, cells)
    }
    fn least_left(&self, least: Length) -> String {
        crate::ENGLISH.least_left(least)
    }
    fn left_in_short(&self, left: &Spread<Length>) -> String {
        crate::ENGLISH.left_in_short(left)
    }
    fn section_picture_shows(
        &self,
        title: &str,
        sites: &[(SiteName, Spread<Length>)],
        least: Length,
    ) -> String {
        crate::ENGLISH.section_picture_shows(title, sites, least)
    }
    fn measure_name(&self, drawing: Drawing) -> &'static str {
        crate::ENGLISH.measure_name(drawing)
    }
    fn how_it_is_measured(&self, drawing: Drawing) -> &'static str {
        crate::ENGLISH.how_it_is_measured(drawing)
    }
    fn body_shows(&self) -> &'static str {
        crate::ENGLISH.body_shows()
    }
    fn lower_by(&self, by: Length) -> String {
        crate::ENGLISH.lower_by(by)
    }
    fn pelvis_shows(&self, lower: Option<Side>, by: Option<Length>) -> String {
        crate::ENGLISH.pelvis_shows(lower, by)
    }
}
