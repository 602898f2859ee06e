//! On a cone: a pair of bevel wheels, cut with the head tilted.
use super::{cutters, wheel};
use crate::draw::bevel as picture;
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::steps::{Form, Given, Names, Wrong, large};
use crate::words as all;
use crate::words::errors::said;
use crate::words::gear::{self as words, bevel as says, cutter as cutting, slanted, straight};
use handturn::Field as Of;
use handturn::bounds::WHEEL_TEETH;
use handturn::gear::cutter::for_virtual;
use handturn::gear::{Bevel, BevelSizes, BevelWheel, Depth};
use maud::{Markup, html};

/// The fields of the entry.
pub(super) const NAMES: &[&Names] = &[
    &wheel::TOOTH,
    &[("ge-second", "32"), ("ge-shafts", "90"), ("ge-face", "10"), ("ge-along", "parallel")],
];

/// A pair that is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pair: Bevel,
    sizes: BevelSizes,
}

/// The entry.
pub(super) fn entry(form: Form) -> Markup {
    let parallel = form.typed("ge-along") != "tapering";
    html! {
        div.pair {
            (form.number("ge-teeth", says::FIRST))
            (form.number("ge-second", says::SECOND))
        }
        (wheel::size_by(form))
        div.pair {
            (form.text("ge-shafts", says::SHAFTS))
            (form.text("ge-face", slanted::FACE))
        }
        div {
            p.lab { (says::ALONG) }
            (form.choice("ge-along", says::ALONG, &[("parallel", says::PARALLEL), ("tapering", says::TAPERING)]))
            p.why { (if parallel { says::PARALLEL_WHY } else { says::TAPERING_WHY }) }
        }
        (wheel::pressure(form))
        (wheel::more(form))
    }
}

/// The pair that `text` asks for.
pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let tapering = text.get("ge-along") == "tapering";
    let pair = Bevel {
        teeth: [wheel::teeth(text)?, text.count("ge-second", WHEEL_TEETH)?],
        tooth: wheel::tooth(text)?,
        shafts: text.angle("ge-shafts", Of::Shafts)?,
        face: text.length("ge-face", Of::Face)?,
        depth: if tapering { Depth::Tapering } else { Depth::Parallel },
    };
    let sizes = pair.sizes().map_err(wheel::at)?;
    Ok(Asked { pair, sizes })
}

/// What it is called.
pub(super) fn heading(asked: &Asked) -> String {
    says::name(&asked.pair)
}

/// A step.
pub(super) fn panel(fields: &Fields, asked: &Asked, step: &str) -> Markup {
    let Asked { pair, sizes } = asked;
    match step {
        "cutter" => html! {
            (each(sizes, |one| cutter(fields, asked, one)))
            @if pair.depth == Depth::Tapering {
                dl.facts { (wheel::size_fact(says::SMALL_MODULE, sizes.small_module)) }
                p.why { (says::THIN) }
            }
            (cutters::sets(fields))
        },
        "depth" => html! {
            div {
                p.lab { (straight::WHOLE_DEPTH) }
                (large(sizes.whole_depth))
                p.why { (says::depth_why(pair.depth)) }
            }
            (each(sizes, |one| tilt(one, sizes)))
            (caution(html! { (says::TILT_CARE) " " (words::CUT_CARE) " " (words::MAKERS_CARE) }))
        },
        "check" => html! {
            p.why { (says::CALIPER_AT) }
            (each(sizes, |one| wheel::caliper(&one.caliper)))
        },
        _ => blank(asked),
    }
}

/// A column for each of the two.
fn each(sizes: &BevelSizes, column: impl Fn(&BevelWheel) -> Markup) -> Markup {
    html! {
        div.two {
            @for one in &sizes.wheels {
                section.setup aria-label=(says::wheel(one)) {
                    h3 { (says::wheel(one)) }
                    (column(one))
                }
            }
        }
    }
}

fn blank(asked: &Asked) -> Markup {
    let Asked { pair, sizes } = asked;
    html! {
        (each(sizes, |one| html! {
            (wheel::computed(says::TURN_TO, one.outside_diameter))
            dl.facts {
                (wheel::angle_fact(says::FACE_ANGLE, one.face_angle))
                (wheel::angle_fact(says::BACK_ANGLE, one.back_angle))
                (wheel::size_fact(says::APEX, one.apex_to_tips))
                (wheel::size_fact(says::PITCH_CIRCLE, one.pitch_diameter))
                (wheel::angle_fact(says::PITCH_ANGLE, one.pitch_angle))
            }
        }))
        p.why { (says::ANGLES_WHY) }
        div.two {
            figure.draw.plate { (picture::drawing(pair, sizes)) figcaption.why { (says::PICTURE) } }
            div.figures {
                @if sizes.too_wide { p.care { (says::TOO_WIDE) } }
                dl.facts {
                    (wheel::size_fact(says::CONE, sizes.cone_distance))
                    (wheel::size_fact(says::WIDEST, sizes.widest_face))
                    (wheel::size_fact(says::LARGE_MODULE, sizes.large_module))
                    (wheel::size_fact(says::SMALL_MODULE, sizes.small_module))
                }
                details id="ge-bevel-working" {
                    summary { (all::BY_HAND) }
                    ul.work { @for line in says::lines(pair, sizes) { li { (line) } } }
                }
            }
        }
    }
}

fn cutter(fields: &Fields, asked: &Asked, one: &BevelWheel) -> Markup {
    let set = cutters::set(fields, &asked.pair.tooth);
    html! {
        @match for_virtual(one.virtual_teeth, &set) {
            Ok(choice) => (cutters::answer(&choice, &set)),
            Err(error) => (caution(html! { (said(&error, "").wrong) " " (cutting::TOO_FEW) })),
        }
        (cutters::owned(fields, &asked.pair.tooth, &|set| for_virtual(one.virtual_teeth, set)))
        p { (says::virtual_teeth(one)) }
    }
}

fn tilt(one: &BevelWheel, sizes: &BevelSizes) -> Markup {
    let cuts = says::cuts(one, sizes);
    html! {
        (wheel::turned(says::TILT, one.cutting_angle))
        @if !cuts.is_empty() {
            p.lab { (says::CUTS) }
            ol.work { @for line in cuts { li { (line) } } }
        }
        (wheel::divide(one.teeth))
    }
}
