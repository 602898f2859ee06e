//! Heads handed over as a file, and taken from one. Those that are here stay here.
use super::heads;
use crate::fields::Fields;
use crate::owned::{self, Texts};
use crate::seam::{Effect, clean};
use crate::words::{run::file_refused, shop_file as words};
use maud::{Markup, html};

/// What became of the last file opened.
const SAID: &str = "shop-file";

/// Says no more of the last file, at whatever is done next.
pub fn forget(fields: &mut Fields) {
    fields.forget(SAID);
}

/// Every head as it is in force, as a file.
pub fn save(fields: &Fields) -> Effect {
    Effect::File(words::FILE_NAME, owned::file(heads::texts(fields)))
}

/// Adds the heads in the text of a file called `name`: all of them, or none.
pub fn open(fields: &mut Fields, name: &str, text: &str) {
    let said = match owned::from_file(text) {
        Ok(found) => add(fields, name, found),
        Err(why) => file_refused(name, &words::refused(&why)),
    };
    fields.set(SAID, &said);
}

fn add(fields: &mut Fields, name: &str, found: Vec<Texts>) -> String {
    let mut known = heads::texts(fields);
    let mut new: Vec<Texts> = Vec::new();
    for Texts(texts) in found {
        let head = Texts(texts.map(|text| clean(&text)));
        if !known.contains(&head) {
            known.push(head.clone());
            new.push(head);
        }
    }
    let room = heads::room(fields);
    if new.len() > room {
        return file_refused(name, &words::no_room(room));
    }
    for head in &new {
        heads::put(fields, head);
    }
    words::opened(name, new.len())
}

/// The buttons, and what became of the last file.
pub(super) fn section(fields: &Fields) -> Markup {
    let said = fields.get(SAID);
    html! {
        div.trio {
            button.btn type="button" data-do="shop-save" { (words::SAVE) }
            label.btn.pick { (words::OPEN) input.vh id="shop-open" type="file" accept=".json,application/json"; }
        }
        div id="shop-said" role="status" { @if !said.is_empty() { p.why { (said) } } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::owned::{Entry, PLATES_A};
    use handturn::head::Head;

    fn two() -> Fields {
        let mut fields = Fields::default();
        owned::set(&mut fields, Entry::Name, "Large, \u{1e}tilted");
        owned::set(&mut fields, Entry::Plates, PLATES_A);
        heads::copy(&mut fields);
        owned::set(&mut fields, Entry::Ratio, "60 : 1");
        // What is not in force is not handed over.
        owned::set(&mut fields, Entry::Gears, "24 24 <b>");
        fields
    }

    fn handed_over(fields: &Fields) -> String {
        let Effect::File("handturn-heads.json", text) = save(fields) else { panic!("a file") };
        text
    }

    fn all(fields: &Fields) -> Vec<Head> {
        let (mut fields, heads) = (fields.clone(), heads::texts(fields).len());
        let place = |place| {
            heads::choose(&mut fields, place);
            owned::head(&fields)
        };
        (0..heads).map(place).collect()
    }

    #[test]
    fn heads_go_from_one_page_to_another() {
        let from = two();
        let text = handed_over(&from);
        let mut to = Fields::default();
        open(&mut to, "heads.json", &text);
        assert_eq!(to.get(SAID), "heads.json: 2 heads added.");
        assert_eq!(heads::names(&to), (vec!["Large,  tilted", "Large,  tilted, copy"], 1));
        assert_eq!(all(&to), all(&from));
        open(&mut to, "heads.json", &text);
        assert_eq!(to.get(SAID), "heads.json: all its heads are here already.");
        owned::set(&mut to, Entry::Slack, "1/4");
        let before = all(&to);
        open(&mut to, "heads.json", &text);
        assert_eq!(to.get(SAID), "heads.json: 1 head added.");
        assert_eq!(all(&to)[..2], before, "those that were here stay");
        forget(&mut to);
        assert_eq!(to.get(SAID), "");
    }

    #[track_caller]
    fn refused(text: &str, wanted: &str) {
        let mut fields = two();
        open(&mut fields, "a.json", text);
        assert_eq!(fields.get(SAID), ["a.json was not opened. ", wanted].concat());
        forget(&mut fields);
        assert_eq!(fields, two(), "nothing is changed");
    }

    #[test]
    fn what_cannot_be_opened_changes_nothing_and_says_where() {
        let good = handed_over(&two());
        refused("", "It is no file of heads.");
        let run = crate::keep::file(crate::keep::tests::run(64, 3));
        refused(&run, "It holds a Run: open it in the list of Runs.");
        refused(
            &good.replace("\"version\":1", "\"version\":2"),
            "This was written by a newer version of Handturn.",
        );
        refused(&good.replace("\"slack\"", "\"slick\""), "It is damaged.");
        refused(
            &good.replace("60 : 1", "0"),
            "Head 2, “Worm ratio”: Worm ratio must be above 0 and at most 100,000.",
        );
        refused(
            &good.replacen("15 16", "15 15", 1),
            "Head 1, “Holes in each circle, plates parted by\u{a0}/”: The 15 circle stands twice on plate 1.",
        );
        refused(
            &good.replacen("\"withdraws\"", "\"holds\"", 1),
            "Head 1, “Plate stop”: there is no such choice.",
        );
        refused(
            &good.replacen("Large", &"L".repeat(4_001), 1),
            "Head 1, “Name”: the text is too long.",
        );
        let mut full = two();
        for _ in 0..9 {
            heads::copy(&mut full);
        }
        let mut fields = full.clone();
        let two_more = good.replace("\"slack\":\"0.1\"", "\"slack\":\"0.2\"");
        open(&mut fields, "a.json", &two_more);
        assert_eq!(
            fields.get(SAID),
            "a.json was not opened. There is room for 1 head more: delete some first."
        );
        forget(&mut fields);
        assert_eq!(fields, full);
    }
}
