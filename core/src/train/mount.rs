//! Putting a train on its studs: idlers for the sense, reach and clearance.
//! The model is that of the module above; lengths are doubled (two gears in
//! mesh stand a + b apart) so that they stay whole.
use super::{Gap, Pair, Stock, Train};
use crate::head::Mounting;

/// Idlers of a chain, the second only beside a first.
type Idlers = [Option<u16>; 2];

/// The simple train of `pair` with the fewest idlers that turn its last gear
/// the `same_way` as its first; `None` when it can't be mounted.
pub(super) fn simple(
    stock: &Stock,
    mounting: &Mounting,
    pair: Pair,
    same_way: bool,
) -> Option<Train> {
    let counts: &[u8] = if same_way { &[1] } else { &[0, 2] };
    let fits = |idlers: Idlers| simple_fits(mounting, pair, idlers);
    let used = [pair.driver, pair.driven];
    let idlers = counts
        .iter()
        .filter(|&&count| count <= mounting.most_idlers)
        .find_map(|&count| choose(stock, &used, count, &fits))?;
    Some(Train { first: pair, second: None, idlers, idlers_in: Gap::First })
}

/// The compound train of `first` and `second`, in this order on the studs, with
/// no idler or with one; `None` when it can't be mounted.
pub(super) fn compound(
    stock: &Stock,
    mounting: &Mounting,
    first: Pair,
    second: Pair,
    same_way: bool,
) -> Option<Train> {
    let count = u8::from(!same_way);
    if !mounting.four_gears || count > mounting.most_idlers {
        return None;
    }
    let used = [first.driver, first.driven, second.driver, second.driven];
    let mut best: Option<Train> = None;
    for idlers_in in [Gap::First, Gap::Second] {
        let fits = |idlers: Idlers| compound_fits(mounting, first, second, idlers, idlers_in);
        if let Some(idlers) = choose(stock, &used, count, &fits) {
            let train = Train { first, second: Some(second), idlers, idlers_in };
            best = Some(
                best.map_or(train, |best| if train.idlers < best.idlers { train } else { best }),
            );
        }
    }
    best
}

/// The `count` idlers of least total among the gears left over that fit;
/// equal totals go to the smaller first idler.
fn choose(stock: &Stock, used: &[u16], count: u8, fits: &dyn Fn(Idlers) -> bool) -> Option<Idlers> {
    let mut left = stock.gears().filter(|gear| gear.count > times(used, gear.teeth));
    match count {
        0 => fits([None, None]).then_some([None, None]),
        1 => left.map(|gear| [Some(gear.teeth), None]).find(|&idlers| fits(idlers)),
        2 => {
            let mut best: Option<(u32, Idlers)> = None;
            for first in left {
                for second in stock.gears().filter(|gear| gear.teeth >= first.teeth) {
                    let again = u8::from(second.teeth == first.teeth);
                    if second.count <= times(used, second.teeth).saturating_add(again) {
                        continue;
                    }
                    let total = sum(&[first.teeth, second.teeth]);
                    let idlers = [Some(first.teeth), Some(second.teeth)];
                    if best.is_none_or(|(least, _)| total < least) && fits(idlers) {
                        best = Some((total, idlers));
                    }
                }
            }
            best.map(|(_, idlers)| idlers)
        }
        _ => left.next().and(None),
    }
}

fn simple_fits(mounting: &Mounting, pair: Pair, idlers: Idlers) -> bool {
    let apart = doubled(mounting.distance);
    let meet = sum(&[pair.driver, pair.driven]);
    if idlers == [None, None] {
        return mounting.distance > 0 && meet == apart;
    }
    let span = meet.saturating_add(idler_span(idlers));
    let clear = meet.saturating_add(u32::from(mounting.margin)) <= apart;
    mounting.distance == 0 || (clear && span >= apart)
}

fn compound_fits(
    mounting: &Mounting,
    first: Pair,
    second: Pair,
    idlers: Idlers,
    idlers_in: Gap,
) -> bool {
    let margin = u32::from(mounting.margin);
    let clears = |studs: [u16; 2], rim: u16| sum(&studs) > u32::from(rim).saturating_add(margin);
    let [idler, _] = idlers;
    // The studs next to the middle one carry an idler where there is one.
    let before = idler.filter(|_| idlers_in == Gap::First).unwrap_or(first.driver);
    let after = idler.filter(|_| idlers_in == Gap::Second).unwrap_or(second.driven);
    if !clears([before, first.driven], second.driver)
        || !clears([second.driver, after], first.driven)
    {
        return false;
    }
    if mounting.distance == 0 {
        return true;
    }
    let apart = doubled(mounting.distance);
    let ends = [first.driver, second.driven];
    let ends_clear = ends.iter().all(|&end| apart > u32::from(end).saturating_add(margin));
    // Where rims clear, no link is too long to fold back: c < a + b and b < c + d.
    let reach = [sum(&[first.driver, first.driven]), sum(&[second.driver, second.driven])]
        .into_iter()
        .fold(idler_span(idlers), u32::saturating_add);
    ends_clear && reach >= apart
}

fn idler_span(idlers: Idlers) -> u32 {
    idlers.iter().flatten().map(|&teeth| doubled(teeth)).fold(0, u32::saturating_add)
}

fn doubled(teeth: u16) -> u32 {
    sum(&[teeth, teeth])
}

fn sum(teeth: &[u16]) -> u32 {
    teeth.iter().map(|&t| u32::from(t)).fold(0, u32::saturating_add)
}

/// How often `teeth` stands in `used`.
pub(super) fn times(used: &[u16], teeth: u16) -> u8 {
    used.iter().filter(|&&t| t == teeth).fold(0, |n, _| n.saturating_add(1))
}
