//! Whole-number steps: greatest common divisor, least common multiple and the
//! modular inverse (Euclid's algorithm, extended).

/// Greatest common divisor of `a` and `b`; `gcd(0, b)` is `b`.
#[must_use]
pub const fn gcd(mut a: u64, mut b: u64) -> u64 {
    while let Some(rest) = a.checked_rem(b) {
        a = b;
        b = rest;
    }
    a
}

/// Least common multiple of `a` and `b`; `None` beyond `u64`. `lcm(0, b)` is 0.
#[must_use]
pub const fn lcm(a: u64, b: u64) -> Option<u64> {
    match a.checked_div(gcd(a, b)) {
        Some(part) => part.checked_mul(b),
        None => Some(0),
    }
}

/// `(g, x)` with `g = gcd(a, m)` and `a·x ≡ g (mod m)`, `0 <= x < m`.
/// `None` when `m` is zero or above `i64::MAX`.
#[must_use]
#[expect(
    clippy::arithmetic_side_effects,
    reason = "each coefficient of Euclid's extended algorithm stays within ±m, held in i128; \
              the modulus is checked not to be zero"
)]
pub fn bezout(a: u64, m: u64) -> Option<(u64, u64)> {
    if m == 0 || m > i64::MAX as u64 {
        return None;
    }
    let (mut old_r, mut r) = (i128::from(a % m), i128::from(m));
    let (mut old_x, mut x) = (1_i128, 0_i128);
    while let Some(q) = old_r.checked_div(r) {
        (old_r, r) = (r, old_r - q * r);
        (old_x, x) = (x, old_x - q * x);
    }
    let x = old_x.rem_euclid(i128::from(m));
    Some((u64::try_from(old_r).ok()?, u64::try_from(x).ok()?))
}

/// The inverse of `a` modulo `m`; `None` when they share a factor.
#[must_use]
pub fn mod_inverse(a: u64, m: u64) -> Option<u64> {
    match bezout(a, m) {
        Some((1, x)) => Some(x),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_small_domain_agrees_with_counting() {
        for a in 0..=60_u64 {
            for b in 0..=60_u64 {
                let slow = (1..=a.max(b)).rev().find(|d| a % d == 0 && b % d == 0).unwrap_or(0);
                assert_eq!(gcd(a, b), slow, "gcd({a}, {b})");
                if a > 0 && b > 0 {
                    let slow = (1..=a * b).find(|m| m % a == 0 && m % b == 0);
                    assert_eq!(lcm(a, b), slow, "lcm({a}, {b})");
                    let inverse = (0..b).find(|x| a * x % b == 1 % b);
                    assert_eq!(mod_inverse(a, b), inverse, "inverse of {a} mod {b}");
                    let (g, x) = bezout(a, b).unwrap();
                    assert_eq!((g, a * x % b), (gcd(a, b), gcd(a, b) % b), "bezout({a}, {b})");
                }
            }
        }
    }

    #[test]
    fn large_values_say_so() {
        assert_eq!(lcm(u64::MAX, u64::MAX - 1), None);
        assert_eq!(lcm(0, 5), Some(0));
        assert_eq!(bezout(3, 0), None);
        assert_eq!(bezout(3, u64::MAX), None);
    }
}
