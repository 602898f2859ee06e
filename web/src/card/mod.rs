//! Cards: what belongs to one part, and how it is kept.
//!
//! A [`Card`] is plain data. It changes only by a [`Change`], each of which is one entry
//! of a log in the store (`card-…`, beside the Runs): so what was undone can be done
//! again, and all of it survives a restart. [`Cards`] is what the page remembers: the
//! cards there are, the one that is open, what the store has confirmed of it.
//!
//! The room calls, and passes on the effects that come back:
//!
//! | to | call |
//! |---|---|
//! | show the open card | [`Cards::open`] → [`Open::card`], [`Open::lock`], [`Open::note`], [`Open::unsaved`], [`Open::saving`] |
//! | list all | [`Cards::list`], [`Cards::offered`] (a card out of a link: keep it or not) |
//! | change it | [`Cards::change`] with a [`Change`]; also [`Change::Undo`] and [`Change::Redo`] |
//! | begin, open, leave, take out | [`Cards::begin`], [`Cards::resume`], [`Cards::leave`], [`Cards::drop`], [`Cards::undrop`] |
//! | write where another tab does | [`Cards::take_over`] |
//! | save what does not count from being lost | [`Cards::uncounted`], [`Cards::keep_uncounted`] |
//! | try the store again | [`Cards::retry`] |
//! | hand it over | [`Cards::file`], [`Open::link`] |
//!
//! `storage`, `stored`, `kept`, `lock`, `file` and `open` events are heard by
//! [`Cards::heard`]; words for what it has to say stand in `words/card/store.rs`.
mod cards;
mod heard;
mod log;
mod model;
mod open;
mod pack;
mod share;
#[cfg(test)]
mod tests;
mod text;

pub use cards::{Cards, Entry, Fault, is_open};
pub use log::Change;
pub use model::{Answer, Card, Cut, Item, SCHEMA, Step, found};
pub use open::{Lock, Note, Open};
pub use share::{FILE_NAME, LONGEST_LINK, Part, Refused};
