//! The trains nearest to a ratio, exact or not, out of all that the gears owned
//! can make.
//!
//! Method: drivers and driven gears are choices from one list in order of
//! product ([`products`](super::products)). For rising drivers the driven gears of
//! the ratio wanted rise too, so one pointer follows them; from it the walk goes
//! outwards on both sides for as long as a train is no farther off than the last
//! of the best list. What lies beyond is farther off than all of the list, so the
//! best is the best of all. Comparisons are of whole numbers; with π in the ratio
//! they are settled by its continued fraction.
use super::products::{Choice, NONE, PAIRS, Products, TRIPLES};
use super::{Chain, Found, STOCK, Senses, Six, Unmounted, Wanted, Why, miss, mount, stock};
use crate::bounds;
use crate::error::Error;
use crate::head::{Gear, Mounting};
use crate::list::List;
use core::cmp::Ordering;
use miss::{Miss, Target};

/// A search and how far it has come. It can stop after a number of steps and go
/// on later with the same [`Wanted`]; what it finds does not depend on that.
///
/// ```
/// use handturn::head::{Gear, Mounting};
/// use handturn::number::Fraction;
/// use handturn::train::{Search, Senses, Six, Wanted};
/// let gears = [20, 30, 40, 50, 60, 127].map(|teeth| Gear { teeth, count: 1 });
/// let wanted = Wanted {
///     ratios: &[Fraction::new(30, 127)?],
///     times_pi: false,
///     gears: &gears,
///     mounting: Mounting::default(),
///     senses: Senses::Same,
///     six: Six::Never,
/// };
/// let mut search = Search::<4>::new();
/// while !search.run(&wanted, 1000)? {}
/// let best = search.best()[0];
/// assert!(best.is_exact());
/// assert_eq!(best.chain.gears().collect::<Vec<_>>(), [30, 127, 20]);
/// # Ok::<(), handturn::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Search<const CAP: usize> {
    best: List<Found, CAP>,
    unmounted: Option<Unmounted>,
    covered: u64,
    weighed: u64,
    place: Place,
}

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Place {
    /// Pairs of the trains looked at now; above three when all is done.
    pairs: u8,
    setting: u8,
    /// How many choices of drivers are done.
    drivers: usize,
    /// For the next drivers, once begun: how many driven gears below the ratio's are
    /// left, and from which on those above it.
    sides: Option<(usize, usize)>,
}

impl Place {
    /// Whether trains of so many pairs have been looked at.
    const fn begun(self) -> bool {
        self.setting > 0 || self.drivers > 0 || self.sides.is_some()
    }
}

impl<const CAP: usize> Default for Search<CAP> {
    fn default() -> Self {
        Self::new()
    }
}

impl<const CAP: usize> Search<CAP> {
    /// A search that has not begun, which will keep the best `CAP` trains.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            best: List::new(),
            unmounted: None,
            covered: 0,
            weighed: 0,
            place: Place { pairs: 1, setting: 0, drivers: 0, sides: None },
        }
    }

    /// The trains found, the best first. Each choice of gears stands once, in the
    /// order on the studs that takes the fewest gears, then the fewest teeth.
    #[must_use]
    pub fn best(&self) -> &[Found] {
        &self.best
    }

    /// Gears of a nearer ratio than all trains found, which can't be mounted.
    #[must_use]
    pub fn unmounted(&self) -> Option<Unmounted> {
        let nearer =
            |u: &Unmounted| self.best.first().is_none_or(|best| u.miss.compare(&best.miss).is_lt());
        self.unmounted.filter(nearer)
    }

    /// How many trains are accounted for: choices of drivers times choices of
    /// driven gears, times the settings of the gearbox.
    #[must_use]
    pub const fn covered(&self) -> u64 {
        self.covered
    }

    /// How many of them had to be looked at one by one; all others are farther
    /// off than the last of the best.
    #[must_use]
    pub const fn weighed(&self) -> u64 {
        self.weighed
    }

    /// Whether trains of six gears were looked at.
    #[must_use]
    pub const fn tried_six(&self) -> bool {
        self.place.pairs > 3 || (self.place.pairs == 3 && self.place.begun())
    }

    /// Goes on for about `steps` steps, a choice of drivers or a train looked at
    /// being one each. Whether all is done. From 24 gears two and four take some
    /// hundred steps, six some thousand; where next to nothing can be mounted, millions.
    ///
    /// # Errors
    /// [`crate::Cause::TooMany`] above 25 different gears; [`crate::Cause::OutOfRange`] for a
    /// gear of more than 250 teeth; [`crate::Cause::Zero`] for a gear without teeth or a
    /// ratio not above nought; [`crate::Cause::Overflow`] for a ratio whose parts, reduced,
    /// exceed 2^36, with π 2^18.
    pub fn run(&mut self, wanted: &Wanted, steps: u32) -> Result<bool, Error> {
        let gears: List<Gear, STOCK> = stock::sorted(wanted.gears)?;
        for gear in &gears {
            bounds::TEETH.check(i64::from(gear.teeth).max(i64::from(bounds::TEETH.least)))?;
        }
        let mut left = steps;
        while self.goes_on(wanted) {
            // Triples need room that pairs should not have to clear.
            let done = if self.place.pairs == 3 {
                let triples = Products::<TRIPLES>::of(&gears, 3);
                self.walks(wanted, &gears, triples.all(), &mut left)?
            } else {
                let products = Products::<PAIRS>::of(&gears, self.place.pairs);
                self.walks(wanted, &gears, products.all(), &mut left)?
            };
            if !done {
                return Ok(false);
            }
            self.place.pairs = self.place.pairs.saturating_add(1);
            self.place.setting = 0;
        }
        Ok(true)
    }

    /// Whether trains of as many pairs as are next are wanted.
    fn goes_on(&self, wanted: &Wanted) -> bool {
        match self.place.pairs {
            1 => true,
            2 => wanted.mounting.four_gears,
            3 => {
                let far = |most: u32| self.best.first().is_none_or(|best| best.miss.above(most));
                wanted.mounting.four_gears
                    && match wanted.six {
                        Six::Never => false,
                        Six::Always => true,
                        Six::WhenOffBy(most) => self.place.begun() || far(most),
                    }
            }
            _ => false,
        }
    }

    /// Goes through all settings of the gearbox; false when the steps ran out.
    fn walks(
        &mut self,
        wanted: &Wanted,
        gears: &[Gear],
        all: &[Choice],
        left: &mut u32,
    ) -> Result<bool, Error> {
        for &ratio in wanted.ratios.iter().skip(usize::from(self.place.setting)) {
            let target = Target::of(ratio, wanted.times_pi)?;
            if !self.walk(&Floor { wanted, gears, target }, all, left) {
                return Ok(false);
            }
            self.place.drivers = 0;
            self.place.setting = self.place.setting.saturating_add(1);
        }
        Ok(true)
    }

    /// Goes through all drivers for one ratio; false when the steps ran out.
    fn walk(&mut self, floor: &Floor, all: &[Choice], left: &mut u32) -> bool {
        let target = floor.target;
        let mut window = self.window();
        let mut middle: usize = 0;
        for &drivers in all.iter().skip(self.place.drivers) {
            if *left == 0 {
                return false;
            }
            *left = left.saturating_sub(1);
            let over = target.over(drivers.product);
            while all.get(middle).is_some_and(|driven| target.under(driven.product) < over) {
                middle = middle.saturating_add(1);
            }
            let (mut below, mut above) = self.place.sides.unwrap_or((middle, middle));
            while let Some(&driven) = all.get(..below).and_then(<[Choice]>::last) {
                if miss::beyond(window, over, target.under(driven.product)) {
                    break;
                }
                if *left == 0 {
                    self.place.sides = Some((below, above));
                    return false;
                }
                *left = left.saturating_sub(1);
                below = below.saturating_sub(1);
                if self.weigh(floor, drivers, driven) {
                    window = self.window();
                }
            }
            while let Some(&driven) = all.get(above) {
                if miss::beyond(window, over, target.under(driven.product)) {
                    break;
                }
                if *left == 0 {
                    self.place.sides = Some((0, above));
                    return false;
                }
                *left = left.saturating_sub(1);
                above = above.saturating_add(1);
                if self.weigh(floor, drivers, driven) {
                    window = self.window();
                }
            }
            self.place.sides = None;
            self.place.drivers = self.place.drivers.saturating_add(1);
            self.covered = self.covered.saturating_add(u64::try_from(all.len()).unwrap_or(0));
        }
        true
    }

    /// How far off a train may be to count, once the list is full.
    fn window(&self) -> Option<miss::Window> {
        self.best.last().filter(|_| self.best.is_full()).map(|last| last.miss.window())
    }

    /// Looks at one train; whether the list has changed.
    fn weigh(&mut self, floor: &Floor, drivers: Choice, driven: Choice) -> bool {
        self.weighed = self.weighed.saturating_add(1);
        if !floor.holds(drivers, driven) {
            return false;
        }
        let miss = floor.target.miss(drivers.product, driven.product);
        let setting = self.place.setting;
        if let Some(last) = self.best.last().filter(|_| self.best.is_full()) {
            let least = || floor.least(self.place.pairs, drivers, driven, setting);
            let simple = (last.chain.gear_count(), last.setting > 0, last.chain.teeth());
            match miss.compare(&last.miss) {
                Ordering::Greater => return false,
                Ordering::Equal if least() > simple => return false,
                _ => {}
            }
        }
        let (over, under) = (floor.teeth(drivers), floor.teeth(driven));
        let Some(chain) = floor.mount(&floor.wanted.mounting, &over, &under, floor.wanted.senses)
        else {
            self.refuse(floor, &over, &under, miss);
            return false;
        };
        let found = Found { chain, setting, miss };
        let place = self.best.iter().position(|other| found.order(other).is_lt());
        let place = place.unwrap_or(self.best.len());
        if place >= CAP {
            return false;
        }
        self.best.insert(place, found);
        true
    }

    /// Remembers the nearest of what can't be mounted.
    fn refuse(&mut self, floor: &Floor, over: &List<u16, 3>, under: &List<u16, 3>, miss: Miss) {
        let teeth = |list: &List<u16, 3>| [0, 1, 2].map(|place| list.get(place).copied());
        let setting = self.place.setting;
        let (drivers, driven) = (teeth(over), teeth(under));
        let mut refused = Unmounted { drivers, driven, setting, why: Why::Rims, miss };
        if self.unmounted.is_none_or(|other| refused.order(&other).is_lt()) {
            let apart = Mounting { distance: 0, ..floor.wanted.mounting };
            let free = Mounting { most_idlers: 2, ..apart };
            if floor.mount(&apart, over, under, floor.wanted.senses).is_some() {
                refused.why = Why::Reach;
            } else if over.len() == 1 || floor.mount(&free, over, under, Senses::Either).is_some() {
                refused.why = Why::Idler;
            }
            self.unmounted = Some(refused);
        }
    }
}

/// What stays the same on one walk.
struct Floor<'a> {
    wanted: &'a Wanted<'a>,
    gears: &'a [Gear],
    target: Target,
}

impl Floor<'_> {
    /// Whether no gear is used more often than owned.
    fn holds(&self, drivers: Choice, driven: Choice) -> bool {
        let bits = |choice: Choice| choice.gears.iter().fold(0_u32, |bits, &g| bits | bit(g));
        if bits(drivers) & bits(driven) == 0 {
            return true;
        }
        drivers.gears.iter().filter(|&&gear| gear != NONE).all(|&gear| {
            let both = drivers.gears.iter().chain(&driven.gears);
            let uses = both.filter(|&&g| g == gear).fold(0_u8, |n, _| n.saturating_add(1));
            self.gears.get(usize::from(gear)).is_some_and(|gear| gear.count >= uses)
        })
    }

    fn teeth(&self, choice: Choice) -> List<u16, 3> {
        let mut teeth = List::new();
        for gear in choice.gears.iter().filter_map(|&gear| self.gears.get(usize::from(gear))) {
            // A choice has three gears at most.
            let _fits = teeth.push(gear.teeth);
        }
        teeth
    }

    /// The simplest that a train of these gears can be: gears, gearbox, teeth.
    fn least(&self, pairs: u8, a: Choice, b: Choice, setting: u8) -> (u32, bool, u32) {
        let sum =
            |choice| self.teeth(choice).iter().fold(0, |n: u32, &t| n.saturating_add(t.into()));
        (u32::from(pairs).saturating_mul(2), setting > 0, sum(a).saturating_add(sum(b)))
    }

    fn mount(
        &self,
        mounting: &Mounting,
        over: &[u16],
        under: &[u16],
        senses: Senses,
    ) -> Option<Chain> {
        mount::any_order(self.gears, mounting, over, under, senses, None)
    }
}

/// The bit of the gear at `place`; none for [`NONE`].
const fn bit(place: u8) -> u32 {
    if place == NONE { 0 } else { 1_u32.wrapping_shl(place as u32) }
}
