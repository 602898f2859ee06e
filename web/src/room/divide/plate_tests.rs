//! The plate one makes, the budget and the sheets, as a person meets them.
use crate::room::visit::Visit;

fn stocked(parts: &str) -> Visit {
    let mut visit = Visit::to("divide");
    visit.press("plates", "15");
    visit.press("gears", "");
    visit.typed("parts", parts);
    visit
}

fn making(parts: &str) -> Visit {
    let mut visit = stocked(parts);
    visit.press("way", "make");
    visit
}

#[test]
fn a_plate_stands_among_the_ways_by_what_rounding_and_drilling_leave() {
    let mut visit = stocked("127");
    visit.typed("pl-ring", "55");
    visit.shows(&[
        "4 ways to set 127",
        "2 Make the plate you lack Drill 127 holes, then 40 holes on the 127",
    ]);
    visit.shows(&["within 12.9″", "neighbours 20.6″"]);
    visit.press("order", "quickest");
    visit.shows(&["4 Make the plate you lack"]);
    // A circle has no more than 1,000 holes.
    let visit = stocked("4001");
    visit.shows(&["Make the plate you lack : the plate would need 4,001 holes."]);
    // Where a circle serves there is nothing to make; a list has no plate of its own.
    let mut visit = stocked("64");
    assert!(!visit.page.contains("way-make"));
    visit.press("kind", "list");
    assert!(!visit.page.contains("way-make"));
}

#[test]
fn the_panel_plans_the_plates_and_shows_its_figures() {
    let mut visit = making("127");
    visit.typed("pl-ring", "55");
    visit.shows(&[
        "First plate",
        "Blank plate on the head, plate 3, 49 circle in use.",
        "Drill 127 holes by Nearest hole: 15 or 16 holes on the 49",
        "Ring 110 mm (4.3307 in) across, drill 1.6 mm (0.0630 in), spacing 2.72 mm (0.1071 in).",
        "41 holes show, counting the one the pin is in (40 spaces)",
        "Worst drilled hole by setting: 328″",
        "Drilling ±0.05 mm on a radius of 55 mm: 188″",
        "(328″ + 188″) ÷ 40 = 12.9″",
        "Neighbours of the work stand 40 holes apart: (448″ + 2 × 188″) ÷ 40 = 20.6″",
        "At 76.2 mm diameter: 0.0024 mm",
        "Second plate",
        "Clamp the blank flat",
    ]);
    // Worse holes make the second plate pay.
    visit.typed("pl-drilling", "0");
    for name in ["pl-wheel", "pl-worm", "pl-hole", "pl-pin", "pl-plate-out", "pl-blank-out"] {
        visit.typed(name, "0");
    }
    visit.shows(&["Second plate takes another 98 % off the work’s error: it pays."]);
    assert!(visit.page.contains("pl-run-1"));
}

#[test]
fn the_drilling_of_each_plate_and_the_work_are_handed_to_run() {
    let mut visit = making("131");
    assert!(visit.page.contains("pl-run-0"));
    visit.press("run", "0");
    visit.shows(&["Before", "131 parts", "Nearest hole"]);
    assert!(visit.page.contains("value=\"Drill 131 holes\""), "{}", visit.page);
    let mut visit = making("131");
    visit.press("run", "work");
    visit.shows(&["131 parts", "Plain"]);
    // What does not stand there as typed is not run.
    let mut visit = making("131");
    visit.typed("pl-ring", "x");
    visit.press("run", "0");
    assert!(!visit.page.contains("run-start"));
}

#[test]
fn what_cannot_be_drilled_is_refused_at_its_field_and_the_last_plan_stays() {
    let mut visit = making("131");
    visit.typed("pl-ring", "55");
    let mut refused = |name: &str, text: &str, wanted: &str| {
        visit.typed(name, text);
        visit.shows(&[wanted, "Drill 131, then"]);
        assert!(visit.page.contains(&["id=\"", name, "-error\""].concat()), "{name}");
        visit.typed(name, if name == "pl-ring" { "55" } else { "" });
        if name != "pl-ring" {
            let back = match name {
                "pl-drilling" => "0.05",
                "pl-multiple" => "1",
                "pl-wheel" => "30",
                _ => "",
            };
            visit.typed(name, back);
        }
    };
    refused("pl-ring", "30", "The holes would break into each other.");
    refused("pl-drill", "30", "The drill must be from 0.2 to 20 mm.");
    refused("pl-drilling", "9", "The drill must be from 0 to 5 mm.");
    refused("pl-multiple", "8", "Holes in a circle must be from 2 to 1,000.");
    refused("pl-rings", "54", "The ring runs into another one");
    refused("pl-wheel", "9000", "must be from 0 to 3,600");
}

#[test]
fn the_budget_of_the_way_that_stands_open_says_what_makes_most_of_it() {
    let mut visit = stocked("127");
    assert!(!visit.text().contains("Rounding of the way"));
    visit.press("way", "nearest");
    visit.press("pl-budget", "on");
    visit.shows(&[
        "Rounding of the way makes most of it",
        "All together",
        "Make the plate you lack 112″ neighbours 49.9″",
    ]);
    assert!(visit.page.contains("class=\"band\""));
    visit.press("way", "differential");
    visit.shows(&["Blank off centre makes most of it", "Worm wheel"]);
    visit.typed("pl-blank-out", "0");
    visit.shows(&["Worm wheel makes most of it"]);
}

/// The text of the file that the last event handed over.
fn file(visit: &Visit, name: &str) -> String {
    let whole = visit.asked.iter().find(|asked| asked.starts_with("file ")).expect("a file");
    whole.strip_prefix(&["file ", name, " "].concat()).expect(name).to_owned()
}

#[test]
fn templates_and_tapes_are_files_at_full_size() {
    let mut visit = making("131");
    visit.typed("pl-ring", "55");
    visit.press("pl-open", "template");
    visit.press("pl-save", "template");
    let svg = file(&visit, "handturn-template.svg");
    assert!(svg.starts_with("<svg") && svg.contains("xmlns=\"http://www.w3.org/2000/svg\""));
    assert!(
        svg.contains("131 holes, ring 110 mm (4.3307 in) across") && svg.contains("h100.000"),
        "{svg}"
    );
    visit.press("pl-print", "");
    assert!(visit.asked.contains(&"print".to_owned()));
    visit.press("pl-open", "table");
    visit.shows(&["X dial", "turns + mark", "By these dials the worst hole is"]);
    // Hole 0 stands above the centre: 55 mm are 11 turns of 5 mm.
    visit.shows(&["0 0.000 0.0000 in 55.000 2.1654 in 0 + 0 stays 11 + 0 0.000"]);
}

#[test]
fn whoever_has_no_head_divides_by_tape_disks_or_table() {
    let mut visit = Visit::to("divide");
    visit.shows(&["Which plates came with the head?", "No head yet"]);
    visit.press("pl-no-head", "on");
    visit.press("pl-open", "free-tape");
    visit.shows(&["Pitch on the flat tape", "2.971 mm", "Ends lap by"]);
    visit.press("pl-save", "tape0");
    assert!(file(&visit, "handturn-tape.svg").contains("127 parts on a drum of 120 mm"));
    visit.typed("pl-drum", "0");
    visit.shows(&["The drum can’t be 0.", "2.971 mm"]);
    visit.press("pl-open", "free-disks");
    visit.shows(&["Each disk, diameter", "Disk in the middle"]);
    visit.press("pl-open", "free-template");
    visit.press("pl-save", "free-template");
    assert!(file(&visit, "handturn-template.svg").contains("127 holes, ring 100 mm"));
    visit.typed("parts", "2000");
    visit.shows(&["Holes in a circle must be from 2 to 1,000."]);
    visit.press("kind", "list");
    visit.shows(&["This needs equal parts."]);
}
