//! What stands on a card.
use crate::keep::kept::{choice, record};
use handturn::card::{Found, Given, Kind, chain};

/// Version of the stored form. 1 had no `metal`.
pub const SCHEMA: u32 = 2;

/// Letters of a title, a job, a metal, a line.
pub(super) const LINE: usize = 400;
/// Letters of the notes.
pub(super) const NOTES: usize = 4_000;
/// Values of a card; the core's chain takes no more.
pub(super) const VALUES: usize = handturn::bounds::MAX_VALUES;
/// Steps of a card.
pub(super) const STEPS: usize = 80;
/// Fields, lines or cautions of an answer.
pub(super) const ROWS: usize = 120;
/// Letters of what was typed in one field.
pub(super) const TYPED: usize = 8_000;
/// Parts of a tick grid.
pub(super) const PARTS: u32 = 10_000;
/// Letters of all of a card.
pub(super) const WHOLE: usize = 200_000;

/// One part.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Card {
    /// The form it was written in.
    pub version: u32,
    /// The part: "Wheel, 127 teeth".
    pub title: String,
    /// What it belongs to: "Astronomical clock".
    pub job: String,
    /// Metal and stock: "Bronze, 4 mm".
    pub metal: String,
    /// Notes, with line ends.
    pub notes: String,
    /// Values, drawing and as measured.
    pub values: Vec<Item>,
    /// What is to be done, in order.
    pub steps: Vec<Step>,
}

/// A named value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// Its own on this card, whatever its place and name.
    pub id: u32,
    /// What formulas call it.
    pub name: String,
    /// Length, angle or number.
    pub kind: Kind,
    /// What the drawing says, or `=` and a formula, as typed.
    pub drawing: String,
    /// What was measured, as typed; empty where nothing was.
    pub measured: String,
}

/// Something to do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Step {
    /// Its own on this card, whatever its place.
    pub id: u32,
    /// Words of a plain step, the heading of an answer.
    pub text: String,
    /// What a room answered.
    pub answer: Option<Answer>,
    /// Parts to tick one by one; nought for none.
    pub parts: u32,
    /// Which of them are cut.
    pub cut: Cut,
    /// When the last of them was ticked.
    pub cut_ms: Option<u64>,
    /// When the step was ticked off; none while it is to be done.
    pub done_ms: Option<u64>,
}

/// An answer as it was when it came on the card, and the question it answers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answer {
    /// The room.
    pub room: String,
    /// Its heading as the room gave it; the words of the step may have been changed since.
    pub key: String,
    /// The question: its fields as typed.
    pub fields: Vec<(String, String)>,
    /// The answer, line by line.
    pub lines: Vec<String>,
    /// The cautions that go with it.
    pub cautions: Vec<String>,
}

/// Which parts are cut: ranges, both ends in them, in order and apart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cut(pub Vec<(u32, u32)>);

record! {
    Card { version, title, job, metal, notes, values, steps }
    Item { id, name, kind, drawing, measured }
    Step { id, text, answer, parts, cut, cut_ms, done_ms }
    Answer { room, key, fields, lines, cautions }
}

choice! {
    Kind { Length = "length", Angle = "angle", Number = "number" }
}

impl crate::keep::kept::Kept for Cut {
    fn blank() -> Self {
        Self::default()
    }
    fn each(&mut self, io: &mut crate::keep::kept::Io<'_>) {
        self.0.each(io);
    }
}

impl Cut {
    /// Whether part `n` (from 1) is cut.
    #[must_use]
    pub fn has(&self, n: u32) -> bool {
        self.0.iter().any(|(from, to)| (*from..=*to).contains(&n))
    }

    /// How many are cut.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.0.iter().map(|(from, to)| to - from + 1).sum()
    }

    /// The same with `from..=to` cut, or not.
    pub(super) fn mark(&mut self, from: u32, to: u32, cut: bool) {
        let mut ranges = Vec::new();
        for (a, b) in self.0.drain(..) {
            // What lies before and after, apart from the marked part.
            if a < from {
                ranges.push((a, b.min(from - 1)));
            }
            if b > to {
                ranges.push((a.max(to + 1), b));
            }
        }
        if cut {
            ranges.push((from, to));
        }
        ranges.sort_unstable();
        for (a, b) in ranges {
            match self.0.last_mut() {
                Some((_, end)) if *end + 1 == a => *end = b,
                _ => self.0.push((a, b)),
            }
        }
    }

    /// In order, apart, and within `parts`.
    fn fits(&self, parts: u32) -> bool {
        let mut after = 0;
        self.0.iter().all(|&(from, to)| {
            let fits = from > after && from <= to && to <= parts;
            after = to.saturating_add(1);
            fits
        })
    }
}

/// What a card can't hold, and how much of it would be allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bad {
    /// A text of more letters than this.
    Long(usize),
    /// More entries than this.
    Many(usize),
    /// It does not go with the rest of the card.
    Conflict,
}

/// Where on a card something is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    /// Title, job, metal, notes, or the card as a whole.
    Head,
    /// This value, from 0.
    Value(usize),
    /// This step, from 0.
    Step(usize),
}

fn short(texts: &[&str], most: usize) -> Result<(), Bad> {
    let long = texts.iter().any(|text| text.len() > most && text.chars().count() > most);
    if long { Err(Bad::Long(most)) } else { Ok(()) }
}

fn few<T>(entries: &[T], most: usize) -> Result<(), Bad> {
    if entries.len() > most { Err(Bad::Many(most)) } else { Ok(()) }
}

impl Item {
    pub(super) fn check(&self) -> Result<(), Bad> {
        short(&[&self.name, &self.drawing, &self.measured], LINE)
    }

    /// As the core takes it.
    #[must_use]
    pub fn given(&self) -> Given<'_> {
        let Self { name, kind, drawing, measured, .. } = self;
        Given { name, kind: *kind, drawing, measured }
    }
}

impl Step {
    pub(super) fn check(&self) -> Result<(), Bad> {
        short(&[&self.text], LINE)?;
        if self.parts > PARTS {
            return Err(Bad::Many(PARTS as usize));
        }
        if let Some(answer) = &self.answer {
            few(&answer.fields, ROWS)?;
            few(&answer.lines, ROWS)?;
            few(&answer.cautions, ROWS)?;
            short(&[&answer.room, &answer.key], LINE)?;
            for (name, typed) in &answer.fields {
                short(&[name], LINE)?;
                short(&[typed], TYPED)?;
            }
            for line in answer.lines.iter().chain(&answer.cautions) {
                short(&[line], TYPED)?;
            }
        }
        if self.cut.fits(self.parts) { Ok(()) } else { Err(Bad::Conflict) }
    }

    /// Letters in it.
    fn letters(&self) -> usize {
        let answer = self.answer.as_ref().map_or(0, |answer| {
            let typed = answer.fields.iter().map(|(name, typed)| name.len() + typed.len());
            let lines = answer.lines.iter().chain(&answer.cautions).map(String::len);
            typed.chain(lines).sum()
        });
        answer + self.text.len()
    }
}

impl Card {
    /// A card of today's form.
    #[must_use]
    pub fn new(title: &str) -> Self {
        Self { version: SCHEMA, title: title.to_owned(), ..Self::default() }
    }

    /// An id that no value and no step has yet.
    #[must_use]
    pub fn next_id(&self) -> u32 {
        let ids = self.values.iter().map(|value| value.id);
        ids.chain(self.steps.iter().map(|step| step.id)).max().unwrap_or(0).saturating_add(1)
    }

    /// Steps ticked off, and how many there are.
    #[must_use]
    pub fn done(&self) -> (usize, usize) {
        (self.steps.iter().filter(|step| step.done_ms.is_some()).count(), self.steps.len())
    }

    /// Whether all of it is within bounds, and where it is not.
    pub(super) fn check(&self) -> Result<(), (Place, Bad)> {
        let head = |bad| (Place::Head, bad);
        short(&[&self.title, &self.job, &self.metal], LINE).map_err(head)?;
        short(&[&self.notes], NOTES).map_err(head)?;
        few(&self.values, VALUES).map_err(head)?;
        few(&self.steps, STEPS).map_err(head)?;
        for (k, value) in self.values.iter().enumerate() {
            value.check().map_err(|bad| (Place::Value(k), bad))?;
            if self.values.iter().take(k).any(|other| other.id == value.id) {
                return Err((Place::Value(k), Bad::Conflict));
            }
        }
        for (k, step) in self.steps.iter().enumerate() {
            step.check().map_err(|bad| (Place::Step(k), bad))?;
            if self.steps.iter().take(k).any(|other| other.id == step.id) {
                return Err((Place::Step(k), Bad::Conflict));
            }
        }
        if self.steps.iter().map(Step::letters).sum::<usize>() > WHOLE {
            return Err((Place::Head, Bad::Long(WHOLE)));
        }
        Ok(())
    }
}

/// The values of a card in both chains, in their order.
#[must_use]
pub fn found(card: &Card) -> Vec<Found> {
    let given: Vec<_> = card.values.iter().map(Item::given).collect();
    chain(&given).map(|found| found.iter().cloned().collect()).unwrap_or_default()
}
