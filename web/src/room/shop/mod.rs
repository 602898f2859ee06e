//! Shop: the heads there are, each value typed as plain text and checked as it is
//! typed. One head is chosen; every answer uses it.
mod file;
mod form;
mod heads;
mod lists;

pub use file::{forget, open, save, take};
pub use heads::{choose, copy, delete, names, undo};

use super::notice::Notice;
use crate::fields::Fields;
use crate::owned::{self, Entry, GEARS_USUAL, PLATES_A, PLATES_B};
use crate::seam::Event;
use crate::words::shop as words;
use maud::{Markup, html};

/// What an event means to the Shop; false when it is none of its own.
pub fn event(fields: &mut Fields, event: Event) -> bool {
    if event.name == "shop-file-undo" {
        file::undo(fields);
        return true;
    }
    if lists::event(fields, &event) {
        file::forget(fields);
        return true;
    }
    let entry = Entry::ALL.into_iter().find(|entry| entry.name() == event.name);
    match (event.kind, event.name, entry) {
        ("type", _, Some(entry)) if form::is_tick(entry) => {
            owned::set(fields, entry, if event.value == "on" { "yes" } else { "no" });
        }
        ("type" | "press", _, Some(entry)) => owned::set(fields, entry, event.value),
        ("press", "shop-choose", _) => choose(fields, event.value.parse().unwrap_or(0)),
        ("press", "shop-add", _) => heads::add(fields),
        ("press", "shop-copy", _) => copy(fields),
        ("press", "shop-delete", _) => delete(fields),
        ("press", "shop-undo", _) => undo(fields),
        ("press", "shop-start", _) => start(fields, event.value),
        _ => return false,
    }
    file::forget(fields);
    true
}

/// One tap puts a usual set in place; what was there can be brought back.
fn start(fields: &mut Fields, set: &str) {
    let (entry, text) = match set {
        "plates-15" => (Entry::Plates, PLATES_A),
        "plates-24" => (Entry::Plates, PLATES_B),
        _ => (Entry::Gears, GEARS_USUAL),
    };
    let before = owned::typed(fields, entry).trim().to_owned();
    if before != text && !before.is_empty() {
        heads::remember(fields, "replaced");
    }
    owned::set(fields, entry, text);
}

/// The room as markup; `notice` is what is to be said of the device's store.
#[must_use]
pub fn screen(fields: &Fields, notice: &Notice) -> Markup {
    let head = owned::head(fields);
    html! {
        main.shop id="shop" {
            section.heads aria-labelledby="shop-title" {
                h1 id="shop-title" tabindex="-1" { (crate::words::SHOP) }
                p.why { (words::WHY) }
                (notice.line())
                (file::section(fields))
                (lists::jumps())
                (heads::section(fields))
            }
            div.owned {
                (form::section(fields, &head))
                (lists::section(fields))
            }
        }
    }
}

#[cfg(test)]
mod tests;
