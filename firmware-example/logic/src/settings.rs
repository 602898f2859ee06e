//! What the readout is set to, and what the core makes of it.
use handturn::bounds;
use handturn::divide::{Holes, Parts, Question};
use handturn::error::{Cause, Error, Field};
use handturn::head::Sense;
use handturn::number::Fraction;
use handturn::run::{Confirm, Encoder, Plan};

/// Hundredths of a handle turn that slack can have: five turns, as in the core.
const MOST_SLACK: u16 = 500;

/// What a person sets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Settings {
    /// Equal parts to cut.
    pub parts: u32,
    /// Turns of the handle..
    pub ratio_handle: u32,
    /// ..for so many turns of the work.
    pub ratio_work: u32,
    /// Counts in one turn of the handle: four for each line of the encoder's disc.
    pub per_turn: u16,
    /// The turn of the handle by which every position is come to.
    pub side: Sense,
    /// Slack of the worm, in hundredths of a handle turn.
    pub slack: u16,
    /// Counts beside the target that still count as on it.
    pub window: u16,
    /// Whether "at it" and "cut" are confirmed with one press or two.
    pub confirm: Confirm,
    /// Whether the buzzer sounds.
    pub sound: bool,
}

/// One of the [`Settings`], in the order in which they are listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Item {
    /// Equal parts.
    Parts,
    /// Turns of the handle..
    RatioHandle,
    /// ..for so many turns of the work.
    RatioWork,
    /// Counts in one turn.
    PerTurn,
    /// Side of approach.
    Side,
    /// Slack.
    Slack,
    /// Window.
    Window,
    /// One press or two.
    Confirm,
    /// Buzzer.
    Sound,
    /// The errors that follow from the others.
    Errors,
    /// Begin.
    Begin,
}

impl Item {
    /// Every item, in order.
    pub const ALL: [Self; 11] = [
        Self::Parts,
        Self::RatioHandle,
        Self::RatioWork,
        Self::PerTurn,
        Self::Side,
        Self::Slack,
        Self::Window,
        Self::Confirm,
        Self::Sound,
        Self::Errors,
        Self::Begin,
    ];

    /// Digits of the item when it is a number.
    #[must_use]
    pub const fn digits(self) -> Option<u8> {
        match self {
            Self::Parts | Self::PerTurn | Self::Window => Some(5),
            Self::RatioHandle | Self::RatioWork => Some(6),
            Self::Slack => Some(3),
            Self::Side | Self::Confirm | Self::Sound | Self::Errors | Self::Begin => None,
        }
    }
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            parts: 64,
            ratio_handle: 40,
            ratio_work: 1,
            per_turn: 2_400,
            side: Sense::Clockwise,
            slack: 10,
            window: 2,
            confirm: Confirm::TwoStage,
            sound: true,
        }
    }
}

impl Settings {
    /// Checks every value against the core's bounds, as if a stranger had set it.
    ///
    /// # Errors
    /// As [`Question::check`] and [`Encoder::check`].
    pub fn check(&self) -> Result<(), Error> {
        self.question().check()?;
        if self.slack > MOST_SLACK {
            return Err(Error::new(Field::Slack, Cause::OutOfRange { least: 0, greatest: 5 }));
        }
        self.encoder()?.check()
    }

    /// What is asked of the core.
    #[must_use]
    pub const fn question(&self) -> Question<'static> {
        Question::Parts(Parts { count: self.parts, every: 1 })
    }

    /// The encoder on the handle.
    ///
    /// # Errors
    /// [`Cause::Zero`] for a ratio without a turn of the work.
    pub fn encoder(&self) -> Result<Encoder, Error> {
        Ok(Encoder {
            ratio: Fraction::new(i64::from(self.ratio_handle), i64::from(self.ratio_work))?,
            per_turn: self.per_turn,
            side: self.side,
            slack: Fraction::new(i64::from(self.slack), 100)?,
            window: self.window,
        })
    }

    /// The plan of a run with these settings.
    ///
    /// # Errors
    /// As [`Settings::encoder`].
    pub fn plan(&self) -> Result<Plan<'static, Holes>, Error> {
        Ok(self.encoder()?.plan(self.question(), self.confirm))
    }

    /// The number of `item`; nought for one that is no number.
    #[must_use]
    pub fn number(&self, item: Item) -> u32 {
        match item {
            Item::Parts => self.parts,
            Item::RatioHandle => self.ratio_handle,
            Item::RatioWork => self.ratio_work,
            Item::PerTurn => u32::from(self.per_turn),
            Item::Slack => u32::from(self.slack),
            Item::Window => u32::from(self.window),
            Item::Side | Item::Confirm | Item::Sound | Item::Errors | Item::Begin => 0,
        }
    }

    /// The settings with `item` set to `number`, where it goes with the others.
    ///
    /// # Errors
    /// As [`Settings::check`].
    pub fn with(mut self, item: Item, number: u32) -> Result<Self, Error> {
        let short = |field| u16::try_from(number).map_err(|_| Error::new(field, Cause::Overflow));
        match item {
            Item::Parts => self.parts = number,
            Item::RatioHandle => self.ratio_handle = number,
            Item::RatioWork => self.ratio_work = number,
            Item::PerTurn => {
                bounds::COUNTS.check(i64::from(number))?;
                self.per_turn = short(Field::Counts)?;
            }
            Item::Slack => self.slack = short(Field::Slack)?,
            Item::Window => self.window = short(Field::Counts)?,
            Item::Side | Item::Confirm | Item::Sound | Item::Errors | Item::Begin => {}
        }
        self.check()?;
        Ok(self)
    }

    /// The settings with a choice of two turned over; others stay as they are.
    #[must_use]
    pub const fn turned_over(mut self, item: Item) -> Self {
        match item {
            Item::Side => {
                self.side = match self.side {
                    Sense::Clockwise => Sense::Anticlockwise,
                    Sense::Anticlockwise => Sense::Clockwise,
                }
            }
            Item::Confirm => {
                self.confirm = match self.confirm {
                    Confirm::OneStage => Confirm::TwoStage,
                    Confirm::TwoStage => Confirm::OneStage,
                }
            }
            Item::Sound => self.sound = !self.sound,
            _ => {}
        }
        self
    }
}
