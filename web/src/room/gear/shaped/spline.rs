//! Straight-sided splines, and keyways.
use super::{care, drawn, large};
use crate::draw::spline as draw;
use crate::pieces::caution;
use crate::room::steps::{Form, Given, Names, Wrong, about, length};
use crate::words::{self as all, gear::shaped as says};
use handturn::Field as Of;
use handturn::bounds::{Bound, SPLINE_KEYS};
use handturn::gear::keyway::{self, Keyway, keyway};
use handturn::gear::spline::{Cuts, Spline, cut};
use handturn::gear::spline_series::ISO_14;
use maud::{Markup, html};

pub(super) const NAMES: &[&Names] = &[&[
    ("ge-sp-what", "splines"),
    ("ge-sp-keys", "6"),
    ("ge-sp-minor", "26"),
    ("ge-sp-major", "30"),
    ("ge-sp-key", "6"),
    ("ge-sp-cutter", "4"),
    ("ge-kw-ways", "1"),
    ("ge-kw-shaft", "20"),
    ("ge-kw-width", "6"),
    ("ge-kw-side", "3.5"),
]];

const WAYS: Bound = Bound { field: Of::Keys, least: 1, greatest: 100 };

/// What is asked for, and its cut.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) enum Asked {
    Splines(Spline, Cuts),
    Keyways(u32, Keyway, keyway::Cut),
}

pub(super) fn entry(form: Form) -> Markup {
    let keyways = form.typed("ge-sp-what") == "keyways";
    html! {
        (form.choice("ge-sp-what", says::WHAT, &[("splines", says::SPLINES), ("keyways", says::KEYWAYS)]))
        @if keyways {
            (form.number("ge-kw-ways", says::WAYS))
            (form.text("ge-kw-shaft", says::SHAFT))
            (form.text("ge-kw-width", says::KEY_WIDTH))
            (form.text("ge-kw-side", says::SIDE))
        } @else {
            div.big-field { (form.number("ge-sp-keys", says::KEYS)) }
            div.pair {
                (form.text("ge-sp-minor", says::MINOR))
                (form.text("ge-sp-major", says::MAJOR))
                (form.text("ge-sp-key", says::KEY))
                (form.text("ge-sp-cutter", says::WIDTH_CUTTER))
            }
            (listed(form))
        }
    }
}

/// The sizes of the standard, folded away.
fn listed(form: Form) -> Markup {
    let typed = ["ge-sp-keys", "ge-sp-minor", "ge-sp-major", "ge-sp-key"]
        .map(|name| form.typed(name).trim());
    let typed = typed.join(" ");
    html! {
        details id="ge-sp-listed" {
            summary { (says::LISTED) }
            div.chips.wide role="group" aria-label=(says::LISTED) {
                @for size in &ISO_14 {
                    @let key = all::decimal(tenths(size.key_tenths), 1);
                    @let [keys, minor, major] = [size.keys, size.minor_mm, size.major_mm].map(|n| n.to_string());
                    @let value = [&*keys, &minor, &major, &key].join(" ");
                    button.chip type="button" data-do="ge-sp-take" data-value=(value) aria-pressed=(value == typed) {
                        (keys) " × " (minor) " × " (major)
                    }
                }
            }
        }
    }
}

fn tenths(n: u8) -> handturn::number::Fraction {
    handturn::number::Fraction::new(i64::from(n), 10).unwrap_or(handturn::number::Fraction::ZERO)
}

pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    if text.get("ge-sp-what") == "keyways" {
        let ask = Keyway {
            shaft: text.length("ge-kw-shaft", Of::Blank)?,
            width: text.length("ge-kw-width", Of::Key)?,
            side: text.length("ge-kw-side", Of::Depth)?,
        };
        let ways = text.count("ge-kw-ways", WAYS)?;
        let cut = keyway(&ask).map_err(|error| match error.field {
            Of::Blank => ("ge-kw-shaft", error),
            Of::Depth => ("ge-kw-side", error),
            _ => ("ge-kw-width", error),
        })?;
        return Ok(Asked::Keyways(ways, ask, cut));
    }
    let ask = Spline {
        keys: text.count("ge-sp-keys", SPLINE_KEYS)?,
        major: text.length("ge-sp-major", Of::Blank)?,
        minor: text.length("ge-sp-minor", Of::Diameter)?,
        key: text.length("ge-sp-key", Of::Key)?,
        cutter: text.length("ge-sp-cutter", Of::Cutter)?,
    };
    let cuts = cut(&ask).map_err(|error| match error.field {
        Of::Blank => ("ge-sp-major", error),
        Of::Diameter => ("ge-sp-minor", error),
        Of::Cutter => ("ge-sp-cutter", error),
        _ => ("ge-sp-key", error),
    })?;
    Ok(Asked::Splines(ask, cuts))
}

pub(super) fn heading(asked: &Asked) -> String {
    match asked {
        Asked::Splines(ask, _) => says::splines(ask.keys, ask.minor, ask.major, ask.key),
        Asked::Keyways(ways, ask, _) => says::keyways(*ways, ask.shaft),
    }
}

pub(super) fn parts(asked: &Asked) -> Option<u32> {
    match asked {
        Asked::Splines(ask, _) => Some(ask.keys),
        Asked::Keyways(ways, ..) => Some(*ways).filter(|ways| *ways > 1),
    }
}

pub(super) fn panel(asked: &Asked, step: &str) -> [Markup; 2] {
    match asked {
        Asked::Splines(ask, cuts) => {
            [splines(ask, cuts, step), drawn(draw::drawing(ask, cuts), "")]
        }
        Asked::Keyways(_, ask, cut) => [keyways(ask, cut, step), drawn(draw::keyway(ask, cut), "")],
    }
}

fn splines(ask: &Spline, cuts: &Cuts, step: &str) -> Markup {
    match step {
        "cutter" => html! {
            div { p.lab { (says::OFFSET_MIDDLE) } (crate::room::steps::large(cuts.offset)) }
            dl.facts {
                (length(says::ACROSS, cuts.across))
                @if let Some(widest) = cuts.widest { (about(says::WIDEST, widest.value)) }
            }
            p { (says::TWO_CUTS) }
        },
        "depth" => html! {
            (large(says::DEPTH_TOP, cuts.depth.value))
            dl.facts { (about(says::FLANK, cuts.flank.value)) }
            h3 { (says::BETWEEN) }
            @let (text, loose) = says::between(&cuts.between, &says::half_part(ask.keys), cuts.floor);
            @if loose { (caution(html! { (text) })) } @else { p { (text) } }
            (care())
        },
        "check" => html! {
            div { p.lab { (says::KEY_READS) } (crate::room::steps::large(ask.key)) }
            dl.facts { (length(says::OVER_FLOOR, ask.minor)) (about(says::SPACE, cuts.space.value)) }
        },
        _ => html! {
            div { p.lab { (says::TURN_TO) } (crate::room::steps::large(ask.major)) }
            dl.facts { (length(says::OVER_FLOOR, ask.minor)) }
        },
    }
}

fn keyways(ask: &Keyway, cut: &keyway::Cut, step: &str) -> Markup {
    match step {
        "cutter" => {
            html! { div { p.lab { (says::KEY_CUTTER) } (crate::room::steps::large(ask.width)) } }
        }
        "depth" => html! {
            (large(says::DEPTH_TOP, cut.from_top.value))
            dl.facts { (about(says::ARC, cut.arc.value)) (length(says::SIDE_IS, ask.side)) }
            (care())
        },
        "check" => large(says::OVER_BOTTOM, cut.over.value),
        _ => html! { div { p.lab { (says::TURN_TO) } (crate::room::steps::large(ask.shaft)) } },
    }
}
