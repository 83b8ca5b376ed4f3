//! Witnesses that need what is private: all counts around an answer, shared slopes, what is kept in reserve,
//! who sat where they were checked, goals that are taken up again, simulated clients, and the audit of what is
//! decided.

mod audit;
mod brink;
mod dice;
mod levels;
mod sat_there;
mod seated;
mod shared_slopes;
mod simulated_clients;
mod taken_up_again;
mod whole_counts;
