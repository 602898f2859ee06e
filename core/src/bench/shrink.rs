//! A ring heated, or its shaft cooled as well, until the one drops on the other.
//!
//! Rule (common practice; any text of physics): a diameter d at room temperature is
//! d (1 + α ΔT) at another. With the shaft's own temperature given, the ring must open to
//! the shaft then plus what it is to drop on with. Exact in the figures given; α itself
//! differs by alloy and grows with temperature, so it is a band and the lower end is safe.
//!
//! ```
//! use handturn::bench::shrink::{Shrink, EXPANSION};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A steel ring of 50 mm, 0.05 mm of hold, 0.03 to drop on with, in a shop at 20 °C.
//! let um = |n| Fraction::new(n, 1000).map(Length::from_mm);
//! let shrink = Shrink {
//!     diameter: um(50_000)?,
//!     hold: um(50)?,
//!     clear: um(30)?,
//!     room: Fraction::whole(20),
//!     shaft_at: Fraction::whole(20),
//!     shaft_nm: 11_500,
//! };
//! let hot = shrink.ring_at(11_500)?;
//! assert_eq!(hot, Fraction::new(3660, 23)?); // 159.1 °C
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{NONE, from_nought, size},
};
use crate::number::Fraction;

/// A ring to be shrunk on a shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Shrink {
    /// The ring's bore, at room temperature.
    pub diameter: Length,
    /// By how much the shaft is larger, at room temperature.
    pub hold: Length,
    /// What the ring is to drop on with.
    pub clear: Length,
    /// Room temperature, in °C.
    pub room: Fraction,
    /// Temperature of the shaft when the ring drops on, in °C.
    pub shaft_at: Fraction,
    /// Expansion of the shaft, in nanometres a metre and degree (11 500 is 11.5 × 10⁻⁶).
    pub shaft_nm: i64,
}

/// A metal and by how much it grows: least and greatest, in nanometres a metre and degree,
/// about 20 to 200 °C.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Metal {
    /// Its key.
    pub key: &'static str,
    /// Least of its alloys.
    pub least_nm: i64,
    /// Greatest of its alloys.
    pub most_nm: i64,
}

const fn metal(key: &'static str, least_nm: i64, most_nm: i64) -> Metal {
    Metal { key, least_nm, most_nm }
}

/// Expansion by metal. Steels 11.0 to 11.7, stainless 16.9, aluminium 23.0 to 23.4 and bronze
/// 18.0 were read in print (table of expansion for shrink fits, reprint); the bands about
/// them, cast iron, brass and copper are common figures of handbooks, from memory.
pub const EXPANSION: [Metal; 7] = [
    metal("steel", 11_000, 12_500),
    metal("iron", 9_900, 11_500),
    metal("stainless", 16_000, 17_500),
    metal("brass", 18_500, 20_500),
    metal("bronze", 17_000, 18_500),
    metal("copper", 16_500, 17_500),
    metal("aluminium", 22_500, 24_000),
];

impl Shrink {
    /// Temperature, in °C, at which a ring that grows by `ring_nm` nanometres a metre and
    /// degree drops on.
    ///
    /// # Errors
    /// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Temperature`] where the room is
    /// not at −40 to 60 °C or the shaft not at −200 °C to the room's temperature;
    /// [`Cause::OutOfRange`] of [`Field::Expansion`], in millionths; [`Cause::Overflow`].
    pub fn ring_at(&self, ring_nm: i64) -> Result<Fraction, Error> {
        let need = self.opened()?;
        let field = Field::Temperature;
        check(ring_nm)?;
        let per_degree = self.diameter.mm().times(ring_nm).and_then(|nm| nm.over(1_000_000_000));
        let rise = per_degree.and_then(|per| need.mm().checked_div(per));
        let rise = rise.map_err(|e| e.of(field))?;
        rise.checked_add(self.room).map_err(|e| e.of(field))
    }

    /// What is left to drop on with where the ring is at `at` °C; below nought it holds yet.
    ///
    /// # Errors
    /// As [`Self::ring_at`].
    pub fn clear_at(&self, ring_nm: i64, at: Fraction) -> Result<Length, Error> {
        let field = Field::Temperature;
        check(ring_nm)?;
        let need = Self { clear: NONE, ..*self }.opened()?;
        let per_degree = self.diameter.mm().times(ring_nm).and_then(|nm| nm.over(1_000_000_000));
        let rise = at.checked_sub(self.room);
        let opened = per_degree.and_then(|per| per.checked_mul(rise?));
        let left = opened.and_then(|mm| mm.checked_sub(need.mm()));
        left.map(Length::from_mm).map_err(|e| e.of(field))
    }

    /// By how much the ring must open; nought or less where the cold shaft drops in as it is.
    ///
    /// # Errors
    /// As [`Self::ring_at`].
    pub fn opened(&self) -> Result<Length, Error> {
        let field = Field::Temperature;
        size(self.diameter, Field::Diameter)?;
        size(self.hold, Field::Length)?;
        from_nought(self.clear, Field::Clearance)?;
        check(self.shaft_nm)?;
        let (room, shaft_at) = (self.room, self.shaft_at);
        let in_range = room >= Fraction::whole(-40) && room <= Fraction::whole(60);
        if !in_range || shaft_at < Fraction::whole(-200) || shaft_at > room {
            return Err(Error::new(field, Cause::Conflict));
        }
        let shaft = self.diameter.mm().checked_add(self.hold.mm());
        let colder = self.shaft_at.checked_sub(self.room);
        let grown =
            shaft.and_then(|d| d.times(self.shaft_nm)).and_then(|nm| nm.over(1_000_000_000));
        let grown = grown.and_then(|per| per.checked_mul(colder?));
        let need = grown.and_then(|grown| grown.checked_add(self.hold.mm()));
        let need = need.and_then(|mm| mm.checked_add(self.clear.mm()));
        need.map(Length::from_mm).map_err(|e| e.of(field))
    }
}

/// Refuses an expansion that is no metal's.
fn check(nm: i64) -> Result<(), Error> {
    if !(1_000..=100_000).contains(&nm) {
        let cause = Cause::OutOfRange { least: 1, greatest: 100 };
        return Err(Error::new(Field::Expansion, cause));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn um(um: i64) -> Length {
        Length::from_mm(Fraction::new(um, 1000).unwrap())
    }

    /// Bore and shaft at the temperatures told differ by the clearance, exactly.
    #[test]
    fn at_the_temperature_told_it_drops_on() {
        for metal in EXPANSION {
            for (hold, clear, cold) in [(10, 0, 20), (50, 30, 20), (80, 20, -18), (25, 40, -78)] {
                for d in [6_000, 25_400, 120_500] {
                    let shrink = Shrink {
                        diameter: um(d),
                        hold: um(hold),
                        clear: um(clear),
                        room: Fraction::whole(20),
                        shaft_at: Fraction::whole(cold),
                        shaft_nm: 11_500,
                    };
                    let hot = shrink.ring_at(metal.most_nm).unwrap();
                    let grown = |d: Fraction, nm: i64, rise: Fraction| {
                        let part = rise.times(nm).unwrap().over(1_000_000_000).unwrap();
                        d.checked_mul(part.checked_add(Fraction::ONE).unwrap()).unwrap()
                    };
                    let rise = |to: Fraction| to.checked_sub(shrink.room).unwrap();
                    let bore = grown(um(d).mm(), metal.most_nm, rise(hot));
                    let shaft = grown(um(d + hold).mm(), 11_500, rise(shrink.shaft_at));
                    assert_eq!(bore.checked_sub(shaft).unwrap(), um(clear).mm());
                    assert_eq!(shrink.clear_at(metal.most_nm, hot), Ok(um(clear)));
                    assert!(
                        shrink.ring_at(metal.least_nm).unwrap() > hot
                            || rise(hot) <= Fraction::ZERO
                    );
                }
            }
        }
    }
}
