//! What the hands do, in words: short for a row, large for a panel, whole
//! sentences beside a drawing.
use super::{count, grouped};
use handturn::divide::{ArmsSet, Leg, Part};
use handturn::head::Sense;

/// A phrase in pieces, each large or small, so that a row can say it in one line
/// and a panel can set its figures large.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Phrase(pub Vec<(String, bool)>);

impl Phrase {
    fn large(mut self, text: impl Into<String>) -> Self {
        self.0.push((text.into(), true));
        self
    }

    fn small(mut self, text: &str) -> Self {
        self.0.push((text.to_owned(), false));
        self
    }

    /// The phrase as one line.
    #[must_use]
    pub fn line(&self) -> String {
        let words: Vec<&str> = self.0.iter().map(|(text, _)| text.as_str()).collect();
        words.join(" ").replace(" ,", ",")
    }
}

/// A move of these legs. `spread` is the other count of holes where the moves of a
/// way differ by one ("15 or 16").
#[must_use]
pub fn phrase(legs: &[Leg], spread: Option<(u32, u32)>) -> Phrase {
    let mut phrase = Phrase::default();
    for (k, leg) in legs.iter().enumerate() {
        if k > 0 {
            phrase = phrase.small(", then");
        }
        phrase = one_leg(phrase, leg, spread.filter(|_| k == 0), legs.len() > 1);
    }
    phrase
}

fn one_leg(phrase: Phrase, leg: &Leg, spread: Option<(u32, u32)>, several: bool) -> Phrase {
    let of = grouped(i64::from(leg.from.of));
    let (one, many) = unit(leg.part);
    let back = leg.sense == Sense::Anticlockwise;
    let opens = match (leg.part, back) {
        (Part::FineDial, true) => "Dial back",
        (Part::FineDial, false) => "Dial on",
        (Part::BackPin, true) => "Back",
        (Part::BackPin, false) => "Forward",
        _ => "",
    };
    let mut phrase = if opens.is_empty() { phrase } else { phrase.large(opens) };
    if let Some((few, lots)) = spread {
        let ring = leg.from.of.max(1);
        let ((a, b), (c, d)) = ((few / ring, few % ring), (lots / ring, lots % ring));
        if a > 0 && a == c {
            phrase = phrase.large(count(a, "turn", "turns")).small("+");
        }
        let (low, high) = if a == c { (b, d) } else { (few, lots) };
        let either = [&low.to_string(), " or ", &high.to_string(), " ", many].concat();
        return phrase.large(either).small("on the").large(of);
    }
    if leg.spaces == 0 {
        return phrase.large(if leg.turns == 0 { "Stay".to_owned() } else { full(leg.turns) });
    }
    if leg.turns > 0 {
        phrase = phrase.large(count(leg.turns, "turn", "turns")).small("+");
    }
    if leg.part == Part::FineDial {
        return phrase.large(leg.spaces.to_string());
    }
    let spaces = if several { leg.spaces.to_string() } else { count(leg.spaces, one, many) };
    phrase.large(spaces).small(if leg.part == Part::Spindle { "of" } else { "on the" }).large(of)
}

/// What stands after the number of a ring in a row.
#[must_use]
pub fn ring(leg: &Leg) -> &'static str {
    match leg.part {
        Part::Pin | Part::BackPin if leg.spaces > 0 => " circle",
        _ => "",
    }
}

/// The ring a leg is on, where its moves differ.
#[must_use]
pub fn on_ring(leg: &Leg) -> String {
    let of = grouped(i64::from(leg.from.of));
    match leg.part {
        Part::Pin | Part::BackPin => "Holes of the ".to_owned() + &of + " circle",
        Part::Spindle => of + " notches",
        Part::Handwheel | Part::FineDial => of + " marks",
    }
}

/// What a leg counts.
#[must_use]
pub fn unit(part: Part) -> (&'static str, &'static str) {
    match part {
        Part::Pin | Part::BackPin => ("hole", "holes"),
        Part::Handwheel | Part::FineDial => ("mark", "marks"),
        Part::Spindle => ("notch", "notches"),
    }
}

/// Whole turns.
#[must_use]
pub fn full(turns: u32) -> String {
    count(turns, "full turn", "full turns")
}

/// Turns and the arms beside the large figures.
#[must_use]
pub fn arms(leg: &Leg) -> String {
    let turns = match leg.turns {
        // A notched plate is not turned by the handle.
        0 if leg.part == Part::Spindle => String::new(),
        0 => "No full turn. ".to_owned(),
        n => full(n) + ". ",
    };
    match (leg.part, leg.arms) {
        (Part::Pin, Some(set)) if set.rest => turns + &arms_to_the_rest(leg, set),
        (Part::Pin, Some(set)) => turns + &shows(set) + ".",
        (Part::Pin, None) if leg.spaces > 0 => {
            turns + "The arms can’t be set to " + &spaces(leg.spaces) + ": count them."
        }
        (Part::Pin, None) if leg.spaces == 0 => {
            "The pin goes back into the hole it came from.".to_owned()
        }
        _ => turns.trim_end().to_owned(),
    }
}

/// The arms in both numbers, always in this form.
#[must_use]
pub fn shows(set: ArmsSet) -> String {
    count(set.show, "hole shows", "holes show")
        + ", counting the one the pin is in ("
        + &spaces(set.spaces)
        + ")"
}

fn spaces(n: u32) -> String {
    count(n, "space", "spaces")
}

fn arms_to_the_rest(leg: &Leg, set: ArmsSet) -> String {
    [
        "The arms can’t be set to ",
        &spaces(leg.spaces),
        ", so set them to the rest of the circle, back from the pin: ",
        &shows(set),
        ". Turn clockwise to the hole at the far arm.",
    ]
    .concat()
}

/// One step of a move of several legs, as an instruction.
#[must_use]
pub fn instruction(leg: &Leg) -> String {
    let of = grouped(i64::from(leg.from.of));
    let turns = if leg.turns > 0 { full(leg.turns) + " and " } else { String::new() };
    let way = sense(leg.sense);
    let to_reading = |what: &str, steps: String, to: &str| {
        [what, &turns, &steps, " ", way, to, &leg.to.number.to_string(), "."].concat()
    };
    match leg.part {
        Part::BackPin => [
            "Back pin out, pin in. Turn handle and plate together ",
            way,
            ", ",
            &turns,
            &count(leg.spaces, "hole", "holes"),
            " of the ",
            &of,
            ", until hole ",
            &leg.to.number.to_string(),
            " comes to the back pin. Back pin in.",
        ]
        .concat(),
        Part::Pin => {
            let arms = leg.arms.map_or_else(String::new, |set| ": ".to_owned() + &shows(set));
            [
                "Pin out. Handle ",
                &turns,
                &count(leg.spaces, "hole", "holes"),
                " ",
                way,
                " on the ",
                &of,
                &arms,
                ". Pin in.",
            ]
            .concat()
        }
        Part::FineDial => to_reading("Fine dial ", count(leg.spaces, "mark", "marks"), ", to "),
        Part::Handwheel => to_reading("Handwheel ", count(leg.spaces, "mark", "marks"), ", to "),
        Part::Spindle => {
            to_reading("Spindle ", count(leg.spaces, "notch", "notches"), ", to notch ")
        }
    }
}

/// A sense as an adverb.
#[must_use]
pub fn sense(sense: Sense) -> &'static str {
    match sense {
        Sense::Clockwise => "clockwise",
        Sense::Anticlockwise => "anticlockwise",
    }
}

/// The sentence of a plate drawing: the same figures as the drawing shows.
#[must_use]
pub fn drawing(leg: &Leg, plate: Option<u8>) -> String {
    let of = grouped(i64::from(leg.from.of));
    let place = plate.map_or_else(String::new, |plate| {
        "Plate ".to_owned() + &(u32::from(plate) + 1).to_string() + ". "
    });
    let what = match leg.part {
        Part::Spindle => "-notch plate",
        Part::Handwheel | Part::FineDial => "-mark dial",
        Part::Pin | Part::BackPin => "-hole circle",
    };
    let arms = leg.arms.map_or_else(String::new, |set| {
        " with sector arms ".to_owned() + &spaces(set.spaces) + " apart"
    });
    let (one, _) = unit(leg.part);
    let turns = if leg.turns > 0 { full(leg.turns) + " and " } else { String::new() };
    [
        &*place,
        &*of,
        what,
        &arms,
        ", ",
        one,
        " ",
        &leg.from.number.to_string(),
        " to ",
        one,
        " ",
        &leg.to.number.to_string(),
        ", ",
        &turns,
        &spaces(leg.spaces),
        " ",
        sense(leg.sense),
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::divide::At;
    use handturn::head::Head;

    fn leg(part: Part, of: u32, turns: u32, spaces: u32) -> Leg {
        let arms = ArmsSet::of(spaces, of, Head::default().arms).filter(|_| part == Part::Pin);
        let sense = if part == Part::BackPin { Sense::Anticlockwise } else { Sense::Clockwise };
        Leg {
            part,
            sense,
            turns,
            spaces,
            from: At { number: 0, of },
            to: At { number: spaces, of },
            arms,
        }
    }

    #[track_caller]
    fn check(legs: &[Leg], spread: Option<(u32, u32)>, wanted: &str) {
        assert_eq!(phrase(legs, spread).line(), wanted);
    }

    #[test]
    fn moves_in_one_line() {
        check(&[leg(Part::Pin, 39, 0, 13)], None, "13 holes on the 39");
        check(&[leg(Part::Pin, 19, 1, 1)], None, "1 turn + 1 hole on the 19");
        check(&[leg(Part::Pin, 15, 5, 0)], None, "5 full turns");
        check(&[leg(Part::Pin, 49, 0, 15)], Some((15, 16)), "15 or 16 holes on the 49");
        check(&[leg(Part::Pin, 49, 1, 3)], Some((52, 53)), "1 turn + 3 or 4 holes on the 49");
        check(
            &[leg(Part::BackPin, 49, 0, 19), leg(Part::Pin, 37, 0, 26)],
            None,
            "Back 19 on the 49, then 26 on the 37",
        );
        check(&[leg(Part::Spindle, 24, 0, 4)], None, "4 notches of 24");
    }

    #[test]
    fn arms_always_in_both_numbers() {
        let says = |leg: Leg, wanted: &str| assert_eq!(arms(&leg), wanted);
        says(
            leg(Part::Pin, 39, 0, 13),
            "No full turn. 14 holes show, counting the one the pin is in (13 spaces).",
        );
        says(
            leg(Part::Pin, 19, 1, 1),
            "1 full turn. 2 holes show, counting the one the pin is in (1 space).",
        );
        says(leg(Part::Pin, 15, 5, 0), "The pin goes back into the hole it came from.");
        let narrow = Leg {
            arms: Some(ArmsSet { spaces: 6, show: 7, rest: true }),
            ..leg(Part::Pin, 39, 0, 33)
        };
        says(
            narrow,
            "No full turn. The arms can’t be set to 33 spaces, so set them to the rest of the circle, back from the pin: 7 holes show, counting the one the pin is in (6 spaces). Turn clockwise to the hole at the far arm.",
        );
    }
}
