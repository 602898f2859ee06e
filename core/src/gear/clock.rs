//! Clock wheels and pinions by module, cut with a form cutter.
//!
//! Method: a wheel that drives a pinion of radial leaves has epicycloidal teeth, rolled
//! by a circle of half the pinion's pitch diameter. With k = 1 + 2·wheel/leaves the flank
//! has left the pitch circle by θ of that circle's turn when it is at the height
//! (leaves/4)·(√(1 + k² − 2k·cos θ) + 1 − k) modules, having gone aside by
//! θ·leaves/(2·wheel) − atan(sin θ ÷ (k − cos θ)). Where it has gone aside by half a
//! tooth, a quarter of a part, it meets the other flank: that height is the addendum
//! factor. BS 978 part 2 (1952, cycloidal type) cuts teeth 95 % as high, π/2 of the
//! module thick (printed 1.57) and 1.57 modules deep below the pitch circle; a pinion's
//! bottom clears the wheel's tip by 0.4 modules, its leaves are 1.05 modules thick up to
//! ten leaves, 1.25 above, and end high (6 and 7 leaves), medium (8 and 9) or round.
//! The curve is our own derivation; what the standard prints is from memory.
//!
//! ```
//! use handturn::gear::clock::{Clock, Rule, sizes};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's 64 wheel drives a pinion of 8, module 0.8.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! let found = sizes(&Clock { wheel: 64, leaves: 8, module: mm(8)?, rule: Rule::Standard })?;
//! assert_eq!(found.centres, mm(288)?); // 0.8 × (64 + 8) / 2
//! assert!((found.wheel.outside.value - 53.559).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Size;
use crate::bounds::{LEAVES, WHEEL_TEETH};
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::{Approx, Fraction, float};

/// A wheel and the pinion it drives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Clock {
    /// Teeth of the wheel: its parts to divide.
    pub wheel: u32,
    /// Leaves of the pinion: its parts to divide.
    pub leaves: u32,
    /// Pitch diameter for each tooth.
    pub module: Length,
    /// Which factors make the blanks.
    pub rule: Rule,
}

/// Where the blanks' addenda come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Rule {
    /// By leaves and ratio (BS 978 part 2, 1952).
    #[default]
    Standard,
    /// Cutters made for every ratio: wheels 1.38 modules high, leaves 0.855 up to ten
    /// and 0.805 above (common practice; from memory).
    Common,
}

/// How a leaf ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Form {
    /// A half circle.
    Round,
    /// A pointed arch of medium height.
    Medium,
    /// A high pointed arch.
    High,
}

/// Sizes of both blanks and their cuts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sizes {
    /// Turns of the pinion for one of the wheel.
    pub ratio: Fraction,
    /// Distance of the arbors.
    pub centres: Length,
    /// Height at which a wheel's flanks would meet, in modules.
    pub factor: Approx,
    /// The wheel.
    pub wheel: Blank,
    /// The pinion.
    pub pinion: Blank,
    /// How its leaves end.
    pub form: Form,
    /// Radius of the arcs that end them, in millimetres.
    pub end_radius: Length,
}

/// One blank and its cut.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Blank {
    /// Pitch diameter.
    pub pitch: Length,
    /// Diameter of the blank, in millimetres.
    pub outside: Approx,
    /// Whole depth of the cut, in millimetres.
    pub depth: Approx,
    /// Thickness of a tooth or leaf at the pitch circle, along the arc.
    pub thickness: Length,
}

/// Points of a wheel's flank that [`flank`] gives.
pub const FLANK: usize = 17;

/// Blanks, depths and centres of a wheel and its pinion.
///
/// # Errors
/// [`Cause::OutOfRange`] for the teeth ([`WHEEL_TEETH`]), the leaves ([`LEAVES`]) and the
/// module; [`Cause::Conflict`] of [`Field::Teeth`] for a wheel of fewer teeth than the
/// pinion has leaves: it would not drive it; [`Cause::Overflow`].
pub fn sizes(ask: &Clock) -> Result<Sizes, Error> {
    check(ask)?;
    let roll = rolled(ask);
    let factor = height(ask, roll);
    let addendum = match ask.rule {
        Rule::Standard => factor.times(Approx::of(Fraction::new(19, 20)?)),
        Rule::Common => Approx::of(Fraction::new(69, 50)?),
    };
    let leaf = leaf(ask)?;
    let module = Approx::of(ask.module.mm());
    let bottom = Approx::of(Fraction::new(2, 5)?);
    let blank = |teeth: u32, addendum: Approx, dedendum: Approx, thickness: Fraction| {
        let pitch = times(ask, Fraction::whole(i64::from(teeth)))?;
        Ok::<Blank, Error>(Blank {
            pitch,
            outside: Approx::of(pitch.mm()).plus(addendum.times(module).by(2.0)),
            depth: addendum.plus(dedendum).times(module),
            thickness: times(ask, thickness)?,
        })
    };
    let thick = Fraction::new(157, 100)?;
    let together = i64::from(ask.wheel).saturating_add(i64::from(ask.leaves));
    Ok(Sizes {
        ratio: Fraction::new(i64::from(ask.wheel), i64::from(ask.leaves))?,
        centres: times(ask, Fraction::new(together, 2)?)?,
        factor,
        wheel: blank(ask.wheel, addendum, Approx::of(thick), thick)?,
        pinion: blank(
            ask.leaves,
            Approx::of(leaf.addendum),
            addendum.plus(bottom),
            leaf.thickness,
        )?,
        form: leaf.form,
        end_radius: times(ask, leaf.radius)?,
    })
}

/// A wheel's flank from the pitch circle to the addendum: height above that circle and
/// half the tooth's thickness there, straight across, both in modules. The last is the
/// tooth's top, at the height the rule gives or where the flanks meet, if that is lower.
///
/// # Errors
/// As [`sizes`].
pub fn flank(ask: &Clock) -> Result<[(f64, f64); FLANK], Error> {
    check(ask)?;
    let roll = rolled(ask);
    let whole = height(ask, roll).value;
    let top = if ask.rule == Rule::Standard { 0.95 * whole } else { whole.min(1.38) };
    let radius = float::of(Fraction::new(i64::from(ask.wheel), 2)?);
    let mut points = [(0.0, 0.0); FLANK];
    let mut step = 0.0;
    for point in &mut points {
        // Heights grow as the square of the roll: even steps of it crowd at the foot.
        let (mut low, mut high) = (0.0, roll.value);
        let wanted = top * step;
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            let below = height(ask, Approx::exactly(middle)).value < wanted;
            if below { low = middle } else { high = middle }
        }
        let left = float::of(Fraction::new(1, i64::from(ask.wheel).saturating_mul(4))?)
            - aside(ask, Approx::exactly(low)).value;
        *point = (wanted, (radius + wanted) * float::sin_turns(left));
        step += 1.0 / 16.0;
    }
    Ok(points)
}

fn check(ask: &Clock) -> Result<(), Error> {
    WHEEL_TEETH.check(i64::from(ask.wheel))?;
    LEAVES.check(i64::from(ask.leaves))?;
    Size::Module(ask.module).check()?;
    if ask.wheel < ask.leaves {
        return Err(Error::new(Field::Teeth, Cause::Conflict));
    }
    Ok(())
}

fn times(ask: &Clock, factor: Fraction) -> Result<Length, Error> {
    Size::Module(ask.module).times(factor).map_err(|e| e.of(Field::Module))
}

/// Twice the ratio: turns of the rolling circle for one round the wheel.
fn turns(ask: &Clock) -> Approx {
    let twice = Approx::exactly(f64::from(ask.wheel)).by(2.0);
    twice.over(Approx::exactly(f64::from(ask.leaves)))
}

/// How far the flank has gone aside when the circle has rolled by `roll`, in turns.
fn aside(ask: &Clock, roll: Approx) -> Approx {
    let turns = turns(ask);
    let outer = Approx::exactly(1.0).plus(turns).minus(roll.cos());
    roll.over(turns).minus(roll.sin().over(outer).atan())
}

/// How high it then stands, in modules.
fn height(ask: &Clock, roll: Approx) -> Approx {
    // √(n² + s) − n = s ÷ (√(n² + s) + n), with n = k − 1 and s = 4k·sin²(θ/2).
    let turns = turns(ask);
    let sine = roll.by(0.5).sin();
    let more = turns.plus(Approx::exactly(1.0)).times(sine).times(sine).by(4.0);
    let root = turns.times(turns).plus(more).sqrt();
    more.over(root.plus(turns)).by(f64::from(ask.leaves) / 4.0)
}

/// The roll at which the flanks meet, in turns.
///
/// Method: what is left of a quarter part only falls as the circle rolls on, so halving
/// closes in; the slope there turns what is left, and what floats may hide, into a bound.
fn rolled(ask: &Clock) -> Approx {
    let quarter = Approx::exactly(0.25).over(Approx::exactly(f64::from(ask.wheel)));
    let left = |roll: f64| quarter.minus(aside(ask, Approx::exactly(roll)));
    let (mut low, mut high) = (0.0, 0.5);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if left(middle).value > 0.0 { low = middle } else { high = middle }
    }
    let (turns, cosine) = (turns(ask).value, float::cos_turns(low));
    let k = 1.0 + turns;
    let slope = 1.0 / turns - (k * cosine - 1.0) / (k * k - 2.0 * k * cosine + 1.0);
    let rest = left(low);
    let bound = 1.01 * (rest.value.abs() + rest.bound) / slope;
    Approx { value: low, bound }
}

/// A leaf in modules.
struct Leaf {
    form: Form,
    addendum: Fraction,
    radius: Fraction,
    thickness: Fraction,
}

fn leaf(ask: &Clock) -> Result<Leaf, Error> {
    let many = ask.leaves > 10;
    let form = match (ask.rule, ask.leaves) {
        (Rule::Standard, ..=7) => Form::High,
        (Rule::Standard, 8 | 9) => Form::Medium,
        (Rule::Standard, _) => Form::Round,
        (Rule::Common, _) => {
            if many {
                Form::Medium
            } else {
                Form::High
            }
        }
    };
    // Addendum and radius of its arcs, up to ten leaves and above, in thousandths.
    let (addendum, radius) = match (form, many) {
        (Form::Round, false) => (525, 525),
        (Form::Round, true) => (625, 625),
        (Form::Medium, false) => (670, 700),
        (Form::Medium, true) => (805, 835),
        (Form::High, false) => (855, 1050),
        (Form::High, true) => (1050, 1250),
    };
    let thousandths = |n| Fraction::new(n, 1000);
    Ok(Leaf {
        form,
        addendum: thousandths(addendum)?,
        radius: thousandths(radius)?,
        thickness: thousandths(if many { 1250 } else { 1050 })?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ask(wheel: u32, leaves: u32, rule: Rule) -> Clock {
        Clock { wheel, leaves, module: Length::from_mm(Fraction::ONE), rule }
    }

    #[track_caller]
    fn check(wheel: u32, leaves: u32, factor: f64, form: Form) {
        let found = sizes(&ask(wheel, leaves, Rule::Standard)).unwrap();
        assert!((found.factor.value - factor).abs() < 1e-12, "{:?}", found.factor);
        assert!(found.factor.bound < 1e-12, "{:?}", found.factor);
        assert_eq!(found.form, form);
        let outside = f64::from(wheel) + 1.9 * factor;
        assert!((found.wheel.outside.value - outside).abs() < 1e-11);
        let clears = found.centres.mm().times(2).unwrap();
        // Wheel's tip to pinion's bottom: centres less both, 0.4 modules.
        let bottom = found.pinion.outside.value - 2.0 * found.pinion.depth.value;
        let play = float::of(clears) - found.wheel.outside.value - bottom;
        assert!((play - 0.8).abs() < 1e-11, "{play}");
    }

    #[test]
    fn factors_worked_apart() {
        check(64, 8, 1.552_181_050_657_004_8, Form::Medium);
        check(96, 12, 1.811_650_466_912_084_3, Form::Round);
        check(60, 6, 1.392_418_867_970_608_4, Form::High);
        check(30, 10, 1.602_958_824_515_85, Form::Round);
    }

    #[test]
    fn blanks_of_common_cutters() {
        let found = sizes(&ask(60, 8, Rule::Common)).unwrap();
        assert!((found.wheel.outside.value - 62.76).abs() < 1e-12);
        assert!((found.pinion.outside.value - 9.71).abs() < 1e-12);
        let found = sizes(&ask(60, 12, Rule::Common)).unwrap();
        assert!((found.pinion.outside.value - 13.61).abs() < 1e-12);
        assert_eq!(found.form, Form::Medium);
    }

    #[test]
    fn a_flank_narrows_to_its_point() {
        for rule in [Rule::Standard, Rule::Common] {
            let points = flank(&ask(64, 8, rule)).unwrap();
            assert!((points[0].1 - 32.0 * float::sin_turns(1.0 / 256.0)).abs() < 1e-9);
            assert!(points.windows(2).all(|two| two[1].0 > two[0].0 && two[1].1 < two[0].1));
            assert!(points[16].1 > 0.0);
        }
    }

    #[test]
    fn what_is_no_pair() {
        let refused = |wheel, leaves| {
            let error = sizes(&ask(wheel, leaves, Rule::Standard)).unwrap_err();
            (error.field, error.cause)
        };
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        assert_eq!(refused(3, 8), (Field::Teeth, range(4, 5000)));
        assert_eq!(refused(64, 5), (Field::Leaves, range(6, 100)));
        assert_eq!(refused(8, 12), (Field::Teeth, Cause::Conflict));
    }
}
