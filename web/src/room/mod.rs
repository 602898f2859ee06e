//! The rooms: each takes its form and gives its markup.
pub mod divide;
