//! The outline of a gap, for drawings: true involutes from the base circle outwards.
//!
//! Below the base circle the flank goes on straight towards the centre, as a form
//! cutter leaves it, not undercut as a rack would; into the bottom runs a fillet. Its
//! radius is the clearance over 1 − sin α, the largest of a rack that is straight to its
//! working depth (0.38 modules in ISO 53), or what the gap has room for. A tooth whose
//! flanks meet below the outside ends in their point.
//!
//! ```
//! use handturn::gear::{Spur, Tooth, outline};
//! let wheel = Spur::new(64, Tooth::default())?;
//! let half = outline::half_gap(&wheel, wheel.outside_diameter()?)?;
//! // From the bottom of the gap to the middle of the tooth's tip.
//! assert!((half[0].y - 30.75).abs() < 1e-9 && half[0].x == 0.0);
//! assert!((half[outline::TIP].x.hypot(half[outline::TIP].y) - 33.0).abs() < 1e-9);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Spur;
use super::flank::{Flank, blank};
use super::involute;
use crate::error::{Error, Field};
use crate::measure::{Length, given};
use crate::number::float::{PI, asin_turns, cos_turns, of, sin_turns, sqrt};

/// Points of half a gap.
pub const POINTS: usize = 21;
/// The first point of the fillet; the one before it is the middle of the bottom.
pub const FILLET: usize = 1;
/// The first point of the involute.
pub const FLANK: usize = 7;
/// The middle of the tip; the one before it is the last of the involute.
pub const TIP: usize = POINTS - 1;

/// A point of an outline, in millimetres from the wheel's centre.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Point {
    /// Across the middle of the gap.
    pub x: f64,
    /// Along the middle of the gap, outwards.
    pub y: f64,
}

impl Point {
    /// At `radius` and `angle` radians from the middle of the gap.
    fn polar(radius: f64, angle: f64) -> Self {
        let turns = angle / (2.0 * PI);
        Self { x: radius * sin_turns(turns), y: radius * cos_turns(turns) }
    }
}

/// Half a gap of a wheel whose blank measures `outside`, from the middle of its bottom
/// to the middle of the next tooth's tip: the bottom, the fillet from [`FILLET`], the
/// involute from [`FLANK`], the tip at [`TIP`]. The other half is its mirror image, and
/// the other gaps stand a tooth's pitch on. In millimetres, each within 10^-12 of the
/// diameter.
///
/// # Errors
/// What [`chordal::tooth`](super::chordal::tooth) finds in wheel and blank.
pub fn half_gap(spur: &Spur, outside: Length) -> Result<[Point; POINTS], Error> {
    let flank = Flank::new(spur)?;
    let outside = blank(spur, outside)?;
    let clearance = given::minus(spur.tooth.dedendum()?, spur.tooth.addendum()?, Field::Depth)?;
    let radius = of(clearance.mm()).max(0.0) / (1.0 - flank.pressure.sin);
    let fillet = Fillet::within(&flank, radius);
    let angle = |t: f64| flank.gap() + involute::of_tangent(t);
    // Where the flanks of a tooth meet, if that is below the outside.
    let pointed = involute::tangent(flank.half).unwrap_or(f64::MAX);
    let highest = flank.tangent_at(outside).min(pointed);
    let tip = Point::polar(flank.radius_at(highest), PI / flank.teeth);
    let [first, last] = [(FILLET, FLANK), (FLANK, TIP)].map(|(from, to)| steps(from, to));
    let mut points = [tip; POINTS];
    for (point, index) in points.iter_mut().zip(0_u32..) {
        let index = f64::from(index);
        *point = if index < first.0 {
            Point { x: 0.0, y: fillet.bottom }
        } else if index < last.0 {
            fillet.point((index - first.0) / first.1)
        } else if index <= last.0 + last.1 {
            let t = fillet.ends + (highest - fillet.ends) * (index - last.0) / last.1;
            Point::polar(flank.radius_at(t), angle(t))
        } else {
            tip
        };
    }
    Ok(points)
}

/// The first index, and how many steps there are from it to the last before `to`.
fn steps(from: usize, to: usize) -> (f64, f64) {
    let small = |n: usize| u32::try_from(n).map_or(0.0, f64::from);
    (small(from), small(to) - small(from) - 1.0)
}

/// The rounding between the bottom of a gap and its flank.
struct Fillet {
    centre: Point,
    /// From the centre to the bottom, and to the flank.
    ends_at: [Point; 2],
    /// Radius of the gap's bottom.
    bottom: f64,
    /// Tangent at which the involute goes on.
    ends: f64,
}

impl Fillet {
    /// The largest fillet up to `radius` that there is room for.
    fn within(flank: &Flank, radius: f64) -> Self {
        let mut radius = radius;
        for _ in 0..40 {
            if let Some(fillet) = Self::of(flank, radius) {
                return fillet;
            }
            radius *= 0.9;
        }
        // Flanks that cross above the bottom leave a sharp gap.
        let ends = involute::tangent(-flank.gap()).unwrap_or(0.0).max(flank.lowest());
        let corner = Point::polar(flank.radius_at(ends), 0.0);
        let none = Point { x: 0.0, y: 0.0 };
        Self { centre: corner, ends_at: [none; 2], bottom: corner.y, ends }
    }

    /// A fillet of `radius` between the bottom and the flank; `None` without room for it.
    fn of(flank: &Flank, radius: f64) -> Option<Self> {
        let centre = flank.root + radius;
        let t = flank.tangent_at(centre);
        let ends = t - radius / flank.base;
        // On the involute: the centre lies on one that runs inside by the radius. Below
        // it: the straight part runs at the angle of the base circle.
        let (angle, touches) = if ends >= 0.0 && t > 0.0 {
            let angle = flank.gap() + involute::of_tangent(t) - radius / flank.base;
            let at = flank.gap() + involute::of_tangent(ends);
            (angle, Point::polar(flank.radius_at(ends), at))
        } else {
            let along = sqrt((centre - radius) * (centre + radius));
            if along > flank.base {
                return None;
            }
            let angle = flank.gap() - 2.0 * PI * asin_turns(radius / centre);
            (angle, Point::polar(along, flank.gap()))
        };
        if angle < 0.0 {
            return None;
        }
        let (at, bottom) = (Point::polar(centre, angle), Point::polar(flank.root, angle));
        let from = |end: Point| Point { x: end.x - at.x, y: end.y - at.y };
        let ends_at = [from(bottom), from(touches)];
        Some(Self { centre: at, ends_at, bottom: flank.root, ends: ends.max(0.0) })
    }

    /// The point `part` of the way from the bottom to the flank.
    fn point(&self, part: f64) -> Point {
        let [from, to] = self.ends_at;
        let (x, y) = (from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);
        let long = |x: f64, y: f64| sqrt(x * x + y * y);
        let length = long(x, y);
        let stretch = if length > 0.0 { long(from.x, from.y) / length } else { 0.0 };
        Point { x: self.centre.x + x * stretch, y: self.centre.y + y * stretch }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::{Tooth, chordal};
    use crate::measure::Angle;
    use crate::number::Fraction;
    use crate::number::float::atan_turns;

    fn long(point: Point) -> f64 {
        sqrt(point.x * point.x + point.y * point.y)
    }

    fn wheel(teeth: u32, degrees: i64, tenths: i64) -> (Spur, Length, [Point; POINTS]) {
        let pressure_angle = Angle::from_degrees(Fraction::whole(degrees)).unwrap();
        let tooth = Tooth { pressure_angle, ..Tooth::default() };
        let shift = Fraction::new(tenths, 10).unwrap();
        let spur = Spur { shift, ..Spur::new(teeth, tooth).unwrap() };
        let outside = spur.outside_diameter().unwrap();
        (spur, outside, half_gap(&spur, outside).unwrap())
    }

    #[test]
    fn outlines_run_outwards_within_their_half() {
        for (teeth, degrees, tenths) in [
            (6, 20, 5),
            (8, 25, 0),
            (12, 14, 0),
            (17, 20, 0),
            (41, 20, -3),
            (42, 20, 0),
            (400, 20, 1),
        ] {
            let (spur, outside, points) = wheel(teeth, degrees, tenths);
            let half_pitch = PI / f64::from(teeth);
            let polar = points.map(|p| (long(p), 2.0 * PI * atan_turns(p.x / p.y)));
            for (one, next) in polar.iter().zip(polar.iter().skip(1)) {
                assert!(next.0 > one.0 - 1e-9, "{teeth}: {polar:?}");
                assert!(next.1 > one.1 - 1e-9 && next.1 < half_pitch + 1e-9, "{teeth}: {polar:?}");
            }
            let root = of(spur.root_diameter().unwrap().mm()) / 2.0;
            assert!((polar[0].0 - root).abs() < 1e-9, "{teeth}: {polar:?}");
            assert!(polar[TIP].0 <= of(outside.mm()) / 2.0 + 1e-9, "{teeth}: {polar:?}");
        }
    }

    #[test]
    fn the_flank_is_as_thick_as_the_caliper_says() {
        let (spur, outside, points) = wheel(23, 20, 0);
        let chord = chordal::tooth(&spur, outside).unwrap();
        let (sin, cos) = (sin_turns(0.5 / 23.0), cos_turns(0.5 / 23.0));
        // Into the tooth's frame: how far across, how far below the outside.
        let turned = points.map(|p| (p.y * sin - p.x * cos, 12.5 - (p.y * cos + p.x * sin)));
        let flank = &turned[FLANK..TIP];
        let at = flank.windows(2).find(|two| two[1].1 < chord.height.value).unwrap();
        let part = (at[0].1 - chord.height.value) / (at[0].1 - at[1].1);
        let half = at[0].0 + part * (at[1].0 - at[0].0);
        // A chord of this length stands up to 0.002 within the flank.
        assert!((2.0 * half - chord.thickness.value).abs() < 4e-3, "{half}");
    }

    #[test]
    fn flanks_that_meet_make_a_point_or_a_sharp_gap() {
        let (_, outside, points) = wheel(6, 20, 8);
        let tip = points[TIP];
        assert!(long(tip) < of(outside.mm()) / 2.0 - 0.01);
        let last = points[TIP - 1];
        assert!((last.x - tip.x).abs() < 1e-9 && (last.y - tip.y).abs() < 1e-9);
    }
}
