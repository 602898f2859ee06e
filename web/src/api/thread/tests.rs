//! What is asked of threads and what is refused, on the host.
use super::*;
use crate::api::looked::{at, json, near, text};

#[track_caller]
fn asked(about: &str, request: &str) -> Given {
    answer(about, &json(request)).unwrap_or_else(|refusal| panic!("{request}: {refusal:?}"))
}

#[test]
fn a_name_gives_its_threads_and_reads_again() {
    let found = answer("read", &Given::Text("M6x0.75-6g".to_owned())).unwrap();
    text(&found, "0.name", "M6x0.75");
    text(&found, "0.class", "6g");
    text(&found, "0.pitch.exact", "0.75 mm");
    let several = answer("read", &Given::Text("10".to_owned())).unwrap();
    let Given::List(several) = several else { panic!("a list") };
    assert!(several.len() > 1);
    let all = answer("all", &Given::Nothing).unwrap();
    let Given::List(series) = &all else { panic!("a list") };
    assert_eq!(series.len(), 24);
    for one in series {
        let Given::List(names) = one.get("names") else { panic!("names") };
        for name in names {
            let read = answer("read", name).unwrap();
            let Given::List(read) = read else { panic!("a list") };
            // What two series list stands under the first: 1-8 UN is 1-8 UNC.
            let unified = |found: &Given| *found.get("form") == Given::Text("Unified".to_owned());
            let again = name.to_string().ends_with(" UN\"") && unified(&read[0]);
            assert!(again || read.iter().any(|found| found.get("name") == name), "{name}");
        }
    }
}

#[test]
fn every_usual_class_is_told_by_its_own_name() {
    for thread in ["M6", "1/4-20 UNC", "1/4 BSW", "G 1/8", "2 BA", "Tr16x4", "1/2-10 Acme"] {
        let sizes = asked("sizes", &format!("{{\"thread\": {thread:?}}}"));
        let Given::List(limits) = sizes.get("limits") else { panic!("limits") };
        assert!(limits.len() >= 2, "{thread}");
        for one in limits {
            let (Given::Text(class), Given::Text(side)) = (one.get("class"), one.get("side"))
            else {
                panic!("texts")
            };
            let again =
                format!("{{\"thread\": {thread:?}, \"class\": {class:?}, \"side\": {side:?}}}");
            assert_eq!(at(&asked("sizes", &again), "limits.0"), one, "{again}");
        }
    }
}

#[test]
fn the_clock_s_arbor_from_blank_to_wires() {
    let arbor = r#"{"thread": "M6x0.75", "class": "6g"}"#;
    let sizes = asked("sizes", arbor);
    text(&sizes, "limits.0.pitch_diameter.max.exact", "5.491 mm");
    text(&sizes, "limits.0.pitch_diameter.min.exact", "5.391 mm");
    let blank = asked("blank", arbor);
    text(&blank, "to.exact", "5.908 mm");
    text(&blank, "side", "screw");
    let over = asked("over", r#"{"thread": "M6x0.75", "wire": 0.45}"#);
    near(&over, "max.over_wires.mm", 6.1921, 0.0001);
    let read = r#"{"thread": "M6x0.75", "wire": 0.45, "reading": "6.25", "setOver": 29.5}"#;
    let from = asked("from", read);
    text(&from, "verdict", "MoreToCut");
    near(&from, "to_limit.diameter.mm", 6.25 - 6.1921, 0.0005);
    let wires = asked("wires", r#"{"thread": "M6x0.75", "owned": [0.3, 0.4, "0.45 mm", [1, 2]]}"#);
    text(&wires, "chosen.exact", "0.45 mm");
    near(&wires, "best.mm", 0.75 / 3_f64.sqrt(), 1e-9);
    let drills = asked("drills", r#"{"thread": "1/4-20 UNC", "percent": 75, "sets": ["number"]}"#);
    text(&drills, "0.drill.name", "7");
    let which = asked("which", r#"{"diameter": "0.187 in", "pitch": "32 tpi"}"#);
    text(&which, "0.thread.series", "Bsf");
    text(&which, "1.reasons.0", "Angle");
}

#[test]
fn passes_are_listed_in_part_and_one_by_one() {
    let cut = r#"{"thread": "M6x0.75", "nose": {"flat": 0}, "depth": 0.518,
        "first": 0.18, "least": 0.04, "dial": {"division": 0.02, "marks": 100}"#;
    let depths =
        asked("infeed", r#"{"thread": "M6x0.75", "work": 5.91, "nose": {"radius": 0.108}}"#);
    near(&depths, "straight.mm", 0.451, 0.001);
    near(&depths, "set_over", 29.5, 0.0);
    near(&depths, "on_bed_scale", 60.5, 0.0);
    let all = asked("passes", &format!("{cut}}}"));
    near(&all, "count", 9.0, 0.0);
    near(&all, "left_out", 0.0, 0.0);
    text(&all, "passes.3.reading.shows.exact", "0.36 mm");
    let some = asked("passes", &format!("{cut}, \"from\": 4, \"most\": 2}}"));
    near(&some, "left_out", 7.0, 0.0);
    assert_eq!(at(&some, "passes.0"), at(&all, "passes.3"));
    let one = pass(&json(&format!("{cut}}}")), &Given::Number(4.0)).unwrap();
    assert_eq!(one, *at(&all, "passes.3"));
    for (number, cause) in
        [(0.0, "OutOfRange"), (10.0, "OutOfRange"), (-1.0, "OutOfRange"), (1.5, "NotWhole")]
    {
        let refusal = pass(&json(&format!("{cut}}}")), &Given::Number(number)).unwrap_err();
        assert_eq!((&*refusal.field, &*refusal.cause), ("number", cause), "{number}");
    }
}

#[test]
fn gears_for_a_metric_lead_and_a_worm() {
    let lathe = r#""lathe": {"screw": "8 tpi", "gears": "20 30 40 50 60 127"}"#;
    let found = asked("gears", &format!("{{\"thread\": \"M6x0.75\", {lathe}}}"));
    assert_eq!(*at(&found, "trains.0.exact"), Given::Flag(true));
    assert_eq!(*at(&found, "finished"), Given::Flag(true));
    near(&found, "trains.0.pairs.0.driver", 30.0, 0.0);
    near(&found, "trains.0.pairs.0.driven", 127.0, 0.0);
    text(&found, "trains.0.cuts.exact", "0.75 mm");
    let worm = asked("gears", &format!("{{\"module\": 1, \"six\": 50, {lathe}}}"));
    assert_eq!(*at(&worm, "trains.0.exact"), Given::Flag(false));
    near(&worm, "lead.mm", std::f64::consts::PI, 1e-12);
    assert_eq!(*at(&worm, "lead.exact"), Given::Nothing);
    let short =
        asked("gears", &format!("{{\"lead\": 0.75, \"six\": \"always\", \"steps\": 1, {lathe}}}"));
    assert_eq!(*at(&short, "finished"), Given::Flag(false));
}

#[track_caller]
fn refused(about: &str, request: &str, field: &str, cause: &str, says: &str) {
    let refusal = answer(about, &json(request)).unwrap_err();
    assert_eq!(
        (&*refusal.field, &*refusal.cause),
        (field, cause),
        "{request}: {}",
        refusal.message
    );
    assert!(refusal.message.contains(says), "{request}: {}", refusal.message);
}

#[test]
fn what_is_wrong_is_refused_by_name() {
    refused("sizes", "{}", "thread", "Empty", "the name of a thread");
    refused("sizes", r#"{"thred": "M6"}"#, "thred", "Unknown", "Known: thread, side, class");
    refused("sizes", r#"{"thread": "M6x9"}"#, "thread", "Conflict", "9");
    refused("sizes", r#"{"thread": ""}"#, "thread", "Empty", ".");
    refused("sizes", r#"{"thread": "M6", "class": "2A"}"#, "class", "Conflict", "2A");
    refused(
        "sizes",
        r#"{"thread": "M6", "class": "6g", "side": "nut"}"#,
        "class",
        "Conflict",
        "6g",
    );
    refused("sizes", r#"{"thread": "M6", "class": "x 1 6g"}"#, "class", "Conflict", "6g");
    refused("sizes", r#"{"thread": "M6", "side": "bolt"}"#, "side", "WrongKind", "screw or nut");
    refused(
        "sizes",
        r#"{"thread": {"name": "M6", "pick": 3}}"#,
        "thread.pick",
        "OutOfRange",
        "from 0 to 0",
    );
    let own = |more: &str| format!(r#"{{"thread": {{"form": "metric", "major": 20, {more}}}}}"#);
    refused("sizes", &own(r#""pitch": 0"#), "thread.pitch", "OutOfRange", "0.05 to 200 mm");
    refused("sizes", &own(r#""pitch": -1.5"#), "thread.pitch", "OutOfRange", "0.05 to 200 mm");
    refused("sizes", &own(r#""pitch": "0 tpi""#), "thread.pitch", "Zero", "0");
    refused(
        "sizes",
        &own(r#""pitch": 1.5, "starts": 0"#),
        "thread.starts",
        "OutOfRange",
        "1 to 60",
    );
    refused("sizes", &own(r#""pitch": 1.5, "starts": 1.5"#), "thread.starts", "NotWhole", "1.5");
    refused("sizes", &own(r#""pitch": 30"#), "thread.pitch", "Conflict", "does not go");
    refused("drills", r#"{"thread": "M6", "percent": 120}"#, "percent", "OutOfRange", "30 to 100");
    refused("drills", r#"{"thread": "M6", "drills": [20]}"#, "drills", "Empty", "drill");
    refused("infeed", r#"{"thread": "M6", "nose": {"flat": 0.5}}"#, "nose", "Blunt", "at most");
    refused(
        "infeed",
        r#"{"thread": "M6", "side": "nut", "work": 7}"#,
        "work",
        "Conflict",
        "go together",
    );
    refused("passes", r#"{"thread": "M6", "least": 0}"#, "least", "Zero", "0");
    refused("passes", r#"{"thread": "M6", "spring": -1}"#, "spring", "OutOfRange", "0 to 20");
    refused("passes", r#"{"thread": "M6", "most": 0}"#, "most", "OutOfRange", "1 to 420");
    refused("passes", r#"{"thread": "M6", "dial": {"division": 0}}"#, "dial", "Zero", "0");
    refused(
        "passes",
        r#"{"thread": "M6", "dial": {"reads": "diameter"}}"#,
        "dial.reads",
        "Conflict",
        "dial",
    );
    refused("over", r#"{"thread": "M6", "wire": 0.1}"#, "wire", "WireSinks", "mm");
    refused("over", r#"{"thread": "M6", "wire": 5}"#, "wire", "WireRides", "mm");
    refused("over", r#"{"thread": "M6", "wire": -1}"#, "wire", "OutOfLengths", "mm");
    refused("over", r#"{"thread": "M6", "side": "nut", "wire": 0.6}"#, "side", "Conflict", ".");
    refused("from", r#"{"thread": "M6", "wire": 0.6, "reading": 1}"#, "reading", "Conflict", ".");
    let gears = |lead: &str, gears: &str| {
        format!(r#"{{{lead}, "lathe": {{"screw": "8 tpi", "gears": {gears}}}}}"#)
    };
    refused("gears", &gears(r#""lead": 0.75"#, "[0]"), "lathe.gears", "OutOfRange", "8 to 250");
    refused("gears", &gears(r#""lead": 0.75"#, "[]"), "lathe.gears", "Empty", "gear");
    refused("gears", &gears(r#""lead": 900"#, "[20, 60]"), "lead", "OutOfRange", "mm");
    refused(
        "gears",
        &gears(r#""lead": 1, "module": 1"#, "[20, 60]"),
        "lead",
        "WrongKind",
        "one of",
    );
    refused("gears", &gears(r#""lead": 1, "steps": 0"#, "[20, 60]"), "steps", "OutOfRange", "1 to");
    refused(
        "gears",
        r#"{"lead": 1, "lathe": {"screw": 0, "gears": [20, 30]}}"#,
        "lathe.screw",
        "OutOfRange",
        "mm",
    );
    refused("which", r#"{"diameter": 5, "pitch": 0}"#, "pitch", "OutOfRange", "mm");
}
