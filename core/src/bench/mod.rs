//! Small sums between the big questions, one file a sum.
pub mod bend;
pub mod chain;
pub mod counterbore;
pub mod disks;
pub mod fit;
pub mod former;
pub mod joggle;
pub mod rivet;
pub mod sagitta;
pub mod shop_fit;
pub mod shrink;
pub mod spring;
pub mod stack;
pub mod taper;
pub mod tilt;
pub mod wire;
