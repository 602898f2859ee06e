//! Figures as people read them: counts, angles, errors and their lengths at the work.
use handturn::measure::write::{Decimal, Dms, places_for, rounded};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};

/// `n` with `one` or `many` of a thing: "1 turn", "2 turns".
#[must_use]
pub fn count(n: u32, one: &str, many: &str) -> String {
    grouped(i64::from(n)) + " " + if n == 1 { one } else { many }
}

/// A whole number with its thousands parted: 10,000.
#[must_use]
pub fn grouped(n: i64) -> String {
    let digits = n.unsigned_abs().to_string();
    let mut text = String::from(if n < 0 { "−" } else { "" });
    for (k, digit) in digits.chars().enumerate() {
        if k > 0 && (digits.len() - k) % 3 == 0 {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// An error in arc-seconds with three figures, in degrees from one degree on:
/// `12.9″`, `328″`, `2° 15′`.
#[must_use]
pub fn seconds(angle: Angle) -> String {
    let Ok(arcsec) = angle.arcsec() else { return angle_text(angle) };
    if arcsec.abs() >= Fraction::whole(3600) {
        return Dms { angle, places: 0 }.to_string();
    }
    significant(arcsec, 3) + "″"
}

/// A signed error: `+12.9″`, `−328″`, `0`.
#[must_use]
pub fn signed_seconds(angle: Angle) -> String {
    if angle == Angle::ZERO {
        return "0".to_owned();
    }
    let sign = if angle.turns().is_negative() { "" } else { "+" };
    sign.to_owned() + &seconds(angle)
}

/// An angle in degrees, minutes and seconds to a tenth.
#[must_use]
pub fn angle_text(angle: Angle) -> String {
    Dms { angle, places: 1 }.to_string()
}

/// An angle of the working: arc-seconds where it is small, else degrees.
#[must_use]
pub fn seconds_or_angle(angle: Angle) -> String {
    let small = angle.arcsec().is_ok_and(|arcsec| arcsec.abs() < Fraction::whole(3600));
    if small { seconds(angle) } else { angle_text(angle) }
}

/// Whether [`seconds_or_angle`] writes all of an angle, nothing rounded.
#[must_use]
pub fn written_whole(angle: Angle) -> bool {
    let whole = |arcsec: Fraction| {
        let size = arcsec.abs();
        let parts = match () {
            () if size >= Fraction::whole(3600) => 10,
            () if size >= Fraction::whole(100) => 1,
            () if size >= Fraction::whole(10) => 10,
            () => 100,
        };
        arcsec.times(parts).map(Fraction::is_whole)
    };
    angle.arcsec().and_then(whole).unwrap_or(false)
}

/// An error's arc at the rim of the work: `0.061 mm · 2.4 thou`.
#[must_use]
pub fn at_rim(error: Angle, diameter: Length) -> String {
    let (mm, thou) = rim(error, diameter);
    mm + " · " + &thou
}

/// An error's arc at the rim of the work, in millimetres and in thou.
#[must_use]
pub fn rim(error: Angle, diameter: Length) -> (String, String) {
    let text = |approx: Approx, unit: &str| {
        rounded(approx, 7).map_or_else(String::new, |value| significant(value, 2) + unit)
    };
    let mm = error.arc_mm(diameter);
    let thou = Approx { value: mm.value / 0.0254, bound: mm.bound / 0.0254 };
    (text(mm, " mm"), text(thou, " thou"))
}

/// `value` with so many significant figures.
#[must_use]
pub fn significant(value: Fraction, figures: u8) -> String {
    Decimal { value, places: places_for(value, figures) }.to_string()
}

/// `value` in decimals without noughts at the end: `40`, `76.2`.
#[must_use]
pub fn decimal(value: Fraction, places: u8) -> String {
    let text = Decimal { value, places }.to_string();
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A fraction as a mixed number in one line: `42 1/3`, `40`.
#[must_use]
pub fn mixed(value: Fraction) -> String {
    let (whole, part) = (value.abs().floor(), value.abs().part());
    let sign = if value.is_negative() { "−" } else { "" };
    match (whole, part.is_zero()) {
        (0, false) => [sign, &plain(part)].concat(),
        (_, false) => [sign, &grouped(whole), " ", &plain(part)].concat(),
        _ => [sign, &grouped(whole)].concat(),
    }
}

/// A fraction in one line: `7/144`, `40`.
#[must_use]
pub fn plain(value: Fraction) -> String {
    let num = if value.is_negative() { "−" } else { "" }.to_owned()
        + &value.num().unsigned_abs().to_string();
    if value.is_whole() { num } else { num + "/" + &value.den().to_string() }
}

/// Millimetres to three places.
#[must_use]
pub fn mm(length: Length) -> String {
    Decimal { value: length.mm(), places: 3 }.to_string()
}

/// Inches to four places.
#[must_use]
pub fn inches(length: Length) -> String {
    length.inches().map_or_else(|_| String::new(), |value| Decimal { value, places: 4 }.to_string())
}

/// Millimetres to three places, of a figure that is not exact.
#[must_use]
pub fn about_mm(mm: f64) -> String {
    about(mm, 3)
}

/// `value` to so many places.
#[must_use]
pub fn about(value: f64, places: u8) -> String {
    let approx = Approx { value, bound: 0.0 };
    handturn::measure::write::rounded(approx, places)
        .map_or_else(String::new, |value| Decimal { value, places }.to_string())
}

/// An angle in degrees, halves as such: `60°`, `47½°`.
#[must_use]
pub fn angle(angle: Angle) -> String {
    let Ok(degrees) = angle.degrees() else { return String::new() };
    if degrees.den() == 2 {
        return degrees.floor().to_string() + "½°";
    }
    decimal(degrees, 2) + "°"
}

/// Millimetres with their unit.
#[must_use]
pub fn in_mm(length: Length) -> String {
    mm(length) + " mm"
}

/// Inches with their unit.
#[must_use]
pub fn in_inch(length: Length) -> String {
    inches(length) + " in"
}

/// Millimetres as thou, to a tenth.
#[must_use]
pub fn thou(mm: f64) -> String {
    about(mm / 0.0254, 1)
}

/// What stands in for a field left empty.
#[must_use]
pub fn taken_as(text: &str) -> String {
    ["taken as ", text].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arcsec(num: i64, den: i64) -> Angle {
        Angle::from_arcsec(Fraction::new(num, den).unwrap()).unwrap()
    }

    #[test]
    fn numbers_are_written_as_people_read_them() {
        assert_eq!(grouped(10_000), "10,000");
        assert_eq!(grouped(999), "999");
        assert_eq!(grouped(-1_234_567), "−1,234,567");
        assert_eq!(count(1, "turn", "turns"), "1 turn");
        assert_eq!(count(13, "turn", "turns"), "13 turns");
        assert_eq!(decimal(Fraction::new(381, 5).unwrap(), 3), "76.2");
        assert_eq!(decimal(Fraction::whole(40), 3), "40");
    }

    #[test]
    fn errors_carry_their_length_at_the_work() {
        // 63/127 of 360° ÷ 40 ÷ 49, at 76.2 mm.
        let worst = arcsec(63 * 1_296_000, 127 * 40 * 49);
        assert_eq!(seconds(worst), "328″");
        assert_eq!(
            at_rim(worst, Length::from_mm(Fraction::new(381, 5).unwrap())),
            "0.061 mm · 2.4 thou"
        );
        assert_eq!(seconds(arcsec(129, 10)), "12.9″");
        assert_eq!(seconds(arcsec(8100, 1)), "2° 15′");
        assert_eq!(signed_seconds(arcsec(-129, 10)), "−12.9″");
        assert_eq!(signed_seconds(Angle::ZERO), "0");
    }
}
