//! A cam's lobe: the raised head from the side at its true angle; a cam by steps in
//! front view and to scale.
use super::{Path, num, polar};
use crate::words::gear::shaped as words;
use handturn::gear::cam::{Set, Steps};
use handturn::number::float;
use maud::{Markup, html};

/// Table, spindle with the cam on it, and the end mill, parallel to the spindle.
#[must_use]
pub fn raised(set: &Set) -> Markup {
    let degrees = set.tilt.value;
    let (s, c) = (float::sin_turns(degrees / 360.0), float::cos_turns(degrees / 360.0));
    // Along the spindle, and square to it on the mill's side.
    let at =
        |along: f64, aside: f64| (along * c - aside * s - 60.0, -(along * s + aside * c) - 40.0);
    let bar = |from: f64, to: f64, low: f64, high: f64| {
        Path::default()
            .to(at(from, low))
            .to(at(to, low))
            .to(at(to, high))
            .to(at(from, high))
            .close()
    };
    let (x, y) = at(0.0, 0.0);
    let arc = Path::default().to((x + 60.0, y)).bow(60.0, (x + 60.0 * c, y - 60.0 * s), false).0;
    html! {
        svg.dr viewBox="-160 -240 320 270" role="img" aria-label=([words::RAISED_HEAD, " ", &words::minutes(degrees)].concat()) {
            path.o d="M-158 20H158" {}
            path.m d=(bar(-30.0, 110.0, -13.0, 13.0)) {}
            path.o.m d=(bar(110.0, 128.0, -44.0, 44.0)) {}
            path.wire d=(bar(104.0, 190.0, 44.0, 62.0)) {}
            path.t stroke-dasharray="16 4 3 4" d={ "M" (num(x)) " " (num(y)) "L" (num(at(200.0, 0.0).0)) " " (num(at(200.0, 0.0).1)) } {}
            path.t d={ "M" (num(x)) " " (num(y)) "h90" } {}
            path.a d=(arc) {}
            text.l.h x=(num(x + 66.0)) y=(num(y - 8.0)) font-size="16" { (words::minutes(degrees)) }
            path.a.w d="M-60 6H40m-9 -5l9 5l-9 5" {}
        }
    }
}

/// The cam with its lobe from the upright on, and the mill at the end of the rise.
#[must_use]
pub fn stepped(ask: &Steps) -> Markup {
    let [top, rise, mill] = [ask.radius, ask.rise, ask.mill].map(|length| float::of(length.mm()));
    let scale = 290.0 / (2.0 * top + mill);
    let over = float::of(ask.over.turns());
    // No more corners than the eye can tell.
    let steps = ask.steps.min(240);
    let mut path = Path::default();
    for k in 0..=steps {
        let done = f64::from(k) / f64::from(steps);
        path = path.to(polar((top - rise * (1.0 - done)) * scale, over * done));
    }
    let low = (top - rise) * scale;
    if over < 1.0 {
        path = path.to(polar(low, over)).arc(low, 1.0, over < 0.5, true);
    }
    let (x, y) = polar((top + mill / 2.0) * scale, over);
    let name = words::named(words::CAM, &[(words::RISE, rise)]);
    html! {
        svg.dr viewBox="-160 -160 320 320" role="img" aria-label=(name) {
            path.o.m d=(path.close()) {}
            circle.wire cx=(num(x)) cy=(num(y)) r=(num(mill / 2.0 * scale)) {}
            path.t stroke-dasharray="16 4 3 4" d="M0 -156V156M-156 0H156" {}
        }
    }
}
