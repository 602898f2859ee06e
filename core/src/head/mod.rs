//! What a dividing head has: worm, plates and circles, direct plate, gears,
//! dials, reach and slack. Plain data, checked once by [`Head::check`].
pub(crate) mod check;
pub mod read;
mod sets;

pub use sets::{GEARS, SET_A, SET_B, gears_of, plates_of};

use crate::bounds::{MAX_CIRCLES, MAX_DIRECT, MAX_GEARS, MAX_PLATES};
use crate::list::List;
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// A dividing head as its owner has it.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Head {
    /// Handle turns for one turn of the work; 40 for a 40 : 1 worm.
    pub ratio: Fraction,
    /// Index plates; each side of a two-sided plate is its own plate.
    pub plates: List<Plate, MAX_PLATES>,
    /// Notches of direct plates, or teeth of gears used as such.
    pub direct: List<u16, MAX_DIRECT>,
    /// Whether the worm drops out of mesh, as direct indexing needs.
    pub worm_drops_out: bool,
    /// Change gears owned.
    pub gears: List<Gear, MAX_GEARS>,
    /// How change gears can be mounted between spindle and worm shaft.
    pub mounting: Mounting,
    /// Which way the work turns for a clockwise handle, seen from the handle
    /// and from the work's front.
    pub work_turns: Sense,
    /// What holds the plate.
    pub plate_stop: PlateStop,
    /// Whether the work spindle has a clamp.
    pub spindle_clamp: bool,
    /// Least and greatest opening of the sector arms.
    pub arms: Arms,
    /// Slack between worm and wheel, in handle turns.
    pub slack: Fraction,
    /// Whether the spindle is tilted out of level.
    pub tilted: bool,
    /// Degree ring on the spindle: the turn of the work, seen from its front,
    /// for which its reading climbs.
    pub degree_ring: Option<Sense>,
    /// Least and greatest circle radius the handle's pin reaches.
    pub reach: Option<Reach>,
    /// Diameter of the handle's pin.
    pub pin: Option<Length>,
    /// Dial on the handwheel of a head used without plates.
    pub handwheel: Option<Handwheel>,
    /// Graduated dial that shifts the plate.
    pub fine_dial: Option<FineDial>,
    /// Diameter of the work, where errors are shown as lengths.
    pub work_diameter: Length,
}

/// One side of an index plate.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Plate {
    /// Its hole circles.
    pub circles: List<Circle, MAX_CIRCLES>,
}

/// One circle of equally spaced holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Circle {
    /// Holes in the circle.
    pub holes: u16,
    /// Radius of the circle, where known.
    pub radius: Option<Length>,
}

/// A change gear and how many of it are owned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Gear {
    /// Teeth.
    pub teeth: u16,
    /// How many are owned.
    pub count: u8,
}

/// How change gears can be mounted on the head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Mounting {
    /// Distance from spindle stud to worm stud, in teeth of pitch diameter
    /// (two gears of `t` teeth in mesh stand `t` apart); 0 when it is not known
    /// and is not checked.
    pub distance: u16,
    /// Teeth by which a gear's rim must clear the next stud's gear.
    pub margin: u16,
    /// Greatest number of idlers the head takes.
    pub most_idlers: u8,
    /// Whether a simple train with ONE idler turns the plate the same way as
    /// the handle, as on a head with a plain 1 : 1 take-off; the other way round otherwise.
    pub one_idler_follows: bool,
    /// Whether trains of four gears can be mounted.
    pub four_gears: bool,
}

/// A sense of turning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Sense {
    /// As a clock's hands.
    Clockwise,
    /// Against a clock's hands.
    Anticlockwise,
}

/// What holds the index plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum PlateStop {
    /// The plate is fixed to the body.
    Fixed,
    /// The stop is a back pin that withdraws, so the plate can turn or be re-set.
    Withdraws,
}

/// Opening of the sector arms, as angles of the plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Arms {
    /// Least angle between the arms' working edges.
    pub least: Angle,
    /// Greatest angle between the arms' working edges.
    pub greatest: Angle,
}

/// Circle radii within the handle's reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Reach {
    /// Least radius.
    pub least: Length,
    /// Greatest radius.
    pub greatest: Length,
}

/// A dial on the handwheel, used without plates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Handwheel {
    /// Marks on the dial, for one turn of the handle.
    pub marks: u32,
    /// Parts into which the vernier divides one mark; 1 without a vernier.
    pub vernier: u32,
}

/// A graduated dial that shifts the plate under the pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct FineDial {
    /// By how much one turn of the dial turns the plate.
    pub shift: Angle,
    /// Marks on the dial.
    pub marks: u32,
    /// How far the plate can be shifted to each side of the dial's zero.
    pub travel: Angle,
    /// Slack of the dial, in marks: at most a turn.
    pub slack: Fraction,
}

impl Default for Head {
    /// A level 40 : 1 head with no plates yet and common practice elsewhere:
    /// arms from 10° to 350°, a back pin that withdraws, half a turn of slack
    /// or less.
    fn default() -> Self {
        let part = |num, den| Fraction::new(num, den).unwrap_or(Fraction::ZERO);
        Self {
            ratio: Fraction::whole(40),
            plates: List::new(),
            direct: List::from_slice(&[24]).unwrap_or_default(),
            worm_drops_out: true,
            gears: List::new(),
            mounting: Mounting::default(),
            work_turns: Sense::Clockwise,
            plate_stop: PlateStop::Withdraws,
            spindle_clamp: true,
            arms: Arms {
                least: Angle::from_turns(part(1, 36)),
                greatest: Angle::from_turns(part(35, 36)),
            },
            slack: part(1, 10),
            tilted: false,
            degree_ring: Some(Sense::Clockwise),
            reach: None,
            pin: None,
            handwheel: None,
            fine_dial: None,
            work_diameter: Length::from_mm(part(381, 5)),
        }
    }
}

impl Default for Mounting {
    /// Two idlers at most, one of them making the plate follow the handle;
    /// a margin of two teeth; the distance of the studs not known.
    fn default() -> Self {
        Self { distance: 0, margin: 2, most_idlers: 2, one_idler_follows: true, four_gears: true }
    }
}
