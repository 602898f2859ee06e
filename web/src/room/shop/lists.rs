//! What is owned besides heads, group by group: typed, read back, and what is wrong.
use crate::fields::Fields;
use crate::owned::lists::{self, Kind, Stock};
use crate::pieces::{Field, error_of, field, segmented};
use crate::seam::Event;
use crate::words::shop_lists as words;
use maud::{Markup, html};

/// The list that a usual set was added to, and what it held before.
const BEFORE: &str = "shop-list-before";

/// What an event does to the lists; false when it is none of their own.
pub(super) fn event(fields: &mut Fields, event: &Event) -> bool {
    let stock = Stock::ALL.into_iter().find(|stock| stock.name() == event.name);
    match (event.kind, event.name, stock) {
        ("type" | "press", _, Some(stock)) => {
            fields.forget(BEFORE);
            lists::set(fields, stock, event.value);
        }
        ("press", "shop-usual", _) => add(fields, event.value),
        ("press", "shop-list-undo", _) => {
            let before = fields.get(BEFORE).to_owned();
            fields.forget(BEFORE);
            let before = before.split_once('\n');
            if let Some((stock, text)) =
                before.and_then(|(key, text)| Some((Stock::of_key(key)?, text)))
            {
                lists::set(fields, stock, text);
            }
        }
        _ => return false,
    }
    true
}

/// One tap adds a usual set to a list: `drills 0`.
fn add(fields: &mut Fields, which: &str) {
    let Some((key, place)) = which.split_once(' ') else { return };
    let Some(stock) = Stock::of_key(key) else { return };
    let place = place.parse().unwrap_or(usize::MAX);
    let Some((_, set)) = words::usual(stock).get(place) else { return };
    let before = lists::typed(fields, stock).to_owned();
    let between = match (before.trim().is_empty(), stock.kind()) {
        (true, _) => "",
        (false, Kind::Threads) => "\n",
        (false, _) => " ",
    };
    let text = [before.trim_end(), between, set].concat();
    fields.set(BEFORE, &[key, "\n", &before].concat());
    lists::set(fields, stock, &text);
}

/// Every group of lists, folded away.
pub(super) fn section(fields: &Fields) -> Markup {
    let groups = groups();
    html! { div.stocks {
        @for (title, id, lists) in &groups {
            details.stock id=(id) {
                summary id=([*id, "-title"].concat()) { h2 { (title) } span { (held(fields, lists)) } }
                div.lists {
                    @for stock in lists { (list(fields, *stock)) }
                    @if *id != "shop-lathe" && *id != "shop-mill" { p.why.hint { (words::PARTED) } }
                }
            }
        }
    } }
}

/// Ways to every group.
pub(super) fn jumps() -> Markup {
    html! {
        div.chips.wide role="group" aria-label=(words::JUMP) {
            button.chip type="button" data-do="own" data-value="shop-heads-title" { (words::HEADS) }
            @for (title, id, _) in groups() {
                button.chip type="button" data-do="own" data-value=([id, "-title"].concat()) { (title) }
            }
        }
    }
}

type Group = (&'static str, &'static str, Vec<Stock>);

fn groups() -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for stock in Stock::ALL {
        if let Some((title, id)) = words::group(stock) {
            groups.push((title, id, Vec::new()));
        }
        if let Some((.., lists)) = groups.last_mut() {
            lists.push(stock);
        }
    }
    groups
}

/// What a group holds, in a line.
fn held(fields: &Fields, group: &[Stock]) -> String {
    let told = |stock: &&Stock| {
        matches!(
            stock.kind(),
            Kind::Sizes(_)
                | Kind::Drills
                | Kind::Gears
                | Kind::Threads
                | Kind::Cutters
                | Kind::Numbers(_)
        )
    };
    let held = group.iter().filter(told).map(|stock| words::summary(fields, *stock).0);
    let held: Vec<String> = held.filter(|held| held != crate::words::NONE).collect();
    if held.is_empty() { words::NOTHING_YET.to_owned() } else { held.join(" · ") }
}

fn list(fields: &Fields, stock: Stock) -> Markup {
    let typed = lists::typed(fields, stock);
    let wrong = lists::wrong(fields, stock);
    let error = wrong.map(|error| words::said(stock, &error, typed));
    let (name, label) = (stock.name(), words::label(stock));
    let long = matches!(
        stock.kind(),
        Kind::Sizes(_)
            | Kind::Drills
            | Kind::Threads
            | Kind::Cutters
            | Kind::Gears
            | Kind::Numbers(_)
    );
    let entry = Field { name, label, value: typed, keys: "text", error };
    let hint = words::hint(stock);
    let before = fields.get(BEFORE).split_once('\n').is_some_and(|(key, _)| key == stock.key());
    html! {
        div.entry {
            @if let Kind::Choice(_) = stock.kind() {
                p.lab aria-hidden="true" { (label) }
                (segmented(name, label, lists::text(fields, stock), words::choices(stock)))
            } @else if long {
                (area(&entry, 2))
            } @else {
                (field(&entry))
            }
            @if wrong.is_some() {
                p.why.last-good { (words::last_good(lists::text(fields, stock))) }
            } @else if let Some(read) = words::read_as(fields, stock) {
                p.why.read-as { (read) }
            }
            @if !hint.is_empty() { p.why.hint { (hint) } }
            @if !words::usual(stock).is_empty() {
                div.chips role="group" aria-label=([words::ADD_USUAL, ": ", label].concat()) {
                    @for (place, (set, _)) in words::usual(stock).iter().enumerate() {
                        button.chip type="button" data-do="shop-usual" data-value=([stock.key(), " ", &place.to_string()].concat()) { "+ " (set) }
                    }
                    @if before { button.chip type="button" data-do="shop-list-undo" { (crate::words::shop::UNDO) } }
                }
            }
        }
    }
}

/// A field of several lines.
pub(super) fn area(field: &Field, rows: u8) -> Markup {
    let wrong = field.error.as_ref();
    html! {
        div.field {
            label.lab for=(field.name) { (field.label) }
            textarea id=(field.name) name=(field.name) rows=(rows) spellcheck="false" autocomplete="off" autocapitalize="off"
                aria-invalid=[wrong.map(|_| "true")] aria-describedby=[wrong.map(|_| [field.name, "-error"].concat())] { (field.value) }
            (error_of(field))
        }
    }
}
