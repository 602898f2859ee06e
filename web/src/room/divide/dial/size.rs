//! How wide the divisions come out, how large the dial must be, which dial suits a screw.
use super::{across, diameter};
use crate::fields::Fields;
use crate::owned;
use crate::owned::lists;
use crate::room::steps::{self, Form, Given, Names, Wrong, fact};
use crate::words::{self as all, dial as words};
use handturn::dial::screw;
use handturn::dial::width::{self, Across};
use handturn::divide::Graduation;
use handturn::head::Head;
use handturn::measure::Length;
use handturn::number::Approx;
use handturn::{Error, Field as Of, List};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[("di-diameter", ""), ("di-width", "1.5"), ("di-screw", "")]];

/// Widths at a diameter, diameters for a width, dials for a screw.
struct Sized {
    diameter: Length,
    now: [f64; 2],
    line: [Approx; 2],
    wanted: [f64; 2],
    dials: List<screw::Handy, 19>,
}

fn sized(text: Given, head: &Head, marks: &Graduation) -> Result<Sized, Wrong> {
    let diameter = diameter(text, head)?;
    let wide = text.length("di-width", Of::Length)?;
    let at = |name| move |error| (name, error);
    let both = |name, of: fn(u32, Length, Across) -> Result<Approx, Error>, length| {
        let one = |across| of(marks.count, length, across).map(|a| a.value).map_err(at(name));
        Ok::<_, Wrong>([one(Across::Arc)?, one(Across::Chord)?])
    };
    let table = lists::mill_table(text.fields);
    let screw = text.length_if("di-screw", Of::Screw)?.unwrap_or(table.lead);
    let dials = screw::handy(screw).map_err(at("di-screw"))?;
    Ok(Sized {
        diameter,
        now: both("di-diameter", width::division, diameter)?,
        line: width::line(marks.count, diameter).map_err(at("di-diameter"))?,
        wanted: both("di-width", width::diameter, wide)?,
        dials,
    })
}

/// The part as markup.
pub(super) fn part(fields: &Fields, marks: &Graduation) -> Markup {
    let head = owned::head(fields);
    let (found, wrong) = steps::in_force(fields, NAMES, |text| sized(text, &head, marks));
    let form = Form { fields, names: NAMES, wrong: wrong.as_ref() };
    html! {
        div.two {
            div.figures {
                div.pair { (across(form, &head)) (form.text("di-width", words::WIDTH_WANTED)) }
                @if let Some(found) = &found {
                    dl.facts {
                        (steps::about(words::WIDTH_NOW, found.now[0]))
                        (steps::about(words::CHORD_NOW, found.now[1]))
                        (fact(words::LINE_WIDTH, &words::from_to_mm(found.line), &[words::LINE_WIDTH_WHY]))
                        (across_mm(words::FOR_WIDTH, found.wanted[0]))
                        (across_mm(words::FOR_CHORD, found.wanted[1]))
                    }
                }
            }
            div.figures {
                h3 id="dial-suits" { (words::FOR_SCREW) }
                (form.filled("di-screw", words::LEAD, Some(words::of_the_table(&lists::mill_table(fields)))))
                @if let Some(found) = &found {
                    @if found.dials.is_empty() { p { (words::NONE_SUITS) } } @else { (suits(found)) }
                }
            }
        }
    }
}

/// A diameter as a fact, inches under millimetres.
fn across_mm(name: &str, mm: f64) -> Markup {
    fact(name, &(all::about_mm(mm) + " mm"), &[&words::about_inches(mm)])
}

/// The dials that suit a screw, each to be taken.
fn suits(found: &Sized) -> Markup {
    html! {
        div.scroll tabindex="0" role="region" aria-labelledby="dial-suits" { table id="dial-screws" {
            thead { tr { th scope="col" { (words::MARKS) } th scope="col" { (words::ONE_MARK_IS) } th scope="col" { (words::WIDE) } td {} } }
            tbody {
                @for dial in &found.dials {
                    @let wide = width::division(dial.marks, found.diameter, Across::Arc).map_or(0.0, |w| w.value);
                    tr {
                        th scope="row" { (words::marks(dial.marks)) }
                        td { (words::step(dial.step, dial.inch)) }
                        td { (all::about(wide, 2)) " mm" }
                        td { button.btn type="button" data-do="di-marks" data-value=(dial.marks) aria-label={ (words::TAKE) " " (dial.marks) } { (words::TAKE) } }
                    }
                }
            }
        } }
    }
}

/// Keeps the fields where they read.
pub(super) fn keep(fields: &mut Fields, marks: &Graduation) {
    let head = owned::head(fields);
    super::keep(fields, NAMES, |text| sized(text, &head, marks).map(drop));
}
