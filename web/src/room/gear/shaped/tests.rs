use crate::room::visit::Visit;

fn to(kind: &str) -> Visit {
    let mut visit = Visit::to("gear");
    visit.press("ge-kind", kind);
    visit
}

#[test]
fn a_ratchet_goes_through_its_steps() {
    let mut visit = to("ratchet");
    visit.shows(&["48 teeth on 40 mm", "Turn the blank to 40.000 mm 1.5748 in"]);
    visit.press("ge-tab", "cutter");
    visit.shows(&[
        "Single-angle cutter of 60.00°",
        "Flat side over the centre line",
        "head raised by 85° 38′",
    ]);
    visit.press("ge-tab", "depth");
    // 40·sin(3.4635°)·cos(56.5365°) ÷ sin 60°.
    visit.shows(&["with the cutter set over 1.539 mm 0.0606 in", "Fingers out, guard on."]);
    assert!(visit.page.contains("data-do=\"divide-n\" data-value=\"48\""));
    visit.press("ge-tab", "check");
    visit.shows(&["Land left 0.200 mm", "Tooth, between face and back 52.50°"]);
    visit.typed("ge-rt-undercut", "10");
    visit.press("ge-tab", "cutter");
    // 20·sin 10°.
    visit.shows(&["Flat side off the centre line 3.473 mm", "the face is undercut"]);
    visit.press("ge-rt-known", "depth");
    visit.typed("ge-rt-depth", "9");
    visit.shows(&["Depth must be from 0.001 to", "Last good answer: 48 teeth"]);
    visit.press("ge-rt-known", "cutter");
    visit.typed("ge-rt-depth", "1.5");
    visit.shows(&["Single-angle cutter of"]);
    visit.typed("ge-rt-teeth", "3");
    visit.shows(&["Teeth must be from 4 to 5,000."]);
    visit.typed("ge-rt-teeth", "48");
    visit.typed("ge-rt-undercut", "40");
    visit.shows(&["Undercut must be between 0 and 30 degrees."]);
}

#[test]
fn splines_are_taken_from_the_list_and_say_what_stands_between() {
    let mut visit = to("spline");
    visit.shows(&["6 × 26 × 30, keys of 6 mm", "Turn the blank to 30.000 mm"]);
    visit.press("ge-tab", "cutter");
    visit.shows(&["off the centre line 5.000 mm", "Then across to the other side 10.000 mm"]);
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Depth from the top of the blank 2.351 mm",
        "A ridge stands",
        "half a part on: 1/12 of a turn",
    ]);
    visit.typed("ge-sp-cutter", "6.5");
    visit.shows(&["Nothing stands. The floor is"]);
    visit.typed("ge-sp-cutter", "13");
    visit.shows(&["The cutter must be from 0.001 to 12.908 mm.", "Last good answer: 6 × 26 × 30"]);
    visit.press("ge-sp-take", "8 32 36 6");
    visit.typed("ge-sp-cutter", "4");
    visit.shows(&["8 × 32 × 36, keys of 6 mm"]);
    visit.typed("ge-sp-key", "14");
    visit.shows(&["Keys this wide leave no space between them."]);
    visit.press("ge-sp-what", "keyways");
    // 10 − √91 and 3.5.
    visit.shows(&["1 keyway in a shaft of 20 mm", "Depth from the top of the blank 3.961 mm"]);
    visit.press("ge-tab", "check");
    visit.shows(&["Over the bottom and the far side 16.039 mm"]);
}

#[test]
fn flats_say_what_the_stock_leaves() {
    let mut visit = to("flats");
    visit.shows(&[
        "Square, 5 mm",
        "Across corners: the least stock 7.071 mm",
        "The stock stays round between flats",
    ]);
    visit.press("ge-tab", "depth");
    visit.shows(&["Depth of each flat 0.750 mm 0.0295 in"]);
    visit.press("ge-tab", "check");
    visit.shows(&["Over the first flat and the round 5.750 mm", "Over two flats 5.000 mm"]);
    visit.press("ge-tab", "cutter");
    visit.typed("ge-fl-cutter", "3");
    // 2·√(3.25² − 2.5²) = 4.153: two passes of 3.
    visit.shows(&["The first flat, as cut on the round 4.153 mm", "Passes side by side 2"]);
    visit.press("ge-fl-sides", "5");
    visit.typed("ge-fl-stock", "");
    visit.press("ge-tab", "check");
    visit.shows(&[
        "5 flats, 5 mm",
        "Twice from the centre to a flat",
        "From a flat to the corner opposite 5.590 mm",
    ]);
    visit.press("ge-fl-sides", "1");
    visit.shows(&["The blank stands empty.", "Last good answer: 5 flats"]);
    visit.typed("ge-fl-stock", "6.5");
    visit.shows(&["One flat, 5 mm", "From the flat to the round opposite"]);
    visit.typed("ge-fl-stock", "5");
    visit.shows(&["The blank must be from 5.001 to 10000 mm."]);
}

#[test]
fn a_clock_wheel_and_its_pinion_have_blanks() {
    let mut visit = to("clock");
    visit.shows(&[
        "64 and 8, module 0.8",
        "Turn the blank to 53.559 mm",
        "Distance of the arbors 28.800 mm",
    ]);
    visit.press("ge-cw-cut", "pinion");
    // 0.8 × (8 + 2 × 0.67).
    visit.shows(&["Turn the blank to 7.472 mm"]);
    visit.press("ge-tab", "depth");
    assert!(visit.page.contains("data-do=\"divide-n\" data-value=\"8\""));
    visit.press("ge-tab", "cutter");
    visit.shows(&["The leaves end in a medium arch"]);
    visit.press("ge-tab", "blank");
    visit.press("ge-cw-rule", "common");
    visit.shows(&["Turn the blank to 7.768 mm", "common practice; from memory"]);
    visit.typed("ge-cw-leaves", "5");
    visit.shows(&["The number of leaves must be from 6 to 100.", "Last good answer: 64 and 8"]);
}

#[test]
fn a_cam_is_cut_with_a_raised_head_or_by_steps() {
    let mut visit = to("cam");
    visit.shows(&["Rise of 4 mm over 90°", "Lead: its rise for a whole turn 16.000 mm"]);
    visit.press("ge-tab", "depth");
    // asin 0.8 = 53° 7.8′.
    visit.shows(&["Raise the head from level by 53° 8′", "The clamp stays off for the whole cut."]);
    visit.typed("ge-cm-raised", "53");
    visit.press("ge-tab", "check");
    // 5·sin 53°.
    visit.shows(&["Rise that it gives 3.993 mm", "Off by −0.007 mm"]);
    visit.typed("ge-cm-raised", "95");
    visit.shows(&["Angle must be between 0 and 90 degrees.", "Last good answer"]);
    visit.typed("ge-cm-raised", "");
    visit.typed("ge-cm-geared", "15");
    visit.shows(&["The lead must be from 16 to 10000 mm."]);
    visit.press("ge-cm-by", "steps");
    visit.shows(&["Cusps, to be filed away 0.008 mm"]);
    visit.press("ge-tab", "depth");
    visit.shows(&[
        "Move in after each step 0.044 mm",
        "Turn for each step 1°",
        "2°: 0.089 mm, 0.0035 in",
        "90°: 4.000 mm",
    ]);
    assert!(visit.page.contains("data-do=\"divide-n\" data-value=\"360\""));
    visit.typed("ge-cm-steps", "3");
    visit.typed("ge-cm-mill", "5");
    visit.shows(&["So few steps leave cuts that do not meet."]);
}
