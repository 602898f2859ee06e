//! A clock's wheel and pinion on their arbors, to scale, round the line of centres.
use super::{Path, num, polar};
use crate::words::gear::shaped as words;
use handturn::gear::clock::{Clock, Sizes, flank};
use handturn::number::float;
use maud::{Markup, html};

/// The drawing is this wide, in its own units.
const WIDE: f64 = 320.0;

/// `ask` as `found`; none where its flanks cannot be worked out.
#[must_use]
pub fn drawing(ask: &Clock, found: &Sizes) -> Option<Markup> {
    let flank = flank(ask).ok()?;
    let module = float::of(ask.module.mm());
    let pinion = found.pinion.outside.value / 2.0;
    let (leaves, teeth) = (f64::from(ask.leaves), f64::from(ask.wheel));
    // All of the pinion while that leaves its leaves large enough, else some of it.
    let scale = WIDE / (2.4 * pinion).min(14.0 * module);
    let centres = float::of(found.centres.mm()) * scale;
    let wheel = wheel(found, &flank, teeth, module * scale, scale);
    let pinion = leaf(found, leaves, scale);
    let top = -float::of(found.pinion.pitch.mm()) * scale / 2.0;
    let up = (found.pinion.outside.value * scale * 0.56).min(WIDE * 0.62);
    let low = (found.wheel.depth.value * 1.5 * scale).max(40.0);
    let view = ["-160 ", &*num(-up), " 320 ", &num(up - top + low)].concat();
    let name = words::named(
        words::CLOCK,
        &[
            (words::THE_WHEEL, found.wheel.outside.value),
            (words::THE_PINION, found.pinion.outside.value),
        ],
    );
    Some(html! {
        svg.dr viewBox=(view) role="img" aria-label=(name) {
            g transform={ "translate(0 " (num(centres)) ")" } {
                path.o.m d=(wheel) {}
                circle.t.a r=(num(centres + top)) {}
            }
            path.o.m d=(pinion) {}
            circle.t.a r=(num(-top)) {}
            path.t stroke-dasharray="16 4 3 4" d="M0 -400V800M-8 0H8" {}
        }
    })
}

/// Teeth of the wheel about its own centre, one of them upright.
fn wheel(found: &Sizes, flank: &[(f64, f64)], teeth: f64, module: f64, scale: f64) -> String {
    let pitch = float::of(found.wheel.pitch.mm()) / 2.0 * scale;
    let root = (found.wheel.outside.value / 2.0 - found.wheel.depth.value) * scale;
    let quarter = 0.25 / teeth;
    let mut path = Path::default();
    let mut k = -5.0;
    // Few teeth go all round; of many those near the line of centres are drawn.
    let last = if teeth < 11.0 { teeth - 6.0 } else { 5.0 };
    while k <= last {
        let by = k / teeth;
        path = path.to(polar(root, by - quarter));
        let points = flank.iter().map(|(height, half)| {
            let r = pitch + height * module;
            (r, float::asin_turns((half * module / r).min(1.0)))
        });
        for (r, aside) in points.clone() {
            path = path.to(polar(r, by - aside));
        }
        for (r, aside) in points.rev() {
            path = path.to(polar(r, by + aside));
        }
        path = path.to(polar(root, by + quarter));
        k += 1.0;
    }
    path.close()
}

/// The pinion, a gap of it downwards.
fn leaf(found: &Sizes, leaves: f64, scale: f64) -> String {
    let pitch = float::of(found.pinion.pitch.mm()) / 2.0 * scale;
    let tip = found.pinion.outside.value / 2.0 * scale;
    let root = tip - found.pinion.depth.value * scale;
    let half = float::of(found.pinion.thickness.mm()) * scale / (4.0 * float::PI * pitch);
    let bow = float::of(found.end_radius.mm()) * scale;
    let mut path = Path::default();
    let mut k = 0.0;
    while k < leaves {
        let by = (k + 0.5) / leaves + 0.5;
        path = path.to(polar(root, by - half)).to(polar(pitch, by - half));
        // A half circle is drawn in two quarters, as an arch is in its two sides.
        path = path.bow(bow, polar(tip, by), true).bow(bow, polar(pitch, by + half), true);
        path = path.to(polar(root, by + half));
        k += 1.0;
    }
    path.close()
}
