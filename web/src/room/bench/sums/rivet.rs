//! Rivet length by volume.
use crate::draw::sketch::{Sketch, round};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::rivet as says;
use handturn::bench::rivet::{Filled, Head, Rivet};
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "rivet",
    group: Group::Wire,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M6 10a6 6 0 0 1 12 0zM9.5 10v8M14.5 10v8M2 13.5h7.5M14.5 13.5H22M2 18h20M6 18a6 4 0 0 0 12 0",
    entries: &[
        Entry::choice(
            "head",
            says::HEAD,
            &[("round", says::ROUND), ("pan", says::PAN), ("countersunk", says::COUNTERSUNK)],
        ),
        Entry::text("diameter", says::DIAMETER, "3"),
        Entry::text("hole", says::HOLE, "3.1"),
        Entry::text("grip", says::GRIP, "5"),
        Entry::text("wide", says::WIDE, ""),
        Entry::text("high", says::HIGH, "").when("head", &["round", "pan"]),
        Entry::text("angle", says::ANGLE, "90").when("head", &["countersunk"]),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let head = given.choice(
        "head",
        &[("round", Head::Round), ("pan", Head::Pan), ("countersunk", Head::Countersunk)],
    )?;
    let rivet = Rivet {
        diameter: given.length("diameter", Of::Diameter)?,
        hole: given.length("hole", Of::Diameter)?,
        grip: given.length("grip", Of::Length)?,
        head,
        wide: given.length_if("wide", Of::Diameter)?,
        high: if head == Head::Countersunk { None } else { given.length_if("high", Of::Depth)? },
        angle: given.angle("angle", Of::Angle)?,
    };
    let deep = head == Head::Countersunk;
    let at = |error: Error| {
        about(
            error,
            &[
                (Of::Length, "grip"),
                (Of::Depth, if deep { "wide" } else { "high" }),
                (Of::Angle, "angle"),
                (Of::Diameter, "hole"),
            ],
        )
    };
    let it = rivet.filled().map_err(at)?;
    Ok(Answer {
        title: says::title(&rivet, &it),
        figures: vec![
            figure("length", says::LENGTH, Value::About(it.length)),
            figure("out", says::OUT, Value::About(it.out)),
            figure("to-head", says::TO_HEAD, Value::About(it.to_head)),
            figure("play", says::PLAY, Value::About(it.play)),
            figure("wide", says::ACROSS, Value::About(it.wide)),
            figure("high", if deep { says::DEEP } else { says::TALL }, Value::About(it.high)),
            figure("practice", says::PRACTICE, Value::Text(says::practice(&it))),
        ],
        tables: Vec::new(),
        working: says::working(&rivet, &it),
        notes: vec![says::TRY.to_owned()],
        drawing: drawing(&rivet, &it),
    })
}

fn drawing(rivet: &Rivet, it: &Filled) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let (d, hole, grip) = (of(rivet.diameter) / 2.0, of(rivet.hole) / 2.0, of(rivet.grip));
    let (wide, high) = (it.wide.value / 2.0, it.high.value);
    let side = wide.max(d * 1.6) * 1.9;
    let set = [(-d * 1.6, 0.0), (-d * 1.3, -d), (d * 1.3, -d), (d * 1.6, 0.0)];
    let mut sketch = Sketch::default();
    for x in [-1.0, 1.0] {
        sketch = sketch.rect("o m", (x * hole, 0.0), (x * side, grip));
    }
    sketch = sketch.closed("o b", &set);
    // The head that comes, in the accent; the tail that it comes from, thin.
    let head = match rivet.head {
        Head::Round => {
            let radius = (wide * wide + high * high) / (2.0 * high);
            let centre = (0.0, grip + high - radius);
            let half = float::atan_turns(wide / (radius - high).abs().max(1e-9));
            let half = if high > radius { 0.5 - half } else { half };
            let mut cap = Vec::new();
            for k in 0..=16 {
                let turns = 0.25 - half + half * f64::from(k) / 8.0;
                cap.push(round(centre, radius, turns));
            }
            cap.extend([(-hole, grip), (-hole, 0.0), (hole, 0.0), (hole, grip)]);
            cap
        }
        Head::Pan => vec![
            (wide, grip),
            (d, grip + high),
            (-d, grip + high),
            (-wide, grip),
            (-hole, grip),
            (-hole, 0.0),
            (hole, 0.0),
            (hole, grip),
        ],
        Head::Countersunk => vec![
            (wide, grip),
            (-wide, grip),
            (-hole, grip - high),
            (-hole, 0.0),
            (hole, 0.0),
            (hole, grip - high),
        ],
    };
    let out = grip + it.out.value;
    let text = |mm: f64| [&*crate::words::about(mm, 2), " mm"].concat();
    sketch
        .closed("o b a", &head)
        .line("care", &[(-d, grip), (-d, out), (d, out), (d, grip)])
        .size((side, out), (side, 0.0), 20.0, &text(it.length.value))
        .size((-side, 0.0), (-side, grip), 20.0, &text(grip))
        .markup(&says::picture(rivet, it))
}
