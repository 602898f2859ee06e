//! A vernier beside the dial: its divisions, its lines, how it reads.
use super::{across, choice, diameter};
use crate::draw::dial as draw;
use crate::fields::Fields;
use crate::owned;
use crate::room::steps::{self, Form, Given, Names, Wrong, fact};
use crate::words::{self as all, dial as words};
use handturn::Field as Of;
use handturn::bounds;
use handturn::dial::vernier::{Laid, Vernier};
use handturn::divide::Graduation;
use handturn::head::Head;
use handturn::measure::{Angle, Length, read};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[
    ("di-diameter", ""),
    ("di-least", "10"),
    ("di-order", "with"),
    ("di-sides", "one"),
    ("di-over", "one"),
    ("di-meets", "3"),
]];

/// The vernier asked for, how it is laid out, the diameter it is cut on.
fn laid(text: Given, head: &Head, marks: &Graduation) -> Result<(Vernier, Laid, Length), Wrong> {
    let at = |error| ("di-least", error);
    let typed = text.get("di-least");
    let mut vernier = match read::count(typed, bounds::VERNIER) {
        Ok(parts) => Vernier::of_parts(marks.count, parts).map_err(at)?,
        // What is no plain count is an angle, by its signs.
        Err(_) if typed.contains(['°', '\'', '′', '"', '″']) => {
            let main = Vernier::of_parts(marks.count, 2).map_err(at)?.main;
            Vernier { main, least: text.angle("di-least", Of::Vernier)?, ..Vernier::default() }
        }
        Err(error) => return Err(at(error.of(Of::Vernier))),
    };
    vernier.retrograde = text.get("di-order") == "against";
    vernier.double = text.get("di-sides") == "both";
    vernier.long = text.get("di-over") == "two";
    let laid = vernier.laid().map_err(at)?;
    Ok((vernier, laid, diameter(text, head)?))
}

/// The part as markup.
pub(super) fn part(fields: &Fields, marks: &Graduation) -> Markup {
    let head = owned::head(fields);
    let (found, wrong) = steps::in_force(fields, NAMES, |text| laid(text, &head, marks));
    let form = Form { fields, names: NAMES, wrong: wrong.as_ref() };
    html! {
        div.setup {
            div.pair { (form.text("di-least", words::PARTS_OF_A_MARK)) (across(form, &head)) }
            div.thirds {
                (choice(form, "di-order", words::NUMBERED, &[("with", words::WITH_DIAL), ("against", words::AGAINST_DIAL)]))
                (choice(form, "di-sides", words::SIDES, &[("one", words::ONE_SIDE), ("both", words::BOTH_SIDES)]))
                (choice(form, "di-over", words::A_DIVISION_OVER, &[("one", words::ONE_MARK), ("two", words::TWO_MARKS)]))
            }
        }
        @if let Some((vernier, laid, diameter)) = &found { (laid_out(fields, vernier, laid, *diameter)) }
    }
}

fn laid_out(fields: &Fields, vernier: &Vernier, laid: &Laid, diameter: Length) -> Markup {
    let arc = |angle: Angle| all::about_mm(angle.arc_mm(diameter).value) + " mm";
    let line = steps::typed(fields, NAMES[0], "di-meets").parse().unwrap_or(3_u32);
    let line = line.min(laid.divisions);
    html! {
        div.two {
            dl.facts {
                (fact(words::DIVISIONS, &words::over_marks(laid), &[]))
                (fact(words::CUT_LINES, &laid.lines.to_string(), &[]))
                (fact(words::ONE_DIVISION, &all::angle_text(laid.division), &[&words::of_a_turn(laid.division), &arc(laid.division)]))
                (fact(words::ALL_OF_IT, &all::angle_text(laid.spans), &[&arc(laid.spans)]))
                (fact(words::LEAST_READING, &all::seconds_or_angle(vernier.least), &[&words::of_a_turn(vernier.least)]))
            }
            figure.draw {
                (draw::beside(vernier, laid, line))
                input.slide type="range" name="di-meets" id="di-meets" min="0" max=(laid.divisions) value=(line)
                    aria-label=(words::LINE_THAT_MEETS) aria-valuetext=(words::vernier_reads(line, laid));
                figcaption.why { (words::vernier_reads(line, laid)) }
            }
        }
    }
}

/// Keeps the fields where they read.
pub(super) fn keep(fields: &mut Fields, marks: &Graduation) {
    let head = owned::head(fields);
    super::keep(fields, NAMES, |text| laid(text, &head, marks).map(drop));
}
