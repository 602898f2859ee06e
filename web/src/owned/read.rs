//! From what stands in the entries to a head, or to the one entry that is wrong.
use super::Entry;
use handturn::head::{
    Arms, FineDial, Handwheel, Head, Mounting, PlateStop, Reach, Sense, read as head,
};
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
    let texts = Texts(text);
    texts.with(
        Entry::Name,
        |name| if name.is_empty() { Err(empty(Field::Record)) } else { Ok(()) },
    )?;
    let ratio = texts.with(Entry::Ratio, read::ratio)?;
    let found = Head {
        ratio,
        plates: texts
            .with(Entry::Plates, |text| unless_empty(text, head::plates))?
            .unwrap_or_default(),
        direct: texts.with(Entry::Direct, head::notches)?,
        worm_drops_out: texts.yes(Entry::WormDropsOut),
        gears: texts.with(Entry::Gears, head::gears)?,
        mounting: texts.mounting()?,
        work_turns: sense(text(Entry::WorkTurns)).unwrap_or(Sense::Clockwise),
        plate_stop: match text(Entry::PlateStop) {
            "fixed" => PlateStop::Fixed,
            _ => PlateStop::Withdraws,
        },
        spindle_clamp: texts.yes(Entry::SpindleClamp),
        arms: Arms {
            least: texts.with(Entry::ArmsLeast, read::angle)?,
            greatest: texts.with(Entry::ArmsGreatest, read::angle)?,
        },
        slack: texts.with(Entry::Slack, slack)?,
        tilted: texts.yes(Entry::Tilted),
        degree_ring: sense(text(Entry::DegreeRing)),
        reach: texts.reach()?,
        pin: texts.with(Entry::Pin, |text| unless_empty(text, above_nought))?,
        handwheel: texts.handwheel(ratio)?,
        fine_dial: texts.fine_dial()?,
        work_diameter: texts.with(Entry::WorkDiameter, above_nought)?,
    };
    found.check().map_err(|error| Bad { entry: entry_of(error.field), error })?;
    Ok(found)
}

/// Texts by entry, each read with its entry named in what goes wrong.
struct Texts<'f, 't>(&'f dyn Fn(Entry) -> &'t str);

impl<'t> Texts<'_, 't> {
    fn with<T>(
        &self,
        entry: Entry,
        read: impl FnOnce(&'t str) -> Result<T, Error>,
    ) -> Result<T, Bad> {
        read(self.0(entry).trim()).map_err(|error| Bad { entry, error })
    }

    fn yes(&self, entry: Entry) -> bool {
        self.0(entry) == "yes"
    }

    fn mounting(&self) -> Result<Mounting, Bad> {
        let teeth = |text: &str| read::count(text, bounds::STUD_TEETH).map(small);
        let idlers = bounds::Bound { least: 0, greatest: 9, field: Field::Mounting };
        Ok(Mounting {
            distance: self
                .with(Entry::StudDistance, |text| unless_empty(text, teeth))?
                .unwrap_or(0),
            margin: self.with(Entry::StudMargin, teeth)?,
            most_idlers: self
                .with(Entry::MostIdlers, |text| read::count(text, idlers))
                .map(|most| u8::try_from(most).unwrap_or(0))?,
            one_idler_follows: self.0(Entry::OneIdler) != "against",
            four_gears: self.yes(Entry::FourGears),
        })
    }

    /// One end alone leaves the other end open.
    fn reach(&self) -> Result<Option<Reach>, Bad> {
        let length = |text: &'t str| unless_empty(text, |text| read::length(text, Unit::Mm));
        let least = self.with(Entry::ReachLeast, length)?;
        let greatest = self.with(Entry::ReachGreatest, length)?;
        if least.is_none() && greatest.is_none() {
            return Ok(None);
        }
        let least = least.unwrap_or(Length::from_mm(Fraction::ZERO));
        let greatest = greatest.unwrap_or(Length::from_mm(Fraction::whole(10_000)));
        Ok(Some(Reach { least, greatest }))
    }

    fn handwheel(&self, ratio: Fraction) -> Result<Option<Handwheel>, Bad> {
        if !self.yes(Entry::Handwheel) {
            return Ok(None);
        }
        let marks = self.with(Entry::HandwheelMarks, |text| handwheel_marks(text, ratio))?;
        let vernier =
            self.with(Entry::HandwheelVernier, |text| read::count(text, bounds::VERNIER))?;
        Ok(Some(Handwheel { marks, vernier }))
    }

    fn fine_dial(&self) -> Result<Option<FineDial>, Bad> {
        if !self.yes(Entry::FineDial) {
            return Ok(None);
        }
        let part_of_turn = |text: &str| {
            let angle = read::angle(text)?;
            let fits = Angle::ZERO < angle && angle <= Angle::TURN;
            if fits { Ok(angle) } else { Err(degrees_range().at(0, text.len())) }
        };
        Ok(Some(FineDial {
            shift: self.with(Entry::FineShift, part_of_turn)?,
            marks: self.with(Entry::FineMarks, |text| read::count(text, bounds::DIAL_MARKS))?,
            travel: self.with(Entry::FineTravel, part_of_turn)?,
            slack: self.with(Entry::FineSlack, |text| {
                let marks = read::number(text, Field::FineDial)?;
                if marks.is_negative() { Err(range(Field::FineDial, 0, 10_000)) } else { Ok(marks) }
            })?,
        }))
    }
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

fn unless_empty<'t, T>(
    text: &'t str,
    read: impl FnOnce(&'t str) -> Result<T, Error>,
) -> Result<Option<T>, Error> {
    if text.is_empty() { Ok(None) } else { read(text).map(Some) }
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

fn degrees_range() -> Error {
    range(Field::Angle, 0, 360)
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
