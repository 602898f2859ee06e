//! Handturn's calculation core: what a drawing asks for, turned into settings
//! that hands can make on a dividing head.
//!
//! Counts, ratios and indexing angles are integer fractions from the text a
//! person types to the answer on the page. Nothing here allocates, panics or
//! rounds without saying so.
//!
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

pub mod bench;
pub mod bounds;
pub mod card;
pub mod dial;
pub mod divide;

pub mod error;
pub mod gear;

pub mod handle;
pub mod head;
pub mod list;
pub mod measure;

pub mod number;
pub mod plate;
pub mod run;
mod text;

pub mod thread;
pub mod train;

pub use error::{Cause, Error, Field};
pub use list::List;
pub use text::Text;
