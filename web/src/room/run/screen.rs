//! The screen at the machine: position, drawing, the move, helpers, Next and Back.
use super::desk::{Desk, Lock, Note, Open, Screen};
use super::{sheet, show};
use crate::draw::{plate, work};
use crate::words::{self, grouped, moves, run};
use handturn::divide::Leg;
use handturn::run::{Phase, State, What};
use maud::{Markup, html};

/// A Run, filling the page.
pub(super) fn screen(open: &Open, desk: &Desk) -> Markup {
    let state = open.state();
    let show = show::of(open, &state).unwrap_or_default();
    let noted = note_words(open, &show).is_some_and(|(_, seen)| seen);
    html! {
        div.run id="run" {
            (bar(open, desk, &state, &show))
            div.pl { (drawing(open, &state, &show)) }
            section.mv aria-label=(run::NEXT_MOVE) {
                h1.vh id="run-say" aria-live="polite" { (spoken(open, &show)) }
                div.said aria-hidden="true" { (said(&show, noted)) }
                (note(open, &show))
            }
            (helpers())
            (thumbs(open, &state, &show))
            (sheet::sheet(open, desk, &state, &show))
        }
    }
}

/// The one live region: the whole move, or why the last press did not count.
fn spoken(open: &Open, show: &show::Show) -> String {
    match note_words(open, show) {
        Some((said, _)) => said,
        None => show.say.clone(),
    }
}

fn bar(open: &Open, desk: &Desk, state: &State, show: &show::Show) -> Markup {
    let rounds = &open.frozen.rounds;
    let round = rounds.get(usize::from(state.round())).filter(|_| rounds.len() > 1);
    let leaves = if open.unsaved.is_empty() { run::LEAVE } else { run::LEAVE_UNSAVED };
    html! {
        header.bar {
            button.x type="button" data-do="run-leave" aria-label=(leaves) { (icon("M5 5l14 14M19 5L5 19")) }
            button.pos type="button" data-do="run-jump" aria-label=(run::position(show.at, show.of)) {
                b id="run-at" { (grouped(i64::from(show.at))) }
                span.of {
                    span { "of " (grouped(i64::from(show.of))) @if let Some(round) = round { ", " (run::round(*round)) } }
                    span id="run-left" { (show.left) }
                }
            }
            div.stat {
                button type="button" data-do="run-screen" aria-pressed=(desk.screen == Screen::On) {
                    (icon("M12 7.8a4.2 4.2 0 100 8.4 4.2 4.2 0 000-8.400M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M19 5l-2 2M7 17l-2 2"))
                    span { (if desk.screen == Screen::On { run::SCREEN_ON } else { run::SCREEN_SLEEPS }) }
                }
                (saved(open, show))
            }
        }
    }
}

/// Whether the place is saved, in sight all the time.
fn saved(open: &Open, show: &show::Show) -> Markup {
    let time: String = open.saved_at.chars().take(5).collect();
    html! {
        @if !open.unsaved.is_empty() {
            button.care id="run-saved" type="button" data-do="run-saved" data-state="unsaved" {
                (icon("M12 3l10 18H2zM12 10v5M12 17.3v1.400"))
                span { (run::NOT_SAVED) ". " (run::write_down(show.at)) }
            }
        } @else if open.pending() {
            button id="run-saved" type="button" data-do="run-saved" data-state="saving" {
                (icon("M12 3a9 9 0 109 9"))
                span { (run::SAVING) }
            }
        } @else {
            button id="run-saved" type="button" data-do="run-saved" data-state="saved" data-count=(open.saved)
                aria-label=(run::saved_at(&open.saved_at)) {
                (icon("M4 13l5 5L20 6"))
                span { (run::SAVED) " " (time) }
            }
        }
    }
}

/// The plate with its pin and arms, the work as a ring round it.
fn drawing(open: &Open, state: &State, show: &show::Show) -> Markup {
    let plan = open.frozen.plan();
    let name = [
        show.leg.as_ref().map_or_else(String::new, |leg| drawing_words(leg, show)),
        run::work_words(show.of, state.cuts().count(), show.at),
    ];
    html! {
        svg.dr viewBox="-138 -138 276 276" role="img" aria-label=(name.concat()) {
            g.ring {
                (work::ring(&plan, state))
                text.l x="-134" y="-121" font-size="11" { (run::WORK) }
                path.t d="M-112 -117L-91 -96" {}
            }
            @if let Some(leg) = &show.leg {
                g.plt { (plate::group(&plate::PlateView { leg, circles: &[], counted: true })) }
            }
        }
    }
}

fn drawing_words(leg: &Leg, show: &show::Show) -> String {
    let stands = matches!(show.phase, Some(Phase::Closed)) || (leg.turns == 0 && leg.spaces == 0);
    let words = if stands { run::stands_in(leg) } else { moves::drawing(leg, None) };
    words + ". "
}

/// The move as the eye reads it; who listens has the heading. A note about the last
/// press takes the place of the lines under the move.
fn said(show: &show::Show, noted: bool) -> Markup {
    let lines = show.figures.len() + usize::from(show.mark.is_some());
    html! {
        @if !show.before.is_empty() {
            p.d.pre { @for line in &show.before { span.nb[line.len() < 32] { (line) } " " } }
        }
        @if let Some((kind, number)) = &show.mark {
            p.n.mk { em { (run::CUT_HERE) } " " @if !number.is_empty() { b { (number) } } span { (kind) } }
        }
        @if !show.figures.is_empty() {
            p.n id="run-move" data-lines=(lines) {
                @for (figure, unit) in &show.figures { span.ln { b { (figure) } " " span { (unit) } " " } }
            }
        }
        @if !show.word.is_empty() { p.n id="run-move" { span.wd { (show.word) } } }
        p.d id="run-under" { (show.under) }
        @if !noted {
            p.w { @for line in &show.why { span { (line) " " } } }
            @if !show.cycle.is_empty() {
                p.cy {
                    @for (k, step) in show.cycle.iter().enumerate() {
                        i { (step) @if k + 1 < show.cycle.len() { " ·" } } " "
                    }
                }
            }
            @if !show.caution.is_empty() { p.cc { (show.caution) } }
        }
    }
}

/// What the last press came to, and who counts; in caution when it matters.
fn note_words(open: &Open, show: &show::Show) -> Option<(String, bool)> {
    let text = match (open.lock, open.note) {
        (Lock::Elsewhere, _) => run::ELSEWHERE,
        (Lock::Lost, Note::Taken) => run::TAKEN,
        (Lock::Lost, _) => run::LOST_LOCK,
        (_, Note::Once) => run::ONCE,
        (_, Note::Saving) => run::STILL_SAVING,
        (_, Note::Slow) => run::SLOW,
        (_, Note::Taken) => run::TAKEN,
        (_, Note::NotNow) => run::CANT_NOW,
        (_, Note::None) if !open.unsaved.is_empty() => {
            return Some((
                [run::NOT_SAVED, ". ", &run::write_down(show.at), ". ", &show.say].concat(),
                false,
            ));
        }
        (_, Note::None) => return went_back(open, show).map(|text| (text, true)),
    };
    Some((text.to_owned(), true))
}

/// After Back: how the hands go back, past the slack and up again.
fn went_back(open: &Open, show: &show::Show) -> Option<String> {
    let (last, before) = open.shown().split_last()?;
    if last.what != What::Back {
        return None;
    }
    let plan = open.frozen.plan();
    let before = State::replay(&plan, before.iter().copied()).ok()?;
    Some(run::went_back(show.at, &before.back_move(&plan).ok()?))
}

fn note(open: &Open, show: &show::Show) -> Markup {
    let seen = note_words(open, show).filter(|(_, seen)| *seen);
    let elsewhere = matches!(open.lock, Lock::Elsewhere | Lock::Lost);
    html! {
        @if let Some((text, _)) = seen {
            div.once id="run-note" {
                p aria-hidden="true" { (text) }
                @if elsewhere {
                    button.btn id="run-take" type="button" data-do="run-take-over" { (run::TAKE_OVER) }
                }
            }
        }
    }
}

fn helpers() -> Markup {
    let helper = |does: &str, path: &str, label: &str| {
        html! {
            button type="button" data-do=(does) { (icon(path)) (label) }
        }
    };
    html! {
        div.help {
            (helper("run-undo", "M4 9h10a6 6 0 010 12h-3M4 9l5-5M4 9l5 5", run::UNDO_PRESS))
            (helper("run-past", "M20 6a9 9 0 10.500 10M20 1.500v5h-5", run::WENT_PAST))
            (helper("run-lost", "M12 3a9 9 0 100 18 9 9 0 000-18M9 9.200a3 3 0 116 .3c0 2-3 2.300-3 4.500M12 17v1.200", run::LOST))
        }
    }
}

fn thumbs(open: &Open, state: &State, show: &show::Show) -> Markup {
    let blocked = matches!(open.lock, Lock::Elsewhere | Lock::Lost);
    let back = state.back_event(0).map(|event| event.index.saturating_add(1).min(show.of));
    let back_name = back.map_or_else(|| run::AT_THE_FIRST.to_owned(), run::back_to);
    let name = if show.done { run::DONE } else { run::NEXT };
    html! {
        div.go {
            button.bk id="run-back" type="button" data-do="run-back" aria-label=(back_name)
                disabled[blocked || back.is_none()] { (run::BACK) }
            button.next id="run-next" type="button" data-do="run-next" disabled[blocked]
                aria-label=([name, ", ", &show.next].concat()) {
                span { (name) } " " small { (show.next) }
            }
        }
    }
}

pub(super) fn icon(path: &str) -> Markup {
    html! { svg viewBox="0 0 24 24" aria-hidden="true" { path d=(path) {} } }
}

/// Closing words that other screens share.
pub(super) fn caution_clear() -> Markup {
    html! { (crate::pieces::caution(html! { b { (words::run::CLEAR) } })) }
}
