//! What stands on the papers.:

/// What stands on the papers..
pub trait PaperWords {}
