//! The rows on small sums.
use super::stands;
use handturn::bench::fit::{Fit, Measured, read};
use handturn::bench::former::{Bend, Section};
use handturn::bench::tilt::{Rule, Tilt};
use handturn::bench::wire::Stuff;
use handturn::measure::write::{Decimal, rounded};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};

fn um(count: i64) -> Length {
    Length::from_mm(Fraction::new(count, 1000).expect("a length"))
}

fn exact(length: Length) -> String {
    Decimal { value: length.mm(), places: 3 }.to_string()
}

fn about(value: Approx, places: u8) -> String {
    Decimal { value: rounded(value, places).expect("small"), places }.to_string()
}

#[test]
fn the_tilt() {
    let angle = Angle::from_degrees(Fraction::new(3, 2).expect("a half")).expect("an angle");
    let tilt = Tilt { angle, span: um(60_000), rule: Rule::Sine };
    let leaves = [50, 60, 70, 80, 100, 150, 200, 250, 300, 400, 500, 600, 700, 800, 900, 1000];
    let found = tilt.choices(None, &leaves.map(um), 3).expect("leaves");
    let said = found.iter().map(|choice| {
        let pieces: Vec<_> = choice.stack.pieces.iter().map(|&piece| exact(piece)).collect();
        format!(
            "{} makes {}, {}″ off",
            pieces.join(" + "),
            exact(choice.stack.sum),
            about(choice.off_arcsec, 0)
        )
    });
    let said: Vec<_> = said.collect();
    stands(&format!(
        "| a face tilted by 1° 30′, 60 mm from pivot to edge | {} mm under the edge | {} |",
        about(tilt.lift().expect("a lift"), 4),
        said.join("; "),
    ));
}

#[test]
fn the_arbor() {
    let (hole, shaft) = read("H7/g6").expect("a fit");
    let fit = Fit::new(um(12_000), hole, shaft).expect("in the tables");
    let turned = fit.turn_to(Measured::Hole, um(12_024), um(2)).expect("it can be kept");
    assert!(!turned.within);
    stands(&format!(
        "| an arbor for the 38 wheel, 12 H7/g6; its hole measures 12.024, give or take 0.002 | turn to {} to {} mm | play {} to {} as drawn, though the hole is above H7 |",
        exact(turned.keep.least),
        exact(turned.keep.most),
        exact(fit.play.least),
        exact(fit.play.most),
    ));
}

#[test]
fn the_clip() {
    let thick = um(1000);
    let metal = Stuff::Music.metal(thick).expect("a size that is drawn");
    let bend = Bend {
        section: Section::Round,
        thick,
        inside: um(10_000),
        yields: metal.yields,
        modulus: metal.modulus,
    };
    let former = bend.former(&[]).expect("it can be bent");
    let trials: Vec<_> = former.trials.iter().map(|trial| exact(trial.former)).collect();
    stands(&format!(
        "| a ring of music wire 1 mm thick, 10 mm inside once let go | former of {} to {} mm, the middle {} | try {} |",
        about(former.least, 2),
        about(former.most, 2),
        about(former.middle, 2),
        trials.join(", "),
    ));
}
