//! Witnesses that need what is private: all counts around an answer, simulated clients, and the audit
//! of what is decided.

mod audit;
mod dice;
mod simulated_clients;
mod whole_counts;
