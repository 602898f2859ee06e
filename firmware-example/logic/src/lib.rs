//! The readout on the handle, without its board: states, screens and journal.
//!
//! The board gives [`App::turn`] the time, a [`Sample`] of the handle and the
//! levels of three buttons, again and again; it gets the levels of lamp and
//! buzzer back. Memory chip and screen are reached through embedded-hal's
//! traits. Nothing here knows a pin, waits for an interrupt or allocates.
//!
//! ```text
//! edges ── Sample ──┐                     ┌── lamp, buzzer
//! buttons ─ Press ──┴► Readout ── View ───┤
//!                        │  ▲             └── Frame ── Panel ── screen
//!                     Record │ stored?
//!                        ▼  │
//!                      Journal ── memory chip
//! ```
#![no_std]
#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing,
        clippy::arithmetic_side_effects,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_possible_wrap,
        reason = "a test may stop where it stands; the plain build keeps every lint"
    )
)]

mod app;
mod buttons;
mod chip;
mod draw;
pub mod edges;
mod entry;
mod frame;
mod job;
mod journal;
mod panel;
mod readout;
mod record;
mod settings;
mod signal;
mod view;

pub use app::{App, Out};
pub use buttons::{Buttons, Press};
pub use chip::{Chip, Fault};
pub use draw::draw;
pub use edges::{Edges, Sample};
pub use entry::Entry;
pub use frame::{Frame, PAGES, WIDTH};
pub use job::{Job, Refused};
pub use journal::{Journal, SLOT, SLOTS};
pub use panel::Panel;
pub use readout::{Readout, Start, Wish};
pub use record::{Place, Record};
pub use settings::{Item, Settings};
pub use signal::{Signal, Sound};
pub use view::{Choice, Note, Position, View, Way};
