//! The room from press to markup, the store played by the test.
use super::desk::{Lock, Note, Sheet};
use super::*;
use crate::keep::tests::{advance, run};
use crate::seam::Effect;
use handturn::divide::{Asked, Order, Parts, answer};
use handturn::head::{Head, SET_A, gears_of, plates_of};
use handturn::run::Confirm;

/// A desk and its clock; what the room asks of the store is answered at once.
struct Bench {
    desk: Desk,
    at_ms: u64,
    obeys: bool,
    asked: Vec<Effect>,
}

impl Bench {
    fn new() -> Self {
        let mut bench = Self { desk: Desk::default(), at_ms: 0, obeys: true, asked: Vec::new() };
        bench.event("storage", "ready", "");
        bench
    }

    fn event(&mut self, kind: &str, name: &str, value: &str) {
        let at_ms = self.at_ms;
        let effects =
            happen(&mut self.desk, &Event { kind, name, value, at_ms }).unwrap_or_default();
        for effect in effects {
            self.asked.push(effect.clone());
            if self.obeys {
                self.obey(&effect);
            }
        }
    }

    /// The store does as asked and says so.
    fn obey(&mut self, effect: &Effect) {
        match effect {
            Effect::Begin(run, _) => self.event("kept", run, "begun 14:32:07"),
            Effect::Append(run, number, _) => {
                self.event("kept", run, &[&number.to_string(), " 14:32:08"].concat())
            }
            Effect::Claim(run, _) => self.event("lock", run, "held"),
            _ => {}
        }
    }

    fn press(&mut self, name: &str) {
        self.event("press", &["run-", name].concat(), "");
    }

    /// A press two seconds after the last one.
    fn later(&mut self, name: &str) {
        self.at_ms += 2_000;
        self.press(name);
    }

    fn start(count: u32) -> Self {
        let mut bench = Self::new();
        offer(&mut bench.desk, run(count, 0).frozen);
        bench.press("start");
        bench
    }

    /// The screen's text, tags left out.
    #[track_caller]
    fn text(&self) -> String {
        let markup = screen(&self.desk).expect("this room is on screen").into_string();
        let mut text = String::new();
        let mut rest = &*markup;
        while let Some((before, tag)) = rest.split_once('<') {
            text.push_str(before);
            rest = tag.split_once('>').map_or("", |(_, after)| after);
        }
        text.replace("&quot;", "\"")
    }

    #[track_caller]
    fn shows(&self, wanted: &str) {
        let text = self.text();
        assert!(text.contains(wanted), "{wanted} is not in: {text}");
    }

    /// The position in the corner, in figures.
    #[track_caller]
    fn at(&self, wanted: u32) {
        let markup = screen(&self.desk).expect("this room is on screen").into_string();
        let shown = markup.split_once("id=\"run-at\">").unwrap().1.split_once('<').unwrap().0;
        assert_eq!(shown, wanted.to_string());
    }

    fn open(&self) -> &Open {
        self.desk.open.as_ref().expect("a Run is on screen")
    }
}

#[test]
fn sixty_four_from_the_first_cut_to_closed() {
    let mut bench = Bench::start(64);
    bench.shows("At 1 of 64. Next: 10 holes on the 16 circle, clockwise, hole 0 to hole 10.");
    for _ in 0..36 {
        bench.later("next");
    }
    bench.shows("At 37 of 64. Next: 10 holes on the 16 circle, clockwise, hole 8 to hole 2.");
    bench.shows("No full turn. Hole 8 to hole 2. Work goes to 208° 7′ 30″. ");
    bench.shows("27 to go");
    bench.shows("Saved 14:32");
    bench.shows("Clamp off · pin out · move · pin in · arms round · clamp on · cut");
    for _ in 0..27 {
        bench.later("next");
    }
    bench.shows("Cut 64, The last one.");
    bench.later("next");
    bench.shows("All 64 cut. One closing move, no cut: 10 holes on the 16 circle, clockwise. The pin must come back to hole 0.");
    bench.shows("Pin is in hole 0");
    bench.later("next");
    bench.shows("Closed. 40 turns made.");
    bench.shows("Pin is in hole 0, work back at 0°. 64 moves: 63 between cuts, 1 to close.");
    bench.later("next");
    assert!(screen(&bench.desk).is_none(), "Next leaves a closed Run");
    assert!(bench.desk.runs[0].closed);
}

#[test]
fn differential_closes_in_the_hole_its_answer_names() {
    let head = Head {
        plates: plates_of(&SET_A).unwrap(),
        gears: gears_of(&handturn::head::GEARS).unwrap(),
        ..Head::default()
    };
    let asked = Asked::Parts(Parts { count: 127, every: 1 });
    let answer = answer::<4>(&asked.question(), &head).unwrap();
    let way = answer.best(Order::Closest).unwrap().way;
    let run = advance(Run { frozen: Frozen::new(asked, head, way).unwrap(), events: vec![] }, 128);
    let mut bench = Bench::new();
    bench.event("file", "a.json", &keep::file(run.clone()));
    bench.shows("Closed. 40 turns made.");
    bench.shows("Pin is in hole 13, work back at 0°.");
}

#[test]
fn a_press_counts_when_the_store_has_it_and_not_before() {
    let mut bench = Bench::start(64);
    bench.later("next");
    bench.obeys = false;
    bench.later("next");
    bench.at(2);
    bench.shows("Saving");
    bench.later("next");
    bench.shows("Still saving. That press was not counted.");
    let id = bench.open().id.clone();
    bench.event("kept", &id, "7 14:33:00");
    bench.at(2);
    bench.event("kept", &id, "1 14:33:00");
    bench.at(3);
    assert_eq!(bench.open().events.0.len(), 2);
}

#[test]
fn a_second_press_so_soon_asks() {
    let mut bench = Bench::start(64);
    bench.later("next");
    bench.at_ms += 1_499;
    bench.press("next");
    bench.shows("Counted once. Press again if you have moved again.");
    bench.at_ms += 1;
    bench.press("next");
    bench.shows("At 3 of 64.");
    bench.press("undo");
    bench.shows("At 2 of 64.");
}

#[test]
fn a_store_that_refuses_is_told_and_the_file_offered() {
    let mut bench = Bench::start(64);
    bench.later("next");
    bench.obeys = false;
    bench.later("next");
    let id = bench.open().id.clone();
    bench.event("unkept", &id, "1 full");
    bench.shows("Not saved. Write down 3");
    bench.later("next");
    bench.shows("Not saved. Write down 4");
    bench.press("saved");
    bench.shows("The device has no space left. Save to file, and make space.");
    bench.press("export");
    let Some(Effect::File(_, text)) = bench.asked.last() else { panic!("no file") };
    assert_eq!(keep::from_file(text).unwrap().events.len(), 3);
    // Space again: the next press stores what is missing, one after another.
    bench.press("close");
    bench.event("unkept", &id, "1 full");
    bench.obeys = true;
    bench.later("next");
    bench.shows("At 5 of 64.");
    assert_eq!((bench.open().saved, &*bench.open().unsaved), (4, ""));
}

#[test]
fn without_any_store_a_run_goes_on_and_is_not_lost_by_leaving() {
    let mut bench = Bench::new();
    bench.obeys = false;
    bench.event("storage", "refused", "SecurityError");
    offer(&mut bench.desk, run(64, 0).frozen);
    bench.press("start");
    bench.later("next");
    bench.shows("Not saved. Write down 2");
    bench.press("leave");
    let id = bench.desk.runs[0].id.clone();
    bench.event("press", "run-resume", &id);
    bench.at(2);
    bench.shows("Not saved. Write down 2");
    // The store takes something again: the whole Run goes into it.
    bench.event("unkept", &id, "begun closed");
    bench.event("storage", "ready", "");
    let Some(Effect::Begin(begun, lines)) = bench.asked.last() else { panic!("{:?}", bench.asked) };
    assert_eq!((begun, keep::from_lines(lines).unwrap().events.len()), (&id, 1));
    bench.at(2);
    bench.event("kept", &id, "begun 12:00:09");
    assert_eq!(bench.open().unsaved, "");
    bench.at(2);
}

#[test]
fn two_tabs_on_one_run() {
    let mut bench = Bench::start(64);
    bench.later("next");
    let id = bench.open().id.clone();
    bench.obeys = false;
    bench.event("lock", &id, "lost");
    bench.shows("Another tab has taken this Run over. Only one tab counts.");
    bench.later("next");
    assert_eq!(bench.open().events.0.len(), 1, "a press that does not count leaves no event");
    bench.event("stored", &id, &keep::lines(run(64, 5)));
    bench.at(6);
    bench.press("take-over");
    assert_eq!(bench.asked.last(), Some(&Effect::Claim(id.clone(), true)));
    bench.event("stored", &id, &keep::lines(run(64, 6)));
    bench.event("lock", &id, "held");
    bench.shows("At 7 of 64.");
    // A browser that does not say who counts: the store's events tell.
    bench.event("stored", &id, &keep::lines(run(64, 6)));
    assert_eq!(bench.open().lock, Lock::Held);
    bench.event("stored", &id, &keep::lines(run(64, 7)));
    bench.at(8);
    assert_eq!(bench.open().lock, Lock::Lost);
    assert_eq!(bench.asked.last(), Some(&Effect::Release(id.clone())));
    bench.event("stored", &id, &keep::lines(run(64, 6)));
    bench.event("lock", &id, "held");
    // Taken in the very moment of a press: not counted here.
    bench.later("next");
    bench.event("unkept", &id, "6 taken");
    bench.shows("Another tab counts on this Run now. That press was not counted.");
    assert_eq!((bench.open().events.0.len(), bench.open().lock), (6, Lock::Lost));
    assert_eq!(bench.asked.last(), Some(&Effect::Look(id)));
}

#[test]
fn keys_count_once_and_never_twice() {
    let key = |bench: &mut Bench, name: &str, on: &str| {
        bench.at_ms += 2_000;
        bench.event("key", name, on);
    };
    let mut bench = Bench::start(64);
    key(&mut bench, "PageDown", "");
    key(&mut bench, "ArrowRight", "button run-back");
    key(&mut bench, "Enter", "");
    bench.shows("At 4 of 64.");
    key(&mut bench, "held PageDown", "");
    key(&mut bench, "Enter", "button run-next");
    key(&mut bench, "held Enter", "button run-next");
    bench.shows("At 4 of 64.");
    assert_eq!(bench.asked.last(), Some(&Effect::Used), "a held Enter presses nothing");
    key(&mut bench, "PageUp", "");
    bench.shows("Back at 3.");
    bench.shows("Turn the handle anticlockwise, 10 holes and half a turn more, then up again clockwise to hole 4.");
    key(&mut bench, "Undo", "");
    bench.shows("At 4 of 64.");
    bench.press("past");
    key(&mut bench, "PageDown", "");
    key(&mut bench, "Escape", "");
    bench.shows("At 4 of 64.");
    key(&mut bench, "Escape", "");
    assert!(screen(&bench.desk).is_none());
}

#[test]
fn went_past_lost_and_jump() {
    let mut bench = Bench::start(64);
    for _ in 0..36 {
        bench.later("next");
    }
    bench.press("past");
    bench.shows("Went past hole 2?");
    bench.shows("back by the head’s slack, at least half a turn");
    bench.press("close");
    bench.press("lost");
    bench.shows("Then read the degree ring on the spindle:");
    bench.shows("202° 30′37");
    bench.event("press", "run-hole", "3");
    bench.shows("No part stops in hole 3. You are between positions: turn on, clockwise, 1 hole to hole 4, and look again.");
    bench.event("press", "run-hole", "2");
    bench.shows("208° 7′ 30″38");
    bench.at_ms += 10;
    bench.event("press", "run-found", "37");
    bench.shows("At 38 of 64.");
    bench.press("jump");
    bench.event("type", "run-jump", "41");
    bench.shows("Pin in hole 0 of the 16. Degree ring at 225°.");
    bench.event("type", "run-jump", "65");
    bench.shows("Position must be a whole number from 1 to 64.");
    bench.event("type", "run-jump", "41");
    bench.event("press", "run-go", "40");
    bench.shows("At 41 of 64.");
    assert_eq!(bench.open().sheet, Sheet::None);
}

#[test]
fn cut_and_at_it_apart() {
    let mut bench = Bench::new();
    offer(&mut bench.desk, run(64, 0).frozen);
    bench.event("type", "run-apart", "on");
    bench.event("type", "run-title", "Clock \u{2009}wheel");
    bench.press("start");
    assert_eq!(bench.open().frozen.confirm, Confirm::TwoStage);
    bench.shows("Cut 1, of 64.");
    bench.shows("1 is cut");
    bench.later("next");
    bench.shows("Next: 10 holes");
    bench.shows("I am at 2");
    bench.later("next");
    bench.shows("Cut 2, of 64.");
}

#[test]
fn rounds_follow_each_other() {
    let mut bench = Bench::new();
    offer(&mut bench.desk, run(3, 0).frozen);
    bench.event("press", "run-rounds", "rf");
    bench.press("start");
    bench.shows("of 3, Rough");
    for _ in 0..4 {
        bench.later("next");
    }
    bench.shows("Closed. 1 turn of the work made.");
    bench.shows("Begin round 2: Finish");
    bench.later("next");
    bench.shows("of 3, Finish");
    bench.shows("At 1 of 3. Next: 8 notches on the 24-notch plate, clockwise, notch 0 to notch 8.");
}

#[test]
fn what_is_stored_comes_back_and_what_cannot_be_read_is_named() {
    let mut bench = Bench::new();
    bench.event("stored", "run-1", &keep::lines(run(64, 36)));
    bench.event("stored", "run-2", "3\n{\"version\":9}");
    bench.event("stored", "run-3", "nonsense");
    let strip = strip(&bench.desk).into_string();
    assert!(strip.contains("64 parts, at 37 of 64"), "{strip}");
    bench.press("list");
    bench.shows("This was written by a newer version of Handturn.");
    bench.shows("Not a Run that can be read.");
    bench.event("press", "run-resume", "run-1");
    assert_eq!(bench.asked.last(), Some(&Effect::Look("run-1".to_owned())));
    bench.event("stored", "run-1", &keep::lines(run(64, 36)));
    bench.shows("At 37 of 64.");
    bench.press("leave");
    bench.press("list");
    bench.event("press", "run-delete", "run-1");
    bench.shows("Deleted: 64 parts.");
    assert!(bench.desk.runs.iter().all(|entry| entry.id != "run-1"));
    bench.press("undelete");
    assert!(bench.desk.runs.iter().any(|entry| entry.id == "run-1"));
    assert_eq!(bench.asked.last(), Some(&Effect::Undrop("run-1".to_owned())));
}

#[test]
fn a_file_that_is_no_run_is_refused_by_name() {
    let mut bench = Bench::new();
    bench.press("list");
    bench.event("file", "<b>.json", "{\"frozen\":{\"version\":1}}");
    bench.shows("&lt;b&gt;.json was not opened. Not a Run that can be read.");
    bench.event("file", "a.json", &keep::file(run(64, 3)));
    bench.shows("At 4 of 64.");
}

#[test]
fn the_whole_desk_survives_between_two_events() {
    let mut bench = Bench::start(64);
    for name in ["next", "lost", "close", "saved"] {
        bench.later(name);
        let text = keep::json::write(&mut bench.desk);
        assert_eq!(keep::json::read(&text), Ok(bench.desk.clone()), "{name}");
    }
    assert_eq!(bench.open().note, Note::None);
}

/// What is asked of the usual head with plates and gears, its closest way offered.
fn offered(count: u32) -> Bench {
    let head = Head {
        plates: plates_of(&SET_A).unwrap(),
        gears: gears_of(&handturn::head::GEARS).unwrap(),
        ..Head::default()
    };
    let asked = Asked::Parts(Parts { count, every: 1 });
    let answer = answer::<4>(&asked.question(), &head).unwrap();
    let way = answer.best(Order::Closest).unwrap().way;
    let mut bench = Bench::new();
    offer(&mut bench.desk, Frozen::new(asked, head, way).unwrap());
    bench
}

#[test]
fn before_a_differential_run_stand_its_gears_and_the_check_of_their_sense() {
    let mut bench = offered(127);
    bench.shows("Gears: spindle 56; idlers 24, 28; worm shaft 24.");
    bench.shows("the plate must go back 21°. If it follows the handle, change the idlers by one. Fingers out, guard on.");
    bench.shows("Plate stop out for the whole job");
    let text = bench.text();
    assert!(
        text.find("one turn clockwise") < text.find("Pin in hole 0"),
        "the check turns the handle"
    );
    bench.shows("Come up to this place clockwise");
    bench.press("start");
    bench.shows("Cutter clear, fingers out, before the handle moves.");
}

#[test]
fn before_a_direct_run_the_worm_goes_out_and_no_slack_is_taken_up() {
    let bench = offered(12);
    bench.shows("Worm out of mesh.");
    bench.shows("Worm out: hold the work; putting it back loses the place.");
    assert!(!bench.text().contains("slack"));
}
