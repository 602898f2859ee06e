//! Passes under way: the plan frozen when cutting began and what was done since, kept
//! like a Run: a tick is stored first and shows as done when the store has confirmed it.
use crate::keep::json;
use crate::keep::kept::{choice, record};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::thread::infeed::Nose;
use handturn::thread::passes::Plan;
use handturn::thread::still::{Still, still};

/// Version of the stored form.
pub(super) const VERSION: u32 = 1;
/// Letters of a title that is believed.
const TITLE: usize = 120;

/// What was frozen when cutting began.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Job {
    pub(super) version: u32,
    /// Thread and class.
    pub(super) title: String,
    pub(super) plan: Plan,
    /// The dial is in inches.
    pub(super) inch: bool,
    pub(super) internal: bool,
    /// Limits of the pitch diameter.
    pub(super) low: Length,
    pub(super) high: Length,
    /// The half nuts must stay closed, the spindle is reversed.
    pub(super) reverse: bool,
    pub(super) blind: bool,
}

/// What was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum What {
    /// A pass was cut.
    Tick,
    /// The last step does not count.
    Undo,
    /// So much was left, in micrometres along the slide.
    Left,
}

/// One thing done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Step {
    pub(super) what: What,
    /// The pass, or micrometres.
    pub(super) value: u32,
    pub(super) at_ms: u64,
}

/// Where a job stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Place {
    /// The plan in force, a measurement counted in.
    pub(super) plan: Plan,
    /// Passes of it that are cut.
    pub(super) done: u32,
    /// Passes of it, spring passes counted.
    pub(super) of: u32,
    /// Steps that an undo could take back.
    pub(super) undoable: bool,
}

/// Why a stored job is not believed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Unread;

impl Job {
    /// Where the job stands after `steps`, each of them in its turn.
    pub(super) fn place(&self, steps: &[Step]) -> Result<Place, Unread> {
        let mut stand: Vec<Step> = Vec::new();
        for step in steps {
            match step.what {
                What::Undo => drop(stand.pop().ok_or(Unread)?),
                _ => stand.push(*step),
            }
        }
        let count = |plan: &Plan| plan.count().map_err(|_| Unread);
        let undoable = !stand.is_empty();
        let mut place = Place { plan: self.plan, done: 0, of: count(&self.plan)?, undoable };
        for step in stand {
            match step.what {
                What::Tick if step.value == place.done + 1 && place.done < place.of => {
                    place.done += 1;
                }
                What::Left => {
                    let left = Fraction::new(i64::from(step.value), 1000).map_err(|_| Unread)?;
                    let stands = place.stands();
                    let plan = place.plan.measured(Length::from_mm(left), stands);
                    place.plan = plan.map_err(|_| Unread)?;
                    (place.done, place.of) = (0, count(&place.plan)?);
                }
                _ => return Err(Unread),
            }
        }
        Ok(place)
    }

    /// What is left by a pitch diameter that was measured.
    pub(super) fn still(&self, measured: Length) -> Result<Still, handturn::Error> {
        let measured = Approx { value: float::of(measured.mm()), bound: 0.0 };
        still(measured, self.low, self.high, self.plan.set_over, self.internal)
    }
}

impl Place {
    /// Where the dial stands now, in marks from its zero.
    fn stands(&self) -> u32 {
        let pass = self.plan.pass(self.done);
        pass.map_or(self.plan.dial_at, |pass| pass.reading.from_zero)
    }
}

record! {
    Job { version, title, plan, inch, internal, low, high, reverse, blind }
    Step { what, value, at_ms }
    Plan { depth, done, first, least, spring, half_angle, set_over, nose, dial, dial_at, runs }
    Dial { division, reads, marks }
}

choice! {
    What { Tick = "tick", Undo = "undo", Left = "left" }
    Nose { Flat(held) = "flat", Radius(held) = "radius" }
    Reads { Travel = "travel", Diameter = "diameter" }
    Runs { Forwards = "forwards", Backwards = "backwards" }
}

/// The lines in which a job is handed to the store.
pub(super) fn lines(job: &Job, steps: &[Step]) -> String {
    let mut text = steps.len().to_string() + "\n" + &json::write(&mut job.clone());
    for (number, step) in steps.iter().enumerate() {
        text += "\n";
        text += &number.to_string();
        text += " ";
        text += &json::write(&mut { *step });
    }
    text
}

/// The job that the store's lines hold, believed only where it is whole and every
/// step follows from those before it.
pub(super) fn from_lines(text: &str) -> Result<(Job, Vec<Step>), Unread> {
    let mut rows = text.split('\n');
    let count: usize = rows.next().and_then(|count| count.parse().ok()).ok_or(Unread)?;
    let job: Job = json::read(rows.next().unwrap_or_default()).map_err(|_| Unread)?;
    let mut steps = Vec::new();
    for (number, row) in rows.enumerate() {
        let (named, step) = row.split_once(' ').ok_or(Unread)?;
        if named != number.to_string() {
            return Err(Unread);
        }
        steps.push(json::read(step).map_err(|_| Unread)?);
    }
    let turns = job.plan.set_over.turns();
    let whole = steps.len() == count
        && job.version == VERSION
        && job.title.chars().count() <= TITLE
        && job.low <= job.high
        && !turns.is_negative()
        && job.plan.set_over <= Angle::TURN;
    if !whole {
        return Err(Unread);
    }
    job.place(&steps)?;
    Ok((job, steps))
}
