//! One file a topic; each reads its rows and says what became of each.
mod bench_fits;
mod cones;
mod coverage;
mod dials;
mod differential;
mod direct;
mod fits;
mod fitting;
mod gearing;
mod holes;
mod lifts;
mod pairs;
mod placed;
mod sizes;
mod springs;
mod standards;
mod sums;
mod tapers;
mod threads;
mod wheels_cut;
mod wheels_measured;
mod wheels_shaped;
mod wheels_slanted;
mod wires;

use handturn::divide::{Answer, Kind, Move, Parts, Question, Repeated, Way, answer};
use handturn::head::Head;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn_tests::roomy;
use handturn_tests::rows::{About, read};
use serde::de::DeserializeOwned;

/// A file of rows and how they are checked.
pub(crate) struct Topic {
    /// Its file.
    pub(crate) file: &'static str,
    /// What its rows hold.
    pub(crate) title: &'static str,
    /// Checks every row.
    pub(crate) run: fn() -> Vec<Outcome>,
}

/// What became of a row.
pub(crate) struct Outcome {
    /// The row.
    pub(crate) about: About,
    /// Whether it is a printed error or a setting that doesn't exist.
    pub(crate) refused: bool,
    /// Why it fails, if it does.
    pub(crate) result: Result<(), String>,
}

/// Every topic, in the page's order.
pub(crate) const TOPICS: &[Topic] = &[
    Topic { file: "plain.csv", title: "plain indexing", run: holes::plain },
    Topic { file: "angular.csv", title: "angular indexing", run: holes::angular },
    Topic { file: "single.csv", title: "a decimal of a turn on one circle", run: holes::single },
    Topic { file: "compound.csv", title: "compound indexing", run: pairs::compound },
    Topic {
        file: "decimals.csv",
        title: "a decimal of a turn on two circles",
        run: pairs::decimals,
    },
    Topic { file: "direct.csv", title: "direct indexing", run: direct::direct },
    Topic {
        file: "direct_coverage.csv",
        title: "all a direct plate can do",
        run: direct::coverage,
    },
    Topic {
        file: "differential.csv",
        title: "differential indexing: move, gears, idlers",
        run: differential::differential,
    },
    Topic { file: "coverage.csv", title: "all that plates can do", run: coverage::coverage },
    Topic { file: "plates.csv", title: "plates as listed", run: coverage::plates },
    Topic { file: "accumulated.csv", title: "errors that build up", run: sums::accumulated },
    Topic {
        file: "trains.csv",
        title: "clock trains, and dividing their wheels",
        run: sums::trains,
    },
    Topic { file: "ratios.csv", title: "ratios of wheels", run: sums::ratios },
    Topic { file: "leads.csv", title: "a lathe's change gears", run: gearing::leads },
    Topic {
        file: "substitutes.csv",
        title: "gears for 25.4, for π and for a table's lead",
        run: gearing::substitutes,
    },
    Topic { file: "wheels.csv", title: "wheels to divide", run: sums::wheels },
    Topic { file: "thread_basic.csv", title: "basic sizes of threads", run: sizes::basic },
    Topic {
        file: "thread_limits.csv",
        title: "limits of size of threads",
        run: sizes::limits_of_size,
    },
    Topic {
        file: "thread_form.csv",
        title: "the Whitworth form by pitch",
        run: sizes::whitworth_form,
    },
    Topic {
        file: "thread_tolerances.csv",
        title: "tolerances of ISO 965-1",
        run: sizes::tolerances,
    },
    Topic {
        file: "thread_allowance.csv",
        title: "allowances of Acme threads",
        run: sizes::allowances,
    },
    Topic {
        file: "tapping_drills.csv",
        title: "tapping drills and the thread they leave",
        run: sizes::tapping_drills,
    },
    Topic {
        file: "thread_fitting.csv",
        title: "clearance holes and relief grooves",
        run: fitting::round_a_thread,
    },
    Topic { file: "thread_taper.csv", title: "taper pipe threads", run: fitting::taper },
    Topic { file: "drills.csv", title: "number and letter drills", run: fitting::drills },
    Topic {
        file: "drill_lists.csv",
        title: "drills by name, fraction and size",
        run: fitting::drill_lists,
    },
    Topic {
        file: "wires_contact.csv",
        title: "threads over wires: exact contact",
        run: threads::contact,
    },
    Topic {
        file: "wires_steep.csv",
        title: "threads over wires: steep leads",
        run: threads::steep,
    },
    Topic { file: "wires_formula.csv", title: "threads over wires: tables", run: threads::formula },
    Topic {
        file: "wires_worked.csv",
        title: "threads over wires: worked examples",
        run: threads::worked,
    },
    Topic {
        file: "wires_constants.csv",
        title: "threads over wires: constants",
        run: threads::constants,
    },
    Topic {
        file: "wires_range.csv",
        title: "threads over wires: usable wires",
        run: threads::range,
    },
    Topic { file: "lead_angles.csv", title: "lead angles of threads", run: threads::lead_angles },
    Topic { file: "tool_widths.csv", title: "widths of threading tools", run: threads::widths },
    Topic {
        file: "infeed.csv",
        title: "depth of threads by the tool’s nose",
        run: threads::depths,
    },
    Topic { file: "starts.csv", title: "threads of several starts", run: threads::starts },
    Topic { file: "dials.csv", title: "verniers and what they read", run: dials::verniers },
    Topic {
        file: "dial_screws.csv",
        title: "marks of a dial that suit a screw",
        run: dials::screws,
    },
    Topic { file: "half_nuts.csv", title: "when half nuts may close", run: threads::half_nuts },
    Topic { file: "wheel_sizes.csv", title: "sizes of wheels", run: wheels_cut::sizes },
    Topic { file: "wheel_cutters.csv", title: "involute cutters", run: wheels_cut::cutters },
    Topic {
        file: "wheel_cutter_spread.csv",
        title: "sets of cutters by equal error",
        run: wheels_cut::spread,
    },
    Topic {
        file: "wheel_pitches.csv",
        title: "circular and chordal pitch",
        run: wheels_cut::pitches,
    },
    Topic { file: "wheel_mesh.csv", title: "wheels that run together", run: wheels_cut::meshed },
    Topic {
        file: "wheel_involute.csv",
        title: "the involute function",
        run: wheels_measured::functions,
    },
    Topic { file: "wheel_chordal.csv", title: "teeth by caliper", run: wheels_measured::chords },
    Topic { file: "wheel_span.csv", title: "spans over teeth", run: wheels_measured::spans },
    Topic { file: "wheel_pins.csv", title: "teeth over pins", run: wheels_measured::over_pins },
    Topic { file: "wheel_helix.csv", title: "helical wheels", run: wheels_slanted::helical },
    Topic {
        file: "wheel_crossed.csv",
        title: "helical wheels on crossed shafts",
        run: wheels_slanted::crossing,
    },
    Topic {
        file: "wheel_leads.csv",
        title: "a table’s change gears for a helix",
        run: wheels_slanted::leads,
    },
    Topic { file: "wheel_worm.csv", title: "worms and their wheels", run: wheels_slanted::worms },
    Topic { file: "wheel_bevel.csv", title: "bevel wheels", run: wheels_slanted::bevels },
    Topic { file: "wheel_rack.csv", title: "racks", run: wheels_slanted::racks },
    Topic {
        file: "holes_placed.csv",
        title: "holes of a ring: places, chords, disks",
        run: placed::placed,
    },
    Topic {
        file: "wheel_flats.csv",
        title: "corners and sides of flats",
        run: wheels_shaped::polygons,
    },
    Topic { file: "wheel_corners.csv", title: "bolts across corners", run: wheels_shaped::heads },
    Topic { file: "wheel_splines.csv", title: "metric splines", run: wheels_shaped::iso_splines },
    Topic {
        file: "wheel_inch_splines.csv",
        title: "inch splines",
        run: wheels_shaped::inch_splines,
    },
    Topic { file: "wheel_clock.csv", title: "leaves of clock pinions", run: wheels_shaped::leaves },
    Topic {
        file: "wheel_pairs.csv",
        title: "clock wheels that share a cutter",
        run: wheels_shaped::pairs,
    },
    Topic {
        file: "bench_cones.csv",
        title: "knurls, countersinks, points, speeds, heats and colours",
        run: cones::cones,
    },
    Topic { file: "wheel_cams.csv", title: "cam lobes", run: wheels_shaped::cams },
    Topic { file: "fit_classes.csv", title: "ISO 286 classes", run: fits::classes },
    Topic { file: "fit_play.csv", title: "ISO 286 fits", run: fits::play },
    Topic { file: "shop_fits.csv", title: "fits by rules of the shop", run: bench_fits::shop },
    Topic { file: "bent_sheet.csv", title: "bent sheet", run: bench_fits::bent },
    Topic {
        file: "wire_tensile.csv",
        title: "tensile strength of music wire",
        run: wires::tensile,
    },
    Topic { file: "taper_standards.csv", title: "standard tapers", run: standards::standards },
    Topic { file: "tapers.csv", title: "tapers and set-overs", run: tapers::tapers },
    Topic {
        file: "disk_pairs.csv",
        title: "angles by two disks, or a disk and a square",
        run: tapers::pairs,
    },
    Topic { file: "tilts.csv", title: "sine bars", run: lifts::bars },
    Topic { file: "chords.csv", title: "chords from hole to hole", run: lifts::chords },
    Topic { file: "wire_gauges.csv", title: "wire gauges", run: wires::gauges },
    Topic { file: "bends.csv", title: "spring-back", run: wires::bends },
    Topic { file: "springs.csv", title: "springs", run: springs::springs },
    Topic { file: "rivets.csv", title: "rivets with round heads", run: springs::rivets },
];

/// Checks each row of `file`; `check` says whether the row is one to refuse and why it fails.
fn each<Row: DeserializeOwned>(
    file: &str,
    check: impl Fn(&Row) -> (bool, Result<(), String>) + Sync,
) -> Vec<Outcome> {
    let outcome = |(about, row): (About, Row)| {
        let (refused, result) = check(&row);
        Outcome { about, refused, result }
    };
    roomy(|| read(file).into_iter().map(outcome).collect())
}

fn ask(question: &Question, head: &Head) -> Result<Answer<400>, String> {
    answer::<400>(question, head).map_err(|e| e.to_string())
}

/// The ways of `kind` among all of `answer`.
fn ways(answer: &Answer<400>, kind: Kind) -> Vec<Way> {
    let rated = answer.group(kind).map_or(&[][..], |group| &group.closest);
    rated.iter().map(|rated| rated.way).collect()
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

/// An angle of the work, set once.
fn angle(turns: Fraction) -> Question<'static> {
    Question::Angle(Repeated { angle: Angle::from_turns(turns), times: 1 })
}

/// Turns and holes of the first leg of a move, and its circle.
fn figures(step: &Move) -> Option<(u32, u32, u32)> {
    let leg = step.legs.first()?;
    Some((leg.turns, leg.spaces, leg.from.of))
}

fn must(holds: bool, otherwise: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(otherwise()) }
}
