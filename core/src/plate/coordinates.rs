//! Where the holes of a ring lie on a mill's table, and what its dials read there.
//!
//! Hole k of N stands at the angle `first ± k/N` of a turn, an exact fraction; its X is
//! `R·cos`, its Y `R·sin`. What is left of the angle beside the nearest quarter of a turn
//! is exact too, so holes that mirror each other do so to the last bit. Each reading of a
//! dial is rounded from the hole's own place, never from the hole before: it is off by at
//! most half a mark, and nothing builds up. A dial is always come up to with its figures
//! rising: a move that falls goes past by the slack first, at least by half a turn
//! (common practice of the trade). Plane geometry, our own derivation.
use crate::bounds::{HOLES, LENGTH_UM, TABLE_MARKS};
use crate::error::{Cause, Error, Field};
use crate::head::Sense;
use crate::measure::given::{from_nought, over, plus, size};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{self, PI},
};

/// A ring of holes as it lies on the table, seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Layout {
    /// How many holes.
    pub holes: u32,
    /// Diameter of the circle through their centres.
    #[doc(alias = "pitch circle diameter")]
    #[doc(alias = "bolt circle")]
    pub diameter: Length,
    /// Where hole 0 stands, from the X axis, anticlockwise.
    pub first: Angle,
    /// Which way the holes are counted on.
    pub sense: Sense,
    /// X and Y of the ring's centre from the edges where the dials stand at zero; nought
    /// and nought where they are set to zero over the centre.
    pub centre: [Length; 2],
}

/// A screw of the mill's table and its dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Screw {
    /// How far one turn moves the table.
    pub lead: Length,
    /// Marks once round its dial.
    pub marks: u32,
    /// Slack between screw and nut, as a length of the table.
    #[doc(alias = "backlash")]
    pub slack: Length,
    /// The figures fall, not rise, as the coordinate grows.
    pub falls: bool,
}

/// The centre of a hole, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Centre {
    /// Where it stands from the X axis, anticlockwise, below one turn.
    pub angle: Angle,
    /// X and Y from the ring's centre.
    pub from_centre: [Approx; 2],
    /// X and Y from the edges where the dials stand at zero.
    pub from_edges: [Approx; 2],
}

/// How a reading is come up to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Comes {
    /// The dial stands there already.
    Stays,
    /// Straight on, the figures rising; or either way where there is no slack.
    Straight,
    /// The figures must fall: back past the reading to this one, then up to it.
    Past {
        /// Whole turns from zero of the reading to go back to.
        turns: i64,
        /// Its mark.
        mark: u32,
    },
}

/// What a dial reads over a hole.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Reading {
    /// Marks from zero, below nought where the figures have fallen past it.
    pub from_zero: i64,
    /// Whole turns from zero, rounded down: −1 and mark 48 of 50 are two marks before zero.
    pub turns: i64,
    /// The mark that stands at the line.
    pub mark: u32,
    /// Coordinate of the reading less that of the hole, in millimetres: at most half a mark.
    pub off: Approx,
    /// How it is come up to from the hole before, or from zero for hole 0.
    pub comes: Comes,
}

/// A hole by the dials.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Hole {
    /// Where it belongs.
    pub centre: Centre,
    /// What the X and Y dials read.
    pub dial: [Reading; 2],
    /// How far rounding moves it outwards, in millimetres.
    pub outwards: Approx,
    /// How far rounding moves it on round the ring, the way the holes count, in millimetres.
    pub onwards: Approx,
}

/// The worst that rounding to marks does to a ring, in magnitude.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Worst {
    /// Outwards or inwards, in millimetres.
    pub outwards: Approx,
    /// Along the ring, in millimetres.
    pub onwards: Approx,
    /// Difference along the ring between neighbours, in millimetres.
    pub neighbours: Approx,
    /// Along the ring, in arc-seconds of the plate.
    pub onwards_arcsec: Approx,
    /// Difference between neighbours, in arc-seconds of the plate.
    pub neighbours_arcsec: Approx,
}

impl Layout {
    /// Checks every value.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the holes ([`HOLES`]); [`Cause::Zero`] or
    /// [`Cause::OutOfLengths`] of [`Field::Ring`] for the diameter;
    /// [`Cause::OutOfLengths`] of [`Field::Length`] for a centre below nought or too far.
    pub fn check(&self) -> Result<(), Error> {
        HOLES.check(i64::from(self.holes))?;
        size(self.diameter, Field::Ring)?;
        for length in self.centre {
            from_nought(length, Field::Length)?;
        }
        Ok(())
    }

    /// The same ring where the dials stand at zero with a round edge finder of this diameter
    /// against each edge: its centre lies half the finder farther off.
    ///
    /// # Errors
    /// [`Cause::OutOfLengths`] of [`Field::Length`]; [`Cause::Overflow`].
    pub fn touched(self, finder: Length) -> Result<Self, Error> {
        from_nought(finder, Field::Length)?;
        let half = over(finder, 2, Field::Length)?;
        let [x, y] = self.centre;
        Ok(Self { centre: [plus(x, half, Field::Length)?, plus(y, half, Field::Length)?], ..self })
    }

    /// Where hole `k`, counted from 0, has its centre.
    ///
    /// # Errors
    /// As [`check`](Self::check); [`Cause::OutOfRange`] of [`Field::Position`] beyond the last
    /// hole; [`Cause::Overflow`].
    pub fn centre(&self, k: u32) -> Result<Centre, Error> {
        self.check()?;
        let last = self.holes.saturating_sub(1);
        if k > last {
            let cause = Cause::OutOfRange { least: 0, greatest: last };
            return Err(Error::new(Field::Position, cause));
        }
        let on = Fraction::new(i64::from(k), i64::from(self.holes))?;
        let on = if self.sense == Sense::Clockwise { on.negated() } else { on };
        let turns = self.first.turns().checked_add(on)?.part();
        let radius = float::of(self.diameter.mm()) / 2.0;
        // A whole number's angle and the door's sine, radius and product: below 4 units.
        let part = |part: f64| Approx { value: radius * part, bound: 4.0 * f64::EPSILON * radius };
        let [x, y] = unit(turns)?.map(part);
        let [right, up] = self.centre.map(|length| float::of(length.mm()));
        Ok(Centre {
            angle: Angle::from_turns(turns),
            from_centre: [x, y],
            from_edges: [beyond(x, right), beyond(y, up)],
        })
    }

    /// Hole `k`, counted from 0, by the dials of the X and Y screws.
    ///
    /// # Errors
    /// As [`centre`](Self::centre); what is wrong with a screw, of [`Field::Table`].
    pub fn hole(&self, screws: &[Screw; 2], k: u32) -> Result<Hole, Error> {
        let centre = self.centre(k)?;
        let before = k.checked_sub(1).map(|k| self.centre(k)).transpose()?;
        let [x, y] = centre.from_edges;
        let [x_before, y_before] = match before.map(|before| before.from_edges) {
            Some([x, y]) => [Some(x), Some(y)],
            None => [None, None],
        };
        let [of_x, of_y] = screws;
        let dial = [of_x.reading(x, x_before)?, of_y.reading(y, y_before)?];
        let off = dial.map(|reading| reading.off);
        let [cos, sin] = unit(centre.angle.turns())?;
        let onwards = match self.sense {
            Sense::Anticlockwise => along(off, -sin, cos),
            Sense::Clockwise => along(off, sin, -cos),
        };
        Ok(Hole { centre, dial, outwards: along(off, cos, sin), onwards })
    }

    /// The worst that rounding to the marks of the X and Y dials does.
    ///
    /// # Errors
    /// As [`hole`](Self::hole).
    pub fn worst(&self, screws: &[Screw; 2]) -> Result<Worst, Error> {
        let mut before = self.hole(screws, self.holes.saturating_sub(1))?.onwards;
        let [mut outwards, mut onwards, mut neighbours] = [Approx { value: 0.0, bound: 0.0 }; 3];
        for k in 0..self.holes {
            let hole = self.hole(screws, k)?;
            larger(&mut outwards, hole.outwards);
            larger(&mut onwards, hole.onwards);
            larger(&mut neighbours, along([hole.onwards, before], 1.0, -1.0));
            before = hole.onwards;
        }
        let radius = float::of(self.diameter.mm()) / 2.0;
        // A length along the ring over the radius is an angle; 1 296 000″ are 2π of it.
        let arcsec = |length: Approx| {
            let per_mm = 648_000.0 / (PI * radius);
            let value = length.value * per_mm;
            Approx { value, bound: length.bound * per_mm + 4.0 * f64::EPSILON * value }
        };
        let (onwards_arcsec, neighbours_arcsec) = (arcsec(onwards), arcsec(neighbours));
        Ok(Worst { outwards, onwards, neighbours, onwards_arcsec, neighbours_arcsec })
    }
}

impl Screw {
    /// What one mark moves the table by.
    ///
    /// # Errors
    /// [`Cause::Zero`] or [`Cause::OutOfLengths`] for the lead, [`Cause::OutOfLengths`] for
    /// the slack, [`Cause::OutOfRange`] for the marks ([`TABLE_MARKS`]), all of
    /// [`Field::Table`].
    pub fn mark(&self) -> Result<Length, Error> {
        TABLE_MARKS.check(i64::from(self.marks))?;
        size(self.lead, Field::Table)?;
        from_nought(self.slack, Field::Table)?;
        let mark = self.lead.mm().over(i64::from(self.marks));
        mark.map(Length::from_mm).map_err(|e| e.of(Field::Table))
    }

    /// What the dial reads after a move of `by` from zero.
    ///
    /// # Errors
    /// As [`mark`](Self::mark); [`Cause::OutOfLengths`] of [`Field::Length`]; [`Cause::Overflow`].
    pub fn after(&self, by: Length) -> Result<Reading, Error> {
        let value = from_nought(by, Field::Length)?;
        self.reading(Approx { value, bound: f64::EPSILON * value }, None)
    }

    /// As [`after`](Self::after), of a move in millimetres that is not exact.
    ///
    /// # Errors
    /// As there.
    pub fn after_about(&self, by: Approx) -> Result<Reading, Error> {
        let (least_um, greatest_um) = LENGTH_UM;
        if !(by.value >= 0.0 && by.value * 1000.0 <= float::of(Fraction::whole(greatest_um.into())))
        {
            return Err(Error::new(Field::Length, Cause::OutOfLengths { least_um, greatest_um }));
        }
        self.reading(by, None)
    }

    /// What the dial reads at the coordinate `at`, come to from the coordinate `before`, or
    /// from zero.
    fn reading(&self, at: Approx, before: Option<Approx>) -> Result<Reading, Error> {
        let mark = float::of(self.mark()?.mm());
        let sign = if self.falls { -1.0 } else { 1.0 };
        let [from_zero, before] = [Some(at), before].map(|place| {
            let marks = place
                .map_or(Some(Fraction::ZERO), |place| float::nearest(sign * place.value / mark, 1));
            marks.map(Fraction::num).ok_or(OVERFLOW)
        });
        let (from_zero, before) = (from_zero?, before?);
        let stands = float::of(Fraction::whole(from_zero)) * mark * sign;
        let off = Approx {
            value: stands - at.value,
            bound: at.bound + 2.0 * f64::EPSILON * (stands.abs() + at.value.abs()),
        };
        let (turns, at_mark) = self.shows(from_zero)?;
        let comes = if from_zero == before {
            Comes::Stays
        } else if from_zero > before || self.slack.mm().is_zero() {
            Comes::Straight
        } else {
            let back = from_zero.checked_sub(self.goes_past()?).ok_or(OVERFLOW)?;
            let (turns, mark) = self.shows(back)?;
            Comes::Past { turns, mark }
        };
        Ok(Reading { from_zero, turns, mark: at_mark, off, comes })
    }

    /// Whole turns, rounded down, and the mark that stands at the line.
    fn shows(&self, from_zero: i64) -> Result<(i64, u32), Error> {
        let marks = i64::from(self.marks);
        let turns = from_zero.checked_div_euclid(marks).ok_or(OVERFLOW)?;
        let mark = from_zero.checked_rem_euclid(marks).and_then(|mark| u32::try_from(mark).ok());
        Ok((turns, mark.ok_or(OVERFLOW)?))
    }

    /// Marks to go past: the slack, a part of a mark counted whole, at least half a turn.
    fn goes_past(&self) -> Result<i64, Error> {
        let slack = self.slack.mm().checked_div(self.mark()?.mm())?;
        let half = Fraction::new(i64::from(self.marks), 2)?;
        Ok(slack.max(half).negated().floor().saturating_neg())
    }
}

const OVERFLOW: Error = Error::new(Field::Table, Cause::Overflow);

/// Cosine and sine of `turns`, from 0 to below 1, each within 2 units of a float's last
/// place beside one: what is left beside the nearest quarter is an exact fraction.
fn unit(turns: Fraction) -> Result<[f64; 2], Error> {
    let (quarters, left) = turns.times(4)?.nearest()?;
    let left = float::of(left.over(4)?);
    let (cos, sin) = (float::cos_turns(left), float::sin_turns(left));
    Ok(match quarters & 3 {
        0 => [cos, sin],
        1 => [-sin, cos],
        2 => [-cos, -sin],
        _ => [sin, -cos],
    })
}

/// `part`, counted from an edge that lies `edge` before the centre.
fn beyond(part: Approx, edge: f64) -> Approx {
    let value = edge + part.value;
    Approx {
        value,
        bound: part.bound + f64::EPSILON * (2.0 * edge + part.bound) + f64::EPSILON * value.abs(),
    }
}

/// How far two small lengths square to each other go along a direction.
fn along([x, y]: [Approx; 2], cos: f64, sin: f64) -> Approx {
    Approx {
        value: x.value * cos + y.value * sin,
        bound: x.bound + y.bound + 4.0 * f64::EPSILON * (x.value.abs() + y.value.abs()),
    }
}

/// Keeps the larger magnitude, and a bound that holds whichever is truly the larger.
fn larger(kept: &mut Approx, found: Approx) {
    kept.value = kept.value.max(found.value.abs());
    kept.bound = kept.bound.max(found.bound);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn ring(holes: u32, sense: Sense, centre: i64) -> Layout {
        let first = Angle::ZERO;
        Layout { holes, diameter: mm(100, 1), first, sense, centre: [mm(centre, 1); 2] }
    }

    fn screw(falls: bool) -> Screw {
        Screw { lead: mm(5, 1), marks: 50, slack: mm(3, 10), falls }
    }

    /// X and Y of the readings of all holes, in turns and marks.
    fn readings(ring: Layout, screws: [Screw; 2]) -> std::vec::Vec<[(i64, u32); 2]> {
        let one = |k| ring.hole(&screws, k).unwrap().dial.map(|r| (r.turns, r.mark));
        (0..ring.holes).map(one).collect()
    }

    extern crate std;

    #[test]
    fn a_square_is_exact_and_counts_either_way() {
        let left = ring(4, Sense::Anticlockwise, 0);
        for k in 0..4 {
            let [x, y] = left.centre(k).unwrap().from_centre.map(|c| c.value);
            let wanted = [(50.0, 0.0), (0.0, 50.0), (-50.0, 0.0), (0.0, -50.0)];
            assert_eq!((x + 0.0, y + 0.0), wanted[k as usize]);
        }
        let both = [screw(false); 2];
        let rows = readings(left, both);
        assert_eq!(
            rows,
            [[(10, 0), (0, 0)], [(0, 0), (10, 0)], [(-10, 0), (0, 0)], [(0, 0), (-10, 0)]]
        );
        let right = readings(ring(4, Sense::Clockwise, 0), both);
        assert_eq!((right[1], right[3]), (rows[3], rows[1]));
        // From the edges, and with dials whose figures fall.
        let edges = readings(ring(4, Sense::Anticlockwise, 60), [screw(false), screw(true)]);
        assert_eq!(
            edges,
            [[(22, 0), (-12, 0)], [(12, 0), (-22, 0)], [(2, 0), (-12, 0)], [(12, 0), (-2, 0)]]
        );
    }

    #[test]
    fn the_first_hole_may_stand_anywhere() {
        let first = Angle::from_degrees(Fraction::whole(90)).unwrap();
        let turned = Layout { first, ..ring(4, Sense::Clockwise, 0) };
        let plain = ring(4, Sense::Clockwise, 0);
        assert_eq!(turned.centre(1).unwrap().from_centre, plain.centre(0).unwrap().from_centre);
        let past = Layout { first: Angle::from_turns(Fraction::new(-7, 4).unwrap()), ..turned };
        assert_eq!(past.centre(0).unwrap(), turned.centre(0).unwrap());
    }

    #[test]
    fn moves_that_fall_go_past_and_come_back() {
        let ring = ring(4, Sense::Anticlockwise, 60);
        let dial = |slack, k| {
            let screw = Screw { slack, ..screw(false) };
            ring.hole(&[screw; 2], k).unwrap().dial.map(|r| r.comes)
        };
        assert_eq!(dial(mm(3, 10), 0), [Comes::Straight; 2]);
        // Half a turn is 25 marks; 7.05 mm of slack are 70.5, so 71.
        let back = Comes::Past { turns: 11, mark: 25 };
        assert_eq!(dial(mm(3, 10), 1), [back, Comes::Straight]);
        assert_eq!(dial(mm(141, 20), 1)[0], Comes::Past { turns: 10, mark: 29 });
        assert_eq!(dial(mm(0, 1), 1), [Comes::Straight; 2]);
        let two = Layout { holes: 2, ..ring };
        let dial = two.hole(&[screw(false); 2], 1).unwrap().dial;
        assert_eq!(dial[1].comes, Comes::Stays);
    }

    #[test]
    fn what_cannot_be_says_so() {
        let plain = ring(4, Sense::Clockwise, 0);
        let cause = |ring: Layout, k| ring.centre(k).map(|_| ()).map_err(|e| (e.field, e.cause));
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        assert_eq!(cause(plain, 4), Err((Field::Position, range(0, 3))));
        let one = Layout { holes: 1, ..plain };
        assert_eq!(cause(one, 0), Err((Field::Holes, range(2, 1000))));
        let none = Layout { diameter: mm(0, 1), ..plain };
        assert_eq!(cause(none, 0), Err((Field::Ring, Cause::Zero)));
        let off = Layout { centre: [mm(-1, 1); 2], ..plain };
        assert!(matches!(cause(off, 0), Err((Field::Length, Cause::OutOfLengths { .. }))));
        let mark = |screw: Screw| screw.mark().map_err(|e| (e.field, e.cause));
        let good = screw(false);
        assert_eq!(mark(Screw { marks: 1, ..good }), Err((Field::Table, range(2, 10_000))));
        assert_eq!(mark(Screw { lead: mm(0, 1), ..good }), Err((Field::Table, Cause::Zero)));
        let about =
            |value| good.after_about(Approx { value, bound: 1e-15 }).map(|r| (r.turns, r.mark));
        // 12.34 mm of a 5 mm screw with 50 marks: 2 turns and 23.4 marks.
        assert_eq!(about(12.34), Ok((2, 23)));
        for beyond in [-0.1, 10_000.1, f64::NAN, f64::INFINITY] {
            assert_eq!(about(beyond).map_err(|e| e.field), Err(Field::Length), "{beyond}");
        }
        let slack = Screw { slack: mm(-1, 1), ..good };
        assert!(matches!(mark(slack), Err((Field::Table, Cause::OutOfLengths { .. }))));
    }
}
