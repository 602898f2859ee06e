//! Straight-sided splines on a shaft, cut in two rounds of side cuts, and keyways.
//!
//! Method: with a key under the cutter its flanks stand w/2 either side of the centre
//! line, parallel. A cutter of width b with its near side there cuts one flank of every
//! key; moved across by w + b it cuts the others. Its floor touches the minor circle
//! where it meets the flank, √(d² − w²)/2 above the centre. Seen from the middle of a
//! space its far side stands e = w/2 + b from the key's centre line, so that between
//! the two cuts a ridge 2·(√(r² − e²)·sin h − e·cos h) wide is left at radius r, with
//! h half a part. (Plane geometry, our own derivation; a cutter with sharp corners
//! is taken.)
//!
//! ```
//! use handturn::gear::spline::{Spline, cut};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // Six keys of 6 mm, 26 and 30 mm in diameter (ISO 14 light series), a 4 mm cutter.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let shaft = Spline { keys: 6, major: mm(30), minor: mm(26), key: mm(6), cutter: mm(4) };
//! let cuts = cut(&shaft)?;
//! assert_eq!((cuts.offset, cuts.across), (mm(5), mm(10)));
//! assert!((cuts.depth.value - 2.351).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::SPLINE_KEYS;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{minus, over, plus, size, um_down},
};
use crate::number::{Approx, Fraction};

/// A splined shaft, and the cutter for its flanks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Spline {
    /// How many keys: the parts to divide.
    pub keys: u32,
    /// Diameter over the keys: the blank.
    pub major: Length,
    /// Diameter at the floor between them.
    pub minor: Length,
    /// Width of a key.
    pub key: Length,
    /// Width of the cutter.
    pub cutter: Length,
}

/// How the flanks are cut, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cuts {
    /// From the centre line to the middle of the cutter, first to one side.
    pub offset: Length,
    /// How far the table then moves across for the other side: key and cutter.
    pub across: Length,
    /// Depth from touching the top of the blank, to where flank and floor meet.
    pub depth: Approx,
    /// Height of a flank: depth from touching the blank beside the centre line, with the
    /// cutter set over.
    pub flank: Approx,
    /// The widest cutter that spares the next key's flank, where there is a limit.
    pub widest: Option<Approx>,
    /// What stays between the two cuts of a space.
    pub between: Between,
    /// Width of the space at the minor diameter, straight across.
    pub space: Approx,
    /// Depth from the top to the floor, for clearing it with the space under the cutter:
    /// half a part on.
    pub floor: Length,
}

/// What two side cuts leave of a space.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Between {
    /// A ridge that stands.
    Ridge {
        /// Its width at the outside, straight across.
        outside: Approx,
        /// Its width at the foot.
        foot: Approx,
        /// The widest cutter that clears it from above and spares the flanks.
        widest: Approx,
    },
    /// The cuts meet under a piece that comes off in one: it flies.
    Loose {
        /// Its width at the outside, straight across.
        outside: Approx,
        /// How far the floor stands proud of the minor circle in the middle.
        proud: Approx,
    },
    /// Nothing but the floor's own shape.
    Floor {
        /// How far the floor stands proud of the minor circle in the middle.
        proud: Approx,
    },
}

/// Cuts of a splined shaft.
///
/// # Errors
/// [`Cause::OutOfRange`] for the keys ([`SPLINE_KEYS`]); lengths out of bounds;
/// [`Cause::Conflict`] of [`Field::Diameter`] where minor is not below major, of
/// [`Field::Key`] where no space is left between keys; [`Cause::OutOfLengths`] of
/// [`Field::Cutter`] with the widest that spares the next key.
pub fn cut(ask: &Spline) -> Result<Cuts, Error> {
    SPLINE_KEYS.check(i64::from(ask.keys))?;
    size(ask.major, Field::Blank)?;
    size(ask.minor, Field::Diameter)?;
    size(ask.key, Field::Key)?;
    size(ask.cutter, Field::Cutter)?;
    if ask.minor >= ask.major {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    if ask.key >= ask.minor {
        return Err(Error::new(Field::Key, Cause::Conflict));
    }
    let half = Approx::of(Fraction::new(1, i64::from(ask.keys))?.over(2)?);
    let (sine, cosine) = (half.sin(), half.cos());
    let part = half.by(2.0);
    let key = Approx::of(ask.key.mm()).by(0.5);
    let foot = leg(ask.minor, ask.key)?.by(0.5);
    // Flanks of neighbours meet where √(d² − w²)·sin h = w·cos h; two keys leave all else.
    let open = foot.times(sine).minus(key.times(cosine));
    if open.value <= open.bound {
        return Err(Error::new(Field::Key, Cause::Conflict));
    }
    let widest = widest(ask.keys, part, foot, key);
    let cutter = Approx::of(ask.cutter.mm());
    if let Some(widest) = widest {
        if cutter.value > widest.value + widest.bound {
            let cause = Cause::OutOfLengths { least_um: 1, greatest_um: um_down(widest.value) };
            return Err(Error::new(Field::Cutter, cause));
        }
    }
    let twice = plus(ask.key, ask.cutter, Field::Cutter)?;
    let top = Approx::of(ask.major.mm()).by(0.5);
    Ok(Cuts {
        offset: over(twice, 2, Field::Cutter)?,
        across: twice,
        depth: top.minus(foot),
        flank: leg(ask.major, ask.key)?.by(0.5).minus(foot),
        widest,
        between: between(ask, foot, key.plus(cutter), (sine, cosine)),
        space: open.by(2.0),
        floor: over(minus(ask.major, ask.minor, Field::Diameter)?, 2, Field::Diameter)?,
    })
}

/// The widest cutter: its far corner on the floor must not reach the next key's flank.
/// A space of a quarter turn or more sets no limit.
fn widest(keys: u32, part: Approx, foot: Approx, key: Approx) -> Option<Approx> {
    (keys > 4).then(|| {
        let room = foot.times(part.sin()).minus(key);
        room.over(part.cos()).minus(key)
    })
}

/// √(diameter² − width²), from exact factors.
fn leg(diameter: Length, width: Length) -> Result<Approx, Error> {
    let [more, less] =
        [plus(diameter, width, Field::Diameter)?, minus(diameter, width, Field::Diameter)?];
    Ok(Approx::of(more.mm()).times(Approx::of(less.mm())).sqrt())
}

/// What two cuts leave; `far` is how far the cutter's far side stands from the key's middle.
fn between(ask: &Spline, foot: Approx, far: Approx, (sine, cosine): (Approx, Approx)) -> Between {
    let top = Approx::of(ask.major.mm()).by(0.5);
    let leg = |other: Approx| top.times(top).minus(other.times(other)).sqrt();
    // A floor that leaves the blank before the cutter ends is no wider than that.
    let leaves = leg(foot);
    let far = if far.value < leaves.value { far } else { leaves };
    let wide = |height: Approx| height.times(sine).minus(far.times(cosine)).by(2.0);
    let (outside, at_foot) = (wide(leg(far)), wide(foot));
    let minor = Approx::of(ask.minor.mm()).by(0.5);
    let proud = foot.over(cosine).minus(minor);
    if outside.value <= outside.bound {
        Between::Floor { proud }
    } else if at_foot.value <= at_foot.bound {
        Between::Loose { outside, proud }
    } else {
        let key = Approx::of(ask.key.mm()).by(0.5);
        let widest = minor.times(sine).minus(key.times(cosine)).over(cosine).by(2.0);
        Between::Ridge { outside, foot: at_foot, widest }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn ask(keys: u32, minor: i64, major: i64, key: i64, cutter: Length) -> Spline {
        let whole = |n| mm(n, 1);
        Spline { keys, major: whole(major), minor: whole(minor), key: whole(key), cutter }
    }

    #[test]
    fn what_stays_between() {
        // Four keys of 6 on 10 and 16: the floor stands 4 above the centre (3, 4, 5), so
        // its flats meet at 4√2, 0.657 proud of the minor circle.
        let cuts = cut(&ask(4, 10, 16, 6, mm(4, 1))).unwrap();
        assert!((cuts.depth.value - 4.0).abs() < 1e-12);
        assert_eq!((cuts.floor, cuts.widest), (mm(3, 1), None));
        let Between::Floor { proud } = cuts.between else { panic!("{:?}", cuts.between) };
        assert!((proud.value - 0.656_854_249_492_380_6).abs() < 1e-12);
        // A saw of 0.8 leaves a ridge: e = 3.8, √2·(√(64 − 14.44) − 3.8) at the outside.
        let cuts = cut(&ask(4, 10, 16, 6, mm(4, 5))).unwrap();
        let Between::Ridge { outside, foot, .. } = cuts.between else { panic!() };
        assert!((outside.value - 4.581_891_234_705_155).abs() < 1e-9, "{outside:?}");
        assert!((foot.value - 0.282_842_712_474_619).abs() < 1e-12);
        // One of 1.5 meets its neighbour below and leaves a piece above.
        let cuts = cut(&ask(4, 10, 16, 6, mm(3, 2))).unwrap();
        assert!(matches!(cuts.between, Between::Loose { .. }));
    }

    #[test]
    fn what_cannot_be_cut() {
        let refused = |ask: &Spline| {
            let error = cut(ask).unwrap_err();
            (error.field, error.cause)
        };
        let cutter = mm(1, 1);
        let cause = Cause::OutOfRange { least: 3, greatest: 100 };
        assert_eq!(refused(&ask(2, 10, 16, 6, cutter)), (Field::Keys, cause));
        assert_eq!(refused(&ask(4, 16, 16, 6, cutter)), (Field::Diameter, Cause::Conflict));
        assert_eq!(refused(&ask(12, 10, 16, 3, cutter)), (Field::Key, Cause::Conflict));
        let wide = ask(6, 26, 30, 6, mm(13, 1));
        let cause = Cause::OutOfLengths { least_um: 1, greatest_um: 12_908 };
        assert_eq!(refused(&wide), (Field::Cutter, cause));
    }
}
