//! Where equal moves fall between the steps of a grid, in whole numbers: every
//! position is a multiple of one p/q of a step, so what is left above a whole
//! step is a residue of q. That is a hundred times quicker than fractions.
use super::question::{Parts, Question};
use crate::error::Error;
use crate::number::{Fraction, gcd, mod_inverse};

/// Above this a product of a residue and a position might not fit; no head of
/// the trade comes near it.
const MOST_DEN: u64 = 1 << 48;

/// The residues of a question's positions in the order of the work.
#[derive(Clone, Copy)]
pub(super) struct Residues {
    order: Order,
    /// q: residues are in 1/q of a step.
    den: i64,
    /// Residue of the first position of the second cycle.
    a_cycle: u64,
    /// Residue of one move.
    a_move: u64,
}

/// The order in which parts are cut: `cycles` cycles of `cycle` positions.
/// The next cycle starts one part on, so parts that follow each other round the
/// work go through the cycles; then they are `apart` positions from each other.
#[derive(Clone, Copy)]
struct Order {
    positions: u32,
    cycles: u64,
    cycle: u64,
    apart: u64,
    /// Parts from one position to the next.
    every: u64,
}

impl Order {
    fn of(parts: Parts) -> Option<Self> {
        let (count, every) = (u64::from(parts.count), u64::from(parts.every));
        let cycles = gcd(count, every);
        let cycle = count.checked_div(cycles)?;
        let apart = mod_inverse(every.checked_div(cycles)?, cycle)?;
        Some(Self { positions: parts.count, cycles, cycle, apart, every })
    }
}

impl Residues {
    /// The residues on a grid of `a_turn` steps a turn of the work; none for
    /// lists, and where the numbers are too large.
    pub(super) fn of(question: &Question, a_turn: Fraction) -> Result<Option<Self>, Error> {
        let a_part = |parts: Parts| Ok((a_turn.over(i64::from(parts.count))?, Order::of(parts)));
        let (unit, order) = match question {
            Question::Parts(parts) => a_part(*parts)?,
            Question::Marks(g) => a_part(Parts { count: g.count, every: 1 })?,
            Question::Angle(repeated) => {
                let positions = question.positions();
                let cycle = u64::from(positions);
                let order = Order { positions, cycles: 1, cycle, apart: 1, every: 1 };
                (repeated.angle.turns().checked_mul(a_turn)?, Some(order))
            }
            Question::List(_) => return Ok(None),
        };
        Ok(order.and_then(|order| Self::new(unit, order)))
    }

    fn new(unit: Fraction, order: Order) -> Option<Self> {
        let den = u64::try_from(unit.den()).ok().filter(|&den| den <= MOST_DEN)?;
        let one = u64::try_from(unit.part().num()).ok()?;
        let residue = |times: u64| {
            let wide = u128::from(times).checked_mul(u128::from(one))?;
            u64::try_from(wide.checked_rem(u128::from(den))?).ok()
        };
        let a_cycle = order.cycle.checked_mul(order.every)?.checked_add(1)?;
        let (a_cycle, a_move) = (residue(a_cycle)?, residue(order.every)?);
        Some(Self { order, den: unit.den(), a_cycle, a_move })
    }

    /// q.
    pub(super) const fn den(&self) -> i64 {
        self.den
    }

    /// What is left of each position, one part after another round the work, in
    /// 1/q of a step: wanted less the nearest step, to which a half goes up.
    pub(super) fn left(self) -> impl Iterator<Item = i64> {
        let (mut which, mut within) = (0_u64, 0_u64);
        (0..self.order.positions).map(move |_| {
            let above = self.above(which, within);
            which = which.saturating_add(1);
            if which >= self.order.cycles {
                which = 0;
                within = within.saturating_add(self.order.apart);
                within = within.checked_sub(self.order.cycle).unwrap_or(within);
            }
            let below = self.den.saturating_sub(above);
            if above < below { above } else { below.saturating_neg() }
        })
    }

    /// Residue of position `within` of cycle `which`. All factors are far below
    /// what fits: see [`MOST_DEN`].
    fn above(&self, which: u64, within: u64) -> i64 {
        let cycles = which.saturating_mul(self.a_cycle);
        let sum = cycles.saturating_add(within.saturating_mul(self.a_move));
        let above = sum.checked_rem(self.den.unsigned_abs());
        above.and_then(|above| i64::try_from(above).ok()).unwrap_or(0)
    }
}
