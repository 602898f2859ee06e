//! Walks every position of a way, adding up what the hands do, and holds what
//! the way says of itself against it. No sum here is the core's.
use crate::plainly::Ratio;
use handturn::divide::{At, Errors, Leg, Part, Place, Question, Way};
use handturn::head::{Head, Sense};
use handturn::train::Train;

/// Checks that a way's places and moves fit each other, that the moves add up
/// to where the work is said to stand, and that worst, adjacent and closing
/// error are what the positions show. For equal parts the sum rule too: an
/// exact way stands on each multiple of 1/N once, and its moves with the
/// closing move make whole turns.
///
/// # Errors
/// What does not fit, in words.
pub fn walk(question: &Question, head: &Head, way: &Way) -> Result<(), String> {
    // As the way comes to the positions: once round, or several times.
    let question = &way.order(question);
    let ordered = &way.order(question);
    let last = question.last();
    let mut place = look(question, way, 0)?;
    same("the start", Ratio::of(place.stands.turns()), Ratio::ZERO)?;
    let mut off = vec![error(&place)];
    let mut stood = vec![Ratio::ZERO];
    let mut turned = Ratio::ZERO;
    for index in 0..last {
        let step = way.step(question, index).map_err(|e| format!("step {index}: {e}"))?;
        let next = look(question, way, index + 1)?;
        for leg in &step.legs {
            ends_where_it_says(leg).map_err(|e| format!("move {index}: {e}"))?;
            turned = turned.plus(work_turned(head, way, leg)?);
        }
        let reached = Ratio::of(next.stands.turns());
        same("place", turned, reached).map_err(|e| format!("{} {e}", index + 1))?;
        joins(&place, &step.legs, &next).map_err(|e| format!("move {index}: {e}"))?;
        takes_up_slack(head, &step.legs).map_err(|e| format!("move {index}: {e}"))?;
        off.push(error(&next));
        stood.push(turned);
        place = next;
    }
    let errors = way.errors(question).map_err(|e| e.to_string())?;
    errors_show(ordered, &off, &errors)?;
    let exact = way.exact(question).map_err(|e| e.to_string())?;
    if exact != off.iter().all(|e| e.num == 0) {
        return Err(format!("exact: {exact}, errors {off:?}"));
    }
    match question.parts() {
        Some(parts) if exact => sum_rule(&stood, parts),
        _ => Ok(()),
    }
}

/// Checks one move out of the middle: the places at its ends fit its legs, and
/// neither is further off than the way's worst error.
///
/// # Errors
/// What does not fit, in words.
pub fn glance(question: &Question, way: &Way, index: u32) -> Result<(), String> {
    let (before, after) = (look(question, way, index)?, look(question, way, index + 1)?);
    let step = way.step(question, index).map_err(|e| format!("step {index}: {e}"))?;
    for leg in &step.legs {
        ends_where_it_says(leg).map_err(|e| format!("move {index}: {e}"))?;
    }
    joins(&before, &step.legs, &after).map_err(|e| format!("move {index}: {e}"))?;
    let errors = way.errors(question).map_err(|e| e.to_string())?;
    let off = before.error().map_err(|e| format!("error {index}: {e}"))?;
    if off.turns().abs() > errors.worst.turns() {
        return Err(format!("place {index} is {off:?} off, the worst is {:?}", errors.worst));
    }
    Ok(())
}

fn look(question: &Question, way: &Way, index: u32) -> Result<Place, String> {
    let place = way.place(question, index).map_err(|e| format!("place {index}: {e}"))?;
    if place.index != index {
        return Err(format!("place {index} says it is {}", place.index));
    }
    let wanted = way.order(question).travel(index).map_err(|e| e.to_string())?;
    same("wanted", Ratio::of(place.wanted.turns()), Ratio::of(wanted.turns()))?;
    Ok(place)
}

fn error(place: &Place) -> Ratio {
    Ratio::of(place.stands.turns()).minus(Ratio::of(place.wanted.turns()))
}

/// Turns of what a leg moves, clockwise counted up.
fn leg_turns(leg: &Leg) -> Ratio {
    let turns = Ratio::new(i128::from(leg.turns), 1);
    let all = turns.plus(Ratio::new(i128::from(leg.spaces), i128::from(leg.to.of)));
    match leg.sense {
        Sense::Clockwise => all,
        Sense::Anticlockwise => Ratio::ZERO.minus(all),
    }
}

/// Turns of the work that a leg brings about.
fn work_turned(head: &Head, way: &Way, leg: &Leg) -> Result<Ratio, String> {
    let ratio = Ratio::of(head.ratio);
    match (way, leg.part) {
        (Way::Direct(_), Part::Spindle) => Ok(leg_turns(leg).size()),
        // The plate carries the pin on by so much a turn of the work.
        (Way::Differential(way), Part::Pin) => {
            Ok(leg_turns(leg).over(ratio.minus(plate_a_turn(head, &way.train))))
        }
        (_, Part::Pin | Part::BackPin | Part::Handwheel) => Ok(leg_turns(leg).over(ratio)),
        (Way::FineDial(way), Part::FineDial) => {
            // The handle goes with the plate.
            Ok(leg_turns(leg).by(Ratio::of(way.dial.shift.turns())).over(ratio))
        }
        (_, part) => Err(format!("{part:?} moves in {way:?}")),
    }
}

/// Turns of the plate for one of the work, from the teeth and from how many
/// gears mesh; below nought against the handle.
fn plate_a_turn(head: &Head, train: &Train) -> Ratio {
    let mut plate = Ratio::new(train.first.driver.into(), train.first.driven.into());
    let mut meshes = 1 + train.idlers.iter().flatten().count();
    if let Some(second) = train.second {
        plate = plate.by(Ratio::new(second.driver.into(), second.driven.into()));
        meshes += 1;
    }
    // One idler makes two meshes: the head says what that does.
    let as_with_one_idler = meshes % 2 == 0;
    if as_with_one_idler == head.mounting.one_idler_follows {
        plate
    } else {
        Ratio::ZERO.minus(plate)
    }
}

/// The numbers at both ends of a leg agree with its count.
fn ends_where_it_says(leg: &Leg) -> Result<(), String> {
    let of = i128::from(leg.to.of);
    if leg.from.of != leg.to.of || i128::from(leg.spaces) >= of || leg.from.number >= leg.from.of {
        return Err(format!("{leg:?}"));
    }
    let count = i128::from(leg.spaces);
    let climbs = match leg.part {
        Part::Spindle => true,
        // The back pin stands still: holes climb under it as the plate goes back.
        Part::BackPin => leg.sense == Sense::Anticlockwise,
        _ => leg.sense == Sense::Clockwise,
    };
    let signed = if climbs { count } else { -count };
    let ends = (i128::from(leg.from.number) + signed).rem_euclid(of);
    if ends != i128::from(leg.to.number) {
        return Err(format!("it ends at {ends}: {leg:?}"));
    }
    match leg.arms {
        Some(arms) if arms.show != arms.spaces + 1 => Err(format!("{arms:?}")),
        Some(arms) => {
            let spaces = if arms.rest { leg.to.of - arms.spaces } else { arms.spaces };
            if spaces == leg.spaces { Ok(()) } else { Err(format!("{arms:?} for {leg:?}")) }
        }
        None => Ok(()),
    }
}

/// Each part starts where the place before left it and ends where the next has it.
fn joins(before: &Place, legs: &[Leg], after: &Place) -> Result<(), String> {
    let tracks: [(Part, Option<At>, Option<At>); 5] = [
        (Part::Pin, before.pin, after.pin),
        (Part::BackPin, before.back_pin, after.back_pin),
        (Part::Handwheel, before.dial, after.dial),
        (Part::FineDial, before.dial, after.dial),
        (Part::Spindle, before.notch, after.notch),
    ];
    for (part, from, to) in tracks {
        let mut stands = from;
        let mut moved = false;
        for leg in legs.iter().filter(|leg| leg.part == part) {
            if stands != Some(leg.from) {
                return Err(format!("{part:?} stands at {stands:?}: {leg:?}"));
            }
            stands = Some(leg.to);
            moved = true;
        }
        if moved && stands != to {
            return Err(format!("{part:?} ends at {stands:?}, not {to:?}"));
        }
    }
    Ok(())
}

/// A fine dial that goes down passes its mark by all its slack and comes up to it.
fn takes_up_slack(head: &Head, legs: &[Leg]) -> Result<(), String> {
    let Some(dial) = head.fine_dial else { return Ok(()) };
    let slack = Ratio::of(dial.slack).over(Ratio::new(dial.marks.into(), 1));
    let mut legs = legs.iter().filter(|leg| leg.part == Part::FineDial).map(leg_turns);
    let (first, second) = (legs.next(), legs.next());
    match (first, second) {
        (Some(down), None) if down < Ratio::ZERO && slack > Ratio::ZERO => {
            Err(format!("the dial stops at {down:?} on its way down"))
        }
        (Some(down), Some(up)) if down >= Ratio::ZERO || up < slack => {
            Err(format!("{down:?}, then {up:?} of the dial, for a slack of {slack:?}"))
        }
        _ => Ok(()),
    }
}

/// Worst, adjacent and closing error, looked for among all positions.
fn errors_show(question: &Question, off: &[Ratio], errors: &Errors) -> Result<(), String> {
    let positions = question.positions() as usize;
    let cut = &off[..positions];
    let worst = cut.iter().map(|e| e.size()).max().unwrap_or(Ratio::ZERO);
    same("worst", worst, Ratio::of(errors.worst.turns()))?;
    let mut round = vec![Ratio::ZERO; positions];
    for (index, error) in (0_u32..).zip(cut) {
        round[question.part_at(index) as usize] = *error;
    }
    let mut adjacent = Ratio::ZERO;
    for pair in round.windows(2) {
        adjacent = adjacent.max(pair[1].minus(pair[0]).size());
    }
    let mut closing = Ratio::ZERO;
    if question.closes() {
        adjacent = adjacent.max(round[positions - 1].minus(round[0]).size());
        closing = off[positions].size();
    }
    same("adjacent", adjacent, Ratio::of(errors.adjacent.turns()))?;
    same("closing", closing, Ratio::of(errors.closing.turns()))
}

/// N positions, each multiple of 1/N of a turn once; all moves make whole turns.
fn sum_rule(stood: &[Ratio], parts: u32) -> Result<(), String> {
    let (home, cut) = stood.split_last().ok_or("no place at all")?;
    if !home.whole() {
        return Err(format!("all moves come to {home:?} turns of the work"));
    }
    let mut met = vec![false; cut.len()];
    let parts = i128::from(parts);
    for (index, stands) in cut.iter().enumerate() {
        if parts % stands.den != 0 {
            return Err(format!("place {index} stands at {stands:?} of a turn"));
        }
        let part = (stands.num * (parts / stands.den)).rem_euclid(parts);
        let met = &mut met[usize::try_from(part).expect("a part")];
        if std::mem::replace(met, true) {
            return Err(format!("place {index} stands on part {part} again"));
        }
    }
    Ok(())
}

fn same(what: &str, found: Ratio, said: Ratio) -> Result<(), String> {
    if found == said { Ok(()) } else { Err(format!("{what}: {found:?} walked, {said:?} said")) }
}
