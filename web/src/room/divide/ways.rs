//! The answering side: how many ways, in which order, the list of them with one
//! open, what was left out and what would make it exact.
use super::{EACH, Worked, dial, form, panel, plate, table};
use crate::pieces::{mark, over, segmented};
use crate::words::{self, moves};
use handturn::divide::{Errors, Group, Kind, Order, Question, Rated, Reason, Way};
use handturn::number::Fraction;
use maud::{Markup, html};

/// The whole answering side; `stale` while what is typed cannot be read.
pub(super) fn section(worked: &Worked, stale: bool) -> Markup {
    let ranked = worked.answer.ranked(worked.order);
    let open = worked.open();
    let order = if worked.order == Order::Closest { "closest" } else { "quickest" };
    let made = worked.lack.map(|need| plate::plan(worked, need));
    // A plate that is still to be made is the quickest of all to nobody.
    let nearer = |group: &&&Group<EACH>| {
        let within = made.as_ref().and_then(plate::Plan::within);
        let best = group.ways(worked.order).first().map(|rated| rated.errors);
        worked.order == Order::Quickest
            || best.is_none_or(|best| within.is_none_or(|within| best.worst <= within.worst))
    };
    let before = ranked.iter().filter(nearer).count();
    let ways = ranked.len() + usize::from(made.is_some());
    html! {
        div.hd {
            h2 id="answer" tabindex="-1" aria-live="polite" { (heading(worked, ways, stale)) (worked.fields.get("said")) }
            @if ways > 1 {
                div.sort {
                    (segmented("order", words::ORDER, order, &[
                        ("closest", words::CLOSEST), ("quickest", words::QUICKEST),
                    ]))
                }
            }
        }
        (fact(worked))
        ol.ways {
            @for (rank, group) in ranked.iter().enumerate() {
                @if let (true, Some(made)) = (rank == before, &made) { (plate::row(worked, rank, made)) }
                @let shown = open.filter(|(kind, _)| *kind == group.kind).map(|(_, rated)| rated);
                @if let Some(rated) = shown.or(group.ways(worked.order).first()) {
                    (one(worked, rank + usize::from(made.is_some() && rank >= before), group, rated, shown.is_some()))
                }
            }
            @if let (true, Some(made)) = (before == ranked.len(), &made) { (plate::row(worked, before, made)) }
        }
        (left_out(worked))
        @if let Question::Marks(marks) = &worked.question { (dial::section(worked.fields, marks)) }
        @if let Some((kind, rated)) = open {
            (table::section(worked, rated, words::key(kind)))
        }
    }
}

fn heading(worked: &Worked, ways: usize, stale: bool) -> String {
    let what = asked(&worked.question);
    if stale {
        return words::last_good_answer(&what);
    }
    words::ways_to_set(u32::try_from(ways).unwrap_or(u32::MAX), &what)
}

/// What was asked, in a heading.
pub(super) fn asked(question: &Question) -> String {
    match question {
        Question::Parts(parts) => words::grouped(i64::from(parts.count)),
        Question::Angle(repeated) => words::angle_text(repeated.angle),
        Question::List(angles) => words::angles(angles.len()),
        Question::Marks(dial) => words::marks(dial.count),
    }
}

/// The one fact that decides: the circle that does it, or why none does.
fn fact(worked: &Worked) -> Markup {
    let exact = worked.answer.best(Order::Closest).is_some_and(|best| best.errors.is_none());
    html! {
        p.fact {
            @if let Some(turns) = worked.turns() { (circle_fact(worked, turns)) }
            @if !exact {
                @if let Some(best) = worked.answer.best(Order::Closest) {
                    " " b { (words::NO_EXACT_WAY) } " " (words::closest_is(words::kind(best.way.kind()), &words::seconds(best.errors.worst)))
                }
                (lacking(worked))
            }
        }
    }
}

/// What the handle turns for one part, and whether one of the circles takes it.
fn circle_fact(worked: &Worked, turns: Fraction) -> Markup {
    let plain =
        worked.answer.group(Kind::Plain).and_then(|group| group.ways(Order::Closest).first());
    let asked = match (worked.question.parts(), worked.head.ratio.is_whole()) {
        (Some(parts), true)
            if worked.question.step().is_ok_and(|s| s.is_some_and(|s| s.turns().num() == 1)) =>
        {
            Some((worked.head.ratio.num(), i64::from(parts)))
        }
        _ => None,
    };
    html! {
        (if worked.question.closes() { words::ONE_PART_IS } else { words::ONE_MOVE_IS })
        @if let Some((num, den)) = asked.filter(|asked| *asked != (turns.num(), turns.den())) { (over(num, den)) " = " }
        (fraction(turns))
        @if turns.is_whole() {
            (words::WHOLE_TURNS)
        } @else if let Some(Way::Plain(way)) = plain.map(|rated| rated.way) {
            (words::goes_into(turns, way.circle.holes))
        } @else {
            (words::goes_into_none(turns)) b { (words::NO_PLAIN) } "."
        }
    }
}

/// A fraction, or a whole number.
fn fraction(value: Fraction) -> Markup {
    if value.is_whole() {
        html! { (words::grouped(value.num())) }
    } else {
        over(value.num(), value.den())
    }
}

fn lacking(worked: &Worked) -> Markup {
    html! {
        @if let Some(text) = words::lacking(worked.answer.lacking.circle, worked.answer.lacking.gear) { " " (text) }
    }
}

/// One row, and its panel where it is open.
fn one<const EACH: usize>(
    worked: &Worked,
    rank: usize,
    group: &Group<EACH>,
    rated: &Rated,
    open: bool,
) -> Markup {
    let row = Row {
        rank,
        key: words::key(group.kind),
        name: words::kind(group.kind),
        line: line(worked, rated),
        mark: mark(&rated.errors),
        aside: aside(worked, rated),
    };
    row.drawn(open.then(|| panel::panel(worked, group, rated)))
}

/// A row of the list of ways.
pub(super) struct Row {
    pub(super) rank: usize,
    /// What it is called in values and ids.
    pub(super) key: &'static str,
    pub(super) name: &'static str,
    /// Its move in one line.
    pub(super) line: String,
    /// How good it is.
    pub(super) mark: Markup,
    /// What stands beside that.
    pub(super) aside: Markup,
}

impl Row {
    /// The row, and under it `panel` where it stands open.
    pub(super) fn drawn(self, panel: Option<Markup>) -> Markup {
        let key = self.key;
        let (row, body) = (["way-", key].concat(), ["panel-", key].concat());
        let open = panel.is_some();
        html! {
            li id=(["item-", key].concat()) {
                h3.wh {
                    button.row.plate id=(row) type="button" data-do="way" data-value=(if open { "none" } else { key })
                        aria-expanded=(open) aria-controls=[open.then_some(&body)] {
                        span.rk { span.vh { (words::RANK) " " } (self.rank + 1) }
                        span.sm { span.nm { (self.name) } span.say { (self.line) } }
                        span.mk { (self.mark) span.ms { (self.aside) } }
                    }
                }
                @if let Some(panel) = panel {
                    div.bd.plate id=(body) role="region" aria-labelledby=(row) { (panel) }
                }
            }
        }
    }
}

/// A way's move in one line.
pub(super) fn line(worked: &Worked, rated: &Rated) -> String {
    match worked.first_move(&rated.way) {
        Some(first) if worked.question.step().is_ok_and(|step| step.is_some()) => {
            let line = moves::phrase(&first.legs, worked.spread(&rated.way)).line();
            if let [leg] = &*first.legs { line + moves::ring(leg) } else { line }
        }
        Some(first) => first.legs.first().map_or_else(String::new, moves::on_ring),
        None => String::new(),
    }
}

/// What stands beside the mark: gears, or how much it comes to at the work.
fn aside(worked: &Worked, rated: &Rated) -> Markup {
    html! {
        @if rated.errors.is_none() {
            @match rated.way {
                Way::Differential(way) => (words::gears(&way.train)),
                Way::Direct(_) => (words::WORM_IS_OUT),
                _ => (words::NO_GEARS),
            }
        } @else {
            (beside(worked, &rated.errors))
        }
    }
}

/// What errors come to at the work.
pub(super) fn beside(worked: &Worked, errors: &Errors) -> Markup {
    html! {
        (words::at_rim(errors.worst, worked.head.work_diameter))
        @if errors.adjacent > errors.worst {
            span.adj { (words::NEIGHBOURS) " " (words::seconds(errors.adjacent)) }
        }
    }
}

/// Kinds that are not offered, each with its reason.
fn left_out(worked: &Worked) -> Markup {
    let wants_gears = |reason| reason == Reason::NoGears;
    html! {
        @if !worked.answer.left_out.is_empty() {
            details.left id="left-out" {
                summary { (words::LEFT_OUT) }
                ul {
                    @for out in &worked.answer.left_out {
                        li { b { (words::kind(out.kind)) } ": " (words::reason(out.reason)) "." }
                    }
                    @if let Some(holes) = plate::too_many(&worked.question, worked.head) {
                        li { b { (words::plate::MAKE) } ": " (words::plate::too_many_holes(holes)) "." }
                    }
                }
            }
            @if worked.answer.left_out.iter().any(|out| wants_gears(out.reason)) {
                div.offer id="offer-gears" { (form::usual_gears()) }
            }
        }
    }
}
