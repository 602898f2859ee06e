//! The card on paper: black on white, its heading on every sheet, with drawings, empty
//! squares to tick and lines to write on.
use super::values::amount_text;
use super::{View, put, sheet as screen};
use crate::card::{Card, Item, Step, found};
use crate::owned;
use crate::room::told::Entry;
use crate::words::card as words;
use handturn::card::Found;
use maud::{Markup, html};

/// Lines to write on.
const LINES: usize = 4;

/// The drawings and the working of an answer.
pub(super) fn drawn(entry: &Entry) -> Markup {
    html! {
        @if !entry.drawing.0.is_empty() { div.drawings { (entry.drawing) } }
        @if !entry.working.0.is_empty() { div.by-hand { h3 { (crate::words::BY_HAND) } (entry.working) } }
    }
}

/// All of the card.
pub(super) fn sheet(view: View, card: &Card) -> Markup {
    let cautions = screen::gathered_list(card);
    html! {
        div.paper aria-hidden="true" {
            div.paper-head {
                div {
                    div { p.job-of { (card.job) } p.part { (words::title(&card.title)) } }
                    dl {
                        div { dt { (words::METAL) } dd { (card.metal) } }
                        div { dt { (words::DATE) } dd.blank {} }
                    }
                }
            }
            div.paper-body {
                @if let Some(list) = cautions { section.caut { (list) } }
                section { (order(card)) }
                @if !card.values.is_empty() { section { (values(card)) } }
                @for (place, step) in card.steps.iter().enumerate() { (one(view, place, step)) }
                section.notes {
                    h2 { (words::NOTES) }
                    @for line in card.notes.lines() { p { (line) } }
                    @for _ in 0..LINES { div.write {} }
                }
                footer { (words::printed_from(&owned::head(view.fields))) }
            }
        }
    }
}

/// What is done, in order, with a square for each.
fn order(card: &Card) -> Markup {
    html! {
        h2 { (words::IN_THIS_ORDER) }
        ol.order {
            @for (place, step) in card.steps.iter().enumerate() {
                li { (square(step.done_ms.is_some())) span { (place + 1) ". " (words::title(&step.text)) } }
            }
            li { (square(false)) span { (words::WASH_OFF) } }
        }
    }
}

/// A square, crossed where it is done.
fn square(done: bool) -> Markup {
    html! {
        svg.sq viewBox="0 0 14 14" { path d=(if done { "M1 1h12v12H1zM1 1l12 12M13 1L1 13" } else { "M1 1h12v12H1z" }) {} }
    }
}

fn values(card: &Card) -> Markup {
    let row = |item: &Item, found: &Found| {
        let text = |amount: &Result<_, _>| {
            amount.as_ref().map_or_else(
                |_| String::new(),
                |amount| {
                    let (main, under) = amount_text(*amount);
                    if under.is_empty() { main } else { [&*main, ", ", &under].concat() }
                },
            )
        };
        html! {
            tr {
                th { (item.name) }
                td { (item.drawing) }
                td { (item.measured) }
                td { (text(&found.in_force)) }
            }
        }
    };
    html! {
        h2 { (words::VALUES) }
        table {
            thead { tr { th { (words::NAME) } th { (words::DRAWING) } th { (words::MEASURED) } th { (words::IN_FORCE) } } }
            tbody { @for (item, found) in card.values.iter().zip(found(card)) { (row(item, &found)) } }
        }
    }
}

/// A step in full.
fn one(view: View, place: usize, step: &Step) -> Markup {
    let Some(answer) = &step.answer else { return grid(step) };
    let entry = put::anew(answer, view.fields, view.desk);
    let new = view.today.of(step.id).is_some_and(|seen| seen.new.is_some());
    html! {
        section.answer {
            h2 { (place + 1) ". " (words::title(&step.text)) }
            div.answer-parts {
                ul.lines { @for line in &answer.lines { li { (line) } } }
                @if let Some(entry) = &entry {
                    @if new { p.why { (words::DIFFERS) " " (words::DRAWN_TODAY) } }
                    (drawn(entry))
                }
            }
        }
        (grid(step))
    }
}

/// A square for each part.
fn grid(step: &Step) -> Markup {
    html! {
        @if step.parts > 0 {
            section.ticks {
                h3 { (words::title(&step.text)) ": " (words::cut(step)) }
                ol { @for part in 1..=step.parts { li.ten[part % 10 == 0].cut[step.cut.has(part)] { (part) } } }
            }
        }
    }
}
