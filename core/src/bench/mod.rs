//! Small sums between the big questions, one file a sum.
pub mod fit;
pub mod stack;
pub mod tilt;
