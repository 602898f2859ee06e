//! Teeth of a wheel, to scale: true involutes and the circles they stand on, with the
//! caliper, the anvils or the pins laid in as the answer says.
use super::{Path, num, polar, thread::arrow};
use crate::words::gear::tooth as words;
use handturn::Error;
use handturn::gear::Spur;
use handturn::gear::chordal::Chordal;
use handturn::gear::outline::{self, FLANK, POINTS, Point, TIP};
use handturn::gear::{pins, span};
use handturn::measure::Length;
use handturn::number::float;
use maud::{Markup, html};

/// Half the width of what is shown, in units of the drawing.
const HALF: f64 = 166.0;

/// What is laid in to measure.
#[derive(Clone, Copy, Debug)]
pub enum Laid<'a> {
    /// A gear-tooth caliper over one tooth.
    Caliper(&'a Chordal),
    /// Flat anvils over several.
    Span(&'a span::Span),
    /// A pin of so many millimetres, and another opposite.
    Pins(f64, &'a pins::Over),
}

/// Teeth of `wheel`, whose blank measures `outside`, with what is `laid` in.
///
/// # Errors
/// What [`outline::half_gap`] finds.
pub fn drawing(wheel: &Spur, outside: Length, laid: Laid) -> Result<Markup, Error> {
    let radius = |length: Length| float::of(length.mm()) / 2.0;
    let half_gap = outline::half_gap(wheel, outside)?;
    let few = wheel.teeth < 12;
    // So many gaps, half of them either side of the middle: it lies in a gap for pins, on
    // a tooth for the caliper, on either for a span.
    let gaps = match laid {
        Laid::Pins(..) => 3 - 2 * u32::from(few),
        Laid::Caliper(_) => 4 - 2 * u32::from(few),
        Laid::Span(span) => span.teeth.saturating_add(1),
    };
    let half_pitch = 0.5 / f64::from(wheel.teeth);
    let ends = f64::from(gaps) * half_pitch;
    let rim = radius(outside);
    let scale = HALF / (rim * float::sin_turns(ends.min(0.25)));
    let (rim, root) = (rim * scale, radius(wheel.root_diameter()?) * scale);
    let (base, pitch) =
        (wheel.arcs()?.base_diameter.value / 2.0 * scale, radius(wheel.pitch_diameter()?) * scale);
    let edge = teeth(&half_gap, gaps, half_pitch, scale);
    let low = (root - (rim - root)).max(root / 3.0);
    let arc = |radius: f64, path: Path| {
        // In two, so that each is less than half round.
        path.bow(radius, polar(radius, 0.0), true).bow(radius, polar(radius, ends), true)
    };
    let metal = Path(edge.0.clone()).to(polar(low, ends));
    let metal = metal.bow(low, polar(low, 0.0), false).bow(low, polar(low, -ends), false);
    let mut circles =
        [(words::OUTSIDE, rim), (words::PITCH, pitch), (words::BASE, base), (words::BOTTOM, root)];
    circles.sort_by(|one, other| other.1.total_cmp(&one.1));
    // A large wheel's base circle lies far below its gaps.
    let circles = circles.iter().filter(|(_, radius)| *radius > low);
    let (measured, top) = measured(laid, scale, rim, base, half_pitch, wheel.teeth & 1 == 1);
    let (named, last) = labels(circles.clone(), ends, scale);
    let foot = (polar(low, ends).1.max(polar(low, 0.0).1) + 8.0).max(last + 8.0);
    let view = ["-170 ", &num(top), " 450 ", &num(foot - top)].concat();
    Ok(html! {
        svg.dr.sec viewBox=(view) role="img" aria-label=(words::name(wheel.teeth, laid)) {
            path.metal d=(metal.close()) {}
            @for &(name, radius) in circles {
                path.t.a[name == words::PITCH] stroke-dasharray=[dashes(name)] d=(arc(radius, Path::default().to(polar(radius, -ends))).0) {}
            }
            path.o d=(edge.0) {}
            (named)
            (measured)
        }
    })
}

/// The edge of the metal from left to right, over so many gaps.
fn teeth(half_gap: &[Point; POINTS], gaps: u32, half_pitch: f64, scale: f64) -> Path {
    // Of many teeth, that look small, every fourth point of a flank will do.
    let shown =
        |k: usize| gaps <= 8 || k == 0 || k >= TIP - 1 || (k >= FLANK && (k - FLANK) % 4 == 0);
    let mut path = Path::default();
    for gap in 0..gaps {
        let turns = (f64::from(2 * gap + 1) - f64::from(gaps)) * half_pitch;
        let (sin, cos) = (float::sin_turns(turns), float::cos_turns(turns));
        let at = |k: usize, side: f64| {
            let Point { x, y } = half_gap[k];
            let (x, y) = (side * x * scale, y * scale);
            (x * cos + y * sin, x * sin - y * cos)
        };
        let tip = half_gap[TIP];
        let rim = float::sqrt(tip.x * tip.x + tip.y * tip.y) * scale;
        if gap == 0 {
            path = path.to(at(TIP, -1.0));
        }
        path = path.bow(rim, at(TIP - 1, -1.0), true);
        for k in (0..TIP - 1).rev().filter(|&k| shown(k)) {
            path = path.to(at(k, -1.0));
        }
        for k in (1..TIP).filter(|&k| shown(k)) {
            path = path.to(at(k, 1.0));
        }
        path = path.bow(rim, at(TIP, 1.0), true);
    }
    path
}

/// How a circle is drawn: the pitch circle as a centre line, the base circle dashed.
fn dashes(name: &str) -> Option<&'static str> {
    match name {
        words::PITCH => Some("16 4 3 4"),
        words::BASE => Some("4 3"),
        _ => None,
    }
}

/// The circles' names and diameters beside their right ends, none on another, and how
/// far down they reach.
fn labels<'a>(
    circles: impl Iterator<Item = &'a (&'static str, f64)>,
    ends: f64,
    scale: f64,
) -> (Markup, f64) {
    let mut last = f64::NEG_INFINITY;
    let named = html! {
        @for &(name, radius) in circles {
            @let end = polar(radius, ends.min(0.25));
            @let () = last = (end.1 + 5.0).max(last + 16.0);
            path.t d=(Path::default().to(end).to((HALF + 7.0, last - 5.0)).0) {}
            text.n.l x=(num(HALF + 10.0)) y=(num(last)) font-size="14" { (name) " " (words::diameter(2.0 * radius / scale)) }
        }
    };
    (named, last)
}

/// What is laid in, and how far up the drawing reaches.
fn measured(
    laid: Laid,
    scale: f64,
    rim: f64,
    base: f64,
    half_pitch: f64,
    odd: bool,
) -> (Markup, f64) {
    let dot = |x: f64, y: f64| html! { circle.af cx=(num(x)) cy=(num(y)) r="2.6" {} };
    match laid {
        Laid::Pins(pin, over) => {
            let (pin, centre) = (pin / 2.0 * scale, over.centres.value / 2.0 * scale);
            // Along the tangent from the pin's centre to the base circle it touches.
            let (sin, cos) = (base / centre, float::sqrt(1.0 - base * base / centre / centre));
            let (x, y) = (pin * sin, pin * cos - centre);
            let top = -centre - pin - 18.0;
            // An odd number of teeth is measured half a pitch off the middle of a gap.
            let lean = if odd { half_pitch / 2.0 * 360.0 } else { 0.0 };
            let drawn = html! {
                circle.wire cx="0" cy=(num(-centre)) r=(num(pin)) {}
                (dot(x, y)) (dot(-x, y))
                rect.b x="-70" y=(num(-pin - 16.0)) width="140" height="16"
                    transform={ "translate(0 " (num(-centre)) ")rotate(" (num(lean)) ")" } {}
                text.h x="0" y=(num(top - 12.0)) font-size="19" { (words::over(over.reading.value)) }
            };
            (drawn, top - 34.0)
        }
        Laid::Span(span) => {
            let half = span.reading.value / 2.0 * scale;
            let (top, tall) = (-rim - 20.0, rim - base + 20.0 + 0.1 * (rim - base));
            let wide = (half_pitch * rim).max(5.0);
            let line = top - 10.0;
            let drawn = html! {
                @for x in [-half - wide, half] {
                    rect.b x=(num(x)) y=(num(top)) width=(num(wide)) height=(num(tall)) {}
                }
                path.t d={ "M" (num(-half)) " " (num(top)) "V" (num(line - 6.0)) "M" (num(half)) " " (num(top)) "V" (num(line - 6.0)) } {}
                (dot(half, -base)) (dot(-half, -base))
                (arrow((-half, line), (half, line)))
                text.h x="0" y=(num(line - 8.0)) font-size="19" { (words::over(span.reading.value)) }
            };
            (drawn, line - 30.0)
        }
        Laid::Caliper(chordal) => {
            let half = chordal.thickness.value / 2.0 * scale;
            let level = chordal.height.value * scale - rim;
            let (top, wide) = (-rim - 26.0, half * 0.7);
            let line = top - 10.0;
            let side = -half - wide - 12.0;
            let drawn = html! {
                @for x in [-half - wide, half] {
                    rect.b x=(num(x)) y=(num(top)) width=(num(wide)) height=(num(level - top)) {}
                }
                rect.b x=(num(-half * 0.8)) y=(num(top)) width=(num(half * 1.6)) height="26" {}
                path.t d={ "M" (num(-half)) " " (num(top)) "V" (num(line - 6.0)) "M" (num(half)) " " (num(top)) "V" (num(line - 6.0))
                    "M" (num(-half)) " " (num(level)) "H" (num(half)) "M0 " (num(-rim)) "H" (num(side - 6.0)) "M" (num(-half - wide)) " " (num(level)) "H" (num(side - 6.0)) } {}
                (dot(half, level)) (dot(-half, level))
                (arrow((-half, line), (half, line)))
                text.h x="0" y=(num(line - 8.0)) font-size="19" { (words::mm(chordal.thickness.value)) }
                (arrow((side, -rim), (side, level)))
                text.h.r x=(num(side - 5.0)) y=(num((level - rim) / 2.0 + 5.0)) font-size="17" { (words::mm(chordal.height.value)) }
            };
            (drawn, line - 30.0)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::gear::{Tooth, chordal};
    use handturn::number::Fraction;

    /// The figures of a path's data, in pairs: `M` and `L` points, and where bows end.
    fn points(data: &str) -> Vec<(f64, f64)> {
        let mut found = Vec::new();
        for piece in data.split_inclusive(|c: char| c.is_ascii_alphabetic()) {
            let text = piece.trim_end_matches(|c: char| c.is_ascii_alphabetic());
            let figures: Vec<f64> = text.split(' ').filter_map(|n| n.parse().ok()).collect();
            if let [.., x, y] = figures[..] {
                found.push((x, y));
            }
        }
        found
    }

    /// The outline in a drawing, back in millimetres.
    fn edge(text: &str, scale: f64) -> Vec<(f64, f64)> {
        let data = text.split(r#"class="o" d=""#).nth(1).unwrap().split('"').next().unwrap();
        points(data).iter().map(|(x, y)| (x / scale, -y / scale)).collect()
    }

    #[test]
    fn points_of_the_flanks_lie_on_the_involute() {
        for teeth in [8, 17, 38, 64, 127, 223] {
            let wheel = Spur::new(teeth, Tooth::default()).unwrap();
            let outside = wheel.outside_diameter().unwrap();
            let over = span::over(&wheel, outside, None).unwrap();
            let text = drawing(&wheel, outside, Laid::Span(&over)).unwrap().into_string();
            let (n, rim) = (f64::from(teeth), float::of(outside.mm()) / 2.0);
            let gaps = f64::from(over.teeth + 1);
            let scale = HALF / (rim * (gaps / n * std::f64::consts::PI).min(1.0_f64.asin()).sin());
            let alpha = 20.0_f64.to_radians();
            let base = n / 2.0 * alpha.cos();
            let root = n / 2.0 - 1.25;
            let inv = |angle: f64| angle.tan() - angle;
            let mut on_flanks = 0;
            for (x, y) in edge(&text, scale) {
                let radius = x.hypot(y);
                if radius < base.max(root) + 0.4 || radius > rim - 0.02 {
                    continue;
                }
                // How far round from the middle of the nearest tooth, and how far it should be.
                let half_tooth =
                    std::f64::consts::FRAC_PI_2 / n + inv(alpha) - inv((base / radius).acos());
                let pitch = std::f64::consts::TAU / n;
                let from = x.atan2(y) / pitch + if over.teeth % 2 == 0 { 0.5 } else { 0.0 };
                let off = ((from - from.round()).abs() * pitch - half_tooth).abs() * radius * scale;
                assert!(off < 0.02, "{teeth} teeth: {x} {y} lies {off} units off");
                on_flanks += 1;
            }
            assert!(on_flanks >= 4 * (over.teeth as usize), "{teeth}: {on_flanks} points");
        }
    }

    #[test]
    fn pins_and_jaws_touch_the_flanks() {
        let wheel = Spur::new(38, Tooth::default()).unwrap();
        let outside = wheel.outside_diameter().unwrap();
        let pin = Length::from_mm(Fraction::new(17, 10).unwrap());
        let over = pins::over(&wheel, outside, pin).unwrap();
        let text = drawing(&wheel, outside, Laid::Pins(1.7, &over)).unwrap().into_string();
        let scale = HALF / (20.0 * (3.0 * std::f64::consts::PI / 38.0).sin());
        // No point of the outline lies within the pin, and some come close to its edge.
        let centre = over.centres.value / 2.0;
        let clear =
            edge(&text, scale).iter().map(|(x, y)| x.hypot(y - centre) - 0.85).fold(9.0, f64::min);
        assert!((-0.001..0.03).contains(&clear), "{clear}");
        let chord = chordal::tooth(&wheel, outside).unwrap();
        let text = drawing(&wheel, outside, Laid::Caliper(&chord)).unwrap().into_string();
        let scale = HALF / (20.0 * (4.0 * std::f64::consts::PI / 38.0).sin());
        let half = num(chord.thickness.value / 2.0 * scale);
        assert!(text.contains(&[r#"<rect class="b" x=""#, &half, "\""].concat()), "{text}");
    }
}
