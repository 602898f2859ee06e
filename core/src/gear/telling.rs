//! Telling a wheel by what can be measured: size from outside and teeth, teeth from
//! outside and size, size from a pitch taken along the circle or straight across.
//!
//! A standard wheel's outside is its pitch diameter and two modules, so the module is
//! outside ÷ (teeth + 2) and the diametral pitch (teeth + 2) ÷ outside: exact. Beside it
//! stand the nearest usual module and diametral pitch and by how much a blank of each
//! would differ from the one measured.
//!
//! ```
//! use handturn::gear::telling::size_of;
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A blank of 3.250 in with 24 teeth: 8 to the inch.
//! let told = size_of(Length::from_inches(Fraction::new(13, 4)?)?, 24)?;
//! assert_eq!(told.diametral_pitch, Fraction::whole(8));
//! assert_eq!(told.nearest_pitch.over.mm(), Fraction::ZERO);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Size;
use crate::bounds::WHEEL_TEETH;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{minus, over, size, times};
use crate::number::{Approx, Fraction, float};

/// Modules in thousandths of a millimetre: ISO 54 (series I and II) from 1 mm, DIN 780
/// (rows 1 and 2) below it. From memory.
const MODULES: [u16; 67] = [
    50, 55, 60, 70, 80, 90, 100, 110, 120, 140, 160, 180, 200, 220, 250, 280, 300, 350, 400, 450,
    500, 550, 600, 650, 700, 750, 800, 850, 900, 950, 1000, 1125, 1250, 1375, 1500, 1750, 2000,
    2250, 2500, 2750, 3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500, 7000, 8000, 9000, 10_000,
    11_000, 12_000, 14_000, 16_000, 18_000, 20_000, 22_000, 25_000, 28_000, 32_000, 36_000, 40_000,
    45_000, 50_000, 60_000,
];

/// Diametral pitches in quarters that cutters are usual in: the coarse and fine ones of
/// ANSI B6.1 and B6.7 and those between. From memory, common practice.
const PITCHES: [u16; 39] = [
    4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 20, 24, 28, 32, 36, 40, 44, 48, 56, 64, 72, 80, 88, 96,
    104, 112, 120, 128, 144, 160, 192, 256, 288, 320, 384, 480, 600, 800,
];

const _: () = assert!(ascending(&MODULES) && ascending(&PITCHES));

const fn ascending(mut rest: &[u16]) -> bool {
    while let [less, more, ..] = rest {
        if *less >= *more {
            return false;
        }
        (_, rest) = rest.split_at(1);
    }
    true
}

/// A usual size, and how a blank of it would compare with the measured one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Near {
    /// The size.
    pub size: Size,
    /// Outside diameter of a standard wheel of it.
    pub outside: Length,
    /// By how much the measured outside is over that, below nought where it is under.
    pub over: Length,
}

/// What size a wheel's teeth are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Told {
    /// The module that fits exactly.
    pub module: Length,
    /// The diametral pitch that fits exactly.
    pub diametral_pitch: Fraction,
    /// The nearest usual module.
    pub nearest_module: Near,
    /// The nearest usual diametral pitch.
    pub nearest_pitch: Near,
    /// Whether the module is the nearer of the two, or as near.
    pub is_module: bool,
}

/// How many teeth a blank is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Teeth {
    /// The nearest whole number, a half counted up.
    pub teeth: u32,
    /// Outside diameter of a standard wheel of as many.
    pub outside: Length,
    /// By how much the measured outside is over that, below nought where it is under.
    pub over: Length,
}

/// The size of teeth of a wheel of `outside` diameter with so many `teeth`, if it is a
/// standard one: without profile shift, its addendum one module.
///
/// # Errors
/// A length out of bounds, of [`Field::Blank`]; [`Cause::OutOfRange`] of the teeth;
/// [`Cause::Overflow`].
pub fn size_of(outside: Length, teeth: u32) -> Result<Told, Error> {
    size(outside, Field::Blank)?;
    let and_two = WHEEL_TEETH.check(i64::from(teeth))?.saturating_add(2);
    let module = over(outside, and_two, Field::Blank)?;
    let diametral_pitch = module.inches().and_then(Fraction::inverse);
    let diametral_pitch = diametral_pitch.map_err(|e| e.of(Field::Blank))?;
    let near = |size: Size| {
        let drawn = times(size.module()?, and_two, Field::Blank)?;
        Ok::<_, Error>(Near { size, outside: drawn, over: minus(outside, drawn, Field::Blank)? })
    };
    let modules = MODULES.iter().map(|thousandths| {
        Ok(Size::Module(Length::from_mm(Fraction::new(i64::from(*thousandths), 1000)?)))
    });
    let pitches = PITCHES
        .iter()
        .map(|quarters| Ok(Size::DiametralPitch(Fraction::new(i64::from(*quarters), 4)?)));
    let nearest_module = nearest(modules.map(|size| near(size?)))?;
    let nearest_pitch = nearest(pitches.map(|size| near(size?)))?;
    let is_module = nearest_module.over.mm().abs() <= nearest_pitch.over.mm().abs();
    Ok(Told { module, diametral_pitch, nearest_module, nearest_pitch, is_module })
}

/// The one whose blank is nearest, the first of equals.
fn nearest(all: impl Iterator<Item = Result<Near, Error>>) -> Result<Near, Error> {
    let mut best: Option<Near> = None;
    for near in all {
        let near = near?;
        if best.is_none_or(|best| near.over.mm().abs() < best.over.mm().abs()) {
            best = Some(near);
        }
    }
    best.ok_or(Error::new(Field::Blank, Cause::Empty))
}

/// How many teeth of `size` a blank of `outside` diameter is for: outside ÷ module − 2.
///
/// # Errors
/// A length out of bounds, of [`Field::Blank`]; what [`Size::check`] finds;
/// [`Cause::OutOfRange`] of the teeth; [`Cause::Overflow`].
pub fn teeth_of(outside: Length, size: Size) -> Result<Teeth, Error> {
    let field = Field::Blank;
    crate::measure::given::size(outside, field)?;
    size.check()?;
    let module = size.module()?;
    let exact = outside.mm().checked_div(module.mm()).map_err(|e| e.of(field))?;
    let (and_two, _) = exact.nearest()?;
    let teeth = WHEEL_TEETH.check_u32(and_two.saturating_sub(2))?;
    let drawn = times(module, and_two, field)?;
    Ok(Teeth { teeth, outside: drawn, over: minus(outside, drawn, field)? })
}

/// The module, in millimetres, of a pitch measured along the pitch circle, as old
/// castings are sized: pitch ÷ π. Pitch diameter is as many of these as teeth.
///
/// # Errors
/// A length out of bounds, of [`Field::Pitch`].
#[doc(alias = "circular pitch")]
pub fn module_of_circular_pitch(pitch: Length) -> Result<Approx, Error> {
    let value = size(pitch, Field::Pitch)? / float::PI;
    Ok(Approx { value, bound: 4.0 * f64::EPSILON * value })
}

/// The diameter, in millimetres, of the circle on which `teeth` stand `chord` apart,
/// straight across from one to the next: chord ÷ sin(180°/teeth).
///
/// # Errors
/// A length out of bounds, of [`Field::Pitch`]; [`Cause::OutOfRange`] of the teeth.
#[doc(alias = "chordal pitch")]
#[doc(alias = "chain wheel")]
pub fn diameter_of_chord(chord: Length, teeth: u32) -> Result<Approx, Error> {
    let value = size(chord, Field::Pitch)? / half_step(teeth)?;
    Ok(Approx { value, bound: 8.0 * f64::EPSILON * value })
}

/// How far apart, in millimetres, `teeth` stand straight across on a circle of `diameter`.
///
/// # Errors
/// A length out of bounds, of [`Field::Diameter`]; [`Cause::OutOfRange`] of the teeth.
pub fn chord_of_diameter(diameter: Length, teeth: u32) -> Result<Approx, Error> {
    let value = size(diameter, Field::Diameter)? * half_step(teeth)?;
    Ok(Approx { value, bound: 8.0 * f64::EPSILON * value })
}

/// Sine of half a division.
fn half_step(teeth: u32) -> Result<f64, Error> {
    WHEEL_TEETH.check(i64::from(teeth))?;
    Ok(float::sin_turns(0.5 / f64::from(teeth)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_usual_size_is_told_by_its_own_blank() {
        for teeth in [12, 38, 64, 127] {
            for thousandths in MODULES {
                let module = Length::from_mm(Fraction::new(i64::from(thousandths), 1000).unwrap());
                let told =
                    size_of(times(module, i64::from(teeth) + 2, Field::Blank).unwrap(), teeth)
                        .unwrap();
                assert_eq!((told.module, told.is_module), (module, true));
                assert_eq!(told.nearest_module.size, Size::Module(module));
                let count = teeth_of(told.nearest_module.outside, Size::Module(module)).unwrap();
                assert_eq!((count.teeth, count.over.mm()), (teeth, Fraction::ZERO));
            }
            for quarters in PITCHES {
                let pitch = Fraction::new(i64::from(quarters), 4).unwrap();
                let blank = Fraction::whole(i64::from(teeth) + 2).checked_div(pitch).unwrap();
                let told = size_of(Length::from_inches(blank).unwrap(), teeth).unwrap();
                assert_eq!(told.diametral_pitch, pitch);
                assert_eq!(told.nearest_pitch.size, Size::DiametralPitch(pitch));
            }
        }
    }

    #[test]
    fn a_blank_between_two_sizes_names_both() {
        // 65.9 mm on 64 teeth: module 1 by 0.1 less, 25 or 26 to the inch are further off.
        let told = size_of(Length::from_mm(Fraction::new(659, 10).unwrap()), 64).unwrap();
        assert_eq!(told.module.mm(), Fraction::new(659, 660).unwrap());
        assert_eq!(told.nearest_module.over.mm(), Fraction::new(-1, 10).unwrap());
        assert_eq!(told.nearest_pitch.size, Size::DiametralPitch(Fraction::whole(26)));
        assert!(told.is_module);
    }

    #[test]
    fn bounds_are_kept() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let cause = |r: Result<Told, Error>| r.map_err(|e| (e.field, e.cause)).map(|_| ());
        assert_eq!(cause(size_of(mm(0), 64)), Err((Field::Blank, Cause::Zero)));
        let range = Cause::OutOfRange { least: 4, greatest: 5_000 };
        assert_eq!(cause(size_of(mm(66), 3)), Err((Field::Teeth, range)));
        let few = teeth_of(mm(5), Size::Module(mm(1))).map_err(|e| (e.field, e.cause));
        assert_eq!(few, Err((Field::Teeth, range)));
        assert!(diameter_of_chord(mm(5), 3).is_err() && chord_of_diameter(mm(0), 8).is_err());
    }
}
