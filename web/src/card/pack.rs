//! A text made short enough for an address: what came before, or stands in [`KNOWN`], is
//! pointed at, and the bytes are written with 64 letters that no address changes.
//!
//! A packed text is `1` (this form), then the bytes: a check of the text (four bytes), then
//! groups of a byte of flags and eight entries. An entry is a byte as it is (flag 0), or
//! two bytes that point back (flag 1): 12 bits how far, 4 bits how many less three.

const FORM: &str = "1";
/// Letters of a packed text that are looked at.
const MOST_PACKED: usize = 100_000;
/// Bytes of a text that come out of one.
const MOST: usize = 400_000;
/// How far back an entry can point.
const FAR: usize = 4_096;
/// Bytes an entry points at: at least, at most.
const SHORT: usize = 3;
const RUN: usize = 18;
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
/// What stands before every text: as links are kept by people, it never changes.
const KNOWN: &[u8] = b"Before the first cut: plate stop out, clamp off. Wash off layout fluid or flux, \
oil bare steel. Goggles. Guard on. Clamp the work. Turn the blank to Deburr. holes on the circle, turns, \
degrees, spindle, gears, outside diameter, depth, bore, mm (0.00 in), module, teeth, wheel, exact\
\"kind\":\"number\"\"kind\":\"angle\",\"drawing\":\"= \"thread\"\"gear\"\"bench\",\"cut\":[[1,],\"cut_ms\":1,\"done_ms\":17\
{\"version\":2,\"title\":\"\",\"job\":\"\",\"metal\":\"\",\"notes\":\"\",\"values\":[{\"id\":1,\"name\":\"\",\
\"kind\":\"length\",\"drawing\":\"\",\"measured\":\"\"}],\"steps\":[{\"id\":2,\"text\":\"\",\"answer\":null,\
\"parts\":0,\"cut\":[],\"cut_ms\":null,\"done_ms\":null},{\"answer\":{\"room\":\"divide\",\"key\":\"\",\
\"fields\":[[\"kind\",\"parts\"],[\"parts\",\"\"]],\"lines\":[\"\",\"\"],\"cautions\":[\"\"]},\"parts\":";

/// Why a packed text is not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unpacked {
    /// It is of a later form.
    Newer,
    /// Some of it is missing or changed.
    Damaged,
}

/// `text` in letters, figures, `-` and `_`.
pub(super) fn pack(text: &str) -> String {
    let mut all = KNOWN.to_vec();
    all.extend(text.bytes());
    let mut bytes = check(text.as_bytes()).to_be_bytes().to_vec();
    let mut at = KNOWN.len();
    let mut seen = Seen { last: vec![NOWHERE; KINDS], before: Vec::new() };
    let (mut flags, mut used) = (0, 8);
    while at < all.len() {
        if used == 8 {
            (flags, used) = (bytes.len(), 0);
            bytes.push(0);
        }
        seen.upto(&all, at);
        let (back, run) = seen.longest(&all, at);
        if run < SHORT {
            bytes.extend(all.get(at));
            at += 1;
        } else {
            let entry = ((back - 1) << 4) | (run - SHORT);
            bytes.extend([(entry >> 8) as u8, (entry & 255) as u8]);
            if let Some(flags) = bytes.get_mut(flags) {
                *flags |= 1 << used;
            }
            at += run;
        }
        used += 1;
    }
    let mut packed = FORM.to_owned();
    for three in bytes.chunks(3) {
        let byte = |k: usize| u32::from(three.get(k).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for k in 0..=three.len() {
            let letter = LETTERS.get((bits >> (18 - 6 * k)) as usize & 63).copied();
            packed.push(char::from(letter.unwrap_or_default()));
        }
    }
    packed
}

/// Places of earlier bytes, by the three that stand there: the last one of each kind, and
/// before each place the one before it.
struct Seen {
    last: Vec<usize>,
    before: Vec<usize>,
}

/// Kinds of three bytes, earlier places of one kind that are tried, and no place.
const KINDS: usize = 4_096;
const TRIED: usize = 64;
const NOWHERE: usize = usize::MAX;

fn kind(all: &[u8], at: usize) -> usize {
    let three = all.get(at..at + SHORT).unwrap_or_default();
    three.iter().fold(0, |kind, byte| (kind * 31 + usize::from(*byte) * 7) % KINDS)
}

impl Seen {
    /// Takes in the bytes up to `at`.
    fn upto(&mut self, all: &[u8], at: usize) {
        for place in self.before.len()..at {
            let last = self.last.get_mut(kind(all, place));
            self.before.push(last.map_or(NOWHERE, |last| std::mem::replace(last, place)));
        }
    }

    /// How far back a long run of what stands at `at` begins, and how long it is.
    fn longest(&self, all: &[u8], at: usize) -> (usize, usize) {
        let ahead = all.get(at..).unwrap_or_default();
        let ahead = ahead.get(..RUN).unwrap_or(ahead);
        let mut best = (0, 0);
        let mut place = self.last.get(kind(all, at)).copied().unwrap_or(NOWHERE);
        for _ in 0..TRIED {
            if place == NOWHERE || at - place > FAR {
                break;
            }
            let before = all.get(place..).unwrap_or_default();
            let run = ahead.iter().zip(before).take_while(|(a, b)| a == b).count();
            if run > best.1 {
                best = (at - place, run);
            }
            place = self.before.get(place).copied().unwrap_or(NOWHERE);
        }
        best
    }
}

/// The text in a packed one.
pub(super) fn unpack(packed: &str) -> Result<String, Unpacked> {
    let letters = packed.strip_prefix(FORM).ok_or_else(|| match packed.bytes().next() {
        Some(b'2'..=b'9') => Unpacked::Newer,
        _ => Unpacked::Damaged,
    })?;
    if letters.len() > MOST_PACKED {
        return Err(Unpacked::Damaged);
    }
    whole(letters).ok_or(Unpacked::Damaged)
}

fn whole(letters: &str) -> Option<String> {
    let mut bytes = Vec::new();
    for four in letters.as_bytes().chunks(4) {
        let mut bits = 0;
        for letter in four {
            bits = bits << 6 | LETTERS.iter().position(|own| own == letter)? as u32;
        }
        bits <<= 6 * (4 - four.len());
        let count = four.len().checked_sub(1).filter(|count| *count > 0)?;
        bytes.extend([(bits >> 16) as u8, (bits >> 8) as u8, bits as u8].get(..count)?);
    }
    let (sum, mut rest) = bytes.split_at_checked(4)?;
    let mut all = KNOWN.to_vec();
    let mut take = |count: usize| -> Option<&[u8]> {
        let (taken, left) = rest.split_at_checked(count)?;
        rest = left;
        Some(taken)
    };
    while let Some([flags]) = take(1) {
        for k in 0..8 {
            if flags >> k & 1 == 0 {
                // The last group may be short of entries.
                let Some(byte) = take(1) else { break };
                all.extend(byte);
                continue;
            }
            let [high, low] = *take(2)? else { return None };
            let entry = usize::from(high) << 8 | usize::from(low);
            let from = all.len().checked_sub((entry >> 4) + 1)?;
            for at in from..from + (entry & 15) + SHORT {
                all.push(*all.get(at)?);
            }
        }
        if all.len() > MOST + KNOWN.len() {
            return None;
        }
    }
    let text = all.split_off(KNOWN.len());
    if check(&text).to_be_bytes() != *sum {
        return None;
    }
    String::from_utf8(text).ok()
}

/// A check that tells a text from one with a letter changed or missing (FNV-1a).
fn check(bytes: &[u8]) -> u32 {
    bytes.iter().fold(0x811c_9dc5, |sum, byte| (sum ^ u32::from(*byte)).wrapping_mul(0x0100_0193))
}
