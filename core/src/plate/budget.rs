//! The error budget of a division: what each source makes of it, at the work.
//!
//! Method (derived; the blank's 2e·sin(π/N) and the once-per-turn waves are the
//! geometry of a circle off its centre). Work = handle ÷ ratio, so an error of the
//! handle counts 1/ratio at the work: a hole displaced by d on a circle of radius r,
//! a pin that stands half its play off, a ring of holes e off the shaft (e/r, once a
//! handle turn). Differential: 1/(ratio − gears) for these, ratio/(ratio − gears) for
//! worm and wheel. Direct: no worm, all at full size. Compound: two circles, two pins.
//! Each to first order, which is right to d/r of itself.
//!
//! Each is given as its greatest size, as the greatest difference between neighbours
//! on the work (errors drawn anew count twice; a wave of height a that goes on by s
//! turns from neighbour to neighbour 2a·|sin πs|), and as the root of the mean square
//! of both, by the [`Spread`](super::Spread) of its source. Greatest sizes add; mean
//! squares add, as the sources do not know of each other.
use super::known::Known;
use super::sources::{Source, Sources};
use super::strand::{Cut, Run, Sizes, Strands};
use crate::divide::{Errors, Question, Way};
use crate::error::{Cause, Error, Field};
use crate::head::Head;
use crate::list::List;
use crate::measure::{ARCSEC_PER_TURN, Angle, Length};
use crate::number::{Approx, Fraction, float};

/// What one source makes of a division.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Term {
    /// The source.
    pub source: Source,
    /// Its sizes.
    pub sizes: Sums,
}

/// Sizes of an error, in arc-seconds at the work: see [`arc_mm`] for lengths.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sums {
    /// No position is further off than this.
    pub total: Approx,
    /// No two neighbours differ by more.
    pub adjacent: Approx,
    /// Root mean square of how far positions are off.
    pub rms: Approx,
    /// Root mean square of the difference between neighbours.
    pub adjacent_rms: Approx,
}

/// The whole budget of a division.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Budget {
    /// What the way itself rounds, exact.
    pub rounding: Errors,
    /// What each source makes of it; sources that make nothing are left out.
    pub terms: List<Term, 10>,
    /// All together: greatest sizes added, mean squares added.
    pub sum: Sums,
    /// The source with the greatest total; none where there is no error at all.
    pub dominant: Option<Source>,
}

/// The budget of `question` set by `way` on `head`, at its work diameter.
///
/// # Errors
/// What [`Way::check`] and [`Sources::check`] find; [`Cause::Overflow`].
///
/// ```
/// use handturn::divide::{Order, Parts, Question, answer};
/// use handturn::head::{Head, SET_A, plates_of};
/// use handturn::plate::{Source, Sources, budget};
/// let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
/// let question = Question::Parts(Parts { count: 64, every: 1 });
/// let way = answer::<1>(&question, &head)?.best(Order::Closest).expect("64 is plain").way;
/// let budget = budget(&question, &head, &way, &Sources::default())?;
/// // An exact way rounds nothing. A blank 0.01 mm off centre is more, at its rim of
/// // 76.2 mm, than a worm wheel good to 30″.
/// assert!(budget.rounding.is_none());
/// assert_eq!(budget.dominant, Some(Source::Blank));
/// # Ok::<(), handturn::Error>(())
/// ```
#[doc(alias = "accuracy")]
pub fn budget(
    question: &Question,
    head: &Head,
    way: &Way,
    sources: &Sources,
) -> Result<Budget, Error> {
    let cut = checked(question, head, way, sources)?;
    let strands = cut.strands(head, sources)?;
    summed(&strands, &Known { question: *question, way: *way }, way.errors(question)?)
}

fn checked<'a>(
    question: &Question<'a>,
    head: &Head,
    way: &Way,
    sources: &Sources,
) -> Result<Cut<'a>, Error> {
    way.check(question, head)?;
    sources.check()?;
    Ok(Cut {
        question: *question,
        way: *way,
        diameter: head.work_diameter,
        drilling: Length::from_mm(Fraction::ZERO),
        made: None,
    })
}

/// `strands` added up by source.
pub(super) fn summed(strands: &Strands, known: &Known, rounding: Errors) -> Result<Budget, Error> {
    let mut terms = List::new();
    let positions = known.question.positions();
    let (mut sum, mut dominant, mut greatest) = (Sizes::default(), None, 0.0);
    for source in Source::ALL {
        let mut of_source = Sizes::default();
        for strand in strands.iter().filter(|strand| strand.source == source) {
            of_source = with(of_source, strand.sizes(known)?);
        }
        if of_source.total > greatest {
            (dominant, greatest) = (Some(source), of_source.total);
        }
        if of_source.total > 0.0 {
            let term = Term { source, sizes: sums(of_source, positions) };
            terms.push(term).map_err(|_| Error::new(Field::Source, Cause::TooMany { most: 10 }))?;
            sum = with(sum, of_source);
        }
    }
    Ok(Budget { rounding, terms, sum: sums(sum, positions), dominant })
}

/// Greatest sizes add, mean squares add.
fn with(a: Sizes, b: Sizes) -> Sizes {
    let squares = |a: f64, b: f64| float::sqrt(a * a + b * b);
    Sizes {
        total: a.total + b.total,
        adjacent: a.adjacent + b.adjacent,
        rms: squares(a.rms, b.rms),
        adjacent_rms: squares(a.adjacent_rms, b.adjacent_rms),
    }
}

fn sums(sizes: Sizes, positions: u32) -> Sums {
    let near = |value| near(value, positions);
    Sums {
        total: near(sizes.total),
        adjacent: near(sizes.adjacent),
        rms: near(sizes.rms),
        adjacent_rms: near(sizes.adjacent_rms),
    }
}

/// What came of sums and products of a few dozen numbers, and of sums over all
/// positions at most; none of them below nought.
fn near(value: f64, positions: u32) -> Approx {
    Approx { value, bound: value * (64.0 + f64::from(positions)) * f64::EPSILON }
}

/// `error`, in arc-seconds, as a length along a circle of `diameter`, in millimetres.
#[must_use]
pub fn arc_mm(error: Approx, diameter: Length) -> Approx {
    let scale = float::PI * float::of(diameter.mm()).abs() / of_turn();
    let value = error.value * scale;
    Approx { value, bound: error.bound * scale * 1.001 + value.abs() * 4.0 * f64::EPSILON }
}

fn of_turn() -> f64 {
    float::of(Fraction::whole(ARCSEC_PER_TURN))
}

/// How far one position can be from where it should be as seen from position 0, which
/// is taken as true.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Share {
    /// Which of the parts, from 0 round the work.
    pub part: u32,
    /// What the way rounds there: exact, with its sign.
    pub rounding: Angle,
    /// What each other source can add to it or take away, arc-seconds, in the order of
    /// [`Source`]: waves whose phase is not known as their envelope.
    pub others: List<(Source, Approx), 10>,
    /// All of them together.
    pub most: Approx,
}

/// Hands how far each position can be off, as seen from position 0, to `keep`: one
/// after the other round the work.
///
/// An error drawn anew counts twice here, as position 0 has one too; a wave of height
/// a is felt as 2a·|sin πs| where it has gone on by s turns since.
///
/// # Errors
/// As [`budget()`], and what `keep` returns.
pub fn along(
    question: &Question,
    head: &Head,
    way: &Way,
    sources: &Sources,
    keep: &mut dyn FnMut(Share) -> Result<(), Error>,
) -> Result<(), Error> {
    let cut = checked(question, head, way, sources)?;
    let strands = cut.strands(head, sources)?;
    let handle = cut.handle(head.ratio)?;
    for part in 0..question.positions() {
        let place = way.place(question, way.index_of(question, part))?;
        let mut others: List<(Source, Approx), 10> = List::new();
        let mut most = 0.0;
        for source in Source::ALL {
            let mut size = 0.0;
            for strand in strands.iter().filter(|strand| strand.source == source) {
                size += strand.since_start(part, handle)?;
            }
            most += size;
            if strands.iter().any(|s| s.source == source && !matches!(s.run, Run::Known(_))) {
                // There are no more than ten sources.
                let _ = others.push((source, near(size, 0)));
            }
        }
        keep(Share { part, rounding: place.error()?, others, most: near(most, 0) })?;
    }
    Ok(())
}
