//! plugin-sdk.
