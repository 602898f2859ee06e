//! Spindle speeds from those the machine has.
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::speed as says;
use handturn::bench::speed::{At, Cutting, Doing, Material, Speeds, Tool, Turns};
use handturn::bounds::SPINDLE;
use handturn::measure::{Length, read};
use handturn::number::{Approx, float};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "speed",
    group: Group::Turn,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M12 3a9 9 0 1 0 9 9M12 12L18.5 5.5M12 10.5a1.5 1.5 0 1 0 .1 0M20 2l1 5-5-1",
    entries: &[
        Entry::choice(
            "doing",
            says::DOING,
            &[
                ("turning", says::TURNING),
                ("drilling", says::DRILLING),
                ("reaming", says::REAMING),
                ("milling", says::MILLING),
            ],
        ),
        Entry::choice(
            "material",
            says::MATERIAL,
            &[
                ("mild", says::MILD),
                ("medium", says::MEDIUM),
                ("alloy", says::ALLOY),
                ("tool", says::TOOL_STEEL),
                ("stainless", says::STAINLESS),
                ("iron", says::CAST_IRON),
                ("brass", says::BRASS),
                ("bronze", says::BRONZE),
                ("aluminium", says::ALUMINIUM),
                ("own", says::OWN),
            ],
        ),
        Entry::choice(
            "tool",
            says::TOOL,
            &[("hss", says::HIGH_SPEED), ("carbide", says::CARBIDE), ("carbon", says::CARBON)],
        )
        .when(
            "material",
            &[
                "mild",
                "medium",
                "alloy",
                "tool",
                "stainless",
                "iron",
                "brass",
                "bronze",
                "aluminium",
            ],
        ),
        Entry::number("speed", says::SPEED, "25").when("material", &["own"]),
        Entry::choice("unit", says::UNIT, &[("m", says::METRES), ("ft", says::FEET)])
            .when("material", &["own"]),
        Entry::text("diameter", says::DIAMETER, "25"),
        Entry::text("speeds", says::SPEEDS, ""),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

const DOING: [(&str, Doing); 4] = [
    ("turning", Doing::Turning),
    ("drilling", Doing::Drilling),
    ("reaming", Doing::Reaming),
    ("milling", Doing::Milling),
];
const MATERIALS: [(&str, Material); 9] = [
    ("mild", Material::MildSteel),
    ("medium", Material::MediumSteel),
    ("alloy", Material::AlloySteel),
    ("tool", Material::ToolSteel),
    ("stainless", Material::Stainless),
    ("iron", Material::CastIron),
    ("brass", Material::Brass),
    ("bronze", Material::Bronze),
    ("aluminium", Material::Aluminium),
];
const TOOLS: [(&str, Tool); 3] =
    [("hss", Tool::HighSpeed), ("carbide", Tool::Carbide), ("carbon", Tool::Carbon)];

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let doing = given.choice("doing", &DOING)?;
    let cutting = if given.get("material") == "own" {
        let speed = given.number("speed", Of::Speed)?;
        let way = if given.get("unit") == "ft" {
            speed.times(12).and_then(Length::from_inches)
        } else {
            speed.times(1000).map(Length::from_mm)
        };
        Cutting::Own(way.map_err(|e| ("speed", e.of(Of::Speed)))?)
    } else {
        Cutting::By(given.choice("material", &MATERIALS)?, doing, given.choice("tool", &TOOLS)?)
    };
    let owned = owned(given, doing)?;
    let asked =
        Speeds { cutting, diameter: given.length("diameter", Of::Diameter)?, owned: &owned };
    let at = |error: Error| about(error, &[(Of::Diameter, "diameter"), (Of::Speed, "speed")]);
    let turns = asked.turns().map_err(at)?;
    let (slow, fast) = cutting.band().map_err(at)?;
    let (slow, fast) = (float::of(slow.mm()), float::of(fast.mm()));
    let mut notes = vec![says::START_SAYS.to_owned()];
    if doing == Doing::Reaming {
        notes.push(says::REAM_SAYS.to_owned());
    }
    let band = says::band(turns.least, turns.greatest);
    let mut figures = Vec::new();
    match turns.set {
        Some(set) => {
            let rpm = Approx { value: set.rpm.into(), bound: 0.0 };
            figures.push(figure(
                "set",
                says::SET,
                Value::Number { value: rpm, places: 0, unit: "rpm" },
            ));
            figures.push(figure("cuts", says::CUTS, Value::Text(says::cuts(set.cuts.value))));
        }
        None if owned.is_empty() => notes.push(says::NOT_KNOWN.to_owned()),
        None => notes.push(says::TOO_FAST.to_owned()),
    }
    let number = |value| Value::Number { value, places: 0, unit: "rpm" };
    figures.push(figure("least", says::FROM, number(turns.least)));
    figures.push(figure("greatest", says::TO, number(turns.greatest)));
    let cuts = [says::cuts(slow), says::cuts(fast)];
    let text = if slow < fast { cuts.join(" – ") } else { cuts[0].clone() };
    figures.push(figure("band", says::BAND, Value::Text(text)));
    let diameter = float::of(asked.diameter.mm());
    let said = turns.set.map_or(band, |set| says::set(set.rpm));
    let title = says::title(diameter, &said);
    Ok(Answer {
        figures,
        tables: table(&asked, &turns).map_err(at)?.into_iter().collect(),
        working: says::working(slow, fast, diameter, (turns.least.value, turns.greatest.value)),
        notes,
        drawing: drawing(&asked, &turns, &title),
        title,
    })
}

/// The speeds typed, or those of the machine that does this.
fn owned(given: &Given, doing: Doing) -> Result<Vec<u32>, Wrong> {
    if !given.is_empty("speeds") {
        let each = given.get("speeds").split(|c: char| c.is_whitespace() || c == ';');
        return each
            .filter(|one| !one.is_empty())
            .map(|one| read::count(one, SPINDLE).map_err(|e| ("speeds", e)))
            .collect();
    }
    let machine = match doing {
        Doing::Turning => Stock::LatheSpeeds,
        Doing::Drilling | Doing::Reaming => Stock::DrillSpeeds,
        Doing::Milling => Stock::MillSpeeds,
    };
    let speeds = lists::numbers(given.fields, machine);
    Ok(speeds.iter().filter_map(|speed| u32::try_from(speed.floor()).ok()).collect())
}

fn table(asked: &Speeds, turns: &Turns) -> Result<Option<Table>, Error> {
    let mut rows = Vec::new();
    for &rpm in asked.owned {
        let one = asked.owned(rpm, (turns.least, turns.greatest))?;
        rows.push(vec![
            Value::Count(rpm.into()),
            Value::Text(says::cuts(one.cuts.value)),
            Value::Text(says::lies(one.at).to_owned()),
        ]);
    }
    let head = &[("rpm", says::RPM), ("cuts", says::CUTS), ("lies", says::LIES)];
    Ok((!rows.is_empty()).then_some(Table { key: "speeds", caption: says::OF_YOURS, head, rows }))
}

/// A scale of turns from nought: the band, the machine's speeds as marks.
fn drawing(asked: &Speeds, turns: &Turns, title: &str) -> Markup {
    let (least, greatest) = (turns.least.value, turns.greatest.value);
    let owned = asked.owned.iter().map(|rpm| f64::from(*rpm));
    let most = owned.filter(|rpm| *rpm <= greatest * 3.0).fold(greatest * 1.3, f64::max);
    let at = |rpm: f64| rpm / most * 100.0;
    let mut sketch = Sketch::default()
        .line("o", &[(0.0, 0.0), (100.0, 0.0)])
        .rect("a w", (at(least), 0.0), (at(greatest).max(at(least) + 0.5), 14.0))
        .label(
            "c",
            ((at(least) + at(greatest)) / 2.0, 20.0),
            &says::band(turns.least, turns.greatest),
        )
        .label("l", (0.0, -14.0), "0");
    for &rpm in asked.owned.iter().filter(|rpm| f64::from(**rpm) <= most) {
        let set = turns.set.is_some_and(|set| set.rpm == rpm && set.at != At::Above);
        let x = at(f64::from(rpm));
        sketch = sketch.line(if set { "a w" } else { "o" }, &[(x, -6.0), (x, 6.0)]);
        if set {
            sketch = sketch.label("n", (x, -14.0), &rpm.to_string());
        }
    }
    sketch.markup(title)
}
