//! What earlier versions kept in fields of Thread and Gear goes into the Shop's lists.
use super::lists::{Stock, set, typed};
use super::{exact, mm};
use crate::fields::Fields;
use handturn::bounds;
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};

/// Earlier names of what is one list now.
const NAMES: [(&str, Stock); 12] = [
    ("th-screw", Stock::LatheScrew),
    ("th-screw-hand", Stock::ScrewHand),
    ("th-gears", Stock::LatheGears),
    ("th-head", Stock::LatheHead),
    ("th-gearbox", Stock::Gearbox),
    ("th-distance", Stock::StudDistance),
    ("th-margin", Stock::StudMargin),
    ("th-idlers", Stock::Idlers),
    ("th-four", Stock::FourGears),
    ("th-drive", Stock::Drive),
    ("th-wires", Stock::Wires),
    ("ge-pins", Stock::Pins),
];

/// Takes over what stands under earlier names, unless the list was typed since.
pub fn take_over(fields: &mut Fields) {
    for (name, stock) in NAMES {
        // What read well comes first, so that it is in force where the rest does not.
        for name in [&*["good-", name].concat(), name] {
            if let Some(text) = taken(fields, name) {
                let text = match (stock, &*text) {
                    (Stock::FourGears, "on") => "yes",
                    (Stock::FourGears, "") => "no",
                    (_, text) => text,
                };
                take(fields, name, stock, text);
            }
        }
    }
    slides(fields);
    table(fields);
    for good in ["good-", ""] {
        let name = |of: &str| [good, of].concat();
        let (sets, loose) = (taken(fields, &name("th-sets")), taken(fields, &name("th-drills")));
        if sets.is_some() || loose.is_some() {
            let sets = sets.unwrap_or_else(|| "metric".to_owned());
            let text = [&*sets, " ", &loose.unwrap_or_default()].concat();
            take(fields, good, Stock::Drills, text.trim());
        }
    }
}

/// One mark's worth and the marks once round are a screw with its dial now.
fn slides(fields: &mut Fields) {
    let names = ["th-unit", "th-division", "th-marks", "th-reads"];
    let [unit, division, marks, reads] = names.map(|name| {
        taken(fields, &["good-", name].concat());
        taken(fields, name)
    });
    if let Some(reads) = reads {
        set(fields, Stock::CrossReads, &reads);
    }
    if unit.is_none() && division.is_none() && marks.is_none() {
        return;
    }
    let inch = unit.as_deref() == Some("inch");
    let usual = if inch { "0.001" } else { "0.02" };
    let division = division.filter(|text| !text.trim().is_empty());
    let marks = marks.unwrap_or_else(|| "100".to_owned());
    let unit = if inch { Unit::Inch } else { Unit::Mm };
    let Some(turn) = turn(division.as_deref().unwrap_or(usual), &marks, unit) else { return };
    let lead = match turn.inches() {
        Ok(inches) if inch => exact(inches) + "in",
        _ => mm(turn),
    };
    for stock in [Stock::TopSlide, Stock::CrossSlide] {
        set(fields, stock, &[&*lead, " / ", marks.trim()].concat());
    }
}

/// What one turn moves, of a dial of so many marks.
fn turn(division: &str, marks: &str, unit: Unit) -> Option<Length> {
    let mark = read::length(division, unit).ok()?;
    let marks = read::count(marks, bounds::SLIDE_MARKS).ok()?;
    mark.mm().times(i64::from(marks)).ok().map(Length::from_mm)
}

/// The table's screw, as Gear kept it, and its dial, as racks did.
fn table(fields: &mut Fields) {
    let [division, marks] = ["ge-division", "ge-marks"].map(|name| {
        taken(fields, &["good-", name].concat());
        taken(fields, name)
    });
    let dialled = division.is_some() || marks.is_some();
    if dialled && !fields.has(Stock::MillTable.name()) {
        let division = division.unwrap_or_else(|| "0.02".to_owned());
        let marks = marks.unwrap_or_else(|| "250".to_owned());
        if let Some(turn) = turn(&division, &marks, Unit::Mm) {
            set(fields, Stock::MillTable, &[&*mm(turn), " / ", marks.trim(), " / 0.2"].concat());
        }
    }
    taken(fields, "good-ge-screw");
    if let Some(pitch) = taken(fields, "ge-screw") {
        set(fields, Stock::MillTable, &[pitch.trim(), " / 100 / 0.2"].concat());
    }
}

/// The last good text alone makes no list that was typed since give way.
fn take(fields: &mut Fields, from: &str, stock: Stock, text: &str) {
    let since = fields.has(stock.name()) && from.starts_with("good-");
    if !since && typed(fields, stock) != text {
        set(fields, stock, text);
    }
}

/// What stood under `name`, which is forgotten.
fn taken(fields: &mut Fields, name: &str) -> Option<String> {
    let text = fields.has(name).then(|| fields.get(name).to_owned());
    fields.forget(name);
    text
}

#[cfg(test)]
mod tests {
    use super::super::lists::text;
    use super::*;

    #[test]
    fn what_was_typed_in_other_rooms_is_in_the_shop() {
        let mut fields = Fields::default();
        for (name, value) in [
            ("th-screw", "6 mm"),
            ("good-th-screw", "6 mm"),
            ("th-gears", "20 30 x"),
            ("good-th-gears", "20 30"),
            ("th-four", ""),
            ("th-wires", "0.5 1"),
            ("th-sets", "number letter"),
            ("th-drills", "5.25 0.21in"),
            ("th-percent", "75"),
            ("th-unit", "inch"),
            ("th-marks", "125"),
            ("good-th-marks", "100"),
            ("th-reads", "diameter"),
            ("ge-screw", "4 tpi"),
        ] {
            fields.set(name, value);
        }
        take_over(&mut fields);
        assert_eq!(text(&fields, Stock::LatheScrew), "6 mm");
        assert_eq!(typed(&fields, Stock::LatheGears), "20 30 x");
        assert_eq!(text(&fields, Stock::LatheGears), "20 30");
        assert_eq!(text(&fields, Stock::FourGears), "no");
        assert_eq!(text(&fields, Stock::Wires), "0.5 1");
        assert_eq!(text(&fields, Stock::Drills), "number letter 5.25 0.21in");
        assert_eq!(text(&fields, Stock::TopSlide), "0.125in / 125");
        assert_eq!(text(&fields, Stock::CrossReads), "diameter");
        assert_eq!(text(&fields, Stock::MillTable), "4 tpi / 100 / 0.2");
        let left: Vec<&str> =
            fields.iter().map(|(name, _)| name).filter(|name| !name.contains("own-")).collect();
        assert_eq!(left, ["th-percent"]);
        let once = fields.clone();
        take_over(&mut fields);
        assert_eq!(fields, once);
    }

    #[test]
    fn the_dial_that_racks_were_cut_by_is_the_tables() {
        let table = |typed: &[(&str, &str)]| {
            let mut fields = Fields::default();
            typed.iter().for_each(|(name, value)| fields.set(name, value));
            take_over(&mut fields);
            assert!(!fields.iter().any(|(name, _)| name.contains("ge-")));
            text(&fields, Stock::MillTable).to_owned()
        };
        assert_eq!(table(&[("ge-division", "0.05"), ("ge-marks", "80")]), "4 mm / 80 / 0.2");
        assert_eq!(table(&[("ge-marks", "200"), ("good-ge-marks", "200")]), "4 mm / 200 / 0.2");
        let inches = table(&[("ge-division", "0.001in"), ("ge-marks", "125")]);
        assert_eq!(inches, "3.175 mm / 125 / 0.2");
        // What was never typed there, what does not read, and a screw typed since.
        let usual = Stock::MillTable.default();
        assert_eq!(table(&[("good-ge-division", "0.02"), ("good-ge-marks", "250")]), usual);
        assert_eq!(table(&[("ge-division", "x")]), usual);
        let since = [("own-mill-table", "3 / 60"), ("ge-division", "0.05")];
        assert_eq!(table(&since), "3 / 60");
    }

    #[test]
    fn a_list_typed_since_stays() {
        let mut fields = Fields::default();
        fields.set("good-th-wires", "0.5");
        set(&mut fields, Stock::Wires, "0.7");
        take_over(&mut fields);
        assert_eq!(text(&fields, Stock::Wires), "0.7");
    }
}
