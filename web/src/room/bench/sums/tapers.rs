//! Tapers: in every form, put right from a trial cut, as standards, held by disks.
use crate::draw::sketch::{Sketch, round};
use crate::room::bench::sum::{
    Answer, Entry, Figure, Given, Group, Sum, Table, Value, about, figure,
};
use crate::room::steps::Wrong;
use crate::words::about as near;
use crate::words::bench::turning::{
    self as says, degrees_text, disks as two, shared, standard, taper as own, trial as put,
};
use handturn::bench::disks::{Ask as Two, Disks, disks};
use handturn::bench::taper::{Amount, Ask, Correction, Set, Taper, Trial, correct, set};
use handturn::bench::tapers::Series;
use handturn::measure::Length;
use handturn::number::{Approx, float};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

// How steep it is, as a taper and one put right ask it.
const PER_FOOT: Entry = Entry::number("foot", shared::HOW_MUCH, "0.6").when("kind", &["foot"]);
const ONE_IN: Entry = Entry::number("one", shared::ONE_IN_WHAT, "20").when("kind", &["one"]);
const ANGLE: Entry = Entry::text("angle", shared::ANGLE, "5°").when("kind", &["included", "half"]);
const TRAVEL: Entry = Entry::text("travel", shared::TRAVEL, "25");

pub(super) const TAPER: Sum = Sum {
    key: "taper",
    group: Group::Turn,
    name: own::NAME,
    about: own::ABOUT,
    also: own::ALSO,
    icon: "M2 12h20M4 8.5L20 5v14L4 15.5z",
    entries: &[
        Entry::choice(
            "kind",
            shared::GIVEN,
            &[
                ("ends", own::ENDS),
                ("foot", shared::FOOT),
                ("one", shared::ONE_IN),
                ("included", shared::INCLUDED),
                ("half", shared::HALF),
            ],
        ),
        PER_FOOT,
        ONE_IN,
        ANGLE,
        Entry::text("large", shared::LARGE, "20"),
        Entry::text("small", shared::SMALL, "18").when("kind", &["ends"]),
        Entry::text("length", shared::LENGTH, "40"),
        Entry::text("between", shared::BETWEEN, "120"),
        Entry::text("reach", own::REACH, "10"),
        TRAVEL,
    ],
    answer: taper,
    source: own::SOURCE,
    care: shared::CARE,
};

/// The taper that a choice and its fields give, ends left out.
fn rate(given: &Given) -> Result<Taper, Wrong> {
    match given.get("kind") {
        "foot" => Taper::per_foot(given.number("foot", Of::Taper)?).map_err(|e| ("foot", e)),
        "one" => Taper::one_in(given.number("one", Of::Taper)?).map_err(|e| ("one", e)),
        "included" => Ok(Taper::Included(given.angle("angle", Of::Angle)?)),
        "half" => Taper::half(given.angle("angle", Of::Angle)?).map_err(|e| ("angle", e)),
        _ => Err(("kind", Error::new(Of::Fraction, Cause::NotANumber))),
    }
}

pub(super) fn amount(amount: Amount) -> Value {
    amount.exact.map_or(Value::About(amount.about), Value::Length)
}

fn number(value: Approx, places: u8, unit: &'static str) -> Value {
    Value::Number { value, places, unit }
}

/// What every taper tells: the top slide first.
fn forms(found: &Set) -> Vec<Figure> {
    let figures = &found.figures;
    vec![
        figure("slide", shared::TOP_SLIDE, Value::Degrees(figures.half)),
        figure("included", shared::SIDES, Value::Degrees(figures.included)),
        figure("foot", shared::PER_FOOT, number(figures.per_foot, 5, shared::IN)),
        figure("one_in", shared::IN_ALL, number(figures.one_in, 3, "")),
    ]
}

fn ends(found: &Set, out: &mut Vec<Figure>) {
    if let Some([large, small, length]) = found.ends {
        out.extend([
            figure("large", shared::LARGE_END, amount(large)),
            figure("small", shared::SMALL_END, amount(small)),
            figure("length", shared::BETWEEN_ENDS, amount(length)),
        ]);
    }
}

fn taper(given: &Given) -> Result<Answer, Wrong> {
    let kind = given.get("kind");
    let (large, length) =
        (given.length_if("large", Of::Diameter)?, given.length_if("length", Of::Length)?);
    let ends_given = kind == "ends";
    let taper = if ends_given {
        let large = given.length("large", Of::Diameter)?;
        let small = given.length("small", Of::Diameter)?;
        Taper::between(large, small, given.length("length", Of::Length)?).map_err(|e| {
            about(e, &[(Of::Taper, "small"), (Of::Length, "length"), (Of::Diameter, "large")])
        })?
    } else {
        rate(given)?
    };
    let ask = Ask {
        taper,
        large,
        small: None,
        length,
        between: given.length_if("between", Of::Length)?,
        reach: given.length_if("reach", Of::Reach)?,
        travel: given.length_if("travel", Of::Length)?,
    };
    let rated = match kind {
        "ends" => "small",
        "foot" => "foot",
        "one" => "one",
        _ => "angle",
    };
    let found = set(&ask).map_err(|e| {
        about(
            e,
            &[
                (Of::Taper, rated),
                (Of::Angle, "angle"),
                (Of::Reach, "reach"),
                (Of::Diameter, "large"),
                (Of::Length, "length"),
            ],
        )
    })?;
    let mut figures = forms(&found);
    ends(&found, &mut figures);
    let mut notes = Vec::new();
    let half = found.figures.rate.value / 2.0;
    let mut working = vec![
        says::line(&["atan(", &near(half, 6), ") = ", &degrees_text(found.figures.half.value)]),
        says::line(&[
            "Half the taper: ",
            &near(found.figures.rate.value, 6),
            " ÷ 2 = ",
            &near(half, 6),
        ]),
    ];
    working.swap(0, 1);
    if let (Some(over), Some(between)) = (found.over, ask.between) {
        figures.push(figure("over", own::OVER, amount(over.by)));
        working.push(says::line(&[
            &says::mm(between),
            " × ",
            &near(half, 6),
            " = ",
            &near(over.by.about.value, 3),
            " mm over; by the sine ",
            &near(over.leaning.value, 4),
            " mm less",
        ]));
        if let Some(longest) = over.longest {
            figures.push(figure("longest", own::LONGEST, amount(longest)));
        }
        if over.beyond {
            notes.push(own::BEYOND.to_owned());
        }
        notes.push(own::IGNORES.to_owned());
    }
    if let (Some(slide), Some(saddle)) = (found.by_slide, found.by_saddle) {
        figures.push(figure("by_slide", own::BY_SLIDE, Value::About(slide)));
        figures.push(figure("by_saddle", own::BY_SADDLE, amount(saddle)));
        notes.push(own::GAUGE.to_owned());
    }
    let title = says::line(&[
        "1 in ",
        &near(found.figures.one_in.value, 3),
        ": ",
        &degrees_text(found.figures.half.value),
    ]);
    let drawing = cone(&found, &title);
    Ok(Answer { title, figures, tables: Vec::new(), working, notes, drawing })
}

/// The taper lying as on the lathe, its small end to the right.
fn cone(found: &Set, title: &str) -> Markup {
    let of = |amount: Amount| amount.about.value;
    let (large, small, long) = match found.ends {
        Some([large, small, length]) => (of(large), of(small), of(length)),
        None => (
            found.figures.rate.value.max(0.5) * 2.0,
            found.figures.rate.value.max(0.5) * 2.0 - found.figures.rate.value,
            1.0,
        ),
    };
    let (r, s) = (large / 2.0, small / 2.0);
    let sketch = Sketch::default()
        .closed("o m", &[(0.0, -r), (long, -s), (long, s), (0.0, r)])
        .line("t", &[(-long * 0.08, 0.0), (long * 1.1, 0.0)])
        .line("a", &[(0.0, r), (long, r)]);
    let angle = degrees_text(found.figures.half.value);
    let sketch = sketch.label("n", (long * 0.5, r + long * 0.06), &angle);
    let sized =
        found.ends.map(|[large, small, length]| [large, small, length].map(|a| near(of(a), 3)));
    let sketch = match sized {
        Some([large, small, length]) => sketch
            .size((long, -r), (0.0, -r), 24.0, &length)
            .size((0.0, -r), (0.0, r), 20.0, &large)
            .size((long, s), (long, -s), 26.0, &small),
        None => sketch,
    };
    sketch.markup(&says::picture(title))
}

pub(super) const TRIAL: Sum = Sum {
    key: "trial",
    group: Group::Turn,
    name: put::NAME,
    about: put::ABOUT,
    also: put::ALSO,
    icon: "M2 12h20M4 8.5L20 6v12L4 15.5zM8 3v4M16 2v3M8 21v-4M16 22v-3",
    entries: &[
        Entry::choice(
            "kind",
            put::WANTED,
            &[
                ("parallel", put::PARALLEL),
                ("foot", shared::FOOT),
                ("one", shared::ONE_IN),
                ("included", shared::INCLUDED),
                ("half", shared::HALF),
            ],
        ),
        PER_FOOT,
        ONE_IN,
        ANGLE,
        Entry::choice("side", put::SIDE, &[("head", put::AT_HEAD), ("tail", put::AT_TAIL)])
            .when("kind", &["foot", "one", "included", "half"]),
        Entry::text("head", put::HEAD, "20.00"),
        Entry::text("tail", put::TAIL, "20.06"),
        Entry::text("apart", put::APART, "100"),
        Entry::text("between", shared::BETWEEN, "150"),
        TRAVEL,
    ],
    answer: trial,
    source: put::SOURCE,
    care: shared::CARE,
};

fn trial(given: &Given) -> Result<Answer, Wrong> {
    let parallel = given.get("kind") == "parallel";
    let wanted = if parallel { None } else { Some(rate(given)?) };
    let large_at_tail = !parallel && given.choice("side", &[("head", false), ("tail", true)])?;
    let trial = Trial {
        wanted,
        large_at_tail,
        at_head: given.length("head", Of::Diameter)?,
        at_tail: given.length("tail", Of::Diameter)?,
        apart: given.length("apart", Of::Length)?,
        between: given.length_if("between", Of::Length)?,
        travel: given.length_if("travel", Of::Length)?,
    };
    let found = correct(&trial).map_err(|e| {
        let rated = match given.get("kind") {
            "foot" => "foot",
            "one" => "one",
            "included" | "half" => "angle",
            _ => "apart",
        };
        about(
            e,
            &[
                (Of::Taper, rated),
                (Of::Angle, "angle"),
                (Of::Diameter, "head"),
                (Of::Length, "apart"),
            ],
        )
    })?;
    let Correction { cut, off, slide, tailstock, gauge } = found;
    let size = |approx: Approx| Approx { value: approx.value.abs(), ..approx };
    let sized = |amount: Amount| match amount.exact {
        Some(exact) => Value::Length(Length::from_mm(exact.mm().abs())),
        None => Value::About(size(amount.about)),
    };
    let inwards = slide.value > 0.0;
    let mut figures = Vec::new();
    if let Some(tailstock) = tailstock {
        let towards = tailstock.about.value > 0.0;
        let label = if towards { put::TO_TOOL } else { put::FROM_TOOL };
        figures.push(figure("tailstock", label, sized(tailstock)));
    }
    let label = if inwards { put::SLIDE_IN } else { put::SLIDE_OUT };
    figures.push(figure("slide", label, Value::Degrees(size(slide))));
    if let Some(gauge) = gauge {
        figures.push(figure("gauge", put::GAUGE, Value::About(size(gauge))));
    }
    figures.push(figure("off", put::OFF, sized(off)));
    if !cut.is_zero() {
        figures.push(figure("cut", put::CUT, Value::Text(says::one_in(cut.abs()))));
    }
    let mut notes = vec![put::SAME_PASS.to_owned()];
    let nothing = off.exact.is_some_and(|off| off.mm().is_zero());
    if nothing {
        notes.insert(0, put::NOTHING.to_owned());
    }
    let mut working = vec![says::line(&[
        "(",
        &says::mm(trial.at_head),
        " − ",
        &says::mm(trial.at_tail),
        ") ÷ ",
        &says::mm(trial.apart),
        " = ",
        &near(float::of(cut), 6),
    ])];
    if let (Some(moved), Some(between)) = (tailstock, trial.between) {
        let change = moved.about.value * 2.0 / float::of(between.mm());
        working.push(says::line(&[
            &says::mm(between),
            " × ",
            &near(change, 6),
            " ÷ 2 = ",
            &near(moved.about.value, 4),
            " mm",
        ]));
    }
    let title = if nothing {
        put::NOTHING.to_owned()
    } else {
        says::line(&[
            "Off by ",
            &near(off.about.value.abs(), 3),
            " mm in ",
            &says::mm(trial.apart),
            " mm",
        ])
    };
    let (h, t) = (float::of(trial.at_head.mm()) / 2.0, float::of(trial.at_tail.mm()) / 2.0);
    let long = float::of(trial.apart.mm());
    let drawing = Sketch::default()
        .closed("o m", &[(0.0, -h), (long, -t), (long, t), (0.0, h)])
        .line("t", &[(-long * 0.08, 0.0), (long * 1.08, 0.0)])
        .size((long, -h.max(t)), (0.0, -h.max(t)), 22.0, &says::mm(trial.apart))
        .size((0.0, -h), (0.0, h), 18.0, &says::mm(trial.at_head))
        .size((long, t), (long, -t), 18.0, &says::mm(trial.at_tail))
        .markup(&says::picture(&title));
    Ok(Answer { title, figures, tables: Vec::new(), working, notes, drawing })
}

pub(super) const STANDARD: Sum = Sum {
    key: "standard",
    group: Group::Turn,
    name: standard::NAME,
    about: standard::ABOUT,
    also: standard::ALSO,
    icon: "M2 12h20M4 7.5L15 9v6L4 16.5zM15 10h4v4h-4",
    entries: &[
        Entry::choice(
            "series",
            standard::SERIES,
            &[
                ("morse", standard::MORSE),
                ("brown", standard::BROWN_SHARPE),
                ("jarno", standard::JARNO),
                ("chuck", standard::CHUCK),
                ("steep", standard::STEEP),
                ("metric", standard::METRIC),
                ("metric_pin", standard::METRIC_PIN),
                ("inch_pin", standard::INCH_PIN),
                ("r8", standard::COLLET),
            ],
        ),
        Entry::text("number", standard::NUMBER, "2").when(
            "series",
            &["morse", "brown", "jarno", "chuck", "steep", "metric", "metric_pin", "inch_pin"],
        ),
        Entry::text("between", shared::BETWEEN, ""),
        TRAVEL,
    ],
    answer: listed,
    source: standard::SOURCE,
    care: shared::CARE,
};

const SERIES: [&str; 9] =
    ["morse", "brown", "jarno", "chuck", "steep", "metric", "metric_pin", "inch_pin", "r8"];

fn listed(given: &Given) -> Result<Answer, Wrong> {
    let chosen = given.get("series");
    let place = SERIES.iter().position(|key| *key == chosen);
    let series = place.and_then(|k| Series::ALL.get(k).copied());
    let unknown = |entry| (entry, Error::new(Of::Taper, Cause::NotANumber));
    let series = series.ok_or(unknown("series"))?;
    let typed = given.get("number").trim().replace(',', ".").replace(" 1/2", ".5");
    let only = series == Series::Collet;
    let size = series.sizes().iter().find(|size| only || size.name == typed);
    // What another family calls so need not be in this one: then its first.
    let size = size.ok_or(("number", Error::new(Of::Class, Cause::Conflict)))?;
    let core = |e: Error| about(e, &[(Of::Length, "between"), (Of::Taper, "number")]);
    let taper = series.taper(size).map_err(core)?;
    let (large, small) = (size.large, if size.large.is_some() { None } else { size.small });
    let ask = Ask {
        large,
        small,
        length: size.length,
        between: given.length_if("between", Of::Length)?,
        travel: given.length_if("travel", Of::Length)?,
        ..Ask::of(taper)
    };
    let found = set(&ask).map_err(core)?;
    let mut figures = forms(&found);
    // The ends as they are laid down, not as the taper would have them.
    for (key, label, length) in [
        ("large", shared::LARGE_END, size.large),
        ("small", shared::SMALL_END, size.small),
        ("length", shared::BETWEEN_ENDS, size.length),
    ] {
        figures.extend(length.map(|length| figure(key, label, Value::Length(length))));
    }
    if let Some(over) = found.over {
        figures.push(figure("over", own::OVER, amount(over.by)));
    }
    if let Some(slide) = found.by_slide {
        figures.push(figure("by_slide", own::BY_SLIDE, Value::About(slide)));
    }
    let one = |length: Option<Length>| length.map_or(Value::Text(String::new()), Value::Length);
    let row = |size: &handturn::bench::tapers::Size| {
        vec![Value::Text(size.name.to_owned()), one(size.large), one(size.small), one(size.length)]
    };
    let tables = vec![Table {
        key: "sizes",
        caption: standard::SIZES,
        head: &[
            ("size", standard::SIZE),
            ("large", standard::LARGE),
            ("small", standard::SMALL),
            ("length", standard::LENGTH),
        ],
        rows: series.sizes().iter().map(row).collect(),
    }];
    let labels = STANDARD.entry("series").map(|entry| entry.kind);
    let name = match labels {
        Some(crate::room::bench::sum::Kind::Choice(pairs)) => {
            place.and_then(|k| pairs.get(k)).map_or("", |(_, label)| *label)
        }
        _ => "",
    };
    let number = if only { "" } else { size.name };
    let half = degrees_text(found.figures.half.value);
    let title = says::line(&[name, " ", number, ": ", &half]);
    let working =
        vec![says::line(&["atan(", &near(found.figures.rate.value / 2.0, 6), ") = ", &half])];
    let mut notes = vec![standard::ENDS.to_owned()];
    if matches!(series, Series::MetricPin | Series::InchPin) {
        notes = vec![standard::PINS.to_owned()];
    }
    let drawing = cone(&found, &title);
    Ok(Answer { title, figures, tables, working, notes, drawing })
}

pub(super) const DISKS: Sum = Sum {
    key: "disks",
    group: Group::Turn,
    name: two::NAME,
    about: two::ABOUT,
    also: two::ALSO,
    icon: "M7 12m-5 0a5 5 0 1 0 10 0a5 5 0 1 0-10 0M18 12m-3 0a3 3 0 1 0 6 0a3 3 0 1 0-6 0M6 7l16 1.5M6 17l16-1.5",
    entries: &[
        Entry::choice(
            "kind",
            two::KIND,
            &[
                ("centres", two::CENTRES_WANTED),
                ("touching", two::LARGE_WANTED),
                ("angle", two::ANGLE_WANTED),
            ],
        ),
        Entry::text("large", two::LARGE, "30").when("kind", &["centres", "angle"]),
        Entry::text("small", two::SMALL, "20"),
        Entry::text("centres", two::CENTRES, "80").when("kind", &["angle"]),
        Entry::text("angle", two::ANGLE, "10°").when("kind", &["centres", "touching"]),
    ],
    answer: held,
    source: two::SOURCE,
    care: two::CARE,
};

fn held(given: &Given) -> Result<Answer, Wrong> {
    let kind = given.choice("kind", &[("centres", 0), ("touching", 1), ("angle", 2)])?;
    let small = given.length("small", Of::Diameter)?;
    let ask = match kind {
        0 => Two::Taper {
            large: given.length("large", Of::Diameter)?,
            small,
            taper: Taper::Included(given.angle("angle", Of::Angle)?),
        },
        1 => Two::Touching { small, taper: Taper::Included(given.angle("angle", Of::Angle)?) },
        _ => Two::Centres {
            large: given.length("large", Of::Diameter)?,
            small,
            centres: given.length("centres", Of::Centres)?,
        },
    };
    let found = disks(&ask).map_err(|e| {
        let centres = if kind == 2 { "centres" } else { "angle" };
        about(
            e,
            &[
                (Of::Centres, centres),
                (Of::Angle, "angle"),
                (Of::Taper, "large"),
                (Of::Diameter, "small"),
            ],
        )
    })?;
    let Disks { large, small, centres, gap, included } = found;
    let apart = figure("centres", two::APART, Value::About(centres));
    let turned = figure("large", two::TOUCHING, Value::About(large));
    let edges = figure("included", two::INCLUDED, Value::Degrees(included));
    let mut figures = match kind {
        0 => vec![apart, edges],
        1 => vec![turned, apart, edges],
        _ => vec![edges],
    };
    figures.push(figure("gap", two::GAP, Value::About(gap)));
    let (r, s, c) = (large.value / 2.0, small.value / 2.0, centres.value);
    let working = vec![says::line(&[
        "(",
        &near(r, 4),
        " − ",
        &near(s, 4),
        ") ÷ ",
        &near(c, 4),
        " = ",
        &near((r - s) / c, 6),
        " = sin ",
        &degrees_text(included.value / 2.0),
    ])];
    let title =
        says::line(&[&degrees_text(included.value), ": centres ", &near(c, 3), " mm apart"]);
    let half = included.value / 720.0;
    let side = |sign: f64| {
        let at = |x: f64, radius: f64| round((x, 0.0), radius, sign * (0.25 - half));
        [at(0.0, r), at(c, s)]
    };
    let drawing = Sketch::default()
        .circle("o m", (0.0, 0.0), r)
        .circle("o m", (c, 0.0), s)
        .line("a", &side(1.0))
        .line("a", &side(-1.0))
        .size((c, -r), (0.0, -r), 18.0, &near(c, 3))
        .label("n", (0.0, 0.0), &near(large.value, 3))
        .label("n", (c, 0.0), &near(small.value, 3))
        .markup(&says::picture(&title));
    Ok(Answer {
        title,
        figures,
        tables: Vec::new(),
        working,
        notes: vec![two::HALF.to_owned()],
        drawing,
    })
}
