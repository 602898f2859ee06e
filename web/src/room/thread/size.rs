//! Size it: the section to scale, the blank or the hole, the limits of both sides, and
//! what goes with them.
use super::ask::Asked;
use super::table;
use crate::draw::thread as draw;
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::{caution, owned_strip};
use crate::room::steps::{self, Form, Wrong, fact};
use crate::words::thread as words;
use handturn::Field as Of;
use handturn::List;
use handturn::measure::read;
use handturn::thread::Kind;
use handturn::thread::drills::{self, Drill, MAX_OFFERED, Tapping};
use handturn::thread::fitting::{self, Clearance};
use handturn::thread::limits::Side;
use handturn::thread::ready;
use maud::{Markup, html};

/// The step's fields with what they read as until something is typed.
pub(super) const NAMES: [(&str, &str); 1] = [("th-percent", "70")];

fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

/// The drills owned and what they are asked for.
struct Drills {
    owned: Vec<Drill>,
    offered: List<Tapping, MAX_OFFERED>,
}

fn drills(fields: &Fields, shown: &Asked, percent: &str) -> Result<Drills, Wrong> {
    let owned = lists::drills(fields);
    let percent = percent.trim().trim_end_matches('%');
    let percent = read::number(percent, Of::Engagement).map_err(|e| ("th-percent", e))?;
    let offered = match drills::tapping(&shown.thread, &owned, percent) {
        Ok(offered) => offered,
        Err(error) if error.field == Of::Engagement => return Err(("th-percent", error)),
        // None that would do: said beside the answer, not at a field.
        Err(_) => List::new(),
    };
    Ok(Drills { owned, offered })
}

/// Keeps the field, where it reads, as last read well.
pub(super) fn keep_good(fields: &mut Fields, shown: &Asked) {
    if drills(fields, shown, typed(fields, "th-percent")).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, shown: &Asked) -> Markup {
    let now = drills(fields, shown, typed(fields, "th-percent"));
    let wrong = now.as_ref().err().copied();
    let last = || drills(fields, shown, steps::last(fields, &NAMES, "th-percent"));
    let drills = now.ok().or_else(|| last().ok());
    html! {
        div.sized {
            figure.draw.plate {
                @if let Ok(section) = draw::drawing(&shown.thread, shown.internal) { (section) }
            }
            div.figures {
                @if shown.internal { (hole(fields, shown, drills.as_ref())) } @else { (blank(fields, shown)) }
                (limits(shown))
                @if !shown.internal { (hole(fields, shown, drills.as_ref())) }
                (owned(Form { fields, names: &[&NAMES], wrong: wrong.as_ref() }))
            }
            div.figures {
                (beside(shown, drills.as_ref()))
                (by_hand(shown))
            }
        }
    }
}

/// What a screw is turned to.
fn blank(fields: &Fields, shown: &Asked) -> Markup {
    let limits = shown.limited.as_ref();
    let turned = ready::blank(&shown.thread, limits.map(|(_, limits)| limits), false);
    let blank = limits.and_then(|(class, _)| fitting::blank(&shown.thread, *class).ok());
    html! {
        @if let Ok(turned) = turned {
            div {
                p.lab { (words::TURN_TO) }
                (steps::large(turned))
                @if let Some(blank) = blank {
                    p.why { (words::blank_range(&blank.cut)) }
                    // No die cuts these in one go.
                    @if !matches!(shown.thread.form.kind, Kind::Trapezoidal | Kind::Acme | Kind::StubAcme | Kind::Square) {
                        p { (words::FOR_A_DIE) " " b { (words::mm(blank.die)) " mm" } ", " (words::inches(blank.die)) " in" }
                        (caution(html! { (words::DIE_CARE) }))
                    }
                }
                (tool(fields, shown, Stock::Dies))
            }
        }
    }
}

/// Whether the tap or the die is owned; nothing while none is listed.
pub(super) fn tool(fields: &Fields, shown: &Asked, stock: Stock) -> Markup {
    let listed = lists::threads(fields, stock);
    let own = listed.iter().find(|(_, found)| found.thread == shown.thread);
    let name = if stock == Stock::Taps { words::TAP } else { words::DIE };
    html! {
        @if let Some((typed, _)) = own { p { (name) ": " b { (words::HAVE_IT) } ", " (typed) } }
        @else if !listed.is_empty() { p.why { (name) ": " (words::NOT_YOURS) } }
    }
}

/// What a nut is drilled or bored to.
fn hole(fields: &Fields, shown: &Asked, drills: Option<&Drills>) -> Markup {
    let class = if shown.internal { shown.limited.as_ref() } else { shown.mate.as_ref() };
    let limits = class.map(|(_, limits)| limits);
    let bore = ready::blank(&shown.thread, limits, true);
    let best = drills.and_then(|drills| drills.offered.first());
    html! {
        div {
            p.lab { (words::TAPPING_DRILL) }
            @if let Some(best) = best {
                p.answer-big.lesser[!shown.internal] { (words::drill(&best.drill)) }
                p.why { (words::engagement(best, &shown.thread)) }
                @if let Some(drills) = drills {
                    @if drills.offered.len() > 1 { p.why { (words::also_owned(drills.offered.get(1..).unwrap_or(&[]))) } }
                }
                // The engagement wanted can ask for more room than the class leaves.
                @if let Some(most) = limits.and_then(|limits| limits.minor.max).filter(|most| best.drill.diameter > *most) {
                    p.care { (words::over_the_hole(most)) }
                }
            } @else { p { (words::NO_DRILL) } }
            (tool(fields, shown, Stock::Taps))
            @if let Ok(bore) = bore {
                p { (words::CORE_HOLE) " " b { (words::mm(bore)) " mm" } ", " (words::inches(bore)) " in" }
            }
        }
    }
}

/// Limits of the side that is made, then of its mate; basic sizes where none are set.
fn limits(shown: &Asked) -> Markup {
    let kind = shown.thread.form.kind;
    let sides = shown.limited.iter().chain(&shown.mate);
    html! {
        @if shown.limited.is_none() { (basic(shown)) }
        @for (class, limits) in sides { (table::limits(kind, *class, limits)) }
        p.why { (words::limits_from(kind)) }
    }
}

fn basic(shown: &Asked) -> Markup {
    let thread = &shown.thread;
    let sizes = [
        (words::OUTSIDE, Some(thread.major)),
        (words::PITCH_DIAMETER, thread.pitch_diameter().ok()),
        (words::ROOT, thread.minor_external().ok()),
        (words::HOLE, thread.minor_internal().ok()),
    ];
    html! {
        table.lim {
            thead { tr { th scope="col" { (words::BASIC) } th scope="col" { (words::SIZE) } } }
            tbody {
                @for (name, length) in sizes {
                    @if let Some(length) = length { tr { th scope="row" { (name) } td { (steps::both(length)) } } }
                }
            }
        }
    }
}

/// Clearance hole, groove, chamfer, length of engagement.
fn beside(shown: &Asked, drills: Option<&Drills>) -> Markup {
    let thread = &shown.thread;
    let side = if shown.internal { Side::Internal } else { Side::External };
    let clear = |clearance| fitting::clearance_hole(thread, clearance).ok();
    let holes = [
        (words::CLEAR_CLOSE, clear(Clearance::Close)),
        (words::CLEAR_MEDIUM, clear(Clearance::Medium)),
        (words::CLEAR_COARSE, clear(Clearance::Coarse)),
    ];
    let drill = |least| {
        let owned = drills.and_then(|drills| drills::at_least(least, &drills.owned).ok());
        owned.map_or_else(String::new, |drill| [words::DRILL, " ", &words::drill(&drill)].concat())
    };
    html! {
        dl.facts {
            @for (name, least) in holes {
                @if let Some(least) = least { (fact(name, &words::in_mm(least), &[&drill(least)])) }
            }
            @if let Ok(relief) = fitting::relief(thread, side) {
                (fact(words::RELIEF, &words::diameter(relief.diameter), &[&words::relief_wide(&relief)]))
            }
            @if let Ok(chamfers) = fitting::chamfers(thread) {
                @if shown.internal {
                    (fact(words::CHAMFER, &words::diameter(chamfers.mouth_least), &[&words::at_most(chamfers.mouth_most)]))
                } @else {
                    (fact(words::CHAMFER, &words::diameter(chamfers.screw_end), &[&words::at_45(chamfers.screw_length)]))
                }
            }
            @if let Ok((least, most)) = fitting::engagement(thread) {
                (fact(words::ENGAGED, &words::from_to(least, most), &[]))
            }
        }
    }
}

/// The drills owned and the engagement wanted.
fn owned(form: Form) -> Markup {
    html! {
        section.setup aria-label=(words::DRILLS_OWNED) {
            (owned_strip(form.fields, &[Stock::Drills, Stock::Taps, Stock::Dies]))
            (form.number("th-percent", words::ENGAGEMENT))
        }
    }
}

fn by_hand(shown: &Asked) -> Markup {
    html! {
        details id="th-size-working" {
            summary { (crate::words::BY_HAND) }
            ul.work { @for line in words::size_lines(&shown.thread) { li { (line) } } }
            p.why { (words::form_from(shown.thread.form.source)) }
        }
    }
}
