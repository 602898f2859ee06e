//! Gear it: the lathe as its owner typed it, and the change gears for the lead.
use super::ask::{self, Asked};
use crate::draw::train as draw;
use crate::fields::Fields;
use crate::owned::lists::{Stock, lathe};
use crate::pieces::{caution, exact_or, owned_strip};
use crate::room::steps::{self, Form, Wrong};
use crate::words::{errors::said, thread as words};
use handturn::measure::read;
use handturn::thread::gearing::{Job, Lathe, Lead, go_on, lacks};
use handturn::train::{Found, Lacking, Search, Six};
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

/// The step's fields with what they read as until something is typed.
pub(super) const NAMES: [(&str, &str); 5] = [
    ("th-lead", "thread"),
    ("th-module", "1"),
    ("th-dp", "20"),
    ("th-axial", "3"),
    ("th-worm-starts", "1"),
];
/// Trains listed.
const LISTED: usize = 5;
/// Steps of a search in one answer: far more than four gears ever take, and few enough
/// that six gears don't keep a press waiting.
const STEPS: u32 = 400_000;

type Text<'t> = &'t dyn Fn(&'static str) -> &'t str;

fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

/// A lead, a lathe and its trains.
struct Worked {
    job: Job,
    lathe: Lathe,
    search: Search<LISTED>,
    /// All that was to be looked at was.
    whole: bool,
}

fn lead<'t>(shown: &Asked, text: Text<'t>) -> Result<Lead, Wrong> {
    let starts = || {
        let starts = read::count(text("th-worm-starts"), bounds::STARTS)
            .map_err(|e| ("th-worm-starts", e))?;
        Ok(u8::try_from(starts).unwrap_or(u8::MAX))
    };
    let kind = text("th-lead");
    let size = worm_size(kind);
    let at = |error: Error| (size, error.of(Of::Lead));
    match kind {
        "module" => {
            let module = read::length(text(size), read::Unit::Mm).map_err(at)?;
            Lead::of_module(module, starts()?).map_err(at)
        }
        "dp" => {
            let pitch = read::number(text(size), Of::Lead).map_err(at)?;
            Lead::of_diametral_pitch(pitch, starts()?).map_err(at)
        }
        "pitch" => {
            let pitch = ask::pitch(text(size)).map_err(at)?;
            Lead::of_pitch(pitch, starts()?).map_err(at)
        }
        _ => Lead::of_pitch(shown.thread.pitch, shown.thread.starts).map_err(|e| ("", e)),
    }
}

/// The field that holds a worm's size.
pub(super) fn worm_size(kind: &str) -> &'static str {
    match kind {
        "dp" => "th-dp",
        "pitch" => "th-axial",
        _ => "th-module",
    }
}

fn work_out<'t>(
    fields: &Fields,
    shown: &Asked,
    text: Text<'t>,
    six: bool,
) -> Result<Worked, Wrong> {
    let lathe = lathe(fields).map_err(|e| ("", e))?;
    let six = if six { Six::Always } else { Six::Never };
    let job = Job { lead: lead(shown, text)?, hand: shown.thread.hand, six };
    let mut search = Search::new();
    let whole = go_on(&mut search, &job, &lathe, STEPS).map_err(|error| match error.field {
        Of::Lead if text("th-lead") != "thread" => (worm_size(text("th-lead")), error),
        _ => ("", error),
    })?;
    Ok(Worked { job, lathe, search, whole })
}

/// Keeps the fields, where they read, as last read well.
pub(super) fn keep_good(fields: &mut Fields, shown: &Asked) {
    let text = |name: &'static str| typed(fields, name);
    if lead(shown, &text).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, shown: &Asked) -> Markup {
    let six = fields.get("th-six") == "on";
    let now = work_out(fields, shown, &|name| typed(fields, name), six);
    let wrong = now.as_ref().err().copied();
    let last = |name: &'static str| steps::last(fields, &NAMES, name);
    let worked = now.ok().or_else(|| work_out(fields, shown, &last, six).ok());
    let form = Form { fields, names: &[&NAMES], wrong: wrong.as_ref() };
    html! {
        (kind_of_lead(form))
        @if let Some(("", error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
        @if let Some(worked) = &worked { (answer(fields, worked)) }
        (owned(fields))
    }
}

/// The lead of the thread, or of a worm.
fn kind_of_lead(form: Form) -> Markup {
    let kind = form.typed("th-lead");
    html! {
        div.lead-kind {
            (form.choice("th-lead", words::WHICH_LEAD, &[
                ("thread", words::OF_THE_THREAD), ("module", words::MODULE_WORM), ("dp", words::DP_WORM),
                ("pitch", words::PITCH_WORM),
            ]))
            @if kind != "thread" {
                div.pair {
                    @match kind {
                        "dp" => (form.number("th-dp", words::DP)),
                        "pitch" => (form.text("th-axial", words::WORM_PITCH)),
                        _ => (form.number("th-module", words::MODULE)),
                    }
                    (form.number("th-worm-starts", words::STARTS))
                }
            }
        }
    }
}

fn answer(fields: &Fields, worked: &Worked) -> Markup {
    let best = worked.search.best();
    let place = fields.get("th-train").parse().unwrap_or(0_usize);
    let Some(found) = best.get(place).or(best.first()) else { return none(worked) };
    let chain = &found.chain;
    let distance = worked.lathe.mounting.distance;
    html! {
        div.two {
            figure.draw.plate {
                (draw::chain(chain, distance, (words::FIRST_STUD, words::LEAD_SCREW), &words::train_name(chain)))
                figcaption.why { (words::idlers_free(chain)) }
            }
            div.figures {
                div {
                    p { (mark(found)) " " span.why { (words::lead_on(&worked.job, &worked.lathe)) } }
                    p.answer-big.gears {
                        @for pair in chain.pairs() { span { (pair.driver) " " small { (words::DRIVES) } " " (pair.driven) } " " }
                    }
                    p.why { (words::mounted(found, &worked.lathe)) }
                    @if !found.is_exact() {
                        p { (words::cuts(&worked.job, &worked.lathe, found)) }
                    }
                }
                div {
                    h3 { (crate::words::BY_HAND) }
                    ul.work { @for line in words::gear_lines(&worked.job, &worked.lathe, found) { li { (line) } } }
                }
                (caution(html! { (crate::words::FINGERS_OUT) }))
                (others(best, found))
                (lacking(worked, found))
                (six(fields, worked))
            }
        }
    }
}

/// No train at all.
fn none(worked: &Worked) -> Markup {
    html! {
        p { (words::NO_TRAIN) }
        @if let Some(unmounted) = worked.search.unmounted() { p.why { (words::unmounted(&unmounted)) } }
    }
}

/// Exact, or within how much.
fn mark(found: &Found) -> Markup {
    exact_or(found.is_exact(), &words::off(found))
}

/// The next best ones.
fn others(best: &[Found], chosen: &Found) -> Markup {
    html! {
        @if best.len() > 1 {
            div {
                h3 id="th-trains" { (words::NEXT_BEST) }
                ol.candidates aria-labelledby="th-trains" {
                    @for (place, found) in best.iter().enumerate() {
                        @if found != chosen {
                            li {
                                button.alt type="button" data-do="th-train" data-value=(place) {
                                    b { (words::drives(&found.chain)) } (mark(found))
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What one gear would make it exact.
fn lacking(worked: &Worked, found: &Found) -> Markup {
    if found.is_exact() {
        return html! {};
    }
    if worked.job.lead.times_pi {
        return html! { p.why { (words::NEVER_EXACT) } };
    }
    let Ok(Lacking { smallest, with_127 }) = lacks(&worked.job, &worked.lathe) else {
        return html! {};
    };
    let classic = with_127.map(|found| (127, found));
    let both = [smallest, classic.filter(|_| smallest.is_none_or(|(teeth, _)| teeth != 127))];
    html! {
        div {
            h3 { (words::TO_BE_EXACT) }
            @for (teeth, found) in both.iter().flatten() {
                p { (words::with_gear(*teeth, &found.chain)) }
                div.acts { button.btn type="button" data-do="divide-n" data-value=(teeth) { (words::divide_gear(*teeth)) } }
            }
            @if both.iter().flatten().next().is_none() { p.why { (words::NO_ONE_GEAR) } }
        }
    }
}

/// Six gears on request.
fn six(fields: &Fields, worked: &Worked) -> Markup {
    html! {
        @if fields.get("th-six") == "on" {
            p.why { (words::six_done(worked.whole, worked.search.covered())) }
        } @else if worked.search.best().first().is_none_or(|best| !best.is_exact()) && worked.lathe.mounting.four_gears {
            div.acts { button.btn type="button" data-do="th-six" data-value="on" { (words::TRY_SIX) } }
        }
    }
}

/// The lathe as it stands in the Shop.
fn owned(fields: &Fields) -> Markup {
    html! {
        section.setup.lathe aria-labelledby="th-lathe" {
            h3.lead id="th-lathe" { (words::MY_LATHE) }
            p.why { (words::LATHE_WHY) }
            (owned_strip(fields, &[Stock::LatheGears, Stock::LatheScrew, Stock::Gearbox, Stock::StudDistance]))
        }
    }
}
