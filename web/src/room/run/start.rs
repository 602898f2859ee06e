//! Before a Run: how everything stands at position 1, and how it is confirmed.
use super::screen::caution_clear;
use crate::pieces::segmented;
use crate::seam::{Effect, Event};
use crate::words::{self, moves, run};
use handturn::divide::{Kind, Way};
use handturn::run::{Confirm, Frozen, Round, TITLE};
use handturn::{Field, List};
use maud::{Markup, html};

/// The rounds offered, as pressed and as named.
const ROUNDS: [(&str, &str, &[Round]); 4] = [
    ("1", run::ONE_ROUND, &[Round::Cut]),
    ("s", run::SCRATCH_FIRST, &[Round::Scratch, Round::Cut]),
    ("rf", run::ROUGH_FINISH, &[Round::Rough, Round::Finish]),
    ("srf", run::ALL_THREE, &[Round::Scratch, Round::Rough, Round::Finish]),
];

/// A Run about to be started.
pub(super) fn screen(frozen: &Frozen) -> Markup {
    let chosen =
        ROUNDS.iter().find(|(_, _, rounds)| *rounds == &*frozen.rounds).map_or("", |row| row.0);
    html! {
        main.run-start id="run-before" tabindex="-1" {
            h1 { (run::BEFORE_CUTTING) }
            p.d { (run::title(frozen)) ", " (words::kind(frozen.way.kind())) }
            (steps(frozen))
            (caution_clear())
            @if frozen.way.kind() == Kind::Direct { (crate::pieces::caution(html! { (words::WORM_OUT) })) }
            @if matches!(frozen.way.kind(), Kind::Handwheel | Kind::FineDial) { (crate::pieces::caution(html! { (words::NO_PIN) })) }
            div.field {
                label.lab for="run-title" { (run::NAME_IT) }
                input id="run-title" name="run-title" type="text" autocomplete="off" maxlength="40" value=(&*frozen.title);
            }
            p.lab { (run::ROUNDS) }
            (segmented("run-rounds", run::ROUNDS, chosen, &ROUNDS.map(|(value, name, _)| (value, name))))
            label.tick {
                input type="checkbox" name="run-apart" checked[frozen.confirm == Confirm::TwoStage];
                span { (run::TWO_PRESSES) br; span.why { (run::TWO_PRESSES_WHY) } }
            }
            div.acts {
                button.btn.go id="run-start" type="button" data-do="run-start" { (run::START) }
                button.btn type="button" data-do="run-not-now" { (run::NOT_NOW) }
            }
        }
    }
}

/// How everything stands at position 1.
fn steps(frozen: &Frozen) -> Markup {
    let plan = frozen.plan();
    let first = plan.place(0).ok();
    let leg = plan.step(0).ok().and_then(|step| step.legs.last().copied());
    let arms = leg.and_then(|leg| leg.arms);
    html! {
        ol.st8 {
            @if matches!(frozen.way, Way::Direct(_)) { li { (words::WORM_IS_OUT) "." } }
            @if let Some(plate) = run::plate_of(&frozen.way) { li { (plate) } }
            // The check turns the handle: it comes before the pin goes into hole 0.
            @if let Way::Differential(way) = &frozen.way {
                li { (words::mounted(&way.train)) " " (words::PLATE_FREE) }
                li { (crate::pieces::before_first_cut(way)) }
            }
            @if let Some(place) = &first { li { (run::stands(place)) " " (run::chalk(place)) } }
            @if let (Some(leg), Some(set)) = (leg, arms) {
                li { @if set.rest { (moves::arms(&leg)) } @else { (run::arms_at(&moves::shows(set))) } }
            }
            @if frozen.head.degree_ring.is_some() { li { (run::RING_ZERO) } }
            // Notches hold the work itself: there is no slack to take up.
            @if !matches!(frozen.way, Way::Direct(_)) { li { (run::SLACK_FIRST) } }
        }
    }
}

/// What was typed or ticked.
pub(super) fn typed(frozen: &mut Frozen, event: &Event) -> Option<Vec<Effect>> {
    match event.name {
        "run-title" => {
            // What does not fit the record is not taken: the field shows what is.
            let fits = |end: &usize| *end <= TITLE;
            let ends = event.value.char_indices().map(|(at, c)| at + c.len_utf8()).take_while(fits);
            let title = event.value.get(..ends.last().unwrap_or(0)).unwrap_or("");
            frozen.title = handturn::Text::new(Field::Title, title).ok()?;
        }
        "run-apart" => {
            frozen.confirm =
                if event.value == "on" { Confirm::TwoStage } else { Confirm::OneStage };
        }
        _ => return None,
    }
    Some(vec![])
}

/// The rounds chosen by their value.
pub(super) fn rounds(frozen: &mut Frozen, value: &str) {
    if let Some((.., rounds)) = ROUNDS.iter().find(|row| row.0 == value) {
        frozen.rounds = List::from_slice(rounds).unwrap_or_default();
    }
}
