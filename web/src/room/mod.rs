//! The rooms: each reads its fields and gives its markup.
pub mod divide;
pub mod frame;
pub mod run;
pub mod shop;
pub mod thread;
