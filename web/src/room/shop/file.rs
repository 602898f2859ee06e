//! The whole Shop handed over as a file, and taken from one. Heads that are here stay
//! here; a list gives way to the file's, and one press brings everything back.
use super::heads;
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::owned::{self, Held, Lists, Texts};
use crate::seam::{Effect, clean};
use crate::words::{run::file_refused, shop, shop_file as words};
use maud::{Markup, html};

/// What became of the last file opened, a line each.
const SAID: &str = "shop-file";
/// The Shop before it, as kept fields.
const BEFORE: &str = "shop-before";

/// Whether a field is one of the Shop's own: a head's, a list's, or which head is chosen.
pub(super) fn is_ours(name: &str) -> bool {
    let plain = name.strip_prefix("last-").unwrap_or(name);
    plain.starts_with("head-")
        || plain.starts_with("own-")
        || matches!(name, "shop-heads" | "shop-chosen")
}

/// Takes the Shop's fields from `other`, in place of those here.
pub fn take(fields: &mut Fields, other: &Fields) {
    fields.rename(|name| (!is_ours(name)).then(|| name.to_owned()));
    for (name, value) in other.iter().filter(|(name, _)| is_ours(name)) {
        fields.set(name, value);
    }
    owned::mend(fields);
    lists::mend(fields);
}

/// Says no more of the last file, at whatever is done next in the Shop.
pub fn forget(fields: &mut Fields) {
    fields.forget(SAID);
    fields.forget(BEFORE);
}

/// Every head and every list as it is in force, as a file.
pub fn save(fields: &Fields) -> Effect {
    let lists = Lists(Stock::ALL.map(|stock| lists::text(fields, stock).to_owned()));
    Effect::File(words::FILE_NAME, owned::file(heads::texts(fields), lists))
}

/// Takes what the text of a file called `name` holds: all of it, or nothing.
pub fn open(fields: &mut Fields, name: &str, text: &str) {
    forget(fields);
    let said = match owned::from_file(text) {
        Ok(found) => add(fields, name, found),
        Err(why) => file_refused(name, &words::refused(&why)),
    };
    fields.set(SAID, &said);
}

/// Everything as it was before the last file.
pub(super) fn undo(fields: &mut Fields) {
    let before = Fields::from_kept(fields.get(BEFORE));
    forget(fields);
    take(fields, &before);
}

fn add(fields: &mut Fields, name: &str, found: Held) -> String {
    let mut known = heads::texts(fields);
    let mut new: Vec<Texts> = Vec::new();
    for Texts(texts) in &found.heads {
        let head = Texts(texts.each_ref().map(|text| clean(text)));
        if !known.contains(&head) {
            known.push(head.clone());
            new.push(head);
        }
    }
    let room = heads::room(fields);
    if new.len() > room {
        return file_refused(name, &words::no_room(room));
    }
    let mut before = fields.clone();
    before.rename(|name| is_ours(name).then(|| name.to_owned()));
    let mut changes = String::new();
    for (stock, text) in found.lists() {
        let text = clean(text);
        if lists::text(fields, stock).trim() != text.trim() {
            let was = lists::text(fields, stock).to_owned();
            lists::set(fields, stock, &text);
            changes += &words::changed(stock, &was, &text);
        }
    }
    for head in &new {
        heads::put(fields, head);
    }
    if !new.is_empty() || !changes.is_empty() {
        fields.set(BEFORE, &before.kept());
    }
    words::opened(name, new.len(), !changes.is_empty()) + &changes
}

/// The buttons, and what became of the last file.
pub(super) fn section(fields: &Fields) -> Markup {
    let said = fields.get(SAID);
    html! {
        div.trio {
            button.btn type="button" data-do="shop-save" { (words::SAVE) }
            label.btn.pick { (words::OPEN) input.vh id="shop-open" type="file" accept=".json,application/json"; }
        }
        div id="shop-said" role="status" {
            @for (k, line) in said.lines().enumerate() { p.why.change[k > 0] { (line) } }
            @if fields.has(BEFORE) { button.btn type="button" data-do="shop-file-undo" { (shop::UNDO) } }
        }
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
        let Effect::File("handturn-shop.json", text) = save(fields) else { panic!("a file") };
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
        assert_eq!(to.get(SAID), "heads.json: nothing in it is new here.");
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
        refused("", "It is no file of the Shop.");
        let run = crate::keep::file(crate::keep::tests::run(64, 3));
        refused(&run, "It holds a Run: open it in the list of Runs.");
        refused(
            &good.replace("\"version\":2", "\"version\":3"),
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

    #[test]
    fn lists_go_with_it_and_one_press_brings_all_back() {
        let mut from = two();
        lists::set(&mut from, Stock::Blocks, "1-9x1");
        lists::set(&mut from, Stock::Feelers, "0.05 0.1");
        lists::set(&mut from, Stock::Feelers, "0.05 0.1 ?");
        let text = handed_over(&from);
        let mut to = Fields::default();
        lists::set(&mut to, Stock::Drills, "number");
        let before = to.clone();
        open(&mut to, "shop.json", &text);
        assert_eq!(
            to.get(SAID),
            "shop.json: 2 heads added; lists changed:\nDrills: number → metric\nFeeler leaves and shims, mm: 0.05 0.1 0.15 0.2 0.25 0.3 0.4 0.5 0.6 … → 0.05 0.1\nGauge blocks, mm: nothing → 1-9x1"
        );
        assert_eq!(lists::text(&to, Stock::Feelers), "0.05 0.1");
        assert_eq!(lists::lengths(&to, Stock::Blocks).len(), 9);
        undo(&mut to);
        assert_eq!(to, before);
        let bad = text.replace("1-9x1", "1-9");
        open(&mut to, "bad.json", &bad);
        assert_eq!(
            to.get(SAID),
            "bad.json was not opened. “Gauge blocks, mm”: Item 1: The step is missing, as in 0.5-13x0.1."
        );
        forget(&mut to);
        assert_eq!(to, before, "nothing is changed");
    }
}
