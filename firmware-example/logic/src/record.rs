//! What is kept through a power cut, and its form in bytes.
//!
//! Numbers are little-endian. Whoever changes the form raises [`FORM`].
use crate::settings::Settings;
use handturn::head::Sense;
use handturn::run::{Confirm, Cuts, State};

/// Version of the form.
const FORM: u8 = 1;

/// Stretches of cuts that the core keeps.
const STRETCHES: usize = 16;

/// Bytes of a record.
pub(crate) const LENGTH: usize = 94;

const ANTICLOCKWISE: u8 = 1;
const ONE_STAGE: u8 = 2;
const SOUND: u8 = 4;
const RUNNING: u8 = 8;

/// The last confirmed place of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// The run as the core keeps it.
    pub state: State,
    /// The handle's count when it was confirmed, from the first position.
    pub count: i32,
}

/// Settings and place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Record {
    /// The settings.
    pub settings: Settings,
    /// The place of the run that is on; none between runs.
    pub place: Option<Place>,
}

impl Record {
    /// The record in bytes.
    #[must_use]
    pub fn write(&self) -> [u8; LENGTH] {
        let mut bytes = [0; LENGTH];
        let mut pen = Pen { rest: bytes.iter_mut() };
        let settings = &self.settings;
        let flag = |on: bool, flag: u8| if on { flag } else { 0 };
        pen.put(&[
            FORM,
            flag(settings.side == Sense::Anticlockwise, ANTICLOCKWISE)
                | flag(settings.confirm == Confirm::OneStage, ONE_STAGE)
                | flag(settings.sound, SOUND)
                | flag(self.place.is_some(), RUNNING),
        ]);
        pen.put(&settings.parts.to_le_bytes());
        pen.put(&settings.ratio_handle.to_le_bytes());
        pen.put(&settings.ratio_work.to_le_bytes());
        pen.put(&settings.per_turn.to_le_bytes());
        pen.put(&settings.slack.to_le_bytes());
        pen.put(&settings.window.to_le_bytes());
        if let Some(place) = &self.place {
            pen.put(&place.count.to_le_bytes());
            pen.short(place.state.index());
            let cuts: &Cuts = place.state.cuts();
            for (from, to) in cuts.stretches() {
                pen.short(from);
                pen.short(to);
            }
        }
        bytes
    }

    /// The record in `bytes`, if the core believes every part of it.
    #[must_use]
    pub fn read(bytes: &[u8; LENGTH]) -> Option<Self> {
        let mut eye = Eye { rest: bytes };
        let [form, flags] = eye.take()?;
        if form != FORM {
            return None;
        }
        let on = |flag: u8| flags & flag != 0;
        let settings = Settings {
            parts: u32::from_le_bytes(eye.take()?),
            ratio_handle: u32::from_le_bytes(eye.take()?),
            ratio_work: u32::from_le_bytes(eye.take()?),
            per_turn: u16::from_le_bytes(eye.take()?),
            side: if on(ANTICLOCKWISE) { Sense::Anticlockwise } else { Sense::Clockwise },
            slack: u16::from_le_bytes(eye.take()?),
            window: u16::from_le_bytes(eye.take()?),
            confirm: if on(ONE_STAGE) { Confirm::OneStage } else { Confirm::TwoStage },
            sound: on(SOUND),
        };
        settings.check().ok()?;
        if !on(RUNNING) {
            return Some(Self { settings, place: None });
        }
        let count = i32::from_le_bytes(eye.take()?);
        let index = eye.short()?;
        let mut cuts = [(0, 0); STRETCHES];
        for cut in &mut cuts {
            *cut = (eye.short()?, eye.short()?);
        }
        let cuts = cuts.into_iter().take_while(|&(_, to)| to != 0);
        let state = State::resume(&settings.plan().ok()?, 0, index, cuts).ok()?;
        Some(Self { settings, place: Some(Place { state, count }) })
    }
}

struct Pen<'a> {
    rest: core::slice::IterMut<'a, u8>,
}

impl Pen<'_> {
    /// [`LENGTH`] has room for everything that is ever put.
    fn put(&mut self, bytes: &[u8]) {
        // Bytes first: a place taken for a byte that is not there would be lost.
        for (&byte, place) in bytes.iter().zip(&mut self.rest) {
            *place = byte;
        }
    }

    /// Positions are at most 10 000.
    fn short(&mut self, number: u32) {
        self.put(&u16::try_from(number).unwrap_or(u16::MAX).to_le_bytes());
    }
}

struct Eye<'a> {
    rest: &'a [u8],
}

impl Eye<'_> {
    fn take<const N: usize>(&mut self) -> Option<[u8; N]> {
        let (bytes, rest) = self.rest.split_first_chunk::<N>()?;
        self.rest = rest;
        Some(*bytes)
    }

    fn short(&mut self) -> Option<u32> {
        Some(u32::from(u16::from_le_bytes(self.take()?)))
    }
}
