//! The asking side: the thread's name or its own figures, screw or nut, class; or
//! what was measured, to tell which thread it is.
use super::ask::{self, Asked};
use super::which;
use crate::fields::Fields;
use crate::room::steps::{Form, Wrong};
use crate::words::thread as words;
use maud::{Markup, html};

/// Threads of the demonstration job, a bronze astronomical clock.
const CLOCK: [(&str, &str); 5] = [
    ("M6 x 0.75", words::CHIP_ARBOR),
    ("2 BA", words::CHIP_SCREW),
    ("1/4 x 40 ME", words::CHIP_CAP),
    ("G 1/8", words::CHIP_CUP),
    ("Tr16 x 4", words::CHIP_FEED),
];

/// The entry; `wrong` is the field that cannot be read, `shown` the thread in force.
pub(super) fn section(fields: &Fields, shown: Option<&Asked>, wrong: Option<&Wrong>) -> Markup {
    let how = ask::typed(fields, "th-how");
    let form = Form { fields, names: &[&ask::NAMES], wrong };
    let side = form.choice("th-side", words::SIDE, &[("screw", words::SCREW), ("nut", words::NUT)]);
    html! {
        section.ask aria-label=(words::WHICH_THREAD) {
            (form.choice("th-how", words::HOW, &[
                ("name", words::BY_NAME), ("own", words::MY_OWN), ("which", words::WHICH),
            ]))
            // What was measured hangs on it; of a name it is said afterwards.
            @if how == "which" { (side) }
            div id=(["th-by-", how].concat()) .field-set {
                @match how {
                    "own" => (own(form)),
                    "which" => (which::section(fields, ask::typed(fields, "th-side") == "nut")),
                    _ => (name(form, shown)),
                }
            }
            @if how != "which" {
                (side)
                @if let Some(shown) = shown { (classes(shown)) }
            }
        }
    }
}

fn name(form: Form, shown: Option<&Asked>) -> Markup {
    let typed = form.typed("th-name").trim();
    html! {
        div.big-field { (form.text("th-name", words::THREAD)) }
        p.why.name-hint { (words::NAME_HINT) }
        @if let Some(shown) = shown.filter(|shown| shown.found.len() > 1) {
            div {
                p.lab id="th-several" { (words::SEVERAL) }
                div.chips.wide role="group" aria-labelledby="th-several" {
                    @for (place, found) in shown.found.iter().enumerate() {
                        @let name = words::found_name(found);
                        button.chip type="button" data-do="th-pick" data-value=(place) aria-pressed=(name == shown.name) { (name) }
                    }
                }
            }
        }
        @if !crate::card::is_open(form.fields) {
            div {
                p.lab id="th-job" { (words::IN_THIS_JOB) }
                div.chips.wide.job-chips role="group" aria-labelledby="th-job" {
                    @for (name, what) in CLOCK {
                        button.chip type="button" data-do="th-name" data-value=(name) aria-pressed=(typed == name) {
                            (words::times_sign(name)) span { (what) }
                        }
                    }
                    // A worm is no thread by name: only its lead is asked for.
                    button.chip type="button" data-do="th-worm" data-value="1" { (words::MODULE_1) span { (words::CHIP_WORM) } }
                }
            }
        }
    }
}

fn own(form: Form) -> Markup {
    let chosen = form.typed("th-form");
    html! {
        div {
            p.lab id="th-forms" { (words::FORM) }
            div.chips.wide role="group" aria-labelledby="th-forms" {
                @for (value, _) in ask::FORMS {
                    button.chip type="button" data-do="th-form" data-value=(value) aria-pressed=(value == chosen) { (words::form_chip(value)) }
                }
                button.chip type="button" data-do="th-form" data-value="own" aria-pressed=(chosen == "own") { (words::OWN_ANGLE) }
            }
        }
        @if chosen == "own" {
            (form.text("th-angle", words::ANGLE_BETWEEN))
            div.pair {
                (form.text("th-crest", words::CREST_FLAT))
                (form.text("th-root", words::ROOT_FLAT))
            }
        }
        div.pair {
            (form.text("th-major", words::OUTSIDE_MM))
            (form.text("th-pitch", words::PITCH_OR_TPI))
        }
        p.why { (words::OWN_HINT) }
        (form.number("th-starts", words::STARTS))
        (form.choice("th-hand", words::HAND, &[
            ("right", words::RIGHT_HAND), ("left", words::LEFT_HAND),
        ]))
    }
}

/// The classes there are for this size.
fn classes(shown: &Asked) -> Markup {
    let name = |class| words::class(class, shown.thread.form.kind);
    html! {
        @if let Some((chosen, _)) = &shown.limited {
            div {
                p.lab id="th-classes" { (words::CLASS) }
                div.chips role="group" aria-labelledby="th-classes" {
                    @for class in &shown.classes {
                        button.chip type="button" data-do="th-class" data-value=(name(*class)) aria-pressed=(class == chosen) { (name(*class)) }
                    }
                }
            }
        } @else {
            p.why { (words::NO_CLASS) }
        }
    }
}
