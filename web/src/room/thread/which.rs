//! Which is it: what was measured, and the threads it may be.
use super::ask;
use crate::fields::Fields;
use crate::room::steps::{self, Form, Wrong};
use crate::words::thread as words;
use handturn::measure::read::{self, Unit};
use handturn::thread::limits::Side;
use handturn::thread::name;
use handturn::thread::which::{Candidate, MAX_CANDIDATES, Measured, which};
use handturn::{Field as Of, List};
use maud::{Markup, html};

/// The fields with what they read as until something is typed.
pub(super) const NAMES: [(&str, &str); 2] = [("th-over", "0.187 in"), ("th-counted", "32 tpi")];

fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

fn found<'t>(
    internal: bool,
    text: &dyn Fn(&'static str) -> &'t str,
) -> Result<List<Candidate, MAX_CANDIDATES>, Wrong> {
    let diameter =
        read::length(text("th-over"), Unit::Mm).map_err(|e| ("th-over", e.of(Of::Diameter)))?;
    let pitch = ask::pitch(text("th-counted")).map_err(|e| ("th-counted", e))?;
    let side = if internal { Side::Internal } else { Side::External };
    which(&Measured { side, diameter, pitch }).map_err(|error| match error.field {
        Of::Pitch => ("th-counted", error),
        _ => ("th-over", error.of(Of::Diameter)),
    })
}

/// Keeps the fields, where they read, as last read well.
pub(super) fn keep_good(fields: &mut Fields) {
    if found(false, &|name| typed(fields, name)).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// The fields and the candidates.
pub(super) fn section(fields: &Fields, internal: bool) -> Markup {
    let now = found(internal, &|name| typed(fields, name));
    let wrong = now.as_ref().err().copied();
    let last = |name: &'static str| steps::last(fields, &NAMES, name);
    let list = now.ok().or_else(|| found(internal, &last).ok());
    let form = Form { fields, names: &[&NAMES], wrong: wrong.as_ref() };
    html! {
        div.pair {
            (form.text("th-over", if internal { words::MEASURED_BORE } else { words::MEASURED_OUTSIDE }))
            (form.text("th-counted", words::PITCH_OR_TPI))
        }
        p.why { (words::WHICH_WHY) }
        @if let Some(list) = &list {
            @if list.is_empty() { p { (words::NOTHING_LIKE_IT) } }
            ol.candidates {
                @for one in list { (candidate(one)) }
            }
        }
    }
}

fn candidate(one: &Candidate) -> Markup {
    let (series, size) = one.listed;
    let mut name = String::new();
    name::write(series, size, &mut |piece| name.push_str(piece));
    html! {
        li {
            button.alt type="button" data-do="th-name" data-value=(name) {
                b { (words::times_sign(&name)) }
                span.in { (words::off_by(one)) }
                @if !one.reasons.is_empty() { span.in { (words::told_by(one)) } }
            }
        }
    }
}
