//! The index plate you lack: where its holes lie on a mill's table, and how to divide
//! with no head at all, by a tape round a drum or by disks that touch.
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
pub mod coordinates;
pub mod disks;
pub mod tape;
