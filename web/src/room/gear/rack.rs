//! Along a bar: a rack, its gaps set by the table's dial.
use super::{cutters, wheel};
use crate::draw::rack as picture;
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::{caution, owned_strip};
use crate::room::steps::{self, Form, Given, Names, Wrong, large, length};
use crate::words::errors::said;
use crate::words::gear::{self as words, cutter as cutting, rack as says, straight};
use handturn::bounds::{self, Bound};
use handturn::gear::cutter::for_teeth;
use handturn::gear::{Rack, RackSizes};
use handturn::thread::dial::{Dial, Reads};
use handturn::{Error, Field as Of};
use maud::{Markup, html};

/// The fields of the entry.
pub(super) const NAMES: &[&Names] = &[&wheel::TOOTH, &[("ge-gaps", "20")]];
const FROM: &[&Names] = &[&[("ge-from", "0")]];
/// Readings listed at a time.
const LISTED: u32 = 40;

/// A rack that is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    rack: Rack,
    sizes: RackSizes,
}

/// The entry.
pub(super) fn entry(form: Form) -> Markup {
    html! {
        div.big-field { (form.number("ge-gaps", says::GAPS)) }
        (wheel::size_by(form))
        (owned_strip(form.fields, &[Stock::MillTable]))
        @if let Some(("", error)) = form.wrong { (caution(html! { (said(error, "").wrong) })) }
        (wheel::pressure(form))
        (wheel::more(form))
    }
}

/// The rack that `text` asks for.
pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let table = lists::mill_table(text.fields);
    let division = table.mark().map_err(|error| ("", error))?;
    let dial = Dial { division, reads: Reads::Travel, marks: table.marks };
    let gaps = text.count("ge-gaps", bounds::GAPS)?;
    let rack = Rack { tooth: wheel::tooth(text)?, gaps, dial };
    let at = |error: Error| match error.field {
        Of::SlideDial => ("", error),
        _ => wheel::at(error),
    };
    let sizes = rack.sizes().map_err(at)?;
    Ok(Asked { rack, sizes })
}

/// What it is called.
pub(super) fn heading(asked: &Asked) -> String {
    says::name(&asked.rack)
}

/// A step.
pub(super) fn panel(fields: &Fields, asked: &Asked, step: &str) -> Markup {
    match step {
        "cutter" => cutter(fields, asked),
        "depth" => depth(fields, asked),
        "check" => checked(asked),
        _ => blank(asked),
    }
}

/// Keeps the fields of the step that `name` belongs to, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    steps::keep_good(fields, FROM, name, |text| from(text, asked));
}

fn blank(asked: &Asked) -> Markup {
    let Asked { rack, sizes } = asked;
    html! {
        div.two {
            div.figures {
                (wheel::computed(says::LENGTH, sizes.length))
                dl.facts { (length(says::HEIGHT, sizes.addendum)) }
                p.why { (says::STOCK_WHY) }
                ul.work { li { (says::line(rack, sizes.pitch.value)) } }
            }
            figure.draw.plate { (picture::drawing(rack, sizes)) }
        }
    }
}

fn cutter(fields: &Fields, asked: &Asked) -> Markup {
    let tooth = &asked.rack.tooth;
    let set = cutters::set(fields, tooth);
    html! {
        div.two {
            div.figures {
                @if let Ok(choice) = for_teeth(bounds::WHEEL_TEETH.greatest, &set) { (cutters::answer(&choice, &set)) }
                (cutters::owned(fields, tooth, &|set| for_teeth(bounds::WHEEL_TEETH.greatest, set)))
                (cutters::sets(fields))
            }
            div.figures {
                p { (cutting::to_get(&words::size(tooth.size), tooth.pressure_angle)) }
                p.why { (says::CUTTER) }
            }
        }
    }
}

fn from(text: Given, asked: &Asked) -> Result<u32, Wrong> {
    let last = asked.rack.gaps.saturating_sub(1);
    text.count("ge-from", Bound { field: Of::Position, least: 0, greatest: last })
}

fn depth(fields: &Fields, asked: &Asked) -> Markup {
    let Asked { rack, sizes } = asked;
    let (first, wrong) = steps::in_force(fields, FROM, |text| from(text, asked));
    let first = first.unwrap_or(0);
    let form = Form { fields, names: FROM, wrong: wrong.as_ref() };
    let places =
        (first..rack.gaps.min(first + LISTED)).filter_map(|k| Some((k, rack.place(k).ok()?)));
    html! {
        div.two {
            div.figures {
                div {
                    p.lab { (straight::WHOLE_DEPTH) }
                    (large(sizes.whole_depth))
                    p.why { (words::rule(rack.tooth.rule)) }
                }
                (caution(html! { (says::CARE) " " (words::MAKERS_CARE) }))
                p.why { (says::READ_WHY) }
                @if rack.gaps > LISTED { (form.number("ge-from", says::FROM)) }
            }
            div.scroll tabindex="0" role="region" aria-label=(says::READINGS) {
                table.readings {
                    caption { (says::READINGS) }
                    thead { tr { th scope="col" { (says::GAP) } th scope="col" { (says::TURNS) } th scope="col" { (says::MARK) } th scope="col" { (says::OFF) } } }
                    tbody {
                        @for (gap, place) in places {
                            tr {
                                th scope="row" { (gap) }
                                td { (place.reading.turns) }
                                td { b { (place.reading.mark) } }
                                td { (says::off(place.off.value)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn checked(asked: &Asked) -> Markup {
    let sizes = &asked.sizes;
    html! {
        div.two {
            div.figures { (wheel::computed(says::THICK, sizes.thickness)) }
            dl.facts {
                (wheel::size_fact(says::PITCH, sizes.pitch))
                (length(says::HEIGHT, sizes.addendum))
                (wheel::size_fact(says::WORST, sizes.worst))
                (wheel::size_fact(says::ADJACENT, sizes.adjacent))
            }
        }
    }
}
