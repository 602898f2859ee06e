//! Cam lobes: with a raised head, or by steps.
use super::{angle, care, drawn, large};
use crate::draw::cam as draw;
use crate::pieces::caution;
use crate::room::steps::{Form, Given, Names, Wrong, about, fact, length};
use crate::words::{self as all, gear::shaped as says};
use handturn::Field as Of;
use handturn::bounds::TIMES;
use handturn::gear::cam::{Lobe, Set, Stepped, Steps, after, lobe, steps};
use maud::{Markup, html};

pub(super) const NAMES: &[&Names] = &[&[
    ("ge-cm-by", "raised"),
    ("ge-cm-rise", "4"),
    ("ge-cm-over", "90"),
    ("ge-cm-geared", "20"),
    ("ge-cm-face", "6"),
    ("ge-cm-raised", ""),
    ("ge-cm-steps", "90"),
    ("ge-cm-radius", "30"),
    ("ge-cm-mill", "10"),
]];

/// A lobe that is asked for, and how it is cut.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) enum Asked {
    Raised(Lobe, Set),
    Steps(Steps, Stepped),
}

pub(super) fn entry(form: Form) -> Markup {
    html! {
        (form.choice("ge-cm-by", says::HOW, &[("raised", says::RAISED_HEAD), ("steps", says::BY_STEPS)]))
        div.pair {
            (form.text("ge-cm-rise", says::RISE))
            (form.text("ge-cm-over", says::OVER))
        }
        @if form.typed("ge-cm-by") == "steps" {
            (form.number("ge-cm-steps", says::STEPS))
            (form.text("ge-cm-radius", says::RADIUS))
            (form.text("ge-cm-mill", says::MILL))
        } @else {
            (form.text("ge-cm-geared", says::GEARED))
            (form.text("ge-cm-face", says::FACE))
            (form.text("ge-cm-raised", says::RAISED))
        }
    }
}

pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let rise = text.length("ge-cm-rise", Of::Rise)?;
    let over = text.angle("ge-cm-over", Of::Angle)?;
    if text.get("ge-cm-by") == "steps" {
        let ask = Steps {
            rise,
            over,
            steps: text.count("ge-cm-steps", TIMES)?,
            radius: text.length("ge-cm-radius", Of::Ring)?,
            mill: text.length("ge-cm-mill", Of::Cutter)?,
        };
        let found = steps(&ask).map_err(|error| match error.field {
            Of::Rise => ("ge-cm-rise", error),
            Of::Angle => ("ge-cm-over", error),
            Of::Ring => ("ge-cm-radius", error),
            Of::Cutter => ("ge-cm-mill", error),
            _ => ("ge-cm-steps", error),
        })?;
        return Ok(Asked::Steps(ask, found));
    }
    let raised = if text.is_empty("ge-cm-raised") {
        None
    } else {
        Some(text.angle("ge-cm-raised", Of::Angle)?)
    };
    let ask = Lobe {
        rise,
        over,
        geared: text.length("ge-cm-geared", Of::Lead)?,
        face: text.length("ge-cm-face", Of::Face)?,
        raised,
    };
    let set = lobe(&ask).map_err(|error| match error.field {
        Of::Rise => ("ge-cm-rise", error),
        Of::Lead => ("ge-cm-geared", error),
        Of::Face => ("ge-cm-face", error),
        // The lobe's own angle goes to a turn, the head's to a quarter.
        _ if lobe(&Lobe { raised: None, ..ask }).is_ok() => ("ge-cm-raised", error),
        _ => ("ge-cm-over", error),
    })?;
    Ok(Asked::Raised(ask, set))
}

pub(super) fn heading(asked: &Asked) -> String {
    match asked {
        Asked::Raised(ask, _) => says::cam(ask.rise, ask.over),
        Asked::Steps(ask, _) => says::cam(ask.rise, ask.over),
    }
}

/// Steps that are an even part of a turn can be divided as such.
pub(super) fn parts(asked: &Asked) -> Option<u32> {
    let Asked::Steps(_, found) = asked else { return None };
    let parts = found.turn.turns().inverse().ok().filter(|parts| parts.is_whole())?;
    u32::try_from(parts.num()).ok()
}

pub(super) fn panel(asked: &Asked, step: &str) -> [Markup; 2] {
    match asked {
        Asked::Raised(_, set) => [raised(set, step), drawn(draw::raised(set), says::ANGLE_TRUE)],
        Asked::Steps(ask, found) => [by_steps(ask, found, step), drawn(draw::stepped(ask), "")],
    }
}

fn raised(set: &Set, step: &str) -> Markup {
    match step {
        "cutter" => html! {
            (large(says::FLUTES, set.flute.value))
            p { (says::PARALLEL) }
            dl.facts { (fact(says::UPRIGHT, &says::minutes(set.from_upright.value), &[])) }
        },
        "depth" => html! {
            (angle(says::RAISE, &says::minutes(set.tilt.value)))
            dl.facts {
                (fact(says::UPRIGHT, &says::minutes(set.from_upright.value), &[]))
                (length(says::TRAVEL, set.travel))
            }
            (caution(html! { (says::CAM_CARE) }))
            (care())
        },
        "check" => html! {
            @if let Some((gives, off)) = set.gives {
                (large(says::GIVES, gives.value))
                dl.facts { (about(says::OFF, off.value)) }
            } @else {
                dl.facts { (length(says::LEAD, set.lead)) }
            }
        },
        _ => html! {
            div { p.lab { (says::LEAD) } (crate::room::steps::large(set.lead)) }
            dl.facts { (length(says::TRAVEL, set.travel)) }
        },
    }
}

fn by_steps(ask: &Steps, found: &Stepped, step: &str) -> Markup {
    match step {
        "cutter" => {
            html! { div { p.lab { (says::MILL_IS) } (crate::room::steps::large(ask.mill)) } }
        }
        "depth" => html! {
            div { p.lab { (says::EACH) } (crate::room::steps::large(found.each)) }
            dl.facts { (fact(says::STEP_ANGLE, &all::angle_text(found.turn), &[])) }
            (care())
            (table(ask))
        },
        "check" => html! {
            (large(says::CUSP, found.cusp.value))
            p.why { (says::CUSP_WHY) }
        },
        _ => html! { div { p.lab { (says::RADIUS_IS) } (crate::room::steps::large(ask.radius)) } },
    }
}

/// What the table's dial comes to after each step, folded away; the first hundred or so.
fn table(ask: &Steps) -> Markup {
    html! {
        details id="ge-cm-table" {
            summary { (says::EVERY_STEP) }
            ol.work {
                @for (turned, moved) in (1..=ask.steps.min(120)).filter_map(|step| after(ask, step).ok()) {
                    li { (all::angle_text(turned)) ": " b { (all::mm(moved)) } " mm, " (all::inches(moved)) " in" }
                }
            }
        }
    }
}
