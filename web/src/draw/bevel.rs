//! A pair of bevel wheels in section through both axes, their apexes in one point.
use super::{Path, num};
use crate::words::gear::bevel as words;
use handturn::gear::{Bevel, BevelSizes, BevelWheel};
use handturn::number::float;
use maud::{Markup, html};

/// The drawing's larger side, in its own units.
const WIDE: f64 = 320.0;

/// One wheel's section above its axis, from the apex: tips and bottoms at both ends.
struct Section {
    tips: [(f64, f64); 2],
    bottoms: [(f64, f64); 2],
    pitch: (f64, f64),
}

/// `pair` with its sizes: the first wheel's axis lies level, the second's at the shafts'
/// angle.
#[must_use]
pub fn drawing(pair: &Bevel, sizes: &BevelSizes) -> Markup {
    let shafts = float::of(pair.shafts.turns());
    let face = float::of(pair.face.mm());
    let depth = float::of(sizes.whole_depth.mm());
    let turned = [0.0, shafts];
    let sections = sizes.wheels.each_ref().map(|wheel| section(wheel, face, depth));
    // Where the corners of both come to lie, for the frame.
    let (mut low, mut high) = ((0.0_f64, 0.0_f64), (0.0_f64, 0.0_f64));
    for (section, turns) in sections.iter().zip(turned) {
        for (x, y) in section.tips.iter().chain(&section.bottoms) {
            for side in [1.0, -1.0] {
                let (x, y) = turn((*x, *y * side), turns);
                low = (low.0.min(x), low.1.min(y));
                high = (high.0.max(x), high.1.max(y));
            }
        }
    }
    let scale = WIDE / (high.0 - low.0).max(high.1 - low.1);
    let view = [
        num(low.0 * scale - 12.0),
        num(low.1 * scale - 12.0),
        num((high.0 - low.0) * scale + 24.0),
        num((high.1 - low.1) * scale + 24.0),
    ]
    .join(" ");
    html! {
        svg.dr viewBox=(view) role="img" aria-label=(words::picture_name(pair, sizes)) {
            @for (section, turns) in sections.iter().zip(turned) {
                path.o.b d=(outline(section, turns, scale)) {}
                path.t stroke-dasharray="5 3" d=(bottoms(section, turns, scale)) {}
                path.t d=(cone(section, turns, scale)) {}
                path.t stroke-dasharray="16 4 3 4" d=(axis(section, turns, scale)) {}
            }
        }
    }
}

fn section(wheel: &BevelWheel, face: f64, depth: f64) -> Section {
    let direction = |degrees: f64| {
        let turns = degrees / 360.0;
        (float::cos_turns(turns), float::sin_turns(turns))
    };
    let (tip, root) = (direction(wheel.face_angle.value), direction(wheel.cutting_angle.value));
    let pitch = direction(wheel.pitch_angle.value);
    let large = (wheel.apex_to_tips.value, wheel.outside_diameter.value / 2.0);
    // The back is square to the pitch cone, and the ends of the face stand alike.
    let inner = |from: (f64, f64), along: (f64, f64)| {
        let by = face / (along.0 * pitch.0 + along.1 * pitch.1);
        (from.0 - along.0 * by, from.1 - along.1 * by)
    };
    let bottom = (large.0 + pitch.1 * depth, large.1 - pitch.0 * depth);
    let reach = wheel.pitch_diameter.value / 2.0;
    Section {
        tips: [inner(large, tip), large],
        bottoms: [inner(bottom, root), bottom],
        pitch: (reach * pitch.0 / pitch.1, reach),
    }
}

/// `point` turned about the apex, upwards; y points down in a drawing.
fn turn((x, y): (f64, f64), turns: f64) -> (f64, f64) {
    let (sin, cos) = (float::sin_turns(turns), float::cos_turns(turns));
    (x * cos - y * sin, -(x * sin + y * cos))
}

fn placed(point: (f64, f64), turns: f64, scale: f64) -> (f64, f64) {
    let (x, y) = turn(point, turns);
    (x * scale, y * scale)
}

/// The whole blank: over the tips, across the back, and so on the other side.
fn outline(section: &Section, turns: f64, scale: f64) -> String {
    let [inner, outer] = section.tips;
    let bottom = section.bottoms[1];
    let below = |(x, y): (f64, f64)| (x, -y);
    let corners = [inner, outer, bottom, below(bottom), below(outer), below(inner)];
    let path = corners
        .into_iter()
        .fold(Path::default(), |path, corner| path.to(placed(corner, turns, scale)));
    path.close()
}

/// Bottoms of the gaps.
fn bottoms(section: &Section, turns: f64, scale: f64) -> String {
    let [inner, outer] = section.bottoms;
    both(inner, outer, turns, scale)
}

/// The pitch cone, from the apex on.
fn cone(section: &Section, turns: f64, scale: f64) -> String {
    both((0.0, 0.0), section.pitch, turns, scale)
}

/// A line on both sides of the axis.
fn both(from: (f64, f64), to: (f64, f64), turns: f64, scale: f64) -> String {
    [1.0, -1.0]
        .into_iter()
        .fold(Path::default(), |path, side| {
            let at = |(x, y): (f64, f64)| placed((x, y * side), turns, scale);
            path.jump(at(from)).to(at(to))
        })
        .0
}

fn axis(section: &Section, turns: f64, scale: f64) -> String {
    let far = section.bottoms[1].0 * 1.06;
    Path::default().to((0.0, 0.0)).to(placed((far, 0.0), turns, scale)).0
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::gear::{Depth, Tooth};
    use handturn::measure::{Angle, Length};
    use handturn::number::Fraction;

    #[test]
    fn both_touch_along_one_line() {
        for depth in [Depth::Parallel, Depth::Tapering] {
            let pair = Bevel {
                teeth: [20, 40],
                tooth: Tooth::default(),
                shafts: Angle::from_degrees(Fraction::whole(75)).unwrap(),
                face: Length::from_mm(Fraction::whole(6)),
                depth,
            };
            let sizes = pair.sizes().unwrap();
            let [one, other] = sizes.wheels.each_ref().map(|wheel| section(wheel, 6.0, 2.25).pitch);
            // The first's upper pitch corner is the second's lower one.
            let (a, b) = (turn(one, 0.0), turn((other.0, -other.1), 75.0 / 360.0));
            assert!((a.0 - b.0).abs() + (a.1 - b.1).abs() < 1e-9, "{a:?} {b:?}");
        }
    }
}
