//! Values that depend on each other: cards drawn by lot, worked out by plain recursion
//! over a tree with numbers of any size; cycles looked for along every way there is.
//! Nothing here uses the core's sums or reads its formulas.
use handturn::card::{Amount, Fault, Found, Given, Kind, chain};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::{Cause, Field};
use num_bigint::BigInt;
use num_rational::BigRational;
use rand::seq::SliceRandom;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A formula as a tree.
#[derive(Clone, Debug)]
enum Tree {
    /// Figures alone.
    Bare(i64, i64),
    /// Figures with a unit, as written; in millimetres, or in turns.
    Unit(Kind, String, BigRational),
    Name(usize),
    Less(Box<Tree>),
    Sum(char, Box<Tree>, Box<Tree>),
}

#[derive(Clone, Debug)]
struct Value {
    name: String,
    kind: Kind,
    drawing: Result<Tree, String>,
    measured: String,
}

/// What a tree comes to: nothing where units do not go together or a divisor is nought.
#[derive(Clone, Debug, PartialEq)]
struct Size {
    /// None for figures alone.
    kind: Option<Kind>,
    size: BigRational,
}

fn big(num: i64, den: i64) -> BigRational {
    BigRational::new(BigInt::from(num), BigInt::from(den))
}

fn bare(kind: Kind, size: BigRational) -> BigRational {
    if kind == Kind::Angle { size / BigInt::from(360) } else { size }
}

/// Why a tree has no value, in the order in which text is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Wrong {
    Units,
    Zero,
    Waits,
}

fn worked(tree: &Tree, value: &impl Fn(usize) -> Option<Size>) -> Result<Size, Wrong> {
    Ok(match tree {
        Tree::Bare(num, den) => Size { kind: None, size: big(*num, *den) },
        Tree::Unit(kind, _, size) => Size { kind: Some(*kind), size: size.clone() },
        Tree::Name(at) => value(*at).ok_or(Wrong::Waits)?,
        Tree::Less(tree) => {
            let Size { kind, size } = worked(tree, value)?;
            Size { kind, size: -size }
        }
        Tree::Sum(sign, a, b) => {
            let (a, b) = (worked(a, value)?, worked(b, value)?);
            match sign {
                '+' | '-' => {
                    let kind = match (a.kind, b.kind) {
                        (Some(one), Some(other)) if one != other => return Err(Wrong::Units),
                        (one, other) => one.or(other),
                    };
                    let of = |part: Size| match (part.kind, kind) {
                        (None, Some(kind)) => bare(kind, part.size),
                        _ => part.size,
                    };
                    let (a, b) = (of(a), of(b));
                    Size { kind, size: if *sign == '+' { a + b } else { a - b } }
                }
                '*' => {
                    let kind = match (a.kind, b.kind) {
                        (None, kind) | (kind, None) => kind,
                        (Some(Kind::Number), kind) | (kind, Some(Kind::Number)) => kind,
                        _ => return Err(Wrong::Units),
                    };
                    Size { kind, size: a.size * b.size }
                }
                _ => {
                    let kind = match (a.kind, b.kind) {
                        (kind, None) => kind,
                        (None, Some(Kind::Number)) => Some(Kind::Number),
                        (None, Some(_)) => return Err(Wrong::Units),
                        (kind, Some(Kind::Number)) => kind,
                        (Some(one), Some(other)) if one == other => Some(Kind::Number),
                        _ => return Err(Wrong::Units),
                    };
                    if b.size == big(0, 1) {
                        return Err(Wrong::Zero);
                    }
                    Size { kind, size: a.size / b.size }
                }
            }
        }
    })
}

/// Whether something on the way does not fit 64 bits, as a part of a turn or as degrees.
fn too_long(tree: &Tree, value: &impl Fn(usize) -> Option<Size>) -> bool {
    let most = BigInt::from(i64::MAX);
    let long =
        |size: BigRational| size.denom() > &most || size.numer() > &most || -size.numer() > most;
    let here = worked(tree, value).is_ok_and(|found| {
        long(found.size.clone()) || found.kind.is_none() && long(bare(Kind::Angle, found.size))
    });
    here || match tree {
        Tree::Less(tree) => too_long(tree, value),
        Tree::Sum(_, a, b) => too_long(a, value) || too_long(b, value),
        _ => false,
    }
}

/// As it is typed. `tight` is how close the sign outside binds.
fn written(lot: &mut ChaCha8Rng, tree: &Tree, values: &[String], tight: u8) -> String {
    let space = if lot.random_bool(0.5) { " " } else { "" };
    let wrap = |text: String, binds: u8| if binds < tight { format!("({text})") } else { text };
    match tree {
        Tree::Bare(num, den) => match den {
            1 => num.to_string(),
            // Noughts before the mark and a comma for it are read too.
            10 => {
                format!("{}{}{}", num / 10, if lot.random_bool(0.3) { ',' } else { '.' }, num % 10)
            }
            // A bar in figures binds as a sign does, except that it is one amount.
            _ => format!("({num}/{den})"),
        },
        Tree::Unit(_, text, _) => format!("({text})"),
        Tree::Name(at) => {
            let name = &values[*at];
            if lot.random_bool(0.3) { name.to_uppercase() } else { name.clone() }
        }
        Tree::Less(tree) => {
            let text = written(lot, tree, values, 3);
            format!("{}{text}", ['-', '−'][lot.random_range(0..2)])
        }
        Tree::Sum(sign, a, b) => {
            let (binds, marks): (u8, &[char]) = match sign {
                '+' => (1, &['+']),
                '-' => (1, &['-', '−']),
                '*' => (2, &['*', '×']),
                _ => (2, &['/', '÷']),
            };
            let a = written(lot, a, values, binds);
            // What stands to the right binds closer: 2 - (3 - 4).
            let b = written(lot, b, values, binds + 1);
            let mark = marks[lot.random_range(0..marks.len())];
            wrap(format!("{a}{space}{mark}{space}{b}"), binds)
        }
    }
}

fn tree(lot: &mut ChaCha8Rng, count: usize, deep: u32, long: bool) -> Tree {
    let tree = |lot: &mut _, count, deep| tree(lot, count, deep, long);
    let sum = deep > 0 && lot.random_bool(0.6);
    match lot.random_range(0..10) {
        _ if sum => {
            let sign = ['+', '-', '*', '/'][lot.random_range(0..4)];
            let (a, b) = (tree(lot, count, deep - 1), tree(lot, count, deep - 1));
            Tree::Sum(sign, Box::new(a), Box::new(b))
        }
        0 if deep > 0 => Tree::Less(Box::new(tree(lot, count, deep - 1))),
        0..4 => match lot.random_range(0..3) {
            0 => Tree::Bare([0, lot.random_range(0..40)][lot.random_range(0..2)], 1),
            1 => Tree::Bare(lot.random_range(0..200), 10),
            _ => Tree::Bare(
                lot.random_range(1..64),
                if long {
                    [4_294_967_291, 4_294_967_279][lot.random_range(0..2)]
                } else {
                    [3, 7, 64][lot.random_range(0..3)]
                },
            ),
        },
        4 => {
            let n = lot.random_range(1..50);
            match lot.random_range(0..4) {
                0 => Tree::Unit(Kind::Length, format!("{n} mm"), big(n, 1)),
                1 => Tree::Unit(Kind::Length, format!("{n}/16 in"), big(n * 127, 80)),
                2 => Tree::Unit(Kind::Angle, format!("{n}° 30'"), big(2 * n + 1, 720)),
                _ => Tree::Unit(Kind::Angle, format!("1/{n} turn"), big(1, n)),
            }
        }
        _ => Tree::Name(lot.random_range(0..count)),
    }
}

const KINDS: [Kind; 3] = [Kind::Length, Kind::Angle, Kind::Number];

fn draw(lot: &mut ChaCha8Rng) -> Vec<Value> {
    let count = lot.random_range(1..=32);
    // Some cards hold one kind, so that their formulas come out; some hold all.
    let kinds = if lot.random_bool(0.6) { 1 } else { 3 };
    let plain = lot.random_range(0.05..0.9);
    // Of some cards each value names only later ones: without a cycle, however long.
    let straight = lot.random_bool(0.5);
    // Some hold figures so long that what comes of them does not fit.
    let long = lot.random_bool(0.1);
    let mut order: Vec<usize> = (0..count).collect();
    order.shuffle(lot);
    let mut all: Vec<Option<Value>> = vec![None; count];
    for (rank, &place) in order.iter().enumerate() {
        let kind = KINDS[[0, 2, 1][lot.random_range(0..kinds)]];
        let drawing = if lot.random_bool(plain) || straight && rank + 1 == count {
            Err(format!("{}.{}", lot.random_range(0..60), lot.random_range(0..10)))
        } else {
            let deep = lot.random_range(0..4);
            let mut tree = tree(lot, count, deep, long);
            if straight {
                rename(&mut tree, &|at| order[rank + 1 + at % (count - rank - 1)]);
            }
            Ok(tree)
        };
        let measured =
            if lot.random_bool(0.15) { lot.random_range(1..60).to_string() } else { String::new() };
        all[place] = Some(Value { name: format!("v{place}_x"), kind, drawing, measured });
    }
    all.into_iter().map(Option::unwrap).collect()
}

fn rename(tree: &mut Tree, new: &impl Fn(usize) -> usize) {
    match tree {
        Tree::Name(at) => *at = new(*at),
        Tree::Less(tree) => rename(tree, new),
        Tree::Sum(_, a, b) => [a, b].into_iter().for_each(|tree| rename(tree, new)),
        _ => {}
    }
}

fn names(tree: &Tree, into: &mut Vec<usize>) {
    match tree {
        Tree::Name(at) => into.push(*at),
        Tree::Less(tree) => names(tree, into),
        Tree::Sum(_, a, b) => [a, b].into_iter().for_each(|tree| names(tree, into)),
        _ => {}
    }
}

/// What each value waits for, in one of the chains.
fn waits(values: &[Value], measured: bool) -> Vec<Vec<usize>> {
    values
        .iter()
        .map(|value| {
            let mut on = Vec::new();
            if let (Ok(tree), false) = (&value.drawing, measured && !value.measured.is_empty()) {
                names(tree, &mut on);
                on.sort_unstable();
                on.dedup();
            }
            on
        })
        .collect()
}

/// How many steps the shortest way from `from` round to itself has; none where there is none.
/// Every way is tried, step by step, up to as many as there are values.
fn round(on: &[Vec<usize>], from: usize) -> Option<usize> {
    let mut reached = on[from].clone();
    for steps in 1..=on.len() {
        if reached.contains(&from) {
            return Some(steps);
        }
        let mut next: Vec<usize> = reached.iter().flat_map(|&at| on[at].iter().copied()).collect();
        next.sort_unstable();
        next.dedup();
        reached = next;
    }
    None
}

/// Whether a cycle is met somewhere from `from` on.
fn meets_a_cycle(on: &[Vec<usize>], from: usize) -> bool {
    let mut seen = vec![false; on.len()];
    let mut open = vec![from];
    while let Some(at) = open.pop() {
        if !std::mem::replace(&mut seen[at], true) {
            open.extend(&on[at]);
        }
    }
    (0..on.len()).any(|at| seen[at] && round(on, at).is_some())
}

/// The value at `at` by plain recursion; only asked where no cycle is met.
fn outcome(values: &[Value], at: usize, measured: bool) -> Result<Size, Wrong> {
    let value = &values[at];
    let text = |text: &str| {
        let (whole, part) = text.split_once('.').unwrap_or((text, "0"));
        let size = big(whole.parse::<i64>().unwrap() * 10 + part.parse::<i64>().unwrap(), 10);
        Size { kind: Some(value.kind), size: bare(value.kind, size) }
    };
    if measured && !value.measured.is_empty() {
        return Ok(text(&value.measured));
    }
    let tree = match &value.drawing {
        Err(plain) => return Ok(text(plain)),
        Ok(tree) => tree,
    };
    let Size { kind, size } = worked(tree, &|at| outcome(values, at, measured).ok())?;
    match kind {
        None => Ok(Size { kind: Some(value.kind), size: bare(value.kind, size) }),
        Some(kind) if kind == value.kind => Ok(Size { kind: Some(kind), size }),
        Some(_) => Err(Wrong::Units),
    }
}

fn size(amount: Amount) -> Size {
    let of = |value: Fraction| big(value.num(), value.den());
    let (kind, size) = match amount {
        Amount::Length(length) => (Kind::Length, of(Length::mm(length))),
        Amount::Angle(angle) => (Kind::Angle, of(Angle::turns(angle))),
        Amount::Number(number) => (Kind::Number, of(number)),
    };
    Size { kind: Some(kind), size }
}

/// What came out, to see that every outcome was met.
#[derive(Debug, Default)]
struct Tally {
    exact: u32,
    overflow: u32,
    zero: u32,
    units: u32,
    depends: u32,
    cycles: u32,
    longest_cycle: usize,
}

#[test]
fn values_agree_with_plain_recursion_and_cycles_with_every_way_round() {
    let mut tally = Tally::default();
    for seed in 0..6_000 {
        let mut lot = ChaCha8Rng::seed_from_u64(seed);
        let values = draw(&mut lot);
        let called: Vec<String> = values.iter().map(|value| value.name.clone()).collect();
        let texts: Vec<String> = values
            .iter()
            .map(|value| match &value.drawing {
                Ok(tree) => format!("= {}", written(&mut lot, tree, &called, 0)),
                Err(plain) => plain.clone(),
            })
            .collect();
        let given: Vec<Given> = values
            .iter()
            .zip(&texts)
            .map(|(value, text)| Given {
                name: &value.name,
                kind: value.kind,
                drawing: text,
                measured: &value.measured,
            })
            .collect();
        let found = chain(&given).unwrap();
        assert_eq!(found.len(), values.len());
        for measured in [false, true] {
            let on = waits(&values, measured);
            let of = |found: &Found| {
                if measured { found.in_force.clone() } else { found.drawing.clone() }
            };
            for at in 0..values.len() {
                let case = || format!("seed {seed}, measured {measured}, value {at}: {given:#?}");
                check(
                    &values,
                    &on,
                    at,
                    measured,
                    &found.iter().map(of).collect::<Vec<_>>(),
                    &mut tally,
                    &case,
                );
            }
        }
    }
    // All of it was met, often.
    let Tally { exact, overflow, zero, units, depends, cycles, longest_cycle } = tally;
    assert!(exact > 20_000 && units > 2_000 && depends > 2_000 && cycles > 2_000, "{tally:?}");
    assert!(overflow > 20 && zero > 200 && longest_cycle > 5, "{tally:?}");
}

fn check(
    values: &[Value],
    on: &[Vec<usize>],
    at: usize,
    measured: bool,
    found: &[Result<Amount, Fault>],
    tally: &mut Tally,
    case: &dyn Fn() -> String,
) {
    if let Some(steps) = round(on, at) {
        let Err(Fault::Cycle(way)) = &found[at] else { panic!("{:?} {}", found[at], case()) };
        assert_eq!((usize::from(way[0]), way.len()), (at, steps), "{}", case());
        for (k, &from) in way.iter().enumerate() {
            let to = usize::from(way[(k + 1) % way.len()]);
            assert!(on[usize::from(from)].contains(&to), "{way:?} {}", case());
        }
        tally.cycles += 1;
        tally.longest_cycle = tally.longest_cycle.max(steps);
        return;
    }
    // It is worked out unless something it waits for is not.
    match &found[at] {
        Err(Fault::Depends(waits)) => {
            let waits = usize::from(*waits);
            assert!(on[at].contains(&waits) && found[waits].is_err(), "{}", case());
            tally.depends += 1;
        }
        _ if meets_a_cycle(on, at) => {
            // What is wrong before the cycle is met in the text may be said as well.
            assert!(
                matches!(found[at], Err(Fault::Units(..) | Fault::Text(_))),
                "{:?} {}",
                found[at],
                case()
            );
        }
        Ok(amount) => {
            assert_eq!(Ok(size(*amount)), outcome(values, at, measured), "{}", case());
            tally.exact += 1;
        }
        Err(Fault::Units(..)) => {
            assert_ne!(outcome(values, at, measured).map(|_| ()), Ok(()), "{}", case());
            tally.units += 1;
        }
        Err(Fault::Text(error)) => {
            assert_eq!(error.field, Field::Value, "{}", case());
            match error.cause {
                Cause::Zero => {
                    assert_ne!(outcome(values, at, measured).map(|_| ()), Ok(()), "{}", case());
                    tally.zero += 1;
                }
                Cause::Overflow => {
                    let Ok(tree) = &values[at].drawing else { panic!("{}", case()) };
                    let value = |at| outcome(values, at, measured).ok();
                    assert!(too_long(tree, &value), "{}", case());
                    tally.overflow += 1;
                }
                cause => panic!("{cause:?} {}", case()),
            }
        }
        fault => panic!("{fault:?} {}", case()),
    }
}
