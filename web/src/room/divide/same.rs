//! What a way does, as the room needs it: its first move, the two counts its
//! moves alternate between, the same move on other circles.
use super::Worked;
use handturn::divide::{Leg, Move, Way};
use handturn::head::Circle;
use handturn::number::Fraction;

impl Worked<'_> {
    /// Handle turns of one move, where all moves are equal.
    pub(super) fn turns(&self) -> Option<Fraction> {
        let step = self.question.step().ok()??;
        step.turns().checked_mul(self.head.ratio).ok()
    }

    /// The first move of a way.
    pub(super) fn first_move(&self, way: &Way) -> Option<Move> {
        way.step(&self.question, 0).ok()
    }

    /// The fewest and the most spaces of a move where moves of one leg differ by
    /// one, in whole spaces from hole to hole. Places are rounded from their
    /// absolute value, so equal moves come out as one of two neighbouring counts.
    pub(super) fn spread(&self, way: &Way) -> Option<(u32, u32)> {
        let (few, long, moves) = self.short_and_long(way)?;
        (long > 0 && long < moves).then_some((few, few + 1))
    }

    /// The count of a short move, how many long ones there are, and of how many.
    pub(super) fn short_and_long(&self, way: &Way) -> Option<(u32, u32, u32)> {
        if !matches!(way, Way::NearestHole(_) | Way::Handwheel(_)) {
            return None;
        }
        self.question.step().ok()??;
        let moves = self.question.last();
        let first = self.first_move(way)?;
        let of = first.legs.first()?.from.of;
        let all = way.place(&self.question, moves).ok()?.handle.times(i64::from(of)).ok()?;
        let all = u32::try_from(all.num()).ok().filter(|_| all.is_whole())?;
        let few = all.checked_div(moves)?;
        Some((few, all - few * moves, moves))
    }

    /// Circles of the head on which the same handle move is whole, larger first,
    /// each with its holes; the circle of `leg` itself is left out.
    pub(super) fn same_on(&self, leg: &Leg) -> Vec<(u16, u32)> {
        let Ok(part) = Fraction::new(i64::from(leg.spaces), i64::from(leg.from.of)) else {
            return Vec::new();
        };
        let circles = self.head.plates.iter().flat_map(|plate| plate.circles.iter());
        let mut same: Vec<(u16, u32)> = circles
            .filter(|circle| self.reaches(circle) && u32::from(circle.holes) != leg.from.of)
            .filter_map(|circle| {
                let holes = part.times(i64::from(circle.holes)).ok()?;
                Some((circle.holes, u32::try_from(holes.num()).ok().filter(|_| holes.is_whole())?))
            })
            .collect();
        same.sort_unstable_by(|a, b| b.cmp(a));
        same.dedup();
        same
    }

    fn reaches(&self, circle: &Circle) -> bool {
        match (self.head.reach, circle.radius) {
            (Some(reach), Some(radius)) => reach.least <= radius && radius <= reach.greatest,
            _ => true,
        }
    }
}
