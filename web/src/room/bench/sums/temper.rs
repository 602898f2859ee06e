//! Hardening and tempering: heats and colours by steel and tool.
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, figure};
use crate::room::steps::Wrong;
use crate::words::bench::temper as says;
use handturn::Field as Of;
use handturn::bench::heat::{Glow, Steel, Temper, Use, soak};
use handturn::number::float;
use maud::{Markup, html};

pub(super) const SUM: Sum = Sum {
    key: "temper",
    group: Group::Wire,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M12 2c1 4 6 6 6 12a6 6 0 0 1-12 0c0-3 2-4 3-7 1.500 1 2 2 2 4 1.500-2 1.500-6 1-9z",
    entries: &[
        Entry::choice(
            "steel",
            says::STEEL,
            &[
                ("silver", says::SILVER),
                ("silver-oil", says::SILVER_OIL),
                ("carbon", says::CARBON),
                ("o1", says::OIL_STEEL),
                ("spring", says::SPRING_STEEL),
            ],
        ),
        Entry::choice(
            "for",
            says::FOR,
            &[
                ("scriber", says::SCRIBER),
                ("cutter", says::CUTTER),
                ("drill", says::DRILL),
                ("tap", says::TAP),
                ("punch", says::PUNCH),
                ("chisel", says::CHISEL),
                ("screwdriver", says::SCREWDRIVER),
                ("spring", says::SPRING),
            ],
        ),
        Entry::text("section", says::SECTION, "6"),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

const STEELS: [(&str, Steel); 5] = [
    ("silver", Steel::Silver),
    ("silver-oil", Steel::SilverInOil),
    ("carbon", Steel::Carbon),
    ("o1", Steel::Oil),
    ("spring", Steel::Spring),
];
const USES: [(&str, Use, &str); 8] = [
    ("scriber", Use::Scriber, says::SCRIBER),
    ("cutter", Use::Cutter, says::CUTTER),
    ("drill", Use::Drill, says::DRILL),
    ("tap", Use::Tap, says::TAP),
    ("punch", Use::Punch, says::PUNCH),
    ("chisel", Use::Chisel, says::CHISEL),
    ("screwdriver", Use::Screwdriver, says::SCREWDRIVER),
    ("spring", Use::Spring, says::SPRING),
];

/// What each colour of temper looks like, roughly.
const HUES: [&str; 10] = [
    "#ecdfa5", "#e3c769", "#d2a545", "#a8702e", "#8a4f3d", "#75427a", "#4f3a87", "#2f56b0",
    "#2a4a7c", "#7f95a8",
];

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let steel = given.choice("steel", &STEELS)?;
    let wanted = given.choice("for", &USES.map(|(value, used, _)| (value, used)))?;
    let section = given.length("section", Of::Length)?;
    let um = float::nearest(float::of(section.mm()) * 1000.0, 1);
    let um =
        um.and_then(|um| u32::try_from(um.num()).ok()).filter(|um| (1..=1_000_000).contains(um));
    let Some(um) = um else {
        let cause = handturn::Cause::OutOfLengths { least_um: 1, greatest_um: 1_000_000 };
        return Err(("section", handturn::Error::new(Of::Length, cause)));
    };
    let minutes = soak(um);
    let (from, to, quench) = steel.hardening();
    let (colours, band) = (says::colours(wanted.colours()), says::band(wanted.band()));
    let glow = Glow::ALL.iter().rfind(|glow| glow.band().0 <= from && to <= glow.band().1);
    let mut figures = vec![
        figure("colour", says::LET_DOWN, Value::Text(colours.clone())),
        figure("temper", says::TEMPER_AT, Value::Text(band.clone())),
        figure("harden", says::HARDEN, Value::Text(says::band((from, to)))),
        figure("quench", says::QUENCH, Value::Text(says::quench(quench).to_owned())),
        figure("soak", says::SOAK, Value::Text(says::soak(minutes))),
    ];
    if let Some(glow) = glow {
        figures.insert(3, figure("glow", says::LOOKS, Value::Text(says::glow(*glow).to_owned())));
    }
    let row = |name: &str, band| {
        vec![
            Value::Text(name.to_owned()),
            Value::Text(says::celsius(band)),
            Value::Text(says::fahrenheits(band)),
        ]
    };
    let tempers = Temper::ALL.map(|colour| {
        let used = USES.iter().filter(|(_, used, _)| {
            let (first, last) = used.colours();
            (first..=last).contains(&colour)
        });
        let used: Vec<_> = used.map(|(_, _, label)| *label).collect();
        [row(says::temper(colour), colour.band()), vec![Value::Text(used.join("; "))]].concat()
    });
    let glows = Glow::ALL.map(|glow| row(says::glow(glow), glow.band()));
    Ok(Answer {
        title: [&*colours, ", ", &band].concat(),
        figures,
        tables: vec![
            Table {
                key: "colours",
                caption: says::COLOURS,
                head: &[
                    ("colour", says::COLOUR),
                    ("celsius", says::CELSIUS),
                    ("fahrenheit", says::FAHRENHEIT),
                    ("used", says::USED),
                ],
                rows: tempers.into(),
            },
            Table {
                key: "glows",
                caption: says::GLOWS,
                head: &[
                    ("colour", says::COLOUR),
                    ("celsius", says::CELSIUS),
                    ("fahrenheit", says::FAHRENHEIT),
                ],
                rows: glows.into(),
            },
        ],
        working: says::working(&crate::words::decimal(section.mm(), 2), minutes, from),
        notes: [says::DIFFER, says::TIME, says::POLISH].map(str::to_owned).into(),
        drawing: drawing(wanted, &says::picture(&colours, &band)),
    })
}

/// Each colour as a bar along a scale of heat, its name beside it; those wanted framed.
fn drawing(wanted: Use, name: &str) -> Markup {
    let x = |celsius: u16| (i32::from(celsius) - 210) * 2;
    let (first, last) = wanted.colours();
    html! {
        svg.dr viewBox="-6 -30 462 276" role="img" aria-label=(name) {
            @for heat in [225_u16, 250, 275, 300, 325] {
                path.t d={ "M" (x(heat)) " 0V236" } {}
                text.n x=(x(heat)) y="-8" font-size="15" { (heat) @if heat == 325 { " °C" } }
            }
            @for (k, (colour, hue)) in Temper::ALL.into_iter().zip(HUES).enumerate() {
                @let (from, to) = colour.band();
                @let marked = (first..=last).contains(&colour);
                rect class=(if marked { "a w" } else { "t" }) fill=(hue) x=(x(from)) y=(k * 23 + 4)
                    width=(x(to) - x(from)) height="17" {}
                text class=(if marked { "c l h" } else { "l h" }) x=(x(to) + 6) y=(k * 23 + 18) font-size="15" {
                    (says::temper(colour))
                }
            }
        }
    }
}
