//! Divide: what the drawing asks for in, every way the head can set it out, and
//! one of them open with its drawing, its error and its working.
mod ask;
mod budget;
mod dial;
mod entry;
mod form;
mod panel;
mod paper;
mod plate;
mod same;
mod table;
mod ways;

pub use entry::{asks, entry, owns};

use crate::fields::Fields;
use crate::owned::{self, Entry};
use crate::seam::{Effect, Event};
use crate::words;
use handturn::divide::{Answer, Asked, Kind, Order, Question, Rated, answer};
use handturn::head::Head;
use handturn::plate::Need;
use handturn::run::Frozen;
use maud::{Markup, html};

/// Ways listed of each kind.
const EACH: usize = 6;

/// A question with the head in force and its answer.
struct Worked<'a> {
    fields: &'a Fields,
    question: Question<'a>,
    head: &'a Head,
    answer: Answer<EACH>,
    order: Order,
    /// What a plate must have that would make it exact, where one can be made.
    lack: Option<Need>,
    /// Whether drawings may show what stands round the circle in use.
    wide: bool,
}

/// The room as markup; `wheels` are those of the open card, `wide` where there is room for whole plates.
#[must_use]
pub fn screen(fields: &Fields, wheels: &[u32], wide: bool) -> Markup {
    let head = owned::head(fields);
    let asked = ask::asked(fields);
    let stale = asked.is_err();
    let shown = asked.as_ref().ok().cloned().or_else(|| ask::last_good(fields));
    html! {
        main id="main" {
            div.cols {
                (form::section(fields, &head, wheels, asked.as_ref().err()))
                section.ans aria-label=(words::ANSWER) {
                    @if head.plates.is_empty() && head.handwheel.is_none() {
                        (form::first_start(fields))
                    } @else if let Some(shown) = &shown {
                        @match work_out(fields, shown, &head) {
                            Ok(worked) => (ways::section(&Worked { wide, ..worked }, stale)),
                            Err(error) => h2 id="answer" aria-live="polite" { (words::errors::said(&error, "").wrong) },
                        }
                    }
                    (paper::no_head(fields, shown.as_ref().and_then(|shown| shown.question().parts())))
                }
            }
        }
    }
}

fn work_out<'a>(
    fields: &'a Fields,
    asked: &'a Asked,
    head: &'a Head,
) -> Result<Worked<'a>, handturn::Error> {
    let question = asked.question();
    let order = if fields.get("order") == "quickest" { Order::Quickest } else { Order::Closest };
    let answer = answer(&question, head)?;
    let lack = plate::lack(&question, head);
    Ok(Worked { fields, question, head, answer, order, lack, wide: false })
}

/// What is asked, the head in force, and the way that stands open: what a Run freezes.
#[must_use]
pub fn chosen(fields: &Fields) -> Option<(Asked, Head, Rated)> {
    let (asked, head) = (ask::asked(fields).ok()?, owned::head(fields));
    let rated = *work_out(fields, &asked, &head).ok()?.open()?.1;
    Some((asked, head, rated))
}

/// A Run of a plate that is made, or of the work with it: `which` of its panel's buttons.
#[must_use]
pub fn making(fields: &Fields, which: &str) -> Option<Frozen> {
    let (asked, head) = (ask::asked(fields).ok()?, owned::head(fields));
    plate::frozen(&work_out(fields, &asked, &head).ok()?, &asked, which)
}

impl Worked<'_> {
    /// Whether the plate that is lacking stands open.
    fn makes(&self) -> bool {
        self.lack.is_some() && self.fields.get("way") == plate::KEY
    }

    /// The kind that stands open and the one of its ways that is shown.
    fn open(&self) -> Option<(Kind, &Rated)> {
        let ranked = self.answer.ranked(self.order);
        let wanted = self.fields.get("way");
        let group = match wanted {
            "none" => return None,
            _ if self.makes() => return None,
            _ => ranked.iter().find(|group| words::key(group.kind) == wanted).or(ranked.first()),
        }?;
        let ways = group.ways(self.order);
        let place = self.fields.get("alternative").parse().unwrap_or(0);
        ways.get::<usize>(place).or(ways.first()).map(|rated| (group.kind, rated))
    }
}

/// What an event does to Divide's fields, and what else the browser must do.
pub fn event(fields: &mut Fields, event: Event) -> Vec<Effect> {
    let field = |name: &str| event.value == ["field ", name].concat();
    match (event.kind, event.name) {
        ("type" | "press", name) if name.starts_with("di-") => return dial::event(fields, &event),
        ("type", "try-plates") => fields.set("try-plates", event.value),
        ("type" | "press", name) if name.starts_with("pl-") => return paper::event(fields, &event),
        ("type", name) => {
            fields.set(name, event.value);
            if name != "at" {
                afresh(fields);
            }
        }
        ("press", "kind") => {
            fields.set("kind", event.value);
            afresh(fields);
        }
        ("press", "parts") => {
            fields.set("parts", event.value);
            afresh(fields);
        }
        ("press", "step") => step(fields, event.value == "up"),
        ("key", "ArrowUp" | "held ArrowUp") if field("parts") => {
            step(fields, true);
            return vec![Effect::Used];
        }
        ("key", "ArrowDown" | "held ArrowDown") if field("parts") => {
            step(fields, false);
            return vec![Effect::Used];
        }
        ("press", "order") => {
            fields.set("order", event.value);
            fields.forget("way");
            fields.forget("alternative");
        }
        ("press", "way") => {
            fields.set("way", event.value);
            fields.forget("alternative");
            fields.forget("at");
        }
        ("press", "alternative") => {
            fields.set("alternative", event.value);
            fields.forget("at");
        }
        ("press", "rows") => fields.set("rows", event.value),
        // The button pressed goes: the focus must not go with it.
        ("press", "plates") => {
            plates(fields, event.value);
            return vec![Effect::Focus(
                if fields.has("try-plates") { "try-plates" } else { "answer" }.to_owned(),
            )];
        }
        ("press", "gears") => {
            owned::set(fields, Entry::Gears, owned::GEARS_USUAL);
            return vec![Effect::Focus("answer".to_owned())];
        }
        // Enter keeps the field and has the answer's heading read out again.
        ("key", "Enter") if event.value.starts_with("field ") => {
            let again = if fields.get("said").is_empty() { "\u{200b}" } else { "" };
            fields.set("said", again);
        }
        _ => {}
    }
    Vec::new()
}

/// Another question: what was chosen of the old answer goes.
fn afresh(fields: &mut Fields) {
    for name in ["way", "alternative", "rows", "at"] {
        fields.forget(name);
    }
    ask::keep_good(fields);
}

/// One part more or fewer, from the last number that could be read.
fn step(fields: &mut Fields, up: bool) {
    let bound = handturn::bounds::DIVISIONS;
    let from = handturn::measure::read::count(ask::last_typed(fields, "parts"), bound);
    let Ok(from) = from.map(i64::from) else { return };
    let to = (if up { from + 1 } else { from - 1 })
        .clamp(i64::from(bound.least), i64::from(bound.greatest));
    fields.set("parts", &to.to_string());
    afresh(fields);
}

/// The answer to "Which plates came with the head?".
fn plates(fields: &mut Fields, choice: &str) {
    let text = match choice {
        "15" => owned::PLATES_A,
        "24" => owned::PLATES_B,
        "typed" => fields.get("try-plates"),
        _ => return fields.set("try-plates", ""),
    };
    let text = text.to_owned();
    if handturn::head::read::plates(&text).is_ok() {
        owned::set(fields, Entry::Plates, &text);
        fields.forget("try-plates");
    }
}

#[cfg(test)]
mod plate_tests;
#[cfg(test)]
mod tests;
