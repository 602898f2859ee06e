use super::*;
use crate::room::visit::Visit;

impl Visit {
    /// Begins the passes of the thread that is asked for, and has them saved.
    fn begin(&mut self) -> String {
        self.press("th-tab", "cut");
        self.press("th-job-begin", "");
        let begun = self.asked.iter().find(|effect| effect.starts_with("begin "));
        let id =
            begun.and_then(|effect| effect.split(' ').nth(1)).expect("a job begins").to_owned();
        self.send("kept", &id, "begun 12:00:00");
        self.send("lock", &id, "held");
        id
    }
}

#[test]
fn a_thread_is_sized_by_its_name() {
    let mut visit = Visit::to("thread");
    visit.shows(&[
        "M6 × 0.75",
        "Screw, 6g Max Min Outside 5.978 0.2354 in 5.838",
        "Pitch dia. (effective) 5.491 0.2162 in 5.391 0.2122 in",
        "Nut, 6H Max Min",
        "Hole 5.378 0.2117 in 5.188",
        "Limits from the tables of ISO 965-1.",
    ]);
    visit.typed("th-name", "2 ba");
    visit.shows(&["2 BA", "Screw, normal", "47½°"]);
    visit.press("th-side", "nut");
    visit.shows(&["Nut, normal"]);
    visit.typed("th-name", "M6x0.75-4h");
    visit.shows(&["Screw, 4h"]);
    visit.typed("th-name", "3/8 x 32 me");
    visit.shows(&["3/8 × 32 ME", "55°"]);
    visit.typed("th-name", "M10 x 1 LH");
    visit.shows(&["M10 × 1, left hand"]);
}

#[test]
fn what_cannot_be_read_leaves_the_last_good_thread() {
    let mut visit = Visit::to("thread");
    visit.typed("th-name", "2 BA");
    visit.typed("th-name", "2 BX");
    visit.shows(&["Last good answer: 2 BA", "No thread goes by this name. You typed"]);
    visit.press("th-how", "own");
    visit.typed("th-pitch", "0");
    visit.shows(&["Pitch can’t be 0.", "Last good answer: "]);
    visit.typed("th-pitch", "32 tpi");
    visit.typed("th-major", "0.25 in");
    visit.shows(&["Metric 6.35 × 0.794"]);
    visit.typed("th-pitch", "20");
    visit.shows(&[
        "This pitch does not go with the thread: its series must have it, and a core must be left.",
    ]);
}

#[test]
fn arrow_keys_go_from_step_to_step() {
    let mut visit = Visit::to("thread");
    visit.send("key", "ArrowRight", "button th-tab-size");
    assert!(visit.asked.contains(&"focus th-tab-cut".to_owned()), "{:?}", visit.asked);
    visit.shows(&["Pass 1 of"]);
    visit.send("key", "ArrowLeft", "button th-tab-cut");
    visit.send("key", "End", "button th-tab-size");
    visit.shows(&["Over three 0.45 mm wires"]);
}

#[test]
fn the_passes_are_readings_of_the_dial() {
    let mut visit = Visit::to("thread");
    visit.press("th-tab", "cut");
    visit.typed("th-nose-mm", "0.108");
    visit.typed("th-work", "5.91");
    visit.typed("th-first", "0.18");
    visit.typed("th-least", "0.04");
    visit.shows(&[
        "29½° from square across",
        "60½° if its scale reads zero along the bed",
        "Depth, straight in 0.451 mm",
        "Depth on the top slide 0.518 mm 20.4 thou",
        "Pass 1 of 7. Top slide to 0.18 mm 9 marks from zero, 0.02 mm a mark. 7.1 thou on an inch dial.",
        "3 0.36 14.2 thou +0.08",
        "No mark of this dial brings thread and lead screw together again. Keep the half nuts shut.",
    ]);
    visit.typed("own-top-slide", "0.1in / 100");
    visit.typed("own-cross-slide", "0.1in / 100");
    visit.typed("th-first", "");
    visit.typed("th-least", "");
    visit.shows(&[
        "Top slide to 0.007 in 7 marks from zero, 0.001 in a mark. 0.178 mm on a metric dial.",
    ]);
    visit.typed("th-nose-mm", "0.5");
    visit.shows(&["The tool’s nose is too wide for the root: at most"]);
    visit.typed("th-nose-mm", "");
    visit.typed("th-least", "0.1");
    visit.shows(&["The least cut must be no more than the first"]);
}

#[test]
fn a_bore_is_cut_the_other_way() {
    let mut visit = Visit::to("thread");
    visit.press("th-side", "nut");
    visit.press("th-tab", "cut");
    visit.shows(&[
        "Touch on in a bore of 5.283 mm",
        "swung clockwise, seen from above",
        "In a bore the dial counts back: mark 9",
        "Does the boring tool fit",
    ]);
    visit.typed("th-bar", "5");
    visit.shows(&["The tool does not come out clear of the thread."]);
}

#[test]
fn a_tick_shows_when_the_store_has_it() {
    let mut visit = Visit::to("thread");
    let id = visit.begin();
    visit.shows(&[
        "M6 × 0.75, 6g, screw",
        "Pass 1 of 8",
        "Saved on this device at 12:00:00",
        "A screwed-on chuck can unwind in reverse",
    ]);
    visit.press("th-job-tick", "1");
    let asked =
        format!("append {id} 0 {{\"what\":\"tick\",\"value\":1,\"at_ms\":{}}}", visit.at_ms);
    assert!(visit.asked.contains(&asked), "{:?}", visit.asked);
    visit.shows(&["Pass 1 of 8", "Saving…"]);
    visit.press("th-job-tick", "1");
    visit.shows(&["Pass 1 of 8", "Not counted: the tick before is still being saved."]);
    visit.send("kept", &id, "0 12:00:05");
    visit.shows(&["Pass 2 of 8", "12:00:05"]);
    visit.press("th-job-tick", "7");
    assert!(visit.asked.is_empty(), "only the next pass can be ticked: {:?}", visit.asked);
    visit.press("th-job-undo", "");
    visit.send("kept", &id, "1 12:00:09");
    visit.shows(&["Pass 1 of 8"]);
    visit.press("th-job-tick", "1");
    visit.send("kept", &id, "2 12:00:11");
    visit.send("key", "Undo", "");
    assert!(
        visit.asked.iter().any(|effect| effect.starts_with(&format!("append {id} 3 "))),
        "{:?}",
        visit.asked
    );
    visit.send("kept", &id, "3 12:00:13");
    visit.send("seen", "visible", "");
    assert_eq!(visit.asked, ["awake on"]);
    // Another thread asked for changes nothing of what is under way.
    visit.typed("th-name", "Tr16x4");
    visit.shows(&["M6 × 0.75, 6g, screw", "Pass 1 of 8"]);
}

#[test]
fn what_the_store_refuses_is_said() {
    let mut visit = Visit::to("thread");
    let id = visit.begin();
    visit.press("th-job-tick", "1");
    visit.send("unkept", &id, "0 full");
    visit.shows(&["Not saved: the device’s store is full. Write the ticks down.", "Pass 2 of 8"]);
    let mut visit = Visit::to("thread");
    let id = visit.begin();
    visit.press("th-job-tick", "1");
    visit.send("unkept", &id, "0 taken");
    assert!(visit.asked.contains(&format!("look {id}")), "{:?}", visit.asked);
    visit.shows(&[
        "Not counted: another tab ticks.",
        "Pass 1 of 8",
        "Another tab ticks these passes",
    ]);
    visit.press("th-job-tick", "1");
    assert!(visit.asked.is_empty(), "{:?}", visit.asked);
    let mut visit = Visit::to("thread");
    visit.send("storage", "refused", "closed");
    visit.press("th-tab", "cut");
    visit.press("th-job-begin", "");
    visit.shows(&["Not saved: the browser refuses its store."]);
    visit.press("th-job-tick", "1");
    visit.shows(&["Pass 2 of 8"]);
    // It is asked at each tick; once it answers again, passes and ticks go into it.
    let begun = |visit: &Visit| {
        let mut begun = visit.asked.iter().filter_map(|asked| asked.strip_prefix("begin "));
        let (id, lines) = begun.next().and_then(|begun| begun.split_once(' ')).unwrap();
        assert!(lines.starts_with("1\n") && lines.contains("\"what\":\"tick\""), "{lines}");
        id.to_owned()
    };
    let id = begun(&visit);
    visit.send("unkept", &id, "begun closed");
    visit.send("storage", "ready", "");
    assert_eq!(begun(&visit), id);
    visit.shows(&["Pass 2 of 8"]);
    visit.send("kept", &id, "begun 12:00:09");
    visit.shows(&["Pass 2 of 8", "Saved on this device at 12:00:09"]);
}

#[test]
fn a_measurement_sets_the_passes_anew() {
    let mut visit = Visit::to("thread");
    let id = visit.begin();
    visit.press("th-job-tick", "1");
    visit.send("kept", &id, "0 12:00:05");
    visit.typed("th-so-far", "5.562");
    visit.shows(&[
        "0.071 mm to go",
        "Feed 0.036 mm straight in, or 0.041 mm on the top slide (1.6 thou)",
    ]);
    visit.press("th-measured", "");
    visit.send("kept", &id, "1 12:00:07");
    visit.shows(&["Counted on from the measurement, the dial 10 marks from zero.", "Pass 1 of"]);
    visit.typed("th-so-far", "5.38");
    visit.shows(&["0.011 mm under. It will be loose."]);
}

#[test]
fn a_job_comes_back_from_the_store_and_nothing_else_does() {
    let mut visit = Visit::to("thread");
    visit.press("th-tab", "cut");
    visit.press("th-job-begin", "");
    let begun = visit.asked.iter().find(|effect| effect.starts_with("begin ")).unwrap().clone();
    let (id, lines) = begun["begin ".len()..].split_once(' ').unwrap();
    let kept = lines.replacen("0\n", "1\n", 1) + "\n0 {\"what\":\"tick\",\"value\":1,\"at_ms\":5}";
    let mut later = Visit::to("thread");
    later.send("stored", id, &kept);
    later.press("th-tab", "cut");
    later.shows(&["Passes under way: M6 × 0.75, 6g, screw, 1 of 8 passes cut."]);
    later.press("th-job-resume", id);
    assert!(later.asked.contains(&format!("look {id}")), "{:?}", later.asked);
    later.send("stored", id, &kept);
    later.shows(&["Pass 2 of 8"]);
    for end in (0..kept.len()).step_by(3).filter(|end| kept.is_char_boundary(*end)) {
        assert!(job::from_lines(&kept[..end]).is_err(), "{end}");
    }
    for (old, new) in [
        ("\"version\":1", "\"version\":2"),
        ("\"tick\",\"value\":1", "\"tick\",\"value\":2"),
        ("\"spring\":1", "\"spring\":21"),
        ("\"what\":\"tick\"", "\"what\":\"undo\",\"x\":0"),
    ] {
        assert!(job::from_lines(&kept.replace(old, new)).is_err() || !kept.contains(old), "{new}");
    }
    assert!(job::from_lines(&kept.replace("\"version\":1", "\"version\":2")).is_err());
    assert!(job::from_lines(&kept).is_ok());
}

#[test]
fn wires_and_what_a_reading_means() {
    let mut visit = Visit::to("thread");
    visit.press("th-tab", "measure");
    visit.shows(&[
        "Over three 0.45 mm wires 6.092 to 6.192 mm 0.2398 to 0.2438 in",
        "5.491 + 1.350 − 0.650 = 6.191",
        "Best wire 0.433 mm.",
    ]);
    visit.typed("th-reading", "6.262");
    visit.shows(&["0.070 mm to go", "Feed 0.035 mm straight in, or 0.040 mm on the top slide"]);
    visit.typed("th-reading", "6.08");
    visit.shows(&["0.012 mm under. It will be loose."]);
    visit.typed("th-reading", "6.15");
    visit.shows(&["Within the limits"]);
    visit.typed("th-wire", "0.3");
    visit.shows(&[
        "That wire sinks below the crests. Use 0.412 to 0.663 mm.",
        "Over three 0.45 mm wires",
    ]);
    visit.typed("th-wire", "0.8");
    visit.shows(&["That wire rides on the crests. Use 0.412 to 0.663 mm."]);
    visit.typed("th-wire", "");
    visit.typed("own-wires", "0.4 x");
    visit.shows(&["Over three 0.45 mm wires", "14 wires 0.3 to 3 mm"]);
    visit.typed("own-wires", "2 3");
    visit.shows(&["None of your wires serves here", "Over three 0.43 mm wires"]);
    visit.press("th-side", "nut");
    visit.shows(&["Wires measure screws."]);
}

#[test]
fn blank_drills_and_holes() {
    let mut visit = Visit::to("thread");
    visit.shows(&[
        "Turn the blank to 5.908 mm 0.2326 in Middle of 5.838 to 5.978.",
        "For a die: 5.925 mm",
        "Die under power: slowest speed; the holder must slip, not your hand.",
        "Tapping drill you own 5.3 mm 72 % of full height (1.299 × pitch); 86 % of the nut’s own (1.083 × pitch).",
        "To bore for cutting it: 5.283 mm",
        "Clearance hole, medium 6.600 mm drill 6.6 mm",
        "Pitch dia. (effective): 6.000 − 2 × 0.2436 = 5.513",
    ]);
    visit.typed("th-percent", "60");
    visit.shows(&["Tapping drill you own 5.4 mm 62 %"]);
    visit.typed("th-percent", "20");
    visit.shows(&["Engagement must be from 30 to 100. You typed 20 .", "5.4 mm 62 %"]);
    visit.typed("th-percent", "70");
    visit.typed("own-drills", "number");
    visit.shows(&["Tapping drill you own No. 4 (5.309 mm)", "80 drills"]);
    visit.typed("own-drills", "number -#4");
    visit.shows(&["Tapping drill you own No. 3 (5.410 mm)", "79 drills"]);
    visit.typed("own-drills", "5.25 0.21in");
    visit.shows(&["Tapping drill you own 5.334 mm 68 %", "Also: 5.25 mm 77 %."]);
    visit.typed("own-drills", "5.25 x!");
    visit.shows(&["Tapping drill you own 5.334 mm 68 %"]);
    visit.typed("th-name", "2 BA");
    visit.shows(&["4.700 − 2 × 0.2425 = 4.215"]);
    visit.typed("th-name", "Tr16x4");
    assert!(!visit.text().contains("For a die"));
}

#[test]
fn which_thread_it_is() {
    let mut visit = Visit::to("thread");
    visit.press("th-how", "which");
    visit.shows(&[
        "3/16 BSF diameter measured −0.013 mm, pitch just as measured 3/16 × 32 cycle",
        "10-32 UNF",
        "Beside the nearest: its flanks stand at 60°; it is 0.064 mm larger.",
        "2 BA",
    ]);
    visit.typed("th-over", "0");
    visit.shows(&["Diameter must be from 0.2", "3/16 BSF"]);
    visit.typed("th-over", "100");
    visit.shows(&["No listed thread is near this. Try My own."]);
    visit.press("th-name", "2 BA");
    visit.shows(&["Screw, normal"]);
}

#[test]
fn gears_for_a_lead() {
    let mut visit = Visit::to("thread");
    visit.press("th-tab", "gear");
    visit.shows(&[
        "+3457 ppm 0.75 mm lead on a screw of 3.175 mm 20 drives 45 40 drives 75",
        "It cuts 0.75259 mm for 0.75 mm: 346 µm too long (13.61 thou) over 100 mm.",
        "20 × 40 ÷ (45 × 75) = 32/135",
        "A gear of 127: 30 drives 127. Divide a 127 gear",
        "Look at six gears too",
    ]);
    visit.typed("own-lathe-gears", "20 30 40 50 60 127");
    visit.shows(&["Exact 0.75 mm lead", "30 drives 127", "3.175 × 30/127 = 0.75 mm", "Idler 20."]);
    visit.typed("own-lathe-gears", "20 0");
    visit.shows(&["30 drives 127", "6 gears 20 30 40 50 60 127"]);
    visit.typed("own-lathe-gears", "20 30 40");
    visit.typed("th-name", "M100x0.1");
    visit.shows(&["The lead must be from"]);
    visit.typed("th-name", "M6");
    visit.press("th-lead", "module");
    visit.shows(&["A worm’s lead has π in it, so no train is exact.", "Wanted: π × 1 = 3.1416 mm"]);
    visit.press("th-six", "on");
    visit.shows(&["Trains of two, four and six gears are all accounted for"]);
    visit.press("th-worm", "1");
    visit.shows(&["Module, mm", "3.1416 mm lead"]);
    // A twenty DP worm: 25.4 π / 20; its size is a field of its own.
    visit.press("th-lead", "dp");
    visit.shows(&["3.9898 mm lead"]);
    visit.press("th-lead", "module");
    visit.press("divide-n", "127");
    visit.shows(&["Equal parts in one turn"]);
}

#[test]
fn a_wrong_reaction_is_called_by_its_name() {
    let mut visit = Visit::to("thread");
    visit.press("th-tab", "cut");
    visit.typed("th-reaction", "0");
    visit.shows(&["Time from seeing to stopping must be from 1 to 10,000."]);
}

#[test]
fn a_reading_goes_over_to_the_passes() {
    let mut visit = Visit::to("thread");
    visit.begin();
    visit.press("th-tab", "measure");
    visit.typed("th-reading", "6.262");
    visit.shows(&["Take it to the passes"]);
    visit.press("th-so-far", "5.561");
    assert!(visit.asked.contains(&"focus th-so-far".to_owned()), "{:?}", visit.asked);
    visit.shows(&["0.070 mm to go", "Go on from there"]);
}

#[test]
fn a_flat_root_is_cut_with_a_flat_nose_and_widened() {
    let mut visit = Visit::to("thread");
    visit.typed("th-name", "Tr16x8 P4 LH");
    visit.press("th-tab", "cut");
    visit.shows(&[
        "Tr16 × 4, 2 starts, left hand",
        "taken as 1.200",
        "Then widen the groove along the bed by",
        "swung clockwise, seen from above",
        "start 2 at 4.000 mm.",
        "30 teeth on for each start.",
        "Left hand: the tool travels towards the tailstock",
    ]);
    visit.typed("th-driver", "61");
    visit.shows(&["its teeth must be a multiple of 2."]);
}

#[test]
fn a_name_of_letters_only_or_over_nothing_is_said_to_be_none() {
    let mut visit = Visit::to("thread");
    for name in ["M", "1/0 BSF"] {
        visit.typed("th-name", name);
        visit.shows(&["No thread goes by this name.", "Write M6x0.75, 1/4 BSF, 2 BA or Tr16x4."]);
    }
}

#[test]
fn a_drill_over_the_limit_of_the_hole_is_said_to_be() {
    let mut visit = Visit::to("thread");
    visit.typed("th-name", "1/4 x 40 ME");
    visit.shows(&["5.8 mm 68 %", "Over the hole’s limit of 5.766 mm."]);
    visit.typed("th-name", "M6x0.75");
    visit.shows(&["Tapping drill you own 5.3 mm"]);
    assert!(!visit.text().contains("Over the hole’s limit"));
}

#[test]
fn the_lead_angle_says_what_it_adds_where_the_last_figure_shows_it() {
    let mut visit = Visit::to("thread");
    visit.typed("th-name", "M6x0.75");
    visit.press("th-tab", "measure");
    visit.shows(&[
        "6.092 to 6.192",
        "5.491 + 1.350 − 0.650 = 6.191",
        "it adds 0.0006 mm to the formula; it is counted in",
    ]);
}

#[test]
fn taps_and_dies_of_the_shop_are_told() {
    let mut visit = Visit::to("thread");
    assert!(!visit.text().contains("Tap:") && !visit.text().contains("Die:"));
    visit.shows(&["Taps none", "Dies none"]);
    visit.typed("own-taps", "M6; 2 BA");
    visit.typed("own-dies", "M6 x 0.75; 2 BA");
    visit.shows(&["Tap: not in your list", "Die: you have it , M6 x 0.75"]);
    visit.press("th-tab", "cut");
    visit.shows(&["Die: you have it"]);
    visit.press("th-side", "nut");
    visit.shows(&["Tap: not in your list"]);
    visit.typed("own-taps", "M6 x 0.75; 2 BA");
    visit.shows(&["Tap: you have it , M6 x 0.75"]);
    // What can't be read changes nothing.
    visit.typed("own-taps", "M6 x 0.75; 2 BX");
    visit.shows(&["Tap: you have it"]);
    visit.typed("th-name", "2 BA");
    visit.shows(&["Tap: you have it , 2 BA"]);
    visit.press("th-how", "own");
    visit.shows(&["Tap: not in your list"]);
}
