//! A worm and its wheel: the worm by a lathe's gears, the wheel gashed and hobbed.
use super::wheel;
use crate::draw::worm as picture;
use crate::pieces::caution;
use crate::room::steps::{Form, Given, Names, Wrong, fact};
use crate::words as all;
use crate::words::gear::{self as words, slanted, straight, worm as says};
use handturn::gear::{Axial, Worm, WormPair, WormSizes, WormWheel};
use handturn::thread::Hand;
use handturn::{Field as Of, bounds};
use maud::{Markup, html};

/// The fields of the entry.
pub(super) const NAMES: &[&Names] = &[
    &wheel::TOOTH,
    &[
        ("ge-starts", "1"),
        ("ge-axial", "3"),
        ("ge-worm", "20"),
        ("ge-face", "12"),
        ("ge-leave", "0.2"),
    ],
];

/// A pair that is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(in crate::room::gear) pair: WormPair,
    worm: WormSizes,
    wheel: WormWheel,
}

/// The entry.
pub(super) fn entry(form: Form) -> Markup {
    html! {
        div.big-field { (form.number("ge-teeth", says::WHEEL_TEETH)) }
        (form.choice("ge-by", words::SIZE_BY, &[
            ("module", words::BY_MODULE), ("dp", words::BY_DP), ("pitch", says::BY_PITCH),
        ]))
        div.pair {
            @match form.typed("ge-by") {
                "dp" => (form.number("ge-dp", words::DP)),
                "pitch" => (form.text("ge-axial", says::PITCH_MM)),
                _ => (form.text("ge-module", words::MODULE_MM)),
            }
            (form.number("ge-starts", says::STARTS))
            (form.text("ge-worm", says::DIAMETER))
            (form.text("ge-face", slanted::FACE))
            (form.text("ge-leave", says::LEAVE))
        }
        (wheel::pressure(form))
        (wheel::more(form))
    }
}

/// The pair that `text` asks for.
pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let tooth = wheel::tooth(text)?;
    let pitch = if text.get("ge-by") == "pitch" {
        Axial::Pitch(text.length("ge-axial", Of::Pitch)?)
    } else {
        Axial::Size(tooth.size)
    };
    let starts = u8::try_from(text.count("ge-starts", bounds::STARTS)?).unwrap_or(u8::MAX);
    let worm = Worm {
        starts,
        pitch,
        pressure_angle: tooth.pressure_angle,
        rule: tooth.rule,
        diameter: text.length("ge-worm", Of::Diameter)?,
        hand: Hand::Right,
    };
    let pair = WormPair {
        worm,
        teeth: wheel::teeth(text)?,
        face: text.length("ge-face", Of::Face)?,
        leave: text.length("ge-leave", Of::Depth)?,
    };
    let (worm, wheel) =
        worm.sizes().and_then(|worm| Ok((worm, pair.wheel()?))).map_err(|error| {
            match error.field {
                Of::Depth if pair.leave.mm() > handturn::number::Fraction::ZERO => {
                    ("ge-leave", error)
                }
                _ => wheel::at(error),
            }
        })?;
    Ok(Asked { pair, worm, wheel })
}

/// What it is called.
pub(super) fn heading(asked: &Asked) -> String {
    says::name(&asked.pair)
}

/// A step.
pub(super) fn panel(asked: &Asked, step: &str) -> Markup {
    match step {
        "cutter" => tool(asked),
        "depth" => depth(asked),
        "check" => checked(asked),
        _ => blank(asked),
    }
}

fn blank(asked: &Asked) -> Markup {
    let Asked { pair, worm, wheel } = asked;
    html! {
        div.two {
            div.figures {
                (wheel::computed(says::TURN_WORM, worm.outside_diameter))
                (wheel::computed(says::TURN_WHEEL, wheel.throat_diameter))
                dl.facts {
                    (wheel::size_fact(says::THROAT_RADIUS, wheel.throat_radius))
                    (wheel::size_fact(says::CORNERS, wheel.outside_diameter))
                    (wheel::size_fact(says::USEFUL_FACE, wheel.useful_face))
                    (wheel::size_fact(straight::PITCH_CIRCLE, wheel.pitch_diameter))
                    (wheel::size_fact(says::BOTTOM, worm.root_diameter))
                }
                p.why { (says::FLAT_WHY) }
                details id="ge-worm-working" {
                    summary { (all::BY_HAND) }
                    ul.work { @for line in says::lines(pair, worm, wheel) { li { (line) } } }
                }
            }
            div.figures {
                figure.draw.plate { (picture::drawing(pair, worm, wheel)) figcaption.why { (says::PICTURE) } }
                details id="ge-free" {
                    summary { (says::FREE) }
                    (wheel::computed(says::FREE_BLANK, wheel.free_blank))
                    p { (says::free_within(wheel)) }
                    dl.facts { (wheel::size_fact(says::FREE_CENTRES, wheel.free_centre_distance)) }
                    p.why { (says::FREE_WHY) }
                }
            }
        }
    }
}

fn tool(asked: &Asked) -> Markup {
    let Asked { pair, worm, wheel } = asked;
    html! {
        div.two {
            div.figures {
                (wheel::computed(says::TOOL_END, worm.tool_end))
                p.why { (says::TOOL_WHY) }
                dl.facts {
                    (wheel::size_fact(says::LEAD, worm.lead.mm()))
                    (fact(says::LEAD_ANGLE, &words::degrees(worm.lead_angle.value), &[]))
                    (wheel::size_fact(straight::WHOLE_DEPTH, worm.whole_depth))
                }
                div.acts {
                    button.btn type="button" data-do="th-worm" data-value=(says::for_thread(&pair.worm)) { (says::GEAR_LATHE) }
                }
            }
            div.figures {
                (wheel::computed(says::HOB, wheel.hob_diameter))
                p.why { (says::HOB_WHY) }
            }
        }
    }
}

fn depth(asked: &Asked) -> Markup {
    let Asked { pair, wheel, .. } = asked;
    html! {
        div.two {
            div.figures {
                (wheel::turned(says::GASH, wheel.gash_angle))
                p { (says::gashes(pair.teeth)) }
                (wheel::computed(says::GASH_DEPTH, wheel.gash_depth))
                dl.facts { (wheel::size_fact(says::HOB_DEPTH, wheel.whole_depth)) }
            }
            div.figures {
                p.why { (says::GASH_WHY) }
                (caution(html! { (says::GASH_CARE) " " (all::FINGERS_OUT) " " (words::MAKERS_CARE) }))
            }
        }
    }
}

fn checked(asked: &Asked) -> Markup {
    let Asked { worm, wheel, .. } = asked;
    html! {
        div.two {
            div.figures { (wheel::computed(says::CENTRES, wheel.centre_distance)) }
            dl.facts {
                (fact(says::RATIO, &says::ratio(wheel.ratio), &[]))
                (wheel::size_fact(says::NORMAL_PITCH, worm.normal_pitch))
                (wheel::size_fact(straight::PITCH_CIRCLE, wheel.pitch_diameter))
            }
        }
    }
}
