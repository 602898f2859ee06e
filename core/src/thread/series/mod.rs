//! Series of threads as data. Each row is a size; each table says what was read
//! in print and what is from memory.
mod american;
mod british;
mod metric;

use super::{Form, Hand, Thread};
use crate::error::{Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// A standard list of threads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Series {
    /// ISO metric, coarse pitch.
    Coarse,
    /// ISO metric, fine pitches.
    Fine,
    /// Unified coarse.
    Unc,
    /// Unified fine.
    Unf,
    /// Unified extra fine.
    Unef,
    /// Unified, 4 threads per inch.
    Un4,
    /// Unified, 6 threads per inch.
    Un6,
    /// Unified, 8 threads per inch.
    Un8,
    /// Unified, 12 threads per inch.
    Un12,
    /// Unified, 16 threads per inch.
    Un16,
    /// Unified, 20 threads per inch.
    Un20,
    /// Unified, 28 threads per inch.
    Un28,
    /// Unified, 32 threads per inch.
    Un32,
    /// British Standard Whitworth.
    Bsw,
    /// British Standard Fine.
    Bsf,
    /// British Association.
    Ba,
    /// Model Engineer, 40 threads per inch.
    Me40,
    /// Model Engineer, 32 threads per inch.
    Me32,
    /// Brass, 26 threads per inch.
    Brass,
    /// British Standard Pipe, parallel (G).
    #[doc(alias = "BSP")]
    Pipe,
    /// Metric trapezoidal.
    Tr,
    /// Acme, general purpose.
    Acme,
    /// Stub Acme.
    StubAcme,
    /// Cycle (BSC, CEI).
    #[doc(alias = "BSC")]
    #[doc(alias = "CEI")]
    Cycle,
}

/// One size of a series. What the numbers count is the series' business:
/// [`Series::thread`] reads them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Major diameter: micrometres, or hundred-thousandths of an inch.
    pub(crate) major: u32,
    /// Pitch in micrometres, or eighths of a thread per inch.
    pub(crate) pitch: u16,
    /// What it is called where that is not its diameter: the BA number, the
    /// pipe's nominal size in sixteenths, a Unified number plus one; else nought.
    pub(crate) name: u8,
}

/// How a size is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Called {
    /// By number: 10-24, 2 BA.
    Number(u8),
    /// By a diameter or nominal size in inches.
    Inches(Fraction),
    /// By a diameter in millimetres.
    Mm(Fraction),
}

const fn s(major: u32, pitch: u16, name: u8) -> Size {
    Size { major, pitch, name }
}

/// Hundred-thousandths of an inch in a sixteenth.
const SIXTEENTH: u32 = 6250;

impl Series {
    /// Every series, those met most often first within each family.
    pub const ALL: [Self; 24] = [
        Self::Coarse,
        Self::Fine,
        Self::Unc,
        Self::Unf,
        Self::Unef,
        Self::Bsw,
        Self::Bsf,
        Self::Ba,
        Self::Me40,
        Self::Me32,
        Self::Brass,
        Self::Cycle,
        Self::Pipe,
        Self::Tr,
        Self::Acme,
        Self::StubAcme,
        Self::Un8,
        Self::Un12,
        Self::Un16,
        Self::Un20,
        Self::Un28,
        Self::Un32,
        Self::Un6,
        Self::Un4,
    ];

    /// The form of its threads.
    #[must_use]
    pub const fn form(self) -> Form {
        match self {
            Self::Coarse | Self::Fine => Form::METRIC,
            Self::Bsw | Self::Bsf | Self::Me40 | Self::Me32 | Self::Brass => Form::WHITWORTH,
            Self::Ba => Form::BA,
            Self::Pipe => Form::PIPE,
            Self::Tr => Form::TRAPEZOIDAL,
            Self::Acme => Form::ACME,
            Self::StubAcme => Form::STUB_ACME,
            Self::Cycle => Form::CYCLE,
            _ => Form::UNIFIED,
        }
    }

    /// Its `k`-th size from nought; `None` past the last.
    #[must_use]
    pub fn size(self, k: usize) -> Option<Size> {
        // Constant-pitch Unified: threads per inch, and first and last size in sixteenths.
        let (tpi, first, last) = match self {
            Self::Un4 => (4, 40, 96),
            Self::Un6 => (6, 22, 96),
            Self::Un8 => (8, 16, 96),
            Self::Un12 => (12, 8, 96),
            Self::Un16 => (16, 6, 96),
            Self::Un20 => (20, 4, 48),
            Self::Un28 => (28, 4, 24),
            Self::Un32 => (32, 4, 16),
            _ => return self.table().get(k).copied(),
        };
        by_sixteenths(tpi, first, last, u32::try_from(k).ok()?)
    }

    /// How many sizes it has.
    #[must_use]
    pub fn sizes(self) -> usize {
        (0..200).take_while(|&k| self.size(k).is_some()).count()
    }

    const fn table(self) -> &'static [Size] {
        match self {
            Self::Coarse => metric::COARSE,
            Self::Fine => metric::FINE,
            Self::Unc => american::UNC,
            Self::Unf => american::UNF,
            Self::Unef => american::UNEF,
            Self::Bsw => british::BSW,
            Self::Bsf => british::BSF,
            Self::Ba => british::BA,
            Self::Me40 => british::ME40,
            Self::Me32 => british::ME32,
            Self::Brass => british::BRASS,
            Self::Pipe => british::PIPE,
            Self::Tr => metric::TRAPEZOIDAL,
            // ASME B1.8 lists the sizes of ASME B1.5 (from memory).
            Self::Acme | Self::StubAcme => american::ACME,
            Self::Cycle => british::CYCLE,
            _ => &[],
        }
    }

    /// The thread that `size` stands for in this series, single and right-handed.
    ///
    /// # Errors
    /// [`Cause::Overflow`](crate::Cause::Overflow); [`Cause::OutOfRange`](crate::Cause::OutOfRange) for a size of another series.
    pub fn thread(self, size: Size) -> Result<Thread, Error> {
        let um = |n: i64| Ok(Length::from_mm(Fraction::new(n, 1000)?));
        let (major, pitch) = (i64::from(size.major), i64::from(size.pitch));
        let form = self.form();
        let per_inch = || Length::from_inches(Fraction::new(8, pitch)?);
        let (major, pitch) = match self {
            Self::Coarse | Self::Fine | Self::Ba | Self::Tr => (um(major), um(pitch)),
            Self::Pipe => (um(major), per_inch()),
            _ => (Fraction::new(major, 100_000).and_then(Length::from_inches), per_inch()),
        };
        let of = |field| move |error: Error| error.of(field);
        let (major, pitch) = (major.map_err(of(Field::Major))?, pitch.map_err(of(Field::Pitch))?);
        Thread::new(form, major, pitch, 1, Hand::Right)
    }

    /// How `size` is called in this series.
    ///
    /// # Errors
    /// [`Cause::Overflow`](crate::Cause::Overflow).
    pub fn called(self, size: Size) -> Result<Called, Error> {
        let name = i64::from(size.name);
        Ok(match self {
            Self::Ba => Called::Number(size.name),
            Self::Pipe => Called::Inches(Fraction::new(name, 16)?),
            Self::Coarse | Self::Fine | Self::Tr => {
                Called::Mm(Fraction::new(i64::from(size.major), 1000)?)
            }
            _ => match size.name.checked_sub(1) {
                Some(number) => Called::Number(number),
                None => Called::Inches(Fraction::new(i64::from(size.major), 100_000)?),
            },
        })
    }
}

/// The `k`-th size of a constant-pitch series: by sixteenths to 2 in, by eighths
/// above (ASME B1.1, primary and secondary sizes; from memory).
fn by_sixteenths(tpi: u16, first: u32, last: u32, k: u32) -> Option<Size> {
    let below = 32_u32.saturating_sub(first);
    let sixteenths = match k.checked_sub(below) {
        None | Some(0) => first.checked_add(k)?,
        Some(past) => first.max(32).checked_add(past.checked_mul(2)?)?,
    };
    let size = s(sixteenths.checked_mul(SIXTEENTH)?, tpi.checked_mul(8)?, 0);
    (sixteenths <= last).then_some(size)
}

/// Whether `series` holds a thread of this major and pitch.
pub(crate) fn lists(series: Series, thread: &Thread) -> bool {
    let same = |size| {
        let found = series.thread(size);
        found.is_ok_and(|found| found.major == thread.major && found.pitch == thread.pitch)
    };
    (0..series.sizes()).filter_map(|k| series.size(k)).any(same)
}

/// Whether a table ascends by major and, where that is equal, descends by pitch.
const fn ordered(mut rows: &[Size]) -> bool {
    while let [a, rest @ ..] = rows {
        if let [b, ..] = rest {
            let up = a.major < b.major || a.major == b.major && a.pitch > b.pitch;
            if !up || a.major == 0 || a.pitch == 0 {
                return false;
            }
        }
        rows = rest;
    }
    true
}

const _: () = {
    assert!(ordered(metric::COARSE) && ordered(metric::FINE) && ordered(metric::TRAPEZOIDAL));
    assert!(ordered(british::BSW) && ordered(british::BSF) && ordered(british::PIPE));
    assert!(ordered(british::ME40) && ordered(british::ME32) && ordered(british::BRASS));
    assert!(ordered(american::UNC) && ordered(american::UNF) && ordered(american::UNEF));
    assert!(ordered(american::ACME) && ordered(british::CYCLE));
    // BA descends: a higher number is a smaller screw.
    let mut rows = british::BA;
    let mut number = 0;
    while let [a, rest @ ..] = rows {
        assert!(a.name == number);
        if let [b, ..] = rest {
            assert!(a.major > b.major && a.pitch > b.pitch && b.name > a.name);
            number = b.name;
        }
        rows = rest;
    }
};
