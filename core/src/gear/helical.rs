//! A helical wheel, milled with the head geared to the table's screw.
//!
//! Sizes are those of the teeth in the section square to them, where the cutter works:
//! pitch diameter = z·m ÷ cos β, lead = π·z·m ÷ sin β, and the gap is that of a wheel
//! of z ÷ cos³ β teeth, which chooses the cutter (Machinery's Handbook, helical
//! gearing; ISO 21771 has the same sizes as m_t = m_n ÷ cos β and z_n ≈ z ÷ cos³ β).
//!
//! ```
//! use handturn::gear::{Helical, Size, Tooth};
//! use handturn::head::Sense;
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::Hand;
//! // 24 teeth of 10 DP at 45°.
//! let wheel = Helical {
//!     teeth: 24,
//!     tooth: Tooth { size: Size::DiametralPitch(Fraction::whole(10)), ..Tooth::default() },
//!     helix: Angle::from_degrees(Fraction::whole(45))?,
//!     hand: Hand::Right,
//!     face: Length::from_mm(Fraction::whole(20)),
//! };
//! let sizes = wheel.sizes()?;
//! assert!((sizes.pitch_diameter.value / 25.4 - 3.3941).abs() < 0.00005);
//! assert!((sizes.outside_diameter.value / 25.4 - 3.5941).abs() < 0.00005);
//! assert!((sizes.lead.value / 25.4 - 10.6629).abs() < 0.00005);
//! assert!((sizes.virtual_teeth.value - 67.88).abs() < 0.005);
//! assert_eq!(sizes.table_swings, Sense::Anticlockwise);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Tooth;
use super::slant::{Caliper, Slant, UNIT, caliper, within};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::head::Sense;
use crate::measure::given;
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{PI, of},
};
use crate::thread::Hand;

/// A wheel with helical teeth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Helical {
    /// How many teeth.
    pub teeth: u32,
    /// The rack they are cut to, in the section square to the teeth.
    #[doc(alias = "normal module")]
    pub tooth: Tooth,
    /// Angle between teeth and axis at the pitch diameter.
    pub helix: Angle,
    /// Which way the teeth wind.
    pub hand: Hand,
    /// Width of the face, along the axis.
    pub face: Length,
}

/// What a helical wheel measures; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct HelicalSizes {
    /// Pitch diameter.
    pub pitch_diameter: Approx,
    /// Outside diameter: the blank.
    pub outside_diameter: Approx,
    /// Diameter at the bottom of the gaps.
    pub root_diameter: Approx,
    /// Depth of the gaps.
    pub whole_depth: Length,
    /// How far a tooth goes along the axis in one turn.
    pub lead: Approx,
    /// From tooth to tooth along the axis.
    pub axial_pitch: Approx,
    /// How many teeth a straight wheel of the same gaps would have: it chooses the cutter.
    pub virtual_teeth: Approx,
    /// What a tooth caliper reads, square to the teeth.
    pub caliper: Caliper,
    /// How many pitches along the axis the face takes in: from 1 on, two wheels on
    /// parallel shafts always touch somewhere on the face.
    pub overlap: Approx,
    /// Which way the table swings by the helix angle, seen from above, with the cutter's
    /// arbor across it and the cut on top of the work.
    pub table_swings: Sense,
    /// Whether the helix angle is more than tables swing (45°; common practice).
    pub beyond_swing: bool,
}

/// How far the tables of universal mills swing each way, in degrees.
const SWING: i64 = 45;

impl Helical {
    /// Checks every value.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the teeth ([`bounds::WHEEL_TEETH`]) and the helix angle
    /// ([`bounds::HELIX`], in degrees); what [`Tooth::check`] finds; a face out of bounds.
    pub fn check(&self) -> Result<(), Error> {
        bounds::WHEEL_TEETH.check(i64::from(self.teeth))?;
        self.tooth.check()?;
        super::slant::check(self.helix, bounds::HELIX)?;
        given::size(self.face, Field::Face).map(|_| ())
    }

    /// What it measures.
    ///
    /// # Errors
    /// What [`check`](Self::check) finds; [`Cause::Overflow`].
    pub fn sizes(&self) -> Result<HelicalSizes, Error> {
        self.check()?;
        let slant = Slant::of(self.helix, bounds::HELIX)?;
        let (above, below) = (self.tooth.addendum()?, self.tooth.dedendum()?);
        let whole_depth = Length::from_mm(above.mm().checked_add(below.mm())?);
        let straight = of(self.tooth.size.times(Fraction::whole(i64::from(self.teeth)))?.mm());
        let (module, above, below) =
            (of(self.tooth.size.module()?.mm()), of(above.mm()), of(below.mm()));
        let pitch = straight / slant.cos;
        let beside = |height: f64| Approx {
            value: pitch + 2.0 * height,
            bound: UNIT * (pitch * (slant.units + 3.0) + 4.0 * height.abs()),
        };
        let (lead, axial) = (PI * straight / slant.sin, PI * module / slant.sin);
        let teeth = f64::from(self.teeth) / (slant.cos * slant.cos * slant.cos);
        let units = 3.0 * slant.units + 3.0;
        let overlap = of(self.face.mm()) / axial;
        Ok(HelicalSizes {
            pitch_diameter: within(pitch, pitch, slant.units + 2.0),
            outside_diameter: beside(above),
            root_diameter: beside(-below),
            whole_depth,
            lead: within(lead, lead, 6.0),
            axial_pitch: within(axial, axial, 6.0),
            virtual_teeth: within(teeth, teeth, units),
            caliper: caliper(module, above, teeth, units),
            overlap: within(overlap, overlap, 8.0),
            table_swings: table_swings(self.hand),
            beyond_swing: self.helix.degrees()? > Fraction::whole(SWING),
        })
    }
}

/// Which way the table swings, seen from above. A right-handed tooth on top of the work
/// leans clockwise from the axis, so the axis swings anticlockwise to bring it in line
/// with the cutter.
const fn table_swings(hand: Hand) -> Sense {
    match hand {
        Hand::Right => Sense::Anticlockwise,
        Hand::Left => Sense::Clockwise,
    }
}

/// Two helical wheels in mesh.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Crossed {
    /// Angle between the shafts; nought for parallel ones.
    pub shafts: Angle,
    /// Distance of the shafts, in millimetres.
    pub centre_distance: Approx,
}

/// Two helical wheels in mesh: of one hand their helix angles add up to the shafts'
/// angle, of two hands they differ by it.
///
/// # Errors
/// What [`Helical::check`] finds; [`Cause::Conflict`] of [`Field::Module`] or
/// [`Field::PressureAngle`] where their teeth differ.
#[doc(alias = "screw gears")]
pub fn crossed(first: &Helical, second: &Helical) -> Result<Crossed, Error> {
    if first.tooth.size.module()? != second.tooth.size.module()? {
        return Err(Error::new(Field::Module, Cause::Conflict));
    }
    if first.tooth.pressure_angle != second.tooth.pressure_angle {
        return Err(Error::new(Field::PressureAngle, Cause::Conflict));
    }
    let [one, other] = [first.sizes()?.pitch_diameter, second.sizes()?.pitch_diameter];
    let (this, that) = (first.helix.turns(), second.helix.turns());
    let shafts = if first.hand == second.hand {
        this.checked_add(that)?
    } else {
        this.checked_sub(that)?.abs()
    };
    let value = one.value / 2.0 + other.value / 2.0;
    let bound = (one.bound + other.bound) / 2.0 + value * UNIT;
    Ok(Crossed { shafts: Angle::from_turns(shafts), centre_distance: Approx { value, bound } })
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::gear::Size;

    fn wheel(teeth: u32, helix: i64, hand: Hand) -> Helical {
        Helical {
            teeth,
            tooth: Tooth { size: Size::DiametralPitch(Fraction::whole(10)), ..Tooth::default() },
            helix: Angle::from_degrees(Fraction::whole(helix)).unwrap(),
            hand,
            face: Length::from_mm(Fraction::whole(20)),
        }
    }

    #[track_caller]
    fn near(came: Approx, wanted: f64) {
        assert!((came.value - wanted).abs() <= 5e-9 * wanted, "{came:?} {wanted}");
        assert!(came.bound <= 1e-14 * wanted);
    }

    #[test]
    fn at_sixty_degrees_all_is_halved() {
        let sizes = wheel(30, 60, Hand::Left).sizes().unwrap();
        near(sizes.pitch_diameter, 6.0 * 25.4);
        near(sizes.outside_diameter, 6.2 * 25.4);
        near(sizes.root_diameter, 5.75 * 25.4);
        near(sizes.virtual_teeth, 240.0);
        near(sizes.lead, std::f64::consts::PI * 3.0 * 25.4 * 2.0 / 3_f64.sqrt());
        near(sizes.overlap, 20.0 / (std::f64::consts::PI * 2.54) * 0.75_f64.sqrt());
        assert_eq!(sizes.table_swings, Sense::Clockwise);
        assert!(sizes.beyond_swing);
    }

    #[test]
    fn pairs_in_mesh() {
        use Hand::{Left, Right};
        let pair = |a, b| crossed(&a, &b).unwrap();
        let square = pair(wheel(20, 45, Right), wheel(30, 45, Right));
        assert_eq!(square.shafts, Angle::from_turns(Fraction::new(1, 4).unwrap()));
        near(square.centre_distance, 2.5 * 25.4 * 2_f64.sqrt());
        let parallel = pair(wheel(20, 30, Right), wheel(30, 30, Left));
        assert_eq!(parallel.shafts, Angle::ZERO);
        let other = Helical { tooth: Tooth::default(), ..wheel(20, 30, Right) };
        let refused = crossed(&other, &wheel(20, 30, Right)).map(|_| ());
        assert_eq!(refused, Err(Error::new(Field::Module, Cause::Conflict)));
    }

    #[test]
    fn what_is_no_helix() {
        let cause = |teeth, degrees| wheel(teeth, degrees, Hand::Right).sizes().map(|_| ());
        let range =
            |field, least, greatest| Err(Error::new(field, Cause::OutOfRange { least, greatest }));
        assert_eq!(cause(24, 90), range(Field::Helix, 1, 80));
        assert_eq!(cause(24, 0), range(Field::Helix, 1, 80));
        assert_eq!(cause(3, 45), range(Field::Teeth, 4, 5_000));
    }
}
