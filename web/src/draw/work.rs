//! The work, drawn as a ring round the plate: one mark for each position, those
//! cut in full, the one at the cutter pointed at. Angles are true.
use super::{Path, num, plate, polar};
use handturn::number::float;
use handturn::run::{Plan, State};
use maud::{Markup, html};

/// Inner and outer radius of the ring, about a plate of [`plate::EDGE`].
const INNER: f64 = plate::EDGE + 15.0;
const OUTER: f64 = plate::EDGE + 25.0;
/// More marks than this run together: then each stands for several positions.
const MOST: u32 = 360;

/// The ring of a Run at `state`; `home` when the closing move is made.
#[must_use]
pub fn ring(plan: &Plan, state: &State) -> Markup {
    let positions = plan.question.positions();
    let stride = positions.div_ceil(MOST).max(1);
    let (mut done, mut todo) = (Path::default(), Path::default());
    for index in (0..positions).step_by(stride as usize) {
        let to = index.saturating_add(stride).min(positions);
        let cut = (index..to).all(|index| state.cuts().contains(index));
        let path = if cut { &mut done } else { &mut todo };
        let turns = turns(plan, index);
        *path = std::mem::take(path).jump(polar(INNER, turns)).to(polar(OUTER, turns));
    }
    let here = turns(plan, state.index());
    let at_position = state.index() < positions;
    let pointer = Path::default()
        .to(polar(INNER - 1.0, here))
        .to(polar(INNER - 8.0, here - 0.007))
        .to(polar(INNER - 8.0, here + 0.007));
    let wide = (float::PI * 2.0 * INNER / f64::from(positions.clamp(1, MOST)) * 0.5).min(3.0);
    html! {
        circle.t r=(num(INNER)) {}
        circle.t r=(num(OUTER)) {}
        path.todo d=(todo.0) {}
        path.cut d=(done.0) stroke-width=(num(wide)) {}
        @if at_position {
            path.here d=(Path::default().to(polar(INNER, here)).to(polar(OUTER, here)).0) {}
        }
        path.af d=(pointer.close()) {}
        @for index in labels(positions) {
            @let (x, y) = polar(OUTER + 7.0, turns(plan, index));
            text.n.h x=(num(x)) y=(num(y + 2.8)) font-size="7.8" { (plan.part_at(index) + 1) }
        }
    }
}

/// Where position `index` stands on the ring, in turns clockwise from the top.
fn turns(plan: &Plan, index: u32) -> f64 {
    let index = index.min(plan.question.last());
    plan.question.travel(index).map_or(0.0, |travel| float::of(travel.turns().part()))
}

/// The positions that carry a number: all of a few, else about every quarter.
fn labels(positions: u32) -> impl Iterator<Item = u32> {
    let quarter = if positions <= 8 { 1 } else { positions.div_ceil(4) };
    (0..positions).step_by(quarter.max(1) as usize)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::keep::tests::run;
    use handturn::run::State;

    #[track_caller]
    fn marks(count: u32, presses: usize) -> (usize, usize) {
        let run = run(count, presses);
        let plan = run.frozen.plan();
        let state = State::replay(&plan, run.events.iter().copied()).unwrap();
        let markup = ring(&plan, &state).into_string();
        let of = |class: &str| {
            let start =
                markup.split_once(&["<path class=\"", class, "\" d=\""].concat()).unwrap().1;
            start.split_once('"').unwrap().0.matches('M').count()
        };
        (of("cut"), of("todo"))
    }

    #[test]
    fn every_position_has_its_mark() {
        assert_eq!(marks(64, 0), (0, 64));
        assert_eq!(marks(64, 36), (36, 28));
        assert_eq!(marks(64, 65), (64, 0));
        assert_eq!(marks(3, 1), (1, 2));
    }

    #[test]
    fn many_positions_share_marks_and_none_is_shown_cut_too_soon() {
        assert_eq!(marks(1000, 4), (1, 333));
        assert_eq!(marks(1000, 2), (0, 334));
    }
}
