//! A ratchet wheel.
use super::{angle, care, drawn, large};
use crate::draw::ratchet as draw;
use crate::room::steps::{Form, Given, Names, Wrong, about, fact};
use crate::words::gear::{self as words, shaped as says};
use handturn::Field as Of;
use handturn::bounds::WHEEL_TEETH;
use handturn::gear::ratchet::{Cut, Gap, Ratchet, cut, face_teeth};
use maud::{Markup, html};

pub(super) const NAMES: &[&Names] = &[&[
    ("ge-rt-teeth", "48"),
    ("ge-rt-outside", "40"),
    ("ge-rt-undercut", "0"),
    ("ge-rt-known", "land"),
    ("ge-rt-cutter", "60"),
    ("ge-rt-land", "0.2"),
    ("ge-rt-depth", "1.5"),
]];

/// A ratchet that is asked for, and its cut.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(super) wheel: Ratchet,
    cut: Cut,
    /// How far the head is raised for teeth on a face with the same cutter.
    raised: Option<f64>,
}

pub(super) fn entry(form: Form) -> Markup {
    let known = form.typed("ge-rt-known");
    html! {
        div.big-field { (form.number("ge-rt-teeth", words::TEETH)) }
        (form.text("ge-rt-outside", says::OUTSIDE))
        (form.text("ge-rt-undercut", says::UNDERCUT))
        (form.choice("ge-rt-known", says::KNOWN, &[
            ("land", says::BY_LAND), ("depth", says::BY_DEPTH), ("cutter", says::BY_CUTTER),
        ]))
        @if known != "cutter" { (form.text("ge-rt-cutter", says::CUTTER_ANGLE)) }
        @if known != "land" { (form.text("ge-rt-depth", says::DEPTH_FACE)) }
        @if known != "depth" { (form.text("ge-rt-land", says::LAND)) }
    }
}

pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let wheel = Ratchet {
        teeth: text.count("ge-rt-teeth", WHEEL_TEETH)?,
        outside: text.length("ge-rt-outside", Of::Blank)?,
        undercut: text.angle("ge-rt-undercut", Of::Undercut)?,
    };
    let cutter = || text.angle("ge-rt-cutter", Of::CutterAngle);
    let depth = || text.length("ge-rt-depth", Of::Depth);
    let land = || text.length("ge-rt-land", Of::Land);
    let raised = cutter().and_then(|cutter| face_teeth(wheel.teeth, cutter).map_err(|e| ("", e)));
    let gap = match text.get("ge-rt-known") {
        "depth" => Gap::Depth { cutter: cutter()?, depth: depth()? },
        "cutter" => Gap::Cutter { depth: depth()?, land: land()? },
        _ => Gap::Land { cutter: cutter()?, land: land()? },
    };
    let cut = cut(&wheel, gap).map_err(|error| {
        let name = match error.field {
            Of::Blank => "ge-rt-outside",
            Of::Undercut => "ge-rt-undercut",
            Of::CutterAngle => "ge-rt-cutter",
            Of::Depth => "ge-rt-depth",
            Of::Land => "ge-rt-land",
            _ => "",
        };
        (name, error)
    })?;
    let raised = raised.ok().filter(|_| text.get("ge-rt-known") != "cutter");
    Ok(Asked { wheel, cut, raised: raised.map(|raised| raised.value) })
}

pub(super) fn panel(asked: &Asked, step: &str) -> [Markup; 2] {
    let Asked { wheel, cut, raised } = asked;
    let drawing = || drawn(draw::drawing(wheel, cut), says::FACE_SIDE);
    let left = match step {
        "cutter" => html! {
            (angle(says::SINGLE_ANGLE, &says::degrees(cut.cutter.value)))
            @if wheel.undercut.turns().is_zero() {
                p { (says::RADIAL) }
            } @else {
                dl.facts { (about(says::OFFSET, cut.offset.value)) }
                p { (says::OFFSET_WAY) }
            }
            @if let Some(raised) = raised {
                dl.facts { (fact(says::ON_FACE, &says::minutes(*raised), &[])) }
            }
            p.why { (says::TOOTH_WHY) }
        },
        "depth" => html! {
            (large(says::TOUCH_OVER, cut.depth.value))
            dl.facts { (about(says::DEPTH_TOP, cut.from_top.value)) }
            (care())
        },
        "check" => html! {
            dl.facts {
                (about(says::LAND_LEFT, cut.land.value))
                (fact(says::TOOTH_ANGLE, &says::degrees(cut.tooth.value), &[]))
                (fact(says::BACK_ANGLE, &says::degrees(cut.back.value), &[]))
                (about(says::ROOTS, cut.root.value))
            }
        },
        _ => html! {
            div { p.lab { (says::TURN_TO) } (crate::room::steps::large(wheel.outside)) }
            dl.facts { (about(says::ROOTS, cut.root.value)) }
        },
    };
    [left, drawing()]
}
