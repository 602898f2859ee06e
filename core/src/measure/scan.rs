//! A cursor over typed text: one character at a time, so nothing can be cut
//! in the middle and nothing can panic.
use crate::error::{Cause, Error, Field};
use crate::number::Fraction;
use core::str::Chars;

#[derive(Clone)]
pub(crate) struct Scan<'a> {
    rest: Chars<'a>,
    /// Bytes passed so far.
    pub(crate) at: usize,
    field: Field,
}

impl<'a> Scan<'a> {
    pub(crate) fn new(text: &'a str, field: Field) -> Self {
        Self { rest: text.chars(), at: 0, field }
    }

    pub(crate) fn peek(&self) -> Option<char> {
        self.rest.clone().next()
    }

    pub(crate) fn next(&mut self) -> Option<char> {
        let found = self.rest.next()?;
        self.at = self.at.saturating_add(found.len_utf8());
        Some(found)
    }

    /// Passes one character that `wanted` accepts.
    pub(crate) fn take(&mut self, wanted: impl Fn(char) -> bool) -> Option<char> {
        self.peek().filter(|&c| wanted(c))?;
        self.next()
    }

    /// Passes white space; whether there was any.
    pub(crate) fn space(&mut self) -> bool {
        let before = self.at;
        while self.take(char::is_whitespace).is_some() {}
        self.at != before
    }

    /// Passes `word` when it stands here, in either case.
    pub(crate) fn word(&mut self, word: &str) -> bool {
        let mut ahead = self.clone();
        for wanted in word.chars() {
            if ahead.take(|c| c.to_ascii_lowercase() == wanted).is_none() {
                return false;
            }
        }
        *self = ahead;
        true
    }

    pub(crate) fn is_done(&self) -> bool {
        self.peek().is_none()
    }

    /// An error about the text from `from` to here.
    pub(crate) fn error(&self, cause: Cause, from: usize) -> Error {
        Error::new(self.field, cause).at(from, self.at)
    }

    /// Refuses anything but white space after what was read.
    pub(crate) fn end(mut self) -> Result<(), Error> {
        self.space();
        let from = self.at;
        if self.is_done() {
            return Ok(());
        }
        while self.next().is_some() {}
        Err(self.error(Cause::NotANumber, from))
    }

    /// A signed number: `12`, `-0.5`, `0,5`, `3/8` or `1 3/8`.
    pub(crate) fn number(&mut self) -> Result<Fraction, Error> {
        let from = self.at;
        let minus = self.take(|c| matches!(c, '-' | '−' | '–')).is_some();
        if !minus {
            self.take(|c| c == '+');
        }
        let first = self.decimal()?;
        let mut value = self.fraction_of(first)?;
        let mut ahead = self.clone();
        if value == first && first.is_whole() && ahead.space() {
            let start = ahead.at;
            if let Ok(top) = ahead.decimal()
                && let Ok(part) = ahead.fraction_of(top)
                && ahead.at > start
                && part != top
                && part < Fraction::ONE
            {
                *self = ahead;
                value = first.checked_add(part).map_err(|e| self.error(e.cause, from))?;
            }
        }
        Ok(if minus { value.negated() } else { value })
    }

    /// `top` over the number after a fraction bar, or `top` where there is none.
    fn fraction_of(&mut self, top: Fraction) -> Result<Fraction, Error> {
        let from = self.at;
        if self.take(|c| matches!(c, '/' | '⁄')).is_none() {
            return Ok(top);
        }
        let bottom = self.decimal()?;
        top.checked_div(bottom).map_err(|e| self.error(e.cause, from))
    }

    /// Digits with at most one decimal mark, which may be a comma or a point.
    /// `1,000` is refused: it may mean one or a thousand.
    pub(crate) fn decimal(&mut self) -> Result<Fraction, Error> {
        let from = self.at;
        let mut whole = Digits::default();
        self.digits(&mut whole);
        let mut part = whole;
        let mut ahead = self.clone();
        if let Some(mark) = ahead.take(|c| matches!(c, '.' | ',')) {
            let before = part.count;
            ahead.digits(&mut part);
            let after = part.count.saturating_sub(before);
            if after > 0 {
                *self = ahead;
                let grouped = self.peek() == Some(',');
                let thousands = after == 3 && (1..=3).contains(&before) && whole.value != Some(0);
                if mark == ',' && thousands || grouped && self.digit_after_mark() {
                    while self.take(|c| c.is_ascii_digit() || c == ',').is_some() {}
                    return Err(self.error(Cause::ThousandsMark, from));
                }
                part.after = after;
            } else if before > 0 && mark == '.' {
                // A full stop after a whole number, as in `12.`
                *self = ahead;
            }
        }
        if part.count == 0 {
            while self.take(|c| !c.is_whitespace()).is_some() {}
            let cause = if self.at == from { Cause::Empty } else { Cause::NotANumber };
            return Err(self.error(cause, from));
        }
        let overflow = self.error(Cause::Overflow, from);
        let den = 10_i64.checked_pow(part.after).ok_or(overflow)?;
        Fraction::new(part.value.ok_or(overflow)?, den).map_err(|_| overflow)
    }

    fn digits(&mut self, digits: &mut Digits) {
        while let Some(c) = self.take(|c| c.is_ascii_digit()) {
            let digit = i64::from(c.to_digit(10).unwrap_or(0));
            digits.count = digits.count.saturating_add(1);
            digits.value = digits
                .value
                .and_then(|value| value.checked_mul(10))
                .and_then(|value| value.checked_add(digit));
        }
    }

    fn digit_after_mark(&self) -> bool {
        let mut ahead = self.clone();
        ahead.next();
        ahead.peek().is_some_and(|c| c.is_ascii_digit())
    }
}

/// Digits read: their value while it fits, how many, and how many after the mark.
#[derive(Clone, Copy)]
struct Digits {
    value: Option<i64>,
    count: u32,
    after: u32,
}

impl Default for Digits {
    fn default() -> Self {
        Self { value: Some(0), count: 0, after: 0 }
    }
}
