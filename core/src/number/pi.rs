//! π beside fractions, decided by whole numbers: which of two is larger is never
//! a matter of floats.
use core::cmp::Ordering;

/// A convergent of π: 833719/265381 is too small by less than 8.8 parts in 10^12.
pub(crate) const NEAR_PI: (u64, u64) = (833_719, 265_381);

/// The terms of π as a continued fraction (OEIS A001203). The convergent of the
/// first 47 has a denominator above 2^85.
const TERMS: [u8; 47] = [
    3, 7, 15, 1, 0, 1, 1, 1, 2, 1, 3, 1, 14, 2, 1, 1, 2, 2, 2, 2, 1, 84, 2, 1, 1, 15, 3, 13, 1, 4,
    2, 6, 6, 99, 1, 2, 2, 6, 3, 5, 1, 1, 6, 8, 1, 7, 1,
];

/// The one term that a byte doesn't hold; it stands as nought.
const LARGE: u128 = 292;

/// How `num / den` compares with π, for a denominator from one to 2^85.
///
/// Method: both as continued fractions, term by term. The first term that
/// differs decides, the other way round at every second one. A fraction that
/// agreed in all terms would have a larger denominator than is allowed.
pub(crate) fn compare_pi(num: u128, den: u128) -> Ordering {
    let (mut num, mut den) = (num, den);
    let mut below = Ordering::Less;
    for term in TERMS {
        let term = if term == 0 { LARGE } else { u128::from(term) };
        // A fraction that has ended is endlessly large in its next term.
        let (Some(own), Some(rest)) = (num.checked_div(den), num.checked_rem(den)) else {
            return below.reverse();
        };
        match own.cmp(&term) {
            Ordering::Less => return below,
            Ordering::Greater => return below.reverse(),
            Ordering::Equal => {}
        }
        (num, den) = (den, rest);
        below = below.reverse();
    }
    below
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn convergents_and_their_neighbours_lie_on_the_right_side() {
        // Convergents lie below and above in turn: 3, 22/7, 333/106, 355/113, …
        let (mut old, mut new) = ((1_u128, 0_u128), (3_u128, 1_u128));
        let mut below = Ordering::Less;
        for term in TERMS.iter().skip(1) {
            assert_eq!(compare_pi(new.0, new.1), below, "{new:?}");
            let term = if *term == 0 { LARGE } else { u128::from(*term) };
            (old, new) = (new, (term * new.0 + old.0, term * new.1 + old.1));
            below = below.reverse();
        }
        assert!(new.1 > 1 << 85);
        // Thirty digits: 3.14159265358979323846264338327…
        let (ten, digits) = (10_u128.pow(25), 31_415_926_535_897_932_384_626_433_u128);
        assert_eq!(compare_pi(digits, ten), Ordering::Less);
        assert_eq!(compare_pi(digits + 1, ten), Ordering::Greater);
        assert_eq!(compare_pi(0, 1), Ordering::Less);
        assert_eq!(compare_pi(4, 1), Ordering::Greater);
        assert_eq!(compare_pi(u128::MAX, 1), Ordering::Greater);
    }

    #[test]
    fn the_convergent_is_as_near_as_it_says() {
        let (p, q) = (u128::from(NEAR_PI.0), u128::from(NEAR_PI.1));
        assert_eq!(compare_pi(p, q), Ordering::Less);
        // p/q and 8.8/10^12 lies above.
        let scale = 10_u128.pow(13);
        assert_eq!(compare_pi(p * scale + 88 * q, q * scale), Ordering::Greater);
    }
}
