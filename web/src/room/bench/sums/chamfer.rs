//! Chamfers by slide travel.
use super::dials;
use crate::draw::sketch::Sketch;
use crate::owned::lists::Stock;
use crate::room::bench::sum::{Answer, Entry, Given as Asked, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{chamfer as says, mill};
use handturn::bench::chamfer::{Chamfer, Given, Legs};
use handturn::measure::Length;
use handturn::number::{Approx, float};
use handturn::thread::{Thread, fitting, name};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "chamfer",
    group: Group::Turn,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 19h15V11l-5-5H2M12 6L21 15M12 2.5L15 5.5M2 12.5h20",
    entries: &[
        Entry::choice("where", says::WHERE, &[("outside", says::OUTSIDE), ("bore", says::BORE)]),
        Entry::choice(
            "by",
            says::BY,
            &[
                ("radius", says::OFF_RADIUS),
                ("along", says::ALONG),
                ("face", says::FACE),
                ("to", says::TO),
                ("thread", says::OF_THREAD),
            ],
        ),
        Entry::text("size", says::SIZE, "1").when("by", &["radius", "along", "face", "to"]),
        Entry::text("diameter", says::DIAMETER, "20")
            .when("by", &["radius", "along", "face", "to"]),
        Entry::text("thread", says::THREAD, "M10").when("by", &["thread"]),
        Entry::text("angle", says::ANGLE, "45"),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(asked: &Asked) -> Result<Answer, Wrong> {
    let bore = asked.get("where") == "bore";
    let angle = asked.angle("angle", Of::Angle)?;
    let mut notes = vec![says::TOUCH.to_owned()];
    let by = asked.get("by");
    let (diameter, given) = if by == "thread" {
        let at = |e: Error| ("thread", e);
        let thread = thread(asked.get("thread")).map_err(at)?;
        let ends = fitting::chamfers(&thread).map_err(at)?;
        notes.push(if bore { says::NUT_MOUTH } else { says::SCREW_END }.to_owned());
        if bore {
            (thread.minor_internal().map_err(at)?, Given::To(ends.mouth_most))
        } else {
            (thread.major, Given::To(ends.screw_end))
        }
    } else {
        let size = asked.length("size", Of::Length)?;
        let given = match by {
            "along" => Given::Along(size),
            "face" => Given::Face(size),
            "to" => Given::To(size),
            _ => Given::OffRadius(size),
        };
        (asked.length("diameter", Of::Diameter)?, given)
    };
    let chamfer = Chamfer { diameter, bore, angle, given };
    let legs = chamfer.legs().map_err(|error| match error.cause {
        Cause::Conflict => (if by == "thread" { "thread" } else { "size" }, error),
        _ => {
            about(error, &[(Of::Angle, "angle"), (Of::Diameter, "diameter"), (Of::Length, "size")])
        }
    })?;
    let twice = Approx { value: legs.off_radius.value * 2.0, bound: legs.off_radius.bound * 2.0 };
    let face = Value::About(legs.face);
    let mut figures = vec![
        figure("off-radius", says::CROSS, Value::About(legs.off_radius)),
        figure("on-diameter", says::CROSS_DIAMETER, Value::About(twice)),
        figure("along", says::SADDLE, Value::About(legs.along)),
        figure("face", says::TOP, face.clone()),
    ];
    let dial = ("top-slide-dial", mill::TOP_SLIDE_READS);
    figures.extend(dials::reads(asked, Stock::TopSlide, dial, &face));
    figures.push(figure("end", says::END, Value::About(legs.end)));
    Ok(Answer {
        title: says::title(&legs),
        figures,
        tables: Vec::new(),
        working: says::working(&legs, float::tan_turns(float::of(angle.turns()))),
        notes,
        drawing: drawing(&chamfer, &legs),
    })
}

/// The thread that a name means.
fn thread(typed: &str) -> Result<Thread, Error> {
    let found = name::read(typed)?;
    let first = found.first().ok_or(Error::new(Of::Major, Cause::Empty))?;
    Ok(first.thread)
}

fn drawing(chamfer: &Chamfer, legs: &Legs) -> Markup {
    let length = |length: Length| float::of(length.mm());
    let radius = length(chamfer.diameter) / 2.0;
    let (end, along) = (legs.end.value / 2.0, legs.along.value);
    let long = (along * 2.2).max(radius * 0.9);
    let wall = if chamfer.bore { radius.max(end) * 1.35 } else { 0.0 };
    let half = |s: f64| {
        if chamfer.bore {
            [
                (0.0, wall * s),
                (long, wall * s),
                (long, end * s),
                (long - along, radius * s),
                (0.0, radius * s),
            ]
        } else {
            [
                (0.0, 0.0),
                (long, 0.0),
                (long, end * s),
                (long - along, radius * s),
                (0.0, radius * s),
            ]
        }
    };
    let off = |text: &str, value: f64| [text, &*crate::words::about(value, 3)].concat();
    let sketch = if chamfer.bore {
        Sketch::default().closed("o m", &half(1.0)).closed("o m", &half(-1.0))
    } else {
        let [_, _, end, corner, far] = half(1.0);
        let low = |(x, y): (f64, f64)| (x, -y);
        Sketch::default().closed("o m", &[end, corner, far, low(far), low(corner), low(end)])
    };
    sketch
        .line("a w", &[(long - along, radius), (long, end)])
        .line("a w", &[(long - along, -radius), (long, -end)])
        .line("t", &[(-long * 0.06, 0.0), (long * 1.08, 0.0)])
        .size((long - along, radius.max(wall)), (long, radius.max(wall)), 18.0, &off("", along))
        .size((long, end), (long, -end), 20.0, &off("⌀ ", end * 2.0))
        .size((0.0, -radius), (0.0, radius), 20.0, &off("⌀ ", radius * 2.0))
        .markup(&says::picture(legs, radius * 2.0))
}
