//! A chain of lengths with their tolerances.
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{
    Answer, Entry, Given, Group, Kind, Sum, Table, Value, about, figure,
};
use crate::room::steps::Wrong;
use crate::words::bench::chain as says;
use handturn::bench::chain::{Link, Total, read, sum};
use handturn::bench::fit::Limits;
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "chain",
    group: Group::Fit,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 3v18M2 7h14M16 4v6M16 13H6M6 10v6M6 18h7M13 15v6",
    entries: &[
        Entry {
            kind: Kind::Lines,
            ..Entry::text("lengths", says::LENGTHS, "40 ±0.05\n-8 0 -0.1\n-8 0 -0.1\n-23.9 ±0.02")
        },
        Entry::text("least", says::LEAST, ""),
        Entry::text("most", says::MOST, ""),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let at = |error: Error| about(error, &[(Of::Chain, "lengths")]);
    let links = read(given.get("lengths")).map_err(at)?;
    let total = sum(&links).map_err(at)?;
    let far = |mm| Length::from_mm(Fraction::whole(mm));
    let least = given.length_if("least", Of::Chain)?;
    let most = given.length_if("most", Of::Chain)?;
    let mut notes = Vec::new();
    if least.is_some() || most.is_some() {
        let wanted = Limits {
            least: least.unwrap_or_else(|| far(-1_000_000)),
            most: most.unwrap_or_else(|| far(1_000_000)),
        };
        notes.push(says::keeps(total.keeps(wanted)).to_owned());
    }
    let share = |link: &Link| total.share(*link).map_err(at);
    let mut rows = Vec::new();
    for link in &*links {
        rows.push(vec![
            Value::Text(says::link(link)),
            Value::Length(link.off.least),
            Value::Length(link.off.most),
            Value::Text(says::share(share(link)?)),
        ]);
    }
    let [likely_least, likely_most] = total.likely;
    let mut figures = vec![
        figure("least", says::WORST_LEAST, Value::Length(total.worst.least)),
        figure("most", says::WORST_MOST, Value::Length(total.worst.most)),
        figure("nominal", says::NOMINAL, Value::Length(total.nominal)),
        figure("middle", says::MIDDLE, Value::Length(total.middle)),
        figure("likely_least", says::LIKELY_LEAST, Value::About(likely_least)),
        figure("likely_most", says::LIKELY_MOST, Value::About(likely_most)),
    ];
    if let Some(link) = links.get(usize::from(total.most)) {
        let most = says::gives_most(link, share(link)?);
        figures.push(figure("most_from", says::MOST_FROM, Value::Text(most)));
    }
    let title = says::title(links.len(), &total);
    Ok(Answer {
        figures,
        tables: vec![Table {
            key: "lengths",
            caption: says::TABLE,
            head: &[
                ("length", says::LENGTH),
                ("lower", says::LOWER),
                ("upper", says::UPPER),
                ("share", says::SHARE),
            ],
            rows,
        }],
        working: says::working(&links, &total),
        notes,
        drawing: drawing(&links, &total, &says::picture(&title)),
        title,
    })
}

/// Each length on a line of its own, from where the one before ends; the sum under them.
fn drawing(links: &[Link], total: &Total, name: &str) -> Markup {
    let (mut x, mut low, mut high) = (0.0_f64, 0.0_f64, 0.0_f64);
    let mut spans = Vec::new();
    for link in links {
        let long = float::of(link.length.mm());
        let to = if link.minus { x - long } else { x + long };
        spans.push((x, to, says::link(link)));
        (low, high, x) = (low.min(to), high.max(to), to);
    }
    spans.push((0.0, float::of(total.nominal.mm()), says::SUM.to_owned()));
    let step = (high - low).max(1e-6) * 0.11;
    let last = links.len();
    let mut sketch = Sketch::default();
    for (k, (from, to, text)) in spans.iter().enumerate() {
        let y = -step * k as f64;
        let class = if k == last { "a w" } else { "o m" };
        sketch = sketch
            .rect(class, (from.min(*to), y - step * 0.22), (from.max(*to), y + step * 0.22))
            .line("t", &[(*to, y), (*to, y - step)])
            .label("l", (high + step * 0.4, y), text);
    }
    sketch.markup(name)
}
