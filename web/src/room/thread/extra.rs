//! Around the cut: where to start and stop, half nuts, several starts, a bore's tool,
//! picking up a thread again.
use super::ask::Asked;
use super::cut::{Setup, typed};
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::caution;
use crate::room::steps::{self, Form, Wrong, about, length as long};
use crate::words::{errors::said, thread as words};
use handturn::measure::read::{self, Unit};
use handturn::measure::write::rounded;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::thread::blind::{self, Shoulder};
use handturn::thread::half_nuts::{Closing, ThreadDial, closing};
use handturn::thread::internal::{Bar, Boring, fits};
use handturn::thread::{Hand, starts};
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

/// Fields with what they read as until something is typed.
const NAMES: [(&str, &str); 13] = [
    ("th-length", "10"),
    ("th-rpm", "60"),
    ("th-reaction", "500"),
    ("th-wide", "2"),
    ("th-tap-lead", "5"),
    ("th-bar", "4"),
    ("th-out", "1.5"),
    ("th-clear", "0.2"),
    ("th-nd-teeth", "32"),
    ("th-nd-marks", "8"),
    ("th-nd-numbered", "4"),
    ("th-driver", "60"),
    ("th-slack", "0.5"),
];

fn text<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

fn length(fields: &Fields, name: &'static str, of: Of) -> Result<Length, Wrong> {
    read::length(text(fields, name), Unit::Mm).map_err(|e| (name, e.of(of)))
}

fn count(fields: &Fields, name: &'static str, bound: bounds::Bound) -> Result<u32, Wrong> {
    read::count(text(fields, name), bound).map_err(|e| (name, e))
}

/// Everything beside the passes, each part behind its own line.
pub(super) fn section(fields: &Fields, shown: &Asked, setup: Option<&Setup>) -> Markup {
    html! {
        div.extras {
            (part("th-nuts", words::HALF_NUTS, &half_nuts(fields, shown)))
            (part("th-shoulder", words::START_AND_STOP, &shoulder(fields, shown, setup)))
            @if shown.internal { (part("th-boring", words::BORING_TOOL, &boring(fields, setup))) }
            @if shown.thread.starts > 1 { (part("th-several-starts", words::SEVERAL_STARTS, &several(fields, shown, setup))) }
            (part("th-pick-up", words::PICK_UP, &pick_up(fields, shown)))
        }
    }
}

fn form<'a>(fields: &'a Fields, wrong: Option<&'a Wrong>) -> Form<'a> {
    Form { fields, names: &[&NAMES], wrong }
}

fn part(id: &str, title: &str, content: &Markup) -> Markup {
    html! { details.extra id=(id) { summary { (title) } (content) } }
}

fn closes(fields: &Fields, shown: &Asked) -> Result<Closing, Wrong> {
    let screw = lists::lead_screw(fields).map_err(|e| ("", e))?;
    let dial = ThreadDial {
        teeth: count(fields, "th-nd-teeth", bounds::THREAD_DIAL)?,
        marks: count(fields, "th-nd-marks", bounds::THREAD_DIAL)?,
        numbered: count(fields, "th-nd-numbered", bounds::THREAD_DIAL)?,
    };
    let lead = shown.thread.lead().map_err(|e| ("", e))?;
    closing(lead, screw, dial).map_err(|error| match error.field {
        Of::ThreadDial => ("th-nd-teeth", error),
        _ => ("", error),
    })
}

/// Whether the half nuts must stay closed from the first pass to the last.
pub(super) fn nuts_stay_closed(fields: &Fields, shown: &Asked) -> bool {
    matches!(closes(fields, shown), Ok(Closing::Never { .. }))
}

fn half_nuts(fields: &Fields, shown: &Asked) -> Markup {
    let found = closes(fields, shown);
    let wrong = found.as_ref().err();
    html! {
        @match &found {
            Ok(closing) => {
                p.say { (words::closing(*closing)) }
                @if let Closing::Never { .. } = closing { (caution(html! { b { (words::KEEP_SHUT) } " " (words::REVERSE_CARE) })) }
            }
            Err(("", error)) => p { (said(error, "").wrong) },
            Err(_) => {}
        }
        p.why { (words::dial_on(lists::text(fields, Stock::LatheScrew))) }
        div.trio {
            (form(fields, wrong).text("th-nd-teeth", words::DIAL_TEETH))
            (form(fields, wrong).text("th-nd-marks", words::DIAL_MARKS))
            (form(fields, wrong).text("th-nd-numbered", words::DIAL_NUMBERED))
        }
    }
}

fn stops(fields: &Fields, shown: &Asked) -> Result<(Shoulder, blind::Stop), Wrong> {
    let shoulder = Shoulder {
        pitch: shown.thread.pitch,
        starts: u32::from(shown.thread.starts),
        rpm: count(fields, "th-rpm", bounds::RPM)?,
        reaction_ms: count(fields, "th-reaction", bounds::REACTION_MS)?,
        tool_width: length(fields, "th-wide", Of::Tool)?,
        length: length(fields, "th-length", Of::Length)?,
    };
    let stop = blind::stop(&shoulder).map_err(|error| match error.field {
        Of::Tool => ("th-wide", error),
        Of::Speed => ("th-rpm", error),
        _ => ("th-length", error),
    })?;
    Ok((shoulder, stop))
}

fn shoulder(fields: &Fields, shown: &Asked, setup: Option<&Setup>) -> Markup {
    let found = stops(fields, shown);
    let wrong = found.as_ref().err();
    let blind = typed(fields, "th-blind") == "on";
    html! {
        @if let Ok((shoulder, stop)) = &found {
            dl.facts {
                (long(words::START_CLEAR, stop.start_clear))
                (long(words::RUNS_ON, stop.runs_on))
                (long(words::GROOVE_LONG, stop.groove))
                (long(words::STOP_AT, stop.stop_at))
                @if blind && shown.internal {
                    @if let Some(drill) = drill(fields, shown, shoulder, setup) {
                        (long(words::DRILL_FULL, drill.full_diameter))
                        (about(words::DRILL_POINT, drill.to_point.value))
                    }
                }
            }
        }
        label.tick { input type="checkbox" id="th-blind" name="th-blind" checked[blind]; (words::IS_BLIND) }
        @if blind { (caution(html! { b { (words::BLIND) } " " (words::BLIND_CARE) })) }
        div.pair {
            (form(fields, wrong).text("th-length", words::THREAD_LONG))
            (form(fields, wrong).text("th-wide", words::TOOL_WIDE))
            (form(fields, wrong).text("th-rpm", words::RPM))
            (form(fields, wrong).text("th-reaction", words::REACTION))
            @if blind && shown.internal { (form(fields, wrong).text("th-tap-lead", words::TAP_LEAD)) }
        }
    }
}

fn drill(
    fields: &Fields,
    shown: &Asked,
    shoulder: &Shoulder,
    setup: Option<&Setup>,
) -> Option<blind::Drill> {
    let lead = read::number(text(fields, "th-tap-lead"), Of::Tool).ok()?;
    let point = Angle::from_degrees(Fraction::whole(118)).ok()?;
    blind::drill(shoulder.length, shown.thread.pitch, lead, setup?.ask.work, point).ok()
}

fn boring(fields: &Fields, setup: Option<&Setup>) -> Markup {
    let found = (|| {
        let setup = setup.ok_or(("", Error::new(Of::Diameter, handturn::Cause::Empty)))?;
        let depth = rounded(setup.depths.straight, 3).map(Length::from_mm);
        let tool = Boring {
            bar: Bar::Round { diameter: length(fields, "th-bar", Of::Tool)? },
            nose: length(fields, "th-out", Of::Tool)?,
            bore: setup.ask.work,
            depth: depth.ok_or(("", Error::new(Of::Tool, handturn::Cause::Overflow)))?,
            clear: length(fields, "th-clear", Of::Tool)?,
        };
        fits(&tool).map_err(|e| ("th-bar", e))
    })();
    let wrong = found.as_ref().err();
    html! {
        @if let Ok(fit) = &found {
            @if fit.enters && fit.nose_long_enough {
                p.say { (words::BAR_FITS) }
            } @else {
                @if !fit.enters { (caution(html! { (words::bar_too_big(fit.least_bore)) })) }
                @if !fit.nose_long_enough { (caution(html! { (words::nose_too_short(fit.least_nose)) })) }
            }
        }
        div.trio {
            (form(fields, wrong).text("th-bar", words::BAR))
            (form(fields, wrong).text("th-out", words::NOSE_OUT))
            (form(fields, wrong).text("th-clear", words::ROOM))
        }
    }
}

fn several(fields: &Fields, shown: &Asked, setup: Option<&Setup>) -> Markup {
    let n = u32::from(shown.thread.starts);
    let gear = count(fields, "th-driver", bounds::TEETH)
        .and_then(|teeth| starts::by_gear(teeth, n, Fraction::ONE).map_err(|e| ("th-driver", e)));
    let travels: Option<Vec<Length>> = setup.map(|setup| {
        let at = |start| starts::by_slide(shown.thread.pitch, n, start, &setup.plan.dial);
        (1..n).filter_map(|start| at(start).ok()).map(|(reading, _)| reading.travel).collect()
    });
    let screw = lists::lead_screw(fields).ok();
    let carriage = screw
        .and_then(|screw| starts::by_carriage(shown.thread.lead().ok()?, n, screw).ok().flatten());
    html! {
        ul.facts-list {
            li {
                b { (words::BY_SLIDE) } " "
                @if let Some(travels) = travels { (words::starts_at(&travels)) }
            }
            li {
                b { (words::BY_DRIVER) } " "
                @if let Ok(teeth) = &gear { (words::driver_on(*teeth)) }
                @else if let Ok(of) = starts::gear_multiple(n, Fraction::ONE) { (words::driver_multiple(of)) }
            }
            @if let Some(carriage) = carriage { li { b { (words::BY_CARRIAGE) } " " (words::carriage_by(carriage)) } }
        }
        (form(fields, gear.as_ref().err()).text("th-driver", words::FIRST_DRIVER))
        div.acts { button.btn type="button" data-do="divide-n" data-value=(n) { (words::divide_spindle(n)) } }
    }
}

fn pick_up(fields: &Fields, shown: &Asked) -> Markup {
    let steps = length(fields, "th-slack", Of::Slack)
        .and_then(|slack| blind::pick_up(shown.thread.pitch, slack).map_err(|e| ("th-slack", e)));
    html! {
        @if let Ok(steps) = &steps { ol.steps { @for step in steps { li { (words::pick_up(*step)) } } } }
        (form(fields, steps.as_ref().err()).text("th-slack", words::SLACK))
        @if shown.thread.hand == Hand::Left { p.why { (words::LEFT_RUNS) } }
    }
}
