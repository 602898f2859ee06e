//! Runs that are kept: the strip in the frame, and the list of all of them.
use super::desk::{Desk, Entry, Store};
use crate::words::run;
use maud::{Markup, html};

/// The strip shown in every room while a Run is open.
#[must_use]
pub fn strip(desk: &Desk) -> Markup {
    let newest = desk.resumable();
    html! {
        @if let Some(entry) = newest {
            div.strip id="run-strip" {
                button type="button" data-do="run-resume" data-value=(entry.id) {
                    span { (entry.title) ", " (run::at_of(entry.at, entry.of)) }
                    b { (run::RESUME) }
                }
            }
        }
    }
}

/// The way to the list, in the corner of every room.
#[must_use]
pub fn corner() -> Markup {
    html! { button.btn.runs type="button" data-do="run-list" { (run::ALL_RUNS) } }
}

/// Every Run on this device.
pub(super) fn screen(desk: &Desk) -> Markup {
    html! {
        main.run-list id="runs" tabindex="-1" {
            h1 { (run::RUNS) }
            @if let Store::Refused(why) = &desk.store { p.care { (run::why_not_saved(why)) } }
            @if !desk.refused.is_empty() { p.care role="alert" { (desk.refused) } }
            @if let Some(entry) = &desk.deleted {
                p.gone id="run-gone" role="status" {
                    (run::deleted(&entry.title)) " "
                    button.btn id="run-undelete" type="button" data-do="run-undelete" { (run::UNDO) }
                }
            }
            @if desk.runs.is_empty() { p { (run::NO_RUNS) } }
            ul { @for entry in desk.runs.iter().rev() { (row(entry)) } }
            label.btn.pick { (run::OPEN_FILE) input.vh type="file" accept=".json,application/json"; }
            button.btn type="button" data-do="run-list-close" { (run::CLOSE_LIST) }
        }
    }
}

fn row(entry: &Entry) -> Markup {
    html! {
        li id=(entry.id) {
            @if entry.fault.is_empty() {
                span { b { (entry.title) } br; @if entry.closed { (run::IS_CLOSED) } @else { (run::at_of(entry.at, entry.of)) } }
                button.btn type="button" data-do="run-resume" data-value=(entry.id) { (run::RESUME) }
            } @else {
                span.care { b { (entry.id) } br; (entry.fault) }
                span {}
            }
            button.btn type="button" data-do="run-delete" data-value=(entry.id)
                aria-label=([run::DELETE, " ", &entry.title].concat()) { (run::DELETE) }
        }
    }
}
