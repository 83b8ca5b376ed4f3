//! Symmetric positive definite equations of plane meshes, with a few dense rows at the border.
//!
//! A mesh is cut in two by a line of nodes, each half again, and so on (nested dissection); the
//! lines are eliminated last. What is left of a part when its nodes are eliminated is a small
//! dense matrix over the nodes around it, so nearly all work is done on small dense matrices (the
//! multifrontal method). For n nodes of a plane mesh it is about 10 n^1.5 operations and
//! 8 n log2 n numbers. Sources: George, Nested dissection of a regular finite element mesh, SIAM
//! J. Numer. Anal. 10 (1973); Duff and Reid, ACM Trans. Math. Softw. 9 (1983).
//!
//! The order and the places of all entries are found once for a mesh. A factorisation is then
//! made for any choice of free nodes: the others are left out of the small matrices. The border
//! takes part in the small matrices as nodes around do, but is not eliminated.

mod bordered;
mod dense;
mod dissection;
mod factor;
mod graph;
mod pool;
mod symbolic;

pub(crate) use self::bordered::{Border, Bordered, Solved};
pub(crate) use self::dense::dot;
pub(crate) use self::graph::Graph;
pub(crate) use self::symbolic::{Entries, Free, Symbolic};

#[cfg(test)]
mod tests;
