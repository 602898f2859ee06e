//! Answers made of several values: each of them is held, and none can be left out.
use crate::found;
use crate::shapes::hold;
use crate::wide::Wide;
use handturn::number::Approx;
use serde::Serialize;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Where a value stands in an answer, the truth, what its bound is told relative to, and
/// how many roundings of a float of that size the bound may be.
pub(crate) type Truth = (&'static str, Wide, f64, f64);

/// A truth told relative to its own size.
pub(crate) fn own(at: &'static str, truth: Wide, lazy: f64) -> Truth {
    let scale = truth.magnitude();
    (at, truth, scale, lazy)
}

/// Holds every approximate value of an answer against its truth; fails where the answer
/// has one more or one less.
#[track_caller]
pub(crate) fn hold_all(what: &str, answer: &impl Serialize, truths: &[Truth]) {
    let mut came = BTreeMap::new();
    let told = serde_json::to_value(answer).expect("plain data");
    gather(String::new(), &told, &mut came);
    let names: BTreeSet<&str> = came.keys().map(String::as_str).collect();
    let held: BTreeSet<&str> = truths.iter().map(|truth| truth.0).collect();
    assert_eq!(names, held, "{what}: left: in the answer; right: held");
    for (at, truth, scale, lazy) in truths {
        // A bound may be told relative to what came, which is a hair off.
        hold(&format!("{at} of {what}"), came[*at], truth, *scale, *lazy * (1.0 + 1e-9));
    }
}

fn gather(at: String, value: &Value, came: &mut BTreeMap<String, Approx>) {
    let within = |name: &str| if at.is_empty() { name.to_owned() } else { format!("{at}.{name}") };
    match value {
        Value::Object(fields) if fields.len() == 2 && fields.contains_key("bound") => {
            let float = |name: &str| fields[name].as_f64().expect("a finite float");
            came.insert(at, Approx { value: float("value"), bound: float("bound") });
        }
        Value::Object(fields) => {
            fields.iter().for_each(|(name, value)| gather(within(name), value, came));
        }
        Value::Array(all) => {
            let each = all.iter().enumerate();
            each.for_each(|(k, value)| gather(within(&k.to_string()), value, came));
        }
        _ => {}
    }
}

/// Public functions whose answer has approximate values within it, and the test of this
/// crate that holds them to their bounds.
const HELD: &[(&str, &str)] = &[
    ("Bend::former", "formers_and_what_comes_off_them"),
    ("Bend::trial", "formers_and_what_comes_off_them"),
    ("Bevel::sizes", "bevel_pairs"),
    ("Chamfer::legs", "chamfers"),
    ("Compression::coils_for", "springs_that_push"),
    ("Compression::pushed", "springs_that_push"),
    ("Countersink::depths", "countersinks"),
    ("DrillPoint::depths", "points_of_drills"),
    ("Extension::pulled", "springs_that_pull"),
    ("Fit::above", "knurls"),
    ("Fit::below", "knurls"),
    ("Helical::sizes", "helical_wheels"),
    ("Knurl::fit", "knurls"),
    ("Layout::centre", "holes_lie_where_they_belong_and_dials_bring_the_table_there"),
    ("Layout::hole", "holes_lie_where_they_belong_and_dials_bring_the_table_there"),
    ("Layout::worst", "holes_lie_where_they_belong_and_dials_bring_the_table_there"),
    ("Mill::cuts", "what_a_table_cuts"),
    ("Rack::place", "racks"),
    ("Rack::sizes", "racks"),
    ("Rivet::filled", "rivets"),
    ("Screw::after", "a_dial_reads_moves_to_its_nearest_mark"),
    ("Screw::after_about", "a_dial_reads_moves_to_its_nearest_mark"),
    ("Speeds::owned", "speeds"),
    ("Speeds::turns", "speeds"),
    ("Spur::arcs", "pairs_are_within_their_bounds"),
    ("Tape::sizes", "tapes_close"),
    ("Tilt::choices", "pieces_for_a_tilt"),
    ("Torsion::turned", "springs_that_turn"),
    ("Worm::sizes", "worms_and_their_wheels"),
    ("WormPair::wheel", "worms_and_their_wheels"),
    ("bend::fold", "strips_with_bends"),
    ("blind::drill", "clearances_and_holes_for_taps"),
    ("budget::budget", "what_a_budget_says_of_rounding_lies_within_its_bounds"),
    ("cam::lobe", "cams"),
    ("cam::steps", "cusps"),
    ("centre::moves", "cuts_on_centre"),
    ("chain::sum", "chains"),
    ("chordal::rack", "calipers_on_racks"),
    ("clock::sizes", "clock_wheels"),
    ("disks::disks", "two_disks"),
    ("disks::in_ring", "disks_touch_and_pins_measure"),
    ("disks::round", "disks_touch_and_pins_measure"),
    ("disks::square_to", "disks_touch_and_pins_measure"),
    ("dovetail::measure", "dovetails_by_rollers"),
    ("fine::design", "fine_dials"),
    ("fine::steps", "fine_dials"),
    ("flats::flats", "flats_by_their_triangles"),
    ("helical::crossed", "helical_wheels"),
    ("infeed::infeed", "depths_of_threads"),
    ("joggle::step", "joggles"),
    ("keyway::keyway", "keyways"),
    ("lead::clearance", "clearances_and_holes_for_taps"),
    ("pair::mesh", "pairs_are_within_their_bounds"),
    ("pair::opening", "pairs_are_within_their_bounds"),
    ("ratchet::cut", "ratchets"),
    ("ring::check", "webs_between_holes"),
    ("sagitta::arc", "arcs"),
    ("sound::sound", "pairs_are_within_their_bounds"),
    ("spline::cut", "splines_by_their_corners"),
    ("square::square", "disks_and_squares"),
    ("spring::arbor", "mandrels"),
    ("steps::plan", "what_stands_between_steps"),
    ("correct::correct", "corrections"),
    ("taper::figures", "tapers_in_every_form"),
    ("set::set", "tapers_in_every_form"),
    ("vee::rest", "rounds_in_a_vee"),
];

/// Those that an oracle holds, and the function of it that does: what pins, spans and
/// calipers read to their bounds, ranges of pins and wires as the ends of what serves,
/// ladders as what comes of a simulation, their budgets' own bounds being held above.
const BY_ORACLE: &[(&str, &str)] = &[
    ("Internal::between_pins", "teeth_measure_what_the_unwound_string_says"),
    ("chordal::tooth", "teeth_measure_what_the_unwound_string_says"),
    ("ladder::ladder", "what_a_ladder_predicts_is_what_comes_of_it"),
    ("pins::over", "teeth_measure_what_the_unwound_string_says"),
    ("pins::range", "teeth_measure_what_the_unwound_string_says"),
    ("span::over", "teeth_measure_what_the_unwound_string_says"),
    ("trial::deeper", "trial_gaps_want_what_the_moved_curve_wants"),
    ("wires::over", "compare"),
    ("wires::range", "compare"),
];

#[test]
fn every_answer_with_approximate_values_is_held() {
    let found = found::composed();
    let all = || HELD.iter().chain(BY_ORACLE);
    let held: BTreeSet<String> = all().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(found, held, "left: in the source; right: in the tables");
    for (folder, table) in [("accuracy", HELD), ("oracle", BY_ORACLE)] {
        let tests = found::functions(folder);
        for (name, test) in table {
            let [body, file] = tests.get(*test).unwrap_or_else(|| panic!("{name}: no {test}"));
            let function = name.rsplit("::").next().expect("a name");
            // An oracle asks from the steps that its tests share.
            let text = if folder == "oracle" { file } else { body };
            assert!(text.contains(function), "{test} does not ask {name}");
        }
    }
}
