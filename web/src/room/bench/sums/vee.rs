//! How high a round lies in a V-block.
use super::tapers::amount;
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::bench::taper::Amount;
use handturn::bench::vee::{Rest, Vee, rest};
use handturn::measure::Length;
use handturn::number::{Approx, float};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "vee",
    group: Group::Mill,
    name: says::VEE,
    about: says::VEE_ABOUT,
    also: says::VEE_ALSO,
    icon: "M2 11h4.5L12 19l5.5-8H22v10H2zM12 3.6a5.6 5.6 0 1 0 .01 0",
    entries: &[
        Entry::text("round", says::ROUND, "25"),
        Entry::text("angle", says::SIDES_ANGLE, "90"),
        Entry::text("width", says::V_WIDTH, "30"),
        Entry::text("other", says::OTHER, ""),
    ],
    answer,
    source: says::PLANE,
    care: says::VEE_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let vee = Vee {
        round: given.length("round", Of::Blank)?,
        angle: given.angle("angle", Of::Angle)?,
        width: given.length("width", Of::Length)?,
        other: given.length_if("other", Of::Diameter)?,
    };
    let at = |error: Error| {
        let places = [
            (Of::Blank, "round"),
            (Of::Angle, "angle"),
            (Of::Diameter, "other"),
            (Of::Length, "width"),
        ];
        about(error, &places)
    };
    let found = rest(&vee).map_err(at)?;
    let half = float::of(vee.angle.turns()) / 2.0;
    let radius = crate::words::about(says::mm(vee.round) / 2.0, 4);
    let mut figures = vec![
        figure("top", says::TOP, Value::About(found.top)),
        figure("centre", says::CENTRE, Value::About(found.centre)),
        figure("apex", says::APEX, Value::About(found.apex)),
        figure("per_mm", says::PER_MM, Value::About(found.per_mm)),
    ];
    let mut working = vec![
        says::line(
            "Centre above the point",
            &["R ÷ sin(a ÷ 2) = ", &radius, " ÷ ", &says::ratio(float::sin_turns(half))],
            found.centre.value + found.apex.value,
        ),
        says::line("Point below the face", &["width ÷ 2 ÷ tan(a ÷ 2)"], found.apex.value),
    ];
    if let (Some(beside), Some(other)) = (found.other, vee.other) {
        let lower = beside.top.about.value < 0.0;
        let [top, centre] = if lower {
            [("other_lower", says::OTHER_LOWER), ("other_centre_lower", says::OTHER_CENTRE_LOWER)]
        } else {
            [
                ("other_higher", says::OTHER_HIGHER),
                ("other_centre_higher", says::OTHER_CENTRE_HIGHER),
            ]
        };
        figures.push(figure(top.0, top.1, amount(size(beside.top))));
        figures.push(figure(centre.0, centre.1, amount(size(beside.centre))));
        working.push(says::line(
            "Tops apart",
            &[
                "(",
                &says::short(other),
                " − ",
                &says::short(vee.round),
                ") ÷ 2 × (1 + 1 ÷ sin(a ÷ 2))",
            ],
            beside.top.about.value,
        ));
    }
    Ok(Answer {
        title: says::told(&[&says::short(vee.round), " mm in a V"], found.top),
        figures,
        tables: Vec::new(),
        working,
        notes: Vec::new(),
        drawing: drawing(&vee, &found),
    })
}

/// How much, whichever way.
fn size(amount: Amount) -> Amount {
    Amount {
        exact: amount.exact.map(|length| Length::from_mm(length.mm().abs())),
        about: Approx { value: amount.about.value.abs(), ..amount.about },
    }
}

fn drawing(vee: &Vee, found: &Rest) -> Markup {
    let (half, radius) = (says::mm(vee.width) / 2.0, says::mm(vee.round) / 2.0);
    let (side, deep) = (half * 1.35, found.apex.value);
    let mut sketch = Sketch::default();
    if let (Some(beside), Some(other)) = (found.other, vee.other) {
        let centre = (0.0, found.centre.value + beside.centre.about.value);
        sketch = sketch.circle("t", centre, says::mm(other) / 2.0);
    }
    sketch
        .closed(
            "o m",
            &[
                (-side, 0.0),
                (-half, 0.0),
                (0.0, -deep),
                (half, 0.0),
                (side, 0.0),
                (side, -deep * 1.35),
                (-side, -deep * 1.35),
            ],
        )
        .circle("o b", (0.0, found.centre.value), radius)
        .line("t", &[(-radius * 1.15, found.centre.value), (radius * 1.15, found.centre.value)])
        .size((side, found.top.value), (side, 0.0), 18.0, &crate::words::about(found.top.value, 3))
        .markup(&says::told(&[says::VEE, ", ", &says::short(vee.round), " mm"], found.top))
}
