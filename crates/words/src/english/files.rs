//! English:  findings about texts, questions, why work on them ends.

use super::English;

impl crate::FileWords for English {}
