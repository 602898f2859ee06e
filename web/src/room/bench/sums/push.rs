//! Compression spring.
use super::wire::{STUFF, coil, float, known, metal, number, wire};
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{spring as says, wire as of_wire};
use handturn::bench::spring::{Across, Compression, Ends, Pushed, arbor};
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

/// Which diameter is given, and how much it is.
pub(super) const ACROSS: Entry = Entry::choice(
    "across",
    says::ACROSS,
    &[("outside", says::OUTSIDE), ("mean", says::MEAN), ("inside", says::INSIDE)],
);

pub(super) const SUM: Sum = Sum {
    key: "push",
    group: Group::Wire,
    name: says::PUSH,
    about: says::PUSH_ABOUT,
    also: says::PUSH_ALSO,
    icon: "M4 3h16M4 21h16M6 3.5L18 7 6 10.5 18 14 6 17.5 18 20.5",
    entries: &[
        STUFF,
        Entry::text("wire", of_wire::WIRE, "1"),
        ACROSS,
        Entry::text("size", says::SIZE, "10"),
        Entry::choice(
            "ends",
            says::ENDS,
            &[
                ("squared-ground", says::SQUARED_GROUND),
                ("squared", says::SQUARED),
                ("plain", says::PLAIN),
                ("plain-ground", says::PLAIN_GROUND),
            ],
        ),
        Entry::choice("by", says::BY, &[("coils", says::COILS), ("rate", says::RATE)]),
        Entry::number("coils", says::TOTAL, "9.5").when("by", &["coils"]),
        Entry::number("rate", says::WANTED, "2").when("by", &["rate"]),
        Entry::text("free", says::FREE, "26"),
        Entry::number("load", says::LOAD, "20"),
    ],
    answer,
    source: says::PUSH_SOURCE,
    care: of_wire::CARE,
};

/// Wire and mean diameter.
pub(super) fn sizes(given: &Given) -> Result<(Length, Length), Wrong> {
    let wire = wire(given, "wire")?;
    let size = given.length("size", Of::Diameter)?;
    let across = given.choice(
        "across",
        &[("outside", Across::Outside), ("mean", Across::Mean), ("inside", Across::Inside)],
    )?;
    Ok((wire, across.mean(size, wire).map_err(|error| ("size", error))?))
}

/// Places of what the core refuses of any spring.
pub(super) const PLACES: [(Of, &str); 6] = [
    (Of::Wire, "wire"),
    (Of::Load, "load"),
    (Of::Coils, "coils"),
    (Of::Length, "free"),
    (Of::Fraction, "coils"),
    (Of::Diameter, "size"),
];

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let (wire, mean) = sizes(given)?;
    let metal = metal(given, wire, "wire")?;
    let ends = given.choice(
        "ends",
        &[
            ("squared-ground", Ends::SquaredGround),
            ("squared", Ends::Squared),
            ("plain", Ends::Plain),
            ("plain-ground", Ends::PlainGround),
        ],
    )?;
    let at = |error: Error| about(error, &PLACES);
    let mut spring = Compression {
        wire,
        mean,
        total: handturn::number::Fraction::ONE,
        ends,
        free: given.length("free", Of::Length)?,
        shear_mpa: metal.shear.middle(),
        load_n: float(given, "load", Of::Load)?,
    };
    spring.total = if given.get("by") == "rate" {
        let rate = float(given, "rate", Of::Load)?;
        spring.coils_for(rate).map_err(|error| ("rate", error))?.total
    } else {
        given.number("coils", Of::Coils)?
    };
    let it = spring.pushed().map_err(at)?;
    let arbor = arbor(wire, mean, metal.tensile, metal.modulus.middle()).map_err(at)?;
    let (loaded, solid) =
        (metal.loaded_by_shear(it.stress.value), metal.loaded_by_shear(it.solid_stress.value));
    let factor = crate::words::about(it.wahl.value, 4);
    let mut notes = vec![
        of_wire::metal(metal.tensile, "G", metal.shear),
        known(given),
        says::MANDREL_NOTE.to_owned(),
    ];
    notes.extend(says::winding(it.winding).map(str::to_owned));
    notes.extend(it.closes.then(|| says::CLOSES.to_owned()));
    notes.extend((loaded > 100.0).then(|| says::OVER.to_owned()));
    notes.extend((solid > 100.0).then(|| says::OVER_SOLID.to_owned()));
    Ok(Answer {
        title: says::pushed(wire, mean, &it),
        figures: vec![
            figure("rate", says::RATE_IS, number(it.rate, 3, "N/mm")),
            figure("pounds", says::IN_POUNDS, Value::Text(says::pounds(it.rate))),
            figure("solid", says::SOLID, Value::Length(it.solid)),
            figure("travel", says::TRAVEL, Value::Length(it.travel)),
            figure("solid-force", says::SOLID_N, number(it.solid_n, 1, "N")),
            figure("gives", says::GIVES, Value::About(it.gives)),
            figure("length", says::AT_LOAD, Value::About(it.length)),
            figure("stress", says::STRESS, number(it.stress, 0, "MPa")),
            figure("stress-b", says::BERG, number(it.stress_bergstrasser, 0, "MPa")),
            figure("loaded", says::LOADED, Value::Text(says::loaded(loaded))),
            figure("stress-solid", says::STRESS_SOLID, number(it.solid_stress, 0, "MPa")),
            figure("loaded-solid", says::LOADED_SOLID, Value::Text(says::loaded(solid))),
            figure("coils", says::TOTAL_IS, Value::Text(says::coils(spring.total))),
            figure("active", says::ACTIVE, Value::Text(says::coils(it.active))),
            figure("pitch", says::PITCH, Value::Length(it.pitch)),
            figure("index", says::INDEX, number(it.index, 2, "")),
            figure("stands", says::STANDS, Value::Text(says::stands(it.stands))),
            figure("mandrel", says::MANDREL, Value::Text(says::mandrel(&arbor))),
            figure("wire", says::CUT, Value::About(it.cut)),
        ],
        tables: Vec::new(),
        working: vec![
            says::rate(spring.shear_mpa, wire, mean, &says::coils(it.active), it.rate),
            says::wahl(it.index, it.wahl, it.bergstrasser),
            says::shear(&factor, spring.load_n, wire, mean, it.stress),
            [
                says::WHEN_SOLID,
                &says::shear(&factor, it.solid_n.value, wire, mean, it.solid_stress),
            ]
            .concat(),
        ],
        notes,
        drawing: drawing(&spring, &it),
    })
}

fn drawing(spring: &Compression, it: &Pushed) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let (wire, mean, free) = (of(spring.wire), of(spring.mean), of(spring.free));
    let (coils, pitch) = (float::of(spring.total), of(it.pitch));
    let ground = matches!(spring.ends, Ends::PlainGround | Ends::SquaredGround);
    let dead = if matches!(spring.ends, Ends::Squared | Ends::SquaredGround) { 1.0 } else { 0.0 };
    let begin = if ground { 0.0 } else { wire / 2.0 };
    // A closed coil rises by one wire, the others by the pitch.
    let along = |turns: f64| {
        let last = (turns - (coils - dead)).max(0.0);
        let moves = (turns - dead).max(0.0) - last;
        begin + (turns.min(dead) + last) * wire + moves * pitch
    };
    let within = if ground { (0.0, free) } else { (-wire, free + wire) };
    let half = (mean + wire) / 2.0;
    let text = |length: Length| [&*crate::words::decimal(length.mm(), 3), " mm"].concat();
    let sketch = coil(Sketch::default(), (wire, mean), coils, along, within).unwrap_or_else(|| {
        Sketch::default().rect("o m", (0.0, -half), (free, half)).label(
            "n",
            (free / 2.0, 0.0),
            says::TOO_MANY,
        )
    });
    sketch
        .line("t", &[(0.0, -half * 1.15), (0.0, half * 1.15)])
        .line("t", &[(free, -half * 1.15), (free, half * 1.15)])
        .size((free, -half), (0.0, -half), 26.0, &text(spring.free))
        .size((0.0, half), (of(it.solid), half), 22.0, &text(it.solid))
        .markup(&says::pushed(spring.wire, spring.mean, it))
}
