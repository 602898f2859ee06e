//! A thread's groove in section, to scale with its dimensions: flats, radii, angle
//! and depth are those of the form.
use super::{Path, num};
use crate::words::thread as words;
use handturn::Error;
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::thread::Thread;
use maud::{Markup, html};

/// One pitch in the drawing.
const PITCH: f64 = 170.0;
/// How wide the metal is shown: from root to root over two crests.
const WIDE: f64 = 2.0 * PITCH;

/// A groove in pitches, y from the pitch line into the metal.
pub(super) struct Groove {
    /// From the crest to the pitch line.
    pub(super) addendum: f64,
    /// From the pitch line to the root.
    pub(super) dedendum: f64,
    /// How much half a groove narrows for each unit of depth.
    tan: f64,
    crest_radius: f64,
    root_radius: f64,
}

impl Groove {
    pub(super) fn of(thread: &Thread, internal: bool) -> Result<Self, Error> {
        let form = &thread.form;
        let profile = if internal { form.internal } else { form.external };
        let pitch = float::of(thread.pitch.mm());
        let clearance = float::of(form.clearance(thread.pitch)?.mm()) / pitch;
        let to_line = float::of(form.addendum);
        let depth = float::of(profile.depth);
        let addendum = if internal { depth - to_line } else { to_line };
        let half = float::of(form.angle.turns()) / 2.0;
        Ok(Self {
            addendum,
            dedendum: depth + clearance - addendum,
            tan: float::sin_turns(half) / float::cos_turns(half),
            crest_radius: float::of(profile.crest_radius),
            root_radius: float::of(profile.root_radius),
        })
    }

    /// Half the groove's width at `y`.
    fn half(&self, y: f64) -> f64 {
        0.25 - y * self.tan
    }

    /// Sine and cosine of half the angle between the flanks.
    fn lean(&self) -> (f64, f64) {
        let cos = 1.0 / float::sqrt(1.0 + self.tan * self.tan);
        (self.tan * cos, cos)
    }
}

/// The section of `thread`, of the nut where it is `internal`, and the same in a sentence.
///
/// # Errors
/// [`handturn::Cause::Overflow`] for figures too long to work with.
pub fn drawing(thread: &Thread, internal: bool) -> Result<Markup, Error> {
    let groove = Groove::of(thread, internal)?;
    let depth = (groove.addendum + groove.dedendum) * PITCH;
    // The nut hangs from above: its metal lies on the other side.
    let (up, line) = if internal {
        (-1.0, 40.0 + groove.dedendum * PITCH)
    } else {
        (1.0, 64.0 + groove.addendum * PITCH)
    };
    let y = |y: f64| line + up * y * PITCH;
    let (crest, root) = (y(-groove.addendum), y(groove.dedendum));
    let metal = root + up * 34.0;
    let (top, foot) = (0.0, if internal { crest + 62.0 } else { metal + 8.0 });
    let shape = outline(&groove, PITCH, 2, 0.0, &y, up);
    let fill = shape.0.clone() + "V" + &num(metal) + "H0Z";
    let apex = groove.half(0.0) / groove.tan;
    let mm = |mm: f64| words::about_mm(mm * float::of(thread.pitch.mm()));
    let height = foot + 34.0;
    let arrow_y = if internal { crest + 36.0 } else { crest - 36.0 };
    let (from, to) = (PITCH * 0.5, PITCH * 1.5);
    let right = WIDE + 18.0;
    let scale = scale_of(thread.pitch);
    let bar = scale.0 / float::of(thread.pitch.mm()) * PITCH;
    let round = groove.root_radius > 0.0;
    // Letters stand on their line, so below an edge they want their height more.
    let beside = if internal { 12.0 } else { 0.0 };
    Ok(html! {
        svg.dr.sec viewBox=(["0 ", &num(top), " 450 ", &num(height)].concat()) role="img"
            aria-label=(words::section_name(thread, internal, &mm(groove.addendum + groove.dedendum))) {
            path.metal d=(fill) {}
            path.o d=(shape.0) {}
            // The sharp triangle that the form is cut from.
            @if groove.tan > 0.0 && apex - groove.dedendum < 0.6 {
                path.t stroke-dasharray="4 3" d={
                    "M" (num(PITCH - groove.half(groove.dedendum * 0.8) * PITCH)) " " (num(y(groove.dedendum * 0.8)))
                    "L" (num(PITCH)) " " (num(y(apex)))
                    "L" (num(PITCH + groove.half(groove.dedendum * 0.8) * PITCH)) " " (num(y(groove.dedendum * 0.8)))
                } {}
            }
            path.a stroke-dasharray="16 4 3 4" d={ "M0 " (num(line)) "H" (num(WIDE)) } {}
            text.c.l.h x="4" y=(num(line - 6.0)) font-size="15" { (words::PITCH_LINE) }
            // Pitch, from crest to crest.
            path.t d={ "M" (num(from)) " " (num(crest)) "V" (num(arrow_y - up * 8.0)) "M" (num(to)) " " (num(crest)) "V" (num(arrow_y - up * 8.0)) } {}
            (arrow((from, arrow_y), (to, arrow_y)))
            text.h x=(num(PITCH)) y=(num(arrow_y - 7.0)) font-size="19" { "P " (mm(1.0)) }
            // Depth, from crest to root.
            path.t d={ "M" (num(from)) " " (num(crest)) "H" (num(right + 8.0)) "M" (num(PITCH)) " " (num(root)) "H" (num(right + 8.0)) } {}
            (arrow((right, crest), (right, root)))
            text.dim x=(num(right + 7.0)) y=(num((crest + root) / 2.0 + 4.0)) font-size="18" { (mm(depth / PITCH)) }
            text.l.n x=(num(right + 7.0)) y=(num((crest + root) / 2.0 + 22.0)) font-size="14" { (words::DEEP) }
            // Angle between the flanks.
            @if groove.tan > 0.0 {
                @let (sin, cos) = groove.lean();
                @let far = (apex + 0.3 * groove.addendum) / cos * PITCH;
                @let at = (y(apex), y(apex - far / PITCH * cos));
                path.t d={ "M" (num(PITCH - far * sin)) " " (num(at.1)) "A" (num(far)) " " (num(far)) " 0 0 " (if internal { "0" } else { "1" }) " " (num(PITCH + far * sin)) " " (num(at.1)) } {}
                text.h x=(num(PITCH)) y=(num(at.0 - up * (far - 14.0) + if internal { 14.0 } else { 0.0 })) font-size="17" { (words::angle(thread.form.angle)) }
            }
            @if groove.crest_radius > 0.0 {
                text.l.n x="4" y=(num(crest - up * 7.0 + beside)) font-size="15" { "r " (mm(groove.crest_radius)) }
            } @else {
                text.l.n x="4" y=(num(crest - up * 7.0 + beside)) font-size="15" { (words::FLAT) " " (mm(1.0 - 2.0 * groove.half(-groove.addendum))) }
            }
            text.l.n x=(num(PITCH * 1.22)) y=(num(root + up * 18.0 + beside / 2.0)) font-size="15" {
                @if round { "r " (mm(groove.root_radius)) } @else { (words::FLAT) " " (mm(2.0 * groove.half(groove.dedendum))) }
            }
            path.o d={ "M4 " (num(foot + 12.0)) "v10m0-5h" (num(bar)) "m0-5v10" } {}
            text.l.n x=(num(bar + 14.0)) y=(num(foot + 22.0)) font-size="14" {
                (if internal { words::NUT } else { words::SCREW }) (words::TO_SCALE) " " (scale.1)
            }
        }
    })
}

/// The metal's edge from left to right: `crests` of them between roots at whole pitches
/// of `pitch` units from `from` on.
pub(super) fn outline(
    groove: &Groove,
    pitch: f64,
    crests: u8,
    from: f64,
    y: &dyn Fn(f64) -> f64,
    up: f64,
) -> Path {
    let (sin, cos) = groove.lean();
    let (crest, root) = (-groove.addendum, groove.dedendum);
    let mut path = Path::default();
    for k in 0..=crests {
        let x = from + f64::from(k) * pitch;
        let at = |along: f64, depth: f64| (x + along * pitch, y(depth));
        let (r, half) = (groove.root_radius, groove.half(root).max(0.0));
        let (wide, touch) = if r > 0.0 { (r * cos, root - r + r * sin) } else { (half, root) };
        path = path.to(if k == 0 { at(0.0, root) } else { at(-wide, touch) });
        let end = if k == crests { at(0.0, root) } else { at(wide, touch) };
        path = if r > 0.0 { path.bow(r * pitch, end, up < 0.0) } else { path.to(end) };
        if k == crests {
            break;
        }
        let r = groove.crest_radius;
        let (wide, touch) = if r > 0.0 {
            (r * cos, crest + r - r * sin)
        } else {
            (0.5 - groove.half(crest), crest)
        };
        path = path.to(at(0.5 - wide, touch));
        let end = at(0.5 + wide, touch);
        path = if r > 0.0 { path.bow(r * pitch, end, up > 0.0) } else { path.to(end) };
    }
    path
}

/// A dimension line with an arrow at either end.
pub(super) fn arrow(from: (f64, f64), to: (f64, f64)) -> Markup {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = float::sqrt(dx * dx + dy * dy).max(1.0);
    let (ex, ey) = (dx / long, dy / long);
    let head = |(x, y): (f64, f64), way: f64| {
        let back = (x + 9.0 * way * ex, y + 9.0 * way * ey);
        let path = Path::default().to((x, y)).to((back.0 - 3.0 * ey, back.1 + 3.0 * ex));
        path.to((back.0 + 3.0 * ey, back.1 - 3.0 * ex)).close()
    };
    html! {
        path d=(Path::default().to(from).to(to).0) {}
        path.tip d=(head(from, 1.0) + &head(to, -1.0)) {}
    }
}

/// A round length of a fifth to a half of the pitch: in millimetres, and as a label.
fn scale_of(pitch: Length) -> (f64, String) {
    let steps = [
        (1, 100),
        (2, 100),
        (5, 100),
        (1, 10),
        (2, 10),
        (5, 10),
        (1, 1),
        (2, 1),
        (5, 1),
        (10, 1),
        (20, 1),
        (50, 1),
    ];
    let fits = |(num, den): &&(i64, i64)| {
        Fraction::new(num * 2, *den).is_ok_and(|twice| twice <= pitch.mm())
    };
    let (num, den) = steps.iter().rev().find(fits).copied().unwrap_or((1, 100));
    let value = Fraction::new(num, den).unwrap_or(Fraction::ONE);
    (float::of(value), crate::words::decimal(value, 2) + " mm")
}
