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
//! | `wide` | before `open`, and when it changes: is there room for whole drawings? | `yes` or `no` | |
//! | `zone` | before `open` | minutes that the clock here is before that of Greenwich | |
//! | `print` | the browser is about to print, or has | `before` or `after` | |
//! | `version` | a newer version lies ready on this device | | |
//! | `storage` | the store answered, or fails later on | `ready` or `refused` | why |
//! | `stored-page` | at the start, before `open`; from another tab | nothing; `elsewhere` | what [`seam::Effect::KeepPage`] kept |
//! | `unread` | before `open`: something that can't be read lies set aside | `now` where that was done just now | |
//! | `stored` | at the start, and when a Run in the store has changed | the Run | its lines: see [`keep::from_lines`] |
//! | `gone` | a Run has been taken out of the store | the Run | |
//! | `kept` | stored and read back | the Run | `begun`, `dropped` or the event's number; the time here |
//! | `unkept` | not stored | the Run | the same; why: `full`, `taken`, `behind`, `gone`, .. |
//! | `slow` | the store takes long | the Run | as above |
//! | `lock` | who counts on a Run | the Run | `held`, `elsewhere`, `lost` or `failed WHY` |
//! | `lasting` | whether the browser keeps the store for good | `yes` or `no` | |
//! | `screen` | whether the screen stays on | `on` or `off` | |
//! | `file` | a file was opened | its name | its text |
//!
//! **Markup.** The page's elements with an id are *regions*; an effect
//! [`seam::Effect::Put`] says what a region holds. The browser's side changes only
//! what differs, so focus, scroll and a half-typed number survive, and a whole
//! screen may be put at every key: subtrees that are the same are passed over whole,
//! and what lies outside the screen is laid out when it comes there. Give an `id` to every element that comes and
//! goes among others of its kind (rows, panels), and to whatever takes the focus.
//! Write with `maud::html!`, which escapes text and attribute values; `PreEscaped`
//! is not used, but for markup of this page that is taken out of its place whole (`room/told.rs`). The content policy refuses `style="…"` and `on…="…"`: use classes,
//! `data-do` and SVG attributes.
//!
//! **At first open** the page already holds the frame and the field for parts: the
//! build puts them there from the engine's own first screen (`web/tool/bundle.mjs`).
//! What is typed and pressed before the engine is ready is handed in after `open`,
//! and only the last screen of those first events is drawn.
//!
//! **Adding an event or an effect** is one arm here and one in `web/page/app.js`.

#[cfg(feature = "package")]
pub mod api;
pub mod card;
pub mod draw;
pub mod fields;
#[cfg(feature = "page")]
pub mod glue;
pub mod keep;
#[cfg(all(target_arch = "wasm32", feature = "page", not(feature = "package")))]
mod memory;
pub mod owned;
pub mod page;
pub mod pieces;
pub mod room;
pub mod seam;
pub mod words;
