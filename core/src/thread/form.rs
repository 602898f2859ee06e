//! Thread forms as data: every measure is a multiple of the pitch, so that one
//! form serves all sizes.
//!
//! Multiples that are not exact (√3 and its kin) are held to nine decimals, which
//! is what the standards print or finer: at a pitch of 25 mm it is 0.03 µm.
//!
//! Sources: ISO 68-1 and ISO 965-1 (metric), ASME B1.1 (Unified), BS 84
//! (Whitworth), ISO 228-1 (pipe), BS 93 (BA), ISO 2901 (trapezoidal), ASME B1.5
//! (Acme), ASME B1.8 (stub Acme), BS 811 (cycle), common practice (square).
//!
//! ```
//! use handturn::measure::read::Unit;
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::{Form, Hand, Thread};
//! // A screw out of an old clock: 90° between the flanks, flats of a tenth of the pitch.
//! let tenth = Fraction::new(1, 10)?;
//! let form = Form::own(Angle::from_degrees(Fraction::whole(90))?, tenth, tenth, Unit::Mm)?;
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let screw = Thread::new(form, mm(800)?, mm(100)?, 1, Hand::Right)?;
//! assert_eq!(form.sharp_height(screw.pitch)?, mm(50)?); // half the pitch at 90°
//! assert_eq!(form.external_depth(screw.pitch)?, mm(40)?);
//! assert_eq!((screw.pitch_diameter()?, screw.minor_external()?), (mm(760)?, mm(720)?));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::to_nearest;
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::read::Unit;
use crate::measure::{Angle, Length};
use crate::number::{Fraction, float};

/// Which family a form belongs to; each rounds and clears in its own manner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Kind {
    /// ISO metric, 60°.
    Metric,
    /// Unified inch, 60°.
    Unified,
    /// Whitworth, 55°: BSW, BSF, ME, brass.
    Whitworth,
    /// Parallel pipe thread (G), Whitworth form in millimetres.
    Pipe,
    /// British Association, 47.5°.
    Ba,
    /// Metric trapezoidal (Tr), 30°.
    Trapezoidal,
    /// Acme general purpose, 29°.
    Acme,
    /// Stub Acme, 29°.
    StubAcme,
    /// Cycle thread, 60°, rounded at crest and root.
    Cycle,
    /// Square: sides at right angles to the axis.
    Square,
    /// A form of one's own.
    Own,
}

/// Where a form is laid down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Source {
    /// ISO 68-1, design profile of ISO 965-1.
    Iso68,
    /// ASME B1.1.
    AsmeB11,
    /// BS 84.
    Bs84,
    /// ISO 228-1.
    Iso228,
    /// BS 93.
    Bs93,
    /// ISO 2901.
    Iso2901,
    /// ASME B1.5.
    AsmeB15,
    /// ASME B1.8.
    AsmeB18,
    /// BS 811.
    Bs811,
    /// Common practice, no standard.
    Practice,
    /// The person's own figures.
    Own,
}

/// One side of the joint, each measure in pitches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Profile {
    /// Radial depth from its major to its minor, clearance left out.
    pub depth: Fraction,
    /// Flat at the crest; nought where it is rounded.
    pub crest_flat: Fraction,
    /// Flat at the root; nought where it is rounded.
    pub root_flat: Fraction,
    /// Radius at the crest; nought where it is flat.
    pub crest_radius: Fraction,
    /// Radius at the root; nought where it is flat.
    pub root_radius: Fraction,
}

/// A thread form, each measure in pitches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Form {
    /// Family.
    pub kind: Kind,
    /// Where it is laid down.
    pub source: Source,
    /// Unit in which its sizes are given and rounded.
    pub unit: Unit,
    /// Angle between the two sides of a groove.
    #[doc(alias = "included angle")]
    pub angle: Angle,
    /// Height of the sharp triangle (H); nought for a square thread.
    pub height: Fraction,
    /// From the basic major to the pitch line, radially: half of what the pitch
    /// diameter (effective) lies below the major.
    pub addendum: Fraction,
    /// The screw.
    pub external: Profile,
    /// The nut.
    pub internal: Profile,
}

/// A multiple of the pitch, in billionths of it.
const fn e9(billionths: i64) -> Fraction {
    ratio(billionths, 1_000_000_000)
}

const fn ratio(num: i64, den: i64) -> Fraction {
    match Fraction::new(num, den) {
        Ok(fraction) => fraction,
        Err(_) => Fraction::ZERO,
    }
}

const fn degrees_tenths(tenths: i64) -> Angle {
    Angle::from_turns(ratio(tenths, 3600))
}

/// A profile with flats at crest and root.
const fn flats(depth: Fraction, crest_flat: Fraction, root_flat: Fraction) -> Profile {
    let (crest_radius, root_radius) = (Fraction::ZERO, Fraction::ZERO);
    Profile { depth, crest_flat, root_flat, crest_radius, root_radius }
}

/// A profile round at crest and root.
const fn rounds(depth: Fraction, radius: Fraction) -> Profile {
    let (crest_flat, root_flat) = (Fraction::ZERO, Fraction::ZERO);
    Profile { depth, crest_flat, root_flat, crest_radius: radius, root_radius: radius }
}

const SIXTY: Form = Form {
    kind: Kind::Metric,
    source: Source::Iso68,
    unit: Unit::Mm,
    angle: degrees_tenths(600),
    // √3/2
    height: e9(866_025_404),
    // 3/8 H
    addendum: ratio(649_519_053, 2_000_000_000),
    // 17/24 H, root round with H/6.
    external: Profile {
        depth: e9(613_434_661),
        crest_flat: ratio(1, 8),
        root_flat: Fraction::ZERO,
        crest_radius: Fraction::ZERO,
        root_radius: e9(144_337_567),
    },
    // 5/8 H
    internal: flats(ratio(1_082_531_755, 2_000_000_000), ratio(1, 4), ratio(1, 8)),
};

const FIFTY_FIVE: Form = Form {
    kind: Kind::Whitworth,
    source: Source::Bs84,
    unit: Unit::Inch,
    angle: degrees_tenths(550),
    // cot(27.5°)/2; the depth is 2/3 of it.
    height: e9(960_491_063),
    addendum: e9(320_163_688),
    external: rounds(e9(640_327_376), e9(137_329_083)),
    internal: rounds(e9(640_327_376), e9(137_329_083)),
};

impl Form {
    /// ISO metric.
    pub const METRIC: Self = SIXTY;
    /// Unified inch; the root of the screw is the round one (UNR).
    pub const UNIFIED: Self = Self {
        kind: Kind::Unified,
        source: Source::AsmeB11,
        unit: Unit::Inch,
        // 0.59539 P: 11/16 H, root round with H/8.
        external: Profile {
            depth: e9(595_392_465),
            root_radius: e9(108_253_175),
            ..SIXTY.external
        },
        ..SIXTY
    };
    /// Whitworth.
    pub const WHITWORTH: Self = FIFTY_FIVE;
    /// Parallel pipe thread.
    pub const PIPE: Self =
        Self { kind: Kind::Pipe, source: Source::Iso228, unit: Unit::Mm, ..FIFTY_FIVE };
    /// British Association.
    pub const BA: Self = Self {
        kind: Kind::Ba,
        source: Source::Bs93,
        unit: Unit::Mm,
        angle: degrees_tenths(475),
        // cot(23.75°)/2
        height: e9(1_136_336_439),
        addendum: ratio(3, 10),
        external: rounds(ratio(3, 5), e9(180_834_000)),
        internal: rounds(ratio(3, 5), e9(180_834_000)),
    };
    /// Metric trapezoidal.
    pub const TRAPEZOIDAL: Self = Self {
        kind: Kind::Trapezoidal,
        source: Source::Iso2901,
        unit: Unit::Mm,
        angle: degrees_tenths(300),
        // cot(15°)/2
        height: e9(1_866_025_404),
        addendum: ratio(1, 4),
        // (1 − tan 15°)/2; the clearance narrows the one at the root.
        external: flats(ratio(1, 2), e9(366_025_404), e9(366_025_404)),
        internal: flats(ratio(1, 2), e9(366_025_404), e9(366_025_404)),
    };
    /// Acme, general purpose.
    pub const ACME: Self = Self {
        kind: Kind::Acme,
        source: Source::AsmeB15,
        unit: Unit::Inch,
        angle: degrees_tenths(290),
        // cot(14.5°)/2
        height: e9(1_933_356_547),
        addendum: ratio(1, 4),
        external: flats(ratio(1, 2), e9(370_700_000), e9(370_700_000)),
        internal: flats(ratio(1, 2), e9(370_700_000), e9(370_700_000)),
    };
    /// Stub Acme: as Acme with 0.3 of the pitch for a depth (from memory).
    pub const STUB_ACME: Self = Self {
        kind: Kind::StubAcme,
        source: Source::AsmeB18,
        addendum: ratio(3, 20),
        // 1/2 − 0.15 tan 14.5° × 2
        external: flats(ratio(3, 10), e9(422_414_727), e9(422_414_727)),
        internal: flats(ratio(3, 10), e9(422_414_727), e9(422_414_727)),
        ..Self::ACME
    };
    /// Cycle (BSC, CEI): radii of a sixth of the pitch at crest and root (from memory).
    pub const CYCLE: Self = Self {
        kind: Kind::Cycle,
        source: Source::Bs811,
        unit: Unit::Inch,
        // The sharp triangle less a sixth of the pitch at each end: 0.5327 P.
        addendum: e9(266_346_035),
        external: rounds(e9(532_692_070), ratio(1, 6)),
        internal: rounds(e9(532_692_070), ratio(1, 6)),
        ..SIXTY
    };
    /// Square, in millimetres; set `unit` for inches.
    pub const SQUARE: Self = Self {
        kind: Kind::Square,
        source: Source::Practice,
        unit: Unit::Mm,
        angle: Angle::ZERO,
        height: Fraction::ZERO,
        addendum: ratio(1, 4),
        external: flats(ratio(1, 2), ratio(1, 2), ratio(1, 2)),
        internal: flats(ratio(1, 2), ratio(1, 2), ratio(1, 2)),
    };

    /// A form of one's own with straight sides at `angle` to each other and
    /// flats at crest and root of the screw, in pitches. The nut mirrors it.
    ///
    /// The depth is (1 − both flats) × H; the pitch line is where groove and
    /// ridge are equally wide.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for an angle outside [`bounds::FORM_ANGLE`] degrees;
    /// [`Cause::Conflict`] for flats below nought or that leave no depth, or a crest flat
    /// of half a pitch or more; [`Cause::Overflow`].
    pub fn own(
        angle: Angle,
        crest_flat: Fraction,
        root_flat: Fraction,
        unit: Unit,
    ) -> Result<Self, Error> {
        let degrees = angle.degrees()?;
        bounds::FORM_ANGLE.check(degrees.floor())?;
        bounds::FORM_ANGLE.check(degrees.negated().floor().saturating_neg())?;
        let conflict = Error::new(Field::Form, Cause::Conflict);
        let half = ratio(1, 2);
        let sides = Fraction::ONE.checked_sub(crest_flat)?.checked_sub(root_flat)?;
        let outside = |flat: Fraction| flat.is_negative() || flat >= half;
        if outside(crest_flat) || outside(root_flat) || sides <= Fraction::ZERO {
            return Err(conflict);
        }
        let turns = float::of(angle.turns()) / 2.0;
        let cot = float::cos_turns(turns) / float::sin_turns(turns);
        let height = float::nearest(cot / 2.0, 1_000_000_000).ok_or(conflict)?;
        let share = |part: Fraction| to_nearest(part.checked_mul(height)?, 1_000_000_000);
        let depth = share(sides)?;
        Ok(Self {
            kind: Kind::Own,
            source: Source::Own,
            unit,
            angle,
            height,
            addendum: share(half.checked_sub(crest_flat)?)?,
            external: flats(depth, crest_flat, root_flat),
            internal: flats(depth, root_flat, crest_flat),
        })
    }

    /// Height of the sharp triangle at `pitch`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn sharp_height(&self, pitch: Length) -> Result<Length, Error> {
        self.at(self.height, pitch)
    }

    /// Radial depth of the screw's groove at `pitch`, from the basic major to the
    /// root, clearance included: Tr, Acme and stub Acme add [`Form::clearance`], BA is rounded
    /// to 0.005 mm and the pipe thread to 0.001 mm first, as their tables are.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn external_depth(&self, pitch: Length) -> Result<Length, Error> {
        let depth = self.table_depth(self.external.depth, pitch)?;
        Ok(Length::from_mm(depth.mm().checked_add(self.clearance(pitch)?.mm())?))
    }

    /// Radial depth from the basic major to the basic bore of the nut at `pitch`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn internal_depth(&self, pitch: Length) -> Result<Length, Error> {
        self.table_depth(self.internal.depth, pitch)
    }

    /// Clearance at the roots, radially: a_c of ISO 2902 for Tr (0.15 at a pitch
    /// below 2 mm, 0.25 to 5, 0.5 to 12, 1 above), 0.010 in for Acme and stub
    /// Acme to 10 threads per inch and 0.005 in finer (ASME B1.5, B1.8), nought for the rest.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "a_c")]
    pub fn clearance(&self, pitch: Length) -> Result<Length, Error> {
        match self.kind {
            Kind::Trapezoidal => {
                let mm = pitch.mm();
                let hundredths = match () {
                    () if mm < Fraction::whole(2) => 15,
                    () if mm <= Fraction::whole(5) => 25,
                    () if mm <= Fraction::whole(12) => 50,
                    () => 100,
                };
                Ok(Length::from_mm(ratio(hundredths, 100)))
            }
            Kind::Acme | Kind::StubAcme => {
                let coarse = pitch.inches()? >= ratio(1, 10);
                Length::from_inches(ratio(1, if coarse { 100 } else { 200 }))
            }
            _ => Ok(Length::from_mm(Fraction::ZERO)),
        }
    }

    /// From the basic major to the pitch line, radially, at `pitch`.
    pub(crate) fn half_difference(&self, pitch: Length) -> Result<Length, Error> {
        match self.kind {
            Kind::Ba | Kind::Pipe => {
                let depth = self.table_depth(self.external.depth, pitch)?;
                Ok(Length::from_mm(depth.mm().over(2)?))
            }
            _ => self.at(self.addendum, pitch),
        }
    }

    /// `multiple` of `pitch`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn at(&self, multiple: Fraction, pitch: Length) -> Result<Length, Error> {
        Ok(Length::from_mm(multiple.checked_mul(pitch.mm())?))
    }

    /// A depth as the standard's table holds it.
    fn table_depth(&self, multiple: Fraction, pitch: Length) -> Result<Length, Error> {
        let depth = self.at(multiple, pitch)?;
        let per = match self.kind {
            Kind::Ba => 200,
            Kind::Pipe => 1000,
            _ => return Ok(depth),
        };
        Ok(Length::from_mm(to_nearest(depth.mm(), per)?))
    }
}
