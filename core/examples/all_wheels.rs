//! A turn through all that the core knows of teeth and shapes, with the wheels of a clock:
//! slanted teeth and the table's change gears, worm and wheel, bevels, a rack, a ratchet, a
//! keyed shaft, flats, a clock wheel, a cam, a dial with its vernier, and a tape for
//! whoever has no head. Straight teeth are in `a_wheel`, the plate that lacks in `a_plate`.
//!
//! ```text
//! cargo run --example all_wheels
//! ```
//!
//! Fingers out, guard on; the cutter clear before the handle moves. While a helix is cut the
//! clamp stays off. The machine maker's manual and local rules go first.
use handturn::dial::lines::{Slide, stops};
use handturn::dial::vernier::Vernier;
use handturn::divide::MarkKind;
use handturn::gear::cam::{self, Lobe};
use handturn::gear::clock::{self, Clock};
use handturn::gear::flats::{self, Flats};
use handturn::gear::ratchet::{self, Gap, Ratchet};
use handturn::gear::spline::{self, Spline};
use handturn::gear::table::{Geared, Job, Mill, go_on};
use handturn::gear::{Axial, Bevel, Depth, Helical, Rack, Size, Tooth, Worm, WormPair};
use handturn::head::{GEARS, Mounting, gears_of};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::tape::Tape;
use handturn::thread::Hand;
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::train::{Search, Six};
use handturn::{Error, gear::DepthRule};

fn main() -> Result<(), Error> {
    slanted()?;
    worm()?;
    bevel_and_rack()?;
    shapes()?;
    dial()
}

/// `tenths` tenths of a millimetre.
fn mm(tenths: i64) -> Result<Length, Error> {
    Fraction::new(tenths, 10).map(Length::from_mm)
}

fn degrees(degrees: i64) -> Result<Angle, Error> {
    Angle::from_degrees(Fraction::whole(degrees))
}

/// An approximate value to three places.
fn near(value: Approx) -> String {
    format!("{:.3}", value.value)
}

fn slanted() -> Result<(), Error> {
    let tooth = Tooth::default();
    let (helix, face) = (degrees(30)?, mm(200)?);
    let wheel = Helical { teeth: 64, tooth, helix, hand: Hand::Right, face };
    let sizes = wheel.sizes()?;
    println!(
        "64 teeth at 30°: blank {} mm, lead {} mm, cutter for {} teeth.",
        near(sizes.outside_diameter),
        near(sizes.lead),
        near(sizes.virtual_teeth)
    );
    let mill = Mill {
        screw: mm(50)?,
        ratio: Fraction::whole(40),
        gears: gears_of(&GEARS)?,
        mounting: Mounting::default(),
        same_way_cuts: Hand::Right,
    };
    let job = Job::of(&wheel, Geared::Worm, Six::Never);
    let mut search = Search::<1>::new();
    while !go_on(&mut search, &job, &mill, 10_000)? {}
    if let Some(found) = search.best().first() {
        let cuts = mill.cuts(&job, found)?;
        for pair in cuts.chain.pairs() {
            print!("  {} drives {}.", pair.driver, pair.driven);
        }
        println!(
            " Off by {:.0}″, {:.4} mm over the face.",
            cuts.off_arcsec.value, cuts.off_over_face.value
        );
    }
    Ok(())
}

fn worm() -> Result<(), Error> {
    let worm = Worm {
        starts: 1,
        pitch: Axial::Size(Size::Module(mm(10)?)),
        pressure_angle: degrees(20)?,
        rule: DepthRule::Coarse,
        diameter: mm(200)?,
        hand: Hand::Right,
    };
    let wheel = WormPair { worm, teeth: 64, face: mm(120)?, leave: mm(2)? }.wheel()?;
    println!(
        "Worm of 20 mm and a wheel of 64: centres {} mm, throat {} mm, corners {} mm.",
        near(wheel.centre_distance),
        near(wheel.throat_diameter),
        near(wheel.outside_diameter)
    );
    Ok(())
}

fn bevel_and_rack() -> Result<(), Error> {
    let tooth = Tooth::default();
    let (shafts, face) = (degrees(90)?, mm(100)?);
    let pair = Bevel { teeth: [64, 32], tooth, shafts, face, depth: Depth::Parallel }.sizes()?;
    for wheel in pair.wheels {
        println!(
            "Bevel: blank {} mm, pitch angle {}°, cutter for {} teeth.",
            near(wheel.outside_diameter),
            near(wheel.pitch_angle),
            near(wheel.virtual_teeth)
        );
    }
    let division = Length::from_mm(Fraction::new(1, 50)?);
    let rack = Rack { tooth, gaps: 4, dial: Dial { division, reads: Reads::Travel, marks: 250 } };
    for gap in 1..4 {
        let place = rack.place(gap)?;
        println!(
            "Rack: gap {gap} at {} turns and {} marks.",
            place.reading.turns, place.reading.mark
        );
    }
    Ok(())
}

fn shapes() -> Result<(), Error> {
    let click = Ratchet { teeth: 48, outside: mm(400)?, undercut: Angle::ZERO };
    let gap = ratchet::cut(&click, Gap::Land { cutter: degrees(60)?, land: mm(2)? })?;
    println!("Ratchet of 48 on 40 mm, a 60° cutter: {} mm deep.", near(gap.depth));
    let (major, minor, key, cutter) = (mm(300)?, mm(260)?, mm(60)?, mm(40)?);
    let keys = spline::cut(&Spline { keys: 6, major, minor, key, cutter })?;
    println!("Six keys of 6 mm: {} mm deep.", near(keys.depth));
    let square = Flats { sides: 4, across: mm(50)?, stock: Some(mm(65)?), cutter: None };
    if let Some(cut) = flats::flats(&square)?.cut {
        println!("A square of 5 mm on 6.5 mm: {} mm deep.", cut.depth.mm());
    }
    let rule = clock::Rule::Standard;
    let pair = clock::sizes(&Clock { wheel: 64, leaves: 8, module: mm(8)?, rule })?;
    println!("Clock wheel of 64 for a pinion of 8: blank {} mm.", near(pair.wheel.outside));
    let over = degrees(90)?;
    let lobe = Lobe { rise: mm(40)?, over, geared: mm(200)?, face: mm(60)?, raised: None };
    println!("Cam of 4 mm in a quarter: head raised by {}°.", near(cam::lobe(&lobe)?.tilt));
    Ok(())
}

fn dial() -> Result<(), Error> {
    let kinds = [MarkKind { length: mm(60)? }, MarkKind { length: mm(30)? }];
    let slide = Slide { lead: mm(50)?, marks: 250, runs: Runs::Forwards };
    for stop in &stops(&kinds, mm(5)?, &slide)?.ends {
        println!(
            "Dial: a line of {} mm stops at {} turns and {} marks.",
            stop.length.mm(),
            stop.reading.turns,
            stop.reading.mark
        );
    }
    let laid = Vernier::of_parts(360, 12)?.laid()?;
    println!("Vernier to 5′: {} divisions over {} marks.", laid.divisions, laid.over_marks);
    let tape = Tape {
        parts: 127,
        drum: mm(1500)?,
        thickness: mm(1)?,
        stretch_per_mille: Fraction::ZERO,
        thicker: mm(0)?,
    };
    println!("Tape of 127 round 150 mm: {} mm a part.", near(tape.sizes()?.pitch));
    Ok(())
}
