//! Where things stand at a position, and what the hands do between two.
use crate::error::{Cause, Error, Field};
use crate::head::{Arms, Sense};
use crate::list::List;
use crate::measure::Angle;
use crate::number::Fraction;

const OVERFLOW: Error = Error::new(Field::Position, Cause::Overflow);

/// A hole, notch or dial mark by its true number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct At {
    /// Number of the hole, notch or mark, from 0 at the start.
    pub number: u32,
    /// Holes in the circle, notches of the plate or marks of the dial (those of a
    /// handwheel times the parts of its vernier).
    pub of: u32,
}

impl At {
    /// The true number after `count` holes or marks from 0, on a circle or dial of `of`.
    pub(super) fn counted(count: i64, of: u32) -> Result<Self, Error> {
        let number = count.checked_rem_euclid(i64::from(of)).ok_or(OVERFLOW)?;
        Ok(Self { number: u32::try_from(number).map_err(|_| OVERFLOW)?, of })
    }
}

/// Where everything stands at one position.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Place {
    /// Position, from 0; the closed end where a question closes.
    pub index: u32,
    /// How far the drawing wants the work turned since position 0, whole turns
    /// counted, in the order in which the way comes to its parts.
    pub wanted: Angle,
    /// How far this way has turned it.
    pub stands: Angle,
    /// Whole and part turns the handle has made on the plate since position 0.
    pub handle: Fraction,
    /// Hole under the handle's pin.
    pub pin: Option<At>,
    /// Hole over the back pin (compound).
    pub back_pin: Option<At>,
    /// Reading of the handwheel dial or the fine dial. A fine dial that stands
    /// below its zero counts down from its number of marks.
    pub dial: Option<At>,
    /// Notch of the direct plate.
    pub notch: Option<At>,
}

impl Place {
    /// By how much the work stands too far (or, below nought, not far enough).
    ///
    /// # Errors
    /// [`crate::Cause::Overflow`].
    pub fn error(&self) -> Result<Angle, Error> {
        Ok(Angle::from_turns(self.stands.turns().checked_sub(self.wanted.turns())?))
    }
}

/// What the hands do between two positions, leg by leg.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Move {
    /// The legs in the order they are made: two for compound and fine dial, else one.
    pub legs: List<Leg, 3>,
}

/// What a leg moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Part {
    /// The handle with its pin, over the standing plate.
    Pin,
    /// Plate and handle together, the back pin out.
    BackPin,
    /// The handwheel against its dial; there is no pin.
    Handwheel,
    /// The fine dial, which shifts the plate.
    FineDial,
    /// The work spindle with its direct plate, the worm out of mesh.
    Spindle,
}

/// One leg of a move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Leg {
    /// What moves.
    pub part: Part,
    /// Which way.
    pub sense: Sense,
    /// Whole turns.
    pub turns: u32,
    /// Holes, notches or marks beyond the whole turns.
    pub spaces: u32,
    /// Where it starts.
    pub from: At,
    /// Where it ends.
    pub to: At,
    /// How the sector arms stand for it; none where they cannot help.
    pub arms: Option<ArmsSet>,
}

impl Leg {
    /// The leg of `part` from count `from` to count `to`, counted from 0 on a
    /// circle or dial of `of`: clockwise where the count climbs, or, with the
    /// back pin, where it falls. No arms are set.
    pub(super) fn between(part: Part, from: i64, to: i64, of: u32) -> Result<Self, Error> {
        let count = to.checked_sub(from).ok_or(OVERFLOW)?;
        // The back pin stands still: numbers climb under it as the plate goes back.
        let clockwise = if part == Part::BackPin { count < 0 } else { count >= 0 };
        let sense = if clockwise { Sense::Clockwise } else { Sense::Anticlockwise };
        let size = count.unsigned_abs();
        let narrow = |n: Option<u64>| n.and_then(|n| u32::try_from(n).ok()).ok_or(OVERFLOW);
        Ok(Self {
            part,
            sense,
            turns: narrow(size.checked_div(u64::from(of)))?,
            spaces: narrow(size.checked_rem(u64::from(of)))?,
            from: At::counted(from, of)?,
            to: At::counted(to, of)?,
            arms: None,
        })
    }

    /// The same leg with the sector arms set for it.
    pub(super) fn with_arms(self, arms: Arms) -> Self {
        Self { arms: ArmsSet::of(self.spaces, self.from.of, arms), ..self }
    }
}

impl Move {
    /// A move of `legs`, at most three.
    pub(super) fn of(legs: &[Leg]) -> Result<Self, Error> {
        let legs = List::from_slice(legs);
        Ok(Self { legs: legs.ok_or(Error::new(Field::Record, Cause::TooMany { most: 3 }))? })
    }
}

/// A setting of the sector arms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ArmsSet {
    /// Hole spaces between the arms.
    pub spaces: u32,
    /// Holes that show between them, counting the one the pin is in: one more.
    pub show: u32,
    /// The arms can't open far enough, so they stand to the rest of the circle:
    /// one turn more, less this.
    pub rest: bool,
}

impl ArmsSet {
    /// How arms of opening `arms` are set for a move of `spaces` beyond whole
    /// turns on a circle of `holes`. None for whole turns, and where the arms
    /// neither close nor open far enough.
    #[must_use]
    pub fn of(spaces: u32, holes: u32, arms: Arms) -> Option<Self> {
        let opens = |spaces: u32| {
            Fraction::new(i64::from(spaces), i64::from(holes))
                .is_ok_and(|t| arms.least.turns() <= t && t <= arms.greatest.turns())
        };
        if spaces == 0 || spaces >= holes {
            return None;
        }
        let rest = holes.checked_sub(spaces)?;
        if opens(spaces) {
            return Some(Self { spaces, show: spaces.checked_add(1)?, rest: false });
        }
        if opens(rest) {
            return Some(Self { spaces: rest, show: rest.checked_add(1)?, rest: true });
        }
        None
    }
}

/// How wrong a way is, at the work. All three are nought for an exact way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Errors {
    /// The greatest distance of any position from where it is wanted.
    pub worst: Angle,
    /// The greatest difference of error between neighbours on the work.
    pub adjacent: Angle,
    /// How far the work is from home after the closing move.
    pub closing: Angle,
}

impl Errors {
    /// No error at all.
    pub const NONE: Self = Self { worst: Angle::ZERO, adjacent: Angle::ZERO, closing: Angle::ZERO };

    /// Whether all three are nought.
    #[must_use]
    pub fn is_none(&self) -> bool {
        *self == Self::NONE
    }
}
