//! The lead angle of a thread and what it asks of the tool's flanks.
//!
//! Method: tan λ = lead ÷ (π × diameter). Seen along a flank of half angle a the
//! groove leans by atan(tan λ · cos a): steepest at the root, least at the crest. The
//! leading flank's clearance must exceed the lean at the root, the trailing one's may
//! be less by the lean at the crest (common practice; for a square thread a is nought).
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::lead::{Flanks, lead_angle, clearance};
//! // A feed screw, Tr16x4: pitch diameter 14, root 11.5.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! assert!((lead_angle(mm(40)?, mm(140)?)?.value - 5.197).abs() < 0.001);
//! let tool = clearance(&Flanks {
//!     half_angle: Angle::from_degrees(Fraction::whole(15))?,
//!     lead: mm(40)?, root: mm(115)?, crest: mm(160)?,
//!     beyond: Angle::from_degrees(Fraction::whole(2))?,
//! })?;
//! assert!((tool.leading.value - 8.105).abs() < 0.001);
//! assert!((tool.trailing.value + 2.395).abs() < 0.001); // it leans the other way
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::{half_angle, size};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{PI, atan_turns, cos_turns, of},
};

/// A thread's flanks and the clearance wanted beyond their lean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Flanks {
    /// Half the angle between the flanks.
    pub half_angle: Angle,
    /// Advance in one turn.
    pub lead: Length,
    /// Diameter at which the lean is steepest: minor outside, bore inside.
    pub root: Length,
    /// Diameter at which it is least.
    pub crest: Length,
    /// Clearance beyond the lean, 0 to 20°: 1° to 3° by common practice.
    pub beyond: Angle,
}

/// Clearance to grind on each flank, in degrees, square to the flank.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Clearance {
    /// On the flank that leads along the bed.
    pub leading: Approx,
    /// On the flank that trails; below nought it leans with the thread.
    pub trailing: Approx,
}

fn lean(lead: f64, diameter: f64, cos: f64) -> f64 {
    360.0 * atan_turns(lead / (PI * diameter) * cos)
}

fn degrees(value: f64, size: f64) -> Approx {
    Approx { value, bound: 16.0 * f64::EPSILON * size }
}

/// The lead angle at `diameter`, in degrees.
///
/// # Errors
/// A lead or diameter out of bounds.
#[doc(alias = "helix angle")]
pub fn lead_angle(lead: Length, diameter: Length) -> Result<Approx, Error> {
    let value = lean(size(lead, Field::Pitch)?, size(diameter, Field::Diameter)?, 1.0);
    Ok(degrees(value, value))
}

/// Clearance to grind on the tool's two flanks.
///
/// # Errors
/// Lengths or angles out of bounds; a root above the crest.
#[doc(alias = "side rake")]
pub fn clearance(ask: &Flanks) -> Result<Clearance, Error> {
    let cos = cos_turns(half_angle(ask.half_angle, 0)?);
    let lead = size(ask.lead, Field::Pitch)?;
    let (root, crest) = (size(ask.root, Field::Diameter)?, size(ask.crest, Field::Diameter)?);
    if ask.root > ask.crest {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    let beyond = ask.beyond.degrees()?;
    if beyond.is_negative() || beyond > Fraction::whole(20) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 20 }));
    }
    let beyond = of(beyond);
    let (steep, gentle) = (lean(lead, root, cos), lean(lead, crest, cos));
    Ok(Clearance {
        leading: degrees(steep + beyond, steep + beyond),
        trailing: degrees(beyond - gentle, beyond + gentle),
    })
}
