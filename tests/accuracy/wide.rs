//! Fixed-point numbers of 256 bits after the point: the reference floats are
//! held against. Rounding down at every step stays far below a float's last bit.
use handturn::number::Fraction;
use num_bigint::BigInt;

/// Bits after the point.
const BITS: u32 = 256;

/// A number in units of 2^-256.
#[derive(Clone, Debug)]
pub(crate) struct Wide(BigInt);

impl Wide {
    pub(crate) fn whole(n: i64) -> Self {
        Self(BigInt::from(n) << BITS)
    }

    /// `fraction`.
    pub(crate) fn of(fraction: Fraction) -> Self {
        Self((BigInt::from(fraction.num()) << BITS) / fraction.den())
    }

    /// `value`, which must be an ordinary float of moderate size: exact.
    pub(crate) fn of_float(value: f64) -> Self {
        assert!(value == 0.0 || value.is_normal(), "{value}");
        let bits = value.to_bits();
        let exponent = i64::try_from((bits >> 52) & 0x7ff).expect("11 bits") - 1075;
        let mantissa = BigInt::from((bits & ((1 << 52) - 1)) | (1 << 52));
        let shift = exponent + i64::from(BITS);
        assert!(value == 0.0 || (0..2000).contains(&shift), "{value} is out of reach");
        if value == 0.0 {
            return Self(BigInt::ZERO);
        }
        let magnitude = mantissa << shift;
        Self(if value < 0.0 { -magnitude } else { magnitude })
    }

    /// π, by Machin: 16 arctan(1/5) − 4 arctan(1/239).
    pub(crate) fn pi() -> Self {
        static PI: std::sync::OnceLock<Wide> = std::sync::OnceLock::new();
        PI.get_or_init(Self::machin).clone()
    }

    fn machin() -> Self {
        let arctan = |of: i64| {
            let mut power = Self::whole(1).0 / of;
            let mut sum = power.clone();
            for k in 1..200_i64 {
                power /= -of * of;
                sum += &power / (2 * k + 1);
            }
            sum
        };
        Self(arctan(5) * 16 - arctan(239) * 4)
    }

    /// `self × other`.
    pub(crate) fn by(&self, other: &Self) -> Self {
        Self((&self.0 * &other.0) >> BITS)
    }

    /// `self ÷ other`.
    pub(crate) fn over(&self, other: &Self) -> Self {
        Self((&self.0 << BITS) / &other.0)
    }

    /// `self + other`.
    pub(crate) fn plus(&self, other: &Self) -> Self {
        Self(&self.0 + &other.0)
    }

    /// `self − other`.
    pub(crate) fn minus(&self, other: &Self) -> Self {
        Self(&self.0 - &other.0)
    }

    /// The magnitude as a float, for comparing errors.
    pub(crate) fn magnitude(&self) -> f64 {
        let mut bits = self.0.magnitude().clone();
        let mut exponent = -i32::try_from(BITS).expect("few bits");
        while bits.bits() > 60 {
            let drop = bits.bits() - 60;
            bits >>= drop;
            exponent += i32::try_from(drop).expect("few bits");
        }
        u64::try_from(bits).expect("60 bits") as f64 * 2.0_f64.powi(exponent)
    }

    /// The square root, from below.
    pub(crate) fn sqrt(&self) -> Self {
        Self((&self.0 << BITS).sqrt())
    }

    /// Sine of `self` turns, by its series.
    pub(crate) fn sin_turns(&self) -> Self {
        let angle = self.by(&Self::pi()).by(&Self::whole(2));
        angle.series(angle.clone(), 1)
    }

    /// Cosine of `self` turns, by its series.
    pub(crate) fn cos_turns(&self) -> Self {
        let angle = self.by(&Self::pi()).by(&Self::whole(2));
        angle.series(Self::whole(1), 0)
    }

    /// The angle in turns whose tangent is `self`, by Newton's steps on
    /// sin x − tangent·cos x from `near`, which must be within a millionth.
    pub(crate) fn atan_turns(&self, near: f64) -> Self {
        let slope = Self::whole(1).plus(&self.by(self)).sqrt().by(&Self::pi()).by(&Self::whole(2));
        let mut turns = Self::of_float(near);
        for _ in 0..3 {
            let off = turns.sin_turns().minus(&self.by(&turns.cos_turns()));
            turns = turns.minus(&off.over(&slope));
        }
        turns
    }

    /// As a float, its sign kept.
    pub(crate) fn float(&self) -> f64 {
        if self.0.sign() == num_bigint::Sign::Minus { -self.magnitude() } else { self.magnitude() }
    }

    /// first − first·x²/((k+1)(k+2)) + …
    fn series(&self, first: Self, mut k: i64) -> Self {
        let square = self.by(self);
        let (mut term, mut sum) = (first.clone(), first);
        for _ in 0..200 {
            term = Self(-term.by(&square).0 / ((k + 1) * (k + 2)));
            if term.0 == BigInt::ZERO {
                break;
            }
            sum = Self(sum.0 + &term.0);
            k += 2;
        }
        sum
    }
}

#[test]
fn the_reference_knows_its_landmarks() {
    let near = |a: Wide, b: Wide| assert!(a.minus(&b).magnitude() < 1e-70, "{a:?} {b:?}");
    let part = |num, den| Wide::of(Fraction::new(num, den).expect("a fraction"));
    near(part(1, 12).sin_turns(), part(1, 2));
    near(part(1, 6).cos_turns(), part(1, 2));
    near(part(1, 8).sin_turns(), part(1, 2).sqrt());
    near(part(9, 4).sqrt(), part(3, 2));
    near(part(1, 1).atan_turns(0.125), part(1, 8));
    near(part(3, 1).over(&part(7, 1)), part(3, 7));
    assert!(Wide::pi().magnitude() == std::f64::consts::PI);
}
