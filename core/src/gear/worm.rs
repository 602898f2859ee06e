//! A worm and its wheel.
//!
//! The worm is a screw of trapezoid thread: lead = starts × axial pitch, tan of the lead
//! angle = lead ÷ (π × pitch diameter), and its depths are those of a rack of the axial
//! pitch (0.3183 and 0.6866 of it by the old rule; Turning and Boring, F. D. Jones,
//! 1914). The wheel has the axial pitch round its pitch circle, a throat that follows
//! the worm, and gashes set over by the lead angle (Machinery's Handbook, worm gearing).
//!
//! Free-hobbed, a hob on a blank without gashes, the blank rolls on the hob's crest at
//! first: so many teeth begin as pitches go round it, a whole number only on a blank of
//! the pitch diameter, within half a tooth either way. Sunk to the whole depth the hob
//! then stands an addendum nearer than the worm of a gashed wheel would. (Rules of
//! arithmetic; what the blank does under the hob is seen in its first marks.)
//!
//! ```
//! use handturn::gear::{Axial, DepthRule, Worm};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::Hand;
//! // Three starts of 1/4 in pitch on 1.25 in.
//! let inches = |n, d| Length::from_inches(Fraction::new(n, d)?);
//! let worm = Worm {
//!     starts: 3,
//!     pitch: Axial::Pitch(inches(1, 4)?),
//!     pressure_angle: Angle::from_degrees(Fraction::new(29, 2)?)?,
//!     rule: DepthRule::Old,
//!     diameter: inches(5, 4)?,
//!     hand: Hand::Right,
//! };
//! let sizes = worm.sizes()?;
//! assert_eq!(sizes.lead.length, inches(3, 4)?);
//! assert!((sizes.lead_angle.value - (10.0 + 48.7 / 60.0)).abs() < 0.001);
//! assert!((sizes.normal_pitch.value / 25.4 - 0.24556).abs() < 0.000005);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::slant::{UNIT, within};
use super::{DepthRule, Size, Tooth};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::given::{from_nought, size, um_down};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{PI, atan_turns, of, sqrt, tan_turns},
};
use crate::thread::Hand;
use crate::thread::gearing::Lead;

/// From thread to thread along the worm's axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Axial {
    /// By the wheel's module or diametral pitch, in the section along the worm's axis.
    Size(Size),
    /// The pitch itself.
    #[doc(alias = "linear pitch")]
    Pitch(Length),
}

/// A worm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Worm {
    /// How many threads.
    pub starts: u8,
    /// Their pitch.
    pub pitch: Axial,
    /// Half the angle between the flanks, in the section along the axis.
    pub pressure_angle: Angle,
    /// How deep they are cut.
    pub rule: DepthRule,
    /// Pitch diameter.
    pub diameter: Length,
    /// Which way they wind; the wheel's teeth wind the same way.
    pub hand: Hand,
}

/// What a worm measures; lengths in millimetres, angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct WormSizes {
    /// Its lead, to gear a lathe for.
    pub lead: Lead,
    /// From thread to thread along the axis.
    pub axial_pitch: Approx,
    /// From thread to thread, square to them.
    pub normal_pitch: Approx,
    /// The lead angle at the pitch diameter.
    pub lead_angle: Approx,
    /// Outside diameter.
    pub outside_diameter: Approx,
    /// Diameter at the bottom of the thread.
    pub root_diameter: Approx,
    /// Depth of the thread.
    pub whole_depth: Approx,
    /// Width of the tool's end, in the section along the axis.
    pub tool_end: Approx,
}

/// A worm and its wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct WormPair {
    /// The worm.
    pub worm: Worm,
    /// Teeth of the wheel.
    pub teeth: u32,
    /// Width of the wheel's face.
    pub face: Length,
    /// How much of the depth the gashes leave for the hob.
    pub leave: Length,
}

/// What a worm wheel measures, and how it is cut; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct WormWheel {
    /// Turns of the worm for one of the wheel.
    pub ratio: Fraction,
    /// Distance of worm and wheel.
    pub centre_distance: Approx,
    /// Pitch diameter of the wheel.
    pub pitch_diameter: Approx,
    /// Diameter in the middle of the throat; the whole blank of a flat wheel.
    pub throat_diameter: Approx,
    /// Radius that the throat is turned to.
    pub throat_radius: Approx,
    /// Outside diameter over the corners of a throated face.
    pub outside_diameter: Approx,
    /// Width of face beyond which the worm touches nothing: the chord of its outside
    /// at the wheel's pitch circle.
    pub useful_face: Approx,
    /// Angle by which the gashes are set over, in degrees: the worm's lead angle.
    pub gash_angle: Approx,
    /// How deep they go in the middle of the throat.
    pub gash_depth: Approx,
    /// How deep the hob goes.
    pub whole_depth: Approx,
    /// Outside diameter of the hob: the worm's and the clearance twice.
    pub hob_diameter: Approx,
    /// Free-hobbed: the blank on which just the teeth wanted begin.
    pub free_blank: Approx,
    /// Free-hobbed: as many millimetres larger or smaller, and another count is as near.
    pub free_blank_within: Approx,
    /// Free-hobbed: distance of worm and wheel when the hob has gone to its depth.
    pub free_centre_distance: Approx,
}

/// A worm as floats, in millimetres.
struct Measured {
    module: f64,
    above: f64,
    below: f64,
    diameter: f64,
}

impl Worm {
    /// The worm's lead, to be handed to a lathe's change gears.
    ///
    /// # Errors
    /// Starts, pitch or lead out of bounds.
    pub fn lead(&self) -> Result<Lead, Error> {
        match self.pitch {
            Axial::Pitch(pitch) => Lead::of_pitch(pitch, self.starts),
            Axial::Size(Size::Module(module)) => Lead::of_module(module, self.starts),
            Axial::Size(Size::DiametralPitch(dp)) => Lead::of_diametral_pitch(dp, self.starts),
        }
    }

    /// What it measures.
    ///
    /// # Errors
    /// Values out of bounds; [`Cause::OutOfLengths`] of [`Field::Diameter`] for a pitch
    /// diameter that leaves nothing at the bottom of the thread.
    pub fn sizes(&self) -> Result<WormSizes, Error> {
        let Measured { module, above, below, diameter } = self.measured()?;
        let lead = self.lead()?;
        let pitch = PI * module;
        let tangent = lead.mm().value / (PI * diameter);
        let angle = 360.0 * atan_turns(tangent);
        let flank = tan_turns(of(self.pressure_angle.turns()));
        let normal = pitch / sqrt(1.0 + tangent * tangent);
        let tool = pitch / 2.0 - 2.0 * below * flank;
        Ok(WormSizes {
            lead,
            axial_pitch: within(pitch, pitch, 5.0),
            normal_pitch: within(normal, normal, 16.0),
            lead_angle: within(angle, angle, 16.0),
            outside_diameter: sum(diameter, 2.0 * above),
            root_diameter: sum(diameter, -2.0 * below),
            whole_depth: sum(above, below),
            tool_end: within(tool, pitch, 16.0),
        })
    }

    fn measured(&self) -> Result<Measured, Error> {
        bounds::STARTS.check(i64::from(self.starts))?;
        // The rule for a module of a millimetre; the old rule's clearance goes with it.
        let one = Size::Module(Length::from_mm(Fraction::ONE));
        let tooth = Tooth { size: one, pressure_angle: self.pressure_angle, rule: self.rule };
        tooth.check()?;
        let module = match self.pitch {
            Axial::Size(size) => {
                size.check()?;
                of(size.module()?.mm())
            }
            Axial::Pitch(pitch) => {
                let least = Fraction::new(i64::from(bounds::PITCH_UM.least), 1000)?;
                let greatest = Fraction::new(i64::from(bounds::PITCH_UM.greatest), 1000)?;
                if pitch.mm() < least || pitch.mm() > greatest {
                    let (least_um, greatest_um) =
                        (bounds::PITCH_UM.least, bounds::PITCH_UM.greatest);
                    return Err(Error::new(
                        Field::Pitch,
                        Cause::OutOfLengths { least_um, greatest_um },
                    ));
                }
                of(pitch.mm()) / PI
            }
        };
        let more = match self.rule {
            // The fine rule's 0.002 in does not grow with the module.
            DepthRule::Fine => 0.0508 * (1.0 - module),
            _ => 0.0,
        };
        let above = of(tooth.addendum()?.mm()) * module;
        let below = of(tooth.dedendum()?.mm()) * module + more;
        let diameter = size(self.diameter, Field::Diameter)?;
        if diameter <= 2.0 * above.max(below) {
            let least_um = um_down(2.0 * above.max(below)).saturating_add(1);
            let cause = Cause::OutOfLengths { least_um, greatest_um: bounds::LENGTH_UM.1 };
            return Err(Error::new(Field::Diameter, cause));
        }
        Ok(Measured { module, above, below, diameter })
    }
}

impl WormPair {
    /// What the wheel measures, and how it is cut.
    ///
    /// # Errors
    /// What [`Worm::sizes`] finds; [`Cause::OutOfRange`] for the teeth
    /// ([`bounds::WHEEL_TEETH`]); [`Cause::OutOfLengths`] for a face as wide as the
    /// throat's circle, or for gashes that leave more than the depth.
    pub fn wheel(&self) -> Result<WormWheel, Error> {
        let Measured { module, above, below, diameter } = self.worm.measured()?;
        let gash_angle = self.worm.sizes()?.lead_angle;
        bounds::WHEEL_TEETH.check(i64::from(self.teeth))?;
        let (face, leave) = (size(self.face, Field::Face)?, from_nought(self.leave, Field::Depth)?);
        let radius = diameter / 2.0 - above;
        let least = |field, greatest: f64| {
            let cause = Cause::OutOfLengths { least_um: 1, greatest_um: um_down(greatest) };
            Err(Error::new(field, cause))
        };
        if face >= 2.0 * radius {
            return least(Field::Face, 2.0 * radius);
        }
        let depth = above + below;
        if leave >= depth {
            return least(Field::Depth, depth);
        }
        let pitch = module * f64::from(self.teeth);
        let centre = pitch / 2.0 + diameter / 2.0;
        let chord = sqrt(radius * radius - face * face / 4.0);
        let outside = 2.0 * (centre - chord);
        let (worm, half) = (diameter / 2.0 + above, diameter / 2.0);
        let useful = 2.0 * sqrt(worm * worm - half * half);
        // How the root feels an error of what is under it.
        let feels = |size: f64, root: f64| size * size / root;
        let around = pitch + diameter + 4.0 * (above + below);
        let near = |value: f64| within(value, around, 8.0);
        Ok(WormWheel {
            ratio: Fraction::new(i64::from(self.teeth), i64::from(self.worm.starts))?,
            centre_distance: near(centre),
            pitch_diameter: within(pitch, pitch, 4.0),
            throat_diameter: near(pitch + 2.0 * above),
            throat_radius: near(radius),
            outside_diameter: within(outside, around + feels(diameter, chord), 8.0),
            useful_face: within(useful, feels(worm, useful), 32.0),
            gash_angle,
            gash_depth: within(depth - leave, depth, 8.0),
            whole_depth: within(depth, depth, 8.0),
            hob_diameter: near(diameter + 2.0 * below),
            free_blank: within(pitch, pitch, 4.0),
            free_blank_within: within(module / 2.0, module, 4.0),
            free_centre_distance: near(centre - above),
        })
    }
}

/// A sum of two lengths that are within a few units each.
fn sum(one: f64, other: f64) -> Approx {
    Approx { value: one + other, bound: UNIT * 6.0 * (one.abs() + other.abs()) }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    /// Module 2, 20 mm, one start.
    fn worm() -> Worm {
        Worm {
            starts: 1,
            pitch: Axial::Size(Size::Module(mm(2, 1))),
            pressure_angle: Angle::from_degrees(Fraction::whole(20)).unwrap(),
            rule: DepthRule::Coarse,
            diameter: mm(20, 1),
            hand: Hand::Right,
        }
    }

    fn pair() -> WormPair {
        WormPair { worm: worm(), teeth: 40, face: mm(12, 1), leave: mm(1, 5) }
    }

    #[track_caller]
    fn near(came: Approx, wanted: f64) {
        assert!((came.value - wanted).abs() <= came.bound, "{came:?} {wanted}");
        assert!(came.bound < 1e-12);
    }

    #[test]
    fn a_worm_and_wheel_by_module() {
        let worm = worm().sizes().unwrap();
        assert_eq!(worm.lead, Lead { length: mm(2, 1), times_pi: true });
        near(worm.outside_diameter, 24.0);
        near(worm.root_diameter, 15.0);
        near(worm.whole_depth, 4.5);
        let wheel = pair().wheel().unwrap();
        assert_eq!(wheel.ratio, Fraction::whole(40));
        near(wheel.centre_distance, 50.0);
        near(wheel.pitch_diameter, 80.0);
        near(wheel.throat_diameter, 84.0);
        near(wheel.throat_radius, 8.0);
        near(wheel.outside_diameter, 2.0 * (50.0 - 28_f64.sqrt()));
        near(wheel.useful_face, 2.0 * 44_f64.sqrt());
        near(wheel.hob_diameter, 25.0);
        near(wheel.gash_depth, 4.3);
        // The hob's crest on the blank, sunk by the whole depth.
        near(wheel.free_blank, 80.0);
        near(wheel.free_centre_distance, 80.0 / 2.0 + 25.0 / 2.0 - 4.5);
    }

    #[test]
    fn the_fine_rule_adds_its_two_thou_once() {
        let pitch = Axial::Size(Size::DiametralPitch(Fraction::whole(32)));
        let worm = Worm { pitch, rule: DepthRule::Fine, ..worm() };
        near(worm.sizes().unwrap().whole_depth, (2.2 / 32.0 + 0.002) * 25.4);
    }

    #[test]
    fn what_is_no_worm() {
        let refused = |pair: WormPair| pair.wheel().map_err(|e| (e.field, e.cause)).map(|_| ());
        let lengths = |least_um, greatest_um| Cause::OutOfLengths { least_um, greatest_um };
        let thin = Worm { diameter: mm(5, 1), ..worm() };
        let came = refused(WormPair { worm: thin, ..pair() });
        assert_eq!(came, Err((Field::Diameter, lengths(5_001, 10_000_000))));
        let came = refused(WormPair { face: mm(16, 1), ..pair() });
        assert_eq!(came, Err((Field::Face, lengths(1, 16_000))));
        let came = refused(WormPair { leave: mm(9, 2), ..pair() });
        assert_eq!(came, Err((Field::Depth, lengths(1, 4_500))));
        let none = Worm { starts: 0, ..worm() };
        let range = Cause::OutOfRange { least: 1, greatest: 60 };
        assert_eq!(refused(WormPair { worm: none, ..pair() }), Err((Field::Starts, range)));
        let coarse = Worm { pitch: Axial::Pitch(mm(201, 1)), ..worm() };
        let came = refused(WormPair { worm: coarse, ..pair() });
        assert_eq!(came, Err((Field::Pitch, lengths(50, 200_000))));
    }
}
