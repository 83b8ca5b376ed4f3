//! Witnesses that need what is private: all counts around an answer, and simulated clients.

mod simulated_clients;
mod whole_counts;
