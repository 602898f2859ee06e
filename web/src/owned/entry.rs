//! The entries of a head: their names among the page's fields and what they read
//! as until something is typed.
use super::write;
use handturn::head::Head;

macro_rules! entries {
    ($($(#[$doc:meta])* $entry:ident: $key:literal, $default:literal;)*) => {
        /// One value of a head that its owner can type or choose.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Entry { $($(#[$doc])* $entry),* }

        impl Entry {
            /// Every entry, in the order in which they stand in the Shop.
            pub const ALL: [Self; [$($key),*].len()] = [$(Self::$entry),*];

            /// Its name in a file of heads.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$entry => $key),* }
            }

            /// Its name among the fields.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$entry => concat!("head-", $key)),* }
            }

            /// The name under which its last good text is kept while it is bad.
            #[must_use]
            pub const fn last(self) -> &'static str {
                match self { $(Self::$entry => concat!("last-head-", $key)),* }
            }

            /// What it reads as until something is typed.
            #[must_use]
            pub const fn default(self) -> &'static str {
                match self { $(Self::$entry => $default),* }
            }
        }
    };
}

entries! {
    /// What its owner calls it.
    Name: "name", "Dividing head";
    /// Worm ratio.
    Ratio: "ratio", "40 : 1";
    /// Which way the work turns for a clockwise handle.
    WorkTurns: "work-turns", "clockwise";
    /// Tilted out of level.
    Tilted: "tilted", "no";
    /// Degree ring and its sense.
    DegreeRing: "degree-ring", "clockwise";
    /// Slack, in handle turns.
    Slack: "slack", "0.1";
    /// A clamp on the work spindle.
    SpindleClamp: "clamp", "yes";
    /// Plates and their circles.
    Plates: "plates", "";
    /// What holds the plate.
    PlateStop: "plate-stop", "withdraws";
    /// Notches of direct plates.
    Direct: "direct", "24";
    /// The worm drops out of mesh.
    WormDropsOut: "worm-drops-out", "yes";
    /// Change gears owned.
    Gears: "gears", "";
    /// Distance of the studs, in teeth.
    StudDistance: "stud-distance", "";
    /// Margin of a gear's rim, in teeth.
    StudMargin: "stud-margin", "2";
    /// Idlers the head takes.
    MostIdlers: "most-idlers", "2";
    /// What one idler does to the plate's sense.
    OneIdler: "one-idler", "follows";
    /// Trains of four gears can be mounted.
    FourGears: "four-gears", "yes";
    /// Least circle radius the pin reaches.
    ReachLeast: "reach-least", "";
    /// Greatest circle radius the pin reaches.
    ReachGreatest: "reach-greatest", "";
    /// Diameter of the handle's pin.
    Pin: "pin", "";
    /// Least opening of the arms.
    ArmsLeast: "arms-least", "10°";
    /// Greatest opening of the arms.
    ArmsGreatest: "arms-greatest", "350°";
    /// A dial on the handwheel.
    Handwheel: "handwheel", "no";
    /// Its marks for one turn, or what one mark is worth at the work.
    HandwheelMarks: "handwheel-marks", "180";
    /// Parts into which its vernier divides one mark.
    HandwheelVernier: "handwheel-vernier", "1";
    /// A fine dial that shifts the plate.
    FineDial: "fine-dial", "no";
    /// By how much one turn of it turns the plate.
    FineShift: "fine-shift", "5°";
    /// Its marks.
    FineMarks: "fine-marks", "100";
    /// Travel to each side of its zero, as an angle of the plate.
    FineTravel: "fine-travel", "10°";
    /// Its slack, in marks.
    FineSlack: "fine-slack", "0";
    /// Diameter of the work.
    WorkDiameter: "diameter", "76.2 mm";
}

impl Entry {
    /// The texts it can hold where it is a choice; nothing where it is typed.
    #[must_use]
    pub const fn choices(self) -> &'static [&'static str] {
        match self {
            Self::WorkTurns => &["clockwise", "anticlockwise"],
            Self::DegreeRing => &["clockwise", "anticlockwise", "none"],
            Self::PlateStop => &["withdraws", "fixed"],
            Self::OneIdler => &["follows", "against"],
            Self::Tilted
            | Self::SpindleClamp
            | Self::WormDropsOut
            | Self::FourGears
            | Self::Handwheel
            | Self::FineDial => &["yes", "no"],
            _ => &[],
        }
    }
}

/// Every entry with the text that gives `head`.
pub fn defaults(head: &Head) -> impl Iterator<Item = (Entry, String)> + '_ {
    Entry::ALL.into_iter().map(|entry| (entry, write(head, entry)))
}
