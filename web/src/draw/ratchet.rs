//! A ratchet's teeth round the one that is cut, to scale, with the cutter in its gap.
use super::{Path, num, polar};
use crate::words::gear::shaped as words;
use handturn::gear::ratchet::{Cut, Ratchet};
use handturn::number::float;
use maud::{Markup, html};

/// The drawing is this wide, in its own units.
const WIDE: f64 = 320.0;

/// `wheel` with the gap that `cut` makes.
#[must_use]
pub fn drawing(wheel: &Ratchet, cut: &Cut) -> Markup {
    let radius = float::of(wheel.outside.mm()) / 2.0;
    let part = 1.0 / f64::from(wheel.teeth);
    let chord = 2.0 * radius * float::sin_turns(part / 2.0);
    let scale = WIDE / (3.0 * chord).min(2.4 * radius);
    let (offset, height) = (cut.offset.value, radius - cut.from_top.value);
    let (rim, root) = (radius * scale, cut.root.value / 2.0 * scale);
    // Tip, land's end and root, in turns from the upright.
    let tip = -float::of(wheel.undercut.turns());
    let end = tip + part - cut.land.value / (2.0 * float::PI * radius);
    let low = -float::atan_turns(offset / height);
    let mut path = Path::default();
    for k in -2..2_i32 {
        let by = part * f64::from(k);
        path = path.to(polar(root, low + by)).to(polar(rim, end + by));
        path = path.arc(rim, tip + by + part, false, true);
    }
    let few = wheel.teeth < 8;
    let bottom = if few { rim } else { (0.6 * cut.depth.value - height) * scale };
    if !few {
        let sides = 2.5 * chord * scale;
        path = path
            .to(polar(root, low + 2.0 * part))
            .to((sides, bottom + 9.0))
            .to((-sides, bottom + 9.0));
    }
    let (x, point) = (-offset * scale, -height * scale);
    let top = -rim - 0.4 * chord * scale;
    let cutter = Path::default().to((x, point)).to((x, top - 9.0));
    let bevel = float::tan_turns(cut.cutter.value / 360.0) * (point - top + 9.0);
    let cutter = cutter.to((x + bevel, top - 9.0)).close();
    let left = 0.3 * chord * scale - WIDE / 2.0;
    let view = [&*num(left), " ", &num(top), " ", &num(WIDE), " ", &num(bottom - top)].concat();
    let name = words::named(
        words::RATCHET,
        &[(words::SAID_DEPTH, cut.depth.value), (words::SAID_OFFSET, offset)],
    );
    html! {
        svg.dr viewBox=(view) role="img" aria-label=(name) {
            path.o.m d=(path.close()) {}
            path.wire d=(cutter) {}
            path.t stroke-dasharray="16 4 3 4" d={ "M0 " (num(top)) "V" (num(bottom)) } {}
        }
    }
}
