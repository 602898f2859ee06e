//! Heads of screws that are let in: countersunk ones by their sharp diameter, cap heads
//! by diameter and height.
//!
//! The sharp diameter is where the cone of the head would meet its flat top: sunk to
//! it the head is flush, whatever its rim was rounded or turned off to. Read in print
//! (tables of makers of screws): ISO 10642, DIN 7991, ISO 2009 and 7046, DIN 963 and 965,
//! ASME B18.3 and BS 2470, ISO 4762. For those of the metric standards it is shank + 2 ×
//! height, exactly. From memory: ASME B18.6.3 (greatest sharp), BS 57, BS 450, DIN 974-1.
//!
//! ```
//! use handturn::bench::heads::Standard;
//! let m6 = Standard::Iso10642.heads().iter().find(|head| head.name == "M6");
//! assert_eq!(m6.map(|head| (head.sharp, head.rim)), Some((13_440, 12_000)));
//! ```
use crate::error::Error;
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// Where a countersunk head is laid down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Standard {
    /// Hexagon socket, ISO 10642.
    Iso10642,
    /// Hexagon socket, DIN 7991.
    Din7991,
    /// Slotted and cross recess, ISO 2009 and ISO 7046.
    Iso7046,
    /// Slotted and cross recess, DIN 963 and DIN 965.
    Din963,
    /// BA, BS 57.
    Ba,
    /// Whitworth and BSF, BS 450.
    Whitworth,
    /// Unified, slotted and cross recess, ASME B18.6.3.
    Unified,
    /// Unified, hexagon socket, ASME B18.3 and BS 2470.
    UnifiedSocket,
}

/// A countersunk head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Head {
    /// Its thread, as it is called.
    pub name: &'static str,
    /// Sharp diameter, in thousandths of the standard's unit.
    pub sharp: u16,
    /// Greatest diameter of the rim as made, likewise; nought where it is not known.
    pub rim: u16,
}

/// A cap head with a hexagon socket, ISO 4762, in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cap {
    /// Its thread.
    pub name: &'static str,
    /// Diameter of the head.
    pub head: u16,
    /// Height of the head.
    pub height: u16,
    /// Diameter of the counterbore, DIN 974-1 (from memory).
    pub counterbore: u16,
}

impl Standard {
    /// Every one.
    pub const ALL: [Self; 8] = [
        Self::Iso7046,
        Self::Din963,
        Self::Iso10642,
        Self::Din7991,
        Self::Ba,
        Self::Whitworth,
        Self::Unified,
        Self::UnifiedSocket,
    ];

    /// Its heads, the smallest first.
    #[must_use]
    pub const fn heads(self) -> &'static [Head] {
        match self {
            Self::Iso10642 => ISO_10642,
            Self::Din7991 => DIN_7991,
            Self::Iso7046 => ISO_7046,
            Self::Din963 => DIN_963,
            Self::Ba => BA,
            Self::Whitworth => WHITWORTH,
            Self::Unified => UNIFIED,
            Self::UnifiedSocket => UNIFIED_SOCKET,
        }
    }

    /// Whether its sizes are in inches.
    #[must_use]
    pub const fn inches(self) -> bool {
        matches!(self, Self::Ba | Self::Whitworth | Self::Unified | Self::UnifiedSocket)
    }

    /// Whether its diameters are from memory.
    #[must_use]
    pub const fn from_memory(self) -> bool {
        matches!(self, Self::Ba | Self::Whitworth | Self::Unified)
    }

    /// Angle of its heads.
    ///
    /// # Errors
    /// None for these angles.
    pub fn angle(self) -> Result<Angle, Error> {
        let unified = matches!(self, Self::Unified | Self::UnifiedSocket);
        Angle::from_degrees(Fraction::whole(if unified { 82 } else { 90 }))
    }

    /// The head called `name`: its sharp diameter, and that of its rim where it is known.
    ///
    /// # Errors
    /// None for these sizes.
    pub fn size(self, name: &str) -> Result<Option<(Length, Option<Length>)>, Error> {
        let Some(head) = self.heads().iter().find(|head| head.name == name) else {
            return Ok(None);
        };
        let length = |thousandths: u16| {
            let size = Fraction::new(i64::from(thousandths), 1000)?;
            if self.inches() { Length::from_inches(size) } else { Ok(Length::from_mm(size)) }
        };
        let rim = if head.rim == 0 { None } else { Some(length(head.rim)?) };
        Ok(Some((length(head.sharp)?, rim)))
    }
}

macro_rules! heads {
    ($($(#[$doc:meta])* $table:ident: $($name:literal $sharp:literal $rim:literal,)*;)*) => {
        $($(#[$doc])* const $table: &[Head] =
            &[$(Head { name: $name, sharp: $sharp, rim: $rim }),*];)*
    };
}

heads! {
    /// Theoretical diameters of the standard; M14 from memory.
    ISO_10642:
        "M3" 6720 6000, "M4" 8960 8000, "M5" 11200 10000, "M6" 13440 12000,
        "M8" 17920 16000, "M10" 22400 20000, "M12" 26880 24000, "M14" 30800 27000,
        "M16" 33600 30000, "M20" 40320 36000,;
    /// Shank + 2 × the greatest height.
    DIN_7991:
        "M3" 6400 6000, "M4" 8600 8000, "M5" 10600 10000, "M6" 12600 12000,
        "M8" 16800 16000, "M10" 21000 20000, "M12" 25000 24000, "M14" 28000 27000,
        "M16" 31000 30000, "M20" 37000 36000,;
    /// Shank + 2 × the greatest height; the theoretical diameters of the standard.
    ISO_7046:
        "M1.6" 3600 3000, "M2" 4400 3800, "M2.5" 5500 4700, "M3" 6300 5500,
        "M3.5" 8200 7300, "M4" 9400 8400, "M5" 10400 9300, "M6" 12600 11300,
        "M8" 17300 15800, "M10" 20000 18300,;
    /// Shank + 2 × the greatest height.
    DIN_963:
        "M1.6" 3520 3000, "M2" 4400 3800, "M2.5" 5500 4700, "M3" 6300 5600,
        "M3.5" 7360 6500, "M4" 8400 7500, "M5" 10000 9200, "M6" 12000 11000,
        "M8" 16000 14500, "M10" 20000 18000,;
    /// Near 1 3/4 shanks; from memory.
    BA:
        "10 BA" 112 0, "8 BA" 157 0, "7 BA" 173 0, "6 BA" 194 0, "5 BA" 220 0,
        "4 BA" 252 0, "3 BA" 283 0, "2 BA" 319 0, "1 BA" 366 0, "0 BA" 413 0,;
    /// 1 3/4 shanks; from memory.
    WHITWORTH:
        "1/8" 219 0, "5/32" 273 0, "3/16" 328 0, "7/32" 383 0, "1/4" 438 0,
        "5/16" 547 0, "3/8" 656 0, "7/16" 766 0, "1/2" 875 0,;
    /// Greatest sharp diameter; from memory.
    UNIFIED:
        "#0" 119 0, "#1" 146 0, "#2" 172 0, "#3" 199 0, "#4" 225 0, "#5" 252 0,
        "#6" 279 0, "#8" 332 0, "#10" 385 0, "#12" 438 0, "1/4" 507 0, "5/16" 635 0,
        "3/8" 762 0, "7/16" 812 0, "1/2" 875 0, "9/16" 1000 0, "5/8" 1125 0, "3/4" 1375 0,;
    /// Greatest theoretical sharp diameter.
    UNIFIED_SOCKET:
        "#0" 138 0, "#1" 168 0, "#2" 197 0, "#3" 226 0, "#4" 255 0, "#5" 281 0,
        "#6" 307 0, "#8" 359 0, "#10" 411 0, "1/4" 531 0, "5/16" 656 0, "3/8" 781 0,
        "7/16" 844 0, "1/2" 937 0, "5/8" 1188 0, "3/4" 1438 0,;
}

macro_rules! caps {
    ($($name:literal $head:literal $height:literal $bore:literal,)*) => {
        /// Cap heads of ISO 4762, the smallest first.
        pub const CAPS: &[Cap] = &[$(
            Cap { name: $name, head: $head, height: $height, counterbore: $bore }
        ),*];
    };
}

caps! {
    "M1.6" 3000 1600 3500, "M2" 3800 2000 4400, "M2.5" 4500 2500 5500, "M3" 5500 3000 6500,
    "M4" 7000 4000 8000, "M5" 8500 5000 10000, "M6" 10000 6000 11000, "M8" 13000 8000 15000,
    "M10" 16000 10000 18000, "M12" 18000 12000 20000, "M14" 21000 14000 24000,
    "M16" 24000 16000 26000, "M20" 30000 20000 33000, "M24" 36000 24000 40000,
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;

    #[test]
    fn every_table_rises_and_no_rim_is_wider_than_its_cone() {
        for standard in Standard::ALL {
            let heads = standard.heads();
            assert!(heads.windows(2).all(|two| two[0].sharp < two[1].sharp), "{standard:?}");
            assert!(heads.iter().all(|head| head.rim < head.sharp), "{standard:?}");
        }
        assert!(CAPS.iter().all(|cap| cap.head < cap.counterbore));
    }

    #[test]
    fn a_head_is_found_by_its_thread() {
        let inch = |n| Length::from_inches(Fraction::new(n, 1000).unwrap()).unwrap();
        assert_eq!(Standard::Ba.size("2 BA").unwrap(), Some((inch(319), None)));
        assert_eq!(Standard::Ba.size("M6").unwrap(), None);
        let m4 = Standard::Iso7046.size("M4").unwrap().unwrap();
        assert_eq!(m4.0, Length::from_mm(Fraction::new(94, 10).unwrap()));
    }
}
