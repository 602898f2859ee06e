//! The readout's states: what the handle does and thumbs press goes in, what
//! is to be kept comes out. Nothing counts as confirmed before it is kept.
use crate::buttons::Press;
use crate::edges::{Edges, Sample};
use crate::entry::Entry;
use crate::job::{Job, Refused};
use crate::record::{Place, Record};
use crate::settings::{Item, Settings};
use crate::signal::{Signal, Sound};
use crate::view::{Choice, Note, Position, View, Way};
use handturn::handle::Approach;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::run::{Confirm, Phase, RingSeen, Seen, State};

/// How the program came to start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// The power came.
    Power,
    /// The watchdog found the program stuck.
    Watchdog,
}

/// How long a note stays, in milliseconds.
const NOTE_MS: u64 = 1_500;

/// How far the count may go: beyond half the range of the raw count it could wrap.
const FARTHEST: i32 = i32::MAX / 2;

/// Parts up to which a ring reading is compared with every position: more would
/// keep the loop waiting.
const RING_PARTS: u32 = 400;

/// Which screen is up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Screen {
    Believe,
    Restarted,
    MemoryFault,
    Setup { draft: Settings, item: Item },
    Number { draft: Settings, item: Item, entry: Entry },
    SetupErrors { draft: Settings },
    Begin { draft: Settings },
    Run,
    Menu { choice: Choice },
    RunErrors,
    GoTo { entry: Entry },
    Reference { index: u32, ring: Option<u16>, nth: u16 },
    NoneFits,
    Ring { entry: Entry },
}

/// What waits for the memory chip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Pending {
    job: Job,
    /// The raw count of the run's first position.
    base: i32,
}

/// The readout.
pub struct Readout {
    settings: Settings,
    /// The run; its place is what the journal holds.
    job: Option<Job>,
    /// The raw count of the run's first position; none while the count is lost.
    base: Option<i32>,
    /// Whether a double step was seen that no reference has healed.
    flagged: bool,
    screen: Screen,
    pending: Option<Pending>,
    /// Whether the journal is open.
    kept: bool,
    /// Whether a person chose to go on without one.
    unkept: bool,
    note: Option<(Note, u64)>,
    signal: Signal,
}

/// What the readout wants of its surroundings.
#[expect(clippy::large_enum_variant, reason = "there is no heap to put the record on")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// Keep this, then say whether it is kept.
    Keep(Record),
    /// Open the journal again.
    Reopen,
}

impl Readout {
    /// The readout after its start, with what the journal holds; `None` outside
    /// for a memory chip that does not answer.
    #[must_use]
    pub fn new(start: Start, kept: Option<Option<Record>>) -> Self {
        let mut readout = Self {
            settings: Settings::default(),
            job: None,
            base: None,
            flagged: false,
            screen: Screen::MemoryFault,
            pending: None,
            kept: false,
            unkept: false,
            note: None,
            signal: Signal::default(),
        };
        if let Some(record) = kept {
            readout.opened(start, record);
        }
        readout
    }

    /// The journal is open and holds this.
    pub fn opened(&mut self, start: Start, record: Option<Record>) {
        self.kept = true;
        self.settings = record.map_or_else(Settings::default, |record| record.settings);
        let place = record.and_then(|record| record.place);
        self.job = place.and_then(|place| Job::at(self.settings, place, place.count).ok());
        self.screen = match (self.job, start) {
            (None, _) => Screen::Setup { draft: self.settings, item: Item::Parts },
            (Some(_), Start::Power) => Screen::Believe,
            (Some(_), Start::Watchdog) => Screen::Restarted,
        };
    }

    /// Where the handle stands, from the run's first position; none while the
    /// count is lost.
    fn count(&self, sample: Sample) -> Option<i32> {
        let count = sample.raw.wrapping_sub(self.base?);
        (!sample.lost && count.unsigned_abs() <= FARTHEST.unsigned_abs()).then_some(count)
    }

    /// One turn of the loop.
    #[inline(never)]
    pub fn turn(
        &mut self,
        now_ms: u64,
        edges: &mut impl Edges,
        press: Option<Press>,
    ) -> Option<Wish> {
        if self.note.is_some_and(|(_, until)| now_ms >= until) {
            self.note = None;
        }
        let sample = edges.read();
        self.flagged = sample.lost;
        let count = self.count(sample);
        self.watch(now_ms, count);
        let press = press?;
        self.note = None;
        match self.screen {
            Screen::Believe => self.believe(press, edges),
            Screen::Restarted => {
                self.ask_reference();
                None
            }
            Screen::MemoryFault => self.memory_fault(press),
            Screen::Setup { draft, item } => self.setup(press, draft, item, now_ms),
            Screen::Number { draft, item, entry } => self.number(press, draft, item, entry, now_ms),
            Screen::SetupErrors { draft } => {
                self.screen = Screen::Setup { draft, item: Item::Errors };
                None
            }
            Screen::Begin { draft } => self.begin(press, draft, edges),
            Screen::Run => self.run(press, count, now_ms),
            Screen::Menu { choice } => self.menu(press, choice, count, now_ms),
            Screen::RunErrors => {
                self.screen = Screen::Run;
                None
            }
            Screen::GoTo { entry } => self.go_to(press, entry, count, now_ms),
            Screen::Reference { index, ring, nth } => {
                self.reference(press, index, ring, nth, now_ms, edges)
            }
            Screen::NoneFits => {
                self.ask_reference();
                None
            }
            Screen::Ring { entry } => self.ring(press, entry, now_ms),
        }
    }

    /// Whether what was wished for is kept.
    pub fn stored(&mut self, kept: bool, now_ms: u64) {
        if kept {
            self.adopt();
        } else {
            self.screen = Screen::MemoryFault;
            self.signal.play(Sound::Alarm, now_ms);
        }
    }

    /// What waited counts now.
    fn adopt(&mut self) {
        if let Some(Pending { job, base }) = self.pending.take() {
            (self.settings, self.job) = (*job.settings(), Some(job));
            self.base = (!self.flagged).then_some(base);
            self.screen = Screen::Run;
        }
    }

    /// The handle has moved: the approach follows it, whatever screen is up.
    fn watch(&mut self, now_ms: u64, count: Option<i32>) {
        let Some(job) = &mut self.job else { return };
        let Some(count) = count else {
            if self.base.take().is_some() {
                self.pending = None;
                self.screen = Screen::Run;
                self.signal.play(Sound::Alarm, now_ms);
            }
            return;
        };
        let before = job.approach();
        job.sees(count);
        if self.screen != Screen::Run || job.phase() == Phase::Closed {
            return;
        }
        match (before, job.approach()) {
            (Approach::Up(_), Approach::On) => self.signal.play(Sound::On, now_ms),
            (Approach::Up(_) | Approach::On, Approach::Back(_)) => {
                self.signal.play(Sound::Past, now_ms);
            }
            _ => {}
        }
    }

    /// Asks for `job` to be kept; it counts once it is.
    fn keep(&mut self, job: Job, base: i32) -> Option<Wish> {
        self.pending = Some(Pending { job, base });
        if self.unkept {
            self.adopt();
            return None;
        }
        Some(Wish::Keep(job.record()))
    }

    fn say(&mut self, note: Note, now_ms: u64) {
        self.note = Some((note, now_ms.saturating_add(NOTE_MS)));
    }

    fn refuse(&mut self, refused: Refused, now_ms: u64) {
        let note = match refused {
            Refused::NotOn => Note::NotOn,
            Refused::TooSoon => Note::TooSoon,
            Refused::NotNow => Note::NotNow,
        };
        self.say(note, now_ms);
    }

    /// Tells the counter that the handle stands at `count` now.
    fn set(&mut self, edges: &mut impl Edges, count: i32) -> i32 {
        edges.rearm();
        self.flagged = false;
        edges.read().raw.wrapping_sub(count)
    }

    fn believe(&mut self, press: Press, edges: &mut impl Edges) -> Option<Wish> {
        let job = self.job?;
        match press {
            // Looked at, and it stands there still.
            Press::Next => {
                let base = self.set(edges, job.count());
                let state = *job.state();
                let place = Place { state, count: job.count() };
                let job = Job::at(*job.settings(), place, job.count()).ok()?;
                self.keep(job, base)
            }
            Press::Back => {
                self.ask_reference();
                None
            }
            _ => None,
        }
    }

    fn memory_fault(&mut self, press: Press) -> Option<Wish> {
        match (press, self.pending) {
            (Press::Next, Some(Pending { job, .. })) => Some(Wish::Keep(job.record())),
            (Press::Next, None) if !self.kept => Some(Wish::Reopen),
            // On without a journal, and every screen of the run says so.
            (Press::LongNext, pending) => {
                self.unkept = true;
                match pending {
                    Some(_) => self.adopt(),
                    None => self.screen = Screen::Setup { draft: self.settings, item: Item::Parts },
                }
                None
            }
            _ => None,
        }
    }

    fn setup(&mut self, press: Press, draft: Settings, item: Item, now_ms: u64) -> Option<Wish> {
        match press {
            Press::Back => {
                self.screen = Screen::Setup { draft, item: beside(&Item::ALL, item, false) }
            }
            Press::Menu => {
                self.screen = Screen::Setup { draft, item: beside(&Item::ALL, item, true) }
            }
            Press::Next => match item {
                Item::Begin => match draft.check() {
                    Ok(()) => self.screen = Screen::Begin { draft },
                    Err(error) => self.say(Note::Refused(error), now_ms),
                },
                Item::Errors => self.screen = Screen::SetupErrors { draft },
                item => match item.digits() {
                    Some(digits) => {
                        let entry = Entry::new(draft.number(item), digits);
                        self.screen = Screen::Number { draft, item, entry };
                    }
                    None => self.screen = Screen::Setup { draft: draft.turned_over(item), item },
                },
            },
            Press::LongBack if self.job.is_some() => self.screen = Screen::Run,
            Press::LongNext | Press::LongBack | Press::LongMenu => {}
        }
        None
    }

    fn number(
        &mut self,
        press: Press,
        draft: Settings,
        item: Item,
        entry: Entry,
        now_ms: u64,
    ) -> Option<Wish> {
        match edit(press, entry) {
            Edit::Going(entry) => self.screen = Screen::Number { draft, item, entry },
            Edit::Left => self.screen = Screen::Setup { draft, item },
            Edit::Done(number) => match draft.with(item, number) {
                Ok(draft) => self.screen = Screen::Setup { draft, item },
                Err(error) => {
                    let entry = Entry::new(draft.number(item), item.digits().unwrap_or(0));
                    self.screen = Screen::Number { draft, item, entry };
                    self.say(Note::Refused(error), now_ms);
                }
            },
        }
        None
    }

    fn begin(&mut self, press: Press, draft: Settings, edges: &mut impl Edges) -> Option<Wish> {
        match press {
            Press::Next => {
                let base = self.set(edges, 0);
                let place = Place { state: State::START, count: 0 };
                let job = Job::at(draft, place, 0).ok()?;
                self.keep(job, base)
            }
            Press::Back | Press::LongBack => {
                self.screen = Screen::Setup { draft, item: Item::Begin };
                None
            }
            _ => None,
        }
    }

    fn run(&mut self, press: Press, count: Option<i32>, now_ms: u64) -> Option<Wish> {
        let job = self.job?;
        let (Some(count), Some(base)) = (count, self.base) else {
            if press == Press::Next {
                self.ask_reference();
            }
            return None;
        };
        let done = match press {
            Press::Next => job.confirm(count, now_ms).map(Some),
            Press::LongBack => job.undo(count, now_ms).map(Some),
            Press::Back => match job.goal().checked_sub(1) {
                Some(goal) => job.to(goal, count).map(|job| {
                    self.job = Some(job);
                    None
                }),
                None => Err(Refused::NotNow),
            },
            Press::Menu => {
                self.screen = Screen::Menu { choice: Choice::GoOn };
                Ok(None)
            }
            Press::LongMenu => {
                self.ask_reference();
                Ok(None)
            }
            Press::LongNext => Ok(None),
        };
        match done {
            Ok(Some(next)) => self.keep(next, base),
            Ok(None) => None,
            Err(why) => {
                self.refuse(why, now_ms);
                None
            }
        }
    }

    fn menu(
        &mut self,
        press: Press,
        choice: Choice,
        count: Option<i32>,
        now_ms: u64,
    ) -> Option<Wish> {
        match press {
            Press::Back => {
                self.screen = Screen::Menu { choice: beside(&Choice::ALL, choice, false) }
            }
            Press::Menu => {
                self.screen = Screen::Menu { choice: beside(&Choice::ALL, choice, true) }
            }
            Press::LongBack => self.screen = Screen::Run,
            Press::Next => {
                self.screen = Screen::Run;
                let job = self.job?;
                match choice {
                    Choice::GoOn => {
                        let place = Place { state: *job.state(), count: job.count() };
                        self.job = Job::at(*job.settings(), place, count?).ok();
                    }
                    Choice::GoTo => {
                        let entry = Entry::new(job.goal().saturating_add(1), 5);
                        self.screen = Screen::GoTo { entry };
                    }
                    Choice::TakeBack => return self.run(Press::LongBack, count, now_ms),
                    Choice::Reference => self.ask_reference(),
                    Choice::Errors => self.screen = Screen::RunErrors,
                    Choice::NewJob => {
                        let draft = *job.settings();
                        self.screen = Screen::Setup { draft, item: Item::Parts };
                    }
                }
            }
            Press::LongNext | Press::LongMenu => {}
        }
        None
    }

    fn go_to(
        &mut self,
        press: Press,
        entry: Entry,
        count: Option<i32>,
        now_ms: u64,
    ) -> Option<Wish> {
        match edit(press, entry) {
            Edit::Going(entry) => self.screen = Screen::GoTo { entry },
            Edit::Left => self.screen = Screen::Run,
            Edit::Done(number) => {
                let job = self.job?;
                let goal = number.checked_sub(1).ok_or(Refused::NotNow);
                match goal.and_then(|goal| job.to(goal, count.ok_or(Refused::NotNow)?)) {
                    Ok(job) => (self.job, self.screen) = (Some(job), Screen::Run),
                    Err(why) => self.refuse(why, now_ms),
                }
            }
        }
        None
    }

    /// A reference is asked for, at the position last confirmed unless told otherwise.
    fn ask_reference(&mut self) {
        let index = self.job.map_or(0, |job| job.state().index());
        self.screen = Screen::Reference { index, ring: None, nth: 0 };
    }

    fn reference(
        &mut self,
        press: Press,
        index: u32,
        ring: Option<u16>,
        nth: u16,
        now_ms: u64,
        edges: &mut impl Edges,
    ) -> Option<Wish> {
        let job = self.job?;
        match (press, ring) {
            (Press::Next, _) => match job.found(index, now_ms) {
                Ok(job) => {
                    let base = self.set(edges, job.count());
                    return self.keep(job, base);
                }
                Err(why) => self.refuse(why, now_ms),
            },
            (Press::Back, None) => self.choose(index.checked_sub(1).unwrap_or(last(&job))),
            (Press::Menu, None) => {
                let next = index.saturating_add(1);
                self.choose(if next > last(&job) { 0 } else { next });
            }
            (Press::Back, Some(ring)) => self.choose_fit(&job, ring, nth.saturating_sub(1)),
            (Press::Menu, Some(ring)) => self.choose_fit(&job, ring, nth.saturating_add(1)),
            (Press::LongNext, _) => self.screen = Screen::Ring { entry: Entry::new(0, 3) },
            (Press::LongBack, _) if self.base.is_some() => self.screen = Screen::Run,
            (Press::LongBack | Press::LongMenu, _) => {}
        }
        None
    }

    fn choose(&mut self, index: u32) {
        self.screen = Screen::Reference { index, ring: None, nth: 0 };
    }

    /// The `nth` position that fits the ring's reading, the nearest to the last
    /// confirmed one first; the first again behind the last.
    fn choose_fit(&mut self, job: &Job, degrees: u16, nth: u16) {
        let found = |nth| fit(job, degrees, nth).map(|index| (index, nth));
        self.screen = match found(nth).or_else(|| found(0)) {
            Some((index, nth)) => Screen::Reference { index, ring: Some(degrees), nth },
            None => Screen::NoneFits,
        };
    }

    fn ring(&mut self, press: Press, entry: Entry, now_ms: u64) -> Option<Wish> {
        match edit(press, entry) {
            Edit::Going(entry) => self.screen = Screen::Ring { entry },
            Edit::Left => self.ask_reference(),
            Edit::Done(degrees) => {
                let job = self.job?;
                match u16::try_from(degrees) {
                    Ok(degrees) if degrees <= 360 && job.positions() <= RING_PARTS => {
                        self.choose_fit(&job, degrees, 0);
                    }
                    _ => self.say(Note::NotNow, now_ms),
                }
            }
        }
        None
    }

    /// The lamp: on within the window of the target.
    #[must_use]
    pub fn lamp(&self) -> bool {
        let on = |job: Job| job.approach() == Approach::On && job.phase() != Phase::Closed;
        self.screen == Screen::Run && self.base.is_some() && self.job.is_some_and(on)
    }

    /// The buzzer.
    pub fn buzzer(&mut self, now_ms: u64) -> bool {
        self.signal.turn(now_ms) && self.settings.sound
    }

    /// The note at the foot, if there is one.
    #[must_use]
    pub fn note(&self) -> Option<Note> {
        self.note.map(|(note, _)| note)
    }

    /// What the screen shows.
    #[must_use]
    pub fn view(&self) -> View {
        let at = |index: u32| self.position(index);
        let here = self.job.map_or(0, |job| job.state().index());
        match self.screen {
            Screen::Believe => {
                View::Believe { at: at(here), cut: self.job.is_some_and(|job| job.is_cut()) }
            }
            Screen::Restarted => View::Restarted { at: at(here) },
            Screen::MemoryFault => View::MemoryFault { working: self.pending.is_some() },
            Screen::Setup { draft, item } => View::Setup { settings: draft, item },
            Screen::Number { item, entry, .. } => {
                View::Number { item: Some(item), ring: false, entry }
            }
            Screen::GoTo { entry } => View::Number { item: None, ring: false, entry },
            Screen::Ring { entry } => View::Number { item: None, ring: true, entry },
            Screen::SetupErrors { draft } => View::Errors { tenths: errors(&draft) },
            Screen::RunErrors => View::Errors { tenths: errors(&self.settings) },
            Screen::Begin { draft } => View::Begin { side: draft.side },
            Screen::Menu { choice } => View::Menu { choice },
            Screen::Reference { index, ring, .. } => {
                View::Reference { at: at(index), fits: ring.is_some() }
            }
            Screen::NoneFits => View::NoneFits,
            Screen::Run => self.running(),
        }
    }

    fn running(&self) -> View {
        let Some(job) = self.job.filter(|_| self.base.is_some()) else { return View::Lost };
        let (phase, unkept) = (job.phase(), self.unkept);
        if phase == Phase::Closed && job.goal() == job.state().index() {
            return View::Done { of: job.positions() };
        }
        let (here, to) = (job.state().index(), self.position(job.goal()));
        let to_cut = matches!(phase, Phase::First | Phase::ToCut);
        let closing = job.goal() >= job.positions();
        let one_press = job.settings().confirm == Confirm::OneStage;
        let way = |left, past| {
            let way = Way { left, per_turn: job.aim().per_turn, past };
            View::Going { to, way, closing, unkept }
        };
        match job.approach() {
            Approach::On if to_cut && job.goal() == here => {
                View::ToCut { at: to, one_press: false, unkept }
            }
            Approach::On => View::OnTarget { at: to, closing, unkept },
            Approach::Up(_) if one_press && to_cut && job.stands() => {
                View::ToCut { at: self.position(here), one_press, unkept }
            }
            Approach::Up(left) => way(left, false),
            Approach::Back(left) => way(left, true),
        }
    }

    fn position(&self, index: u32) -> Position {
        let of = self.job.map_or(0, |job| job.positions());
        Position { number: index.saturating_add(1), of }
    }
}

/// What a press does to a number that is being set.
enum Edit {
    Going(Entry),
    Done(u32),
    Left,
}

fn edit(press: Press, mut entry: Entry) -> Edit {
    match press {
        Press::Back => entry.down(),
        Press::Menu => entry.up(),
        Press::Next if entry.on() => {}
        Press::Next | Press::LongNext => return Edit::Done(entry.number()),
        Press::LongBack => return Edit::Left,
        Press::LongMenu => {}
    }
    Edit::Going(entry)
}

/// The greatest position there is a reference for: the closed end once all is cut.
fn last(job: &Job) -> u32 {
    let all_cut = job.state().cuts().count() >= job.positions();
    job.positions().saturating_add(u32::from(all_cut)).saturating_sub(1)
}

/// The `nth` position at which the degree ring reads `degrees`, to half a degree,
/// if it read nought at the first.
fn fit(job: &Job, degrees: u16, nth: u16) -> Option<u32> {
    let half = Fraction::new(1, 2).ok()?;
    let ring = RingSeen {
        reads: Angle::from_degrees(Fraction::whole(i64::from(degrees))).ok()?,
        zero: Angle::ZERO,
        within: Angle::from_degrees(half).ok()?,
    };
    let plan = job.settings().plan().ok()?;
    let mut fits = job.state().fits(&plan, Seen { ring: Some(ring), ..Seen::default() }).ok()?;
    fits.nth(usize::from(nth))?.ok().map(|fit| fit.index)
}

/// Worst, adjacent and closing error in tenths of arc-seconds, rounded up.
fn errors(settings: &Settings) -> Option<[u32; 3]> {
    let errors = settings.encoder().ok()?.errors_of_parts(settings.parts).ok()?;
    let tenths = |angle: Angle| {
        let up = angle.arcsec().ok()?.times(10).ok()?.negated().floor().checked_neg()?;
        u32::try_from(up).ok()
    };
    Some([tenths(errors.worst)?, tenths(errors.adjacent)?, tenths(errors.closing)?])
}

/// The entry of `all` before or after `one`, round the ends.
fn beside<T: Copy + PartialEq>(all: &[T], one: T, after: bool) -> T {
    let all_round = || all.iter().copied().cycle();
    let found = if after {
        all_round().skip_while(|&other| other != one).nth(1)
    } else {
        all_round()
            .zip(all_round().skip(1))
            .find(|&(_, next)| next == one)
            .map(|(before, _)| before)
    };
    found.unwrap_or(one)
}
