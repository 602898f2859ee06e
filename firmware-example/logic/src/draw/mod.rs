//! From a view to its picture. Calm by rule: one thing large, the rest small;
//! lit ground only for what must be seen from across the shop.
mod line;
mod pen;
mod words;

use crate::entry::Entry;
use crate::frame::Frame;
use crate::settings::{Item, Settings};
use crate::view::{Choice, Note, Position, View, Way};
use embedded_graphics::pixelcolor::BinaryColor;
use handturn::head::Sense;
use handturn::run::Confirm;
use line::Line;
use pen::{Pen, Size, wide};

/// The picture of a view, with a note at its foot.
#[must_use]
#[inline(never)] // Kept apart from the loop: inlined together they take more flash and stack.
pub fn draw(view: &View, note: Option<Note>) -> Frame {
    let mut pen = Pen::new();
    let mut lit = false;
    match *view {
        View::Believe { at, cut } => believe(&mut pen, at, cut),
        View::Restarted { at } => restarted(&mut pen, at),
        View::MemoryFault { working } => memory_fault(&mut pen, working),
        View::Setup { settings, item } => setup(&mut pen, &settings, item),
        View::Number { item, ring, entry } => number(&mut pen, item, ring, &entry),
        View::Errors { tenths } => errors(&mut pen, tenths),
        View::Begin { side } => begin(&mut pen, side),
        View::Going { to, way, closing, unkept } => going(&mut pen, to, &way, closing, unkept),
        View::OnTarget { at, closing, unkept } => {
            on_target(&mut pen, at, closing, unkept);
            lit = true;
        }
        View::ToCut { at, one_press, unkept } => to_cut(&mut pen, at, one_press, unkept),
        View::Done { of } => done(&mut pen, of),
        View::Lost => lost(&mut pen),
        View::Reference { at, fits } => reference(&mut pen, at, fits),
        View::NoneFits => none_fits(&mut pen),
        View::Menu { choice } => menu(&mut pen, choice),
    }
    if lit {
        pen.frame.invert();
    }
    if let Some(note) = note {
        pen.note(words::note(note).as_str());
    }
    pen.frame
}

fn place(at: Position) -> Line {
    Line::new().number(at.number).text(words::OF).number(at.of)
}

fn believe(pen: &mut Pen, at: Position, cut: bool) {
    pen.banner(words::LOOK);
    pen.middle(
        16,
        Size::Plain,
        Line::new().text(words::LAST_KEPT).number(at.number).text(words::OF).number(at.of).as_str(),
    );
    pen.middle(28, Size::Plain, if cut { words::IS_CUT } else { words::NOT_CUT });
    pen.middle(40, Size::Plain, words::STILL_THERE);
    pen.foot(words::YES_NO);
}

fn restarted(pen: &mut Pen, at: Position) {
    pen.banner(words::RESTARTED);
    pen.middle(16, Size::Plain, words::WAS_STUCK);
    pen.middle(28, Size::Plain, words::MAY_HAVE_MOVED);
    pen.middle(
        40,
        Size::Plain,
        Line::new().text(words::LAST_KEPT).number(at.number).text(words::OF).number(at.of).as_str(),
    );
    pen.foot(words::NEXT_REFERENCE);
}

fn memory_fault(pen: &mut Pen, working: bool) {
    pen.banner(words::MEMORY_FAULT);
    pen.middle(17, Size::Plain, if working { words::NOT_STORED } else { words::NOT_READ });
    pen.middle(33, Size::Fine, words::TRY_AGAIN);
    pen.middle(44, Size::Fine, words::GO_ON_UNKEPT);
    pen.middle(55, Size::Fine, words::LOOK_AT_WIRES);
}

fn setup(pen: &mut Pen, settings: &Settings, item: Item) {
    let chosen = Item::ALL.iter().position(|&one| one == item).unwrap_or(0);
    let value = |one: Item| match one {
        Item::Side => Line::new().text(words::side(settings.side)),
        Item::Confirm => Line::new().text(match settings.confirm {
            Confirm::OneStage => words::ONE_PRESS,
            Confirm::TwoStage => words::TWO_PRESSES,
        }),
        Item::Sound => Line::new().text(if settings.sound { words::ON } else { words::OFF }),
        Item::Slack => Line::new().decimal(settings.number(one), 2),
        Item::Errors | Item::Begin => Line::new().text(words::OPENS),
        _ => Line::new().number(settings.number(one)),
    };
    pen.list(&Item::ALL, chosen, |one| (words::item(one), value(one)));
}

fn number(pen: &mut Pen, item: Option<Item>, ring: bool, entry: &Entry) {
    let label = match item {
        Some(item) => words::item(item),
        None if ring => words::RING_READS,
        None => words::GO_TO_POSITION,
    };
    pen.middle(0, Size::Plain, label);
    let mut x = 64_i32.saturating_sub(wide(row(entry.digits()).as_str(), 15) / 2);
    for (place, &digit) in (0_u8..).zip(entry.digits()) {
        let next = pen.digits(x, 14, 15, 28, Line::new().number(u32::from(digit)).as_str());
        if place == entry.at() {
            pen.fill(x, 45, 15, 3, BinaryColor::On);
        }
        if place == 0 && item == Some(Item::Slack) {
            pen.fill(x.saturating_add(15), 39, 3, 3, BinaryColor::On);
        }
        x = next;
    }
    pen.foot(words::DIGIT_KEYS);
}

fn row(digits: &[u8]) -> Line {
    digits.iter().fold(Line::new(), |line, &digit| line.number(u32::from(digit)))
}

fn errors(pen: &mut Pen, tenths: Option<[u32; 3]>) {
    pen.banner(words::ERRORS_AT_WORK);
    let Some(tenths) = tenths else {
        pen.middle(30, Size::Plain, words::TOO_LARGE);
        return;
    };
    let mut y = 17;
    for (label, value) in words::ERRORS.iter().zip(tenths) {
        pen.left(2, y, Size::Plain, label);
        pen.right(y, Size::Plain, Line::new().decimal(value, 1).text(words::ARCSEC).as_str());
        y = y.saturating_add(12);
    }
    pen.foot(words::AND_YOUR_HEAD);
}

fn begin(pen: &mut Pen, side: Sense) {
    pen.banner(words::FIRST_POSITION);
    pen.middle(15, Size::Plain, Line::new().text(words::COME_UP).text(words::side(side)).as_str());
    caution(pen, 26);
    pen.foot(words::NEXT_IS_ONE);
}

/// Said wherever a cut comes next.
fn caution(pen: &mut Pen, top: i32) {
    let mut y = top;
    for line in words::CLAMP {
        pen.middle(y, Size::Fine, line);
        y = y.saturating_add(9);
    }
}

fn unkept_mark(pen: &mut Pen, unkept: bool) {
    if unkept {
        pen.right(0, Size::Fine, words::UNKEPT);
    }
}

/// Where the figures of a move begin, right of the arrow, and the width of a word below them.
const LEFT: i32 = 30;
const TURNS_WIDE: i32 = 25;

fn going(pen: &mut Pen, to: Position, way: &Way, closing: bool, unkept: bool) {
    let target = if closing {
        Line::new().text(if way.past { words::HOME } else { words::CLOSING })
    } else {
        place(to)
    };
    if way.past {
        let banner = if closing {
            Line::new().text(words::PAST_HOME)
        } else {
            Line::new().text(words::PAST).number(to.number).text(words::BACK_OFF)
        };
        pen.banner(banner.as_str());
    } else {
        pen.left(0, 0, Size::Plain, target.as_str());
        unkept_mark(pen, unkept);
    }
    let top: i32 = if way.past { 16 } else { 13 };
    pen.arrow(0, top.saturating_add(3), way.left.sense);
    let turns = Line::new().number(way.left.turns);
    let counts = Line::new().number(way.left.counts);
    // As large as they fit: where the counts begin depends on the turns.
    let behind_turns =
        |width| wide(turns.as_str(), width).max(TURNS_WIDE).saturating_add(LEFT + 14);
    let begins = |width| if way.left.turns > 0 { behind_turns(width) } else { LEFT };
    let fits = |&width: &u32| begins(width).saturating_add(wide(counts.as_str(), width)) <= 128;
    let width = [16, 14, 11, 9, 8, 7].into_iter().find(fits).unwrap_or(7);
    let under = top.saturating_add(31);
    let x = begins(width);
    if way.left.turns > 0 {
        pen.digits(LEFT, top, width, 29, turns.as_str());
        pen.left(LEFT, under, Size::Fine, words::TURNS);
        pen.plus(x.saturating_sub(11), top.saturating_add(10));
    }
    pen.digits(x, top, width, 29, counts.as_str());
    let of = Line::new().text(words::COUNTS_OF).number(way.per_turn);
    pen.left(x, under, Size::Fine, of.as_str());
    if way.past {
        pen.middle(56, Size::Fine, words::THEN_COME_AGAIN);
    } else {
        let all =
            if way.left.turns > 0 { way.left.counts.max(way.per_turn) } else { way.left.counts };
        pen.bar(all, way.per_turn);
    }
}

fn on_target(pen: &mut Pen, at: Position, closing: bool, unkept: bool) {
    pen.left(2, 1, Size::Plain, words::ON_TARGET);
    if unkept {
        unkept_mark(pen, unkept);
    } else if !closing {
        pen.right(1, Size::Plain, Line::new().text(words::OF).number(at.of).text(" ").as_str());
    }
    if closing {
        pen.middle(26, Size::Plain, words::IS_HOME);
        pen.foot(words::NEXT_HOME);
    } else {
        pen.digits_in_middle(14, 18, 34, Line::new().number(at.number).as_str());
        pen.foot(words::CLAMP_THEN_NEXT);
    }
}

fn to_cut(pen: &mut Pen, at: Position, one_press: bool, unkept: bool) {
    pen.left(0, 6, Size::Plain, words::AT);
    pen.digits_in_middle(0, 11, 21, Line::new().number(at.number).as_str());
    let of = Line::new().text(words::OF).number(at.of);
    pen.right(12, Size::Plain, of.as_str());
    unkept_mark(pen, unkept);
    caution(pen, 24);
    pen.foot(if one_press { words::CUT_AND_TURN } else { words::NEXT_CUT });
}

fn done(pen: &mut Pen, of: u32) {
    pen.banner(words::DONE);
    pen.middle(24, Size::Plain, Line::new().number(of).text(words::ALL_CUT).as_str());
    pen.middle(37, Size::Plain, words::IS_HOME);
    pen.foot(words::MENU_NEW);
}

fn lost(pen: &mut Pen) {
    pen.banner(words::COUNT_LOST);
    pen.middle(16, Size::Plain, words::TWO_STEPS);
    pen.middle(28, Size::Plain, words::WHICH_WAY);
    pen.middle(40, Size::Plain, words::CLAMP_NOW);
    pen.foot(words::NEXT_REFERENCE);
}

fn reference(pen: &mut Pen, at: Position, fits: bool) {
    pen.left(0, 0, Size::Fine, words::WHICH_POSITION);
    pen.left(0, 9, Size::Fine, words::COME_TO_IT);
    let number = Line::new().number(at.number);
    if at.number > at.of {
        pen.middle(28, Size::Plain, words::HOME);
    } else {
        pen.digits_in_middle(20, 18, 26, number.as_str());
    }
    pen.middle(48, Size::Fine, if fits { words::FITS_RING } else { words::HOLD_FOR_RING });
    pen.middle(57, Size::Fine, words::CHOICE_KEYS);
}

fn none_fits(pen: &mut Pen) {
    pen.banner(words::NONE_FITS);
    pen.middle(20, Size::Plain, words::READ_AGAIN);
    pen.middle(32, Size::Plain, words::MAY_BE_BETWEEN);
    pen.foot(words::NEXT_BACK);
}

fn menu(pen: &mut Pen, choice: Choice) {
    let chosen = Choice::ALL.iter().position(|&one| one == choice).unwrap_or(0);
    pen.list(&Choice::ALL, chosen, |one| (words::choice(one), Line::new()));
}

#[cfg(test)]
mod tests;
