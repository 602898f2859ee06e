//! The wheel with its mate: centres, backlash, how they run.
use super::Asked;
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::steps::{self, Form, Given, Names, Wrong, about, fact, length};
use crate::words::errors::said;
use crate::words::gear::pair as says;
use handturn::gear::Spur;
use handturn::gear::pair::{At, Mesh, Opening, Pair, mesh, opening};
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[
    ("ge-mate", "48"),
    ("ge-mate-shift", "0"),
    ("ge-apart", "backlash"),
    ("ge-backlash", "0.05"),
    ("ge-centres", ""),
    ("ge-felt", ""),
]];

/// A pair and how it runs.
struct Worked {
    pair: Pair,
    mesh: Mesh,
    /// Where to set it when the backlash felt is not the one wanted.
    opening: Option<Opening>,
}

fn work_out(text: Given, asked: &Asked) -> Result<Worked, Wrong> {
    let first = asked.wheel;
    let second = Spur {
        teeth: text.count("ge-mate", bounds::WHEEL_TEETH)?,
        shift: text.number("ge-mate-shift", Of::Shift)?,
        ..first
    };
    second.check().map_err(at)?;
    let by_centres = text.get("ge-apart") == "centres";
    let wanted = text.length("ge-backlash", Of::Backlash)?;
    let set = match text.length_if("ge-centres", Of::Centres)? {
        Some(centres) if by_centres => At::Centres(centres),
        _ => At::Backlash(wanted),
    };
    let pair = Pair { first, second, at: set };
    let mesh = mesh(&pair).map_err(at)?;
    let opening = match text.length_if("ge-felt", Of::Backlash)? {
        Some(felt) => Some(opening(&pair, felt, wanted).map_err(|e| ("ge-felt", e))?),
        None => None,
    };
    Ok(Worked { pair, mesh, opening })
}

/// The field that an error of the core is about.
const fn at(error: Error) -> Wrong {
    let name = match error.field {
        Of::Teeth => "ge-mate",
        Of::Shift => "ge-mate-shift",
        Of::Backlash => "ge-backlash",
        Of::Centres => "ge-centres",
        _ => "",
    };
    (name, error)
}

/// Keeps the fields, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    steps::keep_good(fields, NAMES, name, |text| work_out(text, asked));
}

/// The pair as markup.
pub(super) fn section(fields: &Fields, asked: &Asked) -> Markup {
    let (worked, wrong) = steps::in_force(fields, NAMES, |text| work_out(text, asked));
    let form = Form { fields, names: NAMES, wrong: wrong.as_ref() };
    let by_centres = form.typed("ge-apart") == "centres";
    html! {
        section.extras aria-label=(says::PAIR) {
            h3 { (says::PAIR) }
            div.two {
                div.figures {
                    @if let Some(("", error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
                    @if let Some(worked) = &worked { (answer(&worked.pair, &worked.mesh)) }
                }
                div.figures {
                    div.pair {
                        (form.number("ge-mate", says::MATE))
                        (form.number("ge-mate-shift", says::MATE_SHIFT))
                    }
                    (form.choice("ge-apart", says::SET_BY, &[("backlash", says::BY_BACKLASH), ("centres", says::BY_CENTRES)]))
                    @if by_centres {
                        (form.filled("ge-centres", says::CENTRES, worked.as_ref().map(|worked| says::mm(worked.mesh.centres))))
                    }
                    (form.text("ge-backlash", says::BACKLASH_WANTED))
                    (form.text("ge-felt", says::FELT))
                    @if let Some(opening) = worked.as_ref().and_then(|worked| worked.opening.as_ref()) {
                        div.verdict role="status" { p.verdict-big { (says::open(opening)) } p { (says::opened(opening)) } }
                    }
                    p.why { (says::MATE_WHY) }
                }
            }
        }
    }
}

fn answer(pair: &Pair, mesh: &Mesh) -> Markup {
    html! {
        (super::check::figure(says::APART, mesh.centres.value))
        dl.facts {
            (length(says::STANDARD, mesh.standard))
            (about(says::BACKLASH, mesh.backlash.value))
            (about(says::BETWEEN_FLANKS, mesh.between_flanks.value))
            (fact(says::WORKING_ANGLE, &says::degrees(mesh.working_angle), &[]))
            (fact(says::CONTACT, &says::plain(mesh.contact_ratio), &[says::smooth(mesh.runs_smoothly)]))
            (fact(says::RATIO, &crate::words::plain(mesh.ratio), &[]))
        }
        @for line in says::trouble(mesh) { p.care { (line) } }
        details id="ge-pair-working" {
            summary { (crate::words::BY_HAND) }
            ul.work { @for line in says::lines(pair, mesh) { li { (line) } } }
        }
    }
}
