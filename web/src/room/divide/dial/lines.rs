//! Lines and figures: where the saddle stops, and the dial as its reader sees it.
use super::{across, choice, diameter};
use crate::draw::dial as draw;
use crate::fields::Fields;
use crate::owned;
use crate::owned::lists::{self, Stock};
use crate::pieces::{caution, owned_strip};
use crate::room::steps::{self, Form, Given, Names, Wrong};
use crate::words::{self as all, dial as words};
use handturn::Field as Of;
use handturn::bounds;
use handturn::dial::lines::{self as says, Runs, Slide, Stops, Surface};
use handturn::dial::width::{self, Across};
use handturn::divide::Graduation;
use handturn::head::{Head, Sense};
use handturn::measure::Length;
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[
    ("di-on", "face"),
    ("di-stand", "upright"),
    ("di-figure", "2.5"),
    ("di-diameter", ""),
    ("di-lead", ""),
    ("di-round", ""),
    ("di-edge", "0"),
    ("di-runs", "up"),
]];

/// A dial as it is drawn and its lines' stops.
struct Drawn {
    surface: Surface,
    upright: bool,
    figure: Length,
    diameter: Length,
    stops: Stops,
}

fn drawn(text: Given, head: &Head, marks: &Graduation) -> Result<Drawn, Wrong> {
    let surface = match text.get("di-on") {
        "handwheel" => Surface::HandwheelRim,
        "table" => Surface::TableRim,
        _ => Surface::Face,
    };
    let figure = text.length("di-figure", Of::Length)?;
    width::division(2, figure, Across::Arc).map_err(|e| ("di-figure", e))?;
    let table = lists::mill_table(text.fields);
    let slide = Slide {
        lead: text.length_if("di-lead", Of::Screw)?.unwrap_or(table.lead),
        marks: match text.is_empty("di-round") {
            true => table.marks,
            false => text.count("di-round", bounds::SLIDE_MARKS)?,
        },
        runs: if text.get("di-runs") == "down" { Runs::Backwards } else { Runs::Forwards },
    };
    let stops = says::stops(marks.kinds, text.length("di-edge", Of::Length)?, &slide);
    let stops = stops.map_err(|error| match error.field {
        Of::Length => ("di-edge", error),
        Of::SlideDial => ("di-round", error),
        _ => ("di-lead", error),
    })?;
    let upright = text.get("di-stand") != "inverted";
    Ok(Drawn { surface, upright, figure, diameter: diameter(text, head)?, stops })
}

/// The part as markup.
pub(super) fn part(fields: &Fields, marks: &Graduation) -> Markup {
    let head = owned::head(fields);
    let (found, wrong) = steps::in_force(fields, NAMES, |text| drawn(text, &head, marks));
    let form = Form { fields, names: NAMES, wrong: wrong.as_ref() };
    let table = lists::mill_table(fields);
    let climbs = marks.numbers.map_or(Sense::Clockwise, |numbers| numbers.climbs);
    html! {
        div.two {
            div.do {
                @if let Some(found) = &found { (stops(&found.stops, marks)) }
                div.setup {
                    div.pair {
                        (form.filled("di-lead", words::SCREW, Some(words::of_the_table(&table))))
                        (form.filled("di-round", words::MARKS_ROUND, Some(table.marks.to_string())))
                        (form.text("di-edge", words::FROM_EDGE))
                    }
                    (owned_strip(fields, &[Stock::MillTable]))
                    (choice(form, "di-runs", words::DRAWN, &[("up", words::COUNTS_UP), ("down", words::COUNTS_DOWN)]))
                }
            }
            div.figures {
                @if let Some(found) = &found {
                    @let figures = says::figures(found.surface, found.upright, climbs);
                    @let (picture, top) = draw::drawing(&draw::View { dial: marks, diameter: found.diameter, figure: found.figure, figures, upright: found.upright });
                    figure.draw {
                        (picture)
                        figcaption.why { (words::dial_caption(found.diameter, top)) }
                    }
                    @if marks.numbers.is_some() {
                        ul.facts-list { @for line in words::stand(&figures) { li { (line) } } }
                    }
                }
                div.setup {
                    (choice(form, "di-on", words::READ_ON, &[
                        ("face", words::FACE), ("handwheel", words::HANDWHEEL_RIM), ("table", words::TABLE_RIM),
                    ]))
                    (choice(form, "di-stand", words::FIGURES_STAND, &[
                        ("upright", words::UPRIGHT), ("inverted", words::INVERTED),
                    ]))
                    div.pair { (across(form, &head)) (form.text("di-figure", words::FIGURE_HEIGHT)) }
                }
            }
        }
    }
}

/// Where the saddle stops, as a table; the caution of drawing lines.
fn stops(stops: &Stops, marks: &Graduation) -> Markup {
    let begin = stops.start.from_zero > 0;
    html! {
        h3 id="dial-stop-at" { (words::SADDLE_STOPS) }
        p.why { (words::ZERO_AT_EDGE) }
        div.scroll tabindex="0" role="region" aria-labelledby="dial-stop-at" {
            table id="dial-stops" {
                thead { tr { th scope="col" { (words::LINE) } th scope="col" { (words::LENGTH) } th scope="col" { (words::STOP_AT) } th scope="col" { (words::COMES_TO) } } }
                tbody {
                    @if begin { tr { th scope="row" { (words::BEGIN) } td {} td { b { (words::reading(&stops.start)) } } td {} } }
                    @for (kind, (stop, line)) in stops.ends.iter().zip(marks.kinds).enumerate() {
                        @if marks.pattern.iter().any(|k| usize::from(*k) == kind) {
                            tr {
                                th scope="row" { (all::mark_kind(kind as u8)) }
                                td { (all::decimal(line.length.mm(), 3)) " mm" }
                                td { b { (words::reading(&stop.reading)) } }
                                td { (words::comes_to(stop)) }
                            }
                        }
                    }
                }
            }
        }
        (caution(html! { (words::STANDS_STILL) " " (words::STAMPING) }))
    }
}

/// Keeps the fields where they read.
pub(super) fn keep(fields: &mut Fields, marks: &Graduation) {
    let head = owned::head(fields);
    super::keep(fields, NAMES, |text| drawn(text, &head, marks).map(drop));
}
