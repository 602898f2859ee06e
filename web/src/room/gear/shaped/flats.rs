//! Flats on round stock.
use super::{care, chips, drawn, large};
use crate::draw::flats as draw;
use crate::room::steps::{Form, Given, Names, Wrong, about, fact, length};
use crate::words::gear::shaped as says;
use handturn::Field as Of;
use handturn::bounds::FLATS;
use handturn::gear::flats::{Corners, Flats, Flatted, flats};
use maud::{Markup, html};

pub(super) const NAMES: &[&Names] =
    &[&[("ge-fl-sides", "4"), ("ge-fl-across", "5"), ("ge-fl-stock", "6.5"), ("ge-fl-cutter", "")]];

/// Flats that are asked for, and what becomes of them.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(super) ask: Flats,
    found: Flatted,
}

pub(super) fn entry(form: Form) -> Markup {
    let sides = form.typed("ge-fl-sides").trim();
    let across = match sides {
        "1" => says::FLAT_ROUND,
        _ if sides.ends_with(['1', '3', '5', '7', '9']) => says::TWICE,
        _ => says::ACROSS_FLATS,
    };
    html! {
        div.big-field { (form.number("ge-fl-sides", says::SIDES)) }
        (chips("ge-fl-sides", says::SIDES, sides, &["1", "2", "3", "4", "5", "6", "8"]))
        (form.text("ge-fl-across", across))
        (form.text("ge-fl-stock", says::STOCK))
        (form.text("ge-fl-cutter", says::CUTTER_OR_NONE))
    }
}

pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let ask = Flats {
        sides: text.count("ge-fl-sides", FLATS)?,
        across: text.length("ge-fl-across", Of::Flats)?,
        stock: text.length_if("ge-fl-stock", Of::Blank)?,
        cutter: text.length_if("ge-fl-cutter", Of::Cutter)?,
    };
    let found = flats(&ask).map_err(|error| match error.field {
        Of::Flats => ("ge-fl-across", error),
        Of::Cutter => ("ge-fl-cutter", error),
        _ => ("ge-fl-stock", error),
    })?;
    Ok(Asked { ask, found })
}

pub(super) fn panel(asked: &Asked, step: &str) -> [Markup; 2] {
    let Asked { ask, found } = asked;
    let left = match step {
        "cutter" => html! {
            @if let Some(cut) = &found.cut {
                (large(says::FIRST_WIDTH, cut.first_width.value))
                @if let Some(passes) = cut.passes { dl.facts { (fact(says::PASSES, &passes.to_string(), &[])) } }
            } @else if let Some(sharp) = &found.sharp {
                (large(says::FIRST_WIDTH, sharp.width.value))
            }
            p { (if found.straddle { says::STRADDLE } else { says::ONE_BY_ONE }) }
        },
        "depth" => html! {
            @if let Some(cut) = &found.cut {
                div { p.lab { (says::DEPTH_EACH) } (crate::room::steps::large(cut.depth)) }
            } @else if let Some(sharp) = &found.sharp {
                (large(says::DEPTH_EACH, sharp.depth.value))
            }
            (care())
        },
        "check" => html! {
            dl.facts {
                @if let Some(cut) = &found.cut {
                    (length(says::OVER_FIRST, cut.over_first))
                    (about(says::WIDTH_FLAT, cut.width.value))
                }
                @if found.straddle { (length(says::OVER_FLATS, ask.across)) }
                @if let Some(to) = found.sharp.as_ref().and_then(|sharp| sharp.to_corner.as_ref()) {
                    (about(says::TO_CORNER, to.value))
                }
            }
            @match found.cut.as_ref().map(|cut| cut.corners) {
                Some(Corners::Round(arc)) => p { (says::corners_round(arc.value)) },
                Some(Corners::Sharp) => p { (says::SHARP) },
                None => {},
            }
        },
        _ => html! {
            @if let Some(sharp) = &found.sharp {
                (large(says::CORNERS, sharp.stock.value))
                dl.facts { (about(says::WIDTH_FLAT, sharp.width.value)) }
            } @else if let Some(stock) = ask.stock {
                div { p.lab { (says::TURN_TO) } (crate::room::steps::large(stock)) }
            }
            @if let Some(Corners::Round(arc)) = found.cut.as_ref().map(|cut| cut.corners) {
                p { (says::corners_round(arc.value)) }
            }
        },
    };
    [left, drawn(draw::drawing(ask, found), "")]
}
