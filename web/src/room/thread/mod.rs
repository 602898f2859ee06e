//! Thread: from a name on a drawing, or a screw in the hand, to the last measurement,
//! in four steps: size it, cut it, gear it, measure it.
mod ask;
mod cut;
mod extra;
mod form;
mod gear;
mod job;
mod jobs;
mod lines;
mod measure;
mod passes;
mod pieces;
mod size;
mod table;
#[cfg(test)]
mod tests;
mod which;

pub use jobs::Jobs;
pub(crate) use jobs::Note;

use crate::fields::Fields;
use crate::seam::{Effect, Event};
use crate::words::thread as words;
use ask::Asked;
use handturn::measure::read;
use maud::{Markup, html};

/// The steps, as pressed and as named.
const TABS: [(&str, &str); 4] = [
    ("size", words::SIZE_IT),
    ("cut", words::CUT_IT),
    ("gear", words::GEAR_IT),
    ("measure", words::MEASURE_IT),
];

/// The room as markup.
#[must_use]
pub fn screen(fields: &Fields, jobs: &Jobs) -> Markup {
    let asked = ask::asked(fields);
    let stale = asked.is_err();
    let wrong = asked.as_ref().err().copied();
    let shown = asked.ok().or_else(|| ask::last_good(fields));
    let tab = tab(fields);
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
            div.cols.thread {
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
    html! {
        div.tabs role="tablist" aria-label=(words::STEPS) {
            @for (value, label) in TABS {
                button id=(["th-tab-", value].concat()) type="button" role="tab" data-do="th-tab" data-value=(value)
                    aria-selected=(value == tab) aria-controls="th-panel" tabindex=(if value == tab { "0" } else { "-1" }) { (label) }
            }
        }
        div.panel id="th-panel" role="tabpanel" aria-labelledby=(["th-tab-", tab].concat()) {
            @if let Some(shown) = shown {
                h2 id="answer" tabindex="-1" aria-live="polite" { (heading) (fields.get("th-said")) }
                (panel(fields, jobs, tab, shown))
            }
        }
    }
}

fn panel(fields: &Fields, jobs: &Jobs, tab: &str, shown: &Asked) -> Markup {
    match tab {
        "cut" => cut::panel(fields, jobs, shown),
        "gear" => gear::panel(fields, shown),
        "measure" => measure::panel(fields, jobs, shown),
        _ => size::panel(fields, shown),
    }
}

fn tab(fields: &Fields) -> &str {
    let tab = fields.get("th-tab");
    TABS.iter().find(|(value, _)| *value == tab).map_or("size", |(value, _)| value)
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
        ("press", "th-worm") => {
            for (name, value) in
                [("th-lead", "module"), ("th-module", event.value), ("th-tab", "gear")]
            {
                fields.set(name, value);
            }
            return Some(vec![Effect::Focus("th-tab-gear".to_owned())]);
        }
        ("press", "th-set") => size::toggle(fields, event.value),
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
            () if changes(&size::NAMES) || event.name == "th-set" => {
                size::keep_good(fields, &shown)
            }
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

/// Arrow keys go from step to step; Enter in a field has the answer read out again;
/// Ctrl+Z takes the last tick back.
fn key(fields: &mut Fields, jobs: &mut Jobs, event: Event) -> Vec<Effect> {
    let name = event.name.strip_prefix("held ").unwrap_or(event.name);
    if event.value.starts_with("field ") {
        if name == "Enter" {
            let again = if fields.get("th-said").is_empty() { "\u{200b}" } else { "" };
            fields.set("th-said", again);
        }
        return Vec::new();
    }
    if event.name == "Undo" && tab(fields) == "cut" && jobs.open.is_some() {
        let mut effects = jobs.undo(event.at_ms);
        effects.push(Effect::Used);
        return effects;
    }
    let Some(at) = event.value.strip_prefix("button th-tab-") else { return Vec::new() };
    let at = TABS.iter().position(|(value, _)| *value == at).unwrap_or(0);
    let last = TABS.len() - 1;
    let to = match name {
        "ArrowRight" if at == last => 0,
        "ArrowRight" => at + 1,
        "ArrowLeft" if at == 0 => last,
        "ArrowLeft" => at - 1,
        "Home" => 0,
        "End" => last,
        _ => return Vec::new(),
    };
    let Some((to, _)) = TABS.get(to) else { return Vec::new() };
    fields.set("th-tab", to);
    vec![Effect::Focus(["th-tab-", to].concat()), Effect::Used]
}

/// Fields by name, each with what it reads as until something is typed.
type Names = [(&'static str, &'static str)];

/// What stands in one of `names`.
fn typed<'a>(fields: &'a Fields, names: &Names, name: &str) -> &'a str {
    fields.or(name, default(names, name))
}

/// What stood in one of `names` when all of them last read well.
fn last<'a>(fields: &'a Fields, names: &Names, name: &str) -> &'a str {
    fields.or(&ask::good(name), default(names, name))
}

fn default(names: &Names, name: &str) -> &'static str {
    names.iter().find(|(n, _)| *n == name).map_or("", |(_, text)| text)
}

/// Keeps what stands in `names` as last read well.
fn keep(fields: &mut Fields, names: &Names) {
    for (name, default) in names {
        let text = fields.or(name, default).to_owned();
        fields.set(&ask::good(name), &text);
    }
}
