// Every function the package exports and every field of its answers, used as the
// types allow: it compiles, or handturn.d.ts says something else than it should.
import * as handturn from 'handturn';
import {
  divide, ways, place, step, working, budget, makePlate, plateRing, plateHoles, drumTape, drumFor, touchingDisks, head, nearest, init, initSync, HandturnError,
  readNumber, readRatio, readAngle, readAngles, readLength, readPlates, readGears,
  threads, readThread, threadSizes, threadBlank, tappingDrills, whichThread, infeed, passes, pass, wires, overWires, fromWires, gearsFor,
  wheelSizes, wheelCutter, wheelBlank, whichWheel, teethOfBlank, wheelPitch, wheelSwing, meshWheels, openCentres, teethOfPair,
  toothCaliper, toothSpan, toothPins, trialGaps,
  dialMarks, dialMark, dialStops, dialFigures, vernier, vernierReads, dialWidth, dialDiameter, dialsForScrew, fineDialSteps, fineDial,
  ratchet, faceTeeth, splines, keyway, flats, clockPair, camLobe, camSteps,
  helical, helixGears, wormPair, bevelPair, rack,
  sum, sums, cardValues,
} from 'handturn';
import type {
  Answer, Arms, At, CircleAt, Compound, Differential, Equation, Fraction, Group, Head, Holes, Kind, Marks,
  Millimetres, Move, Near, Place, Rated, Request, Sense, Turns, Wasm, Way, Word, AngleGiven,
  Blank, Candidate, Depths, DrillsAsked, Form, FromWires, Gears, GearsAsked, GearTrain, InfeedAsked, Lathe, Left, Length, LengthGiven,
  LimitsOfSize, Measured, OverAsked, Over, OverWires, OwnThread, Pass, Passes, PassesAsked, PitchGiven, Profile, Range, ReadingAsked, Series,
  Budget, ErrorSize, ErrorSizes, PlateAsked, PlatePlan, RingAsked, RingFit, Source, Sources,
  DialAt, DialShows, HolesAsked, HolesPlaced, Seconds, TableScrew, TapeAsked, TapeSizes,
  AngleTold, Arcsec, DialAsked, DialReading, DialsForScrew, DialWidth, Figures, FiguresAsked, FineArm, FineAsked, FineDial, FineStep, Mark,
  MarkAsked, Stops, StopsAsked, Vernier, VernierAsked, VernierReading,
  CamLobeAsked, ClockBlank, ClockPair, ClockPairAsked, FlatsAsked, FlatsFound, RatchetAsked, RatchetCut, SplineCuts, SplinesAsked,
  BevelAsked, BevelPair, BevelWheel, HelicalAsked, HelicalSizes, HelixGearsAsked, HelixTrain, MillGiven, RackAsked, RackSizes,
  ToothCaliper, WormAsked, WormSizes, WormWheel,
  About, Caliper, Cutter, CutterAsked, CutterChoice, Mesh, NumberGiven, PairAsked, Pins, PinsOver, Span, Swing, SwingAsked, ToothAsked, ToothSize,
  Trial, TrialAsked, WheelAsked, WheelBlank, WheelFound, WheelOwn, WheelSizes, WheelTold,
  SumAnswer, SumFigure, SumKind, CardAmount, CardGiven, CardKind, CardValue,
  Side, Sizes, Tapping, Thread, ThreadAsked, ThreadGiven, Wires, WiresAsked,
} from 'handturn';

/** Compiles only where both are the same type: neither wider nor narrower. */
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends (<T>() => T extends B ? 1 : 2) ? true : false;
const is = <T extends true>(): T | undefined => undefined;

// Every function there is, by name; test.mjs compares the names with the built module's.
export const all: Record<keyof typeof handturn, unknown> = {
  init, initSync, HandturnError, divide, ways, place, step, working, budget, makePlate, plateRing, plateHoles, drumTape, drumFor, touchingDisks, head, nearest,
  readNumber, readRatio, readAngle, readAngles, readLength, readPlates, readGears,
  threads, readThread, threadSizes, threadBlank, tappingDrills, whichThread, infeed, passes, pass, wires, overWires, fromWires, gearsFor,
  wheelSizes, wheelCutter, wheelBlank, whichWheel, teethOfBlank, wheelPitch, wheelSwing, meshWheels, openCentres, teethOfPair,
  toothCaliper, toothSpan, toothPins, trialGaps,
  dialMarks, dialMark, dialStops, dialFigures, vernier, vernierReads, dialWidth, dialDiameter, dialsForScrew, fineDialSteps, fineDial,
  ratchet, faceTeeth, splines, keyway, flats, clockPair, camLobe, camSteps,
  helical, helixGears, wormPair, bevelPair, rack,
  sum, sums, cardValues,
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

const errs: Sources = {
  wheel: [1, 43_200], worm: '0°0′10″', hole: 0.02, pinPlay: '0.02 mm', plateRunOut: [1, 100], blankRunOut: '0.0005 in', reading: '1/4', sameSide: true, radius: 50,
};
const plateAsked: PlateAsked[] = [
  { parts: 127, head: owned, multiple: 2, ring: 55, drilling: '0.05', sources: errs, pays: '1/10' }, { angle: 17.5 },
];
const ringAsked: RingAsked[] = [
  { holes: 127, drill: 1.5, radius: '55 mm', rim: 60, rings: [{ radius: 40, drill: 3 }], web: 0.5, head: owned }, { holes: 12 },
];

export function plates(): string[] {
  const size = ({ arcsec, mm, within }: ErrorSize): string => [arcsec, mm, within].map((n) => n.toFixed()).join();
  const sizes = ({ total, adjacent, rms, adjacent_rms }: ErrorSizes): string => [total, adjacent, rms, adjacent_rms].map(size).join();
  const budgeted = ({ rounding, terms, sum, dominant }: Budget): string[] => [
    rounding.worst.join(), rounding.adjacent.join(), rounding.closing.join(), sizes(sum), dominant ?? '',
    ...terms.map((term) => (term.source satisfies Source) + term.spread + sizes(term)),
  ];
  const planned = ({ needs, parts, circle, work, enough, generations }: PlatePlan): string[] => [
    needs.turns.join(), needs.holes.toFixed(), ...(needs.owned === null ? [] : circleAt(needs.owned)), parts.count.toFixed(), parts.every.toFixed(),
    ...circleAt(circle), ...wayOf(work), enough.toFixed(),
    ...generations.flatMap((one) => [...wayOf(one.way), ...budgeted(one.plate), ...budgeted(one.work), one.gain.toFixed(), String(!one.pays)]),
  ];
  const fitted = ({ radius, drill, web, beside, to_rim, play }: RingFit): string[] =>
    [...[radius, drill, web].map(told), ...[beside, to_rim, play].map(toldMaybe)];
  const plans = plateAsked.flatMap((asked) => planned(makePlate(asked)).concat(planned(makePlate(asked, ways(asked)[0]?.way))));
  return [...plans, ...ringAsked.flatMap((asked) => fitted(plateRing(asked))), ...ways({ parts: 64 }).flatMap(({ way }) => budgeted(budget({ parts: 64, sources: errs }, way)))];
}

const table: TableScrew = { lead: 2.5, marks: 50, slack: '0.15 mm', falls: true };
const holesAsked: HolesAsked[] = [
  { holes: 131, ring: 55, first: '90°', sense: 'clockwise', centre: [60, '60 mm'], screws: [table, { lead: '1/10 in', marks: 100 }] },
  { holes: 6, ring: 40, sense: 'anticlockwise', screws: table }, { holes: 6, ring: 40 },
];
const tapeAsked: TapeAsked = { parts: 131, drum: 120, thickness: 0.1, stretch: [1, 1], thicker: 0 };

export function places(): string[] {
  const secs = ({ arcsec, within }: Seconds): string => arcsec.toFixed() + within.toFixed();
  const shown = ({ turns, mark }: DialShows): string => turns.toFixed() + mark.toFixed();
  const dialled = ({ shows, off, comes, past }: DialAt): string => {
    is<Same<typeof comes, 'Stays' | 'Straight' | 'Past'>>();
    return [shown(shows), told(off), comes, past === null ? '' : shown(past)].join();
  };
  const laid = ({ holes, worst }: HolesPlaced): string[] => [
    ...holes.flatMap(({ degrees, from_centre, from_edges, dial }) => [degrees.toFixed(), ...[...from_centre, ...from_edges].map(told), ...(dial ?? []).map(dialled)]),
    ...(worst === null ? [] : [...[worst.outwards, worst.onwards, worst.neighbours].map(told), secs(worst.onwards_arcsec), secs(worst.neighbours_arcsec)]),
  ];
  const { pitch, length, lap, lap_arcsec, tenth_arcsec }: TapeSizes = drumTape(tapeAsked);
  const { disk, central } = touchingDisks({ parts: 9, diameter: '7 3/8 in' });
  const { drum } = drumFor({ parts: 131, pitch: 3, thickness: 0.1 });
  return [...holesAsked.flatMap((asked) => laid(plateHoles(asked))), ...[pitch, length, lap, disk, central, drum].map(told), secs(lap_arcsec), secs(tenth_arcsec)];
}

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
      const range = limits === null ? [] : 'most' in limits ? [limits.most] : 'least' in limits ? [limits.least, limits.greatest] : [limits.least_mm, limits.greatest_mm];
      return [field, cause, ...range.map((n) => n.toFixed()), message].join();
    }
    throw error;
  }
  return '';
}

// --- threads ---

const lengths: LengthGiven[] = ['1/4 in', 6.35, [127, 20]];
const pitch: PitchGiven = '32 tpi';
const ownThread: OwnThread = { form: { angle: 40, crestFlat: '1/8', rootFlat: [1, 8] }, major: 20, pitch, starts: 2, hand: 'left' };
const givenThreads: ThreadGiven[] = ['M6x0.75-6g', { name: '10' }, { name: '10', pick: 1 }, ownThread, { form: 'tr', major: '16', pitch: 4 }];
const askedThread: ThreadAsked = { thread: givenThreads[0]!, side: 'screw', class: '6g' };
const drilled: DrillsAsked = { thread: 'M6', percent: '75', sets: ['metric', 'number', 'letter', 'fraction'], drills: lengths };
const fedIn: InfeedAsked = { ...askedThread, work: 5.9, nose: { flat: 0.09 }, feed: { short: '30′' } };
const cutIn: PassesAsked = {
  ...fedIn, nose: { radius: 0.1 }, feed: 'plunge', depth: 0.5, first: 0.2, least: 0.05, spring: 2,
  dial: { division: '0.001 in', reads: 'diameter', marks: 100 }, left: 0.1, dialAt: 20, from: 1, most: 50,
};
const overIt: OverAsked = { ...askedThread, wire: 0.45 };
const withWires: WiresAsked = { ...askedThread, owned: lengths };
const readIt: ReadingAsked = { ...overIt, reading: '6.2', setOver: 29.5 };
const lathe: Lathe = {
  screw: '8 tpi', screwHand: 'right', head: 1, gearbox: [1, '1 : 2', [1, 3]], gears: [20, 30, 127], studDistance: 0, studMargin: 2,
  mostIdlers: 2, fourGears: true, drive: 'either',
};
const leads: GearsAsked[] = [
  { thread: 'M6x0.75', lathe, six: 'always', steps: 1000 }, { lead: pitch, starts: 2, hand: 'left', lathe, six: 50 },
  { module: 1, lathe }, { diametralPitch: [20, 1], lathe, six: 'never' },
];
const measuredOnes: Measured[] = [{ diameter: '0.187 in', pitch: '32 tpi' }, { diameter: 5, pitch: 0.8, side: 'nut' }];

const told = ({ mm, inch, exact, within }: Length): string => [mm.toFixed(3), inch.toFixed(4), exact ?? within.toExponential()].join();
const toldMaybe = (length: Length | null): string => (length === null ? 'not set' : told(length));
const ranged = ({ max, min }: Range): string => toldMaybe(max) + toldMaybe(min);
const sideOf = (side: Side): string => (side === 'screw' ? 'a' : 'b');

function threadOf({ name, series, form, angle, major, pitch, tpi, lead, starts, hand, class: made, side }: Thread): string[] {
  is<Same<typeof hand, 'Right' | 'Left'>>();
  const listed: Series | null = series;
  const shape: Form = form;
  return [
    name ?? 'own', listed ?? '', shape, angle.toFixed(1), told(major), told(pitch), tpi.toFixed(1), told(lead), starts.toFixed(), hand, made ?? '',
    side === null ? '' : sideOf(side),
  ];
}

function profileOf({ depth, crest_flat, root_flat, crest_radius, root_radius }: Profile): string {
  return [depth, crest_flat, root_flat, crest_radius, root_radius].map(told).join();
}

function limited({ class: made, side, major, pitch_diameter, minor }: LimitsOfSize): string {
  return [made, sideOf(side), ranged(major), ranged(pitch_diameter), ranged(minor)].join();
}

export function sized(): string[] {
  const { thread, basic, profile, limits }: Sizes = threadSizes(askedThread);
  const { major, pitch_diameter, minor_external, minor_internal, major_internal } = basic;
  const { class: made, side, to, limits: within, die }: Blank = threadBlank({ thread: ownThread });
  const tapping: Tapping[] = tappingDrills(drilled);
  const [{ drill: { set, name, diameter }, percent, percent_of_nut }] = tapping as [Tapping];
  is<Same<typeof set, 'Number' | 'Letter' | 'Fraction' | 'Metric' | null>>();
  const found: Candidate[] = measuredOnes.flatMap(whichThread);
  const apart = found.map(({ thread: one, off_diameter, off_pitch, reasons }) => [
    ...threadOf(one), told(off_diameter), told(off_pitch),
    ...reasons.map((reason) => (reason === 'Angle' ? reason : 'OverTwenty' in reason ? told(reason.OverTwenty) : told(reason.Diameter))),
  ]);
  const listed = threads().map(({ series, names }) => (series satisfies Series) + names.join());
  return [
    ...threadOf(thread), ...[major, pitch_diameter, minor_external, minor_internal, major_internal].map(told), told(profile.sharp_height),
    profileOf(profile.external), profileOf(profile.internal), ...limits.map(limited), made ?? '', sideOf(side), told(to),
    within === null ? '' : ranged(within), toldMaybe(die), name, told(diameter), percent.toFixed(), percent_of_nut.toFixed(), ...apart.flat(), ...listed,
    ...readThread('10').flatMap(threadOf),
  ];
}

const passOf = ({ number, spring, reading: { from_zero, turns, mark, shows }, cut, depth }: Pass): string =>
  [number.toFixed(), String(!spring), from_zero.toFixed(), turns.toFixed(), mark.toFixed(), told(shows), told(cut), told(depth)].join();

export function cut(): string[] {
  const depths: Depths = infeed(fedIn);
  const { work, straight, along_slide, widen, tip, set_over, on_bed_scale, swing, drift } = depths;
  is<Same<typeof swing, 'None' | 'Clockwise' | 'Anticlockwise'>>();
  is<Same<typeof drift, 'None' | 'Headstock' | 'Tailstock'>>();
  const { count, left_out, depth, left_by_rounding, first, least, set_over: slide, passes: each }: Passes = passes(cutIn);
  return [
    ...[work, straight, along_slide, widen, tip, depth, left_by_rounding, first, least].map(told),
    ...[set_over, on_bed_scale, count, left_out, slide].map((n) => n.toFixed()), ...each.map(passOf), passOf(pass(cutIn, 1)),
  ];
}

const readAt = ({ pitch_diameter, over_wires, formula, lead_term, formula_will_do, touches, proud }: Over): string =>
  [...[pitch_diameter, over_wires, formula, lead_term, touches, proud].map(told), String(!formula_will_do)].join();
const off = ({ diameter, straight, along_slide }: Left): string => [diameter, straight, along_slide].map(told).join();

export function measure(): string[] {
  const { best, best_with_lead, least, greatest, by_root, lead_angle, chosen }: Wires = wires(withWires);
  const { wire, max, min }: OverWires = overWires(overIt);
  const { pitch_diameter, limits, verdict, to_limit, to_middle, at_most }: FromWires = fromWires(readIt);
  is<Same<typeof verdict, 'MoreToCut' | 'Within' | 'TooFar'>>();
  return [
    ...[best, best_with_lead, least, greatest, wire, pitch_diameter].map(told), String(!by_root), lead_angle.toFixed(), toldMaybe(chosen),
    readAt(max), readAt(min), ranged(limits), ...[to_limit, to_middle, at_most].map(off),
  ];
}

function trainOf({ pairs, idlers, idlers_in, setting, exact, ratio, cuts, off_ppm, off_over_100_mm }: GearTrain): string {
  const meshes = pairs.map(({ driver, driven }) => (driver / driven).toFixed());
  const all = [...idlers, idlers_in, setting, ratio, off_ppm].map((n) => n.toFixed());
  return [...meshes, ...all, String(!exact), told(cuts), told(off_over_100_mm)].join();
}

export function geared(): string[] {
  return leads.flatMap((asked) => {
    const { lead, trains, finished, tried_six, covered, weighed, unmounted, lacking }: Gears = gearsFor(asked);
    const { gear, train, with_127 } = lacking;
    const free = unmounted === null ? [] : [...unmounted.drivers, ...unmounted.driven, unmounted.setting].map((n) => n.toFixed()).concat(unmounted.why);
    return [
      told(lead), ...trains.map(trainOf), String(!finished), String(!tried_six), covered.toFixed(), weighed.toFixed(), ...free, gear?.toFixed() ?? '',
      train === null ? '' : trainOf(train), with_127 === null ? '' : trainOf(with_127),
    ];
  });
}

const ring: DialAsked = {
  count: 365, lines: [{ every: 10, length: 6 }, { every: 5, length: '4.5 mm' }, { every: 1, length: [3, 1] }],
  numbers: { every: 10, climbs: 'clockwise', zero: false },
};
const marksAsked: MarkAsked[] = [{ marks: dialMarks(ring), index: 5, workTurns: 'anticlockwise' }, { marks, index: 0 }, { marks, mark: 364 }];
const stopsAsked: StopsAsked[] = [{ marks, lead: '1/8 in', round: 125 }, { marks, lead: 5, round: 100, from: 1, runs: 'down' }];
const standing: FiguresAsked[] = [{ on: 'face', climbs: 'clockwise' }, { on: 'table', upright: false, climbs: 'anticlockwise' }, { on: 'handwheel', climbs: 'clockwise' }];
const verniers: VernierAsked[] = [{ count: 365, parts: 10 }, { main: 1, least: '5′', retrograde: true, long: true, double: true }];
const arm: FineArm = { lead: 1, radius: '60 mm', ratio: '60 : 1' };
const fineAsked: FineAsked = { ...arm, marks: 86, step: '1″', within: [1, 2_592_000], turns: [5, 2] };

const toldAngle = ({ turns: [num, den], degrees }: AngleTold): string => (num / den + degrees).toFixed();
const toldArc = ({ arcsec, within }: Arcsec): string => (arcsec + within).toFixed();
const readOff = ({ from_zero, turns, mark, travel }: DialReading): string => (from_zero + turns + mark).toFixed() + told(travel);

export function dials(): string[] {
  const cut: Mark[] = marksAsked.map(dialMark);
  const drawn: Stops[] = stopsAsked.map(dialStops);
  const stand: Figures[] = standing.map(dialFigures);
  is<Same<Figures['feet'], 'Front' | 'Back' | 'Centre' | 'Outside'>>();
  is<Same<Figures['lines_from'], Figures['feet']>>();
  is<Same<Figures['rises'], Sense>>();
  const laid: Vernier[] = verniers.map((asked) => vernier({ ...asked, diameter: 80 }));
  const met: VernierReading[] = verniers.map((asked) => vernierReads({ ...asked, reading: 7.25 }));
  const { arc, chord, line: { least: thin, greatest: thick } }: DialWidth = dialWidth({ count: 365, diameter: 160 });
  const { by_arc, by_chord } = dialDiameter({ count: 365, width: '0.04 in' });
  const { handy, for_step }: DialsForScrew = dialsForScrew({ lead: '8 tpi', step: 0.02 });
  const near: FineStep[] = fineDialSteps(arm);
  const { radius, mark, worst, most_marks, least_holes, shift, travel }: FineDial = fineDial(fineAsked);
  return [
    ...cut.flatMap(({ mark: at, kind, length, number }) => [at.toFixed(), kind.toFixed(), told(length), number?.toFixed() ?? '']),
    ...drawn.flatMap(({ start, ends }) => [readOff(start), ...ends.flatMap(({ reading, length, off: by }) => [readOff(reading), told(length), told(by)])]),
    ...stand.map(({ lines_from, feet, climbs_right, rises }) => [lines_from, feet, String(!climbs_right), rises].join()),
    ...laid.flatMap(({ divisions, over_marks, lines, main, least, division, spans, division_arc, spans_arc }) => [
      (divisions + over_marks + lines).toFixed(), ...[main, least, division, spans].map(toldAngle), toldMaybe(division_arc), toldMaybe(spans_arc),
    ]),
    ...met.flatMap(({ mark: at, line, left }) => [at.toFixed(), line.toFixed(), toldAngle(left)]),
    ...[arc, chord, thin, thick, by_arc, by_chord, radius].map(told),
    ...handy.flatMap(({ marks: n, step: by, inch }) => [n.toFixed(), told(by), String(!inch)]),
    ...(for_step === null ? [] : [for_step.needed.toFixed(), for_step.marks.toFixed(), told(for_step.each), told(for_step.off)]),
    ...near.flatMap(({ at_work, marks: n, radius: r }) => [toldAngle(at_work), n.toFixed(), told(r)]),
    toldArc(mark), toldArc(worst), most_marks.toFixed(), least_holes.toFixed(), toldAngle(shift), toldAngle(travel),
  ];
}

const click: RatchetAsked = { teeth: 48, outside: 40, undercut: '10°', cutter: 60, land: '0.2 mm' };
const shafts: SplinesAsked[] = [
  { keys: 6, major: 30, minor: 26, key: 6, cutter: 4 },
  { keys: 4, major: '1 in', fit: 'B', cutter: '1/8 in' },
];
const square: FlatsAsked = { sides: 4, across: 5, stock: 6.5, cutter: 3 };
const going: ClockPairAsked = { wheel: 64, leaves: 8, module: '0.8', rule: 'common' };
const strike: CamLobeAsked = { rise: 4, over: '90°', geared: 20, face: 6, raised: 53 };

export function shaped(): string[] {
  const { cutter, offset, depth, from_top, land, tooth, back, root, parts }: RatchetCut = ratchet(click);
  const cut = ({ between: { left, outside, foot, widest, proud }, ...of }: SplineCuts): string[] => {
    is<Same<typeof left, 'Ridge' | 'Loose' | 'Floor'>>();
    return [left, of.parts.toFixed(), ...[of.major, of.minor, of.key, of.offset, of.across, of.depth, of.flank, of.space, of.floor].map(told),
      ...[of.widest, outside, foot, widest, proud].map(toldMaybe)];
  };
  const { to_flat, straddle, sharp, cut: flat, parts: sides }: FlatsFound = flats(square);
  const blank = ({ pitch, outside, depth: deep, thickness, parts: teeth }: ClockBlank): string => [told(pitch), told(outside), told(deep), told(thickness), teeth].join();
  const { ratio, centres, factor, wheel, pinion, form, end_radius }: ClockPair = clockPair(going);
  const { lead, tilt, from_upright, travel, flute, gives, off: missed } = camLobe(strike);
  const { turn, each, cusp } = camSteps({ rise: 4, over: [1, 4], steps: 90, radius: 30, mill: 10 });
  const { arc, from_top: top, over } = keyway({ shaft: 20, width: 6, side: '3.5' });
  return [
    ...[offset, depth, from_top, land, root].map(told), ...[cutter, tooth, back, parts, sides].map((n) => n.toFixed()),
    faceTeeth({ teeth: 12, cutter: 60 }).raised.toFixed(), ...shafts.flatMap((shaft) => cut(splines(shaft))), told(to_flat), String(!straddle),
    ...(sharp === null ? [] : [told(sharp.stock), told(sharp.width), told(sharp.depth), toldMaybe(sharp.to_corner)]),
    ...(flat === null ? [] : [told(flat.depth), told(flat.over_first), told(flat.first_width), told(flat.width), toldMaybe(flat.round), flat.passes?.toFixed() ?? '']),
    ...[ratio, factor, tilt, from_upright, turn].map((n) => n.toFixed()), ...[centres, end_radius, lead, travel, flute, each, cusp, arc, top, over].map(told),
    blank(wheel), blank(pinion), form, toldMaybe(gives), toldMaybe(missed),
  ];
}

const sizes: ToothSize[] = [{ module: 1 }, { module: '1.5 mm' }, { diametralPitch: [15, 2] }];
const racks: ToothAsked[] = [
  { module: 1, pressureAngle: '14.5', depth: 'old' }, { diametralPitch: 48, depth: { addendum: 1, dedendum: '1.35' } }, { module: [1, 2] },
];
const shifted: NumberGiven = [1, 4];
const own: WheelOwn = { teeth: 64, shift: shifted, thinned: '0.02 mm' };
const wheel: WheelAsked = { module: 1, ...own };
const asFound: WheelFound = { ...wheel, outside: 65.9 };
const cutters: CutterAsked[] = [{ teeth: 64, numbering: 'module', halves: true }, { virtualTeeth: 68.5, owned: [1, '2 1/2', [7, 2]] }];
const setUp: SwingAsked = { outside: 66, depth: 2.25, centreHeight: 100, cutter: 63, collar: '1 1/2 in', beside: 20, clearance: 1 };
const twoWheels: PairAsked = { module: 1, first: own, second: { teeth: 38 } };
const trials: TrialAsked[] = [{ ...asFound, cutting: 'generated', pin: 1.7, reading: 67 }, { ...asFound, across: 8, reading: 24 }, { ...asFound, height: 1, reading: 1.6 }];

const roughly = ({ value, within }: About): string => value.toFixed() + within.toExponential();
const cutterOf = ({ number, other_number, least, greatest }: Cutter): string => [number, other_number, least, greatest ?? 0].map((n) => n.toFixed(1)).join();

export function wheels(): string[] {
  const found: WheelSizes[] = racks.map((rack) => wheelSizes({ ...rack, teeth: 64 }));
  const each = found.flatMap((one) => {
    is<Same<typeof one.depth_rule, 'old' | 'coarse' | 'fine' | 'own'>>();
    const {
      module, outside_diameter, pitch_diameter, root_diameter, base_diameter, addendum, dedendum, whole_depth, circular_pitch, base_pitch, thickness,
      top_land, pointed_at, diametral_pitch, fewest_teeth, undercut, thin_top, clear_shift,
    } = one;
    return [
      ...[module, outside_diameter, pitch_diameter, root_diameter, base_diameter, addendum, dedendum, whole_depth].map(told),
      ...[circular_pitch, base_pitch, thickness, top_land, pointed_at].map(told),
      diametral_pitch.toFixed(), fewest_teeth.toFixed(), String(!undercut), String(!thin_top), roughly(clear_shift),
    ];
  });
  const chosen: CutterChoice[] = cutters.map(wheelCutter);
  const which = chosen.map(({ cutter, until, in_range, beside }) =>
    [cutterOf(cutter), until?.toFixed() ?? 'rack', String(!in_range), beside === null ? '' : cutterOf(beside)].join());
  const { drawn, over, depth, drawn_depth, addendum, clearance, height }: WheelBlank = wheelBlank({ ...wheel, outside: 65.9 });
  is<Same<typeof height, 'Drawn' | 'Fair' | 'Low' | 'High' | 'Bottoms'>>();
  const { module, diametral_pitch, nearest_module, nearest_diametral_pitch, is_module }: WheelTold = whichWheel({ outside: 66, teeth: 64 });
  const blanks = sizes.map((size) => teethOfBlank({ ...size, outside: 66 })).flatMap((one) => [one.teeth.toFixed(), told(one.outside), told(one.over)]);
  const pitched = [wheelPitch({ circularPitch: '1 in' }), wheelPitch({ chord: 2.5, teeth: 48 }), wheelPitch({ diameter: 40, teeth: 75 })];
  const { over_table, table_clears, under_collar, collar_clears, over_head, head_clears, touching, at_depth, least_cutter }: Swing = wheelSwing(setUp);
  return [
    ...each, ...which, ...[drawn, over, depth, drawn_depth, addendum, clearance, module].map(told), diametral_pitch.toFixed(), String(!is_module),
    ...[nearest_module.module, nearest_module.outside, nearest_module.over, nearest_diametral_pitch.outside, nearest_diametral_pitch.over].map(told),
    nearest_diametral_pitch.diametral_pitch.toFixed(), ...blanks, ...pitched.flatMap(({ module: m, diameter, chord }) => [m, diameter, chord].map(toldMaybe)),
    ...[over_table, under_collar, touching, at_depth, least_cutter].map(told), toldMaybe(over_head),
    ...[table_clears, collar_clears, head_clears].map((clears) => String(!clears)),
  ];
}

export function meshed(): string[] {
  const runs: Mesh[] = [meshWheels({ ...twoWheels, centres: 51 }), meshWheels({ ...twoWheels, backlash: '0.05 mm' })];
  const each = runs.flatMap(({
    standard, ratio, centres, tight, working_angle, working_diameters, backlash, between_flanks, contact_ratio, runs_smoothly, root_clearance, fouls,
  }) => [
    ...[standard, centres, tight, backlash, between_flanks, ...working_diameters, ...root_clearance].map(told), ratio.toFixed(),
    roughly(working_angle), roughly(contact_ratio), ...[runs_smoothly, ...fouls].map((so) => String(!so)),
  ]);
  const { centres, opening, thinned } = openCentres({ ...twoWheels, centres: 51, measured: 0.02, wanted: 0.05 });
  const { sum, first, second, whole } = teethOfPair({ module: 1, centres: 51, ratio: [38, 64] });
  return [...each, ...[centres, opening, thinned].map(told), ...[sum, first, second].map((n) => n.toFixed()), String(!whole)];
}

const overPins = ({ reading, centres, touches, per_thickness, thickness }: PinsOver): string =>
  [...[reading, centres, touches].map(told), per_thickness.toFixed(), toldMaybe(thickness)].join();

export function checked(): string[] {
  const { thickness, height, constant, constant_height }: Caliper = toothCaliper(asFound);
  const { across, least, greatest, reading, touches, per_thickness, thickness: thick }: Span = toothSpan({ ...asFound, across: 8, reading: 23 });
  const pins: Pins = toothPins({ ...asFound, pin: 1.7, owned: [1.5, '1.8 mm'], reading: 68 });
  const cut: Trial[] = trials.map(trialGaps);
  return [
    ...[thickness, height, constant, constant_height, reading, touches].map(told), toldMaybe(thick),
    ...[across, least, greatest, per_thickness].map((n) => n.toFixed()), ...[pins.least, pins.best, pins.greatest].map(told),
    toldMaybe(pins.pin), pins.over === null ? 'none' : overPins(pins.over),
    ...cut.flatMap((one) => [told(one.reading), told(one.wanted), told(one.deeper), one.per_depth.toFixed()]),
  ];
}

const mill: MillGiven = { screw: '4 tpi', ratio: 40, gears: [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100], sameWayCuts: 'right' };
const slant: HelicalAsked = { diametralPitch: 10, teeth: 24, helix: '45°', hand: 'left', face: '1 in' };
const toothed: ToothAsked = { module: 2, pressureAngle: 20, depth: 'coarse' };
const helices: HelixGearsAsked[] = [
  { ...slant, mill, six: false },
  { lead: '27 in', diameter: 50, face: 40, grooves: 8, mill, geared: 'worm' },
];
const worms: WormAsked[] = [
  { pitch: '1/4 in', pressureAngle: '14.5', depth: 'old', starts: 3, diameter: '1.25 in' },
  { ...toothed, diameter: 20, teeth: 40, face: 12, leave: '0.2' },
];
const cones: BevelAsked[] = [
  { ...toothed, teeth: 20, mate: 40, face: 10, along: 'parallel' },
  { ...toothed, teeth: 20, mate: 40, shafts: 60, face: 10, along: 'tapering' },
];
const bar: RackAsked = { ...toothed, gaps: 20, division: 0.02, marks: 250, from: 3 };

export function slanted(): string[] {
  const held = ({ height, thickness }: ToothCaliper): string[] => [told(height), told(thickness)];
  const of: HelicalSizes = helical(slant);
  is<Same<HelicalSizes['table_swings'], Sense>>();
  const train = (one: HelixTrain): string[] => [
    ...one.pairs.flatMap(({ driver, driven }) => [driver.toFixed(), driven.toFixed()]), ...one.idlers.map((n) => n.toFixed()), String(!one.exact),
    told(one.lead), told(one.off), told(one.off_over_face), (one.off_ppm + one.off_arcsec + one.idlers_in).toFixed(), one.teeth_on?.toFixed() ?? '',
  ];
  const wound = (worm: WormSizes): string[] => [worm.lead, worm.axial_pitch, worm.normal_pitch, worm.outside, worm.root, worm.depth, worm.tool_end]
    .map(told).concat(worm.lead_angle.toFixed());
  const wheeled = (wheel: WormWheel): string[] => [
    wheel.centres, wheel.pitch, wheel.throat, wheel.throat_radius, wheel.outside, wheel.useful_face, wheel.gash_depth, wheel.depth, wheel.hob,
    wheel.free.blank, wheel.free.within, wheel.free.centres,
  ].map(told).concat((wheel.parts + wheel.ratio + wheel.gash_angle).toFixed());
  const coned = (wheel: BevelWheel): string[] => [
    ...[wheel.pitch, wheel.outside, wheel.apex_to_tips].map(told), ...held(wheel.caliper), wheel.roll?.toFixed() ?? '',
    ...[wheel.parts, wheel.pitch_angle, wheel.face_angle, wheel.back_angle, wheel.cutting_angle, wheel.addendum_angle, wheel.dedendum_angle, wheel.virtual_teeth]
      .map((n) => n.toFixed()),
  ];
  const pair = (found: BevelPair): string[] => [
    ...[found.cone, found.widest_face, found.large_module, found.small_module, found.depth].map(told), String(!found.too_wide), toldMaybe(found.offset),
    ...found.wheels.flatMap(coned),
  ];
  const sides: RackSizes = rack(bar);
  return [
    ...[of.pitch, of.outside, of.root, of.depth, of.lead, of.axial_pitch].map(told), ...held(of.caliper), of.table_swings, String(!of.beyond_swing),
    (of.parts + of.virtual_teeth + of.overlap).toFixed(),
    ...helices.flatMap((asked) => { const { machine, trains } = helixGears(asked); return [told(machine), ...trains.flatMap(train)]; }),
    ...worms.flatMap((asked) => { const { worm, wheel } = wormPair(asked); return [...wound(worm), ...(wheel === null ? [] : wheeled(wheel))]; }),
    ...cones.flatMap((asked) => pair(bevelPair(asked))),
    ...[sides.pitch, sides.thickness, sides.addendum, sides.depth, sides.length, sides.worst, sides.adjacent].map(told),
    ...sides.readings.flatMap(({ wanted, turns, mark, off }) => [told(wanted), (turns + mark).toFixed(), told(off)]),
  ];
}

/** Small sums: what there is to ask, and an answer of every kind of figure. */
export function summed(): string[] {
  const figure = (value: SumFigure): string =>
    typeof value === 'number' ? value.toFixed() : typeof value === 'string' ? value
      : 'mm' in value ? told(value) : 'degrees' in value ? value.degrees.toFixed() : (value.value + value.within).toFixed();
  const kinds: SumKind[] = sums();
  const answer: SumAnswer = sum('tilt', { angle: '0 45', span: 40 }, { feelers: '0.1 0.2' });
  return [
    ...kinds.flatMap(({ sum: key, group, name, about, asks }) => [key, group, name, about, ...asks.flatMap((ask) => [ask.key, ask.label, ask.usual, ...(ask.choices ?? [])])]),
    ...Object.values(answer.figures).map(figure),
    ...Object.values(answer.tables).flat().flatMap((row) => Object.values(row).map(figure)),
    answer.sum, answer.title, answer.care, answer.source, answer.drawing, ...answer.working, ...answer.notes,
  ];
}

/** Values of a card: of each kind, by the drawing and as measured. */
export function chained(): string[] {
  const given: Record<'bore' | 'plug' | 'teeth' | 'lean', CardGiven> = {
    bore: { drawing: 6, measured: '6.02' }, plug: '= bore - 2*0.05', teeth: { drawing: 64, kind: 'number' }, lean: { drawing: "17°30'", kind: 'angle' },
  };
  is<Same<CardValue['kind'], CardKind>>();
  const exact = ([num, den]: Fraction): string => (num / den).toFixed();
  const amount = (of: CardAmount): string => 'mm' in of ? exact(of.fraction) + of.mm.toFixed() + (of.inch?.toFixed() ?? '')
    : 'turns' in of ? exact(of.turns) + (of.degrees?.toFixed() ?? '') : exact(of.fraction) + of.value.toFixed();
  const { plug, ...others } = cardValues(given);
  return [plug, ...Object.values(others)].flatMap((value: CardValue) => [
    value.kind, amount(value.drawing), amount(value.in_force), ...value.followed_by, value.kind === 'length' ? value.in_force.mm.toFixed() : '',
  ]);
}
