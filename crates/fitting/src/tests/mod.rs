//! Witnesses that need what is private: all counts around an answer, shared slopes, simulated clients,
//! and the audit of what is decided.

mod audit;
mod dice;
mod shared_slopes;
mod simulated_clients;
mod whole_counts;
