//! Wheels: what the blank measures, which cutter and how deep, how to check what
//! was cut, and what to divide.
//!
//! Sizes that are multiples of the module are exact fractions, as a diametral
//! pitch's are; what has π or an involute in it is an [`Approx`](crate::number::Approx).
//! A [`Tooth`] is the rack that a standard draws, a [`Spur`] a wheel cut to it.
//!
//! ```
//! use handturn::gear::{DepthRule, Size, Spur, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's 64 wheel: module 1, 20°, 2.25 modules deep.
//! let size = Size::Module(Length::from_mm(Fraction::ONE));
//! let wheel = Spur::new(64, Tooth { size, ..Tooth::default() })?;
//! assert_eq!(wheel.outside_diameter()?.mm(), Fraction::whole(66));
//! assert_eq!(wheel.whole_depth()?.mm(), Fraction::new(9, 4)?);
//! assert_eq!(Tooth::default().rule, DepthRule::Coarse);
//! # Ok::<(), handturn::Error>(())
//! ```
mod bevel;
pub mod cam;
pub mod chordal;
pub mod clock;
pub mod cutter;
mod flank;
pub mod flats;
pub mod found;
mod helical;
pub mod internal;
pub mod involute;
pub mod keyway;
pub mod outline;
pub mod pair;
#[cfg(test)]
mod pair_tests;
pub mod pins;
mod rack;
pub mod ratchet;
mod size;
mod slant;
pub mod sound;
pub mod span;
pub mod spline;
pub mod spline_series;
mod spur;
pub mod swing;
pub mod table;
pub mod telling;
mod tooth;
pub mod trial;
mod worm;

pub use bevel::{Bevel, BevelSizes, BevelWheel, Depth};
pub use helical::{Crossed, Helical, HelicalSizes, crossed};
pub use internal::Internal;
pub use rack::{Rack, RackPlace, RackSizes};
pub use size::Size;
pub use slant::Caliper;
pub use spur::{Arcs, Spur};
pub use tooth::{DepthRule, Tooth};
pub use worm::{Axial, Worm, WormPair, WormSizes, WormWheel};
