//! Words of the drawing of teeth.
use crate::draw::tooth::Laid;
use crate::words::{about, about_mm, count};

words! {
    OUTSIDE = "outside";
    PITCH = "pitch";
    BASE = "base";
    BOTTOM = "bottom";
}

/// Millimetres, to three places.
#[must_use]
pub fn mm(mm: f64) -> String {
    about_mm(mm)
}

/// A circle's diameter, to two places.
#[must_use]
pub fn diameter(mm: f64) -> String {
    about(mm, 2)
}

/// A reading across.
#[must_use]
pub fn over(reading: f64) -> String {
    about_mm(reading) + " mm"
}

/// The drawing in a sentence.
#[must_use]
pub fn name(teeth: u32, laid: Laid) -> String {
    let said = match laid {
        Laid::Caliper(chordal) => [
            "a caliper set ",
            &mm(chordal.height.value),
            " mm high reads ",
            &mm(chordal.thickness.value),
            " mm across one.",
        ]
        .concat(),
        Laid::Span(span) => [
            "flat anvils over ",
            &count(span.teeth, "tooth", "teeth"),
            " read ",
            &mm(span.reading.value),
            " mm.",
        ]
        .concat(),
        Laid::Pins(pin, over) => {
            ["pins of ", &mm(pin), " mm in opposite gaps read ", &mm(over.reading.value), " mm."]
                .concat()
        }
    };
    ["Teeth of a wheel of ", &teeth.to_string(), ", to scale: ", &said].concat()
}
