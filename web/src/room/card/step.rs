//! A step of the card: ticked off, moved, opened to its drawing, working and tick grid.
use super::put::{self, Seen};
use super::values::name;
use super::{View, paper};
use crate::card::{Answer, Card, Step};
use crate::pieces::{Field, caution, field};
use crate::words::card as words;
use handturn::bounds::Bound;
use handturn::measure::read;
use handturn::{Error, Field as Of};
use maud::{Markup, html};

/// Lines shown of a step that is closed.
const FEW: usize = 4;
/// The field that says which step stands open.
pub(super) const OPEN: &str = "cd-open";
/// Parts that can be ticked one by one.
const PARTS: Bound = Bound { field: Of::Parts, least: 0, greatest: 10_000 };

/// The steps in order, and what comes last of every job.
pub(super) fn section(view: View, card: &Card) -> Markup {
    let of = card.steps.len();
    html! {
        section.order aria-labelledby="card-steps" {
            h2 id="card-steps" tabindex="-1" { (words::IN_THIS_ORDER) }
            @if of == 0 { p.why { (words::NO_STEPS) } }
            ol.card-steps {
                @for (place, step) in card.steps.iter().enumerate() { (one(view, card, place, step)) }
                li.last-step { span.box {} p { (words::WASH_OFF) } }
            }
            div.add-step {
                (field(&Field { name: "cd-new", label: words::OWN_STEP, value: view.fields.get("cd-new"), keys: "text", error: None }))
                button.btn type="button" data-do="cd-add" { (words::ADD_STEP) }
            }
        }
    }
}

fn one(view: View, card: &Card, place: usize, step: &Step) -> Markup {
    let (id, of) = (step.id, card.steps.len());
    let open = view.fields.get(OPEN) == id.to_string();
    let seen = view.today.of(id);
    let new = seen.and_then(|seen| seen.new.as_ref());
    let body = name("body", id);
    let tick = name("tick", id);
    html! {
        li id=(name("step", id)) .done[step.done_ms.is_some()] {
            div.step-head {
                label.tk for=(tick) {
                    input type="checkbox" id=(tick) name=(tick) checked[step.done_ms.is_some()];
                    span { b { (words::title(&step.text)) } @if let Some(ms) = step.done_ms { span.in { (words::done_at(ms, view.zone)) } } }
                }
                div.step-acts {
                    button.btn id=(name("more", id)) type="button" data-do="cd-more" data-value=(id) aria-expanded=(open) aria-controls=[open.then_some(&body)]
                        aria-label=(words::about(words::OPEN, &step.text)) { (if open { words::CLOSE } else { words::OPEN }) }
                    button.btn.up id=(name("up", id)) type="button" data-do="cd-up" data-value=(id) disabled[place == 0]
                        aria-label=(words::about(words::UP, &step.text)) { "↑" }
                    button.btn.up id=(name("down", id)) type="button" data-do="cd-down" data-value=(id) disabled[place + 1 == of]
                        aria-label=(words::about(words::DOWN, &step.text)) { "↓" }
                    button.btn type="button" data-do="cd-drop" data-value=(id) aria-label=(words::remove(&step.text)) { (words::REMOVE) }
                }
            }
            @if let Some(answer) = &step.answer { (lines(answer, open)) }
            @if step.parts > 0 { p.grid-count id=(name("count", id)) { (words::cut(step)) @if let Some(ms) = step.cut_ms.filter(|_| step.cut.count() > 0) { (words::last_at(ms, view.zone)) } } }
            @if let (Some(answer), Some(new)) = (&step.answer, new) { (differs(id, answer, new)) }
            @if seen.is_some_and(|seen| !seen.answers) { p.care { (words::NO_ANSWER_TODAY) } }
            @if open { div.step-body id=(body) { (opened(view, step, seen)) } }
        }
    }
}

/// The lines of an answer, the first few where it is closed.
fn lines(answer: &Answer, open: bool) -> Markup {
    let more = answer.lines.len().saturating_sub(FEW);
    let shown = if open || more < 2 { answer.lines.len() } else { FEW };
    html! {
        ul.lines {
            @for line in answer.lines.iter().take(shown) { li { (line) } }
            @if shown < answer.lines.len() { li.why { (words::more_inside(more)) } }
        }
        @if open { @for text in &answer.cautions { (caution(html! { (text) })) } }
    }
}

/// What stands on the card and what it comes to today, each where it is not in the other.
fn differs(id: u32, answer: &Answer, new: &Answer) -> Markup {
    let all = |answer: &Answer| {
        let all = answer.lines.iter().chain(&answer.cautions);
        [&answer.key].into_iter().chain(all).cloned().collect::<Vec<_>>()
    };
    let (old, now) = (all(answer), all(new));
    let only = |of: &[String], not: &[String]| -> Vec<String> {
        of.iter().filter(|line| !not.contains(line)).cloned().collect()
    };
    html! {
        div.differs id=(name("differs", id)) role="group" aria-label=(words::DIFFERS) {
            p { b { (words::DIFFERS) } " " (words::DIFFERS_WHY) }
            dl.facts {
                div { dt { (words::ON_THE_CARD) } @for line in only(&old, &now) { dd { (line) } } }
                div { dt { (words::TODAY) } @for line in only(&now, &old) { dd { b { (line) } } } }
            }
            button.btn type="button" data-do="cd-take" data-value=(id) { (words::TAKE_NEW) }
        }
    }
}

/// What an open step shows: its words, its grid, drawing and working.
fn opened(view: View, step: &Step, seen: Option<&Seen>) -> Markup {
    let fields = view.fields;
    let parts_name = name("parts", step.id);
    let typed = fields.or(&parts_name, "").to_owned();
    let parts = if typed.is_empty() { step.parts.to_string() } else { typed };
    let wrong = parts_typed(&parts).err();
    let entry = step.answer.as_ref().and_then(|answer| put::anew(answer, fields, view.desk));
    html! {
        div.pair {
            (field(&Field { name: &name("words", step.id), label: words::STEP_WORDS, value: &step.text, keys: "text", error: None }))
            (field(&Field { name: &parts_name, label: words::PARTS_TO_TICK, value: &parts, keys: "numeric", error: wrong.map(|_| words::parts_wrong(&parts)) }))
        }
        @if step.parts > 0 { (grid(view, step)) }
        @if let Some(entry) = &entry {
            @if seen.is_some_and(|seen| seen.new.is_some()) { p.why { (words::DRAWN_TODAY) } }
            (paper::drawn(entry))
        }
        @if let Some(answer) = &step.answer {
            @if answer.room != "run" {
                div.acts { button.btn type="button" data-do="cd-ask" data-value=(step.id) { (words::OPEN_ROOM) } }
            }
        }
    }
}

/// How many parts are to be ticked, as typed.
pub(super) fn parts_typed(text: &str) -> Result<u32, Error> {
    read::count(text, PARTS)
}

/// Cells in a row of the tick grid, where there is room and where there is little.
pub(super) const ROW: (u32, u32) = (10, 5);

/// The grid: a cell a part, one of them in the order of keys; arrow keys lead to the others.
fn grid(view: View, step: &Step) -> Markup {
    let next = (1..=step.parts).find(|part| !step.cut.has(*part));
    let at = view.fields.get("cd-at");
    let here = at.strip_prefix(&[&*step.id.to_string(), " "].concat());
    let here = here.and_then(|part| part.parse().ok()).or(next).unwrap_or(1_u32);
    html! {
        div.grid-acts {
            @if let Some(next) = next {
                button.btn.go id=(name("next", step.id)) type="button" data-do="cd-cut" data-value=([step.id.to_string(), next.to_string()].join(" ")) { (words::part_cut(step, next)) }
            }
        }
        div.grid.wide[view.wide] role="group" aria-label=(words::cut(step)) {
            @for part in 1..=step.parts {
                button.ten[part % 10 == 0] id=(cell(step.id, part)) type="button" data-do="cd-cell" data-value=([step.id.to_string(), part.to_string()].join(" "))
                    aria-pressed=(step.cut.has(part)) tabindex=(if part == here { "0" } else { "-1" }) { (part) }
            }
        }
    }
}

/// The id of a cell.
pub(super) fn cell(step: u32, part: u32) -> String {
    ["cd-cell-", &step.to_string(), "-", &part.to_string()].concat()
}
