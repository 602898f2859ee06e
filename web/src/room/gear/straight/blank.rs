//! Blank: what to turn, the blank as it came out, and whether it swings.
use super::Asked;
use crate::draw::swing as draw;
use crate::fields::Fields;
use crate::room::steps::{self, Form, Given, Names, Wrong, large, length};
use crate::words::{self as all, gear::straight as says};
use handturn::gear::found::{Blank, Height, found};
use handturn::gear::swing::{Room, Setup, swing};
use handturn::{Field as Of, measure::Length};
use maud::{Markup, html};

/// The blank as it came out.
const FOUND: &[&Names] = &[&[("ge-found", "")]];
/// Head and cutter as they are set up.
const SWING: &[&Names] = &[&[
    ("ge-centre", "100"),
    ("ge-cutter", "60"),
    ("ge-collar", "32"),
    ("ge-beside", ""),
    ("ge-room", "1"),
]];

/// The blank that `text` gives; as drawn where it gives none.
fn blank(text: Given, asked: &Asked) -> Result<Blank, Wrong> {
    let at = |error| ("ge-found", error);
    let drawn = asked.wheel.outside_diameter().map_err(at)?;
    found(&asked.wheel, text.length_if("ge-found", Of::Blank)?.unwrap_or(drawn)).map_err(at)
}

/// The blank in force.
pub(super) fn in_force(fields: &Fields, asked: &Asked) -> (Option<Blank>, Option<Wrong>) {
    steps::in_force(fields, FOUND, |text| blank(text, asked))
}

/// How the wheel is set up, and the room there is.
fn room(text: Given, outside: Length, depth: Length) -> Result<(Setup, Room), Wrong> {
    let setup = Setup {
        outside,
        depth,
        centre_height: text.length("ge-centre", Of::CentreHeight)?,
        cutter: text.length("ge-cutter", Of::Cutter)?,
        collar: text.length("ge-collar", Of::Cutter)?,
        beside: text.length_if("ge-beside", Of::Length)?,
        clearance: text.length("ge-room", Of::Length)?,
    };
    let room = swing(&setup).map_err(|error| match error.field {
        Of::CentreHeight => ("ge-centre", error),
        Of::Cutter => ("ge-collar", error),
        Of::Length => ("ge-room", error),
        _ => ("", error),
    })?;
    Ok((setup, room))
}

/// Keeps the step's fields, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    steps::keep_good(fields, FOUND, name, |text| blank(text, asked));
    if let (Some(blank), _) = in_force(fields, asked) {
        let outside = outside(&blank);
        steps::keep_good(fields, SWING, name, |text| room(text, outside, blank.depth));
    }
}

/// The outside diameter in force, as drawn or as it came out.
pub(super) fn outside_in_force(fields: &Fields, asked: &Asked) -> Option<Length> {
    in_force(fields, asked).0.as_ref().map(outside)
}

fn outside(blank: &Blank) -> Length {
    blank.drawn.mm().checked_add(blank.over.mm()).map_or(blank.drawn, Length::from_mm)
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, asked: &Asked) -> Markup {
    let wheel = &asked.wheel;
    let (blank, wrong) = in_force(fields, asked);
    let form = Form { fields, names: FOUND, wrong: wrong.as_ref() };
    let (swing, bad) = blank.as_ref().map_or((None, None), |blank| {
        let outside = outside(blank);
        steps::in_force(fields, SWING, |text| room(text, outside, blank.depth))
    });
    html! {
        div.two {
            div.figures {
                @if let Ok(outside) = wheel.outside_diameter() {
                    div { p.lab { (says::TURN_TO) } (large(outside)) }
                }
                dl.facts {
                    @if let Ok(pitch) = wheel.pitch_diameter() { (length(says::PITCH_CIRCLE, pitch)) }
                    @if let Ok(root) = wheel.root_diameter() { (length(says::BOTTOM, root)) }
                }
                details id="ge-blank-working" {
                    summary { (all::BY_HAND) }
                    ul.work { li { (says::blank_line(wheel)) } }
                    p.why { (says::BLANK_FROM) }
                }
                section.setup aria-label=(says::AS_FOUND) {
                    h3 { (says::AS_FOUND) }
                    (form.text("ge-found", says::FOUND))
                    @if let Some(blank) = &blank { (as_found(blank)) }
                }
                (set_up(Form { fields, names: SWING, wrong: bad.as_ref() }))
            }
            div.figures {
                @if let Some((setup, room)) = &swing { (swings(setup, room)) }
            }
        }
    }
}

/// What becomes of a blank that is not as drawn.
fn as_found(blank: &Blank) -> Markup {
    let care = matches!(blank.height, Height::Low | Height::High | Height::Bottoms);
    html! {
        @if blank.height == Height::Drawn {
            p.why { (says::FOUND_WHY) }
        } @else {
            div.verdict.care[care] role="status" {
                p.verdict-big { (says::cut_deep(blank)) }
                p { (says::height(blank)) }
            }
        }
    }
}

/// Head, cutter and arbor as fields.
fn set_up(form: Form) -> Markup {
    html! {
        section.setup aria-label=(says::SET_UP) {
            h3 { (says::SET_UP) }
            div.pair {
                (form.text("ge-centre", says::CENTRE_HEIGHT))
                (form.text("ge-cutter", says::CUTTER_DIAMETER))
                (form.text("ge-collar", says::COLLAR))
                (form.text("ge-beside", says::BESIDE))
                (form.text("ge-room", says::ROOM))
            }
            p.why { (says::SWING_WHY) }
        }
    }
}

/// Whether it swings, and the cutter's collars clear it.
fn swings(setup: &Setup, room: &Room) -> Markup {
    let clear = room.table_clears && room.collar_clears && room.head_clears;
    html! {
        section.setup aria-label=(says::SWINGS) {
            h3 { (says::SWINGS) }
            div.verdict.care[!clear] role="status" {
                @for line in says::room(room) { p { (line) } }
            }
            figure.draw.plate { (draw::drawing(setup, room)) figcaption.why { (says::SEEN_ALONG) } }
            dl.facts {
                (length(says::TOUCHING, room.touching))
                (length(says::AT_DEPTH, room.at_depth))
                (length(says::LEAST_CUTTER, room.least_cutter))
            }
        }
    }
}
