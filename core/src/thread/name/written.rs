//! A name of a thread taken apart: which words and numbers stand where. What they
//! stand for is for the module above.
use super::super::limits::{Fit, Side};
use super::super::series::Series;
use super::super::taper::Standard;
use super::super::{Form, Hand, Kind};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::scan::Scan;
use crate::number::Fraction;

/// What the words of a name say of the kind of thread.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Family {
    Metric,
    Tr,
    Pipe,
    Ba,
    Acme,
    StubAcme,
    Cycle,
    Me,
    Brass,
    Whitworth,
    /// Unified with no series named, or one outside them.
    Unified,
    Square,
    /// Taper pipe threads, which no series holds.
    Taper(Standard),
    One(Series),
}

impl Family {
    fn named(word: &str) -> Option<Self> {
        const WORDS: [(&str, Family); 28] = [
            ("m", Family::Metric),
            ("tr", Family::Tr),
            ("g", Family::Pipe),
            ("bsp", Family::Pipe),
            ("bspp", Family::Pipe),
            ("npt", Family::Taper(Standard::Npt)),
            ("bspt", Family::Taper(Standard::R)),
            ("r", Family::Taper(Standard::R)),
            ("rc", Family::Taper(Standard::R)),
            ("ba", Family::Ba),
            ("acme", Family::Acme),
            ("stub", Family::StubAcme),
            ("cycle", Family::Cycle),
            ("bsc", Family::Cycle),
            ("cei", Family::Cycle),
            ("me", Family::Me),
            ("brass", Family::Brass),
            ("bsb", Family::Brass),
            ("whit", Family::Whitworth),
            ("whitworth", Family::Whitworth),
            ("un", Family::Unified),
            ("uns", Family::Unified),
            ("unc", Family::One(Series::Unc)),
            ("unf", Family::One(Series::Unf)),
            ("unef", Family::One(Series::Unef)),
            ("bsw", Family::One(Series::Bsw)),
            ("bsf", Family::One(Series::Bsf)),
            ("square", Family::Square),
        ];
        WORDS.iter().find(|(name, _)| *name == word).map(|&(_, family)| family)
    }

    pub(super) fn holds(self, series: Series) -> bool {
        match self {
            Self::One(one) => one == series,
            Self::Me => matches!(series, Series::Me32 | Series::Me40),
            Self::Brass => series == Series::Brass,
            Self::Square | Self::Taper(_) => false,
            Self::Metric => series.form().kind == Kind::Metric,
            Self::Tr => series == Series::Tr,
            Self::Pipe => series == Series::Pipe,
            Self::Ba => series == Series::Ba,
            Self::Acme => series == Series::Acme,
            Self::StubAcme => series == Series::StubAcme,
            Self::Cycle => series == Series::Cycle,
            Self::Whitworth => series.form().kind == Kind::Whitworth,
            Self::Unified => series.form().kind == Kind::Unified,
        }
    }

    /// The form of a thread that no series lists; `None` where the name allows no other.
    pub(super) fn form(self) -> Option<Form> {
        match self {
            Self::Metric => Some(Form::METRIC),
            Self::Tr => Some(Form::TRAPEZOIDAL),
            Self::Acme => Some(Form::ACME),
            Self::StubAcme => Some(Form::STUB_ACME),
            Self::Cycle => Some(Form::CYCLE),
            Self::Me | Self::Whitworth => Some(Form::WHITWORTH),
            Self::Unified => Some(Form::UNIFIED),
            Self::Square => Some(Form::SQUARE),
            Self::Brass | Self::Pipe | Self::Ba | Self::Taper(_) | Self::One(_) => None,
        }
    }
}

/// A number of a name, and where it stands.
#[derive(Clone, Copy)]
pub(in super::super) struct Number {
    pub(in super::super) value: Fraction,
    pub(super) span: (usize, usize),
    pub(super) inch: bool,
}

impl Number {
    /// Refuses it: it does not go with the rest of the name.
    pub(in super::super) fn conflict(self, field: Field) -> Error {
        Error::new(field, Cause::Conflict).at(self.span.0, self.span.1)
    }
}

/// A name taken apart.
pub(super) struct Written {
    pub(super) family: Option<Family>,
    /// Whether the size was marked as a number: `#10`.
    pub(super) numbered: bool,
    pub(super) size: Number,
    /// The second number: threads per inch, pitch, or lead where a pitch follows.
    pub(super) second: Option<Number>,
    /// After `P`: the pitch of a thread with several starts.
    pub(super) pitch: Option<Number>,
    pub(super) hand: Hand,
    /// Grades as written: `6g`, `4g6g`, `2A`.
    pub(super) grades: List<(u8, char), 2>,
    pub(super) fit: Option<Fit>,
    pub(super) side: Option<Side>,
    pub(super) class_span: (usize, usize),
}

impl Written {
    pub(super) fn read(text: &str) -> Result<Self, Error> {
        let mut scan = Scan::new(text, Field::Thread);
        let nothing = Number { value: Fraction::ZERO, span: (0, 0), inch: false };
        let mut written = Self {
            family: None,
            numbered: false,
            size: nothing,
            second: None,
            pitch: None,
            hand: Hand::Right,
            grades: List::new(),
            fit: None,
            side: None,
            class_span: (0, 0),
        };
        let mut sized = false;
        let mut pitch_next = false;
        loop {
            while scan.take(parts).is_some() {}
            let from = scan.at;
            let Some(next) = scan.peek() else { break };
            if next == '#' {
                scan.next();
                written.numbered = !sized;
            } else if next.is_ascii_digit() || matches!(next, '.' | ',') {
                if let Some(grade) = grade(&mut scan) {
                    let full = written.grades.push(grade).is_err();
                    if full || !sized {
                        return Err(scan.error(Cause::NotANumber, from));
                    }
                    let first = if written.class_span.1 == 0 { from } else { written.class_span.0 };
                    written.class_span = (first, scan.at);
                    continue;
                }
                let value = scan.number()?;
                let span = (from, scan.at);
                let mut ahead = scan.clone();
                ahead.space();
                let inch = ahead.take(|c| matches!(c, '"' | '″' | '”')).is_some()
                    || ahead.word("inch")
                    || ahead.word("in");
                if inch {
                    scan = ahead;
                }
                let number = Number { value, span, inch };
                match (sized, written.second, pitch_next) {
                    (false, ..) => (written.size, sized) = (number, true),
                    (true, _, true) => written.pitch = Some(number),
                    (true, None, false) => written.second = Some(number),
                    _ => return Err(scan.error(Cause::NotANumber, from)),
                }
                pitch_next = false;
            } else {
                pitch_next = written.word(&mut scan)?;
            }
        }
        if !sized {
            return Err(scan.error(Cause::Empty, 0));
        }
        Ok(written)
    }

    /// Reads a word; whether the number after it is the pitch of several starts.
    fn word(&mut self, scan: &mut Scan) -> Result<bool, Error> {
        let from = scan.at;
        let mut letters = List::<u8, 12>::new();
        let unknown = |scan: &Scan| scan.error(Cause::NotANumber, from);
        while let Some(letter) = scan.take(|c| c.is_ascii_alphabetic()) {
            let byte = u8::try_from(letter.to_ascii_lowercase()).unwrap_or(b'?');
            letters.push(byte).map_err(|_| unknown(scan))?;
        }
        let word = core::str::from_utf8(&letters).unwrap_or_default();
        if let Some(family) = Family::named(word) {
            // "Stub Acme" and "Acme stub" are one.
            let both = |a, b| family == a && self.family == Some(b);
            if both(Family::Acme, Family::StubAcme) || both(Family::StubAcme, Family::Acme) {
                self.family = Some(Family::StubAcme);
                return Ok(false);
            }
            if self.family.is_some() {
                return Err(unknown(scan));
            }
            self.family = Some(family);
            return Ok(false);
        }
        let span = (from, scan.at);
        let mut fit = |fit| (self.fit, self.class_span) = (Some(fit), span);
        match word {
            "x" | "ph" | "tpi" | "mm" | "in" | "inch" | "class" | "fit" | "rh" => {}
            "p" => return Ok(true),
            "no" => {
                self.numbered = true;
                scan.take(|c| c == '.');
            }
            "lh" | "left" => self.hand = Hand::Left,
            "close" => fit(Fit::Close),
            "medium" => fit(Fit::Medium),
            "free" => fit(Fit::Free),
            "normal" => fit(Fit::Normal),
            "a" => fit(Fit::PipeA),
            "b" => fit(Fit::PipeB),
            "screw" | "bolt" | "external" => self.side = Some(Side::External),
            "nut" | "tapped" | "internal" => self.side = Some(Side::Internal),
            _ => {
                // A character that is no letter has not been passed yet.
                if letters.is_empty() {
                    scan.next();
                }
                return Err(unknown(scan));
            }
        }
        Ok(false)
    }
}

/// What parts the pieces of a name.
fn parts(c: char) -> bool {
    c.is_whitespace() || matches!(c, '×' | '*' | '-' | '−' | '–' | '(' | ')' | ';' | ':')
}

/// A digit with one letter of a class right after it.
fn grade(scan: &mut Scan) -> Option<(u8, char)> {
    let mut ahead = scan.clone();
    let digit = ahead.take(|c| c.is_ascii_digit())?;
    let letter = ahead.take(|c| matches!(c.to_ascii_lowercase(), 'a' | 'b' | 'e'..='h'))?;
    if ahead.peek().is_some_and(char::is_alphabetic) {
        return None;
    }
    *scan = ahead;
    Some((u8::try_from(digit.to_digit(10)?).ok()?, letter))
}
