//! Putting a train on its studs: idlers for the sense, reach and clearance.
//! The model is that of the module above; lengths are doubled (two gears in
//! mesh stand a + b apart) so that they stay whole.
use super::{Chain, Gap, Pair, STOCK, Senses, Train, stock};
use crate::head::{Gear, Mounting};
use crate::list::List;

/// Idlers of a chain, the second only beside a first.
type Idlers = [Option<u16>; 2];

/// The simple train of `pair` with the fewest idlers that turn its last gear
/// the `same_way` as its first; `None` when it can't be mounted.
pub(super) fn simple(
    gears: &[Gear],
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
        .find_map(|&count| choose(gears, &used, count, &fits))?;
    Some(Train { first: pair, second: None, idlers, idlers_in: Gap::First })
}

/// The compound train of `first` and `second`, in this order on the studs, with
/// no idler or with one; `None` when it can't be mounted.
pub(super) fn compound(
    gears: &[Gear],
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
    let pairs = [first, second];
    for (place, idlers_in) in [(0, Gap::First), (1, Gap::Second)] {
        let fits = |idlers: Idlers| compound_fits(mounting, &pairs, idlers, place);
        if let Some(idlers) = choose(gears, &used, count, &fits) {
            let train = Train { first, second: Some(second), idlers, idlers_in };
            best = Some(
                best.map_or(train, |best| if train.idlers < best.idlers { train } else { best }),
            );
        }
    }
    best
}

/// The train of three `pairs`, in this order on the studs, with no idler or with
/// one; `None` when it can't be mounted.
fn triple(gears: &[Gear], mounting: &Mounting, pairs: [Pair; 3], same_way: bool) -> Option<Chain> {
    let count = u8::from(same_way);
    if !mounting.four_gears || count > mounting.most_idlers {
        return None;
    }
    let [a, b, c] = pairs;
    let used = [a.driver, a.driven, b.driver, b.driven, c.driver, c.driven];
    let places: &[u8] = if same_way { &[0, 1, 2] } else { &[0] };
    let mut best: Option<Chain> = None;
    for &idlers_in in places {
        let fits = |idlers: Idlers| compound_fits(mounting, &pairs, idlers, idlers_in);
        if let Some(idlers) = choose(gears, &used, count, &fits) {
            if best.is_none_or(|best| idlers < best.idlers) {
                best = Some(Chain { pairs: pairs.map(Some), idlers, idlers_in });
            }
        }
    }
    best
}

/// Orders of up to three things.
const ORDERS: [[usize; 3]; 6] = [[0, 1, 2], [1, 0, 2], [0, 2, 1], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

/// Both senses of a train of so many pairs, with the fewest idlers that each takes:
/// the one with fewer first. A pair meshes without an idler only where the studs'
/// distance is `known`.
const fn ways(pairs: usize, known: bool) -> [(bool, u32); 2] {
    match (pairs, known) {
        (1, false) => [(true, 1), (false, 2)],
        (2, _) => [(true, 0), (false, 1)],
        _ => [(false, 0), (true, 1)],
    }
}

/// `drivers` over `driven`, as many of each (one to three), in the order on the
/// studs that takes the fewest gears, then the fewest teeth; of equal ones the
/// first by their teeth from the first stud on. Where a `leader` is named, the first
/// driver has so many teeth. `None` when no order can be mounted.
pub(super) fn any_order(
    gears: &[Gear],
    mounting: &Mounting,
    drivers: &[u16],
    driven: &[u16],
    senses: Senses,
    leader: Option<u16>,
) -> Option<Chain> {
    // Whatever the order, gears too small to span the studs are not tried.
    let idlers = if drivers.len() == 1 { 2 } else { 1 };
    let largest = gears.last().map_or(0, |gear| doubled(gear.teeth));
    let reach = sum(drivers).saturating_add(sum(driven));
    if reach.saturating_add(largest.saturating_mul(idlers)) < doubled(mounting.distance) {
        return None;
    }
    // Two things have two orders: the first of the list that leave the third alone.
    let orders = match drivers.len() {
        1 => ORDERS.get(..1),
        2 => ORDERS.get(..2),
        _ => Some(&ORDERS[..]),
    }?;
    let mut best: Option<(u32, u32, Chain)> = None;
    let known = mounting.distance > 0;
    for (same_way, least) in ways(drivers.len(), known) {
        // Idlers differ by one at least from sense to sense.
        let beaten = best.is_some_and(|(_, _, chain)| chain.idler_count() < least);
        if beaten || !senses.allow(same_way) {
            continue;
        }
        for (over, under) in orders.iter().flat_map(|over| orders.iter().map(move |u| (over, u))) {
            let pair = |place: usize| {
                let at = |teeth: &[u16], order: &[usize; 3]| teeth.get(*order.get(place)?).copied();
                Some(Pair { driver: at(drivers, over)?, driven: at(driven, under)? })
            };
            let first = pair(0)?;
            if leader.is_some_and(|teeth| first.driver != teeth) {
                continue;
            }
            let chain = match (pair(1), pair(2)) {
                (None, _) => simple(gears, mounting, first, same_way).map(Chain::from),
                (Some(b), None) => compound(gears, mounting, first, b, same_way).map(Chain::from),
                (Some(b), Some(c)) => triple(gears, mounting, [first, b, c], same_way),
            };
            let Some(chain) = chain else { continue };
            let key = (chain.gear_count(), chain.teeth(), chain);
            if best.is_none_or(|best| key < best) {
                best = Some(key);
            }
        }
    }
    best.map(|(_, _, chain)| chain)
}

/// The gears of `chain` with a driver of `leader` teeth first, turning the same way;
/// `None` when that can't be mounted.
pub(crate) fn led_by(
    gears: &[Gear],
    mounting: &Mounting,
    chain: &Chain,
    leader: u16,
) -> Option<Chain> {
    let gears = stock::sorted::<STOCK>(gears).ok()?;
    let mut pairs: (List<u16, 3>, List<u16, 3>) = Default::default();
    for pair in chain.pairs() {
        pairs.0.push(pair.driver).ok()?;
        pairs.1.push(pair.driven).ok()?;
    }
    let senses = if chain.same_way() { Senses::Same } else { Senses::Against };
    any_order(&gears, mounting, &pairs.0, &pairs.1, senses, Some(leader))
}

/// The `count` idlers of least total among the gears left over that fit;
/// equal totals go to the smaller first idler.
fn choose(
    gears: &[Gear],
    used: &[u16],
    count: u8,
    fits: &dyn Fn(Idlers) -> bool,
) -> Option<Idlers> {
    let mut left = gears.iter().filter(|gear| gear.count > times(used, gear.teeth));
    match count {
        0 => fits([None, None]).then_some([None, None]),
        1 => {
            let idlers = |gear: &Gear| [Some(gear.teeth), None];
            // A larger idler reaches farther and makes more room: where the largest
            // does not fit, none does.
            left.clone().next_back().filter(|largest| fits(idlers(largest)))?;
            left.map(idlers).find(|&idlers| fits(idlers))
        }
        2 => {
            let mut best: Option<(u32, Idlers)> = None;
            for first in left {
                for second in gears.iter().filter(|gear| gear.teeth >= first.teeth) {
                    let again = u8::from(second.teeth == first.teeth);
                    if second.count <= times(used, second.teeth).saturating_add(again) {
                        continue;
                    }
                    // Second idlers rise: no later one makes the total smaller.
                    let total = sum(&[first.teeth, second.teeth]);
                    if best.is_some_and(|(least, _)| total >= least) {
                        break;
                    }
                    let idlers = [Some(first.teeth), Some(second.teeth)];
                    if fits(idlers) {
                        best = Some((total, idlers));
                        break;
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

/// Whether the `pairs` of a compound train, in this order on the studs, clear each
/// other and span the distance; the idlers stand in the pair counted `idlers_in`.
fn compound_fits(mounting: &Mounting, pairs: &[Pair], idlers: Idlers, idlers_in: u8) -> bool {
    let margin = u32::from(mounting.margin);
    let clears = |studs: [u16; 2], rim: u16| sum(&studs) > u32::from(rim).saturating_add(margin);
    let [idler, _] = idlers;
    // The stud next to a shared one carries an idler where there is one.
    let beside = |place: u8, gear: u16| idler.filter(|_| idlers_in == place).unwrap_or(gear);
    let mut rest = pairs;
    let mut place: u8 = 0;
    while let [before, after, ..] = rest {
        let next = place.saturating_add(1);
        if !clears([beside(place, before.driver), before.driven], after.driver)
            || !clears([after.driver, beside(next, after.driven)], before.driven)
        {
            return false;
        }
        rest = rest.get(1..).unwrap_or_default();
        place = next;
    }
    if mounting.distance == 0 {
        return true;
    }
    let apart = doubled(mounting.distance);
    let (Some(first), Some(last)) = (pairs.first(), pairs.last()) else { return false };
    let ends = [first.driver, last.driven];
    let ends_clear = ends.iter().all(|&end| apart > u32::from(end).saturating_add(margin));
    // Where rims clear, no link is too long to fold back: c < a + b and b < c + d.
    let reach = pairs
        .iter()
        .map(|pair| sum(&[pair.driver, pair.driven]))
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
