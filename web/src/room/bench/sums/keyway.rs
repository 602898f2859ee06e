//! A keyway in a shaft.
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::gear::keyway::{Cut, Keyway, keyway};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "keyway",
    group: Group::Mill,
    name: says::KEYWAY,
    about: says::KEYWAY_ABOUT,
    also: says::KEYWAY_ALSO,
    icon: "M8.6 6A8 8 0 1 0 15.4 6v5H8.6z",
    entries: &[
        Entry::text("shaft", says::SHAFT, "20"),
        Entry::text("key", says::KEY, "6"),
        Entry::text("side", says::AT_SIDE, "3.5"),
    ],
    answer,
    source: says::PLANE,
    care: says::KEYWAY_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let ask = Keyway {
        shaft: given.length("shaft", Of::Blank)?,
        width: given.length("key", Of::Key)?,
        side: given.length("side", Of::Depth)?,
    };
    let at =
        |error: Error| about(error, &[(Of::Key, "key"), (Of::Depth, "side"), (Of::Blank, "shaft")]);
    let cut = keyway(&ask).map_err(at)?;
    let side = says::short(ask.side);
    Ok(Answer {
        title: says::told(
            &[&says::short(ask.width), " mm key in ", &says::short(ask.shaft), " mm"],
            cut.from_top,
        ),
        figures: vec![
            figure("from_top", says::FROM_TOP, Value::About(cut.from_top)),
            figure("over", says::OVER_SHAFT, Value::About(cut.over)),
            figure("arc", says::ARC, Value::About(cut.arc)),
        ],
        tables: Vec::new(),
        working: vec![
            says::line("Round above the key", &["R − √(R² − w² ÷ 4)"], cut.arc.value),
            says::line(
                "Depth from the top",
                &[&side, " + ", &crate::words::about(cut.arc.value, 4)],
                cut.from_top.value,
            ),
            says::line(
                "Far side",
                &[&says::short(ask.shaft), " − ", &crate::words::about(cut.from_top.value, 4)],
                cut.over.value,
            ),
        ],
        notes: Vec::new(),
        drawing: drawing(&ask, &cut),
    })
}

fn drawing(ask: &Keyway, cut: &Cut) -> Markup {
    let (radius, half) = (says::mm(ask.shaft) / 2.0, says::mm(ask.width) / 2.0);
    let (floor, edge) = (radius - cut.from_top.value, radius - cut.arc.value);
    Sketch::default()
        .circle("o m", (0.0, 0.0), radius)
        .rect("b", (-half, floor), (half, radius * 1.02))
        .line("o", &[(-half, edge), (-half, floor), (half, floor), (half, edge)])
        .size((radius, radius), (radius, floor), 16.0, &crate::words::about(cut.from_top.value, 3))
        .size((-radius, -radius), (-radius, floor), 16.0, &crate::words::about(cut.over.value, 3))
        .markup(&says::told(&[says::KEYWAY, " in ", &says::short(ask.shaft), " mm"], cut.from_top))
}
