//! Threads by the names people write: `M6x0.75-6g`, `1/4-20 UNC 2A`, `2 BA`,
//! `3/8 x 32 ME`, `G 1/8`, `Tr 16x8 P4 LH`.
//!
//! Case and spaces are free, `x`, `×`, `*` and `-` all part size from pitch, comma
//! and point both mark decimals. A name that fits several series gives them all.
use super::limits::{Class, Fit, Grade, Position, Side};
use super::series::{Called, Series, Size};
use super::{Form, Hand, Kind, Thread};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Length;
use crate::measure::read::Unit;
use crate::measure::scan::Scan;
use crate::number::Fraction;

/// Threads that one name can stand for.
pub const MAX_FOUND: usize = 16;

/// A thread that a name stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    /// The thread.
    pub thread: Thread,
    /// The series and size it is listed under; `None` for one outside them all.
    pub listed: Option<(Series, Size)>,
    /// The tolerance class, where one was named.
    pub class: Option<Class>,
}

/// The threads that `text` can stand for, those met most often first.
///
/// ```
/// use handturn::thread::{Series, name, limits::limits};
/// // A screw on a drawing: "1/4-20 UNC-2A". What may its pitch diameter measure?
/// let found = name::read("1/4-20 UNC-2A")?;
/// assert_eq!(found.len(), 1);
/// let screw = found[0];
/// assert_eq!(screw.listed.map(|(series, _)| series), Some(Series::Unc));
/// let range = limits(&screw.thread, screw.class.expect("named"))?.pitch_diameter;
/// let inches = |at: Option<handturn::measure::Length>| at.expect("set").inches();
/// assert_eq!(inches(range.max)?.to_string(), "541/2500"); // 0.2164 in
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// [`Cause::Empty`], [`Cause::NotANumber`] with the place in the text;
/// [`Cause::Conflict`] for a pitch that the series named does not have, a class that the
/// form does not have or a lead that is no multiple of the pitch; else as [`Thread::new`].
pub fn read(text: &str) -> Result<List<Found, MAX_FOUND>, Error> {
    let written = Written::read(text)?;
    let mut list = List::new();
    for series in Series::ALL {
        if written.family.is_none_or(|family| family.holds(series)) {
            for size in (0..series.sizes()).filter_map(|k| series.size(k)) {
                written.listed(series, size, &mut list)?;
            }
        }
    }
    if list.is_empty() {
        written.unlisted(&mut list)?;
    }
    Ok(list)
}

/// Writes the name of `size` in `series` piece by piece; [`read`] reads it again.
///
/// ```
/// use handturn::thread::{Series, name};
/// let mut text = String::new();
/// let third = Series::Ba.size(2).expect("2 BA stands there");
/// name::write(Series::Ba, third, &mut |piece| text.push_str(piece));
/// assert_eq!(text, "2 BA");
/// ```
pub fn write(series: Series, size: Size, put: &mut dyn FnMut(&str)) {
    let before = match series {
        Series::Coarse | Series::Fine => "M",
        Series::Tr => "Tr",
        Series::Pipe => "G ",
        _ => "",
    };
    put(before);
    match series.called(size) {
        Ok(Called::Number(number)) => whole(i64::from(number), put),
        Ok(Called::Inches(inches)) => mixed(inches, put),
        Ok(Called::Mm(mm)) => decimals(mm, put),
        Err(_) => {}
    }
    let pitch = i64::from(size.pitch);
    let mm = Fraction::new(pitch, 1000).unwrap_or(Fraction::ZERO);
    let tpi = Fraction::new(pitch, 8).unwrap_or(Fraction::ZERO);
    match series {
        Series::Fine | Series::Tr => {
            put("x");
            decimals(mm, put);
        }
        Series::Coarse | Series::Pipe | Series::Ba | Series::Bsw | Series::Bsf => {}
        Series::Me32 | Series::Me40 | Series::Brass => {
            put(" x ");
            mixed(tpi, put);
        }
        _ => {
            put("-");
            mixed(tpi, put);
        }
    }
    put(match series {
        Series::Coarse | Series::Fine | Series::Tr | Series::Pipe => "",
        Series::Unc => " UNC",
        Series::Unf => " UNF",
        Series::Unef => " UNEF",
        Series::Bsw => " BSW",
        Series::Bsf => " BSF",
        Series::Ba => " BA",
        Series::Me32 | Series::Me40 => " ME",
        Series::Brass => " brass",
        Series::Acme => " Acme",
        _ => " UN",
    });
}

fn whole(number: i64, put: &mut dyn FnMut(&str)) {
    let mut unit = 1_i64;
    while number.checked_div(unit).is_some_and(|left| left >= 10) {
        unit = unit.saturating_mul(10);
    }
    while unit > 0 {
        let digit = number.checked_div(unit).and_then(|left| left.checked_rem(10)).unwrap_or(0);
        let at = usize::try_from(digit).unwrap_or(0);
        put("0123456789".get(at..at.saturating_add(1)).unwrap_or_default());
        unit = unit.checked_div(10).unwrap_or(0);
    }
}

/// `1 1/4`
fn mixed(value: Fraction, put: &mut dyn FnMut(&str)) {
    let part = value.part();
    if value.floor() != 0 || part.is_zero() {
        whole(value.floor(), put);
        put(if part.is_zero() { "" } else { " " });
    }
    if !part.is_zero() {
        whole(part.num(), put);
        put("/");
        whole(part.den(), put);
    }
}

/// `0.75`, to three places.
fn decimals(value: Fraction, put: &mut dyn FnMut(&str)) {
    whole(value.floor(), put);
    let mut rest = value.part();
    put(if rest.is_zero() { "" } else { "." });
    for _ in 0..3 {
        if !rest.is_zero() {
            let ten = rest.times(10).unwrap_or(Fraction::ZERO);
            whole(ten.floor(), put);
            rest = ten.part();
        }
    }
}

/// What the words of a name say of the kind of thread.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Family {
    Metric,
    Tr,
    Pipe,
    Ba,
    Acme,
    Me,
    Brass,
    Whitworth,
    /// Unified with no series named, or one outside them.
    Unified,
    Square,
    One(Series),
}

impl Family {
    fn named(word: &str) -> Option<Self> {
        const WORDS: [(&str, Family); 20] = [
            ("m", Family::Metric),
            ("tr", Family::Tr),
            ("g", Family::Pipe),
            ("bsp", Family::Pipe),
            ("bspp", Family::Pipe),
            ("ba", Family::Ba),
            ("acme", Family::Acme),
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

    fn holds(self, series: Series) -> bool {
        match self {
            Self::One(one) => one == series,
            Self::Me => matches!(series, Series::Me32 | Series::Me40),
            Self::Brass => series == Series::Brass,
            Self::Square => false,
            Self::Metric => series.form().kind == Kind::Metric,
            Self::Tr => series == Series::Tr,
            Self::Pipe => series == Series::Pipe,
            Self::Ba => series == Series::Ba,
            Self::Acme => series == Series::Acme,
            Self::Whitworth => series.form().kind == Kind::Whitworth,
            Self::Unified => series.form().kind == Kind::Unified,
        }
    }

    /// The form of a thread that no series lists; `None` where the name allows no other.
    fn form(self) -> Option<Form> {
        match self {
            Self::Metric => Some(Form::METRIC),
            Self::Tr => Some(Form::TRAPEZOIDAL),
            Self::Acme => Some(Form::ACME),
            Self::Me | Self::Whitworth => Some(Form::WHITWORTH),
            Self::Unified => Some(Form::UNIFIED),
            Self::Square => Some(Form::SQUARE),
            Self::Brass | Self::Pipe | Self::Ba | Self::One(_) => None,
        }
    }
}

/// A number of a name, and where it stands.
#[derive(Clone, Copy)]
struct Number {
    value: Fraction,
    span: (usize, usize),
    inch: bool,
}

/// A name taken apart.
struct Written {
    family: Option<Family>,
    /// Whether the size was marked as a number: `#10`.
    numbered: bool,
    size: Number,
    /// The second number: threads per inch, pitch, or lead where a pitch follows.
    second: Option<Number>,
    /// After `P`: the pitch of a thread with several starts.
    pitch: Option<Number>,
    hand: Hand,
    /// Grades as written: `6g`, `4g6g`, `2A`.
    grades: List<(u8, char), 2>,
    fit: Option<Fit>,
    side: Option<Side>,
    class_span: (usize, usize),
}

impl Written {
    fn read(text: &str) -> Result<Self, Error> {
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

    /// Adds `size` of `series` where the name fits it.
    fn listed(
        &self,
        series: Series,
        size: Size,
        list: &mut List<Found, MAX_FOUND>,
    ) -> Result<(), Error> {
        let value = self.size.value;
        let named = match series.called(size)? {
            Called::Number(number) => {
                let sure = !self.numbered || series != Series::Ba || self.family.is_some();
                sure && !self.size.inch && value == Fraction::whole(i64::from(number))
            }
            Called::Inches(inches) => !self.numbered && value == inches,
            // Without its letter, a metric size is believed only with its pitch.
            Called::Mm(mm) => {
                let sure = self.family.is_some() || self.second.is_some();
                !self.numbered && !self.size.inch && sure && value == mm
            }
        };
        let alone = self.second.is_none() && self.pitch.is_none();
        // M8 alone is the coarse one.
        if !named || alone && matches!(series, Series::Fine | Series::Tr) {
            return Ok(());
        }
        let mut thread = series.thread(size)?;
        if let Some(pitch) = self.pitch.or(self.second) {
            let mm = matches!(series.form().kind, Kind::Metric | Kind::Trapezoidal | Kind::Ba);
            let own = if mm { thread.pitch.mm() } else { thread.tpi()? };
            if own != pitch.value {
                return Ok(());
            }
        }
        thread.starts = self.starts()?;
        thread.hand = self.hand;
        thread.check()?;
        let same = |found: &&Found| {
            let other = &found.thread;
            other.form == thread.form && other.major == thread.major && other.pitch == thread.pitch
        };
        if list.iter().find(same).is_none() {
            let class = self.class(thread.form.kind)?;
            let found = Found { thread, listed: Some((series, size)), class };
            list.push(found).map_err(|_| self.too_many())?;
        }
        Ok(())
    }

    /// Adds what the name says of a thread that no series lists.
    fn unlisted(&self, list: &mut List<Found, MAX_FOUND>) -> Result<(), Error> {
        let conflict = |number: Number| {
            Error::new(Field::Pitch, Cause::Conflict).at(number.span.0, number.span.1)
        };
        let Some(pitch) = self.pitch.or(self.second) else {
            let (from, to) = self.size.span;
            let cause = if self.family.is_some_and(|family| family.form().is_none()) {
                Error::new(Field::Thread, Cause::Conflict)
            } else {
                Error::new(Field::Pitch, Cause::Empty)
            };
            return Err(cause.at(from, to));
        };
        let forms = match self.family {
            Some(family) => [Some(family.form().ok_or(conflict(pitch))?), None],
            None => [Some(Form::UNIFIED), Some(Form::WHITWORTH)],
        };
        for mut form in forms.into_iter().flatten() {
            let inch = self.size.inch || self.numbered || form.unit == Unit::Inch;
            let place = |error: Error| {
                let number = if error.field == Field::Major { self.size } else { pitch };
                error.at(number.span.0, number.span.1)
            };
            let major = if self.numbered {
                // Number n measures 0.060 in and 0.013 in more for each number.
                let thousandths = self.size.value.times(13)?.checked_add(Fraction::whole(60))?;
                thousandths.over(1000)?
            } else {
                self.size.value
            };
            let (major, pitch) = if inch {
                form.unit = Unit::Inch;
                let one = pitch.value.inverse().map_err(|e| place(e.of(Field::Pitch)))?;
                (Length::from_inches(major)?, Length::from_inches(one)?)
            } else {
                (Length::from_mm(major), Length::from_mm(pitch.value))
            };
            let thread = Thread::new(form, major, pitch, self.starts()?, self.hand);
            let class = self.class(form.kind)?;
            let found = Found { thread: thread.map_err(place)?, listed: None, class };
            list.push(found).map_err(|_| self.too_many())?;
        }
        Ok(())
    }

    fn too_many(&self) -> Error {
        let most = u16::try_from(MAX_FOUND).unwrap_or(u16::MAX);
        let (from, to) = self.size.span;
        Error::new(Field::Thread, Cause::TooMany { most }).at(from, to)
    }

    /// Starts: the lead over the pitch where both are given.
    fn starts(&self) -> Result<u8, Error> {
        let (Some(lead), Some(pitch)) = (self.second, self.pitch) else { return Ok(1) };
        let conflict = Error::new(Field::Starts, Cause::Conflict).at(pitch.span.0, pitch.span.1);
        let starts = lead.value.checked_div(pitch.value).map_err(|_| conflict)?;
        let whole = u8::try_from(starts.num()).map_err(|_| conflict)?;
        if starts.is_whole() { Ok(whole) } else { Err(conflict) }
    }

    /// The class named, as it reads for a thread of `kind`.
    fn class(&self, kind: Kind) -> Result<Option<Class>, Error> {
        let (from, to) = self.class_span;
        let conflict = Error::new(Field::Class, Cause::Conflict).at(from, to);
        let side = self.side.unwrap_or(Side::External);
        let plain = |fit| Ok(Some(Class { side, fit }));
        match (&*self.grades, self.fit) {
            ([], None) => Ok(None),
            ([], Some(fit)) => {
                let fits = match fit {
                    Fit::PipeA | Fit::PipeB => kind == Kind::Pipe,
                    Fit::Close | Fit::Normal => matches!(kind, Kind::Whitworth | Kind::Ba),
                    _ => kind == Kind::Whitworth,
                };
                if fits { plain(fit) } else { Err(conflict) }
            }
            (&[(number, 'A' | 'a')], None) if kind == Kind::Unified => {
                Ok(Some(Class { side: Side::External, fit: Fit::Number(number) }))
            }
            (&[(number, 'B' | 'b')], None) if kind == Kind::Unified => {
                Ok(Some(Class { side: Side::Internal, fit: Fit::Number(number) }))
            }
            (&[(number, 'G' | 'g')], None) if kind == Kind::Acme => plain(Fit::Number(number)),
            (&[first, ref rest @ ..], None) if matches!(kind, Kind::Metric | Kind::Trapezoidal) => {
                let second = rest.first().copied().unwrap_or(first);
                let (pitch, side) = iso(first).ok_or(conflict)?;
                let (crest, same) = iso(second).ok_or(conflict)?;
                let fit = Fit::Iso(pitch, crest);
                if side == same { Ok(Some(Class { side, fit })) } else { Err(conflict) }
            }
            _ => Err(conflict),
        }
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

/// A grade of ISO 965: a small letter for the screw, a capital for the nut.
fn iso((grade, letter): (u8, char)) -> Option<(Grade, Side)> {
    let (position, side) = match letter {
        'e' => (Position::E, Side::External),
        'f' => (Position::F, Side::External),
        'g' => (Position::G, Side::External),
        'h' => (Position::H, Side::External),
        'G' => (Position::G, Side::Internal),
        'H' => (Position::H, Side::Internal),
        _ => return None,
    };
    Some((Grade { grade, position }, side))
}

#[cfg(test)]
#[path = "name_tests.rs"]
mod tests;
