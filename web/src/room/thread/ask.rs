//! What is asked: a thread by its name or by its own figures, screw or nut, and its
//! class, read into one [`Asked`].
use crate::fields::Fields;
pub(super) use crate::room::lines::pitch;
use crate::room::steps;
use crate::words::thread as words;
use handturn::measure::read::{self, Unit};
use handturn::thread::limits::{Class, Limits, Side, limits, usual};
use handturn::thread::name::{self, Found, MAX_FOUND};
use handturn::thread::{Form, Hand, Thread};
use handturn::{Cause, Error, Field, List};

/// The fields of the entry with what they read as until something is typed.
pub(super) const NAMES: [(&str, &str); 13] = [
    ("th-how", "name"),
    ("th-name", "M6 x 0.75"),
    ("th-pick", ""),
    ("th-side", "screw"),
    ("th-class", ""),
    ("th-form", "metric"),
    ("th-angle", "60"),
    ("th-crest", "1/8"),
    ("th-root", "1/8"),
    ("th-major", "20"),
    ("th-pitch", "1.5"),
    ("th-starts", "1"),
    ("th-hand", "right"),
];

/// A thread that was asked for.
#[derive(Clone, Debug)]
pub(super) struct Asked {
    /// How it is called.
    pub(super) name: String,
    pub(super) thread: Thread,
    /// The nut is made, not the screw.
    pub(super) internal: bool,
    /// The classes there are for this size and side, the usual one first.
    pub(super) classes: Vec<Class>,
    /// The class chosen with its limits; none where no standard sets any.
    pub(super) limited: Option<(Class, Limits)>,
    /// What it screws into or onto, in its usual class.
    pub(super) mate: Option<(Class, Limits)>,
    /// Everything the name can stand for.
    pub(super) found: List<Found, MAX_FOUND>,
}

/// What stands in one of the entry's fields.
pub(super) fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

/// The thread as typed, or the field that cannot be read and why.
///
/// # Errors
/// The name of the first wrong field and its error.
pub(super) fn asked(fields: &Fields) -> Result<Asked, (&'static str, Error)> {
    read(&|name| typed(fields, name))
}

/// The last thread that could be read.
pub(super) fn last_good(fields: &Fields) -> Option<Asked> {
    read(&|name| steps::last(fields, &NAMES, name)).ok()
}

/// Keeps the fields of a thread that reads, as the last good one.
pub(super) fn keep_good(fields: &mut Fields) {
    if asked(fields).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// The form chosen for a thread of one's own, by its value.
pub(super) const FORMS: [(&str, Form); 7] = [
    ("metric", Form::METRIC),
    ("unified", Form::UNIFIED),
    ("whitworth", Form::WHITWORTH),
    ("ba", Form::BA),
    ("tr", Form::TRAPEZOIDAL),
    ("acme", Form::ACME),
    ("square", Form::SQUARE),
];

type Text<'t> = &'t dyn Fn(&'static str) -> &'t str;

fn read<'t>(text: Text<'t>) -> Result<Asked, (&'static str, Error)> {
    let own = text("th-how") == "own";
    let mut found = List::new();
    let (name, thread) = if own {
        let thread = own_thread(text)?;
        (words::own_name(&thread), thread)
    } else {
        found = name::read(text("th-name")).map_err(|e| ("th-name", e))?;
        let place = text("th-pick").parse().unwrap_or(0_usize);
        let one = found.get(place).or(found.first()).copied();
        let one = one.ok_or(("th-name", Error::new(Field::Thread, Cause::Empty)))?;
        (words::found_name(&one), one.thread)
    };
    let internal = text("th-side") == "nut";
    let of = |side| classes(&thread, side);
    let (side, other) =
        if internal { (Side::Internal, Side::External) } else { (Side::External, Side::Internal) };
    let all = of(side);
    let wanted = text("th-class");
    let chosen = all
        .iter()
        .find(|(class, _)| words::class(*class, thread.form.kind) == wanted)
        .or(all.first());
    Ok(Asked {
        name,
        thread,
        internal,
        classes: all.iter().map(|(class, _)| *class).collect(),
        limited: chosen.copied(),
        mate: of(other).first().copied(),
        found,
    })
}

/// The classes of one side that the standard has at this size, each with its limits.
fn classes(thread: &Thread, side: Side) -> Vec<(Class, Limits)> {
    let of_side = usual(thread.form.kind).iter().filter(|class| class.side == side);
    of_side.filter_map(|class| limits(thread, *class).ok().map(|limits| (*class, limits))).collect()
}

fn own_thread<'t>(text: Text<'t>) -> Result<Thread, (&'static str, Error)> {
    let at = |name: &'static str| move |error: Error| (name, error);
    let pitch = pitch(text("th-pitch")).map_err(at("th-pitch"))?;
    let chosen = FORMS.iter().find(|(value, _)| *value == text("th-form")).map(|(_, form)| *form);
    let form = match chosen {
        Some(form) => form,
        None => {
            let angle = read::angle(text("th-angle")).map_err(at("th-angle"))?;
            let flat = |name| read::number(text(name), Field::Form).map_err(at(name));
            let (crest, root) = (flat("th-crest")?, flat("th-root")?);
            Form::own(angle, crest, root, Unit::Mm).map_err(at("th-angle"))?
        }
    };
    let major =
        read::length(text("th-major"), Unit::Mm).map_err(|e| ("th-major", e.of(Field::Major)))?;
    let starts =
        read::count(text("th-starts"), handturn::bounds::STARTS).map_err(at("th-starts"))?;
    let hand = if text("th-hand") == "left" { Hand::Left } else { Hand::Right };
    let starts = u8::try_from(starts).unwrap_or(u8::MAX);
    Thread::new(form, major, pitch, starts, hand).map_err(|error| match error.field {
        Field::Major => ("th-major", error),
        Field::Starts => ("th-starts", error),
        _ => ("th-pitch", error),
    })
}

/// Takes the class that a name carries into the fields, so that it is in force.
pub(super) fn take_class(fields: &mut Fields) {
    let Ok(found) = name::read(typed(fields, "th-name")) else { return };
    let named = found.first().and_then(|one| Some((one.class?, one.thread.form.kind)));
    let Some((class, kind)) = named else { return };
    fields.set("th-side", if class.side == Side::Internal { "nut" } else { "screw" });
    fields.set("th-class", &words::class(class, kind));
}
