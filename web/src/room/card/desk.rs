//! No card is open: those there are, a new one, the demonstration, a file.
use super::View;
use crate::card::{Entry, Fault};
use crate::words::card as words;
use maud::{Markup, html};

pub(super) fn screen(view: View) -> Markup {
    let cards = view.cards;
    html! {
        div.card-bar { h1 id="card-title" tabindex="-1" { (words::CARD) } }
        @if !cards.store().is_empty() { p.care { (words::store::not_saved(cards.store())) } }
        @if let Some((name, why)) = cards.refused() { p.care role="alert" { (words::store::refused(name, why)) } }
        @if let Some(card) = cards.offered() {
            div.offered.plate id="card-offered" {
                h2 { (words::offered(&card.title)) }
                p.why { (words::OFFERED_WHY) }
                div.acts {
                    button.btn.go type="button" data-do="cd-keep" { (words::KEEP) }
                    button.btn type="button" data-do="cd-let-go" { (words::LET_GO) }
                }
            }
        }
        (super::sheet::uncounted(view))
        div id="card-undrop" role="status" {
            @if let Some(entry) = cards.dropped() {
                p { (words::deleted(&entry.title)) }
                button.btn id="cd-undelete" type="button" data-do="cd-undelete" { (words::UNDO) }
            }
        }
        p { (words::WHAT_CARDS_ARE) }
        div.acts {
            button.btn.go id="cd-begin" type="button" data-do="cd-begin" { (words::NEW_CARD) }
            @if cards.list().is_empty() {
                button.btn id="cd-demo" type="button" data-do="cd-demo" { (words::DEMO) }
            }
            label.btn.pick { (words::OPEN_FILE) input.vh type="file" accept=".json,application/json"; }
        }
        @if cards.list().is_empty() { p.why { (words::DEMO_WHY) } }
        @else {
            h2 { (words::CARDS_HERE) }
            ul.card-list { @for entry in cards.list().iter().rev() { (row(entry)) } }
        }
    }
}

fn row(entry: &Entry) -> Markup {
    html! {
        li id=(entry.id) {
            div { b { (words::title(&entry.title)) } span.in { (words::in_list(entry)) } }
            @match entry.fault {
                Fault::None => button.btn type="button" data-do="cd-resume" data-value=(entry.id) aria-label=(words::about(words::OPEN, &entry.title)) { (words::OPEN) },
                Fault::Partly => button.btn type="button" data-do="cd-rescue" data-value=(entry.id) { (words::RESCUE) },
                Fault::Damaged | Fault::Newer => span {},
            }
            @if entry.fault != Fault::Newer {
                button.btn type="button" data-do="cd-delete" data-value=(entry.id) aria-label=(words::about(words::DELETE, &entry.title)) { (words::DELETE) }
            }
        }
    }
}
