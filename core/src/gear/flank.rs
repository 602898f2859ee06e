//! A spur wheel as floats in millimetres and radians: what every measurement of its
//! teeth starts from.
use super::{Spur, Tooth, involute};
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Fraction,
    float::{PI, cos_turns, of, sin_turns},
};

/// Rounding of the float arithmetic, relative to the sizes that enter.
pub(super) const ROUNDING: f64 = 32.0 * f64::EPSILON;

/// The pressure angle's functions.
#[derive(Clone, Copy)]
pub(super) struct Pressure {
    pub(super) sin: f64,
    pub(super) cos: f64,
    pub(super) tan: f64,
}

impl Pressure {
    pub(super) fn of(tooth: &Tooth) -> Self {
        let turns = of(tooth.pressure_angle.turns());
        let (sin, cos) = (sin_turns(turns), cos_turns(turns));
        Self { sin, cos, tan: sin / cos }
    }
}

/// A wheel's flanks. A tooth's flank is the involute whose tangent at length
/// `base × t` leaves the tooth's middle at the angle `half` − inv.
#[derive(Clone, Copy)]
pub(super) struct Flank {
    pub(super) teeth: f64,
    pub(super) pressure: Pressure,
    /// Radius of the pitch circle.
    pub(super) pitch: f64,
    /// Radius of the base circle.
    pub(super) base: f64,
    /// Radius at the bottom of the gaps.
    pub(super) root: f64,
    /// Arc of a tooth at the pitch circle.
    pub(super) thickness: f64,
    /// What the thickness was summed from, for its rounding.
    pub(super) summed: f64,
    /// Half a tooth at the base circle, in radians.
    pub(super) half: f64,
}

impl Flank {
    /// # Errors
    /// What [`Spur::check`] finds; [`Cause::Conflict`] of [`Field::Shift`] where nothing
    /// is left of a tooth at the pitch circle, of [`Field::Depth`] where the gaps reach
    /// the centre.
    pub(super) fn new(spur: &Spur) -> Result<Self, Error> {
        spur.check()?;
        let pressure = Pressure::of(&spur.tooth);
        let radius = |diameter: Length| of(diameter.mm()) / 2.0;
        let (module, thinned) = (of(spur.tooth.size.module()?.mm()), of(spur.thinned.mm()));
        let shifted = 2.0 * of(spur.shift) * module * pressure.tan;
        let thickness = PI / 2.0 * module + shifted - thinned;
        if thickness <= 0.0 {
            return Err(Error::new(Field::Shift, Cause::Conflict));
        }
        let (pitch, root) = (radius(spur.pitch_diameter()?), radius(spur.root_diameter()?));
        if root <= 0.0 {
            return Err(Error::new(Field::Depth, Cause::Conflict));
        }
        Ok(Self {
            teeth: f64::from(spur.teeth),
            pressure,
            pitch,
            base: pitch * pressure.cos,
            root,
            thickness,
            summed: PI / 2.0 * module + shifted.abs() + thinned,
            half: thickness / (2.0 * pitch) + involute::of_tangent(pressure.tan),
        })
    }

    /// Half a gap at the base circle, in radians; below nought where the flanks cross above it.
    pub(super) fn gap(&self) -> f64 {
        PI / self.teeth - self.half
    }

    /// Length of the tangent, over the base radius, at `radius`; nought within the base circle.
    pub(super) fn tangent_at(&self, radius: f64) -> f64 {
        let beyond = (radius - self.base) * (radius + self.base);
        if beyond > 0.0 { crate::number::float::sqrt(beyond) / self.base } else { 0.0 }
    }

    /// Radius at the tangent `base × t`.
    pub(super) fn radius_at(&self, t: f64) -> f64 {
        self.base * crate::number::float::sqrt(1.0 + t * t)
    }

    /// Tangent at the lowest point of the flank that can be touched: the base circle or
    /// the bottom of the gap.
    pub(super) fn lowest(&self) -> f64 {
        self.tangent_at(self.root)
    }

    /// Half a tooth at the base circle when nothing is left of it at the pitch circle.
    pub(super) fn thinnest(&self) -> f64 {
        involute::of_tangent(self.pressure.tan)
    }

    /// Arc at the pitch circle of a tooth that has the angle `half` at the base circle.
    pub(super) fn thickness_of(&self, half: f64) -> f64 {
        2.0 * self.pitch * (half - self.thinnest())
    }
}

/// Radius of a blank as it was found: from the pitch circle to a module beyond the
/// outside of the drawing.
///
/// # Errors
/// [`Cause::OutOfLengths`] of [`Field::Blank`].
pub(super) fn blank(spur: &Spur, outside: Length) -> Result<f64, Error> {
    let more = spur.tooth.size.times(Fraction::whole(2))?;
    let least = spur.pitch_diameter()?;
    let greatest = given::plus(spur.outside_diameter()?, more, Field::Blank)?;
    if outside < least || outside > greatest {
        let um = |length: Length| length.mm().times(1000);
        // Rounded inwards.
        let least = um(least)?.negated().floor().unsigned_abs();
        let greatest = um(greatest)?.floor().unsigned_abs();
        let [least_um, greatest_um] = [least, greatest].map(|n| u32::try_from(n).unwrap_or(0));
        return Err(Error::new(Field::Blank, Cause::OutOfLengths { least_um, greatest_um }));
    }
    Ok(of(outside.mm()) / 2.0)
}

/// What a measurement can read at all, in millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Readings {
    pub(super) least: f64,
    pub(super) greatest: f64,
}

impl Readings {
    /// # Errors
    /// [`Cause::OutOfLengths`] of [`Field::Reading`], rounded inwards.
    pub(super) fn check(self, read: f64) -> Result<(), Error> {
        if read >= self.least && read <= self.greatest {
            return Ok(());
        }
        let least_um = given::um_up(self.least);
        let greatest_um = given::um_down(self.greatest);
        Err(Error::new(Field::Reading, Cause::OutOfLengths { least_um, greatest_um }))
    }
}
