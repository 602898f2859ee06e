//! Dials: what to cut and to stamp, the vernier beside one, how large it must be, which
//! one suits a screw, and the fine dial that a screw and an arm make.
//!
//! [`lines`] builds on a [`Graduation`](crate::divide::Graduation) and tells where the
//! slide that draws the lines stops; [`vernier`], [`width`] and [`screw`] are exact but
//! for π; [`fine`] hands over to [`FineDial`](crate::head::FineDial).
//!
//! ```
//! use handturn::dial::{lines, screw, vernier::Vernier};
//! use handturn::divide::Numbers;
//! use handturn::head::Sense;
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! let mm = |num, den| Fraction::new(num, den).map(Length::from_mm);
//!
//! // The clock's ring of 365 days: every tenth line 6 mm and numbered, every fifth 4.5.
//! let every = |every, length| lines::Every { every, length };
//! let numbers = Numbers { every: 10, per_mark: 1, climbs: Sense::Clockwise, zero: false };
//! let ring = [every(Some(10), mm(6, 1)?), every(Some(5), mm(9, 2)?), every(Some(1), mm(3, 1)?)];
//! let ring = lines::graduate(365, &ring, Some(numbers))?;
//! assert_eq!(ring.kinds.len(), 3);
//!
//! // Drawn by a saddle whose dial has 100 marks on a 5 mm screw, from the edge on:
//! // 6 mm is one turn and 20 marks.
//! let slide = lines::Slide { lead: mm(5, 1)?, marks: 100, runs: lines::Runs::Forwards };
//! let stops = lines::stops(&ring.kinds, mm(0, 1)?, &slide)?;
//! assert_eq!((stops.ends[0].reading.turns, stops.ends[0].reading.mark), (1, 20));
//!
//! // A screw of 8 to the inch: 125 marks are thous.
//! let lead = Length::from_inches(Fraction::new(1, 8)?)?;
//! assert!(screw::handy(lead)?.iter().any(|dial| dial.marks == 125 && dial.inch));
//!
//! // Half degrees read to single minutes: 30 divisions over 29 marks.
//! let minute = Angle::from_arcsec(Fraction::whole(60))?;
//! let half = Angle::from_degrees(Fraction::new(1, 2)?)?;
//! let vernier = Vernier { main: half, least: minute, ..Vernier::default() }.laid()?;
//! assert_eq!((vernier.divisions, vernier.over_marks, vernier.lines), (30, 29, 31));
//! # Ok::<(), handturn::Error>(())
//! ```
pub mod fine;
pub mod lines;
pub mod screw;
pub mod vernier;
pub mod width;
