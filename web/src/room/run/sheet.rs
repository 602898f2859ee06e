//! What can lie over the Run: help when something went wrong, and settings.
use super::desk::{Desk, Lock, Open, Screen, Sheet};
use super::show::{Show, gaps};
use crate::words::{self, grouped, moves, run};
use handturn::bounds;
use handturn::divide::Part;
use handturn::measure::read;
use handturn::run::{Fit, Plan, Seen, State, stray};
use maud::{Markup, html};

/// Holes and positions offered at once.
const MOST: usize = 48;

/// The sheet that lies open, if one does.
pub(super) fn sheet(open: &Open, desk: &Desk, state: &State, show: &Show) -> Markup {
    let plan = open.frozen.plan();
    let (title, content) = match &open.sheet {
        Sheet::None => return html! {},
        Sheet::Past => {
            (run::past_title(past_to(&plan, state).as_deref()), past(open, &plan, state))
        }
        Sheet::Lost(seen) => (run::LOST.to_owned(), lost(open, &plan, state, *seen)),
        Sheet::Jump(typed) => (run::JUMP.to_owned(), jump(&plan, state, typed)),
        Sheet::Saved => (run::HOW_SAVED.to_owned(), saved(open, desk)),
        Sheet::Screen => (run::ABOUT_SCREEN.to_owned(), screen(desk)),
    };
    let close = match &open.sheet {
        Sheet::Lost(_) => run::close_stay(show.at),
        Sheet::Past => run::DONE.to_owned(),
        _ => run::CLOSE.to_owned(),
    };
    html! {
        dialog id="run-sheet" aria-labelledby="run-sheet-title" {
            h2 id="run-sheet-title" { (title) }
            (content)
            button.btn type="button" data-do="run-close" { (close) }
        }
    }
}

/// The hole a leg that was gone past leads to.
fn past_to(plan: &Plan, state: &State) -> Option<String> {
    let past = *state.went_past(plan).ok()?.first()?;
    Some(run::stop(past.part, past.to.number))
}

fn past(open: &Open, plan: &Plan, state: &State) -> Markup {
    let steps = state.went_past(plan).unwrap_or_default();
    let Some(first) = steps.first() else { return html! { p.why { (run::CANT_NOW) } } };
    let why = match first.part {
        Part::Spindle => run::PAST_NOTCH,
        _ if first.past.is_zero() => run::PAST_AT_ONCE,
        _ => run::PAST_WHY,
    };
    html! {
        ol.st8 {
            @if open.frozen.head.spindle_clamp {
                li {
                    (match first.part {
                        Part::Pin => run::PAST_OFF,
                        Part::BackPin => run::PAST_OFF_BACK,
                        _ => run::PAST_OFF_NO_PIN,
                    })
                }
            }
            @for step in &steps {
                @let (back, stop) = (moves::sense(step.back), run::stop(step.part, step.to.number));
                @if step.past.is_zero() {
                    li { (run::turn_back(step.part, back)) b { (stop) } "." }
                } @else {
                    li { (run::turn_the(step.part)) " " b { (run::back_by(step.part, step.past)) } ", " (back) "." }
                    li {
                        "Come up again " b { (moves::sense(run::turned(step.back))) } " and " (run::stop_at(step.part)) " "
                        b { (step.to.number) } "."
                    }
                }
            }
        }
        p.why { (why) }
    }
}

fn lost(open: &Open, plan: &Plan, state: &State, seen: Option<u32>) -> Markup {
    let Ok(place) = plan.place(0) else { return html! {} };
    let (part, of) = match (place.pin, place.notch, place.dial) {
        (Some(pin), ..) => (Part::Pin, pin.of),
        (None, Some(notch), _) => (Part::Spindle, notch.of),
        (None, None, Some(dial)) => (Part::Handwheel, dial.of),
        _ => return html! {},
    };
    let looked = Seen {
        pin: seen.filter(|_| part == Part::Pin),
        notch: seen.filter(|_| part == Part::Spindle),
        dial: seen.filter(|_| part == Part::Handwheel),
        ..Seen::default()
    };
    html! {
        p.lab { (run::which_hole(part)) }
        @if of <= 120 {
            div.hg role="group" aria-label=(run::holes_of(part, of)) data-many=[(of > 24).then_some("")] {
                @for hole in 0..of {
                    button type="button" data-do="run-hole" data-value=(hole) aria-pressed=(seen == Some(hole)) { (hole) }
                }
            }
        } @else {
            input.num1 name="run-hole-typed" type="text" inputmode="numeric" autocomplete="off"
                aria-label=(run::holes_of(part, of)) value=(seen.map_or_else(String::new, |hole| hole.to_string()));
        }
        @if let Some(hole) = seen {
            @match (stray(plan, hole), state.fits(plan, looked)) {
                (Ok(Some(stray)), _) => p.stray role="status" { (run::stray(part, &stray)) },
                (Ok(None), Ok(fits)) => (candidates(open, state, fits.flatten())),
                _ => p.stray role="status" { (run::no_such(part, of)) },
            }
        }
    }
}

/// The nearest positions that fit, shown in their order round the work.
fn candidates(open: &Open, state: &State, nearest: impl Iterator<Item = Fit>) -> Markup {
    let mut fits: Vec<Fit> = Vec::new();
    let mut more = false;
    for fit in nearest {
        more = fits.len() == MOST;
        if more {
            break;
        }
        fits.insert(fits.partition_point(|other| other.index < fit.index), fit);
    }
    let ring = open.frozen.head.degree_ring.is_some();
    let of = open.frozen.question.question().positions();
    let blocked = open.lock != Lock::Held;
    html! {
        p.lab { (if fits.len() < 2 { run::THEN_CHOOSE } else if ring { run::DEGREE_RING } else { run::NO_RING }) }
        div.cand {
            @for fit in &fits {
                @let position = fit.index.saturating_add(1);
                button type="button" data-do="run-found" data-value=(fit.index) disabled[blocked]
                    .me[fit.index == state.index()] {
                    span { @if let Some(ring) = fit.ring { (words::angle_text(ring)) } }
                    b { @if position > of { (run::HOME) } @else { (grouped(i64::from(position))) } }
                }
            }
        }
        @if more { p.why { (run::MORE_FIT) } }
    }
}

fn jump(plan: &Plan, state: &State, typed: &str) -> Markup {
    let of = plan.question.positions();
    let bound = bounds::Bound { greatest: of, least: 1, ..bounds::DIVISIONS };
    let read = if typed.trim().is_empty() { None } else { Some(read::count(typed, bound)) };
    let gaps = gaps(plan, state);
    html! {
        div.field {
            label.lab for="run-jump" { (run::JUMP_LABEL) " " (run::one_to(of)) }
            input id="run-jump" name="run-jump" type="text" inputmode="numeric" autocomplete="off" value=(typed)
                aria-invalid=[matches!(read, Some(Err(_))).then_some("true")];
        }
        @match read {
            Some(Ok(position)) => (target(plan, state, position.saturating_sub(1))),
            Some(Err(_)) => p.err { (crate::pieces::sign()) span { (run::one_to_wanted(of)) } },
            None => {},
        }
        @if !gaps.is_empty() && state.cuts().count() > 0 { p.why { (run::NOT_CUT_YET) " " (gaps) "." } }
    }
}

/// How the machine stands at a position, and the buttons that go there.
fn target(plan: &Plan, state: &State, index: u32) -> Markup {
    let Ok(place) = plan.place(index) else { return html! {} };
    let ring = plan.ring(index, handturn::measure::Angle::ZERO).ok().flatten();
    html! {
        p.lab { (run::SET_FIRST) }
        p.set { (run::stands(&place)) @if let Some(ring) = ring { " " (run::ring_reads(ring)) } }
        button.btn.go id="run-go" type="button" data-do="run-go" data-value=(index) { (run::i_am_at(index + 1)) }
        @if !state.cuts().contains(index) {
            button.btn type="button" data-do="run-tick" data-value=(index) { (run::TICK) }
        }
    }
}

fn saved(open: &Open, desk: &Desk) -> Markup {
    html! {
        @if open.unsaved.is_empty() {
            p { (run::saved_at(&open.saved_at)) "." }
            p.why { (if desk.lasting == Some(true) { run::LASTING } else { run::NOT_LASTING }) }
        } @else {
            p.care id="run-why-unsaved" { (run::why_not_saved(&open.unsaved)) }
        }
        button.btn.go type="button" data-do="run-export" { (run::SAVE_FILE) }
        button.btn type="button" data-do="card-put" data-value="run" { (words::card::PUT) }
        p.why role="status" { (desk.put) }
    }
}

fn screen(desk: &Desk) -> Markup {
    html! {
        p { (match desk.screen {
            Screen::On => run::IS_ON,
            Screen::MaySleep => run::MAY_SLEEP,
            Screen::LetSleep => run::MAY_SLEEP_CHOSEN,
        }) }
        @if desk.screen == Screen::On {
            button.btn type="button" data-do="run-screen-sleep" { (run::LET_SLEEP) }
        } @else {
            button.btn type="button" data-do="run-screen-on" { (run::KEEP_ON) }
        }
    }
}
