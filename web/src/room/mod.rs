//! The rooms: each reads its fields and gives its markup.
pub mod bench;
pub mod card;
pub mod divide;
pub mod frame;
pub mod gear;
mod lines;
pub mod notice;
mod read;
pub mod run;
pub mod shop;
mod steps;
pub mod thread;
pub mod told;
#[cfg(test)]
mod visit;
