//! The journal against a model of the chip whose power goes at every byte.
use handturn::head::Sense;
use handturn::run::{Confirm, Event, State, What};
use handturn_readout_host::chip::{Kind, Memory};
use handturn_readout_logic::{Chip, Journal, Place, Record, SLOTS, Settings};

const KINDS: [Kind; 4] = [
    Kind::Fram,
    Kind::Eeprom { page: 32, write_us: 5_000 },
    Kind::Eeprom { page: 64, write_us: 10_000 },
    Kind::Eeprom { page: 128, write_us: 3_500 },
];

fn chip(memory: &Memory) -> Chip<Memory, Memory> {
    Chip::new(memory.clone(), memory.clone())
}

fn settings() -> Settings {
    Settings { parts: 127, side: Sense::Anticlockwise, ..Settings::default() }
}

/// Record number `n` of a run: every one differs from the others.
fn record(n: u32) -> Record {
    let settings = settings();
    let plan = settings.plan().unwrap();
    let index = n % 127;
    let state = State::resume(&plan, 0, index, (index > 0).then_some((0, index))).unwrap();
    Record { settings, place: Some(Place { state, count: n as i32 * 756 }) }
}

fn newest(memory: &Memory) -> Option<Record> {
    memory.power_up();
    Journal::open(&mut chip(memory)).unwrap().1
}

fn store(memory: &Memory, record: &Record) -> bool {
    memory.power_up();
    let mut chip = chip(memory);
    let (mut journal, _) = Journal::open(&mut chip).unwrap();
    journal.store(&mut chip, record).is_ok()
}

/// A chip with `n` records behind it.
fn with(kind: Kind, n: u32) -> Memory {
    let memory = Memory::new(kind);
    let mut chip = chip(&memory);
    let (mut journal, none) = Journal::open(&mut chip).unwrap();
    assert_eq!(none, None);
    for k in 0..n {
        journal.store(&mut chip, &record(k)).unwrap();
    }
    memory
}

/// Begins to open the journal and store `record` with the power going at bus
/// byte `cut`; true when the whole of it was over before.
fn cut_at(memory: &Memory, record: &Record, cut: u64, chance: u64) -> (bool, bool) {
    memory.power_up();
    {
        let mut inside = memory.0.borrow_mut();
        (inside.cut_in, inside.chance) = (Some(cut), chance);
    }
    let mut chip = chip(memory);
    let kept = match Journal::open(&mut chip) {
        Ok((mut journal, _)) => journal.store(&mut chip, record).is_ok(),
        Err(_) => false,
    };
    let over = memory.0.borrow().power;
    (kept, over)
}

#[test]
fn what_is_stored_is_read_back_round_the_ring() {
    for kind in KINDS {
        let memory = with(kind, 0);
        for n in 0..u32::from(SLOTS) * 3 + 5 {
            assert!(store(&memory, &record(n)));
            assert_eq!(newest(&memory), Some(record(n)), "{kind:?} {n}");
        }
    }
}

/// Every byte of opening and storing, and what is kept after it; then a clean store.
#[test]
fn one_cut_at_every_byte() {
    for kind in KINDS {
        for before in [0, 1, 5, 31, 32, 40] {
            let full = with(kind, before);
            let bytes = full.0.borrow().bytes.clone();
            let confirmed = before.checked_sub(1).map(record);
            let mut cut = 0;
            loop {
                let memory = Memory::holding(kind, bytes.clone());
                let (kept, over) = cut_at(&memory, &record(before), cut, cut + 1);
                let found = newest(&memory);
                let new = Some(record(before));
                assert!(!kept || found == new, "Ok was not true: {kind:?} {before} {cut}");
                assert!(found == confirmed || found == new, "{kind:?} {before} {cut}: {found:?}");
                assert!(store(&memory, &record(before + 1)));
                assert_eq!(newest(&memory), Some(record(before + 1)));
                if over {
                    assert!(kept && cut > 300, "{cut}");
                    break;
                }
                cut += 1;
            }
        }
    }
}

/// Two cuts in a row, the second at every byte after the first at every byte;
/// then a clean store.
#[test]
fn two_cuts_at_every_pair_of_bytes() {
    for kind in [KINDS[0], KINDS[1]] {
        let before = 33;
        let full = with(kind, before);
        let bytes = full.0.borrow().bytes.clone();
        let (confirmed, new) = (record(before - 1), record(before));
        // Bytes that opening takes: cuts before them change nothing in the chip.
        full.power_up();
        Journal::open(&mut chip(&full)).unwrap();
        let opening = full.0.borrow().carried;
        let (mut first, mut pairs) = (opening, 0);
        loop {
            let torn = Memory::holding(kind, bytes.clone());
            let (_, over) = cut_at(&torn, &new, first, 7 * first + 1);
            let after_first = torn.0.borrow().bytes.clone();
            let confirmed = {
                let found = newest(&torn).unwrap();
                assert!(found == confirmed || found == new);
                found
            };
            let mut second = opening;
            loop {
                let memory = Memory::holding(kind, after_first.clone());
                let again = record(before + 1);
                let (kept, over) = cut_at(&memory, &again, second, first * 1_000 + second);
                let found = newest(&memory).expect("there is always one");
                assert!(!kept || found == again);
                assert!(found == confirmed || found == again, "{kind:?} {first} {second}");
                if second.is_multiple_of(5) {
                    assert!(store(&memory, &record(before + 2)));
                    assert_eq!(newest(&memory), Some(record(before + 2)));
                }
                pairs += 1;
                if over {
                    break;
                }
                second += 1;
            }
            if over {
                break;
            }
            first += 1;
        }
        assert!(pairs > 90_000, "{pairs}");
    }
}

#[test]
fn a_worn_cell_is_passed_over_and_a_worn_chip_is_told() {
    for kind in KINDS {
        let memory = with(kind, 3);
        // The check sum's last byte of the slot that is next.
        memory.0.borrow_mut().worn = Some(3 * 128 + 127);
        for n in 3..80 {
            assert!(store(&memory, &record(n)), "{n}");
            assert_eq!(newest(&memory), Some(record(n)));
        }
        memory.0.borrow_mut().silent = true;
        let mut chip = chip(&memory);
        assert!(Journal::open(&mut chip).is_err());
    }
}

#[test]
fn nothing_is_believed_by_its_number_alone() {
    let memory = with(Kind::Fram, 3);
    // A slot that claims to be the newest of all, its record broken at every byte in turn.
    let newest_slot: Vec<u8> = memory.0.borrow().bytes[2 * 128..3 * 128].to_vec();
    for place in 0..128 {
        let mut slot = newest_slot.clone();
        slot[..4].copy_from_slice(&0xffff_fff0_u32.to_le_bytes());
        slot[place] ^= 0x10;
        memory.0.borrow_mut().bytes[9 * 128..10 * 128].copy_from_slice(&slot);
        assert_eq!(newest(&memory), Some(record(2)));
    }
}

#[test]
fn every_flipped_bit_of_a_record_is_noticed() {
    let memory = with(Kind::Fram, 1);
    assert_eq!(newest(&memory), Some(record(0)));
    let good = memory.0.borrow().bytes.clone();
    for bit in 0..128 * 8 {
        let mut bytes = good.clone();
        bytes[bit / 8] ^= 1 << (bit % 8);
        let memory = Memory::holding(Kind::Fram, bytes);
        assert_eq!(newest(&memory), None, "bit {bit}");
    }
}

#[test]
fn records_come_back_as_they_went() {
    let mut settings = Settings {
        parts: 10_000,
        ratio_handle: 100_000,
        ratio_work: 99_999,
        per_turn: 40_000,
        slack: 500,
        window: 19_999,
        confirm: Confirm::OneStage,
        sound: false,
        ..settings()
    };
    #[track_caller]
    fn check(record: Record) {
        assert_eq!(Record::read(&record.write()), Some(record));
    }
    check(Record { settings, place: None });
    settings = Settings { parts: 365, confirm: Confirm::TwoStage, ..Settings::default() };
    let plan = settings.plan().unwrap();
    let mut state = State::START;
    // Sixteen stretches of cuts, the most there are.
    for index in (0..32).step_by(2) {
        state = state.apply(&plan, Event { what: What::Jump, index, at_ms: 0 }).unwrap();
        state = state.apply(&plan, Event { what: What::Cut, index, at_ms: 0 }).unwrap();
    }
    let state = State::resume(&plan, 0, state.index(), state.cuts().stretches()).unwrap();
    check(Record { settings, place: Some(Place { state, count: i32::MIN }) });
}
