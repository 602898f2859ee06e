//! Sizes round a thread: blank, clearance hole, relief groove, chamfers, length of
//! engagement.
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::limits::Side;
//! use handturn::thread::{fitting::{self, Clearance}, name};
//! // The clamp screw of a clock's wheel, M6 in 6g.
//! let screw = name::read("M6-6g")?[0];
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let blank = fitting::blank(&screw.thread, screw.class.expect("named"))?;
//! assert_eq!(blank.die, mm(590)?); // the die raises the crest
//! assert_eq!(fitting::clearance_hole(&screw.thread, Clearance::Medium)?, mm(660)?);
//! let groove = fitting::relief(&screw.thread, Side::External)?;
//! assert_eq!((groove.diameter, groove.width_least), (mm(440)?, mm(210)?));
//! assert_eq!(fitting::chamfers(&screw.thread)?.mouth_most, mm(630)?);
//! assert_eq!(fitting::engagement(&screw.thread)?, (mm(316)?, mm(945)?));
//! // Its nut is bored first.
//! let nut = name::read("M6-6H")?[0];
//! let bore = fitting::core_hole(&nut.thread, nut.class.expect("named"))?;
//! assert_eq!(bore.min.map(Length::mm), Some(Fraction::new(4917, 1000)?));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::limits::{Class, Range, Side, limits};
use super::{Kind, Thread, rounded};
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// `hundredths` of a millimetre.
fn mm(hundredths: i64) -> Result<Length, Error> {
    Ok(Length::from_mm(Fraction::new(hundredths, 100)?))
}

/// `num/den` of `length`.
fn part(length: Length, num: i64, den: i64) -> Result<Length, Error> {
    Ok(Length::from_mm(length.mm().checked_mul(Fraction::new(num, den)?)?))
}

/// The blank to cut a screw on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Blank {
    /// For a die, which raises the crest: a tenth of the pitch below the major
    /// (common practice).
    pub die: Length,
    /// For cutting with a single point: the limits of the major.
    pub cut: Range,
}

/// The blank for `thread` in `class`.
///
/// # Errors
/// [`Cause::Conflict`] for the class of a nut; else as [`limits`].
pub fn blank(thread: &Thread, class: Class) -> Result<Blank, Error> {
    if class.side == Side::Internal {
        return Err(Error::new(Field::Class, Cause::Conflict));
    }
    let cut = limits(thread, class)?.major;
    let tenth = part(thread.pitch, 1, 10)?;
    let die = Length::from_mm(thread.major.mm().checked_sub(tenth.mm())?);
    Ok(Blank { die: rounded(die, thread.form.unit)?, cut })
}

/// The hole to bore before `thread` is cut in it: the limits of the nut's minor.
///
/// # Errors
/// [`Cause::Conflict`] for the class of a screw; else as [`limits`].
pub fn core_hole(thread: &Thread, class: Class) -> Result<Range, Error> {
    if class.side == Side::External {
        return Err(Error::new(Field::Class, Cause::Conflict));
    }
    Ok(limits(thread, class)?.minor)
}

/// How freely a screw passes through a plain hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Clearance {
    /// ISO 273 fine; close in inch practice.
    Close,
    /// ISO 273 medium; free in inch practice.
    Medium,
    /// ISO 273 coarse; metric only.
    Coarse,
}

/// ISO 273 by thread in tenths of a millimetre: fine, medium, coarse. From memory.
const ISO_273: &[(u16, u16, u16, u16)] = &[
    (10, 11, 12, 13),
    (12, 13, 14, 15),
    (14, 15, 16, 18),
    (16, 17, 18, 20),
    (18, 20, 21, 22),
    (20, 22, 24, 26),
    (25, 27, 29, 31),
    (30, 32, 34, 36),
    (35, 37, 39, 42),
    (40, 43, 45, 48),
    (45, 48, 50, 53),
    (50, 53, 55, 58),
    (60, 64, 66, 70),
    (70, 74, 76, 80),
    (80, 84, 90, 100),
    (100, 105, 110, 120),
    (120, 130, 135, 145),
    (140, 150, 155, 165),
    (160, 170, 175, 185),
    (180, 190, 200, 210),
    (200, 210, 220, 240),
    (220, 230, 240, 260),
    (240, 250, 260, 280),
    (270, 280, 300, 320),
    (300, 310, 330, 350),
    (330, 340, 360, 380),
    (360, 370, 390, 420),
    (390, 400, 420, 450),
    (420, 430, 450, 480),
    (450, 460, 480, 520),
    (480, 500, 520, 560),
    (520, 540, 560, 620),
    (560, 580, 620, 660),
    (600, 620, 660, 700),
    (640, 660, 700, 740),
];

const _: () = {
    let mut rows = ISO_273;
    while let [a, rest @ ..] = rows {
        assert!(a.0 < a.1 && a.1 < a.2 && a.2 < a.3);
        if let [b, ..] = rest {
            assert!(a.0 < b.0 && a.1 < b.1 && a.2 < b.2 && a.3 < b.3);
        }
        rows = rest;
    }
};

/// The least clearance hole for `thread`: ISO 273 for ISO metric sizes it lists; for
/// all others 3 % above the major for close and 6 % for medium (common practice), to
/// be rounded up to a drill ([`super::drills::at_least`]).
///
/// # Errors
/// [`Cause::Conflict`] for coarse where ISO 273 lists nothing; else as [`Thread::new`].
pub fn clearance_hole(thread: &Thread, clearance: Clearance) -> Result<Length, Error> {
    thread.check()?;
    let tenths = thread.major.mm().times(10)?;
    let listed = |row: &&(u16, u16, u16, u16)| Fraction::whole(i64::from(row.0)) == tenths;
    if thread.form.kind == Kind::Metric
        && let Some(&(_, fine, medium, coarse)) = ISO_273.iter().find(listed)
    {
        let found = match clearance {
            Clearance::Close => fine,
            Clearance::Medium => medium,
            Clearance::Coarse => coarse,
        };
        return mm(i64::from(found).saturating_mul(10));
    }
    match clearance {
        Clearance::Close => part(thread.major, 103, 100),
        Clearance::Medium => part(thread.major, 106, 100),
        Clearance::Coarse => Err(Error::new(Field::Class, Cause::Conflict)),
    }
}

/// A groove at the end of a thread for the tool to run out into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Relief {
    /// Its diameter at the bottom.
    pub diameter: Length,
    /// Least width that lets the tool run out.
    pub width_least: Length,
    /// Greatest width that is usual.
    pub width_most: Length,
    /// Radius at its corners.
    pub radius: Length,
}

/// DIN 76-1, regular grooves, from memory: by pitch in micrometres how far the
/// screw's groove lies below the major, its least and greatest width and its radius,
/// the greatest width of the nut's, all in hundredths of a millimetre.
const DIN_76: &[(u16, u16, u16, u16, u16, u16)] = &[
    (200, 30, 45, 70, 10, 120),
    (250, 40, 55, 90, 12, 140),
    (300, 50, 60, 105, 16, 160),
    (350, 60, 70, 120, 16, 190),
    (400, 70, 80, 140, 20, 220),
    (450, 70, 100, 160, 20, 240),
    (500, 80, 110, 175, 20, 270),
    (600, 100, 120, 210, 40, 330),
    (700, 110, 150, 245, 40, 380),
    (750, 120, 160, 260, 40, 400),
    (800, 130, 170, 280, 40, 420),
    (1000, 160, 210, 350, 60, 520),
    (1250, 200, 270, 440, 60, 670),
    (1500, 230, 320, 520, 80, 780),
    (1750, 260, 390, 610, 100, 910),
    (2000, 300, 450, 700, 100, 1030),
    (2500, 360, 560, 870, 120, 1300),
    (3000, 440, 670, 1050, 160, 1520),
    (3500, 500, 770, 1200, 160, 1770),
    (4000, 570, 900, 1400, 200, 2000),
    (4500, 640, 1050, 1600, 200, 2300),
    (5000, 700, 1150, 1750, 250, 2600),
    (5500, 770, 1250, 1900, 320, 2800),
    (6000, 830, 1400, 2100, 320, 3000),
];

const _: () = {
    let mut rows = DIN_76;
    while let [a, rest @ ..] = rows {
        assert!(a.2 < a.3 && a.3 < a.5);
        if let [b, ..] = rest {
            assert!(a.0 < b.0 && a.1 <= b.1 && a.2 < b.2 && a.3 < b.3 && a.4 <= b.4);
        }
        rows = rest;
    }
};

/// The relief groove for `thread`: DIN 76-1 (regular) for ISO metric; for all others
/// common practice in its proportions: two to three and a half pitches wide in a
/// screw, four to five and a quarter in a nut, a quarter deeper than the thread,
/// corners of half a pitch.
///
/// # Errors
/// As [`Thread::new`].
pub fn relief(thread: &Thread, side: Side) -> Result<Relief, Error> {
    thread.check()?;
    let (pitch, major) = (thread.pitch, thread.major.mm());
    let um = pitch.mm().times(1000)?;
    let listed = |row: &&(u16, u16, u16, u16, u16, u16)| Fraction::whole(i64::from(row.0)) == um;
    let row = DIN_76.iter().find(listed).filter(|_| thread.form.kind == Kind::Metric);
    let (below, least, most, radius) = match (row, side) {
        (Some(&(_, below, least, most, radius, _)), Side::External) => {
            let at = |hundredths: u16| mm(i64::from(hundredths));
            (at(below)?, at(least)?, at(most)?, at(radius)?)
        }
        (Some(&(.., radius, most)), Side::Internal) => {
            let at = |hundredths: u16| mm(i64::from(hundredths));
            (over(pitch)?, part(pitch, 4, 1)?, at(most)?, at(radius)?)
        }
        (None, Side::External) => {
            let deep = part(thread.form.external_depth(pitch)?, 5, 2)?;
            (deep, part(pitch, 2, 1)?, part(pitch, 7, 2)?, part(pitch, 1, 2)?)
        }
        (None, Side::Internal) => {
            (over(pitch)?, part(pitch, 4, 1)?, part(pitch, 21, 4)?, part(pitch, 1, 2)?)
        }
    };
    let diameter = match side {
        Side::External => major.checked_sub(below.mm())?,
        Side::Internal => thread.major_internal()?.mm().checked_add(below.mm())?,
    };
    if diameter <= Fraction::ZERO {
        return Err(Error::new(Field::Pitch, Cause::Conflict));
    }
    let diameter = rounded(Length::from_mm(diameter), thread.form.unit)?;
    Ok(Relief { diameter, width_least: least, width_most: most, radius })
}

/// How far a nut's groove lies over its major (DIN 76-1, from memory).
fn over(pitch: Length) -> Result<Length, Error> {
    let um = pitch.mm().times(1000)?.floor();
    mm(match um {
        ..=300 => 10,
        301..=450 => 20,
        451..=800 => 30,
        _ => 50,
    })
}

/// Chamfers that let screw and nut start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chamfers {
    /// Diameter of the screw's end: its minor (DIN 76-1, common practice).
    pub screw_end: Length,
    /// How long the screw's chamfer is at 45°.
    pub screw_length: Length,
    /// Least diameter of the nut's mouth: its major.
    pub mouth_least: Length,
    /// Greatest diameter of the nut's mouth: 1.05 times its major (DIN 76-1).
    pub mouth_most: Length,
}

/// Chamfers for `thread`.
///
/// # Errors
/// As [`Thread::new`].
pub fn chamfers(thread: &Thread) -> Result<Chamfers, Error> {
    thread.check()?;
    let screw_end = thread.minor_external()?;
    let drop = thread.major.mm().checked_sub(screw_end.mm())?.over(2)?;
    let mouth_least = thread.major_internal()?;
    let mouth_most = rounded(part(mouth_least, 21, 20)?, thread.form.unit)?;
    Ok(Chamfers { screw_end, screw_length: Length::from_mm(drop), mouth_least, mouth_most })
}

/// A fifth power's root, in thousandths: by greatest diameter of the step of ISO 965-1
/// in hundredths of a millimetre, that of its least diameter.
const FIFTH_ROOTS: [(u16, u16); 9] = [
    (140, 998),
    (280, 1070),
    (560, 1229),
    (1120, 1411),
    (2240, 1621),
    (4500, 1862),
    (9000, 2141),
    (18_000, 2460),
    (35_500, 2825),
];

/// Lengths of engagement that count as normal: for ISO metric 2.24 to 6.7 P d^0.2, d the
/// least diameter of its step (ISO 965-1, whose table rounds this), to 0.01 mm; for all
/// others one to one and a half diameters (common practice, ASME B1.1).
///
/// # Errors
/// As [`Thread::new`].
pub fn engagement(thread: &Thread) -> Result<(Length, Length), Error> {
    thread.check()?;
    let hundredths = thread.major.mm().times(100)?;
    let step = |row: &&(u16, u16)| hundredths <= Fraction::whole(i64::from(row.0));
    match FIFTH_ROOTS.iter().find(step).filter(|_| thread.form.kind == Kind::Metric) {
        Some(&(_, root)) => {
            let by = |num: i64| {
                let exact = part(thread.pitch, i64::from(root).saturating_mul(num), 100_000)?;
                Ok::<_, Error>(Length::from_mm(super::to_nearest(exact.mm(), 100)?))
            };
            Ok((by(224)?, by(670)?))
        }
        None => Ok((thread.major, part(thread.major, 3, 2)?)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thread::name;

    fn thread(name_of: &str) -> (Thread, Class) {
        let found = name::read(name_of).unwrap()[0];
        (found.thread, found.class.unwrap())
    }

    fn hundredths(n: i64) -> Length {
        mm(n).unwrap()
    }

    #[test]
    fn blank_and_core_hole() {
        let (m6, class) = thread("M6-6g");
        let blank = blank(&m6, class).unwrap();
        assert_eq!(blank.die, hundredths(590));
        assert_eq!(blank.cut.min.unwrap().mm(), Fraction::new(5794, 1000).unwrap());
        let conflict = Error::new(Field::Class, Cause::Conflict);
        assert_eq!(core_hole(&m6, class), Err(conflict));
        let (m6, class) = thread("M6-6H");
        let hole = core_hole(&m6, class).unwrap();
        assert_eq!(hole.max.unwrap().mm(), Fraction::new(5153, 1000).unwrap());
        assert_eq!(super::blank(&m6, class), Err(conflict));
    }

    #[test]
    fn clearance_holes() {
        let (m6, _) = thread("M6-6g");
        let fits = [Clearance::Close, Clearance::Medium, Clearance::Coarse];
        let holes = fits.map(|fit| clearance_hole(&m6, fit).unwrap());
        assert_eq!(holes, [hundredths(640), hundredths(660), hundredths(700)]);
        let (quarter, _) = thread("1/4-20 UNC-2A");
        let inches = |fit| clearance_hole(&quarter, fit).and_then(Length::inches);
        assert_eq!(inches(Clearance::Close).unwrap(), Fraction::new(2575, 10_000).unwrap());
        assert_eq!(inches(Clearance::Medium).unwrap(), Fraction::new(265, 1000).unwrap());
        let conflict = Error::new(Field::Class, Cause::Conflict);
        assert_eq!(inches(Clearance::Coarse), Err(conflict));
    }

    #[test]
    fn grooves_and_chamfers() {
        let (m6, _) = thread("M6-6g");
        let groove = relief(&m6, Side::External).unwrap();
        let widths = [groove.width_least, groove.width_most, groove.radius];
        assert_eq!(groove.diameter, hundredths(440));
        assert_eq!(widths, [hundredths(210), hundredths(350), hundredths(60)]);
        let groove = relief(&m6, Side::Internal).unwrap();
        assert_eq!(groove.diameter, hundredths(650));
        assert_eq!([groove.width_least, groove.width_most], [hundredths(400), hundredths(520)]);
        let ends = chamfers(&m6).unwrap();
        assert_eq!(ends.screw_end.mm(), Fraction::new(4773, 1000).unwrap());
        assert_eq!([ends.mouth_least, ends.mouth_most], [hundredths(600), hundredths(630)]);
        // Every listed thread has a groove deeper than itself that leaves a core.
        for series in crate::thread::Series::ALL {
            for k in 0..series.sizes() {
                let thread = series.thread(series.size(k).unwrap()).unwrap();
                let groove = relief(&thread, Side::External).unwrap();
                assert!(groove.diameter < thread.minor_external().unwrap(), "{thread:?}");
                assert!(groove.width_least < groove.width_most);
                let groove = relief(&thread, Side::Internal).unwrap();
                assert!(groove.diameter > thread.major_internal().unwrap(), "{thread:?}");
            }
        }
    }

    #[test]
    fn lengths_of_engagement() {
        // ISO 965-1 prints 3 to 9 mm for M6 and 5 to 15 mm for M10.
        let of = |name_of| engagement(&thread(name_of).0).unwrap();
        assert_eq!(of("M6-6g"), (hundredths(316), hundredths(945)));
        assert_eq!(of("M10-6g"), (hundredths(474), hundredths(1418)));
        let quarter = of("1/4-20 UNC-2A");
        assert_eq!((quarter.0.mm(), quarter.1.mm().num()), (Fraction::new(127, 20).unwrap(), 381));
    }
}
