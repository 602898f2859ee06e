//! Small sums between the big questions, one file a sum.
pub mod stack;
pub mod tilt;
