//! Divide: equal parts in, the turns of the handle out.
use handturn::number::Fraction;
use handturn::{Error, bounds};
use maud::{Markup, html};

/// What stands in the fields, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Form {
    /// Equal parts in one turn.
    pub parts: String,
}

/// The room as markup.
pub fn screen(form: &Form) -> Markup {
    html! {
        main id="divide" {
            h1 { "Divide" }
            label for="parts" { "Equal parts in one turn" }
            input id="parts" name="parts" type="text" inputmode="numeric" autocomplete="off" value=(form.parts);
            h2 id="answer" aria-live="polite" {
                @if let Ok(parts) = form.parts.trim().parse() {
                    @match handle_turns(parts) {
                        Ok(turns) => { (turns.num()) "/" (turns.den()) " of a handle turn a part at 40 : 1" }
                        Err(_) => { "Parts must be a whole number from " (bounds::DIVISIONS.least) " to " (bounds::DIVISIONS.greatest) "." }
                    }
                }
            }
        }
    }
}

fn handle_turns(parts: i64) -> Result<Fraction, Error> {
    Fraction::whole(40).over(bounds::DIVISIONS.check(parts)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(parts: &str, wanted: &str) {
        let markup = screen(&Form { parts: parts.to_owned() }).into_string();
        assert!(markup.contains(wanted), "{markup}");
    }

    #[test]
    fn rows() {
        check("127", "40/127 of a handle turn");
        check("64", "5/8 of a handle turn");
        check("1", "from 2 to 10000");
        check("\"><script>", "value=\"&quot;&gt;&lt;script&gt;\"");
    }
}
