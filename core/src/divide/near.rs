//! Plain moves near the one wanted, and the trains that make them exact.
//!
//! Every hole of every circle is tried whose gear ratio the gears owned could
//! give, so long as the plate turns no more than once for one part; most drop
//! out at once because their ratio has a prime factor that no gear has.
//!
//! Limit: the angle of one part must have numerator and denominator small
//! enough for 64 bits together with ratio and circle. Every number of parts
//! has, and every angle of whole thousandths of a second; finer ones are left out.
use super::differential::{self, Differential};
use super::holes::{self, CircleAt};
use super::moves::Errors;
use super::question::Question;
use crate::error::Error;
use crate::head::{Circle, Head};
use crate::number::{Fraction, gcd};
use crate::train::{Stock, Train};

/// Offers every plain move near the one wanted that the gears in `stock` make
/// exact, each fraction of a turn once, on the largest circle that has it: with
/// each simple train that gives it or, where there is none, with the compound
/// train that is first in order.
pub(super) fn each_way(
    question: &Question,
    head: &Head,
    stock: &Stock,
    keep: &mut dyn FnMut(Differential, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    let Some(part) = differential::part(question)? else { return Ok(()) };
    let most = stock.greatest_ratio(&head.mounting)?.min(part.inverse()?);
    let mut outcome = Ok(());
    each_move(part, head, most, &mut |near| {
        if !stock.could_divide(near.num) || !stock.could_divide(near.den) {
            return;
        }
        let parts = (i64::try_from(near.num), i64::try_from(near.den));
        let (Ok(num), Ok(den)) = parts else { return };
        let Ok(ratio) = Fraction::new(num, den) else { return };
        if !is_largest(head, near.circle, near.holes) {
            return;
        }
        // An even number of meshes keeps the sense; on a plain 1 : 1 take-off
        // that makes the plate follow the handle.
        let same_way = near.follows == head.mounting.one_idler_follows;
        let mut offer = |train: Train| {
            let way = Differential {
                circle: near.circle,
                holes: near.holes,
                ratio: head.ratio,
                arms: head.arms,
                train,
                follows: near.follows,
            };
            if outcome.is_ok() {
                outcome = way.errors(question).and_then(|errors| keep(way, errors));
            }
        };
        let mut any = false;
        stock.simple(ratio, same_way, &head.mounting, &mut |train| {
            any = true;
            offer(train);
        });
        if !any {
            let mut best: Option<Train> = None;
            stock.compound(ratio, same_way, &head.mounting, &mut |train| {
                best = Some(best.map_or(train, |best| best.min(train)));
            });
            if let Some(train) = best {
                offer(train);
            }
        }
    })?;
    outcome
}

/// A plain move and the ratio of gears that makes it exact, above nought.
pub(super) struct NearMove {
    circle: CircleAt,
    holes: u32,
    pub(super) num: u64,
    pub(super) den: u64,
    follows: bool,
}

/// Hands over every move of one hole or more, on every circle within reach,
/// whose gear ratio is neither nought nor above `most`.
pub(super) fn each_move(
    part: Fraction,
    head: &Head,
    most: Fraction,
    keep: &mut dyn FnMut(NearMove),
) -> Result<(), Error> {
    for (plate, sides) in (0_u8..).zip(&head.plates) {
        for circle in sides.circles.iter().filter(|circle| holes::reaches(head.reach, circle)) {
            let at = CircleAt { plate, holes: circle.holes };
            on_circle(part, head.ratio, most, at, keep)?;
        }
    }
    Ok(())
}

/// Moves on one circle. With R = r/s, u = p/q the gear ratio of h holes is
/// (r·c·p − h·q·s) ÷ (s·c·p).
fn on_circle(
    part: Fraction,
    ratio: Fraction,
    most: Fraction,
    circle: CircleAt,
    keep: &mut dyn FnMut(NearMove),
) -> Result<(), Error> {
    let all = part.times(i64::from(circle.holes));
    let to = |turns: Fraction| all?.checked_mul(turns);
    let (Ok(least), Ok(greatest)) = (to(ratio.checked_sub(most)?), to(ratio.checked_add(most)?))
    else {
        return Ok(());
    };
    let product = |a: i64, b: i64| a.checked_mul(b);
    let wanted = product(ratio.num(), i64::from(circle.holes)).and_then(|x| product(x, part.num()));
    let hole = product(part.den(), ratio.den());
    let below = product(ratio.den(), i64::from(circle.holes)).and_then(|x| product(x, part.num()));
    let (Some(wanted), Some(hole), Some(below)) = (wanted, hole, below) else { return Ok(()) };
    let below = below.unsigned_abs();
    for holes in least.floor().max(1)..=greatest.floor() {
        let rest = product(holes, hole).and_then(|moved| wanted.checked_sub(moved));
        let (Some(rest), Ok(holes)) = (rest, u32::try_from(holes)) else { continue };
        let shared = gcd(rest.unsigned_abs(), below);
        let num = rest.unsigned_abs().checked_div(shared).unwrap_or(0);
        let den = below.checked_div(shared).unwrap_or(0);
        if num > 0 && den > 0 {
            keep(NearMove { circle, holes, num, den, follows: rest > 0 });
        }
    }
    Ok(())
}

/// Whether no larger circle within reach, and no equal one before it, has the
/// same fraction of a turn.
fn is_largest(head: &Head, at: CircleAt, moved: u32) -> bool {
    let shared = gcd(u64::from(moved), u64::from(at.holes));
    let Some(den) = u64::from(at.holes).checked_div(shared) else { return false };
    let has = |circle: &Circle| u64::from(circle.holes).checked_rem(den) == Some(0);
    let beats = |plate: u8, circle: &Circle| {
        circle.holes > at.holes || (circle.holes == at.holes && plate < at.plate)
    };
    (0_u8..).zip(&head.plates).all(|(plate, sides)| {
        let mut reached = sides.circles.iter().filter(|c| holes::reaches(head.reach, c));
        !reached.any(|circle| has(circle) && beats(plate, circle))
    })
}
