// Every function the package exports and every field of its answers, used as the
// types allow: it compiles, or handturn.d.ts says something else than it should.
import * as handturn from 'handturn';
import {
  divide, ways, place, step, working, head, nearest, init, initSync, HandturnError,
  readNumber, readRatio, readAngle, readAngles, readLength, readPlates, readGears,
} from 'handturn';
import type {
  Answer, Arms, At, CircleAt, Compound, Differential, Equation, Fraction, Group, Head, Holes, Kind, Marks,
  Millimetres, Move, Near, Place, Rated, Request, Sense, Turns, Wasm, Way, Word, AngleGiven,
} from 'handturn';

/** Compiles only where both are the same type: neither wider nor narrower. */
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends (<T>() => T extends B ? 1 : 2) ? true : false;
const is = <T extends true>(): T | undefined => undefined;

// Every function there is, by name; test.mjs compares the names with the built module's.
export const all: Record<keyof typeof handturn, unknown> = {
  init, initSync, HandturnError, divide, ways, place, step, working, head, nearest,
  readNumber, readRatio, readAngle, readAngles, readLength, readPlates, readGears,
};

export async function starts(bytes: ArrayBuffer, fetched: Response): Promise<void> {
  const wasm: Wasm = new WebAssembly.Module(bytes);
  await init(wasm);
  await init(new Uint8Array(bytes));
  await init(Promise.resolve(fetched));
  initSync(bytes);
}

const angles: AngleGiven[] = ['17°30′', 17.5, [7, 144]];
const owned: Head = {
  name: 'Mine', ratio: [81, 2], workTurns: 'clockwise', tilted: false, degreeRing: 'none', slack: '1/10', spindleClamp: true,
  plates: [[15, 16], [21, 23]], plateStop: 'withdraws', direct: [24], wormDropsOut: true, gears: '24x2 28', studDistance: '',
  studMargin: 2, mostIdlers: 2, oneIdler: 'follows', fourGears: true, reachLeast: 20, reachGreatest: '60 mm', pin: 2.5,
  armsLeast: 10, armsGreatest: [35, 36], handwheel: true, handwheelMarks: '3′', handwheelVernier: 1, fineDial: true,
  fineShift: 5, fineMarks: 100, fineTravel: '10°', fineSlack: 0, workDiameter: '3 in',
};
const marks: Marks = {
  count: 365, kinds: [{ length: 6 }, { length: '3 mm' }], pattern: [0, 1], numbers: { every: 10, perMark: 1, climbs: 'anticlockwise', zero: true },
};
export const requests: Request[] = [
  { parts: 127, every: 2, head: owned }, { parts: 64 }, { angle: '17°30′', times: 3 }, { list: angles }, { list: '0 10 25.5' }, { marks },
];

/** Every field of an answer, each with the type it is said to have. */
export function reads(request: Request): string[] {
  const answer: Answer = divide(request);
  const { groups, left_out, lacking } = answer;
  const [{ kind: left, reason }] = left_out as [{ kind: Kind; reason: string }];
  const { circle: lacks, gear, gear_way } = lacking;
  const [{ kind, count, closest, quickest }] = groups as [Group];
  const rated: Rated[] = [...closest, ...quickest, ...ways(request), ...ways(request, 'closest'), ...ways(request, 'quickest')];
  const said = [left, reason, kind, count.toFixed(), lacks?.toFixed(), gear?.toFixed(), gear_way?.holes.toFixed()];
  for (const { way, errors: { worst, adjacent, closing } } of rated) {
    const [num, den]: Turns = worst;
    said.push(num.toFixed(), den.toFixed(), adjacent.join(), closing.join(), ...wayOf(way));
    said.push(...placed(place(request, way, 0)), ...moved(step(request, way, 0)), ...working(request, way).flatMap(line));
  }
  return said.filter((text) => text !== undefined);
}

function wayOf(way: Way): string[] {
  if ('Direct' in way) return [way.Direct.notches.toFixed(), sense(way.Direct.sense)];
  if ('Plain' in way) return holes(way.Plain);
  if ('Handwheel' in way) return [way.Handwheel.dial.marks.toFixed(), way.Handwheel.dial.vernier.toFixed(), way.Handwheel.ratio.join()];
  if ('Compound' in way) return compound(way.Compound);
  if ('Differential' in way) return differential(way.Differential);
  if ('FineDial' in way) {
    const { shift, marks, travel, slack } = way.FineDial.dial;
    return [...holes(way.FineDial), shift.join(), marks.toFixed(), travel.join(), slack.join()];
  }
  // Nothing but this is left.
  is<Same<typeof way, { NearestHole: Holes }>>();
  return holes(way.NearestHole);
}

function holes({ circle, ratio, arms }: Holes): string[] {
  return [...circleAt(circle), ratio.join(), ...opening(arms)];
}
const circleAt = ({ plate, holes }: CircleAt): string[] => [plate.toFixed(), holes.toFixed()];
const opening = ({ least, greatest }: Arms): string[] => [least.join(), greatest.join()];

function compound({ plate, pin, back, pin_spaces, back_spaces, times_round, ratio, arms }: Compound): string[] {
  return [[plate, pin, back, pin_spaces, back_spaces, times_round].map((n) => n.toFixed()).join(), ratio.join(), ...opening(arms)];
}

function differential({ circle, holes, ratio, arms, train, follows }: Differential): string[] {
  const { first, second, idlers, idlers_in } = train;
  is<Same<typeof follows, boolean>>();
  const [near, far] = idlers;
  return [
    ...circleAt(circle), holes.toFixed(), ratio.join(), ...opening(arms), first.driver.toFixed(), first.driven.toFixed(),
    second === null ? '' : second.driver.toFixed() + second.driven.toFixed(), near?.toFixed() ?? '', far?.toFixed() ?? '', idlers_in === 'First' ? '1' : '2',
  ];
}

const sense = (sense: Sense): string => (sense === 'Clockwise' ? 'cw' : 'ccw');
const at = (at: At | null): string => (at === null ? '' : at.number.toFixed() + at.of.toFixed());

function placed({ index, wanted, stands, handle, pin, back_pin, dial, notch }: Place): string[] {
  return [index.toFixed(), wanted.join(), stands.join(), handle.join(), at(pin), at(back_pin), at(dial), at(notch)];
}

function moved({ legs }: Move): string[] {
  return legs.map(({ part, sense: way, turns, spaces, from, to, arms }) => {
    is<Same<typeof part, 'Pin' | 'BackPin' | 'Handwheel' | 'FineDial' | 'Spindle'>>();
    const set = arms === null ? '' : arms.spaces.toFixed() + arms.show.toFixed() + String(!arms.rest);
    return [part, sense(way), turns.toFixed(), spaces.toFixed(), at(from), at(to), set].join();
  });
}

const word = (word: Word): string => (typeof word === 'string' ? word : Object.values(word).map((n) => n.toFixed()).join());
function line({ about, terms, remark }: Equation): string[] {
  return [about, remark].map((said) => (said === null ? '' : word(said))).concat(terms.map((term) => {
    if ('Over' in term) return term.Over.join('/');
    if ('Whole' in term) return term.Whole.toFixed();
    if ('Angle' in term) return term.Angle.join('/');
    if ('Sign' in term) return term.Sign.trim();
    is<Same<typeof term, { Word: Word }>>();
    return word(term.Word);
  }));
}

export function texts(): unknown[] {
  const near: Near = nearest(355, 113, 100);
  const part: Fraction = near.fraction, rest: Fraction = near.residual;
  const whole: object = head(owned), usual: object = head();
  is<Same<ReturnType<typeof readNumber>, Fraction>>();
  is<Same<ReturnType<typeof readRatio>, Fraction>>();
  is<Same<ReturnType<typeof readAngle>, Turns>>();
  is<Same<ReturnType<typeof readAngles>, Turns[]>>();
  is<Same<ReturnType<typeof readLength>, Millimetres>>();
  const plates = readPlates('15 16 / 49(51.5)').map(({ circles }) => circles.map(({ holes, radius }) => [holes.toFixed(), radius?.join()]));
  const gears = readGears('24x2 28').map(({ teeth, count }) => teeth * count);
  return [part, rest, whole, usual, plates, gears, readNumber('1/2'), readRatio('40 : 1'), readAngle('1°'), readAngles('1 2'), readLength('1 in')];
}

export function refused(call: () => void): string {
  try {
    call();
  } catch (error) {
    if (error instanceof HandturnError) {
      const { field, cause, limits, message } = error;
      const range = limits === null ? '' : 'most' in limits ? limits.most.toFixed() : limits.least.toFixed() + limits.greatest.toFixed();
      return [field, cause, range, message].join();
    }
    throw error;
  }
  return '';
}
