//! The passes: the next one large, the list under it; before cutting begins as a
//! preview, then with ticks that are kept.
use super::cut::Setup;
use super::job::Place;
use super::jobs::{Entry, Jobs, Lock, Open};
use crate::fields::Fields;
use crate::pieces::{Field, caution, field};
use crate::words::thread as words;
use handturn::thread::dial::Reads;
use handturn::thread::passes::{Pass, Plan};
use maud::{Markup, html};

/// Passes that are stored and wait to be gone on with, and one taken out.
pub(super) fn waiting(jobs: &Jobs) -> Markup {
    html! {
        @if let Some(entry) = &jobs.dropped {
            p.gone id="th-dropped" role="status" {
                (words::taken_out(&entry.title)) " "
                button.btn id="th-undrop" type="button" data-do="th-job-undrop" { (words::BRING_BACK) }
            }
        }
        @if jobs.unreadable() { p.care { (words::UNREADABLE) } }
        @if let Some(entry) = jobs.resumable() { (strip(entry)) }
    }
}

fn strip(entry: &Entry) -> Markup {
    html! {
        div.under-way id="th-under-way" {
            p { b { (if entry.done < entry.of { words::UNDER_WAY } else { words::ALL_DONE }) } " " (words::passes_of(&entry.title, entry.done, entry.of)) }
            button.btn.go type="button" data-do="th-job-resume" data-value=(entry.id) { (words::GO_ON) }
        }
    }
}

/// The passes of a plan that is not begun.
pub(super) fn preview(setup: &Setup, stale: bool) -> Markup {
    let count = setup.plan.count().unwrap_or(0);
    html! {
        (next(&setup.plan, 0, count, setup.inch))
        @if !stale {
            div.acts {
                button.btn.go id="th-begin" type="button" data-do="th-job-begin" { (words::BEGIN) }
            }
            p.why { (words::BEGIN_WHY) }
        }
        (list(&setup.plan, 0, count, setup.inch, None))
    }
}

/// Passes under way.
pub(super) fn job(fields: &Fields, open: &Open) -> Markup {
    let Some(place) = open.place() else { return html! {} };
    let inch = open.job.inch;
    let free = open.lock == Lock::Held || !open.unsaved.is_empty();
    html! {
        p.why { (words::FROZEN) }
        div.two {
            div.figures {
                @if place.done < place.of {
                    (next(&place.plan, place.done, place.of, inch))
                } @else {
                    div.next.answer-frame id="th-next" tabindex="-1" { p.next-label { (words::ALL_CUT) } p { (words::ALL_CUT_WHY) } }
                }
                (saved(open))
                div.acts {
                    @if place.done < place.of {
                        button.btn.go.tick-it id="th-tick" type="button" data-do="th-job-tick" data-value=(place.done + 1) disabled[!free] {
                            (words::pass_done(place.done + 1))
                        }
                    }
                    button.btn id="th-undo" type="button" data-do="th-job-undo" disabled[!free || !place.undoable] { (words::UNDO) }
                }
                @if open.job.reverse { (caution(html! { b { (words::KEEP_SHUT) } " " (words::REVERSE_CARE) })) }
                @if open.job.blind { (caution(html! { b { (words::BLIND) } " " (words::BLIND_CARE) })) }
                (list(&place.plan, place.done, place.of, inch, Some(free)))
            }
            div.figures {
                (so_far(fields, open, &place))
                div.acts {
                    button.btn type="button" data-do="th-job-leave" { (words::PUT_BY) }
                    button.btn type="button" data-do="th-job-drop" { (words::TAKE_OUT) }
                }
                p.why { (words::PUT_BY_WHY) }
            }
        }
    }
}

/// Whether it is saved, and who ticks.
fn saved(open: &Open) -> Markup {
    html! {
        p.saved id="th-saved" data-state=(if open.unsaved.is_empty() { if open.pending() { "saving" } else { "saved" } } else { "refused" })
            data-count=(open.shown().len()) role="status" {
            @if !open.unsaved.is_empty() {
                span.care { (words::not_saved(&open.unsaved)) }
            } @else if open.lock == Lock::Elsewhere {
                span.care { (words::ELSEWHERE) } " "
                button.btn id="th-take-over" type="button" data-do="th-job-take-over" { (words::TAKE_OVER) }
            } @else if open.pending() {
                (words::SAVING)
            } @else {
                (words::saved_at(&open.saved_at))
            }
            @if let Some(note) = words::note(open.note) { " " b { (note) } }
        }
    }
}

/// Measured so far: what is left, and the passes go on from there.
fn so_far(fields: &Fields, open: &Open, place: &Place) -> Markup {
    let value = fields.get("th-so-far");
    let measured = handturn::measure::read::length(value, handturn::measure::read::Unit::Mm);
    let still = measured.ok().and_then(|measured| open.job.still(measured).ok());
    html! {
        section.setup aria-label=(words::MEASURED_SO_FAR) {
            h3.lead { (words::MEASURED_SO_FAR) }
            p.why { (words::so_far_why(open.job.low, open.job.high)) }
            (field(&Field { name: "th-so-far", label: words::PITCH_DIAMETER_MM, value, keys: "decimal", error: None }))
            @if let Some(still) = still {
                div.verdict role="status" {
                    p.verdict-big { (words::verdict(&still)) }
                    p { (words::still(&still)) }
                }
                @if still.to_limit.diameter > 0.0 {
                    button.btn id="th-go-from" type="button" data-do="th-measured" { (words::GO_FROM_THERE) }
                }
            }
            @if place.plan.dial_at > 0 { p.why { (words::counted_on(place.plan.dial_at)) } }
        }
    }
}

/// The next pass, large.
fn next(plan: &Plan, done: u32, count: u32, inch: bool) -> Markup {
    html! {
        @if let Ok(pass) = plan.pass(done + 1) {
            div.next.answer-frame id="th-next" tabindex="-1" {
                p.next-label { (words::pass_to(&pass, count, plan)) }
                p.next-figure { (words::dial_figure(&pass, inch)) " " small { (if inch { "in" } else { "mm" }) } }
                p { (words::dial_marks(&pass, plan, inch)) }
            }
        }
    }
}

/// All passes; with ticks where `ticks` says whether they can be pressed.
fn list(plan: &Plan, done: u32, count: u32, inch: bool, ticks: Option<bool>) -> Markup {
    let passes = (1..=count).filter_map(|number| plan.pass(number).ok());
    html! {
        ol.passes {
            @for pass in passes { (row(&pass, plan, done, inch, ticks)) }
        }
        @if let Some(text) = words::rounding(plan) { p.why { (text) } }
    }
}

fn row(pass: &Pass, plan: &Plan, done: u32, inch: bool, ticks: Option<bool>) -> Markup {
    let (cut, now) = (pass.number <= done, pass.number == done + 1);
    let figure = words::dial_figure(pass, inch);
    html! {
        li.cut[cut].now[now] id=(["th-pass-", &pass.number.to_string()].concat()) {
            @if let Some(free) = ticks {
                // The last one ticked can be taken back, the next one ticked.
                @let does = if now { "th-job-tick" } else { "th-job-undo" };
                button.box type="button" role="checkbox" aria-checked=(cut) data-do=(does) data-value=(pass.number)
                    aria-label=(words::pass_name(pass, &figure)) disabled[!free || !(now || pass.number == done)] {
                    @if cut { svg viewBox="0 0 16 16" aria-hidden="true" { path d="M3 8.5l3.5 3.5L13 4.5" {} } }
                }
            }
            span.nr { (if pass.spring { "S".to_owned() } else { pass.number.to_string() }) }
            b { (figure) }
            span.also { (words::other_dial(pass, inch)) }
            span.step { (words::step(pass, plan.dial.reads == Reads::Diameter, inch)) }
        }
    }
}
