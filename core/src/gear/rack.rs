//! A rack: how far the table moves from gap to gap, told as readings of its dial.
//!
//! The pitch is π modules, so no dial gives it exactly. Each reading is rounded from the
//! gap's own place, counted from the first, so the error of one never reaches the next.
//!
//! ```
//! use handturn::gear::{Rack, Size, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::dial::{Dial, Reads};
//! // Module 3; the table's dial has 250 marks of 0.02 mm.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let rack = Rack {
//!     tooth: Tooth { size: Size::Module(mm(3, 1)?), ..Tooth::default() },
//!     gaps: 20,
//!     dial: Dial { division: mm(1, 50)?, reads: Reads::Travel, marks: 250 },
//! };
//! let sizes = rack.sizes()?;
//! assert!((sizes.thickness.value - 4.7124).abs() < 0.00005);
//! assert_eq!(sizes.addendum, mm(3, 1)?);
//! // The third gap after the first: 28.274 mm, 5 turns and 164 marks.
//! let place = rack.place(3)?;
//! assert_eq!((place.reading.turns, place.reading.mark), (5, 164));
//! assert!((place.off.value - 0.0057).abs() < 0.0001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Tooth;
use super::slant::{UNIT, within};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::{
    Approx, Fraction,
    float::{self, PI, of},
};
use crate::thread::dial::{Dial, Reading, Runs};

/// A straight-toothed rack and the dial it is cut by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Rack {
    /// Its teeth.
    pub tooth: Tooth,
    /// Gaps to be cut.
    pub gaps: u32,
    /// Dial of the table's screw.
    pub dial: Dial,
}

/// What a rack measures.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct RackSizes {
    /// From tooth to tooth, in millimetres.
    pub pitch: Approx,
    /// Thickness of a tooth at the pitch line, in millimetres.
    pub thickness: Approx,
    /// Height of the teeth above the pitch line.
    pub addendum: Length,
    /// Depth of the gaps.
    pub whole_depth: Length,
    /// From the first gap to the last, in millimetres.
    pub length: Approx,
    /// The farthest that a gap stands from its place, in millimetres.
    pub worst: Approx,
    /// The most by which the distance of two neighbours is wrong, in millimetres.
    pub adjacent: Approx,
}

/// Where the table stands for a gap.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct RackPlace {
    /// How far the gap should stand from the first, in millimetres.
    pub wanted: Approx,
    /// The reading, zero at the first gap.
    pub reading: Reading,
    /// By how many millimetres the gap then stands too far along.
    pub off: Approx,
}

impl Rack {
    /// What it measures, and how far off its gaps stand when each is set by its reading.
    ///
    /// # Errors
    /// What [`Tooth::check`] finds; gaps ([`bounds::GAPS`]) and dial out of bounds.
    pub fn sizes(&self) -> Result<RackSizes, Error> {
        self.tooth.check()?;
        bounds::GAPS.check(i64::from(self.gaps))?;
        let (above, below) = (self.tooth.addendum()?, self.tooth.dedendum()?);
        let pitch = PI * of(self.tooth.size.module()?.mm());
        let none = Approx { value: 0.0, bound: 0.0 };
        let (mut worst, mut adjacent, mut before) = (none, none, none);
        let mut length = none;
        for gap in 0..self.gaps {
            let place = self.place(gap)?;
            let (off, bound) = (place.off.value.abs(), place.off.bound);
            let apart = (place.off.value - before.value).abs();
            if off > worst.value {
                worst = Approx { value: off, bound };
            }
            if apart > adjacent.value {
                adjacent = Approx { value: apart, bound: bound + before.bound + apart * UNIT };
            }
            (before, length) = (place.off, place.wanted);
        }
        Ok(RackSizes {
            pitch: within(pitch, pitch, 3.0),
            thickness: within(pitch / 2.0, pitch / 2.0, 3.0),
            addendum: above,
            whole_depth: Length::from_mm(above.mm().checked_add(below.mm())?),
            length,
            worst,
            adjacent,
        })
    }

    /// The reading for the gap `gap` after the first.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] beyond the last gap; a dial out of bounds;
    /// [`Cause::Overflow`] for a dial too fine for the distance.
    pub fn place(&self, gap: u32) -> Result<RackPlace, Error> {
        if gap >= self.gaps {
            let cause = Cause::OutOfRange { least: 0, greatest: self.gaps.saturating_sub(1) };
            return Err(Error::new(Field::Position, cause));
        }
        let overflow = Error::new(Field::SlideDial, Cause::Overflow);
        let modules = self.tooth.size.times(Fraction::whole(i64::from(gap)))?;
        let (wanted, mark) = (PI * of(modules.mm()), self.dial.mark()?);
        let marks = float::nearest(wanted / of(mark.mm()), 1).ok_or(overflow)?;
        let marks = u32::try_from(marks.num()).map_err(|_| overflow)?;
        let reading = self.dial.at(marks, Runs::Forwards)?;
        let stands = of(reading.travel.mm());
        let off = stands - wanted;
        Ok(RackPlace {
            wanted: within(wanted, wanted, 3.0),
            reading,
            off: Approx { value: off, bound: (3.0 * wanted + stands + off.abs()) * UNIT },
        })
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::gear::Size;
    use crate::thread::dial::Reads;
    use std::vec::Vec;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn rack(module: Length, gaps: u32, division: Length, marks: u32) -> Rack {
        Rack {
            tooth: Tooth { size: Size::Module(module), ..Tooth::default() },
            gaps,
            dial: Dial { division, reads: Reads::Travel, marks },
        }
    }

    #[test]
    fn errors_never_build_up() {
        let thou = Length::from_inches(Fraction::new(1, 1000).unwrap()).unwrap();
        for (module, division) in [(mm(1, 1), mm(1, 50)), (mm(5, 4), thou), (mm(3, 10), mm(1, 20))]
        {
            let rack = rack(module, 500, division, 100);
            let (sizes, half) = (rack.sizes().unwrap(), float::of(division.mm()) / 2.0);
            let offs: Vec<f64> = (0..500).map(|gap| rack.place(gap).unwrap().off.value).collect();
            let worst = offs.iter().fold(0.0, |worst: f64, off| worst.max(off.abs()));
            let apart = |w: &[f64]| (w[1] - w[0]).abs();
            let adjacent = offs.windows(2).map(apart).fold(0.0, f64::max);
            assert!(worst <= half * (1.0 + 1e-9) && adjacent <= 2.0 * half * (1.0 + 1e-9));
            assert!(
                (sizes.worst.value - worst).abs() + (sizes.adjacent.value - adjacent).abs() == 0.0
            );
            assert!(worst > 0.9 * half, "500 gaps come near the half mark: {worst} {half}");
        }
    }

    #[test]
    fn what_is_no_rack() {
        let refused = |rack: Rack| rack.sizes().map_err(|e| (e.field, e.cause)).map(|_| ());
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        let fine = rack(mm(1, 1), 20, mm(1, 50), 100);
        assert_eq!(refused(Rack { gaps: 1, ..fine }), Err((Field::Teeth, range(2, 5_000))));
        let still = Dial { division: mm(0, 1), ..fine.dial };
        assert_eq!(refused(Rack { dial: still, ..fine }), Err((Field::SlideDial, Cause::Zero)));
        let beyond = fine.place(20).map_err(|e| (e.field, e.cause)).map(|_| ());
        assert_eq!(beyond, Err((Field::Position, range(0, 19))));
    }
}
