//! A wheel as it is set up, seen along its axis and to scale: table, blank, the arbor
//! across it with cutter and collars, at full depth.
use super::{Path, num};
use crate::words::gear::straight as words;
use handturn::gear::swing::{Room, Setup};
use handturn::number::float;
use maud::{Markup, html};

/// The drawing is this wide, in its own units.
const WIDE: f64 = 320.0;

/// `setup` with the room that was found for it.
#[must_use]
pub fn drawing(setup: &Setup, room: &Room) -> Markup {
    let half = |length: handturn::measure::Length| float::of(length.mm()) / 2.0;
    let (wheel, cutter, collar) = (half(setup.outside), half(setup.cutter), half(setup.collar));
    let (centre, arbor) = (2.0 * half(setup.centre_height), 2.0 * half(room.at_depth));
    let depth = 2.0 * half(setup.depth);
    // The table lies below the blank, or cuts into it.
    let (low, high) = ((centre - wheel).min(0.0), arbor + cutter);
    let across = (wheel * 2.3).max(cutter * 2.0);
    let scale = (WIDE / across).min(WIDE * 1.15 / (high - low));
    let y = |height: f64| (high - height) * scale;
    let (middle, tall) = (WIDE / 2.0, (high - low) * scale);
    // A form cutter's width hardly shows at this scale: a twelfth of its diameter.
    let (wide, sides) = ((cutter * scale / 6.0).max(3.0), WIDE * 0.46);
    let bar = |from: f64, to: f64, high: f64| {
        let path = Path::default().to((from, y(arbor + high))).to((to, y(arbor + high)));
        path.to((to, y(arbor - high))).to((from, y(arbor - high))).close()
    };
    let collars =
        bar(middle - sides, middle - wide, collar) + &bar(middle + wide, middle + sides, collar);
    html! {
        svg.dr viewBox=(["-4 -6 ", &num(WIDE + 8.0), " ", &num(tall + 20.0)].concat()) role="img" aria-label=(words::swing_name(setup, room)) {
            circle.o.b cx=(num(middle)) cy=(num(y(centre))) r=(num(wheel * scale)) {}
            circle.t cx=(num(middle)) cy=(num(y(centre))) r=(num((wheel - depth).max(0.0) * scale)) {}
            path.t d={ "M" (num(middle - 7.0)) " " (num(y(centre))) "h14m-7-7v14" } {}
            path.b.care[!(room.collar_clears && room.head_clears)] d=(collars) {}
            path.o.wire d=(bar(middle - wide, middle + wide, cutter)) {}
            path.t stroke-dasharray="16 4 3 4" d={ "M0 " (num(y(arbor))) "H" (num(WIDE)) } {}
            path.o.care[!room.table_clears] d={ "M0 " (num(y(0.0))) "H" (num(WIDE)) } {}
            text.l.n.h x="2" y=(num(y(0.0) - 5.0)) font-size="13" { (words::TABLE) }
            text.l.n.h x="2" y=(num(y(arbor + collar) - 5.0)) font-size="13" { (words::ARBOR) }
        }
    }
}
