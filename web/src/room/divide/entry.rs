//! The answer in force, for the card: the way that stands open, or the plate to be made.
use super::{ask, panel, plate, table, ways, work_out};
use crate::fields::Fields;
use crate::owned;
use crate::pieces::mark;
use crate::room::told::Entry;
use crate::words::{self, card};
use handturn::divide::Question;
use maud::html;

/// What stands open as a step of the card; none while nothing does.
#[must_use]
pub fn entry(fields: &Fields) -> Option<Entry> {
    let asked = ask::asked(fields).ok().or_else(|| ask::last_good(fields))?;
    let head = owned::head(fields);
    let worked = work_out(fields, &asked, &head).ok()?;
    let question = &worked.question;
    let parts = Some(question.positions()).filter(|parts| *parts > 1);
    let titled = |way| card::division(&ways::asked(question), way);
    if worked.makes() {
        let plan = plate::plan(&worked, worked.lack?);
        let title = titled(words::plate::MAKE);
        return Some(Entry::read(title, parts, &plate::panel(&worked, &plan)));
    }
    let (kind, rated) = worked.open()?;
    let group = worked.answer.group(kind)?;
    let markup = html! {
        p { (mark(&rated.errors)) }
        (panel::panel(&worked, group, rated))
        @if let Question::List(_) = question { (table::section(&worked, rated, words::key(kind))) }
    };
    Some(Entry::read(titled(words::kind(kind)), parts, &markup))
}

/// Whether a field is one of this room's question.
#[must_use]
pub fn owns(name: &str) -> bool {
    ask::is_asked(None, name) || CHOSEN.contains(&name) || name.starts_with("pl-")
}

/// Whether a field is part of the question that stands here now.
#[must_use]
pub fn asks(fields: &Fields, name: &str) -> bool {
    let makes = fields.get("way") == plate::KEY;
    ask::is_asked(Some(fields), name) || CHOSEN.contains(&name) || makes && name.starts_with("pl-")
}

/// What is chosen of the question and of its answer.
const CHOSEN: [&str; 4] = ["kind", "order", "way", "alternative"];

#[cfg(test)]
mod tests {
    use super::*;

    fn shop() -> Fields {
        let mut fields = Fields::default();
        owned::set(&mut fields, owned::Entry::Plates, owned::PLATES_A);
        owned::set(&mut fields, owned::Entry::Gears, owned::GEARS_USUAL);
        fields
    }

    #[test]
    fn a_division_says_its_move_arms_gears_and_caution() {
        let entry = entry(&shop()).unwrap();
        assert_eq!((&*entry.title, entry.parts), ("Divide 127: Differential", Some(127)));
        assert_eq!(
            entry.lines,
            [
                "Exact",
                "13 holes on the 39",
                "No full turn. 14 holes show, counting the one the pin is in (13 spaces).",
                "Spindle: 56",
                "Idlers: 24, 28",
                "Worm shaft: 24",
                "Plate stop out for the whole job: the gears turn the plate. The spindle clamp goes on for each cut.",
                "126 moves between cuts and one to close, without a cut. After it: hole 13, 42 1/3 turns made over the plate, the plate back by 2 1/3 turns, the work home.",
            ]
        );
        assert!(entry.cautions[0].contains("the plate must go back 21°"));
        assert_eq!(entry.drawing.0.matches("<figure").count(), 2, "plate and train");
        assert!(entry.working.0.contains("40 over 120"));
    }

    #[test]
    fn what_stands_open_is_what_is_put() {
        let mut fields = shop();
        fields.set("way", "nearest");
        let nearest = entry(&fields).unwrap();
        assert_eq!(nearest.title, "Divide 127: Nearest hole");
        assert_eq!(nearest.lines[0], "Approximate, within 328″");
        fields.set("way", "make");
        assert_eq!(entry(&fields).unwrap().title, "Divide 127: Make the plate you lack");
        fields.set("way", "none");
        assert!(entry(&fields).is_none());
        fields.set("kind", "list");
        fields.forget("way");
        let list = entry(&fields).unwrap();
        assert_eq!(list.parts, Some(4));
        assert!(
            list.lines
                .iter()
                .any(|line| line.starts_with("Position 2: Work stands at 17° 30′; Move ")),
            "{:#?}",
            list.lines
        );
    }
}
