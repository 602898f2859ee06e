//! One small error for the whole core: which quantity, what is wrong with it,
//! and where in the text that was read.
use core::fmt;

/// What a person was asked for when the error arose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Field {
    /// Equal parts in one turn of the work.
    Parts,
    /// An angle of the work.
    Angle,
    /// How often an angle is set.
    Times,
    /// A list of angles.
    List,
    /// The marks of a graduation.
    Marks,
    /// The cutting order.
    CutOrder,
    /// Worm ratio of the head.
    Ratio,
    /// Index plates and their circles.
    Plates,
    /// Holes in one circle.
    Holes,
    /// Counts of the direct plate.
    Direct,
    /// Change gears owned.
    Gears,
    /// How gears can be mounted.
    Mounting,
    /// Sector arms.
    Arms,
    /// Slack of the worm, in handle turns.
    Slack,
    /// Handwheel dial.
    Handwheel,
    /// Fine dial.
    FineDial,
    /// Handle reach.
    Reach,
    /// A length.
    Length,
    /// A position of a run.
    Position,
    /// An event of a run.
    Event,
    /// Rounds of a run.
    Rounds,
    /// Counts of an encoder.
    Counts,
    /// Taking back a press of a run.
    Undo,
    /// The title of a run.
    Title,
    /// An exact fraction.
    Fraction,
    /// A stored record.
    Record,
    /// A value of a part, or the formula that gives it.
    Value,
    /// The name of a value.
    Name,
    /// A thread by its name.
    Thread,
    /// Form of a thread.
    Form,
    /// Major diameter of a thread.
    Major,
    /// Pitch of a thread.
    Pitch,
    /// Starts of a thread.
    Starts,
    /// Tolerance class of a thread.
    Class,
    /// Percent of a thread's height wanted.
    Engagement,
    /// Drills owned.
    Drills,
    /// A diameter of a thread, or the bore it is cut in.
    Diameter,
    /// The tool that cuts a thread.
    Tool,
    /// A wire to measure over.
    Wire,
    /// Passes of a thread.
    Passes,
    /// The dial of a slide.
    SlideDial,
    /// The dial that tells when half nuts may close.
    ThreadDial,
    /// Speed of a spindle.
    Speed,
    /// Time from seeing to standing still.
    Reaction,
    /// Lead of a thread.
    Lead,
    /// A lathe's lead screw.
    Screw,
    /// What a lathe's head or gearbox passes on.
    Gearbox,
    /// Teeth of a wheel.
    Teeth,
    /// Module of a wheel.
    Module,
    /// Diametral pitch of a wheel.
    DiametralPitch,
    /// Pressure angle of a wheel.
    PressureAngle,
    /// Helix angle of a wheel's teeth.
    Helix,
    /// Profile shift of a wheel.
    Shift,
    /// How deep a wheel's teeth are cut.
    Depth,
    /// The cutter of a wheel's gaps.
    Cutter,
    /// A pin laid into a wheel's gaps to measure over.
    Pin,
    /// Teeth that a span takes in.
    Span,
    /// What was read when a wheel was measured.
    Reading,
    /// The blank of a wheel as it was found.
    Blank,
    /// Play between the teeth of two wheels.
    Backlash,
    /// Distance between the centres of two wheels.
    Centres,
    /// Width of a wheel's face.
    Face,
    /// Angle between the shafts of bevel wheels.
    Shafts,
    /// Height of the head's centre over the table.
    CentreHeight,
    /// Radius or diameter of a ring of holes, or of a plate to be made.
    Ring,
    /// Diameter of a drill.
    Drill,
    /// Generations of a plate.
    Generations,
    /// An error of machine or hands that a budget takes in.
    Source,
    /// Marks of a vernier.
    Vernier,
    /// Diameter of a drum that a tape is wrapped round.
    Drum,
    /// Lead screw of a mill's table.
    Table,
    /// By how much a ratchet's face leans back from the radius.
    Undercut,
    /// Angle between the two sides of a single-angle cutter.
    CutterAngle,
    /// What a ratchet's tooth keeps of the outside.
    Land,
    /// Keys of a splined shaft.
    Keys,
    /// Width of a key.
    Key,
    /// How many flats.
    Sides,
    /// Size across flats.
    Flats,
    /// Leaves of a pinion.
    Leaves,
    /// Rise of a cam.
    Rise,
    /// Leaves or blocks owned.
    Pieces,
    /// A taper.
    Taper,
    /// A tolerance class of a fit, or its nominal size.
    Fit,
    /// Grade of a tolerance class.
    Grade,
    /// What a finished part measures.
    Measured,
    /// Radius of an arc.
    Radius,
    /// Chord of an arc.
    Chord,
    /// What steps leave standing above a curve.
    Scallop,
    /// Neck beside a ball.
    Neck,
    /// Play that parts are to be put together with.
    Clearance,
    /// A temperature.
    Temperature,
    /// By how much a metal grows when it is heated.
    Expansion,
    /// A counterbore.
    Counterbore,
    /// The wall beside a counterbore.
    Wall,
    /// A chain of lengths with tolerances.
    Chain,
    /// Lengths and angles of bent sheet.
    Legs,
    /// Thickness of sheet.
    Thickness,
    /// Inside radius of a bend.
    Bend,
    /// Where the unstretched layer of bent sheet lies.
    Neutral,
    /// A step in sheet.
    Joggle,
    /// A former that a ring is bent on.
    Former,
    /// Yield strength of a metal.
    Yield,
    /// Modulus of a metal.
    Modulus,
    /// A force, or the moment of one.
    Load,
    /// Coils of a spring.
    Coils,
    /// A spring.
    Spring,
}

/// What is wrong, with the limits that apply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Cause {
    /// Nothing was typed.
    Empty,
    /// The text is not a number of the kind wanted.
    NotANumber,
    /// A whole number is wanted.
    NotWhole,
    /// Outside the range, both ends allowed.
    OutOfRange {
        /// Least allowed.
        least: u32,
        /// Greatest allowed.
        greatest: u32,
    },
    /// A thousands mark: `1,000` could mean one or a thousand.
    ThousandsMark,
    /// Minutes or seconds of 60 or more.
    SixtyOrMore,
    /// Listed twice.
    Twice,
    /// More entries than fit.
    TooMany {
        /// How many fit.
        most: u16,
    },
    /// Zero where a divisor is wanted.
    Zero,
    /// The exact result does not fit 64-bit parts.
    Overflow,
    /// Does not go with the other values.
    Conflict,
    /// Not possible from this state.
    NotNow,
    /// Written by a newer version.
    Newer,
    /// A length outside the range, both ends allowed.
    OutOfLengths {
        /// Least allowed, in micrometres.
        least_um: u32,
        /// Greatest allowed, in micrometres.
        greatest_um: u32,
    },
    /// The tool's nose is wider than the root allows.
    Blunt {
        /// Greatest flat, or radius where the nose is round, in micrometres.
        greatest_um: u32,
    },
    /// The wire does not stand proud of the crests.
    WireSinks {
        /// Least wire that can be used, in micrometres.
        least_um: u32,
        /// Greatest wire that can be used, in micrometres.
        greatest_um: u32,
    },
    /// The wire touches the crests' edges, not the flanks.
    WireRides {
        /// Least wire that can be used, in micrometres.
        least_um: u32,
        /// Greatest wire that can be used, in micrometres.
        greatest_um: u32,
    },
    /// The wire rests in the root, not on the flanks.
    WireRests {
        /// Least wire that can be used, in micrometres.
        least_um: u32,
        /// Greatest wire that can be used, in micrometres.
        greatest_um: u32,
    },
    /// A taper thread, where only a parallel one will do.
    Taper,
    /// Must be a multiple of a number.
    NotMultiple {
        /// That number.
        of: u32,
    },
    /// The pin falls below the outside of the wheel, or to the bottom of its gap.
    PinFalls {
        /// Least pin that can be used, in micrometres.
        least_um: u32,
        /// Greatest pin that can be used, in micrometres.
        greatest_um: u32,
    },
    /// The pin rides on the tips of the teeth.
    PinRides {
        /// Least pin that can be used, in micrometres.
        least_um: u32,
        /// Greatest pin that can be used, in micrometres.
        greatest_um: u32,
    },
    /// Holes break into each other.
    HolesMeet {
        /// Least ring radius that leaves a web, in micrometres.
        least_um: u32,
    },
    /// The flanks of a wheel's teeth meet below its outside.
    Pointed {
        /// Greatest outside diameter that leaves them a top, in micrometres.
        greatest_um: u32,
    },
    /// No cutter of a set cuts so few teeth.
    TooFewTeeth {
        /// Fewest teeth.
        least: u32,
    },
}

/// An error: a field, its cause and the part of the text it was read from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub struct Error {
    /// Which quantity.
    pub field: Field,
    /// What is wrong with it.
    pub cause: Cause,
    /// First and one-past-last byte of the text read; `(0, 0)` without text.
    pub span: (u16, u16),
}

impl Error {
    /// An error that stands in no text.
    #[must_use]
    pub const fn new(field: Field, cause: Cause) -> Self {
        Self { field, cause, span: (0, 0) }
    }

    /// The same error, placed at bytes `from..to` of what was read (clamped to `u16`).
    #[must_use]
    pub fn at(self, from: usize, to: usize) -> Self {
        let clamp = |n: usize| u16::try_from(n).unwrap_or(u16::MAX);
        Self { span: (clamp(from), clamp(to)), ..self }
    }

    /// The same error, about another field.
    #[must_use]
    pub const fn of(self, field: Field) -> Self {
        Self { field, ..self }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}: ", self.field)?;
        match self.cause {
            Cause::OutOfRange { least, greatest } => {
                write!(f, "must be from {least} to {greatest}")
            }
            Cause::TooMany { most } => write!(f, "at most {most}"),
            Cause::OutOfLengths { least_um, greatest_um } => {
                write!(f, "must be from {least_um} to {greatest_um} µm")
            }
            Cause::Blunt { greatest_um } => write!(f, "too blunt: at most {greatest_um} µm"),
            Cause::WireSinks { least_um, greatest_um } => {
                write!(f, "sinks below the crests: use {least_um} to {greatest_um} µm")
            }
            Cause::WireRides { least_um, greatest_um } => {
                write!(f, "rides on the crests: use {least_um} to {greatest_um} µm")
            }
            Cause::WireRests { least_um, greatest_um } => {
                write!(f, "rests in the root: use {least_um} to {greatest_um} µm")
            }
            Cause::Taper => f.write_str("is a taper thread, where a parallel one is wanted"),
            Cause::NotMultiple { of } => write!(f, "must be a multiple of {of}"),
            Cause::PinFalls { least_um, greatest_um } => {
                write!(f, "falls into the gap: use {least_um} to {greatest_um} µm")
            }
            Cause::PinRides { least_um, greatest_um } => {
                write!(f, "rides on the tips: use {least_um} to {greatest_um} µm")
            }
            Cause::HolesMeet { least_um } => {
                write!(f, "holes meet: the ring's radius must be at least {least_um} µm")
            }
            Cause::Pointed { greatest_um } => {
                write!(f, "teeth come to a point: at most {greatest_um} µm")
            }
            Cause::TooFewTeeth { least } => write!(f, "at least {least} teeth"),
            cause => write!(f, "{cause:?}"),
        }
    }
}

impl core::error::Error for Error {}
