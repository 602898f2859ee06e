//! Small sums in the package: one function for all, read from the same tables as the page.
//! Fields are given as people type them; figures are told as lengths of threads are.
use super::given::{Given, dotted};
use super::refusal::Refusal;
use super::thread::told::{about, length, list, object, text};
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Entry, Group, Kind, Sum, Table, Value};
use crate::room::bench::sums::EVERY;
use handturn::number::float;

/// The sums there are: what each is called, what it asks.
#[must_use]
pub fn all() -> Given {
    list(EVERY, |sum| {
        object([
            ("sum", text(sum.key)),
            ("group", text(group(sum.group))),
            ("name", text(sum.name)),
            ("about", text(sum.about)),
            ("asks", list(sum.entries, asks)),
        ])
    })
}

const fn group(group: Group) -> &'static str {
    match group {
        Group::Turn => "turn",
        Group::Mill => "mill",
        Group::Fit => "fit",
        Group::Wire => "wire",
    }
}

fn asks(entry: &Entry) -> Given {
    let choices = match entry.kind {
        Kind::Choice(pairs) => list(pairs, |(value, _)| text(value)),
        _ => Given::Nothing,
    };
    object([
        ("key", text(entry.name)),
        ("label", text(entry.label)),
        ("usual", text(entry.default)),
        ("choices", choices),
    ])
}

/// The answer of the sum `name` to what is given by the keys of its entries; `owned` are
/// lists of the Shop by their names.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub fn answer(name: &Given, given: &Given, owned: &Given) -> Result<Given, Refusal> {
    let name = name.text("sum")?;
    let keys: Vec<&str> = EVERY.iter().map(|sum| sum.key).collect();
    let sum = EVERY.iter().copied().find(|sum| sum.key == name);
    let sum = sum.ok_or_else(|| Refusal::unknown("sum", &keys))?;
    let fields = fields(sum, given, owned)?;
    let given = sum.given(&fields, false);
    let answer = (sum.answer)(&given)
        .map_err(|(entry, error)| Refusal::of(entry, &error, given.get(entry)))?;
    let figures = answer.figures.iter().map(|figure| (figure.key.to_owned(), told(&figure.value)));
    let tables = answer.tables.iter().map(|table| (table.key.to_owned(), rows(table)));
    Ok(object([
        ("sum", text(sum.key)),
        ("title", text(&answer.title)),
        ("figures", Given::Object(figures.collect())),
        ("tables", Given::Object(tables.collect())),
        ("working", list(&answer.working, |line| text(line))),
        ("notes", list(&answer.notes, |line| text(line))),
        ("care", text(sum.care)),
        ("source", text(sum.source)),
        ("drawing", Given::Text(answer.drawing.into_string())),
    ]))
}

/// What is given, as the fields of the page.
fn fields(sum: &Sum, given: &Given, owned: &Given) -> Result<Fields, Refusal> {
    let mut fields = Fields::default();
    let known: Vec<&str> = sum.entries.iter().map(|entry| entry.name).collect();
    if *given != Given::Nothing {
        given.only("", &known)?;
    }
    for entry in sum.entries.iter().filter(|entry| given.has(entry.name)) {
        let value = given.get(entry.name).text(entry.name)?;
        if let Kind::Choice(pairs) = entry.kind {
            let choices: Vec<&str> = pairs.iter().map(|(value, _)| *value).collect();
            if !choices.contains(&&*value) {
                return Err(Refusal::unknown(entry.name, &choices));
            }
        }
        fields.set(&sum.field(entry.name), &value);
    }
    if let Given::Object(lists) = owned {
        for (name, list) in lists {
            let at = dotted("owned", name);
            let keys = Stock::ALL.map(Stock::key);
            let stock = Stock::of_key(name).ok_or_else(|| Refusal::unknown(&at, &keys))?;
            let text = list.text(&at)?;
            lists::check(stock, &text).map_err(|error| Refusal::of(&at, &error, &text))?;
            fields.set(stock.name(), &text);
        }
    }
    Ok(fields)
}

fn rows(table: &Table) -> Given {
    list(&table.rows, |row| {
        let cells = table.head.iter().zip(row);
        Given::Object(cells.map(|((key, _), value)| ((*key).to_owned(), told(value))).collect())
    })
}

fn told(value: &Value) -> Given {
    let number = |value: handturn::number::Approx| {
        object([("value", Given::Number(value.value)), ("within", Given::Number(value.bound))])
    };
    match value {
        Value::Length(exact) => length(*exact),
        Value::About(mm) => about(*mm),
        Value::Degrees(approx) => {
            let (value, within) = (Given::Number(approx.value), Given::Number(approx.bound));
            object([("degrees", value), ("within", within)])
        }
        Value::Count(count) => Given::Number(float::of(handturn::number::Fraction::whole(*count))),
        Value::Number { value, .. } => number(*value),
        Value::Text(words) => text(words),
    }
}
