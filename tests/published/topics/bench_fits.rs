//! Fits by rules of the shop; bent sheet.
use super::{Outcome, each, must};
use handturn::bench::bend::{Bends, Corner, Sheet, fold};
use handturn::bench::shop_fit::{Rule, allowed};
use handturn::measure::{Angle, Length};
use handturn::number::float;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Allowed {
    rule: String,
    inches: String,
    least: String,
    most: String,
}

pub(crate) fn shop() -> Vec<Outcome> {
    each("shop_fits.csv", |row: &Allowed| (false, within(row)))
}

/// Both ends exactly as printed, in inches; one that is not printed stands empty.
fn within(row: &Allowed) -> Result<(), String> {
    let rule = match &*row.rule {
        "running" => Rule::Running,
        "push" => Rule::Push,
        "drive" => Rule::Drive,
        "force" => Rule::Force,
        "force by inch" => Rule::ForceByInch,
        "shrink" => Rule::Shrink,
        other => return Err(other.into()),
    };
    let diameter = Length::from_inches(fraction(&row.inches)).map_err(|e| e.to_string())?;
    let found = allowed(rule, diameter).map_err(|e| e.to_string())?.play;
    for (found, printed) in [(found.least, &row.least), (found.most, &row.most)] {
        let inches = found.inches().map_err(|e| e.to_string())?;
        let minus = printed.starts_with('-');
        let same = || {
            let size = fraction(printed.trim_start_matches('-'));
            inches == if minus { size.negated() } else { size }
        };
        must(printed.is_empty() || same(), || format!("{inches}"))?;
    }
    Ok(())
}

#[derive(Deserialize)]
struct Strip {
    thickness: String,
    radius: String,
    neutral: String,
    legs: String,
    angles: String,
    printed: String,
}

pub(crate) fn bent() -> Vec<Outcome> {
    each("bent_sheet.csv", |row: &Strip| (false, strip(row)))
}

/// What is printed, in the row's own unit, within half its last place.
fn strip(row: &Strip) -> Result<(), String> {
    let length = |text: &str| Length::from_mm(fraction(text));
    let sheet = Sheet {
        thickness: length(&row.thickness),
        radius: length(&row.radius),
        neutral: fraction(&row.neutral),
    };
    let legs: Vec<Length> = row.legs.split(' ').map(length).collect();
    let angles: Result<Vec<Angle>, _> =
        row.angles.split(' ').map(|text| Angle::from_degrees(fraction(text))).collect();
    let angles = angles.map_err(|e| e.to_string())?;
    let asked = Bends { sheet, legs: &legs, angles: &angles, corner: Corner::Outside };
    let found = fold(&asked).map_err(|e| e.to_string())?;
    // Straight parts: from the end of one bend to the begin of the next.
    let ends = std::iter::once(0.0).chain(found.lines.iter().map(|line| line.ends.value));
    let begins = found.lines.iter().map(|line| line.begins.value).chain([found.flat.value]);
    let mut straight = ends.zip(begins).map(|(from, to)| to - from);
    let first = found.lines.first().ok_or("no bend")?;
    for item in row.printed.split("; ") {
        let (what, text) = item.split_once(' ').ok_or(item)?;
        let value = match what {
            "setback" => first.setback.value,
            "allowance" => first.allowance.value,
            "straight" => straight.next().ok_or("no more legs")?,
            _ => return Err(item.into()),
        };
        let off = (value - float::of(fraction(text))).abs();
        // The handbooks round their factors to two places before they multiply.
        let allowed =
            float::of(half_a_place(text)) + f64::from(u8::from(what == "allowance")) * 0.002;
        must(off <= allowed.max(1e-9), || format!("{item}, not {value}"))?;
    }
    Ok(())
}
