//! Drill points: depth to the tip and to the shoulder, spot drills.
use super::dials;
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::point as says;
use handturn::bench::point::{Deep, DrillPoint, PointDepths};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "point",
    group: Group::Mill,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M7 2v13l5 6 5-6V2M7 15h10M7 5l10 5M7 10l10 5",
    entries: &[
        Entry::text("diameter", says::DIAMETER, "8"),
        Entry::text("angle", says::ANGLE, "118"),
        Entry::choice("to", says::DEEP, &[("full", says::FULL_WAY), ("tip", says::TIP_WAY)]),
        Entry::text("depth", says::DEPTH, "20"),
        Entry::text("plate", says::PLATE, ""),
        Entry::text("spot", says::SPOT, ""),
        Entry::text("spot-angle", says::SPOT_ANGLE, "90"),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let diameter = given.length("diameter", Of::Diameter)?;
    let deep = given.length("depth", Of::Depth)?;
    let to_tip = given.get("to") == "tip";
    let none = Length::from_mm(Fraction::ZERO);
    let spot = given.length_if("spot", Of::Diameter)?;
    let drill = DrillPoint {
        diameter,
        angle: given.angle("angle", Of::Angle)?,
        depth: if to_tip { Deep::Tip(deep) } else { Deep::Full(deep) },
        plate: given.length_if("plate", Of::Length)?.unwrap_or(none),
        spot: spot.unwrap_or(diameter),
        spot_angle: given.angle("spot-angle", Of::Angle)?,
    };
    let depths = drill.depths().map_err(|error: Error| {
        // Which of two angles or diameters: the drill's own come first.
        let alone = DrillPoint { spot: diameter, spot_angle: drill.angle, ..drill };
        let of_spot = alone.depths().is_ok();
        let angle = if of_spot { "spot-angle" } else { "angle" };
        let across = if of_spot { "spot" } else { "diameter" };
        about(
            error,
            &[
                (Of::Angle, angle),
                (Of::Depth, "depth"),
                (Of::Length, "plate"),
                (Of::Diameter, across),
            ],
        )
    })?;
    let mut notes = vec![says::BLUNT.to_owned()];
    if depths.corners_first {
        notes.push(says::CORNERS.to_owned());
    }
    if depths.left.is_some_and(|left| left.value < 0.0) {
        notes.push(says::OUT.to_owned());
    }
    if depths.full.value < 0.0 {
        notes.push(says::NOT_FULL.to_owned());
    }
    let (full, tip) = (
        figure("full", says::FULL, Value::About(depths.full)),
        figure("tip", says::TIP, Value::About(depths.tip)),
    );
    let mut figures = if to_tip { vec![full, tip] } else { vec![tip, full] };
    figures.extend(dials::vertical(given, &Value::About(depths.tip)));
    figures.push(figure("point", says::POINT, Value::About(depths.point)));
    if let (Some(left), Some(through)) = (depths.left, depths.through) {
        figures.push(figure("left", says::LEFT, Value::About(left)));
        figures.push(figure("through", says::THROUGH, Value::About(through)));
    }
    figures.push(figure("spot", says::SPOT_DEEP, Value::About(depths.spot)));
    let title = says::title(&drill, &depths);
    Ok(Answer {
        figures,
        tables: Vec::new(),
        working: says::working(&drill, &depths),
        notes,
        drawing: drawing(&drill, &depths, &title),
        title,
    })
}

fn drawing(drill: &DrillPoint, depths: &PointDepths, title: &str) -> Markup {
    let radius = float::of(drill.diameter.mm()) / 2.0;
    let (full, tip) = (depths.full.value.max(0.0), depths.tip.value);
    // Where the tip alone is in, the hole is as wide as the cone there.
    let top = if depths.full.value < 0.0 { radius * tip / depths.point.value } else { radius };
    let plate = float::of(drill.plate.mm());
    let deep = if plate > 0.0 { plate } else { tip + radius };
    let far = radius * 2.6;
    let hole = |s: f64| [(0.0, -tip), (top * s, -full), (top * s, 0.0)];
    let text = |value: f64| crate::words::about(value, 3);
    let mut sketch = Sketch::default()
        .rect("o m", (-far, -deep), (far, 0.0))
        .closed("b", &[(-top, 0.0), (-top, -full), (0.0, -tip), (top, -full), (top, 0.0)])
        .line("o", &hole(1.0))
        .line("o", &hole(-1.0))
        .line("t", &[(-top, -full), (top, -full)]);
    let spot = float::of(drill.spot.mm()) / 2.0;
    sketch = sketch.line("a", &[(-spot, 0.0), (0.0, -depths.spot.value), (spot, 0.0)]);
    sketch
        .size((far, 0.0), (far, -tip), 16.0, &text(tip))
        .size((-far, -full), (-far, 0.0), 16.0, &text(full))
        .markup(title)
}
