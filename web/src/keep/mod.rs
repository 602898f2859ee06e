//! What is stored, as text. Everything that comes back from the device's store or
//! from a file is read as if a stranger had written it: version, bounds, the way
//! the head really offers, and every event in its turn.
mod forms;
pub mod json;
pub(crate) mod kept;

use handturn::Error;
use handturn::run::{Event, Frozen, Header, Record, State, Version};

/// A Run with as many events as it has.
pub type Run = Record<Vec<Event>>;

/// Why a stored Run cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// It is no record of a Run.
    NotARun,
    /// Its record is refused.
    Refused(Error),
    /// This event (from 0) cannot be read or does not fit those before it.
    Event(usize),
    /// Events are missing, or there are more than were counted.
    Count,
}

/// The lines in which a Run is handed to the store: how many events, the frozen
/// record, then each event after its number.
#[must_use]
pub fn lines(mut run: Run) -> String {
    let mut text = run.events.len().to_string() + "\n" + &json::write(&mut run.frozen);
    for (number, event) in run.events.iter().enumerate() {
        text.push('\n');
        text += &number.to_string();
        text.push(' ');
        text += &event_text(*event);
    }
    text
}

/// One event as it is stored.
#[must_use]
pub fn event_text(mut event: Event) -> String {
    json::write(&mut event)
}

/// The Run that the store's lines hold.
///
/// # Errors
/// What is wrong with it.
pub fn from_lines(text: &str) -> Result<Run, Trouble> {
    let mut lines = text.split('\n');
    let count = lines.next().and_then(|count| count.parse().ok()).unwrap_or(usize::MAX);
    let frozen = lines.next().unwrap_or_default();
    let version: Version = json::read(frozen).map_err(|_| Trouble::NotARun)?;
    version.check().map_err(Trouble::Refused)?;
    let frozen: Frozen = json::read(frozen).map_err(|_| Trouble::NotARun)?;
    let mut events = Vec::new();
    for (number, line) in lines.enumerate() {
        let event = line.split_once(' ').filter(|(named, _)| *named == number.to_string());
        let event = event.and_then(|(_, event)| json::read(event).ok());
        events.push(event.ok_or(Trouble::Event(number))?);
    }
    if events.len() != count {
        return Err(Trouble::Count);
    }
    checked(Record { frozen, events })
}

/// A Run as the text of a file.
#[must_use]
pub fn file(mut run: Run) -> String {
    json::write(&mut run)
}

/// The Run in the text of a file.
///
/// # Errors
/// What is wrong with it.
pub fn from_file(text: &str) -> Result<Run, Trouble> {
    let header: Header = json::read(text).map_err(|_| Trouble::NotARun)?;
    header.frozen.check().map_err(Trouble::Refused)?;
    checked(json::read(text).map_err(|_| Trouble::NotARun)?)
}

fn checked(run: Run) -> Result<Run, Trouble> {
    run.frozen.check().map_err(Trouble::Refused)?;
    let replayed = State::replay(&run.frozen.plan(), run.events.iter().copied());
    replayed.map_err(|(number, _)| Trouble::Event(number))?;
    Ok(run)
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use handturn::divide::{Asked, Order, Parts, answer};
    use handturn::head::{Head, SET_A, plates_of};
    use handturn::run::{Phase, Pressed};

    /// A Run of `count` parts on plate set A, `presses` of Next into it, two seconds apart.
    pub(crate) fn run(count: u32, presses: usize) -> Run {
        let head = Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() };
        let asked = Asked::Parts(Parts { count, every: 1 });
        let way = answer::<8>(&asked.question(), &head).unwrap().best(Order::Closest).unwrap().way;
        advance(
            Record { frozen: Frozen::new(asked, head, way).unwrap(), events: Vec::new() },
            presses,
        )
    }

    pub(crate) fn advance(mut run: Run, presses: usize) -> Run {
        let plan = run.frozen.plan();
        let mut state = State::replay(&plan, run.events.iter().copied()).unwrap();
        for _ in 0..presses {
            let event = state.next(&plan, 2_000 * run.events.len() as u64).unwrap().unwrap();
            let Pressed::Counted(next) = state.press(&plan, event).unwrap() else {
                panic!("too soon")
            };
            run.events.push(event);
            state = next;
        }
        run
    }

    #[test]
    fn a_run_comes_back_from_the_store_and_from_a_file() {
        for (count, presses) in [(64, 0), (64, 36), (64, 65), (127, 40), (3, 4)] {
            let run = run(count, presses);
            assert_eq!(from_lines(&lines(run.clone())), Ok(run.clone()), "{count} {presses}");
            assert_eq!(from_file(&file(run.clone())), Ok(run), "{count} {presses}");
        }
        let whole = run(64, 65);
        let end = State::replay(&whole.frozen.plan(), whole.events.iter().copied()).unwrap();
        assert_eq!(end.phase(&whole.frozen.plan()), Phase::Closed);
    }

    #[track_caller]
    fn refused(text: &str, wanted: Trouble) {
        assert_eq!(from_lines(text), Err(wanted), "{text:.200}");
    }

    #[test]
    fn what_a_stranger_wrote_is_refused() {
        let good = lines(run(64, 3));
        refused("", Trouble::NotARun);
        refused("0\n{}", Trouble::NotARun);
        refused("0\n{\"version\":1}", Trouble::NotARun);
        refused(&good.replacen("3\n", "4\n", 1), Trouble::Count);
        refused(&good.replacen("3\n", "x\n", 1), Trouble::Count);
        refused(&good.replace("\n1 [", "\n2 ["), Trouble::Event(1));
        refused(&good.replace("\n1 [\"at\",2", "\n1 [\"at\",3"), Trouble::Event(1));
        refused(&good.replace("\n2 [\"at\"", "\n2 [\"fly\""), Trouble::Event(2));
        let newer = Error::new(handturn::Field::Record, handturn::Cause::Newer);
        refused(&good.replace("\"version\":1", "\"version\":2"), Trouble::Refused(newer));
        let other = good.replace("\"holes\":16,\"radius\"", "\"holes\":14,\"radius\"");
        assert!(matches!(from_lines(&other), Err(Trouble::Refused(_))), "a circle the head lacks");
        assert!(matches!(
            from_lines(&good.replace("\"count\":64", "\"count\":0")),
            Err(Trouble::Refused(_))
        ));
    }

    #[test]
    fn no_cut_off_record_is_taken_for_a_whole_one() {
        let good = lines(run(64, 5));
        let file = file(run(64, 5));
        for end in (0..good.len()).filter(|end| good.is_char_boundary(*end)) {
            assert!(from_lines(&good[..end]).is_err(), "{end}");
        }
        for end in (0..file.len()).filter(|end| file.is_char_boundary(*end)) {
            assert!(from_file(&file[..end]).is_err(), "{end}");
        }
    }
}
