//! What is asked of wheels and what is refused, on the host.
use super::*;
use crate::api::looked::{at, json, near, text};

#[track_caller]
fn asked(about: &str, request: &str) -> Given {
    answer(about, &json(request)).unwrap_or_else(|refusal| panic!("{request}: {refusal:?}"))
}

#[track_caller]
fn refused(about: &str, request: &str, field: &str, cause: &str) -> String {
    let refusal = answer(about, &json(request)).unwrap_err();
    assert_eq!((&*refusal.field, &*refusal.cause), (field, cause), "{}", refusal.message);
    refusal.message
}

#[test]
fn a_wheel_by_module_and_by_diametral_pitch() {
    let wheel = asked("sizes", r#"{"teeth": 64, "module": 1}"#);
    text(&wheel, "outside_diameter.exact", "66 mm");
    text(&wheel, "whole_depth.exact", "2.25 mm");
    text(&wheel, "depth_rule", "coarse");
    near(&wheel, "thickness.mm", std::f64::consts::FRAC_PI_2, 1e-12);
    let wheel = asked("sizes", r#"{"teeth": 32, "diametralPitch": 8, "pressureAngle": "14.5"}"#);
    text(&wheel, "outside_diameter.exact", "107.95 mm");
    text(&wheel, "depth_rule", "old");
    near(&wheel, "whole_depth.inch", 0.2696, 0.0001);
    let own = r#"{"teeth": 12, "module": "2", "depth": {"addendum": 0.8, "dedendum": 1}}"#;
    text(&asked("sizes", own), "whole_depth.exact", "3.6 mm");
    assert_eq!(
        *at(&asked("sizes", r#"{"teeth": 12, "module": 1}"#), "undercut"),
        Given::Flag(true)
    );
}

#[test]
fn cutters_by_either_numbering() {
    let cutter = asked("cutter", r#"{"teeth": 64, "numbering": "module"}"#);
    near(&cutter, "cutter.number", 7.0, 0.0);
    near(&cutter, "cutter.other_number", 2.0, 0.0);
    let cutter = asked("cutter", r#"{"teeth": 64, "halves": true}"#);
    near(&cutter, "until", 79.0, 0.0);
    let cutter = asked("cutter", r#"{"teeth": 38, "owned": [4, "7 1/2", 8]}"#);
    near(&cutter, "cutter.number", 4.0, 0.0);
    assert_eq!(*at(&cutter, "in_range"), Given::Flag(false));
    let by_virtual = asked("cutter", r#"{"virtualTeeth": 16.6}"#);
    near(&by_virtual, "cutter.number", 7.0, 0.0);
    near(&by_virtual, "beside.number", 6.0, 0.0);
}

#[test]
fn blank_size_pitch_and_swing() {
    let blank = asked("blank", r#"{"teeth": 64, "module": 1, "outside": 65.9}"#);
    text(&blank, "depth.exact", "2.2 mm");
    text(&blank, "height", "Fair");
    let told = asked("tell", r#"{"outside": "3.25 in", "teeth": 24}"#);
    near(&told, "nearest_diametral_pitch.diametral_pitch", 8.0, 0.0);
    assert_eq!(*at(&told, "is_module"), Given::Flag(false));
    near(&asked("teeth", r#"{"outside": 66, "module": 1}"#), "teeth", 64.0, 0.0);
    let pitch = asked("pitch", r#"{"circularPitch": "1 in"}"#);
    near(&pitch, "module.inch", std::f64::consts::FRAC_1_PI, 1e-12);
    let ring = asked("pitch", r#"{"chord": "2.5 in", "teeth": 48}"#);
    near(&ring, "diameter.inch", 38.225, 0.001);
    near(&asked("pitch", r#"{"diameter": 40, "teeth": 75}"#), "chord.mm", 1.675, 0.001);
    let setup =
        r#"{"outside": 225, "depth": 2.25, "centreHeight": 100, "cutter": 63, "collar": 40}"#;
    let room = asked("swing", setup);
    text(&room, "over_table.exact", "−12.5 mm");
    assert_eq!(*at(&room, "table_clears"), Given::Flag(false));
}

#[test]
fn a_pair_at_a_distance_and_for_a_backlash() {
    let pair = |more: &str| {
        [r#"{"module": 1, "first": {"teeth": 64}, "second": {"teeth": 38}, "#, more, "}"].concat()
    };
    let run = asked("mesh", &pair(r#""centres": 51.05"#));
    text(&run, "standard.exact", "51 mm");
    near(&run, "backlash.mm", 0.036, 0.001);
    near(&run, "contact_ratio.value", 1.70, 0.001);
    let set = asked("mesh", &pair(r#""backlash": 0.05"#));
    near(&set, "centres.mm", 51.068, 0.001);
    let open = asked("opening", &pair(r#""centres": 51, "measured": 0.02, "wanted": 0.05"#));
    near(&open, "opening.mm", 0.041, 0.001);
    let teeth = asked("pair", r#"{"module": 3, "centres": 54, "ratio": "1.25"}"#);
    near(&teeth, "first", 16.0, 0.0);
    near(&teeth, "second", 20.0, 0.0);
}

#[test]
fn teeth_are_measured_and_trial_gaps_read() {
    let wheel = |more: &str| [r#"{"teeth": 20, "module": 1"#, more, "}"].concat();
    near(&asked("caliper", &wheel("")), "thickness.mm", 1.56918, 0.00001);
    let span = asked("span", &wheel(r#", "across": 3, "reading": 7.62"#));
    near(&span, "reading.mm", 7.6604, 0.0001);
    near(&span, "thickness.mm", std::f64::consts::FRAC_PI_2 - 0.043, 0.001);
    let pins = asked("pins", &wheel(r#", "pin": 1.728"#));
    near(&pins, "over.reading.mm", 22.39, 0.0001);
    assert_eq!(*at(&asked("pins", &wheel("")), "pin"), Given::Nothing);
    let owned = asked("pins", &wheel(r#", "owned": [1, 1.7, 2.5]"#));
    text(&owned, "pin.exact", "1.7 mm");
    let trial = asked("trial", &wheel(r#", "across": 3, "reading": 8"#));
    near(&trial, "wanted.mm", 7.6604, 0.0001);
    near(&trial, "deeper.mm", 0.374, 0.001);
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    refused("sizes", r#"{"teeth": 3, "module": 1}"#, "teeth", "OutOfRange");
    refused("sizes", r#"{"teeth": 30, "diametralPitch": 0}"#, "diametralPitch", "Zero");
    refused("sizes", r#"{"teeth": 30}"#, "module", "Empty");
    refused("sizes", r#"{"teeth": 30, "module": 1, "diametralPitch": 8}"#, "module", "WrongKind");
    refused("sizes", r#"{"teeth": 30, "module": 1, "angle": 20}"#, "angle", "Unknown");
    refused("sizes", r#"{"teeth": 8, "module": 1, "shift": 0.8}"#, "outside", "Pointed");
    refused(
        "sizes",
        r#"{"teeth": 8, "module": 1, "pressureAngle": 40}"#,
        "pressureAngle",
        "OutOfRange",
    );
    let few = refused("cutter", r#"{"teeth": 11}"#, "teeth", "TooFewTeeth");
    assert!(few.contains("12"), "{few}");
    refused("cutter", r#"{"teeth": 30, "owned": [9]}"#, "owned.0", "WrongKind");
    refused("blank", r#"{"teeth": 64, "module": 1, "outside": 64}"#, "outside", "OutOfLengths");
    let pin = r#"{"teeth": 20, "module": 1, "pin": 0.5}"#;
    refused("pins", pin, "pin", "PinFalls");
    let limits = answer("pins", &json(pin)).unwrap_err().limits;
    let Some(super::super::Limits::Lengths { least_mm, greatest_mm }) = limits else {
        panic!("{limits:?}")
    };
    assert!(least_mm > 0.5 && greatest_mm > 1.728, "{limits:?}");
    refused("span", r#"{"teeth": 20, "module": 1, "across": 9}"#, "across", "OutOfRange");
    refused("trial", r#"{"teeth": 20, "module": 1}"#, "reading", "Empty");
    let pair = r#"{"module": 1, "first": {"teeth": 64}, "second": {"teeth": 38}, "centres": 60}"#;
    refused("mesh", pair, "centres", "OutOfLengths");
    refused("mesh", &pair.replace("38", "3"), "second.teeth", "OutOfRange");
    refused("none", "{}", "about", "Unknown");
}
