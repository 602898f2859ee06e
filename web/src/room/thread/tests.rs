use super::*;
use crate::page;

/// The page with what was done in it, as people do it.
struct Bench {
    state: String,
    page: String,
    asked: Vec<String>,
    at_ms: u64,
}

impl Bench {
    fn new() -> Self {
        let mut bench = Self {
            state: String::new(),
            page: String::new(),
            asked: Vec::new(),
            at_ms: 1_790_000_000_000,
        };
        bench.send("storage", "ready", "");
        bench.send("press", "room", "thread");
        bench
    }

    fn send(&mut self, kind: &str, name: &str, value: &str) {
        self.at_ms += 1000;
        let event = [kind, name, value, &self.at_ms.to_string()].join("\u{1f}");
        let outcome = page::turn(&self.state, &event);
        self.asked.clear();
        for effect in outcome.split('\u{1c}') {
            let parts: Vec<&str> = effect.split('\u{1d}').collect();
            match parts[..] {
                ["state", state] => self.state = state.to_owned(),
                ["put", "page", page] => self.page = page.to_owned(),
                _ => self.asked.push(parts.join(" ")),
            }
        }
    }

    fn press(&mut self, name: &str, value: &str) {
        self.send("press", name, value);
    }

    fn typed(&mut self, name: &str, value: &str) {
        self.send("type", name, value);
    }

    /// What a reader meets: the text without its tags.
    fn text(&self) -> String {
        let mut text = String::new();
        for piece in self.page.split('<').skip(1) {
            text += piece.split_once('>').map_or("", |(_, words)| words);
            text.push(' ');
        }
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    #[track_caller]
    fn shows(&self, wanted: &[&str]) {
        let text = self.text();
        for words in wanted {
            assert!(text.contains(words), "“{words}” is not in: {text}");
        }
    }

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
    let mut bench = Bench::new();
    bench.shows(&[
        "M6 × 0.75",
        "Screw, 6g Max Min Outside 5.978 0.2354 in 5.838",
        "Pitch dia. (effective) 5.491 0.2162 in 5.391 0.2122 in",
        "Nut, 6H Max Min",
        "Hole 5.378 0.2117 in 5.188",
        "Limits from the tables of ISO 965-1.",
    ]);
    bench.typed("th-name", "2 ba");
    bench.shows(&["2 BA", "Screw, normal", "47½°"]);
    bench.press("th-side", "nut");
    bench.shows(&["Nut, normal"]);
    bench.typed("th-name", "M6x0.75-4h");
    bench.shows(&["Screw, 4h"]);
    bench.typed("th-name", "3/8 x 32 me");
    bench.shows(&["3/8 × 32 ME", "55°"]);
    bench.typed("th-name", "M10 x 1 LH");
    bench.shows(&["M10 × 1, left hand"]);
}

#[test]
fn what_cannot_be_read_leaves_the_last_good_thread() {
    let mut bench = Bench::new();
    bench.typed("th-name", "2 BA");
    bench.typed("th-name", "2 BX");
    bench.shows(&["Last good answer: 2 BA", "No thread goes by this name. You typed"]);
    bench.press("th-how", "own");
    bench.typed("th-pitch", "0");
    bench.shows(&["Pitch can’t be 0.", "Last good answer: "]);
    bench.typed("th-pitch", "32 tpi");
    bench.typed("th-major", "0.25 in");
    bench.shows(&["Metric 6.35 × 0.794"]);
    bench.typed("th-pitch", "20");
    bench.shows(&[
        "This pitch does not go with the thread: its series must have it, and a core must be left.",
    ]);
}

#[test]
fn arrow_keys_go_from_step_to_step() {
    let mut bench = Bench::new();
    bench.send("key", "ArrowRight", "button th-tab-size");
    assert!(bench.asked.contains(&"focus th-tab-cut".to_owned()), "{:?}", bench.asked);
    bench.shows(&["Pass 1 of"]);
    bench.send("key", "ArrowLeft", "button th-tab-cut");
    bench.send("key", "End", "button th-tab-size");
    bench.shows(&["Over three 0.45 mm wires"]);
}

#[test]
fn the_passes_are_readings_of_the_dial() {
    let mut bench = Bench::new();
    bench.press("th-tab", "cut");
    bench.typed("th-nose-mm", "0.108");
    bench.typed("th-work", "5.91");
    bench.typed("th-first", "0.18");
    bench.typed("th-least", "0.04");
    bench.shows(&[
        "29½° from square across",
        "60½° if its scale reads zero along the bed",
        "Depth, straight in 0.451 mm",
        "Depth on the top slide 0.518 mm 20.4 thou",
        "Pass 1 of 7. Top slide to 0.18 mm 9 marks from zero, 0.02 mm a mark. 7.1 thou on an inch dial.",
        "3 0.36 14.2 thou +0.08",
        "No mark of this dial brings thread and lead screw together again. Keep the half nuts shut.",
    ]);
    bench.press("th-unit", "inch");
    bench.typed("th-first", "");
    bench.typed("th-least", "");
    bench.shows(&[
        "Top slide to 0.007 in 7 marks from zero, 0.001 in a mark. 0.178 mm on a metric dial.",
    ]);
    bench.typed("th-nose-mm", "0.5");
    bench.shows(&["The tool’s nose is too wide for the root: at most"]);
    bench.typed("th-nose-mm", "");
    bench.typed("th-least", "0.1");
    bench.shows(&["The least cut must be no more than the first"]);
}

#[test]
fn a_bore_is_cut_the_other_way() {
    let mut bench = Bench::new();
    bench.press("th-side", "nut");
    bench.press("th-tab", "cut");
    bench.shows(&[
        "Touch on in a bore of 5.283 mm",
        "swung clockwise, seen from above",
        "In a bore the dial counts back: mark 9",
        "Does the boring tool fit",
    ]);
    bench.typed("th-bar", "5");
    bench.shows(&["The tool does not come out clear of the thread."]);
}

#[test]
fn a_tick_shows_when_the_store_has_it() {
    let mut bench = Bench::new();
    let id = bench.begin();
    bench.shows(&[
        "M6 × 0.75, 6g, screw",
        "Pass 1 of 8",
        "Saved on this device at 12:00:00",
        "A screwed-on chuck can unwind in reverse",
    ]);
    bench.press("th-job-tick", "1");
    let asked =
        format!("append {id} 0 {{\"what\":\"tick\",\"value\":1,\"at_ms\":{}}}", bench.at_ms);
    assert!(bench.asked.contains(&asked), "{:?}", bench.asked);
    bench.shows(&["Pass 1 of 8", "Saving…"]);
    bench.press("th-job-tick", "1");
    bench.shows(&["Pass 1 of 8", "Not counted: the tick before is still being saved."]);
    bench.send("kept", &id, "0 12:00:05");
    bench.shows(&["Pass 2 of 8", "12:00:05"]);
    bench.press("th-job-tick", "7");
    assert!(bench.asked.is_empty(), "only the next pass can be ticked: {:?}", bench.asked);
    bench.press("th-job-undo", "");
    bench.send("kept", &id, "1 12:00:09");
    bench.shows(&["Pass 1 of 8"]);
    bench.press("th-job-tick", "1");
    bench.send("kept", &id, "2 12:00:11");
    bench.send("key", "Undo", "");
    assert!(
        bench.asked.iter().any(|effect| effect.starts_with(&format!("append {id} 3 "))),
        "{:?}",
        bench.asked
    );
    bench.send("kept", &id, "3 12:00:13");
    bench.send("seen", "visible", "");
    assert_eq!(bench.asked, ["awake on"]);
    // Another thread asked for changes nothing of what is under way.
    bench.typed("th-name", "Tr16x4");
    bench.shows(&["M6 × 0.75, 6g, screw", "Pass 1 of 8"]);
}

#[test]
fn what_the_store_refuses_is_said() {
    let mut bench = Bench::new();
    let id = bench.begin();
    bench.press("th-job-tick", "1");
    bench.send("unkept", &id, "0 full");
    bench.shows(&["Not saved: the device’s store is full. Write the ticks down.", "Pass 2 of 8"]);
    let mut bench = Bench::new();
    let id = bench.begin();
    bench.press("th-job-tick", "1");
    bench.send("unkept", &id, "0 taken");
    assert!(bench.asked.contains(&format!("look {id}")), "{:?}", bench.asked);
    bench.shows(&[
        "Not counted: another tab ticks.",
        "Pass 1 of 8",
        "Another tab ticks these passes",
    ]);
    bench.press("th-job-tick", "1");
    assert!(bench.asked.is_empty(), "{:?}", bench.asked);
    let mut bench = Bench::new();
    bench.send("storage", "refused", "closed");
    bench.press("th-tab", "cut");
    bench.press("th-job-begin", "");
    bench.shows(&["Not saved: the browser refuses its store."]);
    bench.press("th-job-tick", "1");
    bench.shows(&["Pass 2 of 8"]);
}

#[test]
fn a_measurement_sets_the_passes_anew() {
    let mut bench = Bench::new();
    let id = bench.begin();
    bench.press("th-job-tick", "1");
    bench.send("kept", &id, "0 12:00:05");
    bench.typed("th-so-far", "5.562");
    bench.shows(&[
        "0.071 mm to go",
        "Feed 0.036 mm straight in, or 0.041 mm on the top slide (1.6 thou)",
    ]);
    bench.press("th-measured", "");
    bench.send("kept", &id, "1 12:00:07");
    bench.shows(&["Counted on from the measurement, the dial 10 marks from zero.", "Pass 1 of"]);
    bench.typed("th-so-far", "5.38");
    bench.shows(&["0.011 mm under. It will be loose."]);
}

#[test]
fn a_job_comes_back_from_the_store_and_nothing_else_does() {
    let mut bench = Bench::new();
    bench.press("th-tab", "cut");
    bench.press("th-job-begin", "");
    let begun = bench.asked.iter().find(|effect| effect.starts_with("begin ")).unwrap().clone();
    let (id, lines) = begun["begin ".len()..].split_once(' ').unwrap();
    let kept = lines.replacen("0\n", "1\n", 1) + "\n0 {\"what\":\"tick\",\"value\":1,\"at_ms\":5}";
    let mut later = Bench::new();
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
    let mut bench = Bench::new();
    bench.press("th-tab", "measure");
    bench.shows(&[
        "Over three 0.45 mm wires 6.092 to 6.192 mm 0.2398 to 0.2438 in",
        "5.491 + 1.350 − 0.650 = 6.191",
        "Best wire 0.433 mm.",
    ]);
    bench.typed("th-reading", "6.262");
    bench.shows(&["0.070 mm to go", "Feed 0.035 mm straight in, or 0.040 mm on the top slide"]);
    bench.typed("th-reading", "6.08");
    bench.shows(&["0.012 mm under. It will be loose."]);
    bench.typed("th-reading", "6.15");
    bench.shows(&["Within the limits"]);
    bench.typed("th-wire", "0.3");
    bench.shows(&[
        "That wire sinks below the crests. Use 0.412 to 0.663 mm.",
        "Over three 0.45 mm wires",
    ]);
    bench.typed("th-wire", "0.8");
    bench.shows(&["That wire rides on the crests. Use 0.412 to 0.663 mm."]);
    bench.typed("th-wire", "");
    bench.typed("th-wires", "0.4 x");
    bench.shows(&["A wire must be a number. You typed x ."]);
    bench.typed("th-wires", "2 3");
    bench.shows(&["None of your wires serves here", "Over three 0.43 mm wires"]);
    bench.press("th-side", "nut");
    bench.shows(&["Wires measure screws."]);
}

#[test]
fn blank_drills_and_holes() {
    let mut bench = Bench::new();
    bench.shows(&[
        "Turn the blank to 5.908 mm 0.2326 in Middle of 5.838 to 5.978.",
        "For a die: 5.925 mm",
        "Die under power: slowest speed; the holder must slip, not your hand.",
        "Tapping drill you own 5.3 mm 72 % of full height (1.299 × pitch); 86 % of the nut’s own (1.083 × pitch).",
        "To bore for cutting it: 5.283 mm",
        "Clearance hole, medium 6.600 mm drill 6.6 mm",
        "Pitch dia. (effective): 6.000 − 2 × 0.2436 = 5.513",
    ]);
    bench.typed("th-percent", "60");
    bench.shows(&["Tapping drill you own 5.4 mm 62 %"]);
    bench.typed("th-percent", "20");
    bench.shows(&["Engagement must be from 30 to 100. You typed 20 .", "5.4 mm 62 %"]);
    bench.typed("th-percent", "70");
    bench.press("th-set", "number");
    bench.press("th-set", "metric");
    bench.shows(&["Tapping drill you own No. 4 (5.309 mm)"]);
    bench.press("th-set", "number");
    bench.typed("th-drills", "5.25 0.21in");
    bench.shows(&["Tapping drill you own 5.334 mm 68 %", "Also: 5.25 mm 77 %."]);
    bench.typed("th-drills", "5.25 x");
    bench.shows(&["A drill must be a number. You typed x ."]);
    bench.typed("th-name", "2 BA");
    bench.shows(&["4.700 − 2 × 0.2425 = 4.215"]);
    bench.typed("th-name", "Tr16x4");
    assert!(!bench.text().contains("For a die"));
}

#[test]
fn which_thread_it_is() {
    let mut bench = Bench::new();
    bench.press("th-how", "which");
    bench.shows(&[
        "3/16 BSF diameter measured −0.013 mm, pitch just as measured 3/16 × 32 cycle",
        "10-32 UNF",
        "Beside the nearest: its flanks stand at 60°; it is 0.064 mm larger.",
        "2 BA",
    ]);
    bench.typed("th-over", "0");
    bench.shows(&["Diameter must be from 0.2", "3/16 BSF"]);
    bench.typed("th-over", "100");
    bench.shows(&["No listed thread is near this. Try My own."]);
    bench.press("th-name", "2 BA");
    bench.shows(&["Screw, normal"]);
}

#[test]
fn gears_for_a_lead() {
    let mut bench = Bench::new();
    bench.press("th-tab", "gear");
    bench.shows(&[
        "+3457 ppm 0.75 mm lead on a screw of 3.175 mm 20 drives 45 40 drives 75",
        "It cuts 0.75259 mm for 0.75 mm: 346 µm too long (13.61 thou) over 100 mm.",
        "20 × 40 ÷ (45 × 75) = 32/135",
        "A gear of 127: 30 drives 127. Divide a 127 gear",
        "Look at six gears too",
    ]);
    bench.typed("th-gears", "20 30 40 50 60 127");
    bench.shows(&["Exact 0.75 mm lead", "30 drives 127", "3.175 × 30/127 = 0.75 mm", "Idler 20."]);
    bench.typed("th-gears", "20 0");
    bench.shows(&["Teeth of a gear must be from 8 to 250. You typed 0 .", "30 drives 127"]);
    bench.typed("th-gears", "20 30 40");
    bench.typed("th-name", "M100x0.1");
    bench.shows(&["The lead must be from"]);
    bench.typed("th-name", "M6");
    bench.press("th-lead", "module");
    bench.shows(&["A worm’s lead has π in it, so no train is exact.", "Wanted: π × 1 = 3.1416 mm"]);
    bench.press("th-six", "on");
    bench.shows(&["Trains of two, four and six gears are all accounted for"]);
    bench.press("th-worm", "1");
    bench.shows(&["Module, mm", "3.1416 mm lead"]);
    // A twenty DP worm: 25.4 π / 20; its size is a field of its own.
    bench.press("th-lead", "dp");
    bench.shows(&["3.9898 mm lead"]);
    bench.press("th-lead", "module");
    bench.press("divide-n", "127");
    bench.shows(&["Equal parts in one turn"]);
}

#[test]
fn a_wrong_reaction_is_called_by_its_name() {
    let mut bench = Bench::new();
    bench.press("th-tab", "cut");
    bench.typed("th-reaction", "0");
    bench.shows(&["Time from seeing to stopping must be from 1 to 10,000."]);
}

#[test]
fn a_reading_goes_over_to_the_passes() {
    let mut bench = Bench::new();
    bench.begin();
    bench.press("th-tab", "measure");
    bench.typed("th-reading", "6.262");
    bench.shows(&["Take it to the passes"]);
    bench.press("th-so-far", "5.561");
    assert!(bench.asked.contains(&"focus th-so-far".to_owned()), "{:?}", bench.asked);
    bench.shows(&["0.070 mm to go", "Go on from there"]);
}

#[test]
fn a_flat_root_is_cut_with_a_flat_nose_and_widened() {
    let mut bench = Bench::new();
    bench.typed("th-name", "Tr16x8 P4 LH");
    bench.press("th-tab", "cut");
    bench.shows(&[
        "Tr16 × 4, 2 starts, left hand",
        "taken as 1.200",
        "Then widen the groove along the bed by",
        "swung clockwise, seen from above",
        "start 2 at 4.000 mm.",
        "30 teeth on for each start.",
        "Left hand: the tool travels towards the tailstock",
    ]);
    bench.typed("th-driver", "61");
    bench.shows(&["its teeth must be a multiple of 2."]);
}

#[test]
fn a_name_of_letters_only_or_over_nothing_is_said_to_be_none() {
    let mut bench = Bench::new();
    for name in ["M", "1/0 BSF"] {
        bench.typed("th-name", name);
        bench.shows(&["No thread goes by this name.", "Write M6x0.75, 1/4 BSF, 2 BA or Tr16x4."]);
    }
}

#[test]
fn a_drill_over_the_limit_of_the_hole_is_said_to_be() {
    let mut bench = Bench::new();
    bench.typed("th-name", "1/4 x 40 ME");
    bench.shows(&["5.8 mm 68 %", "Over the hole’s limit of 5.766 mm."]);
    bench.typed("th-name", "M6x0.75");
    bench.shows(&["Tapping drill you own 5.3 mm"]);
    assert!(!bench.text().contains("Over the hole’s limit"));
}

#[test]
fn the_lead_angle_says_what_it_adds_where_the_last_figure_shows_it() {
    let mut bench = Bench::new();
    bench.typed("th-name", "M6x0.75");
    bench.press("th-tab", "measure");
    bench.shows(&[
        "6.092 to 6.192",
        "5.491 + 1.350 − 0.650 = 6.191",
        "it adds 0.0006 mm to the formula; it is counted in",
    ]);
}
