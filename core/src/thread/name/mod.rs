//! Threads by the names people write: `M6x0.75-6g`, `1/4-20 UNC 2A`, `2 BA`,
//! `3/8 x 32 ME`, `G 1/8`, `Tr 16x8 P4 LH`.
//!
//! Case and spaces are free, `x`, `×`, `*` and `-` all part size from pitch, comma
//! and point both mark decimals. A name that fits several series gives them all.
mod written;

use super::limits::{Class, Fit, Grade, Position, Side};
use super::series::{Called, Series, Size};
use super::taper::Standard;
use super::{Form, Kind, Thread};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Length;
use crate::measure::read::Unit;
use crate::number::Fraction;
use written::{Family, Number, Written};

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
/// form does not have or a lead that is no multiple of the pitch; [`Cause::Taper`] for a
/// taper thread, which [`Taper::read`](super::taper::Taper::read) reads; else as [`Thread::new`].
pub fn read(text: &str) -> Result<List<Found, MAX_FOUND>, Error> {
    let written = Written::read(text)?;
    if let Some(Family::Taper(_)) = written.family {
        let (from, to) = written.size.span;
        return Err(Error::new(Field::Thread, Cause::Taper).at(from, to));
    }
    let mut list = List::new();
    for series in Series::ALL {
        // The stub form is meant only where it is named.
        let unnamed = series != Series::StubAcme;
        if written.family.map_or(unnamed, |family| family.holds(series)) {
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

/// What the name of a taper thread says: its standard, nominal size and threads per inch.
pub(super) fn taper(text: &str) -> Result<(Standard, Number, Option<Number>), Error> {
    let written = Written::read(text)?;
    match written.family {
        Some(Family::Taper(standard)) => Ok((standard, written.size, written.second)),
        _ => Err(written.size.conflict(Field::Thread)),
    }
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
        Series::Me32 | Series::Me40 | Series::Brass | Series::Cycle => {
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
        Series::StubAcme => " stub Acme",
        Series::Cycle => " cycle",
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

impl Written {
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
            Some(family) => [Some(family.form().ok_or(pitch.conflict(Field::Pitch))?), None],
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
            (&[(number, 'G' | 'g')], None) if matches!(kind, Kind::Acme | Kind::StubAcme) => {
                plain(Fit::Number(number))
            }
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
mod tests;
