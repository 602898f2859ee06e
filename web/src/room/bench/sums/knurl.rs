//! Knurls: blanks on which the wheel tracks.
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::knurl as says;
use handturn::Field as Of;
use handturn::bench::knurl::{Fit, Knurl, Lines, Pitch, SPEED_MM, Track, Travel, travel};
use handturn::bench::speed::rpm;
use handturn::bounds::WHEEL_TEETH;
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "knurl",
    group: Group::Turn,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M3 14h18v6H3zM6 14l5 6M11 14l5 6M16 14l5 6M11 14l-5 6M16 14l-5 6M12 4.5a3.6 3.6 0 1 0 .1 0z",
    entries: &[
        Entry::choice(
            "by",
            says::BY,
            &[
                ("tips", says::TIPS_WAY),
                ("inch", says::INCH_WAY),
                ("dp", says::DP_WAY),
                ("wheel", says::WHEEL_WAY),
            ],
        ),
        Entry::text("tips", says::TIPS, "1").when("by", &["tips"]),
        Entry::number("per-inch", says::PER_INCH, "21").when("by", &["inch"]),
        Entry::number("dp", says::DP, "96").when("by", &["dp"]),
        Entry::text("over", says::OVER, "20").when("by", &["wheel"]),
        Entry::number("teeth", says::TEETH, "60").when("by", &["wheel"]),
        Entry::choice(
            "pattern",
            says::PATTERN,
            &[("straight", says::STRAIGHT), ("slanted", says::SLANTED), ("diamond", says::DIAMOND)],
        ),
        Entry::text("angle", says::ANGLE, "30").when("pattern", &["slanted", "diamond"]),
        Entry::text("stock", says::STOCK, "20"),
        Entry::text("long", says::LONG, "15"),
        Entry::text("wide", says::WIDE, "8"),
        Entry::choice("end", says::ENDS, &[("free", says::FREE), ("shoulder", says::SHOULDER)]),
        Entry::choice("flanks", says::FLANKS, &[("90", says::NINETY), ("70", says::SEVENTY)]),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let by = given.get("by");
    let pitch = match by {
        "inch" => Pitch::PerInch(given.number("per-inch", Of::DiametralPitch)?),
        "dp" => Pitch::Diametral(given.number("dp", Of::DiametralPitch)?),
        "wheel" => {
            Pitch::Wheel(given.length("over", Of::Tool)?, given.count("teeth", WHEEL_TEETH)?)
        }
        _ => Pitch::Tips(given.length("tips", Of::Pitch)?),
    };
    let pattern = given.get("pattern");
    let angle =
        if pattern == "straight" { Angle::ZERO } else { given.angle("angle", Of::Helix)? };
    let knurl = Knurl {
        pitch,
        angle,
        lines: if pattern == "diamond" { Lines::Crossed } else { Lines::OneWay },
        tooth_angle: given.angle("flanks", Of::CutterAngle)?,
        stock: given.length("stock", Of::Diameter)?,
    };
    let at = |error| {
        let many = if by == "dp" { "dp" } else { "per-inch" };
        about(
            error,
            &[
                (Of::Helix, "angle"),
                (Of::Pitch, "tips"),
                (Of::DiametralPitch, many),
                (Of::Tool, "over"),
                (Of::Face, "wide"),
                (Of::Length, "long"),
                (Of::Diameter, "stock"),
            ],
        )
    };
    let fit = knurl.fit().map_err(at)?;
    let long = given.length("long", Of::Length)?;
    let wide = given.length("wide", Of::Face)?;
    let shoulder = given.get("end") == "shoulder";
    let run = travel(long, wide, shoulder).map_err(at)?;
    let Some(below) = fit.below().copied() else {
        return Err(("stock", handturn::Error::new(Of::Diameter, handturn::Cause::Conflict)));
    };
    let mut notes: Vec<String> =
        [says::FIRST_TURNS, says::BAND, says::MEASURE].map(str::to_owned).into();
    if run.travel.mm().is_zero() {
        notes.push(says::PRESSED.to_owned());
    }
    let rows = fit.tracks.iter().map(row).collect();
    let mut tables = vec![Table { key: "blanks", caption: says::BLANKS, head: BLANKS, rows }];
    tables.extend(yours(given, &knurl));
    let slant = float::cos_turns(float::of(angle.turns()));
    Ok(Answer {
        title: says::title(below.teeth, below.blank),
        figures: figures(&knurl, &fit, &below, &run).map_err(at)?,
        tables,
        working: says::working(&fit, below.teeth, below.blank.value, slant),
        notes,
        drawing: drawing(&knurl, &below, &run, (long, wide)),
    })
}

const BLANKS: &[(&str, &str)] =
    &[("teeth", says::COUNT), ("blank", says::BLANK), ("off", says::OFF)];

/// A blank: exact where it is.
fn blank(track: &Track) -> Value {
    track.exact.map_or(Value::About(track.blank), Value::Length)
}

fn row(track: &Track) -> Vec<Value> {
    vec![Value::Count(track.teeth.into()), blank(track), Value::About(track.off)]
}

fn figures(
    knurl: &Knurl,
    fit: &Fit,
    below: &Track,
    run: &Travel,
) -> Result<Vec<crate::room::bench::sum::Figure>, handturn::Error> {
    let grown = |more: handturn::number::Approx| {
        Value::About(handturn::number::Approx {
            value: below.blank.value + more.value,
            bound: below.blank.bound + more.bound + below.blank.value * f64::EPSILON,
        })
    };
    let way = |mm: u32| Length::from_mm(Fraction::whole(mm.into()));
    let (slow, fast) = (rpm(way(SPEED_MM.0), knurl.stock)?, rpm(way(SPEED_MM.1), knurl.stock)?);
    let mut figures = vec![
        figure("blank", says::TURN_TO, blank(below)),
        figure("teeth", says::COUNT, Value::Count(below.teeth.into())),
        figure("off", says::TAKE_OFF, Value::About(below.off)),
    ];
    if let Some(above) = fit.above() {
        figures.push(figure("above", says::ABOVE, blank(above)));
    }
    figures.extend([
        figure("half-deep", says::HALF_DEEP, grown(fit.grows_least)),
        figure("full", says::FULL, grown(fit.grows_most)),
        figure("feed-least", says::FEED_LEAST, Value::About(fit.feed.0)),
        figure("feed-most", says::FEED_MOST, Value::About(fit.feed.1)),
        figure("rpm", says::SPEED, Value::Text(says::rpm(slow, fast))),
        figure("travel", says::TRAVEL, Value::Length(run.travel)),
        figure("beyond", says::BEYOND, Value::Length(run.beyond)),
        figure("in-all", says::IN_ALL, Value::Length(run.in_all)),
    ]);
    Ok(figures)
}

/// What each wheel of the Shop would want of this stock.
fn yours(given: &Given, knurl: &Knurl) -> Option<Table> {
    let wheels = lists::lengths(given.fields, Stock::Knurls);
    let rows: Vec<_> = wheels
        .into_iter()
        .filter_map(|tips| {
            let fit = Knurl { pitch: Pitch::Tips(tips), ..*knurl }.fit().ok()?;
            let below = *fit.below()?;
            Some([vec![Value::Length(tips)], row(&below)].concat())
        })
        .collect();
    let head = &[
        ("pitch", says::PITCH),
        ("teeth", says::COUNT),
        ("blank", says::BLANK),
        ("off", says::OFF),
    ];
    (!rows.is_empty()).then_some(Table { key: "wheels", caption: says::YOURS, head, rows })
}

/// Lines drawn on the side that is seen, at most.
const DRAWN: u32 = 36;

fn drawing(knurl: &Knurl, track: &Track, run: &Travel, (long, wide): (Length, Length)) -> Markup {
    let mm = |length: Length| float::of(length.mm());
    let (long, wide, beyond) = (mm(long), mm(wide), mm(run.beyond));
    let radius = track.blank.value / 2.0;
    let every = track.teeth.div_ceil(2 * DRAWN).max(1);
    let slope = float::tan_turns(float::of(knurl.angle.turns())) / radius;
    let marked = mm(run.in_all);
    let left = -beyond;
    let mut sketch =
        Sketch::default().rect("o m", (left - radius, -radius), (left + marked, radius));
    let ways: &[f64] = match knurl.lines {
        Lines::Crossed => &[1.0, -1.0],
        Lines::OneWay => &[1.0],
    };
    for k in (0..track.teeth).step_by(every as usize) {
        let from = f64::from(k) / f64::from(track.teeth);
        for way in ways {
            let steps = if slope > 0.0 { 24 } else { 1 };
            let mut seen = Vec::new();
            for step in 0..=steps {
                let x = marked * f64::from(step) / f64::from(steps);
                let turns = from + way * slope * x / (2.0 * float::PI);
                if float::cos_turns(turns) > 0.0 {
                    seen.push((left + x, radius * float::sin_turns(turns)));
                } else if !seen.is_empty() {
                    sketch = sketch.line("t", &core::mem::take(&mut seen));
                }
            }
            sketch = sketch.line("t", &seen);
        }
    }
    let wheel = wide.max(radius * 0.6);
    for middle in [0.0, mm(run.travel)] {
        sketch = sketch.rect(
            "a w",
            (middle - wide / 2.0, radius),
            (middle + wide / 2.0, radius + wheel),
        );
    }
    sketch
        .size(
            (long, -radius),
            (0.0, -radius),
            22.0,
            &[&*crate::words::about(long, 2), " mm"].concat(),
        )
        .size(
            (left + marked, radius),
            (left + marked, -radius),
            26.0,
            &["⌀ ", &*crate::words::about(track.blank.value, 3)].concat(),
        )
        .markup(&says::picture(track.teeth, track.blank.value, every, run))
}
