//! A fine dial of one's own: a screw across the end of an arm.
use crate::fields::Fields;
use crate::owned::{self, Entry};
use crate::room::steps::{self, Form, Given, Names, Wrong, fact};
use crate::words::{self as all, dial as words};
use handturn::Field as Of;
use handturn::bounds;
use handturn::dial::fine::{self, Arm, Designed, Wanted};
use handturn::head::Head;
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[
    ("di-pitch", "1"),
    ("di-radius", "60"),
    ("di-fine-marks", "86"),
    ("di-step", "1″"),
    ("di-turns", "2"),
    ("di-within", "0.5″"),
]];

/// The fine dial that is typed.
fn wanted(text: Given, head: &Head) -> Result<(Wanted, Designed), Wrong> {
    let wanted = Wanted {
        arm: Arm {
            lead: text.length("di-pitch", Of::Screw)?,
            radius: text.length("di-radius", Of::Length)?,
            ratio: head.ratio,
        },
        marks: text.count("di-fine-marks", bounds::DIAL_MARKS)?,
        at_work: text.angle("di-step", Of::Angle)?,
        turns: text.number("di-turns", Of::FineDial)?,
        within: text.angle("di-within", Of::Angle)?,
    };
    let designed = fine::design(&wanted).map_err(|error| match error.field {
        Of::Screw => ("di-pitch", error),
        Of::Length => ("di-radius", error),
        _ => ("di-turns", error),
    })?;
    Ok((wanted, designed))
}

fn designed(fields: &Fields) -> (Option<(Wanted, Designed)>, Option<Wrong>) {
    let head = owned::head(fields);
    steps::in_force(fields, NAMES, |text| wanted(text, &head))
}

/// The part as markup.
pub(super) fn part(fields: &Fields) -> Markup {
    let (found, wrong) = designed(fields);
    let form = Form { fields, names: NAMES, wrong: wrong.as_ref() };
    html! {
        p.why { (words::FINE_WHY) }
        div.two {
            div.figures {
                div.pair {
                    (form.text("di-pitch", words::PITCH))
                    (form.text("di-radius", words::RADIUS))
                }
                @if let Some((wanted, _)) = &found { (round_steps(wanted)) }
            }
            div.figures {
                div.pair {
                    (form.number("di-fine-marks", words::FINE_MARKS))
                    (form.text("di-step", words::STEP))
                    (form.number("di-turns", words::TURNS_USED))
                    (form.text("di-within", words::WITHIN))
                }
                @if let Some((wanted, found)) = &found { (comes_of(wanted, found)) }
            }
        }
    }
}

fn round_steps(wanted: &Wanted) -> Markup {
    let steps = fine::steps(&wanted.arm).unwrap_or_default();
    html! {
        h3 id="dial-round" { (words::ROUND_STEPS) }
        @if steps.is_empty() { p { (words::NO_STEP) } } @else {
            div.scroll tabindex="0" role="region" aria-labelledby="dial-round" { table id="dial-steps" {
                thead { tr { th scope="col" { (words::AT_WORK) } th scope="col" { (words::MARKS) } th scope="col" { (words::ARM) } td {} } }
                tbody {
                    @for step in &steps {
                        @let at_work = words::at_work(step.at_work);
                        tr {
                            th scope="row" { (at_work) }
                            td { (step.marks) }
                            td { (all::about_mm(step.radius_mm.value)) " mm" }
                            td { button.btn type="button" data-do="di-take" data-value={ (step.marks) " " (at_work) } aria-label={ (words::TAKE) " " (at_work) } { (words::TAKE) } }
                        }
                    }
                }
            } }
        }
    }
}

fn comes_of(wanted: &Wanted, found: &Designed) -> Markup {
    html! {
        dl.facts id="dial-made" {
            (fact(words::EXACT_RADIUS, &(all::about_mm(found.radius_mm.value) + " mm"), &[&words::about_inches(found.radius_mm.value)]))
            (fact(words::A_MARK_IS, &words::about_seconds(found.mark_arcsec), &[]))
            (fact(words::WORST_OVER, &words::about_seconds(found.worst_arcsec), &[words::worst_says(found)]))
            (fact(words::GOOD_FOR, &words::reach(found.most_marks, wanted.marks), &[]))
            (fact(words::COVERS, &words::holes(found.least_holes), &[]))
            (fact(words::IN_SHOP, &words::in_shop(&found.dial), &[]))
        }
        p.why { (words::TANGENT_WHY) }
        div.acts { button.btn type="button" data-do="di-shop" { (words::PUT_IN_SHOP) } }
    }
}

/// Keeps the fields where they read.
pub(super) fn keep(fields: &mut Fields) {
    let head = owned::head(fields);
    super::keep(fields, NAMES, |text| wanted(text, &head).map(drop));
}

/// A round step is taken: its marks and itself.
pub(super) fn take(fields: &mut Fields, value: &str) {
    if let Some((marks, step)) = value.split_once(' ') {
        fields.set("di-fine-marks", marks);
        fields.set("di-step", step);
    }
}

/// The dial becomes that of the head in force.
pub(super) fn put_in_shop(fields: &mut Fields) {
    let (Some((_, found)), None) = designed(fields) else { return };
    let head = Head { fine_dial: Some(found.dial), ..owned::head(fields) };
    let entries =
        [Entry::FineDial, Entry::FineShift, Entry::FineMarks, Entry::FineTravel, Entry::FineSlack];
    for entry in entries {
        owned::set(fields, entry, &owned::write(&head, entry));
    }
}
