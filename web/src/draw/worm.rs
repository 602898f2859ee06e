//! A worm end on in the throat of its wheel, in section through the wheel's axis.
use super::{Path, num};
use crate::words::gear::worm as words;
use handturn::gear::{WormPair, WormSizes, WormWheel};
use handturn::number::float;
use maud::{Markup, html};

/// Half of the drawing's width, in its own units.
const HALF: f64 = 150.0;

/// `pair` with the sizes of both.
#[must_use]
pub fn drawing(pair: &WormPair, worm: &WormSizes, wheel: &WormWheel) -> Markup {
    let outside = worm.outside_diameter.value / 2.0;
    let face = float::of(pair.face.mm()) / 2.0;
    let scale = HALF * 0.62 / outside.max(face);
    let (throat, depth) = (wheel.throat_radius.value, wheel.whole_depth.value);
    let pitch = float::of(pair.worm.diameter.mm()) / 2.0;
    let corner = float::sqrt((throat * throat - face * face).max(0.0));
    // The wheel is shown down to its axis, or to a break below the teeth.
    let centre = wheel.centre_distance.value;
    let down = centre.min(outside + 4.0 * depth);
    let whole = down >= centre;
    let at = |x: f64, y: f64| (x * scale, y * scale);
    let rim = |radius: f64, from: f64| {
        Path::default().to(at(-face, from)).bow(radius * scale, at(face, from), false)
    };
    let blank = rim(throat, corner).to(at(face, down)).to(at(-face, down)).close();
    // Bottom of the gaps, on the hob's circle.
    let hob = throat + depth;
    let bottom = rim(hob, float::sqrt((hob * hob - face * face).max(0.0))).0;
    let foot = if whole { down } else { down + outside * 0.1 };
    let circle = |radius: f64| num(radius * scale);
    let (top, tall) = (-outside * scale - 10.0, (outside + foot) * scale + 24.0);
    let view = [num(-HALF), num(top), num(2.0 * HALF), num(tall)].join(" ");
    html! {
        svg.dr viewBox=(view) role="img" aria-label=(words::picture_name(pair, wheel)) {
            path.o.b d=(blank) {}
            path.t stroke-dasharray="5 3" d=(bottom) {}
            circle.o.b cx="0" cy="0" r=(circle(outside)) {}
            circle.t stroke-dasharray="16 4 3 4" cx="0" cy="0" r=(circle(pitch)) {}
            circle.t cx="0" cy="0" r=(circle(worm.root_diameter.value / 2.0)) {}
            path.t d="M-7 0H7M0-7V7" {}
            path.t stroke-dasharray="16 4 3 4" d=(["M0 10V", &num(foot * scale)].concat()) {}
            @if whole { path.t stroke-dasharray="16 4 3 4" d=(["M", &num(-HALF), " ", &num(centre * scale), "H", &num(HALF)].concat()) {} }
            text.n.h x="0" y=(num(-outside * scale * 0.45)) font-size="13" { (words::WORM) }
            text.n.h x="0" y=(num((outside + 2.6 * depth).min(down * 0.96) * scale)) font-size="13" { (words::WHEEL) }
        }
    }
}
