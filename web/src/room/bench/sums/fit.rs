//! ISO fits: limits, what they leave, a part turned to one that was measured.
use super::bars::{Bar, bars};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::fit as says;
use handturn::bench::fit::{Class, Fit, Kind, Limits, Measured, Turned, read};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::{Error, Field as Of};

pub(super) const SUM: Sum = Sum {
    key: "fit",
    group: Group::Fit,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M3 4h6v16H3zM9 8h12v8H9M5.5 12h17",
    entries: &[
        Entry::text("size", says::SIZE, "25"),
        Entry {
            default: "H7/g6",
            ..Entry::choice(
                "does",
                says::DOES,
                &[
                    ("H11/c11", says::LOOSE),
                    ("H9/d9", says::FREE),
                    ("H8/f7", says::OILED),
                    ("H7/g6", says::SLIDES),
                    ("H7/h6", says::BY_HAND),
                    ("H7/k6", says::TAPPED),
                    ("H7/n6", says::LIGHT),
                    ("H7/p6", says::PRESSED),
                    ("H7/s6", says::HARD),
                    ("own", says::OWN),
                ],
            )
        },
        Entry::text("classes", says::CLASSES, "H7/g6").when("does", &["own"]),
        Entry::choice(
            "part",
            says::PART,
            &[("none", says::NEITHER), ("hole", says::THE_HOLE), ("shaft", says::THE_SHAFT)],
        ),
        Entry::text("reading", says::READING, "25.03").when("part", &["hole", "shaft"]),
        Entry::text("doubt", says::DOUBT, "0.002").when("part", &["hole", "shaft"]),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn at(error: Error) -> Wrong {
    about(error, &[(Of::Diameter, "size"), (Of::Measured, "reading"), (Of::Fit, "classes")])
}

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let size = given.length("size", Of::Diameter)?;
    let classes = match given.get("does") {
        "own" => given.get("classes").trim(),
        usual => usual,
    };
    let part = given.choice(
        "part",
        &[("none", None), ("hole", Some(Measured::Hole)), ("shaft", Some(Measured::Shaft))],
    )?;
    let pair = classes.contains(|c: char| c == '/' || c.is_whitespace());
    if !pair && part.is_none() {
        return alone(size, classes).map_err(at);
    }
    let (hole, shaft) = read(classes).map_err(at)?;
    let fit = Fit::new(size, hole, shaft).map_err(at)?;
    let turned = match part {
        Some(part) => {
            let reading = given.length("reading", Of::Measured)?;
            let doubt = given.length("doubt", Of::Measured)?;
            let turned = fit.turn_to(part, reading, doubt).map_err(at)?;
            Some((part, reading, doubt, turned))
        }
        None => None,
    };
    // The hole's class is the one in capitals.
    let (mut of_hole, mut of_shaft) =
        classes.split_once(|c: char| c == '/' || c.is_whitespace()).unwrap_or((classes, ""));
    if !of_hole.starts_with(|c: char| c.is_ascii_uppercase()) {
        (of_hole, of_shaft) = (of_shaft, of_hole);
    }
    let names =
        [says::named(says::HOLE, of_hole.trim()), says::named(says::SHAFT, of_shaft.trim())];
    let offs = [hole.deviations(size).map_err(at)?, shaft.deviations(size).map_err(at)?];
    let sizes = [fit.hole, fit.shaft];
    let mut working = vec![
        says::limits(&names[0], size, offs[0], sizes[0]),
        says::limits(&names[1], size, offs[1], sizes[1]),
        says::play(true, fit.hole.least, fit.shaft.most, fit.play.least),
        says::play(false, fit.hole.most, fit.shaft.least, fit.play.most),
    ];
    let mut figures = Vec::new();
    let mut notes = Vec::new();
    let mut leaves = says::leaves(&fit);
    if let Some((part, reading, doubt, turned)) = &turned {
        let of_hole = *part == Measured::Hole;
        let label = if of_hole { says::TURN_TO } else { says::BORE_TO };
        leaves = says::made_to(label, turned);
        figures.push(figure("aim", label, Value::Length(turned.aim)));
        figures.push(figure("at_least", says::AT_LEAST, Value::Length(turned.keep.least)));
        figures.push(figure("at_most", says::AT_MOST, Value::Length(turned.keep.most)));
        working.extend(says::turned(of_hole, &fit, *reading, *doubt, turned));
        notes.push(if turned.within { says::INSIDE } else { says::OUTSIDE }.to_owned());
    }
    figures.extend(plays(&fit));
    notes.push(says::ENLARGED.to_owned());
    let limits = [fit.hole, fit.shaft];
    if limits.iter().any(|of| [of.least, of.most].into_iter().any(half)) {
        notes.push(says::HALVES.to_owned());
    }
    let title = says::title(size, classes, &leaves);
    let drawing = drawing(
        size,
        &names,
        offs,
        turned.map(|(part, reading, _, to)| (part, reading, to)),
        &title,
    );
    let rows = (0..2).map(|k| row(&names[k], sizes[k], offs[k])).collect();
    Ok(Answer { title, figures, tables: vec![table(rows)], working, notes, drawing })
}

/// One class without its mate.
fn alone(size: Length, text: &str) -> Result<Answer, Error> {
    let class = Class::read(text)?;
    let off = class.deviations(size)?;
    let of = class.limits(size)?;
    let name = says::named(if class.is_hole() { says::HOLE } else { says::SHAFT }, text);
    let title = says::title(size, text, &says::from_to(of));
    let um = |length: Length| 1000.0 * float::of(length.mm());
    let class = if class.is_hole() { "o m" } else { "a w" };
    let bar = Bar { name: &name, low: um(off.least), high: um(off.most), class };
    let mut notes = vec![says::ENLARGED.to_owned()];
    if half(of.least) || half(of.most) {
        notes.push(says::HALVES.to_owned());
    }
    Ok(Answer {
        figures: vec![
            figure("at_least", says::AT_LEAST, Value::Length(of.least)),
            figure("at_most", says::AT_MOST, Value::Length(of.most)),
        ],
        tables: vec![table(vec![row(&name, of, off)])],
        working: vec![says::limits(&name, size, off, of)],
        notes,
        drawing: bars(&[bar], &says::at_line(size), &says::picture(&title)),
        title,
    })
}

fn half(length: Length) -> bool {
    length
        .mm()
        .times(1000)
        .is_ok_and(|um| !um.is_whole() && um.times(2).is_ok_and(Fraction::is_whole))
}

fn table(rows: Vec<Vec<Value>>) -> Table {
    Table {
        key: "limits",
        caption: says::LIMITS,
        head: &[
            ("part", says::PART_OF),
            ("least", says::AT_LEAST),
            ("most", says::AT_MOST),
            ("deviations", says::DEVIATIONS),
        ],
        rows,
    }
}

fn row(name: &str, of: Limits, off: Limits) -> Vec<Value> {
    vec![
        Value::Text(name.to_owned()),
        Value::Length(of.least),
        Value::Length(of.most),
        Value::Text(says::deviations(off)),
    ]
}

/// What the fit leaves: play, or hold told as such.
fn plays(fit: &Fit) -> [crate::room::bench::sum::Figure; 2] {
    let (least, most) = (fit.play.least, fit.play.most);
    let hold = |play: Length| Value::Length(Length::from_mm(play.mm().negated()));
    match fit.kind {
        Kind::Play => [
            figure("play_least", says::PLAY_LEAST, Value::Length(least)),
            figure("play_most", says::PLAY_MOST, Value::Length(most)),
        ],
        Kind::Either => [
            figure("hold_most", says::HOLD_MOST, hold(least)),
            figure("play_most", says::PLAY_MOST, Value::Length(most)),
        ],
        Kind::Hold => [
            figure("hold_least", says::HOLD_LEAST, hold(most)),
            figure("hold_most", says::HOLD_MOST, hold(least)),
        ],
    }
}

/// The fields about the line; with a part measured, its reading and what keeps the fit.
fn drawing(
    size: Length,
    names: &[String; 2],
    offs: [Limits; 2],
    turned: Option<(Measured, Length, Turned)>,
    title: &str,
) -> maud::Markup {
    let nominal = float::of(size.mm());
    let um = |length: Length| 1000.0 * float::of(length.mm());
    let above = |length: Length| 1000.0 * (float::of(length.mm()) - nominal);
    let mut all: Vec<Bar> = (0..2)
        .map(|k| {
            let class = if k == 0 { "o m" } else { "a w" };
            Bar { name: &names[k], low: um(offs[k].least), high: um(offs[k].most), class }
        })
        .collect();
    if let Some((part, reading, to)) = turned {
        let at = above(reading);
        let keep = Bar {
            name: says::KEEP,
            low: above(to.keep.least),
            high: above(to.keep.most),
            class: "a w",
        };
        let read = Bar {
            name: if part == Measured::Hole { says::THE_HOLE } else { says::THE_SHAFT },
            low: at,
            high: at,
            class: "care",
        };
        all = vec![all.swap_remove(usize::from(part == Measured::Shaft)), read, keep];
    }
    bars(&all, &says::at_line(size), &says::picture(title))
}
