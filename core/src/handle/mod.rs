//! The handle counted: two lines of an encoder on its shaft, decoded into a
//! count, and the count compared with where the handle has to go.
//!
//! Counting uses small integers and one table, because it runs at every edge;
//! targets are worked out once for each position, exactly.
mod distance;
mod quadrature;

pub use distance::{Aim, Approach, Distance};
pub use quadrature::{Counter, Lines, Step};
