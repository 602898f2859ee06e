//! Names, sizes, limits, blanks and drills; which thread it is.
use super::super::given::{Given, dotted};
use super::super::refusal::Refusal;
use super::asked::{self, Asked, choice, exact, length, lengths, pitch};
use super::told::{self, list, named, number, object, text};
use crate::words::{decimal, mixed};
use handturn::number::Fraction;
use handturn::thread::drills::{Drill, DrillSet, Tapping, tapping};
use handturn::thread::limits::{Class, Limits, Side};
use handturn::thread::name::{self, Found};
use handturn::thread::which::{Candidate, Measured, Reason, which as which_thread};
use handturn::thread::{Profile, Series, Thread, drill_list, fitting, ready};
use handturn::{Error, Field};

/// Every thread a name can stand for.
pub(super) fn read(given: &Given) -> Result<Given, Refusal> {
    let Given::Text(typed) = given else { return Err(Refusal::kind("text", "a text", given)) };
    let found = name::read(typed).map_err(|error| Refusal::of("text", &error, typed))?;
    Ok(list(found.iter(), told::found))
}

/// The names of every series.
pub(super) fn all() -> Result<Given, Refusal> {
    Ok(list(Series::ALL, |series| {
        let sizes = (0..series.sizes()).filter_map(|k| series.size(k));
        let names = list(sizes, |size| Given::Text(told::listed(series, size)));
        object([("series", named(series)), ("names", names)])
    }))
}

fn of_thread(error: Error) -> Refusal {
    Refusal::of("thread", &error, "")
}

/// Basic sizes, profile, and limits: those of the class asked for, or of every usual one.
pub(super) fn sizes(given: &Given) -> Result<Given, Refusal> {
    let asked = Asked::read(given, &[])?;
    let thread = asked.thread();
    let form = &thread.form;
    let basic = || {
        Ok(object([
            ("major", told::length(thread.major)),
            ("pitch_diameter", told::length(thread.pitch_diameter()?)),
            ("minor_external", told::length(thread.minor_external()?)),
            ("minor_internal", told::length(thread.minor_internal()?)),
            ("major_internal", told::length(thread.major_internal()?)),
        ]))
    };
    let shape = || {
        Ok(object([
            ("sharp_height", told::length(form.sharp_height(thread.pitch)?)),
            ("external", profile(thread, &form.external, form.external_depth(thread.pitch)?)?),
            ("internal", profile(thread, &form.internal, form.internal_depth(thread.pitch)?)?),
        ]))
    };
    let limited = match asked.limited {
        Some(limited) if given.has("class") => vec![limited],
        _ => asked::classes(thread),
    };
    let limited =
        limited.iter().filter(|(class, _)| !given.has("side") || class.side == asked.side);
    Ok(object([
        ("thread", told::found(&asked.found)),
        ("basic", basic().map_err(of_thread)?),
        ("profile", shape().map_err(of_thread)?),
        ("limits", list(limited, |(class, limits)| one_class(thread, *class, limits))),
    ]))
}

fn profile(
    thread: &Thread,
    profile: &Profile,
    depth: handturn::measure::Length,
) -> Result<Given, Error> {
    let at = |multiple| Ok::<_, Error>(told::length(thread.form.at(multiple, thread.pitch)?));
    Ok(object([
        ("depth", told::length(depth)),
        ("crest_flat", at(profile.crest_flat)?),
        ("root_flat", at(profile.root_flat)?),
        ("crest_radius", at(profile.crest_radius)?),
        ("root_radius", at(profile.root_radius)?),
    ]))
}

fn one_class(thread: &Thread, class: Class, limits: &Limits) -> Given {
    let range = |range: handturn::thread::limits::Range| told::range(range.max, range.min);
    object([
        ("class", told::class(Some(class), thread)),
        ("side", told::side(class.side)),
        ("major", range(limits.major)),
        ("pitch_diameter", range(limits.pitch_diameter)),
        ("minor", range(limits.minor)),
    ])
}

/// What the work is turned or bored to before the thread is cut.
pub(super) fn blank(given: &Given) -> Result<Given, Refusal> {
    let asked = Asked::read(given, &[])?;
    let thread = asked.thread();
    let to = ready::blank(thread, asked.limits(), asked.internal()).map_err(of_thread)?;
    let die = match asked.limited {
        Some((class, _)) if !asked.internal() => {
            told::length(fitting::blank(thread, class).map_err(of_thread)?.die)
        }
        _ => Given::Nothing,
    };
    let within = asked.limits().map(|l| if asked.internal() { l.minor } else { l.major });
    Ok(object([
        ("class", told::class(asked.limited.map(|(class, _)| class), thread)),
        ("side", told::side(asked.side)),
        ("to", told::length(to)),
        ("limits", within.map_or(Given::Nothing, |range| told::range(range.max, range.min))),
        ("die", die),
    ]))
}

const SETS: [(&str, DrillSet); 4] = [
    ("metric", DrillSet::Metric),
    ("number", DrillSet::Number),
    ("letter", DrillSet::Letter),
    ("fraction", DrillSet::Fraction),
];

/// Drills to use before a tap, the nearest to the engagement wanted first.
pub(super) fn drills(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["thread", "percent", "sets", "drills"])?;
    let found = asked::thread(given.get("thread"), "thread")?;
    let percent = match given.get("percent") {
        Given::Nothing => Fraction::whole(70),
        other => exact(other, "percent", Field::Engagement)?,
    };
    let sets = match given.get("sets") {
        // With drills of one's own and no set named, those are all there are.
        Given::Nothing if given.has("drills") => Vec::new(),
        Given::Nothing => vec![DrillSet::Metric],
        other => {
            let each = other.list("sets")?.iter().enumerate();
            let set =
                |(k, set): (usize, &Given)| choice(set, &dotted("sets", &k.to_string()), &SETS);
            each.map(set).collect::<Result<Vec<_>, _>>()?
        }
    };
    let mut owned: Vec<Drill> = Vec::new();
    for set in sets {
        owned.extend((0..=u8::MAX).map_while(|place| set.drill(place)));
    }
    match given.get("drills") {
        // As the Shop's list is typed: `number letter -#41 6.35`.
        Given::Text(typed) => {
            let read = drill_list::each(typed, &mut |drill| {
                owned.push(drill);
                Ok(())
            });
            read.map_err(|error| Refusal::of("drills", &error, typed))?;
        }
        other => {
            let loose = lengths(other, "drills", Field::Drills)?;
            owned.extend(loose.into_iter().map(|diameter| Drill { set: None, place: 0, diameter }));
        }
    }
    let offered = tapping(&found.thread, &owned, percent);
    let offered = offered.map_err(|error| match error.field {
        Field::Engagement => Refusal::of("percent", &error, &given.get("percent").to_string()),
        Field::Drills => Refusal::of("drills", &error, ""),
        _ => of_thread(error),
    })?;
    Ok(list(offered.iter(), |Tapping { drill, percent, percent_of_nut }| {
        object([
            ("drill", one_drill(drill)),
            ("percent", number(*percent)),
            ("percent_of_nut", number(*percent_of_nut)),
        ])
    }))
}

fn one_drill(drill: &Drill) -> Given {
    let name = match drill.set {
        Some(DrillSet::Number) => drill.place.saturating_add(1).to_string(),
        Some(DrillSet::Letter) => char::from(b'A'.saturating_add(drill.place)).to_string(),
        Some(DrillSet::Fraction) => drill.diameter.inches().map(mixed).unwrap_or_default() + " in",
        _ => decimal(drill.diameter.mm(), 4) + " mm",
    };
    object([
        ("set", drill.set.map_or(Given::Nothing, named)),
        ("name", Given::Text(name)),
        ("diameter", told::length(drill.diameter)),
    ])
}

/// The listed threads that something measured may be, nearest first.
pub(super) fn which(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["diameter", "pitch", "side"])?;
    let side = match given.get("side") {
        Given::Nothing => Side::External,
        other => choice(other, "side", &[("screw", Side::External), ("nut", Side::Internal)])?,
    };
    let diameter = length(given.get("diameter"), "diameter", Field::Diameter)?;
    let pitch = pitch(given.get("pitch"), "pitch", Field::Pitch)?;
    let found = which_thread(&Measured { side, diameter, pitch }).map_err(|error| {
        let at = if error.field == Field::Pitch { "pitch" } else { "diameter" };
        Refusal::of(at, &error, &given.get(at).to_string())
    })?;
    Ok(list(found.iter(), |candidate| {
        let Candidate { thread, listed, off_diameter, off_pitch, reasons } = candidate;
        let found = Found { thread: *thread, listed: Some(*listed), class: None };
        object([
            ("thread", told::found(&found)),
            ("off_diameter", told::length(*off_diameter)),
            ("off_pitch", told::length(*off_pitch)),
            ("reasons", list(reasons.iter(), reason)),
        ])
    }))
}

fn reason(reason: &Reason) -> Given {
    match reason {
        Reason::Angle => text("Angle"),
        Reason::OverTwenty(length) => object([("OverTwenty", told::length(*length))]),
        Reason::Diameter(length) => object([("Diameter", told::length(*length))]),
    }
}
