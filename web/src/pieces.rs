//! The pieces screens are built of: one function for each, so that a fraction, a
//! mark or a caution looks and reads the same everywhere.
use crate::fields::Fields;
use crate::owned::lists::Stock;
use crate::words::{self, errors::Said, shop_lists};
use handturn::divide::{Differential, Equation, Errors, Sign, Term, Word};
use handturn::measure::{Length, write::Dms};
use maud::{Markup, html};

/// A fraction set one over the other; it reads "40 over 127".
#[must_use]
pub fn over(num: i64, den: i64) -> Markup {
    html! {
        @if num < 0 { "−" }
        span.fr role="img" aria-label=(num.unsigned_abs().to_string() + " over " + &den.to_string()) {
            i aria-hidden="true" { (num.unsigned_abs()) }
            i aria-hidden="true" { (den) }
        }
    }
}

/// How good an answer is: exact, or within how much.
#[must_use]
pub fn mark(errors: &Errors) -> Markup {
    let within = if errors.is_none() {
        String::new()
    } else {
        "within ".to_owned() + &words::seconds(errors.worst)
    };
    exact_or(errors.is_none(), &within)
}

/// How good an answer is: exact, or `off` by so much.
#[must_use]
pub fn exact_or(exact: bool, off: &str) -> Markup {
    html! {
        @if exact {
            span.mark.ex {
                svg viewBox="0 0 16 16" aria-hidden="true" { path d="M2.5 6.2h11M2.5 10.2h11" {} }
                (words::EXACT)
            }
        } @else {
            span.mark.ap {
                span.vh { (words::APPROXIMATE) }
                svg viewBox="0 0 16 16" aria-hidden="true" { path d="M2 6.2q3-3 6 0t6 0M2 11q3-3 6 0t6 0" {} }
                (off)
            }
        }
    }
}

/// The sign of a caution or an error.
#[must_use]
pub fn sign() -> Markup {
    html! {
        svg viewBox="0 0 24 24" aria-hidden="true" { path d="M12 3l10 18H2zM12 10v5M12 17.3v1.4" {} }
    }
}

/// A caution at the point of use.
#[must_use]
pub fn caution(text: Markup) -> Markup {
    html! { div.caut { (sign()) p { (text) } } }
}

/// The creep check: which way the plate must go, and by how much.
#[must_use]
pub fn before_first_cut(way: &Differential) -> Markup {
    let Ok(angle) = way.plate_per_handle_turn() else { return html! {} };
    let size = Dms { angle: handturn::measure::Angle::from_turns(angle.turns().abs()), places: 1 }
        .to_string();
    let (go, wrong) = if way.follows {
        (words::FORWARD, words::IF_AGAINST)
    } else {
        (words::BACK, words::IF_FOLLOWS)
    };
    caution(html! {
        b { (words::BEFORE_FIRST_CUT) } " " (words::CREEP_CHECK) " "
        b { (go) " " (size) } ". " (wrong) " " (words::FINGERS_OUT)
    })
}

/// What is wrong with a field, with what was typed; `id` ties it to the field.
#[must_use]
pub fn field_error(id: &str, said: &Said) -> Markup {
    html! {
        p.err id=(id) {
            (sign())
            span {
                (said.wrong)
                @if !said.typed.is_empty() { " You typed " b { (said.typed) } "." }
                @if !said.instead.is_empty() { " " (said.instead) }
            }
        }
    }
}

/// A choice of one among a few: `pairs` of value and label, pressed as `does`.
#[must_use]
pub fn segmented(does: &str, name: &str, chosen: &str, pairs: &[(&str, &str)]) -> Markup {
    html! {
        div.seg role="group" aria-label=(name) {
            @for (value, label) in pairs {
                button type="button" data-do=(does) data-value=(value) aria-pressed=(*value == chosen) { (label) }
            }
        }
    }
}

/// A labelled text field.
pub struct Field<'a> {
    /// Its name among the fields, and its id.
    pub name: &'a str,
    /// Its label.
    pub label: &'a str,
    /// What stands in it.
    pub value: &'a str,
    /// Which keys a phone offers: `numeric`, `decimal` or `text`.
    pub keys: &'a str,
    /// What is wrong with it.
    pub error: Option<Said>,
}

/// The attributes every text field shares.
#[must_use]
pub fn input(field: &Field) -> Markup {
    let wrong = field.error.as_ref().map(|_| field.name.to_owned() + "-error");
    html! {
        input id=(field.name) name=(field.name) type="text" inputmode=(field.keys) autocomplete="off"
            autocapitalize="off" spellcheck="false" value=(field.value)
            aria-invalid=[wrong.as_ref().map(|_| "true")] aria-describedby=[wrong];
    }
}

/// A text field with its label above and its error below.
#[must_use]
pub fn field(field: &Field) -> Markup {
    html! {
        div.field {
            label.lab for=(field.name) { (field.label) }
            (input(field))
            (error_of(field))
        }
    }
}

/// The error below a field, if it has one.
#[must_use]
pub fn error_of(field: &Field) -> Markup {
    html! {
        @if let Some(said) = &field.error { (field_error(&(field.name.to_owned() + "-error"), said)) }
    }
}

/// A list typed with `x` for "times", as read: `24 ×2 28`.
#[must_use]
pub fn spaced(typed: &str) -> String {
    typed.replace('x', "×")
}

/// What is owned of these, and the way to each list in the Shop.
#[must_use]
pub fn owned_strip(fields: &Fields, lists: &[Stock]) -> Markup {
    html! {
        div.own role="group" aria-label=(words::OWNED) {
            @for list in lists {
                @let (value, more) = shop_lists::summary(fields, *list);
                button type="button" data-do="own" data-value=(list.name()) {
                    span.lab { (shop_lists::label(*list)) } " " b { (value) } " " span { (more) }
                }
            }
        }
    }
}

/// A worst or neighbouring error in seconds, with its length at the work under it.
#[must_use]
pub fn error_figure(name: &str, angle: handturn::measure::Angle, diameter: Length) -> Markup {
    let (mm, thou) = words::rim(angle, diameter);
    html! {
        div { dt { (name) } dd { (words::seconds(angle)) span.u { (mm) br; (thou) } } }
    }
}

/// Working to check by hand, a line each.
#[must_use]
pub fn working(lines: &[Equation]) -> Markup {
    html! {
        ul.work {
            @for line in lines {
                li {
                    @if let Some(about) = line.about { (opening(about)) " " }
                    @for (k, term) in line.terms.iter().enumerate() { (one_term(honest(*term, line.terms.get(k + 1)))) }
                    @if let Some(remark) = line.remark { " " (closing(remark)) }
                }
            }
        }
    }
}

/// No equals sign stands before an angle that is rounded to be written.
fn honest(term: Term, next: Option<&Term>) -> Term {
    match (term, next) {
        (Term::Sign(Sign::Equals), Some(Term::Angle(angle))) if !words::written_whole(*angle) => {
            Term::Sign(Sign::Nearly)
        }
        _ => term,
    }
}

fn one_term(term: Term) -> Markup {
    let spaced = |sign: &str| html! { " " (sign) " " };
    match term {
        Term::Over(num, den) => over(num, den),
        Term::Whole(number) => html! { (words::grouped(number)) },
        Term::Angle(angle) => html! { span.nb { (words::seconds_or_angle(angle)) } },
        Term::Word(word) => html! { (closing(word)) " " },
        Term::Sign(sign) => match sign {
            Sign::Equals => spaced("="),
            Sign::Nearly => spaced("≈"),
            Sign::Plus => spaced("+"),
            Sign::Minus => spaced("−"),
            Sign::Times => spaced("×"),
            Sign::Over => spaced("÷"),
            Sign::Open => html! { "(" },
            Sign::Close => html! { ")" },
        },
    }
}

/// A word of the working where it opens a line.
fn opening(word: Word) -> String {
    words::working(word) + ":"
}

/// A word of the working elsewhere.
fn closing(word: Word) -> String {
    words::working(word)
}
