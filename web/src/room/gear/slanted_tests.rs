use crate::room::visit::Visit;

fn to(kind: &str) -> Visit {
    let mut visit = Visit::to("gear");
    visit.press("ge-kind", kind);
    visit
}

#[test]
fn a_slanted_wheel_is_geared_from_blank_to_check() {
    let mut visit = to("slanted");
    // 64 ÷ cos 30° = 73.901; + 2; 64π ÷ sin 30° = 402.124.
    visit.shows(&[
        "64 teeth, module 1 (25.4 DP), 20°, 30° right-hand",
        "Turn the blank to 75.901 mm 2.9882 in",
        "Pitch circle 73.901 mm",
        "Lead 402.124 mm",
    ]);
    visit.press("ge-tab", "cutter");
    // 64 ÷ 0.649519 = 98.53: from 55 to 134, as 64.
    visit.shows(&[
        "No. 7 No. 2 of a DP set",
        "Cut as 98.53 straight teeth",
        "30°",
        "anticlockwise",
    ]);
    visit.press("ge-hand", "left");
    visit.shows(&["30° clockwise, seen from above: its left end away from you"]);
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Whole depth 2.250 mm",
        "The clamp stays off for the whole cut.",
        "Type your change gears",
    ]);
    visit.typed("ge-gears", "24x2 28 32 40 44 48 56 64 72 86 100");
    // 40 × 5 = 200; a half of 402.124 nearly: 32 × 28 ... the core ranks them.
    visit.shows(&[
        "Lead of the machine = 40 × 5 = 200 mm",
        "Driven ÷ drivers wanted = 402.1239 ÷ 200",
        "Differential can’t be combined",
        "drives",
        "It cuts a lead of",
    ]);
    assert!(visit.page.contains("data-do=\"divide-n\" data-value=\"64\""), "{}", visit.page);
    visit.typed("own-mill-table", "0");
    visit.shows(&["Table screw, along 5 / 100 / 0.2", "It cuts a lead of"]);
    visit.typed("own-mill-table", "4 tpi / 125");
    visit.shows(&["Lead of the machine = 40 × 6.35 = 254 mm"]);
    visit.press("ge-geared", "spindle");
    visit.shows(&["must be from"]);
    visit.press("ge-geared", "worm");
    visit.press("ge-six", "on");
    visit.press("ge-tab", "check");
    visit.shows(&[
        "Set the height to 1.006 mm",
        "The tooth reads 1.571 mm",
        "pitches along the axis",
    ]);
    // A mate of 32 teeth, 30° right-hand, on parallel shafts: (64 + 32) ÷ 2 ÷ cos 30°.
    visit.press("ge-mate-hand", "right");
    visit.shows(&["Centre distance 55.426 mm", "Angle between the shafts parallel"]);
    visit.typed("ge-helix", "90");
    visit.shows(&["Helix angle must be between 1 and 80 degrees.", "Last good answer: 64 teeth"]);
}

#[test]
fn a_worm_goes_to_thread_and_its_wheel_to_divide() {
    let mut visit = to("worm");
    visit.shows(&[
        "1 start into 64 teeth, module 1",
        "Turn the worm to 22.000 mm",
        "Turn the wheel’s throat to 66.000 mm",
        "Throat radius 9.000 mm",
        "Turn the blank to 64.000 mm",
        "Centre distance = (64.0000 + 20) ÷ 2 = 42.0000 mm",
    ]);
    visit.press("ge-tab", "cutter");
    // π ÷ 2 − 2 × 1.25 × tan 20° = 0.661; 20 + 2 × 1.25.
    visit.shows(&["End of the tool 0.661 mm", "Lead 3.142 mm", "Hob: outside diameter 22.500 mm"]);
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Gash at 2.862° 2° 52′",
        "64 gashes",
        "Gash to 2.050 mm",
        "Fingers out, guard on.",
    ]);
    visit.press("ge-tab", "check");
    visit.shows(&["Centre distance 42.000 mm"]);
    visit.typed("ge-worm", "2");
    visit.shows(&["Last good answer: 1 start"]);
    visit.typed("ge-worm", "30");
    visit.typed("ge-starts", "3");
    visit.press("ge-by", "pitch");
    visit.typed("ge-axial", "6");
    visit.shows(&["3 starts into 64 teeth, 6 mm pitch"]);
    visit.press("ge-tab", "cutter");
    assert!(visit.page.contains("data-do=\"th-worm\" data-value=\"pitch 6 3\""), "{}", visit.page);
    visit.press("th-worm", "pitch 6 3");
    visit.shows(&["18 mm lead", "Pitch along the worm"]);
    visit.press("th-worm", "dp 20 1");
    visit.shows(&["3.9898 mm lead"]);
}

#[test]
fn bevels_stand_on_cones_of_both_depths() {
    let mut visit = to("cone");
    visit.typed("ge-teeth", "16");
    // At the small end 16 and 32; the cone 17.889 and 10 more.
    visit.shows(&[
        "16 and 32 teeth, module 1 (25.4 DP), shafts 90°",
        "Turn the face at 26.565° (26° 34′)",
        "Cone distance 27.889 mm",
        "The face is wider than a third",
        "tan = sin 90° ÷ (32 ÷ 16 + cos 90°): 26.5651°",
    ]);
    visit.typed("ge-face", "5");
    visit.press("ge-tab", "cutter");
    // 16 ÷ cos 26.565° = 17.89; 32 ÷ cos 63.435° = 71.55.
    visit.shows(&["Cut as 17.89 straight teeth", "Cut as 71.55 straight teeth", "No. 3", "No. 7"]);
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Tilt the head up to 26.565°",
        // 90 ÷ 16 and 90 ÷ 32 degrees; π ÷ 4.
        "Turn the work 5.625° (a quarter of its pitch) and move the table 0.785 mm",
        "Turn the work 2.8125°",
        "Divide it: 16 parts",
        "Divide it: 32 parts",
    ]);
    visit.press("ge-along", "tapering");
    // tan = 1.25 ÷ 17.889: 3.997° less.
    visit.shows(&["Tilt the head up to 22.568°", "turn the work and shift the table"]);
    visit.press("ge-tab", "check");
    visit.shows(&["At the large end", "The tooth reads 1.569 mm"]);
    visit.typed("ge-shafts", "120");
    visit.shows(&["Last good answer"]);
}

#[test]
fn a_rack_is_read_off_the_dial() {
    let mut visit = to("bar");
    visit.typed("ge-module", "3");
    visit.press("ge-tab", "depth");
    // Gap 3: 28.274 mm is 565.5 marks of 0.05, as the Shop's table has at first.
    visit.shows(&["Table screw, along 5 / 100 / 0.2", "3 5 65 −24.3"]);
    visit.typed("own-mill-table", "5 / 250");
    // Gap 3: 28.274 mm is 1413.7 marks of 0.02, 5 turns of 250 and 164.
    visit.shows(&["Whole depth 6.750 mm", "3 5 164 +5.7", "errors never add up"]);
    visit.press("ge-tab", "cutter");
    visit.shows(&["No. 8 No. 1 of a DP set"]);
    visit.press("ge-tab", "check");
    visit.shows(&["Tooth at the pitch line 4.712 mm", "Neighbours, at worst"]);
    visit.typed("ge-gaps", "90");
    visit.press("ge-tab", "depth");
    visit.typed("ge-from", "80");
    visit.shows(&["89 167"]);
    visit.typed("own-mill-table", "5 / 2x");
    visit.shows(&["89 167"]);
    visit.typed("ge-gaps", "0");
    visit.shows(&["Last good answer"]);
}
