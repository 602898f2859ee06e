//! Ratchet wheels, cut with a single-angle cutter.
//!
//! Method: the cutter's flat side cuts a tooth's face, its bevelled side the back of the
//! tooth before; both meet in a point (a rounded one leaves its radius in the root). With
//! the flat side over the centre line the face is radial; moved past it, away from the
//! gap, by R·sin u the face is undercut by u at the tip. Tips of neighbours stand on a
//! chord c = 2R·sin(g/2), where g is one part less the land, and the gap is
//! c·cos(g/2 − u − C) ÷ sin C deep along the face for a cutter of angle C. Back and face
//! of a tooth meet at C less one part, whatever the undercut. (Plane geometry, our own
//! derivation; a cutter with a point is taken.)
//!
//! ```
//! use handturn::gear::ratchet::{Gap, Ratchet, cut};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // The clock's click wheel: 48 teeth on 40 mm, radial faces, a 60° cutter, 0.2 mm of land.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! let wheel = Ratchet { teeth: 48, outside: mm(400)?, undercut: Angle::ZERO };
//! let cutter = Angle::from_degrees(Fraction::whole(60))?;
//! let gap = cut(&wheel, Gap::Land { cutter, land: mm(2)? })?;
//! assert!((gap.depth.value - 1.539).abs() < 0.001);
//! assert!((gap.tooth.value - 52.5).abs() < 1e-9); // 60° less a 48th of a turn
//! assert!(gap.offset.value.abs() < 1e-12);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::{LENGTH_UM, WHEEL_TEETH};
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{from_nought, size, um_down},
};
use crate::number::{Approx, Fraction};

/// A ratchet wheel's blank and faces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ratchet {
    /// How many teeth: the parts to divide.
    pub teeth: u32,
    /// Outside diameter.
    pub outside: Length,
    /// By how much the face leans back from the radius at its tip, 0 to 30°; nought
    /// for a radial face.
    #[doc(alias = "rake")]
    pub undercut: Angle,
}

/// What is known of the gap; the third of cutter, depth and land follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Gap {
    /// Cutter and land.
    Land {
        /// Angle between the cutter's flat side and its bevelled side.
        cutter: Angle,
        /// What is left of the outside on each tooth, along the arc; nought for a sharp one.
        land: Length,
    },
    /// Cutter and depth.
    Depth {
        /// Angle between the cutter's flat side and its bevelled side.
        cutter: Angle,
        /// Depth along the face.
        depth: Length,
    },
    /// Depth and land: which cutter would do.
    Cutter {
        /// Depth along the face.
        depth: Length,
        /// What is left of the outside on each tooth, along the arc.
        land: Length,
    },
}

/// How the gap is cut. Lengths in millimetres, angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cut {
    /// Angle of the cutter.
    pub cutter: Approx,
    /// How far its flat side stands from the centre line, on the side of the tooth
    /// whose face it cuts; the point lies in the flat side.
    pub offset: Approx,
    /// Depth along the face: from touching the blank with the cutter set over.
    pub depth: Approx,
    /// Depth from touching the top of the blank with the point over the centre line.
    pub from_top: Approx,
    /// Land, along the arc.
    pub land: Approx,
    /// Angle of the tooth between its face and its back: the cutter's less one part.
    pub tooth: Approx,
    /// How steeply the back falls away from the tangent where the land ends.
    pub back: Approx,
    /// Diameter of the circle that the roots lie on.
    pub root: Approx,
}

/// The cut of one gap.
///
/// # Errors
/// [`Cause::OutOfRange`] for the teeth ([`WHEEL_TEETH`]), an undercut not from 0 to 30°
/// ([`Field::Undercut`]), or a cutter not from 1 to 89°; lengths out of bounds;
/// [`Cause::Conflict`] of [`Field::CutterAngle`] where it is not above one part, or does not
/// reach a face so far undercut, of [`Field::Land`] where it takes up all of a part, of
/// [`Field::Depth`] where no cutter does it; [`Cause::OutOfLengths`] of [`Field::Depth`]
/// with the greatest that leaves the tips standing.
pub fn cut(wheel: &Ratchet, gap: Gap) -> Result<Cut, Error> {
    WHEEL_TEETH.check(i64::from(wheel.teeth))?;
    size(wheel.outside, Field::Blank)?;
    within(wheel.undercut, Field::Undercut, 0, 30)?;
    let round = Round::of(wheel)?;
    let (cutter, depth, land) = match gap {
        Gap::Land { cutter, land } => {
            let cutter = checked(wheel, cutter)?;
            let land = round.land(land)?;
            (cutter, round.depth(cutter, land), land)
        }
        Gap::Depth { cutter, depth } => {
            let cutter = checked(wheel, cutter)?;
            size(depth, Field::Depth)?;
            let depth = Approx::of(depth.mm());
            (cutter, depth, round.land_at(cutter, depth)?)
        }
        Gap::Cutter { depth, land } => {
            size(depth, Field::Depth)?;
            let depth = Approx::of(depth.mm());
            let land = round.land(land)?;
            (round.cutter(depth, land)?, depth, land)
        }
    };
    if depth.value <= depth.bound {
        return Err(Error::new(Field::CutterAngle, Cause::Conflict));
    }
    round.told(cutter, depth, land)
}

/// How far the head is raised from level, in degrees, to cut teeth on the face of a
/// disk (a crown ratchet, the side of a cutter) with a single-angle cutter: lands come
/// out equally wide along the tooth. Formula: cos a = tan(one part) ÷ tan(cutter).
///
/// # Errors
/// As [`cut`]; [`Cause::Conflict`] of [`Field::Teeth`] for four.
pub fn face_teeth(teeth: u32, cutter: Angle) -> Result<Approx, Error> {
    WHEEL_TEETH.check(i64::from(teeth))?;
    let part = part(teeth)?;
    if teeth == 4 {
        return Err(Error::new(Field::Teeth, Cause::Conflict));
    }
    cutter_above(part, cutter)?;
    let (part, cutter) = (Approx::of(part), Approx::of(cutter.turns()));
    // tan p / tan C, and the root of (1 − x²) = sin(C − p)·sin(C + p) / (cos p · sin C)².
    let below = part.cos().times(cutter.sin());
    let cosine = part.sin().times(cutter.cos()).over(below);
    let product = cutter.minus(part).sin().times(cutter.plus(part).sin());
    let sine = product.sqrt().over(below);
    Ok(sine.over(cosine).atan().by(360.0))
}

fn part(teeth: u32) -> Result<Fraction, Error> {
    Fraction::new(1, i64::from(teeth))
}

/// `angle` from `least` to `greatest` whole degrees.
pub(super) fn within(angle: Angle, field: Field, least: u32, greatest: u32) -> Result<(), Error> {
    let degrees = angle.degrees().map_err(|e| e.of(field))?;
    let whole = |n: u32| Fraction::whole(i64::from(n));
    if degrees < whole(least) || degrees > whole(greatest) {
        return Err(Error::new(field, Cause::OutOfRange { least, greatest }));
    }
    Ok(())
}

/// A cutter's angle, above one part: else face and back would not meet.
fn cutter_above(part: Fraction, cutter: Angle) -> Result<(), Error> {
    within(cutter, Field::CutterAngle, 1, 89)?;
    if cutter.turns() <= part {
        return Err(Error::new(Field::CutterAngle, Cause::Conflict));
    }
    Ok(())
}

fn checked(wheel: &Ratchet, cutter: Angle) -> Result<Approx, Error> {
    cutter_above(part(wheel.teeth)?, cutter)?;
    Ok(Approx::of(cutter.turns()))
}

/// The wheel in floats: radius in millimetres, angles in turns.
struct Round {
    radius: Approx,
    part: Approx,
    undercut: Approx,
}

impl Round {
    fn of(wheel: &Ratchet) -> Result<Self, Error> {
        Ok(Self {
            radius: Approx::of(wheel.outside.mm().over(2)?),
            part: Approx::of(part(wheel.teeth)?),
            undercut: Approx::of(wheel.undercut.turns()),
        })
    }

    /// A land in turns; it must leave some of a part.
    fn land(&self, land: Length) -> Result<Approx, Error> {
        from_nought(land, Field::Land)?;
        let turns = Approx::of(land.mm()).over(self.radius.times(Approx::pi()).by(2.0));
        if turns.value + turns.bound >= self.part.value {
            return Err(Error::new(Field::Land, Cause::Conflict));
        }
        Ok(turns)
    }

    /// The chord between two tips, the gap's side of the land, and how far it falls from
    /// square to the face, in turns.
    fn chord(&self, land: Approx) -> (Approx, Approx) {
        let half = self.part.minus(land).by(0.5);
        (self.radius.by(2.0).times(half.sin()), half.minus(self.undercut))
    }

    fn depth(&self, cutter: Approx, land: Approx) -> Approx {
        let (chord, falls) = self.chord(land);
        chord.times(falls.minus(cutter).cos()).over(cutter.sin())
    }

    /// The cutter's angle, in turns.
    fn cutter(&self, depth: Approx, land: Approx) -> Result<Approx, Error> {
        let conflict = Error::new(Field::Depth, Cause::Conflict);
        let (chord, falls) = self.chord(land);
        let below = depth.minus(chord.times(falls.sin()));
        let across = chord.times(falls.cos());
        if below.value <= below.bound || across.value <= across.bound {
            return Err(conflict);
        }
        let cutter = across.over(below).atan();
        if cutter.value - cutter.bound <= self.part.value {
            return Err(conflict);
        }
        Ok(cutter)
    }

    /// The land that a depth leaves, in turns: where the bevelled side leaves the blank.
    fn land_at(&self, cutter: Approx, depth: Approx) -> Result<Approx, Error> {
        let sharp = self.depth(cutter, Approx::exactly(0.0));
        if sharp.value <= sharp.bound {
            return Err(Error::new(Field::CutterAngle, Cause::Conflict));
        }
        if depth.value - depth.bound > sharp.value + sharp.bound {
            let greatest_um = um_down(sharp.value);
            let cause = Cause::OutOfLengths { least_um: LENGTH_UM.0, greatest_um };
            return Err(Error::new(Field::Depth, cause));
        }
        // The point's height, and its distances along and square to the bevelled side.
        let height = self.radius.times(self.undercut.cos()).minus(depth);
        let aside = self.radius.times(self.undercut.sin());
        let square = height.times(cutter.sin()).plus(aside.times(cutter.cos()));
        // The side leaves the blank at the angle C − acos(square ÷ R) … from the flat side's
        // direction: sin of that angle's rest is square ÷ R.
        let inside = self.radius.times(self.radius).minus(square.times(square));
        let leaves = cutter.minus(square.over(inside.sqrt()).atan());
        let land = self.part.minus(self.undercut).minus(leaves);
        Ok(Approx { value: land.value.max(0.0), ..land })
    }

    fn told(&self, cutter: Approx, depth: Approx, land: Approx) -> Result<Cut, Error> {
        let level = self.radius.times(self.undercut.cos());
        let height = level.minus(depth);
        if height.value <= height.bound {
            return Err(Error::new(Field::Depth, Cause::Conflict));
        }
        let offset = self.radius.times(self.undercut.sin());
        let rest = self.part.minus(land).minus(self.undercut).minus(cutter);
        Ok(Cut {
            cutter: cutter.by(360.0),
            offset,
            depth,
            from_top: self.radius.minus(height),
            land: land.times(self.radius).times(Approx::pi()).by(2.0),
            tooth: cutter.minus(self.part).by(360.0),
            back: Approx::exactly(90.0).plus(rest.by(360.0)),
            root: height.times(height).plus(offset.times(offset)).sqrt().by(2.0),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn degrees(num: i64, den: i64) -> Angle {
        Angle::from_degrees(Fraction::new(num, den).unwrap()).unwrap()
    }

    fn wheel(teeth: u32, undercut: i64) -> Ratchet {
        Ratchet { teeth, outside: mm(50, 1), undercut: degrees(undercut, 1) }
    }

    #[track_caller]
    fn near(came: Approx, value: f64) {
        assert!((came.value - value).abs() <= came.bound + 1e-12, "{came:?}, not {value}");
        assert!(came.bound < 1e-11, "{came:?}");
    }

    #[test]
    fn a_sharp_tooth_by_hand() {
        // Six teeth, radial: the chord is 25 and falls by 30°; a 60° cutter would cut
        // 25·cos(30°)/sin(60°) = 25 deep, but it is one part itself: refused.
        let sharp = |cutter| Gap::Land { cutter: degrees(cutter, 1), land: mm(0, 1) };
        assert_eq!(
            cut(&wheel(6, 0), sharp(60)),
            Err(Error::new(Field::CutterAngle, Cause::Conflict))
        );
        // Eight teeth, 75°: chord 50·sin(22.5°) = 19.1342, depth its cos(52.5°)/sin(75°).
        let gap = cut(&wheel(8, 0), sharp(75)).unwrap();
        near(gap.depth, 12.059_047_744_873_963);
        near(gap.tooth, 30.0);
        near(gap.back, 60.0);
        near(gap.from_top, gap.depth.value);
    }

    #[test]
    fn each_of_the_three_gives_back_the_others() {
        for (teeth, undercut, cutter, land) in
            [(24, 0, 60, 3), (48, 10, 50, 1), (12, 15, 70, 9), (100, 5, 45, 0), (16, 0, 85, 2)]
        {
            let wheel = wheel(teeth, undercut);
            let asked = Gap::Land { cutter: degrees(cutter, 1), land: mm(land, 10) };
            let first = cut(&wheel, asked).unwrap();
            let nearly = |value: f64| crate::number::float::nearest(value, 1 << 40).unwrap();
            let depth = Length::from_mm(nearly(first.depth.value));
            let second = cut(&wheel, Gap::Depth { cutter: degrees(cutter, 1), depth }).unwrap();
            assert!((second.land.value - first.land.value).abs() < 1e-9, "{second:?}");
            let third = cut(&wheel, Gap::Cutter { depth, land: mm(land, 10) }).unwrap();
            assert!((third.cutter.value - first.cutter.value).abs() < 1e-8, "{third:?}");
            assert!((third.root.value - first.root.value).abs() < 1e-8);
        }
    }

    #[test]
    fn what_cannot_be_cut() {
        let refused = |wheel: &Ratchet, gap| {
            let error = cut(wheel, gap).unwrap_err();
            (error.field, error.cause)
        };
        let cutter = degrees(60, 1);
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        let land = Gap::Land { cutter, land: mm(0, 1) };
        assert_eq!(refused(&wheel(3, 0), land), (Field::Teeth, range(4, 5000)));
        assert_eq!(refused(&wheel(24, 31), land), (Field::Undercut, range(0, 30)));
        let wide = Gap::Land { cutter, land: mm(7, 1) };
        assert_eq!(refused(&wheel(24, 0), wide), (Field::Land, Cause::Conflict));
        let narrow = Gap::Land { cutter: degrees(15, 1), land: mm(0, 1) };
        assert_eq!(refused(&wheel(24, 0), narrow), (Field::CutterAngle, Cause::Conflict));
        let deep = Gap::Depth { cutter, depth: mm(6, 1) };
        let cause = Cause::OutOfLengths { least_um: 1, greatest_um: 4587 };
        assert_eq!(refused(&wheel(24, 0), deep), (Field::Depth, cause));
        let shallow = Gap::Cutter { depth: mm(1, 2), land: mm(0, 1) };
        assert_eq!(refused(&wheel(24, 0), shallow), (Field::Depth, Cause::Conflict));
    }

    #[test]
    fn teeth_on_a_face() {
        // cos a = tan(30°)/tan(60°) = 1/3.
        near(face_teeth(12, degrees(60, 1)).unwrap(), 70.528_779_365_509_31);
        near(face_teeth(6, degrees(75, 1)).unwrap(), 62.347_904_392_294_26);
        assert!(face_teeth(4, degrees(80, 1)).is_err());
    }
}
