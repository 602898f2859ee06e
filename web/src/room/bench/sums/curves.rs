//! Balls and radii by steps; chord, height and radius of an arc.
use super::tapers::amount;
use crate::draw::sketch::{Point, Sketch, round};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::about as near;
use crate::words::bench::turning::{self as says, arc as bow, steps as own};
use handturn::bench::sagitta::{Arc, arc};
use handturn::bench::steps::{Ask, By, Plan, Shape, Step, Tool, plan};
use handturn::bounds::CUTS;
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

// What both ask of the tool and the cuts.
const TOOL: Entry =
    Entry::choice("tool", own::TOOL, &[("round", own::ROUND), ("square", own::SQUARE)]);
const BY: Entry =
    Entry::choice("by", own::BY, &[("cuts", own::BY_CUTS), ("scallop", own::BY_SCALLOP)]);
const SCALLOP: Entry = Entry::text("scallop", own::LEAVE, "0.05").when("by", &["scallop"]);
const DIVISION: Entry = Entry::text("division", own::DIVISION, "0.02");

const fn nose(default: &'static str) -> Entry {
    Entry::text("nose", own::NOSE, default).when("tool", &["round"])
}

const fn cuts(default: &'static str) -> Entry {
    Entry::number("cuts", own::CUTS, default).when("by", &["cuts"])
}

pub(super) const BALL: Sum = Sum {
    key: "ball",
    group: Group::Turn,
    name: own::BALL,
    about: own::BALL_ABOUT,
    also: own::BALL_ALSO,
    icon: "M2 10h5M2 14h5M14 12m-7.5 0a7.5 7.5 0 1 0 15 0a7.5 7.5 0 1 0-15 0",
    entries: &[
        Entry::choice(
            "kind",
            own::KIND,
            &[("neck", own::NECKED), ("dome", own::DOME), ("cup", own::CUP)],
        ),
        Entry::text("diameter", own::DIAMETER, "16"),
        Entry::text("stock", own::STOCK, "18").when("kind", &["neck", "dome"]),
        Entry::text("neck", own::NECK, "8").when("kind", &["neck"]),
        Entry::text("depth", own::DEPTH, "5").when("kind", &["cup"]),
        TOOL,
        nose("1.5"),
        Entry::text("width", own::WIDTH, "2").when("tool", &["square"]),
        BY,
        cuts("20"),
        SCALLOP,
        DIVISION,
    ],
    answer: ball,
    source: own::SOURCE,
    care: own::CARE,
};

pub(super) const RADIUS: Sum = Sum {
    key: "radius",
    group: Group::Turn,
    name: own::RADIUS,
    about: own::RADIUS_ABOUT,
    also: own::RADIUS_ALSO,
    icon: "M2 20V6h10a8 8 0 0 1 8 8v6z",
    entries: &[
        Entry::choice("kind", own::KIND, &[("edge", own::EDGE), ("fillet", own::FILLET)]),
        Entry::text("radius", own::OF, "5"),
        Entry::text("bar", own::BAR, "20"),
        TOOL,
        nose("1"),
        BY,
        cuts("10"),
        SCALLOP,
        DIVISION,
    ],
    answer: radius,
    source: own::SOURCE,
    care: own::CARE,
};

fn ball(given: &Given) -> Result<Answer, Wrong> {
    let diameter = given.length("diameter", Of::Radius)?;
    let radius = diameter.mm().over(2).map_err(|e| ("diameter", e))?;
    let shape = match given.choice("kind", &[("neck", 0), ("dome", 1), ("cup", 2)])? {
        2 => Shape::Cup { depth: given.length("depth", Of::Depth)? },
        kind => Shape::Ball {
            stock: given.length("stock", Of::Blank)?,
            neck: if kind == 0 { Some(given.length("neck", Of::Neck)?) } else { None },
        },
    };
    let width = given.get("tool") == "square" && matches!(shape, Shape::Ball { neck: Some(_), .. });
    let title = says::line(&["Ball ", &says::mm(diameter), " mm"]);
    cut(given, shape, (Length::from_mm(radius), "diameter"), width, &title)
}

fn radius(given: &Given) -> Result<Answer, Wrong> {
    let (radius, bar) = (given.length("radius", Of::Radius)?, given.length("bar", Of::Blank)?);
    let edge = given.choice("kind", &[("edge", true), ("fillet", false)])?;
    let shape = if edge { Shape::Edge { outside: bar } } else { Shape::Hollow { inside: bar } };
    let title = says::line(&["Radius ", &says::mm(radius), " mm"]);
    cut(given, shape, (radius, "radius"), false, &title)
}

/// The table of cuts for a shape, its radius with the entry it was typed in.
fn cut(
    given: &Given,
    shape: Shape,
    (radius, sized): (Length, &'static str),
    width: bool,
    title: &str,
) -> Result<Answer, Wrong> {
    let round = given.choice("tool", &[("round", true), ("square", false)])?;
    let tool = if round {
        Tool::Round { nose: given.length("nose", Of::Tool)? }
    } else if width {
        Tool::Square { width: given.length("width", Of::Tool)? }
    } else {
        Tool::Square { width: Length::from_mm(handturn::number::Fraction::ZERO) }
    };
    let by = if given.choice("by", &[("cuts", true), ("scallop", false)])? {
        By::Cuts(given.count("cuts", CUTS)?)
    } else {
        By::Scallop(given.length("scallop", Of::Scallop)?)
    };
    let ask = Ask { shape, radius, tool, division: given.length("division", Of::SlideDial)?, by };
    let blank = if sized == "radius" { "bar" } else { "stock" };
    let at = |error: Error| {
        let places = [
            (Of::Tool, if round { "nose" } else { "width" }),
            (Of::Passes, "cuts"),
            (Of::Scallop, "scallop"),
            (Of::SlideDial, "division"),
            (Of::Neck, "neck"),
            (Of::Depth, "depth"),
            (Of::Blank, blank),
            (Of::Diameter, blank),
            (Of::Radius, sized),
        ];
        about(error, &places)
    };
    let found = plan(&ask).map_err(at)?;
    let steps: Result<Vec<Step>, Error> = (0..found.cuts).map(|k| found.step(k)).collect();
    let steps = steps.map_err(at)?;
    let necked = matches!(shape, Shape::Ball { neck: Some(_), .. });
    let mut figures = vec![
        figure("scallop", own::SCALLOP, Value::About(found.scallop)),
        figure("cuts", own::HOW_MANY, Value::Count(i64::from(found.cuts))),
    ];
    figures.extend(found.blank.map(|blank| figure("blank", own::BLANK, Value::Length(blank))));
    figures.push(figure("reach", own::REACH, Value::Length(found.reach)));
    let row = |(k, step): (usize, &Step)| {
        let mut row =
            vec![Value::Count(k as i64 + 1), Value::Length(step.along), Value::Length(step.across)];
        if necked {
            row.push(Value::Text(if step.behind { own::BEHIND } else { own::END }.to_owned()));
        }
        row
    };
    let head: &[(&str, &str)] =
        &[("cut", own::CUT), ("along", own::ALONG), ("across", own::ACROSS), ("side", own::FROM)];
    let tables = vec![Table {
        key: "steps",
        caption: own::TABLE,
        head: if necked { head } else { head.get(..3).unwrap_or(head) },
        rows: steps.iter().enumerate().map(row).collect(),
    }];
    let fillet = matches!(shape, Shape::Hollow { .. });
    let zero = if fillet { own::ZERO_SHOULDER } else { own::ZERO };
    let mut notes = vec![zero.to_owned(), own::NEVER.to_owned()];
    if let (Shape::Ball { stock, .. }, true) = (shape, found.blank.is_some()) {
        if stock.mm() < radius.mm().times(2).unwrap_or(radius.mm()) {
            notes.push(own::BAND.to_owned());
        }
    }
    if necked {
        notes.push(own::WHOLE.to_owned());
    }
    if steps.iter().any(|step| step.across.mm().is_negative()) {
        notes.push(own::PAST.to_owned());
    }
    let (r, n) = (
        float::of(radius.mm()),
        if let Tool::Round { nose } = tool { float::of(nose.mm()) } else { 0.0 },
    );
    let hollow = fillet || matches!(shape, Shape::Cup { .. });
    let (sign, rho) = if hollow { (" − ", r - n) } else { (" + ", r + n) };
    let working = vec![
        says::line(&[
            "Path of the nose’s centre: ",
            &near(r, 3),
            sign,
            &near(n, 3),
            " = ",
            &near(rho, 3),
            " mm",
        ]),
        says::line(&["Along: ", &near(rho, 3), " × (1 − cos t)"]),
        says::line(&["Diameter changes by 2 × ", &near(rho, 3), " × (1 − sin t)"]),
    ];
    let title = says::line(&[
        title,
        ": ",
        &found.cuts.to_string(),
        " cuts leave ",
        &near(found.scallop.value, 3),
        " mm",
    ]);
    let drawing = drawing(&found, &steps, &title);
    Ok(Answer { title, figures, tables, working, notes, drawing })
}

/// Where the tool's edges stood, over the curve: the faced end to the right.
fn drawing(found: &Plan, steps: &[Step], title: &str) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let ask = &found.ask;
    let r = of(ask.radius);
    let width = match ask.tool {
        Tool::Round { nose } => 2.0 * of(nose),
        Tool::Square { width } => of(width),
    };
    let blank = found.blank.map_or(r, |blank| of(blank) / 2.0);
    // Along and out, as the cuts stand; ends of each stair from the curve's own end.
    let stairs = |behind: bool, out: f64, start: Point, end: Point| -> Vec<Point> {
        let mut points = vec![start];
        let mut last = start.0;
        for step in steps.iter().rev().filter(|step| step.behind == behind) {
            let q = out * of(step.across) / 2.0;
            let p = of(step.along) - if behind { width } else { 0.0 };
            points.extend([(last, q), (p, q)]);
            last = p;
        }
        points.extend([(last, end.1), end]);
        points
    };
    let right = |points: &[Point]| points.iter().map(|(p, q)| (-p, *q)).collect::<Vec<_>>();
    // A round nose is drawn where it stood for each cut, a square corner as its stairs.
    let n = if let Tool::Round { nose } = ask.tool { of(nose) } else { 0.0 };
    let noses = |sketch: Sketch, at: &dyn Fn(&Step) -> Point| {
        steps.iter().fold(sketch, |sketch, step| sketch.circle("t", at(step), n))
    };
    let out = |step: &Step| of(step.across) / 2.0 + n;
    let square = n == 0.0;
    let sketch = Sketch::default();
    let sketch = match ask.shape {
        Shape::Ball { neck, .. } => {
            let (tail, long) = (neck.map_or(blank, |neck| of(neck) / 2.0), 2.5 * r);
            let sketch = sketch.circle("a", (-r, 0.0), r);
            let sketch = if square {
                let sketch = sketch.line("o", &right(&stairs(false, 1.0, (0.0, 0.0), (r, blank))));
                if neck.is_some() {
                    sketch.line("o", &right(&stairs(true, 1.0, (long, tail), (r, blank))))
                } else {
                    sketch
                }
            } else {
                noses(sketch, &|step| (n - of(step.along), out(step)))
            };
            // Where the ball passes into neck or stock.
            let from = r + float::sqrt((r * r - tail * tail).max(0.0));
            let from = if neck.is_some() { from } else { r };
            sketch
                .line("o", &[(-from, tail), (-long, tail)])
                .line("o", &[(-from, -tail), (-long, -tail)])
                .line("t", &[(r * 0.15, 0.0), (-2.7 * r, 0.0)])
                .size((0.0, -r), (-2.0 * r, -r), 22.0, &near(2.0 * r, 3))
        }
        Shape::Edge { outside } => {
            let (top, middle) = (of(outside) / 2.0, of(outside) / 2.0 - r);
            let sketch = sketch.arc("a", (-r, middle), r, (0.0, 0.25));
            let sketch = if square {
                sketch.line("o", &right(&stairs(false, 1.0, (0.0, middle), (r, top))))
            } else {
                noses(sketch, &|step| (n - of(step.along), out(step)))
            };
            sketch
                .line("o", &[(-r, top), (-2.0 * r, top)])
                .line("o", &[(0.0, middle), (0.0, 0.0)])
                .line("t", &[(r * 0.15, 0.0), (-2.1 * r, 0.0)])
                .size((-r, middle), (0.0, middle), -16.0, &near(r, 3))
        }
        Shape::Hollow { inside } => {
            let (d, up) = (of(inside) / 2.0, of(inside) / 2.0 + r);
            // Back from the shoulder, which stands to the left.
            let sketch = sketch.arc("a", (r, up), r, (0.5, 0.75));
            let sketch = if square {
                let mut points = vec![(r, d)];
                for step in steps.iter().rev() {
                    let (last, q) = (points.last().map_or(r, |at| at.0), of(step.across) / 2.0);
                    points.extend([(last, q), (of(step.along), q)]);
                }
                points.push((0.0, up));
                sketch.line("o", &points)
            } else {
                noses(sketch, &|step| (of(step.along) + n, out(step)))
            };
            sketch
                .line("o", &[(r, d), (2.0 * r, d)])
                .line("o", &[(0.0, up), (0.0, up + r * 0.4), (-r, up + r * 0.4)])
                .line("t", &[(2.1 * r, 0.0), (-1.1 * r, 0.0)])
                .size((0.0, up), (r, up), 16.0, &near(r, 3))
        }
        Shape::Cup { depth } => {
            let e = of(depth);
            let mouth = float::sqrt((e * (2.0 * r - e)).max(0.0));
            let turns = float::acos_turns((r - e) / r);
            let sketch = sketch.arc("a", (r - e, 0.0), r, (0.5 - turns, 0.5 + turns));
            let sketch = if square {
                let mut points = stairs(false, 1.0, (0.0, mouth), (e, 0.0));
                points.pop();
                sketch.line("o", &right(&points))
            } else {
                noses(sketch, &|step| (n - of(step.along), out(step) - 2.0 * n))
            };
            sketch
                .line("o", &[(0.0, mouth), (0.0, mouth * 1.3)])
                .line("t", &[(r * 0.15, 0.0), (-1.2 * e, 0.0)])
                .line("o", &[(0.0, -mouth), (0.0, -mouth * 1.3)])
                .size((0.0, -mouth), (-e, -mouth), 22.0, &near(e, 3))
        }
    };
    sketch.markup(&says::picture(title))
}

pub(super) const ARC: Sum = Sum {
    key: "arc",
    group: Group::Mill,
    name: bow::NAME,
    about: bow::ABOUT,
    also: bow::ALSO,
    icon: "M3 17h18M3 17a11 11 0 0 1 18 0M12 17v-5",
    entries: &[
        Entry::choice(
            "kind",
            bow::KIND,
            &[
                ("radius", bow::RADIUS),
                ("height", bow::HEIGHT),
                ("chord", bow::CHORD),
                ("feet", bow::FEET),
            ],
        ),
        Entry::text("radius", bow::RADIUS_IN, "50").when("kind", &["height", "chord"]),
        Entry::text("chord", bow::CHORD_IN, "40").when("kind", &["radius", "height"]),
        Entry::text("side", bow::SIDE_IN, "40").when("kind", &["feet"]),
        Entry::text("height", bow::HEIGHT_IN, "4").when("kind", &["radius", "chord", "feet"]),
        Entry::text("ball", bow::BALL_IN, "0").when("kind", &["feet"]),
        Entry::choice("surface", bow::SURFACE, &[("round", bow::ROUND), ("hollow", bow::HOLLOW)])
            .when("kind", &["feet"]),
    ],
    answer: bowed,
    source: bow::SOURCE,
    care: bow::CARE,
};

fn bowed(given: &Given) -> Result<Answer, Wrong> {
    let kind = given.choice("kind", &[("radius", 0), ("height", 1), ("chord", 2), ("feet", 3)])?;
    let radius = || given.length("radius", Of::Radius);
    let chord = || given.length("chord", Of::Chord);
    let height = || given.length("height", Of::Depth);
    let ask = match kind {
        0 => Arc::Radius { chord: chord()?, height: height()? },
        1 => Arc::Height { radius: radius()?, chord: chord()? },
        2 => Arc::Chord { radius: radius()?, height: height()? },
        _ => Arc::Feet {
            side: given.length("side", Of::Length)?,
            height: height()?,
            ball: given.length("ball", Of::Radius)?,
            hollow: given.choice("surface", &[("round", false), ("hollow", true)])?,
        },
    };
    let found = arc(&ask).map_err(|e| {
        let round = if kind == 3 { "ball" } else { "radius" };
        let high = if kind == 1 { "chord" } else { "height" };
        about(
            e,
            &[(Of::Radius, round), (Of::Chord, "chord"), (Of::Length, "side"), (Of::Depth, high)],
        )
    })?;
    let radius = figure("radius", bow::RADIUS_IS, amount(found.radius));
    let chord = figure("chord", bow::CHORD_IS, amount(found.chord));
    let height = figure("height", bow::HEIGHT_IS, amount(found.height));
    let mut figures = match kind {
        1 => vec![height, radius, chord],
        2 => vec![chord, radius, height],
        _ => vec![radius, chord, height],
    };
    figures.push(figure("takes", bow::TAKES, Value::Degrees(found.degrees)));
    figures.push(figure("along", bow::ALONG, Value::About(found.along)));
    let [r, c, h] = [found.radius, found.chord, found.height].map(|one| one.about.value);
    let half = near(c / 2.0, 3);
    let working = match kind {
        1 => vec![says::line(&[
            &near(r, 3),
            " − √(",
            &near(r, 3),
            "² − ",
            &half,
            "²) = ",
            &near(h, 4),
        ])],
        2 => vec![says::line(&[
            "2 × √(",
            &near(h, 3),
            " × (2 × ",
            &near(r, 3),
            " − ",
            &near(h, 3),
            ")) = ",
            &near(c, 4),
        ])],
        _ => vec![says::line(&[
            &half,
            "² ÷ (2 × ",
            &near(h, 3),
            ") + ",
            &near(h, 3),
            " ÷ 2 = ",
            &near(c * c / 8.0 / h + h / 2.0, 4),
        ])],
    };
    let title = says::line(&[
        "Radius ",
        &near(r, 3),
        ", chord ",
        &near(c, 3),
        ", height ",
        &near(h, 3),
        " mm",
    ]);
    // Of feet that end in balls, the arc through their middles.
    let turned = found.degrees.value / 720.0;
    let middle = (0.0, -if kind == 3 { c * c / 8.0 / h + h / 2.0 } else { r });
    let big = -middle.1;
    let ends = [round(middle, big, 0.25 + turned), round(middle, big, 0.25 - turned)];
    let drawing = Sketch::default()
        .arc("o", middle, big, (0.25 - turned.min(0.4999), 0.25 + turned.min(0.4999)))
        .line("t", &ends)
        .line("a", &[(0.0, 0.0), (0.0, -h)])
        .size((c / 2.0, -h), (-c / 2.0, -h), 22.0, &near(c, 3))
        .size((c / 2.0, 0.0), (c / 2.0, -h), 18.0, &near(h, 3))
        .markup(&says::picture(&title));
    let notes = vec![bow::CLOSE.to_owned()];
    Ok(Answer { title, figures, tables: Vec::new(), working, notes, drawing })
}
