//! A bar on stderr for what takes long.

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use words::Told;

use crate::say;

/// A bar for so many of something, which a terminal shows and a pipe does not.
pub(crate) fn bar(count: usize, of: &str) -> ProgressBar {
    let bar = ProgressBar::with_draw_target(Some(count as u64), ProgressDrawTarget::stderr());
    let told = say::language().told(&Told::Bar { of });
    let template = format!("{{wide_bar}} {told}");
    if let Ok(style) = ProgressStyle::with_template(&template) {
        bar.set_style(style);
    }
    bar
}
