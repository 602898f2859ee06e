//! Measuring over wires: which wire, what it reads, and what a reading means.
use super::super::given::Given;
use super::super::refusal::Refusal;
use super::super::request;
use super::asked::{self, Asked};
use super::told::{self, about, named, object};
use crate::words::thread as words;
use handturn::measure::{Angle, Length};
use handturn::number::Approx;
use handturn::thread::limits::Side;
use handturn::thread::still::{Left, still};
use handturn::thread::wires::{self, Measured, Over};
use handturn::thread::{lead, ready};
use handturn::{Cause, Error, Field};

/// A screw as wires see it. A nut has no place for them.
fn measured(given: &Given, more: &[&str]) -> Result<(Asked, Measured), Refusal> {
    let asked = Asked::read(given, more)?;
    if asked.side == Side::Internal {
        let message = "Wires measure screws: try a nut with a gauge or its own screw.".to_owned();
        let conflict = Error::new(Field::Wire, Cause::Conflict);
        return Err(Refusal { message, ..Refusal::of("side", &conflict, "") });
    }
    let measured = ready::measured(asked.thread(), asked.limits());
    let measured = measured.map_err(|error| Refusal {
        message: words::no_wires(&error),
        ..Refusal::of("thread", &error, "")
    })?;
    Ok((asked, measured))
}

fn wire(given: &Given) -> Result<Length, Refusal> {
    asked::length(given.get("wire"), "wire", Field::Wire)
}

/// A refusal about the wire, or about the thread where no wire would help.
fn refused(given: &Given) -> impl Fn(Error) -> Refusal {
    let typed = given.get("wire").to_string();
    move |error| {
        let of_wire = error.field == Field::Wire;
        Refusal::of(
            if of_wire { "wire" } else { "thread" },
            &error,
            if of_wire { &typed } else { "" },
        )
    }
}

/// Which wires serve: the best, the usable range, and which of those owned to take.
pub(super) fn wires(given: &Given) -> Result<Given, Refusal> {
    let (_, measured) = measured(given, &["owned"])?;
    let owned = asked::lengths(given.get("owned"), "owned", Field::Wire)?;
    let refused = |error| Refusal::of("thread", &error, "");
    let range = wires::range(&measured).map_err(refused)?;
    let chosen = wires::choose(&measured, &owned);
    let chosen = chosen.map_err(|error| Refusal::of("owned", &error, ""))?;
    let best = wires::best(measured.half_angle, measured.pitch).map_err(refused)?;
    let with_lead = wires::best_with_lead(&measured).map_err(refused)?;
    let angle =
        lead::lead_angle(asked_lead(&measured)?, measured.pitch_greatest).map_err(refused)?;
    Ok(object([
        ("best", about(best)),
        ("best_with_lead", about(with_lead)),
        ("least", about(range.least)),
        ("greatest", about(range.greatest)),
        ("by_root", Given::Flag(range.by_root)),
        ("lead_angle", Given::Number(angle.value)),
        ("chosen", told::maybe(chosen)),
    ]))
}

fn asked_lead(measured: &Measured) -> Result<Length, Refusal> {
    let lead = measured.pitch.mm().times(i64::from(measured.starts));
    lead.map(Length::from_mm).map_err(|error| Refusal::of("thread", &error, ""))
}

/// What a wire reads at the greatest and at the least pitch diameter.
pub(super) fn over(given: &Given) -> Result<Given, Refusal> {
    let (_, measured) = measured(given, &["wire"])?;
    let wire = wire(given)?;
    let refused = refused(given);
    let at = |pitch_diameter: Length| {
        let over = wires::over(&measured, wire, pitch_diameter).map_err(&refused)?;
        Ok::<_, Refusal>(read_at(&over, pitch_diameter))
    };
    Ok(object([
        ("wire", told::length(wire)),
        ("max", at(measured.pitch_greatest)?),
        ("min", at(measured.pitch_least)?),
    ]))
}

fn read_at(over: &Over, pitch_diameter: Length) -> Given {
    object([
        ("pitch_diameter", told::length(pitch_diameter)),
        ("over_wires", about(over.three)),
        ("formula", about(over.formula)),
        ("lead_term", about(over.lead_term)),
        ("formula_will_do", Given::Flag(over.formula_will_do())),
        ("touches", about(over.touches)),
        ("proud", about(over.proud)),
    ])
}

/// From a reading over wires back to the pitch diameter, and what is still to come off.
pub(super) fn from(given: &Given) -> Result<Given, Refusal> {
    let (_, measured) = measured(given, &["wire", "reading", "setOver"])?;
    let wire = wire(given)?;
    let reading = asked::length(given.get("reading"), "reading", Field::Diameter)?;
    let set_over = match given.get("setOver") {
        Given::Nothing => Angle::ZERO,
        other => request::angle(other, "setOver")?,
    };
    let found = wires::pitch_diameter(&measured, wire, reading).map_err(|error| {
        if error.field == Field::Diameter {
            return Refusal::of("reading", &error, &given.get("reading").to_string());
        }
        refused(given)(error)
    })?;
    let (least, greatest) = (measured.pitch_least, measured.pitch_greatest);
    let left = still(found, least, greatest, set_over, false)
        .map_err(|error| Refusal::of("setOver", &error, &given.get("setOver").to_string()))?;
    Ok(object([
        ("pitch_diameter", about(found)),
        ("limits", told::range(Some(greatest), Some(least))),
        ("verdict", named(left.verdict)),
        ("to_limit", to_come_off(left.to_limit, left.bound)),
        ("to_middle", to_come_off(left.to_middle, left.bound)),
        ("at_most", to_come_off(left.at_most, left.bound)),
    ]))
}

fn to_come_off(left: Left, bound: f64) -> Given {
    let each = |value| about(Approx { value, bound });
    object([
        ("diameter", each(left.diameter)),
        ("straight", each(left.straight)),
        ("along_slide", each(left.along_slide)),
    ])
}
