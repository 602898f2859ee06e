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
        (state(open))
        @if !view.fields.get("cd-link").is_empty() { (link(open)) }
        article.card-sheet aria-label=(words::title(&card.title)) {
            (head(view, open, &card))
            (cautions(&card))
            (step::section(view, &card))
            (values::section(&card))
            section aria-labelledby="card-notes" {
                div.field {
                    h2 id="card-notes" { label for="cd-notes" { (words::NOTES) } }
                    textarea id="cd-notes" name="cd-notes" rows="4" autocomplete="off" { (card.notes) }
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
fn state(open: &Open) -> Markup {
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

fn head(view: View, open: &Open, card: &Card) -> Markup {
    let entry = |name: &str, label: &'static str, value: &str| {
        field(&Field { name, label, value, keys: "text", error: None })
    };
    let list = view.cards.list();
    let place = list.iter().position(|entry| entry.id == open.id()).map_or(1, |place| place + 1);
    html! {
        header.card-head {
            div.big-field { (entry("cd-title", words::PART, &card.title)) }
            (entry("cd-job", words::JOB, &card.job))
            (entry("cd-metal", words::METAL, &card.metal))
            p.why { (words::card_of(place, list.len().max(1), card.done())) }
        }
    }
}

/// Every caution of its steps, once.
pub(super) fn gathered(card: &Card) -> Vec<&str> {
    let mut all: Vec<&str> = Vec::new();
    let answers = card.steps.iter().filter_map(|step| step.answer.as_ref());
    for text in answers.flat_map(|answer| &answer.cautions) {
        if !all.contains(&text.as_str()) {
            all.push(text);
        }
    }
    all
}

fn cautions(card: &Card) -> Markup {
    let all = gathered(card);
    html! {
        @if !all.is_empty() {
            section.cautions aria-labelledby="card-cautions" {
                h2 id="card-cautions" { (words::MIND) }
                div.caut { (sign()) ul { @for text in all { li { (text) } } } }
            }
        }
    }
}
