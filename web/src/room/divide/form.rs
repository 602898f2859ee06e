//! The asking side: kind of division, its fields, the job's chips, what is owned.
use super::ask::{self, Kind};
use crate::fields::Fields;
use crate::owned::{self, Entry};
use crate::pieces::{self, Field, error_of, field, input, segmented};
use crate::words::{self, errors::said};
use handturn::Error;
use handturn::head::Head;
use maud::{Markup, html};

/// Wheels of the demonstration job, a bronze astronomical clock.
const CLOCK: [u32; 6] = [127, 223, 64, 38, 48, 365];

/// Marks of its calendar ring.
const RING: &str = "365";

/// The whole asking side; `wrong` is the field that cannot be read.
pub(super) fn section(
    fields: &Fields,
    head: &Head,
    wheels: &[u32],
    wrong: Option<&(&'static str, Error)>,
) -> Markup {
    let kind = Kind::chosen(fields);
    let form = Form { fields, wheels, wrong };
    html! {
        section.ask aria-label=(words::WHAT_TO_DIVIDE) {
            h1 id="divide-title" tabindex="-1" { (words::DIVIDE) }
            (segmented("kind", words::KIND_OF_DIVISION, kind.value(), &[
                ("parts", words::PARTS), ("angle", words::ANGLE), ("list", words::LIST), ("dial", words::DIAL),
            ]))
            div id=(["ask-", kind.value()].concat()) .field-set {
                @match kind {
                    Kind::Parts => (form.parts()),
                    Kind::Angle => (form.angle()),
                    Kind::List => (form.list()),
                    Kind::Dial => (form.dial()),
                }
            }
            (owned_strip(head))
        }
    }
}

struct Form<'a> {
    fields: &'a Fields,
    /// Wheels of the open card.
    wheels: &'a [u32],
    wrong: Option<&'a (&'static str, Error)>,
}

impl<'a> Form<'a> {
    fn field(&self, name: &'a str, label: &'a str, keys: &'a str) -> Field<'a> {
        let value = ask::typed(self.fields, name);
        let error = self.wrong.filter(|(wrong, _)| *wrong == name);
        let error = error.map(|(_, error)| said(error, self.fields.follow(value)));
        Field { name, label, value, keys, error }
    }

    fn parts(&self) -> Markup {
        let parts = self.field("parts", words::EQUAL_PARTS, "numeric");
        let every = self.field("every", words::EVERY_NTH, "numeric");
        let own = crate::card::is_open(self.fields);
        let wheels = if own { self.wheels } else { &CLOCK };
        html! {
            div {
                label.lab for="parts" { (parts.label) }
                div.num.bad[parts.error.is_some()] {
                    button type="button" data-do="step" data-value="down" aria-label=(words::ONE_FEWER) { "−" }
                    (input(&parts))
                    button type="button" data-do="step" data-value="up" aria-label=(words::ONE_MORE) { "+" }
                }
                (error_of(&parts))
            }
            @if !wheels.is_empty() {
                div {
                    p.lab id="job" { (if own { words::ON_THE_CARD } else { words::IN_THIS_JOB }) }
                    div.chips role="group" aria-labelledby="job" {
                        @for wheel in wheels {
                            @let wheel = wheel.to_string();
                            button.chip type="button" data-do="parts" data-value=(wheel)
                                aria-pressed=(ask::last_typed(self.fields, "parts").trim() == wheel) { (wheel) }
                        }
                    }
                }
            }
            details id="order" open[ask::followed(self.fields, "every").trim() != "1"] {
                summary { (words::CUTTING_ORDER) }
                (field(&every))
                p.why { (words::EVERY_WHY) }
                @if every.error.is_none() { (self.shift()) }
            }
        }
    }

    /// Where a cutting order cannot reach every part in one go round, it says so.
    fn shift(&self) -> Markup {
        let Ok(handturn::divide::Asked::Parts(parts)) = ask::asked(self.fields) else {
            return html! {};
        };
        let shared = handturn::number::gcd(u64::from(parts.every), u64::from(parts.count));
        html! {
            @if shared > 1 {
                p.why { (words::order_shifts(parts.every, parts.count, shared)) }
            }
        }
    }

    fn angle(&self) -> Markup {
        html! {
            (field(&self.field("angle", words::ANGLE_TO_TURN, "text")))
            p.why { (self.read_as().unwrap_or_else(|| words::ANGLE_HINT.to_owned())) }
            (field(&self.field("times", words::TIMES, "numeric")))
        }
    }

    /// How the angle typed was read.
    fn read_as(&self) -> Option<String> {
        let angle = handturn::measure::read::angle(ask::followed(self.fields, "angle")).ok()?;
        Some(words::read_as_angle(angle))
    }

    fn list(&self) -> Markup {
        let list = self.field("list", words::ANGLE_LIST, "text");
        html! {
            div.field {
                label.lab for="list" { (list.label) }
                textarea id="list" name="list" rows="7" spellcheck="false" autocomplete="off"
                    aria-invalid=[list.error.as_ref().map(|_| "true")]
                    aria-describedby=[list.error.as_ref().map(|_| "list-error")] { (list.value) }
                (error_of(&list))
            }
            p.why { (words::LIST_HINT) }
        }
    }

    fn dial(&self) -> Markup {
        let sense = ask::typed(self.fields, "sense");
        html! {
            (field(&self.field("marks", words::MARKS_IN_A_TURN, "numeric")))
            @if !crate::card::is_open(self.fields) {
                div {
                    p.lab id="ring" { (words::dial::THE_RING) }
                    div.chips role="group" aria-labelledby="ring" {
                        button.chip type="button" data-do="di-marks" data-value=(RING)
                            aria-pressed=(ask::last_typed(self.fields, "marks").trim() == RING) { (RING) }
                    }
                }
            }
            div.pair {
                (field(&self.field("long", words::LONG_MARK, "numeric")))
                (field(&self.field("middle", words::MIDDLE_MARK, "numeric")))
                (field(&self.field("number", words::NUMBER_EVERY, "numeric")))
                (field(&self.field("climb", words::NUMBERS_CLIMB, "numeric")))
            }
            button.btn type="button" data-do="di-show" { (words::dial::SHOW_DIAL) }
            details id="lines" {
                summary { (words::NUMBERS_AND_LINES) }
                p.lab { (words::LINE_LENGTHS) }
                div.trio {
                    (field(&self.field("long-mm", words::LONG, "decimal")))
                    (field(&self.field("middle-mm", words::MIDDLE, "decimal")))
                    (field(&self.field("short-mm", words::SHORT, "decimal")))
                }
                p.lab { (words::CLIMB) }
                (segmented("sense", words::CLIMB, sense, &[
                    ("clockwise", words::CLOCKWISE), ("anticlockwise", words::ANTICLOCKWISE),
                ]))
                label.tick {
                    input type="checkbox" name="zero" checked[ask::typed(self.fields, "zero") == "on"];
                    (words::ZERO_MARK)
                }
            }
        }
    }
}

/// What is owned, in four facts; each opens the Shop where it stands.
fn owned_strip(head: &Head) -> Markup {
    let circles: Vec<u16> =
        head.plates.iter().flat_map(|p| p.circles.iter().map(|c| c.holes)).collect();
    let gears: u32 = head.gears.iter().map(|gear| u32::from(gear.count)).sum();
    let span = |least: Option<u16>, most: Option<u16>| match (least, most) {
        (Some(least), Some(most)) => words::from_to(least, most),
        _ => words::NONE_YET.to_owned(),
    };
    let teeth = || head.gears.iter().map(|gear| gear.teeth);
    let diameter = head.work_diameter;
    let inches = diameter.inches().map(|inches| words::decimal(inches, 3)).unwrap_or_default();
    let level = if head.tilted { words::TILTED } else { words::LEVEL };
    let (least, most) = (circles.iter().min().copied(), circles.iter().max().copied());
    let owned = if gears == 0 { words::NONE.to_owned() } else { gears.to_string() };
    let millimetres = words::decimal(diameter.mm(), 3) + " mm";
    let facts = [
        (Entry::Ratio, words::HEAD, words::ratio(head.ratio), level.to_owned()),
        (Entry::Plates, words::PLATES, words::circles(circles.len()), span(least, most)),
        (Entry::Gears, words::GEARS, owned, span(teeth().min(), teeth().max())),
        (Entry::WorkDiameter, words::ERROR_AT, millimetres, inches + " in"),
    ];
    html! {
        div.own role="group" aria-label=(words::OWNED) {
            @for (entry, name, value, more) in facts {
                button type="button" data-do="own" data-value=(entry.name()) {
                    span.lab { (name) } " " b { (value) } " " span { (more) }
                }
            }
        }
    }
}

/// The one question of a first start.
pub(super) fn first_start(fields: &Fields) -> Markup {
    let typed = fields.get("try-plates");
    let wrong = handturn::head::read::plates(typed).err().filter(|_| !typed.trim().is_empty());
    html! {
        div.first.plate id="first" {
            h2 id="answer" tabindex="-1" aria-live="polite" { (words::WHICH_PLATES) }
            div.stack {
                button.btn.go type="button" data-do="plates" data-value="15" { (words::PLATES_15) }
                button.btn type="button" data-do="plates" data-value="24" { (words::PLATES_24) }
                button.btn type="button" data-do="plates" data-value="mine" aria-expanded=(fields.has("try-plates")) { (words::TYPE_MINE) }
            }
            @if fields.has("try-plates") {
                (field(&Field {
                    name: "try-plates", label: words::MY_PLATES, value: typed, keys: "text",
                    error: wrong.map(|error| said(&error, typed)),
                }))
                p.why { (words::MY_PLATES_HINT) }
                div.stack { button.btn.go type="button" data-do="plates" data-value="typed" { (words::USE_THESE) } }
            }
            p.why { (words::TAKEN_FOR_HEAD) }
        }
    }
}

/// An offer where differential is left out for want of gears.
pub(super) fn usual_gears() -> Markup {
    html! {
        button.btn type="button" data-do="gears" { (words::USUAL_GEARS) }
        span.why { " " (pieces::spaced(owned::GEARS_USUAL)) }
    }
}
