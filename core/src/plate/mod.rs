//! The plate one lacks, and how wrong any division comes out on a real head.
//!
//! [`budget()`] adds up what makes a division wrong: the rounding of the way and
//! the errors of plate, pin, worm, wheel and hands. [`ladder()`] plans a plate
//! that is not owned: drilled first by the best way at hand, then, if it pays,
//! once more with the plate just made, whose errors come out divided by the worm.
//! [`ring`] sees to it that the holes fit pin, handle and blank; [`coordinates`] says
//! where they lie on a mill's table; [`tape`] and [`disks`] divide with no head at all.
//!
//! ```
//! use handturn::divide::{Kind, Parts, Question, answer};
//! use handturn::head::{Head, SET_A, plates_of};
//! use handturn::plate::{Making, Source, Sources, ladder};
//! // The clock's wheel of 127: no circle owned serves, a plate of 127 holes would.
//! let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
//! let question = Question::Parts(Parts { count: 127, every: 1 });
//! // Drilled by nearest holes; nothing but rounding and drilling, to see them alone.
//! let answer = answer::<1>(&question, &head)?;
//! let first = answer.group(Kind::NearestHole).map(|group| group.closest[0].way);
//! let making = Making { question, first, sources: Sources::NONE, ..Making::default() };
//! let plan = ladder(&head, &making)?;
//! // Holes up to 328″ + 188″ out; the wheel cut with them a fortieth of that.
//! let first = &plan.generations[0];
//! assert!((first.plate.sum.total.value - 515.6).abs() < 0.1);
//! assert!((first.work.sum.total.value - 12.9).abs() < 0.1);
//! // Drilled once more with itself, what is left is its drilling.
//! let second = &plan.generations[1];
//! assert!((second.work.sum.total.value - 5.0).abs() < 0.1);
//! assert_eq!(second.work.dominant, Some(Source::Drilling));
//! # Ok::<(), handturn::Error>(())
//! ```
//!
//! ```
//! use handturn::head::Sense;
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::plate::coordinates::{Comes, Layout, Screw};
//! // A ring of 131 holes, 110 mm across, its centre 60 mm from both edges of the blank;
//! // a table with screws of 2.5 mm lead, 50 marks each, and 0.15 mm of slack.
//! let mm = |num, den| Fraction::new(num, den).map(Length::from_mm);
//! let ring = Layout {
//!     holes: 131, diameter: mm(110, 1)?, first: Angle::ZERO, sense: Sense::Anticlockwise,
//!     centre: [mm(60, 1)?, mm(60, 1)?],
//! };
//! let screw = Screw { lead: mm(5, 2)?, marks: 50, slack: mm(3, 20)?, falls: false };
//! let hole = ring.hole(&[screw, screw], 1)?;
//! assert!((hole.centre.from_edges[0].value - 114.9368).abs() < 1e-4);
//! // X is 45 turns and 49 marks (114.95), Y 25 turns and 3 marks (62.65): X falls a
//! // little, so its handle goes past by half a turn and comes up again.
//! assert_eq!((hole.dial[0].turns, hole.dial[0].mark), (45, 49));
//! assert_eq!(hole.dial[0].comes, Comes::Past { turns: 45, mark: 24 });
//! assert_eq!((hole.dial[1].turns, hole.dial[1].mark), (25, 3));
//! assert_eq!(hole.dial[1].comes, Comes::Straight);
//! # Ok::<(), handturn::Error>(())
//! ```
mod budget;
pub mod coordinates;
pub mod disks;
mod known;
mod ladder;
pub mod ring;
mod sources;
mod strand;
pub mod tape;
#[cfg(test)]
mod tests;

pub use budget::{Budget, Share, Sums, Term, along, arc_mm, budget};
pub use ladder::{Generation, Ladder, MAX_GENERATIONS, Making, Need, fitted, ladder, need};
pub use sources::{Source, Sources, Spread};
