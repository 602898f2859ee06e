//! A short line of text put together without the formatting machinery.

/// Characters that fit: the widest screen in the narrowest letters.
const MOST: usize = 26;

/// A line of ASCII text.
#[derive(Clone, Copy)]
pub(super) struct Line {
    bytes: [u8; MOST],
    used: usize,
}

impl Line {
    pub(super) const fn new() -> Self {
        Self { bytes: [0; MOST], used: 0 }
    }

    /// The line with `text` behind it; what does not fit is not shown, and a test
    /// looks that every text of every screen fits.
    #[inline(never)]
    pub(super) fn text(mut self, text: &str) -> Self {
        for byte in text.bytes() {
            self.push(byte);
        }
        self
    }

    pub(super) fn number(self, number: u32) -> Self {
        self.padded(number, 1)
    }

    /// A number with leading noughts up to `least` digits.
    #[inline(never)]
    pub(super) fn padded(mut self, number: u32, least: usize) -> Self {
        let mut digits = [b'0'; 10];
        let (mut rest, mut used) = (number, 0_usize);
        for digit in digits.iter_mut().rev() {
            if rest == 0 && used >= least {
                break;
            }
            let low = u8::try_from(rest % 10).unwrap_or(0);
            *digit = b'0'.saturating_add(low);
            rest /= 10;
            used = used.saturating_add(1);
        }
        for &digit in digits.iter().skip(digits.len().saturating_sub(used)) {
            self.push(digit);
        }
        self
    }

    /// Tenths or hundredths with their point.
    #[inline(never)]
    pub(super) fn decimal(self, number: u32, places: u32) -> Self {
        let unit = 10_u32.saturating_pow(places);
        let whole = number.checked_div(unit).unwrap_or(0);
        let part = number.checked_rem(unit).unwrap_or(0);
        self.number(whole).text(".").padded(part, usize::try_from(places).unwrap_or(0))
    }

    pub(super) fn as_str(&self) -> &str {
        let used = self.bytes.get(..self.used).unwrap_or(&[]);
        core::str::from_utf8(used).unwrap_or("")
    }

    fn push(&mut self, byte: u8) {
        debug_assert!(self.used < MOST, "{} is full", self.as_str());
        if let Some(place) = self.bytes.get_mut(self.used) {
            *place = byte;
            self.used = self.used.saturating_add(1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_in_text() {
        let line = Line::new().text("at ").number(38).text(" of ").number(0).padded(7, 3);
        assert_eq!(line.as_str(), "at 38 of 0007");
        assert_eq!(Line::new().number(u32::MAX).as_str(), "4294967295");
        assert_eq!(Line::new().decimal(5, 2).text(" ").decimal(1_234, 1).as_str(), "0.05 123.4");
    }
}
