//! Slanted: a helical wheel, milled with the head geared to the table's screw.
use super::{cutters, wheel};
use crate::draw::{helix as picture, train};
use crate::fields::Fields;
use crate::owned::{
    self,
    lists::{self, Stock},
};
use crate::pieces::{caution, exact_or, owned_strip};
use crate::room::steps::{self, Form, Given, Names, Wrong, fact, large};
use crate::words::errors::said;
use crate::words::gear::{self as words, check, cutter as cutting, slanted as says, straight};
use crate::words::{self as all, angle, thread};
use handturn::gear::cutter::for_virtual;
use handturn::gear::table::{Cuts, Geared, Job, Mill, go_on};
use handturn::gear::{Crossed, Helical, HelicalSizes, crossed};
use handturn::head::{Head, Mounting, read as listed};
use handturn::plate::coordinates::Screw;
use handturn::thread::Hand;
use handturn::train::{Search, Six};
use handturn::{Error, Field as Of};
use maud::{Markup, html};

/// The fields of the entry.
pub(super) const NAMES: &[&Names] =
    &[&wheel::TOOTH, &[("ge-helix", "30"), ("ge-hand", "right"), ("ge-face", "20")]];
/// The table as its owner typed it.
const TABLE: &[&Names] = &[&[("ge-gears", ""), ("ge-geared", "worm"), ("ge-same-way", "right")]];
/// The wheel that it runs with.
const MATE: &[&Names] =
    &[&[("ge-mate-teeth", "32"), ("ge-mate-helix", "30"), ("ge-mate-hand", "left")]];
/// Trains listed.
const LISTED: usize = 5;
/// Steps of a search in one answer, as in Thread.
const STEPS: u32 = 400_000;

/// A wheel that is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(in crate::room::gear) wheel: Helical,
    sizes: HelicalSizes,
}

/// The entry.
pub(super) fn entry(form: Form) -> Markup {
    html! {
        (wheel::size(form, wheel::BY_CUTTER))
        div.pair {
            (form.text("ge-helix", says::HELIX))
            (form.text("ge-face", says::FACE))
        }
        (hands(form, "ge-hand", says::HAND))
        (wheel::pressure(form))
        (wheel::more(form))
    }
}

fn hands(form: Form, name: &str, label: &str) -> Markup {
    html! {
        div {
            p.lab { (label) }
            (form.choice(name, label, &[("right", says::RIGHT), ("left", says::LEFT)]))
        }
    }
}

/// The wheel that `text` asks for.
pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let wheel = Helical {
        teeth: wheel::teeth(text)?,
        tooth: wheel::tooth(text)?,
        helix: text.angle("ge-helix", Of::Helix)?,
        hand: hand(text, "ge-hand"),
        face: text.length("ge-face", Of::Face)?,
    };
    let sizes = wheel.sizes().map_err(wheel::at)?;
    Ok(Asked { wheel, sizes })
}

fn hand(text: Given, name: &str) -> Hand {
    if text.get(name) == "left" { Hand::Left } else { Hand::Right }
}

/// What it is called.
pub(super) fn heading(asked: &Asked) -> String {
    let name = words::wheel_name(asked.wheel.teeth, &asked.wheel.tooth);
    [name, says::helix(&asked.wheel)].join(", ")
}

/// A step.
pub(super) fn panel(fields: &Fields, asked: &Asked, step: &str) -> Markup {
    match step {
        "cutter" => cutter(fields, asked),
        "depth" => depth(fields, asked),
        "check" => checked(fields, asked),
        _ => blank(asked),
    }
}

/// Keeps the fields of the step that `name` belongs to, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    let head = owned::head(fields);
    let table = lists::mill_table(fields);
    steps::keep_good(fields, TABLE, name, |text| mill(text, &head, table));
    steps::keep_good(fields, MATE, name, |text| mate(text, asked));
}

fn blank(asked: &Asked) -> Markup {
    let Asked { wheel, sizes } = asked;
    html! {
        div.two {
            div.figures {
                (wheel::computed(straight::TURN_TO, sizes.outside_diameter))
                dl.facts {
                    (wheel::size_fact(straight::PITCH_CIRCLE, sizes.pitch_diameter))
                    (wheel::size_fact(straight::BOTTOM, sizes.root_diameter))
                    (wheel::size_fact(says::LEAD, sizes.lead))
                    (wheel::size_fact(says::AXIAL_PITCH, sizes.axial_pitch))
                }
            }
            div.figures {
                h3 { (all::BY_HAND) }
                ul.work { @for line in says::lines(wheel, sizes) { li { (line) } } }
            }
        }
    }
}

fn cutter(fields: &Fields, asked: &Asked) -> Markup {
    let Asked { wheel, sizes } = asked;
    let set = cutters::set(fields, &wheel.tooth);
    html! {
        div.two {
            div.figures {
                @match for_virtual(sizes.virtual_teeth, &set) {
                    Ok(choice) => (cutters::answer(&choice, &set)),
                    Err(error) => (caution(html! { (said(&error, "").wrong) " " (cutting::TOO_FEW) })),
                }
                p { (says::virtual_teeth(wheel, sizes)) }
                (cutters::owned(fields, &wheel.tooth, &|set| for_virtual(sizes.virtual_teeth, set)))
                (cutters::sets(fields))
                p { (cutting::to_get(&words::size(wheel.tooth.size), wheel.tooth.pressure_angle)) }
            }
            div.figures {
                div {
                    p.lab { (says::SWING) }
                    p.answer-big { (angle(wheel.helix)) }
                    p { (says::way(sizes.table_swings)) }
                    @if sizes.beyond_swing { p.care { (says::BEYOND) } }
                }
                figure.draw.plate { (picture::drawing(wheel, sizes)) figcaption.why { (says::SEEN_ABOVE) } }
                p.why { (says::SWING_WHY) }
            }
        }
    }
}

/// The mill that `text` and the head in force make.
fn mill(text: Given, head: &Head, table: Screw) -> Result<Mill, Wrong> {
    let gears = if text.is_empty("ge-gears") {
        head.gears.clone()
    } else {
        listed::gears(text.get("ge-gears")).map_err(|e| ("ge-gears", e))?
    };
    // The studs are others than those of differential: their distance is not known.
    let mounting = Mounting { distance: 0, ..head.mounting };
    let mill = Mill {
        screw: table.lead,
        ratio: head.ratio,
        gears,
        mounting,
        same_way_cuts: hand(text, "ge-same-way"),
    };
    mill.lead(Geared::Worm).map_err(|e| ("", e))?;
    Ok(mill)
}

/// A table with its trains.
struct Worked {
    mill: Mill,
    job: Job,
    cuts: Vec<Cuts>,
    whole: bool,
}

fn work_out(
    text: Given,
    asked: &Asked,
    (head, table): (&Head, Screw),
    six: bool,
) -> Result<Worked, Wrong> {
    let mill = mill(text, head, table)?;
    let geared = if text.get("ge-geared") == "spindle" { Geared::Spindle } else { Geared::Worm };
    let job = Job::of(&asked.wheel, geared, if six { Six::Always } else { Six::Never });
    let mut search = Search::<LISTED>::new();
    let at = |error: Error| match error.field {
        Of::Gears => ("ge-gears", error),
        _ => ("", error),
    };
    let whole = go_on(&mut search, &job, &mill, STEPS).map_err(at)?;
    let cuts: Result<_, _> = search.best().iter().map(|found| mill.cuts(&job, found)).collect();
    Ok(Worked { mill, job, cuts: cuts.map_err(at)?, whole })
}

fn depth(fields: &Fields, asked: &Asked) -> Markup {
    let head = owned::head(fields);
    let six = fields.get("ge-six") == "on";
    let table = lists::mill_table(fields);
    let (worked, wrong) =
        steps::in_force(fields, TABLE, |text| work_out(text, asked, (&head, table), six));
    let form = Form { fields, names: TABLE, wrong: wrong.as_ref() };
    html! {
        div.two {
            div.figures {
                div {
                    p.lab { (straight::WHOLE_DEPTH) }
                    (large(asked.sizes.whole_depth))
                    p.why { (words::rule(asked.wheel.tooth.rule)) }
                }
                (caution(html! { (says::HELIX_CARE) " " (all::FINGERS_OUT) " " (words::MAKERS_CARE) }))
                (table_form(form, &head))
            }
            div.figures {
                @if let Some(("", error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
                @if let Some(worked) = &worked { (trains(fields, asked, worked)) }
            }
        }
    }
}

/// The table as its owner typed it.
fn table_form(form: Form, head: &Head) -> Markup {
    html! {
        section.setup aria-label=(says::GEAR_TABLE) {
            h3 { (says::GEAR_TABLE) }
            (form.choice("ge-geared", says::GEARED, &[("worm", says::ON_WORM), ("spindle", says::ON_SPINDLE)]))
            (owned_strip(form.fields, &[Stock::MillTable]))
            (form.text("ge-gears", says::GEARS))
            @if head.gears.is_empty() && form.typed("ge-gears").trim().is_empty() { p.why { (says::NO_GEARS) } }
            div {
                p.lab { (says::SAME_WAY) }
                (form.choice("ge-same-way", says::SAME_WAY, &[("right", says::RIGHT_HAND), ("left", says::LEFT_HAND)]))
                p.why { (says::SAME_WAY_WHY) }
            }
        }
    }
}

fn trains(fields: &Fields, asked: &Asked, worked: &Worked) -> Markup {
    let place = fields.get("ge-train").parse().unwrap_or(0_usize);
    let Some(cuts) = worked.cuts.get(place).or(worked.cuts.first()) else {
        return html! { p { (says::NO_TRAIN) } };
    };
    let (geared, wanted) = (worked.job.geared, asked.sizes.lead.value);
    let last = if geared == Geared::Worm { all::WORM_SHAFT } else { all::SPINDLE };
    let name = thread::train_name(&cuts.chain);
    html! {
        figure.draw.plate {
            (train::chain(&cuts.chain, 0, (says::TABLE_SCREW, last), &name))
            figcaption.why { (thread::idlers_free(&cuts.chain)) }
        }
        div {
            p { (exact_or(cuts.exact, &says::off(cuts))) " " span.why { (says::NEVER) } }
            p.answer-big.gears {
                @for pair in cuts.chain.pairs() { span { (pair.driver) " " small { (thread::DRIVES) } " " (pair.driven) } " " }
            }
            p.why { (name) }
            p { (says::cuts(cuts, wanted)) }
        }
        @if geared == Geared::Spindle {
            p { (says::teeth_on(cuts, worked.job.grooves)) }
            p.care { (says::SHORT_WHY) }
        } @else { p.why { (says::DIVIDES) } }
        details id="ge-table-working" {
            summary { (all::BY_HAND) }
            ul.work { @for line in says::gear_lines(&worked.mill, geared, wanted, cuts) { li { (line) } } }
        }
        @if worked.cuts.len() > 1 {
            div {
                h3 id="ge-trains" { (thread::NEXT_BEST) }
                ol.candidates aria-labelledby="ge-trains" {
                    @for (place, other) in worked.cuts.iter().enumerate().filter(|(_, other)| *other != cuts) {
                        li {
                            button.alt type="button" data-do="ge-train" data-value=(place) {
                                b { (thread::drives(&other.chain)) } (exact_or(other.exact, &says::off(other)))
                            }
                        }
                    }
                }
            }
        }
        @if worked.job.six == Six::Always {
            @if !worked.whole { p.why { (thread::six_done(false, 0)) } }
        } @else {
            div.acts { button.btn type="button" data-do="ge-six" data-value="on" { (says::TRY_SIX) } }
        }
    }
}

/// The mate that `text` names, and how the two stand.
fn mate(text: Given, asked: &Asked) -> Result<Crossed, Wrong> {
    let at = |name: &'static str| move |error: Error| (name, error);
    let mate = Helical {
        teeth: text.count("ge-mate-teeth", handturn::bounds::WHEEL_TEETH)?,
        helix: text.angle("ge-mate-helix", Of::Helix)?,
        hand: hand(text, "ge-mate-hand"),
        ..asked.wheel
    };
    mate.check().map_err(at("ge-mate-helix"))?;
    crossed(&asked.wheel, &mate).map_err(at("ge-mate-helix"))
}

fn checked(fields: &Fields, asked: &Asked) -> Markup {
    let (pair, wrong) = steps::in_force(fields, MATE, |text| mate(text, asked));
    let form = Form { fields, names: MATE, wrong: wrong.as_ref() };
    html! {
        div.two {
            div.figures {
                section.setup aria-label=(check::CALIPER) {
                    h3 { (check::CALIPER) }
                    (wheel::caliper(&asked.sizes.caliper))
                }
                dl.facts { (fact(says::OVERLAP, &says::overlap(asked.sizes.overlap.value), &[])) }
                p.why { (says::overlap_why(asked.sizes.overlap.value)) }
            }
            section.setup aria-label=(says::MATE) {
                h3 { (says::MATE) }
                div.pair {
                    (form.number("ge-mate-teeth", says::MATE_TEETH))
                    (form.text("ge-mate-helix", says::MATE_HELIX))
                }
                (hands(form, "ge-mate-hand", says::MATE_HAND))
                @if let Some(pair) = &pair {
                    (wheel::computed(says::CENTRES, pair.centre_distance))
                    dl.facts { (fact(says::SHAFTS, &says::shafts(pair.shafts), &[])) }
                }
            }
        }
    }
}
