//! One error of one source, and how it runs from position to position. What the
//! holes of a plate have becomes, divided by the worm, what is cut with them.
use super::known::{A_TURN, Known};
use super::sources::{Source, Sources};
use crate::divide::{CircleAt, Question, Way};
use crate::error::{Cause, Error, Field};
use crate::head::Head;
use crate::list::List;
use crate::measure::Length;
use crate::number::{Fraction, float};

/// Strands of one piece of work, all its plates' generations among them.
pub(super) const MAX_STRANDS: usize = 48;

pub(super) type Strands = List<Strand, MAX_STRANDS>;

#[derive(Clone, Copy)]
pub(super) struct Strand {
    pub(super) source: Source,
    /// Greatest size, arc-seconds at the work.
    pub(super) total: f64,
    pub(super) run: Run,
    /// Positions of the piece it arose on that lie between neighbours of this one.
    stride: u32,
    /// Positions all round the piece it arose on; 0 where they don't close.
    around: u32,
}

/// How a strand runs from position to position.
#[derive(Clone, Copy)]
pub(super) enum Run {
    /// Known at each position; the factor brings it to the work.
    Known(f64),
    /// Anew at each position, to either side.
    Anew,
    /// Anew at each hole of the plate in use.
    Holes,
    /// Anew at each position, to one side.
    OneSided,
    /// A sine, so many turns on from position to position (not known where `None`),
    /// and by how much that may be out.
    Wave(Option<Fraction>, f64),
}

/// What a strand does at the work, arc-seconds.
#[derive(Clone, Copy, Default)]
pub(super) struct Sizes {
    pub(super) total: f64,
    pub(super) adjacent: f64,
    pub(super) rms: f64,
    pub(super) adjacent_rms: f64,
}

impl Strand {
    /// At the work; `known` is how the first generation (or the one way) rounds.
    pub(super) fn sizes(&self, known: &Known) -> Result<Sizes, Error> {
        let a = self.total;
        let each = a / float::sqrt(3.0);
        Ok(match self.run {
            Run::Known(factor) => {
                let stats = known.stats(self.stride)?;
                Sizes {
                    total: stats.total * factor,
                    adjacent: stats.adjacent * factor,
                    rms: stats.rms * factor,
                    adjacent_rms: stats.adjacent_rms * factor,
                }
            }
            Run::Anew => Sizes {
                total: a,
                adjacent: 2.0 * a,
                rms: each,
                adjacent_rms: float::sqrt(2.0) * each,
            },
            Run::Holes => {
                let unlike = 1.0 - known.stats(self.stride)?.alike;
                Sizes {
                    total: a,
                    adjacent: if unlike > 0.0 { 2.0 * a } else { 0.0 },
                    rms: each,
                    adjacent_rms: float::sqrt(2.0 * unlike.max(0.0)) * each,
                }
            }
            Run::OneSided => {
                Sizes { total: a, adjacent: a, rms: each, adjacent_rms: a / float::sqrt(6.0) }
            }
            Run::Wave(step, slop) => {
                let (most, squares) = self.swings(step)?;
                Sizes {
                    total: a,
                    adjacent: 2.0 * a * (most + float::PI * slop).min(1.0),
                    rms: a * float::sqrt(0.5),
                    adjacent_rms: a * float::sqrt(2.0 * squares),
                }
            }
        })
    }

    /// |sin| of half a wave's step between neighbours: the greatest, and the mean of its
    /// square. Neighbours lie `stride` positions on or, past the end, the rest of the
    /// way round back, which is the same where the wave closes.
    fn swings(&self, step: Option<Fraction>) -> Result<(f64, f64), Error> {
        // A step that is not known: as likely as any.
        let Some(step) = step else { return Ok((1.0, 0.5)) };
        let on = swing(step.times(i64::from(self.stride))?);
        if self.around == 0 {
            return Ok((on, on * on));
        }
        let rest = self.around.saturating_sub(self.stride);
        let back = swing(step.times(i64::from(rest))?);
        let share = f64::from(self.stride) / f64::from(self.around);
        Ok((on.max(back), on * on * (1.0 - share) + back * back * share))
    }

    /// Greatest distance from position 0 to the one `parts` parts on.
    pub(super) fn since_start(&self, parts: u32, handle: Option<Fraction>) -> Result<f64, Error> {
        if parts == 0 {
            return Ok(0.0);
        }
        let times = |step: Fraction| step.times(i64::from(parts));
        Ok(match self.run {
            Run::Known(_) => 0.0,
            Run::Anew => 2.0 * self.total,
            Run::OneSided => self.total,
            Run::Holes => match handle.map(times).transpose()? {
                Some(turns) if turns.is_whole() => 0.0,
                _ => 2.0 * self.total,
            },
            Run::Wave(step, slop) => {
                let half = step.map(times).transpose()?.map_or(1.0, swing);
                2.0 * self.total * (half + float::PI * slop).min(1.0)
            }
        })
    }

    /// The strand of a plate of `holes` holes as what is cut with it has it: every
    /// `stride`-th hole is used, a fraction `lever` of its error comes through. None
    /// where it is the same for all of them.
    fn through(&self, stride: u32, holes: u32, lever: f64) -> Result<Option<Self>, Error> {
        let wide = u64::from(self.stride).checked_mul(u64::from(stride));
        let apart = wide.and_then(|wide| wide.checked_rem(u64::from(holes)));
        let apart = apart.and_then(|apart| u32::try_from(apart).ok());
        let apart = apart.ok_or(Error::new(Field::Holes, Cause::Overflow))?;
        let run = match self.run {
            Run::Known(factor) => Run::Known(factor * lever),
            run => run,
        };
        // Always the same hole, or always the same place of a wave.
        let same = match self.run {
            _ if apart == 0 => true,
            Run::Wave(Some(step), 0.0) => {
                let whole = |n: u32| Ok::<_, Error>(step.times(i64::from(n))?.is_whole());
                whole(apart)? && whole(self.around)?
            }
            _ => false,
        };
        Ok((!same).then_some(Self { total: self.total * lever, run, stride: apart, ..*self }))
    }
}

/// |sin| of half a step of `turns`.
fn swing(turns: Fraction) -> f64 {
    // From the nearer whole turn, so that small steps keep their figures.
    let part = turns.part();
    let near = Fraction::ONE.checked_sub(part).map_or(part, |rest| part.min(rest));
    float::sin_turns(float::of(near) / 2.0)
}

/// What is cut, and with what.
#[derive(Clone, Copy)]
pub(super) struct Cut<'a> {
    pub(super) question: Question<'a>,
    pub(super) way: Way,
    /// The diameter at which it is cut.
    pub(super) diameter: Length,
    /// How far a drill strays, along the ring, where holes are drilled.
    pub(super) drilling: Length,
    /// The radius of the ring, where the pin stands in a plate made here: then the
    /// errors of its holes come from [`inherit`].
    pub(super) made: Option<Length>,
}

impl Cut<'_> {
    /// Turns of the work from neighbour to neighbour; none for a list.
    pub(super) fn a_part(&self) -> Result<Option<Fraction>, Error> {
        match self.question.parts() {
            Some(parts) => Ok(Some(Fraction::new(1, i64::from(parts))?)),
            None => Ok(self.question.step()?.map(|step| step.turns())),
        }
    }

    /// What goes on by `step` turns from part to part, whole turns aside; none where the
    /// cutting order brings parts that are neighbours out of step.
    fn steady(&self, step: Option<Fraction>) -> Result<Option<Fraction>, Error> {
        let Some(step) = step else { return Ok(None) };
        let in_order = !matches!(self.question, Question::Parts(parts) if parts.every > 1);
        let parts = i64::from(self.question.parts().unwrap_or(1));
        Ok((in_order || step.times(parts)?.is_whole()).then_some(step.part()))
    }

    /// Turns of the handle from neighbour to neighbour, whole turns aside; none where
    /// that is not the same all round.
    pub(super) fn handle(&self, ratio: Fraction) -> Result<Option<Fraction>, Error> {
        self.steady(self.a_part()?.map(|part| part.checked_mul(ratio)).transpose()?)
    }

    /// Every error that this cut brings with it.
    pub(super) fn strands(&self, head: &Head, sources: &Sources) -> Result<Strands, Error> {
        let around = self.question.parts().unwrap_or(0);
        let mut strands = Weave { strands: List::new(), around };
        let errors = self.way.errors(&self.question)?;
        if !errors.is_none() {
            strands.add(Source::Rounding, 1.0, Run::Known(1.0))?;
        }
        let astray = 2.0 * float::of(errors.worst.turns());
        let (work, ratio) = (self.a_part()?, head.ratio);
        let once = Run::Wave(work, astray);
        // What an angle of the handle comes to at the work, and an angle of the wheel.
        let (lever, wheel) = match &self.way {
            Way::Direct(_) => (1.0, 0.0),
            Way::Differential(way) => {
                // The plate goes with the work: over-plate turns ÷ (ratio − gears).
                let net = float::of(ratio.checked_sub(way.gear_ratio()?)?);
                (1.0 / net.abs(), float::of(ratio) / net.abs())
            }
            _ => (1.0 / float::of(ratio), 1.0),
        };
        let handle = self.handle(ratio)?;
        let shaft = Run::Wave(handle, astray * float::of(ratio));
        let angle = |angle: crate::measure::Angle| float::of(angle.turns()) * A_TURN;
        strands.add(Source::Wheel, angle(sources.wheel) * wheel, once)?;
        strands.add(Source::Worm, angle(sources.worm) * wheel, shaft)?;
        if !sources.same_side && wheel > 0.0 {
            let slack = float::of(head.slack) * lever * A_TURN;
            strands.add(Source::Slack, slack, Run::OneSided)?;
        }
        let mut pin = |circle: Option<CircleAt>, step, astray, lever| {
            let radius = self.made.or_else(|| radius_of(head, circle?)).unwrap_or(sources.radius);
            let seconds = |error: Length| arcsec(error, radius) * lever;
            if self.made.is_none() {
                strands.add(Source::Holes, seconds(sources.hole), Run::Holes)?;
            }
            strands.add(Source::Pin, seconds(sources.pin_play) / 2.0, Run::Anew)?;
            let run_out = seconds(sources.plate_run_out);
            strands.add(Source::PlateRunOut, run_out, Run::Wave(step, astray))
        };
        let mut mark = 0.0;
        match &self.way {
            Way::Plain(way) | Way::NearestHole(way) => {
                pin(Some(way.circle), handle, astray * float::of(ratio), lever)?;
            }
            Way::FineDial(way) => {
                let hole = 1.0 / f64::from(way.circle.holes.max(1));
                pin(Some(way.circle), handle, hole, lever)?;
                mark = float::of(way.dial.shift.turns()) / f64::from(way.dial.marks.max(1));
            }
            Way::Differential(way) => {
                pin(Some(way.circle), self.steady(Some(way.on_plate()?))?, 0.0, lever)?;
            }
            Way::Compound(way) => {
                let legs =
                    [(way.pin, i64::from(way.pin_spaces)), (way.back, way.back_spaces.into())];
                for (holes, spaces) in legs {
                    let step = Fraction::new(spaces, i64::from(holes))?;
                    // Several times round, neighbours are many moves from each other.
                    let step = (way.times_round == 1).then_some(step.part());
                    pin(Some(CircleAt { plate: way.plate, holes }), step, 0.0, lever)?;
                }
            }
            Way::Direct(_) => pin(None, work, 0.0, 1.0)?,
            Way::Handwheel(way) => mark = 1.0 / f64::from(way.steps().max(1)),
        }
        let reading = float::of(sources.reading) * mark * A_TURN * lever;
        strands.add(Source::Reading, reading, Run::Anew)?;
        let half = Length::from_mm(self.diameter.mm().over(2)?);
        strands.add(Source::Blank, arcsec(sources.blank_run_out, half), once)?;
        strands.add(Source::Drilling, arcsec(self.drilling, half), Run::Anew)?;
        // A pin that never leaves its hole: the same for all positions.
        let still = handle.is_some_and(Fraction::is_zero) && self.one_hole();
        let keep = |strand: &Strand| {
            let same = match strand.run {
                Run::Holes => true,
                Run::Wave(Some(step), _) => step.is_zero(),
                _ => false,
            };
            !(still && same)
        };
        let mut kept = List::new();
        for strand in strands.strands.iter().filter(|strand| keep(strand)) {
            kept.push(*strand).map_err(|_| FULL)?;
        }
        Ok(kept)
    }

    /// Whether all there is of a plate is one pin on one circle, set to whole holes.
    const fn one_hole(&self) -> bool {
        matches!(self.way, Way::Plain(_) | Way::NearestHole(_) | Way::Handwheel(_))
    }
}

/// Adds what the holes of a plate of `holes` have to `strands` of what is cut with
/// it, every `stride`-th hole used, divided by the worm's `ratio`.
pub(super) fn inherit(
    strands: &mut Strands,
    plate: &Strands,
    holes: u32,
    stride: u32,
    ratio: Fraction,
) -> Result<(), Error> {
    let lever = 1.0 / float::of(ratio);
    for strand in plate {
        if let Some(strand) = strand.through(stride, holes, lever)? {
            strands.push(strand).map_err(|_| FULL)?;
        }
    }
    Ok(())
}

const FULL: Error = Error::new(Field::Generations, Cause::TooMany { most: 4 });

struct Weave {
    strands: Strands,
    around: u32,
}

impl Weave {
    fn add(&mut self, source: Source, total: f64, run: Run) -> Result<(), Error> {
        if total > 0.0 {
            let strand = Strand { source, total, run, stride: 1, around: self.around };
            self.strands.push(strand).map_err(|_| FULL)?;
        }
        Ok(())
    }
}

/// A length along a circle of `radius`, in arc-seconds.
pub(super) fn arcsec(along: Length, radius: Length) -> f64 {
    float::of(along.mm()) / float::of(radius.mm()) / (2.0 * float::PI) * A_TURN
}

fn radius_of(head: &Head, circle: CircleAt) -> Option<Length> {
    let plate = head.plates.get(usize::from(circle.plate))?;
    plate.circles.iter().find(|c| c.holes == circle.holes)?.radius
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wave_that_does_not_close_is_met_at_both_steps() {
        for (num, den, around) in [(1, 10, 10), (3, 7, 10), (15, 49, 127), (2, 5, 9)] {
            for stride in 1..around {
                let step = Fraction::new(num, den).unwrap();
                let run = Run::Wave(Some(step), 0.0);
                let strand = Strand { source: Source::Worm, total: 1.0, run, stride, around };
                let (most, squares) = strand.swings(Some(step)).unwrap();
                // Every pair of neighbours: position k and the one a stride on, round the end.
                let half = |k: u32| {
                    let on = i64::from((k + stride) % around) - i64::from(k);
                    let turns = on as f64 * num as f64 / den as f64;
                    (core::f64::consts::PI * turns).sin().abs()
                };
                let sum: f64 = (0..around).map(|k| half(k) * half(k)).sum();
                let greatest = (0..around).map(half).fold(0.0, f64::max);
                assert!((squares - sum / f64::from(around)).abs() < 1e-12, "{num}/{den} {stride}");
                assert!((most - greatest).abs() < 1e-12, "{num}/{den} {stride} of {around}");
            }
        }
    }
}
