//! The one table of bounded quantities: range, wording, unit and reason stand
//! here once. Checks, error texts, form hints and test generators read it.
use crate::error::{Cause, Error, Field};

/// A bounded whole quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bound {
    /// Which field it bounds.
    pub field: Field,
    /// Least allowed value.
    pub least: u32,
    /// Greatest allowed value.
    pub greatest: u32,
}

impl Bound {
    /// `value` when it lies within the bound.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] with both limits.
    pub const fn check(self, value: i64) -> Result<i64, Error> {
        if value < self.least as i64 || value > self.greatest as i64 {
            let cause = Cause::OutOfRange { least: self.least, greatest: self.greatest };
            return Err(Error::new(self.field, cause));
        }
        Ok(value)
    }

    /// `value` as a `u32` when it lies within the bound.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] with both limits.
    pub fn check_u32(self, value: i64) -> Result<u32, Error> {
        let value = self.check(value)?;
        u32::try_from(value).map_err(|_| Error::new(self.field, Cause::Overflow))
    }
}

macro_rules! bounds {
    ($($(#[$doc:meta])* $name:ident: $field:ident, $least:literal ..= $greatest:literal;)*) => {
        $($(#[$doc])* pub const $name: Bound =
            Bound { field: Field::$field, least: $least, greatest: $greatest };)*
        /// Every bound of the table, for tests and form hints.
        pub const ALL: &[Bound] = &[$($name),*];
    };
}

bounds! {
    /// Equal parts in one turn; a head turned by hand is never asked for more.
    DIVISIONS: Parts, 2..=10_000;
    /// How often one angle is set in a row.
    TIMES: Times, 1..=10_000;
    /// Step of the cutting order: every m-th position.
    EVERY: CutOrder, 1..=9_999;
    /// Numerator and denominator of a worm ratio, reduced; ratios from 1/1000 to 1000.
    RATIO_PART: Ratio, 1..=100_000;
    /// Holes in a circle: fewer carries no pin, more can't be told apart.
    HOLES: Holes, 2..=1_000;
    /// Notches of a direct plate, or teeth of a gear used as one.
    NOTCHES: Direct, 2..=1_000;
    /// Teeth of a change gear.
    TEETH: Gears, 8..=250;
    /// Equal gears owned.
    OWNED: Gears, 1..=9;
    /// Distance of two studs or margin of a rim, in teeth.
    STUD_TEETH: Mounting, 0..=1_000;
    /// Marks on a handwheel dial or a fine dial.
    DIAL_MARKS: Handwheel, 2..=10_000;
    /// Marks of a vernier beside a dial, 1 for none.
    VERNIER: Handwheel, 1..=100;
    /// Rounds of a run: scratch, rough, finish and so on.
    ROUNDS: Rounds, 1..=9;
    /// Counts of an encoder in one turn of the handle.
    COUNTS: Counts, 100..=40_000;
    /// Pitch of a thread, in micrometres.
    PITCH_UM: Pitch, 50..=200_000;
    /// Major diameter of a thread, in micrometres.
    MAJOR_UM: Major, 200..=2_000_000;
    /// Starts of a thread.
    STARTS: Starts, 1..=60;
    /// Lead of a thread, or what π is multiplied by to get it, in micrometres.
    LEAD_UM: Lead, 10..=5_000_000;
    /// Numerator and denominator, reduced, of what a lathe's head or gearbox passes on.
    GEARBOX_PART: Gearbox, 1..=10_000;
    /// Angle of a thread form of one's own, in degrees.
    FORM_ANGLE: Form, 5..=150;
    /// Spring passes at the end of a thread.
    SPRING_PASSES: Passes, 0..=20;
    /// Marks of a slide's dial.
    SLIDE_MARKS: SlideDial, 2..=10_000;
    /// Teeth or marks of the dial that tells when half nuts may close.
    THREAD_DIAL: ThreadDial, 1..=250;
    /// Turns of a lathe's spindle in a minute while a thread is cut.
    RPM: Speed, 1..=5_000;
    /// Turns of any spindle in a minute.
    SPINDLE: Speed, 1..=100_000;
    /// Milliseconds from seeing the mark to a standing carriage.
    REACTION_MS: Reaction, 1..=10_000;
    /// Teeth of a wheel to be cut; fewer than four are no wheel.
    WHEEL_TEETH: Teeth, 4..=5_000;
    /// Module of a wheel, in micrometres.
    MODULE_UM: Module, 50..=100_000;
    /// Diametral pitch of a wheel, fractions allowed between.
    DIAMETRAL_PITCH: DiametralPitch, 1..=500;
    /// Pressure angle of a wheel, in degrees.
    PRESSURE_ANGLE: PressureAngle, 10..=35;
    /// Marks on the dial of a mill's table screw.
    TABLE_MARKS: Table, 2..=10_000;
    /// Helix angle of a wheel's teeth, in degrees: straighter ones are straight.
    HELIX: Helix, 1..=80;
    /// Gaps of a rack.
    GAPS: Teeth, 2..=5_000;
    /// Grooves of a helix.
    GROOVES: Teeth, 1..=5_000;
    /// Angle between the shafts of bevel wheels, in degrees.
    SHAFTS: Shafts, 20..=160;
    /// Keys of a splined shaft.
    SPLINE_KEYS: Keys, 3..=100;
    /// Flats on round stock.
    FLATS: Sides, 1..=100;
    /// Leaves of a clock's pinion.
    LEAVES: Leaves, 6..=100;
    /// Cuts of a ball or radius by steps.
    CUTS: Passes, 1..=400;
}

/// Least and greatest length of a thread, its tools or what a plate is made by, in
/// micrometres: 10 m.
pub const LENGTH_UM: (u32, u32) = (1, 10_000_000);
/// Cutting passes of one thread.
pub const MOST_PASSES: u32 = 400;
/// Plates a head can list.
pub const MAX_PLATES: usize = 12;
/// Circles on one side of a plate.
pub const MAX_CIRCLES: usize = 24;
/// Direct plates or gears used as such.
pub const MAX_DIRECT: usize = 12;
/// Different change gears that can be listed, each with its count.
pub const MAX_GEARS: usize = 24;
/// Settings of a lathe's gearbox.
pub const MAX_GEARBOX: usize = 60;
/// Angles in one list.
pub const MAX_ANGLES: usize = 400;
/// How many times round the work a way with an error that builds up may go to
/// make it smaller.
pub const MOST_TIMES_ROUND: u32 = 60;
/// Entries of a mark pattern.
pub const MAX_PATTERN: usize = 400;
/// Rounds of one run.
pub const MAX_ROUNDS: usize = 9;
/// Leaves or blocks in one list.
pub const MAX_PIECES: usize = 128;
/// Kinds of mark in one graduation.
pub const MAX_MARK_KINDS: usize = 6;
/// Values of one part that may depend on each other.
pub const MAX_VALUES: usize = 32;
