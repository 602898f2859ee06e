//! Cutter: which of a set, for which teeth its form is true, and what it does to the teeth.
use super::Asked;
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::gear::cutters;
use crate::words::errors::said;
use crate::words::gear::{self as words, cutter as says};
use handturn::gear::cutter::for_teeth;
use maud::{Markup, html};

/// The step as markup.
pub(super) fn panel(fields: &Fields, asked: &Asked) -> Markup {
    let Asked { wheel } = asked;
    let set = cutters::set(fields, &wheel.tooth);
    html! {
        div.two {
            div.figures {
                @match for_teeth(wheel.teeth, &set) {
                    Ok(choice) => (cutters::answer(&choice, &set)),
                    Err(error) => (caution(html! { (said(&error, "").wrong) " " (says::TOO_FEW) })),
                }
                (cutters::sets(fields))
            }
            div.figures {
                p { (says::to_get(&words::size(wheel.tooth.size), wheel.tooth.pressure_angle)) }
                p.why { (says::FROM) }
            }
        }
    }
}
