//! The dial of a handwheel, on a head used without plates: the handle stops at
//! a mark (or a mark of the vernier) instead of a hole.
//!
//! Method: as on a circle with as many holes as the dial has marks, each place
//! rounded from its absolute value (common practice). No pin holds the handle.
use super::grid;
use super::moves::{At, Errors, Leg, Move, Part, Place};
use super::question::Question;
use super::working::{Pen, Sign, Word};
use crate::error::Error;
use crate::head::{Handwheel, Head};
use crate::measure::Angle;
use crate::number::Fraction;

/// Turns and marks of a handwheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DialledTurns {
    /// The dial. Readings and spaces count its marks times the parts of its
    /// vernier: with a vernier of 10, 57 is mark 5 and the vernier's 7.
    pub dial: Handwheel,
    /// Worm ratio.
    pub ratio: Fraction,
}

impl DialledTurns {
    /// Steps of the dial in one turn: its marks, each parted by the vernier.
    #[must_use]
    pub const fn steps(&self) -> u32 {
        self.dial.marks.saturating_mul(self.dial.vernier)
    }

    pub(super) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        grid::errors(question, self.ratio, self.steps())
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let (count, _) = grid::nearest(question, index, self.ratio, self.steps())?;
        let handle = Fraction::new(count, i64::from(self.steps()))?;
        Ok(Place {
            index,
            wanted: question.travel(index)?,
            stands: Angle::from_turns(handle.checked_div(self.ratio)?),
            handle,
            pin: None,
            back_pin: None,
            dial: Some(At::counted(count, self.steps())?),
            notch: None,
        })
    }

    pub(super) fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        let next = index.saturating_add(1);
        let (from, _) = grid::nearest(question, index, self.ratio, self.steps())?;
        let (to, _) = grid::nearest(question, next, self.ratio, self.steps())?;
        Move::of(&[Leg::between(Part::Handwheel, from, to, self.steps())?])
    }

    /// `40/127 × 1000 ≈ 315`: handle turns of the first part times the dial's steps.
    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let Some(step) = question.step()? else { return Ok(()) };
        let turns = step.turns().checked_mul(self.ratio)?;
        let steps = i64::from(self.steps());
        let (near, _) = turns.times(steps)?.nearest()?;
        let errors = self.errors(question)?;
        let exact = errors.is_none();
        pen.about(Word::PerPart).value(turns).times().whole(steps);
        let equals = if exact { Sign::Equals } else { Sign::Nearly };
        pen.sign(equals).whole(near).remark(Word::DialMarks);
        if !exact {
            let mark = Fraction::ONE.checked_div(self.ratio)?.over(steps)?;
            pen.about(Word::OneMark).angle(Angle::from_turns(mark));
            pen.about(Word::Worst).angle(errors.worst);
            pen.about(Word::Neighbours).angle(errors.adjacent);
        }
        Ok(())
    }
}

/// Offers the handwheel's dial, where the head has one.
pub(super) fn handwheel(
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(DialledTurns, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    let Some(dial) = head.handwheel else { return Ok(()) };
    let way = DialledTurns { dial, ratio: head.ratio };
    keep(way, way.errors(question)?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{Kind, Parts, Reason, Repeated, Way, answer};

    fn head(marks: u32, vernier: u32) -> Head {
        Head { handwheel: Some(Handwheel { marks, vernier }), ..Head::default() }
    }

    fn way(question: &Question, head: &Head) -> Way {
        answer::<1>(question, head).unwrap().group(Kind::Handwheel).unwrap().closest[0].way
    }

    /// Turns and marks from `index` on, the reading there, and whether the way is exact.
    #[track_caller]
    fn check(head: &Head, count: u32, index: u32, expected: (u32, u32, u32, bool)) {
        let question = Question::Parts(Parts { count, every: 1 });
        let way = way(&question, head);
        let step = way.step(&question, index).unwrap();
        let [leg] = &step.legs[..] else { panic!("one leg") };
        assert_eq!((leg.part, leg.arms), (Part::Handwheel, None));
        let reading = way.place(&question, index).unwrap().dial.unwrap();
        assert_eq!(reading, leg.from);
        let found = (leg.turns, leg.spaces, reading.number, way.exact(&question).unwrap());
        assert_eq!(found, expected, "{count} at {index}");
    }

    #[test]
    fn turns_and_marks() {
        // 40/64 = 0.625 turn: whole marks on 200 and 1000, a half between on 100.
        check(&head(200, 1), 64, 0, (0, 125, 0, true));
        check(&head(100, 10), 64, 37, (0, 625, 125, true));
        check(&head(100, 1), 64, 0, (0, 63, 0, false));
        check(&head(100, 1), 64, 1, (0, 62, 63, false));
        // 40/127 = 0.314 96 turn; 40/7 = 5.714 28.
        check(&head(100, 10), 127, 0, (0, 315, 0, false));
        check(&head(100, 1), 7, 0, (5, 71, 0, false));
        check(&head(100, 1), 7, 6, (5, 71, 29, false));
    }

    #[test]
    fn its_errors_are_those_of_its_places() {
        for (marks, vernier) in [(100, 1), (125, 10), (360, 12)] {
            let head = head(marks, vernier);
            for count in 2..=130 {
                let every = if count > 3 && count % 3 == 1 { 3 } else { 1 };
                let angle = Angle::from_turns(Fraction::new(i64::from(count), 999).unwrap());
                for question in [
                    Question::Parts(Parts { count, every }),
                    Question::Angle(Repeated { angle, times: count }),
                ] {
                    let way = way(&question, &head);
                    let error = |part: u32| {
                        way.place(&question, question.index_of(part)).unwrap().error().unwrap()
                    };
                    let turns = |part| error(part).turns();
                    let far = |a: u32, b: u32| turns(a).checked_sub(turns(b)).unwrap().abs();
                    let all = question.positions();
                    let worst = (0..all).map(|p| turns(p).abs()).max().unwrap();
                    let pairs = (1..all).map(|p| far(p, p - 1));
                    let wrap = question.closes().then(|| far(all - 1, 0));
                    let adjacent = pairs.chain(wrap).max().unwrap();
                    let slow = [worst, adjacent].map(Angle::from_turns);
                    let errors = way.errors(&question).unwrap();
                    assert_eq!([errors.worst, errors.adjacent], slow, "{question:?}");
                    let half = Fraction::new(1, i64::from(80 * marks * vernier)).unwrap();
                    assert!(worst <= half);
                }
            }
        }
    }

    #[test]
    fn a_head_without_the_dial_says_so() {
        let question = Question::Parts(Parts { count: 64, every: 1 });
        let found = answer::<1>(&question, &Head::default()).unwrap();
        let why = found.left_out.iter().find(|out| out.kind == Kind::Handwheel);
        assert_eq!(why.map(|out| out.reason), Some(Reason::NoHandwheel));
    }
}
