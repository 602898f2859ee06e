//! Unified threads: ASME B1.1. Its formulas give its tables in one order of
//! rounding only: the 2A tolerance to six places; then allowance and each class's
//! tolerance to four, a half to the even neighbour; basic sizes to four; then sums.
//! The order is fitted to the tables read, not printed as a rule; what they have
//! otherwise is named where it stands below.
use super::super::root::{cbrt_e9, sqrt_e9};
use super::super::series::Series;
use super::super::{Thread, Unit};
use super::{Found, Side, assemble, e4, e9, to_even};
use crate::error::Error;
use crate::number::Fraction;

/// Below 0.138 in (No. 6) the bore is held to four places, from there to three.
const THREE_PLACES_FROM: i64 = 1380;

#[expect(
    clippy::arithmetic_side_effects,
    reason = "billionths of an inch of a thread whose size was checked: far below the range"
)]
pub(super) fn limits(thread: &Thread, side: Side, number: u8) -> Found {
    if !(1..=3).contains(&number) {
        return Ok(None);
    }
    let (d, p) = (thread.major.inches()?, thread.pitch.inches()?);
    let third = cbrt_e9(p.checked_mul(p)?)?;
    // 0.0015 D^(1/3) + 0.0015 √LE + 0.015 P^(2/3), in millionths.
    let (across, engaged) = match engages_by_diameter(thread)? {
        true => (d, d),
        false => (printed_diameter(d), p.times(9)?),
    };
    let sum = (cbrt_e9(across)? + sqrt_e9(engaged)?) * 15 + third * 150;
    let tolerance = to_even(sum, 10_000_000);
    let of = |thousandths: i64| to_even(tolerance * thousandths, 100_000);
    let (major, pitch) = (e4(thread.major)?, e4(thread.pitch_diameter()?)?);
    match side {
        Side::External => {
            let allowance = if number == 3 { 0 } else { printed_allowance(d, p, of(300)) };
            // 0.06 P^(2/3); class 1 has half as much again.
            let crest = to_even(third * if number == 1 { 9 } else { 6 }, 10_000_000);
            let narrow = of(match number {
                1 => 1500,
                2 => 1000,
                _ => 750,
            });
            let (top, middle) = (major - allowance, pitch - allowance);
            let root = e4(thread.minor_external()?)? - allowance;
            let three = [
                (Some(top), Some(top - crest)),
                (Some(middle), Some(middle - narrow)),
                (Some(root), None),
            ];
            assemble(true, 10_000, three)
        }
        Side::Internal => {
            let wide = of(match number {
                1 => 1950,
                2 => 1300,
                _ => 975,
            });
            let basic = e4(thread.minor_internal()?)?;
            let least = if major >= THREE_PLACES_FROM { to_even(basic, 10) * 10 } else { basic };
            let greatest = basic * 100 + bore(d, p, third, number)?;
            let four = to_even(greatest, 100);
            let greatest = match () {
                () if number == 3 || major < THREE_PLACES_FROM => four,
                // Through four places from 1/4 in up, straight to three below. No rule in print
                // says so: it tells 10-24 alone, 0.155 in the 2019 tables (0.155488 unrounded),
                // 0.156 in earlier ones.
                () if major >= 2500 => to_even(four, 10) * 10,
                () => to_even(greatest, 1000) * 10,
            };
            let three = [
                (None, Some(major)),
                (Some(pitch + wide), Some(pitch)),
                (Some(greatest), Some(least)),
            ];
            assemble(true, 10_000, three)
        }
    }
}

/// The allowance, by rule unless the table has another. An exception without a rule behind
/// it: 5/8-11 is printed with 0.0016 (read in print; the rule gives 0.00165030, a hair
/// above the half).
fn printed_allowance(d: Fraction, p: Fraction, rule: i64) -> i64 {
    let is = |value: Fraction, num, den| value.num() == num && value.den() == den;
    if is(d, 5, 8) && is(p, 1, 11) { 16 } else { rule }
}

/// The diameter that tolerances are reckoned from. An exception without a rule behind it:
/// 5 3/4 in is printed with the tolerances of 6 in at all eight pitches and classes read
/// (Machinery's Handbook, 27th ed., Table 3); 6 in itself follows the formula.
fn printed_diameter(d: Fraction) -> Fraction {
    if d.num() == 23 && d.den() == 4 { Fraction::whole(6) } else { d }
}

/// Tolerance of the bore in millionths.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "billionths of an inch, as above; a pitch is below eight inches"
)]
fn bore(d: Fraction, p: Fraction, third: i64, number: u8) -> Result<i64, Error> {
    let pitch = e9(p)?;
    let squared = e9(p.checked_mul(p)?)?;
    let ratio = e9(p.checked_div(d)?)?;
    // 0.05 P^(2/3) + 0.03 P/D − 0.002
    let rule = third / 20 + ratio * 3 / 100 - 2_000_000;
    // 0.25 P − 0.4 P²; coarser than four an inch 0.15 P.
    let coarse = p > Fraction::new(1, 4)?;
    let common = if coarse { pitch * 3 / 20 } else { pitch / 4 - squared * 2 / 5 };
    let most = pitch * 197 / 500;
    let found = match number {
        // 0.23 P − 1.5 P² to 13 an inch, coarser 0.12 P (from memory).
        3 if p > Fraction::new(1, 13)? => rule.min(most).max(pitch * 3 / 25),
        3 => rule.min(most).max(pitch * 23 / 100 - squared * 3 / 2),
        _ if d >= Fraction::new(1, 4)? => common,
        _ => rule.min(most).max(common),
    };
    Ok(to_even(found, 1000))
}

/// Whether the standard takes the diameter for the length of engagement: UNC, UNF,
/// 4-, 6- and 8-UN and 1-14; nine pitches for all others.
fn engages_by_diameter(thread: &Thread) -> Result<bool, Error> {
    let tpi = thread.tpi()?;
    let even = [4, 6, 8].map(Fraction::whole).contains(&tpi);
    let fourteen = tpi == Fraction::whole(14) && thread.major.inches()? == Fraction::ONE;
    let listed = |series| super::super::series::lists(series, thread);
    Ok(thread.form.unit == Unit::Inch
        && (even || fourteen || listed(Series::Unc) || listed(Series::Unf)))
}
