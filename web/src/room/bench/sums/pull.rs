//! Extension spring.
use super::push::{ACROSS, PLACES, sizes};
use super::wire::{STUFF, coil, float, known, metal, number};
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{spring as says, wire as of_wire};
use handturn::bench::spring::{Extension, Pulled, arbor};
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "pull",
    group: Group::Wire,
    name: says::PULL,
    about: says::PULL_ABOUT,
    also: says::PULL_ALSO,
    icon: "M8 6v12M10 6v12M12 6v12M14 6v12M16 6v12M7 8a3 3 0 1 0-.1 6M17 8a3 3 0 1 1 .1 6",
    entries: &[
        STUFF,
        Entry::text("wire", of_wire::WIRE, "1"),
        ACROSS,
        Entry::text("size", says::SIZE, "9"),
        Entry::number("coils", says::BODY, "20"),
        Entry::number("tension", says::TENSION, ""),
        Entry::text("loop", says::LOOP, ""),
        Entry::text("bend", says::BEND, ""),
        Entry::number("load", says::LOAD, "30"),
    ],
    answer,
    source: says::PULL_SOURCE,
    care: of_wire::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let (wire, mean) = sizes(given)?;
    let metal = metal(given, wire, "wire")?;
    let at = |error: Error| about(error, &PLACES);
    let tension_n =
        if given.is_empty("tension") { None } else { Some(float(given, "tension", Of::Load)?) };
    let spring = Extension {
        wire,
        mean,
        body: given.number("coils", Of::Coils)?,
        shear_mpa: metal.shear.middle(),
        modulus_mpa: metal.modulus.middle(),
        tension_n,
        loop_radius: given.length_if("loop", Of::Diameter)?,
        bend_radius: given.length_if("bend", Of::Diameter)?,
        load_n: float(given, "load", Of::Load)?,
    };
    let it = spring.pulled().map_err(at)?;
    let arbor = arbor(wire, mean, metal.tensile, metal.modulus.middle()).map_err(at)?;
    let loaded = metal.loaded_by_shear(it.stress.value);
    let at_loop = metal.loaded_by_bending(it.loop_bending.value);
    let mut notes = vec![
        of_wire::metal(metal.tensile, "G", metal.shear),
        known(given),
        says::MANDREL_NOTE.to_owned(),
    ];
    notes.extend(says::winding(it.winding).map(str::to_owned));
    notes.extend((spring.load_n <= it.tension_n.value).then(|| says::BELOW.to_owned()));
    notes.extend((loaded.max(at_loop) > 100.0).then(|| says::OVER.to_owned()));
    let usual = of_wire::band(it.usual_n, 1) + " N";
    Ok(Answer {
        title: says::pulled(wire, mean, &it),
        figures: vec![
            figure("rate", says::RATE_IS, number(it.rate, 3, "N/mm")),
            figure("pounds", says::IN_POUNDS, Value::Text(says::pounds(it.rate))),
            figure("tension", says::TENSION_IS, number(it.tension_n, 1, "N")),
            figure("usual", says::USUAL, Value::Text(usual)),
            figure("free", says::FREE_IN, Value::Length(it.free)),
            figure("gives", says::GIVES, Value::About(it.gives)),
            figure("length", says::AT_LOAD, Value::About(it.length)),
            figure("stress", says::PULL_STRESS, number(it.stress, 0, "MPa")),
            figure("loaded", says::LOADED, Value::Text(says::loaded(loaded))),
            figure("loop-bending", says::LOOP_BENDING, number(it.loop_bending, 0, "MPa")),
            figure("loop-loaded", says::LOOP_LOADED, Value::Text(says::loaded(at_loop))),
            figure("loop-shear", says::LOOP_SHEAR, number(it.loop_shear, 0, "MPa")),
            figure("active", says::ACTIVE, number(it.active, 3, "")),
            figure("index", says::INDEX, number(it.index, 2, "")),
            figure("mandrel", says::MANDREL, Value::Text(says::mandrel(&arbor))),
            figure("wire", says::CUT, Value::About(it.cut)),
        ],
        tables: Vec::new(),
        working: says::pulling(&spring, &it),
        notes,
        drawing: drawing(&spring, &it),
    })
}

fn drawing(spring: &Extension, it: &Pulled) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let (wire, mean, body) = (of(spring.wire), of(spring.mean), float::of(spring.body));
    let long = wire * (body + 1.0);
    let half = (mean + wire) / 2.0;
    let inner = (mean - wire) / 2.0;
    let mut sketch = Sketch::default();
    for x in [-inner, long + inner] {
        sketch = sketch.circle("o m", (x, 0.0), half).circle("o b", (x, 0.0), inner);
    }
    let plain = |sketch: Sketch| sketch.rect("o m", (0.0, -half), (long, half));
    let sketch = if body > 60.0 {
        plain(sketch)
    } else {
        coil(sketch, (wire, mean), body, |turns| wire * (turns + 0.5), (-wire, long + wire))
            .unwrap_or_default()
    };
    let text = [&*crate::words::decimal(it.free.mm(), 3), " mm"].concat();
    sketch
        .size((long + 2.0 * inner, -half), (-2.0 * inner, -half), 24.0, &text)
        .markup(&says::pulled(spring.wire, spring.mean, it))
}
