//! Bench: the small sums between the big questions, listed by what the hands do and
//! found by their words. Each is a table in `sums/`; what is here serves them all.
mod entry;
mod find;
mod paper;
pub(crate) mod sum;
pub(crate) mod sums;
#[cfg(test)]
mod tests;

pub use entry::{asks, entry};

use crate::fields::Fields;
use crate::pieces::{Field, caution, field, field_error, segmented, sign};
use crate::room::steps::Wrong;
use crate::seam::{Effect, Event};
use crate::words::{self, bench as says, errors::said};
use maud::{Markup, html};
use sum::{Answer, Entry, Group, Kind, Sum, Table};
use sums::EVERY;

/// The sum that stands open, if one was chosen.
fn open(fields: &Fields) -> Option<&'static Sum> {
    let key = fields.get("bench");
    EVERY.iter().copied().find(|sum| sum.key == key)
}

/// The room as markup. Where there is room for list and sum, the first sum stands beside
/// the list until one is chosen.
#[must_use]
pub fn screen(fields: &Fields) -> Markup {
    let chosen = open(fields);
    let shown = chosen.or(EVERY.first().copied());
    html! {
        main.bench.one[chosen.is_some()] id="main" {
            div.bench-list id="be-list" {
                h1 id="bench-title" tabindex="-1" { (says::BENCH) }
                (field(&Field { name: "bench-find", label: says::FIND, value: fields.get("bench-find"), keys: "text", error: None }))
                (list(fields, chosen, shown))
            }
            @if let Some(sum) = shown { (one(fields, sum)) }
        }
    }
}

fn list(fields: &Fields, chosen: Option<&Sum>, shown: Option<&Sum>) -> Markup {
    let is = |sum: &Sum, other: Option<&Sum>| other.is_some_and(|other| other.key == sum.key);
    let found = find::found(fields.get("bench-find"));
    let row = |sum: &'static Sum| {
        html! {
            li {
                button.bench-row id=(["be-row-", sum.key].concat()) type="button" data-do="bench" data-value=(sum.key)
                    aria-current=[is(sum, chosen).then_some("true")] data-beside=[is(sum, shown).then_some("")] {
                    svg viewBox="0 0 24 24" aria-hidden="true" { path d=(sum.icon) {} }
                    span { b { (sum.name) } span.in { (fields.or(&["be-", sum.key, "-said"].concat(), sum.about)) } }
                }
            }
        }
    };
    html! {
        p.vh role="status" { @if !fields.get("bench-find").is_empty() { (says::found(found.len())) } }
        @if found.is_empty() { p.why { (says::NONE_FOUND) } }
        @else if fields.get("bench-find").trim().is_empty() {
            @for group in Group::ALL.into_iter().filter(|group| EVERY.iter().any(|sum| sum.group == *group)) {
                h2 { (paper::group(group)) }
                ul { @for sum in EVERY.iter().filter(|sum| sum.group == group) { (row(sum)) } }
            }
        } @else {
            ul { @for sum in found { (row(sum)) } }
        }
    }
}

/// A sum: what it asks, its answer, how to check it.
fn one(fields: &Fields, sum: &'static Sum) -> Markup {
    let (answer, wrong) = in_force(fields, sum);
    html! {
        section.sum aria-labelledby="sum-title" {
            div.sum-head {
                button.btn.back type="button" data-do="bench" data-value="" aria-label=(says::BACK) { "‹ " (says::BENCH) }
                h1 id="sum-title" tabindex="-1" { (sum.name) }
            }
            (form(fields, sum, wrong.as_ref()))
            @if let Some(answer) = &answer {
                div.sum-ans id="be-answer" {
                    (paper::figures(answer, wrong.is_some(), fields.get("bench-said")))
                    @for table in &answer.tables { (rows(fields, sum, table)) }
                    @if !sum.care.is_empty() { (caution(html! { (sum.care) })) }
                    @for note in &answer.notes { p.why { (note) } }
                    (crate::room::card::put_button(fields, "bench"))
                }
                figure.plate.draw id="be-drawing" { (answer.drawing) figcaption.why { (says::TO_SCALE) } }
                div.sum-why id="be-why" {
                    h2 { (words::BY_HAND) }
                    ul.work { @for line in &answer.working { li { (line) } } }
                    p.why { (says::source(sum.source)) }
                }
            }
        }
    }
}

/// A table; a long one in full only when asked for.
fn rows(fields: &Fields, sum: &Sum, table: &Table) -> Markup {
    const LONG: usize = 100;
    const SHOWN: usize = 20;
    let all = table.rows.len();
    if all <= LONG {
        return paper::table(table, LONG);
    }
    let asked = fields.get("bench-rows") == sum.key;
    html! {
        div id="be-rows" tabindex="-1" {
            (paper::table(table, if asked { all } else { SHOWN }))
            @if !asked {
                button.btn type="button" data-do="bench-rows" data-value=(sum.key) {
                    (words::show_rows(0, u32::try_from(all).unwrap_or(u32::MAX)))
                }
            }
        }
    }
}

fn form(fields: &Fields, sum: &'static Sum, wrong: Option<&Wrong>) -> Markup {
    let given = sum.given(fields, false);
    let nowhere =
        wrong.filter(|(name, _)| sum.entry(name).is_none_or(|e| !e.is_asked(|n| given.typed(n))));
    html! {
        section.ask.sum-form id="be-ask" aria-label=(says::ASKED) {
            @for entry in sum.entries.iter().filter(|entry| entry.is_asked(|name| given.typed(name))) {
                (ask(sum, entry, given.typed(entry.name), wrong))
            }
            @if let Some((_, error)) = nowhere { p.err { (sign()) span { (said(error, "").wrong) } } }
        }
    }
}

fn ask(sum: &Sum, entry: &Entry, value: &str, wrong: Option<&Wrong>) -> Markup {
    let name = &sum.field(entry.name);
    let error =
        wrong.filter(|(wrong, _)| *wrong == entry.name).map(|(_, error)| said(error, value));
    let label = entry.label;
    match entry.kind {
        Kind::Text => field(&Field { name, label, value, keys: "text", error }),
        Kind::Number => field(&Field { name, label, value, keys: "decimal", error }),
        Kind::Lines => {
            let id = error.as_ref().map(|_| [name, "-error"].concat());
            html! {
                div.field {
                    label.lab for=(name) { (label) }
                    textarea id=(name) name=(name) rows="4" spellcheck="false" autocomplete="off"
                        aria-invalid=[id.as_ref().map(|_| "true")] aria-describedby=[id.as_ref()] { (value) }
                    @if let (Some(id), Some(error)) = (&id, &error) { (field_error(id, error)) }
                }
            }
        }
        Kind::Choice(pairs) => html! {
            div.field.choice {
                p.lab { (label) }
                (segmented(name, label, value, pairs))
                @if let Some(error) = &error { (field_error(&[name, "-error"].concat(), error)) }
            }
        },
    }
}

/// The answer in force, and what is wrong with what is typed.
pub(crate) fn in_force(fields: &Fields, sum: &'static Sum) -> (Option<Answer>, Option<Wrong>) {
    match (sum.answer)(&sum.given(fields, false)) {
        Ok(answer) => (Some(answer), None),
        Err(wrong) => ((sum.answer)(&sum.given(fields, true)).ok(), Some(wrong)),
    }
}

/// What an event does to this room's fields; none when it is not its own.
pub fn event(fields: &mut Fields, event: &Event) -> Option<Vec<Effect>> {
    match (event.kind, event.name) {
        ("key", name) if fields.get("room") == "bench" => Some(key(fields, name, event.value)),
        ("press", "bench") => Some(open_sum(fields, event.value)),
        ("press", "bench-rows") => {
            fields.set("bench-rows", event.value);
            Some(vec![Effect::Focus("be-rows".to_owned())])
        }
        ("type", "bench-find") => {
            fields.set("bench-find", event.value);
            Some(Vec::new())
        }
        ("type" | "press", name) => {
            let sum = owner(name)?;
            fields.set(name, event.value);
            keep_good(fields, sum);
            Some(Vec::new())
        }
        _ => None,
    }
}

/// The sum that a field belongs to: of those whose key its name begins with, the longest.
fn owner(name: &str) -> Option<&'static Sum> {
    let rest = name.strip_prefix("be-")?;
    let ours = |sum: &Sum| {
        let entry = rest.strip_prefix(sum.key).and_then(|rest| rest.strip_prefix('-'));
        entry.is_some_and(|entry| sum.entry(entry).is_some())
    };
    EVERY.iter().copied().find(|sum| ours(sum))
}

/// Where everything reads, keeps it as last read well, and what it came to.
fn keep_good(fields: &mut Fields, sum: &'static Sum) {
    let Ok(answer) = (sum.answer)(&sum.given(fields, false)) else { return };
    for entry in sum.entries {
        let name = sum.field(entry.name);
        let text = fields.or(&name, entry.default).to_owned();
        fields.set(&["good-", &name].concat(), &text);
    }
    fields.set(&["be-", sum.key, "-said"].concat(), &answer.title);
}

fn open_sum(fields: &mut Fields, key: &str) -> Vec<Effect> {
    let before = fields.get("bench").to_owned();
    fields.set("bench", key);
    if let Some(sum) = open(fields) {
        fields.set("bench-find", "");
        keep_good(fields, sum);
        return vec![Effect::Focus("sum-title".to_owned())];
    }
    vec![Effect::Focus(["be-row-", &before].concat())]
}

/// Enter opens the first sum found, or has the answer read out again; Escape goes back.
fn key(fields: &mut Fields, name: &str, at: &str) -> Vec<Effect> {
    match (name, at) {
        ("Enter", "field bench-find") => {
            let first = find::found(fields.get("bench-find")).first().map(|sum| sum.key);
            first.map_or_else(Vec::new, |key| open_sum(fields, key))
        }
        ("Enter", field) if field.starts_with("field be-") => {
            let again = if fields.get("bench-said").is_empty() { "\u{200b}" } else { "" };
            fields.set("bench-said", again);
            Vec::new()
        }
        ("Escape", _) if open(fields).is_some() => open_sum(fields, ""),
        _ => Vec::new(),
    }
}
