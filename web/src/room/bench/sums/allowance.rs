//! Fits by the shop's rules.
use super::bars::{Bar, bars};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{allowance as says, fit};
use handturn::Field as Of;
use handturn::bench::shop_fit::{Rule, allowed};
use handturn::number::float;

pub(super) const SUM: Sum = Sum {
    key: "allowance",
    group: Group::Fit,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 7h20v10H2zM6 7v4M10 7v6M14 7v4M18 7v6",
    entries: &[Entry::text("hole", says::HOLE, "20"), Entry::choice("rule", says::RULE, RULES)],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

const RULES: &[(&str, &str)] = &[
    ("running", says::RUNNING),
    ("push", says::PUSH),
    ("drive", says::DRIVE),
    ("force", says::FORCE),
    ("by-inch", says::BY_INCH),
    ("shrink", says::SHRINK),
];

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let hole = given.length("hole", Of::Diameter)?;
    let rules =
        [Rule::Running, Rule::Push, Rule::Drive, Rule::Force, Rule::ForceByInch, Rule::Shrink];
    let every: Vec<(&str, usize)> =
        RULES.iter().enumerate().map(|(k, (key, _))| (*key, k)).collect();
    let k = given.choice("rule", &every)?;
    let found = allowed(rules[k], hole).map_err(|e| about(e, &[(Of::Diameter, "hole")]))?;
    let (label, band) = says::band(&found);
    let title = says::title(hole, RULES[k].1, found.shaft);
    let um = |length: handturn::measure::Length| -1000.0 * float::of(length.mm());
    let bar = Bar {
        name: says::SHAFT,
        low: um(found.play.most),
        high: um(found.play.least),
        class: "a w",
    };
    let mut notes = vec![says::BAND.to_owned(), fit::ENLARGED.to_owned()];
    if rules[k] == Rule::Shrink {
        notes.push(says::FROM_MEMORY.to_owned());
    }
    Ok(Answer {
        figures: vec![
            figure("least", says::FROM, Value::Length(found.shaft.least)),
            figure("most", says::TO, Value::Length(found.shaft.most)),
            figure("band", label, Value::Text(band)),
        ],
        tables: Vec::new(),
        working: says::working(hole, &found),
        notes,
        drawing: bars(&[bar], &fit::at_line(hole), &fit::picture(&title)),
        title,
    })
}
