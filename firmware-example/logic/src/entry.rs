//! A number set digit by digit.

/// Digits a number can have.
const MOST: usize = 6;

/// A number that is being set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The digits, the highest first, behind those that are not used.
    digits: [u8; MOST],
    used: u8,
    /// The digit that is being set, from the left.
    at: u8,
}

impl Entry {
    /// `number` with `used` digits, the first one being set.
    #[must_use]
    pub fn new(number: u32, used: u8) -> Self {
        let mut rest = number;
        let mut digits = [0; MOST];
        for digit in digits.iter_mut().rev() {
            *digit = u8::try_from(rest.checked_rem(10).unwrap_or(0)).unwrap_or(0);
            rest = rest.checked_div(10).unwrap_or(0);
        }
        Self { digits, used: used.min(6), at: 0 }
    }

    /// The digits, the highest first.
    #[must_use]
    pub fn digits(&self) -> &[u8] {
        let unused = MOST.saturating_sub(usize::from(self.used));
        self.digits.get(unused..).unwrap_or(&[])
    }

    /// Which digit is being set, from the left.
    #[must_use]
    pub const fn at(&self) -> u8 {
        self.at
    }

    /// The number.
    #[must_use]
    pub fn number(&self) -> u32 {
        let add =
            |number: u32, &digit: &u8| number.saturating_mul(10).saturating_add(u32::from(digit));
        self.digits().iter().fold(0, add)
    }

    /// The digit one up, from 9 to 0.
    pub fn up(&mut self) {
        self.change(|digit| if digit >= 9 { 0 } else { digit.saturating_add(1) });
    }

    /// The digit one down, from 0 to 9.
    pub fn down(&mut self) {
        self.change(|digit| digit.checked_sub(1).unwrap_or(9));
    }

    /// On to the next digit; false behind the last.
    pub fn on(&mut self) -> bool {
        let next = self.at.saturating_add(1);
        let more = next < self.used;
        if more {
            self.at = next;
        }
        more
    }

    fn change(&mut self, by: impl Fn(u8) -> u8) {
        let unused = MOST.saturating_sub(usize::from(self.used));
        let place = unused.saturating_add(usize::from(self.at));
        if let Some(digit) = self.digits.get_mut(place) {
            *digit = by(*digit);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_set_one_by_one() {
        let mut entry = Entry::new(365, 5);
        assert_eq!((entry.digits(), entry.number()), (&[0, 0, 3, 6, 5][..], 365));
        entry.down();
        assert_eq!(entry.number(), 90_365);
        entry.up();
        assert!(entry.on() && entry.on());
        entry.down();
        entry.down();
        assert_eq!((entry.number(), entry.at()), (165, 2));
        assert!(entry.on() && entry.on() && !entry.on());
        for _ in 0..7 {
            entry.up();
        }
        assert_eq!(entry.number(), 162);
    }

    #[test]
    fn what_does_not_fit_keeps_its_lowest_digits() {
        assert_eq!(Entry::new(1_234_567, 9).number(), 234_567);
        assert_eq!(Entry::new(1_234, 3).number(), 234);
    }
}
