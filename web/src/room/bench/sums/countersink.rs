//! Countersinks for a diameter or a screw's head; counterbores for cap heads.
use super::dials;
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Figure, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::countersink as says;
use handturn::bench::cone::{Countersink, Depths};
use handturn::bench::heads::{CAPS, Standard};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "countersink",
    group: Group::Turn,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 9h4l4 4v8M22 9h-4l-4 4v8M9 3h6M12 3v9M8.5 7.5L12 11l3.5-3.5",
    entries: &[
        Entry::choice(
            "of",
            says::OF,
            &[("screw", says::SCREW), ("size", says::SIZE), ("cap", says::CAP)],
        ),
        Entry::choice(
            "head",
            says::HEAD,
            &[
                ("iso7046", says::ISO_7046),
                ("din963", says::DIN_963),
                ("iso10642", says::ISO_10642),
                ("din7991", says::DIN_7991),
                ("ba", says::BA),
                ("whitworth", says::WHITWORTH),
                ("unified", says::UNIFIED),
                ("unified-socket", says::UNIFIED_SOCKET),
            ],
        )
        .when("of", &["screw"]),
        Entry::text("thread", says::THREAD, "M6").when("of", &["screw", "cap"]),
        Entry::text("diameter", says::DIAMETER, "10").when("of", &["size"]),
        Entry::text("angle", says::ANGLE, "90").when("of", &["size"]),
        Entry::text("hole", says::HOLE, "6.6").when("of", &["screw", "size"]),
        Entry::text("flat", says::FLAT, "0").when("of", &["screw", "size"]),
        Entry::text("below", says::BELOW, "0").when("of", &["screw", "cap"]),
        Entry::text("ball", says::BALL, "").when("of", &["screw", "size"]),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

const NONE: Length = Length::from_mm(Fraction::ZERO);

/// The values of the choice `head`.
const HEADS: [(&str, Standard); 8] = [
    ("iso7046", Standard::Iso7046),
    ("din963", Standard::Din963),
    ("iso10642", Standard::Iso10642),
    ("din7991", Standard::Din7991),
    ("ba", Standard::Ba),
    ("whitworth", Standard::Whitworth),
    ("unified", Standard::Unified),
    ("unified-socket", Standard::UnifiedSocket),
];

fn answer(given: &Given) -> Result<Answer, Wrong> {
    if given.get("of") == "cap" {
        return counterbore(given);
    }
    let screw = given.get("of") == "screw";
    let mut notes = Vec::new();
    let (diameter, angle, name) = if screw {
        let standard = given.choice("head", &HEADS)?;
        let found = named(standard, given.get("thread"));
        let names = standard.heads().iter().map(|head| head.name);
        notes.push(says::names(names));
        let Some((name, sharp)) = found else {
            return Err(("thread", Error::new(Of::Thread, Cause::Conflict)));
        };
        notes.push(says::SHARP.to_owned());
        if standard.from_memory() {
            notes.push(says::MEMORY.to_owned());
        }
        (sharp, standard.angle().map_err(|e| ("head", e))?, name.to_owned())
    } else {
        let diameter = given.length("diameter", Of::Diameter)?;
        (diameter, given.angle("angle", Of::Angle)?, says::across(diameter))
    };
    let or_none = |name, of| Ok(given.length_if(name, of)?.unwrap_or(NONE));
    let sink = Countersink {
        angle,
        diameter,
        flat: or_none("flat", Of::Tool)?,
        hole: or_none("hole", Of::Drill)?,
        below: if screw { or_none("below", Of::Depth)? } else { NONE },
        ball: or_none("ball", Of::Diameter)?,
    };
    let at = |error: Error| {
        let rim = if screw { "hole" } else { "diameter" };
        about(
            error,
            &[
                (Of::Angle, "angle"),
                (Of::Tool, "flat"),
                (Of::Drill, "hole"),
                (Of::Depth, "below"),
                (Of::Diameter, rim),
            ],
        )
    };
    let bare = Countersink { ball: NONE, ..sink }.depths().map_err(at)?;
    let depths = sink
        .depths()
        .map_err(|e| ("ball", e))
        .or_else(|wrong| if sink.ball == NONE { Ok(bare) } else { Err(wrong) })?;
    let owned = lists::numbers(given.fields, Stock::Countersinks);
    if !owned.is_empty() && angle.degrees().is_ok_and(|degrees| !owned.contains(&degrees)) {
        notes.push(says::NOT_OWNED.to_owned());
    }
    let title = says::title(&name, depths.from_touch.value);
    let drawing = drawing(&sink, &depths, &title);
    Ok(Answer {
        title,
        figures: figures(given, &depths),
        tables: Vec::new(),
        working: says::working(&sink, &depths),
        notes,
        drawing,
    })
}

/// A head by its name, however it is spaced.
fn named(standard: Standard, typed: &str) -> Option<(&'static str, Length)> {
    let plain = |text: &str| text.to_lowercase().replace([' ', '#', '"'], "");
    let head = standard.heads().iter().find(|head| plain(head.name) == plain(typed))?;
    Some((head.name, standard.size(head.name).ok()??.0))
}

fn figures(given: &Given, depths: &Depths) -> Vec<Figure> {
    let tenth = |growth: Approx| Approx { value: growth.value / 10.0, bound: growth.bound / 5.0 };
    let touches = if depths.on_edge { says::EDGE } else { says::FACE };
    let down = Value::About(depths.from_touch);
    let mut figures = vec![figure("down", says::DOWN, down.clone())];
    figures.extend(dials::vertical(given, &down));
    figures.extend([
        figure("touches", says::TOUCHES, Value::Text(touches.to_owned())),
        figure("tip", says::TIP, Value::About(depths.tip)),
        figure("mouth", says::MOUTH, Value::About(depths.mouth)),
        figure("grows", says::GROWS, Value::About(tenth(depths.growth))),
    ]);
    if let Some(ball) = depths.ball {
        figures.push(figure("ball-above", says::BALL_UP, Value::About(ball.above)));
        figures.push(figure("ball-touches", says::BALL_AT, Value::About(ball.touches)));
    }
    figures
}

fn counterbore(given: &Given) -> Result<Answer, Wrong> {
    let typed = given.get("thread").trim().to_uppercase();
    let Some(cap) = CAPS.iter().find(|cap| cap.name == typed) else {
        return Err(("thread", Error::new(Of::Thread, Cause::Conflict)));
    };
    let um = |um: u16| Fraction::new(um.into(), 1000).map(Length::from_mm);
    let at = |e| ("thread", e);
    let below = given.length_if("below", Of::Depth)?.unwrap_or(NONE);
    let (head, height) = (um(cap.head).map_err(at)?, um(cap.height).map_err(at)?);
    let bore = um(cap.counterbore).map_err(at)?;
    let sum = below.mm().checked_add(height.mm());
    let deep = Length::from_mm(sum.map_err(|e| ("below", e.of(Of::Depth)))?);
    let mm = |length: Length| float::of(length.mm());
    let title = says::title(cap.name, mm(deep));
    let (r, h, b) = (mm(bore) / 2.0, mm(deep), mm(head) / 2.0);
    let (hole, floor) = (b * 0.55, -h - b);
    let drawing = Sketch::default()
        .closed(
            "o m",
            &[(-r * 2.0, 0.0), (-r, 0.0), (-r, -h), (-hole, -h), (-hole, floor), (-r * 2.0, floor)],
        )
        .closed(
            "o m",
            &[(r * 2.0, 0.0), (r, 0.0), (r, -h), (hole, -h), (hole, floor), (r * 2.0, floor)],
        )
        .rect("a w", (-b, -h), (b, -h + mm(height)))
        .size((-r, 0.0), (r, 0.0), 20.0, &says::across(bore))
        .size((r * 2.0, 0.0), (r * 2.0, -h), 16.0, &crate::words::mm(deep))
        .markup(&title);
    let down = Value::Length(deep);
    let mut figures = vec![figure("down", says::DEEP, down.clone())];
    figures.extend(dials::vertical(given, &down));
    figures.push(figure("bore", says::BORE, Value::Length(bore)));
    figures.push(figure("head", says::CLEAR, Value::Length(head)));
    Ok(Answer {
        title,
        figures,
        tables: Vec::new(),
        working: says::bore_working(height, below, deep),
        notes: vec![says::BORE_MEMORY.to_owned()],
        drawing,
    })
}

fn drawing(sink: &Countersink, depths: &Depths, title: &str) -> Markup {
    let mm = |length: Length| float::of(length.mm());
    let mouth = depths.mouth.value / 2.0;
    let hole = mm(sink.hole.max(sink.flat)) / 2.0;
    let deep = depths.from_touch.value;
    let (far, floor) = (mouth * 1.7, -(deep + mouth * 0.7));
    let side = |s: f64| {
        [(far * s, 0.0), (mouth * s, 0.0), (hole * s, -deep), (hole * s, floor), (far * s, floor)]
    };
    let mut sketch = Sketch::default().closed("o m", &side(1.0)).closed("o m", &side(-1.0));
    // The tool: from its nose up.
    let (nose, tip) = (mm(sink.flat) / 2.0, -depths.tip.value);
    let up = mouth * 0.35;
    let wide = mouth + up * depths.growth.value / 2.0;
    sketch = sketch.line("a w", &[(-wide, up), (-nose, tip), (nose, tip), (wide, up)]);
    if let Some(ball) = depths.ball {
        let radius = mm(sink.ball) / 2.0;
        sketch = sketch.circle("t", (0.0, ball.above.value - radius), radius);
    }
    sketch
        .size(
            (-mouth, 0.0),
            (mouth, 0.0),
            34.0,
            &["⌀ ", &*crate::words::about(mouth * 2.0, 3)].concat(),
        )
        .size((far, 0.0), (far, -deep), 16.0, &crate::words::about(deep, 3))
        .label("l", (wide * 1.06, up), &degrees(sink.angle))
        .markup(title)
}

fn degrees(angle: Angle) -> String {
    angle.degrees().map(|degrees| crate::words::decimal(degrees, 2) + "°").unwrap_or_default()
}
