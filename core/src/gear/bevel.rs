//! A pair of bevel wheels, cut with the head tilted.
//!
//! Pitch cones roll on each other: tan γ = sin Σ ÷ (Z/z + cos Σ) for shafts at Σ, and
//! each wheel's gap is that of a straight wheel of z ÷ cos γ teeth (back cone; A
//! Practical Treatise on Milling and Milling Machines, 1914; Machinery's Handbook,
//! bevel gearing). The face takes in a third of the cone distance at most.
//!
//! *Tapering* depth is what most drawings ask for: size and depth are those of the large
//! end, all cones meet in the apex, the head tilts to the bottom of the gaps.
//!
//! *Parallel* depth can be cut with the cutter of a straight wheel. Its size is that of
//! the small end; the depth stays the same along the face, so tips and bottoms run
//! parallel to the pitch cone and the head tilts to that. A first cut goes through the
//! middle. For each flank the work then turns a quarter of its pitch and the table moves
//! π/4 of the cutter's module after it: at the small end the cutter goes through the
//! same gap again, at the large end it opens half of what lacks. (Worked out: a gap at
//! radius r moves by r × π/2z as the work turns, so the ends part by π/4 × the
//! difference of their modules, which is half the lack of the gap.)
//!
//! ```
//! use handturn::gear::{Bevel, Depth, Size, Tooth};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // 16 and 32 teeth, module 2 at the large end, shafts square to each other.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let pair = Bevel {
//!     teeth: [16, 32],
//!     tooth: Tooth { size: Size::Module(mm(2)), ..Tooth::default() },
//!     shafts: Angle::from_degrees(Fraction::whole(90))?,
//!     face: mm(10),
//!     depth: Depth::Tapering,
//! }.sizes()?;
//! let [pinion, wheel] = pair.wheels;
//! assert!((pinion.pitch_angle.value - 26.565).abs() < 0.001);
//! assert!((wheel.pitch_angle.value - 63.435).abs() < 0.001);
//! assert!((wheel.virtual_teeth.value - 71.55).abs() < 0.01);
//! assert!((pair.cone_distance.value - 35.777).abs() < 0.001);
//! assert!(!pair.too_wide);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Tooth;
use super::slant::{Caliper, caliper, check, within};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::given::{size, um_down};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{PI, atan_turns, cos_turns, of, sin_turns, sqrt},
};

/// How the depth goes along the face, and which end the size is that of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Depth {
    /// The same all along; the size is the cutter's, at the small end.
    #[default]
    Parallel,
    /// Towards the apex; the size is that of the large end.
    Tapering,
}

/// A pair of bevel wheels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Bevel {
    /// Teeth of both.
    pub teeth: [u32; 2],
    /// The rack they are cut to, at the small or at the large end.
    pub tooth: Tooth,
    /// Angle between the shafts.
    pub shafts: Angle,
    /// Width of the face, along the cone.
    pub face: Length,
    /// How the depth goes along it.
    pub depth: Depth,
}

/// What a pair of bevel wheels measures; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct BevelSizes {
    /// From the apex along the pitch cone to the large end.
    pub cone_distance: Approx,
    /// The widest face that is usual: a third of the cone distance.
    pub widest_face: Approx,
    /// Whether the face is wider.
    pub too_wide: bool,
    /// Module at the large end.
    pub large_module: Approx,
    /// Module at the small end: the cutter must go through a gap of this size.
    pub small_module: Approx,
    /// Depth of the gaps at the large end.
    pub whole_depth: Length,
    /// Parallel depth: how far the table moves after the work, for each flank.
    pub offset: Option<Approx>,
    /// Both wheels.
    pub wheels: [BevelWheel; 2],
}

/// What one bevel wheel measures, and how it is set up; lengths in millimetres, angles in
/// degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct BevelWheel {
    /// How many teeth.
    pub teeth: u32,
    /// Between axis and pitch cone.
    pub pitch_angle: Approx,
    /// Pitch diameter at the large end.
    pub pitch_diameter: Approx,
    /// Outside diameter, over the tips at the large end.
    pub outside_diameter: Approx,
    /// From the apex along the axis to the tips of the large end.
    pub apex_to_tips: Approx,
    /// Between axis and the cone of the tips: what the blank is turned to.
    pub face_angle: Approx,
    /// Between axis and the back of the blank, which is square to the pitch cone.
    pub back_angle: Approx,
    /// Between axis and the bottom of the gaps: how far the head tilts up from level.
    pub cutting_angle: Approx,
    /// Between pitch cone and tips; nought at parallel depth.
    pub addendum_angle: Approx,
    /// Between pitch cone and the bottom of the gaps; nought at parallel depth.
    pub dedendum_angle: Approx,
    /// How many teeth a straight wheel of the same gaps would have: it chooses the cutter.
    pub virtual_teeth: Approx,
    /// What a tooth caliper reads at the large end.
    pub caliper: Caliper,
    /// Parallel depth: how far the work turns for each flank, a quarter of its pitch.
    pub roll: Option<Angle>,
}

/// Least cosine of a pitch angle: beyond it a wheel is a crown wheel.
const LEAST_COSINE: f64 = 0.01;

/// The pair as floats, in millimetres.
struct Cone {
    module: f64,
    above: f64,
    below: f64,
    /// From the apex to both ends.
    large: f64,
    small: f64,
    /// Units of rounding that all of this may be off, relative to the whole.
    units: f64,
}

impl Bevel {
    /// Checks every value.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the teeth ([`bounds::WHEEL_TEETH`]) and for the shafts
    /// ([`bounds::SHAFTS`], in degrees); what [`Tooth::check`] finds; a face out of bounds.
    pub fn check(&self) -> Result<(), Error> {
        for teeth in self.teeth {
            bounds::WHEEL_TEETH.check(i64::from(teeth))?;
        }
        self.tooth.check()?;
        check(self.shafts, bounds::SHAFTS)?;
        size(self.face, Field::Face).map(|_| ())
    }

    /// What both measure.
    ///
    /// # Errors
    /// What [`check`](Self::check) finds; [`Cause::Conflict`] of [`Field::Shafts`] where one
    /// wheel would be a crown wheel or cut inside; [`Cause::OutOfLengths`] for a face that
    /// reaches the apex, or at parallel depth goes over half the way to it.
    pub fn sizes(&self) -> Result<BevelSizes, Error> {
        self.check()?;
        let turns = of(self.shafts.turns());
        let (sin, cos) = (sin_turns(turns), cos_turns(turns));
        let [one, other] = self.teeth.map(f64::from);
        // z₁ : z₂ as sides that stand at the shafts' angle; their sum is the apex's.
        let apex = sqrt(one * one + other * other + 2.0 * one * other * cos);
        let both = (one + other) / apex;
        let (above, below) = (self.tooth.addendum()?, self.tooth.dedendum()?);
        let module = of(self.tooth.size.module()?.mm());
        let (face, given) = (of(self.face.mm()), module * apex / (2.0 * sin));
        if face >= given {
            let cause = Cause::OutOfLengths { least_um: 1, greatest_um: um_down(given) };
            return Err(Error::new(Field::Face, cause));
        }
        let (large, small) = match self.depth {
            Depth::Parallel => (given + face, given),
            Depth::Tapering => (given, given - face),
        };
        let (above_mm, below_mm) = (of(above.mm()), of(below.mm()));
        let units = 8.0 + 4.0 * both * both + 4.0 / sin;
        let cone = Cone { module, above: above_mm, below: below_mm, large, small, units };
        let wheel = |teeth: u32, own: f64, mate: f64| {
            let (rise, run) = (own * sin, mate + own * cos);
            if run < LEAST_COSINE * apex {
                return Err(Error::new(Field::Shafts, Cause::Conflict));
            }
            let units = units + 4.0 * (own + mate) / run;
            self.wheel(teeth, [rise / apex, run / apex, units], &cone)
        };
        let [first, second] = self.teeth;
        let wheels = [wheel(first, one, other)?, wheel(second, other, one)?];
        let end = |at: f64| within(module * at / given, module * large / given, units + 8.0);
        Ok(BevelSizes {
            cone_distance: within(large, large, units),
            widest_face: within(large / 3.0, large, units),
            too_wide: 3.0 * face > large,
            large_module: end(large),
            small_module: end(small),
            whole_depth: Length::from_mm(above.mm().checked_add(below.mm())?),
            offset: match self.depth {
                Depth::Parallel => Some(within(PI * module / 4.0, module, 4.0)),
                Depth::Tapering => None,
            },
            wheels,
        })
    }

    /// One wheel, from sine and cosine of its pitch angle and how far off they may be.
    fn wheel(
        &self,
        teeth: u32,
        [sin, cos, units]: [f64; 3],
        at: &Cone,
    ) -> Result<BevelWheel, Error> {
        let degrees = |tangent: f64| 360.0 * atan_turns(tangent);
        let angle = |value: f64| within(value, 90.0, units);
        let pitch = degrees(sin / cos);
        let (tips, bottom, roll) = match self.depth {
            Depth::Parallel => {
                let quarter = Fraction::new(1, i64::from(teeth))?.over(4)?;
                (0.0, 0.0, Some(Angle::from_turns(quarter)))
            }
            Depth::Tapering => (degrees(at.above / at.large), degrees(at.below / at.large), None),
        };
        let length = |value: f64| within(value, 2.0 * at.large + 2.0 * at.above, units + 4.0);
        let module = match self.depth {
            Depth::Parallel => at.module * at.large / at.small,
            Depth::Tapering => at.module,
        };
        let virtual_teeth = f64::from(teeth) / cos;
        Ok(BevelWheel {
            teeth,
            pitch_angle: angle(pitch),
            pitch_diameter: length(2.0 * at.large * sin),
            outside_diameter: length(2.0 * (at.large * sin + at.above * cos)),
            apex_to_tips: length(at.large * cos - at.above * sin),
            face_angle: angle(pitch + tips),
            back_angle: angle(90.0 - pitch),
            cutting_angle: angle(pitch - bottom),
            addendum_angle: angle(tips),
            dedendum_angle: angle(bottom),
            virtual_teeth: within(virtual_teeth, virtual_teeth, units),
            caliper: caliper(module, at.above, virtual_teeth, units + at.units),
            roll,
        })
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::gear::{DepthRule, Size};

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn pair(teeth: [u32; 2], shafts: i64, depth: Depth) -> Bevel {
        Bevel {
            teeth,
            tooth: Tooth { size: Size::Module(mm(2, 1)), ..Tooth::default() },
            shafts: Angle::from_degrees(Fraction::whole(shafts)).unwrap(),
            face: mm(10, 1),
            depth,
        }
    }

    #[track_caller]
    fn near(came: Approx, wanted: f64) {
        assert!((came.value - wanted).abs() <= came.bound, "{came:?} {wanted}");
        assert!(came.bound < 1e-10, "{came:?}");
    }

    #[test]
    fn mitres_at_all_shafts_share_the_angle() {
        for shafts in [60, 90, 120] {
            for depth in [Depth::Parallel, Depth::Tapering] {
                let sizes = pair([30, 30], shafts, depth).sizes().unwrap();
                assert_eq!(sizes.wheels[0], sizes.wheels[1]);
                near(sizes.wheels[0].pitch_angle, shafts as f64 / 2.0);
                let sin = (shafts as f64 / 2.0).to_radians().sin();
                let more = if depth == Depth::Parallel { 10.0 } else { 0.0 };
                near(sizes.cone_distance, 30.0 / sin + more);
            }
        }
    }

    #[test]
    fn parallel_depth_opens_the_large_end_to_half_its_pitch() {
        let sizes = pair([20, 40], 90, Depth::Parallel).sizes().unwrap();
        for wheel in sizes.wheels {
            // Gap at the large end: the cutter's, and both flanks' openings there.
            let (large, small) = (sizes.large_module.value, sizes.small_module.value);
            let roll = float_turns(wheel.roll.unwrap()) * 2.0 * std::f64::consts::PI;
            let moved = wheel.pitch_diameter.value / 2.0 * roll - sizes.offset.unwrap().value;
            let gap = std::f64::consts::PI * small / 2.0 + 2.0 * moved;
            assert!((gap - std::f64::consts::PI * large / 2.0).abs() < 1e-12);
            assert_eq!(wheel.face_angle, wheel.cutting_angle);
            // And at the small end nothing moves.
            let radius = f64::from(wheel.teeth) * small / 2.0;
            assert!((radius * roll - sizes.offset.unwrap().value).abs() < 1e-12);
        }
        near(sizes.small_module, 2.0);
        assert_eq!(sizes.whole_depth, mm(9, 2));
    }

    fn float_turns(angle: Angle) -> f64 {
        of(angle.turns())
    }

    #[test]
    fn tapering_cones_meet_in_the_apex() {
        let tooth = Tooth {
            size: Size::DiametralPitch(Fraction::whole(8)),
            pressure_angle: Angle::from_degrees(Fraction::new(29, 2).unwrap()).unwrap(),
            rule: DepthRule::Old,
        };
        let pair = Bevel { tooth, face: mm(15, 1), ..pair([24, 60], 90, Depth::Tapering) };
        let sizes = pair.sizes().unwrap();
        for wheel in sizes.wheels {
            // The tips' corner lies on the face cone from the apex.
            let corner = wheel.outside_diameter.value / 2.0 / wheel.apex_to_tips.value;
            near(wheel.face_angle, corner.atan().to_degrees());
            near(wheel.pitch_diameter, f64::from(wheel.teeth) / 8.0 * 25.4);
            assert_eq!((wheel.roll, sizes.offset), (None, None));
        }
    }

    #[test]
    fn what_is_no_bevel() {
        let refused = |pair: Bevel| pair.sizes().map_err(|e| (e.field, e.cause)).map(|_| ());
        let fine = pair([20, 40], 90, Depth::Tapering);
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        assert_eq!(
            refused(pair([20, 3], 90, Depth::Tapering)),
            Err((Field::Teeth, range(4, 5_000)))
        );
        assert_eq!(refused(pair([20, 40], 180, fine.depth)), Err((Field::Shafts, range(20, 160))));
        // At 120° a wheel twice as large is flat.
        assert_eq!(refused(pair([20, 40], 120, fine.depth)), Err((Field::Shafts, Cause::Conflict)));
        let cause = Cause::OutOfLengths { least_um: 1, greatest_um: 44_721 };
        assert_eq!(refused(Bevel { face: mm(45, 1), ..fine }), Err((Field::Face, cause)));
        assert!(Bevel { face: mm(15, 1), ..fine }.sizes().unwrap().too_wide);
    }
}
