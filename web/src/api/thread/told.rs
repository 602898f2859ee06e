//! What is handed out, as plain data.
use super::super::given::Given;
use crate::words::thread as words;
use crate::words::{decimal, mixed};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::thread::limits::{Class, Side};
use handturn::thread::name::{self, Found};
use handturn::thread::{Series, Size, Thread};

/// Millimetres in an inch.
const INCH: f64 = 25.4;

/// An object of these entries.
pub(in crate::api) fn object<const N: usize>(entries: [(&str, Given); N]) -> Given {
    // One code for all lengths.
    owned(Vec::from(entries))
}

fn owned(entries: Vec<(&str, Given)>) -> Given {
    Given::Object(entries.into_iter().map(|(key, value)| (key.to_owned(), value)).collect())
}

/// A text.
pub(in crate::api) fn text(text: &str) -> Given {
    Given::Text(text.to_owned())
}

/// A count.
pub(in crate::api) fn count(n: u32) -> Given {
    Given::Number(f64::from(n))
}

/// The name of a choice of the core, as Rust has it.
pub(in crate::api) fn named(value: impl std::fmt::Debug) -> Given {
    Given::Text(format!("{value:?}"))
}

/// A fraction as the nearest number.
pub(in crate::api) fn number(value: Fraction) -> Given {
    Given::Number(float::of(value))
}

/// An angle in degrees.
pub(in crate::api) fn degrees(angle: Angle) -> Given {
    angle.degrees().map_or(Given::Nothing, number)
}

/// A list, each entry told by `told`.
pub(in crate::api) fn list<T>(
    entries: impl IntoIterator<Item = T>,
    told: impl Fn(T) -> Given,
) -> Given {
    Given::List(entries.into_iter().map(told).collect())
}

/// An exact length.
pub(in crate::api) fn length(length: Length) -> Given {
    let mm = float::of(length.mm());
    let inch = length.inches().map_or(mm / INCH, float::of);
    size(mm, inch, Given::Text(exact(length)), 0.0)
}

/// A length, or nothing.
pub(in crate::api) fn maybe(found: Option<Length>) -> Given {
    found.map_or(Given::Nothing, length)
}

/// A length that is not exact, in millimetres, and how far off it can be.
pub(in crate::api) fn about(mm: Approx) -> Given {
    size(mm.value, mm.value / INCH, Given::Nothing, mm.bound)
}

fn size(mm: f64, inch: f64, exact: Given, within: f64) -> Given {
    let (mm, inch, within) = (Given::Number(mm), Given::Number(inch), Given::Number(within));
    object([("mm", mm), ("inch", inch), ("exact", exact), ("within", within)])
}

/// A length to its last digit: decimals of a millimetre or an inch where nine places
/// hold it, else a fraction of an inch or of a millimetre.
fn exact(length: Length) -> String {
    let ends = |value: Fraction| value.times(1_000_000_000).is_ok_and(Fraction::is_whole);
    let mm = length.mm();
    match length.inches() {
        _ if ends(mm) => decimal(mm, 9) + " mm",
        Ok(inches) if ends(inches) => decimal(inches, 9) + " in",
        Ok(inches) if inches.den() < mm.den() && !mm.is_negative() => mixed(inches) + " in",
        _ => mm.to_string() + " mm",
    }
}

/// Greatest and least.
pub(in crate::api) fn range(max: Option<Length>, min: Option<Length>) -> Given {
    object([("max", maybe(max)), ("min", maybe(min))])
}

/// Screw or nut.
pub(in crate::api) fn side(side: Side) -> Given {
    text(if side == Side::External { "screw" } else { "nut" })
}

/// A class as it is written.
pub(in crate::api) fn class(class: Option<Class>, thread: &Thread) -> Given {
    class.map_or(Given::Nothing, |class| Given::Text(words::class(class, thread.form.kind)))
}

/// The name of a listed size, which reads again.
pub(in crate::api) fn listed(series: Series, size: Size) -> String {
    let mut name = String::new();
    name::write(series, size, &mut |piece| name.push_str(piece));
    name
}

/// A thread with what a name says of it.
pub(in crate::api) fn found(found: &Found) -> Given {
    let thread = &found.thread;
    let name = found.listed.map(|(series, size)| Given::Text(listed(series, size)));
    object([
        ("name", name.unwrap_or(Given::Nothing)),
        ("series", found.listed.map_or(Given::Nothing, |(series, _)| named(series))),
        ("form", named(thread.form.kind)),
        ("angle", degrees(thread.form.angle)),
        ("major", length(thread.major)),
        ("pitch", length(thread.pitch)),
        ("tpi", thread.tpi().map_or(Given::Nothing, number)),
        ("lead", thread.lead().map_or(Given::Nothing, length)),
        ("starts", count(u32::from(thread.starts))),
        ("hand", named(thread.hand)),
        ("class", class(found.class, thread)),
        ("side", found.class.map_or(Given::Nothing, |class| side(class.side))),
    ])
}
