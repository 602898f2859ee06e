//! What wheels share: the size and the rack of their teeth, where an error of the core
//! belongs in the form, what to divide.
use crate::fields::Fields;
use crate::room::steps::{Form, Given, Wrong, fact};
use crate::words::about;
use crate::words::gear::{self as words, check};
use handturn::gear::telling::{Told, size_of};
use handturn::gear::{Caliper, DepthRule, Size, Tooth};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

/// Teeth and their rack.
pub(super) const TOOTH: [(&str, &str); 10] = [
    ("ge-teeth", "64"),
    ("ge-by", "module"),
    ("ge-module", "1"),
    ("ge-dp", "24"),
    ("ge-outside", "66"),
    ("ge-pressure", "20"),
    ("ge-angle", "20"),
    ("ge-rule", ""),
    ("ge-addendum", "1"),
    ("ge-dedendum", "1.25"),
];

/// Wheels of the demonstration job, a bronze astronomical clock: teeth and module.
const CLOCK: [(&str, &str); 5] =
    [("127", "0.5"), ("223", "0.5"), ("64", "1"), ("38", "1"), ("48", "1")];

/// How the size of a cutter is given.
pub(super) const BY_CUTTER: &[(&str, &str)] = &[("module", words::BY_MODULE), ("dp", words::BY_DP)];

/// The field of the form that an error of the core is about.
pub(super) const fn at(error: Error) -> Wrong {
    let name = match error.field {
        Of::Teeth => "ge-teeth",
        Of::Module => "ge-module",
        Of::DiametralPitch => "ge-dp",
        Of::PressureAngle => "ge-angle",
        Of::Depth => "ge-dedendum",
        Of::Shift => "ge-shift",
        Of::Backlash => "ge-thinned",
        Of::Helix => "ge-helix",
        Of::Face => "ge-face",
        Of::Shafts => "ge-shafts",
        Of::Starts => "ge-starts",
        Of::Diameter => "ge-worm",
        Of::Pitch => "ge-axial",
        _ => "",
    };
    (name, error)
}

/// The rack that `text` asks for.
pub(super) fn tooth(text: Given) -> Result<Tooth, Wrong> {
    let size = match text.get("ge-by") {
        "dp" => Size::DiametralPitch(text.number("ge-dp", Of::DiametralPitch)?),
        "outside" => {
            let told = told(text)?;
            if told.is_module { told.nearest_module.size } else { told.nearest_pitch.size }
        }
        // Of a worm's pitch only the usual rule for its depth is wanted here.
        "pitch" => Size::Module(Length::from_mm(Fraction::ONE)),
        _ => Size::Module(text.length("ge-module", Of::Module)?),
    };
    let degrees = |n, d| Fraction::new(n, d).and_then(Angle::from_degrees).map_err(at);
    let pressure_angle = match text.get("ge-pressure") {
        "14.5" => degrees(29, 2)?,
        "own" => text.angle("ge-angle", Of::PressureAngle)?,
        _ => degrees(20, 1)?,
    };
    let rule = match text.get("ge-rule") {
        "old" => DepthRule::Old,
        "coarse" => DepthRule::Coarse,
        "fine" => DepthRule::Fine,
        "own" => DepthRule::Own {
            addendum: text.number("ge-addendum", Of::Depth)?,
            dedendum: text.number("ge-dedendum", Of::Depth)?,
        },
        _ => DepthRule::usual(size, pressure_angle),
    };
    let tooth = Tooth { size, pressure_angle, rule };
    tooth.check().map_err(at)?;
    Ok(tooth)
}

/// How many teeth.
pub(super) fn teeth(text: Given) -> Result<u32, Wrong> {
    text.count("ge-teeth", bounds::WHEEL_TEETH)
}

/// The size of teeth that a measured wheel has.
fn told(text: Given) -> Result<Told, Wrong> {
    let outside = text.length("ge-outside", Of::Blank)?;
    size_of(outside, teeth(text)?).map_err(|e| ("ge-outside", e))
}

/// A wheel of the job is taken: `64 1` is 64 teeth of module 1.
pub(super) fn take(fields: &mut Fields, wheel: &str) -> &'static str {
    let (teeth, module) = wheel.split_once(' ').unwrap_or((wheel, "1"));
    for (name, value) in [("ge-teeth", teeth), ("ge-by", "module"), ("ge-module", module)] {
        fields.set(name, value);
    }
    "ge-teeth"
}

/// A size that was told is taken: `module 1`, `dp 24`.
pub(super) fn take_size(fields: &mut Fields, size: &str) -> &'static str {
    let (by, value) = size.split_once(' ').unwrap_or(("module", size));
    fields.set("ge-by", by);
    fields.set(if by == "dp" { "ge-dp" } else { "ge-module" }, value);
    "ge-by"
}

/// How the size of a cutter is given. the last one only where a wheel's outside tells it.
pub(super) const SIZES: [(&str, &str); 3] =
    [("module", words::BY_MODULE), ("dp", words::BY_DP), ("outside", words::BY_OUTSIDE)];

/// The nearest module and diametral pitch, each to be taken.
fn nearest(told: &Told) -> Markup {
    html! {
        div.chips.wide role="group" aria-label=(words::NEAREST) {
            @for (k, near) in [&told.nearest_module, &told.nearest_pitch].into_iter().enumerate() {
                button.chip type="button" data-do="ge-size" data-value=(words::size_value(near.size)) aria-pressed=((k == 0) == told.is_module) {
                    (words::size_alone(near.size)) span.in { (words::over_by(near)) }
                }
            }
        }
        p.why { (words::OUTSIDE_WHY) }
    }
}

/// The fields of teeth and size, with the job's wheels; `sizes` are how it can be given.
pub(super) fn size(form: Form, sizes: &[(&str, &str)]) -> Markup {
    let by = form.typed("ge-by");
    let typed = |name| form.typed(name).trim();
    html! {
        div.pair.big-field {
            (form.number("ge-teeth", words::TEETH))
            @match by {
                "dp" => (form.number("ge-dp", words::DP)),
                "outside" => (form.text("ge-outside", words::OUTSIDE_MM)),
                _ => (form.text("ge-module", words::MODULE_MM)),
            }
        }
        (form.choice("ge-by", words::SIZE_BY, sizes))
        @if by == "outside" {
            @if let Ok(told) = told(form.as_typed()) { (nearest(&told)) }
        }
        @if !crate::card::is_open(form.fields) {
            div {
                p.lab id="ge-job" { (words::IN_THIS_JOB) }
                div.chips role="group" aria-labelledby="ge-job" {
                    @for (teeth, module) in CLOCK {
                        button.chip type="button" data-do="ge-wheel" data-value=([teeth, " ", module].concat())
                            aria-pressed=(by == "module" && typed("ge-teeth") == teeth && typed("ge-module") == module) { (teeth) }
                    }
                }
            }
        }
    }
}

/// The size of the teeth, by module or diametral pitch.
pub(super) fn size_by(form: Form) -> Markup {
    html! {
        (form.choice("ge-by", words::SIZE_BY, BY_CUTTER))
        @if form.typed("ge-by") == "dp" { (form.number("ge-dp", words::DP)) } @else { (form.text("ge-module", words::MODULE_MM)) }
    }
}

/// The rule for the depth, folded away while it is the usual one.
pub(super) fn more(form: Form) -> Markup {
    html! {
        details id="ge-more" open[!form.typed("ge-rule").is_empty()] {
            summary { (words::MORE_RULE) }
            div.field-set { (rule(form)) }
        }
    }
}

/// A length that is computed, as an answer: millimetres large, inches beside.
pub(super) fn computed(label: &str, length: Approx) -> Markup {
    html! {
        div {
            p.lab { (label) }
            p.answer-big {
                (about(length.value, 3)) " " small { "mm" }
                span.also { (about(length.value / 25.4, 4)) " " small { "in" } }
            }
        }
    }
}

/// A length that is computed, as a fact: inches under millimetres.
pub(super) fn size_fact(name: &str, length: Approx) -> Markup {
    let [mm, inch] = [about(length.value, 3) + " mm", about(length.value / 25.4, 4) + " in"];
    fact(name, &mm, &[&inch])
}

/// An angle that is computed, as an answer: degrees large, with minutes beside.
pub(super) fn turned(label: &str, degrees: Approx) -> Markup {
    let [decimal, minutes] = words::degrees_two_ways(degrees.value);
    html! {
        div {
            p.lab { (label) }
            p.answer-big { (decimal) span.also { (minutes) } }
        }
    }
}

/// An angle that is computed, as a fact.
pub(super) fn angle_fact(name: &str, degrees: Approx) -> Markup {
    fact(name, &words::degrees(degrees.value), &[])
}

/// What a tooth caliper is set to and reads.
pub(super) fn caliper(caliper: &Caliper) -> Markup {
    html! {
        div.pair {
            (computed(check::SET_HEIGHT, caliper.height))
            (computed(check::READS, caliper.thickness))
        }
    }
}

/// The pressure angle.
pub(super) fn pressure(form: Form) -> Markup {
    html! {
        div {
            p.lab { (words::PRESSURE_ANGLE) }
            (form.choice("ge-pressure", words::PRESSURE_ANGLE, &[
                ("14.5", "14½°"), ("20", "20°"), ("own", words::OWN),
            ]))
        }
        @if form.typed("ge-pressure") == "own" { (form.text("ge-angle", words::OWN_PRESSURE_ANGLE)) }
    }
}

/// The rule for the depth, chosen by hand.
pub(super) fn rule(form: Form) -> Markup {
    html! {
        div {
            p.lab { (words::DEPTH_RULE) }
            (form.choice("ge-rule", words::DEPTH_RULE, &[
                ("", words::RULE_USUAL), ("coarse", words::RULE_COARSE), ("old", words::RULE_OLD),
                ("fine", words::RULE_FINE), ("own", words::OWN),
            ]))
        }
        @if form.typed("ge-rule") == "own" {
            div.pair {
                (form.number("ge-addendum", words::ADDENDUM))
                (form.number("ge-dedendum", words::DEDENDUM))
            }
        }
    }
}

/// Hands what is to be divided over to Divide.
pub(super) fn divide(parts: u32) -> Markup {
    html! {
        div.acts {
            button.btn.go type="button" data-do="divide-n" data-value=(parts) { (words::divide_it(parts)) }
        }
    }
}
