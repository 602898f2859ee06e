//! Cutter: which of a set, for which teeth its form is true, and what it does to the teeth.
use super::Asked;
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::gear::cutters;
use crate::room::steps::{about, fact};
use crate::words::errors::said;
use crate::words::gear::{self as words, cutter as says, straight};
use handturn::gear::Spur;
use handturn::gear::cutter::for_teeth;
use handturn::gear::sound::sound;
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
                (cutters::owned(fields, &wheel.tooth, &|set| for_teeth(wheel.teeth, set)))
                (cutters::sets(fields))
            }
            div.figures {
                p { (says::to_get(&words::size(wheel.tooth.size), wheel.tooth.pressure_angle)) }
                p.why { (says::FROM) }
                (sounds(wheel))
            }
        }
    }
}

/// Whether the teeth are undercut at the foot or thin at the top.
fn sounds(wheel: &Spur) -> Markup {
    html! {
        @match sound(wheel) {
            Ok(sound) => {
                dl.facts {
                    (about(straight::TOP_LAND, sound.top_land.value))
                    (fact(straight::FEWEST, &straight::fewest(sound.fewest), &[straight::FEWEST_WHY]))
                }
                @for line in straight::unsound(&sound) { (caution(html! { (line) })) }
            }
            Err(error) => (caution(html! { (said(&error, "").wrong) })),
        }
    }
}
