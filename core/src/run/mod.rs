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
//! use handturn::head::{Head, SET_A, plates_of};
//! use handturn::run::{Frozen, Phase, Pressed, State};
//!
//! // The clock's 64 wheel: 10 holes on the 16 circle.
//! let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
//! let parts = Parts { count: 64, every: 1 };
//! let answer = answer::<4>(&Question::Parts(parts), &head)?;
//! let way = answer.best(Order::Closest).expect("64 is plain").way;
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
//! assert_eq!(events.len(), 63 + 1 + 1, "63 moves, the last cut, the closing move");
//! let home = plan.home()?.expect("equal parts close").place;
//! assert_eq!((home.handle.num(), home.pin.map(|pin| pin.number)), (40, Some(0)));
//!
//! // The place is found again from what was stored.
//! let read = State::replay(&plan, events.iter().copied().take(36)).expect("it was written so");
//! assert_eq!((read.index(), read.left(&plan)), (36, 27), "at 37 of 64, 27 to go");
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

pub use count::Encoder;
pub use cuts::Cuts;
pub use event::{Event, What};
pub use frozen::{Confirm, Frozen, Header, Record, Round, SCHEMA, TITLE, Version};
pub use lost::{Fit, Fits, MarkSeen, Nearby, RingSeen, Seen, Stray, stray};
pub use past::{Return, WentPast};
pub use plan::{Home, Mark, Plan};
pub use state::{ASK_WITHIN_MS, Phase, Pressed, State, UNDO};
