//! Handturn's page and JavaScript package: no trade arithmetic of their own.
//!
//! # The seam between browser and page
//!
//! The page is one pure function, [`page::turn`]: *(what the page remembers, what
//! happened)* → *(what to put where, what to remember)*. The browser's side
//! (`web/page/app.js`) holds the state as a text that only this crate reads, hands
//! it in with every event and carries out the [`seam::Effect`]s that come back.
//! Nothing lives in the wasm between calls, so a trap can spoil nothing, and every
//! screen is tested on the host as text.
//!
//! ```text
//! browser event ──► seam::Event ──► room::*::event(&mut state)   what it means
//!                                   room::*::screen(&state)      the markup now
//!               ◄── [seam::Effect] ◄─ put, focus, state, ...
//! ```
//!
//! **Events** ([`seam::Event`]: kind, name, value, time in ms):
//!
//! | kind | sent when | name | value |
//! |---|---|---|---|
//! | `open` | once, first | the address after `#` | `file` or `site` |
//! | `type` | a field with a `name` changed, at every key | its `name` | what stands in it; a tick box: `on` or nothing |
//! | `press` | something with `data-do` was pressed | `data-do` | `data-value` |
//! | `key` | an arrow, Page Up/Down, Home, End, Enter, Escape or Ctrl+Z | `PageDown`, .. `Undo`; `held PageDown` while it repeats | `field NAME` or `button NAME` when one has the focus |
//! | `seen` | the page came to the front or left it | `visible` or `hidden` | |
//! | `version` | a newer version lies ready on this device | | |
//!
//! **Markup.** The page's elements with an id are *regions*; an effect
//! [`seam::Effect::Put`] says what a region holds. The browser's side changes only
//! what differs, so focus, scroll and a half-typed number survive, and a whole
//! screen may be put at every key. Give an `id` to every element that comes and
//! goes among others of its kind (rows, panels), and to whatever takes the focus.
//! Write with `maud::html!`, which escapes text and attribute values; `PreEscaped`
//! is not used. The content policy refuses `style="…"` and `on…="…"`: use classes,
//! `data-do` and SVG attributes.
//!
//! **Adding an event or an effect** is one arm here and one in `web/page/app.js`.

#[cfg(feature = "package")]
pub mod api;
pub mod draw;
pub mod fields;
#[cfg(feature = "page")]
pub mod glue;
pub mod owned;
pub mod page;
pub mod room;
pub mod seam;
