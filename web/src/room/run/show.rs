//! What the screen says at a state: the move, its cycle, what Next stands for.
use super::desk::Open;
use crate::words::{self, grouped, moves, run};
use handturn::divide::{At, Leg, Part, Place, Way};
use handturn::error::Error;
use handturn::head::Head;
use handturn::run::{Confirm, Mark, Phase, Plan, State};

/// Everything the middle of the screen says.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Show {
    /// Position at the cutter, from 1.
    pub at: u32,
    pub of: u32,
    /// Beside the position: what is left.
    pub left: String,
    /// Over the figures.
    pub before: Vec<String>,
    /// The mark to cut here, when graduating: its kind and its number.
    pub mark: Option<(String, String)>,
    /// The figures, each with its unit.
    pub figures: Vec<(String, &'static str)>,
    /// A word in place of figures.
    pub word: String,
    /// Under the figures.
    pub under: String,
    pub why: Vec<String>,
    pub cycle: Vec<&'static str>,
    pub caution: &'static str,
    /// Under "Next", and in its name.
    pub next: String,
    /// The whole of it for those who listen.
    pub say: String,
    /// The leg to draw.
    pub leg: Option<Leg>,
    pub phase: Option<Phase>,
    /// At the end of everything: Next only leaves.
    pub done: bool,
}

/// What to say about the confirmed state of a Run.
pub(super) fn of(open: &Open, state: &State) -> Result<Show, Error> {
    let plan = open.frozen.plan();
    let of = plan.question.positions();
    let phase = state.phase(&plan);
    let base = Show {
        at: state.index().saturating_add(1).min(of),
        of,
        left: left(&plan, state, phase),
        mark: plan.mark(state.index()).map(|mark| mark_words(&plan, mark)),
        caution: caution(&open.frozen.way),
        phase: Some(phase),
        ..Show::default()
    };
    let stage = Stage { plan: &plan, head: &open.frozen.head, state, base };
    match phase {
        Phase::Closed => stage.closed(),
        Phase::Closing { leg } => stage.closing(leg),
        Phase::First | Phase::ToCut if plan.confirm == Confirm::TwoStage || stage.last() => {
            stage.cut()
        }
        Phase::Moving { leg } => stage.moving(leg),
        Phase::First | Phase::ToCut | Phase::Cut => stage.moving(0),
    }
}

struct Stage<'a> {
    plan: &'a Plan<'a>,
    head: &'a Head,
    state: &'a State,
    base: Show,
}

impl Stage<'_> {
    fn last(&self) -> bool {
        self.base.at == self.base.of
    }

    /// A position that is to be cut, confirmed by itself.
    fn cut(self) -> Result<Show, Error> {
        let (at, last) = (self.base.at, self.last());
        let leg = self.standing(self.state.index())?;
        let word = "Cut ".to_owned() + &grouped(i64::from(at));
        let under = if last {
            run::LAST_ONE.to_owned()
        } else {
            ["of ", &grouped(i64::from(self.base.of))].concat()
        };
        let after = last && self.plan.question.closes();
        let say = [&*word, ", ", &*under, ". ", &*spoken_mark(&self.base.mark)].concat();
        Ok(Show {
            word,
            under,
            why: if after { vec![run::THEN_CLOSING.to_owned()] } else { vec![] },
            cycle: if self.head.spindle_clamp { vec!["Clamp on", "cut"] } else { vec!["Cut"] },
            next: grouped(i64::from(at)) + " is cut",
            caution: "",
            say,
            leg,
            ..self.base
        })
    }

    /// A leg of the move to the next position.
    fn moving(self, made: u8) -> Result<Show, Error> {
        let step = self.plan.step(self.state.index())?;
        let legs = step.legs.len();
        let Some(leg) = step.legs.get(usize::from(made)).copied() else { return Ok(self.base) };
        let final_leg = usize::from(made) + 1 == legs;
        let mut why = from_to(&leg);
        if final_leg {
            let place = self.plan.place(self.state.index().saturating_add(1))?;
            why.push(["Work goes to ", &run::work_at(place.stands), "."].concat());
        }
        why.extend(arms(&leg));
        let (at, to) = (self.base.at, self.base.at.saturating_add(1));
        let next = if final_leg {
            "I am at ".to_owned() + &grouped(i64::from(to))
        } else {
            home_words(&leg)
        };
        let say = [
            "At ",
            &grouped(i64::from(at)),
            " of ",
            &grouped(i64::from(self.base.of)),
            ". ",
            &spoken_mark(&self.base.mark),
            "Next: ",
            &run::amount(&leg),
            " ",
            &run::on_what(&leg),
            ", ",
            &spoken_stops(&leg),
            ".",
        ]
        .concat();
        Ok(Show {
            before: legs_words(usize::from(made), legs, &leg),
            mark: self
                .base
                .mark
                .clone()
                .filter(|_| made == 0 && self.plan.confirm == Confirm::OneStage),
            figures: figures(&leg),
            under: run::on_what(&leg),
            why,
            cycle: self.cycle(&leg, made == 0, final_leg, true),
            next,
            say,
            leg: Some(leg),
            ..self.base
        })
    }

    fn closing(self, made: u8) -> Result<Show, Error> {
        let Some(home) = self.plan.home()? else { return Ok(self.base) };
        let legs = home.step.legs.len();
        let Some(leg) = home.step.legs.get(usize::from(made)).copied() else {
            return Ok(self.base);
        };
        let final_leg = usize::from(made) + 1 == legs;
        let all = all_cut(self.plan, self.state);
        let must = must_stand(&home.place);
        let mut before = vec![all.clone(), run::ONE_CLOSING.to_owned()];
        before.extend(legs_words(usize::from(made), legs, &leg));
        let why =
            if final_leg { vec![must.clone(), run::NOT_IF.to_owned()] } else { from_to(&leg) };
        let say = [
            &*all,
            " ",
            run::ONE_CLOSING,
            " ",
            &run::amount(&leg),
            " ",
            &run::on_what(&leg),
            ". ",
            &must,
        ]
        .concat();
        Ok(Show {
            before,
            mark: None,
            figures: figures(&leg),
            under: run::on_what(&leg),
            why,
            cycle: self.cycle(&leg, made == 0, final_leg, false),
            next: if final_leg { home_words_at(&home.place) } else { home_words(&leg) },
            say,
            leg: Some(leg),
            ..self.base
        })
    }

    fn closed(self) -> Result<Show, Error> {
        let rounds = self.plan.rounds;
        let following = rounds.get(usize::from(self.state.round()) + 1);
        let next = following.map_or_else(
            || "Leave this Run".to_owned(),
            |round| {
                ["Begin round ", &(self.state.round() + 2).to_string(), ": ", run::round(*round)]
                    .concat()
            },
        );
        let at = self.state.index().min(self.plan.question.last());
        let place = self.plan.place(at)?;
        let (word, under, why) = match self.plan.home()? {
            Some(home) => {
                let work = home.place.stands.turns();
                let turns = self.head.ratio.checked_mul(work)?;
                let made = if home.place.notch.is_some() {
                    // With the worm out the handle stood still.
                    run::turns(work) + " of the work made."
                } else if turns.is_whole() {
                    grouped(turns.num()) + " turns made."
                } else {
                    run::turns(turns) + " made."
                };
                (run::CLOSED, made, vec![stands_home(&home.place)?, moves_made(self.base.of)])
            }
            None => (run::ALL_DONE, all_cut(self.plan, self.state), vec![]),
        };
        Ok(Show {
            word: word.to_owned(),
            done: following.is_none(),
            say: [word, " ", &under].concat(),
            under,
            why,
            mark: None,
            caution: "",
            next,
            leg: standing(&place),
            ..self.base
        })
    }

    fn standing(&self, index: u32) -> Result<Option<Leg>, Error> {
        Ok(standing(&self.plan.place(index)?))
    }

    /// The hands' order of work for one leg.
    fn cycle(&self, leg: &Leg, first: bool, last: bool, cuts: bool) -> Vec<&'static str> {
        let mut cycle = Vec::new();
        if first && self.head.spindle_clamp {
            cycle.push("Clamp off");
        }
        let (out, home): (&[_], _) = match leg.part {
            Part::Pin => (&["pin out"], Some("pin in")),
            Part::BackPin => (&["back pin out"], Some("back pin in")),
            Part::Spindle => (&["notch pin out"], Some("notch pin in")),
            Part::Handwheel | Part::FineDial => (&[], None),
        };
        cycle.extend(out);
        cycle.push(if leg.part == Part::FineDial { "turn the dial" } else { "move" });
        cycle.extend(home);
        if cuts && leg.arms.is_some() && leg.part == Part::Pin {
            cycle.push("arms round");
        }
        if last && cuts {
            if self.head.spindle_clamp {
                cycle.push("clamp on");
            }
            cycle.push("cut");
        }
        cycle
    }
}

fn left(plan: &Plan, state: &State, phase: Phase) -> String {
    let left = state.left(plan);
    match phase {
        Phase::Closing { .. } | Phase::Closed if state.all_cut(plan) => "all cut".to_owned(),
        Phase::First | Phase::ToCut if left == 0 => "the last".to_owned(),
        _ => grouped(i64::from(left)) + " to go",
    }
}

/// "All 64 cut.", or what is still missing.
fn all_cut(plan: &Plan, state: &State) -> String {
    let of = plan.question.positions();
    if state.all_cut(plan) {
        return ["All ", &grouped(i64::from(of)), " cut."].concat();
    }
    [run::NOT_CUT_YET, " ", &gaps(plan, state), "."].concat()
}

/// The positions not cut, as people count: "5 to 7, 12".
pub(super) fn gaps(plan: &Plan, state: &State) -> String {
    let one = |(from, to): (u32, u32)| match to.saturating_sub(from) {
        1 => grouped(i64::from(to)),
        _ => [grouped(i64::from(from) + 1), grouped(i64::from(to))].join(" to "),
    };
    state.cuts().gaps(plan.question.positions()).map(one).collect::<Vec<_>>().join(", ")
}

fn mark_words(plan: &Plan, mark: Mark) -> (String, String) {
    let handturn::divide::Question::Marks(graduation) = plan.question else {
        return Default::default();
    };
    let kinds = || graduation.kinds.iter().map(|kind| kind.length.mm());
    let (longer, shorter) =
        (kinds().any(|mm| mm > mark.length.mm()), kinds().any(|mm| mm < mark.length.mm()));
    let kind = match (longer, shorter) {
        (false, false) => run::LINE,
        (false, true) => words::LONG,
        (true, false) => words::SHORT,
        (true, true) => words::MIDDLE,
    };
    let length = words::decimal(mark.length.mm(), 3) + " mm";
    let number = mark.number.map_or_else(String::new, |number| number.to_string());
    ([kind, " ", &length].concat(), number)
}

fn spoken_mark(mark: &Option<(String, String)>) -> String {
    match mark {
        Some((kind, number)) if number.is_empty() => ["Cut here: ", kind, ". "].concat(),
        Some((kind, number)) => ["Cut here: ", kind, ", number ", number, ". "].concat(),
        None => String::new(),
    }
}

/// Turns over holes; a move of nothing says so.
fn figures(leg: &Leg) -> Vec<(String, &'static str)> {
    let one_of = |n: u32, (one, many): (&'static str, &'static str)| {
        (n.to_string(), if n == 1 { one } else { many })
    };
    let mut figures = Vec::new();
    if leg.turns > 0 {
        figures.push(one_of(leg.turns, ("turn", "turns")));
    }
    if leg.spaces > 0 || leg.turns == 0 {
        figures.push(one_of(leg.spaces, moves::unit(leg.part)));
    }
    figures
}

fn from_to(leg: &Leg) -> Vec<String> {
    let (hole, from, to_hole, to) = run::from_to(leg);
    let turns = if leg.turns == 0 && leg.part != Part::Spindle { "No full turn. " } else { "" };
    vec![[turns, hole, " ", &from.to_string(), " ", to_hole, " ", &to.to_string(), "."].concat()]
}

/// About the arms, where they do not simply stand at the move.
fn arms(leg: &Leg) -> Option<String> {
    let unusual = leg.part == Part::Pin && leg.spaces > 0 && leg.arms.is_none_or(|set| set.rest);
    unusual.then(|| {
        moves::arms(&Leg { turns: 0, ..*leg }).trim_start_matches("No full turn. ").to_owned()
    })
}

fn spoken_stops(leg: &Leg) -> String {
    [&*run::stop(leg.part, leg.from.number), " to ", &*run::stop(leg.part, leg.to.number)].concat()
}

fn legs_words(made: usize, legs: usize, leg: &Leg) -> Vec<String> {
    if legs < 2 {
        return vec![];
    }
    let name = match leg.part {
        Part::BackPin => "back pin",
        Part::Pin => "pin",
        Part::FineDial => "fine dial",
        Part::Handwheel => "handwheel",
        Part::Spindle => "spindle",
    };
    vec![["Leg ", &(made + 1).to_string(), " of ", &legs.to_string(), ": ", name].concat()]
}

/// What is home when a leg that is not the last is made.
fn home_words(leg: &Leg) -> String {
    match leg.part {
        Part::BackPin => ["Back pin is in hole ", &leg.to.number.to_string()].concat(),
        Part::FineDial | Part::Handwheel => ["Dial reads ", &leg.to.number.to_string()].concat(),
        Part::Spindle => ["Pin is in notch ", &leg.to.number.to_string()].concat(),
        Part::Pin => ["Pin is in hole ", &leg.to.number.to_string()].concat(),
    }
}

fn home_words_at(place: &Place) -> String {
    let home = |what: &str, at: At| [what, " ", &at.number.to_string()].concat();
    match (place.pin, place.back_pin, place.notch, place.dial) {
        (Some(pin), Some(back), ..) => {
            [&*home("Pin in hole", pin), ", ", &*home("back pin in", back)].concat()
        }
        (Some(pin), None, _, Some(dial)) => {
            [&*home("Pin in hole", pin), ", ", &*home("dial at", dial)].concat()
        }
        (Some(pin), ..) => home("Pin is in hole", pin),
        (None, _, Some(notch), _) => home("Pin is in notch", notch),
        (None, _, None, Some(dial)) => home("Dial reads", dial),
        _ => run::DONE.to_owned(),
    }
}

fn must_stand(place: &Place) -> String {
    match (place.pin, place.notch, place.dial) {
        (Some(pin), _, Some(dial)) => [
            "The pin must come back to hole ",
            &pin.number.to_string(),
            ", the dial to ",
            &dial.number.to_string(),
            ".",
        ]
        .concat(),
        (Some(pin), ..) => {
            ["The pin must come back to hole ", &pin.number.to_string(), "."].concat()
        }
        (None, Some(notch), _) => {
            ["The pin must come back to notch ", &notch.number.to_string(), "."].concat()
        }
        (None, None, Some(dial)) => {
            ["The dial must come back to ", &dial.number.to_string(), "."].concat()
        }
        _ => String::new(),
    }
}

fn stands_home(place: &Place) -> Result<String, Error> {
    let error = place.error()?;
    let work = if error.turns().is_zero() {
        "work back at 0°".to_owned()
    } else {
        let side = if error.turns().is_negative() { " short of 0°" } else { " past 0°" };
        let size = handturn::measure::Angle::from_turns(error.turns().abs());
        ["work ", &words::seconds(size), side].concat()
    };
    Ok([&*home_words_at(place), ", ", &*work, "."].concat())
}

fn moves_made(of: u32) -> String {
    let n = i64::from(of);
    [&*grouped(n), " moves: ", &*grouped(n - 1), " between cuts, 1 to close."].concat()
}

fn caution(way: &Way) -> &'static str {
    match way.kind() {
        handturn::divide::Kind::Direct => words::WORM_OUT,
        handturn::divide::Kind::Handwheel | handturn::divide::Kind::FineDial => words::NO_PIN,
        handturn::divide::Kind::Differential => run::GEARS_SHORT,
        _ => run::CLEAR_SHORT,
    }
}

/// A leg of nothing that shows where pin, notch or dial stand.
fn standing(place: &Place) -> Option<Leg> {
    let (part, at) = place
        .pin
        .map(|at| (Part::Pin, at))
        .or(place.notch.map(|at| (Part::Spindle, at)))
        .or(place.dial.map(|at| (Part::Handwheel, at)))?;
    let sense = handturn::head::Sense::Clockwise;
    Some(Leg { part, sense, turns: 0, spaces: 0, from: at, to: at, arms: None })
}
