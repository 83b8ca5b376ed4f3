//! English: what counts change for a client, wanted or not.

use case::{BeforeAfter, Costs, GoalChange, SiteChange, ToldFrom};

use super::English;
use super::parts::capital;
use crate::{BasicWords, GoalWords};

impl English {
    /// A heading and a line for each change.
    pub(super) fn cost_lines(&self, costs: &Costs) -> Vec<String> {
        let mut lines = vec![heading(costs.from).to_owned()];
        let goals = costs.goals.iter().filter_map(|goal| self.goal_change(goal));
        let changes = self.changes(costs, |site| self.site_change(site));
        lines.extend(goals.chain(changes).map(|line| format!("  {line}")));
        lines
    }

    /// The same without bare pressures and without the goals, of which paper says more; and said to
    /// be expected.
    pub(super) fn cost_lines_on_paper(&self, costs: &Costs) -> Vec<String> {
        let mut lines = vec![heading_on_paper(costs.from).to_owned()];
        lines.extend(self.changes(costs, |site| self.site_change_on_paper(site)));
        lines
    }

    fn changes(&self, costs: &Costs, site: impl Fn(&SiteChange) -> String) -> Vec<String> {
        let mut lines: Vec<String> = costs.careful.iter().map(site).collect();
        lines.push(format!(
            "The cushion turns the pelvis, from how it sits by itself: to a side {}; front to back {}.",
            turns(&costs.roll_deg, ["left side up", "right side up"], true),
            turns(&costs.pitch_deg, ["front down", "front up"], false)
        ));
        let BeforeAfter { before, after } = costs.side_share;
        lines.push(format!(
            "Load left and right: {} and {}, then {} and {}. Under the thighs: {}, then {}.",
            percent(before.left),
            percent(before.right),
            percent(after.left),
            percent(after.right),
            percent(costs.thigh_share.before),
            percent(costs.thigh_share.after)
        ));
        lines.push(self.risen(&costs.risen));
        lines
    }

    /// None where the goal has no number on either counts.
    fn goal_change(&self, goal: &GoalChange) -> Option<String> {
        let said = |number: Option<case::GoalNumber>| number.map(|own| self.expected(&own));
        let BeforeAfter { before, after } = goal.number.map(said);
        let after = after?;
        let want = capital(&self.goal(&goal.want));
        Some(match before {
            Some(before) if before != after => format!("{want}: {before}, then {after}."),
            Some(_) => format!("{want}: unchanged, {after}."),
            None => format!("{want}: {after}."),
        })
    }

    /// Of a site with an injury or at risk, whatever the change.
    fn site_change(&self, change: &SiteChange) -> String {
        let BeforeAfter { before, after } = change.surface;
        format!(
            "{}, which is injured or at risk: {:.1} kPa, then {:.1} ({}), without soft tissue.",
            capital(self.site(change.site)),
            before.to_kpa(),
            after.to_kpa(),
            more_or_less(change.rise())
        )
    }

    fn site_change_on_paper(&self, change: &SiteChange) -> String {
        let (site, rise) = (capital(self.site(change.site)), more_or_less(change.rise()));
        format!("{site}, which is injured or at risk: pressure {rise}, without soft tissue.")
    }

    fn risen(&self, risen: &[SiteChange]) -> String {
        let each: Vec<String> = (risen.iter())
            .map(|own| format!("{} ({})", self.site(own.site), more_or_less(own.rise())))
            .collect();
        if each.is_empty() {
            "No other site gets more than a tenth more pressure.".to_owned()
        } else {
            format!("More than a tenth more pressure at: {}.", each.join(", "))
        }
    }
}

fn heading(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "What these counts change, from the stock fill:",
        ToldFrom::Passed => "What these counts change, from those that passed the last check:",
        ToldFrom::Present => "What this changes, from what is in the cushion:",
    }
}

fn heading_on_paper(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "Expected change from the stock fill",
        ToldFrom::Passed => "Expected change from the counts that passed the last check",
        ToldFrom::Present => "Expected change from what is in the cushion",
    }
}

/// The counts that a change is told from, within a sentence.
pub(super) fn counts_told_from(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "the stock fill",
        ToldFrom::Passed => "the counts that passed the last check",
        ToldFrom::Present => "what is in the cushion",
    }
}

/// A turn before and after; `ways` are those of less and of more than none.
fn turns(change: &BeforeAfter<f64>, ways: [&str; 2], to_a_side: bool) -> String {
    let one = |degrees: f64| {
        let tenths = (degrees * 10.0).round() / 10.0;
        match tenths {
            0.0 if to_a_side => "level".to_owned(),
            0.0 => "0.0 degrees".to_owned(),
            _ => format!("{:.1} degrees {}", tenths.abs(), ways[usize::from(tenths > 0.0)]),
        }
    };
    let (before, after) = (one(change.before), one(change.after));
    if before == after { format!("{after} as before") } else { format!("{before}, then {after}") }
}

fn percent(share: f64) -> String {
    format!("{:.0} %", 100.0 * share)
}

pub(super) fn more_or_less(rise: f64) -> String {
    match (100.0 * rise).round() {
        0.0 => "the same".to_owned(),
        more if more > 0.0 => format!("{more:.0} % more"),
        less => format!("{:.0} % less", -less),
    }
}
