//! plugin-host.
