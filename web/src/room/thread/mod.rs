//! Thread: from a name on a drawing, or a screw in the hand, to the last measurement,
//! in four steps: size it, cut it, gear it, measure it.
mod ask;
mod cut;
mod entry;
mod extra;
mod form;
mod gear;
mod job;
mod jobs;
mod measure;
mod passes;
mod size;
mod table;
#[cfg(test)]
mod tests;
mod which;

pub use entry::entry;
pub use jobs::Jobs;
pub(crate) use jobs::Note;

use super::steps::{Names, Tabs};
use crate::fields::Fields;
use crate::seam::{Effect, Event};
use crate::words::thread as words;
use ask::Asked;
use handturn::measure::read;
use maud::{Markup, html};

const TABS: Tabs = Tabs {
    room: "th-",
    steps: &[
        ("size", words::SIZE_IT),
        ("cut", words::CUT_IT),
        ("gear", words::GEAR_IT),
        ("measure", words::MEASURE_IT),
    ],
};

/// The room as markup.
#[must_use]
pub fn screen(fields: &Fields, jobs: &Jobs) -> Markup {
    let asked = ask::asked(fields);
    let stale = asked.is_err();
    let wrong = asked.as_ref().err().copied();
    let shown = asked.ok().or_else(|| ask::last_good(fields));
    let tab = TABS.open(fields);
    let entry = html! {
        div.entry-side id="th-entry" {
            h1 id="thread-title" tabindex="-1" { (words::THREAD) }
            (form::section(fields, shown.as_ref(), wrong.as_ref()))
        }
    };
    // While passes are under way the next one comes first.
    let at_work = tab == "cut" && jobs.open.is_some();
    html! {
        main id="main" {
            div.cols.steps {
                @if !at_work { (entry) }
                div.ans id="th-answer" { (steps(fields, jobs, tab, shown.as_ref(), stale)) }
                @if at_work { (entry) }
            }
        }
    }
}

/// The four steps as tabs, and the one chosen.
fn steps(fields: &Fields, jobs: &Jobs, tab: &str, shown: Option<&Asked>, stale: bool) -> Markup {
    let under_way = jobs.open.as_ref().filter(|_| tab == "cut").map(|open| open.job.title.clone());
    let heading = under_way
        .or_else(|| shown.map(|shown| words::heading(&shown.name, shown.thread.hand, stale)));
    let heading = heading.unwrap_or_default();
    let panel = shown.map(|shown| panel(fields, jobs, tab, shown));
    TABS.around(fields, &heading, panel.as_ref())
}

fn panel(fields: &Fields, jobs: &Jobs, tab: &str, shown: &Asked) -> Markup {
    match tab {
        "cut" => cut::panel(fields, jobs, shown),
        "gear" => gear::panel(fields, shown),
        "measure" => measure::panel(fields, jobs, shown),
        _ => size::panel(fields, shown),
    }
}

/// What an event does to this room's fields; none when it is not its own.
pub fn event(fields: &mut Fields, jobs: &mut Jobs, event: Event) -> Option<Vec<Effect>> {
    if event.kind == "key" {
        return (fields.get("room") == "thread").then(|| key(fields, jobs, event));
    }
    if !event.name.starts_with("th-") || !matches!(event.kind, "type" | "press") {
        return None;
    }
    match (event.kind, event.name) {
        ("press", "th-job-begin") => {
            let job = shown(fields).and_then(|shown| cut::job(fields, &shown));
            return Some(job.map_or_else(Vec::new, |job| jobs.begin(job, event.at_ms)));
        }
        ("press", "th-measured") => {
            let typed = fields.get("th-so-far").to_owned();
            let measured = read::length(&typed, read::Unit::Mm).ok();
            let effects = jobs.measured(measured, event.at_ms);
            if !effects.is_empty() {
                fields.forget("th-so-far");
            }
            return Some(effects);
        }
        ("press", name) if name.starts_with("th-job-") => return jobs.press(&event),
        // A reading goes over to the passes under way.
        ("press", "th-so-far") => {
            fields.set("th-so-far", event.value);
            fields.set("th-tab", "cut");
            return Some(vec![Effect::Focus("th-so-far".to_owned())]);
        }
        // A worm's lead: how it is given, that figure, the starts; or a module alone.
        ("press", "th-worm") => {
            let mut words = event.value.rsplit(' ');
            let (last, size, kind) = (words.next(), words.next(), words.next());
            let kind = kind.unwrap_or("module");
            let (size, starts) =
                size.map_or((event.value, "1"), |size| (size, last.unwrap_or("1")));
            for (name, value) in [
                ("room", "thread"),
                ("th-lead", kind),
                (gear::worm_size(kind), size),
                ("th-worm-starts", starts),
                ("th-tab", "gear"),
            ] {
                fields.set(name, value);
            }
            return Some(vec![Effect::Focus("th-tab-gear".to_owned())]);
        }
        _ => fields.set(event.name, event.value),
    }
    match event.name {
        "th-name" => {
            fields.set("th-how", "name");
            fields.forget("th-pick");
            ask::take_class(fields);
        }
        "th-side" => fields.forget("th-class"),
        _ => {}
    }
    // Another question: what was chosen of the old answer goes.
    if !matches!(event.name, "th-train" | "th-six" | "th-tab") {
        fields.forget("th-train");
        fields.forget("th-six");
    }
    // The fields that were typed into are kept where they read, with those beside them.
    let changes = |names: &Names| names.iter().any(|(name, _)| *name == event.name);
    if changes(&ask::NAMES) {
        ask::keep_good(fields);
    } else if changes(&which::NAMES) {
        which::keep_good(fields);
    } else if let Some(shown) = shown(fields) {
        match () {
            () if changes(&size::NAMES) => size::keep_good(fields, &shown),
            () if changes(&cut::NAMES) => cut::keep_good(fields, &shown),
            () if changes(&gear::NAMES) => gear::keep_good(fields, &shown),
            () if changes(&measure::NAMES) => measure::keep_good(fields, &shown),
            () => {}
        }
    }
    Some(Vec::new())
}

/// The thread in force: as typed, or the last one that read.
fn shown(fields: &Fields) -> Option<Asked> {
    ask::asked(fields).ok().or_else(|| ask::last_good(fields))
}

/// Ctrl+Z takes the last tick back; the rest is the tabs' own.
fn key(fields: &mut Fields, jobs: &mut Jobs, event: Event) -> Vec<Effect> {
    let in_field = event.value.starts_with("field ");
    if event.name == "Undo" && !in_field && TABS.open(fields) == "cut" && jobs.open.is_some() {
        let mut effects = jobs.undo(event.at_ms);
        effects.push(Effect::Used);
        return effects;
    }
    TABS.key(fields, &event)
}
