//! How a value is kept: ONE description of its parts serves writing and reading.
//!
//! [`Io`] goes through a value part by part. Writing, it appends JSON; reading, it
//! fills a blank value from a tree. What does not fit is noted once and asked for at
//! the end, so nothing stands between two parts: with a pair of functions a type the
//! same took twice the code. `forms.rs` and the rooms say what is kept.
use super::json::{Json, quote};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::{Field, List, Text};

/// A value that can be kept as text.
pub trait Kept {
    /// A value to read into.
    fn blank() -> Self
    where
        Self: Sized;
    /// Takes `io` through the value; what is read into is blank.
    fn each(&mut self, io: &mut Io<'_>);
    /// Part `k` of a record, a row, a list, or what a choice holds (part 0).
    fn part(&mut self, _k: usize) -> Option<&mut dyn Kept> {
        None
    }
    /// Makes part `k` of a list, or turns into choice `k`.
    fn make(&mut self, _k: usize) {}
}

/// The way through a value: writing where it comes from no tree.
pub struct Io<'t> {
    from: Option<&'t Json<'t>>,
    text: String,
    bad: bool,
}

/// `value` as text.
pub(super) fn write(value: &mut dyn Kept) -> String {
    let mut io = Io { from: None, text: String::new(), bad: false };
    value.each(&mut io);
    io.text
}

/// Reads all of `tree` into the blank `value`; whether it is of that kind.
pub(super) fn read(tree: &Json, value: &mut dyn Kept) -> bool {
    let mut io = Io { from: Some(tree), text: String::new(), bad: false };
    value.each(&mut io);
    !io.bad
}

impl<'t> Io<'t> {
    /// A record: parts by their names.
    pub fn record(&mut self, names: &[&str], value: &mut dyn Kept) {
        let whole = self.from;
        let mut before = '{';
        for (k, name) in names.iter().enumerate() {
            let Some(part) = value.part(k) else { break };
            match whole {
                Some(tree) => self.from = Some(tree.field(name)),
                None => {
                    self.text.push(before);
                    quote(&mut self.text, name);
                    self.text.push(':');
                    before = ',';
                }
            }
            part.each(self);
        }
        self.close(whole, '}');
    }

    /// A list, or a row of as many parts as there are.
    pub fn list(&mut self, value: &mut dyn Kept) {
        let whole = self.from;
        let entries = whole.map(|tree| {
            tree.entries().unwrap_or_else(|| {
                self.bad = true;
                &[]
            })
        });
        if whole.is_none() {
            self.text.push('[');
        }
        for k in 0.. {
            let entry = entries.and_then(|entries| entries.get(k));
            if entry.is_some() {
                value.make(k);
                self.from = entry;
            }
            match value.part(k) {
                // Entries and parts must come to an end together.
                Some(part) if entry.is_some() == whole.is_some() => {
                    if whole.is_none() && k > 0 {
                        self.text.push(',');
                    }
                    part.each(self);
                }
                None if entry.is_none() => break,
                _ => {
                    self.bad = true;
                    break;
                }
            }
        }
        self.close(whole, ']');
    }

    /// A choice: its name alone, or a record of its name and what it holds.
    pub fn choice(&mut self, names: &[&str], now: &str, value: &mut dyn Kept) {
        let Some(tree) = self.from else {
            let Some(held) = value.part(0) else { return quote(&mut self.text, now) };
            self.text.push('{');
            quote(&mut self.text, now);
            self.text.push(':');
            held.each(self);
            return self.text.push('}');
        };
        let (name, content) = tree.choice().unwrap_or(("", tree));
        match names.iter().position(|own| *own == name) {
            Some(k) => value.make(k),
            None => self.bad = true,
        }
        match value.part(0) {
            Some(held) => {
                self.from = Some(content);
                held.each(self);
                self.from = Some(tree);
            }
            None => self.bad |= !matches!(tree, Json::Text(_)),
        }
    }

    /// Whether there is a value: `now` when writing.
    fn some(&mut self, now: bool) -> bool {
        if self.from.is_none() && !now {
            self.text.push_str("null");
        }
        self.from.map_or(now, |tree| *tree != Json::Null)
    }

    fn truth(&mut self, truth: &mut bool) {
        match self.from {
            Some(Json::Truth(read)) => *truth = *read,
            Some(_) => self.bad = true,
            None => self.text.push_str(if *truth { "true" } else { "false" }),
        }
    }

    /// A whole number: `now` when writing.
    fn whole(&mut self, now: i64) -> i64 {
        match self.from {
            Some(Json::Whole(whole)) => return *whole,
            Some(_) => self.bad = true,
            None => self.text.push_str(itoa::Buffer::new().format(now)),
        }
        now
    }

    /// A text that was read; nothing when `now` was written.
    pub(crate) fn text(&mut self, now: &str) -> Option<&'t str> {
        match self.from {
            Some(Json::Text(text)) => return Some(text),
            Some(_) => self.bad = true,
            None => quote(&mut self.text, now),
        }
        None
    }

    /// Ends what began with `whole`.
    fn close(&mut self, whole: Option<&'t Json<'t>>, with: char) {
        self.from = whole;
        if whole.is_none() {
            self.text.push(with);
        }
    }

    /// Puts what was read into `place`, unless it was refused.
    pub(crate) fn set<T, E>(&mut self, place: &mut T, read: Result<T, E>) {
        match read {
            Ok(value) => *place = value,
            Err(_) => self.bad = true,
        }
    }
}

/// The part of a record or a row with number `k`, of those named.
macro_rules! nth {
    ($k:ident:) => {{
        let _ = $k;
        None
    }};
    ($k:ident: $($part:expr),+) => {{
        let mut left = $k;
        $(
            if left == 0 {
                return Some($part);
            }
            left = left.wrapping_sub(1);
        )+
        let _ = left;
        None
    }};
}
pub(crate) use nth;

/// Records with these fields, all of them needed but those that may be nothing.
macro_rules! record {
    ($($kind:ident $(<$of:ident>)? { $($field:ident),* })*) => {$(
        impl $(<$of: $crate::keep::kept::Kept>)? $crate::keep::kept::Kept for $kind $(<$of>)? {
            fn blank() -> Self {
                Self { $($field: $crate::keep::kept::Kept::blank()),* }
            }
            fn each(&mut self, io: &mut $crate::keep::kept::Io<'_>) {
                io.record(&[$(stringify!($field)),*], self);
            }
            fn part(&mut self, k: usize) -> Option<&mut dyn $crate::keep::kept::Kept> {
                $crate::keep::kept::nth!(k: $(&mut self.$field),*)
            }
        }
    )*};
}
pub(crate) use record;

/// Rows of exactly these parts.
macro_rules! row {
    ($($kind:ident { $($field:ident),* })*) => {$(
        impl $crate::keep::kept::Kept for $kind {
            fn blank() -> Self {
                Self { $($field: $crate::keep::kept::Kept::blank()),* }
            }
            fn each(&mut self, io: &mut $crate::keep::kept::Io<'_>) {
                io.list(self);
            }
            fn part(&mut self, k: usize) -> Option<&mut dyn $crate::keep::kept::Kept> {
                $crate::keep::kept::nth!(k: $(&mut self.$field),*)
            }
        }
    )*};
}
pub(super) use row;

/// Choices, each as it is written; some hold a value. The first one is the blank.
macro_rules! choice {
    ($($kind:ident { $($name:ident $(($held:ident))? = $word:literal),* })*) => {$(
        // A variant that this page does not know is written as nothing it would read.
        #[allow(unreachable_patterns, reason = "only some of these enums may grow elsewhere")]
        impl $crate::keep::kept::Kept for $kind {
            #[allow(unreachable_code, reason = "the first one is returned")]
            fn blank() -> Self {
                $(return Self::$name $(({ let $held = $crate::keep::kept::Kept::blank(); $held }))?;)*
            }
            fn each(&mut self, io: &mut $crate::keep::kept::Io<'_>) {
                let now = match self {
                    $(Self::$name { .. } => $word,)*
                    _ => "",
                };
                io.choice(&[$($word),*], now, self);
            }
            fn part(&mut self, k: usize) -> Option<&mut dyn $crate::keep::kept::Kept> {
                match self {
                    $(Self::$name $(($held))? => $crate::keep::kept::nth!(k: $($held)?),)*
                    _ => None,
                }
            }
            fn make(&mut self, k: usize) {
                let mut left = k;
                $(
                    if left == 0 {
                        *self = Self::$name $(({ let $held = $crate::keep::kept::Kept::blank(); $held }))?;
                        return;
                    }
                    left = left.wrapping_sub(1);
                )*
                let _ = left;
            }
        }
    )*};
}
pub(crate) use choice;

impl Kept for Fraction {
    fn blank() -> Self {
        Self::ZERO
    }
    fn each(&mut self, io: &mut Io<'_>) {
        let mut pair = (self.num(), self.den());
        pair.each(io);
        io.set(self, Self::new(pair.0, pair.1));
    }
}

impl Kept for Angle {
    fn blank() -> Self {
        Self::ZERO
    }
    fn each(&mut self, io: &mut Io<'_>) {
        let mut turns = self.turns();
        turns.each(io);
        *self = Self::from_turns(turns);
    }
}

impl Kept for Length {
    fn blank() -> Self {
        Self::from_mm(Fraction::ZERO)
    }
    fn each(&mut self, io: &mut Io<'_>) {
        let mut mm = self.mm();
        mm.each(io);
        *self = Self::from_mm(mm);
    }
}

impl<const CAP: usize> Kept for Text<CAP> {
    fn blank() -> Self {
        Self::default()
    }
    fn each(&mut self, io: &mut Io<'_>) {
        if let Some(text) = io.text(self) {
            io.set(self, Self::new(Field::Record, text));
        }
    }
}

impl Kept for String {
    fn blank() -> Self {
        Self::new()
    }
    fn each(&mut self, io: &mut Io<'_>) {
        if let Some(text) = io.text(self) {
            self.push_str(text);
        }
    }
}

impl<T: Kept, const CAP: usize> Kept for List<T, CAP> {
    fn blank() -> Self {
        Self::new()
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.list(self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        self.get_mut(k).map(|part| part as &mut dyn Kept)
    }
    fn make(&mut self, _: usize) {
        // A full list has no such part, and that is noticed.
        let _ = self.push(T::blank());
    }
}

impl<T: Kept> Kept for Vec<T> {
    fn blank() -> Self {
        Self::new()
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.list(self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        self.get_mut(k).map(|part| part as &mut dyn Kept)
    }
    fn make(&mut self, _: usize) {
        self.push(T::blank());
    }
}

impl<T: Kept, const N: usize> Kept for [T; N] {
    fn blank() -> Self {
        std::array::from_fn(|_| T::blank())
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.list(self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        self.get_mut(k).map(|part| part as &mut dyn Kept)
    }
}

impl<A: Kept, B: Kept> Kept for (A, B) {
    fn blank() -> Self {
        (A::blank(), B::blank())
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.list(self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        nth!(k: &mut self.0, &mut self.1)
    }
}

impl<T: Kept> Kept for Option<T> {
    fn blank() -> Self {
        None
    }
    fn each(&mut self, io: &mut Io<'_>) {
        if io.some(self.is_some()) {
            self.get_or_insert_with(T::blank).each(io);
        }
    }
}

impl<T: Kept> Kept for Box<T> {
    fn blank() -> Self {
        Box::new(T::blank())
    }
    fn each(&mut self, io: &mut Io<'_>) {
        (**self).each(io);
    }
}

impl Kept for bool {
    fn blank() -> Self {
        false
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.truth(self);
    }
}

macro_rules! whole {
    ($($kind:ident)*) => {$(
        impl Kept for $kind {
            fn blank() -> Self {
                0
            }
            fn each(&mut self, io: &mut Io<'_>) {
                let now = i64::try_from(*self).unwrap_or(i64::MAX);
                let whole = io.whole(now);
                io.set(self, Self::try_from(whole));
            }
        }
    )*};
}
whole! { u8 u16 u32 u64 usize i32 i64 }
