//! Values of a card in the package: what the drawing says, what was measured, and what is
//! in force for all that follow.
use super::given::{Given, MOST, dotted};
use super::refusal::Refusal;
use super::thread::told::{degrees, list, number, object, text};
use crate::words::card::fault as words;
use handturn::Field;
use handturn::card::{Amount, Fault, Given as Value, Kind, chain, followers};
use handturn::number::{Fraction, float};

/// The kinds by name; the first where none is given.
const KINDS: [(&str, Kind); 3] =
    [("length", Kind::Length), ("angle", Kind::Angle), ("number", Kind::Number)];

/// A value as it is given.
struct Typed<'a> {
    name: &'a str,
    kind: (&'a str, Kind),
    drawing: String,
    measured: String,
}

/// Every value of the object `given`, each under its name.
///
/// # Errors
/// A [`Refusal`] that names the value, and its field.
pub fn values(given: &Given) -> Result<Given, Refusal> {
    let Given::Object(entries) = given else {
        return Err(Refusal::kind("values", "an object", given));
    };
    let typed = entries.iter().map(|(name, value)| typed(name, value));
    let typed = typed.collect::<Result<Vec<_>, Refusal>>()?;
    let all: Vec<Value<'_>> = typed
        .iter()
        .map(|Typed { name, kind: (_, kind), drawing, measured }| Value {
            name,
            kind: *kind,
            drawing,
            measured,
        })
        .collect();
    let found = chain(&all).map_err(|error| Refusal::of("values", &error, ""))?;
    // What waits for a value at fault is not what is wrong.
    let faults = all.iter().zip(&found).flat_map(|(value, found)| {
        let drawing = found.drawing.as_ref().err().map(|fault| (value, false, fault));
        let in_force = found.in_force.as_ref().err().map(|fault| (value, true, fault));
        drawing.into_iter().chain(in_force)
    });
    let mut faults: Vec<_> = faults.collect();
    faults.sort_by_key(|(.., fault)| matches!(fault, Fault::Depends(_)));
    if let Some((value, in_force, fault)) = faults.first() {
        return Err(refused(&all, value, *in_force, fault));
    }
    let told = typed.iter().zip(&found).enumerate().map(|(place, (typed, found))| {
        let amount = |amount: &Result<Amount, Fault>| match amount {
            Ok(amount) => told(typed.name, *amount),
            Err(_) => Ok(Given::Nothing),
        };
        let names = followers(&all, place);
        let names = names.iter().filter_map(|place| all.get(usize::from(*place)));
        let value = object([
            ("kind", text(typed.kind.0)),
            ("drawing", amount(&found.drawing)?),
            ("in_force", amount(&found.in_force)?),
            ("followed_by", list(names, |value| text(value.name))),
        ]);
        Ok((typed.name.to_owned(), value))
    });
    Ok(Given::Object(told.collect::<Result<_, Refusal>>()?))
}

/// A value by its drawing value alone, or with what else there is of it.
fn typed<'a>(name: &'a str, given: &Given) -> Result<Typed<'a>, Refusal> {
    let whole = Given::Object(vec![("drawing".to_owned(), given.clone())]);
    let given = if matches!(given, Given::Object(_)) { given } else { &whole };
    given.only(name, &["drawing", "measured", "kind"])?;
    let at = |key: &str| dotted(name, key);
    let text = |key: &str| match given.get(key) {
        Given::Nothing => Ok(String::new()),
        value => value.text(&at(key)),
    };
    let kind = match text("kind")? {
        none if none.is_empty() => KINDS.first(),
        kind => KINDS.iter().find(|(name, _)| *name == kind),
    };
    let kind = kind.ok_or_else(|| Refusal::unknown(&at("kind"), &KINDS.map(|(name, _)| name)))?;
    Ok(Typed { name, kind: *kind, drawing: text("drawing")?, measured: text("measured")? })
}

/// What is wrong with a value, by the field that it is about.
fn refused(all: &[Value<'_>], value: &Value<'_>, in_force: bool, fault: &Fault) -> Refusal {
    let measured = in_force && !value.measured.trim().is_empty();
    let (field, typed) = match fault {
        Fault::Text(error) if error.field == Field::Name => (value.name.to_owned(), value.name),
        _ if measured => (dotted(value.name, "measured"), value.measured),
        _ => (dotted(value.name, "drawing"), value.drawing),
    };
    let named = |place: u8| all.get(usize::from(place)).map_or("", |value| value.name);
    let said = words(fault, typed, &named);
    match fault {
        Fault::Text(error) => Refusal::of(&field, error, typed),
        Fault::Unknown(..) => Refusal::because(&field, "Unknown", &said),
        Fault::Units(..) => Refusal::because(&field, "Units", &said),
        Fault::Cycle(_) => Refusal::because(&field, "Cycle", &said),
        Fault::Depends(_) => Refusal::because(&field, "Depends", &said),
    }
}

/// An amount, exact and in decimals.
fn told(name: &str, amount: Amount) -> Result<Given, Refusal> {
    let exact = |value: Fraction| {
        #[expect(clippy::cast_precision_loss, reason = "within 2^53, or refused")]
        let parts = [value.num() as f64, value.den() as f64];
        if parts.iter().any(|part| part.abs() > MOST) {
            let error = handturn::Error::new(Field::Value, handturn::Cause::Overflow);
            return Err(Refusal::of(name, &error, ""));
        }
        Ok(Given::List(parts.map(Given::Number).into()))
    };
    Ok(match amount {
        Amount::Length(length) => {
            let inch = length.inches().map_or(Given::Nothing, number);
            object([("fraction", exact(length.mm())?), ("mm", number(length.mm())), ("inch", inch)])
        }
        Amount::Angle(angle) => {
            object([("turns", exact(angle.turns())?), ("degrees", degrees(angle))])
        }
        Amount::Number(value) => {
            object([("fraction", exact(value)?), ("value", Given::Number(float::of(value)))])
        }
    })
}
