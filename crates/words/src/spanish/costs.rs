//! Spanish: what counts change for a client, wanted or not.

use case::{BeforeAfter, Costs, GoalChange, SiteChange, ToldFrom};

use super::Spanish;
use super::parts::{capital, decimal};
use crate::{BasicWords, GoalWords};

impl Spanish {
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
            "El cojín gira la pelvis, respecto a como queda sola: de lado, {}; de delante a atrás, {}.",
            turns(&costs.roll_deg, ["con el lado izquierdo arriba", "con el lado derecho arriba"], true),
            turns(&costs.pitch_deg, ["con el frente abajo", "con el frente arriba"], false)
        ));
        let BeforeAfter { before, after } = costs.side_share;
        lines.push(format!(
            "Carga a izquierda y derecha: {} y {}; después {} y {}. Bajo los muslos: {}; después {}.",
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
            Some(before) if before != after => format!("{want}: {before}; después {after}."),
            Some(_) => format!("{want}: sin cambio, {after}."),
            None => format!("{want}: {after}."),
        })
    }

    /// Of a site with an injury or at risk, whatever the change.
    fn site_change(&self, change: &SiteChange) -> String {
        let BeforeAfter { before, after } = change.surface;
        format!(
            "{}, con lesión o en riesgo: {} kPa; después {} ({}), sin contar el tejido blando.",
            capital(self.site(change.site)),
            decimal(before.to_kpa(), 1),
            decimal(after.to_kpa(), 1),
            more_or_less(change.rise())
        )
    }

    fn site_change_on_paper(&self, change: &SiteChange) -> String {
        let (site, rise) = (capital(self.site(change.site)), more_or_less(change.rise()));
        format!("{site}, con lesión o en riesgo: presión {rise}, sin contar el tejido blando.")
    }

    fn risen(&self, risen: &[SiteChange]) -> String {
        let each: Vec<String> = (risen.iter())
            .map(|own| format!("{} ({})", self.site(own.site), more_or_less(own.rise())))
            .collect();
        if each.is_empty() {
            "En ningún otro sitio sube la presión más de una décima parte.".to_owned()
        } else {
            format!("La presión sube cerca de una décima parte o más en: {}.", each.join(", "))
        }
    }
}

fn heading(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "Qué cambian estas cantidades, desde el llenado de serie:",
        ToldFrom::Passed => {
            "Qué cambian estas cantidades, desde las que pasaron la última comprobación:"
        }
        ToldFrom::Present => "Qué cambia esto, desde lo que hay en el cojín:",
    }
}

fn heading_on_paper(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "Cambio esperado desde el llenado de serie",
        ToldFrom::Passed => {
            "Cambio esperado desde las cantidades que pasaron la última comprobación"
        }
        ToldFrom::Present => "Cambio esperado desde lo que hay en el cojín",
    }
}

/// The counts that a change is told from, within a sentence.
pub(super) fn counts_told_from(from: ToldFrom) -> &'static str {
    match from {
        ToldFrom::Stock => "el llenado de serie",
        ToldFrom::Passed => "las cantidades que pasaron la última comprobación",
        ToldFrom::Present => "lo que hay en el cojín",
    }
}

/// A turn before and after; `ways` are those of less and of more than none.
fn turns(change: &BeforeAfter<f64>, ways: [&str; 2], to_a_side: bool) -> String {
    let one = |degrees: f64| {
        let tenths = (degrees * 10.0).round() / 10.0;
        match tenths {
            0.0 if to_a_side => "nivelada".to_owned(),
            0.0 => "0,0 grados".to_owned(),
            _ => format!("{} grados {}", decimal(tenths.abs(), 1), ways[usize::from(tenths > 0.0)]),
        }
    };
    let (before, after) = (one(change.before), one(change.after));
    if before == after {
        format!("{after} como antes")
    } else {
        format!("{before}; después {after}")
    }
}

fn percent(share: f64) -> String {
    format!("{:.0}\u{a0}%", 100.0 * share)
}

pub(super) fn more_or_less(rise: f64) -> String {
    match (100.0 * rise).round() {
        0.0 => "igual".to_owned(),
        more if more > 0.0 => format!("un {more:.0}\u{a0}% más"),
        less => format!("un {:.0}\u{a0}% menos", -less),
    }
}
