//! How a board keeps the place: one way of each kind, nothing on a heap, every
//! value of fixed size. `main` stands in for a board's loop: pulses of an
//! encoder on the handle come in, and the display is told what to do.
//!
//! Everything but `main` and its `println!` builds without the standard library.
use core::fmt::{self, Display};
use handturn::Error;
use handturn::divide::{Order, Parts, Question, answer};
use handturn::handle::{Approach, Counter, Distance, Lines};
use handturn::head::{Head, SET_B, Sense, plates_of};
use handturn::number::Fraction;
use handturn::run::{Confirm, Encoder, Phase, Plan, Pressed, Round, State};

/// The clock's 48 wheel.
const QUESTION: Question = Question::Parts(Parts { count: 48, every: 1 });

/// The best plain setting for a head with plates, room for one way of a kind.
fn with_plates() -> Result<Option<(u32, u32, u32)>, Error> {
    let head = Head { plates: plates_of(&SET_B)?, ..Head::default() };
    let answer = answer::<1>(&QUESTION, &head)?;
    let Some(best) = answer.best(Order::Quickest) else { return Ok(None) };
    let step = best.way.step(&QUESTION, 0)?;
    Ok(step.legs.first().map(|leg| (leg.turns, leg.spaces, leg.from.of)))
}

/// An encoder of 600 lines on the handle of a 40 : 1 head: 2,400 counts a turn.
fn encoder() -> Result<Encoder, Error> {
    let slack = Fraction::new(1, 10)?;
    let ratio = Fraction::whole(40);
    let encoder = Encoder { ratio, per_turn: 2_400, side: Sense::Clockwise, slack, window: 1 };
    encoder.check()?;
    Ok(encoder)
}

fn plan(encoder: &Encoder) -> Plan<'static> {
    Plan {
        question: QUESTION,
        way: encoder.way(),
        rounds: &[Round::Cut],
        confirm: Confirm::TwoStage,
        slack: encoder.slack,
        dial_slack: Fraction::ZERO,
        work_turns: Sense::Clockwise,
        degree_ring: None,
    }
}

/// What the display says.
enum Screen {
    Cut(u32),
    Turn(Distance),
    Back(Distance),
    OnIt,
    /// The count can't be vouched for: no number is shown.
    Lost,
    Closed,
}

impl Display for Screen {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            Self::Cut(position) => write!(f, "clamp, then cut {position}"),
            Self::Turn(way) => write!(f, "turn on: {} turns + {}", way.turns, way.counts),
            Self::Back(way) => write!(f, "went past: back {} turns + {}", way.turns, way.counts),
            Self::OnIt => write!(f, "on it"),
            Self::Lost => write!(f, "count lost: find a reference"),
            Self::Closed => write!(f, "closed"),
        }
    }
}

/// The board's whole memory of a run.
struct Readout {
    encoder: Encoder,
    plan: Plan<'static>,
    state: State,
    counter: Counter,
    approach: Approach,
}

impl Readout {
    fn start() -> Result<Self, Error> {
        let encoder = encoder()?;
        let counter = Counter::new(Lines { a: false, b: false });
        let plan = plan(&encoder);
        Ok(Self { encoder, plan, state: State::START, counter, approach: Approach::On })
    }

    /// Called at every edge of the encoder; no arithmetic to speak of.
    fn edge(&mut self, lines: Lines) {
        self.counter = self.counter.sample(lines);
    }

    /// Called as often as the display can show it.
    fn look(&mut self) -> Result<Screen, Error> {
        let Some(count) = self.counter.count() else { return Ok(Screen::Lost) };
        match self.state.phase(&self.plan) {
            Phase::First | Phase::ToCut => {
                return Ok(Screen::Cut(self.state.index().saturating_add(1)));
            }
            Phase::Closed => return Ok(Screen::Closed),
            Phase::Cut | Phase::Moving { .. } | Phase::Closing { .. } => {}
        }
        let next = self.state.index().saturating_add(1);
        let aim = self.encoder.aim(&self.plan.question, next)?;
        self.approach = self.approach.next(&aim, count);
        Ok(match self.approach {
            Approach::Up(way) => Screen::Turn(way),
            Approach::On => Screen::OnIt,
            Approach::Back(way) => Screen::Back(way),
        })
    }

    /// The confirm button; false asks to press again.
    fn confirm(&mut self, at_ms: u64) -> Result<bool, Error> {
        let Some(event) = self.state.next(&self.plan, at_ms)? else { return Ok(true) };
        // A board writes `event` (or the place) to its memory chip here.
        match self.state.press(&self.plan, event)? {
            Pressed::Counted(state) => self.state = state,
            Pressed::AskAgain => return Ok(false),
        }
        Ok(true)
    }
}

/// Turns the handle by `counts`, edge by edge.
fn turn(readout: &mut Readout, phase: &mut usize, counts: i32) {
    const CYCLE: [(bool, bool); 4] = [(false, false), (true, false), (true, true), (false, true)];
    for _ in 0..counts.unsigned_abs() {
        *phase = phase.wrapping_add(if counts > 0 { 1 } else { 3 }) & 3;
        if let Some(&(a, b)) = CYCLE.get(*phase) {
            readout.edge(Lines { a, b });
        }
    }
}

fn main() -> Result<(), Error> {
    if let Some((turns, holes, circle)) = with_plates()? {
        println!("with plates: {turns} turns + {holes} holes on the {circle}");
    }
    println!("a run takes {} bytes", size_of::<Readout>());
    let (mut readout, mut phase) = (Readout::start()?, 0);
    println!("{}", readout.look()?);
    println!("counted: {}", readout.confirm(0)?);
    println!("{}", readout.look()?);
    for counts in [1_990, 15, -1_205, 1_200] {
        turn(&mut readout, &mut phase, counts);
        println!("turned {counts}: {}", readout.look()?);
    }
    println!("counted: {}", readout.confirm(200)?);
    println!("counted: {}", readout.confirm(9_000)?);
    println!("{}", readout.look()?);
    readout.edge(Lines { a: true, b: true });
    println!("after a double step: {}", readout.look()?);
    Ok(())
}
