//! Compound indexing: two circles, holes on both.
use super::{Outcome, angle, ask, each, must, parts, ways};
use handturn::divide::{Kind, Question, Way};
use handturn::head::Head;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn_tests::heads::head;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Compound {
    ratio: u32,
    parts: u32,
    circles: String,
    first: String,
    second: String,
}

/// The printed legs, or the same with the sense of both turned round a whole turn, are offered.
pub(crate) fn compound() -> Vec<Outcome> {
    each("compound.csv", |row: &Compound| {
        let (question, head) = (parts(row.parts), head(row.ratio, &row.circles));
        let found = offered(&question, &head).and_then(|offered| {
            let sought = legs(&row.first, &row.second);
            let found = offered.iter().any(|one| one.same(&sought) && one.exact);
            must(found, || format!("{sought:?} is not among {offered:?}"))
        });
        (false, found)
    })
}

#[derive(Deserialize)]
struct Decimal {
    ratio: u32,
    handle_turn: String,
    circles: String,
    first: String,
    second: String,
    error_arcsec: String,
    nearer_first: String,
    nearer_second: String,
}

/// The printed legs come as near as the row says; no setting offered is further
/// off, and where the row knows a nearer pair, that one is offered.
pub(crate) fn decimals() -> Vec<Outcome> {
    each("decimals.csv", |row: &Decimal| (false, decimal(row)))
}

fn decimal(row: &Decimal) -> Result<(), String> {
    let wanted = fraction(&row.handle_turn);
    let at_work = |legs: &Legs| {
        let turns = legs.turns()?.checked_sub(wanted)?.over(i64::from(row.ratio))?;
        Angle::from_turns(turns).arcsec()
    };
    let printed = legs(&row.first, &row.second);
    let error = at_work(&printed).map_err(|e| e.to_string())?;
    let rounding = error.checked_sub(fraction(&row.error_arcsec)).map_err(|e| e.to_string())?;
    must(rounding.abs() <= half_a_place(&row.error_arcsec), || format!("it is {error} off"))?;

    let question = angle(wanted.over(i64::from(row.ratio)).expect("a part of a turn"));
    let offered = offered(&question, &head(row.ratio, &row.circles))?;
    let best = if row.nearer_first.is_empty() {
        printed
    } else {
        legs(&row.nearer_first, &row.nearer_second)
    };
    must(offered.iter().any(|one| one.same(&best)), || {
        format!("{best:?} is not among {offered:?}")
    })?;
    let least = at_work(&best).map_err(|e| e.to_string())?.abs();
    for one in &offered {
        let off = at_work(&one.legs).map_err(|e| e.to_string())?.abs();
        must(off == least, || format!("{one:?} is {off} off, not {least}"))?;
    }
    Ok(())
}

/// Holes of circles, in handle turns each; below nought goes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Leg {
    holes: i64,
    of: i64,
}

#[derive(Clone, Copy, Debug)]
struct Legs([Leg; 2]);

impl Legs {
    fn turns(&self) -> Result<Fraction, handturn::Error> {
        let turns = |leg: Leg| Fraction::new(leg.holes, leg.of);
        turns(self.0[0])?.checked_add(turns(self.0[1])?)
    }
}

#[derive(Debug)]
struct Offered {
    legs: Legs,
    exact: bool,
}

impl Offered {
    /// The same holes on the same circles, whichever pin they are counted at.
    fn same(&self, other: &Legs) -> bool {
        let [a, b] = other.0;
        self.legs.0 == [a, b] || self.legs.0 == [b, a]
    }
}

/// `23/29` and `-11/33` as legs.
fn legs(first: &str, second: &str) -> Legs {
    let leg = |text: &str| {
        let (holes, of) = text.split_once('/').expect("holes/circle");
        Leg { holes: holes.parse().expect("holes"), of: of.parse().expect("a circle") }
    };
    Legs([leg(first), leg(second)])
}

fn offered(question: &Question, head: &Head) -> Result<Vec<Offered>, String> {
    let answer = ask(question, head)?;
    let mut offered = Vec::new();
    for way in ways(&answer, Kind::Compound) {
        let Way::Compound(compound) = way else { return Err(format!("{way:?}")) };
        let pin = Leg { holes: compound.pin_spaces.into(), of: compound.pin.into() };
        let back = Leg { holes: compound.back_spaces.into(), of: compound.back.into() };
        let exact = way.exact(question).map_err(|e| e.to_string())?;
        offered.push(Offered { legs: Legs([pin, back]), exact });
    }
    Ok(offered)
}
