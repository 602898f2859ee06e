//! A Run: the place kept at the machine, as a state machine.
//!
//! A [`Frozen`] record says what is cut and how; [`Event`]s say what the hands
//! did. [`State`] is folded from the events one by one, so nothing but the two
//! is ever stored, and the page and the readout cannot disagree about the place.
//!
//! Positions count from 0 here; what people read counts from 1. Between
//! positions 0 and N − 1 lie N − 1 moves; one closing move without a cut then
//! brings the work home where the question closes.
//!
//! ```
//! use handturn::divide::{Asked, Order, Parts, Question, answer};
//! use handturn::head::{GEARS, Head, SET_A, gears_of, plates_of};
//! use handturn::run::{Frozen, Phase, Pressed, Seen, State};
//!
//! // The clock's 127 wheel: 13 holes on the 39 circle, gears 56 : 24.
//! let (plates, gears) = (plates_of(&SET_A)?, gears_of(&GEARS)?);
//! let head = Head { plates, gears, ..Head::default() };
//! let parts = Parts { count: 127, every: 1 };
//! let answer = answer::<4>(&Question::Parts(parts), &head)?;
//! let way = answer.best(Order::Closest).expect("127 has an exact way").way;
//! let frozen = Frozen::new(Asked::Parts(parts), head, way)?;
//!
//! // Next, every two seconds, to the end of the closing move.
//! let (plan, mut events, mut state) = (frozen.plan(), Vec::new(), State::START);
//! while let Some(event) = state.next(&plan, 2_000 * events.len() as u64)? {
//!     let Pressed::Counted(next) = state.press(&plan, event)? else { panic!("too soon") };
//!     events.push(event);
//!     state = next;
//! }
//! assert_eq!(state.phase(&plan), Phase::Closed);
//! assert_eq!(events.len(), 126 + 1 + 1, "126 moves, the last cut, the closing move");
//! let home = plan.home()?.expect("equal parts close").place;
//! assert_eq!(home.pin.map(|pin| pin.number), Some(13), "the plate has turned as well");
//! assert_eq!(home.stands, handturn::measure::Angle::TURN);
//!
//! // The place is found again from what was stored.
//! let read = State::replay(&plan, events.iter().copied().take(36)).expect("so it was written");
//! assert_eq!((read.index(), read.left(&plan)), (36, 90), "at 37 of 127, 90 to go");
//!
//! // Somebody turned the handle: the pin is in hole 26.
//! let seen = Seen { pin: Some(26), ..Seen::default() };
//! let fits = read.fits(&plan, seen)?.take(2);
//! let fits: Vec<u32> = fits.map(|fit| Ok(fit?.index + 1)).collect::<Result<_, handturn::Error>>()?;
//! assert_eq!(fits, [36, 39], "the nearest to 37 first");
//! # Ok::<(), handturn::Error>(())
//! ```
mod count;
mod cuts;
mod event;
mod frozen;
mod lost;
mod past;
mod plan;
mod state;
#[cfg(test)]
mod walk;

pub use crate::divide::Mark;
pub use count::Encoder;
pub use cuts::Cuts;
pub use event::{Event, What};
pub use frozen::{Confirm, Frozen, Header, Record, Round, SCHEMA, TITLE, Version};
pub use lost::{Fit, Fits, MarkSeen, Nearby, RingSeen, Seen, Stray, stray};
pub use past::{Return, WentPast};
pub use plan::{Home, Plan};
pub use state::{ASK_WITHIN_MS, Phase, Pressed, State, UNDO};
