//! Small sums between the big questions, one file a sum.
pub mod disks;
pub mod fit;
pub mod sagitta;
pub mod stack;
pub mod taper;
pub mod tilt;
