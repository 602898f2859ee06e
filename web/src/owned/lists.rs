//! What is owned besides heads: lathe, mill, tools and measures, each as a plain text
//! list that can be typed or pasted.
//!
//! A list never typed reads as its default. What cannot be read changes nothing: the
//! last good text stays in force (kept under [`Stock::last`]) until it is mended.
use crate::fields::Fields;
use handturn::bounds::{self, Bound};
use handturn::gear::Size;
use handturn::head::{Mounting, read as head};
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use handturn::measure::sizes::{self, Sizes};
use handturn::number::Fraction;
use handturn::plate::coordinates::Screw;
use handturn::thread::drills::Drill;
use handturn::thread::gearing::Lathe;
use handturn::thread::name::{self, Found};
use handturn::thread::{Hand, drill_list};
use handturn::train::Senses;
use handturn::{Cause, Error, Field, List};

/// How a list reads.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// Lengths, one by one or in steps.
    Sizes(Sizes),
    /// Sets of drills less what is missing, and single ones.
    Drills,
    /// Numbers within a bound: speeds in turns a minute, angles in degrees.
    Numbers(Bound),
    /// Threads by name, parted by new lines or `;`.
    Threads,
    /// Involute cutters: `m1 1-8x1; dp32 3 4.5`, parted by new lines or `;`.
    Cutters,
    /// Change gears, each as often as owned.
    Gears,
    /// What a gearbox passes on, setting by setting.
    Ratios,
    /// One ratio.
    Ratio,
    /// One pitch.
    Pitch,
    /// A screw with its dial: `5 / 100 / 0.2`.
    Screw,
    /// One whole number.
    Count(Bound),
    /// One of a few.
    Choice(&'static [&'static str]),
}

macro_rules! stocks {
    ($($(#[$doc:meta])* $stock:ident: $key:literal, $kind:expr, $default:literal;)*) => {
        /// One list, or one value, of what is owned.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Stock { $($(#[$doc])* $stock),* }

        impl Stock {
            /// Every list, in the order in which they stand in the Shop.
            pub const ALL: [Self; [$($key),*].len()] = [$(Self::$stock),*];

            /// Its name in a file and in the package.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$stock => $key),* }
            }

            /// Its name among the fields.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$stock => concat!("own-", $key)),* }
            }

            /// The name under which its last good text is kept while it is bad.
            #[must_use]
            pub const fn last(self) -> &'static str {
                match self { $(Self::$stock => concat!("last-own-", $key)),* }
            }

            /// How it reads.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $(Self::$stock => $kind),* }
            }

            /// What it reads as until something is typed.
            #[must_use]
            pub const fn default(self) -> &'static str {
                match self { $(Self::$stock => $default),* }
            }
        }
    };
}

const fn sizes(field: Field, least_um: u32, greatest_um: u32) -> Kind {
    // No more than a stack is chosen from.
    Kind::Sizes(Sizes { field, least_um, greatest_um, most: bounds::MAX_PIECES as u16 })
}

/// Bytes of one list; far more than any fills.
const LONGEST: u16 = 8_000;
const SPEEDS: Kind = Kind::Numbers(Bound { field: Field::Speed, least: 1, greatest: 60_000 });
const ANGLES: Kind = Kind::Numbers(Bound { field: Field::CutterAngle, least: 20, greatest: 170 });
const IDLERS: Bound = Bound { field: Field::Mounting, least: 0, greatest: 2 };
const YES: Kind = Kind::Choice(&["yes", "no"]);

stocks! {
    /// The lathe's lead screw.
    LatheScrew: "lathe-screw", Kind::Pitch, "8 tpi";
    /// The hand of its thread.
    ScrewHand: "lathe-screw-hand", Kind::Choice(&["right", "left"]), "right";
    /// The lathe's change gears.
    LatheGears: "lathe-gears", Kind::Gears, "20x2 25 30 35 40 45 50 55 60 65 70 75 80";
    /// Turns of the first gear for one of the spindle.
    LatheHead: "lathe-head", Kind::Ratio, "1";
    /// What the gearbox passes on.
    Gearbox: "lathe-gearbox", Kind::Ratios, "";
    /// Distance of the studs, in teeth.
    StudDistance: "lathe-distance", Kind::Count(bounds::STUD_TEETH), "0";
    /// Margin of a gear's rim, in teeth.
    StudMargin: "lathe-margin", Kind::Count(bounds::STUD_TEETH), "2";
    /// Idlers the lathe takes.
    Idlers: "lathe-idlers", Kind::Count(IDLERS), "2";
    /// Trains of four gears can be mounted.
    FourGears: "lathe-four", YES, "yes";
    /// Which way the lead screw must turn.
    Drive: "lathe-drive", Kind::Choice(&["either", "same", "against"]), "either";
    /// The top slide's screw and dial.
    TopSlide: "top-slide", Kind::Screw, "2 / 100";
    /// The cross slide's screw and dial.
    CrossSlide: "cross-slide", Kind::Screw, "2 / 100";
    /// What the cross slide's dial reads.
    CrossReads: "cross-reads", Kind::Choice(&["travel", "diameter"]), "travel";
    /// The lathe's spindle speeds.
    LatheSpeeds: "lathe-speeds", SPEEDS, "";
    /// The mill's table screw and dial.
    MillTable: "mill-table", Kind::Screw, "5 / 100 / 0.2";
    /// The mill's cross screw and dial.
    MillCross: "mill-cross", Kind::Screw, "5 / 100 / 0.2";
    /// The mill's vertical screw and dial, of its knee or its head.
    MillKnee: "mill-knee", Kind::Screw, "";
    /// The mill's spindle speeds.
    MillSpeeds: "mill-speeds", SPEEDS, "";
    /// Drills.
    Drills: "drills", Kind::Drills, "metric";
    /// Taps.
    Taps: "taps", Kind::Threads, "";
    /// Dies.
    Dies: "dies", Kind::Threads, "";
    /// The drilling machine's spindle speeds.
    DrillSpeeds: "drill-speeds", SPEEDS, "";
    /// Milling cutters, by diameter.
    Mills: "mills", sizes(Field::Cutter, 100, 200_000), "";
    /// Slitting saws, by thickness.
    Saws: "saws", sizes(Field::Cutter, 50, 10_000), "";
    /// Involute gear cutters.
    GearCutters: "gear-cutters", Kind::Cutters, "";
    /// Countersinks, by angle.
    Countersinks: "countersinks", ANGLES, "";
    /// Knurl wheels, by the pitch of their tips.
    Knurls: "knurls", sizes(Field::Pitch, 200, 5_000), "";
    /// Wires to measure threads over.
    Wires: "wires", sizes(Field::Wire, 10, 50_000), "0.3 0.4 0.45 0.5 0.6 0.7 0.8 0.9 1 1.2 1.5 2 2.5 3";
    /// Pins to measure wheels over.
    Pins: "pins", sizes(Field::Pin, 50, 50_000), "0.5 0.8 0.85 1 1.2 1.5 1.7 2 2.5 3 3.5 4 5 6 8 10";
    /// Feeler leaves and shims.
    Feelers: "feelers", sizes(Field::Pieces, 5, 10_000), "0.05 0.1 0.15 0.2 0.25 0.3 0.4 0.5 0.6 0.7 0.8 0.9 1";
    /// Gauge blocks.
    Blocks: "blocks", sizes(Field::Pieces, 10, 500_000), "";
}

impl Stock {
    /// The list that a file or the package calls `key`.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|stock| stock.key() == key)
    }

    /// The version of the Shop's file that first held it.
    pub(super) const fn since(self) -> u16 {
        match self {
            Self::MillKnee => 2,
            _ => 1,
        }
    }
}

/// What stands in a list's field, good or bad.
#[must_use]
pub fn typed(fields: &Fields, stock: Stock) -> &str {
    fields.or(stock.name(), stock.default())
}

/// The text of a list that is in force.
#[must_use]
pub fn text(fields: &Fields, stock: Stock) -> &str {
    fields.or(stock.last(), typed(fields, stock))
}

/// What is wrong with a list as typed.
#[must_use]
pub fn wrong(fields: &Fields, stock: Stock) -> Option<Error> {
    if fields.has(stock.last()) { check(stock, typed(fields, stock)).err() } else { None }
}

/// Puts `text` into a list. It comes into force when it reads.
pub fn set(fields: &mut Fields, stock: Stock, typed: &str) {
    if check(stock, typed).is_ok() {
        fields.forget(stock.last());
    } else if !fields.has(stock.last()) {
        let good = text(fields, stock).to_owned();
        fields.set(stock.last(), &good);
    }
    fields.set(stock.name(), typed);
}

/// For fields that come from storage, which may hold anything: what reads comes into
/// force, the rest keeps its text and is told as bad, its default in force meanwhile.
pub fn mend(fields: &mut Fields) {
    for stock in Stock::ALL {
        if check(stock, typed(fields, stock)).is_ok() {
            fields.forget(stock.last());
        } else if check(stock, text(fields, stock)).is_err() {
            fields.set(stock.last(), stock.default());
        }
    }
}

/// How many a list holds.
///
/// # Errors
/// What cannot be read, with its place.
pub fn check(stock: Stock, text: &str) -> Result<usize, Error> {
    if text.len() > usize::from(LONGEST) {
        return Err(Error::new(Field::Record, Cause::TooMany { most: LONGEST }));
    }
    match stock.kind() {
        Kind::Sizes(_) => lengths_in(stock, text).map(|list| list.len()),
        Kind::Drills => drills_in(text).map(|list| list.len()),
        Kind::Numbers(bound) => numbers_in(bound, text).map(|list| list.len()),
        Kind::Threads => threads_in(text).map(|list| list.len()),
        Kind::Cutters => cutters_in(text).map(|list| list.iter().map(|(_, own)| own.len()).sum()),
        Kind::Gears => {
            let gears = head::gears(text)?;
            Ok(gears.iter().map(|gear| usize::from(gear.count)).sum())
        }
        Kind::Ratios => ratios(text).map(|list| list.len()),
        Kind::Ratio => read::ratio(text).map(|_| 1).map_err(|e| e.of(Field::Gearbox)),
        Kind::Pitch => pitch(text).map(|_| 1).map_err(|e| e.of(Field::Screw)),
        // What may not be owned stands empty until it is typed.
        Kind::Screw if text.trim().is_empty() && stock.default().is_empty() => Ok(0),
        Kind::Screw => screw_in(text).map(|_| 1),
        Kind::Count(bound) => read::count(text, bound).map(|_| 1),
        Kind::Choice(choices) if choices.contains(&text) => Ok(1),
        Kind::Choice(_) => Err(Error::new(Field::Record, Cause::Conflict)),
    }
}

/// The lengths in a list: sizes as they are, drills by diameter.
#[must_use]
pub fn lengths(fields: &Fields, stock: Stock) -> Vec<Length> {
    lengths_in(stock, text(fields, stock)).unwrap_or_default()
}

/// The numbers in a list of speeds or angles.
#[must_use]
pub fn numbers(fields: &Fields, stock: Stock) -> Vec<Fraction> {
    match stock.kind() {
        Kind::Numbers(bound) => numbers_in(bound, text(fields, stock)).unwrap_or_default(),
        _ => Vec::new(),
    }
}

/// The drills owned.
#[must_use]
pub fn drills(fields: &Fields) -> Vec<Drill> {
    drills_in(text(fields, Stock::Drills)).unwrap_or_default()
}

/// The threads in a list, each as typed and as found.
#[must_use]
pub fn threads(fields: &Fields, stock: Stock) -> Vec<(&str, Found)> {
    threads_in(text(fields, stock)).unwrap_or_default()
}

/// The gear cutters owned, by size, each with its numbers.
#[must_use]
pub fn cutters(fields: &Fields) -> Vec<(Size, Vec<Fraction>)> {
    cutters_in(text(fields, Stock::GearCutters)).unwrap_or_default()
}

/// A screw with its dial, and whether it was typed in inches.
#[must_use]
pub fn screw(fields: &Fields, stock: Stock) -> Option<(Screw, bool)> {
    let typed = text(fields, stock);
    let inch = ["tpi", "in", "\"", "″", "thou"].iter().any(|unit| typed.contains(unit));
    Some((screw_in(typed).ok()?, inch))
}

/// The screw of the mill's table, along.
#[must_use]
pub fn mill_table(fields: &Fields) -> Screw {
    let usual = || screw_in(Stock::MillTable.default()).ok();
    let found = screw(fields, Stock::MillTable).map(|(screw, _)| screw).or_else(usual);
    let zero = Length::from_mm(Fraction::ZERO);
    found.unwrap_or(Screw { lead: zero, marks: 2, slack: zero, falls: false })
}

/// The lathe's lead screw.
///
/// # Errors
/// None for fields that [`set`] filled or [`mend`] went over.
pub fn lead_screw(fields: &Fields) -> Result<Length, Error> {
    pitch(text(fields, Stock::LatheScrew)).map_err(|e| e.of(Field::Screw))
}

/// The lathe as change gears see it.
///
/// # Errors
/// What does not go together.
pub fn lathe(fields: &Fields) -> Result<Lathe, Error> {
    let text = |stock| text(fields, stock);
    let count = |stock, bound| read::count(text(stock), bound);
    let narrow = |n: u32| u16::try_from(n).unwrap_or(u16::MAX);
    let mut gearbox = List::new();
    for ratio in ratios(text(Stock::Gearbox))? {
        let _ = gearbox.push(ratio);
    }
    let mounting = Mounting {
        distance: narrow(count(Stock::StudDistance, bounds::STUD_TEETH)?),
        margin: narrow(count(Stock::StudMargin, bounds::STUD_TEETH)?),
        most_idlers: u8::try_from(count(Stock::Idlers, IDLERS)?).unwrap_or(2),
        four_gears: text(Stock::FourGears) == "yes",
        ..Mounting::default()
    };
    let lathe = Lathe {
        screw: lead_screw(fields)?,
        screw_hand: if text(Stock::ScrewHand) == "left" { Hand::Left } else { Hand::Right },
        head: read::ratio(text(Stock::LatheHead)).map_err(|e| e.of(Field::Gearbox))?,
        gearbox,
        gears: head::gears(text(Stock::LatheGears))?,
        mounting,
        drive: match text(Stock::Drive) {
            "same" => Senses::Same,
            "against" => Senses::Against,
            _ => Senses::Either,
        },
    };
    lathe.check()?;
    Ok(lathe)
}

fn lengths_in(stock: Stock, text: &str) -> Result<Vec<Length>, Error> {
    match stock.kind() {
        Kind::Sizes(sizes) => gathered(&mut |use_it| sizes::each(text, sizes, use_it)),
        _ => Ok(drills_in(text)?.iter().map(|drill| drill.diameter).collect()),
    }
}

fn drills_in(text: &str) -> Result<Vec<Drill>, Error> {
    gathered(&mut |use_it| drill_list::each(text, use_it))
}

fn numbers_in(bound: Bound, text: &str) -> Result<Vec<Fraction>, Error> {
    gathered(&mut |use_it| sizes::each_number(text, bound, 300, use_it))
}

/// Takes one, or refuses it.
type Taker<'t, T> = &'t mut dyn FnMut(T) -> Result<(), Error>;

fn gathered<T>(read: &mut dyn FnMut(Taker<'_, T>) -> Result<(), Error>) -> Result<Vec<T>, Error> {
    let mut list = Vec::new();
    read(&mut |one| {
        list.push(one);
        Ok(())
    })?;
    Ok(list)
}

/// Parts of a text between new lines and `;`, each with its place.
fn parts(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0;
    let parts = text.split([';', '\n']).map(move |part| {
        let from = at + (part.len() - part.trim_start().len());
        at += part.len() + 1;
        (from, part.trim())
    });
    parts.filter(|(_, part)| !part.is_empty())
}

fn threads_in(text: &str) -> Result<Vec<(&str, Found)>, Error> {
    let read = |(from, part): (usize, &'_ str)| {
        let here = |error: Error| error.at(from, from + part.len());
        let found = name::read(part).map_err(here)?.first().copied();
        found.ok_or_else(|| here(Error::new(Field::Thread, Cause::Empty)))
    };
    parts(text).map(|part| Ok((part.1, read(part)?))).collect()
}

fn cutters_in(text: &str) -> Result<Vec<(Size, Vec<Fraction>)>, Error> {
    let bound = Bound { field: Field::Cutter, least: 1, greatest: 8 };
    let read = |(from, part): (usize, &str)| {
        let (size, numbers) = part.split_once([' ', ':']).unwrap_or((part, ""));
        let lower = size.to_ascii_lowercase();
        let here = |error: Error| error.of(Field::Cutter).at(from, from + size.len());
        let pitch = lower.strip_prefix("dp").or(lower.strip_suffix("dp"));
        let module = || lower.strip_prefix('m').unwrap_or("m");
        let size = match pitch {
            Some(pitch) => read::number(pitch, Field::Cutter).map(Size::DiametralPitch),
            None => read::length(module(), Unit::Mm).map(Size::Module),
        };
        let place = from + part.len() - numbers.len();
        let own = numbers_in(bound, numbers);
        let there = |error: Error| {
            let (a, b) = (usize::from(error.span.0), usize::from(error.span.1));
            error.at(place + a, place + b)
        };
        let size = size.map_err(here)?;
        let own = own.map_err(there)?;
        if own.is_empty() {
            Err(here(Error::new(Field::Cutter, Cause::Empty)))
        } else {
            Ok((size, own))
        }
    };
    parts(text).map(read).collect()
}

/// Ratios split by space, new line or `;`.
///
/// # Errors
/// What cannot be read, with its place; too many.
pub fn ratios(text: &str) -> Result<Vec<Fraction>, Error> {
    let mut list = Vec::new();
    let mut from = 0;
    for part in text.split([' ', ';', '\n']) {
        let to = from + part.len();
        if !part.is_empty() {
            let here = |error: Error| error.of(Field::Gearbox).at(from, to);
            if list.len() == bounds::MAX_GEARBOX {
                let most = bounds::MAX_GEARBOX as u16;
                return Err(here(Error::new(Field::Gearbox, Cause::TooMany { most })));
            }
            list.push(read::ratio(part).map_err(here)?);
        }
        from = to + 1;
    }
    Ok(list)
}

/// A pitch: a length, or threads per inch as `32 tpi`.
///
/// # Errors
/// As reading a length; nought.
pub fn pitch(text: &str) -> Result<Length, Error> {
    let lower = text.trim().to_ascii_lowercase();
    let per_inch = lower.strip_suffix("tpi");
    let length = match per_inch {
        Some(number) => read::per_inch(number, Field::Pitch),
        None => read::length(text, Unit::Mm),
    };
    let length = length.map_err(|e| e.of(Field::Pitch))?;
    if length.mm() <= Fraction::ZERO {
        return Err(Error::new(Field::Pitch, Cause::Zero));
    }
    Ok(length)
}

/// A screw: its lead, its dial's marks, and its slack where that is known.
fn screw_in(text: &str) -> Result<Screw, Error> {
    let whole = |error: Error| error.at(0, text.len());
    let missing = || whole(Error::new(Field::SlideDial, Cause::Empty));
    let text = text.trim();
    let mut parts = text.split(" / ").flat_map(|part| part.split(';'));
    let lead = pitch(parts.next().unwrap_or_default()).map_err(|e| whole(e.of(Field::Screw)))?;
    let marks =
        read::count(parts.next().ok_or_else(missing)?, bounds::SLIDE_MARKS).map_err(whole)?;
    let slack = parts
        .next()
        .map_or(Ok(Length::from_mm(Fraction::ZERO)), |part| read::length(part, Unit::Mm));
    let slack = slack.map_err(|e| whole(e.of(Field::Slack)))?;
    let screw = Screw { lead, marks, slack, falls: false };
    if parts.next().is_some() || slack.mm().is_negative() || slack >= lead {
        return Err(whole(Error::new(Field::Slack, Cause::Conflict)));
    }
    screw.mark().map_err(whole)?;
    Ok(screw)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn bad(stock: Stock, text: &str, field: Field, cause: Cause, span: (u16, u16)) {
        let error = check(stock, text).unwrap_err();
        assert_eq!((error.field, error.cause, error.span), (field, cause, span), "{text}");
    }

    #[test]
    fn every_default_reads_and_has_a_name_of_its_own() {
        let mut names: Vec<&str> = Stock::ALL.map(Stock::key).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Stock::ALL.len());
        for stock in Stock::ALL {
            assert!(check(stock, stock.default()).is_ok(), "{stock:?}");
            assert_eq!(Stock::of_key(stock.key()), Some(stock));
            assert_eq!(stock.name(), ["own-", stock.key()].concat());
        }
    }

    #[test]
    fn lists_read_by_what_they_hold() {
        let rows = [
            (Stock::Feelers, "0.05 0.1; 2thou", 3),
            (Stock::Blocks, "1.001-1.009x0.001 1.01-1.49x0.01", 9 + 49),
            (Stock::Drills, "number letter -#41 -F", 79 + 25),
            (Stock::LatheSpeeds, "60 100 165-265x50", 5),
            (Stock::Countersinks, "60 82 90", 3),
            (Stock::Taps, "M6 x 0.75; 2 BA\n1/4 x 40 ME", 3),
            (Stock::GearCutters, "m1 1-8x1; DP32: 3 4.5\nm0.8 5", 8 + 2 + 1),
            (Stock::LatheGears, "20x2 25", 3),
            (Stock::Gearbox, "1 1/2; 2:1", 3),
            (Stock::MillTable, "8 tpi / 125", 1),
            (Stock::Knurls, "0.8 1 1/32", 3),
            (Stock::MillKnee, " ", 0),
            (Stock::MillKnee, "2.5 / 50", 1),
            (Stock::Taps, "", 0),
        ];
        for (stock, text, count) in rows {
            assert_eq!(check(stock, text), Ok(count), "{text}");
        }
    }

    #[test]
    fn what_is_wrong_is_told_at_its_place() {
        bad(Stock::Feelers, "0.05 O.1", Field::Pieces, Cause::NotANumber, (5, 8));
        bad(
            Stock::Drills,
            "number #81",
            Field::Drills,
            Cause::OutOfRange { least: 1, greatest: 80 },
            (7, 10),
        );
        bad(Stock::Taps, "M6; M6.5q", Field::Thread, Cause::NotANumber, (4, 9));
        bad(
            Stock::GearCutters,
            "m1 1 9",
            Field::Cutter,
            Cause::OutOfRange { least: 1, greatest: 8 },
            (5, 6),
        );
        bad(Stock::GearCutters, "dp32 4; m1", Field::Cutter, Cause::Empty, (8, 10));
        bad(Stock::GearCutters, "4; q1 4", Field::Cutter, Cause::NotANumber, (0, 1));
        bad(Stock::MillTable, "5", Field::SlideDial, Cause::Empty, (0, 1));
        bad(Stock::MillTable, "5 / 100 / 6", Field::Slack, Cause::Conflict, (0, 11));
        bad(Stock::LatheScrew, "", Field::Screw, Cause::Empty, (0, 0));
        bad(Stock::Drive, "up", Field::Record, Cause::Conflict, (0, 0));
    }

    #[test]
    fn the_last_good_text_stays_in_force() {
        let mut fields = Fields::default();
        assert_eq!(lengths(&fields, Stock::Blocks), []);
        set(&mut fields, Stock::Blocks, "1 2");
        assert_eq!(
            (lengths(&fields, Stock::Blocks).len(), wrong(&fields, Stock::Blocks)),
            (2, None)
        );
        for half_typed in ["1 2 3-", "1 2 3-9"] {
            set(&mut fields, Stock::Blocks, half_typed);
            assert_eq!(
                (typed(&fields, Stock::Blocks), text(&fields, Stock::Blocks)),
                (half_typed, "1 2")
            );
            assert!(wrong(&fields, Stock::Blocks).is_some());
        }
        set(&mut fields, Stock::Blocks, "1 2 3-9x1");
        assert_eq!(
            (lengths(&fields, Stock::Blocks).len(), wrong(&fields, Stock::Blocks)),
            (9, None)
        );
        assert!(!fields.has(Stock::Blocks.last()));
        assert_eq!(drills(&fields).len(), 159);
        let (screw, inch) = screw(&fields, Stock::MillTable).unwrap();
        assert_eq!((screw.marks, inch), (100, false));
    }

    #[test]
    fn what_storage_held_is_mended() {
        let mut fields = Fields::default();
        for (name, value) in [
            ("own-blocks", "1 x"),
            ("last-own-blocks", "y"),
            ("own-feelers", "q"),
            ("last-own-feelers", "0.1"),
            ("own-wires", "0.5"),
            ("last-own-wires", "0.4"),
            ("own-taps", "M7q"),
        ] {
            fields.set(name, value);
        }
        mend(&mut fields);
        assert_eq!((typed(&fields, Stock::Blocks), text(&fields, Stock::Blocks)), ("1 x", ""));
        assert_eq!((typed(&fields, Stock::Feelers), text(&fields, Stock::Feelers)), ("q", "0.1"));
        assert_eq!((text(&fields, Stock::Wires), text(&fields, Stock::Taps)), ("0.5", ""));
        assert!(wrong(&fields, Stock::Taps).is_some());
    }
}
