//! A step in sheet, from marks to the finished step.
use super::sheet::{K, OWN_K, Walk, sheet};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{bend, joggle as says};
use handturn::bench::joggle::{Joggle, Step, step};
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "joggle",
    group: Group::Wire,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 18h7l5-9h8V6H12.5l-5 9H2z",
    entries: &[
        Entry::text("thickness", bend::THICKNESS, "1"),
        Entry::text("radius", bend::RADIUS, "1"),
        Entry::text("offset", says::OFFSET, "1"),
        Entry::text("angle", says::ANGLE, "45"),
        Entry::text("begins", says::BEGINS, "12"),
        Entry::text("finished", says::FINISHED, "40"),
        K,
        OWN_K,
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let ask = Joggle {
        sheet: sheet(given)?,
        offset: given.length("offset", Of::Joggle)?,
        angle: if given.is_empty("angle") { None } else { Some(given.angle("angle", Of::Angle)?) },
        begins: given.length("begins", Of::Legs)?,
        finished: given.length("finished", Of::Legs)?,
    };
    let at = |error: Error| {
        about(
            error,
            &[
                (Of::Thickness, "thickness"),
                (Of::Bend, "radius"),
                (Of::Neutral, "own-k"),
                (Of::Angle, "angle"),
                (Of::Joggle, "offset"),
                (Of::Legs, "finished"),
            ],
        )
    };
    let found = step(&ask).map_err(at)?;
    let title = says::title(&ask, &found);
    let (taken, band) = (found.taken.value, found.band.value);
    let mut notes = vec![says::FACE.to_owned(), bend::TRIAL.to_owned()];
    notes.extend((taken < -band).then(|| says::GROWS.to_owned()));
    notes.extend((taken.abs() <= band).then(|| says::WITHIN.to_owned()));
    Ok(Answer {
        figures: vec![
            figure("between", says::BETWEEN, Value::About(found.between)),
            figure("first", says::FIRST, Value::About(found.first)),
            figure("second", says::SECOND, Value::About(found.second)),
            figure("blank", says::BLANK, Value::About(found.blank)),
            figure(
                "taken",
                if taken < 0.0 { says::GROWN } else { says::TAKEN },
                Value::About(found.taken),
            ),
            figure("band", bend::BAND, Value::About(found.band)),
            figure("ends", says::ENDS, Value::About(found.ends)),
            figure("run", says::RUN, Value::About(found.run)),
            figure("web", says::WEB, Value::About(found.web)),
            figure("degrees", says::DEGREES, Value::Degrees(found.degrees)),
        ],
        tables: Vec::new(),
        working: says::working(&ask, &found),
        notes,
        drawing: drawing(&ask, &found, &says::picture(&title)),
        title,
    })
}

fn drawing(ask: &Joggle, found: &Step, name: &str) -> Markup {
    let turns = found.degrees.value / 360.0;
    let (begins, blank) = (float::of(ask.begins.mm()), found.blank.value);
    // From the begin of a bend to its middle.
    let half = found.first.value - begins;
    let mut walk = Walk::new(&ask.sheet);
    walk.straight(begins);
    walk.bend(turns);
    walk.straight(found.web.value);
    walk.bend(-turns);
    walk.straight(blank - begins - found.along.value);
    let bends = [found.first.value, found.second.value].map(|at| (at - half, at + half));
    let (sketch, bottom) = walk.drawn(blank, &bends);
    sketch
        .size((found.first.value, bottom), (0.0, bottom), 20.0, &bend::sized(found.first.value))
        .size((blank, bottom), (0.0, bottom), 46.0, &bend::sized(blank))
        .markup(name)
}
