//! Torsion spring.
use super::push::{ACROSS, PLACES, sizes};
use super::wire::{STUFF, float, known, metal, number};
use crate::draw::sketch::{Sketch, round};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{spring as says, wire as of_wire};
use handturn::bench::spring::{Torsion, Turned, arbor};
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "twist",
    group: Group::Wire,
    name: says::TURN,
    about: says::TURN_ABOUT,
    also: says::TURN_ALSO,
    icon: "M12 7a5 5 0 1 0 .1 0M12 4.5a7.5 7.5 0 1 0 .1 0M12 4.5h9M6 17l-3 5",
    entries: &[
        STUFF,
        Entry::text("wire", of_wire::WIRE, "1.5"),
        ACROSS,
        Entry::text("size", says::SIZE, "13.5"),
        Entry::number("coils", says::BODY, "6"),
        Entry::text("leg", says::LEG, "20"),
        Entry::text("other-leg", says::OTHER_LEG, "20"),
        Entry::number("load", says::MOMENT, "400"),
    ],
    answer,
    source: says::PULL_SOURCE,
    care: of_wire::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let (wire, mean) = sizes(given)?;
    let metal = metal(given, wire, "wire")?;
    let places: Vec<_> =
        PLACES.iter().map(|(of, name)| (*of, if *name == "free" { "leg" } else { name })).collect();
    let at = |error: Error| about(error, &places);
    let spring = Torsion {
        wire,
        mean,
        body: given.number("coils", Of::Coils)?,
        legs: [given.length("leg", Of::Length)?, given.length("other-leg", Of::Length)?],
        modulus_mpa: metal.modulus.middle(),
        moment_nmm: float(given, "load", Of::Load)?,
    };
    let it = spring.turned().map_err(at)?;
    let arbor = arbor(wire, mean, metal.tensile, metal.modulus.middle()).map_err(at)?;
    let loaded = metal.loaded_by_bending(it.stress.value);
    let mut notes = vec![
        says::TURN_NOTE.to_owned(),
        of_wire::metal(metal.tensile, "E", metal.modulus),
        known(given),
        says::MANDREL_NOTE.to_owned(),
    ];
    notes.extend(says::winding(it.winding).map(str::to_owned));
    notes.extend((loaded > 100.0).then(|| says::OVER.to_owned()));
    let turns = crate::words::about(it.turns.value, 3) + " turns";
    Ok(Answer {
        title: says::turned(wire, mean, &it),
        figures: vec![
            figure("per-turn", says::PER_TURN, number(it.per_turn, 0, "N mm")),
            figure("turns", says::TURNS, Value::Text(turns)),
            figure("stress", says::BENDING, number(it.stress, 0, "MPa")),
            figure("loaded", says::LOADED, Value::Text(says::loaded(loaded))),
            figure("inside", says::INSIDE_FREE, Value::Length(it.inside)),
            figure("inside-wound", says::INSIDE_WOUND, Value::About(it.inside_wound)),
            figure("pin", says::PIN, Value::About(it.pin)),
            figure("body", says::LONG, Value::Length(it.long)),
            figure("body-wound", says::LONG_WOUND, Value::About(it.long_wound)),
            figure("active", says::ACTIVE, number(it.active, 3, "")),
            figure("index", says::INDEX, number(it.index, 2, "")),
            figure("mandrel", says::MANDREL, Value::Text(says::mandrel(&arbor))),
            figure("wire", says::CUT, Value::About(it.cut)),
        ],
        tables: Vec::new(),
        working: says::turning(spring.modulus_mpa, wire, mean, spring.moment_nmm, &it),
        notes,
        drawing: drawing(&spring, &it),
    })
}

fn drawing(spring: &Torsion, it: &Turned) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let (wire, mean) = (of(spring.wire), of(spring.mean));
    let (out, inner) = ((mean + wire) / 2.0, (mean - wire) / 2.0);
    let [one, other] = spring.legs.map(of);
    // Seen along the axis: a leg leaves at the top, the other after the body's coils.
    let end = 0.25 - float::of(spring.body.part());
    let leg = |turns: f64, long: f64, away: f64| {
        [(inner, 0.0), (inner, long), (out, long), (out, 0.0)].map(|(radius, along)| {
            let (x, y) = round((0.0, 0.0), radius, turns);
            let (dx, dy) = round((0.0, 0.0), along, turns + away);
            (x + dx, y + dy)
        })
    };
    let text = |mm: f64| [&*crate::words::about(mm, 2), " mm"].concat();
    Sketch::default()
        .closed("o m", &leg(0.25, one, 0.25))
        .closed("o m", &leg(end, other, -0.25))
        .circle("o m", (0.0, 0.0), out)
        .circle("o b", (0.0, 0.0), inner)
        .circle("a", (0.0, 0.0), it.inside_wound.value.max(0.0) / 2.0)
        .circle("t", (0.0, 0.0), it.pin.value / 2.0)
        .label("n", (0.0, 0.0), &text(it.pin.value))
        .size((out, -out), (-out, -out), 22.0, &text(mean + wire))
        .markup(&says::turned(spring.wire, spring.mean, it))
}
