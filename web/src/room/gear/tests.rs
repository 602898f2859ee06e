use crate::room::visit::Visit;

#[test]
fn a_wheel_of_the_job_goes_from_blank_to_divide() {
    let mut visit = Visit::to("gear");
    // (64 + 2) × 1 mm; 66 ÷ 25.4 in.
    visit.shows(&[
        "64 teeth, module 1 (25.4 DP), 20°",
        "Turn the blank to 66.000 mm 2.5984 in",
        "Pitch circle 64.000 mm",
        "Bottom of the gaps 61.500 mm",
        "Outside = (64 + 2 × 1) × 1 = 66.000 mm",
    ]);
    visit.press("ge-wheel", "127 0.5");
    visit.shows(&["127 teeth, module 0.5 (50.8 DP), 20°", "64.500 mm"]);
    visit.press("ge-tab", "depth");
    visit.shows(&["Whole depth 1.125 mm 0.0443 in", "2.25 modules", "Fingers out, guard on."]);
    assert!(visit.page.contains("data-do=\"divide-n\" data-value=\"127\""), "{}", visit.page);
    visit.press("ge-wheel", "223 0.5");
    visit.press("divide-n", "223");
    assert!(visit.page.contains("name=\"parts\"") && visit.page.contains("value=\"223\""));
}

#[test]
fn a_diametral_pitch_is_read_beside_its_module() {
    let mut visit = Visit::to("gear");
    visit.press("ge-by", "dp");
    visit.typed("ge-teeth", "32");
    visit.typed("ge-dp", "8");
    visit.press("ge-pressure", "14.5");
    // 34 ÷ 8 in = 4.25 in; 2.157 ÷ 8 = 0.2696 in.
    visit.shows(&["32 teeth, 8 DP (module 3.175), 14½°", "107.950 mm 4.2500 in"]);
    visit.press("ge-tab", "depth");
    visit.shows(&["Whole depth 6.848 mm 0.2696 in", "2.157 modules, the old rule"]);
    visit.typed("ge-dp", "24");
    visit.press("ge-pressure", "20");
    visit.shows(&["24 DP (≈ module 1.0583)", "2.2 modules and 0.002 in"]);
    visit.press("ge-rule", "own");
    visit.shows(&["1 and 1.25 modules, your own rule."]);
}

#[test]
fn what_cannot_be_read_leaves_the_last_good_wheel() {
    let mut visit = Visit::to("gear");
    visit.typed("ge-teeth", "38");
    visit.typed("ge-teeth", "3");
    visit.shows(&["Teeth must be from 4 to 5,000. You typed 3", "Last good answer: 38 teeth"]);
    visit.typed("ge-teeth", "38");
    visit.press("ge-by", "dp");
    visit.typed("ge-dp", "0");
    visit.shows(&["Diametral pitch can’t be 0.", "Last good answer: 38 teeth"]);
    visit.press("ge-by", "module");
    visit.typed("ge-module", "1,000");
    visit.shows(&["A comma before three figures"]);
    visit.typed("ge-module", "101");
    visit.shows(&["Module must be from 0.05 to 100 mm."]);
    visit.typed("ge-module", "1");
    visit.press("ge-pressure", "own");
    visit.typed("ge-angle", "40");
    visit.shows(&["Pressure angle must be between 10 and 35 degrees."]);
}

#[test]
fn keys_go_from_step_to_step() {
    let mut visit = Visit::to("gear");
    visit.send("key", "End", "button ge-tab-blank");
    assert!(
        visit.asked.iter().any(|asked| asked.starts_with("focus ge-tab-")),
        "{:?}",
        visit.asked
    );
    visit.send("key", "Enter", "field ge-teeth");
    visit.shows(&["\u{200b}"]);
}

#[test]
fn the_two_series_are_numbered_opposite_ways() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "cutter");
    // 64 lies from 55 to 134: No. 2 of a DP set, 9 − 2 of a module set.
    visit.shows(&[
        "Cutter of a module set No. 7 No. 2 of a DP set",
        "Cuts 55 to 134 teeth. Its form is true for 55",
    ]);
    visit.press("ge-by", "dp");
    visit.shows(&["Cutter of a DP set No. 2 No. 7 of a module set", "24 DP"]);
    visit.press("ge-set", "15");
    visit.typed("ge-teeth", "42");
    visit.shows(&["No. 2½ No. 6½ of a module set", "Cuts 42 to 54 teeth."]);
    visit.typed("ge-teeth", "8");
    visit.shows(&["No cutter of the set cuts fewer than 12 teeth."]);
}

#[test]
fn a_blank_as_found_changes_the_depth_and_whether_it_swings() {
    let mut visit = Visit::to("gear");
    visit.typed("ge-found", "65.9");
    // 2.25 − 0.1 ÷ 2 deep; 1 − 0.05 above the pitch circle.
    visit.shows(&[
        "Cut it 2.200 mm deep (0.0866 in)",
        "It is 0.100 mm under size; the teeth stand 0.950 mm above",
        // 100 − 32.95; 30 − 16 − 2.2.
        "The table clears by 67.050 mm.",
        "at full depth, clears by 11.800 mm.",
    ]);
    visit.press("ge-tab", "depth");
    visit.shows(&["Depth from this blank 2.200 mm 0.0866 in"]);
    visit.press("ge-tab", "blank");
    visit.typed("ge-found", "64");
    visit.shows(&["The blank must be from 64.001 to 67 mm.", "Cut it 2.200 mm deep"]);
    visit.typed("ge-found", "66.6");
    visit.shows(&["They would reach the bottom of the mate’s gaps: turn the blank down."]);
    visit.typed("ge-found", "");
    visit.press("ge-wheel", "223 0.5");
    visit.typed("ge-centre", "50");
    // 112.5 ÷ 2 over 50.
    visit.shows(&["The table is in the way by 6.250 mm."]);
    visit.typed("ge-collar", "60");
    visit.shows(&["The table is in the way by 6.250 mm."]);
}

#[test]
fn a_tooth_is_checked_three_ways() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "check");
    visit.shows(&[
        // 64·sin 1.40625° = 1.57064; (66 − 64·cos 1.40625°) ÷ 2 = 1.00964.
        "Set the height to 1.010 mm 0.0397 in The tooth reads 1.571 mm 0.0618 in",
        "Half its angle = s ÷ D × 57.2958 = 1.4063°",
        // cos 20° × (7π + π/2 + 64 × 0.014904) = 23.03734.
        "Over 8 teeth 23.037 mm 0.9070 in",
        "W = cos 20° × (7 × π × 1 + s + D × inv) = 0.939693 × (21.9911 + 1.5708 + 0.9539) = 23.0373",
        // inv φ = 0.024544 + 0.014904 + 0.028267 − 0.049087; 64·cos 20° ÷ cos φ + 1.7.
        "Over two 1.7 mm pins 66.332 mm 2.6115 in",
    ]);
    visit.typed("ge-over", "7");
    visit.shows(&["Over 7 teeth 20.085 mm"]);
    visit.typed("ge-over", "20");
    visit.shows(&["Teeth in the span must be from", "Over 7 teeth 20.085 mm"]);
    visit.typed("ge-pin", "1.2");
    visit.shows(&["That pin falls into the gap. Use 1.6", "Over two 1.7 mm pins"]);
    visit.typed("ge-pin", "4");
    visit.shows(&["That pin rides on the tips."]);
    visit.typed("ge-pin", "");
    visit.typed("own-pins", "0.5 4");
    visit.shows(&["None of your pins serves here"]);
    visit.typed("own-pins", "1 2");
    visit.typed("ge-teeth", "127");
    // Odd: 128.4701 × cos(90° ÷ 127) + 2.
    visit.shows(&["Over two 2 mm pins 130.460 mm 5.1362 in", "The teeth are odd in number"]);
}

#[test]
fn two_trial_gaps_say_how_much_deeper() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Whole depth 2.250 mm 0.0886 in",
        // Nine tenths of 2.25.
        "Rough all gaps, or two to try, to 2.025 mm",
        "cut gaps 2.025 mm deep (0.0797 in): two that lie opposite.",
        "Measure over two 1.7 mm pins: 66.332 mm is wanted in the end.",
    ]);
    visit.typed("ge-reading", "66.45");
    // Opposite pins sink with the cutter: (66.45 − 66.332) ÷ 2.
    visit.shows(&[
        "Go 0.059 mm deeper (2.3 thou)",
        "Each 0.01 mm of depth takes 0.0200 mm off the reading.",
    ]);
    visit.typed("ge-reading", "66.30");
    visit.shows(&["0.016 mm too deep", "The teeth are thin"]);
    visit.typed("ge-reading", "x");
    visit.shows(&["Length must be a number."]);
    visit.press("ge-tried", "span");
    visit.typed("ge-reading", "23.1");
    visit.shows(&["Measure over the 8 teeth between: 23.037 mm is wanted", "mm deeper"]);
    visit.press("ge-tried", "caliper");
    visit.typed("ge-reading", "1.65");
    visit.shows(&["the height set to 1.010 mm: 1.571 mm is wanted", "mm deeper"]);
    visit.press("ge-cutting", "generated");
    visit.typed("ge-reading", "1.571");
    visit.shows(&["At depth"]);
    // Wider than a tooth can be: 2 × 31.99 × tan(180° ÷ 64).
    visit.typed("ge-reading", "9");
    visit.shows(&["A reading on this wheel must be from", "to 3.143 mm"]);
    visit.press("ge-tried", "pins");
    visit.typed("ge-reading", "90");
    visit.shows(&["A reading on this wheel must be from"]);
}

#[test]
fn a_wheel_in_the_hand_is_told_by_its_outside() {
    let mut visit = Visit::to("gear");
    visit.press("ge-by", "outside");
    visit.typed("ge-teeth", "24");
    visit.typed("ge-outside", "3.25 in");
    // 26 ÷ 3.25 in = 8; of module 3 it would be 78 mm, not 82.55.
    visit.shows(&["24 teeth, 8 DP", "8 DP exactly", "Module 3 4.550 mm over"]);
    visit.press("ge-size", "module 3");
    visit.shows(&["24 teeth, module 3", "Turn the blank to 78.000 mm"]);
    visit.press("ge-by", "outside");
    visit.typed("ge-outside", "x");
    visit.shows(&["The blank must be a number.", "Last good answer: 24 teeth"]);
}

#[test]
fn a_pair_is_set_by_its_backlash_or_by_its_centres() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "check");
    // 2·a·(inv αw − inv 20°) = 0.05 where cos αw = 56·cos 20° ÷ a: a = 56.06829.
    visit.shows(&[
        "Centres apart 56.068 mm 2.2074 in",
        "Standard, no backlash drawn in 56.000 mm",
        "Backlash at the pitch circle 0.050 mm",
        "Working pressure angle 20.191°",
        "Pairs of teeth in contact 1.70 on average",
        "Turns of this for one of the mate 3/4",
        "Standard = (64 + 48) × 1 ÷ 2 = 56",
    ]);
    visit.press("ge-apart", "centres");
    visit.typed("ge-centres", "56.1");
    visit.shows(&["Centres apart 56.100 mm", "Backlash at the pitch circle 0.073 mm"]);
    visit.typed("ge-felt", "0.073");
    // 0.073 felt where 0.05 is wanted: as far back as it came.
    visit.shows(&["Close by 0.03", "to 56.06"]);
    visit.typed("ge-centres", "55");
    visit.shows(&["The teeth don’t go together at this distance"]);
    visit.typed("ge-mate", "3");
    visit.shows(&["Teeth must be from 4 to 5,000."]);
}

#[test]
fn teeth_that_are_not_sound_are_told() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "cutter");
    // 66·(π ÷ 128 + inv 20° − inv α at the outside) = 0.789.
    visit.shows(&["Top of a tooth, along the outside 0.789 mm", "Not undercut from 18 teeth"]);
    visit.typed("ge-teeth", "12");
    // 1 − 12·sin² 20° ÷ 2 = 0.298.
    visit.shows(&[
        "No. 1 No. 8 of a DP set",
        "Undercut:",
        "A shift of 0.298 modules or more clears it.",
    ]);
    visit.typed("ge-shift", "0.6");
    visit.shows(&["Thin tops:"]);
    visit.typed("ge-shift", "1");
    visit.shows(&["The teeth would come to a point below the outside."]);
}

#[test]
fn the_cutter_step_says_which_cutters_are_owned() {
    let mut visit = Visit::to("gear");
    visit.press("ge-tab", "cutter");
    visit.shows(&["Involute gear cutters none"]);
    assert!(!visit.text().contains("You have"), "nothing is said of an empty list");
    assert!(visit.page.contains("data-value=\"own-gear-cutters\""));
    // 64 teeth by module: No. 7, from 55 to 134.
    visit.typed("own-gear-cutters", "m1 6-8x1; dp32 2");
    visit.shows(&["You have it: No. 7."]);
    visit.typed("own-gear-cutters", "m1 6 8");
    visit.shows(&[
        "You do not have No. 7. Nearest you have: No. 6, marked 35 to 54 teeth and true for 35: in this wheel it cuts the tips too thin.",
    ]);
    visit.typed("own-gear-cutters", "m1 8");
    visit.shows(&[
        "You do not have No. 7. Nearest you have: No. 8, for 135 teeth and more: its sides are too straight for fewer.",
    ]);
    visit.typed("own-gear-cutters", "dp25.4 2; m0.8 7");
    visit.shows(&["You have no cutter for module 1 (25.4 DP)."]);
    // A set with halves wants No. 6½ for 42 teeth; No. 6 is marked for them too.
    visit.typed("own-gear-cutters", "m1 1-8x1");
    visit.press("ge-set", "15");
    visit.typed("ge-teeth", "42");
    visit.shows(&[
        "You do not have No. 6½. Nearest you have: No. 6, marked 35 to 54 teeth and true for 35, this wheel among them",
    ]);
    visit.press("ge-by", "dp");
    visit.typed("own-gear-cutters", "dp24 2.5");
    visit.shows(&["You have it: No. 2½."]);
    for kind in ["slanted", "cone", "bar"] {
        visit.press("ge-kind", kind);
        visit.press("ge-set", "8");
        visit.press("ge-by", "module");
        visit.typed("ge-module", "1");
        visit.typed("own-gear-cutters", "m1 1-8x1");
        visit.shows(&["You have it: No. "]);
        visit.typed("own-gear-cutters", "");
        visit.shows(&["Involute gear cutters none"]);
    }
}
