//! The edge counter of `logic` on the RP2040's programmable input.
use handturn_readout_logic::edges::{self, Edges, Sample};
use pio::{Instruction, InstructionOperands, MovDestination, MovOperation, MovSource};
use rp2040_hal::gpio::{FunctionSioInput, Pin, PinId, PullUp};
use rp2040_hal::pac::{PIO0, RESETS};
use rp2040_hal::pio::{
    PIO, PIO0SM0, PIOBuilder, PIOExt, Running, Rx, ShiftDirection, StateMachine,
};

/// More rounds of waiting than the program takes for one of its own.
const PATIENCE: u32 = 100;

type Line<P> = Pin<P, FunctionSioInput, PullUp>;

/// The counter, running.
pub struct Counter {
    pio: PIO<PIO0>,
    counts: Rx<PIO0SM0>,
    _running: StateMachine<PIO0SM0, Running>,
}

impl Counter {
    /// Starts counting lines A and B, which lie on pins next to each other, A on
    /// the lower; none where they do not.
    pub fn new(
        block: PIO0,
        resets: &mut RESETS,
        a: Line<impl PinId>,
        b: Line<impl PinId>,
    ) -> Option<Self> {
        let (base, above) = (a.id().num, b.id().num);
        if above.checked_sub(1) != Some(base) {
            return None;
        }
        let (mut pio, machine, ..) = block.split(resets);
        let program = pio.install(&edges::program()).ok()?;
        let (mut machine, counts, _) = PIOBuilder::from_installed_program(program)
            .in_pin_base(base)
            .in_shift_direction(ShiftDirection::Left)
            .out_shift_direction(ShiftDirection::Right)
            .autopush(false)
            .clock_divisor_fixed_point(1, 0)
            .build(machine);
        // The first sample is the lines as they stand, so that starting is no step.
        let operands = InstructionOperands::MOV {
            destination: MovDestination::OSR,
            op: MovOperation::None,
            source: MovSource::PINS,
        };
        machine.exec_instruction(Instruction { operands, delay: 0, side_set: None });
        pio.clear_irq(1 << edges::LOST_FLAG);
        Some(Self { pio, counts, _running: machine.start() })
    }

    /// The next count in the queue; none when the counter stands still.
    fn next(&mut self) -> Option<u32> {
        (0..PATIENCE).find_map(|_| self.counts.read())
    }

    fn fresh(&mut self) -> Option<i32> {
        for _ in 0..edges::QUEUE {
            self.next()?;
        }
        self.next().map(u32::cast_signed)
    }
}

impl Edges for Counter {
    fn read(&mut self) -> Sample {
        let raw = self.fresh();
        // After the count: a double step before it is seen with it.
        let lost = self.pio.get_irq_raw() & (1 << edges::LOST_FLAG) != 0;
        Sample { raw: raw.unwrap_or(0), lost: lost || raw.is_none() }
    }

    fn rearm(&mut self) {
        self.pio.clear_irq(1 << edges::LOST_FLAG);
    }
}
