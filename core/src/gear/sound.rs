//! Whether a wheel's teeth are sound: undercut at the foot, thin at the top.
//!
//! A rack that stands h modules into the wheel, its rounded corners apart, cuts away the
//! involute near the base circle of wheels with fewer than 2·(h − x) / sin² α teeth for
//! a profile shift of x modules; a form cutter leaves the flank, and it is the mate's tip
//! that finds no room there. At the outside a tooth is d·(s/d₀ + inv α − inv α′) thick,
//! cos α′ = base ÷ outside diameter, for a thickness s at the pitch diameter d₀; a top
//! under a quarter of the module is thin by common practice. (Geometry of the involute,
//! DIN 3960; ISO 21771.)
//!
//! ```
//! use handturn::gear::{Spur, Tooth, sound::sound};
//! let pinion = sound(&Spur::new(12, Tooth::default())?)?;
//! assert!(pinion.undercut && pinion.fewest == 18);
//! assert!((pinion.clear_shift.value - 0.298).abs() < 0.001);
//! assert!(!pinion.thin);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Spur;
use super::flank::{Flank, ROUNDING};
use super::involute::{of_tangent, tangent};
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{over, um_down, whole};
use crate::number::{
    Approx,
    float::{cos_turns, of, round, sin_turns, sqrt},
};

/// What is to be said of a wheel's teeth.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sound {
    /// Teeth below which a wheel of this rack and shift is undercut; nought or less where
    /// none is.
    pub limit: Approx,
    /// The whole number of teeth from there on.
    pub fewest: u32,
    /// Whether this wheel has fewer.
    pub undercut: bool,
    /// The profile shift, in modules, from which this wheel is clear.
    pub clear_shift: Approx,
    /// Width of the top of a tooth, along the outside, in millimetres.
    pub top_land: Approx,
    /// A quarter of the module.
    pub least_land: Length,
    /// Whether the top is narrower than that.
    pub thin: bool,
    /// Diameter, in millimetres, at which the flanks would meet.
    pub pointed_at: Approx,
}

/// Undercut and top land of `spur`, cut to its drawn outside.
///
/// # Errors
/// What [`Spur::check`] finds; [`Cause::Pointed`] of [`Field::Blank`] where the flanks
/// meet below the outside; [`Cause::Conflict`] of [`Field::Shift`] where the outside lies
/// below the base circle.
pub fn sound(spur: &Spur) -> Result<Sound, Error> {
    spur.check()?;
    let angle = of(spur.tooth.pressure_angle.turns());
    let (sin, cos) = (sin_turns(angle), cos_turns(angle));
    let module = of(spur.tooth.size.module()?.mm());
    let teeth = f64::from(spur.teeth);
    let shift = of(spur.shift);
    let height = of(spur.tooth.addendum()?.mm()) / module;
    let square = sin * sin;
    let limit = 2.0 * (height - shift) / square;
    let off = 32.0 * f64::EPSILON * (height + shift.abs()) / square;
    let clear = height - teeth * square / 2.0;

    let outside = of(spur.outside_diameter()?.mm());
    let base = module * teeth * cos;
    let flank = Flank::new(spur)?;
    let foot =
        Approx { value: flank.half, bound: ROUNDING * (flank.summed / flank.pitch + flank.half) };
    let tan = sqrt((outside - base) * (outside + base)) / base;
    if tan.is_nan() {
        return Err(Error::new(Field::Shift, Cause::Conflict));
    }
    // Where the flanks meet, the whole angle at the foot is used up.
    let point = tangent(foot.value).ok_or(Error::new(Field::Shift, Cause::Conflict))?;
    let pointed_at = base * sqrt(1.0 + point * point);
    if tan >= point {
        let cause = Cause::Pointed { greatest_um: um_down(pointed_at) };
        return Err(Error::new(Field::Blank, cause));
    }
    let inv = of_tangent(tan);
    let top_land = outside * (foot.value - inv);
    // By what the tangent is off, the involute is off by its square.
    let land_off = outside * (foot.bound + 32.0 * f64::EPSILON * (inv + tan + 1.0 / teeth));
    let least_land = over(spur.tooth.size.module()?, 4, Field::Module)?;
    let point_off = foot.bound / (point + f64::MIN_POSITIVE) + 16.0 * f64::EPSILON;
    Ok(Sound {
        limit: Approx { value: limit, bound: off },
        fewest: whole(up(limit - off)),
        undercut: teeth < limit - off,
        clear_shift: Approx { value: clear, bound: off * square },
        top_land: Approx { value: top_land, bound: land_off },
        least_land,
        thin: top_land + land_off < of(least_land.mm()),
        pointed_at: Approx { value: pointed_at, bound: pointed_at * point_off },
    })
}

/// The whole number from `value` on.
fn up(value: f64) -> f64 {
    let near = round(value);
    if near < value { near + 1.0 } else { near }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::{DepthRule, Tooth};
    use crate::measure::Angle;
    use crate::number::Fraction;

    fn at(teeth: u32, half_degrees: i64, shift: (i64, i64)) -> Spur {
        let degrees = Fraction::new(half_degrees, 2).unwrap();
        let pressure_angle = Angle::from_degrees(degrees).unwrap();
        let shift = Fraction::new(shift.0, shift.1).unwrap();
        Spur { shift, ..Spur::new(teeth, Tooth { pressure_angle, ..Tooth::default() }).unwrap() }
    }

    #[test]
    fn undercut_begins_where_it_should() {
        let mut tried = 0;
        for (half_degrees, fewest) in [(29, 32), (40, 18), (45, 14), (50, 12), (60, 8)] {
            for teeth in 6..40 {
                let said = sound(&at(teeth, half_degrees, (0, 1))).unwrap();
                assert_eq!((said.fewest, said.undercut), (fewest, teeth < fewest), "{teeth}");
                // Shifted as told, and a hair more, it is clear; a hair less, it is not.
                let near = float_nearest(said.clear_shift.value);
                let clear = |n: i64| sound(&at(teeth, half_degrees, (near + n, 1_000_000)));
                if near.abs() >= 900_000 {
                    continue;
                }
                if let (Ok(more), Ok(less)) = (clear(2), clear(-2)) {
                    assert!(!more.undercut && less.undercut);
                    tried += 1;
                }
            }
        }
        assert!(tried > 80, "{tried}");
    }

    fn float_nearest(value: f64) -> i64 {
        (value * 1e6).round() as i64
    }

    #[test]
    fn tops_grow_thin_and_meet() {
        let land =
            |shift| sound(&at(12, 40, (shift, 100))).map(|said| (said.top_land.value, said.thin));
        assert!(!land(0).unwrap().1 && land(0).unwrap().0 > 0.5);
        let (thin, is_thin) = land(60).unwrap();
        assert!(is_thin && thin > 0.1 && thin < 0.25, "{thin}");
        let pointed = sound(&at(8, 40, (80, 100))).unwrap_err();
        let Cause::Pointed { greatest_um } = pointed.cause else { panic!("{pointed}") };
        // Turned down to that, it would just have a top.
        let down = Fraction::new(i64::from(greatest_um), 1000).unwrap();
        let addendum = down.over(2).unwrap().checked_sub(Fraction::new(48, 10).unwrap()).unwrap();
        let rule = DepthRule::Own { addendum, dedendum: Fraction::new(5, 4).unwrap() };
        let mut lower = at(8, 40, (80, 100));
        lower.tooth.rule = rule;
        let said = sound(&lower).unwrap();
        assert!(said.thin && said.top_land.value < 0.003, "{said:?}");
        assert!((said.pointed_at.value * 1000.0 - f64::from(greatest_um)).abs() < 1.0);
    }

    #[test]
    fn no_tooth_at_all() {
        let mut spur = at(5, 20, (-1, 1));
        spur.tooth.rule = DepthRule::Own {
            addendum: Fraction::new(1, 100).unwrap(),
            dedendum: Fraction::new(5, 4).unwrap(),
        };
        assert_eq!(sound(&spur), Err(Error::new(Field::Shift, Cause::Conflict)));
    }
}
