//! The asking side: the thread's name or its own figures, screw or nut, class; or
//! what was measured, to tell which thread it is.
use super::ask::{self, Asked};
use super::which;
use crate::fields::Fields;
use crate::pieces::{Field, field, segmented};
use crate::words::{errors::said, thread as words};
use handturn::Error;
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
pub(super) fn section(
    fields: &Fields,
    shown: Option<&Asked>,
    wrong: Option<&(&'static str, Error)>,
) -> Markup {
    let how = ask::typed(fields, "th-how");
    let form = Form { fields, wrong };
    html! {
        section.ask aria-label=(words::WHICH_THREAD) {
            (segmented("th-how", words::HOW, how, &[
                ("name", words::BY_NAME), ("own", words::MY_OWN), ("which", words::WHICH),
            ]))
            div id=(["th-by-", how].concat()) .field-set {
                @match how {
                    "own" => (form.own()),
                    "which" => (which::section(fields, ask::typed(fields, "th-side") == "nut")),
                    _ => (form.name(shown)),
                }
            }
            (segmented("th-side", words::SIDE, ask::typed(fields, "th-side"), &[
                ("screw", words::SCREW), ("nut", words::NUT),
            ]))
            @if how != "which" {
                @if let Some(shown) = shown { (classes(shown)) }
            }
        }
    }
}

struct Form<'a> {
    fields: &'a Fields,
    wrong: Option<&'a (&'static str, Error)>,
}

impl<'a> Form<'a> {
    fn field(&self, name: &'a str, label: &'a str, keys: &'a str) -> Markup {
        let value = ask::typed(self.fields, name);
        let error = self.wrong.filter(|(wrong, _)| *wrong == name);
        field(&Field {
            name,
            label,
            value,
            keys,
            error: error.map(|(_, error)| said(error, value)),
        })
    }

    fn name(&self, shown: Option<&Asked>) -> Markup {
        let typed = ask::typed(self.fields, "th-name").trim();
        html! {
            div.big-field { (self.field("th-name", words::THREAD, "text")) }
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
            div {
                p.lab id="th-job" { (words::IN_THIS_JOB) }
                div.chips.wide.job-chips role="group" aria-labelledby="th-job" {
                    @for (name, what) in CLOCK {
                        button.chip type="button" data-do="th-name" data-value=(name) aria-pressed=(typed == name) {
                            (words::times_sign(name)) span { (what) }
                        }
                    }
                }
            }
        }
    }

    fn own(&self) -> Markup {
        let form = ask::typed(self.fields, "th-form");
        html! {
            div {
                p.lab id="th-forms" { (words::FORM) }
                div.chips.wide role="group" aria-labelledby="th-forms" {
                    @for (value, _) in ask::FORMS {
                        button.chip type="button" data-do="th-form" data-value=(value) aria-pressed=(value == form) { (words::form_chip(value)) }
                    }
                    button.chip type="button" data-do="th-form" data-value="own" aria-pressed=(form == "own") { (words::OWN_ANGLE) }
                }
            }
            @if form == "own" {
                (self.field("th-angle", words::ANGLE_BETWEEN, "text"))
                div.pair {
                    (self.field("th-crest", words::CREST_FLAT, "text"))
                    (self.field("th-root", words::ROOT_FLAT, "text"))
                }
            }
            div.pair {
                (self.field("th-major", words::OUTSIDE_MM, "text"))
                (self.field("th-pitch", words::PITCH_OR_TPI, "text"))
            }
            p.why { (words::OWN_HINT) }
            (self.field("th-starts", words::STARTS, "numeric"))
            (segmented("th-hand", words::HAND, ask::typed(self.fields, "th-hand"), &[
                ("right", words::RIGHT_HAND), ("left", words::LEFT_HAND),
            ]))
        }
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
