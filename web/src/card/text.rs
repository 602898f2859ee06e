//! A value as a field takes it: exact, and read back as the same.
use handturn::card::Amount;
use handturn::number::Fraction;

/// As it could be typed: millimetres, degrees, or a number.
pub(super) fn typed(amount: Amount) -> String {
    match amount {
        Amount::Length(length) => number(length.mm()),
        Amount::Angle(angle) => {
            angle.degrees().map_or_else(|_| number(angle.turns()) + " turn", number)
        }
        Amount::Number(value) => number(value),
    }
}

/// Decimals where it has some, else a fraction.
fn number(value: Fraction) -> String {
    let sign = if value.is_negative() { "-" } else { "" };
    let value = value.abs();
    let power = (0..=12).map(|places| 10_i64.pow(places)).find(|power| power % value.den() == 0);
    let whole = |n: i64| n.to_string();
    let scaled =
        power.and_then(|power| value.times(power).ok().map(|scaled| (power, scaled.num())));
    match scaled {
        Some((1, n)) => [sign, &whole(n)].concat(),
        Some((power, n)) => {
            // The figures after the mark, with their noughts in front.
            let after = whole(power + n % power);
            [sign, &whole(n / power), ".", after.get(1..).unwrap_or_default()].concat()
        }
        None => [sign, &whole(value.num()), "/", &whole(value.den())].concat(),
    }
}
