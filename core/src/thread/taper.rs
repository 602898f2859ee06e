//! Taper pipe threads: NPT (ASME B1.20.1) and R with Rc (ISO 7-1), sizes along the taper.
//!
//! They are a type of their own, so that limits, wires, passes and drills, which are for
//! parallel threads, can't be asked of one. On the diameter both taper by a sixteenth of
//! the length. How known: two sizes of NPT read in print, the rest from memory.
use super::name;
use super::{Form, Series, even, rounded};
use crate::error::{Error, Field};
use crate::measure::Length;
use crate::measure::read::Unit;
use crate::number::Fraction;

/// Which standard a taper thread is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standard {
    /// ASME B1.20.1, 60°.
    #[doc(alias = "NPT")]
    Npt,
    /// ISO 7-1, 55°: R of a screw, Rc of a nut.
    #[doc(alias = "BSPT")]
    R,
}

/// A taper thread by its nominal size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taper {
    /// Its standard.
    pub standard: Standard,
    /// Nominal size in inches, which is no diameter.
    pub nominal: Fraction,
    /// NPT: outside diameter of the pipe; R: major diameter at the gauge plane.
    pub outside: Length,
    /// Distance from one groove to the next along the axis.
    pub pitch: Length,
    /// From the small end to the gauge plane (L1), by hand.
    pub gauge: Length,
    /// Length of thread of use from the small end (L2 of NPT).
    pub useful: Length,
}

/// Sizes of a taper thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// Pitch diameter (effective) at the screw's small end (E0).
    pub pitch_diameter_small: Length,
    /// Major diameter at the gauge plane.
    pub major: Length,
    /// Pitch diameter (effective) at the gauge plane (E1).
    pub pitch_diameter: Length,
    /// Minor diameter at the gauge plane.
    pub minor: Length,
    /// Radial height of the thread, square to the axis.
    pub height: Length,
    /// How far the gauge plane may lie off, either way: a turn, for R from 2 1/2 in up a turn
    /// and a half.
    pub gauge_off: Length,
}

/// NPT by nominal size in sixteenths of an inch: pipe in thousandths of an inch, eighths
/// of a thread per inch, L1 in ten-thousandths of an inch.
const NPT: &[(u8, u16, u16, u16)] = &[
    (1, 312, 216, 1600),
    (2, 405, 216, 1615),
    (4, 540, 144, 2278),
    (6, 675, 144, 2400),
    (8, 840, 112, 3200),
    (12, 1050, 112, 3390),
    (16, 1315, 92, 4000),
    (20, 1660, 92, 4200),
    (24, 1900, 92, 4200),
    (32, 2375, 92, 4360),
    (40, 2875, 64, 6820),
    (48, 3500, 64, 7660),
    (56, 4000, 64, 8210),
    (64, 4500, 64, 8440),
    (80, 5563, 64, 9370),
    (96, 6625, 64, 9580),
];

/// R by nominal size in sixteenths of an inch: gauge length and useful length in tenths
/// of a millimetre. Diameters are those of G.
const R: &[(u8, u16, u16)] = &[
    (1, 40, 65),
    (2, 40, 65),
    (4, 60, 97),
    (6, 64, 101),
    (8, 82, 132),
    (12, 95, 145),
    (16, 104, 168),
    (20, 127, 191),
    (24, 127, 191),
    (32, 159, 234),
    (40, 175, 267),
    (48, 206, 298),
    (64, 254, 358),
    (80, 286, 401),
    (96, 286, 401),
];

impl Taper {
    /// The taper thread that `text` names: `1/2 NPT`, `1/2-14 NPT`, `R 1/2`, `1/2 BSPT`.
    ///
    /// ```
    /// use handturn::thread::taper::Taper;
    /// // 1/2-14 NPT: where the ring gauge stops, the pitch diameter is 0.77843 in.
    /// let sizes = Taper::read("1/2 NPT")?.sizes()?;
    /// assert_eq!(sizes.pitch_diameter.inches()?.to_string(), "77843/100000");
    /// # Ok::<(), handturn::Error>(())
    /// ```
    ///
    /// # Errors
    /// [`Cause::Conflict`](crate::Cause::Conflict) for [`Field::Thread`] where it names no taper thread or none of this
    /// size, for [`Field::Pitch`] where the size has another pitch; else as [`name::read`].
    pub fn read(text: &str) -> Result<Self, Error> {
        let (standard, size, pitch) = name::taper(text)?;
        let all: &mut dyn Iterator<Item = Result<Self, Error>> = match standard {
            Standard::Npt => &mut NPT.iter().map(|&row| npt(row)),
            Standard::R => &mut R.iter().map(|&row| r(row)),
        };
        for taper in all {
            let taper = taper?;
            if taper.nominal != size.value {
                continue;
            }
            return match pitch {
                Some(tpi) if taper.pitch.inches()?.inverse()? != tpi.value => {
                    Err(tpi.conflict(Field::Pitch))
                }
                _ => Ok(taper),
            };
        }
        Err(size.conflict(Field::Thread))
    }

    /// Its sizes: NPT to 0.00001 in, a half to the even neighbour as printed, R to 0.001 mm.
    ///
    /// # Errors
    /// [`Cause::Overflow`](crate::Cause::Overflow).
    pub fn sizes(&self) -> Result<Sizes, Error> {
        let slope = Fraction::new(1, 16)?;
        let rise = self.gauge.mm().checked_mul(slope)?;
        let turns = if self.standard == Standard::R && self.nominal >= Fraction::new(5, 2)? {
            3
        } else {
            2
        };
        let gauge_off = Length::from_mm(self.pitch.mm().times(turns)?.over(2)?);
        let by = |length: Length, times: i64, other: Length| {
            let sum = length.mm().checked_add(other.mm().times(times)?)?;
            Ok::<_, Error>(Length::from_mm(sum))
        };
        match self.standard {
            Standard::Npt => {
                // E0 = D − (0.05 D + 1.1) p; the height is 0.8 p.
                let (d, p) = (self.outside.inches()?, self.pitch.inches()?);
                let less = d.over(20)?.checked_add(Fraction::new(11, 10)?)?.checked_mul(p)?;
                let five = |inches: Fraction| {
                    Length::from_inches(Fraction::new(even(inches.times(100_000)?)?, 100_000)?)
                };
                let small = d.checked_sub(less)?;
                let at_gauge = small.checked_add(self.gauge.inches()?.checked_mul(slope)?)?;
                let height = five(p.checked_mul(Fraction::new(4, 5)?)?)?;
                let pitch_diameter = five(at_gauge)?;
                Ok(Sizes {
                    pitch_diameter_small: five(small)?,
                    major: by(pitch_diameter, 1, height)?,
                    pitch_diameter,
                    minor: by(pitch_diameter, -1, height)?,
                    height,
                    gauge_off,
                })
            }
            Standard::R => {
                let height = rounded(Form::PIPE.external_depth(self.pitch)?, Unit::Mm)?;
                let pitch_diameter = by(self.outside, -1, height)?;
                let small = Length::from_mm(pitch_diameter.mm().checked_sub(rise)?);
                Ok(Sizes {
                    pitch_diameter_small: rounded(small, Unit::Mm)?,
                    major: self.outside,
                    pitch_diameter,
                    minor: by(pitch_diameter, -1, height)?,
                    height,
                    gauge_off,
                })
            }
        }
    }
}

fn npt((nominal, pipe, eighths, gauge): (u8, u16, u16, u16)) -> Result<Taper, Error> {
    let inches = |num: u16, den| Length::from_inches(Fraction::new(i64::from(num), den)?);
    // 1/16 is 0.3125 in: the one pipe that is no whole thousandth.
    let outside = if pipe == 312 { inches(5, 16)? } else { inches(pipe, 1000)? };
    let pitch = Length::from_inches(Fraction::new(8, i64::from(eighths))?)?;
    // L2 = (0.8 D + 6.8) p, to four places.
    let sum =
        outside.inches()?.checked_mul(Fraction::new(4, 5)?)?.checked_add(Fraction::new(34, 5)?)?;
    let useful = rounded(Length::from_mm(sum.checked_mul(pitch.mm())?), Unit::Inch)?;
    let nominal = Fraction::new(i64::from(nominal), 16)?;
    Ok(Taper {
        standard: Standard::Npt,
        nominal,
        outside,
        pitch,
        gauge: inches(gauge, 10_000)?,
        useful,
    })
}

fn r((sixteenths, gauge, useful): (u8, u16, u16)) -> Result<Taper, Error> {
    let mm = |tenths: u16| Ok::<_, Error>(Length::from_mm(Fraction::new(i64::from(tenths), 10)?));
    let mut sizes = (0..Series::Pipe.sizes()).filter_map(|k| Series::Pipe.size(k));
    let none = Error::new(Field::Thread, crate::error::Cause::Conflict);
    let size = sizes.find(|size| size.name == sixteenths).ok_or(none)?;
    let parallel = Series::Pipe.thread(size)?;
    Ok(Taper {
        standard: Standard::R,
        nominal: Fraction::new(i64::from(sixteenths), 16)?,
        outside: parallel.major,
        pitch: parallel.pitch,
        gauge: mm(gauge)?,
        useful: mm(useful)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;
    extern crate std;

    #[test]
    fn every_size_tapers_and_is_found_by_name() {
        let all = NPT.iter().map(|&row| npt(row)).chain(R.iter().map(|&row| r(row)));
        let mut count = 0;
        for taper in all.map(Result::unwrap) {
            let sizes = taper.sizes().unwrap();
            assert!(sizes.pitch_diameter_small < sizes.pitch_diameter, "{taper:?}");
            assert!(sizes.minor < sizes.pitch_diameter && sizes.pitch_diameter < sizes.major);
            assert!(taper.gauge < taper.useful, "{taper:?}");
            assert!(sizes.gauge_off < taper.gauge);
            let after = if taper.standard == Standard::Npt { "NPT" } else { "BSPT" };
            let text = std::format!("{} {after}", taper.nominal);
            // A nominal size over an inch is written as people do: 3/2 reads too.
            assert_eq!(Taper::read(&text), Ok(taper), "{text}");
            count += 1;
        }
        assert_eq!(count, 31);
    }

    #[test]
    fn names_as_people_write_them() {
        let npt = Taper::read("1/2 NPT").unwrap();
        for text in ["1/2-14 NPT", "NPT 1/2", "npt 1/2 x 14", "1/2\" npt", "0.5 NPT"] {
            assert_eq!(Taper::read(text), Ok(npt), "{text}");
        }
        let r = Taper::read("R 1 1/2").unwrap();
        for text in ["r1 1/2", "Rc 1 1/2", "1 1/2 BSPT", "1 1/2-11 BSPT"] {
            assert_eq!(Taper::read(text), Ok(r), "{text}");
        }
    }

    #[track_caller]
    fn refused(text: &str, field: Field, cause: Cause, span: (u16, u16)) {
        let error = Taper::read(text).unwrap_err();
        assert_eq!((error.field, error.cause, error.span), (field, cause, span), "{text}");
    }

    #[test]
    fn what_is_no_taper_thread_is_refused() {
        refused("1/2-16 NPT", Field::Pitch, Cause::Conflict, (4, 6));
        refused("5/8 NPT", Field::Thread, Cause::Conflict, (0, 3));
        refused("R 7/8", Field::Thread, Cause::Conflict, (2, 5));
        refused("G 1/2", Field::Thread, Cause::Conflict, (2, 5));
        refused("NPT", Field::Thread, Cause::Empty, (0, 3));
    }

    /// The rooms for parallel threads say so, and never take it for one.
    #[test]
    fn no_taper_thread_is_taken_for_a_parallel_one() {
        for (text, span) in [
            ("1/2 NPT", (0, 3)),
            ("1/2-14 NPT", (0, 3)),
            ("R 1/2", (2, 5)),
            ("Rc 3/4", (3, 6)),
            ("9/7-3 BSPT", (0, 3)),
        ] {
            let error = name::read(text).unwrap_err();
            assert_eq!(
                (error.field, error.cause, error.span),
                (Field::Thread, Cause::Taper, span),
                "{text}"
            );
        }
    }
}
