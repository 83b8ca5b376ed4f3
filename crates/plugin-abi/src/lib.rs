//! plugin-abi.
