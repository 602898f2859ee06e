//! Wires at rest on a screw between flat anvils, to scale: form, wires and the
//! distance over them are those of the answer.
use super::thread::{Groove, arrow, outline};
use super::{Path, num};
use crate::words::thread as words;
use handturn::Error;
use handturn::number::float;
use handturn::thread::Thread;
use maud::{Markup, html};

/// One pitch in the drawing, and how many are shown.
const PITCH: f64 = 56.0;
const SHOWN: u8 = 5;
/// The most of the core that is drawn; more is left out, and said.
const CORE: f64 = 220.0;

/// `wire` on `thread` with the distance `over` three of them, both in millimetres, where
/// the pitch diameter is `pitch_diameter`; `least` and `most` are the limits as text.
///
/// # Errors
/// [`handturn::Cause::Overflow`] for figures too long to work with.
pub fn drawing(
    thread: &Thread,
    wire: f64,
    over: f64,
    pitch_diameter: f64,
    limits: (&str, &str),
) -> Result<Markup, Error> {
    let groove = Groove::of(thread, false)?;
    let scale = PITCH / float::of(thread.pitch.mm());
    let (radius, centre) = (wire / 2.0 * scale, (over - wire) / 2.0 * scale);
    let line = pitch_diameter / 2.0 * scale;
    let root = line - groove.dedendum * PITCH;
    // Where the core is high, its middle is left out.
    let cut = (root - CORE / 2.0).max(0.0);
    let (anvil, top) = (34.0, centre + radius - cut);
    let middle = anvil + 8.0 + top;
    let upper = |y: f64| middle - (line - cut - y * PITCH);
    let lower = |y: f64| middle + (line - cut - y * PITCH);
    // Half a turn on, a single thread stands half a pitch along; a double one does not.
    let along = if thread.starts & 1 == 1 { PITCH / 2.0 } else { 0.0 };
    let wide = f64::from(SHOWN) * PITCH;
    let above = outline(&groove, PITCH, SHOWN, 0.0, &upper, 1.0);
    let below = outline(&groove, PITCH, SHOWN, along, &lower, -1.0);
    let left = PITCH * 2.0;
    let wires = [
        (left, -1.0),
        (left - PITCH + along, 1.0),
        (if along > 0.0 { left + along } else { left + PITCH }, 1.0),
    ];
    let at = |way: f64| middle + way * top;
    let x = wide + along + 26.0;
    let height = 2.0 * (middle);
    let body = Path::default()
        .to((0.0, upper(groove.dedendum)))
        .to((wide, upper(groove.dedendum)))
        .to((wide + along, lower(groove.dedendum)))
        .to((along, lower(groove.dedendum)));
    Ok(html! {
        svg.dr.sec viewBox=(["-6 0 450 ", &num(height + 4.0)].concat()) role="img" aria-label=(words::wires_name(wire, limits)) {
            path.metal d=(body.close()) {}
            path.metal d=(above.0.clone() + "Z") {}
            path.metal d=(below.0.clone() + "Z") {}
            path.o d=(above.0) {}
            path.o d=(below.0) {}
            path.t stroke-dasharray="18 4 3 4" d={ "M-6 " (num(middle)) "H" (num(wide + along + 6.0)) } {}
            @for (wire_x, way) in wires {
                circle.wire cx=(num(wire_x)) cy=(num(middle + way * (centre - cut))) r=(num(radius)) {}
            }
            @for way in [-1.0, 1.0] {
                @let face = at(way);
                rect.b x=(num(left - PITCH * 1.2)) y=(num(if way < 0.0 { face - anvil } else { face })) width=(num(PITCH * 2.6)) height=(num(anvil)) {}
                path.t d={ "M" (num(left + PITCH * 1.4)) " " (num(face)) "H" (num(x + 8.0)) } {}
            }
            text.n x=(num(left + PITCH * 0.1)) y=(num(at(-1.0) - 12.0)) font-size="15" { (words::ANVIL) }
            (arrow((x, at(-1.0)), (x, at(1.0))))
            text.dim x=(num(x + 8.0)) y=(num(middle - 4.0)) font-size="24" { (limits.1) }
            text.dim x=(num(x + 8.0)) y=(num(middle + 24.0)) font-size="24" { (limits.0) }
            @if cut > 0.0 { text.n.h x=(num(wide / 2.0)) y=(num(middle - 8.0)) font-size="14" { (words::CORE_LEFT_OUT) } }
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::measure::Length;
    use handturn::number::Fraction;
    use handturn::thread::{Form, Hand};

    #[test]
    fn the_wires_touch_the_anvils() {
        let mm = |n| Length::from_mm(Fraction::new(n, 1000).unwrap());
        let thread = Thread::new(Form::METRIC, mm(6000), mm(750), 1, Hand::Right).unwrap();
        let text = drawing(&thread, 0.45, 6.191, 5.491, ("6.091", "6.191")).unwrap().into_string();
        let scale = 56.0 / 0.75;
        let cy = 42.0 + 0.45 / 2.0 * scale;
        assert!(text.contains(&format!(r#"cy="{}" r="16.8""#, num(cy))), "{text}");
    }
}
