//! A formula: read from left to right onto two short piles, one of amounts and one of
//! what is still to be done with them, so brackets nest without recursion.
use super::{Amount, Fault, Kind, in_name};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::read::{Unit, one_angle, with_unit};
use crate::measure::scan::Scan;
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// Amounts and signs that wait at once.
const WAITING: usize = 24;

/// An amount on the way: figures alone have no unit yet.
#[derive(Clone, Copy)]
enum Part {
    Bare(Fraction),
    Is(Amount),
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    Open,
    Plus,
    Minus,
    Times,
    Over,
    /// The amount that follows is taken below nought.
    Negate,
}

impl Sign {
    /// What binds closer is done first.
    const fn rank(self) -> u8 {
        match self {
            Self::Open => 0,
            Self::Plus | Self::Minus => 1,
            Self::Times | Self::Over => 2,
            Self::Negate => 3,
        }
    }
}

/// The cursor after the `=` of a formula; none where `text` is no formula.
fn start(text: &str) -> Option<Scan<'_>> {
    let mut scan = Scan::new(text, Field::Value);
    scan.space();
    scan.take(|c| c == '=').map(|_| scan)
}

/// Whether `text` is a formula.
pub(super) fn is_formula(text: &str) -> bool {
    start(text).is_some()
}

/// Calls `each` with every name in the formula `text`; other text is passed over.
pub(super) fn names(text: &str, mut each: impl FnMut(&str)) {
    let Some(mut scan) = start(text) else { return };
    while let Some(c) = scan.peek() {
        if c.is_ascii_digit() {
            let _ = figures(&mut scan, false);
        } else if c.is_alphabetic() {
            each(name(&mut scan, text).0);
        } else {
            scan.next();
        }
    }
}

/// What a name stands for; also where it stands in the formula, for what is wrong with it.
type Named<'a> = &'a dyn Fn(&str, (u16, u16)) -> Result<Amount, Fault>;

/// What the formula `text` comes to as `kind`; `value` tells what a name stands for.
pub(super) fn worked(text: &str, kind: Kind, value: Named<'_>) -> Result<Amount, Fault> {
    let Some(mut scan) = start(text) else { return Err(wrong(Cause::Empty, (0, 0))) };
    let mut work = Work { parts: List::new(), signs: List::new() };
    loop {
        // Up to an amount.
        scan.space();
        let from = scan.at;
        let before = match scan.peek() {
            Some('(') => Some(Sign::Open),
            Some('-' | '−' | '–') => Some(Sign::Negate),
            _ => None,
        };
        if let Some(sign) = before {
            scan.next();
            work.wait(sign, (place(from), place(scan.at)))?;
            continue;
        }
        if scan.peek().is_some_and(char::is_alphabetic) {
            let (name, at) = name(&mut scan, text);
            work.lay(Part::Is(value(name, at)?), at)?;
        } else {
            // A bar after a bar divides what stands before both.
            let divides = work.signs.last().is_some_and(|waits| waits.sign == Sign::Over);
            let part = figures(&mut scan, divides).map_err(Fault::Text)?;
            work.lay(part, (place(from), place(scan.at)))?;
        }
        // Past what closes, to the next sign.
        loop {
            scan.space();
            let from = scan.at;
            let c = scan.next();
            let at = (place(from), place(scan.at));
            let sign = match c {
                None => return work.end(kind, at),
                Some('+') => Sign::Plus,
                Some('-' | '−' | '–') => Sign::Minus,
                Some('*' | '×' | '·') => Sign::Times,
                Some('/' | '÷' | '⁄') => Sign::Over,
                Some(')') => {
                    work.until(1)?;
                    work.signs.pop().ok_or(wrong(Cause::NotANumber, at))?;
                    continue;
                }
                Some(_) => {
                    while scan.next().is_some() {}
                    return Err(wrong(Cause::NotANumber, (at.0, place(scan.at))));
                }
            };
            work.until(sign.rank())?;
            work.wait(sign, at)?;
            break;
        }
    }
}

fn place(at: usize) -> u16 {
    u16::try_from(at).unwrap_or(u16::MAX)
}

fn wrong(cause: Cause, at: (u16, u16)) -> Fault {
    Fault::Text(Error::new(Field::Value, cause).at(at.0.into(), at.1.into()))
}

/// A name at the cursor, and where it stands.
fn name<'t>(scan: &mut Scan<'_>, text: &'t str) -> (&'t str, (u16, u16)) {
    let from = scan.at;
    while scan.take(in_name).is_some() {}
    (text.get(from..scan.at).unwrap_or_default(), (place(from), place(scan.at)))
}

/// Figures with a unit, an angle's marks, or alone. `3/8` and `1 3/8` are one amount;
/// after a bar (`plain`) only what stands before the next sign is.
fn figures(scan: &mut Scan<'_>, plain: bool) -> Result<Part, Error> {
    let mut angle = scan.clone();
    let mut whole = scan.clone();
    let value = match whole.number() {
        Ok(value) if !plain => {
            *scan = whole;
            value
        }
        // Before a bar that no figures follow, `1/(..)`, they end.
        _ => scan.decimal()?,
    };
    let mut ahead = scan.clone();
    ahead.space();
    if ahead.peek().is_some_and(|c| matches!(c, '°' | 'º'))
        || ahead.word("deg")
        || ahead.word("turn")
    {
        let read = one_angle(&mut angle, false)?;
        *scan = angle;
        return Ok(Part::Is(Amount::Angle(read)));
    }
    let before = ahead.at;
    let length = with_unit(&mut ahead, value, Unit::Mm)?;
    if ahead.at == before {
        return Ok(Part::Bare(value));
    }
    *scan = ahead;
    Ok(Part::Is(Amount::Length(length)))
}

struct Waits {
    sign: Sign,
    at: (u16, u16),
}

struct Work {
    parts: List<Part, WAITING>,
    signs: List<Waits, WAITING>,
}

impl Work {
    fn lay(&mut self, part: Part, at: (u16, u16)) -> Result<(), Fault> {
        self.parts.push(part).map_err(|_| too_deep(at))
    }

    fn wait(&mut self, sign: Sign, at: (u16, u16)) -> Result<(), Fault> {
        self.signs.push(Waits { sign, at }).map_err(|_| too_deep(at))
    }

    /// Does what waits and binds at least as close as `rank`, back to the bracket.
    fn until(&mut self, rank: u8) -> Result<(), Fault> {
        while let Some(&Waits { sign, at }) = self.signs.last()
            && sign != Sign::Open
            && sign.rank() >= rank
        {
            self.signs.pop();
            let lost = wrong(Cause::NotANumber, at);
            let last = self.parts.pop().ok_or(lost.clone())?;
            let part = match sign {
                Sign::Negate => last.negated(),
                _ => done(self.parts.pop().ok_or(lost)?, sign, last, at)?,
            };
            self.lay(part, at)?;
        }
        Ok(())
    }

    /// What is left once the text is at its end.
    fn end(mut self, kind: Kind, at: (u16, u16)) -> Result<Amount, Fault> {
        self.until(0)?;
        if let Some(open) = self.signs.last() {
            return Err(wrong(Cause::NotANumber, open.at));
        }
        let found = match self.parts.pop() {
            Some(Part::Is(amount)) => amount,
            Some(Part::Bare(value)) => of(kind, value, at)?,
            None => return Err(wrong(Cause::Empty, at)),
        };
        if kind_of(found) == kind { Ok(found) } else { Err(Fault::Units(0, at.1)) }
    }
}

fn too_deep(at: (u16, u16)) -> Fault {
    wrong(Cause::TooMany { most: u16::try_from(WAITING).unwrap_or(u16::MAX) }, at)
}

impl Part {
    fn negated(self) -> Self {
        match self {
            Self::Bare(value) => Self::Bare(value.negated()),
            Self::Is(amount) => Self::Is(with(kind_of(amount), size(amount).negated())),
        }
    }
}

/// Figures alone as `kind`: millimetres or degrees.
fn of(kind: Kind, value: Fraction, at: (u16, u16)) -> Result<Amount, Fault> {
    match kind {
        Kind::Angle => {
            Angle::from_degrees(value).map(Amount::Angle).map_err(|error| wrong(error.cause, at))
        }
        _ => Ok(with(kind, value)),
    }
}

pub(super) const fn kind_of(amount: Amount) -> Kind {
    match amount {
        Amount::Length(_) => Kind::Length,
        Amount::Angle(_) => Kind::Angle,
        Amount::Number(_) => Kind::Number,
    }
}

/// In millimetres, turns, or as it is.
const fn size(amount: Amount) -> Fraction {
    match amount {
        Amount::Length(length) => length.mm(),
        Amount::Angle(angle) => angle.turns(),
        Amount::Number(number) => number,
    }
}

/// `size` as `kind` measures it.
const fn with(kind: Kind, size: Fraction) -> Amount {
    match kind {
        Kind::Length => Amount::Length(Length::from_mm(size)),
        Kind::Angle => Amount::Angle(Angle::from_turns(size)),
        Kind::Number => Amount::Number(size),
    }
}

/// `one sign other`, with the unit that comes of it.
fn done(one: Part, sign: Sign, other: Part, at: (u16, u16)) -> Result<Part, Fault> {
    let units = Err(Fault::Units(at.0, at.1));
    let adds = matches!(sign, Sign::Plus | Sign::Minus);
    let (a, b, kind) = match (one, other) {
        (Part::Bare(a), Part::Bare(b)) => (a, b, None),
        (Part::Is(a), Part::Bare(b)) if adds => {
            let kind = kind_of(a);
            (size(a), size(of(kind, b, at)?), Some(kind))
        }
        (Part::Bare(a), Part::Is(b)) if adds => {
            let kind = kind_of(b);
            (size(of(kind, a, at)?), size(b), Some(kind))
        }
        (Part::Is(a), Part::Bare(b)) => (size(a), b, Some(kind_of(a))),
        (Part::Bare(a), Part::Is(b)) => {
            let kind = kind_of(b);
            if sign == Sign::Over && kind != Kind::Number {
                return units;
            }
            (a, size(b), Some(kind))
        }
        (Part::Is(a), Part::Is(b)) => {
            let kind = match (kind_of(a), sign, kind_of(b)) {
                (one, Sign::Plus | Sign::Minus, other) if one == other => one,
                (kind, Sign::Times | Sign::Over, Kind::Number)
                | (Kind::Number, Sign::Times, kind) => kind,
                (one, Sign::Over, other) if one == other => Kind::Number,
                _ => return units,
            };
            (size(a), size(b), Some(kind))
        }
    };
    let value = match sign {
        Sign::Plus => a.checked_add(b),
        Sign::Minus => a.checked_sub(b),
        Sign::Times => a.checked_mul(b),
        _ => a.checked_div(b),
    };
    let value = value.map_err(|error| wrong(error.cause, at))?;
    Ok(kind.map_or(Part::Bare(value), |kind| Part::Is(with(kind, value))))
}
