//! The order in which values that depend on each other can be worked out.
use super::formula::{is_formula, names, worked as formula};
use super::{Amount, Fault, Given, name_fits, plain, same_name};
use crate::bounds::MAX_VALUES;
use crate::error::{Cause, Error, Field};
use crate::list::List;

/// A value, or why there is none.
type Outcome = Result<Amount, Fault>;

/// Every value of one chain: the drawing's, or with what was `measured`.
pub(super) fn worked(given: &[Given<'_>], measured: bool) -> List<Outcome, MAX_VALUES> {
    let mut waits: List<u32, MAX_VALUES> = List::new();
    let mut done: List<Option<Outcome>, MAX_VALUES> = List::new();
    for (k, value) in given.iter().enumerate() {
        let (early, on) = match early(given, k, measured) {
            Some(outcome) => (Some(outcome), 0),
            None => (None, waits_for(given, value.drawing)),
        };
        let _ = done.push(early);
        let _ = waits.push(on);
    }
    // Each round works out what waits for nothing open any more; one round, one value at least.
    let mut more = true;
    while more {
        more = false;
        for (k, value) in given.iter().enumerate() {
            let on = waits.get(k).copied().unwrap_or(0);
            let open = done.get(k).is_some_and(Option::is_none);
            if open && each(on).all(|on| done.get(on).is_some_and(Option::is_some)) {
                let outcome = formula(value.drawing, value.kind, &|name, (from, to)| {
                    let at = place_of(given, name).ok_or(Fault::Unknown(from, to))?;
                    match done.get(usize::from(at)) {
                        Some(Some(Ok(amount))) => Ok(*amount),
                        _ => Err(Fault::Depends(at)),
                    }
                });
                if let Some(place) = done.get_mut(k) {
                    *place = Some(outcome);
                    more = true;
                }
            }
        }
    }
    let left = mask(done.iter().map(Option::is_none));
    let mut found = List::new();
    for (k, outcome) in done.iter().enumerate() {
        let _ = found.push(outcome.clone().unwrap_or_else(|| Err(round(&waits, left, k))));
    }
    found
}

/// What value `k` comes to without any other; none where that takes its formula.
fn early(given: &[Given<'_>], k: usize, measured: bool) -> Option<Outcome> {
    let value = given.get(k)?;
    if let Err(error) = name_fits(value.name) {
        return Some(Err(Fault::Text(error)));
    }
    if place_of(given, value.name).is_some_and(|first| usize::from(first) < k) {
        let error = Error::new(Field::Name, Cause::Twice).at(0, value.name.len());
        return Some(Err(Fault::Text(error)));
    }
    let text = if measured && !value.measured.trim().is_empty() {
        value.measured
    } else if is_formula(value.drawing) {
        return None;
    } else {
        value.drawing
    };
    Some(plain(text, value.kind).map_err(Fault::Text))
}

/// The place of the first value of this name.
fn place_of(given: &[Given<'_>], name: &str) -> Option<u8> {
    let place = given.iter().position(|value| same_name(value.name, name))?;
    u8::try_from(place).ok()
}

/// The values that the formula `text` names, a bit each.
fn waits_for(given: &[Given<'_>], text: &str) -> u32 {
    let mut on = 0;
    names(text, |name| on |= place_of(given, name).map_or(0, |at| bit(usize::from(at))));
    on
}

/// The places of the values whose formulas name the one at `place`.
pub(super) fn followers(given: &[Given<'_>], place: usize) -> List<u8, MAX_VALUES> {
    let mut found = List::new();
    for (k, value) in (0_u8..).zip(given.iter().take(MAX_VALUES)) {
        if waits_for(given, value.drawing) & bit(place) != 0 && usize::from(k) != place {
            let _ = found.push(k);
        }
    }
    found
}

fn bit(place: usize) -> u32 {
    u32::try_from(place).ok().and_then(|place| 1_u32.checked_shl(place)).unwrap_or(0)
}

fn mask(each: impl Iterator<Item = bool>) -> u32 {
    each.enumerate().fold(0, |mask, (k, set)| if set { mask | bit(k) } else { mask })
}

/// The places whose bits are set, the lowest first.
fn each(mask: u32) -> impl Iterator<Item = usize> {
    (0..MAX_VALUES).filter(move |&k| mask & bit(k) != 0)
}

/// Why value `from` could not be worked out, of those that are `left`: the shortest way
/// round on which it depends on itself, or the first of those left that it waits for.
fn round(waits: &[u32], left: u32, from: usize) -> Fault {
    let on = |k: usize| waits.get(k).copied().unwrap_or(0) & left;
    // One step more each time: `before` says from where a value was first reached.
    let mut before: List<Option<u8>, MAX_VALUES> = List::new();
    for _ in 0..MAX_VALUES {
        let _ = before.push(None);
    }
    let mut reached = 0_u32;
    let mut edge = bit(from);
    while edge != 0 {
        let mut next = 0;
        for k in each(edge) {
            for to in each(on(k) & !reached & !next) {
                next |= bit(to);
                if let Some(place) = before.get_mut(to) {
                    *place = u8::try_from(k).ok();
                }
            }
        }
        reached |= next;
        edge = if reached & bit(from) == 0 { next } else { 0 };
    }
    if reached & bit(from) == 0 {
        let first = each(on(from)).next().and_then(|k| u8::try_from(k).ok());
        return Fault::Depends(first.unwrap_or(0));
    }
    let mut way: List<u8, MAX_VALUES> = List::new();
    let mut at = u8::try_from(from).ok();
    while let Some(k) = at {
        if way.push(k).is_err() {
            break;
        }
        at = before.get(usize::from(k)).copied().flatten().filter(|&k| usize::from(k) != from);
    }
    // It was gone back from the end: this one stays first, the others follow in turn.
    if let [_, others @ ..] = &mut *way {
        others.reverse();
    }
    Fault::Cycle(way)
}
