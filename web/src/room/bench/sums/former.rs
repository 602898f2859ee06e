//! Former for a bent ring or clip.
use super::wire::{METALS, known, metal, number, wire};
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{former as says, wire as of_wire};
use handturn::bench::former::{Bend, Former, Section, Trial};
use handturn::bench::wire::Band;
use handturn::measure::read;
use handturn::number::{Approx, float};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "former",
    group: Group::Wire,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M12 5.5a6.5 6.5 0 1 0 .1 0M14.5 2.2a10 10 0 1 1-5 0",
    entries: &[
        Entry::choice("section", says::SECTION, &[("round", says::ROUND), ("strip", says::FLAT)]),
        Entry::choice(
            "of",
            of_wire::STUFF,
            &[
                ("music", of_wire::MUSIC),
                ("hard-drawn", of_wire::HARD_DRAWN),
                ("stainless", of_wire::STAINLESS),
                ("bronze", of_wire::BRONZE),
                ("brass", of_wire::BRASS),
                ("strip", of_wire::STRIP),
                ("mild", of_wire::MILD),
                ("copper", of_wire::COPPER),
                ("own", of_wire::OWN),
            ],
        ),
        Entry::text("yield", says::YIELD, "1600 2000").when("of", &["own"]),
        Entry::number("modulus", says::MODULUS, "206").when("of", &["own"]),
        Entry::text("thick", says::THICK, "1"),
        Entry::text("inside", says::INSIDE, "12"),
    ],
    answer,
    source: says::SOURCE,
    care: of_wire::CARE,
};

/// Yield and modulus: of the metal chosen, or as typed.
fn bands(given: &Given, thick: handturn::measure::Length) -> Result<(Band, Band), Wrong> {
    if METALS.iter().any(|(name, _)| *name == given.get("of")) {
        let metal = metal(given, thick, "thick")?;
        return Ok((metal.yields, metal.modulus));
    }
    let mut found = Vec::new();
    for word in given.get("yield").split_whitespace() {
        found.push(float::of(read::number(word, Of::Yield).map_err(|e| ("yield", e))?));
    }
    found.sort_by(f64::total_cmp);
    let yields = match *found {
        [one] => Band { least: one, most: one },
        [least, most] => Band { least, most },
        [] => return Err(("yield", Error::new(Of::Yield, Cause::Empty))),
        _ => return Err(("yield", Error::new(Of::Yield, Cause::TooMany { most: 2 }))),
    };
    let mega = float::of(given.number("modulus", Of::Modulus)?) * 1000.0;
    Ok((yields, Band { least: mega, most: mega }))
}

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let section =
        given.choice("section", &[("round", Section::Round), ("strip", Section::Strip)])?;
    let thick = wire(given, "thick")?;
    let inside = given.length("inside", Of::Length)?;
    let (yields, modulus) = bands(given, thick)?;
    let bend = Bend { section, thick, inside, yields, modulus };
    let at = |error: Error| {
        about(
            error,
            &[
                (Of::Wire, "thick"),
                (Of::Yield, "yield"),
                (Of::Modulus, "modulus"),
                (Of::Length, "inside"),
            ],
        )
    };
    let former = bend.former(&lists::lengths(given.fields, Stock::Drills)).map_err(at)?;
    let mut notes = vec![says::NEUTRAL.to_owned(), says::TRIAL.to_owned()];
    if given.get("of") != "own" {
        notes.push(known(given));
    }
    let opened = (1.0 / former.kept.value - 1.0) * 100.0;
    let part = |value: f64| Approx { value, bound: 0.0 };
    Ok(Answer {
        title: says::title(&bend, &former),
        figures: vec![
            figure("former", says::DIAMETER, Value::About(former.middle)),
            figure("band", says::BAND, Value::Text(says::may_take(&former))),
            figure("opens", says::OPENS, number(part(opened), 1, "%")),
            figure("elastic", says::ELASTIC, number(part(former.elastic.value * 100.0), 1, "%")),
        ],
        tables: vec![Table {
            key: "trials",
            caption: says::LADDER,
            head: &[
                ("former", says::FORMER),
                ("inside", says::LIKELY),
                ("least", says::LEAST),
                ("most", says::MOST),
            ],
            rows: former.trials.iter().map(row).collect(),
        }],
        working: says::working(&bend, &former),
        notes,
        drawing: drawing(&bend, &former),
    })
}

fn row(trial: &Trial) -> Vec<Value> {
    let inside = |found: Option<Approx>| {
        found.map_or_else(|| Value::Text(says::STRAIGHT.to_owned()), Value::About)
    };
    vec![Value::Length(trial.former), inside(trial.middle), inside(trial.least), inside(trial.most)]
}

fn drawing(bend: &Bend, former: &Former) -> Markup {
    let (thick, inside) = (float::of(bend.thick.mm()), float::of(bend.inside.mm()) / 2.0);
    let on = former.middle.value / 2.0;
    // The ring lies on the former on one side, and springs open from there.
    let free = (0.0, on - inside);
    let foot = free.1 - inside - thick;
    Sketch::default()
        .circle("o m", (0.0, 0.0), on)
        .circle("a", (0.0, 0.0), on + thick)
        .circle("o", free, inside)
        .circle("o", free, inside + thick)
        .label("n", (0.0, 0.0), &[&*crate::words::about(former.middle.value, 2), " mm"].concat())
        .size(
            (inside, foot),
            (-inside, foot),
            22.0,
            &[&*crate::words::decimal(bend.inside.mm(), 3), " mm"].concat(),
        )
        .markup(&says::picture(bend, former))
}
