//! Sheets and tables to work from: where the holes of a ring lie, a template at full size,
//! a tape for a drum, and disks. They serve the plate that is made, and whoever has no head.
use super::{Worked, ask, plate, work_out};
use crate::draw::template::{self, PRINTS, Sheet, Strips, Template};
use crate::fields::Fields;
use crate::pieces::{caution, segmented};
use crate::room::steps::{self, Form, Given, Names, Wrong, about, fact, in_force};
use crate::seam::{Effect, Event};
use crate::words::{self, errors::said, plate as says};
use handturn::head::Sense;
use handturn::measure::Length;
use handturn::number::Approx;
use handturn::plate::coordinates::{Hole, Layout, Screw};
use handturn::plate::disks;
use handturn::plate::ring::Ring;
use handturn::plate::tape::{self, Sizes, Tape};
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

/// How the ring lies, and the table it is drilled on.
const TABLE: [(&str, &str); 9] = [
    ("pl-start", "90"),
    ("pl-sense", "clockwise"),
    ("pl-x", "0"),
    ("pl-y", "0"),
    ("pl-lead", "5"),
    ("pl-marks", "100"),
    ("pl-slack", "0.2"),
    ("pl-fall-x", ""),
    ("pl-fall-y", ""),
];
/// A ring and a tape without a head.
const RING: [(&str, &str); 2] = [("pl-free-ring", "50"), ("pl-free-drill", "2")];
const TAPE: [(&str, &str); 5] = [
    ("pl-drum", "120"),
    ("pl-paper", "0.1"),
    ("pl-stretch", "1"),
    ("pl-thicker", "0.01"),
    ("pl-pitch", ""),
];
const TABLE_NAMES: &[&Names] = &[&TABLE];
const RING_NAMES: &[&Names] = &[&RING];
const TAPE_NAMES: &[&Names] = &[&TAPE];
/// Rows of the table shown at first.
const ROWS: u32 = 24;

/// A ring of holes, and the rim round it.
pub(super) struct Drilled {
    pub(super) ring: Ring,
    pub(super) rim: Option<Length>,
}

/// What a press or a key does to the fields of plate, budget and sheets.
pub(super) fn event(fields: &mut Fields, event: &Event) -> Vec<Effect> {
    match (event.kind, event.name) {
        ("press", "pl-print") => return vec![Effect::Print],
        ("press", "pl-save") => return save(fields, event.value).into_iter().collect(),
        _ => {}
    }
    let (name, value) = (event.name, event.value);
    fields.set(name, value);
    plate::keep(fields, name);
    steps::keep_good(fields, TABLE_NAMES, name, laid);
    steps::keep_good(fields, RING_NAMES, name, |text| free_ring(text, 2));
    steps::keep_good(fields, TAPE_NAMES, name, |text| taped(text, 2));
    Vec::new()
}

/// A sheet as a file: `template`, `free-template`, or `tape` with its number.
fn save(fields: &Fields, which: &str) -> Option<Effect> {
    let sheets = match which.strip_prefix("tape") {
        Some(_) => tapes(fields, parts(fields)?).ok()?,
        None => {
            let drilled =
                if which == "free-template" { free(fields, parts(fields)?) } else { made(fields) };
            vec![sheet(fields, &drilled?).ok()?]
        }
    };
    let number: usize = which.strip_prefix("tape").and_then(|n| n.parse().ok()).unwrap_or(0);
    let name =
        if which.starts_with("tape") { "handturn-tape.svg" } else { "handturn-template.svg" };
    Some(Effect::File(name, sheets.into_iter().nth(number)?.svg.into_string()))
}

fn parts(fields: &Fields) -> Option<u32> {
    ask::last_good(fields)?.question().parts()
}

/// The ring of the plate that stands open.
fn made(fields: &Fields) -> Option<Drilled> {
    let (asked, head) = (ask::last_good(fields)?, crate::owned::head(fields));
    let worked: Worked = work_out(fields, &asked, &head).ok()?;
    plate::plan(&worked, worked.lack?).drilled()
}

/// The ring that is typed where there is no head.
fn free(fields: &Fields, parts: u32) -> Option<Drilled> {
    let ring = in_force(fields, RING_NAMES, |text| free_ring(text, parts)).0?;
    Some(Drilled { ring, rim: None })
}

fn free_ring(text: Given, holes: u32) -> Result<Ring, Wrong> {
    let ring = Ring {
        holes,
        radius: text.length("pl-free-ring", Of::Ring)?,
        drill: text.length("pl-free-drill", Of::Drill)?,
    };
    let blank = handturn::plate::ring::Blank {
        web: Length::from_mm(handturn::number::Fraction::ZERO),
        ..Default::default()
    };
    let at = |error: Error| match error.field {
        Of::Drill => ("pl-free-drill", error),
        Of::Holes => ("", error),
        _ => ("pl-free-ring", error),
    };
    handturn::plate::ring::check(&ring, &blank).map_err(at)?;
    Ok(ring)
}

/// How the ring lies and the screws of the table; the ring itself is put in later.
fn laid(text: Given) -> Result<(Layout, [Screw; 2]), Wrong> {
    let one = Length::from_mm(handturn::number::Fraction::ONE);
    let sense = text.get("pl-sense");
    let layout = Layout {
        holes: 2,
        diameter: one,
        first: text.angle("pl-start", Of::Angle)?,
        sense: if sense == "anticlockwise" { Sense::Anticlockwise } else { Sense::Clockwise },
        centre: [text.length("pl-x", Of::Length)?, text.length("pl-y", Of::Length)?],
    };
    layout.check().map_err(|e| ("pl-x", e))?;
    let screw = |falls| {
        Ok(Screw {
            lead: text.length("pl-lead", Of::Table)?,
            marks: text.count("pl-marks", bounds::TABLE_MARKS)?,
            slack: text.length("pl-slack", Of::Table)?,
            falls: text.get(falls) == "on",
        })
    };
    let screws = [screw("pl-fall-x")?, screw("pl-fall-y")?];
    let lead = |screw: &Screw| screw.mark().map_err(|e| ("pl-lead", e));
    screws.iter().try_for_each(|screw| lead(screw).map(|_| ()))?;
    Ok((layout, screws))
}

fn layout(fields: &Fields, ring: &Ring) -> (Option<(Layout, [Screw; 2])>, Option<Wrong>) {
    let (laid, wrong) = in_force(fields, TABLE_NAMES, laid);
    let put = |(layout, screws)| {
        let diameter = plate::twice(ring.radius);
        (Layout { holes: ring.holes, diameter, ..layout }, screws)
    };
    (laid.map(put), wrong)
}

/// The template of a ring.
fn sheet(fields: &Fields, of: &Drilled) -> Result<Sheet, Error> {
    let ring = layout(fields, &of.ring).0.ok_or(Error::new(Of::Ring, handturn::Cause::Conflict))?.0;
    let title = says::template_title(of.ring.holes, of.ring.radius, of.ring.drill);
    let rim = of.rim.map(plate::twice);
    template::template(&Template {
        ring: &ring,
        drill: of.ring.drill,
        rim,
        title: &title,
        check: says::BAR,
    })
}

/// The buttons of the sheets, and the one that stands open. `free`: without a head.
pub(super) fn sheets(fields: &Fields, of: &Drilled, free: bool) -> Markup {
    let names: &[(&str, &str)] = if free {
        &[
            ("free-tape", says::TAPE),
            ("free-disks", says::DISKS),
            ("free-template", says::TEMPLATE),
            ("free-table", says::COORDINATES),
        ]
    } else {
        &[("table", says::COORDINATES), ("template", says::TEMPLATE)]
    };
    let open = fields.get("pl-open");
    let open = names.iter().find(|(value, _)| *value == open).map_or("", |(value, _)| value);
    html! {
        div.acts {
            @for (value, label) in names {
                button.btn id=(["pl-", value].concat()) type="button" data-do="pl-open" data-value=(if *value == open { "" } else { value }) aria-expanded=(*value == open) { (label) }
            }
        }
        @match open {
            "" => {},
            "free-tape" => (tape_sheet(fields, of.ring.holes)),
            "free-disks" => (disk_facts(fields, of)),
            "table" | "free-table" => (table(fields, of)),
            value => (shown(fields, sheet(fields, of).map(|sheet| vec![sheet]), value)),
        }
    }
}

/// Sheets with how to keep and to print them.
fn shown(fields: &Fields, sheets: Result<Vec<Sheet>, Error>, which: &str) -> Markup {
    let sheets = match sheets {
        Ok(sheets) => sheets,
        Err(error) => return caution(html! { (said(&error, "").wrong) }),
    };
    let large = sheets.iter().any(|sheet| sheet.size.0 > PRINTS.0 || sheet.size.1 > PRINTS.1);
    let tape = which == "tape";
    html! {
        p.why { (says::PRINT_WHY) @if large { " " (says::TOO_LARGE) } }
        @if !tape {
            @let form = Form { fields, names: TABLE_NAMES, wrong: None };
            div.pair { (form.text("pl-start", says::FIRST_AT)) (counted(fields)) }
        }
        div.acts {
            @for number in 0..sheets.len() {
                @let value = if tape { [which, &number.to_string()].concat() } else { which.to_owned() };
                button.btn id=(["pl-save-", &value].concat()) type="button" data-do="pl-save" data-value=(value) { (says::save(number, sheets.len())) }
            }
            button.btn type="button" data-do="pl-print" { (says::PRINT) }
        }
        div.sheets { @for sheet in &sheets { (sheet.svg) } }
    }
}

fn counted(fields: &Fields) -> Markup {
    let form = Form { fields, names: TABLE_NAMES, wrong: None };
    html! {
        div {
            p.lab { (says::COUNTED) }
            (segmented("pl-sense", says::COUNTED, form.typed("pl-sense"), &[
                ("clockwise", words::CLOCKWISE), ("anticlockwise", words::ANTICLOCKWISE),
            ]))
        }
    }
}

/// The coordinates of every hole, and what the dials read there.
fn table(fields: &Fields, of: &Drilled) -> Markup {
    let (laid, wrong) = layout(fields, &of.ring);
    let form = Form { fields, names: TABLE_NAMES, wrong: wrong.as_ref() };
    let asked: Option<u32> = fields.get("pl-rows").parse().ok();
    let rows = asked.unwrap_or(ROWS).min(of.ring.holes);
    let tick = |name: &str, label: &str| {
        html! { label.tick { input type="checkbox" name=(name) checked[form.typed(name) == "on"]; (label) } }
    };
    html! {
        div.pair {
            (form.text("pl-start", says::FIRST_AT))
            (counted(fields))
            (form.text("pl-x", says::CENTRE_X))
            (form.text("pl-y", says::CENTRE_Y))
            (form.text("pl-lead", says::LEAD))
            (form.number("pl-marks", says::MARKS))
            (form.text("pl-slack", says::SLACK))
            div { (tick("pl-fall-x", says::FALLS_X)) (tick("pl-fall-y", says::FALLS_Y)) }
        }
        p.why { (says::DIALS_WHY) }
        @if let Some((ring, screws)) = &laid {
            @if let Ok(worst) = ring.worst(screws) {
                p.why { (says::by_dials(worst.onwards.value, worst.onwards_arcsec.value, worst.neighbours_arcsec.value)) }
            }
            div.scroll tabindex="0" role="region" aria-label=(says::COORDINATES) {
                table.lim {
                    thead { tr { th scope="col" { (says::HOLE_NO) } th scope="col" { "X" } th scope="col" { "Y" } th scope="col" { (says::DIAL_X) span.in { (says::TURNS_MARKS) } } th scope="col" { (says::DIAL_Y) span.in { (says::TURNS_MARKS) } } th scope="col" { (says::OFF) } } }
                    tbody { @for k in 0..rows { @if let Ok(hole) = ring.hole(screws, k) { (row(k, &hole)) } } }
                }
            }
            @if rows < of.ring.holes {
                button.btn id="pl-more" type="button" data-do="pl-rows" data-value=(rows.saturating_mul(4)) { (words::show_rows(rows, of.ring.holes)) }
            }
        }
    }
}

fn row(k: u32, hole: &Hole) -> Markup {
    let place = |at: Approx| html! { b { (words::about_mm(at.value)) } span.in { (words::about(at.value / 25.4, 4)) " in" } };
    html! {
        tr {
            th scope="row" { (k) }
            @for at in hole.centre.from_edges { td { (place(at)) } }
            @for reading in &hole.dial { td { b { (says::reading(reading.turns, reading.mark)) } span.in { (says::comes(reading)) } } }
            td { (words::about_mm(hole.onwards.value)) }
        }
    }
}

fn disk_facts(fields: &Fields, of: &Drilled) -> Markup {
    html! {
        p.why { (says::DISKS_WHY) }
        (ring_fields(fields, false))
        @match disks::round(of.ring.holes, plate::twice(of.ring.radius)) {
            Ok(found) => dl.facts { (about(says::DISK, found.disk.value)) (about(says::CENTRAL, found.central.value)) },
            Err(error) => (caution(html! { (said(&error, "").wrong) })),
        }
    }
}

/// A tape that is asked for, its sizes, and the drum for a pitch wanted.
fn taped(text: Given, parts: u32) -> Result<(Tape, Sizes, Option<Approx>), Wrong> {
    let tape = Tape {
        parts,
        drum: text.length("pl-drum", Of::Drum)?,
        thickness: text.length("pl-paper", Of::Length)?,
        stretch_per_mille: text.number("pl-stretch", Of::Length)?,
        thicker: text.length("pl-thicker", Of::Length)?,
    };
    let sizes = tape.sizes().map_err(|error| match error.field {
        Of::Drum => ("pl-drum", error),
        Of::Parts => ("", error),
        _ => ("pl-paper", error),
    })?;
    let wanted = text.length_if("pl-pitch", Of::Pitch)?;
    let drum = wanted.map(|pitch| tape::drum(parts, pitch, tape.thickness)).transpose();
    Ok((tape, sizes, drum.map_err(|e| ("pl-pitch", e))?))
}

fn tapes(fields: &Fields, parts: u32) -> Result<Vec<Sheet>, Error> {
    let (taped, wrong) = in_force(fields, TAPE_NAMES, |text| taped(text, parts));
    let missing = wrong.map_or(Error::new(Of::Drum, handturn::Cause::Conflict), |(_, error)| error);
    let (tape, sizes, _) = taped.ok_or(missing)?;
    let title = says::tape_title(parts, tape.drum, sizes.pitch.value);
    let strips =
        Strips { parts, sizes: &sizes, title: &title, check: says::BAR, joint: says::JOINT };
    Ok(template::tape(&strips))
}

fn tape_sheet(fields: &Fields, parts: u32) -> Markup {
    let (taped, wrong) = in_force(fields, TAPE_NAMES, |text| taped(text, parts));
    let form = Form { fields, names: TAPE_NAMES, wrong: wrong.as_ref() };
    html! {
        p.why { (says::START) }
        div.pair {
            (form.text("pl-drum", says::DRUM))
            (form.text("pl-paper", says::PAPER))
            (form.number("pl-stretch", says::STRETCH))
            (form.text("pl-thicker", says::THICKER))
            (form.text("pl-pitch", says::PITCH))
        }
        @if let Some((_, sizes, drum)) = &taped {
            @let gap = sizes.lap.value < 0.0;
            dl.facts {
                (about(says::PITCH_IS, sizes.pitch.value))
                (about(says::LENGTH, sizes.length.value))
                @if let Some(drum) = drum { (about(says::DRUM_FOR, drum.value)) }
                (fact(if gap { says::GAP } else { says::LAP }, &(words::about_mm(sizes.lap.value.abs()) + " mm"), &[&words::seconds(says::angle(sizes.lap_arcsec.value.abs()))]))
                (fact(says::TENTH, &words::seconds(says::angle(sizes.tenth_arcsec.value)), &[]))
            }
            p.why { (says::LAP_WHY) }
            (shown(fields, tapes(fields, parts), "tape"))
        }
    }
}

/// The fields of a ring without a head.
fn ring_fields(fields: &Fields, drilled: bool) -> Markup {
    let parts = parts(fields).unwrap_or(2);
    let wrong = in_force(fields, RING_NAMES, |text| free_ring(text, parts)).1;
    let form = Form { fields, names: RING_NAMES, wrong: wrong.as_ref() };
    html! {
        div.pair {
            (form.text("pl-free-ring", says::RING))
            @if drilled { (form.text("pl-free-drill", says::DRILL)) }
        }
        @if let Some(("", error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
    }
}

/// For whoever has no head yet: folded away until it is asked for.
pub(super) fn no_head(fields: &Fields, parts: Option<u32>) -> Markup {
    let open = fields.get("pl-no-head") == "on";
    html! {
        section.fold id="no-head" aria-label=(says::NO_HEAD) {
            button.btn id="pl-no-head" type="button" data-do="pl-no-head" data-value=(if open { "" } else { "on" }) aria-expanded=(open) { (says::NO_HEAD) }
            @if open {
                p.why { (says::NO_HEAD_WHY) }
                @match parts {
                    None => p.why { (says::NEEDS_PARTS) },
                    Some(parts) => {
                        @let chosen = fields.get("pl-open");
                        @if matches!(chosen, "free-template" | "free-table") { (ring_fields(fields, true)) }
                        @let ring = in_force(fields, RING_NAMES, |text| free_ring(text, parts)).0;
                        @let blank = || Ring { holes: parts, radius: Length::from_mm(handturn::number::Fraction::whole(50)), drill: Length::from_mm(handturn::number::Fraction::whole(2)) };
                        (sheets(fields, &Drilled { ring: ring.unwrap_or_else(blank), rim: None }, true))
                    },
                }
            }
        }
    }
}
