//! Lamp and buzzer.

/// What the buzzer says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sound {
    /// One short tone: on the target.
    On,
    /// Two short tones: past it.
    Past,
    /// Four long tones: the count is lost, or the memory fails.
    Alarm,
}

impl Sound {
    /// Tones, and the length of each and of the gap behind it.
    const fn tones(self) -> (u64, u64) {
        match self {
            Self::On => (1, 120),
            Self::Past => (2, 80),
            Self::Alarm => (4, 300),
        }
    }
}

/// The buzzer over time.
#[derive(Clone, Copy, Debug, Default)]
pub struct Signal {
    playing: Option<(Sound, u64)>,
}

impl Signal {
    /// Begins a sound, in place of one that is playing.
    pub fn play(&mut self, sound: Sound, now_ms: u64) {
        self.playing = Some((sound, now_ms));
    }

    /// Whether the buzzer is on.
    pub fn turn(&mut self, now_ms: u64) -> bool {
        let Some((sound, since_ms)) = self.playing else { return false };
        let (tones, length) = sound.tones();
        let part = now_ms.saturating_sub(since_ms).checked_div(length).unwrap_or(0);
        if part >= tones.saturating_mul(2) {
            self.playing = None;
            return false;
        }
        part % 2 == 0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(sound: Sound, tones: u32, total_ms: u64) {
        let (mut signal, mut before, mut rises, mut on_ms) = (Signal::default(), false, 0, 0);
        signal.play(sound, 1_000);
        for now in 1_000..5_000 {
            let on = signal.turn(now);
            rises += u32::from(on && !before);
            on_ms += u64::from(on);
            before = on;
        }
        assert_eq!((rises, on_ms), (tones, total_ms));
    }

    #[test]
    fn tones() {
        check(Sound::On, 1, 120);
        check(Sound::Past, 2, 160);
        check(Sound::Alarm, 4, 1_200);
    }
}
