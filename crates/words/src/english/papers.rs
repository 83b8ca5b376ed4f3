//! English: what stands on the papers.

use super::English;

impl crate::PaperWords for English {}
