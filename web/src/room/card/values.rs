//! The values of a part: what the drawing says, what was measured, what is in force, and
//! what follows.

use crate::card::{Card, Item, found};
use crate::fields::named;
use crate::pieces::{Field, field, segmented};
use crate::words::{card as words, errors::Said};
use handturn::Field as Of;
use handturn::card::{self as core, Amount, Fault, Found, Kind};
use maud::{Markup, html};

/// A value's name in the names of its fields.
pub(super) fn name(what: &str, id: u32) -> String {
    ["cd-", what, "-", &id.to_string()].concat()
}

/// The section of values.
pub(super) fn section(card: &Card) -> Markup {
    let found = found(card);
    html! {
        section.values aria-labelledby="card-values" {
            h2 id="card-values" { (words::VALUES) }
            @for (item, found) in card.values.iter().zip(&found) { (one(card, item, found)) }
            div.acts {
                button.btn id="cd-value-add" type="button" data-do="cd-value-add" { (words::ADD_VALUE) }
            }
            p.why { (words::VALUES_WHY) }
        }
    }
}

fn one(card: &Card, item: &Item, found: &Found) -> Markup {
    let kind = kind_value(item.kind);
    let wrong = wrong(card, item, found);
    let entry = |what: &str, label: &'static str, value: &str, place: Place| {
        let error = wrong.as_ref().filter(|(at, _)| *at == place).map(|(_, said)| said.clone());
        field(&Field { name: &name(what, item.id), label, value, keys: "text", error })
    };
    html! {
        div.value id=(name("value", item.id)) role="group" aria-label=(words::value_named(&item.name)) {
            div.value-fields {
                (entry("name", words::NAME, &item.name, Place::Name))
                (entry("drawing", words::DRAWING, &item.drawing, Place::Drawing))
                (entry("measured", words::MEASURED, &item.measured, Place::Measured))
                div.force {
                    p.lab { (words::IN_FORCE) }
                    p { (in_force(found)) }
                }
            }
            div.value-more {
                (segmented(&name("kind", item.id), words::KIND, kind, &[
                    ("length", words::LENGTH), ("angle", words::ANGLE), ("number", words::NUMBER),
                ]))
                p.why { (words::followers(&followers(card, item))) }
                button.btn type="button" data-do="cd-value-drop" data-value=(item.id)
                    aria-label=(words::remove(&item.name)) { (words::REMOVE) }
            }
        }
    }
}

/// What is in force, as it is read.
fn in_force(found: &Found) -> Markup {
    html! {
        @match &found.in_force {
            Ok(amount) => {
                @let (main, under) = amount_text(*amount);
                b { (main) } @if !under.is_empty() { span.in { (under) } }
            }
            Err(_) => { "–" }
        }
    }
}

/// An amount, and the same in the other unit.
pub(super) fn amount_text(amount: Amount) -> (String, String) {
    use crate::words as all;
    match amount {
        Amount::Length(length) => (all::in_mm(length), all::in_inch(length)),
        Amount::Angle(angle) => {
            let degrees = angle.degrees().map(|degrees| all::decimal(degrees, 4) + "°");
            (all::angle_text(angle), degrees.unwrap_or_default())
        }
        Amount::Number(number) => (all::decimal(number, 6), String::new()),
    }
}

/// What a kind is called in a press.
pub(super) const fn kind_value(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "length",
        Kind::Angle => "angle",
        Kind::Number => "number",
    }
}

/// A field of a value.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    Name,
    Drawing,
    Measured,
}

/// What is wrong with a value, at the field that it is about.
fn wrong(card: &Card, item: &Item, found: &Found) -> Option<(Place, Said)> {
    let (place, fault) = match (&found.drawing, &found.in_force) {
        (Err(Fault::Text(error)), _) if error.field == Of::Name => {
            (Place::Name, Fault::Text(*error))
        }
        (Err(fault), _) => (Place::Drawing, fault.clone()),
        (Ok(_), Err(fault)) if !item.measured.trim().is_empty() => (Place::Measured, fault.clone()),
        // With what others measured it no longer comes out.
        (Ok(_), Err(fault)) => (Place::Drawing, fault.clone()),
        (Ok(_), Ok(_)) => return None,
    };
    let typed = match place {
        Place::Name => &item.name,
        Place::Drawing => &item.drawing,
        Place::Measured => &item.measured,
    };
    let named = |place: u8| card.values.get(usize::from(place)).map_or("", |item| &item.name);
    Some((place, words::fault(&fault, typed, &named)))
}

/// The values and steps that follow a value: their names and numbers.
fn followers(card: &Card, item: &Item) -> Vec<String> {
    let given: Vec<_> = card.values.iter().map(Item::given).collect();
    let place = card.values.iter().position(|own| own.id == item.id).unwrap_or_default();
    let values = core::followers(&given, place);
    let values = values.iter().filter_map(|place| card.values.get(usize::from(*place)));
    let values = values.map(|other| other.name.clone());
    let steps = card.steps.iter().enumerate().filter(|(_, step)| {
        let answer = step.answer.as_ref();
        answer.is_some_and(|answer| {
            let names = answer.fields.iter().filter_map(|(_, typed)| named(typed));
            names.into_iter().any(|name| core::same_name(name, &item.name))
        })
    });
    values.chain(steps.map(|(place, _)| words::step_number(place + 1))).collect()
}
