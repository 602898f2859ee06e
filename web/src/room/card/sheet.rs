//! The open card on screen.
use super::{View, step, values};
use crate::card::{Card, Lock, Open};
use crate::pieces::{Field, field, sign};
use crate::words::card as words;
use maud::{Markup, html};

pub(super) fn screen(view: View, open: &Open) -> Markup {
    let card = open.card();
    let (can_undo, can_redo) = open.can();
    let blocked = open.lock() == Lock::Elsewhere;
    // What is typed while another tab writes stays in its field until it is kept or let go.
    let typed = view.cards.uncounted().filter(|_| blocked).unwrap_or(&card);
    html! {
        div.card-bar {
            h1 id="card-title" tabindex="-1" { (words::CARD) }
            div.card-acts {
                button.btn id="cd-undo" type="button" data-do="cd-undo" disabled[!can_undo || blocked] { (words::UNDO) }
                button.btn id="cd-redo" type="button" data-do="cd-redo" disabled[!can_redo || blocked] { (words::REDO) }
                button.btn type="button" data-do="cd-save" { (words::SAVE) }
                @if !view.fields.get("card-site").is_empty() {
                    button.btn id="cd-link" type="button" data-do="cd-link" aria-expanded=(!view.fields.get("cd-link").is_empty()) { (words::LINK) }
                }
                button.btn.go type="button" data-do="cd-print" { (words::PRINT) }
            }
        }
        (state(view, open))
        @if !view.fields.get("cd-link").is_empty() { (link(open)) }
        article.card-sheet aria-label=(words::title(&card.title)) {
            (head(view, open, &card, typed))
            (cautions(&card))
            (step::section(view, &card))
            (values::section(&card))
            section aria-labelledby="card-notes" {
                div.field {
                    h2 id="card-notes" { label for="cd-notes" { (words::NOTES) } }
                    textarea id="cd-notes" name="cd-notes" rows="4" autocomplete="off" { (typed.notes) }
                }
            }
        }
        div.acts.card-end {
            button.btn type="button" data-do="cd-leave" { (words::ALL_CARDS) }
            button.btn type="button" data-do="cd-delete" data-value=(open.id()) { (words::DELETE_CARD) }
        }
    }
}

/// Whether it is saved, and who writes on it.
fn state(view: View, open: &Open) -> Markup {
    html! {
        div.card-state id="card-state" role="status" data-state=(if !open.unsaved().is_empty() { "refused" } else if open.saving() { "saving" } else { "saved" }) {
            @if !open.unsaved().is_empty() {
                p.care { (words::store::not_saved(open.unsaved())) }
                button.btn type="button" data-do="cd-retry" { (words::RETRY) }
            } @else if open.lock() == Lock::Elsewhere {
                p.care { (words::store::ELSEWHERE) }
                button.btn type="button" data-do="cd-take-over" { (words::TAKE_OVER) }
            } @else {
                p.why { (words::store::saved(open.saving(), open.saved_at())) }
            }
            @if let Some(note) = words::store::note(open.note()) { p.care { (note) } }
        }
        (uncounted(view))
    }
}

/// What does not count because another tab writes: it can be kept.
pub(super) fn uncounted(view: View) -> Markup {
    html! {
        @if let Some(card) = view.cards.uncounted() {
            div.offered.plate id="card-uncounted" {
                h2 { (words::store::uncounted(&card.title)) }
                p.why { (words::store::UNCOUNTED_WHY) }
                div.acts {
                    button.btn.go type="button" data-do="cd-copy" { (words::store::KEEP_COPY) }
                    button.btn type="button" data-do="cd-uncopy" { (words::LET_GO) }
                }
            }
        }
    }
}

/// The link that holds the card.
fn link(open: &Open) -> Markup {
    html! {
        div.card-link {
            @match open.link() {
                Ok(link) => {
                    p { a id="cd-the-link" href=(["#", &link].concat()) { (words::THE_LINK) } }
                    p.why { (words::LINK_WHY) }
                }
                Err(letters) => p.care { (words::store::too_long(letters)) },
            }
        }
    }
}

fn head(view: View, open: &Open, card: &Card, typed: &Card) -> Markup {
    let entry = |name: &str, label: &'static str, value: &str| {
        field(&Field { name, label, value, keys: "text", error: None })
    };
    let list = view.cards.list();
    let place = list.iter().position(|entry| entry.id == open.id()).map_or(1, |place| place + 1);
    html! {
        header.card-head {
            div.big-field { (entry("cd-title", words::PART, &typed.title)) }
            (entry("cd-job", words::JOB, &typed.job))
            (entry("cd-metal", words::METAL, &typed.metal))
            p.why { (words::card_of(place, list.len().max(1), card.done())) }
        }
    }
}

/// Every caution of its steps, once; with the steps that it belongs to, from 1.
fn gathered(card: &Card) -> Vec<(Vec<usize>, &str)> {
    let mut all: Vec<(Vec<usize>, &str)> = Vec::new();
    for (place, step) in card.steps.iter().enumerate() {
        for text in step.answer.iter().flat_map(|answer| &answer.cautions) {
            match all.iter_mut().find(|(_, own)| own == text) {
                Some((steps, _)) => steps.push(place + 1),
                None => all.push((vec![place + 1], text)),
            }
        }
    }
    all
}

/// The cautions as a list; nothing where there are none.
pub(super) fn gathered_list(card: &Card) -> Option<Markup> {
    let all = gathered(card);
    (!all.is_empty()).then(|| {
        html! {
            (sign())
            ul { @for (steps, text) in all { li { b { (words::of_steps(&steps)) } (text) } } }
        }
    })
}

fn cautions(card: &Card) -> Markup {
    html! {
        @if let Some(list) = gathered_list(card) {
            section.cautions aria-labelledby="card-cautions" {
                h2 id="card-cautions" { (words::MIND) }
                div.caut { (list) }
            }
        }
    }
}
