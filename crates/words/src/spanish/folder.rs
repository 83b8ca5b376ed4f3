//! Spanish: papers of one client that lie in one folder, and which of them hold.

use case::{OtherPapers, PlanMark};

use super::parts::{counted, list};

/// The warning, for whoever prints.
pub(super) fn warning(papers: &OtherPapers) -> String {
    let count: usize = papers.others.iter().map(|own| own.files.len()).sum();
    let of: Vec<String> = papers.others.iter().map(|own| plan(own.mark.as_ref())).collect();
    let (files, code) = (counted(count, ["archivo", "archivos"]), &papers.code);
    let beside =
        format!("junto a estos papeles de {code} la carpeta tiene {files} de {}", list(&of));
    if papers.has_later() {
        format!(
            "{beside}: un plan posterior al de este archivo, así que mire cuál es el archivo más nuevo de la persona antes de que nadie use estos papeles"
        )
    } else {
        format!("{beside}: están SUSTITUIDOS, así que quítelos, y táchelos donde se imprimieron")
    }
}

/// The text that lies in the folder.
pub(super) fn note(papers: &OtherPapers) -> String {
    let printed = plan(Some(&papers.printed));
    let mut lines = vec![
        format!("Papeles de {} en esta carpeta", papers.code),
        String::new(),
        format!("Impreso por último: {printed}."),
    ];
    if papers.others.is_empty() {
        lines.push("Aquí no hay otros.".to_owned());
    } else if papers.has_later() {
        lines.push(
            "NO USE AÚN NINGUNO de estos papeles: algunos son de un plan posterior. Pregunte cuál es el archivo más nuevo de la persona."
                .to_owned(),
        );
    } else {
        lines.push(
            "Todos los demás están SUSTITUIDOS. No los use. Quítelos, y táchelos donde se imprimieron."
                .to_owned(),
        );
    }
    for own in &papers.others {
        let state = if papers.is_later(own) { "POSTERIOR" } else { "SUSTITUIDO" };
        lines.extend([String::new(), format!("{state}: {}", plan(own.mark.as_ref()))]);
        lines.extend(own.files.iter().map(|file| format!("- {file}")));
    }
    lines.push(String::new());
    lines.join("\n")
}

/// A plan as its papers call it.
fn plan(mark: Option<&PlanMark>) -> String {
    match mark {
        Some(PlanMark { number, word }) => format!("plan {number}, clave {word}"),
        None => "un plan que los nombres no dicen".to_owned(),
    }
}
