//! The cutter of a set, as several kinds of wheels use them: its number in both ways of
//! numbering, and for which teeth its form is true.
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::owned_strip;
use crate::room::steps::{Form, Names};
use crate::words::gear::{self as words, cutter as says};
use handturn::gear::cutter::{Choice, Numbering, Set, for_teeth};
use handturn::gear::{Size, Tooth};
use handturn::{Cause, Error};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[("ge-set", "8")]];

/// How sets of this size are numbered.
const fn numbering(tooth: &Tooth) -> Numbering {
    match tooth.size {
        Size::Module(_) => Numbering::Module,
        Size::DiametralPitch(_) => Numbering::DiametralPitch,
    }
}

/// The set that is chosen.
pub(super) fn set(fields: &Fields, tooth: &Tooth) -> Set {
    let numbering = numbering(tooth);
    if fields.get("ge-set") == "15" { Set::fifteen(numbering) } else { Set::eight(numbering) }
}

/// Which set there is, and the way to those owned.
pub(super) fn sets(fields: &Fields) -> Markup {
    let form = Form { fields, names: NAMES, wrong: None };
    html! {
        (form.choice("ge-set", says::SET, &[("8", says::EIGHT), ("15", says::FIFTEEN)]))
        (owned_strip(fields, &[Stock::GearCutters]))
    }
}

/// The cutter that was found for so many teeth.
pub(super) fn answer(choice: &Choice, set: &Set) -> Markup {
    let module = set.numbering == Numbering::Module;
    html! {
        div {
            p.lab { (if module { says::OF_MODULE_SET } else { says::OF_DP_SET }) }
            p.answer-big { (says::number(choice.cutter.number)) }
            p { (says::other(module, choice.cutter.other_number)) }
            p.why { (says::range(choice)) }
            @if let Some(beside) = &choice.beside { p.why { (says::beside(beside)) } }
        }
    }
}

/// Finds the cutter of a set for one wheel.
pub(super) type Find<'f> = &'f dyn Fn(&Set) -> Result<Choice, Error>;

/// Whether the cutter that a wheel wants is owned, and which owned one is nearest;
/// nothing while none is listed.
pub(super) fn owned(fields: &Fields, tooth: &Tooth, find: Find) -> Markup {
    let listed = lists::cutters(fields);
    let mut numbers = Vec::new();
    for (_, own) in listed.iter().filter(|(size, _)| *size == tooth.size) {
        numbers.extend_from_slice(own);
    }
    let own = Set::of(numbering(tooth), &numbers);
    html! {
        @if numbers.is_empty() && !listed.is_empty() {
            p { (says::none_of_size(&words::size(tooth.size))) }
        } @else if !numbers.is_empty() {
            @if let Ok(wanted) = find(&set(fields, tooth)) { p { (nearest(&wanted, &own, find)) } }
        }
    }
}

/// Which of the owned ones does for the wheel, and how well.
fn nearest(wanted: &Choice, own: &Set, find: Find) -> String {
    match find(own) {
        Ok(have) if have.cutter == wanted.cutter => says::have(&have.cutter),
        Ok(have) => says::instead(&wanted.cutter, &have),
        Err(Error { cause: Cause::TooFewTeeth { least }, .. }) => {
            let above = for_teeth(least, own).map(|choice| choice.cutter);
            above.map_or_else(|_| String::new(), |above| says::only_above(&wanted.cutter, &above))
        }
        Err(_) => String::new(),
    }
}
