//! Sheet bent into legs.
use super::sheet::{K, OWN_K, Walk, sheet};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::bend as says;
use handturn::bench::bend::{Bends, Corner, Folded, LEAST_RADIUS, Sheet, fold};
use handturn::measure::{Angle, read};
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "bend",
    group: Group::Wire,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M3 4v12a5 5 0 005 5h13v-3H8a2 2 0 01-2-2V4z",
    entries: &[
        Entry::text("thickness", says::THICKNESS, "1"),
        Entry::text("radius", says::RADIUS, "1"),
        Entry::text("legs", says::LEGS, "20 40 20"),
        Entry::text("angles", says::ANGLES, "90"),
        Entry::choice(
            "corner",
            says::CORNER,
            &[("outside", says::OUTSIDE), ("inside", says::INSIDE), ("flat", says::FLAT_PART)],
        ),
        K,
        OWN_K,
        Entry {
            default: "steel",
            ..Entry::choice(
                "metal",
                says::METAL,
                &[
                    ("copper", says::COPPER),
                    ("brass", says::BRASS),
                    ("hard-brass", says::HARD_BRASS),
                    ("steel", says::STEEL),
                    ("stainless", says::STAINLESS),
                    ("aluminium", says::ALUMINIUM),
                    ("hard-aluminium", says::HARD_ALUMINIUM),
                    ("spring", says::SPRING),
                ],
            )
        },
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let sheet = sheet(given)?;
    let legs = given.lengths("legs", Of::Legs)?;
    let angles = read::angles(given.get("angles")).map_err(|e| ("angles", e))?;
    let corner = given.choice(
        "corner",
        &[("outside", Corner::Outside), ("inside", Corner::Inside), ("flat", Corner::Flat)],
    )?;
    let at = |error: Error| {
        about(
            error,
            &[
                (Of::Thickness, "thickness"),
                (Of::Bend, "radius"),
                (Of::Neutral, "own-k"),
                (Of::Angle, "angles"),
                (Of::Legs, "legs"),
            ],
        )
    };
    let folded = fold(&Bends { sheet, legs: &legs, angles: &angles, corner }).map_err(at)?;
    let metal = given.get("metal");
    let known = LEAST_RADIUS.iter().find(|metals| metals.key == metal);
    let least = known.map(|metal| metal.radius(sheet.thickness)).transpose().map_err(at)?;
    let mut figures = vec![
        figure("flat", says::FLAT, Value::About(folded.flat)),
        figure("band", says::BAND, Value::About(folded.band)),
        figure("k", says::K, Value::Text(says::k(sheet.neutral))),
    ];
    let mut notes = vec![says::TRIAL.to_owned(), says::EITHER_WAY.to_owned()];
    if let Some(least) = least {
        let band = says::least_radius(least.least, least.most);
        figures.push(figure("least_radius", says::LEAST_RADIUS, Value::Text(band)));
        if sheet.radius < least.least {
            notes.insert(0, says::TIGHT.to_owned());
        }
    }
    let rows = folded.lines.iter().zip(1..).map(|(line, k)| {
        let lengths = [line.begins, line.middle, line.ends, line.allowance, line.setback];
        let mut row = vec![Value::Count(k)];
        row.extend(lengths.map(Value::About));
        row
    });
    let tables = vec![Table {
        key: "bends",
        caption: says::TABLE,
        head: &[
            ("bend", says::BEND),
            ("begins", says::BEGINS),
            ("middle", says::MIDDLE),
            ("ends", says::ENDS),
            ("allowance", says::ALLOWANCE),
            ("setback", says::SETBACK),
        ],
        rows: rows.collect(),
    }];
    let setback = match corner {
        Corner::Outside => says::BY_OUTSIDE,
        Corner::Inside => says::BY_INSIDE,
        Corner::Flat => says::BY_FLAT,
    };
    let title = says::title(&legs, &folded);
    Ok(Answer {
        figures,
        tables,
        working: says::working(&sheet, &folded, setback),
        notes,
        drawing: drawing(&sheet, &folded, &angles, &says::picture(&title)),
        title,
    })
}

fn drawing(sheet: &Sheet, folded: &Folded, angles: &[Angle], name: &str) -> Markup {
    let mut walk = Walk::new(sheet);
    let mut at = 0.0;
    let mut angle = angles.iter().cycle();
    for line in &*folded.lines {
        walk.straight(line.begins.value - at);
        walk.bend(angle.next().map_or(0.0, |angle| float::of(angle.turns())));
        at = line.ends.value;
    }
    let flat = folded.flat.value;
    walk.straight(flat - at);
    let bends: Vec<(f64, f64)> =
        folded.lines.iter().map(|line| (line.begins.value, line.ends.value)).collect();
    let (sketch, bottom) = walk.drawn(flat, &bends);
    sketch.size((flat, bottom), (0.0, bottom), 20.0, &says::sized(flat)).markup(name)
}
