//! From what stands in the entries to a head, or to the one entry that is wrong.
use super::Entry;
use handturn::head::{FineDial, Handwheel, Head, Mounting, PlateStop, Reach, Sense, read as head};
use handturn::measure::read::{self, Unit};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::{Cause, Error, Field, bounds};

/// What is wrong with a head, and in which entry it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bad {
    /// The entry.
    pub entry: Entry,
    /// What is wrong with it.
    pub error: Error,
}

/// The head of these texts.
///
/// # Errors
/// The first entry that cannot be read or does not go with the others.
pub fn read<'t>(text: &dyn Fn(Entry) -> &'t str) -> Result<Head, Bad> {
    let mut texts = Texts { text, bad: None };
    let mut found = Head::default();
    texts.put(&mut (), Entry::Name, &|name| {
        if name.is_empty() { Err(empty(Field::Record)) } else { Ok(()) }
    });
    texts.put(&mut found.ratio, Entry::Ratio, &read::ratio);
    found.plates = texts.unless_empty(Entry::Plates, &head::plates).unwrap_or_default();
    texts.put(&mut found.direct, Entry::Direct, &head::notches);
    texts.put(&mut found.gears, Entry::Gears, &head::gears);
    found.mounting = texts.mounting();
    texts.put(&mut found.arms.least, Entry::ArmsLeast, &read::angle);
    texts.put(&mut found.arms.greatest, Entry::ArmsGreatest, &read::angle);
    texts.put(&mut found.slack, Entry::Slack, &slack);
    found.reach = texts.reach();
    found.pin = texts.unless_empty(Entry::Pin, &above_nought);
    found.handwheel = texts.handwheel(found.ratio);
    found.fine_dial = texts.fine_dial();
    texts.put(&mut found.work_diameter, Entry::WorkDiameter, &above_nought);
    found.worm_drops_out = texts.yes(Entry::WormDropsOut);
    found.work_turns = sense(text(Entry::WorkTurns)).unwrap_or(Sense::Clockwise);
    found.plate_stop = match text(Entry::PlateStop) {
        "fixed" => PlateStop::Fixed,
        _ => PlateStop::Withdraws,
    };
    found.spindle_clamp = texts.yes(Entry::SpindleClamp);
    found.tilted = texts.yes(Entry::Tilted);
    found.degree_ring = sense(text(Entry::DegreeRing));
    if let Some(bad) = texts.bad {
        return Err(bad);
    }
    found.check().map_err(|error| Bad { entry: entry_of(error.field), error })?;
    Ok(found)
}

/// Texts by entry. The first that can't be read is noted and asked for at the end,
/// so nothing stands between two of them.
struct Texts<'f, 't> {
    text: &'f dyn Fn(Entry) -> &'t str,
    bad: Option<Bad>,
}

/// Reads a text, trimmed.
type Reader<'r, T> = &'r dyn Fn(&str) -> Result<T, Error>;

impl<'t> Texts<'_, 't> {
    #[inline(never)]
    fn of(&self, entry: Entry) -> &'t str {
        (self.text)(entry).trim()
    }

    #[inline(never)]
    fn refuse(&mut self, entry: Entry, error: Error) {
        self.bad = self.bad.or(Some(Bad { entry, error }));
    }

    fn put<T>(&mut self, to: &mut T, entry: Entry, read: Reader<T>) {
        match read(self.of(entry)) {
            Ok(value) => *to = value,
            Err(error) => self.refuse(entry, error),
        }
    }

    fn unless_empty<T>(&mut self, entry: Entry, read: Reader<T>) -> Option<T> {
        let text = self.of(entry);
        if text.is_empty() {
            return None;
        }
        read(text).map_err(|error| self.refuse(entry, error)).ok()
    }

    fn count(&mut self, entry: Entry, bound: bounds::Bound) -> u32 {
        let mut count = 0;
        self.put(&mut count, entry, &|text| read::count(text, bound));
        count
    }

    fn yes(&self, entry: Entry) -> bool {
        (self.text)(entry) == "yes"
    }

    fn mounting(&mut self) -> Mounting {
        let teeth: Reader<u32> = &|text| read::count(text, bounds::STUD_TEETH);
        let idlers = bounds::Bound { least: 0, greatest: 9, field: Field::Mounting };
        Mounting {
            distance: self.unless_empty(Entry::StudDistance, teeth).map_or(0, small),
            margin: small(self.count(Entry::StudMargin, bounds::STUD_TEETH)),
            most_idlers: u8::try_from(self.count(Entry::MostIdlers, idlers)).unwrap_or(0),
            one_idler_follows: (self.text)(Entry::OneIdler) != "against",
            four_gears: self.yes(Entry::FourGears),
        }
    }

    /// One end alone leaves the other end open.
    fn reach(&mut self) -> Option<Reach> {
        let length: Reader<Length> = &|text| {
            let length = read::length(text, Unit::Mm)?;
            let fits = !length.mm().is_negative() && length.mm() <= Fraction::whole(10_000);
            if fits { Ok(length) } else { Err(range(Field::Reach, 0, 10_000).at(0, text.len())) }
        };
        let least = self.unless_empty(Entry::ReachLeast, length);
        let greatest = self.unless_empty(Entry::ReachGreatest, length);
        let open = |mm| Length::from_mm(Fraction::whole(mm));
        least.or(greatest)?;
        Some(Reach { least: least.unwrap_or(open(0)), greatest: greatest.unwrap_or(open(10_000)) })
    }

    fn handwheel(&mut self, ratio: Fraction) -> Option<Handwheel> {
        self.yes(Entry::Handwheel).then(|| {
            let mut marks = 0;
            self.put(&mut marks, Entry::HandwheelMarks, &|text| handwheel_marks(text, ratio));
            Handwheel { marks, vernier: self.count(Entry::HandwheelVernier, bounds::VERNIER) }
        })
    }

    fn fine_dial(&mut self) -> Option<FineDial> {
        self.yes(Entry::FineDial).then(|| {
            let (mut shift, mut travel, mut slack) = (Angle::ZERO, Angle::ZERO, Fraction::ZERO);
            self.put(&mut shift, Entry::FineShift, &part_of_turn);
            let marks = self.count(Entry::FineMarks, bounds::DIAL_MARKS);
            self.put(&mut travel, Entry::FineTravel, &part_of_turn);
            self.put(&mut slack, Entry::FineSlack, &|text| {
                let marks = read::number(text, Field::FineDial)?;
                if marks.is_negative() { Err(range(Field::FineDial, 0, 10_000)) } else { Ok(marks) }
            });
            FineDial { shift, marks, travel, slack }
        })
    }
}

fn part_of_turn(text: &str) -> Result<Angle, Error> {
    let angle = read::angle(text)?;
    let fits = Angle::ZERO < angle && angle <= Angle::TURN;
    if fits { Ok(angle) } else { Err(range(Field::Angle, 0, 360).at(0, text.len())) }
}

/// Marks for one turn of the handwheel: a count, or what one mark is worth at
/// the work as an angle (`5′`), which must come to whole marks.
///
/// # Errors
/// As for a count and an angle; [`Cause::Conflict`] where the marks are not whole.
pub fn handwheel_marks(text: &str, ratio: Fraction) -> Result<u32, Error> {
    if text.chars().all(|c| c.is_ascii_digit() || c.is_whitespace()) {
        return read::count(text, bounds::DIAL_MARKS);
    }
    let here = |error: Error| error.of(Field::Handwheel).at(0, text.len());
    let mark = read::angle(text).map_err(|error| error.of(Field::Handwheel))?;
    let marks = mark.turns().checked_mul(ratio).and_then(Fraction::inverse).map_err(here)?;
    if !marks.is_whole() {
        return Err(here(Error::new(Field::Handwheel, Cause::Conflict)));
    }
    bounds::DIAL_MARKS.check_u32(marks.num()).map_err(here)
}

fn slack(text: &str) -> Result<Fraction, Error> {
    let turns = read::number(text, Field::Slack)?;
    let fits = !turns.is_negative() && turns <= Fraction::whole(5);
    if fits { Ok(turns) } else { Err(range(Field::Slack, 0, 5).at(0, text.len())) }
}

fn above_nought(text: &str) -> Result<Length, Error> {
    let length = read::length(text, Unit::Mm)?;
    let fits = length.mm() > Fraction::ZERO && length.mm() <= Fraction::whole(10_000);
    if fits { Ok(length) } else { Err(range(Field::Length, 0, 10_000).at(0, text.len())) }
}

fn sense(text: &str) -> Option<Sense> {
    match text {
        "clockwise" => Some(Sense::Clockwise),
        "anticlockwise" => Some(Sense::Anticlockwise),
        _ => None,
    }
}

fn small(count: u32) -> u16 {
    u16::try_from(count).unwrap_or(u16::MAX)
}

fn empty(field: Field) -> Error {
    Error::new(field, Cause::Empty)
}

fn range(field: Field, least: u32, greatest: u32) -> Error {
    Error::new(field, Cause::OutOfRange { least, greatest })
}

/// The entry in which a quantity of the whole head's check stands.
fn entry_of(field: Field) -> Entry {
    match field {
        Field::Plates | Field::Holes => Entry::Plates,
        Field::Direct => Entry::Direct,
        Field::Gears => Entry::Gears,
        Field::Mounting => Entry::StudDistance,
        Field::Arms => Entry::ArmsGreatest,
        Field::Slack => Entry::Slack,
        Field::Handwheel => Entry::HandwheelMarks,
        Field::FineDial => Entry::FineShift,
        Field::Reach => Entry::ReachGreatest,
        Field::Length => Entry::WorkDiameter,
        _ => Entry::Ratio,
    }
}
