//! A ring shrunk on a shaft.
use super::bars::{Bar, bars};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{fit, shrink as says};
use handturn::Field as Of;
use handturn::bench::shrink::{EXPANSION, Metal, Shrink};
use handturn::measure::Length;
use handturn::number::{Approx, Fraction, float};

const METALS: &[(&str, &str)] = &[
    ("steel", says::STEEL),
    ("iron", says::IRON),
    ("stainless", says::STAINLESS),
    ("brass", says::BRASS),
    ("bronze", says::BRONZE),
    ("copper", says::COPPER),
    ("aluminium", says::ALUMINIUM),
];

pub(super) const SUM: Sum = Sum {
    key: "shrink",
    group: Group::Fit,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M12 2a10 10 0 100 20a10 10 0 100-20zM12 7a5 5 0 100 10a5 5 0 100-10zM12 2v-1M22 12h1M1 12h1M12 22v1",
    entries: &[
        Entry::text("diameter", says::DIAMETER, "50"),
        Entry::text("hold", says::HOLD, "0.05"),
        Entry::text("clear", says::CLEAR, "0.03"),
        Entry::choice("ring", says::RING, METALS),
        Entry::choice("shaft", says::SHAFT, METALS),
        Entry::number("room", says::ROOM, "20"),
        Entry::number("shaft-at", says::SHAFT_AT, "20"),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn metal(given: &Given, name: &'static str) -> Result<Metal, Wrong> {
    let all: Vec<(&str, Metal)> = EXPANSION.iter().map(|metal| (metal.key, *metal)).collect();
    given.choice(name, &all)
}

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let (ring, shaft) = (metal(given, "ring")?, metal(given, "shaft")?);
    let room = given.number("room", Of::Temperature)?;
    let shrink = Shrink {
        diameter: given.length("diameter", Of::Diameter)?,
        hold: given.length("hold", Of::Length)?,
        clear: given.length("clear", Of::Clearance)?,
        room,
        shaft_at: if given.is_empty("shaft-at") {
            room
        } else {
            given.number("shaft-at", Of::Temperature)?
        },
        // The stiffest of its kind shrinks least.
        shaft_nm: shaft.least_nm,
    };
    let at = |error| {
        about(
            error,
            &[
                (Of::Diameter, "diameter"),
                (Of::Length, "hold"),
                (Of::Clearance, "clear"),
                (Of::Temperature, "shaft-at"),
            ],
        )
    };
    let hot = shrink.ring_at(ring.least_nm).map_err(at)?;
    let freest = shrink.ring_at(ring.most_nm).map_err(at)?;
    let opened = shrink.opened().map_err(at)?;
    let heated = hot > room;
    let temperature = |value: Fraction, unit| {
        let value = float::of(value);
        Value::Number {
            value: Approx { value, bound: value.abs() * f64::EPSILON },
            places: 0,
            unit,
        }
    };
    let fahrenheit = hot.times(9).and_then(|f| f.over(5)?.checked_add(Fraction::whole(32)));
    let first =
        if heated { temperature(hot, "°C") } else { Value::Text(says::AS_IT_IS.to_owned()) };
    let mut figures = vec![figure("heat_to", says::HEAT_TO, first)];
    if heated {
        if let Ok(fahrenheit) = fahrenheit {
            figures.push(figure("fahrenheit", says::IN_F, temperature(fahrenheit, "°F")));
        }
        figures.push(figure("freest", says::AT_LEAST, temperature(freest, "°C")));
    }
    figures.push(figure("opens", says::OPENS, Value::Length(opened)));
    let mut rows = Vec::new();
    for degrees in [100, 150, 200, 250, 300] {
        let left = shrink.clear_at(ring.least_nm, Fraction::whole(degrees)).map_err(at)?;
        rows.push(vec![Value::Count(degrees), Value::Length(left)]);
    }
    let table = Table {
        key: "temperatures",
        caption: says::TABLE,
        head: &[("at", says::AT), ("left", says::LEFT)],
        rows,
    };
    let mut notes = vec![says::BAND.to_owned()];
    let above = |degrees| hot > Fraction::whole(degrees);
    if above(350) {
        notes.push(says::TOO_HOT.to_owned());
    } else if above(150) {
        notes.push(says::TEMPER.to_owned());
    }
    if ring.key == "aluminium" && above(150) {
        notes.push(says::ALUMINIUM_SOFTENS.to_owned());
    }
    if shrink.shaft_at < Fraction::ZERO {
        notes.push(says::COLD_CARE.to_owned());
    }
    notes.push(fit::ENLARGED.to_owned());
    let title = says::title(&shrink, heated.then_some(hot));
    let um = |length: Length| 1000.0 * float::of(length.mm());
    let shaft = um(opened) - um(shrink.clear);
    let all = [
        Bar { name: says::COLD_SHAFT, low: 0.0, high: shaft, class: "o m" },
        Bar { name: says::HOT_RING, low: 0.0, high: um(opened), class: "a w" },
    ];
    Ok(Answer {
        figures,
        tables: vec![table],
        working: says::working(&shrink, opened, ring.least_nm, hot),
        notes,
        drawing: bars(&all, &fit::at_line(shrink.diameter), &fit::picture(&title)),
        title,
    })
}
