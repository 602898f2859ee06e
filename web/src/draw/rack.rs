//! A few teeth of a rack, to scale.
use super::{Path, num};
use crate::words::gear::rack as words;
use handturn::gear::{Rack, RackSizes};
use handturn::number::float;
use maud::{Markup, html};

/// Units of the drawing for a pitch.
const PITCH: f64 = 80.0;

/// Four teeth of `rack`.
#[must_use]
pub fn drawing(rack: &Rack, sizes: &RackSizes) -> Markup {
    let scale = PITCH / sizes.pitch.value;
    let above = float::of(sizes.addendum.mm()) * scale;
    let below = float::of(sizes.whole_depth.mm()) * scale - above;
    let lean = float::tan_turns(float::of(rack.tooth.pressure_angle.turns()));
    let (tip, bottom) = (PITCH / 4.0 - above * lean, PITCH / 4.0 - below * lean);
    let stock = below + 34.0;
    let mut path = Path::default().to((-160.0, stock));
    for tooth in 0..4 {
        let middle = -120.0 + PITCH * f64::from(tooth);
        let gap = PITCH / 2.0 - bottom;
        path = path.to((middle - gap, below)).to((middle - tip, -above));
        path = path.to((middle + tip, -above)).to((middle + gap, below));
    }
    let (low, tall) = (-above - 8.0, above + stock + 16.0);
    let view = ["-164 ", &num(low), " 328 ", &num(tall)].concat();
    html! {
        svg.dr viewBox=(view) role="img" aria-label=(words::line(rack, sizes.pitch.value)) {
            path.o.b d=(path.to((160.0, stock)).close()) {}
            path.t stroke-dasharray="16 4 3 4" d="M-162 0H162" {}
        }
    }
}
