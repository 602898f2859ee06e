//! Two wheels that run together: how far apart, with what play, and how well.
//!
//! Teeth of full thickness touch on both flanks where inv αw = inv α + 2·tan α·Σx / Σz,
//! which puts the centres a·cos α / cos αw apart, a = m·Σz / 2. Thinner teeth, or centres
//! further apart, leave along the working pitch circle the backlash
//! j = 2C·(inv αw − inv α + (Σt/m − 2·tan α·Σx) / Σz), and j·cos αw between the flanks,
//! where a feeler goes. The contact ratio is the length of the line of contact between the
//! two outside circles over the base pitch; where an outside reaches beyond the point at
//! which the line touches the other's base circle there is no involute to meet it.
//! (DIN 3960; ISO 21771.)
//!
//! ```
//! use handturn::gear::pair::{At, Pair, mesh, teeth_for};
//! use handturn::gear::{Size, Spur, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's 64 and 38, module 1, set 0.05 mm too far apart.
//! let wheel = |teeth| Spur::new(teeth, Tooth::default());
//! let centres = Length::from_mm(Fraction::new(5105, 100)?);
//! let run = mesh(&Pair { first: wheel(64)?, second: wheel(38)?, at: At::Centres(centres) })?;
//! assert_eq!(run.standard.mm(), Fraction::whole(51));
//! assert!((run.backlash.value - 0.036).abs() < 0.001);
//! assert!((run.contact_ratio.value - 1.70).abs() < 0.01);
//! # let size = Size::Module(Length::from_mm(Fraction::ONE));
//! # assert!(teeth_for(size, Length::from_mm(Fraction::whole(51)), Fraction::new(64, 38)?)?.whole);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::involute::{of_tangent, tangent};
use super::{Size, Spur};
use crate::bounds::WHEEL_TEETH;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{from_nought, size, um_down, um_up};
use crate::number::{
    Approx, Fraction,
    float::{PI, acos_turns, cos_turns, of, sqrt, tan_turns},
};

/// How the two are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum At {
    /// Their centres so far apart.
    Centres(Length),
    /// With this backlash along the working pitch circle.
    Backlash(Length),
}

/// Two wheels and how they are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pair {
    /// One wheel.
    pub first: Spur,
    /// The other, of the same size and pressure angle.
    pub second: Spur,
    /// How they are set.
    pub at: At,
}

/// How two wheels run; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Mesh {
    /// Half the sum of the pitch diameters: exact.
    pub standard: Length,
    /// Turns of the first for one of the second: exact.
    pub ratio: Fraction,
    /// How far apart the centres are.
    pub centres: Approx,
    /// How far apart they are without any backlash, the thinning counted.
    pub tight: Approx,
    /// Pressure angle the teeth work at, in degrees.
    pub working_angle: Approx,
    /// Backlash along the working pitch circle; below nought where they don't go together.
    pub backlash: Approx,
    /// The same between the flanks, as a feeler measures it.
    pub between_flanks: Approx,
    /// Diameters of the pitch circles they work on.
    pub working_diameters: [Approx; 2],
    /// How many pairs of teeth are in contact on average.
    pub contact_ratio: Approx,
    /// Whether that is 1.2 or more, the least that is common practice.
    pub runs_smoothly: bool,
    /// Room between the outside of each and the root of the other.
    pub root_clearance: [Approx; 2],
    /// Whether the outside of each reaches deeper than the other's involute.
    pub fouls: [bool; 2],
}

/// Teeth of a pair from their centre distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Teeth {
    /// Sum of the teeth: twice the centre distance ÷ module.
    pub sum: Fraction,
    /// Of the first.
    pub first: Fraction,
    /// Of the second.
    pub second: Fraction,
    /// Whether both are whole numbers of teeth.
    pub whole: bool,
}

/// What a measured backlash says.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Opening {
    /// How far apart the centres go for the backlash that is wanted.
    pub centres: Approx,
    /// By how much further than now; below nought where they come closer.
    pub opening: Approx,
    /// By how much both teeth together are thinner at their pitch circles than half the
    /// circular pitch each with its shift; below nought where they are thicker.
    pub thinned: Approx,
}

/// Figures of a pair that its place does not change.
struct Base {
    standard: Length,
    /// Half the sum of the base diameters.
    apart: f64,
    teeth: f64,
    module: f64,
    cos: f64,
    /// inv αw where there is no backlash, and without the thinning.
    tight: Approx,
    full: Approx,
}

impl Pair {
    fn base(&self) -> Result<Base, Error> {
        let (one, two) = (&self.first, &self.second);
        one.check()?;
        two.check()?;
        let (size, other) = (one.tooth.size.module()?, two.tooth.size.module()?);
        if size != other {
            return Err(Error::new(Field::Module, Cause::Conflict));
        }
        if one.tooth.pressure_angle != two.tooth.pressure_angle {
            return Err(Error::new(Field::PressureAngle, Cause::Conflict));
        }
        let count = i64::from(one.teeth).saturating_add(i64::from(two.teeth));
        let standard = one.tooth.size.times(Fraction::new(count, 2)?)?;
        let angle = of(one.tooth.pressure_angle.turns());
        let (cos, tan) = (cos_turns(angle), tan_turns(angle));
        let (module, teeth) = (of(size.mm()), of(Fraction::whole(count)));
        let thinned = of(one.thinned.mm().checked_add(two.thinned.mm())?) / module / teeth;
        let shifted = 2.0 * tan * of(one.shift.checked_add(two.shift)?) / teeth;
        let inv = of_tangent(tan);
        let parts = 4.0 * inv + thinned + shifted.abs();
        let near = |value| Approx { value, bound: 16.0 * f64::EPSILON * parts };
        let (full, tight) = (near(inv + shifted), near(inv + shifted - thinned));
        if tight.value <= 0.0 {
            // No angle is small enough: the teeth are thinner than any play needs.
            return Err(Error::new(Field::Shift, Cause::Conflict));
        }
        Ok(Base { standard, apart: of(standard.mm()) * cos, teeth, module, cos, tight, full })
    }
}

impl Base {
    /// The centre distance at which the backlash is `backlash`, for teeth that are tight
    /// at an involute of `tight`: inv αw − tight = backlash·cos αw ÷ 2·apart.
    fn centres(&self, tight: Approx, backlash: f64) -> Result<Approx, Error> {
        let conflict = Error::new(Field::Backlash, Cause::Conflict);
        let share = backlash / (2.0 * self.apart);
        let mut low = tangent(tight.value).ok_or(conflict)?;
        let mut high = tangent(tight.value + share).ok_or(conflict)?;
        for _ in 0..64 {
            let middle = (low + high) / 2.0;
            let over = of_tangent(middle) - tight.value - share / sqrt(1.0 + middle * middle);
            if over < 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        let (tan, secant) = (high, sqrt(1.0 + high * high));
        // A change of the involute moves the centres by as much ÷ sin αw.
        let off = tight.bound + 32.0 * f64::EPSILON * (tight.value + share);
        let moved = off * secant / tan + 8.0 * f64::EPSILON * secant;
        Ok(Approx { value: self.apart * secant, bound: self.apart * moved })
    }

    /// Tangent of the angle the teeth work at, `centres` apart; its involute.
    fn working(&self, centres: f64) -> (f64, Approx) {
        let along = sqrt((centres - self.apart) * (centres + self.apart));
        let tan = along / self.apart;
        let value = of_tangent(tan);
        (tan, Approx { value, bound: 8.0 * f64::EPSILON * (2.0 * value + tan) })
    }

    /// Refuses centres so close that the base circles meet, or so far apart that no tooth
    /// reaches the other wheel.
    fn within(&self, pair: &Pair, centres: Length) -> Result<f64, Error> {
        size(centres, Field::Centres)?;
        let outside = |spur: &Spur| Ok::<_, Error>(of(spur.outside_diameter()?.mm()) / 2.0);
        let most = outside(&pair.first)? + outside(&pair.second)?;
        let value = of(centres.mm());
        if value <= self.apart * (1.0 + 1e-9) || value >= most {
            let (least_um, greatest_um) = (um_up(self.apart), um_down(most));
            return Err(Error::new(Field::Centres, Cause::OutOfLengths { least_um, greatest_um }));
        }
        Ok(value)
    }
}

/// How `pair` runs.
///
/// # Errors
/// What [`Spur::check`] finds of either; [`Cause::Conflict`] of [`Field::Module`] or
/// [`Field::PressureAngle`] where they differ, of [`Field::Shift`] where no distance is
/// close enough, of [`Field::Backlash`] for more than a module; a length out of bounds or
/// [`Cause::OutOfLengths`] of [`Field::Centres`].
#[doc(alias = "centre distance")]
#[doc(alias = "contact ratio")]
pub fn mesh(pair: &Pair) -> Result<Mesh, Error> {
    let base = pair.base()?;
    let centres = match pair.at {
        At::Centres(centres) => exact(base.within(pair, centres)?),
        At::Backlash(backlash) => {
            let backlash = from_nought(backlash, Field::Backlash)?;
            if backlash > base.module {
                return Err(Error::new(Field::Backlash, Cause::Conflict));
            }
            base.centres(base.tight, backlash)?
        }
    };
    let tight = base.centres(base.tight, 0.0)?;
    let (tan, inv) = base.working(centres.value);
    let cos = base.apart / centres.value;
    let relative = centres.bound / centres.value;
    let moved = Approx { value: inv.value, bound: inv.bound + relative * (tan + 1e-9) };
    let backlash = match pair.at {
        At::Backlash(backlash) => exact(of(backlash.mm())),
        At::Centres(_) => play(centres.value, &base.tight, &moved),
    };
    let between_flanks = Approx {
        value: backlash.value * cos,
        bound: backlash.bound * cos + 8.0 * f64::EPSILON * backlash.value.abs(),
    };
    let degrees = 360.0 * acos_turns(cos);
    let working_angle = Approx {
        value: degrees,
        bound: 64.0 * (relative + 8.0 * f64::EPSILON) / tan + 8.0 * f64::EPSILON * degrees,
    };
    let (one, two) = (&pair.first, &pair.second);
    let working = |spur: &Spur| {
        let value = 2.0 * centres.value * f64::from(spur.teeth) / base.teeth;
        Approx { value, bound: value * (relative + 4.0 * f64::EPSILON) }
    };
    let line = centres.value * sqrt((1.0 - cos) * (1.0 + cos));
    let line_off = centres.value * (relative + 8.0 * f64::EPSILON) * (1.0 + 1.0 / tan);
    let (first, second) = (reach(one, base.cos)?, reach(two, base.cos)?);
    let within = |reach: Approx| Approx { value: reach.value.min(line), ..reach };
    let pitch = PI * base.module * base.cos;
    let path = within(first).value + within(second).value - line;
    let path_off = first.bound + second.bound + line_off;
    let contact_ratio = Approx {
        value: path / pitch,
        bound: path_off / pitch + 8.0 * f64::EPSILON * (path / pitch).abs(),
    };
    let clearance = |outside: &Spur, root: &Spur| {
        let parts = [outside.outside_diameter()?, root.root_diameter()?];
        let taken = parts[0].mm().checked_add(parts[1].mm())?;
        let value = centres.value - of(taken) / 2.0;
        Ok::<_, Error>(Approx { value, bound: centres.bound + 4.0 * f64::EPSILON * centres.value })
    };
    Ok(Mesh {
        standard: base.standard,
        ratio: Fraction::new(i64::from(two.teeth), i64::from(one.teeth))?,
        centres,
        tight,
        working_angle,
        backlash,
        between_flanks,
        working_diameters: [working(one), working(two)],
        contact_ratio,
        runs_smoothly: contact_ratio.value >= 1.2,
        root_clearance: [clearance(one, two)?, clearance(two, one)?],
        fouls: [first, second].map(|reach| reach.value - reach.bound > line + line_off),
    })
}

/// Where to set a pair whose backlash was measured, in place of the thinning drawn.
/// `measured` is along the working pitch circle, `pair.at` where it was measured.
///
/// # Errors
/// As [`mesh`]; [`Cause::Conflict`] of [`Field::Backlash`] for more than a module
/// measured or wanted, or where no distance gives it.
pub fn opening(pair: &Pair, measured: Length, wanted: Length) -> Result<Opening, Error> {
    let base = pair.base()?;
    let [measured, wanted] = [measured, wanted].map(|j| from_nought(j, Field::Backlash));
    let (measured, wanted) = (measured?, wanted?);
    if measured.max(wanted) > base.module {
        return Err(Error::new(Field::Backlash, Cause::Conflict));
    }
    let At::Centres(now) = pair.at else {
        return Err(Error::new(Field::Centres, Cause::Empty));
    };
    let now = base.within(pair, now)?;
    let (_, inv) = base.working(now);
    let share = measured / (2.0 * now);
    let bound = inv.bound + 8.0 * f64::EPSILON * share;
    let tight = Approx { value: inv.value - share, bound };
    let centres = base.centres(tight, wanted)?;
    let thinned = (base.full.value - tight.value) * base.teeth * base.module;
    Ok(Opening {
        centres,
        opening: Approx {
            value: centres.value - now,
            bound: centres.bound + 4.0 * f64::EPSILON * now,
        },
        thinned: Approx {
            value: thinned,
            bound: (base.full.bound + bound) * base.teeth * base.module
                + 8.0 * f64::EPSILON * thinned.abs(),
        },
    })
}

/// The teeth that a pair of `size` has whose centres are so far apart, the first turning
/// `ratio` times for each turn of the second: second ÷ first.
///
/// # Errors
/// What [`Size::check`] finds; a length out of bounds, of [`Field::Centres`];
/// [`Cause::Conflict`] of [`Field::Ratio`] for none above nought; [`Cause::OutOfRange`] for
/// fewer teeth than a wheel has; [`Cause::Overflow`].
pub fn teeth_for(size: Size, centres: Length, ratio: Fraction) -> Result<Teeth, Error> {
    size.check()?;
    crate::measure::given::size(centres, Field::Centres)?;
    if ratio <= Fraction::ZERO {
        return Err(Error::new(Field::Ratio, Cause::Conflict));
    }
    let sum = centres.mm().times(2)?.checked_div(size.module()?.mm())?;
    let first = sum.checked_div(Fraction::ONE.checked_add(ratio)?)?;
    let second = sum.checked_sub(first)?;
    for teeth in [first, second] {
        WHEEL_TEETH.check(teeth.floor())?;
    }
    Ok(Teeth { sum, first, second, whole: first.is_whole() && second.is_whole() })
}

const fn exact(value: f64) -> Approx {
    Approx { value, bound: value.abs() * f64::EPSILON }
}

/// Backlash along the working pitch circle.
fn play(centres: f64, tight: &Approx, working: &Approx) -> Approx {
    let value = 2.0 * centres * (working.value - tight.value);
    let bound = 2.0 * centres * (working.bound + tight.bound) + 4.0 * f64::EPSILON * value.abs();
    Approx { value, bound }
}

/// How far along the line of contact the outside of `spur` reaches, from where the line
/// touches its base circle.
fn reach(spur: &Spur, cos: f64) -> Result<Approx, Error> {
    let outside = of(spur.outside_diameter()?.mm()) / 2.0;
    let base = of(spur.pitch_diameter()?.mm()) * cos / 2.0;
    let value = sqrt((outside - base) * (outside + base));
    if value.is_nan() || value <= 0.0 {
        return Err(Error::new(Field::Shift, Cause::Conflict));
    }
    let off = 8.0 * f64::EPSILON * outside;
    Ok(Approx { value, bound: off * (outside / value + 1.0) })
}
