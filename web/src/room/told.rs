//! What an answer says, read back out of the markup that shows it: so the card says what
//! its room says, in the same words and drawings, and a room need not say it twice.
//!
//! The markup is this page's own, made by `maud`: closed in order, escaped, attributes
//! in double quotes. Buttons, fields and asides are passed over.
use maud::{Markup, PreEscaped};

/// An answer in force, as it goes on the card.
#[derive(Clone, Debug)]
pub struct Entry {
    /// What it is about.
    pub title: String,
    /// Its figures, a line each.
    pub lines: Vec<String>,
    /// What to mind while doing it.
    pub cautions: Vec<String>,
    /// How many parts are cut, where it is a division.
    pub parts: Option<u32>,
    /// Its drawings.
    pub drawing: Markup,
    /// Its working, to be checked by hand.
    pub working: Markup,
}

/// Lines of one answer; what is longer says how many more there are.
const MOST: usize = 80;

/// What an element does with the text in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Means {
    /// The text is part of what stands round it.
    Inline,
    /// It is passed over.
    Nothing,
    /// It names what comes next.
    Label,
    /// It stands over what follows in the same place.
    Heading,
    /// It is a line, or goes on with the line before.
    Line { on: bool },
    /// A cell of a row.
    Cell,
    /// The heading of a column.
    Head,
    /// A caution.
    Caution,
}

/// An element that is open: its name, its classes, what it means.
type Open<'t> = Vec<(&'t str, &'t str, Means)>;

#[derive(Default)]
struct Reader {
    lines: Vec<String>,
    cautions: Vec<String>,
    /// What the next line is about.
    label: String,
    /// What stands over the next lines, and how deep it stands.
    heading: Option<(String, usize)>,
    heads: Vec<String>,
    cells: Vec<String>,
    text: String,
}

impl Entry {
    /// The answer that `markup` shows.
    pub(super) fn read(title: String, parts: Option<u32>, markup: &Markup) -> Self {
        let mut rest = markup.0.as_str();
        let (mut reader, mut open) = (Reader::default(), Open::new());
        let (mut drawing, mut working) = (String::new(), String::new());
        while let Some((text, tag)) = rest.split_once('<') {
            if !is_hidden(&open) {
                reader.text.push_str(text);
            }
            let (inside, after) = tag.split_once('>').unwrap_or((tag, ""));
            rest = after;
            if inside.starts_with('/') {
                if let Some((_, class, means)) = open.pop() {
                    reader.close(&open, class, means);
                }
                continue;
            }
            let (name, attributes) = inside.split_once(' ').unwrap_or((inside, ""));
            if matches!(name, "input" | "br") {
                reader.text.push_str(if name == "br" { ", " } else { "" });
                continue;
            }
            let class = attributes.split_once("class=\"").map_or("", |(_, rest)| rest);
            let class = class.split_once('"').map_or("", |(class, _)| class);
            let hidden = is_hidden(&open);
            let (end, into) = match name {
                "figure" if !hidden => ("</figure>", &mut drawing),
                "ul" if class == "work" => ("</ul>", &mut working),
                "ol" if class == "work" => ("</ol>", &mut working),
                _ => {
                    let means = if hidden { Means::Nothing } else { means(name, class, &open) };
                    reader.open(means, name, class);
                    open.push((name, class, means));
                    continue;
                }
            };
            // Taken whole, tags and all, as it was escaped when it was made.
            let length = rest.find(end).map_or(rest.len(), |at| at + end.len());
            let (whole, after) = rest.split_at(length);
            into.extend(["<", inside, ">", whole]);
            rest = after;
        }
        let Reader { mut lines, cautions, .. } = reader;
        if let Some(more) = lines.len().checked_sub(MOST).filter(|more| *more > 0) {
            lines.truncate(MOST);
            lines.push(crate::words::card::more_lines(more));
        }
        let [drawing, working] = [drawing, working].map(PreEscaped);
        Self { title, lines, cautions, parts, drawing, working }
    }
}

fn is_hidden(open: &Open) -> bool {
    open.iter().any(|(.., means)| *means == Means::Nothing)
}

fn means(name: &str, class: &str, open: &Open) -> Means {
    let within =
        |wanted: &str| open.iter().any(|(_, class, _)| class.split(' ').any(|one| one == wanted));
    let passed_over = |class: &str| match class {
        "seg" | "chips" | "field" | "filled" | "tabs" | "err" | "next" | "putting" => true,
        // Beside what is to be done, what is said under it belongs to it.
        "why" => !within("do"),
        _ => false,
    };
    if class.split(' ').any(passed_over) {
        return Means::Nothing;
    }
    match name {
        "h2" if within("answer-frame") => Means::Line { on: false },
        "details" | "button" | "label" | "summary" | "h2" | "svg" | "caption" | "textarea" => {
            Means::Nothing
        }
        "h3" if !within("answer-frame") => Means::Heading,
        "dt" => Means::Label,
        "p" | "span" if class == "lab" => Means::Label,
        _ if within("caut") => Means::Inline,
        "div" if class == "caut" => Means::Caution,
        "p" | "li" | "dd" | "tr" | "h3" => Means::Line { on: class == "answer-mid" },
        "th" if open.iter().any(|(name, ..)| *name == "thead") => Means::Head,
        "th" => Means::Label,
        "td" => Means::Cell,
        _ => Means::Inline,
    }
}

impl Reader {
    fn open(&mut self, means: Means, name: &str, class: &str) {
        // The second figure of a fact is set apart.
        let apart =
            matches!(class, "in" | "also" | "step") || class == "u" && !self.label.is_empty();
        match means {
            Means::Inline if name == "table" => self.heads.clear(),
            Means::Inline if name == "span" => self.text.push_str(if apart { ", " } else { " " }),
            Means::Inline | Means::Nothing => {}
            _ => self.text.clear(),
        }
    }

    fn close(&mut self, open: &Open, class: &str, means: Means) {
        match means {
            Means::Inline if class == "nr" => self.text.push_str(": "),
            Means::Label => self.label = self.take(),
            Means::Heading => self.heading = Some((self.take(), open.len())),
            Means::Head => {
                let head = self.take();
                self.heads.push(head);
            }
            Means::Cell => {
                let cell = self.take();
                self.cells.push(cell);
            }
            Means::Caution => {
                let text = self.take();
                self.cautions.push(text);
            }
            // A row of headings is no line.
            Means::Line { on } if open.iter().all(|(name, ..)| *name != "thead") => self.line(on),
            _ => {}
        }
        if self.heading.as_ref().is_some_and(|(_, depth)| open.len() < *depth) {
            self.heading = None;
        }
    }

    /// The text so far, as one reads it.
    fn take(&mut self) -> String {
        let text = std::mem::take(&mut self.text);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let plain = [
            (" ,", ","),
            (" :", ":"),
            ("( ", "("),
            ("&lt;", "<"),
            ("&gt;", ">"),
            ("&quot;", "\""),
            ("&amp;", "&"),
        ];
        let text = plain.into_iter().fold(text, |text, (from, to)| text.replace(from, to));
        text.trim_matches([',', ' ', '\u{200b}']).to_owned()
    }

    fn line(&mut self, on: bool) {
        let mut text = self.take();
        if !self.cells.is_empty() {
            text = self.row();
        }
        let label = std::mem::take(&mut self.label);
        if text.is_empty() {
            return;
        }
        if let Some((heading, _)) = self.heading.take() {
            self.lines.push([&*heading, ":"].concat());
        }
        match self.lines.last_mut() {
            Some(before) if on => before.extend([", ", &text]),
            _ if label.is_empty() => self.lines.push(text),
            _ => self.lines.push([&*label, ": ", &text].concat()),
        }
    }

    /// The cells of a row, each under its heading; the first heading goes to the row's own name.
    fn row(&mut self) -> String {
        let mut heads = self.heads.iter().map(String::as_str);
        if let Some(first) = heads.next().filter(|head| !head.is_empty()) {
            let number = self.label.starts_with(|c: char| c.is_ascii_digit());
            self.label = [first, if number { " " } else { ", " }, &self.label].concat();
        }
        let mut told = Vec::new();
        for cell in std::mem::take(&mut self.cells) {
            let head = heads.next().unwrap_or("");
            if !cell.is_empty() {
                told.push([head, if head.is_empty() { "" } else { " " }, &cell].concat());
            }
        }
        told.join("; ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::Fields;
    use crate::room::{gear, thread};
    use maud::html;

    #[test]
    fn figures_facts_and_rows_become_lines_and_asides_do_not() {
        let markup = html! {
            h3 { "By hand" }
            div {
                h3 { "First wheel" }
                p.lab { "Turn to" }
                p.answer-big { "66.000 " small { "mm" } span.also { "2.5984 " small { "in" } } }
                p.why { "An aside" }
                dl.facts { div { dt { "Root" } dd { b { "61.5 mm" } span.in { "2.42 in" } } } }
            }
            table {
                thead { tr { th { "Screw" } th { "Max" } th { "Min" } } }
                tbody { tr { th { "Outside" } td { "5.978" } td { "5.838 <" } } }
            }
            table {
                thead { tr { th { "Gap" } th { "Turns" } th { "Off" } } }
                tbody { tr { th { "12" } td { "3" } td { "" } } }
            }
            div.field { label { "Stock" } input name="a"; }
            button { "Press" }
            div.caut { svg { path {} } p { b { "Care:" } " fingers & guard." } }
            figure { svg { circle r="1" {} } figcaption { "To scale" } }
            details { summary { "More" } ul.work { li { "1 + 1" } } p { "hidden" } }
        };
        let entry = Entry::read("Title".to_owned(), None, &markup);
        assert_eq!(
            entry.lines,
            [
                "First wheel:",
                "Turn to: 66.000 mm, 2.5984 in",
                "Root: 61.5 mm, 2.42 in",
                "Screw, Outside: Max 5.978; Min 5.838 <",
                "Gap 12: Turns 3",
            ]
        );
        assert_eq!(entry.cautions, ["Care: fingers & guard."]);
        assert_eq!(
            entry.drawing.0,
            "<figure><svg><circle r=\"1\"></circle></svg><figcaption>To scale</figcaption></figure>"
        );
        assert_eq!(entry.working.0, "<ul class=\"work\"><li>1 + 1</li></ul>");
    }

    #[test]
    fn a_long_answer_says_how_much_is_left_out() {
        let entry =
            Entry::read(String::new(), None, &html! { @for k in 0..MOST + 3 { p { (k) } } });
        assert_eq!(
            (entry.lines.len(), entry.lines.last().unwrap().as_str()),
            (MOST + 1, "and 3 more lines in its room")
        );
    }

    #[track_caller]
    fn check(
        fields: &[(&str, &str)],
        entry: fn(&Fields) -> Option<Entry>,
        title: &str,
        lines: &[&str],
        cautions: &[&str],
    ) {
        let mut all = Fields::default();
        for (name, value) in fields {
            all.set(name, value);
        }
        let entry = entry(&all).unwrap();
        assert_eq!(entry.title, title);
        assert!(entry.lines.iter().all(|line| !line.contains('<') && !line.is_empty()));
        for line in lines {
            assert!(
                entry.lines.iter().any(|found| found == line),
                "{line} not in {:#?}",
                entry.lines
            );
        }
        assert_eq!(entry.cautions, cautions);
    }

    const CUT: &str = "Cutter clear of the work before the handle moves. Clamp on to cut, off to move. Fingers out, guard on. The machine maker’s manual and local rules go first.";

    #[test]
    fn threads_and_wheels_say_what_their_rooms_say() {
        check(
            &[],
            thread::entry,
            "M6 × 0.75: Size it",
            &[
                "Turn the blank to: 5.908 mm, 0.2326 in",
                "Screw, 6g, Outside: Max 5.978, 0.2354 in; Min 5.838, 0.2298 in",
                "Tapping drill you own: 5.3 mm",
            ],
            &["Die under power: slowest speed; the holder must slip, not your hand."],
        );
        check(
            &[("th-tab", "cut")],
            thread::entry,
            "M6 × 0.75: Cut it",
            &[
                "1: 0.20, 7.9 thou, +0.20",
                "S: 0.58, spring pass, +0.00",
                "Touch on at: 5.908 mm, 0.2326 in",
            ],
            &[],
        );
        check(
            &[("th-tab", "gear")],
            thread::entry,
            "M6 × 0.75: Gear it",
            &["Approximate, +3457 ppm", "20 drives 45 40 drives 75"],
            &["Fingers out, guard on."],
        );
        check(
            &[("ge-tab", "depth")],
            gear::entry,
            "64 teeth, module 1 (25.4 DP), 20°: Depth",
            &["Whole depth: 2.250 mm, 0.0886 in"],
            &[CUT],
        );
        check(
            &[("ge-kind", "cone")],
            gear::entry,
            "64 and 32 teeth, module 1 (25.4 DP), shafts 90°: Blank",
            &["Turn to: 82.783 mm, 3.2592 in", "32 teeth:", "Turn to: 42.733 mm, 1.6824 in"],
            &[],
        );
    }

    /// Every step of every wheel gives something to write down, and a drawing that closes.
    #[test]
    fn no_step_is_empty() {
        let mut fields = Fields::default();
        for kind in [
            "straight", "slanted", "worm", "cone", "bar", "ratchet", "spline", "flats", "clock",
            "cam",
        ] {
            fields.set("ge-kind", kind);
            for step in ["blank", "cutter", "depth", "check"] {
                fields.set("ge-tab", step);
                let entry = gear::entry(&fields).unwrap();
                assert!(!entry.lines.is_empty(), "{kind} {step}");
                assert_eq!(
                    entry.drawing.0.matches("<figure").count(),
                    entry.drawing.0.matches("</figure>").count()
                );
                assert_eq!(
                    entry.parts.is_some(),
                    step == "depth" && !matches!(kind, "cone" | "bar" | "cam"),
                    "{kind} {step}"
                );
            }
        }
    }
}
