//! Drawings to scale, as SVG computed from the same answer that the words give.
//!
//! Every drawing stands about (0, 0), y down, in its own units; lines, fills and
//! letters take their colours from the style sheet by class (`.dr` and below).
//! Coordinates are written in hundredths of a unit; trigonometry goes through the
//! core's float door, so host tests and page agree to the last digit.
pub mod bevel;
pub mod budget;
pub mod cam;
pub mod clock;
pub mod dial;
pub mod flats;
pub mod helix;
pub mod plate;
pub mod rack;
pub mod ratchet;
pub(crate) mod sketch;
pub mod spline;
pub mod strip;
pub mod swing;
pub mod template;
pub mod thread;
pub mod tooth;
pub mod train;
pub mod wires;
pub mod work;
pub mod worm;

use handturn::number::float;

/// A coordinate as text, to hundredths of a unit.
pub(crate) fn num(value: f64) -> String {
    let mut text = String::new();
    add_num(&mut text, value);
    text
}

fn add_num(text: &mut String, value: f64) {
    let hundredths = float::round(value * 100.0) as i64;
    let (whole, part) = (hundredths.unsigned_abs() / 100, hundredths.unsigned_abs() % 100);
    if hundredths < 0 {
        text.push('-');
    }
    text.push_str(itoa::Buffer::new().format(whole));
    if part > 0 {
        text.push('.');
        text.push(digit(part / 10));
        if part % 10 > 0 {
            text.push(digit(part % 10));
        }
    }
}

fn digit(value: u64) -> char {
    char::from(b'0' + (value % 10) as u8)
}

/// The point at `radius` and an angle of `turns`, clockwise from the top.
pub(crate) fn polar(radius: f64, turns: f64) -> (f64, f64) {
    (radius * float::sin_turns(turns), -radius * float::cos_turns(turns))
}

/// The data of an SVG path, built piece by piece.
#[derive(Default)]
pub(crate) struct Path(pub(crate) String);

impl Path {
    fn add(mut self, command: char, values: &[f64]) -> Self {
        self.0.push(command);
        for (k, &value) in values.iter().enumerate() {
            if k > 0 {
                self.0.push(' ');
            }
            add_num(&mut self.0, value);
        }
        self
    }

    pub(crate) fn to(self, (x, y): (f64, f64)) -> Self {
        let command = if self.0.is_empty() { 'M' } else { 'L' };
        self.add(command, &[x, y])
    }

    pub(crate) fn jump(self, (x, y): (f64, f64)) -> Self {
        self.add('M', &[x, y])
    }

    pub(crate) fn down(self, by: f64) -> Self {
        self.add('v', &[by])
    }

    /// An arc about (0, 0) to the point at `radius` and `turns`.
    pub(crate) fn arc(self, radius: f64, turns: f64, large: bool, clockwise: bool) -> Self {
        let (x, y) = polar(radius, turns);
        let flag = |on| if on { 1.0 } else { 0.0 };
        self.add('A', &[radius, radius, 0.0, flag(large), flag(clockwise), x, y])
    }

    /// An arc of `radius`, less than half round, to `(x, y)`.
    pub(crate) fn bow(self, radius: f64, (x, y): (f64, f64), clockwise: bool) -> Self {
        self.add('A', &[radius, radius, 0.0, 0.0, if clockwise { 1.0 } else { 0.0 }, x, y])
    }

    pub(crate) fn close(mut self) -> String {
        self.0.push('Z');
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(value: f64, wanted: &str) {
        assert_eq!(num(value), wanted);
    }

    #[test]
    fn coordinates_are_short() {
        check(0.0, "0");
        check(-0.001, "0");
        check(12.5, "12.5");
        check(-12.05, "-12.05");
        check(100.0, "100");
        check(0.999, "1");
    }
}
