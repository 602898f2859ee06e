//! The question "N parts, an angle, a list of angles or a graduation": one file
//! a way, one ranked answer, the moves.
//!
//! Positions are counted from 0 here (a page may show 1): position 0 is where
//! the work stands at the start, position `positions()` of a question that
//! closes is the end of its closing move.
mod answer;
mod check;
mod compound;
#[cfg(test)]
mod compound_tests;
mod differential;
mod direct;
mod fine_dial;
#[cfg(test)]
mod fine_dial_tests;
mod graduation;
mod grid;
mod handwheel;
mod holes;
mod lacking;
mod moves;
mod near;
mod pairs;
mod question;
mod residues;
mod way;
mod working;

pub(crate) use answer::each_way;
pub use answer::{Answer, Group, Lacking, LeftOut, Order, Rated, Reason, answer, compare};
pub use compound::Compound;
pub use differential::Differential;
pub use direct::Direct;
pub use fine_dial::DialledHoles;
pub use graduation::{Graduation, Mark, MarkKind, Marks, Numbers};
pub use handwheel::DialledTurns;
pub use holes::{CircleAt, Holes};
pub use moves::{ArmsSet, At, Errors, Leg, Move, Part, Place};
pub use question::{Asked, Parts, Question, Repeated};
pub use way::{Effort, Kind, Stops, Way};
pub use working::{Equation, Sign, Term, Word, Working};
