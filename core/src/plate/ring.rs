//! Whether a ring of holes can be drilled: the holes fit the pin, the ring lies in the
//! handle's reach, and metal is left between the holes, to the circles beside it and to
//! the rim.
//!
//! The web between neighbouring holes is 2r·sin(π/holes) less the drill (the chord of the
//! ring); what must be left is a setting, half the drill in common practice.
use super::sources::{between, radius};
use crate::bounds::{self, MAX_CIRCLES};
use crate::error::{Cause, Error, Field};
use crate::head::Reach;
use crate::list::List;
use crate::measure::Length;
use crate::number::{Approx, Fraction, float};

/// A ring of holes to be drilled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ring {
    /// Holes.
    pub holes: u32,
    /// Radius of the ring.
    pub radius: Length,
    /// Diameter of the drill.
    pub drill: Length,
}

/// What the ring is drilled into, and what it must serve.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Blank {
    /// Radius of its rim.
    pub rim: Option<Length>,
    /// Rings that it has: their radii and drills.
    pub rings: List<(Length, Length), MAX_CIRCLES>,
    /// Metal that must be left between holes and to the rim.
    pub web: Length,
    /// The handle's pin.
    pub pin: Option<Length>,
    /// What the handle reaches.
    pub reach: Option<Reach>,
}

/// How a ring fits.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Fit {
    /// Metal between neighbouring holes, in millimetres.
    pub web_mm: Approx,
    /// Metal to the nearest ring beside it, exact.
    pub beside: Option<Length>,
    /// Metal to the rim, exact.
    pub to_rim: Option<Length>,
    /// Drill less pin, exact: how far the pin can shake.
    pub play: Option<Length>,
}

/// Checks `ring` against `blank`.
///
/// # Errors
/// [`Field::Holes`] and [`Field::Ring`] out of range; [`Field::Drill`]:
/// [`Cause::OutOfLengths`] for a drill that the pin does not enter or that is half a
/// millimetre too wide for it; [`Field::Ring`]: [`Cause::HolesMeet`] with the least radius
/// that leaves the web, [`Cause::OutOfLengths`] outside the handle's reach or too near
/// the rim, [`Cause::Conflict`] where it runs into a ring that is there.
///
/// ```
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// use handturn::plate::ring::{Blank, Ring, check};
/// let mm = |n, d| Length::from_mm(Fraction::new(n, d).expect("a size"));
/// let ring = Ring { holes: 127, radius: mm(55, 1), drill: mm(3, 2) };
/// let fit = check(&ring, &Blank::default())?;
/// assert!((fit.web_mm.value - 1.221).abs() < 0.001);
/// # Ok::<(), handturn::Error>(())
/// ```
pub fn check(ring: &Ring, blank: &Blank) -> Result<Fit, Error> {
    bounds::HOLES.check(i64::from(ring.holes))?;
    radius(ring.radius)?;
    between(ring.drill, Field::Drill, 200, 20_000)?;
    between(blank.web, Field::Ring, 0, 20_000)?;
    let (r, drill) = (ring.radius.mm(), ring.drill.mm());
    let half = drill.over(2)?;
    let mut play = None;
    if let Some(pin) = blank.pin {
        let widest = pin.mm().checked_add(Fraction::new(1, 2)?)?;
        if drill < pin.mm() || drill > widest {
            let (least, greatest) = (pin, Length::from_mm(widest));
            return Err(lengths(Field::Drill, Some(least), Some(greatest)));
        }
        play = Some(Length::from_mm(drill.checked_sub(pin.mm())?));
    }
    if let Some(reach) = blank.reach {
        if ring.radius < reach.least || ring.radius > reach.greatest {
            return Err(lengths(Field::Ring, Some(reach.least), Some(reach.greatest)));
        }
    }
    let web_mm = web(ring);
    if web_mm.value + web_mm.bound < float::of(blank.web.mm()) {
        return Err(Error::new(Field::Ring, Cause::HolesMeet { least_um: least_um(ring, blank) }));
    }
    let to_rim = match blank.rim {
        Some(rim) => {
            let left = rim.mm().checked_sub(r)?.checked_sub(half)?;
            if left < blank.web.mm() {
                let most = rim.mm().checked_sub(half)?.checked_sub(blank.web.mm())?;
                return Err(lengths(Field::Ring, None, Some(Length::from_mm(most))));
            }
            Some(Length::from_mm(left))
        }
        None => None,
    };
    let mut beside: Option<Length> = None;
    for (other, their_drill) in &blank.rings {
        let apart = other.mm().checked_sub(r)?.abs();
        let left = apart.checked_sub(half)?.checked_sub(their_drill.mm().over(2)?)?;
        if left < blank.web.mm() {
            return Err(Error::new(Field::Ring, Cause::Conflict));
        }
        let left = Length::from_mm(left);
        beside = Some(beside.map_or(left, |least| least.min(left)));
    }
    Ok(Fit { web_mm, beside, to_rim, play })
}

/// Metal between neighbouring holes.
fn web(ring: &Ring) -> Approx {
    let chord = 2.0 * float::of(ring.radius.mm()) * half_sine(ring.holes);
    let drill = float::of(ring.drill.mm());
    Approx { value: chord - drill, bound: (chord + drill) * 4.0 * f64::EPSILON }
}

/// sin(π/holes).
fn half_sine(holes: u32) -> f64 {
    float::sin_turns(0.5 / f64::from(holes.max(1)))
}

/// The least radius that leaves the web, in whole micrometres.
fn least_um(ring: &Ring, blank: &Blank) -> u32 {
    let wanted = float::of(ring.drill.mm()) + float::of(blank.web.mm());
    let radius = wanted * 500.0 / half_sine(ring.holes);
    let nearest = float::nearest(radius + 0.5, 1).and_then(|um| u32::try_from(um.num()).ok());
    nearest.unwrap_or(u32::MAX)
}

fn lengths(field: Field, least: Option<Length>, greatest: Option<Length>) -> Error {
    let um = |length: Length| {
        let um = length.mm().times(1000).map(Fraction::floor).ok();
        um.and_then(|um| u32::try_from(um).ok())
    };
    let least_um = least.and_then(um).unwrap_or(0);
    let greatest_um = greatest.and_then(um).unwrap_or(u32::MAX);
    Error::new(field, Cause::OutOfLengths { least_um, greatest_um })
}

/// A good radius for `holes` holes of `drill`: the greatest in whole millimetres that
/// `blank` has room for, as errors of place count the less the farther out; none
/// where it has none. Without rim and reach the least that leaves the web, or 50 mm.
///
/// # Errors
/// What [`check`] finds of holes, drill and web.
pub fn propose(holes: u32, drill: Length, blank: &Blank) -> Result<Option<Length>, Error> {
    let edge = match (blank.rim, blank.reach) {
        (Some(rim), Some(reach)) => Some(rim.min(reach.greatest)),
        (Some(rim), None) => Some(rim),
        (None, reach) => reach.map(|reach| reach.greatest),
    };
    let at = |mm: i64| Ring { holes, radius: Length::from_mm(Fraction::whole(mm)), drill };
    let least = i64::from(least_um(&at(50), blank)).saturating_add(999).checked_div(1000);
    let least = least.unwrap_or(50).max(10);
    let most = edge.map_or(least.max(50), |edge| edge.mm().floor()).min(1000);
    let mut mm = most;
    let mut refused = None;
    while mm >= least {
        match check(&at(mm), blank) {
            Ok(_) => return Ok(Some(at(mm).radius)),
            Err(error) if error.field == Field::Ring => {}
            Err(error) => refused = Some(error),
        }
        mm = mm.saturating_sub(1);
    }
    refused.map_or(Ok(None), Err)
}

impl Default for Blank {
    /// Nothing known of rim, rings, pin and reach; 0.75 mm of metal to be left.
    fn default() -> Self {
        let web = Length::from_mm(Fraction::new(3, 4).unwrap_or(Fraction::ZERO));
        Self { rim: None, rings: List::new(), web, pin: None, reach: None }
    }
}
