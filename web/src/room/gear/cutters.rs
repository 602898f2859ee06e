//! The cutter of a set, as several kinds of wheels use them: its number in both ways of
//! numbering, and for which teeth its form is true.
use crate::fields::Fields;
use crate::room::steps::{Form, Names};
use crate::words::gear::cutter as says;
use handturn::gear::cutter::{Choice, Numbering, Set};
use handturn::gear::{Size, Tooth};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[("ge-set", "8")]];

/// The set that is chosen, numbered as sets of this size are.
pub(super) fn set(fields: &Fields, tooth: &Tooth) -> Set {
    let numbering = match tooth.size {
        Size::Module(_) => Numbering::Module,
        Size::DiametralPitch(_) => Numbering::DiametralPitch,
    };
    if fields.get("ge-set") == "15" { Set::fifteen(numbering) } else { Set::eight(numbering) }
}

/// Which set there is.
pub(super) fn sets(fields: &Fields) -> Markup {
    let form = Form { fields, names: NAMES, wrong: None };
    form.choice("ge-set", says::SET, &[("8", says::EIGHT), ("15", says::FIFTEEN)])
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
